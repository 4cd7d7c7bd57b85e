//! What a plan was made for, and what of it is not so any more. It is told by what the plan itself holds, never by what is reckoned anew.

use super::keep::used_of;
use super::{Ask, Given, Source, figures, places, sources};
use crate::haul::{Haul, Pile};
use crate::ledger::decide::Lying;
use crate::ledger::fold::{self, InUse, Job, Part};
use crate::ledger::kind::plan::{PlanKept, PlanPile, Shape};
use crate::quantity::{Count, Length, Listed};
use crate::refusal::Answer;
use crate::sheet::Shop;
use crate::sheet::plan::PlanSheet;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::ready::letter;
use crate::sheet::plan::wish::{Wanted, Wish};

/// What has changed since a plan was made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// Pieces it uses have another size now, or their pile is no more; by their place among the sources.
    Size(usize),
    /// Pieces it uses are said to be of another wood now; by their place.
    Wood(usize),
    /// Pieces it uses are not free any more.
    NotFree,
    /// Figures of the saw, by their places in the order in which the maker says them.
    Saw(Vec<usize>),
    /// The least lengths the machines take.
    Machines,
    /// Parts of the job, by their names; none where the names of then are not known.
    Parts(Vec<String>),
    /// Boards of the plans before it were ticked as cut, or a tick was taken off.
    Cut,
}

/// The lengths of the saw that a shape is planned with, by their places in the order in which the maker says them.
pub fn bears(shape: Shape) -> &'static [usize] {
    BEARS.iter().find(|(of, _)| *of == shape).map(|(_, all)| *all).unwrap_or_default()
}

/// Of the thirteen lengths of the saw those that bear on a shape. Joints apart are asked for each top.
const BEARS: [(Shape, &[usize]); 4] = [
    (Shape::Rows, &[0, 1, 3, 6, 7, 8, 10, 11]),
    (Shape::Parts, &[0, 2, 3, 4, 5, 6, 7, 8, 12]),
    (Shape::Sticks, &[0, 2, 5, 6, 8]),
    (Shape::Field, &[0, 1, 3, 5, 6, 7, 8, 10, 11, 12]),
];

/// What was asked for one plan alone is no change of the saw's.
const OVER_IN_WIDTH: usize = 5;

/// What has changed; of a plan whose wood the job has, that the rack has less of it is none.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`], [`crate::refusal::Refusal::NotThere`].
pub fn changes(shop: &Shop, (given, sheet): (&Given, &PlanSheet), used: bool) -> Answer<Vec<Change>> {
    let back = if used { None } else { Some(taken_before(shop, &shop.job(given.ask.job)?)) };
    changes_with(shop, (given, sheet), back.as_deref())
}

/// The same where it is known what plans before took, which goes back when this one is used; none where this one is used.
///
/// # Errors
/// As [`changes`].
pub fn changes_with(shop: &Shop, (given, sheet): (&Given, &PlanSheet), back: Option<&[(Lying, Count)]>) -> Answer<Vec<Change>> {
    let used = back.is_none();
    let there = sources(shop, given.ask.job)?;
    let job = shop.job(given.ask.job)?;
    let uses = given.sources.iter().enumerate().map(|(place, source)| (place, source, used_of(sheet, place)));
    let uses = uses.filter(|(_, source, n)| source.bought.is_none() && 0 < *n).listed();
    let same_pile = |source: &Source, now: &Source| now.which().0 == source.which().0;
    let sized = |source: &Source| there.iter().find(|now| same_pile(source, now)).map(Source::sides).or_else(|| elsewhere(shop, source));
    let other = |source: &Source| match sized(source) {
        Some(sides) => sides != source.sides(),
        None => used,
    };
    let free = |source: &Source, n: Count| {
        let lying = there.iter().find(|now| now.which() == source.which()).map_or(0, |now| now.n);
        let back = back.into_iter().flatten().filter(|(lying, _)| !source.in_job && *lying == source.which().0).map(|(_, n)| *n);
        used || n <= back.fold(lying, Count::saturating_add)
    };
    let sizes = uses.iter().filter(|(_, source, _)| other(source)).map(|(place, ..)| Change::Size(*place));
    let known = kept_piles(shop, uses.iter().map(|(_, source, _)| source.which().0));
    let wood = |source: &Source| {
        known
            .iter()
            .find(|(at, _)| *at == source.which().0)
            .is_some_and(|(_, pile)| source.pile.wood.is_some() && pile.wood != source.pile.wood)
    };
    let woods = uses.iter().filter(|(_, source, _)| wood(source)).map(|(place, ..)| Change::Wood(*place));
    let rack = (!uses.iter().all(|(_, source, n)| free(source, *n))).then_some(Change::NotFree);
    let mut changed = sizes.chain(woods).chain(rack).listed();
    changed.extend(of_saw(given, figures(shop, job.units)?));
    changed.extend(of_parts(given, &job.parts));
    Ok(changed)
}

