//! Laws of the ledger, tried on invented books: two phones, skewed clocks, strikes, duplicates, any order of arrival.

mod museum_piece;

use fivebar_core::ledger::kind::book::{Restored, Struck};
use fivebar_core::ledger::kind::haul::{HaulBegan, PiecesCounted, PiecesMoved, PiecesRejected, PileAdded, Way};
use fivebar_core::ledger::kind::stock::CountMended;
use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::{Book, Clock, Entry, Fact, fold};
use fivebar_core::quantity::{Currency, Id, Key, Moment, Offset, Units, Wall};
use museum_piece::{device, entries};
use proptest::prelude::*;
use std::rc::Rc;

/// One thing that happened on one of two phones.
#[derive(Clone, Copy, Debug)]
struct Step {
    phone: usize,
    /// What the wall clock of that phone jumps by, back or on.
    jump: i64,
    what: u8,
    which: usize,
    /// The phones show each other what they have.
    meet: bool,
}

fn steps() -> impl Strategy<Value = Vec<Step>> {
    let step = (0..2_usize, -90_000..600_000_i64, any::<u8>(), 0..64_usize, prop::bool::weighted(0.1));
    prop::collection::vec(step.prop_map(|(phone, jump, what, which, meet)| Step { phone, jump, what, which, meet }), 1..40)
}

/// The lines of an invented history, in the order they were written.
fn history(steps: &[Step]) -> Vec<String> {
    let mut clocks = [Clock::new(device("a1"), None), Clock::new(device("b2"), None)];
    let mut walls = [1_772_545_260_000_i64, 1_772_545_200_000];
    let mut written: Vec<Entry> = vec![];
    for (n, step) in steps.iter().enumerate() {
        walls[step.phone] += step.jump;
        let wall = Wall::new(Moment::at(walls[step.phone]), Offset::minutes(-300).unwrap());
        let stamp = clocks[step.phone].next(wall.at);
        let id = named(n);
        written.push(Entry { id, stamp, wall, act: None, fact: fact(&written, step) });
        if step.meet {
            clocks[1 - step.phone].heard(stamp, Moment::at(walls[1 - step.phone]));
        }
    }
    written.iter().map(line::write).collect()
}

fn named(n: usize) -> Id {
    Id::new(Moment::at(1_772_545_000_000), [0, 0, 0, 0, 0, 0, 0, 0, u8::try_from(n / 256).unwrap(), u8::try_from(n % 256).unwrap()])
}

/// What a step says, about whatever `which` names; it may name what is not there, or not there yet.
fn fact(written: &[Entry], step: &Step) -> Fact {
    let (haul, pile) = (named(0), named(step.which % 4));
    let n = u32::from(step.what / 8) + 1;
    match if written.is_empty() { 0 } else { step.what % 8 } {
        0 => HaulBegan { currency: Currency::USD, units: Units::Inch, name: None }.into(),
        1 | 2 => {
            let label = format!("{}", step.which);
            PileAdded { haul, label, wood: Key::read("ash-white"), name: None, thickness: None, width: None, length: None, length_to: None }
                .into()
        }
        3 => PiecesMoved { haul, from: pile, to: named(1), n }.into(),
        4 => PiecesRejected { haul, pile, n, why: Key::read("twist").unwrap() }.into(),
        5 => Struck { entries: vec![named(step.which)] }.into(),
        6 => Restored { entries: vec![named(step.which)] }.into(),
        _ => match written.get(step.which).map(|entry| &entry.fact) {
            Some(Fact::PiecesCounted(f)) => CountMended { haul, pile: f.pile, entry: named(step.which), n, why: None }.into(),
            Some(Fact::PiecesRejected(f)) => {
                CountMended { haul, pile: f.pile, entry: named(step.which), n, why: Some("knot".into()) }.into()
            }
            _ => PiecesCounted { haul, pile, n, way: Way::Tap }.into(),
        },
    }
}

fn book(lines: &[String]) -> Book {
    Book::of_lines(lines.iter().map(String::as_str))
}

/// A history, and the same lines in another order with some of them twice.
fn shuffled() -> impl Strategy<Value = (Vec<String>, Vec<String>)> {
    steps().prop_flat_map(|steps| {
        let lines = history(&steps);
        let twice = [lines.clone(), lines.iter().step_by(3).cloned().collect()].concat();
        (Just(lines), Just(twice).prop_shuffle())
    })
}

