//! What a haul is worth while it is counted: the bought boards it replaces, less what fetching and milling it cost.
//!
//! Takes plain quantities: pieces, volumes, shares, prices. Everything is exact until a figure is shown; each shown figure is then
//! half up to the minor unit once, so that the gain may differ from its rounded parts by the last digit.

use crate::quantity::chance::least;
use crate::quantity::sums::{book, clean, for_time, less, not_below_nothing, over, plus, times};
use crate::quantity::{Count, Currency, Decimal, Money, PILE_MOST, Span, Volume, half_up};
use crate::refusal::{Answer, Refusal};

/// What a pile's wood replaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Boards {
    /// Nobody knows what wood it is: it replaces nothing, and nobody mills it.
    WoodUnknown,
    /// The wood is known, the maker has set no price for equal boards.
    PriceUnknown,
    /// Equal boards cost so much for each such volume.
    At { amount: Decimal, per: Volume },
}

/// Pieces alike, as counted so far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counted {
    /// As taken: the good and the rest.
    pub pieces: Count,
    /// The volume of one as measured rough; none without a size.
    pub piece: Option<Volume>,
    /// Of 1, the share that is good or is expected to be: see [`good_share`].
    pub good: Decimal,
    pub boards: Boards,
}

/// What ends up in the piece, of good offcuts and of bought boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Yields {
    pub offcut: Decimal,
    pub bought: Decimal,
}

impl Yields {
    /// Before the maker has history: 0.45 of good offcuts, 0.70 of bought boards. Our judgement, no source.
    pub const USUAL: Yields = Yields { offcut: Decimal::from_parts(45, 0, 0, false, 2), bought: Decimal::from_parts(70, 0, 0, false, 2) };
}

/// Sorting and milling that bought boards would not need: so long for each such volume as taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Milling {
    pub time: Span,
    pub per: Volume,
}

impl Milling {
    /// Before the maker has history: 3 minutes a board foot. Our judgement, no source.
    pub const USUAL: Milling = Milling { time: Span::minutes(3), per: Volume::BOARD_FOOT };
    /// What is still ahead once the wood is sorted: 2 minutes a board foot. Our judgement, no source.
    pub const AHEAD: Milling = Milling { time: Span::minutes(2), per: Volume::BOARD_FOOT };
    /// All of it is done, or is counted elsewhere.
    pub const NONE: Milling = Milling { time: Span::ZERO, per: Volume::BOARD_FOOT };
}

/// What the reckoning goes by: the pay you want for an hour, yields, and minutes for each measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Terms {
    pub pay: Decimal,
    pub yields: Yields,
    pub milling: Milling,
}

/// What fetching the haul costs, whatever is in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fetching {
    /// Both ways, at the maker's rate.
    pub distance: Money,
    /// What was given for it: gift and price.
    pub gift: Money,
    pub wheel: Span,
    pub bins: Span,
}

/// The trip to the timber yard that the haul saves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct YardTrip {
    pub distance: Money,
    pub time: Span,
}

/// A haul as it is being counted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Counting {
    pub piles: Vec<Counted>,
    pub fetching: Fetching,
    /// None where no trip is saved, or the maker does not count it.
    pub saved: Option<YardTrip>,
    pub terms: Terms,
}

/// What stands against a haul; the first three make up its cost, rejects are what they would have replaced.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Against {
    /// All of the maker's own minutes at pay: wheel, bins, sorting and milling.
    pub minutes: Money,
    pub distance: Money,
    pub gift: Money,
    pub rejects: Money,
}

/// What a haul is worth. Each figure is half up to the minor unit once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Worth {
    /// What equal bought boards would cost.
    pub replaced: Money,
    /// The trip to the timber yard, where it is counted.
    pub saved: Money,
    pub cost: Money,
    /// Replaced and saved, less cost; below nothing where the trip does not pay.
    pub gain: Money,
    pub against: Against,
    /// Pieces that are in no figure: without a size, or of a known wood without a price.
    pub left_out: Count,
    /// What was taken, as far as it has a size, and what of it replaces nothing: its wood or its price is unknown.
    pub taken: Volume,
    pub replaces_nothing: Volume,
}

