//! Lines about money: spend, drive, the rate, the till, tags.

use super::size::distance;
use super::time::day;
use super::words::{Read, Words};
use super::{Teller, Told};
use crate::ledger::decide::{Command, MoneyCommand, Much, On};
use crate::ledger::kind::Exact;
use crate::ledger::kind::haul::Per;
use crate::ledger::kind::money::{BoardPriceSet, CostHomed, Home, Measure, PackOpened, RateSet, TillSet, ToolAdded, ToolSold};
use crate::quantity::{Currency, Moment, Side};

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let currency = teller.workshop.0;
    let command = match verb {
        "spend" => spend(teller, words)?,
        "credit" => {
            let much = Much::Credit(words.money(currency)?);
            spent(teller, words, much)?
        }
        "belongs" => {
            let kind = words.key("a kind of spending")?;
            let home = words.take("job or rate", |word| match word {
                "job" => Some(Home::Job),
                "rate" => Some(Home::Rate),
                _ => None,
            })?;
            MoneyCommand::SetHome(CostHomed { currency, kind, home })
        }
        "tool" => tool(teller, words)?,
        "tool-sold" => {
            let (sum, tool) = (words.money(currency)?, teller.story.names.said_mark(words)?);
            MoneyCommand::SellTool(ToolSold { tool, sum, when: when(teller, words)? })
        }
        "came-back" => {
            let (sum, spending) = (words.money(currency)?, teller.story.names.said_mark(words)?);
            MoneyCommand::ComeBack { spending, sum: Some(sum), n: None, what: words.maybe_text() }
        }
        "back-in-can" => {
            let (used, spending) = (words.number()?.normalize(), teller.story.names.said_mark(words)?);
            MoneyCommand::BackInCan { spending, used }
        }
        "open-can" => open_can(teller, words)?,
        "use-can" => {
            let can = teller.story.names.said_mark(words)?;
            let much = Much::OfCan { can, used: words.number()?.normalize() };
            let (kind, on) = (words.key("a kind of spending")?, on(teller, words)?);
            MoneyCommand::Spend { on, much, kind, what: None, when: when(teller, words)? }
        }
        "empty-can" => MoneyCommand::EmptyCan { can: teller.story.names.said_mark(words)? },
        "drive" => drive(teller, words)?,
        "rate" => MoneyCommand::SetRate(rate(words, currency)?),
        "till" => MoneyCommand::SetTill(till(words, currency)?),
        "boards" => MoneyCommand::SetBoardPrice(boards(words, currency)?),
        "tag" => MoneyCommand::SetTag { sum: words.money(currency)?, job: teller.story.names.said_job(words)? },
        _ => {
            let sum = if words.has("none") { None } else { Some(words.money(currency)?) };
            MoneyCommand::SetSettle { sum, job: teller.story.names.said_job(words)? }
        }
    };
    teller.order(&Command::Money(command)).map(drop)
}

/// `boards 4.75 a board-foot ash-white`: what equal boards cost, of one wood or of any.
fn boards(words: &mut Words, currency: Currency) -> Read<BoardPriceSet> {
    let amount = Exact(words.number()?.normalize());
    words.expect("a")?;
    let per = words.take("board-foot, litre or cubic-metre", |word| match word {
        "board-foot" => Some(Measure::BoardFoot),
        "litre" => Some(Measure::Litre),
        "cubic-metre" => Some(Measure::CubicMetre),
        _ => None,
    })?;
    let wood = if words.is_done() { None } else { Some(words.key("a wood")?) };
    Ok(BoardPriceSet { currency, amount, per, wood })
}

/// `on NAME` of a job or a haul; without it a workshop cost.
fn on(teller: &Teller, words: &mut Words) -> Read<On> {
    if !words.has("on") {
        return Ok(On::Workshop);
    }
    let names = &teller.story.names;
    words.take("the name of a job or a haul", |word| names.job(word).map(On::Job).or_else(|| names.haul(word).map(On::Haul)))
}

/// `when 2026-04-02`, where it was another day.
pub fn when(teller: &Teller, words: &mut Words) -> Read<Option<Moment>> {
    if words.has("when") { day(words, teller.story.now).map(Some) } else { Ok(None) }
}

/// `spend 2.33 glue`, `spend 14 at 0.62 discs`, `spend 9.5 of 32 at 34.90 finish`; then `on stands "which" when 2026-04-02`.
fn spend(teller: &Teller, words: &mut Words) -> Read<MoneyCommand> {
    let currency = teller.workshop.0;
    let of = words.after("of");
    let at = words.after("at");
    let much = match (of, at) {
        (true, _) => {
            let used = words.number()?;
            words.expect("of")?;
            let of = words.number()?;
            words.expect("at")?;
            Much::Share { used: used.normalize(), of: of.normalize(), pack: words.money(currency)? }
        }
        (false, true) => {
            let n = words.number()?.normalize();
            words.expect("at")?;
            Much::Each { n, each: words.number()?.normalize(), currency }
        }
        (false, false) => Much::Whole(words.money(currency)?),
    };
    spent(teller, words, much)
}

