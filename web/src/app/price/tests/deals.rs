//! What was agreed, told as tables: deposits, parts, changes, cancelled orders, galleries.

use super::*;
use fivebar_core::ledger::people::Person;

fn deal(maker: &mut Maker) {
    let job = maker.job;
    let agreed = sheet(&maker.app).unwrap().agreed[0].agreed;
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Agreed(agreed))));
}

#[test]
fn the_hand_over_brings_what_is_due() {
    let mut maker = Maker::before_delivery();
    deal(&mut maker);
    maker.shows(&["Agreed 460", "Handed over, 276.00 paid"]).tap(Tap::Deal(DealTap::HandedOver));
    assert_eq!(maker.sold(), (1, "460.00 EUR".to_owned(), "0.00 EUR".to_owned()));
    assert!(account(&shop(&maker.app), maker.job).unwrap().sold.due.is_zero());
    maker.shows(&["Take back: sold at 460"]).say(Msg::Common(Common::TakeBack));
    maker.shows(&["276.00", "Agreed, delivered"]);
}

/// Of one of three for 422.18 that is handed over 20 went off: 422.18 less 20 is what came in, 120.73, and what is due, 281.45.
#[test]
fn what_went_off_the_price_is_said_beside_what_was_agreed() {
    let mut maker = Maker::told(
        "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\nagree 422.18 for 3 more fetched as deal\n\
        sell 1 more for 140.73 bank agreed deal as one\nlet-keep 20 of sale one on more\n",
        "more",
    );
    maker.shows(&["In so far", "120.73", "281.45", "Off the price", "20.00"]);
    deal(&mut maker);
    maker.shows(&["422.18", "Off the price", "20.00", "In so far", "120.73", "281.45"]);
}

#[test]
fn a_part_is_paid_and_more_than_is_due_is_refused() {
    let mut maker = Maker::before_delivery();
    deal(&mut maker);
    maker.tap(Tap::Deal(DealTap::Pad)).press("300").tap(Tap::Deal(DealTap::PadDone)).shows(&["is more than the €276.00 that is due"]);
    maker.say(Msg::Common(Common::Understood));
    maker.tap(Tap::Deal(DealTap::PadAway)).tap(Tap::Deal(DealTap::Pad)).press("100").tap(Tap::Deal(DealTap::PadDone));
    maker.shows(&["Handed over, 176.00 paid"]);
}

#[test]
fn a_cancelled_order_keeps_or_hands_back_the_deposit() {
    for (kept, taken) in [("184", "184.00 EUR"), ("0", "0.00 EUR")] {
        let mut maker = Maker::before_delivery();
        deal(&mut maker);
        let kept = maker.money(kept);
        maker.shows(&["deposit of 184.00 kept", "deposit handed back"]).tap(Tap::Deal(DealTap::Nothing(kept)));
        assert_eq!(maker.sold().1, taken);
        maker.shows(&["Take back: came to nothing"]);
    }
}

/// Where tax is set, what is kept of a deposit has none reckoned on it: the page that keeps it says so, and so does Sell from then on.
#[test]
fn no_tax_is_reckoned_on_what_is_kept() {
    let says = "No tax is reckoned on what is kept";
    for (till, is_said) in [("till tax 0.08 inside\n", true), ("", false)] {
        let story = "2026-04-17 09:00 -05:00 workshop USD inch\n";
        let lines = "job desk \"Desk\" 1 order\nagree 1000 for 1 desk fetched deposit 300 as deal\npay 300 for desk bank agreed deal\n";
        let mut maker = Maker::told(&format!("{story}{till}{lines}"), "desk");
        deal(&mut maker);
        assert_eq!(maker.html().contains(says), is_said);
        let (job, kept) = (maker.job, maker.money("300"));
        maker.tap(Tap::Deal(DealTap::Nothing(kept)));
        maker.say(Msg::Go(Place::Jobs));
        maker.say(Msg::Jobs(crate::app::jobs::Tap::Open(crate::app::order::Which::Own, job)));
        maker.say(Msg::Jobs(crate::app::jobs::Tap::Room(crate::app::jobs::Room::Sell)));
        assert_eq!(maker.html().contains(says), is_said, "{till}");
    }
}

/// Who never came leaves the deposit and the piece; it is taken back at a tap.
#[test]
fn who_never_came_leaves_deposit_and_piece() {
    let mut maker = Maker::before_delivery();
    deal(&mut maker);
    let kept = maker.money("184");
    maker.shows(&["Did not turn up", "deposit of 184.00 kept"]).tap(Tap::Deal(DealTap::NeverCame(kept)));
    assert_eq!(maker.sold().1, "184.00 EUR");
    maker.shows(&["Take back: did not turn up"]).say(Msg::Common(Common::TakeBack));
    maker.shows(&["Agreed, delivered", "184.00"]);
}

/// Two stools agreed for 800, one of them sold: its deposit is used.
fn one_of_two(sale: &str) -> Maker {
    let mut maker = Maker::told(
        &format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 4 order\n\
             agree 800 for 2 stools fetched deposit 300 as deal\npay 300 for stools bank agreed deal\n{sale}"
        ),
        "stools",
    );
    deal(&mut maker);
    maker
}

