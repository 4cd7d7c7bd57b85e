//! What can I make: from what the maker asks and the piles there are to a problem in whole numbers, and from its plan back to what
//! is shown and taken.

mod boards;
pub mod keep;
mod listed;
pub mod shown;
mod sticks;
mod tiles;
mod top;
mod wood;

use super::rack::{RackPile, rack};
use super::shop::Shop;
use crate::ledger::decide::Lying;
use crate::ledger::fold::{self, Part};
use crate::ledger::kind::plan::Shape;
use crate::plan::field::problem::Pattern;
use crate::plan::saw::Saw;
use crate::plan::Asked;
use crate::quantity::{Count, Id, Length, Units};
use crate::refusal::Answer;

/// What a top is: finished sides, how many rows at most, and how its joints lie.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Top {
    pub length: Length,
    /// Across all its rows.
    pub width: Length,
    pub thickness: Option<Length>,
    /// As wide as the pieces allow, where nothing is said.
    pub rows: Option<Count>,
    pub apart: Length,
    /// Strips may be cut into pieces on purpose.
    pub split: bool,
}

/// What a field of tiles is: width, depth and height as far as they matter, and how near is near enough.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tiles {
    pub sides: [Option<Length>; 3],
    pub tolerance: Length,
    pub patterns: Vec<Pattern>,
    /// Two woods by turns, too.
    pub two: bool,
}

/// What is to be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wish {
    Top(Top),
    /// The job's parts list, so many pieces of the job; as many as it gives where nothing is said.
    Parts(Option<Count>),
    Sticks(Option<Count>),
    Tiles(Tiles),
}

/// Pieces there are to plan with: of a pile on the rack, or of it in the job already.
#[derive(Clone, Debug, PartialEq)]
pub struct Source {
    pub pile: RackPile,
    pub in_job: bool,
    pub n: Count,
    pub bought: bool,
}

/// A pile by where it lies, and whether its pieces are in the job.
pub type Which = (Lying, bool);

/// What the maker asks.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    pub job: Id,
    pub wish: Wish,
    /// Piles that fit and are not to be used; and those in the job that are to be.
    pub turned: Vec<Which>,
}

/// Why pieces can't be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unfit {
    SizeMissing,
    TooThin,
    TooNarrow,
    TooShort,
    /// Shorter than the least the maker set for a machine.
    UnderMachine(Length),
    /// Of no part's wood, or for no part.
    NoPart,
}

/// Why there is nothing to plan.
#[derive(Clone, Debug, PartialEq)]
pub enum WhyNot {
    NoParts,
    /// No pieces at all.
    NoPiles,
    /// None of those that are chosen fits.
    NoneFits,
    /// No chosen pile fits this part.
    NoneForPart(String),
    Refused(crate::refusal::Refusal),
}

/// A pile of the problem: its source, how many strips a piece of it is ripped into, its letter.
#[derive(Clone, Debug, PartialEq)]
pub struct From {
    pub source: Source,
    pub rips: Count,
    pub letter: char,
}

/// A problem in whole numbers, with what it is about.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    pub job: Id,
    pub asked: Asked,
    /// What a length of the problem counts in.
    pub unit: Length,
    pub from: Vec<From>,
    pub parts: Vec<Part>,
    /// The finished top: width across the rows, and thickness.
    pub width: Length,
    pub thickness: Option<Length>,
    pub saw: Saw,
    pub units: Units,
}

impl Source {
    pub fn which(&self) -> Which {
        (Lying { haul: self.pile.haul, pile: self.pile.pile }, self.in_job)
    }
}

impl Wish {
    pub fn shape(&self) -> Shape {
        match self {
            Wish::Top(_) => Shape::Rows,
            Wish::Parts(_) => Shape::Parts,
            Wish::Sticks(_) => Shape::Sticks,
            Wish::Tiles(_) => Shape::Field,
        }
    }
}

/// What planning goes by: the job's parts and units, the saw, the least of the machines.
struct Bench {
    parts: Vec<Part>,
    units: Units,
    saw: Saw,
    /// The least length to be planed, and to be ripped.
    planed: Length,
    ripped: Length,
}

fn bench(shop: &Shop, job: Id) -> Answer<Bench> {
    let job = shop.job(job)?;
    let machines = &shop.workshop.wood.machines;
    let least = |names: &[&str]| {
        let of = machines.iter().filter(|(key, _)| names.contains(&key.as_str())).filter_map(|(_, least)| least.length);
        of.max().unwrap_or(Length::ZERO)
    };
    let (planed, ripped) = (least(&["jointer", "planer", "drum-sander"]), least(&["table-saw", "bandsaw"]));
    Ok(Bench { saw: shop.workshop.saw.saw(job.units), parts: job.parts, units: job.units, planed, ripped })
}

