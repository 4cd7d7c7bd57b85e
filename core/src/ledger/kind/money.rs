//! Facts of money: what was spent, what an hour must earn, what is asked.

use super::haul::Per;
use super::{Exact, kinds};
use crate::quantity::{Count, Currency, Id, Key, Length, Moment, Money, Side, spelled};

/// How wood is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    BoardFoot,
    Litre,
    CubicMetre,
}

spelled!(Measure: BoardFoot "board-foot", Litre "litre", CubicMetre "cubic-metre");

/// Where a kind of cost belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Home {
    Job,
    Rate,
}

spelled!(Home: Job "job", Rate "rate");

kinds! {
    /// Money was spent: on a job, on a haul, or on neither (a workshop cost). `what` is the maker's word, `kind` a key.
    /// How the sum came about is kept: `n` at `each`, or `used` of a pack of `of` at `pack`. `when` where it was another day.
    /// `can`: the pack of a [`PackOpened`]; missing, one that nobody keeps count of. `back`: the spending of which this came back, a sum below
    /// nothing; missing, of none that is known. With both, `used` is below nothing: so much went back into the can.
    MoneySpent {
        sum: Money, kind: Key;
        job: Id, haul: Id, what: String, when: Moment, n: Exact, each: Exact, used: Exact, of: Exact, pack: Money, can: Id,
        back: Id
    }
    /// A can or pack was opened that several jobs use: what it cost and holds, in its unit, and the kind of spending its shares are. `when` is the
    /// day on its lid, where it was another. Its id is the entry's.
    PackOpened { what: String, kind: Key, sum: Money, of: Exact, unit: Key; when: Moment }
    /// What is left of a can or pack is gone.
    PackEmptied { can: Id; when: Moment }
    /// Where a kind of cost belongs, in one currency: on each job as used, or in the rate. The last one stands.
    CostHomed { currency: Currency, kind: Key, home: Home; }
    /// A tool that wears out over so many years from the one it was bought in, down to what it fetches at the end (nothing where `salvage` is
    /// missing). Each year carries as much, or `share` of what is left of the price until as much is more. `when`: the day it was bought.
    ToolAdded { name: String, sum: Money, years: Count; salvage: Money, share: Exact, when: Moment }
    /// A tool was sold for `sum`, on the day `when`, where that was another. What it wears ends with the year before.
    ToolSold { tool: Id, sum: Money; when: Moment }
    /// A distance was driven for a job or a haul, or for neither; `sum` is distance x rate. `delivery`: whether it was to bring pieces of the job to
    /// their buyers; missing, nobody said.
    DistanceDriven { distance: Length, rate: Exact, per: Per, sum: Money; job: Id, haul: Id, what: String, when: Moment, delivery: bool }
    /// What an hour must earn, in one currency: pay wanted and lowest pay per hour, hours a year and those logged to jobs,
    /// workshop costs and tools wear a year, tax on own work and profit as shares.
    RateSet { currency: Currency; pay: Exact, lowest: Exact, hours: Exact, logged: Exact, costs: Money, wear: Money, tax: Exact, profit: Exact }
    /// How one is paid, in one currency: sales tax and where it stands, card fee as a share and fixed, the coin cash is rounded to, the price point. What a bank
    /// transfer and notes cost, as a share and fixed; nothing where it was never said. `cash_up`: cash goes up to the coin; else, and where it is
    /// missing, to the nearest.
    TillSet { currency: Currency; tax: Exact, side: Side, fee: Exact, fixed: Money, cash: Money, point: Key, mileage: Exact, per: Per,
        bank_fee: Exact, bank_fixed: Money, notes_fee: Exact, notes_fixed: Money, cash_up: bool }
    /// A rate of sales tax under a name, beside the usual one of [`TillSet`]; its id is the entry's. `side` as usual where it is missing.
    /// `tax`: the one it changes, by its first entry.
    TaxNamed { currency: Currency, name: String, rate: Exact; side: Side, tax: Id }
    /// A named rate is offered no more; a job that has it keeps it.
    TaxDropped { tax: Id; }
    /// What a job's pieces are taxed with from now on: a named rate, or nothing where `untaxed`; as usual where neither is said.
    JobTaxSet { job: Id; tax: Id, untaxed: bool }
    /// What equal bought boards cost, by the measure of `per`: of one wood, or of any without a price of its own.
    BoardPriceSet { currency: Currency, amount: Exact, per: Measure; wood: Key }
    /// The tag of one piece of a job.
    TagSet { job: Id, sum: Money; }
    /// What the maker would gladly take for one piece; without a sum it is worked out again.
    SettleSet { job: Id; sum: Money }
}

impl TillSet {
    /// Nothing is said yet.
    pub fn of(currency: Currency) -> TillSet {
        let (tax, side, fee, fixed, cash, point, mileage, per) = (None, None, None, None, None, None, None, None);
        let (bank_fee, bank_fixed, notes_fee, notes_fixed) = (None, None, None, None);
        TillSet { currency, tax, side, fee, fixed, cash, point, mileage, per, bank_fee, bank_fixed, notes_fee, notes_fixed, cash_up: None }
    }
}

impl RateSet {
    /// Nothing is said yet.
    pub fn of(currency: Currency) -> RateSet {
        RateSet { currency, pay: None, lowest: None, hours: None, logged: None, costs: None, wear: None, tax: None, profit: None }
    }
}
