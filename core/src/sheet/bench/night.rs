//! A clock that was forgotten over night: what is done on the run the next morning is no proof that anybody worked all night.

use super::{BenchSheet, Seen, bench};
use crate::bench::repair::{Because, Proposed};
use crate::bench::{Kind, Mender, On};
use crate::ledger::decide::BenchCommand;
use crate::ledger::kind::job::OperationPlanned;
use crate::ledger::told::{Phone, at};
use crate::quantity::{Currency, Decimal, Id, Money, Span};

fn seen(phone: &Phone, minute: i64) -> BenchSheet {
    bench(&phone.book, Seen { now: phone.wall(minute), ..Seen::default() })
}

/// Begun at 2:00 PM with a helper at 18 an hour, and looked at the next morning at 7:50 AM: 17 h 50, an hour is proposed.
fn night() -> (Phone, Id) {
    let mut phone = Phone::new("a");
    let cabinet = phone.job(0, "cabinet");
    let run = phone.start(840, "cut panels", cabinet);
    let pay = Money::whole(Decimal::new(18, 0), Currency::USD);
    phone.bench(840, BenchCommand::HelperJoins { run, person: None, pay }).unwrap();
    (phone, run)
}

fn asked(phone: &Phone, minute: i64) -> Option<Proposed> {
    let sheet = seen(phone, minute);
    sheet.running.and_then(|slab| slab.wrong).or_else(|| sheet.to_mend.iter().find_map(|mend| mend.wrong))
}

#[track_caller]
fn check(act: impl Fn(Id) -> BenchCommand) {
    let (mut phone, run) = night();
    let guess = Some(Proposed { at: at(900), because: Because::Default });
    assert_eq!(asked(&phone, 1_910), guess);
    phone.bench(1_910, act(run)).unwrap();
    assert_eq!(asked(&phone, 1_911), guess, "asked until it is answered");
    phone.stop(1_912, run);
    let sheet = seen(&phone, 1_913);
    assert_eq!((asked(&phone, 1_913), sheet.unsettled, sheet.today), (guess, 1, Span::ZERO), "the stop answers nothing");
    phone.bench(1_914, BenchCommand::StopAt { run, at: at(1_020), by: Mender::Typed }).unwrap();
    assert_eq!(asked(&phone, 1_915), None);
}

/// Nothing of the night is counted as today's while it still runs.
#[test]
fn the_night_is_not_today_before_it_is_answered() {
    let (phone, _) = night();
    assert_eq!(seen(&phone, 1_910).today, Span::ZERO);
}

#[test]
fn a_tap_of_the_next_morning_takes_no_question_away() {
    check(|run| BenchCommand::HelperLeaves { run, person: None });
    check(|run| BenchCommand::HelperJoins { run, person: None, pay: None });
    check(|run| BenchCommand::Done { run, n: 1 });
}

/// Said to be right at 7:50 AM, it is: a piece noted then speaks too.
#[test]
fn what_was_said_to_be_right_is() {
    let (mut phone, run) = night();
    phone.bench(1_910, BenchCommand::Confirm { run }).unwrap();
    phone.bench(1_911, BenchCommand::Done { run, n: 1 }).unwrap();
    assert_eq!(asked(&phone, 1_912), None);
}

/// Glued from 3:00 PM, clamped at 7:50 AM: the night is in no pace before it is answered for.
#[test]
fn the_night_makes_no_pace() {
    let mut phone = Phone::new("a");
    let cabinet @ On::Job(_) = phone.job(0, "cabinet") else { unreachable!() };
    let run = phone.start(900, "glue panels", cabinet);
    let On::Job(job) = cabinet else { unreachable!() };
    phone.bench(900, BenchCommand::PlanBatch { job, op: "glue panels".into(), n: 5 }).unwrap();
    phone.bench(950, BenchCommand::Done { run, n: 1 }).unwrap();
    phone.bench(1_910, BenchCommand::Done { run, n: 1 }).unwrap();
    let batch = seen(&phone, 1_911).running.unwrap().batch;
    // The one piece of which it is known what it took says what each takes; the other is done, and no more than that.
    assert_eq!((batch.n, batch.pace(), batch.unsettled), (2, Some(Span::minutes(50)), Span::minutes(961)));
    assert_eq!((batch.left(), batch.time, batch.each()), (Some(3), Span::minutes(50), batch.pace()));
}

/// A helper who comes with the start says no more of the end than the start does; one who comes later was seen at work.
#[test]
fn a_helper_who_comes_with_the_start_proves_no_end() {
    let check = |came: i64, at_minute: i64, because| {
        let mut phone = Phone::new("a");
        let cabinet = phone.job(0, "cabinet");
        let run = phone.start(840, "cut panels", cabinet);
        phone.bench(came, BenchCommand::HelperJoins { run, person: None, pay: None }).unwrap();
        assert_eq!(asked(&phone, 1_910), Some(Proposed { at: at(at_minute), because }), "{came}");
    };
    check(841, 900, Because::Default);
    check(845, 900, Because::Default);
    check(870, 870, Because::LastAct);
}

/// Four hours of cutting are planned. From the last hour of a day to the next morning it was forgotten once: until that is answered it takes
/// nothing off the plan, so that the next run is asked about after four hours and half as much again, not after three; a fortnight later it counts as it stands.
#[test]
fn a_forgotten_stop_is_not_off_what_is_left_of_the_plan() {
    let check = |answered: bool, start: i64, asked_from: i64| {
        let mut phone = Phone::new("a");
        let cabinet @ On::Job(job) = phone.job(0, "cabinet") else { unreachable!() };
        let planned =
            OperationPlanned { op: "cut".into(), kind: Kind::Make, stage: None, span: Some(Span::minutes(240)), job, pieces: None };
        phone.note(1, planned);
        let forgotten = phone.start(1_020, "cut", cabinet);
        phone.stop(1_920, forgotten);
        if answered {
            phone.bench(1_921, BenchCommand::StopAt { run: forgotten, at: at(1_050), by: Mender::Typed }).unwrap();
        }
        phone.start(start, "cut", cabinet);
        let is_asked = |after: i64| seen(&phone, start + after).running.unwrap().wrong.is_some();
        assert_eq!([asked_from, asked_from + 1].map(is_asked), [false, true], "{answered} {start}");
    };
    check(false, 1_930, 360);
    check(true, 1_930, 315);
    check(false, 1_930 + 15 * 1_440, 180);
}
