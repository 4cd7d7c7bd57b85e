//! Laws of dates, and the calendar by another hand.

use chrono::{Datelike, Days, NaiveDate, Weekday};
use fivebar_core::bench::dates::{Step, Workdays};
use fivebar_core::quantity::{Clock, Day, Offset, Span, Wall};
use proptest::prelude::*;

fn at(nth: i32, minute: i64) -> Wall {
    let day = Day::ymd(2026, 1, 1).unwrap().plus(nth);
    Wall::new(day.start(Offset::UTC).plus(Span::minutes(minute)), Offset::UTC)
}

fn steps() -> impl Strategy<Value = Vec<Step>> {
    let hands = prop_oneof![1 => Just(0), 4 => 0_i64..1_500];
    let step = (hands, prop_oneof![Just(0), 1_i64..2_000, Just(1_440), Just(10_080)], prop_oneof![3 => Just(0), 1 => Just(10_080)]);
    let of = |(hands, wait, cure)| {
        let [hands, wait, cure] = [hands, wait, cure].map(Span::minutes);
        Step { hands, wait, cure, ..Step::default() }
    };
    proptest::collection::vec(step.prop_map(of), 0..8)
}

fn workdays() -> impl Strategy<Value = Workdays> {
    let days = proptest::array::uniform7(any::<bool>()).prop_filter("a day", |days| days.contains(&true));
    (15_i64..900, 900_u16..1_440, days, proptest::collection::vec(0_i32..700, 0..12)).prop_map(|(bench, closing, days, off)| {
        let mut work = Workdays { bench: Span::minutes(bench), closing: Clock::minutes(closing).unwrap(), days, ..Workdays::default() };
        work.off.clear();
        for nth in off {
            work.off.insert(Day::ymd(2026, 1, 1).unwrap().plus(nth));
        }
        work
    })
}

/// Where nothing waits: so many whole working days before the date, rounded up, counted on chrono's calendar.
fn counted_back(work: &Workdays, due: Day, hands: i64) -> Day {
    let (year, month, day) = due.as_ymd();
    let mut date = NaiveDate::from_ymd_opt(year, month, day).unwrap();
    let mut left = (hands as u64).div_ceil(work.bench.as_minutes() as u64);
    while 0 < left {
        date = date.checked_sub_days(Days::new(1)).unwrap();
        let nth = date.weekday().num_days_from_monday();
        assert_eq!(date.weekday() == Weekday::Mon, nth == 0);
        let here = Day::ymd(date.year(), date.month(), date.day()).unwrap();
        if work.days[nth as usize] && !work.off.contains(&here) {
            left -= 1;
        }
    }
    Day::ymd(date.year(), date.month(), date.day()).unwrap()
}

proptest! {
    #[test]
    fn whole_working_days_are_those_of_another_calendar(work in workdays(), nth in 0_i32..1_500, hands in 1_i64..6_000) {
        let due = at(nth, 0).day();
        let all = [Step { hands: Span::minutes(hands), ..Step::default() }];
        prop_assert_eq!(work.back(due, &all), [Some(counted_back(&work, due, hands))]);
    }

    /// What can't be ready before its day is late, to the minute, and nothing else is.
    #[test]
    fn a_day_is_missed_once_a_beginning_has_gone_by(work in workdays(), steps in steps(), days in 0_i32..60, minute in 0_i64..1_440) {
        let now = at(0, minute);
        let due = now.day().plus(days);
        let begins = work.begins_after((now.day(), Span::ZERO), due, &steps);
        let missed = begins.iter().any(|begin| begin.is_none_or(|begin| begin < (now.day(), minute)));
        let ready = work.ready(now, &steps).map(|ready| ready.day);
        prop_assume!(!steps.is_empty());
        prop_assert_eq!(missed, ready.is_none_or(|ready| due <= ready), "{:?} {:?}", begins, ready);
    }

    #[test]
    fn nothing_is_ready_on_a_day_off_without_waiting(work in workdays(), steps in steps(), nth in 0_i32..600, minute in 0_i64..1_440) {
        let ready = work.ready(at(nth, minute), &steps).unwrap();
        prop_assume!(steps.iter().any(|step| Span::ZERO < step.hands));
        prop_assert!(work.works(ready.day) || ready.waits(), "{:?}", ready);
    }

    #[test]
    fn what_can_be_ready_by_a_date_can_be_begun_today(work in workdays(), steps in steps(), nth in 0_i32..600, minute in 0_i64..1_440) {
        let now = at(nth, minute);
        let ready = work.ready(now, &steps).unwrap();
        let begins = work.begins_after((now.day(), Span::ZERO), ready.promise(), &steps);
        let days: Vec<Day> = begins.into_iter().flatten().map(|(day, _)| day).collect();
        prop_assert_eq!(days.len(), steps.len());
        prop_assert!(days.iter().all(|day| now.day() <= *day), "{:?} for {:?}", days, ready);
        // What waits already has begun, in whatever order it was planned.
        let hands = days.iter().zip(&steps).filter(|(_, step)| Span::ZERO < step.hands).map(|(day, _)| day);
        prop_assert!(hands.is_sorted());
    }

    #[test]
    fn a_day_before_the_first_ready_date_is_too_early(work in workdays(), steps in steps(), nth in 0_i32..600) {
        // Begun as the bench opens, so that no part of today is lost.
        let opens = i64::from(work.closing.as_minutes()) - work.bench.as_minutes();
        let now = at(nth, opens.max(0));
        let ready = work.ready(now, &steps).unwrap();
        prop_assume!(steps.iter().any(|step| Span::ZERO < step.hands) && now.day().until(ready.day) > 0);
        // To the minute: what waits before any hands are on it may begin before the bench opens, on this very day.
        let begins = work.begins(ready.day, &steps);
        let is_early = |begin: &Option<(Day, i64)>| begin.is_none_or(|begin| begin < (now.day(), opens.max(0)));
        prop_assert!(begins.iter().any(is_early), "{:?} for {:?}", begins, ready);
    }

    #[test]
    fn more_hours_never_make_it_later_and_a_day_off_never_earlier(work in workdays(), steps in steps(), nth in 0_i32..600, off in 0_i32..30) {
        let now = at(nth, 0);
        let ready = work.ready(now, &steps).unwrap();
        let longer = Workdays { bench: work.bench.plus(Span::minutes(10)), ..work.clone() };
        prop_assert!(longer.ready(now, &steps).unwrap().day <= ready.day);
        let mut fewer = work.clone();
        fewer.off.insert(now.day().plus(off));
        prop_assert!(ready.day <= fewer.ready(now, &steps).unwrap().day);
        for (more, plain) in longer.back(ready.promise(), &steps).into_iter().zip(work.back(ready.promise(), &steps)) {
            prop_assert!(plain <= more);
        }
    }
}
