//! The word is true: hours to come that nobody knows, hours in question, an order for several.

use super::*;

const SHOP: &str = "2026-05-04 08:00 +02:00 workshop EUR metric\nrate pay 17 hours 600 logged 480 costs 1440\n";

fn told(more: &str) -> Maker {
    Maker::told(&format!("{SHOP}{more}"), "stool")
}

/// One hour of a stool of which nobody knows how long it takes: 64.25 pays for that hour, and is no yes.
#[test]
fn hours_to_come_that_are_not_known_are_no_yes() {
    let started = "job stool \"Stool\" 1 spec\nspend 40 glue on stool\nstart \"saw\" make on stool\n09:00 stop\n";
    let mut maker = told(&format!("{started}tag 300 stool\n"));
    maker.shows(&["Not known yet: hours to come."]);
    maker.offer("100").shows(&["Say 300", "hours to come are not known"]).hides(&["It pays your rate"]);
    maker.bargain(BargainTap::PayAndHours).shows(&["Hours to come are not known, so it leaves less for each."]);
    let mut untagged = told(started);
    untagged.offer("65").shows(&["No word yet", "Hours to come are not known: plan them, or set its price."]);
    let mut planned = told(&format!("{started}tag 300 stool\nplan \"saw\" make 180 min for stool\n"));
    planned.hides(&["Not known yet"]).offer("150").shows(&["Say 300", "It pays your rate"]);
}

/// The line that says that nobody knows what is to come leads to where it is said that nothing is: it is made, with its costs noted or not.
#[test]
fn what_is_to_come_is_said_where_the_line_leads() {
    for spent in ["spend 40 glue on stool\n", ""] {
        let started = format!("job stool \"Stool\" 1 spec\n{spent}start \"saw\" make on stool\n09:00 stop\ntag 300 stool\n");
        let mut maker = told(&started);
        let job = maker.job;
        maker.shows(&["<button", "hours to come.</span></button>"]).tap(Tap::ToCome(job)).shows(&["Pay and hours", "It is made"]);
        maker.bargain(BargainTap::Made).hides(&["It is made"]).tap(Tap::Close).hides(&["hours to come"]);
    }
}

/// Nothing was noted that it took: the line leads to where it is said, and a 0 says that it took nothing.
#[test]
fn what_it_took_is_said_where_the_line_leads() {
    let mut maker = told("job stool \"Stool\" 1 spec\ntag 300 stool\n");
    let (job, key) = (maker.job, "Write down what it took, or 0 if nothing");
    maker.shows(&["what you spent", key]).tap(Tap::Spend(job)).shows(&["Write down spending"]);
    told("job stool \"Stool\" 1 spec\ntag 300 stool\nspend 0 glue on stool\n").hides(&["what you spent", key]);
}

/// A mirror nobody worked on or planned, beside one earlier job of no kind that took 5 h 20: every page of Price that counts them says whose hours
/// these are.
#[test]
fn hours_by_a_guess_are_said() {
    let mirror = "old-job \"Frame\" 320 min\njob stool \"Mirror\" 1 order\nspend 300 wood on stool\ntag 600 stool\n";
    let said = "5 h 20 of its hours are a guess, by 1 earlier job.";
    let mut maker = told(mirror);
    maker.shows(&[said]).offer("500").shows(&[said]).bargain(BargainTap::PayAndHours).shows(&[said]);
    let mut planned = told(&format!("{mirror}plan \"saw\" make 320 min for stool\n"));
    planned.hides(&["are a guess"]).offer("500").hides(&["are a guess"]);
    told(&format!("{mirror}about stool piece bench\n")).shows(&["of its hours are a guess, by what such pieces take."]);
}

