//! What the page of a field says: its sides, how far off they are, its pattern and its tiles.

use super::told::{at_rack, check, said, says, solved, typed, without};
use super::*;

/// By hand: a strip of 1010 gives 600 and keeps 402, and 62 less 5 are 57, of which it takes six, 50 each; planed to the 20 that are asked.
/// A basket of two blocks, each three of 300 x 100 side by side, is ripped so; no blocks make 600 and 310.
#[test]
fn a_field_repeats_what_was_asked_and_how_far_off_it_is() {
    let brick = [Tap::Shape(Shape::Field), Tap::Pattern(1)];
    check(
        "",
        &brick,
        &["600", "300", "20"],
        &[
            "nearest possible",
            "Brick, 600 × 300 mm, 20 high.",
            "No field of these pieces comes nearer.",
            "Asked: brick, 600 × 300 mm, 20 high. It is just so.",
            "plane to 20 thick",
            "Waste",
        ],
    );
    let straight = [
        "Rip 51 wide, joint to 50, plane to 20 thick",
        "6 cut to 600",
        "402 left to keep",
        "Straight, 600 × 300 mm, 20 high.",
        "Left 31 whole and 6 of 402",
    ];
    check("", &without(1, vec![Tap::Shape(Shape::Field)]), &["600", "300", "20"], &straight);
    let basket = ["Rip 101 wide, joint to 100, plane to 20 thick.", "6 cut to 300", "It is just so."];
    check("", &without(0, vec![Tap::Shape(Shape::Field), Tap::Pattern(2)]), &["600", "300", "20"], &basket);
    let whole = ["nearest of these tiles", "No field of tiles of these sizes comes nearer; others may."];
    check("", &[Tap::Shape(Shape::Field), Tap::Pattern(2)], &["600", "310", "20"], &whole);
    // By hand: a tread end 150 wide gives two of 60 side by side, with a kerf between and its edges trimmed; one is planned.
    let two =
        "One whole tile is planned of each piece, though B would give two. To plan with both, saw them in two and count them as such.";
    check("", &without(0, vec![Tap::Shape(Shape::Field), Tap::Pattern(0)]), &["340", "60", "20"], &[two]);
    let (_, one) = said("", &without(0, vec![Tap::Shape(Shape::Field), Tap::Pattern(2)]), &["600", "300", "20"]);
    assert!(!one.contains("One whole tile is planned"), "{one}");
    let (app, shown) = said("", &brick, &["580", "360", "38"]);
    assert!(shown.contains("Brick, 580 × 360 mm, 38 high.") && shown.contains("It is just so."), "{shown}");
    assert!(shown.contains("nearest possible") && shown.contains("No field of these pieces comes nearer."), "{shown}");
    assert!(app.plan.found.as_ref().is_some_and(|found| found.sheet.lines.iter().any(|line| !line.numbers.is_empty())), "brick is cut");
}

/// By hand: a board of 80 gives tiles 75 wide, of 680 four of 160 with 31 over; twelve of them are 480 x 300. 59 is under the least piece, and
/// 676 is longer than what is left of a board once its ends are square. The strips of the rack give 1005, so they are left out.
#[test]
fn tiles_of_a_length_come_several_out_of_each_board() {
    let boards = "pile boards maple-sugar 25 x 80 x 680 mm\ncount 20 boards\n";
    let taps = without(1, without(0, vec![Tap::Shape(Shape::Field)]));
    let of = |tile: &str| {
        let mut app = at_rack(boards);
        heard(&mut app, [Tap::Open]);
        heard(&mut app, taps.iter().cloned());
        typed(&mut app, &["480", "300", "", "", tile]);
        heard(&mut app, [Tap::Go]);
        app
    };
    let mut app = of("160");
    solved(&mut app);
    let shown = [
        "Straight, 480 × 300 mm",
        "It is just so.",
        "3 boards: 4 tiles of 160 from each, 31 mm of each left",
        "Used 3 of 20 pieces.",
        "Use these 3",
    ];
    says(&app, &shown, &["two whole tiles in length"]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &shown, &[]);
    heard(&mut again, [Tap::Change]);
    assert_eq!(again.plan.draft.form.text(4), "160");
    says(&of("59"), &["A tile of 59 mm is shorter than your least piece, 60 mm."], &[]);
    let long = "A tile of 676 mm does not come out of these pieces: the longest gives 675 mm between its trimmed ends.";
    says(&of("676"), &[long], &[]);
    let (_, whole) = said(boards, &taps, &["300", "300"]);
    assert!(whole.contains("D gives two whole tiles in length, and one is planned. With a tile length, all that come out are."), "{whole}");
    let mut herringbone = at_rack(boards);
    heard(&mut herringbone, [Tap::Open]);
    heard(&mut herringbone, taps.iter().cloned().chain([Tap::Pattern(3)]));
    typed(&mut herringbone, &["480", "300"]);
    heard(&mut herringbone, [Tap::Go]);
    let asks = "A herringbone of whole pieces has tiles of 660 mm here, longer than the 300 mm side. Say a tile length.";
    says(&herringbone, &[asks], &[]);
}

/// One pattern at a time, or any.
#[test]
fn a_pattern_is_chosen_and_not_added() {
    let on = |taps: &[Tap]| {
        let mut app = at_rack("");
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Field)]);
        heard(&mut app, taps.iter().cloned());
        app.plan.draft.patterns
    };
    assert_eq!(on(&[]), [true, false, false, false, false]);
    assert_eq!(on(&[Tap::Pattern(1)]), [false, true, false, false, false]);
    assert_eq!(on(&[Tap::Pattern(1), Tap::AnyPattern]), [true, true, true, true, false]);
    assert_eq!(on(&[Tap::AnyPattern, Tap::Pattern(4)]), [false, false, false, false, true]);
}

/// What is asked to be of two woods is, though one of them alone comes as near; of one wood there is none.
#[test]
fn two_woods_by_turns_are_two_woods() {
    let two = vec![Tap::Shape(Shape::Field), Tap::Pattern(0), Tap::Two];
    let (app, shown) = said("", &two, &["220", "40"]);
    let used = app.plan.found.as_ref().map(|found| found.sheet.used.iter().filter(|used| 0 < used.pieces).count());
    assert_eq!(used, Some(2), "{shown}");
    let mut app = at_rack("");
    heard(&mut app, [Tap::Open]);
    heard(&mut app, without(2, two));
    typed(&mut app, &["220", "40"]);
    heard(&mut app, [Tap::Go]);
    assert!(page(&app).contains("All pieces to use are of one wood: two by turns need two."), "{}", page(&app));
}

/// By hand: 1200 less 5 off its ends gives three tiles of 300 with kerfs, and 286 are over, of which a cut goes first: what is left to keep is said
/// alone.
#[test]
fn what_tiles_leave_to_keep_is_one_figure() {
    let mut app = at_rack("pile boards maple-sugar 25 x 80 x 1200 mm\ncount 20 boards\n");
    heard(&mut app, [Tap::Open]);
    heard(&mut app, without(1, without(0, vec![Tap::Shape(Shape::Field)])));
    typed(&mut app, &["900", "300", "", "", "300"]);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    says(&app, &["3 tiles of 300 from each", " left to keep"], &["of each left"]);
}
