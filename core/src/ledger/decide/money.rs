//! Orders about money: spend, drive, set what an hour must earn and how one is paid, tag and settle.

use super::job::found;
use super::{Act, cans, taxes};
use crate::ledger::fold::job::facts::same;
use crate::ledger::fold::{self, Job};
use crate::ledger::kind::Exact;
use crate::ledger::kind::haul::Per;
use crate::ledger::kind::money as kind;
use crate::ledger::{Book, Entry, Fact};
use crate::money::charge::Terms;
use crate::money::cost::{DistanceRate, Pack, distance, of_pack, used_up};
use crate::money::fee::Fee;
use crate::money::tax::Tax;
use crate::money::wear::{FirstYear, Spread, Tool};
use crate::quantity::{Cash, Currency, Decimal, Id, Key, Length, Moment, Money, Side, Wall};
use crate::refusal::{Answer, Refusal};

/// What a cost belongs to: each has one home.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum On {
    Job(Id),
    Haul(Id),
    /// No job: a workshop cost.
    Workshop,
}

/// How much was spent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Much {
    Whole(Money),
    /// Used up at a price for each.
    Each {
        n: Decimal,
        each: Decimal,
        currency: Currency,
    },
    /// The part used of a pack that holds `of` and cost `pack`.
    Share {
        used: Decimal,
        of: Decimal,
        pack: Money,
    },
    /// Used of a can that count is kept of.
    OfCan {
        can: Id,
        used: Decimal,
    },
    /// Comes back: the salvage or refund of a part that was swapped.
    Credit(Money),
}

/// What can be ordered of money.
#[derive(Clone, Debug, PartialEq)]
pub enum MoneyCommand {
    Spend {
        on: On,
        much: Much,
        kind: Key,
        what: Option<String>,
        when: Option<Moment>,
    },
    Drive {
        on: On,
        distance: Length,
        /// Money for each mile or km; missing: as the till has it, in the currency of what it belongs to or the one given.
        rate: Option<(Decimal, Per)>,
        currency: Currency,
        what: Option<String>,
        when: Option<Moment>,
        /// To bring pieces to their buyers, or not.
        delivery: Option<bool>,
    },
    /// Opens a can or pack, and takes so much of it.
    OpenCan {
        pack: kind::PackOpened,
        takes: Option<(On, Decimal)>,
    },
    /// Part of a spending came back: it was sent back, or a part that was swapped fetched something. A sum, so many of what had a price
    /// each, or both: so many for that sum.
    ComeBack {
        spending: Id,
        sum: Option<Money>,
        n: Option<Decimal>,
        what: Option<String>,
    },
    /// Some of what was used of a can goes back into it.
    BackInCan {
        spending: Id,
        used: Decimal,
    },
    SetHome(kind::CostHomed),
    AddTool(kind::ToolAdded),
    SellTool(kind::ToolSold),
    /// What is left of it is gone.
    EmptyCan {
        can: Id,
    },
    /// Sets some members of what an hour must earn; those that are missing stay.
    SetRate(kind::RateSet),
    SetTill(kind::TillSet),
    /// Sales tax stands on another side, and these tags with it, so that what buyers hand over stays.
    TurnTax {
        till: kind::TillSet,
        tags: Vec<kind::TagSet>,
    },
    /// Names a rate of sales tax, or changes one.
    NameTax(kind::TaxNamed),
    DropTax {
        tax: Id,
    },
    /// What a job's pieces are taxed with.
    SetJobTax(kind::JobTaxSet),
    SetBoardPrice(kind::BoardPriceSet),
    SetTag {
        job: Id,
        sum: Money,
    },
    SetSettle {
        job: Id,
        sum: Option<Money>,
    },
}

