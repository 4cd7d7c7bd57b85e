//! What a copy would bring, before it is accepted; why a file is no copy; and deleting everything.

use super::super::{Screen, Seen};
use super::copies::{age_of, shown, told};
use super::{back, say};
use crate::app::workshop::copies::Coming;
use crate::app::workshop::{NoCopy, Tap};
use crate::app::{App, Msg, photos};
use crate::parts::field::{Field, field};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, copies as words, photos as photo_words, workshop};
use fivebar_core::ledger::Clock;
use fivebar_core::ledger::merge::{Sums, Totals, totals};
use fivebar_core::quantity::{Decimal, Listed};

/// What a copy would bring.
pub fn screen(coming: &Coming, app: &App, seen: Seen<'_>) -> Screen {
    let n = |n: usize| seen.speech.number(Decimal::from(n), 0, 0);
    let (damaged, newer) = (coming.lines.damaged, coming.lines.newer);
    let aside = [(0 < damaged).then(|| words::damaged(damaged, &n(damaged))), (0 < newer).then(|| words::newer(newer, &n(newer)))];
    let (brings, lacks) = photos::coming(app, coming);
    let adds = !coming.fresh.is_empty() || 0 < brings;
    let of_photos =
        [(0 < brings).then(|| photo_words::brings(brings, &n(brings))), (0 < lacks).then(|| photo_words::lacks(lacks, &n(lacks)))];
    let said = if adds { words::ONLY_ADDS } else { words::NOTHING_NEW };
    let first = (adds && 0 < age_of(app, seen).entries)
        .then(|| key("key h56", words::KEEP_FIRST, words::KEEP_FIRST_UNDER, say(Tap::KeepCopy)).key("first"));
    let main = el("main", "scr")
        .kid(el("section", "card").kid(table(&coming.here, &coming.then, seen)))
        .kids(aside.into_iter().chain(of_photos).flatten().chain(ahead(coming, seen)).map(|line| el("p", "").text(line)))
        .kid(el("p", "").kid(el("b", "").text(words::NOTHING_CHANGED)).kid(el("span", "").text(format!(" {said}"))))
        .kids(app.workshop.said.as_ref().map(told))
        .kid(el("div", "push"))
        .kids(first);
    let leave = key("key h88 m", common::NOT_NOW, "", say(Tap::Close));
    let keys = if adds {
        el("div", "g2").kid(leave).kid(key("key solid h88 m", words::ADD_THESE, words::ONLY_ADDS_KEY, say(Tap::AddThese)))
    } else {
        leave
    };
    let top = Head::new(workshop::WORKSHOP, words::BRING_ONE_IN).fact(Fact::Strong(words::made_on(&seen.speech.day(coming.made))));
    Screen::new("workshop/coming", head(top), main).foot(el("footer", "foot").kid(keys))
}

/// One of the clocks is wrong: better put right before anything rests on what comes.
fn ahead(coming: &Coming, seen: Seen<'_>) -> Option<String> {
    let ahead = coming.book.last_stamp().map(|stamp| seen.now.at.until(stamp.0)).filter(|ahead| Clock::SAID < *ahead)?;
    let days = ahead.as_minutes() / (24 * 60);
    Some(words::ahead(days, &seen.speech.number(Decimal::from(days), 0, 0)))
}

fn table(here: &Totals, then: &Totals, seen: Seen<'_>) -> El<Msg> {
    let whole = |n: u64| seen.speech.number(Decimal::from(n), 0, 0);
    let count = |name: &str, here: usize, then: usize| {
        let adds = if then < here { below(&whole((here - then) as u64)) } else { whole((then - here) as u64) };
        row(name, [whole(here as u64), adds, whole(then as u64)])
    };
    let span = |span| seen.speech.span(span);
    let mut rows = vec![
        heads([words::HERE, words::ADDS, words::THEN]),
        count(words::JOBS, here.jobs, then.jobs),
        count(words::PILES, here.piles, then.piles),
        count(words::PIECES, here.pieces as usize, then.pieces as usize),
        row(words::HOURS, [span(here.logged), span(then.logged.minus(here.logged)), span(then.logged)]),
    ];
    rows.extend(sums(&here.spent, &then.spent, words::spent, seen));
    rows.extend(sums(&here.taken, &then.taken, words::taken, seen));
    el("table", "cmp bring").kid(el("tbody", "").kids(rows))
}

