//! A job from its entries.

mod brought;
mod coins;
mod dues;
pub(in crate::ledger) mod facts;
mod fees;
mod handed;
mod lots;
mod orders;
mod paid_for;
mod selling;
mod settle;
mod sums;

pub use brought::{BroughtBack, ComesBack, Lines, exact_part, part};
pub use dues::GalleryDue;
pub use facts::{Described, Ended, Job, Operation, Part, PlannedCost};
pub use lots::Lot;
pub use selling::{
    Agreement, AgreementState, Asked, Consigned, GalleryTerms, Guesses, HandedBack, LikePiece, NotForSale, Offer, Over, PartOfPay, Payment,
    RestGivenUp, RestPaid, Reversed, Sale, Selling,
};

use super::booked::{booked, without_lost};
use super::estimate::Kept;
use super::numbers::Numbers;
use super::taxes::TaxBy;
use crate::ledger::kind::bench::Kind;
use crate::ledger::kind::haul::{PiecesFreed, PiecesTaken};
use crate::ledger::kind::job::{JobBegan, JobDescribed};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::order_by_key;
use crate::quantity::{Clock, Currency, Id, Length, Listed, Money, Offset, Wall};

/// Every job, the newest first.
pub fn jobs(book: &Book) -> impl Iterator<Item = Job> + '_ {
    let ids = book.subjects().filter_map(|subject| if let Subject::Job(id) = subject { Some(id) } else { None });
    let mut found: Vec<Job> = ids.filter_map(|id| job(book, id)).listed();
    order_by_key(&mut found, |job| std::cmp::Reverse((job.began.at, job.id)));
    found.into_iter()
}

/// Whether any job was begun and stands.
pub fn any_job(book: &Book) -> bool {
    book.subjects().any(|subject| matches!(subject, Subject::Job(id) if job(book, id).is_some()))
}

/// The job of an id, if it was begun and that stands.
pub fn job(book: &Book, id: Id) -> Option<Job> {
    folded(id, book.about(Subject::Job(id)))
}

/// The operations that were planned of a job when an entry was written.
pub fn planned_before(book: &Book, id: Id, written: Id) -> Vec<Operation> {
    // The rest of the job says nothing of them.
    let says = |entry: &&Entry| matches!(entry.fact, Fact::JobBegan(_) | Fact::OperationPlanned(_) | Fact::BatchPlanned(_));
    folded(id, book.stood_before(Subject::Job(id), written).filter(says)).map(|job| job.operations).unwrap_or_default()
}

fn folded<'a>(id: Id, entries: impl Iterator<Item = &'a Entry> + Clone) -> Option<Job> {
    let began = |entry: &Entry| if let Fact::JobBegan(f) = &entry.fact { Some(Job::new(id, f, entry.wall)) } else { None };
    let mut job = entries.clone().find_map(began)?;
    let mut numbers = Numbers::default();
    for entry in entries {
        apply(&mut job, entry);
        numbers.take(entry, entry.wall.at);
    }
    job.operations = super::name::in_making_order(std::mem::take(&mut job.operations), |planned| (planned.kind, planned.stage));
    job.operations.iter_mut().for_each(|operation| operation.pieces = numbers.of(id, &operation.op));
    job.booked = without_lost(std::mem::take(&mut job.booked));
    job.selling.settle();
    Some(job)
}

fn apply(job: &mut Job, entry: &Entry) {
    match &entry.fact {
        Fact::PiecesTaken(f) => taken(job, f),
        Fact::PiecesFreed(f) => freed(job, f),
        Fact::MoneySpent(_) | Fact::DistanceDriven(_) => {
            let line = booked(entry).filter(|line| line.sum.currency() == job.currency);
            job.booked.extend(line);
        }
        Fact::JobTaxSet(f) => job.tax = TaxBy::set(f),
        Fact::TagSet(f) => job.tag = of(job.currency, f.sum).or(job.tag),
        Fact::SettleSet(f) => job.settle = f.sum.and_then(|sum| of(job.currency, sum)),
        _ => {
            planned(job, entry);
            job.selling.apply(entry, (job.currency, job.tag));
        }
    }
}

