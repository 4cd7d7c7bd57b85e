//! Count: piles as tiles, the bundle row, the undo bar, the trip.

pub mod enough;
mod hauls;
#[cfg(test)]
mod large;
mod worth;

use super::{Screen, Seen, haul, pile, pile_page, rejects, sort, sought, supplier, unsaved};
use crate::app::count::{Over, Tap, paying, sheet};
use crate::app::pile::PileTap;
use crate::app::trip::{TripTap, next};
use crate::app::{App, Common, Msg, Notice};
use crate::parts::chips::{Chip, bundle};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::load_bar::load_bar;
use crate::parts::pad;
use crate::parts::seg::{Seg, seg};
use crate::parts::tile::{First, Look, Tile, blank, first, tile};
use crate::parts::undo::{Undo, undo};
use crate::view::{El, el};
use crate::words::Speech;
use crate::words::en::{common, count as words, woods};
use fivebar_core::haul::{Load, Where};
use fivebar_core::ledger;
use fivebar_core::quantity::Sorted;
use fivebar_core::quantity::{Count, Id, Units, Wall};
use fivebar_core::sheet::count::{CountSheet, Size, Tile as Pile};
use fivebar_core::sheet::enough::EnoughSheet;
use fivebar_core::sheet::trip_end::forgotten;
use fivebar_core::sheet::worth::WorthSheet;

pub use hauls::other_hauls;

/// The screen of the haul in hand.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let sheet = sheet(app);
    match (&app.count.over, &sheet) {
        (Over::Pile(draft), sheet) => pile::screen(draft, sheet.as_ref(), app, seen),
        (Over::Bundle(typed), _) => bundle_pad(typed, app, seen),
        (Over::Move, Some(sheet)) => which(&moving(sheet, seen), sheet, seen, Tap::MoveTo),
        (Over::Choose, Some(sheet)) => haul::choose(sheet, seen),
        (Over::Page(page), Some(_)) => pile_page::screen(page, app, seen),
        (Over::Sort(pile), Some(sheet)) if has(sheet, *pile) => sort::screen(app, *pile, seen),
        (Over::SortBundle(pile, typed), Some(sheet)) if has(sheet, *pile) => sort::bundle_pad(typed, seen),
        (Over::Rejects(pile), Some(sheet)) if has(sheet, *pile) => rejects::screen(app, seen),
        (Over::Going, _) => supplier::going(app, seen),
        (Over::Supplier(id), _) => supplier::before_going(*id, app, seen),
        (Over::Haul(details), Some(sheet)) => haul::screen(details, sheet, app, seen),
        (Over::Sought, _) => sought::screen(app, seen),
        (Over::Hauls, _) => hauls::screen(app, seen),
        (Over::Enough, Some(sheet)) => enough::screen(&paying(app).0, sheet, app, seen),
        (Over::Worth, Some(sheet)) => {
            let worth = paying(app).1;
            worth.map_or_else(|| tiles(app, sheet, seen), |worth| worth::screen(&worth, sheet, app, seen))
        }
        (_, Some(sheet)) if !sheet.tiles.is_empty() => unsaved_or_tiles(app, sheet, seen),
        (_, sheet) => day_one(app, sheet.as_ref(), seen),
    }
}

/// The pile is one of this haul: another haul, or the example, may have come into hand since it was opened.
fn has(sheet: &CountSheet, pile: Id) -> bool {
    sheet.tiles.iter().any(|tile| tile.pile == pile)
}

/// What could not be saved comes before anything else is counted.
fn unsaved_or_tiles(app: &App, sheet: &CountSheet, seen: Seen<'_>) -> Screen {
    let why = match app.notice {
        Some(Notice::NotSaved(why)) => Some(why),
        _ => None,
    };
    why.and_then(|why| unsaved::screen(why, sheet, app, seen)).unwrap_or_else(|| tiles(app, sheet, seen))
}

/// A pile by its name, its wood, or its letter.
pub fn name(tile: &Pile) -> String {
    match (&tile.name, &tile.wood) {
        (Some(name), _) => name.clone(),
        (None, Some(wood)) => format!("{}, {}", woods::called(wood, tile.own.as_deref()), tile.label),
        (None, None) => words::pile(&tile.label),
    }
}

