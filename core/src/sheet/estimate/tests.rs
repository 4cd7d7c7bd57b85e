//! Estimates of a phone's book: where each figure is from, and what a job will have taken in the end.

use super::*;
use crate::bench::On;
use crate::ledger::decide::{Command, EstimateCommand, PlanCommand};
use crate::ledger::kind::estimate::OldJobTold;
use crate::ledger::kind::job::{JobDescribed, JobEnded, JobMarked, OperationPlanned};
use crate::ledger::told::{Phone, at};
use crate::quantity::Decimal;

fn id(on: On) -> Id {
    if let On::Job(id) = on { id } else { unreachable!() }
}

fn plan(phone: &mut Phone, job: On, op: &str, minutes: Option<i64>) {
    let (op, span) = (op.into(), minutes.map(Span::minutes));
    phone.note(1, OperationPlanned { job: id(job), op, kind: Kind::Make, stage: None, span, pieces: Some(1) });
}

fn worked(phone: &mut Phone, job: On, (op, from, to): (&str, i64, i64)) {
    let run = phone.start(from, op, job);
    phone.stop(to, run);
}

fn end(phone: &mut Phone, minute: i64, job: On) {
    phone.note(minute, JobEnded { job: id(job), hauls: vec![] });
}

fn kind(phone: &mut Phone, job: On, piece: &str) {
    let nothing = JobDescribed { pieces: Some(1), piece: Key::read(piece), ..JobDescribed::of(id(job)) };
    phone.note(1, nothing);
}

fn seen(phone: &Phone, job: On, minute: i64) -> EstimateSheet {
    estimate(&Shop::of(&phone.book, at(minute)), id(job), true).unwrap()
}

#[track_caller]
fn check(phone: &Phone, job: On, rows: &[(Basis, Count, i64)]) {
    let found = seen(phone, job, 9_000).rows;
    let shown: Vec<_> = found.iter().map(|row| (row.from, row.jobs, row.likely.as_minutes())).collect();
    assert_eq!(shown, rows);
}

#[test]
fn each_figure_is_from_the_nearest_there_is() {
    let mut phone = Phone::new("a");
    let (one, next) = (phone.job(0, "one"), phone.job(1, "next"));
    check(&phone, next, &[]);
    assert_eq!(seen(&phone, next, 9).given(), None);
    kind(&mut phone, next, "stool");
    check(&phone, next, &[(Basis::Piece, 0, 360)]);
    plan(&mut phone, next, "saw", None);
    check(&phone, next, &[(Basis::Piece, 0, 259)]); // 72 % of six hours
    plan(&mut phone, next, "sand", None);
    check(&phone, next, &[(Basis::Piece, 0, 130), (Basis::Piece, 0, 130)]);
    plan(&mut phone, next, "sand", Some(100));
    check(&phone, next, &[(Basis::Piece, 0, 130), (Basis::Thought, 0, 140)]); // x 1.4 before any history
    worked(&mut phone, one, ("Sand ", 100, 150));
    kind(&mut phone, one, "boat");
    check(&phone, next, &[(Basis::Piece, 0, 130), (Basis::Thought, 0, 140)]);
    end(&mut phone, 200, one);
    check(&phone, next, &[(Basis::Piece, 0, 130), (Basis::Own, 1, 53)]); // no factor, so 5 % for rework on what history says of it
}

#[test]
fn a_job_that_is_not_typical_teaches_nothing() {
    let mut phone = Phone::new("a");
    let (odd, next) = (phone.job(0, "odd"), phone.job(1, "next"));
    plan(&mut phone, odd, "sand", Some(30));
    plan(&mut phone, next, "sand", Some(100));
    worked(&mut phone, odd, ("sand", 100, 160));
    end(&mut phone, 200, odd);
    let of = |phone: &Phone| {
        let sheet = seen(phone, next, 300);
        (sheet.rows[0].from, sheet.history.ratios.len(), sheet.history.own)
    };
    assert_eq!(of(&phone), (Basis::Own, 1, 1));
    let mark = phone.note(201, JobMarked { job: id(odd), typical: false });
    assert_eq!(of(&phone), (Basis::Thought, 0, 0));
    phone.take_back(202, mark);
    assert_eq!(of(&phone), (Basis::Own, 1, 1));
}

