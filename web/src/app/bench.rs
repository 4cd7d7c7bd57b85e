//! Bench, heard: what a tap at the bench changes. A start is never held up by a question.

mod ago;
mod coats;
pub mod day;
pub mod ends;
pub mod mending;
pub mod offered;
pub mod starting;
#[cfg(test)]
mod tests;
pub mod waits;
mod whole;

use super::entry::Typed;
use super::order::{Feel, Order};
use super::{App, Notice};
use crate::parts::Place;
use crate::parts::pad::Press;
use crate::words::en::bench as words;
pub use ago::next_began;
use fivebar_core::bench::{Mender, On, Run, Work};
use fivebar_core::ledger::decide::{BenchCommand, Command, Now};
use fivebar_core::quantity::{Count, Currency, Day, Decimal, Id, Moment, Money, PILE_MOST, Span, reading};
use fivebar_core::sheet::bench::{BenchSheet, Choice, Seen, bench_of};
use starting::{Starting, StartingTap};
pub use whole::{whole, whole_of};

/// What lies over the bench.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Over {
    #[default]
    Nothing,
    /// What is begun, or was missed.
    Starting(Box<Starting>),
    /// Of how many pieces the batch is.
    Batch(Typed),
    /// So many more done at once.
    More(Typed),
    /// So many were done in what runs, also fewer than were tapped.
    InAll(Typed),
    /// What a helper who joins is paid for an hour; nothing where they are not.
    Helper(Typed),
    /// When a run stopped, by the clock.
    StoppedAt(Id, Typed),
    /// The day's list.
    Day(Box<day::View>),
    /// Four large keys.
    Big,
    /// What waits, and how long is usual.
    Waits(Box<waits::Waiting>),
}

/// The state of Bench that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bench {
    pub over: Over,
    /// How long ago the next start was.
    pub ago: Span,
    /// When the maker tapped that: what was meant was that moment, so it is soon over.
    pub ago_tapped: Option<Moment>,
    /// Off times up to here have rung, or were over when the app was opened.
    pub rung: Option<Moment>,
    /// What was typed makes a run longer than a working day, and is asked about.
    pub asked: bool,
    /// The day of the clock time that is typed, where the maker said which.
    pub on_day: Option<Day>,
    /// A start that was said to be earlier than its tap, or than it could be, in words.
    pub late: Option<(Id, String)>,
}

/// What can be said on Bench.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    /// A board: starts, or switches to it.
    Board(Choice),
    Other,
    Starting(StartingTap),
    /// The next start was so many minutes ago; the same again takes it back.
    Ago(i64),
    Stop,
    Done,
    MoreDone,
    AskBatch,
    AskInAll,
    HelperJoins,
    /// A helper joins for what the last one was paid.
    JoinsFor(Money),
    HelperLeaves,
    /// The one who came with this entry leaves.
    Leaves(Id),
    /// Who was at the run before is at this one too, or went.
    HelpersStay(Id),
    HelpersGone(Id),
    /// The end that was proposed for a run.
    Proposed(Id, Moment),
    /// The same, with the pieces that were left of the batch: they were done by then.
    ProposedWhole(Id, Moment, Count),
    /// A run is right as it stands.
    Right(Id),
    StoppedAt(Id),
    Press(Press),
    PadDone,
    /// The clock time that is typed is of that day.
    OnDay(Day),
    /// One of the moments that may have been meant.
    Meant(Moment),
    /// The batch has so many.
    BatchOf(Count),
    /// The operation of a run is done, of so many pieces.
    Whole(Id, Count),
    /// A run stopped so many minutes ago.
    StoppedAgo(Id, i64),
    Day(day::DayTap),
    Waits(waits::WaitTap),
    Big,
    LeaveBig,
    Close,
}

/// The bench of the maker as it stands.
pub fn sheet(app: &App) -> BenchSheet {
    bench_of(&app.shelf().bench(), &app.shelf().book, seen(app))
}

/// From where the bench is seen: the maker's own, with the closing time as it was said, else as it is shown until it is.
pub fn seen(app: &App) -> Seen {
    Seen { now: app.now, person: None, closing: Some(app.shelf().workshop().hours.workdays().closing) }
}

