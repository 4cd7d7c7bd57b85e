//! From a draft in units to what the screen shows: alike cuts in one line, what is used and left, waste, glue, weight, movement.

use super::draft::{Board, Draft, Rect, Sawn, Wide};
use super::ready::{Ready, Source};
use super::wish::Wish;
use super::{Cut, CutLine, Drawn, Glue, Lain, Mark, Moving, Picture, PlanSheet, Proof, TooShort, Used, Waste};
use crate::plan::Answered;
use crate::quantity::{Count, Length, Mass, Money, Volume};
use crate::refusal::{Answer, Refusal};
use crate::wood::movement::{Across, Room};

/// Square nanometres of a square metre.
const SQUARE_METRE: f64 = 1e18;

pub(super) fn sheet(ready: &Ready, answered: &Answered, (draft, room): (Draft, Room)) -> Answer<PlanSheet> {
    let scale = Back { unit: ready.unit };
    let used = used(ready, &draft, scale)?;
    let weight_guessed = weighed(ready, &draft).any(|(source, _)| source.stack.guessed);
    Ok(PlanSheet {
        made: draft.made,
        picture: picture(&draft, scale)?,
        lines: lines(&draft, scale)?,
        waste: waste(ready, &draft, (&used, scale))?,
        used,
        cuts: draft.sawn.iter().fold(0, |sum, sawn| sum.saturating_add(sawn.cuts.saturating_mul(sawn.times))),
        glue: glue(&draft, ready),
        weight: weight(ready, &draft),
        weight_guessed,
        moves: moves(ready, &draft.across, (scale, room))?,
        moves_by_side: by_side(ready, &draft, (scale, room))?,
        proof: proof(answered, &draft),
        too_short: too_short(ready, &draft, scale)?,
        ends: draft.ends,
        short: vec![],
        glue_ups: draft.glue_ups,
        laid: draft.laid,
    })
}

/// From units back to lengths.
#[derive(Clone, Copy)]
struct Back {
    unit: i64,
}

impl Back {
    fn length(self, units: i64) -> Answer<Length> {
        units.checked_mul(self.unit).ok_or(Refusal::OutOfRange).and_then(Length::nm)
    }
}

fn picture(draft: &Draft, scale: Back) -> Answer<Picture> {
    let [width, height] = draft.outer.map(|side| scale.length(side));
    let at = |at: [i64; 4]| {
        let [left, top, wide, high] = at.map(|side| scale.length(side));
        Ok::<_, Refusal>([left?, top?, wide?, high?])
    };
    let drawn = |rect: &Rect| Ok(Drawn { at: at(rect.at)?, source: rect.source, mark: rect.mark, part: rect.part });
    let lain = |board: &Board| {
        let left = board.left.map(at).transpose()?;
        Ok(Lain { at: at(board.at)?, source: board.source, number: board.number, times: board.times, left })
    };
    let pieces = draft.rects.iter().map(drawn).collect::<Answer<_>>()?;
    Ok(Picture { outer: [width?, height?], pieces, boards: draft.boards.iter().map(lain).collect::<Answer<_>>()? })
}

/// Alike cuts in one line; by pile, whole ones first, then by their first number.
fn lines(draft: &Draft, scale: Back) -> Answer<Vec<CutLine>> {
    let mut lines: Vec<CutLine> = vec![];
    let mut sawn: Vec<&Sawn> = draft.sawn.iter().collect();
    crate::quantity::order_by_key(&mut sawn, |one| (one.source, one.mark));
    for one in sawn {
        let pieces = grouped(one, scale)?;
        let remainder = Some(scale.length(one.remainder)?).filter(|rest| *rest != Length::ZERO);
        let numbers: Vec<i64> = if let Mark::Number(n) = one.mark { vec![n] } else { vec![] };
        let alike = |line: &&mut CutLine| {
            line.source == one.source
                && line.pieces == pieces
                && line.remainder == remainder
                && line.numbers.is_empty() == numbers.is_empty()
        };
        match lines.iter_mut().find(alike) {
            Some(line) => {
                line.n = line.n.saturating_add(one.times);
                line.numbers.extend(numbers);
            }
            None => lines.push(CutLine { source: one.source, n: one.times, numbers, pieces, remainder }),
        }
    }
    Ok(lines)
}

/// The pieces of one cut, the longest first, equal ones together.
fn grouped(sawn: &Sawn, scale: Back) -> Answer<Vec<Cut>> {
    let mut pieces = sawn.pieces.clone();
    pieces.sort_unstable_by(|(one, part), (other, of)| other.cmp(one).then(part.cmp(of)));
    let mut grouped: Vec<Cut> = vec![];
    for (size, part) in pieces {
        let [long, wide, thick] = size.map(|side| scale.length(side));
        let one = Cut { n: 1, size: [long?, wide?, thick?], part };
        match grouped.last_mut() {
            Some(same) if (same.size, same.part) == (one.size, one.part) => same.n = same.n.saturating_add(1),
            _ => grouped.push(one),
        }
    }
    Ok(grouped)
}

