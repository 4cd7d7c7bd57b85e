//! What of the wood of a plan nobody has sorted, and how many of it are likely good. Piles of one wood from one haul are good or bad together, as
//! the outlook draws them: what is likely of them is told of all of them, so both say the same of the same boards.

use super::{drawn, found, share};
use crate::haul::Pile;
use crate::ledger::fold;
use crate::plan::outlook::{Pieces, SEED, likely_good};
use crate::quantity::{Count, Decimal, Listed};
use crate::refusal::Answer;
use crate::sheet::make::cut::{Ticks, boards_cut_of};
use crate::sheet::make::{Given, Source};
use crate::sheet::plan::PlanSheet;
use crate::sheet::shop::Shop;

/// Pieces that nobody has sorted, of which a plan takes some: of one pile, or of all that are good or bad together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unsorted {
    /// Their piles, by their places among the sources.
    pub sources: Vec<usize>,
    pub n: Count,
    /// So many of them are good, four times in five.
    pub likely: Count,
    /// The share of rejects, in the mean: of so few that not one is likely good it says more.
    pub rejects: Decimal,
    /// What the plan takes more of than is likely good.
    pub lacks: Option<Lacks>,
}

/// Of some of these piles the plan takes more than are likely good, of each by itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacks {
    pub sources: Vec<usize>,
    pub takes: Count,
    /// So many of those that may be taken are likely good, with those that are known to be.
    pub good: Count,
}

impl Lacks {
    /// How many fewer that is than the plan takes.
    pub fn n(&self) -> Count {
        self.takes.saturating_sub(self.good)
    }
}

/// Of one pile, what is not sorted.
#[derive(Clone, Debug, PartialEq)]
struct OfPile {
    source: usize,
    n: Count,
    /// The plan takes so many of the pile, and so many that may be taken are known to be good.
    takes: Count,
    sure: Count,
    rejects: Decimal,
    pieces: Pieces,
}

/// So many of these are good, four times in five, by the draws of the outlook.
fn likely(all: &[&OfPile]) -> Count {
    let pieces = all.iter().map(|it| it.pieces).listed();
    Count::try_from(likely_good(&pieces, SEED.into())).unwrap_or(0)
}

/// Those with what they are good or bad together with.
fn told(all: &[&OfPile]) -> Unsorted {
    let sources = |all: &[&OfPile]| all.iter().map(|it| it.source).listed();
    let sum = |all: &[&OfPile], of: fn(&OfPile) -> Count| all.iter().fold(0, |sum: Count, it| sum.saturating_add(of(it)));
    let good = |all: &[&OfPile]| sum(all, |it| it.sure).saturating_add(likely(all));
    let short: Vec<&OfPile> = all.iter().copied().filter(|it| good(&[*it]) < it.takes).collect();
    let lacks = Lacks { sources: sources(&short), takes: sum(&short, |it| it.takes), good: good(&short) };
    let rejects = all.first().map(|it| it.rejects).unwrap_or_default();
    let lacks = Some(lacks).filter(|lacks| 0 < lacks.n());
    Unsorted { sources: sources(all), n: sum(all, |it| it.n), likely: likely(all), rejects, lacks }
}

/// What a plan takes that is not sorted yet, of what can be taken of each pile it needs more of than is known to be good, with what the job has of
/// it. Of a plan that is used, by its `ticks`: of its boards that the job has and that are not cut, as many as jobs have more of the pile than was
/// ever sorted as good. Bought boards were looked at.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`], [`crate::refusal::Refusal::NotThere`].
pub fn not_sorted(shop: &Shop, (given, sheet): (&Given, &PlanSheet), ticks: Option<&Ticks>) -> Answer<Vec<Unsorted>> {
    let takes = |(place, source): (usize, &Source), needs: Count| {
        let haul = fold::haul(shop.book, source.pile.haul).filter(|haul| !haul.bought)?;
        let pile = haul.pile(source.pile.pile)?;
        if let Some(ticks) = ticks {
            let cut = boards_cut_of((given, sheet), ticks, place);
            let has = pile.in_job(given.ask.job).min(needs).saturating_sub(cut);
            return Some(pile.used().saturating_sub(pile.sorted_good).min(has)).filter(|n| 0 < *n);
        }
        let n = never_sorted(pile, source, given.own.get(place).copied().unwrap_or(0));
        (0 < n && source.n.saturating_sub(n) < needs).then_some(n)
    };
    // Where it lacks some, what is to be got counts every piece that lies there.
    let used_of = |place: usize| sheet.used.iter().find(|used| used.source == place).map_or(0, |used| used.pieces);
    let needs = |place: usize| if ticks.is_some() || sheet.short.is_empty() { used_of(place) } else { Count::MAX };
    let used = given.sources.iter().enumerate().filter(|(_, source)| source.bought.is_none());
    let all = used.filter_map(|(place, source)| Some((place, source, takes((place, source), needs(place))?))).listed();
    let hauls = if all.is_empty() { vec![] } else { fold::hauls(shop.book).listed() };
    let one = |(place, source, n): (usize, &Source, Count)| {
        let (haul, pile) = found(&hauls, source)?;
        let share = share(&hauls, haul, pile)?;
        let rejects = share.mean();
        let of_pile = drawn((haul, pile), n, share)?;
        // What jobs have of a pile are other pieces of it.
        let pieces = Pieces { lots: of_pile.lots ^ u64::from(source.in_job), ..of_pile };
        Ok(OfPile { source: place, n, takes: used_of(place), sure: source.n.saturating_sub(n), rejects, pieces })
    };
    let all: Vec<OfPile> = all.into_iter().map(one).collect::<Answer<_>>()?;
    let with = |kin: u64| all.iter().filter(|it| it.pieces.kin == kin).collect::<Vec<_>>();
    let is_first = |nth: usize, it: &OfPile| !all.iter().take(nth).any(|before| before.pieces.kin == it.pieces.kin);
    Ok(all.iter().enumerate().filter(|(nth, it)| is_first(*nth, it)).map(|(_, it)| told(&with(it.pieces.kin))).listed())
}

/// Pieces that nobody has looked at yet, as a plan is told of them: of those that lie there; and of those that jobs have, with these also `own`
/// of the pile that the job would take again, what was never sorted as good.
fn never_sorted(pile: &Pile, source: &Source, own: Count) -> Count {
    let of_jobs = pile.used().saturating_sub(pile.sorted_good);
    if source.in_job {
        return of_jobs.min(source.n);
    }
    let lying = pile.movable().min(source.n.saturating_sub(own));
    lying.saturating_add(of_jobs.min(own))
}
