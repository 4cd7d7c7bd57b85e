//! The figures of a form and the pad under them: with several, the one under the thumb is in ink.

use super::Seen;
use crate::app::doubt::{Doubt, Side};
use crate::app::form::Form;
use crate::app::{App, Msg, Notice};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::parts::pad::{self, Press};
use crate::view::{El, el};
use crate::words::en::{common, count as words, refusal};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Length, Listed, Units};
use fivebar_core::refusal::Refusal;

/// One figure of a form: what it is, its unit, and whether fractions of an inch are offered.
#[derive(Clone, Debug, Default)]
pub struct Slot {
    pub label: String,
    pub unit: String,
    pub fractions: bool,
    /// Only whole ones: no decimal sign on the pad.
    pub whole: bool,
    /// It may be below nothing.
    pub signed: bool,
}

impl Slot {
    pub fn new(label: &str, unit: &str) -> Slot {
        Slot { label: label.to_owned(), unit: unit.to_owned(), fractions: false, whole: false, signed: false }
    }
    pub fn whole(label: &str) -> Slot {
        Slot { whole: true, ..Slot::new(label, "") }
    }
    pub fn side(label: &str, units: Units) -> Slot {
        let unit = crate::words::en::common::length_unit(units);
        Slot { fractions: units == Units::Inch, ..Slot::new(label, unit) }
    }
}

/// Why the last order was not carried out, in its place.
pub fn refused(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let Some(Notice::Refused(why)) = &app.notice else { return None };
    Some(no(why, seen))
}

/// Why a figure gives no answer.
pub fn no(why: &Refusal, seen: Seen<'_>) -> El<Msg> {
    el("p", "why").attr("role", "alert").text(no_words(why, seen))
}

/// The same in words.
pub fn no_words(why: &Refusal, seen: Seen<'_>) -> String {
    let said = refusal::refused(why, seen.speech);
    format!("{} {}", said.what, said.to_do)
}

/// The figures, each a key that says `at`, in rows as many as fit; one alone stands large over the pad.
pub fn figures(form: &Form, slots: &[Slot], at: impl Fn(usize) -> Msg) -> El<Msg> {
    laid((in_rows(slots), None), form, slots, at)
}

/// The same, and why one was not taken behind that one.
pub fn figures_told(form: &Form, slots: &[Slot], of: (Units, Seen<'_>), at: impl Fn(usize) -> Msg) -> El<Msg> {
    laid((in_rows(slots), why(form, slots, of)), form, slots, at)
}

/// The same in rows of a class.
pub fn figures_in(class: &'static str, form: &Form, slots: &[Slot], at: impl Fn(usize) -> Msg) -> El<Msg> {
    laid((class, None), form, slots, at)
}

fn in_rows(slots: &[Slot]) -> &'static str {
    match slots.len() {
        2 => "g2 slots",
        4 => "g4 slots",
        _ => "g3 slots",
    }
}

