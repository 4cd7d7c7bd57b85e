//! Bringing in a copy: what it would add, as counts and totals, before anything is accepted; then all or nothing.
//!
//! Carries invariant 11: it only ever adds, and the book here is not touched until the lines are written.

use super::book::Added;
use super::line::document::{Document, DocumentTrouble, ENTRIES_MOST, Photos};
use super::people::{self, People};
use super::{Book, Fact, fold};
use crate::bench::Run;
use crate::quantity::{Count, Currency, Decimal, Listed, Moment, Money, Span, Wall};
use crate::quantity::{Id, Sorted};

/// A sum of each currency; sums are never mixed.
pub type Sums = Sorted<Currency, Decimal>;

/// What a book amounts to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Totals {
    pub jobs: usize,
    pub piles: usize,
    pub pieces: Count,
    /// Time of runs that have ended, and of trips.
    pub logged: Span,
    pub spent: Sums,
    pub taken: Sums,
}

/// Lines of a copy, by what they are to the book here.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Lines {
    /// Here already.
    pub known: usize,
    pub new: usize,
    /// From a newer version: kept, not yet read.
    pub newer: usize,
    /// Damaged: kept, set aside.
    pub damaged: usize,
}

/// What a copy would bring. Nothing is changed by it.
#[derive(Clone, Debug, PartialEq)]
pub struct Coming {
    pub made: Wall,
    pub lines: Lines,
    pub here: Totals,
    pub then: Totals,
    /// The book as it would be.
    pub book: Book,
    /// The lines to store, in one transaction.
    pub fresh: Vec<String>,
    /// Everyone known then.
    pub people: People,
    /// The photos it holds; one that is here already stays as it is.
    pub photos: Photos,
    /// Every photo that is wanted then.
    pub wanted: Vec<Id>,
}

/// What bringing in a copy would change, seen from the book and the people here.
///
/// # Errors
/// [`DocumentTrouble::TooMany`] when both together pass the most a book may have.
pub fn bring_in(book: &Book, here: &People, copy: &Document) -> Result<Coming, DocumentTrouble> {
    let mut then = book.clone();
    let added = then.merge(copy.lines.iter().map(|line| &**line));
    let entries = then.lines().count();
    if ENTRIES_MOST < entries {
        return Err(DocumentTrouble::TooMany { entries, most: ENTRIES_MOST });
    }
    let fresh = copy.lines.iter().zip(&added).filter(|(_, added)| **added != Added::Known);
    Ok(Coming {
        made: copy.made,
        lines: lines(&added),
        here: totals(book),
        then: totals(&then),
        fresh: fresh.map(|(line, _)| line.to_string()).listed(),
        people: people::joined(&then, here, &copy.people),
        photos: copy.photos.clone().unwrap_or_default(),
        wanted: fold::workshop(&then).photos.wanted().map(|photo| photo.id).listed(),
        book: then,
    })
}

fn lines(added: &[Added]) -> Lines {
    let count = |what| added.iter().filter(|added| **added == what).count();
    Lines { known: count(Added::Known), new: count(Added::New), newer: count(Added::Newer), damaged: count(Added::Aside) }
}

/// What a book amounts to: jobs, piles, pieces counted, time, spent and taken.
pub fn totals(book: &Book) -> Totals {
    let ended = |run: &&Run| !run.is_running();
    let bench = fold::bench(book);
    // One that was cut by a later start ends there, whatever the moment.
    let runs = bench.runs().filter(ended).map(|run| run.worked(Moment::LAST));
    let mut totals = Totals { logged: Span::sum(runs), ..Totals::default() };
    for haul in fold::hauls(book) {
        totals.piles = totals.piles.saturating_add(haul.piles.len());
        totals.pieces = totals.pieces.saturating_add(haul.taken());
        for trip in &haul.trips {
            totals.logged = totals.logged.plus(trip.wheel()).plus(trip.bin());
            trip.cost(haul.currency).into_iter().for_each(|cost| add(&mut totals.spent, cost));
        }
    }
    for job in fold::jobs(book) {
        let selling = &job.selling;
        let came = [selling.received(job.currency), selling.handed_over(job.currency)];
        came.into_iter().flatten().for_each(|sum| add(&mut totals.taken, sum));
    }
    for fact in book.entries().filter(|(_, struck)| !struck).map(|(entry, _)| &entry.fact) {
        match fact {
            Fact::JobBegan(_) => totals.jobs = totals.jobs.saturating_add(1),
            Fact::MoneySpent(f) => add(&mut totals.spent, f.sum),
            Fact::DistanceDriven(f) => add(&mut totals.spent, f.sum),
            _ => {}
        }
    }
    totals
}

fn add(sums: &mut Sums, money: Money) {
    let sum = sums.entry(money.currency()).or_default();
    *sum = sum.saturating_add(money.amount());
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::ledger::told::Phone;
    use crate::story::tell;

    /// What these lines took, after two of four stools were agreed for 800, 300 of it ahead.
    #[track_caller]
    fn check(lines: &str, taken: i64) {
        let story = tell(&format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 4 order\n\
             agree 800 for 2 stools fetched deposit 300 as deal\npay 300 for stools bank agreed deal\n{lines}"
        ));
        assert_eq!(story.refused, [], "{lines}");
        assert_eq!(totals(&story.book).taken.get(&Currency::USD), Some(&Decimal::from(taken)), "{lines}");
    }

    #[test]
    fn what_was_handed_back_is_not_taken() {
        check("sell 2 stools for 800 notes agreed deal", 800);
        check("cancel deal on stools", 0);
        check("cancel deal on stools kept 50", 50);
        check("sell 1 stools for 400 as one\nreverse sale one on stools", 300);
        check("sell 1 stools for 400 card as one\nreverse sale one on stools kept 40", 340);
        check("sell 1 stools for 400 card as one\nreverse sale one on stools\nundo", 700);
        check("consign 2 stools tag 200 share 0.4\ngallery pays 120 for 1 stools", 420);
    }

    #[test]
    fn a_run_that_another_phone_ended_has_its_time() {
        let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
        one.start(0, "sand", On::Nothing);
        two.start(20, "glue", On::Nothing);
        assert_eq!(totals(&one.book).logged, Span::ZERO, "it runs");
        one.merge(&two);
        assert_eq!(totals(&one.book).logged, Span::minutes(20));
    }
}
