//! The bench: what is running, how far it has come, what to carry on with, and what is to be mended.

use crate::bench::repair::{self, Proposed};
use crate::bench::{Batch, Bench, Doubt, Kind, On, Run, Stage, day};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Day, Id, Moment, Span, Wall};

/// The latest operations on the board, across all jobs.
pub const LATEST: usize = 4;

/// Who looks, and when.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Seen {
    pub now: Wall,
    /// Whose bench it is; `None` for the maker.
    pub person: Option<Id>,
    /// When the workshop closes, in minutes after local midnight.
    pub closing: Option<u16>,
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
    let bench = fold::bench(book);
    let (mine, others): (Vec<_>, Vec<_>) = bench.all_running().partition(|run| run.work.person == seen.person);
    let running = mine.last().map(|run| slab(book, &bench, run, seen));
    let last = running.is_none().then(|| bench.last_stopped(seen.person)).flatten();
    let at_hand = mine.last().copied().or(last).map(|run| run.work.on);
    BenchSheet {
        carry_on: last.map(|run| choice(book, &bench, run, seen)),
        others: others.into_iter().map(|run| slab(book, &bench, run, seen)).collect(),
        planned: at_hand.map(|on| planned(book, &bench, on, seen)).unwrap_or_default(),
        latest: latest(book, &bench, seen),
        today: day::total(bench.runs().filter(|run| run.work.person == seen.person), seen.now.day(), seen.now).own.total(),
        to_mend: bench.runs().rev().filter_map(|run| to_mend(book, &bench, run, seen)).collect(),
        running,
    }
}

/// The end to propose for a run that looks like a forgotten stop.
pub fn forgotten(book: &Book, bench: &Bench, run: &Run, seen: Seen) -> Option<Proposed> {
    let now = seen.now.at;
    let mut known = bench.known(run, |on| fold::counts_as_history(book, on), now);
    known.last_act = known.last_act.max(fold::last_act(book, run, now));
    known.closing = seen.closing.map(|minutes| closing(run.started, minutes));
    let end = run.end(now);
    repair::looks_wrong(run, &known, now).then(|| repair::proposed((run.started.at, run.work.kind), &known, end))
}

/// When the workshop closes on the day a run began.
fn closing(started: Wall, minutes: u16) -> Moment {
    let day: Day = started.day();
    day.start(started.offset).plus(Span::minutes(i64::from(minutes)))
}

fn slab(book: &Book, bench: &Bench, run: &Run, seen: Seen) -> Slab {
    let now = seen.now.at;
    let own = bench.on(run.work.on).filter(|other| other.work.person == run.work.person);
    Slab {
        run: run.clone(),
        name: fold::name_of(book, run.work.on),
        worked: run.worked(now),
        batch: bench.batch(run.work.on, &run.work.op, now),
        on_it: Span::sum(own.map(|run| run.worked(now))),
        heads: run.heads_at(now),
        wrong: forgotten(book, bench, run, seen),
    }
}

fn choice(book: &Book, bench: &Bench, run: &Run, seen: Seen) -> Choice {
    let (kind, stage, on, op) = (run.work.kind, run.work.stage, run.work.on, run.work.op.clone());
    Choice { batch: bench.batch(on, &op, seen.now.at), name: fold::name_of(book, on), op, kind, stage, on }
}

fn planned(book: &Book, bench: &Bench, on: On, seen: Seen) -> Vec<Choice> {
    let On::Job(job) = on else { return vec![] };
    let name = fold::name_of(book, on);
    let choice = |(op, kind, stage): (String, Kind, Stage)| {
        let batch = bench.batch(on, &op, seen.now.at);
        Choice { op, kind, stage, on, name: name.clone(), batch }
    };
    fold::planned_operations(book, job).into_iter().map(choice).collect()
}

/// The latest of each operation and job, the newest first.
fn latest(book: &Book, bench: &Bench, seen: Seen) -> Vec<Choice> {
    let mut found: Vec<&Run> = vec![];
    for run in bench.runs().rev().filter(|run| run.work.person == seen.person) {
        let known = found.iter().any(|other| other.work.op == run.work.op && other.work.on == run.work.on);
        if !known {
            found.push(run);
        }
        if LATEST <= found.len() {
            break;
        }
    }
    found.into_iter().map(|run| choice(book, bench, run, seen)).collect()
}

fn to_mend(book: &Book, bench: &Bench, run: &Run, seen: Seen) -> Option<ToMend> {
    let doubts = run.doubts(seen.now.at);
    let wrong = if run.is_running() { None } else { forgotten(book, bench, run, seen) };
    let listed = !doubts.is_empty() || wrong.is_some();
    listed.then(|| ToMend { run: run.clone(), worked: run.worked(seen.now.at), doubts, wrong })
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
        let slab = |closing| bench(&phone.book, Seen { now: phone.wall(1_900), person: None, closing }).running.unwrap();
        assert_eq!(slab(Some(1_080)).wrong, Some(Proposed { at: at(1_080), because: Because::Closing }));
        assert_eq!(slab(None).wrong, Some(Proposed { at: at(1_110), because: Because::Usual }));
        assert_eq!(slab(Some(960)).wrong, Some(Proposed { at: at(1_110), because: Because::Usual }));
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
