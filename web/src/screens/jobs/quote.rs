//! A quote: hours and price as a range with the day, and the paper that goes to a buyer, with nothing private on it.

use super::super::price::list::{guessed, haul_in_question};
use super::super::workshop::hours::day;
use super::super::{Screen, Seen, undo};
use super::dates::{tap, waits_as};
use super::figures::{left_out, short, sum};
use super::say;
use crate::app::jobs::dates::{DatesTap, quoted};
use crate::app::jobs::draft::What;
use crate::app::jobs::{Room, Tap};
use crate::app::price::shop;
use crate::app::workshop::{Over, Tap as WorkshopTap};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, dates as words, job as rooms, jobs, price, refusal, workshop};
use fivebar_core::ledger::fold::Quote;
use fivebar_core::quantity::{Day, Id, Listed, Money, Span};
use fivebar_core::sheet::estimate::Covers;
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::quote::{Broken, Moves, NoQuote, QuoteSheet};

/// The page.
pub fn screen(job: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(super::titled(job, seen), words::QUOTE_TITLE);
    let Some(sheet) = quoted(app, job.job) else { return super::dates::screen(job, app, seen) };
    let lines = lines(job, &sheet, seen);
    let has_paper = !lines.is_empty();
    let private = el("div", "col no-print")
        .kids(private((job, &sheet), seen))
        .kids(app.jobs.handed.as_ref().map(|told| el("p", "w7").attr("role", "status").text(words::handed(told))))
        .kids(has_paper.then(|| {
            el("div", "g2").kid(key("key h56", words::SHARE, "", tap(DatesTap::Share))).kid(key(
                "key h56",
                words::PRINT,
                "",
                tap(DatesTap::Print),
            ))
        }))
        .kids(has_paper.then(|| el("p", "t14 i2").text(words::PAPER_UNDER)));
    let paper = has_paper.then(|| el("section", "sheet card quote").kids(lines.iter().enumerate().map(line)));
    let word = if sheet.stands { words::GIVE_ANEW } else { words::GIVE };
    let give = sheet.range.is_ok().then(|| key("key solid h56", word, "", tap(DatesTap::Quote)));
    let back = key("key soft h56 wide", words::DATES, "", say(Tap::Room(Room::Dates)));
    let keys = match give {
        Some(give) => el("div", "um").kid(give).kid(back),
        None => back,
    };
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(keys);
    let guess = guessed(job.account.hours.by_any, seen).filter(|_| has_paper).map(|said| el("div", "no-print").kid(said));
    Screen::new(
        "jobs/quote",
        head(top),
        el("main", "scr").kids(broken(&sheet, seen)).kids(tags_over(&sheet, app, seen)).kids(guess).kids(paper).kid(private),
    )
    .foot(foot)
}

fn line((nth, text): (usize, &String)) -> El<Msg> {
    el("p", if nth < 2 { "t22 w8" } else { "" }).text(text.clone())
}

/// What only the maker sees: the hours, and what was quoted before.
fn private((job, sheet): (&JobSheet, &QuoteSheet), seen: Seen<'_>) -> Vec<El<Msg>> {
    let span = |span| seen.speech.span(span);
    let said = reckoned((job, sheet), seen);
    let ready = sheet.ready.filter(|_| !sheet.is_undried).map(|ready| day(ready, seen));
    let now = sheet.range.as_ref().ok().filter(|_| sheet.stands);
    let now = now.map(|(low, high)| words::with_day(&between(*low, *high, seen), ready.as_deref()));
    let now = now.map(|now| el("p", "row").kid(el("span", "").text(words::QUOTE_NOW)).kid(el("span", "w7").text(now)));
    let over = sheet.is_over.then(|| el("p", "why").text(words::STANDS_OVER));
    let missed =
        sheet.missed.zip(sheet.ready).map(|((due, is_likely), first)| words::missed(&day(due, seen), is_likely, &day(first, seen)));
    let others = sheet.moves.map(|moves| el("p", "w7").text(others(&span(sheet.others), moves, seen)));
    let over = missed.map(|said| el("p", "why").text(said)).into_iter().chain(over);
    let given = sheet.given.as_ref().map(|quote| el("p", "t14").text(given(quote, seen)));
    let alone = (sheet.covers == Covers::Planned && sheet.range.is_ok()).then(|| el("p", "w7").text(words::PLANNED_ALONE));
    let open = left_out(job, "w7", seen).filter(|_| sheet.range.is_ok());
    let haul = haul_in_question(job.account.hours.hauls_unsettled, seen).filter(|_| sheet.range.is_ok());
    let unnoted = super::estimate::unnoted(&job.account.hours.unnoted).into_iter().filter(|_| sheet.range.is_ok());
    let open = open.into_iter().chain(haul).chain(unnoted);
    given
        .into_iter()
        .chain(undried(sheet))
        .chain(over)
        .chain(others)
        .chain(now)
        .chain([el("p", "").text(said)])
        .chain(waits_as(sheet.waits_as.as_ref(), seen))
        .chain(open)
        .chain(alone)
        .chain(ways(sheet))
        .listed()
}