#[test]
fn a_deposit_that_was_used_is_neither_kept_nor_handed_back() {
    let none = Money::zero(Currency::USD);
    let mut maker = one_of_two("sell 1 stools for 400 notes agreed deal");
    maker.shows(&["Handed over, 400.00 paid", "nothing to hand back"]).hides(&["deposit handed back"]);
    maker.tap(Tap::Deal(DealTap::Nothing(none))).shows(&["Take back: came to nothing"]);
    assert!(account(&shop(&maker.app), maker.job).unwrap().sold.due.is_zero());
    let mut maker = one_of_two("sell 1 stools for 100 notes agreed deal");
    let kept = maker.money("200");
    maker.shows(&["Handed over, 500.00 paid", "deposit of 200.00 kept"]).tap(Tap::Deal(DealTap::Nothing(kept)));
    assert_eq!(maker.sold(), (1, "300.00 USD".to_owned(), "0.00 USD".to_owned()));
    assert!(account(&shop(&maker.app), maker.job).unwrap().sold.due.is_zero());
}

/// The first of two is handed over and not paid: the hand-over of the other says so, asks for both and brings both.
#[test]
fn what_is_owed_of_the_first_is_asked_for_with_the_rest() {
    for (order, lines, due) in [
        ("", ["Agreed 800", "500 due", "Owed of pieces handed over before", ">100.00<"], "500.00"),
        (
            "agree 350 for 1 stools fetched replaces deal as new\n",
            ["Agreed 350", "450 due", "Owed of pieces handed over before", ">100.00<"],
            "450.00",
        ),
    ] {
        let mut maker = one_of_two(&format!("sell 1 stools for 400 agreed deal\n{order}"));
        maker.shows(&lines).shows(&[&format!("Handed over, {due} paid")]);
        maker.hides(&["Sold, not paid yet"]).tap(Tap::Deal(DealTap::HandedOver)).hides(&["500.00", "450.00"]);
        assert!(account(&shop(&maker.app), maker.job).unwrap().sold.due.is_zero());
        assert_eq!(maker.app.price.over, Over::Nothing);
    }
}

/// A changed order asks a deposit, and the first piece is not paid yet: what comes in pays that first, so no deposit is asked until it did.
#[test]
fn no_deposit_is_asked_before_the_pieces_handed_over_are_paid() {
    let changed = "sell 1 stools for 400 agreed deal\nagree 350 for 1 stools fetched deposit 100 replaces deal as new\n";
    one_of_two(changed).shows(&["450 due", "Handed over, 450.00 paid"]).hides(&["Deposit 100.00 came in"]);
    one_of_two(&format!("{changed}pay 100 for stools bank agreed new")).shows(&["350 due", "Deposit 100.00 came in"]);
}

/// Two for 800 with 300 in, the first sold for 400, then 350 for the other: what came in is said as on the page of the job, of both.
#[test]
fn what_came_in_before_a_change_came_in() {
    let changed = "sell 1 stools for 400 agreed deal\nagree 350 for 1 stools fetched replaces deal as new\n";
    let mut maker = one_of_two(changed);
    maker.shows(&["In so far</td><td class=\"n\">300.00<", "450.00", "nothing to hand back"]).hides(&["nothing came in"]);
    maker.tap(Tap::Close).shows(&["In so far </span><b class=\"w7\">300.00<"]);
    // A deposit is asked of what came in for the other alone.
    let deposit = changed.replace("fetched", "fetched deposit 100");
    let mut maker = one_of_two(&format!("{deposit}pay 140 for stools bank agreed new"));
    maker.shows(&["In so far</td><td class=\"n\">440.00<", "Deposit 60.00 came in"]);
    maker.tap(Tap::Close).shows(&["Deposit in </span><b class=\"w7\">40.00 of 100.00<"]);
}

/// Three for 160.50, all but 36.06 of it in ahead; the first costs its third, 53.50, and the others are 107 after the change. 124.44 is in of the 107 and
/// the 53.50, which stand beside it, and the rest of both is due. Of an order that was not changed nothing is said of that.
#[test]
fn what_was_handed_over_before_a_change_stands_with_what_came_in() {
    let order = "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 3 order\nagree 160.50 for 3 stools fetched as deal\n\
        pay 124.44 for stools bank agreed deal\nsell 1 stools for 53.50 agreed deal\n";
    let changed = "agree 107 for 2 stools fetched replaces deal as new\n";
    let before = "Handed over before the change";
    for (lines, price, is_said) in [("", "160.5", false), (changed, "107", true)] {
        let mut maker = Maker::told(&format!("{order}{lines}"), "stools");
        maker.shows(&[&format!("${price}"), "In so far </span><b class=\"w7\">124.44<", "36.06"]);
        assert_eq!(maker.html().contains(&format!("{before}</span><b class=\"w7 nw\">53.50<")), is_said);
        deal(&mut maker);
        maker.shows(&["In so far</td><td class=\"n\">124.44<", "36.06 due."]);
        assert_eq!(maker.html().contains(&format!("{before}</td><td class=\"n\">53.50<")), is_said);
    }
}

