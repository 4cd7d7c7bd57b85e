//! Names, phones and places of people: a store beside the book, by the id of their entry. Entries hold ids only.
//!
//! Who was forgotten stays forgotten: the entry wins over every old copy.

use super::{Book, Fact, Subject};
use crate::quantity::{Id, Set, Sorted};

/// What is known of a person.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Person {
    pub name: String,
    pub phone: Option<String>,
    pub place: Option<String>,
}

impl Person {
    /// Somebody of whom nothing but the name is known.
    pub fn named(name: impl Into<String>) -> Person {
        Person { name: name.into(), phone: None, place: None }
    }
}

/// Everyone whose name is known, by the id of their entry.
pub type People = Sorted<Id, Person>;

/// Everyone the book says is forgotten.
pub fn forgotten(book: &Book) -> Set<Id> {
    let facts = book.about(Subject::Workshop).map(|entry| &entry.fact);
    facts.filter_map(|fact| if let Fact::Forgotten(f) = fact { Some(f.person) } else { None }).collect()
}

/// Those of `people` the book has not forgotten.
pub fn remembered(book: &Book, people: &People) -> People {
    let forgotten = forgotten(book);
    people.iter().filter(|(id, _)| !forgotten.contains(id)).map(|(id, person)| (*id, person.clone())).collect()
}

/// Our people and those of a copy, less the forgotten. Of one id, what is here stays.
pub fn joined(book: &Book, here: &People, copy: &People) -> People {
    let mut both = copy.clone();
    both.extend(here.iter().map(|(id, person)| (*id, person.clone())));
    remembered(book, &both)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::line::document::{person_beside, person_read};

    /// What lies beside the book of a person, and the same person read from it.
    #[track_caller]
    fn check(name: &str, [phone, place]: [Option<&str>; 2], beside: &str) {
        let person = Person { name: name.into(), phone: phone.map(Into::into), place: place.map(Into::into) };
        assert_eq!(person_beside(&person), beside);
        assert_eq!(person_read(beside), person);
    }

    #[test]
    fn a_person_lies_beside_the_book_as_a_name_or_with_phone_and_place() {
        check("Dana", [None, None], "Dana");
        check("Dana", [Some("+1 555 0100"), None], r#"{"name":"Dana","phone":"+1 555 0100"}"#);
        check("Dana", [None, Some("Elm Street 4, two stairs")], r#"{"name":"Dana","place":"Elm Street 4, two stairs"}"#);
        check("D \"1\"", [Some("1"), Some("2")], r#"{"name":"D \"1\"","phone":"1","place":"2"}"#);
        check("{Dana}", [None, None], r#"{"name":"{Dana}"}"#);
        assert_eq!(person_read("{Dana}"), Person::named("{Dana}"), "a name of an older app");
        assert_eq!(person_read(r#"{"name":"Dana","stairs":2}"#).name, r#"{"name":"Dana","stairs":2}"#, "nothing of it is lost");
    }
}
