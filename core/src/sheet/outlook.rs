//! How many of a job or a design the wood gives, while it isn't sorted: the boards and parts of its plan, and what is known of their rejects.

mod unsorted;

use super::make::{Ask, Given, Source, What, Which, WhyNot, given_of, is_used, sources};
use super::plan::PlanSheet;
use super::plan::wish::{Wanted, Wish};
use super::shop::Shop;
use crate::haul::rejects::{RejectShare, Seen};
use crate::haul::{Haul, Pile};
use crate::ledger::fold::{self, Design, Job, Part};
use crate::ledger::kind::job::{For, JobBegan};
use crate::plan::Asked;
use crate::plan::outlook::{Hoped, Known, Pieces};
use crate::quantity::{Count, Currency, Id, Listed, Units, Wall};
use crate::refusal::{Answer, Refusal};
pub use unsorted::{Lacks, Unsorted, not_sorted};

/// What is to be reckoned, and the parts by their places in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wood {
    pub hoped: Hoped,
    pub parts: Vec<String>,
    pub rejects: Rejects,
    /// What a set is of, and the piles in their order.
    wanted: Vec<Wanted>,
    piles: Vec<Which>,
}

/// What the rejects among the unsorted pieces are known by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rejects {
    /// By those met so far.
    Met,
    /// Of some piles nothing like it was sorted yet: there it is a guess.
    PartlyGuessed,
    /// Nothing was sorted yet.
    Guessed,
}

impl Rejects {
    /// Of piles that are not sorted, each by whether its rejects are a guess.
    fn of(guessed: &[bool]) -> Rejects {
        match (guessed.contains(&true), guessed.contains(&false)) {
            (true, false) => Rejects::Guessed,
            (true, true) => Rejects::PartlyGuessed,
            (false, _) => Rejects::Met,
        }
    }
}

/// A plan of a job's parts that is known: sets of these, and the pieces of each pile it makes them of.
#[derive(Clone, Debug, PartialEq)]
pub struct Made {
    wanted: Vec<Wanted>,
    sets: i64,
    pieces: Vec<(Which, Count)>,
}

impl Made {
    /// What a plan makes of what lies there, or of what the job has by now where its wood was `taken`; nothing of what leaves out a part or
    /// counts on boards to buy.
    pub fn of((given, sheet): (&Given, &PlanSheet), taken: bool) -> Option<Made> {
        let Wish::Parts(parts) = &given.ready.wish else { return None };
        let used = sheet.used.iter().filter(|used| 0 < used.pieces);
        let of_source = |used: &super::plan::Used| {
            let source = given.sources.get(used.source).filter(|source| source.bought.is_none())?;
            let (at, in_job) = source.which();
            Some(((at, in_job || taken), used.pieces))
        };
        let pieces = used.map(of_source).collect::<Option<Vec<_>>>()?;
        given.ask.without.is_empty().then(|| Made { wanted: wanted(&parts.parts), sets: sheet.made, pieces })
    }
}

/// Whether a part is glued up is the wood's to say.
fn wanted(parts: &[Wanted]) -> Vec<Wanted> {
    parts.iter().map(|part| Wanted { glue: false, ..part.clone() }).listed()
}

impl Wood {
    /// No fewer sets than a known plan of the same parts makes are told, where its pieces are there.
    pub fn knows(mut self, made: &Made) -> Wood {
        let of = |which: &Which| made.pieces.iter().filter(|(of, _)| of == which).map(|(_, n)| i64::from(*n)).sum();
        let boards: Vec<i64> = self.piles.iter().map(of).collect();
        if made.wanted == self.wanted && made.pieces.iter().all(|(which, _)| self.piles.contains(which)) {
            self.hoped.known.push(Known { boards, sets: made.sets });
        }
        self
    }

    /// Nothing of it is left to chance.
    pub fn is_sorted(&self) -> bool {
        self.hoped.is_sorted()
    }
}

/// The wood of a job: what it has, and what it may take of the rack.
///
/// # Errors
/// [`WhyNot`].
pub fn of_job(shop: &Shop, job: Id) -> Result<Wood, WhyNot> {
    let job = shop.job(job)?;
    let lying = Lying::of(shop, job.id)?;
    lying.wood(shop, &job)
}

