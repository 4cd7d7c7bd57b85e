//! What payments in notes were rounded to: it goes back where all that one of them paid goes back, whatever that was for by then.

use super::fees::Purse;
use super::selling::Payment;
use crate::quantity::{Currency, Decimal, Id, Money, Sorted, Wall};
use crate::refusal::{Answer, Refusal};

/// Where the money of each payment is, and what of it went back.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Coins {
    parts: Sorted<Purse, Vec<Part>>,
    paid: Sorted<Id, Paid>,
}

/// So much of a payment.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Part {
    payment: Id,
    sum: Decimal,
}

/// What a payment paid, what its coins came to beyond that, and what of it went back; not what was handed back by hand, in coins of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Paid {
    sum: Money,
    coin: Money,
    gone: Decimal,
    /// When the last of it did.
    at: Option<Wall>,
}

impl Coins {
    pub fn came(&mut self, purse: Purse, payment: &Payment) -> Answer<()> {
        let sum = payment.pays()?;
        self.add(purse, [Part { payment: payment.id, sum: sum.amount() }]);
        let coin = payment.rounding.unwrap_or(Money::zero(sum.currency()));
        self.paid.insert(payment.id, Paid { sum, coin, gone: Decimal::ZERO, at: None });
        Ok(())
    }

    /// So much of all the money there goes from one to the other, each payment by its part.
    pub fn go(&mut self, (from, to): (Purse, Purse), (sum, of): (Money, Money)) -> Answer<()> {
        let went = self.take(from, (sum, of))?;
        self.add(to, went);
        Ok(())
    }

    /// So much goes from one to the other, what came in first before what came later.
    pub fn go_first(&mut self, (from, to): (Purse, Purse), sum: Money) -> Answer<()> {
        let (mut left, mut went) = (sum.amount(), vec![]);
        for part in self.parts.entry(from).or_default() {
            let used = left.min(part.sum).max(Decimal::ZERO);
            (left, part.sum) = (minus(left, used)?, minus(part.sum, used)?);
            went.push(Part { sum: used, ..*part });
        }
        self.add(to, went);
        Ok(())
    }

    /// So much of all the money there goes back, with its coins where it is the last of a payment.
    pub fn go_back(&mut self, purse: Purse, (sum, of): (Money, Money), at: Wall) -> Answer<()> {
        for part in self.take(purse, (sum, of))? {
            if let Some(paid) = self.paid.get_mut(&part.payment) {
                (paid.gone, paid.at) = (plus(paid.gone, part.sum)?, Some(at));
            }
        }
        Ok(())
    }

    /// So much of all the money there goes back by hand, in coins of its own.
    pub fn hand_back(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<()> {
        self.take(purse, (sum, of)).map(drop)
    }

    /// So much of it is there no more: each payment by its part.
    fn take(&mut self, purse: Purse, (sum, of): (Money, Money)) -> Answer<Vec<Part>> {
        let (taken, all) = (sum.amount().max(Decimal::ZERO).min(of.amount()), of.amount());
        let mut went = vec![];
        for part in self.parts.entry(purse).or_default() {
            let is_all = all <= taken;
            let share = part.sum.checked_mul(taken).and_then(|sum| if is_all { Some(part.sum) } else { sum.checked_div(all) });
            let used = share.ok_or(Refusal::OutOfRange)?;
            part.sum = minus(part.sum, used)?;
            went.push(Part { sum: used, ..*part });
        }
        Ok(went)
    }

    fn add(&mut self, purse: Purse, parts: impl IntoIterator<Item = Part>) {
        self.parts.entry(purse).or_default().extend(parts.into_iter().filter(|part| !part.sum.is_zero()));
    }

    /// When the last of all that a payment paid went back; none while some of it is there.
    pub fn gone(&self, payment: Id) -> Option<Wall> {
        self.paid.get(&payment).filter(|paid| is_whole(paid, paid.gone)).and_then(|paid| paid.at)
    }

    /// What the coins of payments came to beyond what they paid of which all is there, but for what went back.
    pub fn there(&self, currency: Currency, purse: Purse) -> Answer<Money> {
        let mut sums: Sorted<Id, Decimal> = Sorted::new();
        for part in self.parts.get(&purse).into_iter().flatten().filter(|part| !part.sum.is_zero()) {
            let sum = sums.entry(part.payment).or_insert(Decimal::ZERO);
            *sum = plus(*sum, part.sum)?;
        }
        let paid = sums.into_iter().filter_map(|(id, sum)| Some((self.paid.get(&id)?, sum)));
        let all = paid.filter(|(paid, sum)| plus(paid.gone, *sum).is_ok_and(|sum| is_whole(paid, sum)));
        Money::sum(currency, all.map(|(paid, _)| paid.coin))
    }
}

/// Parts of a cent are of sharing out.
fn is_whole(paid: &Paid, sum: Decimal) -> bool {
    Money::book(sum, paid.sum.currency()) == Ok(paid.sum)
}

fn plus(one: Decimal, other: Decimal) -> Answer<Decimal> {
    one.checked_add(other).ok_or(Refusal::OutOfRange)
}

fn minus(one: Decimal, other: Decimal) -> Answer<Decimal> {
    one.checked_sub(other).ok_or(Refusal::OutOfRange)
}
