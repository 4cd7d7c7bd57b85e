//! The word in front of a buyer: what is agreed and due, what several ask, what a plan still costs, what coins pay off. Reckoned by hand.

use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::money::offer::Agreed;
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::{Account, account};
use fivebar_core::sheet::offer::{Ask, Asking, OfferSheet, offer};
use fivebar_core::story::{Story, tell};

const SHOP: &str = "2026-05-04 08:00 +02:00 workshop EUR metric\n";

fn euro(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::EUR).unwrap()
}

fn told(text: &str) -> Story {
    let story = tell(&format!("{SHOP}{text}"));
    assert_eq!(story.refused, [], "{text}");
    story
}

fn reckoned(text: &str) -> Account {
    let story = told(text);
    account(&Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap()).unwrap()
}

fn offered(text: &str, n: u32) -> OfferSheet {
    let story = told(text);
    let asking = Asking { n, paid: Paid::Bank, carried: Carried::Fetched, tax: None };
    offer(&Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap(), asking, None).unwrap()
}

/// What the word says of an agreement: its price, what is for the pieces still to come, and what is due under it.
#[test]
fn an_agreement_says_what_is_due_under_it() {
    let check = |more: &str, [price, rest, due]: [&str; 3]| {
        let agreed = offered(&format!("job stool \"Stool\" 2 order\n{more}"), 1).standing.agreed;
        assert_eq!(agreed, Some(Agreed { price: euro(price), rest: euro(rest), due: euro(due) }), "{more}");
    };
    let one = "sell 1 stool for 400 as one\nagree 460 for 1 stool fetched deposit 184 as deal\npay 184 for stool bank agreed deal\n";
    check(one, ["460", "460", "276"]); // the 400 is another buyer's
    check("agree 800 for 2 stool fetched as deal\n", ["800", "800", "800"]);
    check("agree 800 for 2 stool fetched as deal\nsell 1 stool for 400 bank agreed deal\n", ["800", "400", "400"]);
    check("agree 800 for 2 stool fetched as deal\nsell 1 stool for 400 agreed deal\n", ["800", "400", "800"]);
}

/// Two for 800, 40 and four hours each; one is handed over for 400: (400 - 40) / 4 h = 90.00 for the other, not 190.00.
#[test]
fn what_is_left_of_an_agreement_pays_its_own_hours() {
    let work = "job stool \"Stool\" 2 order\nspend 80 glue on stool\nstart \"oil\" make on stool stage finish\n16:00 stop\n";
    let deal = "agree 800 for 2 stool fetched as deal\nsell 1 stool for 400 bank agreed deal\n";
    let leaves = offered(&format!("{work}{deal}"), 1).agreed.unwrap();
    assert_eq!((leaves.way.you_get, leaves.per_hour.left.normalize()), (euro("400"), Decimal::from(90)));
}

/// Four stools for 80 and four and a half hours, of which one hour went to each and half an hour to none. 40 by card for one leaves
/// 40 - 1.30 - 20 = 18.70. Two settled at 50 each leave 100 - 2.50 - 40 = 57.50 in 2 h 15; one more needs 20 + 1 h x 24.25 = 44.25 of
/// you get, so 46, which leaves 46 - 1.42 - 20 = 24.58 in an hour; notes leave 20 in 1 h 07 and a half.
#[test]
fn what_can_be_said_instead_goes_by_what_it_leaves_for_an_hour() {
    let shop = "till fee 0.02 fixed 0.50 point 1\nrate pay 17 hours 600 logged 480 costs 1440\n";
    let of_many = |n, more: &str, carried, wanted: &[(Ask, &str, &str)]| {
        let story = told(&format!("{shop}{more}"));
        let asking = Asking { n, paid: Paid::Card, carried, tax: None };
        let of = story.names.job("stool").unwrap();
        let sheet = offer(&Shop::of(&story.book, story.now.at), of, asking, Some(euro("40"))).unwrap();
        let said: Vec<_> = sheet.concessions.iter().map(|one| (one.ask, one.sum, one.more)).collect();
        assert_eq!(said, wanted.iter().map(|(ask, sum, more)| (*ask, euro(sum), euro(more))).collect::<Vec<_>>(), "{more}");
    };
    let check = |more: &str, carried, wanted: &[(Ask, &str, &str)]| of_many(1, more, carried, wanted);
    let work = "start \"oil\" make on stool\n";
    let plain = format!("job stool \"Stool\" 4 spec\nspend 80 glue on stool\n{work}");
    let four = plain.replace(work, &format!("plan \"oil\" make 240 min for stool\n{work}"));
    let noted = "10:00 done 2\n12:00 done 2\n12:30 stop\n";
    let [pair, one_more, notes] = [(Ask::Together(2), "100", "38.80"), (Ask::OneMore, "46", "24.58"), (Ask::Notes, "40", "1.30")];
    check(&format!("{four}{noted}tag 60 stool\nsettle 50 stool\n"), Carried::Fetched, &[pair, one_more, notes]);
    // Of two asked about three together, at 50 each: 150 - 3.50 - 60 = 86.50, where 40 for two leaves 40 - 1.30 - 40 = -1.30. Of three four:
    // 200 - 4.50 - 80 = 115.50, beside -21.30. Of all four there are no more.
    let settled = format!("{four}{noted}tag 60 stool\nsettle 50 stool\n");
    of_many(2, &settled, Carried::Fetched, &[(Ask::Together(3), "150", "87.80"), one_more, notes]);
    of_many(3, &settled, Carried::Fetched, &[(Ask::Together(4), "200", "136.80"), one_more, notes]);
    of_many(4, &settled, Carried::Fetched, &[one_more, notes]);
    check(&format!("{four}{noted}tag 60 stool\n"), Carried::Fetched, &[one_more, notes]);
    check(&format!("{plain}12:30 stop\ntag 60 stool\n"), Carried::Fetched, &[notes]);
    // A pair that leaves less for an hour than the offer is none.
    check(&format!("{plain}12:30 stop\ntag 60 stool\nsettle 30 stool\n"), Carried::Fetched, &[notes]);
    let begun =
        "job stool \"Stool\" 1 spec\nspend 8 glue on stool\nplan \"oil\" make 240 min for stool\nstart \"oil\" make on stool\n09:00 stop\n";
    check(&format!("{begun}tag 60 stool\n"), Carried::Fetched, &[(Ask::Notes, "40", "1.30"), (Ask::Later, "40", "0")]);
    let carried = "plan \"bring\" deliver 60 min for stool\nplan-cost drive 5 delivery for stool\n";
    check(
        &format!("{plain}12:30 stop\ntag 60 stool\n{carried}"),
        Carried::Delivered,
        &[(Ask::Fetch, "40", "5"), (Ask::Notes, "40", "1.30")],
    );
}