/// The piles a plan is made of, as they are now.
fn kept_piles(shop: &Shop, all: impl Iterator<Item = Lying>) -> Vec<(Lying, Pile)> {
    let mut hauls: Vec<Haul> = vec![];
    let one = |at: Lying| {
        if !hauls.iter().any(|haul| haul.id == at.haul) {
            hauls.extend(fold::haul(shop.book, at.haul));
        }
        Some((at, hauls.iter().find(|haul| haul.id == at.haul)?.pile(at.pile)?.clone()))
    };
    all.filter_map(one).listed()
}

/// The letters of the piles whose pieces a plan uses and that have another size or wood now than it was made for. An older plan does not
/// say what they had.
pub fn changed_piles(shop: &Shop, plan: &PlanKept) -> Vec<String> {
    let used = || plan.piles.iter().enumerate().filter(|(_, kept)| kept.used.is_some_and(|used| 0 < used));
    let known = kept_piles(shop, used().map(|(_, kept)| Lying { haul: kept.haul, pile: kept.pile }));
    let other = |kept: &PlanPile| {
        let now = known.iter().find(|(at, _)| (at.haul, at.pile) == (kept.haul, kept.pile));
        let sides = |now: &Pile| [(kept.thickness, now.thickness), (kept.width, now.width), (kept.length, now.length)];
        let differs =
            |now: &Pile| sides(now).iter().any(|(then, now)| then.is_some() && then != now) || kept.wood.is_some() && kept.wood != now.wood;
        now.is_some_and(|(_, now)| differs(now))
    };
    used().filter(|(_, kept)| other(kept)).map(|(nth, kept)| kept.letter.clone().unwrap_or_else(|| letter(nth))).listed()
}

/// Of the piles that did not fit, those that have another size or wood now, by their places.
pub fn left_out_changed(shop: &Shop, given: &Given) -> Vec<usize> {
    let known = kept_piles(shop, given.left_out.iter().map(|(source, _)| source.which().0));
    let facts = |pile: &Pile| (pile.thickness, pile.width, pile.length, pile.wood.clone());
    let then = |source: &Source| (source.pile.thickness, source.pile.width, source.pile.length, source.pile.wood.clone());
    let now = |source: &Source| known.iter().find(|(at, _)| *at == source.which().0).map(|(_, pile)| facts(pile));
    let all = given.left_out.iter().enumerate();
    all.filter(|(_, (source, _))| now(source).is_some_and(|now| now != then(source))).map(|(nth, _)| nth).listed()
}

/// The sides of a pile of which nothing lies there any more; nothing where it is no more itself.
fn elsewhere(shop: &Shop, source: &Source) -> Option<Option<[Length; 3]>> {
    let haul = fold::haul(shop.book, source.pile.haul)?;
    let pile = haul.pile(source.pile.pile)?;
    Some(pile.thickness.zip(pile.width).zip(pile.length).map(|((thickness, width), length)| [thickness, width, length]))
}

