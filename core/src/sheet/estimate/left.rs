//! What is still to do of each operation of a job: by its pieces where they are noted or wait, else by its hours.

use super::Row;
use super::coats::{Coats, is_one_coat};
use super::counted::{Counted, beside, counted, together};
use super::history::pieces;
use crate::bench::estimate::spread::minutes;
use crate::bench::estimate::{Left, Likely, Over};
use crate::bench::wait::{Wait, What};
use crate::bench::{Batch, Bench, Kind, On, Run, Stage, Time, Work};
use crate::ledger::fold::{Job, Operation};
use crate::quantity::{Count, Id, Listed, Moment, Span};
use crate::sheet::Shop;
use std::borrow::Cow;

/// What is left of each row.
///
/// Of an operation of which some pieces are noted, the pieces that are left at its pace: never nothing before they are done. But where each of
/// them was put to wait and nobody said how many there are, no more than the plan leaves: one clamping may hold all (ours). And no less than it
/// leaves of coats of which nobody but the plan said how many pieces they are on, while one more may follow (ours), nor than the pieces that a
/// further coat lacks once some have it (ours); where earlier jobs tell how many
/// coats there are, those that are missing; one that is planned as a coat by itself is done with its pieces. Nothing of what
/// was put to wait with all its pieces, while nobody is at it. Nothing of what was left for another step, or for a coat to dry, once it had
/// taken what was thought of it (ours); while it runs or was the last, and no piece of it is noted, what half of the times that take so long have
/// left (ours). Of all else what it likely takes less what was worked, at hand or left: work alone never makes it
/// more. Of a drive that nothing but the plan speaks of, once it alone is to come, what was planned less what was driven. Of a whole piece and of its rest, less what was
/// worked on operations that are not planned, and never less than the pieces that are left of these; of a whole piece that is made, those
/// pieces alone. Rework takes nothing off. Nothing at all
/// once the last piece is sold or handed over, but of what was planned since. What of a run is to settle takes nothing off either: neither its
/// minutes nor what was noted or put to wait in it, nor, where none of it stands, that it was begun.
pub fn lefts(shop: &Shop, job: &Job, rows: &[Row]) -> Vec<Left> {
    if job.ended.is_some() {
        return rows.iter().map(|_| Left::Nothing(Over::Ended)).listed();
    }
    let logged = shop.bench.sure_of_job(job.id, shop.now);
    let planned = |op: &str| job.operations.iter().any(|planned| planned.op == op);
    let steps = steps(shop, job);
    let unplanned = Span::sum(logged.by_op.iter().filter(|(op, _)| !planned(op)).map(|(_, shares)| shares.total()));
    let is_over = |op: &str| job.operations.iter().any(|planned| planned.op == op && !has_to_come(shop, job, planned));
    let left = |row: &Row| match row.op.as_deref() {
        None if job.left() == 0 => Left::Nothing(Over::Gone),
        None if is_made_whole(shop, job, (&logged, rows)) => counted_alone(&counted(shop, job, rows)),
        Some(op) if is_over(op) => Left::Nothing(Over::Gone),
        Some(op) => {
            let by_step = || of_step(shop, job, (op, row.kind, (row.thought, row.time, row.likely), &steps));
            let left = coats_left(shop, job, (op, row.coats)).unwrap_or_else(by_step);
            with_coat(left, under_way(shop, job, (op, &steps)), row.likely)
        }
        None => at_least(row, unplanned, || together(&counted(shop, job, rows))),
    };
    let lefts = rows.iter().map(left).listed();
    let is_over = |(row, left): (&Row, &Left)| row.is_as_planned() || left.likely(row.likely) <= Span::ZERO;
    let drives_alone = rows.iter().zip(&lefts).all(is_over) && beside(shop, job, rows).is_empty();
    if !drives_alone {
        return lefts;
    }
    lefts.into_iter().zip(rows).map(|(left, row)| as_planned(left, row)).listed()
}

/// Whether a piece of which nothing was planned is made: some of it is gone, or the maker said so, or it was finished with no further coat that
/// may follow, and took no less than nine in ten such pieces do: who coats a part first has not made the whole (ours).
/// Counted pieces that are left are to come all the same.
pub fn is_made_whole(shop: &Shop, job: &Job, (logged, rows): (&Time, &[Row])) -> bool {
    let is_enough = || least(job, rows).is_none_or(|least| least <= logged.own.total());
    let finished = || is_finished(shop, job) && !is_between_coats(shop, job) && is_enough();
    job.operations.is_empty() && (0 < job.selling.gone() || job.whole_planned || finished())
}

