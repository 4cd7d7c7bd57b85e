//! Planned again while boards of a plan are cut: these stay cut, what was cut of them counts as made, and what the job has of the plan
//! and is not cut takes part again.

use super::later::{strips_of, take_back};
use super::told::{RACK, at_rack, says, solved};
use super::*;
use fivebar_core::ledger::decide::HaulCommand;
use fivebar_core::sheet::make::{WhyNot, sources};

/// Four legs, each the longest a strip of 1010 gives.
const LEGS: &str = "part \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\n";
/// Nothing lies on the rack but four strips.
const FOUR: &str = "gone 31 ends burnt\ngone 33 strips burnt\n";

fn begun(lines: &str, (shape, sets): (Shape, u8)) -> App {
    let mut app = at_rack(&format!("{LEGS}{lines}"));
    heard(&mut app, [Tap::Open, Tap::Shape(shape), Tap::At(0), Tap::Press(Press::Digit(sets))]);
    planned(&mut app);
    app
}

fn planned(app: &mut App) {
    app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(1)), app.now.offset);
    heard(app, [Tap::Go]);
    if app.plan.why_not.is_none() {
        solved(app);
        heard(app, [Tap::Stop]);
    }
}

fn taken(app: &App) -> u32 {
    app.plan.found.as_ref().unwrap().sheet.used.iter().map(|used| used.pieces).sum()
}

/// One of four boards is cut: the other three are planned anew, of the job's own wood where nothing else lies there.
#[test]
fn what_is_cut_stays_cut_and_the_rest_is_planned_with_the_jobs_own_wood() {
    for shape in [Shape::Parts, Shape::Sticks] {
        for lines in ["", FOUR] {
            let mut app = begun(lines, (shape, 1));
            heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
            let before = strips_of(&app);
            assert_eq!(before.1, 4, "{shape:?}");
            planned(&mut app);
            let never = ["No plan can make more", "of 37 pieces", "have changed since"];
            says(&app, &["1 piece is cut and stays; planned anew: the other 3.", "The other parts, 3."], &never);
            assert_eq!(taken(&app), 3, "{shape:?} {lines}");
            let all = fitting_to(&app, &app.plan.given.as_ref().unwrap().ask);
            let n = |own: bool| all.iter().filter(|(it, why)| it.in_job == own && why.is_none()).map(|(it, _)| it.n).sum::<u32>();
            assert_eq!((n(false), n(true)), (before.0 + 3, 0), "{shape:?} {lines}");
            let mut reload = reloaded(&app);
            heard(&mut reload, [Tap::Open]);
            for app in [&mut reload, &mut app] {
                says(app, &["1 piece is cut and stays; planned anew: the other 3.", "Use these 3"], &never);
                heard(app, [Tap::Use]);
                says(
                    app,
                    &["Put back the 3 not cut", "the one that is cut stays in the job"],
                    &[">They stay<", "Do they stay?", "Both make"],
                );
                heard(app, [Tap::UseAnd(false)]);
                assert_eq!(strips_of(app), before, "{shape:?} {lines}");
                says(app, &["The job has this wood", "1 piece is cut and stays; planned anew: the other 3."], &never);
            }
            take_back(&mut app);
            assert_eq!(strips_of(&app), before, "{shape:?} {lines}");
        }
    }
}

