//! The question about a forgotten stop stands on a page and blocks no start there.

use super::*;
use crate::app::jobs;
use fivebar_core::ledger::kind::job::OperationPlanned;

/// Sawn since ten, seen at seven in the evening: what runs after these, and that the earlier run is still asked about.
#[track_caller]
fn check(told: &mut Told, messages: Vec<Msg>, runs: &str) {
    told.at(600, messages);
    let now = sheet(&told.app);
    assert_eq!(now.running.map(|slab| (slab.run.work.op, slab.wrong)), Some((runs.into(), None)));
    assert_eq!(now.to_mend.iter().filter(|mend| mend.wrong.is_some()).count(), 1, "it is asked as before");
}

/// Trimmed for an hour, then sawn and not stopped.
fn asked() -> Told {
    let mut told = Told::stands();
    told.start(0, "Trim");
    told.start(60, "Saw");
    told.at(600, []);
    assert!(sheet(&told.app).running.is_some_and(|slab| slab.wrong.is_some()));
    told
}

#[test]
fn a_question_blocks_no_start_on_the_bench() {
    check(&mut asked(), vec![tap(Tap::Other), op("Sand")], "Sand");
    let mut told = asked();
    let board = sheet(&told.app).rack.lately.first().cloned().unwrap();
    check(&mut told, vec![tap(Tap::Board(board))], "Trim");
}

#[test]
fn a_question_blocks_no_start_on_big_buttons() {
    let mut told = asked();
    holds(&told.at(600, [tap(Tap::Big)]), &["Was the stop forgotten?"]);
    told.at(600, [tap(Tap::Stop)]);
    let carry = sheet(&told.app).carry_on.unwrap();
    check(&mut told, vec![tap(Tap::Board(carry))], "Saw");
}

#[test]
fn a_question_blocks_no_start_on_the_page_of_a_job() {
    let mut told = asked();
    let (currency, units) = (Currency::USD, Units::Inch);
    let began = JobCommand::Begin { name: "shelf".into(), currency, units, pieces: 1, made_for: For::Spec };
    let now = told.now(600);
    let job = told.app.order(&Command::Job(began), now).unwrap().entries[0].id;
    let sand = OperationPlanned { job, op: "Sand".into(), kind: Kind::Make, stage: None, span: Some(Span::minutes(60)), pieces: None };
    let now = told.now(600);
    told.app.order(&Command::Job(JobCommand::PlanOperation(sand)), now).unwrap();
    (told.app.place, told.app.jobs.open) = (Place::Jobs, Some(job));
    holds(&told.at(600, []), &["Start sand"]);
    check(&mut told, vec![Msg::Jobs(jobs::Tap::Next)], "Sand");
}
