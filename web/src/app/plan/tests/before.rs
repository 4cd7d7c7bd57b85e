//! What becomes of the plans before one that is used: asked about where they may be cut, and each with its own ticks.

use super::later::{again, order, planned, strips_of, take_back};
use super::*;
use fivebar_core::ledger::decide::HaulCommand;

/// The plans of the job that are used.
fn used(app: &App) -> usize {
    let plans = app.shelf().shop(app.now.at).job(app.jobs.open.unwrap()).unwrap().plans;
    plans.iter().filter(|plan| plan.used).count()
}

/// All strips were taken by hand, and are planned with.
pub(super) fn of_own() -> App {
    let mut app = opened("take 12 strips for tray\n");
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let own = all.iter().find(|source| source.in_job).unwrap().which();
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Turn(own), Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go]);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    app
}

/// All strips were taken by hand: the plan of them takes nothing from the rack, and is cut all the same.
#[test]
fn a_cut_plan_of_the_jobs_own_pieces_is_not_taken_back_unasked() {
    for (stays, then) in [(true, 2), (false, 1)] {
        let mut app = of_own();
        heard(&mut app, [Tap::Use, Tap::Tick(0)]);
        again(&mut app);
        heard(&mut app, [Tap::Use]);
        assert!(page(&app).contains("The plan before is of 4 pieces the job had already. Does it stay?"), "{}", page(&app));
        assert_eq!(used(&app), 1);
        heard(&mut app, [Tap::UseAnd(stays)]);
        assert_eq!(used(&app), then, "{}", page(&app));
        take_back(&mut app);
        assert_eq!(used(&app), 1);
    }
}

/// Nothing of it is ticked: it goes back unasked, and the key says so.
#[test]
fn that_a_plan_of_the_jobs_own_pieces_goes_back_is_said() {
    let mut app = of_own();
    heard(&mut app, [Tap::Use]);
    again(&mut app);
    assert!(page(&app).contains("in the job already, in place of the plan before"), "{}", page(&app));
    heard(&mut app, [Tap::Use]);
    assert_eq!(used(&app), 1);
}

/// A second plan of the same cuts beside the first is not cut because the first is; nor after the page was killed.
#[test]
fn ticks_do_not_pass_over_to_new_wood() {
    let mut app = planned("");
    let (job, lines) = (app.jobs.open.unwrap(), app.plan.found.as_ref().unwrap().sheet.lines.len());
    heard(&mut app, [Tap::Use]);
    heard(&mut app, (0..lines).map(Tap::Tick));
    assert!(cuts_left(&app).is_empty() && page(&app).contains("tick done"));
    again(&mut app);
    assert!(!page(&app).contains("tick done"), "{}", page(&app));
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    assert_eq!(cuts_left(&app), [(job, lines, lines)]);
    let mut app = reloaded(&app);
    heard(&mut app, [Tap::Open]);
    assert!(page(&app).contains("The job has this wood") && !page(&app).contains("tick done"), "{}", page(&app));
    heard(&mut app, [Tap::Tick(0)]);
    assert_eq!(cuts_left(&app), [(job, lines - 1, lines)]);
}

/// The cuts that are said to be left are those the way to the saw leads to, also where the same was planned again since.
#[test]
fn the_way_to_the_saw_leads_to_the_plan_with_cuts_left() {
    let mut app = planned("");
    let job = app.jobs.open.unwrap();
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    again(&mut app);
    for mut app in [reloaded(&app), app] {
        heard(&mut app, [Tap::Saw(job)]);
        assert!(page(&app).contains("The job has this wood") && page(&app).contains("tick done"), "{}", page(&app));
    }
}

/// Two plans took four each, and four were put back: four are there to go back, not eight.
#[test]
fn pieces_of_several_plans_are_counted_once() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    let (Lying { haul, pile }, job) = (app.plan.given.as_ref().unwrap().sources[0].which().0, app.jobs.open.unwrap());
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 4 }));
    again(&mut app);
    assert!(page(&app).contains("takes 4 pieces, asks about 4 of the plan before"), "{}", page(&app));
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!(strips_of(&app), (8, 4));
}

