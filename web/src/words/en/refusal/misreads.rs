//! English: why a typed figure was not taken.

use super::super::common::{length_unit, mass_unit};
use crate::words::Speech;
use fivebar_core::quantity::reading::{Misread, Quantity};
use fivebar_core::quantity::{Clock, Decimal, Length, Moment, Offset, Span, Units, Wall, begin_large};

/// Why a typed figure was not taken.
pub fn misread(why: &Misread, speech: &dyn Speech, units: Units) -> String {
    let said = reason(why, speech, units);
    match why {
        Misread::Empty => begin_large(&said),
        Misread::OutOfRange { .. } => format!("Not taken. {}", begin_large(&said)),
        _ => format!("Not taken: {said}"),
    }
}

/// The same of a field, by its name: "Wide: nothing is typed yet."
pub fn misread_of(field: &str, why: &Misread, speech: &dyn Speech, units: Units) -> String {
    format!("{field}: {}", reason(why, speech, units))
}

/// A name is missing, said beside its field.
pub fn unnamed(field: &str) -> String {
    format!("{field}: nothing is typed yet.")
}

fn reason(why: &Misread, speech: &dyn Speech, units: Units) -> String {
    let q = |quantity: &Quantity| quantity_said(quantity, speech, units);
    match why {
        Misread::Empty => "nothing is typed yet.".into(),
        Misread::TooLong { most } => format!("at most {most} signs."),
        Misread::NotANumber { met } => format!("“{met}” is no number."),
        Misread::NotAClock { met } => {
            let halves = if speech.has_halves() { ", 2:05 pm" } else { "" };
            format!("“{met}” is no time of day. Type 1405, 14.05 or 14:05{halves}.")
        }
        Misread::UnknownUnit { met } => format!("“{met}” is no unit for this."),
        Misread::Negative { met } => format!("{met} is below nothing."),
        Misread::Ambiguous { grouped, decimal } => format!("it may mean {} or {}.", q(grouped), q(decimal)),
        Misread::TooFine { nearest } => format!("finer than is kept. The nearest is {}.", q(nearest)),
        Misread::Denominator { met, nearest: Some(nearest) } => format!("no rule has {met}ths. The nearest is {}.", q(nearest)),
        Misread::Denominator { met, nearest: None } => format!("no rule has {met}ths."),
        Misread::OutOfRange { met: Some(Quantity::Count(0)), least: Quantity::Count(1), .. } => {
            "0 is too few, it must be 1 or more.".into()
        }
        Misread::OutOfRange { met, least, most, might_be } => {
            let must = |it: &str| format!("{it} must be from {} to {}.", limit(least, speech, units), limit(most, speech, units));
            let may = might_be.as_ref().map(|other| format!(" It may mean {}.", q(other))).unwrap_or_default();
            met.as_ref().map_or_else(|| must("it"), |met| format!("it reads as {}. {}", q(met), must("It"))) + &may
        }
        Misread::NotWhole { might_be: Some(other), .. } => format!("only whole ones. It may mean {}.", q(other)),
        Misread::NotWhole { .. } => "only whole ones.".into(),
    }
}

/// A limit, said as one says it: a long length in whole feet.
fn limit(quantity: &Quantity, speech: &dyn Speech, units: Units) -> String {
    let foot = Length::INCH.times(12).unwrap_or(Length::INCH);
    match quantity {
        Quantity::Length(length) if units == Units::Inch && foot.times(10).is_ok_and(|long| long <= *length) => {
            let feet = length.as_nm().checked_div(foot.as_nm()).unwrap_or_default();
            format!("{} ft", speech.number(Decimal::from(feet), 0, 0))
        }
        _ => quantity_said(quantity, speech, units),
    }
}

/// A reading, said.
pub fn quantity_said(quantity: &Quantity, speech: &dyn Speech, units: Units) -> String {
    match quantity {
        Quantity::Length(length) => format!("{} {}", speech.length(*length, units), length_unit(units)),
        Quantity::Distance(distance) => fivebar_core::quantity::writing::distance(*distance, speech.typing(units)),
        Quantity::Money(sum) => speech.money(*sum),
        Quantity::Span(span) => speech.span(*span),
        Quantity::Clock(clock) => at_the_clock(*clock, speech),
        Quantity::Mass(mass) => format!("{} {}", speech.mass(*mass, units), mass_unit(units)),
        Quantity::Count(n) => speech.count(*n),
        Quantity::Percent(p) => format!("{} %", speech.number(*p, 0, 3)),
        Quantity::Number(n) => speech.number(*n, 0, 6),
    }
}

/// A clock time as this phone writes it, with its half of the day where clocks have twelve hours.
fn at_the_clock(clock: Clock, speech: &dyn Speech) -> String {
    speech.clock(Wall::new(Moment::at(0).plus(Span::minutes(i64::from(clock.as_minutes()))), Offset::UTC))
}
