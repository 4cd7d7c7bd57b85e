//! Counting by weight, and by layers: how many pieces a pile holds without touching each.

use super::Pile;
use super::pile::Weighed as WeighedBefore;
use super::sample::{BY_CHANCE, off_within, spread_of};
use crate::quantity::chance::{BELL_95, student};
use crate::quantity::{Count, Decimal, Grams, Listed, Mass, PILE_MOST};
use crate::refusal::{Answer, Refusal};
use rust_decimal::prelude::ToPrimitive;

/// Fewer counted pieces say too little of a pile's weight.
pub const SAMPLE_LEAST: Count = 5;

/// What stands on the scale, and what of it is no wood: a box, a strap, a cart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnScale {
    pub shows: Grams,
    pub tare: Grams,
}

impl OnScale {
    pub fn bare(shows: Grams) -> OnScale {
        OnScale { shows, tare: Grams::ZERO }
    }

    /// The wood alone.
    ///
    /// # Errors
    /// [`Refusal::UnderTare`] where no wood is left.
    pub fn wood(self) -> Answer<Grams> {
        if self.shows <= self.tare { Err(Refusal::UnderTare { met: self.shows, tare: self.tare }) } else { Ok(self.shows.less(self.tare)) }
    }
}

/// How much single pieces differ in weight: standard deviation over mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    share: f64,
    /// Standard deviations either way at 95 %.
    reach: f64,
}

impl Spread {
    /// Ours: pieces cut to one size.
    pub const ONE_SIZE: Spread = Spread::guess(0.10);
    /// Ours: pieces of a length band.
    pub const BAND: Spread = Spread::guess(0.20);

    /// A share that was said, not measured.
    pub const fn guess(share: f64) -> Spread {
        Spread { share, reach: BELL_95 }
    }

    /// The guess for a pile, by whether it has a length band.
    pub fn usual(pile: &Pile) -> Spread {
        if pile.length_to.is_some() { Self::BAND } else { Self::ONE_SIZE }
    }

    /// From the weights of single pieces; `None` for fewer than two.
    ///
    /// # Errors
    /// [`Refusal::UnderTare`] for a piece without weight.
    pub fn measured(pieces: &[Grams]) -> Answer<Option<Spread>> {
        if pieces.contains(&Grams::ZERO) {
            return Err(Refusal::UnderTare { met: Grams::ZERO, tare: Grams::ZERO });
        }
        let weights: Vec<f64> = pieces.iter().map(|grams| f64::from(grams.as_grams())).listed();
        let free = Count::try_from(pieces.len()).ok().and_then(|n| n.checked_sub(1));
        let reach = free.and_then(|free| student(BY_CHANCE, free));
        Ok(spread_of(&weights).zip(reach).map(|(share, reach)| Spread { share, reach }))
    }

    /// As it was written down: found by so many single weights, else a guess.
    pub fn written(share: f64, singles: Option<Count>) -> Spread {
        let reach = singles.and_then(|n| student(BY_CHANCE, n.saturating_sub(1)));
        Spread { share, reach: reach.unwrap_or(BELL_95) }
    }

    pub fn share(self) -> f64 {
        self.share
    }

    /// The share in thousandths, as it is written down.
    pub fn as_decimal(self) -> Decimal {
        Decimal::from_f64_retain(self.share).unwrap_or_default().round_dp(3)
    }
}

impl Pile {
    /// So many pieces either way the count may be off at 95 %, by what was counted by weight; `None` where nothing was. Several
    /// weighings are off each for itself: their spreads add up in squares.
    pub fn count_off(&self) -> Option<Count> {
        let counting = self.weighed.iter().filter(|weighed| weighed.counts);
        let squares = counting.filter_map(|weighed| weighed.off_in_pieces(self)).map(|off| off * off);
        let squares: Vec<f64> = squares.listed();
        // A float turned whole stops at the limits of its type.
        (!squares.is_empty()).then(|| squares.iter().sum::<f64>().sqrt().ceil() as Count)
    }

    /// What it weighs by the pieces of it that were weighed, and how far that may be off at 95 %, as a share; `None` where none were.
    /// Pieces that were counted by weight weigh what the scale showed, less the tare; what is counted beside them weighs as the mean of
    /// the samples.
    pub fn weighs(&self) -> Option<Weighs> {
        let of_sample = |sum: (Count, f64), weighed: &WeighedBefore| {
            (sum.0.saturating_add(weighed.sample), sum.1 + weighed.sample_weight as f64 / 1000.0)
        };
        let (sample, mass) = self.weighed.iter().fold((0, 0.0), of_sample);
        let spread = self.weighed.last().filter(|_| 0 < sample)?.spread(self);
        let mean = mass / f64::from(sample);
        let counted = self.weighed.iter().filter(|weighed| weighed.counts);
        let (by_weight, on_scale) = counted.fold((0.0, 0.0), |(pieces, kg), weighed| {
            let n = weighed.counted_so(self).map_or(0.0, |found| f64::from(found.n));
            (pieces + n, kg + (weighed.weight.saturating_sub(weighed.tare)) as f64 / 1000.0)
        });
        let beside = (f64::from(self.taken) - by_weight) * mean;
        let all = (on_scale + beside).max(0.0);
        let off = spread.reach * spread.share * off_within(sample, self.taken.max(sample));
        let beside = if all <= 0.0 { 0.0 } else { (beside.abs() / all).min(1.0) };
        Some(Weighs { mass: Mass::kg(all), off: off * beside })
    }
}

