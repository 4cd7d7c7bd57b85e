//! What a plan lacks is looked for at the next yard, until it is there, the job ends or the maker says so.

use super::Act;
use super::job::going_on;
use super::stock::Lying;
use crate::ledger::Book;
use crate::ledger::fold::{self, PlanSought, Sought, made_of};
use crate::ledger::kind::plan::PlanKept;
use crate::ledger::kind::stock::{PiecesSought, PileSuits, SoughtPiece};
use crate::plan::field::short;
use crate::plan::patience::{Patience, Progress};
use crate::plan::{Answered, Asked, Made, Planned};
use crate::quantity::{Count, Id, PILE_MOST};
use crate::refusal::{Answer, Refusal};

/// Pieces of a plan are looked for; there is at least one, and none is beyond what a pile holds or a piece measures.
pub(super) fn look_for(book: &Book, sought: &PiecesSought, act: &mut Act) -> Answer<()> {
    going_on(book, sought.job)?;
    if sought.pieces.is_empty() {
        return Err(Refusal::NothingAsked);
    }
    sought.pieces.iter().try_for_each(can_be)?;
    act.add(sought.clone());
    Ok(())
}

fn can_be(piece: &SoughtPiece) -> Answer<()> {
    for side in [piece.thickness, piece.width, piece.length] {
        side.of_a_piece()?;
    }
    let would_be = piece.n.saturating_add(piece.there.unwrap_or(0));
    match piece.n {
        0 => Err(Refusal::NothingAsked),
        _ if PILE_MOST < would_be => Err(Refusal::TooManyPieces { would_be, most: PILE_MOST }),
        _ => Ok(()),
    }
}

/// What is looked for by that entry, as it stands.
fn standing(book: &Book, sought: Id) -> Answer<Sought> {
    fold::workshop(book).sought.into_iter().find(|one| one.id == sought).ok_or(Refusal::NotThere)
}

pub(super) fn look_no_more(book: &Book, sought: Id, act: &mut Act) -> Answer<()> {
    act.add(standing(book, sought)?.no_more());
    Ok(())
}

/// A pile does for a piece that is looked for, or does not.
pub(super) fn suits(book: &Book, at: Lying, (sought, nth, suits): (Id, Count, bool), act: &mut Act) -> Answer<()> {
    let place = usize::try_from(nth).map_err(|_| Refusal::NotThere)?;
    standing(book, sought)?.pieces.get(place).ok_or(Refusal::NotThere)?;
    act.add(PileSuits { haul: at.haul, pile: at.pile, sought, nth, suits });
    Ok(())
}

/// A plan that is used and makes as much as was to come of what it lacked ends the looking, in the same act; a field that lacks nothing to
/// come nearer.
pub(super) fn made(book: &Book, plan: &PlanKept, (asked, answered): (&Asked, &Answered), act: &mut Act) {
    let (of, made) = (PlanSought::of(plan, asked), made_of(plan, answered));
    let ends =
        |one: &Sought| (one.job, one.plan) == (plan.job, of) && one.makes.map_or_else(|| !lacks(asked, answered), |makes| makes <= made);
    for one in fold::workshop(book).sought.iter().filter(|one| ends(one)) {
        act.add(one.no_more());
    }
}

/// Steps for what a field lacks: as many as its page takes.
const STEPS: u64 = 2_000;

/// More pieces bring a field nearer.
fn lacks(asked: &Asked, answered: &Answered) -> bool {
    let (Asked::Field(problem), Made::Field(plan)) = (asked, &answered.plan) else { return false };
    let Answered { worth, bound, .. } = answered.clone();
    let mut goes_on = |_: Progress<'_>| true;
    let planned = Planned { plan: plan.clone(), worth, bound };
    short::lacking(problem, &planned, &mut Patience::new(Some(STEPS), &mut goes_on)).is_some_and(|lacks| !lacks.pieces.is_empty())
}
