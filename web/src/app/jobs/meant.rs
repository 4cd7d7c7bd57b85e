//! What is asked about once before it is written: whether it is meant so.

use super::super::App;
use super::draft::Draft;
use fivebar_core::ledger::decide::{Command, MoneyCommand, SaleCommand, SellOrder};
use fivebar_core::quantity::Money;

/// A can whose price is far from the usual is asked about once, and a hand-over for less than was agreed.
pub fn is_meant(app: &App, draft: &mut Draft, command: &Command) -> bool {
    match command {
        Command::Money(MoneyCommand::OpenCan { pack, .. }) => super::cans::is_meant(&mut draft.picks.can.asks, pack),
        Command::Sale(SaleCommand::Sell(order)) => {
            let short = short_of(app, order);
            let was = std::mem::replace(&mut draft.picks.short, short);
            short.is_none() || was == short
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
