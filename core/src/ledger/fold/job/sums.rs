//! Counts and sums of how a job sells: pieces gone and promised, what was taken, owed and received.

use super::brought::part;
use super::paid_for::beyond;
use super::selling::{Agreement, AgreementState, Consigned, Over, PartOfPay, Payment, Sale, Selling};
use crate::ledger::kind::sale::{Carried, Paid};
use crate::quantity::{Count, Currency, Decimal, Id, Listed, Moment, Money, Wall};
use crate::refusal::Answer;

impl Selling {
    /// Agreements whose pieces are not handed over yet.
    pub fn open(&self) -> impl Iterator<Item = &Agreement> {
        self.agreements.iter().filter(|agreement| agreement.state == AgreementState::Open)
    }

    pub fn agreement(&self, id: Id) -> Option<&Agreement> {
        self.agreements.iter().find(|agreement| agreement.id == id)
    }

    pub fn sale(&self, id: Id) -> Option<&Sale> {
        self.sales.iter().find(|sale| sale.id == id)
    }

    /// Sales that stand.
    pub fn standing(&self) -> impl Iterator<Item = &Sale> {
        self.sales.iter().filter(|sale| sale.reversed.is_none())
    }

    /// Pieces sold by the maker.
    pub fn sold_pieces(&self) -> Count {
        self.standing().fold(0, |sum, sale| sum.saturating_add(sale.n))
    }

    /// Pieces galleries sold.
    pub fn sold_by_galleries(&self) -> Count {
        count(&self.consignments_paid)
    }

    /// Pieces galleries have; where more went from one lot than it had, as two phones may note the same sale, no more than is left of all.
    pub fn at_galleries_now(&self) -> Count {
        let went = count(&self.consignments_paid).saturating_add(count(&self.consignments_returned));
        let there = self.lots().iter().fold(0, |sum: Count, lot| sum.saturating_add(lot.there()));
        there.min(count(&self.consigned).saturating_sub(went))
    }

    /// Pieces no longer on hand.
    pub fn gone(&self) -> Count {
        let went = self.sold_pieces().saturating_add(self.sold_by_galleries()).saturating_add(self.at_galleries_now());
        went.saturating_add(self.pieces_not_for_sale())
    }

    /// Of the pieces that are gone now, those that were gone before a moment.
    pub fn gone_by(&self, at: Moment) -> Count {
        let sum = |all: &mut dyn Iterator<Item = (Moment, Count)>| {
            all.filter(|(then, _)| *then < at).fold(0, |sum: Count, (_, n)| sum.saturating_add(n))
        };
        let given = |list: &[Consigned]| sum(&mut list.iter().map(|there| (there.at.at, there.n)));
        let sold = sum(&mut self.standing().map(|sale| (sale.at.at, sale.n)));
        let not_for_sale = sum(&mut self.not_for_sale.iter().map(|gone| (gone.at.at, gone.n)));
        sold.saturating_add(not_for_sale).saturating_add(given(&self.consigned)).saturating_sub(given(&self.consignments_returned))
    }

    /// Pieces that are not for sale any more.
    pub fn pieces_not_for_sale(&self) -> Count {
        self.not_for_sale.iter().fold(0, |sum, gone| sum.saturating_add(gone.n))
    }

    /// When the last piece left the maker's hand, to a buyer or to a gallery, or was no longer for sale.
    pub fn last_went(&self) -> Option<Moment> {
        let given = self.consigned.iter().map(|given| given.at.at).chain(self.not_for_sale.iter().map(|gone| gone.at.at));
        self.standing().map(|sale| sale.at.at).chain(given).max()
    }

    /// The last sale of a piece that the maker drives to its buyer, of those that were not agreed before: what was is driven to where it is handed
    /// over and sold.
    pub fn driven_after_sale(&self) -> Option<&Sale> {
        self.standing().filter(|sale| sale.agreed.is_none() && sale.carried == Some(Carried::Delivered)).max_by_key(|sale| sale.at.at)
    }

