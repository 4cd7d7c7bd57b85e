//! How far a size lies from the wanted one.

use super::problem::Target;

/// The first two figures of a field: what is beyond the tolerance weighs more than what is off at all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Near {
    pub beyond: i64,
    pub off: i64,
}

impl Near {
    pub(super) fn plus(self, other: Near) -> Near {
        Near { beyond: self.beyond.saturating_add(other.beyond), off: self.off.saturating_add(other.off) }
    }

    /// Of a size that may be off by so much.
    pub(super) fn off_by(off: i64, tolerance: i64) -> Near {
        Near { beyond: off.saturating_sub(tolerance).max(0), off }
    }
}

/// How near a size comes; where none is wanted every size does.
pub(super) fn near(target: Option<Target>, size: i64) -> Near {
    target.map_or(Near::default(), |target| Near::off_by(size.saturating_sub(target.size).saturating_abs(), target.tolerance))
}

/// Sizes that grow by a pitch, less what stands behind the last.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    pub target: Option<Target>,
    pub pitch: i64,
    pub less: i64,
}

impl Scale {
    pub(super) fn size(&self, n: i64) -> i64 {
        n.saturating_mul(self.pitch).saturating_sub(self.less)
    }

    pub(super) fn near(&self, n: i64) -> Near {
        near(self.target, self.size(n))
    }

    /// The greatest number that is not past the target, and at least one less than the first of all; 0 where no size is wanted.
    pub(super) fn below(&self) -> i64 {
        let fits = |target: Target| target.size.saturating_add(self.less).checked_div(self.pitch).unwrap_or(0);
        self.target.map_or(0, fits)
    }

    /// The nearest of all from 1 on.
    pub(super) fn nearest(&self) -> Near {
        let below = self.below();
        let above = self.near(below.saturating_add(1));
        if below < 1 { above } else { above.min(self.near(below)) }
    }
}

/// Numbers from 1 to a most, the nearest first.
pub(super) struct Outward<'a> {
    scale: &'a Scale,
    below: i64,
    above: i64,
    pub most: i64,
}

impl<'a> Outward<'a> {
    pub(super) fn of(scale: &'a Scale, most: i64) -> Outward<'a> {
        let below = scale.below().min(most);
        Outward { scale, below, above: scale.below().saturating_add(1), most }
    }
}

impl Iterator for Outward<'_> {
    type Item = (i64, Near);

    fn next(&mut self) -> Option<(i64, Near)> {
        self.below = self.below.min(self.most);
        let below = (0 < self.below).then(|| (self.below, self.scale.near(self.below)));
        let above = (self.above <= self.most).then(|| (self.above, self.scale.near(self.above)));
        match (below, above) {
            (Some(one), Some(other)) if other.1 < one.1 => self.step_up(other),
            (Some(one), _) => {
                self.below = self.below.saturating_sub(1);
                Some(one)
            }
            (None, Some(other)) => self.step_up(other),
            (None, None) => None,
        }
    }
}

impl Outward<'_> {
    fn step_up(&mut self, found: (i64, Near)) -> Option<(i64, Near)> {
        self.above = self.above.saturating_add(1);
        Some(found)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Tiles of 30 with 2 between, at most 6 of them.
    #[track_caller]
    fn check(size: Option<i64>, wanted: &[i64]) {
        let scale = Scale { target: size.map(|size| Target { size, tolerance: 5 }), pitch: 32, less: 2 };
        let found: Vec<(i64, Near)> = Outward::of(&scale, 6).collect();
        assert_eq!(found.iter().map(|(n, _)| *n).collect::<Vec<_>>(), wanted, "{size:?}");
        assert!(found.is_sorted_by_key(|(_, near)| *near), "{size:?}");
        assert_eq!(scale.nearest(), found[0].1.min(scale.near(found[0].0)), "{size:?}");
    }

    #[test]
    fn numbers_come_nearest_first() {
        check(Some(94), &[3, 2, 4, 1, 5, 6]); // 30, 62, 94, 126, 158, 190
        check(Some(100), &[3, 4, 2, 5, 1, 6]);
        check(Some(3), &[1, 2, 3, 4, 5, 6]);
        check(Some(0), &[1, 2, 3, 4, 5, 6]);
        check(Some(190), &[6, 5, 4, 3, 2, 1]);
        check(None, &[1, 2, 3, 4, 5, 6]);
    }
}
