//! The bench: where every hour went. Runs of operations, batches, days, and the repair of forgotten ends.
//!
//! No clock and no price: moments arrive as arguments, and time leaves as spans. Carries invariant 6.

pub mod batch;
pub mod calendar;
mod clock;
pub mod dates;
pub mod day;
pub mod estimate;
mod heads;
mod kind;
pub mod meanwhile;
pub mod pace;
pub mod person;
pub mod pieces;
mod question;
pub mod repair;
pub mod run;
#[cfg(test)]
pub(crate) mod sample;
mod time;
pub mod wait;

pub use batch::Batch;
pub use clock::By;
pub use day::DayTotal;
pub use heads::{Head, one_stay_each};
pub use kind::{Division, Kind, Mender, Stage};
pub use question::REMEMBERED;
pub use run::{Cut, Doubt, Notch, On, Run, UNNOTICED, Work};
pub(crate) use time::add;
pub use time::{Shares, Source, Time};

use crate::quantity::order_by_key;
use crate::quantity::{Count, Currency, Id, Listed, Moment, Money, Span};
use crate::quantity::{Set, Sorted};
use std::borrow::Cow;
use std::cell::OnceCell;

/// Every run there is, and how many pieces operations have.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bench {
    // In order of their start. No two of one person overlap.
    runs: Vec<Run>,
    // Where in it the runs on each job or haul lie, in their order.
    places: Sorted<On, Vec<usize>>,
    planned: Sorted<(Id, String), Count>,
    not_typical: Set<Id>,
    // Operations whose number of pieces nobody said at the bench: it was planned.
    only_planned: Set<(Id, String)>,
    // Operations of which coats dry, or dried, and how many pieces each coat is on, where that was said.
    coated: Sorted<(Id, String), Option<Count>>,
    // Operations that the maker is done with, and since when.
    done: Sorted<(Id, String), Moment>,
    // What operations were planned to take.
    thought: Sorted<(Id, String), Span>,
    // When something was done on a job or haul, in order, where it may speak for the end of a run.
    acts: Sorted<On, Vec<Moment>>,
    // What ended runs are judged to be, gathered when somebody asks.
    judged: OnceCell<question::Judged>,
}

impl Bench {
    /// The bench of runs in order of their stamps, and of batches by job and operation.
    pub fn new(mut runs: Vec<Run>, planned: Sorted<(Id, String), Count>) -> Bench {
        person::one_bench_each(&mut runs);
        order_by_key(&mut runs, |run| run.started.at);
        let mut places: Sorted<On, Vec<usize>> = Sorted::new();
        for (place, run) in runs.iter().enumerate() {
            places.entry(run.work.on).or_default().push(place);
        }
        Bench { runs, places, planned, ..Bench::default() }
    }

    /// The same with the jobs whose runs are no history.
    pub fn but_for(self, not_typical: Set<Id>) -> Bench {
        Bench { not_typical, ..self }
    }

    /// The same with what operations were planned to take.
    pub fn thought(self, thought: Sorted<(Id, String), Span>) -> Bench {
        Bench { thought, ..self }
    }

    /// The same with the operations whose pieces were planned and not said at the bench, and with those that are coated.
    pub fn with_pieces(self, only_planned: Set<(Id, String)>, coated: Sorted<(Id, String), Option<Count>>) -> Bench {
        Bench { only_planned, coated, ..self }
    }

    /// The same with the operations that the maker is done with, and since when.
    pub fn with_done(self, done: Sorted<(Id, String), Moment>) -> Bench {
        Bench { done, ..self }
    }

    /// The same with what was done on jobs and hauls, each in order.
    pub fn with_acts(self, acts: Sorted<On, Vec<Moment>>) -> Bench {
        Bench { acts, ..self }
    }

    /// Whether acts on this job or haul may speak for the end of a run.
    pub fn minds(&self, on: On) -> bool {
        self.acts.contains_key(&on)
    }

    /// One more act on it, after those that are known.
    pub fn acted(&mut self, on: On, at: Moment) {
        let is_within = self.on(on).any(|run| !run.is_running() && at <= run.end(at));
        let Some(acts) = self.acts.get_mut(&on) else { return };
        acts.insert(acts.partition_point(|other| *other <= at), at);
        if is_within {
            self.judged = OnceCell::new();
        }
    }

