//! What each job teaches, gathered once of all of them: who asks, and what was known by then, says what of it counts.

use super::{Done, History, OldPiece, Waited, pieces, ratio};
use crate::bench::estimate::Past;
use crate::bench::wait::{Wait, What};
use crate::bench::{Kind, On, Run};
use crate::ledger::fold::Job;
use crate::quantity::{Count, Decimal, Id, Listed, Moment, Set, Sorted, Span, in_small, order_by_key};
use crate::sheet::Shop;
use crate::sheet::estimate::as_judged;
use crate::sheet::estimate::coats::{Coats, each, without_number};
use std::rc::Rc;

/// What one job teaches.
#[derive(Debug)]
pub(super) struct Taught {
    pub of: Id,
    operations: Vec<Operation>,
    whole: Option<Whole>,
}

/// What one of its operations took, which nobody was at after a moment.
#[derive(Debug)]
struct Operation {
    /// In small letters; of a coat without its number, too.
    name: String,
    coat: Option<String>,
    done: Rc<Done>,
    last: Moment,
}

/// What all of it took, known from its end on.
#[derive(Debug)]
struct Whole {
    ended: Moment,
    logged: Span,
    rework: Span,
    piece: OldPiece,
    ratio: Option<Decimal>,
}

/// What jobs teach, the newest of which comes first; the oldest is the first to. Those marked as not typical are left out.
pub(super) fn taught(shop: &Shop, jobs: &[Job]) -> Vec<Taught> {
    let by_job = runs_by_job(shop);
    let of = |job: &Job| {
        let runs = by_job.get(&job.id).map_or(&[][..], Vec::as_slice);
        let open: Set<Id> = shop.unanswered(runs.iter().copied()).map(|run| run.id).collect();
        let whole = if open.is_empty() { whole(job, (runs, shop)) } else { None };
        Taught { of: job.id, operations: operations(job, (runs, &open, shop)), whole }
    };
    jobs.iter().rev().filter(|job| job.typical).map(of).listed()
}

impl Taught {
    /// Adds what of it was known by a moment.
    pub fn known_by(&self, by: Moment, history: &mut History) {
        for Operation { name, coat, done, .. } in self.operations.iter().filter(|operation| operation.last <= by) {
            coat.iter().for_each(|coat| history.coated(coat, done));
            history.operations.entry(name.clone()).or_default().push(done.clone());
        }
        let Some(whole) = self.whole.as_ref().filter(|whole| whole.ended <= by) else { return };
        history.own = history.own.saturating_add(1);
        (history.rework, history.all) = (history.rework.plus(whole.rework), history.all.plus(whole.logged));
        history.pieces.push(whole.piece.clone());
        history.ratios.extend(whole.ratio);
    }
}

fn runs_by_job<'a>(shop: &'a Shop) -> Sorted<Id, Vec<&'a Run>> {
    let mut by_job: Sorted<Id, Vec<&Run>> = Sorted::new();
    for run in shop.bench.runs() {
        if let On::Job(job) = run.work.on {
            by_job.entry(job).or_default().push(run);
        }
    }
    by_job
}

/// The operations of a job that are done: the job has ended, or nothing of it is left, or all their pieces are noted. What was left open of one
/// says nothing of it.
fn operations(job: &Job, (runs, open, shop): (&[&Run], &Set<Id>, &Shop)) -> Vec<Operation> {
    let mut names: Vec<&str> = vec![];
    for run in runs {
        if !names.contains(&run.work.op.as_str()) {
            names.push(&run.work.op);
        }
    }
    let (is_over, named) = (job.ended.is_some() || job.left() == 0, job.kind_by_name());
    let of = |op: &str| {
        let own: Vec<&Run> = runs.iter().filter(|run| run.work.op == op).copied().listed();
        let kind = own.first().map_or(Kind::Make, |run| run.work.kind);
        let batch = shop.bench.batch_of(own.iter().copied(), (job.id, op), shop.now);
        let is_settled = own.iter().all(|run| run.work.rework || !open.contains(&run.id));
        let past = Past::of(&own, pieces(job, kind, &batch)).filter(|_| (is_over || batch.is_done()) && is_settled)?;
        let last = own.iter().map(|run| run.end(shop.now)).max()?;
        let helped = own.iter().any(|run| !run.work.rework && run.is_helped(shop.now));
        let is_coated = shop.bench.is_coated(On::Job(job.id), op);
        let name = in_small(op.trim());
        let coat = is_coated.then(|| without_number(op).unwrap_or_else(|| name.clone()));
        let (past, coats) = if is_coated { coated(shop, job, (op, past)) } else { (past, 1) };
        let (piece, named, took) = (job.described.piece.clone(), named.clone(), past.time);
        let (of, job, design) = (job.id, job.name.clone(), job.design);
        let done = Done { of, job, design, piece, named, took, past, coats, says: coats, helped };
        Some(Operation { name, coat, done: Rc::new(done), last })
    };
    names.into_iter().filter_map(of).listed()
}

/// What a coat took, and in how many coats: it is on as many pieces as was said of it before the maker was done with it, and what was noted beyond
/// them is a further one.
fn coated(shop: &Shop, job: &Job, (op, past): (&str, Past)) -> (Past, Count) {
    let coats = Coats::of(shop, job, (op, past.n)).map_or(1, |coats| coats.n);
    (past.of_at_most(each(&shop.bench, job, op)), coats)
}

fn whole(job: &Job, (runs, shop): (&[&Run], &Shop)) -> Option<Whole> {
    let (now, ended) = (shop.now, job.ended.as_ref()?.wall.at);
    let logged = Span::sum(runs.iter().map(|run| run.worked(now)));
    if logged <= Span::ZERO {
        return None;
    }
    let rework = Span::sum(runs.iter().filter(|run| run.work.rework).map(|run| run.worked(now)));
    let labour = Span::sum(runs.iter().map(|run| run.labour(now)));
    let old = OldPiece::new((&job.name, job.pieces, labour), (job.kind_of_piece(), job.design, None));
    let mut operations: Sorted<String, Span> = Sorted::new();
    for run in runs {
        let took = operations.entry(in_small(run.work.op.trim())).or_insert(Span::ZERO);
        *took = took.plus(run.labour(now));
    }
    let piece = OldPiece { helped: logged < labour, waited: waited(shop, job.id), operations, ..old };
    let job = &*as_judged(shop, job);
    let of_planned = runs.iter().filter(|run| job.operations.iter().any(|planned| planned.op == run.work.op));
    let ratio = ratio(job, logged, Span::sum(of_planned.map(|run| run.worked(now))));
    Some(Whole { ended, logged, rework, piece, ratio })
}

fn waited(shop: &Shop, job: Id) -> Option<Waited> {
    let mut of_it = shop.waits().all().filter(|wait| wait.job == Some(job) && wait.what() != What::Cure).listed();
    order_by_key(&mut of_it, |wait| wait.began.at);
    let off = |wait: &Wait| wait.ended.map_or(wait.off(), |ended| ended.at.at.min(wait.off()));
    let last = *of_it.iter().rev().find(|wait| wait.what() == What::Coat).or(of_it.last())?;
    let (what, last) = (last.what.clone(), last.began.at.until(off(last)).max(Span::ZERO));
    let (mut span, mut until) = (Span::ZERO, Moment::at(i64::MIN));
    for wait in of_it {
        let off = off(wait);
        span = span.plus(until.max(wait.began.at).until(off).max(Span::ZERO));
        until = until.max(off);
    }
    (Span::ZERO < span).then_some(Waited { what, span, last })
}
