//! What payments are for, gone through as it was written: each sale has its own, then what came ahead for its agreement; the rest lies ahead of what is
//! still to come. What came in later changes nothing of what went back before.

use super::brought;
use super::coins::Coins;
use super::fees::{Fees, Purse};
use super::selling::{Ended, HandedBack, Over, Payment, Reversed, Sale, Selling};
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

/// What was written of money, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// The payment at this place came in.
    Came(usize),
    /// The money at this place went back by hand.
    HandedBack(usize),
    Sold(Id),
    /// By this entry pieces of a sale came back, or some of its price was given off.
    Back {
        entry: Id,
        sale: Id,
    },
    /// By this entry an agreement came to nothing.
    Cancelled {
        entry: Id,
        agreed: Id,
    },
}

/// Payments, set against what they are for.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PaidFor {
    currency: Currency,
    there: Sorted<Purse, Money>,
    /// The price of each sale as it stands; none once it was taken back.
    asks: Sorted<Id, Option<Money>>,
    /// What had come in for a sale that was taken back, when it was.
    came_for: Sorted<Id, Money>,
    /// Of what was reversed or came to nothing.
    pub kept: Money,
    /// What went back with it, and when.
    pub back: Vec<(Wall, Money)>,
    fees: Fees,
    coins: Coins,
}

impl PaidFor {
    fn of(selling: &Selling, currency: Currency) -> Answer<PaidFor> {
        let none = Money::zero(currency);
        let (there, asks, came_for) = (Sorted::new(), Sorted::new(), Sorted::new());
        let (fees, coins) = (Fees::none(currency), Coins::default());
        let mut paid = PaidFor { currency, there, asks, came_for, kept: none, back: vec![], fees, coins };
        for step in &selling.steps {
            paid.goes(selling, *step)?;
        }
        paid.owed_again(selling)?;
        Ok(paid)
    }

    fn goes(&mut self, selling: &Selling, step: Step) -> Answer<()> {
        match step {
            Step::Came(nth) => selling.payments.get(nth).map_or(Ok(()), |payment| self.came(selling, payment)),
            Step::HandedBack(nth) => selling.handed_back.get(nth).map_or(Ok(()), |back| self.handed_back(selling, back)),
            Step::Sold(id) => selling.sale(id).map_or(Ok(()), |sale| {
                self.asks.insert(id, Some(sale.whole.sum));
                self.beyond_price(selling, sale)?;
                self.fill(selling, selling.first(sale.agreed))
            }),
            Step::Back { entry, sale } => selling.sale(sale).map_or(Ok(()), |sale| self.came_back(selling, sale, entry)),
            Step::Cancelled { entry, agreed } => self.cancelled(selling, (entry, agreed)),
        }
    }

    pub fn ahead(&self, first: Option<Id>) -> Money {
        self.there(Purse::Ahead(first))
    }

    /// What a sale was paid that stands.
    pub fn of_sale(&self, sale: Id) -> Money {
        self.there(Purse::Sale(sale))
    }

    /// What had come in for a sale that was taken back, when it was.
    pub fn came_for(&self, sale: Id) -> Money {
        self.came_for.get(&sale).copied().unwrap_or(Money::zero(self.currency))
    }

    /// What came in beyond what is owed for it: ahead of an agreement, for sales of no agreement, or for a sale that is no more.
    pub fn over(&self, selling: &Selling) -> Answer<Vec<Over>> {
        let mut over = vec![];
        for (purse, there) in self.there.iter() {
            match purse {
                Purse::Ahead(first) => {
                    // Where two phones changed one order, what is to come is of both changes.
                    let open = selling.open().filter(|agreement| selling.first(Some(agreement.id)) == *first).listed();
                    let to_come = open.iter().map(|agreement| beyond(agreement.sum, agreement.sold_for)).collect::<Answer<Vec<Money>>>()?;
                    let sum = beyond(*there, Money::sum(self.currency, to_come)?)?;
                    over.push(Over { agreed: open.first().map(|agreement| agreement.id).or(*first), sale: None, sum });
                }
                Purse::Over(sale) => over.push(Over { agreed: None, sale: Some(*sale), sum: *there }),
                Purse::Sale(_) => {}
            }
        }
        over.retain(|over| Decimal::ZERO < over.sum.amount());
        Ok(over)
    }

    fn there(&self, purse: Purse) -> Money {
        self.there.get(&purse).copied().unwrap_or(Money::zero(self.currency))
    }

    fn put(&mut self, purse: Purse, sum: Money) -> Answer<()> {
        more(&mut self.there, purse, sum)
    }

    fn asks(&self, sale: Id) -> Option<Money> {
        self.asks.get(&sale).copied().flatten()
    }

    /// Where what is over of a sale lies: ahead of its order, or by itself.
    fn rest_of(&self, selling: &Selling, sale: &Sale) -> Purse {
        if sale.agreed.is_some() { Purse::Ahead(selling.first(sale.agreed)) } else { Purse::Over(sale.id) }
    }

