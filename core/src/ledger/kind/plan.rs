//! Facts of plans: what was asked of which pieces and what came of it; the saw's own figures; designs to make again.

use super::bench::{Kind, Stage};
use super::kinds;
use crate::quantity::{Count, Id, Key, Length, Span, spelled};

/// What a plan makes, by what it looks like.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// A top in rows, strips end to end.
    #[default]
    Rows,
    /// The parts of a piece, from boards.
    Parts,
    /// Lengths from sticks.
    Sticks,
    /// A field of tiles.
    Field,
}

spelled!(Shape: Rows "rows", Parts "parts", Sticks "sticks", Field "field");

kinds! {
    /// Pieces a plan was made from: so many of a pile, ripped into so many strips each (one where it is missing), of which it used so
    /// many pieces (none where it is missing). `in_job`: the job had them already. The sides of a piece, the letter in the picture and the
    /// wood are as they were then. Part of [`PlanKept`], in the order of its problem.
    PlanPile { haul: Id, pile: Id, n: Count; rips: Count, used: Count, in_job: bool, thickness: Length, width: Length, length: Length,
        letter: String, wood: Key }
    /// A plan that was kept for a job: what was asked and what came of it with its bound, both as whole numbers, in lengths of `unit`.
    /// `width` is across the rows of a top. `saw`: the figures it was made with. `parts`: those it was made for, in the order of its
    /// problem, then those that were left out, with none of each and no size. `strip` is how wide one row of a top is. `cut`: parts
    /// that were cut by plans before, and are not in its problem, which asks all others at once; together they are for `sets` pieces of the job. `tile`: how long a tile
    /// of a field was asked to be; then a pile's `rips` are tiles out of each piece. `rows_cut`: rows of a top that plans before cut, beside which these rows are laid;
    /// `boards_cut`: boards of plans whose place it took that were cut, and stayed in the job.
    PlanKept { job: Id, shape: Shape, unit: Length, piles: Vec<PlanPile>, problem: String, answer: String; width: Length, thickness: Length,
        saw: SawSet, parts: Vec<DesignPart>, strip: Length, cut: Vec<DesignPart>, sets: Count, tile: Length,
        rows_cut: Count, boards_cut: Count }
    /// The wood was cut by this plan.
    PlanUsed { job: Id, plan: Id; }
    /// The maker's own figures at the saw; a member that is missing stays as it was. `square` and `end_trim` are off each end, `edge_trim`
    /// off each long edge, `joint` off each glued edge; `keep` is the least length worth keeping; `apart` the least from joint to joint; `glue`
    /// grams for a square metre of joint.
    SawSet { ; kerf: Length, square: Length, end_trim: Length, edge_trim: Length, over_length: Length, over_width: Length,
        over_thickness: Length, joint: Length, keep: Length, apart: Length, end_piece: Length, piece: Length, strip: Length, glue: Count }
    /// A part of a design: as a part of a job.
    DesignPart { name: String, n: Count, thickness: Length, width: Length, length: Length; wood: Key }
    /// An operation of a design: as an operation of a job.
    DesignOperation { op: String, kind: Kind; stage: Stage, span: Span, pieces: Count }
    /// Parts and operations under a name, to make again; kept from `job`. The same name replaces it; with no part and no operation it is
    /// a design no more.
    DesignKept { name: String, parts: Vec<DesignPart>, operations: Vec<DesignOperation>; job: Id }
    /// A job is made from a design: its parts and operations came with this.
    DesignUsed { job: Id, design: Id; }
}
