//! What the sheets of a haul that is home have in common.

use super::shop::Shop;
use super::worth::yard;
use crate::haul::Haul;
use crate::haul::worth::YardTrip;
use crate::quantity::Span;
use crate::refusal::Answer;

/// The trip to the timber yard, where the haul saved one and the way there can be priced.
pub(super) fn saved(shop: &Shop, haul: &Haul) -> Answer<Option<YardTrip>> {
    Ok(yard(shop, haul)?.filter(|_| haul.saves_trip))
}

/// A drive that nobody said the length or the minutes of.
pub(super) fn is_half_said(haul: &Haul) -> bool {
    haul.trips.iter().any(|trip| trip.distance.is_none() || trip.whole_wheel() <= Span::ZERO)
}
