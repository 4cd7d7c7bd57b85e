//! A choice of patterns made better: some rows are given up, and the strips shared out anew.

use super::dive::{dive, part};
use super::pattern::Pattern;
use super::relax::Choice;
use super::stock::Stock;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// The patterns that are likely to be needed, the likeliest first, and what each costs: length lost, squares.
pub(super) struct Core<'a> {
    pub stock: &'a Stock,
    pub patterns: Vec<Pattern>,
    pub costs: Vec<(f64, f64)>,
    /// How much more any plan with a row of it costs than the best in fractions.
    pub more: Vec<f64>,
    /// What a row is worth before its cost: more than any row costs.
    pub dear: f64,
    /// The cost of the best in fractions.
    pub least: f64,
    pub rows: usize,
}

/// The patterns of all rows, and the strips that are left.
#[derive(Clone, Debug, Default)]
pub(super) struct Chosen {
    pub taken: Vec<Pattern>,
    pub left: Vec<u32>,
}

/// Rows missing, lost length, squares: less is better.
pub(super) type Rank = (f64, f64, f64);

/// How much lost length a unit of squares is worth: little enough not to outweigh any.
const SQUARES: f64 = 5e-8;
/// So many patterns are looked at, however few could make it better.
const FEW: usize = 150;

impl Core<'_> {
    pub(super) fn rank(&self, chosen: &Chosen) -> Rank {
        let costs = chosen.taken.iter().map(|pattern| pattern.cost(self.stock));
        let (lost, squares) = costs.fold((0.0, 0.0), |sum, cost| (sum.0 + cost.0, sum.1 + cost.1));
        (-(chosen.taken.len() as f64), lost, squares)
    }

    /// Those with which a plan that costs so much could become better.
    fn which(&self, rank: Rank) -> Vec<usize> {
        let gap = if -rank.0 < self.rows as f64 { f64::MAX } else { rank.1 - self.least + 0.5 };
        let ends = self.more.partition_point(|more| *more <= gap).max(FEW).min(self.patterns.len());
        (0..ends).collect()
    }

    /// As many rows as come out, from all strips.
    pub(super) fn first(&self, left: Vec<u32>, noise: f64, draw: &mut Draw, patience: &mut Patience<'_>) -> Chosen {
        let mut chosen = Chosen { taken: vec![], left };
        let which: Vec<usize> = (0..self.patterns.len()).collect();
        self.fill(&mut chosen, (&which, noise), draw, patience);
        chosen
    }

    fn fill(&self, chosen: &mut Chosen, (which, noise): (&[usize], f64), draw: &mut Draw, patience: &mut Patience<'_>) {
        let costs = self.costs.iter().take(which.len());
        let noisy =
            |(lost, squares): &(f64, f64)| self.dear - lost - squares * SQUARES - if noise == 0.0 { 0.0 } else { noise * part(draw) };
        let worth: Vec<f64> = costs.map(noisy).collect();
        let lacks = self.rows.saturating_sub(chosen.taken.len());
        let choice = Choice { patterns: &self.patterns, worth: &worth };
        let found = dive(&choice, which, &mut chosen.left, lacks, draw, patience);
        chosen.taken.extend(found.into_iter().filter_map(|nth| self.patterns.get(nth).cloned()));
    }

    /// Another choice, some rows given up and found anew.
    pub(super) fn renewed(&self, chosen: &Chosen, draw: &mut Draw, patience: &mut Patience<'_>) -> Chosen {
        let mut other = chosen.clone();
        let most = self.rows.div_ceil(3).clamp(6, 30);
        let free = draw.below(most).saturating_add(2).min(other.taken.len());
        for _ in 0..free {
            let nth = draw.below(other.taken.len());
            other.taken.swap_remove(nth).put_back(&mut other.left);
        }
        self.filled(self.rank(chosen), &mut other, draw, patience);
        other
    }

    /// Finds the rows that lack, with patterns that can make a plan better that is worth `rank`; with some chance not the best.
    pub(super) fn filled(&self, rank: Rank, chosen: &mut Chosen, draw: &mut Draw, patience: &mut Patience<'_>) {
        let which = self.which(rank);
        let noise = [0.0, 0.0, 2.0, 10.0].get(draw.below(4)).copied().unwrap_or(0.0);
        self.fill(chosen, (&which, noise), draw, patience);
    }
}
