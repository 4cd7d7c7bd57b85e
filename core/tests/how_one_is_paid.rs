//! How one is paid: the way that costs most is in every mark, coins go as the maker rounds, and what tags mean where tax changes its side.
//! Reckoned by hand beside each row.

use fivebar_core::ledger::decide::{BookCommand, Command, MoneyCommand, Now, decide};
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::ledger::{Book, Clock, Device};
use fivebar_core::quantity::{Currency, Money, Side};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::tags::{turned, turning};
use fivebar_core::story::{Story, tell};

fn usd(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::USD).unwrap()
}

fn told(lines: &str) -> Story {
    let story = tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\n{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

/// 97 of costs: by card at 3 % 97 / 0.97 = 100.00; by bank at 6 % 103.19; in notes with 5 for each payment 102.00.
#[test]
fn marks_hold_in_the_way_that_costs_most() {
    for (till, covered) in [
        ("point 1", "97"),
        ("fee 0.03", "100"),
        ("fee 0.03 bank-fee 0.06", "103.19"),
        ("fee 0.03 notes-fixed 5", "102"),
        ("fee 0.03 bank-fee 0.01 notes-fixed 1", "100"),
        ("bank-fee 0.03", "100"),
    ] {
        let story = told(&format!("till {till}\njob stool \"Stool\" 1 spec\nspend 97 glue on stool\n"));
        let pricing = account(&Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap()).unwrap().pricing;
        assert_eq!(pricing.marks.costs_covered.map(|mark| mark.holds), Some(usd(covered)), "{till}");
    }
}

/// What is proposed covers its need in every way of being paid: 20 an hour for an hour, and nothing spent but 77. With 5.32 % on top of 97 the charge is
/// 102.16, in coins of 0.05 it is 102.15, a cent less than the need: then it is 98, 103.21, in coins 103.20.
#[test]
fn a_price_is_proposed_for_the_way_that_costs_most() {
    for (till, tag) in [
        ("fee 0.03", "100"),
        ("fee 0.03 bank-fee 0.06", "104"),
        ("fee 0.03 notes-fixed 5", "102"),
        ("tax 0.0532 top", "97"),
        ("tax 0.0532 top cash 0.05", "98"),
        ("tax 0.0532 top cash 0.05 cash-up", "97"),
    ] {
        let work =
            "job stool \"Stool\" 1 spec\nspend 77 glue on stool\nstart \"oil\" make on stool stage finish\n10:00 stop\nall-planned stool\n";
        let story = told(&format!("till point 1 {till}\nrate pay 20 hours 100 logged 100\n{work}"));
        let pricing = account(&Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap()).unwrap().pricing;
        assert_eq!(pricing.proposed.map(|price| price.tag), Some(usd(tag)), "{till}");
    }
}

/// Where the smallest coin is 0.05. To the nearest: as the Government of Canada and the Quebec consumer office have it for the end 1, 2, 6, 7 and
/// 3, 4, 8, 9. Up: by hand. A card pays to the cent.
#[test]
fn coins_go_to_the_nearest_or_up_as_the_maker_rounds() {
    let nearest = ["0", "0", "0.05", "0.05", "0.05", "0.05", "0.05", "0.10", "0.10"];
    let up = ["0.05", "0.05", "0.05", "0.05", "0.05", "0.10", "0.10", "0.10", "0.10"];
    for (till, wanted) in [("", nearest), ("cash-up", up), ("cash-nearest", nearest)] {
        let story = told(&format!("till cash 0.05 {till}\n"));
        let till = Shop::of(&story.book, story.now.at).till(Currency::USD);
        for (cents, wanted) in (1..=9).zip(wanted) {
            let sum = usd(&format!("0.0{cents}"));
            assert_eq!(till.in_coins(Some(Paid::Notes), sum), Ok(usd(wanted)), "{sum}");
            assert_eq!(till.in_coins(Some(Paid::Card), sum), Ok(sum));
        }
    }
    // The last word stands.
    let story = told("till cash 0.05 cash-up\ntill cash-nearest\ntill fee 0.02\n");
    assert_eq!(Shop::of(&story.book, story.now.at).till(Currency::USD).in_coins(Some(Paid::Notes), usd("5.92")), Ok(usd("5.90")));
}

/// Sold in notes for 5.92 where cash goes up: 5.95 comes in, and nothing is due.
#[test]
fn a_sale_in_coins_goes_up_too() {
    for (till, came) in [("cash-up", "5.95"), ("", "5.90")] {
        let story = told(&format!("till cash 0.05 {till}\njob stool \"Stool\" 1 spec\nsell 1 stool for 5.92 notes\n"));
        let sold = account(&Shop::of(&story.book, story.now.at), story.names.job("stool").unwrap()).unwrap().sold;
        assert_eq!((sold.received, sold.due), (usd(came), usd("0")), "{till}");
    }
}

const TAGGED: &str = "till tax 0.19 inside\njob bench \"Bench\" 1 spec\ntag 680 bench\njob lamp \"Lamp\" 1 spec\ntag 119 lamp\n\
    job gone \"Gone\" 1 spec\ntag 50 gone\nsell 1 gone for 50 bank\njob bare \"Bare\" 1 spec\n";

/// What is sold has its tag still, should a piece come back. Per tag: its own, what a buyer pays, would pay, and the tag for the same pay. 680 x 1.19 = 809.20; 680 / 1.19 = 571.43.
#[test]
fn tags_that_mean_something_else_are_named_before() {
    let check = |lines: &str, side, wanted: &[[&str; 4]]| {
        let story = told(&format!("{TAGGED}{lines}"));
        let found = turned(&Shop::of(&story.book, story.now.at), Currency::USD, side).unwrap();
        let mut found: Vec<_> = found.iter().map(|it| [it.tag, it.pays, it.would_pay, it.same_pay]).collect();
        found.sort_by_key(|row| std::cmp::Reverse(row[0].amount()));
        assert_eq!(found, wanted.iter().map(|row| row.map(usd)).collect::<Vec<_>>(), "{lines}");
    };
    check("", Side::Top, &[["680", "680", "809.20", "571.43"], ["119", "119", "141.61", "100"], ["50", "50", "59.50", "42.02"]]);
    check("", Side::Inside, &[]);
    check(
        "till top\n",
        Side::Inside,
        &[["680", "809.20", "680", "809.20"], ["119", "141.61", "119", "141.61"], ["50", "59.50", "50", "59.50"]],
    );
    check("till tax 0\n", Side::Top, &[]);
    // A rate under a name stands where the usual one does, unless it says its own side; what is untaxed means what it meant.
    let low = "tax-rate \"Low\" 0.07 as low\njob-tax bench low\njob-tax lamp none\n";
    check(low, Side::Top, &[["680", "680", "727.60", "635.51"], ["50", "50", "59.50", "42.02"]]);
    check("till tax 0 inside\n", Side::Top, &[]);
}

/// Taken so that what buyers pay stays: one act, and back with it side and tags.
#[test]
fn the_side_turns_with_its_tags_in_one_act() {
    let story = told(TAGGED);
    let shop = Shop::of(&story.book, story.now.at);
    let tags = turned(&shop, Currency::USD, Side::Top).unwrap();
    let (till, tags) = turning(Currency::USD, Side::Top, &tags);
    let command = Command::Money(MoneyCommand::TurnTax { till, tags: tags.clone() });
    let mut book = story.book.clone();
    let mut clock = Clock::new(Device::read("b").unwrap(), None);
    let mut write = |book: &mut Book, command: &Command, chance: u8| {
        let entries = decide(book, command, Now { wall: story.now, chance: [chance; 10] }).unwrap().stamped(book, &mut clock);
        entries.iter().for_each(|entry| drop(book.add(entry)));
        entries
    };
    let stands = |book: &Book| {
        let shop = Shop::of(book, story.now.at);
        let pricing = |job: &str| account(&shop, story.names.job(job).unwrap()).unwrap().pricing;
        let tags = ["bench", "lamp", "gone"].map(pricing).map(|it| (it.tag.unwrap(), it.ask.unwrap()));
        (shop.till(Currency::USD).side, tags)
    };
    let before = stands(&book);
    let entries = write(&mut book, &command, 1);
    assert_eq!(entries.len(), 1 + tags.len());
    let [bench, lamp, gone] = [("571.43", "680"), ("100", "119"), ("42.02", "50")].map(|(tag, pays)| (usd(tag), usd(pays)));
    assert_eq!(stands(&book), (Some(Side::Top), [bench, lamp, gone]));
    write(&mut book, &Command::Book(BookCommand::TakeBack { act: entries[0].id }), 2);
    assert_eq!(stands(&book), before);
}

/// 129 with 19 % inside are 108.40 before it: 129 is what was asked of each that was sold at that tag, whatever tags and taxes came after; what is
/// sold later is asked for by the tag of then.
#[test]
fn what_was_asked_is_by_the_tag_and_the_side_of_then() {
    const BEGUN: &str = "till tax 0.19 inside\njob bench \"Bench\" 3 spec\ntag 129 bench\n";
    const TURNED: &str = "till top\ntag 108.40 bench\n";
    let check = |lines: &str, [got, asked]: [&str; 2]| {
        let story = told(&format!("{BEGUN}{lines}"));
        let ratios = account(&Shop::of(&story.book, story.now.at), story.names.job("bench").unwrap()).unwrap().ratios;
        assert_eq!(ratios.got_of_asked, Some((usd(got), usd(asked))), "{lines}");
    };
    let sold = "sell 2 bench for 240 bank\n";
    check(sold, ["240", "258"]);
    check(&format!("{sold}{TURNED}"), ["240", "258"]);
    check(&format!("{sold}{TURNED}sell 1 bench for 129 bank\n"), ["369", "387"]);
    check(&format!("{sold}{TURNED}till inside\ntag 129 bench\nsell 1 bench for 120 bank\n"), ["360", "387"]);
    check(&format!("{sold}tag 150 bench\n"), ["240", "258"]);
    // Agreed before, handed over after: with the tax of then, and as it was spoken of.
    check(&format!("agree 129 for 1 bench fetched as deal\n{TURNED}sell 1 bench for 129 agreed deal\n"), ["129", "129"]);
    let spoken = format!("agree 129 for 1 bench fetched tax none as deal\n{TURNED}sell 1 bench for 129 agreed deal\n");
    check(&spoken, ["129", "129"]);
}

/// Inside 8.875 % a tag of 10.00 is paid 10.00. With it on top no tag is: 10.00 / 1.08875 = 9.18, which pays 9.99, and 9.19 pays 10.01.
#[test]
fn what_no_tag_can_bring_to_the_cent_is_said() {
    for (tag, wanted) in [("10.00", ["9.18", "9.99"]), ("20.00", ["18.37", "20.00"])] {
        let story = told(&format!("till tax 0.08875 inside\njob lamp \"Lamp\" 1 spec\ntag {tag} lamp\n"));
        let found = turned(&Shop::of(&story.book, story.now.at), Currency::USD, Side::Top).unwrap();
        assert_eq!(found.iter().map(|it| [it.same_pay, it.then_pays]).collect::<Vec<_>>(), [wanted.map(usd)], "{tag}");
    }
}
