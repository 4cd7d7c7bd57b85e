//! What would give more than a plan: pieces of a pile or parts that are missing, and what holds the plan where it is. All of it is searched
//! for, a try at a time, so that the caller is free between two.

use super::patience::{Patience, Progress};
use super::rows::joints::{Apart, Joints};
use super::rows::why::{Known, Rows};
use super::{Answered, Asked, Made, Planned, field, parts, rows, sticks};
use std::collections::VecDeque;

/// So many more of something, and there is more to be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unlock {
    /// Parts missing for one set more, and so many pieces of a pile that are known to give all that is missing; else so many of a pile that
    /// give what is missing of this part, where the others are given theirs.
    /// With `all` for every set that was asked, where that is more than one more.
    Part { part: usize, n: i64, from: Option<(usize, i64)>, own: Option<(usize, i64)>, all: bool },
    /// Pieces of a pile: for a nearer field all of them.
    Source { source: usize, n: i64 },
    /// Pieces of a pile, any one of these: for one row more, or for all that were asked; as far as that is known.
    Rows { source: usize, n: i64, all: bool, known: Known },
}

/// What holds the sets where they are, where it has to be searched for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Held {
    /// One part alone keeps the number down.
    Part { part: usize },
    /// These parts together, for the pieces that they share.
    Together { parts: Vec<usize> },
    /// All sticks together are too short for one set more.
    Wood,
    /// The joints of rows: with these so near there are more rows.
    Joints(Apart),
}

/// What can be had of a pile: so many strips or tiles out of each of its pieces, and whether more pieces can be.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Had {
    pub each: i64,
    pub more: bool,
}

/// A plan, of what it is one, and what can be had of each pile.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Locked {
    pub asked: Asked,
    pub answered: Answered,
    pub piles: Vec<Had>,
    /// Nearer than so joints lie in one line.
    pub joints_least: i64,
}

/// What was found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Unlocks {
    pub held: Option<Held>,
    pub all: Vec<Unlock>,
}

/// Steps for why no more, and for what parts, sticks and fields lack: some tens of milliseconds at the most.
const STEPS: u64 = 2_000;

/// Steps for what rows lack, of all tries and of each: a tenth of a second for a try that finds nothing.
const OF_ROWS: u64 = 16_000;
const EACH: u64 = 8_000;

/// One thing to look for.
#[derive(Clone, Debug)]
enum Look {
    Held,
    Missing,
    /// What all sets lack that were asked.
    MissingOfAll,
    Fewer(Fewer),
    Rows(OfRows),
    Joints(Joints),
}

/// The fewest pieces of a pile that a plan of so many sets is found with: no fewer than `least`, and `most` are known to do.
#[derive(Clone, Copy, Debug)]
struct Fewer {
    sets: i64,
    all: bool,
    pile: usize,
    least: i64,
    most: i64,
}

/// What gives so many rows.
#[derive(Clone, Debug)]
struct OfRows {
    tries: Rows,
    /// All that were asked.
    all: bool,
    /// Only what was found counts, not what no fewer than so many give.
    sure: bool,
    spent: u64,
}

/// The tries under way.
#[derive(Clone, Debug)]
pub struct Tries {
    of: Locked,
    looks: VecDeque<Look>,
    /// More rows come of the same wood with joints that are nearer: how little of it there may be says nothing.
    has_wood: bool,
    found: Unlocks,
}

impl Default for Held {
    fn default() -> Self {
        Held::Part { part: 0 }
    }
}

impl Default for Unlock {
    fn default() -> Self {
        Unlock::Source { source: 0, n: 0 }
    }
}

impl Tries {
    /// Nothing is tried yet.
    pub fn begin(of: &Locked) -> Tries {
        let looks = match &of.asked {
            Asked::Rows(problem) => of_rows(problem, of).into(),
            Asked::Field(_) => [Look::Missing].into(),
            Asked::Parts(_) | Asked::Sticks(_) if of.is_all_made() => [Look::Missing].into(),
            Asked::Parts(_) | Asked::Sticks(_) => [Look::Held, Look::Missing, Look::MissingOfAll].into(),
        };
        Tries { of: of.clone(), looks, has_wood: false, found: Unlocks::default() }
    }

