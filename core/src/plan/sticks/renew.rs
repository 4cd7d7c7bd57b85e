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

/// Tries it once; whether the plan is better for it. Sticks that are far from the best in fractions, `root`, are taken out sooner.
pub(super) fn renew(
    saw: &Saw<'_>,
    pool: &mut Pool,
    laid: &mut Laid,
    (root, draw): (&Relaxed, &mut Draw),
    patience: &mut Patience<'_>,
) -> bool {
    let mut part = laid.clone();
    let most = OUT_MOST.min(laid.cuts.iter().map(|(_, times)| *times as usize).sum());
    let near = 1_usize.saturating_add(draw.below(most)); // fewer sooner than many
    let out = 2_usize.saturating_add(draw.below(near));
    for _ in 0..out {
        take_out(&mut part, root, draw);
    }
    let old = laid.rank(saw);
    let may_cost = if old.0 == 0 { old.1.saturating_sub(part.rank(saw).1) } else { i64::MAX };
    let by_halves = old.0 == 0 && 0 < draw.below(4);
    let exactly = if by_halves { cut_exactly(saw, pool, (&part.left, may_cost), patience) } else { Tried::TooMany };
    let again = match exactly {
        Tried::Cheaper(cuts) => cuts,
        Tried::None => return false,
        Tried::TooMany => match dive(saw, pool, (part.left.clone(), may_cost), &mut Some(draw), patience) {
            Some(laid) => laid.cuts,
            None => return false,
        },
    };
    for (cut, times) in &again {
        part.add(cut, *times);
    }
    let new = part.rank(saw);
    if new <= old {
        *laid = part;
    }
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
