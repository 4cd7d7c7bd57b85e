//! Orders about time: start, switch, stop, count pieces, mend, recall, heads.
//!
//! A start is never refused because another run looks wrong: it is a switch, and the other stays listed for mending.

use super::job::some_pieces;
use super::{Act, breaks, helper};
use crate::bench::{Bench, Kind, Mender, On, Run, Stage, Work};
use crate::ledger::kind::bench as kind;
use crate::ledger::kind::book::Struck;
use crate::ledger::{Book, Fact, fold};
use crate::quantity::{Count, Decimal, Id, Moment, Money, PILE_MOST, Span, Wall};
use crate::refusal::{Answer, Refusal};

/// The most letters an operation's name may have.
pub const NAME_MOST: usize = 60;

/// The most heads at one run.
pub const HEADS_MOST: Count = 20;

/// What can be ordered.
#[derive(Clone, Debug, PartialEq)]
pub enum BenchCommand {
    /// Work begins, or began so long ago; what the person was at ends with it. Never before the person's previous run began or ended.
    Start {
        work: Work,
        ago: Span,
    },
    /// Work ends now.
    Stop {
        run: Id,
    },
    /// Work ended earlier than now: the answer to "3 h 12 looks wrong".
    StopAt {
        run: Id,
        at: Moment,
        by: Mender,
    },
    /// It ended when the batch was done by its pace: the pieces that were left are noted with it.
    StopWhole {
        run: Id,
        at: Moment,
        n: Count,
    },
    /// A run that was asked about is right as it stands; one that goes on is so up to now, and may be asked about again.
    Confirm {
        run: Id,
    },
    /// Pieces of a batch are done.
    Done {
        run: Id,
        n: Count,
    },
    /// So many pieces were done in a run, no more and no fewer: what is too much of them is struck, the last first.
    DoneInAll {
        run: Id,
        n: Count,
    },
    /// An end, or the operation, is put right.
    Mend {
        run: Id,
        start: Option<Moment>,
        stop: Option<Moment>,
        op: Option<String>,
    },
    /// Nobody was at work for a while in a run that has ended.
    Break {
        run: Id,
        from: Moment,
        to: Moment,
    },
    /// It began at this moment, by the clock of this place.
    StartAt {
        run: Id,
        at: Wall,
    },
    /// A run was of another job or haul, or of none.
    Move {
        run: Id,
        on: On,
    },
    /// A run was of another operation, with its kind and stage.
    Rename {
        run: Id,
        op: String,
        kind: Kind,
        stage: Stage,
    },
    /// Time that was not stamped, with the heads at work: at least one.
    Recall {
        work: Work,
        start: Moment,
        stop: Moment,
        heads: Count,
    },
    /// The same, where its ends are of another clock than it is written down by.
    RecallBy {
        work: Work,
        start: Wall,
        stop: Moment,
        heads: Count,
    },
    HelperJoins {
        run: Id,
        person: Option<Id>,
        pay: Option<Money>,
    },
    HelperLeaves {
        run: Id,
        person: Option<Id>,
    },
    /// Who was at the run that a switch to this one ended works along in this one too, for the same pay.
    HelpersStay {
        run: Id,
    },
    /// They went with the switch.
    HelpersGone {
        run: Id,
    },
    /// A helper worked along in a run and was forgotten; without an end they are there until the run ends, or they leave.
    RecallHelper {
        run: Id,
        from: Moment,
        to: Option<Moment>,
        pay: Option<Money>,
    },
    /// When a helper came or went, or their pay, is put right.
    MendHelper {
        run: Id,
        helper: Id,
        from: Option<Moment>,
        to: Option<Moment>,
        pay: Option<Money>,
    },
    PlanBatch {
        job: Id,
        op: String,
        n: Count,
    },
    /// The operation of a run is done on its job, of so many pieces: what is not noted of them was done by its last run.
    Whole {
        run: Id,
        of: Count,
    },
}

