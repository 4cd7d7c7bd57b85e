//! How many are sold in the days to come, by the prices that will be asked: buyers come one by one and know nothing of each other.

use super::demand::Demand;
use crate::quantity::Count;

/// The chances of what is left when the time is over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chances {
    pub none: f64,
    pub one: f64,
    pub all: f64,
}

/// The chances for so many pieces, where each price is asked for so many days: a count of Poisson.
///
/// ```
/// use fivebar_core::sale::{chances::chances, demand::Demand};
/// // One a day comes, and each buys at 1: in a day nobody does with the chance 1 / e, and one does with as much.
/// let demand = Demand { come: 1.0, ask: 1.0, share: 1.0, at: 1.0, scale: 1.0 };
/// let one = chances(&demand, 1, &[(1.0, 1)]);
/// assert!((one.none - 1.0 / std::f64::consts::E).abs() < 1e-12 && (one.all + one.none - 1.0).abs() < 1e-12);
/// ```
pub fn chances(demand: &Demand, pieces: Count, asked: &[(f64, u16)]) -> Chances {
    let mean: f64 = asked.iter().map(|(price, days)| demand.come * demand.buys_at(*price) * f64::from(*days)).sum();
    let mut exactly = libm::exp(-mean);
    let (none, mut fewer) = (exactly, 0.0);
    let mut one = if pieces <= 1 { 1.0 - none } else { exactly * mean };
    for n in 1..=pieces {
        fewer += exactly;
        exactly *= mean / f64::from(n);
    }
    let all = (1.0 - fewer).max(0.0);
    one = one.max(0.0);
    Chances { none, one, all }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 1.65 buyers are expected: by hand e^-1.65 = 0.192, 1.65 of it one, the rest both.
    #[test]
    fn two_pieces_and_a_mean_of_1_65() {
        let demand = Demand { come: 1.65, ask: 2.0, share: 1.0, at: 1.0, scale: 1.0 };
        let two = chances(&demand, 2, &[(1.0, 1)]);
        for (ours, theirs) in [(two.none, 0.192), (two.one, 0.317), (two.all, 0.491)] {
            assert!((ours - theirs).abs() < 5e-4, "{ours}, not {theirs}");
        }
        assert_eq!(chances(&demand, 200, &[]), Chances { none: 1.0, one: 0.0, all: 0.0 });
    }
}
