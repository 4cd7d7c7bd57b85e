//! Looking for wood on the rack: by length, wood, thickness and where it is from, in an order.

use super::StockPile;
use crate::quantity::{Count, Id, Key, Length, Listed, Set, order_by_key};
use std::cmp::Reverse;

/// What is looked for; what is not said is any.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wanted {
    /// So long, or longer.
    pub length: Option<Length>,
    pub wood: Option<Key>,
    pub thickness: Option<Thick>,
    /// So wide, or wider.
    pub width: Option<Length>,
    pub from: From,
    pub order: Order,
}

/// How thick it has to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thick {
    AtLeast(Length),
    Just(Length),
}

/// Where it is from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum From {
    #[default]
    Anywhere,
    Supplier(Id),
    /// Bought boards, of whomever.
    Bought,
}

/// What comes first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Order {
    #[default]
    Oldest,
    Longest,
    Most,
}

/// What there is of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    pub piles: Vec<StockPile>,
    /// They would do but for their length.
    pub shorter: Vec<StockPile>,
    /// They may do: the side that is asked for is not known.
    pub no_size: Vec<StockPile>,
    /// Of so many piles on the whole rack.
    pub of: usize,
}

impl Found {
    /// Pieces that will do.
    pub fn pieces(&self) -> Count {
        self.piles.iter().fold(0, |sum, pile| sum.saturating_add(pile.on_rack))
    }
}

/// The piles that will do, those that are too short, and those of which some may do: without a size, or with a band about the length asked.
pub fn find(piles: Vec<StockPile>, wanted: &Wanted) -> Found {
    let mut found = Found { of: piles.len(), ..Found::default() };
    for pile in piles.into_iter().filter(|pile| wanted.may_be(pile)) {
        let into = match wanted.fits(&pile) {
            None => &mut found.no_size,
            Some(true) => &mut found.piles,
            Some(false) => &mut found.shorter,
        };
        into.push(pile);
    }
    [&mut found.piles, &mut found.shorter, &mut found.no_size].into_iter().for_each(|piles| wanted.order.put(piles));
    found
}

/// The woods and the suppliers there are on the rack, each once.
pub fn there(piles: &[StockPile]) -> (Vec<Key>, Vec<Id>) {
    let woods: Set<Key> = piles.iter().filter_map(|pile| pile.wood.clone()).collect();
    let suppliers: Set<Id> = piles.iter().filter_map(|pile| pile.haul.supplier).collect();
    (woods.iter().cloned().listed(), suppliers.iter().copied().listed())
}

impl Wanted {
    /// Wood, origin and, where they are known, thickness and width are as wanted.
    fn may_be(&self, pile: &StockPile) -> bool {
        let wood = self.wood.as_ref().is_none_or(|wood| pile.wood.as_ref() == Some(wood));
        let from = match self.from {
            From::Anywhere => true,
            From::Supplier(id) => pile.haul.supplier == Some(id),
            From::Bought => pile.haul.bought,
        };
        let thick = match (self.thickness, pile.thickness) {
            (Some(Thick::AtLeast(least)), Some(side)) => least <= side,
            (Some(Thick::Just(just)), Some(side)) => just == side,
            _ => true,
        };
        let wide = self.width.zip(pile.width).is_none_or(|(least, side)| least <= side);
        wood && from && thick && wide
    }

    /// Whether it is long enough; none where a side that is asked for is not known.
    fn fits(&self, pile: &StockPile) -> Option<bool> {
        if (self.thickness.is_some() && pile.thickness.is_none()) || (self.width.is_some() && pile.width.is_none()) {
            return None;
        }
        match (self.length, pile.length) {
            (None, _) => Some(true),
            (Some(least), Some(from)) if from < least && pile.length_to.is_some_and(|to| least <= to) => None,
            (Some(least), Some(from)) => Some(least <= from),
            (Some(_), None) => None,
        }
    }
}

impl Order {
    /// Puts piles in this order; those alike stay as they came, the oldest haul first.
    fn put(self, piles: &mut [StockPile]) {
        match self {
            Order::Oldest => {}
            Order::Longest => order_by_key(piles, |pile| Reverse(pile.length)),
            Order::Most => order_by_key(piles, |pile| Reverse(pile.on_rack)),
        }
    }
}
