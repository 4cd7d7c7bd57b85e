//! What the page of a plan says: sizes at the saw, near misses, what is glued and why, on paper and at the saw.

use super::*;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::unlock::Tries;

/// A rack of oak strips and tread ends and of short beech; three jobs.
pub(super) const RACK: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile strips oak-european 27 x 62 x 1010 mm\n\
    count 37 strips\npile ends oak-european 40 x 150 x 365 mm\ncount 31 ends\npile bits beech-european 20 x 45 x 60 mm\ncount 5 bits\nhome\n\
    job tray \"Bench\" 1 spec\n";
/// The parts of a table.
pub(super) const PARTS: &str = "part \"top\" 1 of 25 x 300 x 900 mm for tray\npart \"leg\" 4 of 38 x 38 x 350 mm for tray\n";

pub(super) fn at_rack(parts: &str) -> App {
    app_of(&format!("{RACK}{parts}"))
}

/// Types figures into the slots of a shape; none leaves a slot as it is.
pub(super) fn typed(app: &mut App, figures: &[&str]) {
    for (nth, figure) in figures.iter().enumerate().filter(|(_, figure)| !figure.is_empty()) {
        heard(app, [Tap::At(nth)]);
        heard(app, figure.chars().map(|digit| Tap::Press(Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap()))));
    }
}

/// What the page says of the plan of a shape with these figures, found in so many steps.
pub(super) fn said(parts: &str, taps: &[Tap], figures: &[&str]) -> (App, String) {
    let mut app = at_rack(parts);
    heard(&mut app, [Tap::Open]);
    heard(&mut app, taps.iter().cloned());
    typed(&mut app, figures);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    let shown = page(&app);
    (app, shown)
}

/// What was asked is planned in so many steps, and the other ways of a top in turn.
pub(super) fn solved(app: &mut App) {
    let mut asked = app.plan.given.as_ref().unwrap_or_else(|| panic!("{:?}", app.plan.why_not)).ready.asked.clone();
    loop {
        let answered = asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
        let short = asked.short_end(&answered).map(|short| Planning::ShortEnd { worth: answered.worth.clone(), short });
        let told = [Some(Planning::Done(Box::new(answered))), short];
        let orders: Vec<Order> = told.into_iter().flatten().flat_map(|told| app.told(crate::app::news::News::Planning(told))).collect();
        let next = orders.into_iter().find_map(|order| if let Order::Plan { asked, ms } = order { Some((asked, ms)) } else { None });
        match next {
            Some((next, ms)) if ms < LONGER => asked = *next,
            _ => return unlocked(app),
        }
    }
}

/// The page is painted, and what would give more is found beside it.
pub(super) fn unlocked(app: &mut App) {
    let orders = app.told(crate::app::news::News::Painted);
    for order in orders {
        if let Order::Unlock(of) = order {
            let found = Tries::begin(&of).to_their_end();
            app.told(crate::app::news::News::Unlocks(of, Some(found)));
        }
    }
}