/// The pieces a job took from the rack by its plans, as far as it still has them.
pub fn taken_before(shop: &Shop, job: &Job) -> Vec<(Lying, Count)> {
    taken_by(&fold::in_use(shop.book, &job.plans))
}

/// The pieces these plans took from the rack, as far as the job still has them.
pub fn taken_by(plans: &[InUse<'_>]) -> Vec<(Lying, Count)> {
    let taken = plans.iter().flat_map(|it| &it.shares);
    taken.map(|((haul, pile), share)| (Lying { haul: *haul, pile: *pile }, share.took)).listed()
}

/// Whether a plan can be used as it is: its pieces are there, and all is as it was made for.
pub fn is_possible(shop: &Shop, given: &Given, sheet: &PlanSheet) -> bool {
    changes(shop, (given, sheet), false).is_ok_and(|changed| changed.is_empty())
}

fn of_saw(given: &Given, mut now: Figures) -> Vec<Change> {
    let shape = given.ask.what.shape();
    let mut then = given.ready.figures.clone();
    if then.keep_min == Length::PIECE_MOST {
        then.keep_min = now.keep_min; // an older book said so of boards to be bought
    }
    let machines = |figures: &Figures| {
        // What is ripped of a top is as wide as its rows; the least of the saw is met where it is planned.
        let both = matches!(shape, Shape::Parts);
        (figures.machines.plane, figures.machines.rip.as_nm().saturating_mul(i64::from(both)))
    };
    let (was, is) = (machines(&then), machines(&now));
    let bears = bears(shape);
    let differ = places(&mut then).into_iter().zip(places(&mut now)).enumerate().filter(|(_, (then, now))| then != now);
    let saw = differ
        .map(|(place, _)| place)
        .filter(|place| bears.contains(place) && (*place != OVER_IN_WIDTH || given.ask.over.is_none()))
        .listed();
    let saw = Some(saw).filter(|saw| !saw.is_empty()).map(Change::Saw);
    saw.into_iter().chain((was != is).then_some(Change::Machines)).listed()
}

fn of_parts(given: &Given, now: &[Part]) -> Option<Change> {
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return None };
    let by_length = given.ask.what.shape() == Shape::Sticks;
    if given.lacks.names {
        return Some(Change::Parts(vec![]));
    }
    // What was cut before it is none of its parts.
    let left = |now: &Part| match given.cut.sets {
        0 => i64::from(now.n),
        sets => i64::from(now.n.saturating_mul(sets).saturating_sub(given.cut.of(now))),
    };
    // The rests of those that are begun count with it.
    let so_many = |then: &Wanted| list.parts.iter().filter(|it| it.name == then.name).fold(0_i64, |sum, it| sum.saturating_add(it.n));
    let whole = |then: &Wanted| [then.size[0], then.rest_of.unwrap_or(then.size[1]), then.size[2]];
    let same = |then: &Wanted, now: &Part| {
        let sides: [Length; 3] =
            if by_length && then.size[0] == Length::ZERO { [Length::ZERO, Length::ZERO, now.size[2]] } else { now.size };
        then.name == now.name
            && so_many(then) == left(now)
            && whole(then) == sides
            && then.wood == now.wood.as_ref().map(ToString::to_string)
    };
    let asked = now.iter().filter(|part| is_asked(&given.ask, part) && 0 < left(part)).listed();
    let gone = list.parts.iter().filter(|then| !asked.iter().any(|now| same(then, now))).map(|then| then.name.clone());
    let new = asked.iter().filter(|now| !list.parts.iter().any(|then| then.name == now.name)).map(|now| now.name.clone());
    Some(gone.chain(new).listed()).filter(|names| !names.is_empty()).map(Change::Parts)
}

fn is_asked(ask: &Ask, part: &Part) -> bool {
    !ask.without.contains(&part.name)
}
