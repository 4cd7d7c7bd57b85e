//! Near misses: a top a little narrower that needs a row less, a stick that gives one piece fewer for its trims.

use super::{Given, What};
use crate::plan::Asked;
use crate::quantity::Length;
use crate::sheet::plan::PlanSheet;
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

/// One piece more of a part than comes out of a stick of a pile: it would, were nothing trimmed off its ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trimmed {
    pub part: usize,
    pub source: usize,
    pub pieces: i64,
    pub each: Length,
    /// So long the stick would have to be, with kerf and trims, and so long it is.
    pub needs: Length,
    pub long: Length,
}

/// Of sticks that do not give what is asked, the part and the pile that lack least for one piece more, where the trims alone decide that.
pub fn trimmed(given: &Given, sheet: &PlanSheet) -> Option<Trimmed> {
    let (Wish::Sticks(wanted), Asked::Sticks(problem)) = (&given.ready.wish, &given.ready.asked) else { return None };
    let lacks = sheet.made == 0 || wanted.sets.is_some_and(|sets| sheet.made < sets);
    let length = |units: i64| units.checked_mul(given.ready.unit).and_then(|nm| Length::nm(nm).ok());
    let one = |(nth, source): (usize, usize)| {
        let (part, pile) = (problem.parts.get(nth)?, problem.piles.get(source)?);
        let trims = problem.end_trim.checked_mul(2)?;
        let each = part.length.checked_add(problem.kerf)?;
        let gives = pile.length.checked_sub(trims)?.checked_add(problem.kerf)?.checked_div(each)?;
        let pieces = gives.max(0).checked_add(1)?;
        let bare = each.checked_mul(pieces)?.checked_sub(problem.kerf)?;
        let needs = bare.checked_add(trims)?;
        let lack = needs.checked_sub(pile.length)?;
        let near = Trimmed { part: nth, source, pieces, each: length(part.length)?, needs: length(needs)?, long: length(pile.length)? };
        (0 < lack && bare <= pile.length).then_some((lack, near))
    };
    let may =
        |nth: usize, source: usize| problem.parts.get(nth).is_some_and(|it| it.piles.as_ref().is_none_or(|piles| piles.contains(&source)));
    let pairs = (0..problem.parts.len()).flat_map(|nth| (0..problem.piles.len()).map(move |source| (nth, source)));
    let all = pairs.filter(|(nth, source)| lacks && may(*nth, *source)).filter_map(one);
    all.min_by_key(|(lack, _)| *lack).map(|(_, near)| near)
}
