//! What is done with a pile: counted, set apart, gone, moved to a place, its moisture read, taken; and boards that were bought.

use super::super::super::App;
use super::super::super::doubt::Side;
use super::super::super::entry::moisture;
use super::super::super::form::Form;
use super::super::super::order::{Feel, Order};
use super::super::super::plan;
use super::{Ask, GONE_TO, Page};
use fivebar_core::ledger::decide::{Command, HaulCommand, Lying, Now, PileFacts, StockCommand, WoodCommand};
use fivebar_core::quantity::{Count, Decimal, Key, Length, PILE_MOST, reading, writing};
use fivebar_core::sheet::alike::Alike;
use fivebar_core::sheet::stock::{self, StockPile};

/// Writes what was said of a pile, and shows the pile; or says in place why not.
pub fn done(app: &mut App, (at, ask): (Lying, Ask), now: Now) {
    let said = match ask {
        Ask::Size => sized(app, at, now),
        Ask::Count => number(app).map(|n| of_stock(at, StockCommand::CountRack { n, why: words(app) })),
        Ask::Gone => number(app).zip(gone_to(app)).map(|(n, to)| of_stock(at, StockCommand::Gone { n, to })),
        Ask::Place => Some(of_stock(at, StockCommand::Place { place: app.workshop.rack.words.trim().to_owned() })),
        Ask::Moisture => percent(app).map(|percent| of_stock(at, StockCommand::Moisture { percent: Some(percent), wet: Some(false) })),
        Ask::Apart => number(app).zip(app.workshop.rack.job).map(|(n, job)| of_stock(at, StockCommand::Reserve { job, n })),
        Ask::Take => number(app).zip(app.workshop.rack.job).map(|(n, job)| {
            let Lying { haul, pile } = at;
            Command::Haul(HaulCommand::Take { haul, pile, job, n })
        }),
    };
    let (before, found) = (before(app, at, now), app.workshop.rack.form.text(0).to_owned());
    let is_count = ask == Ask::Count && said.is_some();
    write(app, at, said, now);
    if let (true, Ok(n)) = (is_count, reading::count(&found, app.speech.sign(), PILE_MOST)) {
        gave_up(app, before, n);
    }
}

/// What is known of a pile stands in the form that changes it.
pub(super) fn fill(app: &mut App) {
    let Page::Ask(at, Ask::Size) = app.workshop.rack.page else { return };
    let Ok(pile) = stock::pile(&app.shelf().shop(app.now.at), at) else { return };
    let typing = app.speech.typing(pile.haul.units);
    let written = |side: Option<Length>| side.map(|side| writing::length(side, typing)).unwrap_or_default();
    let sides = [pile.thickness, pile.width, pile.length, pile.length_to];
    let rack = &mut app.workshop.rack;
    (rack.form, rack.words, rack.wood) = (Form::filled(sides.map(written)), pile.alike.name.unwrap_or_default(), pile.alike.wood);
}

/// Its name and its size as far as they were corrected; a side left empty stays as it was, and a length without a longest one ends a band.
fn sized(app: &mut App, at: Lying, now: Now) -> Option<Command> {
    let there = stock::pile(&app.shelf().shop(now.wall.at), at).ok()?;
    let (typing, name) = (app.speech.typing(there.haul.units), Some(app.workshop.rack.words.clone()));
    let wood = app.workshop.rack.wood.clone();
    let form = &mut app.workshop.rack.form;
    let mut side = |nth, of| form.maybe_side(nth, of, typing);
    let (thickness, width) = (side(0, Side::Thickness)?, side(1, Side::Width)?);
    let (length, length_to) = (side(2, Side::Length)?, side(3, Side::Length)?);
    let Alike { thickness: thick, width: wide, length: long, length_to: longest, name: called, wood: was, .. } = there.alike;
    let began = PileFacts { wood: was, name: called, thickness: thick, width: wide, length: long, length_to: longest };
    let facts = PileFacts { wood, name, thickness, width, length, length_to }.corrects(&began);
    if facts == PileFacts::default() {
        app.workshop.rack.show(Page::Pile(at));
        return None;
    }
    let Lying { haul, pile } = at;
    Some(Command::Haul(HaulCommand::DescribePile { haul, pile, facts }))
}

