//! Puts a list in order. One sort serves every list; the standard one costs the download four kilobytes for each type of row.
//!
//! Invariant: rows that are equal keep their order, as with the standard sort.

use std::cmp::Ordering;

/// Puts rows in the order of their keys; rows of equal keys keep their order.
///
/// ```
/// use fivebar_core::quantity::order_by_key;
/// let mut boards = ["beech", "oak", "elder", "ash"];
/// order_by_key(&mut boards, |wood| wood.len());
/// assert_eq!(boards, ["oak", "ash", "beech", "elder"]);
/// ```
pub fn order_by_key<T, K: Ord>(rows: &mut [T], key: impl Fn(&T) -> K) {
    order_by(rows, |one, other| key(one).cmp(&key(other)));
}

/// Puts rows in the order that is said of two; equal rows keep their order.
pub fn order_by<T>(rows: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let sources = places_in_order(rows, compare);
    arrange(sources, &mut |one, other| rows.swap(one, other));
}

/// Where the rows lie in the order that is said of two: the place of the first comes first. Nothing is moved.
///
/// ```
/// use fivebar_core::quantity::places_in_order;
/// assert_eq!(places_in_order(&["oak", "ash", "elm"], |one, other| one.cmp(other)), [1, 2, 0]);
/// ```
pub fn places_in_order<T>(rows: &[T], compare: impl Fn(&T, &T) -> Ordering) -> Vec<usize> {
    sources(rows.len(), &|one, other| match (rows.get(one), rows.get(other)) {
        (Some(one), Some(other)) => compare(one, other),
        _ => Ordering::Equal,
    })
}

/// For each place, where the row that belongs there lies now.
fn sources(rows: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut sources: Vec<usize> = (0..rows).collect();
    sources.sort_unstable_by(|one, other| compare(*one, *other).then(one.cmp(other)));
    sources
}

/// Brings each row to its place by exchanging two at a time, round by round.
fn arrange(mut sources: Vec<usize>, exchange: &mut dyn FnMut(usize, usize)) {
    for first in 0..sources.len() {
        let mut place = first;
        while let Some(source) = sources.get_mut(place).map(|source| std::mem::replace(source, place)) {
            if source == first || source == place {
                break;
            }
            exchange(place, source);
            place = source;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The standard stable sort is the measure.
        #[test]
        fn orders_as_the_standard_sort_does(rows in proptest::collection::vec((0..20u8, any::<u16>()), 0..200)) {
            let (mut ours, mut theirs) = (rows.clone(), rows);
            order_by_key(&mut ours, |row| row.0);
            theirs.sort_by_key(|row| row.0);
            prop_assert_eq!(&ours, &theirs);
            order_by(&mut ours, |one, other| other.cmp(one));
            theirs.sort_by(|one, other| other.cmp(one));
            prop_assert_eq!(ours, theirs);
        }
    }
}
