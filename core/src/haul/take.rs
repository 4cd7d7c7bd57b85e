//! At the bin: take, maybe or leave, for one pile, with the one number that decides.
//!
//! Facts are asked in the order of [`Decides`]; the first that holds decides, whatever comes behind it.
//! First what makes a pile useless, then what makes it doubtful.

use crate::quantity::sums::over;
use crate::quantity::{Count, Decimal, Length, Span};
use crate::refusal::Answer;
use crate::wood::moisture::Moisture;

/// What to do with a pile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    Take,
    Maybe,
    Leave,
}

/// What sets the least useful length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetBy {
    /// The shortest part of what you want to make.
    Part,
    /// What your machine takes at the least: a memory aid, never a permission.
    Machine,
}

/// The least length that is of use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Least {
    pub length: Length,
    pub set_by: SetBy,
}

/// Good pieces of the same wood and section on the rack.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OnRack {
    pub pieces: Count,
    /// How long none of them was used.
    pub unused: Span,
    /// What the plans need of them; none without a plan.
    pub needed: Option<Count>,
}

/// How wet a pile is, as far as anyone can tell.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wet {
    pub marked: bool,
    pub reading: Option<Moisture>,
}

/// What is known of a pile at the bin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offered {
    /// From and to; twice the same where it was measured; none before it has a size.
    pub band: Option<(Length, Length)>,
    pub wood_known: bool,
    /// What a piece leaves after its own minutes: [`super::worth::Counted::leaves`]. None while size or price is missing.
    pub leaves: Option<Decimal>,
    /// Of this wood from this supplier, over all past hauls.
    pub sorted: Count,
    pub rejected: Count,
    pub rack: OnRack,
    pub wet: Wet,
}

/// From where on a fact counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Rejects say nothing before so many pieces were sorted.
    pub sorted_least: Count,
    /// More rejects than this share: leave.
    pub leave_rejects: Decimal,
    /// More rejects than this share: maybe.
    pub maybe_rejects: Decimal,
    /// Wetter than this: maybe.
    pub wet_above: Option<Moisture>,
    /// Wood of this kind that nobody used for so long: maybe.
    pub unused_from: Span,
}

const UNUSED_WEEKS: i64 = 26;

impl Limits {
    /// Before the maker sets own ones. All of them our judgement, no source.
    ///
    /// ```
    /// use fivebar_core::haul::take::Limits;
    /// let limits = Limits::usual();
    /// assert_eq!((limits.sorted_least, limits.wet_above.unwrap().as_per_cent()), (20, 20.0));
    /// ```
    pub fn usual() -> Limits {
        Limits {
            sorted_least: 20,
            leave_rejects: Decimal::new(75, 2),
            maybe_rejects: Decimal::new(50, 2),
            wet_above: Moisture::per_cent(20.0).ok(),
            unused_from: Span::WEEK.times(UNUSED_WEEKS),
        }
    }
}

/// The one fact that decides, with its number; asked in this order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Decides {
    /// Leave: even the longest piece is under the least useful length.
    TooShort(Least),
    /// Leave: a piece costs so much more in minutes than it replaces.
    CostsMore(Decimal),
    /// Leave or maybe: of so many sorted, this share was rejected.
    Rejects { share: Decimal, sorted: Count },
    /// Maybe: nobody knows what wood it is, so it replaces nothing.
    WoodUnknown,
    /// Maybe: the short end of the band is under the least useful length.
    PartlyShort(Least),
    /// Maybe: the meter read more than this limit.
    TooWet { reading: Moisture, limit: Moisture },
    /// Maybe: it is marked wet.
    MarkedWet,
    /// Maybe: the rack holds what the plans need.
    EnoughOnRack { pieces: Count, needed: Count },
    /// Maybe: pieces like these lay unused on the rack for so long.
    LiesUnused { pieces: Count, unused: Span },
    /// Take: a piece leaves so much after its own minutes.
    Leaves(Decimal),
    /// Take: nothing known speaks against it, and its worth is not known.
    NothingAgainst,
}

/// The shortest part and the longest of the machines' minimums; whichever is longer is the least useful length.
///
/// ```
/// use fivebar_core::{haul::take::{SetBy, least_useful}, quantity::Length};
/// let inches = |n: i64| Length::INCH.times(n).unwrap();
/// let least = least_useful([inches(18), inches(8)], [inches(6)]).unwrap();
/// assert_eq!((least.length, least.set_by), (inches(8), SetBy::Part));
/// assert_eq!(least_useful([inches(8)], [inches(12)]).unwrap().set_by, SetBy::Machine);
/// ```
pub fn least_useful(parts: impl IntoIterator<Item = Length>, machines: impl IntoIterator<Item = Length>) -> Option<Least> {
    let part = parts.into_iter().min().map(|length| Least { length, set_by: SetBy::Part });
    let machine = machines.into_iter().max().map(|length| Least { length, set_by: SetBy::Machine });
    match (part, machine) {
        (Some(part), Some(machine)) if part.length < machine.length => Some(machine),
        (part, machine) => part.or(machine),
    }
}

