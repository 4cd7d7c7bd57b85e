//! Good plans that pass and broken ones, each with the rule it must name. The good one is the worked example of the format.

use super::super::plan::{Piece, Plan, Remainder};
use super::super::problem::{Pile, Problem};
use super::{Broken, check};

fn problem() -> Problem {
    let pile = |id: &str, count, length| Pile { id: id.into(), count, length };
    Problem {
        length: 1000,
        rows: Some(2),
        square: 5,
        kerf: 3,
        min_end: 100,
        min_piece: 80,
        machine_min: 150,
        stagger: 60,
        split: false,
        keep_min: 50,
        piles: vec![pile("A", 3, 510), pile("B", 4, 310), pile("C", 1, 120)],
    }
}

fn piece(pile: usize, n: i64, at: i64, length: i64) -> Piece {
    Piece { pile, n, at, length }
}

fn plan() -> Plan {
    let upper = vec![piece(0, 1, 0, 500), piece(0, 2, 500, 500)];
    let lower = vec![piece(1, 1, 0, 300), piece(1, 2, 300, 300), piece(0, 3, 600, 400)];
    Plan { rows: vec![upper, lower], remainders: vec![Remainder { pile: 0, n: 3, length: 97 }] }
}

#[test]
fn a_good_plan_is_worth_what_the_format_says() {
    assert_eq!(check(&problem(), &plan()), Ok([2, 53, 963_091]));
    assert_eq!(check(&problem(), &Plan::default()), Ok([0, 0, 0]));
}

#[test]
fn each_broken_rule_is_named() {
    let check = |change: &dyn Fn(&mut Plan, &mut Problem), expected| {
        let (mut plan, mut problem) = (plan(), problem());
        change(&mut plan, &mut problem);
        assert_eq!(check(&problem, &plan), Err(expected));
    };
    check(&|_, problem| problem.rows = Some(1), Broken::TooManyRows { rows: 2, most: 1 });
    check(&|plan, _| plan.rows[1].clear(), Broken::Empty { row: 1 });
    check(&|plan, _| plan.rows[0][1].pile = 9, Broken::NoSuchPile { row: 0, piece: 1 });
    check(&|plan, _| plan.rows[0][1].n = 4, Broken::NoSuchStrip { row: 0, piece: 1 });
    check(&|plan, _| plan.rows[0][0] = piece(2, 1, 0, 110), Broken::ShortForMachine { row: 0, piece: 0 });
    check(&|plan, _| plan.rows[0][0].length = 501, Broken::TooLong { row: 0, piece: 0, most: 500 });
    check(&|plan, _| plan.rows[1][1].length = 79, Broken::TooShort { row: 1, piece: 1 });
    check(&|plan, _| plan.rows[0][0].length = 99, Broken::ShortEnd { row: 0, piece: 0 });
    check(&|plan, _| plan.rows[0][1].n = 1, Broken::CutTwice { row: 0, piece: 1 });
    check(&|plan, _| plan.rows[1][1].length = 200, Broken::Shortened { row: 1, piece: 1 });
    check(&|plan, _| plan.rows[1][0].length = 200, Broken::Misplaced { row: 1, piece: 1, expected: 200 });
    check(&|plan, _| plan.rows[1][2].length = 390, Broken::RowLength { row: 1, met: 990 });
    check(&|_, problem| problem.stagger = 101, Broken::Stagger { row: 0, joint: 500, other: 600 });
    check(&|plan, _| plan.remainders.clear(), Broken::Remainder { pile: 0, n: 3, expected: 97 });
    check(&|plan, _| plan.remainders.push(Remainder { pile: 1, n: 1, length: 7 }), Broken::Remainder { pile: 1, n: 1, expected: 0 });
    let cut_too_much = |plan: &mut Plan, problem: &mut Problem| {
        problem.split = true;
        plan.rows[0][1].n = 1;
    };
    check(&cut_too_much, Broken::StripTooLong { pile: 0, n: 1, by: 503 });
}
