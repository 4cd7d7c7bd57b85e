//! A field for the screen: its top layer, or both courses where they cross.

use super::draft::{Draft, Rect, Sawn, Wide, cuts};
use super::pooled::handed_back;
use super::ready::Ready;
use super::tiles::boards;
use super::{Laid, Mark, Why};
use crate::plan::Answered;
use crate::plan::field::lay::{Layer, Piece, layers};
use crate::plan::field::plan::{Field, Lie, Plan};
use crate::plan::field::problem::{Pattern, Problem};
use crate::plan::field::sides::side_by_side;
use crate::plan::field::why::{least_piece, next};
use crate::quantity::{Length, Sorted};
use crate::refusal::{Answer, Refusal};
use std::collections::VecDeque;

pub(super) fn draft(ready: &Ready, (problem, answered): (&Problem, &Answered), plan: &Plan) -> Answer<Draft> {
    let mut draft = Draft { finished: vec![0; ready.sources.len()], ..Draft::default() };
    let Some(field) = &plan.field else { return Ok(draft) };
    let layers = layers(problem, field).map_err(|_| Refusal::NotThere)?;
    draft.why =
        if answered.worth.get(1) == Some(&0) { Some(Why::Exact) } else { step(ready, problem, field).filter(|_| answered.is_proven()) };
    draft.made = field.layers;
    draft.outer = [field.outer[0], field.outer[1]];
    draft.glue = field.glue_area;
    let (mut number, mut numbers) = (0_i64, Numbers::new());
    for (colour, taken) in field.pieces.iter().enumerate() {
        let whole = Sawn {
            source: taken.pile,
            times: taken.whole,
            mark: Mark::Letter,
            pieces: vec![([full(problem, field), field.tile[1], field.tile[2]], None)],
            remainder: rest(ready, problem, beyond(ready, taken.pile, full(problem, field).saturating_add(problem.allow.length))),
            cuts: trims(ready, (problem, field), taken.pile),
        };
        let cut = cut_tiles(ready, problem, (field, colour), &layers);
        for piece in pieces(ready, (problem, field), whole, cut)? {
            if piece.mark == Mark::Letter {
                draft.sawn.push(piece);
                continue;
            }
            number = number.saturating_add(1);
            for ([length, ..], _) in &piece.pieces {
                numbers.entry((colour, *length)).or_default().push_back(number);
            }
            draft.sawn.push(Sawn { mark: Mark::Number(number), ..piece });
        }
        finished(field, (colour, &layers), &mut draft);
    }
    draft.within = within(ready, &draft);
    draft.laid = Some(laid(ready, (problem, field))?);
    // Below in the picture are the lines along the width, and on them those along the depth.
    let shown = layers.iter().filter(|layer| 0 < layer.times).flat_map(|layer| &layer.pieces);
    draft.rects = shown.map(|piece| rect(field, piece, &mut numbers)).collect();
    handed_back(ready, problem, &mut draft)?;
    (draft.across, draft.by_side) = (across(problem, field), by_side(problem, field));
    Ok(draft)
}

/// The pieces of a pile that are sawn: each a tile, or a board of several.
fn pieces(ready: &Ready, of: (&Problem, &Field), whole: Sawn, cut: Vec<Sawn>) -> Answer<Vec<Sawn>> {
    if ready.is_of_tiles() {
        return boards(ready, of, &whole, &cut);
    }
    Ok(Some(whole).filter(|whole| 0 < whole.times).into_iter().chain(cut).collect())
}

fn full(problem: &Problem, field: &Field) -> i64 {
    let [length, width, _] = field.tile;
    match field.lie {
        Lie::Rows { pattern: Pattern::Basket | Pattern::Herringbone, .. } => {
            let cell = width.saturating_add(problem.gap);
            let ratio = length.saturating_add(problem.gap).checked_div(cell).unwrap_or(0);
            ratio.saturating_mul(cell).saturating_sub(problem.gap)
        }
        _ => length,
    }
}

/// A tile that is sized to its length is cut at both ends.
fn trims(ready: &Ready, (problem, field): (&Problem, &Field), pile: usize) -> i64 {
    let shorter = beyond(ready, pile, problem.piles.get(pile).map_or(i64::MAX, |pile| pile.length));
    if 0 < problem.allow.length || full(problem, field) < field.tile[0] || 0 < shorter { 2 } else { 0 }
}

/// What is left of a piece behind what is cut of it, where it is worth keeping: of a herringbone and a basket, too, whose tiles are as long
/// as so many are wide.
fn rest(ready: &Ready, problem: &Problem, behind: i64) -> i64 {
    ready.kept(behind.saturating_sub(problem.kerf))
}

/// How long a piece is beyond what its tiles are planned of.
fn beyond(ready: &Ready, pile: usize, planned: i64) -> i64 {
    let real = ready.sources.get(pile).and_then(|source| source.size[2].as_nm().checked_div(ready.unit)).unwrap_or(planned);
    real.saturating_sub(planned).max(0)
}

/// The numbers of the tiles that pieces of a colour and length are cut from, in the order of cutting.
type Numbers = Sorted<(usize, i64), VecDeque<i64>>;

/// A piece takes the first number of its length that is free: equal pieces are one as good as another.
fn rect(field: &Field, piece: &Piece, numbers: &mut Numbers) -> Rect {
    let ([left, top], [wide, high]) = (piece.at, piece.size);
    let number = numbers.get_mut(&(piece.colour, piece.length)).and_then(VecDeque::pop_front);
    let mark = number.map_or(Mark::Letter, Mark::Number);
    Rect { at: [left, top, wide, high], source: field.piles.get(piece.colour).copied().unwrap_or(0), mark, part: None }
}

