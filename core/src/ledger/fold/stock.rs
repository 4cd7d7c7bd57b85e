//! What a pile's entries say beyond its counts: how they came about, what was measured, what it is for, how it lies on the rack.

use super::haul::Piles;
use crate::haul::{Dampness, Measured, Pile, Since, Want, Weighed};
use crate::ledger::kind::stock::{EnoughSet, MoistureRead, PileCounted, PilePiecesWeighed};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Id, Key, Wall};

pub(super) fn apply(piles: &mut Piles, entry: &Entry) {
    match &entry.fact {
        Fact::PilePiecesWeighed(f) => weighed(piles.of(f.pile), entry.act, f),
        Fact::PieceMeasured(f) => {
            piles.of(f.pile).measured.push(Measured { thickness: f.thickness, width: f.width, length: f.length });
        }
        Fact::EnoughSet(f) => wanted(piles.of(f.pile), f),
        Fact::MoistureRead(f) => damp(piles.of(f.pile), f, entry.wall),
        Fact::PilePlaced(f) => piles.of(f.pile).stock.place = Some(f.place.clone()).filter(|place| !place.is_empty()),
        Fact::PiecesReserved(f) => piles.of(f.pile).set_apart(f.job, f.n),
        Fact::ReservationFreed(f) => piles.of(f.pile).set_free(f.job, f.n),
        Fact::PileSuits(f) => {
            piles.of(f.pile).suits.insert((f.sought, f.nth), f.suits);
        }
        Fact::LeftoversGone(f) => {
            if let Some(to) = f.to.clone().or_else(|| Key::read("burnt")) {
                piles.change(f.pile, |pile| pile.left_for(to, f.n));
            }
        }
        _ => {}
    }
}

/// The rack was counted. What a job took lay there no more when it was counted, though that is taken back since: it lies there now beside
/// what was counted.
pub(super) fn counted(book: &Book, piles: &mut Piles, (entry, f): (&Entry, &PileCounted)) {
    let of_pile = |fact: &Fact| match fact {
        Fact::PiecesTaken(it) => it.pile == f.pile,
        Fact::PiecesFreed(it) => it.pile == f.pile,
        Fact::PiecesLeft(it) => it.pile == f.pile,
        _ => false,
    };
    let mut since = Since::default();
    for (turned, stands) in book.turned_since(Subject::Haul(f.haul), entry, of_pile) {
        let back = match &turned.fact {
            Fact::PiecesTaken(it) => i64::from(it.n).saturating_neg(),
            Fact::PiecesFreed(it) => i64::from(it.n),
            Fact::PiecesLeft(it) if stands => i64::from(it.n),
            Fact::PiecesLeft(it) => {
                since.left_gone = since.left_gone.saturating_add(it.n);
                continue;
            }
            _ => continue,
        };
        since.back = since.back.saturating_add(if stands { back } else { back.saturating_neg() });
    }
    piles.change(f.pile, |pile| pile.walked_round(f.n, entry.wall, since));
}

/// Figures put right stand in the place of the old ones; they say nothing once their count is struck.
fn weighed(pile: &mut Pile, act: Option<Id>, f: &PilePiecesWeighed) {
    let old = pile.weighed.iter_mut().find(|weighed| weighed.counted == f.counted);
    let weighed = Weighed {
        counted: f.counted,
        sample: f.sample,
        sample_weight: f.sample_weight,
        weight: f.weight,
        tare: f.tare.unwrap_or(0),
        spread: f.spread.map(|spread| spread.0),
        singles: f.singles,
        counts: old.as_ref().is_none_or(|old| old.counts),
    };
    match old {
        Some(old) => *old = weighed,
        None if act.is_none_or(|act| act == f.counted) => pile.weighed.push(weighed),
        None => {}
    }
}

fn wanted(pile: &mut Pile, f: &EnoughSet) {
    let part = f.part.clone().unwrap_or_default();
    pile.wants.retain(|want| want.part != part || want.job != f.job);
    if 0 < f.wanted {
        let [pieces, gives] = [f.pieces, f.gives].map(|n| n.unwrap_or(1).max(1));
        pile.wants.push(Want { part, job: f.job, wanted: f.wanted, pieces, gives, length: None });
    }
}

fn damp(pile: &mut Pile, f: &MoistureRead, at: Wall) {
    let before = pile.dampness;
    let percent = f.percent.map(|percent| percent.0).or(before.and_then(|damp| damp.percent));
    let wet = f.wet.unwrap_or_else(|| f.percent.is_none() && before.is_some_and(|damp| damp.wet));
    pile.dampness = Some(Dampness { percent, wet, at });
}
