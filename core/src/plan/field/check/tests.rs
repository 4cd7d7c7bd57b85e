use super::*;
use crate::plan::field::problem::{Allow, Target};
use crate::plan::field::solve;
use crate::plan::patience::{Patience, Progress};

/// Oak and ash tiles of 60 x 20 x 10.
fn problem(patterns: &[Pattern]) -> Problem {
    let pile = |id: &str, species: &str, count| Pile {
        id: id.into(),
        species: species.into(),
        count,
        length: 60,
        width: 20,
        thickness: 10,
        density: 700,
        whole: 0,
    };
    Problem {
        unit: 1_000_000,
        patterns: patterns.to_vec(),
        mix: vec![Mix::Single, Mix::Alternate],
        targets: [120, 60, 20].map(|size| Some(Target { size, tolerance: 0 })),
        layers: [1, 2],
        gap: 0,
        open: [2, 5],
        overhang: 4,
        kerf: 0,
        allow: Allow::default(),
        machine_min: 50,
        cut_min: 0,
        turn: false,
        piles: vec![pile("A", "oak", 12), pile("B", "ash", 3), Pile { length: 40, ..pile("C", "ash", 9) }, pile("D", "oak", 9)],
    }
}

/// A good field of one pattern, spoilt.
#[track_caller]
fn broken(patterns: &[Pattern], spoil: impl Fn(&mut Problem, &mut Field), wanted: Broken) {
    let mut problem = problem(patterns);
    let mut goes_on = |_: Progress<'_>| true;
    let planned = solve(&problem, &mut Patience::new(None, &mut goes_on), 1);
    let mut field = planned.plan.field.clone().expect("laid");
    assert_eq!(check(&problem, &planned.plan).map(|worth| worth.to_vec()), Ok(planned.worth));
    spoil(&mut problem, &mut field);
    assert_eq!(check(&problem, &Plan { field: Some(field) }), Err(wanted));
}

#[test]
fn each_rule_is_named() {
    let rows = |field: &mut Field, columns, rows, turn| field.lie = Lie::Rows { pattern: Pattern::Stack, columns, rows, turn };
    let stack: &[Pattern] = &[Pattern::Stack];
    broken(stack, |problem, _| problem.mix.clear(), Broken::NotAllowed);
    broken(stack, |problem, _| problem.patterns.clear(), Broken::NotAllowed);
    broken(stack, |_, field| rows(field, 2, 3, true), Broken::NotAllowed);
    broken(stack, |_, field| field.piles.push(1), Broken::Piles { met: 2 });
    broken(stack, |_, field| field.piles = vec![9], Broken::NoSuchPile { pile: 9 });
    broken(stack, |_, field| field.piles = vec![2], Broken::TooShort { pile: 2 });
    broken(stack, |_, field| (field.mix, field.piles) = (Mix::Alternate, vec![0, 3]), Broken::SameWood);
    broken(stack, |_, field| field.layers = 3, Broken::Layers { met: 3 });
    broken(stack, |problem, _| problem.allow.width = 1, Broken::Tile { expected: [60, 19, 10] });
    broken(stack, |problem, field| (problem.allow.width, field.tile[1]) = (20, 0), Broken::NothingLeft);
    broken(stack, |_, field| rows(field, 0, 3, false), Broken::TooLarge);
    broken(stack, |_, field| rows(field, i64::MAX, 3, false), Broken::TooLarge);
    broken(stack, |_, field| rows(field, 2, 2, false), Broken::Outer { expected: [120, 40, 20] });
    broken(stack, |_, field| field.glue_area += 1, Broken::GlueArea { expected: 120 * 60 + 20 * (60 + 2 * 120) });
    broken(stack, |_, field| field.weight -= 1, Broken::Weight { expected: 101 }); // 0.144 L at 700 g are 100.8 g
    broken(stack, |problem, _| problem.piles[0].count = 11, Broken::TooMany { pile: 0, taken: 12, there: 11 });
    let expected = Taken { pile: 0, whole: 12, cut: 0, taken: 12 };
    broken(stack, |_, field| field.pieces[0].taken = 11, Broken::Pieces { expected });
}

#[test]
fn the_rules_of_single_patterns_are_named() {
    let crossed: &[Pattern] = &[Pattern::Crossed];
    let lay = |field: &mut Field, lines, open| field.lie = Lie::Crossed { lines, ends: [2, 1], open };
    broken(crossed, |_, field| lay(field, [3, 5], [1, 5]), Broken::Open { met: 1 });
    broken(crossed, |_, field| lay(field, [2, 5], [3, 5]), Broken::Overhang { met: 17 });
    broken(crossed, |_, field| field.layers = 1, Broken::Layers { met: 1 });
    let herringbone: &[Pattern] = &[Pattern::Herringbone];
    broken(herringbone, |problem, _| problem.cut_min = 21, Broken::CutTooShort { met: 20 });
    broken(herringbone, |problem, field| (problem.piles[0].width, field.tile[1]) = (31, 31), Broken::TooStubby);
}

/// A row of a book that came from elsewhere: twelve tiles, and so many half ones that to fit them one by one would hold the page.
#[test]
fn what_no_pile_can_give_is_refused_before_it_is_fitted() {
    let lay = |field: &mut Field, pattern, rows: i64| {
        field.lie = Lie::Rows { pattern, columns: 2, rows, turn: false };
        field.outer = [120, 20 * rows, 20];
    };
    let more = |taken| Broken::TooMany { pile: 0, taken, there: 12 };
    // Each row of a running field is two tiles long, and there are two layers.
    broken(&[Pattern::Running], |_, field| lay(field, Pattern::Running, 400_000), more(1_600_000));
    broken(&[Pattern::Stack], |_, field| lay(field, Pattern::Stack, 400_000), more(1_600_000));
}

#[test]
fn cut_pieces_come_from_the_first_tile_with_room() {
    let check = |pieces: &[i64], most, tiles| assert_eq!(first_fit(pieces, (60, most), 2), Some(tiles), "{pieces:?}");
    check(&[], 9, 0);
    check(&[40, 30, 28, 18], 9, 2); // 40 and 18 with a kerf, 30 and 28 with one
    check(&[40, 30, 29, 18], 9, 3);
    check(&[40, 30, 29, 18], 1, 2); // more than there are: no need to go on
    check(&[29; 1_000], 1_000, 500);
}
