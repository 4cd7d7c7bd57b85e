//! What is tapped, typed and chosen there.

use crate::parts::pad::Press;
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Id, Length};
use fivebar_core::sheet::make::buy::Counted;
use fivebar_core::sheet::make::{Way, Which};

/// What can be said there.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    Open,
    Choose,
    Shape(Shape),
    At(usize),
    Press(Press),
    Split(bool),
    /// A top may be of several woods, or is of one.
    Mixed(bool),
    /// Another of the ways in which a top could be made; it is planned at once.
    Way(Way),
    /// Strips may be cut in pieces after all; it is planned at once.
    CutInPieces,
    /// The joints of rows may be so near; it is planned at once.
    JointsApart(Length),
    /// A part that nothing fits is made as a top in rows.
    TopOf(String),
    /// As many as the wood gives.
    AsMany,
    Pattern(usize),
    /// Whichever pattern comes nearest.
    AnyPattern,
    Two,
    Piles,
    /// Boards to buy are to be added; of this wood; they are added; these are left out again.
    Buy,
    BuyWood(usize),
    AddBoards,
    /// Nothing is added.
    LeaveBoards,
    DropBoards(usize),
    Turn(Which),
    /// Plans; from the answer, plans again.
    Go,
    Stop,
    /// Back to the figures.
    Change,
    Piece(usize),
    /// All boards of a line are cut, or none.
    Tick(usize),
    /// A row of a top is cut and lies together, or not.
    TickRow(usize),
    /// The list at the saw by rows, or by piles.
    ByRow(bool),
    /// Of a top of which rows are cut the others are planned alone; all of it anew.
    OtherRows,
    AllAnew,
    /// One board more of a line is cut.
    OneMore(usize),
    /// What was put back of the wood of the job's plans is taken again.
    TakeAgain,
    /// What the plan lacks is looked for at the next yard; what that entry looks for, no more.
    LookFor,
    LookNoMore(Id),
    Use,
    /// The plan in hand is wanted no more; of one in use its wood stays in the job, or goes back.
    Drop,
    DropAnd(bool),
    /// The plan's wood is taken, where the wood of the plan before stays in the job, or goes back.
    UseAnd(bool),
    /// What was asked of the wood is left open, and nothing is done.
    NotNow,
    /// So much over in width for this plan alone, or as the saw's figures say; it is planned at once.
    Over(Option<Length>),
    /// A part is left out, or comes in again; and the plan is tried again where it was refused for it.
    LeaveOut(String),
    /// The page of a pile, where its size is put right.
    Pile(Lying),
    /// Boards the plan wants were bought: the page where they are written down.
    Bought,
    /// Boards that were bought in another size count as those it wants.
    CountAs(Counted),
    /// The list at the saw of a job, from anywhere.
    Saw(Id),
    /// That of one of its plans.
    SawOf(Id, Id),
    /// A plan of the open job whose wood was taken.
    Kept(Id),
    Print,
    /// The job's parts and operations under its name, to make again.
    KeepDesign,
    /// The same under the name of the design it was made from.
    KeepDesignAs(String),
    /// A design's parts and operations become the job's.
    UseDesign(Id),
    /// How the outlook was reckoned, or no longer.
    Outlook,
}
