//! After: what a good piece cost, and whether the haul beat the timber yard. What is not known is `None`, never nothing.

use super::worth::{Boards, Counted, Counting, Fetching, Milling, Terms, Worth, YardTrip, Yields};
use crate::quantity::sums::{for_time, not_below_nothing, over, plus};
use crate::quantity::{Count, Currency, Decimal, Listed, Money, Span, Volume, half_up};
use crate::refusal::Answer;

/// The good pieces of one pile, once it is sorted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Good {
    pub pieces: Count,
    /// The volume of one as measured rough; none without a size.
    pub piece: Option<Volume>,
    pub boards: Boards,
}

/// A haul that is at home and sorted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Brought {
    pub good: Vec<Good>,
    pub currency: Currency,
    /// Distance, gift and price; none while one of them is not known.
    pub spent: Option<Money>,
    /// Wheel, bins and sorting; none where one of them is not known.
    pub time: Option<Span>,
    /// What an hour should pay.
    pub pay: Decimal,
}

/// What the timber yard would have asked instead.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Yard {
    pub yields: Yields,
    /// Milling still to be done that bought boards would not need.
    pub ahead: Milling,
    /// The trip there, where it was saved and counts.
    pub saved: Option<YardTrip>,
}

/// What one piece, or one measure of wood, cost; unrounded until it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Each {
    pub money: Decimal,
    /// To the millisecond.
    pub time: Span,
    /// Money, and the time at pay.
    pub at_pay: Decimal,
}

impl Brought {
    /// Good pieces, over all piles.
    pub fn pieces(&self) -> Count {
        self.good.iter().fold(0, |sum, good| sum.saturating_add(good.pieces))
    }

    /// What all that is good measures; none while a pile of good pieces has no size.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`](crate::refusal::Refusal::OutOfRange).
    pub fn usable(&self) -> Answer<Option<Volume>> {
        let mut sum = Volume::ZERO;
        for good in self.good.iter().filter(|good| 0 < good.pieces) {
            let Some(piece) = good.piece else { return Ok(None) };
            sum = sum.plus(piece.times(good.pieces)?)?;
        }
        Ok(Some(sum))
    }

    /// What one good piece cost: all of the haul's money and time over its good pieces. None where nothing was good.
    ///
    /// # Errors
    /// [`Refusal::BelowNothing`](crate::refusal::Refusal::BelowNothing) for pay below nothing, [`Refusal::OutOfRange`](crate::refusal::Refusal::OutOfRange).
    ///
    /// ```
    /// use fivebar_core::haul::{after::{Brought, Good}, worth::Boards};
    /// use fivebar_core::quantity::{Currency, Decimal, Money, Span};
    /// let good = vec![Good { pieces: 40, piece: None, boards: Boards::PriceUnknown }];
    /// let spent = Some(Money::whole(Decimal::from(20), Currency::USD).unwrap());
    /// let haul = Brought { good, currency: Currency::USD, spent, time: Some(Span::minutes(120)), pay: Decimal::from(16) };
    /// let each = haul.per_piece().unwrap().unwrap();
    /// assert_eq!((each.money, each.time, each.at_pay), (Decimal::new(50, 2), Span::minutes(3), Decimal::new(130, 2)));
    /// ```
    pub fn per_piece(&self) -> Answer<Option<Each>> {
        self.over(self.pieces().into())
    }

    /// What one board foot, litre or cubic metre that is usable cost. None while a size is missing.
    ///
    /// # Errors
    /// As [`Brought::per_piece`].
    pub fn per_measure(&self, measure: Volume) -> Answer<Option<Each>> {
        let Some(usable) = self.usable()? else { return Ok(None) };
        self.over(usable.share_of(measure)?)
    }

    /// Did it beat the timber yard? Equal boards at the maker's own prices for each wood, good volume x offcut yield / bought yield,
    /// against what was spent, and the time at pay. None while money or time, or a size or price of good pieces of a known wood, is not known.
    ///
    /// # Errors
    /// As [`Counting::worth`].
    pub fn against(&self, yard: &Yard) -> Answer<Option<Worth>> {
        let Some((spent, time)) = self.spent.zip(self.time) else { return Ok(None) };
        let piles = self.good.iter().map(Good::counted).listed();
        let fetching = Fetching { distance: spent, gift: Money::zero(self.currency), wheel: time, bins: Span::ZERO };
        let terms = Terms { pay: self.pay, yields: yard.yields, milling: yard.ahead };
        let worth = Counting { piles, fetching, saved: yard.saved, terms }.worth()?;
        Ok(Some(worth).filter(|worth| worth.left_out == 0))
    }

    /// Money and time over so many pieces or measures.
    fn over(&self, good: Decimal) -> Answer<Option<Each>> {
        let Some((spent, time)) = self.spent.zip(self.time).filter(|_| !good.is_zero()) else { return Ok(None) };
        let at_pay = for_time(not_below_nothing(self.pay)?, time)?;
        let ms = half_up(over(time.as_ms().into(), good)?, 0);
        Ok(Some(Each {
            money: over(spent.amount(), good)?,
            time: Span::ms(i64::try_from(ms).unwrap_or(i64::MAX)),
            at_pay: over(plus(spent.amount(), at_pay)?, good)?,
        }))
    }
}

