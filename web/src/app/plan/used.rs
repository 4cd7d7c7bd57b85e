//! A plan and the wood: taken for the job, once and never twice, and what has changed since.

use super::cut::{RowsCut, rows_before};
use super::{Found, Page, Plan, already_cut, beside, stop, uncut};
use crate::app::App;
use crate::app::order::{Feel, Order};
use crate::words::en::plan as words;
use fivebar_core::ledger::decide::{Command, Lying, Now, PlanCommand, Uncut, without_plans};
use fivebar_core::ledger::fold::{InUse, Job};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Count, Id, Listed, Wall};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::anew::{fitting_anew, given_anew};
use fivebar_core::sheet::make::buy::{not_bought, without_boards};
use fivebar_core::sheet::make::keep::{changes_with, in_use, kept, left_out_changed, left_over, taken_by};
use fivebar_core::sheet::make::shared::{InBoth, in_both, in_place_of};
use fivebar_core::sheet::make::{Ask, Change, Given, Source, Unfit, WhyNot, sources};

/// What the job has by the plan before this one, whose place it takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Before {
    /// Pieces that it took for the job.
    pub pieces: Count,
    /// Such of them as go back to the rack with it: those that are not cut.
    pub back: Count,
    /// Pieces of it that the job had already.
    pub own: Count,
    /// It may stay: boards are ticked as cut on this phone, or it was of another shape.
    pub may_stay: bool,
    /// It was of another shape: nothing of its wood is planned with.
    pub of_other: bool,
    /// Boards that are ticked as cut of it on this phone.
    pub cut: Count,
    /// The first plan that has such boards.
    pub ticked: Option<Id>,
    /// The job has wood by other plans, which stay whatever becomes of it.
    pub others: bool,
}

impl Before {
    /// No board goes back unasked.
    pub fn asks(self) -> bool {
        self.may_stay || 0 < self.pieces
    }
}

/// Whether its wood was taken once, and may have been given back.
pub fn was_used(app: &App) -> bool {
    app.plan.used.is_some()
}

/// How the plan in hand stands to the wood as it is now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Since {
    /// The job has its wood, or some of it still.
    pub taken: bool,
    /// What is not as it was when the plan was made.
    pub changed: Vec<Change>,
    /// Piles that did not fit and are not what they were, by their places among those left out.
    pub left_out: Vec<usize>,
    /// Piles of which there are more or fewer now, by their places, where that alone is otherwise.
    pub counted: Vec<usize>,
    /// What the job has by plans before, where this one is not used.
    pub before: Option<Before>,
    /// Other plans by which the job has wood: the entry, what it makes, and when it was used.
    pub others: Vec<(Id, Shape, Wall)>,
}

/// The plans by which a job has wood, the oldest first: the entry, what it makes, and when it was used.
pub fn in_use_by(app: &App, job: Id) -> Vec<(Id, Shape, Wall)> {
    let shop = app.shelf().shop(app.now.at);
    let plans = shop.job(job).map(|job| job.plans).unwrap_or_default();
    in_use(&shop, &plans).into_iter().map(|it| (it.plan.id, it.plan.plan.shape, it.plan.at)).collect()
}

/// Whether a parts plan is in use, and the job has all boards that its plans need.
pub fn has_parts_of(app: &App, job: Id) -> bool {
    let shop = app.shelf().shop(app.now.at);
    let plans = shop.job(job).map(|job| job.plans).unwrap_or_default();
    let all = in_use(&shop, &plans);
    all.iter().all(|it| it.lacks() == 0) && all.iter().any(|it| it.plan.plan.shape == Shape::Parts)
}

