//! Where no piece fits a part: what it needs and what there is stand there, and what helps is a tap away; boards to buy begin with what is short.

use super::top_first::rack;
use super::*;

#[track_caller]
fn check(app: &App, all: &[&str], none: &[&str]) {
    let shown = page(app);
    for words in all {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    for words in none {
        assert!(!shown.contains(words), "{words}: {shown}");
    }
}

/// The part is 980 long, and the strips are 500: nothing fits any part; with pegs, nothing fits this one.
fn none_fits(shape: Shape) -> App {
    let mut app = opened("");
    heard(&mut app, [Tap::Open, Tap::Shape(shape), Tap::Go]);
    app
}

const LARGEST: &str = "Of oak the longest is 500, the widest 65 and the thickest 30 mm.";
const TOP: &str = "Make top as a top in rows";
const LOOK: &str = "Look for it at the next yard";

/// What is over and off of a board: 20 + 2 thick, 120 + 2 wide, 980 + 2 + 2 x 6 long. A stick is cut to its length as it is finished: 980 + 2 x 6,
/// and of its one piece both ends are trimmed, so no kerf is beside it. One of that size fits, one of a millimetre less does not.
#[test]
fn a_part_that_nothing_fits_says_what_it_needs() {
    let boards = "boards 22 mm or thicker and 994 mm or longer; narrow ones are glued up.";
    for (shape, of) in [(Shape::Parts, boards), (Shape::Sticks, "sticks of 22 × 122 × 992 mm or larger.")] {
        let says = ["Top is 20 × 120 × 980 mm, and is cut of ", of, LARGEST, LOOK];
        check(&none_fits(shape), &[says.as_slice(), &["None of the pieces fits."]].concat(), &[]);
        let mut app = opened("part \"peg\" 4 of 20 x 50 x 300 mm oak-european for tray\n");
        heard(&mut app, [Tap::Open, Tap::Shape(shape), Tap::Go]);
        check(&app, &[says.as_slice(), &["fit this part: top"]].concat(), &[]);
    }
    for (long, fits) in [(992, true), (991, false)] {
        let mut app = opened(&format!("pile lath oak-european 22 x 122 x {long} mm\ncount 1 lath\n"));
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::Go]);
        assert_eq!(app.plan.why_not.is_none(), fits, "{long}: {:?}", app.plan.why_not);
    }
}

#[test]
fn what_fits_no_piece_is_looked_for_or_made_as_a_top() {
    let mut app = none_fits(Shape::Parts);
    heard(&mut app, [Tap::LookFor]);
    let sought = app.own.workshop().sought.clone();
    assert_eq!(sought.iter().map(|it| it.pieces.iter().map(|piece| piece.n).collect::<Vec<_>>()).collect::<Vec<_>>(), [[1]]);
    let piece = &sought[0].pieces[0];
    let [wide, long] = [24, 994].map(|side| Length::MM.times(side).unwrap());
    assert_eq!((piece.width, piece.length, piece.at_least), (wide, long, Some(true)), "narrow ones are glued up");
    check(&app, &["Looked for at the next yard:", "Look for it no more", TOP], &[LOOK]);
    let orders = heard(&mut app, [Tap::TopOf("top".into()), Tap::Go]);
    assert!(orders.iter().any(|order| matches!(order, Order::Plan { .. })), "{}", page(&app));
    check(&app, &["980 × 120 mm"], &[]);
}

