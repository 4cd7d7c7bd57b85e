//! A trip: minutes at the wheel and at the bins, distance, and what the distance cost.

use crate::quantity::{Currency, Decimal, Id, Length, Moment, Money, Span, Wall, half_up};
use crate::refusal::{Answer, Refusal};

/// Where a trip stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Where {
    #[default]
    NotLeft,
    Driving,
    AtBin,
    DrivingHome,
    Home,
}

/// A trip as it stands: its steps so far and how long the present one has lasted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct TripNow {
    pub trip: Option<Id>,
    pub stands: Where,
    pub left: Option<Wall>,
    pub at_bin: Option<Wall>,
    pub homeward: Option<Wall>,
    pub home: Option<Wall>,
    pub since: Span,
}

/// One drive to a bin and back.
#[derive(Clone, Debug, PartialEq)]
pub struct Trip {
    pub id: Id,
    pub left: Option<Wall>,
    pub at_bin: Option<Wall>,
    pub homeward: Option<Wall>,
    pub home: Option<Wall>,
    /// Minutes said by the maker, where the stamps were wrong or missing.
    pub wheel_said: Option<Span>,
    pub bin_said: Option<Span>,
    pub distance: Option<Length>,
    /// Money per mile or km.
    pub rate: Option<Decimal>,
    pub per_mile: bool,
    /// The share of the drive that was for this haul; the rest was for other errands.
    pub share: Decimal,
}

impl Trip {
    pub fn new(id: Id) -> Trip {
        Trip {
            id,
            left: None,
            at_bin: None,
            homeward: None,
            home: None,
            wheel_said: None,
            bin_said: None,
            distance: None,
            rate: None,
            per_mile: false,
            share: Decimal::ONE,
        }
    }

    /// Where it stands at a moment.
    pub fn now(&self, now: Moment) -> TripNow {
        let (stands, began) = match (self.left, self.at_bin, self.homeward, self.home) {
            (_, _, _, Some(home)) => (Where::Home, Some(home)),
            (_, _, Some(homeward), None) => (Where::DrivingHome, Some(homeward)),
            (_, Some(there), None, None) => (Where::AtBin, Some(there)),
            (left, None, None, None) => (if left.is_some() { Where::Driving } else { Where::NotLeft }, left),
        };
        let since = began.map_or(Span::ZERO, |began| began.at.until(now));
        TripNow { trip: Some(self.id), stands, left: self.left, at_bin: self.at_bin, homeward: self.homeward, home: self.home, since }
    }

    /// Time at the wheel for this haul: as said, else from the stamps there are; other errands carry their share of it.
    pub fn wheel(&self) -> Span {
        self.shared(self.whole_wheel())
    }

    /// What of a time at the wheel was for this haul, to the millisecond.
    pub fn shared(&self, whole: Span) -> Span {
        let own = Decimal::from(whole.as_ms()).checked_mul(self.share).and_then(|ms| i64::try_from(half_up(ms, 0)).ok());
        own.map_or(whole, Span::ms)
    }

    /// All time at the wheel; where nobody said when it was at the bin, the whole trip.
    pub fn whole_wheel(&self) -> Span {
        self.wheel_said.unwrap_or_else(|| self.stamped_wheel())
    }

    /// Time at the wheel as its stamps have it, whatever was said.
    pub fn stamped_wheel(&self) -> Span {
        let leg = |from: Option<Wall>, to: Option<Wall>| from.zip(to).map_or(Span::ZERO, |(from, to)| from.at.until(to.at));
        match self.at_bin {
            Some(_) => leg(self.left, self.at_bin).plus(leg(self.homeward, self.home)),
            None => leg(self.left, self.home),
        }
    }

    /// Time at the bins: as said, else from the stamps there are.
    pub fn bin(&self) -> Span {
        self.bin_said.unwrap_or_else(|| self.stamped_bin())
    }

    /// Time at the bins as its stamps have it, whatever was said.
    pub fn stamped_bin(&self) -> Span {
        self.at_bin.zip(self.homeward).map_or(Span::ZERO, |(from, to)| from.at.until(to.at))
    }

    /// It was driven so far, and nobody said what that costs.
    pub fn is_unpriced(&self) -> bool {
        self.distance.is_some() && self.rate.is_none()
    }

    /// Distance x rate x the share that was for this haul, half up to the minor unit; nothing while either is unknown: see [`Trip::is_unpriced`].
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
    pub fn cost(&self, currency: Currency) -> Answer<Money> {
        let Some((distance, rate)) = self.distance.zip(self.rate) else { return Ok(Money::zero(currency)) };
        let unit = if self.per_mile { Length::MILE } else { Length::KM };
        let units = Decimal::from(distance.as_nm()).checked_div(Decimal::from(unit.as_nm()));
        let cost = units.and_then(|units| units.checked_mul(rate)?.checked_mul(self.share)).ok_or(Refusal::OutOfRange)?;
        Money::book(cost, currency)
    }
}
