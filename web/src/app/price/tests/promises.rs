//! Marks and word never contradict: a figure that promises a least keeps it, and settle, ask and not under stand in their order.

use super::*;
use crate::app::price::tag::{TagTap, What};
use crate::app::price::waiting::WaitTap;
use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::quantity::Moment;
use fivebar_core::sheet::waiting::Question;

/// Rate 20 x 1,500 / 1,000 + 3 of costs, + 10 % and + 5 % = 38.36; five lamps of 92.50 and five hours at the bench.
const SHOP: &str = "2026-05-04 08:00 +00:00 workshop USD metric
rate pay 20 lowest 12 hours 1500 logged 1000 costs 3000 tax 0.1 profit 0.05
till tax 0.08 inside fee 0.029 fixed 0.30 point 5
job lamp \"Ash lamp\" 5 spec
spend 92.50 wood on lamp
start \"assemble\" make on lamp
13:00 stop
";

fn told(more: &str) -> Maker {
    Maker::told(&format!("{SHOP}{more}"), "lamp")
}

const PLAN: &str = "plan \"sand\" make 150 min for lamp\nplan \"market\" sell 60 min for lamp\nplan \"coat\" make 60 min for lamp\n";

/// All five need (92.50 + 0.30) / (1 / 1.08 - 0.029) = 103.46: 103 leaves less than nothing, 104 covers.
#[test]
fn what_covers_the_costs_covers_them() {
    let mut maker = told(&format!("tag 120 lamp\n{PLAN}"));
    let sum = |maker: &Maker, sum| BargainTap::Say(maker.money(sum));
    maker.offer("103").bargain(BargainTap::Pieces(5));
    let say = sum(&maker, "103");
    maker.bargain(say);
    maker.shows(&["Under what you spent", "104 covers your costs."]);
    maker.bargain(BargainTap::PayAndHours).shows(&["−0.42"]).bargain(BargainTap::PayAndHours);
    let say = sum(&maker, "104");
    maker.bargain(say).hides(&["Under what you spent"]);
    maker.bargain(BargainTap::PayAndHours).hides(&["−0."]);
}

/// Five hours so far and 4 h 30 of plan x 1.40 are 11 h 18, 2 h 16 each: (38.36 x 2.26 + 18.50 + 0.30) / 0.8969 = 117.6.
#[test]
fn hours_to_come_are_those_of_the_job() {
    let mut maker = told(&format!("tag 120 lamp\n{PLAN}"));
    maker.offer("102").shows(&["Your rate needs 118."]).bargain(BargainTap::PayAndHours);
    maker.shows(&["2 h 16", "$32.16", "as the job’s own page has it"]);
}

/// What is asked lies under the rate: the list, the tag's form and the offer say so before a buyer speaks, and the word beside its yes; at the
/// rate nothing says it.
#[test]
fn a_yes_under_the_rate_says_so() {
    let mut maker = told(&format!("tag 110 lamp\n{PLAN}"));
    let job = maker.job;
    maker.shows(&["The tag is under your rate: 118 pays it."]).tap(Tap::Tag(TagTap::Open(job, What::Tag)));
    maker.shows(&["The tag is under your rate: 118 pays it."]).tap(Tap::Close).tap(Tap::Offer(job));
    maker.shows(&["Ask 110", "That is under your rate: 118 pays it."]).tap(Tap::Close);
    maker.offer("110").shows(&["Yes", "It is what you ask, but under your rate, which needs 118."]).hides(&["lowest pay, which"]);
    let mut maker = told(&format!("tag 120 lamp\n{PLAN}"));
    maker.offer("120").shows(&["Yes", "It is what you ask."]).hides(&["nder your rate"]);
}

