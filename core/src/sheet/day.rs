//! A day as a list: every run with its times, where its minutes come from, and its raw stamps; and the day's totals.

use crate::bench::{Batch, DayTotal, Doubt, Run, Shares, day as of_day};
use crate::ledger::{Book, fold};
use crate::quantity::order_by_key;
use crate::quantity::{Day, Id, Moment, Span, Wall};

/// One run of the day.
#[derive(Clone, Debug, PartialEq)]
pub struct DayLine {
    /// With its raw stamps `tapped` and `tapped_stop`, its menders, notches and heads.
    pub run: Run,
    pub name: Option<String>,
    /// When it ended; `None` while it runs.
    pub ended: Option<Wall>,
    pub worked: Span,
    pub shares: Shares,
    pub labour: Span,
    /// Of the worked time, what falls on this day.
    pub on_this_day: Span,
    pub doubts: Vec<Doubt>,
    pub batch: Batch,
}

/// A day at the bench.
#[derive(Clone, Debug, PartialEq)]
pub struct DaySheet {
    pub day: Day,
    /// Runs that began on the day, the earliest first.
    pub lines: Vec<DayLine>,
    /// What was worked on the day, runs from the day before included.
    pub total: DayTotal,
}

/// The day of a person.
pub fn day(book: &Book, (day, person): (Day, Option<Id>), now: Wall) -> DaySheet {
    let bench = fold::bench(book);
    let own = bench.runs().filter(|run| run.work.person == person);
    let listed = own.clone().filter(|run| of_day::day_of(run) == day);
    let line = |run: &Run| DayLine {
        name: fold::name_of(book, run.work.on),
        ended: (!run.is_running()).then(|| run.end_wall(now)),
        worked: run.worked(now.at),
        shares: run.shares(now.at),
        labour: run.labour(now.at),
        on_this_day: Span::sum(of_day::parts(run, now).into_iter().filter(|part| part.0 == day).map(|part| part.2)),
        doubts: run.doubts(now.at),
        batch: Batch::of(std::iter::once(run), None, now.at),
        run: run.clone(),
    };
    DaySheet { day, lines: listed.map(line).collect(), total: of_day::total(own, day, now) }
}

/// The days on which a person worked, the latest first.
pub fn days(book: &Book, person: Option<Id>, now: Wall) -> Vec<Day> {
    let bench = fold::bench(book);
    let own = bench.runs().filter(|run| run.work.person == person);
    let mut days: Vec<Day> =
        own.flat_map(|run| of_day::parts(run, now).into_iter().map(|part| part.0).chain([of_day::day_of(run)])).collect();
    order_by_key(&mut days, |day| std::cmp::Reverse(*day));
    days.dedup();
    days
}

/// The gaps of a person's day between the first start and the last end: time that may have been missed.
pub fn gaps(sheet: &DaySheet) -> Vec<(Moment, Moment)> {
    let ends: Vec<(Moment, Moment)> = sheet.lines.iter().filter_map(|line| Some((line.run.started.at, line.ended?.at))).collect();
    let pairs = ends.iter().zip(ends.iter().skip(1));
    pairs.filter(|(one, next)| one.1 < next.0).map(|(one, next)| (one.1, next.0)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::{Kind, On};
    use crate::ledger::decide::BenchCommand;
    use crate::ledger::told::{Phone, at, work};

    #[test]
    fn a_run_over_midnight_is_listed_on_its_start_day_and_its_minutes_fall_on_both() {
        let mut phone = Phone::new("a");
        let late = phone.start(1_400, "oil", On::Nothing);
        phone.stop(1_460, late);
        let early = phone.start(1_900, "sand", On::Nothing);
        phone.stop(1_930, early);
        phone.bench(2_000, BenchCommand::Recall { work: work("saw", On::Nothing), start: at(1_950), stop: at(1_960), heads: 1 }).unwrap();
        let now = phone.wall(2_000);
        let (first, second) = (phone.wall(0).day(), phone.wall(1_440).day());
        let (one, two) = (day(&phone.book, (first, None), now), day(&phone.book, (second, None), now));
        let listed = |sheet: &DaySheet| sheet.lines.iter().map(|l| (l.run.work.op.clone(), l.on_this_day.as_minutes())).collect::<Vec<_>>();
        assert_eq!(listed(&one), [("oil".into(), 40)]);
        assert_eq!(listed(&two), [("sand".into(), 30), ("saw".into(), 10)]);
        let total = |sheet: &DaySheet| (sheet.total.own.measured.as_minutes(), sheet.total.own.recalled.as_minutes());
        assert_eq!((total(&one), total(&two)), ((40, 0), (50, 10)));
        assert_eq!(two.total.by_kind.get(&Kind::Make).unwrap().total().as_minutes(), 60);
        assert_eq!(days(&phone.book, None, now), [second, first]);
        assert_eq!(gaps(&two), [(at(1_930), at(1_950))]);
    }
}
