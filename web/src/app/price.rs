//! Price, heard: what is for sale, an offer, the deal, the buyer's face.

pub mod agree;
pub mod bargain;
pub mod deal;
pub mod face;
pub mod fair;
pub mod far;
pub mod gallery;
pub mod half;
pub mod parts;
pub mod quick;
pub mod tag;
#[cfg(test)]
mod tests;
pub mod waiting;
pub mod ways;

use super::here::{self, Chosen};
use super::order::{Feel, Order};
use super::{App, Notice, jobs, taxes, workshop};
use crate::parts::Place;
use crate::parts::pad::Press;
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::decide::{Command, Now, PaidOf};
use fivebar_core::ledger::fold::{Guesses, Job, TaxBy};
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::money::tax::Tax;
use fivebar_core::quantity::{Count, Currency, Id, Listed, Money};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::account::is_brought;
use fivebar_core::sheet::offer::Asking;
use fivebar_core::sheet::price::{PriceSheet, price};
use fivebar_core::sheet::{Paying, Shop, marks};

/// What lies over the list.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Over {
    #[default]
    Nothing,
    /// A buyer names a sum.
    Offer(Box<bargain::Bargain>),
    /// What else can be done with a piece.
    More(Id),
    /// Its tag or its settle, by the pad.
    Tag(Box<tag::Setting>),
    /// A price is agreed before the hand-over.
    Agree(Box<agree::Agree>),
    /// What was agreed, or sold and not paid.
    Deal(Box<deal::Deal>),
    /// What was agreed is paid in parts.
    Parts(Box<parts::Parts>),
    /// Pieces go to a gallery.
    Consign(Box<gallery::Consign>),
    /// A gallery pays, or gives back.
    Gallery(Box<gallery::Back>),
    /// What waiting is worth, and the guesses it comes from.
    Waiting(Box<waiting::Waits>),
    /// Other ways to its price.
    Ways(Box<ways::Ways>),
    /// The list as it goes on paper.
    Paper,
    /// A piece that is not in the list.
    Quick,
    /// Whether a stall pays.
    Fair(Box<fair::Stall>),
}

/// What an act of Price was, for the bar that takes it back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    Sold(Money),
    Heard(Money),
    Agreed(Money),
    Cancelled(Money),
    InParts(Money),
    /// The buyer of an agreement never came.
    NeverCame,
    Received(Money),
    Consigned(Count),
    Returned(Count),
    GalleryPaid(Money),
    /// What a buyer or a gallery still owed will not be paid.
    GivenUp(Money),
    Tagged(Money),
    Settled,
    /// Someone asked; true where they never came.
    Asked(bool),
    Guessed,
    /// A like piece was seen elsewhere.
    LikeSeen(Money),
    /// What a shop keeps of its price.
    Resale,
}

/// The state of Price that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Price {
    pub over: Over,
    /// What lies below `over`, to go back to.
    pub under: Vec<Over>,
    /// How many the one asks about who stands there.
    pub n: Option<Count>,
    pub quick: quick::Quick,
    /// How the buyer of a job said to pay, where that is not how the next one would: a transfer is of this one.
    pub paid: Option<(Id, Paid)>,
    /// The piece last looked at: it is the one shown to a buyer from the list.
    pub last_job: Option<Id>,
    /// The last act of Price and what it was.
    pub last: Option<(Id, Id, Done)>,
    /// Guesses of a piece that were left before all were answered.
    pub half: Option<(Id, Guesses)>,
    /// What of them lies with what is half typed.
    pub kept_half: Option<(Id, Guesses)>,
    /// A band of doubt waits for the page to be painted.
    pub doubting: bool,
    /// Only the buyer's face is in the page.
    pub face: Option<Id>,
    /// The page was loaded anew while a buyer had the phone: until its piece is read only the key that closes the face is in it.
    pub turned: bool,
    /// What was spoken of before the page was loaded anew, where the store told it after the face was gone, and for how many.
    pub late: Option<(bargain::Bargain, Count)>,
    /// The page is out of sight: nothing private is drawn.
    pub covered: bool,
}

