//! Several rates of sales tax and none: a job takes one, a sale or an agreement may say another, and every price goes by it.

use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::quantity::{Currency, Decimal, Id, Money};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::buyer::buyer;
use fivebar_core::sheet::gallery::at_galleries;
use fivebar_core::sheet::offer::{Asking, OfferSheet, offer};
use fivebar_core::sheet::price::{ForSale, price};
use fivebar_core::story::{Story, Why, tell};

/// A job of two stools that cost 60 and took ten hours at 20 an hour: 130 each.
const START: &str = "
2026-03-02 09:00 -05:00 workshop USD inch
rate pay 20 hours 400 logged 400 costs 0 wear 0 tax 0 profit 0
tax-rate \"Reduced\" 0.02 as low
tax-rate \"Next state\" 0.0825 top as next
job stools \"Stools\" 2 spec
spend 60 wood on stools
plan \"make\" make 600 min for stools
recall \"make\" make on stools 2026-03-01 09:00 to 2026-03-01 19:00
done 2
all-planned stools
";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{START}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

fn usd(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::USD).unwrap()
}

fn shop(story: &Story) -> (Shop<'_>, Id) {
    (Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap())
}

fn for_sale(story: &Story, paid: Paid) -> ForSale {
    let (shop, job) = shop(story);
    price(&shop, paid).unwrap().for_sale.into_iter().find(|row| row.job == job).unwrap()
}

fn heard(story: &Story, sum: &str, tax: Option<TaxBy>) -> OfferSheet {
    let (shop, job) = shop(story);
    offer(&shop, job, Asking { n: 1, paid: Paid::Notes, carried: Carried::Fetched, tax }, Some(usd(sum))).unwrap()
}

/// The tax line, rate and side of the last sale.
#[track_caller]
fn check_sale(lines: &str, tax: &str, rate: &str, on_top: bool) {
    let story = told(lines);
    let (shop, job) = shop(&story);
    let job = shop.job(job).unwrap();
    let sale = job.selling.sales.last().unwrap();
    let side = sale.side == fivebar_core::quantity::Side::Top;
    assert_eq!((sale.tax, sale.rate.to_string(), side), (usd(tax), rate.to_owned(), on_top), "{lines}");
}

/// 145 holds 7.56 at 5.5 %, 2.84 at 2 %; on top at 8.25 % it is 133.95 before and 11.05 of tax.
#[test]
fn a_sale_takes_the_tax_of_its_job_or_the_one_it_names() {
    let till = "till tax 0.055 inside\n";
    let sell = "sell 1 stools for 145 notes";
    check_sale(&format!("{till}{sell}"), "7.56", "0.055", false);
    check_sale(&format!("{till}job-tax stools low\n{sell}"), "2.84", "0.02", false);
    check_sale(&format!("{till}job-tax stools next\n{sell}"), "11.05", "0.0825", true);
    check_sale(&format!("{till}job-tax stools none\n{sell}"), "0.00", "0", false);
    check_sale(&format!("{till}job-tax stools none\njob-tax stools usual\n{sell}"), "7.56", "0.055", false);
    check_sale(&format!("{till}{sell} tax none"), "0.00", "0", false);
    check_sale(&format!("{till}job-tax stools none\n{sell} tax low"), "2.84", "0.02", false);
    // A rate without a side stands where the usual one does.
    check_sale(&format!("till tax 0.055 top\njob-tax stools low\n{sell}"), "2.84", "0.02", true);
    // What is changed of a rate counts for what is sold from then on; one that is dropped stays with its job.
    check_sale(&format!("{till}job-tax stools low\ntax-rate \"Reduced\" 0.055 inside changes low\n{sell}"), "7.56", "0.055", false);
    check_sale(&format!("{till}job-tax stools low\ndrop-tax low\n{sell}"), "2.84", "0.02", false);
    check_sale("sell 1 stools for 145 notes", "0.00", "0", false);
}

#[test]
fn what_was_agreed_keeps_the_tax_that_was_spoken_of() {
    let till = "till tax 0.055 inside\n";
    let over = "sell 1 stools for 145 notes agreed deal";
    check_sale(&format!("{till}agree 145 for 1 stools fetched as deal\n{over}"), "7.56", "0.055", false);
    check_sale(&format!("{till}agree 145 for 1 stools fetched tax none as deal\n{over}"), "0.00", "0", false);
    check_sale(&format!("{till}agree 145 for 1 stools fetched tax none as deal\n{over} tax low"), "2.84", "0.02", false);
    // A change of order goes on with it.
    let changed = "agree 160 for 1 stools fetched tax none as old\nagree 145 for 1 stools fetched replaces old as deal\n";
    check_sale(&format!("{till}{changed}{over}"), "0.00", "0", false);
}

/// A sale taken back takes its own line along, whatever the job takes by then.
#[test]
fn a_refund_reverses_the_line_that_was_recorded() {
    let story = told("till tax 0.055 inside\nsell 1 stools for 145 notes as one\njob-tax stools low\nreverse sale one on stools");
    let (shop, job) = shop(&story);
    let selling = shop.job(job).unwrap().selling;
    assert_eq!(selling.sales[0].tax, usd("7.56"));
    assert_eq!(selling.tax(Currency::USD), Ok(usd("0")));
}

