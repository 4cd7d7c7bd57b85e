use super::*;
use crate::plan::field::plan::{Field, Lie, Taken};
use crate::plan::field::problem::{Mix, Pattern, Target};
use crate::plan::parts::plan::{Band, Board, First, Panel, Piece, Short, Strip};
use crate::plan::rows::joints::Apart;
use crate::plan::rows::why::Known;
use crate::plan::unlock::{Had, Held, Locked, Tries, Unlock, Unlocks};
use crate::plan::{Made, field, parts, rows, sticks};

fn rows_asked() -> Asked {
    let pile = rows::problem::Pile { id: "0".into(), count: 33, length: 365 };
    let piles = vec![pile.clone(), rows::problem::Pile { id: "1".into(), count: 4, ..pile }];
    Asked::Rows(rows::problem::Problem {
        length: 1040,
        rows: Some(8),
        square: 2,
        kerf: 3,
        stagger: 100,
        split: true,
        piles,
        ..Default::default()
    })
}

fn sticks_asked() -> Asked {
    let pile = sticks::problem::Pile { id: "0".into(), count: 9, length: 2400 };
    let part = sticks::problem::Part { id: "0".into(), per_set: 4, length: 700, piles: Some(vec![0]) };
    let free = sticks::problem::Part { id: "1".into(), piles: None, ..part.clone() };
    Asked::Sticks(sticks::problem::Problem {
        sets: None,
        kerf: 3,
        keep_min: 300,
        piles: vec![pile],
        parts: vec![part, free],
        ..Default::default()
    })
}

fn parts_asked() -> Asked {
    let pile = parts::problem::Pile { id: "0".into(), count: 9, length: 900, width: 90, thickness: 27 };
    let part = parts::problem::Part { id: "0".into(), per_set: 2, length: 700, width: 340, thickness: 20, glue: true, piles: None };
    let allow = parts::problem::Allow { length: 10, width: 4, thickness: 2 };
    Asked::Parts(parts::problem::Problem {
        sets: Some(2),
        kerf: 3,
        joint: 1,
        allow,
        piles: vec![pile],
        parts: vec![part],
        ..Default::default()
    })
}

fn field_asked() -> Asked {
    let pile = |id: &str, species: &str| field::problem::Pile {
        id: id.into(),
        species: species.into(),
        count: 40,
        density: 702,
        ..Default::default()
    };
    let piles = vec![pile("0", "0"), pile("1", "1"), pile("2", "0")];
    let targets = [Some(Target { size: 400, tolerance: 5 }), None, Some(Target { size: 20, tolerance: 0 })];
    let (patterns, mix) = (vec![Pattern::Crossed, Pattern::Basket], vec![Mix::Alternate]);
    Asked::Field(field::problem::Problem {
        unit: 1_000_000,
        patterns,
        mix,
        targets,
        layers: [2, 7],
        open: [0, 9],
        piles,
        turn: true,
        ..Default::default()
    })
}

#[test]
fn a_problem_arrives_as_it_was_posted() {
    let Asked::Field(mut longer) = field_asked() else { unreachable!() };
    longer.piles[1].whole = 320;
    for asked in [rows_asked(), parts_asked(), sticks_asked(), field_asked(), Asked::Field(longer)] {
        assert_eq!(take(put(&asked)), Some(asked));
    }
}

#[test]
fn names_stay_at_home_and_two_woods_still_differ() {
    let Asked::Field(mut problem) = field_asked() else { unreachable!() };
    for (pile, (id, wood)) in problem.piles.iter_mut().zip([("A", "oak"), ("B", "ash"), ("C", "oak")]) {
        (pile.id, pile.species) = (id.into(), wood.into());
    }
    assert_eq!(take(put(&Asked::Field(problem))), Some(field_asked()));
}

fn answered(plan: Made) -> Answered {
    Answered { plan, worth: vec![8, 10_i128.pow(30), -5], bound: vec![8, i128::MIN] }
}

fn made() -> [Made; 5] {
    let piece = rows::plan::Piece { pile: 1, n: 3, at: 0, length: 360 };
    let laid =
        rows::plan::Plan { rows: vec![vec![piece; 3], vec![]], remainders: vec![rows::plan::Remainder { pile: 0, n: 2, length: 293 }] };
    let cut = sticks::plan::Stick { pile: 0, times: 4, pieces: vec![sticks::plan::Piece { part: 1, at: 703 }], remainder: 420 };
    let band = Band { size: 60, at: 0, pieces: vec![Piece { part: 0, at: 0, length: 710, width: 60 }] };
    let boards = vec![Board { pile: 0, times: 2, stretch: 880, first: First::Cross, bands: vec![band], remainder: 0 }];
    let panels = vec![Panel { part: 0, times: 1, strips: vec![Strip { pile: 0, width: 60 }] }];
    let short = Some(Short { missing: vec![(0, 2)], boards: boards.clone(), panels: panels.clone() });
    let taken = Taken { pile: 0, whole: 30, cut: 4, taken: 32 };
    let field = Field {
        mix: Mix::Alternate,
        piles: vec![0, 1],
        layers: 3,
        tile: [90, 40, 20],
        outer: [400, 300, 60],
        pieces: vec![taken],
        glue_area: 1 << 90,
        weight: 5_400,
        ..Default::default()
    };
    let crossed = Field { lie: Lie::Crossed { lines: [4, 5], ends: [1, 2], open: [9, 0] }, ..field.clone() };
    [
        Made::Rows(laid),
        Made::Sticks(sticks::plan::Plan { sticks: vec![cut] }),
        Made::Parts(parts::plan::Plan { boards, panels, short }),
        Made::Field(field::plan::Plan { field: Some(field) }),
        Made::Field(field::plan::Plan { field: Some(crossed) }),
    ]
}

