//! Before going: go or skip, from what this supplier's hauls were worth.

use super::worth::Worth;
use crate::quantity::sums::{book, over};
use crate::quantity::{Count, Currency, Decimal, Money, Volume, order_by_key};
use crate::refusal::{Answer, Refusal};

/// One past haul of this supplier: its worth by what was really good, and the trips it took.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Past {
    pub worth: Worth,
    pub trips: Count,
}

/// Whether to go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    Go,
    Skip,
    /// Some trips paid and some did not.
    YourCall,
}

/// The one number that decides: the largest of what stood against a trip, by trip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decides {
    /// Your own minutes at pay.
    Minutes(Money),
    Distance(Money),
    Gift(Money),
    /// What the rejects would have replaced.
    Rejects(Money),
    /// So much of the wood, as a share of its volume, replaced nothing: its wood or its price is unknown.
    NoPrice(Decimal),
}

/// What a trip there was worth so far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Outlook {
    pub trips: Count,
    /// Gain of a trip, on the average.
    pub mean: Money,
    /// The least and the most; from [`TRIPS_FOR_RANKS`] on 20 and 80 in 100 by nearest rank.
    pub low: Money,
    pub high: Money,
    pub verdict: Verdict,
    pub decides: Decides,
    /// Pieces of those hauls that are in no figure: without a size, or of a known wood without a price.
    pub left_out: Count,
}

/// Below so many trips the range is from the least to the most. Our judgement, no source.
pub const TRIPS_FOR_RANKS: Count = 5;

/// Wood that replaces nothing decides where it is more than this share of the volume. Our judgement, no source.
pub const NO_PRICE_FROM: Decimal = Decimal::from_parts(5, 0, 0, false, 1);

/// Go, skip or your call, by the gain of each trip so far; `None` without history: what a plain trip there is worth is not known.
/// The trips of one haul share its gain alike. Go where the whole range pays, skip where none of it does.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::haul::go::go;
/// assert_eq!(go(&[]), Ok(None));
/// ```
pub fn go(history: &[Past]) -> Answer<Option<Outlook>> {
    let mut by_trip = history.iter().filter(|past| 0 < past.trips).map(Past::trip).collect::<Answer<Vec<_>>>()?;
    order_by_key(&mut by_trip, |(gain, _)| *gain);
    let Some(first) = history.iter().find(|past| 0 < past.trips) else { return Ok(None) };
    let trips = by_trip.iter().fold(0, |sum: Count, (_, trips)| sum.saturating_add(*trips));
    let (low, high) = if trips < TRIPS_FOR_RANKS { (1, trips) } else { (rank(trips, 1), rank(trips, 4)) };
    let currency = first.worth.gain.currency();
    let at = |place| at_rank(&by_trip, place).map_or(Err(Refusal::OutOfRange), |gain| book(gain, currency));
    let by_trip = ByTrip { history, trips, currency };
    let (mean, low, high) = (by_trip.of(|worth| worth.gain)?, at(low)?, at(high)?);
    let left_out = by_trip.went().fold(0, |sum: Count, worth| sum.saturating_add(worth.left_out));
    Ok(Some(Outlook { trips, mean, low, high, verdict: verdict(low, high), decides: by_trip.decides()?, left_out }))
}

fn verdict(low: Money, high: Money) -> Verdict {
    match (Decimal::ZERO <= low.amount(), Decimal::ZERO <= high.amount()) {
        (true, _) => Verdict::Go,
        (false, true) => Verdict::YourCall,
        (false, false) => Verdict::Skip,
    }
}

impl Past {
    /// The gain of each of its trips, unrounded, and how many they were.
    fn trip(&self) -> Answer<(Decimal, Count)> {
        Ok((over(self.worth.gain.amount(), self.trips.into())?, self.trips))
    }
}

/// The place of the nearest rank for so many fifths: ceil(n x fifths / 5).
fn rank(n: Count, fifths: u64) -> Count {
    let place = u64::from(n).saturating_mul(fifths).div_ceil(5);
    Count::try_from(place).unwrap_or(n)
}

/// The gain at a place, counted from 1, of gains in order that each stand for several trips.
fn at_rank(by_trip: &[(Decimal, Count)], place: Count) -> Option<Decimal> {
    let mut passed: Count = 0;
    let reaches = |(gain, trips): &(Decimal, Count)| {
        passed = passed.saturating_add(*trips);
        (place <= passed).then_some(*gain)
    };
    by_trip.iter().find_map(reaches)
}

/// Sums of a history, by trip.
struct ByTrip<'a> {
    history: &'a [Past],
    trips: Count,
    currency: Currency,
}

