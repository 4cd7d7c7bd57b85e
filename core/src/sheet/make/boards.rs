//! Boards cut into parts, sticks cut to lengths, and a field, as they are shown.

use super::Given;
use super::shown::{Band, Cut, Gap, Picture, Rect, Shown, Used};
use super::wood::{GLUE, Known, alike};
use crate::plan::parts::plan::{Board, First, Panel, Plan};
use crate::plan::parts::problem::Problem;
use crate::plan::{field, sticks};
use crate::quantity::{Count, Key, Length, Mass, Volume};

fn empty() -> Shown {
    Shown {
        made: 0,
        wanted: None,
        gap: Gap::Open,
        fewest: false,
        pictures: vec![],
        cuts: vec![],
        used: vec![],
        left: vec![],
        lost: None,
        finished: Volume::ZERO,
        taken: Volume::ZERO,
        saw_cuts: 0,
        glue: None,
        weight: None,
        moves: None,
        short: vec![],
        outer: None,
    }
}

fn count(n: i64) -> Count {
    Count::try_from(n).unwrap_or(0)
}

/// The letter a part has in pictures: a, b, c.
pub fn part_mark(place: usize) -> String {
    ('a'..='z').nth(place).map_or_else(|| place.to_string(), String::from)
}

/// Piles used, by how many of each.
fn used(given: &Given, each: impl Iterator<Item = (usize, i64)>) -> Vec<Used> {
    let mut found: Vec<Used> = given.from.iter().enumerate().map(|(from, it)| Used { from, of: it.source.n, ..Used::default() }).collect();
    for (pile, times) in each {
        if let Some(used) = found.get_mut(pile) {
            used.strips = used.strips.saturating_add(count(times));
            used.pieces = used.strips;
        }
    }
    found
}

/// Of each pile, the volume taken less what goes back at its full section.
fn taken(given: &Given, each: impl Iterator<Item = (usize, i64, i64)>) -> Option<Volume> {
    let mut sum = Volume::ZERO;
    for (place, times, remainder) in each {
        let pile = &given.from.get(place)?.source.pile;
        let used = pile.length?.as_nm().checked_sub(given.length(remainder).as_nm())?;
        let one = Volume::of(pile.thickness?, pile.width?, Length::nm(used).ok()?).ok()?;
        sum = sum.plus(one.times(count(times)).ok()?).ok()?;
    }
    Some(sum)
}

/// Finished volume, weight, of so many sets of the job's parts.
fn sets(given: &Given, made: i128) -> Option<Volume> {
    let one = given.parts.iter().try_fold(Volume::ZERO, |sum, part| sum.plus(part.volume()?)).ok()?;
    one.times(Count::try_from(made).ok()?).ok()
}

pub(super) fn shown(given: &Given, problem: &Problem, plan: &Plan, known: &Known) -> Option<Shown> {
    let made = made(problem, plan);
    let kg = given.parts.iter().filter_map(|part| {
        let density = known.woods.find_or_guess(part.wood.as_ref().map(Key::as_str)).density;
        Some(density.mass(part.volume().ok()?).as_kg())
    });
    let glue = glue(given, problem, &plan.panels);
    let short = plan.short.iter().flat_map(|short| &short.missing);
    Some(Shown {
        made,
        wanted: problem.sets.map(i128::from),
        pictures: plan.boards.iter().enumerate().map(|(cut, board)| picture(given, board, cut)).collect(),
        cuts: plan.boards.iter().map(|board| cut(given, problem, board)).collect(),
        used: used(given, plan.boards.iter().map(|board| (board.pile, board.times))),
        left: back(given, plan.boards.iter().map(|board| (board.remainder, board.times))),
        finished: sets(given, made)?,
        taken: taken(given, plan.boards.iter().map(|board| (board.pile, board.times, board.remainder)))?,
        saw_cuts: plan.boards.iter().map(|board| saw_cuts(board).saturating_mul(count(board.times))).fold(0, Count::saturating_add),
        weight: Some(Mass::kg(kg.sum::<f64>() * made as f64)).filter(|_| 0 < made),
        glue: (0.0 < glue).then_some((glue, glue * GLUE)),
        short: short.filter_map(|(part, n)| Some((given.parts.get(*part)?.name.clone(), count(*n)))).collect(),
        ..empty()
    })
}

