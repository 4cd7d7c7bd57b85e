//! A plan of which some boards are cut goes: those stay in the job, the others lie on the rack again, and with them goes what would be left
//! of them.

use super::later::{again, order, planned, put_back, strips_of, take_back};
use super::told::{at_rack, says, solved};
use super::*;
use fivebar_core::ledger::decide::{HaulCommand, Lying, PlanCommand};
use fivebar_core::sheet::make::sources;

/// Four of twelve strips are used, two of them in one line.
fn used(taps: &[Tap]) -> App {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    heard(&mut app, taps.iter().cloned());
    assert_eq!(strips_of(&app), (8, 4));
    app
}

/// What is asked where a plan is dropped or another used instead; what goes back then; and that one act takes it all back.
#[track_caller]
fn check(ticks: &[Tap], says_so: &[&str], then: (u32, u32)) {
    for instead in [false, true] {
        let mut app = used(ticks);
        let (cut, first) = (app.plan.ticked.clone(), app.plan.used);
        if instead {
            again(&mut app);
        }
        heard(&mut app, [if instead { Tap::Use } else { Tap::Drop }]);
        says(&app, says_so, &[">Put them back<"]);
        // The phone's own Back leaves it as "Not now" does.
        if instead {
            heard(&mut app, [Tap::NotNow]);
        } else {
            let now = Now { wall: app.now, chance: [209; 10] };
            app.heard(Msg::Key("Escape".into()), now);
        }
        says(&app, &[if instead { "Use these 4" } else { "Drop this plan" }], &["Put back the"]);
        heard(&mut app, [if instead { Tap::Use } else { Tap::Drop }]);
        heard(&mut app, [if instead { Tap::UseAnd(false) } else { Tap::DropAnd(false) }]);
        // A plan that is used instead takes four of the rack.
        let then = if instead { (then.0 - 4, then.1 + 4) } else { then };
        assert_eq!(strips_of(&app), then, "{instead} {ticks:?}");
        let in_use = |app: &App| in_use_by(app, app.jobs.open.unwrap()).into_iter().map(|(id, ..)| Some(id)).collect::<Vec<_>>();
        assert!(!in_use(&app).contains(&first), "{instead} {ticks:?}");
        take_back(&mut app);
        assert_eq!((strips_of(&app), in_use(&app)), ((8, 4), vec![first]), "{instead} {ticks:?}");
        let mut reload = reloaded(&app);
        let job = app.jobs.open.unwrap();
        for app in [&mut reload, &mut app] {
            heard(app, [Tap::Saw(job)]);
            assert_eq!((app.plan.used, &app.plan.ticked), (first, &cut), "{instead} {ticks:?}");
        }
        put_back(&mut app);
        assert_eq!(strips_of(&app), then, "again {instead} {ticks:?}");
    }
}

#[test]
fn boards_that_are_cut_stay_in_the_job() {
    let all = |n: usize| (0..n).map(Tap::Tick).collect::<Vec<_>>();
    let wrong = "If a tick is wrong, take it off at the saw, then ";
    check(&all(1), &["2 boards are ticked as cut.", wrong, "Put back the 2 not cut", "the 2 cut stay in the job"], (10, 2));
    check(&[Tap::OneMore(0)], &["1 board is ticked as cut.", "Put back the 3 not cut", "the one that is cut stays"], (11, 1));
}

