//! What payments are for: each sale has its own, then what came ahead for its agreement; the rest lies ahead of what is still to come.

use super::brought::came;
use super::fees::{Fees, Purse};
use super::selling::{AgreementState, HandedBack, Over, Sale, Selling};
use crate::quantity::{Currency, Decimal, Id, Listed, Money, Sorted, Wall};
use crate::refusal::Answer;
use std::cell::OnceCell;

/// What payments are for, found out when it is first asked. It follows from all that was sold and paid, so it makes no two of these differ.
#[derive(Clone, Debug, Default)]
pub(super) struct Found(OnceCell<Answer<PaidFor>>);

impl PartialEq for Found {
    fn eq(&self, _: &Found) -> bool {
        true
    }
}

impl Selling {
    /// What payments in the currency of the job are for.
    pub(super) fn paid_for(&self, currency: Currency) -> Answer<&PaidFor> {
        let found = self.found.0.get_or_init(|| PaidFor::of(self, currency));
        found.as_ref().map_err(Clone::clone)
    }
}

/// Payments, set against what they are for.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PaidFor {
    currency: Currency,
    /// Ahead, by the first agreement of a chain of changes. Sales of no agreement stand together.
    ahead: Sorted<Option<Id>, Money>,
    /// What each sale was paid, with what it used of a deposit.
    of_sale: Sorted<Id, Money>,
    /// Of what was reversed or came to nothing.
    pub kept: Money,
    /// What went back with it, and when.
    pub back: Vec<(Wall, Money)>,
    fees: Fees,
}

impl PaidFor {
    fn of(selling: &Selling, currency: Currency) -> Answer<PaidFor> {
        let none = Money::zero(currency);
        let mut paid =
            PaidFor { currency, ahead: Sorted::new(), of_sale: Sorted::new(), kept: none, back: vec![], fees: Fees::none(currency) };
        for payment in &selling.payments {
            let purse = Purse::of(selling, payment.sale, payment.agreed);
            paid.put(purse, payment.pays()?)?;
            paid.fees.came(purse, (payment.pays()?, payment.fee))?;
        }
        paid.handed_back(selling, |back| back.sale.is_some())?;
        paid.beyond_price(selling)?;
        paid.handed_back(selling, |back| back.sale.is_none())?;
        for sale in &selling.sales {
            let first = selling.first(sale.agreed);
            let used = least(paid.ahead(first), beyond(sale.whole.sum, paid.of_sale(sale.id))?);
            paid.fees.go_first((Purse::Ahead(first), Purse::Sale(sale.id)), (used, paid.ahead(first)))?;
            more(&mut paid.ahead, first, none.minus(used)?)?;
            more(&mut paid.of_sale, sale.id, used)?;
            let mut rest = sale.whole.sum;
            for back in &sale.back {
                rest = rest.minus(back.of.sum)?;
                let came = came(paid.of_sale(sale.id), back.of.sum, rest)?;
                paid.went_back((selling, sale), (back.act, back.at), (came, back.kept))?;
                more(&mut paid.of_sale, sale.id, none.minus(came)?)?;
            }
            if let Some(reversed) = sale.reversed {
                paid.went_back((selling, sale), (reversed.act, reversed.at), (paid.of_sale(sale.id), reversed.kept))?;
            }
        }
        for agreement in &selling.agreements {
            let AgreementState::Cancelled { kept, at, .. } = agreement.state else { continue };
            let first = selling.first(Some(agreement.id));
            paid.end((Purse::Ahead(first), paid.ahead(first)), at, (paid.ahead(first), kept))?;
            paid.ahead.remove(&first);
        }
        Ok(paid)
    }

    pub fn ahead(&self, first: Option<Id>) -> Money {
        self.ahead.get(&first).copied().unwrap_or(Money::zero(self.currency))
    }

    pub fn of_sale(&self, sale: Id) -> Money {
        self.of_sale.get(&sale).copied().unwrap_or(Money::zero(self.currency))
    }

    /// What came in beyond what is owed for it: ahead of an agreement, for sales of no agreement, or for a sale that does not stand.
    pub fn over(&self, selling: &Selling) -> Answer<Vec<Over>> {
        let mut over = vec![];
        for (first, ahead) in self.ahead.iter() {
            // Where two phones changed one order, what is to come is of both changes.
            let open = selling.open().filter(|agreement| selling.first(Some(agreement.id)) == *first).listed();
            let to_come = open.iter().map(|agreement| beyond(agreement.sum, agreement.sold_for)).collect::<Answer<Vec<Money>>>()?;
            let sum = beyond(*ahead, Money::sum(self.currency, to_come)?)?;
            over.push(Over { agreed: open.first().map(|agreement| agreement.id).or(*first), sale: None, sum });
        }
        let gone = self.of_sale.iter().filter(|(sale, _)| selling.sale(**sale).is_none());
        over.extend(gone.map(|(sale, sum)| Over { agreed: None, sale: Some(*sale), sum: *sum }));
        over.retain(|over| Decimal::ZERO < over.sum.amount());
        Ok(over)
    }

