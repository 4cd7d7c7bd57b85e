//! Facts of estimates: old jobs as history, and estimates as they were given.

use super::{Exact, kinds};
use crate::quantity::{Count, Id, Key, Money, Span};

kinds! {
    /// An old job was told, to count as history: what it took, and as far as they are known what was thought of it, what it sold for (all
    /// pieces together), which kind of piece it was and how many alike (one where it is missing). The same name replaces it. Put right, it
    /// names the entry by which it was `first` told: of all that name one the latest stands. Where nothing told its kind of piece, it is of
    /// that which the job it was `told_for` is said to be.
    OldJobTold { name: String, span: Span; thought: Span, sum: Money, piece: Key, pieces: Count, first: Id, told_for: Id }
    /// An estimate of a job as it was given, in whole minutes: less than `low` one time in ten, `likely` as the middles of its operations add up, no more
    /// than `high` nine times in ten. `thought` is what the maker thought of all of it, where all of it was thought, before the `factor` learnt from so many `jobs`; `allowance` for
    /// rework stands where there is no factor. The latest stands.
    EstimateMade { job: Id, low: Span, likely: Span, high: Span; thought: Span, factor: Exact, jobs: Count, allowance: Exact }
    /// All that is to be done on a job is planned, or it is not: then its estimate holds the rest of what such a piece takes as a whole.
    /// Of a job that was worked on without a plan: nothing of its work is to come.
    WholePlanned { job: Id, whole: bool; }
    /// The estimate of a job is reckoned with the factor learnt from jobs, or without it and with an allowance for rework.
    FactorSet { job: Id, with: bool; }
}
