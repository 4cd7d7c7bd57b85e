//! Three old jobs: a name, hours in all, pieces, what had been thought, what it sold for; one row each.

use super::{Asked, worded};
use crate::app::form::Form;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{Draft, What};
use crate::app::jobs::estimate::{FIGURES, ROWS};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even};
use crate::screens::jobs::entry::Slot;
use crate::screens::jobs::say;
use crate::screens::{Seen, slots};
use crate::view::{El, el};
use crate::words::en::{estimate as words, jobs};
use fivebar_core::quantity::Listed;

const NAMES: [&str; ROWS] = ["old-job-1", "old-job-2", "old-job-3"];

pub fn asked(draft: &Draft, app: &App, seen: Seen<'_>) -> Asked {
    let is_mended = matches!(draft.what, What::OldJob(_));
    let mut asked = Asked::new("jobs/old-jobs", if is_mended { words::OLD_JOB } else { words::OLD_JOBS });
    let narrow = seen.page.is_narrow();
    let row = row(if narrow { "" } else { draft.picks.currency.code() });
    // One row is open, so that the pad stays under the thumb.
    let open = draft.form.at.checked_div(FIGURES).unwrap_or(0);
    asked.slots = (0..ROWS).flat_map(|_| row.clone()).listed();
    asked.above.extend((!narrow && !is_mended).then(|| el("p", "t14").text(words::OLD_JOBS_ASK)));
    asked.above.extend((narrow && !is_mended).then(|| rows(draft, open, seen)));
    let mut others = vec![];
    for (id, nth) in NAMES.into_iter().zip(0_u32..).take(draft.words.len()) {
        let (at, title) = (nth as usize, words::old_job_name(&seen.speech.count(nth.saturating_add(1))));
        let first = at.saturating_mul(FIGURES);
        if at == open {
            asked.above.push(worded(id, if is_mended { jobs::NAME } else { &title }, draft, at));
        } else if !narrow {
            others.push(folded(draft, (title, at), first));
        }
    }
    let why = slots::why(&draft.form, &asked.slots, (draft.picks.units, seen)).filter(|_| !narrow);
    let figures = figures(&draft.form, &row, open.saturating_mul(FIGURES)).kids(why);
    let refused = slots::refused(app, seen);
    asked.figures = Some(el("div", "col").kid(figures).kid(el("div", "g2").kids(others)).kids(refused));
    asked.below = (narrow && !is_mended).then(|| el("p", "t14").text(words::OLD_JOBS_ASK));
    asked
}

/// The figures of a row.
fn row(currency: &str) -> [Slot; FIGURES] {
    [Slot::new(words::IT_TOOK, ""), Slot::new(words::PIECES, ""), Slot::new(words::YOU_THOUGHT, ""), Slot::new(words::SOLD_FOR, currency)]
}

/// On a narrow page the rows lie side by side, so that name, figures and pad are seen together.
fn rows(draft: &Draft, open: usize, seen: Seen<'_>) -> El<Msg> {
    let row = |nth: u32| {
        let at = nth as usize;
        let hours = Some(draft.form.text(at.saturating_mul(FIGURES))).filter(|hours| !hours.is_empty()).map(words::hours);
        Seg::new(seen.speech.count(nth.saturating_add(1)), at == open).under(hours.unwrap_or_default())
    };
    even(words::OLD_JOBS, (0_u32..).take(ROWS).map(row).listed(), |nth| say(Tap::At(nth.saturating_mul(FIGURES))))
}

/// A row that is not open, with what was typed in it.
fn folded(draft: &Draft, (title, at): (String, usize), first: usize) -> El<Msg> {
    let name = draft.words.get(at).cloned().filter(|name| !name.trim().is_empty());
    let hours = Some(draft.form.text(first)).filter(|hours| !hours.is_empty()).map(words::hours);
    let under = [name, hours].into_iter().flatten().listed().join(", ");
    key("key left h56", title, under, say(Tap::At(first)))
}

/// The figures of one row.
fn figures(form: &Form, row: &[Slot], first: usize) -> El<Msg> {
    let keys = row.iter().zip(first..).map(|(slot, nth)| slots::slot_key(form, nth, slot, say(Tap::At(nth))));
    el("div", "g2 slots").kids(keys)
}
