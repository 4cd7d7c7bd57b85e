//! How a pile lies on the rack: where, since when, set apart for whom, gone for no job, and how far the rack has drifted from its counts.

use super::Pile;
use crate::quantity::{Count, Id, Key, Sorted, Wall};

/// What the rack knows of a pile.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// Good pieces that left for no job, by where they went: burnt, given away, to jigs.
    pub gone: Sorted<Key, Count>,
    /// Found more than the counts said, or fewer where it is below nothing.
    pub drift: i64,
    /// Set apart for jobs, not yet taken, in the order in which they were set apart; never more than lie on the rack.
    pub reserved: Vec<(Id, Count)>,
    pub place: Option<String>,
    /// When it was last counted where it lies.
    pub walked: Option<Wall>,
}

/// What acts did to a rack that were taken back, or done again, after it was counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Since {
    /// Pieces that lie there again; taken again where it is below nothing.
    pub back: i64,
    /// Left of pieces that went back whole: these lie there no more.
    pub left_gone: Count,
}

impl Pile {
    /// Good pieces that left the rack for no job.
    pub fn gone_for_good(&self) -> Count {
        self.stock.gone.values().fold(0, |sum, n| sum.saturating_add(*n))
    }

    /// Good pieces on the rack: what was good and no job has, less what went elsewhere, as the rack was last counted.
    pub fn on_rack(&self) -> Count {
        Count::try_from(self.told_on_rack().max(0)).unwrap_or(Count::MAX)
    }

    /// The same as the counts come to: below nothing where more left it than lay there.
    pub fn told_on_rack(&self) -> i64 {
        let away = self.used().saturating_add(self.gone_for_good());
        i64::from(self.good()).saturating_sub(i64::from(away)).saturating_add(self.stock.drift)
    }

    /// Pieces on the rack that are set apart.
    pub fn reserved(&self) -> Count {
        self.stock.reserved.iter().fold(0, |sum: Count, (_, n)| sum.saturating_add(*n))
    }

    pub fn reserved_for(&self, job: Id) -> Count {
        self.apart().get(&job).copied().unwrap_or(0)
    }

    /// Pieces on the rack that are set apart, by the job that has them.
    pub fn apart(&self) -> Sorted<Id, Count> {
        let mut apart: Sorted<Id, Count> = Sorted::new();
        for (job, n) in &self.stock.reserved {
            let for_it = apart.entry(*job).or_default();
            *for_it = for_it.saturating_add(*n);
        }
        apart
    }

    /// Pieces on the rack that a job may take: the free ones, and those set apart for it.
    pub fn free_for(&self, job: Option<Id>) -> Count {
        let own = job.map_or(0, |job| self.reserved_for(job));
        self.on_rack().saturating_sub(self.reserved().saturating_sub(own))
    }

    /// Good pieces that left for no job, or are not found any more: their share goes to the workshop.
    pub fn lost(&self) -> Count {
        let missing = Count::try_from(self.stock.drift.saturating_neg().max(0)).unwrap_or(Count::MAX);
        self.gone_for_good().saturating_add(missing).min(self.good())
    }

    /// The rack was counted: so many lie there, whatever the counts said. What was taken back or done again since comes on top, but
    /// for as many as the count had found beyond what was told then: these were they (ours).
    pub fn walked_round(&mut self, n: Count, at: Wall, since: Since) {
        let (n, on_rack, left_gone) = (i64::from(n), i64::from(self.on_rack()), i64::from(since.left_gone));
        let found = n.saturating_sub(on_rack);
        // Counts that come to less than nothing are shown as nothing: what lies there stands against that.
        let under = self.told_on_rack().min(0);
        // What was not found is what lies there no more.
        let missing = on_rack.saturating_sub(since.back).saturating_add(left_gone).saturating_sub(n).max(0);
        let back = since.back.saturating_sub(left_gone.saturating_sub(missing).max(0));
        let told = self.told_on_rack().saturating_sub(since.back).saturating_add(left_gone).max(0);
        let back = back.saturating_sub(n.saturating_sub(told).clamp(0, back.max(0)));
        self.stock.drift = self.stock.drift.saturating_add(found).saturating_sub(under).saturating_add(back);
        self.stock.walked = Some(at);
    }

    pub fn set_apart(&mut self, job: Id, n: Count) {
        let n = n.min(self.free_for(None));
        self.stock.reserved.push((job, n));
    }

    pub fn set_free(&mut self, job: Id, n: Count) {
        self.give_up(n, |it| it == job);
    }

    /// What was said of pieces holds as far as there are any: what was sorted is good, what is set apart lies on the rack, and what was
    /// set apart last is given up first.
    pub fn settle(&mut self) {
        self.sorted_good = self.sorted_good.min(self.good());
        self.left = self.left.min(self.taken);
        self.give_up(self.reserved().saturating_sub(self.on_rack()), |_| true);
    }