/// What the page says, and what it does not.
#[track_caller]
pub(super) fn says(app: &App, wanted: &[&str], never: &[&str]) {
    let shown = page(app);
    for words in wanted {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    for words in never {
        assert!(!shown.contains(words), "never {words}: {shown}");
    }
}

#[track_caller]
pub(super) fn check(parts: &str, taps: &[Tap], figures: &[&str], wanted: &[&str]) {
    let (_, shown) = said(parts, taps, figures);
    for words in wanted {
        assert!(shown.contains(words), "{words}: {shown}");
    }
}

/// The tread ends are left out, or the strips are.
pub(super) fn without(nth: usize, mut taps: Vec<Tap>) -> Vec<Tap> {
    let app = at_rack("");
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    taps.push(Tap::Turn(all[nth].which()));
    taps
}

/// By hand: 400 / 8 is 50, half a millimetre is jointed off each edge; 27 less 2 is 25. Seven rows of 57 are what 62 gives.
#[test]
fn rows_say_how_wide_and_how_thick() {
    let strips = without(1, vec![Tap::Shape(Shape::Rows)]);
    check(
        "",
        &strips,
        &["1200", "400"],
        &[
            "8 rows. No plan of 8 rows of oak needs fewer than 10 pieces.",
            "Rows 50 mm wide, planed to 25 thick.",
            "Rip 51 wide, joint to 50, plane to 25 thick.",
            "9 pieces give 9045 of the 9600 mm asked.",
            "1 mm narrower, 399 mm, needs 7 rows.",
            "litres taken for good, 26",
            ": cutting 0.1, ripping and planing",
            "of 9689 mm is waste",
            "Left out: bits, too short.",
        ],
    );
    check("", &strips, &["1200", "398"], &["7 rows.", "Rows 56.9 mm wide, together 398.3, 0.3 more than asked, planed to 25 thick."]);
    let ends = [
        "Strips: too narrow for 7 rows in 400 mm.",
        "Rip each in two 58.2 wide, joint to 57.2, plane to 38 thick.",
        "No plan of 7 rows of oak needs fewer than 24 strips.",
        "23 strips give 8280 of the 8400 mm asked.",
    ];
    check("", &[Tap::Shape(Shape::Rows)], &["1200", "400", "7"], &ends);
}

/// What is small, one, or of no ripping is said as it is.
#[test]
fn figures_are_said_as_they_are() {
    use crate::words::en::{bound, plan, told};
    let sized = Some("1.2");
    let check = |said: String, wanted: &str| assert_eq!(said, wanted);
    check(told::narrower("1 mm", "40 mm", ("1", true)), "1 mm narrower, 40 mm, needs 1 row.");
    check(told::waste_parts(Shape::Sticks, [None, sized], true), ", nearly all of it by planing to size.");
    check(told::waste_parts(Shape::Rows, [None, sized], false), ", all of it by ripping and planing.");
    check(told::waste_parts(Shape::Rows, [sized, None], true), ", nearly all of it by cutting.");
    check(told::waste_parts(Shape::Rows, [sized, None], false), ", all of it by cutting.");
    check(plan::saw_cuts("12", false, true), "12 cuts, with trimming.");
    check(plan::saw_cuts("1", true, false), "1 cut.");
    check(bound::takes_less(Shape::Parts, "20.5", false), "No plan takes more than 20.5 % less wood than this one.");
    check(bound::takes_less(Shape::Parts, "20.5", true), "No plan takes more than 20.5 % less wood than this one, pieces counted whole.");
    check(bound::takes_less(Shape::Sticks, "20.5", false), "No plan takes more than 20.5 % less length than this one.");
    check(told::held_for(plan::NO_PLAN_MORE, &[told::BY_CROSSCUTS.into()]), "No plan can make more, by crosscuts alone.");
}

/// By hand: 2 over each way; strips of 62 less 2 off each edge are 58 wide.
#[test]
fn parts_are_cut_by_all_their_sides() {
    check(
        PARTS,
        &[Tap::Shape(Shape::Parts)],
        &[],
        &[
            "Long × wide × thick, with 2 over each way to finish.",
            "902 × 58 × 27, top",
            " of 352 × 40 × 40, leg",
            "A: strips; B: ends",
            "Glue up and finish, mm",
            "Glue top of 5 × 58 and 1 ×",
            "1 × top: 900 × 300 × 25",
            "4 × leg: 350 × 38 × 38",
            "litres taken",
            ": cutting",
            "planing and finishing",
            "The top, 300 mm wide, moves",
            "A wide glued top needs room to move",
        ],
    );
}

/// By hand: strips are 62 wide; 61 with 2 over is 63, and with 1 over the whole strip would do, its edges planed. A key plans it so; the plan
/// stands, is used and outlives the page, and the figure of the saw comes back with one tap.
#[test]
fn a_part_that_is_glued_for_its_over_alone_can_have_less() {
    let slat = "part \"slat\" 2 of 20 x 61 x 900 mm for tray\n";
    let why = "Slat is glued up: A is 1 mm too narrow for 2 mm over in width. With 1 mm over one strip does.";
    // 58 and 6 are 63 less 1 of joint, and no strip is narrower than 20: both slats take two strips.
    let glued = "Glue 2 × slat of 1 × 58 and 1 × 20 wide: together 77, sawn to 63.";
    check(slat, &[Tap::Shape(Shape::Parts)], &[], &[glued, why, "Plan with 1 over in width"]);
    let beech = "pile beech beech-european 20 x 45 x 700 mm\ncount 18 beech\npart \"slat\" 5 of 16 x 44 x 650 mm beech-european for tray\n";
    let instead = "is 1 mm too narrow for 2 mm over in width. With 1 mm over 5 boards do instead of 10.";
    check(beech, &[Tap::Shape(Shape::Parts)], &[], &[instead]);
    let (_, shown) = said(PARTS, &[Tap::Shape(Shape::Parts)], &[]);
    assert!(!shown.contains("too narrow for"), "{shown}");
    let (mut app, _) = said(slat, &[Tap::Shape(Shape::Parts)], &[]);
    heard(&mut app, [Tap::Over(Some(fivebar_core::quantity::Length::MM))]);
    solved(&mut app);
    let one = |app: &App| {
        let shown = page(app);
        let wanted = ["2 boards: 902 × 62 × 22, slat", "1 mm over in width in this plan", "with 2, 1 and 2 over to finish", "Use these"];
        for words in wanted {
            assert!(shown.contains(words), "{words}: {shown}");
        }
        assert!(!shown.contains("changed") && !shown.contains("Glue"), "{shown}");
    };
    one(&app);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    one(&again);
    heard(&mut again, [Tap::Change]);
    assert!(page(&again).contains("1 mm over in width in this plan"), "{}", page(&again));
    heard(&mut again, [Tap::Over(None)]);
    solved(&mut again);
    assert!(page(&again).contains(why), "{}", page(&again));
}

/// On paper a piece has its length, and a search that still goes on is said.
#[test]
fn paper_says_lengths_and_that_it_was_early() {
    let strips = without(1, vec![Tap::Shape(Shape::Rows)]);
    let (mut app, _) = said("", &strips, &["1200", "400"]);
    let found = app.plan.found.as_ref().unwrap().answered.clone();
    let open = Answered { bound: vec![found.worth[0], found.worth[1] - 2], ..found };
    heard(&mut app, [Tap::Go]);
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(open))));
    let shown = page(&app);
    assert!(
        shown.contains("A: 1005")
            && shown.contains("print-only\">A: 27 × 62 × 1010<")
            && shown.contains("print-only\">Printed before the search was done"),
        "{shown}"
    );
    heard(&mut app, [Tap::Stop]);
    assert!(!page(&app).contains("Printed before the search was done"));
}

