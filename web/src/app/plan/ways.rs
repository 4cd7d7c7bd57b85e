//! The ways of a top are planned in turn, each for a moment. What an estimate puts first is shown at once, and gives way to what is found to
//! waste less.

use super::rack_first::{Weight, weight_of};
use super::{FIRST, Plan, Stands, found, used};
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::plan::Answered;
use fivebar_core::quantity::{Decimal, Listed};
use fivebar_core::sheet::make::{Ask, Given, Top, Way, What};
use fivebar_core::sheet::plan::{PlanSheet, sheet_at_once};
use std::cmp::Reverse;

/// Each way behind the first is planned so many ms, and no more than so many are.
const EACH: u32 = 80;
const MOST: usize = 6;
/// Thousandths of the rows.
const ALL: i64 = 1_000;

/// Ways to plan yet, and the one that is planned now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ways {
    left: Vec<Way>,
    now: Option<(Way, Box<Given>)>,
}

/// The ways behind the one in hand: of the wood and thickness that were chosen, where they were.
pub fn begun(given: &Given) -> Ways {
    let What::Top(top) = &given.ask.what else { return Ways::default() };
    let Some(first) = given.ways.first() else { return Ways::default() };
    let of = |way: &&Way| if top.pick.is_some() { way.is_like(first) } else { way.mixed == top.mixed };
    Ways { left: given.ways.iter().skip(1).filter(of).take(MOST).cloned().listed(), now: None }
}

/// Takes in the plan of a turn; false where none was under way.
pub fn taken_in(app: &mut App, answered: &Answered) -> bool {
    let Some((way, given)) = app.plan.ways.now.take() else { return false };
    let Ok(sheet) = sheet_at_once(&given.ready, answered, given.room) else { return true };
    note(&mut app.plan, &planned(way.clone(), &sheet, answered));
    let Some((shown, had)) = app.plan.given.as_ref().zip(app.plan.found.as_ref()) else { return true };
    let Some(old) = shown.ways.first().filter(|_| app.plan.ticked.is_empty()) else { return true };
    // Rows that were not found yet may be found still: for fewer of another way they are not given up.
    let settled = had.answered.worth.first() == had.answered.bound.first() || made(&way, &sheet) == ALL;
    if settled && weight(&way, (&given, &sheet)) < weight(old, (shown, &had.sheet)) {
        let mut ways = shown.ways.clone();
        let first = ways.iter().position(|it| is_same(it, &way)).map(|nth| ways.remove(nth));
        ways.insert(0, first.unwrap_or(way));
        (app.plan.given, app.plan.found) = (Some(Box::new(Given { ways, ..*given })), None);
        found(app, answered.clone());
    }
    true
}

/// The way that is in hand was planned.
pub fn first_is_planned(plan: &mut Plan) {
    let Some((given, found)) = plan.given.as_ref().zip(plan.found.as_ref()) else { return };
    if let Some(way) = given.ways.first() {
        let way = planned(way.clone(), &found.sheet, &found.answered);
        note(plan, &way);
    }
}

/// Orders the next one; false where all were planned. Once the saw is at work nothing takes the place of the plan.
pub fn next(app: &mut App) -> bool {
    let Some(ask) = app.plan.given.as_ref().map(|given| given.ask.clone()).filter(|_| app.plan.ticked.is_empty()) else { return false };
    let mut left = std::mem::take(&mut app.plan.ways.left).into_iter();
    let Some((given, way)) = left.by_ref().find_map(|way| Some((given_of(app, &ask, &way)?, way))) else { return false };
    let asked = Box::new(given.ready.asked.clone());
    app.plan.ways = Ways { left: left.listed(), now: Some((way, Box::new(given))) };
    app.plan.stands = Stands::UnderWay { worth: vec![], bound: vec![], ms: FIRST };
    app.orders.push(Order::Plan { asked, ms: EACH });
    true
}

/// The problem of a way, for what was asked.
fn given_of(app: &App, ask: &Ask, way: &Way) -> Option<Given> {
    let What::Top(top) = &ask.what else { return None };
    let top = Top { rows: Some(way.rows), pick: Some(way.pick.clone()), mixed: way.mixed, ..top.clone() };
    let given = used::given_to(app, &Ask { what: What::Top(top), ..ask.clone() }).ok()?;
    let is_it = given.ways.first().is_some_and(|first| is_same(first, way));
    is_it.then(|| Given { ask: ask.clone(), ..given })
}

fn is_same(one: &Way, other: &Way) -> bool {
    (one.mixed, one.rows, &one.pick) == (other.mixed, other.rows, &other.pick)
}

fn note(plan: &mut Plan, way: &Way) {
    let ways = plan.given.iter_mut().flat_map(|given| &mut given.ways);
    ways.filter(|it| is_same(it, way)).for_each(|it| it.clone_from(way));
}

/// What was found of a way; the estimate stays where too few rows were, and that there are no more is not proven.
fn planned(way: Way, sheet: &PlanSheet, answered: &Answered) -> Way {
    let rows = i64::from(way.rows);
    let is_proven = answered.worth.first() == answered.bound.first();
    match sheet.waste.share.filter(|_| rows <= sheet.made || is_proven) {
        Some(waste) => Way { waste, there: made(&way, sheet), planned: true, ..way },
        None => way,
    }
}

fn made(way: &Way, sheet: &PlanSheet) -> i64 {
    sheet.made.saturating_mul(ALL).checked_div(way.rows.into()).unwrap_or(0).min(ALL)
}

/// All rows first, then what buys least, then what needs nothing that is held back, then what wastes least.
fn weight(way: &Way, (given, sheet): (&Given, &PlanSheet)) -> (Reverse<i64>, Weight, bool, Decimal) {
    (Reverse(made(way, sheet)), weight_of((given, sheet)), way.pick.thick, sheet.waste.share.unwrap_or(Decimal::ONE))
}