#[test]
fn a_design_is_learnt_from_apart() {
    let mut phone = Phone::new("a");
    let jobs = ["a", "b", "c"].map(|name| phone.job(0, name));
    for job in jobs {
        kind(&mut phone, job, "stool");
        plan(&mut phone, job, "sand", None);
    }
    let keep = PlanCommand::KeepDesign { job: id(jobs[0]), name: "stool".into() };
    let design = phone.order(2, Command::Plan(keep)).unwrap();
    for job in [jobs[0], jobs[2]] {
        phone.order(3, Command::Plan(PlanCommand::UseDesign { job: id(job), design })).unwrap();
    }
    worked(&mut phone, jobs[0], ("sand", 100, 200));
    worked(&mut phone, jobs[1], ("sand", 300, 700));
    end(&mut phone, 800, jobs[0]);
    end(&mut phone, 801, jobs[1]);
    check(&phone, jobs[2], &[(Basis::Design, 1, 105)]);
    let other = phone.job(900, "no design");
    kind(&mut phone, other, "stool");
    plan(&mut phone, other, "sand", None);
    check(&phone, other, &[(Basis::Own, 2, 210)]); // 200, the middle of the logarithms of 100 and 400, and 5 %
}

#[test]
fn three_old_jobs_are_a_history() {
    let mut phone = Phone::new("a");
    let next = phone.job(1, "next");
    kind(&mut phone, next, "bench");
    plan(&mut phone, next, "all of it", Some(1_140));
    let old = |name: &str, minutes, thought: Option<i64>, piece: Option<&str>| OldJobTold {
        name: name.into(),
        span: Span::minutes(minutes),
        thought: thought.map(Span::minutes),
        sum: None,
        piece: piece.and_then(Key::read),
        pieces: None,
    };
    let three = vec![old("a", 1_704, Some(1_200), None), old("b", 1_062, Some(900), None), old("c", 786, Some(600), None)];
    phone.order(2, Command::Estimate(EstimateCommand::Tell(three))).unwrap();
    let sheet = seen(&phone, next, 9);
    assert_eq!((sheet.history.told, sheet.history.factor().shown()), (3, Decimal::new(1_339, 3)));
    let given = sheet.given().unwrap();
    assert_eq!((given.likely.as_minutes(), given.thought.map(Span::as_minutes)), (1_526, Some(1_140)));
    assert_eq!((given.factor, given.jobs, given.allowance), (Some(Exact(Decimal::new(1_339, 3))), Some(3), None));
    let without = estimate(&Shop::of(&phone.book, at(9)), id(next), false).unwrap().given().unwrap();
    assert_eq!((without.likely.as_minutes(), without.factor), (1_226, None), "7.5 % for rework before history: never both");
    let blank = phone.job(3, "blank");
    kind(&mut phone, blank, "bench");
    check(&phone, blank, &[(Basis::Pieces, 3, 1_125)]); // the cube root of 1704 x 1062 x 786
    phone.order(4, Command::Estimate(EstimateCommand::Tell(vec![old("d", 300, None, Some("bench"))]))).unwrap();
    check(&phone, blank, &[(Basis::Pieces, 1, 300)]);
}

#[test]
fn a_running_job_says_where_it_will_end() {
    let mut phone = Phone::new("a");
    let job = phone.job(0, "job");
    kind(&mut phone, job, "boat");
    for (op, minutes) in [("saw", 100), ("glue", 50), ("sand", 200)] {
        plan(&mut phone, job, op, Some(minutes));
    }
    let ends = |phone: &Phone, minute| seen(phone, job, minute).progress.ends.map(Span::as_minutes);
    assert_eq!(ends(&phone, 99), None);
    worked(&mut phone, job, ("saw", 100, 160));
    assert_eq!(ends(&phone, 161), Some(140 + 70 + 280), "at hand: as it is likely");
    worked(&mut phone, job, ("glue", 200, 300));
    assert_eq!(ends(&phone, 301), Some(60 + 40 + 100 + 280), "left for something else: as it was thought");
    phone.start(400, "sand", job);
    assert_eq!(ends(&phone, 450), Some(100 + 100 + 280));
    assert_eq!(ends(&phone, 450 + 400), Some(100 + 100 + 450));
    let sheet = seen(&phone, job, 450);
    let Progress { thought, likely, so_far, .. } = sheet.progress;
    assert_eq!((thought, likely, so_far), (Some(Span::minutes(350)), Some(Span::minutes(490)), Span::minutes(210)));
}
