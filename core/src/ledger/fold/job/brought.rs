//! Pieces of a sale that came back: their part of its price and of its tax line; the rest stays sold.

use super::paid_for::{Step, beyond, least};
use super::selling::{Agreement, AgreementState, Ended, Over, Payment, Reversed, Sale, Selling, act_of};
use crate::ledger::fold::Till;
use crate::ledger::kind::sale::{Paid, PiecesBroughtBack};
use crate::ledger::{Entry, Fact};
use crate::quantity::{Cash, Count, Currency, Decimal, Id, Listed, Money, Wall, up_to_cash};
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
    /// What went back; none where nobody wrote it down.
    pub back: Option<Money>,
}

impl BroughtBack {
    /// None in another currency than the job's.
    pub(super) fn of(entry: &Entry, f: &PiecesBroughtBack, currency: Currency) -> Option<BroughtBack> {
        let ours = |sum: &Money| sum.currency() == currency;
        let of = Lines { n: f.n, sum: f.sum, tax: f.tax };
        let kept = f.kept.filter(ours).unwrap_or(Money::zero(currency));
        let went = f.back.filter(|sum| ours(sum) && Decimal::ZERO <= sum.amount());
        let back = BroughtBack { entry: entry.id, act: act_of(entry), at: entry.when(f.when), sale: f.sale, of, kept, back: went };
        (ours(&f.sum) && ours(&f.tax)).then_some(back)
    }

    /// Where its pieces stayed sold, what of its part of the price was never paid; none where nobody wrote it down.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn never_paid(&self) -> Answer<Option<Money>> {
        let went = self.back.filter(|_| self.of.n == 0);
        went.map(|back| beyond(self.of.sum, back.plus(self.kept)?)).transpose()
    }
}

/// So many pieces that come back, and the coin their money goes back in, where it came in notes and coins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ComesBack {
    pub n: Count,
    pub coin: Option<Cash>,
}

impl Sale {
    /// The part of so many of the pieces that stand: by piece, half up, in coins up to what they can pay; its tax in the same measure. What is left
    /// of the rest loses no cent by it.
    ///
    /// # Errors
    /// [`Refusal::NothingToShareBy`], [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
    pub fn part(&self, ComesBack { n, coin }: ComesBack) -> Answer<Lines> {
        let by_piece = part(self.sum, n, self.n)?;
        let sum = coin.map_or(Ok(by_piece), |coin| up_to_cash(by_piece, coin))?;
        if sum == by_piece || self.sum.amount() <= sum.amount() {
            return Ok(Lines { n, sum: by_piece, tax: part(self.tax, n, self.n)? });
        }
        Ok(Lines { n, sum, tax: self.tax_in(sum)? })
    }

    /// So much of its price that goes back while every piece stays sold, with its tax in the same measure, half up; no more than is left of it.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
    pub fn less(&self, sum: Money) -> Answer<Lines> {
        if self.sum.amount() <= sum.amount() {
            return Ok(Lines { n: 0, sum: self.sum, tax: self.tax });
        }
        Ok(Lines { n: 0, sum, tax: self.tax_in(sum)? })
    }

    /// The tax in so much of its price.
    pub(super) fn tax_in(&self, sum: Money) -> Answer<Money> {
        let share = self.tax.amount().checked_mul(sum.amount()).and_then(|tax| tax.checked_div(self.sum.amount()));
        Money::book(share.ok_or(Refusal::OutOfRange)?, sum.currency())
    }

    /// What went back of its price while its pieces stayed sold.
    pub(super) fn given_off(&self) -> impl Iterator<Item = Money> {
        self.back.iter().filter(|back| back.of.n == 0).map(|back| back.of.sum)
    }

    /// Takes off what came back of it. All that was left of it is a sale that was taken back; where the buyer keeps the pieces it stays sold, for
    /// nothing.
    pub(super) fn brought_back(&mut self, back: &BroughtBack) {
        let of =
            if back.of.n == 0 { Lines { n: 0, sum: least(back.of.sum, self.sum), tax: least(back.of.tax, self.tax) } } else { back.of };
        let back = &BroughtBack { of, ..*back };
        let (sum, tax) = (self.sum.minus(back.of.sum), self.tax.minus(back.of.tax));
        match (sum, tax) {
            (Ok(sum), Ok(tax)) if back.of.n < self.n && Decimal::ZERO <= sum.amount() => {
                (self.n, self.sum, self.tax) = (self.n.saturating_sub(back.of.n), sum, tax);
                self.back.push(*back);
            }
            _ if self.reversed.is_some() => {}
            _ => {
                let BroughtBack { entry, act, at, kept, back, .. } = *back;
                self.reversed = Some(Reversed { entry, act, at, kept, back });
            }
        }
    }
}

