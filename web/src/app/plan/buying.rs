//! Boards still to be bought: their size, how many at most and the price of each, as they are typed for a plan.

use super::{Page, Plan, beside, none_for};
use crate::app::App;
use crate::app::form::Form;
use crate::app::order::{Feel, Order};
use crate::app::sought;
use crate::app::workshop::rack;
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::kind::stock::SoughtPiece;
use fivebar_core::quantity::reading::{self, Typing};
use fivebar_core::quantity::{Count, Currency, Key, Length, PILE_MOST, writing};
use fivebar_core::sheet::make::buy::{self, Counted, Nearly, ToBuy, fewer};
use fivebar_core::sheet::make::{Boards, sources};
use fivebar_core::sheet::plan::Unlock;

/// Thick, wide, long, at most, price each.
pub const FIGURES: usize = 5;

/// No plan takes more boards of a kind where no limit is said. Ours.
const UNLIMITED: Count = 999;

/// Whether no limit was said of boards to buy.
pub fn is_open(boards: &Boards) -> bool {
    boards.n == UNLIMITED
}

/// Boards as they are typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Buying {
    pub form: Form,
    /// By its place among the woods.
    pub wood: usize,
    /// The page it was opened from.
    pub(super) from: Page,
}

/// The woods they may be of: those of the job's parts, then those of the pieces there are.
pub fn woods(app: &App) -> Vec<Key> {
    let Some(job) = app.jobs.open else { return vec![] };
    let shop = app.shelf().shop(app.now.at);
    let parts = shop.job(job).map(|job| job.parts).unwrap_or_default();
    let there = sources(&shop, job).unwrap_or_default();
    let mut all: Vec<Key> = vec![];
    for wood in parts.iter().filter_map(|part| part.wood.as_ref()).chain(there.iter().filter_map(|source| source.pile.wood.as_ref())) {
        if !all.contains(wood) {
            all.push(wood.clone());
        }
    }
    all
}

/// With what is short, its sides and how many, where that is known.
pub fn open(app: &mut App) {
    let short = short(app);
    let wood = short.as_ref().and_then(|it| woods(app).iter().position(|wood| it.wood.as_ref() == Some(wood)));
    let mut form = Form::of(FIGURES);
    if let Some((it, typing)) = short.zip(typing(app)) {
        let sides = [it.thickness, it.width, it.length].map(|side| writing::length(side, typing));
        // Of a part that is glued up of narrow ones how wide they are is open.
        let sides =
            if it.at_least == Some(true) && none_for(app).is_some() { [sides[0].clone(), String::new(), sides[2].clone()] } else { sides };
        // Of what is at least short more may be wanted.
        let n = if it.at_least == Some(true) { String::new() } else { it.n.to_string() };
        sides.into_iter().chain([n]).enumerate().for_each(|(nth, text)| form.put(nth, text));
    }
    app.plan.draft.buying = Some(Buying { form, wood: wood.unwrap_or(0), from: app.plan.page });
    app.plan.page = Page::Boards;
}

/// Back to where it was opened, and nothing is added.
pub fn leave(app: &mut App) {
    let from = app.plan.draft.buying.take().map(|buying| buying.from);
    app.plan.page = from.unwrap_or(Page::Piles);
}

fn typing(app: &App) -> Option<Typing> {
    let units = app.shelf().shop(app.now.at).job(app.jobs.open?).ok()?.units;
    Some(app.speech.typing(units))
}

/// What the plan in hand lacks first, as long as nothing else is asked; else what a part can be cut of that nothing fits.
fn short(app: &App) -> Option<SoughtPiece> {
    let job = app.jobs.open?;
    let asked = typing(app).and_then(|typing| app.plan.draft.rough(job, typing));
    let same = asked.is_some_and(|ask| app.plan.given.as_ref().is_some_and(|given| given.ask == ask));
    let known = app.plan.page == Page::Answer || same || none_for(app).is_some();
    let first = sought::of_plan(app).filter(|_| known).and_then(|(lacks, _)| lacks.pieces.into_iter().next())?;
    let n = first.n.saturating_sub(would_buy(app, &first));
    Some(SoughtPiece { n, ..first })
}

/// Boards like these that the plan in hand would buy already, where they are looked for with those that lack: of parts and sticks.
fn would_buy(app: &App, piece: &SoughtPiece) -> Count {
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_ref()).filter(|_| none_for(app).is_none()) else { return 0 };
    if !matches!(found.sheet.short.first(), Some(Unlock::Part { .. })) {
        return 0;
    }
    let sides = [piece.thickness, piece.width, piece.length];
    let is_like = |source: usize| given.sources.get(source).is_some_and(|it| it.pile.wood == piece.wood && it.sides() == Some(sides));
    let all = buy::not_bought(given, &found.sheet).into_iter().filter(|(source, ..)| is_like(*source));
    all.fold(0, |sum: Count, (_, n, _)| sum.saturating_add(n))
}

