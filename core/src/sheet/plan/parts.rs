//! Parts from boards for the screen: one board drawn for each way of cutting.

use super::draft::{self, Draft, Rect, Sawn, Wide};
use super::ready::Ready;
use super::wish::Wish;
use super::{GlueUp, Mark, Why};
use crate::plan::Answered;
use crate::plan::parts::plan::{Band, Board, First, Panel, Piece, Plan};
use crate::plan::parts::problem::Problem;
use crate::quantity::{Length, order_by_key};
use crate::refusal::{Answer, Refusal};

pub(super) fn draft(ready: &Ready, (problem, answered): (&Problem, &Answered), plan: &Plan) -> Answer<Draft> {
    let made = answered.worth.first().and_then(|sets| i64::try_from(*sets).ok()).unwrap_or(0);
    let why = (0 < made && problem.sets == Some(made)).then_some(Why::AllMade);
    let mut draft = Draft { made, why, finished: vec![0; ready.sources.len()], ..Draft::default() };
    for (number, board) in (1_i64..).zip(by_pile(&plan.boards, |board| board.pile)) {
        let pile = problem.piles.get(board.pile).ok_or(Refusal::NotThere)?;
        let top = draft.outer[1];
        let board = &shortened(ready, problem, board);
        let pieces = drawn(problem, board, (number, top), &mut draft);
        let (source, times, remainder) = (board.pile, board.times, board.remainder);
        draft.sawn.push(Sawn { source, times, mark: Mark::Number(number), pieces, remainder, cuts: cuts(problem, board) });
        let from = problem.end_trim.saturating_add(board.stretch).saturating_add(problem.kerf);
        let left = (0 < remainder).then_some([from, top, remainder, pile.width]);
        draft.boards.push(draft::Board { at: [0, top, pile.length, pile.width], source, number, times, left });
        draft.outer = [draft.outer[0].max(pile.length), top.saturating_add(pile.width).saturating_add(problem.kerf)];
    }
    finished(problem, plan, &mut draft);
    draft.across.iter_mut().for_each(|wide| with_cut_strips(ready, wide));
    draft.glue_ups = glue_ups(ready, (problem, plan))?;
    Ok(draft)
}

/// Before a board is cut it is made no longer than its pieces need, where the rest is long enough to keep. A plan that a book keeps from
/// when the planner itself counted what is kept stays as it was planned.
fn shortened(ready: &Ready, problem: &Problem, board: &Board) -> Board {
    if ready.counts_whole() { board.shortened(problem, ready.least_kept()) } else { board.clone() }
}

/// In the order of cutting: pile by pile, each as it was planned.
pub(super) fn by_pile<T>(all: &[T], pile: impl Fn(&T) -> usize) -> Vec<&T> {
    let mut boards: Vec<&T> = all.iter().collect();
    order_by_key(&mut boards, |board| pile(board));
    boards
}

/// The pieces of a board, drawn where they lie; their lengths and parts.
fn drawn(problem: &Problem, board: &Board, (number, top): (i64, i64), draft: &mut Draft) -> Vec<([i64; 3], Option<usize>)> {
    let mut pieces = vec![];
    for band in &board.bands {
        for piece in &band.pieces {
            let (along, across) = if board.first == First::Rip { (piece.at, band.at) } else { (band.at, piece.at) };
            let left = problem.end_trim.saturating_add(along);
            let down = top.saturating_add(off_edges(problem, board.pile, band)).saturating_add(across);
            let at = [left, down, piece.length, piece.width];
            draft.rects.push(Rect { at, source: board.pile, mark: Mark::Number(number), part: Some(piece.part) });
            let thickness = problem.parts.get(piece.part).map_or(0, |part| part.thickness.saturating_add(problem.allow.thickness));
            pieces.push(([piece.length, piece.width, thickness], Some(piece.part)));
            let rough = problem.piles.get(board.pile).map_or(0, |pile| pile.thickness);
            let sides = [piece.length, piece.width, rough, board.times];
            draft.within = draft.within.saturating_add(sides.into_iter().fold(1_i128, |product, side| product.saturating_mul(side.into())));
        }
    }
    pieces
}

/// How wide a band or a section is of its board's width: as a part that takes the whole width, else as its edges are trimmed.
fn wide(problem: &Problem, pile: usize, band: &Band) -> i64 {
    band.pieces.iter().map(|piece| piece.width).fold(problem.trimmed(pile), i64::max)
}