/// A figure below nothing: the copy takes something back.
fn below(written: &str) -> String {
    format!("−{written}")
}

/// A row for each currency: sums are never mixed.
fn sums(here: &Sums, then: &Sums, name: impl Fn(&str) -> String, seen: Seen<'_>) -> Vec<El<Msg>> {
    let written = |sum: Decimal, digits: u32| seen.speech.number(sum, digits as u8, digits as u8);
    then.iter()
        .map(|(currency, sum)| {
            let (own, digits) = (here.get(currency).copied().unwrap_or_default(), currency.digits());
            row(&name(currency.code()), [written(own, digits), written(sum.saturating_sub(own), digits), written(*sum, digits)])
        })
        .listed()
}

fn heads(words: [&'static str; 3]) -> El<Msg> {
    let head = |words: &'static str| el("th", "n").attr("scope", "col").text(words);
    el("tr", "").kid(el("th", "").text("")).kids(words.map(head))
}

fn row(name: &str, [here, adds, then]: [String; 3]) -> El<Msg> {
    el("tr", "")
        .kid(el("th", "").attr("scope", "row").text(name.to_owned()))
        .kid(el("td", "n here").text(here))
        .kid(el("td", "n").text(adds))
        .kid(el("td", "n then").text(then))
}

/// A file that is no copy.
pub fn refused(why: &NoCopy, seen: Seen<'_>) -> Screen {
    let said = match why {
        NoCopy::Trouble(why) => words::no_copy(why, |n| seen.speech.number(Decimal::from(n), 0, 0)),
        NoCopy::NotRead(why) => words::not_read(*why, |n| seen.speech.number(Decimal::from(n), 0, 0)),
    };
    let main =
        el("main", "scr").kid(shown(said)).kid(el("div", "push")).kid(key("key solid h88", words::CHOOSE_ANOTHER, "", say(Tap::PickCopy)));
    Screen::new("workshop/no-copy", head(Head::new(workshop::WORKSHOP, words::BRING_ONE_IN)), main).foot(el("footer", "foot").kid(back()))
}

/// Everything goes when the word is typed.
pub fn wipe(app: &App, seen: Seen<'_>) -> Screen {
    let here = totals(&app.own.book);
    let whole = |n: u64| seen.speech.number(Decimal::from(n), 0, 0);
    let fact = |name: &'static str, figure: String| el("tr", "").kid(el("td", "").text(name)).kid(el("td", "n").text(figure));
    let rows = [
        fact(words::JOBS, whole(here.jobs as u64)),
        fact(words::PILES, whole(here.piles as u64)),
        fact(words::PIECES, whole(u64::from(here.pieces))),
        fact(words::HOURS, seen.speech.span(here.logged)),
    ];
    let typed = fivebar_core::quantity::in_small(app.workshop.text.trim()) == words::WIPE_WORD;
    let asked = Field { id: "wipe", label: words::WIPE_TYPE.into(), value: app.workshop.text.clone(), fleeting: true, ..Field::default() };
    let main = el("main", "scr")
        .kid(el("p", "").text(words::WIPE_GOES))
        .kid(el("section", "card").kid(el("table", "facts").kid(el("tbody", "").kids(rows))))
        .kid(super::copies::age(app, seen))
        .kid(el("p", "").text(words::WIPE_STAYS))
        .kid(field(asked, |text| say(Tap::Typed(text))))
        .kid(el("div", "push"))
        .kid(key("key h88", words::WIPE, words::WIPE_UNDER, say(Tap::Wipe)).flag("disabled", !typed));
    let leave = key("key solid h56", common::NOT_NOW, "", say(Tap::Close));
    Screen::new("workshop/wipe", head(Head::new(workshop::WORKSHOP, words::WIPE)), main).foot(el("footer", "foot").kid(leave))
}
