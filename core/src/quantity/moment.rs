//! Moments and spans in whole milliseconds; the clock of the phone stamps, it never ticks.

use super::Clock;
use super::{Scalar, Spelled};
use crate::refusal::{Answer, Refusal};
use chrono::{Datelike, NaiveDate};

/// Milliseconds since the Unix epoch, UTC. One read from an entry lies in the years 1 to 9999.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment(i64);

/// A stretch of time in milliseconds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span(i64);

/// Minutes east of UTC at the place, at most 18 hours either way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Offset(i16);

/// A moment as the clock on the wall showed it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Wall {
    pub at: Moment,
    pub offset: Offset,
}

/// A local date, as days since 1 January 1970.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i32);

const MINUTE: i64 = 60_000;
const DAY: i64 = 86_400_000;

impl Moment {
    /// 1 January of the year 1, 00:00 UTC.
    pub const FIRST: Moment = Moment(-62_135_596_800_000);
    /// The last millisecond of the year 9999, UTC.
    pub const LAST: Moment = Moment(253_402_300_799_999);

    pub const fn at(ms: i64) -> Moment {
        Moment(ms)
    }
    pub const fn ms(self) -> i64 {
        self.0
    }
    /// The span from here to `later`; nothing if that is earlier.
    ///
    /// ```
    /// use fivebar_core::quantity::{Moment, Span};
    /// assert_eq!(Moment::at(60_000).until(Moment::at(180_000)), Span::minutes(2));
    /// assert_eq!(Moment::at(180_000).until(Moment::at(60_000)), Span::ZERO);
    /// ```
    pub fn until(self, later: Moment) -> Span {
        Span(later.0.saturating_sub(self.0).max(0))
    }
    pub fn plus(self, span: Span) -> Moment {
        Moment(self.0.saturating_add(span.0))
    }
    pub fn minus(self, span: Span) -> Moment {
        Moment(self.0.saturating_sub(span.0))
    }
}

impl Span {
    pub const ZERO: Span = Span(0);
    /// The most one run may last: 48 hours.
    pub const RUN_MOST: Span = Span(48 * 60 * MINUTE);
    pub const WEEK: Span = Span::minutes(7 * 24 * 60);

    pub const fn ms(ms: i64) -> Span {
        Span(ms)
    }
    pub const fn minutes(minutes: i64) -> Span {
        Span(minutes.saturating_mul(MINUTE))
    }
    pub const fn as_ms(self) -> i64 {
        self.0
    }
    /// Whole minutes, half up.
    ///
    /// ```
    /// use fivebar_core::quantity::Span;
    /// assert_eq!((Span::ms(90_000).as_minutes(), Span::ms(89_999).as_minutes()), (2, 1));
    /// ```
    pub fn as_minutes(self) -> i64 {
        self.0.saturating_add(MINUTE / 2).div_euclid(MINUTE)
    }
    pub fn plus(self, other: Span) -> Span {
        Span(self.0.saturating_add(other.0))
    }
    pub fn minus(self, other: Span) -> Span {
        Span(self.0.saturating_sub(other.0))
    }
    pub fn times(self, n: i64) -> Span {
        Span(self.0.saturating_mul(n))
    }
    /// As much longer as one span is than another, rounded down; `None` where the other is no span.
    ///
    /// ```
    /// use fivebar_core::quantity::Span;
    /// let [two, three, ten] = [2, 3, 10].map(Span::minutes);
    /// assert_eq!((ten.in_ratio(three, two), ten.in_ratio(three, Span::ZERO)), (Some(Span::minutes(15)), None));
    /// ```
    pub fn in_ratio(self, of: Span, to: Span) -> Option<Span> {
        let ms = i128::from(self.0).checked_mul(i128::from(of.0))?.checked_div(i128::from(to.0))?;
        i64::try_from(ms).ok().map(Span)
    }
    /// Hours as a decimal, for rates: exact where 28 digits hold it.
    ///
    /// ```
    /// use fivebar_core::quantity::{Decimal, Span};
    /// assert_eq!(Span::minutes(870).hours(), Decimal::new(145, 1));
    /// ```
    pub fn hours(self) -> rust_decimal::Decimal {
        rust_decimal::Decimal::from(self.0).checked_div(rust_decimal::Decimal::from(60 * MINUTE)).unwrap_or_default()
    }
    pub fn sum(spans: impl IntoIterator<Item = Span>) -> Span {
        spans.into_iter().fold(Span::ZERO, Span::plus)
    }
    /// Several spans in whole minutes that add up to the whole minutes of their sum, as they stand in a list below it: each is cut, and what is
    /// over goes to those of which most was cut, the first of equal ones first.
    ///
    /// ```
    /// use fivebar_core::quantity::Span;
    /// let [half, third] = [Span::ms(630_000), Span::ms(620_000)]; // 10:30 and 10:20, together 20:50
    /// let minutes = |spans: &[Span]| Span::in_minutes(spans).iter().map(|span| span.as_minutes()).collect::<Vec<_>>();
    /// assert_eq!((minutes(&[half, third]), minutes(&[third, half, half])), (vec![11, 10], vec![10, 11, 10]));
    /// ```
    pub fn in_minutes(spans: &[Span]) -> Vec<Span> {
        let cut = |span: &Span| span.0.div_euclid(MINUTE);
        let over = spans.iter().map(cut).fold(Span::sum(spans.iter().copied()).as_minutes(), i64::saturating_sub);
        let mut order: Vec<usize> = (0..spans.len()).collect();
        super::order_by_key(&mut order, |nth| std::cmp::Reverse(spans.get(*nth).map(|span| span.0.rem_euclid(MINUTE))));
        let mut minutes: Vec<i64> = spans.iter().map(cut).collect();
        for nth in order.into_iter().take(usize::try_from(over).unwrap_or_default()) {
            minutes.get_mut(nth).into_iter().for_each(|minute| *minute = minute.saturating_add(1));
        }
        minutes.into_iter().map(Span::minutes).collect()
    }
}

