//! What a job will likely take: each operation with where its figure is from, all of them likely and safe, and how far the job has come.

mod alike;
mod beyond;
pub mod coats;
pub mod counted;
pub mod history;
pub mod left;
pub mod parts;
pub mod steps;

use crate::bench::estimate::spread::Begun;
use crate::bench::estimate::{
    Basis, Estimate, Left, Likely, OnTop, Part, Range, estimate as reckon, factor, left as left_of_all, spread, topped,
};
use crate::bench::{Kind, On, Run, Stage};
use crate::ledger::fold::{Job, Kept, planned_before};
use crate::ledger::kind::Exact;
use crate::ledger::kind::estimate::EstimateMade;
use crate::ledger::{Entry, Fact, Subject};
use crate::quantity::{Count, Id, Key, Listed, Moment, Span};
use crate::refusal::Answer;
use crate::sheet::Shop;
use counted::Counted;
use history::History;
use left::{lefts, unnoted};
use parts::{Whole, parts, whole_piece};
use std::borrow::Cow;
use std::rc::Rc;

/// The estimate of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct EstimateSheet {
    pub job: Id,
    /// The operations as planned, and the rest of the piece where they are not all of it; where none is planned, the whole piece.
    pub rows: Vec<Row>,
    /// Counted pieces that are left of operations nobody planned, where they are no part of the whole piece or its rest.
    pub counted: Vec<Counted>,
    /// What they come to; none while neither operations nor the kind of piece nor old jobs say anything.
    pub found: Option<Estimate>,
    /// What half of the sums that were drawn for it did not pass.
    pub half: Option<Span>,
    /// What is likely in all the other way, without the factor or with it, by the same rule; none while nothing is known.
    pub other_way: Option<OtherWay>,
    /// What is still to come; none while nothing is known, and once the job has ended.
    pub to_come: Option<Range>,
    /// What the piece takes as a whole, by earlier ones or by its kind.
    pub whole: Option<Whole>,
    pub covers: Covers,
    /// The maker said that its operations are all there is to do.
    pub said_whole: bool,
    pub history: Rc<History>,
    /// The kind of piece, and the design it is made by.
    pub piece: Option<Key>,
    /// The kind its name tells, while none is said.
    pub named: Option<Key>,
    pub design: Option<Id>,
    /// The estimate that was given last.
    pub kept: Option<Kept>,
    pub progress: Progress,
    /// What it was estimated by when its work began, where that is what stands as estimated.
    pub then: Option<Box<EstimateSheet>>,
}

/// The same job with the factor switched the other way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OtherWay {
    pub on_top: OnTop,
    /// Likely in all.
    pub likely: Span,
}

/// What an estimate holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Covers {
    /// All of the job: as a whole piece, as its operations and what such a piece takes beyond them, or because the maker said that they are all.
    #[default]
    All,
    /// The operations that are planned, and nothing else: nobody knows what the whole takes.
    Planned,
}

/// One operation, the whole piece, or the rest of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// None for the whole piece, and for what is not planned of it.
    pub op: Option<String>,
    pub kind: Kind,
    /// Where its kind of piece shares out the hours of the whole.
    pub stage: Stage,
    pub n: Count,
    /// In so many coats, where earlier jobs had several by one operation.
    pub coats: Option<Count>,
    pub likely: Span,
    /// The same, with how far it may be off.
    pub time: Likely,
    pub from: Basis,
    /// Jobs it is learnt from.
    pub jobs: Count,
    pub thought: Option<Span>,
    /// What it was before factor or allowance.
    pub before: Span,
    /// Of the whole piece, what is not planned yet.
    pub is_rest: bool,
    pub left: Left,
    /// What is still to do of it, in whole minutes: those of all rows add up to what all of them have left.
    pub to_come: Span,
}

impl Row {
    /// A drive of which only the plan speaks: once nothing else is to come as much of it is as was planned, for what the bench took longer than
    /// was thought makes no road longer (ours; domain.md 12 B has 90 min of it to come). Until then it counts as all that was thought does, for
    /// the factor is of whole jobs (domain.md 12 B: 1,140 x 1.339): so what is to come of a job that was not begun is what it takes in all.
    pub fn is_as_planned(&self) -> bool {
        self.kind == Kind::Deliver && self.from == Basis::Thought
    }

