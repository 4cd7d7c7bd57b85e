//! What a job will likely take: each operation with where its figure is from, all of them likely and safe, and how far the job has come.

pub mod history;

use crate::bench::estimate::gain::of_pieces;
use crate::bench::estimate::spread::{Likely, of_past};
use crate::bench::estimate::{Basis, Estimate, OnTop, Part, each, estimate as reckon, factor, learn, whole};
use crate::bench::{Kind, On};
use crate::ledger::fold::{Job, Kept, Operation};
use crate::ledger::kind::Exact;
use crate::ledger::kind::estimate::EstimateMade;
use crate::quantity::{Count, Id, Key, Listed, Span};
use crate::refusal::Answer;
use crate::sheet::Shop;
use history::{History, history, pieces};

/// The estimate of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct EstimateSheet {
    pub job: Id,
    /// The operations as planned; where there are none, the whole piece.
    pub rows: Vec<Row>,
    /// What they come to; none while neither operations nor the kind of piece nor old jobs say anything.
    pub found: Option<Estimate>,
    pub history: History,
    /// The kind of piece.
    pub piece: Option<Key>,
    /// The estimate that was given last.
    pub kept: Option<Kept>,
    pub progress: Progress,
}

/// One operation, or the whole piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// None for the whole piece.
    pub op: Option<String>,
    pub kind: Kind,
    pub n: Count,
    pub likely: Span,
    pub from: Basis,
    /// Jobs it is learnt from.
    pub jobs: Count,
    pub thought: Option<Span>,
}

/// How far a job has come of what it was to take.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    pub thought: Option<Span>,
    pub likely: Option<Span>,
    pub safe: Option<Span>,
    /// Logged to it.
    pub so_far: Span,
    /// What it will have taken in the end: what is logged and what is still to do. None before anything is logged, and once it has ended.
    pub ends: Option<Span>,
}

/// Same draws for the same parts.
const SEED: u64 = 1;

/// The estimate of a job; with the factor on what was thought, or without it and then with an allowance for rework.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`].
pub fn estimate(shop: &Shop, id: Id, with_factor: bool) -> Answer<EstimateSheet> {
    let job = shop.job(id)?;
    let history = history(shop, id);
    let Known { parts, rows, on_top } = known_of(shop, &job, &history, with_factor);
    let found = reckon(&parts, on_top, SEED);
    let likely = found.as_ref().map(|found| (found.range.likely, found.range.safe));
    let progress = Progress { ends: ends(shop, &job, &rows), ..progress_of(shop, &job) };
    let progress = Progress {
        likely: progress.likely.or(likely.map(|(likely, _)| likely)),
        safe: progress.safe.or(likely.map(|(_, safe)| safe)),
        ..progress
    };
    Ok(EstimateSheet { job: id, rows, found, history, piece: job.described.piece.clone(), kept: job.kept, progress })
}

/// How far a job has come, and where it will end: by the estimate that was given, without drawing another.
///
/// # Errors
/// As [`estimate`].
pub fn progress(shop: &Shop, id: Id, with_factor: bool) -> Answer<Progress> {
    let job = shop.job(id)?;
    if job.kept.is_none() {
        return estimate(shop, id, with_factor).map(|sheet| sheet.progress);
    }
    let rows = rows_of(shop, (&job, &history(shop, id)), with_factor);
    Ok(Progress { ends: ends(shop, &job, &rows), ..progress_of(shop, &job) })
}

/// The operations of a job with what each likely takes by a history: without drawing how far all of them may spread.
pub fn rows_of(shop: &Shop, (job, history): (&Job, &History), with_factor: bool) -> Vec<Row> {
    known_of(shop, job, history, with_factor).rows
}

/// What is known of a job's operations, and what is put on top.
struct Known {
    parts: Vec<Part>,
    rows: Vec<Row>,
    on_top: OnTop,
}

fn known_of(shop: &Shop, job: &Job, history: &History, with_factor: bool) -> Known {
    let (parts, rows): (Vec<Part>, Vec<Row>) = parts(shop, job, history).into_iter().unzip();
    // Where nothing is from thinking there is nothing for the factor to put right.
    let thinks = parts.iter().any(|part| part.from == Basis::Thought);
    let on_top = match with_factor && thinks {
        true => OnTop::Factor(history.factor()),
        false => OnTop::Allowance(factor::allowance(history.rework, history.all)),
    };
    let rows = rows.into_iter().zip(each(&parts, on_top)).map(|(row, likely)| Row { likely, ..row }).listed();
    Known { parts, rows, on_top }
}

/// How far a job has come of what was thought and of the estimate that was given, without asking history.
pub fn progress_of(shop: &Shop, job: &Job) -> Progress {
    let so_far = shop.time(job.id).own.total();
    let (likely, safe) = (job.kept.map(|kept| kept.likely), job.kept.map(|kept| kept.high));
    Progress { thought: job.thought(), likely, safe, so_far, ends: None }
}

