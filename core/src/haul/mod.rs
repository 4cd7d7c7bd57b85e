//! Hauls: what trips brought, in piles of pieces alike.

pub mod after;
pub mod enough;
pub mod go;
mod load;
mod pile;
pub mod rejects;
pub mod sample;
mod stock;
pub mod take;
mod trip;
pub mod weighing;
pub mod worth;

pub use load::{Aboard, Heavy, Load, Van};
pub use pile::{Dampness, Measured, Pile, Want, Weighed};
pub use stock::{Since, Stock};
pub use trip::{Trip, TripNow, Where};

use crate::quantity::{Count, Currency, Id, Moment, Money, Units, Volume, Wall};
use crate::refusal::Answer;

/// What one or more trips brought.
#[derive(Clone, Debug, PartialEq)]
pub struct Haul {
    pub id: Id,
    pub currency: Currency,
    pub units: Units,
    pub began: Wall,
    pub name: Option<String>,
    pub supplier: Option<Id>,
    /// What the van may carry today, in grams, as it was said of this haul.
    pub carries: Option<i64>,
    /// In the van on the way home.
    pub people: Option<Count>,
    /// The van as the workshop knows it.
    pub van: Van,
    /// Bought boards, not offcuts.
    pub bought: bool,
    /// It saves a trip to the timber yard.
    pub saves_trip: bool,
    pub trips: Vec<Trip>,
    pub piles: Vec<Pile>,
    /// Booked lines: gifts, prices, distances noted as spending. The trips' own distances come on top.
    pub costs: Vec<Money>,
}

impl Haul {
    pub fn new(id: Id, (currency, units): (Currency, Units), began: Wall) -> Haul {
        Haul {
            id,
            currency,
            units,
            began,
            name: None,
            supplier: None,
            carries: None,
            people: None,
            van: Van::default(),
            bought: false,
            saves_trip: false,
            trips: vec![],
            piles: vec![],
            costs: vec![],
        }
    }

    pub fn pile(&self, id: Id) -> Option<&Pile> {
        self.piles.iter().find(|pile| pile.id == id)
    }

    /// Pieces taken, over all piles.
    pub fn taken(&self) -> Count {
        self.piles.iter().fold(0, |sum, pile| sum.saturating_add(pile.brought()))
    }

    pub fn rejected(&self) -> Count {
        self.piles.iter().fold(0, |sum, pile| sum.saturating_add(pile.rejected()))
    }

    pub fn good(&self) -> Count {
        self.piles.iter().fold(0, |sum, pile| sum.saturating_add(pile.good()))
    }

    /// What a job gave back of the pieces it took, or all jobs did, as left pieces: it is counted in the piles they lie in.
    pub fn given_back(&self, job: Option<Id>) -> Volume {
        let back = self.piles.iter().flat_map(|pile| &pile.given_back).filter(|(of, _)| job.is_none_or(|job| job == **of));
        back.fold(Volume::ZERO, |sum, (_, volume)| sum.plus(*volume).unwrap_or(sum))
    }

    /// The volume of a number of pieces of each pile; piles without a size count as nothing.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`].
    pub fn volume(&self, pieces: impl Fn(&Pile) -> Count) -> Answer<Volume> {
        self.piles.iter().try_fold(Volume::ZERO, |sum, pile| match pile.piece()? {
            Some(piece) => sum.plus(piece.times(pieces(pile))?),
            None => Ok(sum),
        })
    }

    /// Pieces in piles that have no size yet.
    pub fn unsized_pieces(&self) -> Count {
        let bare = self.piles.iter().filter(|pile| !matches!(pile.piece(), Ok(Some(_))));
        bare.fold(0, |sum, pile| sum.saturating_add(pile.taken))
    }

    /// Pieces of piles whose weight nobody can know yet: no size, and none of them weighed.
    pub fn unweighed_pieces(&self) -> Count {
        let bare = self.piles.iter().filter(|pile| pile.weighs().is_none() && !matches!(pile.piece(), Ok(Some(_))));
        bare.fold(0, |sum, pile| sum.saturating_add(pile.taken))
    }

    /// Where the newest trip stands.
    pub fn trip_now(&self, now: Moment) -> TripNow {
        self.trips.iter().max_by_key(|trip| trip.left).map_or_else(TripNow::default, |trip| trip.now(now))
    }

    /// What a drive of it cost is not known, nor so what the haul did.
    pub fn is_unpriced(&self) -> bool {
        self.trips.iter().any(Trip::is_unpriced)
    }

    /// What was spent on it, as far as it is known: booked lines and the trips' distances.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::CurrenciesMixed`], [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn spent(&self) -> Answer<Money> {
        let driven = self.trips.iter().map(|trip| trip.cost(self.currency)).collect::<Answer<Vec<_>>>()?;
        Money::sum(self.currency, self.costs.iter().copied().chain(driven))
    }
}
