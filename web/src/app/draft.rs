//! A new pile by chips, and a pile that is named and sized at home. Nothing is written before the last answer.

use super::App;
use super::count::{Over, Tap, sheet};
use super::doubt::Side;
use super::entry::Typed;
use super::order::{Feel, Order};
use super::pile::{PilePage, PileTap};
use fivebar_core::ledger::decide::{Command, HaulCommand, Now, PileFacts};
use fivebar_core::ledger::kind::haul::Way;
use fivebar_core::quantity::{Id, Key, Length, Units};

/// What is asked next.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Asks {
    #[default]
    Wood,
    Thickness,
    Width,
    Length,
    Name,
}

impl Asks {
    /// The side it asks for, where it asks for one.
    pub fn side(self) -> Option<Side> {
        match self {
            Asks::Thickness => Some(Side::Thickness),
            Asks::Width => Some(Side::Width),
            Asks::Length => Some(Side::Length),
            Asks::Wood | Asks::Name => None,
        }
    }
}

/// The answers so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Draft {
    /// The pile that is being corrected; none for a new one.
    pub pile: Option<Id>,
    pub facts: PileFacts,
    /// What the pile that is corrected said when it was opened.
    pub began: PileFacts,
    pub asks: Asks,
    /// The pad is up for a figure no chip has.
    pub pad: bool,
    pub typed: Typed,
    /// All woods are shown, not only the usual ones.
    pub all_woods: bool,
    /// It came straight from the tiles, and leads back there.
    from_tiles: bool,
}

/// What can be said of a new pile.
#[derive(Clone, Debug, PartialEq)]
pub enum DraftTap {
    Wood(Option<Key>),
    MoreWoods,
    Side(Length),
    Band(Length, Length),
    /// A figure by the pad.
    Other,
    PadDone,
    /// The side that was asked about is as it was typed, or it was meant in millimetres.
    Take(Length),
    /// Back to an answer, to change it.
    Again(Asks),
    Name(String),
    /// Counts now, is named at home.
    Later,
    /// Writes what was corrected.
    Save,
}

/// Takes in an answer.
pub fn heard(app: &mut App, tap: DraftTap, now: Now) {
    let typing = app.speech.typing(units(app));
    let Over::Pile(draft) = &mut app.count.over else { return };
    match tap {
        DraftTap::Wood(wood) => {
            draft.facts.wood = wood.or_else(|| Key::read("unknown-hardwood"));
            draft.next();
        }
        DraftTap::MoreWoods => draft.all_woods = true,
        DraftTap::Side(side) => draft.answer(side),
        DraftTap::Band(from, to) => {
            (draft.facts.length, draft.facts.length_to) = (Some(from), Some(to));
            draft.next();
        }
        DraftTap::Other => (draft.pad, draft.typed) = (true, Typed::default()),
        DraftTap::PadDone => {
            if let Some(side) = draft.asks.side().and_then(|of| draft.typed.side(of, typing)) {
                draft.answer(side);
            }
        }
        DraftTap::Take(side) => draft.answer(side),
        DraftTap::Again(asks) => (draft.asks, draft.pad, draft.typed) = (asks, false, Typed::default()),
        DraftTap::Name(name) => draft.facts.name = Some(name),
        DraftTap::Later => draft.asks = Asks::Name,
        DraftTap::Save => return save(app, now),
    }
    finish(app, now);
}

/// Opens a pile of the haul to be named, sized or corrected.
pub fn edit(app: &mut App, pile: Id, from_tiles: bool) {
    let Some(tile) = sheet(app).and_then(|sheet| sheet.tiles.into_iter().find(|tile| tile.pile == pile)) else { return };
    let size = tile.size;
    let facts = PileFacts {
        wood: tile.wood,
        name: tile.name,
        thickness: size.thickness,
        width: size.width,
        length: size.length,
        length_to: size.length_to,
    };
    let began = facts.clone();
    app.count.over = Over::Pile(Box::new(Draft { pile: Some(pile), facts, began, asks: Asks::Name, from_tiles, ..Draft::default() }));
}