impl ByTrip<'_> {
    fn went(&self) -> impl Iterator<Item = &Worth> {
        self.history.iter().filter(|past| 0 < past.trips).map(|past| &past.worth)
    }

    fn of(&self, figure: impl Fn(&Worth) -> Money) -> Answer<Money> {
        let sum = Money::sum(self.currency, self.went().map(figure))?;
        book(over(sum.amount(), self.trips.into())?, self.currency)
    }

    /// Of equals the first: minutes, distance, gift, rejects.
    fn decides(&self) -> Answer<Decides> {
        let nothing = self.share_without_price()?;
        if NO_PRICE_FROM < nothing {
            return Ok(Decides::NoPrice(nothing));
        }
        let rest = [
            Decides::Distance(self.of(|worth| worth.against.distance)?),
            Decides::Gift(self.of(|worth| worth.against.gift)?),
            Decides::Rejects(self.of(|worth| worth.against.rejects)?),
        ];
        let minutes = Decides::Minutes(self.of(|worth| worth.against.minutes)?);
        Ok(rest.into_iter().fold(minutes, |most, next| if most.amount() < next.amount() { next } else { most }))
    }

    fn share_without_price(&self) -> Answer<Decimal> {
        let sum = |of: fn(&Worth) -> Volume| self.went().try_fold(Volume::ZERO, |sum, worth| sum.plus(of(worth)));
        let (nothing, taken) = (sum(|worth| worth.replaces_nothing)?, sum(|worth| worth.taken)?);
        if taken.is_zero() { Ok(Decimal::ZERO) } else { nothing.share_of(taken) }
    }
}

impl Decides {
    fn amount(&self) -> Decimal {
        match self {
            Decides::Minutes(sum) | Decides::Distance(sum) | Decides::Gift(sum) | Decides::Rejects(sum) => sum.amount(),
            Decides::NoPrice(share) => *share,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::haul::worth::Against;

    fn usd(cents: i64) -> Money {
        Money::whole(Decimal::new(cents, 2), Currency::USD).unwrap()
    }

    /// A haul with a gain, and what stood against it: minutes, distance, gift, rejects.
    fn worth(gain: i64, against: [i64; 4]) -> Worth {
        let [minutes, distance, gift, rejects] = against.map(usd);
        Worth {
            replaced: usd(0),
            saved: usd(0),
            cost: usd(0),
            gain: usd(gain),
            against: Against { minutes, distance, gift, rejects },
            left_out: 1,
            taken: Volume::LITRE,
            replaces_nothing: Volume::ZERO,
        }
    }

    fn past(gain: i64, trips: Count) -> Past {
        Past { worth: worth(gain, [0; 4]), trips }
    }

    #[track_caller]
    fn check(history: &[Past], (trips, mean, low, high): (Count, i64, i64, i64), verdict: Verdict) {
        let outlook = go(history).unwrap().unwrap();
        assert_eq!((outlook.trips, outlook.mean, outlook.low, outlook.high), (trips, usd(mean), usd(low), usd(high)));
        assert_eq!(outlook.verdict, verdict);
    }

    #[test]
    fn go_or_skip_by_what_the_trips_were_worth() {
        check(&[past(1_255, 1)], (1, 1_255, 1_255, 1_255), Verdict::Go);
        check(&[past(0, 1)], (1, 0, 0, 0), Verdict::Go);
        check(&[past(-14, 1), past(-500, 1)], (2, -257, -500, -14), Verdict::Skip);
        check(&[past(900, 1), past(-14, 1), past(500, 1)], (3, 462, -14, 900), Verdict::YourCall);
        // Two trips share a gain alike; a haul nobody drove for says nothing of a trip.
        check(&[past(1_001, 2), past(7, 0)], (2, 501, 501, 501), Verdict::Go);
        // From five trips on the two ends by nearest rank: one bad day out of ten decides nothing.
        check(&[-900, 200, 300, 400, 500].map(|gain| past(gain, 1)), (5, 100, -900, 400), Verdict::YourCall);
        check(&[-900, 100, 200, 300, 400, 500, 600, 700, 800, 900].map(|gain| past(gain, 1)), (10, 360, 100, 700), Verdict::Go);
        check(&[past(-900, 1), past(3_600, 9)], (10, 270, 400, 400), Verdict::Go);
    }

    #[test]
    fn without_history_nothing_is_said() {
        assert_eq!((go(&[]), go(&[past(900, 0)])), (Ok(None), Ok(None)));
    }

    #[track_caller]
    fn decides(history: &[Past], wanted: Decides) {
        assert_eq!(go(history).unwrap().unwrap().decides, wanted);
    }

    #[test]
    fn the_largest_of_what_stood_against_it_decides() {
        let one = |against| [Past { worth: worth(0, against), trips: 2 }];
        decides(&one([600, 200, 400, 500]), Decides::Minutes(usd(300)));
        decides(&one([600, 800, 400, 500]), Decides::Distance(usd(400)));
        decides(&one([600, 800, 900, 500]), Decides::Gift(usd(450)));
        decides(&one([600, 800, 900, 901]), Decides::Rejects(usd(451)));
        decides(&one([600, 600, 600, 600]), Decides::Minutes(usd(300)));
        let bare = |feet| {
            let taken = Volume::LITRE.times(4).unwrap();
            let worth = Worth { taken, replaces_nothing: Volume::LITRE.times(feet).unwrap(), ..worth(0, [600, 0, 0, 0]) };
            [Past { worth, trips: 1 }]
        };
        decides(&bare(2), Decides::Minutes(usd(600)));
        decides(&bare(3), Decides::NoPrice(Decimal::new(75, 2)));
    }

    #[test]
    fn currencies_are_never_mixed() {
        let euro = Money::zero(Currency::EUR);
        let other = Past { worth: Worth { gain: euro, ..worth(0, [0; 4]) }, trips: 1 };
        assert!(matches!(go(&[past(1, 1), other]), Err(Refusal::CurrenciesMixed { .. })));
    }
}
