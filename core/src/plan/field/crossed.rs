//! Crossed courses: lines along the width in the odd layers, along the depth in the even ones.
//!
//! Width and depth are chosen apart: each has so many tiles end to end and so many lines across them, and an opening. Of these ways
//! only those stay that no other beats in nearness, tiles and lines at once, since pieces grow with both.

use super::near::{Near, near};
use super::plan::Lie;
use super::problem::{Problem, Target};
use super::search::{Chosen, Search, Tiles, Worth};

/// One way to fill a direction: tiles end to end along it, lines that lie across it, and the opening between those.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Way {
    near: Near,
    ends: i64,
    lines: i64,
    open: i64,
}

/// One direction.
struct Reach<'a> {
    problem: &'a Problem,
    target: Option<Target>,
    length: i64,
    width: i64,
}

/// Tries all crossed courses of these piles.
pub(super) fn search(search: &mut Search<'_, '_>, tiles: &Tiles) {
    let [width, depth, _] = search.problem.targets;
    let Some((height, least)) = tiles
        .layers
        .iter()
        .filter(|(_, k)| 2 <= *k)
        .map(|(near, k)| (*near, *k))
        .reduce(|(near, k), (other, n)| (near.min(other), k.min(n)))
    else {
        return;
    };
    let most = tiles.most(least);
    let reach = |target| Reach { problem: search.problem, target, length: tiles.tile[0], width: tiles.tile[1] };
    let (wide, deep) = (reach(width), reach(depth));
    let Some(widths) = wide.ways(search, most, height) else { return };
    // Along the depth the odd layers lie across, and the even ones along.
    let Some(depths) = deep.ways(search, [most[1], most[0]], height) else { return };
    for (height, layers) in tiles.layers.iter().filter(|(_, k)| 2 <= *k) {
        if search.best.near < *height || !pairs(search, tiles, (&widths, &depths), (*height, *layers)) {
            return;
        }
    }
}

impl Tiles {
    /// The most tiles in one odd layer, and in one even layer, where there are at least so many layers.
    fn most(&self, layers: i64) -> [i64; 2] {
        let [one, other] = &self.sources;
        let second = if self.piles.len() < 2 { one.count } else { other.count };
        let [odd, even] = odd_and_even(layers);
        [one.count.checked_div(odd).unwrap_or(0), second.checked_div(even).unwrap_or(0)]
    }
}

fn odd_and_even(layers: i64) -> [i64; 2] {
    [layers.saturating_add(1).div_euclid(2), layers.div_euclid(2)]
}

impl Reach<'_> {
    /// The ways that may be part of the best field; `None` where patience is over.
    fn ways(&self, search: &mut Search<'_, '_>, [most_ends, most_lines]: [i64; 2], height: Near) -> Option<Vec<Way>> {
        let mut ways = vec![];
        for ends in 1..=most_ends {
            let run = ends.saturating_mul(self.length);
            let least = self.least(run);
            if search.best.near < least.plus(height) {
                if self.target.is_some_and(|target| target.size < run) {
                    break;
                }
                continue;
            }
            self.lines(search, (ends, run, least), most_lines, &mut ways)?;
        }
        ways.sort_unstable();
        Some(undominated(search, ways))
    }

    /// No way with this run comes nearer: its outer size is from the run to the run and the overhang.
    fn least(&self, run: i64) -> Near {
        let far = run.saturating_add(self.problem.overhang);
        self.target.map_or(Near::default(), |target| near(self.target, target.size.clamp(run, far)))
    }

    /// For so many tiles end to end: fewer lines first, and more only where they come nearer.
    fn lines(&self, search: &mut Search<'_, '_>, (ends, run, least): (i64, i64, Near), most: i64, ways: &mut Vec<Way>) -> Option<()> {
        let mut best: Option<Near> = None;
        let mut offer = |lines: i64, open: i64| {
            let span = self.span(lines, open);
            let near = near(self.target, run.max(span));
            if best.is_none_or(|best| near < best) {
                best = Some(near);
                ways.push(Way { near, ends, lines, open });
            }
            near == least
        };
        let [narrow, wide] = self.problem.open;
        let (short, far) = (run.saturating_sub(self.problem.overhang), run.saturating_add(self.problem.overhang));
        if (short..=far).contains(&self.width) && 1 <= most && offer(1, 0) {
            return Some(());
        }
        let up = |over: i64, by: i64| over.saturating_add(by).saturating_sub(1).div_euclid(by);
        let first = up(short.saturating_add(wide), self.width.saturating_add(wide)).max(2);
        let last = far.saturating_add(narrow).div_euclid(self.width.saturating_add(narrow)).min(most);
        for lines in first..=last {
            if !search.goes_on(20) {
                return None;
            }
            let between = lines.saturating_sub(1);
            let tiles = lines.saturating_mul(self.width);
            let low = up(short.saturating_sub(tiles), between).max(narrow);
            let high = far.saturating_sub(tiles).div_euclid(between).min(wide);
            if high < low {
                continue;
            }
            // The opening that brings the lines just to the wanted size, or the one past it.
            let fits = self.target.map_or(low, |target| target.size.saturating_sub(tiles).div_euclid(between));
            let mut done = false;
            for open in [fits, fits.saturating_add(1)] {
                done |= offer(lines, open.clamp(low, high));
            }
            if done {
                break;
            }
        }
        Some(())
    }

    fn span(&self, lines: i64, open: i64) -> i64 {
        lines.saturating_mul(self.width.saturating_add(open)).saturating_sub(open)
    }
}

/// Leaves out every way that another beats or equals in all.
fn undominated(search: &mut Search<'_, '_>, ways: Vec<Way>) -> Vec<Way> {
    let mut left: Vec<Way> = vec![];
    for way in ways {
        search.goes_on(u64::try_from(left.len()).unwrap_or(0));
        if !left.iter().any(|it| it.ends <= way.ends && it.lines <= way.lines) {
            left.push(way);
        }
    }
    left
}

/// Tries all pairs of ways for so many layers; whether to go on.
fn pairs(search: &mut Search<'_, '_>, tiles: &Tiles, (widths, depths): (&[Way], &[Way]), (height, layers): (Near, i64)) -> bool {
    let [odd, even] = odd_and_even(layers);
    let nearest = depths.first().map_or(height, |deep| height.plus(deep.near));
    for wide in widths {
        if search.best.near < wide.near.plus(nearest) {
            break;
        }
        for deep in depths {
            let near = height.plus(wide.near).plus(deep.near);
            if search.best.near < near {
                break;
            }
            if !search.goes_on(10) {
                return false;
            }
            let needed =
                [odd.saturating_mul(deep.lines).saturating_mul(wide.ends), even.saturating_mul(wide.lines).saturating_mul(deep.ends)];
            let taken = tiles.by_pile(needed);
            if tiles.have(taken) {
                let lie = Lie::Crossed { lines: [deep.lines, wide.lines], ends: [wide.ends, deep.ends], open: [deep.open, wide.open] };
                let worth = Worth { near, taken: taken[0].saturating_add(taken[1]), cut: 0 };
                search.offer(worth, || Chosen { tiles: tiles.clone(), lie, layers });
            }
        }
    }
    true
}