/// The same order with the 350 in two parts: what is owed of the first piece is asked before any of them, and each part is paid by what is asked.
#[test]
fn no_part_is_asked_before_the_pieces_handed_over_are_paid() {
    let changed = "sell 1 stools for 400 agreed deal\nagree 350 for 1 stools fetched replaces deal as new\n\
        parts new on stools 175 due 2026-03-02 175\n";
    let mut maker = one_of_two(changed);
    for (asked, then) in [("100", "175.00 came in"), ("175", "Handed over, 175.00 paid")] {
        let sum = maker.money(asked);
        maker.shows(&[&format!("{asked}.00 came in")]).tap(Tap::Deal(DealTap::Received(sum))).shows(&[then]);
    }
    maker.shows(&["Payment 1, paid"]).hides(&["175.00 came in", "lacks"]);
}

/// Two for 800, nothing in, the first handed over: the hand-over of the other brings 800 by card at once, 3 % and 0.30 of it kept, the tax of both off.
#[test]
fn the_fee_of_a_hand_over_is_of_all_it_brings() {
    for (tax, lines) in
        [("", ["Due", "800.00", "\u{2212}24.30", "775.70"]), (" tax 0.25 inside", ["\u{2212}160.00", "800.00", "\u{2212}24.30", "615.70"])]
    {
        let mut maker = Maker::told(
            &format!(
                "2026-03-02 09:00 -05:00 workshop USD inch\ntill fee 0.03 fixed 0.30{tax}\njob stools \"Stools\" 2 order\n\
                 agree 800 for 2 stools fetched as deal\nsell 1 stools for 400 agreed deal"
            ),
            "stools",
        );
        deal(&mut maker);
        maker.tap(Tap::Deal(DealTap::Paid(Paid::Card))).shows(&lines).hides(&["\u{2212}12.30"]);
    }
}

/// One of two is handed over: how many of them have gone is said.
#[test]
fn how_many_of_an_order_have_gone_is_said() {
    one_of_two("").hides(&["1 of 2"]);
    one_of_two("sell 1 stools for 400 notes agreed deal").shows(&["Handed over", "1 of 2", "In so far", "400.00"]).hides(&["Deposit in"]);
}

#[test]
fn a_change_of_order_is_about_the_pieces_still_to_come() {
    let mut maker = one_of_two("sell 1 stools for 400 notes agreed deal");
    let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, None))).shows(&["Change of order", ">400<"]).hides(&["800", "deposit 300"]);
    maker.tap(Tap::Agree(AgreeTap::Save)).shows(&["Take back: agreed 400"]);
    deal(&mut maker);
    maker.shows(&["Handed over, 400.00 paid"]);
}

#[test]
fn a_price_is_agreed_with_a_deposit() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Pad(agree::Field::Price))).press("150");
    maker.tap(Tap::Agree(AgreeTap::PadDone)).tap(Tap::Agree(AgreeTap::Share(40))).tap(Tap::Agree(AgreeTap::By(By::Weeks(2))));
    maker.shows(&["150, deposit 60, by Sat 2 May"]).tap(Tap::Agree(AgreeTap::Save)).shows(&["Take back: agreed 150", "2 left of 5"]);
    deal(&mut maker);
    let sum = maker.money("60");
    maker.shows(&["Deposit 60.00 came in"]).tap(Tap::Deal(DealTap::Received(sum))).shows(&["Handed over, 90.00 paid"]);
}

/// "In two weeks", said late in the evening before the clocks change, is that day, and stays it in a change of order.
#[test]
fn a_promised_day_stays_the_same_day() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    let place = |maker: &mut Maker, clock: (u16, u16), minutes| {
        let offset = Offset::minutes(minutes).unwrap();
        let at = Wall::new(maker.now.wall.at, offset).day().at(Clock::at(clock.0, clock.1).unwrap(), offset);
        maker.now.wall = Wall::new(at, offset);
    };
    place(&mut maker, (23, 30), -240);
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::By(By::Weeks(2)))).shows(&["by Sat 2 May"]);
    maker.tap(Tap::Agree(AgreeTap::Save)).shows(&["by Sat 2 May"]);
    for offset in [-300, -180] {
        place(&mut maker, (23, 30), offset);
        deal(&mut maker);
        maker.shows(&["Sat 2 May"]);
        let agreed = sheet(&maker.app).unwrap().agreed[0].agreed;
        maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, None))).tap(Tap::Agree(AgreeTap::Save)).shows(&["by Sat 2 May"]);
    }
}

#[test]
fn a_gallery_takes_sells_and_gives_back() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Gallery(GalleryTap::Leave(job))).tap(Tap::Gallery(GalleryTap::Pieces(2))).shows(&["82.46 to you for each sold"]);
    maker.tap(Tap::Gallery(GalleryTap::Consigned)).shows(&["1 left of 5", "2 there, tag 145"]);
    let lot = sheet(&maker.app).unwrap().at_galleries[0].there.lot;
    maker.tap(Tap::Gallery(GalleryTap::Back(job, lot))).shows(&["Gallery paid 82.46"]).tap(Tap::Gallery(GalleryTap::Paid));
    let sold = account(&shop(&maker.app), job).unwrap().sold;
    assert_eq!((sold.by_galleries, sold.at_galleries, sold.handed_over.to_string().as_str()), (1, 1, "82.46 USD"));
    maker.tap(Tap::Gallery(GalleryTap::Back(job, lot))).tap(Tap::Gallery(GalleryTap::Returned)).shows(&["2 left of 5"]).hides(&["2 there"]);
}

