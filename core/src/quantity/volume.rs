//! Volume in whole cubic nanometres, so that shares of a haul are exact and do not depend on the order of adding.

use super::{Count, Decimal, Length};
use crate::refusal::{Answer, Refusal};

/// A volume of wood. Never negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volume(i128);

/// A board foot is 144 cubic inches, as measured rough.
const BOARD_FOOT: i128 = 144 * 25_400_000 * 25_400_000 * 25_400_000;
const LITRE: i128 = 1_000_000_000_000_000_000_000_000;

/// A cubic millimetre is 10^18 cubic nanometres.
const CUBIC_MM_DIGITS: u32 = 18;

impl Volume {
    pub const ZERO: Volume = Volume(0);
    pub const BOARD_FOOT: Volume = Volume(BOARD_FOOT);
    pub const LITRE: Volume = Volume(LITRE);
    pub const CUBIC_METRE: Volume = Volume(1_000 * LITRE);

    /// A piece of three sides.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::quantity::{Decimal, Length, Volume};
    /// // A foot by a foot by an inch is one board foot.
    /// assert_eq!(Volume::of(Length::FOOT, Length::FOOT, Length::INCH).unwrap().board_feet(), Decimal::ONE);
    /// ```
    pub fn of(a: Length, b: Length, c: Length) -> Answer<Volume> {
        let wide = |l: Length| i128::from(l.as_nm());
        wide(a).checked_mul(wide(b)).and_then(|ab| ab.checked_mul(wide(c))).map(Volume).ok_or(Refusal::OutOfRange)
    }

    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn times(self, n: Count) -> Answer<Volume> {
        self.0.checked_mul(i128::from(n)).map(Volume).ok_or(Refusal::OutOfRange)
    }

    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn plus(self, other: Volume) -> Answer<Volume> {
        self.0.checked_add(other.0).map(Volume).ok_or(Refusal::OutOfRange)
    }

    /// One of `n` equal parts, down to a cubic nanometre.
    ///
    /// # Errors
    /// [`Refusal::NothingToShareBy`] for no parts.
    pub fn over(self, n: Count) -> Answer<Volume> {
        self.0.checked_div(i128::from(n)).map(Volume).ok_or(Refusal::NothingToShareBy)
    }

    /// What is left after another is taken; nothing if that was more.
    pub fn less(self, other: Volume) -> Volume {
        Volume(self.0.saturating_sub(other.0).max(0))
    }

    pub fn is_zero(self) -> bool {
        self.0 == 0
    }

    /// Board feet, exact where 28 digits hold them.
    ///
    /// ```
    /// use fivebar_core::quantity::{Decimal, Length, Volume};
    /// let block = Volume::of(Length::INCH.times(2).unwrap(), Length::INCH.times(4).unwrap(), Length::INCH.times(9).unwrap());
    /// assert_eq!(block.unwrap().board_feet(), Decimal::new(5, 1));
    /// ```
    pub fn board_feet(self) -> Decimal {
        ratio(self.0, BOARD_FOOT)
    }

    /// Litres, exact where 28 digits hold them.
    ///
    /// ```
    /// use fivebar_core::quantity::{Decimal, Length, Volume};
    /// let decimetre = Length::CM.times(10).unwrap();
    /// assert_eq!(Volume::of(decimetre, decimetre, decimetre).unwrap().litres(), Decimal::ONE);
    /// ```
    pub fn litres(self) -> Decimal {
        ratio(self.0, LITRE)
    }

    /// Cubic millimetres, exact to the last digit: for entries.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] beyond 79 cubic metres.
    pub fn cubic_mm(self) -> Answer<Decimal> {
        Decimal::try_from_i128_with_scale(self.0, CUBIC_MM_DIGITS).map(|mm| mm.normalize()).map_err(|_| Refusal::OutOfRange)
    }

    /// The volume of so many cubic millimetres.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] below nothing, or finer than a cubic nanometre.
    ///
    /// ```
    /// use fivebar_core::quantity::{Length, Volume};
    /// let piece = Volume::of(Length::INCH_64TH, Length::INCH, Length::MM).unwrap();
    /// assert_eq!(Volume::of_cubic_mm(piece.cubic_mm().unwrap()), Ok(piece));
    /// ```
    pub fn of_cubic_mm(mm: Decimal) -> Answer<Volume> {
        let finer = CUBIC_MM_DIGITS.checked_sub(mm.scale()).ok_or(Refusal::OutOfRange)?;
        let nm = 10_i128.checked_pow(finer).and_then(|power| mm.mantissa().checked_mul(power)).ok_or(Refusal::OutOfRange)?;
        if nm < 0 { Err(Refusal::OutOfRange) } else { Ok(Volume(nm)) }
    }

