//! Tools wear out: what of their price each year carries.

use super::sums::{clean, less, not_below_nothing, over, share, times};
use crate::quantity::{Decimal, Money};
use crate::refusal::{Answer, Refusal};

/// No tool is written down over more years than that.
pub const YEARS_MOST: u32 = 60;
const HALF: Decimal = Decimal::from_parts(5, 0, 0, false, 1);

/// What a tool cost, what it fetches at the end, and for how many years it serves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tool {
    pub cost: Money,
    pub salvage: Money,
    pub years: u32,
}

/// How its wear is spread over the years.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spread {
    /// As much each year.
    Straight,
    /// So large a share, each year, of what is left of the price.
    Declining { share: Decimal },
    /// The same, and as much each year from where that is more.
    DecliningThenStraight { share: Decimal },
}

/// How much of the first year counts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FirstYear {
    #[default]
    Whole,
    /// Half of it, whenever in the year the tool was bought; the other half comes at the end.
    Half,
}

impl Tool {
    /// The wear of each year, unrounded; never more in all than the price less what the tool fetches at the end.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::BelowNothing`], [`Refusal::MoreThanPrice`] for a tool that fetches more than it cost,
    /// [`Refusal::YearsOutOfRange`], [`Refusal::ShareOutOfRange`].
    ///
    /// Source: straight line and declining balance, OpenStax, Principles of Accounting 1 (read).
    ///
    /// ```
    /// use fivebar_core::money::wear::{FirstYear, Spread, Tool};
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// let usd = |n: i64| Money::book(Decimal::from(n), Currency::USD).unwrap();
    /// let press = Tool { cost: usd(58_000), salvage: usd(10_000), years: 5 };
    /// assert_eq!(press.wear(Spread::Straight, FirstYear::Whole).unwrap(), vec![Decimal::from(9_600); 5]);
    /// ```
    pub fn wear(&self, spread: Spread, first: FirstYear) -> Answer<Vec<Decimal>> {
        self.check()?;
        let salvage = self.salvage.amount();
        let (mut left, mut life, mut all) = (self.cost.amount(), Decimal::from(self.years), vec![]);
        while Decimal::ZERO < life {
            let part = if all.is_empty() && first == FirstYear::Half { HALF } else { Decimal::ONE.min(life) };
            let worn = spread.worn(left, less(left, salvage)?, (part, life))?;
            let worn = clean(worn.min(less(left, salvage)?));
            all.push(worn);
            (left, life) = (less(left, worn)?, less(life, part)?);
        }
        Ok(all)
    }

    /// The wear of so many uses out of all that a tool has in it, unrounded.
    ///
    /// # Errors
    /// Those of [`wear`](Tool::wear); [`Refusal::NothingToShareBy`] for a tool without any use in it, [`Refusal::BelowNothing`].
    pub fn wear_by_use(&self, used: Decimal, of: Decimal) -> Answer<Decimal> {
        self.check()?;
        let worth = less(self.cost.amount(), self.salvage.amount())?;
        over(times(worth, not_below_nothing(used)?)?, not_below_nothing(of)?)
    }

    fn check(&self) -> Answer<()> {
        self.cost.minus(self.salvage)?;
        not_below_nothing(self.salvage.amount())?;
        if self.cost.amount() < self.salvage.amount() {
            return Err(Refusal::MoreThanPrice { met: self.salvage, price: self.cost });
        }
        let years = 1..=YEARS_MOST;
        if years.contains(&self.years) { Ok(()) } else { Err(Refusal::YearsOutOfRange { met: self.years, least: 1, most: YEARS_MOST }) }
    }
}

impl Spread {
    /// What a part of a year carries of what is left, with so much of the life to come.
    fn worn(self, left: Decimal, worth: Decimal, (part, life): (Decimal, Decimal)) -> Answer<Decimal> {
        let straight = || over(times(worth, part)?, life);
        let declining = |of: Decimal| times(times(left, share(of)?)?, part);
        match self {
            Spread::Straight => straight(),
            Spread::Declining { share } => declining(share),
            Spread::DecliningThenStraight { share } => Ok(declining(share)?.max(straight()?)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, eur, usd};
    use crate::quantity::Currency;

    fn saw() -> Tool {
        Tool { cost: usd("1200"), salvage: usd("200"), years: 4 }
    }

    #[track_caller]
    fn check(spread: Spread, first: FirstYear, wear: &[&str]) {
        let ours = saw().wear(spread, first).unwrap();
        assert_eq!(ours.iter().map(|worn| worn.normalize()).collect::<Vec<_>>(), wear.iter().map(|worn| d(worn)).collect::<Vec<_>>());
    }

    #[test]
    fn each_year_carries_its_part_by_hand() {
        check(Spread::Straight, FirstYear::Whole, &["250", "250", "250", "250"]);
        check(Spread::Straight, FirstYear::Half, &["125", "250", "250", "250", "125"]);
        let share = d("0.5"); // 600, 300, then 100 are left above the salvage
        check(Spread::Declining { share }, FirstYear::Whole, &["600", "300", "100", "0"]);
        let share = d("0.3"); // 360, 252; then 388 over two years are more than 176.4
        check(Spread::DecliningThenStraight { share }, FirstYear::Whole, &["360", "252", "194", "194"]);
    }

    #[track_caller]
    fn refused(tool: Tool, refusal: Refusal) {
        assert_eq!(tool.wear(Spread::Straight, FirstYear::Whole), Err(refusal));
    }

    #[test]
    fn what_no_tool_is_is_refused() {
        refused(Tool { years: 0, ..saw() }, Refusal::YearsOutOfRange { met: 0, least: 1, most: 60 });
        refused(Tool { years: 61, ..saw() }, Refusal::YearsOutOfRange { met: 61, least: 1, most: 60 });
        refused(Tool { salvage: usd("1201"), ..saw() }, Refusal::MoreThanPrice { met: usd("1201"), price: usd("1200") });
        refused(Tool { salvage: usd("-1"), ..saw() }, Refusal::BelowNothing { met: d("-1") });
        refused(Tool { salvage: eur("1"), ..saw() }, Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR });
        let share = d("1");
        assert_eq!(saw().wear(Spread::Declining { share }, FirstYear::Whole), Err(Refusal::ShareOutOfRange { met: share }));
        assert_eq!(saw().wear_by_use(d("1"), d("0")), Err(Refusal::NothingToShareBy));
    }
}