    fn came(&mut self, selling: &Selling, payment: &Payment) -> Answer<()> {
        let sale = payment.sale.and_then(|id| selling.sale(id));
        let purse = match (payment.sale, sale) {
            (None, _) => Purse::Ahead(selling.first(payment.agreed)),
            (Some(id), None) => Purse::Over(id),
            // It was taken back by then.
            (Some(id), Some(sale)) if self.asks.get(&id) == Some(&None) => self.rest_of(selling, sale),
            (Some(id), Some(_)) => Purse::Sale(id),
        };
        self.put(purse, payment.pays()?)?;
        self.fees.came(purse, (payment.pays()?, payment.fee))?;
        self.coins.came(purse, payment)?;
        if let Some(sale) = sale {
            self.beyond_price(selling, sale)?;
        }
        self.fill(selling, selling.first(sale.map_or(payment.agreed, |sale| sale.agreed)))
    }

    /// More than its price was paid for others of the same order, or of none: it lies ahead of them, with its fee.
    fn beyond_price(&mut self, selling: &Selling, sale: &Sale) -> Answer<()> {
        let Some(asks) = self.asks(sale.id) else { return Ok(()) };
        let from = Purse::Sale(sale.id);
        let over = beyond(self.there(from), asks)?;
        self.go((from, Purse::Ahead(selling.first(sale.agreed))), over)
    }

    /// What lies ahead pays what the sales of the same lack, the first of them first.
    fn fill(&mut self, selling: &Selling, first: Option<Id>) -> Answer<()> {
        let none = Money::zero(self.currency);
        for sale in selling.sales.iter().filter(|sale| selling.first(sale.agreed) == first) {
            let Some(asks) = self.asks(sale.id) else { continue };
            let (from, to) = (Purse::Ahead(first), Purse::Sale(sale.id));
            let ahead = self.there(from);
            if ahead.amount() <= Decimal::ZERO {
                break;
            }
            let used = least(ahead, beyond(asks, self.there(to))?);
            self.fees.go_first((from, to), (used, ahead))?;
            self.coins.go_first((from, to), used)?;
            self.put(from, none.minus(used)?)?;
            self.put(to, used)?;
        }
        Ok(())
    }

    /// So much of the money there goes from one to the other, each payment by its part.
    fn go(&mut self, (from, to): (Purse, Purse), sum: Money) -> Answer<()> {
        self.fees.go((from, to), (sum, self.there(from)))?;
        self.coins.go((from, to), (sum, self.there(from)))?;
        self.put(from, Money::zero(self.currency).minus(sum)?)?;
        self.put(to, sum)
    }

    /// What was over and went back by hand: the fee of its part is lost.
    fn handed_back(&mut self, selling: &Selling, back: &HandedBack) -> Answer<()> {
        let of = |id| selling.sale(id).map_or(Purse::Over(id), |sale| self.rest_of(selling, sale));
        let purse = back.sale.map_or_else(|| Purse::Ahead(selling.first(back.agreed)), of);
        let sum = back.settles()?;
        self.fees.lose(purse, (sum, self.there(purse)))?;
        self.coins.hand_back(purse, (sum, self.there(purse)))?;
        self.put(purse, Money::zero(self.currency).minus(sum)?)
    }

    /// What came in for pieces that came back goes with them, no more of it than was written down; what is beyond that stays.
    fn came_back(&mut self, selling: &Selling, sale: &Sale, entry: Id) -> Answer<()> {
        let Some(Reversed { act, at, kept, back, .. }) = selling.went_with(entry) else { return Ok(()) };
        let Some(asks) = self.asks(sale.id) else { return self.back_again(selling, sale, (at, back)) };
        let some = sale.back.iter().find(|some| some.entry == entry);
        let rest = some.map(|some| beyond(asks, some.of.sum)).transpose()?;
        let came = match back {
            Some(back) => {
                self.gather(selling, Purse::Sale(sale.id), back)?;
                least(self.of_sale(sale.id), back.plus(kept)?)
            }
            None => {
                some.zip(rest).map_or(Ok(self.of_sale(sale.id)), |(some, rest)| brought::came(self.of_sale(sale.id), some.of.sum, rest))?
            }
        };
        self.asks.insert(sale.id, rest);
        if rest.is_none() {
            self.came_for.insert(sale.id, came);
        }
        self.went_back((selling, sale), (act, at), (came, kept_of(came, (kept, back))?))?;
        let over = beyond(self.of_sale(sale.id), rest.unwrap_or(Money::zero(self.currency)))?;
        self.go((Purse::Sale(sale.id), self.rest_of(selling, sale)), over)?;
        self.fill(selling, selling.first(sale.agreed))
    }

    /// What another phone handed back of a sale that had come back by then.
    fn back_again(&mut self, selling: &Selling, sale: &Sale, (at, back): (Wall, Option<Money>)) -> Answer<()> {
        let (Some(back), purse) = (back, self.rest_of(selling, sale)) else { return Ok(()) };
        let came = least(back, beyond(self.there(purse), Money::zero(self.currency))?);
        self.end((purse, self.there(purse)), at, (came, Money::zero(self.currency)))?;
        self.put(purse, Money::zero(self.currency).minus(came)?)
    }

