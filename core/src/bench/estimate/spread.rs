//! How far a time may be off: log-normal times, and what their sum comes to half the time and nine times in ten.
//!
//! Floats inside; whole minutes at the door. Chance comes in as a seed.

use super::super::Kind;
use crate::quantity::draw::Draw;
use crate::quantity::{Listed, Span, order_by};

/// A time that is not known: its logarithm is a bell curve. Half the time it takes `median` minutes or less.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Likely {
    /// Minutes, above nothing.
    pub median: f64,
    /// The standard deviation of its logarithm, never below nothing.
    pub spread: f64,
}

/// What is to be expected, in whole minutes: one time in ten less than `low`, half the time no more than `likely`, nine times in ten
/// no more than `safe`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Range {
    pub low: Span,
    pub likely: Span,
    pub safe: Span,
}

/// Draws of a simulation.
pub const DRAWS: usize = 2_000;

/// How sure a single time is when little is known of it: half of it to twice as much, nine times in ten. Ours.
pub const GUESS: f64 = 0.42;

/// What times in ten stand for low, likely and safe.
const TENTHS: [f64; 3] = [0.1, 0.5, 0.9];

/// Of past times of the same, in minutes: the middle of their logarithms, and how they spread; few of them are held near [`GUESS`],
/// which weighs as much as two (ours). The spread is for the next one, so it holds that the middle itself is not known well.
/// None without any.
pub fn of_past(times: &[f64]) -> Option<Likely> {
    let logs = || times.iter().filter(|time| 0.0 < **time).map(|time| libm::log(*time));
    let n = logs().fold(0.0, |n: f64, _| n + 1.0);
    let middle = (0.0 < n).then(|| logs().sum::<f64>() / n)?;
    let off: f64 = logs().map(|log| (log - middle) * (log - middle)).sum();
    let variance = (off + WEIGHT * GUESS * GUESS) / (n - 1.0 + WEIGHT);
    Some(Likely { median: libm::exp(middle), spread: (variance * (1.0 + 1.0 / n)).sqrt() })
}

const WEIGHT: f64 = 2.0;

impl Likely {
    /// A figure nobody measured.
    pub fn guessed(minutes: f64) -> Likely {
        Likely { median: minutes, spread: GUESS }
    }

    /// An hour, or half of it at the desk: what one operation takes while nothing at all is known of it.
    pub fn by_kind(kind: Kind) -> Likely {
        Likely::guessed(minutes(super::super::repair::default_span(kind)))
    }

    /// A time of which the middle is known, and what it does not pass nine times in ten; never surer than that.
    pub fn between(median: f64, safe: f64) -> Likely {
        let spread = if 0.0 < median && median < safe { libm::log(safe / median) / bell(0.9) } else { 0.0 };
        Likely { median, spread }
    }

    /// The minutes it does not pass with this chance, from 0 to 1.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::spread::Likely;
    /// let time = Likely { median: 60.0, spread: 0.3 };
    /// assert!((time.at(0.9) - 88.13).abs() < 0.005);
    /// ```
    pub fn at(self, chance: f64) -> f64 {
        self.median * libm::exp(self.spread * bell(chance))
    }

    /// What is left of it once it took so many minutes, given that it takes longer than they: half the time, and nine times in ten no more (of a
    /// log-normal time the part beyond them). Never less than a minute, and never more than of one that has just taken what was likely (ours), so
    /// that more work alone never makes it more.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::spread::Likely;
    /// let rest = Likely { median: 60.0, spread: 0.4 }.beyond(60.0);
    /// // Of those that pass their middle half take no more than the 75th in a hundred, and nine in ten no more than the 95th.
    /// assert!((rest.median - 18.58).abs() < 0.01 && (rest.at(0.9) - 55.85).abs() < 0.01);
    /// ```
    pub fn beyond(self, gone: f64) -> Likely {
        let spread = if 0.0 < self.spread { self.spread } else { GUESS };
        let left = |gone: f64, chance: f64| {
            let still_on = 0.5 * libm::erfc(libm::log(gone / self.median) / spread / std::f64::consts::SQRT_2);
            self.median * libm::exp(-spread * bell((1.0 - chance) * still_on)) - gone
        };
        let gone = gone.max(self.median);
        let [half, safe] = [0.5, 0.9].map(|chance| left(gone, chance).min(left(self.median, chance)).max(1.0));
        Likely::between(half, safe)
    }

