//! What a page says is proven holds for what was tried alone: crosscuts, an end piece, the shortest of a pile, tiles of one size.

use super::told::{said, solved};
use super::*;

#[track_caller]
fn check((lines, taps): (&str, &[Tap]), figures: &[&str], wanted: &[&str], not: &[&str]) -> App {
    let (app, shown) = said(lines, taps, figures);
    wanted.iter().for_each(|words| assert!(shown.contains(words), "{words}: {shown}"));
    not.iter().for_each(|words| assert!(!shown.contains(words), "{words}: {shown}"));
    app
}

/// By hand: three of A and two of C are 2793 long and 3.9 litres, five of A are 3050 long and 3.3 litres: least length is not least wood.
#[test]
fn sticks_are_proven_by_length_and_by_crosscuts_alone() {
    let rails = "pile a walnut-black 21 x 51 x 610 mm\ncount 44 a\npile c walnut-black 45 x 45 x 483 mm\ncount 20 c\n\
        part \"rail\" 6 of 19 x 38 x 254 mm walnut-black for tray\npart \"cross\" 5 of 19 x 38 x 178 mm walnut-black for tray\n";
    let least = "Proven: no plan takes less in length by crosscuts alone, pieces counted whole.";
    check((rails, &[Tap::Shape(Shape::Sticks)]), &[], &["least length taken", least], &["less wood", "best possible"]);
}

/// By hand: two of 50 with 2 over each and a kerf of 3 lie side by side in 120; the job's parts makes four of 300 out of two ends.
#[test]
fn a_stick_wide_enough_for_two_is_named_with_the_way_that_rips() {
    let cleats = |wide: i64| {
        format!("pile end walnut-black 38 x {wide} x 320 mm\ncount 15 end\npart \"cleat\" 4 of 30 x 50 x 300 mm walnut-black for tray\n")
    };
    let two = "D is wide enough for two of cleat side by side, and gives one here.";
    let sticks = [Tap::Shape(Shape::Sticks)];
    let mut app = check((&cleats(120), &sticks), &[], &[two, "Plan the job’s parts", "ripped too"], &["less wood"]);
    heard(&mut app, [Tap::Shape(Shape::Parts), Tap::Go]);
    solved(&mut app);
    assert!(page(&app).contains("Used 2 of 15 pieces."), "{}", page(&app));
    check((&cleats(106), &sticks), &[], &[], &["side by side", "ripped too"]);
}

/// By hand: two whole ones of 315 and an end of 70, under the least end of 100; 70 lies between them where strips may be cut.
#[test]
fn a_row_that_may_lose_of_an_end_alone_says_so() {
    let walnut = "pile end walnut-black 38 x 120 x 320 mm\ncount 15 end\n";
    let taps = [Tap::Shape(Shape::Rows), Tap::Split(false)];
    let taps = [&taps[..], &super::told::without(0, super::told::without(1, vec![]))].concat();
    let never = "Not one row can be laid. No plan of walnut can reach 1 row, with only an end piece cut.";
    let mut app = check(
        (walnut, &taps),
        &["700", "100", "1"],
        &[never, "now only an end piece is cut", "too narrow for 1 row in 100"],
        &["one in a row"],
    );
    heard(&mut app, [Tap::Change]);
    assert!(page(&app).contains("Only an end piece is cut") && !page(&app).contains("one in a row"), "{}", page(&app));
    heard(&mut app, [Tap::Go, Tap::CutInPieces]);
    solved(&mut app);
    assert!(page(&app).contains("1 row.") && !page(&app).contains("an end piece cut"), "{}", page(&app));
}

