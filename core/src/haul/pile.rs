//! A pile: pieces alike. Its counts are never negative.

use super::stock::Stock;
use crate::quantity::Sorted;
use crate::quantity::{Count, Decimal, Id, Key, Length, Volume, Wall};
use crate::refusal::Answer;
use crate::wood::moisture::Moisture;
use crate::wood::species::{Species, UNKNOWN_HARDWOOD};
use crate::wood::woods::{OwnWood, Wood};

/// What a pile is wanted for: so many parts, of which one takes some pieces, or of which one piece gives some.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Want {
    /// The part's name; empty where pieces themselves are wanted.
    pub part: String,
    pub job: Option<Id>,
    pub wanted: Count,
    /// Pieces of the pile that one part takes.
    pub pieces: Count,
    /// Parts that one piece gives.
    pub gives: Count,
    /// How long the part is, where its job says so.
    pub length: Option<Length>,
}

/// The sides of one piece that were measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Measured {
    pub thickness: Option<Length>,
    pub width: Option<Length>,
    pub length: Option<Length>,
}

/// How wet a pile was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dampness {
    /// In per cent, where it was read.
    pub percent: Option<Decimal>,
    /// Plainly wet, by eye or hand.
    pub wet: bool,
    pub at: Wall,
}

/// How a count by weight came about. Grams.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    pub counted: Id,
    pub sample: Count,
    pub sample_weight: i64,
    pub weight: i64,
    pub tare: i64,
    pub spread: Option<Decimal>,
    /// The spread was found by so many single weights; else it is a guess.
    pub singles: Option<Count>,
    /// The count still stands: the pile was not counted again since.
    pub counts: bool,
}

/// Pieces alike. It may be counted before it is named or sized.
#[derive(Clone, Debug, PartialEq)]
pub struct Pile {
    pub id: Id,
    pub label: String,
    pub name: Option<String>,
    pub wood: Option<Key>,
    /// Its wood where that is the maker's own.
    pub own: Option<OwnWood>,
    pub thickness: Option<Length>,
    pub width: Option<Length>,
    pub length: Option<Length>,
    /// The high end of a length band.
    pub length_to: Option<Length>,
    /// What was counted.
    pub taken: Count,
    /// The counts as they were tapped, each with its entry.
    pub bundles: Vec<(Id, Count)>,
    pub sorted_good: Count,
    pub rejects: Sorted<Key, Count>,
    /// Rejected pieces that went to jigs or were burnt stay rejected: by reason, and where they went.
    pub gone: Sorted<(Key, Key), Count>,
    pub in_jobs: Sorted<Id, Count>,
    /// Of those taken, such as were left of pieces that a job had: they are of the haul already, in another pile.
    pub left: Count,
    /// What jobs gave back of the pieces they took, as left pieces of other piles.
    pub given_back: Sorted<Id, Volume>,
    /// When it was begun.
    pub since: Option<Wall>,
    pub stock: Stock,
    pub wants: Vec<Want>,
    pub measured: Vec<Measured>,
    pub dampness: Option<Dampness>,
    pub weighed: Vec<Weighed>,
    /// Pieces that are looked for, by their entry and place: the maker says that it does for them, or does not.
    pub suits: Sorted<(Id, Count), bool>,
}

impl Dampness {
    /// What was read; nothing where it was only seen or felt.
    pub fn moisture(self) -> Option<Moisture> {
        let percent = f64::try_from(self.percent?).ok()?;
        Moisture::per_cent(percent).ok()
    }
}

impl Pile {
    pub fn new(id: Id) -> Pile {
        Pile {
            id,
            label: String::new(),
            name: None,
            wood: None,
            own: None,
            thickness: None,
            width: None,
            length: None,
            length_to: None,
            taken: 0,
            bundles: vec![],
            sorted_good: 0,
            rejects: Sorted::new(),
            gone: Sorted::new(),
            in_jobs: Sorted::new(),
            left: 0,
            given_back: Sorted::new(),
            since: None,
            stock: Stock::default(),
            wants: vec![],
            measured: vec![],
            dampness: None,
            weighed: vec![],
            suits: Sorted::new(),
        }
    }