/// Thickness, width and length: `1 3⁄4 × 1 3⁄4 × 19 in`.
pub fn size(tile: &Pile, units: Units, speech: &dyn Speech) -> String {
    let sides = sides(tile.size, units, speech);
    if sides.is_empty() { sides } else { format!("{sides} {}", common::length_unit(units)) }
}

/// The same, and said where none is known.
pub fn size_or_none(size: Size, units: Units, speech: &dyn Speech) -> String {
    let sides = sides(size, units, speech);
    if sides.is_empty() { words::SIZES_MISSING.into() } else { format!("{sides} {}", common::length_unit(units)) }
}

/// The same without the unit, where there is no room for it.
fn sides(size: Size, units: Units, speech: &dyn Speech) -> String {
    let side = |length| speech.length(length, units);
    let long = size.length.map(|from| match size.length_to {
        Some(to) => format!("{}–{}", side(from), side(to)),
        None => side(from),
    });
    let sides: Vec<String> = [size.thickness.map(side), size.width.map(side), long].into_iter().flatten().collect();
    sides.join(" × ")
}

/// The fact in the head that says whether all is saved, by the clock of where the phone is now.
pub fn saved_fact(app: &App, seen: Seen<'_>) -> Fact {
    let shelf = app.shelf();
    match shelf.saved {
        _ if 0 < shelf.failures() => {
            let n = shelf.failures();
            Fact::Unsaved(common::not_saved(&seen.speech.number(fivebar_core::quantity::Decimal::from(n), 0, 0)))
        }
        _ if shelf.has_unsaved() => Fact::Unsaved(common::NOT_YET_SAVED.into()),
        Some(at) => Fact::Strong(common::saved(&seen.speech.clock(seen.local.wall(at.at)))),
        None if shelf.book.is_empty() => Fact::Strong(common::FIRST_START.into()),
        None => Fact::Strong(last_saved(app, seen)),
    }
}

/// "saved 09:31": the last write of this page, else the last entry there is.
pub fn last_saved(app: &App, seen: Seen<'_>) -> String {
    let last: Option<Wall> = app.shelf().saved.or_else(|| app.shelf().book.entries().next_back().map(|(entry, _)| entry.wall));
    last.map_or_else(|| common::ON_THIS_PHONE.to_owned(), |at| common::saved(&seen.speech.clock(seen.local.wall(at.at))))
}

/// Nothing is counted yet; the trip may have begun all the same.
fn day_one(app: &App, sheet: Option<&CountSheet>, seen: Seen<'_>) -> Screen {
    let began = sheet.map_or(seen.now, |sheet| sheet.began);
    let top = Head::new(words::haul_of(&seen.speech.day(began)), words::NO_PIECES_YET)
        .fact(saved_fact(app, seen))
        .fact(Fact::Plain(common::ON_THIS_PHONE.into()));
    let board = First {
        name: words::pile("A"),
        say: words::TAP_THIS_BOARD.into(),
        figure: seen.speech.count(0),
        aside: words::NAME_LATER.into(),
        counted: 0,
    };
    let carried = sheet.map(|sheet| load(sheet, seen));
    let main = el("main", "scr")
        .kids(carried)
        .kid(first(board, Msg::Count(Tap::First)))
        .kid(new_pile())
        .kids(sought::block(app, seen))
        .kid(whole_haul())
        .kids(supplier::going_key(app));
    Screen::new("count", head(top), main).foot(foot(app, sheet, seen))
}

fn new_pile() -> El<Msg> {
    blank(words::NEW_PILE.into(), words::NEW_PILE_UNDER.into(), Msg::Count(Tap::NewPile)).key("new pile")
}