    /// Coats of an operation dry, or dried: what is noted is coats, each on every piece, and nobody knows which is the last.
    pub fn is_coated(&self, on: On, op: &str) -> bool {
        matches!(on, On::Job(job) if self.coated.contains_key(&(job, op.to_owned())))
    }

    /// How many pieces each coat of an operation is on; none where that was not said, or no coat of it dries or dried.
    pub fn coated_each(&self, on: On, op: &str) -> Option<Count> {
        let On::Job(job) = on else { return None };
        self.coated.get(&(job, op.to_owned())).copied().flatten()
    }

    /// The maker said to be done with an operation, and did not begin it again since, however long ago it is said to have begun: what a mistake took
    /// makes nothing of it, and what was written down afterwards was when it says.
    pub fn is_done_with(&self, on: On, op: &str) -> bool {
        let On::Job(job) = on else { return false };
        let begun = |run: &Run| if run.recalled { run.started.at } else { run.started.at.max(run.tapped.at) };
        let again = |run: &Run, done: Moment| run.work.op == op && !run.work.rework && done < begun(run);
        self.done.get(&(job, op.to_owned())).is_some_and(|done| !self.on(on).any(|run| again(run, *done)))
    }

    /// Jobs marked as not typical: their runs are no history.
    pub fn not_typical(&self) -> &Set<Id> {
        &self.not_typical
    }

    /// Every run, the earliest start first.
    pub fn runs(&self) -> impl DoubleEndedIterator<Item = &Run> + Clone {
        self.runs.iter()
    }

    pub fn run(&self, id: Id) -> Option<&Run> {
        self.runs.iter().find(|run| run.id == id)
    }

    /// The runs on a job, a haul, or nothing.
    pub fn on(&self, on: On) -> impl DoubleEndedIterator<Item = &Run> + Clone {
        self.places.get(&on).into_iter().flatten().filter_map(|place| self.runs.get(*place))
    }

    /// The time of a job; as in all of these, what is doubtful is in it as it stands.
    pub fn of_job(&self, job: Id, now: Moment) -> Time {
        Time::of(self.on(On::Job(job)), |run| Some(Cow::Borrowed(run)), now)
    }

    /// The same without what is doubtful: what it says of what is left.
    pub fn sure_of_job(&self, job: Id, now: Moment) -> Time {
        Time::of(self.on(On::Job(job)), |run| self.standing(run, now), now)
    }

    /// The time of a haul without what is doubtful: sorting, and fetching that was clocked. Minutes of its trips are the trips' own.
    pub fn of_haul(&self, haul: Id, now: Moment) -> Time {
        Time::of(self.on(On::Haul(haul)), |run| self.standing(run, now), now)
    }

    /// What of it is doubtful.
    pub fn doubtful_of_haul(&self, haul: Id, now: Moment) -> Span {
        Span::sum(self.on(On::Haul(haul)).filter_map(|run| self.to_settle(run, now)).map(|run| run.worked(now)))
    }

    /// The time of no job.
    pub fn of_none(&self, now: Moment) -> Time {
        Time::of(self.on(On::Nothing), |run| Some(Cow::Borrowed(run)), now)
    }

    /// All time, logged to jobs or not.
    pub fn of_all(&self, now: Moment) -> Time {
        Time::of(&self.runs, |run| Some(Cow::Borrowed(run)), now)
    }

    /// The run a person is at.
    pub fn running(&self, person: Option<Id>) -> Option<&Run> {
        self.runs().rev().find(|run| run.work.person == person && run.is_running())
    }

    /// The runs that go on, of everybody.
    pub fn all_running(&self) -> impl Iterator<Item = &Run> {
        self.runs.iter().filter(|run| run.is_running())
    }

    /// Who was at the run that a switch to this one ended, each from when on they would be at this one; nobody once somebody was said to
    /// be there, or that they went.
    pub fn at_the_switch(&self, run: &Run) -> Vec<Head> {
        let heads = self.before_the_switch(run).filter(|_| run.heads.is_empty()).map_or(&[][..], |before| before.heads.as_slice());
        heads.iter().filter(|head| head.to.is_none()).map(|head| Head { from: head.from.max(run.started.at), ..*head }).listed()
    }

    /// The run that a switch to this one ended.
    pub fn before_the_switch(&self, run: &Run) -> Option<&Run> {
        let end = Moment::at(i64::MAX);
        let before = |other: &&Run| other.switched && other.work.person == run.work.person && other.id != run.id;
        self.runs().rev().filter(before).find(|other| other.end(end) == run.started.at)
    }