/// The weight of a pile by what was weighed of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighs {
    pub mass: Mass,
    /// So far it may be off at 95 %, as a share.
    pub off: f64,
}

impl WeighedBefore {
    fn spread(&self, pile: &Pile) -> Spread {
        let share = self.spread.and_then(|spread| spread.to_f64());
        share.map_or_else(|| Spread::usual(pile), |share| Spread::written(share, self.singles))
    }

    /// How far the count it gave may be off at 95 %, in pieces.
    fn off_in_pieces(&self, pile: &Pile) -> Option<f64> {
        self.counted_so(pile).map(|weighed| self.spread(pile).reach * weighed.spread)
    }

    /// The count it gave.
    fn counted_so(&self, pile: &Pile) -> Option<Weighed> {
        let on_scale = |shows, tare| Some(OnScale { shows: Grams::new(shows).ok()?, tare: Grams::new(tare).ok()? });
        let (sample, whole) = (on_scale(self.sample_weight, 0)?, on_scale(self.weight, self.tare)?);
        let weighing = Weighing { counted: self.sample, sample, pile: whole };
        weighing.count(self.spread(pile)).ok()
    }
}

/// A pile counted by weight: a sample of it on the scale, put back, then all of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Weighing {
    /// Pieces of the sample.
    pub counted: Count,
    pub sample: OnScale,
    pub pile: OnScale,
}

/// What a weighing comes to: the count, and between which counts it lies at 95 %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    pub n: Count,
    pub least: Count,
    pub most: Count,
    /// One standard deviation, in pieces.
    pub spread: f64,
}

impl Weighing {
    /// The pieces of the pile: its weight over the mean weight of the sample, half up. The count may be off by
    /// N c sqrt(1/k - 1/N), one standard deviation.
    ///
    /// # Errors
    /// [`Refusal::SampleTooSmall`], [`Refusal::UnderTare`], [`Refusal::SampleTooHeavy`], [`Refusal::TooManyPieces`].
    ///
    /// ```
    /// use fivebar_core::{haul::weighing::{OnScale, Spread, Weighing}, quantity::Grams};
    /// let on_scale = |grams| OnScale::bare(Grams::new(grams).unwrap());
    /// let weighing = Weighing { counted: 10, sample: on_scale(4_000), pile: on_scale(41_000) };
    /// let weighed = weighing.count(Spread::ONE_SIZE).unwrap();
    /// assert_eq!((weighed.n, weighed.least, weighed.most), (103, 96, 110));
    /// ```
    pub fn count(&self, spread: Spread) -> Answer<Weighed> {
        if self.counted < SAMPLE_LEAST {
            return Err(Refusal::SampleTooSmall { met: self.counted, least: SAMPLE_LEAST });
        }
        let (sample, pile) = (self.sample.wood()?, self.pile.wood()?);
        if pile < sample {
            return Err(Refusal::SampleTooHeavy { sample, pile });
        }
        let n = in_pile(pieces(pile, self.counted, sample))?;
        Ok(self.between(n, f64::from(n) * spread.share * off_within(self.counted, n), spread.reach))
    }

    /// Outwards to whole pieces, never fewer than were counted.
    fn between(&self, n: Count, spread: f64, reach: f64) -> Weighed {
        // A float turned whole stops at the limits of its type.
        let (low, high) = ((f64::from(n) - reach * spread).floor() as Count, (f64::from(n) + reach * spread).ceil() as Count);
        Weighed { n, least: low.max(self.counted), most: high, spread }
    }
}

/// pile x counted / sample, half up.
fn pieces(pile: Grams, counted: Count, sample: Grams) -> u64 {
    let (pile, counted, sample) = (u64::from(pile.as_grams()), u64::from(counted), u64::from(sample.as_grams()));
    let twice = pile.saturating_mul(counted).saturating_mul(2).saturating_add(sample);
    twice.checked_div(sample.saturating_mul(2)).unwrap_or(0)
}

fn in_pile(n: u64) -> Answer<Count> {
    let n = Count::try_from(n).unwrap_or(Count::MAX);
    if PILE_MOST < n { Err(Refusal::TooManyPieces { would_be: n, most: PILE_MOST }) } else { Ok(n) }
}