    /// What it takes, and as much of that as has gone by; none where nothing is left.
    pub fn begun(&self) -> Option<Begun> {
        let after = |time: Likely, gone: Span| Begun { time, gone: spread::minutes(gone) };
        match self.left {
            Left::Nothing(_) => None,
            Left::Less(gone) => Some(after(self.time, gone)),
            Left::Goes(time) | Left::Longer { rest: time, .. } => Some(after(time, Span::ZERO)),
            Left::AsPlanned { thought, gone } => Some(after(Likely::guessed(spread::minutes(thought)), gone)),
        }
    }

    /// What is still to do of it, likely.
    pub fn to_come(&self) -> Span {
        self.to_come
    }
}

/// How far a job has come of what it was to take.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// What was thought of all of it.
    pub thought: Option<Span>,
    /// What it was estimated to take: as the estimate was given, else by what was known when its work began, whatever was worked or told since;
    /// once it has ended, as it was given alone.
    pub estimated: Option<Span>,
    /// What it takes in all nine times in ten, by what is logged and what is to come; none where the figures are of the plan alone,
    /// and once it has ended.
    pub safe: Option<Span>,
    /// Logged to it. While it goes on, what may be a forgotten stop is no part of it, as it is off nothing that is left: see [`logged`].
    pub so_far: Span,
    /// Of that, what was planned and what was not; none where the figures above are of the whole, or nothing else was worked on.
    pub beside: Option<Beside>,
    /// Still to come, likely: what the rows come to. None once it has ended, or where nothing is known.
    pub to_come: Option<Span>,
    /// What it will have taken in the end: what is logged and what is still to come. None before anything is logged, once it has ended, and
    /// where nothing is known to come of pieces that nobody noted as done.
    pub ends: Option<Span>,
}

/// Work beside the plan: what was thought of some operations says nothing of others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Beside {
    /// So many operations are planned.
    pub planned: Count,
    pub on_them: Span,
    pub on_others: Span,
}

impl Progress {
    /// What all of it takes with so much left, of so much that was estimated: see [`EstimateSheet::in_all`].
    fn in_all(&self, estimated: Span, left: Span) -> Span {
        let (with, is_known) = (self.so_far.plus(left), self.ends.is_some() || self.so_far <= Span::ZERO);
        if is_known { with } else { estimated.max(with) }
    }

    /// What stands beside the figures of the plan: all that was logged, else what was logged on its operations.
    pub fn on_plan(&self) -> Span {
        self.beside.map_or(self.so_far, |beside| beside.on_them)
    }
}

/// Same draws for the same parts.
const SEED: u64 = 1;

/// The estimate of a job; with the factor on what was thought, or without it and then with an allowance for rework. Without it as well
/// where the maker said so of this job.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`].
pub fn estimate(shop: &Shop, id: Id, with_factor: bool) -> Answer<EstimateSheet> {
    let job = shop.job(id)?;
    Ok(estimate_of(shop, &job, with_factor))
}

fn estimate_of(shop: &Shop, job: &Job, with_factor: bool) -> EstimateSheet {
    let history = shop.history_but(job);
    let with_factor = with_factor && !job.without_factor;
    let Known { parts, rows, on_top, whole } = known_of(shop, job, &history, with_factor);
    let (found, half) = added_up(reckon(&parts, on_top, SEED), &rows);
    let covers = covers(job, &rows);
    let counted = counted::beside(shop, job, &rows);
    let (progress, then) = progress(shop, job, (&rows, &counted), with_factor);
    let then = then.map(|then| Box::new(then.sheet()));
    // How far it may be off is drawn.
    let to_come = progress.to_come.map(|likely| {
        let beside = counted.iter().map(Counted::part);
        let begun: Vec<(Part, Left)> = parts.iter().copied().zip(rows.iter().map(|row| row.left)).chain(beside).listed();
        around(left_of_all(&begun, on_top, SEED), likely)
    });
    let (kept, range) = (job.kept, found.as_ref().map(|found| found.range));
    let other_way = range.map(|_| other_way(shop, (job, &history), (!with_factor, progress)));
    let (piece, named) = (job.described.piece.clone(), job.kind_by_name());
    let (design, said_whole) = (job.design, job.whole_planned);
    let sheet = EstimateSheet {
        job: job.id,
        rows,
        counted,
        found,
        half,
        other_way,
        to_come,
        whole,
        covers,
        said_whole,
        history,
        piece,
        named,
        design,
        kept,
        progress,
        then,
    };
    let safe = sheet.in_all().map(|all| all.safe).filter(|_| progress.beside.is_none() && job.ended.is_none());
    EstimateSheet { progress: Progress { safe, ..progress }, ..sheet }
}

