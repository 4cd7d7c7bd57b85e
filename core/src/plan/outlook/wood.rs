//! What wood may turn out to be: each pile's share of good pieces is drawn, then each of its pieces by that share. So the good ones of
//! a pile are a beta-binomial, piles of one wood of one haul are good or bad together, and one piece more never makes fewer good.

use super::{DRAWS, Pieces};
use crate::plan::draw::Draw;

/// The good pieces of each pile, so many times.
pub(super) fn drawn(piles: &[Pieces], seed: u64) -> Vec<Vec<i64>> {
    (0..DRAWS as u64).map(|nth| piles.iter().map(|pile| good(pile, seed, nth)).collect()).collect()
}

fn good(pile: &Pieces, seed: u64, nth: u64) -> i64 {
    if pile.unsorted == 0 {
        return i64::from(pile.certain);
    }
    let share = beta(&mut lots([seed, pile.kin, nth]), pile.share);
    // The share as a number of 53 bits: a lot below it is a good piece.
    let below = (share * LOTS) as u64;
    let mut lots = lots([seed ^ 1, pile.lots, nth]);
    let good = (0..pile.unsorted).fold(0_i64, |good, _| good.saturating_add(i64::from(lots.any() >> 11 < below)));
    good.saturating_add(i64::from(pile.certain))
}

/// Lots that belong to these three alone.
fn lots(of: [u64; 3]) -> Draw {
    Draw::seeded(of.into_iter().fold(0, |seed, one| Draw::seeded(seed ^ one).any()))
}

/// Lots of 53 bits, as many as a float keeps.
const LOTS: f64 = 9_007_199_254_740_992.0;

/// A number from 0 to 1.
fn unit(lots: &mut Draw) -> f64 {
    ((lots.any() >> 11) as f64 + 0.5) / LOTS
}

/// A share that is Beta(a, b): of two gammas the first's part. Good where neither is above nothing.
fn beta(lots: &mut Draw, [a, b]: [f64; 2]) -> f64 {
    let (one, other) = (gamma(lots, a), gamma(lots, b));
    let share = one / (one + other);
    if share.is_finite() { share } else { 1.0 }
}

/// A gamma of that shape. Marsaglia and Tsang, "A simple method for generating gamma variables", ACM TOMS 26, 2000 (recalled); a shape
/// below one from one more, times a power of a unit lot.
fn gamma(lots: &mut Draw, shape: f64) -> f64 {
    if shape < 1.0 {
        let power = libm::exp(libm::log(unit(lots)) / shape.max(1e-3));
        return gamma(lots, shape + 1.0) * power;
    }
    let d = shape - 1.0 / 3.0;
    let c = 1.0 / (9.0 * d).sqrt();
    loop {
        let x = bell(lots);
        let v = (1.0 + c * x) * (1.0 + c * x) * (1.0 + c * x);
        if 0.0 < v && libm::log(unit(lots)) < 0.5 * x * x + d - d * v + d * libm::log(v) {
            return d * v;
        }
    }
}

/// A lot of the bell curve, by the polar method: Marsaglia and Bray, 1964 (recalled).
fn bell(lots: &mut Draw) -> f64 {
    loop {
        let (x, y) = (2.0 * unit(lots) - 1.0, 2.0 * unit(lots) - 1.0);
        let square = x * x + y * y;
        if 0.0 < square && square < 1.0 {
            return x * (-2.0 * libm::log(square) / square).sqrt();
        }
    }
}
