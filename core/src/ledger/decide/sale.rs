//! Orders about selling: hear an offer, agree, sell, take payment, leave with a gallery, take back.

use super::brought::{BringBackOrder, LetKeepOrder};
use super::job::{found, some_pieces};
use super::money::plain;
use super::{Act, brought, gallery};
use crate::ledger::Book;
use crate::ledger::fold::job::facts::same;
use crate::ledger::fold::{self, Agreement, AgreementState, Job, Over, PartOfPay, Till};
use crate::ledger::kind::Exact;
use crate::ledger::kind::book::{PersonAdded, Role};
use crate::ledger::kind::sale as kind;
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::tax::Tax;
use crate::quantity::{Count, Currency, Decimal, Id, Listed, Moment, Money, Side, Span, Wall};
use crate::refusal::{Answer, Refusal};
use crate::sale::demand::{ASKS_MOST, EACH_ASK_MOST, LEAST_RATIO, most_times};

/// A sale; a tax that is missing is that of its agreement, else of its job.
#[derive(Clone, Debug, PartialEq)]
pub struct SellOrder {
    pub job: Id,
    pub n: Count,
    /// All that the buyer hands over.
    pub sum: Money,
    pub tax: Option<(Decimal, Side)>,
    /// The agreement it carries out; what that has received counts as paid.
    pub agreed: Option<Id>,
    /// Paid in the same breath: what is still due of the sum, and what is owed of pieces of the same order that were handed over before.
    pub paid: Option<Paid>,
    pub carried: Option<Carried>,
    pub buyer: Option<Id>,
    pub when: Option<Moment>,
    /// The buyer named the sum: it is noted as an offer, in the same act.
    pub heard: bool,
}

/// A payment; a missing fee is as the till has it.
#[derive(Clone, Debug, PartialEq)]
pub struct PayOrder {
    pub job: Id,
    pub sum: Money,
    pub paid: Paid,
    pub fee: Option<Money>,
    pub of: PaidOf,
    pub when: Option<Moment>,
}

/// Money that goes back: of what it had come in for, as [`Over`] says.
#[derive(Clone, Debug, PartialEq)]
pub struct HandBackOrder {
    pub job: Id,
    pub sum: Money,
    pub paid: Paid,
    pub agreed: Option<Id>,
    pub sale: Option<Id>,
    pub when: Option<Moment>,
}

/// What a gallery still owes of what it sold will not be paid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GiveUpOrder {
    pub job: Id,
    /// The sale by the gallery that it is of.
    pub of: Id,
    pub when: Option<Moment>,
}

/// What a payment is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaidOf {
    Sale(Id),
    /// Ahead of the hand-over: a deposit or a staged sum.
    Agreed(Id),
    /// What a gallery still owes of what it sold.
    Gallery(Id),
}

impl PaidOf {
    /// The sale, the agreement, or what a gallery paid in part.
    pub fn id(self) -> Id {
        let (PaidOf::Sale(id) | PaidOf::Agreed(id) | PaidOf::Gallery(id)) = self;
        id
    }
}

/// What can be ordered of selling.
#[derive(Clone, Debug, PartialEq)]
pub enum SaleCommand {
    Hear(kind::OfferHeard),
    NoteAsked(kind::PieceAskedFor),
    Guess(kind::SellingGuessed),
    NoteLike(kind::LikePieceSeen),
    SetResale(kind::ResaleSet),
    Agree(kind::PriceAgreed),
    /// With a buyer nobody knew yet, whose name is kept beside the book.
    AgreeWithNew(kind::PriceAgreed),
    PlanPayment(kind::PaymentPlanned),
    Cancel(kind::AgreementCancelled),
    Sell(SellOrder),
    /// They offered less, heard what this is sold for, and took it.
    TookIt {
        offer: Money,
        order: SellOrder,
    },
    Pay(PayOrder),
    HandBack(HandBackOrder),
    Consign(kind::PiecesConsigned),
    NoteConsignmentPaid(kind::ConsignmentPaid),
    NoteConsignmentReturned(kind::ConsignmentReturned),
    GiveUpRest(GiveUpOrder),
    NoteNotForSale(kind::PiecesNotForSale),
    Reverse(kind::SaleReversed),
    BringBack(BringBackOrder),
    LetKeep(LetKeepOrder),
}