/// Whether the last work of making was a coat that none may follow: as many as were said are noted, or it was put on a day ago. What is glued or
/// sanded behind a coat, and a coat that was just put on, are not the last by anybody's word.
pub fn is_finished(shop: &Shop, job: &Job) -> bool {
    let on = On::Job(job.id);
    let makes = |run: &&Run| run.work.kind == Kind::Make && !run.work.rework;
    shop.bench.sure(shop.bench.on(on).filter(makes), shop.now).max_by_key(|run| run.started.at).is_some_and(|last| {
        let is_noted = || shop.bench.sure_batch(on, &last.work.op, shop.now).is_done();
        let is_old = || !last.is_running() && NEXT_COAT <= last.end(shop.now).until(shop.now);
        last.work.stage == Stage::Finish && (is_noted() || is_old())
    })
}

/// What nine in ten such pieces take no less than; where nothing says that, the low end of an estimate that was given.
fn least(job: &Job, rows: &[Row]) -> Option<Span> {
    let whole = rows.iter().find(|row| row.op.is_none()).map(|row| crate::bench::estimate::spread::whole(row.time.at(0.1)));
    whole.or(job.kept.map(|kept| kept.low))
}

/// After a coat that is dry so long, and no other step since, another is not waited for any more [J].
const NEXT_COAT: Span = Span::minutes(24 * 60);

/// Whether a coat of a job dries, or was dry less than a day ago, and may not have been the last: nobody said at the bench how many there are
/// (a plan is made before it is seen how many coats are wanted), and no other step was begun since. One that is planned as a coat by itself is
/// done with its pieces.
pub fn is_between_coats(shop: &Shop, job: &Job) -> bool {
    between_coats(shop, job, |_| true)
}

/// The same of the coats of some operations alone.
fn between_coats(shop: &Shop, job: &Job, is_of: impl Fn(&str) -> bool) -> bool {
    let on = On::Job(job.id);
    let of_it = shop.waits().all().filter(|wait| wait.job == Some(job.id) && wait.what() == What::Coat);
    let coats = of_it.filter(|wait| is_of(shop.bench.op_of(wait)));
    let may_follow = |wait: &Wait| {
        let op = shop.bench.op_of(wait);
        let batch = shop.bench.batch(on, op, shop.now);
        let is_said = batch.of.is_some() && !batch.only_planned || is_one_coat(&shop.bench, job, op);
        let after = shop.bench.on(on).filter(|run| wait.began.at < run.started.at && run.work.op != op && run.work.kind == Kind::Make);
        let is_left = shop.bench.sure(after, shop.now).next().is_some();
        // One that nobody takes off, or only later, is dry when it was to be.
        let dry = wait.ended.map_or(wait.off(), |ended| ended.at.at.min(wait.off()));
        let lately = dry.until(shop.now) < NEXT_COAT;
        !is_said && !is_left && lately
    };
    coats.listed().into_iter().any(may_follow)
}

fn counted_alone(counted: &[Counted]) -> Left {
    if counted.is_empty() { Left::Nothing(Over::Made) } else { Left::Goes(together(counted)) }
}

/// Less what is gone of it, but not less than what is counted.
fn at_least(row: &Row, gone: Span, counted: impl FnOnce() -> Likely) -> Left {
    let (less, counted) = (Left::Less(gone), counted());
    if less.likely(row.likely) < counted.span() { Left::Goes(counted) } else { less }
}

/// Of a drive, the plan without what is put on top of all that was thought.
fn as_planned(left: Left, row: &Row) -> Left {
    match left {
        Left::Less(gone) if row.is_as_planned() && row.before <= gone => Left::Nothing(Over::Driven),
        Left::Less(gone) if row.is_as_planned() => Left::AsPlanned { thought: row.before, gone },
        left => left,
    }
}

fn has_to_come(shop: &Shop, job: &Job, operation: &Operation) -> bool {
    let is_since = |run: &Run, since: Moment| run.work.op == operation.op && since <= run.started.at;
    job.has_to_come(operation, |since| shop.bench.on(On::Job(job.id)).any(|run| is_since(run, since)))
}

/// What a planned operation is still thought to take, by the same rule as what is likely of it. None of one that nobody estimated and nobody
/// began.
pub fn still_thought(shop: &Shop, job: &Job, operation: &Operation) -> Option<Span> {
    if !has_to_come(shop, job, operation) {
        return Some(Span::ZERO);
    }
    let thought = operation.span.unwrap_or_default();
    let time = (operation.span, Likely::guessed(minutes(thought)), thought);
    let (op, steps) = (&*operation.op, steps(shop, job));
    let left = of_step(shop, job, (op, operation.kind, time, &steps));
    let left = with_coat(left, under_way(shop, job, (op, &steps)), thought);
    let is_known = operation.span.is_some() || !matches!(left, Left::Less(gone) if gone <= Span::ZERO);
    is_known.then(|| left.likely(thought).max(Span::ZERO))
}

