//! What a job leaves, told on every page in the same way: whatever was tapped, taken back, kept or is still due.

use super::*;

const CARD: &str = "2026-05-04 08:00 +00:00 workshop USD inch\ntill fee 0.029\njob more \"Order\" 1 order\nspend 30 wood on more\n\
    start \"build\" make on more\n10:00 stop\nagree 300 for 1 more fetched as deal\npay 150 for more card agreed deal\n";

/// 300, half of it in by card: what an hour leaves as it stands goes by how the order was paid, not by a payment that was taken back, nor by the last tap.
#[test]
fn a_payment_that_is_taken_back_leaves_what_stood() {
    let mut maker = Maker::told(&[CARD]);
    let before = [">Tax and fees<", "\u{2212}4.35", "Fees still to come, by card", "Left per hour, as it stands, by card", "130.65"];
    maker.open("more").shows(&before);
    let agreed = maker.sheet().selling.open().next().unwrap().id;
    maker.tap(Tap::Room(Room::Sell)).tap(Tap::Write(What::Pay(PaidTo::Agreed(agreed)))).pick(Pick::Paid(Some(Paid::Notes)));
    maker.figures(&["10"]).tap(Tap::Save).say(Msg::Common(Common::TakeBack));
    maker.tap(Tap::Page).shows(&before);
    maker.say(Msg::Price(crate::app::price::Tap::Offer(maker.jobs["more"])));
    maker.say(Msg::Price(crate::app::price::Tap::Bargain(crate::app::price::bargain::BargainTap::Paid(Paid::Notes))));
    maker.say(Msg::Price(crate::app::price::Tap::Close));
    maker.say(Msg::Go(Place::Jobs));
    maker.open("more").shows(&before);
}

/// 100 of 200 came in by card at 3 %: 3.00 is paid of the fees, and 3.00 is yet to come, if the rest comes so too. What is all in names none to come.
#[test]
fn a_fee_that_is_yet_to_come_stands_apart() {
    let order = CARD.replace("fee 0.029", "fee 0.03").replace("agree 300", "agree 200").replace("pay 150", "pay 100");
    let half = [">Tax and fees<", "\u{2212}3.00", "Fees still to come, by card"];
    Maker::told(&[&order]).open("more").shows(&half).hides(&["\u{2212}6.00"]);
    let whole = format!("{order}pay 100 for more card agreed deal\n");
    Maker::told(&[&whole]).open("more").shows(&[">Tax and fees<", "\u{2212}6.00"]).hides(&["still to come, by card"]);
}

/// One of three is handed over and paid, of the others 50 is kept, and one is agreed anew.
#[test]
fn what_was_kept_is_not_paid_for_others_sold() {
    let mut maker = Maker::told(&[
        "2026-05-04 08:00 +00:00 workshop USD inch\njob more \"Stools\" 3 order\nagree 300 for 3 more fetched as deal\n\
        pay 100 for more notes agreed deal\nsell 1 more for 100 agreed deal\npay 50 for more notes agreed deal\ncancel deal on more kept 50 no-show\n\
        agree 90 for 1 more fetched\n",
    ]);
    maker.open("more").shows(&["Paid for others sold", "100.00", "Kept of what came to nothing", "50.00"]).hides(&["150.00"]);
}

/// 4 h 10 and 43.20 for five, two of them sold: three at 22.20 an hour bear three fifths of both.
#[test]
fn what_is_made_is_quoted_by_the_hours_it_took() {
    let mut maker =
        Maker::told(&["2026-05-04 08:00 +00:00 workshop USD inch\nrate pay 20 hours 100 logged 100\njob more \"Tray\" 5 spec\n\
        spend 43.20 oil on more\nrecall \"make\" make on more 2026-05-01 09:00 to 2026-05-01 13:10\ntag 65 more\n\
        about more pieces 5\nsell 2 more for 130 notes\n"]);
    let id = maker.jobs["more"];
    maker.room("more", Room::Quote).hides(&["A price needs hours"]).shows(&["Tray, 3", "3 of 5: 2 h 30 at your rate; costs 25.92."]);
    maker.say(Msg::Price(crate::app::price::Tap::Made(id)));
    maker.room("more", Room::Quote).hides(&["A price needs hours"]);
}

