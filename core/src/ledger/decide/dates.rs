//! Orders about dates: working hours, days off, quotes.

use super::Act;
use super::job::{going_on, some_pieces};
use crate::bench::dates::DAYS_MOST;
use crate::ledger::kind::dates as kind;
use crate::ledger::{Book, fold};
use crate::quantity::{Day, Decimal, Wall};
use crate::refusal::{Answer, Refusal};

/// What can be ordered of dates.
#[derive(Clone, Debug, PartialEq)]
pub enum DatesCommand {
    SetWorkdays(kind::WorkdaysSet),
    /// Days off from one to another, both with it; or worked after all.
    SetOff {
        from: Day,
        to: Day,
        off: bool,
    },
    /// The day a job is to be done by, or none. One that is over already is taken: it is said, not refused.
    Promise(kind::DeadlineSet),
    Quote(kind::QuoteGiven),
}

/// The most days that are set off in one act.
pub const OFF_MOST: i32 = 92;

pub(super) fn decide(book: &Book, command: &DatesCommand, act: &mut Act) -> Answer<()> {
    match command {
        DatesCommand::SetWorkdays(f) => workdays(book, f, act),
        DatesCommand::SetOff { from, to, off } => set_off(book, (*from, *to), *off, act),
        DatesCommand::Promise(f) => promise(book, f, act),
        DatesCommand::Quote(f) => quote(book, f, act),
    }
}

fn workdays(book: &Book, f: &kind::WorkdaysSet, act: &mut Act) -> Answer<()> {
    let mut hours = fold::workshop(book).hours;
    let before = hours.clone();
    hours.set(f);
    if hours == before {
        return Err(Refusal::NothingAsked);
    }
    if f.bench.is_some() || f.closing.is_some() {
        hours.as_said().check_hours()?;
    }
    hours.workdays().check_days()?;
    act.add(f.clone());
    Ok(())
}

/// Only days that are not so yet are written.
fn set_off(book: &Book, (from, to): (Day, Day), off: bool, act: &mut Act) -> Answer<()> {
    let last = from.until(to);
    if !(0..OFF_MOST).contains(&last) {
        return Err(Refusal::DaysOutOfRange { met: last.saturating_add(1), least: 1, most: OFF_MOST });
    }
    near(act, to)?;
    let there = fold::workshop(book).hours.off;
    let days = (0..=last).map(|nth| from.plus(nth)).filter(|day| there.contains(day) != off);
    for day in days {
        act.add(kind::DayOffSet { day, off });
    }
    if act.facts().is_empty() { Err(Refusal::NothingAsked) } else { Ok(()) }
}

fn promise(book: &Book, f: &kind::DeadlineSet, act: &mut Act) -> Answer<()> {
    going_on(book, f.job)?;
    f.day.map_or(Ok(()), |day| near(act, day))?;
    let there = fold::job(book, f.job).and_then(|job| job.described.due).map(Wall::day);
    if there == f.day {
        return Err(Refusal::NothingAsked);
    }
    act.add(f.clone());
    Ok(())
}

fn quote(book: &Book, f: &kind::QuoteGiven, act: &mut Act) -> Answer<()> {
    going_on(book, f.job)?;
    for met in [f.low, f.high] {
        if met.amount() <= Decimal::ZERO {
            return Err(Refusal::NoPrice { met });
        }
    }
    if f.high.minus(f.low)?.amount() < Decimal::ZERO {
        return Err(Refusal::NoPrice { met: f.high });
    }
    match fold::job(book, f.job).map(|job| job.currency) {
        Some(one) if one != f.low.currency() => return Err(Refusal::CurrenciesMixed { one, other: f.low.currency() }),
        _ => {}
    }
    f.n.map_or(Ok(()), some_pieces)?;
    [f.ready, f.until, f.ready_last].into_iter().flatten().try_for_each(|day| near(act, day))?;
    let today = act.now().wall.day();
    if f.until.is_some_and(|until| until < today) {
        return Err(Refusal::DaysOutOfRange { met: f.until.map_or(0, |until| today.until(until)), least: 0, most: DAYS_MOST });
    }
    act.add(f.clone());
    Ok(())
}