impl Offset {
    pub const UTC: Offset = Offset(0);
    /// # Errors
    /// [`Refusal::OutOfRange`] beyond 18 hours either way (ISO 8601 knows none further).
    pub fn minutes(minutes: i64) -> Answer<Offset> {
        i16::try_from(minutes).ok().filter(|m| (-1080..=1080).contains(m)).map(Offset).ok_or(Refusal::OutOfRange)
    }
    pub const fn as_minutes(self) -> i16 {
        self.0
    }
}

impl Wall {
    pub fn new(at: Moment, offset: Offset) -> Wall {
        Wall { at, offset }
    }
    fn local_ms(self) -> i64 {
        self.at.0.saturating_add(i64::from(self.offset.0).saturating_mul(MINUTE))
    }
    /// The local date.
    ///
    /// ```
    /// use fivebar_core::quantity::{Day, Moment, Offset, Wall};
    /// // Tue 3 March 2026, 01:30 UTC, is still Monday evening five hours west.
    /// let there = Wall::new(Moment::at(1_772_501_400_000), Offset::minutes(-300).unwrap());
    /// assert_eq!(there.day().as_ymd(), (2026, 3, 2));
    /// ```
    pub fn day(self) -> Day {
        let days = self.local_ms().div_euclid(DAY);
        Day(i32::try_from(days).unwrap_or(if days < 0 { i32::MIN } else { i32::MAX }))
    }
    /// The time of day.
    pub fn clock(self) -> Clock {
        Clock::minutes(self.minute_of_day()).unwrap_or_default()
    }
    /// Minutes since local midnight, 0 to 1439.
    pub fn minute_of_day(self) -> u16 {
        u16::try_from(self.local_ms().rem_euclid(DAY).div_euclid(MINUTE)).unwrap_or(0)
    }
}

