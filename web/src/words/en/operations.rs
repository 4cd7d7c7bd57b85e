//! English: operations by the kind of piece, before the maker has planned or done any. Ours: common practice, in working order.

use fivebar_core::bench::{Kind, Stage};

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
