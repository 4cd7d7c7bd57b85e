//! Facts of piles beyond the first count: how they were counted, what was measured of them, what they are for, how they lie on the rack.

use super::plan::Shape;
use super::{Exact, kinds};
use crate::quantity::{Count, Id, Key, Length};

kinds! {
    /// How a count by weight came about (`counted` is that count): `sample` pieces weighed `sample_weight` grams, all of them `weight`,
    /// with `tare` for what they were weighed in. `spread` is the share by which single pieces differ: found by so many weighed one by
    /// one (`singles`), a guess where that is missing. Written again in the act of a CountMended of that count, its figures stand in the
    /// place of the old ones.
    PilePiecesWeighed { haul: Id, pile: Id, counted: Id, sample: Count, sample_weight: i64, weight: i64; tare: i64, spread: Exact,
        singles: Count }
    /// How a count by layers came about (`counted` is that count): `layers` of `per` pieces, and the `rest`. Put right as
    /// one by weight.
    PileLayersCounted { haul: Id, pile: Id, counted: Id, layers: Count, per: Count; rest: Count }
    /// One piece of a pile was measured.
    PieceMeasured { haul: Id, pile: Id; thickness: Length, width: Length, length: Length }
    /// How many parts a pile is wanted for; 0 takes it away. One part takes `pieces` of the pile, or one piece gives `gives` parts.
    /// The same part of the same pile replaces it.
    EnoughSet { haul: Id, pile: Id, wanted: Count; part: String, job: Id, pieces: Count, gives: Count }
    /// A moisture reading in per cent, or that a pile is plainly wet, or is not after all.
    MoistureRead { haul: Id, pile: Id; percent: Exact, wet: bool }
    /// The rack was walked round: so many lie there. The difference is drift.
    PileCounted { haul: Id, pile: Id, n: Count; why: String }
    /// A count of a pile was put right (`entry` is that count; pieces that a job took or gave back, too): so many, and for that reason, where
    /// one is said. Its line stays as it was written, and the last word on it stands in its place. Of a rejection and of pieces gone the
    /// reason is a key.
    CountMended { haul: Id, pile: Id, entry: Id, n: Count; why: String }
    /// Where a pile lies.
    PilePlaced { haul: Id, pile: Id, place: String; }
    /// Pieces on the rack are set apart for a job, not yet taken.
    PiecesReserved { haul: Id, pile: Id, job: Id, n: Count; }
    /// Pieces set apart are free again.
    ReservationFreed { haul: Id, pile: Id, job: Id, n: Count; }
    /// Good pieces left the rack for no job: burnt, given away, to jigs.
    LeftoversGone { haul: Id, pile: Id, n: Count; to: Key }
    /// Pieces that are looked for: so many more than the `there` that would do when they were looked for first, of that wood where one is
    /// said, and no side smaller than these. `at_least`: no fewer do, and whether so many do is not known. `just_thick`, `just_wide`: a stick
    /// that is just so on a side is not planed there, and does too.
    SoughtPiece { n: Count, thickness: Length, width: Length, length: Length; wood: Key, there: Count, at_least: bool, just_thick: Length,
        just_wide: Length }
    /// What a plan of a job lacks is looked for at the next yard: all of these, or any one of them. `shape`, and of a top its `length` and
    /// `width`, say which plan it is; the same of the same job replaces it, and no pieces take it away. `makes`: with them the plan makes
    /// so many rows or sets.
    PiecesSought { job: Id, shape: Shape, pieces: Vec<SoughtPiece>; any: bool, length: Length, width: Length, makes: Count }
    /// A pile does for a piece that is looked for (`nth` of the entry `sought`, from 0), or does not, whatever its size says.
    PileSuits { haul: Id, pile: Id, sought: Id, nth: Count, suits: bool; }
}
