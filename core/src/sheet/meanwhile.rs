//! What fits meanwhile: operations of any job that are done before the next wait is over.

use super::bench::{Choice, Look, Seen};
use super::estimate::history::pieces;
use super::estimate::left::batch_of;
use super::waits::Kept;
use crate::bench::estimate::{Past, learn};
use crate::bench::meanwhile::{From, Offer, SHOWN, fitting};
use crate::bench::wait::Wait;
use crate::bench::{Kind, On, Run, repair};
use crate::ledger::fold::{self, Job, Operation};
use crate::quantity::{Listed, Span, Wall};

/// A wait that comes off later than that leaves a working day free: nothing is offered for it [J].
const GAP_MOST: Span = Span::minutes(12 * 60);

/// What may be done until a wait comes off.
#[derive(Clone, Debug, PartialEq)]
pub struct Meanwhile {
    /// When the next wait comes off.
    pub off: Wall,
    pub gap: Span,
    /// Three at most; none where nothing is known that fits.
    pub fits: Vec<Offer<Choice>>,
    /// Work is known, but all of it takes longer, or makes noise in quiet hours.
    pub too_long: bool,
}

/// What fits until the next off time, seen by a person at whose bench nothing runs; none where nothing waits.
/// Planned operations and what goes on with each job come first, then what was done for no job before, then what other jobs were
/// left at and nobody knows the length of. `loud` says whether an operation is loud of which the maker said nothing.
pub fn meanwhile(kept: Kept, seen: Seen, loud: impl Fn(&str) -> bool) -> Option<Meanwhile> {
    let now = seen.now;
    let wait = kept.waits.next_off(now.at).filter(|wait| wait.left(now.at) <= GAP_MOST)?;
    if kept.bench.running(seen.person).is_some() {
        return None;
    }
    let look = Look::new(kept.bench, kept.book, seen);
    let hand = kept.bench.last_stopped(seen.person).map(|run| run.work.on);
    let jobs = fold::jobs(kept.book).listed();
    let offer = |(what, (span, from)): (Choice, (Span, From))| {
        let loud = kept.waits.usuals.loud.get(&what.op).copied().unwrap_or_else(|| loud(&what.op));
        Offer { here: hand == Some(what.on), what, span, from, loud }
    };
    let open = || jobs.iter().filter(|job| job.ended.is_none());
    let known =
        open().flat_map(|job| planned(job, (&look, &jobs), kept)).chain(open().flat_map(|job| under_way(job, (&look, &jobs), kept)));
    let (unknown, known): (Vec<_>, Vec<_>) = known.map(offer).partition(|offer| offer.from == From::Unknown);
    let none = of_no_job((&look, seen), kept).into_iter().map(offer).listed();
    let quiet = kept.waits.usuals.quiet;
    let gap = wait.left(now.at);
    let is_known = !(known.is_empty() && none.is_empty() && unknown.is_empty());
    let mut fits = fitting(known, (now, wait.off()), quiet);
    fits.extend(fitting(none, (now, wait.off()), quiet));
    // How long that is nobody knows: it is taken to fill the gap.
    let unknown = unknown.into_iter().map(|offer| Offer { span: gap, ..offer }).listed();
    fits.extend(fitting(unknown, (now, wait.off()), quiet));
    fits.truncate(SHOWN);
    let too_long = fits.is_empty() && is_known;
    Some(Meanwhile { off: Wall::new(wait.off(), wait.began.offset), gap, fits, too_long })
}

/// The planned operations of a job that can be worked on and whose length is known.
fn planned(job: &Job, (look, jobs): (&Look, &[Job]), kept: Kept) -> Vec<(Choice, (Span, From))> {
    let one = |operation: &Operation| {
        let choice = look.named((operation.op.clone(), operation.kind, operation.stage), On::Job(job.id));
        let expected = expected(&choice, operation.span, jobs, kept)?;
        Some((choice, expected))
    };
    let is_done = |operation: &&Operation| batch_of((kept.bench, kept.waits), (job, &operation.op), look.now()).is_done();
    left_of(job, kept).into_iter().filter(|operation| !is_done(operation)).filter_map(one).listed()
}

