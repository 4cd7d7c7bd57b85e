//! Time added up: by kind, stage and operation, and by where each minute comes from. Whole milliseconds, no rounding.

use super::{Division, Kind, Run, Stage};
use crate::quantity::Sorted;
use crate::quantity::{Moment, Span};
use std::borrow::Cow;

/// Where a minute comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// Both ends are stamps.
    Measured,
    /// An end was put right.
    Corrected,
    /// Written down afterwards.
    Recalled,
}

/// Time by where it comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shares {
    pub measured: Span,
    pub corrected: Span,
    pub recalled: Span,
}

impl Shares {
    pub fn total(self) -> Span {
        self.measured.plus(self.corrected).plus(self.recalled)
    }

    pub fn with(mut self, source: Source, span: Span) -> Shares {
        let place = match source {
            Source::Measured => &mut self.measured,
            Source::Corrected => &mut self.corrected,
            Source::Recalled => &mut self.recalled,
        };
        *place = place.plus(span);
        self
    }

    /// In whole minutes, with what stands beside them: together as many as all of it has, so that every report adds up to its whole.
    ///
    /// ```
    /// use fivebar_core::bench::Shares;
    /// use fivebar_core::quantity::Span;
    /// let half = Span::ms(30_000);
    /// let own = Shares { measured: half.times(3), corrected: half, recalled: half.times(2) };
    /// let (shares, hauls) = own.in_minutes(half.times(2));
    /// assert_eq!((shares.total().plus(hauls), shares.recalled, hauls), (Span::minutes(4), Span::minutes(1), Span::minutes(1)));
    /// ```
    pub fn in_minutes(self, beside: Span) -> (Shares, Span) {
        let spans = Span::in_minutes(&[self.measured, self.corrected, self.recalled, beside]);
        let at = |nth: usize| spans.get(nth).copied().unwrap_or_default();
        (Shares { measured: at(0), corrected: at(1), recalled: at(2) }, at(3))
    }

    pub fn plus(self, other: Shares) -> Shares {
        Shares {
            measured: self.measured.plus(other.measured),
            corrected: self.corrected.plus(other.corrected),
            recalled: self.recalled.plus(other.recalled),
        }
    }
}

/// The time of several runs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Time {
    /// The person's own time; what is paid as hours of a job.
    pub own: Shares,
    /// Own time and that of the heads that worked along.
    pub labour: Span,
    pub rework: Span,
    pub by_kind: Sorted<Kind, Shares>,
    pub by_stage: Sorted<Stage, Shares>,
    pub by_division: Sorted<Division, Shares>,
    pub by_op: Sorted<String, Shares>,
}

impl Time {
    /// Adds up runs, seen from `now`, each as far as it stands; of one of which nothing does it is known that its operation was begun.
    pub fn of<'a>(runs: impl IntoIterator<Item = &'a Run>, standing: impl Fn(&'a Run) -> Option<Cow<'a, Run>>, now: Moment) -> Time {
        let mut time = Time::default();
        for run in runs {
            match standing(run) {
                Some(run) => time.add(&run, now),
                None => add(&mut time.by_op, run.work.op.clone(), Shares::default()),
            }
        }
        time
    }

    fn add(&mut self, run: &Run, now: Moment) {
        let shares = run.shares(now);
        self.own = self.own.plus(shares);
        self.labour = self.labour.plus(run.labour(now));
        if run.work.rework {
            self.rework = self.rework.plus(shares.total());
        }
        add(&mut self.by_kind, run.work.kind, shares);
        add(&mut self.by_stage, run.work.stage, shares);
        add(&mut self.by_division, Division::of(run.work.kind, run.work.stage), shares);
        add(&mut self.by_op, run.work.op.clone(), shares);
    }

    /// Own time of a kind.
    pub fn kind(&self, kind: Kind) -> Span {
        self.by_kind.get(&kind).copied().unwrap_or_default().total()
    }

    /// Own time of a stage.
    pub fn stage(&self, stage: Stage) -> Span {
        self.by_stage.get(&stage).copied().unwrap_or_default().total()
    }
}

/// Adds shares under a name.
pub fn add<K: Ord>(map: &mut Sorted<K, Shares>, key: K, shares: Shares) {
    let there = map.entry(key).or_default();
    *there = there.plus(shares);
}
