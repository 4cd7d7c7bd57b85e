//! A can that is opened on one job and used on others: 34.90 for 32 fl oz.

use super::*;
use crate::app::jobs::cans::CanTap;
use crate::app::workshop::{Over, Tap as ShopTap};

fn can(tap: CanTap) -> Pick {
    Pick::Can(tap)
}

#[test]
fn a_can_is_opened_once_and_its_rest_is_a_tap_away() {
    let mut maker = Maker::at_the_start();
    let finish = Key::read("finish").unwrap();
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Spend)).hides(&["Some of a can that is open"]);
    maker.pick(Pick::Way(Way::Share)).spending(finish).hides(&["ml"]).pick(can(CanTap::Keeps(true)));
    maker.shows(&["What is left of it", "Keep count", "fl oz", "Used may stay empty"]).figures(&["9.5", "32", "34.90"]).tap(Tap::Save);
    maker.shows(&["Spent", "Finish", "9.5 of a pack of 32 at", "34.90", "10.36"]);
    // Again: one tap, and how much.
    maker.tap(Tap::Write(What::Spend)).shows(&["Some of a can that is open", "Finish", "22.5 fl oz left"]);
    let id = maker.app.own.workshop().cans[0].id;
    maker.pick(can(CanTap::Of(Some(id)))).shows(&["Finish: 22.5 of 32 fl oz left, under a month open"]).figures(&["23"]).tap(Tap::Save);
    maker.shows(&["23 used, and 22.5 are left in the pack"]).figures(&["20"]).tap(Tap::Save).shows(&["21.81", "10.36", "In all"]);
    // What no job carries is the workshop's: 34.90 - 10.36 - 21.81.
    maker.say(Msg::Workshop(ShopTap::ShowPage(Over::Costs)));
    maker.shows(&["Open cans and packs", "Finish", "2.5 of 32 fl oz left"]);
    maker.say(Msg::Workshop(ShopTap::Line(id)));
    maker.shows(&["It is empty", "Strike"]).say(Msg::Workshop(ShopTap::EmptyCan(id)));
    maker.shows(&["2.73", "rest of cans", "2.73", "Take back"]).hides(&["Open cans and packs"]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["Open cans and packs"]).hides(&["rest of cans"]);
}

#[test]
fn a_can_may_be_opened_before_any_of_it_is_used() {
    let mut maker = Maker::at_the_start();
    let glue = Key::read("glue").unwrap();
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Share)).spending(glue);
    maker.pick(can(CanTap::Keeps(true))).pick(can(CanTap::Unit(Key::read("g").unwrap()))).figures(&["", "500", "12"]).tap(Tap::Save);
    maker.shows(&["Nothing is written down yet."]).tap(Tap::Write(What::Spend)).shows(&["Glue", "500 g left"]);
}

/// A quarter of 32 fl oz at 34.90, as a part of a full one or as an amount.
#[test]
fn a_part_of_a_full_can_is_said_in_per_cent() {
    let check = |by_part: bool, typed: &str, shown: &[&str]| {
        let mut maker = Maker::at_the_start();
        let finish = Key::read("finish").unwrap();
        maker.room("stands", Room::Hours).tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Share)).spending(finish);
        maker.pick(can(CanTap::Keeps(true))).figures(&["", "32", "34.90"]).tap(Tap::Save).tap(Tap::Write(What::Spend));
        let id = maker.app.own.workshop().cans[0].id;
        maker.pick(can(CanTap::Of(Some(id)))).pick(can(CanTap::ByPart(by_part)));
        maker.shows(&["How much", "Part of a full one", if by_part { "%" } else { "fl oz" }]).figures(&[typed]).tap(Tap::Save).shows(shown);
    };
    check(true, "25", &["8 of a pack of 32 at", "8.73"]);
    check(false, "8", &["8 of a pack of 32 at", "8.73"]);
    check(true, "101", &["0 % to 100 %"]);
}

