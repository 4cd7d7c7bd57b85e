//! Parts that are glued up of fewer strips: the same boards ripped otherwise, each part of whole ones first. Ours; as many sets, and no more wood.

use super::check::check;
use super::plan::{Band, Board, First, Panel, Piece, Plan, Strip};
use super::problem::Problem;
use super::wider::gathered;

/// So many boards are ripped otherwise at most: a plan of more stays as it was found.
const BOARDS_MOST: usize = 60;

/// The same plan with fewer strips in its glued parts, as far as the same boards give them.
pub(super) fn fewer(problem: &Problem, plan: Plan) -> Plan {
    let Ok([sets, wood]) = check(problem, &plan) else { return plan };
    let as_good = |next: &Plan| check(problem, next).is_ok_and(|it| it[0] == sets && it[1] <= wood);
    let better = |next: &Plan, plan: &Plan, part: usize| strips(next, part) < strips(plan, part) && as_good(next);
    (0..problem.parts.len()).fold(plan, |plan, part| {
        let next = regrouped(problem, &plan, part).filter(|next| better(next, &plan, part));
        next.unwrap_or(plan)
    })
}

/// Strips that go into a part, of all its panels.
fn strips(plan: &Plan, part: usize) -> i64 {
    let of = |panel: &Panel| panel.times.saturating_mul(i64::try_from(panel.strips.len()).unwrap_or(i64::MAX));
    plan.panels.iter().filter(|panel| panel.part == part).map(of).fold(0, i64::saturating_add)
}

/// A board of nothing but strips of one part, as it is ripped anew: what is left of its width, and the strips so far.
struct Ripped<'a> {
    board: &'a Board,
    /// The pieces of one of its bands, end to end.
    along: &'a [Piece],
    free: i64,
    strips: Vec<i64>,
}

impl Ripped<'_> {
    fn give(&mut self, problem: &Problem, width: i64) -> Strip {
        self.free = self.free.saturating_sub(width).saturating_sub(problem.kerf);
        self.strips.push(width);
        Strip { pile: self.board.pile, width }
    }

    fn sawn(&self, problem: &Problem) -> Board {
        let mut at = 0_i64;
        let mut band = |width: &i64| {
            let here = at;
            at = at.saturating_add(*width).saturating_add(problem.kerf);
            Band { size: *width, at: here, pieces: self.along.iter().map(|piece| Piece { width: *width, ..*piece }).collect() }
        };
        Board { times: 1, bands: self.strips.iter().map(&mut band).collect(), ..self.board.clone() }
    }
}

/// The boards of a part, widest first, one by one; nothing where one has something else on it, or another number of strips end to end.
fn boards<'a>(problem: &Problem, plan: &'a Plan, part: usize) -> Option<(Vec<Ripped<'a>>, i64)> {
    let has = |board: &&Board| board.bands.iter().flat_map(|band| &band.pieces).any(|piece| piece.part == part);
    let (mut all, mut each) = (vec![], 0);
    for board in plan.boards.iter().filter(has) {
        let along = board.bands.first()?.pieces.as_slice();
        let of_it = |band: &Band| band.pieces.len() == along.len() && band.pieces.iter().all(|piece| piece.part == part);
        let n = i64::try_from(along.len()).ok()?;
        let fits = board.first == First::Rip && board.bands.iter().all(of_it) && (each == 0 || each == n);
        let times = usize::try_from(board.times).ok().filter(|times| fits && all.len().saturating_add(*times) <= BOARDS_MOST)?;
        each = n;
        all.extend((0..times).map(|_| Ripped { board, along, free: problem.trimmed(board.pile), strips: vec![] }));
    }
    all.sort_by_key(|it| std::cmp::Reverse(it.free));
    (0 < each).then_some((all, each))
}

/// The panels of a part out of the same boards: each takes the widest there are until one more does, and of that no more than it needs.
fn regrouped(problem: &Problem, plan: &Plan, part: usize) -> Option<Plan> {
    let (mut all, each) = boards(problem, plan, part)?;
    let made = plan.panels.iter().filter(|panel| panel.part == part).fold(0, |sum: i64, panel| sum.saturating_add(panel.times));
    if made.checked_rem(each)? != 0 {
        return None;
    }
    let blank = problem.parts.get(part)?.width.saturating_add(problem.allow.width);
    let mut panels: Vec<Panel> = plan.panels.iter().filter(|panel| panel.part != part).cloned().collect();
    for _ in 0..made.checked_div(each)? {
        panels.push(Panel { part, times: each, strips: panel(problem, &mut all, blank)? });
    }
    let is_other = |board: &&Board| board.bands.iter().flat_map(|band| &band.pieces).all(|piece| piece.part != part);
    let mut boards: Vec<Board> = plan.boards.iter().filter(is_other).cloned().collect();
    for board in all.iter().filter(|it| !it.strips.is_empty()).map(|it| it.sawn(problem)) {
        match boards.iter_mut().find(|own| Board { times: 1, ..(*own).clone() } == board) {
            Some(own) => own.times = own.times.saturating_add(1),
            None => boards.push(board),
        }
    }
    Some(Plan { boards, panels: gathered(&panels), short: plan.short.clone() })
}

