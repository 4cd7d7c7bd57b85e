//! Orders about a pile beyond the first count: layers, measured pieces, what it is for, moisture, and how it lies on the rack.

use super::Act;
use super::haul::{enough, free, pile_of, within};
use crate::haul::weighing::{self, OnScale, Spread, Weighing};
use crate::haul::{Pile, Want};
use crate::ledger::Book;
use crate::ledger::kind::Exact;
use crate::ledger::kind::haul::{PiecesCounted, Way};
use crate::ledger::kind::stock as kind;
use crate::quantity::{Count, Decimal, Grams, Id, Key, Length, PILE_MOST};
use crate::refusal::{Answer, Refusal};
use crate::wood::moisture::Moisture;
use rust_decimal::prelude::ToPrimitive;

/// A pile and the haul it lies in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lying {
    pub haul: Id,
    pub pile: Id,
}

/// What can be ordered of a pile.
#[derive(Clone, Debug, PartialEq)]
pub enum StockCommand {
    /// Counts by layers.
    Layers {
        layers: Count,
        per: Count,
        rest: Count,
    },
    /// Counts by weight: the first few pieces on the scale, then all of them.
    Weigh(OnTheScale),
    /// The sides of one piece, as far as they were measured.
    Measure {
        thickness: Option<Length>,
        width: Option<Length>,
        length: Option<Length>,
    },
    /// So many parts are wanted of it; none takes the wish away.
    Want {
        part: Option<String>,
        job: Option<Id>,
        wanted: Count,
        pieces: Count,
        gives: Count,
    },
    Moisture {
        percent: Option<Decimal>,
        wet: Option<bool>,
    },
    /// The rack was walked round.
    CountRack {
        n: Count,
        why: Option<String>,
    },
    Place {
        place: String,
    },
    Reserve {
        job: Id,
        n: Count,
    },
    FreeReserved {
        job: Id,
        n: Count,
    },
    /// A count of the pile was put right: so many, for that reason.
    Mend {
        entry: Id,
        n: Count,
        why: Option<String>,
    },
    /// The figures of a count by weight or by layers were put right; it is worked out anew.
    MendBy {
        entry: Id,
        by: Figures,
    },
    /// It does for a piece that is looked for (`nth` of that entry), or does not, whatever its size says.
    Suits {
        sought: Id,
        nth: Count,
        suits: bool,
    },
    /// Good pieces leave for no job: `burnt`, `given`, `jigs`.
    Gone {
        n: Count,
        to: Key,
    },
}

/// What a count comes about by that is not tapped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figures {
    /// So many layers of so many pieces, and the rest.
    Layers {
        layers: Count,
        per: Count,
        rest: Count,
    },
    Weight(OnTheScale),
}

/// A pile on the scale: a few pieces counted and weighed bare, put back, then all of them in what they are weighed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnTheScale {
    /// Pieces counted and weighed first.
    pub sample: Count,
    pub sample_weight: Grams,
    /// What the scale shows with all of them.
    pub shows: Grams,
    pub tare: Grams,
    /// The share by which single pieces differ; the usual one of the pile where nothing is said.
    pub spread: Option<Decimal>,
    /// The spread was found by so many weighed one by one.
    pub singles: Option<Count>,
}

impl OnTheScale {
    /// How much single pieces differ, as it was found or said; the usual one of the pile else.
    pub fn spread(self, usual: Spread) -> Spread {
        self.spread.and_then(|share| share.to_f64()).map_or(usual, |share| Spread::written(share, self.singles))
    }

    /// The same put right: how far single pieces differ was found by the sample, and stays while that does.
    pub fn in_place_of(self, old: OnTheScale) -> OnTheScale {
        let same = (old.sample, old.sample_weight) == (self.sample, self.sample_weight) && old.singles.is_some();
        let of = if same { old } else { self };
        OnTheScale { spread: of.spread, singles: of.singles, ..self }
    }

    pub fn weighing(self) -> Weighing {
        let pile = OnScale { shows: self.shows, tare: self.tare };
        Weighing { counted: self.sample, sample: OnScale::bare(self.sample_weight), pile }
    }
}

/// More than any pile holds was asked for, and nothing was counted: no pile would hold it.
fn of_wanted(refused: Refusal) -> Refusal {
    match refused {
        Refusal::TooManyPieces { would_be, most } => Refusal::TooManyAtOnce { would_be, most },
        other => other,
    }
}

pub(super) fn decide(book: &Book, at: Lying, command: &StockCommand, act: &mut Act) -> Answer<()> {
    let Lying { haul, pile } = at;
    let there = pile_of(book, haul, pile)?;
    match command {
        StockCommand::Layers { layers, per, rest } => {
            counted((at, &there), Figures::Layers { layers: *layers, per: *per, rest: *rest }, act)?;
        }
        StockCommand::Weigh(scale) => counted((at, &there), Figures::Weight(*scale), act)?,
        StockCommand::Measure { thickness, width, length } => measure(at, &there, [*thickness, *width, *length], act)?,
        StockCommand::Want { wanted, pieces, gives, .. } if [wanted, pieces, gives].iter().any(|n| PILE_MOST < **n) => {
            let most = (*wanted).max(*pieces).max(*gives);
            return Err(Refusal::TooManyAtOnce { would_be: most, most: PILE_MOST });
        }
        StockCommand::Want { part, job, wanted, pieces, gives } => {
            if let Some(job) = job {
                super::job::found(book, *job)?;
            }
            let factor = |n: &Count| Some(*n).filter(|n| 1 < *n);
            if 0 < *wanted {
                let part = part.clone().unwrap_or_default();
                Want { part, job: *job, wanted: *wanted, pieces: *pieces, gives: *gives, length: None }
                    .target()
                    .pieces()
                    .map_err(of_wanted)?;
            }
            let (pieces, gives, part) = (factor(pieces), factor(gives), part.clone().filter(|part| !part.is_empty()));
            act.add(kind::EnoughSet { haul, pile, wanted: *wanted, part, job: *job, pieces, gives });
        }
        StockCommand::Moisture { percent, wet } => {
            moisture(*percent)?;
            act.add(kind::MoistureRead { haul, pile, percent: percent.map(Exact), wet: *wet });
        }
        StockCommand::Mend { entry, n, why } => super::mend::mend(book, at, (*entry, *n, why.clone()), act)?,
        StockCommand::MendBy { entry, by } => super::mend::mend_by(book, (at, &there), (*entry, *by), act)?,
        StockCommand::Suits { sought, nth, suits } => super::sought::suits(book, at, (*sought, *nth, *suits), act)?,
        lying => on_the_rack(book, (at, &there), lying, act)?,
    }
    Ok(())
}

