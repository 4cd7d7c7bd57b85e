//! From the maker's piles and wish to a problem in whole numbers: the unit is the greatest length that all others are multiples of.

use super::board_ends::with_ends;
use super::figures::Figures;
use super::off::{is_enough, is_glued, of_stick, of_tile, sawn};
use super::pooled;
use super::stock::{Joins, LeftOut, Stack};
use super::tiles::out_of;
use super::trim::{Along, fit, least_sawn, step, trimmed};
use super::wish::{Panel, Parts, Tiles, Wanted, Wish};
use crate::plan::leaves::{self, counted_whole};
use crate::plan::{Asked, field, parts, rows, sticks};
use crate::quantity::{Length, Volume, begin_large};
use crate::refusal::{Answer, Refusal};

/// A pile of the plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Source {
    /// A, B, C … in the picture.
    pub letter: String,
    pub stack: Stack,
    /// Thickness, width and length of what is planned with: a strip, where pieces are ripped first.
    pub size: [Length; 3],
    /// Strips out of each piece; 1 where it is taken as it is.
    pub ripped: i64,
    /// Tiles of the length that was asked, cut out of each piece; 1 where none was asked.
    pub tiles: i64,
    pub count: i64,
    /// How thick and wide what is left of its pieces is, where the act of a used plan says it.
    pub left: Option<[Length; 2]>,
}

/// A problem that can be given to the planner.
#[derive(Clone, Debug, PartialEq)]
pub struct Ready {
    pub wish: Wish,
    pub figures: Figures,
    pub asked: Asked,
    pub sources: Vec<Source>,
    /// Piles that don't join, by their place in the stock, and why.
    pub left_out: Vec<(usize, LeftOut)>,
    /// Nanometres of a unit of the problem.
    pub unit: i64,
}

impl Ready {
    /// So many cubic units.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn volume(&self, units: i128) -> Answer<Volume> {
        super::tally::cubic(units, self.unit)
    }

    /// The last row of a top, where it is sawn narrower than the others to make the width.
    pub fn last_row(&self, made: i64) -> Option<Length> {
        let Wish::Panel(panel) = &self.wish else { return None };
        panel.last_row(made, least_sawn(&self.figures)).filter(|last| last.as_nm().checked_rem(self.unit) == Some(0))
    }

    /// How wide a strip of a source, or a tile, is ripped that is so wide once its edges are jointed.
    pub fn ripped_to(&self, source: &Source, wide: Length) -> Length {
        match &self.wish {
            Wish::Panel(_) => source.size[1],
            Wish::Tiles(tiles) if is_glued(tiles) => sawn(wide, &self.figures).unwrap_or(wide),
            _ => wide,
        }
    }

    /// A field of tiles of a length that was asked: boards are cut, and counted.
    pub fn is_of_tiles(&self) -> bool {
        matches!(&self.wish, Wish::Tiles(tiles) if tiles.long.is_some())
    }

    /// The same with the pieces of its piles counted anew.
    pub(in crate::sheet) fn recounted(mut self) -> Ready {
        let Asked::Field(field) = &mut self.asked else { return self };
        for (place, pile) in field.piles.iter_mut().enumerate() {
            pile.count = tiles_of(&self.sources, place);
        }
        with_ends(self)
    }

    /// Whether more of a source can be had: of what plans left there is no more.
    pub(super) fn can_be_had(&self, source: usize) -> bool {
        self.sources.get(source).is_some_and(|source| pooled::alike(&self.sources, source).any(|it| !it.stack.rests))
    }

    /// Whether boards are counted whole, however much is left of them; a plan of an older book counts what goes back as not taken.
    pub fn counts_whole(&self) -> bool {
        let kept = match &self.asked {
            Asked::Rows(it) => leaves::kept(it.piles.iter().map(|pile| pile.length), it.keep_min),
            Asked::Parts(it) => leaves::kept(it.piles.iter().map(|pile| pile.length), it.keep_min),
            Asked::Sticks(it) => leaves::kept(it.piles.iter().map(|pile| pile.length), it.keep_min),
            Asked::Field(_) => None,
        };
        kept.is_some()
    }

    /// The least that is long enough to keep, in units.
    pub(super) fn least_kept(&self) -> i64 {
        let keep = self.figures.keep_min.as_nm();
        keep.saturating_add(self.unit).saturating_sub(1).checked_div(self.unit).unwrap_or(keep)
    }

    /// What is left behind a last cut, in units, where it is long enough to keep; else nothing.
    pub(super) fn kept(&self, behind: i64) -> i64 {
        if self.least_kept() <= behind { behind.max(0) } else { 0 }
    }
}

