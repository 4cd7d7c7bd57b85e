//! A plan as it is kept and used: what was asked, of which pieces, and what came of it.

pub use super::again::{again, asked_again};
pub use super::changes::{changes, is_possible, taken_before};
use super::{Given, Source, places};
use crate::ledger::decide::LeftOver;
use crate::ledger::fold::{self, KeptPlan};
use crate::ledger::kind::plan::{DesignPart, PlanKept, PlanPile, SawSet};
use crate::plan::{Answered, post};
use crate::quantity::{Count, Id, Key, Length};
use crate::sheet::Shop;
use crate::sheet::plan::PlanSheet;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::wish::{Wanted, Wish};

/// The facts of a plan.
pub fn kept(given: &Given, answered: &Answered, sheet: &PlanSheet) -> PlanKept {
    let piles = given.sources.iter().enumerate().map(|(place, source)| {
        let used = used_of(sheet, place);
        let ripped = given.ready.sources.get(place).and_then(|source| Count::try_from(source.ripped).ok());
        let [thickness, width, length] = [source.pile.thickness, source.pile.width, source.pile.length];
        PlanPile {
            haul: source.pile.haul,
            pile: source.pile.pile,
            n: source.n,
            rips: ripped.filter(|rips| 1 < *rips),
            used: Some(used).filter(|used| 0 < *used),
            in_job: source.in_job.then_some(true),
            thickness,
            width,
            length,
            letter: given.ready.sources.get(place).map(|source| source.letter.clone()),
            wood: source.pile.wood.clone(),
        }
    });
    let (width, thickness, strip) = match &given.ready.wish {
        Wish::Panel(panel) => (panel.width, Some(panel.thickness), Some(panel.strip)),
        _ => (None, None, None),
    };
    PlanKept {
        job: given.ask.job,
        shape: given.ask.what.shape(),
        unit: Length::nm(given.ready.unit).unwrap_or_default(),
        piles: piles.collect(),
        problem: post::write(&post::put(&given.ready.asked)),
        answer: post::write(&post::put_answer(answered)),
        width,
        thickness,
        saw: Some(said(&given.ready.figures)),
        parts: Some(parts(given)).filter(|parts| !parts.is_empty()),
        strip,
    }
}

/// The figures of the saw as they are said.
fn said(figures: &Figures) -> SawSet {
    let lengths = places(&mut figures.clone()).map(|length| Some(*length));
    SawSet::of(lengths, Count::try_from(figures.spread).ok())
}

/// The parts it was made for, then those that were left out.
fn parts(given: &Given) -> Vec<DesignPart> {
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return vec![] };
    let one = |part: &Wanted| {
        let ([thickness, width, length], n) = (part.size, Count::try_from(part.n).unwrap_or(Count::MAX));
        DesignPart { name: part.name.clone(), n, thickness, width, length, wood: part.wood.as_deref().and_then(Key::read) }
    };
    let [thickness, width, length] = [Length::ZERO; 3];
    let without = |name: &String| DesignPart { name: name.clone(), n: 0, thickness, width, length, wood: None };
    list.parts.iter().map(one).chain(given.ask.without.iter().map(without)).collect()
}

/// What goes back to the rack, by pile and size: remainders, and strips that were ripped and not used, if they are long enough to keep.
/// `name` says what a new pile of them is called.
pub fn left_over(given: &Given, sheet: &PlanSheet, name: &dyn Fn(&Source, Length) -> String) -> Vec<LeftOver> {
    let mut all: Vec<LeftOver> = vec![];
    for used in &sheet.used {
        let Some((from, ready)) = given.sources.get(used.source).zip(given.ready.sources.get(used.source)) else { continue };
        let [thickness, width, length] = ready.size;
        let strips = Some(used.left_strips).filter(|n| 0 < *n).map(|n| (length, n));
        for (length, n) in used.remainders.iter().map(|rest| (*rest, 1)).chain(strips) {
            let n = Count::try_from(n).unwrap_or(0);
            let (haul, of, size) = (from.pile.haul, from.pile.pile, [thickness, width, length]);
            match all.iter_mut().find(|one| (one.of, one.size) == (of, size)) {
                Some(one) => one.n = one.n.saturating_add(n),
                None => all.push(LeftOver { haul, of, n, size, name: name(from, length) }),
            }
        }
    }
    all
}

/// Pieces a plan uses of a pile, by its place.
pub(super) fn used_of(sheet: &PlanSheet, place: usize) -> Count {
    sheet.used.iter().filter(|used| used.source == place).fold(0, |sum: Count, used| sum.saturating_add(used.pieces))
}

/// The last plan whose wood was taken for the job.
pub fn last_used(plans: &[KeptPlan]) -> Option<&KeptPlan> {
    plans.iter().rev().find(|plan| plan.used)
}

/// Whether its job still has the pieces a plan uses: they may have been put back since.
pub fn has_wood(shop: &Shop, plan: &PlanKept) -> bool {
    fold::has_wood(shop.book, plan)
}

/// Of the plans of a job those whose wood it still has, all together; the oldest first.
pub fn with_wood<'a>(shop: &Shop, plans: &'a [KeptPlan]) -> Vec<&'a KeptPlan> {
    fold::with_wood(shop.book, plans)
}

/// How many pieces a used plan took from the rack.
pub fn pieces_taken(shop: &Shop, plan: Id) -> Count {
    fold::pieces_taken(shop.book, plan).into_iter().map(|(_, n)| n).fold(0, Count::saturating_add)
}
