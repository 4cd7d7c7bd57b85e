//! What fits meanwhile: operations of any job that are done before the next wait is over.

use super::bench::{Choice, Look, Seen};
use super::waits::Kept;
use crate::bench::meanwhile::{From, Offer, fitting};
use crate::bench::wait::Wait;
use crate::bench::{On, Run, repair};
use crate::ledger::fold::{self, Job, Operation};
use crate::quantity::{Id, Listed, Span, Wall};

/// A wait that comes off later than that leaves a working day free: nothing is offered for it [J].
const GAP_MOST: Span = Span::minutes(12 * 60);

/// What may be done until a wait comes off.
#[derive(Clone, Debug, PartialEq)]
pub struct Meanwhile {
    /// When the next wait comes off.
    pub off: Wall,
    pub gap: Span,
    /// Three at most.
    pub fits: Vec<Offer<Choice>>,
}

/// What fits until the next off time, seen by a person at whose bench nothing runs; none where nothing waits.
/// `loud` says whether an operation is loud of which the maker said nothing.
pub fn meanwhile(kept: Kept, seen: Seen, loud: impl Fn(&str) -> bool) -> Option<Meanwhile> {
    let now = seen.now;
    let wait = kept.waits.next_off(now.at).filter(|wait| wait.left(now.at) <= GAP_MOST)?;
    if kept.bench.running(seen.person).is_some() {
        return None;
    }
    let look = Look::new(kept.bench, kept.book, seen);
    let hand = kept.bench.last_stopped(seen.person).map(|run| run.work.on);
    let jobs = fold::jobs(kept.book).listed();
    let mut offers = vec![];
    for job in jobs.iter().filter(|job| job.ended.is_none()) {
        for operation in left_of(job, kept) {
            let choice = look.named((operation.op.clone(), operation.kind, operation.stage), On::Job(job.id));
            let Some((span, from)) = expected(&choice, operation, &jobs, kept) else { continue };
            let loud = kept.waits.usuals.loud.get(&choice.op).copied().unwrap_or_else(|| loud(&choice.op));
            offers.push(Offer { here: hand == Some(choice.on), what: choice, span, from, loud });
        }
    }
    let fits = fitting(offers, (now, wait.off()), kept.waits.usuals.quiet);
    Some(Meanwhile { off: Wall::new(wait.off(), wait.began.offset), gap: wait.left(now.at), fits })
}

/// Operations of a job that can be worked on: not those that wait, nor the one behind them, which needs what waits [J].
fn left_of<'a>(job: &'a Job, kept: Kept) -> Vec<&'a Operation> {
    let waits = |operation: &Operation| kept.waits.on().any(|wait: &Wait| wait.job == Some(job.id) && wait.op == operation.op);
    let behind = std::iter::once(false).chain(job.operations.iter().map(waits));
    let free = job.operations.iter().zip(behind).filter(|(operation, behind)| !behind && !waits(operation));
    free.map(|(operation, _)| operation).listed()
}

/// How long it will take: by the pace of its batch, else as in jobs before, else as planned, less what was worked.
fn expected(choice: &Choice, operation: &Operation, jobs: &[Job], kept: Kept) -> Option<(Span, From)> {
    let batch = &choice.batch;
    if batch.is_done() {
        return None;
    }
    let some = |span: Span| (Span::ZERO < span).then_some(span);
    let pace = batch.left().zip(batch.pace()).map(|(left, pace)| pace.times(i64::from(left)));
    let history = || repair::usual(history(choice, jobs, kept)).map(|span| span.minus(batch.all()));
    let planned = || operation.span.map(|span| span.minus(batch.all()));
    let of = |span: Option<Span>, from| span.and_then(some).map(|span| (span, from));
    of(pace, From::Pace).or_else(|| of(history(), From::History)).or_else(|| of(planned(), From::Planned))
}

