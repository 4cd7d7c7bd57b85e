//! What the figures of a page say while they are typed: how far a width moves, and which readings are to be glued together.

use super::Wood;
use crate::app::entry::moisture as per_cent;
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::quantity::reading::{self, Misread, Sign, Typing};
use fivebar_core::quantity::{Decimal, Length, Listed};
use fivebar_core::refusal::Refusal;
use fivebar_core::wood::moisture::Moisture;
use fivebar_core::wood::movement::{Across as Width, Moves, Room, Slot};

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Wrong {
    /// No width is typed yet.
    NoWidth,
    /// Nobody published how this wood moves.
    NoCoefficient,
    Misread(Misread),
    Refused(Refusal),
}

/// How far a width moves in a room, and the slot for it where its moisture is said.
#[derive(Clone, Debug, PartialEq)]
pub struct Across {
    pub width: Length,
    pub room: (Decimal, Decimal),
    pub moves: Moves,
    pub slot: Option<Slot>,
}

impl From<Misread> for Wrong {
    fn from(why: Misread) -> Wrong {
        Wrong::Misread(why)
    }
}

impl From<Refusal> for Wrong {
    fn from(why: Refusal) -> Wrong {
        Wrong::Refused(why)
    }
}

fn moisture(per_cent: Decimal) -> Result<Moisture, Refusal> {
    Moisture::per_cent(f64::try_from(per_cent).unwrap_or(f64::NAN))
}

/// How far the typed width moves.
///
/// # Errors
/// Why there is no answer yet.
pub fn across(wood: &Wood, known: &Workshop, typing: Typing) -> Result<Across, Wrong> {
    let form = &wood.form;
    let found = wood.chosen.as_ref().and_then(|key| known.wood.woods.find(key.as_str()).ok());
    let coefficient = found.and_then(|found| found.across(wood.sawn)).ok_or(Wrong::NoCoefficient)?;
    if form.is_empty(0) {
        return Err(Wrong::NoWidth);
    }
    let width = reading::length(form.text(0), typing)?;
    let room = (per_cent(form.text(1), typing.sign)?, per_cent(form.text(2), typing.sign)?);
    let within = Room::of(moisture(room.0)?, moisture(room.1)?)?;
    let of = Width { width, coefficient };
    let now = if form.is_empty(3) { None } else { Some(moisture(per_cent(form.text(3), typing.sign)?)?) };
    let slot = now.map(|now| of.slot(now, within, typing.units)).transpose()?;
    Ok(Across { width, room, moves: of.moves_in(within)?, slot })
}

/// The readings to be glued together.
pub fn readings(wood: &Wood, sign: Sign) -> Vec<Moisture> {
    wood.glued.iter().filter_map(|text| per_cent(text, sign).ok()).filter_map(|n| moisture(n).ok()).listed()
}
