//! What was agreed, or sold and not paid, heard: a payment, the hand-over, or it came to nothing.

use super::{Done, Over, done, paid_for, say_paid, shop};
use crate::app::App;
use crate::app::entry::Typed;
use fivebar_core::ledger::decide::{Command, GiveUpOrder, LetKeepOrder, Now, PaidOf, PayOrder, SaleCommand, SellOrder};
use fivebar_core::ledger::kind::sale::{AgreementCancelled, Paid};
use fivebar_core::quantity::{Currency, Id, Money, reading};
use fivebar_core::sheet::price::{AgreedRow, GalleryOwes, OwedRow};

/// A deal that is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Deal {
    pub job: Id,
    pub of: PaidOf,
    /// How the money comes.
    pub paid: Paid,
    pub pad: Option<Typed>,
}

/// What can be said of a deal.
#[derive(Clone, Debug, PartialEq)]
pub enum DealTap {
    Open(Id, PaidOf),
    Paid(Paid),
    Pad,
    PadDone,
    PadAway,
    /// This much came in.
    Received(Money),
    /// The pieces are handed over and what is due is paid.
    HandedOver,
    /// It came to nothing; this much of what came in is kept.
    Nothing(Money),
    /// The buyer never came; this much of what came in is kept.
    NeverCame(Money),
    /// What a buyer or a gallery still owes will not be paid.
    GivenUp,
}

/// The row of what was agreed.
pub fn agreed(app: &App, deal: &Deal) -> Option<AgreedRow> {
    let PaidOf::Agreed(id) = deal.of else { return None };
    super::sheet(app).ok()?.agreed.into_iter().find(|row| row.agreed == id)
}

/// The row of what was sold and not paid.
pub fn owed(app: &App, deal: &Deal) -> Option<OwedRow> {
    let PaidOf::Sale(id) = deal.of else { return None };
    super::sheet(app).ok()?.owed.into_iter().find(|row| row.sale == id)
}

/// The row of what a gallery still owes.
pub fn gallery_owes(app: &App, deal: &Deal) -> Option<GalleryOwes> {
    let PaidOf::Gallery(id) = deal.of else { return None };
    super::sheet(app).ok()?.galleries_owe.into_iter().find(|row| row.due.of == id)
}

/// Takes in what is said of a deal.
pub fn heard(app: &mut App, tap: DealTap, now: Now) {
    match tap {
        DealTap::Open(job, of) => {
            app.price.last_job = Some(job);
            let paid = paid_for(app, job, Some(of));
            app.price.open(Over::Deal(Box::new(Deal { job, of, paid, pad: None })));
        }
        DealTap::Paid(paid) => {
            if let Over::Deal(deal) = &app.price.over {
                say_paid(app, (deal.job, paid));
            }
            with(app, |deal| deal.paid = paid);
        }
        DealTap::Pad => with(app, |deal| deal.pad = Some(Typed::default())),
        DealTap::PadAway => with(app, |deal| deal.pad = None),
        DealTap::PadDone => pad_done(app, now),
        DealTap::Received(sum) => received(app, sum, now),
        DealTap::HandedOver => handed_over(app, now),
        DealTap::Nothing(kept) => nothing(app, (kept, None), now),
        DealTap::NeverCame(kept) => nothing(app, (kept, Some(true)), now),
        DealTap::GivenUp => given_up(app, now),
    }
}

fn with(app: &mut App, act: impl FnOnce(&mut Deal)) {
    if let Over::Deal(deal) = &mut app.price.over {
        act(deal);
    }
}

fn here(app: &App) -> Option<(Deal, Currency)> {
    let Over::Deal(deal) = &app.price.over else { return None };
    let currency = shop(app).job(deal.job).ok()?.currency;
    Some(((**deal).clone(), currency))
}

fn pad_done(app: &mut App, now: Now) {
    let sign = app.speech.sign();
    let Some((_, currency)) = here(app) else { return };
    let Over::Deal(deal) = &mut app.price.over else { return };
    let Some(typed) = &mut deal.pad else { return };
    if let Some(sum) = typed.take(|text| reading::money(text, currency, sign)) {
        received(app, sum, now);
    }
}

fn received(app: &mut App, sum: Money, now: Now) {
    let Some((deal, _)) = here(app) else { return };
    let order = PayOrder { job: deal.job, sum, paid: deal.paid, fee: None, of: deal.of, when: None };
    if done(app, &Command::Sale(SaleCommand::Pay(order)), (deal.job, Done::Received(sum)), now) {
        with(app, |deal| deal.pad = None);
        if !matches!(deal.of, PaidOf::Agreed(_)) {
            app.price.to_list();
        }
    }
}

fn handed_over(app: &mut App, now: Now) {
    let Some((deal, _)) = here(app) else { return };
    let Some(row) = agreed(app, &deal) else { return };
    let Some(sum) = shop(app).job(deal.job).ok().and_then(|job| {
        let agreement = job.selling.agreement(row.agreed)?;
        agreement.sum.minus(agreement.sold_for).ok()
    }) else {
        return;
    };
    let order = SellOrder {
        job: deal.job,
        n: row.n,
        sum,
        tax: None,
        agreed: Some(row.agreed),
        paid: Some(deal.paid),
        carried: row.carried,
        buyer: row.buyer,
        when: None,
        heard: false,
    };
    if done(app, &Command::Sale(SaleCommand::Sell(order)), (deal.job, Done::Sold(sum)), now) {
        app.price.to_list();
    }
}

fn nothing(app: &mut App, (kept, no_show): (Money, Option<bool>), now: Now) {
    let Some((deal, _)) = here(app) else { return };
    let PaidOf::Agreed(agreed) = deal.of else { return };
    let fact = AgreementCancelled { job: deal.job, agreed, kept: Some(kept).filter(|kept| !kept.is_zero()), no_show, back: None };
    let was = if no_show.is_some() { Done::NeverCame } else { Done::Cancelled(kept) };
    if done(app, &Command::Sale(SaleCommand::Cancel(fact)), (deal.job, was), now) {
        app.price.to_list();
    }
}

fn given_up(app: &mut App, now: Now) {
    let Some((deal, _)) = here(app) else { return };
    let (command, sum) = if let Some(OwedRow { job, sale, due: sum, .. }) = owed(app, &deal) {
        (SaleCommand::LetKeep(LetKeepOrder { job, sale, sum, when: None }), sum)
    } else {
        let Some(row) = gallery_owes(app, &deal) else { return };
        (SaleCommand::GiveUpRest(GiveUpOrder { job: row.job, of: row.due.of, when: None }), row.due.lacks)
    };
    if done(app, &Command::Sale(command), (deal.job, Done::GivenUp(sum)), now) {
        app.price.to_list();
    }
}
