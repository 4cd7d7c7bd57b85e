//! Lengths from sticks that have the very section of a part.

use super::told::{at_rack, said, solved};
use super::*;

/// What the page says of rails of 20 x 40 x 300 from six sticks of a section, and whether they are planned with.
#[track_caller]
fn check(section: &str, fits: bool) {
    let rails = "part \"rail\" 4 of 20 x 40 x 300 mm oak-european for tray\n";
    let mut app = at_rack(&format!("pile sticks oak-european {section} x 950 mm\ncount 6 sticks\n{rails}"));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks)]);
    // The others are left out.
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let others = all.iter().filter(|it| it.pile.name.as_deref() != Some("sticks")).map(|it| Tap::Turn(it.which()));
    heard(&mut app, others.chain([Tap::Go]).collect::<Vec<_>>());
    if !fits {
        assert!(app.plan.given.is_none() && page(&app).contains("too thin"), "{section}: {}", page(&app));
        return;
    }
    solved(&mut app);
    let shown = page(&app);
    assert!(0 < app.plan.found.as_ref().unwrap().sheet.made, "{section}: {shown}");
    let right = shown.contains("has just the section of rail, which is only crosscut: nothing need be over in thickness or width.");
    assert_eq!(right, section == "20 x 40" || section == "40 x 20", "{section}: {shown}");
    assert!(shown.contains("over in width") && shown.contains("over in thickness"), "{section}: {shown}");
}

/// A section that is just right, either way round, is not planed; one a little larger is, and lacks what that takes.
#[test]
fn a_section_that_is_just_right_needs_nothing_over() {
    check("20 x 40", true);
    check("40 x 20", true);
    check("21 x 40", false);
    check("25 x 45", true);
}

/// A job of one piece: parts for two are questioned, for one they are not, nor as many as the wood gives.
#[test]
fn parts_for_more_than_the_job_is_of_are_questioned() {
    let words = "The job is of 1 piece, and this is for 2 pieces.";
    let rail = "part \"rail\" 1 of 24 x 58 x 450 mm for tray\n";
    for shape in [Shape::Parts, Shape::Sticks] {
        for (figure, is_said) in [(Some(2), true), (Some(1), false), (None, false)] {
            let ask = figure.map_or(vec![Tap::AsMany], |n| vec![Tap::At(0), Tap::Press(Press::Digit(n))]);
            let (_, shown) = said(rail, &[vec![Tap::Shape(shape)], ask].concat(), &[]);
            assert_eq!(shown.contains(words), is_said, "{figure:?} {shown}");
        }
    }
}

/// The planks alone give too few legs, and the strips were left out on purpose: that is said where no piece can be made, as where some are.
#[test]
fn a_pile_that_was_left_out_is_named_also_where_no_piece_can_be_made() {
    let planks = "pile planks oak-european 27 x 62 x 900 mm\ncount 9 planks\n";
    for shape in [Shape::Parts, Shape::Sticks] {
        for legs in [4, 40] {
            let mut app = at_rack(&format!("part \"leg\" {legs} of 20 x 50 x 550 mm oak-european for tray\n{planks}"));
            let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
            let strips = all.iter().find(|it| it.pile.name.as_deref() == Some("strips")).unwrap().which();
            heard(&mut app, [Tap::Open, Tap::Shape(shape), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Turn(strips), Tap::Go]);
            solved(&mut app);
            let shown = page(&app);
            assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, i64::from(legs == 4));
            assert_eq!(shown.matches("Strips left out: not among the pieces to use.").count(), 1, "{shape:?} {legs}: {shown}");
            assert!(!shown.contains("nothing of it is needed"), "{shown}");
        }
    }
}

