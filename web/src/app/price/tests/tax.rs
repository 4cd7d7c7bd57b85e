//! Tax on top of the tag: each sum says whether it holds the tax, to the maker and to the buyer. 8.25 % on 175 is 189.44, on 160 173.20.

use super::*;

const SHOP: &str = "2026-05-04 08:00 -05:00 workshop USD inch\n";

fn stools(till: &str, n: u32) -> Maker {
    Maker::told(&format!("{SHOP}{till}job stools \"Three stools\" {n} spec\ntag 175 stools\n"), "stools")
}

const TOP: &str = "till tax 0.0825 top cash 0.05\n";

/// What the buyer reads under the sum, for pieces of a job paid so.
#[track_caller]
fn face((till, n, paid): (&str, u32, Paid), shown: &[&str], hidden: &[&str]) {
    let mut maker = stools(till, n);
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Paid(paid)).tap(Tap::Show(job)).shows(shown).hides(hidden);
}

#[test]
fn the_buyer_reads_for_how_many_and_whether_with_tax() {
    let inside = "till tax 0.0825 inside\n";
    face((inside, 3, Paid::Card), &["<p class=\"tag\">$175<", ">each<"], &["with tax"]);
    face((inside, 1, Paid::Card), &["$175"], &[">each<", "with tax"]);
    face((TOP, 3, Paid::Card), &["<p class=\"tag long\">$189.44<", ">each, with tax<"], &[]);
    face((TOP, 1, Paid::Card), &["$189.44", ">with tax<"], &["each"]);
}

/// Of three one is left: a buyer reads no "each", and neither does the maker where the tag is set. With one more at a gallery its page has two of them.
#[test]
fn the_last_of_several_is_not_said_to_be_each() {
    let mut maker = Maker::told(&format!("{SHOP}job stools \"Stools\" 3 spec\ntag 175 stools\nsell 2 stools for 350 notes\n"), "stools");
    let job = maker.job;
    maker.tap(Tap::Show(job)).shows(&["$175"]).hides(&[">each<"]).tap(Tap::Hide);
    maker.tap(Tap::More(job)).shows(&["Tag"]).hides(&["Tag of each"]).tap(Tap::Close);
    maker.tap(Tap::Gallery(GalleryTap::Leave(job))).shows(&["Tag"]).hides(&["Tag of each"]).tap(Tap::Close);
    let jobs = |maker: &mut Maker, tap: crate::app::jobs::Tap| maker.say(Msg::Jobs(tap));
    maker.say(Msg::Go(Place::Jobs));
    jobs(&mut maker, crate::app::jobs::Tap::Open(crate::app::order::Which::Own, job));
    jobs(&mut maker, crate::app::jobs::Tap::Room(crate::app::jobs::Room::Sell));
    maker.shows(&["Tag"]).hides(&["Tag of each"]);
    for what in [crate::app::jobs::draft::What::Tag, crate::app::jobs::draft::What::Consign] {
        jobs(&mut maker, crate::app::jobs::Tap::Write(what));
        maker.shows(&["Tag"]).hides(&["Tag of each"]);
        jobs(&mut maker, crate::app::jobs::Tap::Close);
    }
}

/// The sum of the face is the sum of the key, and what is booked.
#[test]
fn the_buyer_reads_what_is_handed_over_in_coins() {
    face((TOP, 1, Paid::Notes), &["$189.45", ">with tax<"], &["189.44"]);
    let mut maker = stools(TOP, 1);
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Paid(Paid::Notes)).shows(&["Sold at 189.45"]).bargain(BargainTap::Sold);
    assert_eq!(maker.sold().1, "189.45 USD");
}

/// "160" of a buyer who read 175: with tax it is 173.20, or he means all of it.
#[test]
fn an_offer_says_whether_it_is_with_tax() {
    let (with, adds) = ("With tax: all that is handed over. The tag of 175 is 189.44.", "It is without tax: add it");
    let mut inside = stools("till tax 0.0825 inside\n", 1);
    let job = inside.job;
    inside.tap(Tap::Offer(job)).bargain(BargainTap::Pad).hides(&["With tax", adds]);
    let mut maker = stools(TOP, 1);
    let job = maker.job;
    maker.tap(Tap::Offer(job)).shows(&["number pad, with tax"]).bargain(BargainTap::Pad).shows(&[with, adds]);
    maker.press("160").bargain(BargainTap::PadDone).shows(&["Sold at 160"]);
    maker.bargain(BargainTap::Pad).press("160").bargain(BargainTap::PadBeforeTax).shows(&["Sold at 173.20"]);
    maker.bargain(BargainTap::Pad).bargain(BargainTap::PadBeforeTax).shows(&["Nothing is typed yet."]);
    // 9,999,999 with 8.25 % on it is past the limit of a sum: it is not taken as if it were with tax.
    maker.press("9999999").bargain(BargainTap::PadBeforeTax).shows(&["Not taken", "9999999"]).hides(&["Sold at"]);
}

/// The tag is before tax, the settle with it: side by side each says which, wherever both stand; where tax is inside neither does.
#[test]
fn tag_and_settle_side_by_side_say_which_tax_they_hold() {
    for (till, says, hides) in
        [(TOP, ["Tag, before tax", "Settle, with tax"], ">Settle<"), ("till tax 0.0825 inside\n", [">Tag<", ">Settle<"], "with tax")]
    {
        let mut maker = Maker::told(&format!("{SHOP}{till}job stools \"Stools\" 1 spec\ntag 175 stools\nsettle 170 stools\n"), "stools");
        let job = maker.job;
        maker.tap(Tap::More(job)).shows(&says).hides(&[hides]).tap(Tap::Close);
        maker.tap(Tap::Offer(job)).bargain(BargainTap::PayAndHours).shows(&says);
    }
}

