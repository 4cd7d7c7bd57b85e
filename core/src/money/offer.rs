//! A buyer names a number: the word of verdict and the next thing to say.
//!
//! Every number here is the whole sum handed over, for as many pieces as are asked about. A figure that is not known is
//! none and is named, never taken for nothing. Until the value of waiting comes in, the marks of the work decide.

use super::point::{Points, Rounding};
use super::sums::{over, times};
use crate::quantity::{Cash, Count, Decimal, Money, up_to_cash};
use crate::refusal::{Answer, Refusal};

/// What stands before the buyer speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    pub agreed: Option<Agreed>,
    pub ask: Option<Money>,
    /// Settle as the maker set it.
    pub set: Option<Money>,
    pub your_rate: Option<Money>,
    /// The least that pays the lowest pay: nothing under it is proposed but the ask and a settle that are the maker's own.
    pub lowest_pay: Option<Money>,
    /// Hours are still to come and nobody knows how many: your rate is no less than that.
    pub at_least: bool,
    pub costs_covered: Option<Money>,
    /// What waiting is worth, once it is reckoned, and the band of doubt around it. It lies above the ask only where the end brings more.
    pub not_under: Option<Money>,
    pub band: Option<Band>,
    /// The smallest coin, where it is paid in notes and coins: what is said can be handed over in them.
    pub coin: Option<Cash>,
}

/// A price already agreed, with what is still due of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Agreed {
    pub price: Money,
    /// Of the price, what is for the pieces still to be handed over.
    pub rest: Money,
    pub due: Money,
}

/// Not under lies between these; both ends are in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Band {
    pub low: Money,
    pub high: Money,
}

/// The answer to an offer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// This job is sold: so much is due.
    Agreed(Agreed),
    Yes,
    /// Inside the band of not under: the maker's own call, in so much of it as is no less than the lowest pay needs and under where it is settled.
    TooClose(Band),
    /// Below not under.
    WaitingIsBetter {
        not_under: Money,
        say: Money,
    },
    /// In the end it brings this, which is more than is asked: no price that can be said is enough.
    EndBringsMore {
        end: Money,
    },
    /// Good enough to go on talking.
    Say {
        say: Money,
    },
    /// No less than waiting is worth, and under the lowest pay.
    BelowLowestPay {
        lowest_pay: Money,
    },
    BelowYourRate {
        your_rate: Money,
    },
    UnderWhatYouSpent {
        costs_covered: Money,
    },
    /// No word without this figure.
    NotKnown(Missing),
}

/// The figure that is missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    Ask,
    YourRate,
    Costs,
    /// What is still to come of the work.
    HoursToCome,
}

/// Where to settle: as the maker set it, but no more than the ask; else midway between ask and not under, to the nearest price point that lies
/// between them and pays the lowest pay, or else the ask. None where neither is known, or the end lies above the ask.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::money::{offer::{Standing, settle}, point::Points};
/// use fivebar_core::quantity::{Currency, Decimal, Money};
/// let usd = |n: i64| Some(Money::book(Decimal::from(n), Currency::USD).unwrap());
/// let stand = Standing { ask: usd(140), not_under: usd(101), ..Standing::default() };
/// assert_eq!(settle(&stand, Points::Five), Ok(usd(120)));
/// ```
pub fn settle(standing: &Standing, points: Points) -> Answer<Option<Money>> {
    match (standing.set, standing.ask, standing.not_under) {
        // What is asked is never refused, so nothing above it is where to settle.
        (Some(set), Some(ask), _) if reaches(set, ask)? => Ok(Some(ask)),
        (Some(set), ..) => Ok(Some(set)),
        (None, Some(ask), Some(under)) if reaches(ask, under)? => {
            let midway = over(ask.plus(under)?.amount(), Decimal::TWO)?;
            standing.within(points.round(midway, Rounding::Nearest, ask.currency())?, points).map(Some)
        }
        _ => Ok(None),
    }
}

