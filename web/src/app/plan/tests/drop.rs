//! A plan that is wanted no more is dropped, and comes again.

use super::later::{order, planned, put_back, take_back};
use super::told::{at_rack, solved};
use super::*;
use fivebar_core::ledger::decide::HaulCommand;

fn on_rack(app: &App) -> u32 {
    fivebar_core::sheet::rack::rack(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap()[0].on_rack
}

fn opened_again(app: &App) -> App {
    let mut again = reloaded(app);
    heard(&mut again, [Tap::Open]);
    again
}

/// One that was never used, by its page or where it is asked again for the rack has changed: gone, also after a reload, and it comes again
/// with its ticks.
#[test]
fn a_plan_that_was_not_used_is_dropped_and_comes_again() {
    for stale in [false, true] {
        let mut app = planned("job other \"Other\" 1 spec\n");
        heard(&mut app, [Tap::Tick(0)]);
        if stale {
            let pile = app.plan.given.as_ref().unwrap().sources[0].pile.clone();
            let job = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Other").unwrap().id;
            order(&mut app, Command::Haul(HaulCommand::Take { haul: pile.haul, pile: pile.pile, job, n: 10 }));
            app = opened_again(&app);
        }
        let before = app.here.plans.clone();
        let entries = app.own.book.len();
        assert!(page(&app).contains("Drop this plan") && page(&app).contains("it was not used"), "{stale}: {}", page(&app));
        heard(&mut app, [Tap::Drop]);
        let shown = page(&app);
        assert!(shown.contains("What does it look like?") && shown.contains("a plan dropped"), "{stale}: {shown}");
        assert!(page(&opened_again(&app)).contains("What does it look like?"), "{stale}: {}", page(&opened_again(&app)));
        take_back(&mut app);
        assert!(page(&app).contains("Drop this plan") && app.here.plans == before, "{stale}: {}", page(&app));
        put_back(&mut app);
        assert!(page(&app).contains("What does it look like?"), "{stale}");
        assert_eq!(app.own.book.len(), entries, "{stale}: it is no fact");
        // Once another is planned the drop is not taken back any more.
        if !stale {
            asked(&mut app);
            assert_eq!(app.shelf().last_tick, None);
        }
    }
}

/// One in use leaves its wood in the job, or puts it back; either is taken back, and made again.
#[test]
fn a_plan_in_use_is_dropped_with_its_wood_or_without() {
    for (stays, cut) in [(true, true), (true, false), (false, true), (false, false)] {
        let mut app = planned("");
        heard(&mut app, [Tap::Use].into_iter().chain(cut.then_some(Tap::Tick(0))));
        assert_eq!(on_rack(&app), 8);
        heard(&mut app, [Tap::Drop]);
        let asked = "The job has 4 pieces by this plan. Do they stay in it?";
        assert!(page(&app).contains(asked), "{}", page(&app));
        assert_eq!(page(&app).contains("2 boards are ticked as cut. The job has 4 pieces"), cut, "{}", page(&app));
        heard(&mut app, [Tap::DropAnd(stays)]);
        let there = match (stays, cut) {
            (true, _) => 8,
            (false, true) => 10,
            (false, false) => 12,
        };
        let is_gone = |app: &App| {
            let plans = in_use_by(app, app.jobs.open.unwrap()).len();
            assert_eq!((on_rack(app), plans), (there, 0), "{stays}");
            let again = opened_again(app);
            assert!(page(&again).contains("What does it look like?"), "{stays}: {}", page(&again));
        };
        is_gone(&app);
        // A plan that goes back whole is taken back itself.
        let back = if stays || cut { take_back } else { put_back };
        back(&mut app);
        assert_eq!((on_rack(&app), in_use_by(&app, app.jobs.open.unwrap()).len()), (8, 1), "{stays} {cut}");
        let again = opened_again(&app);
        let shown = page(&again);
        assert!(shown.contains("The job has this wood") && shown.contains("tick done") == cut, "{stays} {cut}: {shown}");
        let forth = if stays || cut { put_back } else { take_back };
        forth(&mut app);
        assert_eq!((on_rack(&app), in_use_by(&app, app.jobs.open.unwrap()).len()), (there, 0), "{stays}");
    }
}

/// So many lines are left at the saw of all, and what is ticked of a job lies there so many times.
#[track_caller]
fn left(app: &App, cuts: (usize, usize), lines: usize, way: &str) {
    let job = app.jobs.open.unwrap();
    let some = (0 < cuts.0).then_some((job, cuts.0, cuts.1));
    assert_eq!(cuts_left(app), some.into_iter().collect::<Vec<_>>(), "{way}");
    assert_eq!(app.here.plans.matches(&format!("{job}|")).count(), lines, "{way}: {}", app.here.plans);
}

/// A plan in use that was dropped and is in use again has its lines at the saw once, whichever way and whatever is ticked then.
#[test]
fn a_plan_in_use_again_has_its_lines_at_the_saw_once() {
    for stays in [true, false] {
        let mut app = planned("");
        heard(&mut app, [Tap::Use]);
        let all = app.plan.found.as_ref().unwrap().sheet.lines.len();
        let after = after_the_saw(&app);
        heard(&mut app, [Tap::Tick(0), Tap::Drop, Tap::DropAnd(stays)]);
        assert_eq!((cuts_left(&app), after_the_saw(&app)), (vec![], vec![]), "{stays}");
        take_back(&mut app);
        left(&app, (all - 1, all), 1, "in use again");
        heard(&mut app, [Tap::Open, Tap::Tick(1)]);
        left(&app, (all - 2, all), 1, "another is ticked");
        heard(&mut app, [Tap::Tick(1), Tap::Tick(0)]);
        left(&app, (all, all), 1, "none is ticked");
        assert_eq!(after_the_saw(&app), after, "{stays}");
        assert!(!app.here.plans.contains('!'), "{stays}: {}", app.here.plans);
    }
}

/// Plans that are dropped, one after the other, and unused ones that are ticked a while, take no other job's ticks off the phone.
#[test]
fn dropped_plans_leave_the_ticks_of_other_jobs() {
    for ticks in [false, true] {
        let mut app = planned("job other \"Other\" 1 spec\npart \"top\" 1 of 20 x 120 x 980 mm oak-european for other\n");
        heard(&mut app, [Tap::Use, Tap::Tick(0)]);
        let (tray, cut) = (app.jobs.open.unwrap(), cuts_left(&app));
        let other = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Other").unwrap().id;
        app.jobs.open = Some(other);
        asked(&mut app);
        for _ in 0..12 {
            app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(1)), app.now.offset);
            let told = answer(&app);
            app.told(crate::app::news::News::Planning(told));
            if ticks {
                heard(&mut app, [Tap::Tick(0)]);
            } else {
                heard(&mut app, [Tap::Drop]);
                asked(&mut app);
            }
        }
        assert_eq!(cuts_left(&app), cut, "{ticks}: {}", app.here.plans);
        assert!(app.here.plans.lines().count() <= 3, "{ticks}: {}", app.here.plans);
        assert!(is_to_cut(&app, tray), "{ticks}");
    }
}

