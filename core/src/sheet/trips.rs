//! Where the minutes of trips and hauls come from: by the phone's stamps, put right, or told afterwards.

use super::shop::Shop;
use crate::bench::{Shares, Source};
use crate::haul::{Haul, Trip};
use crate::quantity::{Decimal, Span};

/// The minutes of a trip. What was said in place of stamps that gave minutes was put right; without such it was written down afterwards.
pub(super) fn of_trip(trip: &Trip) -> Shares {
    let from = |said: Option<Span>, stamped: Span| match said {
        None => Source::Measured,
        Some(said) if said == stamped => Source::Measured,
        Some(_) if Span::ZERO < stamped => Source::Corrected,
        Some(_) => Source::Recalled,
    };
    Shares::default()
        .with(from(trip.wheel_said, trip.stamped_wheel()), trip.wheel())
        .with(from(trip.bin_said, trip.stamped_bin()), trip.bin())
}

/// All minutes of a haul: its trips, and what was clocked on it and stands.
pub(super) fn of_haul(shop: &Shop, haul: &Haul) -> Shares {
    haul.trips.iter().map(of_trip).fold(shop.bench.of_haul(haul.id, shop.now).own, Shares::plus)
}

/// A part of such minutes: by the same shares, and no millisecond more or less.
pub(super) fn part_of(all: Shares, part: Span) -> Shares {
    let up_to = |some: Span| {
        let ms = Decimal::from(part.as_ms()).checked_mul(Decimal::from(some.as_ms()));
        let ms = ms.and_then(|ms| ms.checked_div(Decimal::from(all.total().as_ms())));
        ms.and_then(|ms| i64::try_from(ms.floor()).ok()).map_or(part, Span::ms)
    };
    let [first, second] = [up_to(all.measured), up_to(all.measured.plus(all.corrected))];
    Shares { measured: first, corrected: second.minus(first), recalled: part.minus(second) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_has_the_shares_of_the_whole_and_loses_nothing() {
        let check = |all: [i64; 3], part: i64, expected: [i64; 3]| {
            let [measured, corrected, recalled] = all.map(Span::minutes);
            let found = part_of(Shares { measured, corrected, recalled }, Span::minutes(part));
            assert_eq!([found.measured, found.corrected, found.recalled].map(Span::as_minutes), expected, "{part} of {all:?}");
            assert_eq!(found.total(), Span::minutes(part));
        };
        check([60, 30, 30], 60, [30, 15, 15]);
        check([60, 0, 60], 30, [15, 0, 15]);
        check([0, 0, 77], 31, [0, 0, 31]);
        check([0, 77, 0], 31, [0, 31, 0]);
        check([77, 0, 0], 31, [31, 0, 0]);
        check([0, 0, 0], 31, [31, 0, 0]);
        // Of 7 by thirds each has two and a bit.
        check([1, 1, 1], 7, [2, 2, 2]);
    }
}
