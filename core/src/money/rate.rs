//! What an hour must earn. It spreads over the hours logged to jobs what is owed to all hours worked.

use super::sums::{for_time, hours, less, not_below_nothing, over, per_hour, plus, share, times};
use crate::quantity::{Decimal, Span, half_up, order_by_key};
use crate::refusal::{Answer, Refusal};
use std::cmp::Reverse;

/// A year, or what there is of one: hours worked at all, hours logged to jobs of every kind, what the workshop cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Year {
    pub all: Span,
    pub logged: Span,
    /// Rent, insurance, heat, spending that belongs to no job.
    pub overhead: Decimal,
    /// Wear of tools and machines.
    pub wear: Decimal,
}

/// What the maker wants: pay for each hour worked, the tax on own work and the profit as shares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wanted {
    pub pay: Decimal,
    pub own_tax: Decimal,
    pub profit: Decimal,
}

/// The stack of one logged hour, unrounded. Its five parts make up the rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rate {
    pub per_hour: Decimal,
    pub pay: Decimal,
    pub workshop: Decimal,
    pub wear: Decimal,
    pub tax: Decimal,
    pub profit: Decimal,
    /// Profit and pay: what is yours of a logged hour, before income tax.
    pub yours: Decimal,
    /// The same over every hour worked.
    pub yours_over_all: Decimal,
    /// Workshop costs, wear and tax on own work.
    pub goes_out: Decimal,
}

impl Year {
    /// A year by its hours as they are typed.
    ///
    /// # Errors
    /// [`Refusal::BelowNothing`], [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{money::rate::Year, quantity::{Decimal, Span}};
    /// let year = Year::by_hours(Decimal::from(420), Decimal::new(3_505, 1), Decimal::from(1_050), Decimal::ZERO).unwrap();
    /// assert_eq!(year.logged, Span::minutes(350 * 60 + 30));
    /// ```
    pub fn by_hours(all: Decimal, logged: Decimal, overhead: Decimal, wear: Decimal) -> Answer<Year> {
        Ok(Year { all: hours(all)?, logged: hours(logged)?, overhead, wear })
    }

    /// # Errors
    /// [`Refusal::NoHours`] when none were logged, [`Refusal::LoggedBeyondAll`], [`Refusal::BelowNothing`].
    pub fn checked(self) -> Answer<Year> {
        if self.logged <= Span::ZERO {
            return Err(Refusal::NoHours);
        }
        if self.all < self.logged {
            return Err(Refusal::LoggedBeyondAll { logged: self.logged, all: self.all });
        }
        not_below_nothing(self.overhead)?;
        not_below_nothing(self.wear)?;
        Ok(self)
    }

    /// Workshop costs and wear for each logged hour, O + W.
    ///
    /// # Errors
    /// As [`Year::checked`].
    ///
    /// ```
    /// use fivebar_core::{money::rate::Year, quantity::{Decimal, Span}};
    /// let hours = |n: i64| Span::minutes(60 * n);
    /// let year = Year { all: hours(420), logged: hours(350), overhead: Decimal::from(1_050), wear: Decimal::ZERO };
    /// assert_eq!(year.workshop_per_hour(), Ok(Decimal::from(3)));
    /// ```
    pub fn workshop_per_hour(self) -> Answer<Decimal> {
        let year = self.checked()?;
        per_hour(plus(year.overhead, year.wear)?, year.logged)
    }

    /// Money an hour logged, spread over every hour worked.
    ///
    /// # Errors
    /// As [`Year::checked`].
    ///
    /// ```
    /// use fivebar_core::{money::rate::Year, quantity::{Decimal, Span}};
    /// let hours = |n: i64| Span::minutes(60 * n);
    /// let year = Year { all: hours(400), logged: hours(300), overhead: Decimal::ZERO, wear: Decimal::ZERO };
    /// assert_eq!(year.over_all(Decimal::from(20)), Ok(Decimal::from(15)));
    /// ```
    pub fn over_all(self, per_logged: Decimal) -> Answer<Decimal> {
        let year = self.checked()?;
        per_hour(for_time(per_logged, year.logged)?, year.all)
    }
}

