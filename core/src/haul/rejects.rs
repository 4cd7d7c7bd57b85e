//! The share of rejects: a guess before anything was sorted, the supplier's past after that, and what these pieces showed themselves.
//!
//! Source: conjugate update of a Beta by counts. The guess, its weight and that of a past are ours.

use super::Haul;
use super::{Pile, Want};
use crate::quantity::chance::BetaBinomial;
use crate::quantity::{Count, Decimal, Id, Key, Sorted, order_by_key};
use crate::refusal::{Answer, Refusal};
use rust_decimal::prelude::ToPrimitive;
use std::cmp::Reverse;

/// What sorting showed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Seen {
    pub rejected: Count,
    pub good: Count,
    /// Rejected as wet, among the rejected.
    pub wet: Count,
    /// Rejected as short, among the rejected.
    pub short: Count,
}

impl Seen {
    pub fn sorted(self) -> Count {
        self.rejected.saturating_add(self.good)
    }

    /// The share that was rejected; none where nothing was sorted.
    ///
    /// ```
    /// use fivebar_core::{haul::rejects::Seen, quantity::Decimal};
    /// assert_eq!(Seen { rejected: 3, good: 9, ..Seen::default() }.share(), Some(Decimal::new(25, 2)));
    /// assert_eq!(Seen::default().share(), None);
    /// ```
    pub fn share(self) -> Option<Decimal> {
        Decimal::from(self.rejected).checked_div(Decimal::from(self.sorted()))
    }

    /// Several sortings as one.
    pub fn pooled(all: impl IntoIterator<Item = Seen>) -> Seen {
        all.into_iter().fold(Seen::default(), |sum, seen| Seen {
            rejected: sum.rejected.saturating_add(seen.rejected),
            good: sum.good.saturating_add(seen.good),
            wet: sum.wet.saturating_add(seen.wet),
            short: sum.short.saturating_add(seen.short),
        })
    }

    /// What it says of other wood. Rejects as wet say nothing: wood dries. Those as short say nothing where no piece can be too short.
    /// Ours. What says nothing is neither rejected nor good.
    ///
    /// ```
    /// use fivebar_core::haul::rejects::Seen;
    /// let seen = Seen { rejected: 9, good: 20, wet: 1, short: 6 };
    /// assert_eq!((seen.of_others(true).rejected, seen.of_others(false).rejected), (8, 2));
    /// ```
    pub fn of_others(self, minds_short: bool) -> Seen {
        let short = if minds_short { self.short } else { 0 };
        let rejected = self.rejected.saturating_sub(self.wet).saturating_sub(self.short).saturating_add(short);
        Seen { rejected, good: self.good, wet: 0, short }
    }
}

/// Where the share stood before these pieces were sorted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Prior {
    /// One in four, worth 12 pieces.
    Guess,
    /// What earlier hauls of the supplier held.
    Supplier,
}

/// The share of rejects as a Beta, each side counted in pieces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RejectShare {
    rejected: Decimal,
    good: Decimal,
    prior: Prior,
}

/// Ours: before anything is known one in four is a reject, and the guess weighs as much as 12 sorted pieces.
const GUESS: (Decimal, Decimal) = (Decimal::from_parts(3, 0, 0, false, 0), Decimal::from_parts(9, 0, 0, false, 0));
/// Ours: however much a supplier's past holds, it weighs no more than so many pieces of today's pile.
const PAST_MOST: Decimal = Decimal::from_parts(20, 0, 0, false, 0);

impl RejectShare {
    /// Before anything is known.
    pub fn guess() -> RejectShare {
        RejectShare { rejected: GUESS.0, good: GUESS.1, prior: Prior::Guess }
    }

