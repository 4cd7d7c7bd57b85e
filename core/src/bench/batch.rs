//! A batch: n of N pieces of one operation, with the time they took.

use super::pace;
use super::pieces::noted_by;
use super::run::Run;
use crate::quantity::{Count, Listed, Moment, Span};

/// How far an operation of a job has come. Rework is left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Batch {
    pub n: Count,
    /// Of them, those that say what a piece takes: one that was noted after the last act of a run in question is done, and no more is known.
    pub paced: Count,
    /// How many there are to do, when that was said.
    pub of: Option<Count>,
    /// That was planned with the operation, and nobody said it at the bench.
    pub only_planned: bool,
    /// Time worked up to the last piece.
    pub time: Span,
    /// Time worked since the last piece.
    pub since: Span,
    /// The same of what stands of each run, at its word: what the piece at hand took so far.
    pub at_hand: Span,
    /// Of runs that look like a forgotten stop, the time after their last piece: it is no pace until it was answered for.
    pub unsettled: Span,
    /// All the time that stands.
    pub sure: Span,
    /// How far about what is left may be off, either way; known from two notes on.
    pub spread: Option<Span>,
    /// Somebody is at it.
    pub runs: bool,
}

impl Batch {
    /// The batch of the runs of one operation, seen from `now`, each taken at its word.
    pub fn of<'a>(runs: impl Iterator<Item = &'a Run> + Clone, of: Option<Count>, now: Moment) -> Batch {
        Batch::but((|_| None, |run| run.end(now)), runs, of, now)
    }

    /// The same where some runs look like a forgotten stop, with their last acts: each of them is taken up to its last piece by then; and
    /// up to when each stands.
    pub fn but<'a>(
        (wrong, stands_to): (impl Fn(&Run) -> Option<Moment>, impl Fn(&Run) -> Moment),
        runs: impl Iterator<Item = &'a Run>,
        of: Option<Count>,
        now: Moment,
    ) -> Batch {
        let runs = runs.filter(|run| !run.work.rework).map(|run| (run, run.end(now))).listed();
        let settled = |(run, end): &(&'a Run, Moment)| {
            let last = wrong(run).map(|act| last_note_by(run, act).min(*end));
            (*run, last.unwrap_or(*end), last)
        };
        let taken = runs.iter().map(settled).listed();
        let all = Span::sum(runs.iter().map(|(run, end)| run.started.at.until(*end)));
        let settled = Span::sum(taken.iter().map(|(run, end, _)| run.started.at.until(*end)));
        let noted = noted_by(taken.iter().copied());
        let (paced, time) = (sum_of(&noted), Span::sum(noted.iter().map(|(span, _)| *span)));
        let n = runs.iter().fold(0, |sum: Count, (run, _)| sum.saturating_add(run.done()));
        let left = of.map(|of| of.saturating_sub(n)).filter(|left| 0 < *left && 1 < paced);
        let spread = left.and_then(|left| pace::spread(&noted, left));
        let last = runs.iter().flat_map(|(run, _)| &run.notches).map(|notch| notch.at).max().unwrap_or(Moment::at(i64::MIN));
        let sure = runs.iter().map(|(run, _)| (*run, stands_to(run))).listed();
        let at_hand = Span::sum(sure.iter().filter(|(_, end)| last < *end).map(|(run, end)| run.started.at.max(last).until(*end)));
        Batch {
            n,
            paced,
            of,
            only_planned: false,
            time,
            since: settled.minus(time),
            at_hand,
            unsettled: all.minus(settled),
            sure: Span::sum(sure.iter().map(|(run, end)| run.started.at.until(*end))),
            spread,
            runs: runs.iter().any(|(run, _)| run.is_running()),
        }
    }

    /// All the time it took so far.
    pub fn all(&self) -> Span {
        self.time.plus(self.since).plus(self.unsettled)
    }

    /// All pieces are done, as far as it was said how many there are.
    pub fn is_done(&self) -> bool {
        self.of.is_some_and(|of| of <= self.n)
    }

    /// Pieces of it are known to be left: of those that were said at the bench; of those that were only planned, where any was noted.
    pub fn has_left(&self) -> bool {
        self.left().is_some_and(|left| 0 < left) && (!self.only_planned || 0 < self.n)
    }

    /// What is left, from and to, at 80 %.
    pub fn range(&self) -> Option<(Span, Span)> {
        let (left, off) = self.remaining().zip(self.spread)?;
        (Span::ZERO < left).then(|| (left.minus(off).max(Span::ZERO), left.plus(off)))
    }

    /// Time for each piece, from the first one on.
    pub fn pace(&self) -> Option<Span> {
        pace::pace(self.time, self.paced)
    }

    /// What a piece takes, as it is said of the batch: the same while somebody is at it and once nobody is.
    pub fn each(&self) -> Option<Span> {
        self.pace()
    }

    /// Time worked since the last piece, in one that is not done or after the last of all: it is in no pace and stands apart beside it, so that
    /// a piece that was broken off, or one that nobody noted, makes nobody look fast. Minutes in question are left out; none below a minute.
    pub fn apart(&self) -> Option<Span> {
        Some(self.since).filter(|since| 0 < self.n && Span::minutes(1) <= *since)
    }

    /// How long the piece at hand has taken so far, once that is longer than the pace: the slow piece shows.
    pub fn slow(&self) -> Option<Span> {
        let at_one = self.runs && !self.is_done() && Span::minutes(1) <= self.at_hand;
        Some(self.at_hand).filter(|since| at_one && self.pace().is_some_and(|pace| pace < *since))
    }

    /// Pieces still to do.
    pub fn left(&self) -> Option<Count> {
        self.of.map(|of| of.saturating_sub(self.n))
    }

    /// About what is left.
    pub fn remaining(&self) -> Option<Span> {
        self.left().zip(self.pace()).map(|(left, pace)| pace::remaining(left, pace, self.at_hand))
    }
}