pub(super) fn decide(book: &Book, command: &BenchCommand, act: &mut Act) -> Answer<()> {
    let bench = fold::bench(book);
    match command {
        BenchCommand::Start { work, ago } => start(book, &bench, (work, *ago), act),
        BenchCommand::Stop { run } => stop(running(&bench, *run)?, act),
        BenchCommand::StopAt { run, at, by } => stop_at(found(&bench, *run)?, (*at, *by), act),
        BenchCommand::StopWhole { run, at, n } => {
            let run = found(&bench, *run)?;
            stop_at(run, (*at, Mender::Proposed), act)?;
            pieces(run, *n, act)
        }
        BenchCommand::Confirm { run } => {
            let run = found(&bench, *run)?.id;
            done(act.add(kind::RunMended { run, by: Mender::Typed, start: None, stop: None, op: None, place: None }))
        }
        BenchCommand::Done { run, n } => pieces(found(&bench, *run)?, *n, act),
        BenchCommand::DoneInAll { run, n } => in_all(found(&bench, *run)?, *n, act),
        BenchCommand::Mend { run, start, stop, op } => {
            let run = found(&bench, *run)?;
            mend(&bench, run, (start.map(|at| Wall::new(at, run.started.offset)), *stop, op), act)
        }
        BenchCommand::Break { run, from, to } => breaks::take_out(&bench, found(&bench, *run)?, (*from, *to), act),
        BenchCommand::StartAt { run, at } => mend(&bench, found(&bench, *run)?, (Some(*at), None, &None), act),
        BenchCommand::Recall { work, start, stop, heads } => {
            recall(book, &bench, (work, Wall::new(*start, act.now().wall.offset), *stop, *heads), act)
        }
        BenchCommand::RecallBy { work, start, stop, heads } => recall(book, &bench, (work, *start, *stop, *heads), act),
        BenchCommand::HelperJoins { run, person, pay } => {
            let run = running(&bench, *run)?;
            no_crowd(run.heads_at(act.now().wall.at).saturating_add(1))?;
            not_there_yet(run, *person)?;
            payable(book, run.work.on, *pay)?;
            done(act.add(kind::HelperJoined { run: run.id, person: *person, pay: *pay }))
        }
        BenchCommand::HelperLeaves { run, person } => {
            let run = running(&bench, *run)?;
            let there = run.heads.iter().any(|head| head.person == *person && head.to.is_none());
            if there { done(act.add(kind::HelperLeft { run: run.id, person: *person })) } else { Err(Refusal::NotThere) }
        }
        BenchCommand::HelpersStay { run } => helper::stay(book, &bench, found(&bench, *run)?, act),
        BenchCommand::HelpersGone { run } => helper::gone(&bench, found(&bench, *run)?, act),
        BenchCommand::Move { run, on } => helper::move_run(book, found(&bench, *run)?, *on, act),
        BenchCommand::Rename { run, op, kind, stage } => {
            named(op)?;
            let stage = Some(*stage).filter(|stage| *stage != kind.stage());
            done(act.add(kind::RunRenamed { run: found(&bench, *run)?.id, op: op.clone(), kind: *kind, stage }))
        }
        BenchCommand::RecallHelper { run, from, to, pay } => helper::recall(book, found(&bench, *run)?, (*from, *to, *pay), act),
        BenchCommand::MendHelper { run, helper, from, to, pay } => {
            helper::mend(book, found(&bench, *run)?, (*helper, *from, *to, *pay), act)
        }
        BenchCommand::Whole { run, of } => whole(&bench, found(&bench, *run)?, *of, act),
        BenchCommand::PlanBatch { job, op, n } => {
            on_known(book, On::Job(*job))?;
            named(op)?;
            some_pieces(*n)?;
            done(act.add(kind::BatchPlanned { job: *job, op: op.clone(), n: *n, done: None }))
        }
    }
}

