//! A plan of sticks knows them by their length alone. Of those as long as each other that do as well, the least is cut: what lies there before
//! what is to be bought, then the smaller section, then what costs less. Ours.

use super::ready::Ready;
use crate::plan::sticks::plan::Stick;
use crate::plan::sticks::problem::Problem;
use crate::plan::{Answered, Asked, Made};
use crate::quantity::{Decimal, Listed, order_by_key};

/// To be bought, its section, its price, and its place.
type Value = (bool, i128, Decimal, usize);

impl Ready {
    /// The same plan of sticks that are missed least; any other as it is.
    pub fn spared(&self, answered: Answered) -> Answered {
        let (Asked::Sticks(problem), Made::Sticks(plan)) = (&self.asked, &answered.plan) else { return answered };
        let mut plan = plan.clone();
        let mut free: Vec<i64> = problem.piles.iter().map(|pile| pile.count).collect();
        plan.sticks.iter().for_each(|stick| take(&mut free, stick.pile, stick.times));
        let mut order: Vec<usize> = (0..problem.piles.len()).collect();
        order_by_key(&mut order, |place| self.value(*place));
        // The most valuable first: what they leave is free for none before them.
        for dear in order.iter().rev() {
            let before = order.iter().take_while(|place| *place != dear).copied().listed();
            for cheap in before {
                let moved = plan.sticks.iter_mut().filter(|stick| stick.pile == *dear && does(problem, stick, cheap));
                let split = moved.filter_map(|stick| split(stick, cheap, &mut free)).listed();
                plan.sticks.extend(split);
            }
        }
        plan.sticks.retain(|stick| 0 < stick.times);
        let plan = Made::Sticks(plan);
        if self.asked.worth(&plan).as_ref() == Some(&answered.worth) { Answered { plan, ..answered } } else { answered }
    }

    fn value(&self, place: usize) -> Value {
        let Some(source) = self.sources.get(place) else { return Value::default() };
        let [thickness, width, _] = source.size.map(|side| i128::from(side.as_nm()));
        let price = source.stack.price.map_or(Decimal::ZERO, |price| price.amount());
        (source.stack.is_to_buy(), thickness.saturating_mul(width), price, place)
    }
}

fn take(free: &mut [i64], pile: usize, n: i64) {
    free.iter_mut().skip(pile).take(1).for_each(|free| *free = free.saturating_sub(n));
}

/// Whether a stick of another pile is as long, and may be any of its parts.
fn does(problem: &Problem, stick: &Stick, other: usize) -> bool {
    let long = |pile: usize| problem.piles.get(pile).map(|pile| pile.length);
    let may = |part: usize| problem.parts.get(part).is_some_and(|part| part.piles.as_ref().is_none_or(|piles| piles.contains(&other)));
    long(stick.pile) == long(other) && stick.pieces.iter().all(|piece| may(piece.part))
}

/// As many of these as the other pile has free; they are taken off.
fn split(stick: &mut Stick, other: usize, free: &mut [i64]) -> Option<Stick> {
    let times = free.get(other).copied().unwrap_or(0).min(stick.times);
    take(free, other, times);
    take(free, stick.pile, times.saturating_neg());
    stick.times = stick.times.saturating_sub(times);
    (0 < times).then(|| Stick { pile: other, times, ..stick.clone() })
}