    /// Cubic metres, for weights.
    pub fn cubic_metres(self) -> f64 {
        self.0 as f64 / 1e27
    }

    /// This as a share of the whole, good to 20 digits for any haul.
    ///
    /// # Errors
    /// [`Refusal::NothingToShareBy`] when the whole is nothing.
    ///
    /// ```
    /// use fivebar_core::quantity::{Decimal, Length, Volume};
    /// let one = Volume::of(Length::MM, Length::MM, Length::MM).unwrap();
    /// assert_eq!(one.share_of(one.times(4).unwrap()), Ok(Decimal::new(25, 2)));
    /// assert!(one.share_of(Volume::ZERO).is_err());
    /// ```
    pub fn share_of(self, whole: Volume) -> Answer<Decimal> {
        if whole.0 <= 0 { Err(Refusal::NothingToShareBy) } else { Ok(ratio(self.0, whole.0)) }
    }
}

/// `n / of` for of > 0. What they have in common goes first: sides on a rule share so much that most ratios come out exact.
/// What is still too wide is halved alike until a decimal can hold it, which leaves some 26 digits.
fn ratio(n: i128, of: i128) -> Decimal {
    const ROOM: i128 = 1 << 95;
    let (n, of) = (n.max(0), of.max(1));
    let common = common(n, of);
    let (mut n, mut of) = (n.checked_div(common).unwrap_or(n), of.checked_div(common).unwrap_or(of));
    while ROOM <= n || ROOM <= of {
        n >>= 1;
        of >>= 1;
    }
    let whole = |v: i128| Decimal::try_from_i128_with_scale(v, 0).unwrap_or_default();
    whole(n).checked_div(whole(of.max(1))).unwrap_or_default()
}

/// The greatest common divisor by Euclid; `b` where `a` is nothing.
fn common(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a, b);
    while let Some(rest) = a.checked_rem(b) {
        (a, b) = (b, rest);
    }
    a.max(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn side(sixty_fourths: i64) -> Length {
        Length::INCH_64TH.times(sixty_fourths).unwrap()
    }

    /// `domain.md` section 12, trip of 3 March: rough sizes in 64ths, good pieces, board feet.
    #[test]
    fn the_example_haul() {
        let piles = [(68, 144, 1_376, 47, 1_678), (112, 112, 1_216, 29, 1_172), (52, 192, 704, 17, 317)];
        let mut sum = Volume::ZERO;
        for (a, b, c, n, hundredths) in piles {
            let pile = Volume::of(side(a), side(b), side(c)).unwrap().times(n).unwrap();
            assert_eq!(super::super::half_up(pile.board_feet(), 2), Decimal::new(hundredths, 2));
            sum = sum.plus(pile).unwrap();
        }
        // Half of the last digit away from the sum of the rounded rows: only volumes are added, never rounded figures.
        assert_eq!(super::super::half_up(sum.board_feet(), 2), Decimal::new(3_166, 2));
    }

    #[test]
    fn shares_of_a_rule_are_exact() {
        let piece = Volume::of(side(1), side(1), side(1)).unwrap();
        for (n, of, share) in [(1, 8, "0.125"), (3, 3, "1"), (0, 7, "0"), (16_000_000, 64_000_000, "0.25")] {
            let (n, of) = (piece.times(n).unwrap(), piece.times(of).unwrap());
            assert_eq!(n.share_of(of), Ok(Decimal::from_str_exact(share).unwrap()));
        }
        assert_eq!(piece.times(64 * 64 * 64 * 144).unwrap().board_feet(), Decimal::ONE);
    }

    #[test]
    fn inv08_nothing_wraps() {
        let far = Length::nm(i64::MAX).unwrap();
        assert_eq!(Volume::of(far, far, far), Err(Refusal::OutOfRange));
        let most = Volume(i128::MAX);
        assert_eq!((most.times(2), most.plus(most)), (Err(Refusal::OutOfRange), Err(Refusal::OutOfRange)));
        assert_eq!(Volume::ZERO.less(most), Volume::ZERO);
        assert_eq!((most.over(0), most.over(1)), (Err(Refusal::NothingToShareBy), Ok(most)));
        assert_eq!(most.share_of(Volume::ZERO), Err(Refusal::NothingToShareBy));
        // The fullest haul: 200 piles of 9 999 pieces of 20 m cubed.
        let piece = Volume::of(Length::PIECE_MOST, Length::PIECE_MOST, Length::PIECE_MOST).unwrap();
        assert!(piece.times(super::super::PILE_MOST).unwrap().times(200).is_ok());
    }
}
