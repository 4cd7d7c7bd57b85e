//! Sums step by step, each step checked, nothing rounded on the way. Invariants 7 and 8.

use super::{Currency, Decimal, Money, Span, half_up};
use crate::refusal::{Answer, Refusal};

/// Digits kept when a sum that was divided is put right again: a third times three is one.
const KEPT: u32 = 18;
const HOUR_MS: i64 = 3_600_000;

pub fn plus(a: Decimal, b: Decimal) -> Answer<Decimal> {
    a.checked_add(b).ok_or(Refusal::OutOfRange)
}

pub fn less(a: Decimal, b: Decimal) -> Answer<Decimal> {
    a.checked_sub(b).ok_or(Refusal::OutOfRange)
}

pub fn times(a: Decimal, b: Decimal) -> Answer<Decimal> {
    a.checked_mul(b).ok_or(Refusal::OutOfRange)
}

pub fn over(a: Decimal, b: Decimal) -> Answer<Decimal> {
    if b.is_zero() { Err(Refusal::NothingToShareBy) } else { a.checked_div(b).ok_or(Refusal::OutOfRange) }
}

/// So much an hour for that long: multiplied before it is divided.
pub fn for_time(per_hour: Decimal, time: Span) -> Answer<Decimal> {
    over(times(per_hour, Decimal::from(time.as_ms()))?, Decimal::from(HOUR_MS))
}

/// So much an hour, when `sum` is spread over that long.
pub fn per_hour(sum: Decimal, time: Span) -> Answer<Decimal> {
    if time.as_ms() <= 0 {
        return Err(Refusal::NoHours);
    }
    over(times(sum, Decimal::from(HOUR_MS))?, Decimal::from(time.as_ms()))
}

/// So many hours as a span, to the millisecond.
pub fn hours(hours: Decimal) -> Answer<Span> {
    let ms = half_up(times(not_below_nothing(hours)?, Decimal::from(HOUR_MS))?, 0);
    i64::try_from(ms).map(Span::ms).map_err(|_| Refusal::OutOfRange)
}

/// The same without the dust a division leaves behind its 18th decimal.
pub fn clean(sum: Decimal) -> Decimal {
    half_up(sum, KEPT)
}

/// A booked line, half up to the minor unit, of a sum that may carry the dust of a division.
pub fn book(sum: Decimal, currency: Currency) -> Answer<Money> {
    Money::book(clean(sum), currency)
}

/// One minor unit.
pub fn minor(currency: Currency) -> Decimal {
    Decimal::new(1, currency.digits())
}

/// A share from nothing up to, but not reaching, the whole.
pub fn share(met: Decimal) -> Answer<Decimal> {
    if Decimal::ZERO <= met && met < Decimal::ONE { Ok(met) } else { Err(Refusal::ShareOutOfRange { met }) }
}

/// A figure that makes no sense below nothing.
pub fn not_below_nothing(met: Decimal) -> Answer<Decimal> {
    if met < Decimal::ZERO { Err(Refusal::BelowNothing { met }) } else { Ok(met) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    #[test]
    fn a_tie_survives_a_division() {
        let five_sixths = over(d("5"), d("6")).unwrap();
        assert_eq!(book(times(d("0.03"), five_sixths).unwrap(), Currency::USD).unwrap().amount(), d("0.03"));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(per_hour(d("1"), Span::ZERO), Err(Refusal::NoHours));
        assert_eq!(over(d("1"), Decimal::ZERO), Err(Refusal::NothingToShareBy));
        assert_eq!(times(Decimal::MAX, d("2")), Err(Refusal::OutOfRange));
        assert_eq!(share(Decimal::ONE), Err(Refusal::ShareOutOfRange { met: Decimal::ONE }));
        assert_eq!(not_below_nothing(d("-1")), Err(Refusal::BelowNothing { met: d("-1") }));
    }
}
