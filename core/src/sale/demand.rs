//! Demand: how many people ask in a week, and how many of them would buy at a price.

use crate::quantity::{Decimal, Money, Span, exact, sums};
use crate::refusal::{Answer, Refusal};

/// At a fifth less, more than this many times as many must be thought to buy.
pub const LEAST_RATIO: Decimal = Decimal::from_parts(105, 0, 0, false, 2);
/// Where nobody guessed: at a fifth less twice as many would buy (domain.md 9).
pub const USUAL_RATIO: Decimal = Decimal::TWO;
/// Where fewer buy than one in two: at a fifth less no more than all of them can buy.
///
/// ```
/// use fivebar_core::{quantity::Decimal, sale::demand::most_times};
/// assert_eq!(most_times(Decimal::new(2, 1)), Decimal::from(5)); // one of five
/// assert_eq!(most_times(Decimal::new(35, 2)), Decimal::from(3)); // a guess is no closer than a whole number of times
/// assert_eq!(most_times(Decimal::ONE), Decimal::TWO); // the usual answer is never refused
/// ```
pub fn most_times(buys: Decimal) -> Decimal {
    Decimal::ONE.checked_div(buys).map_or(USUAL_RATIO, |all| all.ceil().max(USUAL_RATIO))
}

/// More people do not ask in a week of what one maker has for sale (ours).
pub const ASKS_MOST: Decimal = Decimal::ONE_HUNDRED;
/// Nobody who asks takes longer than a working day (ours).
pub const EACH_ASK_MOST: Span = Span::minutes(8 * 60);
/// The step in price that the ratio is told for.
const FIFTH: f64 = 0.2;
const WEEK: f64 = 7.0;

/// What a maker guesses of those who ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Guess {
    /// People who ask in a week, those among them who never turn up too.
    pub asks: Decimal,
    /// The share of those who turn up that would buy at that price.
    pub buys: Decimal,
    pub at: Money,
    /// At a fifth less so many times as many would buy.
    pub ratio: Decimal,
    /// The share of those who ask that never turns up.
    pub no_show: Decimal,
}

/// How many buy as the price rises by so many scales: of what a maker guesses the same share fewer for each (domain.md 9); or the same number
/// fewer, where what people would pay is spread evenly, as published figures for known offers have it. What waiting is worth is the same sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fewer {
    /// share x exp(-scales).
    ByShares,
    /// share x (1 - scales). No page asks by it: published figures are reckoned with it (DECISIONS 10).
    Evenly,
}

/// The same, as sums need it: one buys at a price p with the chance min(1, share x exp(-(p - at) / scale)), or as `fewer` has it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// People a day who turn up.
    pub come: f64,
    /// People a day who ask.
    pub ask: f64,
    pub share: f64,
    pub at: f64,
    /// So much more is asked where one in e still buys; of those spread evenly, where nobody does.
    pub scale: f64,
    pub fewer: Fewer,
}

impl Guess {
    /// The guess in figures a day: scale = 0.2 x price / ln ratio (domain.md 9).
    ///
    /// # Errors
    /// [`Refusal::BelowNothing`] for fewer asking than none, [`Refusal::TooManyAsk`], [`Refusal::ShareOutOfRange`] for a share that buys
    /// of nothing or above the whole and for a share that never turns up of the whole, [`Refusal::NoPrice`],
    /// [`Refusal::GuessTooFlat`] for a ratio of 1.05 or less.
    ///
    /// ```
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// use fivebar_core::sale::demand::{Guess, USUAL_RATIO};
    /// let at = Money::book(Decimal::from(420), Currency::USD).unwrap();
    /// let guess = Guess { asks: Decimal::TWO, buys: Decimal::new(2, 1), at, ratio: USUAL_RATIO, no_show: Decimal::ZERO };
    /// let demand = guess.demand().unwrap();
    /// assert!((demand.buys_at(420.0) - 0.2).abs() < 1e-12 && (demand.buys_at(336.0) - 0.4).abs() < 1e-12);
    /// ```
    pub fn demand(&self) -> Answer<Demand> {
        let asks = sums::not_below_nothing(self.asks)?;
        if ASKS_MOST < asks {
            return Err(Refusal::TooManyAsk { met: asks, most: ASKS_MOST });
        }
        if self.buys <= Decimal::ZERO || Decimal::ONE < self.buys {
            return Err(Refusal::ShareOutOfRange { met: self.buys });
        }
        if self.at.amount() <= Decimal::ZERO {
            return Err(Refusal::NoPrice { met: self.at });
        }
        if self.ratio <= LEAST_RATIO {
            return Err(Refusal::GuessTooFlat { met: self.ratio, above: LEAST_RATIO });
        }
        let (ask, come) = (float(asks)? / WEEK, 1.0 - float(sums::share(self.no_show)?)?);
        let (at, ratio) = (float(self.at.amount())?, float(self.ratio)?);
        Ok(Demand { come: ask * come, ask, share: float(self.buys)?, at, scale: FIFTH * at / libm::log(ratio), fewer: Fewer::ByShares })
    }
}

