//! A panel of rows for the screen.

use super::draft::{Draft, Rect, Sawn, Wide, cuts};
use super::ready::Ready;
use super::wish::Wish;
use super::{Ends, Mark, ShortEnd, Why};
use crate::plan::Answered;
use crate::plan::rows::plan::{Piece, Plan};
use crate::plan::rows::problem::Problem;
use crate::plan::rows::{ends, why};
use crate::quantity::{Length, Sorted};
use crate::refusal::{Answer, Refusal};

pub(super) fn draft(ready: &Ready, (problem, answered): (&Problem, &Answered), plan: &Plan) -> Answer<Draft> {
    let Wish::Panel(panel) = &ready.wish else { return Err(Refusal::NotThere) };
    let units = |length: Length| length.as_nm().checked_div(ready.unit).ok_or(Refusal::OutOfRange);
    let [strip, thickness] = [units(panel.strip)?, units(panel.thickness)?];
    let sawn = sawn(ready, (problem, plan), [strip, thickness]);
    let marks: Sorted<(usize, i64), Mark> = sawn.iter().map(|(strip, sawn)| (*strip, sawn.mark)).collect();
    let made = i64::try_from(plan.rows.len()).map_err(|_| Refusal::OutOfRange)?;
    let most = answered.bound.first().and_then(|most| i64::try_from(*most).ok());
    let why = fewest(ready, (problem, answered), plan).or_else(|| because(problem, most?));
    let ends = Ends { short: None, together: ends::fewer_together(problem, plan) };
    let mut draft = Draft { made, why, ends, one_section: true, ..Draft::default() };
    let last = ready.last_row(made).and_then(|last| units(last).ok()).unwrap_or(strip);
    draft.outer = [problem.length, strip.saturating_mul(made.saturating_sub(1)).saturating_add(last)];
    draft.finished = vec![0; problem.piles.len()];
    let mut joints = 0_i64;
    for (row, pieces) in (0_i64..).zip(&plan.rows) {
        joints = joints.saturating_add(i64::try_from(pieces.len()).unwrap_or(0)).saturating_sub(1);
        let wide = if row.saturating_add(1) == made { last } else { strip };
        for piece in pieces {
            let mark = marks.get(&(piece.pile, piece.n)).copied().unwrap_or(Mark::Letter);
            draft.rects.push(Rect { at: [piece.at, row.saturating_mul(strip), piece.length, wide], source: piece.pile, mark, part: None });
            let volume = i128::from(piece.length).saturating_mul(wide.into()).saturating_mul(thickness.into());
            if let Some(finished) = draft.finished.get_mut(piece.pile) {
                *finished = finished.saturating_add(volume);
            }
            draft.within = draft.within.saturating_add(section(ready, piece)?);
        }
    }
    let edges = i128::from(draft.made.saturating_sub(1).max(0)).saturating_mul(problem.length.into()).saturating_mul(thickness.into());
    draft.glue = edges.saturating_add(i128::from(joints.max(0)).saturating_mul(strip.into()).saturating_mul(thickness.into()));
    let (width, glued) = (draft.outer[1], 1 < plan.rows.len());
    draft.across = plan.rows.iter().flatten().map(|piece| Wide { width, source: piece.pile, part: None, glued }).collect();
    draft.across.dedup();
    draft.sawn = sawn.into_values().collect();
    Ok(draft)
}

/// The volume of a piece at the rough section of its strip.
fn section(ready: &Ready, piece: &Piece) -> Answer<i128> {
    let [thickness, width, _] = ready.sources.get(piece.pile).ok_or(Refusal::NotThere)?.size;
    let units = |length: Length| i128::from(length.as_nm()).checked_div(i128::from(ready.unit)).unwrap_or(0);
    Ok(i128::from(piece.length).saturating_mul(units(thickness)).saturating_mul(units(width)))
}

