//! A top in rows: strips ripped to one width, end to end.

use super::{Bench, From, Given, Source, Top, Unfit, in_common, lettered, named};
use crate::plan::Asked;
use crate::plan::rows::problem::{Pile, Problem};
use crate::quantity::{Count, Length};

/// More rows than these are asked of nobody.
const ROWS_MOST: Count = 200;

pub(super) fn unfit(top: &Top, bench: &Bench, source: &Source) -> Option<Unfit> {
    let pile = &source.pile;
    let Some(((thickness, width), length)) = pile.thickness.zip(pile.width).zip(pile.length) else { return Some(Unfit::SizeMissing) };
    let thick = top.thickness.map_or(0, |finished| nm(finished).saturating_add(bench.saw.over.map(nm)[2]));
    let rips = top.rows.map(|rows| rips(bench, blank(top, bench, rows), width));
    let machine = bench.planed.max(if rips.is_some_and(|rips| 1 < rips) { bench.ripped } else { Length::ZERO });
    if nm(thickness) < thick {
        Some(Unfit::TooThin)
    } else if rips == Some(0) || net(bench, width) <= 0 {
        Some(Unfit::TooNarrow)
    } else if length < machine {
        Some(Unfit::UnderMachine(machine))
    } else if squared(bench, length) < nm(bench.saw.piece) {
        Some(Unfit::TooShort)
    } else {
        None
    }
}

fn nm(length: Length) -> i64 {
    length.as_nm()
}

fn squared(bench: &Bench, length: Length) -> i64 {
    nm(length).saturating_sub(nm(bench.saw.square).saturating_mul(2))
}

/// How wide a finished row one piece could be at most.
fn net(bench: &Bench, width: Length) -> i64 {
    let saw = &bench.saw;
    let off = nm(saw.edge_trim).saturating_add(nm(saw.joint)).saturating_mul(2).saturating_add(saw.over.map(nm)[1]);
    nm(width).saturating_sub(off)
}

/// How wide a strip is ripped for one of so many rows: with what jointing and final sizing take.
fn blank(top: &Top, bench: &Bench, rows: Count) -> i64 {
    let row = nm(top.width).saturating_add(i64::from(rows)).saturating_sub(1).checked_div(i64::from(rows)).unwrap_or(0);
    row.saturating_add(nm(bench.saw.joint).saturating_mul(2)).saturating_add(bench.saw.over.map(nm)[1])
}

/// How many strips so wide a piece gives.
fn rips(bench: &Bench, blank: i64, width: Length) -> Count {
    let kerf = nm(bench.saw.kerf);
    let room = nm(width).saturating_sub(nm(bench.saw.edge_trim).saturating_mul(2)).saturating_add(kerf);
    Count::try_from(room.checked_div(blank.saturating_add(kerf)).unwrap_or(0).max(0)).unwrap_or(0)
}

/// How many rows suit the pieces: of those each pile would make as wide as it is, the one for which most of the wood is there; the
/// fewest where they are alike. Ours.
fn suited(top: &Top, bench: &Bench, sources: &[Source]) -> Count {
    let of = |source: &Source| {
        let net = net(bench, source.pile.width?);
        let rows = nm(top.width).saturating_add(net).saturating_sub(1).checked_div(net)?;
        Count::try_from(rows).ok().filter(|rows| (1..=ROWS_MOST).contains(rows))
    };
    let there = |rows: Count| {
        let blank = blank(top, bench, rows);
        let long = sources.iter().map(|source| {
            let strips = source.pile.width.map_or(0, |width| rips(bench, blank, width));
            let length = source.pile.length.map_or(0, |length| squared(bench, length).max(0));
            i128::from(length).saturating_mul(i128::from(strips)).saturating_mul(i128::from(source.n))
        });
        long.fold(0, i128::saturating_add).checked_div(i128::from(rows)).unwrap_or(0)
    };
    let mut best = (1, -1);
    for rows in sources.iter().filter_map(of) {
        let wood = there(rows);
        if best.1 < wood || (best.1 == wood && rows < best.0) {
            best = (rows, wood);
        }
    }
    best.0
}

pub(super) fn given(top: &Top, bench: Bench, sources: Vec<Source>) -> Given {
    let rows = top.rows.unwrap_or_else(|| suited(top, &bench, &sources));
    let wide = blank(top, &bench, rows);
    let from = lettered(sources, |source| source.pile.width.map_or(1, |width| rips(&bench, wide, width)));
    let saw = bench.saw;
    let mut problem = Problem {
        length: nm(top.length),
        rows: Some(i64::from(rows)),
        square: nm(saw.square),
        kerf: nm(saw.kerf),
        min_end: nm(saw.end_piece),
        min_piece: nm(saw.piece),
        machine_min: nm(bench.planed),
        stagger: nm(top.apart),
        split: top.split,
        keep_min: nm(saw.keep),
        piles: from.iter().enumerate().map(pile).collect(),
    };
    let Problem { length, square, kerf, min_end, min_piece, machine_min, stagger, keep_min, piles, .. } = &mut problem;
    let lengths = piles.iter_mut().map(|pile| &mut pile.length).collect();
    let unit = in_common([length, square, kerf, min_end, min_piece, machine_min, stagger, keep_min], lengths);
    let given = Given::of(bench, Asked::Rows(problem), unit, from);
    Given { width: top.width, thickness: top.thickness, ..given }
}

fn pile((place, from): (usize, &From)) -> Pile {
    let count = i64::from(from.source.n).saturating_mul(i64::from(from.rips));
    Pile { id: named(place), count: count.min(crate::plan::limits::PIECES_MOST), length: from.source.pile.length.map_or(0, nm) }
}