fn laid((class, mut why): (&'static str, Option<El<Msg>>), form: &Form, slots: &[Slot], at: impl Fn(usize) -> Msg) -> El<Msg> {
    if slots.len() < 2 {
        return single(form, slots).kids(why);
    }
    let mut all = el("div", class);
    for (nth, slot) in slots.iter().enumerate() {
        all = all.kid(slot_key(form, nth, slot, at(nth))).kids(if nth == form.at { why.take() } else { None });
    }
    all
}

/// Why the figure under the thumb was not taken, and the pad.
pub fn under_thumb(form: &Form, slots: &[Slot], (units, seen): (Units, Seen<'_>), press: impl Fn(Press) -> Msg + Copy) -> Vec<El<Msg>> {
    why(form, slots, (units, seen)).into_iter().chain(pad(form, slots, seen, press)).listed()
}

/// The pad in the foot, over the keys that take the figures: neither is ever out of sight of the other. On a low page the figure
/// under the thumb stands over the pad once more; where something was not taken, why.
pub fn docked(
    form: &Form,
    slots: &[Slot],
    (keys, why, seen): (El<Msg>, Option<String>, Seen<'_>),
    press: impl Fn(Press) -> Msg + Copy,
) -> El<Msg> {
    let here = slots.get(form.at).map(|slot| match why {
        Some(why) => el("div", "here wrong").kid(worded("span", "why", why)),
        None => el("div", "here").kid(worded("span", "s", labelled(slot))).kid(worded("span", "fg", written(form, form.at))),
    });
    let here = here.map(|here| here.attr("aria-hidden", "true"));
    el("footer", "foot typing").kids(here).kids(pad(form, slots, seen, press)).kid(keys)
}

fn labelled(slot: &Slot) -> String {
    if slot.unit.is_empty() { slot.label.clone() } else { format!("{}, {}", slot.label, slot.unit) }
}

fn single(form: &Form, slots: &[Slot]) -> El<Msg> {
    let (label, unit) = slots.first().map_or((String::new(), ""), |slot| (slot.label.clone(), slot.unit.as_str()));
    let wrong = form.here().is_some_and(|typed| typed.wrong.is_some());
    el("div", "one").kid(el("h2", "ink1").text(label)).kid(pad::entry(&written(form, 0), unit, wrong))
}

fn written(form: &Form, nth: usize) -> String {
    form.text(nth).replace('/', "⁄")
}

/// One figure of a form, a key.
pub fn slot_key(form: &Form, nth: usize, slot: &Slot, tap: Msg) -> El<Msg> {
    let figure = if form.is_empty(nth) { "\u{2013}".to_owned() } else { written(form, nth) };
    let wrong = form.slots.get(nth).is_some_and(|typed| typed.wrong.is_some());
    el("button", if wrong { "key left wrong" } else { "key left" })
        .attr("type", "button")
        .attr("aria-pressed", if form.at == nth { "true" } else { "false" })
        .on_tap(tap)
        .kid(worded("span", "s", labelled(slot)))
        .kid(worded("span", "t22 w8", figure))
}

/// Why the figure under the thumb was not taken, with its name.
pub fn why(form: &Form, slots: &[Slot], of: (Units, Seen<'_>)) -> Option<El<Msg>> {
    why_words(form, slots, of).map(|said| worded("p", "why", said).attr("role", "alert"))
}

/// The same in words.
pub fn why_words(form: &Form, slots: &[Slot], (units, seen): (Units, Seen<'_>)) -> Option<String> {
    let why = form.here()?.wrong.as_ref()?;
    let said = slots.get(form.at).map(|slot| refusal::misread_of(&slot.label, why, seen.speech, units));
    Some(said.unwrap_or_else(|| refusal::misread(why, seen.speech, units)))
}

/// "That is 27 in thick. Millimetres?" with a key for each answer, where the figure under the thumb is asked about.
pub fn doubted(form: &Form, of: (Units, Seen<'_>), say: impl Fn(Length) -> Msg) -> Vec<El<Msg>> {
    form.doubt().map(|doubt| asked_about(doubt, of, say)).unwrap_or_default()
}

/// The same of any side.
pub fn asked_about(doubt: Doubt, (units, seen): (Units, Seen<'_>), say: impl Fn(Length) -> Msg) -> Vec<El<Msg>> {
    let written = |side: Length, units: Units| format!("{} {}", seen.speech.length(side, units), common::length_unit(units));
    let most = doubt.of.usual_most(units).filter(|_| doubt.of == Side::Kerf).map(|most| words::of_kerf(&written(most, units)));
    let way = most.as_deref().or(way(doubt.of));
    let said = words::that_is(&written(doubt.side, units), way, doubt.in_mm.is_some());
    let mm = doubt.in_mm.map(|side| key("key solid h56", written(side, Units::Metric), "", say(side)));
    let keep = key("key h56", words::keep(&written(doubt.side, units)), "", say(doubt.side));
    vec![worded("p", "why", said).attr("role", "alert"), el("div", if mm.is_some() { "g2" } else { "" }).kids(mm).kid(keep)]
}

fn way(of: Side) -> Option<&'static str> {
    match of {
        Side::Thickness => Some(words::THICK),
        Side::Width => Some(words::WIDE),
        Side::Length => Some(words::LONG),
        Side::Least => Some(words::AT_LEAST),
        Side::Allowance | Side::Kerf => None,
    }
}

/// A currency that has no decimals.
pub fn is_whole(unit: &str) -> bool {
    Currency::read(unit).is_ok_and(|currency| currency.digits() == 0)
}

/// The pad for the figure under the thumb.
pub fn pad(form: &Form, slots: &[Slot], seen: Seen<'_>, press: impl Fn(Press) -> Msg + Copy) -> Vec<El<Msg>> {
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let slot = slots.get(form.at).cloned().unwrap_or_default();
    let whole = |slot: &Slot| slot.whole || is_whole(&slot.unit);
    let point = match whole(&slot) {
        false => pad::Sign::Shown(sign),
        true if !slots.iter().all(whole) => pad::Sign::Idle(sign),
        true => pad::Sign::None,
    };
    let keys = pad::pad(point, press);
    let below = slot.signed.then(|| pad::minus_key(press));
    std::iter::once(keys).chain(below).chain(slot.fractions.then(|| pad::fraction_keys(16, press))).listed()
}
