//! A buyer names a sum, heard: by the scale, a key, a chip or the pad; sold, or noted and let go.

use super::far::{Far, far};
use super::{Done, Over, asking, chosen_tax, done, in_coins, on_top, paid_promised, say_paid, shop, tax_of};
use crate::app::App;
use crate::app::entry::Typed;
use crate::app::order::{Feel, Order};
use crate::app::taxes::charged;
use fivebar_core::ledger::decide::{Command, EstimateCommand, MoneyCommand, Now, PaidOf, SaleCommand, SellOrder};
use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::ledger::kind::estimate::WholePlanned;
use fivebar_core::ledger::kind::sale::{Carried, OfferHeard, Paid};
use fivebar_core::quantity::{Count, Id, Money};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::offer::{Asking, OfferSheet, offer};
use fivebar_core::sheet::promised::carried;

/// An offer being heard.
#[derive(Clone, Debug, PartialEq)]
pub struct Bargain {
    pub job: Id,
    /// None before the buyer has spoken.
    pub offer: Option<Money>,
    /// What was named for other numbers of pieces: each stands again with its number.
    pub named: Vec<(Count, Money)>,
    /// What it would be taxed with, where that was chosen for this buyer.
    pub tax: Option<TaxBy>,
    /// How it would be paid and carried, where that was chosen for this buyer.
    pub paid: Option<Paid>,
    pub carried: Option<Carried>,
    pub pad: Option<Typed>,
    /// Pay and hours are shown.
    pub pay: bool,
    /// It was asked whether this sum is meant, far from the tag as it is.
    pub is_meant: Option<Money>,
}

impl Bargain {
    /// Another number of pieces: what was named for the one before is kept for it, and what was named for this one stands again.
    fn of_pieces(&mut self, was: Option<Count>, n: Count) {
        self.named.retain(|(of, _)| Some(*of) != was);
        self.named.extend(was.zip(self.offer));
        self.offer = self.named.iter().find(|(of, _)| *of == n).map(|(_, sum)| *sum);
    }
}

/// What can be said of an offer.
#[derive(Clone, Debug, PartialEq)]
pub enum BargainTap {
    Say(Money),
    Pad,
    PadDone,
    /// What is typed is without the tax that comes on top.
    PadBeforeTax,
    PadAway,
    Paid(Paid),
    Carried(Carried),
    /// What this sale is taxed with.
    Tax(TaxBy),
    Pieces(Count),
    PayAndHours,
    /// The tag of each goes down to what is asked.
    Tag(Money),
    /// Nothing of its work is to come.
    Made,
    Sold,
    /// No sale: the offer is noted.
    NoSale,
    /// This was said back, and they left;
    Left(Money),
    /// or they took it.
    Took(Money),
}

/// Opens the offer on a piece.
pub fn open(app: &mut App, job: Id) {
    app.price.last_job = Some(job);
    // The next buyer asks about one.
    app.price.n = None;
    // From what was agreed one asks for its pay and hours, paid as it says there.
    let paid = if let Over::Deal(deal) = &app.price.over { Some(deal.paid).filter(|_| stands(app, deal)) } else { None };
    // Of another buyer nothing was said yet.
    app.price.paid = app.price.paid.filter(|(of, _)| paid.is_some() || *of != job);
    let late = super::face::spoken_late(app, job);
    app.price.open(Over::Offer(Box::new(late.unwrap_or(Bargain {
        job,
        offer: None,
        named: vec![],
        tax: None,
        paid,
        carried: None,
        pad: None,
        pay: paid.is_some(),
        is_meant: None,
    }))));
}

/// Whether what was agreed is still to be handed over: its page is no longer there else, and it is the list that was tapped.
fn stands(app: &App, deal: &super::deal::Deal) -> bool {
    let is_open = |id| shop(app).job(deal.job).is_ok_and(|job| job.selling.open().any(|agreement| agreement.id == id));
    if let PaidOf::Agreed(id) = deal.of { is_open(id) } else { true }
}

/// The offer screen of this bargain.
///
/// # Errors
/// As the sheet.
pub fn sheet(app: &App, bargain: &Bargain) -> Answer<OfferSheet> {
    let shop = shop(app);
    let job = shop.job(bargain.job)?;
    let asking = match job.free() {
        // What is promised is spoken of together: a sum is for all of it.
        // As on the page of what was agreed: paid so, and as it was agreed to go, until something else is said.
        0 if 0 < job.selling.promised() => {
            let paid = bargain.paid.unwrap_or_else(|| paid_promised(app, &job));
            let asked = asking(app, job.id, job.left());
            let carried = bargain.carried.or(carried(&job)).unwrap_or(asked.carried);
            Asking { n: job.selling.promised(), paid, carried, ..asked }
        }
        0 => asking(app, job.id, job.left()),
        free => asking(app, job.id, free),
    };
    offer(&shop, bargain.job, asking, bargain.offer)
}

/// What stands under the block: the offer, before it the ask of today, else the mark that is known.
pub fn named(sheet: &OfferSheet) -> Option<Money> {
    sheet.named
}

