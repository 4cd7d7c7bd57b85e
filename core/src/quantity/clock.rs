//! A time of day as a wall clock shows it, to the minute. It has no date and no place.

use super::{Scalar, Spelled};

/// Minutes since local midnight, 0 to 1439.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Clock(u16);

impl Clock {
    /// 00:00.
    pub const FIRST: Clock = Clock(0);
    /// 12:00, of a day that is told without an hour.
    pub const NOON: Clock = Clock(720);
    /// 23:59.
    pub const LAST: Clock = Clock(1_439);

    /// The time of an hour, 0 to 23, and a minute, 0 to 59; `None` past either.
    ///
    /// ```
    /// use fivebar_core::quantity::Clock;
    /// assert_eq!(Clock::at(14, 32).map(Clock::as_minutes), Some(872));
    /// assert_eq!(Clock::at(24, 0), None);
    /// ```
    pub fn at(hour: u16, minute: u16) -> Option<Clock> {
        if hour < 24 && minute < 60 { hour.checked_mul(60)?.checked_add(minute).map(Clock) } else { None }
    }

    /// The time so many minutes after midnight; `None` past 23:59.
    pub fn minutes(minutes: u16) -> Option<Clock> {
        Some(Clock(minutes)).filter(|clock| *clock <= Clock::LAST)
    }

    pub const fn as_minutes(self) -> u16 {
        self.0
    }

    /// The hour, 0 to 23, and the minute, 0 to 59.
    pub const fn as_hour_minute(self) -> (u16, u16) {
        (self.0.div_euclid(60), self.0.rem_euclid(60))
    }
}

/// In a line: whole minutes since midnight.
impl Spelled for Clock {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Whole(i64::from(self.0))
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        u16::try_from(scalar.whole()?).ok().and_then(Clock::minutes)
    }
}