/// Takes what is typed as boards that could be bought.
pub fn add(app: &mut App) {
    let (Some(job), woods) = (app.jobs.open, woods(app)) else { return };
    let Ok((units, currency)) = app.shelf().shop(app.now.at).job(job).map(|job| (job.units, job.currency)) else { return };
    let typing = app.speech.typing(units);
    let Some(buying) = &mut app.plan.draft.buying else { return };
    match buying.read(&woods, (typing, currency)) {
        Some(boards) => {
            app.plan.draft.bought.push(boards);
            (app.plan.draft.buying, app.plan.page) = (None, Page::Piles);
        }
        None => app.orders.push(Order::Feel(Feel::Refused)),
    }
}

/// The boards the plan in hand wants, and how many of them are not bought yet.
pub fn still_to_buy(app: &App) -> Vec<ToBuy> {
    let plan = &app.plan;
    let Some(((given, found), made)) = plan.given.as_ref().zip(plan.found.as_ref()).zip(plan.made) else { return vec![] };
    buy::still_to_buy(given, &found.sheet, (&app.shelf().book, made), &plan.counted)
}

/// Boards that were bought in another size than the plan in hand wants, each beside the nearest it wants.
pub fn nearly_bought(app: &App) -> Vec<Nearly> {
    let plan = &app.plan;
    let Some(((given, found), made)) = plan.given.as_ref().zip(plan.found.as_ref()).zip(plan.made) else { return vec![] };
    buy::nearly(given, &found.sheet, (&app.shelf().book, made), &plan.counted)
}

/// Boards that were bought in another size count as those the plan wants: so many fewer are wanted.
pub fn count_as(app: &mut App, counted: Counted) {
    if let Some(near) = nearly_bought(app).into_iter().find(|it| it.counted == counted && it.may_count) {
        let wood = app.plan.given.as_ref().and_then(|given| given.sources.get(counted.source)?.pile.wood.clone());
        app.plan.counted.push(counted);
        beside::keep(app);
        fewer(&mut app.plan.draft.bought, (wood.as_ref(), near.wanted), counted.n);
    }
}

/// What counts as bought is wanted no more in the draft either, on a page that is opened anew.
pub fn counted_again(plan: &mut Plan, counted: &[Counted]) {
    let Some(given) = &plan.given else { return };
    for one in counted {
        let Some(pile) = given.sources.get(one.source).map(|source| &source.pile) else { continue };
        if let (Some(thickness), Some(width), Some(length)) = (pile.thickness, pile.width, pile.length) {
            fewer(&mut plan.draft.bought, (pile.wood.as_ref(), [thickness, width, length]), one.n);
        }
    }
}

/// The page where boards are written down that were bought, with what the plan still wants of the first of them.
pub fn to_write_down(app: &mut App, now: Now) {
    let next = still_to_buy(app).into_iter().find(|it| 0 < it.left);
    let Some((next, given)) = next.zip(app.plan.given.as_ref()) else { return };
    let (n, cost) = (next.left, next.each.and_then(|each| each.times(next.left).ok()));
    let Some(pile) = given.sources.get(next.source).map(|source| source.pile.clone()) else { return };
    super::on_rack(app, rack::Page::Buy, now);
    let (currency, units) = app.begins_with();
    let typing = app.speech.typing(units);
    let rack = &mut app.workshop.rack;
    for (nth, side) in [pile.thickness, pile.width, pile.length].into_iter().enumerate() {
        rack.form.put(nth, side.map_or(String::new(), |side| writing::length(side, typing)));
    }
    rack.form.put(3, n.to_string());
    let paid = cost.filter(|cost| cost.currency() == currency);
    rack.form.put(4, paid.map_or(String::new(), |paid| writing::money(paid, typing.sign)));
    rack.wood.clone_from(&pile.wood);
    rack.form.go(4);
}

/// So many boards were bought: what is asked in any job wants so many fewer.
pub fn were_bought(app: &mut App, (wood, size): (Option<&Key>, [Length; 3]), n: Count) {
    let plan = &mut app.plan;
    let asked = plan.asked.iter_mut().map(|(_, draft)| draft);
    for draft in std::iter::once(&mut plan.draft).chain(asked) {
        fewer(&mut draft.bought, (wood, size), n);
    }
}

impl Buying {
    fn read(&mut self, woods: &[Key], (typing, currency): (Typing, Currency)) -> Option<Boards> {
        let side = |form: &mut Form, nth| form.take(nth, |text| reading::length(text, typing));
        let size = [side(&mut self.form, 0)?, side(&mut self.form, 1)?, side(&mut self.form, 2)?];
        // As many as it takes, where no limit is said.
        let n = self.form.maybe(3, |text| reading::count_within(text, typing.sign, 1..=PILE_MOST))?.unwrap_or(UNLIMITED);
        let price = self.form.maybe(4, |text| reading::money(text, currency, typing.sign))?;
        Some(Boards { wood: woods.get(self.wood).cloned(), size, n, price })
    }
}