/// Makes the problem of a wish.
///
/// # Errors
/// [`Refusal::PlanOutOfRange`] for a figure no plan is made for; [`Refusal::OutOfRange`].
pub fn ready(wish: Wish, stock: &[Stack], figures: Figures) -> Answer<Ready> {
    let (mut sources, mut left_out) = (vec![], vec![]);
    let joins = joins(&wish, &figures)?;
    for (place, stack) in stock.iter().enumerate() {
        match stack.joins(&joins) {
            Ok(size) => sources.extend(source(&wish, &figures, (stack, size))?),
            Err(why) => left_out.push((place, why)),
        }
    }
    let of: Vec<Stack> = sources.iter().map(|source: &Source| source.stack.clone()).collect();
    for (source, letter) in sources.iter_mut().zip(letters(&of, &[])) {
        source.letter = letter;
    }
    let mut scale = Scale { unit: 0 };
    asked(&wish, &figures, &sources, &mut |length| scale.meet(length))?;
    sections(&wish, &sources, &figures).for_each(|length| {
        scale.meet(length);
    });
    let unit = scale.unit.max(1);
    let mut asked = asked(&wish, &figures, &sources, &mut |length| length.as_nm().checked_div(unit).unwrap_or(0))?;
    if let Asked::Field(field) = &mut asked {
        field.unit = unit;
    }
    asked.check()?;
    Ok(with_ends(Ready { wish, figures, asked, sources, left_out, unit }))
}

/// Finds the unit: the greatest common divisor of all lengths.
struct Scale {
    unit: i64,
}

impl Scale {
    fn meet(&mut self, length: Length) -> i64 {
        let (mut one, mut other) = (length.as_nm(), self.unit);
        while let Some(rest) = one.checked_rem(other) {
            (one, other) = (other, rest);
        }
        self.unit = one;
        0
    }
}

/// The sizes that only the picture and the weight go by.
fn sections<'a>(wish: &'a Wish, sources: &'a [Source], figures: &Figures) -> impl Iterator<Item = Length> + 'a {
    let of_wish: Vec<Length> = match wish {
        Wish::Panel(panel) => {
            let last = panel.rows().and_then(|rows| panel.last_row(rows, least_sawn(figures)));
            [panel.strip, panel.thickness].into_iter().chain(last).collect()
        }
        Wish::Parts(parts) | Wish::Sticks(parts) => parts.parts.iter().flat_map(|part| part.size).collect(),
        Wish::Tiles(tiles) => tiles.long.into_iter().collect(),
    };
    of_wish.into_iter().chain(sources.iter().flat_map(|source| source.size))
}

/// Each pile's own letter; where it has none, or another has it before, the first that none has, nor any pile that is `lying` beside them.
pub(in crate::sheet) fn letters(of: &[Stack], lying: &[String]) -> Vec<String> {
    let is_letter = |label: &str| (1..=2).contains(&label.len()) && label.bytes().all(|byte| byte.is_ascii_uppercase());
    let own = |nth: usize, label: &str| is_letter(label) && !of.iter().take(nth).any(|before| before.label == label);
    let taken = |letter: &String| lying.contains(letter) || of.iter().any(|stack| stack.label == *letter);
    let mut free = (0..).map(letter).filter(|letter| !taken(letter));
    let one = |(nth, stack): (usize, &Stack)| if own(nth, &stack.label) { Some(stack.label.clone()) } else { free.next() };
    of.iter().enumerate().filter_map(one).collect()
}

/// A to Z, then AA, AB …
pub(in crate::sheet) fn letter(place: usize) -> String {
    let one = |n: usize| begin_large(&String::from(char::from(u8::try_from(n).unwrap_or(0).saturating_add(b'a'))));
    match place.checked_div(26) {
        Some(0) | None => one(place),
        Some(round) => format!("{}{}", one(round.saturating_sub(1)), one(place.checked_rem(26).unwrap_or(0))),
    }
}

fn joins(wish: &Wish, figures: &Figures) -> Answer<Joins> {
    Ok(match wish {
        Wish::Panel(panel) => Joins { thickness: panel.thickness.plus(figures.allow[2])?, finished: Some(panel.thickness), woods: vec![] },
        _ => Joins::default(),
    })
}