pub(super) fn decide(book: &Book, command: &SaleCommand, act: &mut Act) -> Answer<()> {
    match command {
        SaleCommand::Hear(f) => {
            let job = found(book, f.job)?;
            enough(f.n, job.left())?;
            for sum in std::iter::once(f.sum).chain(f.said).chain(f.asked) {
                plain(same(job.currency, sum)?)?;
            }
            act.add(f.clone());
        }
        SaleCommand::NoteAsked(f) => {
            plain(same(found(book, f.job)?.currency, f.price)?)?;
            act.add(f.clone());
        }
        SaleCommand::Guess(f) => guess(&found(book, f.job)?, f, act)?,
        SaleCommand::NoteLike(f) => like(&found(book, f.job)?, f, act)?,
        SaleCommand::SetResale(f) => {
            share(f.keeps.0)?;
            act.add(f.clone());
        }
        SaleCommand::Agree(f) => agree(&found(book, f.job)?, f, act)?,
        SaleCommand::AgreeWithNew(f) => {
            let buyer = Some(act.add(PersonAdded { role: Role::Buyer }));
            agree(&found(book, f.job)?, &kind::PriceAgreed { buyer, ..f.clone() }, act)?;
        }
        SaleCommand::PlanPayment(f) => plan_payment(&found(book, f.job)?, f, act)?,
        SaleCommand::Cancel(f) => cancel(&found(book, f.job)?, f, act)?,
        SaleCommand::Sell(order) => sell(book, order, None, act)?,
        SaleCommand::TookIt { offer, order } => {
            plain(same(order.sum.currency(), *offer)?)?;
            sell(book, order, Some(*offer), act)?;
        }
        SaleCommand::Pay(order) => pay(book, order, act)?,
        SaleCommand::HandBack(order) => hand_back(book, order, act)?,
        SaleCommand::NoteNotForSale(f) => {
            enough(f.n, found(book, f.job)?.free())?;
            act.add(f.clone());
        }
        SaleCommand::Reverse(f) => brought::reverse(&found(book, f.job)?, f, act)?,
        SaleCommand::LetKeep(order) => brought::let_keep(&found(book, order.job)?, order, act)?,
        SaleCommand::BringBack(order) => {
            let job = found(book, order.job)?;
            brought::bring_back((&job, &till(book, job.currency)), order, act)?;
        }
        at_gallery => gallery::decide(book, at_gallery, act)?,
    }
    Ok(())
}

pub(super) fn enough(asked: Count, there: Count) -> Answer<()> {
    some_pieces(asked)?;
    if asked <= there { Ok(()) } else { Err(Refusal::NotThatMany { asked, there }) }
}

pub(super) fn share(met: Decimal) -> Answer<()> {
    if Decimal::ZERO <= met && met < Decimal::ONE { Ok(()) } else { Err(Refusal::ShareOutOfRange { met }) }
}

pub(super) fn within(met: Money, price: Money) -> Answer<()> {
    if met.amount() <= price.amount() { Ok(()) } else { Err(Refusal::MoreThanPrice { met, price }) }
}

/// A piece like it had a price; one that is still to come was not seen.
fn like(job: &Job, f: &kind::LikePieceSeen, act: &mut Act) -> Answer<()> {
    if plain(same(job.currency, f.sum)?)?.is_zero() {
        return Err(Refusal::NoPrice { met: f.sum });
    }
    let now = act.now().wall.at;
    if let Some(met) = f.when.filter(|when| now < *when) {
        return Err(Refusal::NotYet { met, now });
    }
    act.add(f.clone());
    Ok(())
}