impl EstimateSheet {
    /// The estimate as a fact, as it is given now; none where there is nothing to give.
    pub fn given(&self) -> Option<EstimateMade> {
        let found = self.found.as_ref()?;
        let [low, likely, high] = [found.range.low, found.range.likely, found.range.safe].map(|span| span.max(Span::minutes(1)));
        let (factor, jobs, allowance) = match found.on_top {
            OnTop::Factor(factor) => (Some(Exact(factor.shown())), Count::try_from(factor.jobs).ok(), None),
            OnTop::Allowance(share) => (None, None, Some(Exact(share.normalize()))),
        };
        // A part that was thought says nothing of the whole: a later look back would hold all hours against it.
        let all = self.rows.iter().all(|row| row.from == Basis::Thought);
        let thought = found.thought.filter(|thought| all && Span::ZERO < *thought);
        Some(EstimateMade { job: self.job, low, likely, high, thought, factor, jobs, allowance })
    }
}

/// What is known of each operation; of the whole piece where none is planned.
fn parts(shop: &Shop, job: &Job, history: &History) -> Vec<(Part, Row)> {
    let whole = whole_piece(job, history);
    let row = |op, (kind, n), part: &Part, thought| Row { op, kind, n, likely: Span::ZERO, from: part.from, jobs: part.jobs, thought };
    if job.operations.is_empty() {
        return whole.map(|part| (part, row(None, (Kind::Make, job.pieces), &part, None))).into_iter().listed();
    }
    let of = |planned: &Operation| {
        let batch = shop.bench.batch(On::Job(job.id), &planned.op, shop.now);
        let n = pieces(job, (&planned.op, planned.kind), &batch);
        let part = known(job, history, (planned, n)).unwrap_or_else(|| guessed(job, whole.as_ref(), (planned, n)));
        (part, row(Some(planned.op.clone()), (planned.kind, n), &part, planned.span))
    };
    job.operations.iter().map(of).listed()
}

/// From earlier jobs of its design, from any earlier job, or as it was thought.
fn known(job: &Job, history: &History, (planned, n): (&Operation, Count)) -> Option<Part> {
    let learnt = |design: Option<Id>, from| {
        let past = history.of_operation(&planned.op, design);
        let jobs = Count::try_from(past.len()).unwrap_or(Count::MAX);
        learn::likely(&past, n).map(|time| Part { from, jobs, time })
    };
    let thought = || {
        let span = planned.span.filter(|span| Span::ZERO < *span)?;
        let minutes = crate::bench::estimate::spread::minutes(span);
        Some(Part { from: Basis::Thought, jobs: 0, time: Likely::guessed(minutes) })
    };
    let by_design = job.design.and_then(|design| learnt(Some(design), Basis::Design));
    by_design.or_else(|| learnt(None, Basis::Own)).or_else(thought)
}

/// Its part of the whole piece's hours, by stage; where that says nothing, the default of one operation.
fn guessed(job: &Job, whole: Option<&Part>, (planned, n): (&Operation, Count)) -> Part {
    let alike = job.operations.iter().filter(|other| other.stage == planned.stage).fold(0.0, |n: f64, _| n + 1.0);
    let share = whole::share(planned.stage) / alike.max(1.0);
    match whole.filter(|_| 0.0 < share) {
        Some(whole) => Part { time: whole.time.times(share), ..*whole },
        None => Part { from: Basis::Operation, jobs: 0, time: Likely::by_kind(planned.kind).times(of_pieces(n.max(1))) },
    }
}

/// All pieces of the job as a whole: by earlier pieces, else by the default of its kind.
fn whole_piece(job: &Job, history: &History) -> Option<Part> {
    let (kind, n) = (job.described.piece.as_ref(), of_pieces(job.pieces.max(1)));
    let past = history.of_piece(kind, job.design);
    let jobs = Count::try_from(past.len()).unwrap_or(Count::MAX);
    let from_past = of_past(&past).map(|time| Part { from: Basis::Pieces, jobs, time: time.times(n) });
    from_past.or_else(|| {
        let one = whole::of_kind(kind?.as_str())?;
        let minutes = crate::bench::estimate::spread::minutes(one);
        Some(Part { from: Basis::Piece, jobs: 0, time: Likely::guessed(minutes * n) })
    })
}

/// What is logged and what is still to do.
fn ends(shop: &Shop, job: &Job, rows: &[Row]) -> Option<Span> {
    let so_far = shop.time(job.id).own.total();
    if job.ended.is_some() || so_far <= Span::ZERO || rows.is_empty() {
        return None;
    }
    let at_hand = shop.bench.on(On::Job(job.id)).next_back().map(|run| run.work.op.as_str());
    Some(so_far.plus(Span::sum(left(shop, (job, rows), at_hand))))
}

/// What is still to do of each row: of a batch with notes by its pace, of what is at hand or was never begun as it is likely, and of
/// what was left for something else as far as it was thought (ours).
pub fn left(shop: &Shop, (job, rows): (&Job, &[Row]), at_hand: Option<&str>) -> Vec<Span> {
    let logged = shop.time(job.id);
    let left = |row: &Row| {
        let Some(op) = row.op.as_deref() else { return row.likely.minus(logged.own.total()) };
        let batch = shop.bench.batch(On::Job(job.id), op, shop.now);
        let took = logged.by_op.get(op).copied().unwrap_or_default().total();
        match (batch.left(), batch.remaining()) {
            (Some(0), _) => Span::ZERO,
            (Some(_), Some(left)) => left,
            _ if took <= Span::ZERO || at_hand == Some(op) => row.likely.minus(took),
            _ => row.thought.unwrap_or_default().minus(took),
        }
    };
    rows.iter().map(|row| left(row).max(Span::ZERO)).listed()
}

#[cfg(test)]
mod tests;
