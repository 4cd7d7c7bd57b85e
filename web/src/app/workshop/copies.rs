//! Copies: one file with everything, handed on; and one brought in, shown as counts and totals before it is accepted.
//!
//! Carries invariant 11: all or nothing, and it only ever adds.

use super::super::news::{Handed, Trouble};
use super::super::order::{Order, Which};
use super::super::shelf::{Names, parted};
use super::super::{App, photos};
use super::{NoCopy, Over, Tap};
use fivebar_core::ledger::decide::{BookCommand, Command, Now};
use fivebar_core::ledger::line::document::{self, Photos};
use fivebar_core::ledger::merge;
use fivebar_core::ledger::people::{Person, forgotten};
use fivebar_core::quantity::{Id, Listed, Moment};
use std::rc::Rc;

pub use merge::Coming;

/// A copy on its way out of the phone: it holds all up to here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Keeping {
    pub upto: Moment,
}

/// Photos of more than this, as they stand in a copy, would make it larger than one that is read again.
const PHOTOS_BYTES_MOST: usize = document::BYTES_MOST / 8 * 7;

/// What became of a copy.
#[derive(Clone, Debug, PartialEq)]
pub enum Became {
    /// Another app took the file of this name.
    Shared(String),
    /// The browser was given the file of this name; where it put it, it does not say.
    Downloaded(String),
    /// It lies ready to be pasted elsewhere.
    Text,
    /// The share sheet was put away: no copy was kept.
    PutAway,
    /// The photos could not be read, or the copy would be larger with them than one that is read again.
    NoPhotos,
    /// The phone has no way to hand a file on.
    NoWay,
    /// Nor to hold a text.
    NoText,
    /// A copy is on its way into the store.
    Adding,
    /// A copy was added.
    Added,
    NotAdded(Trouble),
    /// What was to be deleted is still there.
    NotWiped(Trouble),
}

/// Takes in what is said of copies.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::KeepCopy => keep(app, now),
        Tap::Handed(handed) => handed_on(app, handed, now),
        Tap::CopyText => {
            let text = written(app, None, now);
            app.orders.push(Order::CopyText { text });
        }
        Tap::CopiedText(true) => became(app, Became::Text, now),
        Tap::CopiedText(false) => became(app, Became::NoText, now),
        Tap::PickCopy => {
            app.workshop.said = None;
            app.orders.push(Order::PickCopy);
        }
        Tap::Picked(text) => picked(app, &text),
        Tap::NotPicked(why) => app.workshop.over = Over::NoCopy(NoCopy::NotRead(why)),
        Tap::AddThese => add(app),
        Tap::Added(done) => added(app, done),
        _ => {}
    }
}

/// The photos are read first, where there are any and they are not left out.
fn keep(app: &mut App, now: Now) {
    let photos = photos::wanted(app);
    if photos.is_empty() || app.photos.left_out {
        return hand_on(app, None, now);
    }
    app.workshop.said = None;
    app.orders.push(Order::ReadPhotos(photos));
}

/// The photos of a copy were read, or not.
pub fn with_photos(app: &mut App, photos: Result<Photos, Trouble>, now: Now) {
    match photos {
        Ok(photos) if photos.values().fold(0, |sum: usize, photo| sum.saturating_add(photo.base64.len())) < PHOTOS_BYTES_MOST => {
            hand_on(app, Some(&photos), now);
        }
        _ => became(app, Became::NoPhotos, now),
    }
}

fn hand_on(app: &mut App, photos: Option<&Photos>, now: Now) {
    let text = written(app, photos, now);
    let (year, month, day) = now.wall.day().as_ymd();
    app.workshop.said = None;
    app.orders.push(Order::Share { name: format!("fivebar-{year:04}-{month:02}-{day:02}"), text });
}

/// The maker's own book as a copy, with what could not be saved; the example stays out of it.
fn written(app: &mut App, photos: Option<&Photos>, now: Now) -> String {
    let book = app.own.whole_book();
    let last = book.last_stamp().map_or(now.wall.at, |stamp| stamp.0);
    app.workshop.keeping = Some(Keeping { upto: last.max(now.wall.at) });
    document::write(&book, &app.own.names, photos, now.wall)
}

fn handed_on(app: &mut App, handed: Handed, now: Now) {
    let told = match handed {
        Handed::Shared(name) => Became::Shared(name),
        Handed::Downloaded(name) => Became::Downloaded(name),
        Handed::PutAway => Became::PutAway,
        Handed::NoWay => Became::NoWay,
    };
    became(app, told, now);
}

/// A copy counts as kept only when it was handed on: as the maker's own book was when it was written.
fn became(app: &mut App, told: Became, now: Now) {
    let kept = matches!(told, Became::Shared(_) | Became::Downloaded(_) | Became::Text);
    if let Some(keeping) = app.workshop.keeping.filter(|_| kept) {
        let in_hand = std::mem::replace(&mut app.which, Which::Own);
        app.order(&Command::Book(BookCommand::NoteCopy { upto: keeping.upto }), now);
        app.own.let_be(); // what a removed photo showed goes now
        app.which = in_hand;
        photos::sweep(app);
    }
    (app.workshop.said, app.workshop.keeping) = (Some(told), None);
}

/// Reads a file; nothing is changed by it.
fn picked(app: &mut App, text: &str) {
    let coming = document::read(text).and_then(|copy| merge::bring_in(&app.own.book, &app.own.names, &copy));
    app.workshop.over = match coming {
        Ok(coming) => Over::Coming(Rc::new(coming)),
        Err(why) => Over::NoCopy(NoCopy::Trouble(why)),
    };
}

/// Writes the lines that are new, in one transaction, with the names; those the copy forgot are gone here too.
/// What was named or forgotten here since the copy was shown holds.
fn add(app: &mut App) {
    let Over::Coming(coming) = std::mem::take(&mut app.workshop.over) else { return };
    let (lines, aside) = parted(coming.fresh.iter().map(String::as_str));
    let kept = new_people(app, &coming).iter().map(|(id, person)| (id.to_string(), document::person_beside(person))).listed();
    let gone = forgotten(&coming.book);
    let forgotten = app.own.names.keys().filter(|id| gone.contains(id)).map(|id| id.to_string()).listed();
    let photos = photos::new(app, &coming);
    app.orders.push(Order::BringIn { lines, names: Names { kept, forgotten }, aside, photos });
    app.workshop.said = Some(Became::Adding);
    app.workshop.coming = Some(coming);
    app.workshop.over = Over::Copies;
}

/// The people of a copy whose names are not known here, and not forgotten.
fn new_people(app: &App, coming: &Coming) -> Vec<(Id, Person)> {
    let gone = forgotten(&app.own.book);
    let new = coming.people.iter().filter(|(id, _)| !app.own.names.contains_key(id) && !gone.contains(id));
    new.map(|(id, person)| (*id, person.clone())).listed()
}

/// The store has it, or nothing of it.
fn added(app: &mut App, done: Result<(), Trouble>) {
    let coming = app.workshop.coming.take();
    app.workshop.said = Some(match done {
        Ok(()) => {
            if let Some(coming) = coming {
                let (new, gone) = (new_people(app, &coming), forgotten(&coming.book));
                app.own.names.extend(new);
                app.own.names.retain(|id, _| !gone.contains(id));
            }
            app.orders.push(Order::LookAtPhotos);
            Became::Added
        }
        Err(trouble) => Became::NotAdded(trouble),
    });
    app.workshop.over = Over::Copies;
}

#[cfg(test)]
mod tests;