/// That the day is handed on to nobody, and where to say what dries.
fn undried(sheet: &QuoteSheet) -> Vec<El<Msg>> {
    if !sheet.is_undried || sheet.range.is_err() {
        return vec![];
    }
    let said = if sheet.given.is_some_and(|quote| sheet.stands && quote.ready.is_some()) { words::UNDRIED_GIVEN } else { words::UNDRIED };
    vec![el("p", "why").text(said), key("key h56", rooms::ADD_OPERATION, "", say(Tap::Write(What::Plan(None))))]
}

/// What the price is reckoned from, or why there is none.
fn reckoned((job, sheet): (&JobSheet, &QuoteSheet), seen: Seen<'_>) -> String {
    let span = |span| seen.speech.span(span);
    match &sheet.range {
        Ok(_) => {
            let all = (sheet.likely, sheet.safe, sheet.hauls, sheet.costs);
            let these = sheet.these.map(|these| (these.likely, these.safe, these.hauls, Some(these.costs)));
            let (likely, safe, hauls, costs) = these.unwrap_or(all);
            let hauls = (Span::ZERO < hauls).then(|| span(hauls));
            let costs = costs.map(|costs| sum(costs, seen)).unwrap_or_default();
            let [n, all] = [sheet.n, sheet.of].map(|n| seen.speech.count(n));
            let of = (sheet.n != sheet.of).then_some([&*n, &*all]);
            words::reckoning([&span(likely), &span(safe)], hauls.as_deref(), &costs, of)
        }
        Err(NoQuote::Ended) => words::QUOTE_ENDED.to_owned(),
        Err(NoQuote::Gone) => words::QUOTE_GONE.to_owned(),
        Err(NoQuote::Agreed { sum, paid }) => {
            words::quote_agreed(&short(*sum, seen), (!paid.is_zero()).then(|| short(*paid, seen)).as_deref())
        }
        Err(NoQuote::Hours) if job.described.piece.is_some() => words::QUOTE_NO_HOURS_OF_KIND.to_owned(),
        Err(NoQuote::Hours) => words::QUOTE_NO_HOURS.to_owned(),
        Err(NoQuote::Guess) => words::QUOTE_GUESS.to_owned(),
        Err(NoQuote::Rate) => words::QUOTE_NO_RATE.to_owned(),
        Err(NoQuote::Costs) => words::QUOTE_NO_COSTS.to_owned(),
        Err(NoQuote::NothingNoted) => words::QUOTE_NOTHING_NOTED.to_owned(),
        Err(NoQuote::Refused(refusal)) => refusal::refused(refusal, seen.speech).what,
    }
}

/// Where what a price lacks can be said, or where what is agreed stands.
fn ways(sheet: &QuoteSheet) -> Option<El<Msg>> {
    let soft = |word: &'static str, room: Room| key("key h56", word, "", say(Tap::Room(room)));
    match &sheet.range {
        Err(NoQuote::Rate) => Some(key("key h56", workshop::YOUR_RATE, "", Msg::Workshop(WorkshopTap::ShowPage(Over::Rate)))),
        Err(NoQuote::NothingNoted) => {
            let spend = key("key h56", rooms::WRITE_SPENDING, "", say(Tap::Write(What::Spend)));
            Some(el("div", "g2").kid(spend).kid(soft(jobs::WOOD_AND_PLAN, Room::Wood)))
        }
        Err(NoQuote::Agreed { .. }) => Some(soft(jobs::SELL_AND_DELIVER, Room::Sell)),
        _ => None,
    }
}

