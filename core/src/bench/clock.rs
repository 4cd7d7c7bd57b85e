//! By which clock a run is shown, and what was typed of it is read: clocks go forward and back, and makers travel.

use super::Run;
use super::wait::Wait;
use crate::quantity::{Clock, Day, Local, Moment, Offset, Span, Wall};

/// Clocks change on a quarter of an hour.
const STEP: Span = Span::minutes(15);

/// So long before a run, and after it, a clock elsewhere may have changed for the same reason.
const NEAR: Span = Span::minutes(24 * 60);

/// In the European Union all clocks change at the same moment, 01:00 in world time (Directive 2000/84/EC, article 2).
const TOGETHER: u16 = 60;

/// The clock that the whole of a run is shown by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// The one that is looked at.
    Here,
    /// The one of its place, whose every change within the run is known.
    There,
    /// The one that was shown when it began, whatever that place did to its clocks since: it may have changed them, and nobody knows when.
    Start(Offset),
}

/// One clock shown at first, and another from a moment on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Change {
    at: Moment,
    from: Offset,
    to: Offset,
}

impl Run {
    /// Whether it was tapped where that clock is: its stamp shows what that clock showed then. What was told of has the clock of its start.
    pub fn is_here(&self, local: Local) -> bool {
        let by = if self.recalled { self.started } else { self.tapped };
        local.shows(by)
    }

    /// A moment of the run, or after it, by the one clock that the whole of it is shown by: the one that is looked at, where the run was
    /// tapped there, whatever it was changed to since; else that of the place where it began. So a run that goes on after a journey is shown
    /// by the clock of where it began, with the end that is proposed for it.
    pub fn wall(&self, at: Moment, local: Local) -> Wall {
        if self.is_here(local) {
            return local.wall(at);
        }
        self.stamps().wall(at, local)
    }

    /// The moment at which that clock showed this on a day; the first of two.
    pub fn moment(&self, (day, clock): (Day, Clock), local: Local) -> Moment {
        let began = self.started.offset;
        let shown = |offset: &Offset| self.wall(day.at(clock, *offset), local).offset == *offset;
        let offset = [began, self.last_known().offset].into_iter().find(shown).unwrap_or(began);
        day.at(clock, offset)
    }

    /// Which clock that is.
    pub fn by(&self, local: Local) -> By {
        if self.is_here(local) { By::Here } else { self.stamps().by(local) }
    }

    /// When it began, by that clock.
    pub fn began(&self, local: Local) -> Wall {
        self.wall(self.started.at, local)
    }

    /// The last stamp that shows a clock of its place.
    fn last_known(&self) -> Wall {
        let cut = self.cut.map(|cut| Wall::new(cut.at, cut.offset));
        self.tapped_stop.or(cut).or(self.stopped).unwrap_or(self.started)
    }

    fn stamps(&self) -> Stamps {
        let (first, last) = (self.started, self.last_known());
        Stamps { first, last, to: if self.is_running() { first.at.plus(Span::RUN_MOST) } else { last.at } }
    }
}

impl Wait {
    /// A moment of the wait by the one clock that the whole of it is shown by: the one here, where it began by that; else that of its place.
    pub fn wall(&self, at: Moment, local: Local) -> Wall {
        if self.is_here(local) { local.wall(at) } else { self.stamps().wall(at, local) }
    }

    /// Which clock that is.
    pub fn by(&self, local: Local) -> By {
        if self.is_here(local) { By::Here } else { self.stamps().by(local) }
    }

    fn is_here(&self, local: Local) -> bool {
        local.shows(self.began)
    }

    fn stamps(&self) -> Stamps {
        let last = self.ended.map_or(self.began, |off| off.at);
        Stamps { first: self.began, last, to: last.at.max(self.off()) }
    }
}

/// The stamps of something elsewhere, the first and the last that show the clock of its place, and as late as it may have gone on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Stamps {
    first: Wall,
    last: Wall,
    to: Moment,
}

impl Stamps {
    fn wall(&self, at: Moment, local: Local) -> Wall {
        let offset = match self.change(local) {
            Some(change) if change.at <= at => change.to,
            _ => self.first.offset,
        };
        Wall::new(at, offset)
    }