/// What a job was to take before anything of it was worked.
struct Then {
    job: Job,
    history: Rc<History>,
    known: Known,
}

impl Then {
    fn likely(&self) -> Span {
        Span::sum(self.known.rows.iter().map(|row| row.likely))
    }

    /// As a sheet of its own, whose steps can be worked back: nothing of it is drawn, and nothing of it is to come.
    fn sheet(self) -> EstimateSheet {
        let likely = self.likely();
        let Then { job, history, known: Known { parts, rows, on_top, whole } } = self;
        let thought = rows.iter().filter(|row| row.from == Basis::Thought).map(|row| row.before).listed();
        let thought = (!thought.is_empty()).then(|| Span::sum(thought));
        let range = Range { low: likely, likely, safe: likely };
        EstimateSheet {
            job: job.id,
            found: Some(Estimate { each: crate::bench::estimate::each(&parts, on_top), range, thought, on_top, shares: vec![] }),
            covers: covers(&job, &rows),
            rows,
            counted: vec![],
            half: None,
            other_way: None,
            to_come: None,
            whole,
            said_whole: job.whole_planned,
            history,
            named: job.kind_by_name(),
            piece: job.described.piece,
            design: job.design,
            kept: None,
            progress: Progress::default(),
            then: None,
        }
    }
}

/// By what was known and planned when its work began; none of a job of which nothing was worked, that has ended, or of which an estimate was kept.
fn then_of(shop: &Shop, job: &Job, with_factor: bool) -> Option<Then> {
    let began = shop.bench.on(On::Job(job.id)).next().map(|run| run.started.at).filter(|_| job.ended.is_none() && job.kept.is_none())?;
    let history = shop.history_known_by(job.id, began);
    // Where nothing was known then, the plan that came first is what there is.
    [as_planned(shop, job), job.clone()].into_iter().find_map(|of| {
        let known = known_of(shop, &of, &history, with_factor);
        (!known.rows.is_empty()).then(|| Then { job: of, history: history.clone(), known })
    })
}

/// The same as it stands as estimated: what was estimated of other operations than those that are planned now is not held against those.
fn before_work(shop: &Shop, job: &Job, (with_factor, beside): (bool, Option<Beside>)) -> Option<Then> {
    then_of(shop, job, with_factor).filter(|_| beside.is_none() || is_planned_as_then(shop, job))
}

/// Whether its operations are those that were planned when its work began, or none was.
pub(super) fn is_planned_as_then(shop: &Shop, job: &Job) -> bool {
    let then = as_planned(shop, job);
    then.operations.is_empty() || names_of_plan(&then) == names_of_plan(job)
}

/// A job with the plan it is judged by: while it goes on the one it has; once it has ended the one when its work began, as far as that says how long
/// it was to take, so that what was planned since, with the hours known, flatters nobody.
pub(super) fn as_judged<'j>(shop: &Shop, job: &'j Job) -> Cow<'j, Job> {
    let then = || Some(as_planned(shop, job)).filter(|then| then.estimate().is_some_and(|thought| Span::ZERO < thought));
    job.ended.as_ref().and_then(|_| then()).map_or(Cow::Borrowed(job), Cow::Owned)
}

/// The plan of a job when its work began, and when that was; none where it said of no operation then how long it was to take.
pub(super) fn planned_then(shop: &Shop, job: &Job) -> Option<(Job, Moment)> {
    let then = as_planned(shop, job);
    let is_thought = then.estimate().is_some_and(|thought| Span::ZERO < thought);
    is_thought.then_some(then).zip(began(shop, job))
}

/// When the first work on a job began.
pub(super) fn began(shop: &Shop, job: &Job) -> Option<Moment> {
    shop.bench.on(On::Job(job.id)).map(|run| run.started.at).min()
}

