//! Price: what is for sale, what is agreed, an offer, and the side of the phone that is turned to a buyer.

pub mod agree;
mod asks;
mod deal;
pub mod face;
mod fair;
mod figures;
pub mod gallery;
mod guesses;
pub mod list;
pub mod more;
mod offer;
mod paper;
mod parts;
mod pay;
mod quick;
mod scale;
mod verdict;
pub mod waiting;
mod ways;

use super::slots::is_whole;
use super::{Screen, Seen, said};
use crate::app::price::{Over, Tap};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::notice::trouble;
use crate::parts::pad;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::Speech;
use crate::words::en::{common, price as words, refusal, waiting as waiting_words};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Count, Decimal, Listed, Money, Units};
use fivebar_core::refusal::Refusal;

/// The screen as it stands. Out of sight nothing of it is drawn: a phone keeps a picture of it.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    if app.price.covered {
        let mut covered = Screen::new("price/covered", head(Head::new("", words::COVERED)), el("main", "")).says_it();
        covered.bare = true;
        return covered;
    }
    over(app, seen).unwrap_or_else(|| list::screen(app, seen))
}

/// What lies over the list; none where it is no longer there.
fn over(app: &App, seen: Seen<'_>) -> Option<Screen> {
    match &app.price.over {
        Over::Nothing => None,
        Over::Offer(bargain) => offer::screen(bargain, app, seen),
        Over::More(job) => more::screen(*job, app, seen),
        Over::Tag(setting) => more::tag(setting, app, seen),
        Over::Agree(agree) => agree::screen(agree, app, seen),
        Over::Deal(deal) => deal::screen(deal, app, seen),
        Over::Parts(parts) => parts::screen(parts, app, seen),
        Over::Consign(consign) => gallery::to(consign, app, seen),
        Over::Gallery(back) => gallery::back(back, app, seen),
        Over::Paper => paper::screen(app, seen),
        Over::Quick => Some(quick::screen(app, seen)),
        Over::Fair(stall) => Some(fair::screen(stall, app, seen)),
        Over::Waiting(waits) => waiting::screen(waits, app, seen),
        Over::Ways(ways) => ways::screen(ways, app, seen),
    }
}

/// A sum without its currency: `130`, `184.50`.
fn bare(sum: Money, speech: &dyn Speech) -> String {
    let digits = if sum.amount().fract().is_zero() { 0 } else { minor(sum) };
    speech.number(sum.amount(), digits, minor(sum))
}

/// A sum without its currency, to the minor unit: `184.00`.
fn exact(sum: Money, speech: &dyn Speech) -> String {
    speech.number(sum.amount(), minor(sum), minor(sum))
}

/// The band of doubt is there, it comes, or it can't be reckoned.
fn doubt(has_one: bool, is_done: bool) -> &'static str {
    match (has_one, is_done) {
        (true, _) => waiting_words::FROM_GUESSES,
        (false, false) => waiting_words::BAND_COMES,
        (false, true) => waiting_words::NO_BAND,
    }
}

/// The end brings more than is asked for so many; the tag as it is written is named where it is that.
fn end_said(n: Count, [end, ask]: [Money; 2], tag: Option<Money>, seen: Seen<'_>) -> String {
    words::end_over_ask(n, [&bare(end, seen.speech), &bare(ask, seen.speech)], tag == Some(ask))
}

/// So small that its minor unit says something.
fn in_minor_units(sum: Money) -> bool {
    sum.amount() < Decimal::from(20)
}

/// A mark that promises a least, without its currency; above some tens the minor unit says nothing, and up the promise is kept.
fn mark(sum: Money, speech: &dyn Speech) -> String {
    mark_beside(sum, [], speech)
}

/// The same beside sums that are said: to the minor unit where one of them pays it and lies under its whole unit, and would seem to fall short.
fn mark_beside<const N: usize>(sum: Money, said: [Option<Money>; N], speech: &dyn Speech) -> String {
    let whole = sum.amount().ceil();
    let seems_short = |said: &Money| sum.amount() <= said.amount() && said.amount() < whole;
    if in_minor_units(sum) || said.iter().flatten().any(seems_short) { bare(sum, speech) } else { speech.number(whole, 0, 0) }
}

