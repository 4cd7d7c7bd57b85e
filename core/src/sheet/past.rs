//! What a supplier's other hauls showed, gathered once for a screen that asks at each tap.

use crate::haul::Haul;
use crate::haul::rejects::Seen;
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Id, Length};

/// The past of a haul's supplier; the haul itself is no part of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Past {
    /// The haul that it is the past of.
    pub haul: Option<Id>,
    pub supplier: Option<Id>,
    /// What sorting showed of the others.
    pub seen: Seen,
    /// How many of them were sorted.
    pub sorted_hauls: Count,
    /// How far the last drive there was, both ways.
    pub distance: Option<Length>,
}

impl Past {
    /// Whether it is the past of this haul, as it stands.
    pub fn is_of(&self, haul: &Haul) -> bool {
        self.haul == Some(haul.id) && self.supplier == haul.supplier
    }
}

/// Gathers it from the book; nothing where nobody said whose bin it was.
pub fn past(book: &Book, haul: &Haul) -> Past {
    let none = Past { haul: Some(haul.id), supplier: haul.supplier, ..Past::default() };
    let Some(supplier) = haul.supplier else { return none };
    let others = fold::hauls(book).filter(|other| other.supplier == Some(supplier) && other.id != haul.id);
    others.fold(none, |past, other| {
        let seen = other.seen();
        let sorted = if seen.sorted() == 0 { 0 } else { 1 };
        Past {
            seen: Seen::pooled([past.seen, seen]),
            sorted_hauls: past.sorted_hauls.saturating_add(sorted),
            // the newest comes first
            distance: past.distance.or_else(|| last_distance(&other)),
            ..past
        }
    })
}

/// How far the last trip of a haul was.
pub fn last_distance(haul: &Haul) -> Option<Length> {
    let driven = haul.trips.iter().filter(|trip| trip.distance.is_some());
    driven.max_by_key(|trip| trip.left).and_then(|trip| trip.distance)
}
