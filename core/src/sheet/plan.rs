//! What can be made of these pieces, as a maker reads it: the picture to scale, what to cut of which pile, what it uses and leaves,
//! and what no plan can do better.

mod board_ends;
pub mod draft;
mod field;
pub mod figures;
pub(super) mod off;
mod parts;
pub(super) mod pooled;
pub mod ready;
mod rips;
mod rows;
mod spare;
mod sticks;
pub mod stock;
mod tally;
pub mod tiles;
pub(super) mod trim;
pub mod wish;

use crate::plan::field::problem::Pattern;
pub use crate::plan::rows::why::Known;
pub use crate::plan::unlock::Unlock;
use crate::plan::unlock::{Had, Held, Locked, Tries, Unlocks};
use crate::plan::{Answered, Asked, Made};
use crate::quantity::{Count, Decimal, Length, Mass, Money, Volume};
use crate::refusal::{Answer, Refusal};
use crate::wood::movement::{Moves, Room};
use ready::Ready;
pub use rips::Rip;

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanSheet {
    /// Rows, sets, or layers of a field; none where nothing can be made.
    pub made: i64,
    pub picture: Picture,
    /// By pile, in the order of cutting: whole ones first, then by their numbers.
    pub lines: Vec<CutLine>,
    pub used: Vec<Used>,
    pub waste: Waste,
    /// With the saw.
    pub cuts: i64,
    pub glue: Glue,
    /// Of the finished wood at 12 %.
    pub weight: Mass,
    /// The wood of a pile is not known, so the weight is a guess.
    pub weight_guessed: bool,
    /// What moves most over the room's range; none where no wood's movement is known.
    pub moves: Option<Moving>,
    /// The same in width (0) and in depth (1) of a field whose tiles lie both ways and are glued; else none.
    pub moves_by_side: Vec<(usize, Moving)>,
    /// Parts glued up of several strips.
    pub glue_ups: Vec<GlueUp>,
    /// The field, where one is laid.
    pub laid: Option<Laid>,
    pub proof: Proof,
    pub ends: Ends,
    /// What more pieces would unlock; nothing until it was searched for.
    pub short: Vec<Unlock>,
    /// Piles and cut pieces shorter than a machine minimum of the maker's: said, never decided.
    pub too_short: Vec<TooShort>,
}

/// Pieces to scale, from the left and the top; `outer` is width and height of all of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Picture {
    pub outer: [Length; 2],
    pub pieces: Vec<Drawn>,
    /// Boards and sticks to be cut, one of those cut alike; none in a top or a field.
    pub boards: Vec<Lain>,
}

/// A board or stick as it lies in the picture; its pieces have its number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lain {
    /// Left, top, length, width.
    pub at: [Length; 4],
    pub source: usize,
    pub number: i64,
    /// So many are cut alike.
    pub times: i64,
    /// What goes back to the rack of each, and where it lies.
    pub left: Option<[Length; 4]>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawn {
    /// Left, top, width, height.
    pub at: [Length; 4],
    /// Its pile, by its place among the sources.
    pub source: usize,
    pub mark: Mark,
    /// Which part it is, where there are parts.
    pub part: Option<usize>,
}

/// What stands on a piece, so that it is never told by its colour alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// Whole: the letter of its pile.
    Letter,
    /// Cut: the number of the piece that it is cut from.
    Number(i64),
}

/// Pieces of one pile that are cut alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutLine {
    pub source: usize,
    pub n: i64,
    /// The numbers they have in the picture; none on whole ones.
    pub numbers: Vec<i64>,
    /// The longest first.
    pub pieces: Vec<Cut>,
    /// What goes back to the rack of each.
    pub remainder: Option<Length>,
}

/// Pieces that are cut alike from one piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    pub n: i64,
    /// Length, width and thickness as they are cut: of parts with what is over for final sizing, of rows and tiles finished.
    pub size: [Length; 3],
    pub part: Option<usize>,
}

/// Parts glued up alike: how many, and how wide their strips are sawn, the widest first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GlueUp {
    pub part: usize,
    pub n: i64,
    pub strips: Vec<(i64, Length)>,
    /// How wide they are side by side, what each joint takes off both edges left out; and how wide the part is cut, with what is over.
    pub wide: Length,
    pub cut: Length,
    /// Where strips of several woods lie side by side in it, how many are of each, the most first; else nothing.
    pub woods: Vec<(i64, Option<String>)>,
}

