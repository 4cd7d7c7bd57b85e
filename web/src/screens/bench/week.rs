//! A week: each day with its sum and its share of the longest one, where the minutes come from, and what they were for.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, undo};
use super::start::noon;
use super::{say, timeline};
use crate::app::bench::day::{DayTap, View, monday};
use crate::app::bench::{Tap, seen as from_here};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::timeline::{Look, sum};
use crate::view::{El, el};
use crate::words::en::{bench as words, common, day as said, jobs};
use fivebar_core::bench::Shares;
use fivebar_core::quantity::{Day, Listed, Money, Span};
use fivebar_core::sheet::hours::{For, HoursSheet, week};

/// The week in which the day lies.
pub fn screen(app: &App, view: &View, seen: Seen<'_>) -> Screen {
    let sheet = week((&app.shelf().bench(), &app.shelf().book), view.day, from_here(app));
    let settle = if sheet.unsettled == 0 { String::new() } else { words::to_settle(sheet.unsettled, &seen.speech.count(sheet.unsettled)) };
    let top = Head::new(called(sheet.from, seen), said::week_from(&seen.speech.day(noon(sheet.from, seen))))
        .fact(Fact::Strong(words::of_the_day(&seen.speech.span(sheet.own.total()), &settle)))
        .fact(saved_fact(app, seen));
    let worked = Span::ZERO < sheet.own.total();
    let main = el("main", "scr day")
        .kid(super::day::which(true))
        .kids(worked.then(|| timeline::shares(&sheet.own, None, seen)))
        .kid(days(&sheet, seen))
        .kids(worked.then(|| kinds(&sheet, seen)))
        .kids(along(&sheet.along, seen))
        .kids(works(&sheet, seen));
    Screen::new("bench/week", head(top), main).walks().foot(foot(app, &sheet, seen))
}

fn called(first: Day, seen: Seen<'_>) -> &'static str {
    let this = monday(seen.now.day());
    match (first == this, first == monday(this.before())) {
        (true, _) => said::THIS_WEEK,
        (_, true) => said::LAST_WEEK,
        _ => said::WEEK,
    }
}

fn days(sheet: &HoursSheet, seen: Seen<'_>) -> El<Msg> {
    let most = sheet.days.values().map(|own| own.total()).max().unwrap_or_default();
    // After a flight to the west there may be hours of a day that has not begun here.
    let is_shown = |day: &Day| *day <= seen.now.day() || sheet.days.contains_key(day);
    let shown = (0..7).map(|nth| sheet.from.plus(nth)).filter(is_shown);
    let own = shown.map(|day| (day, sheet.days.get(&day).copied().unwrap_or_default())).listed();
    let minutes = Span::in_minutes(&own.iter().map(|(_, own)| own.total()).listed());
    el("section", "card list").kids(own.into_iter().zip(minutes).map(|(own, minutes)| one(own, minutes, most, seen)))
}

fn one((day, own): (Day, Shares), minutes: Span, most: Span, seen: Seen<'_>) -> El<Msg> {
    let all = own.total();
    let parts = [(Look::Measured, own.measured), (Look::Corrected, own.corrected), (Look::Recalled, own.recalled)];
    let parts = parts.map(|(look, span)| (look, span.as_ms() as f64));
    let bar = (Span::ZERO < all).then(|| sum(&parts, most.as_ms() as f64, seen.page.card()));
    let figure = if Span::ZERO < all { seen.speech.span(minutes) } else { said::NOTHING.to_owned() };
    let name = seen.speech.day(noon(day, seen));
    let line = el("span", "row mid").kid(el("span", "w7").text(name)).kid(el("span", "t17 w8").text(figure));
    el("button", "dl weekday").attr("type", "button").on_tap(say(Tap::Day(DayTap::Show(day)))).kid(line).kids(bar)
}

/// What was for jobs and hauls, by the words of a job's own pages; what was for neither by itself.
fn kinds(sheet: &HoursSheet, seen: Seen<'_>) -> El<Msg> {
    let of_jobs = sheet.by_division.iter().map(|(of, own)| (jobs::upper_first(jobs::division(*of)), *own));
    let of_none = (Span::ZERO < sheet.of_none.total()).then(|| (words::NO_JOB.to_owned(), sheet.of_none));
    let all = of_jobs.chain(of_none).listed();
    let minutes = Span::in_minutes(&all.iter().map(|(_, own)| own.total()).listed());
    let one = |((word, _), span): (&(String, Shares), Span)| said::of_kind(word, &seen.speech.span(span));
    el("p", "t14").text(all.iter().zip(minutes).map(one).listed().join(", "))
}

/// Who worked along, for how long and for what pay.
pub fn along((time, pay): &(Span, Vec<Money>), seen: Seen<'_>) -> Option<El<Msg>> {
    let pay = pay.iter().map(|sum| seen.speech.money(*sum)).listed().join(", ");
    (Span::ZERO < *time).then(|| el("p", "t14").text(said::along(&seen.speech.span(*time), &pay)))
}

/// What it was for, where it was for more than one thing.
fn works(sheet: &HoursSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let minutes = Span::in_minutes(&sheet.by_work.iter().map(|work| work.own.total()).listed());
    let one = |(work, span): (&For, Span)| {
        let name = work.name.clone().unwrap_or_else(|| words::NO_JOB.to_owned());
        el("div", "dl mid").kid(el("span", "op w7").text(name)).kid(el("span", "t17 w8").text(seen.speech.span(span)))
    };
    (1 < sheet.by_work.len()).then(|| el("section", "card list").kids(sheet.by_work.iter().zip(minutes).map(one)))
}

fn foot(app: &App, sheet: &HoursSheet, seen: Seen<'_>) -> El<Msg> {
    let to = |day: Day| say(Tap::Day(DayTap::Week(day)));
    let next = sheet.to.next();
    let later = key("key h56", said::WEEK_AFTER, "", to(next)).flag("disabled", seen.now.day() < next);
    let foot = el("footer", "foot").kids(undo::bar(app, seen));
    let before = key("key h56", said::WEEK_BEFORE, "", to(sheet.from.before()));
    let done = key(if seen.page.is_narrow() { "key h56" } else { "key wide" }, common::DONE, "", say(Tap::Close));
    match seen.page.is_narrow() {
        true => foot.kid(el("div", "g3").kid(before).kid(later).kid(done)),
        false => foot.kid(el("div", "g2").kid(before).kid(later)).kid(done),
    }
}
