//! The bench: what is running, how far it has come, what to carry on with, and what is to be mended.

pub mod next;
mod order;
mod whole;

pub use whole::whole;

use crate::bench::repair::{self, Known, Proposed};
use crate::bench::{Batch, Bench, DayTotal, Doubt, Kind, On, REMEMBERED, Run, Stage, Work, day};
use crate::ledger::{Book, fold};
use crate::quantity::Set;
use crate::quantity::{Clock, Count, Day, Id, Listed, Moment, Span, Wall};

/// The latest operations on the board, across all jobs.
pub const LATEST: usize = 4;

/// Who looks, and when.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Seen {
    pub now: Wall,
    /// Whose bench it is; `None` for the maker.
    pub person: Option<Id>,
    /// When the workshop closes.
    pub closing: Option<Clock>,
}

/// A run that goes on.
#[derive(Clone, Debug, PartialEq)]
pub struct Slab {
    pub run: Run,
    /// The job's or the haul's name.
    pub name: Option<String>,
    pub worked: Span,
    pub batch: Batch,
    /// What is noted of it is coats, each on every piece.
    pub is_coated: bool,
    /// Heads at work now, the person's own too.
    pub heads: Count,
    /// It looks like a forgotten stop: the end to propose.
    pub wrong: Option<Proposed>,
    /// What the operation was thought to take on its job, all pieces together.
    pub planned: Option<Span>,
}

impl Slab {
    /// Pieces of it can be counted: it makes something, or was counted before. A call and an errand have none.
    pub fn has_pieces(&self) -> bool {
        self.run.work.kind == Kind::Make || self.batch.of.is_some() || 0 < self.batch.n
    }

    /// What was planned, once all runs of the operation that nobody doubts took longer, by minutes as they are shown; none of rework, which
    /// nobody plans.
    pub fn past_plan(&self) -> Option<Span> {
        self.planned.filter(|planned| !self.run.work.rework && planned.as_minutes() < self.batch.sure.as_minutes())
    }
}

/// An operation that one tap starts.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    pub op: String,
    pub kind: Kind,
    pub stage: Stage,
    pub on: On,
    pub rework: bool,
    pub name: Option<String>,
    pub batch: Batch,
}

/// What the bench is about: what runs is on it, or was stopped last.
#[derive(Clone, Debug, PartialEq)]
pub struct Hand {
    pub on: On,
    pub name: Option<String>,
    /// The person's own time on it.
    pub spent: Span,
    /// Of it, runs that look wrong.
    pub unsettled: Span,
    /// While nothing runs: its run that was stopped.
    pub stood: Option<Run>,
    /// Of it, the whole minutes, as the list of its day has them.
    pub stood_for: Span,
}

/// The operations as they lie in the rack, in working order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Rack {
    /// The one before what runs.
    pub above: Option<Choice>,
    /// What likely comes next, and after it; while nothing runs, what to carry on with.
    pub below: Vec<Choice>,
    /// The operation that comes next: by its place in `below`.
    pub next: Option<usize>,
    /// Of the latest four of any job, those that lie nowhere above.
    pub lately: Vec<Choice>,
    /// Where each other job stands, unless it is there already: one tap switches to it.
    pub jobs: Vec<Choice>,
    /// Planned for the job in hand, and behind.
    pub earlier: Vec<Choice>,
    /// So many operations of the job in hand are in the list of all only.
    pub more: usize,
}

/// A run to look at again.
#[derive(Clone, Debug, PartialEq)]
pub struct ToMend {
    pub run: Run,
    /// The job's or the haul's name.
    pub name: Option<String>,
    pub worked: Span,
    pub doubts: Vec<Doubt>,
    pub batch: Batch,
    /// It looks like a forgotten stop: the end to propose.
    pub wrong: Option<Proposed>,
}

/// Who was there at a switch, what was worked at then, and what was switched to.
#[derive(Clone, Debug, PartialEq)]
pub struct Stayed {
    /// The run that was switched to.
    pub to: Run,
    pub heads: Count,
    pub op: String,
    /// When they came, where the switch was said to have been before.
    pub came: Option<Moment>,
}

