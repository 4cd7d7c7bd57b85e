//! What is cut of the boards a job has, by what is ticked on this phone; and what putting some of them back would undo.

use super::{Plan, beside, shown_again};
use crate::app::App;
use fivebar_core::ledger::decide::{Command, HaulCommand, Lying, Now, Uncut, decide};
use fivebar_core::ledger::fold::{InUse, KeptPlan, Share, in_use};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::ledger::{Book, Clock};
use fivebar_core::quantity::{Count, Id, Length, Listed, Wall};
use fivebar_core::sheet::make::begun::{self, Loose, not_laid};
use fivebar_core::sheet::make::cut;
use fivebar_core::sheet::make::goes_on::rows_still;
use fivebar_core::sheet::make::{AlreadyCut, Given};
use fivebar_core::sheet::plan::wish::{Panel, Wish};
use fivebar_core::sheet::plan::{PlanSheet, Used};

/// Boards that are to be put back, where that is asked about first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PutBack {
    pub n: Count,
    /// The job has so many of the pile, and so many of these are not cut; none where no more than these go back.
    pub cut: Option<(Count, Count)>,
    /// Plans that would have no board any more: what they make, and when they were used.
    pub lost: Vec<(Shape, Wall)>,
}

/// What is to be asked before boards of a pile go back; none where no cut one does, and each plan keeps some.
pub fn asked_back(app: &App, job: Id, (at, n): (Lying, Count)) -> Option<PutBack> {
    let shelf = app.shelf();
    let plans = shelf.shop(app.now.at).job(job).ok()?.plans;
    let all = in_use(&shelf.book, &plans);
    let then = without(app, job, (at, n))?;
    let left = in_use(&then, &plans).into_iter().map(|it| it.plan.id).listed();
    let lost = all.iter().filter(|it| !left.contains(&it.plan.id)).map(|it| (it.plan.plan.shape, it.plan.at)).listed();
    let here = fivebar_core::ledger::fold::haul(&shelf.book, at.haul)?.pile(at.pile)?.in_job(job);
    let cut = all.iter().map(|it| boards_cut(app, it.plan, at)).fold(0, Count::saturating_add);
    let whole = here.saturating_sub(cut);
    let cut = (whole < n).then_some((here, whole));
    (cut.is_some() || !lost.is_empty()).then_some(PutBack { n, cut, lost })
}

fn without(app: &App, job: Id, (Lying { haul, pile }, n): (Lying, Count)) -> Option<Book> {
    book_after(app, &Command::Haul(HaulCommand::Free { haul, pile, job, n }))
}

/// The book as it would be; none where it would be refused.
pub(super) fn book_after(app: &App, command: &Command) -> Option<Book> {
    let shelf = app.shelf();
    let now = Now { wall: app.now, chance: [0; 10] };
    let act = decide(&shelf.book, command, now).ok()?;
    let mut then = shelf.book.clone();
    let mut clock = Clock::new(shelf.device(), then.last_stamp());
    act.stamped(&shelf.book, &mut clock).iter().for_each(|entry| drop(then.add(entry)));
    Some(then)
}

/// A plan with its ticks, where something of it is cut.
pub(super) fn begun(app: &App, plan: &KeptPlan) -> Option<Plan> {
    if beside::ticks(app, plan).is_empty() { None } else { cut_by(app, plan) }
}

/// A plan of the book with what was ticked of it, and what was cut when it was made, as far as this phone knows.
pub(super) fn cut_by(app: &App, plan: &KeptPlan) -> Option<Plan> {
    let mut shown = bare(app, plan)?;
    lay(app, &mut shown);
    Some(shown)
}

/// The same, what plans before it cut left out.
fn bare(app: &App, plan: &KeptPlan) -> Option<Plan> {
    let (ticked, open, turned, cut) = beside::of_plan(app, plan).map(|it| (it.ticked, it.open, it.turned, it.cut)).unwrap_or_default();
    let mut shown = shown_again(app, plan, (&[], open, turned))?;
    shown.given.iter_mut().zip(cut).for_each(|(given, cut)| given.cut.boards = cut);
    Some(Plan { used: Some(plan.id), ticked, ..shown })
}

/// Ticked rows of a plan take pieces that plans before it cut, before boards are cut for them.
pub(super) fn lay(app: &App, plan: &mut Plan) {
    if !plan.ticked.has_rows() {
        return plan.ticked.lay(vec![]);
    }
    let loose = loose_before(app, plan);
    if let Some((given, found)) = plan.given.as_ref().zip(plan.found.as_ref()) {
        let laid = begun::laid((given, &found.sheet), &plan.ticked, &loose);
        plan.ticked.lay(laid);
    }
}

