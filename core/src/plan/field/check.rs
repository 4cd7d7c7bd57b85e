//! Looks a field over piece by piece, as it is laid. It shares nothing with the planner.

use super::lay::{Layer, layers};
use super::plan::{Field, Lie, Plan, Taken};
use super::problem::{Mix, Pattern, Pile, Problem};

/// The first rule a field breaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    /// The pattern, or the mix, is not among those that may be; or the field may not be turned.
    NotAllowed,
    /// A mix by turns takes two piles, any other one.
    Piles {
        met: usize,
    },
    NoSuchPile {
        pile: usize,
    },
    /// The two piles are of one wood.
    SameWood,
    /// Shorter than the machine takes.
    TooShort {
        pile: usize,
    },
    Layers {
        met: i64,
    },
    NothingLeft,
    /// Tiles less than twice as long as wide make no block and no herringbone.
    TooStubby,
    /// No place at all, or more places than can be looked at.
    TooLarge,
    /// An opening between lines that may not be.
    Open {
        met: i64,
    },
    Overhang {
        met: i64,
    },
    CutTooShort {
        met: i64,
    },
    /// More pieces than the pile has.
    TooMany {
        pile: usize,
        taken: i64,
        there: i64,
    },
    Tile {
        expected: [i64; 3],
    },
    Outer {
        expected: [i64; 3],
    },
    Pieces {
        expected: Taken,
    },
    GlueArea {
        expected: i128,
    },
    Weight {
        expected: i128,
    },
    /// A sum left the range of its type.
    OutOfRange,
}

type Looked<T> = Result<T, Broken>;

/// What is beyond tolerance, off, taken and cut, or the first rule the field breaks.
///
/// # Errors
/// [`Broken`] names the rule.
pub fn check(problem: &Problem, plan: &Plan) -> Looked<[i128; 4]> {
    let Some(field) = &plan.field else { return worth(problem, [0; 3], [0; 2]).ok_or(Broken::OutOfRange) };
    let piles = piles(problem, field)?;
    choice(problem, field, &piles)?;
    let layers = layers(problem, field)?;
    let outer = outer(problem, field, &layers)?;
    expect(field.outer == outer, Broken::Outer { expected: outer })?;
    let used = pieces(problem, field, (&piles, &layers))?;
    let glue = glue(problem, field, &layers).ok_or(Broken::OutOfRange)?;
    expect(field.glue_area == glue, Broken::GlueArea { expected: glue })?;
    let weight = weight(problem, field, (&piles, &layers)).ok_or(Broken::OutOfRange)?;
    expect(field.weight == weight, Broken::Weight { expected: weight })?;
    worth(problem, outer, used).ok_or(Broken::OutOfRange)
}

fn expect(holds: bool, broken: Broken) -> Looked<()> {
    if holds { Ok(()) } else { Err(broken) }
}

fn piles<'a>(problem: &'a Problem, field: &Field) -> Looked<Vec<&'a Pile>> {
    expect(problem.mix.contains(&field.mix), Broken::NotAllowed)?;
    let wanted = if field.mix == Mix::Alternate { 2 } else { 1 };
    expect(field.piles.len() == wanted, Broken::Piles { met: field.piles.len() })?;
    let mut piles: Vec<&Pile> = vec![];
    for nth in &field.piles {
        let pile = problem.piles.get(*nth).ok_or(Broken::NoSuchPile { pile: *nth })?;
        expect(problem.machine_min <= pile.length, Broken::TooShort { pile: *nth })?;
        expect(piles.iter().all(|other| other.species != pile.species), Broken::SameWood)?;
        piles.push(pile);
    }
    Ok(piles)
}

fn choice(problem: &Problem, field: &Field, piles: &[&Pile]) -> Looked<()> {
    let [least, most] = problem.layers;
    expect((least..=most).contains(&field.layers), Broken::Layers { met: field.layers })?;
    let side = |of: fn(&Pile) -> i64, off: i64| piles.iter().filter_map(|pile| of(pile).checked_sub(off)).min().ok_or(Broken::OutOfRange);
    let allow = &problem.allow;
    let expected =
        [side(|pile| pile.length, allow.length)?, side(|pile| pile.width, allow.width)?, side(|pile| pile.thickness, allow.thickness)?];
    expect(field.tile == expected, Broken::Tile { expected })?;
    expect(field.tile.iter().all(|side| 0 < *side), Broken::NothingLeft)?;
    match &field.lie {
        Lie::Rows { pattern, turn, .. } => {
            let may_turn = problem.turn && matches!(pattern, Pattern::Stack | Pattern::Running);
            expect(problem.patterns.contains(pattern) && *pattern != Pattern::Crossed && (may_turn || !turn), Broken::NotAllowed)
        }
        Lie::Crossed { lines, open, .. } => {
            expect(problem.patterns.contains(&Pattern::Crossed), Broken::NotAllowed)?;
            expect(2 <= field.layers, Broken::Layers { met: field.layers })?;
            let [narrow, wide] = problem.open;
            for (lines, open) in lines.iter().zip(open) {
                expect((*open == 0 && *lines == 1) || (narrow..=wide).contains(open), Broken::Open { met: *open })?;
            }
            Ok(())
        }
    }
}