fn guess(job: &Job, f: &kind::SellingGuessed, act: &mut Act) -> Answer<()> {
    for sum in [f.at, f.end, f.each_day].into_iter().flatten() {
        plain(same(job.currency, sum)?)?;
    }
    for Exact(met) in [f.asks, f.buys, f.k].into_iter().flatten() {
        if met < Decimal::ZERO {
            return Err(Refusal::BelowNothing { met });
        }
    }
    if let Some(Exact(met)) = f.asks.filter(|asks| ASKS_MOST < asks.0) {
        return Err(Refusal::TooManyAsk { met, most: ASKS_MOST });
    }
    // b outside (0, 1] and k <= 1.05 say nothing about buyers.
    if let Some(Exact(met)) = f.buys
        && (met.is_zero() || Decimal::ONE < met)
    {
        return Err(Refusal::ShareOutOfRange { met });
    }
    if let Some(met) = f.at.filter(|at| at.is_zero()) {
        return Err(Refusal::NoPrice { met });
    }
    let (buys, k) = (f.buys.map(|n| n.0).or(job.selling.guesses.buys), f.k.map(|n| n.0).or(job.selling.guesses.k));
    if let Some((most, met)) = buys.map(most_times).zip(k).filter(|(most, met)| (f.buys.is_some() || f.k.is_some()) && most < met) {
        return Err(Refusal::MoreThanAllBuy { met, most });
    }
    f.no_show.map(|no_show| share(no_show.0)).transpose()?;
    if let Some(met) = f.each_ask.filter(|met| *met < Span::ZERO || EACH_ASK_MOST < *met) {
        return Err(Refusal::HoursOutOfRange { met, least: Span::ZERO, most: EACH_ASK_MOST });
    }
    match f.k {
        Some(Exact(met)) if met <= LEAST_RATIO => Err(Refusal::GuessTooFlat { met, above: LEAST_RATIO }),
        _ => {
            act.add(f.clone());
            Ok(())
        }
    }
}

fn open(job: &Job, id: Id) -> Answer<&Agreement> {
    job.selling.agreement(id).filter(|agreement| agreement.state == AgreementState::Open).ok_or(Refusal::NotThere)
}

fn agree(job: &Job, f: &kind::PriceAgreed, act: &mut Act) -> Answer<()> {
    let freed = match f.replaces {
        Some(id) => {
            let old = open(job, id)?;
            old.n.saturating_sub(old.sold)
        }
        None => 0,
    };
    enough(f.n, job.free().saturating_add(freed))?;
    plain(same(job.currency, f.sum)?)?;
    if let Some(deposit) = f.deposit {
        within(plain(same(job.currency, deposit)?)?, f.sum)?;
    }
    let old = f.replaces.and_then(|id| job.selling.agreement(id)?.tax).filter(|_| f.rate.is_none());
    let agreed = act.add(match old {
        Some(Tax { rate, side }) => kind::PriceAgreed { rate: Some(Exact(rate)), side: Some(side), ..f.clone() },
        None => f.clone(),
    });
    let parts = as_planned(job, f, act.now().wall);
    if !parts.is_empty() {
        act.add(kind::PaymentPlanned { job: job.id, agreed, parts });
    }
    Ok(())
}

/// The parts of the agreement that is changed, each by its day, where the new one is for the same sum and nothing was sold under it.
fn as_planned(job: &Job, f: &kind::PriceAgreed, now: Wall) -> Vec<kind::PaymentPart> {
    let old = f.replaces.and_then(|id| job.selling.agreement(id)).filter(|old| (old.sum, old.sold) == (f.sum, 0));
    let part = |part: &PartOfPay| {
        let due = part.due.map(|due| due.day().start(now.offset));
        kind::PaymentPart { sum: part.sum, due }
    };
    old.map(|old| old.parts.iter().map(part).listed()).unwrap_or_default()
}

/// The parts add up to what was agreed; none at all take them away.
fn plan_payment(job: &Job, f: &kind::PaymentPlanned, act: &mut Act) -> Answer<()> {
    let price = open(job, f.agreed)?.sum;
    for part in &f.parts {
        if plain(same(job.currency, part.sum)?)?.is_zero() {
            return Err(Refusal::NothingAsked);
        }
    }
    let sum = Money::sum(job.currency, f.parts.iter().map(|part| part.sum))?;
    if !f.parts.is_empty() && sum != price {
        return Err(Refusal::PartsDoNotMeet { sum, price });
    }
    act.add(f.clone());
    Ok(())
}

fn cancel(job: &Job, f: &kind::AgreementCancelled, act: &mut Act) -> Answer<()> {
    open(job, f.agreed)?;
    let ahead = job.selling.received_ahead(job.currency, f.agreed)?;
    let back = Some(kept(job, f.kept, ahead)?);
    act.add(kind::AgreementCancelled { back, ..f.clone() });
    Ok(())
}

