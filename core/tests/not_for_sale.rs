//! Pieces that nobody bought and that are not for sale any more: kept, given away or broken. The job can end, and what they cost stays with it.

use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::job::NextAct;
use fivebar_core::sheet::jobs::{Section, jobs};
use fivebar_core::sheet::price::price;
use fivebar_core::story::{Why, tell};

/// Three stools that cost 90 in all and took three hours.
const STOOLS: &str = "2026-03-02 09:00 -05:00 workshop USD inch
job stools \"Stools\" 3 spec
spend 90 wood on stools
recall \"shape\" make on stools 2026-03-01 09:00 to 2026-03-01 12:00
tag 80 stools
";

fn dollars(sum: i64) -> Money {
    Money::whole(Decimal::from(sum), Currency::USD).unwrap()
}

/// Pieces on hand, in which section, what is next, and what is left after costs.
#[track_caller]
fn check(lines: &str, left: u32, section: Section, next: &NextAct, kept: Option<i64>) {
    let story = tell(&format!("{STOOLS}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    let shop = Shop::of(&story.book, story.now.at);
    let row = jobs(&shop, "").unwrap().remove(0);
    let sold = account(&shop, row.job).unwrap().sold;
    assert_eq!((sold.left, row.section, &row.next, sold.kept), (left, section, next, kept.map(dollars)), "{lines}");
}

#[test]
fn a_job_whose_pieces_are_gone_can_end() {
    let sell = |left| NextAct::Sell { left };
    check("", 3, Section::ForSale, &sell(3), None);
    check("not-for-sale 1 stools yours", 2, Section::ForSale, &sell(2), None);
    // Two of 80 less all of the 90: the broken one is the job's own loss.
    check("sell 2 stools for 160 notes\nnot-for-sale 1 stools broken", 0, Section::InHand, &NextAct::End, Some(70));
    check("sell 2 stools for 160 notes\nnot-for-sale 1 stools given\nend stools", 0, Section::Ended, &NextAct::LookBack, Some(70));
    // None is sold and none is left: all of it is lost.
    check("not-for-sale 3 stools broken\nend stools", 0, Section::Ended, &NextAct::LookBack, Some(-90));
    check("not-for-sale 3 stools broken as it\nundo it", 3, Section::ForSale, &sell(3), None);
}

/// What the others must bring does not rise.
#[test]
fn what_the_others_cost_stays_as_it_was() {
    let covered = |lines: &str| {
        let story = tell(&format!("{STOOLS}{lines}"));
        price(&Shop::of(&story.book, story.now.at), Paid::Notes).unwrap().for_sale[0].costs_covered
    };
    assert_eq!((covered(""), covered("not-for-sale 1 stools broken")), (Some(dollars(30)), Some(dollars(30))));
}

#[test]
fn what_is_promised_sold_or_gone_already_is_refused() {
    let many = |asked, there| Refusal::NotThatMany { asked, there };
    for (lines, refused) in [
        ("not-for-sale 4 stools yours", many(4, 3)),
        ("agree 80 for 2 stools fetched\nnot-for-sale 2 stools broken", many(2, 1)),
        ("not-for-sale 2 stools given\nnot-for-sale 2 stools given", many(2, 1)),
        ("not-for-sale 2 stools yours as it\nundo it\nsell 2 stools for 160 notes\nrestore it", many(4, 3)),
    ] {
        let story = tell(&format!("{STOOLS}{lines}"));
        let why = story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
        assert_eq!(why, [Why::Refused(refused)], "{lines}");
    }
}

/// Three stools to order with a price that nobody agreed to yet are not for sale: they are in hand, and said so where the price is. Agreed they are
/// due; called off, or done with, they are for sale as any others.
#[test]
fn an_order_that_is_not_agreed_yet_is_not_for_sale() {
    let check = |lines: &str, section, to_agree: Option<bool>| {
        let story = tell(&format!("{}{lines}", STOOLS.replace("3 spec", "3 order")));
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        let row = jobs(&shop, "").unwrap().remove(0);
        let said = price(&shop, Paid::Notes).unwrap().for_sale.first().map(|row| row.is_to_agree);
        assert_eq!((row.section, said), (section, to_agree), "{lines}");
        let is_next = matches!(row.next, NextAct::Agree { left: 3 });
        assert_eq!(is_next, to_agree == Some(true), "{lines}");
    };
    check("", Section::InHand, Some(true));
    check("agree 240 for 3 stools fetched as deal", Section::Due, None);
    check("agree 240 for 3 stools fetched as deal\ncancel deal on stools", Section::ForSale, Some(false));
    check("sell 1 stools for 80 notes", Section::ForSale, Some(false));
    check("end stools", Section::ForSale, Some(false));
}