/// The pile as the plan has it; none where no strip comes out of it.
fn source(wish: &Wish, figures: &Figures, (stack, size): (&Stack, [Length; 3])) -> Answer<Option<Source>> {
    let one = Source { letter: String::new(), stack: stack.clone(), size, ripped: 1, tiles: 1, count: i64::from(stack.free), left: None };
    if let Wish::Tiles(Tiles { long: Some(tile), .. }) = wish {
        let tiles = out_of(size[2], *tile, figures).ok_or(Refusal::OutOfRange)?;
        return Ok((0 < tiles).then_some(Source { tiles, ..one }));
    }
    let Wish::Panel(panel) = wish else { return Ok(Some(one)) };
    let [thickness, width, length] = size;
    let strip = sawn(panel.strip, figures)?;
    let alone = (panel.rows() == Some(1)).then_some(panel.strip);
    let is_strip = stack.planed && width == panel.strip;
    let ripped = if is_strip { 1 } else { ripped((alone, strip), figures, width).ok_or(Refusal::OutOfRange)? };
    let count = one.count.checked_mul(ripped).ok_or(Refusal::OutOfRange)?;
    let width = width.min(strip);
    Ok((0 < ripped).then_some(Source { size: [thickness, width, length], ripped, count, ..one }))
}

/// Strips out of a piece: as many as its width less both edges gives, a kerf between. A row alone is glued to nothing: it may be as wide as
/// the piece.
pub(in crate::sheet) fn ripped((alone, strip): (Option<Length>, Length), figures: &Figures, width: Length) -> Option<i64> {
    let whole = i64::from(alone.is_some_and(|row| row <= width));
    let [width, strip, kerf, edge] = [width, strip, figures.kerf, figures.edge_trim].map(Length::as_nm);
    let net = width.checked_sub(edge.checked_mul(2)?)?.checked_add(kerf)?;
    Some(net.checked_div(strip.checked_add(kerf)?)?.max(whole))
}

/// So much of a piece as a tape reads, where it reads all that is cut of it: then what is left comes out on the tape, too.
fn on_tape(length: Length, of_it: &[Length], figures: &Figures) -> Length {
    let step = step(figures);
    let over = |length: Length| length.as_nm().checked_rem(step).unwrap_or(0);
    let less = length.as_nm().saturating_sub(over(length));
    let down = Length::nm(less).ok().filter(|_| of_it.iter().all(|length| over(*length) == 0) && 0 < less);
    down.unwrap_or(length)
}

/// The problem; `of` turns a length into units.
fn asked(wish: &Wish, figures: &Figures, sources: &[Source], of: &mut dyn FnMut(Length) -> i64) -> Answer<Asked> {
    Ok(match wish {
        Wish::Panel(panel) => Asked::Rows(panel_rows(panel, figures, sources, of)),
        Wish::Parts(wanted) => Asked::Parts(boards(wanted, figures, sources, of)),
        Wish::Sticks(wanted) => Asked::Sticks(lengths(wanted, figures, sources, of)),
        Wish::Tiles(tiles) => Asked::Field(tiled(tiles, figures, sources, of)?),
    })
}

fn panel_rows(panel: &Panel, figures: &Figures, sources: &[Source], of: &mut dyn FnMut(Length) -> i64) -> rows::problem::Problem {
    let pile = |source: &Source, of: &mut dyn FnMut(Length) -> i64| rows::problem::Pile {
        id: source.letter.clone(),
        count: source.count,
        length: of(on_tape(source.size[2], &[panel.length, figures.square], figures)),
    };
    let piles: Vec<rows::problem::Pile> = sources.iter().map(|source| pile(source, of)).collect();
    rows::problem::Problem {
        length: of(panel.length),
        rows: panel.rows(),
        square: of(figures.square),
        kerf: of(figures.kerf),
        min_end: of(figures.min_end),
        min_piece: of(figures.min_piece),
        machine_min: of(figures.machines.plane),
        stagger: of(figures.stagger),
        split: panel.split,
        keep_min: counted_whole(piles.iter().map(|pile| pile.length), of(figures.keep_min)),
        piles,
    }
}

