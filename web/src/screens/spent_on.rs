//! The day something was spent on: a key that shows it, and the steps that change it.

use super::Seen;
use crate::app::Msg;
use crate::app::spent_on::{SpentOn, SpentTap};
use crate::parts::day_steps::day_steps;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::job as words;
use fivebar_core::quantity::{Clock, Wall};

/// The day as people say it.
pub fn said(on: SpentOn, seen: Seen<'_>) -> String {
    let offset = seen.now.offset;
    let noon = |day: fivebar_core::quantity::Day| Some(Wall::new(day.at(Clock::at(12, 0)?, offset), offset));
    on.day.and_then(noon).map_or(words::TODAY.to_owned(), |day| seen.speech.day(day))
}

/// A key that shows the day, and opens the choice of it.
pub fn spent_key(on: SpentOn, says: fn(SpentTap) -> Msg, seen: Seen<'_>) -> El<Msg> {
    el("button", "key left wide")
        .attr("type", "button")
        .attr("aria-expanded", if on.asks { "true" } else { "false" })
        .on_tap(says(SpentTap::Ask))
        .kid(el("span", "s").text(words::SPENT_ON))
        .kid(el("span", "t17 w8").text(said(on, seen)))
}

/// The choice, in place of the pad: no day after today.
pub fn choice(on: SpentOn, says: fn(SpentTap) -> Msg, seen: Seen<'_>) -> Vec<El<Msg>> {
    vec![
        el("p", "t14 i2").text(words::SPENT_ON_UNDER),
        el("p", "t22 w8").attr("role", "status").text(said(on, seen)),
        day_steps([words::DAY, words::DAYS], move |by| says(SpentTap::By(by))),
        key("key h56", words::SPENT_THEN, "", says(SpentTap::Ask)),
    ]
}
