//! How many of a job or a design the wood gives, while it isn't sorted: the boards and parts of its plan, and what is known of their rejects.

use super::make::{Ask, Given, Source, What, WhyNot, given_of, is_used, sources};
use super::past::past;
use super::shop::Shop;
use crate::haul::Haul;
use crate::ledger::fold::{self, Design, Job, Part};
use crate::ledger::kind::job::{For, JobBegan};
use crate::plan::Asked;
use crate::plan::outlook::{Hoped, Pieces};
use crate::quantity::{Currency, Id, Listed, Sorted, Units, Wall};
use crate::refusal::{Answer, Refusal};

/// What is to be reckoned, and the parts by their places in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wood {
    pub hoped: Hoped,
    pub parts: Vec<String>,
}

impl Wood {
    pub fn is_sorted(&self) -> bool {
        self.hoped.is_sorted()
    }
}

/// The wood of a job: what it has, and what it may take of the rack.
///
/// # Errors
/// [`WhyNot`].
pub fn of_job(shop: &Shop, job: Id) -> Result<Wood, WhyNot> {
    wood(shop, &shop.job(job)?)
}

/// The rack as a design sees it: nothing is set apart for it.
///
/// # Errors
/// [`WhyNot`].
pub fn of_design(shop: &Shop, design: &Design, (currency, units): (Currency, Units)) -> Result<Wood, WhyNot> {
    let began = JobBegan { name: design.name.clone(), currency, units, pieces: 1, made_for: For::Spec };
    let parts = design.parts.iter().map(|part| Part {
        name: part.name.clone(),
        n: part.n,
        size: [part.thickness, part.width, part.length],
        wood: part.wood.clone(),
    });
    let parts = parts.listed();
    wood(shop, &Job { parts, ..Job::new(design.id, &began, Wall::new(shop.now, design.at.offset)) })
}

fn wood(shop: &Shop, job: &Job) -> Result<Wood, WhyNot> {
    let mut ask = Ask { job: job.id, what: What::Parts(None), turned: vec![] };
    let there = sources(shop, job.id)?;
    ask.turned = there.iter().filter(|source| !is_used(&ask, source)).map(Source::which).listed();
    let Given { ready, sources, .. } = given_of(shop, job, &ask)?;
    let Asked::Parts(problem) = ready.asked else { return Err(WhyNot::NoParts) };
    let mut hauls = Sorted::new();
    let piles = sources.iter().map(|source| pieces(shop, &mut hauls, source)).collect::<Answer<Vec<_>>>()?;
    Ok(Wood { hoped: Hoped { problem, piles }, parts: job.parts.iter().map(|part| part.name.clone()).listed() })
}

/// What is known of the pieces of a pile, as "enough" knows it: what a job has is sorted, and so is what is set apart.
fn pieces(shop: &Shop, hauls: &mut Sorted<Id, Haul>, source: &Source) -> Answer<Pieces> {
    let id = source.pile.haul;
    if !hauls.contains_key(&id) {
        hauls.insert(id, fold::haul(shop.book, id).ok_or(Refusal::NotThere)?);
    }
    let haul = hauls.get(&id).ok_or(Refusal::NotThere)?;
    let pile = haul.pile(source.pile.pile).ok_or(Refusal::NotThere)?;
    let unsorted = if source.in_job { 0 } else { pile.movable().min(source.n) };
    let good = haul.reject_share(pile.id, past(shop.book, haul).seen)?.good_of(unsorted)?;
    let (lots, kin) = (named(&pile.id.to_string()), pile.wood.as_ref().map(|wood| named(&format!("{id} {wood}"))));
    Ok(Pieces { certain: source.n.saturating_sub(unsorted), unsorted, share: good.share(), lots, kin: kin.unwrap_or(lots) })
}

/// A number for a name. Fowler, Noll and Vo's FNV-1a of 64 bits (recalled).
fn named(name: &str) -> u64 {
    name.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3))
}
