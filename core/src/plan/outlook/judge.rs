//! How many sets each draw gives: no more than the limits allow, and what a plan makes of it where they don't say.

use super::{Hoped, Known, LEVELS, Outlook, reached, steps};
use crate::plan::parts::again::{Ask, Cuts};
use crate::plan::parts::limit::{Limit, alone, together};
use crate::plan::parts::problem::Problem;
use crate::plan::parts::solve;
use crate::quantity::{Count, Set};

/// Steps of the first plan, of one limit, and of all plans of draws together.
const PLAN: u64 = 1_500;
/// Steps of one try for so many sets of everything good, and so many tries: between what is found and what is proven, by halves. They are of
/// the steps for draws.
const HALF: u64 = 500;
const HALVES: u32 = 4;
const LIMIT: u64 = 2_000;
const ALL_PLANS: u64 = 5_000;
/// So many draws of which rounding finds less than the limit are planned on their own, in so many steps each; with glued parts that takes too long.
const AGAIN_MOST: u32 = 5;
const AGAIN: u64 = 400;
/// Of glued parts rounding hides sets: so many plans are looked for that many draws have the boards for, in so many steps each.
const SOUGHT: u32 = 6;
const SEEK: u64 = 1_500;
/// So many draws are planned one after another.
const AT_A_TIME: usize = 10;
/// The same lots for every plan.
const SEED: u64 = 1;

/// A draw: the good pieces of each pile, the sets they give at the most, and those they give.
#[derive(Clone, Debug)]
struct Drawn {
    boards: Vec<i64>,
    most: i64,
    sets: Option<i64>,
}

/// The steps a plan took, the boards it makes its sets of, and the sets that no plan passes.
struct Found {
    spent: u64,
    plan: Known,
    most: i64,
}

pub(super) struct Judge {
    problem: Problem,
    known: Vec<Known>,
    all: Drawn,
    /// No more sets than these are looked for of everything good, in so many tries more.
    high: i64,
    halves: u32,
    draws: Vec<Drawn>,
    limits: Vec<Limit>,
    /// The first so many of these are of parts alone.
    alone: usize,
    cuts: Cuts,
    /// Steps that are left for plans.
    left: u64,
    again: u32,
    sought: u32,
    /// No more sets than these are looked for at each level.
    highest: [i64; 2],
    began: bool,
}

impl Judge {
    pub(super) fn new(hoped: &Hoped, draws: Vec<Vec<i64>>) -> Judge {
        let new = |boards| Drawn { boards, most: i64::MAX, sets: None };
        let limits = steps(LIMIT, |_, _| false, |patience| alone(&hoped.problem, patience)).1;
        Judge {
            problem: hoped.problem.clone(),
            known: hoped.known.clone(),
            all: new(hoped.all_good()),
            high: 0,
            halves: HALVES,
            draws: draws.into_iter().map(new).collect(),
            alone: limits.len(),
            limits,
            cuts: Cuts::default(),
            left: ALL_PLANS,
            again: 0,
            sought: 0,
            highest: [i64::MAX; 2],
            began: false,
        }
    }

    /// Plans for some draws; the answer when no more are to be planned.
    pub(super) fn turn(&mut self) -> Option<Outlook> {
        if !std::mem::replace(&mut self.began, true) {
            self.begin();
            return None;
        }
        if self.climbs() || self.seeks() {
            return None;
        }
        let open = self.draws.iter().enumerate().filter(|(_, draw)| draw.sets.is_none()).map(|(nth, _)| nth);
        let open: Vec<usize> = open.take(AT_A_TIME).collect();
        if open.is_empty() || self.left == 0 {
            self.settle();
            return Some(self.told());
        }
        self.plan(&open);
        None
    }

    /// Everything good: where one pile is of use to one part alone the limits say it, else it is planned.
    fn begin(&mut self) {
        let simple = self.is_simple();
        let boards = self.all.boards.clone();
        let mut proven = i64::MAX;
        if !simple {
            let found = self.planned(&self.problem.with(&boards), PLAN);
            (self.all.sets, proven) = (Some(found.plan.sets.max(self.known(&boards))), found.most);
            self.known.push(found.plan);
            self.limits.extend(steps(LIMIT, |_, _| false, |patience| together(&self.problem, &boards, patience)).1);
        }
        let limits = &self.limits;
        let most = |boards: &[i64]| limits.iter().map(|limit| limit.sets(boards)).min().unwrap_or(0);
        let wish = self.problem.sets.unwrap_or(i64::MAX);
        for draw in self.draws.iter_mut().chain([&mut self.all]) {
            let known = made_of(&self.known, &draw.boards);
            draw.most = most(&draw.boards).min(wish).min(proven).max(known);
            if simple || draw.most == known {
                draw.sets = Some(draw.most);
            }
        }
        self.high = self.all.most;
    }