    /// Its wood to reckon with: of the tables, else the maker's own, else the heaviest plausible, marked as a guess.
    pub fn known_wood(&self) -> Wood<'_> {
        let table = self.wood.as_ref().and_then(|key| Species::of(key.as_str()).ok()).map(Wood::from);
        table.or_else(|| self.own.as_ref().map(Wood::from)).unwrap_or(Wood::from(&UNKNOWN_HARDWOOD))
    }

    pub fn rejected(&self) -> Count {
        self.rejects.values().fold(0, |sum, n| sum.saturating_add(*n))
    }

    pub fn rejected_for(&self, why: &Key) -> Count {
        self.rejects.get(why).copied().unwrap_or(0)
    }

    /// Pieces rejected for a reason that still lie there: neither to jigs nor burnt.
    pub fn rejects_lying(&self, why: &Key) -> Count {
        let gone = self.gone.iter().filter(|((other, _), _)| other == why).fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
        self.rejected_for(why).saturating_sub(gone)
    }

    /// Rejected pieces that are gone, by where they went.
    pub fn rejects_gone(&self) -> Sorted<Key, Count> {
        let mut gone: Sorted<Key, Count> = Sorted::new();
        for ((_, to), n) in &self.gone {
            let there = gone.entry(to.clone()).or_default();
            *there = there.saturating_add(*n);
        }
        gone
    }

    /// Good = taken - rejected: an unsorted piece counts as good.
    pub fn good(&self) -> Count {
        self.taken.saturating_sub(self.rejected())
    }

    /// Pieces that the haul brought as they are.
    pub fn brought(&self) -> Count {
        self.taken.saturating_sub(self.left)
    }

    pub fn unsorted(&self) -> Count {
        self.good().saturating_sub(self.sorted_good)
    }

    /// What jobs have.
    pub fn used(&self) -> Count {
        self.in_jobs.values().fold(0, |sum, n| sum.saturating_add(*n))
    }

    pub fn in_job(&self, job: Id) -> Count {
        self.in_jobs.get(&job).copied().unwrap_or(0)
    }

    /// Pieces that may turn out to belong to another pile: neither sorted nor in a job nor set apart.
    pub fn movable(&self) -> Count {
        self.unsorted().min(self.free_for(None))
    }

    /// Pieces that were rejected, that jobs have or that went elsewhere: no count again is below them.
    pub fn spoken_for(&self) -> Count {
        self.rejected().saturating_add(self.used()).saturating_add(self.gone_for_good())
    }

    /// The volume of one piece as measured rough: the mean of those that were measured, else by its size, a band at its middle. `None`
    /// without a size.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`].
    pub fn piece(&self) -> Answer<Option<Volume>> {
        match self.sampled()? {
            Some(sampled) => Ok(Some(sampled.mean)),
            None => self.piece_of(self.middle()),
        }
    }

    /// The volume of one piece by its size, at the long end of its band. `None` without a size.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`].
    pub fn longest_piece(&self) -> Answer<Option<Volume>> {
        self.piece_of(self.length_to.or(self.length))
    }

    fn piece_of(&self, length: Option<Length>) -> Answer<Option<Volume>> {
        let Some(((thickness, width), length)) = self.thickness.zip(self.width).zip(length) else { return Ok(None) };
        Volume::of(thickness, width, length).map(Some)
    }

    /// The length, or the middle of its band.
    pub fn middle(&self) -> Option<Length> {
        let from = self.length?;
        Some(self.length_to.and_then(|to| from.plus(to).ok()).map_or(from, Length::half))
    }

    /// Counted again: what is there, whatever was counted before or found on the rack; no less than was rejected, jobs have and is gone.
    pub fn recounted(&mut self, n: Count) {
        self.weighed.iter_mut().for_each(|weighed| weighed.counts = false);
        self.taken = n.max(self.spoken_for());
        self.stock.drift = 0;
    }

    /// Rejected pieces turn good again, or are gone for good: to jigs, burnt.
    pub fn returned(&mut self, why: &Key, n: Count, gone_to: Option<Key>) {
        let n = n.min(self.rejects_lying(why));
        let Some(there) = self.rejects.get_mut(why) else { return };
        if let Some(to) = gone_to {
            let gone = self.gone.entry((why.clone(), to)).or_default();
            *gone = gone.saturating_add(n);
        } else {
            *there = there.saturating_sub(n);
            self.sorted_good = self.sorted_good.saturating_add(n);
        }
        self.rejects.retain(|_, n| 0 < *n);
        self.gone.retain(|_, n| 0 < *n);
    }

    /// A job takes pieces, those set apart for it first; no more than lie on the rack.
    pub fn given(&mut self, job: Id, n: Count) {
        let n = n.min(self.on_rack());
        self.set_free(job, n);
        let has = self.in_jobs.entry(job).or_default();
        *has = has.saturating_add(n);
        self.in_jobs.retain(|_, n| 0 < *n);
    }

    /// Left of pieces of another pile: they are good, as those were.
    pub fn left_over(&mut self, n: Count) {
        for count in [&mut self.taken, &mut self.left, &mut self.sorted_good] {
            *count = count.saturating_add(n);
        }
    }

    pub fn freed(&mut self, job: Id, n: Count) {
        if let Some(has) = self.in_jobs.get_mut(&job) {
            *has = has.saturating_sub(n);
        }
        self.in_jobs.retain(|_, n| 0 < *n);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Moment;

    /// Ten rejects for twist; each step gives so many back, or to a place; then rejected, lying there, good.
    #[track_caller]
    fn check(steps: &[(Count, Option<&str>)], (rejected, lying, good): (Count, Count, Count)) {
        let key = |text| Key::read(text).unwrap();
        let twist = key("twist");
        let mut pile = Pile { taken: 12, sorted_good: 2, ..Pile::new(Id::new(Moment::at(0), [0; 10])) };
        pile.rejects.insert(twist.clone(), 10);
        for (n, to) in steps {
            pile.returned(&twist, *n, to.map(key));
        }
        assert_eq!((pile.rejected_for(&twist), pile.rejects_lying(&twist), pile.sorted_good), (rejected, lying, good), "{steps:?}");
    }

    #[test]
    fn a_reject_leaves_once() {
        check(&[(4, Some("jigs"))], (10, 6, 2));
        check(&[(4, Some("jigs")), (9, Some("burnt"))], (10, 0, 2));
        check(&[(4, Some("burnt")), (9, None)], (4, 0, 8));
        check(&[(10, None), (1, Some("jigs"))], (0, 0, 12));
    }

    #[test]
    fn what_is_gone_is_told_by_place() {
        let key = |text| Key::read(text).unwrap();
        let mut pile = Pile { taken: 9, ..Pile::new(Id::new(Moment::at(0), [0; 10])) };
        pile.rejects.extend([(key("knot"), 3), (key("twist"), 2)]);
        pile.returned(&key("knot"), 2, Some(key("burnt")));
        pile.returned(&key("twist"), 1, Some(key("burnt")));
        pile.returned(&key("knot"), 1, Some(key("jigs")));
        assert_eq!(pile.rejects_gone(), Sorted::from([(key("burnt"), 3), (key("jigs"), 1)]));
    }
}
