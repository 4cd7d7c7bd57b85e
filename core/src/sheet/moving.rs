//! How far the parts of a job move across the grain, in the room its pieces will live in.

use crate::ledger::fold::Part;
use crate::quantity::{Decimal, Length};
use crate::refusal::Answer;
use crate::wood::moisture::Moisture;
use crate::wood::movement::{Across, Moves, Room, Sawn};
use crate::wood::woods::Woods;

/// A part whose width moves.
#[derive(Clone, Debug, PartialEq)]
pub struct PartMoves {
    pub name: String,
    pub width: Length,
    /// As flat-sawn: the most it may move.
    pub moves: Moves,
}

/// The parts whose wood is known to move, each as flat-sawn, between the dry season of a room and its damp one, in per cent.
///
/// # Errors
/// [`crate::refusal::Refusal::MoistureOutOfRange`], [`crate::refusal::Refusal::RoomUpsideDown`];
/// [`crate::refusal::Refusal::MovementUnknown`] where the room goes beyond 6 to 14 %.
pub fn moving(parts: &[Part], woods: &Woods, (low, high): (Decimal, Decimal)) -> Answer<Vec<PartMoves>> {
    let moisture = |n: Decimal| Moisture::per_cent(f64::try_from(n).unwrap_or(f64::NAN));
    let room = Room::of(moisture(low)?, moisture(high)?)?;
    let across = |part: &Part| {
        let coefficient = woods.find(part.wood.as_ref()?.as_str()).ok()?.across(Sawn::Flat)?;
        Some(Across { width: part.size[1], coefficient })
    };
    let known = parts.iter().filter_map(|part| Some((part, across(part)?)));
    known.map(|(part, of)| Ok(PartMoves { name: part.name.clone(), width: of.width, moves: of.moves_in(room)? })).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Key;
    use crate::refusal::Refusal;

    fn part(name: &str, wood: Option<&str>) -> Part {
        let mm = |n: i64| Length::MM.times(n).unwrap();
        Part { name: name.into(), n: 1, size: [mm(20), mm(340), mm(900)], wood: wood.and_then(Key::read) }
    }

    /// 340 mm of oak over 3 points are 3.672 mm, as in the doctest of [`Across::moves`]; a part of no known wood is left out.
    #[test]
    fn each_part_moves_by_its_wood_and_width() {
        let parts = [part("top", Some("oak-european")), part("peg", None), part("inlay", Some("unknown-hardwood"))];
        let of = |low: i64, high: i64| moving(&parts, &Woods::default(), (low.into(), high.into()));
        let found = of(7, 10).unwrap();
        assert_eq!(found.iter().map(|it| (it.name.as_str(), it.moves.usual.as_nm())).collect::<Vec<_>>(), [("top", 3_672_000)]);
        assert!(matches!(of(15, 19), Err(Refusal::MovementUnknown { .. })));
        assert!(matches!(of(10, 7), Err(Refusal::RoomUpsideDown { .. })));
    }
}
