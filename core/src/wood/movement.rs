//! How much a width of wood moves across the grain, and the slot that leaves it space.
//!
//! Source: Wood Handbook (FPL-GTR-190), chapter 13, equations 13-2 and 13-3. Floats become whole nanometres, half up; a slot goes up.
//! The handbook's coefficients are of the width at 10 %, European ones of the oven-dry width: under a twenty-fifth of the movement,
//! less than sources differ.

use super::moisture::{Moisture, Points};
use super::species::{Coefficient, Movement};
use crate::quantity::{Decimal, Length, Units};
use crate::refusal::{Answer, Refusal};

/// How a board was sawn, which says what its width does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sawn {
    /// The width runs along the growth rings and moves most: tangential.
    Flat,
    /// The width runs across the growth rings: radial.
    Quarter,
}

impl Movement {
    /// The coefficient of the width of a board.
    pub fn across(self, sawn: Sawn) -> Coefficient {
        match sawn {
            Sawn::Flat => self.tangential,
            Sawn::Quarter => self.radial,
        }
    }
}

/// By how much a width changes, either way; least and most where sources differ on the wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moves {
    pub usual: Length,
    pub least: Length,
    pub most: Length,
}

/// The moisture wood swings between in a room, through the year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    low: Moisture,
    high: Moisture,
}

/// The space a width needs, each way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// For what it may still shrink.
    pub shrinks: Length,
    /// For what it may still swell.
    pub swells: Length,
}

/// A width across the grain of a wood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Across {
    pub width: Length,
    pub coefficient: Coefficient,
}

impl Room {
    /// A heated home: 8 % and 2 points either way. Our choice, from European flooring and furniture standards.
    pub const HEATED: Room = Room { low: Moisture::known(6.0), high: Moisture::known(10.0) };

    /// From the moisture of the dry season to that of the damp one.
    ///
    /// # Errors
    /// [`Refusal::RoomUpsideDown`] when the low end is above the high one.
    pub fn of(low: Moisture, high: Moisture) -> Answer<Room> {
        if low <= high { Ok(Room { low, high }) } else { Err(Refusal::RoomUpsideDown { low: shown(low), high: shown(high) }) }
    }

    pub fn low(self) -> Moisture {
        self.low
    }

    pub fn high(self) -> Moisture {
        self.high
    }
}

fn shown(moisture: Moisture) -> Decimal {
    Decimal::try_from(moisture.as_per_cent()).unwrap_or_default()
}

impl Across {
    /// The moistures between which the coefficients are published.
    pub const LEAST: Moisture = Moisture::known(6.0);
    pub const MOST: Moisture = Moisture::known(14.0);

    /// What the width moves between two moistures from 6 to 14 %: width x coefficient x points (equation 13-2).
    ///
    /// # Errors
    /// [`Refusal::MovementUnknown`] outside 6 to 14 %, where a coefficient is not published to hold; [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::quantity::Length;
    /// use fivebar_core::wood::{moisture::Moisture, movement::{Across, Sawn}, species::Species};
    /// let oak = Species::of("oak-european").unwrap().movement.unwrap().across(Sawn::Flat);
    /// let top = Across { width: Length::MM.times(340).unwrap(), coefficient: oak };
    /// let [dry, damp] = [7.0, 10.0].map(|m| Moisture::per_cent(m).unwrap());
    /// assert_eq!(top.moves(dry, damp).unwrap().usual.as_nm(), 3_672_000); // 3.7 mm
    /// ```
    pub fn moves(self, from: Moisture, to: Moisture) -> Answer<Moves> {
        for moisture in [from, to] {
            known(moisture, Self::LEAST, Self::MOST)?;
        }
        self.over(from.apart(to))
    }

    /// What the width moves over so many points, wherever they lie: the bare product, for those who know that it holds there.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn over(self, points: Points) -> Answer<Moves> {
        let of = |coefficient: f64| part(self.width, coefficient * points.as_points());
        let Coefficient { usual, least, most } = self.coefficient;
        Ok(Moves { usual: of(usual)?, least: of(least)?, most: of(most)? })
    }

    /// What the width moves from the dry season of a room to the damp one.
    ///
    /// # Errors
    /// As [`Across::moves`].
    pub fn moves_in(self, room: Room) -> Answer<Moves> {
        self.moves(room.low, room.high)
    }

    /// The slot for a width that has this moisture now: the most it may move each way in the room, up to a whole 1/64 in or 0.1 mm.
    ///
    /// # Errors
    /// As [`Across::moves`].
    ///
    /// ```
    /// use fivebar_core::quantity::{Length, Units};
    /// use fivebar_core::wood::{moisture::Moisture, movement::{Across, Room, Sawn}, species::Species};
    /// let oak = Species::of("oak-european").unwrap().movement.unwrap().across(Sawn::Flat);
    /// let top = Across { width: Length::MM.times(340).unwrap(), coefficient: oak };
    /// let slot = top.slot(Moisture::per_cent(9.0).unwrap(), Room::HEATED, Units::Metric).unwrap();
    /// assert_eq!((slot.shrinks.as_nm(), slot.swells.as_nm()), (3_700_000, 1_300_000)); // 3.672 and 1.224 mm
    /// ```
    pub fn slot(self, now: Moisture, room: Room, units: Units) -> Answer<Slot> {
        let step = match units {
            Units::Inch => Length::INCH_64TH,
            Units::Metric => Length::TENTH_MM,
        };
        let for_it = |moves: bool, end: Moisture| if moves { up(self.moves(now, end)?.most, step) } else { Ok(Length::ZERO) };
        known(now, Self::LEAST, Self::MOST)?;
        Ok(Slot { shrinks: for_it(room.low < now, room.low)?, swells: for_it(now < room.high, room.high)? })
    }
}