/// The measure was chosen after the wood: that is the wood of its name where this measure is used.
pub fn measured_in(app: &mut App, units: Units) {
    let Over::Pile(draft) = &mut app.count.over else { return };
    let alike = draft.facts.wood.as_ref().and_then(|wood| crate::words::en::woods::of_units(wood.as_str(), units));
    draft.facts.wood = alike.or(draft.facts.wood.take());
}

/// The units of the haul in hand.
pub fn units(app: &App) -> Units {
    sheet(app).map_or_else(|| app.begins_with().1, |sheet| sheet.units)
}

impl Draft {
    /// Where leaving this question leads: a pile that is corrected goes back to its other answers, and from them to where it was opened.
    pub fn leave(&self) -> Tap {
        match self.pile {
            Some(_) if self.asks != Asks::Name => Tap::Draft(DraftTap::Again(Asks::Name)),
            Some(pile) if !self.from_tiles => Tap::Page(PileTap::Open(pile)),
            Some(_) => Tap::Close,
            None => Tap::Close,
        }
    }

    fn answer(&mut self, side: Length) {
        match self.asks {
            Asks::Thickness => self.facts.thickness = Some(side),
            Asks::Width => self.facts.width = Some(side),
            Asks::Length => (self.facts.length, self.facts.length_to) = (Some(side), None),
            Asks::Wood | Asks::Name => {}
        }
        self.next();
    }

    /// The next question that has no answer; a pile that is corrected goes back to its page.
    fn next(&mut self) {
        (self.pad, self.typed) = (false, Typed::default());
        self.asks = match self.asks {
            _ if self.pile.is_some() => Asks::Name,
            Asks::Wood => Asks::Thickness,
            Asks::Thickness => Asks::Width,
            Asks::Width => Asks::Length,
            Asks::Length | Asks::Name => Asks::Name,
        };
        let answered = |asks: Asks| match asks {
            Asks::Thickness => self.facts.thickness.is_some(),
            Asks::Width => self.facts.width.is_some(),
            Asks::Length => self.facts.length.is_some(),
            Asks::Wood | Asks::Name => false,
        };
        if answered(self.asks) {
            self.next();
        }
    }
}

/// A new pile is there with its last answer; the next tap on it counts.
fn finish(app: &mut App, now: Now) {
    let Over::Pile(draft) = &app.count.over else { return };
    if draft.asks != Asks::Name || draft.pile.is_some() {
        return;
    }
    let facts = draft.facts.clone();
    add(app, facts, now);
}

/// The largest bundle that has a key of its own.
const BUNDLE_KEYS: u32 = 10;

/// Adds a pile to the haul in hand, or begins a haul with it.
pub fn add(app: &mut App, pile: PileFacts, now: Now) {
    let (currency, units) = app.begins_with();
    let command = match sheet(app) {
        Some(sheet) => HaulCommand::AddPile { haul: sheet.haul, pile, n: 0, way: Way::Tap },
        None => HaulCommand::Begin { currency, units, pile, n: 0, way: Way::Tap },
    };
    if app.order(&Command::Haul(command), now).is_some() {
        app.count.over = Over::Nothing;
        // A bundle of one pile's own would count a new pile wrong with its first tap.
        app.count.armed = if BUNDLE_KEYS < app.count.armed { 1 } else { app.count.armed };
        app.orders.push(Order::Feel(Feel::Start));
    }
}

/// Writes the corrections of a pile: only what was corrected, so that the other phone's corrections stay.
pub fn save(app: &mut App, now: Now) {
    let Over::Pile(draft) = &app.count.over else { return };
    let (facts, Some(pile), from_tiles) = (draft.facts.clone().corrects(&draft.began), draft.pile, draft.from_tiles) else { return };
    let Some(sheet) = sheet(app) else { return };
    if facts == PileFacts::default()
        || app.order(&Command::Haul(HaulCommand::DescribePile { haul: sheet.haul, pile, facts }), now).is_some()
    {
        app.count.over = if from_tiles { Over::Nothing } else { Over::Page(Box::new(PilePage::of(pile))) };
    }
}
