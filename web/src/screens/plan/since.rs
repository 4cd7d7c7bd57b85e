//! What has changed since a plan was made, what was left out of it, and the wood of the plan before.

use super::super::Seen;
use super::super::jobs::figures::volume;
use super::{say, source_name, told, told_apart};
use crate::app::plan::{Before, Found, Since, Tap, ToCut, fitting_to, in_use_by};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{changed as words, common, jobs, plan};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Count, Id, Listed, Units, Wall, begin_small};
use fivebar_core::sheet::job::{JobSheet, OfBefore};
use fivebar_core::sheet::make::just::{Just, of_less_wood};
use fivebar_core::sheet::make::keep::LackedPile;
use fivebar_core::sheet::make::{Change, Given, Source, Unfit, is_used, too_narrow};

/// What has changed, each in a sentence.
pub fn notes(given: &Given, since: &Since) -> Vec<El<Msg>> {
    let counts = since.counted.iter().filter_map(|place| letter(given, *place)).listed();
    let counted = (!counts.is_empty()).then(|| words::counts(&counts));
    said(&since.changed, given).into_iter().chain(counted).map(|said| el("p", "why").attr("role", "alert").text(said)).listed()
}

fn said(changed: &[Change], given: &Given) -> Vec<String> {
    let size = |change: &Change| if let Change::Size(place) = change { letter(given, *place) } else { None };
    let sizes = changed.iter().filter_map(size).listed();
    let wood = |change: &Change| if let Change::Wood(place) = change { letter(given, *place) } else { None };
    let woods = changed.iter().filter_map(wood).listed();
    let other = |change: &Change| match change {
        Change::Size(_) | Change::Wood(_) => None,
        Change::NotFree => Some(plan::CHANGED.to_owned()),
        Change::Saw(places) => Some(words::saw(places)),
        Change::Machines => Some(words::MACHINES.to_owned()),
        Change::Cut => Some(words::CUT_SINCE.to_owned()),
        Change::Parts(names) if names.is_empty() => Some(words::PARTS.to_owned()),
        Change::Parts(names) => Some(words::parts(names)),
    };
    let sized = (!sizes.is_empty()).then(|| words::sizes(&sizes));
    let named = (!woods.is_empty()).then(|| words::woods(&woods));
    sized.into_iter().chain(named).chain(changed.iter().filter_map(other)).listed()
}

fn letter(given: &Given, place: usize) -> Option<String> {
    given.ready.sources.get(place).map(|source| source.letter.clone())
}

/// Parts the maker left out, and what an older book does not say of it.
pub fn missing(given: &Given) -> Vec<El<Msg>> {
    let without = (!given.ask.without.is_empty()).then(|| el("p", "notice").text(words::without(&given.ask.without.join(", "))));
    let said = [(given.lacks.names, words::NO_NAMES), (given.lacks.sizes, words::NO_SIZES)];
    let lacks = said.into_iter().filter(|(lacks, _)| *lacks).map(|(_, words)| el("p", "notice").text(words));
    without.into_iter().chain(lacks).listed()
}

/// Piles that fit and are in no cut of the plan, each with why; where nothing is made, those the maker left out. Pieces the job has are its own.
pub fn left_out(given: &Given, found: &Found, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let of = |which| given.sources.iter().position(|source| source.which() == which);
    let cut = |place: usize| found.sheet.used.iter().any(|used| used.source == place && 0 < used.pieces);
    let all = fitting_to(app, &given.ask);
    let narrow =
        |(part, by)| words::narrow_for(part, &format!("{} {}", seen.speech.length(by, given.units), common::length_unit(given.units)));
    let just = of_less_wood(given, &found.sheet);
    let why = |source: &Source| match of(source.which()) {
        Some(place) if cut(place) || found.sheet.made == 0 => None,
        // What would do with less wood is told of it by itself.
        Some(place) if just.iter().any(|it| it.source == place) => None,
        Some(place) => Some(too_narrow(given, place).map_or_else(|| words::NOT_NEEDED.to_owned(), narrow)),
        None if !is_used(&given.ask, source) => Some(words::BY_YOU.to_owned()),
        None => None,
    };
    let lying = all.iter().filter(|(source, unfit)| !source.in_job && unfit.is_none());
    let name = |source| told_apart(source, all.iter().map(|(it, _)| it), app);
    let lines = lying.filter_map(|(source, _)| why(source).map(|why| words::left_out(&name(source), &why)));
    lines.chain(just.iter().filter_map(|it| does(it, given, seen))).map(|line| worded("p", "t14 i2", line)).listed()
}

