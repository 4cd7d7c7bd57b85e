//! Sizes by sample: some pieces of a pile measured, the mean of all of them, and how far it may be off.
//!
//! Source: mean of a simple random sample from a finite population, with Student's t.

use super::{Measured, Pile};
use crate::quantity::chance::{BELL_95, student};
use crate::quantity::{Count, Length, Listed, Units, Volume};
use crate::refusal::{Answer, Refusal};

/// Intervals hold what they speak of nineteen times in twenty.
pub const BY_CHANCE: f64 = 0.95;
/// Ours: how far the volume of a pile cut to one size may be off when no piece was measured, as a share.
pub const VOLUME_OFF_ONE_SIZE: f64 = 0.05;
/// Ours: the same for a pile with a length band.
pub const VOLUME_OFF_BAND: f64 = 0.15;

/// The sides of one measured piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sides {
    pub thickness: Length,
    pub width: Length,
    pub length: Length,
}

/// A mean, and how far either way it may be off at 95 %, as a share of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mean<Q> {
    pub mean: Q,
    /// `None` when one piece alone was measured.
    pub off: Option<f64>,
}

/// What a sample says of its pile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    pub thickness: Mean<Length>,
    pub width: Mean<Length>,
    pub length: Mean<Length>,
    /// Of one piece. Not the three means multiplied: long pieces may be the thick ones.
    pub volume: Mean<Volume>,
}

/// The sizes of a pile of so many pieces, by those of it that were measured.
///
/// # Errors
/// [`Refusal::NothingAsked`] without any, [`Refusal::SampleMoreThanPile`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{haul::sample::{Sides, sizes}, quantity::Length};
/// let inches = |n: i64| Length::INCH.times(n).unwrap();
/// let sides = |length| Sides { thickness: inches(1), width: inches(2), length: inches(length) };
/// let found = sizes(&[sides(18), sides(20), sides(22)], 40).unwrap();
/// assert_eq!(found.length.mean, inches(20));
/// assert!((found.length.off.unwrap() * 20.0 - 4.778).abs() < 0.0005); // 4.303 x 2 / sqrt 3 x sqrt(37 / 40)
/// ```
pub fn sizes(measured: &[Sides], of: Count) -> Answer<Sizes> {
    let side = |side: fn(&Sides) -> Length| length(&measured.iter().map(side).listed(), of);
    let volumes = measured.iter().map(|piece| Volume::of(piece.thickness, piece.width, piece.length)).collect::<Answer<Vec<_>>>()?;
    Ok(Sizes {
        thickness: side(|piece| piece.thickness)?,
        width: side(|piece| piece.width)?,
        length: side(|piece| piece.length)?,
        volume: volume(&volumes, of)?,
    })
}

/// The mean of one side, half up to a nanometre.
///
/// # Errors
/// [`Refusal::NothingAsked`] without any, [`Refusal::SampleMoreThanPile`], [`Refusal::OutOfRange`].
pub fn length(measured: &[Length], of: Count) -> Answer<Mean<Length>> {
    let n = sampled(measured.len(), of)?;
    let sum = measured.iter().try_fold(Length::ZERO, |sum, side| sum.plus(*side))?;
    let half_more = sum.as_nm().checked_add(i64::from(n).div_euclid(2)).ok_or(Refusal::OutOfRange)?;
    let mean = Length::nm(half_more.div_euclid(i64::from(n)))?;
    let sides: Vec<f64> = measured.iter().map(|side| side.as_nm() as f64).listed();
    Ok(Mean { mean, off: off(&sides, n, of) })
}

/// The mean volume of a piece, down to a cubic nanometre.
///
/// # Errors
/// [`Refusal::NothingAsked`] without any, [`Refusal::SampleMoreThanPile`], [`Refusal::OutOfRange`].
pub fn volume(measured: &[Volume], of: Count) -> Answer<Mean<Volume>> {
    let n = sampled(measured.len(), of)?;
    let sum = measured.iter().try_fold(Volume::ZERO, |sum, piece| sum.plus(*piece))?;
    let volumes: Vec<f64> = measured.iter().map(|piece| piece.cubic_metres()).listed();
    Ok(Mean { mean: sum.over(n)?, off: off(&volumes, n, of) })
}