/// Nothing was planned: once it is said that it is made, the page of the job asks for the tag, and with one sells at it.
#[test]
fn what_is_said_to_be_made_asks_for_its_tag() {
    let told = "2026-05-04 08:00 +00:00 workshop USD inch\nrate pay 20 hours 100 logged 100\njob more \"Tray\" 2 spec\n\
        spend 10 oil on more\nrecall \"make\" make on more 2026-05-01 09:00 to 2026-05-01 11:00\n";
    let mut maker = Maker::told(&[told]);
    maker.open("more").hides(&["Write the tag"]);
    let id = maker.jobs["more"];
    maker.say(Msg::Price(crate::app::price::Tap::Made(id)));
    maker.open("more").shows(&["Made, and without a tag.", "Write the tag"]).tap(Tap::Next).figures(&["65"]).tap(Tap::Save);
    maker.tap(Tap::Page).shows(&["tag 65"]).hides(&["Write the tag"]).tap(Tap::Room(Room::Sell)).shows(&["$65"]);
}

/// 7,003 yen over 3 h: a rate has as many digits as its money, on every page.
#[test]
fn a_rate_an_hour_has_the_digits_of_its_money() {
    let mut maker = Maker::told(&[
        "2026-05-04 08:00 +09:00 workshop JPY metric\nrate pay 1000 hours 900 logged 300 costs 60001\njob more \"Bench\" 1 spec\n\
        start \"build\" make on more\n10:59 stop\nspend 0 wood on more\nsell 1 more for 7003 notes\nend more\n",
    ]);
    for room in [None, Some(Room::Back)] {
        maker.open("more");
        if let Some(room) = room {
            maker.tap(Tap::Room(room));
        }
        let html = page(&maker.app).html();
        assert!(html.contains("2347"), "{html}");
        let decimals = html.split("2347").skip(1).any(|rest| rest.starts_with('.'));
        assert!(!decimals && !html.contains("after workshop costs, 2147."), "{html}");
    }
    maker.tap(Tap::List).shows(&["2347"]).hides(&["2347."]);
}

/// 68.67 came of a gallery, 3.33 is still due: it is in what an hour left, and said.
#[test]
fn what_a_gallery_still_owes_is_said_beside_what_an_hour_left() {
    let mut maker = Maker::told(&["2026-06-01 09:00 -04:00 workshop USD inch\njob stool \"Ash stool\" 1 spec\nspend 10 glue on stool\n\
        10:00 start \"make\" make on stool\n12:00 stop\n13:00 tag 120 stool\nconsign 1 stool tag 120 share 0.4 as lot\n\
        gallery pays 68.67 for 1 stool lot lot due 3.33\n"]);
    maker.room("stool", Room::Back).shows(&["31.00", "3.33 of it still due from a gallery."]);
}

/// An order comes to nothing with a deposit in: the pad lies in the foot, in sight of Done.
#[test]
fn the_pad_of_what_came_to_nothing_lies_in_the_foot() {
    let mut maker = Maker::told(&[CARD]);
    maker.room("more", Room::Sell);
    let agreed = maker.sheet().selling.open().next().unwrap().id;
    maker.tap(Tap::Write(What::Cancel(agreed))).shows(&["Came to nothing", "class=\"foot typing\"", "class=\"pad"]);
}

/// The only crate broke and the job is done with: nothing of it is sold yet, nor will be.
#[test]
fn a_job_that_ended_with_nothing_sold_says_no_yet() {
    let mut maker = Maker::told(&["2026-05-04 08:00 +02:00 workshop EUR metric\njob more \"Crate\" 1 spec\nspend 40 wood on more\n\
        not-for-sale 1 more broken\nend more\n"]);
    maker.open("more").shows(&["none sold"]).hides(&["none sold yet"]).tap(Tap::List).hides(&["none sold yet"]);
}

/// A tag of 65 with 6.25 % on top is 69.06, in coins of five cents 69.05: the form of a sale in notes says what is handed over, as Price does.
#[test]
fn a_sale_in_notes_says_what_the_coins_come_to() {
    let mut maker =
        Maker::told(&["2026-05-04 08:00 -04:00 workshop USD inch\ntill tax 0.0625 top cash 0.05\njob more \"Tray\" 2 spec\ntag 65 more\n"]);
    maker.room("more", Room::Sell).tap(Tap::Write(What::Sell(None))).pick(Pick::Paid(Some(Paid::Notes)));
    maker.shows(&["Handed over, to the coin", "69.05", "69.06"]);
    maker.pick(Pick::Paid(Some(Paid::Card))).hides(&["to the coin"]);
}