impl Selling {
    /// Pieces came back, or an agreement came to nothing.
    pub(super) fn returned(&mut self, entry: &Entry, currency: Currency) {
        let ours = |sum: &Money| sum.currency() == currency;
        let kept_of = |kept: Option<Money>| kept.filter(ours).unwrap_or(Money::zero(currency));
        let back_of = |back: Option<Money>| back.filter(|sum| ours(sum) && Decimal::ZERO <= sum.amount());
        match &entry.fact {
            Fact::AgreementCancelled(f) => {
                let (kept, no_show) = (kept_of(f.kept), f.no_show.unwrap_or(false));
                self.cancelled.insert(f.agreed, AgreementState::Cancelled { entry: entry.id, at: entry.wall, kept, no_show });
                self.all_cancelled.insert(entry.id, Ended { at: entry.wall, kept, back: back_of(f.back) });
                self.steps.push(Step::Cancelled { entry: entry.id, agreed: f.agreed });
                let acts = self.acts_back().filter(|act| *act != act_of(entry)).listed();
                self.came_back_before.insert(f.agreed, acts);
            }
            Fact::SaleReversed(f) => {
                let (kept, back) = (kept_of(f.kept), back_of(f.back));
                let reversed = Reversed { entry: entry.id, act: act_of(entry), at: entry.when(f.when), kept, back };
                self.steps.push(Step::Back { entry: entry.id, sale: f.sale });
                self.reversals.insert(f.sale, reversed);
                self.all_reversals.insert(entry.id, reversed);
            }
            Fact::PiecesBroughtBack(f) => {
                self.steps.push(Step::Back { entry: entry.id, sale: f.sale });
                self.brought.extend(BroughtBack::of(entry, f, currency));
            }
            _ => {}
        }
    }

    /// What an entry says of the money that went back with pieces of a sale.
    pub(super) fn went_with(&self, entry: Id) -> Option<Reversed> {
        let some = || self.brought.iter().find(|back| back.entry == entry);
        let of = |back: &BroughtBack| Reversed { entry, act: back.act, at: back.at, kept: back.kept, back: back.back };
        self.all_reversals.get(&entry).copied().or_else(|| some().map(of))
    }

    /// What an entry says of the money of an agreement that came to nothing. What is older says nothing of it where a change took its place, or
    /// another phone said it too.
    pub(super) fn ended(&self, agreed: Id, entry: Id) -> Option<Ended> {
        let is_it = |state: AgreementState| matches!(state, AgreementState::Cancelled { entry: by, .. } if by == entry);
        let stands = || self.agreement(agreed).is_some_and(|agreement| is_it(agreement.state));
        self.all_cancelled.get(&entry).copied().filter(|ended| ended.back.is_some() || stands())
    }

    /// What was agreed in the act by which pieces came back: they are made good and handed over again.
    pub fn again(&self, act: Id) -> Option<&Agreement> {
        self.agreements.iter().find(|agreement| agreement.act == act && self.acts_back().any(|back| back == act))
    }

    /// The agreement that what was kept of pieces that came back lies ahead of: the one that was made with it, else their own where it stood, or
    /// stands, when they were back. None where another had taken its place by then: that one is of other pieces.
    pub(super) fn made_good_for(&self, sale: &Sale, act: Id) -> Option<Id> {
        if let Some(again) = self.again(act) {
            return Some(again.id);
        }
        let is_changed = |own: &Id| self.came_back_before_change.get(own).is_some_and(|before| !before.contains(&act));
        if sale.agreed.as_ref().is_some_and(is_changed) {
            return None;
        }
        let first = self.first(sale.agreed);
        let of_chain = |agreement: &&Agreement| self.first(Some(agreement.id)) == first;
        let ended = |agreement: &Agreement| self.came_back_before.get(&agreement.id).is_some_and(|before| !before.contains(&act));
        let mut chain = self.agreements.iter().filter(of_chain).peekable();
        first.filter(|_| chain.peek().is_some() && !chain.any(ended))
    }

