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

/// What hours were for, by the same words on every page: the stages of a job's life, with selling and the desk told apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Division {
    Fetch,
    Sort,
    Make,
    Finish,
    Sell,
    Office,
    Deliver,
}

impl Division {
    /// Where hours of a kind and a stage belong.
    ///
    /// ```
    /// use fivebar_core::bench::{Division, Kind, Stage};
    /// assert_eq!(Division::of(Kind::Make, Stage::Finish), Division::Finish);
    /// assert_eq!(Division::of(Kind::Office, Stage::Sell), Division::Office);
    /// ```
    pub fn of(kind: Kind, stage: Stage) -> Division {
        match (stage, kind) {
            (Stage::Fetch, _) => Division::Fetch,
            (Stage::Sort, _) => Division::Sort,
            (Stage::Make, _) => Division::Make,
            (Stage::Finish, _) => Division::Finish,
            (Stage::Sell, Kind::Office) => Division::Office,
            (Stage::Sell, _) => Division::Sell,
            (Stage::Deliver, _) => Division::Deliver,
        }
    }
}

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
