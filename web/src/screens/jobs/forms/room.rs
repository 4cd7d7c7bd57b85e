//! Where the pieces of a job will live: the moistures of that room, and how far each part moves in it.

use super::super::super::slots::no;
use super::super::entry::Slot;
use super::super::say;
use super::Asked;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{Draft, Pick, ROOMS, typed_room};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::fraction::worded;
use crate::screens::Seen;
use crate::screens::workshop::movement_written;
use crate::view::{El, el};
use crate::words::en::{air, job as words, jobs};
use fivebar_core::quantity::Decimal;
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::moving::moving;

/// The usual rooms as chips, the two moistures, and what they do to the parts.
pub fn asked(draft: &Draft, sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Asked {
    let mut asked = Asked::new("jobs/room", words::ROOM);
    let typed = typed_room(&draft.form, seen.speech.sign());
    let chip = |(nth, (low, high)): (usize, &(i64, i64))| {
        let room = (Decimal::from(*low), Decimal::from(*high));
        Chip::choice(words::ROOMS.get(nth).copied().unwrap_or_default(), typed == Some(room)).under(between(room, seen))
    };
    let chips = flowing("key h56", ROOMS.iter().enumerate().map(chip).listed(), |nth| say(Tap::Pick(Pick::Room(nth))));
    asked.above = vec![chips];
    asked.above.extend(typed.map(|room| moves(room, sheet, app, seen)));
    asked.slots = vec![Slot::new(air::DRY, "%"), Slot::new(air::DAMPEST, "%")];
    asked
}

/// "6 to 10 %".
pub fn between((low, high): (Decimal, Decimal), seen: Seen<'_>) -> String {
    let n = |n| seen.speech.number(n, 0, 1);
    words::room_between(&n(low), &n(high))
}

fn moves(room: (Decimal, Decimal), sheet: &JobSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let card = el("section", "card").attr("aria-live", "polite");
    match moving(&sheet.parts, &app.shelf().workshop().wood.woods, room) {
        Err(why) => card.kid(no(&why, seen)),
        Ok(parts) if parts.is_empty() => card.kid(el("p", "").text(words::NO_PART_MOVES)),
        Ok(parts) => {
            let units = sheet.account.units;
            let one = |part: &fivebar_core::sheet::moving::PartMoves| {
                let [width, moves] = [part.width, part.moves.most].map(|length| movement_written(length, units, seen));
                worded("p", "", words::part_moves(&jobs::upper_first(&part.name), &width, &moves))
            };
            card.kids(parts.iter().map(one)).kid(el("p", "t14 i2").text(words::FLAT_SAWN_MOST))
        }
    }
}
