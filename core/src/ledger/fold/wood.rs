//! What the maker said of woods, machines, air, the van and the timber yard; the latest of each wins.

use crate::haul::{Aboard, Van};
use crate::ledger::kind::wood::{AirRead, RoomRangeSet, SpeciesAdded};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Decimal, Key, Length, Mass, Sorted, Span, Wall};
use crate::wood::air::{Air, Humidity, Temperature};
use crate::wood::minimum::Minimum;
use crate::wood::moisture::Moisture;
use crate::wood::species::Basis;
use crate::wood::woods::{OwnWood, Woods};

/// What is known of woods and what carries and cuts them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WoodFacts {
    /// The woods of the tables and the maker's own.
    pub woods: Woods,
    pub machines: Sorted<Key, Minimum>,
    /// What the maker calls machines that are in no list.
    pub machine_names: Sorted<Key, String>,
    /// The last reading of the air, and when.
    pub air: Option<(AirRead, Wall)>,
    /// Moistures in per cent that pieces live between, where a job says nothing else.
    pub room: Option<(Decimal, Decimal)>,
    /// What the van may carry with nobody in it, and what a person weighs. Grams.
    pub payload: Option<i64>,
    pub person: Option<i64>,
    /// To the timber yard and back.
    pub yard_distance: Option<Length>,
    pub yard_span: Option<Span>,
}

/// The van as the workshop knows it.
pub fn van(book: &Book) -> Van {
    WoodFacts::of(book).van()
}

impl WoodFacts {
    /// The van: a person weighs as usual until the maker says otherwise.
    pub fn van(&self) -> Van {
        let mass = |grams: i64| Mass::kg(grams as f64 / 1000.0);
        Van { payload: self.payload.map(mass), person: self.person.map_or(Aboard::PERSON, mass) }
    }

    /// The moisture wood comes to in the air that was read last; none before any was.
    pub fn comes_to(&self) -> Option<Moisture> {
        let (air, _) = self.air.as_ref()?;
        let figure = |n: Decimal| f64::try_from(n).unwrap_or(f64::NAN);
        let (temperature, humidity) = (Temperature::celsius(figure(air.temperature.0)), Humidity::per_cent(figure(air.humidity.0)));
        Some(Air { temperature: temperature.ok()?, humidity: humidity.ok()? }.equilibrium())
    }

    /// These alone, from all entries of the workshop.
    pub(super) fn of(book: &Book) -> WoodFacts {
        let mut facts = WoodFacts::default();
        book.about(Subject::Workshop).for_each(|entry| facts.apply(entry));
        facts
    }

    pub(super) fn apply(&mut self, entry: &Entry) {
        match &entry.fact {
            // A key that a later version put into the tables, or figures no wood has, change nothing.
            Fact::SpeciesAdded(f) if f.gone == Some(true) => self.woods.remove(&f.key),
            Fact::SpeciesAdded(f) => drop(self.woods.add(f.key.clone(), own(f))),
            Fact::MachineMinimumSet(f) => {
                let minimum = Minimum { thickness: f.thickness, width: f.width, length: f.length };
                self.machines.insert(f.machine.clone(), minimum);
                if let Some(name) = &f.name {
                    self.machine_names.insert(f.machine.clone(), name.clone());
                }
                self.machines.retain(|_, minimum| *minimum != Minimum::default());
            }
            Fact::AirRead(f) => self.air = Some((f.clone(), entry.wall)),
            Fact::RoomRangeSet(RoomRangeSet { low, high, job: None }) => self.room = Some((low.0, high.0)),
            Fact::VanSet(f) => {
                self.payload = f.payload.or(self.payload);
                self.person = f.person.or(self.person);
            }
            Fact::TimberYardSet(f) => {
                self.yard_distance = f.distance.or(self.yard_distance);
                self.yard_span = f.span.or(self.yard_span);
            }
            _ => {}
        }
    }
}

/// A wood as the maker said it.
pub(in crate::ledger) fn own(f: &SpeciesAdded) -> OwnWood {
    let figure = |n: Decimal| f64::try_from(n).unwrap_or_default();
    OwnWood {
        name: f.name.trim().to_owned(),
        basis: Basis::Density(figure(f.density.0)),
        radial: f.radial.map(|n| figure(n.0)),
        tangential: f.tangential.map(|n| figure(n.0)),
        from: f.from.clone(),
    }
}
