//! The first piece of an operation and its repeats, told apart: what the gain of a batch is learnt from.

use super::{Bench, On, Run};
use crate::quantity::{Count, Listed, Moment, Span, order_by_key};

/// Further pieces noted together, and the time worked since the note before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Repeat {
    pub n: Count,
    pub span: Span,
}

/// What the pieces of one operation took, in their order. Breaks and rework are left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pieces {
    pub op: String,
    /// The first piece, with what came before it (setup); none where it was noted together with others.
    pub first: Option<Span>,
    pub repeats: Vec<Repeat>,
}

impl Bench {
    /// First pieces and repeats of each operation of a job, in the order they were begun; operations without a note are left out.
    pub fn pieces(&self, on: On, now: Moment) -> Vec<Pieces> {
        let mut ops: Vec<&str> = vec![];
        for run in self.on(on) {
            if !ops.contains(&run.work.op.as_str()) {
                ops.push(&run.work.op);
            }
        }
        let of = |op: &str| Pieces::of((op, self.on(on).filter(|run| run.work.op == op)), now);
        ops.into_iter().map(of).filter(|pieces| pieces.first.is_some() || !pieces.repeats.is_empty()).listed()
    }
}

impl Pieces {
    fn of<'a>((op, runs): (&str, impl Iterator<Item = &'a Run> + Clone), now: Moment) -> Pieces {
        let noted = noted(runs.filter(|run| !run.work.rework), now);
        let first = noted.first().filter(|(_, n)| *n == 1).map(|(span, _)| *span);
        let further = noted.into_iter().skip(1).map(|(span, n)| Repeat { n, span });
        Pieces { op: op.to_owned(), first, repeats: further.listed() }
    }
}

/// For each note of pieces done: the time worked since the note before, and how many pieces.
fn noted<'a>(runs: impl Iterator<Item = &'a Run>, now: Moment) -> Vec<(Span, Count)> {
    noted_by(runs.map(|run| (run, run.end(now), None)))
}

/// A run, the moment up to which it counts, and that of its last note that says what a piece takes, where not all do.
pub(super) type UpTo<'a> = (&'a Run, Moment, Option<Moment>);

/// The same of runs that each count up to a moment.
pub(super) fn noted_by<'a>(runs: impl Iterator<Item = UpTo<'a>>) -> Vec<(Span, Count)> {
    let mut stints: Vec<(Moment, Moment)> = vec![];
    let mut notes: Vec<(Moment, Count)> = vec![];
    for (run, end, last) in runs {
        stints.push((run.started.at, end));
        let says = run.notches.iter().filter(|notch| last.is_none_or(|last| notch.at <= last));
        notes.extend(says.map(|notch| (notch.at, notch.n)));
    }
    order_by_key(&mut stints, |stint| stint.0);
    let notes = joined(notes);
    let mut walk = Walk { to_come: stints.into_iter().peekable(), open: vec![], over: Span::ZERO };
    let mut before = Span::ZERO;
    let since = |(at, n)| {
        let so_far = walk.until(at);
        (so_far.minus(std::mem::replace(&mut before, so_far)), n)
    };
    notes.into_iter().map(since).listed()
}

/// Notes tapped so soon after one another are one note of so many pieces: nobody made the later ones in between [J].
const TOGETHER: Span = Span::minutes(1);

/// Notes in their order, each chain of quick taps as one at the last of them.
pub(super) fn joined(mut notes: Vec<(Moment, Count)>) -> Vec<(Moment, Count)> {
    order_by_key(&mut notes, |note| note.0);
    let mut all: Vec<(Moment, Count)> = vec![];
    for (at, n) in notes {
        match all.last_mut().filter(|last| last.0.until(at) <= TOGETHER) {
            Some(last) => *last = (at, last.1.saturating_add(n)),
            None => all.push((at, n)),
        }
    }
    all
}

/// Time worked along stints in order of their start, asked for at moments in their order: each stint is looked at while it lasts.
struct Walk<I: Iterator> {
    to_come: std::iter::Peekable<I>,
    open: Vec<(Moment, Moment)>,
    /// Of the stints that are over.
    over: Span,
}

impl<I: Iterator<Item = (Moment, Moment)>> Walk<I> {
    fn until(&mut self, at: Moment) -> Span {
        while let Some(stint) = self.to_come.next_if(|stint| stint.0 < at) {
            self.open.push(stint);
        }
        let (on, over): (Vec<_>, Vec<_>) = self.open.iter().partition(|stint| at < stint.1);
        self.over = self.over.plus(Span::sum(over.iter().map(|(from, to)| from.until(*to))));
        self.open = on;
        self.over.plus(Span::sum(self.open.iter().map(|(from, _)| from.until(at))))
    }
}

#[cfg(test)]
mod tests {
    use super::super::Notch;
    use super::super::estimate::Past;
    use super::super::sample::{at, id, run, wall};
    use super::*;
    use crate::quantity::Sorted;