/// Takes in what is said of the offer.
pub fn heard(app: &mut App, tap: BargainTap, now: Now) {
    match tap {
        BargainTap::Say(sum) => with(app, |bargain| bargain.offer = Some(sum)),
        BargainTap::Pad => with(app, |bargain| bargain.pad = Some(Typed::default())),
        BargainTap::PadAway => with(app, |bargain| bargain.pad = None),
        BargainTap::PadDone => pad_done(app, false),
        BargainTap::PadBeforeTax => pad_done(app, true),
        BargainTap::Tag(sum) => {
            if let Over::Offer(bargain) = &app.price.over {
                let job = bargain.job;
                done(app, &Command::Money(MoneyCommand::SetTag { job, sum }), (job, Done::Tagged(sum)), now);
            }
        }
        BargainTap::PayAndHours => with(app, |bargain| bargain.pay = !bargain.pay),
        BargainTap::Paid(paid) => {
            if let Over::Offer(bargain) = &app.price.over {
                say_paid(app, (bargain.job, paid));
            }
            with(app, |bargain| bargain.paid = Some(paid));
        }
        BargainTap::Carried(carried) => with(app, |bargain| bargain.carried = Some(carried)),
        // A sum that was named stays what is handed over.
        BargainTap::Tax(by) => with(app, |bargain| bargain.tax = Some(by)),
        BargainTap::Pieces(n) => {
            let was = here(app).map(|sheet| sheet.asking.n);
            app.price.n = Some(n);
            with(app, |bargain| bargain.of_pieces(was, n));
        }
        BargainTap::Made => {
            if let Some(sheet) = here(app) {
                made(app, sheet.job, now);
            }
        }
        BargainTap::Sold => sold(app, now),
        BargainTap::NoSale => no_sale(app, None, now),
        BargainTap::Left(said) => no_sale(app, Some(said), now),
        BargainTap::Took(said) => took(app, said, now),
    }
}

fn with(app: &mut App, act: impl FnOnce(&mut Bargain)) {
    if let Over::Offer(bargain) = &mut app.price.over {
        act(bargain);
    }
}

fn here(app: &App) -> Option<OfferSheet> {
    let Over::Offer(bargain) = &app.price.over else { return None };
    sheet(app, bargain).ok()
}

/// Takes in what was typed; the tax is added where it is without.
fn pad_done(app: &mut App, adds_tax: bool) {
    let sign = app.speech.sign();
    let Some((currency, by)) = here(app).map(|sheet| (sheet.currency, sheet.tax)) else { return };
    let tax = on_top(app, (currency, by)).filter(|_| adds_tax);
    with(app, |bargain| {
        let Some(typed) = &mut bargain.pad else { return };
        if let Some(sum) = typed.take(|text| charged(text, (currency, sign), tax)) {
            (bargain.offer, bargain.pad) = (Some(sum), None);
        }
    });
}

/// The maker says that a job is made.
pub fn made(app: &mut App, job: Id, now: Now) {
    app.order(&Command::Estimate(EstimateCommand::SayWhole(WholePlanned { job, whole: true })), now);
}

fn sold(app: &mut App, now: Now) {
    let Some(sheet) = here(app) else { return };
    let Some(sum) = named(&sheet).filter(|_| sheet.offer.or(sheet.standing.ask).is_some()) else { return };
    if is_far(&sheet, sum).is_some() && asks_once(app, sum) {
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let heard = sheet.offer.is_some_and(|offer| Some(offer) != sheet.standing.ask);
    let order = SellOrder { heard, ..order(app, &sheet, sum) };
    sell(app, SaleCommand::Sell(order), (&sheet, sum), now);
}

/// A sum so far from the tags that it may be mistyped. What is asked is not typed.
pub fn is_far(sheet: &OfferSheet, sum: Money) -> Option<Far> {
    if Some(sum) == sheet.standing.ask { None } else { far(sum, sheet.tagged?) }
}

/// The first tap asks whether the sum is meant, the second is the answer.
fn asks_once(app: &mut App, sum: Money) -> bool {
    let Over::Offer(bargain) = &mut app.price.over else { return false };
    bargain.is_meant.replace(sum) != Some(sum)
}

/// They offered less, heard this, and took it.
fn took(app: &mut App, said: Money, now: Now) {
    let Some(sheet) = here(app) else { return };
    let Some(offer) = sheet.offer else { return };
    let order = order(app, &sheet, said);
    sell(app, SaleCommand::TookIt { offer, order }, (&sheet, said), now);
}

/// What is asked about, sold for this.
fn order(app: &App, sheet: &OfferSheet, sum: Money) -> SellOrder {
    SellOrder {
        job: sheet.job,
        n: sheet.asking.n,
        sum,
        tax: chosen_tax(app, sheet.job).and_then(|_| tax_of(app, sheet.job)).map(|tax| (tax.rate, tax.side)),
        agreed: None,
        paid: Some(sheet.asking.paid),
        carried: Some(sheet.asking.carried),
        buyer: None,
        when: None,
        heard: false,
    }
}

fn sell(app: &mut App, command: SaleCommand, (sheet, sum): (&OfferSheet, Money), now: Now) {
    let sold = Done::Sold(in_coins(app, sheet.asking.paid, sum));
    if done(app, &Command::Sale(command), (sheet.job, sold), now) {
        app.price.n = None;
        app.price.to_list();
    }
}

fn no_sale(app: &mut App, said: Option<Money>, now: Now) {
    let Some(sheet) = here(app) else { return };
    let Some(sum) = sheet.offer else { return };
    let asking = sheet.asking;
    let (paid, carried, asked) = (Some(asking.paid), Some(asking.carried), sheet.standing.ask);
    let fact = OfferHeard { job: sheet.job, n: asking.n, sum, paid, carried, said, asked };
    if done(app, &Command::Sale(SaleCommand::Hear(fact)), (sheet.job, Done::Heard(sum)), now) {
        app.price.to_list();
    }
}
