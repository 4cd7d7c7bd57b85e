//! What all pieces of a pile share, as every page of the rack and of a job shows it.

use super::count::Size;
use crate::haul::Pile;
use crate::quantity::{Key, Length};

/// What a pile is: its names, its wood and its size.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Alike {
    pub label: String,
    pub name: Option<String>,
    pub wood: Option<Key>,
    /// Its wood by the maker's own name, where that is in no table.
    pub own: Option<String>,
    /// Thickness, width, and length with the high end of its band.
    pub thickness: Option<Length>,
    pub width: Option<Length>,
    pub length: Option<Length>,
    pub length_to: Option<Length>,
}

impl Alike {
    pub fn size(&self) -> Size {
        Size { thickness: self.thickness, width: self.width, length: self.length, length_to: self.length_to }
    }
}

impl From<&Pile> for Alike {
    fn from(pile: &Pile) -> Alike {
        Alike {
            label: pile.label.clone(),
            name: pile.name.clone(),
            wood: pile.wood.clone(),
            own: pile.own.as_ref().map(|own| own.name.clone()),
            thickness: pile.thickness,
            width: pile.width,
            length: pile.length,
            length_to: pile.length_to,
        }
    }
}