/// The next thing to say: 2 x settle - offer, within not under, the lowest pay and ask, up to a price point and to the coin it is paid in, so that it covers what it
/// stands for. Only the ask is said as it is. Where settle is not known, or the mirror does not lie above the offer, the ask is held. None where there is
/// nothing above the offer to say, or the end brings more than the ask.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
///
/// ```
/// use fivebar_core::money::{offer::{Standing, say}, point::Points};
/// use fivebar_core::quantity::{Currency, Decimal, Money};
/// let usd = |n: i64| Money::book(Decimal::from(n), Currency::USD).unwrap();
/// let stand = Standing { ask: Some(usd(140)), not_under: Some(usd(101)), set: Some(usd(125)), ..Standing::default() };
/// assert_eq!(say(&stand, usd(115), Points::Five), Ok(Some(usd(135))));
/// assert_eq!(say(&stand, usd(90), Points::Five), Ok(Some(usd(140)))); // 160 would be above the ask
/// ```
pub fn say(standing: &Standing, offer: Money, points: Points) -> Answer<Option<Money>> {
    if standing.end_over_ask()?.is_some() {
        return Ok(None);
    }
    let mirror = match settle(standing, points)? {
        Some(settle) => Some(standing.within(settle.plus(settle)?.minus(offer)?, points)?),
        None => None,
    };
    for said in [mirror, standing.ask].into_iter().flatten() {
        if !reaches(offer, said)? {
            return Ok(Some(said));
        }
    }
    Ok(None)
}

/// The word for an offer. An agreed job says so first; then that the end brings more than is asked; then yes from settle or the ask on; then, where the value of waiting
/// is known, its band and not under; else the marks of the work.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`], [`Refusal::MoneyBelowNothing`] for an offer below nothing.
///
/// ```
/// use fivebar_core::money::{offer::{Standing, Verdict, verdict}, point::Points};
/// use fivebar_core::quantity::{Currency, Decimal, Money};
/// let usd = |n: i64| Money::book(Decimal::from(n), Currency::USD).unwrap();
/// let stand = Standing { ask: Some(usd(145)), your_rate: Some(usd(110)), costs_covered: Some(usd(28)), ..Standing::default() };
/// let word = |offer| verdict(&stand, usd(offer), Points::Five).unwrap();
/// assert_eq!(word(145), Verdict::Yes);
/// assert_eq!(word(120), Verdict::Say { say: usd(145) });
/// assert_eq!(word(90), Verdict::BelowYourRate { your_rate: usd(110) });
/// assert_eq!(word(20), Verdict::UnderWhatYouSpent { costs_covered: usd(28) });
/// ```
pub fn verdict(standing: &Standing, offer: Money, points: Points) -> Answer<Verdict> {
    if let Some(agreed) = standing.agreed {
        return Ok(Verdict::Agreed(agreed));
    }
    if offer.amount() < Decimal::ZERO {
        return Err(Refusal::MoneyBelowNothing { met: offer });
    }
    if let Some(end) = standing.end_over_ask()? {
        return Ok(if reaches(offer, end)? { Verdict::Yes } else { Verdict::EndBringsMore { end } });
    }
    for enough in [settle(standing, points)?, standing.ask].into_iter().flatten() {
        if reaches(offer, enough)? {
            return Ok(Verdict::Yes);
        }
    }
    let say = say(standing, offer, points)?;
    match standing.not_under {
        Some(not_under) => by_waiting(standing, (not_under, points), offer, say),
        None => by_marks(standing, offer, say),
    }
}

/// The word where the value of waiting is known; what is under the lowest pay is said so, whatever waiting is worth.
fn by_waiting(standing: &Standing, (not_under, points): (Money, Points), offer: Money, say: Option<Money>) -> Answer<Verdict> {
    let band = match standing.band {
        Some(band) if reaches(offer, band.low)? && reaches(band.high, offer)? => Some(band),
        _ => None,
    };
    match standing.lowest_pay {
        _ if band.is_none() && !reaches(offer, not_under)? => {
            let say = say.map_or_else(|| standing.up(not_under, points), Ok)?;
            Ok(Verdict::WaitingIsBetter { not_under, say })
        }
        Some(lowest_pay) if !reaches(offer, lowest_pay)? => Ok(Verdict::BelowLowestPay { lowest_pay }),
        lowest_pay => {
            let settle = settle(standing, points)?;
            Ok(band.map_or_else(|| say_or_missing(say), |band| Verdict::TooClose(band.between(lowest_pay, settle).unwrap_or(band))))
        }
    }
}

