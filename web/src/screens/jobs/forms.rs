//! What is written down on Jobs, one form at a time: answers by chips above, figures, and the pad under the thumb.

mod cans;
mod making;
mod money;
mod none;
mod old_jobs;
pub mod room;
mod sale;

use super::super::slots::{docked, doubted, slot_key, why_words};
use super::super::{Screen, Seen};
use super::entry::{Slot, told};
use super::{say, titled};
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{Draft, Pick, What};
use crate::app::{App, Msg};
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::view::{El, el};
use crate::words::en::{common, job as words, jobs, refusal, workshop as shop_words};
use fivebar_core::quantity::Units;
use fivebar_core::sheet::job::JobSheet;

/// A form before it is laid out.
pub struct Asked {
    pub place: &'static str,
    pub title: String,
    /// Stands over the figures.
    pub above: Vec<El<Msg>>,
    pub slots: Vec<Slot>,
    /// The figures as the form lays them out itself.
    pub figures: Option<El<Msg>>,
    /// In place of the pad: a choice, or words.
    pub instead: Option<Vec<El<Msg>>>,
    /// Stands below the figures and the pad.
    pub below: Option<El<Msg>>,
    pub save: (String, String),
    /// It can be done.
    pub ready: bool,
    /// The other way out.
    pub other: Option<String>,
}

impl Asked {
    pub fn new(place: &'static str, title: impl Into<String>) -> Asked {
        let save = (common::DONE.to_owned(), String::new());
        Asked {
            place,
            title: title.into(),
            above: vec![],
            slots: vec![],
            figures: None,
            instead: None,
            below: None,
            save,
            ready: true,
            other: None,
        }
    }
}

/// The form in hand.
pub fn screen(draft: &Draft, sheet: Option<&JobSheet>, app: &App, seen: Seen<'_>) -> Screen {
    let asked = match (&draft.what, sheet) {
        (What::Spend, None) => none::spend(draft, app, seen),
        (What::CameBack(spending), None) => none::came_back(draft, *spending, app),
        (What::New, _) | (_, None) => making::new(draft, app, seen),
        (What::Name | What::Take { .. } | What::Part(_) | What::Plan(_), Some(sheet)) => making::asked(draft, sheet, app, seen),
        (What::OldJobs | What::OldJob(_), Some(_)) => old_jobs::asked(draft, app, seen),
        (What::Room, Some(sheet)) => room::asked(draft, sheet, app, seen),
        (What::Spend | What::CameBack(_) | What::Tag | What::Settle | What::Size | What::Facts | What::Lesson, Some(sheet)) => {
            money::asked(draft, sheet, app, seen)
        }
        (_, Some(sheet)) => sale::asked(draft, sheet, (app, seen)),
    };
    laid_out(asked, draft, sheet, seen)
}

/// Much stands over its figures: the pad lies in the foot, in sight of the key that takes them.
fn docks(what: &What) -> bool {
    let is_sale = matches!(what, What::Sell(_) | What::Refund(_) | What::Cancel(_) | What::Consign | What::GalleryPaid(_));
    is_sale || matches!(what, What::Part(_) | What::Plan(_) | What::OldJobs | What::OldJob(_) | What::Spend)
}

fn laid_out(asked: Asked, draft: &Draft, sheet: Option<&JobSheet>, seen: Seen<'_>) -> Screen {
    let units: Units = draft.picks.units;
    let of_none = if draft.what == What::New { "" } else { shop_words::WORKSHOP };
    let of = sheet.filter(|_| draft.what != What::New).map_or_else(|| of_none.to_owned(), |sheet| titled(sheet, seen));
    let top = Head::new(of, asked.title);
    let (figures, pad) = told(&draft.form, &asked.slots, units, seen);
    // One figure whose pad made room for a choice is a key that brings the pad, as one of several is.
    let alone = asked.slots.first().filter(|_| asked.instead.is_some() && asked.slots.len() == 1);
    let figures = alone.map_or(figures, |slot| slot_key(&draft.form, 0, slot, say(Tap::At(0))));
    let docks = docks(&draft.what) && asked.instead.is_none();
    let pad = match asked.instead {
        Some(instead) => instead,
        None if docks || asked.slots.is_empty() => vec![],
        None => pad,
    };
    let keys = if asked.other.is_some() { "g3" } else { "um" };
    let other = asked.other.map(|words| key("key h56", words, "", say(Tap::Undo)));
    let main = el("main", "scr form")
        .kids(asked.above)
        .kids(asked.figures.or((!asked.slots.is_empty()).then_some(figures)))
        .kids(doubted(&draft.form, (units, seen), |side| say(Tap::IsSo(side))))
        .kid(el("div", "push"))
        .kids(pad)
        .kids(asked.below);
    let keys = el("div", keys)
        .kid(done_key("key solid t22", asked.save.0, asked.save.1, say(Tap::Save)).flag("disabled", !asked.ready))
        .kids(other)
        .kid(key("key", common::NOT_NOW, "", say(Tap::Close)));
    let foot = if docks {
        let named = if matches!(draft.what, What::Part(_)) { words::PART_NAME } else { jobs::NAME };
        let why = draft.nameless.then(|| refusal::unnamed(named)).or_else(|| why_words(&draft.form, &asked.slots, (units, seen)));
        // What is asked about stands over the pad too: at the top of the sheet it may be out of sight.
        let why = why.or_else(|| sale::doubt(draft, seen));
        docked(&draft.form, &asked.slots, (keys, why, seen), |press| say(Tap::Press(press)))
    } else {
        el("footer", "foot").kid(keys)
    };
    Screen::new(asked.place, head(top), main).foot(foot)
}

/// A key that shows an answer, and opens the choice of it.
pub fn chosen(what: &str, answer: String, open: bool) -> El<Msg> {
    el("button", "key left wide")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(say(Tap::Pick(Pick::More)))
        .kid(el("span", "s").text(what.to_owned()))
        .kid(el("span", "t17 w8").text(answer))
}

/// A field for words.
pub fn worded(id: &'static str, label: &str, draft: &Draft, nth: usize) -> El<Msg> {
    let value = draft.words.get(nth).cloned().unwrap_or_default();
    let wrong = if draft.nameless && nth == 0 { refusal::unnamed(label) } else { String::new() };
    field(Field { id, label: label.to_owned(), value, wrong, ..Field::default() }, move |text| say(Tap::Say(nth, text)))
}
