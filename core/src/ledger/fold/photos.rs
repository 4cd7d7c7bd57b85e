//! Photos that are wanted: taken and not removed. Their pictures lie beside the book.

use crate::ledger::{Entry, Fact};
use crate::quantity::{Id, Set};

/// A photo, by the id of its picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Photo {
    pub id: Id,
    pub job: Option<Id>,
    /// It is the receipt of this spending, and of no job's face.
    pub spending: Option<Id>,
}

/// Every photo, in the order they were taken; and those that were removed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Photos {
    taken: Vec<Photo>,
    gone: Set<Id>,
    /// Spendings with receipts that were struck.
    lost: Set<Id>,
}

impl Photos {
    pub(super) fn apply(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::PhotoTaken(f) if self.taken.iter().all(|photo| photo.id != f.photo) => {
                self.taken.push(Photo { id: f.photo, job: f.job, spending: f.spending });
            }
            Fact::PhotoRemoved(f) => {
                self.gone.insert(f.photo);
            }
            _ => {}
        }
    }

    /// A receipt goes with its spending; of one that is not there yet it is kept.
    pub(super) fn without_lost(&mut self, is_struck: impl Fn(Id) -> bool) {
        self.lost = self.taken.iter().filter_map(|photo| photo.spending).filter(|spending| is_struck(*spending)).collect();
    }

    /// Whether a spending has receipts, wanted or not.
    pub fn has_receipt(&self, spending: Id) -> bool {
        self.taken.iter().any(|photo| photo.spending == Some(spending))
    }

    /// All that are wanted.
    pub fn wanted(&self) -> impl Iterator<Item = Photo> + '_ {
        let is_lost = |photo: &&Photo| photo.spending.is_some_and(|spending| self.lost.contains(&spending));
        self.taken.iter().filter(|photo| !self.gone.contains(&photo.id)).filter(move |photo| !is_lost(photo)).copied()
    }

    /// Those of a job, the oldest first.
    pub fn of_job(&self, job: Id) -> impl Iterator<Item = Id> + '_ {
        self.wanted().filter(move |photo| photo.job == Some(job) && photo.spending.is_none()).map(|photo| photo.id)
    }

    /// Receipts of a spending, the oldest first.
    pub fn of_spending(&self, spending: Id) -> impl Iterator<Item = Id> + '_ {
        self.wanted().filter(move |photo| photo.spending == Some(spending)).map(|photo| photo.id)
    }
}
