//! From the planner's strips back to piles and their numbers.

use super::plan::{Piece, Plan, Remainder};
use super::stock::Stock;
use super::wall::Wall;
use crate::quantity::Sorted;

/// Rows of pieces: which strip a piece is cut from, and its length. And the kind of each strip.
#[derive(Clone, Debug, Default)]
pub(super) struct Laid {
    pub rows: Vec<Vec<(usize, f64)>>,
    pub strips: Vec<u8>,
}

impl Laid {
    /// Every piece a strip of its own.
    pub(super) fn of(wall: &Wall<'_>) -> Laid {
        let mut laid = Laid::default();
        for row in &wall.rows {
            let pieces = row.kinds.iter().zip(row.lengths(wall.stock)).map(|(kind, length)| {
                laid.strips.push(*kind);
                (laid.strips.len().saturating_sub(1), length)
            });
            let pieces = pieces.collect();
            laid.rows.push(pieces);
        }
        laid
    }
}

/// The plan in the problem's unit and piles; `counts` are those of the problem's piles.
pub(super) fn plan(stock: &Stock, counts: &[i64], laid: &Laid) -> Option<Plan> {
    let whole = |length: f64| (length as i64).checked_mul(stock.unit);
    let mut there: Vec<i64> = vec![0; counts.len()];
    let mut named = vec![];
    for kind in &laid.strips {
        let free = |pile: &&usize| there.get(**pile) < counts.get(**pile);
        let pile = *stock.kind(*kind).own.iter().find(free)?;
        let n = there.get_mut(pile)?;
        *n = n.checked_add(1)?;
        named.push((pile, *n));
    }
    let mut plan = Plan::default();
    for row in &laid.rows {
        let mut at = 0_i64;
        let mut pieces = vec![];
        for (strip, length) in row {
            let (pile, n) = *named.get(*strip)?;
            let length = whole(*length)?;
            pieces.push(Piece { pile, n, at, length });
            at = at.checked_add(length)?;
        }
        plan.rows.push(pieces);
    }
    for (strip, rest) in rests(stock, laid) {
        let (pile, n) = *named.get(strip)?;
        plan.remainders.push(Remainder { pile, n, length: whole(rest)? });
    }
    Some(plan)
}

/// A plan as the planner has it; nothing where its strips are none of the stock.
pub(super) fn laid(stock: &Stock, plan: &Plan) -> Option<Laid> {
    let (mut laid, mut named) = (Laid::default(), Sorted::new());
    for row in &plan.rows {
        let mut pieces = vec![];
        for piece in row {
            let strip = match named.get(&(piece.pile, piece.n)) {
                Some(strip) => *strip,
                None => {
                    let kind = stock.kinds.iter().position(|kind| kind.own.contains(&piece.pile))?;
                    laid.strips.push(u8::try_from(kind).ok()?);
                    let strip = laid.strips.len().checked_sub(1)?;
                    named.insert((piece.pile, piece.n), strip);
                    strip
                }
            };
            pieces.push((strip, piece.length.checked_div(stock.unit)? as f64));
        }
        laid.rows.push(pieces);
    }
    Some(laid)
}

/// What goes back, strip by strip.
fn rests(stock: &Stock, laid: &Laid) -> Vec<(usize, f64)> {
    let mut left: Vec<f64> = laid.strips.iter().map(|kind| stock.long(*kind) + stock.kerf).collect();
    for (strip, length) in laid.rows.iter().flatten() {
        if let Some(left) = left.get_mut(*strip) {
            *left -= length + stock.kerf;
        }
    }
    left.into_iter().map(|left| stock.returned(left)).enumerate().filter(|(_, rest)| 0.0 < *rest).collect()
}