/// What goes on with a job of which nothing waits, though nobody planned it: what it was left at; once that is done whole, what
/// followed it before.
fn under_way(job: &Job, (look, jobs): (&Look, &[Job]), kept: Kept) -> Option<(Choice, (Span, From))> {
    let waits = kept.waits.on().any(|wait: &Wait| wait.job == Some(job.id));
    let last = kept.bench.on(On::Job(job.id)).rev().find(|run| run.work.kind == Kind::Make).filter(|run| !waits && !run.work.rework)?;
    let is_planned = |choice: &Choice| job.operations.iter().any(|operation| operation.op == choice.op);
    let last = look.choice(last);
    let next = || look.followers(&last).into_iter().map(|operation| look.named(operation, last.on)).find(|next| look.may_follow(next));
    let choice = if last.batch.is_done() { next()? } else { last };
    let expected = expected(&choice, None, jobs, kept).unwrap_or((Span::ZERO, From::Unknown));
    (!is_planned(&choice)).then_some((choice, expected))
}

/// What was done for no job before, such as sharpening, as long as it usually takes.
fn of_no_job((look, seen): (&Look, Seen), kept: Kept) -> Vec<(Choice, (Span, From))> {
    let own = || kept.bench.on(On::Nothing).filter(|run| run.work.person == seen.person && !run.is_running());
    let mut found: Vec<(Choice, (Span, From))> = vec![];
    for run in own().rev().filter(|run| run.work.kind == Kind::Make) {
        if found.iter().any(|(choice, _)| choice.op == run.work.op) {
            continue;
        }
        let took = own().filter(|other| other.work.op == run.work.op).map(|run| run.worked(seen.now.at)).listed();
        found.extend(repair::usual(took).map(|usual| (look.choice(run), (usual, From::History))));
    }
    found
}

/// Operations of a job that can be worked on: not those that wait, nor the one behind them, which needs what waits [J].
fn left_of<'a>(job: &'a Job, kept: Kept) -> Vec<&'a Operation> {
    let waits =
        |operation: &Operation| kept.waits.on().any(|wait: &Wait| wait.job == Some(job.id) && kept.bench.op_of(wait) == operation.op);
    let behind = std::iter::once(false).chain(job.operations.iter().map(waits));
    let free = job.operations.iter().zip(behind).filter(|(operation, behind)| !behind && !waits(operation));
    free.map(|(operation, _)| operation).listed()
}

/// How long it will take: by the pace of its batch, else as in jobs before, else as planned, less what was worked.
fn expected(choice: &Choice, planned: Option<Span>, jobs: &[Job], kept: Kept) -> Option<(Span, From)> {
    let batch = &choice.batch;
    if batch.is_done() {
        return None;
    }
    let some = |span: Span| (Span::ZERO < span).then_some(span);
    let pace = batch.left().zip(batch.each()).map(|(left, each)| each.times(i64::from(left)));
    let history = || repair::usual(history(choice, jobs, kept)).map(|span| span.minus(batch.all()));
    let planned = || planned.map(|span| span.minus(batch.all()));
    let of = |span: Option<Span>, from| span.and_then(some).map(|span| (span, from));
    of(pace, From::Pace).or_else(|| of(history(), From::History)).or_else(|| of(planned(), From::Planned))
}