    /// So many times as long.
    pub fn times(self, n: f64) -> Likely {
        Likely { median: self.median * n, ..self }
    }

    /// The middle in whole minutes.
    pub fn span(self) -> Span {
        whole(self.median)
    }
}

/// Minutes of a span.
pub fn minutes(span: Span) -> f64 {
    span.as_ms() as f64 / 60_000.0
}

/// Whole minutes, half up; the most there is where that is beyond it. A half that lost its last digit on the way is one still.
pub fn whole(minutes: f64) -> Span {
    Span::minutes((minutes + 0.5 + 1e-9).floor().max(0.0) as i64)
}

/// Several times in whole minutes that add up to the whole minutes of all, see [`Span::in_minutes`].
///
/// ```
/// use fivebar_core::bench::estimate::spread::in_minutes;
/// let minutes = in_minutes(&[120.5, 120.5, 60.3]).iter().map(|span| span.as_minutes()).collect::<Vec<_>>();
/// assert_eq!(minutes, [121, 120, 60]); // 301.3 in all
/// ```
pub fn in_minutes(times: &[f64]) -> Vec<Span> {
    let exact = times.iter().map(|time| Span::ms((time * 60_000.0 + 0.5).floor().max(0.0) as i64));
    Span::in_minutes(&exact.listed())
}

/// What several times come to together, each by its own chance: one is reckoned, of more [`DRAWS`] sums are drawn, each tenth,
/// hundredth and so on of every time once (Latin hypercube, McKay, Beckman and Conover 1979, recalled), and put in order.
/// The same seed gives the same answer, on every machine.
///
/// ```
/// use fivebar_core::bench::estimate::spread::{Likely, together};
/// let hour = Likely { median: 60.0, spread: 0.0 };
/// assert_eq!(together(&[hour, hour], 7).map(|range| range.safe.as_minutes()), Some(120));
/// ```
pub fn together(times: &[Likely], seed: u64) -> Option<Range> {
    let whole: Vec<Begun> = times.iter().map(|time| Begun { time: *time, gone: 0.0 }).listed();
    left(&whole, seed)
}

/// The mean of a time, and its variance: both add up over times that are off each for itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moments {
    pub mean: f64,
    pub variance: f64,
}

impl Moments {
    /// Of one log-normal time.
    pub fn of(time: Likely) -> Moments {
        let mean = time.median * libm::exp(time.spread * time.spread / 2.0);
        Moments { mean, variance: mean * mean * (libm::exp(time.spread * time.spread) - 1.0) }
    }

    /// Of what several times have left that run long or short together: weighed along the bell curve, every quarter of a standard deviation.
    ///
    /// ```
    /// use fivebar_core::bench::estimate::spread::{Begun, Likely, Moments};
    /// let time = Likely { median: 100.0, spread: 0.4 };
    /// let whole = Moments::left(&[Begun { time, gone: 0.0 }]);
    /// assert!((whole.mean - 108.329).abs() < 0.001 && (whole.variance - 2036.2).abs() < 0.2); // exp(0.08), (exp(0.16) - 1) exp(0.16)
    /// // Of what the most of it takes hardly anything is left.
    /// assert!(Moments::left(&[Begun { time, gone: 400.0 }]).mean < 0.1);
    /// ```
    pub fn left(times: &[Begun]) -> Moments {
        let nodes = (-FAR..=FAR).map(|nth| f64::from(nth) * NODE);
        let all = nodes.map(|bell| (libm::exp(-bell * bell / 2.0), times.iter().map(|time| time.left(bell)).sum::<f64>())).listed();
        let weight: f64 = all.iter().map(|(weight, _)| weight).sum();
        let mean = all.iter().map(|(weight, left)| weight * left).sum::<f64>() / weight;
        let variance = all.iter().map(|(weight, left)| weight * (left - mean) * (left - mean)).sum::<f64>() / weight;
        Moments { mean, variance }
    }