/// The word from the marks of the work alone.
fn by_marks(standing: &Standing, offer: Money, say: Option<Money>) -> Answer<Verdict> {
    if let Some(your_rate) = standing.your_rate
        && reaches(offer, your_rate)?
    {
        return Ok(match say {
            None if standing.at_least => Verdict::NotKnown(Missing::HoursToCome),
            say => say_or_missing(say),
        });
    }
    if let Some(costs_covered) = standing.costs_covered
        && !reaches(offer, costs_covered)?
    {
        return Ok(Verdict::UnderWhatYouSpent { costs_covered });
    }
    Ok(match (standing.your_rate, standing.costs_covered) {
        (Some(your_rate), _) => Verdict::BelowYourRate { your_rate },
        (None, Some(_)) => Verdict::NotKnown(Missing::YourRate),
        (None, None) => Verdict::NotKnown(Missing::Costs),
    })
}

fn say_or_missing(say: Option<Money>) -> Verdict {
    say.map_or(Verdict::NotKnown(Missing::Ask), |say| Verdict::Say { say })
}

/// Is it as much, or more?
fn reaches(offer: Money, mark: Money) -> Answer<bool> {
    // Compared, not taken away: of two far ends the difference is no sum.
    let (one, other) = (offer.currency(), mark.currency());
    if one == other { Ok(mark.amount() <= offer.amount()) } else { Err(Refusal::CurrenciesMixed { one, other }) }
}

impl Band {
    /// The part of it in which the word is the maker's own call: no less than pays the lowest pay, and under where it is settled. None where nothing
    /// of it is left.
    ///
    /// ```
    /// use fivebar_core::{money::offer::Band, quantity::{Currency, Decimal, Money}};
    /// let usd = |n: i64| Money::book(Decimal::from(n), Currency::USD).unwrap();
    /// let band = Band { low: usd(53), high: usd(105) };
    /// assert_eq!(band.between(None, Some(usd(100))), Some(Band { low: usd(53), high: usd(100) }));
    /// assert_eq!(band.between(Some(usd(60)), None), Some(Band { low: usd(60), high: usd(105) }));
    /// assert_eq!(band.between(Some(usd(101)), Some(usd(100))), None);
    /// ```
    pub fn between(self, lowest_pay: Option<Money>, settle: Option<Money>) -> Option<Band> {
        let above = |one: Money, other: Money| if one.amount() < other.amount() { other } else { one };
        let below = |one: Money, other: Money| if other.amount() < one.amount() { other } else { one };
        let low = lowest_pay.map_or(self.low, |lowest| above(self.low, lowest));
        let high = settle.map_or(self.high, |settle| below(self.high, settle));
        (low.amount() < high.amount() || (low, high) == (self.low, self.high)).then_some(Band { low, high })
    }
}

impl Standing {
    /// What the end brings, where that is more than is asked.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`].
    pub fn end_over_ask(&self) -> Answer<Option<Money>> {
        match (self.not_under, self.ask) {
            (Some(end), Some(ask)) if !reaches(ask, end)? => Ok(Some(end)),
            _ => Ok(None),
        }
    }

    /// The ask itself pays less than the lowest pay: it is the maker's own, and no other sum is proposed.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`].
    pub fn is_asked_under_lowest(&self) -> Answer<bool> {
        self.lowest_pay.zip(self.ask).map_or(Ok(false), |(lowest, ask)| reaches(ask, lowest).map(|pays| !pays))
    }

    /// Where two and more are offered together: where they are settled, up to a price point, no less than waiting is worth and the lowest pay
    /// needs, and no more than the ask; none where the end brings more than that, or the lowest pay needs more.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{money::{offer::Standing, point::Points}, quantity::{Currency, Decimal, Money}};
    /// let usd = |n: i64| Some(Money::book(Decimal::from(n), Currency::USD).unwrap());
    /// let two = Standing { ask: usd(290), set: usd(263), ..Standing::default() };
    /// assert_eq!(two.together(Points::Five), Ok(usd(265)));
    /// assert_eq!(Standing { lowest_pay: usd(300), ..two }.together(Points::Five), Ok(None));
    /// ```
    pub fn together(&self, points: Points) -> Answer<Option<Money>> {
        let is_asked_enough = self.end_over_ask()?.is_none() && !self.is_asked_under_lowest()?;
        settle(self, points)?.filter(|_| is_asked_enough).map(|settle| self.within(settle, points)).transpose()
    }

