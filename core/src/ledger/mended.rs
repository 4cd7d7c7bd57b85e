//! A count that was put right: the line stays as it was written, and the book goes by the last word on it, in the place of the line.

use super::decide::{Figures, OnTheScale};
use super::entry::Fact;
use super::kind::haul::{PiecesCounted, PiecesFreed, PiecesRecounted, PiecesRejected, PiecesSorted, PiecesTaken};
use super::kind::stock::{CountMended, LeftoversGone, PileCounted, PilePiecesWeighed};
use super::{Book, Entry, Subject};
use crate::quantity::{Count, Grams, Id, Key};

/// The fact as it was put right; none where it is no count of that pile.
pub fn mended(fact: &Fact, by: &CountMended) -> Option<Fact> {
    if of_pile(fact)? != (by.haul, by.pile) {
        return None;
    }
    let (n, why) = (by.n, by.why.as_deref());
    let words = |old: &Option<String>| why.map_or(old.clone(), |why| Some(why.to_owned()).filter(|why| !why.is_empty()));
    let key = why.and_then(Key::read);
    Some(match fact.clone() {
        Fact::PiecesCounted(f) => PiecesCounted { n, ..f }.into(),
        Fact::PiecesRecounted(f) => PiecesRecounted { n, why: words(&f.why), ..f }.into(),
        Fact::PileCounted(f) => PileCounted { n, why: words(&f.why), ..f }.into(),
        Fact::PiecesSorted(f) => PiecesSorted { n, ..f }.into(),
        Fact::PiecesRejected(f) => PiecesRejected { n, why: key.unwrap_or_else(|| f.why.clone()), ..f }.into(),
        Fact::PiecesTaken(f) => PiecesTaken { n, ..f }.into(),
        Fact::PiecesFreed(f) => PiecesFreed { n, ..f }.into(),
        Fact::LeftoversGone(f) => LeftoversGone { n, to: key.or_else(|| f.to.clone()), ..f }.into(),
        _ => return None,
    })
}

/// The figures a count by weight or by layers came about by, as they were put right last; none of a count that was tapped.
pub fn figures(book: &Book, counted: Id) -> Option<Figures> {
    let (entry, _) = book.entry(counted)?;
    let Fact::PiecesCounted(count) = &entry.fact else { return None };
    book.about(Subject::Haul(count.haul)).rev().find_map(|entry| match &entry.fact {
        Fact::PileLayersCounted(f) if f.counted == counted => {
            Some(Figures::Layers { layers: f.layers, per: f.per, rest: f.rest.unwrap_or(0) })
        }
        Fact::PilePiecesWeighed(f) if f.counted == counted => on_the_scale(f).map(Figures::Weight),
        _ => None,
    })
}

fn on_the_scale(f: &PilePiecesWeighed) -> Option<OnTheScale> {
    let grams = |grams: i64| Grams::new(grams).ok();
    let (sample_weight, shows, tare) = (grams(f.sample_weight)?, grams(f.weight)?, grams(f.tare.unwrap_or(0))?);
    Some(OnTheScale { sample: f.sample, sample_weight, shows, tare, spread: f.spread.map(|spread| spread.0), singles: f.singles })
}

/// The pile a count that can be mended is of, with its haul.
pub fn of_pile(fact: &Fact) -> Option<(Id, Id)> {
    Some(match fact {
        Fact::PiecesCounted(f) => (f.haul, f.pile),
        Fact::PiecesRecounted(f) => (f.haul, f.pile),
        Fact::PileCounted(f) => (f.haul, f.pile),
        Fact::PiecesSorted(f) => (f.haul, f.pile),
        Fact::PiecesRejected(f) => (f.haul, f.pile),
        Fact::PiecesTaken(f) => (f.haul, f.pile),
        Fact::PiecesFreed(f) => (f.haul, f.pile),
        Fact::LeftoversGone(f) => (f.haul, f.pile),
        _ => return None,
    })
}

/// The pieces of a count that can be mended.
pub fn pieces(fact: &Fact) -> Option<Count> {
    Some(match fact {
        Fact::PiecesCounted(f) => f.n,
        Fact::PiecesRecounted(f) => f.n,
        Fact::PileCounted(f) => f.n,
        Fact::PiecesSorted(f) => f.n,
        Fact::PiecesRejected(f) => f.n,
        Fact::PiecesTaken(f) => f.n,
        Fact::PiecesFreed(f) => f.n,
        Fact::LeftoversGone(f) => f.n,
        _ => return None,
    })
}

/// Whether a count can be put right by its number. What a plan took or put back goes with that plan alone.
pub fn can_be_mended(book: &Book, entry: &Entry) -> bool {
    pieces(&entry.fact).is_some() && !(is_of_job(&entry.fact) && is_of_plan(book, entry))
}

fn is_of_job(fact: &Fact) -> bool {
    matches!(fact, Fact::PiecesTaken(_) | Fact::PiecesFreed(_))
}

/// Whether its act used a plan, or took one back.
fn is_of_plan(book: &Book, entry: &Entry) -> bool {
    let is_use = |id: &Id| book.entry(*id).is_some_and(|(entry, _)| matches!(entry.fact, Fact::PlanUsed(_)));
    let of_act = entry.act.map(|act| book.act(act)).unwrap_or_default();
    of_act
        .iter()
        .any(|id| is_use(id) || matches!(book.entry(*id), Some((Entry { fact: Fact::Struck(f), .. }, _)) if f.entries.iter().any(is_use)))
}
