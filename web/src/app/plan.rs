//! What can I make, heard: what is asked of a job's pieces, the planning under way, and the plan that came of it.

mod asking;
mod beside;
mod buying;
mod cut;
mod designs;
mod drop;
mod fields;
pub mod makes;
mod more;
mod other_rows;
mod rack_first;
mod saw;
mod tap;
#[cfg(test)]
mod tests;
mod ticks;
mod used;
mod ways;

use super::jobs::Room;
use super::news::Planning;
use super::order::{Feel, Order};
use super::workshop::rack;
use super::{App, Notice, sought, workshop};
pub use asking::{Draft, FIELD, PATTERNS, TOP, in_use};
pub use beside::{ToCut, after_the_saw, cuts_left, is_to_cut, lists_left};
pub use buying::{FIGURES, is_open, nearly_bought, still_to_buy, were_bought, woods};
use cut::cut_by;
pub use cut::{PutBack, RowsCut, all_of_it, already_cut, asked_back, loose, not_cut_off, rows_cut, uncut};
pub use designs::made_from;
use designs::{keep_design, of_job};
pub use drop::{Dropping, asked_of, dropping, in_use_again, who_has_its_leftovers};
pub use fields::tried as fields_tried;
use fivebar_core::ledger::decide::{Now, PlanCommand};
use fivebar_core::ledger::fold::KeptPlan;
use fivebar_core::plan::{Answered, Figures, better};
use fivebar_core::quantity::{Id, Moment};
use fivebar_core::sheet::make::buy::{Counted, Kinds, OfRack, bought_since};
use fivebar_core::sheet::make::cheaper::cheaper_first;
use fivebar_core::sheet::make::cut::Ticks;
use fivebar_core::sheet::make::keep::{again, asked_again, last_used};
use fivebar_core::sheet::make::own::own_first;
use fivebar_core::sheet::make::{Ask, Boards, Given, What, Which, WhyNot, is_of_some, unasked};
use fivebar_core::sheet::plan::{PlanSheet, sheet_at_once};
pub use more::{follow, painted, unlocked};
pub use other_rows::{all_of, left_alone};
pub use saw::opens_unused;
use saw::{at_the_saw, show};
pub use tap::Tap;
pub use ticks::{LastTick, back as tick_back};
pub use used::{Before, Since, fitting_to, has_parts_of, in_both_of, in_use_by, none_for, short_if_they_stay, since, was_used, why_not};

/// A first answer comes after so many ms; a better one is looked for so long.
const FIRST: u32 = 300;
const LONGER: u32 = 6_000;

/// What is shown of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Page {
    /// What it looks like: four drawings.
    #[default]
    Choose,
    /// The few figures it needs.
    Ask,
    /// The piles to use.
    Piles,
    /// Boards that could be bought.
    Boards,
    Answer,
}

/// How the planning stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Stands {
    #[default]
    Still,
    /// The worth of the best plan so far, and what no plan can pass; empty until something is found.
    UnderWay {
        worth: Figures,
        bound: Figures,
        ms: u32,
    },
    Failed,
}

/// A plan, and what is shown of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    pub answered: Answered,
    pub sheet: PlanSheet,
    /// What would give more is looked for, or was; else that begins once the page is painted.
    looked: bool,
}