/// Sticks of 65 are long enough for a seat of 120, and are never glued side by side; the job's parts are. Neither of sticks that are too short too,
/// nor for a rail no wider than them, is there such a way.
#[test]
fn a_part_wider_than_all_sticks_says_where_it_is_glued_up() {
    let glued = "is glued up there of narrow ones";
    for (part, is_said) in
        [("seat\" 1 of 20 x 120 x 400", true), ("seat\" 1 of 20 x 120 x 700", false), ("rail\" 1 of 20 x 50 x 900", false)]
    {
        let mut app = opened(&format!("part \"{part} mm oak-european for tray\n"));
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::LeaveOut("top".into()), Tap::Go]);
        assert!(app.plan.why_not.is_some(), "{part}");
        let (said, not): (&[&str], &[&str]) = if is_said { (&["seat is glued up there of narrow ones"], &[]) } else { (&[], &[glued]) };
        check(&app, said, not);
        heard(&mut app, [Tap::Shape(Shape::Parts)]);
        check(&app, &[], &[glued]);
        if is_said {
            heard(&mut app, [Tap::Go]);
            super::told::solved(&mut app);
            assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 1);
        }
    }
}

/// A leg is no top, and of another wood there is nothing.
#[test]
fn only_a_wide_part_is_made_as_a_top_and_a_wood_that_is_not_there_is_said() {
    let mut app = opened("part \"leg\" 4 of 25 x 50 x 700 mm cherry-black for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into()), Tap::Go]);
    check(&app, &["Leg is 25 × 50 × 700 mm", "among the pieces.", LOOK], &["Make leg as a top", "the longest is"]);
}

/// Boards that are named are among the largest, and stay named while a part is made as a top, and after.
#[test]
fn boards_to_buy_are_reckoned_with_and_stay() {
    for shape in [Shape::Parts, Shape::Sticks] {
        let mut app = none_fits(shape);
        app.plan.draft.bought.push(super::rack_first::boards(3, 900));
        heard(&mut app, [Tap::Go]);
        check(&app, &["Of oak the longest is 900, the widest 65 and the thickest 30 mm."], &[LARGEST]);
        for tap in [Tap::TopOf("top".into()), Tap::Shape(shape)] {
            heard(&mut app, [tap]);
            assert_eq!(app.plan.draft.bought.len(), 1, "{shape:?}");
        }
    }
}

/// So they do where a plan of the job is in use; those of that plan are its own.
#[test]
fn boards_to_buy_stay_named_beside_a_plan_in_use() {
    let mut app = opened("part \"leg\" 4 of 25 x 60 x 480 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    super::rack_first::planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, [Tap::Use]);
    assert!(app.plan.used.is_some());
    heard(&mut app, [Tap::Change, Tap::LeaveOut("top".into())]);
    app.plan.draft.bought.push(super::rack_first::boards(3, 900));
    heard(&mut app, [Tap::Go]);
    check(&app, &[TOP], &[]);
    for tap in [Tap::TopOf("top".into()), Tap::Shape(Shape::Parts)] {
        heard(&mut app, [tap]);
        assert_eq!(app.plan.draft.bought.len(), 1);
    }
}

fn typed(app: &App) -> Vec<String> {
    let form = &app.plan.draft.buying.as_ref().unwrap().form;
    (0..FIGURES).map(|nth| form.text(nth).to_owned()).collect()
}

/// Seven flats: fifteen more make all eight rows. Not now adds nothing and is back where it was opened.
#[test]
fn boards_to_buy_begin_with_what_is_short() {
    let mut app = rack(7);
    super::told::typed(&mut app, &["2400", "650", "8"]);
    super::rack_first::planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, [Tap::Buy]);
    assert_eq!(typed(&app), ["26.5", "90", "910", "15", ""]);
    check(&app, &["Not now"], &[]);
    heard(&mut app, [Tap::LeaveBoards]);
    assert_eq!((app.plan.page, app.plan.draft.bought.len()), (Page::Answer, 0));
    heard(&mut app, [Tap::Change, Tap::Piles, Tap::Buy]);
    assert_eq!(typed(&app)[3], "15", "what is asked is the same");
    heard(&mut app, [Tap::AddBoards]);
    assert_eq!((app.plan.page, app.plan.draft.bought[0].n), (Page::Piles, 15));
    // Something else is asked: nothing is known to be short of it.
    heard(&mut app, [Tap::Change, Tap::At(0), Tap::Press(Press::Digit(9)), Tap::Piles, Tap::Buy]);
    assert_eq!(typed(&app), [""; FIGURES]);
    heard(&mut app, [Tap::LeaveBoards]);
    assert_eq!(app.plan.page, Page::Piles);
    let mut none = none_fits(Shape::Parts);
    heard(&mut none, [Tap::Buy]);
    assert_eq!(typed(&none), ["22", "", "994", "", ""], "narrow ones are glued up");
    heard(&mut none, [Tap::LeaveBoards]);
    assert_eq!(none.plan.page, Page::Ask);
    // Nor is Back anywhere else, and it adds nothing either.
    for (app, page) in [(&mut none, Page::Ask), (&mut app, Page::Piles)] {
        heard(app, [Tap::Buy]);
        assert!(app.plan.back());
        assert_eq!((app.plan.page, app.plan.draft.buying.is_none()), (page, true));
    }
}

/// Sixteen boards of 18 x 3, tiles of 8: ripped to 2 wide, a herringbone as large as is asked cuts single widths at its border. The least piece
/// of 2 1/2 leaves one tile, and is named, and no tile more is said to make it nearer; with one of 2 it comes just so.
#[test]
fn a_herringbone_that_the_least_piece_keeps_small_says_so() {
    let story = tell(
        "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile boards walnut-black 3/4 x 3 x 18 in\ncount 16 boards\n\
         good 16 boards\njob tray \"Board\" 1 spec\n",
    );
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Field), Tap::Pattern(3)]);
    super::told::typed(&mut app, &["24", "16", "", "", "8"]);
    super::rack_first::planned_out(&mut app, vec![Tap::Go]);
    let why = app.plan.found.as_ref().unwrap().sheet.proof.why.clone();
    assert!(matches!(why, Some(fivebar_core::sheet::plan::Why::LeastPiece { .. })), "{why:?}");
    check(&app, &["your least piece is 2", "that keeps it so small"], &["One tile more"]);
    // It is the first thing said, with the key to it; one tile is no field, and is neither drawn nor offered.
    let shown = page(&app);
    let [said, key] = ["so no more than one tile can be laid.", "Least piece, 2"]
        .map(|words| shown.find(words).unwrap_or_else(|| panic!("{words}: {shown}")));
    assert!(said < key && ![">Use ", "card lays", "The nearest", "narrower"].iter().any(|words| shown.contains(words)), "{shown}");
    let mut lengths = [None; 13];
    lengths[11] = Length::nm(50_800_000).ok();
    let saw = fivebar_core::ledger::kind::plan::SawSet::of(lengths, None);
    super::later::order(&mut app, Command::Plan(fivebar_core::ledger::decide::PlanCommand::SetSaw(saw)));
    super::rack_first::planned_out(&mut app, vec![Tap::Go]);
    check(&app, &["24 × 16 in", "key solid wide"], &["your least piece is", "Your least piece", "The nearest"]);
}

/// Where the parts are planned their list stands, with the key that adds one; without a part there is nothing to plan.
#[test]
fn parts_can_be_added_and_changed_where_they_are_planned() {
    for (shape, parts, there) in [(Shape::Parts, "", true), (Shape::Sticks, "", true), (Shape::Rows, "", false), (Shape::Parts, LEG, true)]
    {
        let mut app = super::told::at_rack(parts);
        heard(&mut app, [Tap::Open, Tap::Shape(shape)]);
        assert_eq!(page(&app).contains("Add a part"), there, "{shape:?}: {}", page(&app));
        assert_eq!(page(&app).contains("38 × 38 × 350 mm"), !parts.is_empty(), "{shape:?}: {}", page(&app));
    }
}

const LEG: &str = "part \"leg\" 4 of 38 x 38 x 350 mm for tray\n";