/// Takes in a tap on Bench.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    app.bench.look_again(now.wall.at);
    app.bench.asked &= matches!(tap, Tap::PadDone | Tap::Starting(StartingTap::Clock));
    app.bench.on_day = app.bench.on_day.filter(|_| matches!(tap, Tap::PadDone | Tap::Press(_)));
    match tap {
        Tap::Board(choice) => start(app, coats::work_for(app, &choice), now),
        Tap::Other => app.bench.over = Over::Starting(Box::new(Starting::new(app))),
        Tap::Starting(tap) => starting::heard(app, tap, now),
        Tap::Ago(minutes) => ago::arm(app, Span::minutes(minutes), now),
        Tap::Stop => stop(app, now),
        Tap::Done => done(app, 1, now),
        Tap::MoreDone => app.bench.over = Over::More(Typed::default()),
        Tap::AskBatch => app.bench.over = Over::Batch(Typed::default()),
        Tap::AskInAll => app.bench.over = Over::InAll(Typed::default()),
        Tap::HelperJoins => app.bench.over = Over::Helper(Typed::default()),
        Tap::JoinsFor(pay) if matches!(app.bench.over, Over::Day(_)) => mending::for_last(app, pay, now),
        Tap::JoinsFor(pay) => helper_joins(app, Some(pay), now),
        Tap::HelperLeaves => leaves(app, None, now),
        Tap::Leaves(helper) => leaves(app, Some(helper), now),
        Tap::HelpersStay(run) => helpers_stay(app, run, now),
        Tap::HelpersGone(run) => answered(app, BenchCommand::HelpersGone { run }, now),
        Tap::Proposed(run, at) => ordered(app, BenchCommand::StopAt { run, at, by: Mender::Proposed }, now),
        Tap::ProposedWhole(run, at, n) => ordered(app, BenchCommand::StopWhole { run, at, n }, now),
        Tap::Right(run) => ordered(app, BenchCommand::Confirm { run }, now),
        Tap::StoppedAt(run) => app.bench.over = Over::StoppedAt(run, Typed::default()),
        Tap::Press(press) => pressed(app, press),
        Tap::PadDone => pad_done(app, now),
        Tap::OnDay(day) => {
            typed_over(app);
            app.bench.on_day = Some(day);
        }
        Tap::Meant(at) => meant(app, at, now),
        Tap::BatchOf(n) => batch_of(app, n, now),
        Tap::Whole(run, of) => drop(whole(app, (run, of), now)),
        Tap::StoppedAgo(run, minutes) => {
            let at = now.wall.at.minus(Span::minutes(minutes));
            ordered(app, BenchCommand::StopAt { run, at, by: Mender::Typed }, now);
        }
        Tap::Day(tap) => day::heard(app, tap, now),
        Tap::Waits(tap) => waits::heard(app, tap, now),
        Tap::Big => awake(app, Over::Big),
        Tap::LeaveBig => awake(app, Over::Nothing),
        Tap::Close => close(app),
    }
}

/// Back from another place: a day's list or what waits gives way to the clock, unless something is typed there.
pub fn come_back(app: &mut App) {
    let is_read = match &app.bench.over {
        Over::Day(view) => view.mend.is_none() && view.back.is_none(),
        Over::Waits(waiting) => waiting.typing.is_none(),
        _ => false,
    };
    if is_read {
        app.bench.over = Over::Nothing;
    }
}

/// Whether the screen stays awake for the bench: in big buttons.
pub fn wants_awake(app: &App) -> bool {
    app.place == Place::Bench && matches!(app.bench.over, Over::Big)
}

/// How the address says that the maker is at big buttons.
pub const BIG_AT: &str = "bench/big";

/// The book was read: big buttons stand again where the page was loaded anew at them and something runs or waits, else the bench.
pub fn opened(app: &mut App) {
    if !matches!(app.bench.over, Over::Big) {
        return;
    }
    let is_at_work = app.running().is_some() || app.shelf().waits().on().next().is_some();
    awake(app, if is_at_work { Over::Big } else { Over::Nothing });
    app.orders.push(Order::Remember(app.address()));
}

fn awake(app: &mut App, over: Over) {
    app.bench.over = over;
    app.orders.push(Order::Awake(wants_awake(app)));
}