fn planned_again(app: &mut App) {
    app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(5)), app.now.offset);
    asked(app);
    let told = answer(app);
    app.told(crate::app::news::News::Planning(told));
}

/// The very same figures make the very same lines, and no tick of a plan that was dropped is theirs, whether its wood was taken or not.
#[test]
fn what_was_ticked_of_a_dropped_plan_is_of_no_other() {
    for (used, stays) in [(true, true), (true, false), (false, false)] {
        let mut app = planned("");
        let before = on_rack(&app);
        heard(&mut app, used.then_some(Tap::Use).into_iter().chain([Tap::OneMore(0), Tap::Drop]));
        heard(&mut app, used.then_some(Tap::DropAnd(stays)));
        let has = before - on_rack(&app);
        planned_again(&mut app);
        let again = opened_again(&app);
        for mut app in [app, again] {
            let shown = page(&app);
            assert!(app.plan.ticked.is_empty() && shown.contains("0 of 2"), "{used} {stays}: {shown}");
            heard(&mut app, [Tap::Use]);
            assert!(app.plan.ticked.is_empty(), "{used} {stays}");
            heard(&mut app, [Tap::Drop, Tap::DropAnd(false)]);
            assert_eq!(before - on_rack(&app), has, "{used} {stays}: all of it goes back");
        }
    }
}

/// A plan that was used, and another in its place, which is dropped: the first was no plan that was never used, and does not come back.
#[test]
fn what_was_replaced_is_over() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
    app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(5)), app.now.offset);
    super::later::again(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false), Tap::OneMore(0), Tap::Drop, Tap::DropAnd(false)]);
    let again = opened_again(&app);
    for app in [app, again] {
        let shown = page(&app);
        assert!(shown.contains("What does it look like?") && !shown.contains("it was not used"), "{shown}");
    }
}

