//! Bench, heard: what a tap at the bench changes. A start is never held up by a question.

pub mod day;
pub mod starting;

use super::App;
use super::entry::Typed;
use super::order::{Feel, Order};
use crate::parts::pad::Press;
use fivebar_core::bench::{Mender, On, Work};
use fivebar_core::ledger::decide::{BenchCommand, Command, Now};
use fivebar_core::quantity::{Clock, Day, Id, Moment, PILE_MOST, Span, reading};
use fivebar_core::sheet::bench::{BenchSheet, Choice, Seen, bench};
use starting::{Starting, StartingTap};

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
    /// When a run stopped, by the clock.
    StoppedAt(Id, Typed),
    /// The day's list, with the run that is opened.
    Day(Day, Option<Id>),
    /// An end of a run being put right.
    Mending(day::Mending),
    /// Four large keys.
    Big,
}

/// The state of Bench that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bench {
    pub over: Over,
    /// How long ago the next start was.
    pub ago: Span,
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
    HelperJoins,
    HelperLeaves,
    /// The end that was proposed for a run.
    Proposed(Id, Moment),
    /// A run is right as it stands.
    Right(Id),
    StoppedAt(Id),
    Press(Press),
    PadDone,
    Day(day::DayTap),
    Big,
    LeaveBig,
    Close,
}

/// The bench of the maker as it stands.
pub fn sheet(app: &App) -> BenchSheet {
    bench(&app.shelf().book, Seen { now: app.now, person: None, closing: None })
}

/// Takes in a tap on Bench.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::Board(choice) => start(app, work_of(&choice), now),
        Tap::Other => app.bench.over = Over::Starting(Box::default()),
        Tap::Starting(tap) => starting::heard(app, tap, now),
        Tap::Ago(minutes) => {
            let ago = Span::minutes(minutes);
            app.bench.ago = if app.bench.ago == ago { Span::ZERO } else { ago };
        }
        Tap::Stop => on_run(app, now, Feel::Stop, |run| BenchCommand::Stop { run }),
        Tap::Done => on_run(app, now, Feel::Count(1), |run| BenchCommand::Done { run, n: 1 }),
        Tap::MoreDone => app.bench.over = Over::More(Typed::default()),
        Tap::AskBatch => app.bench.over = Over::Batch(Typed::default()),
        Tap::HelperJoins => on_run(app, now, Feel::Start, |run| BenchCommand::HelperJoins { run, person: None, pay: None }),
        Tap::HelperLeaves => on_run(app, now, Feel::Stop, |run| BenchCommand::HelperLeaves { run, person: None }),
        Tap::Proposed(run, at) => ordered(app, BenchCommand::StopAt { run, at, by: Mender::Proposed }, now),
        Tap::Right(run) => ordered(app, BenchCommand::Confirm { run }, now),
        Tap::StoppedAt(run) => app.bench.over = Over::StoppedAt(run, Typed::default()),
        Tap::Press(press) => pressed(app, press),
        Tap::PadDone => pad_done(app, now),
        Tap::Day(tap) => day::heard(app, tap, now),
        Tap::Big => {
            app.bench.over = Over::Big;
            app.orders.push(Order::Awake(true));
        }
        Tap::LeaveBig | Tap::Close => {
            app.bench.over = Over::Nothing;
            app.orders.push(Order::Awake(false));
        }
    }
}

/// The work of a board.
pub fn work_of(choice: &Choice) -> Work {
    Work { op: choice.op.clone(), kind: choice.kind, stage: choice.stage, on: choice.on, person: None, rework: false }
}

/// Begins work, or switches to it.
pub fn start(app: &mut App, work: Work, now: Now) {
    let ago = app.bench.ago;
    if app.order(&Command::Bench(BenchCommand::Start { work, ago }), now).is_some() {
        app.bench = Bench::default();
        app.orders.push(Order::Feel(Feel::Start));
    }
}

fn running(app: &App) -> Option<Id> {
    app.running().map(|strip| strip.run)
}