/// A pile as it lies before it is counted.
pub(super) fn before(app: &App, at: Lying, now: Now) -> Option<StockPile> {
    stock::pile(&app.shelf().shop(now.wall.at), at).ok()
}

/// Fewer were found than were set apart: it is said once more, after it was written.
pub(super) fn gave_up(app: &mut App, before: Option<StockPile>, n: Count) {
    app.workshop.rack.given_up = before.filter(|pile| pile.apart_after(n).is_some()).map(|pile| (pile, n));
}

/// The other key of a page: what is set apart is free again, or the pile is plainly wet.
pub fn other(app: &mut App, now: Now) {
    let Page::Ask(at, ask) = app.workshop.rack.page else { return };
    let said = match ask {
        Ask::Apart => number(app).zip(app.workshop.rack.job).map(|(n, job)| of_stock(at, StockCommand::FreeReserved { job, n })),
        Ask::Moisture => Some(of_stock(at, StockCommand::Moisture { percent: None, wet: Some(true) })),
        _ => None,
    };
    write(app, at, said, now);
}

fn write(app: &mut App, at: Lying, said: Option<Command>, now: Now) {
    if said.is_some_and(|command| app.order(&command, now).is_some()) {
        app.workshop.rack.show(Page::Pile(at));
        app.orders.push(Order::Feel(Feel::Start));
    }
}

fn of_stock(at: Lying, command: StockCommand) -> Command {
    Command::Stock(at, command)
}

/// The number of pieces that is typed; the reason stays beside it where it is none.
pub(super) fn number(app: &mut App) -> Option<Count> {
    let sign = app.speech.sign();
    app.workshop.rack.form.take(0, |text| reading::count(text, sign, PILE_MOST))
}

/// The reason in the maker's words, where there is one.
pub(super) fn words(app: &App) -> Option<String> {
    Some(app.workshop.rack.words.trim().to_owned()).filter(|words| !words.is_empty())
}

fn percent(app: &mut App) -> Option<Decimal> {
    let sign = app.speech.sign();
    app.workshop.rack.form.take(0, |text| moisture(text, sign))
}

fn gone_to(app: &App) -> Option<Key> {
    GONE_TO.get(app.workshop.rack.to).and_then(|to| Key::read(to))
}

/// Writes bought boards down; the pile they are is shown.
pub fn bought(app: &mut App, now: Now) {
    let Some(command) = buy(app) else { return };
    let boards = if let WoodCommand::Buy { pile, n, .. } = &command { Some((pile.clone(), *n)) } else { None };
    if let Some(written) = app.order(&Command::Wood(command), now) {
        if let Some((PileFacts { wood, thickness: Some(thick), width: Some(wide), length: Some(long), .. }, n)) = boards {
            plan::were_bought(app, (wood.as_ref(), [thick, wide, long]), n);
        }
        let find = |kind: &str| written.entries.iter().find(|entry| entry.fact.kind() == kind).map(|entry| entry.id);
        let lying = find("HaulBegan").zip(find("PileAdded"));
        let plan = app.workshop.asked_from.filter(|_| super::ends_at_plan(&app.workshop));
        app.workshop.rack.show(lying.map_or(Page::List, |(haul, pile)| Page::Pile(Lying { haul, pile })));
        app.orders.push(Order::Feel(Feel::Start));
        // A plan that wanted them is next.
        plan.into_iter().for_each(|place| app.go(place));
    }
}

fn buy(app: &mut App) -> Option<WoodCommand> {
    let (currency, units) = app.begins_with();
    let (typing, sign) = (app.speech.typing(units), app.speech.sign());
    let rack = &mut app.workshop.rack;
    let mut side = |nth, of| rack.form.side(nth, of, typing);
    let sides = [side(0, Side::Thickness)?, side(1, Side::Width)?, side(2, Side::Length)?];
    let [thickness, width, length] = sides.map(Some);
    let n = rack.form.take(3, |text| reading::count(text, sign, PILE_MOST))?;
    let paid = rack.form.take(4, |text| reading::money(text, currency, sign))?;
    let pile = PileFacts { wood: rack.wood.clone(), thickness, width, length, ..PileFacts::default() };
    Some(WoodCommand::Buy { units, pile, n, paid, supplier: rack.from })
}
