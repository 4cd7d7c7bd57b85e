//! How many pieces each operation of a job has: the later word counts, whether it was said at the bench or with the plan.

use crate::ledger::Fact;
use crate::quantity::{Count, Id, Set, Sorted};

/// An operation of a job.
pub(super) type Meant = (Id, String);

/// The last word on how many pieces there are.
struct Word {
    n: Count,
    /// Somebody said so at the bench; the plan repeats it at most.
    at_bench: bool,
    /// The plan named a number, this one or another.
    in_plan: bool,
}

/// What was said so far.
#[derive(Default)]
pub(super) struct Numbers(Sorted<Meant, Word>);

impl Numbers {
    /// A plan without a number takes back its own, and what put that right; of what was said at the bench alone it says nothing.
    pub fn take(&mut self, fact: &Fact) {
        match fact {
            Fact::BatchPlanned(f) => self.put((f.job, f.op.clone()), f.n, true),
            Fact::OperationPlanned(f) => match f.pieces.filter(|n| 0 < *n) {
                Some(n) => self.put((f.job, f.op.clone()), n, false),
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

    fn put(&mut self, meant: Meant, n: Count, at_bench: bool) {
        let word = self.0.entry(meant).or_insert(Word { n, at_bench, in_plan: false });
        let repeats = word.at_bench && word.n == n;
        *word = Word { n, at_bench: at_bench || repeats, in_plan: word.in_plan || !at_bench };
    }

    /// How many there are of an operation.
    pub fn of(&self, job: Id, op: &str) -> Option<Count> {
        self.0.get(&(job, op.to_owned())).map(|word| word.n)
    }

    /// All of them, but for those that only the plan says of what is coated: each coat is on every piece.
    pub fn but_for(self, coated: &Set<Meant>) -> (Sorted<Meant, Count>, Set<Meant>) {
        let (mut all, mut only_planned) = (Sorted::new(), Set::new());
        for (meant, word) in self.0.into_iter().filter(|(meant, word)| word.at_bench || !coated.contains(meant)) {
            if !word.at_bench {
                only_planned.insert(meant.clone());
            }
            all.insert(meant, word.n);
        }
        (all, only_planned)
    }
}
