//! A fair or a market before it is gone to, heard. Nothing of it is written.

use super::{Over, paid, sheet as list, shop};
use crate::app::App;
use crate::app::form::Form;
use crate::parts::pad::Press;
use fivebar_core::quantity::reading;
use fivebar_core::quantity::{Currency, Id, Span};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::fair::{Fair, FairSheet, Lacks, fair};

/// What is asked of a fair: stall, distance, hours.
#[derive(Clone, Debug, PartialEq)]
pub struct Stall {
    /// The pieces that are taken there; none where nothing is for sale.
    pub job: Option<Id>,
    pub form: Form,
    /// It was reckoned, of what was typed then.
    pub found: Option<Fair>,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum FairTap {
    Open,
    Job(Id),
    At(usize),
    Press(Press),
    Reckon,
    /// Back to what was typed.
    Again,
}

/// Takes in what is said of it.
pub fn heard(app: &mut App, tap: FairTap) {
    let sign = app.speech.sign();
    if tap == FairTap::Open {
        let job = list(app).ok().and_then(|sheet| sheet.for_sale.first().map(|row| row.job));
        return app.price.open(Over::Fair(Box::new(Stall { job, form: Form::of(3), found: None })));
    }
    if tap == FairTap::Reckon {
        return reckon(app);
    }
    let Over::Fair(stall) = &mut app.price.over else { return };
    match tap {
        FairTap::Job(job) => {
            stall.job = Some(job);
            stall.found.iter_mut().for_each(|found| found.job = job);
        }
        FairTap::At(nth) => stall.form.go(nth),
        FairTap::Press(press) => stall.form.press(press, sign),
        FairTap::Again => stall.found = None,
        FairTap::Open | FairTap::Reckon => {}
    }
}

/// The most hours of one fair.
const HOURS_MOST: i64 = 999;

fn reckon(app: &mut App) {
    let (sign, paid) = (app.speech.sign(), paid(app));
    let Some((currency, units)) = here(app).and_then(|job| Some((currency(app, job)?, shop(app).job(job).ok()?.units))) else { return };
    let Over::Fair(stall) = &mut app.price.over else { return };
    let typing = reading::Typing { units, sign };
    // A bare number is hours: that is what is asked.
    let hours = |text: &str| reading::span(&format!("{text} h"), sign, Span::minutes(HOURS_MOST.saturating_mul(60)));
    let typed = |form: &mut Form| {
        let stall = form.take(0, |text| reading::money(text, currency, sign))?;
        let distance = form.maybe(1, |text| reading::distance(text, typing))?;
        Some((stall, distance, form.take(2, hours)?))
    };
    let said = typed(&mut stall.form).zip(stall.job);
    stall.found = said.map(|((sum, distance, time), job)| Fair { job, paid, stall: sum, distance, time });
}

fn here(app: &App) -> Option<Id> {
    if let Over::Fair(stall) = &app.price.over { stall.job } else { None }
}

/// The currency of the pieces that are taken there.
pub fn currency(app: &App, job: Id) -> Option<Currency> {
    shop(app).job(job).map(|job| job.currency).ok()
}

/// What it takes.
///
/// # Errors
/// As the sheet.
pub fn sheet(app: &App, found: &Fair) -> Answer<Result<FairSheet, Lacks>> {
    fair(&shop(app), found)
}
