//! A sum so far from the tags of its pieces that its decimal sign was lost, or a digit typed too many or left out.

use super::{in_coins, shop};
use crate::app::App;
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::money::tax::Tax;
use fivebar_core::quantity::{Count, Decimal, Id, Money};

/// So many times what the tags come to and more, or so small a part of it and less, is asked about once before it is written down [J].
const FAR: Decimal = Decimal::from_parts(5, 0, 0, false, 0);

/// On which side of its tags a sum lies far away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Far {
    Over,
    Under,
}

/// Where a sum lies that is far from what the tags come to.
pub fn far(sum: Money, tags: Money) -> Option<Far> {
    let reaches = |one: Money, other: Money| {
        let far = other.amount().checked_mul(FAR).filter(|far| Decimal::ZERO < *far);
        one.currency() == other.currency() && far.is_some_and(|far| far <= one.amount())
    };
    match () {
        () if reaches(sum, tags) => Some(Far::Over),
        () if reaches(tags, sum) || (sum.is_zero() && !tags.is_zero()) => Some(Far::Under),
        () => None,
    }
}

/// What the tags of so many pieces come to for a buyer, where a sum lies far from it.
pub fn far_from_tags(app: &App, (job, n): (Id, Count), sum: Money, (tax, paid): (Option<Tax>, Option<Paid>)) -> Option<(Far, Money)> {
    let shop = shop(app);
    let job = shop.job(job).ok()?;
    let tags = tax.unwrap_or(shop.tax_of(&job)).charge(job.tag?.times(n).ok()?).ok()?;
    let tags = paid.map_or(tags, |paid| in_coins(app, paid, tags));
    Some((far(sum, tags)?, tags))
}