fn on_the_rack(book: &Book, (at, there): (Lying, &Pile), command: &StockCommand, act: &mut Act) -> Answer<()> {
    let Lying { haul, pile } = at;
    match command {
        StockCommand::CountRack { n, why } => {
            within(0, *n)?;
            act.add(kind::PileCounted { haul, pile, n: *n, why: why.clone() });
        }
        StockCommand::Place { place } => {
            act.add(kind::PilePlaced { haul, pile, place: place.trim().to_owned() });
        }
        StockCommand::Reserve { job, n } => {
            free(*n, there, None)?;
            super::job::going_on(book, *job)?;
            act.add(kind::PiecesReserved { haul, pile, job: *job, n: *n });
        }
        StockCommand::FreeReserved { job, n } => {
            enough(*n, there.reserved_for(*job))?;
            act.add(kind::ReservationFreed { haul, pile, job: *job, n: *n });
        }
        StockCommand::Gone { n, to } => {
            free(*n, there, None)?;
            act.add(kind::LeftoversGone { haul, pile, n: *n, to: Some(to.clone()) });
        }
        _ => {}
    }
    Ok(())
}

fn counted((at, there): (Lying, &Pile), by: Figures, act: &mut Act) -> Answer<()> {
    let n = by.pieces(there)?;
    within(there.taken, n)?;
    let way = if matches!(by, Figures::Weight(_)) { Way::Weight } else { Way::Layers };
    let counted = act.add(PiecesCounted { haul: at.haul, pile: at.pile, n, way });
    by.tell((at, there), counted, act);
    Ok(())
}

impl Figures {
    /// So many pieces they come to. The count goes by the mean weight alone; how far it may be off is worked out where it is shown, by the
    /// spread.
    pub(super) fn pieces(self, there: &Pile) -> Answer<Count> {
        match self {
            Figures::Layers { layers, per, rest } => weighing::layers(per, layers, rest),
            Figures::Weight(scale) => {
                if let Some(met) = scale.spread.filter(|met| *met < Decimal::ZERO || Decimal::ONE <= *met) {
                    return Err(Refusal::ShareOutOfRange { met });
                }
                scale.weighing().count(Spread::usual(there)).map(|weighed| weighed.n)
            }
        }
    }

    /// How a count came about, beside it.
    pub(super) fn tell(self, (at, there): (Lying, &Pile), counted: Id, act: &mut Act) {
        let Lying { haul, pile } = at;
        let grams = |grams: Grams| i64::from(grams.as_grams());
        match self {
            Figures::Layers { layers, per, rest } => {
                act.add(kind::PileLayersCounted { haul, pile, counted, layers, per, rest: Some(rest).filter(|rest| 0 < *rest) });
            }
            Figures::Weight(scale) => {
                act.add(kind::PilePiecesWeighed {
                    haul,
                    pile,
                    counted,
                    sample: scale.sample,
                    sample_weight: grams(scale.sample_weight),
                    weight: grams(scale.shows),
                    tare: Some(grams(scale.tare)).filter(|tare| 0 < *tare),
                    singles: scale.singles.filter(|_| scale.spread.is_some()),
                    spread: Some(Exact(scale.spread.unwrap_or_else(|| Spread::usual(there).as_decimal()).normalize())),
                });
            }
        }
    }
}

/// A piece that was measured is one of the pile's: no more than were counted.
fn measure(at: Lying, there: &Pile, sides: [Option<Length>; 3], act: &mut Act) -> Answer<()> {
    for side in sides.into_iter().flatten() {
        side.of_a_piece()?;
    }
    if sides.iter().all(Option::is_none) {
        return Err(Refusal::NothingAsked);
    }
    let measured = Count::try_from(there.measured.len()).unwrap_or(Count::MAX).saturating_add(1);
    if there.taken < measured {
        return Err(Refusal::SampleMoreThanPile { measured, there: there.taken });
    }
    let [thickness, width, length] = sides;
    act.add(kind::PieceMeasured { haul: at.haul, pile: at.pile, thickness, width, length });
    Ok(())
}

/// Per cent of water in wood, of its dry mass: what no wood holds is refused.
pub(super) fn moisture(percent: Option<Decimal>) -> Answer<()> {
    let most = Moisture::MOST;
    match percent {
        Some(met) if met < Decimal::ZERO || most < met => Err(Refusal::MoistureOutOfRange { most }),
        _ => Ok(()),
    }
}
