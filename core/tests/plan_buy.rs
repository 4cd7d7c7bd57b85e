//! Boards that could be bought: as few of them as do. Reckoned by hand.

use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::quantity::{Currency, Key, Length, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::{Ask, Boards, Top, What, Which, given, sources};
use fivebar_core::sheet::plan::sheet;
use fivebar_core::story::tell;

const JOB: &str = "2026-03-02 09:00 +01:00 workshop EUR metric\njob bench \"Shoe bench\" 1 spec\n";

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

/// Parts, the size of the boards, and how many of them are needed.
#[track_caller]
fn check(parts: &str, size: [i64; 3], boards: u32) {
    let story = tell(&format!("{JOB}{parts}"));
    assert_eq!(story.refused, []);
    let price = Money::whole(42.into(), Currency::EUR);
    let bought = vec![Boards { wood: Key::read("cherry-wild"), size: size.map(mm), n: 9, price }];
    let ask =
        Ask { job: story.names.job("bench").unwrap(), what: What::Parts(Some(1)), turned: vec![], bought, without: vec![], over: None };
    let given = given(&Shop::of(&story.book, story.now.at), &ask).unwrap();
    let answered = given.ready.asked.solve(&mut Patience::new(Some(60_000), &mut |_: Progress<'_>| true), 1);
    let used = sheet(&given.ready, &answered, given.room).unwrap().used;
    assert_eq!(used.iter().map(|used| used.pieces).sum::<u32>(), boards, "{used:?}");
}

/// Two rows of two give four from a board of 2400 x 180: 2 x 82 and the cuts are within 180, 2 x 1102 within 2400. What is left of a third
/// board would be long enough to keep, and is paid for all the same.
#[test]
fn no_more_boards_are_bought_than_do() {
    check("part \"slat\" 6 of 18 x 80 x 1100 mm cherry-wild for bench\n", [25, 180, 2400], 2);
    check("part \"slat\" 4 of 18 x 80 x 1100 mm cherry-wild for bench\n", [25, 180, 2400], 1);
}

/// Oak lies as A and ash as B; all the ash is in the job. Boards that are bought beside them are C.
#[test]
fn boards_that_were_bought_have_a_letter_of_their_own() {
    let rack = "leave for yard\npile oak oak-european 25 x 55 x 900 mm\ncount 9 oak\npile ash ash-european 38 x 120 x 320 mm\n\
                count 4 ash\ntake 4 ash for bench\nbuy 3 planks walnut-european 25 x 150 x 2000 mm for 72\n";
    let story = tell(&format!("{JOB}{rack}"));
    assert_eq!(story.refused, []);
    let all = sources(&Shop::of(&story.book, story.now.at), story.names.job("bench").unwrap()).unwrap();
    let mut labels: Vec<&str> = all.iter().map(|source| source.pile.label.as_str()).collect();
    labels.sort_unstable();
    assert_eq!(labels, ["A", "B", "C"]);
}

/// A top of 1400 x 450. Oak of 65 on the rack gives rows of 60: eight of 56.3. Walnut to buy, of 155, gives three of 150 with less waste: it is
/// another way, and the first only where the oak is left out. Nothing is bought unasked.
#[test]
fn what_lies_on_the_rack_comes_before_boards_to_buy() {
    let rack = "leave for yard\npile oak oak-european 25 x 65 x 900 mm\ncount 44 oak\n";
    let story = tell(&format!("{JOB}{rack}"));
    assert_eq!(story.refused, []);
    let shop = Shop::of(&story.book, story.now.at);
    let job = story.names.job("bench").unwrap();
    let boards = |wood: &str| Boards { wood: Key::read(wood), size: [25, 155, 2000].map(mm), n: 5, price: None };
    let of = |turned: Vec<Which>, wood: &str| {
        let top = Top { length: mm(1400), width: mm(450), split: true, apart: mm(100), ..Top::default() };
        let ask = Ask { job, what: What::Top(top), turned, bought: vec![boards(wood)], without: vec![], over: None };
        let given = given(&shop, &ask).unwrap();
        let bought = given.sources.iter().map(|source| source.bought.is_some()).collect::<Vec<_>>();
        (given.ways.iter().map(|way| (way.rows, way.buys)).collect::<Vec<_>>(), bought)
    };
    let oak = sources(&shop, job).unwrap()[0].which();
    assert_eq!(of(vec![], "walnut-european"), (vec![(8, false), (3, true)], vec![false]));
    assert_eq!(of(vec![oak], "walnut-european"), (vec![(3, true)], vec![true]));
    // Boards of the same wood are not taken either where the rack makes all of it.
    assert_eq!(of(vec![], "oak-european"), (vec![(8, false)], vec![false]));
}