    /// Of a time of which only the middle is known and what it does not pass nine times in ten: as if it were off as far to both sides (ours).
    pub fn between(median: f64, safe: f64) -> Moments {
        let off = (safe - median).max(0.0) / bell(0.9);
        Moments { mean: median, variance: off * off }
    }
}

/// The bell curve is weighed at so many places on either side, so many standard deviations apart.
const FAR: i32 = 20;
const NODE: f64 = 0.25;

/// What many times come to together, as one: a log-normal time of the same mean and the same variance (L. F. Fenton 1960, recalled). Nothing
/// is drawn, so that the sum of many jobs costs no more than each of them.
///
/// ```
/// use fivebar_core::bench::estimate::spread::{Likely, Moments, sum};
/// let all = sum(&[Moments::of(Likely { median: 100.0, spread: 0.4 }); 4]);
/// // Of 40 000 sums that were drawn elsewhere half were no more than 424.2, and nine tenths no more than 554.5.
/// assert!((all.median - 424.21).abs() < 0.005 && (all.at(0.9) - 552.42).abs() < 0.005);
/// ```
pub fn sum(times: &[Moments]) -> Likely {
    let (all, off): (f64, f64) = (times.iter().map(|time| time.mean).sum(), times.iter().map(|time| time.variance).sum());
    if all <= 0.0 {
        return Likely { median: 0.0, spread: 0.0 };
    }
    let square = libm::log(1.0 + off / (all * all));
    Likely { median: all * libm::exp(-square / 2.0), spread: square.sqrt() }
}

/// A time of which some minutes have gone by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Begun {
    pub time: Likely,
    pub gone: f64,
}

impl Begun {
    /// What is left where it runs so many standard deviations long: never below nothing.
    fn left(&self, bell: f64) -> f64 {
        (self.time.median * libm::exp(self.time.spread * bell) - self.gone).max(0.0)
    }

    /// The minutes that what is left does not pass with this chance, from 0 to 1.
    pub fn at(&self, chance: f64) -> f64 {
        self.left(bell(chance))
    }
}

/// What is left of several times together, drawn as in [`together`]: of each what it takes in all less what has gone by, never below nothing.
///
/// ```
/// use fivebar_core::bench::estimate::spread::{Begun, Likely, left};
/// let time = Likely { median: 60.0, spread: 0.3 }; // nine times in ten no more than 88
/// let range = left(&[Begun { time, gone: 20.0 }], 7).unwrap();
/// assert_eq!([range.likely, range.safe].map(|span| span.as_minutes()), [40, 68]);
/// ```
pub fn left(times: &[Begun], seed: u64) -> Option<Range> {
    let [low, likely, safe] = match times {
        [] => return None,
        [one] => TENTHS.map(|tenth| one.at(tenth)),
        many => drawn(many, seed),
    };
    Some(Range { low: whole(low), likely: whole(likely), safe: whole(safe) })
}