/// Two galleries, each by its own terms: 145 at 40 % before tax with the tax left to the maker, 200 at half with the gallery's. Sold for 120
/// at the first: 74.51 handed over with 6.26 of tax (reckoned in stories_deals).
#[test]
fn each_gallery_has_its_own_row_and_terms() {
    let story = include_str!("../../../../../tests/stories/gallery.txt").split("# --- Fern sells").next().unwrap();
    let mut maker = Maker::told(story, "stools");
    let job = maker.job;
    maker.shows(&["2 there, tag 145", "82.46 to you", "1 there, tag 200", "94.79 to you"]);
    let lots = sheet(&maker.app).unwrap().at_galleries.iter().map(|row| row.there.lot).collect::<Vec<_>>();
    maker.tap(Tap::Gallery(GalleryTap::Back(job, lots[0]))).shows(&["Tag", "145", "Left there", "Tue 10 March", "Gallery paid 90.02"]);
    maker.tap(Tap::Gallery(GalleryTap::Pad(gallery::Field::SoldFor))).shows(&["What did the buyer hand over"]).press("120");
    maker.tap(Tap::Gallery(GalleryTap::PadDone)).shows(&["Sold for", "120.00", "Gallery paid 74.51"]).tap(Tap::Gallery(GalleryTap::Paid));
    let sold = account(&shop(&maker.app), job).unwrap().sold;
    assert_eq!((sold.handed_over.to_string(), sold.tax.to_string()), ("74.51 USD".to_owned(), "6.26 USD".to_owned()));
    maker.shows(&["1 there, tag 145", "1 there, tag 200"]).tap(Tap::Gallery(GalleryTap::Back(job, lots[1])));
    maker.shows(&["Gallery paid 94.79"]).tap(Tap::Gallery(GalleryTap::Returned)).shows(&["1 there, tag 145"]).hides(&["tag 200"]);
}

/// A gallery that is known is named, and brings its own terms of last time.
#[test]
fn a_known_gallery_brings_its_terms() {
    let story = include_str!("../../../../../tests/stories/gallery.txt").split("# --- Fern sells").next().unwrap();
    let mut maker = Maker::told(story, "stools");
    let job = maker.job;
    let people = maker.app.own.workshop().people.clone();
    for (person, name) in people.iter().zip(["Fern", "Moss"]) {
        maker.app.own.names.insert(person.id, Person::named(name));
    }
    maker.shows(&["At Fern", "At Moss"]);
    maker.tap(Tap::Gallery(GalleryTap::Leave(job))).shows(&["not named", "Fern", "Moss"]);
    for (person, terms) in [(people[0].id, ("0.4", true)), (people[1].id, ("0.5", false))] {
        maker.tap(Tap::Gallery(GalleryTap::At(Some(person))));
        let Over::Consign(consign) = &maker.app.price.over else { panic!("{person}") };
        assert_eq!((consign.terms.share.to_string().as_str(), consign.terms.maker_pays), terms);
    }
    // A share that was said is the maker's.
    maker.tap(Tap::Gallery(GalleryTap::Share("0.3".parse().unwrap()))).tap(Tap::Gallery(GalleryTap::At(Some(people[0].id))));
    maker.tap(Tap::Gallery(GalleryTap::At(None))).tap(Tap::Gallery(GalleryTap::At(Some(people[1].id))));
    let Over::Consign(consign) = &maker.app.price.over else { panic!() };
    assert_eq!((consign.terms.share.to_string().as_str(), consign.terms.maker_pays), ("0.3", false));
    maker.tap(Tap::Gallery(GalleryTap::Pad(gallery::Field::Tag))).press("160").tap(Tap::Gallery(GalleryTap::PadDone));
    maker.tap(Tap::Gallery(GalleryTap::Consigned));
    assert_eq!(sheet(&maker.app).unwrap().at_galleries.last().unwrap().there.gallery, Some(people[1].id));
}

