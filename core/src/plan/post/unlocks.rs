//! A plan that may fall short and what would give more, number by number.

use super::{Row, plans, problems};
use crate::plan::rows::joints::Apart;
use crate::plan::rows::why::Known;
use crate::plan::unlock::{Had, Held, Locked, Unlock, Unlocks};

const KNOWN: [Known; 3] = [Known::Least, Known::Found, Known::AtLeast];

fn locked(row: &mut Row, of: &mut Locked) {
    problems::any(row, &mut of.asked);
    plans::any(row, &mut of.answered);
    row.list(&mut of.piles, |row, pile: &mut Had| {
        row.number(&mut pile.each);
        row.flag(&mut pile.more);
    });
    row.number(&mut of.joints_least);
}

/// What it is, by its number.
fn kind(row: &mut Row, kind: i64, most: i64) -> i64 {
    let mut kind = kind;
    row.number(&mut kind);
    row.broken |= !(0..=most).contains(&kind);
    kind
}

fn held(row: &mut Row, held: &mut Held) {
    let own = match held {
        Held::Part { .. } => 0,
        Held::Together { .. } => 1,
        Held::Wood => 2,
        Held::Joints(_) => 3,
    };
    let kind = kind(row, own, 3);
    if row.reads {
        *held = match kind {
            0 => Held::Part { part: 0 },
            1 => Held::Together { parts: vec![] },
            2 => Held::Wood,
            _ => Held::Joints(Apart::default()),
        };
    }
    match held {
        Held::Part { part } => row.place(part),
        Held::Together { parts } => row.list(parts, Row::place),
        Held::Wood => (),
        Held::Joints(it) => row.numbers([&mut it.apart, &mut it.rows]),
    }
}

fn pieces(row: &mut Row, (place, n): (&mut usize, &mut i64)) {
    row.place(place);
    row.number(n);
}

fn unlock(row: &mut Row, unlock: &mut Unlock) {
    let own = match unlock {
        Unlock::Part { .. } => 0,
        Unlock::Source { .. } => 1,
        Unlock::Rows { .. } => 2,
    };
    let kind = kind(row, own, 2);
    if row.reads {
        *unlock = match kind {
            0 => Unlock::Part { part: 0, n: 0, from: None, own: None, all: false },
            1 => Unlock::Source { source: 0, n: 0 },
            _ => Unlock::Rows { source: 0, n: 0, all: false, known: Known::Least },
        };
    }
    match unlock {
        Unlock::Part { part, n, from, own, all } => {
            row.flag(all);
            pieces(row, (part, n));
            for of in [from, own] {
                row.wish(of, |row, (source, n)| pieces(row, (source, n)));
            }
        }
        Unlock::Source { source, n } => pieces(row, (source, n)),
        Unlock::Rows { source, n, all, known } => {
            pieces(row, (source, n));
            row.flag(all);
            row.one_of(known, &KNOWN);
        }
    }
}

fn unlocks(row: &mut Row, of: &mut Unlocks) {
    row.wish(&mut of.held, held);
    row.list(&mut of.all, unlock);
}

/// What is searched for more, as a row.
pub fn put_locked(of: &Locked) -> Vec<i64> {
    let mut row = Row::default();
    locked(&mut row, &mut of.clone());
    row.numbers
}

/// The same of a row; nothing where the row is none, or no plan of its problem.
pub fn take_locked(row: Vec<i64>) -> Option<Locked> {
    let (mut row, mut of) = (Row::read(row), Locked::default());
    locked(&mut row, &mut of);
    row.whole(of).filter(|of| of.asked.check().is_ok() && of.asked.holds(&of.answered))
}

/// What was found, as a row.
pub fn put_unlocks(of: &Unlocks) -> Vec<i64> {
    let mut row = Row::default();
    unlocks(&mut row, &mut of.clone());
    row.numbers
}

/// The same of a row; nothing where the row is none.
pub fn take_unlocks(row: Vec<i64>) -> Option<Unlocks> {
    let (mut row, mut of) = (Row::read(row), Unlocks::default());
    unlocks(&mut row, &mut of);
    row.whole(of)
}
