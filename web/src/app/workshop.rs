//! Workshop, heard: the rate, how one is paid, currency and units, people, costs of no job, copies.

pub mod cans;
pub mod copies;
pub mod designs;
pub mod figures;
pub mod hours;
pub mod people;
pub mod rack;
pub mod sides;
pub mod spending;
pub mod taxes;
pub mod tools;
pub mod wood;

use super::App;
use super::entry::Typed;
use super::here::{Chosen, choose};
use super::jobs;
use super::news::NotRead;
use super::order::Order;
use super::spent_on::{SpentOn, SpentTap};
use crate::parts::Place;
use crate::parts::pad::Press;
use crate::words::en::copies as words;
use copies::Coming;
use figures::Figure;
use fivebar_core::ledger::decide::{BookCommand, Command, MoneyCommand, Now};
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::kind::money::{CostHomed, Home, TillSet};
use fivebar_core::ledger::line::document::DocumentTrouble;
use fivebar_core::ledger::people::Person;
use fivebar_core::money::point::Points;
use fivebar_core::quantity::reading::Quantity;
use fivebar_core::quantity::{Currency, Id, Key, Side, Units};
use std::rc::Rc;

/// What lies over the workshop's first page.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Over {
    #[default]
    Nothing,
    Rate,
    /// The parts of the rate that are no hours and no pay.
    CostsAndTax,
    /// Tools that wear out.
    Tools,
    /// The rate's guess beside what the year was so far.
    RealYear,
    Till,
    /// When the maker works.
    Hours,
    Units,
    Copies,
    /// What a copy would bring, before it is accepted.
    Coming(Rc<Coming>),
    /// Why a file could not be brought in.
    NoCopy(NoCopy),
    /// All data goes, when the word is typed.
    Wipe,
    Rack,
    /// Parts lists with operations, to make again.
    Designs,
    People,
    /// One supplier: their past.
    Supplier(Id),
    /// Name, phone and place of a person, being changed.
    Person(Box<people::Changing>),
    Costs,
    Hand,
    Cautions,
    Help,
    About,
    /// Woods and air, machines, the van, the timber yard.
    Wood(Box<wood::Wood>),
    /// A figure being typed; where to go back to.
    Figure(Figure, Typed, Box<Over>),
}

/// Why a file is no copy.
#[derive(Clone, Debug, PartialEq)]
pub enum NoCopy {
    /// It could not be read at all.
    NotRead(NotRead),
    /// It was read, and is none that can be brought in.
    Trouble(DocumentTrouble),
}

/// The state of Workshop that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workshop {
    pub over: Over,
    /// A name or a word being typed.
    pub text: String,
    /// A name was typed and not added: it is asked about once before it is left.
    pub asks_role: bool,
    /// The page was to be left before it was said what stays.
    pub asks_side: bool,
    /// What became of the last copy.
    pub said: Option<copies::Became>,
    /// The copy that is being handed on.
    pub keeping: Option<copies::Keeping>,
    /// What a copy brings, on its way to the store.
    pub coming: Option<Rc<Coming>>,
    /// Who was just forgotten: gone for good at the next act.
    pub lately: Option<(Id, Person)>,
    /// Another place asked for this page: leaving it leads back there.
    pub asked_from: Option<Place>,
    /// The line of a list that is opened.
    pub opened: Option<Id>,
    pub rack: rack::Rack,
    /// A pay for an hour that is asked about, as it was typed.
    pub sure: Option<String>,
    /// A tool that is being written down.
    pub tool: Option<Box<tools::Draft>>,
    /// A can or pack that is being written down.
    pub can: Option<Box<cans::Draft>>,
    /// Cans and packs that are used up are shown.
    pub used_up: bool,
    /// A rate of sales tax that is being written down.
    pub tax: Option<Box<taxes::Draft>>,
    /// The side of sales tax that is asked about.
    pub side: Option<Side>,
    /// A cost of no job that is being written down, or what came back of one.
    pub spending: Option<Box<jobs::draft::Draft>>,
    /// The day a can was bought on.
    pub spent_on: SpentOn,
    /// Days off being chosen.
    pub off: Option<hours::Off>,
}

