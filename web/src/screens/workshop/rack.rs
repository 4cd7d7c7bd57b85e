//! The rack: what is looked for, and the piles that will do, each with its section and its length drawn to one scale.

mod ask;
mod buy;
mod choose;
mod pile;
mod row;
mod walk;

use super::super::left::not_cut;
use super::super::{Screen, Seen};
use super::{page, strong};
use crate::app::plan::after_the_saw;
use crate::app::workshop::Tap;
use crate::app::workshop::rack::{Choice, Page, RackTap, is_looking};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, rack as words, woods, workshop};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Count, Decimal, Id, Length};
use fivebar_core::sheet::stock::find::{Found, From, Order, Thick, Wanted, find};
use fivebar_core::sheet::stock::{self, LOOK_AGAIN_WEEKS, StockPile};

fn say(tap: RackTap) -> Msg {
    Msg::Workshop(Tap::Rack(tap))
}

/// How it stands, on one line.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let piles = fold::hauls(&app.shelf().book).flat_map(|haul| haul.piles.into_iter().map(move |pile| (haul.id, pile)));
    let after = after_the_saw(app);
    let pieces = piles.fold(0u32, |sum, (haul, pile)| {
        let there = Lying { haul, pile: pile.id };
        sum.saturating_add(pile.on_rack().saturating_sub(not_cut(&after, there, pile.on_rack())))
    });
    if pieces == 0 { workshop::NONE_YET.to_owned() } else { common::pieces(pieces, &seen.speech.count(pieces)) }
}

/// The rack, or what lies over it.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    match &app.workshop.rack.page {
        Page::List => list(app, seen),
        Page::Find => ask::find(app, seen),
        Page::Choose(choice) => choose::screen(*choice, app, seen),
        Page::Pile(at) => pile::screen(*at, app, seen),
        Page::Ask(at, ask) => ask::screen((*at, *ask), app, seen),
        Page::Walk(walk) => walk::screen(walk, app, seen),
        Page::Buy => buy::screen(app, seen),
    }
}

/// Everything on the rack: of what plans leave of their boards only what is cut off.
fn piles(app: &App, seen: Seen<'_>) -> Vec<StockPile> {
    let after = after_the_saw(app);
    stock::stock(&app.shelf().shop(seen.now.at)).unwrap_or_default().into_iter().map(|pile| lies_of(pile, &after)).collect()
}

/// One pile as it lies there.
fn lies(pile: StockPile, app: &App) -> StockPile {
    lies_of(pile, &after_the_saw(app))
}

/// One pile as the book has it, where it is counted: what is not cut off yet is told beside it.
fn of_book(pile: &StockPile, app: &App) -> StockPile {
    StockPile { uncut: lies(pile.clone(), app).uncut, ..pile.clone() }
}

fn lies_of(pile: StockPile, after: &[(Lying, Count)]) -> StockPile {
    let uncut = not_cut(after, pile.at, pile.on_rack);
    pile.lying(uncut)
}

fn list(app: &App, seen: Seen<'_>) -> Screen {
    let all = piles(app, seen);
    let bought = key("key soft h56", words::BOUGHT_BOARDS, "", say(RackTap::Show(Page::Buy)));
    if all.is_empty() {
        let main = el("main", "scr racked").kid(el("p", "").text(workshop::RACK_EMPTY)).kid(el("div", "push")).kid(bought);
        return page(app, ("workshop/rack", workshop::RACK), main, seen);
    }
    let stale = all.iter().filter(|pile| pile.is_stale).count();
    // One key for the walk: where piles wait to be looked at, it stands over the boards.
    let walk = (stale == 0).then(|| key("key soft h56", words::WALK_ROUND, "", say(RackTap::WalkRound)));
    let ways = el("div", if walk.is_some() { "g2" } else { "one" }).kids(walk).kid(bought);
    let longest = row::longest(&all);
    let rack = &app.workshop.rack;
    let found = find(all, &rack.wanted);
    let drawn = row::Drawn { longest, mark: rack.wanted.length };
    let main = el("main", "scr racked")
        .kids(row::given_up(app, seen))
        .kid(sought(app, seen))
        .kid(choices(app))
        .kid(summary(&found, app, seen))
        .kids((0 < stale).then(|| walk_round(stale, seen)))
        .kids(found.piles.is_empty().then(|| el("p", "t22 w8").text(words::NOTHING_LIKE_IT)))
        .kids(row::groups(&found.piles, rack.wanted.order, drawn, seen))
        .kids(more(words::SHORTER, if rack.with_shorter { &found.shorter } else { &[] }, drawn, seen))
        .kids(more(words::NO_SIZE, &found.no_size, drawn, seen))
        .kid(el("div", "push"))
        .kids(shorter(&found, rack.with_shorter, seen))
        .kid(ways);
    let page = page(app, ("workshop/rack", workshop::RACK), main, seen);
    let top = Head::new(workshop::WORKSHOP, workshop::RACK).fact(super::saved_fact(app, seen)).fact(strong(seen.speech.day(seen.now)));
    Screen { head: head(top), ..page }
}

