//! Strips that lie side by side on a board and go side by side into a part are one wider strip: of the same wood fewer cuts and fewer joints.

use super::check::check;
use super::plan::{Band, Board, First, Panel, Plan, Strip};
use super::problem::Problem;

/// So many strips are taken together at most: a plan of more stays as it was found.
const TIMES: usize = 200;

/// The same plan with no strip narrower than it need be, as far as that changes neither its sets nor its wood.
pub(super) fn widened(problem: &Problem, plan: Plan) -> Plan {
    let worth = check(problem, &plan);
    let mut best = Plan { panels: gathered(&plan.panels), ..plan };
    for _ in 0..TIMES {
        let next = pairs(&best).into_iter().find_map(|pair| pair.together(problem, &best)).filter(|next| check(problem, next) == worth);
        match next {
            Some(next) => best = next,
            None => break,
        }
    }
    best
}

/// Panels of the same strips are alike.
pub(super) fn gathered(panels: &[Panel]) -> Vec<Panel> {
    let mut all: Vec<Panel> = vec![];
    for panel in panels {
        let mut panel = panel.clone();
        panel.strips.sort_unstable_by_key(|strip| (strip.pile, strip.width));
        match all.iter_mut().find(|own| (own.part, &own.strips) == (panel.part, &panel.strips)) {
            Some(own) => own.times = own.times.saturating_add(panel.times),
            None => all.push(panel),
        }
    }
    all
}

/// Two strips of a part side by side: whole bands of a board that is ripped first, or pieces of one section.
#[derive(Clone, Copy, Debug)]
struct Pair {
    board: usize,
    /// The section they lie in; none where they are bands.
    section: Option<usize>,
    places: [usize; 2],
    part: usize,
    wide: [i64; 2],
    /// So many strips of each a board gives.
    each: i64,
}

fn pairs(plan: &Plan) -> Vec<Pair> {
    let glued = |part: usize| plan.panels.iter().any(|panel| panel.part == part && 1 < panel.strips.len());
    let mut all = vec![];
    for (nth, board) in plan.boards.iter().enumerate() {
        let of = |section: Option<usize>, strips: Vec<Option<(usize, i64, i64)>>, all: &mut Vec<Pair>| {
            for (one, strip) in strips.iter().enumerate() {
                let Some((part, wide, each)) = strip.filter(|(part, ..)| glued(*part)) else { continue };
                let like = |other: &Option<(usize, i64, i64)>| other.is_some_and(|it| (it.0, it.2) == (part, each));
                let others = strips.iter().enumerate().skip(one.saturating_add(1)).filter(|(_, other)| like(other));
                all.extend(others.filter_map(|(place, other)| {
                    Some(Pair { board: nth, section, places: [one, place], part, wide: [wide, (*other)?.1], each })
                }));
            }
        };
        match board.first {
            First::Rip => of(None, board.bands.iter().map(alike).collect(), &mut all),
            First::Cross => board.bands.iter().enumerate().for_each(|(section, band)| {
                of(Some(section), band.pieces.iter().map(|piece| Some((piece.part, piece.width, 1))).collect(), &mut all);
            }),
        }
    }
    all
}

/// A band of nothing but strips alike: their part, their width, and how many.
fn alike(band: &Band) -> Option<(usize, i64, i64)> {
    let first = band.pieces.first()?;
    let same = band.pieces.iter().all(|piece| (piece.part, piece.width) == (first.part, first.width));
    Some((first.part, first.width, i64::try_from(band.pieces.len()).ok()?)).filter(|_| same)
}

impl Pair {
    /// A plan in which they are one, wherever both go into the same panel; nothing where they do not.
    fn together(&self, problem: &Problem, plan: &Plan) -> Option<Plan> {
        let board = plan.boards.get(self.board)?;
        let [one, other] = self.wide.map(|width| Strip { pile: board.pile, width });
        let wide = self.wide.iter().fold(0_i64, |sum, wide| sum.saturating_add(*wide)).saturating_sub(problem.joint.saturating_mul(2));
        let joined = |panel: &Panel| {
            let mut strips = panel.strips.clone();
            for strip in [one, other] {
                strips.remove(strips.iter().position(|own| *own == strip)?);
            }
            strips.push(Strip { pile: board.pile, width: wide });
            Some(strips)
        };
        let with_both = |(nth, panel): (usize, &Panel)| (panel.part == self.part).then(|| Some((nth, joined(panel)?))).flatten();
        let (nth, strips) = plan.panels.iter().enumerate().find_map(|it| with_both(it).filter(|_| self.each <= it.1.times))?;
        let panel = plan.panels.get(nth)?;
        let times = panel.times.checked_div(self.each)?.min(board.times);
        let mut next = plan.clone();
        less(&mut next.boards, self.board, |board| &mut board.times, times);
        less(&mut next.panels, nth, |panel| &mut panel.times, times.saturating_mul(self.each));
        next.boards.push(Board { times, ..self.sawn(problem, board, wide)? });
        next.panels.push(Panel { part: self.part, times: times.saturating_mul(self.each), strips });
        next.boards.retain(|board| 0 < board.times);
        next.panels.retain(|panel| 0 < panel.times);
        next.panels = gathered(&next.panels);
        Some(next)
    }