/// Within ten years of today.
fn near(act: &Act, day: Day) -> Answer<()> {
    let met = act.now().wall.day().until(day);
    if met.saturating_abs() <= DAYS_MOST { Ok(()) } else { Err(Refusal::DaysOutOfRange { met, least: -DAYS_MOST, most: DAYS_MOST }) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::ledger::decide::Command;
    use crate::ledger::told::Phone;
    use crate::quantity::{Clock, Currency, Id, Money, Span};

    fn set() -> kind::WorkdaysSet {
        kind::WorkdaysSet::nothing()
    }

    #[track_caller]
    fn check(phone: &mut Phone, command: DatesCommand, refused: Option<Refusal>) {
        let before = phone.book.len();
        assert_eq!(phone.order(9, Command::Dates(command)).err(), refused);
        assert_eq!(phone.book.len() == before, refused.is_some());
    }

    #[test]
    fn only_what_is_said_changes_and_what_cannot_be_is_refused() {
        let mut phone = Phone::new("a");
        let workdays = |f| DatesCommand::SetWorkdays(f);
        let hours = |met: i64, most: i64| {
            let [met, least, most] = [met, 15, most].map(Span::minutes);
            Some(Refusal::HoursOutOfRange { met, least, most })
        };
        let bench = |minutes| kind::WorkdaysSet { bench: Some(Span::minutes(minutes)), ..set() };
        check(&mut phone, workdays(set()), Some(Refusal::NothingAsked));
        check(&mut phone, workdays(bench(0)), hours(0, 1_080));
        check(&mut phone, workdays(bench(1_500)), hours(1_500, 1_080));
        check(&mut phone, workdays(bench(300)), None);
        check(&mut phone, workdays(bench(300)), Some(Refusal::NothingAsked));
        let three = kind::WorkdaysSet { closing: Clock::at(3, 0), ..set() };
        check(&mut phone, workdays(three), hours(300, 180));
        check(&mut phone, workdays(kind::WorkdaysSet { closing: Clock::at(17, 0), sat: Some(false), ..set() }), None);
        let no = Some(false);
        let none = kind::WorkdaysSet { mon: no, tue: no, wed: no, thu: no, fri: no, ..set() };
        check(&mut phone, workdays(none), Some(Refusal::NoWorkingDay));
        let work = fold::workshop(&phone.book).hours.workdays();
        assert_eq!((work.bench, work.closing), (Span::minutes(300), Clock::at(17, 0).unwrap()));
        assert_eq!(work.days, [true, true, true, true, true, false, false]);
    }

    /// Two phones said what does not go together: hours that fit are reckoned with, and another tap is none the worse for it.
    #[test]
    fn hours_that_two_phones_said_leave_other_taps_alone() {
        let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
        let workdays = |f| Command::Dates(DatesCommand::SetWorkdays(f));
        one.order(1, workdays(kind::WorkdaysSet { bench: Some(Span::minutes(600)), ..set() })).unwrap();
        two.order(2, workdays(kind::WorkdaysSet { closing: Clock::at(8, 0), ..set() })).unwrap();
        one.merge(&two);
        assert_eq!(fold::workshop(&one.book).hours.workdays().bench, Span::minutes(480));
        check(&mut one, DatesCommand::SetWorkdays(kind::WorkdaysSet { sat: Some(false), ..set() }), None);
        let longer = kind::WorkdaysSet { bench: Some(Span::minutes(540)), ..set() };
        let refused = Refusal::HoursOutOfRange { met: Span::minutes(540), least: Span::minutes(15), most: Span::minutes(480) };
        check(&mut one, DatesCommand::SetWorkdays(longer), Some(refused));
    }

    #[test]
    fn days_off_are_set_together_and_taken_back_together() {
        let mut phone = Phone::new("a");
        let today = phone.wall(9).day();
        let off = |from, to, off| DatesCommand::SetOff { from: today.plus(from), to: today.plus(to), off };
        let out = |met, least, most| Some(Refusal::DaysOutOfRange { met, least, most });
        check(&mut phone, off(3, 2, true), out(0, 1, OFF_MOST));
        check(&mut phone, off(0, 92, true), out(93, 1, OFF_MOST));
        check(&mut phone, off(4_000, 4_000, true), out(4_000, -DAYS_MOST, DAYS_MOST));
        let there = |phone: &Phone| fold::workshop(&phone.book).hours.off.iter().map(|day| today.until(*day)).collect::<Vec<_>>();
        check(&mut phone, off(3, 5, true), None);
        let act = phone.order(10, Command::Dates(off(4, 6, true))).unwrap();
        assert_eq!(there(&phone), [3, 4, 5, 6]);
        check(&mut phone, off(4, 6, true), Some(Refusal::NothingAsked));
        check(&mut phone, off(4, 4, false), None);
        assert_eq!(there(&phone), [3, 5, 6]);
        phone.take_back(11, act);
        assert_eq!(there(&phone), [3, 5]);
    }

    #[test]
    fn a_day_is_promised_moved_and_lifted() {
        let mut phone = Phone::new("a");
        let On::Job(job) = phone.job(0, "Stool") else { unreachable!() };
        let today = phone.wall(9).day();
        let by = |days: Option<i32>| DatesCommand::Promise(kind::DeadlineSet { job, day: days.map(|days| today.plus(days)) });
        let due = |phone: &Phone| fold::job(&phone.book, job).unwrap().described.due.map(|due| today.until(due.day()));
        check(&mut phone, by(None), Some(Refusal::NothingAsked));
        check(&mut phone, by(Some(3_661)), Some(Refusal::DaysOutOfRange { met: 3_661, least: -DAYS_MOST, most: DAYS_MOST }));
        check(&mut phone, by(Some(20)), None);
        check(&mut phone, by(Some(20)), Some(Refusal::NothingAsked));
        check(&mut phone, by(Some(-1)), None);
        assert_eq!(due(&phone), Some(-1));
        let lifted = phone.order(10, Command::Dates(by(None))).unwrap();
        assert_eq!(due(&phone), None);
        phone.take_back(11, lifted);
        assert_eq!(due(&phone), Some(-1));
    }

    #[test]
    fn the_latest_quote_stands() {
        let mut phone = Phone::new("a");
        let On::Job(job) = phone.job(0, "Stool") else { unreachable!() };
        let sum = |amount: i64, currency| Money::whole(Decimal::from(amount), currency).unwrap();
        let usd = |amount| sum(amount, Currency::USD);
        let today = phone.wall(9).day();
        let of = |low, high| kind::QuoteGiven {
            job,
            low,
            high,
            n: None,
            ready: None,
            until: None,
            buyer: None,
            likely: None,
            safe: None,
            ready_last: None,
        };
        let until = |days| kind::QuoteGiven { until: Some(today.plus(days)), ..of(usd(300), usd(340)) };
        let quote = DatesCommand::Quote;
        check(&mut phone, quote(of(usd(0), usd(9))), Some(Refusal::NoPrice { met: usd(0) }));
        check(&mut phone, quote(of(usd(9), usd(8))), Some(Refusal::NoPrice { met: usd(8) }));
        check(
            &mut phone,
            quote(of(usd(9), sum(9, Currency::EUR))),
            Some(Refusal::CurrenciesMixed { one: Currency::EUR, other: Currency::USD }),
        );
        let euros = of(sum(9, Currency::EUR), sum(9, Currency::EUR));
        check(&mut phone, quote(euros), Some(Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR }));
        check(&mut phone, quote(until(-1)), Some(Refusal::DaysOutOfRange { met: -1, least: 0, most: DAYS_MOST }));
        check(&mut phone, quote(until(4_000)), Some(Refusal::DaysOutOfRange { met: 4_000, least: -DAYS_MOST, most: DAYS_MOST }));
        let nobody = Id::new(crate::ledger::told::at(0), [9; 10]);
        check(&mut phone, quote(kind::QuoteGiven { job: nobody, ..until(3) }), Some(Refusal::NotThere));
        let low = |phone: &Phone| fold::job(&phone.book, job).unwrap().quote.map(|quote| quote.low);
        check(&mut phone, quote(until(0)), None);
        let later = phone.order(10, Command::Dates(quote(of(usd(310), usd(350))))).unwrap();
        assert_eq!(low(&phone), Some(usd(310)));
        phone.take_back(11, later);
        assert_eq!(low(&phone), Some(usd(300)));
    }
}
