//! What came of one turn: how far it goes, and what it buys.

use super::super::used;
use crate::app::App;
use fivebar_core::plan::rows::problem::Pile;
use fivebar_core::plan::{Answered, Asked, Figures, Made, better};
use fivebar_core::quantity::{Count, Decimal, Listed};
use fivebar_core::sheet::make::buy::{OfRack, not_bought, to_buy, with_at_most};
use fivebar_core::sheet::make::{Given, Source, What};
use fivebar_core::sheet::plan::PlanSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// A problem, its plan, and what that makes.
#[derive(Clone, Debug, PartialEq)]
pub struct Tried {
    pub given: Box<Given>,
    pub answered: Answered,
    pub sheet: PlanSheet,
}

/// What is bought: its price where all boards that could be bought have one, then cubic nanometres.
pub type Weight = (Decimal, i128);

fn times((cost, volume): Weight, n: Count) -> Weight {
    (cost.saturating_mul(n.into()), volume.saturating_mul(n.into()))
}

/// One board; by its price where all that could be bought have one in one currency.
fn one(given: &Given, source: &Source) -> Weight {
    let all = &given.ask.bought;
    let currency = all.first().and_then(|boards| boards.price).map(|price| price.currency());
    let priced = all.iter().all(|boards| boards.price.is_some_and(|price| Some(price.currency()) == currency));
    let cost = source.bought.flatten().filter(|_| priced).map_or(Decimal::ZERO, |price| price.amount());
    let sides = [source.pile.thickness, source.pile.width, source.pile.length];
    let volume = sides.into_iter().fold(1_i128, |sum, side| sum.saturating_mul(side.map_or(0, |side| side.as_nm()).into()));
    (cost, volume)
}

/// All boards a plan buys.
pub fn weight_of((given, sheet): (&Given, &PlanSheet)) -> Weight {
    let of = |(place, n, _)| given.sources.get(place).map(|source| times(one(given, source), n));
    let all = not_bought(given, sheet).into_iter().filter_map(of);
    all.fold((Decimal::ZERO, 0), |(cost, volume), (of, more)| (cost.saturating_add(of), volume.saturating_add(more)))
}

impl Tried {
    /// All that was asked, or a field that is near enough.
    pub fn is_all(&self) -> bool {
        match self.given.ask.what {
            // The parts that are left of several pieces are asked as one.
            What::Parts(_) | What::Sticks(_) if 0 < self.given.cut.sets => 0 < self.sheet.made,
            What::Parts(asked) | What::Sticks(asked) => asked.is_some_and(|asked| i64::from(asked) <= self.sheet.made),
            What::Field(_) => 0 < self.sheet.made && self.answered.worth.first() == Some(&0),
            What::Top(_) => {
                matches!(&self.given.ready.wish, Wish::Panel(panel) if panel.rows().is_some_and(|rows| rows <= self.sheet.made))
            }
        }
    }

    pub fn of_rack(&self) -> OfRack {
        let is_field = matches!(self.given.ask.what, What::Field(_));
        let proven = !is_field && self.answered.worth.first() == self.answered.bound.first();
        OfRack { made: if is_field { 0 } else { self.sheet.made }, proven }
    }

    /// What is looked for further takes no more of these boards. What was tried for one more may have: where nothing better is looked
    /// for, it is told still.
    pub fn hold_to(&mut self, place: usize, most: Count) {
        let held = with_at_most(&self.given, place, most);
        if !held.ready.asked.holds(&self.answered) {
            if self.answered.is_proven() {
                return;
            }
            let Made::Parts(plan) = &mut self.answered.plan else { return };
            plan.short = None;
        }
        *self.given = held;
    }

    /// It makes fewer than another, or comes less near; both on one rule.
    pub fn is_less(&self, than: &Tried) -> bool {
        let first = |it: &Tried| {
            let unit = if matches!(it.given.ask.what, What::Field(_)) { it.given.ready.unit.into() } else { 1 };
            it.answered.worth.first().map(|first| first.saturating_mul(unit)).into_iter().collect::<Vec<i128>>()
        };
        let nothing = self.sheet.made == 0 && 0 < than.sheet.made;
        nothing || better(self.given.ready.asked.senses(), &first(than), &first(self))
    }