/// The clock ran over night: fifteen hours more are in no mark, as they are in no day, quote or hours, and each page of Price says so. One hour
/// and 40 spent leave 60 an hour of 100; once the maker said that the night was worked, sixteen do. Of a job that has ended all was worked.
#[test]
fn hours_in_question_are_said() {
    let text = "job stool \"Stool\" 1 spec\nspend 40 glue on stool\ntag 300 stool\n10:00 start \"saw\" make on stool\n11:00 stop\nplan \"saw\" make 60 min for stool\n";
    let night = "17:00 start \"oil\" make on stool stage finish as night\n2026-05-05 08:00 stop\n";
    told(text).hides(&["to settle"]);
    let mut maker = told(&format!("{text}{night}"));
    maker.shows(&["15 h more is to settle on Bench", "No price here counts it"]).offer("100").shows(&["15 h more to settle, not counted"]);
    maker.bargain(BargainTap::PayAndHours).shows(&["15 h more is to settle on Bench", "60.00"]).hides(&["16 h"]);
    // One of two is left of a job that is done with: prices count the night, and say so.
    let two = text.replace("1 spec", "2 spec").replace("plan \"saw\" make 60 min for stool\n", "");
    let mut ended = told(&format!("{two}{night}sell 1 stool for 300 notes fetched\nend stool\n"));
    ended.shows(&["15 h of its hours is to settle on Bench", "prices count it"]).offer("100").shows(&["15 h to settle, counted here."]);
    let answered = told(&format!("{text}{night}08:01 confirm run night\n"));
    let mut answered = answered;
    answered.hides(&["to settle"]).offer("100").hides(&["to settle"]).bargain(BargainTap::PayAndHours).shows(&["16 h", "3.75"]);
}

/// Two stools for 800, 40 and four hours each: "750 for both" leaves (750 - 80) / 8 h, and the change of order is for both.
#[test]
fn a_new_sum_is_for_all_that_is_promised() {
    let mut maker = told(
        "job stool \"Stool\" 2 order\nspend 80 glue on stool\nstart \"oil\" make on stool stage finish\n16:00 stop\nagree 800 for 2 stool fetched as deal\n",
    );
    maker.offer("750").bargain(BargainTap::PayAndHours).shows(&["750", "83.75", "80.00", "8 h"]);
    maker.bargain(BargainTap::PayAndHours).shows(&["Change the order to 750"]);
    let (job, sum) = (maker.job, maker.money("750"));
    let agreed = sheet(&maker.app).unwrap().agreed[0].agreed;
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, Some(sum)))).tap(Tap::Agree(AgreeTap::Save));
    let row = sheet(&maker.app).unwrap().agreed[0].clone();
    assert_eq!((row.n, row.price), (2, sum));
}

/// Where the smallest coin is 0.05, 203.37 in notes is 203.35, on the key before it is tapped and on the bar after it; by card it is what was said.
#[test]
fn what_goes_to_the_coin_is_said_before_it_is_booked() {
    let mut maker = told("till cash 0.05\njob stool \"Stool\" 1 spec\ntag 300 stool\n");
    maker.offer("203.37").bargain(BargainTap::Paid(Paid::Card)).shows(&["Sold at 203.37"]).hides(&["to the coin"]);
    maker.bargain(BargainTap::Paid(Paid::Notes)).shows(&["Sold at 203.35", "203.37 to the coin"]);
    maker.bargain(BargainTap::Sold).shows(&["Take back: sold at 203.35"]);
    assert_eq!(maker.sold().1, "203.35 EUR");
}

