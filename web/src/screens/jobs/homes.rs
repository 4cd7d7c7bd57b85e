//! Where a kind of cost belongs: asked once, and what is on this job and in the rate as well.

use super::super::Seen;
use super::super::homes::{self, name};
use super::say;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::Picks;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::costs as words;
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::costs::{home_of, twice};
use fivebar_core::sheet::job::JobSheet;

/// Under the form: where the kind belongs, until that was said; and that it counts twice where it belongs in the rate.
pub fn asked(picks: &Picks, app: &App) -> Option<El<Msg>> {
    homes::asked(picks.spending.as_ref()?, (Home::Job, picks.currency), app, |kind, home| say(Tap::Home(kind, home)))
}

/// Kinds that this job carries and the rate too, each with its keys; and a helper who is paid by the hour and written down as well.
pub fn both(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (known, currency) = (app.shelf().workshop(), sheet.account.currency);
    let kinds = sheet.account.costs.lines.iter().filter_map(|line| line.kind.clone()).listed();
    let helper = sheet.helped.iter().any(|one| !one.pay.is_zero()) && kinds.iter().any(|kind| kind.as_str() == "helper");
    let year = seen.now.day().as_ymd().0;
    let twice = twice(&known, (currency, year), kinds.into_iter());
    let each = twice.into_iter().map(|kind| {
        let said = home_of(&known, currency, &kind).map_or_else(|| words::twice(&name(&kind)), |_| words::in_rate(&name(&kind)));
        let to = |home: Home, words: &'static str| key("key h56", words, "", say(Tap::Home(kind.clone(), home)));
        let rate = home_of(&known, currency, &kind).is_none().then(|| to(Home::Rate, words::IN_RATE));
        el("section", "").key(kind.to_string()).kid(caution(said)).kid(el("div", "g2").kid(to(Home::Job, words::ON_JOBS)).kids(rate))
    });
    each.chain(helper.then(|| el("div", "").kid(caution(words::HELPER_TWICE)))).listed()
}
