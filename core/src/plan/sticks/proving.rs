//! Whether any plan is cheaper: all choices of cuts that could be, with what fractions promise cut off.

use super::cutting::Cut;
use super::dive::Laid;
use super::near::near;
use super::planner::{CUTS_MOST, Planner, asked, named, wanted};
use super::relax::{Relaxed, Wanted};
use crate::plan::branch::{Branch, Limit, Many, Of, Way};
use crate::plan::patience::Patience;

/// So many times the gap is halved until there are few enough cuts.
const HALVES: u32 = 8;

/// What is being gone through.
pub(super) struct Proving {
    near: Vec<Cut>,
    branch: Branch,
    under: i128,
}

impl Planner<'_> {
    /// Goes on with it for so many steps.
    pub(super) fn prove_further(&mut self, root: &Relaxed, (laid, sets): (&mut Laid, i64), steps: u64, patience: &mut Patience<'_>) {
        let until = patience.steps().saturating_add(steps);
        let known = i128::from(laid.rank(self.saw).1);
        let wanted = wanted(self.saw.stock, sets);
        let begun = self.proving.take().filter(|proving| proving.under <= known);
        let Some(mut proving) = begun.or_else(|| self.begun(root, &wanted, known)) else { return };
        proving.branch.go(until.saturating_sub(patience.steps()), patience);
        self.least = self.least.max(proving.branch.bound());
        self.prove_cost(sets, self.least, patience);
        if let Some(best) = proving.branch.best.take() {
            self.lay(laid, sets, named(&proving.near, best), patience);
        }
        if !proving.branch.is_done() {
            self.proving = Some(proving);
        }
    }

    /// The cuts of all plans cheaper than what is known, or of the cheaper ones among them where they are too many.
    fn begun(&self, root: &Relaxed, wanted: &Wanted, known: i128) -> Option<Proving> {
        (0..HALVES).find_map(|halves| {
            let gap = known.saturating_sub(self.least) >> halves;
            let under = self.least.saturating_add(gap.max(1)).min(known);
            let slack = i64::try_from(under.saturating_sub(root.least)).ok()?.checked_mul(root.scale)?;
            let near = near(self.saw, &asked(root, wanted), (&root.most, slack), CUTS_MOST)?;
            Some(Proving { branch: branch(&near, wanted, under), near, under })
        })
    }
}

/// All choices of these cuts that give what is wanted.
fn branch(cuts: &[Cut], wanted: &Wanted, under: i128) -> Branch {
    let piles = wanted.sticks.len();
    let way = |(nth, cut): (usize, &Cut)| {
        let parts = cut.counts.iter().enumerate().filter(|(_, n)| 0 < **n).map(|(part, n)| (piles.saturating_add(part), *n));
        Way { nth, things: std::iter::once((cut.pile, 1)).chain(parts).collect(), cost: cut.cost, ..Way::default() }
    };
    let there = wanted.sticks.iter().enumerate().map(|(pile, n)| Limit { of: Of::Thing(pile), least: 0, most: *n });
    let pieces = wanted.pieces.iter().enumerate();
    let pieces = pieces.map(|(part, n)| Limit { of: Of::Thing(piles.saturating_add(part)), least: *n, most: i64::MAX });
    let sticks = wanted.sticks.iter().fold(0_i64, |sum, n| sum.saturating_add(*n));
    Branch::new(cuts.iter().enumerate().map(way).collect(), Many::Most(sticks), there.chain(pieces).collect(), under)
}