/// The width that moves most, and how far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moving {
    pub width: Length,
    pub moves: Moves,
    pub part: Option<usize>,
    /// It is glued up of several pieces.
    pub glued: bool,
}

/// How a field comes out: width, depth and height, and of which tiles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Laid {
    pub pattern: Pattern,
    pub sides: [Length; 3],
    /// Length and width of a whole tile, finished.
    pub tile: [Length; 2],
}

/// What a plan takes of a pile.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Used {
    pub source: usize,
    /// Of so many that are there: strips, where pieces are ripped first.
    pub used: i64,
    pub there: i64,
    /// Pieces to fetch from the rack.
    pub pieces: Count,
    pub left_whole: i64,
    /// Strips that were ripped, are not used, and are long enough to keep.
    pub left_strips: i64,
    /// Remainders that go back, the longest first.
    pub remainders: Vec<Length>,
    /// How thick and how wide these are: strips of rows and tiles are jointed and planed before they are cut to length.
    pub section: [Length; 2],
    /// What these pieces cost, where they are to be bought at a known price.
    pub price: Option<Money>,
}

/// A yield names its two volumes: so much of what is taken is waste.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waste {
    /// All pieces that are taken, whole, as measured.
    pub whole: Volume,
    /// What leaves the rack for good: these less what goes back.
    pub taken: Volume,
    /// Of that, what is in the finished pieces.
    pub finished: Volume,
    /// The rest, and its share of what is taken.
    pub wasted: Volume,
    pub share: Option<Decimal>,
    /// Of the waste: ends, kerfs and offcuts; then what ripping, planing and jointing take.
    pub cutting: Volume,
    pub sizing: Volume,
    /// The same in length, where all pieces have one section.
    pub length: Option<[Length; 2]>,
}

/// What is glued.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Glue {
    /// Joints, in square metres.
    pub area: f64,
    /// By the spread rate, up to a gram.
    pub grams: i64,
}

/// Grams of a millilitre of white glue. Ours; its makers name 1.05 to 1.15 (recalled).
const GLUE_DENSITY: f64 = 1.1;

impl Glue {
    /// How much that is in the bottle, up to a millilitre.
    ///
    /// ```
    /// use fivebar_core::sheet::plan::Glue;
    /// assert_eq!(Glue { area: 0.266, grams: 54 }.millilitres(), 50); // 54 g at 1.1 g a millilitre
    /// ```
    pub fn millilitres(&self) -> i64 {
        (self.grams as f64 / GLUE_DENSITY).ceil() as i64
    }
}

/// What it costs a top that one piece of each row is cut: nothing where strips may be cut in pieces.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Ends {
    /// None until whoever plans has looked for it.
    pub short: Option<ShortEnd>,
    /// So many strips do, where ends may come several from one.
    pub together: Option<i64>,
}

/// An end shorter than the least there is to be would give so many rows, of so many strips.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShortEnd {
    pub end: Length,
    pub rows: i64,
    pub strips: i64,
}

/// What is proven of the answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Proof {
    /// No plan does better in any figure.
    pub best: bool,
    /// The first figure in which plan and bound differ: its place, the plan's and the bound's.
    pub gap: Option<(usize, i128, i128)>,
    pub why: Option<Why>,
}

/// Why no plan can do better.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// All that was asked for is made, and takes at least so many pieces: one fewer gives `gives` of the `asked` lengths; or would be long
    /// enough, and no plan takes so little.
    Fewest { pieces: i64, gives: Option<Length>, asked: Length },
    /// All that was asked for is made.
    AllMade,
    /// Nothing can be nearer.
    Exact,
    /// No strip is long enough.
    NoStrips,
    /// All strips together are so long, in tenths of a row, down.
    Length { tenths: i64 },
    /// They are long enough together, but what the rows need does not come out of them.
    DoesNotComeOut,
    /// One part alone keeps the number down.
    Part { part: usize },
    /// These parts together, for the pieces that they share.
    Together { parts: Vec<usize> },
    /// All sticks together are too short for one set more.
    Wood,
    /// The joints are asked too far apart: no nearer than this there are so many rows.
    Joints { apart: Length, rows: i64 },
    /// Tiles come in steps: one more or one fewer makes a side (0 is the width) so long, and that is no nearer.
    Step { side: usize, other: Length, more: bool },
    /// A larger field of this pattern cuts pieces so long at its border, shorter than the least piece.
    LeastPiece { cut: Length },
}

