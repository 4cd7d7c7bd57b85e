//! Facts of money: what was spent, what an hour must earn, what is asked.

use super::haul::Per;
use super::{Exact, kinds};
use crate::quantity::{Currency, Id, Key, Length, Moment, Money, Side, spelled};

/// How wood is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    BoardFoot,
    Litre,
    CubicMetre,
}

spelled!(Measure: BoardFoot "board-foot", Litre "litre", CubicMetre "cubic-metre");

kinds! {
    /// Money was spent: on a job, on a haul, or on neither (a workshop cost). `what` is the maker's word, `kind` a key.
    /// How the sum came about is kept: `n` at `each`, or `used` of a pack of `of` at `pack`. `when` where it was another day.
    MoneySpent { sum: Money, kind: Key; job: Id, haul: Id, what: String, when: Moment, n: Exact, each: Exact, used: Exact, of: Exact, pack: Money }
    /// A distance was driven for a job or a haul, or for neither; `sum` is distance x rate.
    DistanceDriven { distance: Length, rate: Exact, per: Per, sum: Money; job: Id, haul: Id, what: String, when: Moment }
    /// What an hour must earn, in one currency: pay wanted and lowest pay per hour, hours a year and those logged to jobs,
    /// workshop costs and tools wear a year, tax on own work and profit as shares.
    RateSet { currency: Currency; pay: Exact, lowest: Exact, hours: Exact, logged: Exact, costs: Money, wear: Money, tax: Exact, profit: Exact }
    /// How one is paid, in one currency: sales tax and where it stands, card fee as a share and fixed, the coin cash is rounded to, the price point.
    TillSet { currency: Currency; tax: Exact, side: Side, fee: Exact, fixed: Money, cash: Money, point: Key, mileage: Exact, per: Per }
    /// What equal bought boards cost, by the measure of `per`: of one wood, or of any without a price of its own.
    BoardPriceSet { currency: Currency, amount: Exact, per: Measure; wood: Key }
    /// The tag of one piece of a job.
    TagSet { job: Id, sum: Money; }
    /// What the maker would gladly take for one piece; without a sum it is worked out again.
    SettleSet { job: Id; sum: Money }
}

impl RateSet {
    /// Nothing is said yet.
    pub fn of(currency: Currency) -> RateSet {
        RateSet { currency, pay: None, lowest: None, hours: None, logged: None, costs: None, wear: None, tax: None, profit: None }
    }
}