/// What runs, but for rework, took since their last pieces.
pub(super) fn since_last_note<'a>(runs: impl Iterator<Item = &'a Run>, now: Moment) -> Span {
    Span::sum(runs.filter(|run| !run.work.rework).map(|run| last_note(run).until(now)))
}

/// What the piece at hand at a moment had taken of some runs by then: the time worked since the last piece of any of them.
pub(super) fn at_hand_by(at: Moment, runs: &[&Run]) -> Span {
    let notes = runs.iter().flat_map(|run| &run.notches).map(|notch| notch.at).filter(|note| *note <= at);
    let last = notes.max().unwrap_or(Moment::at(i64::MIN));
    Span::sum(runs.iter().map(|run| run.worked_within(last, at, at)))
}

/// The last piece of a run; its start where it has none.
fn last_note(run: &Run) -> Moment {
    last_note_by(run, Moment::at(i64::MAX))
}

/// The same by a moment.
fn last_note_by(run: &Run, act: Moment) -> Moment {
    run.notches.iter().map(|notch| notch.at).filter(|at| *at <= act).fold(run.started.at, Moment::max)
}

fn sum_of(noted: &[(Span, Count)]) -> Count {
    noted.iter().fold(0, |sum: Count, (_, n)| sum.saturating_add(*n))
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

    /// Demo A: pieces at 34, 30 and 31 minutes, six minutes since; 57 min left, from 50 min to 1 h 04.
    #[test]
    fn what_is_left_has_a_range_from_two_pieces_on() {
        let notch = |minute| Notch { id: id(7), at: at(minute), n: 1 };
        let (mut one, mut two) = (run(1, 0), run(2, 200));
        (one.stopped, one.notches) = (Some(wall(70)), vec![notch(34), notch(64)]);
        let range = |runs: &[Run], of| {
            let batch = Batch::of(runs.iter(), of, at(231));
            (batch.remaining().map(Span::as_minutes), batch.range().map(|(from, to)| (from.as_minutes(), to.as_minutes())))
        };
        two.notches = vec![notch(225)];
        assert_eq!(range(&[one.clone(), two.clone()], Some(5)), (Some(57), Some((50, 64))));
        assert_eq!(range(&[one.clone(), two.clone()], None), (None, None));
        assert_eq!(range(&[one, two], Some(3)), (Some(0), None));
    }

    /// Pieces by the minute, when it was stopped, how many there are; seen at a minute: what each took, and the slow one so far.
    #[test]
    fn a_slow_piece_shows_and_one_pace_holds_after_the_stop_with_the_rest_apart() {
        let check = |notes: &[i64], stop: Option<i64>, of: Option<Count>, now: i64, wanted: [Option<i64>; 3]| {
            let mut one = run(1, 0);
            one.stopped = stop.map(wall);
            one.notches = notes.iter().map(|minute| Notch { id: id(7), at: at(*minute), n: 1 }).collect();
            let batch = Batch::of(std::iter::once(&one), of, at(now));
            let minutes = |span: Option<Span>| span.map(Span::as_minutes);
            assert_eq!([batch.pace(), batch.slow(), batch.apart()].map(minutes), wanted, "{notes:?} {stop:?} {of:?} at {now}");
        };
        check(&[], None, Some(5), 295, [None; 3]);
        check(&[45, 90], None, Some(5), 90, [Some(45), None, None]);
        check(&[45, 90], None, Some(5), 100, [Some(45), None, Some(10)]);
        check(&[45, 90], None, Some(5), 135, [Some(45), None, Some(45)]);
        check(&[45, 90], None, Some(5), 295, [Some(45), Some(205), Some(205)]); // 2 x 45 + 3 h 25 = 4 h 55
        check(&[45, 90], None, None, 295, [Some(45), Some(205), Some(205)]);
        check(&[45, 90], Some(295), Some(5), 400, [Some(45), None, Some(205)]);
        check(&[45, 90], Some(295), None, 400, [Some(45), None, Some(205)]);
        check(&[12, 24, 36, 48, 60], Some(90), Some(5), 400, [Some(12), None, Some(30)]);
        check(&[12, 24, 36, 48, 60], None, Some(5), 90, [Some(12), None, Some(30)]); // all are done
        check(&[4, 8, 12, 16, 20, 24, 28], Some(50), None, 90, [Some(4), None, Some(22)]);
        check(&[14], Some(30), Some(4), 90, [Some(14), None, Some(16)]); // 14 before the stop, 14 after it
    }

    /// Two pieces at 10 minutes each, and the stop forgotten over night.
    #[test]
    fn minutes_in_question_make_no_piece_slow() {
        let mut one = run(1, 0);
        (one.stopped, one.notches) = (Some(wall(900)), [10, 20].map(|minute| Notch { id: id(7), at: at(minute), n: 1 }).to_vec());
        let apart = |wrong: bool| {
            let batch = Batch::but((|_| wrong.then(|| at(1_000)), |run| run.end(at(1_000))), std::iter::once(&one), Some(5), at(1_000));
            [batch.pace(), batch.apart()].map(|span| span.map(Span::as_minutes))
        };
        assert_eq!([true, false].map(apart), [[Some(10), None], [Some(10), Some(880)]]);
    }

    /// From 0 on, a piece after 50 minutes; the stop was forgotten over night, pieces are noted the next morning, and one run more takes 40 for one.
    #[test]
    fn a_piece_noted_after_the_night_is_done_and_in_no_pace() {
        let check = |notes: &[(i64, Count)], more: bool, (n, pace, range): (Count, Option<i64>, bool)| {
            let (mut one, mut two) = (run(1, 0), run(2, 1_500));
            one.stopped = Some(wall(1_020));
            one.notches = notes.iter().map(|(minute, n)| Notch { id: id(7), at: at(*minute), n: *n }).collect();
            (two.stopped, two.notches) = (Some(wall(1_545)), vec![Notch { id: id(7), at: at(1_540), n: 1 }]);
            let runs = if more { vec![&one, &two] } else { vec![&one] };
            let batch =
                Batch::but((|run| (run.id == id(1)).then(|| at(60)), |run| run.end(at(1_600))), runs.into_iter(), Some(9), at(1_600));
            assert_eq!((batch.n, batch.pace().map(Span::as_minutes), batch.range().is_some()), (n, pace, range), "{notes:?} {more}");
        };
        check(&[(50, 1)], false, (1, Some(50), false));
        check(&[(50, 1), (1_010, 1)], false, (2, Some(50), false));
        check(&[(50, 1), (1_010, 3)], false, (4, Some(50), false));
        check(&[(1_010, 1)], false, (1, None, false));
        check(&[(50, 1), (1_010, 1)], true, (3, Some(45), true));
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