fn drawn(times: &[Begun], seed: u64) -> [f64; 3] {
    let mut lots = Draw::seeded(seed);
    let mut bells: Vec<f64> = (0..DRAWS).map(|nth| bell((nth as f64 + 0.5) / DRAWS as f64)).collect();
    let mut sums = vec![0.0; DRAWS];
    for time in times {
        for place in (1..DRAWS).rev() {
            bells.swap(place, lots.below(place.saturating_add(1)));
        }
        for (sum, bell) in sums.iter_mut().zip(&bells) {
            *sum += time.left(*bell);
        }
    }
    order_by(&mut sums, f64::total_cmp);
    // Between the two draws around it: of so many draws none lies on a tenth itself.
    TENTHS.map(|tenth| {
        let above = (tenth * DRAWS as f64) as usize;
        let at = |place: usize| sums.get(place).copied().unwrap_or_default();
        f64::midpoint(at(above.saturating_sub(1)), at(above))
    })
}

/// How many standard deviations a bell curve stays below with this chance, from 0 to 1; its ends are as far as floats go.
/// Source: P. J. Acklam's rational approximation, to 1.2 in 10^9 (recalled).
pub fn bell(chance: f64) -> f64 {
    let chance = chance.clamp(f64::MIN_POSITIVE, 1.0 - f64::EPSILON / 2.0);
    if chance < TAIL {
        return tail((-2.0 * libm::log(chance)).sqrt());
    }
    if 1.0 - TAIL < chance {
        return -tail((-2.0 * libm::log(1.0 - chance)).sqrt());
    }
    let (q, r) = (chance - 0.5, (chance - 0.5) * (chance - 0.5));
    let [a, b] = [MIDDLE_OVER, MIDDLE_UNDER].map(|row| row.iter().fold(0.0, |sum, c| sum * r + c));
    q * a / (b * r + 1.0)
}

const TAIL: f64 = 0.024_25;
const MIDDLE_OVER: [f64; 6] = [
    -39.696_830_286_653_76,
    220.946_098_424_520_5,
    -275.928_510_446_968_7,
    138.357_751_867_269,
    -30.664_798_066_147_16,
    2.506_628_277_459_239,
];
const MIDDLE_UNDER: [f64; 6] =
    [0.0, -54.476_098_798_224_06, 161.585_836_858_040_9, -155.698_979_859_886_6, 66.801_311_887_719_72, -13.280_681_552_885_72];
const TAIL_OVER: [f64; 6] = [
    -0.007_784_894_002_430_293,
    -0.322_396_458_041_136_5,
    -2.400_758_277_161_838,
    -2.549_732_539_343_734,
    4.374_664_141_464_968,
    2.938_163_982_698_783,
];
const TAIL_UNDER: [f64; 4] = [0.007_784_695_709_041_462, 0.322_467_129_070_039_8, 2.445_134_137_142_996, 3.754_408_661_907_416];