/// Counted by layers: so many in each, so many layers, and the rest.
///
/// # Errors
/// [`Refusal::NothingAsked`] for none, [`Refusal::TooManyPieces`].
///
/// ```
/// use fivebar_core::haul::weighing::layers;
/// assert_eq!(layers(12, 7, 5), Ok(89));
/// ```
pub fn layers(in_each: Count, layers: Count, rest: Count) -> Answer<Count> {
    match u64::from(in_each).saturating_mul(u64::from(layers)).saturating_add(u64::from(rest)) {
        0 => Err(Refusal::NothingAsked),
        n => in_pile(n),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Id, Length, Moment};

    fn g(grams: i64) -> Grams {
        Grams::new(grams).unwrap()
    }

    fn weighing(counted: Count, sample: i64, (pile, tare): (i64, i64)) -> Weighing {
        Weighing { counted, sample: OnScale::bare(g(sample)), pile: OnScale { shows: g(pile), tare: g(tare) } }
    }

    #[track_caller]
    fn check(weighing: Weighing, spread: Spread, wanted: (Count, Count, Count)) {
        let found = weighing.count(spread).map(|found| (found.n, found.least, found.most));
        assert_eq!(found, Ok(wanted));
    }

    /// By hand: 100 x 0.1 x sqrt(1/10 - 1/100) = 3.00, x 1.96 = 5.88.
    #[test]
    fn the_count_and_how_far_it_may_be_off() {
        check(weighing(10, 4_000, (40_000, 0)), Spread::ONE_SIZE, (100, 94, 106));
        check(weighing(10, 4_000, (41_500, 1_500)), Spread::ONE_SIZE, (100, 94, 106));
        check(weighing(10, 4_000, (40_000, 0)), Spread::BAND, (100, 88, 112));
        check(weighing(5, 2_000, (2_199, 0)), Spread::BAND, (5, 5, 5)); // nearest: 5.4975
        check(weighing(5, 2_000, (2_200, 0)), Spread::BAND, (6, 5, 7)); // half up
    }

    /// Five pieces of 380 to 420 g: 3.95 % among themselves, and Student's 2.776 for four degrees of freedom.
    #[test]
    fn single_weights_say_the_spread() {
        let singles = [380, 390, 400, 410, 420].map(g);
        let spread = Spread::measured(&singles).unwrap().unwrap();
        assert!((spread.share() - 0.039_528).abs() < 1e-6);
        check(weighing(5, 2_000, (40_000, 0)), spread, (100, 95, 105));
        let alike = Spread::measured(&[400, 400].map(g)).unwrap().unwrap();
        check(weighing(5, 2_000, (40_000, 0)), alike, (100, 100, 100));
        assert_eq!((Spread::measured(&[]), Spread::measured(&[g(400)])), (Ok(None), Ok(None)));
        let nothing = Refusal::UnderTare { met: g(0), tare: g(0) };
        assert_eq!(Spread::measured(&[g(400), g(0)]), Err(nothing));
    }

    #[test]
    fn a_band_spreads_wider() {
        let pile = Pile::new(Id::new(Moment::at(0), [1; 10]));
        assert_eq!(Spread::usual(&pile), Spread::ONE_SIZE);
        assert_eq!(Spread::usual(&Pile { length: Some(Length::FOOT), length_to: Some(Length::METRE), ..pile }), Spread::BAND);
    }

    #[test]
    fn what_is_refused() {
        let refused = |weighing: Weighing, why| assert_eq!(weighing.count(Spread::ONE_SIZE), Err(why));
        refused(weighing(4, 1_600, (40_000, 0)), Refusal::SampleTooSmall { met: 4, least: 5 });
        refused(weighing(0, 0, (0, 0)), Refusal::SampleTooSmall { met: 0, least: 5 });
        refused(weighing(5, 2_001, (2_000, 0)), Refusal::SampleTooHeavy { sample: g(2_001), pile: g(2_000) });
        refused(weighing(5, 2_000, (1_500, 1_500)), Refusal::UnderTare { met: g(1_500), tare: g(1_500) });
        refused(weighing(5, 2_000, (1_400, 1_500)), Refusal::UnderTare { met: g(1_400), tare: g(1_500) });
        refused(weighing(5, 0, (2_000, 0)), Refusal::UnderTare { met: g(0), tare: g(0) });
        refused(weighing(5, 2_000, (0, 0)), Refusal::UnderTare { met: g(0), tare: g(0) });
        refused(weighing(5, 5, (10_000, 0)), Refusal::TooManyPieces { would_be: 10_000, most: 9_999 });
        refused(weighing(Count::MAX, 1, (10_000_000, 0)), Refusal::TooManyPieces { would_be: Count::MAX, most: 9_999 });
    }

    #[test]
    fn by_layers() {
        assert_eq!(layers(12, 7, 0), Ok(84));
        assert_eq!(layers(0, 0, 5), Ok(5));
        assert_eq!(layers(101, 99, 0), Ok(9_999));
        assert_eq!(layers(0, 7, 0), Err(Refusal::NothingAsked));
        assert_eq!(layers(100, 100, 0), Err(Refusal::TooManyPieces { would_be: 10_000, most: 9_999 }));
        assert_eq!(layers(Count::MAX, Count::MAX, Count::MAX), Err(Refusal::TooManyPieces { would_be: Count::MAX, most: 9_999 }));
    }
}
