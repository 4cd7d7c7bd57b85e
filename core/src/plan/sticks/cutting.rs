//! The best way to cut one stick of each pile at given prices: a dynamic programme over the lengths that can be filled.
//!
//! Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9, 1961 (recalled).

use super::stock::{Pile, Stock};
use super::sums::{NONE, Sums};
use crate::plan::patience::Patience;

/// More lengths than these are put together on a coarser scale.
const LENGTHS_MOST: usize = 20_000;
/// Below any worth that can be met.
const NEVER: i64 = i64::MIN / 4;

/// One way to cut a stick: how many of each part.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Cut {
    pub pile: usize,
    pub counts: Vec<i64>,
    /// What it costs: wood and cuts in one figure.
    pub cost: i64,
}

/// What is asked of a cut: what each part is worth, how many of it are wanted, and how dear cost is beside it (0: it is free).
pub(super) struct Asked<'a> {
    pub prices: &'a [i64],
    pub limits: &'a [i64],
    pub scale: i64,
}

/// The piles that are for the same parts.
pub(super) struct Group {
    pub sums: Sums,
    /// The same on lengths rounded down, where `sums` are rounded up: what no cut can pass.
    under: Option<Sums>,
    /// Units in one length of the sums.
    coarse: i64,
    may: Vec<bool>,
    pub piles: Vec<usize>,
}

pub(super) struct Saw<'a> {
    pub stock: &'a Stock,
    /// What a unit of wood costs, where a cut costs 1: more than all cuts together.
    pub wood: i64,
    groups: Vec<Group>,
}

impl<'a> Saw<'a> {
    pub(super) fn new(stock: &'a Stock, wood: i64) -> Saw<'a> {
        let mut groups: Vec<Group> = vec![];
        for (nth, pile) in stock.piles.iter().enumerate() {
            match groups.iter_mut().find(|group| group.may == pile.may) {
                Some(group) => group.piles.push(nth),
                None => groups.push(Group { sums: Sums::none(), under: None, coarse: 1, may: pile.may.clone(), piles: vec![nth] }),
            }
        }
        groups.iter_mut().for_each(|group| group.measure(stock));
        Saw { stock, wood, groups }
    }

    /// What the longest stick costs.
    pub(super) fn dear(&self) -> i64 {
        self.stock.piles.iter().map(|pile| pile.low.saturating_mul(self.wood)).max().unwrap_or(1).max(1)
    }

    /// The cost of a stick of which so much is filled by so many pieces.
    pub(super) fn cost(&self, pile: &Pile, used: i64, pieces: i64) -> i64 {
        self.cost_but_pieces(pile, used).saturating_add(pieces)
    }

    pub(super) fn cost_but_pieces(&self, pile: &Pile, used: i64) -> i64 {
        let cuts = self.stock.ends.saturating_sub(1).saturating_add(i64::from(used < pile.room));
        self.stock.consumed(pile, used).saturating_mul(self.wood).saturating_add(cuts)
    }

    /// For each pile the most that one stick can be worth less its cost, and the cut that is; nothing where no cut is worth more than nothing.
    pub(super) fn best(&self, asked: &Asked<'_>, patience: &mut Patience<'_>) -> Vec<Option<(i64, Cut)>> {
        let mut found = vec![None; self.stock.piles.len()];
        for group in &self.groups {
            let filled = Filled::of(&group.sums, &group.wanted(asked), patience);
            for nth in &group.piles {
                if let (Some(place), Some(pile)) = (found.get_mut(*nth), self.stock.piles.get(*nth)) {
                    *place = self.best_of(group, &filled, (*nth, pile), asked.scale);
                }
            }
        }
        found
    }

    /// For each pile what no cut of one stick can pass, worth less cost; never below nothing.
    pub(super) fn most(&self, asked: &Asked<'_>, patience: &mut Patience<'_>) -> Vec<i64> {
        let mut most = vec![0; self.stock.piles.len()];
        for group in &self.groups {
            let sums = group.under.as_ref().unwrap_or(&group.sums);
            let filled = Filled::of(sums, &group.wanted(asked), patience);
            for nth in &group.piles {
                if let (Some(place), Some(pile)) = (most.get_mut(*nth), self.stock.piles.get(*nth)) {
                    *place = self.highest(sums, &filled, (group.coarse, pile), asked.scale).map_or(0, |(value, _)| value);
                }
            }
        }
        most
    }

    /// Whether what a cut can at most be worth is known without rounding.
    pub(super) fn is_exact(&self) -> bool {
        self.groups.iter().all(|group| group.under.is_none())
    }

    /// The groups of piles, where no lengths were put together.
    pub(super) fn exact(&self) -> Option<&[Group]> {
        if self.is_exact() { Some(&self.groups) } else { None }
    }

    fn best_of(&self, group: &Group, filled: &Filled, (nth, pile): (usize, &Pile), scale: i64) -> Option<(i64, Cut)> {
        let (value, place) = self.highest(&group.sums, filled, (group.coarse, pile), scale)?;
        let counts = filled.back(&group.sums, place);
        Some((value, self.cut(nth, counts)?))
    }

    /// A cut by its counts.
    pub(super) fn cut(&self, nth: usize, counts: Vec<i64>) -> Option<Cut> {
        let pile = self.stock.piles.get(nth)?;
        let used = counts.iter().zip(&self.stock.parts).fold(0_i64, |sum, (n, part)| sum.saturating_add(n.saturating_mul(part.size)));
        let cost = self.cost(pile, used, counts.iter().sum());
        if used <= pile.room { Some(Cut { pile: nth, counts, cost }) } else { None }
    }

    /// The highest worth less cost above nothing, and at which length.
    fn highest(&self, sums: &Sums, filled: &Filled, (coarse, pile): (i64, &Pile), scale: i64) -> Option<(i64, usize)> {
        let mut best = (0, None);
        let room = pile.room.checked_div(coarse).unwrap_or(0);
        for (place, (length, worth)) in sums.lengths.iter().zip(&filled.worth).enumerate().skip(1) {
            if room < *length {
                break;
            }
            if *worth <= best.0 {
                continue;
            }
            let used = length.saturating_mul(coarse);
            let value = if scale == 0 { *worth } else { worth.saturating_sub(self.cost_but_pieces(pile, used).saturating_mul(scale)) };
            if best.0 < value {
                best = (value, Some(place));
            }
        }
        best.1.map(|place| (best.0, place))
    }
}

impl Group {
    fn measure(&mut self, stock: &Stock) {
        let room = self.piles.iter().filter_map(|nth| stock.piles.get(*nth)).map(|pile| pile.room).max().unwrap_or(0);
        let sizes: Vec<i64> = stock.parts.iter().zip(&self.may).map(|(part, may)| if *may { part.size } else { 0 }).collect();
        loop {
            let over = |size: &i64| size.checked_div(self.coarse).unwrap_or(0);
            let up = |size: &i64| if *size == 0 { 0 } else { over(&size.saturating_add(self.coarse.saturating_sub(1))) };
            let [down, up]: [Vec<i64>; 2] = [sizes.iter().map(over).collect(), sizes.iter().map(up).collect()];
            let of = |sizes: &[i64]| Sums::of(sizes, over(&room), LENGTHS_MOST);
            if let (Some(above), Some(under)) = (of(&up), of(&down)) {
                self.sums = above;
                self.under = if 1 < self.coarse { Some(under) } else { None };
                return;
            }
            self.coarse = self.coarse.saturating_mul(2);
        }
    }

