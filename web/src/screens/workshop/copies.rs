//! Keep a copy, and bring one in: shown as counts and totals before it is accepted.

use super::super::count::saved_fact;
use super::super::{Screen, Seen};
use super::{back, known, say};
use crate::app::workshop::Tap;
use crate::app::workshop::copies::{Became, Coming};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::notice::{Trouble, notice, trouble};
use crate::view::{El, el};
use crate::words::en::{common, refusal, workshop as words};
use fivebar_core::ledger::line::document::DocumentTrouble;
use fivebar_core::ledger::merge::{Sums, Totals};
use fivebar_core::quantity::{Decimal, Wall};

/// How old the copy is, and what would be lost.
pub fn age(app: &App, seen: Seen<'_>) -> El<Msg> {
    let n = |n: usize| seen.speech.number(Decimal::from(n), 0, 0);
    let line = match known(app).copy {
        Some(copy) => {
            let day = seen.speech.day(Wall::new(copy.upto, seen.now.offset));
            words::last_copy(&day, &words::entries(copy.since, &n(copy.since)))
        }
        None if app.own.book.is_empty() => String::new(),
        None => {
            let all = app.own.book.len();
            format!("{} {}", words::NO_COPY_YET, words::would_be_lost(&words::entries(all, &n(all))))
        }
    };
    el("section", "age").kid(el("p", "t22 w8").text(words::ON_THIS_PHONE_ONLY)).kids((!line.is_empty()).then(|| el("p", "").text(line)))
}

/// The page of copies.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let said = app.workshop.said.as_ref().map(|became| match became {
        Became::Kept(name) => notice(words::kept_as(name)),
        Became::PutAway => notice(words::PUT_AWAY),
        Became::NoWay => notice(words::NO_WAY),
        Became::Added => notice(words::ADDED),
        Became::NotAdded(why) => {
            let said = refusal::not_saved(*why, 0);
            trouble(Trouble { what: said.what, why: said.why, safe: said.safe, to_do: said.to_do })
        }
    });
    let main = el("main", "scr")
        .kid(age(app, seen))
        .kids(said)
        .kid(key("key h88", words::KEEP_A_COPY, words::KEEP_UNDER, say(Tap::KeepCopy)))
        .kid(el("p", "t14 i2").text(words::EXAMPLE_STAYS_OUT))
        .kid(key("key h88", words::BRING_ONE_IN, words::BRING_UNDER, say(Tap::PickCopy)));
    let top = Head::new(words::WORKSHOP, words::KEEP_A_COPY).fact(saved_fact(app, seen)).fact(Fact::Plain(seen.speech.day(seen.now)));
    Screen::new("workshop/copies", head(top), main).foot(el("footer", "foot").kid(back()))
}

/// What a copy would bring.
pub fn coming(coming: &Coming, seen: Seen<'_>) -> Screen {
    let n = |n: usize| seen.speech.number(Decimal::from(n), 0, 0);
    let aside = [
        (0 < coming.lines.damaged).then(|| words::damaged(&n(coming.lines.damaged))),
        (0 < coming.lines.newer).then(|| words::newer(&n(coming.lines.newer))),
    ];
    let main = el("main", "scr")
        .kid(el("section", "card").kid(table(&coming.here, &coming.then, seen)))
        .kids(aside.into_iter().flatten().map(|line| el("p", "").text(line)))
        .kid(el("p", "w7").text(words::NOTHING_CHANGED));
    let keys = el("div", "g2").kid(key("key h88", common::LEAVE_IT, "", say(Tap::Close))).kid(key(
        "key solid h88",
        words::ADD_THESE,
        "",
        say(Tap::AddThese),
    ));
    let top = Head::new(words::WORKSHOP, words::BRING_ONE_IN).fact(Fact::Strong(words::made_on(&seen.speech.day(coming.made))));
    Screen::new("workshop/coming", head(top), main).foot(el("footer", "foot").kid(keys))
}

fn table(here: &Totals, then: &Totals, seen: Seen<'_>) -> El<Msg> {
    let whole = |n: u64| seen.speech.number(Decimal::from(n), 0, 0);
    let count =
        |name: &str, here: usize, then: usize| row(name, [whole(here as u64), whole(then.saturating_sub(here) as u64), whole(then as u64)]);
    let span = |span| seen.speech.span(span);
    let mut rows = vec![
        heads(),
        count(words::JOBS, here.jobs, then.jobs),
        count(words::PILES, here.piles, then.piles),
        count(words::PIECES, here.pieces as usize, then.pieces as usize),
        row(words::HOURS, [span(here.logged), span(then.logged.minus(here.logged)), span(then.logged)]),
    ];
    rows.extend(sums(&here.spent, &then.spent, words::spent, seen));
    rows.extend(sums(&here.taken, &then.taken, words::taken, seen));
    el("table", "cmp").kid(el("tbody", "").kids(rows))
}

/// A row for each currency: sums are never mixed.
fn sums(here: &Sums, then: &Sums, name: impl Fn(&str) -> String, seen: Seen<'_>) -> Vec<El<Msg>> {
    let written = |sum: Decimal, digits: u32| seen.speech.number(sum, digits as u8, digits as u8);
    then.iter()
        .map(|(currency, sum)| {
            let (own, digits) = (here.get(currency).copied().unwrap_or_default(), currency.digits());
            row(&name(currency.code()), [written(own, digits), written(sum.saturating_sub(own), digits), written(*sum, digits)])
        })
        .collect()
}

fn heads() -> El<Msg> {
    let head = |words: &'static str| el("th", "n").attr("scope", "col").text(words);
    el("tr", "").kid(el("th", "").text("")).kids([words::HERE, words::ADDS, words::THEN].map(head))
}

fn row(name: &str, [here, adds, then]: [String; 3]) -> El<Msg> {
    el("tr", "")
        .kid(el("th", "").attr("scope", "row").text(name.to_owned()))
        .kid(el("td", "n here").text(here))
        .kid(el("td", "n").text(adds))
        .kid(el("td", "n then").text(then))
}

/// A file that is no copy.
pub fn refused(why: &DocumentTrouble, seen: Seen<'_>) -> Screen {
    let said = words::no_copy(why, |n| seen.speech.number(Decimal::from(n), 0, 0));
    let told = trouble(Trouble { what: said.what, why: said.why, safe: said.safe, to_do: said.to_do });
    let main = el("main", "scr").kid(told).kid(key("key h88", words::BRING_ONE_IN, "", say(Tap::PickCopy)));
    Screen::new("workshop/no-copy", head(Head::new(words::WORKSHOP, words::BRING_ONE_IN)), main).foot(el("footer", "foot").kid(back()))
}
