//! Keys for what the maker names: small letters and digits, so that a book of any language can be read by any.

use fivebar_core::quantity::{Key, in_small};
use fivebar_core::wood::species::Species;

/// Machines by their keys, in the order they are offered.
pub const MACHINES: [&str; 6] = ["jointer", "planer", "table-saw", "bandsaw", "drum-sander", "router-table"];

/// The most letters of a key that are taken from a name.
const MOST: usize = 24;

/// The key of a wood by its name, the last word first as in the tables: "Wild plum" is `plum-wild`. The same name gives the same key.
/// `None` where none of its letters can stand in a key.
pub fn of_wood(name: &str) -> Option<Key> {
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

/// A key no name gave: `own-1`, `own-2`, the first that is free.
pub fn numbered(taken: impl Fn(&Key) -> bool) -> Option<Key> {
    (1..=999).filter_map(|n| Key::read(&format!("own-{n}"))).find(|key| !taken(key))
}

fn words(name: &str) -> Vec<String> {
    let plain: String = in_small(name).chars().flat_map(in_key).collect();
    let cut: String = plain.chars().take(MOST).collect();
    cut.split(' ').filter(|word| !word.is_empty()).map(str::to_owned).collect()
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
        assert_eq!(numbered(|key| key.as_str() == "own-1").unwrap().as_str(), "own-2");
    }
}