/// The same of the plan in hand, whenever what is ticked of it may be another.
pub(super) fn lay_in_hand(app: &mut App) {
    let mut plan = std::mem::take(&mut app.plan);
    lay(app, &mut plan);
    app.plan = plan;
}

/// Boards of a pile that a plan has cut.
fn boards_cut(app: &App, plan: &KeptPlan, at: Lying) -> Count {
    let of = |plan: Plan| Some(cut::boards_cut((plan.given.as_ref()?, &plan.found.as_ref()?.sheet), &plan.ticked, at));
    begun(app, plan).and_then(of).unwrap_or(0)
}

/// What is cut for a job by all its plans, those that were dropped too: their boards stay in it.
pub fn already_cut(app: &App, job: Id) -> AlreadyCut {
    let plans = app.shelf().shop(app.now.at).job(job).map(|job| job.plans).unwrap_or_default();
    let mut all = AlreadyCut::default();
    for plan in plans.iter().filter_map(|plan| begun(app, plan)) {
        if let Some((given, found)) = plan.given.as_ref().zip(plan.found.as_ref()) {
            all.add((given, &found.sheet), &plan.ticked);
        }
    }
    all
}

/// Rows of a top that are cut by plans before it, and of how many.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RowsCut {
    pub cut: Count,
    pub of: Count,
    /// Rows of the plan in hand.
    pub asked: Count,
    /// Boards the plans before have to cut still, as far as the job has them.
    pub uncut: Count,
    /// The one of them that goes on.
    pub before: Option<Id>,
    /// Rows they make together when they go on with the boards that are there, the cut ones with them.
    pub makes: Count,
}

impl RowsCut {
    /// All of the top is asked again, and some of it is not cut.
    pub fn is_whole(&self) -> bool {
        self.asked == self.of && self.cut < self.of
    }

    /// Going on makes all of the top.
    pub fn makes_all(&self) -> bool {
        self.of <= self.makes
    }

    /// Rows of the top there are with so many of the plan in hand.
    pub fn with(&self, made: i64) -> i64 {
        if self.is_rest() { made.saturating_add(self.cut.into()) } else { made }
    }

    /// The rows that are not cut are asked, and no others.
    pub fn is_rest(&self) -> bool {
        self.asked.saturating_add(self.cut) == self.of
    }
}

/// Rows that are cut of a top as long, as thick and in rows as wide as the one in hand, which is not used; nothing where none are.
pub fn rows_cut(app: &App) -> Option<RowsCut> {
    rows_before(app, app.plan.given.as_ref().filter(|_| app.plan.used.is_none())?)
}

/// The same of any top; a plan of its own that is in use is one before, too.
pub(super) fn rows_before(app: &App, given: &Given) -> Option<RowsCut> {
    let Wish::Panel(panel) = &given.ready.wish else { return None };
    let plans = app.shelf().shop(app.now.at).job(given.ask.job).map(|job| job.plans).unwrap_or_default();
    let (mut cut, mut of, mut uncut, mut before, mut makes) = (0, 0, 0, None, 0);
    for plan in plans.iter().filter_map(|plan| begun(app, plan)) {
        let Some((given, found)) = plan.given.as_ref().zip(plan.found.as_ref()) else { continue };
        let Wish::Panel(top) = &given.ready.wish else { continue };
        if alike(top, panel) {
            let own = cut::rows_cut(&found.sheet, &plan.ticked);
            cut = own.saturating_add(cut);
            of = top.rows().and_then(|rows| Count::try_from(rows).ok()).unwrap_or(0).max(of);
            uncut = plan.used.map_or(0, |id| left_of(app, &plans, id)).saturating_add(uncut);
            let there = plan.used.and_then(|id| there_for(app, &plans, id));
            let still = there.as_ref().map(|there| rows_still((given, &found.sheet), &plan.ticked, there));
            makes = still.unwrap_or(own).saturating_add(makes);
            before = plan.used.filter(|_| there.is_some()).or(before);
        }
    }
    let asked = panel.rows().and_then(|rows| Count::try_from(rows).ok())?;
    (0 < cut).then_some(RowsCut { cut, of, asked, uncut, before, makes: makes.min(of) })
}

/// Tops as long and as thick, in rows as wide.
pub(super) fn alike(one: &Panel, other: &Panel) -> bool {
    (one.length, one.thickness, one.strip) == (other.length, other.thickness, other.strip)
}

/// Pieces that plans before the one in hand cut for a top like it, and that lie in no row that is cut, of theirs or of a plan since; the longest
/// first.
pub fn loose(app: &App) -> Vec<Loose> {
    let all = loose_before(app, &app.plan);
    match app.plan.given.as_ref().zip(app.plan.found.as_ref()) {
        Some((given, found)) => not_laid((given, &found.sheet), &app.plan.ticked, all),
        None => all,
    }
}

