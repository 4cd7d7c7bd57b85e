//! The best field so far, and what every search needs: from which piles, in how many layers, and whether to go on.

use super::near::{Near, near};
use super::plan::Lie;
use super::problem::{Mix, Problem};
use super::tiles::{Begun, Source};
use crate::plan::patience::Patience;

/// The piles of a field, and the tile they have in common.
#[derive(Clone, Debug)]
pub(super) struct Tiles {
    pub mix: Mix,
    pub piles: Vec<usize>,
    pub tile: [i64; 3],
    /// By colour; the second has no pieces where there is one pile.
    pub sources: [Source; 2],
    /// Numbers of layers, the nearest to the wanted height first.
    pub layers: Vec<(Near, i64)>,
}

impl Tiles {
    /// The tile of one pile or two; `None` where nothing is left of it.
    fn of(problem: &Problem, mix: Mix, piles: Vec<usize>) -> Option<Tiles> {
        let chosen: Vec<_> = piles.iter().filter_map(|pile| problem.piles.get(*pile)).collect();
        let allow = &problem.allow;
        let least = |of: &dyn Fn(usize) -> i64| (0..chosen.len()).map(of).min().unwrap_or(0);
        let side = |nth: usize| chosen.get(nth).map_or([0; 3], |pile| [pile.length, pile.width, pile.thickness]);
        let [length, width, thickness] = [0, 1, 2].map(|way: usize| least(&|nth| side(nth).get(way).copied().unwrap_or(0)));
        let tile = [length.saturating_sub(allow.length), width.saturating_sub(allow.width), thickness.saturating_sub(allow.thickness)];
        let source = |nth: usize| {
            let (length, count) = chosen.get(nth).map_or((1, 0), |pile| (pile.cut_from().saturating_sub(allow.length), pile.count));
            Source { length, kerf: problem.kerf, count }
        };
        let [least, most] = problem.layers;
        let [_, _, height] = problem.targets;
        let mut layers: Vec<(Near, i64)> = (least..=most).map(|k| (near(height, k.saturating_mul(tile[2])), k)).collect();
        layers.sort_unstable();
        tile.iter().all(|side| 0 < *side).then(|| Tiles { mix, sources: [source(0), source(1)], piles, tile, layers })
    }

    /// Every choice of piles that may be made, those first of which some number of layers comes nearest to the height.
    pub(super) fn all(problem: &Problem) -> Vec<Tiles> {
        let fit = || problem.piles.iter().enumerate().filter(|(_, pile)| problem.machine_min <= pile.length);
        let mut all = vec![];
        if problem.mix.contains(&Mix::Single) {
            all.extend(fit().filter_map(|(nth, _)| Tiles::of(problem, Mix::Single, vec![nth])));
        }
        if problem.mix.contains(&Mix::Alternate) {
            let pairs =
                fit().flat_map(|(one, pile)| fit().filter(|(_, it)| it.species != pile.species).map(move |(other, _)| vec![one, other]));
            all.extend(pairs.filter_map(|pair| Tiles::of(problem, Mix::Alternate, pair)));
        }
        all.sort_by_key(Tiles::nearest);
        all
    }

    /// No field of these piles comes nearer, whatever its pattern.
    pub(super) fn nearest(&self) -> Near {
        self.layers.first().map_or(Near::default(), |(near, _)| *near)
    }

    /// Whether so many of each colour are there.
    pub(super) fn have(&self, taken: [i64; 2]) -> bool {
        self.sources.iter().zip(taken).all(|(source, taken)| taken <= source.count)
    }

    /// Both colours of one pile are the first.
    pub(super) fn by_pile(&self, [first, second]: [i64; 2]) -> [i64; 2] {
        if self.mix == Mix::Alternate { [first, second] } else { [first.saturating_add(second), 0] }
    }
}

/// What a field is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Worth {
    pub near: Near,
    pub taken: i64,
    pub cut: i64,
}

impl Worth {
    pub(super) fn figures(&self) -> [i128; 4] {
        [self.near.beyond, self.near.off, self.taken, self.cut].map(i128::from)
    }
}

/// A field by its choices; all else follows.
#[derive(Clone, Debug)]
pub(super) struct Chosen {
    pub tiles: Tiles,
    pub lie: Lie,
    pub layers: i64,
}

pub(super) struct Search<'a, 'p> {
    pub problem: &'a Problem,
    pub patience: &'a mut Patience<'p>,
    pub best: Worth,
    pub chosen: Option<Chosen>,
    /// Fields that were looked at.
    pub tried: u64,
    /// Something was left untried that no cut excludes.
    pub skipped: bool,
    sums: u64,
    pub begun: Begun,
}

/// Sums of one step of patience.
const SUMS: u64 = 1_000;

impl<'a, 'p> Search<'a, 'p> {
    /// Begins with the empty field, which misses every wanted size by all of it.
    pub(super) fn new(problem: &'a Problem, patience: &'a mut Patience<'p>) -> Search<'a, 'p> {
        let nothing = problem.targets.iter().fold(Near::default(), |sum, target| sum.plus(near(*target, 0)));
        let best = Worth { near: nothing, taken: 0, cut: 0 };
        Search { problem, patience, best, chosen: None, tried: 0, skipped: false, sums: 0, begun: Begun::default() }
    }

    /// Spends so many sums; whether there are more.
    pub(super) fn goes_on(&mut self, sums: u64) -> bool {
        self.sums = self.sums.saturating_add(sums);
        if self.sums < SUMS {
            return !self.patience.is_over();
        }
        let steps = self.sums.div_euclid(SUMS);
        self.sums = self.sums.rem_euclid(SUMS);
        self.patience.spend(steps)
    }

    /// Keeps a field if it is better than the best so far.
    pub(super) fn offer(&mut self, worth: Worth, chosen: impl FnOnce() -> Chosen) {
        self.tried = self.tried.saturating_add(1);
        if worth < self.best {
            self.best = worth;
            self.chosen = Some(chosen());
            self.patience.found(&worth.figures());
        }
    }
}
