//! What a whole piece takes before there is any history of its operations, and how its time is shared among stages.

use super::super::Stage;
use super::gain::of_pieces;
use super::spread::minutes;
use crate::quantity::{Count, Span, in_small};

/// The kinds of piece that have a default, in the order they are shown, with hours for one. Ours.
pub const PIECES: [(&str, i64); 5] = [("stool", 6), ("stand", 8), ("bench", 20), ("table", 30), ("dining-table", 50)];

/// What one piece of a kind takes while nothing of the maker's own is known.
///
/// ```
/// use fivebar_core::bench::estimate::whole::of_kind;
/// use fivebar_core::quantity::Span;
/// assert_eq!(of_kind("bench"), Some(Span::minutes(20 * 60)));
/// assert_eq!(of_kind("boat"), None);
/// ```
pub fn of_kind(piece: &str) -> Option<Span> {
    PIECES.iter().find(|(kind, _)| *kind == piece).map(|(_, hours)| Span::minutes(hours.saturating_mul(60)))
}

/// The kind of piece in a name: "Oak coffee table" is a table. A guess, until the maker says what it is.
///
/// ```
/// use fivebar_core::bench::estimate::whole::kind_in;
/// assert_eq!((kind_in("Oak stand"), kind_in("Standing desk")), (Some("stand"), None));
/// ```
pub fn kind_in(name: &str) -> Option<&'static str> {
    let name = in_small(name);
    let found = ["stool", "stand", "bench", "table", "shelf", "cabinet", "lamp", "box", "board"]
        .into_iter()
        .find(|kind| name.split(|c: char| !c.is_alphanumeric()).any(|word| is(word, kind)));
    if found == Some("table") && name.contains("dining") { Some("dining-table") } else { found }
}

fn is(word: &str, kind: &str) -> bool {
    word == kind || (kind == "shelf" && word == "shelves") || word.strip_prefix(kind).is_some_and(|end| end == "s" || end == "es")
}

/// The share of a piece's hours that each stage has; fetching and sorting are the hauls'. Ours.
pub fn share(stage: Stage) -> f64 {
    match stage {
        Stage::Fetch | Stage::Sort => 0.0,
        Stage::Make => 0.72,
        Stage::Finish => 0.13,
        Stage::Sell => 0.08,
        Stage::Deliver => 0.07,
    }
}

/// Minutes for the first of them, of `n` alike that took so long together.
pub fn first_of(n: Count, time: Span) -> f64 {
    minutes(time) / of_pieces(n.max(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shares_are_the_whole() {
        let all = [Stage::Fetch, Stage::Sort, Stage::Make, Stage::Finish, Stage::Sell, Stage::Deliver];
        assert!((all.map(share).iter().sum::<f64>() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_first_of_several_took_more_than_its_part() {
        assert_eq!(first_of(1, Span::minutes(90)), 90.0);
        assert_eq!(first_of(5, Span::minutes(270)), 60.0);
        assert_eq!(first_of(0, Span::minutes(90)), 90.0);
    }

    #[test]
    fn a_kind_of_piece_is_read_from_a_name() {
        let cases = [
            ("Oak coffee table", Some("table")),
            ("Dining table, ash", Some("dining-table")),
            ("Two benches", Some("bench")),
            ("Beech stools, a pair", Some("stool")),
            ("Standing desk", None),
            ("Wall shelf", Some("shelf")),
            ("Two shelves", Some("shelf")),
            ("Pencil boxes", Some("box")),
            ("Hall cabinet, oak", Some("cabinet")),
            ("Pine lamp", Some("lamp")),
            ("Sideboard", None),
            ("", None),
        ];
        for (name, kind) in cases {
            assert_eq!(kind_in(name), kind, "{name}");
        }
    }
}
