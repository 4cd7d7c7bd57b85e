//! What is hoped of unsorted wood and what came of it, number by number.

use super::{Row, problems};
use crate::plan::Asked;
use crate::plan::outlook::{Hoped, Known, Outlook, Pieces};
use crate::quantity::Count;

fn count(row: &mut Row, count: &mut Count) {
    let mut number = i64::from(*count);
    row.number(&mut number);
    match Count::try_from(number) {
        Ok(read) => *count = read,
        Err(_) => row.broken = true,
    }
}

/// All 64 bits.
fn bits(row: &mut Row, bits: &mut u64) {
    let mut number = *bits as i64;
    row.number(&mut number);
    *bits = number as u64;
}

fn pieces(row: &mut Row, pieces: &mut Pieces) {
    count(row, &mut pieces.certain);
    count(row, &mut pieces.unsorted);
    for side in &mut pieces.share {
        let mut float = side.to_bits();
        bits(row, &mut float);
        *side = f64::from_bits(float);
    }
    bits(row, &mut pieces.lots);
    bits(row, &mut pieces.kin);
}

fn hoped(row: &mut Row, hoped: &mut Hoped) {
    let mut asked = Asked::Parts(std::mem::take(&mut hoped.problem));
    problems::any(row, &mut asked);
    match asked {
        Asked::Parts(problem) => hoped.problem = problem,
        _ => row.broken = true,
    }
    row.list(&mut hoped.piles, pieces);
    row.list(&mut hoped.known, known);
}

fn known(row: &mut Row, known: &mut Known) {
    row.list(&mut known.boards, Row::number);
    row.number(&mut known.sets);
}

fn outlook(row: &mut Row, outlook: &mut Outlook) {
    row.numbers([&mut outlook.sure, &mut outlook.likely, &mut outlook.all, &mut outlook.most]);
    row.list(&mut outlook.short, Row::place);
    count(row, &mut outlook.draws);
    count(row, &mut outlook.open);
}

/// What is hoped, as a row.
pub fn put_hoped(of: &Hoped) -> Vec<i64> {
    let mut row = Row::default();
    hoped(&mut row, &mut of.clone());
    row.numbers
}

/// The same of a row, its piles and parts named by their places; nothing where the row is none that can be reckoned with.
pub fn take_hoped(row: Vec<i64>) -> Option<Hoped> {
    let (mut row, mut of) = (Row::read(row), Hoped::default());
    hoped(&mut row, &mut of);
    row.whole(of).filter(|of| {
        of.problem.check().is_ok()
            && of.piles.len() == of.problem.piles.len()
            && of.known.iter().all(|it| it.boards.len() == of.piles.len())
    })
}

/// The answer as a row.
pub fn put_outlook(of: &Outlook) -> Vec<i64> {
    let mut row = Row::default();
    outlook(&mut row, &mut of.clone());
    row.numbers
}

/// The answer of a row; nothing where the row is none.
pub fn take_outlook(row: Vec<i64>) -> Option<Outlook> {
    let (mut row, mut of) = (Row::read(row), Outlook::default());
    outlook(&mut row, &mut of);
    row.whole(of)
}
