//! Keep a copy: how old the last one is and what would be lost, drawn and said; what became of a new one.

use super::super::count::saved_fact;
use super::super::jobs::photos::size;
use super::super::{Screen, Seen};
use super::{back, open, say};
use crate::app::photos::{self as app_photos, PhotoTap};
use crate::app::workshop::copies::Became;
use crate::app::workshop::{Over, Tap};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::notice::{Trouble, notice, trouble};
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::refusal::{self, Said};
use crate::words::en::{common, copies as words, photos as photo_words, workshop};
use fivebar_core::quantity::{Decimal, Listed, Span, Wall};
use fivebar_core::sheet::copy::CopyAge;

/// The age of the copy of the maker's own book; the example is in none.
pub fn age_of(app: &App, seen: Seen<'_>) -> CopyAge {
    app.own.copy_age(seen.now.at)
}

/// "133 pieces, 14 h 30 and 1 sale": what was written since the last copy; none where that is nothing.
pub fn since(age: &CopyAge, seen: Seen<'_>) -> Option<String> {
    let pieces = (0 < age.pieces).then(|| common::pieces(age.pieces, &seen.speech.count(age.pieces)));
    let logged = (Span::minutes(1) <= age.logged).then(|| seen.speech.span(age.logged).replace(' ', "\u{a0}"));
    let entries = words::entries(age.entries, &seen.speech.number(Decimal::from(age.entries), 0, 0));
    let sold = [(age.sales, words::sales as fn(u32, &str) -> String), (age.deposits, words::payments)];
    let sold = sold.into_iter().filter(|(n, _)| 0 < *n).map(|(n, word)| word(n, &seen.speech.count(n)));
    (0 < age.entries).then(|| words::written(&pieces.into_iter().chain(logged).chain(sold).listed(), &entries))
}

/// How old the copy is, and what would be lost.
pub fn age(app: &App, seen: Seen<'_>) -> El<Msg> {
    let age = age_of(app, seen);
    let day = age.last.map(|copy| seen.speech.day(Wall::new(copy.at, seen.now.offset)));
    said(&age, day, seen)
}

fn said(age: &CopyAge, when: Option<String>, seen: Seen<'_>) -> El<Msg> {
    let since = since(age, seen);
    let line = match (when, since) {
        (Some(when), since) => words::last_copy(&when, since.as_deref()),
        (None, Some(lost)) => words::never_kept(&lost),
        (None, None) => words::NOTHING_YET.to_owned(),
    };
    el("section", "age").kid(el("p", "t22 w8").text(words::ON_THIS_PHONE_ONLY)).kid(el("p", "").text(line))
}

/// The key on the first page: with an empty book there is only one to bring in.
pub fn first_key(app: &App) -> El<Msg> {
    let (name, under) =
        if app.own.book.is_empty() { (words::BRING_ONE_IN, words::BRING_UNDER) } else { (words::KEEP_A_COPY, words::KEEP_UNDER) };
    key("key h88", name, under, open(Over::Copies)).key("copies")
}

/// The page of copies.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let age = age_of(app, seen);
    let days = age.last.map(|copy| i64::from(Wall::new(copy.at, seen.now.offset).day().until(seen.now.day()).max(0)));
    let ago = days.map(|days| words::days_ago(days, &seen.speech.number(Decimal::from(days), 0, 0)));
    let text = matches!(app.workshop.said, Some(Became::NoWay));
    let text = text.then(|| key("key h88", words::COPY_AS_TEXT, words::COPY_AS_TEXT_UNDER, say(Tap::CopyText)).key("text"));
    let main = el("main", "scr copies")
        .kid(said(&age, ago, seen))
        .kids(drawn(&age, seen))
        .kids(photos(app, seen))
        .kid(key("key h88", words::KEEP_A_COPY, words::KEEP_UNDER, say(Tap::KeepCopy)).key("keep"))
        .kids(app.workshop.said.as_ref().map(told))
        .kids(text)
        .kid(el("p", "t14 i2").text(words::EXAMPLE_STAYS_OUT))
        .kid(el("p", "t14 i2").text(words::kept(app.here.kept)))
        .kids(app.here.no_spare.then(|| el("p", "t14 i2").key("spare").text(words::NO_SPARE)))
        .kid(el("div", "push"))
        .kid(key("key h88", words::BRING_ONE_IN, words::BRING_UNDER, say(Tap::PickCopy)).key("bring"))
        .kid(key("key soft h56", words::WIPE, words::WIPE_UNDER, open(Over::Wipe)).key("wipe"));
    let top = Head::new(workshop::WORKSHOP, words::KEEP_A_COPY).fact(saved_fact(app, seen)).fact(Fact::Plain(seen.speech.day(seen.now)));
    Screen::new("workshop/copies", head(top), main).foot(el("footer", "foot").kid(back()))
}

