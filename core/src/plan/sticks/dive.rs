//! From fractions to whole sticks: what is whole is cut, the best in fractions is looked for again, until nothing is wanted any more.

use super::cutting::{Cut, Saw};
use super::relax::{self, Pool, Wanted};
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// Cuts, each with how often it is made, and what is still wanted after them.
#[derive(Clone, Debug)]
pub(super) struct Laid {
    pub cuts: Vec<(Cut, i64)>,
    pub left: Wanted,
}

impl Laid {
    pub(super) fn add(&mut self, cut: &Cut, times: i64) {
        self.left.cut(cut, times);
        match self.cuts.iter_mut().find(|(own, _)| own == cut) {
            Some((_, own)) => *own = own.saturating_add(times),
            None => self.cuts.push((cut.clone(), times)),
        }
    }

    /// How much length is missing, then what it costs: the less the better.
    pub(super) fn rank(&self, saw: &Saw<'_>) -> (i64, i64) {
        let missing = self.left.pieces.iter().zip(&saw.stock.parts).map(|(n, part)| n.saturating_mul(part.size));
        let cost = self.cuts.iter().map(|(cut, times)| cut.cost.saturating_mul(*times));
        (missing.fold(0, i64::saturating_add), cost.fold(0, i64::saturating_add))
    }
}

/// Cuts what is wanted, as long as it may cost no more than `most`. With lots, what is rounded up is drawn among the nearest.
pub(super) fn dive(
    saw: &Saw<'_>,
    pool: &mut Pool,
    (wanted, most): (Wanted, i64),
    draw: &mut Option<&mut Draw>,
    patience: &mut Patience<'_>,
) -> Option<Laid> {
    let mut laid = Laid { cuts: vec![], left: wanted };
    while !laid.left.is_met() {
        let relaxed = relax::cheapest(saw, pool, &laid.left, patience);
        if most != i64::MAX && i128::from(most) < i128::from(laid.rank(saw).1).saturating_add(relaxed.least) {
            return None;
        }
        let mut levels: Vec<(&Cut, f64)> =
            relaxed.levels.iter().filter_map(|(place, level)| Some((pool.cuts.get(*place)?, *level))).collect();
        let noise = |draw: &mut Option<&mut Draw>| draw.as_mut().map_or(0.0, |draw| draw.below(1000) as f64 / 2500.0);
        let mut ranked: Vec<(f64, &Cut, f64)> = levels.drain(..).map(|(cut, level)| (level.fract() + noise(draw), cut, level)).collect();
        ranked.sort_by(|a, b| b.0.total_cmp(&a.0));
        let before = laid.cuts.len();
        let mut whole = false;
        for (_, cut, level) in &ranked {
            let times = ((level + 1e-6) as i64).min(laid.left.times(cut));
            if 0 < times {
                laid.add(cut, times);
                whole = true;
            }
        }
        if !whole {
            let Some((_, cut, _)) = ranked.iter().find(|(_, cut, level)| 1e-6 < *level && 0 < laid.left.times(cut)) else { break };
            laid.add(cut, 1);
        }
        if patience.is_over() && before == laid.cuts.len() {
            break;
        }
    }
    Some(laid)
}