/// What the bench shows.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchSheet {
    pub running: Option<Slab>,
    /// What other people are at.
    pub others: Vec<Slab>,
    /// The run stopped last, while nothing runs.
    pub carry_on: Option<Choice>,
    pub hand: Option<Hand>,
    pub rack: Rack,
    /// Who was at the run before a switch, and may have stayed: it is asked until it was answered. Of what runs first, else of the latest.
    pub stayed: Option<Stayed>,
    /// Done lately on any job.
    pub latest: Vec<Choice>,
    /// The person's own time today, but for runs that look wrong.
    pub today: Span,
    /// Runs that look like a forgotten stop.
    pub unsettled: Count,
    pub to_mend: Vec<ToMend>,
}

/// The bench as a person sees it.
pub fn bench(book: &Book, seen: Seen) -> BenchSheet {
    bench_of(&fold::bench(book), book, seen)
}

/// The same from a bench that was folded already.
pub fn bench_of(bench: &Bench, book: &Book, seen: Seen) -> BenchSheet {
    let look = Look::new(bench, book, seen);
    let (mine, others): (Vec<_>, Vec<_>) = look.bench.all_running().partition(|run| run.work.person == seen.person);
    let running = mine.last().copied();
    // Work on a job that the maker is done with is not offered again.
    let last = if running.is_none() { look.bench.last_stopped(seen.person) } else { None };
    let last = last.filter(|run| !fold::is_ended(book, run.work.on));
    let slab = running.map(|run| look.slab(run));
    let to_mend: Vec<ToMend> = look.bench.runs().rev().filter_map(|run| look.to_mend(run)).listed();
    let latest = look.latest();
    let (hand, carry_on) = (running.or(last).map(|run| look.hand(run)), last.map(|run| look.choice(run)));
    let rack = order::rack(&look, look.planned(hand.as_ref()), &latest, (running.map(|run| look.choice(run)), carry_on.clone()));
    BenchSheet {
        stayed: look.with_heads_to_settle().first().and_then(|run| look.stayed(run)),
        others: others.into_iter().map(|run| look.slab(run)).listed(),
        today: look.day(seen.now.day()).own.total(),
        unsettled: unsettled(slab.as_ref(), &to_mend),
        running: slab,
        carry_on,
        hand,
        rack,
        latest,
        to_mend,
    }
}

fn unsettled(slab: Option<&Slab>, to_mend: &[ToMend]) -> Count {
    let wrong = slab.and_then(|slab| slab.wrong).into_iter().chain(to_mend.iter().filter_map(|mend| mend.wrong));
    u32::try_from(wrong.count()).unwrap_or(u32::MAX)
}

impl Choice {
    /// The same operation of the same job.
    pub fn is_same(&self, other: &Choice) -> bool {
        self.op == other.op && self.on == other.on && self.rework == other.rework
    }

    /// Done whole; begun, where nobody knows of pieces that are left.
    pub fn is_behind(&self) -> bool {
        self.batch.is_done() || (!self.batch.has_left() && Span::ZERO < self.batch.all())
    }
}

/// What is looked at, folded once.
pub(super) struct Look<'a> {
    book: &'a Book,
    pub(super) bench: &'a Bench,
    pub(super) seen: Seen,
    not_typical: &'a Set<Id>,
}