/// A part of the second plan is cut too: both count.
#[test]
fn what_is_cut_of_a_plan_of_the_rest_counts_with_it() {
    let mut app = begun("", (Shape::Sticks, 2));
    heard(&mut app, [Tap::Use, Tap::OneMore(0), Tap::OneMore(0)]);
    planned(&mut app);
    says(&app, &["2 pieces are cut and stay; planned anew: the other 6."], &[]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false), Tap::OneMore(0)]);
    planned(&mut app);
    says(&app, &["3 pieces are cut and stay; planned anew: the other 5."], &["have changed since"]);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!(strips_of(&app).1, 8);
    let lines = app.plan.found.as_ref().unwrap().sheet.lines.len();
    heard(&mut app, (0..lines).map(Tap::Tick));
    planned(&mut app);
    assert_eq!(app.plan.why_not, Some(WhyNot::AllCut { sets: 2 }));
    says(&app, &["The parts of 2 pieces are all cut. To plan more of them, ask for more pieces of the job."], &[]);
    heard(&mut app, [Tap::At(0), Tap::Press(Press::RubOut), Tap::Press(Press::Digit(3))]);
    planned(&mut app);
    says(&app, &["8 pieces are cut and stay; planned anew: the other 4."], &[]);
}

/// A part of strips is made once all its strips are cut: never more parts than there are, and all of them in the end.
#[test]
fn a_glued_part_is_cut_with_the_last_of_its_strips() {
    let mut app = begun("part \"top\" 2 of 20 x 170 x 900 mm oak-european for tray\n", (Shape::Parts, 1));
    heard(&mut app, [Tap::Use]);
    let sheet = app.plan.found.as_ref().unwrap().sheet.clone();
    assert!(!sheet.glue_ups.is_empty());
    let job = app.jobs.open.unwrap();
    let of = |app: &App, name: &str| already_cut(app, job).parts.iter().filter(|it| it.name == name).map(|it| it.n).sum::<u32>();
    let (mut before, boards) = ((0, 0), sheet.lines.iter().map(|line| line.n).sum::<i64>());
    for (nth, line) in sheet.lines.iter().enumerate() {
        for _ in 0..line.n {
            heard(&mut app, [Tap::OneMore(nth)]);
            let now = (of(&app, "leg"), of(&app, "top"));
            assert!(before.0 <= now.0 && before.1 <= now.1 && now.0 <= 4 && now.1 <= 2, "{now:?}");
            before = now;
        }
    }
    assert_eq!((before, i64::from(already_cut(&app, job).boards())), ((4, 2), boards));
    planned(&mut app);
    assert_eq!(app.plan.why_not, Some(WhyNot::AllCut { sets: 1 }));
}

/// Cut since it was planned again: it is not used as it is, and its wood is no whole board.
#[test]
fn a_plan_made_before_a_tick_is_planned_again() {
    let mut app = begun("", (Shape::Sticks, 1));
    heard(&mut app, [Tap::Use]);
    let first = app.plan.used.unwrap();
    planned(&mut app);
    says(&app, &["Use these 4"], &["have changed since"]);
    heard(&mut app, [Tap::Kept(first), Tap::OneMore(0)]);
    let mut again = reloaded(&app);
    planned(&mut app);
    heard(&mut again, [Tap::Open]);
    planned(&mut again);
    for app in [app, again] {
        says(&app, &["planned anew: the other 3."], &[]);
    }
    let mut app = begun("", (Shape::Sticks, 1));
    heard(&mut app, [Tap::Use]);
    let first = app.plan.used.unwrap();
    planned(&mut app);
    let unused = app.plan.clone();
    heard(&mut app, [Tap::Kept(first), Tap::OneMore(0)]);
    app.plan = unused;
    says(&app, &["What is ticked as cut of the plan before has changed since: plan again."], &["Use these 4"]);
}

/// One of four boards is cut, and one of the others is rejected: what lies there does not give the other parts, though pieces come of it.
#[test]
fn what_lies_there_that_does_not_give_the_rest_is_said_of_the_rest() {
    let mut app = begun(FOUR, (Shape::Sticks, 1));
    heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    let why = fivebar_core::quantity::Key::read("twist").unwrap();
    super::later::order(&mut app, Command::Haul(HaulCommand::Reject { haul, pile, n: 1, why }));
    app.plan.draft.bought.push(super::rack_first::boards(9, 1010));
    super::rack_first::planned_out(&mut app, vec![Tap::Go]);
    says(&app, &["Of what lies there alone the other parts do not all come: boards to buy fill the rest."], &["not one piece"]);
}

