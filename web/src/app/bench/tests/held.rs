//! Pieces that wait, told where they are sold, worked on next, and coated.

use super::super::waits::WaitTap;
use super::*;
use crate::app::jobs::draft::What;
use crate::app::jobs::{Room, Tap as JobsTap};
use crate::app::price::Tap as PriceTap;
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::job::OperationPlanned;

fn job(told: &Told) -> Id {
    fold::jobs(&told.app.shelf().book).next().unwrap().id
}

/// So many pieces clamped or coated from a minute on, and the clock stopped five minutes later.
fn waits(told: &mut Told, minute: i64, (op, n): (&str, &str)) {
    told.start(minute, op);
    told.at(minute + 5, [tap(Tap::MoreDone)]);
    told.at(minute + 5, presses(n).into_iter().chain([tap(Tap::PadDone)]));
    told.at(minute + 5, [tap(Tap::Stop)]);
}

fn open(told: &Told) -> [Msg; 2] {
    [Msg::Go(Place::Jobs), Msg::Jobs(JobsTap::Open(crate::app::Which::Own, job(told)))]
}

/// Oiled until the day after: the form of a sale on the job's page and the offer in Price say once how many are wet, and refuse nothing.
#[test]
fn who_sells_what_is_wet_reads_that() {
    for (n, said) in [("5", "All 5 of them are drying until Wed 4 March 09:05."), ("3", "3 of them are drying until Wed 4 March 09:05.")] {
        let mut told = Told::stands();
        waits(&mut told, 0, ("Oil", n));
        let form = [Msg::Jobs(JobsTap::Room(Room::Sell)), Msg::Jobs(JobsTap::Write(What::Sell(None)))];
        let at = open(&told);
        for shown in [told.at(6, at.into_iter().chain(form)), told.at(7, [Msg::Price(PriceTap::Offer(job(&told)))])] {
            holds(&shown, &[said]);
            assert_eq!(shown.matches("are drying until").count(), 1);
        }
        lacks(&told.at(8 + 1440, []), &["are drying until"]);
    }
}

/// All five are in clamps, and the coat is planned next: its page sends nobody to coat them before they are out.
#[test]
fn a_job_of_which_all_is_in_clamps_says_that() {
    let check = |n: &str, held: bool| {
        let mut told = Told::stands();
        let (job, now) = (job(&told), told.now(0));
        for op in ["Glue up", "Coat 1"] {
            let plan = OperationPlanned { job, op: op.into(), kind: Kind::Make, stage: None, span: None, pieces: Some(n.parse().unwrap()) };
            told.app.order(&Command::Job(JobCommand::PlanOperation(plan)), now).unwrap();
        }
        waits(&mut told, 0, ("Glue up", n));
        let at = open(&told);
        let shown = told.at(6, at);
        let (says, key) = ("All 5 of them are in clamps until 10:35. Then: coat 1.", "Start coat 1");
        if held {
            holds(&shown, &[says, "Go to the bench"])
        } else {
            holds(&shown, &[key])
        }
        lacks(&shown, &[if held { key } else { says }]);
        told.at(7, [Msg::Jobs(JobsTap::Next)]);
        assert_eq!((told.app.place == Place::Bench, sheet(&told.app).running.is_none()), (true, held));
        let at = open(&told);
        if held {
            holds(&told.at(140, at), &[key]);
        }
    };
    check("5", true);
    check("3", false);
}

/// All five are wet, and a coat is begun: the bench says so, until the first has the next coat, or they are dry.
#[test]
fn a_coat_that_is_begun_on_wet_ones_says_that() {
    let said = "The coat below is wet until Wed 4 March 09:05.";
    let mut told = Told::stands();
    waits(&mut told, 0, ("Oil", "5"));
    lacks(&told.at(6, []), &[said]);
    told.start(10, "Oil");
    told.at(10, [tap(Tap::AskBatch)]);
    told.at(10, presses("5").into_iter().chain([tap(Tap::PadDone)]));
    holds(&told.at(11, []), &[said]);
    lacks(&told.at(12, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]), &[said]);
    let mut told = Told::stands();
    waits(&mut told, 0, ("Oil", "3"));
    told.start(10, "Oil");
    lacks(&told.at(11, []), &["coat below"]);
    told.start(20, "Tidy");
    lacks(&told.at(21, []), &["coat below"]);
}