pub(super) fn decide(book: &Book, command: &MoneyCommand, act: &mut Act) -> Answer<()> {
    match command {
        MoneyCommand::Spend { on, much, kind, what, when } => {
            let mut fact = match *much {
                Much::OfCan { can, used } => {
                    cans::share(book, (can, used), Wall::new(when.unwrap_or(act.now().wall.at), act.now().wall.offset))?
                }
                much => spent_of(much, kind)?,
            };
            (fact.job, fact.haul) = home(book, *on, fact.sum.currency())?;
            (fact.what, fact.when) = (what.clone().or(fact.what), *when);
            act.add(fact);
        }
        MoneyCommand::Drive { on, distance, rate, currency, what, when, delivery } => {
            let (job, haul) = home(book, *on, *currency)?;
            let rate = rate.map_or_else(|| mileage(book, *currency), Ok)?;
            let fact = driven(*distance, rate, *currency)?;
            let (what, when, delivery) = (what.clone(), *when, delivery.filter(|_| job.is_some()));
            act.add(kind::DistanceDriven { job, haul, what, when, delivery, ..fact });
        }
        MoneyCommand::OpenCan { .. }
        | MoneyCommand::EmptyCan { .. }
        | MoneyCommand::ComeBack { .. }
        | MoneyCommand::BackInCan { .. }
        | MoneyCommand::SetHome(_)
        | MoneyCommand::AddTool(_)
        | MoneyCommand::SellTool(_) => as_things(book, command, act)?,
        MoneyCommand::SetRate(facts) => {
            check_rate(book, facts)?;
            act.add(facts.clone());
        }
        MoneyCommand::SetTill(facts) => {
            check_till(book, facts)?;
            act.add(facts.clone());
        }
        MoneyCommand::TurnTax { till, tags } => {
            check_till(book, till)?;
            act.add(till.clone());
            tags.iter().try_for_each(|tag| set_tag(book, (tag.job, tag.sum), act))?;
        }
        MoneyCommand::NameTax(_) | MoneyCommand::DropTax { .. } | MoneyCommand::SetJobTax(_) => taxes::decide(book, command, act)?,
        MoneyCommand::SetBoardPrice(facts) => {
            not_below_nothing(facts.amount.0)?;
            act.add(facts.clone());
        }
        MoneyCommand::SetTag { job, sum } => set_tag(book, (*job, *sum), act)?,
        MoneyCommand::SetSettle { job, sum } => {
            let found = found(book, *job)?;
            if let Some(sum) = sum {
                not_over_tag(book, &found, plain(same(found.currency, *sum)?)?)?;
            }
            act.add(kind::SettleSet { job: *job, sum: *sum });
        }
    }
    Ok(())
}

/// Costs as things: cans, tools, what came back, where a kind belongs.
fn as_things(book: &Book, command: &MoneyCommand, act: &mut Act) -> Answer<()> {
    match command {
        MoneyCommand::OpenCan { pack, takes } => cans::open(book, (pack, *takes), act)?,
        MoneyCommand::ComeBack { spending, sum, n, what } => {
            let fact = came_back(book, *spending, (*sum, *n))?;
            act.add(kind::MoneySpent { what: what.clone(), ..fact });
        }
        MoneyCommand::BackInCan { spending, used } => {
            act.add(cans::back(book, (*spending, *used))?);
        }
        MoneyCommand::SetHome(facts) => {
            act.add(facts.clone());
        }
        MoneyCommand::AddTool(facts) => {
            check_tool(facts)?;
            act.add(facts.clone());
        }
        MoneyCommand::SellTool(facts) => {
            can_be_sold(book, facts, act.now().wall)?;
            act.add(facts.clone());
        }
        MoneyCommand::EmptyCan { can } => {
            cans::there(book, *can)?;
            act.add(kind::PackEmptied { can: *can, when: None });
        }
        _ => {}
    }
    Ok(())
}

fn set_tag(book: &Book, (job, sum): (Id, Money), act: &mut Act) -> Answer<()> {
    if plain(same(found(book, job)?.currency, sum)?)?.is_zero() {
        return Err(Refusal::NoPrice { met: sum });
    }
    act.add(kind::TagSet { job, sum });
    Ok(())
}

/// Nobody settles for more than what is handed over for the tag.
fn not_over_tag(book: &Book, job: &Job, met: Money) -> Answer<()> {
    let Some(tag) = job.tag else { return Ok(()) };
    let price = fold::workshop(book).tax(job.currency, job.tax).charge(tag)?;
    if met.amount() <= price.amount() { Ok(()) } else { Err(Refusal::MoreThanPrice { met, price }) }
}

/// A sum not below nothing.
pub(super) fn plain(met: Money) -> Answer<Money> {
    if met.amount() < Decimal::ZERO { Err(Refusal::MoneyBelowNothing { met }) } else { Ok(met) }
}

/// What a cost belongs to, if that is there and in its currency.
pub(super) fn home(book: &Book, on: On, other: Currency) -> Answer<(Option<Id>, Option<Id>)> {
    let (one, home) = match on {
        On::Job(id) => (found(book, id)?.currency, (Some(id), None)),
        On::Haul(id) => (fold::haul(book, id).ok_or(Refusal::NotThere)?.currency, (None, Some(id))),
        On::Workshop => (other, (None, None)),
    };
    if one == other { Ok(home) } else { Err(Refusal::CurrenciesMixed { one, other }) }
}

