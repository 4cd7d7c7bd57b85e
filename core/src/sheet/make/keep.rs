//! A plan as it is kept and used: what was asked, of which pieces, and what came of it.

pub use super::again::{again, asked_again};
pub use super::changes::{changed_piles, changes, changes_with, is_possible, left_out_changed, taken_before, taken_by};
use super::{Given, Source, places};
use crate::ledger::decide::{LeftOver, Lying};
use crate::ledger::fold::{self, InUse, KeptPlan};
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
        let each = |source: &crate::sheet::plan::ready::Source| Count::try_from(source.ripped.max(source.tiles)).ok();
        let ripped = given.ready.sources.get(place).and_then(each);
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
        cut: Some(given.cut.parts.clone()).filter(|parts| !parts.is_empty()),
        sets: (!given.cut.parts.is_empty()).then_some(given.cut.sets),
        tile: if let Wish::Tiles(tiles) = &given.ready.wish { tiles.long } else { None },
        rows_cut: Some(given.cut.rows).filter(|n| 0 < *n),
        boards_cut: Some(given.cut.stayed).filter(|n| 0 < *n),
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
        let strips = Some(used.left_strips).filter(|n| 0 < *n).map(|n| (ready.size, n));
        let [thickness, width] = used.section;
        for (size, n) in used.remainders.iter().map(|rest| ([thickness, width, *rest], 1)).chain(strips) {
            let n = Count::try_from(n).unwrap_or(0);
            let (haul, of, length) = (from.pile.haul, from.pile.pile, size[2]);
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

/// Of the plans of a job those whose wood it has, all of it or some; the oldest first.
pub fn in_use<'a>(shop: &Shop, plans: &'a [KeptPlan]) -> Vec<InUse<'a>> {
    fold::in_use(shop.book, plans)
}

/// What the plans of a job need and it has no more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacking {
    /// Plans in use.
    pub plans: usize,
    /// Pieces they need, and such of them as it has.
    pub needs: Count,
    pub has: Count,
    pub piles: Vec<LackedPile>,
}

/// A pile that plans lack pieces of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LackedPile {
    pub at: Lying,
    /// Its name, else its letter.
    pub name: String,
    pub n: Count,
    /// Of these so many lie on the rack, and the job may take them.
    pub on_rack: Count,
}

/// What the plans of a job lack: some was put back by hand, or another took it. Nothing where they have all.
pub fn lacking(shop: &Shop, job: Id, plans: &[KeptPlan]) -> Option<Lacking> {
    lacking_of(shop, job, &fold::in_use(shop.book, plans))
}

/// The same of the plans it has wood for.
pub fn lacking_of(shop: &Shop, job: Id, all: &[InUse<'_>]) -> Option<Lacking> {
    let needs = all.iter().map(InUse::needs).fold(0, Count::saturating_add);
    let lacks = all.iter().map(InUse::lacks).fold(0, Count::saturating_add);
    if lacks == 0 {
        return None;
    }
    let mut piles: Vec<LackedPile> = vec![];
    for ((haul, pile), share) in all.iter().flat_map(|it| &it.shares).filter(|(_, share)| 0 < share.lacks) {
        let at = Lying { haul: *haul, pile: *pile };
        match piles.iter_mut().find(|one| one.at == at) {
            Some(one) => one.n = one.n.saturating_add(share.lacks),
            None => piles.push(LackedPile { at, name: String::new(), n: share.lacks, on_rack: 0 }),
        }
    }
    for one in &mut piles {
        let haul = fold::haul(shop.book, one.at.haul);
        if let Some(pile) = haul.as_ref().and_then(|haul| haul.pile(one.at.pile)) {
            one.name = pile.name.clone().unwrap_or_else(|| pile.label.clone());
            one.on_rack = one.n.min(pile.free_for(Some(job)));
        }
    }
    Some(Lacking { plans: all.len(), needs, has: needs.saturating_sub(lacks), piles })
}
