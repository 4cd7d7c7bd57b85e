//! Orders that are open, each with all that was agreed of it: what came in and what is owed of it is of the order, whoever changed it.

use super::paid_for::beyond;
use super::selling::{Agreement, Sale, Selling};
use crate::quantity::{Currency, Id, Listed, Money, Sorted};
use crate::refusal::Answer;

impl Selling {
    /// The orders that are open, each with what is agreed of it: with more than one where two phones changed it, and neither knew of the other.
    pub fn open_orders(&self) -> Vec<Vec<&Agreement>> {
        let mut orders: Sorted<Option<Id>, Vec<&Agreement>> = Sorted::new();
        self.open().for_each(|agreement| orders.entry(self.first(Some(agreement.id))).or_default().push(agreement));
        orders.into_values().listed()
    }

    /// What is due of an order, of its sales and of the pieces still to be handed over together.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn due_of_order(&self, currency: Currency, order: &[&Agreement]) -> Answer<Money> {
        let Some(one) = order.first() else { return Ok(Money::zero(currency)) };
        let given = order.iter().flat_map(|agreement| self.given_off_under(agreement.id));
        let agreed = order.iter().map(|agreement| agreement.sum.plus(agreement.beyond)).collect::<Answer<Vec<Money>>>()?;
        let asked = Money::sum(currency, agreed)?.minus(Money::sum(currency, given)?)?;
        let is_of_it = |sale: &Sale| order.iter().any(|agreement| sale.agreed == Some(agreement.id));
        let paid = self.paid_for(currency)?;
        let sales = self.standing().filter(|sale| is_of_it(sale)).map(|sale| paid.of_sale(sale.id));
        let came = Money::sum(currency, sales)?.plus(paid.ahead(self.first(Some(one.id))))?;
        beyond(asked, came)?.plus(self.lacking(currency, |sale| !is_of_it(sale) && self.is_of_order(sale, one))?)
    }
}