fn tail(q: f64) -> f64 {
    let over = TAIL_OVER.iter().fold(0.0, |sum, c| sum * q + c);
    let under = TAIL_UNDER.iter().fold(0.0, |sum, c| sum * q + c);
    over / (under * q + 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn range(times: &[(f64, f64)], seed: u64) -> [i64; 3] {
        let times: Vec<Likely> = times.iter().map(|(median, spread)| Likely { median: *median, spread: *spread }).collect();
        let range = together(&times, seed).unwrap();
        [range.low, range.likely, range.safe].map(Span::as_minutes)
    }

    #[test]
    fn tenths_of_a_sum_lie_between_all_alike_and_all_apart() {
        assert_eq!(together(&[], 1), None);
        assert_eq!(range(&[(100.0, 0.0), (20.0, 0.0)], 1), [120, 120, 120]);
        let one = range(&[(400.0, 0.4)], 1);
        let four = range(&[(100.0, 0.4); 4], 1);
        assert_eq!(one, [240, 400, 668]);
        assert!(one[0] < four[0] && four[2] < one[2], "{four:?}: what is long in one is short in another");
        assert!(400 < four[1], "{four:?}: a long tail lifts the middle of a sum");
    }

    /// Reckoned as one, beside what is drawn.
    #[test]
    fn a_sum_that_is_reckoned_is_near_one_that_is_drawn() {
        let check = |times: &[(f64, f64)]| {
            let likely: Vec<Likely> = times.iter().map(|(median, spread)| Likely { median: *median, spread: *spread }).collect();
            let each = likely.iter().copied().map(Moments::of).collect::<Vec<_>>();
            let (all, drawn) = (sum(&each), together(&likely, 1).unwrap());
            let off = |chance: f64, span: Span| (all.at(chance) / minutes(span) - 1.0).abs();
            assert!(off(0.5, drawn.likely) < 0.02 && off(0.9, drawn.safe) < 0.02, "{times:?}: {all:?} {drawn:?}");
        };
        check(&[(84.0, 0.306), (504.0, 0.306)]);
        check(&[(100.0, 0.42); 8]);
        check(&[(600.0, 0.6), (60.0, 0.2), (0.0, 0.0)]);
        let nothing = Moments::of(Likely { median: 0.0, spread: 0.0 });
        assert_eq!([sum(&[]), sum(&[nothing])].map(|all| all.at(0.9)), [0.0, 0.0]);
    }

    /// Beside a time of ten hours another as long of which so much has gone by: as it goes on, what both have left nine times in ten falls, and
    /// stays near what is drawn.
    #[test]
    fn what_is_left_of_many_falls_as_they_go_on() {
        let time = Likely { median: 600.0, spread: 0.42 };
        let safe = |gone: f64| {
            let each = [Begun { time, gone: 0.0 }, Begun { time, gone }];
            let each_safely: f64 = each.map(|one| one.at(0.9)).iter().sum();
            let reckoned = sum(&each.map(|one| Moments::left(&[one]))).at(0.9).min(each_safely);
            let drawn = minutes(left(&each, 1).unwrap().safe);
            assert!((reckoned / drawn - 1.0).abs() < 0.03, "{gone}: {reckoned} {drawn}");
            reckoned
        };
        let all = [0.0, 300.0, 540.0, 570.0, 590.0, 598.0, 700.0, 1000.0, 5000.0].map(safe);
        assert!(all.is_sorted_by(|one, next| one >= next), "{all:?}");
    }

    /// The pin: same seed, same figures, natively and in wasm.
    #[test]
    fn the_same_seed_gives_the_same_answer() {
        let times = [(212.0, 0.2), (171.0, 0.3), (118.0, 0.25), (268.0, 0.2)];
        assert_eq!(range(&times, 7), range(&times, 7));
        assert_eq!(range(&times, 7), PINNED);
        for seed in 0..20 {
            let other = range(&times, seed);
            assert!((0..3).all(|nth| (other[nth] - PINNED[nth]).abs() <= 9), "{seed}: {other:?}");
        }
    }

    const PINNED: [i64; 3] = [675, 785, 913];

    #[test]
    fn past_times_say_their_middle_and_how_sure_they_are() {
        let of = |times: &[f64]| of_past(times).map(|time| (time.median.round(), (time.spread * 100.0).round()));
        assert_eq!(of(&[]), None);
        assert_eq!(of(&[0.0, -4.0]), None);
        assert_eq!(of(&[60.0]), Some((60.0, 59.0)), "one alone says little");
        assert_eq!(of(&[60.0, 60.0]), Some((60.0, 42.0)));
        assert_eq!(of(&[60.0; 12]), Some((60.0, 17.0)));
        assert_eq!(of(&[30.0, 120.0]), Some((60.0, 81.0)));
    }

    #[test]
    fn minutes_are_whole_at_the_door() {
        let cases = [(0.0, 0), (0.49, 0), (0.5, 1), (1526.31, 1526), (-4.0, 0), (f64::NAN, 0)];
        for (minutes, span) in cases {
            assert_eq!(whole(minutes), Span::minutes(span), "{minutes}");
        }
        assert_eq!(whole(f64::INFINITY), Span::minutes(i64::MAX));
    }
}
