//! What is known of each part of a job: operations by history, by what was thought or by their share of the whole; the whole; its rest.

use super::Row;
use super::beyond::beyond;
use super::coats::each;
use super::history::{By, History, Of, OldPiece, pieces};
use crate::bench::estimate::gain::of_pieces;
use crate::bench::estimate::spread::{Likely, minutes, of_past};
use crate::bench::estimate::{Basis, Left, OnTop, Part, learn, whole};
use crate::bench::{Kind, On, Stage};
use crate::ledger::fold::{Job, Operation};
use crate::quantity::{Count, Decimal, Listed, Span};
use crate::sheet::Shop;

/// What a piece takes as a whole, and how that comes about.
#[derive(Clone, Debug, PartialEq)]
pub struct Whole {
    pub part: Part,
    /// Earlier pieces; none where the kind of piece has a default.
    pub past: Vec<OldPiece>,
    pub by: By,
    /// The first of them: the middle of the earlier ones, or the default.
    pub first: Span,
    pub n: Count,
    /// What so many alike take of the first.
    pub times: Decimal,
    pub likely: Span,
    pub safe: Span,
}

impl Whole {
    /// Whether it is about such a piece: of its design, of its kind, or of a name alike. Any others say too little to fill up a plan by.
    pub fn is_of_kind(&self) -> bool {
        matches!(self.by, By::Design | By::Kind | By::Named | By::Alike | By::Usual)
    }
}

/// What is planned is most of it: a rest smaller than that is none. Ours.
const REST_LEAST: f64 = 0.05;

/// All pieces of the job as a whole: by earlier pieces, else by the default of the kind it is said to be. What its name tells is a guess, and a
/// default by that would be a guess upon a guess (ours).
pub fn whole_piece(job: &Job, history: &History) -> Option<Whole> {
    let (kind, n) = (job.described.piece.as_ref(), job.pieces.max(1));
    let times = of_pieces(n);
    let (by, past) = history.of_piece(job);
    let jobs = Count::try_from(past.len()).unwrap_or(Count::MAX);
    let firsts: Vec<f64> = past.iter().map(|past| past.first_minutes).listed();
    let of_one = of_past(&firsts).map(|one| (Basis::Pieces, by, one)).or_else(|| {
        let one = whole::of_kind(kind?.as_str())?;
        Some((Basis::Piece, By::Usual, Likely::guessed(minutes(one))))
    });
    let (from, by, one) = of_one?;
    let time = one.times(times);
    let safe = whole_minutes(time.at(0.9));
    let shown = Decimal::new((times * 100.0 + 0.5).floor() as i64, 2);
    Some(Whole { part: Part { from, jobs, time }, past, by, first: one.span(), n, times: shown, likely: time.span(), safe })
}

fn whole_minutes(minutes: f64) -> Span {
    crate::bench::estimate::spread::whole(minutes)
}

/// What is known of each operation; of the whole piece where none is planned.
pub fn parts(shop: &Shop, job: &Job, (history, whole): (&History, Option<&Whole>)) -> Vec<(Part, Row)> {
    if job.operations.is_empty() {
        return whole.map(|whole| (whole.part, row(None, (Kind::Make, job.pieces), &whole.part))).into_iter().listed();
    }
    let of = |planned: &Operation| {
        let batch = shop.bench.batch(On::Job(job.id), &planned.op, shop.now);
        let is_coated = shop.bench.is_coated(On::Job(job.id), &planned.op);
        let n = if is_coated { each(&shop.bench, job, &planned.op) } else { pieces(job, planned.kind, &batch) };
        let guessed = || (guessed(job, whole.filter(|whole| whole.is_of_kind()), (planned, n)), None);
        let (part, coats) = known(job, history, (planned, n)).unwrap_or_else(guessed);
        (part, Row { thought: planned.span, stage: planned.stage, coats, ..row(Some(planned.op.clone()), (planned.kind, n), &part) })
    };
    job.operations.iter().map(of).listed()
}

fn row(op: Option<String>, (kind, n): (Kind, Count), part: &Part) -> Row {
    let (from, jobs, before, stage) = (part.from, part.jobs, part.time.span(), Stage::Make);
    let (likely, to_come) = (Span::ZERO, Span::ZERO);
    Row {
        op,
        kind,
        stage,
        n,
        coats: None,
        likely,
        time: part.time,
        from,
        jobs,
        thought: None,
        before,
        is_rest: false,
        left: Left::Less(Span::ZERO),
        to_come,
    }
}

/// What such a piece takes beyond the operations that are planned; none where they are all of it, or where earlier pieces were of another kind.
pub fn rest(job: &Job, whole: &Whole, (parts, on_top): (&[Part], OnTop)) -> Option<(Part, Row)> {
    if job.whole_planned || job.operations.is_empty() || !whole.is_of_kind() {
        return None;
    }
    let (all, rest) = (whole.part.time, beyond(job, whole, (parts, on_top)));
    (REST_LEAST * all.median < rest).then(|| {
        let part = Part { time: Likely { median: rest, ..all }, ..whole.part };
        (part, Row { is_rest: true, ..row(None, (Kind::Make, job.pieces), &part) })
    })
}

/// From earlier jobs of its design, else of its kind of piece, else as it was thought; where nobody thought of it, from any that are not told
/// apart by their kind. What was thought of this very operation is nearer than another kind of piece. Beside it in how many coats, where earlier jobs
/// had several.
pub fn known(job: &Job, history: &History, (planned, n): (&Operation, Count)) -> Option<(Part, Option<Count>)> {
    let learnt = |of: Of, from| {
        let done = history.done(&planned.op, job.id, of);
        let coats = done.last().map(|last| last.says).filter(|coats| 1 < *coats);
        let past = done.into_iter().map(|done| done.past).listed();
        let jobs = Count::try_from(past.len()).unwrap_or(Count::MAX);
        learn::likely(&past, n).map(|time| (Part { from, jobs, time }, coats))
    };
    let thought = || {
        let span = planned.span.filter(|span| Span::ZERO < *span)?;
        Some((Part { from: Basis::Thought, jobs: 0, time: Likely::guessed(minutes(span)) }, None))
    };
    let kind = job.kind_of_piece();
    let by_design = job.design.and_then(|design| learnt(Of::Design(design), Basis::Design));
    let by_kind = || kind.as_ref().and_then(|kind| learnt(Of::Kind(kind), Basis::Kind));
    by_design.or_else(by_kind).or_else(thought).or_else(|| learnt(Of::NotApart(job.described.piece.as_ref()), Basis::Own))
}

/// Its part of the hours of a whole piece of its kind, by stage; where that says nothing, the default of one operation.
fn guessed(job: &Job, whole: Option<&Whole>, (planned, n): (&Operation, Count)) -> Part {
    let alike = job.operations.iter().filter(|other| other.stage == planned.stage).fold(0.0, |n: f64, _| n + 1.0);
    let share = whole::share(planned.stage) / alike.max(1.0);
    match whole.filter(|_| 0.0 < share) {
        Some(whole) => Part { time: whole.part.time.times(share), ..whole.part },
        None => Part { from: Basis::Operation, jobs: 0, time: Likely::by_kind(planned.kind).times(of_pieces(n.max(1))) },
    }
}
