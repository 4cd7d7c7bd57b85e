//! Lines about the book: the workshop's currency, people, undo.

use super::words::Words;
use super::{Teller, Told};
use crate::ledger::decide::{BookCommand, Command};
use crate::ledger::kind::book::Role;
use crate::ledger::people::Person;
use crate::quantity::{Currency, Units};
use crate::refusal::Refusal;

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "workshop" => workshop(teller, words)?,
        "person" => return person(teller, words),
        "forget" => {
            let person = teller.story.names.said_person(words)?;
            teller.story.people.remove(&person);
            BookCommand::Forget { person }
        }
        "undo" => BookCommand::TakeBack { act: act(teller, words)? },
        "restore" => BookCommand::Restore { act: act(teller, words)? },
        _ => {
            words.expect("kept")?;
            BookCommand::NoteCopy { upto: teller.story.now.at }
        }
    };
    let before = teller.story.names.last_act;
    teller.order(&Command::Book(command))?;
    // What undo or restore names is what came before it, so `restore` after `undo` brings the same act back.
    teller.story.names.last_act = before;
    Ok(())
}

/// The act a line named with `as`, or the last one.
fn act(teller: &Teller, words: &mut Words) -> Result<crate::quantity::Id, super::Why> {
    if words.is_done() {
        return teller.story.names.last_act.ok_or(Refusal::NotThere.into());
    }
    Ok(teller.story.names.said_mark(words)?)
}

/// `USD inch`: what new hauls and jobs begin with.
pub fn money_and_units(words: &mut Words) -> super::words::Read<(Currency, Units)> {
    let currency = words.take("a currency", |word| Currency::read(word).ok())?;
    let units = words.take("inch or metric", |word| match word {
        "inch" => Some(Units::Inch),
        "metric" => Some(Units::Metric),
        _ => None,
    })?;
    Ok((currency, units))
}

fn workshop(teller: &mut Teller, words: &mut Words) -> Result<BookCommand, super::Why> {
    let (currency, units) = money_and_units(words)?;
    teller.workshop = (currency, units);
    Ok(BookCommand::SetWorkshop { currency: Some(currency), units: Some(units) })
}

/// `person dana supplier "Dana at the stair works" phone "+1 555 0100"`.
fn person(teller: &mut Teller, words: &mut Words) -> Told {
    let name = words.word("a name for the person")?;
    let role = words.take("supplier, buyer, helper, gallery or maker", |word| match word {
        "supplier" => Some(Role::Supplier),
        "buyer" => Some(Role::Buyer),
        "helper" => Some(Role::Helper),
        "gallery" => Some(Role::Gallery),
        "maker" => Some(Role::Maker),
        _ => None,
    })?;
    let full = words.maybe_text().unwrap_or_else(|| name.to_owned());
    let phone = if words.has("phone") { Some(words.text()?) } else { None };
    let place = if words.has("place") { Some(words.text()?) } else { None };
    let facts = teller.order(&Command::Book(BookCommand::AddPerson { role }))?;
    let id = super::id_of(&facts, |_| true)?;
    teller.story.names.people.insert(name.to_owned(), id);
    teller.story.people.insert(id, Person { name: full, phone, place });
    Ok(())
}