/// A job with the operations that were planned when its first run was written, or came to it from elsewhere.
fn as_planned(shop: &Shop, job: &Job) -> Job {
    let of_it = |entry: &Entry| (entry.stamp, entry.id);
    let moved = |entry: &Entry| if let Fact::RunMoved(f) = &entry.fact { Some((f.run, of_it(entry))) } else { None };
    let moves = shop.book.about(Subject::Job(job.id)).filter_map(moved).listed();
    let came = |run: &Run| moves.iter().rev().find(|(of, _)| *of == run.id).map(|(_, at)| *at);
    let written = |run: &Run| shop.book.entry(run.id).map(|(entry, _)| of_it(entry)).max(came(run));
    let first = shop.bench.on(On::Job(job.id)).filter_map(written).min();
    first.map_or_else(|| job.clone(), |(_, run)| Job { operations: planned_before(shop.book, job.id, run), ..job.clone() })
}

fn other_way(shop: &Shop, (job, history): (&Job, &History), (with_factor, progress): (bool, Progress)) -> OtherWay {
    let Known { rows, on_top, .. } = known_of(shop, job, history, with_factor);
    let all = Span::sum(rows.iter().map(|row| row.likely));
    let left = progress.to_come.map(|_| all_to_come(&rows, &counted::beside(shop, job, &rows)));
    OtherWay { on_top, likely: left.map_or(all, |left| progress.in_all(all, left)) }
}

/// What is likely of all is what its rows add up to: one figure, and each step of it can be worked back. Beside it half of what was drawn, which
/// is a little more, for what runs long runs further over than what is quick stays under.
fn added_up(found: Option<Estimate>, rows: &[Row]) -> (Option<Estimate>, Option<Span>) {
    let half = found.as_ref().map(|found| found.range.likely);
    let likely = Span::sum(rows.iter().map(|row| row.likely));
    (found.map(|found| Estimate { range: around(found.range, likely), ..found }), half)
}

/// The ends that were drawn, around what is likely.
fn around(Range { low, safe, .. }: Range, likely: Span) -> Range {
    Range { low: low.min(likely), likely, safe: safe.max(likely) }
}

/// How far a job has come by its rows, without how far all of it may run over. One figure of what is to come on every page of the job and in
/// every price: what the rows come to.
fn progress(shop: &Shop, job: &Job, (rows, counted): (&[Row], &[Counted]), with_factor: bool) -> (Progress, Option<Then>) {
    let so_far = logged(shop, job);
    let goes_on = job.ended.is_none() && !rows.is_empty();
    let left = goes_on.then(|| all_to_come(rows, counted));
    let nothing_known = |left: Span| left <= Span::ZERO && !unnoted(shop, job.id, rows).is_empty();
    let beside = beside(shop, job, so_far).filter(|_| is_of_plan(job, || only_operations(rows)));
    let (then, is_begun) = (before_work(shop, job, (with_factor, beside)), shop.bench.on(On::Job(job.id)).next().is_some());
    // Before any work what is likely now.
    let now = || (!is_begun && goes_on).then(|| Span::sum(rows.iter().map(|row| row.likely)));
    let before = || then.as_ref().map(Then::likely).or_else(now);
    let progress = Progress {
        thought: thought(job, rows),
        // Of a job that has ended nothing is forecast: what later jobs teach was no estimate of it.
        estimated: job.kept.map(|kept| kept.likely).or_else(before),
        safe: None,
        so_far,
        beside,
        to_come: left,
        ends: left.filter(|left| Span::ZERO < so_far && !nothing_known(*left)).map(|left| so_far.plus(left)),
    };
    (progress, then)
}

/// How far a job has come, for the bench: as its own page has it, and what its estimate is from; nothing where an estimate was kept. Nothing is
/// drawn for it.
pub fn progress_of(shop: &Shop, job: &Job, with_factor: bool) -> (Progress, Vec<Basis>) {
    let with_factor = with_factor && !job.without_factor;
    let rows = rows_of(shop, (job, &shop.history_but(job)), with_factor);
    let (progress, then) = progress(shop, job, (&rows, &counted::beside(shop, job, &rows)), with_factor);
    // What is said to be estimated is from what it was estimated by then, whatever was told since.
    let by = then.map_or(rows, |then| then.known.rows);
    let mut from: Vec<Basis> = vec![];
    for row in by.iter().filter(|_| job.kept.is_none()) {
        if !from.contains(&row.from) {
            from.push(row.from);
        }
    }
    (progress, from)
}