fn spent_of(much: Much, kind: &Key) -> Answer<kind::MoneySpent> {
    let whole = |sum| kind::MoneySpent {
        sum,
        kind: kind.clone(),
        job: None,
        haul: None,
        what: None,
        when: None,
        n: None,
        each: None,
        used: None,
        of: None,
        pack: None,
        can: None,
        back: None,
    };
    Ok(match much {
        Much::OfCan { .. } => return Err(Refusal::NotThere),
        Much::Whole(sum) => whole(plain(sum)?),
        Much::Credit(sum) => whole(Money::zero(sum.currency()).minus(plain(sum)?)?),
        Much::Each { n, each, currency } => {
            let sum = used_up(n, each, currency)?;
            kind::MoneySpent { n: Some(Exact(n)), each: Some(Exact(each)), ..whole(sum) }
        }
        Much::Share { used, of, pack } => {
            if of < used {
                return Err(Refusal::MoreThanPack { used, holds: of });
            }
            let full = Pack { paid: plain(pack)?, holds: of, charged: Money::zero(pack.currency()) };
            let sum = of_pack(&full, used)?;
            kind::MoneySpent { used: Some(Exact(used)), of: Some(Exact(of)), pack: Some(pack), ..whole(sum) }
        }
    })
}

/// A spending that stands.
pub(super) fn spent(book: &Book, spending: Id) -> Answer<&kind::MoneySpent> {
    let (entry, _) = book.entry(spending).filter(|(_, struck)| !struck).ok_or(Refusal::NotThere)?;
    if let Fact::MoneySpent(was) = &entry.fact { Ok(was) } else { Err(Refusal::NotThere) }
}

/// What came back of a spending so far.
fn before(book: &Book, spending: Id) -> impl Iterator<Item = &kind::MoneySpent> {
    let back = move |entry: &'_ Entry| matches!(&entry.fact, Fact::MoneySpent(f) if f.back == Some(spending));
    let there = book.entries().filter(move |(entry, struck)| !struck && back(entry));
    there.filter_map(|(entry, _)| if let Fact::MoneySpent(f) = &entry.fact { Some(f) } else { None })
}

/// What is left of a spending after all that came back of it: nothing where two phones each said that all did.
pub(super) fn still_spent(book: &Book, (spending, was): (Id, &kind::MoneySpent)) -> Answer<Money> {
    let left = before(book, spending).map(|f| f.sum).try_fold(was.sum, Money::plus)?;
    Ok(if left.amount() < Decimal::ZERO { Money::zero(left.currency()) } else { left })
}

/// No more comes back of a spending than it was, neither of its sum nor of what was counted.
pub(super) fn came_back(book: &Book, spending: Id, (sum, n): (Option<Money>, Option<Decimal>)) -> Answer<kind::MoneySpent> {
    let was = self::spent(book, spending)?;
    let each = n.map(|n| each_back(book, (spending, was), n)).transpose()?;
    let spent = still_spent(book, (spending, was))?;
    // With the last of what was counted comes the rest, to the cent.
    let all = |n: Decimal| was.n.is_some_and(|counted| counted.0 == all_back(book, spending).saturating_add(n));
    let of_each = || each.map(|(n, each)| if all(n) { Ok(spent) } else { used_up(n, each, was.sum.currency()) }).transpose();
    let sum = sum.map_or_else(of_each, |sum| Ok(Some(sum)))?.ok_or(Refusal::NothingAsked)?;
    if spent.amount() < plain(same(was.sum.currency(), sum)?)?.amount() {
        return Err(Refusal::MoreThanSpent { met: sum, spent });
    }
    if sum.is_zero() {
        return Err(Refusal::NothingAsked);
    }
    let credit = spent_of(Much::Credit(sum), &was.kind)?;
    let (n, each) = each.map(|(n, each)| (Exact(Decimal::ZERO.saturating_sub(n).normalize()), Exact(each))).unzip();
    Ok(kind::MoneySpent { job: was.job, haul: was.haul, n, each, back: Some(spending), ..credit })
}

/// So many of what was counted come back, with what one of them was.
fn each_back(book: &Book, (spending, was): (Id, &kind::MoneySpent), n: Decimal) -> Answer<(Decimal, Decimal)> {
    let (counted, each) = was.n.zip(was.each).ok_or(Refusal::NotThere)?;
    cans::no_more_than((counted.0, all_back(book, spending)), n)?;
    Ok((n, each.0))
}

/// How many came back of what was counted.
fn all_back(book: &Book, spending: Id) -> Decimal {
    before(book, spending).filter_map(|f| f.n).fold(Decimal::ZERO, |all, n| all.saturating_sub(n.0))
}

fn check_tool(f: &kind::ToolAdded) -> Answer<()> {
    if f.name.trim().is_empty() {
        return Err(Refusal::NameMissing);
    }
    let tool = Tool { cost: plain(f.sum)?, salvage: f.salvage.unwrap_or(Money::zero(f.sum.currency())), years: f.years };
    let spread = f.share.map_or(Spread::Straight, |share| Spread::DecliningThenStraight { share: share.0 });
    tool.wear(spread, FirstYear::Whole).map(drop)
}

