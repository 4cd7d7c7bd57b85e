//! Keys for what the maker names: small letters and digits, so that a book of any language can be read by any.

use fivebar_core::quantity::{Key, Listed, in_small};
use fivebar_core::wood::species::Species;

/// Machines by their keys, in the order they are offered.
pub const MACHINES: [&str; 6] = ["jointer", "planer", "table-saw", "bandsaw", "drum-sander", "router-table"];

/// The most letters of a key that are taken from a name.
const MOST: usize = 24;

/// A key for a new wood that no other has; none where a thousand are taken.
pub fn new_wood(name: &str, taken: impl Fn(&Key) -> bool) -> Option<Key> {
    free(of_wood(name).or_else(|| Key::read("own")), taken)
}

/// A key for a new machine that no other has.
pub fn new_machine(name: &str, taken: impl Fn(&Key) -> bool) -> Option<Key> {
    free(of_machine(name).or_else(|| Key::read("own")), taken)
}

/// Names that differ by more than large letters, and spaces around them.
pub fn differ(one: &str, other: &str) -> bool {
    in_small(one.trim()) != in_small(other.trim())
}

/// The key of a wood by its name, the last word first as in the tables: "Wild plum" is `plum-wild`. Long names that begin alike give
/// the same key. `None` where none of its letters can stand in a key.
fn of_wood(name: &str) -> Option<Key> {
    let mut words = words(name);
    let by = words.len().saturating_sub(1);
    words.rotate_left(by);
    let key = words.join("-");
    let own = Species::of(&key).is_ok();
    Key::read(&if own { format!("own-{key}") } else { key })
}

/// The key of a machine by its name.
pub fn of_machine(name: &str) -> Option<Key> {
    Key::read(&words(name).join("-"))
}

/// The key itself, or `own-2`, `own-3`, the first that is free.
fn free(key: Option<Key>, taken: impl Fn(&Key) -> bool) -> Option<Key> {
    let key = key?;
    let numbered = (2..=999).filter_map(|n| Key::read(&format!("{key}-{n}")));
    std::iter::once(key.clone()).chain(numbered).find(|key| !taken(key))
}

fn words(name: &str) -> Vec<String> {
    let plain: String = in_small(name).chars().flat_map(in_key).collect();
    let cut: String = plain.chars().take(MOST).collect();
    cut.split(' ').filter(|word| !word.is_empty()).map(str::to_owned).listed()
}

/// A letter as it stands in a key; what is no letter parts words.
fn in_key(letter: char) -> Vec<char> {
    match letter {
        'a'..='z' | '0'..='9' => vec![letter],
        'ä' | 'æ' => vec!['a', 'e'],
        'ö' | 'ø' | 'œ' => vec!['o', 'e'],
        'ü' => vec!['u', 'e'],
        'ß' => vec!['s', 's'],
        'à' | 'á' | 'â' | 'ã' | 'å' | 'ą' => vec!['a'],
        'ç' | 'č' | 'ć' => vec!['c'],
        'è' | 'é' | 'ê' | 'ë' | 'ę' | 'ě' => vec!['e'],
        'ì' | 'í' | 'î' | 'ï' => vec!['i'],
        'ł' => vec!['l'],
        'ñ' | 'ń' | 'ň' => vec!['n'],
        'ò' | 'ó' | 'ô' | 'õ' => vec!['o'],
        'š' | 'ś' => vec!['s'],
        'ù' | 'ú' | 'û' | 'ů' => vec!['u'],
        'ý' => vec!['y'],
        'ž' | 'ź' | 'ż' => vec!['z'],
        _ => vec![' '],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wood_is_keyed_by_its_name() {
        for (name, key) in [
            ("Plum", Some("plum")),
            ("  Wild  plum ", Some("plum-wild")),
            ("Zwetschge, süß", Some("suess-zwetschge")),
            ("Teak", Some("own-teak")),
            ("White ash", Some("own-ash-white")),
            ("A wood with a very long name indeed", Some("long-a-wood-with-a-very")),
            ("桜", None),
            ("", None),
        ] {
            assert_eq!(of_wood(name).as_ref().map(Key::as_str), key, "{name}");
        }
        assert_eq!(of_machine("Big Bandsaw").unwrap().as_str(), "big-bandsaw");
    }

    #[test]
    fn a_key_that_is_taken_gets_a_number() {
        for (name, taken, key) in [
            ("Plum", [].as_slice(), "plum"),
            ("Plum", &["plum"], "plum-2"),
            ("Plum", &["plum", "plum-2"], "plum-3"),
            ("桜", &[], "own"),
            ("桜", &["own"], "own-2"),
        ] {
            assert_eq!(new_wood(name, |key| taken.contains(&key.as_str())).unwrap().as_str(), key, "{name}");
        }
        assert_eq!(new_wood("Plum", |_| true), None);
    }

    #[test]
    fn names_differ_by_more_than_large_letters() {
        for (one, other, differs) in [("Plum", " plum ", false), ("plum", "wild plum", true), ("Süß", "süß", false)] {
            assert_eq!(differ(one, other), differs, "{one}, {other}");
        }
    }
}