/// Paid in notes, without a fee, your rate is (18.50 + 38.36 x 2.26) x 1.08 = 113.62: a tag of 115 pays it, and one of 110 lacks it. List, form and
/// offer say the same of the way that is chosen.
#[test]
fn a_tag_is_judged_by_the_way_one_is_paid() {
    for (tag, paid, says) in [
        ("115", Paid::Card, Some("118")),
        ("115", Paid::Notes, None),
        ("110", Paid::Notes, Some("114")),
        ("115", Paid::Bank, None),
        ("110", Paid::Bank, Some("114")),
    ] {
        let mut maker = told(&format!("tag {tag} lamp\n{PLAN}"));
        let job = maker.job;
        maker.app.here.paid = Some(paid);
        let check = |maker: &Maker, what: &str| {
            let (html, warning) = (maker.html(), says.map(|sum| format!("{what} is under your rate: {sum} pays it.")));
            assert!(warning.as_ref().is_none_or(|warning| html.contains(warning)), "{tag} {paid:?}: {html}");
            assert_eq!(html.contains("is under your rate"), says.is_some(), "{tag} {paid:?}: {html}");
        };
        check(&maker, "The tag");
        maker.tap(Tap::Tag(TagTap::Open(job, What::Tag)));
        check(&maker, "The tag");
        maker.tap(Tap::Close).tap(Tap::Offer(job));
        check(&maker, "That");
    }
}

/// 1200 for a tag of 120 may be a digit too many: it is asked about once, and sold at by the same key; 599 is sold at.
#[test]
fn many_times_the_tag_is_asked_about_once() {
    let asks = "is five times your tag of 120 or more. If it is so, tap again.";
    let sold = |maker: &Maker| maker.app.own.shop(maker.app.now.at).job(maker.job).unwrap().selling.sales.len();
    let mut maker = told("tag 120 lamp\n");
    // It looks like a slip as soon as it stands there.
    let slip = "10 times your tag of 120: is it right?";
    maker.offer("10000").shows(&["83 times your tag of 120: is it right?"]);
    maker.offer("599").hides(&["is it right?"]).offer("1200").shows(&[slip]).hides(&[asks]);
    maker.bargain(BargainTap::Sold).hides(&[slip]);
    maker.offer("1200").hides(&[asks]).bargain(BargainTap::Sold).shows(&["role=\"alert\"", asks, "Sold at 1"]);
    assert_eq!(sold(&maker), 0);
    maker.bargain(BargainTap::Sold);
    assert_eq!(sold(&maker), 1);
    maker.offer("599").bargain(BargainTap::Sold).hides(&[asks]);
    assert_eq!(sold(&maker), 2);
}

/// 12.00 for a tag of 120 may have lost a digit, and 1450 is a digit too many of 145 with the tax on top of it, too. 30 for 120 is a low offer.
#[test]
fn a_sum_far_from_its_tag_is_asked_about_once() {
    let sold = |maker: &Maker| maker.app.own.shop(maker.app.now.at).job(maker.job).unwrap().selling.sales.len();
    for (tag, offer, asks) in [
        ("tag 120 lamp\n", "12", "12 is a fifth of your tag of 120 or less. If it is so, tap again."),
        ("tag 120 lamp\n", "1.20", "1.20 is a fifth of your tag of 120 or less."),
        ("till tax 0.08 top\ntag 145 lamp\n", "1450", "1450 is five times your tag of 156.60 or more."),
    ] {
        let mut maker = told(tag);
        maker.offer(offer).hides(&[asks]).bargain(BargainTap::Sold).shows(&[asks]);
        assert_eq!(sold(&maker), 0, "{offer}");
        maker.bargain(BargainTap::Sold);
        assert_eq!(sold(&maker), 1, "{offer}");
    }
    let mut low = told("tag 120 lamp\n");
    low.offer("30").bargain(BargainTap::Sold).hides(&["your tag of"]);
    assert_eq!(sold(&low), 1);
}

/// What is promised is asked about in the same words.
#[test]
fn a_promise_far_from_its_tag_is_asked_about_once() {
    let mut maker = told("tag 120 lamp\n");
    let (job, sum) = (maker.job, maker.money("1200"));
    let promised = |maker: &Maker| maker.app.own.shop(maker.app.now.at).job(maker.job).unwrap().selling.promised();
    maker.tap(Tap::Agree(AgreeTap::Open(job, Some(sum)))).tap(Tap::Agree(AgreeTap::Save));
    maker.shows(&["1200 is five times your tag of 120 or more. If it is so, tap again."]);
    assert_eq!(promised(&maker), 0);
    maker.tap(Tap::Agree(AgreeTap::Save));
    assert_eq!(promised(&maker), 1);
}