/// The pieces there are to plan with: on the rack, then those the job has.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`].
pub fn sources(shop: &Shop, job: Id) -> Answer<Vec<Source>> {
    let piles = rack(shop, job)?;
    let one = |pile: &RackPile, in_job: bool, n: Count| {
        let bought = fold::is_bought(shop.book, pile.haul);
        (0 < n).then(|| Source { pile: pile.clone(), in_job, n, bought })
    };
    let on_rack = piles.iter().filter_map(|pile| one(pile, false, pile.free));
    Ok(on_rack.chain(piles.iter().filter_map(|pile| one(pile, true, pile.in_job))).collect())
}

/// Each of the pieces with why it can't be used; nothing where it fits.
///
/// # Errors
/// As [`sources`].
pub fn fitting(shop: &Shop, ask: &Ask) -> Answer<Vec<(Source, Option<Unfit>)>> {
    let bench = bench(shop, ask.job)?;
    let unfit = |source: &Source| match &ask.wish {
        Wish::Top(top) => top::unfit(top, &bench, source),
        Wish::Parts(_) => listed::unfit(&bench, source, listed::takes),
        Wish::Sticks(_) => listed::unfit(&bench, source, sticks::takes),
        Wish::Tiles(tiles) => tiles::unfit(tiles, &bench, source),
    };
    Ok(sources(shop, ask.job)?.into_iter().map(|source| (unfit(&source), source)).map(|(why, source)| (source, why)).collect())
}

/// Whether pieces that fit are to be used: those on the rack unless they are left out, those of the job where they are asked for.
pub fn is_used(ask: &Ask, source: &Source) -> bool {
    ask.turned.contains(&source.which()) == source.in_job
}

/// The problem the maker asks.
///
/// # Errors
/// [`WhyNot`].
pub fn given(shop: &Shop, ask: &Ask) -> Result<Given, WhyNot> {
    let bench = bench(shop, ask.job).map_err(WhyNot::Refused)?;
    let all = fitting(shop, ask).map_err(WhyNot::Refused)?;
    if all.is_empty() {
        return Err(WhyNot::NoPiles);
    }
    let fit: Vec<Source> = all.into_iter().filter(|(source, why)| why.is_none() && is_used(ask, source)).map(|(source, _)| source).collect();
    if fit.is_empty() {
        return Err(WhyNot::NoneFits);
    }
    let mut given = match &ask.wish {
        Wish::Top(top) => top::given(top, bench, fit),
        Wish::Parts(sets) => listed::given(*sets, bench, fit)?,
        Wish::Sticks(sets) => sticks::given(*sets, bench, fit)?,
        Wish::Tiles(tiles) => tiles::given(tiles, bench, fit),
    };
    given.job = ask.job;
    weigh(shop, &mut given);
    given.asked.check().map_err(WhyNot::Refused)?;
    Ok(given)
}

/// What a litre of each pile of a field weighs, in grams.
fn weigh(shop: &Shop, given: &mut Given) {
    let Asked::Field(problem) = &mut given.asked else { return };
    for (pile, from) in problem.piles.iter_mut().zip(&given.from) {
        let wood = from.source.pile.wood.as_ref().map(crate::quantity::Key::as_str);
        pile.density = shop.workshop.wood.woods.find_or_guess(wood).density.as_kg_per_cubic_metre().round() as i64;
    }
}

impl Given {
    fn of(bench: Bench, asked: Asked, unit: Length, from: Vec<From>) -> Given {
        let Bench { parts, units, saw, .. } = bench;
        let job = Id::new(crate::quantity::Moment::at(0), [0; 10]);
        Given { job, asked, unit, from, parts, width: Length::ZERO, thickness: None, saw, units }
    }

    /// A length of the problem as it is on the rule.
    pub fn length(&self, n: i64) -> Length {
        Length::nm(n.saturating_mul(self.unit.as_nm()).max(0)).unwrap_or_default()
    }
}

/// Piles in their order, each ripped into so many strips.
fn lettered(sources: Vec<Source>, rips: impl Fn(&Source) -> Count) -> Vec<From> {
    let letters = ('A'..='Z').chain('a'..='z').chain(std::iter::repeat('z'));
    sources.into_iter().zip(letters).map(|(source, letter)| From { rips: rips(&source).max(1), source, letter }).collect()
}

/// The greatest length that all these are whole numbers of; a nanometre where there are none.
fn common(lengths: impl Iterator<Item = i64>) -> i64 {
    lengths.fold(0, |mut a: i64, mut b| {
        while b != 0 {
            (a, b) = (b, a.checked_rem(b).unwrap_or(0));
        }
        a
    })
    .max(1)
}

/// Divides what is counted in nanometres by what they have in common; returns that.
fn in_common<const N: usize>(fixed: [&mut i64; N], others: Vec<&mut i64>) -> Length {
    let mut all: Vec<&mut i64> = fixed.into_iter().chain(others).collect();
    let unit = common(all.iter().map(|length| **length));
    for length in &mut all {
        **length = length.checked_div(unit).unwrap_or(0);
    }
    Length::nm(unit).unwrap_or_default()
}

/// The figures of a problem's name: its place.
fn named(place: usize) -> String {
    place.to_string()
}

#[cfg(test)]
mod tests;
