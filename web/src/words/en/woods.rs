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

/// A wood's name; one that this list does not know is shown by its key.
pub fn name(key: &str) -> String {
    let known = match key {
        "ash-white" | "ash-european" => "Ash",
        "cherry-black" | "cherry-wild" => "Cherry",
        "maple-sugar" | "maple-sycamore" => "Maple",
        "oak-white" => "White oak",
        "oak-northern-red" => "Red oak",
        "oak-european" => "Oak",
        "beech-european" | "beech-american" => "Beech",
        "walnut-black" | "walnut-european" => "Walnut",
        "unknown-hardwood" => "Not sure",
        _ => return full_name(key),
    };
    known.to_owned()
}

/// The usual wood of that name where these units are used: "Ash" is white ash in inches and European ash in millimetres.
pub fn of_units(key: &str, units: Units) -> Option<Key> {
    let said = name(key);
    usual(units).iter().find(|other| name(other) == said).and_then(|key| Key::read(key))
}

/// A wood's name where it may be the maker's own: by the name it was given.
pub fn called(key: &Key, own: Option<&str>) -> String {
    own.map_or_else(|| name(key.as_str()), fivebar_core::quantity::begin_large)
}

/// The same, with the own woods at hand.
pub fn among(key: &Key, woods: &Woods) -> String {
    called(key, woods.own_of(key).map(|own| own.name.as_str()))
}

/// A wood's whole name, as lists have it in which two share a short one: `beech-american` is "American beech".
pub fn full_name(key: &str) -> String {
    Species::of(key).map_or_else(|_| spelled(key), |species| fivebar_core::quantity::begin_large(species.name))
}

/// The same in the list of all woods, in which the usual ones stand first by their short names.
pub fn in_list(key: &Key, units: Units, woods: &Woods) -> String {
    match woods.own_of(key) {
        None if !usual(units).contains(&key.as_str()) => full_name(key.as_str()),
        _ => among(key, woods),
    }
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
        for units in [Units::Metric, Units::Inch] {
            let key = |key: &str| fivebar_core::quantity::Key::read(key).unwrap();
            let said: Vec<String> = listed(units).map(|species| super::in_list(&key(species.key), units, &Default::default())).collect();
            let twice: Vec<_> = said.iter().enumerate().filter(|(nth, name)| said[..*nth].contains(name)).collect();
            assert!(twice.is_empty(), "{twice:?}");
        }
    }
}
