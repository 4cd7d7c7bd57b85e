//! What decides that no plan makes more, or comes nearer: each form of it, of a problem that is solved, with its sentence on the page.

use super::told::{at_rack, says, solved, typed, without};
use super::*;
use fivebar_core::sheet::plan::Why;

/// The form of what decides. A form that is added is named here, and in the table.
fn form(why: &Why) -> &'static str {
    match why {
        Why::Fewest { .. } => "fewest",
        Why::AllMade => "all made",
        Why::Exact => "exact",
        Why::NoStrips => "no strips",
        Why::Length { .. } => "length",
        Why::DoesNotComeOut => "does not come out",
        Why::Part { .. } => "part",
        Why::Together { .. } => "together",
        Why::Wood => "wood",
        Why::Joints { .. } => "joints",
        Why::Step { .. } => "step",
        Why::LeastPiece { .. } => "least piece",
    }
}

/// Sentences of the page that say what decides; no form says those of another.
const SENTENCES: [&str; 10] = [
    " mm asked.",
    "No strip is long enough for a piece.",
    " rows end to end.",
    "the rows don’t come out of them with these joints and least pieces.",
    " decides: no more of it come out of these pieces",
    " decide: they need the same pieces",
    "All the sticks together are too short for one more.",
    "How far apart the joints are decides",
    " makes it ",
    "that keeps it so small",
];

/// Lines of the story, what is tapped, what is typed, the distance of the joints; and what the page says.
type Row<'a> = (&'a str, &'a str, Vec<Tap>, &'a [&'a str], Option<&'a str>, &'a [&'a str]);

#[track_caller]
fn check((wanted, lines, taps, figures, apart, said): Row<'_>) -> App {
    let mut app = at_rack(lines);
    heard(&mut app, [Tap::Open]);
    heard(&mut app, taps);
    typed(&mut app, figures);
    apart.into_iter().for_each(|apart| app.plan.draft.form.put(3, apart.into()));
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    let why = app.plan.found.as_ref().unwrap().sheet.proof.why.clone();
    assert_eq!(why.as_ref().map(form), Some(wanted), "{why:?}");
    let others: Vec<&str> =
        SENTENCES.into_iter().filter(|words| !said.iter().any(|said| said.contains(words) || words.contains(said))).collect();
    says(&app, said, &others);
    app
}

/// By hand: 37 strips of 1005 squared are 37 185, of rows of 1200 30.9; of 1010 one leg of 550 comes, and each fourth is one set more: nine. Of two legs
/// and three rails of 400 a strip gives a leg and a rail, or two rails: 14 sets, where all is long enough for 15 and of each alone more come. Of the least piece fits.rs has a herringbone.
#[test]
fn each_form_of_what_decides_has_its_sentence() {
    let rows = |split| [without(1, vec![Tap::Shape(Shape::Rows)]), vec![Tap::Split(split)]].concat();
    let as_many = |shape| vec![Tap::Shape(shape), Tap::AsMany];
    let field = |nth: usize| vec![Tap::Shape(Shape::Field), Tap::Pattern(nth)];
    let part = |name: &str, n: u8, long: u16| format!("part \"{name}\" {n} of 20 x 50 x {long} mm oak-european for tray\n");
    let (legs, slats) = (part("leg", 4, 550), part("leg", 4, 100) + &part("rail", 3, 70));
    let both = part("leg", 2, 550) + &part("rail", 3, 400);
    let planks =
        |long: u16| format!("gone 37 strips burnt\ngone 31 ends burnt\npile planks oak-european 27 x 90 x {long} mm\ncount 40 planks\n");
    let (near, far) = (planks(610), planks(600));
    let all: Vec<Row<'_>> = vec![
        ("fewest", "", rows(true), &["1200", "400"], None, &["9 pieces give 9045 of the 9600 mm asked."]),
        ("length", "", rows(true), &["1200", "3000"], None, &["The strips, 27 × 57.7, give 30.9 rows end to end."]),
        (
            "does not come out",
            &near,
            rows(false),
            &["1200", "500", "6"],
            Some("200"),
            &["the rows don’t come out of them with these joints"],
        ),
        ("joints", &far, rows(true), &["1200", "500", "6"], Some("400"), &["How far apart the joints are decides: at "]),
        ("all made", &legs, vec![Tap::Shape(Shape::Parts)], &["1"], None, &["Parts for 1 piece."]),
        ("part", &legs, as_many(Shape::Parts), &[], None, &["The leg decides: no more of it come out of these pieces."]),
        (
            "part",
            &legs,
            as_many(Shape::Sticks),
            &[],
            None,
            &["The leg decides: no more of it come out of these pieces, by crosscuts alone."],
        ),
        ("together", &both, as_many(Shape::Sticks), &[], None, &["Leg and rail decide: they need the same pieces"]),
        ("wood", &slats, as_many(Shape::Sticks), &[], None, &["All the sticks together are too short for one more."]),
        ("exact", "", field(0), &["62", "1010"], None, &["It is just so."]),
        ("step", "", field(0), &["310", "1010"], None, &["One tile more makes it 361.2 mm wide."]),
    ];
    all.into_iter().for_each(|row| drop(check(row)));
}

/// No page asks for it: strips that are too short for a machine or a piece are left out before. It has its sentence all the same.
#[test]
fn strips_that_are_all_too_short_have_their_sentence() {
    let rows = without(1, vec![Tap::Shape(Shape::Rows)]);
    let mut app = check(("length", "", rows, &["1200", "3000"], None, &[" rows end to end."]));
    app.plan.found.as_mut().unwrap().sheet.proof.why = Some(Why::NoStrips);
    says(&app, &["No strip is long enough for a piece."], &[" rows end to end."]);
}
