//! What was agreed, paid in parts: how many, how much each, and by which day.

use super::{Screen, Seen, choices, exact, leave, typing};
use crate::app::price::Tap;
use crate::app::price::parts::{Parts, PartsTap};
use crate::app::{App, Msg};
use crate::parts::day_steps::day_steps;
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::screens::jobs::called;
use crate::view::{El, el};
use crate::words::en::{common, deal as words, job};
use fivebar_core::quantity::{Day, Listed, Money, Wall};

fn say(tap: PartsTap) -> Msg {
    Msg::Price(Tap::Parts(tap))
}

/// How a price is usually split, in per cent: common practice.
const SPLITS: [&[i64]; 3] = [&[50, 50], &[40, 30, 30], &[25, 25, 25, 25]];

/// The parts as they stand; none where the job is no longer there.
pub fn screen(parts: &Parts, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let job = crate::app::price::shop(app).job(parts.job).ok()?;
    let agreement = job.selling.agreement(parts.agreed);
    let is_planned = agreement.is_some_and(|agreement| !agreement.parts.is_empty() || job.selling.is_to_plan_anew(agreement));
    let beside =
        agreement.and_then(|agreement| job.selling.owed_before_change(job.currency, agreement).ok()).filter(|owed| !owed.is_zero());
    let beside = beside.map(|owed| el("p", "w7").text(words::owed_beside(&exact(owed, seen.speech))));
    let top = head(Head::new(called(job.id, &job.name, app, seen), words::IN_PARTS));
    if let Some(typed) = &parts.pad {
        let main = el("main", "price")
            .kids(typing(&nth(parts.at, seen), typed, parts.price.currency().code(), seen))
            .kid(done_key("key solid h88", common::DONE, "", say(PartsTap::PadDone)))
            .kid(key("key h48", common::NOT_NOW, "", say(PartsTap::PadAway)));
        return Some(Screen::new("price/parts/pad", top, main));
    }
    let whole = is_planned.then(|| key("key h48", words::IN_ONE_SUM, "", say(PartsTap::Whole)));
    let main = el("main", "price")
        .kid(splits(parts, seen))
        .kids(parts.parts.iter().enumerate().map(|(nth, part)| row((nth, parts), *part, seen)))
        .kids(beside)
        .kid(el("h2", "").text(words::its_day(&nth(parts.at, seen))))
        .kid(day_steps([job::DAY, job::DAYS], |by| say(PartsTap::Move(by))))
        .kid(el("div", "g2").kid(key("key h56", words::AT_HAND_OVER, "", say(PartsTap::NoDay))).kid(key(
            "key h56",
            words::OTHER_PART,
            "",
            say(PartsTap::Pad),
        )))
        .kids(whole);
    let save = key("key solid h88", words::SAVE_PARTS, added(parts, seen), say(PartsTap::Save));
    Some(Screen::new("price/parts", top, main).foot(el("footer", "foot").kid(save).kid(leave())))
}

fn splits(parts: &Parts, seen: Seen<'_>) -> El<Msg> {
    let word = |split: &[i64]| words::parts(&seen.speech.count(u32::try_from(split.len()).unwrap_or(0)));
    let segs = SPLITS.map(|split| (word(split), split.len() == parts.parts.len()));
    choices(segs.into(), |nth| say(PartsTap::Split(SPLITS.get(nth).copied().unwrap_or(&[50, 50]))))
}

fn nth(nth: usize, seen: Seen<'_>) -> String {
    words::part(&seen.speech.count(u32::try_from(nth.saturating_add(1)).unwrap_or(0)))
}

/// A part: which, how much, by when, or that it is paid. A tap takes it in hand.
fn row((nth_part, parts): (usize, &Parts), (sum, day): (Money, Option<Day>), seen: Seen<'_>) -> El<Msg> {
    let chosen = nth_part == parts.at;
    let by = if nth_part < parts.paid() { words::PAID.to_owned() } else { by(day, seen) };
    el("button", if chosen { "card hot sale" } else { "card tap sale" })
        .attr("type", "button")
        .attr("aria-pressed", if chosen { "true" } else { "false" })
        .key(format!("part {nth_part}"))
        .on_tap(say(PartsTap::At(nth_part)))
        .kid(
            el("span", "row")
                .kid(el("span", "").text(nth(nth_part, seen)))
                .kid(el("span", "t14 i2").text(by))
                .kid(el("span", "t22 w8").text(exact(sum, seen.speech))),
        )
}

fn by(day: Option<Day>, seen: Seen<'_>) -> String {
    let offset = seen.now.offset;
    day.map_or_else(|| words::AT_HAND_OVER.to_owned(), |day| words::by_day(&seen.speech.day(Wall::new(day.start(offset), offset))))
}

/// What the parts add up to, beside what was agreed.
fn added(parts: &Parts, seen: Seen<'_>) -> String {
    let sums = parts.parts.iter().map(|(sum, _)| *sum).listed();
    let sum = Money::sum(parts.price.currency(), sums).unwrap_or(parts.price);
    words::added_up(&exact(sum, seen.speech), &exact(parts.price, seen.speech))
}
