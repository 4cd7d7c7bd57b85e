//! What an operation takes, from what it took on earlier jobs: the first piece and the further ones are learnt apart.

use super::super::Run;
use super::super::pieces::joined;
use super::gain::{Wright, of_pieces};
use super::spread::{Likely, minutes, of_past};
use crate::quantity::{Count, Listed, Moment, Span};

/// What an operation took on one job.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Past {
    /// Pieces it was done for, at least one.
    pub n: Count,
    /// Minutes of all heads: who helped before may not be there again.
    pub time: Span,
    /// Pieces and time so far, at each note of pieces done; quick taps are one note.
    pub noted: Vec<(Count, Span)>,
}

impl Past {
    /// What the runs of one operation of a job took, for so many pieces; rework is left out. None where a run still goes on, lasted no time,
    /// or is listed for mending.
    pub fn of(runs: &[&Run], n: Count) -> Option<Past> {
        let end = Moment::at(i64::MAX);
        let runs: Vec<&Run> = runs.iter().filter(|run| !run.work.rework).copied().listed();
        let until = |at| Span::sum(runs.iter().map(|run| run.labour_by(at, end)));
        let time = until(end);
        if !runs.iter().all(|run| is_sound(run)) || time <= Span::ZERO {
            return None;
        }
        let mut done: Count = 0;
        let mut noted = vec![];
        for (at, n) in joined(runs.iter().flat_map(|run| &run.notches).map(|notch| (notch.at, notch.n)).listed()) {
            done = done.saturating_add(n);
            noted.push((done, until(at)));
        }
        Some(Past { n: (if done == 0 { n } else { done }).max(1), time, noted })
    }

    /// Of no more than so many pieces: what was noted beyond them is the same pieces again, a second coat, and no note tells them apart.
    pub fn of_at_most(self, n: Count) -> Past {
        if n < self.n { Past { n: n.max(1), noted: vec![], ..self } } else { self }
    }
}

/// It is over, and not listed for mending.
pub fn is_sound(run: &Run) -> bool {
    !run.is_running() && run.doubts(Moment::at(i64::MAX)).is_empty()
}

/// Notes of further pieces from which on the maker's own gain is used. Ours.
const NOTES_LEAST: usize = 5;

/// What an operation will likely take for `n` pieces, by what it took before; none without any.
///
/// Before own data a batch gains as [`super::gain::of_piece`] says, and where notes show it, what comes before the first piece
/// (setup) is not taken n times. From five notes of further pieces on it gains as the maker's own batches did (Wright).
///
/// ```
/// use fivebar_core::bench::estimate::learn::{Past, likely};
/// use fivebar_core::quantity::Span;
/// let past = Past { n: 1, time: Span::minutes(60), noted: vec![] };
/// assert_eq!(likely(&[past], 5).map(|time| time.span().as_minutes()), Some(270)); // 60 x 5 x 0.90
/// ```
pub fn likely(past: &[Past], n: Count) -> Option<Likely> {
    let own = own_gain(past);
    let times: Vec<f64> = past.iter().map(|past| Says::of(past, n, own).minutes()).listed();
    of_past(&times)
}

/// How the maker's own batches gained; none while too few pieces were noted.
pub fn own_gain(past: &[Past]) -> Option<Wright> {
    let further = past.iter().map(|past| past.noted.len().saturating_sub(1)).fold(0, usize::saturating_add);
    let points = |past: &Past| past.noted.iter().map(|(n, so_far)| (*n, minutes(*so_far))).listed();
    if further < NOTES_LEAST { None } else { Wright::fitted(&past.iter().filter(|past| !past.noted.is_empty()).map(points).listed()) }
}

/// Setup and one piece, in minutes, as far as notes tell them apart.
pub fn setup_and_piece(past: &Past) -> (f64, f64) {
    let time = minutes(past.time);
    let even = (0.0, time / of_pieces(past.n.max(1)));
    let (Some((1, first)), Some((last, all))) = (past.noted.first(), past.noted.last()) else { return even };
    let (first, all) = (minutes(*first), minutes(*all));
    if *last < 2 || all <= first {
        return even;
    }
    let piece = (all - first) / (of_pieces(*last) - 1.0);
    let after = (time - all).max(0.0);
    // The first went no slower than the others: nothing of it is setup, and together they took what they took.
    if first < piece {
        return (after, all / of_pieces(*last));
    }
    // Nothing but setup is left of the first piece and of what came after the last.
    (first - piece + after, piece)
}

/// What one past job says of `n` pieces, with the figures it is worked out by; minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Says {
    /// What notes tell apart from the pieces; nothing where they tell nothing, or the maker's own batches say how they gain.
    pub setup: f64,
    /// The first piece without it.
    pub first: f64,
    /// What `n` pieces take of the first.
    pub times: f64,
    /// What as many as it was done for take of the first.
    pub had: f64,
}

impl Says {
    /// One past job, brought to `n` pieces; by the maker's own gain, or before that by what is usual.
    pub fn of(past: &Past, n: Count, own: Option<Wright>) -> Says {
        let had = past.n.max(1);
        match own {
            Some(law) => {
                let had = law.total(had);
                Says { setup: 0.0, first: minutes(past.time) / had, times: law.total(n.max(1)), had }
            }
            None => {
                let (setup, first) = setup_and_piece(past);
                Says { setup, first, times: of_pieces(n.max(1)), had: of_pieces(had) }
            }
        }
    }

