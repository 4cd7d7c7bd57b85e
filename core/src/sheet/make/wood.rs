//! A top in rows as it is shown, and what is reckoned of its wood: glue, weight, movement.

use super::shown::{Band, Cut, Gap, Picture, Rect, Shown, Used};
use super::{From, Given};
use crate::plan::rows::plan::{Piece, Plan};
use crate::plan::rows::problem::Problem;
use crate::quantity::{Count, Decimal, Length, Mass, Sorted, Volume};
use crate::wood::moisture::Moisture;
use crate::wood::movement::{Across, Room, Sawn};
use crate::wood::woods::Woods;

/// Grams of glue for a square metre of joint: PVA is spread at 150 to 200. Ours.
pub const GLUE: f64 = 180.0;

/// What is known of woods and the room.
#[derive(Clone, Debug)]
pub struct Known<'a> {
    pub woods: &'a Woods,
    /// Moistures in per cent.
    pub room: (Decimal, Decimal),
}

/// A strip by its pile and number, with the pieces cut from it.
type Strips<'a> = Sorted<(usize, i64), Vec<&'a Piece>>;

pub(super) fn top(given: &Given, problem: &Problem, plan: &Plan, known: &Known) -> Option<Shown> {
    let mut strips: Strips = Sorted::new();
    for piece in plan.rows.iter().flatten() {
        strips.entry((piece.pile, piece.n)).or_default().push(piece);
    }
    let cuts = cuts(given, problem, plan, &strips)?;
    let rows = plan.rows.len();
    let thickness = thickness(given);
    let deep = each_row(given, problem);
    let used = used(given, problem, &strips);
    let lost = lost(problem, plan, &strips)?;
    let made = i64::try_from(rows).ok()?;
    let finished = Volume::of(given.length(problem.length), deep, thickness).ok()?.times(Count::try_from(rows).ok()?).ok()?;
    let size = [given.length(problem.length), deep.times(made).ok()?];
    let glue = glue(plan, size, (deep, thickness));
    Some(Shown {
        made: i128::from(made),
        wanted: problem.rows.map(i128::from),
        gap: Gap::Open,
        fewest: is_fewest(problem, made, strips.len()),
        pictures: vec![Picture { of: None, times: 1, size, pieces: picture(given, problem, plan, deep, &cuts) }],
        saw_cuts: saw_cuts(problem, plan, &strips, given),
        left: left(given, plan),
        lost: Some([given.length(lost[0]), given.length(lost[1])]),
        finished,
        taken: taken(given, problem, plan, &strips, (deep, thickness))?,
        glue: Some(glue),
        weight: weight(given, &used, finished, known),
        moves: moves(given, &used, size[1], known),
        cuts: cuts.into_iter().map(|(cut, _)| cut).collect(),
        used,
        short: vec![],
        outer: None,
    })
}

fn is_whole(problem: &Problem, pieces: &[&Piece]) -> bool {
    let squared = |piece: &Piece| problem.piles.get(piece.pile).map(|pile| pile.length.saturating_sub(problem.square.saturating_mul(2)));
    matches!(pieces, [one] if squared(one) == Some(one.length))
}

/// The cuts in their order, each with the strips it stands for: whole ones of a pile together, then each strip that is cut.
fn cuts(given: &Given, problem: &Problem, plan: &Plan, strips: &Strips) -> Option<Vec<(Cut, Vec<(usize, i64)>)>> {
    let mut found: Vec<(Cut, Vec<(usize, i64)>)> = vec![];
    let rest = |strip: (usize, i64)| plan.remainders.iter().find(|left| (left.pile, left.n) == strip).map(|left| given.length(left.length));
    for (place, _) in problem.piles.iter().enumerate() {
        let of = strips.iter().filter(|((pile, _), pieces)| *pile == place && is_whole(problem, pieces));
        let whole: Vec<(usize, i64)> = of.clone().map(|(strip, _)| *strip).collect();
        if let Some(piece) = of.clone().next().and_then(|(_, pieces)| pieces.first()) {
            let pieces = vec![(given.length(piece.length), 1)];
            let times = Count::try_from(whole.len()).ok()?;
            let bands = vec![Band { size: None, pieces }];
            found.push((Cut { from: place, times, whole: true, bands, ..Cut::default() }, whole));
        }
    }
    let mut number = 0;
    for (strip, pieces) in strips.iter().filter(|(_, pieces)| !is_whole(problem, pieces)) {
        number += 1;
        let bands = vec![Band { size: None, pieces: alike(pieces.iter().map(|piece| given.length(piece.length))) }];
        let cut = Cut { from: strip.0, times: 1, number: Some(number), bands, left: rest(*strip), ..Cut::default() };
        found.push((cut, vec![*strip]));
    }
    Some(found)
}

