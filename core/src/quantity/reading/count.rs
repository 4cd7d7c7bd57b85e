//! Bare numbers: pieces (whole only), per cent, and plain figures such as enquiries a week.

use super::super::{Count, Decimal, half_up};
use super::number::{self, NoNumeral};
use super::settle::both;
use super::{Misread, Quantity, Read, Sign, tidy};
use std::ops::RangeInclusive;

/// Decimals a bare number may have.
const DECIMALS: u32 = 6;

/// Pieces, up to `most`.
///
/// # Errors
/// [`Misread::NotWhole`] for part of a piece, [`Misread::OutOfRange`] past `most`, and those any text may meet.
///
/// ```
/// use fivebar_core::quantity::{Decimal, PILE_MOST, reading::{Misread, Sign, count}};
/// assert_eq!(count("31", Sign::Point, PILE_MOST), Ok(31));
/// assert_eq!(count("2.5", Sign::Point, PILE_MOST), Err(Misread::NotWhole { met: Decimal::new(25, 1), might_be: None }));
/// ```
pub fn count(text: &str, sign: Sign, most: Count) -> Read<Count> {
    count_within(text, sign, 0..=most)
}

/// Pieces within limits of their own: at least one of a part.
///
/// # Errors
/// As [`count`], and [`Misread::OutOfRange`] below the least.
///
/// ```
/// use fivebar_core::quantity::{PILE_MOST, reading::{Sign, count_within}};
/// assert_eq!(count_within("1", Sign::Point, 1..=PILE_MOST), Ok(1));
/// assert!(count_within("0", Sign::Point, 1..=PILE_MOST).is_err());
/// ```
pub fn count_within(text: &str, sign: Sign, limits: RangeInclusive<Count>) -> Read<Count> {
    bare(tidy(text)?, sign, Quantity::Count, |figure, _| {
        let [least, most] = [limits.start(), limits.end()].map(|n| Quantity::Count(*n));
        let out = |met| Misread::OutOfRange { met, least, most, might_be: None };
        let Some(figure) = figure else { return Err(out(None)) };
        if !figure.is_integer() {
            return Err(Misread::NotWhole { met: figure, might_be: None });
        }
        let met = Count::try_from(figure).map_err(|_| out(None))?;
        if limits.contains(&met) { Ok(met) } else { Err(out(Some(Quantity::Count(met)))) }
    })
}

/// Per cent as said, 0 to 100, with or without its sign: moisture, a tax, a fee.
///
/// # Errors
/// Those of [`number`].
///
/// ```
/// use fivebar_core::quantity::{Decimal, reading::{Sign, percent}};
/// assert_eq!(percent("5.5 %", Sign::Point), Ok(Decimal::new(55, 1)));
/// assert_eq!(percent("5,5", Sign::Comma), Ok(Decimal::new(55, 1)));
/// ```
pub fn percent(text: &str, sign: Sign) -> Read<Decimal> {
    let text = tidy(text)?;
    let text = text.strip_suffix('%').map(str::trim_end).filter(|digits| !digits.is_empty()).unwrap_or(text);
    let limits = Decimal::ZERO..=Decimal::ONE_HUNDRED;
    bare(text, sign, Quantity::Percent, |figure, cut| plain(figure, cut, Quantity::Percent, &limits))
}

/// A bare number within limits, with up to six decimals.
///
/// # Errors
/// [`Misread::Ambiguous`], [`Misread::TooFine`], [`Misread::OutOfRange`], and those any text may meet.
///
/// ```
/// use fivebar_core::quantity::{Decimal, reading::{Sign, number}};
/// assert_eq!(number("0.725", Sign::Point, Decimal::ZERO..=Decimal::TEN), Ok(Decimal::new(725, 3)));
/// ```
pub fn number(text: &str, sign: Sign, limits: RangeInclusive<Decimal>) -> Read<Decimal> {
    bare(tidy(text)?, sign, Quantity::Number, |figure, cut| plain(figure, cut, Quantity::Number, &limits))
}

fn plain(figure: Option<Decimal>, cut: bool, kind: fn(Decimal) -> Quantity, limits: &RangeInclusive<Decimal>) -> Read<Decimal> {
    let out = |met| Misread::OutOfRange { met, least: kind(*limits.start()), most: kind(*limits.end()), might_be: None };
    let Some(figure) = figure else { return Err(out(None)) };
    let nearest = half_up(figure, DECIMALS);
    if !limits.contains(&figure) {
        Err(out(Some(kind(nearest))))
    } else if cut || nearest != figure {
        Err(Misread::TooFine { nearest: kind(nearest) })
    } else {
        Ok(figure)
    }
}

/// The numeral of a text without unit, in each reading it may have. `make` gets nothing where it is more than we can hold.
pub(super) fn bare<Q>(text: &str, sign: Sign, kind: fn(Q) -> Quantity, make: impl Fn(Option<Decimal>, bool) -> Read<Q>) -> Read<Q> {
    match number::numeral(text, sign) {
        Err(NoNumeral::Malformed) => Err(Misread::NotANumber { met: text.into() }),
        Err(NoNumeral::TooBig) => make(None, false),
        Ok(n) => match n.grouped {
            Some(grouped) => Err(both(make(Some(grouped), false).map(kind), make(Some(n.decimal), n.cut).map(kind))),
            None => make(Some(n.decimal), n.cut),
        },
    }
}