/// A length in the workshop's units, with its unit.
fn sized(length: Length, app: &App, seen: Seen<'_>) -> String {
    let units = app.begins_with().1;
    format!("{} {}", seen.speech.length(length, units), common::length_unit(units))
}

fn sought(app: &App, seen: Seen<'_>) -> El<Msg> {
    let wanted = &app.workshop.rack.wanted;
    let long = wanted.length.map(|length| sized(length, app, seen));
    let thick = wanted.thickness.map(|thick| match thick {
        Thick::AtLeast(side) => (sized(side, app, seen), false),
        Thick::Just(side) => (sized(side, app, seen), true),
    });
    let wide = wanted.width.map(|side| sized(side, app, seen));
    let shown = words::looked_for((long.as_deref(), wide.as_deref()), thick.as_ref().map(|(side, just)| (side.as_str(), *just)));
    let open = el("button", "what")
        .attr("type", "button")
        .on_tap(say(RackTap::Show(Page::Find)))
        .kid(el("span", "s").text(words::FIND))
        .kid(worded("span", "t22 w8", shown));
    let clear = is_looking(wanted).then(|| key("key h48", words::CLEAR, "", say(RackTap::Clear)));
    el("div", "find").kid(open).kids(clear)
}

fn choices(app: &App) -> El<Msg> {
    let (wanted, known) = (&app.workshop.rack.wanted, super::known(app));
    let wood = wanted.wood.as_ref().map_or(words::ANY.to_owned(), |wood| woods::among(wood, &known.wood.woods));
    let one = |what: &'static str, chosen: String, choice: Choice| {
        el("button", "key left h56")
            .attr("type", "button")
            .key(what)
            .on_tap(say(RackTap::Show(Page::Choose(choice))))
            .kid(el("span", "s").text(what))
            .kid(el("span", "").text(chosen))
    };
    el("div", "g3").kid(one(words::WOOD, wood, Choice::Wood)).kid(one(words::FROM, from(wanted.from, app), Choice::From)).kid(one(
        words::ORDER,
        words::order(wanted.order).to_owned(),
        Choice::Order,
    ))
}

/// Where wood is looked for from.
fn from(from: From, app: &App) -> String {
    match from {
        From::Anywhere => words::ANYWHERE.to_owned(),
        From::Bought => words::BOUGHT_ONLY.to_owned(),
        From::Supplier(id) => supplier(id, app),
    }
}

fn supplier(id: Id, app: &App) -> String {
    app.shelf().name(id).cloned().unwrap_or_else(|| words::FORGOTTEN_SUPPLIER.to_owned())
}

fn number(n: usize, seen: Seen<'_>) -> String {
    seen.speech.number(Decimal::from(n), 0, 0)
}

fn summary(found: &Found, app: &App, seen: Seen<'_>) -> El<Msg> {
    let wanted: &Wanted = &app.workshop.rack.wanted;
    let pieces = found.pieces();
    let pieces = common::pieces(pieces, &seen.speech.count(pieces));
    let all = found.piles.len();
    let said = match all == found.of {
        true => workshop::pieces_in_piles(&pieces, all, &number(all, seen)),
        false => words::found(&number(all, seen), &number(found.of, seen), &pieces),
    };
    let mark = wanted.length.map(|length| worded("span", "t14", words::mark(&sized(length, app, seen))));
    el("p", "row").kid(el("b", "").text(said)).kids(mark)
}

fn walk_round(stale: usize, seen: Seen<'_>) -> El<Msg> {
    let weeks = seen.speech.number(Decimal::from(LOOK_AGAIN_WEEKS), 0, 0);
    let said = words::not_looked_at(stale, &number(stale, seen), &weeks);
    el("div", "stale").kid(el("p", "w7").text(said)).kid(key("key h56", words::WALK_ROUND, "", say(RackTap::WalkRound)))
}

/// Piles that may do, or would but for their length, under a heading of their own.
fn more(title: &'static str, piles: &[StockPile], drawn: row::Drawn, seen: Seen<'_>) -> Option<El<Msg>> {
    let rows = piles.iter().map(|pile| row::row(pile, drawn, true, seen));
    (!piles.is_empty()).then(|| el("section", "racks").key(title).kid(el("h2", "aged").text(title)).kids(rows))
}

fn shorter(found: &Found, shown: bool, seen: Seen<'_>) -> Option<El<Msg>> {
    let n = found.shorter.len();
    let all = n.saturating_add(found.piles.len()).saturating_add(found.no_size.len());
    let words = if shown { words::LEAVE_SHORTER.to_owned() } else { words::shorter(n, &number(n, seen), &number(all, seen)) };
    (0 < n).then(|| key("key soft h56", words, "", say(RackTap::Shorter(!shown))))
}

/// Whether one is in the order that parts the rack by haul.
fn by_haul(order: Order) -> bool {
    order == Order::Oldest
}