fn whole(bench: &Bench, run: &Run, of: Count, act: &mut Act) -> Answer<()> {
    some_pieces(of)?;
    let On::Job(job) = run.work.on else { return Err(Refusal::NotThere) };
    let batch = bench.batch(run.work.on, &run.work.op, act.now().wall.at);
    let rest = of.saturating_sub(batch.n);
    if batch.of == Some(of) && rest == 0 {
        return Err(Refusal::NothingAsked);
    }
    if batch.of != Some(of) {
        act.add(kind::BatchPlanned { job, op: run.work.op.clone(), n: of, done: Some(true) });
    }
    if rest == 0 { Ok(()) } else { pieces(run, rest, act) }
}

/// When a run begins that is said to have begun so long ago: not before the person's previous run ended, nor before the one that
/// goes on began. The sheet shows when that is later than what was asked.
pub fn start_from(bench: &Bench, person: Option<Id>, now: Moment, ago: Span) -> Moment {
    let asked = now.minus(ago.max(Span::ZERO));
    let earliest = |run: &Run| if run.is_running() { run.started.at } else { run.end(now) };
    let own = bench.runs().filter(|run| run.work.person == person).map(earliest).filter(|at| *at <= now).max();
    own.map_or(asked, |own| own.max(asked)).min(now)
}

fn start(book: &Book, bench: &Bench, (work, ago): (&Work, Span), act: &mut Act) -> Answer<()> {
    named(&work.op)?;
    on_known(book, work.on)?;
    let most = Span::RUN_MOST;
    if ago < Span::ZERO || most < ago {
        return Err(Refusal::SpanOutOfRange { met: ago, most });
    }
    let now = act.now().wall.at;
    let from = start_from(bench, work.person, now, ago);
    if let Some(run) = bench.running(work.person) {
        act.add(kind::RunStopped { run: run.id, switched: Some(true) });
    }
    let Work { op, kind, person, .. } = work.clone();
    let ((job, haul), (stage, rework)) = (on_what(work.on), beyond_default(work));
    done(act.add(kind::RunStarted { op, kind, job, haul, stage, from: (from < now).then_some(from), person, rework }))
}

fn stop(run: &Run, act: &mut Act) -> Answer<()> {
    done(act.add(kind::RunStopped { run: run.id, switched: None }))
}

fn stop_at(run: &Run, (at, by): (Moment, Mender), act: &mut Act) -> Answer<()> {
    let now = act.now().wall.at;
    lasts((run.started.at, at), now)?;
    if run.is_running() {
        stop(run, act)?;
    } else if run.end(now) < at {
        return Err(Refusal::RunHasEnded { run: run.id });
    }
    done(act.add(kind::RunMended { run: run.id, by, start: None, stop: Some(at), op: None, place: None }))
}

fn pieces(run: &Run, n: Count, act: &mut Act) -> Answer<()> {
    if n == 0 {
        return Err(Refusal::NothingAsked);
    }
    at_most(run.done().saturating_add(n))?;
    done(act.add(kind::PiecesDone { run: run.id, n }))
}

fn in_all(run: &Run, n: Count, act: &mut Act) -> Answer<()> {
    let (mut left, mut struck) = (run.done(), vec![]);
    if n == left {
        return Err(Refusal::NothingAsked);
    }
    for notch in run.notches.iter().rev().take_while(|_| n < run.done()) {
        if left <= n {
            break;
        }
        left = left.saturating_sub(notch.n);
        struck.push(notch.id);
    }
    if !struck.is_empty() {
        act.add(Struck { entries: struck });
    }
    if left < n { at_most(n).and_then(|()| done(act.add(kind::PiecesDone { run: run.id, n: n.saturating_sub(left) }))) } else { Ok(()) }
}

