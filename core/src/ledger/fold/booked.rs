//! A booked line: money spent or a distance driven, with how its sum came about. Jobs and the workshop have them alike.

use crate::ledger::kind::haul::Per;
use crate::ledger::kind::money::{DistanceDriven, MoneySpent};
use crate::ledger::{Entry, Fact};
use crate::quantity::{Decimal, Id, Key, Length, Listed, Money, Set, Wall};

/// The kind of a distance driven.
pub const DISTANCE: &str = "distance";

/// One booked line.
#[derive(Clone, Debug, PartialEq)]
pub struct Booked {
    pub entry: Id,
    pub job: Option<Id>,
    pub haul: Option<Id>,
    /// Below nothing for a credit, such as the salvage of a part that was swapped.
    pub sum: Money,
    /// None only where a key could not be spelled, which it always can.
    pub kind: Option<Key>,
    /// The maker's word for it.
    pub what: Option<String>,
    /// When it was spent: as said, else when it was written; by the clock of the place where it was written.
    pub at: Wall,
    pub how: How,
    /// The can it is of, where count is kept of it.
    pub can: Option<Id>,
    /// The line it came back of: a refund, or salvage.
    pub back: Option<Id>,
    /// Of a drive: whether it was to bring pieces to their buyers, where that was said.
    pub delivery: Option<bool>,
}

/// How a sum came about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum How {
    Whole,
    Each {
        n: Decimal,
        each: Decimal,
    },
    /// Used of a pack that holds `of` and cost `pack`.
    Share {
        used: Decimal,
        of: Decimal,
        pack: Money,
    },
    Driven {
        distance: Length,
        rate: Decimal,
        per: Per,
    },
}

/// Without what came back of a spending that was struck since.
pub(super) fn without_lost(lines: Vec<Booked>) -> Vec<Booked> {
    if lines.iter().all(|line| line.back.is_none()) {
        return lines;
    }
    let there: Set<Id> = lines.iter().map(|line| line.entry).collect();
    lines.into_iter().filter(|line| line.back.is_none_or(|of| there.contains(&of))).listed()
}

/// The line an entry books, if it books one.
pub fn booked(entry: &Entry) -> Option<Booked> {
    match &entry.fact {
        Fact::MoneySpent(f) => Some(spent(entry, f)),
        Fact::DistanceDriven(f) => Some(driven(entry, f)),
        _ => None,
    }
}

fn spent(entry: &Entry, f: &MoneySpent) -> Booked {
    let each = f.n.zip(f.each).map(|(n, each)| How::Each { n: n.0, each: each.0 });
    let share = f.used.zip(f.of).zip(f.pack).map(|((used, of), pack)| How::Share { used: used.0, of: of.0, pack });
    Booked {
        entry: entry.id,
        job: f.job,
        haul: f.haul,
        sum: f.sum,
        kind: Some(f.kind.clone()),
        what: f.what.clone(),
        at: entry.when(f.when),
        how: each.or(share).unwrap_or(How::Whole),
        can: f.can,
        back: f.back,
        delivery: None,
    }
}

fn driven(entry: &Entry, f: &DistanceDriven) -> Booked {
    Booked {
        entry: entry.id,
        job: f.job,
        haul: f.haul,
        sum: f.sum,
        kind: Key::read(DISTANCE),
        what: f.what.clone(),
        at: entry.when(f.when),
        how: How::Driven { distance: f.distance, rate: f.rate.0, per: f.per },
        can: None,
        back: None,
        delivery: f.delivery,
    }
}
