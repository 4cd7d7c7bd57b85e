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