/// Every strip that is used, with its pieces. A strip that gives one piece of its whole squared length is whole; the others get numbers.
fn sawn(ready: &Ready, (problem, plan): (&Problem, &Plan), [wide, thick]: [i64; 2]) -> Sorted<(usize, i64), Sawn> {
    let mut strips: Sorted<(usize, i64), Vec<i64>> = Sorted::new();
    for piece in plan.rows.iter().flatten() {
        strips.entry((piece.pile, piece.n)).or_default().push(piece.length);
    }
    let (mut sawn, mut number) = (Sorted::new(), 0_i64);
    for ((pile, n), pieces) in strips {
        let squared = problem.piles.get(pile).map_or(0, |pile| pile.length.saturating_sub(problem.square.saturating_mul(2)));
        let whole = pieces.as_slice() == [squared];
        number = number.saturating_add(i64::from(!whole));
        let between = i64::try_from(pieces.len()).unwrap_or(1).saturating_sub(1);
        let used = pieces.iter().fold(between.saturating_mul(problem.kerf), |sum, length| sum.saturating_add(*length));
        let remainder = ready.kept(squared.saturating_sub(used).saturating_sub(problem.kerf));
        let cuts = cuts(pieces.len(), 0 < problem.square, used < squared);
        let mark = if whole { Mark::Letter } else { Mark::Number(number) };
        let pieces = pieces.into_iter().map(|length| ([length, wide, thick], None)).collect();
        sawn.insert((pile, n), Sawn { source: pile, times: 1, mark, pieces, remainder, cuts });
    }
    sawn
}

/// All rows that were asked for take at least so many strips: by their length, and by what is proven to be taken where strips are counted
/// whole.
fn fewest(ready: &Ready, (problem, answered): (&Problem, &Answered), plan: &Plan) -> Option<Why> {
    let rows = problem.rows.filter(|rows| i64::try_from(plan.rows.len()).ok() == Some(*rows))?;
    let asked = problem.length.checked_mul(rows)?;
    let (by_length, before) = longest_first(problem, problem.square, asked)?;
    let whole = ready.counts_whole() && answered.bound.first() == answered.worth.first();
    let lost = answered.bound.get(1).filter(|_| whole).and_then(|lost| i64::try_from(*lost).ok());
    let proven = lost.and_then(|lost| Some(longest_first(problem, 0, asked.checked_add(lost)?)?.0));
    let pieces = proven.map_or(by_length, |proven| proven.max(by_length));
    let length = |units: i64| units.checked_mul(ready.unit).and_then(|nm| Length::nm(nm).ok());
    let gives = if pieces == by_length { Some(length(before)?) } else { None };
    Some(Why::Fewest { pieces, gives, asked: length(asked)? })
}

/// The longest strips first, less so much at each end, until their length is enough: how many, and how long one fewer are.
fn longest_first(problem: &Problem, off: i64, asked: i64) -> Option<(i64, i64)> {
    let there = problem.piles.iter().filter(|pile| problem.machine_min <= pile.length);
    let mut piles: Vec<(i64, i64)> = there.map(|pile| (pile.length.saturating_sub(off.saturating_mul(2)), pile.count)).collect();
    piles.sort_unstable_by(|one, other| other.cmp(one));
    let (mut strips, mut sum, mut before) = (0_i64, 0_i64, 0_i64);
    for (length, count) in piles {
        let needed = asked.saturating_sub(sum).saturating_add(length).saturating_sub(1).checked_div(length)?.clamp(0, count);
        if 0 < needed {
            strips = strips.checked_add(needed)?;
            sum = sum.checked_add(length.checked_mul(needed)?)?;
            before = sum.checked_sub(length)?;
        }
    }
    Some((strips, before))
}

/// A short end that was found, in the maker's lengths.
pub(super) fn short_end(ready: &Ready, found: ends::ShortEnd) -> Option<ShortEnd> {
    let end = found.end.checked_mul(ready.unit).and_then(|nm| Length::nm(nm).ok())?;
    Some(ShortEnd { end, rows: found.rows, strips: found.strips })
}

/// What keeps the rows from being more than the bound says.
fn because(problem: &Problem, most: i64) -> Option<Why> {
    Some(match why::why(problem, most) {
        why::Why::Wanted => return None,
        why::Why::NoStrips => Why::NoStrips,
        why::Why::Length { there, .. } => Why::Length { tenths: there.saturating_mul(10).checked_div(problem.length)? },
        why::Why::DoesNotComeOut { .. } => Why::DoesNotComeOut,
    })
}
