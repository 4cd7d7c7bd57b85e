//! The guesses that waiting is reckoned from: asked one at a time, blank until said; then all of them in one look.

use super::waiting::say;
use super::{Screen, Seen, bare, choices, typing};
use crate::app::price::waiting::{Asked, OF_FIVE, WaitTap, all_buy};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::screens::jobs::called;
use crate::view::{El, el};
use crate::words::en::{common, deal, price, refusal, waiting as words};
use fivebar_core::ledger::fold::Guesses;
use fivebar_core::quantity::{Decimal, Listed, Money};
use fivebar_core::sheet::waiting::{Question, WaitingSheet};

/// Weeks from today.
const WEEKS: [i32; 6] = [1, 2, 3, 4, 6, 8];

/// The question asked just now, or all the answers.
pub fn screen(sheet: &WaitingSheet, asked: &Asked, (app, seen): (&App, Seen<'_>)) -> Screen {
    let top = head(Head::new(called(sheet.job, &sheet.name, app, seen), words::YOUR_GUESSES));
    let away = || key("key h48", common::NOT_NOW, "", say(WaitTap::Away));
    match asked.now {
        Some(question) => {
            let is_beside = Question::BESIDES.contains(&question);
            let not_now = if is_beside { key("key h48", common::NOT_NOW, "", say(WaitTap::Answers)) } else { away() };
            let main = el("main", "price").kids(one(question, asked, seen)).kid(not_now);
            Screen::new("price/guess", top, main)
        }
        None => {
            let foot = el("footer", "foot").kid(done_key("key solid h88", words::RECKON, "", say(WaitTap::Save))).kid(away());
            Screen::new("price/guesses", top, el("main", "price").kids(all(asked, seen))).foot(foot)
        }
    }
}

fn one(question: Question, asked: &Asked, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (at, currency) = (bare(asked.at, seen.speech), asked.at.currency());
    let (ask, unit, hint) = match question {
        Question::Asks => (words::how_many_ask(&at), words::PEOPLE, ""),
        Question::Buys => (words::how_many_buy(&at), words::OF_FIVE, ""),
        Question::Ratio if all_buy(&asked.said) => (words::how_many_times(&less(asked, seen)), words::TIMES, words::ALL_BUY),
        Question::Ratio => (words::how_many_times(&less(asked, seen)), words::TIMES, words::USUAL_RATIO),
        Question::By => return by_when(seen),
        Question::EachAsk => (words::HOW_LONG_EACH.to_owned(), words::MINUTES, words::NOTHING_TYPED),
        Question::EachDay => (words::COSTS_A_DAY.to_owned(), currency.code(), words::COSTS_A_DAY_HINT),
        Question::NoShow => (words::HOW_MANY_NEVER.to_owned(), words::OF_FIVE, words::NOTHING_TYPED),
        Question::End => (words::WORTH_THEN.to_owned(), currency.code(), words::WORTH_HINT),
    };
    let hint = (!hint.is_empty()).then(|| el("p", "t14 i2").text(hint));
    let why = asked.why.as_ref().map(|why| {
        let said = refusal::refused(why, seen.speech);
        el("p", "why").text(format!("{} {}", said.what, said.to_do))
    });
    let done = done_key("key solid h88", common::DONE, "", say(WaitTap::Done));
    hint.into_iter().chain(why).chain(typing(&ask, &asked.typed, unit, seen)).chain([done]).listed()
}

/// A fifth less.
fn less(asked: &Asked, seen: Seen<'_>) -> String {
    let less = asked.at.amount().checked_mul(Decimal::new(8, 1)).and_then(|less| Money::book(less, asked.at.currency()).ok());
    less.map_or_else(String::new, |less| bare(less, seen.speech))
}

fn by_when(seen: Seen<'_>) -> Vec<El<Msg>> {
    let weeks = WEEKS.iter().filter_map(|n| u32::try_from(*n).ok()).map(|n| (deal::weeks(n, &seen.speech.count(n)), false));
    let chips = choices(weeks.listed(), |nth| say(WaitTap::Weeks(WEEKS.get(nth).copied().unwrap_or(4))));
    vec![el("h2", "ink1").text(words::BY_WHEN), chips, el("div", "push")]
}

/// Each answer is a key to change it.
fn all(asked: &Asked, seen: Seen<'_>) -> Vec<El<Msg>> {
    let said = &asked.said;
    let number = |n: Option<Decimal>| n.map(|n| seen.speech.number(n, 0, 2));
    let five = |share: Option<Decimal>| number(share.and_then(|share| share.checked_mul(OF_FIVE)));
    let sum = |sum: Option<Money>| sum.map(|sum| bare(sum, seen.speech));
    let row = |what: String, figure: Option<String>, question| {
        figure_key(what, figure.unwrap_or_else(|| price::NOT_SAID.to_owned()), say(WaitTap::Ask(question)))
    };
    let times =
        if all_buy(said) { Some(words::ALL_BUY_SHORT.to_owned()) } else { number(said.k).map(|times| words::times_as_many(&times)) };
    let by = said.by.map(|by| seen.speech.day(by));
    vec![
        el("div", "g2").kid(row(words::ASK_A_WEEK.into(), number(said.asks), Question::Asks)).kid(row(
            words::of_five_at(&bare(asked.at, seen.speech)),
            five(said.buys),
            Question::Buys,
        )),
        el("div", "g2").kid(row(words::AT_A_FIFTH_LESS.into(), times, Question::Ratio)).kid(row(
            words::END_EACH.into(),
            sum(said.end),
            Question::End,
        )),
        row(words::SOLD_BY.into(), by, Question::By),
    ]
    .into_iter()
    .chain(besides(said, seen))
    .listed()
}

/// What waiting costs besides, behind one key until something of it is said.
fn besides(said: &Guesses, seen: Seen<'_>) -> Vec<El<Msg>> {
    let row = |what: &'static str, figure: Option<String>, question| {
        figure_key(what, figure.unwrap_or_else(|| price::NOT_SAID.to_owned()), say(WaitTap::Ask(question)))
    };
    if said.each_ask.is_none() && said.each_day.is_none() && said.no_show.is_none() {
        return vec![key("key", words::WHAT_IT_COSTS, words::WHAT_IT_COSTS_HINT, say(WaitTap::Ask(Question::EachAsk)))];
    }
    let time = row(words::EACH_ASK_TAKES, said.each_ask.map(|time| seen.speech.span(time)), Question::EachAsk);
    let keep = row(words::KEEPING_A_DAY, said.each_day.map(|sum| bare(sum, seen.speech)), Question::EachDay);
    let never = said.no_show.and_then(|share| share.checked_mul(OF_FIVE)).map(|n| seen.speech.number(n, 0, 2));
    vec![el("div", "g2").kid(time).kid(keep), row(words::OF_FIVE_NEVER, never, Question::NoShow)]
}
