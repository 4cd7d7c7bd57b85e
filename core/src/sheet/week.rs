//! A week at the bench: each day with its sum, and where the minutes of the week come from.

use super::bench::{Look, Seen};
use crate::bench::{Bench, DayTotal, Kind, Run, Shares, day as of_day};
use crate::ledger::Book;
use crate::quantity::{Count, Day, Listed, Sorted, Span};

/// A week of a person, Monday first.
#[derive(Clone, Debug, PartialEq)]
pub struct WeekSheet {
    /// Its Monday.
    pub first: Day,
    pub days: Vec<(Day, DayTotal)>,
    pub own: Shares,
    pub by_kind: Sorted<Kind, Span>,
    /// So many runs look wrong and are in no sum.
    pub unsettled: Count,
}

/// The Monday of the week of a day.
pub fn monday(day: Day) -> Day {
    (0..day.weekday()).fold(day, |day, _| day.before())
}

/// The week in which a day lies.
pub fn week(book: &Book, bench: &Bench, day: Day, seen: Seen) -> WeekSheet {
    let first = monday(day);
    let days = std::iter::successors(Some(first), |day| Some(day.next())).take(7).listed();
    let last = days.last().copied().unwrap_or(first);
    let look = Look::new(bench, book, seen);
    let near = |run: &&Run| run.work.person == seen.person && run.started.day() <= last && first <= run.end_wall(seen.now).day();
    let (sure, wrong): (Vec<&Run>, Vec<&Run>) =
        bench.runs().filter(near).partition(|run| run.is_running() || look.forgotten(run).is_none());
    let total = |day: Day| (day, of_day::total(sure.iter().copied(), day, seen.now));
    let days = days.into_iter().map(total).listed();
    let own = days.iter().fold(Shares::default(), |sum, (_, total)| sum.plus(total.own));
    let mut by_kind: Sorted<Kind, Span> = Sorted::new();
    for (kind, shares) in days.iter().flat_map(|(_, total)| total.by_kind.iter()) {
        let sum = by_kind.entry(*kind).or_insert(Span::ZERO);
        *sum = sum.plus(shares.total());
    }
    WeekSheet { first, days, own, by_kind, unsettled: u32::try_from(wrong.len()).unwrap_or(u32::MAX) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::fold;
    use crate::ledger::told::{Phone, at, work};

    #[test]
    fn a_week_adds_up_its_days_and_leaves_out_what_looks_wrong() {
        // The epoch was a Thursday.
        let mut phone = Phone::new("a");
        let thursday = phone.start(480, "saw", On::Nothing);
        phone.stop(540, thursday);
        let over_midnight = phone.start(1_430, "sand", On::Nothing);
        phone.stop(1_460, over_midnight);
        let forgotten = phone.start(2_000, "glue", On::Nothing);
        phone.stop(2_500, forgotten);
        phone.bench(2_600, BenchCommand::Recall { work: work("bore", On::Nothing), start: at(2_530), stop: at(2_560), heads: 1 }).unwrap();
        let next_week = phone.start(4 * 1_440 + 60, "oil", On::Nothing);
        phone.stop(4 * 1_440 + 90, next_week);
        let of = |minute: i64| {
            let seen = Seen { now: phone.wall(4 * 1_440 + 100), ..Seen::default() };
            let sheet = week(&phone.book, &fold::bench(&phone.book), phone.wall(minute).day(), seen);
            let days = sheet.days.iter().map(|(_, total)| total.own.total().as_minutes()).listed();
            let shares = (sheet.own.measured.as_minutes(), sheet.own.recalled.as_minutes(), sheet.unsettled);
            assert_eq!(Span::sum(sheet.by_kind.values().copied()), sheet.own.total());
            assert_eq!((sheet.first.weekday(), sheet.days.len()), (0, 7));
            (days, shares)
        };
        assert_eq!(of(0), (vec![0, 0, 0, 70, 20 + 30, 0, 0], (90, 30, 1)));
        assert_eq!(of(5 * 1_440), (vec![30, 0, 0, 0, 0, 0, 0], (30, 0, 0)));
    }
}