impl Demand {
    /// The chance that one who turns up buys at this price.
    pub fn buys_at(&self, price: f64) -> f64 {
        let scales = (price - self.at) / self.scale;
        let buys = match self.fewer {
            Fewer::ByShares => self.share * libm::exp(-scales),
            Fewer::Evenly => (self.share * (1.0 - scales)).max(0.0),
        };
        buys.min(1.0)
    }

    /// The price up to which everybody buys.
    pub fn surely_up_to(&self) -> f64 {
        match self.fewer {
            Fewer::ByShares => self.at + self.scale * libm::log(self.share),
            Fewer::Evenly => self.at + self.scale * (1.0 - 1.0 / self.share),
        }
    }

    /// The price at which buyers x (price - worth) is most, as if no share were held at the whole.
    pub fn best_beyond(&self, worth: f64) -> f64 {
        match self.fewer {
            Fewer::ByShares => self.scale + worth,
            Fewer::Evenly => (self.at + self.scale + worth) / 2.0,
        }
    }
}

pub(super) fn float(exact: Decimal) -> Answer<f64> {
    exact::to_float(exact).ok_or(Refusal::OutOfRange)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Currency;

    fn guess() -> Guess {
        let at = Money::book(Decimal::from(145), Currency::USD).unwrap();
        Guess { asks: Decimal::from(3), buys: Decimal::new(25, 2), at, ratio: Decimal::TWO, no_show: Decimal::new(4, 1) }
    }

    #[track_caller]
    fn check(guess: Guess, refused: Refusal) {
        assert_eq!(guess.demand(), Err(refused));
    }

    #[test]
    fn those_who_never_turn_up_ask_and_do_not_come() {
        let demand = guess().demand().unwrap();
        assert!((demand.ask - 3.0 / 7.0).abs() < 1e-12 && (demand.come - 1.8 / 7.0).abs() < 1e-12);
        assert_eq!(demand.buys_at(0.0), 1.0);
        assert!((demand.buys_at(demand.surely_up_to()) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_guess_that_says_nothing_is_refused() {
        let n = |text: &str| text.parse::<Decimal>().unwrap();
        check(Guess { asks: n("-1"), ..guess() }, Refusal::BelowNothing { met: n("-1") });
        check(Guess { asks: n("101"), ..guess() }, Refusal::TooManyAsk { met: n("101"), most: n("100") });
        for buys in ["0", "1.2", "-0.1"].map(n) {
            check(Guess { buys, ..guess() }, Refusal::ShareOutOfRange { met: buys });
        }
        check(Guess { no_show: n("1"), ..guess() }, Refusal::ShareOutOfRange { met: n("1") });
        check(Guess { ratio: n("1.05"), ..guess() }, Refusal::GuessTooFlat { met: n("1.05"), above: LEAST_RATIO });
        let free = Money::zero(Currency::USD);
        check(Guess { at: free, ..guess() }, Refusal::NoPrice { met: free });
    }
}
