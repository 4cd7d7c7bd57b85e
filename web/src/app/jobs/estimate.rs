//! Estimates, heard: the kind of piece, with the factor or without it, the estimate as it is kept, and old jobs as they are typed.

use super::super::App;
use super::super::form::Form;
use super::super::order::{Feel, Order};
use super::draft::{Draft, What};
use crate::words::en::estimate::kind_in;
use fivebar_core::ledger::decide::{BookCommand, Command, EstimateCommand, JobCommand, Now, decide};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::estimate::{FactorSet, OldJobTold, WholePlanned};
use fivebar_core::ledger::kind::job::JobDescribed;
use fivebar_core::quantity::reading::{self, Sign};
use fivebar_core::quantity::{Currency, Decimal, Id, Key, Listed, PILE_MOST, Span};
use fivebar_core::sheet::estimate::{EstimateSheet, estimate};

/// Rows of the form, and figures in each: hours in all, pieces, what was thought, what all of it sold for.
pub const ROWS: usize = 3;
pub const FIGURES: usize = 4;

/// What can be said of an estimate.
#[derive(Clone, Debug, PartialEq)]
pub enum EstimateTap {
    /// The kind of piece, a key.
    Piece(&'static str),
    /// Another kind of piece is to be said.
    Kinds,
    /// The operations that are planned are all there is to do, or not.
    Whole(bool),
    /// With the factor, or without.
    Factor(bool),
    Keep,
    /// One old job counts no more; those told with it do.
    StrikeOld(Id),
    /// One that was struck counts again.
    PutBackOld(Id),
}

pub fn heard(app: &mut App, tap: EstimateTap, now: Now) {
    let Some(job) = app.jobs.open else { return };
    match tap {
        EstimateTap::Piece(piece) => {
            let facts = said_piece(job, piece);
            if app.order(&Command::Job(JobCommand::Describe(facts)), now).is_some() {
                app.jobs.kinds = false;
            }
        }
        EstimateTap::Kinds => app.jobs.kinds = !app.jobs.kinds,
        EstimateTap::Whole(whole) => {
            if app.order(&Command::Estimate(EstimateCommand::SayWhole(WholePlanned { job, whole })), now).is_some() {
                app.orders.push(Order::Feel(Feel::Start));
            }
        }
        EstimateTap::Factor(with) => {
            if app.order(&Command::Estimate(EstimateCommand::SetFactor(FactorSet { job, with })), now).is_some() {
                app.orders.push(Order::Feel(Feel::Start));
            }
        }
        EstimateTap::Keep => {
            let given = sheet(app, job).and_then(|sheet| sheet.given());
            let kept = given.and_then(|given| app.order(&Command::Estimate(EstimateCommand::Keep(given)), now));
            if kept.is_some() {
                app.orders.push(Order::Feel(Feel::Start));
            }
        }
        EstimateTap::PutBackOld(line) => {
            if app.order(&Command::Book(BookCommand::Restore { act: line }), now).is_some() {
                app.shelf_mut().stands_again(line);
            }
        }
        EstimateTap::StrikeOld(line) => {
            if app.order(&Command::Book(BookCommand::Strike { line }), now).is_some() {
                app.orders.push(Order::Feel(Feel::TakeBack));
            }
        }
    }
}

/// The estimate of a job as it stands.
pub fn sheet(app: &App, job: Id) -> Option<EstimateSheet> {
    estimate(&app.shelf().shop(app.now.at), job, true).ok()
}

/// What kind of piece a job is: as was said, else as its name tells.
pub fn kind_of(app: &App, job: Id) -> Option<Key> {
    app.shelf().shop(app.now.at).job(job).ok()?.kind_of_piece()
}

/// The kind of an old job whose name tells none: as it was told, else that of the job it is told for. One that is put right takes none of the job
/// whose page is open.
pub fn kind_for(app: &App, draft: &Draft) -> Option<Key> {
    match draft.what {
        What::OldJob(line) => app.shelf().workshop().old_jobs.iter().find(|old| old.entry == line)?.piece.clone(),
        _ => kind_of(app, app.jobs.open?),
    }
}

fn said_piece(job: Id, piece: &str) -> JobDescribed {
    JobDescribed { piece: Key::read(piece), ..JobDescribed::of(job) }
}

/// Three blank rows.
pub fn blank(draft: Draft) -> Draft {
    Draft { form: Form::of(ROWS.saturating_mul(FIGURES)), words: vec![String::new(); ROWS], ..draft }
}

/// The kind of an old job whose name tells none, and the job it is told for.
pub type Of<'a> = (Option<&'a Key>, Option<Id>);

