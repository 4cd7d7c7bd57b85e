//! What was driven to deliver is borne once: what one piece bore when it was sold stays borne, and all of them bear the whole. By hand.

use fivebar_core::ledger::fold::part;
use fivebar_core::quantity::{Currency, Decimal, Money, Span};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::{Account, account};
use fivebar_core::story::{Story, tell};

const BEGUN: &str = "2026-05-22 08:00 +02:00 workshop EUR metric\nrate pay 60 lowest 20 hours 100 logged 100\n";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{BEGUN}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

fn reckoned(story: &Story) -> Account {
    account(&Shop::of(&story.book, story.now.at), story.names.job("lamps").unwrap()).unwrap()
}

fn eur(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::EUR).unwrap()
}

/// What one that is left must bring in to return what was spent.
#[track_caller]
fn check(lines: &str, covered: &str) {
    let found = reckoned(&told(lines));
    assert_eq!(found.pricing.marks.costs_covered.unwrap().need, covered.parse::<Decimal>().unwrap(), "{lines}");
}

/// Two pieces, glass 37.50, driven to deliver 9.00.
const TWO: &str =
    "job lamps \"Lamps\" 2 spec\nspend 37.50 glass on lamps\nplan-cost other 9 \"drive\" delivery for lamps\nspend 9 other on lamps\n";

#[test]
fn what_a_fetched_piece_bore_stays_borne() {
    check(TWO, "23.25");
    check(&format!("{TWO}2026-05-23 10:00 sell 1 lamps for 60 notes fetched\n"), "23.25");
    // One that was brought has borne what was left of it.
    check(&format!("{TWO}2026-05-23 10:00 sell 1 lamps for 60 notes delivered\n"), "18.75");
    // Driven after the first was fetched: the one that is left bears that alone, and its half of the first.
    let later = "2026-05-23 10:00 sell 1 lamps for 60 notes fetched\n2026-05-24 10:00 spend 6 other on lamps\n";
    check(&format!("{TWO}{later}"), "29.25");
    // It came back: both bear all of it.
    let back = "2026-05-23 10:00 sell 1 lamps for 60 notes fetched as first\n2026-05-24 10:00 reverse sale first on lamps\n";
    check(&format!("{TWO}{back}"), "23.25");
}

#[test]
fn the_offer_says_how_much_of_it_the_last_bears() {
    let found = reckoned(&told(&format!("{TWO}2026-05-23 10:00 sell 1 lamps for 60 notes fetched\n"))).pricing.driven.unwrap();
    assert_eq!((found.costs, found.of_all.0, found.of_left), (eur("4.50"), eur("9"), Some(1)));
}

/// Law: in whatever lots they are fetched, the shares of what was spent and driven come to the whole, but for half a cent a lot.
#[test]
fn shares_come_to_the_whole_in_any_order() {
    for order in [&[1, 1, 1, 1][..], &[2, 2], &[1, 3], &[3, 1], &[4], &[1, 2, 1]] {
        for more in [false, true] {
            let mut lines = "job lamps \"Lamps\" 4 spec\nspend 75 glass on lamps\nplan-cost other 9 \"drive\" delivery for lamps\n\
                plan \"bring\" deliver 60 min for lamps\nspend 9 other on lamps\n"
                .to_owned();
            let (mut borne, mut spent) = (Decimal::ZERO, Decimal::from(84));
            for (day, n) in (23..).zip(order) {
                if more && day == 24 {
                    lines += "2026-05-23 20:00 spend 7 other on lamps\n";
                    spent += Decimal::from(7);
                }
                let work = reckoned(&told(&lines)).pricing.work;
                borne += part(work.costs.unwrap(), *n, 4).unwrap().amount();
                lines += &format!("2026-05-{day} 10:00 sell {n} lamps for 60 notes fetched\n");
            }
            let off = (borne - spent).abs();
            assert!(off <= Decimal::new(2, 2), "{order:?} {more}: {borne} of {spent}");
        }
    }
}

/// The same of the hours: an hour driven is half an hour of each of two, and stays that.
#[test]
fn hours_at_the_wheel_are_borne_once() {
    let driven = "job lamps \"Lamps\" 2 spec\nspend 10 glass on lamps\n2026-05-22 09:30 recall \"bring\" deliver on lamps 08:10 to 09:10\n";
    for lines in [driven.to_owned(), format!("{driven}2026-05-23 10:00 sell 1 lamps for 60 notes fetched\n")] {
        let found = reckoned(&told(&lines)).pricing.work;
        assert_eq!(found.time, Some(Span::minutes(60)), "{lines}");
    }
}
