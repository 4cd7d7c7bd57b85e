//! English: woods by their key.

use fivebar_core::quantity::{Key, Listed, Units};
use fivebar_core::wood::species::Species;
use fivebar_core::wood::woods::Woods;

/// The usual woods first, for the chips, by the table the units go with.
pub fn usual(units: Units) -> &'static [&'static str] {
    match units {
        Units::Inch => &["ash-white", "cherry-black", "maple-sugar", "oak-white", "oak-northern-red", "walnut-black", "unknown-hardwood"],
        Units::Metric => {
            &["oak-european", "beech-european", "ash-european", "maple-sycamore", "cherry-wild", "walnut-european", "unknown-hardwood"]
        }
    }
}

/// A wood's name, the same on every page and of no other wood; one that this list does not know is shown by its key.
pub fn name(key: &str) -> String {
    let known = match key {
        "ash-white" => "Ash",
        "cherry-black" => "Cherry",
        "maple-sugar" => "Maple",
        "oak-white" => "White oak",
        "oak-northern-red" => "Red oak",
        "oak-european" => "Oak",
        "beech-european" => "Beech",
        "walnut-black" => "Walnut",
        "unknown-hardwood" => "Not sure",
        _ => return full_name(key),
    };
    known.to_owned()
}

/// Whether a name is too long for a third of a small page in large letters: "European ash", not "White oak".
pub fn is_long(name: &str) -> bool {
    9 < name.chars().count()
}

/// Usual woods of inches, each with the usual wood of millimetres of its genus.
const PAIRS: [[&str; 2]; 4] = [
    ["ash-white", "ash-european"],
    ["cherry-black", "cherry-wild"],
    ["maple-sugar", "maple-sycamore"],
    ["walnut-black", "walnut-european"],
];

/// The usual wood of its genus where these units are used: ash is white ash in inches and European ash in millimetres.
pub fn of_units(key: &str, units: Units) -> Option<Key> {
    let pair = PAIRS.iter().find(|pair| pair.contains(&key))?;
    pair.iter().find(|key| usual(units).contains(key)).and_then(|key| Key::read(key))
}

/// A wood's name where it may be the maker's own: by the name it was given.
pub fn called(key: &Key, own: Option<&str>) -> String {
    own.map_or_else(|| name(key.as_str()), fivebar_core::quantity::begin_large)
}

/// The same, with the own woods at hand.
pub fn among(key: &Key, woods: &Woods) -> String {
    called(key, woods.own_of(key).map(|own| own.name.as_str()))
}

/// A wood's whole name, as books have it: `maple-sugar` is "Sugar maple".
pub fn full_name(key: &str) -> String {
    Species::of(key).map_or_else(|_| spelled(key), |species| fivebar_core::quantity::begin_large(species.name))
}

/// Where a list says a wood by its short name, the whole one, to find it by.
pub fn whole(key: &str) -> Option<String> {
    Some(full_name(key)).filter(|whole| *whole != name(key))
}

/// `birch-yellow` is said "Yellow birch".
fn spelled(key: &str) -> String {
    let mut words: Vec<&str> = key.split('-').listed();
    let by = words.len().saturating_sub(1).min(1);
    words.rotate_left(by);
    fivebar_core::quantity::begin_large(&words.join(" "))
}

#[cfg(test)]
mod tests {
    use fivebar_core::quantity::Units;
    use fivebar_core::wood::species::listed;

    #[test]
    fn woods_are_said_as_at_the_yard() {
        for (key, said) in [("ash-white", "Ash"), ("birch-yellow", "Yellow birch"), ("teak", "Teak"), ("plum-wild", "Wild plum")] {
            assert_eq!(super::name(key), said);
        }
    }

    #[test]
    fn in_the_whole_list_no_two_woods_are_said_alike() {
        let said: Vec<String> = listed(Units::Inch).map(|species| super::full_name(species.key)).collect();
        assert!(said.iter().enumerate().all(|(nth, name)| !said[..nth].contains(name)), "{said:?}");
    }

    /// On chips, in lists, on tiles and plans: one name, one wood.
    #[test]
    fn no_two_woods_have_one_name() {
        for units in [Units::Metric, Units::Inch] {
            let said: Vec<String> = listed(units).map(|species| super::name(species.key)).collect();
            let twice: Vec<_> = said.iter().enumerate().filter(|(nth, name)| said[..*nth].contains(name)).collect();
            assert!(twice.is_empty(), "{twice:?}");
        }
        let shown = ["maple-sugar", "maple-sycamore"].map(|key| (super::name(key), super::whole(key)));
        assert_eq!(shown, [("Maple".into(), Some("Sugar maple".into())), ("Sycamore maple".into(), None)]);
    }

    /// Ash that was chosen before the millimetres is the usual ash there, by its own name.
    #[test]
    fn a_wood_goes_with_the_measure() {
        let of = |key: &str, units| super::of_units(key, units).map(|key| key.to_string());
        assert_eq!(of("ash-white", Units::Metric).as_deref(), Some("ash-european"));
        assert_eq!(of("ash-european", Units::Inch).as_deref(), Some("ash-white"));
        assert_eq!(of("oak-white", Units::Metric), None);
    }
}