fn tiles(app: &App, sheet: &CountSheet, seen: Seen<'_>) -> Screen {
    let (enough, worth) = paying(app);
    let top = top(app, sheet, worth.as_ref(), seen);
    let marks = Marks { unsaved: app.shelf().unsaved_counts(), failed: app.shelf().failed_counts() };
    let shown = sheet.tiles.iter().map(|pile| one((app, &marks), pile, sheet, seen));
    let tiles = el("div", "g2 tiles").kids(shown);
    let first_need = enough.wants.is_empty() && !seen.page.is_narrow();
    let need = need(&enough, sheet);
    let (above, beside) = if first_need { (need, None) } else { (None, need) };
    let beside = el("div", if beside.is_some() { "g2" } else { "" }).kids(beside).kid(whole_haul());
    let enough: Vec<El<Msg>> = enough::block(&enough, app, seen).into_iter().chain(sought::block(app, seen)).collect();
    let pays = pays(worth.as_ref(), sheet, app, seen);
    let guessed = sheet.load.guessed.then(|| el("p", "t14 i2").text(words::LOAD_GUESSED));
    let longest = sheet.load.at_longest.then(|| el("p", "t14 i2").text(words::LOAD_AT_LONGEST));
    let pays = el("div", "").kids(hauls::earlier(app)).kids(never_ended(app, seen)).kid(pays).kids(guessed).kids(longest);
    // on a narrow page what the trip saves and costs, and the load, stand below the tiles
    let main = match seen.page.is_narrow() {
        true => el("main", "scr count").kids(enough).kid(tiles).kid(new_pile()).kid(beside).kid(pays),
        false => el("main", "scr count").kids(enough).kid(pays).kids(above).kid(tiles).kid(new_pile()).kid(beside),
    };
    let main = main.kids((sheet.trip.stands == Where::Home).then(|| supplier::going_key(app)).flatten());
    Screen::new("count", head(top), main).foot(foot(app, Some(sheet), seen))
}

/// The way to what is said of the whole haul: from whom, for what, how far.
fn whole_haul() -> El<Msg> {
    key("key soft h48 wide", words::WHOLE_HAUL, words::WHOLE_HAUL_UNDER, Msg::Count(Tap::Trip(TripTap::Open))).key("haul")
}

/// One key asks what is needed of the pile that was counted last, where nothing is yet. At home there is nothing more to load.
fn need(enough: &EnoughSheet, sheet: &CountSheet) -> Option<El<Msg>> {
    if sheet.sorting_begun || sheet.trip.stands == Where::Home {
        return None;
    }
    let last = sheet.last.map(|last| last.pile).or(sheet.tiles.last().map(|tile| tile.pile))?;
    let pile = sheet.tiles.iter().find(|tile| tile.pile == last).filter(|_| enough.wants.iter().all(|wanted| wanted.pile != last))?;
    Some(key("key soft h48", words::i_need_of(&name(pile)), "", Msg::Count(Tap::Page(PileTap::Need(last)))).key("need"))
}

/// A trip that was never ended: what is proposed, and the way to say it otherwise. It blocks nothing.
fn never_ended(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let haul = app.shelf().haul().filter(|_| !app.is_glimpse())?;
    let end = forgotten(&app.shelf().book, &haul, app.now.at)?;
    let say = |tap| Msg::Count(Tap::Trip(tap));
    let span = |span| seen.speech.span(span);
    let proposed = words::ended_when(&seen.speech.clock(end.last), &span(end.wheel), &span(end.bin));
    let keys = el("div", "g2").kid(key("key solid h56", words::YES_HOME, "", say(TripTap::Ended))).kid(key(
        "key h56",
        words::SAY_THE_TIMES,
        "",
        say(TripTap::Open),
    ));
    Some(el("section", "card asks").kid(el("h2", "ink1").text(words::NEVER_ENDED)).kid(el("p", "").text(proposed)).kid(keys))
}

/// The day and the board feet; on a narrow page whether the trip pays, and the load.
fn top(app: &App, sheet: &CountSheet, worth: Option<&WorthSheet>, seen: Seen<'_>) -> Head<Msg> {
    let narrow = seen.page.is_narrow() && !app.is_glimpse();
    let day = words::haul_of(&seen.speech.day(sheet.began));
    let pays = worth.filter(|_| narrow).and_then(|worth| worth::short(worth, seen));
    // The bar lies below the piles there: a load that is too much is said above them.
    let facts = match too_heavy(sheet, seen).filter(|_| narrow) {
        Some(over) => Fact::Warning(over),
        None if narrow && sheet.load.carries.is_some() => Fact::Plain(weight(sheet, seen).0),
        None => Fact::Plain(volume(sheet, seen)),
    };
    let title = common::pieces(sheet.pieces, &seen.speech.count(sheet.pieces));
    Head::new(pays.unwrap_or(day), title).fact(saved_fact(app, seen)).fact(facts)
}

