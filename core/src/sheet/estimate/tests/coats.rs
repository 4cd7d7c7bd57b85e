//! What is left of coats of which the number was planned, and nobody said at the bench how many coats there are.

use super::*;
use crate::sheet::account::account;

/// An hour was thought for coating four pieces, 84 min with what is put on top: the first coat took 15 min for all of them.
fn coated() -> (Phone, On) {
    let (mut phone, job) = one_piece(&[("pegs", Some(50))]);
    let span = Some(Span::minutes(60));
    phone.note(2, OperationPlanned { job: id(job), op: "coat".into(), kind: Kind::Make, stage: None, span, pieces: Some(4) });
    coat(&mut phone, job, (100, 4));
    (phone, job)
}

/// A coat on so many pieces at once, a quarter of an hour.
fn coat(phone: &mut Phone, job: On, (minute, n): (i64, Count)) {
    let run = phone.start(minute, "coat", job);
    clamp(phone, minute + 14, (run, n, "coat"));
    phone.stop(minute + 15, run);
}

fn take_off(phone: &mut Phone, minute: i64) {
    let waits = crate::ledger::fold::waits(&phone.book).on().map(|wait| wait.id).collect();
    phone.order(minute, Command::Wait(crate::ledger::decide::WaitCommand::End { waits })).unwrap();
}

/// What is to come of the coats after an act; the hours of the job's price say the same.
#[track_caller]
fn check(act: impl FnOnce(&mut Phone, On), (minute, left): (i64, i64)) {
    let (mut phone, job) = coated();
    act(&mut phone, job);
    let shown = to_come(&phone, job, minute);
    assert_eq!(shown[1], left);
    let hours = account(&Shop::of(&phone.book, at(minute)), id(job)).unwrap().hours;
    assert_eq!(hours.to_come.map(Span::as_minutes), Some(shown.iter().sum()));
}

#[test]
fn no_less_is_to_come_than_the_plan_leaves_while_a_coat_may_follow() {
    check(|_, _| (), (116, 69));
    // One of the second coat: three of it would be 15 min at the pace, and a third may follow.
    check(|phone, job| coat(phone, job, (300, 1)), (316, 54));
    check(|phone, job| coat(phone, job, (300, 4)), (316, 54));
    // Longer than was thought, as in a plan of which nobody said a number.
    check(|phone, job| worked(phone, job, ("coat", 300, 380)), (381, 0));
    let done = |phone: &mut Phone, job| {
        phone.bench(200, BenchCommand::PlanBatch { job: id(job), op: "coat".into(), n: 4 }).unwrap();
    };
    check(done, (201, 0));
    check(|phone, job| worked(phone, job, ("pegs", 200, 205)), (206, 0));
    // Taken off, and a day later nobody came back to it.
    for (minute, left) in [(201, 69), (200 + 24 * 60 + 1, 0)] {
        check(|phone, _| take_off(phone, 200), (minute, left));
    }
}