/// How far the pieces of a layer reach.
fn reach(layer: &Layer) -> Option<[i64; 2]> {
    layer.pieces.iter().try_fold([0_i64; 2], |[x, y], piece| {
        let ([left, front], [wide, deep]) = (piece.at, piece.size);
        Some([x.max(left.checked_add(wide)?), y.max(front.checked_add(deep)?)])
    })
}

fn outer(problem: &Problem, field: &Field, layers: &[Layer]) -> Looked<[i64; 3]> {
    let reaches = layers.iter().map(reach).collect::<Option<Vec<_>>>().ok_or(Broken::OutOfRange)?;
    let [mut x, mut y] = [0_i64; 2];
    for [wide, deep] in &reaches {
        (x, y) = (x.max(*wide), y.max(*deep));
    }
    for [wide, deep] in &reaches {
        for over in [x.saturating_sub(*wide), y.saturating_sub(*deep)] {
            expect(over <= problem.overhang, Broken::Overhang { met: over })?;
        }
    }
    let [_, _, thickness] = field.tile;
    Ok([x, y, field.layers.checked_mul(thickness).ok_or(Broken::OutOfRange)?])
}

/// The length of a tile that is not cut, in this pattern.
fn full(problem: &Problem, field: &Field) -> Option<i64> {
    let [length, width, _] = field.tile;
    match field.lie {
        Lie::Rows { pattern: Pattern::Basket | Pattern::Herringbone, .. } => {
            let cell = width.checked_add(problem.gap)?;
            length.checked_add(problem.gap)?.checked_div(cell)?.checked_mul(cell)?.checked_sub(problem.gap)
        }
        _ => Some(length),
    }
}

/// The pieces of each pile as the field says; how many are taken and cut in all.
fn pieces(problem: &Problem, field: &Field, (piles, layers): (&[&Pile], &[Layer])) -> Looked<[i64; 2]> {
    let full = full(problem, field).ok_or(Broken::OutOfRange)?;
    let [mut taken, mut cut] = [0_i64; 2];
    expect(field.pieces.len() == piles.len(), Broken::Piles { met: field.pieces.len() })?;
    for (colour, (pile, said)) in piles.iter().zip(&field.pieces).enumerate() {
        let (number, from) = (field.piles.get(colour).copied().unwrap_or(0), pile.length.max(pile.whole).checked_sub(problem.allow.length));
        let from = from.ok_or(Broken::OutOfRange)?;
        // A row of another book may say anything: what the pile can't give is refused before it is laid out piece by piece.
        let taken_least = least_taken(layers, (colour, full), from).ok_or(Broken::OutOfRange)?;
        expect(taken_least <= pile.count, Broken::TooMany { pile: number, taken: taken_least, there: pile.count })?;
        let lengths = lengths(layers, colour).ok_or(Broken::OutOfRange)?;
        let pieces: Vec<i64> = lengths.iter().copied().filter(|length| *length < full).collect();
        if let Some(short) = pieces.iter().find(|length| **length < problem.cut_min) {
            return Err(Broken::CutTooShort { met: *short });
        }
        let tiles = first_fit(&pieces, (from, pile.count), problem.kerf).ok_or(Broken::OutOfRange)?;
        let whole = count(lengths.len().saturating_sub(pieces.len()));
        let expected = Taken { pile: number, whole, cut: count(pieces.len()), taken: whole.saturating_add(tiles) };
        expect(expected.taken <= pile.count, Broken::TooMany { pile: number, taken: expected.taken, there: pile.count })?;
        expect(*said == expected, Broken::Pieces { expected })?;
        (taken, cut) = (taken.saturating_add(expected.taken), cut.saturating_add(expected.cut));
    }
    Ok([taken, cut])
}

fn count(n: usize) -> i64 {
    i64::try_from(n).unwrap_or(i64::MAX)
}

/// No fewer tiles than these: one for each whole piece, and for all that is cut together its length.
fn least_taken(layers: &[Layer], (colour, full): (usize, i64), from: i64) -> Option<i64> {
    let (mut whole, mut long) = (0_i64, 0_i64);
    for layer in layers {
        for piece in layer.pieces.iter().filter(|piece| piece.colour == colour) {
            let to = if piece.length < full { (&mut long, piece.length.max(0)) } else { (&mut whole, 1) };
            *to.0 = to.0.checked_add(to.1.checked_mul(layer.times)?)?;
        }
    }
    whole.checked_add(long.checked_add(from.checked_sub(1)?)?.checked_div(from)?)
}

