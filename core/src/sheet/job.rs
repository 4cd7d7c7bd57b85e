//! One job: its state and next act on top, then its four rooms: wood, bench, money, sale.

use super::account::{Account, Hours, Sold, of as reckon};
use super::due::to_hand_back;
use super::estimate::left::{is_between_coats, is_finished};
use super::estimate::{Row, rows_of};
use super::helped::{Helped, helped, helped_to_settle};
use super::jobs::{Section, date, section, so_far, to_come};
use super::make::keep::{Lacking, changed_piles, lacking_of};
use super::marks::{ask_today, settle_now, whole};
use super::promised::{fees_known, fees_owed, planned_drives, promised};
use super::rate::rate;
use super::shop::Shop;
use crate::bench::wait::Wait;
use crate::bench::{Kind, On};
use crate::ledger::fold::{self, Agreement, Described, InUse, Job, Operation, Over, Part, Quote, Selling, TaxBy};
use crate::ledger::kind::bench::Stage;
use crate::ledger::kind::job::For;
use crate::ledger::kind::plan::Shape;
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::left::{PerHour, Way};
use crate::quantity::{Count, Decimal, Id, Listed, Money, Span, Wall};
use crate::refusal::Answer;
use std::cell::OnceCell;

/// The screen of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct JobSheet {
    pub job: Id,
    pub name: String,
    pub made_for: For,
    pub section: Section,
    pub next: NextAct,
    pub date: Option<Wall>,
    pub described: Described,
    /// The quote that was given last.
    pub quote: Option<Quote>,
    pub parts: Vec<Part>,
    pub operations: Vec<Operation>,
    pub so_far: Vec<(Stage, Span)>,
    /// By estimate still to come, by stage.
    pub to_come: Vec<(Stage, Span)>,
    pub began: Wall,
    pub ended: Option<Wall>,
    /// Agreements, sales, payments, galleries.
    pub selling: Selling,
    pub wood: WoodRoom,
    pub bench: BenchRoom,
    pub money: MoneyRoom,
    pub sale: SaleRoom,
    pub typical: bool,
    pub lesson: Option<String>,
    /// The moistures in per cent that its pieces will live between, where that was said of it.
    pub room: Option<(Decimal, Decimal)>,
    /// Its wood is cut by a plan, all of it or some.
    pub planned: bool,
    /// What was put back of the wood of its plans, or is missing of it.
    pub lacking: Option<Lacking>,
    /// Of these plans, those with piles that have another size or wood now.
    pub changed: Vec<OfBefore>,
    /// Who worked along, and for what pay.
    pub helped: Vec<Helped>,
    /// The same where a stop may have been forgotten: no cost before that is settled.
    pub helped_to_settle: Vec<Helped>,
    /// All of it, for whoever asks further.
    pub account: Account,
}

/// A plan in use that was made when a pile of it had another size or wood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OfBefore {
    pub plan: Id,
    /// What it makes.
    pub shape: Shape,
    pub used: Wall,
    /// The letters of these piles.
    pub piles: Vec<String>,
}

/// What there is to do next.
#[derive(Clone, Debug, PartialEq)]
pub enum NextAct {
    /// A run goes on.
    Running { run: Id, op: String },
    /// All that was promised is ready: hand it over; so much is due.
    HandOver { due: Money, date: Option<Wall> },
    /// It is handed over; so much is due.
    Collect { due: Money },
    /// More was received than is owed.
    HandBack { sum: Money },
    /// A part of what was agreed is to come in by today; so much is asked.
    PartDue { agreed: Id, lacks: Money, due: Wall },
    /// Take wood from the rack.
    TakeWood,
    /// Work on: the next planned operation that is not done, where one is planned.
    WorkOn { op: Option<String> },
    /// It waits: nothing is to do before the last comes off, or may come off by now.
    Waits { last: Box<Wait> },
    /// Give it a price.
    SetTag,
    /// Agree with who ordered it.
    Agree { left: Count },
    /// Sell what is left.
    Sell { left: Count },
    /// A gallery has the rest.
    AtGallery { n: Count },
    /// Nothing is left to do: be done with it.
    End,
    /// Look back.
    LookBack,
}