#[test]
fn settle_lies_nowhere_above_the_ask() {
    let mut maker = told("tag 120 lamp\nsettle 110 lamp\ntag 50 lamp\n");
    maker.shows(&["Settle 110 is set by you and lies over what you ask: the ask will do."]);
    maker.offer("60").shows(&["Yes", "10 over what you ask"]).hides(&["settle</"]);
}

/// Two of five buy at 50; five ask and leave: more come than was thought, and fewer of them buy.
#[test]
fn who_asked_and_left_is_counted_on_both_sides() {
    let mut maker = told("tag 50 lamp\n13:10 guess lamp asks 4 buys 0.4 at 50 k 2 by 2026-06-15 end 20\n");
    let job = maker.job;
    let wait = |tap| Tap::Waiting(tap);
    maker.tap(wait(WaitTap::Open(job))).shows(&["At 50 two in five buy."]).hides(&["asked since"]);
    let price = maker.money("50");
    for _ in 0..5 {
        maker.now.wall.at = Moment::at(maker.now.wall.at.ms() + 60_000);
        maker.tap(wait(WaitTap::Came(job, price, false)));
    }
    maker.shows(&["5 asked since you guessed. With that about 4.5 ask in a week, and at 50 one in "]);
    // What waiting costs, answered with nothing: that says nothing new of buyers, and nothing that was learnt goes.
    maker.tap(wait(WaitTap::Change)).tap(wait(WaitTap::Ask(Question::EachAsk)));
    for _ in 0..3 {
        maker.tap(wait(WaitTap::Done));
    }
    maker.tap(wait(WaitTap::Save)).shows(&["5 asked since you guessed. With that about 4.5 ask in a week, and at 50 one in "]);
}

/// 20 % on top of a tag of 100: 120 is asked, and with no tax for this buyer 100. What later brings is with the same tax as what is offered now.
#[test]
fn now_and_later_are_with_one_tax() {
    let mut maker = told("till top tax 0.2\ntag 100 lamp\n13:10 guess lamp asks 9 buys 0.9 at 120 k 2 by 2026-06-15 end 20\n");
    let mut later = |by| -> u32 {
        maker.offer("90").bargain(BargainTap::Tax(by)).bargain(BargainTap::PayAndHours).shows(&["90 now, or about "]);
        let said = maker.html();
        let figure = said.split("90 now, or about ").nth(1).and_then(|rest| rest.split(' ').next()).unwrap().parse().unwrap();
        maker.tap(Tap::Close);
        figure
    };
    let (taxed, untaxed) = (later(TaxBy::Usual), later(TaxBy::Untaxed));
    assert!(100 < taxed && taxed <= 120 && untaxed <= 100, "{taxed} with tax, {untaxed} without");
}

/// What was agreed speaks first: its sum, its way, its day; and the day can be taken away.
#[test]
fn what_was_agreed_is_what_its_pages_say() {
    let mut maker = Maker::before_delivery();
    let job = maker.job;
    maker.tap(Tap::Bargain(BargainTap::Carried(fivebar_core::ledger::kind::sale::Carried::Fetched)));
    let agreed = sheet(&maker.app).unwrap().agreed[0].agreed;
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Agreed(agreed)))).tap(Tap::Offer(job));
    maker.shows(&["Pay and hours", "460", "€13.16", "Of it the delivery: 1 h 30 and 48.60, one drive to this buyer."]);
    maker.bargain(BargainTap::PayAndHours).shows(&["aria-valuenow=\"460\""]).tap(Tap::Close);
    maker.tap(Tap::Agree(AgreeTap::Change(job, agreed, None))).shows(&["aria-pressed=\"true\"", "Sat 23 May, as agreed", "by Sat 23 May"]);
    maker.tap(Tap::Agree(AgreeTap::By(By::NoDate))).hides(&["by Sat 23 May"]).tap(Tap::Agree(AgreeTap::Save));
    assert_eq!(shop(&maker.app).job(job).unwrap().selling.open().next().unwrap().due, None);
}

/// A delivery that is not planned is not free, and the page says that it counts as if it were.
#[test]
fn a_delivery_that_is_not_planned_is_named() {
    let mut maker = told(&format!("tag 120 lamp\n{PLAN}"));
    maker.offer("110").hides(&["Nothing of a delivery"]);
    maker.bargain(BargainTap::Carried(fivebar_core::ledger::kind::sale::Carried::Delivered));
    maker.shows(&["Nothing of a delivery is planned: it counts no hours and no costs."]);
}