/// Whether the trip pays, beside the load.
fn pays(worth: Option<&WorthSheet>, sheet: &CountSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    match worth {
        Some(worth) => el("div", "g2 pay").kid(worth::line(worth, sheet, app, seen)).kid(load(sheet, seen)),
        None => load(sheet, seen),
    }
}

fn volume(sheet: &CountSheet, seen: Seen<'_>) -> String {
    if sheet.volume.is_zero() && 0 < sheet.unsized_pieces {
        return words::SIZES_MISSING.into();
    }
    let volume = format!("{} {}", seen.speech.volume(sheet.volume, sheet.units), common::volume_unit(sheet.units));
    if 0 < sheet.unsized_pieces { words::at_least(&volume) } else { volume }
}

/// Pieces by pile that are on their way to the store, and that it would not keep.
struct Marks {
    unsaved: Sorted<Id, Count>,
    failed: Sorted<Id, Count>,
}

fn one((app, marks): (&App, &Marks), pile: &Pile, sheet: &CountSheet, seen: Seen<'_>) -> El<Msg> {
    let of = |marks: &Sorted<Id, Count>| marks.get(&pile.pile).copied().unwrap_or_default();
    let (unsaved, failed) = (of(&marks.unsaved).min(pile.taken), of(&marks.failed));
    let last = sheet.last.filter(|last| last.pile == pile.pile);
    // What was taken back is not what was added last; and at home nothing is added.
    let added = last.filter(|_| !app.shelf().took_back_last() && !sheet.sorting_begun && sheet.trip.stands != Where::Home);
    let shown = Tile {
        name: name(pile),
        size: if seen.page.is_narrow() { sides(pile.size, sheet.units, seen.speech) } else { size(pile, sheet.units, seen.speech) },
        by_size: by_size(pile, sheet),
        figure: seen.speech.count(pile.taken),
        counted: pile.taken.saturating_sub(unsaved),
        hollow: unsaved.saturating_add(failed),
        look: look(failed, last.is_some()),
        wide: sheet.tiles.len() == 1,
        plus: [Some(pile_page::on_tile(app, pile.pile)), added.map(|last| format!("+{}", seen.speech.count(last.n)))]
            .into_iter()
            .flatten()
            .filter(|said| !said.is_empty())
            .collect::<Vec<_>>()
            .join(", "),
        said: words::tile_said(pile.taken == 1, &seen.speech.count(app.count.armed)),
    };
    tile(shown, seen.page, Msg::Count(Tap::Pile(pile.pile))).key(pile.pile.to_string())
}

/// Another pile has the same name, or neither has one and both are of one wood.
fn by_size(pile: &Pile, sheet: &CountSheet) -> bool {
    let alike = |other: &&Pile| other.name == pile.name && (pile.name.is_some() || other.wood == pile.wood);
    1 < sheet.tiles.iter().filter(alike).count()
}

fn look(failed: Count, is_last: bool) -> Look {
    match (failed, is_last) {
        (1.., _) => Look::Failed,
        (0, true) => Look::Last,
        (0, false) => Look::Plain,
    }
}

/// The weight, against what the van carries where that is known; pieces without sizes weigh more, and it says so.
/// A tap says more of the haul.
fn load(sheet: &CountSheet, seen: Seen<'_>) -> El<Msg> {
    let row = el("button", "loadrow").attr("type", "button").on_tap(Msg::Count(Tap::Trip(TripTap::Open)));
    let (said, known) = weight(sheet, seen);
    let row = row.kid(el("b", "").text(said));
    let under = |text: String| el("span", "t14 i2").text(text);
    let pieces = || common::pieces(sheet.unweighed_pieces, &seen.speech.count(sheet.unweighed_pieces));
    let without = (!known).then(|| under(words::without_sizes(&pieces())));
    // Where the people alone are too heavy, any wood fills the bar.
    let share = sheet.load.share().unwrap_or(if sheet.load.warns() { 1.0 } else { 0.0 });
    let row = match sheet.load.carries {
        // Of a load that some pile is missing from, no more is known than that it is too much.
        _ if !known && !sheet.load.warns() => row,
        Some(_) => {
            let percent = fivebar_core::quantity::Decimal::try_from(Load::WARNS_AT * 100.0).unwrap_or_default();
            let warns = words::warns_at(&words::percent(&seen.speech.number(percent, 0, 0)));
            let said = match too_heavy(sheet, seen) {
                Some(over) => over,
                None if Load::WARNS_AT <= share => words::near_limit(&warns),
                None => warns,
            };
            row.kid(load_bar(share, Load::WARNS_AT, said))
        }
        None => row.kid(under(words::LOAD_UNKNOWN.into())),
    };
    row.kids(without)
}