impl Good {
    fn counted(&self) -> Counted {
        Counted { pieces: self.pieces, piece: self.piece, good: Decimal::ONE, boards: self.boards }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::refusal::Refusal;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn usd(text: &str) -> Money {
        Money::whole(d(text).normalize(), Currency::USD).unwrap()
    }

    const ASH: Boards = Boards::At { amount: Decimal::from_parts(7, 0, 0, false, 0), per: Volume::BOARD_FOOT };

    fn feet(pieces: Count, boards: Boards) -> Good {
        Good { pieces, piece: Some(Volume::BOARD_FOOT), boards }
    }

    /// Spent 30 and two hours at 20 an hour.
    fn brought(good: Vec<Good>) -> Brought {
        Brought { good, currency: Currency::USD, spent: Some(usd("30")), time: Some(Span::minutes(120)), pay: d("20") }
    }

    const PLAIN: Yard = Yard { yields: Yields::USUAL, ahead: Milling::NONE, saved: None };

    #[track_caller]
    fn check(each: Answer<Option<Each>>, wanted: Option<(&str, i64, &str)>) {
        let wanted = wanted.map(|(money, minutes, at_pay)| (d(money), Span::minutes(minutes), d(at_pay)));
        assert_eq!(each.unwrap().map(|each| (each.money, each.time, each.at_pay)), wanted);
    }

    #[test]
    fn what_a_good_piece_and_a_measure_cost() {
        let half = Good { piece: Some(Volume::BOARD_FOOT), ..feet(10, ASH) };
        let haul = brought(vec![half, Good { piece: Volume::BOARD_FOOT.times(3).ok(), ..feet(10, Boards::WoodUnknown) }]);
        check(haul.per_piece(), Some(("1.5", 6, "3.5")));
        check(haul.per_measure(Volume::BOARD_FOOT), Some(("0.75", 3, "1.75")));
        let bare = Good { piece: None, ..feet(10, ASH) };
        check(brought(vec![bare]).per_piece(), Some(("3", 12, "7")));
        check(brought(vec![bare]).per_measure(Volume::LITRE), None);
        check(brought(vec![Good { pieces: 0, ..bare }, half]).per_measure(Volume::BOARD_FOOT), Some(("3", 12, "7")));
        for nothing in [brought(vec![]), brought(vec![feet(0, ASH)])] {
            check(nothing.per_piece(), None);
            check(nothing.per_measure(Volume::BOARD_FOOT), None);
        }
        check(Brought { spent: None, ..brought(vec![half]) }.per_piece(), None);
        check(Brought { time: None, ..brought(vec![half]) }.per_piece(), None);
        assert_eq!(Brought { pay: d("-1"), ..brought(vec![half]) }.per_piece(), Err(Refusal::BelowNothing { met: d("-1") }));
    }

    #[track_caller]
    fn against(haul: &Brought, yard: &Yard, wanted: Option<(&str, bool)>) {
        let worth = haul.against(yard).unwrap();
        assert_eq!(worth.map(|worth| (worth.gain, worth.pays())), wanted.map(|(gain, pays)| (usd(gain), pays)));
    }

    /// A good foot replaces 7 x 0.45 / 0.7 = 4.50; the haul cost 30 + 40.
    #[test]
    fn a_haul_against_the_timber_yard() {
        against(&brought(vec![feet(20, ASH)]), &PLAIN, Some(("20", true)));
        against(&brought(vec![feet(15, ASH)]), &PLAIN, Some(("-2.50", false)));
        against(&brought(vec![feet(15, ASH), feet(9, Boards::WoodUnknown)]), &PLAIN, Some(("-2.50", false)));
        against(&brought(vec![feet(20, ASH)]), &Yard { ahead: Milling::USUAL, ..PLAIN }, Some(("0", true)));
        let saved = Some(YardTrip { distance: usd("5"), time: Span::minutes(30) });
        against(&brought(vec![feet(15, ASH)]), &Yard { saved, ..PLAIN }, Some(("12.50", true)));
    }

    #[test]
    fn what_is_not_known_is_not_said() {
        for unknown in [feet(1, Boards::PriceUnknown), Good { piece: None, ..feet(1, ASH) }] {
            against(&brought(vec![feet(20, ASH), unknown]), &PLAIN, None);
            against(&brought(vec![feet(20, ASH), Good { pieces: 0, ..unknown }]), &PLAIN, Some(("20", true)));
        }
        against(&Brought { spent: None, ..brought(vec![feet(20, ASH)]) }, &PLAIN, None);
        against(&Brought { time: None, ..brought(vec![feet(20, ASH)]) }, &PLAIN, None);
    }
}