/// What can I make.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    pub page: Page,
    pub draft: Draft,
    /// What was asked last, by job.
    asked: Vec<(Id, Draft)>,
    pub given: Option<Box<Given>>,
    pub why_not: Option<WhyNot>,
    /// What that was found of: what was asked, and how long the book was.
    refused: Option<(Ask, usize)>,
    pub stands: Stands,
    pub found: Option<Box<Found>>,
    /// The lines at the saw that are done.
    pub ticked: Ticks,
    /// What was ticked when its wood was taken, as long as the page stands.
    ticked_before: Option<Ticks>,
    /// How often another plan was turned to.
    pub turned_to: usize,
    /// It is waited for the page to be painted.
    awaits_paint: bool,
    /// The list at the saw is by rows.
    pub by_row: bool,
    /// A line was tapped that is done by its rows: that is said, and nothing is ticked.
    pub by_its_rows: bool,
    /// The piece of the picture that was tapped.
    pub piece: Option<usize>,
    /// The entry of the plan whose wood was taken.
    used: Option<Id>,
    /// When it was made: boards that were bought since are bought for it.
    made: Option<Moment>,
    /// Boards that were bought in another size than it wants, and count all the same.
    counted: Vec<Counted>,
    /// The plan in use that this one was planned again from.
    again: Option<Id>,
    /// The pieces of the plan there was are not what they were.
    pub changed: bool,
    /// It is asked whether the wood of the plan before stays.
    pub asks: bool,
    /// It is asked what becomes of the wood of the plan that is dropped.
    pub drops: bool,
    /// The plan that was in hand was dropped.
    pub dropped: bool,
    /// What lies there is planned before boards to buy.
    first: Option<rack_first::RackFirst>,
    /// Ways of the same top that were looked at before this one, with what was ticked of each.
    looked: Vec<ways::Looked>,
    /// The ways of a top that are planned behind the first.
    ways: ways::Ways,
    /// The fields that are planned behind the first.
    fields: fields::Fields,
    /// How far that went alone, where it was not enough.
    pub of_rack: Option<OfRack>,
    /// How far the boards to buy were looked through.
    pub kinds: Kinds,
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    app.plan.by_its_rows = false;
    match tap {
        Tap::Open => open(app),
        Tap::Choose => app.plan.page = Page::Choose,
        Tap::Shape(shape) => asking::choose(app, shape),
        Tap::TopOf(part) => asking::top_of(app, &part),
        Tap::Piles => (app.plan.draft.buying, app.plan.page) = (None, Page::Piles),
        Tap::Buy => buying::open(app),
        Tap::LeaveBoards => buying::leave(app),
        Tap::AddBoards => buying::add(app),
        Tap::Change => {
            stop(app);
            other_rows::in_form(app);
            app.plan.page = Page::Ask;
        }
        Tap::Go => other_rows::first(app),
        Tap::AllAnew => other_rows::all_anew(app),
        Tap::Stop => stop(app),
        Tap::Piece(nth) => app.plan.piece = (app.plan.piece != Some(nth)).then_some(nth),
        Tap::Tick(nth) => ticks::tick(app, nth),
        Tap::TickRow(nth) => ticks::tick(app, Ticks::row(nth)),
        Tap::ByRow(by_row) => app.plan.by_row = by_row,
        Tap::OtherRows => other_rows::alone(app),
        Tap::OneMore(nth) => ticks::one_more(app, nth),
        Tap::TakeAgain => of_job(app, |job| PlanCommand::TakeAgain { job }, now),
        Tap::LookFor => sought::look_for(app, now),
        Tap::LookNoMore(entry) => sought::heard(app, sought::Tap::NoMore(entry), now),
        Tap::Use => used::take(app, now),
        Tap::UseAnd(stays) => used::take_as(app, !stays, now),
        Tap::Drop => drop::drop_it(app),
        Tap::DropAnd(stays) => drop::drop_as(app, stays, now),
        Tap::NotNow => (app.plan.asks, app.plan.drops) = (false, false),
        Tap::LeaveOut(name) => asking::leave_out(app, name),
        Tap::Over(over) => {
            app.plan.draft.over = over;
            go(app);
        }
        Tap::CutInPieces => asking::cut_in_pieces(app),
        Tap::JointsApart(apart) => asking::joints_apart(app, apart),
        Tap::Way(way) => ways::look(app, way),
        Tap::Pile(lying) => on_rack(app, rack::Page::Pile(lying), now),
        Tap::Bought => buying::to_write_down(app, now),
        Tap::CountAs(counted) => buying::count_as(app, counted),
        Tap::Saw(job) => at_the_saw(app, job, None),
        Tap::SawOf(job, plan) => at_the_saw(app, job, Some(plan)),
        Tap::Kept(plan) => show(app, plan),
        Tap::Print => app.orders.push(Order::Print),
        Tap::KeepDesign => keep_design(app, None, now),
        Tap::KeepDesignAs(name) => keep_design(app, Some(name), now),
        Tap::UseDesign(design) => of_job(app, |job| PlanCommand::UseDesign { job, design }, now),
        Tap::Outlook => app.outlooks.told_how = !app.outlooks.told_how,
        said => {
            let sign = app.speech.sign();
            (app.notice, app.plan.why_not) = (None, None);
            app.plan.draft.say(said, sign);
        }
    }
}

