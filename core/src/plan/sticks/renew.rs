//! Some sticks of a plan are taken out and cut anew, and kept where that is no worse.
//!
//! Shaw, "Using constraint programming and local search methods to solve vehicle routing problems", CP 1998 (recalled).

use super::branch::Branch;
use super::cutting::{Asked, Cut, Saw};
use super::dive::{Laid, dive};
use super::near::near;
use super::planner::named;
use super::relax::{self, Pool, Relaxed, Wanted};
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// At most so many sticks are taken out.
const OUT_MOST: usize = 24;
/// At most so many cuts are gone through, in so many steps.
const NEAR_MOST: usize = 2000;
const STEPS: u64 = 60;

/// How sticks are chosen and cut anew: by lots, and rather in the way that bettered more for its steps.
pub(super) struct Ways {
    draw: Draw,
    /// For rounding and for going by halves: how often it bettered the plan, and the steps it took.
    bettered: [(u64, u64); 2],
}

impl Ways {
    pub(super) fn seeded(seed: u64) -> Ways {
        Ways { draw: Draw::seeded(seed), bettered: [(1, 100); 2] }
    }

    /// Whether to go by halves: the better way three times in four.
    fn by_halves(&mut self) -> bool {
        let [(rounded, its), (halved, own)] = self.bettered;
        let is_better = rounded.saturating_mul(own) < halved.saturating_mul(its);
        (self.draw.below(4) == 0) != is_better
    }

    fn learn(&mut self, by_halves: bool, steps: u64, is_better: bool) {
        if let Some((times, spent)) = self.bettered.get_mut(usize::from(by_halves)) {
            (*times, *spent) = (times.saturating_add(u64::from(is_better)), spent.saturating_add(steps));
        }
    }
}

/// Tries it once; whether the plan is better for it. Sticks that are far from the best in fractions, `root`, are taken out sooner.
pub(super) fn renew(
    saw: &Saw<'_>,
    pool: &mut Pool,
    laid: &mut Laid,
    (root, ways): (&Relaxed, &mut Ways),
    patience: &mut Patience<'_>,
) -> bool {
    let mut part = laid.clone();
    let most = OUT_MOST.min(laid.cuts.iter().map(|(_, times)| *times as usize).sum());
    let near = 1_usize.saturating_add(ways.draw.below(most)); // fewer sooner than many
    let out = 2_usize.saturating_add(ways.draw.below(near));
    for _ in 0..out {
        take_out(&mut part, root, &mut ways.draw);
    }
    let (began, old) = (patience.steps(), laid.rank(saw));
    let by_halves = old.0 == 0 && ways.by_halves();
    let may_cost = if old.0 == 0 { old.1.saturating_sub(part.rank(saw).1) } else { i64::MAX };
    let exactly = if by_halves { cut_exactly(saw, pool, (&part.left, may_cost), patience) } else { Tried::TooMany };
    let again = match exactly {
        Tried::Cheaper(cuts) => cuts,
        Tried::None => vec![],
        Tried::TooMany => {
            dive(saw, pool, (part.left.clone(), may_cost), &mut Some(&mut ways.draw), patience).map_or(vec![], |laid| laid.cuts)
        }
    };
    for (cut, times) in &again {
        part.add(cut, *times);
    }
    let new = part.rank(saw);
    if new <= old {
        *laid = part;
    }
    ways.learn(by_halves, patience.steps().saturating_sub(began), new < old);
    new < old
}

/// What came of it.
enum Tried {
    Cheaper(Vec<(Cut, i64)>),
    None,
    TooMany,
}

/// The cheapest way to cut a few pieces, where one is cheaper than `under` and soon found.
fn cut_exactly(saw: &Saw<'_>, pool: &mut Pool, (wanted, under): (&Wanted, i64), patience: &mut Patience<'_>) -> Tried {
    let relaxed = relax::cheapest(saw, pool, wanted, patience);
    let slack = i64::try_from(i128::from(under).saturating_sub(relaxed.least)).unwrap_or(0);
    if slack <= 0 {
        return Tried::None;
    }
    let asked = Asked { prices: &relaxed.prices, limits: &wanted.pieces, scale: relaxed.scale };
    let Some(near) = near(saw, &asked, (&relaxed.most, slack.saturating_mul(relaxed.scale)), NEAR_MOST) else { return Tried::TooMany };
    let mut branch = Branch::new(saw, &near, wanted.clone(), under);
    branch.go(STEPS, patience);
    branch.best.map_or(Tried::None, |best| Tried::Cheaper(named(&near, best)))
}

/// One stick: of some that are drawn the worst.
fn take_out(laid: &mut Laid, root: &Relaxed, draw: &mut Draw) {
    let draws = 1_usize.saturating_add(draw.below(3));
    let drawn = (0..draws).filter_map(|_| drawn(laid, draw));
    let over = |place: &usize| laid.cuts.get(*place).map(|(cut, _)| root.over(cut));
    let Some(place) = drawn.max_by_key(over) else { return };
    if let Some((cut, times)) = laid.cuts.get_mut(place) {
        *times = times.saturating_sub(1);
        let (cut, is_out) = (cut.clone(), *times == 0);
        laid.left.cut(&cut, -1);
        if is_out {
            laid.cuts.remove(place);
        }
    }
}

/// The cut of a stick, each stick as likely as any other.
fn drawn(laid: &Laid, draw: &mut Draw) -> Option<usize> {
    let sticks: i64 = laid.cuts.iter().map(|(_, times)| *times).sum();
    let mut nth = draw.below(usize::try_from(sticks).unwrap_or(0)) as i64;
    laid.cuts.iter().position(|(_, times)| {
        nth = nth.saturating_sub(*times);
        nth < 0
    })
}
