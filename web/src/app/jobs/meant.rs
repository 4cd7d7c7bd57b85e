//! What is asked about once before it is written: whether it is meant so.

use super::super::App;
use super::super::price::ask_today;
use super::super::price::far::{Far, far_from_tags};
use super::draft::Draft;
use fivebar_core::ledger::decide::{Command, MoneyCommand, SaleCommand, SellOrder};
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::money::tax::Tax;
use fivebar_core::quantity::Money;

/// A can whose price is far from the usual is asked about once, a hand-over for less than was agreed, and a sale far from its tags.
pub fn is_meant(app: &App, draft: &mut Draft, command: &Command) -> bool {
    match command {
        Command::Money(MoneyCommand::OpenCan { pack, .. }) => super::cans::is_meant(&mut draft.picks.can.asks, pack),
        Command::Sale(SaleCommand::Sell(order)) => {
            let short = short_of(app, order);
            let far = far_of(app, order);
            let was = std::mem::replace(&mut draft.picks.short, short);
            let was_far = std::mem::replace(&mut draft.picks.far, far);
            (was, was_far) == (short, far) || (short, far) == (None, None)
        }
        _ => true,
    }
}

/// What is handed over under an agreement for less than was agreed for all that is left of it: who types what is in the hand leaves out what came
/// in before.
fn short_of(app: &App, order: &SellOrder) -> Option<(Money, Money)> {
    let job = app.shelf().shop(app.now.at).job(order.job).ok()?;
    let agreement = job.selling.agreement(order.agreed?)?;
    let rest = agreement.sum.minus(agreement.sold_for).ok()?;
    let all = order.n == agreement.n.saturating_sub(agreement.sold);
    (all && order.sum.currency() == rest.currency() && order.sum.amount() < rest.amount()).then_some((order.sum, rest))
}

/// A sum far from the tags of what is sold without an agreement, and what these come to; what is asked by now is not typed.
fn far_of(app: &App, order: &SellOrder) -> Option<(Far, Money, Money)> {
    let tax = order.tax.map(|(rate, side)| Tax { rate, side });
    let asked = ask_today(app, (order.job, order.n), (None, Paid::Card));
    if order.agreed.is_some() || asked == Some(order.sum) {
        return None;
    }
    let (far, tags) = far_from_tags(app, (order.job, order.n), order.sum, (tax, order.paid))?;
    Some((far, order.sum, tags))
}
