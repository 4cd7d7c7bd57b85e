//! Cans and packs that were opened: what jobs used of each, what is left, and what of its price no job carries.

use super::booked::{Booked, How};
use crate::ledger::Entry;
use crate::ledger::kind::money::{PackEmptied, PackOpened};
use crate::money::cost::{Pack, of_can, old_can};
use crate::quantity::{Count, Day, Decimal, Id, Key, Money, Wall};
use crate::refusal::{Answer, Refusal};

/// A can is worth nothing after so many months.
const LIFE: Count = 12;

/// One can or pack.
#[derive(Clone, Debug, PartialEq)]
pub struct Can {
    pub id: Id,
    pub what: String,
    /// The kind of spending its shares are.
    pub kind: Key,
    pub unit: Key,
    pub paid: Money,
    /// What it held when full.
    pub holds: Decimal,
    /// The day on its lid.
    pub opened: Wall,
    pub shares: Vec<CanShare>,
    emptied: Option<Wall>,
}

/// What was used of a can once, or went back into it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CanShare {
    pub used: Decimal,
    pub sum: Money,
    pub at: Wall,
    /// The line that says so,
    line: Id,
    /// and where it went back into the can, the line of which it did: `used` and `sum` are below nothing then.
    back: Option<Id>,
}

impl Can {
    /// A can that was just opened.
    pub(in crate::ledger) fn of(id: Id, f: &PackOpened, wall: Wall) -> Can {
        let opened = Wall::new(f.when.unwrap_or(wall.at), wall.offset);
        let (what, kind, unit) = (f.what.clone(), f.kind.clone(), f.unit.clone());
        Can { id, what, kind, unit, paid: f.sum, holds: f.of.0, opened, shares: vec![], emptied: None }
    }

    /// What is left in it, in its unit; nothing once it was said to be empty.
    pub fn left(&self) -> Decimal {
        if self.emptied.is_some() { Decimal::ZERO } else { self.unused() }
    }

    /// What nobody used of it, empty or not: of one spending no more goes back than was used.
    pub(in crate::ledger) fn unused(&self) -> Decimal {
        self.used().fold(self.holds, |left, used| left.saturating_sub(used.max(Decimal::ZERO))).max(Decimal::ZERO)
    }

    /// So much more was put back than was used, by two phones that each did: what jobs carry of it is so much too little.
    pub fn beyond(&self) -> Decimal {
        self.used().fold(Decimal::ZERO, |beyond, used| beyond.saturating_sub(used.min(Decimal::ZERO)))
    }

    /// What was used of it in each spending, less what went back of that.
    fn used(&self) -> impl Iterator<Item = Decimal> {
        let spent = self.shares.iter().filter(|share| share.back.is_none());
        spent.map(|share| share.used.saturating_sub(self.went_back(share.line)))
    }

    /// Shares that stand: what went back of a spending that was struck since is gone with it.
    fn stand(&self) -> impl Iterator<Item = &CanShare> {
        let is_there = |of| self.shares.iter().any(|share| share.line == of);
        self.shares.iter().filter(move |share| share.back.is_none_or(is_there))
    }

    /// So much went back into it of one spending.
    pub(in crate::ledger) fn went_back(&self, spending: Id) -> Decimal {
        self.shares.iter().filter(|share| share.back == Some(spending)).fold(Decimal::ZERO, |all, share| all.saturating_sub(share.used))
    }

    /// Whole months since it was opened.
    pub fn months(&self, on: Day) -> Count {
        let ((year, month, day), (from_year, from_month, from_day)) = (on.as_ymd(), self.opened.day().as_ymd());
        let months = i64::from(year).saturating_sub(i64::from(from_year)).saturating_mul(12);
        let months = months.saturating_add(i64::from(month)).saturating_sub(i64::from(from_month));
        let whole = if day < from_day { months.saturating_sub(1) } else { months };
        Count::try_from(whole.max(0)).unwrap_or(Count::MAX)
    }

    /// What of its price jobs carry.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn charged(&self) -> Answer<Money> {
        Money::sum(self.paid.currency(), self.stand().map(|share| share.sum))
    }

    /// What a job is charged for using so much of it on a day.
    ///
    /// # Errors
    /// [`Refusal::MoreThanPack`] for more than is left in it, and those of [`of_can`].
    pub fn charge(&self, used: Decimal, on: Day) -> Answer<Money> {
        if self.left() < used {
            return Err(Refusal::MoreThanPack { used, holds: self.left() });
        }
        of_can(&Pack { paid: self.paid, holds: self.holds, charged: self.charged()? }, used, self.months(on))
    }

    /// What is left in it is still worth so much on a day.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn worth(&self, on: Day) -> Answer<Money> {
        let fill = self.left().checked_div(self.holds).ok_or(Refusal::OutOfRange)?;
        old_can(self.paid, fill, self.months(on))
    }

    /// The day on which no job will be charged for it any more: it is used up, said to be empty, or twelve months open. None before.
    pub fn over(&self, today: Day) -> Option<Day> {
        let all = self.unused().is_zero();
        let used_up = self.stand().map(|share| share.at.day()).max().filter(|_| all);
        let (year, month, day) = self.opened.day().as_ymd();
        // Of a 29 February, the first of March.
        let aged = Day::ymd(year.saturating_add(1), month, day).or_else(|| Day::ymd(year.saturating_add(1), 3, 1));
        let aged = aged.filter(|aged| *aged <= today && LIFE <= self.months(today));
        [self.emptied.map(Wall::day), used_up, aged].into_iter().flatten().min()
    }

    /// What of its price no job carries; below nothing where two phones charged it at once.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn rest(&self) -> Answer<Money> {
        self.paid.minus(self.charged()?)
    }
}

/// Something of a can was used.
pub(super) fn shared(cans: &mut [Can], line: &Booked) {
    let How::Share { used, .. } = line.how else { return };
    let can = cans.iter_mut().find(|can| Some(can.id) == line.can && can.paid.currency() == line.sum.currency());
    can.into_iter().for_each(|can| can.shares.push(CanShare { used, sum: line.sum, at: line.at, line: line.entry, back: line.back }));
}

/// What was left of it is gone; the first time counts.
pub(super) fn emptied(cans: &mut [Can], entry: &Entry, f: &PackEmptied) {
    let at = entry.when(f.when);
    cans.iter_mut().filter(|can| can.id == f.can).for_each(|can| can.emptied = can.emptied.or(Some(at)));
}