    /// Whether nothing was sold after this one.
    pub fn is_last(&self, sale: &Sale) -> bool {
        self.standing().max_by_key(|sale| sale.at.at).is_some_and(|last| last.id == sale.id)
    }

    /// Whether a piece went since a moment that its buyer did not fetch: what was driven before was driven for such.
    pub fn is_any_brought_since(&self, at: Moment) -> bool {
        self.lots().iter().any(|lot| at <= lot.at.at && lot.back < lot.n)
            || self.standing().any(|sale| 0 < sale.n && at <= sale.at.at && sale.carried != Some(Carried::Fetched))
    }

    /// How the last was paid that came in for a sale, else for its order; of an agreement, for the order it is of: ahead or for a piece of it, also
    /// before it was changed.
    pub fn paid_last(&self, of: Id) -> Option<Paid> {
        let own = self.payments.iter().rev().find(|payment| payment.sale == Some(of)).map(|payment| payment.paid);
        own.or_else(|| self.paid_for_order(self.sale(of).and_then(|sale| sale.agreed).unwrap_or(of)))
    }

    fn paid_for_order(&self, agreed: Id) -> Option<Paid> {
        let first = self.first(Some(agreed));
        let under = |sale: Id| self.sales.iter().find(|one| one.id == sale).and_then(|sale| sale.agreed);
        let is_of_it = |of: Option<Id>| of.is_some() && self.first(of) == first;
        let came = |payment: &&Payment| is_of_it(payment.sale.map_or(payment.agreed, under));
        self.payments.iter().rev().find(came).map(|payment| payment.paid)
    }

    /// Pieces promised and not yet handed over.
    pub fn promised(&self) -> Count {
        self.open().fold(0, |sum, agreement| sum.saturating_add(agreement.n.saturating_sub(agreement.sold)))
    }