/// The lengths of all pieces of a colour, the longest first.
fn lengths(layers: &[Layer], colour: usize) -> Option<Vec<i64>> {
    let mut all = vec![];
    for layer in layers {
        let one: Vec<i64> = layer.pieces.iter().filter(|piece| piece.colour == colour).map(|piece| piece.length).collect();
        for _ in 0..layer.times {
            if 10_000_000 < all.len().checked_add(one.len())? {
                return None;
            }
            all.extend(&one);
        }
    }
    all.sort_unstable_by_key(|length: &i64| std::cmp::Reverse(*length));
    Some(all)
}

/// Tiles for the cut pieces, the longest first: each from the first tile with room, a kerf between neighbours. More than there are need not
/// be counted.
fn first_fit(pieces: &[i64], (from, most): (i64, i64), kerf: i64) -> Option<i64> {
    let least = pieces.last().map_or(Some(0), |piece| piece.checked_add(kerf))?;
    let (mut rooms, mut full): (Vec<i64>, usize) = (vec![], 0);
    for piece in pieces {
        if most < count(rooms.len()) {
            break;
        }
        let needed = piece.checked_add(kerf)?;
        full = rooms.iter().skip(full).take_while(|room| **room < least).count().saturating_add(full);
        match rooms.iter_mut().skip(full).find(|room| needed <= **room) {
            Some(room) => *room = room.checked_sub(needed)?,
            None => rooms.push(from.checked_sub(*piece)?),
        }
    }
    Some(count(rooms.len()))
}

/// Faces between layers; where nothing is open between tiles of a layer, their edges too.
fn glue(problem: &Problem, field: &Field, layers: &[Layer]) -> Option<i128> {
    let joints = i128::from(field.layers.checked_sub(1)?);
    if let ([odd, even], Lie::Crossed { .. }) = (layers, &field.lie) {
        return overlap(odd, even)?.checked_mul(joints);
    }
    let (mut faces, mut edges) = (0_i128, 0_i128);
    for piece in layers.iter().flat_map(|layer| &layer.pieces) {
        let [wide, deep] = piece.size.map(i128::from);
        faces = faces.checked_add(wide.checked_mul(deep)?)?;
        edges = edges.checked_add(wide)?.checked_add(deep)?;
    }
    let [wide, deep, high] = field.outer.map(i128::from);
    let inside = edges.checked_sub(wide)?.checked_sub(deep)?.checked_mul(high)?;
    joints.checked_mul(faces)?.checked_add(if problem.gap == 0 { inside } else { 0 })
}

/// Where two courses lie on each other: the lines of each as far as the other's tiles run.
fn overlap(odd: &Layer, even: &Layer) -> Option<i128> {
    let ([run_x, _], [_, run_y]) = (reach(odd)?, reach(even)?);
    // Lines are told apart by where they begin; along one line tiles lie end to end.
    let lines = |layer: &Layer, (line, along, run): (usize, usize, i64)| {
        let first = layer.pieces.iter().filter(|piece| piece.at.get(along) == Some(&0));
        let within = first.map(|piece| {
            let (at, size) = (*piece.at.get(line)?, *piece.size.get(line)?);
            Some(i128::from(at.checked_add(size)?.min(run).checked_sub(at)?.max(0)))
        });
        within.sum::<Option<i128>>()
    };
    lines(even, (0, 1, run_x))?.checked_mul(lines(odd, (1, 0, run_y))?)
}

/// Cubic nanometres of a litre: a pile's density is in grams of that.
const GRAM: i128 = 1_000_000_000_000_000_000_000_000;

fn weight(problem: &Problem, field: &Field, (piles, layers): (&[&Pile], &[Layer])) -> Option<i128> {
    let [_, _, thickness] = field.tile.map(i128::from);
    let cubic = i128::from(problem.unit).checked_pow(3)?;
    let mut mass = GRAM.checked_div(2)?;
    for layer in layers {
        for (colour, pile) in piles.iter().enumerate() {
            let area = layer.pieces.iter().filter(|piece| piece.colour == colour).try_fold(0_i128, |sum, piece| {
                let [wide, deep] = piece.size.map(i128::from);
                sum.checked_add(wide.checked_mul(deep)?)
            })?;
            let volume = area.checked_mul(thickness)?.checked_mul(i128::from(layer.times))?;
            mass = mass.checked_add(volume.checked_mul(i128::from(pile.density))?.checked_mul(cubic)?)?;
        }
    }
    mass.checked_div(GRAM)
}

fn worth(problem: &Problem, outer: [i64; 3], [taken, cut]: [i64; 2]) -> Option<[i128; 4]> {
    let (mut beyond, mut off) = (0_i64, 0_i64);
    for (target, size) in problem.targets.iter().zip(outer) {
        let Some(target) = target else { continue };
        let by = size.checked_sub(target.size)?.checked_abs()?;
        off = off.checked_add(by)?;
        beyond = beyond.checked_add(by.checked_sub(target.tolerance)?.max(0))?;
    }
    Some([beyond, off, taken, cut].map(i128::from))
}

#[cfg(test)]
mod tests;