fn spent(teller: &Teller, words: &mut Words, much: Much) -> Read<MoneyCommand> {
    let kind = words.key("a kind of spending")?;
    let on = on(teller, words)?;
    let what = words.maybe_text();
    Ok(MoneyCommand::Spend { on, much, kind, what, when: when(teller, words)? })
}

/// `open-can 34.90 holds 32 fl-oz finish "Danish oil" when 2026-03-02`.
fn open_can(teller: &Teller, words: &mut Words) -> Read<MoneyCommand> {
    let sum = words.money(teller.workshop.0)?;
    words.expect("holds")?;
    let of = Exact(words.number()?.normalize());
    let (unit, kind, what) = (words.key("a unit")?, words.key("a kind of spending")?, words.text()?);
    Ok(MoneyCommand::OpenCan { pack: PackOpened { what, kind, sum, of, unit, when: when(teller, words)? }, takes: None })
}

/// `tool 1200 years 4 "Saw" salvage 200 share 0.5 when 2026-03-02`.
fn tool(teller: &Teller, words: &mut Words) -> Read<MoneyCommand> {
    let currency = teller.workshop.0;
    let sum = words.money(currency)?;
    words.expect("years")?;
    let (years, name) = (words.count()?, words.text()?);
    let salvage = if words.has("salvage") { Some(words.money(currency)?) } else { None };
    let share = if words.has("share") { exact(words)? } else { None };
    Ok(MoneyCommand::AddTool(ToolAdded { name, sum, years, salvage, share, when: when(teller, words)? }))
}

/// `drive 18 miles at 0.725 on stands "market"`, `drive 62 km on bench delivery`.
fn drive(teller: &Teller, words: &mut Words) -> Read<MoneyCommand> {
    let (distance, miles) = distance(words)?;
    let per = if miles { Per::Mile } else { Per::Km };
    let rate = if words.has("at") { Some((words.number()?.normalize(), per)) } else { None };
    let on = on(teller, words)?;
    let (delivery, what) = (words.has("delivery").then_some(true), words.maybe_text());
    Ok(MoneyCommand::Drive { on, distance, rate, currency: teller.workshop.0, what, when: when(teller, words)?, delivery })
}

fn exact(words: &mut Words) -> Read<Option<Exact>> {
    words.number().map(|number| Some(Exact(number.normalize())))
}

/// `rate pay 16 lowest 12 hours 420 logged 350 costs 1050 wear 0 tax 0 profit 0`, any of them.
fn rate(words: &mut Words, currency: Currency) -> Read<RateSet> {
    let mut set = RateSet::of(currency);
    while !words.is_done() {
        match words.word("what is said of the rate")? {
            "pay" => set.pay = exact(words)?,
            "lowest" => set.lowest = exact(words)?,
            "hours" => set.hours = exact(words)?,
            "logged" => set.logged = exact(words)?,
            "costs" => set.costs = Some(words.money(currency)?),
            "wear" => set.wear = Some(words.money(currency)?),
            "tax" => set.tax = exact(words)?,
            "profit" => set.profit = exact(words)?,
            _ => return words.no("pay, lowest, hours, logged, costs, wear, tax or profit"),
        }
    }
    Ok(set)
}

/// `till tax 5.5 inside fee 0.026 fixed 0.10 bank-fee 0.01 notes-fixed 0.20 cash 0.05 point 5 mileage 0.725 mile`, any of them.
fn till(words: &mut Words, currency: Currency) -> Read<TillSet> {
    let mut set = TillSet::of(currency);
    while !words.is_done() {
        match words.word("what is said of the till")? {
            "tax" => set.tax = exact(words)?,
            "bank-fee" => set.bank_fee = exact(words)?,
            "bank-fixed" => set.bank_fixed = Some(words.money(currency)?),
            "notes-fee" => set.notes_fee = exact(words)?,
            "notes-fixed" => set.notes_fixed = Some(words.money(currency)?),
            "inside" => set.side = Some(Side::Inside),
            "top" => set.side = Some(Side::Top),
            "fee" => set.fee = exact(words)?,
            "fixed" => set.fixed = Some(words.money(currency)?),
            "cash" => set.cash = Some(words.money(currency)?),
            "cash-up" => set.cash_up = Some(true),
            "cash-nearest" => set.cash_up = Some(false),
            "point" => set.point = Some(words.key("a price point")?),
            "mileage" => set.mileage = exact(words)?,
            "mile" => set.per = Some(Per::Mile),
            "km" => set.per = Some(Per::Km),
            _ => {
                return words
                    .no("tax, inside, top, fee, fixed, bank-fee, bank-fixed, notes-fee, notes-fixed, cash, cash-up, cash-nearest, point, mileage, mile or km");
            }
        }
    }
    Ok(set)
}
