//! What lies beside the book on this phone: of each job the plan that was made and not used, and what was ticked at the saw. It outlives
//! a reload and a killed page. It is no fact: nothing was taken, and a plan that is made again is made in a second.
//! The browser writes it some seconds late: where all of it is killed, not only the page, the last ticks may be lost.

use super::{Found, Plan};
use crate::app::App;
use crate::app::order::{Choice, Order};
use fivebar_core::ledger::decide::{Act, Now};
use fivebar_core::ledger::fold::KeptPlan;
use fivebar_core::ledger::{Clock, Fact, line};
use fivebar_core::quantity::{Currency, Decimal, Id, Key, Length, Money, Set};
use fivebar_core::sheet::make::keep::kept;
use fivebar_core::sheet::make::{Boards, Given};

/// Of so many jobs, the last ones.
const JOBS: usize = 8;
const PART: char = '|';

/// A plan that lies there.
pub struct Beside {
    pub plan: KeptPlan,
    pub ticked: Set<usize>,
    pub bought: Vec<Boards>,
}

/// The plan in hand with its ticks is the one that lies there for its job.
pub fn keep(app: &mut App) {
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_ref()) else { return };
    let line = written(app, given, found, &app.plan);
    let job = given.ask.job.to_string();
    let others = app.here.plans.lines().filter(|line| !line.starts_with(&job));
    let all: Vec<&str> = std::iter::once(line.as_str()).chain(others).take(JOBS).collect();
    let value = all.join("\n");
    app.here.plans.clone_from(&value);
    app.orders.push(Order::Choose { key: Choice::Plans, value });
}

fn written(app: &App, given: &Given, found: &Found, plan: &Plan) -> String {
    let mut act = Act::new(Now { wall: app.now, chance: [0; 10] });
    act.add(kept(given, &found.answered, &found.sheet));
    let entry = act.stamped(&app.shelf().book, &mut Clock::new(app.shelf().device(), None)).first().map(line::write).unwrap_or_default();
    let ticks: Vec<String> = plan.ticked.iter().map(ToString::to_string).collect();
    let bought: Vec<String> = given.ask.bought.iter().map(spelled).collect();
    [given.ask.job.to_string(), ticks.join(","), bought.join(";"), entry].join(&PART.to_string())
}

/// What lies there of a job.
pub fn of(app: &App, job: Id) -> Option<Beside> {
    let job = job.to_string();
    let found = app.here.plans.lines().find(|line| line.starts_with(&job))?;
    let mut parts = found.splitn(4, PART).skip(1);
    let ticked = parts.next()?.split(',').filter_map(|nth| nth.parse().ok()).collect();
    let bought = parts.next()?.split(';').filter_map(boards).collect();
    let line::Line::Known(entry) = line::read(parts.next()?) else { return None };
    let Fact::PlanKept(plan) = &entry.fact else { return None };
    Some(Beside { plan: KeptPlan { id: entry.id, at: entry.wall, plan: plan.clone(), used: false }, ticked, bought })
}

fn spelled(boards: &Boards) -> String {
    let wood = boards.wood.as_ref().map_or(String::new(), Key::to_string);
    let [thick, wide, long] = boards.size.map(|side| side.as_nm().to_string());
    let price = boards.price.map(|price| (price.amount().to_string(), price.currency().to_string())).unwrap_or_default();
    [wood, thick, wide, long, boards.n.to_string(), price.0, price.1].join(",")
}

fn boards(text: &str) -> Option<Boards> {
    let mut parts = text.split(',');
    let wood = Key::read(parts.next()?);
    let mut side = || Length::nm(parts.next()?.parse().ok()?).ok();
    let size = [side()?, side()?, side()?];
    let n = parts.next()?.parse().ok()?;
    let amount: Option<Decimal> = parts.next()?.parse().ok();
    let currency = Currency::read(parts.next()?).ok();
    let price = amount.zip(currency).and_then(|(amount, currency)| Money::whole(amount, currency));
    Some(Boards { wood, size, n, price })
}
