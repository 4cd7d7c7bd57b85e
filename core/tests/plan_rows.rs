//! Tiny walls whose strips may be cut, held against every wall there is: a bound that is too sharp shows here.

use fivebar_core::plan::draw::Draw;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::rows::check::{Broken, check};
use fivebar_core::plan::rows::plan::{Piece, Plan, Remainder};
use fivebar_core::plan::rows::problem::{Pile, Problem};
use fivebar_core::plan::rows::{SENSES, solve};
use fivebar_core::plan::{Planned, better};

/// No more rows in the making than these are tried for one case.
const TRIED_MOST: usize = 8_000;

fn tiny(draw: &mut Draw) -> Problem {
    let from = |draw: &mut Draw, least: i64, wide: usize| least + draw.below(wide) as i64;
    let pile = |draw: &mut Draw, nth: usize| Pile { id: nth.to_string(), count: from(draw, 1, 3), length: from(draw, 6, 8) };
    let piles = 1 + draw.below(2);
    Problem {
        length: from(draw, 8, 7),
        rows: Some(from(draw, 1, 2)),
        square: from(draw, 0, 2),
        kerf: from(draw, 0, 2),
        min_end: from(draw, 2, 2),
        min_piece: from(draw, 2, 2),
        machine_min: from(draw, 5, 3),
        stagger: from(draw, 0, 3),
        split: true,
        keep_min: from(draw, 2, 3),
        piles: (0..piles).map(|nth| pile(draw, nth)).collect(),
    }
}

/// Walls in the making, each with its last row open or not begun.
struct All<'a> {
    problem: &'a Problem,
    tried: usize,
    best: Vec<i128>,
}

impl All<'_> {
    /// The best of all walls that begin like this one; `false` where there are too many.
    fn from(&mut self, plan: &mut Plan) -> bool {
        match worth(self.problem, plan) {
            Some(worth) if better(&SENSES, &worth, &self.best) => self.best = worth,
            _ => {}
        }
        if self.problem.rows.is_some_and(|most| most <= plan.rows.len() as i64) {
            return true;
        }
        let mut row = vec![];
        self.row(plan, &mut row)
    }

    /// Every piece that may follow in this row: of a strip that was begun, or of the next one of a pile.
    fn row(&mut self, plan: &mut Plan, row: &mut Vec<Piece>) -> bool {
        self.tried += 1;
        if TRIED_MOST < self.tried {
            return false;
        }
        let at: i64 = row.iter().map(|piece| piece.length).sum();
        if at == self.problem.length {
            plan.rows.push(row.clone());
            // The checker says whether the rows stand, but for what is left of the strips.
            let goes_on = worth(self.problem, plan).is_none() || self.from(plan);
            plan.rows.pop();
            return goes_on;
        }
        let laid: Vec<Piece> = plan.rows.iter().flatten().chain(row.iter()).cloned().collect();
        for (pile, of) in self.problem.piles.iter().enumerate() {
            let begun = laid.iter().filter(|piece| piece.pile == pile).map(|piece| piece.n).max().unwrap_or(0);
            for n in 1..=of.count.min(begun + 1) {
                let own = laid.iter().filter(|piece| (piece.pile, piece.n) == (pile, n));
                let gone: i64 = own.map(|piece| piece.length + self.problem.kerf).sum();
                let room = of.length - 2 * self.problem.square - gone;
                for length in self.problem.min_piece..=room.min(self.problem.length - at) {
                    row.push(Piece { pile, n, at, length });
                    let goes_on = self.row(plan, row);
                    row.pop();
                    if !goes_on {
                        return false;
                    }
                }
            }
        }
        true
    }
}

/// What a wall is worth, with what is left of its strips as the checker finds it; nothing where it breaks a rule.
fn worth(problem: &Problem, plan: &Plan) -> Option<Vec<i128>> {
    let mut whole = Plan { rows: plan.rows.clone(), remainders: vec![] };
    loop {
        match check(problem, &whole) {
            Ok(worth) => return Some(worth.to_vec()),
            Err(Broken::Remainder { pile, n, expected }) if 0 < expected => {
                whole.remainders.push(Remainder { pile, n, length: expected });
            }
            Err(_) => return None,
        }
    }
}

fn planned(problem: &Problem, seed: u64) -> Planned<Plan> {
    let mut on = |_: Progress<'_>| true;
    solve(problem, &mut Patience::new(Some(20_000), &mut on), seed)
}

#[test]
fn inv16_no_cut_wall_beats_the_bound_of_tiny_random_cases() {
    let mut draw = Draw::seeded(16);
    let (mut tried, mut rows, mut best) = (0, 0, 0);
    for seed in 0..240 {
        let problem = tiny(&mut draw);
        let mut all = All { problem: &problem, tried: 0, best: vec![0; 3] };
        if !all.from(&mut Plan::default()) {
            continue;
        }
        let planned = planned(&problem, seed);
        assert_eq!(check(&problem, &planned.plan).map(|worth| worth.to_vec()), Ok(planned.worth.clone()), "{problem:?}");
        assert!(!better(&SENSES, &all.best, &planned.bound), "{problem:?}: {:?} is false, {:?}", planned.bound, all.best);
        assert!(!better(&SENSES, &planned.worth, &all.best), "{problem:?}: not every wall was tried");
        tried += 1;
        rows += usize::from(0 < all.best[0]);
        best += usize::from(planned.worth == all.best);
    }
    assert!(120 < tried && 90 < rows && tried * 9 < best * 10, "{tried} tried, {rows} with rows, {best} best");
}