/// Told once for a page: each look folds the rack.
pub fn since(app: &App, given: &Given, found: &Found) -> Since {
    let shop = app.shelf().shop(app.now.at);
    let Ok(job) = shop.job(given.ask.job) else { return Since::default() };
    let all = in_use(&shop, &job.plans);
    let (own, others): (Vec<_>, Vec<_>) = all.iter().map(|it| it.plan).partition(|it| app.plan.used == Some(it.id));
    let taken = !own.is_empty();
    let back = (!taken).then(|| goes_back(app, &goes(app, &job, &all, &given.ask)));
    let mut changed = changes_with(&shop, (given, &found.sheet), back.as_deref()).unwrap_or_default();
    if !taken && !already_cut(app, job.id).is_of(given) {
        changed.push(Change::Cut);
    }
    let others = others.into_iter().map(|it| (it.id, it.plan.shape, it.at)).collect();
    let left_out = if taken { vec![] } else { left_out_changed(&shop, given) };
    let before = if taken { None } else { before_with(app, &job, &all, &given.ask) };
    let counted = if taken || !changed.is_empty() { vec![] } else { counted(app, given) };
    Since { taken, changed, left_out, counted, before, others }
}

/// The piles of a plan that is not used of which more or fewer could be planned with now.
fn counted(app: &App, given: &Given) -> Vec<usize> {
    let differ = |now: &[(Source, Option<Unfit>)]| {
        let lies = |source: &Source| now.iter().find(|(it, _)| it.which() == source.which()).map_or(0, |(it, _)| it.n);
        let all = given.sources.iter().enumerate().filter(|(_, source)| source.bought.is_none());
        all.filter(|(_, source)| lies(source) != source.n).map(|(place, _)| place).listed()
    };
    let quick = differ(&fitting_to(app, &given.ask));
    if quick.is_empty() {
        return quick;
    }
    // With the boards of a plan before that are not cut goes what would be left of them.
    let cut = already_cut(app, given.ask.job);
    let then = with_wood(app, &given.ask, |shop| fitting_anew(shop, &given.ask, (&cut, &[])));
    then.and_then(|now| now).map_or(quick, |now| differ(&now))
}

/// What the job has by the plans before: it goes back when another plan is used, or stays where it is cut.
fn before(app: &App) -> Option<Before> {
    before_of(app, &app.plan.given.as_ref()?.ask)
}

fn before_of(app: &App, ask: &Ask) -> Option<Before> {
    of_job(app, ask, |job, all| before_with(app, job, all, ask))?
}

fn of_job<T>(app: &App, ask: &Ask, told: impl FnOnce(&Job, &[InUse<'_>]) -> T) -> Option<T> {
    let shop = app.shelf().shop(app.now.at);
    let job = shop.job(ask.job).ok()?;
    Some(told(&job, &in_use(&shop, &job.plans)))
}

/// The plans whose place the one in hand takes.
fn goes<'a>(app: &App, job: &Job, all: &[InUse<'a>], ask: &Ask) -> Vec<InUse<'a>> {
    in_place_of(job, ask, all, |plan| app.plan.again.or(app.plan.used) == Some(plan.id))
}

