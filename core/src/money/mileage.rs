//! Published rates for a business mile, as examples beside the maker's own rate. Never used unasked.

use crate::quantity::{Day, Decimal};

/// A published rate for each mile, from its first day until the next one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Published {
    /// Year, month, day.
    pub from: (i32, u32, u32),
    pub per_mile: Decimal,
}

/// US optional standard rates, in dollars: annual notices of the Internal Revenue Service (IRS), read as accountants tabulate them
/// (cpa1931.com, taxformprocessing.com), not in the notices themselves. `tests/checks/us_mileage_rates.csv` holds them.
pub const US: [Published; 11] = [
    rate((2017, 1, 1), 535),
    rate((2018, 1, 1), 545),
    rate((2019, 1, 1), 580),
    rate((2020, 1, 1), 575),
    rate((2021, 1, 1), 560),
    rate((2022, 1, 1), 585),
    rate((2022, 7, 1), 625),
    rate((2023, 1, 1), 655),
    rate((2024, 1, 1), 670),
    rate((2025, 1, 1), 700),
    rate((2026, 1, 1), 725),
];

const fn rate(from: (i32, u32, u32), tenths_of_a_cent: u32) -> Published {
    Published { from, per_mile: Decimal::from_parts(tenths_of_a_cent, 0, 0, false, 3) }
}

/// The published rate of a day; none for a day before the table or a year after it.
///
/// ```
/// use fivebar_core::{money::mileage::us, quantity::{Day, Decimal}};
/// assert_eq!(us(Day::ymd(2026, 3, 3).unwrap()), Some(Decimal::new(725, 3)));
/// ```
pub fn us(day: Day) -> Option<Decimal> {
    let date = day.as_ymd();
    let last = US.iter().rev().find(|p| p.from <= date)?;
    let newest = US.last()?;
    (date.0 <= newest.from.0).then_some(last.per_mile)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::d;

    #[track_caller]
    fn check(year: i32, month: u32, day: u32, wanted: Option<&str>) {
        assert_eq!(us(Day::ymd(year, month, day).unwrap()), wanted.map(d));
    }

    #[test]
    fn a_rate_holds_until_the_next() {
        check(2016, 12, 31, None);
        check(2017, 1, 1, Some("0.535"));
        check(2022, 6, 30, Some("0.585"));
        check(2022, 7, 1, Some("0.625"));
        check(2026, 12, 31, Some("0.725"));
        check(2027, 1, 1, None);
    }
}
