//! Pieces at galleries, by consignment: what is to be expected of them by the terms they were left on.

use super::shop::Shop;
use crate::ledger::fold::{GalleryTerms, Job, Lot};
use crate::money::consign::{Consignment, Handed, Payer, ShareOf};

use crate::quantity::sums;
use crate::quantity::{Count, Decimal, Id, Money, Wall};
use crate::refusal::Answer;

/// What a gallery has of one consignment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AtGallery {
    pub lot: Id,
    /// The day it was left there.
    pub since: Wall,
    /// The gallery, where it was said.
    pub gallery: Option<Id>,
    pub n: Count,
    pub tag: Money,
    /// What would come of one piece sold at its tag.
    pub of_one: Handed,
    terms: Consignment,
}

impl AtGallery {
    /// What the gallery hands over for `n` sold: at their tags, or for all that their buyers handed over.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn expected(&self, n: Count, sold_for: Option<Money>) -> Answer<Money> {
        sold_for.map_or_else(|| times(self.of_one.handed_over, n), |charge| Ok(self.terms.sold_for(charge)?.handed_over))
    }

    /// What a sum handed over for `n` sold lacks of what it owes; none where it lacks nothing. Who rounds the sum of all and not each lacks
    /// less than a coin a piece, and nothing.
    pub fn lacks(&self, n: Count, sum: Money, sold_for: Option<Money>) -> Option<Money> {
        let lacks = self.expected(n, sold_for).ok()?.minus(sum).ok()?;
        let coins = sums::times(sums::minor(lacks.currency()), Decimal::from(n)).ok()?;
        Some(lacks).filter(|lacks| coins <= lacks.amount() && !lacks.is_zero())
    }

    /// The tax the maker sends in of `n` sold for which the gallery handed over a sum: that of what the buyers paid, where it was said,
    /// else as the sum tells by the terms. None where the gallery sends it in.
    pub fn tax_of(&self, n: Count, sum: Money, sold_for: Option<Money>) -> Option<Money> {
        if self.terms.payer == Payer::Gallery {
            return None;
        }
        let tax = match sold_for {
            Some(charge) => self.terms.sold_for(charge).map(|sold| sold.tax),
            None if self.expected(n, None) == Ok(sum) => times(self.of_one.tax, n),
            None => self.terms.tax_in(sum),
        };
        tax.ok().filter(|tax| tax.amount() <= sum.amount())
    }
}

fn times(one: Money, n: Count) -> Answer<Money> {
    let all = one.amount().checked_mul(Decimal::from(n)).ok_or(crate::refusal::Refusal::OutOfRange)?;
    Money::book(all, one.currency())
}

/// What galleries have of a job, by consignment, the oldest first.
///
/// # Errors
/// [`crate::refusal::Refusal::ShareOutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn at_galleries(shop: &Shop, job: &Job) -> Answer<Vec<AtGallery>> {
    job.selling.lots().into_iter().filter(|lot| 0 < lot.there()).map(|lot| at_gallery(shop, job, lot)).collect()
}

/// Whether more than one gallery is meant: of one that is not named nobody knows.
pub fn are_several(galleries: impl Iterator<Item = Option<Id>>) -> bool {
    let mut named = galleries.flatten();
    let first = named.next();
    named.any(|other| Some(other) != first)
}

fn at_gallery(shop: &Shop, job: &Job, lot: Lot) -> Answer<AtGallery> {
    let terms = consignment(shop, job, lot.terms);
    Ok(AtGallery { lot: lot.id, since: lot.at, gallery: lot.gallery, n: lot.there(), tag: lot.tag, of_one: terms.sold(lot.tag)?, terms })
}

/// What would come of one piece sold at its tag, by these terms.
///
/// # Errors
/// [`crate::refusal::Refusal::ShareOutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn of_one(shop: &Shop, job: &Job, (tag, terms): (Money, GalleryTerms)) -> Answer<Handed> {
    consignment(shop, job, terms).sold(tag)
}

pub(super) fn consignment(shop: &Shop, job: &Job, terms: GalleryTerms) -> Consignment {
    Consignment {
        tax: shop.tax_of(job),
        keeps: terms.share,
        of: if terms.with_tax { ShareOf::WithTax } else { ShareOf::BeforeTax },
        payer: if terms.maker_pays { Payer::Maker } else { Payer::Gallery },
        tax_on_share: Decimal::ZERO,
    }
}
