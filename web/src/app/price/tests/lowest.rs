//! A tag under the lowest pay, what is said before a tag, guesses whose day has come, and a price in parts.

use super::*;
use crate::app::price::waiting::WaitTap;
use fivebar_core::quantity::Span;

/// Five trays of 50 min and 8.64 each, 6.25 % on top: a tag of 65 is 69.06 with it, and 70 an hour needs 71.16.
const TRAYS: &str = "2026-05-04 08:00 -04:00 workshop USD inch\ntill tax 0.0625 top\nrate pay 80 lowest 70 hours 100 logged 100\n\
    job tray \"Tray\" 5 spec\nspend 43.20 oil on tray\nrecall \"make\" make on tray 2026-05-01 09:00 to 2026-05-01 13:10\n";
const WAITS: &str = "about tray pieces 5\ntag 65 tray\nguess tray asks 1 buys 0.2 at 69.05 by 2026-07-01 end 50\n";

/// The tag is the maker's own and is what is asked; nothing else under the lowest pay is proposed, and it says that it needs more than is asked.
#[test]
fn a_tag_under_the_lowest_pay_says_so_and_nothing_else_is_proposed() {
    let mut maker = Maker::told(&format!("{TRAYS}{WAITS}"), "tray");
    maker.shows(&["The tag is under your lowest pay: 72 with tax pays it."]);
    maker.offer("68").shows(&["Below your lowest pay", "Say 69", "Your lowest pay needs 72, more than you ask."]);
    maker.bargain(BargainTap::PayAndHours).hides(&["Two for"]);
}

#[test]
fn the_question_of_the_lowest_pay_says_its_exception() {
    use crate::app::workshop::figures::Figure;
    let said = crate::words::en::workshop::ask_under(Figure::Lowest);
    assert!(said.ends_with("No price that pays less is proposed but your own tag or settle."), "{said}");
}

/// Nothing was planned and no tag is set: that it is made is said where the hours to come are missed.
#[test]
fn that_it_is_made_is_said_before_there_is_a_tag() {
    let mut maker = Maker::told(TRAYS, "tray");
    let job = maker.job;
    maker.shows(&["hours to come", "It is made", "nothing of its work is to come", "Set its price"]);
    maker.tap(Tap::Made(job)).hides(&["hours to come", "It is made"]).shows(&["by your rate"]);
    // A price by your rate is none that the maker set: the key stays until there is one.
    maker.shows(&["They offer", "Set its price"]).tap(Tap::Tag(TagTap::Open(job, What::Tag))).press("80");
    maker.tap(Tap::Tag(TagTap::Done)).shows(&["tag 80", "They offer"]).hides(&["Set its price"]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["hours to come", "It is made"]);
}

/// The day by which it was to be sold has come: what waiting is worth is gone from the card, and it says why.
#[test]
fn the_card_says_that_the_day_to_be_sold_by_has_come() {
    let mut maker = Maker::told(&format!("{TRAYS}{WAITS}"), "tray");
    maker.shows(&["Asking price"]).hides(&["has come"]);
    maker.now.wall = Wall::new(maker.now.wall.at.plus(Span::minutes(70 * 24 * 60)), maker.now.wall.offset);
    let job = maker.job;
    maker.tap(Tap::Waiting(WaitTap::Open(job))).tap(Tap::Close);
    maker.shows(&["The day it was to be sold by, Wed 1 July, has come: say it anew."]).tap(Tap::Paper).shows(&["has come"]);
}

/// 150 in three parts of 60, 45 and 45: 50 typed for the second leaves 40 for the last; once the last is typed itself it stays.
#[test]
fn the_last_part_takes_the_rest_unless_it_was_typed() {
    use super::parts::PartsTap;
    let part = |tap: PartsTap| Tap::Parts(tap);
    let mut maker = Maker::told(&format!("{TRAYS}agree 150 for 2 tray fetched as deal\n"), "tray");
    let agreed = shop(&maker.app).job(maker.job).unwrap().selling.agreements[0].id;
    maker.tap(part(PartsTap::Open(maker.job, agreed))).tap(part(PartsTap::Split(&[40, 30, 30])));
    let typed = |maker: &mut Maker, nth: usize, sum: &str| {
        maker.tap(part(PartsTap::At(nth))).tap(part(PartsTap::Pad)).press(sum).tap(part(PartsTap::PadDone));
    };
    typed(&mut maker, 1, "50");
    maker.shows(&["60.00", "50.00", ">40.00<", "150.00 of 150.00"]);
    typed(&mut maker, 2, "45");
    typed(&mut maker, 1, "60");
    maker.shows(&["165.00 of 150.00"]);
    // Split anew, the last is typed by nobody.
    maker.tap(part(PartsTap::Split(&[40, 30, 30])));
    typed(&mut maker, 1, "50");
    maker.tap(part(PartsTap::Save)).hides(&["Not taken"]);
    let selling = shop(&maker.app).job(maker.job).unwrap().selling;
    let parts: Vec<String> = selling.agreements[0].parts.iter().map(|part| part.sum.to_string()).collect();
    assert_eq!(parts, ["60.00 USD", "50.00 USD", "40.00 USD"]);
}
