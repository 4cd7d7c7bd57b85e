//! The plans of others, good and broken, looked over by our checkers: `tests/yield/sources.md`.

#[path = "../examples/envelope/mod.rs"]
mod envelope;
mod plans_of_others;

use fivebar_core::plan::{Answered, Asked, Made, field, parts, rows, sticks};
use plans_of_others::{answered, figures, text, value};
use serde_json::Value;

/// Every plan of the reference is worth, by our checkers, what its authors say.
#[test]
fn every_plan_of_the_reference_is_worth_what_its_authors_say() {
    let known = value("reference.json");
    let results = known["results"].as_object().unwrap();
    assert_eq!(results.len(), 76);
    for (name, result) in results {
        let asked = envelope::read(&text(&format!("instances/{name}.json"))).unwrap().problem;
        let plan = answered(&asked, &value(&format!("reference/{name}.json")), 1).unwrap();
        assert_eq!(verdict(&asked, &plan), "holds", "{name}");
        assert_eq!(asked.worth(&plan.plan), Some(figures(&result["value"]).unwrap()), "{name}");
    }
}

/// What ours say of a plan: the rule it breaks, the figure that is not as claimed, or that it holds.
fn verdict(asked: &Asked, answered: &Answered) -> String {
    let broken = match (asked, &answered.plan) {
        (Asked::Rows(problem), Made::Rows(plan)) => rows::check::check(problem, plan).err().map(|broken| format!("{broken:?}")),
        (Asked::Parts(problem), Made::Parts(plan)) => parts::check::check(problem, plan).err().map(|broken| format!("{broken:?}")),
        (Asked::Sticks(problem), Made::Sticks(plan)) => sticks::check::check(problem, plan).err().map(|broken| format!("{broken:?}")),
        (Asked::Field(problem), Made::Field(plan)) => field::check::check(problem, plan).err().map(|broken| format!("{broken:?}")),
        _ => Some("another problem".into()),
    };
    let worth = asked.worth(&answered.plan).unwrap_or_default();
    match broken {
        Some(broken) => broken,
        None if asked.holds(answered) => "holds".into(),
        None if worth != answered.worth => format!("worth {worth:?}"),
        None => format!("bound {:?}", answered.bound),
    }
}

/// The good plans of `test_check.py` hold; each of them spoilt in one way is refused, by its authors' checker and by ours.
#[test]
fn a_plan_spoilt_in_one_way_is_refused_by_both_checkers() {
    let file = value("broken.json");
    let asked = |case: &Value| envelope::read(&file["cases"][case.as_str().unwrap()]["instance"].to_string()).unwrap().problem;
    for (case, good) in file["cases"].as_object().unwrap() {
        let asked = asked(&Value::from(case.as_str()));
        assert_eq!(verdict(&asked, &answered(&asked, &good["plan"], 1).unwrap()), "holds", "{case}");
    }
    let broken = file["broken"].as_array().unwrap();
    let ours: Vec<String> = broken
        .iter()
        .map(|it| {
            let asked = asked(&it["case"]);
            answered(&asked, &it["plan"], 1).map_or_else(|trouble| trouble, |plan| verdict(&asked, &plan))
        })
        .collect();
    assert_eq!(ours.len(), BROKEN.len());
    for ((it, ours), (theirs, wanted)) in broken.iter().zip(&ours).zip(BROKEN) {
        assert_eq!((it["said"].as_str().unwrap(), &**ours), (*theirs, *wanted));
    }
}