/// 1000 with 300 ahead is first proposed as that, due at once, and the rest. What came in already is the first payment, and paid; without a deposit
/// it is halves.
#[test]
fn payments_begin_with_the_deposit_that_was_agreed() {
    for (deposit, paid, shown) in [
        ("", "", vec!["500.00", "at hand-over", "500.00"]),
        (" deposit 300", "", vec!["by ", "300.00", "at hand-over", "700.00"]),
        (" deposit 300", "pay 300 for desk bank agreed deal\n", vec!["paid", "300.00", "at hand-over", "700.00"]),
        (" deposit 300", "pay 100 for desk bank agreed deal\n", vec!["paid", "100.00", "by ", "200.00", "at hand-over", "700.00"]),
        ("", "pay 250 for desk bank agreed deal\n", vec!["paid", "250.00", "at hand-over", "750.00"]),
    ] {
        let story = "2026-04-17 09:00 -05:00 workshop USD inch\njob desk \"Desk\" 1 order\n";
        let mut maker = Maker::told(&format!("{story}agree 1000 for 1 desk fetched{deposit} as deal\n{paid}"), "desk");
        deal(&mut maker);
        let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
        maker.tap(Tap::Parts(PartsTap::Open(job, agreed))).shows(&shown).shows(&["1000.00 of 1000.00"]);
        maker.tap(Tap::Parts(PartsTap::Save)).shows(&["Payment 1, "]);
        let came = if paid.is_empty() { "500.00" } else { "Payment 1, paid" };
        maker.shows(&[if deposit.is_empty() || !paid.is_empty() { came } else { "300.00" }]).hides(&["to come"]);
    }
}

/// 300 came in, and the order is 250 now: the payments that are proposed are of 250, and can be saved; so are those of a deposit beyond the price.
#[test]
fn payments_of_less_than_came_in_can_be_saved() {
    for (deposit, paid, changed, shown) in [
        ("", "pay 300 for desk bank agreed deal\n", "agree 250 for 1 desk fetched replaces deal as less\n", ["125.00", "125.00"]),
        (
            " deposit 300",
            "pay 100 for desk bank agreed deal\n",
            "agree 250 for 1 desk fetched deposit 250 replaces deal as less\n",
            ["100.00", "150.00"],
        ),
        ("", "pay 300 for desk bank agreed deal\n", "agree 300 for 1 desk fetched replaces deal as less\n", ["paid", "300.00"]),
    ] {
        let story = "2026-04-17 09:00 -05:00 workshop USD inch\njob desk \"Desk\" 1 order\n";
        let mut maker = Maker::told(&format!("{story}agree 1000 for 1 desk fetched{deposit} as deal\n{paid}{changed}"), "desk");
        deal(&mut maker);
        let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
        maker.tap(Tap::Parts(PartsTap::Open(job, agreed))).shows(&shown).tap(Tap::Parts(PartsTap::Save)).shows(&["Payment 1, paid"]);
    }
}

/// What was agreed as a deposit stays the first payment however many there are; a first sum that is typed takes its place.
#[test]
fn the_deposit_stays_the_first_payment_however_many() {
    for (price, deposit, shown) in [("1499.95", "449.99", ["449.99", "524.98", "524.98"]), ("1000", "300", ["300.00", "350.00", "350.00"])]
    {
        let story = "2026-04-17 09:00 -05:00 workshop USD inch\njob desk \"Desk\" 1 order\n";
        let mut maker = Maker::told(&format!("{story}agree {price} for 1 desk fetched deposit {deposit} as deal\n"), "desk");
        deal(&mut maker);
        let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
        maker.tap(Tap::Parts(PartsTap::Open(job, agreed))).tap(Tap::Parts(PartsTap::Split(&[40, 30, 30])));
        let html = maker.html();
        let sums: Vec<&str> = html.split("<span class=\"t22 w8\">").skip(1).filter_map(|rest| rest.split('<').next()).collect();
        assert_eq!(sums, shown);
        maker.tap(Tap::Parts(PartsTap::At(0))).tap(Tap::Parts(PartsTap::Pad)).press("200").tap(Tap::Parts(PartsTap::PadDone));
        maker.tap(Tap::Parts(PartsTap::Split(&[50, 50]))).shows(&["200.00"]).hides(&[deposit]);
    }
}