impl Mean<Length> {
    /// The mean and its ends with no more digits than the measurement deserves: to the largest step that is no more than half of what
    /// the mean may be off, the ends outwards. As measured where nothing is known of that. Ours.
    ///
    /// ```
    /// use fivebar_core::{haul::sample::length, quantity::{Length, Units}};
    /// let mm = |n: i64| Length::MM.times(n).unwrap();
    /// let found = length(&[mm(451), mm(498), mm(517)], 40).unwrap();
    /// // 488.67, 81 either way
    /// assert_eq!(found.shown(Units::Metric), (mm(490), Some((mm(400), mm(570)))));
    /// ```
    pub fn shown(&self, units: Units) -> (Length, Option<(Length, Length)>) {
        let (low, high) = self.ends();
        let off = high.as_nm().saturating_sub(self.mean.as_nm());
        let (coarse, parts): (Length, &[i64]) = match units {
            Units::Inch => (Length::INCH, &[1, 2, 4, 8, 16, 32]),
            Units::Metric => (Length::CM, &[1, 2, 10, 20]),
        };
        let steps = parts.iter().map(|part| coarse.as_nm().checked_div(*part).unwrap_or(1));
        let fine = if units == Units::Inch { Length::INCH_64TH } else { Length::TENTH_MM };
        let step = steps.into_iter().find(|step| step.saturating_mul(2) <= off).unwrap_or(fine.as_nm());
        let to = |nm: i64, more: i64| {
            let whole = nm.saturating_add(more).checked_div(step).unwrap_or(nm).saturating_mul(step);
            Length::nm(whole).unwrap_or(self.mean)
        };
        let half = step.checked_div(2).unwrap_or(0);
        let ends = self.off.map(|_| (to(low.as_nm(), 0), to(high.as_nm(), step.saturating_sub(1))));
        (if self.off.is_some() { to(self.mean.as_nm(), half) } else { self.mean }, ends)
    }

    /// The ends between which the mean of the whole pile lies, to a nanometre; the mean itself twice without an interval.
    pub fn ends(&self) -> (Length, Length) {
        let nm = self.mean.as_nm();
        // A float turned whole stops at the limits of its type.
        let off = (nm as f64 * self.off.unwrap_or(0.0)).round() as i64;
        let end = |nm: i64| Length::nm(nm.max(0)).unwrap_or(self.mean);
        (end(nm.saturating_sub(off)), end(nm.saturating_add(off)))
    }
}

impl Pile {
    /// The mean volume of the pieces that were measured. A side that was not measured is the pile's own, but a length of a band is
    /// none. A pile that was counted again below what was measured is as large as its sample.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn sampled(&self) -> Answer<Option<Mean<Volume>>> {
        let volumes = self.measured_volumes()?;
        let there = self.taken.max(Count::try_from(volumes.len()).unwrap_or(Count::MAX));
        (!volumes.is_empty()).then(|| volume(&volumes, there)).transpose()
    }

    /// So many pieces more to measure until the volume is off by no more than a share; none where it is already, `None` before two were
    /// measured.
    pub fn still_to_measure(&self, within: f64) -> Option<Count> {
        let volumes: Vec<f64> = self.measured_volumes().ok()?.iter().map(|piece| piece.cubic_metres()).collect();
        let measured = Count::try_from(volumes.len()).ok()?;
        let spread = spread_of(&volumes)?;
        let needed = if 0.0 < spread { pieces_to_measure(spread, within, Some(self.taken)).ok()? } else { 0 };
        Some(needed.min(self.taken).saturating_sub(measured))
    }

    fn measured_volumes(&self) -> Answer<Vec<Volume>> {
        let length = self.length.filter(|_| self.length_to.is_none());
        let sides = |piece: &Measured| Some((piece.thickness.or(self.thickness)?, piece.width.or(self.width)?, piece.length.or(length)?));
        let whole = self.measured.iter().filter_map(sides);
        whole.map(|(t, w, l)| Volume::of(t, w, l)).collect()
    }

    /// How far the volume of the pile may be off, as a share: by what was measured, else by whether it has a length band.
    pub fn volume_off(&self, measured: Option<Mean<Volume>>) -> f64 {
        let usual = if self.length_to.is_some() { VOLUME_OFF_BAND } else { VOLUME_OFF_ONE_SIZE };
        measured.and_then(|mean| mean.off).unwrap_or(usual)
    }
}