/// Both plans whose wood the job has are a tap away, each with its ticks; what is left to cut of the first is not lost by the second.
#[test]
fn each_plan_whose_wood_the_job_has_is_a_tap_away() {
    let mut app = planned("");
    let (job, lines) = (app.jobs.open.unwrap(), app.plan.found.as_ref().unwrap().sheet.lines.len());
    heard(&mut app, [Tap::Use]);
    let first = app.plan.used.unwrap();
    assert!(!page(&app).contains("Its other plans"), "{}", page(&app));
    again(&mut app);
    assert!(page(&app).contains("Its other plans"), "from the one that is not used: {}", page(&app));
    let unused = app.plan.clone();
    heard(&mut app, [Tap::Kept(first)]);
    assert!(page(&app).contains("The job has this wood") && !page(&app).contains("Its other plans"), "{}", page(&app));
    app.plan = unused;
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    let first = app.plan.used.unwrap();
    heard(&mut app, [Tap::Tick(0)]);
    again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
    let second = app.plan.used.unwrap();
    assert_eq!(cuts_left(&app), [(job, lines - 1 + lines, 2 * lines)], "of both");
    heard(&mut app, (0..lines).map(Tap::Tick));
    assert_eq!(cuts_left(&app), [(job, lines - 1, lines)], "of the first");
    for mut app in [reloaded(&app), app] {
        heard(&mut app, [Tap::Saw(job)]);
        assert_eq!((app.plan.used, app.plan.ticked.lines_done()), (Some(first), 1));
        let scrolled = app.plan.turned_to;
        heard(&mut app, [Tap::Kept(second)]);
        assert_ne!(app.plan.turned_to, scrolled, "its page begins at its top");
        assert_eq!((app.plan.used, app.plan.ticked.lines_done()), (Some(second), lines));
        assert!(page(&app).contains("Its other plans"), "{}", page(&app));
    }
}

/// From a plan that is being asked the plan the wood was cut by is a tap away, and so is the job; the way to the saw leads to it where
/// nothing is left to cut, too.
#[test]
fn a_draft_does_not_hide_the_plan_in_use() {
    let mut app = planned("");
    let (job, lines) = (app.jobs.open.unwrap(), app.plan.found.as_ref().unwrap().sheet.lines.len());
    heard(&mut app, [Tap::Use]);
    let used = app.plan.used.unwrap();
    assert!(page(&app).contains("<span>The job</span>"), "{}", page(&app));
    for taps in [vec![Tap::Choose], vec![Tap::Shape(Shape::Field)], vec![Tap::Shape(Shape::Rows)]] {
        heard(&mut app, taps);
        assert!(page(&app).contains("The plan in use"), "{}", page(&app));
    }
    heard(&mut app, [Tap::Kept(used)]);
    assert!(page(&app).contains("The job has this wood"), "{}", page(&app));
    heard(&mut app, (0..lines).map(Tap::Tick));
    heard(&mut app, [Tap::Choose, Tap::Shape(Shape::Field), Tap::Saw(job)]);
    assert!(page(&app).contains("The job has this wood"), "{}", page(&app));
    // Another draft was planned since, and the page was killed.
    again(&mut app);
    for mut app in [reloaded(&app), app] {
        heard(&mut app, [Tap::Saw(job)]);
        assert_eq!((app.plan.used, app.plan.page), (Some(used), Page::Answer));
    }
}

/// Rows and thickness that were left open stay so, used or not, when the page was killed: the app's own answer is no figure of the maker.
#[test]
fn what_was_left_open_stays_open() {
    for taps in [vec![], vec![Tap::Use]] {
        let mut app = planned("");
        heard(&mut app, taps);
        let what = |app: &App| {
            let typing = app.speech.typing(fivebar_core::quantity::Units::Metric);
            app.plan.draft.rough(app.jobs.open.unwrap(), typing).unwrap().what
        };
        let fivebar_core::sheet::make::What::Top(top) = what(&app) else { panic!("a top") };
        assert_eq!(top.rows, None);
        let mut again = reloaded(&app);
        heard(&mut again, [Tap::Open]);
        assert!(page(&again).contains("2 rows."), "{}", page(&again));
        assert_eq!(what(&again), what(&app));
    }
}