fn minor(sum: Money) -> u8 {
    u8::try_from(sum.currency().digits()).unwrap_or(2)
}

/// An amount for an hour, in a currency's digits: `$19.09`.
fn per_hour(amount: Decimal, like: Money, speech: &dyn Speech) -> String {
    Money::book(amount, like.currency()).map_or_else(|_| speech.number(amount, 2, 2), |sum| speech.money(sum))
}

/// Why nothing can be shown of it.
fn refused(place: &'static str, refusal: &Refusal, seen: Seen<'_>) -> Screen {
    let main = el("main", "").kid(trouble(said::refused(refusal, seen))).kid(back());
    Screen::new(place, head(Head::new("", words::FOR_SALE)), main)
}

fn back() -> El<Msg> {
    key("key h48", words::TO_ALL, "", Msg::Price(Tap::Close))
}

fn leave() -> El<Msg> {
    key("key h48", common::NOT_NOW, "", Msg::Price(Tap::Close))
}

/// The keys for how many: one, two, three, and all where there are more; where there are many, one fewer and one more of three and above.
fn pieces(chosen: Count, free: Count, seen: Seen<'_>, tap: impl Fn(Count) -> Msg) -> Option<El<Msg>> {
    let counts: Vec<Count> = [1, 2, 3].into_iter().filter(|n| *n <= free).chain((3 < free).then_some(free)).listed();
    if counts.len() < 2 {
        return None;
    }
    let by_one = (4 < free && 3 <= chosen).then(|| by_one((chosen, free), seen, &tap));
    let segs = counts.iter().map(|n| Seg::new(words::pieces_key(*n, &seen.speech.count(*n)), *n == chosen)).listed();
    let keys = even(words::HOW_MANY, segs, move |nth| tap(counts.get(nth).copied().unwrap_or(1)));
    Some(el("div", "").kid(keys).kids(by_one))
}

/// One fewer, so many of those that are free, one more.
fn by_one((chosen, free): (Count, Count), seen: Seen<'_>, tap: impl Fn(Count) -> Msg) -> El<Msg> {
    let step = |word: &'static str, to: Count| key("key h48", word, "", tap(to.clamp(1, free)));
    let said = words::so_many_of(&seen.speech.count(chosen), &seen.speech.count(free));
    el("div", "row mid by1")
        .kid(step(words::ONE_FEWER, chosen.saturating_sub(1)))
        .kid(el("p", "w7").attr("role", "status").text(said))
        .kid(step(words::ONE_MORE, chosen.saturating_add(1)))
}

/// A question, what was typed, why it was not taken, and the pad.
fn typing(ask: &str, typed: &crate::app::entry::Typed, unit: &str, seen: Seen<'_>) -> Vec<El<Msg>> {
    let mut shown = vec![el("h2", "ink1").text(ask.to_owned()), pad::entry(&typed.text, unit, typed.wrong.is_some())];
    shown.extend(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric))));
    shown.push(el("div", "push"));
    shown.push(pad::pad(Some(point(seen)).filter(|_| !is_whole(unit)), |press| Msg::Price(Tap::Press(press))));
    shown
}

fn point(seen: Seen<'_>) -> char {
    if seen.speech.sign() == Sign::Comma { ',' } else { '.' }
}

/// Chips of which one stays chosen.
fn choices(words: Vec<(String, bool)>, tap: impl Fn(usize) -> Msg) -> El<Msg> {
    chips("key h56", words.into_iter().map(|(word, chosen)| Chip::choice(word, chosen)).listed(), tap)
}

/// A row of a table of figures: what, and how much.
fn fact(what: &str, figure: String) -> El<Msg> {
    el("tr", "").kid(el("td", "").text(what.to_owned())).kid(el("td", "n").text(figure))
}

/// A row that the others lead to.
fn strong(what: &str, figure: String) -> El<Msg> {
    el("tr", "sum").kid(el("td", "").text(what.to_owned())).kid(el("td", "n").text(figure))
}
