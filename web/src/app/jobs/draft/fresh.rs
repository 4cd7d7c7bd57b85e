//! A new job that is being written down while the workshop is set.

use super::super::super::App;
use super::super::cans::OfCan;
use super::What;
use fivebar_core::quantity::{Currency, Id, Units};

/// A new job is being written down.
pub fn is_of_new(app: &App) -> bool {
    app.jobs.draft.as_ref().is_some_and(|draft| draft.what == What::New)
}

/// Currency and units of a new job follow the workshop's, where the maker did not choose others for it.
pub fn follows(app: &mut App, was: (Currency, Units)) {
    let now = app.begins_with();
    if now == was || !is_of_new(app) {
        return;
    }
    let Some(draft) = &mut app.jobs.draft else { return };
    let picks = &mut draft.picks;
    if picks.currency == was.0 {
        picks.currency = now.0;
    }
    if picks.units == was.1 {
        (picks.units, picks.can) = (now.1, OfCan::of(now.1));
    }
}

/// A new job takes the design's name, unless it has one of its own.
pub fn pick_design(app: &mut App, design: Id) {
    let designs = app.own.workshop().designs.clone();
    let named = |id: Option<Id>| designs.iter().find(|design| Some(design.id) == id).map(|design| design.name.clone()).unwrap_or_default();
    let Some(draft) = &mut app.jobs.draft else { return };
    let was = draft.picks.design;
    draft.picks.design = Some(design).filter(|_| was != Some(design) && designs.iter().any(|known| known.id == design));
    let (old, new) = (named(was), named(draft.picks.design));
    draft.words.iter_mut().take(1).filter(|name| name.trim().is_empty() || **name == old).for_each(|name| name.clone_from(&new));
}