/// Take, maybe or leave a pile, and why. The thresholds are our judgement.
///
/// # Errors
/// [`Refusal::OutOfRange`](crate::refusal::Refusal::OutOfRange).
///
/// ```
/// use fivebar_core::haul::take::{Decides, Limits, OnRack, Offered, Verdict, Wet, least_useful, take};
/// use fivebar_core::quantity::{Decimal, Length};
/// let inches = |n: i64| Length::INCH.times(n).unwrap();
/// let stubs = Offered {
///     band: Some((inches(5), inches(7))),
///     wood_known: true,
///     leaves: Some(Decimal::new(40, 2)),
///     sorted: 0,
///     rejected: 0,
///     rack: OnRack::default(),
///     wet: Wet::default(),
/// };
/// let least = least_useful([inches(8)], []);
/// // Under 8 in, your shortest part.
/// assert_eq!(take(&stubs, least, &Limits::usual()), Ok((Verdict::Leave, Decides::TooShort(least.unwrap()))));
/// ```
pub fn take(pile: &Offered, least: Option<Least>, limits: &Limits) -> Answer<(Verdict, Decides)> {
    let rejects = pile.rejects(limits)?;
    let short = |over: fn((Length, Length)) -> Length| least.zip(pile.band).filter(|(least, band)| over(*band) < least.length);
    let leave = short(|(_, to)| to)
        .map(|(least, _)| Decides::TooShort(least))
        .or_else(|| pile.leaves.filter(|leaves| *leaves < Decimal::ZERO).map(|leaves| Decides::CostsMore(leaves.abs())))
        .or_else(|| rejects.filter(|share| limits.leave_rejects < *share).map(|share| pile.rejected(share)));
    let maybe = || {
        rejects
            .filter(|share| limits.maybe_rejects < *share)
            .map(|share| pile.rejected(share))
            .or_else(|| (!pile.wood_known).then_some(Decides::WoodUnknown))
            .or_else(|| short(|(from, _)| from).map(|(least, _)| Decides::PartlyShort(least)))
            .or_else(|| pile.wet.doubt(limits))
            .or_else(|| pile.rack.doubt(limits))
    };
    Ok(match (leave, maybe()) {
        (Some(why), _) => (Verdict::Leave, why),
        (None, Some(why)) => (Verdict::Maybe, why),
        (None, None) => (Verdict::Take, pile.leaves.map_or(Decides::NothingAgainst, Decides::Leaves)),
    })
}

impl Offered {
    /// The share of rejects, once enough were sorted to say so.
    fn rejects(&self, limits: &Limits) -> Answer<Option<Decimal>> {
        let enough = limits.sorted_least.max(1) <= self.sorted;
        enough.then(|| over(self.rejected.into(), self.sorted.into())).transpose()
    }

    fn rejected(&self, share: Decimal) -> Decides {
        Decides::Rejects { share, sorted: self.sorted }
    }
}

impl Wet {
    fn doubt(self, limits: &Limits) -> Option<Decides> {
        let read = self.reading.zip(limits.wet_above).filter(|(reading, limit)| limit < reading);
        let read = read.map(|(reading, limit)| Decides::TooWet { reading, limit });
        read.or_else(|| self.marked.then_some(Decides::MarkedWet))
    }
}

