//! What a stretch of work is for: the kind of the operation, the stage of the job's life, and who put a run right.

use crate::quantity::spelled;

/// The kind of an operation, for reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    Fetch,
    Make,
    Sell,
    Deliver,
    Office,
}

spelled!(Kind: Fetch "fetch", Make "make", Sell "sell", Deliver "deliver", Office "office");

/// The stage of a job's life, for the bar, where it is not that of the kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    Fetch,
    Sort,
    Make,
    Finish,
    Sell,
    Deliver,
}

spelled!(Stage: Fetch "fetch", Sort "sort", Make "make", Finish "finish", Sell "sell", Deliver "deliver");

/// Who mended a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mender {
    /// The maker took the end that was proposed.
    Proposed,
    /// The maker typed it.
    Typed,
}

spelled!(Mender: Proposed "proposed", Typed "typed");

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
