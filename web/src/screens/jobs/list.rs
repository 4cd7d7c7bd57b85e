//! The list of jobs: due and owed first, then for sale, in hand, ended; the example under its own heading.

use super::super::bench::waits;
use super::super::count::saved_fact;
use super::super::plan::since;
use super::super::{Screen, Seen, said, undo};
use super::figures::{bar_said, hourly, hours_so_far, stretches, sum};
use super::page::waits;
use super::say;
use crate::app::bench::waits::kept;
use crate::app::jobs::Tap;
use crate::app::jobs::dates::promised;
use crate::app::jobs::draft::What;
use crate::app::order::Which;
use crate::app::plan::{cuts_left, lists_left};
use crate::app::price::agree::who;
use crate::app::shelf::Shelf;
use crate::app::{App, Msg};
use crate::parts::Place;
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::notice::trouble;
use crate::parts::so_far::thin;
use crate::view::{El, el};
use crate::words::en::{common, dates, deal, jobs as words};
use fivebar_core::ledger::fold::any_job;
use fivebar_core::quantity::{Currency, Decimal, Id, Listed, Money, Span};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::dates::Promise;
use fivebar_core::sheet::job::NextAct;
use fivebar_core::sheet::jobs::{JobRow, Section, jobs_and_latest_ended};

/// From so many jobs on there is a field to search by.
const MANY: usize = 5;

/// So many that have ended are shown at first: a list of three years is in the way of what is due.
const LATEST_ENDED: usize = 12;

/// The list.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(seen.speech.day(seen.now), Place::Jobs.name()).fact(saved_fact(app, seen));
    let (own, unreadable) = match rows(&app.own, &app.jobs.search, app) {
        Ok(rows) => (rows, None),
        Err(refusal) => ((vec![], 0), Some(trouble(said::refused(&refusal, seen)))),
    };
    let any = !own.0.is_empty() || !app.jobs.search.trim().is_empty() || unreadable.is_some();
    let many = MANY <= own.0.len() || !app.jobs.search.is_empty();
    let main = el("main", "scr jobs")
        .kids(many.then(|| search(app)))
        .kids(waits::lines(&kept(app, |kept| kept.ending(app.now)), true, app, seen))
        .kids(match unreadable {
            Some(unreadable) => vec![unreadable],
            None if any => sections(&own, Which::Own, app, seen),
            None => vec![el("p", "t22 w8").text(words::NONE_YET)],
        })
        .kids(example(app, seen))
        .kids((any || app.example.is_some()).then(legend))
        .kid(el("div", "push"));
    if !any {
        let new = key("key solid h88", words::NEW_JOB, words::NEW_JOB_UNDER, say(Tap::Write(What::New))).key("new");
        return Screen::new("jobs", head(top), main.kids(undo::bar(app, seen)).kid(new));
    }
    let new = key("key solid t22", words::NEW_JOB, "", say(Tap::Write(What::New))).key("new");
    Screen::new("jobs", head(top), main).foot(el("footer", "foot").kids(undo::bar(app, seen)).kid(new))
}

/// The rows, and how many more have ended. What is searched for is shown whole.
fn rows(shelf: &Shelf, search: &str, app: &App) -> Answer<(Vec<JobRow>, usize)> {
    let all = app.jobs.all_ended || !search.trim().is_empty();
    jobs_and_latest_ended(&shelf.shop(app.now.at), search, if all { usize::MAX } else { LATEST_ENDED })
}

fn search(app: &App) -> El<Msg> {
    let asked = Field { id: "job-search", label: words::SEARCH.into(), value: app.jobs.search.clone(), ..Field::default() };
    field(asked, |text| say(Tap::Search(text)))
}

fn sections((rows, more): &(Vec<JobRow>, usize), which: Which, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    if rows.is_empty() {
        return vec![el("p", "notice").text(words::nothing_found(&app.jobs.search))];
    }
    let heads = [
        (Section::Due, words::DUE_AND_OWED),
        (Section::ForSale, words::FOR_SALE),
        (Section::InHand, words::IN_HAND),
        (Section::Ended, words::ENDED),
    ];
    let promised = promises(rows, which, app);
    let saw = if which == Which::Own { cuts_left(app) } else { vec![] };
    let mut shown = vec![];
    // What was promised comes first, then the way to the saw.
    let named = |job| rows.iter().find(|row| row.job == job).map(|row| row.name.clone());
    let mut to_saw = (which == Which::Own).then(|| since::ways_to_saw(&lists_left(app), named, seen));
    for (section, title) in heads {
        if section != Section::Due {
            shown.extend(to_saw.take().unwrap_or_default());
        }
        let mut of_it = rows.iter().filter(|row| row.section == section).peekable();
        if of_it.peek().is_some() {
            shown.push(el("h2", "").text(title));
            let line = |row: &JobRow| promised.iter().find(|(job, _)| *job == row.job).map(|(_, promise)| promise);
            let one = |row: &JobRow| {
                let line = line(row).and_then(|promise| super::dates::promise_line(promise, &row.next, seen));
                let at_saw = since::saw_words(&saw, row.job, seen).filter(|_| matches!(row.next, NextAct::WorkOn { op: None }));
                card((row, whom(row, which, app)), (which, home(app)), at_saw.or_else(|| unhardened(row, which, app, seen)), seen)
                    .kids(line)
            };
            shown.extend(of_it.map(one));
        }
    }
    let ways = if 0 < *more { Some(words::more_ended(*more)) } else { app.jobs.all_ended.then(|| words::latest_ended(LATEST_ENDED)) };
    let own = ways.filter(|_| which == Which::Own && app.jobs.search.trim().is_empty());
    shown.extend(own.map(|way| key("key soft h56 wide", way, "", say(Tap::AllEnded)).key("ended")));
    shown
}

