//! Which money the fees of payments are of, and what of them is lost with what went back.

use super::paid_for::more;
use super::selling::Selling;
use crate::quantity::{Currency, Decimal, Id, Money, Sorted};
use crate::refusal::{Answer, Refusal};

/// What money is for: a sale, or what is ahead of the first agreement of a chain of changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Purse {
    Ahead(Option<Id>),
    Sale(Id),
}

impl Purse {
    /// What money was for: a sale, or what was ahead of it.
    pub fn of(selling: &Selling, sale: Option<Id>, agreed: Option<Id>) -> Purse {
        sale.map_or_else(|| Purse::Ahead(selling.first(agreed)), Purse::Sale)
    }
}

/// Fees, by what their money is for; each goes where its money goes.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fees {
    of: Sorted<Purse, Money>,
    /// Of what went back.
    pub lost: Money,
}

impl Fees {
    pub fn none(currency: Currency) -> Fees {
        Fees { of: Sorted::new(), lost: Money::zero(currency) }
    }

    pub fn came(&mut self, purse: Purse, fee: Money) -> Answer<()> {
        more(&mut self.of, purse, fee)
    }

    pub fn of(&self, purse: Purse) -> Money {
        self.of.get(&purse).copied().unwrap_or(Money::zero(self.lost.currency()))
    }

    /// So much of all the money there goes from one to the other.
    pub fn go(&mut self, (from, to): (Purse, Purse), (sum, of): (Money, Money)) -> Answer<()> {
        let fee = self.take(from, (sum, of))?;
        more(&mut self.of, to, fee)
    }

    /// So much of all the money there goes back.
    pub fn lose(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<()> {
        self.lost = self.lost.plus(self.take(purse, (sum, of))?)?;
        Ok(())
    }

    /// The fee of a part of the money there, half up.
    pub fn part(&self, purse: Purse, (sum, of): (Money, Money)) -> Answer<Money> {
        let whole = self.of(purse);
        match () {
            () if sum.amount() <= Decimal::ZERO => Ok(Money::zero(whole.currency())),
            () if of.amount() <= sum.amount() => Ok(whole),
            () => {
                let part = whole.amount().checked_mul(sum.amount()).and_then(|all| all.checked_div(of.amount()));
                Money::book(part.ok_or(Refusal::OutOfRange)?, whole.currency())
            }
        }
    }

    /// The same taken away: nothing of it is lost between the parts.
    fn take(&mut self, purse: Purse, of: (Money, Money)) -> Answer<Money> {
        let fee = self.part(purse, of)?;
        self.of.insert(purse, self.of(purse).minus(fee)?);
        Ok(fee)
    }
}