/// What can be said on Price.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    Offer(Id),
    /// Its pay and hours, where it is said whether any are to come.
    ToCome(Id),
    /// Nothing of its work is to come.
    Made(Id),
    /// To where it is written down what a job took.
    Spend(Id),
    Bargain(bargain::BargainTap),
    More(Id),
    Tag(tag::TagTap),
    Agree(agree::AgreeTap),
    Deal(deal::DealTap),
    Parts(parts::PartsTap),
    Gallery(gallery::GalleryTap),
    Quick(quick::QuickTap),
    Fair(fair::FairTap),
    Waiting(waiting::WaitTap),
    Ways(ways::WaysTap),
    /// A key of the pad, wherever it is up.
    Press(Press),
    /// The list as it goes on paper, and its print.
    Paper,
    Print,
    /// Turns the phone to the buyer.
    Show(Id),
    /// The maker has it back.
    Hide,
    /// To where one says how one is paid, or what an hour must earn.
    HowPaid,
    Rate,
    Close,
}

/// Takes in a tap on Price.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    // What was not taken is put right by what is said now, or said again.
    if matches!(app.notice, Some(Notice::Refused(_))) {
        app.notice = None;
    }
    if !matches!(tap, Tap::Offer(_)) {
        app.price.late = None;
    }
    match tap {
        Tap::Offer(job) => bargain::open(app, job),
        Tap::ToCome(job) => {
            bargain::open(app, job);
            bargain::heard(app, bargain::BargainTap::PayAndHours, now);
        }
        Tap::Made(job) => bargain::made(app, job, now),
        Tap::Bargain(tap) => bargain::heard(app, tap, now),
        Tap::More(job) => app.price.open(Over::More(job)),
        Tap::Tag(tap) => tag::heard(app, tap, now),
        Tap::Agree(tap) => agree::heard(app, tap, now),
        Tap::Deal(tap) => deal::heard(app, tap, now),
        Tap::Parts(tap) => parts::heard(app, tap, now),
        Tap::Gallery(tap) => gallery::heard(app, tap, now),
        Tap::Quick(tap) => quick::heard(app, tap),
        Tap::Fair(tap) => fair::heard(app, tap),
        Tap::Waiting(tap) => waiting::heard(app, tap, now),
        Tap::Ways(tap) => ways::heard(app, tap, now),
        Tap::Press(press) => pressed(app, press),
        Tap::Paper => app.price.open(Over::Paper),
        Tap::Print => app.orders.push(Order::Print),
        Tap::Show(job) => face::show(app, job),
        Tap::Hide => face::hide(app),
        Tap::HowPaid => to_workshop(app, workshop::Over::Till),
        Tap::Rate => to_workshop(app, workshop::Over::Rate),
        Tap::Spend(job) => jobs::doing::spend(app, job),
        Tap::Close => {
            waiting::left(app);
            agree::left(app);
        }
    }
}

impl Price {
    /// Lays a screen over what is there.
    pub fn open(&mut self, over: Over) {
        let below = std::mem::replace(&mut self.over, over);
        if !matches!(below, Over::Nothing) {
            self.under.push(below);
        }
    }

    /// Back to what lay below.
    pub fn close(&mut self) {
        self.over = self.under.pop().unwrap_or_default();
    }

    /// One step up: what lies over a page is left before the page.
    pub fn leave(&self) -> Tap {
        match &self.over {
            Over::Offer(of) if of.pad.is_some() => Tap::Bargain(bargain::BargainTap::PadAway),
            Over::Agree(agree) if agree.pad.is_some() => Tap::Agree(agree::AgreeTap::PadAway),
            Over::Deal(deal) if deal.pad.is_some() => Tap::Deal(deal::DealTap::PadAway),
            Over::Parts(parts) if parts.pad.is_some() => Tap::Parts(parts::PartsTap::PadAway),
            Over::Consign(consign) if consign.pad.is_some() => Tap::Gallery(gallery::GalleryTap::PadAway),
            Over::Gallery(back) if back.pad.is_some() => Tap::Gallery(gallery::GalleryTap::PadAway),
            Over::Offer(of) if of.pay && !matches!(self.under.last(), Some(Over::Deal(_))) => {
                Tap::Bargain(bargain::BargainTap::PayAndHours)
            }
            Over::Waiting(waits) if waits.asked.is_some() => Tap::Waiting(waiting::WaitTap::Away),
            Over::Fair(stall) if stall.found.is_some() => Tap::Fair(fair::FairTap::Again),
            Over::Ways(ways) if ways.pad.is_some() => Tap::Ways(ways::WaysTap::PadAway),
            Over::Ways(ways) if ways.like.is_some() => Tap::Ways(ways::WaysTap::LikeAway),
            _ => Tap::Close,
        }
    }