/// What it is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct WoodRoom {
    pub pieces: Count,
    /// On the rack, set apart for it.
    pub apart: Count,
    pub cost: Option<Money>,
    pub finished_of_used: Option<Decimal>,
}

/// What it takes.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchRoom {
    pub total: Option<Span>,
    pub estimate: Option<Span>,
    pub still: Option<Span>,
}

/// What it costs and leaves.
#[derive(Clone, Debug, PartialEq)]
pub struct MoneyRoom {
    pub costs: Option<Money>,
    pub kept: Option<Money>,
    pub per_hour: Option<Decimal>,
    /// Tax and fees of what was sold, and of what was agreed.
    pub off: Money,
    /// Of it, the fees of what is due, as each buyer pays: they are yet to come.
    pub fees_to_come: Money,
    /// Costs with what is planned and still to come.
    pub costs_in_all: Option<Money>,
    /// Left for an hour, were all that was agreed paid and all that is planned done. None before anything was agreed or sold.
    pub as_it_stands: Option<PerHour>,
}

/// How it sells.
#[derive(Clone, Debug, PartialEq)]
pub struct SaleRoom {
    pub tag: Option<Money>,
    /// What its pieces are taxed with, and what is asked of a buyer today.
    pub tax: TaxBy,
    pub asked: Option<Money>,
    pub settle: Option<Money>,
    pub left: Count,
    pub of: Count,
    pub agreed: Option<Money>,
    pub due: Money,
    pub owed: Owed,
    /// Sales not paid in full, each with what it lacks.
    pub unpaid: Vec<(Id, Money)>,
    /// What is to be handed back, by what it came in for.
    pub over: Vec<Over>,
}

/// What came in and what is due: of the orders that are open, also of pieces of them that are handed over, where one is, else of all that was sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Owed {
    /// What is in the till,
    pub received: Money,
    /// and what the coins made of that: so much more was paid, or less where it is below nothing.
    pub rounded: Money,
    pub due: Money,
    /// What came in for pieces sold beside these orders.
    pub others: Money,
    /// What pieces of these orders were sold for before they were changed.
    pub before_change: Money,
    /// What went off their prices, of pieces whose buyer keeps them.
    pub given_off: Money,
    /// What is owed of their pieces that were handed over.
    pub before: Money,
}

/// Pieces on the rack that are set apart for a job.
fn apart(shop: &Shop, job: Id) -> Count {
    let piles = fold::hauls_set_apart_for(shop.book, job).flat_map(|haul| haul.piles);
    piles.fold(0, |sum: Count, pile| sum.saturating_add(pile.reserved_for(job)))
}

/// The screen of a job.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`], [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::CurrenciesMixed`].
pub fn job(shop: &Shop, id: Id) -> Answer<JobSheet> {
    let job = shop.job(id)?;
    let account = reckon(shop, &job)?;
    let haul = account.cost("haul");
    let pieces = account.costs.shares.iter().fold(0, |sum: Count, share| sum.saturating_add(share.pieces));
    let (sold, hours, pricing) = (&account.sold, &account.hours, &account.pricing);
    let in_use = fold::in_use(shop.book, &job.plans);
    let lacking = lacking_of(shop, id, &in_use);
    let (planned, changed) = (!in_use.is_empty(), if job.ended.is_none() { changed(shop, &in_use) } else { vec![] });
    Ok(JobSheet {
        job: id,
        section: section(shop, &job)?,
        next: next(shop, &job, (hours, sold)),
        date: date(&job),
        so_far: so_far(hours),
        to_come: to_come(hours),
        began: job.began,
        ended: job.ended.as_ref().map(|ended| ended.wall),
        wood: WoodRoom { pieces, apart: apart(shop, id), cost: haul, finished_of_used: account.wood.finished_of_used },
        bench: BenchRoom { total: hours.total, estimate: hours.estimate, still: hours.still },
        money: money(shop, &job, &account)?,
        sale: SaleRoom {
            tag: pricing.tag,
            tax: job.tax,
            asked: ask_today(shop, &job, (1, Paid::Card))?,
            settle: settle_now(shop, &job, pricing),
            left: sold.left,
            of: job.pieces,
            agreed: sold.agreed,
            due: sold.due,
            owed: owed(&job, sold)?,
            unpaid: job.selling.unpaid(job.currency)?.into_iter().map(|(sale, due)| (sale.id, due)).listed(),
            over: to_hand_back(shop, &job)?,
        },
        helped: helped(shop, On::Job(id), job.currency)?,
        helped_to_settle: helped_to_settle(shop, On::Job(id), job.currency)?,
        name: job.name,
        made_for: job.made_for,
        described: job.described,
        quote: job.quote,
        parts: job.parts,
        operations: job.operations,
        selling: job.selling,
        typical: job.typical,
        lesson: job.lesson,
        planned,
        changed,
        lacking,
        room: job.room,
        account,
    })
}