/// The rack as each design sees it: nothing is set apart for one.
///
/// # Errors
/// [`WhyNot`], for each on its own.
pub fn of_designs(shop: &Shop, designs: &[Design], (currency, units): (Currency, Units)) -> Vec<Result<Wood, WhyNot>> {
    let Some(first) = designs.first() else { return vec![] };
    let lying = Lying::of(shop, first.id);
    let one = |design: &Design| {
        let began = JobBegan { name: design.name.clone(), currency, units, pieces: 1, made_for: For::Spec };
        let parts = design.parts.iter().map(|part| Part {
            name: part.name.clone(),
            n: part.n,
            size: [part.thickness, part.width, part.length],
            wood: part.wood.clone(),
        });
        let job = Job { parts: parts.listed(), ..Job::new(design.id, &began, Wall::new(shop.now, design.at.offset)) };
        lying.as_ref().map_err(|why| WhyNot::Refused(why.clone()))?.wood(shop, &job)
    };
    designs.iter().map(one).listed()
}

/// All pieces there are, and what is known of each pile, looked at once.
struct Lying {
    sources: Vec<Source>,
    /// Of each what is known, and whether its rejects are a guess.
    pieces: Vec<(Pieces, bool)>,
}

impl Lying {
    fn of(shop: &Shop, job: Id) -> Answer<Lying> {
        let sources = sources(shop, job)?;
        let hauls = fold::hauls(shop.book).listed();
        let pieces = sources.iter().map(|source| pieces(&hauls, source)).collect::<Answer<_>>()?;
        Ok(Lying { sources, pieces })
    }

    /// What the rack has, and what the job has.
    fn wood(&self, shop: &Shop, job: &Job) -> Result<Wood, WhyNot> {
        let mut ask = Ask { job: job.id, what: What::Parts(None), turned: vec![], bought: vec![], without: vec![], over: None };
        ask.turned = self.sources.iter().filter(|source| !is_used(&ask, source)).map(Source::which).listed();
        let Given { ready, sources, .. } = given_of(shop, job, (&ask, self.sources.clone()))?;
        let (Asked::Parts(problem), Wish::Parts(wish)) = (ready.asked, ready.wish) else { return Err(WhyNot::NoParts) };
        let known = |used: &Source| self.sources.iter().zip(&self.pieces).find(|(source, _)| source.which() == used.which());
        let known = sources.iter().filter_map(|source| known(source).map(|(_, pieces)| *pieces)).listed();
        let guessed = known.iter().filter(|(pieces, _)| 0 < pieces.unsorted).map(|(_, guessed)| *guessed).listed();
        let piles = known.into_iter().map(|(pieces, _)| pieces).listed();
        Ok(Wood {
            hoped: Hoped { problem, piles, known: vec![] },
            rejects: Rejects::of(&guessed),
            parts: job.parts.iter().map(|part| part.name.clone()).listed(),
            wanted: wanted(&wish.parts),
            piles: sources.iter().map(Source::which).listed(),
        })
    }
}

/// What is known of the pieces of a pile, as "enough" knows it: what a job has is sorted, and so is what is set apart.
fn pieces(hauls: &[Haul], source: &Source) -> Answer<(Pieces, bool)> {
    let (haul, pile) = found(hauls, source)?;
    let unsorted = unsorted_of(pile, source);
    let share = share(hauls, haul, pile)?;
    let pieces = Pieces { certain: source.n.saturating_sub(unsorted), ..drawn((haul, pile), unsorted, share)? };
    Ok((pieces, share == RejectShare::guess()))
}

/// So many unsorted pieces of a pile as they are drawn: piles of one wood from one haul are good or bad together.
fn drawn((haul, pile): (&Haul, &Pile), unsorted: Count, share: RejectShare) -> Answer<Pieces> {
    let lots = named(&pile.id.to_string());
    let kin = pile.wood.as_ref().map_or(lots, |wood| named(&format!("{} {wood}", haul.id)));
    Ok(Pieces { certain: 0, unsorted, share: share.good_of(unsorted)?.share(), lots, kin })
}

fn found<'a>(hauls: &'a [Haul], source: &Source) -> Answer<(&'a Haul, &'a Pile)> {
    let haul = hauls.iter().find(|haul| haul.id == source.pile.haul).ok_or(Refusal::NotThere)?;
    Ok((haul, haul.pile(source.pile.pile).ok_or(Refusal::NotThere)?))
}

fn unsorted_of(pile: &Pile, source: &Source) -> Count {
    if source.in_job { 0 } else { pile.movable().min(source.n) }
}

/// The share of rejects of a pile, by all that sorting showed of the supplier.
fn share(hauls: &[Haul], haul: &Haul, pile: &Pile) -> Answer<RejectShare> {
    let others = hauls.iter().filter(|other| haul.supplier.is_some() && other.supplier == haul.supplier && other.id != haul.id);
    haul.reject_share(pile.id, Seen::pooled(others.map(Haul::seen)))
}

/// A number for a name. Fowler, Noll and Vo's FNV-1a of 64 bits (recalled).
fn named(name: &str) -> u64 {
    name.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3))
}