    /// So many pieces of a sale, as they come back: in coins where all that came in for it did.
    ///
    /// # Errors
    /// [`Refusal::CoinOutOfRange`].
    pub fn comes_back(&self, till: &Till, (sale, n): (Id, Count)) -> Answer<ComesBack> {
        let order = self.first(self.sale(sale).and_then(|sale| sale.agreed));
        let in_notes = self.in_notes(|it| it.sale == Some(sale) || (order.is_some() && self.first(it.agreed) == order));
        Ok(ComesBack { n, coin: till.coin(Some(Paid::Notes).filter(|_| in_notes))? })
    }

    /// Whether all that came in for what is over now was notes and coins.
    pub fn came_in_notes(&self, over: &Over) -> bool {
        let chain = |it: &Payment| match it.sale {
            Some(sale) => self.sale(sale).map(|sale| self.first(sale.agreed)),
            None => Some(self.first(it.agreed)),
        };
        self.in_notes(|it| match over.sale {
            Some(_) => it.sale == over.sale,
            None => chain(it) == Some(self.first(over.agreed)),
        })
    }

    /// Whether of some payments there are some, and all in notes and coins.
    fn in_notes(&self, is_of: impl Fn(&Payment) -> bool) -> bool {
        let mut ways = self.payments.iter().filter(|it| is_of(it)).map(|it| it.paid).peekable();
        ways.peek().is_some() && ways.all(|paid| paid == Paid::Notes)
    }

    /// What came in for so many of the pieces of a sale that stand, beyond what the rest of them costs: it goes back with them.
    ///
    /// # Errors
    /// [`Refusal::NotThere`], [`Refusal::NothingToShareBy`], [`Refusal::MoneyOutOfRange`].
    pub fn came_for(&self, currency: Currency, (sale, back): (Id, ComesBack)) -> Answer<Money> {
        let paid = self.paid(currency, sale)?;
        let sale = self.sale(sale).ok_or(Refusal::NotThere)?;
        if sale.n <= back.n {
            return Ok(paid);
        }
        let part = sale.part(back)?.sum;
        came(paid, part, sale.sum.minus(part)?)
    }

    /// What goes back of what came in where a sale is so much less: what was paid beyond the rest of its price.
    ///
    /// # Errors
    /// [`Refusal::NotThere`], [`Refusal::MoneyOutOfRange`].
    pub fn came_beyond(&self, currency: Currency, (sale, less): (Id, Money)) -> Answer<Money> {
        let there = self.sale(sale).ok_or(Refusal::NotThere)?.sum;
        came(self.paid(currency, sale)?, less, beyond(there, less)?)
    }

    /// The fee of so much of what came in for a sale, with what came in ahead.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn fee_of(&self, currency: Currency, (sale, came): (Id, Money)) -> Answer<Money> {
        self.paid_for(currency)?.fee_of(sale, came)
    }

    /// The fee of what came in for them, with what came in ahead: it stays paid, and is lost where nothing of it is kept.
    ///
    /// # Errors
    /// As [`Selling::came_for`].
    pub fn fee_for(&self, currency: Currency, (sale, back): (Id, ComesBack)) -> Answer<Money> {
        self.paid_for(currency)?.fee_of(sale, self.came_for(currency, (sale, back))?)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Moment, Offset, Side};

    /// Sixty of ninety given back on each of two phones: the piece stays sold, and no more than ninety goes.
    #[test]
    fn what_two_phones_gave_back_is_no_more_than_the_price() {
        let usd = |whole: i64| Money::whole(Decimal::from(whole), Currency::USD).unwrap();
        let (id, at) = (Id::new(Moment::at(0), [1; 10]), Wall::new(Moment::at(0), Offset::UTC));
        let whole = Lines { n: 1, sum: usd(90), tax: usd(9) };
        let (rate, side) = (Decimal::ZERO, Side::Inside);
        let (sum, tax) = (whole.sum, whole.tax);
        let mut sale = Sale {
            id,
            at,
            n: 1,
            sum,
            tax,
            rate,
            side,
            tag: None,
            agreed: None,
            carried: None,
            buyer: None,
            whole,
            back: vec![],
            reversed: None,
        };
        let back = BroughtBack { entry: id, act: id, at, sale: id, of: sale.less(usd(60)).unwrap(), kept: usd(0), back: None };
        (0..2).for_each(|_| sale.brought_back(&back));
        assert_eq!((sale.n, sale.sum, sale.tax, sale.reversed), (1, usd(0), usd(0), None));
        assert_eq!(sale.back.iter().map(|back| back.of.sum).listed(), [usd(60), usd(30)]);
    }
}
