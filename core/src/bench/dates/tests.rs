use super::*;
use crate::quantity::{Moment, Offset};

fn day(year: i32, month: u32, day: u32) -> Day {
    Day::ymd(year, month, day).unwrap()
}

fn hours(hands: i64, wait: i64) -> Step {
    Step { hands: Span::minutes(hands * 60), wait: Span::minutes(wait * 60), ..Step::default() }
}

fn off(days: &[Day]) -> Workdays {
    let mut work = Workdays::default();
    for day in days {
        work.off.insert(*day);
    }
    work
}

/// Each row by hand, with a calendar: four hours a day from 14:00 to 18:00, no Sundays.
#[test]
fn back_from_a_date() {
    #[track_caller]
    fn check(work: &Workdays, due: Day, steps: &[Step], last: &[(i32, u32, u32)]) {
        let last: Vec<Option<Day>> = last.iter().map(|(y, m, d)| Day::ymd(*y, *m, *d)).collect();
        assert_eq!(work.back(due, steps), last);
    }
    let plain = Workdays::default();
    let friday = day(2026, 5, 22);
    // No part of the day of use itself; a full day is one day, a minute more is two.
    check(&plain, friday, &[hours(4, 0)], &[(2026, 5, 21)]);
    check(&plain, friday, &[Step { hands: Span::minutes(241), ..Step::default() }], &[(2026, 5, 20)]);
    // Two steps share a day where they fit.
    check(&plain, friday, &[hours(2, 0), hours(2, 0)], &[(2026, 5, 21), (2026, 5, 21)]);
    check(&plain, friday, &[hours(3, 0), hours(2, 0)], &[(2026, 5, 20), (2026, 5, 21)]);
    // Monday 25 May: the Sunday before it is no working day.
    check(&plain, day(2026, 5, 25), &[hours(4, 0)], &[(2026, 5, 23)]);
    // Off on Thursday and Wednesday.
    check(&off(&[day(2026, 5, 21), day(2026, 5, 20)]), friday, &[hours(4, 0)], &[(2026, 5, 19)]);
    // A night between two coats costs nothing but that they are on two days; three coats and a week of cure.
    check(&plain, friday, &[hours(1, 12), hours(1, 12), hours(1, 7 * 24)], &[(2026, 5, 12), (2026, 5, 13), (2026, 5, 14)]);
    // Oiled, and put together while it hardens: a day to dry before that, a week before use.
    let oiled = Step { cure: Span::minutes(7 * 1_440), ..hours(4, 24) };
    check(&plain, friday, &[oiled, hours(4, 0)], &[(2026, 5, 14), (2026, 5, 21)]);
    // Where the step after it takes longer than that, it decides.
    check(&plain, friday, &[oiled, hours(32, 0)], &[(2026, 5, 11), (2026, 5, 13)]);
    // Ninety minutes in clamps on the day they were clamped: out of them at 17:00, clamped at 15:30, begun at 14:30.
    check(
        &plain,
        friday,
        &[Step { hands: Span::minutes(60), wait: Span::minutes(90), ..Step::default() }, hours(1, 0)],
        &[(2026, 5, 21), (2026, 5, 21)],
    );
    // Waits run on Sundays: dry from Saturday evening, planed on Tuesday after two days.
    check(&plain, day(2026, 5, 27), &[hours(2, 48), hours(4, 0)], &[(2026, 5, 23), (2026, 5, 26)]);
    // But hands do not: the last step on Friday for Monday (Saturday off), two days of waiting before it, so Tuesday to Friday.
    check(&off(&[day(2026, 5, 23)]), day(2026, 5, 25), &[hours(4, 48), hours(4, 0)], &[(2026, 5, 19), (2026, 5, 22)]);
    // Over the end of a month, of a year, and the 29th of February.
    check(&plain, day(2026, 3, 2), &[hours(4, 0), hours(4, 0)], &[(2026, 2, 27), (2026, 2, 28)]);
    check(&plain, day(2028, 3, 1), &[hours(4, 0), hours(4, 0)], &[(2028, 2, 28), (2028, 2, 29)]);
    check(&plain, day(2027, 1, 2), &[hours(4, 0), hours(4, 0)], &[(2026, 12, 31), (2027, 1, 1)]);
    // The nights in which clocks change, in both halves of the year: Sundays, as any other.
    check(&plain, day(2026, 3, 9), &[hours(4, 24), hours(4, 0)], &[(2026, 3, 5), (2026, 3, 7)]);
    check(&plain, day(2026, 10, 26), &[hours(4, 24), hours(4, 0)], &[(2026, 10, 22), (2026, 10, 24)]);
    // No steps, no days; work without end is no date.
    check(&plain, friday, &[], &[]);
    assert_eq!(plain.back(friday, &[hours(24 * 366 * 10, 0), hours(1, 0)]), [None, Some(day(2026, 5, 21))]);
}