/// Your rate: R = (1 + p)(A + O + W - s(O + W)) / (1 - s(1 + p)), where A is the pay spread over the logged hours,
/// O and W are workshop costs and wear by the logged hour, s the tax on own work, p the profit.
///
/// # Errors
/// [`Refusal::NoHours`] when none were logged, [`Refusal::LoggedBeyondAll`], [`Refusal::BelowNothing`],
/// [`Refusal::ShareOutOfRange`] for a tax that is no share, [`Refusal::RateOutOfReach`] where s(1 + p) reaches 1.
///
/// ```
/// use fivebar_core::{money::rate::{Wanted, Year, rate}, quantity::{Decimal, Span}};
/// let hours = |n: i64| Span::minutes(60 * n);
/// let year = Year { all: hours(480), logged: hours(300), overhead: Decimal::from(2_640), wear: Decimal::ZERO };
/// let wanted = Wanted { pay: Decimal::from(22), own_tax: Decimal::ZERO, profit: Decimal::ZERO };
/// assert_eq!(rate(year, wanted).unwrap().per_hour, Decimal::from(44));
/// let with_profit = Wanted { profit: Decimal::new(10, 2), ..wanted };
/// assert_eq!(rate(year, with_profit).unwrap().per_hour, Decimal::new(484, 1)); // 48.40
/// ```
pub fn rate(year: Year, wanted: Wanted) -> Answer<Rate> {
    let year = year.checked()?;
    let pay = per_hour(for_time(not_below_nothing(wanted.pay)?, year.all)?, year.logged)?;
    let (workshop, wear) = (per_hour(year.overhead, year.logged)?, per_hour(year.wear, year.logged)?);
    let out = plus(workshop, wear)?;
    let whole = solve(pay, out, wanted)?;
    let tax = times(wanted.own_tax, less(whole, out)?)?;
    let yours = less(less(whole, out)?, tax)?;
    Ok(Rate {
        per_hour: whole,
        pay,
        workshop,
        wear,
        tax,
        profit: less(yours, pay)?,
        yours,
        yours_over_all: year.over_all(yours)?,
        goes_out: plus(out, tax)?,
    })
}

impl Rate {
    /// The same to so many decimals, its parts making up its sum: what rounding leaves over goes to the parts that it took most from.
    ///
    /// ```
    /// use fivebar_core::{money::rate::{Wanted, Year, rate}, quantity::{Decimal, Span}};
    /// let hours = |n: i64| Span::minutes(60 * n);
    /// let year = Year { all: hours(3), logged: hours(3), overhead: Decimal::TEN, wear: Decimal::TEN };
    /// let wanted = Wanted { pay: Decimal::new(3333, 3), own_tax: Decimal::ZERO, profit: Decimal::ZERO };
    /// let shown = rate(year, wanted).unwrap().shown(2); // three times 3.333…: 10.00
    /// assert_eq!([shown.pay, shown.workshop, shown.wear, shown.per_hour], [333, 334, 333, 1000].map(|n| Decimal::new(n, 2)));
    /// ```
    pub fn shown(self, decimals: u32) -> Rate {
        let exact = [self.pay, self.workshop, self.wear, self.tax, self.profit];
        let per_hour = half_up(self.per_hour, decimals);
        let mut parts = exact.map(|part| part.trunc_with_scale(decimals));
        let unit = Decimal::new(1, decimals);
        let mut by_rest = [0_usize, 1, 2, 3, 4];
        let rest = |nth: usize| exact.get(nth).map_or(Decimal::ZERO, |part| part.saturating_sub(part.trunc_with_scale(decimals)));
        order_by_key(&mut by_rest, |nth| Reverse(rest(*nth)));
        for nth in by_rest {
            let sum = parts.iter().fold(Decimal::ZERO, |sum, part| sum.saturating_add(*part));
            if let Some(part) = parts.get_mut(nth).filter(|_| sum < per_hour) {
                *part = part.saturating_add(unit);
            }
        }
        let [pay, workshop, wear, tax, profit] = parts;
        let yours = pay.saturating_add(profit);
        // The parts are shown so that they add up: over the same hours what is yours is the same figure, not half up of its own.
        let is_same = half_up(self.yours_over_all, decimals) == half_up(self.yours, decimals);
        let yours_over_all = if is_same { yours } else { half_up(self.yours_over_all, decimals) };
        let goes_out = per_hour.saturating_sub(yours);
        Rate { per_hour, pay, workshop, wear, tax, profit, yours, yours_over_all, goes_out }
    }
}

/// Whether any rate leaves the profit after the tax: 1 - s(1 + p), what is left of each unit of money.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::ShareOutOfRange`] for a tax that is no share, [`Refusal::RateOutOfReach`] where s(1 + p)
/// reaches 1.
///
/// ```
/// use fivebar_core::{money::rate::in_reach, quantity::Decimal};
/// assert_eq!(in_reach(Decimal::new(25, 2), Decimal::new(20, 2)), Ok(Decimal::new(70, 2)));
/// assert!(in_reach(Decimal::new(5, 1), Decimal::ONE).is_err());
/// ```
pub fn in_reach(own_tax: Decimal, profit: Decimal) -> Answer<Decimal> {
    let (tax, up) = (share(own_tax)?, plus(Decimal::ONE, not_below_nothing(profit)?)?);
    let rest = less(Decimal::ONE, times(tax, up)?)?;
    if rest <= Decimal::ZERO { Err(Refusal::RateOutOfReach { tax, profit }) } else { Ok(rest) }
}

