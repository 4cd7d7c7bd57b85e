//! Back from a date, and on to one: on which day each step of a job must begin at the latest, and by which day all can be done.
//!
//! Reckoned on the clock of the wall: hands are on at the end of a working day, as many hours as the maker stands at the bench; on the day on
//! which it is begun from now on, not before eight in the morning (ours). Waits run through nights and days off. The day of use is no working day. A step's day is the day in which its hour lies, so part of a day
//! counts as a whole one. An hour more or less by daylight saving moves nothing but a wait that ends in that hour.

use crate::quantity::{Clock, Day, Set, Span, Wall};
use crate::refusal::{Answer, Refusal};

/// The least and the most that a maker stands at the bench in a day.
pub const BENCH_LEAST: Span = Span::minutes(15);
pub const BENCH_MOST: Span = Span::minutes(24 * 60);

/// No date is looked for further off.
pub const DAYS_MOST: i32 = 3_660;

/// When a maker works.
#[derive(Clone, Debug, PartialEq)]
pub struct Workdays {
    /// Hands on wood in a day, not hours in the shop.
    pub bench: Span,
    /// When a day at the bench ends.
    pub closing: Clock,
    /// Monday to Sunday.
    pub days: [bool; 7],
    /// Days off, whatever day of the week.
    pub off: Set<Day>,
}

/// Before anything is said: four hours a day till 18:00, no Sundays [J].
impl Default for Workdays {
    fn default() -> Workdays {
        let closing = Clock::at(18, 0).unwrap_or_default();
        Workdays { bench: Span::minutes(240), closing, days: [true, true, true, true, true, true, false], off: Set::default() }
    }
}

/// A step of a job: hands on, and then what it waits before the next step. One that hands are off waits already: what is said of it is what is
/// left, from now on, in whatever order it was planned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Step {
    pub hands: Span,
    pub wait: Span,
    /// What must have gone by between its end and use, whatever is done meanwhile.
    pub cure: Span,
    /// What is wet of it now, and how long yet: hands are on it only then.
    pub wet: Span,
}

impl Step {
    /// The hour from which hands may be on it.
    pub fn begins_from(&self, now: Hour) -> Hour {
        later(now, self.wet)
    }

    fn waits_already(&self) -> bool {
        minutes_up(self.hands) == 0
    }
}

/// When all of it can be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Ready {
    /// In the course of that day nothing is to be done any more, and nothing waits.
    pub day: Day,
    /// The last day with hands on it: after that it only waits.
    pub hands: Day,
}

impl Ready {
    /// The first morning it is through: the one after. Promised is [`Workdays::promised`].
    pub fn promise(self) -> Day {
        self.day.next()
    }

    /// Whether it is ready for a day of use, which need be no working day: as the last days reckon it.
    pub fn is_by(self, due: Day) -> bool {
        self.promise() <= due
    }

    /// It waits beyond the day on which hands are off it.
    pub fn waits(self) -> bool {
        self.hands < self.day
    }
}

/// An hour on the wall: a day, and minutes since its midnight, 0 to 1440.
pub type Hour = (Day, i64);

const DAY: i64 = 1_440;

/// Nobody who looks in the night begins then, unless their hours do [J].
const MORNING: i64 = 8 * 60;

impl Workdays {
    /// Whether any day of the week is worked.
    ///
    /// # Errors
    /// [`Refusal::NoWorkingDay`].
    pub fn check_days(&self) -> Answer<()> {
        if self.days.iter().all(|works| !works) { Err(Refusal::NoWorkingDay) } else { Ok(()) }
    }

    /// Whether so many hours fit between midnight and closing.
    ///
    /// # Errors
    /// [`Refusal::HoursOutOfRange`] for less than a quarter of an hour or more than there is before closing.
    pub fn check_hours(&self) -> Answer<()> {
        let (least, most) = (BENCH_LEAST, self.closing_span().min(BENCH_MOST));
        let met = self.bench;
        if least <= met && met <= most { Ok(()) } else { Err(Refusal::HoursOutOfRange { met, least, most }) }
    }

    fn closing_span(&self) -> Span {
        Span::minutes(i64::from(self.closing.as_minutes()))
    }

    /// Whether hands are on wood on that day.
    pub fn works(&self, day: Day) -> bool {
        let of_week = usize::try_from(day.weekday()).ok().and_then(|nth| self.days.get(nth)).copied();
        of_week.unwrap_or(false) && !self.off.contains(&day)
    }

    /// The day it is promised for: the first working day from the morning after on; that morning where none comes within a year.
    ///
    /// ```
    /// use fivebar_core::bench::dates::{Ready, Workdays};
    /// use fivebar_core::quantity::Day;
    /// let friday = Day::ymd(2026, 12, 18).unwrap();
    /// let weekends_off = Workdays { days: [true, true, true, true, true, false, false], ..Workdays::default() };
    /// assert_eq!(Some(weekends_off.promised(Ready { day: friday, hands: friday })), Day::ymd(2026, 12, 21));
    /// ```
    pub fn promised(&self, ready: Ready) -> Day {
        let first = ready.promise();
        (0..366).map(|days| first.plus(days)).find(|day| self.works(*day)).unwrap_or(first)
    }