    /// What sales brought: the whole sums of those that stand, to the coin they were paid with, and what was kept of those that do not.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn taken(&self, currency: Currency) -> Answer<Money> {
        Money::sum(currency, self.standing().map(|sale| sale.sum))?.plus(self.kept(currency)?)?.plus(self.rounded(currency)?)
    }

    /// What was kept of sales that were taken back and of agreements that came to nothing: no more than had come in.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn kept(&self, currency: Currency) -> Answer<Money> {
        Ok(self.paid_for(currency)?.kept)
    }

    /// What payments in coins came to beyond what was owed, less what went back in coins beyond what was over.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn rounded(&self, currency: Currency) -> Answer<Money> {
        let came = Money::sum(currency, self.payments.iter().filter_map(|payment| payment.rounding))?.minus(self.coins_back(currency)?)?;
        came.minus(Money::sum(currency, self.handed_back.iter().filter_map(|back| back.rounding))?)
    }

    /// The same of what was paid for one sale alone.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn rounded_of_sale(&self, sale: &Sale) -> Answer<Money> {
        let of_it = self.payments.iter().filter(|payment| payment.sale == Some(sale.id));
        Money::sum(sale.sum.currency(), of_it.filter_map(|payment| payment.rounding))
    }

    /// The coins of payments that went back whole: what was handed over went back, and they with it.
    fn coins_back(&self, currency: Currency) -> Answer<Money> {
        Money::sum(currency, self.coins_went_back(currency)?.into_iter().map(|(_, coins)| coins))
    }

    fn coins_went_back(&self, currency: Currency) -> Answer<Vec<(Wall, Money)>> {
        let paid = self.paid_for(currency)?;
        Ok(self.payments.iter().filter_map(|payment| Some((paid.gone(payment.id)?, payment.rounding?))).listed())
    }

    /// All that buyers were given back, and when: of what came back or came to nothing what was not kept, and what was over.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn given_back(&self, currency: Currency) -> Answer<Vec<(Wall, Money)>> {
        let over = self.handed_back.iter().map(|back| (back.at, back.sum));
        Ok(self.paid_for(currency)?.back.iter().copied().chain(over).chain(self.coins_went_back(currency)?).listed())
    }

    /// What came in for a sale and is still there, beyond what it pays, because it was paid in coins; below nothing where it was less.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn coins_of_sale(&self, currency: Currency, sale: Id) -> Answer<Money> {
        self.paid_for(currency)?.coins_of_sale(sale)
    }

    /// What came in beyond what is owed, by what it came in for: it is to be handed back.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn over(&self, currency: Currency) -> Answer<Vec<Over>> {
        self.paid_for(currency)?.over(self)
    }

    /// The tax the maker sends in: the lines of the sales that stand, and of what galleries handed over with it.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn tax(&self, currency: Currency) -> Answer<Money> {
        let by_galleries = self.consignments_paid.iter().filter_map(|paid| paid.tax);
        Money::sum(currency, self.standing().map(|sale| sale.tax).chain(by_galleries))
    }

    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn fees(&self, currency: Currency) -> Answer<Money> {
        Money::sum(currency, self.payments.iter().map(|payment| payment.fee))
    }

    /// What galleries handed over, at once and later.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn handed_over(&self, currency: Currency) -> Answer<Money> {
        let later = self.rests_paid.iter().map(|rest| rest.sum);
        Money::sum(currency, self.consignments_paid.iter().filter_map(|paid| paid.sum).chain(later))
    }

    /// What buyers owe in all, paid or not: sales, and what is open of agreements.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn owed(&self, currency: Currency) -> Answer<Money> {
        let rest = |agreement: &Agreement| agreement.sum.minus(agreement.sold_for);
        let open = self.open().map(rest).collect::<Answer<Vec<Money>>>()?;
        let open = open.into_iter().filter(|rest| Decimal::ZERO < rest.amount());
        self.taken(currency)?.plus(Money::sum(currency, open)?)
    }

    /// What so many of the pieces that are still to be handed over cost: their part of what is left of the sum, all that is left for the last.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::NothingToShareBy`] where none is left, [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn price_of(&self, agreement: &Agreement, n: Count) -> Answer<Money> {
        let left = agreement.n.saturating_sub(agreement.sold);
        part(agreement.sum.minus(agreement.sold_for)?, n.min(left), left)
    }

    /// What came in and was not handed back.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received(&self, currency: Currency) -> Answer<Money> {
        let came = Money::sum(currency, self.payments.iter().map(|payment| payment.sum))?;
        came.minus(Money::sum(currency, self.given_back(currency)?.into_iter().map(|(_, back)| back))?)
    }

    /// What a sale was paid, with what it used of a deposit.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn paid(&self, currency: Currency, sale: Id) -> Answer<Money> {
        Ok(self.paid_for(currency)?.of_sale(sale))
    }

    /// What had come in for a sale that was taken back, when it was.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn came_for_all(&self, currency: Currency, sale: Id) -> Answer<Money> {
        Ok(self.paid_for(currency)?.came_for(sale))
    }

    /// What of its price a sale lacks.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn lacks(&self, currency: Currency, sale: &Sale) -> Answer<Money> {
        beyond(sale.sum, self.paid(currency, sale.id)?)
    }

    /// Sales not paid in full, each with what it lacks. While an order is open, it asks itself for all that is due of it, also of what was handed
    /// over before the order was changed.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn unpaid(&self, currency: Currency) -> Answer<Vec<(&Sale, Money)>> {
        let paid = self.paid_for(currency)?;
        let is_open = |sale: &Sale| self.open().any(|agreement| self.is_of_order(sale, agreement));
        let lacks = |sale: &Sale| sale.sum.minus(paid.of_sale(sale.id));
        let asked = self.standing().filter(|sale| !is_open(sale)).map(|sale| Ok((sale, lacks(sale)?)));
        Ok(asked.collect::<Answer<Vec<_>>>()?.into_iter().filter(|(_, lacks)| !lacks.is_zero()).listed())
    }

    /// What is due of an order by one agreement, of its sales and of the pieces still to be handed over together.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn still_due(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        self.due_of_order(currency, &[agreement])
    }

    /// What is owed of the pieces of an order that were handed over before it was changed: what comes in next for it pays that before any part of it.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn owed_before_change(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        self.lacking(currency, |sale| sale.agreed != Some(agreement.id) && self.is_of_order(sale, agreement))
    }

    /// What is still owed of the pieces of an order that were handed over before, also before it was changed: what comes in next for it pays that
    /// first.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn owed_before(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        self.lacking(currency, |sale| self.is_of_order(sale, agreement))
    }

    /// The tax in that, in the measure of what lacks of each price.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn tax_before(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        let paid = self.paid_for(currency)?;
        let of = |sale: &Sale| match beyond(sale.sum, paid.of_sale(sale.id))? {
            lacks if lacks.is_zero() => Ok(lacks),
            lacks => sale.tax_in(lacks),
        };
        let sales = self.standing().filter(|sale| self.is_of_order(sale, agreement));
        Money::sum(currency, sales.map(of).collect::<Answer<Vec<Money>>>()?)
    }

    pub(super) fn lacking(&self, currency: Currency, is_of: impl Fn(&Sale) -> bool) -> Answer<Money> {
        let paid = self.paid_for(currency)?;
        let lacks = self.standing().filter(|sale| is_of(sale)).map(|sale| beyond(sale.sum, paid.of_sale(sale.id)));
        Money::sum(currency, lacks.collect::<Answer<Vec<Money>>>()?)
    }

    /// What the pieces of an order were sold for that were handed over before it was changed.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn sold_before_change(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        let is_before = |sale: &Sale| !self.open().any(|open| sale.agreed == Some(open.id));
        let sales = self.standing().filter(|sale| is_before(sale) && self.is_of_order(sale, agreement));
        Money::sum(currency, sales.map(|sale| sale.sum))
    }

    /// Whether a sale is of an agreement, or of one it replaced.
    pub(super) fn is_of_order(&self, sale: &Sale, agreement: &Agreement) -> bool {
        sale.agreed.is_some() && self.first(sale.agreed) == self.first(Some(agreement.id))
    }

    /// What went back of the price of an agreement's sales while their pieces stayed sold: nobody owes that, also where they came back later.
    pub(super) fn given_off_under(&self, agreed: Id) -> impl Iterator<Item = Money> + '_ {
        self.sales.iter().filter(move |sale| sale.agreed == Some(agreed)).flat_map(|sale| sale.given_off())
    }

    /// The sum of that.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn given_off(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        Money::sum(currency, self.given_off_under(agreement.id))
    }

    /// What of the deposits of open orders is still to come in, before the rest.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn deposits_due(&self, currency: Currency) -> Answer<Money> {
        Money::sum(currency, self.open().map(|agreement| self.deposit_due(currency, agreement)).collect::<Answer<Vec<Money>>>()?)
    }

    /// What of the deposit of an order is still to come in: of none that is paid in parts, or handed over in part, nor while pieces handed over before
    /// are owed, which what comes in pays first.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn deposit_due(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        let is_asked = agreement.parts.is_empty() && agreement.sold == 0 && self.owed_before(currency, agreement)?.is_zero();
        match agreement.deposit.filter(|_| is_asked) {
            Some(deposit) => beyond(deposit, self.received_under(currency, agreement.id)?),
            None => Ok(Money::zero(currency)),
        }
    }

    /// What came in ahead for an agreement, or for one it replaced, and was not used by a sale.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received_ahead(&self, currency: Currency, agreed: Id) -> Answer<Money> {
        Ok(self.paid_for(currency)?.ahead(self.first(Some(agreed))))
    }

    /// What came in for an order beyond what was owed because it was paid in coins, or below nothing where it was less: it is in the till, and pays
    /// for nothing. What went back is in it no more.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn rounded_of_order(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        let paid = self.paid_for(currency)?;
        let first = self.first(Some(agreement.id));
        let under = |sale: Option<Id>| self.sales.iter().find(|one| Some(one.id) == sale).and_then(|sale| sale.agreed);
        let is_of_it = |sale: Option<Id>, agreed: Option<Id>| {
            let of = if sale.is_some() { under(sale) } else { agreed };
            of.is_some() && self.first(of) == first
        };
        let came = self.payments.iter().filter(|payment| is_of_it(payment.sale, payment.agreed) && paid.gone(payment.id).is_none());
        let back = self.handed_back.iter().filter(|back| is_of_it(back.sale, back.agreed));
        let came = Money::sum(currency, came.filter_map(|payment| payment.rounding))?;
        came.minus(Money::sum(currency, back.filter_map(|back| back.rounding))?)
    }

    /// What came in for an agreement: ahead, and for its sales that stand.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received_under(&self, currency: Currency, agreed: Id) -> Answer<Money> {
        let paid = self.paid_for(currency)?;
        let sales = self.standing().filter(|sale| sale.agreed == Some(agreed));
        Money::sum(currency, sales.map(|sale| paid.of_sale(sale.id)))?.plus(paid.ahead(self.first(Some(agreed))))
    }

    /// The same of all of an order, also for what was handed over before it was changed.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received_of_order(&self, currency: Currency, agreement: &Agreement) -> Answer<Money> {
        let paid = self.paid_for(currency)?;
        let sales = self.standing().filter(|sale| self.is_of_order(sale, agreement));
        Money::sum(currency, sales.map(|sale| paid.of_sale(sale.id)))?.plus(paid.ahead(self.first(Some(agreement.id))))
    }

    /// The parts an agreement is paid in, each with what it lacks: what came in pays the first of them first.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn parts_due(&self, currency: Currency, agreement: &Agreement) -> Answer<Vec<(PartOfPay, Money)>> {
        let given = Money::sum(currency, self.given_off_under(agreement.id))?;
        let mut came = self.received_under(currency, agreement.id)?.plus(given)?;
        let lacks = |part: &PartOfPay| {
            let lacks = beyond(part.sum, came)?;
            came = beyond(came, part.sum)?;
            Ok((*part, lacks))
        };
        agreement.parts.iter().map(lacks).collect()
    }

    /// What is asked for a part: what is owed of pieces that were handed over before the order was changed, where some is, as what comes in pays that
    /// first; else what the part lacks.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn asked_for_part(&self, currency: Currency, agreement: &Agreement, lacks: Money) -> Answer<Money> {
        let before = self.owed_before_change(currency, agreement)?;
        Ok(if before.is_zero() { lacks } else { before })
    }

    /// Whether a change of order left payments behind that were planned of another sum, nothing was said of them since, and some is still due.
    pub fn is_to_plan_anew(&self, agreement: &Agreement) -> bool {
        let due = self.still_due(agreement.sum.currency(), agreement);
        if due.is_ok_and(|due| due.amount() <= Decimal::ZERO) {
            return false;
        }
        let mut of = Some(agreement);
        for _ in &self.agreements {
            let Some(now) = of else { return false };
            if let Some(parts) = self.planned.get(&now.id) {
                return now.id != agreement.id && !parts.is_empty() && agreement.state == AgreementState::Open;
            }
            of = now.replaces.and_then(|id| self.agreement(id));
        }
        false
    }

    /// The fees of what came in ahead for an agreement, or for one it replaced, and lies there.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn fees_ahead(&self, currency: Currency, agreed: Id) -> Answer<Money> {
        Ok(self.paid_for(currency)?.fees_ahead(self.first(Some(agreed))))
    }

    /// The fees of what came in and went back, of agreements that came to nothing, of pieces that came back, and of what was over: no sale brings them in.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn fees_lost(&self, currency: Currency) -> Answer<Money> {
        Ok(self.paid_for(currency)?.fees_lost())
    }

    /// The first agreement of a chain of changes: what came ahead for it goes on to the last.
    pub(in crate::ledger) fn first(&self, agreed: Option<Id>) -> Option<Id> {
        let mut first = agreed?;
        for _ in &self.agreements {
            match self.agreement(first).and_then(|agreement| agreement.replaces) {
                Some(before) => first = before,
                None => break,
            }
        }
        Some(first)
    }
}

fn count(list: &[Consigned]) -> Count {
    list.iter().fold(0, |sum, consigned| sum.saturating_add(consigned.n))
}