/// Work that makes nothing and is not planned, work done again, and what is to settle leave at hand what was.
fn steps<'a>(shop: &'a Shop, job: &Job) -> Vec<Cow<'a, Run>> {
    let planned = |op: &str| job.operations.iter().any(|planned| planned.op == op);
    let is_step = |work: &Work| !work.rework && (work.kind == Kind::Make || planned(&work.op));
    shop.bench.sure(shop.bench.on(On::Job(job.id)).filter(|run| is_step(&run.work)), shop.now).listed()
}

/// What was thought of an operation, what it takes, and the likely minutes of that.
type Took = (Option<Span>, Likely, Span);

fn of_step(shop: &Shop, job: &Job, (op, kind, (thought, time, likely), steps): (&str, Kind, Took, &[Cow<Run>])) -> Left {
    let batch = batch(shop, job, op);
    let put = Put::of(shop, job, op);
    if let Some(by_pieces) = by_pieces(&batch) {
        let is_unsaid = shop.bench.batch(On::Job(job.id), op, shop.now).of.is_none();
        let by_plan = thought.map(|_| Left::Less(batch.sure));
        let [plan, pieces] = [by_plan.unwrap_or(by_pieces), by_pieces].map(|left| left.likely(likely));
        let is_more = is_unsaid && put.is_each_of(&batch) && plan < pieces;
        let is_less = pieces < plan && put.coats && 0 < put.n && between_coats(shop, job, |other| other == op);
        return by_plan.filter(|_| is_more || is_less).unwrap_or(by_pieces);
    }
    if !batch.runs && put.is_all(&batch) {
        return Left::Nothing(Over::Waits);
    }
    let took = batch.sure;
    let (is_taken, was_left) = (Span::ZERO < took && thought.unwrap_or(likely) <= took, was_left(steps, op));
    match () {
        () if is_taken && was_left => Left::Nothing(Over::NextBegun),
        () if is_taken && put.dries && !batch.runs => Left::Nothing(Over::Dries),
        // Only what is made has pieces that can be noted; of what was left before it was over, the rest is as it was.
        () if kind == Kind::Make && batch.n == 0 && !was_left => longer((time, likely), took).unwrap_or(Left::Less(took)),
        () => Left::Less(took),
    }
}

/// What is left of an operation that earlier jobs did in so many coats, while a further one may follow: those that are missing, at its pace.
fn coats_left(shop: &Shop, job: &Job, (op, coats): (&str, Option<Count>)) -> Option<Left> {
    let batch = shop.bench.sure_batch(On::Job(job.id), op, shop.now);
    let on = Coats::of(shop, job, (op, batch.n)).filter(|_| 0 < batch.n)?;
    let all = on.each.saturating_mul(coats?);
    between_coats(shop, job, |other| other == op).then(|| by_pieces(&Batch { of: Some(all), ..batch })).flatten()
}

/// What is left of a further coat that some of its pieces have and some have not: these, at the pace of the operation. None once the maker was done
/// with it, or another step was begun.
fn under_way(shop: &Shop, job: &Job, (op, steps): (&str, &[Cow<Run>])) -> Option<Left> {
    let batch = shop.bench.sure_batch(On::Job(job.id), op, shop.now);
    let on = Coats::of(shop, job, (op, batch.n)).filter(|on| 1 < on.n && !was_left(steps, op))?;
    let is_said = batch.of.is_some_and(|of| batch.n <= of);
    let all = on.each.saturating_mul(on.n);
    let is_begun = batch.n < all && !is_said;
    is_begun.then(|| by_pieces(&Batch { of: Some(all), ..batch })).flatten()
}

/// Never less than what is left of the coat that is under way.
fn with_coat(left: Left, coat: Option<Left>, likely: Span) -> Left {
    coat.filter(|coat| left.likely(likely) < coat.likely(likely)).unwrap_or(left)
}

/// What is left of an operation of which no piece is noted, once that is more than the estimate leaves of it; none until then.
fn longer((time, likely): (Likely, Span), took: Span) -> Option<Left> {
    let rest = Some(time.beyond(minutes(took))).filter(|_| 0.0 < time.median && Span::ZERO < took)?;
    (likely.minus(took) < rest.span()).then_some(Left::Longer { gone: took, rest })
}

/// Whether an operation was left for another step: its last run is over, and another was begun after it.
fn was_left(steps: &[Cow<Run>], op: &str) -> bool {
    let of_it = |run: &&Cow<Run>| run.work.op == op;
    let is_over = !steps.iter().any(|run| of_it(&run) && run.is_running());
    is_over && steps.last().is_some_and(|last| last.work.op != op)
}