    /// One try more; what was found, when there is none left.
    pub fn turn(&mut self) -> Option<Unlocks> {
        match self.looks.front_mut() {
            None => return Some(std::mem::take(&mut self.found)),
            Some(Look::Held) => self.found.held = self.of.held(),
            Some(Look::Missing) => self.lacks(self.of.missing(), (self.of.made().saturating_add(1), false)),
            Some(Look::MissingOfAll) => {
                if let Some(sets) = self.of.sets_of_all() {
                    self.lacks(self.of.missing_of(sets), (sets, true));
                }
            }
            Some(Look::Fewer(look)) => match look.turn(&self.of) {
                None => return None,
                Some(from) => {
                    let all = look.all;
                    self.found.all.iter_mut().for_each(|it| it.made_by(from, all));
                }
            },
            Some(Look::Rows(look)) => match look.turn(&self.of) {
                None => return None,
                Some(found) => self.found.all.extend(found.into_iter().filter(|it| !self.has_wood || it.was_found())),
            },
            Some(Look::Joints(look)) => match look.turn() {
                None => return None,
                Some(found) => self.by_joints(found),
            },
        }
        self.looks.pop_front();
        None
    }

    /// What so many sets lack; how few pieces give it is looked for next.
    fn lacks(&mut self, found: Vec<Unlock>, (sets, all): (i64, bool)) {
        self.looks.extend(Fewer::begin(&found, (sets, all)).map(Look::Fewer));
        self.found.all.extend(found);
    }

    /// With so near joints there are more rows. Joints in one line are no way to lay them; where all come, nothing is lacking but the distance.
    fn by_joints(&mut self, found: Option<Apart>) {
        self.has_wood = found.is_some();
        let offered = found.filter(|it| self.of.joints_least.max(1) <= it.apart);
        self.found.held = offered.map(Held::Joints);
        if offered.is_some_and(|it| self.of.asked.rows().is_some_and(|rows| rows <= it.rows)) {
            self.looks.truncate(1);
        }
    }

    /// All tries at once.
    pub fn to_their_end(mut self) -> Unlocks {
        loop {
            if let Some(found) = self.turn() {
                return found;
            }
        }
    }
}

/// Whether the joints hold them; then for one row more of those that are missing, and for all of them.
fn of_rows(problem: &rows::problem::Problem, of: &Locked) -> Vec<Look> {
    let Some(asked) = problem.rows.filter(|rows| of.made() < *rows) else { return vec![] };
    let each: Vec<i64> = of.piles.iter().map(|pile| pile.each).collect();
    let next = of.made().saturating_add(1);
    let look = |rows: i64, sure: bool| {
        let tries = Rows::begin(problem, rows, (&each, EACH));
        Look::Rows(OfRows { tries, all: rows == asked, sure, spent: 0 })
    };
    let all = (next < asked).then(|| look(asked, false));
    let joints = Look::Joints(Joints::begin(problem, of.made()));
    [joints, look(next, true)].into_iter().chain(all).collect()
}

impl OfRows {
    fn turn(&mut self, of: &Locked) -> Option<Vec<Unlock>> {
        let (spent, found) = steps(OF_ROWS.saturating_sub(self.spent), |patience| self.tries.turn(patience));
        self.spent = self.spent.saturating_add(spent);
        let had = found?.into_iter().filter(|it| of.can_be_had(it.pile) && !(self.sure && it.known == Known::AtLeast));
        Some(had.map(|it| Unlock::Rows { source: it.pile, n: it.pieces, all: self.all, known: it.known }).collect())
    }
}

impl Fewer {
    fn begin(found: &[Unlock], (sets, all): (i64, bool)) -> Option<Fewer> {
        let from = |it: &Unlock| if let Unlock::Part { from, .. } = it { *from } else { None };
        let (pile, most) = found.iter().find_map(from)?;
        Some(Fewer { sets, all, pile, least: 1, most })
    }

