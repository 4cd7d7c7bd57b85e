//! Facts of time: runs, their mending, batches, helpers.

use super::kinds;
use crate::quantity::{Count, Id, Moment, Money};
use serde::{Deserialize, Serialize};

/// The kind of an operation, for reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    Fetch,
    Make,
    Sell,
    Deliver,
    Office,
}

/// The stage of a job's life, for the bar, where it is not that of the kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    Fetch,
    Sort,
    Make,
    Finish,
    Sell,
    Deliver,
}

/// Who mended a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mender {
    /// The maker took the end that was proposed.
    Proposed,
    /// The maker typed it.
    Typed,
}

kinds! {
    /// Work began; the run's id is the entry's. `from` is the moment it began where that was earlier than the tap.
    /// Of a job, of a haul, or of neither; `person` is missing for the maker.
    RunStarted { op: String, kind: Kind; job: Id, haul: Id, stage: Stage, from: Moment, person: Id, rework: bool }
    /// Work ended. `switched` when the next run began in the same act.
    RunStopped { run: Id; switched: bool }
    /// A run's ends were put right; the stamps stay. A missing end stays as it was.
    RunMended { run: Id, by: Mender; start: Moment, stop: Moment, op: String }
    /// Work that was not stamped was written down afterwards; its id is the entry's.
    RunRecalled { op: String, kind: Kind, start: Moment, stop: Moment; job: Id, haul: Id, stage: Stage, person: Id, rework: bool, heads: Count }
    /// Pieces of a batch were done in a run.
    PiecesDone { run: Id, n: Count; }
    /// How many pieces an operation of a job has.
    BatchPlanned { job: Id, op: String, n: Count; }
    /// A helper joined a run; heads count. `pay` per hour when paid.
    HelperJoined { run: Id; person: Id, pay: Money }
    /// A helper left a run.
    HelperLeft { run: Id; person: Id }
}

impl Kind {
    pub const ALL: [Kind; 5] = [Kind::Fetch, Kind::Make, Kind::Sell, Kind::Deliver, Kind::Office];

    /// The stage a kind belongs to when none is said.
    pub fn stage(self) -> Stage {
        match self {
            Kind::Fetch => Stage::Fetch,
            Kind::Make => Stage::Make,
            Kind::Sell | Kind::Office => Stage::Sell,
            Kind::Deliver => Stage::Deliver,
        }
    }
}