impl Day {
    /// The date, or `None` where there is none such.
    pub fn ymd(year: i32, month: u32, day: u32) -> Option<Day> {
        NaiveDate::from_ymd_opt(year, month, day).map(|d| Day(d.to_epoch_days()))
    }
    /// Year, month 1 to 12, day 1 to 31.
    pub fn as_ymd(self) -> (i32, u32, u32) {
        let date = NaiveDate::from_epoch_days(self.0).unwrap_or_default();
        (date.year(), date.month(), date.day())
    }
    /// 0 for Monday to 6 for Sunday.
    pub fn weekday(self) -> u32 {
        NaiveDate::from_epoch_days(self.0).unwrap_or_default().weekday().num_days_from_monday()
    }
    /// Local midnight that begins it.
    pub fn start(self, offset: Offset) -> Moment {
        Moment(i64::from(self.0).saturating_mul(DAY).saturating_sub(i64::from(offset.0).saturating_mul(MINUTE)))
    }
    /// The moment a clock on the wall showed on this date.
    ///
    /// ```
    /// use fivebar_core::quantity::{Clock, Day, Moment, Offset};
    /// let day = Day::ymd(2026, 3, 3).unwrap();
    /// assert_eq!(day.at(Clock::at(9, 31).unwrap(), Offset::minutes(-300).unwrap()), Moment::at(1_772_548_260_000));
    /// ```
    pub fn at(self, clock: Clock, offset: Offset) -> Moment {
        self.start(offset).plus(Span::minutes(i64::from(clock.as_minutes())))
    }
    pub fn next(self) -> Day {
        Day(self.0.saturating_add(1))
    }
    pub fn before(self) -> Day {
        Day(self.0.saturating_sub(1))
    }
    /// So many days later, or earlier below nothing.
    pub fn plus(self, days: i32) -> Day {
        Day(self.0.saturating_add(days))
    }
    /// Whole days from here to `later`.
    ///
    /// ```
    /// use fivebar_core::quantity::Day;
    /// let (market, sent) = (Day::ymd(2026, 4, 18).unwrap(), Day::ymd(2026, 5, 22).unwrap());
    /// assert_eq!(market.until(sent), 34);
    /// ```
    pub fn until(self, later: Day) -> i32 {
        later.0.saturating_sub(self.0)
    }
}

/// In a line: a date as ISO 8601 has it.
impl Spelled for Day {
    fn spell(&self) -> Scalar<'_> {
        let (year, month, day) = self.as_ymd();
        Scalar::of(format!("{year:04}-{month:02}-{day:02}"))
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        let text = scalar.text()?;
        let mut parts = text.splitn(3, '-');
        let mut number = || parts.next()?.parse::<u32>().ok();
        let day = Day::ymd(i32::try_from(number()?).ok()?, number()?, number()?)?;
        (text.len() == 10 && day.spell().text() == Some(text)).then_some(day)
    }
}

impl Spelled for Moment {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Whole(self.0)
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        let at = Moment(scalar.whole()?);
        (Moment::FIRST <= at && at <= Moment::LAST).then_some(at)
    }
}

impl Spelled for Span {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Whole(self.0)
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        scalar.whole().map(Span)
    }
}

impl Spelled for Offset {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Whole(i64::from(self.0))
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        Offset::minutes(scalar.whole()?).ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 3339, section 5.8: 1996-12-19T16:39:57-08:00 is 1996-12-20T00:39:57Z.
    #[test]
    fn a_day_is_the_local_date() {
        let at = Moment::at(851_042_397_000);
        assert_eq!(Wall::new(at, Offset::UTC).day(), Day::ymd(1996, 12, 20).unwrap());
        let there = Wall::new(at, Offset::minutes(-480).unwrap());
        assert_eq!((there.day().as_ymd(), there.minute_of_day()), ((1996, 12, 19), 16 * 60 + 39));
        assert_eq!(there.day().start(there.offset), Moment::at(850_982_400_000));
    }

    #[test]
    fn an_entry_holds_no_moment_without_a_date() {
        for (ms, there) in [(0, true), (-62_135_596_800_000, true), (-62_135_596_800_001, false), (253_402_300_800_000, false)] {
            assert_eq!(Moment::unspell(&Scalar::Whole(ms)), there.then_some(Moment::at(ms)), "{ms}");
        }
        for at in [Moment::FIRST, Moment::LAST] {
            let (year, ..) = Wall::new(at, Offset::UTC).day().as_ymd();
            assert!(year == 1 || year == 9999);
        }
        for (minutes, there) in [(-1080, true), (1080, true), (1081, false), (32767, false), (99999, false)] {
            assert_eq!(Offset::unspell(&Scalar::Whole(minutes)).is_some(), there, "{minutes}");
        }
    }

    /// Nothing wraps at the ends of the numbers.
    #[test]
    fn the_ends_stay_the_ends() {
        let (first, last) = (Moment::at(i64::MIN), Moment::at(i64::MAX));
        assert_eq!(first.until(last), Span::ms(i64::MAX));
        assert_eq!((last.plus(Span::RUN_MOST), first.minus(Span::RUN_MOST)), (last, first));
        assert_eq!(Span::minutes(i64::MAX).times(i64::MAX), Span::ms(i64::MAX));
        for at in [first, last] {
            let wall = Wall::new(at, Offset::UTC);
            assert!(wall.minute_of_day() < 1_440 && wall.day().weekday() < 7);
        }
    }
}