/// Opens it for the job in hand: at the plan its wood was cut by, else at one that was made and not used, else at what was asked last.
fn open(app: &mut App) {
    let Some(job) = app.jobs.open else { return };
    app.jobs.room = Some(Room::Plan);
    (app.notice, app.plan.asks, app.plan.drops) = (None, false, false);
    if app.plan.is_of(job) {
        return;
    }
    stop(app);
    let asked = std::mem::take(&mut app.plan.asked);
    let draft = asked.iter().find(|(of, _)| *of == job).map(|(_, draft)| draft.clone());
    app.plan = Plan { asked: vec![], ..of_book(app, job).or_else(|| unused(app, job)).unwrap_or_default() };
    app.plan.asked = asked;
    if let (Page::Choose, Some(draft)) = (app.plan.page, draft) {
        (app.plan.page, app.plan.draft) = (asking::page_of(app, job, &draft), draft);
    }
}

/// A page of the rack: a pile's own, or that of bought boards; it leads back to the plan.
fn on_rack(app: &mut App, page: rack::Page, now: Now) {
    workshop::heard(app, workshop::Tap::ShowPage(workshop::Over::Rack), now);
    rack::heard(app, rack::RackTap::Show(page), now);
    app.workshop.rack.for_plan = true;
}

/// The plan the job's wood was cut by, as the book keeps it, with what was ticked on this phone.
fn of_book(app: &App, job: Id) -> Option<Plan> {
    let plans = app.shelf().shop(app.now.at).job(job).ok()?.plans;
    let last = last_used(&plans)?;
    let beside = beside::of(app, job);
    let is_same = |it: &beside::Beside| it.is_of(last);
    if beside.as_ref().is_some_and(|it| last.at.at < it.plan.at.at && !is_same(it)) {
        return None; // another was made since
    }
    cut_by(app, last)
}

/// A plan of a job by its entry, with what was ticked of it.
fn kept_of(app: &App, job: Id, plan: Id) -> Option<Plan> {
    let plans = app.shelf().shop(app.now.at).job(job).ok()?.plans;
    cut_by(app, plans.iter().find(|kept| kept.id == plan)?)
}

/// The plan that was made on this phone and not used. Where its pieces are no more what they were, it is asked again.
fn unused(app: &App, job: Id) -> Option<Plan> {
    let it = beside::of(app, job)?;
    if let Some(mut plan) = shown_again(app, &it.plan, (&it.bought, it.open, it.turned.clone())) {
        plan.given.iter_mut().for_each(|given| {
            used::owned(app, given);
            let cut = already_cut(app, job);
            (given.cut.strips, given.cut.begun) = (cut.strips, cut.begun);
            given.cut.boards = it.cut.clone().unwrap_or(cut.boards);
            given.unasked = unasked(&given.ask, &fitting_to(app, &given.ask));
        });
        plan.found.iter_mut().for_each(|found| found.sheet.ends.short = it.short);
        buying::counted_again(&mut plan, &it.counted);
        let mut plan = Plan { ticked: it.ticked, again: it.again, of_rack: it.of_rack, kinds: it.kinds, counted: it.counted, ..plan };
        cut::lay(app, &mut plan);
        return Some(plan);
    }
    let shop = app.shelf().shop(app.now.at);
    let mut ask = asked_again(&shop, &it.plan, &it.bought)?;
    ask.turned = it.turned.unwrap_or(ask.turned);
    bought_since(&app.shelf().book, it.plan.at.at, &mut ask.bought);
    let typing = app.speech.typing(shop.job(job).ok()?.units);
    Some(Plan { page: Page::Ask, draft: Draft::of(&ask, typing), changed: true, again: it.again, ..Plan::default() })
}

/// With what this phone knows of it: boards to buy, what was left open, and the piles that were left out.
type Known<'a> = (&'a [Boards], [bool; 5], Option<Vec<Which>>);

