//! What are you doing? A job, an operation, its kind; for missed time, from when to when.

use super::super::{Screen, Seen};
use super::{foot, pads, say};
use crate::app::bench::offered::{Offered, offers, told};
use crate::app::bench::starting::{Starting, StartingTap, open};
use crate::app::bench::{Tap, ends};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing, in_rows};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as words, common, count};
use fivebar_core::bench::{Kind, On};
use fivebar_core::quantity::{Clock, Listed, Wall};

/// With more jobs than this only the chosen one is shown until another is asked for.
const SOME: usize = 4;

/// So many lie as high as the bench's own keys.
const FEW: usize = 12;

/// A word of so many letters is too long for a third of a phone's width.
const LONG: usize = 10;

/// The kinds that are offered, in the order of a job's life, with finishing among them: none is that.
const KINDS: [Option<Kind>; 6] = [Some(Kind::Fetch), Some(Kind::Make), None, Some(Kind::Sell), Some(Kind::Deliver), Some(Kind::Office)];

fn answer(tap: StartingTap) -> Msg {
    say(Tap::Starting(tap))
}

/// The job and the operation; then, for missed time, its ends.
pub fn screen(starting: &Starting, app: &App, seen: Seen<'_>) -> Screen {
    if starting.missed.is_some() && starting.chosen.is_some() {
        return by_clock(starting, app, seen);
    }
    if let Some((op, ..)) = &starting.asks {
        return for_which(op, app);
    }
    let (title, day) = match starting.missed {
        Some(day) => (words::WHAT_DID_YOU_DO, noon(day, seen)),
        None => (words::WHAT_ARE_YOU_DOING, seen.now),
    };
    let top = Head::new(words::bench_on(&seen.speech.day(day)), title);
    let main = el("main", "scr starting").kids(jobs(starting, app, seen)).kids(operations(starting, app, seen));
    let when = starting.missed.is_none().then(|| foot::when(app));
    let foot = el("footer", "foot").kids(when).kid(key("key h56", common::NOT_NOW, "", say(Tap::Close)));
    Screen::new("bench/start", head(top), main).foot(foot)
}

/// For which job a call or a message is.
fn for_which(op: &str, app: &App) -> Screen {
    let all = all_jobs(app);
    let keys = all.into_iter().map(|(on, name)| key("key left wide h88", name, "", answer(StartingTap::On(on))));
    let main = el("main", "scr starting").kids(keys);
    let foot = el("footer", "foot").kid(key("key h56", common::NOT_NOW, "", say(Tap::Close)));
    Screen::new("bench/for", head(Head::new(op.to_owned(), words::FOR_WHAT)), main).foot(foot)
}

/// Jobs that go on, the newest first, and none.
fn all_jobs(app: &App) -> Vec<(On, String)> {
    let jobs = open(app).into_iter().rev().map(|(job, name)| (On::Job(job), name));
    jobs.chain([(On::Nothing, words::NO_JOB.to_owned())]).listed()
}

/// The middle of a day, to write its date.
pub fn noon(day: fivebar_core::quantity::Day, seen: Seen<'_>) -> Wall {
    Clock::at(12, 0).map_or(seen.now, |noon| Wall::new(day.at(noon, seen.now.offset), seen.now.offset))
}

/// A time of day as it is written.
pub fn noon_at(clock: Clock, seen: Seen<'_>) -> String {
    seen.speech.clock(Wall::new(seen.now.day().at(clock, seen.now.offset), seen.now.offset))
}

/// Jobs that go on, and time of no job.
fn jobs(starting: &Starting, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let open = all_jobs(app);
    if open.len() < 2 {
        return vec![];
    }
    if SOME < open.len() && !starting.jobs {
        let name = open.iter().find(|(on, _)| *on == starting.on).map_or(words::NO_JOB, |(_, name)| name.as_str());
        let of_jobs = open.iter().filter(|(on, _)| *on != On::Nothing && *on != starting.on).count();
        let all = words::more_jobs(&seen.speech.count(u32::try_from(of_jobs).unwrap_or(u32::MAX)));
        return vec![key("key left wide h56", name.to_owned(), all, answer(StartingTap::Jobs)).attr("aria-expanded", "false")];
    }
    let shown = open.iter().map(|(on, name)| Chip::choice(name.clone(), *on == starting.on)).listed();
    let keys = flowing("key h56", shown, |nth| answer(StartingTap::On(open.get(nth).map_or(On::Nothing, |(on, _)| *on))));
    vec![keys.attr("aria-label", words::FOR_WHAT)]
}