/// That it would do with less wood, though not by the length that the plan goes by.
fn does(just: &Just, given: &Given, seen: Seen<'_>) -> Option<String> {
    let parts = just.parts.iter().map(|part| told::part(given, *part)).listed();
    let n = (&*seen.speech.count(just.n), just.n == 1);
    Some(words::does_with_less(&letter(given, just.source)?, &parts, n, &volume(just.volume, given.units, seen)))
}

/// What the job's plans need and it has no more, and the key that takes it again.
pub fn lacking(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(lacking) = sheet.lacking.as_ref().filter(|_| sheet.ended.is_none()) else { return vec![] };
    let piles = |n: fn(&LackedPile) -> Count| {
        let of_it = lacking.piles.iter().map(|pile| (pile, n(pile))).filter(|(_, n)| 0 < *n);
        of_it.map(|(pile, n)| plan::so_many_of(&seen.speech.count(n), &named(&pile.name))).listed()
    };
    let (there, gone) = (piles(|pile| pile.on_rack), piles(|pile| pile.n.saturating_sub(pile.on_rack)));
    let n = lacking.piles.iter().fold(0, |sum: Count, pile| sum.saturating_add(pile.on_rack));
    let said =
        words::lacking([&seen.speech.count(lacking.has), &seen.speech.count(lacking.needs)], [&there, &gone], (lacking.plans == 1, n == 1));
    let again = (0 < n).then(|| key("key h56 wide", words::take_again(n == 1), words::take_again_under(&there), say(Tap::TakeAgain)));
    let again = again.map(|key| el("div", "no-print").kid(key));
    std::iter::once(worded("p", "w7", said)).chain(again).listed()
}

/// That a pile of a plan in use is not what it was made for, with the way to that plan: on the pages of the job, where the way to the saw is.
pub fn other_now(sheet: &JobSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let said = |it: &OfBefore| [el("p", "why").text(words::other_now(&it.piles)), to_plan((it.plan, it.shape, it.used), seen)];
    sheet.changed.iter().flat_map(said).listed()
}

fn to_plan((id, shape, at): (Id, Shape, Wall), seen: Seen<'_>) -> El<Msg> {
    let when = format!("{} {}", seen.speech.day(at), seen.speech.clock(at));
    key("key soft h56 wide", plan::shape(shape).0, words::used_on(&when), say(Tap::Kept(id))).key(id.to_string())
}

/// Over the list at the saw of a plan that is used, where it is of before something changed.
pub fn of_before(since: &Since) -> Option<El<Msg>> {
    (since.taken && !since.changed.is_empty()).then(|| el("p", "why").text(words::LIST_OF_BEFORE))
}

/// A pile within a sentence: its letter stays large.
pub fn named(name: &str) -> String {
    if name.chars().all(char::is_uppercase) { name.to_owned() } else { begin_small(name) }
}

/// The piles it cuts, each a tap away.
pub fn piles(given: &Given, found: &Found, app: &App) -> Vec<El<Msg>> {
    let cut = found.sheet.used.iter().filter(|used| 0 < used.pieces);
    let from = cut.filter_map(|used| given.sources.get(used.source).zip(given.ready.sources.get(used.source)));
    let one = |(source, ready): (&Source, &fivebar_core::sheet::plan::ready::Source)| {
        let name = plan::pile_of(&ready.letter, &fivebar_core::quantity::begin_small(&source_name(source, app)), None);
        key("key soft h56", name, words::PILE_UNDER, say(Tap::Pile(source.which().0)))
    };
    let keys = from.filter(|(source, _)| source.bought.is_none()).map(one).listed();
    if keys.is_empty() { vec![] } else { vec![el("h2", "t17 no-print").text(words::THE_PILES), el("div", "g2 no-print").kids(keys)] }
}

/// The other plans whose wood the job has, each with its cuts a tap away.
pub fn others(since: &Since, seen: Seen<'_>) -> Vec<El<Msg>> {
    plans(words::OTHER_PLANS, &since.others, seen)
}