/// Whether the figures are of the planned operations alone: of an estimate that was given for a piece of which none was planned they are not.
fn is_of_plan(job: &Job, only_operations: impl FnOnce() -> bool) -> bool {
    match job.kept {
        Some(_) if job.kept_for.is_empty() => false,
        Some(kept) if kept.thought.is_some() => true,
        _ => job.whole_planned || only_operations(),
    }
}

fn only_operations(rows: &[Row]) -> bool {
    !rows.is_empty() && rows.iter().all(|row| row.op.is_some())
}

/// The operations that the figures are for: as they were planned when the estimate was given, else as they are.
fn names_of_plan(job: &Job) -> Vec<&str> {
    match job.kept {
        Some(_) => job.kept_for.iter().map(String::as_str).listed(),
        None => job.operations.iter().map(|planned| planned.op.as_str()).listed(),
    }
}

/// What is logged to a job. What may be a forgotten stop would count twice in a forecast, as it takes nothing off what is left; of a job that
/// has ended it is what it took.
fn logged(shop: &Shop, job: &Job) -> Span {
    match job.ended {
        Some(_) => shop.time(job.id).own.total(),
        None => shop.bench.sure_of_job(job.id, shop.now).own.total(),
    }
}

/// What was logged on operations that are planned, and on others; none without both a plan and others. Rework stands beside the plan: nobody
/// plans it, and factor and allowance are there for it.
fn beside(shop: &Shop, job: &Job, logged: Span) -> Option<Beside> {
    let planned = names_of_plan(job);
    let is_planned = |op: &str| planned.contains(&op);
    let others = shop.bench.on(On::Job(job.id)).filter(|run| !run.work.rework && !is_planned(&run.work.op));
    let on_others = Span::sum(shop.of_job(job, others).map(|run| run.worked(shop.now)));
    let planned = Count::try_from(planned.len()).unwrap_or(Count::MAX);
    (0 < planned && Span::ZERO < on_others).then(|| Beside { planned, on_them: logged.minus(on_others), on_others })
}

/// The operations of a job with what each likely takes by a history: without drawing how far all of them may spread.
pub fn rows_of(shop: &Shop, (job, history): (&Job, &History), with_factor: bool) -> Vec<Row> {
    known_of(shop, job, history, with_factor && !job.without_factor).rows
}

/// What is known of a job's operations, and what is put on top.
struct Known {
    parts: Vec<Part>,
    rows: Vec<Row>,
    on_top: OnTop,
    whole: Option<Whole>,
}

fn known_of(shop: &Shop, job: &Job, history: &History, with_factor: bool) -> Known {
    let whole = whole_piece(job, history);
    let (mut parts, mut rows): (Vec<Part>, Vec<Row>) = parts(shop, job, (history, whole.as_ref())).into_iter().unzip();
    // The switch alone decides, never what is thought: else one more operation took the allowance off all others.
    let on_top = match with_factor {
        true => OnTop::Factor(history.factor()),
        false => OnTop::Allowance(factor::allowance(history.rework, history.all)),
    };
    let rest = whole.as_ref().and_then(|whole| parts::rest(job, whole, (&parts, on_top)));
    if let Some((part, row)) = rest {
        parts.push(part);
        rows.push(row);
    }
    rows.iter_mut().zip(&parts).for_each(|(row, part)| row.time = topped(part, on_top));
    let likely = spread::in_minutes(&rows.iter().map(|row| row.time.median).listed());
    rows.iter_mut().zip(likely).for_each(|(row, likely)| row.likely = likely);
    let lefts = lefts(shop, job, &rows);
    rows.iter_mut().zip(lefts).for_each(|(row, left)| row.left = left);
    let to_come = spread::in_minutes(&rows.iter().map(|row| spread::minutes(row.left.likely(row.likely))).listed());
    rows.iter_mut().zip(to_come).for_each(|(row, to_come)| row.to_come = to_come);
    Known { parts, rows, on_top, whole }
}

