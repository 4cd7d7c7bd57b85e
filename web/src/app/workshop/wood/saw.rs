//! The figures of the saw: those in use typed in already, and what was typed as one fact.

use super::Wood;
use crate::app::doubt::Side;
use crate::app::form::Form;
use fivebar_core::ledger::decide::{Command, PlanCommand, SAW_MOST};
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::ledger::kind::plan::SawSet;
use fivebar_core::quantity::reading::{self, Typing};
use fivebar_core::quantity::{Length, writing};
use fivebar_core::sheet::make::{figures_of, places};

/// Lengths of the saw; behind them stands the glue.
pub const LENGTHS: usize = 13;
/// So many of them are cut off, or left over, the kerf first; the others are the least of something.
const ALLOWANCES: usize = 8;
/// The most grams of glue for a square metre: beyond any.
const GLUE_MOST: u32 = 2_000;

/// The form with the figures in use.
pub(super) fn filled(known: &Workshop, typing: Typing) -> Form {
    let Ok(mut figures) = figures_of(known, typing.units) else { return Form::of(LENGTHS + 1) };
    let glue = figures.spread.to_string();
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
    let glue = wood.form.maybe(LENGTHS, |text| reading::count(text, typing.sign, GLUE_MOST))?;
    let glue = glue.filter(|_| wood.is_corrected(LENGTHS));
    Some(Command::Plan(PlanCommand::SetSaw(SawSet::of(lengths, glue))))
}
