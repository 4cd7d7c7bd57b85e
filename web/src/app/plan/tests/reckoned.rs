//! What a plan says of what it was reckoned with: wood nobody has sorted, and the figures of the saw.

use super::later::{again, planned};
use super::*;
use fivebar_core::ledger::decide::HaulCommand;

/// What is said of unsorted wood before and after the plan is used.
#[track_caller]
fn check(lines: &str, said: Option<&str>) {
    let mut app = planned(lines);
    let shown = page(&app);
    match said {
        Some(said) => assert!(shown.contains(&format!("Not sorted yet, so some may be rejects: {said}")), "{lines}: {shown}"),
        None => assert!(!shown.contains("Not sorted yet"), "{lines}: {shown}"),
    }
    heard(&mut app, [Tap::Use]);
    assert_eq!(page(&app).contains("Not sorted yet"), said.is_some(), "{lines}: {}", page(&app));
}

/// The pile of the plan in hand.
fn pile_of(app: &App) -> Lying {
    app.plan.given.as_ref().unwrap().sources[0].which().0
}

/// By the same sums as below: of four boards two or more are good by 0.923, three or more by 0.725; of three two or more by 0.809; of two one or more by
/// 0.923. Once it is used it is said of the boards that the job has and that are not cut.
#[test]
fn wood_of_a_used_plan_is_not_sorted_until_it_is() {
    let mut app = planned("");
    assert!(page(&app).contains("A, likely 7 of 12 good."));
    heard(&mut app, [Tap::Use]);
    let of = |app: &App, n: Option<(u32, u32)>| {
        let said = n.map(|(likely, of)| format!("Not sorted yet, so some may be rejects: A, likely {likely} of {of} good."));
        let shown = page(app);
        assert!(said.as_ref().map_or(!shown.contains("Not sorted yet"), |said| shown.contains(said)), "{said:?}: {shown}");
    };
    of(&app, Some((2, 4)));
    let lines = app.plan.found.as_ref().unwrap().sheet.lines.iter().map(|line| line.n).collect::<Vec<_>>();
    assert_eq!(lines, [2, 2]);
    heard(&mut app, [Tap::OneMore(0)]);
    of(&app, Some((2, 3)));
    heard(&mut app, [Tap::OneMore(0)]);
    of(&app, Some((1, 2)));
    heard(&mut app, (1..lines.len()).map(Tap::Tick));
    of(&app, None);
    heard(&mut app, [Tap::Tick(0)]);
    of(&app, Some((1, 2)));
    let Lying { haul, pile } = pile_of(&app);
    super::later::order(&mut app, Command::Haul(HaulCommand::Sort { haul, pile, n: 12 }));
    of(&app, None);
}

/// Planned again what can be taken is said: eight on the rack, and two of the job's that are not cut.
#[test]
fn what_is_cut_is_none_that_may_be_rejected() {
    let mut app = planned("");
    heard(&mut app, [Tap::Use, Tap::Tick(0)]);
    again(&mut app);
    assert!(page(&app).contains(" of 10 good."), "{}", page(&app));
}

/// By the same sums it takes all four that lie there: two are likely good; with eight rejects seen one or more by 0.887 and two or more by 0.596; with
/// ten sorted as good, two of them these, one of the others by 0.976 and both by 0.751.
#[test]
fn a_plan_that_takes_more_than_are_likely_good_says_so() {
    for (lines, said) in [
        ("reject 8 strips twist\n", Some("It takes 4 of A, and likely 1 is good: 3 may be lacking.")),
        ("gone 8 strips burnt\n", Some("It takes 4 of A, and likely 2 are good: 2 may be lacking.")),
        ("gone 8 strips burnt\ngood 10 strips\n", Some("It takes 4 of A, and likely 3 are good: 1 may be lacking.")),
        ("gone 8 strips burnt\ngood 12 strips\n", None),
        ("", None),
    ] {
        let mut app = planned(lines);
        let shown = page(&app);
        assert!(said.map_or(!shown.contains("may be lacking"), |said| shown.contains(said)), "{lines}: {shown}");
        heard(&mut app, [Tap::Use]);
        assert!(!page(&app).contains("may be lacking"), "{lines}");
    }
}

/// Counted again there are fewer on the rack: the four of the job stay four; and so they do where more were brought.
#[test]
fn what_lies_on_the_rack_is_no_wood_of_a_used_plan() {
    for lines in ["gone 8 strips burnt\n", "count 40 strips\n"] {
        let mut app = planned(lines);
        heard(&mut app, [Tap::Use]);
        assert!(page(&app).contains("A, likely 2 of 4 good."), "{lines}: {}", page(&app));
    }
    let mut app = planned("");
    heard(&mut app, [Tap::Use]);
    let Lying { haul, pile } = pile_of(&app);
    super::later::order(&mut app, Command::Haul(HaulCommand::Recount { haul, pile, n: 9, why: None }));
    assert!(page(&app).contains("A, likely 2 of 4 good."), "{}", page(&app));
}

/// By the sums of the beta-binomial in fractions: with 3 rejects and 9 good as the guess, eight or more of 12 are good by 0.778 and seven or
/// more by 0.878; with three good ones seen, seven or more of nine by 0.717 and six or more by 0.868. Likely is four times in five.
#[test]
fn wood_that_is_not_sorted_is_said_once() {
    check("", Some("A, likely 7 of 12 good."));
    check("good 12 strips\n", None);
    // Four are taken: of eight known to be good.
    check("good 8 strips\n", None);
    check("good 3 strips\n", Some("A, likely 6 of 9 good."));
}

/// What the job has is no better known because it has it: planned again it is said as on the page before, with what was sorted taken off; and of
/// pieces that were taken by hand too.
#[test]
fn what_the_job_has_is_not_sorted_by_that() {
    for (lines, said) in [("", "A, likely 7 of 12 good."), ("good 3 strips\n", "A, likely 6 of 9 good.")] {
        let mut app = planned(lines);
        heard(&mut app, [Tap::Use]);
        again(&mut app);
        assert!(page(&app).contains(&format!("Not sorted yet, so some may be rejects: {said}")), "{lines}: {}", page(&app));
    }
    let app = super::before::of_own();
    assert!(page(&app).contains("A, likely 7 of 12 good."), "{}", page(&app));
}

#[test]
fn the_figures_it_goes_by_stand_there_with_the_way_to_them() {
    let app = planned("");
    let said = "Reckoned with kerf 3, off strip ends 2.5, off long edges 2, over in thickness 2, off glued edges 0.5, worth keeping 250, \
        least end piece 100, least piece 60, in mm.";
    let shown = page(&app);
    assert_eq!(shown.matches(said).count(), 2, "on the screen and on paper: {shown}");
    assert!(shown.contains("The saw’s figures"), "{shown}");
    let machine = planned("machine jointer length 300 mm\n");
    assert!(page(&machine).contains("machines from 300"), "{}", page(&machine));
}

/// One piece that nobody has looked at is three times in four good, which is less than four in five: it is not told as if it were bad.
#[test]
fn of_one_piece_that_is_not_sorted_its_share_of_rejects_is_told() {
    let mut app = super::told::at_rack(
        "pile one walnut-black 38 x 60 x 700 mm\ncount 1 one\npart \"slat\" 1 of 30 x 50 x 500 mm walnut-black for tray\n",
    );
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::Go]);
    super::told::solved(&mut app);
    super::told::says(
        &app,
        &["1 of D is not sorted yet: of such wood about 25 % is rejected."],
        &["likely 0", "may be lacking", "four times in five"],
    );
}