    /// So much went back of one purse. Where a payment was struck after that, and it holds less, it is of the same order: what lies ahead, then what its
    /// other sales were paid, the last of them first.
    fn gather(&mut self, selling: &Selling, to: Purse, went: Money) -> Answer<()> {
        let first = match to {
            Purse::Sale(id) => selling.first(selling.sale(id).and_then(|sale| sale.agreed)),
            Purse::Ahead(first) => first,
            Purse::Over(_) => None,
        };
        if first.is_none() {
            return Ok(());
        }
        let of_it = |sale: &&Sale| selling.first(sale.agreed) == first;
        let sales = selling.sales.iter().rev().filter(of_it).filter(|sale| self.asks(sale.id).is_some()).map(|sale| Purse::Sale(sale.id));
        for from in std::iter::once(Purse::Ahead(first)).chain(sales.listed()).filter(|from| *from != to) {
            let none = Money::zero(self.currency);
            let sum = least(beyond(went, self.there(to))?, beyond(self.there(from), none)?);
            self.go((from, to), sum)?;
        }
        Ok(())
    }

    fn cancelled(&mut self, selling: &Selling, (entry, agreed): (Id, Id)) -> Answer<()> {
        let Some(Ended { at, kept, back }) = selling.ended(agreed, entry) else { return Ok(()) };
        let purse = Purse::Ahead(selling.first(Some(agreed)));
        if let Some(back) = back {
            self.gather(selling, purse, back)?;
        }
        let ahead = beyond(self.there(purse), Money::zero(self.currency))?;
        let came = back.map_or(Ok(ahead), |back| Ok(least(ahead, back.plus(kept)?)))?;
        self.end((purse, ahead), at, (came, kept_of(came, (kept, back))?))?;
        self.put(purse, Money::zero(self.currency).minus(came)?)
    }

    fn went_back(&mut self, (selling, sale): (&Selling, &Sale), (act, at): (Id, Wall), (came, kept): (Money, Money)) -> Answer<()> {
        let (purse, of) = (Purse::Sale(sale.id), self.of_sale(sale.id));
        let kept = self.end((purse, of), at, (came, kept))?;
        self.put(purse, Money::zero(self.currency).minus(came)?)?;
        // What is kept of an order that is made good was paid ahead for it, whatever became of the order after that.
        if let Some(first) = selling.made_good_for(sale, act) {
            self.kept = self.kept.minus(kept)?;
            let (way, rest) = ((purse, Purse::Ahead(Some(first))), of.minus(came.minus(kept)?)?);
            self.fees.go(way, (kept, rest))?;
            self.coins.go(way, (kept, rest))?;
            self.put(Purse::Ahead(Some(first)), kept)?;
            self.fill(selling, Some(first))?;
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
        self.coins.go_back(purse, (back, of), at)?;
        Ok(kept)
    }

    /// What went back by hand and was not over, as the payment was struck it was of, is owed again by the last that was sold.
    fn owed_again(&mut self, selling: &Selling) -> Answer<()> {
        for sale in selling.sales.iter().rev().filter(|sale| self.asks(sale.id).is_some()).listed() {
            for purse in [Purse::Ahead(selling.first(sale.agreed)), Purse::Over(sale.id)] {
                let lacks = beyond(Money::zero(self.currency), self.there(purse))?;
                let sum = least(lacks, self.of_sale(sale.id));
                self.go((Purse::Sale(sale.id), purse), sum)?;
            }
        }
        Ok(())
    }

    /// Fees of what went back: no sale brings them in.
    pub fn fees_lost(&self) -> Money {
        self.fees.lost
    }

    /// When the last of all that a payment paid went back; none while some of it is there.
    pub fn gone(&self, payment: Id) -> Option<Wall> {
        self.coins.gone(payment)
    }

    /// What came in for a sale and is still there, beyond what it pays, because it was paid in coins; below nothing where it was less.
    pub fn coins_of_sale(&self, sale: Id) -> Answer<Money> {
        self.coins.there(self.currency, Purse::Sale(sale))
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

/// What is kept of what came: where what went back is written down, no more than is left after it.
fn kept_of(came: Money, (kept, back): (Money, Option<Money>)) -> Answer<Money> {
    back.map_or(Ok(kept), |back| Ok(least(kept, beyond(came, back)?)))
}

pub(super) fn more<K: Ord>(sums: &mut Sorted<K, Money>, key: K, sum: Money) -> Answer<()> {
    let there = sums.entry(key).or_insert(Money::zero(sum.currency()));
    *there = there.plus(sum)?;
    Ok(())
}

/// The one that is less.
pub(super) fn least(one: Money, other: Money) -> Money {
    if other.amount() < one.amount() { other } else { one }
}

/// How much more one is than another; nothing where it is less.
pub(super) fn beyond(one: Money, other: Money) -> Answer<Money> {
    if one.amount() < other.amount() { Ok(Money::zero(one.currency())) } else { one.minus(other) }
}
