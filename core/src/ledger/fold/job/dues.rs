//! What galleries still owe of what they sold.

use super::paid_for::beyond;
use super::selling::{Consigned, Selling};
use crate::quantity::{Count, Currency, Id, Money, Wall};
use crate::refusal::Answer;

/// What a gallery still owes of one sale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GalleryDue {
    /// The entry by which it paid in part.
    pub of: Id,
    pub at: Wall,
    pub gallery: Option<Id>,
    pub n: Count,
    /// All that it owed, and what it lacks of that.
    pub whole: Money,
    pub lacks: Money,
}

impl Selling {
    /// What galleries still owe, sale by sale, the oldest first; what is paid in full, or given up, is not among them.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn gallery_dues(&self, currency: Currency) -> Answer<Vec<GalleryDue>> {
        let mut dues = vec![];
        for paid in &self.consignments_paid {
            let Some((due, sum)) = paid.due.zip(paid.sum) else { continue };
            let lacks = beyond(beyond(due, self.rest_of(currency, paid.entry)?)?, self.given_up_of(currency, paid.entry)?)?;
            if !lacks.is_zero() {
                let (of, at, gallery, n) = (paid.entry, paid.at, paid.gallery, paid.n);
                dues.push(GalleryDue { of, at, gallery, n, whole: sum.plus(due)?, lacks });
            }
        }
        Ok(dues)
    }

    /// All that galleries still owe.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn due_from_galleries(&self, currency: Currency) -> Answer<Money> {
        Money::sum(currency, self.gallery_dues(currency)?.into_iter().map(|due| due.lacks))
    }

    /// What galleries handed over beyond what they owed: of a rest that two phones noted, or of a sale that was taken back.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn beyond_dues(&self, currency: Currency) -> Answer<Money> {
        let owed = |paid: &Consigned| Some((paid.entry, paid.due?));
        let all = Money::sum(currency, self.rests_paid.iter().map(|rest| rest.sum))?;
        let mut paid_off = Money::zero(currency);
        for (of, due) in self.consignments_paid.iter().filter_map(owed) {
            paid_off = paid_off.plus(due)?.minus(beyond(due, self.rest_of(currency, of)?)?)?;
        }
        all.minus(paid_off)
    }

    /// What galleries owed and will not pay: what came of it all the same is not among it.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn given_up(&self, currency: Currency) -> Answer<Money> {
        let mut sum = Money::zero(currency);
        for paid in &self.consignments_paid {
            let Some(due) = paid.due else { continue };
            let lacks = beyond(due, self.rest_of(currency, paid.entry)?)?;
            sum = sum.plus(lacks.minus(beyond(lacks, self.given_up_of(currency, paid.entry)?)?)?)?;
        }
        Ok(sum)
    }

    fn given_up_of(&self, currency: Currency, of: Id) -> Answer<Money> {
        Money::sum(currency, self.rests_given_up.iter().filter(|rest| rest.of == of).map(|rest| rest.sum))
    }

    fn rest_of(&self, currency: Currency, of: Id) -> Answer<Money> {
        Money::sum(currency, self.rests_paid.iter().filter(|rest| rest.of == of).map(|rest| rest.sum))
    }
}