/// As many as the wood gives are parts for nine pieces of a job of one: the key that takes the wood says so.
#[test]
fn the_key_says_for_how_many_more_pieces_than_the_job_is_of() {
    let mut app = super::told::at_rack("part \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::AsMany]);
    super::rack_first::planned_out(&mut app, vec![Tap::Go]);
    let made = app.plan.found.as_ref().unwrap().sheet.made;
    assert!(1 < made);
    assert!(page(&app).contains(&format!("{made} pieces; the job has 1, ")), "{}", page(&app));
}

/// Twenty strips of 5 7/8 with a kerf of 1/16 and nothing off the ends: six come of a cherry board of 36 x 4 x 1, so three boards and a stick are over
/// 3 board feet; three of a walnut stick of 18 x 2 x 3/4, so seven are 7 x 27 / 144 = 1.31. By their length boards are taken, and the sticks named.
#[test]
fn a_pile_of_just_the_section_that_does_with_less_wood_is_named() {
    let check = |(strips, long, sticks): (u32, u32, u32), boards: u32, does: u32, is_said: bool| {
        let mut app = App::for_tests(Place::Jobs);
        let story = fivebar_core::story::tell(&format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile boards cherry-black 1 x 4 x 36 in\ncount 9 boards\n\
             pile sticks walnut-black 3/4 x 2 x {long} in\ncount {sticks} sticks\nhome\njob tray \"Tray\" 1 spec\n\
             part \"strip\" {strips} of 3/4 x 2 x 5 7/8 in for tray\n"
        ));
        assert_eq!(story.refused, []);
        app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
        app.now = Wall::new(story.now.at, story.now.offset);
        app.jobs.open = story.names.job("tray");
        let mut lengths = [None; 13];
        (lengths[0], lengths[2]) = (Length::INCH_64TH.times(4).ok(), Some(Length::ZERO));
        let saw = fivebar_core::ledger::kind::plan::SawSet::of(lengths, None);
        super::later::order(&mut app, Command::Plan(fivebar_core::ledger::decide::PlanCommand::SetSaw(saw)));
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
        solved(&mut app);
        let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
        let used = found.sheet.used.iter().map(|used| (given.sources[used.source].pile.name.clone().unwrap(), used.pieces));
        assert_eq!(
            used.collect::<Vec<_>>(),
            [("boards".to_owned(), boards)].into_iter().chain((boards == 3).then(|| ("sticks".to_owned(), 1))).collect::<Vec<_>>()
        );
        let shown = page(&app);
        assert_eq!(shown.contains(&format!("B has just the section of strip: {does} of it alone do, ")), is_said, "{shown}");
        assert!(!shown.contains("nothing of it is needed") || !is_said, "{shown}");
        // Some of boards and some of sticks are strips of two woods, of which none was said.
        let woods = "is cut of several woods, as none is said for it: cherry and walnut.";
        assert_eq!((shown.contains(woods), shown.contains("Set the wood of strip")), (boards == 3, boards == 3), "{shown}");
    };
    check((20, 18, 7), 3, 7, true);
    check((20, 18, 6), 3, 7, false);
    // Twenty-four come of four boards, and nothing of the sticks is cut.
    check((24, 19, 8), 4, 8, true);
    check((24, 19, 7), 4, 8, false);
}

/// A stick of 100 for rails of 40: with 2 over they are ripped 42 wide, and by hand 100 less 42 and a kerf of 3 are 55 beside; one rip for each
/// stick counts among the cuts, and what is ripped off is no planing. One of 45 leaves no more than a kerf, which is planed off.
#[test]
fn what_is_ripped_off_a_wider_stick_is_said_and_counted() {
    let planned = |wide: u32| {
        let rails = "part \"rail\" 4 of 20 x 40 x 300 mm walnut-black for tray\n";
        let mut app = at_rack(&format!("pile sticks walnut-black 25 x {wide} x 950 mm\ncount 6 sticks\n{rails}"));
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
        solved(&mut app);
        app
    };
    let (app, narrow) = (planned(100), planned(45));
    let sheet = |app: &App| app.plan.found.as_ref().unwrap().sheet.clone();
    super::told::says(&app, &["Rip 42 wide, the strip of 55 left beside is waste."], &[]);
    super::told::says(&narrow, &[], &["Rip ", "left beside"]);
    let (wide, narrow) = (sheet(&app), sheet(&narrow));
    assert_eq!(wide.cuts, narrow.cuts + wide.used.iter().map(|used| used.used).sum::<i64>());
    // By hand: of each 300 mm 25 x 42 less 20 x 40 is planed.
    let sizing =
        fivebar_core::quantity::Volume::of(Length::MM.times(4 * 300).unwrap(), Length::MM.times(250).unwrap(), Length::MM).unwrap();
    assert_eq!(wide.waste.sizing, sizing);
}