    /// Runs of a person since then that a switch began, at whose earlier run somebody was: nobody said whether they are at it too. The
    /// latest first.
    pub fn with_heads_to_settle(&self, person: Option<Id>, since: Moment) -> Vec<&Run> {
        let end = Moment::at(i64::MAX);
        let recent = self.runs().rev().take_while(|run| since <= run.started.at);
        let recent = recent.filter(|run| run.work.person == person && !run.recalled).listed();
        let left_open = |run: &&&Run| run.switched && run.heads.iter().any(|head| head.to.is_none());
        let next = |before: &&Run| recent.iter().find(|run| run.id != before.id && run.started.at == before.end(end)).copied();
        recent.iter().filter(left_open).filter_map(next).filter(|run| run.heads.is_empty()).listed()
    }

    /// The run a person stopped last.
    pub fn last_stopped(&self, person: Option<Id>) -> Option<&Run> {
        let ended = |run: &&Run| run.work.person == person && !run.is_running() && !run.recalled;
        self.runs.iter().filter(ended).max_by_key(|run| (run.end(Moment::at(i64::MAX)), run.started.at))
    }

    /// The operation a wait is of: as the run it came from is named now.
    pub fn op_of<'a>(&'a self, wait: &'a wait::Wait) -> &'a str {
        wait.run.and_then(|run| self.run(run)).map_or(&wait.op, |run| &run.work.op)
    }

    /// What somebody who worked along was last paid for an hour, in this currency; none where they were not paid.
    pub fn paid_last(&self, currency: Currency) -> Option<Money> {
        let heads = self.runs().rev().flat_map(|run| run.heads.iter().rev());
        heads.filter_map(|head| head.pay).find(|pay| pay.currency() == currency)
    }

    /// How far an operation has come.
    pub fn batch(&self, on: On, op: &str, now: Moment) -> Batch {
        let of = if let On::Job(job) = on { Some((job, op)) } else { None };
        self.batch_by(self.on(on).filter(|run| run.work.op == op), of, now)
    }

    /// The same by what stands of the runs: what it says of what is to come.
    pub fn sure_batch(&self, on: On, op: &str, now: Moment) -> Batch {
        let of = if let On::Job(job) = on { Some((job, op)) } else { None };
        let sure = self.sure(self.on(on).filter(|run| run.work.op == op), now).listed();
        self.batch_by(sure.iter().map(|run| &**run), of, now)
    }

    /// The same by the runs of that operation alone.
    pub fn batch_of<'a>(&self, runs: impl Iterator<Item = &'a Run> + Clone, (job, op): (Id, &str), now: Moment) -> Batch {
        self.batch_by(runs, Some((job, op)), now)
    }

    fn batch_by<'a>(&self, runs: impl Iterator<Item = &'a Run> + Clone, of: Option<(Id, &str)>, now: Moment) -> Batch {
        let of = of.map(|(job, op)| (job, op.to_owned()));
        let only_planned = of.as_ref().is_some_and(|of| self.only_planned.contains(of));
        let is_coated = of.as_ref().is_some_and(|of| self.coated.contains_key(of));
        let of = of.and_then(|of| self.planned.get(&of).copied());
        let batch = Batch::but((|run| self.in_question(run, now), |run| self.stands_to(run, now)), runs.clone(), of, now);
        // What was worked after a coat, its brushes cleaned, is no part of the next one.
        let at_it = runs.filter(|run| run.is_running() && !self.is_doubtful(run, now));
        let at_hand = if is_coated { batch::since_last_note(at_it, now) } else { batch.at_hand };
        Batch { only_planned, at_hand, ..batch }
    }

    /// The next start of the same person.
    pub fn next_start(&self, run: &Run) -> Option<Moment> {
        let later = |other: &&Run| other.id != run.id && other.work.person == run.work.person && !other.recalled;
        self.runs.iter().filter(later).map(|other| other.started.at).find(|at| run.started.at <= *at)
    }

    /// A run of the same person that a stretch overlaps, leaving one run out.
    pub fn overlapped(&self, person: Option<Id>, (from, to): (Moment, Moment), but: Option<Id>) -> Option<&Run> {
        let meets = |run: &&Run| run.started.at < to && from < run.end(Moment::at(i64::MAX));
        self.runs.iter().filter(|run| run.work.person == person && Some(run.id) != but).find(meets)
    }
}
