//! Looks a plan over piece by piece, from what is cut out of which board. It shares nothing with the planner.

use super::plan::{Band, Board, First, Panel, Piece, Plan};
use super::problem::{Part, Problem};
use crate::quantity::Sorted;

/// The first rule a plan breaks. Boards, bands, pieces and panels are named by their place in the plan, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    NoSuchPile {
        board: usize,
    },
    /// Fewer than one time.
    Times {
        board: usize,
    },
    /// More boards than the pile has.
    TooMany {
        board: usize,
        used: i64,
        there: i64,
    },
    /// No stretch at all, or more than the trimmed length.
    Stretch {
        board: usize,
        most: i64,
    },
    /// Shorter than the planer takes.
    TooShortToPlane {
        board: usize,
    },
    /// Shorter than may be ripped: the stretch, or a section.
    TooShortToRip {
        board: usize,
    },
    /// It begins before the one before it ends, with its kerf; or nowhere.
    BandMisplaced {
        board: usize,
        band: usize,
        least: i64,
    },
    BandTooFar {
        board: usize,
        band: usize,
        most: i64,
    },
    NoSuchPart {
        board: usize,
        band: usize,
        piece: usize,
    },
    /// The part may not come from that pile: its wood, its thickness, or the maker's wish.
    NotFromThere {
        board: usize,
        band: usize,
        piece: usize,
    },
    /// Not the length of the part's blank.
    Length {
        board: usize,
        band: usize,
        piece: usize,
        expected: i64,
    },
    /// Not the width of the part's blank; or a glue strip below the least.
    Width {
        board: usize,
        band: usize,
        piece: usize,
        expected: i64,
    },
    /// Larger than its band.
    PieceTooLarge {
        board: usize,
        band: usize,
        piece: usize,
    },
    PieceMisplaced {
        board: usize,
        band: usize,
        piece: usize,
        least: i64,
    },
    PieceTooFar {
        board: usize,
        band: usize,
        piece: usize,
        most: i64,
    },
    Remainder {
        board: usize,
        expected: i64,
    },
    /// Not a part that may be glued up, no strips, or fewer than one time.
    Panel {
        panel: usize,
    },
    /// Not so many strips of that width were cut from that pile.
    NoSuchStrip {
        panel: usize,
        strip: usize,
    },
    /// The strips, less what jointing takes, are narrower than the blank.
    TooNarrow {
        panel: usize,
        met: i64,
        least: i64,
    },
    /// What is said to be missing for one set more is not what its plan lacks; or all wanted sets are there.
    Missing,
    /// The same, in the plan for one set more.
    Short,
    /// A sum left the range of its type.
    OutOfRange,
}

/// What was cut so far.
struct Cut {
    used: Vec<i64>,
    made: Vec<i64>,
    /// Strips by part, pile and width.
    strips: Sorted<(usize, usize, i64), i64>,
    volume: i128,
}

/// The sets and the volume consumed of a plan, or the first rule it breaks.
///
/// # Errors
/// [`Broken`] names the rule and the place.
pub fn check(problem: &Problem, plan: &Plan) -> Result<[i128; 2], Broken> {
    let cut = cutting(problem, &plan.boards, &plan.panels)?;
    let sets = cut.made.iter().zip(&problem.parts).filter_map(|(made, part)| made.checked_div(part.per_set)).min().unwrap_or(0);
    let sets = problem.sets.map_or(sets, |most| sets.min(most));
    if let Some(short) = &plan.short {
        if problem.sets.is_some_and(|most| most <= sets) {
            return Err(Broken::Missing);
        }
        let nearly = cutting(problem, &short.boards, &short.panels).map_err(|_| Broken::Short)?;
        let sets = sets.checked_add(1).ok_or(Broken::OutOfRange)?;
        let lacking = nearly.made.iter().zip(&problem.parts).map(|(made, part)| sets.checked_mul(part.per_set)?.checked_sub(*made));
        let lacking: Vec<i64> = lacking.collect::<Option<_>>().ok_or(Broken::OutOfRange)?;
        let lacking: Vec<(usize, i64)> = lacking.into_iter().enumerate().filter(|(_, n)| 0 < *n).collect();
        let mut said = short.missing.clone();
        said.sort_unstable();
        if said != lacking {
            return Err(Broken::Missing);
        }
    }
    Ok([i128::from(sets), cut.volume])
}