/// A third of 212.37 is asked ahead, 70.79, and the smallest coin is 0.10: in notes 70.80 is proposed, by card all of it, and a sum that was typed stays.
/// The rest is 141.57, in notes 141.60, and with it all is paid.
#[test]
fn what_is_paid_in_notes_is_proposed_to_the_coin() {
    let order = "2026-05-04 08:00 +00:00 workshop USD inch\ntill cash 0.10\njob more \"Order\" 1 order\nagree 212.37 for 1 more fetched deposit 70.79 as deal\n";
    let mut maker = Maker::told(&[order]);
    maker.room("more", Room::Sell);
    let agreed = maker.sheet().selling.open().next().unwrap().id;
    let pay = Tap::Write(What::Pay(PaidTo::Agreed(agreed)));
    let typed = |maker: &Maker| maker.app.jobs.draft.as_ref().unwrap().form.text(0).to_owned();
    let by = |paid| Pick::Paid(Some(paid));
    maker.tap(pay.clone()).pick(by(Paid::Notes));
    assert_eq!(typed(&maker), "70.80");
    assert_eq!(typed(maker.pick(by(Paid::Card))), "70.79");
    assert_eq!(typed(maker.pick(by(Paid::Notes))), "70.80");
    maker.tap(Tap::Save).tap(pay.clone());
    assert_eq!(typed(&maker), "141.60");
    assert_eq!(typed(maker.figures(&["50"]).pick(by(Paid::Card))), "50");
    maker.tap(Tap::Close).tap(pay).pick(by(Paid::Notes)).tap(Tap::Save);
    let sheet = maker.sheet();
    let agreement = sheet.selling.agreement(agreed).unwrap();
    assert!(sheet.selling.still_due(sheet.account.currency, agreement).unwrap().is_zero());
    assert_eq!(sheet.selling.rounded_of_order(sheet.account.currency, agreement).unwrap().to_string(), "0.03 USD");
}

/// A part of 70.72 in notes came as 70.70: two cents nobody can hand over are no part to ask for, the next is.
#[test]
fn what_no_coin_pays_waits_for_the_next_part() {
    let order = "2026-05-04 08:00 +00:00 workshop USD inch\ntill cash 0.10\njob more \"Order\" 1 order\nagree 212.37 for 1 more fetched deposit 70.72 as deal\n\
        pay 70.70 for more notes agreed deal\n";
    let mut maker = Maker::told(&[order]);
    maker.room("more", Room::Sell);
    let agreed = maker.sheet().selling.open().next().unwrap().id;
    maker.tap(Tap::Write(What::Pay(PaidTo::Agreed(agreed)))).pick(Pick::Paid(Some(Paid::Notes)));
    assert_eq!(maker.app.jobs.draft.as_ref().unwrap().form.text(0), "141.70");
}

/// 212.36 in parts of 70.72 and 141.64, all in notes with a coin of 0.10: 70.70 comes first, and the last part takes the two cents along: 141.66, in
/// coins 141.70. Nothing is due after it.
#[test]
fn the_last_part_takes_what_coins_left() {
    let order = "2026-05-04 08:00 +00:00 workshop USD inch\ntill cash 0.10\njob more \"Order\" 1 order\nagree 212.36 for 1 more fetched as deal\n\
        parts deal on more 70.72 141.64\npay 70.70 for more notes agreed deal\n";
    let mut maker = Maker::told(&[order]);
    maker.room("more", Room::Sell);
    let agreed = maker.sheet().selling.open().next().unwrap().id;
    maker.tap(Tap::Write(What::Pay(PaidTo::Agreed(agreed)))).pick(Pick::Paid(Some(Paid::Notes)));
    assert_eq!(maker.app.jobs.draft.as_ref().unwrap().form.text(0), "141.70");
    maker.tap(Tap::Save);
    let sheet = maker.sheet();
    assert!(sheet.selling.still_due(sheet.account.currency, sheet.selling.agreement(agreed).unwrap()).unwrap().is_zero());
}