/// One step back.
fn close(app: &mut App) {
    app.notice = None;
    app.bench.over = match std::mem::take(&mut app.bench.over) {
        Over::Starting(starting) if starting.asks.is_some() => Over::Starting(Box::new(Starting { asks: None, asked: None, ..*starting })),
        Over::Starting(starting) => starting.missed.map_or(Over::Nothing, day::list),
        Over::Day(view) if view.back.is_some() && view.mend.is_none() => view.back.map_or(Over::Nothing, Over::Starting),
        Over::Waits(waiting) => waiting.less().map_or(Over::Nothing, |waiting| Over::Waits(Box::new(waiting))),
        Over::Day(view) if view.mend.is_some() => Over::Day(Box::new(day::View { mend: None, ..*view })),
        _ => Over::Nothing,
    };
}

/// The work of a board.
pub fn work_of(choice: &Choice) -> Work {
    Work { op: choice.op.clone(), kind: choice.kind, stage: choice.stage, on: choice.on, person: None, rework: choice.rework }
}

/// Begins work, or switches to it.
pub fn start(app: &mut App, work: Work, now: Now) {
    start_ago(app, work, Span::ZERO, now);
}

/// The same, so long after the tap that meant it, as for which job it is was asked meanwhile.
fn start_ago(app: &mut App, work: Work, waited: Span, now: Now) {
    let (ago, said) = (app.bench.ago.plus(waited), words::started(&work.op));
    let big = matches!(app.bench.over, Over::Big);
    if app.order(&Command::Bench(BenchCommand::Start { work, ago }), now).is_some() {
        app.bench.over = if big { Over::Big } else { Over::Nothing };
        app.bench.late = ago::late(app, ago, now).or_else(|| ago::began_then(app, now));
        app.bench.disarm();
        app.orders.push(Order::Feel(Feel::Start));
        app.said = said;
    }
}

fn stop(app: &mut App, now: Now) {
    let Some(strip) = app.running() else { return };
    if app.order(&Command::Bench(BenchCommand::Stop { run: strip.run }), now).is_some() {
        app.orders.push(Order::Feel(Feel::Stop));
        // As it is written down: a clock that was set back meanwhile tells no less.
        let stood = sheet(app).hand.filter(|hand| hand.stood.as_ref().is_some_and(|run| run.id == strip.run));
        let as_written = || app.shelf().bench().run(strip.run).map_or(strip.worked, |run| run.worked(now.wall.at));
        let worked = stood.map_or_else(as_written, |hand| hand.stood_for);
        app.said = words::stopped(&strip.op, &app.speech.span(worked));
    }
}

fn done(app: &mut App, n: u32, now: Now) {
    coats::move_on(app, now);
    let Some(run) = app.running().map(|strip| strip.run) else { return };
    if app.order(&Command::Bench(BenchCommand::Done { run, n }), now).is_some() {
        let batch = sheet(app).running.map(|slab| slab.batch).unwrap_or_default();
        app.orders.push(Order::Feel(Feel::Count(batch.n)));
        app.said = words::done(&app.speech.count(batch.n), batch.of.map(|of| app.speech.count(of)).as_deref());
        if !matches!(app.bench.over, Over::Big) {
            app.bench.over = Over::Nothing;
        }
    }
}

fn on_run(app: &mut App, now: Now, feel: Feel, command: impl Fn(Id) -> BenchCommand) {
    let Some(run) = app.running().map(|strip| strip.run) else { return };
    if app.order(&Command::Bench(command(run)), now).is_some() {
        app.orders.push(Order::Feel(feel));
    }
}

/// Carries an order out and goes back to where it was asked for: the day's list, or the bench.
fn ordered(app: &mut App, command: BenchCommand, now: Now) {
    if app.order(&Command::Bench(command), now).is_some() {
        match &mut app.bench.over {
            Over::Day(view) => view.mend = None,
            over => *over = Over::Nothing,
        }
    }
}

/// Carries an order out and stays where it was asked for.
fn ordered_here(app: &mut App, command: &Command, now: Now) {
    drop(app.order(command, now));
}

