//! Sort: one pile at home, good or rejected and why.

use super::count::{name, saved_fact};
use super::{Screen, Seen};
use crate::app::count::Tap;
use crate::app::{App, Common, Msg};
use crate::parts::bars::{Bars, Cut, bars};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look as FillLook, Mark, Rhythm, Scale, scale};
use crate::parts::undo::{Undo, alone};
use crate::view::{El, el};
use crate::words::en::{common, count as words};
use fivebar_core::quantity::{Decimal, Id, Key};
use fivebar_core::sheet::sort::{SortSheet, sort};

/// The screen of a pile being sorted.
pub fn screen(app: &App, haul: Id, pile: Id, seen: Seen<'_>) -> Screen {
    let Some(sheet) = sort(&app.shelf().book, haul, pile) else {
        return Screen::new("count/sort", head(Head::new("", words::SORT)), el("main", ""));
    };
    let n = |n: u32| seen.speech.count(n);
    let top = Head::new(words::SORT, words::sorted_of(&name(&sheet.tile), &n(sheet.sorted), &n(sheet.taken)))
        .fact(saved_fact(app, seen))
        .fact(Fact::Plain(words::to_go(&n(sheet.left))));
    let reasons = words::REASONS.iter().filter_map(|reason| Key::read(reason)).map(|why| reason(&sheet, why, seen));
    let main = el("main", "scr sort")
        .kid(rate(&sheet, seen))
        .kid(good(&sheet, seen))
        .kid(el("h2", "").text(words::REJECT_BECAUSE))
        .kid(el("div", "g2").kids(reasons));
    Screen::new("count/sort", head(top), main).foot(foot(app, seen))
}

/// Rejected so far, beside the guess and what the supplier brought before.
fn rate(sheet: &SortSheet, seen: Seen<'_>) -> El<Msg> {
    let title = words::rejected_of(&seen.speech.count(sheet.rejected), &seen.speech.count(sheet.sorted));
    let share = |n: u32, of: u32| f64::from(n) / f64::from(of.max(1)) * 100.0;
    let mark = |at: f64, word: &str| {
        Mark::new(at, Kind::Ink, word, words::percent(&seen.speech.number(Decimal::try_from(at).unwrap_or_default(), 0, 0)))
    };
    let here = share(sheet.rejected, sheet.sorted);
    let mut marks = vec![mark(GUESS, words::GUESS)];
    marks.extend((0 < sheet.sorted).then(|| mark(here, words::THIS_PILE)));
    marks.extend(sheet.supplier_so_far.map(|(rejected, sorted)| mark(share(rejected, sorted), words::THE_SUPPLIER)));
    let fills = vec![Fill { from: 0.0, to: here, look: FillLook::Under }];
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
    el("section", "card").kid(el("b", "w8 blk").text(title.clone())).kid(scale(&drawn, &title))
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

fn foot(app: &App, seen: Seen<'_>) -> El<Msg> {
    let undo = match (&app.shelf().taken_back, &app.shelf().last_act, &app.count.last_sorted) {
        (None, Some(_), Some((why, n))) => {
            let n = seen.speech.count(*n);
            let words = match why {
                Some(why) => words::take_back_reject(&n, &words::reason(why.as_str())),
                None => words::take_back_good(&n),
            };
            Some(alone(Undo { words, under: String::new() }, Msg::Common(Common::TakeBack)))
        }
        _ => super::undo::bar(app, seen),
    };
    el("footer", "foot").kids(undo).kid(key("key h56", common::DONE, "", Msg::Count(Tap::Close)))
}
