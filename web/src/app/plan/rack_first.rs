//! Boards to buy only fill what is short: first what lies there is planned alone; where that is not enough, with the boards too, and then
//! with as few of them as do.

use super::{FIRST, Plan, Stands, used};
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::plan::{Answered, Made, better};
use fivebar_core::quantity::Count;
use fivebar_core::sheet::make::buy::{OfRack, not_bought, with_at_most};
use fivebar_core::sheet::make::{Ask, Given, What};
use fivebar_core::sheet::plan::{PlanSheet, sheet_at_once};

/// A problem, its plan, and what that makes.
#[derive(Clone, Debug, PartialEq)]
struct Tried {
    given: Box<Given>,
    answered: Answered,
    sheet: PlanSheet,
}

/// What is planned in turn, and what came of it so far.
#[derive(Clone, Debug, PartialEq)]
pub struct RackFirst {
    /// With all boards that could be bought.
    whole: Box<Given>,
    turn: Turn,
    best: Option<Tried>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Turn {
    Rack,
    WithBoards,
    /// With so many of the boards at this place that are between the two; fewer than the least did not do, the most does.
    Fewer {
        place: usize,
        least: Count,
        most: Count,
    },
}

/// What is planned first, and what is planned after it; of a top its ways say which.
pub fn begun(app: &App, given: Given) -> (Given, Option<RackFirst>, Option<OfRack>) {
    let buys = given.sources.iter().any(|source| source.bought.is_some());
    if !buys || matches!(given.ask.what, What::Top(_)) {
        return (given, None, None);
    }
    let (whole, ask) = (Box::new(given.clone()), given.ask.clone());
    match used::given_to(app, &Ask { bought: vec![], ..ask.clone() }) {
        Ok(rack) => (Given { ask, ..rack }, Some(RackFirst { whole, turn: Turn::Rack, best: None }), None),
        Err(_) => {
            let first = RackFirst { whole, turn: Turn::WithBoards, best: None };
            (given, Some(first), Some(OfRack { made: 0, proven: true }))
        }
    }
}

/// Takes in the plan of a turn: gives it back where it is the last, with its problem in hand; else the next is ordered.
pub fn next(app: &mut App, answered: Answered) -> Option<Answered> {
    let (Some(mut first), Some(given)) = (app.plan.first.take(), app.plan.given.clone()) else { return Some(answered) };
    let tried = sheet_at_once(&given.ready, &answered, given.room).ok().map(|sheet| Tried { given, answered, sheet });
    let next = match first.turn {
        Turn::Rack => first.of_rack(&mut app.plan, tried),
        Turn::WithBoards => first.with_boards(tried),
        Turn::Fewer { place, least, most } => first.fewer((place, least, most), tried),
    };
    match next {
        Some(given) => {
            order(app, first, given);
            None
        }
        None => in_hand(&mut app.plan, first.best),
    }
}

/// The turns are called off: the best so far is the plan.
pub fn halted(app: &mut App) -> Option<Answered> {
    let first = app.plan.first.take()?;
    in_hand(&mut app.plan, first.best)
}

fn in_hand(plan: &mut Plan, best: Option<Tried>) -> Option<Answered> {
    let best = best?;
    plan.given = Some(best.given);
    Some(best.answered)
}

fn order(app: &mut App, first: RackFirst, given: Given) {
    let asked = Box::new(given.ready.asked.clone());
    (app.plan.given, app.plan.first) = (Some(Box::new(given)), Some(first));
    app.plan.stands = Stands::UnderWay { worth: vec![], bound: vec![], ms: FIRST };
    app.orders.push(Order::Plan { asked, ms: FIRST });
}

impl RackFirst {
    /// Enough of what lies there is all; else the boards come in.
    fn of_rack(&mut self, plan: &mut Plan, tried: Option<Tried>) -> Option<Given> {
        let enough = tried.as_ref().is_some_and(Tried::is_all);
        plan.of_rack = tried.as_ref().filter(|_| !enough).map(Tried::of_rack);
        self.best = tried;
        self.turn = Turn::WithBoards;
        (!enough).then(|| (*self.whole).clone())
    }

    /// Boards that bring nothing are none to buy.
    fn with_boards(&mut self, tried: Option<Tried>) -> Option<Given> {
        let brings = |tried: &Tried| self.best.as_ref().is_none_or(|rack| rack.is_less(tried));
        let tried = tried.filter(brings)?;
        self.best = Some(tried);
        self.after(None)
    }

    fn fewer(&mut self, (place, least, most): (usize, Count, Count), tried: Option<Tried>) -> Option<Given> {
        let n = least.midpoint(most);
        let does = |tried: &Tried| self.best.as_ref().is_none_or(|best| !tried.is_less(best));
        match tried.filter(does) {
            Some(tried) => {
                let most = tried.bought(place);
                self.best = Some(tried);
                self.between((place, least.min(most), most))
            }
            None => self.between((place, n.saturating_add(1), most)),
        }
    }

    fn between(&mut self, (place, least, most): (usize, Count, Count)) -> Option<Given> {
        if most <= least {
            return self.after(Some((place, most)));
        }
        self.turn = Turn::Fewer { place, least, most };
        Some(with_at_most(&self.best.as_ref()?.given, place, least.midpoint(most)))
    }

    /// The boards behind those at a place, of which no more than so many are bought.
    fn after(&mut self, done: Option<(usize, Count)>) -> Option<Given> {
        let best = self.best.as_mut()?;
        if let Some((place, most)) = done {
            best.hold_to(place, most);
        }
        let behind = |place: usize| done.is_none_or(|(last, _)| last < place);
        let next = not_bought(&best.given, &best.sheet).into_iter().find(|(place, ..)| behind(*place));
        let (place, most, _) = next?;
        self.between((place, 0, most))
    }
}

impl Tried {
    /// All that was asked, or a field that is near enough.
    fn is_all(&self) -> bool {
        match self.given.ask.what {
            What::Parts(asked) | What::Sticks(asked) => asked.is_some_and(|asked| i64::from(asked) <= self.sheet.made),
            What::Field(_) => 0 < self.sheet.made && self.answered.worth.first() == Some(&0),
            What::Top(_) => true,
        }
    }

    fn of_rack(&self) -> OfRack {
        let is_field = matches!(self.given.ask.what, What::Field(_));
        let proven = !is_field && self.answered.worth.first() == self.answered.bound.first();
        OfRack { made: if is_field { 0 } else { self.sheet.made }, proven }
    }

    /// What is looked for further takes no more of these boards. What was tried for one more may have: where nothing better is looked
    /// for, it is told still.
    fn hold_to(&mut self, place: usize, most: Count) {
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
    fn is_less(&self, than: &Tried) -> bool {
        let first = |it: &Tried| {
            let unit = if matches!(it.given.ask.what, What::Field(_)) { it.given.ready.unit.into() } else { 1 };
            it.answered.worth.first().map(|first| first.saturating_mul(unit)).into_iter().collect::<Vec<i128>>()
        };
        let nothing = self.sheet.made == 0 && 0 < than.sheet.made;
        nothing || better(self.given.ready.asked.senses(), &first(than), &first(self))
    }

    fn bought(&self, place: usize) -> Count {
        not_bought(&self.given, &self.sheet).into_iter().find(|(at, ..)| *at == place).map_or(0, |(_, n, _)| n)
    }
}
