//! A page that is loaded anew offers what it offered before: the same act, to be taken back or done again, with the same outcome.

use super::later::{again, order, planned, strips_of};
use super::*;
use crate::app::order::Which;
use fivebar_core::bench::{Kind, On, Stage, Work};
use fivebar_core::ledger::decide::{BenchCommand, BookCommand, HaulCommand, JobCommand};
use fivebar_core::quantity::Span;

/// What is said, each time by other chance.
fn say(app: &mut App, message: Common) {
    let nth = u8::try_from(app.own.book.len()).unwrap();
    app.heard(Msg::Common(message), Now { wall: app.now, chance: [nth.wrapping_add(60); 10] });
}

fn back(app: &mut App) {
    say(app, Common::TakeBack);
}

fn forth(app: &mut App) {
    say(app, Common::PutBack);
}

/// The page as it opens anew, a minute later.
pub(super) fn anew(app: &App) -> App {
    let mut anew = App::for_tests(Place::Jobs);
    (anew.now, anew.here, anew.jobs.open) = (app.now, app.here.clone(), app.jobs.open);
    anew.is_open = false;
    let (device, book) = (Device::new([1; 8]), Box::new(app.own.book.clone()));
    anew.told(crate::app::news::News::Opened { which: Which::Own, device, book, names: Sorted::new() });
    anew
}

fn standing(app: &App) -> Vec<Id> {
    let turns = |fact: &Fact| matches!(fact, Fact::Struck(_) | Fact::Restored(_));
    app.own.book.entries().filter(|(entry, struck)| !struck && !turns(&entry.fact)).map(|(entry, _)| entry.id).collect()
}

#[track_caller]
fn check(name: &str, did: fn(&mut App)) {
    let mut app = planned("");
    did(&mut app);
    let mut again = anew(&app);
    let offers = |app: &App| (app.own.last_act, app.own.taken_back.clone(), app.own.last_tick);
    assert_eq!(offers(&again), offers(&app), "{name}");
    let stood = standing(&app);
    let is_back = !app.own.taken_back.is_empty() || app.own.last_tick.is_some_and(|tick| tick.back);
    for turn in if is_back { [forth, back] } else { [back, forth] } {
        let before = standing(&app);
        turn(&mut app);
        turn(&mut again);
        assert_ne!(standing(&app), before, "{name}: it does something");
        assert_eq!(standing(&again), standing(&app), "{name}");
        again = anew(&again);
    }
    assert_eq!(standing(&app), stood, "{name}: and back again");
}

fn free(app: &mut App, n: u32) {
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    let job = app.jobs.open.unwrap();
    order(app, Command::Haul(HaulCommand::Free { haul, pile, job, n }));
}

fn instead(app: &mut App) {
    heard(app, [Tap::Use]);
    again(app);
    heard(app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!((in_use_by(app, app.jobs.open.unwrap()).len(), strips_of(app).1), (1, 4));
}

fn dropped(app: &mut App, stays: bool) {
    heard(app, [Tap::Use, Tap::Tick(0), Tap::Drop, Tap::DropAnd(stays)]);
}

/// Five pieces in three goes, and then that they were two.
fn fewer(app: &mut App) {
    let work = Work { op: "Sand".into(), kind: Kind::Make, on: On::Nothing, stage: Stage::Make, person: None, rework: false };
    order(app, Command::Bench(BenchCommand::Start { work, ago: Span::ZERO }));
    let run = app.running().unwrap().run;
    for n in [2, 1, 2] {
        order(app, Command::Bench(BenchCommand::Done { run, n }));
    }
    order(app, Command::Bench(BenchCommand::DoneInAll { run, n: 2 }));
    assert_eq!(done(app), 2);
}

fn done(app: &App) -> u32 {
    app.own.bench().runs().map(|run| run.done()).sum()
}

/// An operation that was planned twice is struck with both.
fn struck(app: &mut App) {
    let job = app.jobs.open.unwrap();
    for minutes in [30, 40] {
        let facts = fivebar_core::ledger::kind::job::OperationPlanned {
            job,
            op: "Sand".into(),
            kind: Kind::Make,
            span: Some(Span::minutes(minutes)),
            stage: Some(Stage::Make),
            pieces: None,
        };
        order(app, Command::Job(JobCommand::PlanOperation(facts)));
    }
    order(app, Command::Job(JobCommand::StrikeOperation { job, op: "Sand".into() }));
}

#[test]
fn a_page_loaded_anew_offers_the_act_that_was_done_last() {
    check("a plan is used", |app| drop(heard(app, [Tap::Use])));
    check("and taken back", |app| {
        heard(app, [Tap::Use]);
        back(app);
    });
    check("a plan is used instead of another", instead);
    check("and taken back", |app| {
        instead(app);
        back(app);
    });
    check("and done again", |app| {
        instead(app);
        back(app);
        forth(app);
    });
    check("boards of a plan are put back", |app| {
        heard(app, [Tap::Use]);
        free(app, 2);
    });
    check("and are in the job again", |app| {
        heard(app, [Tap::Use]);
        free(app, 2);
        back(app);
    });
    check("boards are taken again", |app| {
        heard(app, [Tap::Use]);
        free(app, 2);
        heard(app, [Tap::TakeAgain]);
    });
    check("a plan with boards put back is taken back", |app| {
        heard(app, [Tap::Use]);
        let plan = app.plan.used.unwrap();
        free(app, 2);
        let act = app.own.book.entry(plan).unwrap().0.act.unwrap();
        order(app, Command::Book(BookCommand::TakeBack { act }));
        app.own.took_back(act);
    });
}

#[test]
fn a_page_loaded_anew_offers_the_plan_that_was_dropped() {
    check("dropped, its wood stays", |app| dropped(app, true));
    check("and is in use again", |app| {
        dropped(app, true);
        back(app);
    });
    check("and is dropped again", |app| {
        dropped(app, true);
        back(app);
        forth(app);
    });
    check("dropped, its wood goes back", |app| dropped(app, false));
    check("and is in use again", |app| {
        dropped(app, false);
        forth(app);
    });
}

#[test]
fn a_page_loaded_anew_offers_what_was_struck() {
    check("fewer were done", fewer);
    check("and that is taken back", |app| {
        fewer(app);
        back(app);
        assert_eq!(done(app), 5);
    });
    check("and done again", |app| {
        fewer(app);
        back(app);
        forth(app);
        assert_eq!(done(app), 2);
    });
    check("an operation is struck", struck);
}
