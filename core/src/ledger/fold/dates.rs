//! When the maker works, and quotes, from their entries.

use crate::bench::dates::Workdays;
use crate::ledger::Entry;
use crate::ledger::kind::dates::{DayOffSet, QuoteGiven, WorkdaysSet};
use crate::quantity::{Clock, Count, Currency, Day, Decimal, Id, Money, Set, Span, Wall};

/// When the maker works, as said; what was never said is none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HoursFacts {
    pub bench: Option<Span>,
    pub closing: Option<Clock>,
    /// Monday to Sunday.
    pub days: [Option<bool>; 7],
    pub off: Set<Day>,
}

/// A quote as it was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quote {
    pub entry: Id,
    pub at: Wall,
    pub low: Money,
    pub high: Money,
    pub n: Option<Count>,
    pub ready: Option<Day>,
    pub until: Option<Day>,
    /// Ready by then, if it is agreed on its last day; none where that was not said.
    pub ready_last: Option<Day>,
    pub buyer: Option<Id>,
    pub likely: Option<Span>,
    pub safe: Option<Span>,
}

impl HoursFacts {
    pub(in crate::ledger) fn set(&mut self, f: &WorkdaysSet) {
        self.bench = f.bench.or(self.bench);
        self.closing = f.closing.or(self.closing);
        let said = [f.mon, f.tue, f.wed, f.thu, f.fri, f.sat, f.sun];
        self.days.iter_mut().zip(said).for_each(|(day, said)| *day = said.or(*day));
    }

    pub(super) fn set_off(&mut self, f: &DayOffSet) {
        if f.off {
            self.off.insert(f.day);
        } else {
            self.off.remove(&f.day);
        }
    }

    /// Whether anything was said of hours or days of the week.
    pub fn is_said(&self) -> bool {
        self.bench.is_some() || self.closing.is_some() || self.days.iter().any(Option::is_some)
    }

    /// As said, else as is usual; two phones may have said hours that do not fit before closing: then as many as do.
    pub fn workdays(&self) -> Workdays {
        let said = self.as_said();
        let before = Span::minutes(i64::from(said.closing.as_minutes()));
        Workdays { bench: said.bench.min(before), ..said }
    }

    /// As said, whether it fits or not.
    pub fn as_said(&self) -> Workdays {
        let usual = Workdays::default();
        let mut days = usual.days;
        days.iter_mut().zip(self.days).for_each(|(day, said)| *day = said.unwrap_or(*day));
        Workdays { bench: self.bench.unwrap_or(usual.bench), closing: self.closing.unwrap_or(usual.closing), days, off: self.off.clone() }
    }
}

impl Quote {
    /// One whose prices do not lie in their order, are no prices, or are of another currency than the job's says nothing.
    pub(super) fn of(entry: &Entry, f: &QuoteGiven, currency: Currency) -> Option<Quote> {
        let own = f.low.currency() == currency && f.high.currency() == currency;
        let sound = own && Decimal::ZERO < f.low.amount() && f.low.amount() <= f.high.amount();
        let QuoteGiven { low, high, n, ready, until, ready_last, buyer, likely, safe, .. } = *f;
        sound.then_some(Quote { entry: entry.id, at: entry.wall, low, high, n, ready, until, ready_last, buyer, likely, safe })
    }
}
