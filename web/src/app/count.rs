//! Count, heard: what a tap at the yard or at the sorting bench changes.

use super::draft::{Draft, DraftTap};
use super::entry::Typed;
use super::order::{Feel, Order};
use super::trip::TripTap;
use super::{App, draft, sorting, trip};
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, HaulCommand, Now, PileFacts};
use fivebar_core::ledger::kind::haul::Way;
use fivebar_core::quantity::{Id, Key, PILE_MOST, reading};
use fivebar_core::sheet::count::{CountSheet, count_of};

/// What lies over the tiles.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Over {
    #[default]
    Nothing,
    /// A new pile, or one that is named and sized later.
    Pile(Box<Draft>),
    /// How many each tap counts.
    Bundle(Typed),
    /// Which pile the last pieces go to.
    Move,
    /// Which pile is sorted, named or counted again.
    Choose,
    /// A pile being sorted.
    Sort(Id),
    /// What is said of the haul and its trip.
    Haul(Box<trip::Details>),
}

/// The state of Count that is not in the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Count {
    /// How many each tap on a tile counts.
    pub armed: u32,
    /// The number behind the key n.
    pub other: Option<u32>,
    pub over: Over,
    /// The last act was a sort or a reject, said on the undo bar.
    pub last_sorted: Option<(Option<Key>, u32)>,
}

impl Default for Count {
    fn default() -> Self {
        Count { armed: 1, other: None, over: Over::Nothing, last_sorted: None }
    }
}

/// What can be said on Count.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    /// The board of day one.
    First,
    Pile(Id),
    Arm(u32),
    OtherBundle,
    Press(Press),
    PadDone,
    NewPile,
    Draft(DraftTap),
    Move,
    MoveTo(Id),
    Trip(TripTap),
    Choose,
    SortPile(Id),
    Edit(Id),
    Good,
    Reject(Key),
    Close,
}

/// Takes in a tap on Count.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::First => first(app, now),
        Tap::Pile(pile) => count_onto(app, pile, now),
        Tap::Arm(n) => arm(app, n),
        Tap::OtherBundle => app.count.over = Over::Bundle(Typed::default()),
        Tap::Press(press) => pressed(app, press),
        Tap::PadDone => pad_done(app),
        Tap::NewPile => app.count.over = Over::Pile(Box::default()),
        Tap::Draft(tap) => draft::heard(app, tap, now),
        Tap::Move => app.count.over = Over::Move,
        Tap::MoveTo(pile) => move_last(app, pile, now),
        Tap::Trip(tap) => trip::heard(app, tap, now),
        Tap::Choose => choose(app),
        Tap::SortPile(pile) => app.count.over = Over::Sort(pile),
        Tap::Edit(pile) => draft::edit(app, pile),
        Tap::Good => sorting::good(app, now),
        Tap::Reject(why) => sorting::reject(app, why, now),
        Tap::Close => app.count.over = Over::Nothing,
    }
}

/// The sheet of the haul in hand.
pub fn sheet(app: &App) -> Option<CountSheet> {
    app.shelf().haul().map(|haul| count_of(&app.shelf().book, &haul, app.now.at))
}

fn way(n: u32) -> Way {
    if n == 1 { Way::Tap } else { Way::Bundle }
}

fn first(app: &mut App, now: Now) {
    let (currency, units) = app.begins_with();
    let n = app.count.armed;
    let command = match sheet(app) {
        Some(sheet) if sheet.tiles.is_empty() => HaulCommand::AddPile { haul: sheet.haul, pile: PileFacts::default(), n, way: way(n) },
        _ => HaulCommand::Begin { currency, units, pile: PileFacts::default(), n, way: way(n) },
    };
    counted(app, &command, n, now);
}

fn count_onto(app: &mut App, pile: Id, now: Now) {
    let Some(sheet) = sheet(app) else { return };
    let n = app.count.armed;
    let there = sheet.tiles.iter().find(|tile| tile.pile == pile).map_or(0, |tile| tile.taken);
    counted(app, &HaulCommand::Count { haul: sheet.haul, pile, n, way: way(n) }, there.saturating_add(n), now);
}

/// Counts, and lets the thumb feel each ten.
fn counted(app: &mut App, command: &HaulCommand, brings_to: u32, now: Now) {
    if app.order(&Command::Haul(command.clone()), now).is_some() {
        app.count.last_sorted = None;
        app.orders.push(Order::Feel(Feel::Count(brings_to)));
    }
}

fn arm(app: &mut App, n: u32) {
    app.count.armed = n;
    app.count.over = Over::Nothing;
}

fn pressed(app: &mut App, press: Press) {
    let sign = app.speech.sign();
    match &mut app.count.over {
        Over::Bundle(typed) => typed.press(press, sign),
        Over::Pile(draft) => draft.typed.press(press, sign),
        Over::Haul(details) => details.press(press, sign),
        _ => {}
    }
}

fn pad_done(app: &mut App) {
    let sign = app.speech.sign();
    let Over::Bundle(typed) = &mut app.count.over else { return };
    if let Some(n) = typed.take(|text| reading::count(text, sign, PILE_MOST)).filter(|n| 0 < *n) {
        app.count.other = Some(n);
        arm(app, n);
    }
}

/// One pile is sorted at once; of several the maker chooses.
fn choose(app: &mut App) {
    let piles = sheet(app).map(|sheet| sheet.tiles).unwrap_or_default();
    app.count.over = match piles.as_slice() {
        [only] => Over::Sort(only.pile),
        _ => Over::Choose,
    };
}

fn move_last(app: &mut App, to: Id, now: Now) {
    app.count.over = Over::Nothing;
    let Some((haul, last)) = sheet(app).and_then(|sheet| Some((sheet.haul, sheet.last?))) else { return };
    app.order(&Command::Haul(HaulCommand::Move { haul, from: last.pile, to, n: last.run }), now);
}