fn used(ready: &Ready, draft: &Draft, scale: Back) -> Answer<Vec<Used>> {
    let mut all = vec![];
    for (place, source) in ready.sources.iter().enumerate() {
        let of = || draft.sawn.iter().filter(|sawn| sawn.source == place);
        let used = of().fold(0_i64, |sum, sawn| sum.saturating_add(sawn.times));
        if used == 0 {
            continue;
        }
        let mut remainders = vec![];
        for sawn in of().filter(|sawn| 0 < sawn.remainder) {
            let rest = scale.length(sawn.remainder)?;
            remainders.extend((0..sawn.times).map(|_| rest));
        }
        remainders.sort_unstable_by_key(|rest| std::cmp::Reverse(*rest));
        let up = used.saturating_add(source.ripped).saturating_sub(1).checked_div(source.ripped).unwrap_or(used);
        let pieces = Count::try_from(up).map_err(|_| Refusal::OutOfRange)?;
        let price = source.stack.price.map(|price| price_of(price, pieces)).transpose()?;
        let left_whole = source.count.saturating_sub(used);
        let ripped = up.saturating_mul(source.ripped).saturating_sub(used);
        let left_strips = if ready.figures.keep_min <= source.size[2] { ripped } else { 0 };
        let section = section(ready, source, of(), scale)?;
        all.push(Used { source: place, used, there: source.count, pieces, left_whole, left_strips, remainders, section, price });
    }
    Ok(all)
}

/// Thickness and width of what is left of a cut piece: as it was left, where that is written; those of its other pieces where all of it is planed before it is cut to length.
fn section<'a>(ready: &Ready, source: &Source, mut sawn: impl Iterator<Item = &'a Sawn>, scale: Back) -> Answer<[Length; 2]> {
    if let Some(left) = source.left {
        return Ok(left);
    }
    let [thickness, width, _] = source.size;
    let planed = matches!(ready.wish, Wish::Panel(_) | Wish::Tiles(_));
    let first = sawn.find_map(|sawn| sawn.pieces.first()).filter(|_| planed);
    let Some(([_, wide, thick], _)) = first else { return Ok([thickness, width]) };
    Ok([scale.length(*thick)?.min(thickness), scale.length(*wide)?.min(width)])
}

fn price_of(price: Money, pieces: Count) -> Answer<Money> {
    Money::sum(price.currency(), (0..pieces).map(|_| price))
}

/// What is taken, less what is in the finished pieces; cutting takes what the strips lose in length, the rest goes by ripping and planing.
fn waste(ready: &Ready, draft: &Draft, (used, scale): (&[Used], Back)) -> Answer<Waste> {
    let (mut whole, mut back, mut strips) = (Volume::ZERO, Volume::ZERO, Volume::ZERO);
    let (mut long, mut kept) = (Length::ZERO, Length::ZERO);
    for one in used {
        let Some(source) = ready.sources.get(one.source) else { continue };
        let [thickness, width, length] = source.size;
        let volume = |length: Length| Volume::of(thickness, width, length);
        whole = whole.plus(source.stack.volume()?.times(one.pieces)?)?;
        long = long.plus(length.times(one.used)?)?;
        strips = strips.plus(volume(length.times(one.used)?)?)?;
        let [thick, wide] = one.section;
        for rest in &one.remainders {
            (strips, back) = (strips.less(volume(*rest)?), back.plus(Volume::of(thick, wide, *rest)?)?);
            kept = kept.plus(*rest)?;
        }
        back = back.plus(volume(length.times(one.left_strips)?)?)?;
    }
    let taken = whole.less(back);
    let finished = cubic(draft.finished.iter().fold(0, |sum, one| sum.saturating_add(*one)), scale.unit)?;
    // Sizes that can't be right give no figure, least of all nothing.
    let holds = back.plus(finished)? <= whole;
    let wasted = taken.less(finished);
    let cutting = strips.less(cubic(draft.within, scale.unit)?).min(wasted);
    let pieces = draft.sawn.iter().flat_map(|sawn| sawn.pieces.iter().map(|([length, ..], _)| length.saturating_mul(sawn.times)));
    let cut = pieces.fold(0_i64, i64::saturating_add);
    let gone = long.as_nm().saturating_sub(kept.as_nm()).saturating_sub(scale.length(cut)?.as_nm());
    let length = if draft.one_section && 0 <= gone {
        Some([Length::nm(gone)?, Length::nm(long.as_nm().saturating_sub(kept.as_nm()))?])
    } else {
        None
    };
    let share = wasted.share_of(taken).ok().filter(|_| holds && !draft.no_section);
    Ok(Waste { whole, taken, finished, wasted, share, cutting, sizing: wasted.less(cutting), length })
}

