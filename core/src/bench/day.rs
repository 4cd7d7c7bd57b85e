//! A day by the local date: its runs and its totals. A run over midnight is listed on its start day; totals split it at local midnight.

use super::time::{Shares, Source, add};
use super::{Kind, Run};
use crate::quantity::Sorted;
use crate::quantity::{Day, Listed, Moment, Span, Wall};

/// What was worked on one day.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DayTotal {
    pub own: Shares,
    pub by_kind: Sorted<Kind, Shares>,
}

/// The day a run is listed on.
pub fn day_of(run: &Run) -> Day {
    run.started.day()
}

/// Splits a stretch at local midnight. Midnights are those of the place where it began; a stretch that ends on the date it
/// began on (by the offset of each end) is not split.
pub fn split(start: Wall, end: Wall) -> Vec<(Day, Span)> {
    let (mut day, last) = (start.day(), end.day());
    let mut from = start.at;
    let mut parts = vec![];
    while day < last && from < end.at {
        let midnight = day.next().start(start.offset).min(end.at).max(from);
        parts.push((day, from.until(midnight)));
        (from, day) = (midnight, day.next());
    }
    if from < end.at {
        parts.push((day, from.until(end.at)));
    }
    parts
}

/// The parts of a run by day and by where their minutes come from. None is of a later day than its end, which may lie in another place.
pub fn parts(run: &Run, now: Wall) -> Vec<(Day, Source, Span)> {
    let end = run.end_wall(now);
    let last = end.day().max(day_of(run));
    let wall = |at: Moment| if at < end.at { Wall::new(at, run.started.offset) } else { end };
    let stretch = |(source, from, to): (Source, Moment, Moment)| {
        split(Wall::new(from, run.started.offset), wall(to)).into_iter().map(move |(day, span)| (day.min(last), source, span))
    };
    run.stretches(now.at).into_iter().filter(|(_, from, to)| from < to).flat_map(stretch).listed()
}

/// Adds up one day.
pub fn total<'a>(runs: impl IntoIterator<Item = &'a Run>, day: Day, now: Wall) -> DayTotal {
    let mut total = DayTotal::default();
    for run in runs {
        for (_, source, span) in parts(run, now).into_iter().filter(|(on, _, _)| *on == day) {
            total.own = total.own.with(source, span);
            add(&mut total.by_kind, run.work.kind, Shares::default().with(source, span));
        }
    }
    total
}

#[cfg(test)]
mod tests {
    use super::super::sample::at;
    use super::*;
    use crate::quantity::Offset;

    fn place(minute: i64, offset: i64) -> Wall {
        Wall::new(at(minute), Offset::minutes(offset).unwrap())
    }

    /// Minutes from the epoch in UTC with offsets; parts as days since the start day's date.
    #[track_caller]
    fn check(start: (i64, i64), end: (i64, i64), parts: &[(i32, i64)]) {
        let (start, end) = (place(start.0, start.1), place(end.0, end.1));
        let found = split(start, end);
        let shown: Vec<_> = found.iter().map(|(day, span)| (start.day().until(*day), span.as_minutes())).collect();
        assert_eq!(shown, parts);
        assert_eq!(Span::sum(found.into_iter().map(|(_, span)| span)), start.at.until(end.at));
    }

    #[test]
    fn totals_split_at_local_midnight() {
        check((600, 0), (660, 0), &[(0, 60)]);
        check((1_380, 0), (1_500, 0), &[(0, 60), (1, 60)]);
        check((1_380, 0), (1_440, 0), &[(0, 60)]); // ends at midnight sharp
        check((1_440, 0), (1_450, 0), &[(0, 10)]);
        check((1_260, 120), (1_340, 120), &[(0, 60), (1, 20)]); // 23:00 to 00:20 in UTC+2
        check((1_380, 0), (1_380 + 2_880, 0), &[(0, 60), (1, 1_440), (2, 1_380)]);
        check((600, 0), (500, 0), &[]);
    }

    #[test]
    fn the_night_the_clocks_change_has_23_or_25_hours() {
        check((1_380 + 300, -300), (1_380 + 300 + 270, -240), &[(0, 60), (1, 210)]); // 23:00 EST to 04:30 EDT
        check((1_380 + 240, -240), (1_380 + 240 + 270, -300), &[(0, 60), (1, 210)]);
    }

    #[test]
    fn each_end_has_the_date_of_its_own_place() {
        check((1_410, 0), (1_450, -60), &[(0, 40)]); // 23:30, then 23:10 one zone to the west
        check((1_380, 0), (1_390, 120), &[(0, 10)]); // one zone east it is tomorrow already, but no midnight passed where it began
        check((10, 0), (40, -60), &[(0, 30)]);
    }
}