/// Opens the row of the old job that was refused, the first where there are several.
pub fn go_to_the_fault(app: &App, draft: &mut Draft, (command, now): (&Command, Now)) {
    let Command::Estimate(EstimateCommand::Tell(jobs)) = command else { return };
    let alone = |job: &OldJobTold| decide(&app.shelf().book, &Command::Estimate(EstimateCommand::Tell(vec![job.clone()])), now);
    let wrong = jobs.iter().position(|job| alone(job).is_err());
    let filled = (0..ROWS).filter(|row| !is_blank(draft, *row)).listed();
    if let Some(row) = wrong.and_then(|nth| filled.get(nth)) {
        draft.form.go(row.saturating_mul(FIGURES));
    }
}

/// Nothing stands in a row.
fn is_blank(draft: &Draft, row: usize) -> bool {
    let first = row.saturating_mul(FIGURES);
    let nameless = draft.words.get(row).is_none_or(|name| name.trim().is_empty());
    nameless && (0..FIGURES).all(|nth| draft.form.is_empty(first.saturating_add(nth)))
}

/// The rows that were filled in; none where a figure was not taken. A row with nothing in it is left out.
pub fn told(draft: &mut Draft, of: Of, sign: Sign) -> Option<EstimateCommand> {
    let mut jobs = vec![];
    for row in 0..ROWS {
        let first = row.saturating_mul(FIGURES);
        let name = draft.words.get(row).map(|name| name.trim().to_owned()).unwrap_or_default();
        if is_blank(draft, row) {
            continue;
        }
        jobs.push(one(&mut draft.form, (name, first, of), (draft.picks.currency, sign))?);
    }
    Some(EstimateCommand::Tell(jobs))
}

/// The row of an old job as it is put right; none where a figure was not taken.
pub fn retold(draft: &mut Draft, (line, of): (Id, Of), sign: Sign) -> Option<EstimateCommand> {
    let name = draft.words.first().map(|name| name.trim().to_owned()).unwrap_or_default();
    let job = one(&mut draft.form, (name, 0, of), (draft.picks.currency, sign))?;
    Some(EstimateCommand::Retell { line, job })
}

/// What its name does not tell is of the kind that is known, else of that which its job will be said to be.
fn one(form: &mut Form, (name, first, of): (String, usize, Of), (currency, sign): (Currency, Sign)) -> Option<OldJobTold> {
    let hours = |text: &str| reading::number(text, sign, Decimal::ZERO..=Decimal::from(9_999)).map(spanned);
    let span = form.take(first, hours)?;
    let pieces = form.maybe(first.saturating_add(1), |text| reading::count(text, sign, PILE_MOST))?;
    let thought = form.maybe(first.saturating_add(2), hours)?;
    let sum = form.maybe(first.saturating_add(3), |text| reading::money(text, currency, sign))?;
    let piece = kind_in(&name).and_then(Key::read).or_else(|| of.0.cloned());
    Some(OldJobTold { name, span, thought, sum, piece, pieces, first: None, told_for: of.1 })
}

/// Hours as whole minutes.
fn spanned(hours: Decimal) -> Span {
    fold::hours(hours).map_or(Span::ZERO, |span| Span::minutes(span.as_minutes()))
}
