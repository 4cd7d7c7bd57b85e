//! Lengths and distances: `3 5/8`, `3-5/8`, `3.625`, `2' 6 1/2"`, `92 mm`, `9.2cm`, `37 km`; thickness by quarter names too.
//!
//! Inches are kept to five decimals or to a 64th; metric to the nanometre, which holds any of both.

use super::super::{Decimal, Length, Units};
use super::settle::{Pick, Worth, in_order, settle, worth};
use super::terms::{Term, terms};
use super::{Misread, Quantity, Read, Typing, tidy};
use crate::quantity::Listed;
use std::ops::RangeInclusive;

/// A hundred-thousandth of an inch, exactly 254 nm.
const INCH_FINEST: i64 = 254;
const MICROMETRE: i64 = 1_000;

/// One side of a piece.
///
/// # Errors
/// Each of [`Misread`] but `NotWhole`.
///
/// ```
/// use fivebar_core::quantity::{Length, Units, reading::{Sign, Typing, length}};
/// let typing = Typing { units: Units::Inch, sign: Sign::Point };
/// assert_eq!(length("3 5/8", typing), Length::nm(92_075_000).map_err(|_| unreachable!()));
/// assert_eq!(length("92.075 mm", typing), length("3-5/8\"", typing));
/// ```
pub fn length(text: &str, typing: Typing) -> Read<Length> {
    length_within(text, typing, Length::PIECE_LEAST..=Length::PIECE_MOST)
}

/// A length with limits of its own: a kerf, a bed, a doorway.
///
/// # Errors
/// As [`length`].
pub fn length_within(text: &str, typing: Typing, limits: RangeInclusive<Length>) -> Read<Length> {
    let terms = terms(tidy(text)?, typing.sign)?;
    let units = units_of(&terms, typing.units)?;
    settle(&terms, Quantity::Length, |pick| one(&terms, &units, pick, &limits))
}

/// A thickness: a length, or a quarter name as sawmills say it: `5/4`.
///
/// # Errors
/// As [`length`]. A quarter name has 4 below and 1 to 32 above; `5/4` is 1 1/4 in whatever units the book is kept in.
///
/// ```
/// use fivebar_core::quantity::{Units, reading::{Sign, Typing, length, thickness}};
/// let metric = Typing { units: Units::Metric, sign: Sign::Comma };
/// assert_eq!(thickness("5/4", metric), length("1 1/4 in", metric));
/// assert_eq!(thickness("32", metric), length("32 mm", metric));
/// ```
pub fn thickness(text: &str, typing: Typing) -> Read<Length> {
    let quarters = text.trim().strip_suffix("/4").and_then(|top| top.parse::<u8>().ok());
    match quarters {
        Some(1..=32) => length(text, Typing { units: Units::Inch, ..typing }),
        _ => length(text, typing),
    }
}

/// How far was driven: miles or kilometres, by the units of the book.
///
/// # Errors
/// As [`length`].
///
/// ```
/// use fivebar_core::quantity::{Length, Units, reading::{Sign, Typing, distance}};
/// let typing = Typing { units: Units::Inch, sign: Sign::Point };
/// assert_eq!(distance("23", typing), Ok(Length::MILE.times(23).unwrap()));
/// assert_eq!(distance("37 km", typing), Ok(Length::KM.times(37).unwrap()));
/// ```
pub fn distance(text: &str, typing: Typing) -> Read<Length> {
    let terms = terms(tidy(text)?, typing.sign)?;
    let [term] = terms.as_slice() else { return Err(Misread::NotANumber { met: text.trim().into() }) };
    let unit = match (term.unit.as_deref(), typing.units) {
        (None, Units::Inch) | (Some("mi" | "mile" | "miles"), _) => Length::MILE,
        (None, Units::Metric) | (Some("km"), _) => Length::KM,
        (Some(met), _) => return Err(Misread::UnknownUnit { met: met.into() }),
    };
    let unit = Scale { size: unit, step: 1, nearest: MICROMETRE };
    settle(&terms, Quantity::Distance, |pick| {
        let worth = worth(term, Decimal::from(unit.size.as_nm()), pick);
        within(worth, unit, Quantity::Distance, &(Length::ZERO..=Length::DISTANCE_MOST))
    })
}

