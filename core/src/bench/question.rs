//! Which runs look like a forgotten stop, and what speaks for their ends. A run that is asked about says nothing of what is usual until it is
//! answered for, and nothing of the pace of its batch after its last piece; one that is not asked about says both.

use super::batch::at_hand_by;
use super::estimate::learn::is_sound;
use super::pace::remaining;
use super::repair::{self, Known};
use super::{Batch, Bench, On, Run};
use crate::quantity::{Count, Id, Listed, Moment, Sorted, Span};
use std::borrow::Cow;

/// No clock is behind it.
const END: Moment = Moment::at(i64::MAX);

/// A stop that may have been forgotten is asked about for so long [J]; then the run counts as it stands.
pub const REMEMBERED: Span = Span::minutes(14 * 24 * 60);

/// A helper who comes no later than that after the start comes with it, and says as little of the end [J].
const WITH_THE_START: Span = Span::minutes(5);

/// What ended runs are judged to be, by all of them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Judged {
    /// Those that look like a forgotten stop, and nobody answered for, each with the last piece or helper that speaks for its end, else its start.
    open: Sorted<Id, Moment>,
    /// Of each operation when the runs that nobody doubts began, in that order, and how long each lasted.
    lasted: Sorted<String, InOrder>,
}

/// When runs began, in that order, and how long each lasted.
type InOrder = Vec<(Moment, Span)>;

impl Bench {
    /// Of a run that looks like a forgotten stop the last piece or helper of it that speaks for an end, else its start: its pace goes by that.
    /// `None` for a run that does not.
    pub fn in_question(&self, run: &Run, now: Moment) -> Option<Moment> {
        match repair::may_look_wrong(run, now) {
            true if run.is_running() => self.wrong_by(run, self.told(run, now), now),
            true => self.judged().open.get(&run.id).copied(),
            false => None,
        }
    }

    /// Whether a run looks like a forgotten stop and is still asked about, whether it goes on or has ended. Until that is answered no minute
    /// of it counts but those of which [`Bench::standing`] says that they do.
    pub fn is_doubtful(&self, run: &Run, now: Moment) -> bool {
        let is_long_ago = !run.is_running() && REMEMBERED < run.started.at.until(now);
        !is_long_ago && self.in_question(run, now).is_some()
    }