    /// The hours at the bench of a working day, in minutes since midnight.
    fn bench_hours(&self) -> (i64, i64) {
        let end = i64::from(self.closing.as_minutes());
        (end.saturating_sub(self.bench.as_minutes()).max(0), end)
    }

    /// For each step the last day on which it may begin for all to be done before the day of use; `None` where that is beyond ten years.
    ///
    /// ```
    /// use fivebar_core::bench::dates::{Step, Workdays};
    /// use fivebar_core::quantity::{Day, Span};
    /// // Four hours a day, no Sundays. Six hours of work and a week of cure before Friday 22 May 2026.
    /// let six = Step { hands: Span::minutes(360), cure: Span::minutes(7 * 1440), ..Step::default() };
    /// let due = Day::ymd(2026, 5, 22).unwrap();
    /// assert_eq!(Workdays::default().back(due, &[six]), [Day::ymd(2026, 5, 13)]);
    /// ```
    pub fn back(&self, due: Day, steps: &[Step]) -> Vec<Option<Day>> {
        self.begins(due, steps).into_iter().map(|begin| begin.map(|(day, _)| day)).collect()
    }

    /// The same to the minute: the day, and minutes since its midnight. Of what waits already the one by which it must have begun; it holds up
    /// no step before it.
    pub fn begins(&self, due: Day, steps: &[Step]) -> Vec<Option<Hour>> {
        self.begins_on((due, &mut 0), due, steps)
    }

    /// The same seen from a day on which hands were on wood for so long: of that day as much less is left, at whatever hour.
    ///
    /// ```
    /// use fivebar_core::bench::dates::{Step, Workdays};
    /// use fivebar_core::quantity::{Day, Span};
    /// // Four hours a day till 18:00, two hours of work before Friday 22 May 2026: of Thursday three hours are gone, one is left.
    /// let (thursday, due) = (Day::ymd(2026, 5, 21).unwrap(), Day::ymd(2026, 5, 22).unwrap());
    /// let two = Step { hands: Span::minutes(120), ..Step::default() };
    /// let begins = |worked| Workdays::default().begins_after((thursday, Span::minutes(worked)), due, &[two]);
    /// assert_eq!([begins(0), begins(180)], [vec![Some((thursday, 960))], vec![Some((thursday.before(), 1_020))]]);
    /// ```
    pub fn begins_after(&self, (today, worked): (Day, Span), due: Day, steps: &[Step]) -> Vec<Option<Hour>> {
        // The day of use is no working day.
        self.begins_on((today, &mut self.left_of_day(worked)), due, steps)
    }

    fn begins_on(&self, (today, left): (Day, &mut i64), due: Day, steps: &[Step]) -> Vec<Option<Hour>> {
        let mut at = Some((due, 0));
        let mut begins: Vec<Option<Hour>> = steps
            .iter()
            .rev()
            .map(|step| {
                let ends = |at| earlier(at, step.wait).min(earlier((due, 0), step.cure));
                if step.waits_already() {
                    return at.map(ends);
                }
                at = at.and_then(|at| self.before(ends(at), (due, today, left), step.hands));
                at
            })
            .collect();
        begins.reverse();
        begins
    }

    /// The hour at which so much work must begin to be done by `until`.
    fn before(&self, until: Hour, (due, today, of_today): (Day, Day, &mut i64), hands: Span) -> Option<Hour> {
        let (opens, closes) = self.bench_hours();
        let (mut day, mut end) = (until.0, until.1.min(closes));
        let mut left = minutes_up(hands);
        if left == 0 {
            return Some(until);
        }
        loop {
            let is_today = day == today;
            let opens = if is_today { opens.min(MORNING) } else { opens };
            if self.works(day) && opens < end {
                let there = end.saturating_sub(opens);
                let taken = left.min(if is_today { there.min(*of_today) } else { there });
                if is_today {
                    *of_today = of_today.saturating_sub(taken);
                }
                left = left.saturating_sub(taken);
                if left == 0 {
                    return Some((day, end.saturating_sub(taken)));
                }
            }
            (day, end) = (day.before(), closes);
            if DAYS_MOST < day.until(due) {
                return None;
            }
        }
    }

