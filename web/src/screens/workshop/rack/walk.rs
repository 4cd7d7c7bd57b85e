//! A walk round the rack: one pile at a time, as many as the book says, fewer or more; at the end what drifted.

use super::super::super::slots::{Slot, figures, refused, under_thumb};
use super::super::super::{Screen, Seen, undo};
use super::ask::{in_place, in_words};
use super::row::{given_up, kept_apart, lying, name};
use super::{RackTap, number, of_book, say};
use crate::app::workshop::Tap;
use crate::app::workshop::rack::walk::{Counted, Walk};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::{done_key, key};
use crate::view::{El, el};
use crate::words::en::{common, rack as words};
use fivebar_core::quantity::{Count, Listed};
use fivebar_core::sheet::stock::{self, StockPile};

/// The pile in front of the maker, or the end of the walk.
pub fn screen(walk: &Walk, app: &App, seen: Seen<'_>) -> Screen {
    match walk.here().and_then(|at| stock::pile(&app.shelf().shop(seen.now.at), at).ok()) {
        Some(pile) if walk.typing => typing(&pile, (walk, app), seen),
        Some(pile) => shown(&pile, (walk, app), seen),
        None => ended(walk, app, seen),
    }
}

fn top(pile: &StockPile, walk: &Walk, seen: Seen<'_>) -> El<Msg> {
    let nth = words::nth_of(&number(walk.at.saturating_add(1), seen), &number(walk.piles.len(), seen));
    let place = pile.place.clone().unwrap_or_else(|| words::WALK_ROUND.to_owned());
    head(Head::new(place, name(pile)).fact(Fact::Strong(nth)))
}

fn shown(pile: &StockPile, (walk, app): (&Walk, &App), seen: Seen<'_>) -> Screen {
    let n = |n: Count| seen.speech.count(n);
    let last = words::looked_last(&n(pile.on_rack), &seen.speech.day(pile.touched));
    let (found, differs) = (walk.found.unwrap_or(pile.on_rack), walk.found.is_some());
    let keys = el("div", "steps")
        .kid(key("key h88", words::FEWER, "", say(RackTap::Fewer)).flag("disabled", found == 0))
        .kid(el("p", "t60 w8").attr("role", "status").text(n(found)))
        .kid(key("key h88", words::MORE, "", say(RackTap::More)));
    let means = differs.then(|| el("p", "w7").text(means(pile, found, seen)));
    let why = differs.then(|| in_words("why", words::WHY, app));
    let told = if differs { words::found_n(&n(found)) } else { words::as_it_is(&n(found)) };
    let main = el("main", "scr form racked")
        .kids(given_up(app, seen))
        .kid(lying(&of_book(pile, app), seen))
        .kid(el("p", "i2").text(last))
        .kids(refused(app, seen))
        // Nothing comes or goes above the keys: they stay under the thumb.
        .kid(keys)
        .kids(means)
        .kids(why)
        .kid(el("div", "push"))
        .kid(el("div", "g2").kid(key("key soft h48", words::TYPE_IT, "", say(RackTap::TypeIt))).kid(key(
            "key soft h48",
            words::END_WALK,
            "",
            Msg::Workshop(Tap::Close),
        )));
    let ways =
        el("div", "um").kid(key("key solid t22", told, "", say(RackTap::Same))).kid(key("key h56", words::SKIP, "", say(RackTap::Skip)));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(ways);
    in_place(Screen::new("workshop/rack-walk", top(pile, walk, seen), main).foot(foot), app)
}

/// What the difference would mean, before it is written.
fn means(pile: &StockPile, found: Count, seen: Seen<'_>) -> String {
    let n = |n: Count| seen.speech.count(n);
    let drift = pile.drift_of(found);
    let said = words::drift(drift, [&n(drift.told), &n(drift.found), &n(drift.missing.max(drift.more))]);
    kept_apart(pile, found, seen).map_or(said.clone(), |kept| format!("{said} {kept}."))
}

fn typing(pile: &StockPile, (walk, app): (&Walk, &App), seen: Seen<'_>) -> Screen {
    let slots = [Slot::whole(words::HOW_MANY_LIE)];
    let form = &app.workshop.rack.form;
    let pad = under_thumb(form, &slots, (pile.haul.units, seen), |press| say(RackTap::Press(press)));
    let main = el("main", "scr form racked").kid(lying(&of_book(pile, app), seen)).kid(figures(form, &slots, |nth| say(RackTap::At(nth))));
    let main = main.kid(el("div", "push")).kids(pad);
    let keys = el("div", "um").kid(done_key("key solid t22", common::DONE, "", say(RackTap::Done))).kid(key(
        "key",
        common::NOT_NOW,
        "",
        Msg::Workshop(Tap::Close),
    ));
    in_place(Screen::new("workshop/rack-walk", top(pile, walk, seen), main).foot(el("footer", "foot").kid(keys)), app)
}

/// What drifted, each with the way to strike it; what was counted and holds is only numbered.
fn ended(walk: &Walk, app: &App, seen: Seen<'_>) -> Screen {
    let stands = |it: &&Counted| app.shelf().book.entry(it.entry).is_some_and(|(_, struck)| !struck);
    let counts: Vec<&Counted> = walk.counts.iter().filter(stands).listed();
    let drifted: Vec<&Counted> = counts.iter().copied().filter(|it| it.found != it.before.on_rack).listed();
    let title = words::walked(&number(counts.len(), seen), &number(walk.piles.len(), seen));
    let rows = drifted.iter().map(|it| drift(it, seen));
    let list = (!drifted.is_empty()).then(|| el("section", "card list").kids(rows));
    let none =
        drifted.is_empty().then(|| el("p", "t22 w8").text(if counts.is_empty() { words::NONE_COUNTED } else { words::NONE_DRIFTED }));
    let main = el("main", "scr racked").kids(none).kids(list).kids(given_up(app, seen));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(key("key h56", common::DONE, "", Msg::Workshop(Tap::Close)));
    let top = Head::new(words::WALK_ROUND, title);
    in_place(Screen::new("workshop/rack-walked", head(top), main).foot(foot), app)
}

fn drift(it: &Counted, seen: Seen<'_>) -> El<Msg> {
    let said = el("span", "op").kid(el("b", "").text(name(&it.before))).kid(el("span", "t14 i2").text(means(&it.before, it.found, seen)));
    el("div", "dl").key(it.entry.to_string()).kid(said).kid(key("key h56", words::STRIKE, "", say(RackTap::Strike(it.entry))))
}