/// Strips of a part that is glued up are cut, and nothing lies there but the boards of its plan: only what they lack is planned, and that comes
/// out. By hand: of 62 with 2 off each edge a strip is 58; four of 900 with a joint of 1 off each glued edge are 226. When the last is cut, all
/// is.
#[test]
fn cut_strips_of_a_glued_part_count_and_what_they_lack_is_planned() {
    for reloads in [false, true] {
        let mut app = begun("part \"top\" 2 of 20 x 170 x 900 mm oak-european for tray\n", (Shape::Parts, 1));
        heard(&mut app, [Tap::Use]);
        let (leg, top) = (line_of(&app, "leg"), line_of(&app, "top"));
        heard(&mut app, [Tap::OneMore(leg), Tap::OneMore(top)]);
        let before = already_cut(&app, app.jobs.open.unwrap());
        assert_eq!(before.strips, 1);
        rejects_all_others(&mut app);
        planned(&mut app);
        let never =
            ["do not all come out", "They lack", "not counted", "Look for it at the next yard", "have changed since", "has changed since"];
        says(
            &app,
            &["The other parts, ", "1 strip is cut for a part that is glued up: only what it lacks is planned anew.", "rest of top"],
            &never,
        );
        // Of ten boards of the plan one of the legs and one of the top is cut.
        assert_eq!(i64::from(taken(&app)) + 2, boards_of_first(&app));
        if reloads {
            app = reloaded(&app);
            heard(&mut app, [Tap::Open]);
            says(&app, &["The other parts, ", "1 strip is cut for a part that is glued up", "rest of top"], &never);
        }
        heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
        says(&app, &["The job has this wood", "with its strips that are cut: 900 × 170 × 20"], &never);
        if reloads {
            app = reloaded(&app);
            heard(&mut app, [Tap::Open]);
            says(&app, &["The job has this wood", "with its strips that are cut: 900 × 170 × 20"], &never);
        }
        let lines = app.plan.found.as_ref().unwrap().sheet.lines.len();
        heard(&mut app, (0..lines).map(Tap::Tick));
        let cut = already_cut(&app, app.jobs.open.unwrap());
        assert_eq!((cut.strips, cut.pieces()), (0, 6));
        planned(&mut app);
        assert_eq!(app.plan.why_not, Some(WhyNot::AllCut { sets: 1 }));
    }
}

/// Planned again after each board that is cut, the strips first: what lies there gives the others every time, and as many boards as one plan of
/// all takes are cut in the end.
#[test]
fn planned_again_after_each_strip_no_more_boards_are_cut() {
    let mut app = begun("part \"top\" 2 of 20 x 170 x 900 mm oak-european for tray\n", (Shape::Parts, 1));
    heard(&mut app, [Tap::Use]);
    rejects_all_others(&mut app);
    let all = boards_of_first(&app);
    for nth in 1..=all {
        let lines = &app.plan.found.as_ref().unwrap().sheet.lines;
        let glued = lines.iter().position(|line| line.pieces.iter().any(|cut| cut.size[1] != Length::nm(52_000_000).unwrap()));
        heard(&mut app, [Tap::OneMore(glued.unwrap_or(0))]);
        let cut = already_cut(&app, app.jobs.open.unwrap());
        assert_eq!(i64::from(cut.boards()), nth);
        planned(&mut app);
        if nth < all {
            says(&app, &["The other parts, "], &["do not all", ">0 pieces", "They lack", "changed since", "Glue rest of top of 1 "]);
            heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
        }
    }
    assert_eq!(app.plan.why_not, Some(WhyNot::AllCut { sets: 1 }));
}