/// R from A and O + W.
fn solve(pay: Decimal, out: Decimal, wanted: Wanted) -> Answer<Decimal> {
    let rest = in_reach(wanted.own_tax, wanted.profit)?;
    let (s, up) = (wanted.own_tax, plus(Decimal::ONE, wanted.profit)?);
    let owed = less(plus(pay, out)?, times(s, out)?)?;
    over(times(up, owed)?, rest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, shown};

    fn year(all: i64, logged: i64, overhead: &str, wear: &str) -> Year {
        Year { all: Span::minutes(60 * all), logged: Span::minutes(60 * logged), overhead: d(overhead), wear: d(wear) }
    }

    fn wanted(pay: &str, own_tax: &str, profit: &str) -> Wanted {
        Wanted { pay: d(pay), own_tax: d(own_tax), profit: d(profit) }
    }

    #[track_caller]
    fn check(year: Year, wanted: Wanted, whole: &str) {
        let rate = rate(year, wanted).unwrap();
        assert_eq!(shown(rate.per_hour), whole);
        let parts = [rate.pay, rate.workshop, rate.wear, rate.tax, rate.profit];
        assert_eq!(shown(parts.into_iter().sum()), whole);
        assert_eq!(shown(rate.yours.checked_add(rate.goes_out).unwrap()), whole);
    }

    #[test]
    fn rates_of_both_workshops_and_the_examples() {
        check(year(480, 300, "2640", "0"), wanted("22", "0", "0"), "44.00");
        check(year(480, 300, "2640", "0"), wanted("22", "0", "0.10"), "48.40");
        check(year(480, 300, "3615", "2250"), wanted("20", "0.1413", "0.085"), "62.52");
        check(year(420, 350, "1050", "0"), wanted("16", "0", "0"), "22.20");
        check(year(600, 480, "1440", "0"), wanted("17", "0", "0"), "24.25");
    }

    /// The stack as the drawing of the rate shows it.
    #[test]
    fn the_stack_says_what_is_yours() {
        let rate = rate(year(480, 300, "3615", "2250"), wanted("20", "0.1413", "0.085")).unwrap();
        let got = [rate.pay, rate.workshop, rate.wear, rate.tax, rate.profit, rate.yours, rate.yours_over_all, rate.goes_out].map(shown);
        assert_eq!(got, ["32.00", "12.05", "7.50", "6.07", "4.90", "36.90", "23.06", "25.62"]);
    }

    /// Where every hour is logged, what is yours of a logged hour is what is yours of every hour, to the last digit that is shown.
    #[test]
    fn of_the_same_hours_the_same_is_shown() {
        for n in 1..400_i64 {
            let overhead = Decimal::new(n.checked_mul(7_919).unwrap(), 2);
            let shown = rate(year(13, 13, &overhead.to_string(), "1234.56"), wanted("19.37", "0.1413", "0.085")).unwrap().shown(2);
            assert_eq!(shown.yours, shown.yours_over_all, "{n}");
        }
    }

    /// As it is shown, whatever the figures: parts make up the rate, what goes out and what is yours too, each within a cent of what it is.
    #[test]
    fn shown_parts_make_up_the_shown_rate() {
        for n in 1..400_i64 {
            let overhead = Decimal::new(n.checked_mul(7_919).unwrap(), 2);
            let rate = rate(year(480, 280, &overhead.to_string(), "1234.56"), wanted("19.37", "0.1413", "0.085")).unwrap();
            let shown = rate.shown(2);
            let parts = [shown.pay, shown.workshop, shown.wear, shown.tax, shown.profit];
            assert_eq!(parts.into_iter().sum::<Decimal>(), half_up(rate.per_hour, 2), "{n}");
            assert_eq!(shown.yours.checked_add(shown.goes_out), Some(shown.per_hour), "{n}");
            for (part, exact) in parts.into_iter().zip([rate.pay, rate.workshop, rate.wear, rate.tax, rate.profit]) {
                assert!((part.saturating_sub(exact)).abs() < Decimal::new(1, 2), "{n}: {part} for {exact}");
            }
        }
    }

    #[test]
    fn what_gives_no_rate_is_refused() {
        let refused = |y, w| rate(y, w).unwrap_err();
        let plain = wanted("20", "0", "0");
        assert_eq!(refused(year(480, 0, "0", "0"), plain), Refusal::NoHours);
        let (logged, all) = (Span::minutes(60 * 500), Span::minutes(60 * 480));
        assert_eq!(refused(year(480, 500, "0", "0"), plain), Refusal::LoggedBeyondAll { logged, all });
        let (tax, profit) = (d("0.5"), d("1"));
        assert_eq!(refused(year(480, 300, "0", "0"), wanted("20", "0.5", "1")), Refusal::RateOutOfReach { tax, profit });
        assert_eq!(refused(year(480, 300, "0", "0"), wanted("20", "1", "0")), Refusal::ShareOutOfRange { met: d("1") });
        assert_eq!(refused(year(480, 300, "-1", "0"), plain), Refusal::BelowNothing { met: d("-1") });
    }
}
