//! Orders about woods, machines, air, the van, the timber yard, and boards bought there.

use super::Act;
use super::haul::PileFacts;
use super::stock::moisture;
use crate::ledger::Book;
use crate::ledger::fold;
use crate::ledger::kind::haul::{HaulBegan, HaulDescribed, Way};
use crate::ledger::kind::money::MoneySpent;
use crate::ledger::kind::wood as kind;
use crate::quantity::{Count, Decimal, Grams, Id, Key, Length, Money, Span, Units};
use crate::refusal::{Answer, Refusal};
use crate::wood::air::{Humidity, Temperature};

/// What can be ordered of woods and what carries and cuts them.
#[derive(Clone, Debug, PartialEq)]
pub enum WoodCommand {
    AddSpecies(kind::SpeciesAdded),
    SetMachine(kind::MachineMinimumSet),
    ReadAir(kind::AirRead),
    SetRoom(kind::RoomRangeSet),
    SetVan(kind::VanSet),
    SetTimberYard(kind::TimberYardSet),
    /// Boards alike were bought: a pile with a price, a haul of its own.
    Buy {
        units: Units,
        pile: PileFacts,
        n: Count,
        paid: Money,
        supplier: Option<Id>,
    },
}

pub(super) fn decide(book: &Book, command: &WoodCommand, act: &mut Act) -> Answer<()> {
    match command {
        WoodCommand::AddSpecies(f) if f.gone == Some(true) => {
            of_no_use(book, &f.key)?;
            act.add(f.clone());
        }
        WoodCommand::AddSpecies(f) => {
            named(&f.name)?;
            fold::workshop(book).wood.woods.add(f.key.clone(), fold::wood::own(f))?;
            act.add(f.clone());
        }
        WoodCommand::SetMachine(f) => {
            for side in [f.thickness, f.width, f.length].into_iter().flatten() {
                side.of_a_piece()?;
            }
            f.name.as_deref().map_or(Ok(()), named)?;
            act.add(f.clone());
        }
        WoodCommand::ReadAir(f) => {
            Temperature::celsius(figure(f.temperature.0))?;
            Humidity::per_cent(figure(f.humidity.0))?;
            act.add(f.clone());
        }
        WoodCommand::SetRoom(f) => {
            moisture(Some(f.low.0))?;
            moisture(Some(f.high.0))?;
            if f.high < f.low {
                return Err(Refusal::RoomUpsideDown { low: f.low.0, high: f.high.0 });
            }
            if let Some(job) = f.job {
                super::job::found(book, job)?;
            }
            act.add(f.clone());
        }
        WoodCommand::SetVan(f) => {
            for grams in [f.payload, f.person].into_iter().flatten() {
                weighs(grams)?;
            }
            act.add(f.clone());
        }
        WoodCommand::SetTimberYard(f) => {
            if f.span.is_some_and(|span| span < Span::ZERO) || f.distance.is_some_and(|far| far < Length::ZERO) {
                return Err(Refusal::OutOfRange);
            }
            act.add(f.clone());
        }
        WoodCommand::Buy { units, pile, n, paid, supplier } => {
            super::haul::known(book, pile.wood.as_ref())?;
            let label = super::haul::label_beside_all(book)?;
            return buy(act, (*units, pile, label), (*n, *paid), *supplier);
        }
    }
    Ok(())
}

/// Nothing is of this own wood: no pile, and no part of a job or a design.
fn of_no_use(book: &Book, key: &Key) -> Answer<()> {
    let workshop = fold::workshop(book);
    workshop.wood.woods.own_of(key).ok_or(Refusal::NotThere)?;
    let is_of = |wood: Option<&Key>| wood == Some(key);
    let piles = fold::hauls(book).flat_map(|haul| haul.piles).filter(|pile| is_of(pile.wood.as_ref())).count();
    let parts = fold::jobs(book).flat_map(|job| job.parts).filter(|part| is_of(part.wood.as_ref())).count();
    let designed = workshop.designs.iter().flat_map(|design| &design.parts).filter(|part| is_of(part.wood.as_ref())).count();
    match Count::try_from(piles.saturating_add(parts).saturating_add(designed)) {
        Ok(0) => Ok(()),
        uses => Err(Refusal::WoodInUse { uses: uses.unwrap_or(Count::MAX) }),
    }
}

/// As a float: what it is out of range for is refused by whoever reads it.
fn figure(n: Decimal) -> f64 {
    f64::try_from(n).unwrap_or(f64::NAN)
}

/// What a van may carry, and what a person weighs: a kilogram at least, ten tonnes at most, far beyond any.
pub(super) fn weighs(grams: i64) -> Answer<()> {
    Grams::KG.or_more(grams).map(drop)
}

pub(super) fn named(name: &str) -> Answer<()> {
    const MOST: usize = 60;
    let met = name.trim().chars().count();
    match met {
        0 => Err(Refusal::NameMissing),
        _ if MOST < met => Err(Refusal::NameTooLong { met, most: MOST }),
        _ => Ok(()),
    }
}

fn buy(act: &mut Act, (units, pile, label): (Units, &PileFacts, String), (n, paid): (Count, Money), supplier: Option<Id>) -> Answer<()> {
    if paid.amount() < Decimal::ZERO {
        return Err(Refusal::MoneyBelowNothing { met: paid });
    }
    if n == 0 {
        return Err(Refusal::NothingAsked);
    }
    let haul = act.add(HaulBegan { currency: paid.currency(), units, name: None });
    act.add(HaulDescribed { bought: Some(true), supplier, ..HaulDescribed::of(haul) });
    super::haul::first_pile(act, (haul, label), pile, (n, Way::Bundle))?;
    if let (false, Some(kind)) = (paid.is_zero(), Key::read("wood")) {
        act.add(MoneySpent {
            sum: paid,
            kind,
            haul: Some(haul),
            job: None,
            what: None,
            when: None,
            n: None,
            each: None,
            used: None,
            of: None,
            pack: None,
            can: None,
            back: None,
        });
    }
    Ok(())
}