/// 460 in three parts of 40, 30 and 30 per cent: 184, 138, 138. What came in pays the first; the next is asked by its key.
#[test]
fn what_was_agreed_is_paid_in_parts() {
    let mut maker = Maker::before_delivery();
    deal(&mut maker);
    let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
    maker.tap(Tap::Parts(PartsTap::Open(job, agreed))).shows(&["Payment 1", "paid", "184.00", "Payment 2", "at hand-over", "276.00"]);
    maker.tap(Tap::Parts(PartsTap::Split(&[40, 30, 30]))).shows(&["184.00", "138.00", "138.00", "460.00 of 460.00"]);
    // The last takes the rest of a part that is typed anew; once it is typed itself, all have to meet the price.
    let last = |maker: &mut Maker, sum: &str| {
        maker.tap(Tap::Parts(PartsTap::At(2))).tap(Tap::Parts(PartsTap::Pad)).press(sum).tap(Tap::Parts(PartsTap::PadDone));
    };
    last(&mut maker, "138");
    maker.tap(Tap::Parts(PartsTap::At(1))).tap(Tap::Parts(PartsTap::Pad)).press("100").tap(Tap::Parts(PartsTap::PadDone));
    maker.shows(&["422.00 of 460.00"]).tap(Tap::Parts(PartsTap::Save)).shows(&["the payments add up to €422.00, and €460.00 was agreed"]);
    maker.say(Msg::Common(Common::Understood));
    maker.tap(Tap::Parts(PartsTap::Pad)).press("138").tap(Tap::Parts(PartsTap::PadDone)).tap(Tap::Parts(PartsTap::Move(-7)));
    maker.tap(Tap::Parts(PartsTap::Save)).shows(&[
        "Payment 1, paid",
        "184.00",
        "Payment 2, by Fri 29 May",
        "138.00",
        "Payment 3, at hand-over",
    ]);
    let sum = maker.money("138");
    maker.shows(&["138.00 came in"]).tap(Tap::Deal(DealTap::Received(sum))).shows(&[
        "Payment 2, paid",
        "138.00",
        "Handed over, 138.00 paid",
    ]);
    maker
        .tap(Tap::Parts(PartsTap::Open(job, agreed)))
        .shows(&["In one sum after all"])
        .tap(Tap::Parts(PartsTap::Whole))
        .hides(&["Payment 1"]);
    maker.tap(Tap::Close).shows(&["Take back: payments of 460.00"]).say(Msg::Common(Common::TakeBack));
    deal(&mut maker);
    maker.shows(&["Payment 1"]);
    // Another day leaves the payments as they are; another price has to be planned anew, and says so.
    let again = "payments are to be planned anew";
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, None))).tap(Tap::Agree(AgreeTap::By(By::Weeks(3)))).hides(&[again]);
    maker.tap(Tap::Agree(AgreeTap::Save));
    deal(&mut maker);
    maker.shows(&["Payment 2, paid", "138.00", "at hand-over"]);
    let (agreed, sum) = (sheet(&maker.app).unwrap().agreed[0].agreed, maker.money("440"));
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, Some(sum)))).shows(&[again]).tap(Tap::Agree(AgreeTap::Save));
    deal(&mut maker);
    maker.hides(&["Payment 1"]);
}

/// Of several orders the deposits are said in sum: they are owed as work.
#[test]
fn deposits_are_owed_as_work() {
    let story = "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 4 order\nagree 400 for 1 stools fetched deposit 150 as one\n\
        pay 150 for stools bank agreed one\nagree 300 for 1 stools fetched deposit 90.50 as two\npay 90.50 for stools bank agreed two\n";
    Maker::told(story, "stools").shows(&["Came in ahead, owed as work", "$240.50"]);
    Maker::told(story.split("agree 300").next().unwrap(), "stools").hides(&["owed as work"]);
}

/// Somebody new is named in the agreement itself; a change of order keeps them; forgotten they are someone.
#[test]
fn an_agreement_names_its_buyer() {
    let mut maker = Maker::at_market();
    let (job, facts) = (maker.job, maker.app.own.book.len());
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).shows(&["For whom", "someone", "somebody new"]).hides(&["Their name"]);
    maker.tap(Tap::Agree(AgreeTap::Named(String::new()))).shows(&["Their name"]).tap(Tap::Agree(AgreeTap::Named(" Bea ".into())));
    maker.tap(Tap::Agree(AgreeTap::Share(40))).tap(Tap::Agree(AgreeTap::Save)).shows(&["for Bea", "Take back: agreed 145"]);
    assert_eq!(maker.app.own.book.len(), facts + 2);
    deal(&mut maker);
    maker.shows(&["For whom", ">Bea<"]);
    let row = sheet(&maker.app).unwrap().agreed[0].clone();
    maker.tap(Tap::Agree(AgreeTap::Change(job, row.agreed, None))).tap(Tap::Agree(AgreeTap::Save)).shows(&["for Bea"]);
    let bea = sheet(&maker.app).unwrap().agreed[0].buyer;
    assert_eq!((bea, bea.is_some()), (row.buyer, true));
    // Picked for the next one; back at nobody.
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Buyer(bea))).shows(&["aria-pressed=\"true\"><span>Bea"]);
    maker.tap(Tap::Agree(AgreeTap::Buyer(None))).tap(Tap::Close);
    let forget = crate::app::workshop::Tap::Forget(bea.unwrap());
    maker.say(Msg::Workshop(forget));
    maker.app.place = Place::Price;
    maker.shows(&["for someone"]).hides(&["Bea"]);
}

/// The act that named somebody new is taken back whole.
#[test]
fn an_agreement_with_somebody_new_is_taken_back_whole() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Named("Bea".into()))).tap(Tap::Agree(AgreeTap::Save));
    maker.shows(&["for Bea", "2 left of 5"]).say(Msg::Common(Common::TakeBack));
    maker.shows(&["3 left of 5"]).hides(&["for Bea"]);
    assert!(sheet(&maker.app).unwrap().agreed.is_empty());
    assert!(shop(&maker.app).workshop.people.iter().all(|person| person.role != fivebar_core::ledger::kind::book::Role::Buyer));
}

