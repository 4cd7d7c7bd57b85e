//! Batch gain: what each further piece alike costs of the first one, before own data and by them.

use crate::quantity::Count;

/// The least a further piece costs of the first, and by how much each costs less than the one before. Ours.
const LEAST: f64 = 0.70;
const STEP: f64 = 0.05;

/// What piece `i`, counted from 0, costs of the first: max(0.70, 1 - 0.05 i). Ours, before own data.
///
/// ```
/// use fivebar_core::bench::estimate::gain::of_piece;
/// assert_eq!([0, 1, 6, 7, 900].map(of_piece), [1.0, 0.95, 0.7, 0.7, 0.7]);
/// ```
pub fn of_piece(i: Count) -> f64 {
    (1.0 - STEP * f64::from(i)).max(LEAST)
}

/// What `n` pieces alike cost together, in first pieces.
///
/// ```
/// use fivebar_core::bench::estimate::gain::of_pieces;
/// assert!((of_pieces(5) / 5.0 - 0.90).abs() < 1e-12); // five average 0.90 of the first
/// ```
pub fn of_pieces(n: Count) -> f64 {
    let falling = n.min(FALLING);
    let (few, rest) = (f64::from(falling), f64::from(n.saturating_sub(falling)));
    few - STEP * few * (few - 1.0) / 2.0 + LEAST * rest
}

/// Pieces until the least is reached.
const FALLING: Count = 6;

/// Wright's law: all pieces so far average first x n^-b, so n pieces cost first x n^(1 - b).
/// Source: T. P. Wright, "Factors affecting the cost of airplanes", 1936 (recalled); tables of `learning_curve_80.csv` (read).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wright {
    b: f64,
}

/// A batch of which every doubling would bring the average below this share is not believed. Ours.
const BEST: f64 = 0.70;

impl Wright {
    /// The law whose average falls to this share, above nothing and at most 1, with every doubling.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::gain::Wright;
    /// assert!((Wright::doubling(0.80).total(4) - 2.56).abs() < 1e-12);
    /// ```
    pub fn doubling(share: f64) -> Wright {
        Wright { b: -libm::log2(share.clamp(f64::MIN_POSITIVE, 1.0)) }
    }

    /// The average of n pieces, in first pieces.
    pub fn average(self, n: Count) -> f64 {
        libm::pow(f64::from(n.max(1)), -self.b)
    }

    /// n pieces together, in first pieces.
    pub fn total(self, n: Count) -> f64 {
        f64::from(n) * self.average(n)
    }

    /// The last of n pieces, in first pieces.
    pub fn last(self, n: Count) -> f64 {
        self.total(n) - self.total(n.saturating_sub(1))
    }

    /// To what share the average falls with every doubling.
    pub fn of_doubling(self) -> f64 {
        libm::exp2(-self.b)
    }

    /// The law that fits what batches took: of each, pieces so far and minutes so far, in their order. Least squares of ln average
    /// over ln pieces, with a first piece of its own for each batch; kept between no gain and 0.70 a doubling.
    /// None where no batch has two points apart.
    pub fn fitted(batches: &[Vec<(Count, f64)>]) -> Option<Wright> {
        let (mut with, mut own) = (0.0, 0.0);
        for batch in batches {
            let points = batch.iter().filter(|(n, minutes)| 0 < *n && 0.0 < *minutes);
            let logs = points.map(|(n, minutes)| (libm::log(f64::from(*n)), libm::log(minutes / f64::from(*n))));
            // Of a batch without time nothing is learnt.
            let Some((x, y)) = means(logs.clone()) else { continue };
            for (ln_n, ln_average) in logs {
                with += (ln_n - x) * (ln_average - y);
                own += (ln_n - x) * (ln_n - x);
            }
        }
        (0.0 < own).then(|| Wright { b: (-with / own).clamp(0.0, -libm::log2(BEST)) })
    }
}

fn means(points: impl Iterator<Item = (f64, f64)>) -> Option<(f64, f64)> {
    let (n, x, y) = points.fold((0.0, 0.0, 0.0), |(n, x, y), point| (n + 1.0, x + point.0, y + point.1));
    (0.0 < n).then(|| (x / n, y / n))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sum_is_that_of_the_pieces() {
        for n in [0, 1, 2, 5, 6, 7, 40, 9_999] {
            let one_by_one: f64 = (0..n).map(of_piece).sum();
            assert!((of_pieces(n) - one_by_one).abs() < 1e-6, "{n}");
        }
    }

    #[test]
    fn a_law_is_found_again_from_what_it_gives() {
        for share in [0.71, 0.80, 0.95, 1.0] {
            let law = Wright::doubling(share);
            let batch = |first: f64| (1..=9).map(|n| (n, first * law.total(n))).collect::<Vec<_>>();
            let found = Wright::fitted(&[batch(30.0), batch(47.0)]).unwrap();
            assert!((found.of_doubling() - share).abs() < 1e-9, "{share}");
        }
    }

    #[test]
    fn what_cannot_be_a_gain_stays_at_the_ends() {
        let found = |points: &[(Count, f64)]| Wright::fitted(&[points.to_vec()]).map(|law| (law.of_doubling() * 100.0).round());
        assert_eq!(found(&[(1, 10.0), (2, 30.0), (4, 90.0)]), Some(100.0), "they became slower");
        assert_eq!(found(&[(1, 100.0), (2, 101.0), (4, 102.0)]), Some(70.0), "too good to be believed");
        assert_eq!(found(&[(1, 10.0)]), None);
        assert_eq!(found(&[(0, 10.0), (2, 0.0)]), None);
        assert_eq!(Wright::fitted(&[]), None);
    }

    /// A note that lies before a start that was put right is a piece in no time: of that batch nothing is learnt, of the others all.
    #[test]
    fn a_batch_without_time_takes_nothing_from_the_others() {
        let law = Wright::doubling(0.85);
        let batch: Vec<_> = (1..=5).map(|n| (n, 20.0 * law.total(n))).collect();
        for odd in [vec![], vec![(1, 0.0)], vec![(0, 5.0)], vec![(3, 30.0)]] {
            let found = Wright::fitted(&[batch.clone(), odd.clone(), batch.clone()]).map(Wright::of_doubling);
            assert!(found.is_some_and(|share| (share - 0.85).abs() < 1e-9), "{odd:?}: {found:?}");
        }
    }
}