/// What of an operation was put to wait.
struct Put {
    /// Pieces that wait, or waited.
    n: Count,
    /// A coat dries, or dried: nobody knows whether it was the last.
    coats: bool,
    /// A coat dries now.
    dries: bool,
}

impl Put {
    fn of(shop: &Shop, job: &Job, op: &str) -> Put {
        let bench = &shop.bench;
        let is_sure = |wait: &Wait| {
            let run = wait.run.and_then(|run| bench.run(run)).filter(|run| bench.is_doubtful(run, shop.now));
            run.is_none_or(|run| wait.began.at <= bench.stands_to(run, shop.now))
        };
        let of_it = shop.waits().all().filter(|wait| wait.job == Some(job.id) && bench.op_of(wait) == op);
        let all = of_it.filter(|wait| is_sure(wait)).listed();
        let n = all.iter().fold(0, |sum: Count, wait| sum.saturating_add(wait.n));
        let dries = all.iter().any(|wait| wait.what() == What::Coat && wait.is_on());
        Put { n, coats: bench.is_coated(On::Job(job.id), op), dries }
    }

    /// What is noted was put to wait, as it was clamped: one clamping may hold all of it.
    fn is_each_of(&self, batch: &Batch) -> bool {
        !self.coats && 0 < self.n && batch.n <= self.n
    }

    fn is_all(&self, batch: &Batch) -> bool {
        !self.coats && 0 < self.n && batch.of.is_some_and(|of| of <= self.n.max(batch.n))
    }
}

/// An operation's pieces, by what stands of its runs: of as many as were said at the bench, else as were planned, else as the job has.
pub fn batch(shop: &Shop, job: &Job, op: &str) -> Batch {
    out_of(&shop.bench, (job, op), shop.bench.sure_batch(On::Job(job.id), op, shop.now))
}

/// The same by all runs, as the bench counts them.
pub fn batch_of(bench: &Bench, (job, op): (&Job, &str), now: Moment) -> Batch {
    out_of(bench, (job, op), bench.batch(On::Job(job.id), op, now))
}

/// A coat that dries is no piece: with coats it is for so many as were said or planned, and not for as many as the job has, but where each coat is
/// planned by itself.
fn out_of(bench: &Bench, (job, op): (&Job, &str), batch: Batch) -> Batch {
    let planned = job.operations.iter().find(|planned| planned.op == op);
    let may_be_more = || bench.is_coated(On::Job(job.id), op) && !is_one_coat(bench, job, op);
    // One of a single piece may be a part of it: the bench asks of how many, nobody answered, and its clock runs on.
    let is_asked = || job.pieces == 1 && batch.runs;
    let usual = || planned.filter(|_| !is_asked() && !may_be_more()).map(|planned| pieces(job, planned.kind, &batch));
    Batch { of: batch.of.or_else(usual), ..batch }
}

/// What is left of a batch by its pace; none where nobody knows how many there are, or none is noted yet.
pub fn by_pieces(batch: &Batch) -> Option<Left> {
    let left: Count = batch.left()?;
    if left == 0 {
        return Some(Left::Nothing(Over::Noted));
    }
    let likely = batch.remaining()?.max(Span::minutes(1));
    let [median, off] = [likely, batch.spread.unwrap_or_default()].map(crate::bench::estimate::spread::minutes);
    let safe = if off <= 0.0 { Likely::guessed(median).at(0.9) } else { median + off };
    Some(Left::Goes(Likely::between(median, safe)))
}

/// Operations that count as done by their hours, though none of their pieces is noted as done.
pub fn unnoted(shop: &Shop, job: Id, rows: &[Row]) -> Vec<String> {
    let logged = shop.time(job);
    let is_worked = |op: &str| logged.by_op.get(op).is_some_and(|shares| Span::ZERO < shares.total());
    let of = |row: &&Row| {
        let batch = |op: &str| match row.left {
            Left::Nothing(Over::Ended) => shop.bench.batch(On::Job(job), op, shop.now),
            _ => shop.bench.sure_batch(On::Job(job), op, shop.now),
        };
        let batch = row.op.as_deref().map(batch).unwrap_or_default();
        row.left.likely(row.likely) <= Span::ZERO
            && !matches!(row.left, Left::Nothing(Over::Gone | Over::Waits))
            && 1 < row.n
            && batch.n == 0
            && row.kind == Kind::Make
            && row.op.as_deref().is_some_and(is_worked)
    };
    rows.iter().filter(of).filter_map(|row| row.op.clone()).listed()
}
