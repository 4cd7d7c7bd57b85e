//! Woods and air, machines, the van and the timber yard: lists, and pages that ask their few figures on the pad.

mod air;
mod machines;
mod movement;
mod own;
mod yard;

use super::super::slots::{Slot, doubted, figures, refused, under_thumb};
use super::super::{Screen, Seen, undo};
use super::{foot, line, saved_fact, say};
use crate::app::workshop::Tap;
use crate::app::workshop::wood::{Page, Wood, WoodTap, known};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::view::{El, el};
use crate::words::en::{common, woods, workshop as words, yard as yard_words};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Decimal, Key, Listed, Set, half_up};
use fivebar_core::wood::species;

pub use air::row as woods_row;
pub use machines::row as machines_row;
pub use movement::written as movement_written;
pub use yard::{row as yard_row, van_row};

/// The page as it stands.
pub fn screen(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    match &wood.page {
        Page::Woods => air::list(app, seen),
        Page::Air => air::page(wood, app, seen),
        Page::Movement => movement::page(wood, app, seen),
        Page::Gluing => movement::gluing(wood, app, seen),
        Page::Own => own::list(app, seen),
        Page::OneWood(_) => own::page(wood, app, seen),
        Page::Machines => machines::list(app, seen),
        Page::Machine(_) => machines::page(wood, app, seen),
        Page::Saw => machines::saw(wood, app, seen),
        Page::Van => yard::van(wood, app, seen),
        Page::Yard => yard::list(app, seen),
        Page::Way => yard::way(wood, app, seen),
        Page::Price(_) | Page::PriceOf => yard::price(wood, app, seen),
    }
}

fn tap(tap: WoodTap) -> Msg {
    say(Tap::Wood(tap))
}

fn open(page: Page) -> Msg {
    tap(WoodTap::Open(page))
}

/// A line of a list.
fn row(name: impl Into<String>, stands: String, page: Page) -> El<Msg> {
    line(name, stands, open(page))
}

/// A list, with one key that adds to it.
fn listed((place, title): (&'static str, &str), main: El<Msg>, app: &App, seen: Seen<'_>) -> Screen {
    super::page(app, (place, title), main, seen)
}

/// A page that asks figures, before it is laid out.
struct Asked {
    place: &'static str,
    title: String,
    small: &'static str,
    /// Over the figures: what they say, and choices.
    above: Vec<El<Msg>>,
    slots: Vec<Slot>,
    /// Under the pad: what may stay empty.
    below: Vec<El<Msg>>,
    /// The list of woods is open in place of the pad.
    instead: Option<El<Msg>>,
    save: Option<&'static str>,
    /// Another way out.
    other: Option<El<Msg>>,
}

impl Asked {
    fn new(place: &'static str, small: &'static str, title: impl Into<String>) -> Asked {
        let save = Some(common::DONE);
        Asked { place, title: title.into(), small, above: vec![], slots: vec![], below: vec![], instead: None, save, other: None }
    }
}

fn laid_out(asked: Asked, wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let units = app.begins_with().1;
    let pad = match asked.instead {
        Some(instead) => vec![instead],
        // Just written: what it says is seen whole, and a figure brings the pad back.
        None if wood.fresh => vec![],
        None => under_thumb(&wood.form, &asked.slots, (units, seen), |press| tap(WoodTap::Press(press))),
    };
    let main = el("main", "scr form")
        .kids(asked.above)
        .kid(figures(&wood.form, &asked.slots, |nth| tap(WoodTap::At(nth))))
        .kids(refused(app, seen))
        .kid(el("div", "push"))
        .kids(pad)
        .kids(asked.below);
    let top = Head::new(asked.small, asked.title).fact(saved_fact(app, seen));
    // What is asked about stands with the keys: under a page of figures nobody would see it.
    let doubt = doubted(&wood.form, (units, seen), |side| tap(WoodTap::IsSo(side)));
    let foot = if wood.fresh && undo::bar(app, seen).is_some() { foot(app, seen) } else { ways_out(asked.save, asked.other, doubt) };
    Screen::new(asked.place, head(top), main).foot(foot).says_it()
}

fn ways_out(save: Option<&'static str>, other: Option<El<Msg>>, doubt: Vec<El<Msg>>) -> El<Msg> {
    let leave = key("key h56", common::NOT_NOW, "", say(Tap::Close));
    let keys = match save {
        Some(words) if other.is_none() => el("div", "um").kid(done_key("key solid t22 h56", words, "", tap(WoodTap::Save))).kid(leave),
        Some(words) => el("div", "g3").kid(done_key("key solid h56", words, "", tap(WoodTap::Save))).kids(other).kid(leave),
        None => key("key h56", common::DONE, "", say(Tap::Close)),
    };
    el("footer", "foot").kids(doubt).kid(keys)
}

/// A key that shows what is chosen, and opens the list of it.
fn chosen(what: &str, answer: String, is_open: bool) -> El<Msg> {
    el("button", "key left wide")
        .attr("type", "button")
        .attr("aria-expanded", if is_open { "true" } else { "false" })
        .on_tap(tap(WoodTap::List))
        .kid(el("span", "s").text(what.to_owned()))
        .kid(el("span", "t17 w8").text(answer))
}

/// The maker's woods: those they added, have piles of, or have a price for; the usual ones where there are none. All others behind a key.
fn every_wood(wood: &Wood, app: &App) -> El<Msg> {
    let (known, units) = (known(app), app.begins_with().1);
    let woods = &known.wood.woods;
    let real = |key: &Key| key.as_str() != "unknown-hardwood";
    let mine: Set<Key> = fold::hauls(&app.shelf().book).flat_map(|haul| haul.piles).filter_map(|pile| pile.wood).collect();
    let priced = known.board_prices.keys().filter_map(|(_, wood)| wood.clone());
    let mine: Set<Key> = woods.own().map(|(key, _)| key.clone()).chain(mine.iter().cloned()).chain(priced).filter(real).collect();
    let usual = woods::usual(units).iter().filter_map(|key| Key::read(key)).filter(real);
    let all = species::listed(units).map(|one| one.key).filter_map(Key::read).filter(real);
    let mut keys: Vec<Key> = if mine.is_empty() { usual.listed() } else { mine.iter().cloned().listed() };
    if wood.others {
        let rest: Vec<Key> = all.filter(|key| !keys.contains(key)).listed();
        keys.extend(rest);
    }
    let mut shown: Vec<Chip> = keys.iter().map(|key| Chip::tap(woods::among(key, woods))).listed();
    shown.extend((!wood.others).then(|| Chip::tap(yard_words::OTHER_WOODS)));
    flowing("key h56", shown, move |nth| tap(keys.get(nth).map_or(WoodTap::Others, |key| WoodTap::Choose(Some(key.clone())))))
}

/// A float to a tenth, as it is said.
fn tenth(n: f64, seen: Seen<'_>) -> String {
    seen.speech.number(half_up(Decimal::try_from(n).unwrap_or_default(), 1), 0, 1)
}

fn per_cent(n: f64, seen: Seen<'_>) -> String {
    crate::words::en::count::percent(&tenth(n, seen))
}

/// A small line of help.
fn hint(words: &'static str) -> El<Msg> {
    worded("p", "t14 i2", words)
}

fn how_many(n: usize, seen: Seen<'_>) -> String {
    if n == 0 { words::NONE_YET.to_owned() } else { seen.speech.number(Decimal::from(n), 0, 0) }
}