    fn by(&self, local: Local) -> By {
        let is_known = || !self.changed_there(local) && changed((self.first.at, self.to), local).is_none();
        if self.change(local).is_some() || is_known() { By::There } else { By::Start(self.first.offset) }
    }

    /// It was stopped by another clock than it began by, and not by the one here: nobody travelled to here meanwhile.
    fn changed_there(&self, local: Local) -> bool {
        self.last.offset != self.first.offset && !local.shows(self.last)
    }

    /// When the clocks of its place changed within it: they did, by its own stamps, and those here did by as much at about that time. In
    /// the European Union that was the same moment; elsewhere each clock showed the same (in the United States two in the morning, 15
    /// U.S.C. 260a).
    fn change(&self, local: Local) -> Option<Change> {
        let Stamps { first, last, .. } = *self;
        let here = changed((first.at, last.at), local).filter(|_| self.changed_there(local))?;
        let by = |from: Offset, to: Offset| to.as_minutes().saturating_sub(from.as_minutes());
        let behind = Span::minutes(by(first.offset, here.from).into());
        let together = Wall::new(here.at, Offset::UTC).minute_of_day() == TOGETHER;
        let at = if together { here.at } else { here.at.plus(behind) };
        let fits = first.at < at && at <= last.at && by(here.from, here.to) == by(first.offset, last.offset);
        fits.then_some(Change { at, from: first.offset, to: last.offset })
    }
}

/// When the clock here changed, at about the time of a stretch: as it was a day before it and a day after it, it is halved down.
fn changed((from, to): (Moment, Moment), local: Local) -> Option<Change> {
    let offset = |at: Moment| local.wall(at).offset;
    let steps = |span: Span| span.as_ms().div_euclid(STEP.as_ms());
    let whole = |at: Moment| Moment::at(0).plus(STEP.times(steps(Moment::at(0).until(at))));
    let (mut before, mut after) = (whole(from.minus(NEAR)), whole(to.plus(NEAR)));
    let change = Change { at: after, from: offset(before), to: offset(after) };
    while STEP < before.until(after) {
        let middle = before.plus(STEP.times(steps(before.until(after)).div_euclid(2)));
        if offset(middle) == change.from { before = middle } else { after = middle }
    }
    (change.from != change.to).then_some(Change { at: after, ..change })
}

#[cfg(test)]
mod tests {
    use super::super::sample::{at, run};
    use super::*;

    /// Offsets in hours where it began, where it ended if it did, and where it is looked at; the minutes of the day of its start at 10:00 and
    /// of 90 minutes after it as they are shown.
    #[test]
    fn a_run_is_shown_by_one_clock() {
        let check = |(began, ended, here): (i64, Option<i64>, i64), shown: [u16; 2]| {
            let offset = |hours: i64| Offset::minutes(hours * 60).unwrap();
            let (mut run, start) = (run(1, 600), at(600 - began * 60));
            (run.started, run.tapped) = (Wall::new(start, offset(began)), Wall::new(start, offset(began)));
            run.stopped = ended.map(|ended| Wall::new(start.plus(Span::minutes(120)), offset(ended)));
            let local = Local::new(offset(here), None);
            let found = [run.began(local), run.wall(start.plus(Span::minutes(90)), local)].map(|wall| wall.minute_of_day());
            assert_eq!(found, shown, "{began} {ended:?} {here}");
        };
        check((-5, None, -5), [600, 690]);
        // Begun in New York, and it goes on in Denver, or was stopped there.
        check((-5, None, -7), [600, 690]);
        check((-5, Some(-7), -7), [600, 690]);
        check((-5, Some(-7), -5), [600, 690]);
        check((-5, Some(-5), -7), [600, 690]);
        // The clocks changed where it was, and nobody knows when: all of it by the clock of the start.
        check((-5, Some(-4), -7), [600, 690]);
    }

    /// Clocks go back at 60: begun before it, stopped after it, and put right to a moment before it, where the stop keeps the place of the tap.
    #[test]
    fn an_end_that_was_put_right_is_by_the_clock_of_then() {
        let [summer, winter] = [120, 60].map(|minutes| Offset::minutes(minutes).unwrap());
        let local = Local::new(winter, Some(|at| Offset::minutes(if at < Moment::at(3_600_000) { 120 } else { 60 }).unwrap_or_default()));
        let mut run = run(1, 0);
        (run.started, run.tapped) = (Wall::new(at(0), summer), Wall::new(at(0), summer));
        run.stopped = Some(Wall::new(at(40), winter));
        assert_eq!(run.wall(run.end(at(90)), local), Wall::new(at(40), summer));
        assert_eq!(run.wall(at(80), local), Wall::new(at(80), winter));
        // A start that was put before the night the clocks changed in keeps the place of its tap.
        (run.started, run.tapped) = (Wall::new(at(0), winter), Wall::new(at(70), winter));
        assert_eq!(run.began(local), Wall::new(at(0), summer));
    }