    /// The day in the course of which all steps are done and nothing waits any more, begun now; `None` where that is beyond ten years.
    /// It can be used from its evening on: what is promised for the morning is promised for the day after.
    ///
    /// ```
    /// use fivebar_core::bench::dates::{Step, Workdays};
    /// use fivebar_core::quantity::{Day, Moment, Offset, Span, Wall};
    /// let six = Step { hands: Span::minutes(360), cure: Span::minutes(7 * 1440), ..Step::default() };
    /// // Wednesday 13 May 2026, 08:00 UTC: done on Thursday at 16:00, hard a week later.
    /// let now = Wall::new(Moment::at(1_778_659_200_000), Offset::UTC);
    /// let ready = Workdays::default().ready(now, &[six]).unwrap();
    /// assert_eq!([Some(ready.hands), Some(ready.day)], [Day::ymd(2026, 5, 14), Day::ymd(2026, 5, 21)]);
    /// ```
    pub fn ready(&self, now: Wall, steps: &[Step]) -> Option<Ready> {
        self.ready_after(Span::ZERO, now, steps)
    }

    /// The same where hands were on wood for so long today: as much less is left of the day.
    ///
    /// ```
    /// use fivebar_core::bench::dates::{Step, Workdays};
    /// use fivebar_core::quantity::{Clock, Day, Moment, Offset, Span, Wall};
    /// // Friday 15 May 2026, 12:00 UTC, eight hours a day till 18:00, no Sundays: 4 h 25 are left after 3 h 35, then 8 h on Saturday.
    /// let work = Workdays { bench: Span::minutes(480), ..Workdays::default() };
    /// let step = Step { hands: Span::minutes(810), ..Step::default() };
    /// let now = Wall::new(Moment::at(1_778_846_400_000), Offset::UTC);
    /// let ready = |worked| work.ready_after(Span::minutes(worked), now, &[step]).map(|ready| ready.day);
    /// assert_eq!([ready(0), ready(215)], [Day::ymd(2026, 5, 16), Day::ymd(2026, 5, 18)]);
    /// ```
    pub fn ready_after(&self, worked: Span, now: Wall, steps: &[Step]) -> Option<Ready> {
        self.ready_behind((Span::ZERO, worked), now, steps)
    }

    /// The same where hands are on other work first: what wants no hands does not wait for them, and what waits already waits meanwhile.
    pub fn ready_behind(&self, (others, worked): (Span, Span), now: Wall, steps: &[Step]) -> Option<Ready> {
        let from = (now.day(), i64::from(now.minute_of_day()));
        let (mut at, mut hard, mut hands) = (from, from, from.0);
        let mut today = self.left_of_day(worked);
        let free = self.after(from, (from.0, &mut today), others);
        for step in steps {
            if step.waits_already() {
                (at, hard) = (at.max(later(from, step.wait)), hard.max(later(from, step.cure)));
                continue;
            }
            let begins = at.max(free?).max(step.begins_from(from));
            let end = self.after(begins, (from.0, &mut today), step.hands)?;
            (at, hard, hands) = (later(end, step.wait), hard.max(later(end, step.cure)), end.0);
        }
        let (day, minute) = at.max(hard);
        // What is over at midnight was over in the evening before.
        let day = if minute == 0 && from < (day, minute) { day.before() } else { day };
        Some(Ready { day, hands })
    }

    /// Minutes of a working day that are left after so much work: a part of one that was worked is none.
    fn left_of_day(&self, worked: Span) -> i64 {
        self.bench.as_minutes().saturating_sub(worked.max(Span::ZERO).as_minutes()).clamp(0, self.closing_span().as_minutes())
    }

    /// The hour at which so much work is done, begun at `from`; on the first day for no more minutes than it has left.
    fn after(&self, from: Hour, (began, today): (Day, &mut i64), hands: Span) -> Option<Hour> {
        let (opens, closes) = self.bench_hours();
        let (mut day, mut start) = (from.0, from.1.max(if from.0 == began { opens.min(MORNING) } else { opens }));
        let mut left = minutes_up(hands);
        if left == 0 {
            return Some(from);
        }
        loop {
            if self.works(day) && start < closes {
                let there = closes.saturating_sub(start);
                let there = if day == began { there.min(*today) } else { there };
                let taken = left.min(there);
                if day == began {
                    *today = today.saturating_sub(taken);
                }
                left = left.saturating_sub(taken);
                if left == 0 {
                    return Some((day, start.saturating_add(taken)));
                }
            }
            (day, start) = (day.next(), opens);
            if DAYS_MOST < began.until(day) {
                return None;
            }
        }
    }
}

/// Whole minutes, a part of one as a whole.
fn minutes_up(span: Span) -> i64 {
    let ms = span.max(Span::ZERO).as_ms();
    ms.saturating_add(59_999).div_euclid(60_000)
}

fn earlier((day, minute): Hour, by: Span) -> Hour {
    moved((day, minute), minutes_up(by).saturating_neg())
}

fn later(at: Hour, by: Span) -> Hour {
    moved(at, minutes_up(by))
}

fn moved((day, minute): Hour, by: i64) -> Hour {
    let all = minute.saturating_add(by);
    (day.plus(i32::try_from(all.div_euclid(DAY)).unwrap_or(i32::MAX)), all.rem_euclid(DAY))
}

#[cfg(test)]
mod tests;
