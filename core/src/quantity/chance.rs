//! Chance: how many of n pieces turn out well when their share is known only by a Beta, and how far a mean may be off.
//!
//! Floats: no money and no time. Logarithms come from `libm`, so a phone and a terminal say the same figures.

use super::Count;
use crate::refusal::{Answer, Refusal};
use std::f64::consts::FRAC_PI_2;

/// Of so many pieces, how many are of the sort that alpha stands for: each is by chance, and the share itself is a Beta.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BetaBinomial {
    n: Count,
    alpha: f64,
    beta: f64,
}

impl BetaBinomial {
    /// `n` pieces of a share that is Beta(alpha, beta).
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] for an alpha or a beta that is not above nothing.
    pub fn new(n: Count, alpha: f64, beta: f64) -> Answer<BetaBinomial> {
        let fits = |v: f64| v.is_finite() && 0.0 < v;
        if fits(alpha) && fits(beta) { Ok(BetaBinomial { n, alpha, beta }) } else { Err(Refusal::OutOfRange) }
    }

    /// So many pieces of the same share.
    pub fn with(self, n: Count) -> BetaBinomial {
        BetaBinomial { n, ..self }
    }

    /// Alpha and beta of the share.
    pub fn share(&self) -> [f64; 2] {
        [self.alpha, self.beta]
    }

    /// The chance of exactly `k`: C(n, k) B(k + alpha, n - k + beta) / B(alpha, beta).
    pub fn exactly(&self, k: Count) -> f64 {
        let Some(rest) = self.n.checked_sub(k) else { return 0.0 };
        let (n, k, rest) = (f64::from(self.n), f64::from(k), f64::from(rest));
        let ways = libm::lgamma(n + 1.0) - libm::lgamma(k + 1.0) - libm::lgamma(rest + 1.0);
        libm::exp(ways + ln_beta(k + self.alpha, rest + self.beta) - ln_beta(self.alpha, self.beta))
    }

    /// The chance of `k` or more, by the shorter tail, which loses no digits.
    ///
    /// ```
    /// use fivebar_core::quantity::chance::BetaBinomial;
    /// // 20 legs out of 38 pieces, when one in four may be a reject and that guess is worth 12 pieces.
    /// let chance = BetaBinomial::new(38, 9.0, 3.0).unwrap().at_least(20);
    /// assert!((chance - 0.940).abs() < 0.0005);
    /// ```
    pub fn at_least(&self, k: Count) -> f64 {
        match k.checked_sub(1) {
            None => 1.0,
            Some(_) if self.n < k => 0.0,
            Some(below) if f64::from(k) <= self.mean() => (1.0 - self.turned().tail(self.n.saturating_sub(below))).max(0.0),
            Some(_) => self.tail(k).min(1.0),
        }
    }

    /// The mean: n alpha / (alpha + beta).
    pub fn mean(&self) -> f64 {
        f64::from(self.n) * self.alpha / (self.alpha + self.beta)
    }

    /// The standard deviation; wider than a coin's of the same share, since the share itself is not known.
    pub fn spread(&self) -> f64 {
        let (n, weight) = (f64::from(self.n), self.alpha + self.beta);
        (n * self.alpha * self.beta * (weight + n) / (weight * weight * (weight + 1.0))).sqrt()
    }

    /// The least count that is not passed with that chance, from 0 to 1.
    ///
    /// ```
    /// use fivebar_core::quantity::chance::BetaBinomial;
    /// // 3 rejects among 12, a flat prior, 40 pieces left: half the time no more than 11 of them are rejects.
    /// assert_eq!(BetaBinomial::new(40, 4.0, 10.0).unwrap().quantile(0.5), 11);
    /// ```
    pub fn quantile(&self, chance: f64) -> Count {
        least((0, self.n), |k| chance <= 1.0 - self.at_least(k.saturating_add(1))).unwrap_or(self.n)
    }

    /// The same pieces, counting the other sort.
    fn turned(&self) -> BetaBinomial {
        BetaBinomial { n: self.n, alpha: self.beta, beta: self.alpha }
    }

    /// The sum of the chances from `k` to `n`, each from the one before.
    fn tail(&self, k: Count) -> f64 {
        let (n, falls) = (f64::from(self.n), 1.0 <= self.alpha.min(self.beta));
        let (mut term, mut sum) = (self.exactly(k), 0.0);
        for k in k..=self.n {
            sum += term;
            // One hump: behind it every further chance is smaller still, and what is left of them is no digit of the sum.
            if falls && term < sum * TOO_SMALL {
                break;
            }
            let k = f64::from(k);
            term *= (n - k) * (k + self.alpha) / ((k + 1.0) * (n - k - 1.0 + self.beta));
        }
        sum
    }
}

/// A chance this far below the sum no longer counts, even ten thousand times over.
const TOO_SMALL: f64 = 1e-21;

fn ln_beta(a: f64, b: f64) -> f64 {
    libm::lgamma(a) + libm::lgamma(b) - libm::lgamma(a + b)
}