/// Off each long edge of a board of a pile, where this is cut from it.
fn off_edges(problem: &Problem, pile: usize, band: &Band) -> i64 {
    let all = problem.piles.get(pile).map_or(0, |pile| pile.width);
    all.saturating_sub(wide(problem, pile, band)).checked_div(2).unwrap_or(0)
}

/// Along and across the board: its ends, its edges, and behind each piece and band but where a trim or the cut that shortens the board is
/// that cut.
fn cuts(problem: &Problem, board: &Board) -> i64 {
    let Some(pile) = problem.piles.get(board.pile) else { return 0 };
    let short = board.stretch < pile.length.saturating_sub(problem.end_trim.saturating_mul(2));
    let rip = board.first == First::Rip;
    let bands = Ends::of(board.bands.iter().map(|band| (band.at.saturating_add(band.size), board_room(problem, board, band))));
    let pieces = board.bands.iter().map(|band| {
        let room = if rip { board.stretch } else { wide(problem, board.pile, band) };
        let long = |piece: &Piece| if rip { piece.length } else { piece.width };
        Ends::of(band.pieces.iter().map(|piece| (piece.at.saturating_add(long(piece)), room)))
    });
    let pieces = pieces.reduce(Ends::and).unwrap_or_default();
    let (along, across) = if rip { (pieces, bands) } else { (bands, pieces) };
    // An edge that is planed with the part is not sawn off.
    let is_sawn = board.bands.iter().any(|band| wide(problem, board.pile, band) == problem.trimmed(board.pile));
    let near = [0 < problem.end_trim, 0 < problem.edge_trim && is_sawn];
    let [ends, edges] = near.map(i64::from);
    // The far end or edge is a cut of its own where something goes right up to it; of the end also where the board is shortened.
    let far = if along.full { short || near[0] } else { short };
    let all = [ends, i64::from(far), edges, i64::from(across.full && near[1]), along.cuts, across.cuts];
    all.into_iter().fold(0, i64::saturating_add)
}

/// How far a band may reach: across the board where it is ripped, along it where it is crosscut.
fn board_room(problem: &Problem, board: &Board, band: &Band) -> i64 {
    if board.first == First::Rip { wide(problem, board.pile, band) } else { board.stretch }
}

/// What lies one behind the other in rows: the cuts between and behind, and whether a row goes right up to the end.
#[derive(Clone, Copy, Default)]
struct Ends {
    cuts: i64,
    full: bool,
}

impl Ends {
    /// One row: where each ends, and how far the row may go.
    fn of(row: impl Iterator<Item = (i64, i64)>) -> Ends {
        let (n, end, room) = row.fold((0_usize, 0, 0), |(n, end, far), (next, room)| (n.saturating_add(1), next.max(end), room.max(far)));
        let over = end < room;
        Ends { cuts: draft::cuts(n.max(1), false, over), full: 0 < n && !over }
    }

    fn and(self, other: Ends) -> Ends {
        Ends { cuts: self.cuts.saturating_add(other.cuts), full: self.full || other.full }
    }
}

/// The finished wood of all sets by pile, what is glued, and the widths that move.
fn finished(problem: &Problem, plan: &Plan, draft: &mut Draft) {
    for (nth, part) in problem.parts.iter().enumerate() {
        let wanted = part.per_set.saturating_mul(draft.made);
        let shares = shares(problem, plan, nth);
        let glued = plan.panels.iter().any(|panel| panel.part == nth && 1 < panel.strips.len());
        let all = shares.iter().fold(0_i64, |sum, (_, share)| sum.saturating_add(*share));
        let volume =
            [part.length, part.width, part.thickness].into_iter().fold(i128::from(wanted), |sum, side| sum.saturating_mul(side.into()));
        for (pile, share) in &shares {
            let own = volume.saturating_mul((*share).into()).checked_div(all.into()).unwrap_or(0);
            if let Some(finished) = draft.finished.get_mut(*pile) {
                *finished = finished.saturating_add(own);
            }
            if 0 < wanted {
                draft.across.push(Wide { width: part.width, source: *pile, part: Some(nth), glued });
            }
        }
        let panels = plan.panels.iter().filter(|panel| panel.part == nth);
        let joints = panels.fold(0_i64, |sum, panel| {
            let joints = i64::try_from(panel.strips.len()).unwrap_or(1).saturating_sub(1);
            sum.saturating_add(joints.saturating_mul(panel.times))
        });
        let length = part.length.saturating_add(problem.allow.length);
        let area = i128::from(length).saturating_mul(part.thickness.saturating_add(problem.allow.thickness).into());
        draft.glue = draft.glue.saturating_add(area.saturating_mul(joints.into()));
    }
}

