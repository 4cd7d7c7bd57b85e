//! English: operations by the kind of piece, before the maker has planned or done any. Ours: common practice, in working order.

use fivebar_core::bench::{Kind, Stage};
use fivebar_core::quantity::in_small;

/// An operation with its kind and stage.
pub type Usual = (&'static str, Kind, Stage);

const fn make(op: &'static str) -> Usual {
    (op, Kind::Make, Stage::Make)
}

const COAT: Usual = ("Coat", Kind::Make, Stage::Finish);

/// What a stool takes.
const STOOL: [Usual; 8] = [
    make("Joint and rip"),
    make("Thickness"),
    make("Glue seat"),
    make("Shape seat"),
    make("Turn or taper legs"),
    make("Bore"),
    make("Assemble"),
    make("Sand"),
];

/// What a stand takes.
const STAND: [Usual; 8] = [
    make("Trim"),
    make("Joint and rip"),
    make("Thickness"),
    make("Glue tops"),
    make("Flatten"),
    make("Taper legs"),
    make("Sand"),
    make("Assemble"),
];

/// What a bench takes.
const BENCH: [Usual; 8] = [
    make("Joint and rip"),
    make("Thickness"),
    make("Glue up"),
    make("Flatten"),
    make("Joints"),
    make("Frames"),
    make("Assemble"),
    make("Sand"),
];

/// What a table takes, of whatever size.
const TABLE: [Usual; 9] = [
    make("Joint and rip"),
    make("Thickness"),
    make("Glue top"),
    make("Flatten top"),
    make("Legs"),
    make("Joints"),
    make("Glue frame"),
    make("Sand"),
    make("Fix top"),
];

/// What most pieces take.
const ANY: [Usual; 8] = [
    make("Trim"),
    make("Joint and rip"),
    make("Thickness"),
    make("Glue up"),
    make("Flatten"),
    make("Bore"),
    make("Sand"),
    make("Assemble"),
];

/// What is done for no job.
pub const OF_NO_JOB: [Usual; 3] = [make("Sharpen"), make("Tidy"), ("Learn", Kind::Office, Stage::Sell)];

/// What is done beside the bench.
pub const BESIDE: [Usual; 5] = [
    ("Fetch", Kind::Fetch, Stage::Fetch),
    ("Photos", Kind::Sell, Stage::Sell),
    ("Market", Kind::Sell, Stage::Sell),
    ("Messages", Kind::Office, Stage::Sell),
    ("Deliver", Kind::Deliver, Stage::Deliver),
];

/// The making of a piece of a kind, by its key; of any piece where the kind is not known.
pub fn making(piece: Option<&str>) -> impl Iterator<Item = Usual> {
    let of_kind: &[Usual] = match piece {
        Some("stool") => &STOOL,
        Some("stand") => &STAND,
        Some("bench") => &BENCH,
        Some("table" | "dining-table") => &TABLE,
        _ => &ANY,
    };
    of_kind.iter().copied().chain([COAT])
}

/// The making of a piece of any kind.
pub fn of_any() -> impl Iterator<Item = Usual> {
    [&ANY[..], &TABLE, &BENCH, &STAND, &STOOL].into_iter().flatten().copied()
}

/// What people call an operation that goes by another name here.
const CALLED: [(&str, &[&str]); 8] = [
    ("tidy", &["sweep", "clean", "vacuum", "hoover", "clear up"]),
    ("sharpen", &["hone", "grind", "strop"]),
    ("coat", &["oil", "varnish", "finish", "lacquer", "wax", "paint"]),
    ("glue", &["clamp"]),
    ("trim", &["crosscut", "cut to length", "saw"]),
    ("thickness", &["plane"]),
    ("bore", &["drill"]),
    ("messages", &["email", "mail", "call", "phone"]),
];

/// Whether two names are forms of one: sand and sanding, glue up and glue-ups, deliver and delivery, in small letters or large ones.
pub fn is_one(op: &str, other: &str) -> bool {
    let stems = |name: &str| in_small(name.trim()).replace('-', " ").split_whitespace().map(stem).collect::<Vec<_>>();
    stems(op) == stems(other)
}

/// What the usual forms of a word have in common: "trim" of trim, trims and trimming.
fn stem(word: &str) -> String {
    let word = word.strip_suffix('s').filter(|rest| 1 < rest.len() && !rest.ends_with('s')).unwrap_or(word);
    let word = ["ing", "y", "e"].iter().find_map(|end| word.strip_suffix(end).filter(|rest| 2 < rest.len())).unwrap_or(word);
    let mut letters: Vec<char> = word.chars().collect();
    letters.dedup();
    letters.into_iter().collect()
}

/// Whether an operation's name holds the letters that were typed, in small ones, or people call it by a name that begins so.
pub fn means(op: &str, typed: &str) -> bool {
    let op = in_small(op);
    let called = |(name, others): &(&str, &[&str])| {
        op.split(' ').any(|word| word == *name) && 2 < typed.chars().count() && others.iter().any(|other| called_so(other, typed))
    };
    op.contains(typed) || is_one(&op, typed) || CALLED.iter().any(called)
}

/// "sweep" for "swe", for "sweeping", for "sweep the floor".
fn called_so(name: &str, typed: &str) -> bool {
    name.starts_with(typed) || typed.starts_with(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_operation_is_found_by_what_people_call_it() {
        let check = |op: &str, typed: &str, found: bool| assert_eq!(means(op, typed), found, "{op} by {typed}");
        check("Tidy", "tid", true);
        check("Tidy", "sweep", true);
        check("Tidy", "sweeping the floor", true);
        check("Tidy", "clea", true);
        check("Tidy", "cl", false);
        check("Glue up", "clamping", true);
        check("Coat", "oil", true);
        check("Sand", "sweep", false);
        check("Glue up", "up", true);
        check("Sand", "sanding", true);
    }

    #[test]
    fn the_usual_forms_of_a_name_are_one() {
        let check = |op: &str, other: &str, one: bool| assert_eq!((is_one(op, other), is_one(other, op)), (one, one), "{op}, {other}");
        for (op, other) in [
            ("Sand", "sand"),
            ("Sand", " Sanding "),
            ("Glue up", "glue-ups"),
            ("Glue top", "gluing tops"),
            ("Trim", "trimming"),
            ("Mill", "milling"),
            ("Deliver", "delivery"),
            ("Assemble", "assembly"),
            ("Plane", "planing"),
            ("Frames", "frame"),
        ] {
            check(op, other, true);
        }
        for (op, other) in
            [("Sand", "Sand seat"), ("Saw", "Sew"), ("Glue top", "Glue up"), ("Gas", "Gag"), ("Joints", "Joint and rip"), ("", "s")]
        {
            check(op, other, false);
        }
    }
}
