//! A batch: n of N pieces of one operation, with the time they took.

use super::pace;
use super::run::Run;
use crate::quantity::{Count, Moment, Span};

/// How far an operation of a job has come. Rework is left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Batch {
    pub n: Count,
    /// How many there are to do, when that was said.
    pub of: Option<Count>,
    /// Time worked up to the last piece.
    pub time: Span,
    /// Time worked since the last piece.
    pub since: Span,
}

impl Batch {
    /// The batch of the runs of one operation, seen from `now`.
    pub fn of<'a>(runs: impl Iterator<Item = &'a Run> + Clone, of: Option<Count>, now: Moment) -> Batch {
        let runs = runs.filter(|run| !run.work.rework);
        let n = runs.clone().fold(0, |sum: Count, run| sum.saturating_add(run.done()));
        let all = Span::sum(runs.clone().map(|run| run.worked(now)));
        let last = runs.clone().flat_map(|run| &run.notches).map(|notch| notch.at).max();
        let time = last.map_or(Span::ZERO, |last| Span::sum(runs.map(|run| run.worked_within(Moment::at(i64::MIN), last, now))));
        Batch { n, of, time, since: all.minus(time) }
    }

    /// Time for each piece, from the first one on.
    pub fn pace(&self) -> Option<Span> {
        pace::pace(self.time, self.n)
    }

    /// Pieces still to do.
    pub fn left(&self) -> Option<Count> {
        self.of.map(|of| of.saturating_sub(self.n))
    }

    /// About what is left.
    pub fn remaining(&self) -> Option<Span> {
        self.left().zip(self.pace()).map(|(left, pace)| pace::remaining(left, pace, self.since))
    }
}

#[cfg(test)]
mod tests {
    use super::super::run::Notch;
    use super::super::sample::{at, id, run, wall};
    use super::*;

    #[track_caller]
    fn check(runs: &[Run], of: Option<Count>, now: i64, (n, pace, left): (Count, Option<i64>, Option<i64>)) {
        let batch = Batch::of(runs.iter(), of, at(now));
        let minutes = |span: Option<Span>| span.map(Span::as_minutes);
        assert_eq!((batch.n, minutes(batch.pace()), minutes(batch.remaining())), (n, pace, left));
    }

    #[test]
    fn pieces_add_up_over_runs_and_breaks_do_not_count() {
        let notch = |minute| Notch { id: id(7), at: at(minute), n: 1 };
        let mut one = run(1, 0);
        (one.stopped, one.notches) = (Some(wall(25)), vec![notch(10), notch(20)]);
        let mut two = run(2, 100);
        check(&[one.clone()], None, 25, (2, Some(10), None));
        check(&[one.clone(), two.clone()], Some(5), 103, (2, Some(10), Some(22))); // 5 + 3 minutes since the last piece
        two.notches.push(notch(107));
        check(&[one.clone(), two.clone()], Some(5), 107, (3, Some(11), Some(21)));
        check(&[one.clone(), two.clone()], Some(3), 130, (3, Some(11), Some(0)));
        one.work.rework = true;
        check(&[one, two], Some(3), 107, (1, Some(7), Some(14)));
    }
}
