//! For how many pieces the sum of an agreement was named.

use super::super::super::App;
use super::{Draft, What, as_asked};
use fivebar_core::quantity::reading::{self, Sign};
use fivebar_core::quantity::{Count, PILE_MOST};

/// A sum that stood there as it is asked goes along with pieces and tax.
pub fn goes_along(app: &mut App, was: Option<String>) {
    let new = as_asked(app);
    let Some((draft, (was, new))) = app.jobs.draft.as_mut().zip(was.zip(new)) else { return };
    if draft.form.text(0) == was {
        draft.form.put(0, new);
    }
}

/// After a key of the pad: a sum that was typed is for the pieces that stand beside it; one that goes along with them is for all of them.
pub fn named_for(app: &mut App) {
    let (asked, sign) = (as_asked(app), app.speech.sign());
    let Some(draft) = app.jobs.draft.as_mut().filter(|draft| draft.what == What::Agree) else { return };
    let n = reading::count(draft.form.text(2), sign, PILE_MOST).ok().filter(|n| 0 < *n);
    let is_named = draft.form.at == 0 || draft.picks.sum_for.is_none() || asked.is_some_and(|asked| asked == draft.form.text(0));
    draft.picks.sum_for = if is_named { n.or(draft.picks.sum_for) } else { draft.picks.sum_for };
}

/// For how many pieces the sum was named, where it is for another number now.
pub fn was_for(draft: &Draft, sign: Sign) -> Option<(Count, Count)> {
    let n = reading::count(draft.form.text(2), sign, PILE_MOST).ok().filter(|n| 0 < *n)?;
    let before = draft.picks.sum_for.filter(|before| *before != n && draft.what == What::Agree && !draft.form.is_empty(0))?;
    Some((before, n))
}
