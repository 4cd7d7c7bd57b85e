//! A piece left with a gallery: what it hands over, by whose share is taken when and who sends in the tax.

use super::point::{Points, Rounding};
use super::sums::{book, less, not_below_nothing, over, plus, share, times};
use super::tax::Tax;
use crate::quantity::{Currency, Decimal, Money};
use crate::refusal::{Answer, Refusal};

/// What the gallery's share is taken of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShareOf {
    BeforeTax,
    WithTax,
}

/// Who sends the tax on the sale to the tax office.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Payer {
    Gallery,
    Maker,
}

/// The agreement with a gallery.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Consignment {
    pub tax: Tax,
    /// The gallery's share, 0.4 for forty per cent.
    pub keeps: Decimal,
    pub of: ShareOf,
    pub payer: Payer,
    /// Tax the gallery puts on its own share (VAT between registered businesses); nothing otherwise.
    pub tax_on_share: Decimal,
}

/// A consigned sale, booked: `gallery + gallery_tax + handed_over`, with the tax where the gallery pays it, is the charge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Handed {
    pub charge: Money,
    pub tax: Money,
    pub gallery: Money,
    pub gallery_tax: Money,
    pub handed_over: Money,
    /// What stays with the maker after the tax the maker sends in.
    pub you_get: Money,
}

impl Consignment {
    /// What comes of a tag sold by the gallery. The maker's part is booked first, the gallery keeps the rest.
    ///
    /// # Errors
    /// [`ShareOutOfRange`](crate::refusal::Refusal::ShareOutOfRange), [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    ///
    /// ```
    /// use fivebar_core::money::{consign::{Consignment, Payer, ShareOf}, tax::Tax};
    /// use fivebar_core::quantity::{Currency, Decimal, Money, Side};
    /// let plants = Consignment {
    ///     tax: Tax { rate: Decimal::new(55, 3), side: Side::Inside },
    ///     keeps: Decimal::new(4, 1),
    ///     of: ShareOf::BeforeTax,
    ///     payer: Payer::Gallery,
    ///     tax_on_share: Decimal::ZERO,
    /// };
    /// let sold = plants.sold(Money::book(Decimal::from(145), Currency::USD).unwrap()).unwrap();
    /// assert_eq!(sold.you_get.to_string(), "82.46 USD");
    /// ```
    pub fn sold(&self, tag: Money) -> Answer<Handed> {
        self.sold_for(self.tax.charge(tag)?)
    }

