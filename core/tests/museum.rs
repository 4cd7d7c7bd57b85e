//! Lines and copies of every version that was ever released: they open for ever.
//!
//! A new kind adds a line to tests/museum/kinds.txt; a line there is never edited once its kind is released.

mod museum_piece;

use fivebar_core::ledger::book::subjects;
use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::{Book, Fact, Subject};
use fivebar_core::quantity::Id;
use museum_piece::{kinds, read};
use std::collections::BTreeSet;

#[test]
fn inv10_every_line_of_the_museum_is_read_and_written_to_the_byte() {
    for text in kinds().lines() {
        let Line::Known(entry) = line::read(text) else { panic!("not read: {text}") };
        assert_eq!(line::write(&entry), text);
    }
}

#[test]
fn every_kind_has_a_line_in_the_museum() {
    let book = Book::of_lines(kinds().lines());
    let there: BTreeSet<&str> = book.entries().map(|(entry, _)| entry.fact.kind()).collect();
    for kind in Fact::KINDS {
        assert!(there.contains(kind), "{kind} has no line in tests/museum/kinds.txt");
    }
    assert_eq!(book.damaged().count(), 0);
}

/// What docs/STORAGE.md shows of an entry is a line that is kept here.
#[test]
fn every_example_of_the_storage_is_a_line_of_the_museum() {
    let (kinds, plans) = (kinds(), read("museum/plans.txt"));
    let kept: BTreeSet<&str> = kinds.lines().chain(plans.lines()).collect();
    let storage = read("../docs/STORAGE.md");
    let shown: Vec<&str> = storage.lines().filter(|line| line.starts_with("{\"at\"")).collect();
    assert!(100 < shown.len(), "{} examples", shown.len());
    for example in shown {
        assert!(kept.contains(example), "{example}");
    }
}

/// What names a haul or a job is found by it.
#[test]
fn every_kind_is_about_the_haul_and_the_job_it_names() {
    let named = |text: &str, member: &str| {
        let (_, after) = text.split_once(&format!("\"{member}\":\""))?;
        Id::read(after.get(..36)?)
    };
    for text in kinds().lines() {
        let Line::Known(entry) = line::read(text) else { panic!("not read: {text}") };
        let about = subjects(&entry);
        // A wish and a piece set apart lie with the pile; the job has taken nothing yet.
        let of_pile_alone = matches!(entry.fact, Fact::EnoughSet(_) | Fact::PiecesReserved(_) | Fact::ReservationFreed(_));
        // What a job ended with, and what it was planned from, names its hauls as figures.
        let frozen = matches!(entry.fact, Fact::JobEnded(_) | Fact::PlanKept(_));
        let haul = named(text, "haul").filter(|_| !frozen).map(Subject::Haul);
        let job = named(text, "job").filter(|_| !of_pile_alone).map(Subject::Job);
        for subject in haul.into_iter().chain(job) {
            assert!(about.contains(&Some(subject)), "{text}");
        }
        let strikes = matches!(entry.fact, Fact::Struck(_) | Fact::Restored(_));
        assert_eq!(about == [None; 3], strikes, "{text}");
    }
}