    /// Back to the list.
    pub fn to_list(&mut self) {
        (self.over, self.under) = (Over::Nothing, vec![]);
    }
}

fn to_workshop(app: &mut App, over: workshop::Over) {
    app.go(Place::Workshop);
    app.workshop.over = over;
}

/// The workshop at this moment.
pub fn shop(app: &App) -> Shop<'_> {
    app.shelf().shop(app.now.at).paying(Paying { of_job: app.price.paid, chosen: app.here.paid })
}

/// The list.
///
/// # Errors
/// As the sheet.
pub fn sheet(app: &App) -> Answer<PriceSheet> {
    price(&shop(app), paid(app))
}

/// What is handed over of a sum, paid so: in notes it goes to the smallest coin.
pub fn in_coins(app: &App, paid: Paid, sum: Money) -> Money {
    shop(app).till(sum.currency()).in_coins(Some(paid), sum).unwrap_or(sum)
}

/// What is asked today for so many of a job, taxed and paid so.
pub fn ask_today(app: &App, (id, n): (Id, Count), (by, paid): (Option<TaxBy>, Paid)) -> Option<Money> {
    let shop = shop(app);
    let job = shop.job(id).ok()?;
    marks::ask_today(&shop, &Job { tax: by.unwrap_or(job.tax), ..job }, (n, paid)).ok().flatten()
}

/// What a sale of a job is taxed with: as chosen for the buyer who stands there, else as the job is.
pub fn tax_of(app: &App, id: Id) -> Option<Tax> {
    let shop = shop(app);
    let job = shop.job(id).ok()?;
    Some(shop.workshop.tax(job.currency, chosen_tax(app, id).unwrap_or(job.tax)))
}

/// The tax that was chosen for the buyer who stands there: on the agreement that is made, or on the offer that is open. It goes with them.
pub fn chosen_tax(app: &App, id: Id) -> Option<TaxBy> {
    let chosen = |over: &Over| match over {
        Over::Offer(bargain) if bargain.job == id => Some(bargain.tax),
        Over::Agree(agree) if agree.job == id => Some(agree.tax),
        _ => None,
    };
    lying(app).filter_map(chosen).next().flatten()
}

/// A tax taken so, where it comes on top of the tag.
pub fn on_top(app: &App, (currency, by): (Currency, TaxBy)) -> Option<Tax> {
    Some(taxes::tax(app, currency, by)).filter(|tax| tax.is_on_top())
}

/// How it would be paid: as chosen for the buyer who stands there, else as was chosen or paid last; a card before that.
pub fn paid(app: &App) -> Paid {
    paid_said(app).or(app.here.paid).unwrap_or_else(|| app.shelf().shop(app.now.at).paid_before())
}

/// The same where it was chosen for this buyer; none where it is only as the one before chose or paid.
pub fn paid_said(app: &App) -> Option<Paid> {
    let chosen = lying(app).find_map(|over| if let Over::Offer(bargain) = over { Some(bargain) } else { None });
    chosen.and_then(|bargain| bargain.paid)
}

/// How what was agreed or sold of a job is paid, or a piece of it that is sold: as it was said for this buyer, else as what came in for the same was
/// paid, else as the offer would be.
pub fn paid_for(app: &App, id: Id, of: Option<PaidOf>) -> Paid {
    // What a gallery owes is asked of nobody who stands there.
    if let Some(PaidOf::Gallery(_)) = of {
        return Paid::Bank;
    }
    let shop = shop(app);
    shop.job(id).map_or_else(|_| paid(app), |job| shop.paid_for(&job, of.map(PaidOf::id)))
}

/// The same of a job of which all that is left is promised: as the first agreement.
pub fn paid_promised(app: &App, job: &Job) -> Paid {
    paid_for(app, job.id, job.selling.open().next().map(|agreement| PaidOf::Agreed(agreement.id)))
}

/// The maker says how a buyer pays: the next one stands there with notes or a card too; a transfer is of this one.
pub fn say_paid(app: &mut App, (id, paid): (Id, Paid)) {
    if paid != Paid::Bank {
        here::choose(app, Chosen::Paid(paid));
    }
    app.price.paid = Some((id, paid));
}

