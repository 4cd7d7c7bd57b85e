//! A field is planned in each pattern and of each pile alone, behind all at once: each gets the sizes it needs, and of those as near the one
//! that wastes least is taken.

use super::{FIRST, Plan, Stands, found};
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::plan::Answered;
use fivebar_core::plan::field::problem::Pattern;
use fivebar_core::quantity::{Decimal, Listed};
use fivebar_core::sheet::make::fields::alone;
use fivebar_core::sheet::make::{Field, Given, What};
use fivebar_core::sheet::plan::{PlanSheet, sheet_at_once};

/// Each is planned so many ms at most, and no more than so many are.
const EACH: u32 = 80;
const MOST: usize = 40;

/// Fields to plan yet, and the one that is planned now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fields {
    /// All patterns and piles.
    whole: Option<Box<Given>>,
    left: Vec<(Pattern, Option<usize>)>,
    now: Option<Box<Given>>,
    tried: usize,
}

/// What is planned alone; nothing of one pattern and pile, nor where boards could be bought.
pub fn begun(given: &Given) -> Fields {
    let What::Field(field) = &given.ask.what else { return Fields::default() };
    let left = if given.ask.bought.is_empty() { each(field, given.sources.len()) } else { vec![] };
    Fields { whole: Some(Box::new(given.clone())), left, now: None, tried: 0 }
}

fn each(field: &Field, piles: usize) -> Vec<(Pattern, Option<usize>)> {
    let patterns = || field.patterns.iter().copied();
    let by_pattern = patterns().filter(|_| 1 < field.patterns.len()).map(|pattern| (pattern, None));
    let several = 1 < piles && !field.two;
    let by_pile = (0..piles).filter(|_| several).flat_map(|pile| patterns().map(move |pattern| (pattern, Some(pile))));
    by_pattern.chain(by_pile).take(MOST).listed()
}

/// Takes in the plan of a turn; false where none was under way.
pub fn taken_in(app: &mut App, answered: &Answered) -> bool {
    let Some(given) = app.plan.fields.now.take() else { return false };
    let Ok(sheet) = sheet_at_once(&given.ready, answered, given.room) else { return true };
    app.plan.fields.tried = app.plan.fields.tried.saturating_add(1);
    let Some((shown, had)) = app.plan.given.as_ref().zip(app.plan.found.as_ref()) else { return true };
    if app.plan.ticked.is_empty() && weight((&given, answered), &sheet) < weight((shown, &had.answered), &had.sheet) {
        (app.plan.given, app.plan.found) = (Some(given), None);
        found(app, answered.clone());
    }
    true
}

/// Orders the next one; false where all were planned. Once the saw is at work nothing takes the place of the plan.
pub fn next(app: &mut App) -> bool {
    let fields = &mut app.plan.fields;
    let Some(whole) = fields.whole.as_ref().filter(|_| app.plan.ticked.is_empty()) else { return false };
    let mut left = std::mem::take(&mut fields.left).into_iter();
    let Some(given) = left.by_ref().find_map(|(pattern, source)| alone(whole, pattern, source)) else { return false };
    let asked = Box::new(given.ready.asked.clone());
    (fields.left, fields.now) = (left.listed(), Some(Box::new(given)));
    app.plan.stands = Stands::UnderWay { worth: vec![], bound: vec![], ms: FIRST };
    app.orders.push(Order::Plan { asked, ms: EACH });
    true
}

/// How many fields were planned, where all that were to be were; else nothing.
pub fn tried(plan: &Plan) -> Option<usize> {
    let fields = &plan.fields;
    let all = fields.left.is_empty() && fields.now.is_none() && 0 < fields.tried;
    all.then(|| fields.tried.saturating_add(1))
}

/// How far beyond what is near enough, how far off at all, in nanometres; then the waste.
fn weight((given, answered): (&Given, &Answered), sheet: &PlanSheet) -> (Vec<i128>, Decimal) {
    let near = answered.worth.iter().take(2).map(|units| units.saturating_mul(given.ready.unit.into())).listed();
    (near, sheet.waste.share.unwrap_or(Decimal::ONE))
}