/// How many more pieces of a pile even the trip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Evens {
    /// The trip pays as it is.
    AtOnce,
    /// So many more lift the gain to nothing or above.
    More(Count),
    /// A piece costs more than it replaces, or the pile would hold more than a pile may.
    Never,
}

/// One piece, unrounded: what it would replace if it were sure to be good, what it replaces as things stand, its own minutes at pay.
#[derive(Clone, Copy, Default)]
struct Each {
    if_good: Decimal,
    replaced: Decimal,
    minutes: Decimal,
}

/// All pieces of all piles, unrounded.
#[derive(Clone, Copy, Default)]
struct Sums {
    each: Each,
    left_out: Count,
    taken: Volume,
    replaces_nothing: Volume,
}

/// The share of a pile that is good: sorted pieces as they were found, the others as the mean of what is expected.
///
/// # Errors
/// [`Refusal::ShareOutOfRange`] for a mean outside 0 to 1.
///
/// ```
/// use fivebar_core::{haul::worth::good_share, quantity::Decimal};
/// let expected = Decimal::new(75, 2);
/// assert_eq!(good_share(0, 0, 38, expected), Ok(expected)); // nothing sorted yet
/// assert_eq!(good_share(6, 2, 0, expected), Ok(Decimal::new(75, 2))); // sorted: 6 of 8
/// assert_eq!(good_share(4, 0, 4, expected), Ok(Decimal::new(875, 3))); // 4 are good, 3 of the rest
/// ```
pub fn good_share(good: Count, rejected: Count, unsorted: Count, mean: Decimal) -> Answer<Decimal> {
    let mean = of_whole(mean)?;
    let all = u64::from(good).saturating_add(rejected.into()).saturating_add(unsorted.into());
    if all == 0 {
        return Ok(mean);
    }
    over(plus(good.into(), times(unsorted.into(), mean)?)?, all.into())
}

/// A share from nothing to the whole.
fn of_whole(met: Decimal) -> Answer<Decimal> {
    if Decimal::ZERO <= met && met <= Decimal::ONE { Ok(met) } else { Err(Refusal::ShareOutOfRange { met }) }
}

impl Counted {
    /// What one piece leaves, unrounded: the boards it replaces less its own sorting and milling at pay.
    /// Nothing for unknown wood; `None` while its size or its price is not known.
    ///
    /// # Errors
    /// [`Refusal::ShareOutOfRange`], [`Refusal::BelowNothing`], [`Refusal::NothingToShareBy`], [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::haul::worth::{Boards, Counted, Milling, Terms, Yields};
    /// use fivebar_core::quantity::{Decimal, Volume};
    /// let ash = Boards::At { amount: Decimal::from(7), per: Volume::BOARD_FOOT };
    /// let foot = Counted { pieces: 1, piece: Some(Volume::BOARD_FOOT), good: Decimal::ONE, boards: ash };
    /// let terms = Terms { pay: Decimal::from(20), yields: Yields::USUAL, milling: Milling::USUAL };
    /// assert_eq!(foot.leaves(&terms), Ok(Some(Decimal::new(350, 2)))); // 7.00 x 0.45 / 0.70, less 3 minutes at 20
    /// ```
    pub fn leaves(&self, terms: &Terms) -> Answer<Option<Decimal>> {
        if self.is_left_out() {
            return Ok(None);
        }
        self.each(terms)?.leaves().map(Some)
    }

    /// In no figure: it has no size, or its wood is known and has no price.
    fn is_left_out(&self) -> bool {
        self.boards != Boards::WoodUnknown && (self.piece.is_none() || self.boards == Boards::PriceUnknown)
    }

    fn each(&self, terms: &Terms) -> Answer<Each> {
        let good = of_whole(self.good)?;
        let Some((piece, (amount, per))) = self.piece.zip(self.boards.price()) else { return Ok(Each::default()) };
        let boards = times(piece.share_of(per)?, not_below_nothing(amount)?)?;
        let Yields { offcut, bought } = terms.yields;
        let if_good = over(times(boards, not_below_nothing(offcut)?)?, not_below_nothing(bought)?)?;
        Ok(Each { if_good, replaced: times(if_good, good)?, minutes: terms.minutes_of(piece)? })
    }
}

