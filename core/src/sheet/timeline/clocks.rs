//! The clock of a day: when its midnights were, and what it showed in between.

use super::Stretch;
use crate::quantity::{Day, Listed, Local, Moment, Offset, Span, Wall};

/// Clocks change on a quarter of an hour.
const STEP: Span = Span::minutes(15);

/// No clock changes by more in a day, and no drive that ends in it.
const MOST: Span = Span::minutes(48 * 60);

/// The clock of one day.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Clocks {
    pub day: Day,
    zero: Moment,
    pub whole: Span,
    /// From when on which clock is shown; never empty but for a day that is none.
    offsets: Vec<(Moment, Offset)>,
    /// The phone knows all of them: none is that of another place.
    at_home: bool,
}

impl Clocks {
    /// Of a day with work, from the moments that are told of it, in order. Where the phone was elsewhere then, or knows nothing, the clock is
    /// that of what was told last.
    pub(super) fn of(day: Day, told: Vec<Wall>, (now, local): (Wall, Local)) -> Clocks {
        let first = told.first().map_or(now.offset, |wall| wall.offset);
        let zero = day.start(first);
        let at_home = told.iter().all(|wall| local.wall(wall.at).offset == wall.offset);
        let offsets = if at_home { changes(zero, local) } else { told.iter().map(|wall| (wall.at, wall.offset)).listed() };
        let clocks = Clocks { day, zero, whole: MOST, offsets, at_home };
        let last = clocks.offset(day.next().start(first));
        Clocks { whole: zero.until(day.next().start(last)), ..clocks }
    }

    fn offset(&self, at: Moment) -> Offset {
        let before = self.offsets.iter().rev().find(|(from, _)| *from <= at);
        before.or(self.offsets.first()).map_or(Offset::UTC, |(_, offset)| *offset)
    }

    /// What the clock showed so long after midnight.
    pub(super) fn wall(&self, since: Span) -> Wall {
        let at = self.zero.plus(since);
        Wall::new(at, self.offset(at))
    }

    /// Where the clock of another place begins: how long after midnight, what the one before shows then, and what that one does.
    pub(super) fn others(&self) -> Vec<(Span, Wall, Wall)> {
        let pairs = self.offsets.iter().zip(self.offsets.iter().skip(1)).filter(|(one, next)| !self.at_home && one.1 != next.1);
        let all = pairs.map(|(one, next)| (self.zero.until(next.0), Wall::new(next.0, one.1), Wall::new(next.0, next.1)));
        all.filter(|(since, ..)| *since < self.whole).listed()
    }

    /// A stretch of time as far as it lies on the day; `None` where none of it does.
    pub(super) fn on(&self, start: Wall, end: Wall) -> Option<Stretch> {
        let at = |moment: Moment| self.zero.until(moment).max(Span::ZERO).min(self.whole);
        super::lies_on(self.day, start, end).then(|| {
            let from = if start.day() < self.day { Span::ZERO } else { at(start.at) };
            let to = if self.day < end.day() { self.whole } else { at(end.at) };
            Stretch { from, to: to.max(from) }
        })
    }
}

/// What the phone knows of the clocks of a day.
fn changes(zero: Moment, local: Local) -> Vec<(Moment, Offset)> {
    let mut known: Vec<(Moment, Offset)> = vec![];
    let steps = MOST.as_ms().checked_div(STEP.as_ms()).unwrap_or_default();
    for at in (0..=steps).map(|n| zero.plus(STEP.times(n))) {
        let offset = local.wall(at).offset;
        if known.last().is_none_or(|(_, last)| *last != offset) {
            known.push((at, offset));
        }
    }
    known
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Clock;

    /// Clocks go forward on 8 March 2026 at 07:00 in world time, and back on 1 November at 06:00.
    fn new_york(at: Moment) -> Offset {
        let summer = Moment::at(1_772_953_200_000)..Moment::at(1_793_512_800_000);
        Offset::minutes(if summer.contains(&at) { -240 } else { -300 }).unwrap()
    }

    /// A day with work at nine: its hours, and what the clock shows after each of the first four.
    #[track_caller]
    fn check((month, date): (u32, u32), hours: i64, shown: [u16; 4]) {
        let day = Day::ymd(2026, month, date).unwrap();
        let local = Local::new(Offset::UTC, Some(new_york));
        let nine = local.wall(day.at(Clock::at(14, 0).unwrap(), Offset::UTC));
        let clocks =
            Clocks::of(day, vec![local.wall(day.start(Offset::minutes(-300).unwrap()).plus(Span::minutes(30))), nine], (nine, local));
        assert_eq!(clocks.whole, Span::minutes(hours * 60), "{month} {date}");
        assert_eq!([1, 2, 3, 4].map(|hour| clocks.wall(Span::minutes(hour * 60)).minute_of_day() / 60), shown, "{month} {date}");
    }

    #[test]
    fn a_day_has_as_many_hours_as_it_had() {
        check((3, 7), 24, [1, 2, 3, 4]);
        check((3, 8), 23, [1, 3, 4, 5]);
        check((11, 2), 24, [1, 2, 3, 4]);
    }

    #[test]
    fn an_hour_that_comes_twice_stands_there_twice() {
        let day = Day::ymd(2026, 11, 1).unwrap();
        let local = Local::new(Offset::UTC, Some(new_york));
        let early = local.wall(day.start(Offset::minutes(-240).unwrap()).plus(Span::minutes(20)));
        let clocks = Clocks::of(day, vec![early], (early, local));
        assert_eq!(clocks.whole, Span::minutes(25 * 60));
        assert_eq!([1, 2, 3, 24].map(|hour| clocks.wall(Span::minutes(hour * 60)).minute_of_day() / 60), [1, 1, 2, 23]);
    }
}
