//! A plan as it is shown: the picture to scale, what is cut from which piece, what is used and left, and how good it is.

use super::{Given, wood};
use crate::plan::{Answered, Asked, Made, Sense};
use crate::quantity::{Count, Decimal, Length, Mass, Volume};

/// A part of a picture: a piece with its mark, by its place and size from the left top.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Rect {
    pub at: [Length; 2],
    pub size: [Length; 2],
    /// The letter of its pile, the number of its cut, or the name of its part.
    pub mark: String,
    /// The cut it comes from, by its place in the list.
    pub cut: Option<usize>,
    /// It was cut shorter, or is one of several: drawn darker, with a notch.
    pub is_cut: bool,
}

/// One picture: a top, or a board that is cut so many times alike.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Picture {
    /// What it is of, where there are several: the letter of its pile.
    pub of: Option<char>,
    pub times: Count,
    pub size: [Length; 2],
    pub pieces: Vec<Rect>,
}

/// One line at the saw: pieces of a pile that are cut alike.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cut {
    /// The pile, by its place.
    pub from: usize,
    pub times: Count,
    /// Its number in the picture, where it has one.
    pub number: Option<Count>,
    /// It stays whole, squared to its one length.
    pub whole: bool,
    /// Bands ripped first: how wide each is. Empty where it is only crosscut.
    pub bands: Vec<Band>,
    /// How much of its length is used, where it is shortened first.
    pub stretch: Option<Length>,
    /// Crosscut into sections first, each then ripped.
    pub cross: bool,
    /// Goes back to the rack, of each.
    pub left: Option<Length>,
}

/// A band, or the whole strip: its width where it is ripped, and the lengths cut from it, alike ones together.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Band {
    pub size: Option<Length>,
    pub pieces: Vec<(Length, Count)>,
}

/// What a plan uses of a pile.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Used {
    pub from: usize,
    /// Strips, or pieces where they are not ripped.
    pub strips: Count,
    pub of: Count,
    /// Pieces of the pile.
    pub pieces: Count,
}

/// How near the plan is to the best there can be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gap {
    /// No plan does better.
    Best,
    /// As many are made as can be, but from perhaps so much less of the wood, as a share.
    Wood(Decimal),
    /// No plan reaches this many.
    Never(i128),
    /// Nobody knows yet.
    Open,
}

/// A plan as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// Rows or sets made; 1 or 0 for a field.
    pub made: i128,
    pub wanted: Option<i128>,
    pub gap: Gap,
    /// No plan makes as many from fewer pieces than these, where that is so of this plan.
    pub fewest: bool,
    pub pictures: Vec<Picture>,
    pub cuts: Vec<Cut>,
    pub used: Vec<Used>,
    /// What goes back to the rack of pieces that were cut, each length once with how many.
    pub left: Vec<(Length, Count)>,
    /// Lost of the length that is used, for a top or sticks.
    pub lost: Option<[Length; 2]>,
    /// Finished in the plan, and taken from the rack less what goes back.
    pub finished: Volume,
    pub taken: Volume,
    pub saw_cuts: Count,
    /// Square metres, and grams of glue for them.
    pub glue: Option<(f64, f64)>,
    pub weight: Option<Mass>,
    /// How far a glued top moves across its width between the room's moistures, at the most.
    pub moves: Option<Length>,
    /// What is short for one more: part by name, and how many pieces.
    pub short: Vec<(String, Count)>,
    /// The finished size of a field.
    pub outer: Option<[Length; 3]>,
}

impl Shown {
    /// Lost of what was taken, as a share.
    pub fn waste(&self) -> Option<Decimal> {
        self.finished.share_of(self.taken).ok().map(|share| Decimal::ONE.saturating_sub(share))
    }

    /// Pieces used, of pieces there were.
    pub fn strips(&self) -> (Count, Count) {
        let sum = |of: fn(&Used) -> Count| self.used.iter().map(of).fold(0, Count::saturating_add);
        (sum(|used| used.strips), sum(|used| used.of))
    }

    /// Pieces of piles that are used.
    pub fn pieces(&self) -> Count {
        self.used.iter().fold(0, |sum: Count, used| sum.saturating_add(used.pieces))
    }
}

/// What a plan shows; nothing where it does not belong to what was asked, or breaks one of its rules.
pub fn shown(given: &Given, answered: &Answered, known: &wood::Known) -> Option<Shown> {
    let mut shown = match (&given.asked, &answered.plan) {
        (Asked::Rows(problem), Made::Rows(plan)) => super::wood::top(given, problem, plan, known)?,
        (Asked::Parts(problem), Made::Parts(plan)) => super::boards::shown(given, problem, plan, known)?,
        (Asked::Sticks(problem), Made::Sticks(plan)) => super::boards::of_sticks(given, problem, plan)?,
        (Asked::Field(problem), Made::Field(plan)) => super::boards::of_field(given, problem, plan)?,
        _ => return None,
    };
    shown.gap = gap(given, answered);
    Some(shown)
}

/// The first figure in which worth and bound differ.
fn gap(given: &Given, answered: &Answered) -> Gap {
    if answered.is_proven() {
        return Gap::Best;
    }
    let differ = answered.worth.iter().zip(&answered.bound).enumerate().find(|(_, (worth, bound))| worth != bound);
    let senses = given.asked.senses();
    match differ {
        None => Gap::Open,
        Some((0, (_, bound))) if senses.first() == Some(&Sense::More) => Gap::Never(bound.saturating_add(1)),
        Some((1, (worth, bound))) if senses.first() == Some(&Sense::More) => less(given, *worth, *bound, answered),
        Some(_) => Gap::Open,
    }
}

/// At most such a share less wood: of the length or volume used; of rows it is the length lost beside the finished.
fn less(given: &Given, worth: i128, bound: i128, answered: &Answered) -> Gap {
    let finished = match &given.asked {
        Asked::Rows(problem) => answered.worth.first().copied().unwrap_or(0).saturating_mul(i128::from(problem.length)),
        _ => 0,
    };
    let whole = |n: i128| Decimal::try_from_i128_with_scale(n, 0).ok();
    let (gap, of) = (worth.saturating_sub(bound), worth.saturating_add(finished));
    // In thousandths, up: a bound is never said to be nearer than it is.
    let thousandths = gap.saturating_mul(1_000).saturating_add(of).saturating_sub(1).checked_div(of);
    thousandths.and_then(whole).map_or(Gap::Open, |n| Gap::Wood(n.saturating_mul(Decimal::new(1, 3))))
}