/// The rest of a part moves with the strips it is glued to.
fn with_cut_strips(ready: &Ready, wide: &mut Wide) {
    let Wish::Parts(list) = &ready.wish else { return };
    let part = wide.part.and_then(|nth| list.parts.get(nth));
    if let Some(width) = part.and_then(|part| part.rest_of?.as_nm().checked_div(ready.unit)) {
        (wide.width, wide.glued) = (width, true);
    }
}

/// Parts glued up of several strips, equal strips together.
fn glue_ups(ready: &Ready, (problem, plan): (&Problem, &Plan)) -> Answer<Vec<GlueUp>> {
    let length = |units: i64| units.checked_mul(ready.unit).ok_or(Refusal::OutOfRange).and_then(Length::nm);
    let mut all = vec![];
    for panel in plan.panels.iter().filter(|panel| 1 < panel.strips.len()) {
        let sawn = panel.strips.iter().fold(0_i64, |sum, strip| sum.saturating_add(strip.width));
        let joints = i64::try_from(panel.strips.len()).unwrap_or(i64::MAX).saturating_sub(1);
        let wide = length(sawn.saturating_sub(problem.joint.saturating_mul(2).saturating_mul(joints)))?;
        let cut = problem.parts.get(panel.part).map_or(Ok(wide), |part| length(part.width.saturating_add(problem.allow.width)))?;
        let mut widths = panel.strips.iter().map(|strip| length(strip.width)).collect::<Answer<Vec<Length>>>()?;
        widths.sort_unstable_by_key(|width| std::cmp::Reverse(*width));
        let mut strips: Vec<(i64, Length)> = vec![];
        for width in widths {
            match strips.last_mut() {
                Some((n, same)) if *same == width => *n = n.saturating_add(1),
                _ => strips.push((1, width)),
            }
        }
        let woods = woods(ready, panel);
        // Of which piles its strips are makes no other glue-up, of which woods does.
        match all.iter_mut().find(|own: &&mut GlueUp| (own.part, &own.strips, &own.woods) == (panel.part, &strips, &woods)) {
            Some(own) => own.n = own.n.saturating_add(panel.times),
            None => all.push(GlueUp { part: panel.part, n: panel.times, strips, wide, cut, woods }),
        }
    }
    Ok(all)
}

/// How many strips of a glue-up are of each wood, where they are of several.
fn woods(ready: &Ready, panel: &Panel) -> Vec<(i64, Option<String>)> {
    let mut all: Vec<(i64, Option<String>)> = vec![];
    for strip in &panel.strips {
        let wood = ready.sources.get(strip.pile).and_then(|source| source.stack.wood.clone());
        match all.iter_mut().find(|(_, own)| *own == wood) {
            Some((n, _)) => *n = n.saturating_add(1),
            None => all.push((1, wood)),
        }
    }
    order_by_key(&mut all, |(n, _)| std::cmp::Reverse(*n));
    all.retain(|(n, _)| usize::try_from(*n).is_ok_and(|n| n < panel.strips.len()));
    all
}

/// From which piles a part is cut, by the widths of its pieces.
fn shares(problem: &Problem, plan: &Plan, part: usize) -> Vec<(usize, i64)> {
    let share = |pile: usize| {
        let boards = plan.boards.iter().filter(|board| board.pile == pile);
        let widths = |board: &Board| {
            let own = board.bands.iter().flat_map(|band| &band.pieces).filter(|piece| piece.part == part);
            own.fold(0_i64, |sum, piece| sum.saturating_add(piece.width)).saturating_mul(board.times)
        };
        (pile, boards.fold(0_i64, |sum, board| sum.saturating_add(widths(board))))
    };
    (0..problem.piles.len()).map(share).filter(|(_, share)| 0 < *share).collect()
}