fn planned(job: &mut Job, entry: &Entry) {
    match &entry.fact {
        Fact::JobDescribed(f) => described(job, f, entry.offset()),
        Fact::PartPlanned(f) => {
            let part = Part { name: f.name.clone(), n: f.n, size: [f.thickness, f.width, f.length], wood: f.wood.clone() };
            put(&mut job.parts, part, |part| part.name == f.name);
            job.parts.retain(|part| 0 < part.n);
        }
        Fact::OperationPlanned(f) => {
            let stage = f.stage.unwrap_or(f.kind.stage());
            let operation = Operation { op: f.op.clone(), kind: f.kind, stage, span: f.span, pieces: f.pieces, at: entry.at() };
            put(&mut job.operations, operation, |operation| operation.op == f.op);
        }
        Fact::CostPlanned(f) if f.sum.currency() == job.currency => {
            let (at, after) = (entry.at(), job.booked.len());
            let before = job.planned_costs.iter().find(|cost| cost.kind == f.kind && cost.delivery);
            let first = before.map_or((at, after), |cost| cost.first);
            let cost = PlannedCost {
                kind: f.kind.clone(),
                sum: f.sum,
                what: f.what.clone(),
                delivery: f.delivery.unwrap_or(false),
                at,
                after,
                first,
            };
            put(&mut job.planned_costs, cost, |cost| cost.kind == f.kind);
            job.planned_costs.retain(|cost| !cost.sum.is_zero());
        }
        Fact::JobEnded(f) => job.ended = Some(Ended { wall: entry.wall, hauls: f.hauls.clone() }),
        Fact::JobReopened(_) => job.ended = None,
        Fact::RoomRangeSet(f) => job.room = Some((f.low.0, f.high.0)),
        Fact::PlanKept(_) | Fact::PlanUsed(_) => super::plan::planned(&mut job.plans, entry),
        Fact::DesignUsed(f) => job.design = Some(f.design),
        Fact::EstimateMade(f) => estimated(job, Kept::of(entry, f)),
        Fact::WholePlanned(f) => {
            job.whole_planned = f.whole;
            job.whole_thought = f.whole && job.operations.iter().any(|operation| operation.kind == Kind::Make);
        }
        Fact::FactorSet(f) => job.without_factor = !f.with,
        Fact::DeadlineSet(f) => job.described.due = f.day.map(|day| Wall::new(day.at(Clock::NOON, entry.offset()), entry.offset())),
        Fact::QuoteGiven(f) => job.quote = super::dates::Quote::of(entry, f, job.currency).or(job.quote),
        Fact::JobMarked(f) => job.typical = f.typical,
        Fact::LessonWritten(f) => job.lesson = Some(f.text.clone()).filter(|text| !text.is_empty()),
        _ => {}
    }
}

fn estimated(job: &mut Job, kept: Option<Kept>) {
    if kept.is_some() {
        (job.kept, job.kept_for) = (kept, job.operations.iter().map(|planned| planned.op.clone()).listed());
    }
}

/// Replaces the one that is meant, or adds it.
fn put<T>(list: &mut Vec<T>, new: T, meant: impl Fn(&T) -> bool) {
    match list.iter_mut().find(|old| meant(old)) {
        Some(old) => *old = new,
        None => list.push(new),
    }
}

fn of(currency: Currency, sum: Money) -> Option<Money> {
    Some(sum).filter(|sum| sum.currency() == currency)
}

fn set<T: Clone>(place: &mut Option<T>, value: &Option<T>) {
    if value.is_some() {
        place.clone_from(value);
    }
}

/// Sets what was said anew, or takes it away.
fn or_nothing<T: Clone>(place: &mut Option<T>, value: &Option<T>, is_nothing: impl Fn(&T) -> bool) {
    if let Some(value) = value {
        *place = Some(value.clone()).filter(|value| !is_nothing(value));
    }
}

fn taken(job: &mut Job, f: &PiecesTaken) {
    let n = job.wood.entry((f.haul, f.pile)).or_default();
    *n = n.saturating_add(f.n);
}

fn freed(job: &mut Job, f: &PiecesFreed) {
    if let Some(n) = job.wood.get_mut(&(f.haul, f.pile)) {
        *n = n.saturating_sub(f.n);
    }
    job.wood.retain(|_, n| 0 < *n);
}

fn described(job: &mut Job, f: &JobDescribed, place: Offset) {
    if let Some(name) = &f.name {
        job.name.clone_from(name);
    }
    job.pieces = f.pieces.unwrap_or(job.pieces);
    let said = &mut job.described;
    set(&mut said.piece, &f.piece);
    let sides = [(&mut said.width, f.width), (&mut said.depth, f.depth), (&mut said.height, f.height)];
    sides.into_iter().for_each(|(side, new)| or_nothing(side, &new, |side| *side == Length::ZERO));
    or_nothing(&mut said.grams, &f.weight, |grams| *grams == 0);
    let words = [(&mut said.wood, &f.wood), (&mut said.finish, &f.finish), (&mut said.care, &f.care), (&mut said.delivery, &f.delivery)];
    words.into_iter().for_each(|(word, new)| or_nothing(word, new, String::is_empty));
    set(&mut said.due, &f.due.map(|due| Wall::new(due, place)));
    set(&mut said.note, &f.note);
}

impl Job {
    pub(crate) fn new(id: Id, f: &JobBegan, began: crate::quantity::Wall) -> Job {
        Job {
            id,
            began,
            name: f.name.clone(),
            currency: f.currency,
            units: f.units,
            pieces: f.pieces,
            made_for: f.made_for,
            described: Described::default(),
            parts: vec![],
            operations: vec![],
            planned_costs: vec![],
            wood: crate::quantity::Sorted::new(),
            booked: vec![],
            tax: TaxBy::Usual,
            tag: None,
            settle: None,
            selling: Selling::default(),
            ended: None,
            typical: true,
            lesson: None,
            room: None,
            plans: vec![],
            design: None,
            kept: None,
            kept_for: vec![],
            whole_planned: false,
            without_factor: false,
            whole_thought: false,
            quote: None,
        }
    }
}
