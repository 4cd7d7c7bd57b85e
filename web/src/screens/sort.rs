//! Sort: one pile at home, good or rejected and why.

use super::count::{name, saved_fact};
use super::{Screen, Seen};
use crate::app::count::Tap;
use crate::app::entry::Typed;
use crate::app::pile::PileTap;
use crate::app::sorting::{self, SortTap, Sorting};
use crate::app::{App, Common, Msg};
use crate::parts::bars::{Bars, Cut, bars};
use crate::parts::chips::{Chip, bundle};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::pad;
use crate::parts::scale::{Fill, Kind, Look as FillLook, Mark, Rhythm, Scale, scale};
use crate::parts::undo::{Undo, alone};
use crate::view::{El, el};
use crate::words::en::{common, count as words, refusal, sort as sort_words};
use fivebar_core::bench::On;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Decimal, Id, Key, Listed, Units, in_small};
use fivebar_core::sheet::sort::SortSheet;

/// The screen of a pile being sorted.
pub fn screen(app: &App, pile: Id, seen: Seen<'_>) -> Screen {
    let Some(sheet) = sorting::of(app, pile) else {
        return Screen::new("count/sort", head(Head::new("", words::SORT)), el("main", ""));
    };
    let n = |n: u32| seen.speech.count(n);
    let top = Head::new(
        sort_words::on_day(words::SORT, &seen.speech.day(seen.now)),
        words::sorted_of(&name(&sheet.tile), &n(sheet.sorted), &n(sheet.taken)),
    )
    .fact(saved_fact(app, seen))
    .fact(Fact::Plain(words::to_go(&n(sheet.left))));
    let reasons = reasons(&sheet).into_iter().map(|why| reason(&sheet, why, seen));
    let told = (sheet.left == 0).then(|| sorted(&sheet, app, seen));
    let because = [because(&sheet, seen), el("div", "g2").kids(reasons)];
    let missing = (0 < sheet.missing).then(|| el("p", "w7").text(sort_words::missing(&n(sheet.missing))));
    let told: Vec<El<Msg>> = told.into_iter().chain(missing).chain(in_jobs(&sheet, app, seen)).collect();
    let (good, rate) = (good(&sheet, seen), rate(&sheet, app, seen));
    // on a narrow page the scale stands below what is tapped
    let main = match seen.page.is_narrow() {
        true => el("main", "scr sort").kids(told).kid(good).kids(because).kid(rate),
        false => el("main", "scr sort").kids(told).kid(rate).kid(good).kids(because),
    };
    Screen::new("count/sort", head(top), main).foot(foot(&sheet, app, seen))
}

/// Where what is left to sort lies in jobs alone: what a bad one does.
fn in_jobs(sheet: &SortSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (n, jobs) = sorting::in_jobs(app, sheet.tile.pile)?;
    let written = seen.speech.count(n);
    let said = match jobs.as_slice() {
        [job] => sort_words::in_job(n, &written, &fold::name_of(&app.shelf().book, On::Job(*job))?),
        _ => sort_words::in_jobs(&written, jobs.len()),
    };
    Some(el("p", "w7").text(said))
}

/// The reasons there are keys for, and any other that this pile has.
fn reasons(sheet: &SortSheet) -> Vec<Key> {
    let keys = words::REASONS.iter().filter_map(|reason| Key::read(reason));
    let others = sheet.rejects.iter().map(|(why, _)| why.clone()).filter(|why| !words::REASONS.contains(&why.as_str()));
    keys.chain(others).listed()
}

