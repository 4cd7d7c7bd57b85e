//! Every cut that a plan of less than a given cost can have: those that are not too far from the best in fractions.

use super::cutting::{Asked, Cut, Saw};
use super::sums::{NONE, Sums};

/// The most any filling by the first parts is worth, part by part; to go back through.
struct Layers(Vec<Vec<i64>>);

const NEVER: i64 = i64::MIN / 4;

impl Layers {
    fn of(sums: &Sums, wanted: &[(i64, i64)]) -> Layers {
        let mut first = vec![NEVER; sums.lengths.len()];
        first.iter_mut().take(1).for_each(|worth| *worth = 0);
        let mut layers = vec![first];
        for ((from, copies), (price, limit)) in sums.from.iter().zip(&sums.copies).zip(wanted) {
            let next = match layers.last() {
                Some(before) if copies <= limit => layer_of_any(from, *price, before),
                Some(before) => layer(from, (*price, *limit), before),
                None => vec![],
            };
            layers.push(next);
        }
        Layers(layers)
    }
}

/// As many copies as fit.
fn layer_of_any(from: &[u32], price: i64, before: &[i64]) -> Vec<i64> {
    let mut layer: Vec<i64> = vec![];
    for (next, worth) in from.iter().zip(before) {
        let with = layer.get(*next as usize).copied().filter(|worth| *worth != NEVER).map_or(NEVER, |worth| worth.saturating_add(price));
        layer.push(with.max(*worth));
    }
    layer
}

fn layer(from: &[u32], (price, limit): (i64, i64), before: &[i64]) -> Vec<i64> {
    let best = |place: usize| {
        let (mut at, mut best, mut sum) = (place, before.get(place).copied().unwrap_or(NEVER), 0_i64);
        for _ in 0..limit {
            let Some(next) = from.get(at).filter(|next| **next != NONE) else { break };
            at = *next as usize;
            sum = sum.saturating_add(price);
            let worth = before.get(at).copied().unwrap_or(NEVER);
            best = if worth == NEVER { best } else { best.max(worth.saturating_add(sum)) };
        }
        best
    };
    (0..before.len()).map(best).collect()
}

/// What is gone through: the sums, their layers, price and limit of each part, and what is found.
struct Search<'a> {
    sums: &'a Sums,
    layers: Layers,
    wanted: Vec<(i64, i64)>,
    counts: Vec<i64>,
    found: Vec<Vec<i64>>,
    most: usize,
}

impl Search<'_> {
    /// All fillings of a length, by the first `parts` parts, worth at least so much.
    fn back(&mut self, parts: usize, place: usize, least: i64) -> Option<()> {
        let Some(before) = parts.checked_sub(1) else {
            if 0 < least {
                return Some(());
            }
            self.found.push(self.counts.clone());
            return if self.found.len() <= self.most { Some(()) } else { None };
        };
        let (price, limit) = *self.wanted.get(before)?;
        let (mut at, mut left) = (place, least);
        for n in 0..=limit {
            let worth = self.layers.0.get(before).and_then(|layer| layer.get(at)).copied().unwrap_or(NEVER);
            if worth != NEVER && left <= worth {
                *self.counts.get_mut(before)? = n;
                self.back(before, at, left)?;
            }
            let Some(next) = self.sums.from.get(before).and_then(|from| from.get(at)).filter(|next| **next != NONE) else { break };
            at = *next as usize;
            left = left.saturating_sub(price);
        }
        *self.counts.get_mut(before)? = 0;
        Some(())
    }
}

/// The cuts whose worth, less cost, comes to within `slack` of what their pile gives at most; `None` where they are more than `many`.
pub(super) fn near(saw: &Saw<'_>, asked: &Asked<'_>, (most, slack): (&[i64], i64), many: usize) -> Option<Vec<Cut>> {
    let mut cuts = vec![];
    for group in saw.exact()? {
        let wanted = group.wanted(asked);
        let layers = Layers::of(&group.sums, &wanted);
        let counts = vec![0; wanted.len()];
        let mut search = Search { sums: &group.sums, layers, wanted, counts, found: vec![], most: many };
        for nth in &group.piles {
            let pile = saw.stock.piles.get(*nth)?;
            for (place, length) in group.sums.lengths.iter().enumerate().skip(1).take_while(|(_, length)| **length <= pile.room) {
                let cost = saw.cost_but_pieces(pile, *length).saturating_mul(asked.scale);
                let least = most.get(*nth)?.saturating_sub(slack).saturating_add(cost);
                let full = search.layers.0.last()?.get(place).copied()?;
                if full != NEVER && least <= full {
                    search.back(search.wanted.len(), place, least)?;
                }
            }
            let found = std::mem::take(&mut search.found);
            cuts.extend(found.into_iter().filter_map(|counts| saw.cut(*nth, counts)));
            if many < cuts.len() {
                return None;
            }
        }
    }
    Some(cuts)
}