/// What is handed back where so much is kept.
pub(super) fn kept(job: &Job, kept: Option<Money>, received: Money) -> Answer<Money> {
    let Some(met) = kept else { return Ok(received) };
    if same(job.currency, met)?.amount() < Decimal::ZERO {
        return Err(Refusal::MoreThanOver { met: received.minus(met)?, over: received });
    }
    plain(met)?;
    if met.amount() <= received.amount() { received.minus(met) } else { Err(Refusal::MoreThanReceived { met, received }) }
}

/// `offer` is what they had named, where they took what was said back.
fn sell(book: &Book, order: &SellOrder, offer: Option<Money>, act: &mut Act) -> Answer<()> {
    let job = found(book, order.job)?;
    let agreement = order.agreed.map(|id| open(&job, id)).transpose()?;
    let there = agreement.map_or(job.free(), |agreed| job.left().min(agreed.n.saturating_sub(agreed.sold)));
    enough(order.n, there)?;
    plain(same(job.currency, order.sum)?)?;
    let workshop = fold::workshop(book);
    let till = workshop.tills.get(&job.currency).cloned().unwrap_or_default();
    let before = agreement.filter(|_| order.paid.is_some()).map(|agreed| job.selling.owed_before(job.currency, agreed)).transpose()?;
    let before = before.filter(|before| !before.is_zero());
    let exact = due_now(&job, agreement, order.sum)?.plus(before.unwrap_or(Money::zero(job.currency)))?;
    let due = till.in_coins(order.paid, exact)?;
    let coins = due.minus(exact)?;
    // The sale is what was said; the coin is with the payment, and goes with it where that is struck.
    let sum = order.sum;
    let spoken = order.tax.map(|(rate, side)| Tax { rate, side }).or(agreement.and_then(|agreed| agreed.tax));
    let used = spoken.unwrap_or_else(|| workshop.tax(job.currency, job.tax));
    let (Tax { rate, side }, tax) = (used, used.apart(sum)?.tax);
    // An offer that was taken is noted at the same sum, so that it and its sale are of one buyer.
    match offer {
        Some(offer) => drop(act.add(heard(order, offer, Some(sum)))),
        None if order.heard => drop(act.add(heard(order, sum, None))),
        None => {}
    }
    let sale = act.add(kind::PieceSold {
        job: job.id,
        n: order.n,
        sum,
        tax,
        rate: Exact(rate),
        side,
        agreed: order.agreed,
        carried: order.carried,
        buyer: order.buyer,
        when: order.when,
    });
    // What no coin pays is paid off by none, and nobody owes it.
    if let Some(paid) = order.paid.filter(|_| Decimal::ZERO < exact.amount()) {
        let fee = fee(&till, paid, due)?;
        // What comes in for the whole order pays what was owed before first.
        let (sale, agreed) = if before.is_some() { (None, order.agreed) } else { (Some(sale), None) };
        let rounding = Some(coins).filter(|coins| !coins.is_zero());
        act.add(kind::PaymentReceived { job: job.id, sum: due, paid, fee, sale, agreed, when: order.when, rounding });
    }
    Ok(())
}

/// What the buyer of this named, and what was said back.
fn heard(order: &SellOrder, sum: Money, said: Option<Money>) -> kind::OfferHeard {
    kind::OfferHeard { job: order.job, n: order.n, sum, paid: order.paid, carried: order.carried, said, asked: None }
}

/// Of a sum now handed over, what was not received ahead.
fn due_now(job: &Job, agreement: Option<&Agreement>, sum: Money) -> Answer<Money> {
    let Some(agreed) = agreement else { return Ok(sum) };
    let ahead = job.selling.received_ahead(job.currency, agreed.id)?;
    if sum.amount() < ahead.amount() { Ok(Money::zero(job.currency)) } else { sum.minus(ahead) }
}