fn operations(starting: &Starting, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let rework = key("key h48", words::REWORK, "", answer(StartingTap::Rework));
    let rework = rework.attr("aria-pressed", if starting.rework { "true" } else { "false" });
    let above = el("div", "row mid").kid(el("h2", "").text(words::WHICH_OPERATION)).kid(rework);
    let offers = offers(app, starting);
    let none = offers.found.is_empty();
    let count = |n: usize| seen.speech.count(u32::try_from(n).unwrap_or(u32::MAX));
    let all = offers.first.len().saturating_add(offers.more);
    let more = (0 < offers.more).then(|| key("key soft h56 wide", words::all_of(&count(all)), "", answer(StartingTap::All)));
    let unsorted = app.shelf().haul().filter(|haul| none && haul.piles.iter().any(|pile| 0 < pile.unsorted()));
    let sort = unsorted.map(|haul| {
        let under = words::haul_of(&seen.speech.day(haul.began));
        key("key h88 m wide", count::SORT, under, answer(StartingTap::Sort(haul.id)))
    });
    let mut shown = vec![above];
    let mut typed = typed(starting, app);
    let field = (!typed.is_empty()).then(|| typed.remove(0));
    shown.extend(field);
    shown.extend(group(if none { "" } else { words::FOUND }, offers.found));
    shown.extend(typed);
    shown.extend(group("", offers.first));
    shown.extend(more);
    shown.extend(sort);
    shown.extend(group(words::BESIDE, offers.beside));
    shown.extend(group(words::DONE_WHOLE, offers.behind));
    shown
}

/// Operations under one heading; a long list lies lower, so that more of it is seen.
fn group(title: &'static str, offered: Vec<Offered>) -> Vec<El<Msg>> {
    if offered.is_empty() {
        return vec![];
    }
    let class = if offered.len() <= FEW && title.is_empty() { "key h88 m" } else { "key h56 m" };
    let chip = |one: &Offered| Chip::tap(one.op.clone()).under(one.name.clone().unwrap_or_default());
    let keys = offered.iter().map(chip).listed();
    // A long word is not broken: two to a row.
    let row =
        if offered.iter().any(|one| one.op.split(' ').any(|word| LONG <= word.chars().count())) { "chips long" } else { "chips three" };
    let keys = in_rows(row, class, keys, move |nth| match offered.get(nth).cloned() {
        Some(Offered { on, op, kind, stage, .. }) => answer(StartingTap::Found(on, op, kind, stage)),
        None => say(Tap::Close),
    });
    (!title.is_empty()).then(|| el("h2", "").text(title)).into_iter().chain([keys.attr("aria-label", words::WHICH_OPERATION)]).listed()
}

/// What is looked for, or an operation in the maker's own words and its kind. A name that tells its kind is not asked for it: it was found, or
/// begins in one tap.
fn typed(starting: &Starting, app: &App) -> Vec<El<Msg>> {
    let label = words::FIND_OR_TYPE.into();
    let asked = Field { id: "operation", label, value: starting.op.clone(), keyboard: Keyboard::Words, ..Field::default() };
    let told = told(app, starting.on, &starting.op);
    let new = told.as_ref().filter(|one| !offers(app, starting).found.iter().any(|found| found.on == starting.on && found.op == one.op));
    let begins = new.map(|one| {
        key(
            "key h56 wide",
            words::start_new(starting.op.trim()),
            words::kind(one.kind),
            answer(StartingTap::Op(starting.op.trim().to_owned(), one.kind, one.stage)),
        )
    });
    let said = !starting.op.trim().is_empty() && told.is_none();
    let kinds = said.then(|| {
        let shown = KINDS.iter().map(|kind| Chip::tap(kind.map_or(words::FINISH, words::kind))).listed();
        let tapped = |nth: usize| KINDS.get(nth).copied().flatten().map_or(StartingTap::Finish, StartingTap::Kind);
        flowing("key h56", shown, move |nth| answer(tapped(nth)))
    });
    // Of no job it is rarely work on wood: a caller is not asked for a kind.
    let office = starting.on == On::Nothing && starting.missed.is_none();
    let line = said.then(|| if office { new_office(starting) } else { el("p", "t14").text(words::NEW_ONE) });
    [field(asked, |text| answer(StartingTap::Typed(text)))].into_iter().chain(begins).chain(line).chain(kinds).listed()
}

/// What was typed begins in one tap, as office.
fn new_office(starting: &Starting) -> El<Msg> {
    key("key h56 wide", words::start_new(starting.op.trim()), words::AS_OFFICE, answer(StartingTap::Kind(Kind::Office)))
}

fn by_clock(starting: &Starting, app: &App, seen: Seen<'_>) -> Screen {
    let op = starting.chosen.as_ref().map(|(op, ..)| op.clone()).unwrap_or_default();
    let (Some(day), text) = (starting.missed, &starting.typed.text) else { return pads::clock(from_when(op), &starting.typed, seen) };
    let Some(from) = starting.from else {
        let between = pads::meant(ends::from(app, day, text).ok(), app, seen);
        return pads::clock(pads::Asked { between, asks: app.bench.asked, ..from_when(op) }, &starting.typed, seen);
    };
    let began = seen.speech.clock(from);
    let read = ends::until(app, (day, from), text).ok();
    let mut between = pads::meant(read, app, seen);
    between.push(key("key soft h48", format!("{} {began}", words::FROM_AGAIN), "", answer(StartingTap::From)));
    let asked = pads::Asked::new(("bench/until", words::UNTIL_WHEN), words::from_clock(&op, &began), answer(StartingTap::Clock));
    pads::clock(pads::Asked { between, asks: app.bench.asked, ..asked }, &starting.typed, seen)
}

fn from_when(op: String) -> pads::Asked {
    pads::Asked::new(("bench/from", words::FROM_WHEN), op, answer(StartingTap::Clock))
}
