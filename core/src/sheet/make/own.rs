//! The job's own pieces first: where a plan is worth the same with them, those the job has are taken before those of the rack. Ours.

use super::{Given, Source};
use crate::plan::parts::plan::Board;
use crate::plan::sticks::plan::Stick;
use crate::plan::{Answered, Made, Planned};
use crate::quantity::Listed;

/// The same plan of as many pieces of the job's own as can take the place of others alike.
pub fn own_first(given: &Given, answered: Answered) -> Answered {
    let n = given.sources.len();
    let mut best = answered;
    for (own, other) in (0..n).flat_map(|own| (0..n).map(move |other| (own, other))).filter(|(own, other)| own != other) {
        let used = |place| used(&best.plan, place);
        let free = owned(given, own).saturating_sub(used(own));
        let moved = free.min(used(other).saturating_sub(owned(given, other)));
        if 0 < moved && alike(given, own, other) {
            let plan = instead(&best.plan, (own, other), moved);
            let moved = Planned { plan, worth: best.worth.clone(), bound: best.bound.clone() };
            // What no other can take the place of stays as it was found.
            if given.ready.asked.holds(&moved) {
                best = moved;
            }
        }
    }
    best
}

/// Pieces at a place that the job has: all of those it took, or so many of those of a plan before.
fn owned(given: &Given, place: usize) -> i64 {
    let source = given.sources.get(place);
    let of_plan = given.own.get(place).copied().unwrap_or(0);
    let n = source.map_or(0, |source| if source.in_job { source.n } else { of_plan });
    // Of tiles of a length a plan counts the tiles.
    i64::from(n).saturating_mul(given.ready.sources.get(place).map_or(1, |source| source.tiles))
}

/// Of one wood, the own no larger than the other, and of neither anything is ripped first: strips of one board stay together. Whether the
/// plan is worth the same with a smaller one, the checker of plans says.
fn alike(given: &Given, own: usize, other: usize) -> bool {
    let whole = |place: usize| given.ready.sources.get(place).filter(|source| source.ripped == 1);
    let lies = |place: usize| given.sources.get(place).filter(|source| source.bought.is_none());
    let wood = whole(own).zip(whole(other)).is_some_and(|(own, other)| own.stack.wood == other.stack.wood);
    let as_large = |(own, other): (&Source, &Source)| {
        let sides = own.sides().zip(other.sides());
        sides.is_some_and(|(own, other)| own.iter().zip(other).all(|(own, other)| *own <= other))
    };
    wood && lies(own).zip(lies(other)).is_some_and(as_large)
}

pub(super) fn used(plan: &Made, pile: usize) -> i64 {
    let sum = |all: Vec<i64>| all.into_iter().fold(0, i64::saturating_add);
    match plan {
        Made::Sticks(plan) => sum(plan.sticks.iter().filter(|it| it.pile == pile).map(|it| it.times).listed()),
        Made::Parts(plan) => sum(plan.boards.iter().filter(|it| it.pile == pile).map(|it| it.times).listed()),
        Made::Rows(plan) => plan.rows.iter().flatten().filter(|it| it.pile == pile).map(|it| it.n).max().unwrap_or(0),
        Made::Field(plan) => sum(plan.field.iter().flat_map(|it| &it.pieces).filter(|it| it.pile == pile).map(|it| it.taken).listed()),
    }
}

/// So many of the one pile for as many of the other, the last ones of it.
pub(super) fn instead(plan: &Made, (own, other): (usize, usize), n: i64) -> Made {
    let mut plan = plan.clone();
    let last = used(&plan, other).saturating_sub(n);
    let first = used(&plan, own);
    match &mut plan {
        Made::Sticks(plan) => {
            plan.sticks = split(&plan.sticks, (own, other, n));
        }
        Made::Parts(plan) => {
            plan.boards = split(&plan.boards, (own, other, n));
            for strip in plan.panels.iter_mut().flat_map(|panel| &mut panel.strips).filter(|strip| strip.pile == other && last == 0) {
                strip.pile = own;
            }
        }
        Made::Rows(plan) => {
            let moves = |pile: &mut usize, nth: &mut i64| {
                if *pile == other && last < *nth {
                    (*pile, *nth) = (own, nth.saturating_sub(last).saturating_add(first));
                }
            };
            plan.rows.iter_mut().flatten().for_each(|it| moves(&mut it.pile, &mut it.n));
            plan.remainders.iter_mut().for_each(|it| moves(&mut it.pile, &mut it.n));
        }
        Made::Field(plan) => {
            for field in plan.field.iter_mut().filter(|_| last == 0) {
                field.piles.iter_mut().filter(|pile| **pile == other).for_each(|pile| *pile = own);
                field.pieces.iter_mut().filter(|it| it.pile == other).for_each(|it| it.pile = own);
            }
        }
    }
    plan
}

/// Pieces of a pile that are cut alike: their pile and how many.
trait CutAlike: Clone {
    fn of(&mut self) -> (&mut usize, &mut i64);
}

impl CutAlike for Stick {
    fn of(&mut self) -> (&mut usize, &mut i64) {
        (&mut self.pile, &mut self.times)
    }
}

impl CutAlike for Board {
    fn of(&mut self) -> (&mut usize, &mut i64) {
        (&mut self.pile, &mut self.times)
    }
}

/// So many of those cut alike become another pile's: a group is parted where fewer than all of it do.
fn split<T: CutAlike>(all: &[T], (own, other, mut n): (usize, usize, i64)) -> Vec<T> {
    let mut parted = vec![];
    for it in all {
        let (mut stays, mut goes) = (it.clone(), it.clone());
        let (pile, times) = stays.of();
        let taken = if *pile == other { n.min(*times) } else { 0 };
        (*times, n) = (times.saturating_sub(taken), n.saturating_sub(taken));
        if 0 < *times {
            parted.push(stays);
        }
        if 0 < taken {
            (*goes.of().0, *goes.of().1) = (own, taken);
            parted.push(goes);
        }
    }
    parted
}