/// Three tags of 145 and one tax line of 5.5 %: 435.00 + 23.93; sold so, it is what was asked.
#[test]
fn tax_on_top_of_several_is_one_line() {
    let text = "till tax 0.055 top\njob stool \"Stool\" 3 spec\ntag 145 stool\n";
    let sheet = offered(text, 3);
    assert_eq!((sheet.standing.ask, sheet.tagged), (Some(euro("458.93")), Some(euro("458.93"))));
    let check = |sold: &str, ratio: &str| {
        let price = reckoned(&format!("{text}{sold}")).ratios.price.unwrap();
        assert_eq!(price.round_dp(3), ratio.parse().unwrap(), "{sold}");
    };
    check("sell 1 stool for 152.98 bank\n", "1.000");
    check("sell 3 stool for 458.93 bank\n", "1.000");
    check("sell 1 stool for 145 bank\n", "0.948");
}

/// What a planned cost still comes to, and all of them with what was spent.
#[test]
fn a_planned_cost_is_less_what_was_booked_since() {
    let check = |more: &str, [still, all]: [&str; 2]| {
        let account = reckoned(&format!("job stool \"Stool\" 1 order\nspend 10 glue on stool\n{more}"));
        assert_eq!((account.costs.still, account.pricing.work.costs_of(1).unwrap()), (euro(still), Some(euro(all))), "{more}");
    };
    check("plan-cost helper 30 delivery for stool\n", ["30", "40"]);
    check("plan-cost helper 30 delivery for stool\nspend 20 helper on stool\n", ["10", "40"]);
    check("spend 20 helper on stool\nplan-cost helper 30 delivery for stool\n", ["30", "60"]);
    check("plan-cost bolts 7.60 for stool\nspend 7.60 bolts on stool\ncredit 2 bolts on stool\n", ["0", "15.60"]);
    // Planned anew, it is anew still to come.
    check("plan-cost helper 30 for stool\nspend 20 helper on stool\nplan-cost helper 30 for stool\n", ["30", "60"]);
    check(
        "person ada helper\nplan-cost helper 30 for stool\n09:00 start \"oil\" make on stool\nhelper joins ada 15\n10:00 stop\n",
        ["15", "40"],
    );
    check(
        "person ada helper\nstart \"oil\" make on stool\nhelper joins ada 15\n09:00 stop\n10:00 plan-cost helper 30 for stool\n",
        ["30", "55"],
    );
}

/// Sold for 99.98 and to be paid later; coins end at 0.05. What is due, taken and received after it was paid; and after all of it went back, the coin
/// too.
#[test]
fn coins_pay_off_what_no_coin_can() {
    let check = |price: &str, pay: &str, [due, taken, received]: [&str; 3]| {
        let sold = reckoned(&format!("till cash 0.05\njob stool \"Stool\" 1 spec\nsell 1 stool for {price} as one\n{pay}")).sold;
        assert_eq!(
            [sold.due, sold.taken, sold.received].map(|sum| sum.amount()),
            [due, taken, received].map(|sum| euro(sum).amount()),
            "{pay}"
        );
    };
    check("99.98", "pay 100 for stool notes sale one\n", ["0", "100", "100"]);
    check("99.98", "pay 99.98 for stool notes sale one\n", ["0", "100", "100"]);
    check("99.97", "pay 99.95 for stool notes sale one\n", ["0", "99.95", "99.95"]);
    check("99.98", "pay 99.98 for stool bank sale one\n", ["0", "99.98", "99.98"]);
    check("99.98", "pay 50 for stool notes sale one\n", ["49.98", "99.98", "50"]);
    check("99.98", "pay 50 for stool notes sale one\npay 50 for stool notes sale one\n", ["0", "100", "100"]);
    check("99.98", "pay 100 for stool notes sale one\nreverse sale one on stool\n", ["0", "0", "0"]);
}