/// "172 lb over, leave some": at least so much, where some pile is in no weight.
fn too_heavy(sheet: &CountSheet, seen: Seen<'_>) -> Option<String> {
    let over = sheet.load.over()?;
    let over = words::too_heavy(&seen.speech.whole_mass(over, sheet.units), common::mass_unit(sheet.units));
    Some(if sheet.unweighed_pieces == 0 { over } else { words::at_least(&over) })
}

/// "163.5 of 670 lb", and whether every pile is in it.
fn weight(sheet: &CountSheet, seen: Seen<'_>) -> (String, bool) {
    let (load, units) = (&sheet.load, sheet.units);
    let (mass, unit) = (seen.speech.mass(load.mass, units), common::mass_unit(units));
    let figure = match load.carries {
        Some(most) => words::load(&mass, &seen.speech.whole_mass(most, units), unit),
        None => words::weighs(&mass, unit),
    };
    match sheet.unweighed_pieces {
        0 => (figure, true),
        _ if load.mass.as_kg() <= 0.0 => (words::WEIGHT_UNKNOWN.to_owned(), false),
        _ => (words::at_least(&figure), false),
    }
}

fn foot(app: &App, sheet: Option<&CountSheet>, seen: Seen<'_>) -> El<Msg> {
    let undo = sheet.map_or_else(|| super::undo::bar(app, seen), |sheet| undo_bar(app, sheet, seen));
    el("footer", "foot").kid(bundles(app, seen)).kids(undo).kid(trip(sheet, seen))
}

fn bundles(app: &App, seen: Seen<'_>) -> El<Msg> {
    let armed = app.count.armed;
    let chip = |n: u32| {
        let chip = Chip::choice(seen.speech.count(n), armed == n);
        if armed == n { chip.under(words::EACH_TAP) } else { chip }
    };
    let other = match app.count.other {
        Some(n) => chip(n),
        None => Chip::choice(words::ANY, false),
    };
    let chips = vec![chip(1), chip(5), chip(10), other];
    let other_armed = app.count.other;
    bundle(chips, move |nth| match (nth, other_armed) {
        (0, _) => Msg::Count(Tap::Arm(1)),
        (1, _) => Msg::Count(Tap::Arm(5)),
        (2, _) => Msg::Count(Tap::Arm(10)),
        (_, Some(n)) if n != armed => Msg::Count(Tap::Arm(n)),
        _ => Msg::Count(Tap::OtherBundle),
    })
}

/// Names what it takes back; after a count, moving it to another pile stands beside.
fn undo_bar(app: &App, sheet: &CountSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let last = sheet.last.filter(|last| 0 < last.run && 1 < sheet.tiles.len() && counted_last(app));
    let Some((last, pile)) = last.and_then(|last| Some((last, sheet.tiles.iter().find(|tile| tile.pile == last.pile)?))) else {
        return super::undo::bar(app, seen);
    };
    let bar =
        Undo { words: words::take_back(&seen.speech.count(last.n)), under: common::of_when(&name(pile), &seen.speech.clock(last.at)) };
    let side = (words::move_last(&seen.speech.count(last.run)), Msg::Count(Tap::Move));
    Some(undo(bar, Msg::Common(Common::TakeBack), side))
}

/// Whether the last act of this tab was a count.
fn counted_last(app: &App) -> bool {
    let entry = super::undo::to_take_back(app).and_then(|act| app.shelf().book.entry(act));
    entry.is_some_and(|(entry, _)| matches!(entry.fact, ledger::Fact::PiecesCounted(_)))
}

