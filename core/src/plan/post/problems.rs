//! The four problems, number by number.

use super::Row;
use crate::plan::field::problem::{Mix, Pattern, Target};
use crate::plan::{Asked, field, parts, rows, sticks};
use crate::quantity::Sorted;

const PATTERNS: [Pattern; 5] = [Pattern::Stack, Pattern::Running, Pattern::Basket, Pattern::Herringbone, Pattern::Crossed];
pub(super) const MIXES: [Mix; 2] = [Mix::Single, Mix::Alternate];

/// Parts as under 1, from boards that are planed at their edges where a part takes their whole width.
const PLANED: i64 = 4;
/// A field as under 3, of pieces that are longer than their tiles: how long, one by one behind all else.
const LONGER: i64 = 5;

pub(super) fn any(row: &mut Row, asked: &mut Asked) {
    let mut kind = match asked {
        Asked::Rows(_) => 0,
        Asked::Parts(problem) if problem.planed => PLANED,
        Asked::Parts(_) => 1,
        Asked::Sticks(_) => 2,
        Asked::Field(problem) if problem.piles.iter().any(|pile| pile.whole != 0) => LONGER,
        Asked::Field(_) => 3,
    };
    row.number(&mut kind);
    if row.reads {
        *asked = match kind {
            0 => Asked::Rows(Default::default()),
            1 => Asked::Parts(Default::default()),
            2 => Asked::Sticks(Default::default()),
            PLANED => Asked::Parts(parts::problem::Problem { planed: true, ..Default::default() }),
            _ => Asked::Field(Default::default()),
        };
        row.broken |= !(0..=LONGER).contains(&kind);
    }
    match asked {
        Asked::Rows(problem) => one_of_rows(row, problem),
        Asked::Parts(problem) => one_of_parts(row, problem),
        Asked::Sticks(problem) => one_of_sticks(row, problem),
        Asked::Field(problem) => {
            one_of_field(row, problem);
            let piles = problem.piles.iter_mut().filter(|_| kind == LONGER);
            piles.for_each(|pile| row.number(&mut pile.whole));
        }
    }
}

/// At home they have names; away their places do.
fn named<'a>(names: impl Iterator<Item = &'a mut String>) {
    names.enumerate().for_each(|(nth, name)| *name = nth.to_string());
}

fn one_of_rows(row: &mut Row, p: &mut rows::problem::Problem) {
    row.numbers([&mut p.length, &mut p.square, &mut p.kerf, &mut p.min_end, &mut p.min_piece, &mut p.machine_min]);
    row.numbers([&mut p.stagger, &mut p.keep_min]);
    row.wish(&mut p.rows, Row::number);
    row.flag(&mut p.split);
    row.list(&mut p.piles, |row, pile| row.numbers([&mut pile.count, &mut pile.length]));
    if row.reads {
        named(p.piles.iter_mut().map(|pile| &mut pile.id));
    }
}

fn one_of_sticks(row: &mut Row, p: &mut sticks::problem::Problem) {
    row.wish(&mut p.sets, Row::number);
    row.numbers([&mut p.kerf, &mut p.end_trim, &mut p.machine_min, &mut p.keep_min]);
    row.list(&mut p.piles, |row, pile| row.numbers([&mut pile.count, &mut pile.length]));
    row.list(&mut p.parts, |row, part| {
        row.numbers([&mut part.per_set, &mut part.length]);
        row.wish(&mut part.piles, |row, piles| row.list(piles, Row::place));
    });
    if row.reads {
        named(p.piles.iter_mut().map(|pile| &mut pile.id));
        named(p.parts.iter_mut().map(|part| &mut part.id));
    }
}

fn one_of_parts(row: &mut Row, p: &mut parts::problem::Problem) {
    row.wish(&mut p.sets, Row::number);
    row.numbers([&mut p.kerf, &mut p.end_trim, &mut p.edge_trim, &mut p.joint]);
    row.numbers([&mut p.allow.length, &mut p.allow.width, &mut p.allow.thickness]);
    row.numbers([&mut p.strip_min, &mut p.plane_min, &mut p.rip_min, &mut p.keep_min]);
    row.list(&mut p.piles, |row, pile| row.numbers([&mut pile.count, &mut pile.length, &mut pile.width, &mut pile.thickness]));
    row.list(&mut p.parts, |row, part| {
        row.numbers([&mut part.per_set, &mut part.length, &mut part.width, &mut part.thickness]);
        row.flag(&mut part.glue);
        row.wish(&mut part.piles, |row, piles| row.list(piles, Row::place));
    });
    if row.reads {
        named(p.piles.iter_mut().map(|pile| &mut pile.id));
        named(p.parts.iter_mut().map(|part| &mut part.id));
    }
}

fn one_of_field(row: &mut Row, p: &mut field::problem::Problem) {
    row.number(&mut p.unit);
    row.list(&mut p.patterns, |row, pattern| row.one_of(pattern, &PATTERNS));
    row.list(&mut p.mix, |row, mix| row.one_of(mix, &MIXES));
    for target in &mut p.targets {
        row.wish(target, |row, target: &mut Target| row.numbers([&mut target.size, &mut target.tolerance]));
    }
    p.layers.iter_mut().chain(&mut p.open).for_each(|number| row.number(number));
    row.numbers([&mut p.gap, &mut p.overhang, &mut p.kerf, &mut p.machine_min, &mut p.cut_min]);
    row.numbers([&mut p.allow.length, &mut p.allow.width, &mut p.allow.thickness]);
    row.flag(&mut p.turn);
    woods(p);
    row.list(&mut p.piles, |row, pile| {
        row.numbers([&mut pile.count, &mut pile.length, &mut pile.width, &mut pile.thickness, &mut pile.density]);
        let mut wood = pile.species.parse().unwrap_or_default();
        row.number(&mut wood);
        pile.species = wood.to_string();
    });
    if row.reads {
        named(p.piles.iter_mut().map(|pile| &mut pile.id));
    }
}

/// Woods go by the place of the first pile of theirs: that two differ is all that counts.
fn woods(p: &mut field::problem::Problem) {
    let mut first = Sorted::new();
    for (nth, pile) in p.piles.iter().enumerate().rev() {
        first.insert(pile.species.clone(), nth);
    }
    for pile in &mut p.piles {
        pile.species = first.get(&pile.species).copied().unwrap_or_default().to_string();
    }
}
