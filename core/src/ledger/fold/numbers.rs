//! How many pieces each operation of a job has: the later word counts, whether it was said at the bench or with the plan.

use crate::ledger::{Entry, Fact};
use crate::quantity::{Count, Id, Moment, Set, Sorted};

/// An operation of a job.
pub(super) type Meant = (Id, String);

/// The last word on how many pieces there are.
struct Word {
    n: Count,
    /// On how many pieces a coat of it is: as was said before the maker was done with it.
    each: Option<Count>,
    /// Somebody said so at the bench; the plan repeats it at most.
    at_bench: bool,
    /// The plan named a number, this one or another.
    in_plan: bool,
    /// When it was said as the maker was done with it.
    done: Option<Moment>,
}

/// Where a number was said: at the bench or with the plan, and as the maker was done with it.
#[derive(Clone, Copy)]
struct Said {
    at_bench: bool,
    done: Option<Moment>,
}

/// How many pieces operations have.
#[derive(Default)]
pub(super) struct Pieces {
    pub all: Sorted<Meant, Count>,
    /// Of those, the ones that only the plan says.
    pub only_planned: Set<Meant>,
    /// What is coated, and how many pieces each coat is on.
    pub coated: Sorted<Meant, Option<Count>>,
    /// What the maker is done with, and since when.
    pub done: Sorted<Meant, Moment>,
}

/// What was said so far.
#[derive(Default)]
pub(super) struct Numbers(Sorted<Meant, Word>);

impl Numbers {
    /// A plan without a number takes back its own, and what put that right; of what was said at the bench alone it says nothing.
    pub fn take(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::BatchPlanned(f) => {
                let done = (f.done == Some(true)).then_some(entry.wall.at);
                self.put((f.job, f.op.clone()), f.n, Said { at_bench: true, done });
            }
            Fact::OperationPlanned(f) => match f.pieces.filter(|n| 0 < *n) {
                Some(n) => self.put((f.job, f.op.clone()), n, Said { at_bench: false, done: None }),
                None => self.take_back((f.job, f.op.clone())),
            },
            _ => {}
        }
    }

    fn take_back(&mut self, meant: Meant) {
        if self.0.get(&meant).is_some_and(|word| word.in_plan) {
            self.0.remove(&meant);
        }
    }

    fn put(&mut self, meant: Meant, n: Count, Said { at_bench, done }: Said) {
        let word = self.0.entry(meant).or_insert(Word { n, each: None, at_bench, in_plan: false, done });
        let repeats = word.at_bench && word.n == n;
        let each = if done.is_some() { word.each } else { Some(n) };
        *word = Word { n, each, at_bench: at_bench || repeats, in_plan: word.in_plan || !at_bench, done };
    }

    /// How many there are of an operation.
    pub fn of(&self, job: Id, op: &str) -> Option<Count> {
        self.0.get(&(job, op.to_owned())).map(|word| word.n)
    }

    /// All of them, and of what is coated how many pieces a coat is on; none where nobody said.
    pub fn with_coats(self, coated: &Set<Meant>) -> Pieces {
        let mut found = Pieces { coated: coated.iter().map(|meant| (meant.clone(), None)).collect(), ..Pieces::default() };
        for (meant, word) in self.0 {
            found.coated.get_mut(&meant).into_iter().for_each(|each| *each = word.each);
            if !word.at_bench {
                found.only_planned.insert(meant.clone());
            }
            word.done.and_then(|done| found.done.insert(meant.clone(), done));
            found.all.insert(meant, word.n);
        }
        found
    }
}
