//! Why there is no more than was asked, by the format's own names: the member `why`, which is no part of the format and is ignored by it.
//!
//! `reason` is the figure of the instance that decides, `limit` what it asks, `met` the most there is of it, `part` and `pile` whose it is.
//! Of a side of a field `met` is what one tile more or fewer makes it, farther off than the plan; of the `count` of a part `limit` is how many
//! one set more needs. `together` and `search` are no figures: parts that share their boards, and what only going through all plans shows.

use super::quoted;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::{Asked, Planned, field, parts, rows, sticks};

/// What decides.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Why {
    pub reason: &'static str,
    pub parts: Vec<String>,
    pub pile: Option<String>,
    pub limit: Option<i64>,
    pub met: Option<i64>,
}

/// Steps for what has to be searched for: some milliseconds.
const STEPS: u64 = 2_000;

/// What decides that no plan has more rows or sets than `most`.
pub fn no_more(asked: &Asked, most: i64) -> Option<Why> {
    match asked {
        Asked::Rows(problem) => of_rows(problem, most),
        Asked::Parts(problem) => of_parts(problem, most),
        Asked::Sticks(problem) => of_sticks(problem, most),
        Asked::Field(_) => None,
    }
}

impl Why {
    /// The member, with a comma before it.
    pub fn written(&self) -> String {
        let mut members = vec![format!(r#""reason":{}"#, quoted(self.reason))];
        match self.parts.as_slice() {
            [] => (),
            [part] => members.push(format!(r#""part":{}"#, quoted(part))),
            parts => members.push(format!(r#""parts":[{}]"#, parts.iter().map(|part| quoted(part)).collect::<Vec<_>>().join(","))),
        }
        members.extend(self.pile.iter().map(|pile| format!(r#""pile":{}"#, quoted(pile))));
        members.extend(self.limit.map(|limit| format!(r#""limit":{limit}"#)));
        members.extend(self.met.map(|met| format!(r#""met":{met}"#)));
        format!(",\n\"why\":{{{}}}", members.join(","))
    }

    fn of(reason: &'static str, limit: i64, met: i64) -> Why {
        Why { reason, limit: Some(limit), met: Some(met), ..Why::default() }
    }

    fn part(self, id: &str) -> Why {
        Why { parts: vec![id.into()], ..self }
    }
}

/// What each pile must have so much of, by its name in the format.
type Gate<'a, P> = (&'static str, i64, &'a dyn Fn(&P) -> i64);

/// The first gate that none of the piles passes which passed those before, and the pile that comes nearest.
fn barred<P>(piles: &[&P], gates: &[Gate<'_, P>], id: &dyn Fn(&P) -> String) -> Option<Why> {
    let mut left = piles.to_vec();
    for (reason, limit, of) in gates {
        let Some(best) = left.iter().copied().max_by_key(|pile| of(pile)) else { return Some(Why::of("piles", 1, 0)) };
        if of(best) < *limit {
            return Some(Why { pile: Some(id(best)), ..Why::of(reason, *limit, of(best)) });
        }
        left.retain(|pile| *limit <= of(pile));
    }
    None
}

/// Those of the piles that a part may come of.
fn allowed<'a, P>(piles: &'a [P], own: Option<&Vec<usize>>) -> Vec<&'a P> {
    let may = |nth: &usize| own.is_none_or(|own| own.contains(nth));
    piles.iter().enumerate().filter(|(nth, _)| may(nth)).map(|(_, pile)| pile).collect()
}

fn of_rows(problem: &rows::problem::Problem, most: i64) -> Option<Why> {
    use rows::{problem::Pile, why};
    let piles: Vec<&Pile> = problem.piles.iter().collect();
    let squared = |pile: &Pile| pile.length - 2 * problem.square;
    let gates: [Gate<'_, Pile>; 4] = [
        ("count", 1, &|pile| pile.count),
        ("machine_min", problem.machine_min, &|pile| pile.length),
        ("min_piece", problem.min_piece.max(1), &squared),
        ("min_end", problem.min_end, &squared),
    ];
    let decided = match why::why(problem, most) {
        why::Why::Wanted => return None,
        _ if most == 0 && problem.length < problem.min_end.max(problem.min_piece) => {
            let reason = if problem.min_end < problem.min_piece { "min_piece" } else { "min_end" };
            Why::of(reason, problem.min_end.max(problem.min_piece), problem.length)
        }
        why::Why::Length { there, lacks } => Why::of("length", there + lacks, there),
        why::Why::NoStrips => Why { reason: "search", ..Why::default() },
        why::Why::DoesNotComeOut { .. } if is_laid_without_stagger(problem, most) => {
            Why { reason: "stagger", limit: Some(problem.stagger), ..Why::default() }
        }
        why::Why::DoesNotComeOut { .. } => Why { reason: "search", ..Why::default() },
    };
    let barred = if most == 0 { barred(&piles, &gates, &|pile| pile.id.clone()) } else { None };
    Some(barred.unwrap_or(decided))
}

/// With joints wherever they fall there are more rows.
fn is_laid_without_stagger(problem: &rows::problem::Problem, most: i64) -> bool {
    let easier = rows::problem::Problem { stagger: 0, rows: Some(most + 1), ..problem.clone() };
    let more = |figures: &[i128]| figures.first().is_some_and(|rows| i128::from(most) < *rows);
    let mut goes_on = |now: Progress<'_>| !more(now.worth) && (now.bound.is_empty() || more(now.bound));
    0 < problem.stagger && more(&rows::solve(&easier, &mut Patience::new(Some(STEPS), &mut goes_on), 1).worth)
}

fn of_parts(problem: &parts::problem::Problem, most: i64) -> Option<Why> {
    use parts::{problem::Part, problem::Pile, why};
    let net = |pile: &Pile| pile.length - 2 * problem.end_trim;
    let wide = |pile: &Pile| problem.piles.iter().position(|own| own.id == pile.id).map_or(0, |nth| problem.wide(nth));
    let alone = |part: &Part| {
        let across = if part.glue { ("strip_min", problem.strip_min.max(1)) } else { ("width", part.width + problem.allow.width) };
        let gates: [Gate<'_, Pile>; 6] = [
            ("count", 1, &|pile| pile.count),
            ("thickness", part.thickness + problem.allow.thickness, &|pile| pile.thickness),
            ("length", part.length + problem.allow.length, &net),
            ("plane_min", problem.plane_min, &net),
            ("rip_min", problem.rip_min, &net),
            (across.0, across.1, &wide),
        ];
        Some(barred(&allowed(&problem.piles, part.piles.as_ref()), &gates, &|pile| pile.id.clone())?.part(&part.id))
    };
    let held = |patience: &mut Patience<'_>| match why::why(problem, most, patience) {
        why::Why::Wish => None,
        why::Why::Part { part } => Some(too_few(most, (&problem.parts[part].id, problem.parts[part].per_set))),
        why::Why::Together { parts } => Some(together(parts.iter().map(|part| &problem.parts[*part].id))),
        why::Why::Search => Some(Why { reason: "search", ..Why::default() }),
    };
    let decided = searched(held)?;
    Some(problem.parts.iter().find_map(alone).filter(|_| most == 0).unwrap_or(decided))
}

fn of_sticks(problem: &sticks::problem::Problem, most: i64) -> Option<Why> {
    use sticks::{problem::Part, problem::Pile, why};
    let alone = |part: &Part| {
        let gates: [Gate<'_, Pile>; 3] = [
            ("count", 1, &|pile| pile.count),
            ("machine_min", problem.machine_min, &|pile| pile.length),
            ("length", part.length, &|pile| pile.length - 2 * problem.end_trim),
        ];
        Some(barred(&allowed(&problem.piles, part.piles.as_ref()), &gates, &|pile| pile.id.clone())?.part(&part.id))
    };
    let held = |patience: &mut Patience<'_>| match why::why(problem, most.into(), patience) {
        why::Why::Wish => None,
        why::Why::Part { part } => Some(too_few(most, (&problem.parts[part].id, problem.parts[part].per_set))),
        why::Why::Together { parts } => Some(together(parts.iter().map(|part| &problem.parts[*part].id))),
        why::Why::Wood => Some(Why { reason: "length", ..Why::default() }),
        why::Why::Search => Some(Why { reason: "search", ..Why::default() }),
    };
    let decided = searched(held)?;
    Some(problem.parts.iter().find_map(alone).filter(|_| most == 0).unwrap_or(decided))
}

/// No more of a part come out of all it may come of: so many are needed for one set more.
fn too_few(most: i64, (id, per_set): (&str, i64)) -> Why {
    Why { reason: "count", limit: Some(per_set * (most + 1)), ..Why::default() }.part(id)
}

fn together<'a>(ids: impl Iterator<Item = &'a String>) -> Why {
    Why { reason: "together", parts: ids.cloned().collect(), ..Why::default() }
}

fn searched<T>(act: impl FnOnce(&mut Patience<'_>) -> T) -> T {
    act(&mut Patience::new(Some(STEPS), &mut |_: Progress<'_>| true))
}

/// What keeps a field from being as it was asked; nothing where it is so, or where only going through all fields shows it.
pub fn no_nearer(problem: &field::problem::Problem, planned: &Planned<field::plan::Plan>) -> Option<Why> {
    use field::{problem::Pile, why};
    if planned.worth.get(1) == Some(&0) {
        return None;
    }
    let Some(laid) = &planned.plan.field else {
        let least = |pile: &Pile| {
            let allow = problem.allow;
            [pile.length - allow.length, pile.width - allow.width, pile.thickness - allow.thickness].into_iter().min().unwrap_or(0)
        };
        let gates: [Gate<'_, Pile>; 3] =
            [("count", 1, &|pile| pile.count), ("machine_min", problem.machine_min, &|pile| pile.length), ("allow", 1, &least)];
        let piles: Vec<&Pile> = problem.piles.iter().collect();
        return Some(barred(&piles, &gates, &|pile| pile.id.clone()).unwrap_or(Why { reason: "search", ..Why::default() }));
    };
    if let Some(cut) = why::least_piece(problem, laid) {
        return Some(Why::of("cut_min", problem.cut_min, cut));
    }
    let lacking = searched(|patience| field::short::lacking(problem, planned, patience));
    if let Some((pile, more)) = lacking.and_then(|lacking| lacking.pieces.first().copied()) {
        let Pile { id, count, .. } = &problem.piles[pile];
        return Some(Why { pile: Some(id.clone()), ..Why::of("count", count + more, *count) });
    }
    let (side, _, other) = why::next(problem, laid)?;
    let reason = ["width", "depth", "height"].get(side)?;
    Some(Why::of(reason, problem.targets.get(side).copied().flatten()?.size, other))
}