/// The piles of the wood that a part asks for; any where it asks for none.
fn of_wood(wood: Option<&String>, sources: &[Source]) -> Option<Vec<usize>> {
    let wood = wood?;
    let fits = sources.iter().enumerate().filter(|(_, source)| source.stack.wood.as_ref() == Some(wood));
    Some(fits.map(|(place, _)| place).collect())
}

/// The piles of the wood and the section of a part, with what is over and either way round; any where all are. A part of an unknown
/// section goes by its wood.
fn of_section(part: &Wanted, figures: &Figures, sources: &[Source]) -> Option<Vec<usize>> {
    let [_, wide, thick] = figures.allow;
    let known = part.size[0] != Length::ZERO && part.size[1] != Length::ZERO;
    let [low, high] = of_stick([part.size[0], part.size[1]], [thick, wide]);
    let has = |source: &Source| {
        let [thickness, width, _] = source.size;
        !known || is_enough(thickness.min(width), low) && is_enough(thickness.max(width), high)
    };
    let of_wood = of_wood(part.wood.as_ref(), sources);
    let all = of_wood.clone().unwrap_or_else(|| (0..sources.len()).collect());
    let fits: Vec<usize> = all.iter().copied().filter(|place| sources.get(*place).is_some_and(has)).collect();
    if fits == all { of_wood } else { Some(fits) }
}

fn boards(wanted: &Parts, figures: &Figures, sources: &[Source], of: &mut dyn FnMut(Length) -> i64) -> parts::problem::Problem {
    let [length, width, thickness] = figures.allow;
    let (long, wide) = (cut(wanted, 2, [length, figures.end_trim]), cut(wanted, 1, [width, figures.edge_trim]));
    let pile = |source: &Source, of: &mut dyn FnMut(Length) -> i64| {
        let [thickness, width, length] = source.size;
        let sides = [thickness, on_tape(width, &wide, figures), on_tape(length, &long, figures)];
        let [thickness, width, length] = sides.map(&mut *of);
        parts::problem::Pile { id: source.letter.clone(), count: source.count, length, width, thickness }
    };
    let piles: Vec<parts::problem::Pile> = sources.iter().map(|source| pile(source, of)).collect();
    let trimmed = parts::problem::Problem {
        sets: wanted.sets,
        kerf: of(figures.kerf),
        end_trim: of(figures.end_trim),
        edge_trim: of(figures.edge_trim),
        planed: false,
        allow: parts::problem::Allow { length: of(length), width: of(width), thickness: of(thickness) },
        joint: of(figures.joint),
        strip_min: of(figures.strip_min),
        plane_min: of(figures.machines.plane),
        rip_min: of(figures.machines.rip),
        keep_min: counted_whole(piles.iter().map(|pile| pile.length), of(figures.keep_min)),
        piles,
        parts: wanted
            .parts
            .iter()
            .enumerate()
            .map(|(nth, part)| {
                let [thickness, width, length] = part.size.map(&mut *of);
                let piles = of_wood(part.wood.as_ref(), sources);
                // The rest of a part has its name, too.
                let id = if part.rest_of.is_some() { format!("{}\n{nth}", part.name) } else { part.name.clone() };
                parts::problem::Part { id, per_set: part.n, length, width, thickness, glue: part.glue, piles }
            })
            .collect(),
    };
    // Where no part takes the whole width of a board, edges are trimmed as ever, and older apps read the plan.
    let planed = parts::problem::Problem { planed: true, ..trimmed.clone() };
    if (0..sources.len()).any(|pile| planed.wide(pile) != trimmed.wide(pile)) { planed } else { trimmed }
}

/// One side of all parts, with what else is cut off along it.
fn cut(wanted: &Parts, side: usize, more: [Length; 2]) -> Vec<Length> {
    wanted.parts.iter().filter_map(|part| part.size.get(side).copied()).chain(more).collect()
}

fn lengths(wanted: &Parts, figures: &Figures, sources: &[Source], of: &mut dyn FnMut(Length) -> i64) -> sticks::problem::Problem {
    let long = cut(wanted, 2, [figures.end_trim; 2]);
    let pile = |source: &Source, of: &mut dyn FnMut(Length) -> i64| sticks::problem::Pile {
        id: source.letter.clone(),
        count: source.count,
        length: of(on_tape(source.size[2], &long, figures)),
    };
    let piles: Vec<sticks::problem::Pile> = sources.iter().map(|source| pile(source, of)).collect();
    sticks::problem::Problem {
        sets: wanted.sets,
        kerf: of(figures.kerf),
        end_trim: of(figures.end_trim),
        machine_min: of(figures.machines.plane),
        keep_min: counted_whole(piles.iter().map(|pile| pile.length), of(figures.keep_min)),
        piles,
        parts: wanted
            .parts
            .iter()
            .map(|part| {
                let piles = of_section(part, figures, sources);
                sticks::problem::Part { id: part.name.clone(), per_set: part.n, length: of(part.size[2]), piles }
            })
            .collect(),
    }
}

