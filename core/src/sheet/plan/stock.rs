//! What a plan may take from: piles of the rack and of the haul in hand, and boards that could be bought.

use crate::quantity::{Count, Id, Key, Length, Money, Volume};
use crate::refusal::Answer;
use crate::wood::movement::Sawn;
use crate::wood::species::Coefficient;
use crate::wood::weight::Density;
use crate::wood::woods::Wood;

/// Where pieces are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    Rack {
        haul: Id,
        pile: Id,
    },
    /// At the timber yard.
    Bought,
}

/// A pile that may be asked whether it joins a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Stack {
    pub place: Place,
    pub name: Option<String>,
    /// Its letter on the rack; empty where it has none.
    pub label: String,
    /// The wood, by its key or the maker's own name.
    pub wood: Option<String>,
    /// Thickness, width, and the low end of the length.
    pub sizes: [Option<Length>; 3],
    /// One piece as it is measured; by its sides where none was.
    pub piece: Option<Volume>,
    /// Good pieces that the job may take.
    pub free: Count,
    pub density: Density,
    /// The weight is our guess.
    pub guessed: bool,
    /// How a flat-sawn width of it moves, where that is known.
    pub moves: Option<Coefficient>,
    /// One piece, where it is to be bought and the price is known.
    pub price: Option<Money>,
    /// Nothing but what plans left of other piles: no more of it can be had.
    pub rests: bool,
    /// Nothing but what is left of boards that a plan had planed.
    pub planed: bool,
}

/// Why a pile can't be planned with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeftOut {
    /// A side of it is not known.
    NoSize,
    NoneFree,
    OtherWood,
    Thinner {
        by: Length,
    },
}

/// Which piles may join.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Joins {
    /// The least thickness, with what is planed off.
    pub thickness: Length,
    /// As thick as it is in the end: what a plan had planed so is not planed again.
    pub finished: Option<Length>,
    /// The woods that are wished for; any where none is named.
    pub woods: Vec<String>,
}

impl Stack {
    /// Boards of a wood that could be bought, so many, each at this price.
    pub fn bought((key, wood): (Key, &Wood<'_>), sizes: [Length; 3], n: Count, price: Option<Money>) -> Stack {
        Stack { price, ..Stack::wood(Some(key.to_string()), wood, sizes.map(Some), n) }
    }

    fn wood(named: Option<String>, wood: &Wood<'_>, sizes: [Option<Length>; 3], free: Count) -> Stack {
        let (density, guessed, moves) = (wood.density, wood.is_a_guess(), wood.across(Sawn::Flat));
        Stack {
            place: Place::Bought,
            name: None,
            label: String::new(),
            wood: named,
            sizes,
            piece: None,
            free,
            density,
            guessed,
            moves,
            price: None,
            rests: false,
            planed: false,
        }
    }

    pub fn is_to_buy(&self) -> bool {
        self.place == Place::Bought
    }

    /// One piece, as it is measured or by its sides.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`].
    pub fn volume(&self) -> Answer<Volume> {
        let [thickness, width, length] = self.sizes.map(Option::unwrap_or_default);
        self.piece.map_or_else(|| Volume::of(thickness, width, length), Ok)
    }

    /// Whether it may join a plan; if not, why.
    ///
    /// # Errors
    /// [`LeftOut`] with the first reason that holds.
    pub fn joins(&self, wish: &Joins) -> Result<[Length; 3], LeftOut> {
        let [Some(thickness), Some(width), Some(length)] = self.sizes else { return Err(LeftOut::NoSize) };
        let other = !wish.woods.is_empty() && !self.wood.as_ref().is_some_and(|wood| wish.woods.contains(wood));
        match wish.thickness.as_nm().saturating_sub(thickness.as_nm()) {
            _ if self.free == 0 => Err(LeftOut::NoneFree),
            _ if other => Err(LeftOut::OtherWood),
            by if 0 < by && !(self.planed && wish.finished == Some(thickness)) => {
                Err(LeftOut::Thinner { by: Length::nm(by).unwrap_or_default() })
            }
            _ => Ok([thickness, width, length]),
        }
    }
}