fn changed(shop: &Shop, in_use: &[InUse<'_>]) -> Vec<OfBefore> {
    let of = |it: &InUse<'_>| OfBefore {
        plan: it.plan.id,
        shape: it.plan.plan.shape,
        used: it.plan.at,
        piles: changed_piles(shop, &it.plan.plan),
    };
    in_use.iter().map(of).filter(|it| !it.piles.is_empty()).listed()
}

fn money(shop: &Shop, job: &Job, account: &Account) -> Answer<MoneyRoom> {
    let work = whole(job, (&account.costs, &account.hours), Carried::Delivered)?;
    Ok(MoneyRoom {
        costs: account.costs.total,
        kept: account.sold.kept,
        per_hour: account.sold.per_hour.map(|per_hour| per_hour.left),
        costs_in_all: work.costs,
        off: off(shop, job, account)?,
        fees_to_come: fees_to_come(shop, job)?,
        as_it_stands: as_it_stands(shop, job, account)?.map(|way| way.per_hour(rate(shop, job.currency).year.as_ref())).transpose()?,
    })
}

/// Tax and fees of what was sold, and of what was agreed, as its buyer pays.
fn off(shop: &Shop, job: &Job, account: &Account) -> Answer<Money> {
    let sold = &account.sold;
    sold.tax.plus(sold.fees)?.plus(promised(shop, job, None)?.tax)?.plus(fees_to_come(shop, job)?)
}

/// The fees of what is due, as each buyer pays.
fn fees_to_come(shop: &Shop, job: &Job) -> Answer<Money> {
    promised(shop, job, None)?.fee.plus(fees_owed(shop, job)?)?.minus(fees_known(job)?)
}

fn owed(job: &Job, sold: &Sold) -> Answer<Owed> {
    let (selling, currency) = (&job.selling, job.currency);
    let none = Money::zero(currency);
    if selling.open().next().is_none() {
        let rounded = selling.rounded(currency)?;
        return Ok(Owed {
            received: sold.received,
            rounded,
            due: sold.due,
            others: none,
            before_change: none,
            given_off: none,
            before: none,
        });
    }
    // Each order once: two phones may have changed it.
    let orders = selling.open_orders();
    let due = orders.iter().map(|order| selling.due_of_order(currency, order)).collect::<Answer<Vec<Money>>>()?;
    let ones = orders.iter().filter_map(|order| order.first()).listed();
    let sum = |of: &dyn Fn(&Agreement) -> Answer<Money>| Money::sum(currency, ones.iter().map(|one| of(one)).collect::<Answer<Vec<_>>>()?);
    let rounded = sum(&|agreement| selling.rounded_of_order(currency, agreement))?;
    let received = sum(&|agreement| selling.received_of_order(currency, agreement))?.plus(rounded)?;
    Ok(Owed {
        received,
        rounded,
        due: Money::sum(currency, due)?,
        others: sold.received.minus(received)?,
        before_change: sum(&|agreement| selling.sold_before_change(currency, agreement))?,
        given_off: sum(&|agreement| selling.given_off(currency, agreement))?,
        before: sum(&|agreement| selling.owed_before(currency, agreement))?,
    })
}