fn pay(book: &Book, order: &PayOrder, act: &mut Act) -> Answer<()> {
    let job = found(book, order.job)?;
    let (sale, agreed) = match order.of {
        PaidOf::Gallery(of) => return gallery::rest(&job, (of, order.sum, order.when), act),
        PaidOf::Sale(id) => (Some(job.selling.sale(id).filter(|sale| sale.reversed.is_none()).ok_or(Refusal::NotThere)?.id), None),
        PaidOf::Agreed(id) => (None, Some(open(&job, id)?.id)),
    };
    let met = plain(same(job.currency, order.sum)?)?;
    let till = till(book, job.currency);
    if met.is_zero() {
        return Err(Refusal::NothingAsked);
    }
    let rest = rest(&job, order.of)?;
    // What is over of another keeps nobody from paying what they lack.
    let due = Some(job.due()?).filter(|due| rest.amount() < due.amount()).unwrap_or(rest);
    let coins = till.in_coins(Some(order.paid), rest)?;
    // What pays off the rest in coins is all that can be handed over of it.
    let pays_off = coins != rest && (met == coins || met == rest);
    if due.amount() < met.amount() && !pays_off {
        return Err(Refusal::MoreThanDue { met, due });
    }
    let (sum, rounding) = if pays_off { (coins, Some(coins.minus(rest)?)) } else { (met, None) };
    let fee = match order.fee {
        Some(fee) => plain(same(job.currency, fee)?)?,
        None => fee(&till, order.paid, sum)?,
    };
    act.add(kind::PaymentReceived { job: job.id, sum, paid: order.paid, fee, sale, agreed, when: order.when, rounding });
    Ok(())
}

/// What is still due of a sale or an agreement.
fn rest(job: &Job, of: PaidOf) -> Answer<Money> {
    let (selling, currency) = (&job.selling, job.currency);
    let rest = match of {
        PaidOf::Sale(id) => selling.sale(id).map(|sale| sale.sum.minus(selling.paid(currency, id)?)).transpose()?,
        PaidOf::Agreed(id) => selling.agreement(id).map(|agreement| selling.still_due(currency, agreement)).transpose()?,
        PaidOf::Gallery(_) => None,
    };
    Ok(rest.unwrap_or(Money::zero(currency)))
}

fn hand_back(book: &Book, order: &HandBackOrder, act: &mut Act) -> Answer<()> {
    let (job, till) = (found(book, order.job)?, till(book, order.sum.currency()));
    let met = plain(same(job.currency, order.sum)?)?;
    if met.is_zero() {
        return Err(Refusal::NothingAsked);
    }
    let over = over(&job, order.agreed, order.sale)?;
    let coins = till.in_coins(Some(order.paid), over.sum)?;
    let settles = coins != over.sum && (met == coins || met == over.sum);
    if over.sum.amount() < met.amount() && !settles {
        return Err(Refusal::MoreThanOver { met, over: over.sum });
    }
    let (sum, rounding) = if settles { (coins, Some(coins.minus(over.sum)?)) } else { (met, None) };
    let (agreed, sale) = (over.agreed, over.sale);
    act.add(kind::MoneyHandedBack { job: job.id, sum, paid: order.paid, agreed, sale, when: order.when, rounding });
    Ok(())
}

/// What is to be handed back of an agreement, of a sale, or of sales of no agreement.
fn over(job: &Job, agreed: Option<Id>, sale: Option<Id>) -> Answer<Over> {
    let selling = &job.selling;
    let of = |over: &Over| over.sale == sale && selling.first(over.agreed) == selling.first(agreed);
    selling.over(job.currency)?.into_iter().find(of).ok_or(Refusal::NotThere)
}

/// What went back goes back again only where it is still over.
pub(super) fn can_go_back(book: &Book, f: &kind::MoneyHandedBack) -> Answer<()> {
    let Some(job) = fold::job(book, f.job) else { return Ok(()) };
    let met = f.rounding.map_or(Ok(f.sum), |rounding| f.sum.minus(rounding))?;
    match over(&job, f.agreed, f.sale) {
        Ok(over) if met.amount() <= over.sum.amount() => Ok(()),
        Ok(over) => Err(Refusal::MoreThanOver { met, over: over.sum }),
        Err(_) => Err(Refusal::MoreThanOver { met, over: Money::zero(job.currency) }),
    }
}

fn till(book: &Book, currency: Currency) -> Till {
    fold::workshop(book).tills.remove(&currency).unwrap_or_default()
}

/// What this way of paying keeps.
fn fee(till: &Till, paid: Paid, sum: Money) -> Answer<Money> {
    till.fee_of(paid).of(sum)
}