    /// setup + first x times.
    pub fn minutes(self) -> f64 {
        self.setup + self.first * self.times
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn past(n: Count, time: i64, noted: &[i64]) -> Past {
        let noted = (1..).zip(noted).map(|(n, so_far)| (n, Span::minutes(*so_far))).collect();
        Past { n, time: Span::minutes(time), noted }
    }

    #[test]
    fn runs_say_what_an_operation_took() {
        use super::super::super::Notch;
        use super::super::super::sample::{at, id, run, wall};
        let notch = |minute, n| Notch { id: id(7), at: at(minute), n };
        let (mut one, mut two) = (run(1, 0), run(2, 100));
        (one.stopped, one.notches) = (Some(wall(40)), vec![notch(30, 1)]);
        let of = |runs: &[&Run]| Past::of(runs, 5).map(|past| (past.n, past.time.as_minutes(), past.noted.len()));
        assert_eq!(of(&[&one, &two]), None, "one goes on");
        (two.stopped, two.notches) = (Some(wall(120)), vec![notch(115, 2)]);
        assert_eq!(
            Past::of(&[&two, &one], 5),
            Some(super::Past { n: 3, time: Span::minutes(60), noted: vec![(1, Span::minutes(30)), (3, Span::minutes(55))] })
        );
        two.work.rework = true;
        assert_eq!(of(&[&one, &two]), Some((1, 40, 1)));
        one.notches.clear();
        assert_eq!(of(&[&one]), Some((5, 40, 0)), "as many as the job has");
        let head = super::super::super::heads::Head { id: id(9), n: 1, person: None, pay: None, from: at(10), to: None };
        one.heads.push(head);
        assert_eq!(of(&[&one]), Some((5, 70, 0)), "a helper from 10 to 40");
        one.heads.clear();
        one.lifted = true;
        assert_eq!((of(&[&one]), of(&[])), (None, None));
    }

    #[track_caller]
    fn check(jobs: &[Past], n: Count, minutes: Option<i64>) {
        assert_eq!(likely(jobs, n).map(|time| time.span().as_minutes()), minutes);
    }

    #[test]
    fn five_cost_less_than_five_times_one() {
        check(&[], 5, None);
        check(&[past(1, 60, &[])], 1, Some(60));
        check(&[past(1, 60, &[])], 5, Some(270));
        check(&[past(5, 270, &[])], 1, Some(60));
        check(&[past(5, 270, &[]), past(1, 60, &[])], 2, Some(117));
        check(&[past(0, 60, &[])], 0, Some(60)); // of nothing it is not known
    }

    #[test]
    fn setup_is_not_taken_twice() {
        let one = past(3, 60, &[40, 50, 60]); // 20 for two further ones: 10.81 each of a first, 29.19 of setup
        let (setup, piece) = setup_and_piece(&one);
        assert_eq!(((setup * 100.0).round(), (piece * 100.0).round()), (2919.0, 1081.0));
        check(std::slice::from_ref(&one), 3, Some(60));
        check(&[one], 6, Some(86)); // 29.19 + 10.81 x 5.25
        assert_eq!(setup_and_piece(&past(2, 35, &[20, 30])), (20.0 - 10.0 / 0.95 + 5.0, 10.0 / 0.95), "wiped up after the last");
        check(&[past(2, 20, &[0, 20])], 1, Some(10)); // 20 / 1.95
        check(&[past(2, 20, &[20, 20])], 2, Some(20)); // both noted at once
    }

    /// Four took 148 min, the first of them less than the others at their pace: as many again take as long.
    #[test]
    fn as_many_again_take_what_they_took() {
        for noted in [&[20, 70, 110, 147][..], &[50, 80, 110, 147], &[147, 147, 147, 147], &[0, 60, 100, 147]] {
            check(&[past(4, 148, noted)], 4, Some(148));
        }
        let (setup, piece) = setup_and_piece(&past(4, 148, &[20, 70, 110, 147]));
        assert_eq!(((setup * 100.0).round(), (piece * 100.0).round()), (100.0, 3973.0)); // (148 - 1) / 3.70
    }

    /// The doubling of this batch brings the average to 80 %: 100, 160, ..., 256.
    #[test]
    fn own_batches_say_how_they_gain() {
        let noted = [100, 160, 211, 256, 298, 337];
        let batch = past(6, 337, &noted);
        let law = own_gain(std::slice::from_ref(&batch)).unwrap();
        assert_eq!((law.of_doubling() * 1000.0).round(), 800.0);
        check(std::slice::from_ref(&batch), 1, Some(100));
        check(std::slice::from_ref(&batch), 12, Some(539));
        assert_eq!(own_gain(&[past(5, 298, &noted[..5])]), None, "four further pieces");
        assert!(own_gain(&[past(3, 211, &noted[..3]), past(4, 256, &noted[..4])]).is_some(), "five of two jobs");
    }
}
