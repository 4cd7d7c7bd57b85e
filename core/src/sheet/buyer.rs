//! The side of the phone that is turned to a buyer: only what a buyer may see.
//!
//! Carries invariant 15: no cost, no hour, no settle, no name of a person has a member here.

use super::shop::Shop;
use super::yields::weight;
use crate::ledger::fold::{Job, TaxBy};
use crate::ledger::kind::sale::Paid;
use crate::quantity::{Decimal, Id, Length, Mass, Money, Units};
use crate::refusal::Answer;

/// What a buyer may see of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct BuyerSheet {
    pub name: String,
    pub units: Units,
    /// What is handed over for one piece: its tag, with its tax where that comes on top; in notes to the coin. None without a tag.
    pub price: Option<Money>,
    /// Several of it are for sale: the price is for each.
    pub is_each: bool,
    /// The price holds a tax that the tag does not.
    pub with_tax: bool,
    pub width: Option<Length>,
    pub depth: Option<Length>,
    pub height: Option<Length>,
    /// One piece: as weighed, else by its parts where all their woods are named.
    pub mass: Option<Mass>,
    pub wood: Option<String>,
    pub finish: Option<String>,
    pub care: Option<String>,
    pub delivery: Option<String>,
    /// The photo that was taken last, by the id of its picture.
    pub photo: Option<Id>,
}

/// The buyer's side of a job as it would be paid, with a tax that is not its own where one was chosen for this buyer.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`].
pub fn buyer(shop: &Shop, id: Id, (tax, paid): (Option<TaxBy>, Paid)) -> Answer<BuyerSheet> {
    let own = shop.job(id)?;
    let job = Job { tax: tax.unwrap_or(own.tax), ..own };
    let tax = shop.tax_of(&job);
    let price = job.tag.map(|tag| shop.till(job.currency).in_coins(Some(paid), tax.charge(tag)?)).transpose()?;
    let is_each = 1 < job.free();
    let by_parts = weight(&job, &shop.workshop.wood.woods)?;
    let said = job.described;
    let weighed = said.grams.and_then(|grams| f64::try_from(Decimal::new(grams, 3)).ok()).map(Mass::kg);
    Ok(BuyerSheet {
        name: job.name,
        units: job.units,
        price,
        is_each,
        with_tax: tax.is_on_top(),
        width: said.width,
        depth: said.depth,
        height: said.height,
        mass: weighed.or(by_parts.0.filter(|_| !by_parts.1)),
        wood: said.wood,
        finish: said.finish,
        care: said.care,
        delivery: said.delivery,
        photo: shop.workshop.photos.of_job(id).last(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Currency;

    /// Whoever adds a member has to come here and say why a buyer may see it.
    #[test]
    fn inv15_no_private_member_exists() {
        let price = Money::whole(Decimal::from(145), Currency::USD);
        let none = BuyerSheet {
            name: "stand".into(),
            units: Units::Inch,
            price,
            is_each: false,
            with_tax: false,
            width: None,
            depth: None,
            height: None,
            mass: None,
            wood: None,
            finish: None,
            care: None,
            delivery: None,
            photo: None,
        };
        let BuyerSheet { name: _, units: _, price: _, width: _, depth: _, height: _, mass: _, wood: _, finish: _, care: _, .. } = none;
        let BuyerSheet { delivery: _, photo: _, is_each: _, with_tax: _, .. } = none;
    }
}
