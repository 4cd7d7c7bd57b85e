//! What a field lacks: how many pieces of which pile bring it nearer to the wanted size.

use super::plan::{Field, Plan};
use super::problem::{Pile, Problem};
use super::{SENSES, solve};
use crate::plan::limits::PIECES_MOST;
use crate::plan::patience::Patience;
use crate::plan::{Planned, better};

/// A nearer field, and the pieces that are not there for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacking {
    pub field: Field,
    /// Beyond tolerance, and off at all.
    pub near: [i128; 2],
    /// Piles, and so many more pieces of each.
    pub pieces: Vec<(usize, i64)>,
}

/// What the piles lack for the nearest field there can be of their sizes, in the fewest pieces; `None` where the plan is as near as that.
pub fn lacking(problem: &Problem, planned: &Planned<Plan>, patience: &mut Patience<'_>) -> Option<Lacking> {
    // A pile of none stands for another that it counts with.
    let endless = |pile: &Pile| Pile { count: if pile.count == 0 { 0 } else { PIECES_MOST }, ..pile.clone() };
    let plenty = Problem { piles: problem.piles.iter().map(endless).collect(), ..problem.clone() };
    let Planned { plan, worth, .. } = solve(&plenty, patience, 0);
    let near = <[i128; 2]>::try_from(worth.get(..2)?).ok()?;
    let field = plan.field.filter(|_| better(&SENSES, &near, &planned.worth))?;
    let more = |pile: usize, taken: i64| Some((pile, taken.saturating_sub(problem.piles.get(pile)?.count)));
    let pieces = field.pieces.iter().filter_map(|taken| more(taken.pile, taken.taken)).filter(|(_, more)| 0 < *more);
    Some(Lacking { pieces: pieces.collect(), field, near })
}