/// By hand: 595 of each, two of which are 1190: two rows of 1180 take four if all are as short as 600, and no more is known of longer ones.
#[test]
fn what_rests_on_the_shortest_of_a_pile_says_so() {
    let band = |low: i64| format!("pile band walnut-black 38 x 60 x {low}..900 mm\ncount 15 band\n");
    let taps = |other: &[Tap]| [&[Tap::Shape(Shape::Rows)], other, &super::told::without(0, super::told::without(1, vec![]))].concat();
    let fewest = "No plan of 2 rows of walnut needs fewer than 4 pieces, if all are as short as 600 mm.";
    check((&band(600), &taps(&[])), &["1180", "100", "2"], &[fewest, "is 600–900 mm long, and reckoned at 600"], &[]);
    let several = format!("{}pile other walnut-black 38 x 60 x 610..700 mm\ncount 15 other\n", band(600));
    let fewest = "needs fewer than 4 pieces, if all are as short as the shortest of their piles.";
    check((&several, &taps(&[])), &["1180", "100", "2"], &[fewest], &[]);
    let fixed = format!("{}pile other walnut-black 38 x 60 x 610 mm\ncount 15 other\n", band(600));
    let fewest = "needs fewer than 4 pieces, if all of D are as short as 600 mm.";
    check((&fixed, &taps(&[])), &["1180", "100", "2"], &[fewest], &[]);
    let part = "part \"slat\" 4 of 20 x 50 x 300 mm walnut-black for tray\n";
    let more = [
        "No plan can make more, if all are as short as 600 mm.",
        "No plan can make more, by crosscuts alone, if all are as short as 600 mm.",
    ];
    for (shape, more) in [Shape::Parts, Shape::Sticks].into_iter().zip(more) {
        check((&format!("{}{part}", band(600)), &[Tap::Shape(shape)]), &["20"], &["of 20 pieces. ", more], &[]);
        check((&format!("{}{part}", band(900)), &[Tap::Shape(shape)]), &["20"], &["of 20 pieces. "], &["as short as"]);
    }
}

/// By hand: two of 18 x 39 x 300 cut to 250 and brought to 16 x 34 are 0.42 litres, of which cutting takes 0.070 and planing 0.079.
#[test]
fn a_share_of_the_waste_is_not_rounded_away() {
    let small = "pile bar walnut-black 18 x 39 x 300 mm\ncount 15 bar\n";
    let taps = [&[Tap::Shape(Shape::Field)][..], &super::told::without(0, super::told::without(1, vec![]))].concat();
    let both = "Waste 0.15 of 0.42 litres taken, 35.4 %: cutting 0.07, ripping and planing 0.08.";
    check((small, &taps), &["500", "34", "16"], &[both], &["all of it by cutting"]);
}

/// By hand: of boards of 120 tiles of 115 are laid two long, 230; one board gives two cells of 115 and no more.
#[test]
fn a_field_that_is_not_near_enough_says_of_which_tiles() {
    let board = "pile board walnut-black 38 x 120 x 320 mm\ncount 1 board\n";
    let taps = [Tap::Shape(Shape::Field), Tap::Pattern(3)];
    let taps = [&taps[..], &super::told::without(0, super::told::without(1, vec![]))].concat();
    let nearest = "None within 3 mm was found. The nearest, of tiles 230 × 115, is ";
    check((board, &taps), &["400", "300", "35"], &[nearest], &["Not within"]);
}

/// By hand, of boards of 120 x 320 for 500 x 400: straight, eight of 250 x 100 take eight boards. A herringbone of twenty cells of 100 is
/// ripped to them: four tiles of three, 200 + 100 twice and 200 once are seven boards, 7 of 10.2 litres finished. Of two piles that make the
/// same, the thinner one wastes less, whichever is named first. In its fourth line three tiles stand side by side, in its third column three
/// lie, and all is glued: it moves as 300 both ways.
#[test]
fn whichever_is_nearest_is_the_one_that_wastes_least() {
    let taps = [Tap::Shape(Shape::Field), Tap::AnyPattern];
    let taps = [&taps[..], &super::told::without(0, super::told::without(1, vec![]))].concat();
    let board = |name: &str, thick: u32| format!("pile {name} walnut-black {thick} x 120 x 320 mm\ncount 26 {name}\n");
    let herringbone = [
        "Herringbone, 500 × 400 mm, 35 high.",
        "fields that were planned none as near wastes less than this, 31.5 %.",
        "Its tiles lie both ways, and so it moves through the year: at most ",
        " in its width, 300 mm of which lie across the grain, and ",
        " in its depth, 300 mm of which lie across the grain.",
        "A wide glued top needs room to move: fasten it so that it can.",
    ];
    let app = check((&board("board", 38), &taps), &["500", "400", "35"], &herringbone, &[]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert!(again.plan.draft.any_pattern(), "any pattern is asked for still");
    for both in [[38, 52], [52, 38]] {
        let lines = board("one", both[0]) + &board("other", both[1]);
        let app = check((&lines, &taps), &["500", "400", "35"], &herringbone, &[]);
        let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
        let thick = found.sheet.used.iter().map(|used| given.sources[used.source].pile.thickness.unwrap()).collect::<Vec<_>>();
        assert_eq!(thick, [Length::MM.times(38).unwrap()], "{both:?}");
        assert!(given.ready.asked.holds(&found.answered));
    }
}
