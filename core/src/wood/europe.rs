//! Woods of the European trade, by density at 12 % moisture.
//!
//! Densities as trade lexicons and forest institutes print them. Movement: a trade association's table of differential shrinkage
//! (the figures of DIN 68100, not itself seen) and others; where sources differ the span between them is kept.
//! Fractions of width for each point of moisture.

use super::species::Status::*;
use super::species::{Basis, Movement, Species, one, span};

pub const WOODS: [Species; 16] = [
    Species {
        key: "oak-european",
        name: "European oak",
        botanical: "Quercus robur / Q. petraea",
        basis: Basis::Density(702.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0016, 0.0016, 0.0018), tangential: span(0.0036, 0.0035, 0.0036), status: Read }),
    },
    Species {
        key: "beech-european",
        name: "European beech",
        botanical: "Fagus sylvatica",
        basis: Basis::Density(712.0),
        status: Read,
        movement: Some(Movement { radial: one(0.002), tangential: span(0.0041, 0.0041, 0.0042), status: Read }),
    },
    Species {
        key: "ash-european",
        name: "European ash",
        botanical: "Fraxinus excelsior",
        basis: Basis::Density(702.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0021, 0.0017, 0.0021), tangential: span(0.0038, 0.0027, 0.0038), status: Read }),
    },
    Species {
        key: "maple-sycamore",
        name: "sycamore maple",
        botanical: "Acer pseudoplatanus",
        basis: Basis::Density(630.0),
        status: Read,
        movement: Some(Movement { radial: one(0.0015), tangential: one(0.003), status: Read }),
    },
    Species {
        key: "walnut-european",
        name: "European walnut",
        botanical: "Juglans regia",
        basis: Basis::Density(680.0),
        status: Read,
        movement: Some(Movement { radial: one(0.0018), tangential: one(0.0029), status: Read }),
    },
    Species {
        key: "cherry-wild",
        name: "wild cherry",
        botanical: "Prunus avium",
        basis: Basis::Density(603.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0017, 0.0016, 0.0018), tangential: span(0.0028, 0.0026, 0.0033), status: Computed }),
    },
    Species {
        key: "elm-european",
        name: "European elm",
        botanical: "Ulmus glabra / U. minor / U. laevis",
        basis: Basis::Density(680.0),
        status: Read,
        movement: Some(Movement { radial: span(0.002, 0.0017, 0.002), tangential: span(0.0028, 0.0023, 0.0032), status: Computed }),
    },
    Species {
        key: "chestnut-sweet",
        name: "sweet chestnut",
        botanical: "Castanea sativa",
        basis: Basis::Density(560.0),
        status: Read,
        movement: Some(Movement { radial: one(0.0014), tangential: span(0.00235, 0.0021, 0.0026), status: Computed }),
    },
    Species {
        key: "birch-european",
        name: "European birch",
        botanical: "Betula pendula / B. pubescens",
        basis: Basis::Density(650.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0027, 0.002, 0.0029), tangential: span(0.0036, 0.0027, 0.0041), status: Read }),
    },
    Species {
        key: "alder-black",
        name: "black alder",
        botanical: "Alnus glutinosa",
        basis: Basis::Density(550.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0016, 0.0015, 0.0017), tangential: span(0.0027, 0.0024, 0.003), status: Read }),
    },
    Species {
        key: "lime-european",
        name: "European lime",
        botanical: "Tilia cordata / T. platyphyllos",
        basis: Basis::Density(490.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0019, 0.0015, 0.0023), tangential: span(0.0028, 0.0024, 0.0032), status: Computed }),
    },
    Species {
        key: "hornbeam-european",
        name: "European hornbeam",
        botanical: "Carpinus betulus",
        basis: Basis::Density(800.0),
        status: Read,
        movement: Some(Movement { radial: one(0.00237), tangential: one(0.00415), status: Computed }),
    },
    Species {
        key: "robinia-european",
        name: "European-grown robinia",
        botanical: "Robinia pseudoacacia",
        basis: Basis::Density(730.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0024, 0.002, 0.0027), tangential: span(0.0035, 0.0032, 0.0038), status: Read }),
    },
    Species {
        key: "larch-european",
        name: "European larch",
        botanical: "Larix decidua",
        basis: Basis::Density(583.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0014, 0.0014, 0.0018), tangential: span(0.003, 0.0028, 0.0036), status: Read }),
    },
    Species {
        key: "pine-scots",
        name: "Scots pine",
        botanical: "Pinus sylvestris",
        basis: Basis::Density(510.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0019, 0.0013, 0.0019), tangential: span(0.0036, 0.0026, 0.0036), status: Read }),
    },
    Species {
        key: "spruce-norway",
        name: "Norway spruce",
        botanical: "Picea abies",
        basis: Basis::Density(470.0),
        status: Read,
        movement: Some(Movement { radial: span(0.0019, 0.0016, 0.0019), tangential: span(0.0039, 0.0031, 0.0039), status: Read }),
    },
];