/// Who it is due to or from, where that was said; of the book in hand.
fn whom(row: &JobRow, which: Which, app: &App) -> Option<String> {
    let said = row.section == Section::Due && which == app.which;
    who(app, row.buyer.filter(|_| said)).map(|who| deal::for_whom(&who))
}

/// What hardens of a piece that is made and has no tag, and until when; of the book in hand.
fn unhardened(row: &JobRow, which: Which, app: &App, seen: Seen<'_>) -> Option<String> {
    let asks = which == app.which && row.section == Section::InHand && matches!(row.next, NextAct::SetTag);
    let (op, day) = asks.then(|| super::dates::hardens(app, row.job, seen)).flatten()?;
    Some(words::hardens((&op, &day)))
}

/// A card, where `home` is the currency of the workshop; `instead` is said in place of what comes next.
fn card((row, whom): (&JobRow, Option<String>), (which, home): (Which, Currency), instead: Option<String>, seen: Seen<'_>) -> El<Msg> {
    let [name, figure, state, aside] = lines(row, home, seen);
    let state = instead.unwrap_or(state);
    let state = whom.map_or_else(|| state.clone(), |whom| common::and_whom(&state, &whom));
    let span = |class: &'static str, text: String| (!text.is_empty()).then(|| el("span", class).text(text));
    let bar = stretches(&row.so_far, &row.to_come, seen);
    let class = if row.section == Section::Due { "card hot job" } else { "card tap job" };
    el("button", class)
        .attr("type", "button")
        .key(row.job.to_string())
        .on_tap(say(Tap::Open(which, row.job)))
        .kid(el("span", "row").kids(span("t22 w8", name)).kids(span("t22 w8 nw", figure)))
        .kid(el("span", "row").kids(span("", state)).kids(span("t14 nw", aside)))
        .kids((!bar.is_empty()).then(|| thin(&bar, seen.page.card(), &bar_said(&bar))))
}

/// What was promised of the jobs of a book that are shown.
fn promises(rows: &[JobRow], which: Which, app: &App) -> Vec<(Id, Promise)> {
    let due = rows.iter().filter(|row| row.section == Section::Due && row.date.is_some() && which == app.which);
    promised(app, &due.map(|row| row.job).listed())
}

/// The currency of the maker's workshop: sums without a sign are of it.
fn home(app: &App) -> Currency {
    app.own.workshop().currency.unwrap_or(app.speech.currency())
}

/// What an hour left, with its sign where it is of another currency than the workshop's.
fn hour_left(rate: Decimal, (currency, home): (Currency, Currency), seen: Seen<'_>) -> String {
    let sum = Money::book(rate, currency).ok().filter(|_| currency != home);
    words::per_hour(&sum.map_or_else(|| hourly(rate, currency, seen), |sum| seen.speech.money(sum)))
}