/// 24 miles at 0.67 are 16.08, and no buyer has any of it yet: whoever takes one bears it with the others; once some are brought it was for them.
#[test]
fn what_was_driven_says_which_pieces_bear_it() {
    let check = |more: &str, shows: &str| {
        let mut maker = told(&format!("tag 120 lamp\n13:05 drive 24 miles at 0.67 on lamp delivery\n{more}"));
        maker.offer("110").shows(&[shows]).bargain(BargainTap::PayAndHours).shows(&[shows]).bargain(BargainTap::PayAndHours);
        maker.bargain(BargainTap::Carried(fivebar_core::ledger::kind::sale::Carried::Delivered));
        maker.shows(&[shows, "No more of a delivery is planned."]).hides(&["Nothing of a delivery"]);
    };
    let gone = "16.08 driven to deliver: in the costs of those that are gone.";
    check("", "16.08 driven to deliver: in the costs of all 5 that are left, fetched or brought.");
    check("13:06 sell 1 lamp for 120 notes fetched\n", "in the costs of all 4 that are left, fetched or brought.");
    check("13:06 sell 4 lamp for 400 notes fetched\n", "in the costs of the one that is left, fetched or brought.");
    check("13:06 sell 1 lamp for 120 notes fetched\n13:07 sell 2 lamp for 240 notes delivered\n", gone);
    // Driven while one is agreed and to be brought.
    let mut maker = told("tag 120 lamp\n13:04 agree 130 for 1 lamp delivered\n13:05 drive 24 miles at 0.67 on lamp delivery\n");
    maker.offer("110").shows(&["16.08 driven to deliver: in the costs of what is agreed and to be brought."]);
}

/// The smallest coin is 0.25 and 8 % are inside: 300.10 in notes are 300, and the tax is that of 300.10.
#[test]
fn pay_and_hours_are_of_what_is_handed_over_in_coins() {
    let mut maker = told("till cash 0.25 inside tax 0.08\ntag 320 lamp\n");
    let sum = Money::book("300.10".parse().unwrap(), Currency::USD).unwrap();
    maker.offer("300").bargain(BargainTap::Say(sum)).bargain(BargainTap::Paid(Paid::Notes)).shows(&["Sold at 300<"]);
    maker.bargain(BargainTap::PayAndHours).shows(&["300.00", "277.77"]).hides(&["300.10", "277.87"]);
    maker.bargain(BargainTap::Paid(Paid::Bank)).shows(&["300.10", "277.87"]);
}

/// 499.90 agreed, 40 % of it ahead: in notes to a coin of 0.25 199.96 are 200, and the rest 299.90 is 300.
#[test]
fn deposit_and_hand_over_are_keyed_to_the_coin() {
    let mut maker = told("till cash 0.25\ntag 500 lamp\nagree 499.90 for 1 lamp fetched deposit 199.96\n");
    let job = maker.job;
    let agreed = sheet(&maker.app).unwrap().agreed[0].agreed;
    maker.tap(Tap::Deal(DealTap::Open(job, PaidOf::Agreed(agreed)))).tap(Tap::Deal(DealTap::Paid(Paid::Notes)));
    maker.shows(&["Deposit 200.00 came in", "Handed over, 500.00 paid"]);
    let ahead = maker.money("200");
    maker.tap(Tap::Deal(DealTap::Received(ahead))).shows(&["Handed over, 300.00 paid"]).hides(&["Deposit 0"]);
    maker.tap(Tap::Deal(DealTap::Paid(Paid::Bank))).shows(&["Handed over, 299.90 paid"]);
    maker.tap(Tap::Deal(DealTap::Paid(Paid::Notes))).tap(Tap::Deal(DealTap::HandedOver));
    assert_eq!(maker.sold().1, "500.00 USD");
}

#[test]
fn the_next_buyer_asks_about_one() {
    let mut maker = told("tag 120 lamp\n");
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Pieces(5));
    let sum = maker.money("500");
    maker.bargain(BargainTap::Say(sum)).shows(&["Sold, 5 for 500"]).bargain(BargainTap::NoSale);
    maker.offer("110").shows(&["Sold at 110"]).hides(&["Sold, 5 for"]);
}