    /// One number is tried: half of what may do. What was found, when none is left.
    fn turn(&mut self, of: &Locked) -> Option<(usize, i64)> {
        if self.most <= self.least {
            return Some((self.pile, self.most));
        }
        let middle = self.least.midpoint(self.most);
        if of.is_made_with(self.sets, (self.pile, middle)) {
            self.most = middle
        } else {
            self.least = middle.saturating_add(1)
        }
        None
    }
}

impl Unlock {
    /// A plan with so many more was found: it is no mere bound.
    fn was_found(&self) -> bool {
        !matches!(self, Unlock::Rows { known: Known::AtLeast, .. })
    }

    fn made_by(&mut self, pieces: (usize, i64), of_all: bool) {
        if let Unlock::Part { from, all, .. } = self
            && *all == of_all
        {
            *from = from.map(|_| pieces);
        }
    }
}

impl Asked {
    /// How many rows were asked.
    fn rows(&self) -> Option<i64> {
        if let Asked::Rows(problem) = self { problem.rows } else { None }
    }

    /// How many sets were.
    fn sets(&self) -> Option<i64> {
        match self {
            Asked::Parts(problem) => problem.sets,
            Asked::Sticks(problem) => problem.sets,
            Asked::Rows(_) | Asked::Field(_) => None,
        }
    }
}

/// So many pieces of any one pile that give all that is missing; part by part so many of a pile.
type ByPile<'a> = (&'a [(usize, i64)], &'a [(usize, usize, i64)]);

impl Locked {
    /// Whether a plan of so many sets is found with so many pieces more of a pile.
    fn is_made_with(&self, next: i64, (pile, n): (usize, i64)) -> bool {
        let mut asked = self.asked.clone();
        let (sets, count) = match &mut asked {
            Asked::Parts(problem) => (&mut problem.sets, problem.piles.get_mut(pile).map(|pile| &mut pile.count)),
            Asked::Sticks(problem) => (&mut problem.sets, problem.piles.get_mut(pile).map(|pile| &mut pile.count)),
            Asked::Rows(_) | Asked::Field(_) => return false,
        };
        *sets = Some(next);
        count.into_iter().for_each(|count| *count = count.saturating_add(n));
        let is_so = |figures: &[i128]| figures.first().is_some_and(|sets| i128::from(next) <= *sets);
        // It is enough that one is found, or that there can be none.
        let mut goes_on = |now: Progress<'_>| !is_so(now.worth) && (now.bound.is_empty() || is_so(now.bound));
        let mut patience = Patience::new(Some(STEPS), &mut goes_on);
        asked.check().is_ok() && is_so(&asked.solve(&mut patience, 1).worth)
    }

    /// Rows or sets.
    fn made(&self) -> i64 {
        self.answered.worth.first().and_then(|made| i64::try_from(*made).ok()).unwrap_or(0)
    }

    /// All sets that were asked are made: nothing holds them.
    fn is_all_made(&self) -> bool {
        0 < self.made() && self.asked.sets() == Some(self.made())
    }

    /// So many sets were asked, where these are more than one more.
    fn sets_of_all(&self) -> Option<i64> {
        self.asked.sets().filter(|sets| self.made().saturating_add(1) < *sets)
    }

    fn can_be_had(&self, pile: usize) -> bool {
        self.piles.get(pile).is_some_and(|pile| pile.more)
    }

    /// What keeps the sets from being more: what keeps them from being more than the bound says, where the plan makes as many.
    fn held(&self) -> Option<Held> {
        let most = *self.answered.bound.first().filter(|most| self.answered.worth.first() == Some(*most))?;
        match &self.asked {
            Asked::Parts(problem) => {
                let most = i64::try_from(most).ok()?;
                match steps(STEPS, |patience| parts::why::why(problem, most, patience)).1 {
                    parts::why::Why::Part { part } => Some(Held::Part { part }),
                    parts::why::Why::Together { parts } => Some(Held::Together { parts }),
                    parts::why::Why::Wish | parts::why::Why::Search => None,
                }
            }
            Asked::Sticks(problem) => match steps(STEPS, |patience| sticks::why::why(problem, most, patience)).1 {
                sticks::why::Why::Part { part } => Some(Held::Part { part }),
                sticks::why::Why::Together { parts } => Some(Held::Together { parts }),
                sticks::why::Why::Wood => Some(Held::Wood),
                sticks::why::Why::Wish | sticks::why::Why::Search => None,
            },
            Asked::Rows(_) | Asked::Field(_) => None,
        }
    }