    /// Runs of 0 to 70 and from 200 on, notes by minute and pieces; the first piece and the repeats in minutes.
    #[track_caller]
    fn check(notes: &[(i64, Count)], first: Option<i64>, repeats: &[(Count, i64)]) {
        let (mut one, mut two) = (run(1, 0), run(2, 200));
        (one.stopped, two.stopped) = (Some(wall(70)), Some(wall(300)));
        for (minute, n) in notes {
            let run = if *minute <= 70 { &mut one } else { &mut two };
            run.notches.push(Notch { id: id(7), at: at(*minute), n: *n });
        }
        let past = Past::of(&[&one, &two], 1).unwrap();
        let on = one.work.on;
        let found = Bench::new(vec![one, two], Sorted::new()).pieces(on, at(400)).pop().unwrap_or_default();
        let shown: Vec<_> = found.repeats.iter().map(|repeat| (repeat.n, repeat.span.as_minutes())).collect();
        assert_eq!((found.first.map(Span::as_minutes), shown.as_slice()), (first, repeats));
        // The gain of a batch is learnt from the same figures, added up.
        let all: Vec<Span> = found.first.into_iter().chain(found.repeats.iter().map(|repeat| repeat.span)).collect();
        let so_far = past.noted.last().map(|(_, so_far)| *so_far).unwrap_or_default();
        assert!(found.first.is_none() || (past.noted.len(), so_far) == (all.len(), Span::sum(all.iter().copied())));
    }

    #[test]
    fn the_first_piece_and_its_repeats_are_told_apart() {
        check(&[], None, &[]);
        check(&[(34, 1)], Some(34), &[]);
        check(&[(34, 1), (64, 1), (225, 1)], Some(34), &[(1, 30), (1, 31)]); // the break of 130 minutes is no work
        check(&[(64, 1), (34, 1)], Some(34), &[(1, 30)]);
        check(&[(34, 1), (64, 3)], Some(34), &[(3, 30)]);
        check(&[(34, 2), (64, 1)], None, &[(1, 30)]); // noted together: none was the first
    }

    /// Three taps at the end of an hour, seconds apart, are three pieces in that hour; so are ten, each soon after the one before.
    #[test]
    fn taps_within_a_minute_are_one_note_of_so_many() {
        let of = |seconds: &[i64]| {
            let mut one = run(1, 0);
            one.stopped = Some(wall(60));
            let at = |second: &i64| at(0).plus(Span::ms(*second * 1_000));
            one.notches = seconds.iter().map(|second| Notch { id: id(7), at: at(second), n: 1 }).collect();
            let past = Past::of(&[&one], 1).unwrap();
            let learnt = past.noted.iter().map(|(n, so_far)| (*n, so_far.as_minutes())).collect::<Vec<_>>();
            let on = one.work.on;
            let found = Bench::new(vec![one], Sorted::new()).pieces(on, super::super::sample::at(400)).pop().unwrap_or_default();
            (learnt, found.first.map(Span::as_minutes), found.repeats.len())
        };
        assert_eq!(of(&[3_590, 3_593, 3_597]), (vec![(3, 60)], None, 0));
        assert_eq!(of(&[3_000, 3_060, 3_120]), (vec![(3, 52)], None, 0));
        assert_eq!(of(&[1_200, 3_590, 3_597]), (vec![(1, 20), (3, 60)], Some(20), 1));
        assert_eq!(of(&[1_200, 1_261, 3_597]), (vec![(1, 20), (2, 21), (3, 60)], Some(20), 2));
    }

    /// Sixty notes over a hundred runs of two people: each run is looked at a few times, not once for each note.
    #[test]
    fn notes_are_walked_along_once() {
        let runs: Vec<Run> = (0..100_u8)
            .map(|n| {
                let mut one = run(n, i64::from(n) * 30);
                one.work.person = (n % 2 == 1).then(|| id(250));
                one.stopped = Some(wall(i64::from(n) * 30 + 50));
                // Not at one moment, or they would be one note of both.
                let first = i64::from(n) * 30 + 11 + i64::from(n % 2) * 2;
                one.notches = (0..2_i64).filter(|_| n < 30).map(|k| Notch { id: id(7), at: at(first + k * 30), n: 1 }).collect();
                one
            })
            .collect();
        let looked = std::cell::Cell::new(0);
        let found = noted(runs.iter().inspect(|_| looked.set(looked.get() + 1)), at(9_000));
        assert!(looked.get() <= 4 * runs.len(), "looked at {} runs", looked.get());
        // The same, one note after the other.
        let mut moments: Vec<Moment> = runs.iter().flat_map(|run| &run.notches).map(|notch| notch.at).collect();
        moments.sort();
        let until = |to: Moment| Span::sum(runs.iter().map(|run| run.worked_within(Moment::at(i64::MIN), to, at(9_000))));
        let one_by_one = std::iter::once(Span::ZERO).chain(moments.iter().map(|at| until(*at)));
        let by_hand: Vec<_> = moments.iter().zip(one_by_one).map(|(at, before)| (until(*at).minus(before), 1)).collect();
        assert_eq!((found.len(), found), (60, by_hand));
    }

    #[test]
    fn rework_and_other_operations_are_apart() {
        let notch = |minute| Notch { id: id(7), at: at(minute), n: 1 };
        let (mut sand, mut again, mut oil) = (run(1, 0), run(2, 100), run(3, 200));
        (sand.stopped, again.stopped, oil.stopped) = (Some(wall(50)), Some(wall(150)), Some(wall(250)));
        (sand.notches, again.notches, oil.notches) = (vec![notch(20)], vec![notch(110)], vec![notch(240)]);
        (again.work.rework, oil.work.op) = (true, "oil".into());
        let bench = Bench::new(vec![sand, again, oil], Sorted::new());
        let found = bench.pieces(bench.runs().next().unwrap().work.on, at(400));
        let shown: Vec<_> = found.iter().map(|p| (p.op.as_str(), p.first.map(Span::as_minutes), p.repeats.len())).collect();
        assert_eq!(shown, [("sand", Some(20), 0), ("oil", Some(40), 0)]);
        assert_eq!(bench.pieces(On::Nothing, at(400)), []);
    }
}
