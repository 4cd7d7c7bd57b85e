//! Take back takes back the last thing that was done, on whatever page it is said: a tick at the saw is such a thing, and so is what is
//! written after it.

use super::later::{again, order, planned, take_back};
use super::*;
use crate::app::bench::Tap as Bench;
use fivebar_core::ledger::decide::HaulCommand;

fn now(app: &App) -> Now {
    Now { wall: app.now, chance: [204; 10] }
}

fn say(app: &mut App, message: Msg) {
    let at = now(app);
    app.heard(message, at);
}

/// Where a maker can go after a tick.
fn ways(app: &App) -> Vec<(&'static str, Vec<Msg>)> {
    let plan = |tap: Tap| Msg::Jobs(Jobs::Plan(tap));
    let other = app.shelf().shop(app.now.at).job(app.jobs.open.unwrap()).unwrap().plans[0].id;
    vec![
        ("the plan", vec![]),
        ("the other plan", vec![plan(Tap::Kept(other))]),
        ("what is asked", vec![plan(Tap::Change)]),
        ("the job's wood", vec![Msg::Jobs(Jobs::Room(Room::Wood))]),
        ("the job's hours", vec![Msg::Jobs(Jobs::Room(Room::Hours))]),
        ("the job", vec![Msg::Jobs(Jobs::Room(Room::Wood)), Msg::Key("Escape".into())]),
        ("the list of jobs", vec![Msg::Go(Place::Jobs)]),
        ("the yard", vec![Msg::Go(Place::Count)]),
        ("the bench", vec![Msg::Go(Place::Bench)]),
        ("big buttons", vec![Msg::Go(Place::Bench), Msg::Bench(Bench::Big)]),
        ("prices", vec![Msg::Go(Place::Price)]),
        ("the workshop", vec![Msg::Go(Place::Workshop)]),
    ]
}

/// Ticks of each plan of the job that are in the book, as they lie beside it.
fn ticks(app: &App) -> Vec<usize> {
    let plans = app.shelf().shop(app.now.at).job(app.jobs.open.unwrap_or(app.plan.given.as_ref().unwrap().ask.job)).unwrap().plans;
    plans.iter().map(|plan| beside::ticks(app, plan).lines_done()).collect()
}

/// Of two plans in use the second is ticked.
pub(super) fn two_plans() -> App {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true), Tap::Tick(0)]);
    app
}

#[track_caller]
fn check(way: &str, told: bool, back: fn(&mut App)) {
    let mut app = two_plans();
    let (_, messages) = ways(&app).into_iter().find(|(name, _)| *name == way).unwrap();
    let entries = app.own.book.len();
    messages.into_iter().for_each(|message| say(&mut app, message));
    assert_eq!(ticks(&app), [0, 1], "{way}");
    let shown = page(&app);
    assert!(!told || shown.contains("tick of ") && !shown.contains("a plan, "), "{way}: {shown}");
    back(&mut app);
    assert_eq!((ticks(&app), app.own.book.len()), (vec![0, 0], entries), "{way}: the plans stand");
    let shown = page(&app);
    assert!(!told || shown.contains("taken back: tick of "), "{way}: {shown}");
    say(&mut app, Msg::Common(Common::PutBack));
    assert_eq!((ticks(&app), app.own.book.len()), (vec![0, 1], entries), "{way}: done again");
}

#[test]
fn take_back_is_the_last_thing_done_on_whatever_page() {
    for (way, _) in ways(&two_plans()) {
        // Where only figures are asked there is no bar; a key takes back there too.
        let told = !["what is asked", "the workshop"].contains(&way);
        check(way, told, take_back);
        check(way, told, |app| say(app, Msg::Key("u".into())));
    }
}

/// On a page that is opened anew a tick is no act any more: a plan of which boards are cut goes back no more than where it is dropped.
#[test]
fn a_plan_with_cut_boards_is_not_taken_back_whole() {
    for by_key in [false, true] {
        let mut app = planned("");
        heard(&mut app, [Tap::Use, Tap::Tick(0)]);
        let mut app = super::resumed::anew(&app);
        let back = |app: &mut App| if by_key { say(app, Msg::Key("u".into())) } else { take_back(app) };
        back(&mut app);
        assert_eq!(super::later::strips_of(&app), (8, 4));
        let shown = page(&app);
        assert!(shown.contains("2 boards are ticked as cut.") && shown.contains("Put back the 2 not cut"), "{shown}");
        heard(&mut app, [Tap::DropAnd(false)]);
        assert_eq!((super::later::strips_of(&app), in_use_by(&app, app.jobs.open.unwrap()).len()), ((10, 2), 0));
        back(&mut app);
        heard(&mut app, [Tap::Open]);
        assert_eq!((super::later::strips_of(&app), app.plan.ticked.lines_done()), ((8, 4), 1));
    }
}

/// Of two plans each has its list at the saw, by its own key on the job's page and in the list of jobs.
#[test]
fn each_of_two_plans_has_its_key_to_the_saw() {
    let app = two_plans();
    let job = app.jobs.open.unwrap();
    let lists = lists_left(&app);
    assert_eq!(lists.iter().map(|it| it.job).collect::<Vec<_>>(), [job, job]);
    assert_ne!(lists[0].plan, lists[1].plan);
    for (way, messages) in ways(&app).into_iter().filter(|(way, _)| ["the job", "the list of jobs"].contains(way)) {
        let mut app = two_plans();
        messages.into_iter().for_each(|message| say(&mut app, message));
        let shown = page(&app);
        assert_eq!(shown.matches("lines left to cut</span><span class=\"s\">A top in rows, used").count(), 2, "{way}: {shown}");
        for it in lists_left(&app) {
            heard(&mut app, [Tap::SawOf(it.job, it.plan)]);
            assert_eq!((app.plan.used, app.plan.page), (Some(it.plan), Page::Answer), "{way}");
            assert!(page(&app).contains("At the saw, mm"), "{way}");
        }
    }
}

/// What is written after a tick is what goes back; and after that nothing of before.
#[test]
fn what_is_written_after_a_tick_is_what_goes_back() {
    let mut app = two_plans();
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    let job = app.jobs.open.unwrap();
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 1 }));
    say(&mut app, Msg::Jobs(Jobs::Room(Room::Wood)));
    assert!(!page(&app).contains("tick of "), "{}", page(&app));
    take_back(&mut app);
    assert_eq!(ticks(&app), [0, 1]);
}

/// A tick of a plan that is not used goes with the plan: one that is found anew has none to take back.
#[test]
fn a_tick_goes_with_a_plan_that_was_never_used() {
    let mut app = planned("");
    heard(&mut app, [Tap::Tick(0)]);
    say(&mut app, Msg::Jobs(Jobs::Room(Room::Wood)));
    assert!(page(&app).contains("tick of "), "{}", page(&app));
    take_back(&mut app);
    heard(&mut app, [Tap::Open]);
    assert!(!page(&app).contains("tick done"), "{}", page(&app));
    heard(&mut app, [Tap::Tick(0), Tap::Go]);
    say(&mut app, Msg::Jobs(Jobs::Room(Room::Wood)));
    assert!(!page(&app).contains("tick of "), "{}", page(&app));
}