fn before_with(app: &App, job: &Job, all: &[InUse<'_>], ask: &Ask) -> Option<Before> {
    let has = goes(app, job, all, ask);
    let others = has.len() < all.len();
    let there = has.iter().map(|it| it.needs().saturating_sub(it.lacks())).fold(0, Count::saturating_add);
    let pieces = has.iter().map(|it| it.goes_back()).fold(0, Count::saturating_add);
    let partly = has.iter().filter_map(|it| uncut(app, it)).listed();
    let cut = partly.iter().map(|(cut, _)| *cut).fold(0, Count::saturating_add);
    let back = goes_back(app, &has).iter().map(|(_, n)| *n).fold(0, Count::saturating_add);
    let of_other = has.iter().any(|it| it.plan.plan.shape != ask.what.shape());
    let own = there.saturating_sub(pieces);
    let ticked = partly.first().map(|(_, uncut)| uncut.plan);
    (!has.is_empty()).then_some(Before { pieces, back, own, may_stay: 0 < cut || of_other, of_other, cut, ticked, others })
}

/// What goes back to the rack with plans: all they took, but for boards that are ticked as cut.
fn goes_back(app: &App, all: &[InUse<'_>]) -> Vec<(Lying, Count)> {
    all.iter().flat_map(|it| uncut(app, it).map_or_else(|| taken_by(std::slice::from_ref(it)), |(_, uncut)| uncut.back)).listed()
}

/// The problem the maker asks. The wood of a plan before that goes back lies on the rack for it.
pub fn given_to(app: &App, ask: &Ask) -> Result<Given, WhyNot> {
    let cut = already_cut(app, ask.job);
    let mut given = with_wood(app, ask, |shop| given_anew(shop, ask, &cut))??;
    owned(app, &mut given);
    given.cut.rows = rows_before(app, &given).filter(RowsCut::is_rest).map_or(0, |rows| rows.cut);
    Ok(given)
}

/// Each of these pieces with why it can't be used, as they are planned with; and what lies on the rack as long as the plan before is in use.
pub fn fitting_to(app: &App, ask: &Ask) -> Vec<(Source, Option<Unfit>)> {
    let cut = already_cut(app, ask.job);
    let back = if before_of(app, ask).is_none_or(|before| before.of_other) { vec![] } else { back_of(app, ask) };
    fitting_anew(&app.shelf().shop(app.now.at), ask, (&cut, &back)).unwrap_or_default()
}

fn back_of(app: &App, ask: &Ask) -> Vec<(Lying, Count)> {
    of_job(app, ask, |job, all| goes_back(app, &goes(app, job, all, ask))).unwrap_or_default()
}

/// The shop as it is planned in: what of the plans before is not cut lies on the rack, unless they are of another shape, and may stay.
fn with_wood<T>(app: &App, ask: &Ask, told: impl FnOnce(&Shop<'_>) -> T) -> Answer<T> {
    let shelf = app.shelf();
    if before_of(app, ask).is_none_or(|before| before.of_other) {
        return Ok(told(&shelf.shop(app.now.at)));
    }
    let (goes, partly) = goes_of(app, ask);
    let then = without_plans(&shelf.book, ask.job, (&goes, &partly))?;
    Ok(told(&Shop::folded(&then, (shelf.bench(), shelf.workshop()), app.now.at)))
}

/// Of the pieces a plan may take from the rack, those the job has already by a plan before.
pub fn owned(app: &App, given: &mut Given) {
    if before_of(app, &given.ask).is_none_or(|before| before.of_other) {
        return;
    }
    let taken = back_of(app, &given.ask);
    let of =
        |source: &Source| taken.iter().filter(|(lying, _)| *lying == source.which().0).fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
    let own = |source: &Source| if source.in_job { 0 } else { of(source).min(source.n) };
    given.own = given.sources.iter().map(own).collect();
}

/// Boards that are cut of the plans whose place is taken, with those that stayed when these took another's.
fn stayed(app: &App, ask: &Ask) -> Count {
    let cut = |it: &InUse<'_>| uncut(app, it).map_or(0, |(cut, _)| cut).saturating_add(it.plan.plan.boards_cut.unwrap_or(0));
    of_job(app, ask, |job, all| goes(app, job, all, ask).iter().map(cut).fold(0, Count::saturating_add)).unwrap_or(0)
}

/// The plans whose place is taken: those of which no board is cut, then those that are partly cut.
fn goes_of(app: &App, ask: &Ask) -> (Vec<Id>, Vec<Uncut>) {
    let of = |all: &[InUse<'_>]| {
        let partly = all.iter().filter_map(|it| uncut(app, it)).map(|(_, uncut)| uncut).listed();
        let whole = all.iter().map(|it| it.plan.id).filter(|id| partly.iter().all(|uncut| uncut.plan != *id));
        (whole.listed(), partly)
    };
    of_job(app, ask, |job, all| of(&goes(app, job, all, ask))).unwrap_or_default()
}

/// What the plan in hand and those whose place it takes make both, and what these make alone.
pub fn in_both_of(app: &App) -> InBoth {
    let Some(ask) = app.plan.given.as_ref().map(|given| &given.ask) else { return InBoth::default() };
    let told = of_job(app, ask, |job, all| {
        let goes = goes(app, job, all, ask).into_iter().map(|it| it.plan.id).listed();
        in_both(job, ask, (all, &goes))
    });
    told.unwrap_or_default()
}

/// Pieces of a pile, by its place, that the plan in hand takes from the rack, and those that lie there if the wood of the plan before stays in
/// the job; nothing where they are enough.
pub fn short_if_they_stay(app: &App) -> Option<(usize, Count, Count)> {
    let (given, found) = app.plan.given.as_ref().zip(app.plan.found.as_ref())?;
    let there = sources(&app.shelf().shop(app.now.at), given.ask.job).ok()?;
    let one = |(place, source): (usize, &Source)| {
        let takes = found.sheet.used.iter().filter(|used| used.source == place).fold(0, |sum: Count, used| sum.saturating_add(used.pieces));
        let free = there.iter().find(|it| it.which() == source.which()).map_or(0, |it| it.n);
        (source.bought.is_none() && free < takes).then_some((place, takes, free))
    };
    given.sources.iter().enumerate().find_map(one)
}

/// Takes the pieces of the plan for the job. Where that would put boards of a plan before back, or that may be cut, it is asked first.
pub fn take(app: &mut App, now: Now) {
    stop(app);
    if before(app).is_some_and(Before::asks) {
        app.plan.asks = true;
        return;
    }
    take_as(app, true, now);
}

/// One act, with the plan itself; what the plan before took goes back in it, board by board where it is not cut.
pub fn take_as(app: &mut App, instead: bool, now: Now) {
    let Plan { given: Some(given), found: Some(found), .. } = &app.plan else { return };
    if !not_bought(given, &found.sheet).is_empty() {
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let mut given = without_boards(given);
    given.cut.stayed = if instead { stayed(app, &given.ask) } else { 0 };
    let plan = kept(&given, &found.answered, &found.sheet);
    let left = left_over(&given, &found.sheet, &|source, length| {
        let length = app.speech.length(length, given.units);
        words::left_of_pile(source.pile.name.as_deref(), &source.pile.label, &length)
    });
    let had = before(app).is_some();
    let (instead, partly) = if instead { goes_of(app, &given.ask) } else { (vec![], vec![]) };
    match app.order(&Command::Plan(PlanCommand::Use { plan: Box::new(plan), left, instead, partly }), now) {
        Some(written) => {
            app.plan.ticked_before = Some(app.plan.ticked.clone());
            (app.plan.used, app.plan.asks, app.plan.again) = (written.entries.first().map(|entry| entry.id), false, None);
            beside::keep(app);
            app.orders.push(Order::Feel(Feel::Start));
        }
        None => app.plan.asks = had,
    }
}

/// The part that nothing fits, with what is asked, where the page says so; the first, where nothing fits any.
pub fn none_for(app: &App) -> Option<(Ask, String)> {
    let (job, Page::Ask) = (app.jobs.open?, app.plan.page) else { return None };
    let job = app.shelf().shop(app.now.at).job(job).ok()?;
    let draft = &app.plan.draft;
    let part = match why_not(app)? {
        WhyNot::NoneForPart(part) => part,
        WhyNot::NoneFits if matches!(draft.shape, Some(Shape::Parts | Shape::Sticks)) => {
            job.parts.iter().find(|part| !draft.without.contains(&part.name))?.name.clone()
        }
        _ => return None,
    };
    Some((draft.rough(job.id, app.speech.typing(job.units))?, part))
}

/// Why there is nothing to plan, as long as that is so.
pub fn why_not(app: &App) -> Option<WhyNot> {
    let (why, job) = (app.plan.why_not.as_ref()?, app.jobs.open?);
    let typing = app.speech.typing(app.shelf().shop(app.now.at).job(job).ok()?.units);
    let ask = app.plan.draft.rough(job, typing)?;
    // The problem is not made again on each look: only where something else is asked, or the book has more.
    if app.plan.refused.as_ref().is_some_and(|(of, entries)| *of == ask && *entries == app.shelf().book.len()) {
        return Some(why.clone());
    }
    given_to(app, &ask).err().filter(|now| now == why)
}