/// The offer on a job that is open, or lies below.
fn chosen(app: &App, id: Id) -> Option<&bargain::Bargain> {
    lying(app).find_map(|over| if let Over::Offer(bargain) = over { Some(&**bargain).filter(|bargain| bargain.job == id) } else { None })
}

/// What is open, then what lies below it.
fn lying(app: &App) -> impl Iterator<Item = &Over> {
    std::iter::once(&app.price.over).chain(app.price.under.iter().rev())
}

/// How it would be paid and carried, and how many of those that are free.
pub fn asking(app: &App, job: Id, free: Count) -> Asking {
    // Who carries it is of this buyer alone; until that is said it goes as the list reckoned.
    let carried = chosen(app, job).and_then(|bargain| bargain.carried).unwrap_or_else(|| as_listed(app, job));
    Asking { n: app.price.n.unwrap_or(1).clamp(1, free.max(1)), paid: paid(app), carried, tax: chosen_tax(app, job) }
}

/// How the list reckons a piece to go: brought where a drive to its buyer is planned and not made.
fn as_listed(app: &App, id: Id) -> Carried {
    let shop = shop(app);
    // A job that can't be reckoned says so on the page that asks.
    let brought = shop.job(id).and_then(|job| is_brought(&shop, &job)) == Ok(true);
    if brought { Carried::Delivered } else { Carried::Fetched }
}

/// Orders an act of Price and remembers what it was; true when it was done.
fn done(app: &mut App, command: &Command, (job, done): (Id, Done), now: Now) -> bool {
    let Some(written) = app.order(command, now) else { return false };
    app.price.last = Some((written.act, job, as_written(app, written.act, done)));
    app.orders.push(Order::Feel(Feel::Stop));
    true
}

/// An act is named by the sum it wrote, to the coin where it was paid so. What came in for the whole order has its coin of all of it.
fn as_written(app: &App, act: Id, done: Done) -> Done {
    let book = &app.shelf().book;
    let facts = book.act(act).into_iter().filter_map(|id| book.entry(id)).map(|(entry, _)| &entry.fact).listed();
    let of_sale = |fact: &&Fact| if let Fact::PaymentReceived(f) = fact { f.sale.and(f.rounding) } else { None };
    let coins = facts.iter().find_map(of_sale);
    let sum = facts.into_iter().find_map(|fact| match (fact, done) {
        (Fact::PieceSold(f), Done::Sold(_)) => Some(Done::Sold(coins.and_then(|coins| f.sum.plus(coins).ok()).unwrap_or(f.sum))),
        (Fact::PaymentReceived(f), Done::Received(_)) => Some(Done::Received(f.sum)),
        _ => None,
    });
    sum.unwrap_or(done)
}

/// How many pieces an act sold; one where it was no sale.
pub fn sold_by(app: &App, act: Id) -> Count {
    let book = &app.shelf().book;
    let n = |id| if let Fact::PieceSold(f) = &book.entry(id)?.0.fact { Some(f.n) } else { None };
    book.act(act).into_iter().find_map(n).unwrap_or(1)
}

fn pressed(app: &mut App, press: Press) {
    let sign = app.speech.sign();
    let typed = match &mut app.price.over {
        Over::Offer(bargain) => bargain.pad.as_mut(),
        Over::Tag(setting) => Some(&mut setting.typed),
        Over::Agree(agree) => agree.pad.as_mut().map(|(_, typed)| typed),
        Over::Deal(deal) => deal.pad.as_mut(),
        Over::Parts(parts) => parts.pad.as_mut(),
        Over::Consign(consign) => consign.pad.as_mut().map(|(_, typed)| typed),
        Over::Gallery(back) => back.pad.as_mut().map(|(_, typed)| typed),
        Over::Quick => app.price.quick.typed(),
        Over::Waiting(waits) => waits.asked.as_mut().map(|asked| &mut asked.typed),
        Over::Ways(ways) => match (&mut ways.pad, &mut ways.like) {
            (Some((_, typed)), _) => Some(typed),
            (None, like) => like.as_mut().map(|draft| &mut draft.typed),
        },
        Over::Nothing | Over::More(_) | Over::Paper | Over::Fair(_) => None,
    };
    if let Some(typed) = typed {
        typed.press(press, sign);
    }
}
