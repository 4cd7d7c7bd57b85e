//! Plans of a job, the saw's figures and the designs, from their entries.

use crate::ledger::kind::plan::{DesignKept, DesignOperation, DesignPart, PlanKept, SawSet};
use crate::ledger::{Entry, Fact};
use crate::plan::saw::{FIGURES, Saw};
use crate::plan::{Answered, Asked, post};
use crate::quantity::{Id, Length, Units, Wall};

/// A plan that was kept for a job.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptPlan {
    pub id: Id,
    pub at: Wall,
    pub plan: PlanKept,
    /// The wood was cut by it.
    pub used: bool,
}

/// A parts list with operations, to make again.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    pub id: Id,
    pub at: Wall,
    pub name: String,
    pub parts: Vec<DesignPart>,
    pub operations: Vec<DesignOperation>,
}

/// The figures of the saw as far as the maker said them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SawFacts([Option<Length>; FIGURES]);

impl KeptPlan {
    /// What was asked and what came of it, as they were; nothing where the text is no plan.
    pub fn told(&self) -> Option<(Asked, Answered)> {
        let asked = post::read(&self.plan.problem).and_then(post::take)?;
        Some((asked, post::read(&self.plan.answer).and_then(post::take_answer)?))
    }
}

impl Design {
    pub fn is_named(&self, name: &str) -> bool {
        self.name.trim().to_lowercase() == name.trim().to_lowercase()
    }
}

impl SawFacts {
    /// Each figure as said, else as usual.
    pub fn saw(&self, units: Units) -> Saw {
        let mut figures = Saw::usual(units).figures();
        for (figure, said) in figures.iter_mut().zip(self.0) {
            *figure = said.unwrap_or(*figure);
        }
        Saw::of(figures)
    }

    /// Whether the maker ever said one.
    pub fn are_said(&self) -> bool {
        self.0.iter().any(Option::is_some)
    }

    pub(super) fn apply(&mut self, f: &SawSet) {
        for (figure, said) in self.0.iter_mut().zip(f.figures()) {
            *figure = said.or(*figure);
        }
    }
}

impl SawSet {
    /// The figures in the order of [`Saw::figures`].
    pub fn figures(&self) -> [Option<Length>; FIGURES] {
        let (over, f) = ([self.over_length, self.over_width, self.over_thickness], self);
        let [long, wide, thick] = over;
        [f.kerf, f.square, f.end_trim, f.edge_trim, long, wide, thick, f.joint, f.keep, f.apart, f.end_piece, f.piece, f.strip]
    }

    /// From the figures in their order.
    pub fn of(figures: [Option<Length>; FIGURES]) -> SawSet {
        let [kerf, square, end_trim, edge_trim, over_length, over_width, over_thickness, joint, keep, apart, end_piece, piece, strip] =
            figures;
        SawSet { kerf, square, end_trim, edge_trim, over_length, over_width, over_thickness, joint, keep, apart, end_piece, piece, strip }
    }
}

pub(super) fn planned(plans: &mut Vec<KeptPlan>, entry: &Entry) {
    match &entry.fact {
        Fact::PlanKept(f) => plans.push(KeptPlan { id: entry.id, at: entry.wall, plan: f.clone(), used: false }),
        Fact::PlanUsed(f) => plans.iter_mut().filter(|kept| kept.id == f.plan).for_each(|kept| kept.used = true),
        _ => {}
    }
}

/// The same name replaces a design; an empty one ends it.
pub(super) fn kept(designs: &mut Vec<Design>, entry: &Entry, f: &DesignKept) {
    designs.retain(|design| !design.is_named(&f.name));
    if !f.parts.is_empty() || !f.operations.is_empty() {
        let (parts, operations) = (f.parts.clone(), f.operations.clone());
        designs.push(Design { id: entry.id, at: entry.wall, name: f.name.clone(), parts, operations });
    }
}
