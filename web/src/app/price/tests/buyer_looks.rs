//! What a buyer sees, and that nothing private is near it.

use super::*;

#[test]
fn inv15_the_buyers_face_is_the_whole_page() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Tag(TagTap::Open(job, What::Settle))).press("130").tap(Tap::Tag(TagTap::Done)).offer("110").bargain(BargainTap::NoSale);
    maker.tap(Tap::Show(job));
    assert!(maker.orders.contains(&Order::Face(Some(Turned { piece: job, spoken: String::new() }))));
    maker.shows(&[
        "Plant stands, ash with cherry pegs",
        "$145",
        "Size",
        "Weight",
        "6.9 lb",
        "Wood",
        "Finish",
        "Care",
        "Delivery",
        "Hold to close",
    ]);
    maker.hides(&PRIVATE).hides(&["hidden", "class=\"vh\"", "<nav", "110"]);
}

#[test]
fn inv15_the_face_hears_nothing_but_the_hold() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Show(job));
    let shown = maker.html();
    for message in
        [Msg::Go(Place::Jobs), Msg::Key("u".into()), Msg::Common(Common::TakeBack), Msg::Price(Tap::Offer(job)), Msg::Price(Tap::Close)]
    {
        maker.say(message);
        assert_eq!((maker.html() == shown, maker.orders.len()), (true, 0));
    }
    for news in [News::UpdateWaits, News::InSight(false), News::InSight(true), News::Resized(390.0)] {
        maker.app.told(news);
        assert_eq!(maker.html(), shown);
    }
    maker.tap(Tap::Hide).shows(&["They offer…", "3 left of 5"]);
    assert!(maker.orders.contains(&Order::Face(None)));
}

#[test]
fn out_of_sight_nothing_private_is_drawn() {
    let mut maker = Maker::at_market();
    maker.offer("130");
    let shown = maker.html();
    maker.app.told(News::InSight(false));
    maker.hides(&["130", "145", "Plant stands", "rate", "Sold"]);
    maker.app.told(News::InSight(true));
    assert_eq!(maker.html(), shown);
}

/// The phone's own answers are heard behind the face: what they say shows nothing there, and is lost if it has to wait.
#[test]
fn what_the_phone_answers_is_heard_while_a_buyer_looks() {
    use crate::app::news::Trouble;
    use crate::app::workshop::{Tap as Workshop, copies::Became};
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Show(job)).say(Msg::Workshop(Workshop::Added(Err(Trouble::Full))));
    assert_eq!(maker.app.workshop.said, Some(Became::NotAdded(Trouble::Full)));
    maker.say(Msg::Workshop(Workshop::Close));
    assert!(maker.app.price.face.is_some() && maker.app.workshop.said.is_some(), "a tap is not heard");
}