/// 30 % of 120 are 36, of 170 they are 51; a deposit that was typed stays.
#[test]
fn a_share_ahead_goes_along_with_the_price() {
    let mut maker = told("tag 120 lamp\n");
    let job = maker.job;
    let agree = Tap::Agree;
    maker.tap(agree(AgreeTap::Open(job, None))).tap(agree(AgreeTap::Share(30))).shows(&["120, deposit 36"]);
    maker.tap(agree(AgreeTap::Pad(super::agree::Field::Price))).press("170").tap(agree(AgreeTap::PadDone)).shows(&["170, deposit 51"]);
    // Of two it is named anew.
    maker.tap(agree(AgreeTap::Pieces(2))).shows(&["The price was for 1 piece."]).hides(&["deposit 51"]);
    maker
        .tap(agree(AgreeTap::Pad(super::agree::Field::Price)))
        .press("170")
        .tap(agree(AgreeTap::PadDone))
        .shows(&["2 for 170, deposit 51"]);
    maker.tap(agree(AgreeTap::Pad(super::agree::Field::Deposit))).press("20").tap(agree(AgreeTap::PadDone));
    maker
        .tap(agree(AgreeTap::Pad(super::agree::Field::Price)))
        .press("200")
        .tap(agree(AgreeTap::PadDone))
        .shows(&["2 for 200, deposit 20"]);
}

/// Two of five buy: two and a half times as many are all of them, and a guess goes by whole times, so three are the most. What was answered is
/// there again after another place.
#[test]
fn answers_outlive_the_way_to_another_place() {
    let mut maker = told("tag 120 lamp\n");
    let job = maker.job;
    maker.tap(Tap::Waiting(WaitTap::Open(job)));
    for figure in ["3", "2", "4"] {
        maker.press(figure).tap(Tap::Waiting(WaitTap::Done));
    }
    maker.shows(&["At most 3 times are taken."]).press("2.5").tap(Tap::Waiting(WaitTap::Done)).shows(&["By when should it be sold?"]);
    maker.app.go(Place::Bench);
    maker.app.go(Place::Price);
    maker.app.price.to_list();
    maker.tap(Tap::Waiting(WaitTap::Open(job))).shows(&["By when should it be sold?"]);
}

/// The name of somebody new is asked where the key was that asked for it, over the others.
#[test]
fn somebody_new_is_named_over_those_that_are_known() {
    let mut maker = told("tag 120 lamp\n");
    let job = maker.job;
    maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Named(String::new())));
    let html = maker.html();
    assert!(html.find("id=\"buyer\"").unwrap() < html.find("somebody new").unwrap(), "{html}");
}

/// What was sold last is named with how many it was, beside the tag of one.
#[test]
fn two_that_were_sold_are_named_as_two() {
    let mut maker = told("tag 120 lamp\n");
    let job = maker.job;
    maker
        .tap(Tap::Offer(job))
        .bargain(BargainTap::Pieces(2))
        .bargain(BargainTap::Say(Money::whole(Decimal::from(220), Currency::USD).unwrap()));
    maker.bargain(BargainTap::Sold).shows(&["2 sold at 220"]).hides(&["Sold at 220"]);
    maker.offer("110").bargain(BargainTap::Sold).shows(&["Sold at 110"]);
}

/// Two at a tag of 149.99 are 299.98, though the last buyer paid in notes, or chose them on an offer, and the coins are of five: how these will be paid
/// nobody has said. On the offer of this buyer notes are said.
#[test]
fn what_is_agreed_is_to_no_coin_before_notes_are_said() {
    let lines = "till cash 0.05\ntag 149.99 lamp\nsell 1 lamp for 150 notes\n";
    for chosen in [None, Some(Paid::Notes)] {
        let mut maker = told(lines);
        let job = maker.job;
        maker.app.here.paid = chosen;
        maker.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Pieces(2))).shows(&["2 for 299.98"]);
    }
    let mut notes = told(lines);
    let job = notes.job;
    notes.tap(Tap::Offer(job)).bargain(BargainTap::Paid(Paid::Notes));
    notes.tap(Tap::Agree(AgreeTap::Open(job, None))).tap(Tap::Agree(AgreeTap::Pieces(2))).shows(&["2 for 300"]);
}