/// Lengths in their order, alike ones that follow each other together.
pub(super) fn alike(lengths: impl Iterator<Item = Length>) -> Vec<(Length, Count)> {
    let mut found: Vec<(Length, Count)> = vec![];
    for length in lengths {
        match found.iter_mut().find(|(other, _)| *other == length) {
            Some((_, n)) => *n = n.saturating_add(1),
            None => found.push((length, 1)),
        }
    }
    found
}

fn picture(given: &Given, problem: &Problem, plan: &Plan, deep: Length, cuts: &[(Cut, Vec<(usize, i64)>)]) -> Vec<Rect> {
    let mut pieces = vec![];
    for (down, row) in (0_i64..).zip(&plan.rows) {
        for piece in row {
            let place = cuts.iter().position(|(_, strips)| strips.contains(&(piece.pile, piece.n)));
            let number = place.and_then(|place| cuts.get(place)).and_then(|(cut, _)| cut.number);
            let letter = given.from.get(piece.pile).map_or('?', |from| from.letter);
            let mark = number.map_or_else(|| letter.to_string(), |number| number.to_string());
            let at = [given.length(piece.at), deep.times(down).unwrap_or_default()];
            pieces.push(Rect { at, size: [given.length(piece.length), deep], mark, cut: place, is_cut: number.is_some() });
        }
    }
    let _ = problem;
    pieces
}

/// How wide a finished row is.
fn each_row(given: &Given, problem: &Problem) -> Length {
    let rows = problem.rows.unwrap_or(1).max(1);
    Length::nm(given.width.as_nm().checked_div(rows).unwrap_or(0)).unwrap_or_default()
}

/// As said, else what the thinnest pile gives when it is planed.
fn thickness(given: &Given) -> Length {
    let off = given.saw.over.map(Length::as_nm)[2];
    let thinnest = given.from.iter().filter_map(|from| from.source.pile.thickness).map(|it| it.as_nm().saturating_sub(off).max(0)).min();
    given.thickness.unwrap_or_else(|| Length::nm(thinnest.unwrap_or(0)).unwrap_or_default())
}

fn used(given: &Given, problem: &Problem, strips: &Strips) -> Vec<Used> {
    let one = |(place, from): (usize, &From)| {
        let n = Count::try_from(strips.keys().filter(|(pile, _)| *pile == place).count()).unwrap_or(Count::MAX);
        let of = problem.piles.get(place).map_or(0, |pile| Count::try_from(pile.count).unwrap_or(0));
        Used { from: place, strips: n, of, pieces: n.div_ceil(from.rips) }
    };
    given.from.iter().enumerate().map(one).collect()
}

/// Lost, and all that was used: over the strips used, their length less what goes back, of which so much is in no piece.
fn lost(problem: &Problem, plan: &Plan, strips: &Strips) -> Option<[i64; 2]> {
    let mut sums = [0_i64; 2];
    for ((pile, n), pieces) in strips {
        let low = problem.piles.get(*pile)?.length;
        let back = plan.remainders.iter().find(|left| (left.pile, left.n) == (*pile, *n)).map_or(0, |left| left.length);
        let cut = pieces.iter().try_fold(0_i64, |sum, piece| sum.checked_add(piece.length))?;
        sums[0] = sums[0].checked_add(low.checked_sub(back)?.checked_sub(cut)?)?;
        sums[1] = sums[1].checked_add(low)?;
    }
    Some(sums)
}

/// What leaves the rack for good: rough, as it lies there, less what goes back at its width as a strip.
fn taken(given: &Given, problem: &Problem, plan: &Plan, strips: &Strips, (deep, thickness): (Length, Length)) -> Option<Volume> {
    let mut sum = Volume::ZERO;
    for used in used(given, problem, strips) {
        let from = given.from.get(used.from)?;
        let pile = &from.source.pile;
        sum = sum.plus(Volume::of(pile.thickness?, pile.width?, pile.length?).ok()?.times(used.pieces).ok()?).ok()?;
    }
    let back = plan.remainders.iter().try_fold(Volume::ZERO, |sum, left| sum.plus(Volume::of(given.length(left.length), deep, thickness)?));
    Some(sum.less(back.ok()?))
}