impl Boards {
    fn price(self) -> Option<(Decimal, Volume)> {
        if let Boards::At { amount, per } = self { Some((amount, per)) } else { None }
    }
}

impl Terms {
    /// Sorting and milling of a volume as taken, at pay, unrounded.
    fn minutes_of(&self, taken: Volume) -> Answer<Decimal> {
        times(self.at_pay(self.milling.time)?, taken.share_of(self.milling.per)?)
    }

    fn at_pay(&self, time: Span) -> Answer<Decimal> {
        for_time(not_below_nothing(self.pay)?, time)
    }
}

impl Each {
    fn leaves(self) -> Answer<Decimal> {
        less(self.replaced, self.minutes)
    }

    /// And so many pieces like another.
    fn and(self, n: Count, one: Each) -> Answer<Each> {
        let more = |sum: Decimal, each: Decimal| plus(sum, times(each, n.into())?);
        Ok(Each {
            if_good: more(self.if_good, one.if_good)?,
            replaced: more(self.replaced, one.replaced)?,
            minutes: more(self.minutes, one.minutes)?,
        })
    }
}

impl Sums {
    fn and(self, pile: &Counted, terms: &Terms) -> Answer<Sums> {
        let volume = pile.piece.map_or(Ok(Volume::ZERO), |piece| piece.times(pile.pieces))?;
        let nothing = if pile.boards.price().is_some() { Volume::ZERO } else { volume };
        Ok(Sums {
            each: self.each.and(pile.pieces, pile.each(terms)?)?,
            left_out: self.left_out.saturating_add(if pile.is_left_out() { pile.pieces } else { 0 }),
            taken: self.taken.plus(volume)?,
            replaces_nothing: self.replaces_nothing.plus(nothing)?,
        })
    }
}

impl Counting {
    /// What the haul is worth: (volume x share good x offcut yield / bought yield x price of equal boards), and the trip to the
    /// timber yard it saves, less distance, gift and minutes at pay. Derived; yields and minutes are our judgement.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::ShareOutOfRange`], [`Refusal::BelowNothing`],
    /// [`Refusal::NothingToShareBy`] for a yield or a measure of nothing, [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::haul::worth::{Boards, Counted, Counting, Fetching, Milling, Terms, Yields};
    /// use fivebar_core::quantity::{Currency, Decimal, Money, Span, Volume};
    /// let usd = |cents| Money::whole(Decimal::new(cents, 2), Currency::USD).unwrap();
    /// let ash = Boards::At { amount: Decimal::new(475, 2), per: Volume::BOARD_FOOT };
    /// let counting = Counting {
    ///     piles: vec![Counted { pieces: 60, piece: Some(Volume::BOARD_FOOT), good: Decimal::new(75, 2), boards: ash }],
    ///     fetching: Fetching { distance: usd(2_755), gift: usd(0), wheel: Span::minutes(90), bins: Span::minutes(60) },
    ///     saved: None,
    ///     terms: Terms { pay: Decimal::from(20), yields: Yields::USUAL, milling: Milling::USUAL },
    /// };
    /// let worth = counting.worth().unwrap();
    /// assert_eq!((worth.replaced, worth.cost, worth.gain), (usd(13_741), usd(13_755), usd(-14)));
    /// ```
    pub fn worth(&self) -> Answer<Worth> {
        let (sums, booked) = (self.sums()?, |exact| book(exact, self.currency()));
        let minutes = self.minutes(&sums)?;
        let Fetching { distance, gift, .. } = self.fetching;
        Ok(Worth {
            replaced: booked(sums.each.replaced)?,
            saved: booked(self.saves()?)?,
            cost: booked(self.cost(&sums)?)?,
            gain: booked(self.gain(&sums)?)?,
            against: Against { minutes: booked(minutes)?, distance, gift, rejects: booked(less(sums.each.if_good, sums.each.replaced)?)? },
            left_out: sums.left_out,
            taken: sums.taken,
            replaces_nothing: sums.replaces_nothing,
        })
    }