    /// So many of those set apart are no more, the latest first.
    fn give_up(&mut self, mut n: Count, whose: impl Fn(Id) -> bool) {
        for (_, there) in self.stock.reserved.iter_mut().rev().filter(|(job, _)| whose(*job)) {
            let less = n.min(*there);
            *there = there.saturating_sub(less);
            n = n.saturating_sub(less);
        }
        self.stock.reserved.retain(|(_, n)| 0 < *n);
    }

    /// Good pieces leave the rack for no job.
    pub fn left_for(&mut self, to: Key, n: Count) {
        let n = n.min(self.on_rack());
        let gone = self.stock.gone.entry(to).or_default();
        *gone = gone.saturating_add(n);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Moment, Offset};

    fn job(n: u8) -> Id {
        Id::new(Moment::at(0), [n; 10])
    }

    fn pile(taken: Count) -> Pile {
        Pile { taken, ..Pile::new(job(0)) }
    }

    #[track_caller]
    fn check(pile: &Pile, on_rack: Count, reserved: Count, lost: Count) {
        assert_eq!((pile.on_rack(), pile.reserved(), pile.lost()), (on_rack, reserved, lost), "{pile:?}");
    }

    #[test]
    fn the_rack_goes_by_what_was_found_there() {
        let (wall, burnt) = (Wall::new(Moment::at(0), Offset::UTC), Key::read("burnt").unwrap());
        let mut pile = pile(30);
        pile.given(job(1), 10);
        pile.left_for(burnt.clone(), 3);
        check(&pile, 17, 0, 3);
        pile.walked_round(15, wall, Since::default());
        check(&pile, 15, 0, 5);
        pile.walked_round(19, wall, Since::default());
        check(&pile, 19, 0, 3);
        pile.left_for(burnt, 100);
        check(&pile, 0, 0, 22);
        pile.freed(job(1), 4);
        check(&pile, 4, 0, 22);
    }

    #[test]
    fn what_is_set_apart_is_taken_by_its_job_first() {
        let mut pile = pile(10);
        pile.set_apart(job(1), 6);
        pile.set_apart(job(2), 9);
        check(&pile, 10, 10, 0);
        assert_eq!((pile.reserved_for(job(2)), pile.free_for(Some(job(1))), pile.free_for(None)), (4, 6, 0));
        pile.given(job(1), 5);
        assert_eq!((pile.reserved_for(job(1)), pile.free_for(Some(job(2))), pile.on_rack()), (1, 4, 5));
        pile.set_free(job(2), 3);
        assert_eq!((pile.reserved(), pile.free_for(None)), (2, 3));
    }

    /// What goes, and what is set apart then for the first job and for the second, of ten: six and four.
    #[test]
    fn what_was_set_apart_last_is_given_up_first() {
        let gone = |n: Count| {
            let mut pile = pile(10);
            pile.set_apart(job(2), 6);
            pile.set_apart(job(1), 4);
            pile.left_for(Key::read("burnt").unwrap(), n);
            pile.settle();
            (pile.reserved_for(job(2)), pile.reserved_for(job(1)), pile.free_for(None))
        };
        assert_eq!([0, 3, 5, 10].map(gone), [(6, 4, 0), (6, 1, 0), (5, 0, 0), (0, 0, 0)]);
    }

    /// Of twenty, what lies there where takes made before a count are taken back after it: so many told, so many found, so many back.
    #[test]
    fn what_a_count_found_beyond_what_was_told_comes_back_no_second_time() {
        let rack = |told: Count, found: Count, back: Count| {
            let mut pile = pile(20);
            pile.given(job(1), 20 - told - back);
            let since = Since { back: back.into(), left_gone: 0 };
            pile.walked_round(found, Wall::new(Moment::at(0), Offset::UTC), since);
            pile.on_rack()
        };
        let found = [9, 12, 13, 17, 19, 20, 22].map(|found| rack(12, found, 8));
        assert_eq!(found, [17, 20, 20, 20, 20, 20, 22]);
        // Of takes of three and five the one or both.
        assert_eq!([rack(12, 17, 3), rack(12, 17, 5), rack(12, 17, 8)], [17, 17, 20]);
        assert_eq!([rack(12, 14, 3), rack(12, 14, 5), rack(12, 14, 8)], [15, 17, 20]);
        for (told, back) in (0..12).flat_map(|told| (0..9).map(move |back| (told, back))) {
            let racks: Vec<Count> = (0..30).map(|found| rack(told, found, back)).collect();
            assert!(racks.is_sorted(), "{told} told, {back} back: {racks:?}");
            assert!(racks.iter().zip(0..).all(|(rack, found)| *rack <= found.max(told + back)), "{told} told, {back} back: {racks:?}");
        }
    }

    /// Pieces freed after a count that found fewer than jobs had are there again.
    #[test]
    fn a_count_that_finds_what_was_never_counted_holds() {
        let wall = Wall::new(Moment::at(0), Offset::UTC);
        let mut pile = pile(4);
        pile.given(job(1), 4);
        pile.walked_round(3, wall, Since::default());
        check(&pile, 3, 0, 0);
        pile.given(job(2), 3);
        check(&pile, 0, 0, 0);
        assert_eq!(pile.used(), 7);
    }
}