/// Name, figure, state, and what stands beside it.
fn lines(row: &JobRow, home: Currency, seen: Seen<'_>) -> [String; 4] {
    let n = |n: u32| seen.speech.count(n);
    let name = words::name(&row.name, row.pieces, &n(row.pieces));
    let gone = || {
        let gone = words::gone(row.sold, row.at_galleries, (&n(row.sold), &n(row.at_galleries)));
        words::gone_and(gone, row.not_for_sale, &n(row.not_for_sale))
    };
    match row.section {
        Section::Due => {
            let by = row.date.map_or(words::TO_HAND_OVER.to_owned(), |date| words::hand_over_by(&seen.speech.day(date)));
            if let NextAct::HandBack { sum } = &row.next {
                return [name, seen.speech.money(*sum), words::STATE_HAND_BACK.into(), words::TO_HAND_BACK.into()];
            }
            if let NextAct::PartDue { lacks, due, .. } = &row.next {
                return [name, seen.speech.money(*lacks), words::state_part(&seen.speech.day(*due)), String::new()];
            }
            if row.due.is_zero() && !row.due_from_galleries.is_zero() {
                let state = row.date.map_or_else(gone, |date| dates::done_by(&seen.speech.day(date)));
                return [name, seen.speech.money(row.due_from_galleries), with_open(state, row, seen), words::FROM_GALLERY_SMALL.into()];
            }
            if row.due.is_zero() {
                let total = total(row, seen);
                return [name, String::new(), row.date.map(|date| dates::done_by(&seen.speech.day(date))).unwrap_or(by), total];
            }
            let state = with_open(if matches!(row.next, NextAct::Collect { .. }) { gone() } else { by }, row, seen);
            let owes = (!row.due_from_galleries.is_zero()).then(|| words::gallery_owes(&sum(row.due_from_galleries, seen)));
            let state = std::iter::once(state).chain(owes).listed().join(", ");
            if !row.deposits_due.is_zero() {
                let rest = row.due.minus(row.deposits_due).ok().filter(|rest| Decimal::ZERO < rest.amount());
                let state = std::iter::once(state).chain(rest.map(|rest| words::then(&sum(rest, seen)))).listed().join(", ");
                return [name, seen.speech.money(row.deposits_due), state, words::DEPOSIT_DUE.into()];
            }
            let aside = if matches!(row.next, NextAct::Collect { .. }) { words::STILL_DUE } else { words::DUE_AT_HAND_OVER };
            [name, seen.speech.money(row.due), state, aside.into()]
        }
        Section::ForSale => {
            let tag = row.tag.map(|tag| words::tag(&seen.speech.short_money(tag))).unwrap_or_default();
            [name, tag, with_open(gone(), row, seen), words::left(&n(row.left))]
        }
        Section::InHand => {
            let total = total(row, seen);
            [name, String::new(), next(row, seen), total]
        }
        Section::Ended => {
            let per_hour = row.kept_per_hour.map(|rate| hour_left(rate, (row.currency, home), seen)).unwrap_or_default();
            let ended = row.ended.map(|at| words::ended_on(&seen.speech.day(at))).unwrap_or_default();
            [name, String::new(), with_open(ended, row, seen), per_hour]
        }
    }
}

/// What was logged and stands, and apart from it what is in no total until it is settled.
fn total(row: &JobRow, seen: Seen<'_>) -> String {
    row.total.map(|stands| hours_so_far(stands, row.unsettled, seen)).unwrap_or_default()
}

/// With the hours the maker has not answered for: of a job that has ended they are in the bar, and in what an hour left.
fn with_open(said: String, row: &JobRow, seen: Seen<'_>) -> String {
    if row.unsettled <= Span::ZERO { said } else { words::of_it_to_settle(&said, &seen.speech.span(row.unsettled)) }
}

fn next(row: &JobRow, seen: Seen<'_>) -> String {
    match &row.next {
        NextAct::Running { op, .. } => words::running(op),
        NextAct::WorkOn { op: Some(op) } => words::next(op),
        NextAct::WorkOn { op: None } => words::state_open(row.total.is_some()).into(),
        NextAct::Waits { last } => waits(last, seen),
        NextAct::TakeWood => words::next(words::TAKE_WOOD),
        NextAct::SetTag => words::next(words::WRITE_TAG),
        NextAct::HandBack { sum: back } => words::to_hand_back(&sum(*back, seen)),
        NextAct::PartDue { due, .. } => words::state_part(&seen.speech.day(*due)),
        NextAct::AtGallery { n } => words::state_gallery(&seen.speech.count(*n)),
        NextAct::Agree { left } => words::state_agree((*left, &seen.speech.count(*left))),
        NextAct::Sell { left } => words::state_sell(&seen.speech.count(*left)),
        NextAct::HandOver { .. } | NextAct::Collect { .. } => words::TO_HAND_OVER.into(),
        NextAct::End => words::STATE_ALL_GONE.into(),
        NextAct::LookBack => words::LOOK_BACK.into(),
    }
}

/// The example under its own heading, or the key that brings it.
fn example(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(example) = &app.example else {
        let busy = app.jobs.awaited.then(|| el("p", "notice").text(words::FETCHING_EXAMPLE));
        let none = !any_job(&app.own.book);
        let class = if none { "key" } else { "key soft" };
        let ask = || key(class, words::TRY_EXAMPLE, words::TRY_EXAMPLE_UNDER, say(Tap::TryExample)).key("try");
        return vec![busy.unwrap_or_else(ask)];
    };
    let title = el("div", "").kid(el("h2", "t22 w8 ink1").text(words::EXAMPLE)).kid(el("p", "t14").text(words::EXAMPLE_UNDER));
    let top = el("div", "exh").kid(title).kid(key("key h56", words::REMOVE, "", say(Tap::RemoveExample)));
    let found = rows(example, "", app).unwrap_or_default();
    std::iter::once(top).chain(found.0.iter().map(|row| card((row, None), (Which::Example, home(app)), None, seen))).listed()
}

fn legend() -> El<Msg> {
    let sign = |class: &'static str, words: &'static str| el("span", "").kid(el("i", class)).kid(el("span", "").text(words));
    el("p", "t14 keyline").kid(sign("swi", words::SO_FAR_LEGEND)).kid(sign("swo", words::TO_COME))
}
