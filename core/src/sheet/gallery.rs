//! Pieces at a gallery: what is to be expected of them by the terms they were left on.

use super::shop::Shop;
use crate::ledger::fold::{GalleryTerms, Job};
use crate::money::consign::{Consignment, Handed, Payer, ShareOf};
use crate::quantity::{Count, Decimal, Money};
use crate::refusal::Answer;

/// What galleries have of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AtGallery {
    pub n: Count,
    pub tag: Money,
    /// What would come of one piece sold at its tag, by the terms of the last consignment.
    pub of_one: Handed,
}

impl AtGallery {
    /// The tax the maker sends in of `n` sold for which a gallery handed over a sum; none where the gallery sends it in.
    pub fn tax_of(&self, n: Count, sum: Money) -> Option<Money> {
        if self.of_one.handed_over == self.of_one.you_get {
            return None;
        }
        let tax = self.of_one.tax.amount().checked_mul(Decimal::from(n))?;
        Money::book(tax, sum.currency()).ok().filter(|tax| tax.amount() <= sum.amount())
    }
}

/// What galleries have of a job; none where they have nothing.
///
/// # Errors
/// [`crate::refusal::Refusal::ShareOutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn at_gallery(shop: &Shop, job: &Job) -> Answer<Option<AtGallery>> {
    let n = job.selling.at_galleries_now();
    let last = job.selling.consigned.last().and_then(|consigned| consigned.sum.zip(consigned.terms));
    let Some((tag, terms)) = last.filter(|_| 0 < n) else { return Ok(None) };
    Ok(Some(AtGallery { n, tag, of_one: of_one(shop, tag, terms)? }))
}

/// What would come of one piece sold at its tag, by these terms.
///
/// # Errors
/// [`crate::refusal::Refusal::ShareOutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn of_one(shop: &Shop, tag: Money, terms: GalleryTerms) -> Answer<Handed> {
    let consignment = Consignment {
        tax: shop.till(tag.currency()).sales_tax(),
        keeps: terms.share,
        of: if terms.with_tax { ShareOf::WithTax } else { ShareOf::BeforeTax },
        payer: if terms.maker_pays { Payer::Maker } else { Payer::Gallery },
        tax_on_share: Decimal::ZERO,
    };
    consignment.sold(tag)
}