fn panel(problem: &Problem, all: &mut [Ripped<'_>], blank: i64) -> Option<Vec<Strip>> {
    let (off, least) = (problem.joint.saturating_mul(2), problem.strip_min.max(1));
    let (mut lacks, mut strips) = (blank.saturating_sub(off), vec![]);
    loop {
        let wanted = lacks.saturating_add(off).max(least);
        let (mut last, mut widest): (Option<&mut Ripped<'_>>, Option<usize>) = (None, None);
        for it in all.iter_mut().filter(|it| wanted <= it.free) {
            if last.as_ref().is_none_or(|last| it.free < last.free) {
                last = Some(it);
            }
        }
        if let Some(last) = last {
            strips.push(last.give(problem, wanted));
            return Some(strips);
        }
        for (nth, it) in all.iter().enumerate().filter(|(_, it)| least.max(off.saturating_add(1)) <= it.free) {
            if widest.and_then(|widest| all.get(widest)).is_none_or(|widest| widest.free < it.free) {
                widest = Some(nth);
            }
        }
        let whole = all.get_mut(widest?)?;
        let width = whole.free;
        strips.push(whole.give(problem, width));
        lacks = lacks.saturating_sub(width.saturating_sub(off));
    }
}

#[cfg(test)]
mod tests {
    use super::super::problem::{Part, Pile};
    use super::*;

    /// Boards of which 116 and 196 are left once their edges are trimmed, and two tops 333 wide.
    fn problem(per_set: i64) -> Problem {
        let part = Part { id: "top".into(), per_set, length: 400, width: 333, thickness: 20, glue: true, piles: None };
        let pile = |id: &str, count, width| Pile { id: id.into(), count, length: 400, width, thickness: 20 };
        let piles = vec![pile("A", 3, 120), pile("B", 2, 200)];
        Problem { sets: Some(1), kerf: 3, edge_trim: 2, joint: 1, strip_min: 20, piles, parts: vec![part], ..Problem::default() }
    }

    fn board(pile: usize, times: i64, widths: &[i64]) -> Board {
        let mut at = 0;
        let bands = widths.iter().map(|width| {
            let band = Band { size: *width, at, pieces: vec![Piece { part: 0, at: 0, length: 400, width: *width }] };
            at += width + 3;
            band
        });
        Board { pile, times, stretch: 400, first: First::Rip, bands: bands.collect(), remainder: 0 }
    }

    fn panel_of(strips: &[(usize, i64)]) -> Panel {
        Panel { part: 0, times: 1, strips: strips.iter().map(|(pile, width)| Strip { pile: *pile, width: *width }).collect() }
    }

    /// By hand, each joint taking 2 off the widths: 116 + 91 + 72 + 60 are 333, and so are 116 + 116 + 105; of the same five boards
    /// 196 + 139 and 116 + 116 + 105 are, too.
    #[test]
    fn two_strips_do_where_four_did() {
        let boards = vec![board(0, 3, &[116]), board(1, 1, &[105, 72]), board(1, 1, &[91, 60])];
        let panels = vec![panel_of(&[(0, 116), (1, 91), (1, 72), (1, 60)]), panel_of(&[(0, 116), (0, 116), (1, 105)])];
        let plan = Plan { boards, panels, short: None };
        let problem = problem(2);
        let worth = check(&problem, &plan).expect("a plan");
        let after = fewer(&problem, plan);
        assert_eq!(check(&problem, &after), Ok(worth), "neither sets nor wood change");
        let mut met: Vec<Vec<i64>> = after.panels.iter().map(|panel| panel.strips.iter().map(|strip| strip.width).collect()).collect();
        met.iter_mut().for_each(|widths| widths.sort_unstable());
        met.sort_unstable();
        assert_eq!(met, [vec![105, 116, 116], vec![139, 196]]);
    }

    /// One top of three strips takes the whole of three boards: there is no other way.
    #[test]
    fn a_plan_whose_boards_are_all_needed_stays() {
        let boards = vec![board(0, 3, &[116])];
        let plan = Plan { boards, panels: vec![panel_of(&[(0, 116), (0, 116), (0, 116)])], short: None };
        let problem = problem(1);
        assert!(check(&problem, &plan).is_ok());
        let before = strips(&plan, 0);
        assert_eq!(strips(&fewer(&problem, plan), 0), before);
    }
}