/// Of several the tag is that of each, before the tax on top of it: on the page of the piece, in the job's room and at a gallery, where it is left
/// and where it pays.
#[test]
fn the_tag_of_several_says_that_it_is_of_each() {
    for (till, word) in [(TOP, "Tag of each, before tax"), ("till tax 0.0825 inside\n", "Tag of each<")] {
        let told = format!("{SHOP}{till}job stools \"Stools\" 3 spec\ntag 175 stools\nconsign 1 stools tag 175 share 0.4\n");
        let mut maker = Maker::told(&told, "stools");
        let job = maker.job;
        maker.tap(Tap::More(job)).shows(&[word]).tap(Tap::Close);
        let lot = shop(&maker.app).job(job).unwrap().selling.lots()[0].id;
        maker.tap(Tap::Gallery(GalleryTap::Leave(job))).shows(&[word]).tap(Tap::Close);
        maker.tap(Tap::Gallery(GalleryTap::Back(job, lot))).shows(&[word]).tap(Tap::Close);
        let jobs = |maker: &mut Maker, tap: crate::app::jobs::Tap| maker.say(Msg::Jobs(tap));
        maker.say(Msg::Go(Place::Jobs));
        jobs(&mut maker, crate::app::jobs::Tap::Open(crate::app::order::Which::Own, job));
        jobs(&mut maker, crate::app::jobs::Tap::Room(crate::app::jobs::Room::Sell));
        maker.shows(&[word]);
        for what in [crate::app::jobs::draft::What::Consign, crate::app::jobs::draft::What::GalleryPaid(lot)] {
            jobs(&mut maker, crate::app::jobs::Tap::Write(what));
            maker.shows(&["Tag of each"]);
            jobs(&mut maker, crate::app::jobs::Tap::Close);
        }
    }
}

#[test]
fn an_agreement_says_whether_it_is_with_tax() {
    use super::super::agree::Field;
    let mut maker = stools(TOP, 1);
    let job = maker.job;
    let pad = |field| Tap::Agree(AgreeTap::Pad(field));
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).shows(&["Agreed price, with tax", "189.44"]);
    maker.tap(pad(Field::Price)).shows(&["With tax: all that is handed over.", "It is without tax: add it"]).press("160");
    maker.tap(Tap::Agree(AgreeTap::PadBeforeTax)).shows(&["173.20"]);
    maker.tap(pad(Field::Deposit)).hides(&["It is without tax"]);
    let mut inside = stools("", 1);
    let job = inside.job;
    inside.tap(Tap::Agree(AgreeTap::Open(job, None))).shows(&["Agreed price"]).hides(&["with tax"]);
}

/// Two of 175 with 8.25 % on top are 378.88 (350 x 1.0825 = 378.875); what was named was for two.
#[test]
fn an_agreed_sum_at_the_tag_goes_along_with_the_pieces() {
    use super::super::agree::Field;
    let mut maker = stools(TOP, 3);
    let job = maker.job;
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).shows(&["189.44"]).tap(Tap::Agree(AgreeTap::Pieces(2))).shows(&["378.88"]);
    maker.tap(Tap::Agree(AgreeTap::Pad(Field::Price))).press("300").tap(Tap::Agree(AgreeTap::PadDone));
    maker.tap(Tap::Agree(AgreeTap::Pieces(3))).shows(&["The price was for 2 pieces. Say it for 3 pieces."]).hides(&["568.31", "3 for 300"]);
}

/// A settle is a sum that is handed over, the tag is not: both say so.
#[test]
fn settle_and_tag_say_their_base() {
    let mut maker = stools(TOP, 1);
    let job = maker.job;
    let settle = "The buyer never sees it. With tax: all that is handed over. The tag of 175 is 189.44.";
    maker.shows(&["tag 175 before tax"]);
    maker.tap(Tap::Tag(TagTap::Open(job, What::Tag))).shows(&["Before tax: it comes on top."]).tap(Tap::Close);
    maker.tap(Tap::Tag(TagTap::Open(job, What::Settle))).shows(&[settle]).press("150").tap(Tap::Tag(TagTap::Done));
    maker.shows(&["Settle 150, with tax, is set by you."]);
    let mut inside = stools("till tax 0.0825 inside\n", 1);
    let job = inside.job;
    inside.tap(Tap::Tag(TagTap::Open(job, What::Settle))).hides(&["tax"]).press("150").tap(Tap::Tag(TagTap::Done));
    inside.shows(&["Settle 150 is set by you."]).hides(&["before tax"]);
}

/// What is asked over time is what a buyer hands over: where tax comes on top of the tag, that is said.
#[test]
fn what_is_asked_over_time_says_that_it_is_with_tax() {
    let told = |till: &str| {
        format!(
            "2026-05-22 08:14 -05:00 workshop USD inch\n{till}job stools \"Stools\" 2 spec\ntag 100 stools\n\
             guess stools asks 3 buys 0.5 at 100 k 1.2 by 2026-06-19 end 20\n"
        )
    };
    for (till, shown, hidden) in [(TOP, ">Ask, with tax<", ">Ask<"), ("till tax 0.0825 inside\n", ">Ask<", "with tax")] {
        let mut maker = Maker::told(&told(till), "stools");
        let job = maker.job;
        maker.tap(Tap::Waiting(crate::app::price::waiting::WaitTap::Open(job))).shows(&[shown]).hides(&[hidden]);
    }
}