fn cutting(problem: &Problem, boards: &[Board], panels: &[Panel]) -> Result<Cut, Broken> {
    let (used, made) = (vec![0; problem.piles.len()], vec![0; problem.parts.len()]);
    let mut cut = Cut { used, made, strips: Sorted::default(), volume: 0 };
    for (nth, board) in boards.iter().enumerate() {
        cut.board(problem, nth, board)?;
    }
    for (nth, panel) in panels.iter().enumerate() {
        cut.panel(problem, nth, panel)?;
    }
    Ok(cut)
}

fn sum(one: i64, other: i64) -> Result<i64, Broken> {
    one.checked_add(other).ok_or(Broken::OutOfRange)
}

fn less(one: i64, other: i64) -> Result<i64, Broken> {
    one.checked_sub(other).ok_or(Broken::OutOfRange)
}

fn times(one: i64, other: i64) -> Result<i64, Broken> {
    one.checked_mul(other).ok_or(Broken::OutOfRange)
}

impl Cut {
    fn board(&mut self, problem: &Problem, nth: usize, board: &Board) -> Result<(), Broken> {
        let pile = problem.piles.get(board.pile).ok_or(Broken::NoSuchPile { board: nth })?;
        if board.times < 1 {
            return Err(Broken::Times { board: nth });
        }
        let used = self.used.get_mut(board.pile).ok_or(Broken::NoSuchPile { board: nth })?;
        *used = sum(*used, board.times)?;
        if pile.count < *used {
            return Err(Broken::TooMany { board: nth, used: *used, there: pile.count });
        }
        let long = less(pile.length, times(problem.end_trim, 2)?)?;
        if board.stretch < 1 || long < board.stretch {
            return Err(Broken::Stretch { board: nth, most: long });
        }
        if board.stretch < problem.plane_min {
            return Err(Broken::TooShortToPlane { board: nth });
        }
        if board.first == First::Rip && board.stretch < problem.rip_min {
            return Err(Broken::TooShortToRip { board: nth });
        }
        self.bands(problem, nth, board)?;
        let behind = less(less(long, board.stretch)?, problem.kerf)?;
        let kept = 0 < problem.keep_min && problem.keep_min <= behind && board.stretch < long;
        let rest = if kept { behind } else { 0 };
        if board.remainder != rest {
            return Err(Broken::Remainder { board: nth, expected: rest });
        }
        let face = i128::from(pile.width).checked_mul(i128::from(pile.thickness));
        let one = face.and_then(|face| face.checked_mul(i128::from(less(pile.length, rest).ok()?)));
        let all = one.and_then(|one| one.checked_mul(i128::from(board.times))?.checked_add(self.volume));
        self.volume = all.ok_or(Broken::OutOfRange)?;
        Ok(())
    }

    fn bands(&mut self, problem: &Problem, nth: usize, board: &Board) -> Result<(), Broken> {
        let mut free = 0_i64;
        for (place, band) in board.bands.iter().enumerate() {
            if band.size < 1 || band.at < free {
                return Err(Broken::BandMisplaced { board: nth, band: place, least: free });
            }
            let alone = if board.first == First::Rip { board.bands.len() } else { band.pieces.len() } == 1;
            let trimmed = edges_off(problem, board.pile)?;
            let wide = if alone { room(problem, board.pile, (band, trimmed))? } else { trimmed };
            let [across, along] = if board.first == First::Rip { [wide, board.stretch] } else { [board.stretch, wide] };
            let end = sum(band.at, band.size)?;
            if across < end {
                return Err(Broken::BandTooFar { board: nth, band: place, most: across });
            }
            free = sum(end, problem.kerf)?;
            if board.first == First::Cross && band.size < problem.rip_min {
                return Err(Broken::TooShortToRip { board: nth });
            }
            self.pieces(problem, (nth, board), (place, band), along)?;
        }
        Ok(())
    }

    fn pieces(
        &mut self,
        problem: &Problem,
        (nth, board): (usize, &Board),
        (place, band): (usize, &Band),
        along: i64,
    ) -> Result<(), Broken> {
        let mut free = 0_i64;
        for (which, piece) in band.pieces.iter().enumerate() {
            let at = (nth, place, which);
            let part = problem.parts.get(piece.part).ok_or(Broken::NoSuchPart { board: nth, band: place, piece: which })?;
            sizes(problem, (board, part, piece), at)?;
            let [thick, run] = if board.first == First::Rip { [piece.width, piece.length] } else { [piece.length, piece.width] };
            if band.size < thick {
                return Err(Broken::PieceTooLarge { board: nth, band: place, piece: which });
            }
            if piece.at < free {
                return Err(Broken::PieceMisplaced { board: nth, band: place, piece: which, least: free });
            }
            let end = sum(piece.at, run)?;
            if along < end {
                return Err(Broken::PieceTooFar { board: nth, band: place, piece: which, most: along });
            }
            free = sum(end, problem.kerf)?;
            if part.glue {
                let key = (piece.part, board.pile, piece.width);
                let so_far = self.strips.get(&key).copied().unwrap_or(0);
                self.strips.insert(key, sum(so_far, board.times)?);
            } else if let Some(made) = self.made.get_mut(piece.part) {
                *made = sum(*made, board.times)?;
            }
        }
        Ok(())
    }