fn back(given: &Given, each: impl Iterator<Item = (i64, i64)>) -> Vec<(Length, Count)> {
    let kept = each.filter(|(remainder, _)| 0 < *remainder);
    alike(kept.flat_map(|(remainder, times)| std::iter::repeat_n(given.length(remainder), usize::try_from(times).unwrap_or(0))))
}

/// Complete sets: the fewest of any part.
fn made(problem: &Problem, plan: &Plan) -> i128 {
    let of = |(place, part): (usize, &crate::plan::parts::problem::Part)| {
        let cut: i64 = if part.glue {
            plan.panels.iter().filter(|panel| panel.part == place).map(|panel| panel.times).sum()
        } else {
            let in_board = |board: &Board| board.bands.iter().flat_map(|band| &band.pieces).filter(|piece| piece.part == place).count();
            plan.boards.iter().map(|board| i64::try_from(in_board(board)).unwrap_or(0).saturating_mul(board.times)).sum()
        };
        cut.checked_div(part.per_set).unwrap_or(0)
    };
    let sets = problem.parts.iter().enumerate().map(of).min().unwrap_or(0);
    i128::from(problem.sets.map_or(sets, |most| sets.min(most)))
}

/// The board as it lies: its length across, its width down.
fn picture(given: &Given, board: &Board, cut: usize) -> Picture {
    let rip = board.first == First::Rip;
    let mut pieces = vec![];
    for band in &board.bands {
        for piece in &band.pieces {
            let (along, across) = if rip { (piece.at, band.at) } else { (band.at, piece.at) };
            let at = [given.length(along), given.length(across)];
            let size = [given.length(piece.length), given.length(piece.width)];
            pieces.push(Rect { at, size, mark: part_mark(piece.part), cut: Some(cut), is_cut: false });
        }
    }
    let from = given.from.get(board.pile);
    let size = from.map_or([Length::ZERO; 2], |from| [from.source.pile.length, from.source.pile.width].map(Option::unwrap_or_default));
    Picture { of: from.map(|from| from.letter), times: count(board.times), size, pieces }
}

fn cut(given: &Given, problem: &Problem, board: &Board) -> Cut {
    let net = problem.piles.get(board.pile).map(|pile| pile.length.saturating_sub(problem.end_trim.saturating_mul(2)));
    let rip = board.first == First::Rip;
    let band = |band: &crate::plan::parts::plan::Band| {
        let lengths = band.pieces.iter().map(|piece| given.length(if rip { piece.length } else { piece.width }));
        Band { size: Some(given.length(band.size)), pieces: alike(lengths) }
    };
    Cut {
        from: board.pile,
        times: count(board.times),
        bands: board.bands.iter().map(band).collect(),
        stretch: (net != Some(board.stretch)).then(|| given.length(board.stretch)),
        cross: !rip,
        left: (0 < board.remainder).then(|| given.length(board.remainder)),
        ..Cut::default()
    }
}

/// Two ends and two edges, a cut between bands and between pieces, and one to shorten.
fn saw_cuts(board: &Board) -> Count {
    let inside: usize = board.bands.iter().map(|band| band.pieces.len().saturating_sub(1)).sum();
    let bands = board.bands.len().saturating_sub(1);
    let all = inside.saturating_add(bands).saturating_add(4).saturating_add(usize::from(0 < board.remainder));
    Count::try_from(all).unwrap_or(Count::MAX)
}

/// Square metres between the strips of glued parts.
fn glue(given: &Given, problem: &Problem, panels: &[Panel]) -> f64 {
    let of = |panel: &Panel| {
        let part = problem.parts.get(panel.part)?;
        let side = |n: i64| given.length(n).as_nm() as f64 / 1e9;
        let seams = panel.strips.len().saturating_sub(1);
        Some(seams as f64 * panel.times as f64 * side(part.length) * side(part.thickness))
    };
    panels.iter().filter_map(of).sum()
}

