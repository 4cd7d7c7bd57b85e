//! What is left of pieces a job took goes back to the rack, as good pieces of a pile of their size.

use super::Act;
use super::haul::{PileFacts, new_pile, next_label, within};
use crate::haul::{Haul, Pile};
use crate::ledger::Book;
use crate::ledger::fold;
use crate::ledger::kind::haul::PiecesLeft;
use crate::quantity::{Count, Id, Length};
use crate::refusal::{Answer, Refusal};

/// Pieces alike that are left of those of a pile.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftOver {
    pub haul: Id,
    /// The pile they are left of.
    pub of: Id,
    pub n: Count,
    /// Thickness, width, length.
    pub size: [Length; 3],
    /// What a new pile of them is called.
    pub name: String,
}

/// They join a pile of their wood and size in the same haul; where there is none, one is begun.
pub(super) fn left_over(book: &Book, job: Id, left: &[LeftOver], act: &mut Act) -> Answer<()> {
    let mut hauls: Vec<Haul> = vec![];
    for one in left.iter().filter(|one| 0 < one.n) {
        if !hauls.iter().any(|haul| haul.id == one.haul) {
            hauls.push(fold::haul(book, one.haul).ok_or(Refusal::NotThere)?);
        }
        let haul = hauls.iter_mut().find(|haul| haul.id == one.haul).ok_or(Refusal::NotThere)?;
        let pile = pile_for(haul, one, act)?;
        act.add(PiecesLeft { haul: one.haul, pile, of: one.of, job, n: one.n });
    }
    Ok(())
}

fn pile_for(haul: &mut Haul, left: &LeftOver, act: &mut Act) -> Answer<Id> {
    let wood = haul.pile(left.of).ok_or(Refusal::NotThere)?.wood.clone();
    let [thickness, width, length] = left.size.map(Some);
    let sized = |pile: &Pile| [pile.thickness, pile.width, pile.length] == [thickness, width, length];
    let alike = |pile: &&mut Pile| pile.id != left.of && pile.wood == wood && sized(pile) && pile.length_to.is_none();
    if let Some(pile) = haul.piles.iter_mut().find(alike) {
        within(pile.taken, left.n)?;
        pile.taken = pile.taken.saturating_add(left.n);
        return Ok(pile.id);
    }
    let name = Some(left.name.clone()).filter(|name| !name.is_empty());
    let facts = PileFacts { wood: wood.clone(), name, thickness, width, length, length_to: None };
    let label = next_label(haul)?;
    let id = new_pile(act, haul.id, label.clone(), &facts)?;
    haul.piles.push(Pile { label, wood, thickness, width, length, taken: left.n, ..Pile::new(id) });
    Ok(id)
}