/// A day that was written down and can be kept no more, with the one that can: it is said before what would be handed on.
fn broken(sheet: &QuoteSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let said = match sheet.broken? {
        Broken::Now { given, first } => words::holds_no_more(&day(given, seen), &day(first, seen)),
        Broken::Last { until, given, first } => {
            let [until, given, first] = [until, given, first].map(|of| day(of, seen));
            words::last_holds_no_more([&until, &given, &first])
        }
    };
    Some(el("p", "why no-print").attr("role", "status").text(said))
}

/// The tags ask more than the paper says: it goes by your rate alone.
fn tags_over(sheet: &QuoteSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (n, asked) = sheet.tags_over(&shop(app)).ok()??;
    let n = (1 < n).then(|| seen.speech.count(n));
    Some(el("p", "why no-print").text(words::tags_over(&short(asked, seen), n.as_deref())))
}

/// What other jobs that come first do to its days.
fn others(hours: &str, moves: Moves, seen: Seen<'_>) -> String {
    let both = |said: &dyn Fn([&str; 2]) -> String, [behind, alone]: [Day; 2]| said([&day(behind, seen), &day(alone, seen)]);
    match moves {
        Moves::Promised(days) => both(&|days| words::behind_others(hours, days), days),
        Moves::Likely(days) => both(&|days| words::ready_behind(hours, true, days), days),
        Moves::Safe(days) => both(&|days| words::ready_behind(hours, false, days), days),
        Moves::Nothing => words::moves_no_day(hours),
    }
}

fn given(quote: &Quote, seen: Seen<'_>) -> String {
    let until = quote.until.map(|until| day(until, seen));
    words::given(&between(quote.low, quote.high, seen), &seen.speech.day(quote.at), until.as_deref())
}

fn between(low: Money, high: Money, seen: Seen<'_>) -> String {
    words::between(&seen.speech.short_money(low), &seen.speech.short_money(high))
}

/// What a buyer reads: the piece, the price, the day, until when. Nothing of hours, costs or rate. A quote that stands is told as it was given.
fn lines(job: &JobSheet, sheet: &QuoteSheet, seen: Seen<'_>) -> Vec<String> {
    let Some(paper) = sheet.paper() else { return vec![] };
    let n = paper.n.unwrap_or(sheet.of);
    let given = sheet.given.filter(|_| sheet.stands).map_or(seen.now, |quote| quote.at);
    let title = jobs::name(&job.name, n, &seen.speech.count(n));
    let said = &job.described;
    let made = [said.wood.clone().unwrap_or_default(), said.finish.clone().unwrap_or_default(), size(job, seen)];
    let made = made.into_iter().filter(|text| !text.is_empty());
    let price = between(paper.low, paper.high, seen);
    let price = if sheet.with_tax { words::with_tax(&price) } else { price };
    [title, price]
        .into_iter()
        .chain(made)
        .chain(paper.ready.map(|ready| match paper.ready_last {
            Some(_) => words::ready_by_if(&day(ready, seen), &day(given.day(), seen)),
            None => words::ready_by(&day(ready, seen)),
        }))
        .chain(paper.until.map(|until| words::good_until(&day(until, seen), paper.ready_last.map(|last| day(last, seen)).as_deref())))
        .chain([words::NOT_BINDING.to_owned()])
        .listed()
}

fn size(job: &JobSheet, seen: Seen<'_>) -> String {
    let (said, units) = (&job.described, job.account.units);
    let Some(((width, depth), height)) = said.width.zip(said.depth).zip(said.height) else { return String::new() };
    let [width, depth, height] = [width, depth, height].map(|side| seen.speech.length(side, units));
    price::size(&width, &depth, &height, common::length_unit(units))
}

/// The same as a text to hand on.
pub fn text(job: Id, app: &App, seen: Seen<'_>) -> Option<String> {
    let sheet = quoted(app, job)?;
    let shown = crate::app::jobs::sheet(app)?.ok()?;
    let lines = lines(&shown, &sheet, seen);
    (!lines.is_empty()).then(|| words::paper(&lines))
}
