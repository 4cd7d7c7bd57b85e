//! Sticks for the screen: one bar for each way of cutting.

use super::draft::{Board, Draft, Rect, Sawn, cuts};
use super::parts::by_pile;
use super::ready::Ready;
use super::rips;
use super::wish::Wish;
use super::{Mark, Why};
use crate::plan::Answered;
use crate::plan::sticks::plan::Plan;
use crate::plan::sticks::problem::Problem;
use crate::quantity::{Length, Listed};
use crate::refusal::{Answer, Refusal};

pub(super) fn draft(ready: &Ready, (problem, answered): (&Problem, &Answered), plan: &Plan) -> Answer<Draft> {
    let Wish::Sticks(wanted) = &ready.wish else { return Err(Refusal::NotThere) };
    let made = answered.worth.first().and_then(|sets| i64::try_from(*sets).ok()).unwrap_or(0);
    let all = 0 < made && problem.sets == Some(made);
    let why = all.then_some(Why::AllMade);
    let mut draft = Draft { made, why, one_section: true, finished: vec![0; problem.piles.len()], ..Draft::default() };
    let high = problem.piles.iter().map(|pile| pile.length).max().unwrap_or(0).div_euclid(20);
    for (number, stick) in (1_i64..).zip(by_pile(&plan.sticks, |stick| stick.pile)) {
        let pile = problem.piles.get(stick.pile).ok_or(Refusal::NotThere)?;
        let top = high.saturating_mul(number.saturating_sub(1));
        let (mut pieces, mut end) = (vec![], 0_i64);
        for piece in &stick.pieces {
            let part = problem.parts.get(piece.part).ok_or(Refusal::NotThere)?;
            let left = problem.end_trim.saturating_add(piece.at);
            let (wide, section) = section(ready, stick.pile, piece.part)?;
            draft.rects.push(Rect {
                at: [left, top, part.length, high.saturating_mul(wide).div_euclid(1_000)],
                source: stick.pile,
                mark: Mark::Number(number),
                part: Some(piece.part),
            });
            end = piece.at.saturating_add(part.length);
            let volume = i128::from(part.length).saturating_mul(stick.times.into());
            draft.within = draft.within.saturating_add(volume.saturating_mul(section));
            let sides = wanted.parts.get(piece.part).map(|part| [part.size[0], part.size[1]]).unwrap_or_default();
            let [thick, wide] = sides.map(|side| units(ready, side));
            draft.no_section |= thick == 0 || wide == 0;
            let [across, through] = [wide, thick].map(|side| i64::try_from(side).unwrap_or(0));
            pieces.push(([part.length, across, through], Some(piece.part)));
            if let Some(finished) = draft.finished.get_mut(stick.pile) {
                *finished = finished.saturating_add(volume.saturating_mul(thick).saturating_mul(wide));
            }
        }
        let net = pile.length.saturating_sub(problem.end_trim.saturating_mul(2));
        let remainder = ready.kept(net.saturating_sub(end).saturating_sub(problem.kerf));
        let parts = stick.pieces.iter().map(|piece| piece.part).listed();
        let along = ready.sources.get(stick.pile).map_or(0, |source| rips::cuts(ready, source, &parts));
        let cuts = cuts(pieces.len(), 0 < problem.end_trim, end < net).saturating_add(along);
        draft.sawn.push(Sawn { source: stick.pile, times: stick.times, mark: Mark::Number(number), pieces, remainder, cuts });
        let from = problem.end_trim.saturating_add(end).saturating_add(problem.kerf);
        let left = (0 < remainder).then_some([from, top, remainder, high]);
        draft.boards.push(Board { at: [0, top, pile.length, high], source: stick.pile, number, times: stick.times, left });
        draft.outer = [draft.outer[0].max(pile.length), top.saturating_add(high)];
    }
    if draft.no_section {
        draft.finished.fill(0);
    }
    Ok(draft)
}

fn units(ready: &Ready, length: Length) -> i128 {
    i128::from(length.as_nm()).checked_div(i128::from(ready.unit)).unwrap_or(0)
}

/// Of a piece of a stick: thousandths of the width it has, and thickness by width, without what is ripped off beside it.
fn section(ready: &Ready, pile: usize, part: usize) -> Answer<(i64, i128)> {
    let source = ready.sources.get(pile).ok_or(Refusal::NotThere)?;
    let [thickness, width, _] = source.size;
    let (across, through) = (thickness.max(width), thickness.min(width));
    let wide = rips::of_part(ready, source, part).map_or(across, |rip| rip.wide);
    let share = i128::from(wide.as_nm()).saturating_mul(1_000).checked_div(i128::from(across.as_nm())).unwrap_or(1_000);
    Ok((i64::try_from(share).unwrap_or(1_000), units(ready, through).saturating_mul(units(ready, wide))))
}