    fn panel(&mut self, problem: &Problem, nth: usize, panel: &Panel) -> Result<(), Broken> {
        let part = problem.parts.get(panel.part).filter(|part| part.glue).ok_or(Broken::Panel { panel: nth })?;
        if panel.times < 1 || panel.strips.is_empty() {
            return Err(Broken::Panel { panel: nth });
        }
        let mut wide = times(problem.joint, 2)?;
        for (place, strip) in panel.strips.iter().enumerate() {
            let lying = self.strips.get_mut(&(panel.part, strip.pile, strip.width)).filter(|lying| panel.times <= **lying);
            let lying = lying.ok_or(Broken::NoSuchStrip { panel: nth, strip: place })?;
            *lying = less(*lying, panel.times)?;
            wide = sum(wide, less(strip.width, times(problem.joint, 2)?)?)?;
        }
        let least = sum(part.width, problem.allow.width)?;
        if wide < least {
            return Err(Broken::TooNarrow { panel: nth, met: wide, least });
        }
        let made = self.made.get_mut(panel.part).ok_or(Broken::OutOfRange)?;
        *made = sum(*made, panel.times)?;
        Ok(())
    }
}

/// How wide a board is once both its edges are trimmed; nothing is left of one narrower than that.
fn edges_off(problem: &Problem, pile: usize) -> Result<i64, Broken> {
    let width = problem.piles.get(pile).map_or(0, |own| own.width);
    less(less(width, problem.edge_trim)?, problem.edge_trim)
}

/// How wide a band may be that has nothing beside it: the trimmed width. Where edges may be planed, and something in it is wider than that,
/// all of it parts and no strip to be glued: as wide as the widest blank this board is wide and thick enough for.
fn room(problem: &Problem, pile: usize, (band, trimmed): (&Band, i64)) -> Result<i64, Broken> {
    let glued = |piece: &Piece| problem.parts.get(piece.part).is_none_or(|part| part.glue);
    let beyond: Vec<&Piece> = band.pieces.iter().filter(|piece| trimmed < piece.width).collect();
    if !problem.planed || beyond.is_empty() || beyond.into_iter().any(glued) {
        return Ok(trimmed);
    }
    let mut widest = trimmed;
    for part in problem.parts.iter().filter(|part| !part.glue) {
        let wide = sum(part.width, problem.allow.width)?;
        if widest < wide && comes_from(problem, pile, part)? && problem.piles.get(pile).is_some_and(|own| wide <= own.width) {
            widest = wide;
        }
    }
    Ok(widest)
}

/// Whether a part may be cut from a pile: by its wood, its thickness, and the maker's wish.
fn comes_from(problem: &Problem, pile: usize, part: &Part) -> Result<bool, Broken> {
    let thick = sum(part.thickness, problem.allow.thickness)?;
    let is_thick = problem.piles.get(pile).is_some_and(|own| thick <= own.thickness);
    Ok(is_thick && part.piles.as_ref().is_none_or(|piles| piles.contains(&pile)))
}

fn sizes(
    problem: &Problem,
    (board, part, piece): (&Board, &Part, &Piece),
    (nth, place, which): (usize, usize, usize),
) -> Result<(), Broken> {
    if !comes_from(problem, board.pile, part)? {
        return Err(Broken::NotFromThere { board: nth, band: place, piece: which });
    }
    let length = sum(part.length, problem.allow.length)?;
    if piece.length != length {
        return Err(Broken::Length { board: nth, band: place, piece: which, expected: length });
    }
    let width = sum(part.width, problem.allow.width)?;
    let (wrong, expected) =
        if part.glue { (piece.width < problem.strip_min.max(1), problem.strip_min) } else { (piece.width != width, width) };
    if wrong { Err(Broken::Width { board: nth, band: place, piece: which, expected }) } else { Ok(()) }
}

#[cfg(test)]
mod tests;