    fn put(&mut self, purse: Purse, sum: Money) -> Answer<()> {
        match purse {
            Purse::Sale(sale) => more(&mut self.of_sale, sale, sum),
            Purse::Ahead(first) => more(&mut self.ahead, first, sum),
        }
    }

    fn there(&self, purse: Purse) -> Money {
        match purse {
            Purse::Sale(sale) => self.of_sale(sale),
            Purse::Ahead(first) => self.ahead(first),
        }
    }

    /// What was over and went back by hand: the fee of its part is lost.
    fn handed_back(&mut self, selling: &Selling, is_of: impl Fn(&HandedBack) -> bool) -> Answer<()> {
        for back in selling.handed_back.iter().filter(|back| is_of(back)) {
            let (purse, sum) = (Purse::of(selling, back.sale, back.agreed), back.settles()?);
            self.fees.lose(purse, (sum, self.there(purse)))?;
            self.put(purse, Money::zero(self.currency).minus(sum)?)?;
        }
        Ok(())
    }

    /// More than its price was paid for others of the same agreement: it lies ahead of them, with its fee.
    fn beyond_price(&mut self, selling: &Selling) -> Answer<()> {
        for sale in selling.standing() {
            let (from, ahead) = (Purse::Sale(sale.id), Purse::Ahead(selling.first(sale.agreed)));
            let over = beyond(self.there(from), sale.whole.sum)?;
            self.fees.go((from, ahead), (over, self.there(from)))?;
            self.put(from, Money::zero(self.currency).minus(over)?)?;
            self.put(ahead, over)?;
        }
        Ok(())
    }

    /// What came in for pieces that came back went back, but for what was kept.
    fn went_back(&mut self, (selling, sale): (&Selling, &Sale), (act, at): (Id, Wall), (came, kept): (Money, Money)) -> Answer<()> {
        let (purse, of) = (Purse::Sale(sale.id), self.of_sale(sale.id));
        let kept = self.end((purse, of), at, (came, kept))?;
        // What is kept of an order that is made good was paid ahead for it, whatever became of the order after that.
        if let Some(first) = selling.made_good_for(sale, act) {
            self.kept = self.kept.minus(kept)?;
            self.fees.go((purse, Purse::Ahead(Some(first))), (kept, of.minus(came.minus(kept)?)?))?;
            more(&mut self.ahead, Some(first), kept)?;
        }
        Ok(())
    }

    /// No more is kept than came in; the rest was handed back. What is kept.
    fn end(&mut self, (purse, of): (Purse, Money), at: Wall, (came, kept): (Money, Money)) -> Answer<Money> {
        let kept = least(came, kept);
        let back = came.minus(kept)?;
        self.kept = self.kept.plus(kept)?;
        self.back.push((at, back));
        self.fees.lose(purse, (back, of))?;
        Ok(kept)
    }

    /// Fees of what went back: no sale brings them in.
    pub fn fees_lost(&self) -> Money {
        self.fees.lost
    }

    /// The fee of so much of what came in for a sale, however it came: lost if it goes back.
    pub fn fee_of(&self, sale: Id, came: Money) -> Answer<Money> {
        self.fees.part(Purse::Sale(sale), (came, self.of_sale(sale)))
    }

    /// Fees of what lies ahead.
    pub fn fees_ahead(&self, first: Option<Id>) -> Money {
        self.fees.of(Purse::Ahead(first))
    }
}

pub(super) fn more<K: Ord>(sums: &mut Sorted<K, Money>, key: K, sum: Money) -> Answer<()> {
    let there = sums.entry(key).or_insert(Money::zero(sum.currency()));
    *there = there.plus(sum)?;
    Ok(())
}

fn least(one: Money, other: Money) -> Money {
    if other.amount() < one.amount() { other } else { one }
}

/// How much more one is than another; nothing where it is less.
pub(super) fn beyond(one: Money, other: Money) -> Answer<Money> {
    if one.amount() < other.amount() { Ok(Money::zero(one.currency())) } else { one.minus(other) }
}
