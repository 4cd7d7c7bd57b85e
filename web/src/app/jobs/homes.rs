//! Where a kind of cost belongs, on each job or in the rate: asked in place of the pad once it is chosen, and by Done where it was passed over.

use super::super::App;
use super::draft::{Draft, Way, What};
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::ledger::kind::money::{CostHomed, Home};
use fivebar_core::quantity::Key;
use fivebar_core::sheet::costs::is_asked;

/// How far the question has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct AskedHome {
    /// A figure was tapped instead: its pad is up.
    pub is_passed: bool,
    /// Done has put it; the next Done leaves it open.
    pub is_put: bool,
}

/// Whether nobody has said yet where the kind belongs that is written down, and it can be of either.
pub fn is_open(app: &App, draft: &Draft) -> bool {
    let picks = &draft.picks;
    let kind = picks.spending.as_ref().filter(|_| draft.what == What::Spend && picks.way != Way::Drive);
    kind.is_some_and(|kind| is_asked(&app.shelf().workshop(), picks.currency, kind))
}

/// Done puts the question once, in sight; true when it does.
pub fn asks(app: &App, draft: &mut Draft) -> bool {
    let asks = is_open(app, draft) && !draft.picks.home.is_put;
    if asks {
        (draft.picks.more, draft.picks.spent_on.asks) = (false, false);
        draft.picks.home = AskedHome { is_passed: false, is_put: true };
    }
    asks
}

/// Where a kind belongs from now on, in the currency of the open job, or with none open in the workshop's. It is an act of its own: what was typed waits for its Done.
pub fn said(app: &mut App, (kind, home): (Key, Home), now: Now) {
    let of_job = |id| Some(app.shelf().shop(now.wall.at).job(id).ok()?.currency);
    let Some(currency) = app.jobs.open.map_or_else(|| Some(app.begins_with().0), of_job) else { return };
    app.order(&Command::Money(MoneyCommand::SetHome(CostHomed { currency, kind, home })), now);
}