/// What is ticked is said where boards would go back, and is ticked again when the plan that took its place is taken back.
#[test]
fn what_was_cut_is_said_and_outlives_a_plan_instead() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    let first = app.plan.used;
    again(&mut app);
    heard(&mut app, [Tap::Use]);
    assert!(page(&app).contains("2 boards are ticked as cut. The job has 4 pieces by the plan before."), "{}", page(&app));
    heard(&mut app, [Tap::UseAnd(false)]);
    take_back(&mut app);
    for mut app in [reloaded(&app), app] {
        let job = app.jobs.open.unwrap();
        heard(&mut app, [Tap::Saw(job)]);
        assert_eq!((app.plan.used, app.plan.ticked.lines_done()), (first, 1));
    }
}

/// Two plans of four strips each are in use, and lines of the first are ticked. The second is planned again, also after the page was
/// killed: it is that one whose place is taken, by hand four of twelve stay free, and the first keeps its wood and its tick.
#[test]
fn the_plan_that_is_planned_again_goes_and_no_other() {
    for (older, killed) in [(false, false), (false, true), (true, false), (true, true)] {
        let mut app = planned("");
        heard(&mut app, [Tap::Use]);
        let first = app.plan.used.unwrap();
        again(&mut app);
        heard(&mut app, [Tap::Use, Tap::UseAnd(true)]);
        let second = app.plan.used.unwrap();
        let [goes, stays] = if older { [first, second] } else { [second, first] };
        heard(&mut app, [Tap::Kept(stays), Tap::Tick(0), Tap::Kept(goes)]);
        app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(1)), app.now.offset);
        again(&mut app);
        if killed {
            app = reloaded(&app);
            heard(&mut app, [Tap::Open]);
        }
        assert!(page(&app).contains("takes 4 pieces, asks about 4 of the plan before"), "{}", page(&app));
        heard(&mut app, [Tap::Use]);
        let asked = "The job has 4 pieces by the plan before. Do they stay? What it has by other plans stays.";
        assert!(page(&app).contains(asked), "no line of it is ticked: {}", page(&app));
        heard(&mut app, [Tap::UseAnd(false)]);
        assert_eq!(strips_of(&app), (4, 8));
        let ids = |app: &App| in_use_by(app, app.jobs.open.unwrap()).into_iter().map(|(id, ..)| id).collect::<Vec<_>>();
        assert_eq!(ids(&app), [stays, app.plan.used.unwrap()]);
        heard(&mut app, [Tap::Kept(stays)]);
        assert_eq!((app.plan.used, app.plan.ticked.lines_done()), (Some(stays), 1));
        take_back(&mut app);
        take_back(&mut app);
        assert_eq!((strips_of(&app), ids(&app)), ((4, 8), vec![first, second]), "{}", page(&app));
    }
}

/// Where the rack has too few without the plan before, that is said where it is asked, with the figures; and nothing is offered that fails.
#[test]
fn wood_that_cannot_stay_is_said_before_it_is_refused() {
    let mut app = super::later::planned("job other \"Other\" 1 spec\nreserve 6 strips for other\n");
    heard(&mut app, [Tap::Use]);
    super::later::again(&mut app);
    heard(&mut app, [Tap::Use]);
    let shown = page(&app);
    let said = "They can’t stay: this plan takes 4 of A from the rack, where 2 lie without them.";
    assert!(shown.contains(said) && !shown.contains(">They stay<"), "{shown}");
    // Nothing is asked to which there is no other answer, and no line holds all of it.
    assert!(shown.contains("The job has 4 pieces by the plan before.</p>"), "{shown}");
    assert!(!shown.contains("Do they stay?") && !shown.contains("Both make"), "{shown}");
    heard(&mut app, [Tap::UseAnd(false)]);
    assert_eq!(super::later::strips_of(&app), (8, 4));
}