fn pressed(app: &mut App, press: Press) {
    let sign = app.speech.sign();
    typed_over(app);
    match &mut app.bench.over {
        Over::Batch(typed) | Over::More(typed) | Over::InAll(typed) | Over::Helper(typed) | Over::StoppedAt(_, typed) => {
            typed.press(press, sign)
        }
        Over::Day(view) => view.press(press, sign),
        Over::Waits(waiting) => waiting.press(press, sign),
        Over::Starting(starting) => starting.typed.press(press, sign),
        _ => {}
    }
}

/// What was refused is typed over, and nothing says any more that it was.
fn typed_over(app: &mut App) {
    if let Some(Notice::Refused(_)) = app.notice {
        app.notice = None;
        under_the_thumb(app).into_iter().for_each(|typed| *typed = Typed::left(std::mem::take(&mut typed.text)));
    }
}

fn pad_done(app: &mut App, now: Now) {
    let sign = app.speech.sign();
    let currency = pay_currency(app);
    let count = |typed: &mut Typed| typed.take(|text| reading::count(text, sign, PILE_MOST));
    match &mut app.bench.over {
        Over::More(typed) => {
            if let Some(n) = count(typed) {
                waits::clamped_or_done(app, n, now);
            }
        }
        Over::Batch(typed) => {
            if let Some(n) = some(typed, sign) {
                batch_of(app, n, now);
            }
        }
        Over::InAll(typed) => {
            if let Some((n, run)) = count(typed).zip(app.running()) {
                in_all(app, (run.run, n), now);
            }
        }
        Over::Helper(typed) => {
            let pay = if typed.text.is_empty() { Some(None) } else { typed.take(|text| reading::money(text, currency, sign)).map(Some) };
            if let Some(pay) = pay.filter(|pay| is_meant(app, *pay)) {
                helper_joins(app, pay, now);
            }
        }
        Over::StoppedAt(run, typed) => {
            let (run, text) = (*run, typed.text.clone());
            let Some(began) = run_of(app, run) else { return };
            said(app, ends::stop(app, &began, &text), now);
        }
        Over::Day(_) => mending::done(app, now),
        Over::Waits(_) => waits::typed(app, now),
        _ => {}
    }
}

/// So many were done in a run; nothing is written where that stands already.
pub(super) fn in_all(app: &mut App, (run, n): (Id, Count), now: Now) {
    if run_of(app, run).is_some_and(|run| run.done() != n) {
        ordered(app, BenchCommand::DoneInAll { run, n }, now);
    } else {
        close(app);
    }
}

/// A count of one or more.
pub(super) fn some(typed: &mut Typed, sign: reading::Sign) -> Option<Count> {
    let (least, most) = (reading::Quantity::Count(1), reading::Quantity::Count(PILE_MOST));
    typed.take(|text| match reading::count(text, sign, PILE_MOST)? {
        0 => Err(reading::Misread::OutOfRange { met: None, least, most, might_be: None }),
        n => Ok(n),
    })
}

/// The operation that runs, or that of the run whose line is opened, has so many pieces on its job.
fn batch_of(app: &mut App, n: Count, now: Now) {
    let opened = if let Over::Day(view) = &app.bench.over { view.open.and_then(|run| run_of(app, run)) } else { None };
    let work = opened.or(sheet(app).running.map(|slab| slab.run)).map(|run| run.work);
    if let Some(Work { on: On::Job(job), op, .. }) = work {
        ordered(app, BenchCommand::PlanBatch { job, op, n }, now);
    }
}

/// A moment that was typed: written down, asked about where it makes a run longer than a working day, or said why not.
fn said(app: &mut App, meant: Result<ends::Meant, reading::Misread>, now: Now) {
    match meant {
        Err(why) => wrong(app, why),
        // What has not come is refused.
        Ok(said) if said.is_asked() && said.at.at <= now.wall.at => app.bench.asked = true,
        Ok(said) => self::meant(app, said.at.at, now),
    }
}

/// Why what is under the thumb was not taken.
fn wrong(app: &mut App, why: reading::Misread) {
    if let Some(typed) = under_the_thumb(app) {
        typed.wrong = Some(why);
    }
}

/// The time that is typed, or what is typed in the day's list.
fn under_the_thumb(app: &mut App) -> Option<&mut Typed> {
    match &mut app.bench.over {
        Over::StoppedAt(_, typed) => Some(typed),
        Over::Starting(starting) => Some(&mut starting.typed),
        Over::Day(view) => view.typed(),
        _ => None,
    }
}

