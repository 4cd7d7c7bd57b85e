//! What plans lack and is looked for at the next yard, from its entries.

use crate::ledger::Entry;
use crate::ledger::kind::plan::{PlanKept, Shape};
use crate::ledger::kind::stock::{PiecesSought, SoughtPiece};
use crate::plan::{Answered, Asked};
use crate::quantity::{Count, Id, Length};

/// What a plan of a job lacks and is looked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Sought {
    /// Its entry.
    pub id: Id,
    pub job: Id,
    pub plan: PlanSought,
    pub pieces: Vec<SoughtPiece>,
    /// Any one of them does.
    pub any: bool,
    /// With them the plan makes so many rows or sets.
    pub makes: Option<Count>,
    /// Where each piece stood in the wishes that this one took the place of, the latest first: what was answered there holds.
    pub was: Vec<Vec<(Id, Count)>>,
}

/// Which plan of a job it is of: by what it makes, and of a top by its length and width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanSought {
    pub shape: Shape,
    pub sides: [Option<Length>; 2],
}

impl From<&PiecesSought> for PlanSought {
    fn from(f: &PiecesSought) -> PlanSought {
        PlanSought { shape: f.shape, sides: [f.length, f.width] }
    }
}

impl PlanSought {
    /// That of a plan that is kept.
    pub fn of(kept: &PlanKept, asked: &Asked) -> PlanSought {
        let long = |units: i64| units.checked_mul(kept.unit.as_nm()).and_then(|nm| Length::nm(nm).ok());
        let length = if let Asked::Rows(problem) = asked { long(problem.length) } else { None };
        PlanSought { shape: kept.shape, sides: [length, kept.width] }
    }
}

/// How many rows or sets there are with a plan, those that were cut before it among them.
pub fn made_of(kept: &PlanKept, answered: &Answered) -> Count {
    let own = answered.worth.first().and_then(|made| Count::try_from(*made).ok()).unwrap_or(0);
    match &kept.cut {
        // All that was left to cut is asked at once: it is there, or it is not.
        Some(_) if 0 < own => kept.sets.unwrap_or(own),
        Some(_) => 0,
        None => own,
    }
}

impl Sought {
    /// Where a piece stands, and where it stood before.
    pub fn places(&self, nth: Count) -> impl Iterator<Item = (Id, Count)> {
        let before = usize::try_from(nth).ok().and_then(|nth| self.was.get(nth));
        std::iter::once((self.id, nth)).chain(before.into_iter().flatten().copied())
    }

    /// Where a piece alike stands in it, of the same wood, section and length.
    fn places_of(&self, piece: &SoughtPiece) -> Vec<(Id, Count)> {
        let sides = |it: &SoughtPiece| (it.wood.clone(), [it.thickness, it.width, it.length]);
        let same = (0..).zip(&self.pieces).find(|(_, own)| sides(own) == sides(piece));
        same.map(|(nth, _)| self.places(nth).collect()).unwrap_or_default()
    }

    /// That it is looked for no more.
    pub fn no_more(&self) -> PiecesSought {
        let [length, width] = self.plan.sides;
        PiecesSought { job: self.job, shape: self.plan.shape, pieces: vec![], any: None, length, width, makes: None }
    }
}

/// The same of the same job replaces it, and no pieces take it away.
pub(super) fn sought(all: &mut Vec<Sought>, entry: &Entry, f: &PiecesSought) {
    let plan = PlanSought::from(f);
    let before = all.iter().position(|one| (one.job, one.plan) == (f.job, plan)).map(|place| all.remove(place));
    if !f.pieces.is_empty() {
        let (pieces, any) = (f.pieces.clone(), f.any == Some(true));
        let was = pieces.iter().map(|piece| before.as_ref().map_or_else(Vec::new, |before| before.places_of(piece))).collect();
        all.push(Sought { id: entry.id, job: f.job, plan, pieces, any, makes: f.makes, was });
    }
}
