//! What is left of pieces a job took goes back to the rack, as good pieces of a pile of their size.

use super::haul::{PileFacts, new_pile, next_label, within};
use super::{Act, rests};
use crate::haul::{Haul, Pile};
use crate::ledger::fold;
use crate::ledger::kind::book::Struck;
use crate::ledger::kind::haul::{PiecesLeft, PileDescribed};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Count, Id, Length, Listed};
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

/// Where all that plans took of a pile for a job goes back whole, what was to be left of it was never cut off: it lies on the rack no more,
/// but for what is used already. What goes back is first what plans took, the rest what was taken by hand.
pub(super) fn whole_again(book: &Book, (haul, of, job): (Id, Id, Id), n: Count, act: &mut Act) {
    let is_left = |fact: &Fact| matches!(fact, Fact::PiecesLeft(f) if (f.of, f.job) == (of, job));
    let (mut taken, mut lacks, mut left): (Count, Count, Vec<Id>) = (0, 0, vec![]);
    let by_plan = |entry: &Entry| {
        entry.act.is_some_and(|act| book.act(act).into_iter().filter_map(|id| book.entry(id)).any(|(it, _)| is_left(&it.fact)))
    };
    for entry in book.about(Subject::Haul(haul)) {
        match &entry.fact {
            Fact::PiecesTaken(f) if (f.pile, f.job) == (of, job) && by_plan(entry) => taken = taken.saturating_add(f.n),
            // What is taken again is first what plans lack.
            Fact::PiecesTaken(f) if (f.pile, f.job) == (of, job) => {
                let again = f.n.min(lacks);
                (taken, lacks) = (taken.saturating_add(again), lacks.saturating_sub(again));
            }
            Fact::PiecesFreed(f) if (f.pile, f.job) == (of, job) => {
                lacks = lacks.saturating_add(f.n.min(taken));
                taken = taken.saturating_sub(f.n);
                lacks = if taken == 0 { 0 } else { lacks };
            }
            fact if is_left(fact) => left.push(entry.id),
            _ => {}
        }
    }
    if taken == 0 || n < taken {
        return;
    }
    let entries = left.into_iter().filter(|id| rests::allowed(book, &[*id]).is_ok()).listed();
    if !entries.is_empty() {
        act.add(Struck { entries });
    }
}

/// What plans left of a pile has the sides it has now where it was taken from the board as that was: these are corrected with the pile, and
/// so is what is left of them in turn. A pile that holds other pieces too stays as it is.
pub(super) fn corrected(book: &Book, haul: &Haul, (of, facts): (&Pile, &PileFacts), act: &mut Act) {
    let mut open: Vec<(Id, [Corrected; 2])> = vec![(of.id, [(of.thickness, facts.thickness), (of.width, facts.width)])];
    let mut done = vec![of.id];
    while let Some((of, sides)) = open.pop() {
        for pile in left_of(book, haul, of) {
            if done.contains(&pile.id) {
                continue;
            }
            let goes = |(was, is): Corrected, side: Option<Length>| is.filter(|is| was.is_some() && side == was && Some(*is) != was);
            let [thickness, width] = [goes(sides[0], pile.thickness), goes(sides[1], pile.width)];
            if thickness.or(width).is_none() {
                continue;
            }
            let (wood, name, length, length_to) = (None, None, None, None);
            act.add(PileDescribed { haul: haul.id, pile: pile.id, wood, name, thickness, width, length, length_to });
            done.push(pile.id);
            open.push((pile.id, [(pile.thickness, thickness), (pile.width, width)]));
        }
    }
}

/// A side as it was, and as it is said now.
type Corrected = (Option<Length>, Option<Length>);

/// The piles that hold nothing but what plans left of a pile.
pub fn left_of<'a>(book: &Book, haul: &'a Haul, of: Id) -> Vec<&'a Pile> {
    let left = book.about(Subject::Haul(haul.id)).filter_map(|entry| if let Fact::PiecesLeft(f) = &entry.fact { Some(f) } else { None });
    let left = left.listed();
    let alone = |pile: &&Pile| {
        let mut into = left.iter().filter(|f| f.pile == pile.id).peekable();
        0 < pile.left && pile.left == pile.taken && into.peek().is_some() && into.all(|f| f.of == of)
    };
    haul.piles.iter().filter(alone).listed()
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