/// By hand: 328 px hold 1200 mm, so 400 mm are 109 px: a row of 8 is 13.7 px high, one of 16 is 6.8.
#[test]
fn joints_are_drawn_no_thicker_than_the_rows_bear() {
    for (rows, class) in [("8", "class=\"lay\""), ("16", "class=\"lay fine\"")] {
        check("", &[Tap::Shape(Shape::Rows)], &["1200", "400", rows], &[class]);
    }
}

/// By hand: a top of 300 with 2 over is cut 302 wide; of strips of 62 and ends of 150 only the strips are 900 long.
#[test]
fn a_glued_part_says_why() {
    let why = "Top is glued up: with what is over it is cut 302 mm wide, and the widest board that is thick and long enough is A, 62 mm.";
    check(PARTS, &[Tap::Shape(Shape::Parts)], &[], &[why, "Parts for 1 piece."]);
    let (_, shown) = said("part \"leg\" 4 of 38 x 38 x 350 mm for tray\n", &[Tap::Shape(Shape::Parts)], &[]);
    assert!(!shown.contains("is glued up"), "{shown}");
}

/// From sticks to parts what is asked stays, and so do boards to buy whatever is asked; after a plan that is used all begins anew.
#[test]
fn another_shape_of_the_same_parts_keeps_what_was_typed() {
    let mut app = at_rack(PARTS);
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::LeaveOut("top".into()), Tap::Press(Press::Digit(3))]);
    let boards = fivebar_core::sheet::make::Boards { wood: None, size: [Length::MM; 3], n: 2, price: None };
    app.plan.draft.bought.push(boards);
    let asked = |app: &App| {
        let draft = &app.plan.draft;
        (draft.form.slots[0].text.clone(), draft.without.clone(), draft.bought.len())
    };
    let typed = ("3".to_owned(), vec!["top".to_owned()], 1);
    heard(&mut app, [Tap::Shape(Shape::Parts)]);
    assert_eq!(asked(&app), typed);
    heard(&mut app, [Tap::Shape(Shape::Sticks)]);
    assert_eq!(asked(&app), typed);
    heard(&mut app, [Tap::Shape(Shape::Rows)]);
    assert_eq!(asked(&app).2, 1, "boards to buy");
    let (mut app, _) = said(PARTS, &[Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())], &[]);
    heard(&mut app, [Tap::Use, Tap::Shape(Shape::Sticks)]);
    assert_eq!(asked(&app).1, Vec::<String>::new());
}

/// Wood that is to be cut comes before an empty bench.
#[test]
fn the_next_act_of_a_job_that_is_cut_is_the_list_at_the_saw() {
    let mut app = opened("");
    asked(&mut app);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    heard(&mut app, [Tap::Use]);
    app.jobs.room = None;
    let shown = page(&app);
    assert!(shown.contains("To the list at the saw") && !shown.contains("Go to the bench"), "{shown}");
    app.heard(Msg::Jobs(Jobs::Next), Now { wall: app.now, chance: [90; 10] });
    assert!(page(&app).contains("At the saw, mm"), "{}", page(&app));
}