fn on_run(app: &mut App, now: Now, feel: Feel, command: impl Fn(Id) -> BenchCommand) {
    let Some(run) = running(app) else { return };
    if app.order(&Command::Bench(command(run)), now).is_some() {
        app.orders.push(Order::Feel(feel));
    }
}

/// Carries an order out and goes back to the bench.
pub fn ordered(app: &mut App, command: BenchCommand, now: Now) {
    if app.order(&Command::Bench(command), now).is_some() {
        app.bench.over = Over::Nothing;
    }
}

fn pressed(app: &mut App, press: Press) {
    let sign = app.speech.sign();
    match &mut app.bench.over {
        Over::Batch(typed) | Over::More(typed) | Over::StoppedAt(_, typed) => typed.press(press, sign),
        Over::Mending(mending) => mending.typed.press(press, sign),
        Over::Starting(starting) => starting.typed.press(press, sign),
        _ => {}
    }
}

fn pad_done(app: &mut App, now: Now) {
    let sign = app.speech.sign();
    let slab = sheet(app).running;
    let command = match (&mut app.bench.over, slab) {
        (Over::More(typed), Some(slab)) => {
            typed.take(|text| reading::count(text, sign, PILE_MOST)).map(|n| BenchCommand::Done { run: slab.run.id, n })
        }
        (Over::Batch(typed), Some(slab)) => {
            let On::Job(job) = slab.run.work.on else { return };
            let op = slab.run.work.op;
            typed.take(|text| reading::count(text, sign, PILE_MOST)).map(|n| BenchCommand::PlanBatch { job, op, n })
        }
        (Over::StoppedAt(run, typed), _) => {
            let run = *run;
            let clock = typed.take(reading::clock);
            return stopped_at(app, run, clock, now);
        }
        (Over::Mending(_), _) => return day::mended(app, now),
        _ => None,
    };
    if let Some(command) = command {
        ordered(app, command, now);
    }
}