#[test]
fn every_price_goes_by_the_tax_of_its_job() {
    let lines = "till tax 0.055 top\ntag 100 stools\nconsign 1 stools tag 100 share 0.4 maker-pays\n";
    let seen = |more: &str| {
        let story = told(&format!("{lines}{more}"));
        let row = for_sale(&story, Paid::Notes);
        let (shop, job) = shop(&story);
        let face = buyer(&shop, job, (None, Paid::Card)).unwrap();
        let there = at_galleries(&shop, &shop.job(job).unwrap()).unwrap();
        let rest = heard(&story, "100", None);
        assert_eq!((face.price, face.with_tax), (row.tagged, row.is_on_top));
        (row.tagged.unwrap(), row.costs_covered.unwrap(), there[0].of_one.tax, rest.parts.unwrap().you_get)
    };
    // 30 of costs each: 31.65 with 5.5 % on top, 32.48 with 8.25 %; of 100 handed over 94.79 and 92.38 stay.
    assert_eq!(seen(""), (usd("105.50"), usd("31.65"), usd("5.50"), usd("94.79")));
    assert_eq!(seen("job-tax stools next"), (usd("108.25"), usd("32.48"), usd("8.25"), usd("92.38")));
    assert_eq!(seen("job-tax stools none"), (usd("100"), usd("30"), usd("0"), usd("100")));
}

/// In front of a buyer another tax changes this sheet alone.
#[test]
fn an_offer_is_judged_by_the_tax_chosen_for_it() {
    let story = told("till tax 0.055 inside\ntag 150 stools");
    let (usual, none) = (heard(&story, "140", None), heard(&story, "140", Some(TaxBy::Untaxed)));
    assert_eq!((usual.parts.unwrap().you_get, none.parts.unwrap().you_get), (usd("132.70"), usd("140")));
    assert_eq!((usual.standing.your_rate, none.standing.your_rate), (Some(usd("137.15")), Some(usd("130"))));
    assert_eq!((usual.tax, none.tax), (TaxBy::Usual, TaxBy::Untaxed));
    let agreed = told("till tax 0.055 inside\nagree 280 for 2 stools fetched tax none");
    assert_eq!(heard(&agreed, "280", None).parts.unwrap().tax, usd("0"));
}

/// Law: at every rate and side a proposed price's booked "you get" covers the need and the mark's does too, and one minor unit less does not.
#[test]
fn a_price_covers_its_need_at_every_rate() {
    for rate in ["0", "0.02", "0.055", "0.07", "0.08875", "0.19", "0.25"] {
        for side in ["inside", "top"] {
            for fee in ["0", "0.026"] {
                let lines = format!("till tax 0.11 top fee {fee} point minor\ntax-rate \"One\" {rate} {side} as one\njob-tax stools one");
                covers(&told(&lines), &lines);
            }
        }
    }
}

#[track_caller]
fn covers(story: &Story, lines: &str) {
    let (shop, id) = shop(story);
    let job = shop.job(id).unwrap();
    let row = for_sale(story, Paid::Card);
    let (terms, need, cent) = (shop.terms_of(&job, Paid::Card), usd("130"), usd("0.01"));
    let get = |charge: Money| terms.you_get(charge).unwrap().amount();
    let proposed = terms.tax.charge(row.proposed.unwrap()).unwrap();
    for least in [row.your_rate.unwrap(), proposed] {
        assert!(need.amount() <= get(least), "{lines}");
        assert!(get(least.minus(cent).unwrap()) < need.amount(), "{lines}");
    }
}

#[track_caller]
fn check_refused(lines: &str, refusal: Refusal) {
    let story = tell(&format!("{START}{lines}"));
    let why: Vec<Why> = story.refused.into_iter().map(|(_, why)| why).collect();
    assert_eq!(why, [Why::Refused(refusal)], "{lines}");
}

#[test]
fn a_rate_that_can_not_be_is_refused() {
    let d = |text: &str| text.parse::<Decimal>().unwrap();
    check_refused("tax-rate \"Four\" 4", Refusal::ShareOutOfRange { met: d("4") });
    check_refused("tax-rate \" \" 0.1", Refusal::NameMissing);
    check_refused("tax-rate \"A name of a rate so longs\" 0.1", Refusal::NameTooLong { met: 25, most: 24 });
    check_refused("tax-rate \"reduced\" 0.1", Refusal::TaxThere { name: "reduced".into() });
    check_refused("till fee 0.6\ntax-rate \"Greedy\" 0.9", Refusal::FeesEatThePrice { tax: d("0.9"), fee: d("0.6") });
    check_refused("tax-rate \"Greedy\" 0.9\ntill fee 0.6", Refusal::FeesEatThePrice { tax: d("0.9"), fee: d("0.6") });
    let three = "tax-rate \"Three\" 0.03\ntax-rate \"Four\" 0.04\ntax-rate \"Five\" 0.05 as five\n";
    check_refused(&format!("{three}tax-rate \"Six\" 0.06"), Refusal::TooManyTaxes { most: 5 });
    told(&format!("{three}drop-tax five\ntax-rate \"Six\" 0.06"));
    check_refused("drop-tax low\njob-tax stools low", Refusal::NotThere);
    check_refused("drop-tax low\ndrop-tax low", Refusal::NotThere);
    check_refused("drop-tax low\ntax-rate \"Low\" 0.02 changes low", Refusal::NotThere);
    check_refused(
        "till tax 0.055 top\ntag 100 stools\njob-tax stools none\nsettle 101 stools",
        Refusal::MoreThanPrice { met: usd("101"), price: usd("100") },
    );
}
