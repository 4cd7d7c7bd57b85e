//! Where the entry of an id lies.

use crate::quantity::Id;
use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

/// Where the entry of each id lies. Its own order is never looked at.
#[derive(Clone, Debug, Default)]
pub struct Places(HashMap<Id, usize, BuildHasherDefault<Mixed>>);

impl Places {
    pub fn get(&self, id: &Id) -> Option<usize> {
        self.0.get(id).copied()
    }

    /// The place of an id; `next` where it had none, which it has from then on.
    pub fn get_or(&mut self, id: Id, next: usize) -> usize {
        *self.0.entry(id).or_insert(next)
    }

    /// Makes room for so many more at once.
    pub fn expect(&mut self, more: usize) {
        self.0.reserve(more);
    }

    pub fn clear(&mut self) {
        self.0.clear();
    }
}

/// An id is half chance already: its bits are mixed once. Ids come from the maker's own phones, not from an enemy.
#[derive(Clone, Copy, Debug, Default)]
pub struct Mixed(u64);

/// 2^64 divided by the golden ratio, odd: it spreads what differs in few bits (multiplicative hashing).
const SPREAD: u64 = 0x9e37_79b9_7f4a_7c15;

impl Hasher for Mixed {
    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(SPREAD).rotate_left(29);
        }
    }

    fn write_u128(&mut self, id: u128) {
        let (high, low) = ((id >> 64) as u64, id as u64);
        self.0 = (high.wrapping_mul(SPREAD).rotate_left(29) ^ low).wrapping_mul(SPREAD).rotate_left(29);
    }

    fn finish(&self) -> u64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Moment;

    #[track_caller]
    fn check(order: impl Fn(usize) -> usize) {
        let id = |n: usize| Id::new(Moment::at(i64::try_from(order(n)).unwrap()), [0; 10]);
        let mut places = Places::default();
        for n in 0..5_000 {
            assert_eq!(places.get_or(id(n), n), n);
        }
        for n in 0..5_000 {
            assert_eq!((places.get(&id(n)), places.get_or(id(n), 0)), (Some(n), n));
        }
        assert_eq!(places.get(&id(5_000)), None);
    }

    #[test]
    fn every_id_keeps_its_place_whatever_the_order_of_arrival() {
        check(|n| n);
        check(|n| 5_000 - n);
        check(|n| (n * 2_503) % 5_003);
    }
}