/// The same as they lay before a plan.
fn loose_before(app: &App, of: &Plan) -> Vec<Loose> {
    let Some(given) = of.given.as_ref() else { return vec![] };
    let Wish::Panel(panel) = &given.ready.wish else { return vec![] };
    let plans = app.shelf().shop(app.now.at).job(given.ask.job).map(|job| job.plans).unwrap_or_default();
    let mut all: Vec<Loose> = vec![];
    let before = plans.iter().take_while(|plan| of.used != Some(plan.id)).filter(|plan| !beside::ticks(app, plan).is_empty());
    for mut plan in before.filter_map(|plan| bare(app, plan)) {
        let Some((given, found)) = plan.given.as_ref().zip(plan.found.as_ref()) else { continue };
        if matches!(&given.ready.wish, Wish::Panel(before) if alike(before, panel)) {
            plan.ticked.lay(begun::laid((given, &found.sheet), &plan.ticked, &all));
            all = not_laid((given, &found.sheet), &plan.ticked, all);
            all.extend(begun::loose((given, &found.sheet), &plan.ticked));
            all.sort_by_key(|it| std::cmp::Reverse(it.length));
        }
    }
    all
}

/// How wide all of the top in hand is of which plans before cut rows, and of how many rows it is.
pub fn all_of_it(app: &App, given: &Given) -> Option<(Length, i64)> {
    begun::all_of_it(given, &app.shelf().shop(app.now.at).job(given.ask.job).ok()?.plans)
}

/// Boards of a plan in use that are not cut; none of one that was dropped.
fn left_of(app: &App, plans: &[KeptPlan], plan: Id) -> Count {
    let all = in_use(&app.shelf().book, plans);
    let it = all.iter().find(|it| it.plan.id == plan);
    it.map_or(0, |it| it.needs().saturating_sub(it.lacks()).saturating_sub(uncut(app, it).map_or(0, |(cut, _)| cut)))
}

/// Boards of a plan in use that the job has, by their pile; nothing of one that is in use no more.
fn there_for(app: &App, plans: &[KeptPlan], plan: Id) -> Option<Vec<(Lying, Count)>> {
    let all = in_use(&app.shelf().book, plans);
    let shares = all.into_iter().find(|it| it.plan.id == plan)?.shares;
    let one = |((haul, pile), share): ((Id, Id), Share)| (Lying { haul, pile }, share.needs.saturating_sub(share.lacks));
    Some(shares.into_iter().map(one).listed())
}

/// Of a plan in use of which boards are ticked as cut: how many are, and what goes back with it all the same. Of a pile of which the job had
/// pieces already these are cut first.
pub fn uncut(app: &App, it: &InUse<'_>) -> Option<(Count, Uncut)> {
    let plan = begun(app, it.plan)?;
    let (given, sheet) = (plan.given.as_ref()?, &plan.found.as_ref()?.sheet);
    let (mut all, mut back) = (0, vec![]);
    for ((haul, pile), share) in &it.shares {
        let at = Lying { haul: *haul, pile: *pile };
        let has = share.needs.saturating_sub(share.lacks);
        let done = cut::boards_cut((given, sheet), &plan.ticked, at).min(has);
        all = done.saturating_add(all);
        back.push((at, share.took.min(has.saturating_sub(done))));
    }
    back.retain(|(_, n)| 0 < *n);
    let left = cut::still_on(given, sheet, &plan.ticked);
    (0 < all).then_some((all, Uncut { plan: it.plan.id, back, left }))
}

/// Of what a plan takes of its piles, pieces that lie only after the saw: they are on boards of a plan that are not cut yet. Those that are
/// cut go first. By the place of the pile.
pub fn not_cut_off(app: &App, (given, sheet): (&Given, &PlanSheet), taken: bool) -> Vec<(usize, Count)> {
    let after = beside::after_the_saw(app);
    let one = |used: &Used| {
        let source = given.sources.get(used.source).filter(|source| source.bought.is_none() && 0 < used.pieces)?;
        let at = source.which().0;
        let uncut = after.iter().filter(|(of, _)| *of == at).fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
        let pile = fivebar_core::ledger::fold::haul(&app.shelf().book, at.haul).filter(|_| 0 < uncut)?;
        let on_rack = pile.pile(at.pile)?.on_rack();
        let n =
            if taken || source.in_job { uncut.saturating_sub(on_rack) } else { used.pieces.saturating_sub(on_rack.saturating_sub(uncut)) };
        Some((used.source, n.min(uncut).min(used.pieces))).filter(|(_, n)| 0 < *n)
    };
    sheet.used.iter().filter_map(one).listed()
}
