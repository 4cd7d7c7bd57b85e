//! A gallery hands over a part of what it sold for: the rest is due until it comes, comes once, and is seen wherever money is due.
//!
//! A stool of 145 with 5.5 % inside, of which the gallery keeps 0.4 before tax and sends the tax in: 82.46 for each. 60 of it leaves 22.46.

mod maker;

use fivebar_core::ledger::Book;
use fivebar_core::ledger::decide::{Command, PaidOf, PayOrder, SaleCommand};
use fivebar_core::ledger::fold::{self, Job};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::sale::{ConsignmentPaid, Paid, PiecesConsigned};
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::gallery::at_galleries;
use fivebar_core::sheet::job::NextAct;
use fivebar_core::sheet::jobs::{Section, jobs};
use fivebar_core::sheet::price::price;
use fivebar_core::story::{Story, Why, tell};
use maker::{begun, d};

const LEFT: &str = "2026-03-02 09:00 -05:00 workshop USD inch
till tax 0.055 inside
job stools \"Stools\" 2 spec
spend 10 glue on stools
consign 2 stools tag 145 share 0.4 as lot
2026-04-01 10:00 gallery pays 60 for 1 stools lot lot due 22.46 as part
";

fn cents(cents: i64) -> Money {
    Money::whole(Decimal::new(cents, 2).normalize(), Currency::USD).unwrap()
}

fn job(story: &Story) -> Job {
    fold::job(&story.book, story.names.job("stools").unwrap()).unwrap()
}

/// In cents after these lines: handed over, due from the gallery, what is left after costs of 10, beyond what was due.
#[track_caller]
fn check(lines: &str, figures: [i64; 4], refused: &[Refusal]) {
    let story = tell(&format!("{LEFT}{lines}"));
    let why = story.refused.iter().map(|(_, why)| why.clone()).collect::<Vec<_>>();
    assert_eq!(why, refused.iter().cloned().map(Why::Refused).collect::<Vec<_>>(), "{lines}");
    let (shop, job) = (Shop::of(&story.book, story.now.at), job(&story));
    let sold = account(&shop, job.id).unwrap().sold;
    let beyond = job.selling.beyond_dues(job.currency).unwrap();
    let kept = sold.kept.unwrap_or(cents(0));
    assert_eq!([sold.handed_over, sold.due_from_galleries, kept, beyond], figures.map(cents), "{lines}");
    assert!(sold.due.is_zero(), "no buyer owes it: {lines}");
    let due = price(&shop, Paid::Notes).unwrap().due.get(&job.currency).copied();
    assert_eq!(due, Some(cents(figures[1])).filter(|due| !due.is_zero()), "{lines}");
}

#[test]
fn what_a_gallery_lacks_is_due_until_it_comes() {
    let over = |met, due| [Refusal::MoreThanDue { met: cents(met), due: cents(due) }];
    check("", [6000, 2246, 7246, 0], &[]);
    check("gallery rest 12.46 for stools of part", [7246, 1000, 7246, 0], &[]);
    check("gallery rest 22.46 for stools of part", [8246, 0, 7246, 0], &[]);
    check("gallery rest 12.46 for stools of part\ngallery rest 10 for stools of part", [8246, 0, 7246, 0], &[]);
    check("gallery rest 22.47 for stools of part", [6000, 2246, 7246, 0], &over(2247, 2246));
    check("gallery rest 20 for stools of part\ngallery rest 5 for stools of part", [8000, 246, 7246, 0], &over(500, 246));
    check("gallery rest 22.46 for stools of part\ngallery rest 1 for stools of part", [8246, 0, 7246, 0], &[Refusal::NotThere]);
    check("gallery rest 0 for stools of part", [6000, 2246, 7246, 0], &[Refusal::NothingAsked]);
    // Paid in full, and nothing is due of it.
    check("gallery pays 82.46 for 1 stools lot lot", [14246, 2246, 15492, 0], &[]);
}

#[test]
fn what_came_is_taken_back_and_put_back() {
    check("gallery rest 22.46 for stools of part as rest\nundo rest", [6000, 2246, 7246, 0], &[]);
    check("gallery rest 22.46 for stools of part as rest\nundo rest\nrestore rest", [8246, 0, 7246, 0], &[]);
    let again = "gallery rest 12 for stools of part as rest\nundo rest\ngallery rest 20 for stools of part\nrestore rest";
    check(again, [8000, 246, 7246, 0], &[Refusal::MoreThanDue { met: cents(1200), due: cents(246) }]);
    // The sale is taken back: what came of it since stays, and is beyond what is due.
    check("gallery rest 12 for stools of part\nundo part", [1200, 0, 0, 1200], &[]);
}

/// Given up, it is due no more and what was got is what was paid; taken back it is due again. What comes all the same counts once.
#[test]
fn a_due_that_never_comes_is_given_up() {
    let up = "gallery gives-up for stools of part as never\n";
    let not_there = [Refusal::NotThere];
    check(up, [6000, 0, 5000, 0], &[]);
    check(&format!("gallery rest 12 for stools of part\n{up}"), [7200, 0, 6200, 0], &[]);
    check(&format!("{up}undo never"), [6000, 2246, 7246, 0], &[]);
    check(&format!("{up}undo never\nrestore never"), [6000, 0, 5000, 0], &[]);
    check(&format!("{up}undo never\ngallery rest 12 for stools of part\nrestore never"), [7200, 0, 6200, 0], &[]);
    check(&format!("gallery rest 12 for stools of part as rest\nundo rest\n{up}restore rest"), [7200, 0, 6200, 0], &[]);
    check(&format!("{up}{up}"), [6000, 0, 5000, 0], &not_there);
    check(&format!("{up}gallery rest 1 for stools of part"), [6000, 0, 5000, 0], &not_there);
    check(&format!("{up}undo part"), [0, 0, 0, 0], &[]);
    check("gallery gives-up for stools of lot", [6000, 2246, 7246, 0], &not_there);
}

