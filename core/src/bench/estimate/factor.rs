//! What earlier jobs took of what was thought, and the allowance for rework where that is not used.

use super::spread::{Likely, whole};
use crate::quantity::{Decimal, Span};

/// What the next job will likely take of what is thought: f = exp((sum of ln r + k ln 1.4) / (n + k)) from n past ratios r of actual over thought,
/// k = 2: before history people take 1.4 of what they think (ours).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor {
    value: f64,
    spread: f64,
    /// The jobs it is learnt from.
    pub jobs: usize,
}

/// What people take of what they think, how much that guess weighs, and how single jobs spread around it. Ours.
const BEFORE: f64 = 1.4;
const WEIGHT: f64 = 2.0;
const SPREAD: f64 = 0.25;

/// A job that took more than this of what was thought, or less than one over it, is a slip of the pen. Ours.
pub const RATIO_MOST: u32 = 10;

/// The least and the most an allowance for rework may be, and what it is before any history. Ours.
pub const ALLOWANCE: [i64; 2] = [5, 10];
const ALLOWANCE_BEFORE: Decimal = Decimal::from_parts(75, 0, 0, false, 3);

impl Factor {
    /// From actual over thought of past jobs; those beyond [`RATIO_MOST`] either way say nothing.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::factor::Factor;
    /// use fivebar_core::quantity::Decimal;
    /// let past = [142, 118, 131].map(|ratio| Decimal::new(ratio, 2));
    /// assert_eq!(Factor::of(&past).shown(), Decimal::new(1339, 3));
    /// ```
    pub fn of(ratios: &[Decimal]) -> Factor {
        let logs: Vec<f64> = ratios.iter().filter(|ratio| is_sound(**ratio)).map(|ratio| libm::log(float(*ratio))).collect();
        let n = logs.len() as f64;
        let middle = (logs.iter().sum::<f64>() + WEIGHT * libm::log(BEFORE)) / (n + WEIGHT);
        let off: f64 = logs.iter().map(|log| (log - middle) * (log - middle)).sum();
        let variance = (off + WEIGHT * SPREAD * SPREAD) / (n + WEIGHT);
        Factor { value: libm::exp(middle), spread: (variance * (1.0 + 1.0 / (n + WEIGHT))).sqrt(), jobs: logs.len() }
    }

    /// With three decimals.
    pub fn shown(self) -> Decimal {
        Decimal::new((self.value * 1000.0 + 0.5).floor() as i64, 3)
    }

    /// What the maker's own jobs took of what was thought, in their middle, with three decimals; none without any.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::factor::Factor;
    /// use fivebar_core::quantity::Decimal;
    /// let past = [200, 50].map(|ratio| Decimal::new(ratio, 2));
    /// assert_eq!(Factor::of(&past).own(), Some(Decimal::new(1000, 3)));
    /// ```
    pub fn own(self) -> Option<Decimal> {
        let n = self.jobs as f64;
        let sum = libm::log(self.value) * (n + WEIGHT) - WEIGHT * libm::log(BEFORE);
        (0 < self.jobs).then(|| Decimal::new((libm::exp(sum / n) * 1000.0 + 0.5).floor() as i64, 3))
    }

    /// What is thought, as it will likely come out.
    pub fn likely(self, thought: f64) -> Likely {
        Likely { median: thought * self.value, spread: self.spread }
    }

    /// The middle of that, in whole minutes.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::factor::Factor;
    /// use fivebar_core::quantity::{Decimal, Span};
    /// let past = [142, 118, 131].map(|ratio| Decimal::new(ratio, 2));
    /// assert_eq!(Factor::of(&past).warns(Span::minutes(1_140)), Span::minutes(1_526));
    /// ```
    pub fn warns(self, thought: Span) -> Span {
        whole(self.likely(super::spread::minutes(thought)).median)
    }
}

/// Whether a ratio can be meant.
pub fn is_sound(ratio: Decimal) -> bool {
    let most = Decimal::from(RATIO_MOST);
    Decimal::ZERO < ratio && ratio <= most && ratio.checked_mul(most).is_some_and(|ratio| Decimal::ONE <= ratio)
}

fn float(ratio: Decimal) -> f64 {
    ratio.mantissa() as f64 / libm::pow(10.0, f64::from(ratio.scale()))
}

/// What is added for rework where no factor is used: the share that rework had of own time, from 5 to 10 %.
pub fn allowance(rework: Span, all: Span) -> Decimal {
    let [least, most] = ALLOWANCE.map(|percent| Decimal::new(percent, 2));
    let share = Decimal::from(rework.as_ms()).checked_div(Decimal::from(all.as_ms()));
    share.map_or(ALLOWANCE_BEFORE, |share| crate::quantity::half_up(share, 2).clamp(least, most))
}

/// A time with an allowance.
pub fn allowed(time: Likely, allowance: Decimal) -> Likely {
    time.times(1.0 + float(allowance))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ratios(hundredths: &[i64]) -> Vec<Decimal> {
        hundredths.iter().map(|ratio| Decimal::new(*ratio, 2)).collect()
    }

    #[track_caller]
    fn check(past: &[Decimal], thousandths: i64, jobs: usize) -> Factor {
        let factor = Factor::of(past);
        assert_eq!((factor.shown(), factor.jobs), (Decimal::new(thousandths, 3), jobs));
        factor
    }

    #[test]
    fn few_jobs_move_it_a_little_and_many_a_lot() {
        check(&[], 1_400, 0);
        check(&ratios(&[142, 118, 131]), 1_339, 3);
        let mut four = ratios(&[142, 118, 131]);
        four.push(Decimal::from(1563).checked_div(Decimal::from(1140)).unwrap());
        check(&four, 1_344, 4);
        check(&ratios(&[100]), 1_251, 1);
        check(&ratios(&[100; 40]), 1_016, 40);
        check(&ratios(&[142, 0, -5, 1_001, 9]), 1_407, 1);
        assert_eq!(check(&ratios(&[142, 1_000, 10]), 1_227, 3).jobs, 3);
    }

    #[test]
    fn jobs_that_agree_make_it_surer() {
        let spread = |past: &[i64]| Factor::of(&ratios(past)).likely(100.0).spread;
        assert!(spread(&[140; 8]) < spread(&[140]) && spread(&[140]) < spread(&[]));
        assert!(spread(&[140; 4]) < spread(&[90, 140, 140, 210]));
    }

    #[test]
    fn an_allowance_stays_between_its_ends() {
        let of = |rework, all| allowance(Span::minutes(rework), Span::minutes(all)).to_string();
        assert_eq!([of(0, 0), of(0, 100), of(7, 100), of(66, 1_563), of(90, 100)], ["0.075", "0.05", "0.07", "0.05", "0.10"]);
        assert_eq!(allowed(Likely::guessed(24.0), Decimal::new(2, 1)).median, 28.799_999_999_999_997);
    }
}