    /// The board with the one in the place of the two; what lies behind them moves up.
    fn sawn(&self, problem: &Problem, board: &Board, wide: i64) -> Option<Board> {
        let mut board = board.clone();
        let [first, second] = self.places;
        let mut at = 0_i64;
        let mut next = |size: i64| {
            let here = at;
            at = at.saturating_add(size).saturating_add(problem.kerf);
            here
        };
        match self.section {
            None => {
                board.bands.remove(second);
                let band = board.bands.get_mut(first)?;
                band.size = wide;
                band.pieces.iter_mut().for_each(|piece| piece.width = wide);
                board.bands.iter_mut().for_each(|band| band.at = next(band.size));
            }
            Some(section) => {
                let pieces = &mut board.bands.get_mut(section)?.pieces;
                pieces.remove(second);
                pieces.get_mut(first)?.width = wide;
                pieces.iter_mut().for_each(|piece| piece.at = next(piece.width));
            }
        }
        Some(board)
    }
}

fn less<T>(all: &mut [T], nth: usize, times: impl Fn(&mut T) -> &mut i64, by: i64) {
    if let Some(times) = all.get_mut(nth).map(times) {
        *times = times.saturating_sub(by);
    }
}

#[cfg(test)]
mod tests {
    use super::super::plan::Piece;
    use super::super::problem::{Part, Pile};
    use super::*;

    fn strip(width: i64) -> Strip {
        Strip { pile: 0, width }
    }

    fn piece(at: i64, width: i64) -> Piece {
        Piece { part: 0, at, length: 400, width }
    }

    /// Boards 820 x 203, a kerf of 3, half a millimetre of joint counted as 1 off each glued edge, and tops of 400 x 250.
    fn problem() -> Problem {
        let part = Part { id: "top".into(), per_set: 1, length: 400, width: 250, thickness: 20, glue: true, piles: None };
        let pile = Pile { id: "A".into(), count: 9, length: 803, width: 203, thickness: 20 };
        Problem { sets: Some(2), kerf: 3, joint: 1, strip_min: 20, piles: vec![pile], parts: vec![part], ..Problem::default() }
    }

    #[track_caller]
    fn check_of(boards: Vec<Board>, panels: Vec<Vec<i64>>, wanted: &[&[i64]]) {
        let panels = panels.into_iter().map(|strips| Panel { part: 0, times: 1, strips: strips.into_iter().map(strip).collect() });
        let plan = Plan { boards, panels: panels.collect(), short: None };
        let before = check(&problem(), &plan).expect("a plan");
        let after = widened(&problem(), plan);
        assert_eq!(check(&problem(), &after), Ok(before), "neither sets nor wood change");
        let mut met: Vec<Vec<i64>> =
            after.panels.iter().flat_map(|panel| (0..panel.times).map(|_| panel.strips.clone())).map(widths).collect();
        met.sort_unstable();
        assert_eq!(met, wanted, "{after:?}");
    }

    fn widths(strips: Vec<Strip>) -> Vec<i64> {
        let mut all: Vec<i64> = strips.into_iter().map(|strip| strip.width).collect();
        all.sort_unstable();
        all
    }

    fn board(first: First, bands: Vec<Band>) -> Board {
        Board { pile: 0, times: 1, stretch: 803, first, bands, remainder: 0 }
    }

    /// Two bands of 100 give two strips each: 100 + 100 less two jointings are 198 of 203, and with 54 they are 250 and two jointings. Strips
    /// that go into different tops stay as they are.
    #[test]
    fn strips_of_one_board_that_meet_in_a_part_are_one() {
        let band = |at: i64, width: i64| Band { size: width, at, pieces: vec![piece(0, width), piece(403, width)] };
        let boards = || vec![board(First::Rip, vec![band(0, 100), band(103, 100)]), board(First::Rip, vec![band(0, 54)])];
        check_of(boards(), vec![vec![100, 100, 54]; 2], &[&[54, 198], &[54, 198]]);
        let apart = || vec![board(First::Rip, vec![band(0, 100), band(103, 100)]), board(First::Rip, vec![band(0, 152)])];
        check_of(apart(), vec![vec![100, 152]; 2], &[&[100, 152], &[100, 152]]);
    }

    #[test]
    fn so_are_those_of_one_section() {
        let section =
            |at: i64, widths: [i64; 2]| Band { size: 400, at, pieces: vec![piece(0, widths[0]), piece(widths[0] + 3, widths[1])] };
        let boards = vec![board(First::Cross, vec![section(0, [100, 100]), section(403, [60, 54])])];
        check_of(boards, vec![vec![100, 100, 54]], &[&[54, 198]]);
    }
}