impl<'a> Look<'a> {
    pub(super) fn new(bench: &'a Bench, book: &'a Book, seen: Seen) -> Look<'a> {
        Look { book, bench, seen, not_typical: bench.not_typical() }
    }

    fn own(&self) -> impl DoubleEndedIterator<Item = &Run> + Clone {
        self.bench.runs().filter(|run| run.work.person == self.seen.person)
    }

    /// The end to propose for a run that looks like a forgotten stop; none for one that does not, or that is long ago.
    pub(super) fn forgotten(&self, run: &Run) -> Option<Proposed> {
        if self.is_in_question(run) { self.unanswered(run) } else { None }
    }

    /// The same however long ago it was: until it is answered, it teaches nothing.
    pub(super) fn unanswered(&self, run: &Run) -> Option<Proposed> {
        let now = self.seen.now.at;
        self.bench.in_question(run, now)?;
        let closing = self.seen.closing.map(|closing| run.started.day().at(closing, run.started.offset));
        let known = Known { closing, ..self.bench.known(run, now) };
        Some(repair::proposed((run.started.at, run.work.kind), &known, run.end(now)))
    }

    /// Whether there would be an end to propose, however long ago it was: the end itself is not looked for.
    pub(super) fn is_unanswered(&self, run: &Run) -> bool {
        self.bench.in_question(run, self.seen.now.at).is_some()
    }

    /// It is doubtful.
    pub(super) fn is_in_question(&self, run: &Run) -> bool {
        self.bench.is_doubtful(run, self.seen.now.at)
    }

    /// A person's own time on a day.
    pub(super) fn day(&self, day: Day) -> DayTotal {
        let now = self.seen.now;
        let on_it = |run: &&Run| run.started.day() <= day && day <= run.end_wall(now).day().max(run.started.day());
        let sure = self.bench.sure(self.own().filter(on_it), now.at).listed();
        day::total(sure.iter().map(|run| &**run), day, now)
    }

    /// Runs that a switch began, and nobody said whether a helper came along; the latest first.
    pub(super) fn with_heads_to_settle(&self) -> Vec<&Run> {
        self.bench.with_heads_to_settle(self.seen.person, self.seen.now.at.minus(REMEMBERED))
    }

    pub(super) fn stayed(&self, run: &Run) -> Option<Stayed> {
        let there = self.bench.at_the_switch(run);
        let heads = there.iter().fold(0, |sum: Count, head| sum.saturating_add(head.n));
        let op = self.bench.before_the_switch(run)?.work.op.clone();
        let came = there.iter().map(|head| head.from).min().filter(|came| run.started.at < *came);
        (0 < heads).then(|| Stayed { to: run.clone(), heads, op, came })
    }

    fn slab(&self, run: &Run) -> Slab {
        let now = self.seen.now.at;
        Slab {
            run: run.clone(),
            name: fold::name_of(self.book, run.work.on),
            worked: run.worked(now),
            batch: self.bench.batch(run.work.on, &run.work.op, now),
            is_coated: self.bench.is_coated(run.work.on, &run.work.op),
            heads: run.heads_at(now),
            wrong: self.forgotten(run),
            planned: self.bench.thought_of(run),
        }
    }

    pub(super) fn choice(&self, run: &Run) -> Choice {
        let Work { op, kind, stage, on, rework, .. } = run.work.clone();
        Choice { rework, ..self.named((op, kind, stage), on) }
    }

    pub(super) fn named(&self, (op, kind, stage): (String, Kind, Stage), on: On) -> Choice {
        let batch = self.bench.batch(on, &op, self.seen.now.at);
        Choice { op, kind, stage, on, rework: false, name: fold::name_of(self.book, on), batch }
    }

    fn hand(&self, run: &Run) -> Hand {
        let (on, now) = (run.work.on, self.seen.now.at);
        let own = self.bench.on(on).filter(|other| other.work.person == run.work.person);
        let stood = (!run.is_running()).then(|| run.clone());
        let spent = Span::sum(self.bench.sure(own.clone(), now).map(|run| run.worked(now)));
        let unsettled = Span::sum(own.filter_map(|run| self.bench.to_settle(run, now)).map(|run| run.worked(now)));
        let stood_for = stood.as_ref().map_or(Span::ZERO, |run| super::day::as_listed(self, run));
        Hand { on, name: fold::name_of(self.book, on), spent, unsettled, stood, stood_for }
    }

    fn planned(&self, hand: Option<&Hand>) -> Vec<Choice> {
        let Some(on @ On::Job(job)) = hand.map(|hand| hand.on) else { return vec![] };
        fold::planned_operations(self.book, job).into_iter().map(|operation| self.named(operation, on)).listed()
    }

    fn to_mend(&self, run: &Run) -> Option<ToMend> {
        let now = self.seen.now.at;
        let doubts = run.doubts(now);
        let wrong = if run.is_running() { None } else { self.forgotten(run) };
        let listed = !doubts.is_empty() || wrong.is_some();
        let batch = || self.bench.batch(run.work.on, &run.work.op, now);
        listed.then(|| ToMend {
            run: run.clone(),
            name: fold::name_of(self.book, run.work.on),
            worked: run.worked(now),
            doubts,
            batch: batch(),
            wrong,
        })
    }
}

