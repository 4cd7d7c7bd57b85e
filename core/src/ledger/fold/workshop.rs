//! The workshop from its entries: what an hour must earn, how one is paid, people, costs that belong to no job.

use super::booked::{Booked, booked, without_lost};
use super::cans::Can;
use super::dates::HoursFacts;
use super::estimate::{OldJob, told};
use super::photos::Photos;
use super::plan::{Design, SawFacts, kept};
use super::sought::{Sought, sought};
use super::taxes::NamedTax;
use super::wood::WoodFacts;
use crate::ledger::kind::book::Role;
use crate::ledger::kind::haul::Per;
use crate::ledger::kind::money::{Home, Measure, RateSet, TillSet, ToolAdded, ToolSold};
use crate::ledger::kind::sale::Paid;
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::money::wear::{FirstYear, Spread, Tool};
use crate::money::{fee::Fee, replacement::BoardPrice, tax::Tax};
use crate::quantity::Set;
use crate::quantity::Sorted;
use crate::quantity::{Cash, Currency, Decimal, Id, Key, Moment, Money, Side, Units, Volume, Wall, round_to_cash, up_to_cash};
use crate::refusal::{Answer, Refusal};

/// What is known of the workshop.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workshop {
    /// What new hauls and jobs begin with.
    pub currency: Option<Currency>,
    pub units: Option<Units>,
    pub rates: Sorted<Currency, RateFacts>,
    pub tills: Sorted<Currency, Till>,
    /// Rates of sales tax under a name, in the order they were named.
    pub taxes: Vec<NamedTax>,
    /// What equal bought boards cost; without a wood, of any that has no price of its own.
    pub board_prices: Sorted<(Currency, Option<Key>), BoardPrice>,
    /// What a shop that buys to sell again keeps of its price before tax.
    pub resale: Sorted<Currency, Decimal>,
    /// Spending and driving for no job and no haul.
    pub costs: Vec<Booked>,
    /// Cans and packs that were opened, the latest last.
    pub cans: Vec<Can>,
    /// Where kinds of cost belong, as far as it was said.
    pub homes: Sorted<(Currency, Key), Home>,
    pub tools: Vec<OwnTool>,
    pub people: Vec<Person>,
    /// People whose names are gone for good.
    pub forgotten: Set<Id>,
    pub copy: Option<Copy>,
    pub photos: Photos,
    pub wood: WoodFacts,
    pub saw: SawFacts,
    pub designs: Vec<Design>,
    /// What plans lack and is looked for, the oldest first.
    pub sought: Vec<Sought>,
    /// Jobs from before the book, the latest told last.
    pub old_jobs: Vec<OldJob>,
    /// When the maker works.
    pub hours: HoursFacts,
}

/// What an hour must earn, as the maker said it; what was never said is none.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RateFacts {
    /// Wanted for each hour worked.
    pub pay: Option<Decimal>,
    /// The least an hour is worked for.
    pub lowest: Option<Decimal>,
    /// Hours worked a year, and those of them logged to jobs.
    pub hours: Option<Decimal>,
    pub logged: Option<Decimal>,
    /// A year of workshop costs, and of tools wearing out.
    pub costs: Option<Money>,
    pub wear: Option<Money>,
    /// Tax on own work, and profit, as shares.
    pub tax: Option<Decimal>,
    pub profit: Option<Decimal>,
}

/// How one is paid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Till {
    pub tax: Option<Decimal>,
    pub side: Option<Side>,
    /// A card's share and what it takes on top.
    pub fee: Option<Decimal>,
    pub fixed: Option<Money>,
    /// The same of a bank transfer, and of notes.
    pub bank: (Option<Decimal>, Option<Money>),
    pub notes: (Option<Decimal>, Option<Money>),
    /// The coin cash is rounded to.
    pub cash: Option<Money>,
    /// Cash goes up to that coin, not to the nearest.
    pub cash_up: bool,
    /// The price point, a key.
    pub point: Option<Key>,
    pub mileage: Option<Decimal>,
    pub per: Option<Per>,
}

