//! Facts of time: runs, their mending, batches, helpers.

pub use crate::bench::{Kind, Mender, Stage};

use super::kinds;
use crate::quantity::{Count, Id, Moment, Money, Offset};

kinds! {
    /// Work began; the run's id is the entry's. `from` is the moment it began where that was earlier than the tap.
    /// Of a job, of a haul, or of neither; `person` is missing for the maker.
    RunStarted { op: String, kind: Kind; job: Id, haul: Id, stage: Stage, from: Moment, person: Id, rework: bool }
    /// Work ended. `switched` when the next run began in the same act.
    RunStopped { run: Id; switched: bool }
    /// A run's ends were put right; the stamps stay. A missing end stays as it was; with nothing said, the run is right as it stands. `place`
    /// is the clock that showed the new start, where that was another than the one of the start before.
    RunMended { run: Id, by: Mender; start: Moment, stop: Moment, op: String, place: Offset }
    /// Work that was not stamped was written down afterwards; its id is the entry's. `heads` at work, the person's own too. `place`
    /// is the clock that showed its start, where that was another than the one it was written down by.
    RunRecalled {
        op: String, kind: Kind, start: Moment, stop: Moment;
        job: Id, haul: Id, stage: Stage, person: Id, rework: bool, heads: Count, place: Offset
    }
    /// Pieces of a batch were done in a run. In the act that wrote down the rest of a run after a break they stand for those it struck, in their
    /// order, and are of the moment of those.
    PiecesDone { run: Id, n: Count; }
    /// How many pieces an operation of a job has. Said as the maker is `done` with it, it is done once so many are noted: of what is coated that
    /// is so many coats of a piece, and on how many pieces each is stays as it was.
    BatchPlanned { job: Id, op: String, n: Count; done: bool }
    /// A helper joined a run; heads count. `pay` per hour when paid.
    HelperJoined { run: Id; person: Id, pay: Money }
    /// A helper left a run.
    HelperLeft { run: Id; person: Id }
    /// A run was of another job or haul, or of neither; its pieces and helpers go along.
    RunMoved { run: Id; job: Id, haul: Id }
    /// A run was of another operation, with its kind and, where that is not the kind's own, its stage.
    RunRenamed { run: Id, op: String, kind: Kind; stage: Stage }
    /// A helper worked along in a run, written down afterwards; with no `to` they stay. `pay` per hour when paid.
    HelperRecalled { run: Id, from: Moment; to: Moment, person: Id, pay: Money }
    /// When a helper came or went, or what they are paid, was put right; `helper` is the entry by which they came. What is missing stays as it was.
    HelperMended { run: Id, helper: Id; from: Moment, to: Moment, pay: Money }
}