/// What a gallery handed over lacks of its terms: said with its sum on the form, on the list until it comes, and no more than that comes.
#[test]
fn what_a_gallery_lacks_stays_due_until_it_comes() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Gallery(GalleryTap::Leave(job))).tap(Tap::Gallery(GalleryTap::Pieces(2))).tap(Tap::Gallery(GalleryTap::Consigned));
    let lot = sheet(&maker.app).unwrap().at_galleries[0].there.lot;
    let part = |maker: &mut Maker| {
        maker.tap(Tap::Gallery(GalleryTap::Back(job, lot))).tap(Tap::Gallery(GalleryTap::Pad(gallery::Field::Sum))).press("60");
        maker.tap(Tap::Gallery(GalleryTap::PadDone)).shows(&["Gallery paid 60.00", "for 1 piece; 22.46 still due", "The rest is to come"]);
    };
    part(&mut maker);
    maker.tap(Tap::Gallery(GalleryTap::Paid)).shows(&["Of 82.46", "due 22.46", "Take back: gallery paid 60.00"]);
    maker.tap(Tap::Gallery(GalleryTap::Back(job, lot))).shows(&["It still owes", "22.46"]).tap(Tap::Close);
    let of = sheet(&maker.app).unwrap().galleries_owe[0].due.of;
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Gallery(of))));
    maker.shows(&["22.46 due", "22.46 came in", "Paid in part"]).tap(Tap::Deal(DealTap::Pad)).press("30").tap(Tap::Deal(DealTap::PadDone));
    maker.shows(&["is more than the $22.46 that is due"]).say(Msg::Common(Common::Understood));
    maker.tap(Tap::Deal(DealTap::PadAway));
    let sum = maker.money("22.46");
    maker.now.chance = [7; 10];
    maker.tap(Tap::Deal(DealTap::Received(sum))).hides(&["due 22.46"]).shows(&["Take back: 22.46 came in"]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["due 22.46"]);
    // The other one went for less, and that was all.
    part(&mut maker);
    maker.tap(Tap::Gallery(GalleryTap::ThatIsAll(true))).shows(&["22.46 less than its terms say"]).tap(Tap::Gallery(GalleryTap::Paid));
    assert_eq!(sheet(&maker.app).unwrap().galleries_owe.len(), 1);
}

/// What never comes is given up on its page: it is due nowhere, the bar takes that back, and the page of the job says it.
#[test]
fn what_a_gallery_will_not_pay_is_given_up() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Gallery(GalleryTap::Leave(job))).tap(Tap::Gallery(GalleryTap::Consigned));
    let lot = sheet(&maker.app).unwrap().at_galleries[0].there.lot;
    maker.tap(Tap::Gallery(GalleryTap::Back(job, lot))).tap(Tap::Gallery(GalleryTap::Pad(gallery::Field::Sum))).press("60");
    maker.tap(Tap::Gallery(GalleryTap::PadDone)).tap(Tap::Gallery(GalleryTap::Paid));
    let of = sheet(&maker.app).unwrap().galleries_owe[0].due.of;
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Gallery(of)))).shows(&["22.46 due", "This will not be paid", "The sale stays"]);
    maker.now.chance = [7; 10];
    maker.tap(Tap::Deal(DealTap::GivenUp)).hides(&["due 22.46"]).shows(&["Take back: 22.46 will not be paid"]);
    assert_eq!((sheet(&maker.app).unwrap().galleries_owe, sheet(&maker.app).unwrap().due.len()), (vec![], 0));
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["due 22.46"]);
}

/// A hand-over that ends on a coin is named by what was paid, and so is the rest of a sale.
#[test]
fn the_bar_names_what_was_paid_to_the_coin() {
    for (price, paid, bar) in
        [("80.02", Paid::Notes, "sold at 80<"), ("80.02", Paid::Bank, "sold at 80.02<"), ("80.03", Paid::Notes, "sold at 80.05<")]
    {
        let story = format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\ntill cash 0.05\njob stools \"Stools\" 2 order\nagree {price} for 1 stools fetched as deal\n"
        );
        let mut maker = Maker::told(&story, "stools");
        deal(&mut maker);
        maker.tap(Tap::Deal(DealTap::Paid(paid))).tap(Tap::Deal(DealTap::HandedOver)).shows(&[&format!("Take back: {bar}")]);
    }
    // The 366.60 in notes are of both pieces: neither was sold at 183.31.
    let story = "2026-03-02 09:00 -05:00 workshop USD inch\ntill cash 0.05\njob stools \"Stools\" 2 order\n\
        agree 366.58 for 2 stools fetched as deal\nsell 1 stools for 183.29 agreed deal\n";
    let mut maker = Maker::told(story, "stools");
    deal(&mut maker);
    maker.tap(Tap::Deal(DealTap::Paid(Paid::Notes))).shows(&["Handed over, 366.60 paid"]).tap(Tap::Deal(DealTap::HandedOver));
    maker.shows(&["Take back: sold at 183.29"]);
    let story =
        "2026-03-02 09:00 -05:00 workshop USD inch\ntill cash 0.05\njob stools \"Stools\" 2 spec\nsell 1 stools for 80.02 as sale\n";
    let mut maker = Maker::told(story, "stools");
    let (job, sale) = (maker.job, sheet(&maker.app).unwrap().owed[0].sale);
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Sale(sale)))).tap(Tap::Deal(DealTap::Paid(Paid::Notes))).tap(Tap::Deal(DealTap::Pad));
    maker.press("80.02").tap(Tap::Deal(DealTap::PadDone)).shows(&["Take back: 80.00 came in"]);
}