/// 5.5 % on top of 150 are 158.25. In notes with a smallest coin of one, 158 is asked, offered, shown to a buyer and said; by card it is to the
/// cent. The mirror of a settle of 147 around 140 is 154: in steps of five with a smallest note of two it is 156, no less.
#[test]
fn what_is_said_in_notes_can_be_handed_over() {
    let stool = |coin: &str| {
        told(&format!(
            "till tax 0.055 top\ntill cash {coin}\nrate lowest 1\njob stool \"Stool\" 1 spec\nspend 40 glue on stool\nplan \"saw\" make 60 min for stool\ntag 150 stool\n"
        ))
    };
    let mut maker = stool("1");
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Paid(Paid::Card)).shows(&["Ask 158.25", "Sold at 158.25"]);
    maker.bargain(BargainTap::Paid(Paid::Notes)).shows(&["Ask 158<", "Sold at 158<"]).hides(&["158.25"]);
    maker.tap(Tap::Show(job)).shows(&["158"]).hides(&["158.25"]).tap(Tap::Hide).tap(Tap::Close);
    maker.shows(&["158"]).hides(&["158.25"]).offer("150").shows(&["Say 158<"]).hides(&["158.25"]).tap(Tap::Close);
    maker.offer("158").shows(&["Yes", "what you ask"]).bargain(BargainTap::Sold);
    assert_eq!(maker.sold().1, "158.00 EUR");
    let mut settled = stool("2");
    let (job, sum) = (settled.job, settled.money("147"));
    settled.app.order(&Command::Money(MoneyCommand::SetSettle { job, sum: Some(sum) }), settled.now);
    settled.offer("140").bargain(BargainTap::Paid(Paid::Notes)).shows(&["Say 156"]);
    settled.bargain(BargainTap::Paid(Paid::Card)).shows(&["Say 155"]);
}

/// Each way of paying has its fee: on 200 a card takes 2 % and 0.30, a transfer 1 %, notes nothing. What is chosen for one buyer changes what
/// you get and is written with the sale; a transfer, and who carries it, is no word on the next buyer.
#[test]
fn each_way_of_paying_has_its_fee() {
    let two = "till fee 0.02 fixed 0.30 bank-fee 0.01\njob stool \"Stool\" 2 spec\ntag 200 stool\nspend 40 glue on stool\n";
    for (paid, fee, get) in [(Paid::Card, "4.3", "195.70"), (Paid::Bank, "2", "198.00"), (Paid::Notes, "0", "200.00")] {
        let mut maker = told(two);
        maker.offer("200").bargain(BargainTap::Paid(paid)).bargain(BargainTap::PayAndHours).shows(&[get]);
        maker.bargain(BargainTap::PayAndHours).bargain(BargainTap::Carried(Carried::Delivered)).bargain(BargainTap::Sold);
        let job = shop(&maker.app).job(maker.job).unwrap();
        assert_eq!((job.selling.payments[0].paid, job.selling.payments[0].fee.amount().normalize().to_string()), (paid, fee.to_owned()));
        assert_eq!(job.selling.sales[0].carried, Some(Carried::Delivered));
        let next = asking(&maker.app, maker.job, 1);
        let kept = if paid == Paid::Bank { Paid::Card } else { paid };
        assert_eq!((next.paid, next.carried), (kept, Carried::Fetched), "{paid:?}");
    }
}

/// Agreed with 5.5 % inside and a deposit by card: the deal, its pay and hours and the page of the job say the same of it, by the way that
/// is chosen. Of 200 the tax is 10.43; 80 by card cost 1.90, the 120 due cost 2.70 by card as well: 184.97; by the bank 1.20: 186.47.
#[test]
fn what_is_agreed_says_its_tax_and_fees() {
    let mut maker = told(
        "till tax 0.055 inside fee 0.02 fixed 0.30 bank-fee 0.01\njob stool \"Stool\" 1 order\nspend 40 glue on stool\n\
        start \"oil\" make on stool stage finish\n10:00 stop\nall-planned stool\nplan-cost travel 30 delivery for stool\n\
        agree 200 for 1 stool fetched deposit 80 as deal\npay 80 for stool card agreed deal\n",
    );
    let (job, agreed) = (maker.job, sheet(&maker.app).unwrap().agreed[0].agreed);
    let off = |maker: &Maker| {
        let money = fivebar_core::sheet::job::job(&shop(&maker.app), job).unwrap().money;
        (money.off.amount().to_string(), money.as_it_stands.unwrap().left.normalize().to_string())
    };
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Agreed(agreed)))).shows(&["Tax", "−10.43", "Fee", "−4.60", "You get", "184.97"]);
    assert_eq!(off(&maker), ("15.03".to_owned(), "72.485".to_owned()));
    let lines = ["Tax", "−10.43", "Fee", "−3.10", "You get", "186.47"];
    maker.tap(Tap::Deal(DealTap::Paid(Paid::Bank))).shows(&lines).tap(Tap::Offer(job)).shows(&lines).shows(&["146.47", "73.24"]);
    assert_eq!(off(&maker), ("13.53".to_owned(), "73.235".to_owned()));
}