/// The sale, its day and its tax line stay; the job is done with, and its page says what was given up.
#[test]
fn what_was_given_up_leaves_the_sale_as_it_was() {
    let given = format!("{LEFT}gallery returns 1 stools lot lot\nsell 1 stools for 120 notes\n");
    let [before, after] = ["", "gallery gives-up for stools of part\n"].map(|line| tell(&format!("{given}{line}")));
    assert_eq!(after.refused, []);
    let selling = |story: &Story| job(story).selling;
    let tax = |story: &Story| (selling(story).consignments_paid, selling(story).tax(Currency::USD));
    assert_eq!(tax(&before), tax(&after));
    let sold = account(&Shop::of(&after.book, after.now.at), job(&after).id).unwrap().sold;
    assert_eq!((sold.given_up, sold.by_galleries), (cents(2246), 1));
    let rows = jobs(&Shop::of(&after.book, after.now.at), "").unwrap();
    assert_eq!((rows[0].section, rows[0].due_from_galleries, &rows[0].next), (Section::InHand, cents(0), &NextAct::End));
}

/// No tax beyond what it owes in all, and no more owed than its buyers paid.
#[test]
fn what_it_owes_holds_with_its_tax_and_price() {
    for (line, refused) in [
        ("gallery pays 5 for 1 stools tax 7.56 lot lot due 85.02", None),
        ("gallery pays 5 for 1 stools tax 7.56 lot lot", Some(Refusal::MoreThanPrice { met: cents(756), price: cents(500) })),
        (
            "gallery pays 60 for 1 stools lot lot sold-for 80 due 20.01",
            Some(Refusal::MoreThanPrice { met: cents(8001), price: cents(8000) }),
        ),
    ] {
        let story = tell(&format!("{LEFT}{line}"));
        let why = story.refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
        assert_eq!(why, refused.into_iter().map(Why::Refused).collect::<Vec<_>>(), "{line}");
    }
}

/// The job stands among those that are due, with its sum, and is done with when it came.
#[test]
fn a_job_a_gallery_owes_for_is_due() {
    let given = format!("{LEFT}gallery returns 1 stools lot lot\nsell 1 stools for 120 notes\n");
    for (line, section, due, next) in [
        ("", Section::Due, 2246, NextAct::Collect { due: cents(2246) }),
        ("gallery rest 22.46 for stools of part", Section::InHand, 0, NextAct::End),
        ("end stools", Section::Due, 2246, NextAct::Collect { due: cents(2246) }),
    ] {
        let story = tell(&format!("{given}{line}"));
        assert_eq!(story.refused, [], "{line}");
        let rows = jobs(&Shop::of(&story.book, story.now.at), "").unwrap();
        assert_eq!((rows[0].section, rows[0].due_from_galleries, &rows[0].next), (section, cents(due), &next), "{line}");
    }
}

/// Both phones note the same rest: nothing is lost, and what is beyond is known by its sum, in any order of arrival.
#[test]
fn two_phones_note_the_same_rest() {
    let (mut one, job) = begun(2);
    one.at((2026, 4, 1), 600, -4);
    let tag = cents(14500);
    let consign = PiecesConsigned { job, n: 2, tag, share: Exact(d("0.4")), with_tax: None, maker_pays: None, gallery: None, when: None };
    one.order(Command::Sale(SaleCommand::Consign(consign)));
    let (sum, due) = (cents(6000), Some(cents(2246)));
    let (tax, gallery, when, lot, sold_for, rate, side) = (None, None, None, None, None, None, None);
    let paid = ConsignmentPaid { job, n: 1, sum, tax, gallery, when, lot, sold_for, rate, side, due };
    let of = PaidOf::Gallery(one.order(Command::Sale(SaleCommand::NoteConsignmentPaid(paid)))[0]);
    let mut other = one.parted("other");
    let rest = PayOrder { job, sum: cents(2246), paid: Paid::Bank, fee: None, of, when: None };
    let struck = [&mut one, &mut other].map(|phone| phone.order(Command::Sale(SaleCommand::Pay(rest.clone())))[0])[1];
    for mut book in [one.merged(&other), other.merged(&one)] {
        let sums = |book: &Book| {
            let selling = fold::job(book, job).unwrap().selling;
            [selling.handed_over(Currency::USD), selling.due_from_galleries(Currency::USD), selling.beyond_dues(Currency::USD)]
                .map(Result::unwrap)
        };
        assert_eq!(sums(&book), [10492, 0, 2246].map(cents));
        let net = |book: &Book| account(&Shop::of(book, one.shop().now), job).unwrap().sold.net;
        assert_eq!(net(&book), cents(8246), "noted twice, it is earned once");
        book = book.without(&[struck]);
        assert_eq!(sums(&book), [8246, 0, 0].map(cents));
    }
}

/// Three of 82.46 are 247.38: who rounds the sum and not each may be two cents off, and owes nothing.
#[test]
fn less_than_a_cent_a_piece_is_no_due() {
    let story = tell(LEFT);
    let shop = Shop::of(&story.book, story.now.at);
    let there = at_galleries(&shop, &job(&story)).unwrap().remove(0);
    let lacks = |n, sum| there.lacks(n, cents(sum), None);
    assert_eq!([lacks(3, 24_738), lacks(3, 24_736), lacks(3, 24_735)], [None, None, Some(cents(3))]);
    assert_eq!([lacks(1, 8_246), lacks(1, 8_245)], [None, Some(cents(1))]);
}