    /// One try for more sets of everything good, half way up to what is not ruled out yet; whether there was one to make.
    fn climbs(&mut self) -> bool {
        let found = self.all.sets.unwrap_or(self.high);
        if self.high <= found || self.halves == 0 {
            return false;
        }
        self.halves = self.halves.saturating_sub(1);
        let half = found.saturating_add(self.high.saturating_sub(found).saturating_add(1) / 2);
        let problem = Problem { sets: Some(half), ..self.problem.with(&self.all.boards) };
        let Found { spent, plan, .. } = self.planned(&problem, HALF);
        self.left = self.left.saturating_sub(spent);
        if plan.sets < half {
            self.high = half.saturating_sub(1);
        }
        self.all.sets = Some(found.max(plan.sets));
        self.known.push(plan);
        true
    }

    /// One plan more of glued parts that many draws have the boards for, by turns for either level; whether there was one to look for.
    fn seeks(&mut self) -> bool {
        if !self.is_glued() || self.is_simple() {
            return false;
        }
        while self.sought < SOUGHT {
            let nth = usize::try_from(self.sought).unwrap_or(0).checked_rem(LEVELS.len()).unwrap_or(0);
            self.sought = self.sought.saturating_add(1);
            let at_level = LEVELS.get(nth).zip(self.highest.get(nth));
            let Some((problem, sets)) = at_level.and_then(|(level, highest)| self.leanest(*level, *highest)) else { continue };
            let plan = self.planned(&problem, SEEK).plan;
            if plan.sets < sets {
                self.highest.iter_mut().skip(nth).take(1).for_each(|highest| *highest = sets.saturating_sub(1));
            }
            self.known.push(plan);
            return true;
        }
        false
    }

    /// As many sets as so many of a hundred draws may have, and no more than `highest`, of the leanest draw that is needed for that; nothing where
    /// the plans that are known give as many.
    fn leanest(&self, hundredths: usize, highest: i64) -> Option<(Problem, i64)> {
        let place = self.draws.len().saturating_mul(hundredths).div_ceil(100);
        let mut most: Vec<i64> = self.draws.iter().map(|draw| draw.most).collect();
        most.sort_unstable_by(|one, other| other.cmp(one));
        let sets = highest.min(*most.get(place.saturating_sub(1))?);
        let made = |draw: &&Drawn| sets <= made_of(&self.known, &draw.boards);
        let needed = place.saturating_sub(self.draws.iter().filter(made).count());
        let mut open: Vec<(i128, &[i64])> = self
            .draws
            .iter()
            .filter(|draw| sets <= draw.most && !made(draw))
            .map(|draw| (volume(&self.problem, &draw.boards), draw.boards.as_slice()))
            .collect();
        open.sort_unstable_by(|one, other| other.cmp(one));
        let (_, boards) = open.get(needed.checked_sub(1)?)?;
        Some((Problem { sets: Some(sets), ..self.problem.with(boards) }, sets))
    }

    /// Each board gives pieces of one part only, and none is glued: the scarcest part decides.
    fn is_simple(&self) -> bool {
        let parts = self.problem.parts.len();
        let of_parts: Vec<&Limit> = self.limits.iter().filter(|limit| limit.part.is_some()).collect();
        let gives = |pile: usize| of_parts.iter().filter(|limit| limit.most.get(pile).is_some_and(|most| 0 < *most)).count();
        !self.is_glued() && of_parts.len() == parts && (0..self.problem.piles.len()).all(|pile| gives(pile) <= 1)
    }

    /// Plans for these. What patience cut short is not told, and no more is planned then.
    fn plan(&mut self, open: &[usize]) {
        let problem = self.problem.with(&self.all.boards);
        let asked = open.iter().filter_map(|nth| self.draws.get(*nth)).map(|draw| Ask {
            boards: draw.boards.clone(),
            least: self.known(&draw.boards),
            most: draw.most,
        });
        let asked: Vec<Ask> = asked.collect();
        let (cuts, left) = (&mut self.cuts, self.left);
        let (spent, found) = steps(left, |_, _| false, |patience| cuts.sets(&problem, &asked, patience));
        self.left = self.left.saturating_sub(spent);
        for ((nth, sets), ask) in open.iter().zip(found).zip(&asked) {
            let sets = self.again(ask, sets.max(self.known(&ask.boards)));
            self.draws.iter_mut().skip(*nth).take(1).for_each(|draw| draw.sets = Some(sets));
        }
    }

    /// A plan for one draw alone, where rounding found less than its limit.
    fn again(&mut self, ask: &Ask, sets: i64) -> i64 {
        if ask.most <= sets || AGAIN_MOST <= self.again || self.is_glued() {
            return sets;
        }
        self.again = self.again.saturating_add(1);
        let found = self.planned(&self.problem.with(&ask.boards), AGAIN);
        self.left = self.left.saturating_sub(found.spent);
        found.plan.sets.max(sets)
    }

    fn is_glued(&self) -> bool {
        self.problem.parts.iter().any(|part| part.glue)
    }

