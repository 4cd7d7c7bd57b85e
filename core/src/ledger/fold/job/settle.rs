//! What a job sold, once all of it was read: what may have come in any order is tied together.

use super::paid_for::Found;
use super::selling::{AgreementState, Sale, Selling};
use crate::quantity::{Id, Listed};

impl Selling {
    /// Ties together what may have come in any order: reversals, cancellations, changes of order, sales of what was agreed.
    pub(super) fn settle(&mut self) {
        self.found = Found::default();
        for sale in &mut self.sales {
            let id = sale.id;
            self.brought.iter().filter(|back| back.sale == id).for_each(|back| sale.brought_back(back));
            sale.reversed = self.reversals.get(&sale.id).copied().or(sale.reversed);
        }
        let replaced: Vec<Id> = self.agreements.iter().filter_map(|agreement| agreement.replaces).listed();
        for agreement in &mut self.agreements {
            let id = agreement.id;
            let of_it = || self.sales.iter().filter(move |sale| sale.agreed == Some(id));
            let under = || of_it().filter(|sale| sale.reversed.is_none());
            agreement.sold = under().fold(agreement.sold, |sold, sale| sold.saturating_add(sale.n));
            // What was given off its price stays given, also where the piece came back after that and is made good.
            let sums = under().map(|sale| sale.sum).chain(of_it().flat_map(|sale| sale.given_off()));
            agreement.sold_for = sums.fold(agreement.sold_for, |all, sum| all.plus(sum).unwrap_or(all));
            agreement.beyond = self.came_to.get(&id).and_then(|all| all.minus(agreement.sum).ok()).unwrap_or(agreement.beyond);
            agreement.sold_for = agreement.sold_for.minus(agreement.beyond).unwrap_or(agreement.sold_for);
            let back = |sale: &Sale| if sale.reversed.is_some() { sale.whole.n } else { sale.whole.n.saturating_sub(sale.n) };
            agreement.came_back = of_it().fold(0, |sum, sale| sum.saturating_add(back(sale)));
            agreement.parts = self.planned.get(&agreement.id).cloned().unwrap_or_default();
            agreement.state = match self.cancelled.get(&agreement.id) {
                _ if replaced.contains(&agreement.id) => AgreementState::Replaced,
                Some(cancelled) => *cancelled,
                None if agreement.n <= agreement.sold => AgreementState::Done,
                None => AgreementState::Open,
            };
        }
    }
}