/// Two boards of a plan that was dropped are cut: the job has them, and they serve no other plan. What goes of the others is missing.
#[test]
fn cut_boards_of_a_dropped_plan_serve_no_other() {
    let mut app = used(&[Tap::Tick(0)]);
    heard(&mut app, [Tap::Drop, Tap::DropAnd(false)]);
    anew(&mut app);
    heard(&mut app, [Tap::Use]);
    assert_eq!(strips_of(&app), (6, 6));
    let job = app.jobs.open.unwrap();
    let lacks = |app: &App| fivebar_core::sheet::job::job(&app.shelf().shop(app.now.at), job).unwrap().lacking.map(|it| (it.has, it.needs));
    assert_eq!(lacks(&app), None);
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    for has in [3, 2] {
        order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 1 }));
        assert_eq!(lacks(&app), Some((has, 4)));
    }
    order(&mut app, Command::Plan(PlanCommand::TakeAgain { job }));
    assert_eq!((strips_of(&app), lacks(&app)), ((6, 6), None));
    // Put back before another plan is used, they are none to reckon with.
    let mut app = used(&[Tap::Tick(0)]);
    heard(&mut app, [Tap::Drop, Tap::DropAnd(false)]);
    order(&mut app, Command::Haul(HaulCommand::Free { haul, pile, job, n: 2 }));
    anew(&mut app);
    heard(&mut app, [Tap::Use]);
    assert_eq!((strips_of(&app), lacks(&app)), ((8, 4), None));
}

/// A top is asked as at first, and planned.
fn anew(app: &mut App) {
    asked(app);
    let told = answer(app);
    app.told(crate::app::news::News::Planning(told));
}

/// From where it is asked a key leads to the list at the saw, and without the tick all goes back.
#[test]
fn a_wrong_tick_is_taken_off_where_it_is_said() {
    for instead in [false, true] {
        let mut app = used(&[Tap::OneMore(0)]);
        let (job, plan) = (app.jobs.open.unwrap(), app.plan.used.unwrap());
        if instead {
            again(&mut app);
        }
        heard(&mut app, [if instead { Tap::Use } else { Tap::Drop }]);
        let then = if instead { "then plan again." } else { "then drop the plan there." };
        says(&app, &["take it off at the saw", then, ">To the list at the saw<", "to take off a wrong tick"], &[]);
        heard(&mut app, [Tap::SawOf(job, plan)]);
        says(&app, &["At the saw, mm", "1 of 2", ">Drop this plan<"], &["What becomes of its wood?"]);
        heard(&mut app, [Tap::OneMore(0), Tap::Tick(0)]);
        says(&app, &["0 of 2"], &["mixed", "tick done"]);
        heard(&mut app, [Tap::Drop]);
        says(&app, &[">Put them back<"], &["ticked as cut", "To the list at the saw"]);
        heard(&mut app, [Tap::DropAnd(false)]);
        assert_eq!(strips_of(&app), (12, 0), "{instead}");
    }
}

/// All is cut: nothing can go back, and that is not offered.
#[test]
fn a_plan_that_is_all_cut_puts_no_board_back() {
    let mut app = used(&[]);
    let lines = app.plan.found.as_ref().unwrap().sheet.lines.len();
    heard(&mut app, (0..lines).map(Tap::Tick).chain([Tap::Drop]));
    says(&app, &["4 boards are ticked as cut.", "They stay", "Not now"], &["Put back", "Put them back"]);
}