/// A tool that is there is sold once, and not before it was bought.
fn can_be_sold(book: &Book, f: &kind::ToolSold, now: Wall) -> Answer<()> {
    let tool = fold::workshop(book).tools.into_iter().find(|tool| tool.entry == f.tool && tool.sold.is_none()).ok_or(Refusal::NotThere)?;
    plain(same(tool.tool.cost.currency(), f.sum)?)?;
    let (start, end) = (tool.bought, Wall::new(f.when.unwrap_or(now.at), now.offset));
    if end.day() < start.day() {
        return Err(Refusal::EndNotAfterStart { start: start.at, end: end.at });
    }
    if now.at < end.at {
        return Err(Refusal::NotYet { met: end.at, now: now.at });
    }
    Ok(())
}

fn mileage(book: &Book, currency: Currency) -> Answer<(Decimal, Per)> {
    let till = fold::workshop(book).tills.remove(&currency).unwrap_or_default();
    till.mileage.zip(till.per).ok_or(Refusal::MileageUnknown { currency })
}

fn driven(driven: Length, (amount, unit): (Decimal, Per), currency: Currency) -> Answer<kind::DistanceDriven> {
    let per = match unit {
        Per::Mile => Length::MILE,
        Per::Km => Length::KM,
    };
    let sum = distance(driven, DistanceRate { amount, per }, currency)?;
    let (job, haul, what, when) = (None, None, None, None);
    Ok(kind::DistanceDriven { distance: driven, rate: Exact(amount), per: unit, sum, job, haul, what, when, delivery: None })
}

fn check_rate(book: &Book, facts: &kind::RateSet) -> Answer<()> {
    for met in [facts.pay, facts.lowest, facts.hours, facts.logged, facts.profit].into_iter().flatten() {
        not_below_nothing(met.0)?;
    }
    for sum in [facts.costs, facts.wear].into_iter().flatten() {
        plain(same(facts.currency, sum)?)?;
    }
    share(facts.tax)?;
    if facts.logged.is_some_and(|logged| logged.0.is_zero()) {
        return Err(Refusal::NoHours);
    }
    let known = fold::workshop(book).rates.remove(&facts.currency).unwrap_or_default();
    let tax = facts.tax.map(|n| n.0).or(known.tax).unwrap_or_default();
    let profit = facts.profit.map(|n| n.0).or(known.profit).unwrap_or_default();
    crate::money::rate::in_reach(tax, profit)?;
    let (hours, logged) = (facts.hours.map(|n| n.0).or(known.hours), facts.logged.map(|n| n.0).or(known.logged));
    match (hours, logged) {
        (Some(all), Some(logged)) if all < logged => {
            Err(Refusal::LoggedBeyondAll { logged: crate::ledger::fold::hours(logged)?, all: crate::ledger::fold::hours(all)? })
        }
        _ => Ok(()),
    }
}

fn check_till(book: &Book, facts: &kind::TillSet) -> Answer<()> {
    for met in [facts.tax, facts.mileage].into_iter().flatten() {
        not_below_nothing(met.0)?;
    }
    for sum in [facts.fixed, facts.bank_fixed, facts.notes_fixed, facts.cash].into_iter().flatten() {
        plain(same(facts.currency, sum)?)?;
    }
    if let Some(coin) = facts.cash.filter(|coin| !coin.is_zero()) {
        Cash::of(coin)?;
    }
    [facts.fee, facts.bank_fee, facts.notes_fee, facts.tax].into_iter().try_for_each(share)?;
    // Each may do alone and both together leave nothing.
    let workshop = fold::workshop(book);
    let known = workshop.tills.get(&facts.currency).cloned().unwrap_or_default();
    let rate = facts.tax.map(|n| n.0).or(known.tax).unwrap_or_default();
    let side = facts.side.or(known.side).unwrap_or(Side::Inside);
    let said = [(facts.fee, known.fee), (facts.bank_fee, known.bank.0), (facts.notes_fee, known.notes.0)];
    let fees = said.map(|(new, known)| Fee { share: new.map(|n| n.0).or(known).unwrap_or_default(), ..Fee::NONE });
    let named = workshop.taxes_in(facts.currency).map(|named| named.rate);
    let may = |rate| fees.into_iter().try_for_each(|fee| Terms { tax: Tax { rate, side }, fee }.take().map(drop));
    [rate].into_iter().chain(named).try_for_each(may)
}

pub(super) fn not_below_nothing(met: Decimal) -> Answer<()> {
    if met < Decimal::ZERO { Err(Refusal::BelowNothing { met }) } else { Ok(()) }
}

pub(super) fn share(met: Option<Exact>) -> Answer<()> {
    match met {
        Some(Exact(met)) if met < Decimal::ZERO || Decimal::ONE <= met => Err(Refusal::ShareOutOfRange { met }),
        _ => Ok(()),
    }
}
