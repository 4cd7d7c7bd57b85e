//! Boards to buy only fill what is short: first what lies there is planned alone; where that is not enough, with all the boards too, and
//! with as few of them as do; then with each kind of them alone and, where there is time for it, with every two. The one that buys least
//! stays.

mod mixes;
mod weighing;

use super::{FIRST, Plan, Stands, used};
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::plan::{Answered, Figures};
use fivebar_core::quantity::Count;
use fivebar_core::sheet::make::buy::{Kinds, OfRack, with_at_most, without_boards};
use fivebar_core::sheet::make::{Ask, Given, What};
use fivebar_core::sheet::plan::sheet_at_once;
use mixes::Mixes;
use weighing::Tried;
pub use weighing::{Weight, weight_of};

/// What is planned in turn, and what came of it so far.
#[derive(Clone, Debug, PartialEq)]
pub struct RackFirst {
    /// With all boards that could be bought.
    whole: Box<Given>,
    /// What no plan of that can pass.
    bound: Figures,
    turn: Turn,
    /// The kinds that are tried without the others; none are begun where all are tried.
    mixes: Mixes,
    /// Of all kinds, or of these: with as few as do so far.
    trial: Option<Tried>,
    best: Option<Tried>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Turn {
    Rack,
    WithBoards,
    /// With the boards of some kinds alone.
    Mixed,
    /// With so many of the boards at this place that are between the two; fewer than the least did not do, the most does.
    Fewer {
        place: usize,
        least: Count,
        most: Count,
    },
}

/// What is planned first, and what is planned after it; of a top the way in hand.
pub fn begun(app: &App, given: Given) -> (Given, Option<RackFirst>, Option<OfRack>) {
    let buys = given.sources.iter().any(|source| source.bought.is_some());
    if !buys {
        return (given, None, None);
    }
    let mixes = Mixes::of(given.ask.bought.len());
    let first = |whole, turn| RackFirst { whole: Box::new(whole), bound: vec![], turn, mixes, trial: None, best: None };
    match of_rack_alone(app, &given) {
        Some(rack) => (rack, Some(first(given, Turn::Rack)), None),
        None => (given.clone(), Some(first(given, Turn::WithBoards)), Some(OfRack { made: 0, proven: true })),
    }
}

/// What was asked of what lies there alone: of a top as thick and in the rows it has with the boards, or these would be other rows.
fn of_rack_alone(app: &App, given: &Given) -> Option<Given> {
    let ask = given.ask.clone();
    let rack = match ask.what {
        What::Top(_) => Some(without_boards(given)).filter(|rack| !rack.sources.is_empty()),
        _ => used::given_to(app, &Ask { bought: vec![], ..ask.clone() }).ok(),
    };
    Some(Given { ask, ..rack? })
}

/// Takes in the plan of a turn: gives it back where it is the last, with its problem in hand; else the next is ordered.
pub fn next(app: &mut App, answered: Answered) -> Option<Answered> {
    let (Some(mut first), Some(given)) = (app.plan.first.take(), app.plan.given.clone()) else { return Some(answered) };
    let tried = sheet_at_once(&given.ready, &answered, given.room).ok().map(|sheet| Tried { given, answered, sheet });
    let next = match first.turn {
        Turn::Rack => first.of_rack(&mut app.plan, tried),
        Turn::WithBoards => first.with_boards(app, tried),
        Turn::Mixed => first.mixed(app, tried),
        Turn::Fewer { place, least, most } => first.fewer(app, (place, least, most), tried),
    };
    match next {
        Some(given) => {
            order(app, first, given);
            None
        }
        None => {
            app.plan.kinds = first.kinds();
            in_hand(&mut app.plan, first.best)
        }
    }
}

/// The turns are called off: the best so far is the plan.
pub fn halted(app: &mut App) -> Option<Answered> {
    let mut first = app.plan.first.take()?;
    first.settle();
    app.plan.kinds = Kinds::default();
    in_hand(&mut app.plan, first.best)
}

fn in_hand(plan: &mut Plan, best: Option<Tried>) -> Option<Answered> {
    let best = best?;
    plan.given = Some(best.given);
    Some(best.answered)
}

fn order(app: &mut App, mut first: RackFirst, given: Given) {
    let asked = Box::new(given.ready.asked.clone());
    let ms = first.mixes.spend(matches!(first.turn, Turn::Mixed)).unwrap_or(FIRST);
    (app.plan.given, app.plan.first) = (Some(Box::new(given)), Some(first));
    app.plan.stands = Stands::UnderWay { worth: vec![], bound: vec![], ms: FIRST };
    app.orders.push(Order::Plan { asked, ms });
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
    fn with_boards(&mut self, app: &App, tried: Option<Tried>) -> Option<Given> {
        self.bound = tried.as_ref().map(|tried| tried.answered.bound.clone()).unwrap_or_default();
        let brings = |tried: &Tried| self.best.as_ref().is_none_or(|rack| rack.is_less(tried));
        self.trial = Some(tried.filter(brings)?);
        self.after(app, None)
    }

    /// What some kinds alone do no more with is none.
    fn mixed(&mut self, app: &App, tried: Option<Tried>) -> Option<Given> {
        let does = |tried: &Tried| self.best.as_ref().is_none_or(|best| !tried.is_less(best));
        self.trial = tried.filter(does);
        self.after(app, None)
    }

    fn fewer(&mut self, app: &App, (place, least, most): (usize, Count, Count), tried: Option<Tried>) -> Option<Given> {
        let n = least.midpoint(most);
        let does = |tried: &Tried| self.trial.as_ref().is_none_or(|best| !tried.is_less(best));
        match tried.filter(does) {
            Some(tried) => {
                let most = tried.bought(place);
                self.trial = Some(tried);
                self.between(app, (place, least.min(most), most))
            }
            None => self.between(app, (place, n.saturating_add(1), most)),
        }
    }

    fn between(&mut self, app: &App, (place, least, most): (usize, Count, Count)) -> Option<Given> {
        if most <= least || self.mixes.is_spent() {
            return self.after(app, Some((place, most)));
        }
        self.turn = Turn::Fewer { place, least, most };
        Some(with_at_most(&self.trial.as_ref()?.given, place, least.midpoint(most)))
    }

    /// Fewer boards at this place do not do, by what is known without a plan.
    fn least(&self, place: usize) -> Count {
        self.trial.as_ref().map_or(0, |trial| trial.least(place))
    }

    /// The boards behind those at a place, of which no more than so many are bought; behind the last, the next kinds alone.
    fn after(&mut self, app: &App, done: Option<(usize, Count)>) -> Option<Given> {
        if let Some((trial, (place, most))) = self.trial.as_mut().zip(done) {
            trial.hold_to(place, most);
        }
        let behind = |place: usize| done.is_none_or(|(last, _)| last < place);
        let all = self.trial.as_ref().map(Tried::buys).unwrap_or_default();
        match all.into_iter().find(|(place, _)| behind(*place)) {
            Some((place, most)) if !self.mixes.is_spent() => self.between(app, (place, self.least(place), most)),
            _ => self.next_mix(app),
        }
    }

    /// The better of the two stays.
    fn settle(&mut self) {
        let trial = self.trial.take().filter(|trial| self.best.as_ref().is_none_or(|best| trial.is_before(best)));
        self.best = trial.or(self.best.take());
    }

    /// The next kinds alone, as if no others were named; of one kind no more than buys less than the best so far.
    fn next_mix(&mut self, app: &App) -> Option<Given> {
        self.settle();
        let best = self.best.as_ref()?;
        while let Some(kinds) = self.mixes.next() {
            if let Some(given) = best.of_kinds(app, &self.whole, kinds) {
                self.turn = Turn::Mixed;
                return Some(given);
            }
        }
        None
    }

    /// What was tried of the boards, once all was. A plan that takes no more than the bound of all of them is proven of all.
    fn kinds(&mut self) -> Kinds {
        let tried = self.mixes.tried();
        let Some(best) = self.best.as_mut().filter(|best| !best.buys().is_empty()) else { return Kinds::default() };
        if best.reaches(&self.bound, &self.whole) {
            best.answered.bound.clone_from(&best.answered.worth);
            return Kinds::All;
        }
        tried
    }
}