/// The place of the line that cuts a part and no other.
fn line_of(app: &App, name: &str) -> usize {
    let given = app.plan.given.as_ref().unwrap();
    let fivebar_core::sheet::plan::wish::Wish::Parts(list) = &given.ready.wish else { panic!() };
    let part = list.parts.iter().position(|part| part.name == name);
    let lines = &app.plan.found.as_ref().unwrap().sheet.lines;
    lines.iter().position(|line| line.pieces.iter().all(|cut| cut.part == part)).unwrap()
}

/// Of the pile of the plan in hand what the job has not taken is no good.
fn rejects_all_others(app: &mut App) {
    let source = app.plan.given.as_ref().unwrap().sources[0].clone();
    let Lying { haul, pile } = source.which().0;
    let (n, why) = (source.n - taken(app), fivebar_core::quantity::Key::read("twist").unwrap());
    super::later::order(app, Command::Haul(HaulCommand::Reject { haul, pile, n, why }));
}

/// Boards of the first plan of the job.
fn boards_of_first(app: &App) -> i64 {
    let job = app.shelf().shop(app.now.at).job(app.jobs.open.unwrap()).unwrap();
    job.plans[0].plan.piles.iter().filter_map(|pile| pile.used).map(i64::from).sum()
}

/// A board that is cut is none to plan with, whatever its plan became; and a bound says what of the job it leaves out.
#[test]
fn a_cut_board_is_planned_with_no_more() {
    for stays in [true, false] {
        let mut app = begun("", (Shape::Sticks, 1));
        heard(&mut app, [Tap::Use, Tap::OneMore(0), Tap::Drop, Tap::DropAnd(stays)]);
        let own = sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap().into_iter().filter(|it| it.in_job);
        let (which, n) = own.map(|it| (it.which(), it.n)).next().unwrap();
        assert_eq!(n, if stays { 4 } else { 1 });
        heard(&mut app, [Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::RubOut), Tap::Press(Press::Digit(9))]);
        planned(&mut app);
        if stays {
            says(&app, &["without the 3 pieces in the job that are left out"], &[]);
        }
        heard(&mut app, [Tap::Change, Tap::Turn(which)]);
        planned(&mut app);
        let in_job = app.plan.given.as_ref().unwrap().sources.iter().filter(|it| it.in_job).map(|it| it.n).sum::<u32>();
        assert_eq!(in_job, if stays { 3 } else { 0 });
        says(&app, &["1 piece is cut and stays"], &["in the job that"]);
    }
}

/// Of a top what is cut is no row yet: it stays, is said, and the others take part.
#[test]
fn cut_strips_of_a_top_stay_and_are_said() {
    assert!(RACK.contains("count 37 strips"));
    let mut app = super::later::planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    super::later::again(&mut app);
    says(&app, &["2 boards are cut and stay in the job: none of them is planned with, and all of this is planned anew."], &[]);
    let given = app.plan.given.as_ref().unwrap();
    assert_eq!((given.sources[0].n, given.own.first().copied()), (10, Some(2)));
}

/// A plan made again was used and that taken back: it is one that is not used, and the plan in use is a tap away under its own name.
#[test]
fn after_a_plan_made_again_is_taken_back_the_plan_in_use_is_named_as_such() {
    let mut app = begun("", (Shape::Sticks, 1));
    heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
    let first = app.plan.used.unwrap();
    planned(&mut app);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    take_back(&mut app);
    let wood = |app: &mut App| app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [203; 10] });
    let (unused, cut_by) = ("planned since, not used", "the plan it was cut by");
    for mut app in [reloaded(&app), app] {
        wood(&mut app);
        says(&app, &[unused, "The plan in use"], &[cut_by]);
        heard(&mut app, [Tap::Open]);
        says(&app, &["Use these 3"], &["The job has this wood"]);
        heard(&mut app, [Tap::Kept(first)]);
        says(&app, &["The job has this wood", "1 of 4"], &["Use these"]);
        wood(&mut app);
        says(&app, &[cut_by], &[unused, "The plan in use"]);
        heard(&mut app, [Tap::Open]);
        assert_eq!(app.plan.used, Some(first));
    }
}
