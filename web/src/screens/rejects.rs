//! The rejected pieces of a pile: by reason, and where they may go.

use super::count::{name, saved_fact};
use super::{Screen, Seen, sort};
use crate::app::count::Tap;
use crate::app::sorting::{SortTap, in_sight};
use crate::app::{App, Common, Msg};
use crate::parts::bars::{Bars, Cut, bars};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::undo::{Undo, alone};
use crate::view::{El, el};
use crate::words::en::{common, count, sort as words};
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::kind::haul::Fate;
use fivebar_core::quantity::{Count, Key, Listed, in_small};
use fivebar_core::sheet::sort::SortSheet;

const FATES: [(Fate, &str); 3] = [(Fate::Good, words::GOOD_AFTER_ALL), (Fate::Jigs, words::TO_JIGS), (Fate::Burnt, words::BURNT)];

/// The page of a pile's rejects.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let Some(sheet) = &in_sight(app) else {
        return Screen::new("count/sort/rejects", head(Head::new("", words::REJECTS)), el("main", ""));
    };
    let top = Head::new(name(&sheet.tile), words::REJECTS).fact(saved_fact(app, seen));
    let reasons = sheet.rejects.iter().map(|(why, n)| reason(sheet, (why, *n), seen));
    let none = sheet.rejects.is_empty().then(|| el("p", "t22 w8").text(words::NO_REJECTS));
    let main = el("main", "scr rejects").kids(summed(sheet, seen)).kids(none).kids(reasons);
    let done = |class| key(class, common::DONE, "", Msg::Count(Tap::Close));
    let acts = match undo(app, seen) {
        Some(undo) => el("div", "um").kid(undo).kid(done("key h88 m")),
        None => done("key h56"),
    };
    let lie = sheet.lying.iter().any(|(_, n)| 0 < *n);
    let foot = el("footer", "foot").kids(lie.then(|| sort::bundles(app, seen))).kid(acts);
    Screen::new("count/sort/rejects", head(top), main).foot(foot)
}

/// Names what the last act did with rejects.
fn undo(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shelf = app.shelf();
    let last = super::undo::to_take_back(app).and_then(|act| shelf.book.entry(act));
    let Some(Fact::RejectsReturned(back)) = last.map(|(entry, _)| &entry.fact) else { return super::undo::one(app, seen) };
    let to = FATES.iter().find(|(fate, _)| *fate == back.to).map_or("", |(_, word)| *word);
    let words = words::take_back(&seen.speech.count(back.n), &in_small(to));
    Some(alone(Undo { words, under: count::reason(back.why.as_str()) }, Msg::Common(Common::TakeBack)))
}

/// All of them, and which are gone.
fn summed(sheet: &SortSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let gone = sheet.gone.iter().fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
    let written = (0 < gone).then(|| seen.speech.count(gone));
    let all = words::rejected(&seen.speech.count(sheet.rejected), written.as_deref());
    let parts: Vec<_> = sheet.gone.iter().map(|(to, n)| (seen.speech.count(*n), words::went(to.as_str()))).listed();
    (0 < sheet.rejected)
        .then(|| el("section", "").kid(el("p", "w8").text(all)).kids((0 < gone).then(|| el("p", "t14 i2").text(words::gone(&parts)))))
}

fn reason(sheet: &SortSheet, (why, n): (&Key, Count), seen: Seen<'_>) -> El<Msg> {
    let lying = sheet.lying.iter().find(|(other, _)| other == why).map_or(0, |(_, n)| *n);
    let written = |n: Count| seen.speech.count(n);
    let there = (lying < n).then(|| {
        el("p", "t14 i2").text(if lying == 0 { words::ALL_GONE.into() } else { words::still_there(&written(lying), &written(n)) })
    });
    let marks = bars(Bars { cut: n, hollow: 0, per_row: 5, size: Cut::List });
    let lead = el("div", "row mid")
        .kid(el("span", "").kid(el("h2", "ink1 t17").text(count::reason(why.as_str()))).kids(there))
        .kid(el("span", "rw").kid(marks).kid(el("span", "t30 w8").text(written(n))));
    let keys = FATES.iter().map(|(to, word)| key("key", *word, "", Msg::Count(Tap::Sorting(SortTap::Return(why.clone(), *to)))));
    el("section", "reject").key(why.as_str().to_owned()).kid(lead).kids((0 < lying).then(|| el("div", "g3").kids(keys)))
}