fn left(given: &Given, plan: &Plan) -> Vec<(Length, Count)> {
    alike(plan.remainders.iter().map(|left| given.length(left.length)))
}

/// Both ends of each strip where they are squared, between pieces, before a remainder; and the rips.
fn saw_cuts(problem: &Problem, plan: &Plan, strips: &Strips, given: &Given) -> Count {
    let ends = if 0 < problem.square { 2 } else { 0 };
    let cross = strips.values().map(|pieces| pieces.len().saturating_sub(1).saturating_add(ends)).sum::<usize>();
    let rips = used(given, problem, strips).into_iter().map(|used| {
        let rips = given.from.get(used.from).map_or(1, |from| from.rips);
        used.pieces.saturating_mul(if 1 < rips { rips } else { 0 })
    });
    let rips = rips.fold(0, Count::saturating_add);
    Count::try_from(cross.saturating_add(plan.remainders.len())).unwrap_or(Count::MAX).saturating_add(rips)
}

/// No plan lays so much length from fewer strips: the longest ones together fall short of it.
fn is_fewest(problem: &Problem, rows: i64, strips: usize) -> bool {
    let mut lengths: Vec<(i128, i128)> = vec![];
    for pile in problem.piles.iter().filter(|pile| problem.machine_min <= pile.length) {
        let squared = pile.length.saturating_sub(problem.square.saturating_mul(2)).max(0);
        lengths.push((i128::from(squared), i128::from(pile.count)));
    }
    crate::quantity::order_by_key(&mut lengths, |(length, _)| std::cmp::Reverse(*length));
    let mut wanted = i128::from(rows).saturating_mul(i128::from(problem.length));
    let mut fewest = 0_i128;
    for (length, count) in lengths {
        let need = wanted.saturating_add(length).saturating_sub(1).checked_div(length).unwrap_or(0).clamp(0, count);
        (fewest, wanted) = (fewest.saturating_add(need), wanted.saturating_sub(need.saturating_mul(length)));
    }
    0 < rows && i128::try_from(strips) == Ok(fewest)
}

fn square_metres(a: Length, b: Length) -> f64 {
    a.as_nm() as f64 * b.as_nm() as f64 / 1e18
}

/// End joints and the long edges between rows.
fn glue(plan: &Plan, [long, _]: [Length; 2], (deep, thickness): (Length, Length)) -> (f64, f64) {
    let joints: usize = plan.rows.iter().map(|row| row.len().saturating_sub(1)).sum();
    let edges = plan.rows.len().saturating_sub(1);
    let area = joints as f64 * square_metres(deep, thickness) + edges as f64 * square_metres(long, thickness);
    (area, area * GLUE)
}

/// By the woods of the piles, each by the strips it gives.
fn weight(given: &Given, used: &[Used], finished: Volume, known: &Known) -> Option<Mass> {
    let all: Count = used.iter().fold(0, |sum: Count, used| sum.saturating_add(used.strips));
    if all == 0 {
        return None;
    }
    let kg = used.iter().map(|used| {
        let wood = given.from.get(used.from).and_then(|from| from.source.pile.wood.as_ref());
        let density = known.woods.find_or_guess(wood.map(crate::quantity::Key::as_str)).density;
        density.mass(finished).as_kg() * f64::from(used.strips) / f64::from(all)
    });
    Some(Mass::kg(kg.sum()))
}

/// The most a flat-sawn top of the liveliest wood in it moves across its rows.
fn moves(given: &Given, used: &[Used], width: Length, known: &Known) -> Option<Length> {
    let per_cent = |n: Decimal| f64::try_from(n).ok().and_then(|n| Moisture::per_cent(n).ok());
    let room = Room::of(per_cent(known.room.0)?, per_cent(known.room.1)?).ok()?;
    let of = |used: &Used| {
        let wood = given.from.get(used.from)?.source.pile.wood.as_ref()?;
        let coefficient = known.woods.find(wood.as_str()).ok()?.across(Sawn::Flat)?;
        Some(Across { width, coefficient }.moves_in(room).ok()?.most)
    };
    used.iter().filter(|used| 0 < used.strips).filter_map(of).max()
}