/// Somebody known; the name lives elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Person {
    pub id: Id,
    pub role: Role,
}

/// The last copy that was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Copy {
    pub at: Moment,
    /// It holds all up to here.
    pub upto: Moment,
    /// Entries written since.
    pub since: usize,
}

/// The workshop, from all its standing entries; the latest of each wins.
pub fn workshop(book: &Book) -> Workshop {
    let mut workshop = Workshop::default();
    for entry in book.about(Subject::Workshop) {
        apply(&mut workshop, entry);
    }
    workshop.photos.without_lost(|spending| book.entry(spending).is_some_and(|(_, struck)| struck));
    workshop.costs = without_lost(std::mem::take(&mut workshop.costs));
    let Workshop { people, forgotten, copy, .. } = &mut workshop;
    people.retain(|person| !forgotten.contains(&person.id));
    if let Some(copy) = copy {
        let kept = |entry: &Entry| matches!(entry.fact, Fact::CopyKept(_));
        copy.since = book.entries().rev().take_while(|(entry, _)| copy.upto < entry.stamp.0).filter(|(entry, _)| !kept(entry)).count();
    }
    workshop
}

/// How one is paid, by currency, from the entries that say so alone.
pub(super) fn tills(book: &Book) -> Sorted<Currency, Till> {
    let mut tills: Sorted<Currency, Till> = Sorted::default();
    for entry in book.about(Subject::Workshop) {
        if let Fact::TillSet(f) = &entry.fact {
            till(tills.entry(f.currency).or_default(), f);
        }
    }
    tills
}

fn apply(workshop: &mut Workshop, entry: &Entry) {
    match &entry.fact {
        Fact::WorkshopSet(f) => {
            workshop.currency = f.currency.or(workshop.currency);
            workshop.units = f.units.or(workshop.units);
        }
        Fact::RateSet(f) => rate(workshop.rates.entry(f.currency).or_default(), f),
        Fact::TillSet(f) => till(workshop.tills.entry(f.currency).or_default(), f),
        Fact::TaxNamed(_) | Fact::TaxDropped(_) => super::taxes::named(&mut workshop.taxes, entry),
        Fact::BoardPriceSet(f) => {
            let price = BoardPrice { amount: f.amount.0, per: f.per.volume(), currency: f.currency };
            workshop.board_prices.insert((f.currency, f.wood.clone()), price);
        }
        Fact::ResaleSet(f) => {
            workshop.resale.insert(f.currency, f.keeps.0);
        }
        Fact::PersonAdded(f) => workshop.people.push(Person { id: entry.id, role: f.role }),
        Fact::Forgotten(f) => {
            workshop.forgotten.insert(f.person);
        }
        Fact::PhotoTaken(_) | Fact::PhotoRemoved(_) => workshop.photos.apply(entry),
        Fact::SpeciesAdded(_)
        | Fact::MachineMinimumSet(_)
        | Fact::AirRead(_)
        | Fact::RoomRangeSet(_)
        | Fact::VanSet(_)
        | Fact::TimberYardSet(_) => {
            workshop.wood.apply(entry);
        }
        Fact::SawSet(f) => workshop.saw.apply(f),
        Fact::PiecesSought(f) => sought(&mut workshop.sought, entry, f),
        Fact::DesignKept(f) => kept(&mut workshop.designs, entry, f),
        Fact::WorkdaysSet(f) => workshop.hours.set(f),
        Fact::DayOffSet(f) => workshop.hours.set_off(f),
        Fact::OldJobTold(f) => told(&mut workshop.old_jobs, entry, f),
        Fact::CopyKept(f) => workshop.copy = Some(Copy { at: entry.at(), upto: f.upto, since: 0 }),
        Fact::PackOpened(f) => workshop.cans.push(Can::of(entry.id, f, entry.wall)),
        Fact::CostHomed(f) => {
            workshop.homes.insert((f.currency, f.kind.clone()), f.home);
        }
        Fact::ToolAdded(f) => workshop.tools.extend(OwnTool::of(entry, f)),
        Fact::ToolSold(f) => tool_sold(&mut workshop.tools, entry, f),
        Fact::PackEmptied(f) => super::cans::emptied(&mut workshop.cans, entry, f),
        _ => {
            let line = booked(entry);
            line.iter().for_each(|line| super::cans::shared(&mut workshop.cans, line));
            workshop.costs.extend(line.filter(|line| line.job.is_none() && line.haul.is_none()));
        }
    }
}

