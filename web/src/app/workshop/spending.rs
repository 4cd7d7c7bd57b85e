//! Costs of no job, written down by the forms that jobs have: their taps are heard with no job open.

use super::super::App;
use super::super::jobs;
use super::super::jobs::draft::{Way, What, begin};
use super::super::spent_on::SpentOn;
use super::{Over, Tap};
use crate::parts::Place;
use fivebar_core::ledger::decide::Now;
use fivebar_core::quantity::Key;

/// The kind of what is of no other.
const OTHER: &str = "workshop";

/// A form is in hand, and the tap is one of those it has.
pub fn is_of(app: &App, tap: &jobs::Tap) -> bool {
    use jobs::Tap::{At, Close, Home, Pick, Press, Save, Say};
    let is_form = matches!(tap, At(_) | Press(_) | Say(..) | Pick(_) | Home(..) | Save | Close);
    is_form && app.place == Place::Workshop && app.workshop.over == Over::Costs && app.workshop.spending.is_some()
}

/// Opens the form that a tap asks for; a drive that is turned into a sum is of no other kind.
pub fn asked(app: &mut App, tap: &Tap) {
    match *tap {
        Tap::Spend(kind) => open(app, What::Spend, Some((kind, Way::Sum))),
        Tap::Drive => open(app, What::Spend, Some((OTHER, Way::Drive))),
        Tap::CameBack(line) => open(app, What::CameBack(line), None),
        _ => {}
    }
}

fn open(app: &mut App, what: What, of: Option<(&str, Way)>) {
    (app.workshop.opened, app.notice, app.workshop.spent_on) = (None, None, SpentOn::default());
    with_none_open(app, |app| {
        app.jobs.draft = begin(app, what).map(Box::new);
        if let (Some(draft), Some((kind, way))) = (&mut app.jobs.draft, of) {
            (draft.picks.spending, draft.picks.way) = (Key::read(kind), way);
        }
    });
}

/// A tap of the form.
pub fn heard(app: &mut App, tap: jobs::Tap, now: Now) {
    with_none_open(app, |app| jobs::heard(app, tap, now));
}

/// Jobs as they are with no job open and this form in hand; after that what was open there is so again.
fn with_none_open(app: &mut App, act: impl FnOnce(&mut App)) {
    let open = app.jobs.open.take();
    std::mem::swap(&mut app.jobs.draft, &mut app.workshop.spending);
    act(app);
    std::mem::swap(&mut app.jobs.draft, &mut app.workshop.spending);
    app.jobs.open = open;
}
