//! Rows of plans that were ever written: they are read for ever, each number in its place.
//!
//! A line of tests/museum/plans.txt is never edited once it is released. A new figure of a problem or a plan is a row with another first
//! number, and a line more.

mod museum_piece;

use fivebar_core::ledger::Fact;
use fivebar_core::plan::field::plan::{Field, Lie, Taken};
use fivebar_core::plan::field::problem::{Mix, Pattern, Target};
use fivebar_core::plan::parts::plan::{Band, Board, First, Panel, Piece, Short, Strip};
use fivebar_core::plan::{Answered, Asked, Made, field, parts, post, rows, sticks};
use museum_piece::{entries, read};

/// The problems of the first four lines, in their order.
fn problems() -> [Asked; 6] {
    let id = |nth: usize| nth.to_string();
    let pile = |nth, count, length| rows::problem::Pile { id: id(nth), count, length };
    let of_rows = rows::problem::Problem {
        length: 1040,
        rows: Some(8),
        square: 5,
        kerf: 6,
        min_end: 200,
        min_piece: 120,
        machine_min: 300,
        stagger: 100,
        split: true,
        keep_min: 500,
        piles: vec![pile(0, 33, 730), pile(1, 4, 640)],
    };
    let panel = parts::problem::Part { id: id(0), per_set: 2, length: 700, width: 340, thickness: 20, glue: true, piles: Some(vec![0]) };
    let rail = parts::problem::Part { id: id(1), per_set: 4, length: 300, width: 40, thickness: 22, glue: false, piles: None };
    let of_parts = parts::problem::Problem {
        sets: Some(2),
        kerf: 6,
        end_trim: 12,
        edge_trim: 4,
        planed: false,
        allow: parts::problem::Allow { length: 7, width: 8, thickness: 9 },
        joint: 1,
        strip_min: 40,
        plane_min: 41,
        rip_min: 42,
        keep_min: 43,
        piles: vec![parts::problem::Pile { id: id(0), count: 9, length: 900, width: 90, thickness: 27 }],
        parts: vec![panel, rail],
    };
    let of_sticks = sticks::problem::Problem {
        sets: None,
        kerf: 6,
        end_trim: 12,
        machine_min: 200,
        keep_min: 300,
        piles: vec![sticks::problem::Pile { id: id(0), count: 9, length: 2400 }],
        parts: vec![sticks::problem::Part { id: id(0), per_set: 4, length: 700, piles: Some(vec![0]) }],
    };
    let planed = parts::problem::Problem { planed: true, ..of_parts.clone() };
    let mut longer = of_field();
    longer.piles[0].whole = 320;
    let (of_parts, planed) = (Asked::Parts(of_parts), Asked::Parts(planed));
    [Asked::Rows(of_rows), of_parts, Asked::Sticks(of_sticks), Asked::Field(of_field()), planed, Asked::Field(longer)]
}

fn of_field() -> field::problem::Problem {
    let pile = |nth: i64| field::problem::Pile {
        id: nth.to_string(),
        species: nth.to_string(),
        count: 40 + nth,
        length: 90 + nth,
        width: 45 + nth,
        thickness: 22 + nth,
        density: 702 + nth,
        whole: 0,
    };
    field::problem::Problem {
        unit: 500_000,
        patterns: vec![Pattern::Crossed, Pattern::Basket],
        mix: vec![Mix::Alternate],
        targets: [Some(Target { size: 400, tolerance: 5 }), None, Some(Target { size: 20, tolerance: 1 })],
        layers: [2, 7],
        gap: 2,
        open: [3, 9],
        overhang: 4,
        kerf: 6,
        allow: field::problem::Allow { length: 7, width: 8, thickness: 9 },
        machine_min: 50,
        cut_min: 30,
        turn: true,
        piles: vec![pile(0), pile(1)],
    }
}

/// The plans of the other lines, in their order.
fn plans() -> [Made; 5] {
    let piece = |pile, n, at, length| rows::plan::Piece { pile, n, at, length };
    let remainders = vec![rows::plan::Remainder { pile: 0, n: 4, length: 45 }];
    let laid = rows::plan::Plan { rows: vec![vec![piece(1, 3, 0, 360), piece(0, 4, 360, 680)]], remainders };
    let bands = vec![Band { size: 60, at: 3, pieces: vec![Piece { part: 0, at: 5, length: 710, width: 60 }] }];
    let sawn = parts::plan::Plan {
        boards: vec![Board { pile: 0, times: 2, stretch: 880, first: First::Cross, bands, remainder: 15 }],
        panels: vec![Panel { part: 1, times: 4, strips: vec![Strip { pile: 0, width: 61 }] }],
        short: Some(Short { missing: vec![(1, 2)], boards: vec![], panels: vec![] }),
    };
    let stick = sticks::plan::Stick { pile: 0, times: 4, pieces: vec![sticks::plan::Piece { part: 1, at: 703 }], remainder: 420 };
    let tiled = Field {
        mix: Mix::Alternate,
        piles: vec![0, 1],
        lie: Lie::Rows { pattern: Pattern::Running, columns: 4, rows: 5, turn: true },
        layers: 3,
        tile: [90, 40, 20],
        outer: [400, 300, 60],
        pieces: vec![Taken { pile: 0, whole: 30, cut: 4, taken: 32 }],
        glue_area: 12_345,
        weight: 5_400,
    };
    let lie = Lie::Crossed { lines: [4, 5], ends: [1, 2], open: [9, 0] };
    let crossed = Field { mix: Mix::Single, piles: vec![0], lie, pieces: vec![], ..tiled.clone() };
    let of_field = |field| Made::Field(field::plan::Plan { field: Some(field) });
    [Made::Rows(laid), Made::Parts(sawn), Made::Sticks(sticks::plan::Plan { sticks: vec![stick] }), of_field(tiled), of_field(crossed)]
}

#[test]
fn inv10_every_row_of_a_plan_in_the_museum_is_read_and_written_to_the_number() {
    let text = read("museum/plans.txt");
    let rows: Vec<Vec<i64>> = text.lines().map(|line| post::read(line).unwrap()).collect();
    assert_eq!(rows.len(), problems().len() + plans().len());
    for (row, asked) in rows.iter().zip(problems()) {
        assert_eq!(post::take(row.clone()).as_ref(), Some(&asked));
        assert_eq!(&post::put(&asked), row);
    }
    let (worth, bound) = (vec![8, (1 << 64) + 5, -1], vec![9]);
    for (row, plan) in rows.iter().skip(problems().len()).zip(plans()) {
        let answered = Answered { plan, worth: worth.clone(), bound: bound.clone() };
        assert_eq!(post::take_answer(row.clone()).as_ref(), Some(&answered));
        assert_eq!(&post::put_answer(&answered), row);
    }
}

/// The rows of the museum's own entries are read, and their plan is one of the problem.
#[test]
fn inv10_every_kept_plan_of_the_museum_is_read() {
    let kept: Vec<_> = entries().into_iter().filter_map(|entry| if let Fact::PlanKept(f) = entry.fact { Some(f) } else { None }).collect();
    assert!(!kept.is_empty());
    for plan in kept {
        let asked = post::read(&plan.problem).and_then(post::take).unwrap();
        let answered = post::read(&plan.answer).and_then(post::take_answer).unwrap();
        assert_eq!(asked.check(), Ok(()));
        assert_eq!(asked.senses().len(), answered.worth.len());
    }
}
