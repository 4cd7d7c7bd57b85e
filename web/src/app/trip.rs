//! The trip and the haul, heard: leaving, at the bin, driving home, home; what was driven, given and carried.

use super::App;
use super::count::{Over, sheet};
use super::entry::Typed;
use super::order::{Feel, Order};
use super::workshop::people;
use crate::parts::pad::Press;
use fivebar_core::haul::Where;
use fivebar_core::ledger::decide::{Command, HaulCommand, MoneyCommand, Much, Now, On};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::haul::{HaulDescribed, Per, Step, TripDescribed};
use fivebar_core::quantity::reading::{self, Misread, Quantity, Sign};
use fivebar_core::quantity::{Decimal, Id, Key};
use fivebar_core::sheet::trip_end::forgotten;

/// What can be said of the trip.
#[derive(Clone, Debug, PartialEq)]
pub enum TripTap {
    Leave,
    Step(Step),
    NewHaul,
    Open,
    Choose(Field),
    /// Who the haul is from.
    Supplier(Id),
    /// The name of a new supplier, as it is typed.
    Named(String),
    AddSupplier,
    /// Whether it saves a trip to the timber yard.
    SavesTrip(bool),
    /// The share of the drive that was for this haul, in per cent.
    Share(u8),
    /// The trip whose end was forgotten ended as is proposed.
    Ended,
    /// Every haul, to take one in hand.
    Hauls,
    /// This one is in hand; nothing said, the newest.
    InHand(Option<Id>),
    Save,
}

/// What is said of the haul, by the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    Distance,
    Carries,
    /// How many are in the van today.
    People,
    Wheel,
    Bin,
    /// A gift, or the price paid.
    Gift,
    /// Whose bin it was: a name, not a figure.
    Supplier,
    /// How much of the drive was for this haul.
    Share,
}

/// The most people a van has seats for, or nearly.
const ABOARD_MOST: u32 = 20;

/// Details being typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Details {
    pub field: Option<Field>,
    pub typed: Typed,
}

impl Details {
    pub fn press(&mut self, press: Press, sign: Sign) {
        self.typed.press(press, sign);
    }
}

/// Takes in what is said of the trip.
pub fn heard(app: &mut App, tap: TripTap, now: Now) {
    match tap {
        TripTap::Leave => leave(app, now),
        TripTap::Step(step) => reached(app, step, now),
        TripTap::NewHaul => new_haul(app, now),
        TripTap::Open => open(app, now),
        TripTap::Choose(field) => {
            if let Over::Haul(details) = &mut app.count.over {
                **details = Details { field: Some(field), typed: Typed::default() };
            }
        }
        TripTap::Supplier(supplier) => from(app, supplier, now),
        TripTap::Named(name) => {
            if let Over::Haul(details) = &mut app.count.over {
                details.typed.text = name;
            }
        }
        TripTap::AddSupplier => add_supplier(app, now),
        TripTap::Hauls => app.count.over = Over::Hauls,
        TripTap::InHand(haul) => in_hand(app, haul),
        TripTap::SavesTrip(saves) => saves_trip(app, saves, now),
        TripTap::Share(percent) => share(app, Decimal::new(i64::from(percent), 2), now),
        TripTap::Ended => ended(app, now),
        TripTap::Save => save(app, now),
    }
}

/// What is said of the haul in hand; where there is none yet, one begins.
fn open(app: &mut App, now: Now) {
    let (currency, units) = app.begins_with();
    let begin = || Command::Haul(HaulCommand::BeginBare { currency, units });
    if sheet(app).is_some() || app.order(&begin(), now).is_some() {
        app.count.over = Over::Haul(Box::default());
    }
}

fn leave(app: &mut App, now: Now) {
    let (currency, units) = app.begins_with();
    let haul = sheet(app).map(|sheet| sheet.haul);
    if app.order(&Command::Haul(HaulCommand::Leave { haul, currency, units }), now).is_some() {
        app.orders.push(Order::Feel(Feel::Start));
    }
}

fn reached(app: &mut App, step: Step, now: Now) {
    let Some((haul, trip)) = sheet(app).and_then(|sheet| Some((sheet.haul, sheet.trip.trip?))) else { return };
    if app.order(&Command::Haul(HaulCommand::Step { haul, trip, step }), now).is_some() {
        app.orders.push(Order::Feel(if step == Step::Home { Feel::Stop } else { Feel::Start }));
    }
}

/// A haul without a pile; the last one stays as it is.
fn new_haul(app: &mut App, now: Now) {
    let (currency, units) = app.begins_with();
    if app.order(&Command::Haul(HaulCommand::BeginBare { currency, units }), now).is_some() {
        in_hand(app, None);
    }
}

fn in_hand(app: &mut App, haul: Option<Id>) {
    app.shelf_mut().take_in_hand(haul);
    app.count = super::count::Count { armed: app.count.armed, other: app.count.other, ..super::count::Count::default() };
}

/// The next step of a trip, by where it stands.
pub fn next(stands: Where) -> Option<Step> {
    match stands {
        Where::Driving => Some(Step::AtBin),
        Where::AtBin => Some(Step::Homeward),
        Where::DrivingHome => Some(Step::Home),
        Where::NotLeft | Where::Home => None,
    }
}

/// Somebody drives.
fn somebody(people: u32) -> Result<u32, Misread> {
    let (least, most) = (Quantity::Count(1), Quantity::Count(ABOARD_MOST));
    if 0 < people { Ok(people) } else { Err(Misread::OutOfRange { met: Some(Quantity::Count(0)), least, most, might_be: None }) }
}

