//! The fee of money that was handed back is lost: what the job's own page takes off, its price must bring in too. By hand.

use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::dates::Given;
use fivebar_core::sheet::offer::{Asking, offer};
use fivebar_core::sheet::promised;
use fivebar_core::sheet::quote::quote;
use fivebar_core::story::{Story, tell};

/// Tax of 19 % on top; of 425 by card 2.9 % and 0.30 are 12.63.
const BENCH: &str = "2026-05-22 08:14 +02:00 workshop EUR metric\ntill tax 0.19 top fee 0.029 fixed 0.30\nrate pay 60 lowest 20 hours 100 logged 100\n\
    job bench \"Bench\" 1 order\nspend 12 glue on bench\nplan \"shape\" make 600 min for bench\n";
const DEPOSIT: &str = "agree 850 for 1 bench fetched deposit 425 as deal\npay 425 for bench card agreed deal\n";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{BENCH}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

fn eur(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::EUR).unwrap()
}

/// What one must bring in to return what was spent, in the marks; and what it costs in pay and hours.
#[track_caller]
fn check(lines: &str, costs: &str) {
    let story = told(lines);
    let (shop, job) = (Shop::of(&story.book, story.now.at), story.names.job("bench").unwrap());
    let found = account(&shop, job).unwrap();
    let need = found.pricing.marks.costs_covered.unwrap().need;
    assert_eq!(need, costs.parse::<Decimal>().unwrap(), "{lines}");
    let asking = Asking { n: 1, paid: Paid::Notes, carried: Carried::Fetched, tax: None };
    let pay = offer(&shop, job, asking, Some(eur("1071"))).unwrap();
    assert_eq!(pay.left.unwrap().way.costs, eur(costs), "{lines}");
}

#[test]
fn the_fee_of_what_went_back_is_to_be_covered() {
    check("", "12");
    check(&format!("{DEPOSIT}cancel deal on bench\n"), "24.63");
    // Of what is kept its own part of the fee goes: 12.63 x 325 / 425.
    check(&format!("{DEPOSIT}cancel deal on bench kept 100\n"), "21.66");
    check(&format!("{DEPOSIT}cancel deal on bench kept 425\n"), "12");
    // By bank there is no fee.
    check("agree 850 for 1 bench fetched as deal\npay 425 for bench bank agreed deal\ncancel deal on bench\n", "12");
    // A sale that was taken back: 2.9 % of 1000 and 0.30.
    check("sell 1 bench for 1000 card as first\nreverse sale first on bench\n", "41.3");
    // Twice is twice.
    check(&format!("{DEPOSIT}cancel deal on bench\n{DEPOSIT}cancel deal on bench\n"), "37.26");
}

/// One of three comes back: of the fee of 29.30 a third, shared by three as all costs are.
#[test]
fn some_that_came_back_lose_their_part_of_the_fee() {
    let three = "job bench \"Benches\" 3 spec\nspend 30 glue on bench\nplan \"shape\" make 60 min for bench\n";
    let all = format!("{three}sell 2 bench for 1000 card as two\nbring-back 1 of sale two on bench\n");
    // 30 / 3, and 14.65 / 3.
    check(&all, "14.883333333333333333333333333");
}

/// What was handed back by hand takes its part of the fee along: of 1000 by card 29.30.
#[test]
fn the_fee_of_what_was_handed_back_by_hand_is_lost() {
    // The sale was a slip, its payment was not.
    let slip = "sell 1 bench for 1000 as slip\npay 1000 for bench card sale slip\nundo slip\n";
    check(slip, "12");
    check(&format!("{slip}hand-back 1000 for bench card sale slip\n"), "41.3");
    check(&format!("{slip}hand-back 400 for bench notes sale slip\n"), "23.72");
    let twice = "hand-back 400 for bench notes sale slip\nhand-back 600 for bench bank sale slip\n";
    check(&format!("{slip}{twice}"), "41.3");
    check(&format!("{slip}hand-back 1000 for bench card sale slip as back\nundo back\n"), "12");
    // The order is changed to 600 with 1000 in: of 29.30 its 0.4.
    let changed = "agree 1000 for 1 bench fetched as deal\npay 1000 for bench card agreed deal\n\
        agree 600 for 1 bench fetched replaces deal as new\nhand-back 400 for bench bank agreed new\n";
    check(changed, "23.72");
    check(&format!("{changed}cancel new on bench\n"), "41.3");
}

/// 1000 by card for one of two that were agreed: 600 lie ahead of the other with 17.58 of the fee, which is sold for 200; of the fee of the 400
/// that went back, 11.72, each of three bears its third.
#[test]
fn what_is_over_of_a_sale_takes_its_fee_along() {
    let all = "job bench \"Benches\" 3 spec\nspend 30 glue on bench\nplan \"shape\" make 60 min for bench\n\
        agree 1000 for 2 bench fetched as deal\nsell 1 bench for 400 agreed deal as one\npay 1000 for bench card sale one\n\
        sell 1 bench for 200 agreed deal\n";
    check(all, "10");
    check(&format!("{all}hand-back 400 for bench bank agreed deal\n"), "13.906666666666666666666666667");
}

