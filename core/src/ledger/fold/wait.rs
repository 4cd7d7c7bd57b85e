//! The waits from their entries, and what is usual. A wait begins by the wall clock of its entry: it is off by that clock too.

use crate::bench::meanwhile::Quiet;
use crate::bench::wait::{Off, Said, Usuals, Wait, Waits};
use crate::ledger::kind::wait as kind;
use crate::ledger::places::Places;
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Count, Id, Listed, Sorted, Span};

/// Every wait there is.
pub fn waits(book: &Book) -> Waits {
    let mut gathered = Gathered::default();
    for (entry, struck) in book.ever(Subject::Bench) {
        gathered.revised(entry, book.turns(entry.id));
        gathered.recounted(book, entry);
        if !struck {
            gathered.take(entry);
        }
    }
    gathered.waits(book)
}

/// What is said of one wait, in whatever order.
#[derive(Default)]
struct Told {
    began: Option<Wait>,
    ended: Option<Off>,
    mended: Option<Span>,
    /// How often that was said, taken back and put back.
    revised: u32,
}

#[derive(Default)]
struct Gathered {
    of: Places,
    told: Vec<Told>,
    /// The job of each run that was moved.
    moved: Sorted<Id, Option<Id>>,
    /// The count that was written for one that was struck in the same act.
    instead: Sorted<Id, Id>,
    usuals: Usuals,
}

impl Gathered {
    fn take(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::WaitBegan(f) => self.of(entry.id).began = Some(began(entry, f)),
            // The first time it was taken off stands.
            Fact::WaitEnded(f) => {
                self.of(f.wait).ended.get_or_insert(Off { at: entry.wall, early: f.early.unwrap_or(false), taken: true });
            }
            Fact::WaitMended(f) => {
                let told = self.of(f.wait);
                told.mended = Some(f.span);
            }
            // What a run clamped goes with it.
            Fact::RunMoved(f) => {
                self.moved.insert(f.run, f.job);
            }
            Fact::OperationWaitSet(f) => {
                let said = f.what.clone().map(|what| Said { what, stuff: f.stuff.clone(), span: f.span });
                self.usuals.ops.insert(f.op.clone(), said);
            }
            Fact::UsualWaitSet(f) => {
                let of = (f.what.clone(), f.stuff.clone(), f.warmth);
                match f.span {
                    Some(span) => self.usuals.spans.insert(of, span),
                    None => self.usuals.spans.remove(&of),
                };
            }
            Fact::WarmthSet(f) => (self.usuals.warmth, self.usuals.warmth_said) = (f.warmth, Some(entry.wall)),
            Fact::QuietHoursSet(f) => self.usuals.quiet = f.from.zip(f.until).map(|(from, until)| Quiet { from, until }),
            Fact::OperationLoudSet(f) => {
                self.usuals.loud.insert(f.op.clone(), f.loud);
            }
            _ => {}
        }
    }

    /// A mend that is struck is a revision too: a calendar takes only what is numbered higher than what it holds (RFC 5545, 3.8.7.4).
    fn revised(&mut self, entry: &Entry, turns: u32) {
        if let Fact::WaitMended(f) = &entry.fact {
            let told = self.of(f.wait);
            told.revised = told.revised.saturating_add(1).saturating_add(turns);
        }
    }

    /// A count that was put right is struck, and what is left of it is counted in that act.
    fn recounted(&mut self, book: &Book, entry: &Entry) {
        if let Fact::PiecesDone(_) = &entry.fact
            && let Some((Entry { fact: Fact::Struck(f), .. }, false)) = entry.act.and_then(|act| book.entry(act))
            && let Some(last) = f.entries.last()
        {
            self.instead.insert(*last, entry.id);
        }
    }

    /// The count a wait came with, as it stands by now, and the pieces of it; none where no piece of it was done.
    fn counted(&self, book: &Book, mut count: Id) -> Option<(Id, Count)> {
        // A book that leads round in a circle leads nowhere.
        for _ in 0..=self.instead.iter().count() {
            match book.entry(count)? {
                (Entry { fact: Fact::PiecesDone(f), .. }, false) => return Some((count, f.n)),
                _ => count = *self.instead.get(&count)?,
            }
        }
        None
    }

    fn of(&mut self, wait: Id) -> &mut Told {
        let next = self.told.len();
        let at = self.of.get_or(wait, next);
        if at == next {
            self.told.push(Told::default());
        }
        // The place is there: it was filled just now, or before.
        #[allow(clippy::indexing_slicing)]
        &mut self.told[at]
    }

    /// What waits follows the count it came with: a piece that was not done does not wait.
    fn waits(mut self, book: &Book) -> Waits {
        let told = std::mem::take(&mut self.told);
        let one = |told: Told| {
            let (mended, span) = (told.revised, told.mended);
            let began = told.began?;
            let job = began.run.and_then(|run| self.moved.get(&run).copied()).unwrap_or(began.job);
            let (notch, n) = match began.notch.filter(|_| began.run.is_some()) {
                Some(count) => self.counted(book, count).map(|(notch, n)| (Some(notch), n.min(began.n)))?,
                None => (began.notch, began.n),
            };
            Some(Wait { job, notch, n, ended: told.ended, mended, span: span.unwrap_or(began.span), ..began })
        };
        let waits = told.into_iter().filter_map(one).listed();
        Waits::new(waits, self.usuals)
    }
}

/// The act of a piece that was clamped is named by its count, which is the first of it.
fn began(entry: &Entry, f: &kind::WaitBegan) -> Wait {
    let kind::WaitBegan { op, n, span, what, job, run, stuff } = f.clone();
    let (coated, onto_wet, ended) = (0, None, None);
    Wait { id: entry.id, op, job, run, notch: entry.act, n, what, stuff, began: entry.wall, span, mended: 0, ended, coated, onto_wet }
}
