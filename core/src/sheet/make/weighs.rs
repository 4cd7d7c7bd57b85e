//! What the parts weigh that are cut already, of a plan that is made of the others.

use super::glued::Begun;
use super::mixed::woods_cut;
use super::{AlreadyCut, Given};
use crate::ledger::fold::Job;
use crate::ledger::kind::plan::DesignPart;
use crate::quantity::{Count, Key, Length, Listed, Mass};
use crate::sheet::Shop;
use crate::sheet::plan::wish::{Wanted, Wish};

/// What is cut, finished, and whether it is a guess for one of its woods.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighs {
    pub weight: Mass,
    pub guessed: bool,
}

impl Weighs {
    fn nothing() -> Weighs {
        Weighs { weight: Mass::ZERO, guessed: false }
    }

    /// With so many pieces of these sides more.
    fn with(self, shop: &Shop, wood: &Key, (n, sides): (f64, [Length; 3])) -> Weighs {
        let wood = shop.workshop.wood.woods.find_or_guess(Some(wood.as_str()));
        let volume = sides.iter().fold(n, |volume, side| volume * side.as_nm() as f64 / 1e9);
        let weight = self.weight.plus(Mass::kg(wood.density.as_kg_per_cubic_metre() * volume));
        Weighs { weight, guessed: self.guessed || wood.is_a_guess() }
    }
}

/// The parts that are cut, no more of each than are asked for, and the strips of those that a plan makes the rest of; nothing where the wood of
/// one is not known, as of a part that is glued up of several.
pub fn cut_weighs(shop: &Shop, given: &Given) -> Option<Weighs> {
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return None };
    let job = shop.job(given.ask.job).ok();
    let mut all = Weighs::nothing();
    let mut had: Vec<(&str, Count)> = vec![];
    for part in &given.cut.parts {
        let before = had.iter().filter(|(name, _)| *name == part.name).fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
        let n = part.n.min(most(job.as_ref(), &given.cut, part).saturating_sub(before));
        if 0 < n {
            all = all.with(shop, part.wood.as_ref()?, (n.into(), [part.thickness, part.width, part.length]));
            had.push((&part.name, n));
        }
    }
    for (rest, whole) in list.parts.iter().filter_map(|part| Some((part, part.rest_of?))) {
        let [thickness, width, length] = rest.size;
        let strips = Length::nm(whole.as_nm().saturating_sub(width.as_nm())).ok()?;
        all = all.with(shop, &wood_of(&given.cut, rest, whole)?, (rest.n as f64, [thickness, strips, length]));
    }
    Some(all)
}

/// Square metres that are glued where the rests of parts are glued to the strips that are cut of them, and these to each other, as rough as the
/// others: one joint for each strip. Nothing where no rest is planned, or what is cut of one is not known. Ours.
pub fn strips_glued(given: &Given) -> Option<f64> {
    let Wish::Parts(list) = &given.ready.wish else { return None };
    let [over_long, _, over_thick] = given.ready.figures.allow.map(|length| length.as_nm() as f64);
    let mut all = None;
    for (rest, whole) in list.parts.iter().filter_map(|part| Some((part, part.rest_of?))) {
        let [thickness, width, length] = rest.size;
        let is_it = |it: &&Begun| it.lacks() == Some(width) && it.is_of(&rest.name, [thickness, whole, length]);
        let n = usize::try_from(rest.n).unwrap_or(usize::MAX);
        let strips = given.cut.begun.iter().filter(is_it).map(|it| it.strips).take(n).listed();
        if strips.len() != n {
            return None;
        }
        let joint = (length.as_nm() as f64 + over_long) * (thickness.as_nm() as f64 + over_thick) / 1e18;
        let joints: f64 = strips.into_iter().map(f64::from).sum();
        all = Some(all.unwrap_or(0.0) + joint * joints);
    }
    all
}

/// Whether the rest of a part is planned, of which strips are cut.
pub fn has_rests(given: &Given) -> bool {
    matches!(&given.ready.wish, Wish::Parts(list) if list.parts.iter().any(|part| part.rest_of.is_some()))
}

/// So many of a part are asked for, as far as the job has it.
fn most(job: Option<&Job>, cut: &AlreadyCut, part: &DesignPart) -> Count {
    let of_it = |it: &&crate::ledger::fold::Part| it.name == part.name && it.size == [part.thickness, part.width, part.length];
    job.and_then(|job| job.parts.iter().find(of_it)).map_or(Count::MAX, |it| it.n.saturating_mul(cut.sets))
}

/// The one wood of what is cut of such a part.
fn wood_of(cut: &AlreadyCut, rest: &Wanted, whole: Length) -> Option<Key> {
    let mut woods = woods_cut(cut, rest, whole).into_iter();
    let first = woods.next()??;
    woods.all(|wood| wood.as_ref() == Some(&first)).then_some(first)
}