fn trip(sheet: Option<&CountSheet>, seen: Seen<'_>) -> El<Msg> {
    let now = sheet.map(|sheet| sheet.trip).unwrap_or_default();
    let sort = sheet.filter(|sheet| !sheet.tiles.is_empty()).map(|_| key("key h56", words::SORT, words::OR_MORE, Msg::Count(Tap::Choose)));
    match now.stands {
        Where::NotLeft => {
            let leave = Msg::Count(Tap::Trip(TripTap::Leave));
            match sheet {
                None => key("key h88", words::SET_OUT, words::SET_OUT_UNDER, leave),
                Some(_) => el("div", "side").kid(key("key h56", words::SET_OUT, "", leave)).kids(sort),
            }
        }
        stands => el("div", "side").kid(steps(&now, stands, seen)).kids(sort),
    }
}

fn steps(now: &fivebar_core::haul::TripNow, stands: Where, seen: Seen<'_>) -> El<Msg> {
    let clock = |at: Option<Wall>| at.map_or(words::NOT_YET.to_owned(), |at| seen.speech.clock(at));
    let since = seen.speech.span(now.since);
    let step = |words: &str, here: Where, at: Option<Wall>| match stands == here {
        true if here != Where::Home => Seg::new(words, true).under(since.clone()).running(),
        _ => Seg::new(words, false).under(clock(at)),
    };
    let home = match stands {
        Where::AtBin => Seg::new(words::HOMEWARD, false).under(words::NOT_YET),
        Where::DrivingHome => Seg::new(words::IS_HOME, true).under(since.clone()).running(),
        _ => step(words::HOME, Where::Home, now.home),
    };
    let mut segs = vec![step(words::SET_OUT, Where::Driving, now.left), step(words::AT_THE_BIN, Where::AtBin, now.at_bin), home];
    // on a narrow page what is past makes room
    let past = match stands {
        _ if !seen.page.is_narrow() => 0,
        Where::NotLeft | Where::Driving => 0,
        Where::AtBin => 1,
        Where::DrivingHome | Where::Home => 2,
    };
    segs.drain(..past);
    let tap = next(stands).map_or(TripTap::Open, TripTap::Step);
    seg(words::SET_OUT, segs, move |_| Msg::Count(Tap::Trip(tap.clone())))
}

/// "Move 12 of Ash squares to which pile?"
fn moving(sheet: &CountSheet, seen: Seen<'_>) -> String {
    let last = sheet.last.and_then(|last| Some((last, sheet.tiles.iter().find(|tile| tile.pile == last.pile)?)));
    last.map_or_else(String::new, |(last, pile)| words::move_to_which(&seen.speech.count(last.run), &name(pile)))
}

/// A list of the haul's piles, each a key.
pub fn which(title: &str, sheet: &CountSheet, seen: Seen<'_>, tap: impl Fn(fivebar_core::quantity::Id) -> Tap) -> Screen {
    let from = sheet.last.map(|last| last.pile);
    let rows = sheet.tiles.iter().filter(|tile| Some(tile.pile) != from || !matches!(tap(tile.pile), Tap::MoveTo(_)));
    let keys = rows.map(|tile| {
        let under = common::pieces(tile.taken, &seen.speech.count(tile.taken));
        key("key h88 left", name(tile), under, Msg::Count(tap(tile.pile))).key(tile.pile.to_string())
    });
    let main = el("main", "").kids(keys).kid(key("key h48", common::NOT_NOW, "", Msg::Count(Tap::Close)));
    Screen::new("count/which", head(Head::new("", title)), main)
}

fn bundle_pad(typed: &crate::app::entry::Typed, app: &App, seen: Seen<'_>) -> Screen {
    let main = el("main", "")
        .kid(pad::entry(&typed.text, "", typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(crate::words::en::refusal::misread(why, seen.speech, Units::Inch))))
        .kid(el("div", "push"))
        .kid(pad::pad(None, |press| Msg::Count(Tap::Press(press))))
        .kid(key("key solid h88", common::DONE, "", Msg::Count(Tap::PadDone)))
        .kid(key("key h48", common::NOT_NOW, "", Msg::Count(Tap::Close)));
    let _ = app;
    Screen::new("count/bundle", head(Head::new("", words::HOW_MANY)), main)
}