fn rate(rate: &mut RateFacts, f: &RateSet) {
    let of = |sum: Option<Money>| sum.filter(|sum| sum.currency() == f.currency);
    rate.pay = f.pay.map(|n| n.0).or(rate.pay);
    rate.lowest = f.lowest.map(|n| n.0).or(rate.lowest);
    rate.hours = f.hours.map(|n| n.0).or(rate.hours);
    rate.logged = f.logged.map(|n| n.0).or(rate.logged);
    rate.costs = of(f.costs).or(rate.costs);
    rate.wear = of(f.wear).or(rate.wear);
    rate.tax = f.tax.map(|n| n.0).or(rate.tax);
    rate.profit = f.profit.map(|n| n.0).or(rate.profit);
}

pub(super) fn till(till: &mut Till, f: &TillSet) {
    let of = |sum: Option<Money>| sum.filter(|sum| sum.currency() == f.currency);
    till.tax = f.tax.map(|n| n.0).or(till.tax);
    till.side = f.side.or(till.side);
    till.fee = f.fee.map(|n| n.0).or(till.fee);
    till.fixed = of(f.fixed).or(till.fixed);
    till.bank = (f.bank_fee.map(|n| n.0).or(till.bank.0), of(f.bank_fixed).or(till.bank.1));
    till.notes = (f.notes_fee.map(|n| n.0).or(till.notes.0), of(f.notes_fixed).or(till.notes.1));
    till.cash = of(f.cash).or(till.cash);
    till.cash_up = f.cash_up.unwrap_or(till.cash_up);
    till.point = f.point.clone().or_else(|| till.point.clone());
    till.mileage = f.mileage.map(|n| n.0).or(till.mileage);
    till.per = f.per.or(till.per);
}

/// A tool that wears out, in the workshop since a day.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnTool {
    pub entry: Id,
    pub name: String,
    pub tool: Tool,
    pub spread: Spread,
    pub bought: Wall,
    pub sold: Option<SoldTool>,
}

/// A tool was sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SoldTool {
    pub entry: Id,
    pub at: Wall,
    pub sum: Money,
}

/// A tool is sold once: the first word on it stands.
fn tool_sold(tools: &mut [OwnTool], entry: &Entry, f: &ToolSold) {
    let sold = SoldTool { entry: entry.id, at: entry.when(f.when), sum: f.sum };
    let of = |tool: &&mut OwnTool| tool.entry == f.tool && tool.tool.cost.currency() == f.sum.currency();
    tools.iter_mut().filter(of).for_each(|tool| tool.sold = tool.sold.or(Some(sold)));
}

impl OwnTool {
    /// None for one that no tool is, as an older phone may bring it.
    fn of(entry: &Entry, f: &ToolAdded) -> Option<OwnTool> {
        let salvage = f.salvage.unwrap_or(Money::zero(f.sum.currency()));
        let tool = Tool { cost: f.sum, salvage, years: f.years };
        let spread = f.share.map_or(Spread::Straight, |share| Spread::DecliningThenStraight { share: share.0 });
        tool.wear(spread, FirstYear::Whole).ok()?;
        let bought = entry.when(f.when);
        Some(OwnTool { entry: entry.id, name: f.name.clone(), tool, spread, bought, sold: None })
    }

