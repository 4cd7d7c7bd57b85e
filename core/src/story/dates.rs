//! Lines about dates: working hours, days off, quotes.

use super::time::{day, moment};
use super::words::{Read, Words};
use super::{Teller, Told};
use crate::ledger::decide::{Command, DatesCommand};
use crate::ledger::kind::dates::{DeadlineSet, QuoteGiven, WorkdaysSet};
use crate::quantity::{Day, Wall};

pub(super) const VERBS: [&str; 5] = ["workdays", "day-off", "day-on", "promise", "quote"];

pub(super) fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "workdays" => DatesCommand::SetWorkdays(workdays(teller, words)?),
        "promise" => {
            let job = teller.story.names.said_job(words)?;
            let day = if words.has("no") { words.expect("day").map(|()| None)? } else { Some(date(teller, words)?) };
            DatesCommand::Promise(DeadlineSet { job, day })
        }
        "quote" => DatesCommand::Quote(quote(teller, words)?),
        _ => {
            let from = date(teller, words)?;
            let to = if words.has("to") { date(teller, words)? } else { from };
            DatesCommand::SetOff { from, to, off: verb == "day-off" }
        }
    };
    teller.order(&Command::Dates(command)).map(drop)
}

fn date(teller: &Teller, words: &mut Words) -> Read<Day> {
    let now = teller.story.now;
    Ok(Wall::new(day(words, now)?, now.offset).day())
}

/// `workdays 300 min till 17:00 on sat not mon`.
fn workdays(teller: &Teller, words: &mut Words) -> Read<WorkdaysSet> {
    let now = teller.story.now;
    let bench = if words.peek().is_some_and(|word| word.parse::<i64>().is_ok()) { Some(words.minutes()?) } else { None };
    let closing = if words.has("till") { Some(Wall::new(moment(words, now)?, now.offset).clock()) } else { None };
    let mut days = [None; 7];
    for (word, works) in [("on", true), ("not", false)] {
        if words.has(word) {
            while let Some(nth) = words.maybe(weekday) {
                days.iter_mut().skip(nth).take(1).for_each(|day| *day = Some(works));
            }
        }
    }
    Ok(WorkdaysSet::of(bench, closing, days))
}

fn weekday(word: &str) -> Option<usize> {
    ["mon", "tue", "wed", "thu", "fri", "sat", "sun"].iter().position(|day| *day == word)
}

/// `quote desk 420 480 ready 2026-05-22 until 2026-04-30 last 2026-06-19`.
fn quote(teller: &Teller, words: &mut Words) -> Read<QuoteGiven> {
    let job = teller.story.names.said_job(words)?;
    let [low, high] = [words.money(teller.workshop.0)?, words.money(teller.workshop.0)?];
    let ready = if words.has("ready") { Some(date(teller, words)?) } else { None };
    let until = if words.has("until") { Some(date(teller, words)?) } else { None };
    let ready_last = if words.has("last") { Some(date(teller, words)?) } else { None };
    Ok(QuoteGiven { job, low, high, n: None, ready, until, buyer: None, likely: None, safe: None, ready_last })
}