fn shown_again(app: &App, kept: &KeptPlan, (bought, [rows, thickness, wood, over, pattern], turned): Known<'_>) -> Option<Plan> {
    let (mut given, mut answered) = again(&app.shelf().shop(app.now.at), kept, bought)?;
    // What the maker left to the pieces is not what they gave once.
    if let What::Top(top) = &mut given.ask.what {
        (top.rows, top.thickness) = (top.rows.filter(|_| !rows), top.thickness.filter(|_| !thickness));
        top.pick = top.pick.take().filter(|_| !wood);
    }
    if let What::Field(field) = &mut given.ask.what {
        field.patterns = if pattern { asking::any() } else { std::mem::take(&mut field.patterns) };
    }
    given.ask.over = over.then_some(given.ready.figures.allow[1]);
    // Of another wood than the plan's, only the phone knows what was left out.
    given.ask.turned = turned.unwrap_or(given.ask.turned);
    given.some = is_of_some(&app.shelf().shop(app.now.at), &given).unwrap_or(true);
    // What another phone says no plan can pass is not proven here.
    if kept.by != app.shelf().device() {
        answered.bound.clear();
    }
    let sheet = sheet_at_once(&given.ready, &answered, given.room).ok()?;
    let mut draft = Draft::of(&given.ask, app.speech.typing(given.units));
    bought_since(&app.shelf().book, kept.at.at, &mut draft.bought);
    let found = Some(Box::new(Found { answered, sheet, looked: false }));
    Some(Plan { page: Page::Answer, draft, given: Some(Box::new(given)), found, made: Some(kept.at.at), ..Plan::default() })
}

/// Reads the figures and begins to plan.
fn go(app: &mut App) {
    app.plan.looked.clear();
    plan_it(app);
}

fn plan_it(app: &mut App) {
    let Some(job) = app.jobs.open else { return };
    stop(app);
    let shop = app.shelf().shop(app.now.at);
    let Ok(units) = shop.job(job).map(|job| job.units) else { return };
    let typing = app.speech.typing(units);
    let Some(ask) = app.plan.draft.ask(job, typing) else {
        app.plan.page = Page::Ask;
        return app.orders.push(Order::Feel(Feel::Refused));
    };
    let made = used::given_to(app, &ask);
    let draft = app.plan.draft.clone();
    app.plan.asked.retain(|(of, _)| *of != job);
    app.plan.asked.push((job, draft));
    (app.notice, app.plan.changed) = (None, false);
    match made {
        Ok(given) => {
            let (given, first, of_rack) = rack_first::begun(app, given);
            let turns = (ways::begun(&given), fields::begun(&given));
            begin(app, given);
            (app.plan.ways, app.plan.fields) = turns;
            (app.plan.first, app.plan.of_rack, app.plan.kinds) = (first, of_rack, Kinds::default());
        }
        Err(why) => {
            app.orders.push(Order::Feel(Feel::Refused));
            app.plan.refused = Some((ask, app.shelf().book.len()));
            (app.plan.why_not, app.plan.page) = (Some(why), Page::Ask);
        }
    }
}

fn begin(app: &mut App, given: Given) {
    let asked = Box::new(given.ready.asked.clone());
    ticks::gone(app);
    let plan = &mut app.plan;
    plan.again = plan.used.or(plan.again);
    (plan.given, plan.found, plan.why_not, plan.used, plan.piece) = (Some(Box::new(given)), None, None, None, None);
    (plan.ticked, plan.asks, plan.made) = (Ticks::default(), false, Some(app.now.at));
    plan.counted.clear();
    plan.page = Page::Answer;
    plan.stands = Stands::UnderWay { worth: vec![], bound: vec![], ms: FIRST };
    app.orders.push(Order::Plan { asked, ms: FIRST });
}

/// What was found so far stays.
fn stop(app: &mut App) {
    if let Stands::UnderWay { .. } = app.plan.stands {
        app.plan.stands = Stands::Still;
        (app.plan.ways, app.plan.fields) = Default::default();
        app.orders.push(Order::StopPlan);
        if let Some(answered) = rack_first::halted(app) {
            found(app, answered);
        }
    }
}