    /// What a year carries of it, unrounded; nothing before it was bought, after its years, and from the year on in which it was sold.
    ///
    /// # Errors
    /// Those of [`Tool::wear`].
    pub fn wear_of(&self, year: i32) -> Answer<Decimal> {
        let nth = usize::try_from(year.saturating_sub(self.bought.day().as_ymd().0));
        let all = self.tool.wear(self.spread, FirstYear::Whole)?;
        let is_there = self.sold.is_none_or(|sold| year < sold.at.day().as_ymd().0);
        Ok(nth.ok().and_then(|nth| all.get(nth).copied()).filter(|_| is_there).unwrap_or_default())
    }

    /// What it was sold for beyond what was left of its cost after the years before; below nothing where it was less. None while it is there.
    ///
    /// # Errors
    /// Those of [`Tool::wear`].
    pub fn gain(&self) -> Answer<Option<Money>> {
        let Some(sold) = self.sold else { return Ok(None) };
        let years = self.bought.day().as_ymd().0..sold.at.day().as_ymd().0;
        let worn =
            years.map(|year| self.wear_of(year)).try_fold(Decimal::ZERO, |sum, worn| sum.checked_add(worn?).ok_or(Refusal::OutOfRange))?;
        let left = self.tool.cost.amount().checked_sub(worn).ok_or(Refusal::OutOfRange)?;
        Money::book(sold.sum.amount().checked_sub(left).ok_or(Refusal::OutOfRange)?, sold.sum.currency()).map(Some)
    }
}

impl Till {
    /// What a way of paying keeps.
    pub fn fee_of(&self, paid: Paid) -> Fee {
        let (share, fixed) = match paid {
            Paid::Card => (self.fee, self.fixed),
            Paid::Bank => self.bank,
            Paid::Notes => self.notes,
        };
        Fee { share: share.unwrap_or_default(), fixed: fixed.map(Money::amount).unwrap_or_default() }
    }

    /// Sales tax and where it stands.
    pub fn sales_tax(&self) -> Tax {
        Tax { rate: self.tax.unwrap_or_default(), side: self.side.unwrap_or(Side::Inside) }
    }

    /// What is handed over of a sum: in notes and coins it goes to the smallest coin, as the maker rounds.
    ///
    /// # Errors
    /// [`Refusal::CoinOutOfRange`](crate::refusal::Refusal::CoinOutOfRange), [`Refusal::MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    pub fn in_coins(&self, paid: Option<Paid>, sum: Money) -> Answer<Money> {
        let to_coin = if self.cash_up { up_to_cash } else { round_to_cash };
        self.coin(paid)?.map_or(Ok(sum), |coin| to_coin(sum, coin))
    }

    /// The smallest coin, where one is set and it is paid in notes and coins.
    ///
    /// # Errors
    /// [`Refusal::CoinOutOfRange`](crate::refusal::Refusal::CoinOutOfRange).
    pub fn coin(&self, paid: Option<Paid>) -> Answer<Option<Cash>> {
        self.cash.filter(|coin| !coin.is_zero() && paid == Some(Paid::Notes)).map(Cash::of).transpose()
    }
}

impl Measure {
    /// The volume a price is for.
    pub fn volume(self) -> Volume {
        match self {
            Measure::BoardFoot => Volume::BOARD_FOOT,
            Measure::Litre => Volume::LITRE,
            Measure::CubicMetre => Volume::CUBIC_METRE,
        }
    }
}

impl Workshop {
    /// What an hour should pay, as the maker said it.
    pub fn pay(&self, currency: Currency) -> Option<Decimal> {
        self.rates.get(&currency).and_then(|rate| rate.pay)
    }

    /// What equal boards of a wood cost: its own price, else that of any wood.
    pub fn board_price(&self, currency: Currency, wood: Option<&Key>) -> Option<BoardPrice> {
        let own = wood.and_then(|wood| self.board_prices.get(&(currency, Some(wood.clone()))));
        own.or_else(|| self.board_prices.get(&(currency, None))).copied()
    }
}
