//! Which money the fees of payments are of, and what they were rounded to in coins; and what of both goes with what went back.

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

/// Fees and coins, by what their money is for; each goes where its money goes.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fees {
    of: Sorted<Purse, Money>,
    /// What the money there came in as, in its order: what it was paid with tells what fee it has.
    lots: Sorted<Purse, Vec<Lot>>,
    /// Of what went back.
    pub lost: Money,
    coins_back: Decimal,
}

/// Money that came in at once, as much of it as is still there, with its fee; and by how much more was handed over in coins, below nothing where it was
/// less: that is of all of it, and goes with the last.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Lot {
    sum: Decimal,
    fee: Decimal,
    coin: Decimal,
}

impl Fees {
    pub fn none(currency: Currency) -> Fees {
        Fees { of: Sorted::new(), lots: Sorted::new(), lost: Money::zero(currency), coins_back: Decimal::ZERO }
    }

    pub fn came(&mut self, purse: Purse, (sum, fee, coin): (Money, Money, Option<Money>)) -> Answer<()> {
        self.add(purse, (sum, fee), coin.map_or(Decimal::ZERO, Money::amount))
    }

    fn add(&mut self, purse: Purse, (sum, fee): (Money, Money), coin: Decimal) -> Answer<()> {
        self.lots.entry(purse).or_default().push(Lot { sum: sum.amount(), fee: fee.amount(), coin });
        more(&mut self.of, purse, fee)
    }

    /// By so much more was handed over in coins of the money that is there.
    pub fn coins(&self, purse: Purse) -> Answer<Money> {
        let lots = self.lots.get(&purse).into_iter().flatten();
        Money::book(lots.map(|lot| lot.coin).try_fold(Decimal::ZERO, plus)?, self.lost.currency())
    }

    /// And of what went back.
    pub fn coins_back(&self) -> Answer<Money> {
        Money::book(self.coins_back, self.lost.currency())
    }

    pub fn of(&self, purse: Purse) -> Money {
        self.of.get(&purse).copied().unwrap_or(Money::zero(self.lost.currency()))
    }

    /// So much of all the money there goes from one to the other, each payment by its part.
    pub fn go(&mut self, (from, to): (Purse, Purse), (sum, of): (Money, Money)) -> Answer<()> {
        if sum.is_zero() {
            return Ok(());
        }
        let (fee, coin) = self.take(from, (sum, of))?;
        self.add(to, (sum, fee), coin)
    }

    /// So much goes from one to the other, what came in first before what came later: a sale uses what lay there when it was made.
    pub fn go_first(&mut self, (from, to): (Purse, Purse), (sum, of): (Money, Money)) -> Answer<()> {
        if sum.is_zero() {
            return Ok(());
        }
        let (is_all, mut coin) = (of.amount() <= sum.amount(), Decimal::ZERO);
        let (mut left, mut fee) = (sum.amount(), Decimal::ZERO);
        for lot in self.lots.entry(from).or_default() {
            let used = left.min(lot.sum).max(Decimal::ZERO);
            let part = of_part(lot.fee, (used, lot.sum))?;
            (left, fee) = (minus(left, used)?, plus(fee, part)?);
            if is_all || (used == lot.sum && !used.is_zero()) {
                coin = plus(coin, std::mem::take(&mut lot.coin))?;
            }
            *lot = Lot { sum: minus(lot.sum, used)?, fee: minus(lot.fee, part)?, ..*lot };
        }
        let whole = self.of(from);
        let fee = if is_all { whole } else { Money::book(fee, whole.currency())? };
        self.of.insert(from, whole.minus(fee)?);
        self.add(to, (sum, fee), coin)
    }

    /// So much of all the money there goes back.
    pub fn lose(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<()> {
        if sum.is_zero() {
            return Ok(());
        }
        let (fee, coin) = self.take(purse, (sum, of))?;
        (self.lost, self.coins_back) = (self.lost.plus(fee)?, plus(self.coins_back, coin)?);
        Ok(())
    }

    /// The same where it went back by hand, in coins of its own: what came in beyond it is still there, less what went so.
    pub fn hand_back(&mut self, purse: Purse, (sum, of): (Money, Money), coin: Option<Money>) -> Answer<()> {
        let (fee, came) = if sum.is_zero() { (Money::zero(sum.currency()), Decimal::ZERO) } else { self.take(purse, (sum, of))? };
        self.lost = self.lost.plus(fee)?;
        let (none, went) = (Money::zero(sum.currency()), coin.map_or(Decimal::ZERO, Money::amount));
        self.add(purse, (none, none), minus(came, went)?)
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

    /// The same taken away, with the coins where all goes: nothing of it is lost between the parts.
    fn take(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<(Money, Decimal)> {
        let fee = self.part(purse, (sum, of))?;
        let (is_all, mut coin) = (of.amount() <= sum.amount(), Decimal::ZERO);
        self.of.insert(purse, self.of(purse).minus(fee)?);
        let (taken, all) = (sum.amount().max(Decimal::ZERO).min(of.amount()), of.amount());
        for lot in self.lots.entry(purse).or_default() {
            let [of_sum, of_fee] = [lot.sum, lot.fee].map(|it| of_part(it, (taken, all)));
            *lot = Lot { sum: minus(lot.sum, of_sum?)?, fee: minus(lot.fee, of_fee?)?, ..*lot };
            if is_all {
                coin = plus(coin, std::mem::take(&mut lot.coin))?;
            }
        }
        Ok((fee, coin))
    }
}

fn minus(one: Decimal, other: Decimal) -> Answer<Decimal> {
    one.checked_sub(other).ok_or(Refusal::OutOfRange)
}

fn plus(one: Decimal, other: Decimal) -> Answer<Decimal> {
    one.checked_add(other).ok_or(Refusal::OutOfRange)
}

/// What a part of some money has of what all of it has; nothing of none.
fn of_part(whole: Decimal, (sum, of): (Decimal, Decimal)) -> Answer<Decimal> {
    if of <= Decimal::ZERO {
        return Ok(Decimal::ZERO);
    }
    whole.checked_mul(sum).and_then(|all| all.checked_div(of)).ok_or(Refusal::OutOfRange)
}
