//! How many are sold in the days to come, by the prices that will be asked: buyers come one by one and know nothing of each other.

use super::demand::Demand;
use crate::quantity::Count;

/// The chances of what is left when the time is over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chances {
    pub none: f64,
    pub one: f64,
    pub all: f64,
    /// What the next buyer hands over in the mean; none where nobody may buy.
    pub next: Option<f64>,
}

/// The chances for so many pieces, where each price is asked for so many days: a count of Poisson.
///
/// ```
/// use fivebar_core::sale::{chances::chances, demand::{Demand, Fewer}};
/// // One a day comes, and each buys at 1: in a day nobody does with the chance 1 / e, and one does with as much.
/// let demand = Demand { come: 1.0, ask: 1.0, share: 1.0, at: 1.0, scale: 1.0, fewer: Fewer::ByShares };
/// let one = chances(&demand, 1, &[(1.0, 1)]);
/// assert!((one.none - 1.0 / std::f64::consts::E).abs() < 1e-12 && (one.all + one.none - 1.0).abs() < 1e-12);
/// ```
pub fn chances(demand: &Demand, pieces: Count, asked: &[(f64, u16)]) -> Chances {
    let buyers = |(price, days): &(f64, u16)| demand.come * demand.buys_at(*price) * f64::from(*days);
    let mean: f64 = asked.iter().map(buyers).sum();
    let next = next(asked.iter().map(|step| (step.0, buyers(step))));
    let mut exactly = libm::exp(-mean);
    let (none, mut fewer) = (exactly, 0.0);
    let mut one = if pieces <= 1 { 1.0 - none } else { exactly * mean };
    for n in 1..=pieces {
        fewer += exactly;
        exactly *= mean / f64::from(n);
    }
    let all = (1.0 - fewer).max(0.0);
    one = one.max(0.0);
    Chances { none, one, all, next }
}

/// The mean of the first price at which one buys, of prices in turn with how many would buy at each: nobody did before, and one does.
fn next(steps: impl Iterator<Item = (f64, f64)>) -> Option<f64> {
    let (mut nobody, mut sums) = (1.0, 0.0);
    for (price, buyers) in steps {
        let still = nobody * libm::exp(-buyers);
        sums += price * (nobody - still);
        nobody = still;
    }
    let sold = 1.0 - nobody;
    (1e-9 < sold).then(|| sums / sold)
}

#[cfg(test)]
mod tests {
    use super::super::demand::Fewer;
    use super::*;

    /// 1.65 buyers are expected: by hand e^-1.65 = 0.192, 1.65 of it one, the rest both.
    #[test]
    fn two_pieces_and_a_mean_of_1_65() {
        let demand = Demand { come: 1.65, ask: 2.0, share: 1.0, at: 1.0, scale: 1.0, fewer: Fewer::ByShares };
        let two = chances(&demand, 2, &[(1.0, 1)]);
        for (ours, theirs) in [(two.none, 0.192), (two.one, 0.317), (two.all, 0.491)] {
            assert!((ours - theirs).abs() < 5e-4, "{ours}, not {theirs}");
        }
        assert_eq!(chances(&demand, 200, &[]), Chances { none: 1.0, one: 0.0, all: 0.0, next: None });
    }

    /// By hand: all who come buy at 2, one in e at 3, one comes a day. A day at 3, then two at 2: the first day sells with the chance
    /// 1 - e^-(1/e) = 0.308, the others with 0.692 x (1 - e^-2) = 0.598; (3 x 0.308 + 2 x 0.598) / 0.906 = 2.34.
    #[test]
    fn the_next_sale_is_the_mean_of_the_first() {
        let demand = Demand { come: 1.0, ask: 1.0, share: 1.0, at: 2.0, scale: 1.0, fewer: Fewer::ByShares };
        let two = chances(&demand, 1, &[(3.0, 1), (2.0, 2)]);
        assert!((two.next.unwrap() - 2.34).abs() < 5e-3 && (two.none - 0.094).abs() < 5e-4, "{two:?}");
        assert!((chances(&demand, 3, &[(3.0, 5)]).next.unwrap() - 3.0).abs() < 1e-12);
    }
}
