//! One person stands at one bench: a later start ends the earlier run, and no minute is paid twice.
//!
//! Pure and total. The result depends on the set of runs, not on the order in which their corrections came.

use super::run::{Cut, Run};
use crate::quantity::Sorted;
use crate::quantity::order_by_key;
use crate::quantity::{Id, Listed, Moment, Wall};

/// Cuts the runs of each person so that none overlap. `runs` come in order of their stamps.
pub fn one_bench_each(runs: &mut [Run]) {
    let mut people: Sorted<Option<Id>, (Vec<usize>, Vec<usize>)> = Sorted::new();
    for (place, run) in runs.iter().enumerate() {
        let (stamped, recalled) = people.entry(run.work.person).or_default();
        if run.recalled { recalled.push(place) } else { stamped.push(place) }
    }
    for (mut stamped, mut recalled) in people.into_values() {
        let by_start = |place: &usize| runs.get(*place).map(|run| (run.started.at, *place));
        order_by_key(&mut stamped, by_start);
        order_by_key(&mut recalled, by_start);
        for pair in stamped.windows(2) {
            if let [one, next] = pair {
                cut(runs, *one, *next);
            }
        }
        fit_in(runs, &stamped, &recalled);
    }
}

/// The next start ends what runs on, or was stopped only later.
fn cut(runs: &mut [Run], one: usize, next: usize) {
    let said = |run: &Run| run.started.at < run.tapped.at || run.mended_start.is_some();
    let Some((by, Wall { at, offset }, said)) = runs.get(next).map(|next| (next.id, next.started, said(next))) else { return };
    let Some(run) = runs.get_mut(one) else { return };
    if run.stopped.is_none_or(|stop| at < stop.at) {
        let switched = run.switched && run.mended_stop.is_none();
        run.cut = Some(Cut { by, at, offset, said, switched });
    }
}

/// Recalled time yields to stamped time, and to recalled time that begins earlier.
fn fit_in(runs: &mut [Run], stamped: &[usize], recalled: &[usize]) {
    let mut taken: Vec<(Moment, Moment, Id)> = stamped.iter().filter_map(|place| runs.get(*place)).map(stretch).listed();
    for place in recalled {
        let Some(run) = runs.get_mut(*place) else { continue };
        yield_to(run, &taken);
        let own = stretch(run);
        let there = taken.partition_point(|other| *other < own);
        taken.insert(there, own);
    }
}

/// From start to end; a run that goes on takes all that comes.
fn stretch(run: &Run) -> (Moment, Moment, Id) {
    (run.started.at, run.end(Moment::at(i64::MAX)), run.id)
}

/// `taken` is in order and overlaps nothing.
fn yield_to(run: &mut Run, taken: &[(Moment, Moment, Id)]) {
    let Some(stop) = &mut run.stopped else { return };
    for (from, to, id) in taken.iter().filter(|(from, to, _)| from < to) {
        if *to <= run.started.at {
            continue;
        }
        if stop.at <= *from {
            break;
        }
        run.overlaps = run.overlaps.or(Some(*id));
        if run.started.at < *from {
            stop.at = *from;
            break;
        }
        run.started.at = *to;
        stop.at = stop.at.max(*to);
    }
}

#[cfg(test)]
mod tests {
    use super::super::run::Doubt;
    use super::super::sample::{at, id, recalled, run, wall};
    use super::*;

    #[track_caller]
    fn check(mut runs: Vec<Run>, worked: &[i64]) -> Vec<Run> {
        one_bench_each(&mut runs);
        assert_eq!(runs.iter().map(|run| run.worked(at(100)).as_minutes()).collect::<Vec<_>>(), worked);
        runs
    }

    fn stopped(n: u8, from: i64, to: i64) -> Run {
        Run { stopped: Some(wall(to)), ..run(n, from) }
    }

    #[test]
    fn a_later_start_of_the_same_person_ends_the_earlier_run() {
        let runs = check(vec![run(1, 0), run(2, 20)], &[20, 80]);
        assert_eq!(runs[0].doubts(at(100)), [Doubt::EndedElsewhere { by: id(2) }]);
        assert!(!runs[0].is_running() && runs[1].is_running());
        let runs = check(vec![stopped(1, 0, 40), run(2, 20)], &[20, 80]);
        assert_eq!(runs[0].doubts(at(100)), [Doubt::EndedElsewhere { by: id(2) }], "its own stop came too late");
        check(vec![stopped(1, 0, 20), run(2, 20)], &[20, 80])[0].doubts(at(100)).is_empty().then_some(()).unwrap();
        check(vec![stopped(1, 0, 40), stopped(2, 10, 20), stopped(3, 30, 35)], &[10, 10, 5]);
    }

    #[test]
    fn two_people_work_side_by_side() {
        let mut other = run(2, 20);
        other.work.person = Some(id(9));
        check(vec![run(1, 0), other], &[100, 80]);
    }

    #[test]
    fn a_switch_that_was_said_late_is_no_doubt() {
        let mut one = stopped(1, 0, 40);
        one.switched = true;
        let mut next = run(2, 25);
        next.tapped = wall(40);
        let runs = check(vec![one, next], &[25, 75]);
        assert_eq!((runs[0].doubts(at(100)), runs[0].shares(at(100)).corrected.as_minutes()), (vec![], 25));
    }

    #[test]
    fn recalled_time_yields_to_what_is_there() {
        check(vec![stopped(1, 10, 20), recalled(2, 0, 10), recalled(3, 20, 30)], &[10, 10, 10]);
        check(vec![stopped(1, 10, 20), recalled(2, 0, 15)], &[10, 10]);
        check(vec![stopped(1, 10, 20), recalled(2, 15, 30)], &[10, 10]);
        check(vec![stopped(1, 10, 20), recalled(2, 12, 18)], &[10, 0]);
        check(vec![stopped(1, 10, 20), stopped(2, 20, 30), recalled(3, 12, 40)], &[10, 10, 10]);
        check(vec![stopped(1, 10, 20), recalled(2, 0, 40)], &[10, 10]); // the part behind is lost, and listed
        check(vec![recalled(1, 0, 20), recalled(2, 10, 30)], &[20, 10]);
        let runs = check(vec![run(1, 10), recalled(2, 20, 30)], &[90, 0]);
        assert_eq!(runs[1].doubts(at(100)), [Doubt::Overlaps { run: id(1) }]);
    }
}