#[cfg(test)]
mod night;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Mender;
    use crate::bench::repair::Because;
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::told::{Phone, at};

    fn seen(phone: &Phone, minute: i64) -> BenchSheet {
        bench(&phone.book, Seen { now: phone.wall(minute), ..Seen::default() })
    }

    fn job(on: On) -> Id {
        if let On::Job(id) = on { id } else { unreachable!() }
    }

    /// Demo A: glue tops from 11:20, all five in clamps at 12:07, found running after lunch at 14:32.
    #[test]
    fn three_hours_twelve_over_lunch_become_47_minutes() {
        let mut phone = Phone::new("a");
        let stands = phone.job(600, "ash plant stands");
        phone.bench(601, BenchCommand::PlanBatch { job: job(stands), op: "glue tops".into(), n: 5 }).unwrap();
        let run = phone.start(680, "glue tops", stands);
        for minute in [690, 700, 710, 720, 727] {
            phone.bench(minute, BenchCommand::Done { run, n: 1 }).unwrap();
        }
        let slab = seen(&phone, 872).running.unwrap();
        assert_eq!((slab.worked.as_minutes(), slab.name.as_deref()), (192, Some("ash plant stands")));
        assert_eq!((slab.batch.n, slab.batch.of, slab.batch.remaining()), (5, Some(5), Some(Span::ZERO)));
        let wrong = slab.wrong.unwrap();
        assert_eq!(wrong, Proposed { at: at(727), because: Because::LastAct });
        phone.bench(872, BenchCommand::StopAt { run, at: wrong.at, by: Mender::Proposed }).unwrap();
        let time = phone.runs().of_job(job(stands), at(900));
        assert_eq!((time.own.corrected.as_minutes(), time.own.total().as_minutes()), (47, 47));
        let after = seen(&phone, 900);
        assert_eq!((after.running, after.to_mend, after.today), (None, vec![], Span::minutes(47)));
        assert_eq!(after.carry_on.map(|c| (c.op, c.batch.n)), Some(("glue tops".into(), 5)));
    }

    #[test]
    fn a_forgotten_run_stays_listed_after_the_switch_until_it_is_answered() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let forgotten = phone.start(10, "sand", stands);
        phone.start(500, "glue", stands);
        let listed = |phone: &Phone| seen(phone, 510).to_mend.iter().map(|m| (m.run.id, m.wrong)).collect::<Vec<_>>();
        assert_eq!(listed(&phone), [(forgotten, Some(Proposed { at: at(70), because: Because::Default }))]);
        phone.bench(511, BenchCommand::Confirm { run: forgotten }).unwrap();
        assert_eq!(listed(&phone), []);
        assert_eq!(phone.runs().of_job(job(stands), at(510)).own.measured.as_minutes(), 500);
    }

    #[test]
    fn the_workshop_closes_a_run_that_has_a_history() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        for start in [300, 400, 480] {
            let earlier = phone.start(start, "sand", stands);
            phone.stop(start + 60, earlier);
        }
        phone.start(1_050, "sand", stands); // 17:30, an hour is usual, closing at 18:00
        let slab = |hour| bench(&phone.book, Seen { now: phone.wall(1_900), person: None, closing: Clock::at(hour, 0) }).running.unwrap();
        assert_eq!(slab(18).wrong, Some(Proposed { at: at(1_080), because: Because::Closing }));
        assert_eq!(slab(24).wrong, Some(Proposed { at: at(1_110), because: Because::Usual }));
        assert_eq!(slab(16).wrong, Some(Proposed { at: at(1_110), because: Because::Usual }));
    }

    #[test]
    fn a_job_that_is_not_typical_is_no_history() {
        let mut phone = Phone::new("a");
        let (odd, stands) = (phone.job(0, "odd"), phone.job(1, "stands"));
        for start in [10, 30, 50] {
            let earlier = phone.start(start, "sand", odd);
            phone.stop(start + 10, earlier);
        }
        phone.start(100, "sand", stands);
        let wrong = |phone: &Phone| seen(phone, 500).running.unwrap().wrong.map(|wrong| (wrong.at, wrong.because));
        assert_eq!(wrong(&phone), Some((at(110), Because::Usual)));
        phone.note(61, crate::ledger::kind::job::JobMarked { job: job(odd), typical: false });
        assert_eq!(wrong(&phone), Some((at(160), Because::Default)));
    }

    /// Twenty minutes are planned: of those 15 are worked in a first run, so the second is past them after five more.
    #[test]
    fn a_run_that_passes_what_was_planned_says_so() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let span = Some(Span::minutes(20));
        let (op, kind) = ("trim".into(), Kind::Make);
        phone.note(1, crate::ledger::kind::job::OperationPlanned { job: job(stands), op, kind, stage: None, span, pieces: None });
        let past = |phone: &Phone, minute| seen(phone, minute).running.and_then(|slab| slab.past_plan());
        let run = phone.start(10, "trim", stands);
        assert_eq!(past(&phone, 25), None);
        phone.stop(25, run);
        phone.start(100, "trim", stands);
        assert_eq!((past(&phone, 105), past(&phone, 106)), (None, span));
        assert_eq!(past(&phone, 1540), None, "a night that nobody answered for is not worked");
        phone.start(1550, "saw", stands);
        assert_eq!(past(&phone, 1700), None, "nothing was thought of it");
        let (mut phone, wall) = (Phone::new("b"), |phone: &Phone, ms: i64| Wall::new(at(105).plus(Span::ms(ms)), phone.offset));
        let stands = phone.job(0, "stands");
        let (op, kind) = ("trim".into(), Kind::Make);
        phone.note(1, crate::ledger::kind::job::OperationPlanned { job: job(stands), op, kind, stage: None, span, pieces: None });
        phone.start(85, "trim", stands);
        let past = |ms| bench(&phone.book, Seen { now: wall(&phone, ms), ..Seen::default() }).running.and_then(|slab| slab.past_plan());
        assert_eq!((past(20_000), past(30_000)), (None, span), "some seconds are no minute past 20");
    }

    #[test]
    fn planned_operations_of_the_job_at_hand_come_first() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        for op in ["trim", "glue", "trim"] {
            let planned = crate::ledger::kind::job::OperationPlanned {
                job: job(stands),
                op: op.into(),
                kind: Kind::Make,
                stage: None,
                span: None,
                pieces: None,
            };
            phone.note(1, planned);
        }
        phone.start(10, "saw", stands);
        assert_eq!(seen(&phone, 20).rack.below.iter().map(|c| c.op.as_str()).collect::<Vec<_>>(), ["trim", "glue"]);
    }

    /// Planned `a` to `e`; what was done of it by then; above, below (the next one in capitals), earlier.
    #[test]
    fn the_rack_is_in_working_order_around_what_runs() {
        let mut phone = Phone::new("a");
        let (stands, bench) = (phone.job(0, "stands"), phone.job(1, "bench"));
        for op in ["a", "b", "c", "d", "e"] {
            let of = (job(stands), op.to_owned());
            phone.note(
                1,
                crate::ledger::kind::job::OperationPlanned { job: of.0, op: of.1, kind: Kind::Make, stage: None, span: None, pieces: None },
            );
        }
        phone.bench(2, BenchCommand::PlanBatch { job: job(stands), op: "c".into(), n: 2 }).unwrap();
        let shown = |minute: i64, phone: &Phone| {
            let rack = seen(phone, minute).rack;
            let names = |choices: &[Choice]| choices.iter().map(|c| c.op.as_str()).collect::<Vec<_>>().concat();
            let next = rack.next.and_then(|next| rack.below.get(next)).map(|c| c.op.to_uppercase()).unwrap_or_default();
            let above = rack.above.map(|c| c.op).unwrap_or_default();
            format!("{above}|{}|{}|{next}", names(&rack.below), [names(&rack.lately), names(&rack.jobs), names(&rack.earlier)].concat())
        };
        assert_eq!(shown(3, &phone), "|||");
        let oil = phone.start(10, "oil", bench);
        assert_eq!(shown(11, &phone), "|||");
        phone.stop(12, oil);
        assert_eq!(shown(13, &phone), "|oil||");
        phone.start(20, "a", stands);
        assert_eq!(shown(21, &phone), "|bcde|oil|B");
        let c = phone.start(30, "c", stands);
        assert_eq!(shown(31, &phone), "|bde|aoil|B");
        phone.bench(32, BenchCommand::Done { run: c, n: 1 }).unwrap();
        phone.stop(33, c);
        assert_eq!(shown(34, &phone), "|cbde|aoil|B", "carry on first");
        let c = phone.start(40, "c", stands);
        phone.bench(41, BenchCommand::Done { run: c, n: 1 }).unwrap();
        phone.stop(42, c);
        assert_eq!(shown(43, &phone), "|bcde|aoil|B", "it is done whole");
        phone.start(50, "x", stands);
        assert_eq!(shown(51, &phone), "|bde|caoil|B", "not planned: what is still to do");
    }

    #[test]
    fn work_on_a_job_that_is_done_makes_room_for_what_was_done_before() {
        let story = crate::story::tell(
            "
2026-03-02 08:00 -05:00 workshop USD inch
job shelf \"Shelf\" 1 order
job stool \"Stool\" 1 order
08:00 start \"turn\" make on stool
08:10 start \"sharpen\" make
08:20 start \"saw\" make on shelf
08:30 start \"plane\" make on shelf
08:40 start \"sand\" make on shelf
08:50 start \"oil\" make on shelf
09:00 stop
end shelf",
        );
        assert_eq!(story.refused, []);
        let latest = bench(&story.book, Seen { now: story.now, ..Seen::default() }).latest;
        assert_eq!(latest.iter().map(|choice| choice.op.as_str()).collect::<Vec<_>>(), ["sharpen", "turn"]);
    }

    #[test]
    fn what_looks_wrong_is_in_no_total_until_it_is_answered() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let first = phone.start(10, "saw", stands);
        phone.stop(40, first);
        let forgotten = phone.start(50, "sand", stands);
        let totals = |phone: &Phone, minute| (seen(phone, minute).today.as_minutes(), seen(phone, minute).unsettled);
        assert_eq!(totals(&phone, 300), (30, 1), "nor while it runs");
        phone.stop(300, forgotten);
        assert_eq!(totals(&phone, 301), (30, 1));
        phone.bench(302, BenchCommand::Confirm { run: forgotten }).unwrap();
        assert_eq!(totals(&phone, 303), (280, 0));
    }

    #[test]
    fn an_end_put_back_to_the_stamp_is_measured_again() {
        let mut phone = Phone::new("a");
        let stands = phone.job(0, "stands");
        let run = phone.start(10, "sand", stands);
        phone.stop(200, run);
        phone.bench(201, BenchCommand::StopAt { run, at: at(57), by: Mender::Proposed }).unwrap();
        let mend = BenchCommand::Mend { run, start: None, stop: Some(at(200)), op: None };
        phone.bench(202, mend).unwrap();
        let time = phone.runs().of_job(job(stands), at(300)).own;
        assert_eq!((time.measured.as_minutes(), time.corrected.as_minutes()), (190, 0));
        assert_eq!(seen(&phone, 300).unsettled, 0, "it was answered for");
    }

    #[test]
    fn the_board_has_the_four_latest_of_any_job() {
        let mut phone = Phone::new("a");
        let (stands, bench) = (phone.job(0, "stands"), phone.job(1, "bench"));
        for (minute, op, on) in
            [(10, "saw", stands), (20, "sand", stands), (30, "glue", bench), (40, "sand", bench), (50, "sand", stands), (60, "oil", bench)]
        {
            phone.start(minute, op, on);
        }
        let sheet = seen(&phone, 70);
        let shown: Vec<_> = sheet.latest.iter().map(|c| (c.op.as_str(), c.name.as_deref().unwrap())).collect();
        assert_eq!(shown, [("oil", "bench"), ("sand", "stands"), ("sand", "bench"), ("glue", "bench")]);
        assert_eq!((sheet.today.as_minutes(), sheet.hand.unwrap().spent.as_minutes()), (60, 30));
        assert_eq!(
            crate::sheet::strip::strip(&phone.book, None, phone.wall(75)).map(|s| (s.op, s.worked.as_minutes())),
            Some(("oil".into(), 15))
        );
    }

    #[test]
    fn what_another_person_is_at_is_shown_beside() {
        let mut phone = Phone::new("a");
        let run = phone.start(10, "sand", On::Nothing);
        let other = crate::bench::Work { person: Some(run), ..crate::ledger::told::work("glue", On::Nothing) };
        phone.bench(20, BenchCommand::Start { work: other, ago: Span::ZERO }).unwrap();
        let sheet = seen(&phone, 30);
        assert_eq!(
            (sheet.running.unwrap().run.work.op.as_str(), sheet.others[0].worked.as_minutes(), sheet.today.as_minutes()),
            ("sand", 10, 20)
        );
    }
}
