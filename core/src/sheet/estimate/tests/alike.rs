//! By which earlier job of no known kind a new one is quoted: one whose name calls the same thing.

use super::*;
use crate::sheet::quote::{NoQuote, quote};
use history::By;

#[track_caller]
fn check(earlier: &str, name: &str, by: By) {
    let told = format!(
        "2026-03-02 08:00 +00:00 workshop EUR metric\nrate pay 16 hours 420 logged 350 costs 1050\njob old \"{earlier}\" 1 spec\n\
         start \"assemble\" make on old\n14:00 stop\nsell 1 old for 300\nend old\njob new \"{name}\" 1 order\nspend 20 wood on new\n"
    );
    let story = crate::story::tell(&told);
    assert_eq!(story.refused, [], "{told}");
    let (shop, new) = (Shop::of(&story.book, story.now.at), story.names.job("new").unwrap());
    assert_eq!(estimate(&shop, new, true).unwrap().whole.map(|whole| whole.by), Some(by), "{earlier}, {name}");
    let waits = crate::ledger::fold::waits(&story.book);
    let given = crate::sheet::dates::Given { waits: &waits, guess: |_| None, with_factor: true, now: story.now };
    let quoted = if by == By::NoKind { Some(NoQuote::Guess) } else { None };
    assert_eq!(quote(&shop, new, given).unwrap().range.err(), quoted, "{earlier}, {name}");
}

#[test]
fn nothing_is_quoted_by_a_name_that_calls_another_thing() {
    // The same thing, once more, of another wood, more or fewer of them, for somebody else.
    let chairs = ["Ash chair 2", "2 ash chairs", "ash chair, small", "Chairs", "Ash chair again", "Ash chair for Anna", "Ash chair no. 4"];
    chairs.into_iter().for_each(|name| check("Ash chair", name, By::Alike));
    check("Ash chair 2", "Ash chair 3", By::Alike);
    check("Mirror", "Commission: mirror", By::Alike);
    // A buyer, a wood, or nothing at all is no thing.
    check("Anna", "Anna wardrobe", By::NoKind);
    check("Anna wardrobe", "Anna", By::NoKind);
    check("Anna", "Mirror for Anna", By::NoKind);
    check("Ash chair", "Ash", By::NoKind);
    check("Commission", "Commission 2", By::NoKind);
    check("12", "12", By::NoKind);
    // A further word before the thing makes another thing of it, unless it is a wood.
    for (one, other) in [("Frame", "Bed frame"), ("Mirror", "Standing mirror"), ("Desk", "Standing desk"), ("Ash rack", "Garden ash rack")]
    {
        check(one, other, By::NoKind);
        check(other, one, By::NoKind);
    }
    check("Standing desk", "Standing desks for Anna", By::Alike);
    check("Sash", "Sashes", By::Alike);
    check("2 white oak dishes", "Dish", By::Alike);
    // The last word is the same, and more of it is not.
    check("Ash chair", "Pine chair", By::NoKind);
}

/// A wood is told by its name; what only says which of several it is, or another thing, is none by itself.
#[test]
fn a_thing_of_a_wood_is_that_thing() {
    for (one, other) in [
        ("Chest", "Cedar chest"),
        ("Chest", "Red cedar chest"),
        ("Bowl", "Sugar maple bowl"),
        ("Bowl", "Scots pine bowl"),
        ("Sugar bowl", "Sugar bowl 2"),
        ("Oak mirror", "White oak mirror"),
    ] {
        check(one, other, By::Alike);
        check(other, one, By::Alike);
    }
    for (one, other) in [("Bowl", "Sugar bowl"), ("Mirror", "Coast mirror"), ("Mirror", "White mirror"), ("Desk", "Plum desk")] {
        check(one, other, By::NoKind);
        check(other, one, By::NoKind);
    }
}

/// The maker's own woods are woods, too.
#[test]
fn a_thing_of_an_own_wood_is_that_thing() {
    for (own, name, by) in [("plum", "Plum desk", By::Alike), ("pear", "Plum desk", By::NoKind)] {
        let told = format!(
            "2026-03-02 08:00 +00:00 workshop EUR metric\nspecies own-{own} \"{own}\" 790\njob old \"Desk\" 1 spec\n\
             start \"assemble\" make on old\n14:00 stop\nsell 1 old for 300\nend old\njob new \"{name}\" 1 order\n"
        );
        let story = crate::story::tell(&told);
        assert_eq!(story.refused, [], "{told}");
        let (shop, new) = (Shop::of(&story.book, story.now.at), story.names.job("new").unwrap());
        assert_eq!(estimate(&shop, new, true).unwrap().whole.map(|whole| whole.by), Some(by), "{own}, {name}");
    }
}