/// Operations are all of a job where the maker said so, where the rest of it is there, or where together they take as much as the whole does.
fn covers(job: &Job, rows: &[Row]) -> Covers {
    let any = |of: &dyn Fn(&Row) -> bool| rows.iter().any(of);
    match rows.is_empty() || job.whole_planned || any(&|row| row.op.is_none()) {
        true => Covers::All,
        false => Covers::Planned,
    }
}

/// What the maker thought of all of it: as it was given, else all operations, where they are all there is.
fn thought(job: &Job, rows: &[Row]) -> Option<Span> {
    let all = !rows.iter().any(|row| row.is_rest);
    job.kept.and_then(|kept| kept.thought).or_else(|| job.estimate().filter(|_| all && job.kept.is_none()))
}

impl EstimateSheet {
    /// The estimate as a fact, as it is given now; none where there is nothing to give.
    pub fn given(&self) -> Option<EstimateMade> {
        let found = self.found.as_ref()?;
        let [low, likely, high] = [found.range.low, found.range.likely, found.range.safe].map(|span| span.max(Span::minutes(1)));
        let (factor, jobs, allowance) = match found.on_top {
            // Where nothing was thought it put nothing right.
            OnTop::Factor(_) if found.thought.is_none() => (None, None, None),
            OnTop::Factor(factor) => (Some(Exact(factor.shown())), Count::try_from(factor.jobs).ok(), None),
            OnTop::Allowance(share) => (None, None, Some(Exact(share.normalize()))),
        };
        // A part that was thought says nothing of the whole: a later look back would hold all hours against it.
        let all = self.rows.iter().all(|row| row.from == Basis::Thought);
        let thought = found.thought.filter(|thought| all && Span::ZERO < *thought);
        Some(EstimateMade { job: self.job, low, likely, high, thought, factor, jobs, allowance })
    }

    /// What all of it takes: what is logged and what is still to come together, so what was logged once nothing is to come. Where nothing is
    /// known to come of pieces that nobody noted as done, what was estimated stands, but for what is logged beyond it.
    pub fn in_all(&self) -> Option<Range> {
        let range = self.found.as_ref()?.range;
        let Some(left) = self.to_come else { return Some(range) };
        if let Some(took) = self.took() {
            return Some(Range { low: took, likely: took, safe: took });
        }
        let likely = self.progress.in_all(range.likely, left.likely);
        Some(Range { low: range.low.min(likely), likely, safe: self.progress.in_all(range.safe, left.safe) })
    }

    /// What all of it took, once nothing of it is to come.
    pub fn took(&self) -> Option<Span> {
        self.progress.ends.filter(|_| self.to_come.is_some_and(|left| left.safe <= Span::ZERO))
    }

    /// The kind of piece that figures of it go by, where nothing but its name tells it: a guess.
    pub fn by_name(&self) -> Option<&Key> {
        let is_named = self.whole.as_ref().is_some_and(|whole| whole.by == history::By::Named);
        let goes_by = |row: &Row| row.from == Basis::Kind || (is_named && row.from == Basis::Pieces);
        self.named.as_ref().filter(|_| self.rows.iter().any(goes_by))
    }

    /// Whether what is to come is a guess by jobs of no known kind: nothing tells that they are alike (ours).
    pub fn is_guessed(&self) -> bool {
        let by_any = self.whole.as_ref().is_some_and(|whole| whole.by == history::By::NoKind);
        by_any && self.rows.iter().any(|row| row.from == Basis::Pieces && Span::ZERO < row.to_come)
    }

    /// What is still to come of the operations, of the whole piece and of its rest together, row by row, and of what was counted beside them.
    pub fn hands(&self) -> Span {
        all_to_come(&self.rows, &self.counted)
    }

    /// Operations that count as done by their hours, though none of their pieces is noted as done.
    pub fn unnoted(&self, shop: &Shop) -> Vec<String> {
        unnoted(shop, self.job, &self.rows)
    }
}

fn all_to_come(rows: &[Row], counted: &[Counted]) -> Span {
    Span::sum(rows.iter().map(Row::to_come).chain(counted.iter().map(Counted::to_come)))
}

#[cfg(test)]
mod tests;