/// The tiles that cut pieces come from, the longest pieces first, each from the first tile with room.
fn cut_tiles(ready: &Ready, problem: &Problem, (field, colour): (&Field, usize), layers: &[Layer]) -> Vec<Sawn> {
    let source = field.piles.get(colour).copied().unwrap_or(0);
    let full = full(problem, field);
    let pile = problem.piles.get(source);
    let room = pile.map_or(0, |pile| pile.cut_from().saturating_sub(problem.allow.length));
    let behind = beyond(ready, source, pile.map_or(i64::MAX, |pile| pile.cut_from()));
    let own = layers.iter().flat_map(|layer| (0..layer.times).flat_map(|_| &layer.pieces)).filter(|piece| piece.colour == colour);
    let mut lengths: Vec<i64> = own.map(|piece| piece.length).filter(|length| *length < full).collect();
    lengths.sort_unstable_by_key(|length| std::cmp::Reverse(*length));
    let mut tiles: Vec<(i64, Vec<i64>)> = vec![];
    for length in lengths {
        let step = length.saturating_add(problem.kerf);
        match tiles.iter_mut().find(|(room, _)| step <= *room) {
            Some((room, pieces)) => {
                *room = room.saturating_sub(step);
                pieces.push(length);
            }
            None => tiles.push((room.saturating_sub(length), vec![length])),
        }
    }
    let one = |(room, pieces): (i64, Vec<i64>)| Sawn {
        source,
        times: 1,
        mark: Mark::Number(0), // until it has its own
        cuts: cuts(pieces.len(), 0 < problem.allow.length, 0 < room),
        pieces: pieces.into_iter().map(|length| ([length, field.tile[1], field.tile[2]], None)).collect(),
        remainder: rest(ready, problem, room.saturating_add(behind)),
    };
    tiles.into_iter().map(one).collect()
}

fn finished(field: &Field, (colour, layers): (usize, &[Layer]), draft: &mut Draft) {
    let [_, _, thickness] = field.tile;
    for layer in layers {
        let own = layer.pieces.iter().filter(|piece| piece.colour == colour);
        let area = own.fold(0_i128, |sum, piece| sum.saturating_add(i128::from(piece.size[0]).saturating_mul(piece.size[1].into())));
        let volume = area.saturating_mul(thickness.into()).saturating_mul(layer.times.into());
        if let Some(finished) = field.piles.get(colour).and_then(|pile| draft.finished.get_mut(*pile)) {
            *finished = finished.saturating_add(volume);
        }
    }
}

/// Closed rows of one direction move as one width; closed tiles that lie both ways as wide as they lie side by side at the most, in that
/// direction where it is more; with gaps, or where courses cross, each tile moves by itself.
fn across(problem: &Problem, field: &Field) -> Vec<Wide> {
    let [_, width, _] = field.tile;
    let wide = match (field.lie, side_by_side(problem, field)) {
        (_, Some(sides)) => sides[0].max(sides[1]),
        (Lie::Rows { pattern: Pattern::Stack | Pattern::Running, rows, .. }, _) if problem.gap == 0 => rows.saturating_mul(width),
        _ => width,
    };
    wides(field, wide)
}

/// The same in width and in depth, where closed tiles lie both ways.
fn by_side(problem: &Problem, field: &Field) -> [Vec<Wide>; 2] {
    side_by_side(problem, field).map_or_else(Default::default, |sides| sides.map(|wide| if 0 < wide { wides(field, wide) } else { vec![] }))
}

fn wides(field: &Field, wide: i64) -> Vec<Wide> {
    let [_, width, _] = field.tile;
    field.piles.iter().map(|pile| Wide { width: wide, source: *pile, part: None, glued: width < wide }).collect()
}

/// The cut tiles in the rough section of their pile.
fn within(ready: &Ready, draft: &Draft) -> i128 {
    let units = |length: Length| i128::from(length.as_nm()).checked_div(i128::from(ready.unit)).unwrap_or(0);
    let one = |sawn: &Sawn| {
        let section = ready.sources.get(sawn.source).map_or(0, |source| units(source.size[0]).saturating_mul(units(source.size[1])));
        let long = sawn.pieces.iter().fold(0_i128, |sum, (size, _)| sum.saturating_add(size[0].into()));
        long.saturating_mul(section).saturating_mul(sawn.times.into())
    };
    draft.sawn.iter().fold(0, |sum, sawn| sum.saturating_add(one(sawn)))
}

fn laid(ready: &Ready, (problem, field): (&Problem, &Field)) -> Answer<Laid> {
    let pattern = match field.lie {
        Lie::Rows { pattern, .. } => pattern,
        Lie::Crossed { .. } => Pattern::Crossed,
    };
    let side = |units: i64| units.checked_mul(ready.unit).ok_or(Refusal::OutOfRange).and_then(Length::nm);
    let [wide, deep, high] = field.outer.map(side);
    let [long, across] = [full(problem, field), field.tile[1]].map(side);
    Ok(Laid { pattern, sides: [wide?, deep?, high?], tile: [long?, across?] })
}

/// The least piece that keeps it from being larger; else the side that is most off, and what one tile more or fewer would make it.
fn step(ready: &Ready, problem: &Problem, field: &Field) -> Option<Why> {
    let length = |units: i64| units.checked_mul(ready.unit).and_then(|nm| Length::nm(nm).ok());
    if let Some(cut) = least_piece(problem, field) {
        return Some(Why::LeastPiece { cut: length(cut)? });
    }
    let (side, more, other) = next(problem, field)?;
    Some(Why::Step { side, more, other: length(other)? })
}