/// What can be said on Workshop.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    Open(Over),
    Figure(Figure),
    Press(Press),
    PadDone,
    SpentOn(SpentTap),
    /// Something is spent on no job: its kind.
    Spend(&'static str),
    /// A drive for no job.
    Drive,
    /// Some of what a line says came back.
    CameBack(Id),
    /// Takes one of the readings a figure may have.
    Take(Quantity),
    Currency(Currency),
    Units(Units),
    /// Where sales tax stands; asked about where tags come to mean something else by it.
    Side(Side),
    /// The side that is asked about is taken: what buyers pay stays, else what is on the tags.
    Turn(sides::Stays),
    NoTurn,
    Point(Points),
    /// Cash goes up to the smallest coin, or to the nearest.
    CashUp(bool),
    Typed(String),
    AddPerson(Role),
    Forget(Id),
    /// Opens a person's name, phone and place.
    Person(Id),
    /// Types the nth of the three.
    Told(usize, String),
    SavePerson,
    Choose(Chosen),
    /// Opens a line of a list, or closes it.
    Line(Id),
    Strike(Id),
    Tool(tools::ToolTap),
    Tax(taxes::TaxTap),
    Can(cans::CanTap),
    /// Where a kind of cost belongs.
    Home(Key, Home),
    /// What is left of a can is gone.
    EmptyCan(Id),
    Wood(wood::WoodTap),
    Rack(rack::RackTap),
    Design(designs::DesignTap),
    Hours(hours::HoursTap),
    KeepCopy,
    /// Keeps a copy from any place: what became of it is said on the page of copies.
    KeepCopyNow,
    CopyText,
    CopiedText(bool),
    /// Opens help from any place.
    ShowHelp,
    /// Opens a page from any place.
    ShowPage(Over),
    /// The copy was handed on, or not.
    Handed(super::news::Handed),
    PickCopy,
    Picked(String),
    NotPicked(NotRead),
    AddThese,
    /// The lines of a copy were written, or not.
    Added(Result<(), super::news::Trouble>),
    Wipe,
    Close,
}

/// Takes in a tap on Workshop.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::Open(over) => open(app, over),
        Tap::Figure(figure) => ask(app, figure),
        Tap::Press(press) => {
            let sign = app.speech.sign();
            (app.notice, app.workshop.sure) = (None, None);
            if let Over::Figure(_, typed, _) = &mut app.workshop.over {
                typed.press(press, sign);
            }
        }
        Tap::PadDone => figures::done(app, now),
        Tap::SpentOn(tap) => app.workshop.spent_on.heard(tap, now),
        Tap::Spend(_) | Tap::Drive | Tap::CameBack(_) => spending::asked(app, &tap),
        Tap::Take(reading) => figures::take(app, &reading, now),
        Tap::Currency(currency) => set(app, (Some(currency), None), now),
        Tap::Units(units) => {
            set(app, (None, Some(units)), now);
            super::draft::measured_in(app, units);
        }
        Tap::Side(_) | Tap::Turn(_) | Tap::NoTurn => sides::heard(app, &tap, now),
        Tap::CashUp(up) => till(app, |till| till.cash_up = Some(up), now),
        Tap::Point(point) => till(app, |till| till.point = Key::read(point.key()), now),
        Tap::Typed(text) => (app.workshop.text, app.workshop.asks_role) = (text, false),
        Tap::AddPerson(role) => people::add(app, role, now),
        Tap::Forget(person) => people::forget(app, person, now),
        Tap::Person(person) => people::open(app, person),
        Tap::Told(nth, text) => people::told(app, nth, text),
        Tap::SavePerson => people::save(app),
        Tap::Choose(chosen) => choose(app, chosen),
        Tap::Line(line) => app.workshop.opened = (app.workshop.opened != Some(line)).then_some(line),
        Tap::Strike(line) => strike(app, line, now),
        Tap::Tool(tap) => tools::heard(app, tap, now),
        Tap::Tax(tap) => taxes::heard(app, tap, now),
        Tap::Can(tap) => cans::heard(app, tap, now),
        Tap::Home(..) | Tap::EmptyCan(_) => costs(app, tap, now),
        Tap::Wood(tap) => wood::heard(app, tap, now),
        Tap::Rack(tap) => rack::heard(app, tap, now),
        Tap::Design(tap) => designs::heard(app, tap, now),
        Tap::Hours(tap) => hours::heard(app, tap, now),
        Tap::Wipe => wipe(app),
        Tap::ShowPage(over) => {
            let from = app.place;
            app.go(Place::Workshop);
            open(app, over);
            app.workshop.asked_from = Some(from).filter(|from| *from != Place::Workshop);
        }
        Tap::ShowHelp => {
            app.go(Place::Workshop);
            app.workshop.over = Over::Help;
        }
        Tap::KeepCopyNow => {
            app.go(Place::Workshop);
            app.workshop.over = Over::Copies;
            copies::heard(app, Tap::KeepCopy, now);
        }
        Tap::Close => close(app),
        copies => copies::heard(app, copies, now),
    }
}