    /// Ask and settle for `k` pieces. Marks, not under and band of one piece are left out: they are reckoned for k anew.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{money::offer::Standing, quantity::{Currency, Decimal, Money}};
    /// let usd = |n: i64| Some(Money::book(Decimal::from(n), Currency::USD).unwrap());
    /// let three = Standing { ask: usd(140), set: usd(130), ..Standing::default() }.for_pieces(3).unwrap();
    /// assert_eq!((three.ask, three.set), (usd(420), usd(390)));
    /// ```
    pub fn for_pieces(&self, k: Count) -> Answer<Standing> {
        let of_k = |one: Option<Money>| match one {
            Some(one) => Money::book(times(one.amount(), Decimal::from(k))?, one.currency()).map(Some),
            None => Ok(None),
        };
        Ok(Standing { agreed: self.agreed, ask: of_k(self.ask)?, set: of_k(self.set)?, coin: self.coin, ..Standing::default() })
    }

    /// The price point at a sum or above it; in notes, what can be handed over of that or above it.
    fn up(&self, sum: Money, points: Points) -> Answer<Money> {
        let point = points.round(sum.amount(), Rounding::Up, sum.currency())?;
        self.coin.map_or(Ok(point), |coin| up_to_cash(point, coin))
    }

    /// Not below not under and the lowest pay, up to a price point; and never above the ask, whatever waiting is worth.
    fn within(&self, said: Money, points: Points) -> Answer<Money> {
        let mut least = said;
        for floor in [self.not_under, self.lowest_pay].into_iter().flatten() {
            if reaches(floor, least)? {
                least = floor;
            }
        }
        let least = self.up(least, points)?;
        match self.ask {
            Some(ask) if reaches(least, ask)? => Ok(ask),
            _ => Ok(least),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{eur, usd};

    /// One stand, with what is known once selling has begun to be reckoned.
    fn stand() -> Standing {
        Standing { not_under: Some(usd("101")), ..work() }
    }

    /// One stand by its work alone.
    fn work() -> Standing {
        Standing { ask: Some(usd("145")), your_rate: Some(usd("110.06")), costs_covered: Some(usd("27.78")), ..Standing::default() }
    }

    #[track_caller]
    fn check(standing: Standing, offer: &str, wanted: Verdict) {
        assert_eq!(verdict(&standing, usd(offer), Points::Five), Ok(wanted));
    }

    #[test]
    fn an_agreed_job_says_what_is_due() {
        let agreed = Agreed { price: eur("460"), rest: eur("460"), due: eur("276") };
        let bench = Standing { agreed: Some(agreed), ask: Some(eur("480")), ..Standing::default() };
        assert_eq!(verdict(&bench, eur("500"), Points::Five), Ok(Verdict::Agreed(agreed)));
    }

    #[test]
    fn before_waiting_is_reckoned_the_marks_decide() {
        let below = Verdict::BelowYourRate { your_rate: usd("110.06") };
        let spent = Verdict::UnderWhatYouSpent { costs_covered: usd("27.78") };
        check(work(), "145", Verdict::Yes);
        check(work(), "144.99", Verdict::Say { say: usd("145") });
        check(work(), "110.06", Verdict::Say { say: usd("145") });
        check(work(), "110.05", below);
        check(work(), "27.78", below);
        check(work(), "27.77", spent);
        check(work(), "0", spent);
        let set = Standing { set: Some(usd("130")), ..work() };
        check(set, "130", Verdict::Yes);
        // The mirror lies as far below nothing, and is a sum all the same.
        assert_eq!(say(&set, usd("9999999"), Points::Five), Ok(None));
        check(set, "120", Verdict::Say { say: usd("140") });
        check(set, "111", Verdict::Say { say: usd("145") });
    }

    #[test]
    fn what_is_not_known_is_named() {
        let none = Standing::default();
        check(none, "100", Verdict::NotKnown(Missing::Costs));
        let spent = Standing { costs_covered: Some(usd("27.78")), ..none };
        check(spent, "100", Verdict::NotKnown(Missing::YourRate));
        check(spent, "20", Verdict::UnderWhatYouSpent { costs_covered: usd("27.78") });
        let no_ask = Standing { ask: None, ..work() };
        check(no_ask, "120", Verdict::NotKnown(Missing::Ask));
        check(no_ask, "100", Verdict::BelowYourRate { your_rate: usd("110.06") });
        check(Standing { ask: Some(usd("140")), ..none }, "140", Verdict::Yes);
    }

    /// Ask 145, not under 101: settle midway at 123, to the point 125.
    #[test]
    fn with_waiting_reckoned_not_under_decides() {
        assert_eq!(settle(&stand(), Points::Five), Ok(Some(usd("125"))));
        check(stand(), "125", Verdict::Yes);
        check(stand(), "120", Verdict::Say { say: usd("130") });
        check(stand(), "101", Verdict::Say { say: usd("145") });
        check(stand(), "100", Verdict::WaitingIsBetter { not_under: usd("101"), say: usd("145") });
        let band = Band { low: usd("96"), high: usd("118") };
        let unsure = Standing { band: Some(band), ..stand() };
        check(unsure, "118", Verdict::TooClose(band));
        check(unsure, "96", Verdict::TooClose(band));
        check(unsure, "95", Verdict::WaitingIsBetter { not_under: usd("101"), say: usd("145") });
        // 131 lies on no point: what is said covers it.
        check(unsure, "119", Verdict::Say { say: usd("135") });
        check(unsure, "125", Verdict::Yes);
    }

    #[test]
    fn what_is_said_stays_within_not_under_and_ask() {
        let low = Standing { set: Some(usd("104")), ..stand() };
        assert_eq!(say(&low, usd("103"), Points::Five), Ok(Some(usd("105"))));
        assert_eq!(say(&low, usd("120"), Points::Five), Ok(Some(usd("145"))));
        assert_eq!(say(&low, usd("145"), Points::Five), Ok(None));
        let over_ask = Standing { set: Some(usd("148")), ..stand() };
        assert_eq!(say(&over_ask, usd("140"), Points::Five), Ok(Some(usd("145"))));
        assert_eq!(settle(&over_ask, Points::Five), Ok(Some(usd("145"))));
        let no_ask = Standing { ask: None, set: None, ..stand() };
        check(no_ask, "90", Verdict::WaitingIsBetter { not_under: usd("101"), say: usd("105") });
    }

    /// Not under lies above the ask where the end brings more: no sum below that is enough, and nothing is said.
    #[test]
    fn where_the_end_brings_more_than_the_ask_nothing_is_settled() {
        let end = Standing { not_under: Some(usd("152")), ..stand() };
        for offer in ["20", "125", "145", "151.99"] {
            check(end, offer, Verdict::EndBringsMore { end: usd("152") });
            assert_eq!(say(&end, usd(offer), Points::Five), Ok(None));
        }
        check(end, "152", Verdict::Yes);
        assert_eq!((settle(&end, Points::Five), end.together(Points::Five)), (Ok(None), Ok(None)));
        let set = Standing { set: Some(usd("130")), ..end };
        check(set, "135", Verdict::EndBringsMore { end: usd("152") });
        assert_eq!((settle(&set, Points::Five), set.together(Points::Five)), (Ok(Some(usd("130"))), Ok(None)));
    }

    /// Law: what is said lies on a price point or is the ask, above the offer, and under no mark it stands for.
    #[test]
    fn what_is_said_lies_on_a_price_point() {
        for points in Points::ALL {
            for (settle, offer) in (60..150).step_by(7).flat_map(|settle| (0..settle).step_by(3).map(move |offer| (settle, offer))) {
                let [set, offer] = [settle, offer].map(|n| usd(&format!("{n}.37")));
                let standing = Standing { set: Some(set), ..stand() };
                let Some(said) = say(&standing, offer, points).unwrap() else { panic!("{settle} {offer:?}") };
                assert!(said == usd("145") || points.round(said.amount(), Rounding::Up, said.currency()) == Ok(said), "{points:?} {said}");
                assert!(offer.amount() < said.amount() && (usd("101").amount() <= said.amount()), "{points:?} {offer} {said}");
            }
        }
    }

    #[test]
    fn an_offer_below_nothing_or_in_other_money_is_refused() {
        assert_eq!(verdict(&work(), usd("-1"), Points::Five), Err(Refusal::MoneyBelowNothing { met: usd("-1") }));
        let (one, other) = (eur("1").currency(), usd("1").currency());
        assert_eq!(verdict(&work(), eur("100"), Points::Five), Err(Refusal::CurrenciesMixed { one, other }));
    }
}