/// A history spoilt here and there: other bytes for an id, newer kinds, damage.
fn spoilt() -> impl Strategy<Value = Vec<String>> {
    (steps(), prop::collection::vec((any::<prop::sample::Index>(), 0..6_u8), 0..8)).prop_map(|(steps, spoils)| {
        let mut lines = history(&steps);
        for (at, how) in spoils {
            let line = at.get(&lines).clone();
            lines.push(match how {
                0 => line.replace("\"tz\":-300", "\"tz\":-240"),
                1 => line.replace("\"t\":[17", "\"t\":[16"),
                2 => line.replace("\"k\":\"P", "\"k\":\"Q"),
                3 => line.replace("\"v\":1", "\"v\":2"),
                4 => line.replace(':', ": "),
                _ => line[..line.len() / 2].to_owned(),
            });
        }
        lines
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn inv03_any_order_of_arrival_gives_the_same_book((lines, others) in shuffled()) {
        let (one, other) = (book(&lines), book(&others));
        prop_assert_eq!(&one, &other);
        prop_assert_eq!(fold::hauls(&one).collect::<Vec<_>>(), fold::hauls(&other).collect::<Vec<_>>());
        prop_assert!(one.lines().eq(other.lines()));
    }

    #[test]
    fn inv03_one_by_one_is_the_same_as_all_at_once(lines in spoilt()) {
        let mut slow = Book::default();
        for line in &lines {
            slow.add_line(line);
        }
        prop_assert_eq!(slow, book(&lines));
    }

    #[test]
    fn inv03_a_line_lost_on_the_way_is_the_same_once_it_comes((lines, others) in shuffled(), cut in any::<prop::sample::Index>()) {
        let cut = cut.index(others.len());
        let mut late = book(&others[cut..]);
        late.merge(others[..cut].iter().map(String::as_str));
        prop_assert_eq!(late, book(&lines));
    }

    #[test]
    fn inv03_merging_is_commutative_associative_and_idempotent(a in spoilt(), b in spoilt(), c in spoilt()) {
        let union = |lines: &[&Vec<String>]| {
            let mut all = Book::default();
            for lines in lines {
                all.merge(lines.iter().map(String::as_str));
            }
            all
        };
        prop_assert_eq!(union(&[&a, &b]), union(&[&b, &a]));
        prop_assert_eq!(union(&[&a, &b, &c]), union(&[&b, &c, &a]));
        prop_assert_eq!(union(&[&a, &b, &a, &b, &b]), union(&[&a, &b]));
        let mut left = book(&a);
        left.merge(union(&[&b, &c]).lines());
        prop_assert_eq!(left, union(&[&a, &b, &c]));
    }

    #[test]
    fn inv02_entries_are_only_added(lines in spoilt()) {
        let mut book = Book::default();
        let mut kept = std::collections::BTreeSet::new();
        for line in &lines {
            book.add_line(line);
            kept.insert(line.clone());
            let there: std::collections::BTreeSet<String> = book.lines().map(str::to_owned).collect();
            prop_assert_eq!(&there, &kept);
        }
    }

    #[test]
    fn inv05_the_stamps_of_a_phone_only_rise(steps in steps()) {
        let lines = history(&steps);
        let stamps = lines.iter().filter_map(|text| if let Line::Known(entry) = line::read(text) { Some(entry.stamp) } else { None });
        let mut last = std::collections::BTreeMap::new();
        for stamp in stamps {
            let before = last.insert(stamp.2, (stamp.0, stamp.1));
            prop_assert!(before < Some((stamp.0, stamp.1)));
        }
    }

    #[test]
    fn inv10_a_line_is_read_back_to_the_byte(which in any::<prop::sample::Index>(), ms in 0..4_102_444_800_000_i64, n in any::<u32>(), tz in -1080..=1080_i64) {
        let mut entry = which.get(&entries()).clone();
        entry.stamp = fivebar_core::ledger::Stamp(Moment::at(ms), n, device("z9"));
        entry.wall = Wall::new(Moment::at(ms), Offset::minutes(tz).unwrap());
        let text = line::write(&entry);
        prop_assert_eq!(line::read(&text), Line::Known(Rc::new(entry)));
    }

    #[test]
    fn inv10_members_no_one_knows_stay_in_the_line(which in any::<prop::sample::Index>(), value in 0..1_000_i64) {
        let text = line::write(which.get(&entries())).replacen("\"d\":{", &format!("\"d\":{{\"_new\":{value},"), 1).replace(",}", "}");
        let mut book = Book::default();
        book.add_line(&text);
        prop_assert_eq!(book.known().collect::<Vec<_>>(), vec![text.as_str()]);
    }
}