/// Tiles are planed down to the height that is asked, in as few layers as come near enough, two
/// at least where courses cross; with what is over. As thick as they are where no height is asked.
fn highest(tiles: &Tiles, figures: &Figures, source: &Source) -> Option<Length> {
    let ((high, _), over, step) = (tiles.size[2]?, figures.allow[2], step(figures));
    let thick = source.size[0].as_nm().checked_sub(over.as_nm()).filter(|thick| 0 < *thick)?;
    let [least, most] = tiles.layers;
    let least = if tiles.patterns.as_slice() == [field::problem::Pattern::Crossed] { least.max(2) } else { least };
    let Along { tile, n } = fit(thick, tiles.size[2], step)?;
    let layers = n.max(least);
    let each = high.as_nm().checked_div(layers)?;
    let each = if layers == 1 { each } else { each.checked_div(step)?.checked_mul(step)? };
    Length::nm(tile.min(each)).ok()?.plus(over).ok().filter(|_| layers <= most && 0 < each)
}

/// Tiles of a pile, with those of all piles alike where it is the first of them: no field needs more than a pile may have.
fn tiles_of(sources: &[Source], place: usize) -> i64 {
    let (own, each) = sources.get(place).map_or((0, 1), |source| (source.count, source.tiles));
    pooled::count(sources, place).saturating_mul(each).min(own.max(crate::plan::limits::PIECES_MOST))
}

fn tiled(tiles: &Tiles, figures: &Figures, sources: &[Source], of: &mut dyn FnMut(Length) -> i64) -> Answer<field::problem::Problem> {
    let [length, width, thickness] = of_tile(tiles, figures)?;
    let target = |(size, tolerance): (Length, Length), of: &mut dyn FnMut(Length) -> i64| field::problem::Target {
        size: of(size),
        tolerance: of(tolerance),
    };
    let pile = |(place, source): (usize, &Source), of: &mut dyn FnMut(Length) -> i64| {
        let [thickness, width, length] = source.size.map(&mut *of);
        let thickness = highest(tiles, figures, source).map_or(thickness, |most| thickness.min(of(most)));
        let [length, width] = match trimmed(tiles, figures, &pooled::with_alike(sources, source)) {
            Some(sides) => sides.map(&mut *of),
            None => [length, width],
        };
        let count = tiles_of(sources, place);
        let density = source.stack.density.as_kg_per_cubic_metre().round() as i64;
        let species = source.stack.wood.clone().unwrap_or_else(|| source.letter.clone());
        // Halves come out of the piece as it is.
        let long = of(source.size[2]);
        let halved = tiles.long.is_none() && tiles.patterns.contains(&field::problem::Pattern::Running);
        let whole = if halved && length < long { long } else { 0 };
        field::problem::Pile { id: source.letter.clone(), species, count, length, width, thickness, density, whole }
    };
    let piles = sources.iter().enumerate().map(|one| pile(one, of)).collect();
    let targets = tiles.size.map(|size| size.map(|size| target(size, of)));
    let open = tiles.open.map(&mut *of);
    let allow = field::problem::Allow { length: of(length), width: of(width), thickness: of(thickness) };
    // Tiles of a length are cut out of boards that a machine takes.
    let least = if tiles.long.is_some() { Length::ZERO } else { figures.machines.plane };
    let [gap, overhang, kerf, machine_min, cut_min] = [tiles.gap, tiles.overhang, figures.kerf, least, tiles.cut_min].map(&mut *of);
    let (patterns, mix, layers, turn) = (tiles.patterns.clone(), tiles.mix.clone(), tiles.layers, tiles.turn);
    Ok(field::problem::Problem {
        unit: 1,
        patterns,
        mix,
        targets,
        layers,
        gap,
        open,
        overhang,
        kerf,
        allow,
        machine_min,
        cut_min,
        turn,
        piles,
    })
}
