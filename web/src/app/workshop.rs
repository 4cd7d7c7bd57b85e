//! Workshop, heard: the rate, how one is paid, currency and units, people, costs of no job, copies.

pub mod copies;
pub mod figures;

use super::App;
use super::entry::Typed;
use super::order::{Choice, Order};
use crate::parts::pad::Press;
use copies::Coming;
use figures::Figure;
use fivebar_core::ledger::decide::{BookCommand, Command, MoneyCommand, Now};
use fivebar_core::ledger::decide::{Much, On};
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::kind::money::TillSet;
use fivebar_core::ledger::line::document::DocumentTrouble;
use fivebar_core::money::point::Points;
use fivebar_core::quantity::{Currency, Id, Key, Side, Units, reading};

/// What lies over the workshop's first page.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Over {
    #[default]
    Nothing,
    Rate,
    Till,
    Units,
    Copies,
    /// What a copy would bring, before it is accepted.
    Coming(Box<Coming>),
    /// Why a file could not be brought in.
    NoCopy(DocumentTrouble),
    Rack,
    People,
    Costs,
    Hand,
    Cautions,
    Help,
    About,
    /// A figure being typed; where to go back to.
    Figure(Figure, Typed, Box<Over>),
}

/// The state of Workshop that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workshop {
    pub over: Over,
    /// A name or a word being typed.
    pub text: String,
    /// What became of the last copy.
    pub said: Option<copies::Became>,
}

/// What can be said on Workshop.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    Open(Over),
    Figure(Figure),
    Press(Press),
    PadDone,
    Currency(Currency),
    Units(Units),
    Side(Side),
    Point(Points),
    Typed(String),
    AddPerson(Role),
    Forget(Id),
    Theme(&'static str),
    KeepCopy,
    /// The copy was handed on, or not.
    Handed(super::news::Handed),
    PickCopy,
    Picked(String),
    AddThese,
    /// The lines of a copy were written, or not.
    Added(Result<(), super::news::Trouble>),
    Close,
}

/// Takes in a tap on Workshop.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::Open(over) => (app.workshop.over, app.workshop.text, app.workshop.said) = (over, String::new(), None),
        Tap::Figure(figure) => {
            let back = Box::new(std::mem::take(&mut app.workshop.over));
            app.workshop.over = Over::Figure(figure, Typed::default(), back);
        }
        Tap::Press(press) => {
            let sign = app.speech.sign();
            if let Over::Figure(_, typed, _) = &mut app.workshop.over {
                typed.press(press, sign);
            }
        }
        Tap::PadDone => figures::done(app, now),
        Tap::Currency(currency) => set(app, (Some(currency), None), now),
        Tap::Units(units) => set(app, (None, Some(units)), now),
        Tap::Side(side) => till(app, |till| till.side = Some(side), now),
        Tap::Point(point) => till(app, |till| till.point = Key::read(point.key()), now),
        Tap::Typed(text) => app.workshop.text = text,
        Tap::AddPerson(role) => add_person(app, role, now),
        Tap::Forget(person) => forget(app, person, now),
        Tap::Theme(theme) => app.orders.push(Order::Choose { key: Choice::Theme, value: theme.into() }),
        Tap::Close => close(app),
        copies => copies::heard(app, copies, now),
    }
}

/// Back from a figure to where it was asked, else to the first page.
fn close(app: &mut App) {
    app.workshop.over = match std::mem::take(&mut app.workshop.over) {
        Over::Figure(_, _, back) => *back,
        _ => Over::Nothing,
    };
}

fn set(app: &mut App, (currency, units): (Option<Currency>, Option<Units>), now: Now) {
    app.order(&Command::Book(BookCommand::SetWorkshop { currency, units }), now);
}

/// Writes one thing about how one is paid.
pub(super) fn till(app: &mut App, say: impl Fn(&mut TillSet), now: Now) {
    let currency = app.begins_with().0;
    let mut facts = TillSet { currency, tax: None, side: None, fee: None, fixed: None, cash: None, point: None, mileage: None, per: None };
    say(&mut facts);
    app.order(&Command::Money(MoneyCommand::SetTill(facts)), now);
}

/// A person's entry holds no name; the name goes beside the book.
fn add_person(app: &mut App, role: Role, now: Now) {
    let name = app.workshop.text.trim().to_owned();
    if name.is_empty() {
        return;
    }
    let Some(written) = app.order(&Command::Book(BookCommand::AddPerson { role }), now) else { return };
    app.workshop.text.clear();
    app.shelf_mut().names.insert(written.act, name.clone());
    let names = vec![(written.act.to_string(), name)];
    app.orders.push(Order::KeepNames { which: app.which, names, forgotten: vec![] });
}

fn forget(app: &mut App, person: Id, now: Now) {
    if app.order(&Command::Book(BookCommand::Forget { person }), now).is_some() {
        app.shelf_mut().names.remove(&person);
        app.orders.push(Order::KeepNames { which: app.which, names: vec![], forgotten: vec![person.to_string()] });
    }
}