pub(super) fn cubic(units: i128, unit: i64) -> Answer<Volume> {
    let unit = Length::nm(unit)?;
    let cube = Volume::of(unit, unit, unit)?;
    // A volume is counted in cubes of the unit: in two steps, since a count is small and a volume is not.
    let thousand = 1_000_000_000_i128;
    let (high, low) = (units.checked_div(thousand).ok_or(Refusal::OutOfRange)?, units.checked_rem(thousand).ok_or(Refusal::OutOfRange)?);
    let of = |n: i128| Count::try_from(n).map_err(|_| Refusal::OutOfRange);
    let mut sum = cube.times(of(low)?)?;
    let block = cube.times(1_000_000_000)?;
    let (blocks, rest) = (high.checked_div(thousand).ok_or(Refusal::OutOfRange)?, high.checked_rem(thousand).ok_or(Refusal::OutOfRange)?);
    sum = sum.plus(block.times(of(rest)?)?)?;
    if 0 < blocks {
        sum = sum.plus(block.times(1_000_000_000)?.times(of(blocks)?)?)?;
    }
    Ok(sum)
}

fn glue(draft: &Draft, ready: &Ready) -> Glue {
    let unit = ready.unit as f64;
    let area = draft.glue as f64 * unit * unit / SQUARE_METRE;
    Glue { area, grams: (area * ready.figures.spread as f64).ceil() as i64 }
}

fn weighed<'a>(ready: &'a Ready, draft: &'a Draft) -> impl Iterator<Item = (&'a Source, i128)> {
    ready.sources.iter().zip(draft.finished.iter().copied()).filter(|(_, finished)| 0 < *finished)
}

fn weight(ready: &Ready, draft: &Draft) -> Mass {
    let cube = (ready.unit as f64 / 1e9).powi(3);
    let one = |(source, finished): (&Source, i128)| Mass::kg(source.stack.density.as_kg_per_cubic_metre() * finished as f64 * cube);
    weighed(ready, draft).map(one).fold(Mass::ZERO, Mass::plus)
}

/// The width that moves most over the room's range; nothing where the room goes beyond the moistures a coefficient is published for.
fn moves(ready: &Ready, across: &[Wide], (scale, room): (Back, Room)) -> Answer<Option<Moving>> {
    let mut most: Option<Moving> = None;
    for Wide { width, source, part, glued } in across {
        let Some(coefficient) = ready.sources.get(*source).and_then(|source| source.stack.moves) else { continue };
        let width = scale.length(*width)?;
        let moves = match (Across { width, coefficient }).moves_in(room) {
            Err(Refusal::MovementUnknown { .. }) => return Ok(None),
            said => said?,
        };
        if most.is_none_or(|met| met.moves.most < moves.most) {
            most = Some(Moving { width, moves, part: *part, glued: *glued });
        }
    }
    Ok(most)
}

fn by_side(ready: &Ready, draft: &Draft, (scale, room): (Back, Room)) -> Answer<Vec<(usize, Moving)>> {
    let one = |(side, across): (usize, &Vec<Wide>)| Ok(moves(ready, across, (scale, room))?.map(|it| (side, it)));
    let all: Answer<Vec<_>> = draft.by_side.iter().enumerate().map(one).collect();
    Ok(all?.into_iter().flatten().collect())
}

fn proof(answered: &Answered, draft: &Draft) -> Proof {
    let pairs = answered.worth.iter().zip(&answered.bound).enumerate();
    let gap = pairs.map(|(place, (worth, bound))| (place, *worth, *bound)).find(|(_, worth, bound)| worth != bound);
    Proof { best: answered.is_proven(), gap, why: draft.why.clone() }
}

/// Piles under the least of the machines that surface a piece, and pieces that are cut shorter than that.
fn too_short(ready: &Ready, draft: &Draft, scale: Back) -> Answer<Vec<TooShort>> {
    let least = ready.figures.machines.plane;
    let mut all: Vec<TooShort> = vec![];
    for (source, pile) in ready.sources.iter().enumerate().filter(|(_, pile)| pile.size[2] < least) {
        all.push(TooShort { source, cut: false, length: pile.size[2], least });
    }
    for sawn in &draft.sawn {
        for ([length, ..], _) in &sawn.pieces {
            let one = TooShort { source: sawn.source, cut: true, length: scale.length(*length)?, least };
            if one.length < least && !all.contains(&one) {
                all.push(one);
            }
        }
    }
    crate::quantity::order_by_key(&mut all, |one| (one.source, one.cut, one.length));
    Ok(all)
}
