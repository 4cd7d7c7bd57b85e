//! Whether a stall pays, before it is gone to.

use super::*;
use crate::app::price::fair::FairTap;

/// Ten stools of 20 each at 60: a stall of 50 and five hours at 12 are 110, three stools of 40.
const STOOLS: &str = "2026-05-04 08:00 +00:00 workshop USD inch
rate lowest 12
job stools \"Stools\" 10 spec
spend 200 wood on stools
tag 60 stools
";

fn fair(maker: &mut Maker, figures: [&str; 3]) {
    maker.tap(Tap::Fair(FairTap::Open));
    for (nth, figure) in figures.into_iter().enumerate() {
        maker.tap(Tap::Fair(FairTap::At(nth)));
        for digit in figure.chars().filter_map(|sign| sign.to_digit(10)) {
            maker.tap(Tap::Fair(FairTap::Press(Press::Digit(digit as u8))));
        }
    }
    maker.tap(Tap::Fair(FairTap::Reckon));
}

#[test]
fn a_fair_says_how_many_cover_it_and_what_more_leave() {
    let mut maker = Maker::told(STOOLS, "stools");
    let entries = maker.app.own.book.len();
    maker.shows(&["A fair or a market"]);
    fair(&mut maker, ["50", "", "5"]);
    maker.shows(&[
        "3 sold cover the stall.",
        "50.00",
        "60.00",
        "Of 60 for one you get 60.00; it cost 20.00.",
        "7 sold",
        "$46.00 an hour there; the making is not counted",
    ]);
    maker.tap(Tap::Fair(FairTap::Again)).shows(&["How many cover it", ">50<"]);
    assert_eq!(maker.app.own.book.len(), entries, "nothing of it is written");
}

/// Seven leave 230: in 5 hours there 46 each, with 7 of the 10 that took five hours to make in 8 h 30: 27.06.
#[test]
fn a_fair_says_an_hour_there_and_with_the_making() {
    let made = format!("{STOOLS}start \"build\" make on stools\n13:00 stop\nall-planned stools\n");
    let mut maker = Maker::told(&made, "stools");
    fair(&mut maker, ["50", "", "5"]);
    maker.shows(&["$46.00 an hour there, $27.06 with the making"]).hides(&["not counted"]);
}

#[test]
fn a_fair_that_is_not_known_or_never_covered_says_so() {
    let mut maker = Maker::told(STOOLS, "stools");
    fair(&mut maker, ["50", "20", "5"]);
    maker.hides(&["cover the stall"]).shows(&["role=\"alert\""]);
    let mut maker = Maker::told(STOOLS, "stools");
    fair(&mut maker, ["", "", "5"]);
    maker.shows(&["Stall: nothing is typed yet.", "How many cover it"]);
    let mut maker = Maker::told(&STOOLS.replace("tag 60", "tag 20"), "stools");
    fair(&mut maker, ["50", "", "5"]);
    maker.shows(&["Never: a piece leaves nothing towards it."]);
    let mut maker = Maker::told(&format!("{STOOLS}sell 9 stools for 540 notes\n"), "stools");
    fair(&mut maker, ["50", "", "5"]);
    maker.shows(&["3 would cover the stall, and you have 1.", "1 sold"]);
}

/// What lacks is named, and nothing beside it.
#[test]
fn what_lacks_for_a_fair_is_named_alone() {
    const BARE: &str = "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 10 spec\n";
    let (price, cost) = ("tag 60 stools\n", "spend 200 wood on stools\n");
    for (lines, said) in [
        (price.to_owned(), "Not known: some of what it cost is lacking."),
        (cost.to_owned(), "Not known: it has no price yet."),
        (String::new(), "Not known: it needs a price, and what it cost."),
    ] {
        let mut maker = Maker::told(&format!("{BARE}{lines}"), "stools");
        fair(&mut maker, ["50", "", "5"]);
        maker.shows(&[said]);
    }
    let mut maker = Maker::told(&format!("{BARE}{price}{cost}"), "stools");
    fair(&mut maker, ["50", "", "5"]);
    maker.hides(&["Not known"]);
}