pub(super) fn of_sticks(given: &Given, problem: &sticks::problem::Problem, plan: &sticks::plan::Plan) -> Option<Shown> {
    let length = |part: usize| problem.parts.get(part).map_or(0, |part| part.length);
    let of = |(place, part): (usize, &sticks::problem::Part)| {
        let in_stick = |stick: &sticks::plan::Stick| stick.pieces.iter().filter(|piece| piece.part == place).count();
        let cut: i64 = plan.sticks.iter().map(|stick| i64::try_from(in_stick(stick)).unwrap_or(0).saturating_mul(stick.times)).sum();
        cut.checked_div(part.per_set).unwrap_or(0)
    };
    let made = problem.parts.iter().enumerate().map(of).min().unwrap_or(0);
    let made = i128::from(problem.sets.map_or(made, |most| made.min(most)));
    let picture = |(cut, stick): (usize, &sticks::plan::Stick)| {
        let from = given.from.get(stick.pile);
        let [long, wide] = from.map_or([Length::ZERO; 2], |from| [from.source.pile.length, from.source.pile.width].map(Option::unwrap_or_default));
        let piece = |piece: &sticks::plan::Piece| {
            let size = [given.length(length(piece.part)), wide];
            Rect { at: [given.length(piece.at), Length::ZERO], size, mark: part_mark(piece.part), cut: Some(cut), is_cut: false }
        };
        let pieces = stick.pieces.iter().map(piece).collect();
        Picture { of: from.map(|from| from.letter), times: count(stick.times), size: [long, wide], pieces }
    };
    let cut = |stick: &sticks::plan::Stick| {
        let pieces = alike(stick.pieces.iter().map(|piece| given.length(length(piece.part))));
        let left = (0 < stick.remainder).then(|| given.length(stick.remainder));
        Cut { from: stick.pile, times: count(stick.times), bands: vec![Band { size: None, pieces }], left, ..Cut::default() }
    };
    let lost = |stick: &sticks::plan::Stick| {
        let (low, cut) = (problem.piles.get(stick.pile)?.length, stick.pieces.iter().map(|piece| length(piece.part)).sum::<i64>());
        let lost = low.checked_sub(stick.remainder)?.checked_sub(cut)?;
        Some([lost.checked_mul(stick.times)?, low.checked_mul(stick.times)?])
    };
    let mut lengths = [0_i64; 2];
    for stick in &plan.sticks {
        let [one, all] = lost(stick)?;
        lengths = [lengths[0].checked_add(one)?, lengths[1].checked_add(all)?];
    }
    let ends = if 0 < problem.end_trim { 2 } else { 0 };
    let cuts = plan.sticks.iter().map(|stick| {
        let one = stick.pieces.len().saturating_sub(1).saturating_add(ends).saturating_add(usize::from(0 < stick.remainder));
        Count::try_from(one).unwrap_or(Count::MAX).saturating_mul(count(stick.times))
    });
    Some(Shown {
        made,
        wanted: problem.sets.map(i128::from),
        pictures: plan.sticks.iter().enumerate().map(picture).collect(),
        saw_cuts: cuts.fold(0, Count::saturating_add),
        cuts: plan.sticks.iter().map(cut).collect(),
        used: used(given, plan.sticks.iter().map(|stick| (stick.pile, stick.times))),
        left: back(given, plan.sticks.iter().map(|stick| (stick.remainder, stick.times))),
        lost: Some(lengths.map(|n| given.length(n))),
        finished: sets(given, made)?,
        taken: taken(given, plan.sticks.iter().map(|stick| (stick.pile, stick.times, stick.remainder)))?,
        ..empty()
    })
}

pub(super) fn of_field(given: &Given, _: &field::problem::Problem, plan: &field::plan::Plan) -> Option<Shown> {
    let Some(field) = &plan.field else { return Some(empty()) };
    let outer = field.outer.map(|side| given.length(side));
    let area = |units: i128| units as f64 * (given.unit.as_nm() as f64 / 1e9).powi(2);
    let tile = field.tile.map(|side| given.length(side));
    let all = field.pieces.iter().map(|taken| taken.taken).sum::<i64>();
    let cut = |taken: &field::plan::Taken| Cut {
        from: taken.pile,
        times: count(taken.taken),
        whole: taken.cut == 0,
        bands: vec![Band { size: Some(tile[1]), pieces: vec![(tile[0], 1)] }],
        ..Cut::default()
    };
    let glue = area(field.glue_area);
    Some(Shown {
        made: 1,
        pictures: vec![Picture { of: None, times: 1, size: [outer[0], outer[1]], pieces: vec![] }],
        cuts: field.pieces.iter().map(cut).collect(),
        used: used(given, field.pieces.iter().map(|taken| (taken.pile, taken.taken))),
        finished: Volume::of(tile[0], tile[1], tile[2]).ok()?.times(count(all)).ok()?,
        taken: taken(given, field.pieces.iter().map(|taken| (taken.pile, taken.taken, 0)))?,
        weight: Some(Mass::kg(field.weight as f64 / 1000.0)),
        glue: (0.0 < glue).then_some((glue, glue * GLUE)),
        outer: Some(outer),
        ..empty()
    })
}
