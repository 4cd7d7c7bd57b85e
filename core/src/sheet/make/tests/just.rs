//! A pile of just the section of a part, that would do alone with less wood than a plan of sticks takes.

use super::later::Bench;
use super::mm;
use super::sticks::of_sticks;
use crate::quantity::{Length, Volume};
use crate::sheet::make::just::{Just, of_less_wood};
use crate::sheet::make::{Given, What};
use crate::sheet::plan::wish::Wish;
use crate::sheet::plan::{Cut, CutLine};

/// Boards of three litres, and bars of one that have just the section of a strip; a job with nine strips and a foot.
fn bench(bars: &str, strip: &str) -> Bench {
    Bench::of(&format!(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile boards oak-european 30 x 100 x 1000 mm\ncount 9 boards\n\
         pile bars {bars}\nhome\njob tray \"Tray\" 1 spec\npart \"strip\" 9 of {strip} for tray\n\
         part \"foot\" 1 of 10 x 30 x 200 mm for tray\n"
    ))
}

const BARS: &str = "oak-european 20 x 50 x 1000 mm\ncount 3 bars";
const STRIP: &str = "20 x 50 x 300 mm oak-european";

fn place(given: &Given, pile: &str) -> usize {
    given.sources.iter().position(|source| source.pile.name.as_deref() == Some(pile)).unwrap()
}

fn part(given: &Given, name: &str) -> usize {
    let Wish::Sticks(parts) = &given.ready.wish else { panic!("sticks") };
    parts.parts.iter().position(|part| part.name == name).unwrap()
}

/// So many pieces of a pile, so many of each part from each, and what goes back of each.
type Line<'a> = (&'a str, i64, &'a [(&'a str, i64)], i64);

fn line(given: &Given, (pile, n, parts, back): Line<'_>) -> CutLine {
    let cut = |(name, n): &(&str, i64)| Cut { n: *n, size: [mm(300), mm(50), mm(20)], part: Some(part(given, name)) };
    let remainder = (0 < back).then(|| mm(back));
    CutLine { source: place(given, pile), n, numbers: vec![], pieces: parts.iter().map(cut).collect(), remainder }
}

/// What is named beside a plan that is cut so: how many bars, and their litres.
#[track_caller]
fn check(bench: &Bench, lines: &[Line<'_>], does: Option<u32>) {
    let (given, _, mut shown) = of_sticks(bench, "", 0);
    shown.lines = lines.iter().map(|one| line(&given, *one)).collect();
    let litre = |n: u32| Volume::of(mm(20), mm(50), Length::METRE).unwrap().times(n).unwrap();
    let just = does.map(|n| Just { source: place(&given, "bars"), parts: vec![part(&given, "strip")], n, volume: litre(n) });
    assert_eq!(of_less_wood(&given, &shown), just.into_iter().collect::<Vec<_>>(), "{lines:?}");
}

/// By hand: three of 300 and their kerfs come of a metre, a fourth does not; nine take three bars of a litre, and three boards of three.
#[test]
fn bars_that_do_with_less_wood_are_named() {
    let boards = ("boards", 3, &[("strip", 3)][..], 0);
    check(&bench(BARS, STRIP), &[boards], Some(3));
    check(&bench(&BARS.replace("count 3", "count 2"), STRIP), &[boards], None);
    check(&bench(&BARS.replace("20 x 50", "50 x 20"), STRIP), &[boards], Some(3));
    // Some are cut of bars already: those count with the others.
    check(&bench(BARS, STRIP), &[("boards", 2, &[("strip", 3)], 0), ("bars", 1, &[("strip", 3)], 0)], Some(3));
    // All are: it takes what it takes.
    check(&bench(BARS, STRIP), &[("bars", 3, &[("strip", 3)], 0)], None);
    check(&bench(BARS, STRIP), &[], None);
}

/// The section is another, the wood is one the strip is not made of, or a bar is too short for it.
#[test]
fn bars_that_do_not_do_are_not_named() {
    let boards = ("boards", 3, &[("strip", 3)][..], 0);
    check(&bench(&BARS.replace("20 x 50", "22 x 50"), STRIP), &[boards], None);
    check(&bench(&BARS.replace("1000 mm\ncount 3", "299 mm\ncount 30"), STRIP), &[boards], None);
    check(&bench(&BARS.replace("oak", "beech"), STRIP), &[boards], None);
}

/// By hand: of three boards with so much going back 0.33 of a metre each is taken, 2.97 litres; with 10 mm less 3.06, and three litres are less.
#[test]
fn what_goes_back_of_the_boards_is_not_taken() {
    let boards = |back| ("boards", 3, &[("strip", 3)][..], back);
    check(&bench(BARS, STRIP), &[boards(670)], None);
    check(&bench(BARS, STRIP), &[boards(660)], Some(3));
}

/// A bar that the foot is cut of is none that is free for strips; of a board that gives a foot, too, nothing stays on the rack.
#[test]
fn what_other_parts_are_cut_of_is_not_free() {
    let boards = ("boards", 3, &[("strip", 3)][..], 0);
    let foot = ("bars", 1, &[("foot", 1)][..], 0);
    check(&bench(BARS, STRIP), &[boards, foot], None);
    check(&bench(&BARS.replace("count 3", "count 4"), STRIP), &[boards, foot], Some(3));
    check(&bench(BARS, STRIP), &[boards, ("boards", 1, &[("foot", 1)], 0)], Some(3));
    check(&bench(BARS, STRIP), &[("boards", 3, &[("strip", 3), ("foot", 1)], 0)], None);
    check(&bench(&BARS.replace("count 3", "count 9"), STRIP), &[boards, ("bars", 1, &[("strip", 1), ("foot", 1)], 0)], None);
}

/// Only lengths from sticks are planned by their length.
#[test]
fn nothing_is_named_beside_another_shape() {
    let bench = bench(BARS, STRIP);
    let (given, _, mut shown) = of_sticks(&bench, "", 0);
    shown.lines = vec![line(&given, ("boards", 3, &[("strip", 3)], 0))];
    assert_eq!(of_less_wood(&given, &shown).len(), 1);
    let ask = crate::sheet::make::Ask { what: What::Parts(Some(1)), ..given.ask.clone() };
    let parts = crate::sheet::make::given(&bench.shop(), &ask).unwrap();
    assert_eq!(of_less_wood(&parts, &shown), []);
}
