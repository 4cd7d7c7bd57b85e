//! Counts and sums of how a job sells: pieces gone and promised, what was taken, owed and received.

use super::selling::{Agreement, AgreementState, Consigned, Payment, Sale, Selling};
use crate::quantity::{Count, Currency, Decimal, Id, Money};
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

    /// Pieces galleries have.
    pub fn at_galleries_now(&self) -> Count {
        count(&self.consigned).saturating_sub(count(&self.consignments_returned)).saturating_sub(self.sold_by_galleries())
    }

    /// Pieces no longer on hand.
    pub fn gone(&self) -> Count {
        self.sold_pieces().saturating_add(self.sold_by_galleries()).saturating_add(self.at_galleries_now())
    }

    /// Pieces promised and not yet handed over.
    pub fn promised(&self) -> Count {
        self.open().fold(0, |sum, agreement| sum.saturating_add(agreement.n.saturating_sub(agreement.sold)))
    }

    /// What sales brought: the whole sums of those that stand, and what was kept of those that do not.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn taken(&self, currency: Currency) -> Answer<Money> {
        let sales = self.sales.iter().map(|sale| sale.reversed.unwrap_or(sale.sum));
        Money::sum(currency, sales.chain(self.kept_of_cancelled()))
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

    /// What galleries handed over.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn handed_over(&self, currency: Currency) -> Answer<Money> {
        Money::sum(currency, self.consignments_paid.iter().filter_map(|paid| paid.sum))
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

    /// What came in and was not handed back.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received(&self, currency: Currency) -> Answer<Money> {
        let came = Money::sum(currency, self.payments.iter().map(|payment| payment.sum))?;
        let mut back = Money::zero(currency);
        for sale in &self.sales {
            let Some(kept) = sale.reversed else { continue };
            back = back.plus(beyond(self.paid_for(currency, |p| p.sale == Some(sale.id) || self.ahead_of(p, sale.agreed))?, kept)?)?;
        }
        for agreement in &self.agreements {
            let AgreementState::Cancelled { kept, .. } = agreement.state else { continue };
            back = back.plus(beyond(self.paid_for(currency, |p| self.ahead_of(p, Some(agreement.id)))?, kept)?)?;
        }
        came.minus(back)
    }

    /// What came in ahead for an agreement, or for one it replaced.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received_ahead(&self, currency: Currency, agreed: Id) -> Answer<Money> {
        self.paid_for(currency, |payment| self.ahead_of(payment, Some(agreed)))
    }

    /// What came in for an agreement: ahead, and for its sales that stand.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn received_under(&self, currency: Currency, agreed: Id) -> Answer<Money> {
        let sales: Vec<Id> = self.standing().filter(|sale| sale.agreed == Some(agreed)).map(|sale| sale.id).collect();
        let of_sale = |payment: &Payment| payment.sale.is_some_and(|sale| sales.contains(&sale));
        self.paid_for(currency, |payment| of_sale(payment) || self.ahead_of(payment, Some(agreed)))
    }

    fn paid_for(&self, currency: Currency, which: impl Fn(&Payment) -> bool) -> Answer<Money> {
        Money::sum(currency, self.payments.iter().filter(|payment| which(payment)).map(|payment| payment.sum))
    }

    /// Whether a payment was made ahead, for this agreement or one it replaced.
    fn ahead_of(&self, payment: &Payment, agreed: Option<Id>) -> bool {
        let mut next = agreed;
        for _ in 0..=self.agreements.len() {
            match next {
                None => return false,
                Some(_) if next == payment.agreed => return true,
                Some(id) => next = self.agreement(id).and_then(|agreement| agreement.replaces),
            }
        }
        false
    }

    fn kept_of_cancelled(&self) -> impl Iterator<Item = Money> {
        self.agreements.iter().filter_map(|agreement| match agreement.state {
            AgreementState::Cancelled { kept, .. } => Some(kept),
            _ => None,
        })
    }
}

fn count(list: &[Consigned]) -> Count {
    list.iter().fold(0, |sum, consigned| sum.saturating_add(consigned.n))
}

fn beyond(paid: Money, kept: Money) -> Answer<Money> {
    let back = paid.minus(kept)?;
    Ok(if back.amount() < Decimal::ZERO { Money::zero(paid.currency()) } else { back })
}
