//! The bench: what is running, how far it has come, what to carry on with, and what is to be mended.

use crate::bench::repair::{self, Proposed};
use crate::bench::{Batch, Bench, Doubt, Kind, On, Run, Stage, Work, day};
use crate::ledger::{Book, fold};
use crate::quantity::Set;
use crate::quantity::{Clock, Count, Id, Span, Wall};

/// The latest operations on the board, across all jobs.
pub const LATEST: usize = 4;

/// How long a maker remembers when a run ended: later it is no longer asked [J].
const REMEMBERED: Span = Span::minutes(14 * 24 * 60);

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
    /// The person's own time on that job or haul, this run's included.
    pub on_it: Span,
    /// Heads at work now, the person's own too.
    pub heads: Count,
    /// It looks like a forgotten stop: the end to propose.
    pub wrong: Option<Proposed>,
}

/// An operation that one tap starts.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    pub op: String,
    pub kind: Kind,
    pub stage: Stage,
    pub on: On,
    pub name: Option<String>,
    pub batch: Batch,
}

/// A run to look at again.
#[derive(Clone, Debug, PartialEq)]
pub struct ToMend {
    pub run: Run,
    pub worked: Span,
    pub doubts: Vec<Doubt>,
    /// It looks like a forgotten stop: the end to propose.
    pub wrong: Option<Proposed>,
}

/// What the bench shows.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchSheet {
    pub running: Option<Slab>,
    /// What other people are at.
    pub others: Vec<Slab>,
    /// The run stopped last, while nothing runs.
    pub carry_on: Option<Choice>,
    /// Planned for the job at hand.
    pub planned: Vec<Choice>,
    /// Done lately on any job.
    pub latest: Vec<Choice>,
    /// The person's own time today.
    pub today: Span,
    pub to_mend: Vec<ToMend>,
}

/// The bench as a person sees it.
pub fn bench(book: &Book, seen: Seen) -> BenchSheet {
    let look = Look { book, bench: &fold::bench(book), seen, not_typical: fold::not_typical(book) };
    let (mine, others): (Vec<_>, Vec<_>) = look.bench.all_running().partition(|run| run.work.person == seen.person);
    let running = mine.last().copied();
    let last = if running.is_none() { look.bench.last_stopped(seen.person) } else { None };
    BenchSheet {
        running: running.map(|run| look.slab(run)),
        others: others.into_iter().map(|run| look.slab(run)).collect(),
        carry_on: last.map(|run| look.choice(run)),
        planned: running.or(last).map(|run| look.planned(run.work.on)).unwrap_or_default(),
        latest: look.latest(),
        today: day::total(look.own(), seen.now.day(), seen.now).own.total(),
        to_mend: look.bench.runs().rev().filter_map(|run| look.to_mend(run)).collect(),
    }
}

/// The end to propose for a run that looks like a forgotten stop; none for one that does not.
pub fn forgotten(book: &Book, run: Id, seen: Seen) -> Option<Proposed> {
    let look = Look { book, bench: &fold::bench(book), seen, not_typical: fold::not_typical(book) };
    look.bench.run(run).and_then(|run| look.forgotten(run))
}

/// What is looked at, folded once.
struct Look<'a> {
    book: &'a Book,
    bench: &'a Bench,
    seen: Seen,
    not_typical: Set<Id>,
}

impl Look<'_> {
    fn own(&self) -> impl DoubleEndedIterator<Item = &Run> + Clone {
        self.bench.runs().filter(|run| run.work.person == self.seen.person)
    }

    fn forgotten(&self, run: &Run) -> Option<Proposed> {
        let now = self.seen.now.at;
        if !repair::may_look_wrong(run, now) {
            return None;
        }
        let counts = |on| if let On::Job(job) = on { !self.not_typical.contains(&job) } else { true };
        let mut known = self.bench.known(run, counts, now);
        known.last_act = known.last_act.max(fold::last_act(self.book, run, now));
        known.closing = self.seen.closing.map(|closing| run.started.day().at(closing, run.started.offset));
        let ends = (run.started.at, run.work.kind);
        repair::looks_wrong(run, &known, now).then(|| repair::proposed(ends, &known, run.end(now)))
    }

    fn slab(&self, run: &Run) -> Slab {
        let now = self.seen.now.at;
        let own = self.bench.on(run.work.on).filter(|other| other.work.person == run.work.person);
        Slab {
            run: run.clone(),
            name: fold::name_of(self.book, run.work.on),
            worked: run.worked(now),
            batch: self.bench.batch(run.work.on, &run.work.op, now),
            on_it: Span::sum(own.map(|run| run.worked(now))),
            heads: run.heads_at(now),
            wrong: self.forgotten(run),
        }
    }

    fn choice(&self, run: &Run) -> Choice {
        let Work { op, kind, stage, on, .. } = run.work.clone();
        self.named((op, kind, stage), on)
    }

    fn named(&self, (op, kind, stage): (String, Kind, Stage), on: On) -> Choice {
        let batch = self.bench.batch(on, &op, self.seen.now.at);
        Choice { op, kind, stage, on, name: fold::name_of(self.book, on), batch }
    }

    fn planned(&self, on: On) -> Vec<Choice> {
        let On::Job(job) = on else { return vec![] };
        fold::planned_operations(self.book, job).into_iter().map(|operation| self.named(operation, on)).collect()
    }

    /// The latest of each operation and job, the newest first.
    fn latest(&self) -> Vec<Choice> {
        let mut found: Vec<&Run> = vec![];
        for run in self.own().rev() {
            if !found.iter().any(|other| other.work.op == run.work.op && other.work.on == run.work.on) {
                found.push(run);
            }
            if LATEST <= found.len() {
                break;
            }
        }
        found.into_iter().map(|run| self.choice(run)).collect()
    }

    fn to_mend(&self, run: &Run) -> Option<ToMend> {
        let now = self.seen.now.at;
        let doubts = run.doubts(now);
        let fresh = run.started.at.until(now) <= REMEMBERED;
        let wrong = if run.is_running() || !fresh { None } else { self.forgotten(run) };
        let listed = !doubts.is_empty() || wrong.is_some();
        listed.then(|| ToMend { run: run.clone(), worked: run.worked(now), doubts, wrong })
    }
}

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
        let first = phone.start(480, "sand", stands);
        phone.stop(540, first);
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
        let first = phone.start(10, "sand", odd);
        phone.stop(20, first);
        phone.start(100, "sand", stands);
        let wrong = |phone: &Phone| seen(phone, 500).running.unwrap().wrong.map(|wrong| (wrong.at, wrong.because));
        assert_eq!(wrong(&phone), Some((at(110), Because::Usual)));
        phone.note(21, crate::ledger::kind::job::JobMarked { job: job(odd), typical: false });
        assert_eq!(wrong(&phone), Some((at(160), Because::Default)));
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
        assert_eq!(seen(&phone, 20).planned.iter().map(|c| c.op.as_str()).collect::<Vec<_>>(), ["trim", "glue"]);
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
        assert_eq!((sheet.today.as_minutes(), sheet.running.unwrap().on_it.as_minutes()), (60, 30));
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