/// The least count between two ends, both included, from which on something holds, by halving; `None` where it does not hold
/// at the upper end.
pub fn least((from, to): (Count, Count), holds: impl Fn(Count) -> bool) -> Option<Count> {
    if to < from || !holds(to) {
        return None;
    }
    let (mut from, mut to) = (from, to);
    while from < to {
        let middle = from.midpoint(to);
        if holds(middle) {
            to = middle;
        } else {
            from = middle.saturating_add(1);
        }
    }
    Some(to)
}

/// How many standard deviations a bell curve spreads either way at 95 %.
pub const BELL_95: f64 = 1.959_963_984_540_054;

/// Student's t: how many standard deviations either way hold the mean with that chance (from 0 to 1), for so many degrees of
/// freedom, which is one less than the pieces measured. `None` without any, and for a chance that is none.
/// Source: Abramowitz and Stegun, 26.7.3 and 26.7.4 (recalled).
///
/// ```
/// use fivebar_core::quantity::chance::student;
/// assert!((student(0.95, 4).unwrap() - 2.776).abs() < 0.0005); // five pieces
/// assert_eq!(student(0.95, 0), None);
/// ```
pub fn student(chance: f64, free: Count) -> Option<f64> {
    if free == 0 || !(0.0 < chance && chance < 1.0) {
        return None;
    }
    // The tangent is sought as its share of itself and one: all tangents lie between 0 and 1 so.
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if within(tangent(middle), free) < chance { low = middle } else { high = middle }
    }
    Some(tangent(high) * f64::from(free).sqrt())
}

/// One halved so often is down to the last digit of a float.
const HALVINGS: u32 = 60;

fn tangent(share: f64) -> f64 {
    share / (1.0 - share)
}

/// The chance that Student's t lies within sqrt(free) times this tangent either way: a finite sum for whole degrees of freedom.
fn within(tangent: f64, free: Count) -> f64 {
    // An arc tangent and a root: sine and cosine of an angle bring along how angles of many turns are brought back to one.
    let angle = libm::atan(tangent);
    let cos = 1.0 / (1.0 + tangent * tangent).sqrt();
    let sin = tangent * cos;
    let odd = free % 2 == 1;
    // The first term, and each further one from the one before: cos^2 x 2/3, 4/5, ... if odd, x 1/2, 3/4, ... if even.
    let (mut term, mut sum) = (if odd { cos } else { 1.0 }, 0.0);
    let first = if odd { 3 } else { 2 };
    for over in (first..=free).step_by(2) {
        sum += term;
        term *= cos * cos * f64::from(over.saturating_sub(1)) / f64::from(over);
    }
    if odd { (angle + sin * sum) / FRAC_PI_2 } else { sin * sum }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Beside whole alpha and beta the chances are ratios of whole numbers: C(k + a - 1, k) C(n - k + b - 1, n - k) / C(n + a + b - 1, n).
    #[test]
    fn chances_are_ratios_of_whole_numbers() {
        let choose = |n: u32, k: u32| (0..k).fold(1_u128, |c, i| c * u128::from(n - i) / u128::from(i + 1));
        for (n, a, b) in [(1, 1, 1), (12, 9, 3), (38, 9, 3), (40, 4, 10), (50, 1, 11), (60, 26, 12)] {
            let (ours, all) = (BetaBinomial::new(n, f64::from(a), f64::from(b)).unwrap(), choose(n + a + b - 1, n) as f64);
            let exact = |k: u32| (choose(k + a - 1, k) * choose(n - k + b - 1, n - k)) as f64 / all;
            for k in 0..=n {
                let tail: f64 = (k..=n).map(exact).sum();
                assert!((ours.exactly(k) - exact(k)).abs() < 1e-12, "{n} {a} {b}: exactly {k}");
                assert!((ours.at_least(k) - tail).abs() < 1e-12, "{n} {a} {b}: {k} or more");
            }
        }
    }

    #[test]
    fn ends_and_what_cannot_be() {
        let ten = BetaBinomial::new(10, 9.0, 3.0).unwrap();
        assert_eq!((ten.at_least(0), ten.at_least(11), ten.exactly(11)), (1.0, 0.0, 0.0));
        assert_eq!((ten.quantile(0.0), ten.quantile(1.0)), (0, 10));
        for (alpha, beta) in [(0.0, 1.0), (1.0, -1.0), (f64::NAN, 1.0), (1.0, f64::INFINITY)] {
            assert_eq!(BetaBinomial::new(10, alpha, beta), Err(Refusal::OutOfRange));
        }
        for (chance, free) in [(0.95, 0), (0.0, 4), (1.0, 4), (f64::NAN, 4)] {
            assert_eq!(student(chance, free), None);
        }
    }

    #[track_caller]
    fn check(between: (Count, Count), at: Count, wanted: Option<Count>) {
        assert_eq!(least(between, |n| at <= n), wanted);
    }

    #[test]
    fn the_least_is_found_by_halving() {
        check((0, 9), 0, Some(0));
        check((0, 9), 9, Some(9));
        check((0, 9), 10, None);
        check((3, 3), 1, Some(3));
        check((4, 3), 1, None);
        check((0, Count::MAX), 4_000_000_000, Some(4_000_000_000));
    }
}