/// All that was agreed paid and all that is planned done, with a drive to each buyer who has it brought; what is neither agreed nor sold brings
/// nothing. None before anything is, while something is left that may be.
pub(super) fn as_it_stands(shop: &Shop, job: &Job, account: &Account) -> Answer<Option<Way>> {
    let sold = &account.sold;
    let work = whole(job, (&account.costs, &account.hours), Carried::Fetched)?;
    let Some(work) = work.costs.zip(work.time) else { return Ok(None) };
    let (costs, time) = with_drives(account, work, planned_drives(job))?;
    if sold.kept.is_none() && sold.pieces.saturating_add(sold.by_galleries).saturating_add(sold.promised) == 0 {
        return Ok(None);
    }
    // What came in ahead is promised, and its fee is among those of the account.
    let you_get = sold.net.plus(promised(shop, job, None)?.you_get)?.plus(fees_known(job)?)?.minus(fees_owed(shop, job)?)?;
    Ok(Some(Way { you_get, costs, time }))
}

/// Costs and hours with so many drives to a buyer more, each as one is planned.
pub(super) fn with_drives(account: &Account, (costs, time): (Money, Span), more: Count) -> Answer<(Money, Span)> {
    let (costs_more, time_more) = (account.costs.still_delivery.times(more)?, account.hours.still_delivery.times(more.into()));
    Ok((costs.plus(costs_more)?, time.plus(time_more)))
}

/// What there is to do next; what runs and what is owed come first.
pub(super) fn next(shop: &Shop, job: &Job, (hours, sold): (&Hours, &Sold)) -> NextAct {
    let running = shop.bench.all_running().find(|run| run.work.on == crate::bench::On::Job(job.id));
    if let Some(run) = running {
        return NextAct::Running { run: run.id, op: run.work.op.clone() };
    }
    // Of a job that is done with, or of which all is sold, nothing is left to do: it is not asked what was planned of it.
    let goes_on = job.ended.is_none() && 0 < sold.left;
    let left_to_do = next_planned(shop, job).map(|operation| operation.op.clone());
    let over = to_hand_back(shop, job).and_then(|over| Money::sum(job.currency, over.iter().map(|over| over.sum)));
    if let Ok(sum) = over
        && !sum.is_zero()
    {
        return NextAct::HandBack { sum };
    }
    if let Ok(Some(part)) = part_due(shop, job) {
        return part;
    }
    match left_to_do {
        Some(op) => return NextAct::WorkOn { op: Some(op) },
        None if goes_on && let Some(last) = last_off(shop, job) => return NextAct::Waits { last },
        _ if 0 < sold.promised && (hours.is_begun() || is_handed_over(sold)) => {
            return NextAct::HandOver { due: sold.due, date: date(job) };
        }
        _ if let Some(due) = to_collect(sold).filter(|_| sold.promised == 0) => return NextAct::Collect { due },
        _ => {}
    }
    selling(shop, job, (hours, sold))
}

/// Some of it left the bench: it was made, whatever was noted of that.
fn is_handed_over(sold: &Sold) -> bool {
    0 < sold.pieces.saturating_add(sold.by_galleries)
}

/// What buyers and galleries still owe of what was sold; none where nothing is due.
pub fn to_collect(sold: &Sold) -> Option<Money> {
    let buyers = Some(sold.due).filter(|due| Decimal::ZERO < due.amount()).unwrap_or(Money::zero(sold.due.currency()));
    buyers.plus(sold.due_from_galleries).ok().filter(|due| !due.is_zero())
}