    /// Summer time of 2026, in milliseconds of world time: from 2 March 8 to November 1, 02:00 of each clock in America; from March 29 to
    /// October 25, 01:00 of world time in Europe.
    fn of(winter: i64, [from, to]: [i64; 2], at: Moment) -> Offset {
        let is_summer = (Moment::at(from)..Moment::at(to)).contains(&at);
        Offset::minutes(if is_summer { winter + 60 } else { winter }).unwrap()
    }

    fn new_york(at: Moment) -> Offset {
        of(-300, [1_772_953_200_000, 1_793_512_800_000], at)
    }

    fn denver(at: Moment) -> Offset {
        of(-420, [1_772_960_400_000, 1_793_520_000_000], at)
    }

    fn london(at: Moment) -> Offset {
        of(0, [1_774_746_000_000, 1_792_890_000_000], at)
    }

    fn berlin(at: Moment) -> Offset {
        of(60, [1_774_746_000_000, 1_792_890_000_000], at)
    }

    fn tokyo(_: Moment) -> Offset {
        Offset::minutes(540).unwrap()
    }

    /// A run at a place from the eve of a day at 22:30 to 08:30 of it by its clocks, looked at from elsewhere: by which clock it is told,
    /// and how long after its start that shows 23:30, 03:30 and 08:30.
    #[test]
    fn after_a_journey_a_run_is_told_by_the_clock_that_held() {
        type Place = fn(Moment) -> Offset;
        let check = |(place, month, date): (Place, u32, u32), here: Place, by: By, shown: [i64; 3]| {
            let there = |day: Day, clock: (u8, u8)| {
                let at = |offset| day.at(Clock::at(clock.0.into(), clock.1.into()).unwrap(), offset);
                let wall = |at: Moment| Wall::new(at, place(at));
                wall(at(place(at(place(at(Offset::UTC))))))
            };
            let day = Day::ymd(2026, month, date).unwrap();
            let (start, stop) = (there(day.before(), (22, 30)), there(day, (8, 30)));
            let ended = Run { started: start, tapped: start, stopped: Some(stop), tapped_stop: Some(stop), ..run(1, 0) };
            let local = Local::new(Offset::UTC, Some(here));
            let after = |day: Day, hour| start.at.until(ended.moment((day, Clock::at(hour, 30).unwrap()), local)).as_minutes();
            let name = format!("{month} {date} {}", start.offset.as_minutes());
            assert_eq!((ended.by(local), [after(day.before(), 23), after(day, 3), after(day, 8)]), (by, shown), "{name}");
            let last = ended.wall(ended.moment((day, Clock::at(8, 30).unwrap()), local), local);
            assert_eq!((last.day(), last.minute_of_day()), (day, 510), "what is typed is what is shown: {name}");
        };
        let start = |minutes| By::Start(Offset::minutes(minutes).unwrap());
        let (spring, autumn, quiet) = ([60, 240, 540], [60, 360, 660], [60, 300, 600]);
        check((new_york, 3, 8), new_york, By::Here, spring);
        check((new_york, 3, 8), denver, By::There, spring);
        check((new_york, 11, 1), denver, By::There, autumn);
        check((new_york, 3, 7), denver, start(-300), quiet);
        check((new_york, 4, 8), denver, By::There, quiet);
        check((denver, 3, 8), new_york, By::There, spring);
        // Where the clocks never change nothing is known of when they did: all of it by the clock of the start.
        check((new_york, 3, 8), tokyo, start(-300), quiet);
        check((new_york, 3, 8), berlin, start(-300), quiet);
        check((new_york, 4, 8), tokyo, By::There, quiet);
        // In Europe all change at one moment.
        check((london, 3, 29), berlin, By::There, spring);
        check((berlin, 10, 25), london, By::There, autumn);
    }
}