    pub fn bought(&self, place: usize) -> Count {
        self.buys().into_iter().find(|(at, _)| *at == place).map_or(0, |(_, n)| n)
    }

    /// The fewest boards at this place with which the rows that were found are long enough; of others that is not known without a plan.
    pub fn least(&self, place: usize) -> Count {
        let Asked::Rows(problem) = &self.given.ready.asked else { return 0 };
        let squared = |pile: &Pile| pile.length.saturating_sub(problem.square.saturating_mul(2)).max(0);
        let others = problem.piles.iter().enumerate().filter(|(nth, _)| *nth != place);
        let others = others.fold(0_i64, |sum, (_, pile)| sum.saturating_add(squared(pile).saturating_mul(pile.count)));
        let lacks = problem.length.saturating_mul(self.sheet.made).saturating_sub(others).max(0);
        let ripped = self.given.ready.sources.get(place).map_or(1, |source| source.ripped);
        let board = problem.piles.get(place).map_or(0, |pile| squared(pile).saturating_mul(ripped));
        let least = lacks.saturating_add(board).saturating_sub(1).checked_div(board).unwrap_or(0);
        Count::try_from(least).unwrap_or(0)
    }

    /// Boards that are not bought yet: which source, and how many.
    pub fn buys(&self) -> Vec<(usize, Count)> {
        not_bought(&self.given, &self.sheet).into_iter().map(|(place, n, _)| (place, n)).collect()
    }

    fn weight(&self) -> Weight {
        weight_of((&self.given, &self.sheet))
    }

    /// It does more than another, or as much and buys less.
    pub fn is_before(&self, than: &Tried) -> bool {
        than.is_less(self) || !self.is_less(than) && self.weight() < than.weight()
    }

    /// The same with boards of these kinds alone, by their places among them: of one so many that they are less to buy than what this buys.
    /// Nothing where none are, or this buys of no other kinds.
    pub fn of_kinds(&self, app: &App, whole: &Given, kinds: [usize; 2]) -> Option<Given> {
        let given = self.with_kinds(app, whole, kinds)?;
        let named = given.sources.iter().enumerate().filter(|(_, source)| source.bought.is_some() && 0 < source.n).listed();
        let places: Vec<usize> = named.iter().map(|(place, _)| *place).collect();
        let named = |source: &Source| named.iter().any(|(_, own)| own.pile.pile == source.pile.pile);
        let bought = self.buys();
        let within = bought.iter().all(|(place, _)| self.given.sources.get(*place).is_some_and(named));
        if places.is_empty() || within && bought.len() <= places.len() {
            return None;
        }
        let [place] = places.as_slice() else { return Some(given) };
        let (source, all) = (given.sources.get(*place)?, self.weight());
        let most = (1..=source.n).take_while(|n| times(one(&given, source), *n) < all).last()?;
        Some(with_at_most(&given, *place, most))
    }

    /// What was asked with boards of these kinds alone; of a top as thick and in as many rows.
    fn with_kinds(&self, app: &App, whole: &Given, kinds: [usize; 2]) -> Option<Given> {
        let mut ask = whole.ask.clone();
        let others = ask.bought.iter_mut().enumerate().filter(|(nth, _)| !kinds.contains(nth));
        others.for_each(|(_, boards)| boards.n = 0);
        if !matches!(ask.what, What::Top(_)) {
            return Some(Given { ask: whole.ask.clone(), ..used::given_to(app, &ask).ok()? });
        }
        let named = to_buy(&ask.bought, whole.units).into_iter().map(|source| source.which()).listed();
        let is_other = |source: &Source| source.bought.is_some() && !named.contains(&source.which());
        let others = whole.sources.iter().enumerate().filter(|(_, source)| is_other(source));
        Some(others.fold(whole.clone(), |given, (place, _)| with_at_most(&given, place, 0)))
    }

    /// It takes as little as any plan of all the boards can: it is one of theirs, and of the same parts.
    pub fn reaches(&self, bound: &Figures, whole: &Given) -> bool {
        let same = self.given.ready.unit == whole.ready.unit && self.given.ready.wish == whole.ready.wish;
        same && !bound.is_empty() && self.answered.worth == *bound
    }
}