/// The day in which the last hour lies, by hand with the same calendar; and whether it only waits by then.
#[test]
fn on_to_a_date() {
    #[track_caller]
    fn check(work: &Workdays, now: (Day, i64), steps: &[Step], ready: Option<(Day, bool)>) {
        let now = Wall::new(now.0.start(Offset::UTC).plus(Span::minutes(now.1)), Offset::UTC);
        let found = work.ready(now, steps);
        assert_eq!(found.map(|ready| (ready.day, ready.waits())), ready);
        assert!(found.is_none_or(|found| work.works(found.day) || found.waits() || steps.is_empty()), "no day off without a reason");
    }
    let plain = Workdays::default();
    let tuesday = day(2026, 5, 19);
    let noon = (tuesday, 720);
    let done = |d| Some((day(2026, 5, d), false));
    let waits = |d| Some((day(2026, 5, d), true));
    check(&plain, noon, &[hours(4, 0)], done(19)); // a full day, till 18:00
    check(&plain, noon, &[hours(5, 0)], done(20));
    // What is left of today, and nothing of it after closing.
    check(&plain, (tuesday, 16 * 60), &[hours(2, 0)], done(19));
    check(&plain, (tuesday, 16 * 60), &[hours(3, 0)], done(20));
    check(&plain, (tuesday, 20 * 60), &[hours(1, 0)], done(20));
    // A week of cure from Tuesday 18:00 is over on the Tuesday after, at 18:00.
    check(&plain, noon, &[hours(4, 7 * 24)], waits(26));
    let oiled = Step { cure: Span::minutes(7 * 1_440), ..hours(4, 24) };
    check(&plain, noon, &[oiled, hours(4, 0)], waits(26));
    check(&plain, noon, &[oiled, hours(32, 0)], done(29));
    // Nothing to do is ready today.
    check(&plain, noon, &[], done(19));
    check(&plain, (tuesday, 0), &[], done(19));
    check(&off(&[day(2026, 5, 20), day(2026, 5, 21)]), (tuesday, 20 * 60), &[hours(4, 0)], done(22));
    check(&plain, noon, &[hours(24 * 366 * 10, 0)], None);
    assert_eq!(plain.ready(Wall::new(tuesday.start(Offset::UTC), Offset::UTC), &[hours(4, 0)]).map(Ready::promise), Some(day(2026, 5, 20)));
}

/// Begun at eight with four hours a day till 18:00: an hour of hands till nine, six hours in clamps till three, an hour till four. Four
/// hours are all that day has, whenever they are. In the night nothing is begun before eight.
#[test]
fn what_is_begun_in_the_morning_waits_meanwhile() {
    let plain = Workdays::default();
    let check = |minute: i64, worked: i64, steps: &[Step], on: u32| {
        let now = Wall::new(day(2026, 5, 19).start(Offset::UTC).plus(Span::minutes(minute)), Offset::UTC);
        let ready = plain.ready_after(Span::minutes(worked), now, steps).map(|ready| ready.day);
        assert_eq!(ready, Day::ymd(2026, 5, on), "{minute} {worked}");
    };
    let clamped = [hours(1, 6), hours(1, 0)];
    check(8 * 60, 0, &clamped, 19);
    check(11 * 60, 0, &clamped, 20); // out of the clamps at 18:00
    check(8 * 60, 180, &clamped, 20);
    check(8 * 60, 0, &[hours(5, 0)], 20);
    check(0, 0, &[hours(1, 9), hours(1, 0)], 20); // not from midnight on: out of them at 18:00
}

/// Two makers' sums. Eight hours from 9:00 to 17:00, Saturday and Sunday off, Thursday 5 March 2026 too: on Wednesday at 8:50 neither 4 h 38 nor
/// 6 h 06 is more than that day has. Begun on that Thursday, 48 h 53 are six days from Friday the 6th to Friday the 13th, and 53 minutes of
/// Monday the 16th. Four hours a day: what is done on Friday the 6th at 13:18 is hard a week later at that hour, on Friday the 13th.
#[test]
fn makers_sums() {
    let mut days = [true; 7];
    (days[5], days[6]) = (false, false);
    let closing = Clock::at(17, 0).unwrap();
    let mut work = Workdays { bench: Span::minutes(480), closing, days, ..off(&[day(2026, 3, 5)]) };
    let at = |d, minute| Wall::new(day(2026, 3, d).start(Offset::UTC).plus(Span::minutes(minute)), Offset::UTC);
    let step = |minutes| Step { hands: Span::minutes(minutes), ..Step::default() };
    let ready = |work: &Workdays, from, step| work.ready(from, &[step]).map(|ready| (ready.day, ready.waits()));
    for minutes in [278, 366] {
        assert_eq!(ready(&work, at(4, 530), step(minutes)), Some((day(2026, 3, 4), false)));
    }
    assert_eq!(ready(&work, at(5, 530), step(48 * 60 + 53)), Some((day(2026, 3, 16), false)));
    (work.bench, work.off) = (Span::minutes(240), Set::default());
    let hard = Step { cure: Span::minutes(7 * 1_440), ..step(18) };
    assert_eq!(ready(&work, at(6, 780), hard), Some((day(2026, 3, 13), true)));
}

