//! The example: two jobs of an invented maker, in a book of their own.
//!
//! In no total and no copy; it is filled once, where its book is empty, in one transaction.
//! Its lines are told from the stories beforehand: to tell them on the phone would bring the reader of stories along, which
//! weighs three times as much as they do.

use super::shelf::{Posted, parted};
use fivebar_core::ledger::line;
use fivebar_core::quantity::{Id, Listed};
use fivebar_core::story::{BENCH, STANDS, tell};
use std::fmt::Write as _;

/// What [`written`] gives: the lines, then each person's id and name.
const READY: &str = include_str!("example.txt");

/// All that the example's book holds, and the names of its people.
pub fn told() -> (Vec<Posted>, Vec<(Id, String)>) {
    let (lines, people) = parted(READY.lines());
    let named = |person: &String| person.split_once(' ').and_then(|(id, name)| Some((Id::read(id)?, name.to_owned())));
    (lines, people.iter().filter_map(named).listed())
}

/// The example as the stories tell it, for `example.txt`: `cargo run -p fivebar-web --example example` writes it anew.
pub fn written() -> String {
    let (mut lines, mut people) = (String::new(), String::new());
    for story in [STANDS, BENCH].map(tell) {
        story.book.entries().for_each(|(entry, _)| lines.extend([&*line::write(entry), "\n"]));
        for (id, person) in story.people.iter() {
            let _ = writeln!(people, "{id} {}", person.name);
        }
    }
    lines + &people
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_is_what_the_stories_tell() {
        assert!(READY == written(), "the stories or the lines have changed: cargo run -p fivebar-web --example example");
    }

    #[test]
    fn it_has_its_people_by_name() {
        let (lines, people) = told();
        let written = READY.lines().count();
        assert!(!people.is_empty() && people.iter().all(|(_, name)| !name.is_empty()));
        assert_eq!(lines.len() + people.len(), written);
    }
}