/// Nothing is left of this pile; the next one is a tap away.
fn sorted(sheet: &SortSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let said = el("section", "").attr("role", "status").kid(el("p", "t22 w8").text(sort_words::ALL_SORTED));
    let said = said.kids(sorting::took_only(app).map(|n| el("p", "w7").text(sort_words::took_only(n, &seen.speech.count(n)))));
    let again = Msg::Count(Tap::Page(PileTap::Recount(sheet.tile.pile)));
    let said = said.kids(sorting::took_only(app).map(|_| key("key soft h48", sort_words::MORE_THERE, sort_words::MORE_THERE_UNDER, again)));
    let said = said.kids(good_is_bad(sheet, app));
    match &sheet.next {
        Some((tile, left)) => said.kid(key(
            "key solid h88 m wide",
            sort_words::next(&name(tile)),
            sort_words::to_sort(&seen.speech.count(*left)),
            Msg::Count(Tap::SortPile(tile.pile)),
        )),
        None => said.kid(el("p", "").text(sort_words::HAUL_SORTED)),
    }
}

/// That one of the good ones is bad: the reason is tapped next.
fn good_is_bad(sheet: &SortSheet, app: &App) -> Vec<El<Msg>> {
    let is_on = app.count.sorting.of_good;
    let turn = |said| key("key soft h48", said, "", Msg::Count(Tap::Sorting(SortTap::GoodIsBad)));
    match (sheet.good, is_on) {
        (0, _) => vec![],
        (_, false) => vec![turn(sort_words::GOOD_IS_BAD)],
        (_, true) => vec![el("p", "w7").text(sort_words::TAP_WHY), turn(common::NOT_NOW)],
    }
}

/// Rejected so far, beside the guess and what the supplier brought before.
fn rate(sheet: &SortSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let title = match sheet.sorted {
        0 => sort_words::NOTHING_SORTED.to_owned(),
        sorted => words::rejected_of(&seen.speech.count(sheet.rejected), &seen.speech.count(sorted)),
    };
    let share = |n: u32, of: u32| f64::from(n) / f64::from(of.max(1)) * 100.0;
    let mark = |at: f64, word: &str| {
        Mark::new(at, Kind::Ink, word, words::percent(&seen.speech.number(Decimal::try_from(at).unwrap_or_default(), 0, 0)))
    };
    let here = share(sheet.rejected, sheet.sorted);
    let mut marks = vec![mark(GUESS, words::GUESS)];
    marks.extend((0 < sheet.sorted).then(|| mark(here, words::THIS_PILE)));
    marks.extend(sheet.supplier_so_far.map(|(rejected, sorted)| mark(share(rejected, sorted), words::THE_SUPPLIER)));
    let fills = if sheet.rejected == 0 { vec![] } else { vec![Fill { from: 0.0, to: here, look: FillLook::Under }] };
    let most = marks.iter().map(|mark| mark.at).fold(50.0, f64::max);
    let drawn = Scale {
        width: seen.page.card(),
        from: 0.0,
        to: most.min(100.0),
        rhythm: Some(Rhythm { tick: 5.0, long: 25.0 }),
        marks,
        fills,
        ..Scale::default()
    };
    let from = sheet.supplier.and_then(|id| app.shelf().name(id));
    let lead =
        el("div", "row").kid(el("b", "w8").text(title.clone())).kids(from.map(|name| el("span", "t14 i2").text(sort_words::from(name))));
    el("section", "card").kid(lead).kid(scale(&drawn, &title))
}

/// One in four is the guess before there is any history: Beta(3, 9).
const GUESS: f64 = 25.0;

fn good(sheet: &SortSheet, seen: Seen<'_>) -> El<Msg> {
    let figure = seen.speech.count(sheet.good);
    let marks = bars(Bars { cut: sheet.good, hollow: 0, per_row: 5, size: Cut::Large });
    let words_and_figure = el("span", "").kid(el("span", "t22 w8 blk").text(words::GOOD)).kid(el("span", "t60 w8").text(figure));
    el("button", "tile goodt").attr("type", "button").on_tap(Msg::Count(Tap::Good)).kid(el("span", "rw").kid(words_and_figure).kid(marks))
}

