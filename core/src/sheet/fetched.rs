//! What the sheets of a haul that is home have in common: what equal boards cost, and the trip to the timber yard it saved.

use super::shop::Shop;
use crate::haul::Haul;
use crate::haul::worth::{Boards, YardTrip};
use crate::ledger::kind::haul::Per;
use crate::money::cost::{DistanceRate, distance};
use crate::quantity::{Currency, Decimal, Key, Length, Span};
use crate::refusal::Answer;
use crate::wood::species::UNKNOWN_HARDWOOD;

/// What equal boards of a wood cost by the maker's own prices, in the haul's currency.
pub(super) fn boards(shop: &Shop, currency: Currency, wood: Option<&Key>) -> Boards {
    let Some(wood) = wood.filter(|wood| wood.as_str() != UNKNOWN_HARDWOOD.key) else { return Boards::WoodUnknown };
    let price = shop.workshop.board_price(currency, Some(wood));
    price.map_or(Boards::PriceUnknown, |price| Boards::At { amount: price.amount, per: price.per })
}

/// What an hour should pay, as the maker said it.
pub(super) fn pay(shop: &Shop, currency: Currency) -> Option<Decimal> {
    shop.workshop.rates.get(&currency).and_then(|rate| rate.pay)
}

/// The trip to the timber yard, where the haul saved one and the way there can be priced.
pub(super) fn saved(shop: &Shop, haul: &Haul) -> Answer<Option<YardTrip>> {
    let (wood, till) = (&shop.workshop.wood, shop.till(haul.currency));
    let way = wood.yard_distance.zip(till.mileage.zip(till.per)).filter(|_| haul.saves_trip);
    let Some((far, (amount, per))) = way else { return Ok(None) };
    let per = if per == Per::Mile { Length::MILE } else { Length::KM };
    let distance = distance(far, DistanceRate { amount, per }, haul.currency)?;
    Ok(Some(YardTrip { distance, time: wood.yard_span.unwrap_or(Span::ZERO) }))
}

/// A drive that nobody said the length or the minutes of.
pub(super) fn is_half_said(haul: &Haul) -> bool {
    haul.trips.iter().any(|trip| trip.distance.is_none() || trip.whole_wheel() <= Span::ZERO)
}