    /// What comes of a piece for which the buyer handed over `charge`, with tax.
    ///
    /// # Errors
    /// [`ShareOutOfRange`](crate::refusal::Refusal::ShareOutOfRange), [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    pub fn sold_for(&self, charge: Money) -> Answer<Handed> {
        let apart = self.tax.apart(charge)?;
        let gallery = self.gallery(charge, apart.before)?;
        let gallery_tax = book(times(gallery.amount(), not_below_nothing(self.tax_on_share)?)?, charge.currency())?;
        let after_gallery = charge.minus(gallery)?.minus(gallery_tax)?;
        let you_get = after_gallery.minus(apart.tax)?;
        let handed_over = if self.payer == Payer::Gallery { you_get } else { after_gallery };
        Ok(Handed { charge, tax: apart.tax, gallery, gallery_tax, handed_over, you_get })
    }

    /// The least tag on a price point of which what you get, as booked, covers a need.
    ///
    /// # Errors
    /// [`FeesEatThePrice`](Refusal::FeesEatThePrice) where share and tax leave nothing of a tag, [`ShareOutOfRange`](Refusal::ShareOutOfRange),
    /// [`BelowNothing`](Refusal::BelowNothing), [`MoneyOutOfRange`](Refusal::MoneyOutOfRange).
    ///
    /// ```
    /// use fivebar_core::money::{consign::{Consignment, Payer, ShareOf}, point::Points, tax::Tax};
    /// use fivebar_core::quantity::{Currency, Decimal};
    /// let (keeps, of, payer) = (Decimal::new(4, 1), ShareOf::WithTax, Payer::Maker);
    /// let gallery = Consignment { tax: Tax::NONE, keeps, of, payer, tax_on_share: Decimal::ZERO };
    /// assert_eq!(gallery.tag_for(Decimal::from(60), Points::Five, Currency::USD).unwrap().to_string(), "100.00 USD");
    /// ```
    pub fn tag_for(&self, need: Decimal, points: Points, currency: Currency) -> Answer<Money> {
        let factor = self.tax.factor()?;
        let before = over(Decimal::ONE, factor)?;
        let gallery = times(if self.of == ShareOf::BeforeTax { before } else { Decimal::ONE }, share(self.keeps)?)?;
        let kept = less(before, times(gallery, plus(Decimal::ONE, not_below_nothing(self.tax_on_share)?)?)?)?;
        if kept <= Decimal::ZERO {
            return Err(Refusal::FeesEatThePrice { tax: self.tax.rate, fee: self.keeps });
        }
        // Each line is rounded by half a minor unit: two units below the exact charge nothing covers.
        let slack = times(super::sums::minor(currency), Decimal::TWO)?;
        let mut tag = points.round(self.tax.tag(over(less(need, slack)?, kept)?)?, Rounding::Up, currency)?;
        for _ in 0..super::price::MOST_STEPS {
            if need <= self.sold(tag)?.you_get.amount() {
                return Ok(tag);
            }
            tag = points.above(tag)?;
        }
        Err(Refusal::FeesEatThePrice { tax: self.tax.rate, fee: self.keeps })
    }

    /// The tax inside what the buyers handed over, from what the gallery handed over of it where the maker sends the tax in: then the
    /// gallery handed over all but its share, so that charge = handed over / (1 - share of it), half up.
    ///
    /// # Errors
    /// [`ShareOutOfRange`](crate::refusal::Refusal::ShareOutOfRange), [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    pub fn tax_in(&self, handed_over: Money) -> Answer<Money> {
        let with_its_tax = times(share(self.keeps)?, plus(Decimal::ONE, not_below_nothing(self.tax_on_share)?)?)?;
        let factor = self.tax.factor()?;
        let keeps = if self.of == ShareOf::BeforeTax { over(with_its_tax, factor)? } else { with_its_tax };
        let charge = over(handed_over.amount(), less(Decimal::ONE, keeps)?)?;
        book(less(charge, over(charge, factor)?)?, handed_over.currency())
    }

    fn gallery(&self, charge: Money, before: Money) -> Answer<Money> {
        let (base, exact) = match self.of {
            ShareOf::BeforeTax => (before, over(charge.amount(), self.tax.factor()?)?),
            ShareOf::WithTax => (charge, charge.amount()),
        };
        let makers = book(times(exact, less(Decimal::ONE, share(self.keeps)?)?)?, charge.currency())?;
        base.minus(makers)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, usd};
    use crate::quantity::Side;

    fn agreed(of: ShareOf, payer: Payer) -> Consignment {
        Consignment { tax: Tax { rate: d("0.055"), side: Side::Inside }, keeps: d("0.4"), of, payer, tax_on_share: d("0") }
    }

    #[track_caller]
    fn check(of: ShareOf, payer: Payer, handed_over: &str, you_get: &str) {
        let sold = agreed(of, payer).sold(usd("145")).unwrap();
        assert_eq!((sold.handed_over, sold.you_get), (usd(handed_over), usd(you_get)));
        let parts = [sold.gallery, sold.gallery_tax, sold.you_get, sold.tax];
        assert_eq!(Money::sum(sold.charge.currency(), parts), Ok(sold.charge));
    }

    #[test]
    fn whose_share_of_what_and_who_pays_the_tax() {
        check(ShareOf::BeforeTax, Payer::Gallery, "82.46", "82.46");
        check(ShareOf::BeforeTax, Payer::Maker, "90.02", "82.46");
        check(ShareOf::WithTax, Payer::Gallery, "79.44", "79.44");
        check(ShareOf::WithTax, Payer::Maker, "87.00", "79.44");
    }

    /// 145 less 5.5 % inside is 137.4408; 60 % of it 82.46, with the tax of 7.56 90.02. Sold at 120: 113.7441, 68.25 and 6.26: 74.51.
    #[test]
    fn the_tax_of_what_was_paid_is_found_from_what_was_handed_over() {
        for (of, charge, handed_over, tax) in [
            (ShareOf::BeforeTax, "145", "90.02", "7.56"),
            (ShareOf::BeforeTax, "120", "74.51", "6.26"),
            (ShareOf::WithTax, "145", "87.00", "7.56"),
            (ShareOf::WithTax, "120", "72.00", "6.26"),
        ] {
            let terms = agreed(of, Payer::Maker);
            let sold = terms.sold_for(usd(charge)).unwrap();
            assert_eq!((sold.handed_over, sold.tax, terms.tax_in(sold.handed_over)), (usd(handed_over), usd(tax), Ok(usd(tax))));
        }
    }

    /// Law: what you get of the tag covers the need, and of the point below it does not.
    #[test]
    fn the_tag_for_a_need_is_the_least_that_covers_it() {
        for mills in (10..300_000).step_by(7_919) {
            for (of, payer) in [(ShareOf::BeforeTax, Payer::Gallery), (ShareOf::WithTax, Payer::Maker)] {
                let (need, gallery) = (Decimal::new(mills, 3), agreed(of, payer));
                let tag = gallery.tag_for(need, Points::Five, usd("1").currency()).unwrap();
                let get = |tag| gallery.sold(tag).unwrap().you_get.amount();
                assert!(need <= get(tag), "{need} {tag}");
                assert!(tag == usd("5") || get(tag.minus(usd("5")).unwrap()) < need, "{need} {tag}");
            }
        }
    }

    /// A tax of one whole leaves half of a charge, and a gallery that keeps six tenths of the charge takes more.
    #[test]
    fn a_gallery_and_a_tax_that_leave_nothing_are_refused() {
        let tax = Tax { rate: d("1"), side: Side::Inside };
        let greedy = Consignment { tax, keeps: d("0.6"), ..agreed(ShareOf::WithTax, Payer::Maker) };
        let refused = Refusal::FeesEatThePrice { tax: d("1"), fee: d("0.6") };
        assert_eq!(greedy.tag_for(d("10"), Points::One, usd("1").currency()), Err(refused));
    }

    #[test]
    fn a_gallery_that_keeps_all_is_refused() {
        let all = Consignment { keeps: d("1"), ..agreed(ShareOf::WithTax, Payer::Maker) };
        assert_eq!(all.sold(usd("145")), Err(Refusal::ShareOutOfRange { met: d("1") }));
    }
}
