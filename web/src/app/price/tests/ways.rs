//! Other ways to a price, told as tables: what the page says, what is written, what is refused and taken back.

use super::*;
use crate::app::price::ways::{Field, WaysTap};
use fivebar_core::story::tell as story;

impl Maker {
    fn way(&mut self, tap: WaysTap) -> &mut Maker {
        self.tap(Tap::Ways(tap))
    }

    fn ways(&mut self) -> &mut Maker {
        let job = self.job;
        self.way(WaysTap::Open(job))
    }

    fn facts(&self) -> usize {
        self.app.own.book.len()
    }
}

/// All stands sold: 127.56 and 1,517 min, as `ways_to_ask` reckons them.
fn stands(more: &str) -> Maker {
    Maker::told(&format!("{STANDS}\n{more}"), "stands")
}

#[test]
fn every_way_stands_on_one_page() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker
        .tap(Tap::More(job))
        .shows(&["Other ways to a price"])
        .tap(Tap::Tag(TagTap::Open(job, What::Tag)))
        .shows(&["Other ways to a price"]);
    maker.ways().shows(&[
        "With bought wood",
        "A shop that sells it again",
        "A gallery",
        "A like piece elsewhere",
        "3 times materials",
        "67.03",
    ]);
    maker.shows(&[
        "At your tag of 145 it pays 68.72.",
        "At your tag of 145 you get 82.46.",
        "3 times 9.90 is 29.71",
        "at its share of the hauls",
    ]);
    maker.tap(Tap::Close).shows(&["What is on the tag of each?"]);
}

#[test]
fn what_a_shop_keeps_is_written_and_taken_back() {
    let mut maker = Maker::at_market();
    let facts = maker.facts();
    maker.ways().way(WaysTap::Pad(Field::Keeps)).press("40").way(WaysTap::PadDone);
    maker.shows(&["it pays 82.46.", "Take back: what a shop keeps"]);
    assert_eq!(maker.facts(), facts + 1);
    // Said again it is written once.
    maker.way(WaysTap::Keeps(Decimal::new(4, 1)));
    assert_eq!(maker.facts(), facts + 1);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["it pays 68.72."]);
}

#[test]
fn a_share_of_all_is_refused_by_its_limit_and_typed_over() {
    let mut maker = Maker::at_market();
    let facts = maker.facts();
    maker.ways().way(WaysTap::Pad(Field::Keeps)).press("100").way(WaysTap::PadDone).shows(&["100 %"]);
    assert_eq!(maker.facts(), facts);
    assert!(maker.app.notice.is_some());
    maker.way(WaysTap::PadDone).way(WaysTap::PadAway).shows(&["it pays 68.72."]);
    maker.way(WaysTap::Pad(Field::Keeps)).press("101").way(WaysTap::PadDone).shows(&["class=\"why\""]);
    maker
        .way(WaysTap::PadAway)
        .way(WaysTap::Keeps(Decimal::new(9, 1)))
        .shows(&["it pays 13.74.", "It is under what you spent: sell none so."]);
}

/// Terms are tried here and go along to the form; nothing of them is written before pieces are left there.
#[test]
fn a_gallerys_terms_are_tried_and_go_along() {
    let mut maker = Maker::at_market();
    let (job, facts) = (maker.job, maker.facts());
    let of = |tap| WaysTap::Gallery(tap);
    maker.ways().way(of(GalleryTap::WithTax(true))).way(of(GalleryTap::MakerPays(true))).shows(&["you get 79.44."]);
    maker.way(of(GalleryTap::Pad(gallery::Field::Share))).press("45").way(WaysTap::PadDone).shows(&["45 %", "you get 72.19."]);
    maker.way(of(GalleryTap::Leave(job))).shows(&["72.19 to you for each sold"]);
    assert_eq!(maker.facts(), facts);
    maker.tap(Tap::Gallery(GalleryTap::Consigned)).shows(&["1 there, tag 145", "72.19 to you for each sold"]);
}

/// Of 160 by card 147.40 are kept: 24.10 an hour. It is no cost; it is struck in its row, and put back.
#[test]
fn a_like_piece_is_noted_struck_and_put_back() {
    let mut maker = stands("");
    maker.ways().hides(&["like piece 160"]).way(WaysTap::Like).shows(&["What was its price?"]);
    maker
        .way(WaysTap::SaveLike)
        .shows(&["class=\"why\""])
        .press("160")
        .way(WaysTap::Sold(true))
        .way(WaysTap::What("taller, of oak".into()));
    maker.way(WaysTap::SaveLike).shows(&[
        "like piece 160",
        "sold, ",
        "taller, of oak, $24.10 an hour here",
        "Take back: a like piece at 160",
    ]);
    let job = shop(&maker.app).job(maker.job).unwrap();
    maker.way(WaysTap::Strike(job.selling.like[0].entry)).hides(&["taller, of oak"]).say(Msg::Common(Common::PutBack));
    maker.shows(&["taller, of oak"]).way(WaysTap::Like).press("0").way(WaysTap::SaveLike);
    assert!(maker.app.notice.is_some());
    assert_eq!(shop(&maker.app).job(maker.job).unwrap().selling.like.len(), 1);
}

/// The latest is the one seen last, whenever it was noted.
#[test]
fn like_pieces_stand_by_the_day_they_were_seen() {
    let mut maker = stands("like 161 stands\nlike 141 stands when 2026-04-02\nlike 153 stands when 2026-04-10");
    let html = maker.ways().html();
    let at: Vec<usize> = [">161<", ">153<", ">141<"].map(|sum| html.find(sum).unwrap()).into();
    assert!(at.is_sorted(), "{at:?}");
}

/// 154.47 pay your rate with boards, 155 on the point; the tag is taken at a tap, and back.
#[test]
fn a_tag_is_taken_as_proposed() {
    let mut maker = stands("");
    let tag = maker.money("155");
    maker
        .ways()
        .shows(&["67.03", "−15.91", "−1 h 17", "Tag 155"])
        .way(WaysTap::Tag(tag))
        .shows(&["Take back: tag 155"])
        .hides(&[">Tag 155<"]);
    maker.shows(&["At your tag of 155"]).say(Msg::Common(Common::TakeBack));
    maker.shows(&["At your tag of 145"]);
}

#[test]
fn what_is_lacking_is_named_with_the_way_there() {
    let mut maker = Maker::told("2026-05-04 08:00 -04:00 workshop USD inch\njob box \"Box\" 1 spec\n", "box");
    maker.ways().shows(&["Nothing is known of costs and hours yet", "List its parts under Wood and plan", "Note a like piece"]);
    maker.hides(&["times materials", "Hours to come are not known"]);
    let with_part =
        "2026-05-04 08:00 -04:00 workshop USD inch\njob box \"Box\" 1 spec\npart \"side\" 4 of 1 x 4 x 9 in ash-white for box\n";
    assert_eq!(story(with_part).refused, []);
    Maker::told(with_part, "box").ways().shows(&["Ash: what its boards cost is not said yet.", "What boards cost"]);
}

#[test]
fn inv15_a_like_piece_is_not_on_the_buyers_face() {
    let mut maker = stands("like 163.50 stands \"seen at the fair\"\nresale 0.37");
    let job = maker.job;
    maker.ways().shows(&["163.50", "37 %"]).tap(Tap::Show(job)).hides(&["163.5", "37", "seen at the fair"]);
}