pub(super) fn mend(
    bench: &Bench,
    run: &Run,
    (start, stop, op): (Option<Wall>, Option<Moment>, &Option<String>),
    act: &mut Act,
) -> Answer<()> {
    if start.is_none() && stop.is_none() && op.is_none() {
        return Err(Refusal::NothingAsked);
    }
    op.as_deref().map_or(Ok(()), named)?;
    if start.is_some() || stop.is_some() {
        let now = act.now().wall.at;
        let ends = (start.map_or(run.started.at, |start| start.at), stop.unwrap_or(run.end(now)));
        lasts(ends, now)?;
        free(bench, run.work.person, (ends.0, as_cut(bench, run, ends.1)), Some(run.id))?;
    }
    let place = start.map(|start| start.offset).filter(|place| *place != run.started.offset);
    done(act.add(kind::RunMended { run: run.id, by: Mender::Typed, start: start.map(|start| start.at), stop, op: op.clone(), place }))
}

/// Where a run ends that is mended to this: put back to its own stamp it ends, as it did, where the next run began.
fn as_cut(bench: &Bench, run: &Run, stop: Moment) -> Moment {
    let stamped = run.tapped_stop.is_some_and(|tapped| tapped.at == stop);
    bench.next_start(run).filter(|next| stamped && run.started.at < *next).map_or(stop, |next| next.min(stop))
}

fn recall(book: &Book, bench: &Bench, (work, from, stop, heads): (&Work, Wall, Moment, Count), act: &mut Act) -> Answer<()> {
    let start = from.at;
    named(&work.op)?;
    on_known(book, work.on)?;
    if heads == 0 {
        return Err(Refusal::NothingAsked);
    }
    no_crowd(heads)?;
    lasts((start, stop), act.now().wall.at)?;
    free(bench, work.person, (start, stop), None)?;
    let Work { op, kind, person, .. } = work.clone();
    let ((job, haul), (stage, rework)) = (on_what(work.on), beyond_default(work));
    let heads = (1 < heads).then_some(heads);
    let place = Some(from.offset).filter(|place| *place != act.now().wall.offset);
    done(act.add(kind::RunRecalled { op, kind, start, stop, job, haul, stage, person, rework, heads, place }))
}

/// The job and the haul.
pub(super) fn on_what(on: On) -> (Option<Id>, Option<Id>) {
    match on {
        On::Job(job) => (Some(job), None),
        On::Haul(haul) => (None, Some(haul)),
        On::Nothing => (None, None),
    }
}

/// Stage and rework, where they are not what they would be if nothing was said.
pub(super) fn beyond_default(work: &Work) -> (Option<Stage>, Option<bool>) {
    (Some(work.stage).filter(|stage| *stage != work.kind.stage()), work.rework.then_some(true))
}

pub(super) fn done(_: Id) -> Answer<()> {
    Ok(())
}

pub(super) fn found(bench: &Bench, run: Id) -> Answer<&Run> {
    bench.run(run).ok_or(Refusal::NotThere)
}

fn running(bench: &Bench, run: Id) -> Answer<&Run> {
    let run = found(bench, run)?;
    if run.is_running() { Ok(run) } else { Err(Refusal::RunHasEnded { run: run.id }) }
}

pub(super) fn named(op: &str) -> Answer<()> {
    match op.chars().count() {
        _ if op.trim().is_empty() => Err(Refusal::NameMissing),
        met if NAME_MOST < met => Err(Refusal::NameTooLong { met, most: NAME_MOST }),
        _ => Ok(()),
    }
}

pub(super) fn at_most(would_be: Count) -> Answer<()> {
    if would_be <= PILE_MOST { Ok(()) } else { Err(Refusal::TooManyAtOnce { would_be, most: PILE_MOST }) }
}

pub(super) fn no_crowd(would_be: Count) -> Answer<()> {
    if would_be <= HEADS_MOST { Ok(()) } else { Err(Refusal::TooManyHeads { would_be, most: HEADS_MOST }) }
}

pub(super) fn on_known(book: &Book, on: On) -> Answer<()> {
    let began = |id: Id, is: fn(&Fact) -> bool| book.entry(id).is_some_and(|(entry, struck)| !struck && is(&entry.fact));
    let known = match on {
        On::Job(id) => began(id, |fact| matches!(fact, Fact::JobBegan(_))),
        On::Haul(id) => began(id, |fact| matches!(fact, Fact::HaulBegan(_))),
        On::Nothing => true,
    };
    if known { Ok(()) } else { Err(Refusal::NotThere) }
}