/// A unit of length: how long it is, what its figures are whole multiples of, and what the nearest offered is a multiple of.
#[derive(Clone, Copy)]
struct Scale {
    size: Length,
    step: i64,
    nearest: i64,
}

const INCH: Scale = Scale { size: Length::INCH, step: INCH_FINEST, nearest: Length::INCH_64TH.as_nm() };
const FOOT: Scale = Scale { size: Length::FOOT, ..INCH };
const MM: Scale = Scale { size: Length::MM, step: 1, nearest: MICROMETRE };
const CM: Scale = Scale { size: Length::CM, ..MM };
const METRE: Scale = Scale { size: Length::METRE, ..MM };

fn scale(unit: &str) -> Option<Scale> {
    Some(match unit {
        "in" | "ins" | "inch" | "inches" => INCH,
        "ft" | "foot" | "feet" => FOOT,
        "mm" => MM,
        "cm" => CM,
        "m" => METRE,
        _ => return None,
    })
}

/// The unit of each term: what follows feet is inches, and both are of one system.
fn units_of(terms: &[Term], units: Units) -> Read<Vec<Scale>> {
    let mut found: Vec<Scale> = Vec::new();
    for term in terms {
        let unit = match (&term.unit, found.last(), units) {
            (Some(word), ..) => scale(word).ok_or_else(|| Misread::UnknownUnit { met: word.clone() })?,
            (None, Some(_), _) | (None, None, Units::Inch) => INCH,
            (None, None, Units::Metric) => MM,
        };
        if found.last().is_some_and(|before| before.step != unit.step) {
            return Err(Misread::NotANumber { met: term.text.clone() });
        }
        found.push(unit);
    }
    in_order(terms, &found.iter().map(|unit| unit.size.as_nm()).listed())?;
    Ok(found)
}

fn one(terms: &[Term], units: &[Scale], pick: Pick, limits: &RangeInclusive<Length>) -> Read<Length> {
    let parts = terms.iter().zip(units).map(|(term, unit)| worth(term, Decimal::from(unit.size.as_nm()), pick));
    let sum = parts.into_iter().try_fold(Worth::NOTHING, |sum, part| sum.plus(part?));
    within(sum, units.last().copied().unwrap_or(MM), Quantity::Length, limits)
}

/// The limits first: what is past them is refused so, however fine it is.
fn within(worth: Option<Worth>, unit: Scale, kind: fn(Length) -> Quantity, limits: &RangeInclusive<Length>) -> Read<Length> {
    let out = |met| Misread::OutOfRange { met, least: kind(*limits.start()), most: kind(*limits.end()), might_be: None };
    let Some(worth) = worth else { return Err(out(None)) };
    let rounded = |step: i64| multiple(worth.exact, step);
    let Some(met) = rounded(1) else { return Err(out(None)) };
    let is_within = Decimal::from(limits.start().as_nm()) <= worth.exact && worth.exact <= Decimal::from(limits.end().as_nm());
    if worth.odd_denominator != Some(0) && !is_within {
        return Err(out(Some(kind(met))));
    }
    let nearest = rounded(unit.nearest).unwrap_or(met).clamp(*limits.start(), *limits.end());
    let is_kept = |step: i64| rounded(step).is_some_and(|r| Decimal::from(r.as_nm()) == worth.exact);
    worth.whole(is_kept(unit.step) || is_kept(unit.nearest), kind(nearest))?;
    Ok(met)
}

/// The multiple of `step` nanometres nearest to `nm`, half up.
fn multiple(nm: Decimal, step: i64) -> Option<Length> {
    let steps = super::super::half_up(nm.checked_div(Decimal::from(step))?, 0);
    i64::try_from(steps).ok()?.checked_mul(step).and_then(|nm| Length::nm(nm).ok())
}
