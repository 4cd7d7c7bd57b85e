//! Bringing in a copy: what it would add, as counts and totals, before anything is accepted; then all or nothing.
//!
//! Carries invariant 11: it only ever adds, and the book here is not touched until the lines are written.

use super::book::Added;
use super::line::document::{Document, DocumentTrouble, ENTRIES_MOST, Photos};
use super::people::{self, People};
use super::{Book, Fact, fold};
use crate::bench::Run;
use crate::quantity::Sorted;
use crate::quantity::{Count, Currency, Decimal, Money, Span, Wall};

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
        fresh: fresh.map(|(line, _)| line.to_string()).collect(),
        people: people::joined(&then, here, &copy.people),
        photos: copy.photos.clone().unwrap_or_default(),
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
    let runs = bench.runs().filter(ended).map(|run| run.started.at.until(run.end(run.started.at)));
    let mut totals = Totals { logged: Span::sum(runs), ..Totals::default() };
    for haul in fold::hauls(book) {
        totals.piles = totals.piles.saturating_add(haul.piles.len());
        totals.pieces = totals.pieces.saturating_add(haul.taken());
        for trip in &haul.trips {
            totals.logged = totals.logged.plus(trip.wheel()).plus(trip.bin());
            trip.cost(haul.currency).into_iter().for_each(|cost| add(&mut totals.spent, cost, true));
        }
    }
    for fact in book.entries().filter(|(_, struck)| !struck).map(|(entry, _)| &entry.fact) {
        match fact {
            Fact::JobBegan(_) => totals.jobs = totals.jobs.saturating_add(1),
            Fact::MoneySpent(f) => add(&mut totals.spent, f.sum, true),
            Fact::DistanceDriven(f) => add(&mut totals.spent, f.sum, true),
            Fact::PaymentReceived(f) => add(&mut totals.taken, f.sum, true),
            Fact::ConsignmentPaid(f) => add(&mut totals.taken, f.sum, true),
            Fact::SaleReversed(f) => {
                let sale = book.entry(f.sale).map(|(sale, _)| &sale.fact);
                let Some(Fact::PieceSold(sale)) = sale else { continue };
                add(&mut totals.taken, sale.sum, false);
                f.kept.into_iter().for_each(|kept| add(&mut totals.taken, kept, true));
            }
            _ => {}
        }
    }
    totals
}

fn add(sums: &mut Sums, money: Money, plus: bool) {
    let sum = sums.entry(money.currency()).or_default();
    *sum = if plus { sum.saturating_add(money.amount()) } else { sum.saturating_sub(money.amount()) };
}
