//! The next act of a job, done: the clock starts at the bench, or the form that is next opens.

use super::super::bench::waits::next_held_up;
use super::super::order::{Feel, Order};
use super::super::price::{self, agree::AgreeTap};
use super::super::{App, plan};
use super::draft::{PaidTo, What};
use super::{Room, aside, sheet};
use crate::parts::Place;
use fivebar_core::bench::{On, Work};
use fivebar_core::ledger::decide::{BenchCommand, Command, Now};
use fivebar_core::ledger::fold::{Lot, Operation};
use fivebar_core::ledger::kind::bench::Kind;
use fivebar_core::quantity::{Id, Span};
use fivebar_core::sheet::job::{JobSheet, NextAct};

/// Does the next act of the open job.
pub fn next(app: &mut App, now: Now) {
    let Some(Ok(sheet)) = sheet(app) else { return };
    match &sheet.next {
        // What is left to cut comes before an empty bench.
        NextAct::WorkOn { op: None } if plan::is_to_cut(app, sheet.job) => plan::heard(app, plan::Tap::Saw(sheet.job), now),
        NextAct::Running { .. } | NextAct::WorkOn { op: None } | NextAct::Waits { .. } => app.go(Place::Bench),
        NextAct::WorkOn { op: Some(_) } if next_held_up(app, &sheet).is_some() => app.go(Place::Bench),
        NextAct::WorkOn { op: Some(op) } => {
            let planned = sheet.operations.iter().find(|planned| planned.op == *op).cloned();
            planned.into_iter().for_each(|planned| start(app, &planned, now));
        }
        NextAct::HandOver { .. } => match delivery(&sheet).cloned() {
            Some(delivery) => start(app, &delivery, now),
            None => form(app, Room::Sell, What::Sell(open_agreement(&sheet))),
        },
        NextAct::Collect { .. } => match sheet.sale.unpaid.first().copied() {
            Some((sale, _)) => form(app, Room::Sell, What::Pay(PaidTo::Sale(sale))),
            None => match sheet.selling.gallery_dues(sheet.account.currency).ok().and_then(|dues| dues.first().map(|due| due.of)) {
                Some(of) => form(app, Room::Sell, What::Pay(PaidTo::Gallery(of))),
                None => app.jobs.room = Some(Room::Sell),
            },
        },
        NextAct::HandBack { .. } => match sheet.sale.over.first().copied() {
            Some(over) => form(app, Room::Sell, What::HandBack(over)),
            None => app.jobs.room = Some(Room::Sell),
        },
        NextAct::PartDue { agreed, lacks, .. } => {
            let (agreed, lacks) = (*agreed, *lacks);
            form(app, Room::Sell, What::Pay(PaidTo::Part(agreed, lacks)));
        }
        NextAct::TakeWood => app.jobs.room = Some(Room::Wood),
        NextAct::SetTag => form(app, Room::Sell, What::Tag),
        NextAct::Agree { .. } => price::agree::heard(app, AgreeTap::OfJob(sheet.job), now),
        NextAct::Sell { .. } => form(app, Room::Sell, What::Sell(None)),
        NextAct::AtGallery { .. } => match lots(&sheet)[..] {
            [only] => form(app, Room::Sell, What::GalleryPaid(only.id)),
            _ => app.jobs.room = Some(Room::Sell),
        },
        NextAct::End | NextAct::LookBack => app.jobs.room = Some(Room::Back),
    }
}

/// The planned delivery that was not begun.
pub fn delivery(sheet: &JobSheet) -> Option<&Operation> {
    let logged = &sheet.account.hours.logged.by_op;
    sheet.operations.iter().find(|planned| planned.kind == Kind::Deliver && !logged.contains_key(&planned.op))
}

/// The first agreement whose pieces are not handed over.
pub fn open_agreement(sheet: &JobSheet) -> Option<Id> {
    sheet.selling.open().next().map(|agreement| agreement.id)
}

/// What galleries have of it still.
fn lots(sheet: &JobSheet) -> Vec<Lot> {
    sheet.selling.lots().into_iter().filter(|lot| 0 < lot.there()).collect()
}

/// The form for what was spent on a job.
pub fn spend(app: &mut App, job: Id) {
    app.go(Place::Jobs);
    app.jobs.room = Some(Room::Hours);
    aside::open(app, Some(job), What::Spend);
}

fn form(app: &mut App, room: Room, what: What) {
    app.jobs.room = Some(room);
    aside::open(app, app.jobs.open, what);
}

/// The operation's clock starts, and the bench shows it.
fn start(app: &mut App, planned: &Operation, now: Now) {
    let Some(job) = app.jobs.open else { return };
    let work = Work { op: planned.op.clone(), kind: planned.kind, stage: planned.stage, on: On::Job(job), person: None, rework: false };
    if app.order(&Command::Bench(BenchCommand::Start { work, ago: Span::ZERO }), now).is_some() {
        app.orders.push(Order::Feel(Feel::Start));
        app.go(Place::Bench);
    }
}