/// An order that stands bears the fee of its deposit itself, and one that is made good that of what is kept for it.
#[test]
fn the_fee_of_what_is_owed_as_work_is_not_lost() {
    let sold = format!("{DEPOSIT}sell 1 bench for 850 notes agreed deal as first\n");
    for (lines, left) in [(DEPOSIT.to_owned(), "689.66"), (format!("{sold}reverse sale first on bench\n"), "689.66")] {
        let story = told(&lines);
        let (shop, job) = (Shop::of(&story.book, story.now.at), story.names.job("bench").unwrap());
        let asking = Asking { n: 1, paid: Paid::Notes, carried: Carried::Fetched, tax: None };
        // 850 / 1.19 is 714.29, less 12 of glue and 12.63.
        assert_eq!(offer(&shop, job, asking, None).unwrap().agreed.unwrap().left, eur(left), "{lines}");
    }
}

/// 50 by card, of which 1.75 go, and the rest in notes; it comes back and is made good, and all 100 went back with the whole fee. What comes in then
/// came in notes: it has no fee, whenever it came after the sale, and the fee of the card is lost once. Two thirds that are kept keep theirs.
#[test]
fn what_comes_in_after_a_sale_has_no_part_in_the_fee_of_what_it_used() {
    let back = "agree 100 for 1 bench fetched deposit 50 as deal\npay 50 for bench card agreed deal\n\
        sell 1 bench for 100 notes agreed deal as first\nreverse sale first on bench";
    let check = |lines: &str, (fee, lost): (&str, &str)| {
        let story = told(lines);
        let (shop, job) = (Shop::of(&story.book, story.now.at), story.names.job("bench").unwrap());
        let asking = Asking { n: 1, paid: Paid::Notes, carried: Carried::Fetched, tax: None };
        let offer = offer(&shop, job, asking, None).unwrap();
        assert_eq!((offer.parts.unwrap().fee, offer.fees_lost), (eur(fee), Some(eur(lost))), "{lines}");
        let found = fold::job(&story.book, job).unwrap();
        let open = found.selling.open().next().unwrap().id;
        assert_eq!(found.selling.fees_ahead(Currency::EUR, open).unwrap(), eur(fee), "{lines}");
        // To the cent: what an agreement leaves is what the page of the job has of it.
        let account = account(&shop, job).unwrap();
        assert_eq!(account.sold.fees, eur(fee).plus(eur(lost)).unwrap(), "{lines}");
    };
    check(&format!("{back}\npay 50 for bench notes agreed deal\n"), ("0", "1.75"));
    check(&format!("{back}\npay 60 for bench notes agreed deal\npay 40 for bench notes agreed deal\n"), ("0", "1.75"));
    check(&format!("{back} kept 60\npay 40 for bench notes agreed deal\n"), ("1.05", "0.70"));
}

/// By card each payment has its own 0.30: 425 twice are 12.63 each, 300 twice 9.00 each and 250 7.55, all at once 24.95. What came in is not to come.
#[test]
fn each_payment_still_to_come_has_its_fee() {
    let check = |lines: &str, fee: &str| {
        let story = told(lines);
        let (shop, job) = (Shop::of(&story.book, story.now.at), story.names.job("bench").unwrap());
        let asking = Asking { n: 1, paid: Paid::Card, carried: Carried::Fetched, tax: None };
        assert_eq!(offer(&shop, job, asking, None).unwrap().parts.unwrap().fee, eur(fee), "{lines}");
    };
    check("agree 850 for 1 bench fetched as deal\n", "24.95");
    check("agree 850 for 1 bench fetched deposit 425 as deal\n", "25.26");
    check(DEPOSIT, "25.26");
    let parts = "agree 850 for 1 bench fetched as deal\nparts deal on bench 300 due 2026-06-01 300 due 2026-07-01 250\n";
    check(parts, "25.55");
    check(&format!("{parts}pay 300 for bench notes agreed deal\n"), "16.55");
    // Three for 900 in parts of 300: one is handed over, and its 300 is paid; two times 9.00 are to come, and two of it are still to be handed over.
    let three = "job three \"Three\" 3 order\nagree 900 for 3 three fetched as all\nparts all on three 300 due 2026-06-01 300 due 2026-07-01 300\n\
        pay 300 for three notes agreed all\nsell 1 three for 300 agreed all\n";
    let story = told(three);
    let (shop, job) = (Shop::of(&story.book, story.now.at), fold::job(&story.book, story.names.job("three").unwrap()).unwrap());
    let parts = promised::of_agreement(&shop, (&job, job.selling.open().next().unwrap()), Paid::Card).unwrap();
    assert_eq!((parts.handed, parts.fee), (eur("600"), eur("18.00")));
}

/// What pay and hours promises at the tag is what the job's page says after the sale; what is quoted covers the fee too.
#[test]
fn what_is_promised_is_what_is_left() {
    let none = format!("{DEPOSIT}cancel deal on bench\ntag 900 bench\n");
    let (before, after) = (told(&none), told(&format!("{none}sell 1 bench for 1071 notes\n")));
    let shop = Shop::of(&before.book, before.now.at);
    let asking = Asking { n: 1, paid: Paid::Notes, carried: Carried::Fetched, tax: None };
    let promised = offer(&shop, before.names.job("bench").unwrap(), asking, None).unwrap();
    assert_eq!((promised.left.unwrap().left, promised.fees_lost), (eur("875.37"), Some(eur("12.63"))));
    let sold = account(&Shop::of(&after.book, after.now.at), after.names.job("bench").unwrap()).unwrap();
    assert_eq!(sold.sold.kept, Some(eur("875.37")));
    let waits = fivebar_core::ledger::fold::waits(&before.book);
    let given = Given { waits: &waits, guess: |_| None, with_factor: true, now: before.now };
    assert_eq!(quote(&shop, before.names.job("bench").unwrap(), given).unwrap().costs, Some(eur("24.63")));
}