#[test]
fn a_plan_arrives_as_it_was_posted() {
    for made in made() {
        let answered = answered(made);
        assert_eq!(take_answer(put_answer(&answered)), Some(answered));
    }
    assert_eq!(take_progress(put_progress(&[8, 1 << 80], &[9])), Some([vec![8, 1 << 80], vec![9]]));
}

/// Three strips of 500 lie in one row of 1000 of the two that are asked.
fn one_row() -> Locked {
    let pile = rows::problem::Pile { id: "0".into(), count: 3, length: 500 };
    let problem = rows::problem::Problem { length: 1000, rows: Some(2), piles: vec![pile], ..Default::default() };
    let piece = |n, at| rows::plan::Piece { pile: 0, n, at, length: 500 };
    let plan = Made::Rows(rows::plan::Plan { rows: vec![vec![piece(1, 0), piece(2, 500)]], remainders: vec![] });
    let asked = Asked::Rows(problem);
    let worth = asked.worth(&plan).unwrap_or_default();
    let answered = Answered { plan, worth, bound: vec![] };
    Locked { asked, answered, piles: vec![Had { each: 1, more: true }], joints_least: 7 }
}

#[test]
fn what_would_give_more_arrives_as_it_was_posted() {
    let locked = one_row();
    let row = put_locked(&locked);
    for end in 0..row.len() {
        assert_eq!(take_locked(row[..end].to_vec()), None, "{end}");
    }
    let broken = Locked { answered: Answered { worth: vec![2], ..locked.answered.clone() }, ..locked.clone() };
    assert_eq!(take_locked(put_locked(&broken)), None, "it is not worth that");
    let all = vec![
        Unlock::Part { part: 2, n: 3, from: Some((1, 4)), own: None, all: true },
        Unlock::Source { source: 1, n: 7 },
        Unlock::Rows { source: 0, n: 2, all: true, known: Known::AtLeast },
    ];
    for held in [
        None,
        Some(Held::Part { part: 1 }),
        Some(Held::Together { parts: vec![0, 2] }),
        Some(Held::Wood),
        Some(Held::Joints(Apart { apart: 9, rows: 2 })),
    ] {
        let found = Unlocks { held, all: all.clone() };
        assert_eq!(take_unlocks(put_unlocks(&found)), Some(found));
    }
    assert_eq!(take_unlocks(vec![0, 1, 3, 0, 0]), None, "no such unlock");
    assert_eq!(take_locked(row), Some(locked));
}

/// By hand: a fourth strip makes the second row. A pile of which there is no more gives none.
#[test]
fn a_try_at_a_time_finds_what_all_at_once_do() {
    let locked = one_row();
    let mut tries = Tries::begin(&locked);
    let (turns, found) = (1..).find_map(|turn| Some((turn, tries.turn()?))).unwrap_or_default();
    let one = Unlock::Rows { source: 0, n: 1, all: true, known: Known::Least };
    assert_eq!(found, Unlocks { held: None, all: vec![one] });
    assert!(2 < turns, "{turns}");
    assert_eq!(Tries::begin(&locked).to_their_end(), found);
    let gone = Locked { piles: vec![Had { each: 1, more: false }], ..locked };
    assert_eq!(Tries::begin(&gone).to_their_end(), Unlocks::default());
}

#[test]
fn a_row_cut_short_or_run_on_is_no_problem_and_no_plan() {
    let whole = put(&parts_asked());
    let plan = put_answer(&answered(made().into_iter().nth(2).unwrap_or_default()));
    for end in 0..whole.len() {
        assert_eq!(take(whole[..end].to_vec()), None, "{end}");
    }
    for end in 0..plan.len() {
        assert_eq!(take_answer(plan[..end].to_vec()), None, "{end}");
    }
    assert_eq!(take([&whole[..], &[0]].concat()), None);
    assert_eq!(take(vec![7]), None);
    assert_eq!(take(vec![1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, i64::MAX]), None, "a list longer than any");
}