/// Is the movement known at this moisture?
fn known(moisture: Moisture, least: Moisture, most: Moisture) -> Answer<()> {
    let unknown = Refusal::MovementUnknown { least: shown(least), most: shown(most) };
    if (least..=most).contains(&moisture) { Ok(()) } else { Err(unknown) }
}

/// A fraction of a width, half up to a whole nanometre.
fn part(width: Length, of: f64) -> Answer<Length> {
    let nm = (width.as_nm() as f64 * of).round();
    if nm < i64::MAX as f64 { Length::nm(nm as i64) } else { Err(Refusal::OutOfRange) }
}

/// Up to a whole number of steps.
fn up(length: Length, step: Length) -> Answer<Length> {
    let up = length.as_nm().checked_add(step.as_nm()).and_then(|nm| nm.checked_sub(1)).and_then(|nm| nm.checked_div(step.as_nm()));
    step.times(up.ok_or(Refusal::OutOfRange)?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wood::species::{Species, span};

    fn per_cent(met: f64) -> Moisture {
        Moisture::per_cent(met).unwrap()
    }

    /// A metre, at 0.003 with 0.002 to 0.004 between sources.
    fn metre() -> Across {
        Across { width: Length::METRE, coefficient: span(0.003, 0.002, 0.004) }
    }

    #[track_caller]
    fn check(now: f64, units: Units, nm: [i64; 2]) {
        let slot = metre().slot(per_cent(now), Room::HEATED, units).unwrap();
        assert_eq!([slot.shrinks.as_nm(), slot.swells.as_nm()], nm, "{now}");
    }

    #[test]
    fn a_slot_leaves_room_for_the_most_each_way() {
        check(6.0, Units::Metric, [0, 16_000_000]);
        check(8.0, Units::Metric, [8_000_000, 8_000_000]);
        check(7.99, Units::Metric, [8_000_000, 8_100_000]);
        check(8.0, Units::Inch, [21 * 396_875, 21 * 396_875]);
        check(10.0, Units::Metric, [16_000_000, 0]);
        check(14.0, Units::Metric, [32_000_000, 0]);
    }

    #[test]
    fn sources_that_differ_give_a_span() {
        let moves = metre().moves_in(Room::HEATED).unwrap();
        assert_eq!([moves.least, moves.usual, moves.most].map(Length::as_nm), [8_000_000, 12_000_000, 16_000_000]);
        assert_eq!(metre().moves(per_cent(10.0), per_cent(6.0)), Ok(moves));
        let oak = Species::of("oak-european").unwrap().movement.unwrap();
        assert!(oak.across(Sawn::Quarter).most < oak.across(Sawn::Flat).least);
    }

    #[test]
    fn where_nobody_knows_it_is_refused() {
        let unknown = |least: i64, most: i64| Refusal::MovementUnknown { least: least.into(), most: most.into() };
        for (from, to) in [(5.9, 10.0), (10.0, 14.1), (20.0, 8.0)] {
            assert_eq!(metre().moves(per_cent(from), per_cent(to)), Err(unknown(6, 14)));
        }
        for now in [5.0, 16.0] {
            assert_eq!(metre().slot(per_cent(now), Room::HEATED, Units::Inch), Err(unknown(6, 14)));
        }
        let upside_down = Refusal::RoomUpsideDown { low: 10.into(), high: 6.into() };
        assert_eq!(Room::of(per_cent(10.0), per_cent(6.0)), Err(upside_down));
    }

    #[test]
    fn inv08_nothing_wraps() {
        let far = Across { width: Length::nm(i64::MAX).unwrap(), coefficient: span(1.0, 1.0, 1.0) };
        assert_eq!(far.over(Points::of(8.0)), Err(Refusal::OutOfRange));
        assert_eq!(far.over(Points::of(f64::NAN)).map(|moves| moves.most), Ok(Length::ZERO));
        assert_eq!(up(far.width, Length::MM), Err(Refusal::OutOfRange));
    }
}