/// Nobody helps at one run twice at once; of those without a name there may be several.
fn not_there_yet(run: &Run, person: Option<Id>) -> Answer<()> {
    let is_there = person.is_some() && run.heads.iter().any(|head| head.person == person && head.to.is_none());
    if is_there { Err(Refusal::HelperThere) } else { Ok(()) }
}

/// Pay is nothing or more, and in the currency of the job or haul whose cost it is.
pub(super) fn payable(book: &Book, on: On, pay: Option<Money>) -> Answer<()> {
    let Some(pay) = pay else { return Ok(()) };
    if pay.amount() < Decimal::ZERO {
        return Err(Refusal::MoneyBelowNothing { met: pay });
    }
    let currency = match on {
        On::Job(job) => fold::job(book, job).map(|job| job.currency),
        On::Haul(haul) => fold::haul(book, haul).map(|haul| haul.currency),
        On::Nothing => None,
    };
    match currency.filter(|currency| *currency != pay.currency()) {
        Some(one) => Err(Refusal::CurrenciesMixed { one, other: pay.currency() }),
        None => Ok(()),
    }
}

/// Ends that are in order, over, and no further apart than a run may last.
fn lasts((start, end): (Moment, Moment), now: Moment) -> Answer<()> {
    if end <= start {
        return Err(Refusal::EndNotAfterStart { start, end });
    }
    if now < end {
        return Err(Refusal::NotYet { met: end, now });
    }
    let (met, most) = (start.until(end), Span::RUN_MOST);
    if met <= most { Ok(()) } else { Err(Refusal::SpanOutOfRange { met, most }) }
}

