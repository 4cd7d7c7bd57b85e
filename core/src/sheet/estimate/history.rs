//! What earlier jobs say: the times of their operations and of whole pieces, and what they took of what was thought.

use crate::bench::estimate::whole::first_of;
use crate::bench::estimate::{Factor, Past};
use crate::bench::{Batch, Kind, On, Run};
use crate::ledger::fold::{Job, jobs};
use crate::quantity::{Count, Decimal, Id, Key, Listed, Moment, Sorted, Span, in_small};
use crate::sheet::Shop;

/// Earlier jobs that count, and those told.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// Own jobs that the maker is done with, and old jobs told.
    pub own: Count,
    pub told: Count,
    /// Actual over thought, those told first, then the oldest first.
    pub ratios: Vec<Decimal>,
    /// What an operation took on one job: its name in small letters, the job's design, and what it took.
    operations: Vec<(String, Option<Id>, Past)>,
    pieces: Vec<Whole>,
    /// Rework, and all time, of the own jobs.
    pub rework: Span,
    pub all: Span,
}

/// What a whole piece took: minutes for the first of those alike.
#[derive(Clone, Debug, PartialEq)]
struct Whole {
    kind: Option<Key>,
    design: Option<Id>,
    minutes: f64,
}

/// The history of every job but this one. Those marked as not typical are left out.
pub fn history(shop: &Shop, but: Id) -> History {
    history_of(shop, |job| job.id != but)
}

/// The history of all jobs, for many estimates at once.
pub fn history_of_all(shop: &Shop) -> History {
    history_of(shop, |_| true)
}

fn history_of(shop: &Shop, counts: impl Fn(&Job) -> bool) -> History {
    let mut history = History::default();
    let by_job = runs_by_job(shop);
    let mut known: Vec<Job> = jobs(shop.book).filter(|job| job.typical && counts(job)).listed();
    known.reverse();
    told(shop, &mut history);
    for job in &known {
        let none = vec![];
        let runs = by_job.get(&job.id).unwrap_or(&none);
        operations(&mut history, job, (runs, shop));
        if job.ended.is_some() {
            ended(&mut history, job, (runs, shop.now));
        }
    }
    history
}

impl History {
    /// What the maker's jobs took of what was thought.
    pub fn factor(&self) -> Factor {
        Factor::of(&self.ratios)
    }

    /// What an operation took on earlier jobs: those of one design, or all.
    pub fn of_operation(&self, op: &str, design: Option<Id>) -> Vec<Past> {
        let name = in_small(op.trim());
        let meant = |of: &&(String, Option<Id>, Past)| of.0 == name && (design.is_none() || of.1 == design);
        self.operations.iter().filter(meant).map(|(.., past)| past.clone()).listed()
    }

    /// What the first of some alike took as a whole: jobs of the design, else of the kind of piece, else those of no kind that was said.
    pub fn of_piece(&self, piece: Option<&Key>, design: Option<Id>) -> Vec<f64> {
        let of = |meant: &dyn Fn(&Whole) -> bool| {
            let meant = self.pieces.iter().filter(|whole| meant(whole));
            meant.map(|whole| whole.minutes).listed()
        };
        let by_design: Vec<f64> = of(&|whole| design.is_some() && whole.design == design);
        let by_kind: Vec<f64> = of(&|whole| piece.is_some() && whole.kind.as_ref() == piece);
        match () {
            () if !by_design.is_empty() => by_design,
            () if !by_kind.is_empty() => by_kind,
            () => of(&|whole| whole.kind.is_none()),
        }
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

fn told(shop: &Shop, history: &mut History) {
    for old in &shop.workshop.old_jobs {
        history.told = history.told.saturating_add(1);
        history.ratios.extend(old.ratio());
        let minutes = first_of(old.pieces, old.span);
        history.pieces.push(Whole { kind: old.piece.clone(), design: None, minutes });
    }
}

/// The operations of a job that are done: the job has ended, or nothing of it is left, or all their pieces are noted.
fn operations(history: &mut History, job: &Job, (runs, shop): (&[&Run], &Shop)) {
    let mut names: Vec<&str> = vec![];
    for run in runs {
        if !names.contains(&run.work.op.as_str()) {
            names.push(&run.work.op);
        }
    }
    for op in names {
        let own: Vec<&Run> = runs.iter().filter(|run| run.work.op == op).copied().listed();
        let kind = own.first().map_or(Kind::Make, |run| run.work.kind);
        let batch = shop.bench.batch(On::Job(job.id), op, shop.now);
        let done = job.ended.is_some() || job.left() == 0 || batch.is_done();
        let past = Past::of(&own, pieces(job, (op, kind), &batch)).filter(|_| done);
        history.operations.extend(past.map(|past| (in_small(op.trim()), job.design, past)));
    }
}

/// For how many pieces an operation is: as it was planned, else what is made as often as the job has pieces, all else once.
pub fn pieces(job: &Job, (op, kind): (&str, Kind), batch: &Batch) -> Count {
    let planned = job.operations.iter().find(|planned| planned.op == op).and_then(|planned| planned.pieces);
    planned.or(batch.of).unwrap_or(if kind == Kind::Make { job.pieces } else { 1 })
}

fn ended(history: &mut History, job: &Job, (runs, now): (&[&Run], Moment)) {
    let logged = Span::sum(runs.iter().map(|run| run.worked(now)));
    if logged <= Span::ZERO {
        return;
    }
    let rework = runs.iter().filter(|run| run.work.rework).map(|run| run.worked(now));
    history.own = history.own.saturating_add(1);
    (history.rework, history.all) = (history.rework.plus(Span::sum(rework)), history.all.plus(logged));
    let (kind, design, minutes) = (job.described.piece.clone(), job.design, first_of(job.pieces, logged));
    history.pieces.push(Whole { kind, design, minutes });
    let ratio = job.thought().and_then(|thought| Decimal::from(logged.as_ms()).checked_div(Decimal::from(thought.as_ms())));
    history.ratios.extend(ratio);
}