/// Shorter than a machine takes, by the maker's own figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooShort {
    pub source: usize,
    /// A piece that is cut from the pile; else the pile itself, and nothing of it is planned.
    pub cut: bool,
    pub length: Length,
    pub least: Length,
}

/// The answer for a screen.
///
/// # Errors
/// As [`sheet_at_once`].
pub fn sheet(ready: &Ready, answered: &Answered, room: Room) -> Answer<PlanSheet> {
    let sheet = sheet_at_once(ready, answered, room)?;
    Ok(sheet.with_unlocks(ready, Tries::begin(&locked(ready, answered)).to_their_end()))
}

/// The same without what has to be searched for: why there is no more, and what would give more. It takes no time worth saying.
///
/// # Errors
/// [`Refusal::PlanBroken`] for a plan that breaks a rule, passes its own bound, or is not of this problem; [`Refusal::OutOfRange`].
pub fn sheet_at_once(ready: &Ready, answered: &Answered, room: Room) -> Answer<PlanSheet> {
    if !ready.asked.holds(answered) {
        return Err(Refusal::PlanBroken);
    }
    let draft = match (&ready.asked, &answered.plan) {
        (Asked::Rows(problem), Made::Rows(plan)) => rows::draft(ready, (problem, answered), plan)?,
        (Asked::Parts(problem), Made::Parts(plan)) => parts::draft(ready, (problem, answered), plan)?,
        (Asked::Sticks(problem), Made::Sticks(plan)) => sticks::draft(ready, (problem, answered), plan)?,
        (Asked::Field(problem), Made::Field(plan)) => field::draft(ready, (problem, answered), plan)?,
        _ => return Err(Refusal::PlanBroken),
    };
    tally::sheet(ready, answered, (draft, room))
}

/// Joints of neighbouring rows that are nearer than an eighth of an inch, as near as a page tells, lie in one line (ours). In nanometres.
const JOINTS_LEAST: i64 = Length::INCH_64TH.as_nm().saturating_mul(8);

/// What is searched for beside the page of a plan: what holds it, and what would give more.
pub fn locked(ready: &Ready, answered: &Answered) -> Locked {
    let had =
        |(nth, source): (usize, &ready::Source)| Had { each: source.ripped.saturating_mul(source.tiles), more: ready.can_be_had(nth) };
    let piles = ready.sources.iter().enumerate().map(had).collect();
    let joints_least = JOINTS_LEAST.saturating_add(ready.unit).saturating_sub(1).checked_div(ready.unit).unwrap_or(1);
    Locked { asked: ready.asked.clone(), answered: answered.clone(), piles, joints_least }
}

impl PlanSheet {
    /// Takes in what a short end would give, as it was found beside the page.
    pub fn with_short_end(mut self, ready: &Ready, found: Option<crate::plan::rows::ends::ShortEnd>) -> PlanSheet {
        self.ends.short = found.and_then(|found| rows::short_end(ready, found));
        self
    }

    /// Takes in what would give more, and what holds the plan.
    pub fn with_unlocks(mut self, ready: &Ready, Unlocks { held, all }: Unlocks) -> PlanSheet {
        let length = |units: i64| units.checked_mul(ready.unit).and_then(|nm| Length::nm(nm).ok()).unwrap_or_default();
        let why = held.map(|held| match held {
            Held::Part { part } => Why::Part { part },
            Held::Together { parts } => Why::Together { parts },
            Held::Wood => Why::Wood,
            Held::Joints(it) => Why::Joints { apart: length(it.apart), rows: it.rows },
        });
        // That the joints hold them was found by a plan; a proof by length does not know of it.
        let first = why.clone().filter(|why| matches!(why, Why::Joints { .. }));
        (self.short, self.proof.why) = (board_ends::proven(ready, &self, all), first.or(self.proof.why).or(why));
        self
    }
}

#[cfg(test)]
mod tests;
