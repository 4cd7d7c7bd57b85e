//! The bar of the five places; on a wide page it is the rail at the side.
use crate::parts::glyph;
use crate::view::{El, el};
use crate::words::en::parts as words;

/// Where the maker is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    Count,
    Bench,
    Price,
    Jobs,
    Workshop,
}

impl Place {
    /// All five, in the order of the bar and of the keys 1 to 5.
    pub const ALL: [Place; 5] = [Place::Count, Place::Bench, Place::Price, Place::Jobs, Place::Workshop];

    /// Its name in the address and among the screens.
    pub fn key(self) -> &'static str {
        match self {
            Place::Count => "count",
            Place::Bench => "bench",
            Place::Price => "price",
            Place::Jobs => "jobs",
            Place::Workshop => "workshop",
        }
    }

    /// The place of a key.
    pub fn of(key: &str) -> Option<Place> {
        Place::ALL.into_iter().find(|place| place.key() == key)
    }

    /// Its name on the bar.
    pub fn name(self) -> &'static str {
        match self {
            Place::Count => words::COUNT,
            Place::Bench => words::BENCH,
            Place::Price => words::PRICE,
            Place::Jobs => words::JOBS,
            Place::Workshop => words::WORKSHOP,
        }
    }
}

/// The bar with the place the maker is at; `go` makes the message for a tap.
pub fn place_bar<M>(at: Place, go: impl Fn(Place) -> M) -> El<M> {
    el("nav", "places").attr("aria-label", words::PLACES).kids(Place::ALL.map(|place| {
        let key = el("button", "").key(place.name()).attr("type", "button").on_tap(go(place));
        let key = if place == at { key.attr("aria-current", "page") } else { key };
        key.kid(glyph::place(place)).kid(el("span", "").text(place.name()))
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_place_is_the_current_one() {
        for place in Place::ALL {
            let shown = place_bar(place, |p| p).html();
            assert_eq!(shown.matches("<button").count(), 5);
            assert_eq!(shown.matches("aria-current").count(), 1);
        }
    }
}