/// 9.5 of 32 fl oz at 34.90 were 10.36; four go back into the can: 4.36 of it, and 26.5 are left. Of the last 5.5 all that is left goes back.
#[test]
fn what_comes_back_of_a_can_goes_into_it_again() {
    let mut maker = Maker::at_the_start();
    let finish = Key::read("finish").unwrap();
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Share)).spending(finish);
    maker.pick(can(CanTap::Keeps(true))).figures(&["9.5", "32", "34.90"]).tap(Tap::Save);
    let line = maker.sheet().account.costs.lines[0].entry;
    let left = |maker: &Maker| maker.app.own.workshop().cans[0].left().normalize().to_string();
    let spent = |maker: &Maker| {
        let sums = maker.sheet().account.costs.lines.iter().map(|line| line.sum.amount()).collect::<Vec<_>>();
        sums.into_iter().sum::<fivebar_core::quantity::Decimal>().normalize().to_string()
    };
    maker.tap(Tap::Write(What::CameBack(line))).shows(&["Money", "Back in the can"]).pick(can(CanTap::Back(true))).shows(&["fl oz"]);
    maker.figures(&["10"]).tap(Tap::Save).shows(&["10 came back of 9.5 that were used"]);
    maker.figures(&["4"]).tap(Tap::Save).shows(&["4 back in the can", "−4.36"]);
    assert_eq!((left(&maker), spent(&maker)), ("26.5".to_owned(), "6".to_owned()));
    maker.tap(Tap::Write(What::CameBack(line))).pick(can(CanTap::Back(true))).figures(&["5.5"]).tap(Tap::Save);
    assert_eq!((left(&maker), spent(&maker)), ("32".to_owned(), "0".to_owned()));
    // What it was used for is struck: the can was opened in the same act.
    maker.tap(Tap::Strike(line));
    assert_eq!(maker.app.own.workshop().cans.len(), 0);
}

/// Money that came back of a can leaves what is in it; bolts are in no can.
#[test]
fn money_back_leaves_the_can_alone() {
    let mut maker = Maker::at_the_start();
    let [finish, bolts] = ["finish", "bolts"].map(|key| Key::read(key).unwrap());
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Share)).spending(finish);
    maker.pick(can(CanTap::Keeps(true))).figures(&["9.5", "32", "34.90"]).tap(Tap::Save);
    let line = maker.sheet().account.costs.lines[0].entry;
    maker.tap(Tap::Write(What::CameBack(line))).figures(&["4"]).tap(Tap::Save);
    assert_eq!(maker.app.own.workshop().cans[0].left().to_string(), "22.5");
    maker.tap(Tap::Write(What::Spend)).spending(bolts).figures(&["5"]).tap(Tap::Save);
    let line = maker.sheet().account.costs.lines.iter().find(|line| line.can.is_none() && line.back.is_none()).unwrap().entry;
    maker.tap(Tap::Write(What::CameBack(line))).hides(&["Back in the can"]);
}

/// 90 for 500 ml are 180 for a litre: asked about once; another figure is asked about anew, and the same key once more takes it.
#[test]
fn a_price_far_from_the_usual_is_asked_about_once() {
    let mut maker = Maker::at_the_start();
    let cans = |maker: &Maker| maker.app.own.workshop().cans.len();
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Share)).spending(Key::read("glue").unwrap());
    maker.pick(can(CanTap::Keeps(true))).pick(can(CanTap::Unit(Key::read("ml").unwrap()))).figures(&["", "500", "90"]).tap(Tap::Save);
    maker.shows(&["$180.00 for a litre? The same key once more takes it."]);
    assert_eq!(cans(&maker), 0);
    maker.tap(Tap::At(2)).tap(Tap::Press(Press::Digit(8))).hides(&["for a litre?"]);
    maker.figures(&["", "500", "95"]).tap(Tap::Save).shows(&["$190.00 for a litre?"]);
    maker.tap(Tap::Save).hides(&["for a litre?"]);
    assert_eq!(cans(&maker), 1);
}