/// Writes down a cost of no job.
fn spend(app: &mut App, text: &str, now: Now) -> Result<(), reading::Misread> {
    let (currency, what) = (app.begins_with().0, app.workshop.text.trim().to_owned());
    let sum = reading::money(text, currency, app.speech.sign())?;
    let what = (!what.is_empty()).then_some(what);
    let Some(kind) = Key::read("workshop") else { return Ok(()) };
    let spend = MoneyCommand::Spend { on: On::Workshop, much: Much::Whole(sum), kind, what, when: None };
    if app.order(&Command::Money(spend), now).is_some() {
        app.workshop.text.clear();
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::Msg;
    use crate::app::news::Handed;
    use crate::app::told::{after, nth};
    use crate::parts::Place;

    fn tap(tap: Tap) -> Msg {
        Msg::Workshop(tap)
    }

    fn typed(app: &mut App, figure: Figure, text: &str) -> String {
        let presses = text.chars().map(|sign| match sign {
            '.' => Press::Point,
            digit => Press::Digit(digit.to_digit(10).unwrap() as u8),
        });
        let presses: Vec<Msg> = presses.map(|press| tap(Tap::Press(press))).collect();
        after(app, [tap(Tap::Figure(figure))].into_iter().chain(presses).chain([tap(Tap::PadDone)]))
    }

    /// domain.md's rate: (480 h x 22 + 2,640) / 300 h = 44.00.
    #[test]
    fn a_rate_is_said_figure_by_figure() {
        let mut app = App::for_tests(Place::Workshop);
        after(&mut app, [tap(Tap::Open(Over::Rate))]);
        for (figure, text) in [(Figure::Pay, "22"), (Figure::Hours, "480"), (Figure::Costs, "2640")] {
            assert!(typed(&mut app, figure, text).contains("say what you want per hour"));
        }
        assert!(typed(&mut app, Figure::Logged, "300").contains("$44.00"));
        let refused = typed(&mut app, Figure::Logged, "500");
        assert!(refused.contains("more hours logged to jobs than hours in all"), "{refused}");
    }

    #[test]
    fn a_figure_that_can_not_be_is_refused_in_place() {
        let mut app = App::for_tests(Place::Workshop);
        after(&mut app, [tap(Tap::Open(Over::Till))]);
        let shown = typed(&mut app, Figure::SalesTax, "101");
        assert!(shown.contains("0 % to 100 %"), "{shown}");
        assert!(app.own.book.is_empty());
    }

    /// The copy of one phone, brought in on another.
    fn copy() -> String {
        let mut app = App::for_tests(Place::Count);
        after(&mut app, [Msg::Count(crate::app::count::Tap::First)]);
        let orders = app.heard(tap(Tap::KeepCopy), nth(9));
        let text = orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None });
        text.unwrap()
    }

    #[test]
    fn inv11_a_copy_is_shown_before_it_is_accepted_and_only_adds() {
        let mut app = App::for_tests(Place::Workshop);
        let shown = after(&mut app, [tap(Tap::Picked(copy()))]);
        assert!(shown.contains("Nothing is changed yet") && shown.contains("pieces counted"), "{shown}");
        assert!(app.own.book.is_empty(), "not before it is accepted");
        let orders = app.heard(tap(Tap::AddThese), nth(10));
        let lines = orders.iter().find_map(|order| if let Order::BringIn { lines, .. } = order { Some(lines.len()) } else { None });
        assert_eq!(lines, Some(3));
    }

    #[test]
    fn inv11_a_damaged_copy_changes_nothing_and_says_why() {
        let mut app = App::for_tests(Place::Workshop);
        let whole = copy();
        for (text, said) in [
            (whole[..whole.len() / 2].to_owned(), "It ends before its end"),
            ("once upon a time".to_owned(), "It is no copy of Fivebar"),
            (whole.replacen("\"n\":1", "\"n\":7", 1), "Something in it was changed"),
            (whole.replacen("\"fivebar\":1", "\"fivebar\":9", 1), "A newer version made it"),
        ] {
            let shown = after(&mut app, [tap(Tap::Picked(text))]);
            assert!(shown.contains(said) && shown.contains("What is here is unchanged."), "{said}: {shown}");
            assert!(app.own.book.is_empty());
        }
    }

    #[test]
    fn a_copy_counts_as_kept_only_when_it_was_handed_on() {
        let mut app = App::for_tests(Place::Workshop);
        after(&mut app, [Msg::Count(crate::app::count::Tap::First), tap(Tap::Open(Over::Copies)), tap(Tap::Handed(Handed::PutAway))]);
        assert!(after(&mut app, []).contains("No copy was ever kept."));
        let shown = after(&mut app, [tap(Tap::Handed(Handed::Shared("fivebar.json".into())))]);
        assert!(shown.contains("Kept as fivebar.json") && shown.contains("Last copy"), "{shown}");
    }

    #[test]
    fn a_name_is_never_in_the_book() {
        let mut app = App::for_tests(Place::Workshop);
        let typed = [tap(Tap::Open(Over::People)), tap(Tap::Typed("Stair works".into())), tap(Tap::AddPerson(Role::Supplier))];
        let shown = after(&mut app, typed);
        assert!(shown.contains("Stair works"));
        assert!(app.own.book.lines().all(|line| !line.contains("Stair")));
        let person = *app.own.names.keys().next().unwrap();
        assert!(!after(&mut app, [tap(Tap::Forget(person))]).contains("Stair works"));
    }
}