/// The pad for a figure, over the page that asks it.
fn ask(app: &mut App, figure: Figure) {
    let back = Box::new(std::mem::take(&mut app.workshop.over));
    app.workshop.over = Over::Figure(figure, Typed::default(), back);
    (app.workshop.opened, app.notice, app.workshop.spent_on) = (None, None, SpentOn::default());
    app.workshop.sure = None;
}

/// Where a kind of cost belongs, or that a can is empty.
fn costs(app: &mut App, tap: Tap, now: Now) {
    let currency = app.begins_with().0;
    let command = match tap {
        Tap::Home(kind, home) => MoneyCommand::SetHome(CostHomed { currency, kind, home }),
        Tap::EmptyCan(can) => MoneyCommand::EmptyCan { can },
        _ => return,
    };
    app.order(&Command::Money(command), now);
}

/// Opens a page; a copy on its way stays on its way.
fn open(app: &mut App, over: Over) {
    let Workshop { keeping, coming, lately, rack, .. } = std::mem::take(&mut app.workshop);
    app.workshop = Workshop { over, keeping, coming, lately, rack: rack.opened_anew(), ..Workshop::default() };
    app.notice = None;
}

/// Back from a figure to where it was asked, else to the first page.
fn close(app: &mut App) {
    let typed = app.workshop.over == Over::People && !app.workshop.text.trim().is_empty();
    if typed && !std::mem::replace(&mut app.workshop.asks_role, true) {
        return;
    }
    step_back(app);
    if matches!(app.workshop.over, Over::Nothing)
        && let Some(place) = app.workshop.asked_from.take()
    {
        app.go(place);
    }
}

fn step_back(app: &mut App) {
    app.notice = None;
    if let Over::Wood(_) = app.workshop.over {
        return wood::back(app);
    }
    if app.workshop.side.is_some() {
        // Said once that nothing is taken yet; then it is let go.
        if std::mem::replace(&mut app.workshop.asks_side, true) {
            (app.workshop.side, app.workshop.asks_side) = (None, false);
        }
        return;
    }
    (app.workshop.text, app.workshop.said, app.workshop.asks_role) = (String::new(), None, false);
    if app.workshop.spending.take().is_some() {
        return;
    }
    if app.workshop.tool.take().is_some() || app.workshop.tax.take().is_some() || app.workshop.can.take().is_some() {
        return;
    }
    if matches!(app.workshop.over, Over::Rack) && !rack::ends_at_plan(&app.workshop) && app.workshop.rack.close() {
        return;
    }
    app.workshop.over = match std::mem::take(&mut app.workshop.over) {
        Over::Figure(_, _, back) => *back,
        Over::CostsAndTax | Over::RealYear => Over::Rate,
        Over::Tools => Over::CostsAndTax,
        Over::Supplier(_) | Over::Person(_) => Over::People,
        Over::Coming(_) | Over::NoCopy(_) | Over::Wipe => Over::Copies,
        _ => Over::Nothing,
    };
}

/// Strikes a line of a list; the bar puts it back.
fn strike(app: &mut App, line: Id, now: Now) {
    if app.order(&Command::Book(BookCommand::TakeBack { act: line }), now).is_some() {
        app.shelf_mut().took_back(line);
        app.workshop.opened = None;
    }
}

/// Everything goes, once the word stands there.
fn wipe(app: &mut App) {
    if fivebar_core::quantity::in_small(app.workshop.text.trim()) == words::WIPE_WORD {
        app.orders.push(Order::WipeAll);
    }
}

fn set(app: &mut App, (currency, units): (Option<Currency>, Option<Units>), now: Now) {
    app.order(&Command::Book(BookCommand::SetWorkshop { currency, units }), now);
}

/// Writes one thing about how one is paid.
pub(super) fn till(app: &mut App, say: impl Fn(&mut TillSet), now: Now) {
    let currency = app.begins_with().0;
    let mut facts = TillSet::of(currency);
    say(&mut facts);
    app.order(&Command::Money(MoneyCommand::SetTill(facts)), now);
}

#[cfg(test)]
mod tests;
