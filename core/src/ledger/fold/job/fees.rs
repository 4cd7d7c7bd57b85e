//! Which money the fees of payments are of, and what of them is lost with what went back.

use super::paid_for::more;
use crate::quantity::{Currency, Decimal, Id, Money, Sorted};
use crate::refusal::{Answer, Refusal};

/// What money is for: a sale, or what is ahead of the first agreement of a chain of changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Purse {
    Ahead(Option<Id>),
    Sale(Id),
    /// What came in for a sale of no agreement that came back, or is no more, beyond what went back.
    Over(Id),
}

/// Fees, by what their money is for; each goes where its money goes.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fees {
    of: Sorted<Purse, Money>,
    /// What the money there came in as, in its order: what it was paid with tells what fee it has.
    lots: Sorted<Purse, Vec<Lot>>,
    /// Of what went back.
    pub lost: Money,
}

/// Money that came in at once, as much of it as is still there, with its fee.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Lot {
    sum: Decimal,
    fee: Decimal,
}

impl Fees {
    pub fn none(currency: Currency) -> Fees {
        Fees { of: Sorted::new(), lots: Sorted::new(), lost: Money::zero(currency) }
    }

    pub fn came(&mut self, purse: Purse, (sum, fee): (Money, Money)) -> Answer<()> {
        self.lots.entry(purse).or_default().push(Lot { sum: sum.amount(), fee: fee.amount() });
        more(&mut self.of, purse, fee)
    }

    pub fn of(&self, purse: Purse) -> Money {
        self.of.get(&purse).copied().unwrap_or(Money::zero(self.lost.currency()))
    }

    /// So much of all the money there goes from one to the other, each payment by its part.
    pub fn go(&mut self, (from, to): (Purse, Purse), (sum, of): (Money, Money)) -> Answer<()> {
        if sum.is_zero() {
            return Ok(());
        }
        let fee = self.take(from, (sum, of))?;
        self.came(to, (sum, fee))
    }

    /// So much goes from one to the other, what came in first before what came later: a sale uses what lay there when it was made.
    pub fn go_first(&mut self, (from, to): (Purse, Purse), (sum, of): (Money, Money)) -> Answer<()> {
        if sum.is_zero() {
            return Ok(());
        }
        let (mut left, mut fee) = (sum.amount(), Decimal::ZERO);
        for lot in self.lots.entry(from).or_default() {
            let used = left.min(lot.sum).max(Decimal::ZERO);
            let part = of_part(lot.fee, (used, lot.sum))?;
            (left, fee) = (minus(left, used)?, fee.checked_add(part).ok_or(Refusal::OutOfRange)?);
            *lot = Lot { sum: minus(lot.sum, used)?, fee: minus(lot.fee, part)? };
        }
        let whole = self.of(from);
        let fee = if of.amount() <= sum.amount() { whole } else { Money::book(fee, whole.currency())? };
        self.of.insert(from, whole.minus(fee)?);
        self.came(to, (sum, fee))
    }

    /// So much of all the money there goes back.
    pub fn lose(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<()> {
        if sum.is_zero() {
            return Ok(());
        }
        self.lost = self.lost.plus(self.take(purse, (sum, of))?)?;
        Ok(())
    }

    /// The fee of a part of the money there, half up.
    pub fn part(&self, purse: Purse, (sum, of): (Money, Money)) -> Answer<Money> {
        let whole = self.of(purse);
        match () {
            () if sum.amount() <= Decimal::ZERO => Ok(Money::zero(whole.currency())),
            () if of.amount() <= sum.amount() => Ok(whole),
            () => Money::book(of_part(whole.amount(), (sum.amount(), of.amount()))?, whole.currency()),
        }
    }

    /// The same taken away: nothing of it is lost between the parts.
    fn take(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<Money> {
        let fee = self.part(purse, (sum, of))?;
        self.of.insert(purse, self.of(purse).minus(fee)?);
        let (taken, all) = (sum.amount().max(Decimal::ZERO).min(of.amount()), of.amount());
        for lot in self.lots.entry(purse).or_default() {
            let [of_sum, of_fee] = [lot.sum, lot.fee].map(|it| of_part(it, (taken, all)));
            *lot = Lot { sum: minus(lot.sum, of_sum?)?, fee: minus(lot.fee, of_fee?)? };
        }
        Ok(fee)
    }
}

fn minus(one: Decimal, other: Decimal) -> Answer<Decimal> {
    one.checked_sub(other).ok_or(Refusal::OutOfRange)
}

/// What a part of some money has of what all of it has; nothing of none.
fn of_part(whole: Decimal, (sum, of): (Decimal, Decimal)) -> Answer<Decimal> {
    if of <= Decimal::ZERO {
        return Ok(Decimal::ZERO);
    }
    whole.checked_mul(sum).and_then(|all| all.checked_div(of)).ok_or(Refusal::OutOfRange)
}
