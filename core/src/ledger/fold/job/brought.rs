//! Pieces of a sale that came back: their part of its price and of its tax line; the rest stays sold.

use super::paid_for::{PaidFor, beyond};
use super::selling::{Reversed, Sale, Selling, act_of};
use crate::ledger::Entry;
use crate::ledger::kind::sale::PiecesBroughtBack;
use crate::quantity::{Count, Currency, Decimal, Id, Money, Wall};
use crate::refusal::{Answer, Refusal};

/// What a sale is for: pieces, all that is handed over for them, and the tax in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lines {
    pub n: Count,
    pub sum: Money,
    pub tax: Money,
}

/// Some pieces of a sale that came back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BroughtBack {
    pub entry: Id,
    pub act: Id,
    pub at: Wall,
    pub sale: Id,
    pub of: Lines,
    pub kept: Money,
}

impl BroughtBack {
    /// None in another currency than the job's.
    pub(super) fn of(entry: &Entry, f: &PiecesBroughtBack, currency: Currency) -> Option<BroughtBack> {
        let ours = |sum: &Money| sum.currency() == currency;
        let of = Lines { n: f.n, sum: f.sum, tax: f.tax };
        let kept = f.kept.filter(ours).unwrap_or(Money::zero(currency));
        let back = BroughtBack { entry: entry.id, act: act_of(entry), at: entry.when(f.when), sale: f.sale, of, kept };
        (ours(&f.sum) && ours(&f.tax)).then_some(back)
    }
}

impl Sale {
    /// The part of `n` of the pieces that stand: by piece, half up. What is left of the rest loses no cent by it.
    ///
    /// # Errors
    /// [`Refusal::NothingToShareBy`], [`Refusal::MoneyOutOfRange`].
    pub fn part(&self, n: Count) -> Answer<Lines> {
        Ok(Lines { n, sum: part(self.sum, n, self.n)?, tax: part(self.tax, n, self.n)? })
    }

    /// Takes off what came back of it. All that was left of it is a sale that was taken back.
    pub(super) fn brought_back(&mut self, back: &BroughtBack) {
        let (sum, tax) = (self.sum.minus(back.of.sum), self.tax.minus(back.of.tax));
        match (sum, tax) {
            (Ok(sum), Ok(tax)) if back.of.n < self.n && Decimal::ZERO <= sum.amount() => {
                (self.n, self.sum, self.tax) = (self.n.saturating_sub(back.of.n), sum, tax);
                self.back.push(*back);
            }
            _ => self.reversed = self.reversed.or(Some(Reversed { entry: back.entry, act: back.act, at: back.at, kept: back.kept })),
        }
    }
}

impl Selling {
    /// What came in for `n` of the pieces of a sale that stand, beyond what the rest of them costs: it goes back with them.
    ///
    /// # Errors
    /// [`Refusal::NotThere`], [`Refusal::NothingToShareBy`], [`Refusal::MoneyOutOfRange`].
    pub fn came_for(&self, currency: Currency, (sale, n): (Id, Count)) -> Answer<Money> {
        let paid = self.paid(currency, sale)?;
        let sale = self.sale(sale).ok_or(Refusal::NotThere)?;
        if sale.n <= n {
            return Ok(paid);
        }
        let part = sale.part(n)?.sum;
        came(paid, part, sale.sum.minus(part)?)
    }

    /// The fee of what came in for them, with what came in ahead: it stays paid, and is lost where nothing of it is kept.
    ///
    /// # Errors
    /// As [`Selling::came_for`].
    pub fn fee_for(&self, currency: Currency, (sale, n): (Id, Count)) -> Answer<Money> {
        PaidFor::of(self, currency)?.fee_of(sale, self.came_for(currency, (sale, n))?)
    }
}

/// What was paid beyond what is left to pay for, no more than the part that went.
pub(super) fn came(paid: Money, part: Money, rest: Money) -> Answer<Money> {
    let over = beyond(paid, rest)?;
    Ok(if part.amount() < over.amount() { part } else { over })
}

/// So many of the pieces carry this of a sum.
///
/// # Errors
/// [`Refusal::NothingToShareBy`], [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn part(whole: Money, n: Count, of: Count) -> Answer<Money> {
    Money::book(exact_part(whole.amount(), n, of)?, whole.currency())
}

/// The same before it is booked.
///
/// # Errors
/// [`Refusal::NothingToShareBy`], [`Refusal::OutOfRange`].
pub fn exact_part(whole: Decimal, n: Count, of: Count) -> Answer<Decimal> {
    let all = whole.checked_mul(Decimal::from(n)).ok_or(Refusal::OutOfRange)?;
    all.checked_div(Decimal::from(of)).ok_or(Refusal::NothingToShareBy)
}
