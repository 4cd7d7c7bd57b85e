use super::super::problem::Pile;
use super::*;
use crate::plan::leaves::counted_whole;
use crate::plan::patience::Progress;
use crate::plan::{Asked, Made};

/// Boards and rows in tenths of a millimetre: 2.5 off each end, 3 of kerf, 250 is kept, joints 100 apart.
fn problem(boards: &[(i64, i64)], (length, rows): (i64, i64)) -> Problem {
    let long = |mm: &(i64, i64)| mm.1 * 10;
    Problem {
        length: length * 10,
        rows: Some(rows),
        square: 25,
        kerf: 30,
        min_end: 1_000,
        min_piece: 600,
        machine_min: 0,
        stagger: 1_000,
        split: true,
        keep_min: counted_whole(boards.iter().map(long), 2_500),
        piles: boards.iter().map(|pile| Pile { count: pile.0, length: long(pile), ..Pile::default() }).collect(),
    }
}

/// So many boards of each pile, joints and cuts, and what is left to keep in tenths of a millimetre.
#[track_caller]
fn check(boards: &[(i64, i64)], rows: (i64, i64), (taken, joints, cuts, left): (&[usize], i128, i128, i128)) {
    let problem = problem(boards, rows);
    for seed in 0..4 {
        let answered = Asked::Rows(problem.clone()).solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), seed);
        assert!(Asked::Rows(problem.clone()).holds(&answered));
        let Made::Rows(plan) = answered.plan else { panic!("rows") };
        let used: Set<(usize, i64)> = plan.rows.iter().flatten().map(|piece| (piece.pile, piece.n)).collect();
        let used: Vec<usize> = (0..boards.len()).map(|nth| used.iter().filter(|(pile, _)| *pile == nth).count()).collect();
        let [pieces, cut, back] = rank(&Problem { keep_min: 2_500, ..problem.clone() }, &plan);
        let met = (plan.rows.len() as i64, &*used, pieces - i128::from(rows.1), cut, -back);
        assert_eq!(met, (rows.1, taken, joints, cuts, left), "{seed}: {rows:?} of {boards:?}: {plan:?}");
    }
}

/// 850 and 3 and 850 are 1,703 of 1,995: 289 are left of each board behind a last kerf; of one that gives a single row 1,142.
#[test]
fn several_rows_come_out_of_one_long_board() {
    check(&[(9, 2_000)], (850, 4), (&[2], 0, 4, 2 * 2_890));
    check(&[(9, 2_000)], (850, 3), (&[2], 0, 3, 2_890 + 11_420));
    // The ninth is 289, 289 and 272 of what is left of three.
    check(&[(9, 2_000)], (850, 9), (&[4], 2, 9, 2_890));
    check(&[(44, 900)], (850, 8), (&[8], 0, 8, 0));
    check(&[(44, 2_000)], (1_400, 3), (&[3], 0, 3, 3 * 5_920));
}

/// Two boards of 1,200 give one row of 850 each, and one of 2,000 two: 342 are left of each short one, 289 of the long.
#[test]
fn boards_of_several_lengths_share_out_the_rows() {
    check(&[(2, 1_200), (1, 2_000)], (850, 4), (&[2, 1], 0, 4, 2 * 3_420 + 2_890));
}

/// Four boards of 2,000 are 7,980 squared, and five rows of 1,400 take 7,000: four are whole, and the fifth of 592, 592 and 216 of what is
/// left; or three are whole, and two of 808 and 592 each. Either way two joints, five cuts, and 592 and 373 to keep.
#[test]
fn where_not_all_rows_are_whole_most_are() {
    check(&[(4, 2_000)], (1_400, 5), (&[4], 2, 5, 5_920 + 3_730));
}

/// Five rows of 700 of boards of 595: each row one whole and 105 more, all five of these out of one board.
#[test]
fn rows_longer_than_the_boards_have_one_joint_each() {
    check(&[(12, 600)], (700, 5), (&[6], 5, 5, 0));
}