    /// How many more pieces of one pile lift the gain to nothing: each brings its boards, and its own sorting and milling.
    ///
    /// # Errors
    /// [`Refusal::NotThere`] for a pile that is none of these, and as [`Counting::worth`].
    ///
    /// ```
    /// use fivebar_core::haul::worth::{Boards, Counted, Counting, Evens, Fetching, Milling, Terms, Yields};
    /// use fivebar_core::quantity::{Currency, Decimal, Money, Span, Volume};
    /// let usd = |cents| Money::whole(Decimal::new(cents, 2), Currency::USD).unwrap();
    /// let ash = Boards::At { amount: Decimal::from(7), per: Volume::BOARD_FOOT };
    /// let counting = Counting {
    ///     piles: vec![Counted { pieces: 1, piece: Some(Volume::BOARD_FOOT), good: Decimal::ONE, boards: ash }],
    ///     fetching: Fetching { distance: usd(1_400), gift: usd(0), wheel: Span::ZERO, bins: Span::ZERO },
    ///     saved: None,
    ///     terms: Terms { pay: Decimal::from(20), yields: Yields::USUAL, milling: Milling::USUAL },
    /// };
    /// assert_eq!(counting.evens(0), Ok(Evens::More(3))); // a piece leaves 3.50, 10.50 are missing
    /// ```
    pub fn evens(&self, pile: usize) -> Answer<Evens> {
        let chosen = self.piles.get(pile).ok_or(Refusal::NotThere)?;
        self.evens_from(self.gain(&self.sums()?)?, chosen)
    }

    /// The same of every pile in turn; the sums are taken once.
    ///
    /// # Errors
    /// As [`Counting::worth`].
    pub fn evens_each(&self) -> Answer<impl Iterator<Item = Answer<Evens>>> {
        let gain = self.gain(&self.sums()?)?;
        Ok(self.piles.iter().map(move |pile| self.evens_from(gain, pile)))
    }

    fn evens_from(&self, gain: Decimal, chosen: &Counted) -> Answer<Evens> {
        let one = chosen.each(&self.terms)?.leaves()?;
        let lifts = |n: Count| Ok(Decimal::ZERO <= self.shown(plus(gain, times(one, n.into())?)?));
        let most = PILE_MOST.saturating_sub(chosen.pieces);
        Ok(match (lifts(0)?, lifts(most)?) {
            (true, _) => Evens::AtOnce,
            (_, false) => Evens::Never,
            // What lies between two counts that can be reckoned can be.
            _ => least((1, most), |n| lifts(n) == Ok(true)).map_or(Evens::Never, Evens::More),
        })
    }

    fn currency(&self) -> Currency {
        self.fetching.distance.currency()
    }

    /// As it would be shown, of any size.
    fn shown(&self, exact: Decimal) -> Decimal {
        half_up(clean(exact), self.currency().digits())
    }

    fn sums(&self) -> Answer<Sums> {
        self.piles.iter().try_fold(Sums::default(), |sums, pile| sums.and(pile, &self.terms))
    }

    fn minutes(&self, sums: &Sums) -> Answer<Decimal> {
        plus(self.terms.at_pay(self.fetching.wheel.plus(self.fetching.bins))?, sums.each.minutes)
    }

    fn cost(&self, sums: &Sums) -> Answer<Decimal> {
        plus(self.fetching.distance.plus(self.fetching.gift)?.amount(), self.minutes(sums)?)
    }

    fn saves(&self) -> Answer<Decimal> {
        let Some(YardTrip { distance, time }) = self.saved else { return Ok(Decimal::ZERO) };
        let distance = Money::zero(self.currency()).plus(distance)?;
        plus(distance.amount(), self.terms.at_pay(time)?)
    }

    fn gain(&self, sums: &Sums) -> Answer<Decimal> {
        less(plus(sums.each.replaced, self.saves()?)?, self.cost(sums)?)
    }
}

impl Worth {
    /// The trip pays, or comes out even.
    pub fn pays(&self) -> bool {
        Decimal::ZERO <= self.gain.amount()
    }
}

#[cfg(test)]
mod tests;
