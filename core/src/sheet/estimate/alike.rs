//! Whether two names call the same thing, where no kind of piece is known. Ours.

use crate::quantity::{Listed, in_small};
use crate::wood::species::{european, north_american};

/// Words that tell the order, and not the thing.
const NO_THING: [&str; 8] = ["again", "another", "commission", "job", "no", "order", "piece", "project"];

/// Words behind which somebody, or something else, is named.
const BEHIND: [&str; 2] = ["for", "with"];

/// Endings behind which a plural has "es": boxes, benches, dishes, glasses.
const WITH_ES: [&str; 5] = ["ch", "sh", "ss", "x", "z"];

/// Words of the names of woods that tell which of several it is, or where it grows, as they stand without a plural.
const WHICH: [&str; 17] = [
    "american", "black", "coast", "eastern", "european", "northern", "norway", "red", "scot", "shagbark", "silver", "sugar", "sweet",
    "western", "white", "wild", "yellow",
];

/// Whether all words of one name are in the other, the thing itself is the last of both, and of what stands before it the one has nothing more than
/// a wood: "Ash chair" and "Ash chair 2", "Chairs" and "Ash chair"; not "Anna" and "Anna wardrobe", and not "Frame" and "Bed frame". Numbers, plurals
/// and what only tells the order make no difference, and no thing. The
/// maker's own woods by their names in small letters.
pub fn is_alike(name: &str, other: &str, own: &[String]) -> bool {
    let names = [name, other].map(in_small);
    let [Some(one), Some(other)] = names.each_ref().map(|name| before(name).split_last().map(|(thing, rest)| (*thing, rest.to_vec())))
    else {
        return false;
    };
    let [all, all_other] = names.each_ref().map(|name| words(name));
    let holds = |all: &[&str], some: &[&str]| some.iter().all(|word| all.contains(word));
    let woods = woods(own);
    let lacks = |all: &[&str], rest: &[&str]| rest.iter().all(|word| all.contains(word) || is_wood(word, rest, &woods));
    let is_same = one.0 == other.0 && lacks(&all_other, &one.1) && lacks(&all, &other.1);
    is_same && (holds(&all, &all_other) || holds(&all_other, &all))
}

/// The words of a name before a comma or a bracket, and before whom it is for: the last of them is the thing.
fn before(name: &str) -> Vec<&str> {
    let all = words(name.split([',', ';', '(']).next().unwrap_or_default());
    all.into_iter().take_while(|word| !BEHIND.contains(word)).listed()
}

/// The words of each wood, of the tables and of the maker's own: of "oak-white" oak and white.
fn woods(own: &[String]) -> Vec<Vec<&str>> {
    let of =
        |name: &'static str| name.split('-').flat_map(|part| part.strip_suffix("cedar").map_or(vec![part], |red| vec![red, "cedar", part]));
    let tables = north_american().iter().chain(european()).map(|wood| of(wood.key).map(of_one).listed());
    tables.chain(own.iter().map(|name| words(name))).listed()
}

/// A word that names a wood, as "oak" does; what only tells which of several it is, as "white" does, where the wood itself is named beside it: a lone
/// "sugar" is no maple.
fn is_wood(word: &str, beside: &[&str], woods: &[Vec<&str>]) -> bool {
    let names = |part: &&str| !WHICH.contains(part);
    let of_it = woods.iter().filter(|wood| wood.contains(&word));
    of_it.into_iter().any(|wood| names(&word) || wood.iter().any(|part| names(part) && beside.contains(part)))
}

fn words(name: &str) -> Vec<&str> {
    let all = name.split(|sign: char| !sign.is_alphanumeric()).map(of_one);
    all.filter(|word| !word.is_empty() && !NO_THING.contains(word) && !word.starts_with(|sign: char| sign.is_ascii_digit())).listed()
}

/// A word without what a plural adds.
fn of_one(word: &str) -> &str {
    let short = word.strip_suffix("es").filter(|short| WITH_ES.iter().any(|end| short.ends_with(end)));
    let word = short.unwrap_or(word);
    word.strip_suffix('s').unwrap_or(word)
}
