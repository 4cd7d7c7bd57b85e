//! Volume in whole cubic nanometres, so that shares of a haul are exact and do not depend on the order of adding.

use super::{Count, Decimal, Length};
use crate::refusal::{Answer, Refusal};

/// A volume of wood. Never negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volume(i128);

/// A board foot is 144 cubic inches, as measured rough.
const BOARD_FOOT: i128 = 144 * 25_400_000 * 25_400_000 * 25_400_000;
const LITRE: i128 = 1_000_000_000_000_000_000_000_000;

impl Volume {
    pub const ZERO: Volume = Volume(0);

    /// A piece of three sides.
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

    /// What is left after another is taken; nothing if that was more.
    pub fn less(self, other: Volume) -> Volume {
        Volume(self.0.saturating_sub(other.0).max(0))
    }

    pub fn is_zero(self) -> bool {
        self.0 == 0
    }

    /// Board feet, to 12 decimals.
    pub fn board_feet(self) -> Decimal {
        ratio(self.0, BOARD_FOOT)
    }

    /// Litres, to 12 decimals.
    pub fn litres(self) -> Decimal {
        ratio(self.0, LITRE)
    }

    /// Cubic metres, for weights.
    pub fn cubic_metres(self) -> f64 {
        self.0 as f64 / 1e27
    }

    /// This as a share of the whole, exact to 20 digits.
    ///
    /// # Errors
    /// [`Refusal::NothingToShareBy`] when the whole is nothing.
    pub fn share_of(self, whole: Volume) -> Answer<Decimal> {
        if whole.0 <= 0 { Err(Refusal::NothingToShareBy) } else { Ok(ratio(self.0, whole.0)) }
    }
}

/// `n / of` for of > 0. Both are halved alike until a decimal can hold them: exact to some 26 digits.
fn ratio(n: i128, of: i128) -> Decimal {
    const ROOM: i128 = 1 << 95;
    let (mut n, mut of) = (n.max(0), of.max(1));
    while n >= ROOM || of >= ROOM {
        n >>= 1;
        of >>= 1;
    }
    let whole = |v: i128| Decimal::try_from_i128_with_scale(v, 0).unwrap_or_default();
    whole(n).checked_div(whole(of.max(1))).unwrap_or_default()
}