#[test]
fn days_that_can_not_be_worked_are_refused() {
    let plain = Workdays::default();
    let hours = |met, most| Err(Refusal::HoursOutOfRange { met: Span::minutes(met), least: BENCH_LEAST, most: Span::minutes(most) });
    let of = |minutes| Workdays { bench: Span::minutes(minutes), ..plain.clone() };
    assert_eq!((plain.check_days(), plain.check_hours()), (Ok(()), Ok(())));
    assert_eq!(Workdays { days: [false; 7], ..plain.clone() }.check_days(), Err(Refusal::NoWorkingDay));
    for met in [0, -60, 14, 1_081, 25 * 60] {
        assert_eq!(of(met).check_hours(), hours(met, 1_080));
    }
    assert_eq!((of(15).check_hours(), of(1_080).check_hours()), (Ok(()), Ok(())));
    let early = Workdays { closing: Clock::at(3, 0).unwrap(), ..plain.clone() };
    assert_eq!(early.check_hours(), hours(240, 180));
    // What can't be said is no endless search.
    let never = Workdays { days: [false; 7], ..plain };
    assert_eq!(never.back(day(2026, 5, 22), &[hours_of_one()]), [None]);
    assert_eq!(never.ready(Wall::new(Moment::at(0), Offset::UTC), &[hours_of_one()]), None);
}

fn hours_of_one() -> Step {
    hours(1, 0)
}

/// Tuesday noon, ten hours of others first: four till 18:00, four on Wednesday, two on Thursday till 16:00. What has no hands left hardens
/// meanwhile; what wants hands has them after that, and not before its own wait is over.
#[test]
fn hands_alone_come_after_other_hands() {
    let plain = Workdays::default();
    let check = |others: i64, steps: &[Step], on: u32, is_waiting: bool| {
        let now = Wall::new(day(2026, 5, 19).start(Offset::UTC).plus(Span::minutes(720)), Offset::UTC);
        let ready = plain.ready_behind((Span::minutes(others * 60), Span::ZERO), now, steps);
        assert_eq!(ready.map(|ready| (ready.day, ready.waits())), Some((day(2026, 5, on), is_waiting)), "{others}");
    };
    let hard = Step { cure: Span::minutes(7 * 1_440), ..Step::default() };
    check(0, &[hard], 26, true);
    check(10, &[hard], 26, true);
    check(10, &[], 19, false);
    check(10, &[hours(2, 0)], 21, false);
    check(10, &[hours(3, 0)], 22, false);
    // In clamps till Wednesday, 12:00, which is while others are worked; and till Saturday, 12:00, which is not.
    check(10, &[hours(0, 24), hours(2, 0)], 21, false);
    check(10, &[hours(0, 96), hours(2, 0)], 23, false);
    // A wait that its own hands begin comes after these.
    check(10, &[hours(2, 24)], 22, true);
    // What has no hands left hardens since it was put on, whatever hands are planned before it: a week from Tuesday noon.
    check(10, &[hours(2, 24), hard], 26, true);
    // Nor do two that wait already wait one after the other: till Friday, 12:00.
    check(10, &[hours(0, 24), hours(0, 72)], 22, true);
}

/// Before Friday, 22 May: what waits already must have begun by then, and holds up no hands that are planned before it, but those behind it.
#[test]
fn what_waits_already_holds_up_what_comes_behind_it_alone() {
    let (plain, due) = (Workdays::default(), day(2026, 5, 22));
    let check = |steps: &[Step], begins: &[(u32, i64)]| {
        let begins: Vec<_> = begins.iter().map(|(on, minute)| Some((day(2026, 5, *on), *minute))).collect();
        assert_eq!(plain.begins(due, steps), begins, "{steps:?}");
    };
    let hard = Step { cure: Span::minutes(2 * 1_440), ..Step::default() };
    check(&[hours(4, 0), hard], &[(21, 840), (20, 0)]);
    check(&[hard, hours(4, 0)], &[(20, 0), (21, 840)]);
    check(&[hours(4, 0), hours(0, 24), hours(2, 0)], &[(20, 960), (20, 960), (21, 960)]);
}