/// A clock time of the day a run began; one before its start is meant for the day after.
fn stopped_at(app: &mut App, run: Id, clock: Option<Clock>, now: Now) {
    let Some((clock, started)) = clock.zip(app.shelf().bench().run(run).map(|run| run.started)) else { return };
    let same = started.day().at(clock, started.offset);
    let at = if same < started.at { started.day().next().at(clock, started.offset) } else { same };
    ordered(app, BenchCommand::StopAt { run, at, by: Mender::Typed }, now);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Msg;
    use crate::app::told::{after, nth};
    use crate::parts::Place;
    use fivebar_core::bench::{Kind, Stage};
    use fivebar_core::ledger::decide::JobCommand;
    use fivebar_core::ledger::kind::job::For;
    use fivebar_core::quantity::{Currency, Offset, Units, Wall};

    fn tap(tap: Tap) -> Msg {
        Msg::Bench(tap)
    }

    fn starting(tap: StartingTap) -> Msg {
        Msg::Bench(Tap::Starting(tap))
    }

    /// An app with one job, five stands.
    fn with_job() -> (App, On) {
        let mut app = App::for_tests(Place::Bench);
        let (currency, units) = (Currency::USD, Units::Inch);
        let began = JobCommand::Begin { name: "stands".into(), currency, units, pieces: 5, made_for: For::Spec };
        let written = app.order(&Command::Job(began), nth(0)).unwrap();
        app.orders.clear();
        (app, On::Job(written.act))
    }

    fn sand(app: &mut App, on: On) -> String {
        after(app, [tap(Tap::Other), starting(StartingTap::On(on)), starting(StartingTap::Op("Sand".into(), Kind::Make, Stage::Make))])
    }

    /// The moment a test looks, so many minutes after nine.
    fn minutes(n: i64) -> Now {
        let wall = Wall::new(nth(0).wall.at.plus(Span::minutes(n)), Offset::minutes(-300).unwrap());
        Now { wall, chance: [9, 9, 2, 3, 4, 5, 6, 7, u8::try_from(n % 200).unwrap(), 0] }
    }

    #[test]
    fn three_taps_start_and_one_stops() {
        let (mut app, on) = with_job();
        assert!(after(&mut app, []).contains("Nothing runs"));
        let shown = sand(&mut app, on);
        assert!(shown.contains("stands") && shown.contains(r#"class="slab""#), "{shown}");
        assert!(shown.contains("Hardwood dust"), "the first dusty run of the day");
        let shown = after(&mut app, [tap(Tap::Stop)]);
        assert!(shown.contains("Carry on: Sand"), "{shown}");
    }

    #[test]
    fn a_board_switches_in_one_act_and_is_taken_back_whole() {
        let (mut app, on) = with_job();
        sand(&mut app, on);
        let sanding = sheet(&app).running.unwrap().run.id;
        let glue = Choice {
            op: "Glue up".into(),
            kind: Kind::Make,
            stage: Stage::Make,
            on,
            name: None,
            batch: sheet(&app).running.unwrap().batch,
        };
        app.heard(tap(Tap::Board(glue)), minutes(10));
        assert_eq!(sheet(&app).running.unwrap().run.work.op, "Glue up");
        app.heard(Msg::Common(crate::app::Common::TakeBack), minutes(11));
        assert_eq!(sheet(&app).running.unwrap().run.id, sanding);
    }

    #[test]
    fn a_start_may_be_said_late() {
        let (mut app, on) = with_job();
        app.heard(tap(Tap::Ago(15)), minutes(20));
        for message in [tap(Tap::Other), starting(StartingTap::On(on)), starting(StartingTap::Op("Bore".into(), Kind::Make, Stage::Make))] {
            app.heard(message, minutes(20));
        }
        assert_eq!(sheet(&app).running.unwrap().worked, Span::minutes(15));
        assert_eq!(app.bench.ago, Span::ZERO);
    }

    #[test]
    fn pieces_are_notched_and_the_batch_is_asked_once() {
        let (mut app, on) = with_job();
        sand(&mut app, on);
        let shown = after(&mut app, [tap(Tap::Done), tap(Tap::AskBatch), tap(Tap::Press(Press::Digit(5))), tap(Tap::PadDone)]);
        assert!(shown.contains("1 of 5 done"), "{shown}");
        let shown = after(&mut app, [tap(Tap::MoreDone), tap(Tap::Press(Press::Digit(3))), tap(Tap::PadDone)]);
        assert!(shown.contains("4 of 5 done"), "{shown}");
    }

    #[test]
    fn a_forgotten_stop_is_asked_about_and_never_blocks_a_start() {
        let (mut app, on) = with_job();
        sand(&mut app, on);
        let run = sheet(&app).running.unwrap().run.id;
        app.heard(tap(Tap::Done), minutes(47));
        app.heard(Msg::Go(Place::Bench), minutes(240));
        let shown = crate::screens::page(&app).html();
        assert!(shown.contains("Sand shows 4 h") && shown.contains("47 min, until"), "{shown}");
        let wrong = sheet(&app).running.unwrap().wrong.unwrap();
        app.heard(tap(Tap::Proposed(run, wrong.at)), minutes(241));
        assert_eq!(sheet(&app).today.as_minutes(), 47);
    }

    #[test]
    fn the_day_lists_mends_and_strikes() {
        let (mut app, on) = with_job();
        sand(&mut app, on);
        let run = sheet(&app).running.unwrap().run.id;
        app.heard(tap(Tap::Stop), minutes(60));
        let today = app.now.day();
        app.heard(tap(Tap::Day(day::DayTap::Show(today))), minutes(61));
        app.heard(tap(Tap::Day(day::DayTap::Open(run))), minutes(61));
        assert!(crate::screens::page(&app).html().contains("the clock said 09:00 to 10:00"));
        app.heard(tap(Tap::Day(day::DayTap::Mend { run, start: false })), minutes(62));
        for digit in [0, 9, 3, 0] {
            app.heard(tap(Tap::Press(Press::Digit(digit))), minutes(62));
        }
        app.heard(tap(Tap::PadDone), minutes(62));
        assert!(crate::screens::page(&app).html().contains("30 min"), "mended by the clock");
        app.heard(tap(Tap::Day(day::DayTap::Strike(run))), minutes(63));
        assert!(crate::screens::page(&app).html().contains("Nothing logged on this day."));
    }
}