fn save(app: &mut App, now: Now) {
    let (speech, units) = (app.speech.clone(), super::draft::units(app));
    let Some(sheet) = sheet(app) else { return };
    let (rate, per) = mileage(app);
    let Over::Haul(details) = &mut app.count.over else { return };
    let Some(field) = details.field else { return };
    let typing = speech.typing(units);
    let empty_trip = |trip| TripDescribed::of(sheet.haul, trip);
    let most = fivebar_core::quantity::Span::RUN_MOST;
    let command = match (field, sheet.trip.trip) {
        (Field::Carries, _) => details
            .typed
            .take(|text| reading::mass(text, typing))
            .map(|mass| HaulCommand::Describe(HaulDescribed { carries: Some(mass.as_grams()), ..HaulDescribed::of(sheet.haul) })),
        (Field::People, _) => details
            .typed
            .take(|text| reading::count(text, typing.sign, ABOARD_MOST).and_then(somebody))
            .map(|people| HaulCommand::Describe(HaulDescribed { people: Some(people), ..HaulDescribed::of(sheet.haul) })),
        (Field::Distance, Some(trip)) => details
            .typed
            .take(|text| reading::distance(text, typing))
            .map(|distance| HaulCommand::DescribeTrip(TripDescribed { distance: Some(distance), rate, per, ..empty_trip(trip) })),
        (Field::Wheel, Some(trip)) => details
            .typed
            .take(|text| reading::span(text, typing.sign, most))
            .map(|wheel| HaulCommand::DescribeTrip(TripDescribed { wheel: Some(wheel), ..empty_trip(trip) })),
        (Field::Bin, Some(trip)) => details
            .typed
            .take(|text| reading::span(text, typing.sign, most))
            .map(|bin| HaulCommand::DescribeTrip(TripDescribed { bin: Some(bin), ..empty_trip(trip) })),
        (Field::Gift, _) => return gift(app, now),
        (Field::Share, Some(_)) => {
            if let Some(percent) = details.typed.take(|text| reading::percent(text, typing.sign)) {
                share(app, percent.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default(), now);
            }
            return;
        }
        (Field::Supplier, _) | (_, None) => None,
    };
    if let Some(command) = command
        && app.order(&Command::Haul(command), now).is_some()
    {
        app.count.over = Over::Haul(Box::default());
    }
}

/// The rate per mile or km as the till has it.
fn mileage(app: &App) -> (Option<Exact>, Option<Per>) {
    let currency = app.shelf().haul().map_or_else(|| app.begins_with().0, |haul| haul.currency);
    let till = app.shelf().workshop().tills.get(&currency).cloned().unwrap_or_default();
    (till.mileage.map(Exact), till.per)
}

fn from(app: &mut App, supplier: Id, now: Now) {
    let Some(haul) = sheet(app).map(|sheet| sheet.haul) else { return };
    let said = HaulDescribed { supplier: Some(supplier), ..HaulDescribed::of(haul) };
    if app.order(&Command::Haul(HaulCommand::Describe(said)), now).is_some() {
        app.count.over = Over::Haul(Box::default());
    }
}

/// Of the drive, so much was for this haul.
fn share(app: &mut App, share: Decimal, now: Now) {
    let Some((haul, trip)) = sheet(app).and_then(|sheet| Some((sheet.haul, sheet.trip.trip?))) else { return };
    let said = TripDescribed { share: Some(Exact(share.normalize())), ..TripDescribed::of(haul, trip) };
    if app.order(&Command::Haul(HaulCommand::DescribeTrip(said)), now).is_some() {
        app.count.over = Over::Haul(Box::default());
    }
}

/// What was forgotten is written as it is proposed: the times are said, the stamps stay.
fn ended(app: &mut App, now: Now) {
    let Some(haul) = app.shelf().haul() else { return };
    let Some(end) = forgotten(&app.shelf().book, &haul, now.wall.at) else { return };
    app.order(&Command::Haul(HaulCommand::EndTrip { haul: haul.id, trip: end.trip, wheel: end.wheel, bin: end.bin }), now);
}

fn saves_trip(app: &mut App, saves: bool, now: Now) {
    let Some(haul) = sheet(app).map(|sheet| sheet.haul) else { return };
    let said = HaulDescribed { saves_trip: Some(saves), ..HaulDescribed::of(haul) };
    app.order(&Command::Haul(HaulCommand::Describe(said)), now);
}

/// A new supplier by the name that is typed; the haul is from there.
fn add_supplier(app: &mut App, now: Now) {
    let Over::Haul(details) = &app.count.over else { return };
    let (name, Some(haul)) = (details.typed.text.trim().to_owned(), sheet(app).map(|sheet| sheet.haul)) else { return };
    if people::named(app, &Command::Haul(HaulCommand::FromNew { haul }), name, now) {
        app.count.over = Over::Haul(Box::default());
    }
}

/// Money for the haul itself, in its own currency.
fn gift(app: &mut App, now: Now) {
    let (sign, Some(haul)) = (app.speech.sign(), app.shelf().haul()) else { return };
    let Over::Haul(details) = &mut app.count.over else { return };
    let Some(sum) = details.typed.take(|text| reading::money(text, haul.currency, sign)) else { return };
    let Some(kind) = Key::read("gift") else { return };
    let spend = MoneyCommand::Spend { on: On::Haul(haul.id), much: Much::Whole(sum), kind, what: None, when: None };
    if app.order(&Command::Money(spend), now).is_some() {
        app.count.over = Over::Haul(Box::default());
    }
}