    /// After what earlier hauls of the supplier showed, this one not among them: added to the guess, and scaled down to the weight
    /// of 20 pieces where it is heavier. Nothing sorted leaves the guess.
    ///
    /// ```
    /// use fivebar_core::{haul::rejects::{RejectShare, Seen}, quantity::Decimal};
    /// let share = RejectShare::of_supplier(Seen { rejected: 37, good: 51, ..Seen::default() });
    /// assert_eq!((share.mean(), share.weight()), (Decimal::new(4, 1), Decimal::from(20)));
    /// ```
    pub fn of_supplier(past: Seen) -> RejectShare {
        if past.sorted() == 0 {
            return RejectShare::guess();
        }
        let all = RejectShare { prior: Prior::Supplier, ..RejectShare::guess().after(past) };
        if all.weight() <= PAST_MOST {
            return all;
        }
        let rejected = PAST_MOST.saturating_mul(all.rejected).checked_div(all.weight()).unwrap_or(GUESS.0);
        RejectShare { rejected, good: PAST_MOST.saturating_sub(rejected), ..all }
    }

    /// After some of these pieces were sorted: what they showed is added.
    ///
    /// ```
    /// use fivebar_core::{haul::rejects::{RejectShare, Seen}, quantity::Decimal};
    /// let share = RejectShare::guess().after(Seen { rejected: 5, good: 3, ..Seen::default() });
    /// assert_eq!(share.mean(), Decimal::new(4, 1)); // 8 of 20
    /// ```
    pub fn after(self, seen: Seen) -> RejectShare {
        let add = |to: Decimal, n: Count| to.saturating_add(Decimal::from(n));
        RejectShare { rejected: add(self.rejected, seen.rejected), good: add(self.good, seen.good), ..self }
    }

    /// The share to expect, from 0 to 1.
    pub fn mean(&self) -> Decimal {
        self.rejected.checked_div(self.weight()).unwrap_or_default()
    }

    /// The share of good pieces to expect, from 0 to 1.
    pub fn mean_good(&self) -> Decimal {
        Decimal::ONE.saturating_sub(self.mean())
    }

    /// How many sorted pieces all of this is worth.
    pub fn weight(&self) -> Decimal {
        self.rejected.saturating_add(self.good)
    }

    pub fn prior(&self) -> Prior {
        self.prior
    }

    /// How many of `n` unsorted pieces are rejects.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn rejects_of(&self, n: Count) -> Answer<BetaBinomial> {
        BetaBinomial::new(n, float(self.rejected)?, float(self.good)?)
    }

    /// How many of `n` unsorted pieces are good.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn good_of(&self, n: Count) -> Answer<BetaBinomial> {
        BetaBinomial::new(n, float(self.good)?, float(self.rejected)?)
    }
}

fn float(exact: Decimal) -> Answer<f64> {
    exact.to_f64().ok_or(Refusal::OutOfRange)
}

impl Pile {
    /// What sorting showed of this pile so far.
    pub fn seen(&self) -> Seen {
        let of = |reason: &str| self.rejects.iter().find(|(why, _)| why.as_str() == reason).map_or(0, |(_, n)| *n);
        Seen { rejected: self.rejected(), good: self.sorted_good.saturating_sub(self.left), wet: of("wet"), short: of("short") }
    }

    /// Whether a piece of it could be too short: yes, unless it is wanted for parts alone of which none is longer than its shortest piece.
    pub fn minds_short(&self) -> bool {
        let fits = |want: &Want| want.length.zip(self.length).is_some_and(|(part, shortest)| part <= shortest);
        self.wants.is_empty() || !self.wants.iter().all(fits)
    }
}

impl Haul {
    /// What sorting showed of all of it: for the supplier's past.
    pub fn seen(&self) -> Seen {
        Seen::pooled(self.piles.iter().map(Pile::seen))
    }

    /// The share of rejects of one pile: the supplier's past, after what was sorted of it and of the haul's other piles of the same wood.
    /// Another wood says nothing of this one, and of unknown wood every pile speaks for itself. All of its own rejects count; of the
    /// past and of other piles those that say something of it.
    ///
    /// # Errors
    /// [`Refusal::NotThere`].
    pub fn reject_share(&self, pile: Id, past: Seen) -> Answer<RejectShare> {
        let this = self.pile(pile).ok_or(Refusal::NotThere)?;
        let of_others = |seen: Seen| seen.of_others(this.minds_short());
        let seen = Seen::pooled([this.seen(), of_others(self.seen_alike(this))]);
        Ok(RejectShare::of_supplier(of_others(past)).after(seen))
    }