/// Writes down the moment that was meant.
fn meant(app: &mut App, at: Moment, now: Now) {
    match &app.bench.over {
        Over::StoppedAt(run, _) => {
            let run = *run;
            ordered(app, BenchCommand::StopAt { run, at, by: Mender::Typed }, now);
        }
        Over::Day(_) => mending::at(app, at, now),
        Over::Starting(_) => starting::meant(app, at, now),
        _ => {}
    }
}

/// A helper joins the run that goes on, for so much an hour or for nothing.
fn helper_joins(app: &mut App, pay: Option<Money>, now: Now) {
    on_run(app, now, Feel::Start, |run| BenchCommand::HelperJoins { run, person: None, pay });
    if app.notice.is_none() {
        app.bench.over = Over::Nothing;
    }
}

/// Pay of more than ten times what is usual (ours) is asked about once: usual is what the last one was paid, else the maker's own pay, else
/// a hundred, or ten thousand where no smaller coin is.
fn is_meant(app: &mut App, pay: Option<Money>) -> bool {
    let Some(pay) = pay else { return true };
    let (bench, currency) = (app.shelf().bench(), pay.currency());
    let usual = bench.paid_last(currency).map(Money::amount).or_else(|| app.shelf().workshop().pay(currency));
    let none_said = if currency.digits() == 0 { Decimal::from(10_000) } else { Decimal::ONE_HUNDRED };
    let is_much = usual.unwrap_or(none_said).saturating_mul(Decimal::TEN) < pay.amount();
    drop(bench);
    let was_asked = std::mem::replace(&mut app.bench.asked, is_much);
    app.bench.asked &= !was_asked;
    !is_much || was_asked
}

/// A helper leaves what runs: the one who is named, else who came last. One who has only just come by the clock leaves with a tap alone.
fn leaves(app: &mut App, helper: Option<Id>, now: Now) {
    let Some(run) = app.running().and_then(|strip| run_of(app, strip.run)) else { return };
    let there = run.heads.iter().rev().find(|head| head.to.is_none() && helper.is_none_or(|helper| head.id == helper));
    let named = there.filter(|head| head.from < now.wall.at).map(|head| head.id);
    on_run(app, now, Feel::Stop, |run| match named {
        Some(helper) => BenchCommand::MendHelper { run, helper, from: None, to: Some(now.wall.at), pay: None },
        None => BenchCommand::HelperLeaves { run, person: None },
    });
}

/// Who was at the run before works along here too; where this job is reckoned in another currency their pay is asked.
fn helpers_stay(app: &mut App, id: Id, now: Now) {
    let bench = app.shelf().bench();
    let Some(run) = bench.run(id) else { return };
    let currency = pay_on(app, run.work.on);
    let is_payable = bench.at_the_switch(run).iter().all(|head| head.pay.is_none_or(|pay| pay.currency() == currency));
    if is_payable || !run.is_running() {
        drop(bench);
        answered(app, BenchCommand::HelpersStay { run: id }, now);
    } else {
        app.bench.over = Over::Helper(Typed::default());
    }
}

/// Carries out what was answered of helpers, where it was asked.
fn answered(app: &mut App, command: BenchCommand, now: Now) {
    if app.order(&Command::Bench(command), now).is_some() {
        app.orders.push(Order::Feel(Feel::Start));
    }
}

/// What a helper is paid in who joins what runs.
pub fn pay_currency(app: &App) -> Currency {
    pay_on(app, app.running().and_then(|strip| run_of(app, strip.run)).map_or(On::Nothing, |run| run.work.on))
}

/// What a helper is paid in: as the job or the haul is reckoned, else as the workshop.
pub(super) fn pay_on(app: &App, on: On) -> Currency {
    let book = &app.shelf().book;
    let of = match on {
        On::Job(job) => fivebar_core::ledger::fold::job(book, job).map(|job| job.currency),
        On::Haul(haul) => fivebar_core::ledger::fold::haul(book, haul).map(|haul| haul.currency),
        On::Nothing => None,
    };
    of.unwrap_or(app.begins_with().0)
}

fn run_of(app: &App, run: Id) -> Option<Run> {
    app.shelf().bench().run(run).cloned()
}
