//! Copies: one file with everything, handed on; and one brought in, shown as counts and totals before it is accepted.
//!
//! Carries invariant 11: all or nothing, and it only ever adds.

use super::super::App;
use super::super::news::{Handed, Trouble};
use super::super::order::{Order, Which};
use super::super::shelf::Posted;
use super::{Over, Tap};
use fivebar_core::ledger::decide::{BookCommand, Command, Now};
use fivebar_core::ledger::line::{document, id_of};
use fivebar_core::ledger::merge;
use fivebar_core::ledger::people::{People, Person};

pub use merge::Coming;

/// What became of a copy.
#[derive(Clone, Debug, PartialEq)]
pub enum Became {
    /// Handed on as the file of this name.
    Kept(String),
    /// The share sheet was put away: no copy was kept.
    PutAway,
    /// The phone has no way to hand a file on.
    NoWay,
    /// A copy was added.
    Added,
    NotAdded(Trouble),
}

/// Takes in what is said of copies.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::KeepCopy => keep(app, now),
        Tap::Handed(handed) => handed_on(app, handed, now),
        Tap::PickCopy => app.orders.push(Order::PickCopy),
        Tap::Picked(text) => picked(app, &text),
        Tap::AddThese => add(app),
        Tap::Added(done) => {
            app.workshop.said = Some(match done {
                Ok(()) => Became::Added,
                Err(trouble) => Became::NotAdded(trouble),
            });
            app.workshop.over = Over::Copies;
        }
        _ => {}
    }
}

/// The maker's own book as a copy: the example stays out of it.
fn keep(app: &mut App, now: Now) {
    let text = document::write(&app.own.book, &people(app), None, now.wall);
    let (year, month, day) = now.wall.day().as_ymd();
    app.orders.push(Order::Share { name: format!("fivebar-{year:04}-{month:02}-{day:02}"), text });
}

fn people(app: &App) -> People {
    let person = |name: &String| Person { name: name.clone(), phone: None, place: None };
    app.own.names.iter().map(|(id, name)| (*id, person(name))).collect()
}

/// A copy counts as kept only when it was handed on.
fn handed_on(app: &mut App, handed: Handed, now: Now) {
    let became = match handed {
        Handed::Shared(name) | Handed::Downloaded(name) => Became::Kept(name),
        Handed::PutAway => Became::PutAway,
        Handed::NoWay => Became::NoWay,
    };
    if matches!(became, Became::Kept(_)) {
        app.which = Which::Own;
        app.order(&Command::Book(BookCommand::NoteCopy { upto: now.wall.at }), now);
    }
    app.workshop.said = Some(became);
}

/// Reads a file; nothing is changed by it.
fn picked(app: &mut App, text: &str) {
    let coming = document::read(text).and_then(|copy| merge::bring_in(&app.own.book, &people(app), &copy));
    app.workshop.over = match coming {
        Ok(coming) => Over::Coming(Box::new(coming)),
        Err(why) => Over::NoCopy(why),
    };
}

/// Writes the lines that are new, in one transaction.
fn add(app: &mut App) {
    let Over::Coming(coming) = std::mem::take(&mut app.workshop.over) else { return };
    let (mut lines, mut aside) = (vec![], vec![]);
    for line in &coming.fresh {
        match id_of(line) {
            Some(id) => lines.push(Posted { id, line: line.clone() }),
            None => aside.push(line.clone()),
        }
    }
    let names = coming.people.iter().map(|(id, person)| (id.to_string(), person.name.clone())).collect();
    app.orders.push(Order::BringIn { lines, names, aside });
    app.own.names.extend(coming.people.iter().map(|(id, person)| (*id, person.name.clone())));
    app.workshop.over = Over::Copies;
}
