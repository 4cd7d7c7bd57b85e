//! Whether two names call the same thing, where no kind of piece is known. Ours.

use crate::quantity::{Listed, in_small};

/// Words that tell the order, and not the thing.
const NO_THING: [&str; 8] = ["again", "another", "commission", "job", "no", "order", "piece", "project"];

/// Words behind which somebody, or something else, is named.
const BEHIND: [&str; 2] = ["for", "with"];

/// Whether all words of one name are in the other, and the thing itself is the last of both: "Ash chair" and "Ash chair 2", "Chairs" and "Ash chair";
/// not "Anna" and "Anna wardrobe". Numbers, plurals and what only tells the order make no difference, and no thing.
pub fn is_alike(name: &str, other: &str) -> bool {
    let [one, other] = [name, other].map(in_small);
    let is_same = thing(&one).zip(thing(&other)).is_some_and(|(one, other)| one == other);
    let [one, other] = [words(&one), words(&other)];
    let holds = |all: &[&str], some: &[&str]| some.iter().all(|word| all.contains(word));
    is_same && (holds(&one, &other) || holds(&other, &one))
}

/// The last word of a name, before a comma or a bracket, and before whom it is for.
fn thing(name: &str) -> Option<&str> {
    let all = words(name.split([',', ';', '(']).next()?);
    let behind = all.iter().position(|word| BEHIND.contains(word)).unwrap_or(all.len());
    all.get(..behind)?.last().copied()
}

fn words(name: &str) -> Vec<&str> {
    let all = name.split(|sign: char| !sign.is_alphanumeric()).map(|word| word.strip_suffix('s').unwrap_or(word));
    all.filter(|word| !word.is_empty() && !NO_THING.contains(word) && !word.starts_with(|sign: char| sign.is_ascii_digit())).listed()
}