    /// Price, most copies in one stick, for each part; a piece costs a cut.
    pub(super) fn wanted(&self, asked: &Asked<'_>) -> Vec<(i64, i64)> {
        let one = |((price, limit), may): ((&i64, &i64), &bool)| (price.saturating_sub(asked.scale), if *may { *limit } else { 0 });
        asked.prices.iter().zip(asked.limits).zip(&self.may).map(one).collect()
    }
}

/// The most each length can be worth, filled exactly, and how many of which part make it so.
struct Filled {
    worth: Vec<i64>,
    copies: Vec<Vec<u16>>,
}

impl Filled {
    fn of(sums: &Sums, wanted: &[(i64, i64)], patience: &mut Patience<'_>) -> Filled {
        let mut worth = vec![NEVER; sums.lengths.len()];
        worth.iter_mut().take(1).for_each(|worth| *worth = 0);
        let mut copies = vec![];
        for ((from, most), (price, limit)) in sums.from.iter().zip(&sums.copies).zip(wanted) {
            copies.push(match limit {
                0 => vec![],
                limit if most <= limit => free(from, *price, &mut worth),
                limit => bound(from, (*price, *limit), &mut worth),
            });
        }
        let sums = sums.lengths.len().saturating_mul(wanted.len());
        patience.spend(sums.checked_div(1000).unwrap_or(0).saturating_add(1) as u64);
        Filled { worth, copies }
    }

    /// The counts that make a length.
    fn back(&self, sums: &Sums, place: usize) -> Vec<i64> {
        let mut place = place;
        let mut counts = vec![];
        for (copies, from) in self.copies.iter().zip(&sums.from).rev() {
            let n = copies.get(place).copied().unwrap_or(0);
            for _ in 0..n {
                place = from.get(place).map_or(0, |place| *place as usize);
            }
            counts.push(i64::from(n));
        }
        counts.reverse();
        counts
    }
}

/// As many copies as fit.
fn free(from: &[u32], price: i64, worth: &mut [i64]) -> Vec<u16> {
    let mut copies = vec![0_u16; worth.len()];
    for (place, before) in from.iter().enumerate() {
        if *before == NONE {
            continue;
        }
        let (Some(least), Some(n)) = (worth.get(*before as usize).copied(), copies.get(*before as usize).copied()) else { continue };
        if least == NEVER {
            continue;
        }
        let with = least.saturating_add(price);
        if let (Some(own), Some(count)) = (worth.get_mut(place), copies.get_mut(place))
            && *own < with
        {
            (*own, *count) = (with, n.saturating_add(1));
        }
    }
    copies
}

/// At most `limit` copies.
fn bound(from: &[u32], (price, limit): (i64, i64), worth: &mut [i64]) -> Vec<u16> {
    let mut copies = vec![0_u16; worth.len()];
    for place in (0..worth.len()).rev() {
        let (mut at, mut sum) = (place, 0_i64);
        let (mut best, mut count) = (worth.get(place).copied().unwrap_or(NEVER), 0_u16);
        for n in 1..=limit {
            let Some(before) = from.get(at).filter(|before| **before != NONE) else { break };
            at = *before as usize;
            sum = sum.saturating_add(price);
            let with = worth.get(at).copied().filter(|worth| *worth != NEVER).map_or(NEVER, |worth| worth.saturating_add(sum));
            if best < with {
                (best, count) = (with, u16::try_from(n).unwrap_or(u16::MAX));
            }
        }
        if let (Some(own), Some(own_count)) = (worth.get_mut(place), copies.get_mut(place)) {
            (*own, *own_count) = (best, count);
        }
    }
    copies
}