/// How many pieces were measured: at least one, and no more than there are.
fn sampled(measured: usize, of: Count) -> Answer<Count> {
    let n = Count::try_from(measured).map_err(|_| Refusal::OutOfRange)?;
    match n {
        0 => Err(Refusal::NothingAsked),
        n if of < n => Err(Refusal::SampleMoreThanPile { measured: n, there: of }),
        n => Ok(n),
    }
}

/// t c sqrt(1/k - 1/N), and nothing when every piece was measured.
fn off(measured: &[f64], n: Count, of: Count) -> Option<f64> {
    if n == of {
        return Some(0.0);
    }
    let reach = student(BY_CHANCE, n.saturating_sub(1))?;
    spread_of(measured).map(|spread| reach * spread * off_within(n, of))
}

/// Standard deviation over mean, with k - 1 in it. `None` for fewer than two, and for a mean of nothing.
pub(super) fn spread_of(measured: &[f64]) -> Option<f64> {
    let n = measured.len() as f64;
    let mean = measured.iter().sum::<f64>() / n;
    let squares: f64 = measured.iter().map(|one| (one - mean) * (one - mean)).sum();
    (1.0 < n && 0.0 < mean).then(|| (squares / (n - 1.0)).sqrt() / mean)
}

/// The finite-population factor of a mean of k of N pieces, over their spread: sqrt(1/k - 1/N), nothing when k is N.
pub fn off_within(k: Count, of: Count) -> f64 {
    (1.0 / f64::from(k) - 1.0 / f64::from(of)).max(0.0).sqrt()
}