    fn missing(&self) -> Vec<Unlock> {
        match (&self.asked, &self.answered.plan) {
            (Asked::Parts(problem), Made::Parts(plan)) => self.of_parts(problem, plan),
            (Asked::Sticks(problem), Made::Sticks(plan)) => self.of_sticks(problem, plan),
            (Asked::Field(problem), Made::Field(plan)) => self.of_field(problem, plan),
            _ => vec![],
        }
    }

    /// What so many sets lack, where they are all that were asked and more than one more.
    fn missing_of(&self, sets: i64) -> Vec<Unlock> {
        let before = sets.saturating_sub(1);
        match (&self.asked, &self.answered.plan) {
            (Asked::Parts(problem), _) => {
                let may = |pile: usize| self.can_be_had(pile);
                let (_, more) = steps(STEPS, |patience| parts::why::unlock(problem, (before, 1), &may, patience));
                self.parts(&more.missing, (&more.any, &more.each), true)
            }
            (Asked::Sticks(problem), Made::Sticks(plan)) => {
                let (_, short) = steps(STEPS, |patience| sticks::short::short(problem, (plan, before), patience, 1));
                short.map(|short| self.parts(&short.missing, (&short.unlock, &[]), true)).unwrap_or_default()
            }
            _ => vec![],
        }
    }

    /// What one set more lacks, and the boards of a pile that would give it.
    fn of_parts(&self, problem: &parts::problem::Problem, plan: &parts::plan::Plan) -> Vec<Unlock> {
        let Some(short) = plan.short.as_ref().filter(|short| !short.missing.is_empty()) else { return vec![] };
        let may = |pile: usize| self.can_be_had(pile);
        let (_, more) = steps(STEPS, |patience| parts::why::unlock(problem, (self.made(), 1), &may, patience));
        self.parts(&short.missing, (&more.any, &more.each), false)
    }

    /// The same of sticks.
    fn of_sticks(&self, problem: &sticks::problem::Problem, plan: &sticks::plan::Plan) -> Vec<Unlock> {
        let (_, short) = steps(STEPS, |patience| sticks::short::short(problem, (plan, self.made()), patience, 1));
        short.map(|short| self.parts(&short.missing, (&short.unlock, &[]), false)).unwrap_or_default()
    }

    fn parts(&self, missing: &[(usize, i64)], (unlock, each): ByPile<'_>, all: bool) -> Vec<Unlock> {
        let from = unlock.iter().copied().filter(|(source, _)| self.can_be_had(*source)).min_by_key(|(_, n)| *n);
        let own = |part: usize| each.iter().find(|(of, ..)| *of == part).map(|(_, source, n)| (*source, *n));
        missing.iter().map(|(part, n)| Unlock::Part { part: *part, n: *n, from, own: own(*part), all }).collect()
    }

    /// All of them together make it nearer.
    fn of_field(&self, problem: &field::problem::Problem, plan: &field::plan::Plan) -> Vec<Unlock> {
        let Answered { worth, bound, .. } = self.answered.clone();
        let planned = Planned { plan: plan.clone(), worth, bound };
        let (_, found) = steps(STEPS, |patience| field::short::lacking(problem, &planned, patience));
        let had = found.filter(|it| it.pieces.iter().all(|(source, _)| self.can_be_had(*source)));
        let boards = |(source, n): (usize, i64)| {
            let each = self.piles.get(source).map_or(1, |had| had.each.max(1));
            Unlock::Source { source, n: n.saturating_add(each).saturating_sub(1).checked_div(each).unwrap_or(n) }
        };
        had.into_iter().flat_map(|it| it.pieces).map(boards).collect()
    }
}

/// So many steps at most: how many it took, and what was found.
fn steps<T>(most: u64, act: impl FnOnce(&mut Patience<'_>) -> T) -> (u64, T) {
    let mut goes_on = |_: Progress<'_>| true;
    let mut patience = Patience::new(Some(most), &mut goes_on);
    let found = act(&mut patience);
    (patience.steps(), found)
}
