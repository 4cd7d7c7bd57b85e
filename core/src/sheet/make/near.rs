//! Near misses: a top a little narrower that needs a row less.

use super::{Given, What};
use crate::quantity::Length;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::ready::Source;
use crate::sheet::plan::trim::step;
use crate::sheet::plan::wish::Wish;

/// A width a little less than was asked, and the rows it needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Narrower {
    pub by: Length,
    pub width: Length,
    pub rows: i64,
}

/// So much narrower is still told: 6 mm, about a quarter of an inch. Ours.
const NEAR: i64 = 6_350_000;

/// One row less, each as wide as the pieces give it, where that makes nearly the width that was asked.
pub fn narrower(given: &Given) -> Option<Narrower> {
    let (What::Top(top), Wish::Panel(panel)) = (&given.ask.what, &given.ready.wish) else { return None };
    let rows = panel.rows()?.checked_sub(1).filter(|rows| 0 < *rows)?;
    let widest = given.ready.sources.iter().map(|source| widest(source, &given.ready.figures)).min()??;
    let step = step(&given.ready.figures);
    let width = widest.checked_mul(rows)?.div_euclid(step).checked_mul(step)?;
    let by = top.width.as_nm().checked_sub(width).filter(|by| (1..=NEAR).contains(by))?;
    Some(Narrower { by: Length::nm(by).ok()?, width: Length::nm(width).ok()?, rows })
}

/// The widest finished row that as many strips of a piece give as are ripped from it now.
fn widest(source: &Source, figures: &Figures) -> Option<i64> {
    let [kerf, edge, joint] = [figures.kerf, figures.edge_trim, figures.joint].map(Length::as_nm);
    let net = source.stack.sizes[1]?.as_nm().checked_sub(edge.checked_mul(2)?)?.checked_add(kerf)?;
    net.checked_div(source.ripped)?.checked_sub(kerf)?.checked_sub(joint.checked_mul(2)?)
}