/// What `check.py` says of each, and what ours says. A plan of ours has no unit of its own to be wrong about; one without
/// a bound is shown as one that nothing is proven of (another phone's is); one whose bound is only too good holds by both.
const BROKEN: &[(&str, &str)] = &[
    ("row 1, piece 1: no pile 'Z'", "NoSuchPile { row: 0, piece: 0 }"),
    ("row 1, piece 1: pile A has 3 pieces, there is no number 4", "NoSuchStrip { row: 0, piece: 0 }"),
    ("row 1, piece 2: strip A number 1 is used twice", "CutTwice { row: 0, piece: 1 }"),
    ("row 1, piece 1: 501 is longer than the squared strip, 500", "TooLong { row: 0, piece: 0, most: 500 }"),
    ("row 2: finished length 999, the panel is 1000", "RowLength { row: 1, met: 999 }"),
    ("row 2, piece 2: at 301, expected 300", "Misplaced { row: 1, piece: 1, expected: 300 }"),
    ("row 1, piece 1: length must be a whole number, not 500.0", "length 500.0 is no whole number"),
    ("row 1, piece 1: length must be a whole number, not True", "length true is no whole number"),
    ("row 2, piece 2: a strip is shortened inside the row", "Shortened { row: 1, piece: 1 }"),
    ("row 2: more than one strip is shortened", "Shortened { row: 1, piece: 2 }"),
    ("rows 1 and 2: joints at 500 and 500 are nearer than the stagger 60", "Stagger { row: 0, joint: 500, other: 500 }"),
    ("row 2, piece 3: 90 is shorter than the least end piece, 100", "ShortEnd { row: 1, piece: 2 }"),
    ("row 2, piece 1: pile S is 140 long, shorter than the machine minimum 150", "ShortForMachine { row: 1, piece: 0 }"),
    ("row 2 is empty", "Empty { row: 1 }"),
    ("3 rows, more than the 2 wanted", "TooManyRows { rows: 3, most: 2 }"),
    ("remainders: the plan leaves [('A', 3, 97)], the solution lists []", "Remainder { pile: 0, n: 3, expected: 97 }"),
    ("remainders: the plan leaves [('A', 3, 97)], the solution lists [('A', 3, 98)]", "Remainder { pile: 0, n: 3, expected: 97 }"),
    ("claimed objective (2, 52, 963091), the plan is worth (2, 53, 963091)", "worth [2, 53, 963091]"),
    ("claimed bound (1,) is worse than the plan itself, (2, 53, 963091)", "bound [1]"),
    ("claimed bound (2, 60) is worse than the plan itself, (2, 53, 963091)", "bound [2, 60]"),
    ("claims: bound has 0 figures, allowed 1 to 3", "holds"),
    ("unit_nm is 1000 in the instance, 1 in the solution", "holds"),
    ("solution lacks \"claims\"", "claims is missing"),
    ("strip B number 1: pieces and kerfs exceed its squared length 300 by 303", "StripTooLong { pile: 1, n: 1, by: 303 }"),
    ("row 2, piece 3: 79 is shorter than the least piece, 80", "TooShort { row: 1, piece: 2 }"),
    ("stick plan 3: pile A has 3 sticks, 4 are used", "TooMany { stick: 2, used: 4, there: 3 }"),
    ("stick plan 1, piece 2: at 400, expected 403", "Misplaced { stick: 0, piece: 1, expected: 403 }"),
    ("stick plan 2: pieces and kerfs exceed the trimmed length 403 by 200", "TooLong { stick: 1, by: 200 }"),
    ("stick plan 3: pile C is 150 long, shorter than the machine minimum 200", "TooShort { stick: 2 }"),
    ("stick plan 3: remainder is 407, the solution says 410", "Remainder { stick: 2, expected: 407 }"),
    ("stick plan 3: no pieces", "NoPieces { stick: 2 }"),
    ("stick plan 3: times is 0, less than 1", "Times { stick: 2 }"),
    ("claimed objective (3, 1866, 14), the plan is worth (2, 1453, 11)", "worth [2, 1453, 11]"),
    ("claimed objective (3, 1866, 13), the plan is worth (3, 1866, 14)", "worth [3, 1866, 14]"),
    ("board plan 1: pile A has 4 pieces, 5 are used", "TooMany { board: 0, used: 5, there: 4 }"),
    ("board plan 1: stretch 491 exceeds the trimmed length 490 of pile A", "Stretch { board: 0, most: 490 }"),
    ("board plan 2: stretch 190 is shorter than the planer minimum 200", "TooShortToPlane { board: 1 }"),
    (
        "board plan 2, band 2: at 205 overlaps the band before it or its kerf (free from 207)",
        "BandMisplaced { board: 1, band: 1, least: 207 }",
    ),
    ("board plan 2, band 1, piece 1: blank width 40, part rail needs 41", "Width { board: 1, band: 0, piece: 0, expected: 41 }"),
    ("board plan 1, band 1, piece 1: blank length 240, part panel needs 244", "Length { board: 0, band: 0, piece: 0, expected: 244 }"),
    ("board plan 1, band 1, piece 1: 67 across a band of 66", "PieceTooLarge { board: 0, band: 0, piece: 0 }"),
    (
        "board plan 1, band 1, piece 1: glue strip of 19 is narrower than the least strip 20",
        "Width { board: 0, band: 0, piece: 0, expected: 20 }",
    ),
    ("board plan 1, band 1: ends at 67, beyond 66", "BandTooFar { board: 0, band: 0, most: 66 }"),
    (
        "board plan 2, band 1, piece 1: part panel may not come from pile B (species, pile or thickness)",
        "NotFromThere { board: 1, band: 0, piece: 0 }",
    ),
    ("board plan 1: remainder is 243, the solution says 0", "Remainder { board: 0, expected: 243 }"),
    ("panel 1: not enough strips of width 66 cut from pile A for part panel", "NoSuchStrip { panel: 0, strip: 1 }"),
    ("panel 1: strips less jointing give 66, part panel needs 121", "TooNarrow { panel: 0, met: 66, least: 121 }"),
    (
        "board plan 2, band 2, piece 2: at 43 overlaps the piece before it or its kerf (free from 44)",
        "PieceMisplaced { board: 1, band: 1, piece: 1, least: 44 }",
    ),
    ("board plan 2: first must be \"rip\" or \"cross\"", "first \"saw\" is not known"),
    ("short: all wanted sets are complete, nothing is short", "Missing"),
    ("ok", "holds"),
    ("pile A has 20 usable pieces, 22 are needed", "Outer { expected: [500, 160, 10] }"),
    ("outer is [300, 160, 10], the solution says [400, 160, 10]", "Outer { expected: [300, 160, 10] }"),
    ("pattern 'basket' is not among those allowed", "NotAllowed"),
    ("pile C is 50 long, shorter than the machine minimum 60", "TooShort { pile: 2 }"),
    ("mix alternate takes 2 piles, not 1", "Piles { met: 1 }"),
    ("pile C is 50 long, shorter than the machine minimum 60", "TooShort { pile: 2 }"),
    ("5 layers, allowed 1 to 4", "Layers { met: 5 }"),
    ("weight_g is 448, the solution says 449", "Weight { expected: 448 }"),
    ("glue_area is 17600, the solution says 0", "GlueArea { expected: 17600 }"),
    (
        "pieces is [{'pile': 'A', 'whole': 14, 'cut': 4, 'taken': 18}], the solution says [{'pile': 'A', 'whole': 14, 'cut': 4, 'taken': 16}]",
        "Pieces { expected: Taken { pile: 0, whole: 14, cut: 4, taken: 18 } }",
    ),
    ("outer is [400, 160, 10], the solution says [400, 160, 11]", "Outer { expected: [400, 160, 10] }"),
    ("open_y 9 is outside [10, 80]", "Open { met: 9 }"),
    ("overhang along the width is 10, more than 4", "Overhang { met: 10 }"),
    ("claimed bound (0, 1) is worse than the plan itself, (0, 0, 18, 4)", "bound [0, 1]"),
];
