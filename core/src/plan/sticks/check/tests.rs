use super::*;
use crate::plan::sticks::plan::Piece;
use crate::plan::sticks::problem::{Part, Pile};

fn problem() -> Problem {
    let pile = |id: &str, count, length| Pile { id: id.into(), count, length };
    let part = |id: &str, length, piles| Part { id: id.into(), per_set: 1, length, piles };
    let piles = vec![pile("A", 2, 1000), pile("B", 3, 150)];
    Problem {
        sets: Some(3),
        kerf: 3,
        end_trim: 5,
        machine_min: 200,
        keep_min: 150,
        piles,
        parts: vec![part("leg", 400, None), part("peg", 100, Some(vec![1]))],
    }
}

fn stick(pile: usize, times: i64, pieces: &[(usize, i64)], remainder: i64) -> Plan {
    let pieces = pieces.iter().map(|(part, at)| Piece { part: *part, at: *at }).collect();
    Plan { sticks: vec![Stick { pile, times, pieces, remainder }] }
}

#[test]
fn each_rule_is_named() {
    let cases = [
        (stick(7, 1, &[(0, 0)], 0), Broken::NoSuchPile { stick: 0 }),
        (stick(0, 1, &[(9, 0)], 0), Broken::NoSuchPart { stick: 0, piece: 0 }),
        (stick(0, 0, &[(0, 0)], 0), Broken::Times { stick: 0 }),
        (stick(0, 3, &[(0, 0)], 587), Broken::TooMany { stick: 0, used: 3, there: 2 }),
        (stick(1, 1, &[(1, 0)], 0), Broken::TooShort { stick: 0 }),
        (stick(0, 1, &[], 0), Broken::NoPieces { stick: 0 }),
        (stick(0, 1, &[(1, 0)], 0), Broken::NotFromThere { stick: 0, piece: 0 }),
        (stick(0, 1, &[(0, 0), (0, 400)], 0), Broken::Misplaced { stick: 0, piece: 1, expected: 403 }),
        (stick(0, 1, &[(0, 0), (0, 403), (0, 806)], 0), Broken::TooLong { stick: 0, by: 216 }),
        (stick(0, 1, &[(0, 0)], 590), Broken::Remainder { stick: 0, expected: 587 }),
        (stick(0, i64::MAX, &[(0, 0)], 587), Broken::TooMany { stick: 0, used: i64::MAX, there: 2 }),
    ];
    for (plan, broken) in cases {
        assert_eq!(check(&problem(), &plan), Err(broken));
    }
    assert_eq!(check(&problem(), &stick(0, 2, &[(0, 0)], 587)), Ok([0, 826, 6]), "pegs are missing, so no set is whole");
    assert_eq!(check(&problem(), &Plan::default()), Ok([0, 0, 0]));
}