    /// What sorting showed of the haul's other piles of a pile's wood.
    pub fn seen_alike(&self, pile: &Pile) -> Seen {
        let alike = self.piles.iter().filter(|other| other.id != pile.id && pile.wood.is_some() && other.wood == pile.wood);
        Seen::pooled(alike.map(Pile::seen))
    }
}

/// One reason for rejects, with its share of what was asked about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    pub why: Key,
    pub rejected: Count,
    pub share: Decimal,
}

/// The reasons, the most frequent first, each as a share of so many pieces: of all sorted ones, or of the rejects alone.
///
/// # Errors
/// [`Refusal::NothingToShareBy`] when there are reasons but no pieces.
///
/// ```
/// use fivebar_core::{haul::rejects::by_reason, quantity::{Decimal, Key, Sorted}};
/// let key = |text| Key::read(text).unwrap();
/// let reasons = by_reason(&Sorted::from([(key("knot"), 1), (key("twist"), 5)]), 20).unwrap();
/// assert_eq!((reasons[0].why.as_str(), reasons[0].share), ("twist", Decimal::new(25, 2)));
/// ```
pub fn by_reason(rejects: &Sorted<Key, Count>, of: Count) -> Answer<Vec<Reason>> {
    let share = |n: Count| Decimal::from(n).checked_div(Decimal::from(of)).ok_or(Refusal::NothingToShareBy);
    let reason = |(why, n): (&Key, &Count)| share(*n).map(|share| Reason { why: why.clone(), rejected: *n, share });
    let mut reasons = rejects.iter().map(reason).collect::<Answer<Vec<_>>>()?;
    order_by_key(&mut reasons, |reason| Reverse(reason.rejected));
    Ok(reasons)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Currency, Moment, Offset, Units, Wall};

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn seen(rejected: Count, good: Count) -> Seen {
        Seen { rejected, good, ..Seen::default() }
    }

    #[track_caller]
    fn check(share: RejectShare, (rejected, good): (&str, &str), prior: Prior) {
        assert_eq!((share.rejected, share.good, share.prior), (d(rejected), d(good), prior));
    }

    #[test]
    fn the_guess_the_past_and_what_was_seen() {
        use Prior::{Guess, Supplier};
        check(RejectShare::guess(), ("3", "9"), Guess);
        check(RejectShare::of_supplier(seen(0, 0)), ("3", "9"), Guess);
        check(RejectShare::of_supplier(seen(2, 6)), ("5", "15"), Supplier); // 20 pieces: as heavy as a past may be
        check(RejectShare::of_supplier(seen(1, 27)), ("2", "18"), Supplier); // 4 and 36, halved
        check(RejectShare::of_supplier(seen(37, 51)), ("8", "12"), Supplier);
        check(RejectShare::guess().after(seen(17, 47)), ("20", "56"), Guess);
        check(RejectShare::of_supplier(seen(37, 51)).after(seen(2, 0)), ("10", "12"), Supplier);
        check(RejectShare::guess().after(seen(Count::MAX, 0)), ("4294967298", "9"), Guess);
    }

    /// A scaled past weighs 20 to the last digit, though a third of it can't be written.
    #[test]
    fn a_heavy_past_weighs_twenty() {
        let share = RejectShare::of_supplier(seen(7, 14));
        assert_eq!(share.weight(), d("20"));
        assert_eq!(share.mean().round_dp(20), (d("10") / d("33")).round_dp(20));
        assert_eq!(share.mean_good() + share.mean(), Decimal::ONE);
    }

    fn haul(piles: &[(u8, Option<&str>, Seen)]) -> Haul {
        let at = Wall::new(Moment::at(0), Offset::UTC);
        let mut haul = Haul::new(id(0), (Currency::USD, Units::Inch), at);
        haul.piles.extend(piles.iter().map(|(n, wood, seen)| Pile {
            wood: wood.and_then(Key::read),
            taken: 99,
            sorted_good: seen.good,
            rejects: Sorted::from([(Key::read("twist").unwrap(), seen.rejected)]),
            ..Pile::new(id(*n))
        }));
        haul
    }

    fn id(n: u8) -> Id {
        Id::new(Moment::at(0), [n; 10])
    }

    #[test]
    fn only_the_same_wood_speaks_for_a_pile() {
        let haul = haul(&[
            (1, Some("ash-white"), seen(17, 47)),
            (2, Some("ash-white"), seen(9, 29)),
            (3, Some("cherry-black"), seen(5, 17)),
            (4, None, seen(9, 0)),
            (5, None, seen(0, 2)),
        ]);
        let of = |n| haul.reject_share(id(n), Seen::default());
        let guess_after = |rejected, good| Ok(RejectShare::guess().after(seen(rejected, good)));
        assert_eq!(of(1), guess_after(26, 76));
        assert_eq!(of(2), of(1));
        assert_eq!(of(3), guess_after(5, 17));
        assert_eq!(of(4), guess_after(9, 0));
        assert_eq!(of(5), guess_after(0, 2));
        assert_eq!(of(6), Err(Refusal::NotThere));
        assert_eq!(haul.seen(), seen(40, 95));
    }

    /// Of 40 strips 4 were wet and 6 short; the parts of the next pile are 16 in long.
    #[test]
    fn what_says_nothing_of_a_pile_is_left_out() {
        let past = Seen { rejected: 12, good: 28, wet: 4, short: 6 };
        let inches = |n: i64| crate::quantity::Length::INCH.times(n).ok();
        let want = |length| Want { part: "legs".into(), job: Some(id(9)), wanted: 4, pieces: 1, gives: 1, length };
        let share = |shortest, wants: Vec<Want>| {
            let mut haul = haul(&[(1, Some("ash-white"), seen(0, 0)), (2, Some("ash-white"), seen(0, 0))]);
            haul.piles[1].rejects =
                [("short", 3), ("wet", 2), ("twist", 1)].into_iter().map(|(why, n)| (Key::read(why).unwrap(), n)).collect();
            haul.piles[0].length = shortest;
            haul.piles[0].wants = wants;
            haul.reject_share(id(1), past).unwrap()
        };
        let after = |past, here| RejectShare::of_supplier(past).after(here);
        let (short_counts, short_does_not) = (after(seen(8, 28), seen(4, 0)), after(seen(2, 28), seen(1, 0)));
        assert_eq!(share(inches(18), vec![]), short_counts);
        assert_eq!(share(inches(18), vec![want(inches(16))]), short_does_not);
        assert_eq!(share(inches(15), vec![want(inches(16))]), short_counts);
        assert_eq!(share(inches(18), vec![want(inches(16)), want(inches(19))]), short_counts);
        assert_eq!(share(inches(18), vec![want(None)]), short_counts);
        assert_eq!(share(None, vec![want(inches(16))]), short_counts);
    }

    /// What was rejected of the pile itself is known of it, whatever the reason.
    #[test]
    fn its_own_rejects_all_count() {
        let mut haul = haul(&[(1, Some("ash-white"), seen(0, 6))]);
        haul.piles[0].rejects = [("short", 3), ("wet", 2)].into_iter().map(|(why, n)| (Key::read(why).unwrap(), n)).collect();
        assert_eq!(haul.reject_share(id(1), Seen::default()), Ok(RejectShare::guess().after(seen(5, 6))));
    }

    #[test]
    fn reasons_by_how_often() {
        let rejects: Sorted<Key, Count> =
            [("end-check", 8), ("glue", 2), ("short", 2), ("twist", 5)].into_iter().map(|(why, n)| (Key::read(why).unwrap(), n)).collect();
        let said = by_reason(&rejects, 64).unwrap();
        let said: Vec<_> = said.iter().map(|reason| (reason.why.as_str(), reason.rejected, reason.share)).collect();
        assert_eq!(
            said,
            [("end-check", 8, d("0.125")), ("twist", 5, d("0.078125")), ("glue", 2, d("0.03125")), ("short", 2, d("0.03125"))]
        );
        assert_eq!(by_reason(&rejects, 0), Err(Refusal::NothingToShareBy));
        assert_eq!(by_reason(&Sorted::new(), 0), Ok(vec![]));
    }
}