/// What it leaves of its boards another job has meanwhile: it can't go back, and that job is named.
#[test]
fn who_has_what_it_leaves_is_named() {
    let mut app = at_rack("part \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\njob other \"Other\" 1 spec\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop, Tap::Use]);
    let other = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Other").unwrap().id;
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let left = all.into_iter().find(|it| it.pile.name.as_deref().is_some_and(|it| it.starts_with("left of "))).unwrap();
    let (at, before) = (left.which().0, on_rack(&app));
    order(&mut app, Command::Haul(HaulCommand::Take { haul: at.haul, pile: at.pile, job: other, n: 1 }));
    heard(&mut app, [Tap::Drop]);
    let words = "Other has 1 piece of what this plan leaves of its boards.";
    assert!(!page(&app).contains(words), "{}", page(&app));
    heard(&mut app, [Tap::DropAnd(false)]);
    assert!(page(&app).contains("not taken back") && page(&app).contains(words), "{}", page(&app));
    assert_eq!(on_rack(&app), before, "nothing is lost");
}

/// A plan was used in place of another, and nothing of it is cut: put back, it brings the other into use again, which is said before. Where boards
/// of it are cut, or where it took no other's place, nothing comes back, and nothing is said.
#[test]
fn that_the_plan_before_comes_back_is_said_first() {
    for (before, cut) in [(true, false), (true, true), (false, false)] {
        let mut app = planned("");
        if before {
            heard(&mut app, [Tap::Use]);
            app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(5)), app.now.offset);
            super::later::again(&mut app);
            heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
        } else {
            heard(&mut app, [Tap::Use]);
        }
        heard(&mut app, [if cut { Tap::OneMore(0) } else { Tap::ByRow(false) }, Tap::Drop]);
        let said = "Put back, the plan before it is in use again, with its 4 pieces.";
        assert_eq!(page(&app).matches(said).count(), usize::from(before && !cut), "{before} {cut}: {}", page(&app));
        heard(&mut app, [Tap::DropAnd(false)]);
        assert_eq!(in_use_by(&app, app.jobs.open.unwrap()).len(), usize::from(before && !cut), "{before} {cut}");
    }
}

/// A plan that was made again is dropped: what that filled in is no figure of the maker's.
#[test]
fn what_a_plan_again_filled_in_goes_with_it() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    super::later::again(&mut app);
    heard(&mut app, [Tap::Drop]);
    assert!(app.plan.asked.is_empty(), "{:?}", app.plan.asked);
}

/// A wood that was picked is as thick as the job's own unit has it.
#[test]
fn a_picked_wood_is_said_in_the_units_of_the_job() {
    use fivebar_core::sheet::make::Pick;
    let mut app = at_rack("workshop EUR inch\njob shelf \"Shelf\" 1 spec\n");
    let shelf = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Shelf").map(|job| job.id);
    app.jobs.open = shelf;
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    let thickness = fivebar_core::quantity::Length::INCH_64TH.times(60).unwrap();
    app.plan.draft.pick = Some(Pick { wood: None, thickness, thick: false, wide: None, without: None });
    let shown = page(&app);
    assert!(!shown.contains("23.8 thick") && shown.contains("thick"), "{shown}");
}

/// A top was planned and dropped, then parts were added: what it looks like is asked, and the figures of the top stay under its shape. Without
/// parts the top is asked again.
#[test]
fn a_job_that_has_parts_now_does_not_open_the_form_of_a_top() {
    use fivebar_core::ledger::kind::job::PartPlanned;
    for has_parts in [false, true] {
        let mut app = at_rack("job other \"Other\" 1 spec\n");
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
        super::told::typed(&mut app, &["1200", "400"]);
        heard(&mut app, [Tap::Go]);
        solved(&mut app);
        heard(&mut app, [Tap::Drop]);
        let job = app.jobs.open.unwrap();
        let side = |mm: i64| fivebar_core::quantity::Length::MM.times(mm).unwrap();
        let part = PartPlanned { n: 4, job, name: "leg".into(), thickness: side(20), width: side(50), length: side(550), wood: None };
        if has_parts {
            order(&mut app, Command::Job(fivebar_core::ledger::decide::JobCommand::PlanPart(part)));
        }
        let other = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Other").map(|job| job.id);
        app.jobs.open = other;
        heard(&mut app, [Tap::Open]);
        app.jobs.open = Some(job);
        heard(&mut app, [Tap::Open]);
        assert_eq!(page(&app).contains("What does it look like?"), has_parts, "{}", page(&app));
        heard(&mut app, [Tap::Shape(Shape::Rows)]);
        assert!(!app.plan.draft.form.is_empty(0), "{}", page(&app));
    }
}
