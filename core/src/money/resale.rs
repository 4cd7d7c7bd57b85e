//! A shop that buys a piece to sell it again: what it pays for it, and the tag that follows.

use super::point::{Points, Rounding};
use super::sums::{book, less, over, share, times};
use super::tax::Tax;
use crate::quantity::{Decimal, Money, Side};
use crate::refusal::Answer;

/// What the shop keeps of its price before tax, and the tax on what its buyers pay. The maker's own invoice to it is before tax.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Resale {
    pub keeps: Decimal,
    pub tax: Tax,
}

/// Half of its price: it asks twice what it pays. Common practice, no source.
pub const USUAL_KEEPS: Decimal = Decimal::from_parts(5, 0, 0, false, 1);

impl Resale {
    /// The tag that follows from what the shop pays, up to a price point: pays / (1 - keeps), and the tax where that is inside the tag.
    ///
    /// # Errors
    /// [`ShareOutOfRange`](crate::refusal::Refusal::ShareOutOfRange), [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    ///
    /// ```
    /// use fivebar_core::money::{point::Points, resale::{Resale, USUAL_KEEPS}, tax::Tax};
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// let shop = Resale { keeps: USUAL_KEEPS, tax: Tax::NONE };
    /// let pays = Money::book(Decimal::from(70), Currency::USD).unwrap();
    /// assert_eq!(shop.tag(pays, Points::Five).unwrap().to_string(), "140.00 USD");
    /// ```
    pub fn tag(self, pays: Money, points: Points) -> Answer<Money> {
        let before = over(pays.amount(), self.left()?)?;
        let tag = if self.tax.side == Side::Inside { times(before, self.tax.factor()?)? } else { before };
        points.round(tag, Rounding::Up, pays.currency())
    }

    /// What the shop pays, before tax, for a piece with this tag.
    ///
    /// # Errors
    /// [`ShareOutOfRange`](crate::refusal::Refusal::ShareOutOfRange), [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    ///
    /// ```
    /// use fivebar_core::money::{resale::Resale, tax::Tax};
    /// use fivebar_core::quantity::{Currency, Decimal, Money, Side};
    /// let shop = Resale { keeps: Decimal::new(5, 1), tax: Tax { rate: Decimal::new(55, 3), side: Side::Inside } };
    /// let tag = Money::book(Decimal::from(145), Currency::USD).unwrap();
    /// assert_eq!(shop.pays(tag).unwrap().to_string(), "68.72 USD"); // 145 / 1.055 / 2
    /// ```
    pub fn pays(self, tag: Money) -> Answer<Money> {
        let before = if self.tax.side == Side::Inside { over(tag.amount(), self.tax.factor()?)? } else { tag.amount() };
        book(times(before, self.left()?)?, tag.currency())
    }

    fn left(self) -> Answer<Decimal> {
        less(Decimal::ONE, share(self.keeps)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, usd};
    use crate::refusal::Refusal;

    fn shop(keeps: &str, side: Side) -> Resale {
        Resale { keeps: d(keeps), tax: Tax { rate: d("0.055"), side } }
    }

    #[track_caller]
    fn check(keeps: &str, side: Side, pays: &str, tag: &str) {
        assert_eq!(shop(keeps, side).tag(usd(pays), Points::Five), Ok(usd(tag)));
    }

    /// 138 / 0.5 is 276, 291.18 with tax; 138 / 0.6 is 230, 242.65 with tax.
    #[test]
    fn the_tag_follows_from_what_the_shop_pays() {
        check("0.5", Side::Inside, "138", "295");
        check("0.5", Side::Top, "138", "280");
        check("0.4", Side::Inside, "138", "245");
        check("0.4", Side::Top, "138", "230");
        check("0", Side::Top, "138", "140");
    }

    /// Law: at the tag that follows the shop pays what it must, or more; and no point below would do.
    #[test]
    fn at_its_tag_the_shop_pays_what_it_must() {
        for cents in (1..60_000).step_by(487) {
            for (keeps, side) in [("0.5", Side::Inside), ("0.37", Side::Top), ("0.334", Side::Inside)] {
                for points in [Points::Minor, Points::Five, Points::Nine] {
                    let (shop, must) = (shop(keeps, side), usd(&Decimal::new(cents, 2).to_string()));
                    let tag = shop.tag(must, points).unwrap();
                    assert!(must.amount() <= shop.pays(tag).unwrap().amount(), "{must} {tag}");
                    let Some(lower) = tag.minus(usd("0.01")).ok().filter(|lower| points == Points::Minor && Decimal::ZERO < lower.amount())
                    else {
                        continue;
                    };
                    assert!(shop.pays(lower).unwrap().amount() <= must.amount(), "{must} {tag}");
                }
            }
        }
    }

    #[test]
    fn a_shop_that_keeps_all_is_refused() {
        assert_eq!(shop("1", Side::Top).pays(usd("10")), Err(Refusal::ShareOutOfRange { met: d("1") }));
        assert_eq!(shop("1", Side::Top).tag(usd("10"), Points::One), Err(Refusal::ShareOutOfRange { met: d("1") }));
    }
}
