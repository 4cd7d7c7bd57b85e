//! Where the entry of an id lies. A hundred thousand ids in order are appended; some that come late wait aside and are merged in.

use crate::quantity::{Id, Sorted};

/// So many ids wait before they are merged in: enough that merging is rare, few enough that waiting costs little.
const WAIT_MOST: usize = 1_024;

/// Where the entry of each id lies.
#[derive(Clone, Debug, Default)]
pub struct Places {
    // Invariant: no id is in both.
    settled: Sorted<Id, usize>,
    waiting: Sorted<Id, usize>,
}

impl Places {
    pub fn get(&self, id: &Id) -> Option<usize> {
        self.settled.get(id).or_else(|| self.waiting.get(id)).copied()
    }

    /// The place of an id; `next` where it had none, which it has from then on.
    pub fn get_or(&mut self, id: Id, next: usize) -> usize {
        match self.get(&id) {
            Some(place) => place,
            None => {
                self.add(id, next);
                next
            }
        }
    }

    fn add(&mut self, id: Id, place: usize) {
        if self.settled.keys().next_back().is_none_or(|last| *last < id) {
            self.settled.insert(id, place);
            return;
        }
        self.waiting.insert(id, place);
        if WAIT_MOST < self.waiting.len() {
            self.settled.absorb(std::mem::take(&mut self.waiting));
        }
    }

    pub fn clear(&mut self) {
        *self = Places::default();
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