/// Sold for 109 to be paid later, 59 came in: what never comes is given up on the page of the debt, or on the job's own, and nothing is said to have
/// gone back.
#[test]
fn what_a_buyer_will_not_pay_is_given_up() {
    let story = "2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 2 spec\nsell 1 stools for 109 as sale\n";
    for came in ["pay 59 for stools notes sale sale\n", ""] {
        let mut maker = Maker::told(&format!("{story}{came}"), "stools");
        let (job, owed) = (maker.job, sheet(&maker.app).unwrap().owed[0].clone());
        let due = if came.is_empty() { "109.00" } else { "50.00" };
        maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Sale(owed.sale)))).shows(&["This will not be paid", "The sale stays"]);
        maker.tap(Tap::Deal(DealTap::GivenUp)).shows(&[&format!("Take back: {due} will not be paid")]);
        assert_eq!((sheet(&maker.app).unwrap().owed, sheet(&maker.app).unwrap().due.len()), (vec![], 0));
        maker.say(Msg::Common(Common::TakeBack));
        assert_eq!(sheet(&maker.app).unwrap().owed, [owed]);
    }
}

/// A price that was typed is of the number in front of it: with another it is asked anew, and nothing can be agreed before.
#[test]
fn a_typed_price_is_of_its_number_of_pieces() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Pieces(2)));
    let Over::Agree(agree) = maker.app.price.over.clone() else { panic!("agree") };
    assert_eq!(agree.sum, Some(maker.money("290")), "what is asked goes along");
    maker.tap(Tap::Agree(AgreeTap::Pad(agree::Field::Price))).press("260").tap(Tap::Agree(AgreeTap::PadDone));
    maker.tap(Tap::Agree(AgreeTap::Share(50))).shows(&["2 for 260, deposit 130"]).tap(Tap::Agree(AgreeTap::Pieces(1)));
    maker.shows(&["The price was for 2 pieces. Say it for 1 piece.", "not yet"]).hides(&["for 260", "deposit 130"]);
    let before = maker.app.own.book.len();
    maker.tap(Tap::Agree(AgreeTap::Save));
    assert_eq!(maker.app.own.book.len(), before, "nothing is agreed without a price");
    maker.tap(Tap::Agree(AgreeTap::Pad(agree::Field::Price))).press("140").tap(Tap::Agree(AgreeTap::PadDone));
    maker.hides(&["The price was for"]).shows(&["140, deposit 70"]).tap(Tap::Agree(AgreeTap::Pieces(1))).shows(&["140, deposit 70"]);
}

/// 2.9 % of 150 ahead and 0.30 are 4.65: beside what is handed back stands what stays paid of it.
#[test]
fn a_deposit_handed_back_leaves_its_fee() {
    for (paid, says) in [("card", true), ("notes", false)] {
        let mut maker = Maker::told(
            &format!(
                "2026-05-04 08:00 +00:00 workshop USD metric\ntill fee 0.029 fixed 0.30\njob lamp \"Ash lamp\" 5 spec\n\
                agree 500 for 3 lamp fetched deposit 150 as deal\npay 150 for lamp {paid} agreed deal\n"
            ),
            "lamp",
        );
        let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
        let html = maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Agreed(agreed)))).html();
        assert!(html.contains("deposit handed back"), "{html}");
        assert_eq!(html.contains("Handed back, its fee of 4.65 stays with you."), says, "{html}");
    }
}

/// The way that is chosen on the offer stays on the page of what was agreed, on its key and in what is written, until another is said there; of what
/// came in already it is as that was paid.
#[test]
fn how_they_pay_stays_until_another_is_said() {
    const BEGUN: &str = "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 4 spec\n";
    const AGREED: &str = "agree 180 for 1 more fetched deposit 54 as deal\n";
    let check = |said: Option<Paid>, lines: &str, (by, paid): (&str, Paid)| {
        let mut maker = Maker::told(&format!("{BEGUN}{lines}"), "more");
        let job = maker.job;
        maker.tap(Tap::Offer(job));
        if let Some(said) = said {
            maker.tap(Tap::Bargain(BargainTap::Paid(said)));
        }
        let found = maker.app.price.paid;
        maker.tap(Tap::Close);
        deal(&mut maker);
        let sum = maker.money("54");
        maker.shows(&[&format!("54.00 came in, {by}")]).tap(Tap::Deal(DealTap::Received(sum)));
        let last = shop(&maker.app).job(job).unwrap().selling.payments.last().unwrap().paid;
        assert_eq!(last, paid, "{said:?} {found:?}");
    };
    check(None, AGREED, ("by card", Paid::Card));
    check(Some(Paid::Card), AGREED, ("by card", Paid::Card));
    check(Some(Paid::Notes), AGREED, ("in notes", Paid::Notes));
    check(Some(Paid::Bank), AGREED, ("by bank", Paid::Bank));
    let ahead = AGREED.replace("deposit 54", "deposit 108") + "pay 54 for more bank agreed deal\n";
    check(None, &ahead, ("by bank", Paid::Bank));
}