/// The plans whose wood the job has, from where another is asked.
pub fn in_use(job: Id, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let all = in_use_by(app, job);
    plans(if all.len() == 1 { words::PLAN_IN_USE } else { words::PLANS_IN_USE }, &all, seen)
}

fn plans(title: &'static str, all: &[(Id, Shape, Wall)], seen: Seen<'_>) -> Vec<El<Msg>> {
    let keys = all.iter().map(|it| to_plan(*it, seen)).listed();
    let rows = if keys.len() == 1 { "no-print" } else { "g2 no-print" };
    if keys.is_empty() { vec![] } else { vec![el("h2", "t17 no-print").text(title), el("div", rows).kids(keys)] }
}

/// Parts that are left out, to be taken in again; and at one that nothing fits, to leave it out.
pub fn parts(none_fits: Option<&str>, without: &[String]) -> Vec<El<Msg>> {
    let out = none_fits.map(|name| key("key h56 wide", words::leave_out(name), words::PLANS_WITHOUT, say(Tap::LeaveOut(name.to_owned()))));
    let back = |name: &String| key("key soft h56 wide", words::take_in(name), words::LEFT_OUT_UNDER, say(Tap::LeaveOut(name.clone())));
    out.into_iter().chain(without.iter().map(back)).listed()
}

/// Piles that do not fit what is asked, by their names; or one part, where that is what they do not fit.
pub fn unfit(all: &[(Source, Option<Unfit>)], part: Option<&str>, app: &App, of: (Units, Seen<'_>)) -> Vec<El<Msg>> {
    let lying = all.iter().filter(|(source, _)| !source.in_job && source.bought.is_none());
    let said = |source: &Source, why: Unfit| {
        let (name, why) = (told_apart(source, all.iter().map(|(it, _)| it), app), super::piles::unfit_of(source, why, app, of));
        part.map_or_else(|| words::left_out(&name, &why), |part| words::not_for_part(part, &name, &why))
    };
    let why = lying.filter_map(|(source, why)| why.map(|why| said(source, why)));
    why.map(|line| worded("p", "t14 i2", line)).listed()
}

/// What taking its wood does with that of the plan before.
pub fn takes(takes: String, since: &Since, seen: Seen<'_>) -> String {
    match since.before {
        Some(Before { pieces: 0, may_stay: false, .. }) => words::takes_in_place(&takes),
        Some(Before { pieces, .. }) if 0 < pieces => words::takes_and_asks(&takes, &seen.speech.count(pieces)),
        _ => takes,
    }
}

/// The key that drops the plan in hand; of one in use it is asked what becomes of its wood.
pub fn drop_key(since: &Since) -> El<Msg> {
    let under = if since.taken { words::DROP_IN_USE } else { words::DROP_UNUSED };
    el("div", "no-print").kid(key("key soft h56 wide", words::DROP, under, say(Tap::Drop)))
}

/// "4 of 6 lines left to cut", of a job whose wood is not all cut.
pub fn saw_words(left: &[(Id, usize, usize)], job: Id, seen: Seen<'_>) -> Option<String> {
    let n = |n: usize| seen.speech.number(fivebar_core::quantity::Decimal::from(n), 0, 0);
    left.iter().find(|(of, ..)| *of == job).map(|(_, left, of)| words::cuts_left(&n(*left), &n(*of)))
}

/// The ways to the saw: one for each list that is not cut to its end, by its job as `name` says; of a job with several, each by its plan.
pub fn ways_to_saw(all: &[ToCut], name: impl Fn(Id) -> Option<String>, seen: Seen<'_>) -> Vec<El<Msg>> {
    let n = |n: usize| seen.speech.number(fivebar_core::quantity::Decimal::from(n), 0, 0);
    let one = |it: &ToCut| {
        let said = words::of_job(&name(it.job)?, &words::cuts_left(&n(it.left), &n(it.lines)));
        let several = all.iter().any(|other| other.job == it.job && other.plan != it.plan);
        let when = || words::used_on(&format!("{} {}", seen.speech.day(it.at), seen.speech.clock(it.at)));
        let under = if several { words::of_plan(plan::shape(it.shape).0, &when()) } else { String::new() };
        Some(key("key h56 wide left", jobs::upper_first(&said), under, say(Tap::SawOf(it.job, it.plan))).key(format!("saw {}", it.plan)))
    };
    all.iter().filter_map(one).listed()
}