/// How many pieces to measure so that the mean is off by no more than `within` at 95 %, when single pieces spread by `spread`, both
/// as a share of the mean; or so that the share of rejects is, with a spread of 0.5. n0 = (1.96 spread / within)^2 without end, and
/// n0 / (1 + (n0 - 1) / N) of a pile of N, up to a whole piece.
///
/// # Errors
/// [`Refusal::NothingAsked`] unless both are above nothing.
///
/// ```
/// use fivebar_core::haul::sample::pieces_to_measure;
/// assert_eq!(pieces_to_measure(0.15, 0.02, None), Ok(217)); // to weigh pieces that differ by 15 %
/// assert_eq!(pieces_to_measure(0.5, 0.05, Some(200)), Ok(132)); // to sort of 200
/// ```
pub fn pieces_to_measure(spread: f64, within: f64, of: Option<Count>) -> Answer<Count> {
    let fits = |share: f64| share.is_finite() && 0.0 < share;
    if !(fits(spread) && fits(within)) {
        return Err(Refusal::NothingAsked);
    }
    let endless = (BELL_95 * spread / within) * (BELL_95 * spread / within);
    let n = of.map_or(endless, |of| endless / (1.0 + (endless - 1.0).max(0.0) / f64::from(of.max(1))));
    // A float turned whole stops at the limits of its type.
    Ok(n.ceil().max(1.0) as Count)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Id, Moment};

    fn mm(n: i64) -> Length {
        Length::MM.times(n).unwrap()
    }

    #[track_caller]
    fn check(measured: &[i64], of: Count, mean: Length, off: Option<&str>) {
        let sides: Vec<_> = measured.iter().map(|n| mm(*n)).collect();
        let found = length(&sides, of).unwrap();
        assert_eq!((found.mean, found.off.map(|off| format!("{off:.5}")).as_deref()), (mean, off));
    }

    /// By hand: 2 / 20 spread, t 4.30265, sqrt(1/3 - 1/40).
    #[test]
    fn a_mean_and_how_far_it_may_be_off() {
        check(&[18, 20, 22], 40, mm(20), Some("0.23892"));
        check(&[18, 20, 22], 3, mm(20), Some("0.00000"));
        check(&[20, 20, 20], 40, mm(20), Some("0.00000"));
        check(&[500], 40, mm(500), None);
        check(&[500], 1, mm(500), Some("0.00000"));
        check(&[1, 1, 2], 3, Length::nm(1_333_333).unwrap(), Some("0.00000"));
        check(&[1, 2, 2], 3, Length::nm(1_666_667).unwrap(), Some("0.00000")); // half up
    }

    #[test]
    fn the_ends_of_an_interval() {
        let ends = |off| Mean { mean: mm(200), off }.ends();
        assert_eq!(ends(Some(0.05)), (mm(190), mm(210)));
        assert_eq!(ends(None), (mm(200), mm(200)));
        assert_eq!(ends(Some(12.0)), (Length::ZERO, mm(2_600)));
    }

    /// Two long thick pieces and two short thin ones: 1 x 1 x 1 and 3 x 3 x 3 have a mean volume of 14, not of 2 x 2 x 2.
    #[test]
    fn the_mean_volume_is_that_of_the_pieces() {
        let cube = |n| Sides { thickness: mm(n), width: mm(n), length: mm(n) };
        let found = sizes(&[cube(1), cube(3)], 2).unwrap();
        assert_eq!((found.thickness.mean, found.width.mean, found.length.mean), (mm(2), mm(2), mm(2)));
        assert_eq!(found.volume, Mean { mean: Volume::of(mm(1), mm(2), mm(7)).unwrap(), off: Some(0.0) });
    }

    #[test]
    fn what_is_refused() {
        assert_eq!(length(&[], 9), Err(Refusal::NothingAsked));
        assert_eq!(length(&[mm(1), mm(2)], 1), Err(Refusal::SampleMoreThanPile { measured: 2, there: 1 }));
        assert_eq!(volume(&[], 9), Err(Refusal::NothingAsked));
        assert_eq!(sizes(&[], 9), Err(Refusal::NothingAsked));
        let far = Length::nm(i64::MAX).unwrap();
        assert_eq!(length(&[far, far], 9), Err(Refusal::OutOfRange));
        for (spread, within) in [(0.0, 0.1), (0.1, 0.0), (f64::NAN, 0.1), (0.1, f64::INFINITY)] {
            assert_eq!(pieces_to_measure(spread, within, None), Err(Refusal::NothingAsked));
        }
    }

    /// Lengths alone were measured of pieces whose section is known; of a band nobody knows how long one is that was not measured.
    #[test]
    fn a_side_that_was_not_measured_is_the_piles_own() {
        let side = |n: i64| Some(mm(n));
        let of = |to: Option<Length>, measured: [[Option<Length>; 3]; 2]| {
            let measured = measured.map(|[thickness, width, length]| Measured { thickness, width, length }).to_vec();
            let pile = Pile::new(Id::new(Moment::at(0), [1; 10]));
            let pile = Pile { taken: 40, thickness: side(1), width: side(2), length: side(16), length_to: to, measured, ..pile };
            (pile.sampled().unwrap().map(|mean| mean.mean), pile.piece().unwrap().unwrap())
        };
        let cubic = |n: i64| Volume::of(mm(1), mm(1), mm(n)).unwrap();
        assert_eq!(of(None, [[None, None, side(18)], [None, None, side(22)]]), (Some(cubic(40)), cubic(40)));
        assert_eq!(of(None, [[side(2), None, None], [None, side(4), None]]), (Some(cubic(64)), cubic(64)));
        assert_eq!(of(side(24), [[side(2), None, None], [None, side(4), None]]), (None, cubic(40)));
    }

    /// Half of what it may be off, or the finest; 25.4 mm to the inch. As measured where nothing is known of that.
    #[test]
    fn no_more_digits_than_the_measurement_deserves() {
        let inches = |sixtyfourths: i64| Length::INCH_64TH.times(sixtyfourths).unwrap();
        let shown = |mean, off, units| Mean { mean, off }.shown(units);
        assert_eq!(shown(inches(1_285), Some(0.24), Units::Inch), (inches(1_280), Some((inches(960), inches(1_600)))));
        assert_eq!(shown(inches(1_285), Some(0.01), Units::Inch), (inches(1_284), Some((inches(1_272), inches(1_300)))));
        assert_eq!(shown(inches(1_285), Some(0.0), Units::Inch), (inches(1_285), Some((inches(1_285), inches(1_285)))));
        assert_eq!(shown(inches(1_285), None, Units::Inch), (inches(1_285), None));
        assert_eq!(shown(mm(513), Some(0.01), Units::Metric), (mm(513), Some((mm(507), mm(519)))));
    }

    #[test]
    fn volume_without_measuring() {
        let pile = Pile::new(Id::new(Moment::at(0), [1; 10]));
        let mean = |off| Some(Mean { mean: Volume::LITRE, off });
        assert_eq!((pile.volume_off(None), pile.volume_off(mean(None)), pile.volume_off(mean(Some(0.02)))), (0.05, 0.05, 0.02));
        let band = Pile { length: Some(mm(300)), length_to: Some(mm(500)), ..pile };
        assert_eq!(band.volume_off(None), 0.15);
    }
}