/// How long the operation took in all on each other job that is typical and done with, or where all its pieces are done: for so many pieces as there
/// are to do now.
fn history(choice: &Choice, jobs: &[Job], kept: Kept) -> Vec<Span> {
    let end = kept.bench.runs().next_back().map(|run| run.started.at).unwrap_or_default();
    let kind = choice.kind;
    let n_of = |job: &Job| pieces(job, kind, &kept.bench.batch(On::Job(job.id), &choice.op, end));
    let n = jobs.iter().find(|job| On::Job(job.id) == choice.on).map_or(1, n_of);
    let took = |job: &Job| {
        let runs = kept.bench.on(On::Job(job.id)).filter(|run: &&Run| run.work.op == choice.op && !run.is_running());
        learn::likely(&[Past::of(&runs.listed(), n_of(job))?], n).map(|time| time.span())
    };
    let whole = |job: &&Job| job.ended.is_some() || kept.bench.batch(On::Job(job.id), &choice.op, end).is_done();
    let past = jobs.iter().filter(|job| On::Job(job.id) != choice.on && job.typical).filter(whole);
    past.filter_map(took).filter(|span| Span::ZERO < *span).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
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
        check(&phone, 730, &[("bore", 60, From::Planned), ("pegs", 30, From::Planned), ("bore", 87, From::Unknown)]); // it is under way
        phone.order(729, Command::Job(JobCommand::End { job: bench_id, hauls: vec![] })).unwrap();
        check(&phone, 730, &[("bore", 40, From::History), ("pegs", 30, From::Planned)]);
        phone.order(729, Command::Job(JobCommand::Mark { job: bench_id, typical: false })).unwrap();
        check(&phone, 730, &[("bore", 60, From::Planned), ("pegs", 30, From::Planned)]);
        phone.bench(730, BenchCommand::PlanBatch { job: stands_id, op: "bore".into(), n: 3 }).unwrap();
        let run = phone.start(731, "bore", stands);
        phone.bench(741, BenchCommand::Done { run, n: 1 }).unwrap();
        phone.stop(742, run);
        check(&phone, 743, &[("pegs", 30, From::Planned), ("bore", 22, From::Pace)]); // 11 minutes for one, two are left
    }

    /// Nothing is planned of any job: five tops are in clamps, and what may be done meanwhile is known by what was done before.
    #[test]
    fn without_a_plan_the_other_job_and_time_of_no_job_are_offered() {
        let before = |phone: &mut Phone, op: &str, on: On, (start, stop): (i64, i64)| {
            let recalled = BenchCommand::Recall { work: work(op, on), start: at(start), stop: at(stop), heads: 1 };
            phone.bench(728, recalled).unwrap();
        };
        let (mut phone, stands, bench) = clamped(&[]);
        check(&phone, 730, &[]); // nothing is known
        before(&mut phone, "plane", bench, (500, 520));
        check(&phone, 730, &[("plane", 87, From::Unknown)]); // it is under way, how long it takes is not known
        before(&mut phone, "sharpen", On::Nothing, (400, 425));
        before(&mut phone, "tidy", On::Nothing, (430, 440));
        check(&phone, 730, &[("sharpen", 25, From::History), ("tidy", 10, From::History), ("plane", 87, From::Unknown)]);
        let old = phone.job(0, "old");
        before(&mut phone, "plane", old, (300, 360));
        let On::Job(id) = old else { unreachable!() };
        phone.order(729, Command::Job(JobCommand::End { job: id, hauls: vec![] })).unwrap();
        // 60 before, 20 of them done
        check(&phone, 730, &[("plane", 40, From::History), ("sharpen", 25, From::History), ("tidy", 10, From::History)]);
        before(&mut phone, "sand", stands, (100, 120));
        check(&phone, 803, &[("tidy", 10, From::History)]); // 14 minutes are left, too few for the 40
    }

    /// 150 minutes for five, so 150 / 4.5 for one; and for five again 150, which do not fit, though 60 were planned.
    #[test]
    fn history_is_of_as_many_pieces_as_there_are_to_do() {
        use crate::ledger::kind::job::JobDescribed;
        let (mut phone, _, bench) = clamped(&[]);
        let old = phone.job(0, "old");
        let recalled = BenchCommand::Recall { work: work("bore", old), start: at(300), stop: at(450), heads: 1 };
        phone.bench(728, recalled).unwrap();
        let On::Job(id) = old else { unreachable!() };
        phone.order(729, Command::Job(JobCommand::End { job: id, hauls: vec![] })).unwrap();
        plan(&mut phone, bench, ("bore", Some(60)));
        check(&phone, 730, &[]);
        let On::Job(one) = bench else { unreachable!() };
        phone.note(729, JobDescribed { pieces: Some(1), ..JobDescribed::of(one) });
        check(&phone, 730, &[("bore", 33, From::History)]);
    }

    /// Tapped as boring, and renamed: the tops wait, and boring needs nothing that waits but the next step of theirs does.
    #[test]
    fn what_waits_is_known_by_the_name_that_was_put_right() {
        use crate::ledger::kind::bench::RunRenamed;
        let (mut phone, stands, _) = clamped(&[("bore", Some(60)), ("pegs", Some(30))]);
        let run = phone.runs().on(stands).next().unwrap().id;
        phone.note(729, RunRenamed { run, op: "bore".into(), kind: Kind::Make, stage: None });
        check(&phone, 730, &[("glue tops", 50, From::Planned), ("flatten", 20, From::Planned)]);
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