/// 40 and three hours at 24.25 need 112.75: the point above is 115.
#[test]
fn what_a_price_point_adds_is_said() {
    let started = "job stool \"Stool\" 1 spec\nspend 40 glue on stool\nplan \"saw\" make 180 min for stool\nstart \"saw\" make on stool\n";
    let mut maker = told(&format!("{started}11:00 done 1\n11:00 stop\n"));
    let job = maker.job;
    maker.tap(Tap::Tag(TagTap::Open(job, What::Tag))).shows(&["Tag 115, from your rate", "2.25 more to you than your rate needs"]);
    maker.tap(Tap::Tag(TagTap::Open(job, What::Settle))).hides(&["than your rate needs"]);
}

/// 40 and three hours at 12 are 76, at 24.25 they are 112.75: 60 is under both, 100 under one, and the word says which.
#[test]
fn under_the_lowest_pay_is_another_word() {
    let started =
        "rate lowest 12\njob stool \"Stool\" 1 spec\nspend 40 glue on stool\nplan \"saw\" make 180 min for stool\ntag 300 stool\n";
    let mut maker = told(&format!("{started}start \"saw\" make on stool\n11:00 done 1\n11:00 stop\n"));
    maker.offer("60").shows(&["Below your lowest pay", "Your lowest pay needs 76."]).hides(&["Your rate needs"]);
    maker.offer("100").shows(&["Below your rate", "Your rate needs 113."]).hides(&["Below your lowest pay"]);
}

/// Below the most a sum may be, each offer has its word: the mirror of a settle of 200 is 9,999,599 below nothing.
#[test]
fn the_largest_offer_has_a_word() {
    let mut maker = told("job stool \"Stool\" 1 spec\ntag 300 stool\nsettle 200 stool\n");
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Pad).press("9999999").bargain(BargainTap::PadDone);
    maker.shows(&["Yes", "9999699 over what you ask", "Sold at 9999999"]);
}

/// Worked on without a plan: what is to come is not known until the maker says that it is made; then Price says that nothing is.
#[test]
fn what_is_made_has_nothing_to_come() {
    let worked = "2026-05-04 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 400 costs 0\njob desk \"Desk\" 1 spec\n\
        spend 40 wood on desk\nrecall \"make\" make on desk 2026-05-01 09:00 to 2026-05-01 19:00\n";
    let mut maker = Maker::told(worked, "desk");
    let (unknown, none) = ("Hours to come are not known", "Nothing of its work is to come");
    maker.offer("300").bargain(BargainTap::PayAndHours).shows(&[unknown, "It is made"]).bargain(BargainTap::Made);
    maker.shows(&[none]).hides(&[unknown, "It is made"]).bargain(BargainTap::PayAndHours).hides(&["not known"]);
    // Planned and done, or sold in part, is made too.
    for more in ["plan \"make\" make 600 min for desk\ndone 1\n", "about desk pieces 2\nsell 1 desk for 200 notes\n"] {
        Maker::told(&format!("{worked}{more}"), "desk").offer("300").bargain(BargainTap::PayAndHours).shows(&[none]).hides(&[unknown]);
    }
}