/// A plan comes in hand, and lies on this phone.
fn found(app: &mut App, answered: Answered) {
    let answered = match &app.plan.given {
        Some(given) => cheaper_first(&app.shelf().shop(app.now.at), given, answered),
        None => answered,
    };
    if app.plan.take_in(answered) {
        ticks::gone(app);
    }
    beside::same_ticks(app);
    beside::keep(app);
}

/// Takes in what is heard of a planning; nothing is, where none is under way.
pub fn told(app: &mut App, told: Planning) {
    if let Planning::ShortEnd { worth, short } = told {
        return beside::short_end(app, &worth, short);
    }
    let plan = &mut app.plan;
    let Stands::UnderWay { ms, .. } = plan.stands else { return };
    match told {
        Planning::Better { worth, bound } => plan.stands = Stands::UnderWay { worth, bound, ms },
        Planning::Done(answered) => {
            let answered = makes::spared(plan, *answered);
            if !ways::taken_in(app, &answered) && !fields::taken_in(app, &answered) {
                match rack_first::next(app, answered) {
                    Some(answered) => found(app, answered),
                    None if app.plan.first.is_some() => return,
                    None => (), // none of all turns gave a plan
                }
                ways::first_is_planned(&mut app.plan);
            }
            if ways::next(app) || fields::next(app) {
                return;
            }
            let plan = &mut app.plan;
            let open = plan.found.as_ref().filter(|found| ms == FIRST && !found.answered.is_proven()).zip(plan.given.as_ref());
            plan.stands = match open {
                Some((found, given)) => {
                    app.orders.push(Order::Plan { asked: Box::new(given.ready.asked.clone()), ms: LONGER });
                    let (worth, bound) = (found.answered.worth.clone(), found.answered.bound.clone());
                    Stands::UnderWay { worth, bound, ms: LONGER }
                }
                None if plan.found.is_some() => Stands::Still,
                None => Stands::Failed,
            };
        }
        Planning::ShortEnd { .. } => (),
        Planning::Failed => {
            if let Some(answered) = rack_first::halted(app) {
                found(app, answered);
            }
            let plan = &mut app.plan;
            (plan.ways, plan.fields) = Default::default();
            plan.stands = if plan.found.is_some() { Stands::Still } else { Stands::Failed };
        }
    }
}

impl Plan {
    /// It is of this job, and something is asked.
    fn is_of(&self, job: Id) -> bool {
        self.given.as_ref().is_some_and(|given| given.ask.job == job)
    }

    /// A plan takes the place of one that is no better; one that breaks a rule is none.
    /// Whether its ticks went with the one before.
    fn take_in(&mut self, answered: Answered) -> bool {
        let Some(given) = &self.given else { return false };
        let answered = own_first(given, answered);
        let senses = given.ready.asked.senses();
        if self.found.as_ref().is_some_and(|old| better(senses, &old.answered.worth, &answered.worth)) {
            return false;
        }
        let Ok(mut sheet) = sheet_at_once(&given.ready, &answered, given.room) else { return false };
        let same = self.found.take().filter(|old| old.answered.plan == answered.plan);
        let changed = same.is_none();
        match same {
            // What it lacks is not unsaid while it is looked for again.
            Some(same) => sheet.short = same.sheet.short,
            None => (self.ticked, self.piece) = (Ticks::default(), None),
        }
        self.found = Some(Box::new(Found { answered, sheet, looked: false }));
        changed
    }

    /// One step back; false where there is none.
    pub fn back(&mut self) -> bool {
        if self.asks || self.drops {
            (self.asks, self.drops) = (false, false);
            return true;
        }
        self.page = match self.page {
            Page::Choose => return false,
            Page::Ask => Page::Choose,
            Page::Piles | Page::Answer => Page::Ask,
            // To where they were asked from, and none is added.
            Page::Boards => self.draft.buying.take().map_or(Page::Piles, |buying| buying.from),
        };
        self.draft.buying = None;
        true
    }
}

/// The refusal that stands, where it is of this place.
pub fn refused(app: &App) -> Option<&fivebar_core::refusal::Refusal> {
    if let Some(Notice::Refused(why)) = &app.notice { Some(why) } else { None }
}