/// The first part of an agreement whose day has come, and that is not paid.
fn part_due(shop: &Shop, job: &Job) -> Answer<Option<NextAct>> {
    for agreement in job.selling.open() {
        let parts = job.selling.parts_due(job.currency, agreement)?;
        let has_come = |due: Wall| due.day() <= Wall::new(shop.now, due.offset).day();
        let first =
            parts.into_iter().find_map(|(part, lacks)| Some((part.due.filter(|due| has_come(*due))?, lacks)).filter(|_| !lacks.is_zero()));
        if let Some((due, lacks)) = first {
            let asked = job.selling.asked_for_part(job.currency, agreement, lacks)?;
            return Ok(Some(NextAct::PartDue { agreed: agreement.id, lacks: asked, due }));
        }
    }
    Ok(None)
}

fn selling(shop: &Shop, job: &Job, (hours, sold): (&Hours, &Sold)) -> NextAct {
    match () {
        () if sold.left == 0 && 0 < sold.at_galleries => NextAct::AtGallery { n: sold.at_galleries },
        () if sold.left == 0 && job.ended.is_none() => NextAct::End,
        () if sold.left == 0 => NextAct::LookBack,
        () if !hours.is_begun() && job.wood.is_empty() && !is_handed_over(sold) => NextAct::TakeWood,
        () if !hours.is_begun() && !is_handed_over(sold) => NextAct::WorkOn { op: None },
        () if job.tag.is_none() && !is_made(shop, job, (hours, sold)) => NextAct::WorkOn { op: None },
        () if job.tag.is_none() => NextAct::SetTag,
        () if super::jobs::is_to_agree(job) => NextAct::Agree { left: sold.left },
        () => NextAct::Sell { left: sold.left },
    }
}

/// Nothing of it is planned, nor was when the maker said that nothing of its work is to come.
fn is_said_made(job: &Job) -> bool {
    job.operations.is_empty() && job.whole_planned && !job.whole_thought
}

/// Whether it is made, as far as the book tells: no batch of it has pieces left, nothing of it is estimated to come, and all that was
/// planned is done; where nothing was planned, it was finished. Between two coats it is not.
fn is_made(shop: &Shop, job: &Job, (hours, sold): (&Hours, &Sold)) -> bool {
    let on = On::Job(job.id);
    let unfinished = hours.logged.by_op.keys().any(|op| shop.bench.sure_batch(on, op, shop.now).has_left());
    let to_come = [hours.still, hours.to_come].into_iter().flatten().any(|still| Span::ZERO < still);
    let finished = !job.operations.is_empty() || is_said_made(job) || is_finished(shop, job);
    job.ended.is_some() || is_handed_over(sold) || (!unfinished && !to_come && finished && !is_between_coats(shop, job))
}

/// When the last of what waits of a job may come off.
fn last_off(shop: &Shop, job: &Job) -> Option<Box<Wait>> {
    shop.waits().on().filter(|wait| wait.job == Some(job.id)).max_by_key(|wait| wait.off()).cloned().map(Box::new)
}

/// The first planned operation of which something is to come: it was never begun, has pieces left, or took less than it likely takes by
/// what was planned of it; the delivery aside. None of a job that is done with, or of which all is sold. What is doubtful makes no difference.
pub(super) fn next_planned<'a>(shop: &Shop, job: &'a Job) -> Option<&'a Operation> {
    if job.ended.is_some() || job.left() == 0 {
        return None;
    }
    let (rows, on) = (OnceCell::new(), On::Job(job.id));
    let begun = |op: &str| shop.bench.sure(shop.bench.on(on).filter(|run| run.work.op == op), shop.now).next().is_some();
    let to_come = |op: &str| {
        let rows: &Vec<Row> = rows.get_or_init(|| rows_of(shop, (job, shop.history()), true));
        rows.iter().any(|row| row.op.as_deref() == Some(op) && row.thought.is_some() && Span::ZERO < row.to_come())
    };
    let open = |operation: &&Operation| {
        let op = operation.op.as_str();
        operation.kind != Kind::Deliver && (!begun(op) || shop.bench.sure_batch(on, op, shop.now).has_left() || to_come(op))
    };
    job.operations.iter().find(open)
}

#[cfg(test)]
mod tests;