impl OnRack {
    fn doubt(self, limits: &Limits) -> Option<Decides> {
        let OnRack { pieces, unused, needed } = self;
        let enough = needed.filter(|needed| *needed <= pieces && 0 < pieces).map(|needed| Decides::EnoughOnRack { pieces, needed });
        enough.or_else(|| (0 < pieces && limits.unused_from <= unused).then_some(Decides::LiesUnused { pieces, unused }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Verdict::{Leave, Maybe, Take};

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn inches(n: i64) -> Length {
        Length::INCH.times(n).unwrap()
    }

    fn moisture(per_cent: f64) -> Moisture {
        Moisture::per_cent(per_cent).unwrap()
    }

    /// Nothing speaks against it: 10 to 14 in, a piece leaves 0.40.
    fn plain() -> Offered {
        Offered {
            band: Some((inches(10), inches(14))),
            wood_known: true,
            leaves: Some(d("0.40")),
            sorted: 0,
            rejected: 0,
            rack: OnRack::default(),
            wet: Wet::default(),
        }
    }

    const LEAST: Least = Least { length: Length::FOOT, set_by: SetBy::Part };

    #[track_caller]
    fn check(pile: Offered, verdict: Verdict, decides: Decides) {
        assert_eq!(take(&pile, None, &Limits::usual()), Ok((verdict, decides)), "{pile:?}");
    }

    #[track_caller]
    fn check_length(from: i64, to: i64, verdict: Verdict, decides: Decides) {
        let pile = Offered { band: Some((inches(from), inches(to))), ..plain() };
        assert_eq!(take(&pile, Some(LEAST), &Limits::usual()), Ok((verdict, decides)), "{from} to {to}");
    }

    #[test]
    fn a_pile_is_as_useful_as_it_is_long() {
        check_length(8, 11, Leave, Decides::TooShort(LEAST));
        check_length(8, 12, Maybe, Decides::PartlyShort(LEAST));
        check_length(11, 30, Maybe, Decides::PartlyShort(LEAST));
        check_length(12, 12, Take, Decides::Leaves(d("0.40")));
        let bare = Offered { band: None, leaves: None, ..plain() };
        assert_eq!(take(&bare, Some(LEAST), &Limits::usual()), Ok((Take, Decides::NothingAgainst)));
        assert_eq!(least_useful([], []), None);
        assert_eq!(least_useful([inches(12), inches(20)], []), Some(LEAST));
        assert_eq!(least_useful([inches(12)], [inches(6), inches(12)]), Some(LEAST));
        assert_eq!(least_useful([], [inches(6), inches(12)]), Some(Least { set_by: SetBy::Machine, ..LEAST }));
    }

    #[test]
    fn a_piece_must_be_worth_its_own_minutes() {
        check(Offered { leaves: Some(d("-0.12")), ..plain() }, Leave, Decides::CostsMore(d("0.12")));
        check(Offered { leaves: Some(d("0")), ..plain() }, Take, Decides::Leaves(d("0")));
        check(Offered { leaves: None, ..plain() }, Take, Decides::NothingAgainst);
        check(Offered { wood_known: false, leaves: Some(d("0")), ..plain() }, Maybe, Decides::WoodUnknown);
    }

    #[test]
    fn rejects_of_the_past_count_once_there_are_enough() {
        for (rejected, sorted, wanted) in [(19, 19, Take), (10, 20, Take), (11, 20, Maybe), (15, 20, Maybe), (16, 20, Leave)] {
            let decides = if wanted == Take {
                Decides::Leaves(d("0.40"))
            } else {
                Decides::Rejects { share: Decimal::from(rejected) / Decimal::from(sorted), sorted }
            };
            check(Offered { rejected, sorted, ..plain() }, wanted, decides);
        }
    }

    #[test]
    fn wet_wood_is_doubtful() {
        let wet = |marked, reading: Option<f64>| Offered { wet: Wet { marked, reading: reading.map(moisture) }, ..plain() };
        check(wet(false, Some(20.0)), Take, Decides::Leaves(d("0.40")));
        check(wet(false, Some(20.5)), Maybe, Decides::TooWet { reading: moisture(20.5), limit: moisture(20.0) });
        check(wet(true, Some(31.0)), Maybe, Decides::TooWet { reading: moisture(31.0), limit: moisture(20.0) });
        check(wet(true, None), Maybe, Decides::MarkedWet);
    }

    #[test]
    fn a_full_rack_is_a_reason_to_think() {
        let rack = |pieces, weeks, needed| Offered { rack: OnRack { pieces, unused: Span::WEEK.times(weeks), needed }, ..plain() };
        check(rack(22, 3, None), Take, Decides::Leaves(d("0.40")));
        check(rack(22, 3, Some(23)), Take, Decides::Leaves(d("0.40")));
        check(rack(22, 30, Some(22)), Maybe, Decides::EnoughOnRack { pieces: 22, needed: 22 });
        check(rack(22, 26, Some(23)), Maybe, Decides::LiesUnused { pieces: 22, unused: Span::WEEK.times(26) });
        check(rack(0, 90, Some(0)), Take, Decides::Leaves(d("0.40")));
    }

    /// Everything speaks against it; each line takes the first reason away.
    #[test]
    fn the_first_fact_in_order_decides() {
        let mut pile = Offered {
            band: Some((inches(5), inches(6))),
            wood_known: false,
            leaves: Some(d("-1")),
            sorted: 40,
            rejected: 36,
            rack: OnRack { pieces: 9, unused: Span::WEEK.times(30), needed: Some(4) },
            wet: Wet { marked: true, reading: Some(moisture(40.0)) },
        };
        let mut next = |change: fn(&mut Offered), wanted: Decides| {
            change(&mut pile);
            assert_eq!(take(&pile, Some(LEAST), &Limits::usual()).unwrap().1, wanted);
        };
        next(|_| (), Decides::TooShort(LEAST));
        next(|pile| pile.band = Some((inches(5), inches(13))), Decides::CostsMore(d("1")));
        next(|pile| pile.leaves = Some(d("1")), Decides::Rejects { share: d("0.9"), sorted: 40 });
        next(|pile| pile.rejected = 24, Decides::Rejects { share: d("0.6"), sorted: 40 });
        next(|pile| pile.rejected = 8, Decides::WoodUnknown);
        next(|pile| pile.wood_known = true, Decides::PartlyShort(LEAST));
        next(|pile| pile.band = Some((inches(12), inches(13))), Decides::TooWet { reading: moisture(40.0), limit: moisture(20.0) });
        next(|pile| pile.wet.reading = None, Decides::MarkedWet);
        next(|pile| pile.wet.marked = false, Decides::EnoughOnRack { pieces: 9, needed: 4 });
        next(|pile| pile.rack.needed = None, Decides::LiesUnused { pieces: 9, unused: Span::WEEK.times(30) });
        next(|pile| pile.rack.pieces = 0, Decides::Leaves(d("1")));
    }
}