/// How long the operation took in all on each other job that is typical and done with, or where all its pieces are done.
fn history(choice: &Choice, jobs: &[Job], kept: Kept) -> Vec<Span> {
    let end = kept.bench.runs().next_back().map(|run| run.started.at).unwrap_or_default();
    let took = |job: Id| {
        let runs = kept.bench.on(On::Job(job)).filter(|run: &&Run| run.work.op == choice.op && !run.work.rework && !run.is_running());
        Span::sum(runs.map(|run| run.worked(end)))
    };
    let whole = |job: &&Job| job.ended.is_some() || kept.bench.batch(On::Job(job.id), &choice.op, end).is_done();
    let past = jobs.iter().filter(|job| On::Job(job.id) != choice.on && job.typical).filter(whole);
    past.map(|job| took(job.id)).filter(|span| Span::ZERO < *span).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Kind;
    use crate::bench::meanwhile::Quiet;
    use crate::ledger::decide::{BenchCommand, Command, JobCommand, Laid, WaitCommand};
    use crate::ledger::kind::job::OperationPlanned;
    use crate::ledger::told::{Phone, at, work};
    use crate::quantity::{Clock, Key};

    /// Stands with planned operations in minutes, and a bench; the tops go into clamps at 12:07 for 90 minutes, and the run stops.
    fn clamped(planned: &[(&str, Option<i64>)]) -> (Phone, On, On) {
        let mut phone = Phone::new("a");
        let (stands, bench) = (phone.job(600, "stands"), phone.job(601, "bench"));
        for (op, minutes) in [("glue tops", Some(50)), ("flatten", Some(20))].iter().chain(planned) {
            plan(&mut phone, stands, (op, *minutes));
        }
        let run = phone.start(680, "glue tops", stands);
        let laid = Laid { what: Key::read("glue").unwrap(), stuff: None, span: Span::minutes(90) };
        phone.order(727, Command::Wait(WaitCommand::Clamp { run, n: 5, laid })).unwrap();
        phone.stop(728, run);
        (phone, stands, bench)
    }

    fn plan(phone: &mut Phone, on: On, (op, minutes): (&str, Option<i64>)) {
        let On::Job(job) = on else { unreachable!() };
        phone.note(
            602,
            OperationPlanned { job, op: op.into(), kind: Kind::Make, stage: None, span: minutes.map(Span::minutes), pieces: None },
        );
    }

    #[track_caller]
    fn check(phone: &Phone, minute: i64, shown: &[(&str, i64, From)]) {
        let (waits, bench) = (fold::waits(&phone.book), phone.runs());
        let kept = Kept { waits: &waits, bench: &bench, book: &phone.book };
        let seen = Seen { now: phone.wall(minute), ..Seen::default() };
        let found = meanwhile(kept, seen, |op| op == "rip").map(|found| found.fits).unwrap_or_default();
        let found: Vec<_> = found.iter().map(|fit| (fit.what.op.as_str(), fit.span.as_minutes(), fit.from)).collect();
        assert_eq!(found, shown, "at {minute}");
    }

    #[test]
    fn what_was_planned_and_fits_is_offered_but_not_what_needs_the_pieces_that_wait() {
        let (mut phone, _, bench) = clamped(&[("bore", Some(60)), ("taper", Some(100)), ("pegs", Some(30)), ("oil", None)]);
        plan(&mut phone, bench, ("rip", Some(70)));
        check(&phone, 730, &[("bore", 60, From::Planned), ("pegs", 30, From::Planned), ("rip", 70, From::Planned)]);
        check(&phone, 760, &[("pegs", 30, From::Planned)]); // 57 minutes are left
        check(&phone, 817, &[]);
        let run = phone.start(731, "bore", bench);
        check(&phone, 732, &[]); // something runs
        phone.stop(741, run);
    }

    #[test]
    fn the_pace_of_the_batch_comes_before_history_and_that_before_the_plan() {
        let (mut phone, stands, bench) = clamped(&[("bore", Some(60)), ("pegs", Some(30))]);
        let (On::Job(stands_id), On::Job(bench_id)) = (stands, bench) else { unreachable!() };
        let recalled = BenchCommand::Recall { work: work("bore", bench), start: at(610), stop: at(650), heads: 1 };
        phone.bench(728, recalled).unwrap();
        check(&phone, 730, &[("bore", 60, From::Planned), ("pegs", 30, From::Planned)]);
        phone.order(729, Command::Job(JobCommand::End { job: bench_id, hauls: vec![] })).unwrap();
        check(&phone, 730, &[("bore", 40, From::History), ("pegs", 30, From::Planned)]);
        phone.order(729, Command::Job(JobCommand::Mark { job: bench_id, typical: false })).unwrap();
        check(&phone, 730, &[("bore", 60, From::Planned), ("pegs", 30, From::Planned)]);
        phone.bench(730, BenchCommand::PlanBatch { job: stands_id, op: "bore".into(), n: 3 }).unwrap();
        let run = phone.start(731, "bore", stands);
        phone.bench(741, BenchCommand::Done { run, n: 1 }).unwrap();
        phone.stop(742, run);
        check(&phone, 743, &[("pegs", 30, From::Planned), ("bore", 20, From::Pace)]);
    }

    #[test]
    fn nothing_loud_in_quiet_hours() {
        let (mut phone, _, bench) = clamped(&[]);
        plan(&mut phone, bench, ("rip", Some(30)));
        let clock = |hour| Clock::at(hour, 0).unwrap();
        check(&phone, 730, &[("rip", 30, From::Planned)]);
        phone.order(729, Command::Wait(WaitCommand::SetQuiet { hours: Some((clock(12), clock(14))) })).unwrap();
        check(&phone, 730, &[]);
        let quiet = crate::ledger::kind::wait::OperationLoudSet { op: "rip".into(), loud: false };
        phone.order(729, Command::Wait(WaitCommand::SetLoud(quiet))).unwrap();
        check(&phone, 730, &[("rip", 30, From::Planned)]);
        assert!(Quiet { from: clock(12), until: clock(14) }.meets(phone.wall(730), Span::minutes(30)));
    }
}