    /// A plan of these boards in so many steps.
    fn planned(&self, problem: &Problem, most: u64) -> Found {
        let done = |worth: &[i128], bound: &[i128]| worth.first().is_some_and(|sets| Some(sets) == bound.first());
        let (spent, planned) = steps(most, done, |patience| solve(problem, patience, SEED));
        let first = |figures: &[i128]| figures.first().and_then(|sets| i64::try_from(*sets).ok());
        let mut boards = vec![0_i64; problem.piles.len()];
        for board in &planned.plan.boards {
            boards.iter_mut().skip(board.pile).take(1).for_each(|n| *n = n.saturating_add(board.times));
        }
        let plan = Known { boards, sets: first(&planned.worth).unwrap_or(0) };
        Found { spent, plan, most: first(&planned.bound).unwrap_or(i64::MAX) }
    }

    /// More good pieces give no fewer sets: what draws and plans with no more of any pile gave, these boards give.
    fn known(&self, boards: &[i64]) -> i64 {
        let draws = self.draws.iter().filter(|draw| is_within(&draw.boards, boards)).filter_map(|draw| draw.sets);
        draws.max().unwrap_or(0).max(made_of(&self.known, boards))
    }

    /// What was found later of fewer boards holds for more.
    fn settle(&mut self) {
        let known: Vec<Option<i64>> = self.draws.iter().map(|draw| draw.sets.map(|_| self.known(&draw.boards))).collect();
        self.draws.iter_mut().zip(known).for_each(|(draw, known)| draw.sets = known);
    }

    /// The limit that binds so many boards.
    fn scarce(&self, boards: &[i64]) -> Option<&Limit> {
        let share = |limit: &&Limit| limit.worth(boards).saturating_mul(1_000).checked_div(limit.set).unwrap_or(i128::MAX);
        self.limits.iter().min_by_key(share)
    }

    /// Nothing where one more is not ruled out in so many draws that it could be sure: then it was not found, and no part is known to lack. Else
    /// by how many draws it is the scarcest of, the part that most often is; and those that keep so many draws from more than `sure` sets that
    /// one more would not be sure, however much there was of all others.
    fn short(&self, judged: &[(&Drawn, i64)], sure: i64) -> Vec<usize> {
        let most = LEVELS.iter().fold(0, |most, level| most.max(*level));
        let may = judged.iter().filter(|(draw, _)| sure < draw.most).count();
        if judged.len().saturating_mul(most) <= may.saturating_mul(100) {
            return vec![];
        }
        let held = judged.iter().filter_map(|(draw, _)| self.scarce(&draw.boards).filter(|limit| limit.sets(&draw.boards) <= sure));
        let scarce: Vec<usize> = held.filter_map(|limit| limit.part).collect();
        let keeps = |limit: &&Limit| {
            let free = judged.iter().filter(|(draw, _)| sure < limit.sets(&draw.boards)).count();
            free.saturating_mul(100) < judged.len().saturating_mul(most)
        };
        let alone: Set<usize> = self.limits.iter().take(self.alone).filter(keeps).filter_map(|limit| limit.part).collect();
        let often = |part: usize| scarce.iter().filter(|it| **it == part).count();
        let mut all: Vec<(usize, usize)> = (0..self.problem.parts.len()).map(|part| (often(part), part)).collect();
        all.sort_unstable_by_key(|(n, part)| (std::cmp::Reverse(*n), *part));
        let first = all.first().filter(|(n, _)| 0 < *n).map(|(_, part)| *part);
        let named = |part: &usize| !judged.is_empty() && (Some(*part) == first || alone.contains(part));
        all.into_iter().map(|(_, part)| part).filter(named).collect()
    }

    fn told(&self) -> Outlook {
        let judged: Vec<(&Drawn, i64)> = self.draws.iter().filter_map(|draw| Some((draw, draw.sets?))).collect();
        let mut sets: Vec<i64> = judged.iter().map(|(_, sets)| *sets).collect();
        let all = self.all.sets.unwrap_or(0).max(sets.iter().copied().max().unwrap_or(0));
        let [likely, sure] = LEVELS.map(|level| reached(&mut sets, level).unwrap_or(all));
        let count = |n: usize| Count::try_from(n).unwrap_or(Count::MAX);
        Outlook {
            sure,
            likely,
            all,
            most: self.all.most.max(all),
            short: self.short(&judged, sure),
            draws: count(judged.len()),
            open: count(judged.iter().filter(|(draw, sets)| *sets < draw.most).count()),
        }
    }
}

fn volume(problem: &Problem, boards: &[i64]) -> i128 {
    let of = |sides: [i64; 4]| sides.into_iter().map(i128::from).fold(1, i128::saturating_mul);
    let each = problem.piles.iter().zip(boards).map(|(pile, n)| of([*n, pile.length, pile.width, pile.thickness]));
    each.fold(0, i128::saturating_add)
}

fn is_within(boards: &[i64], there: &[i64]) -> bool {
    boards.iter().zip(there).all(|(one, there)| one <= there)
}

/// The most that a known plan makes of these boards.
fn made_of(known: &[Known], boards: &[i64]) -> i64 {
    known.iter().filter(|plan| is_within(&plan.boards, boards)).map(|plan| plan.sets).max().unwrap_or(0)
}