fn reason(sheet: &SortSheet, why: Key, seen: Seen<'_>) -> El<Msg> {
    let n = sheet.rejects.iter().find(|(key, _)| *key == why).map_or(0, |(_, n)| *n);
    let marks = match n {
        0 => el("span", "t14 i2").text(words::NONE),
        n => bars(Bars { cut: n, hollow: 0, per_row: 4, size: Cut::List }),
    };
    el("button", "tile rk")
        .key(why.as_str().to_owned())
        .attr("type", "button")
        .on_tap(Msg::Count(Tap::Reject(why.clone())))
        .kid(el("span", "nm").text(words::reason(why.as_str())))
        .kid(el("span", "rw").kid(el("span", "t30 w8").text(seen.speech.count(n))).kid(marks))
}

/// How many each tap sorts, the undo bar, and the clock where nothing runs: else its strip stands there.
fn foot(sheet: &SortSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let done = |class| key(class, common::DONE, "", Msg::Count(Tap::Close));
    let acts = match undo(app, seen) {
        Some(undo) => el("div", "um").kid(undo).kid(done("key h88 m")),
        None => done("key h56"),
    };
    let asked = app.running().is_none() && (0 < sheet.left || sheet.next.is_some());
    let start = asked.then(|| key("key soft h56", sort_words::START, "", Msg::Count(Tap::Sorting(SortTap::Start))));
    el("footer", "foot").kids((0 < sheet.left).then(|| bundles(app, seen))).kid(acts).kids(start)
}

/// Over the reasons; what was rejected already is a tap away.
fn because(sheet: &SortSheet, seen: Seen<'_>) -> El<Msg> {
    let title = el("h2", "").text(words::REJECT_BECAUSE);
    let rejects =
        || key("key soft h48", sort_words::rejects(&seen.speech.count(sheet.rejected)), "", Msg::Count(Tap::Sorting(SortTap::Rejects)));
    el("div", "row mid").kid(title).kids((0 < sheet.rejected).then(rejects))
}

/// The bundle keys, armed for sorting alone.
pub fn bundles(app: &App, seen: Seen<'_>) -> El<Msg> {
    let Sorting { armed, other, .. } = app.count.sorting;
    let chip = |n: u32| {
        let chip = Chip::choice(seen.speech.count(n), armed == n);
        if armed == n { chip.under(words::EACH_TAP) } else { chip }
    };
    let last = other.filter(|n| ![1, 5, 10].contains(n)).map_or_else(|| Chip::choice(words::ANY, false), chip);
    bundle(vec![chip(1), chip(5), chip(10), last], move |nth| {
        Msg::Count(Tap::Sorting(match (nth, other) {
            (0, _) => SortTap::Arm(1),
            (1, _) => SortTap::Arm(5),
            (2, _) => SortTap::Arm(10),
            (_, Some(n)) if n != armed => SortTap::Arm(n),
            _ => SortTap::OtherBundle,
        }))
    })
}

/// Names what the last tap sorted.
fn undo(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (Some(_), Some((why, n))) = (super::undo::to_take_back(app), &app.count.last_sorted) else {
        return super::undo::one(app, seen);
    };
    let written = seen.speech.count(*n);
    let words = match why {
        Some(why) => words::take_back_reject((*n, &written), &in_small(&words::reason(why.as_str()))),
        None => words::take_back_good(&written),
    };
    Some(alone(Undo { words, under: String::new() }, Msg::Common(Common::TakeBack)))
}

/// How many each tap sorts, typed.
pub fn bundle_pad(typed: &Typed, seen: Seen<'_>) -> Screen {
    let main = el("main", "")
        .kid(pad::entry(&typed.text, "", typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Inch))))
        .kid(el("div", "push"))
        .kid(pad::pad(None, |press| Msg::Count(Tap::Press(press))))
        .kid(done_key("key solid h88", common::DONE, "", Msg::Count(Tap::Sorting(SortTap::PadDone))))
        .kid(key("key h48", common::NOT_NOW, "", Msg::Count(Tap::Close)));
    Screen::new("count/sort/bundle", head(Head::new(words::SORT, sort_words::HOW_MANY)), main)
}