/// Legs of 550 from strips of 1000: each leaves an end, which lies on the rack as far as its strip is cut.
#[test]
fn what_would_be_left_of_boards_that_are_not_cut_goes_with_them() {
    let mut app = at_rack("part \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop, Tap::Use]);
    let all = |app: &App| sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let is_left = |it: &&fivebar_core::sheet::make::Source| it.pile.name.as_deref().is_some_and(|it| it.starts_with("left of "));
    let left = |app: &App| all(app).iter().filter(is_left).map(|it| it.n).sum::<u32>();
    let wood = |app: &App| all(app).iter().map(|it| (it.which(), it.n)).collect::<Vec<_>>();
    let (before, ends, boards) = (wood(&app), left(&app), app.plan.found.as_ref().unwrap().sheet.lines[0].n);
    assert!(1 < ends && 1 < boards, "{ends} {boards}");
    heard(&mut app, [Tap::OneMore(0), Tap::Drop, Tap::DropAnd(false)]);
    assert_eq!(left(&app), 1, "of the one that is cut");
    assert_eq!(all(&app).iter().filter(|it| it.in_job).map(|it| it.n).sum::<u32>(), 1);
    says(&app, &["a plan dropped"], &[]);
    take_back(&mut app);
    assert_eq!(wood(&app), before);
    put_back(&mut app);
    assert_eq!(left(&app), 1);
}

/// Board by board: the last is the whole line, what was ticked last is taken back, and all in one tap is still all.
#[test]
fn a_line_of_several_boards_is_ticked_board_by_board() {
    let app = used(&[Tap::OneMore(0)]);
    says(&app, &["1 of 2", "aria-pressed=\"mixed\"", "1 cut of 2 whole"], &["tick done"]);
    assert_eq!(cuts_left(&app).iter().map(|(_, left, of)| of - left).collect::<Vec<_>>(), [0]);
    let mut reload = reloaded(&app);
    heard(&mut reload, [Tap::Open]);
    says(&reload, &["1 of 2"], &["tick done"]);
    heard(&mut reload, [Tap::OneMore(0)]);
    says(&reload, &["2 of 2", "tick done"], &[]);
    take_back(&mut reload);
    says(&reload, &["1 of 2"], &["tick done"]);
    put_back(&mut reload);
    says(&reload, &["2 of 2", "tick done"], &[]);
    heard(&mut reload, [Tap::Tick(0)]);
    says(&reload, &["0 of 2"], &["tick done", "mixed"]);
    heard(&mut reload, [Tap::Tick(0)]);
    says(&reload, &["2 of 2", "tick done"], &[]);
}

/// Rows of a top 25 thick are planed before they are cut to length: so is what is left of them, and it says so where it is too thin then.
#[test]
fn a_rest_that_was_planed_says_so() {
    let mut app = at_rack("");
    heard(&mut app, [Tap::Open]);
    heard(&mut app, super::told::without(1, vec![Tap::Shape(Shape::Rows)]));
    super::told::typed(&mut app, &["700", "57", "1", "", "25"]);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop]);
    says(&app, &["one of 302, planed to 25."], &[]);
    // For another top as thick it is as thick as it must be.
    heard(&mut app, [Tap::Use, Tap::Change, Tap::Piles]);
    says(&app, &[], &["too thin: a plan had it planed, from 27 mm"]);
    heard(&mut app, [Tap::Change]);
    super::told::typed(&mut app, &["", "", "", "", "26"]);
    heard(&mut app, [Tap::Piles]);
    says(&app, &["too thin: a plan had it planed, from 27 mm"], &[]);
}

/// Of two plans of four strips of one pile each, the second has two boards cut and goes: the first keeps its four, and lacks none.
#[test]
fn a_plan_that_stays_keeps_its_boards() {
    for instead in [false, true] {
        let mut app = super::last_act::two_plans();
        let (first, second) = (in_use_by(&app, app.jobs.open.unwrap())[0].0, app.plan.used.unwrap());
        assert_eq!(strips_of(&app), (4, 8));
        if instead {
            again(&mut app);
            heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
        } else {
            heard(&mut app, [Tap::Drop, Tap::DropAnd(false)]);
        }
        let then = if instead { (2, 10) } else { (6, 6) };
        assert_eq!(strips_of(&app), then, "{instead}");
        let shop = app.shelf().shop(app.now.at);
        let plans = shop.job(app.jobs.open.unwrap()).unwrap().plans;
        let lacks = |id| fivebar_core::sheet::make::keep::in_use(&shop, &plans).iter().find(|it| it.plan.id == id).map(|it| it.lacks());
        assert_eq!((lacks(first), lacks(second)), (Some(0), None), "{instead}");
        take_back(&mut app);
        assert_eq!(strips_of(&app), (4, 8), "{instead}");
        let ids = in_use_by(&app, app.jobs.open.unwrap()).into_iter().map(|(id, ..)| id).collect::<Vec<_>>();
        assert_eq!(ids, [first, second], "{instead}");
    }
}
