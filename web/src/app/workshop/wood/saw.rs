//! The figures of the saw: those in use typed in already, and what was typed as one fact.

use super::Wood;
use crate::app::doubt::Side;
use crate::app::form::Form;
use fivebar_core::ledger::decide::{Command, PlanCommand, SAW_MOST};
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::ledger::kind::plan::SawSet;
use fivebar_core::quantity::reading::{self, Misread, Typing};
use fivebar_core::quantity::{Decimal, Length, Units, half_up, writing};
use fivebar_core::sheet::make::{figures_of, places};

/// Lengths of the saw; behind them stands the glue.
pub const LENGTHS: usize = 13;
/// So many of them are cut off, or left over, the kerf first; the others are the least of something.
const ALLOWANCES: usize = 8;
/// The most grams of glue for a square metre: beyond any.
const GLUE_MOST: u32 = 2_000;

/// Grams for a square metre that a fluid ounce for a square foot is: 29.5735295625 ml of 1.1 g, for 0.09290304 m². Kept as grams; told and typed in
/// an inch book as the plan tells the glue, in hundredths, which are coarser than a gram and so come back as they were typed.
const OUNCE: Decimal = Decimal::from_parts(350_160, 0, 0, false, 3);

/// How much glue is spread, in the units of the book.
fn written(grams: i64, typing: Typing) -> String {
    match typing.units {
        Units::Metric => grams.to_string(),
        Units::Inch => {
            let ounces = Decimal::from(grams).checked_div(OUNCE).unwrap_or_default();
            writing::decimal(half_up(ounces, 2), typing.sign)
        }
    }
}

/// The same, read: in whole grams for a square metre.
fn glue(text: &str, typing: Typing) -> Result<u32, Misread> {
    if typing.units == Units::Metric {
        return reading::count(text, typing.sign, GLUE_MOST);
    }
    let most = half_up(Decimal::from(GLUE_MOST).checked_div(OUNCE).unwrap_or_default(), 1);
    let ounces = reading::number(text, typing.sign, Decimal::ZERO..=most)?;
    Ok(half_up(ounces.checked_mul(OUNCE).unwrap_or_default(), 0).try_into().unwrap_or(GLUE_MOST))
}

/// The form with the figures in use.
pub(super) fn filled(known: &Workshop, typing: Typing) -> Form {
    let Ok(mut figures) = figures_of(known, typing.units) else { return Form::of(LENGTHS + 1) };
    let glue = written(figures.spread, typing);
    let lengths = places(&mut figures).map(|length| writing::length(*length, typing));
    let mut form = Form::of(LENGTHS + 1);
    lengths.into_iter().chain([glue]).enumerate().for_each(|(nth, text)| form.put(nth, text));
    form
}

/// What was typed; a figure left as it stood, or empty, stays as it was, so that what the other phone says of it holds.
pub(super) fn command(wood: &mut Wood, typing: Typing) -> Option<Command> {
    let mut lengths = [None; LENGTHS];
    for (nth, length) in lengths.iter_mut().enumerate() {
        if wood.is_corrected(nth) && !wood.form.is_empty(nth) {
            let of = match nth {
                0 => Side::Kerf,
                _ if nth < ALLOWANCES => Side::Allowance,
                _ => Side::Least,
            };
            let read = |text: &str| reading::length_within(text, typing, Length::ZERO..=SAW_MOST);
            *length = Some(wood.form.side_by(nth, (of, typing), read)?);
        }
    }
    let glue = wood.form.maybe(LENGTHS, |text| glue(text, typing))?;
    let glue = glue.filter(|_| wood.is_corrected(LENGTHS));
    Some(Command::Plan(PlanCommand::SetSaw(SawSet::of(lengths, glue))))
}
