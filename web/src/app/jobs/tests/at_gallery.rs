//! Pieces with a gallery are unsold, and what it owes stands beside what is left to sell.

use super::*;

/// Five stools, two hours, 10 spent, two sold at 120: some of the others are at a gallery that keeps 40 %.
const STOOLS: &str = "2026-06-01 09:00 -04:00 workshop USD inch\njob stool \"Ash stool\" 5 spec\nspend 10 glue on stool\n\
    10:00 start \"make\" make on stool\n12:00 stop\n13:00 tag 120 stool\nsell 1 stool for 120 notes\nsell 1 stool for 120 notes\n";

fn page_of(more: &str) -> Maker {
    let mut maker = Maker::told(&[&format!("{STOOLS}{more}")]);
    maker.open("stool");
    maker
}

/// (240 - 10) / 2 h = 115; with the one on the shelf at 120 and 2 x 72 of the gallery 494 / 2 h = 247.
#[test]
fn what_is_at_a_gallery_is_unsold() {
    page_of("consign 2 stool tag 120 share 0.4\n").shows(&[
        "Left per hour, 3 unsold, 2 of them at the gallery",
        "115.00",
        "if it goes at 120, ",
        ", and the gallery pays 144 for the 2 there",
        "247.00",
    ]);
    page_of("consign 3 stool tag 120 share 0.4\n").shows(&[
        "Left per hour, 3 unsold, at the gallery",
        "115.00",
        "if the gallery pays 216 for the 3 there",
        "223.00",
    ]);
    page_of("").shows(&["Left per hour, 3 unsold<", "if the other 3 go at 120, "]);
}

/// What a gallery still owes does not take the place of what is left to sell.
#[test]
fn what_a_gallery_owes_stands_beside_what_is_left_to_sell() {
    let owes = "consign 2 stool tag 120 share 0.4 as lot\ngallery pays 68.67 for 1 stool lot lot due 3.33\n";
    let mut maker = page_of(owes);
    maker.shows(&["Money is due. 1 left to sell.", "Take the payment", "3.33 due", "Sell one", "tag 120"]);
    maker.tap(Tap::Write(What::Sell(None))).shows(&["Sold"]);
    // With none left there is only the money.
    page_of(&format!("{owes}sell 1 stool for 120 notes\n")).shows(&["Handed over. Money is due.", "3.33 due"]).hides(&["Sell one"]);
}

/// Looking back names what went another way than to a buyer, beside what buyers paid.
#[test]
fn what_no_buyer_bought_is_named_beside_the_price() {
    let gone = "consign 1 stool tag 120 share 0.4 as lot\ngallery pays 74.38 for 1 stool lot lot\n";
    let mut maker = page_of(gone);
    maker.tap(Tap::Room(Room::Back)).shows(&["240 from buyers, asked 240", "Not in that price: 1 by a gallery for 74.38."]);
    maker.tap(Tap::Write(What::NotForSale)).pick(Pick::Instead(fivebar_core::ledger::kind::sale::Instead::Given)).figures(&["1"]);
    maker.tap(Tap::Save).tap(Tap::Room(Room::Back)).shows(&["Not in that price: 1 by a gallery for 74.38, 1 given away."]);
    page_of("").tap(Tap::Room(Room::Back)).hides(&["Not in that price"]);
}

/// What a gallery still owes is in what it sold for, as in what the job leaves. Of two galleries both are meant.
#[test]
fn what_galleries_owe_and_how_many_they_are_is_said() {
    page_of("consign 1 stool tag 120 share 0.4 as lot\ngallery pays 68.67 for 1 stool lot lot due 3.33\n")
        .tap(Tap::Room(Room::Back))
        .shows(&["Not in that price: 1 by a gallery for 72."]);
    let leaf = "person leaf gallery\nperson fern gallery\nconsign 2 stool tag 120 share 0.4 gallery leaf as one\n";
    let both = format!("{leaf}consign 1 stool tag 120 share 0.4 gallery fern as other\n");
    page_of(&both).shows(&["if the galleries pay 216 for the 3 there"]);
    page_of(leaf).shows(&["the gallery pays 144 for the 2 there"]);
    let sold = "gallery pays 72 for 1 stool lot one\ngallery pays 72 for 1 stool lot other\n";
    page_of(&format!("{both}{sold}"))
        .shows(&["the gallery pays 72 for the one there"])
        .tap(Tap::Room(Room::Back))
        .shows(&["2 by galleries for 144."]);
}