    /// What of a run stands: all of one that nobody doubts. Of a doubtful one what went by up to the last piece, clamping, helper or mend of its
    /// own that speaks for its end, and what was noted by then, as if it had been stopped there; the rest is to settle, and until that is
    /// answered no minute of it is of a day or a week, of what a job that goes on took, and so of its price, and nobody who worked along is
    /// paid for it; each page says how many they are. Nor is anything of the rest off what is left of any job: its minutes, its pieces, or
    /// what was put to wait in it.
    pub fn standing<'r>(&self, run: &'r Run, now: Moment) -> Option<Cow<'r, Run>> {
        if !self.is_doubtful(run, now) {
            return Some(Cow::Borrowed(run));
        }
        self.proven(run, now).map(|at| Cow::Owned(run.up_to(at)))
    }

    /// Up to when a run stands; its start where nothing of it does.
    pub fn stands_to(&self, run: &Run, now: Moment) -> Moment {
        self.standing(run, now).map_or(run.started.at, |run| run.end(now))
    }

    /// What of a run is to settle; none of one that nobody doubts.
    pub fn to_settle<'r>(&self, run: &'r Run, now: Moment) -> Option<Cow<'r, Run>> {
        self.is_doubtful(run, now).then(|| self.proven(run, now).map_or(Cow::Borrowed(run), |at| Cow::Owned(run.from(at))))
    }

    /// What stands of some runs.
    pub fn sure<'r>(&'r self, runs: impl Iterator<Item = &'r Run>, now: Moment) -> impl Iterator<Item = Cow<'r, Run>> {
        runs.filter_map(move |run| self.standing(run, now))
    }

    /// Up to when a run that looks like a forgotten stop was worked by its own notes, whatever its end was: what was noted of another run
    /// speaks for no minute of it. None where nothing says so of a single one.
    pub fn proven(&self, run: &Run, now: Moment) -> Option<Moment> {
        let last = self.in_question(run, now)?;
        noted_in(run).filter(|at| run.started.at < *at && *at <= last).max()
    }

    /// Ended runs, each judged once by those before it that are not in question.
    fn judged(&self) -> &Judged {
        self.judged.get_or_init(|| {
            let mut past: Sorted<&str, (Vec<Span>, InOrder)> = Sorted::new();
            let mut open: Sorted<Id, Moment> = Sorted::new();
            for run in self.runs().filter(|run| !run.is_running()) {
                let (by_length, in_order) = past.entry(&run.work.op).or_default();
                let told = || {
                    let planned = self.planned_still(run, |other| open.contains_key(&other.id), END);
                    Known { usual: repair::by_history_in_order(by_length), planned, ..Known::default() }
                };
                let wrong_by = if repair::may_look_wrong(run, END) { self.wrong_by(run, told(), END) } else { None };
                if let Some(last) = wrong_by {
                    open.insert(run.id, last);
                } else if self.is_history(run) {
                    let lasted = run.worked(END);
                    by_length.insert(by_length.partition_point(|other| *other <= lasted), lasted);
                    in_order.push((run.started.at, lasted));
                }
            }
            let lasted = past.iter().map(|(op, (_, in_order))| ((*op).to_owned(), in_order.clone())).collect();
            Judged { open, lasted }
        })
    }

    /// What earlier runs and the plan say of how long a run lasts.
    fn told(&self, run: &Run, now: Moment) -> Known {
        let planned = self.planned_still(run, |other| self.in_question(other, now).is_some(), now);
        Known { usual: repair::by_history(self.past(run)), planned, ..Known::default() }
    }

    fn wrong_by(&self, run: &Run, known: Known, now: Moment) -> Option<Moment> {
        let last_act = repair::last_act(run, &known, self.acts(run, now));
        repair::looks_wrong(run, &Known { last_act, ..known }, now).then(|| self.last_noted(run, &known, now))
    }

    /// The last piece or helper of a run that speaks for its end, else its start.
    fn last_noted(&self, run: &Run, known: &Known, now: Moment) -> Moment {
        repair::last_act(run, known, self.noted(run, now)).unwrap_or(run.started.at)
    }

    /// It is over, was no rework, took its time, is not listed for mending, and its job is typical.
    fn is_history(&self, run: &Run) -> bool {
        let is_typical = if let On::Job(job) = run.work.on { !self.not_typical.contains(&job) } else { true };
        is_typical && is_sound(run) && !run.work.rework && Span::ZERO < run.worked(END)
    }

    /// How long earlier runs of an operation lasted that nobody doubts, from the jobs that count as history.
    pub fn past(&self, of: &Run) -> Vec<Span> {
        let of_it = self.judged().lasted.get(&of.work.op).map(Vec::as_slice).unwrap_or_default();
        of_it.iter().take_while(|(start, _)| *start < of.started.at).map(|(_, lasted)| *lasted).listed()
    }

    /// What speaks for the end of a run. The closing time comes from outside.
    pub fn known(&self, run: &Run, now: Moment) -> Known {
        let known = self.told(run, now);
        let last_act = repair::last_act(run, &known, self.acts(run, now));
        Known { batch: self.batch_span(run, now), next_start: self.next_start(run), last_act, ..known }
    }

    /// What an operation of a job was planned to take; none of nothing.
    pub fn thought_of(&self, run: &Run) -> Option<Span> {
        self.thought_for(run.work.on, &run.work.op)
    }

    /// The same by its name.
    pub fn thought_for(&self, on: On, op: &str) -> Option<Span> {
        let On::Job(job) = on else { return None };
        self.thought.get(&(job, op.to_owned())).copied()
    }

    /// What was left at a run's start of what its operation was planned to take. What looked like a forgotten stop and was asked about then
    /// took nothing off it.
    fn planned_still(&self, run: &Run, is_open: impl Fn(&Run) -> bool, now: Moment) -> Option<Span> {
        let planned = self.thought_of(run).filter(|_| !run.work.rework)?;
        let earlier = self.on(run.work.on).filter(|other| other.started.at < run.started.at && other.work.op == run.work.op);
        let is_asked = |other: &Run| other.started.at.until(run.started.at) <= REMEMBERED && is_open(other);
        let counts = earlier.filter(|other| !other.work.rework && !is_asked(other));
        let took = Span::sum(counts.map(|other| other.worked(now.min(run.end(now)))));
        Some(planned.minus(took)).filter(|left| Span::ZERO < *left)
    }

    /// What was done on what a run is on, after its start and not after its end: what was noted of runs, and all else. In no order.
    fn acts<'a>(&'a self, run: &'a Run, now: Moment) -> impl Iterator<Item = Moment> + 'a {
        let others = self.acts.get(&run.work.on).into_iter().flatten().copied();
        self.noted(run, now).chain(others.filter(within(run, now)))
    }

    /// The pieces done or put to wait on what a run is on, after its start and not after its end, and the times a helper came later or went in
    /// it; who was asked and said that it is right so far was there too. In no order.
    fn noted<'a>(&'a self, run: &'a Run, now: Moment) -> impl Iterator<Item = Moment> + 'a {
        let others = self.on(run.work.on).filter(|other| run.work.on != On::Nothing && other.id != run.id).flat_map(|run| &run.notches);
        others.map(|notch| notch.at).chain(noted_in(run)).filter(within(run, now))
    }

    /// Batch pace x pieces left at the start of a run, less what the piece at hand had taken by then, one at most: a run that goes on with it has
    /// only the rest of it to do. The run is in question: its own pace is that up to its last piece.
    fn batch_span(&self, run: &Run, now: Moment) -> Option<Span> {
        let On::Job(job) = run.work.on else { return None };
        let of = self.planned.get(&(job, run.work.op.clone())).copied()?;
        let runs = || self.on(run.work.on).filter(|other| other.work.op == run.work.op && !other.work.rework);
        let before = runs().flat_map(|other| &other.notches).filter(|notch| notch.at <= run.started.at);
        let left = of.saturating_sub(before.fold(0, |sum: Count, notch| sum.saturating_add(notch.n)));
        let known = self.told(run, now);
        let own = |other: &Run| (other.id == run.id).then(|| self.last_noted(run, &known, now));
        let pace =
            Batch::but((|other| own(other).or_else(|| self.in_question(other, now)), |other| other.end(now)), runs(), None, now).pace()?;
        // What was worked after a coat, its brushes cleaned, is no part of the next one.
        let is_coated = self.is_coated(run.work.on, &run.work.op);
        let earlier = runs().filter(|other| !is_coated && other.id != run.id && self.in_question(other, now).is_none());
        let gone = at_hand_by(run.started.at, &earlier.listed());
        Some(remaining(left, pace, gone)).filter(|span| Span::ZERO < *span)
    }
}

/// What was noted of one run, as above, and when it was put right; after its end too.
fn noted_in(run: &Run) -> impl Iterator<Item = Moment> {
    let later = |came: &Moment| WITH_THE_START < run.started.at.until(*came);
    let helpers = run.heads.iter().flat_map(move |head| [Some(head.from).filter(later), head.to]).flatten();
    run.notches.iter().map(|notch| notch.at).chain(run.clamped.iter().chain(&run.put_right).copied()).chain(run.right).chain(helpers)
}

/// After a run's start and not after its end.
fn within(run: &Run, now: Moment) -> impl Fn(&Moment) -> bool + use<> {
    let (start, end) = (run.started.at, run.end(now));
    move |at| start < *at && *at <= end
}