/// No minute is paid twice.
pub(super) fn free(bench: &Bench, person: Option<Id>, ends: (Moment, Moment), but: Option<Id>) -> Answer<()> {
    bench.overlapped(person, ends, but).map_or(Ok(()), |run| Err(Refusal::RunsOverlap { run: run.id }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::told::{Phone, at, work};

    fn sand() -> Work {
        work("sand", On::Nothing)
    }

    fn ago(minutes: i64) -> BenchCommand {
        BenchCommand::Start { work: sand(), ago: Span::minutes(minutes) }
    }

    fn recall(from: i64, to: i64) -> BenchCommand {
        BenchCommand::Recall { work: sand(), start: at(from), stop: at(to), heads: 1 }
    }

    #[test]
    fn a_start_said_late_never_lies_before_the_previous_run() {
        // Previous run 0 to 50; start at 60, said to have been `ago` minutes earlier.
        for (minutes, worked) in [(0, 40), (5, 45), (10, 50), (15, 50), (30, 50)] {
            let mut phone = Phone::new("a");
            let first = phone.start(0, "glue", On::Nothing);
            phone.stop(50, first);
            phone.bench(60, ago(minutes)).unwrap();
            assert_eq!(phone.minutes(100), [("glue".into(), 50), ("sand".into(), worked)], "{minutes} ago");
        }
    }

    #[test]
    fn a_switch_said_late_ends_the_run_before_then() {
        for (minutes, glue, sand) in [(0, 60, 40), (15, 45, 55), (60, 0, 100), (90, 0, 100)] {
            let mut phone = Phone::new("a");
            phone.start(0, "glue", On::Nothing);
            phone.bench(60, ago(minutes)).unwrap();
            assert_eq!(phone.minutes(100), [("glue".into(), glue), ("sand".into(), sand)], "{minutes} ago");
        }
    }

    #[test]
    fn a_start_is_never_blocked_by_a_run_that_looks_wrong() {
        let mut phone = Phone::new("a");
        let forgotten = phone.start(0, "glue", On::Nothing);
        phone.start(4_000, "sand", On::Nothing);
        let runs = phone.runs();
        assert_eq!(runs.all_running().count(), 1);
        assert_eq!(runs.run(forgotten).unwrap().doubts(at(4_001)), [crate::bench::Doubt::TooLong]);
    }

    /// A book with one run from 0 to 50 and one that goes on since 60, seen at 100.
    #[track_caller]
    fn check(order: impl Fn(Id, Id) -> BenchCommand, refused: impl Fn(Id, Id) -> Option<Refusal>) {
        let mut phone = Phone::new("a");
        let ended = phone.start(0, "glue", On::Nothing);
        phone.stop(50, ended);
        let open = phone.start(60, "trim", On::Nothing);
        assert_eq!(phone.bench(100, order(ended, open)).err(), refused(ended, open));
    }

    #[test]
    fn no_minute_is_paid_twice() {
        check(|_, _| recall(50, 60), |_, _| None);
        check(|_, _| recall(49, 60), |ended, _| Some(Refusal::RunsOverlap { run: ended }));
        check(|_, _| recall(50, 61), |_, open| Some(Refusal::RunsOverlap { run: open }));
        check(|_, _| recall(90, 95), |_, open| Some(Refusal::RunsOverlap { run: open }));
        let mend =
            |run, start: Option<i64>, stop: Option<i64>| BenchCommand::Mend { run, start: start.map(at), stop: stop.map(at), op: None };
        check(|_, open| mend(open, Some(50), None), |_, _| None);
        check(|_, open| mend(open, Some(40), None), |ended, _| Some(Refusal::RunsOverlap { run: ended }));
        check(|ended, _| mend(ended, None, Some(60)), |_, _| None);
        check(|ended, _| mend(ended, None, Some(70)), |_, open| Some(Refusal::RunsOverlap { run: open }));
    }

    /// Glue 0 to 100 by its stamps, ended at 85 by a start said late; mended, then put back to the stamps.
    #[test]
    fn an_end_is_put_back_to_its_stamp_though_another_ends_it() {
        let mut phone = Phone::new("a");
        let glue = phone.start(0, "glue", On::Nothing);
        phone.bench(100, ago(15)).unwrap();
        let before = phone.runs().run(glue).cloned();
        let mend = |stop| BenchCommand::Mend { run: glue, start: None, stop: Some(at(stop)), op: None };
        phone.bench(101, mend(80)).unwrap();
        assert_eq!(phone.minutes(110), [("glue".into(), 80), ("sand".into(), 25)]);
        let sand = phone.runs().running(None).unwrap().id;
        assert_eq!(phone.bench(102, mend(99)), Err(Refusal::RunsOverlap { run: sand }), "no stamp");
        phone.bench(103, mend(100)).unwrap();
        assert_eq!(phone.minutes(110), [("glue".into(), 85), ("sand".into(), 25)]);
        let after = phone.runs().run(glue).cloned();
        let told = |run: Option<Run>| run.map(|run| (run.shares(at(110)), run.mended_stop, run.doubts(at(110)), run.cut));
        assert_eq!(told(after), told(before), "as it was");
    }

    #[test]
    fn ends_are_in_order_and_over_and_no_further_apart_than_a_run_may_last() {
        let now = at(100);
        check(|_, _| recall(55, 55), |_, _| Some(Refusal::EndNotAfterStart { start: at(55), end: at(55) }));
        check(|_, _| recall(58, 52), |_, _| Some(Refusal::EndNotAfterStart { start: at(58), end: at(52) }));
        check(|_, _| recall(90, 101), |_, _| Some(Refusal::NotYet { met: at(101), now }));
        let over = Refusal::SpanOutOfRange { met: Span::minutes(2_881), most: Span::RUN_MOST };
        check(|_, _| recall(-2_881, 0), |_, _| Some(over.clone()));
        check(|_, _| recall(-2_880, 0), |_, _| None);
        let stop_at = |run, minute| BenchCommand::StopAt { run, at: at(minute), by: Mender::Typed };
        check(|_, open| stop_at(open, 60), |_, _| Some(Refusal::EndNotAfterStart { start: at(60), end: at(60) }));
        check(|_, open| stop_at(open, 101), |_, _| Some(Refusal::NotYet { met: at(101), now }));
        check(|_, open| stop_at(open, 61), |_, _| None);
        check(|ended, _| stop_at(ended, 51), |ended, _| Some(Refusal::RunHasEnded { run: ended }));
        check(|_, _| ago(-1), |_, _| Some(Refusal::SpanOutOfRange { met: Span::minutes(-1), most: Span::RUN_MOST }));
    }

    #[test]
    fn nobody_helps_twice_at_once() {
        let joins = |run, person| BenchCommand::HelperJoins { run, person, pay: None };
        let mut phone = Phone::new("a");
        let run = phone.start(0, "carry", On::Nothing);
        for (minute, person, refused) in [(10, Some(run), false), (20, Some(run), true), (25, None, false), (30, None, false)] {
            let found = phone.bench(minute, joins(run, person)).err();
            assert_eq!(found, refused.then_some(Refusal::HelperThere), "at {minute}");
        }
        phone.bench(40, BenchCommand::HelperLeaves { run, person: Some(run) }).unwrap();
        phone.bench(50, joins(run, Some(run))).unwrap();
        assert_eq!(phone.runs().of_none(at(60)).labour.as_minutes(), 60 + 30 + 35 + 30 + 10);
    }

    #[test]
    fn a_helper_is_paid_in_the_currency_of_the_job() {
        use crate::quantity::Currency;
        let pay = |sum: i64, currency| Money::whole(Decimal::from(sum), currency).unwrap();
        let mut phone = Phone::new("a");
        let shelf = phone.job(0, "shelf");
        let run = phone.start(1, "carry", shelf);
        let mut joins = |sum, currency| {
            let joins = BenchCommand::HelperJoins { run, person: None, pay: Some(pay(sum, currency)) };
            phone.bench(2, joins).err()
        };
        assert_eq!(joins(15, Currency::USD), None);
        assert_eq!(joins(0, Currency::USD), None);
        assert_eq!(joins(-1, Currency::USD), Some(Refusal::MoneyBelowNothing { met: pay(-1, Currency::USD) }));
        assert_eq!(joins(15, Currency::EUR), Some(Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR }));
    }

    #[test]
    fn what_is_not_there_or_has_ended_is_said() {
        check(|ended, _| BenchCommand::Stop { run: ended }, |ended, _| Some(Refusal::RunHasEnded { run: ended }));
        let nobody = Id::new(at(0), [0; 10]);
        check(|_, _| BenchCommand::Stop { run: nobody }, |_, _| Some(Refusal::NotThere));
        check(|_, open| BenchCommand::HelperLeaves { run: open, person: None }, |_, _| Some(Refusal::NotThere));
        check(|_, _| BenchCommand::Start { work: work("sand", On::Job(nobody)), ago: Span::ZERO }, |_, _| Some(Refusal::NotThere));
        check(|_, _| BenchCommand::Start { work: work(" ", On::Nothing), ago: Span::ZERO }, |_, _| Some(Refusal::NameMissing));
        let long = "é".repeat(61);
        check(
            |_, _| BenchCommand::Start { work: work(&long, On::Nothing), ago: Span::ZERO },
            |_, _| Some(Refusal::NameTooLong { met: 61, most: 60 }),
        );
        check(|_, open| BenchCommand::Done { run: open, n: 0 }, |_, _| Some(Refusal::NothingAsked));
        check(|ended, _| BenchCommand::Done { run: ended, n: 9_999 }, |_, _| None); // a notch that was forgotten
        check(|_, open| BenchCommand::Done { run: open, n: 10_000 }, |_, _| Some(Refusal::TooManyAtOnce { would_be: 10_000, most: 9_999 }));
    }
}
