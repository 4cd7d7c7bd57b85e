//! The demo's tables row by row (domain.md 12), from the stories as they are told.

use fivebar_core::quantity::{Count, Span};
use fivebar_core::sheet::haul::{Pieces, haul};
use fivebar_core::sheet::{Shop, estimate};
use fivebar_core::story::{BENCH, STANDS, Story, tell};

type Reasons<'a> = &'a [(&'a str, Count)];

fn told(text: &str) -> Story {
    let story = tell(text);
    assert_eq!(story.refused, []);
    story
}

/// Of each pile in its order: taken, rejected, good, and why.
#[track_caller]
fn check_piles(text: &str, named: &str, rows: &[([Count; 3], Reasons)]) {
    let story = told(text);
    let shop = Shop::of(&story.book, story.now.at);
    let piles = haul(&shop, story.names.haul(named).unwrap()).unwrap().piles;
    assert_eq!(piles.len(), rows.len());
    for (pile, (counts, reasons)) in piles.iter().zip(rows) {
        let Pieces { taken, rejected, good, .. } = pile.pieces;
        assert_eq!([taken, rejected, good], *counts, "{}", pile.label);
        let mut why: Vec<_> = pile.pieces.reasons.iter().map(|(why, n)| (why.as_str(), *n)).collect();
        why.sort_by_key(|(why, _)| reasons.iter().position(|(reason, _)| reason == why));
        assert_eq!(why, *reasons, "{}", pile.label);
    }
}

#[test]
fn rejects_of_the_stands_by_pile_and_reason() {
    check_piles(
        STANDS,
        "stairworks",
        &[
            ([64, 17, 47], &[("end-check", 8), ("twist", 5), ("glue-or-paint", 2), ("short", 2)]),
            ([38, 9, 29], &[("end-check", 6), ("knot", 2), ("metal", 1)]),
            ([22, 5, 17], &[("sapwood", 3), ("crack", 2)]),
            ([9, 9, 0], &[("wet", 5), ("unknown", 4)]),
        ],
    );
}

/// The demo says how many of each pile were rejected; why is the story's own.
#[test]
fn rejects_of_the_bench_by_pile() {
    check_piles(
        BENCH,
        "stairs",
        &[([31, 8, 23], &[("end-check", 5), ("knot", 3)]), ([26, 7, 19], &[("twist", 4), ("short", 3)]), ([18, 6, 12], &[("crack", 6)])],
    );
}

/// What was thought of each operation of the bench, before any of it was done and after all of it was; of the post that was cut again, nothing.
#[test]
fn estimates_of_the_bench_by_operation() {
    let planned = BENCH.split("2026-04-16 19:00").next().unwrap();
    for text in [planned, BENCH] {
        let story = told(text);
        let shop = Shop::of(&story.book, story.now.at);
        let sheet = estimate::estimate(&shop, story.names.job("bench").unwrap(), true).unwrap();
        let thought: Vec<_> = sheet.rows.iter().filter_map(|row| Some((row.op.as_deref()?, row.thought?.as_minutes()))).collect();
        let wanted = [
            ("milling", 180),
            ("strip glue-ups", 120),
            ("flatten", 90),
            ("frames", 240),
            ("shelf", 90),
            ("sanding", 180),
            ("finish", 90),
            ("messages, sketch, invoice", 60),
            ("delivery", 90),
        ];
        assert_eq!(thought, wanted);
        assert_eq!(sheet.progress.thought, Some(Span::minutes(1_140)));
    }
}
