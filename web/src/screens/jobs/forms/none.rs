//! The forms of a job's costs as the workshop has them: its kind is chosen before, and no pack is shared, since a can has a form of its own.

use super::super::say;
use super::money::{self, WAYS, figures, put, rate_as_set, ways};
use super::{Asked, worded};
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{Draft, Pick, Picks, Way};
use crate::app::jobs::homes::is_open;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::screens::spent_on::{choice, spent_key};
use crate::screens::{Seen, homes};
use crate::view::{El, el};
use crate::words::en::{costs as cost_words, workshop as words};
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::quantity::{Id, Listed};
use fivebar_core::sheet::costs::has_tools;

/// What is spent on no job.
pub(super) fn spend(draft: &Draft, app: &App, seen: Seen<'_>) -> Asked {
    let (picks, drives) = (&draft.picks, draft.picks.way == Way::Drive);
    let kind = picks.spending.as_ref().map_or("workshop", |kind| kind.as_str());
    let mut asked = Asked::new("workshop/spend", words::spending(if drives { "distance" } else { kind }));
    let on = |tap| say(Tap::Pick(Pick::SpentOn(tap)));
    let what = worded("what-for", words::IN_YOUR_WORDS, draft, 0);
    asked.above.extend(words::spending_under(kind).filter(|_| !drives).map(|under| el("p", "").text(under)));
    asked.above.push(ways(picks.way, WAYS.into_iter().filter(|(way, _)| *way != Way::Share).listed()));
    // Under the figures: over them they would be out of sight on a small phone.
    asked.below = Some(el("div", "g2 low").kid(what).kid(spent_key(picks.spent_on, on, seen)));
    asked.above.extend(rate_as_set(draft, app, seen).filter(|_| drives));
    asked.slots = figures(picks);
    asked.instead = picks.spent_on.asks.then(|| choice(picks.spent_on, on, seen));
    match home(picks, app).filter(|_| !drives) {
        // Where a kind belongs is asked where the pad will be: over it Done would be out of sight on a small phone.
        Some(home) if is_open(app, draft) && !picks.home.is_passed => {
            asked.instead = asked.instead.or_else(|| Some(put(home, picks.home.is_put, seen)))
        }
        Some(home) if !is_open(app, draft) => asked.above.push(home),
        _ => {}
    }
    asked
}

/// Some of a cost of no job came back.
pub(super) fn came_back(draft: &Draft, spending: Id, app: &App) -> Asked {
    money::came_back(draft, spending, (&app.shelf().workshop().costs, app))
}

/// Where the kind belongs, until that was said; one that belongs on jobs is no workshop cost too.
fn home(picks: &Picks, app: &App) -> Option<El<Msg>> {
    let kind = picks.spending.as_ref()?;
    if kind.as_str() == "tools" && has_tools(&app.shelf().workshop(), picks.currency) {
        return Some(caution(cost_words::TOOL_TWICE));
    }
    homes::asked(kind, (Home::Rate, picks.currency), app, |kind, home| say(Tap::Home(kind, home)))
}