/// Whether the copy has the photos, with their size; and how many are not on this phone.
fn photos(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let n = |n: usize| seen.speech.number(Decimal::from(n), 0, 0);
    let Some((here, bytes, missing)) = app_photos::here(app) else { return vec![] };
    let choice = (0 < here).then(|| {
        let said = photo_words::many(here, &n(here), &size(bytes, seen));
        let chip = |words: &'static str, with: bool| {
            let pressed = if app.photos.left_out == with { "false" } else { "true" };
            key("key h56", words, "", Msg::Photo(PhotoTap::InCopy(with))).attr("aria-pressed", pressed)
        };
        let keys = el("div", "g2").kid(chip(photo_words::WITH, true)).kid(chip(photo_words::WITHOUT, false));
        el("section", "one").key("photos").kid(el("h2", "ink1").text(said)).kid(keys)
    });
    let missing = (0 < missing).then(|| el("p", "").key("missing").text(photo_words::missing(missing, &n(missing))));
    choice.into_iter().chain(missing).collect()
}

/// What became of the last copy.
pub fn told(became: &Became) -> El<Msg> {
    let what: El<Msg> = match became {
        Became::Shared(name) => notice(words::shared(name)),
        Became::Downloaded(name) => notice(words::downloaded(name)),
        Became::Text => notice(words::TEXT_KEPT),
        Became::PutAway => notice(words::PUT_AWAY),
        Became::NoPhotos => notice(words::NO_PHOTOS),
        Became::NoWay => notice(words::NO_WAY),
        Became::NoText => notice(words::NO_TEXT),
        Became::Adding => notice(words::ADDING),
        Became::Added => notice(words::ADDED),
        Became::NotAdded(why) => shown(refusal::not_added(*why)),
        Became::NotWiped(why) => shown(words::not_wiped(*why)),
    };
    el("div", "told").key("told").attr("role", "status").kid(what)
}

/// Trouble, worded.
pub fn shown(said: Said) -> El<Msg> {
    trouble(Trouble { what: said.what, why: said.why, safe: said.safe, to_do: said.to_do })
}

/// The last copy and now on one line of days: what is solid is safe elsewhere.
fn drawn(age: &CopyAge, seen: Seen<'_>) -> Option<El<Msg>> {
    let copy = age.last?;
    let days = |span: Span| span.as_minutes() as f64 / (24.0 * 60.0);
    let old = days(copy.at.until(seen.now.at)).max(0.0);
    let long = (old * 7.0 / 3.0).max(7.0);
    let now = long * 6.0 / 7.0;
    let tick = [1.0, 7.0, 30.0].into_iter().find(|tick| long / tick <= 31.0).unwrap_or(365.0);
    let at = now - old;
    let day = seen.speech.day(Wall::new(copy.at, seen.now.offset));
    let scale_of = Scale {
        width: seen.page.column(),
        from: 0.0,
        to: long,
        rhythm: Some(Rhythm { tick, long: tick * 7.0 }),
        marks: vec![Mark::new(at, Kind::Ink, words::LAST_COPY, day), Mark::new(now, Kind::Ink, words::NOW, seen.speech.clock(seen.now))],
        fills: vec![Fill { from: 0.0, to: at, look: Look::Ink }, Fill { from: at, to: now, look: Look::Open }],
        ..Scale::default()
    };
    Some(el("div", "on-board").kid(scale(&scale_of, "")))
}
