//! What was driven to deliver is borne once: what one piece bore when it was sold stays borne, and all of them bear the whole. By hand.

use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::quantity::{Currency, Decimal, Money, Span};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::{Account, account};
use fivebar_core::sheet::marks::Bearers;
use fivebar_core::sheet::offer::{Asking, offer};
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
    assert_eq!((found.costs, found.of_all.0, found.by), (eur("4.50"), eur("9"), Bearers::Left(1)));
}

/// Of seven one is fetched, then it is driven: six bear it, and five what is left of it: 10 x 5 / 6. In however many sums it was written down,
/// none of a cent is lost or won.
#[test]
fn what_is_left_of_a_drive_is_rounded_once() {
    let seven =
        "job lamps \"Lamps\" 7 spec\nplan-cost other 10 \"drive\" delivery for lamps\n2026-05-23 10:00 sell 1 lamps for 60 notes fetched\n";
    let fetched = |n: u32| format!("2026-05-25 10:00 sell {n} lamps for 60 notes fetched\n");
    let dimes = "spend 0.10 other on lamps\n".repeat(10);
    for (spent, more, costs) in [
        ("spend 10 other on lamps\n", String::new(), "10"),
        ("spend 10 other on lamps\n", fetched(1), "8.33"),
        ("spend 10 other on lamps\n", fetched(3), "5"),
        (&dimes, String::new(), "1"),
        (&dimes, fetched(1), "0.83"),
    ] {
        let lines = format!("{seven}2026-05-24 10:00 {spent}{more}");
        assert_eq!(reckoned(&told(&lines)).pricing.driven.unwrap().costs, eur(costs), "{lines}");
    }
}

/// Law: in whatever lots they are fetched, the shares of what was spent and driven come to the whole, each rounded once: but for half a cent a lot.
#[test]
fn shares_come_to_the_whole_in_any_order() {
    let fours = [&[1, 1, 1, 1][..], &[2, 2], &[1, 3], &[3, 1], &[4], &[1, 2, 1]];
    for order in fours.into_iter().chain([&[1, 1, 5][..], &[1, 2, 4], &[2, 3, 2], &[3, 4], &[1, 1, 1, 1, 1, 1, 1]]) {
        let all: u32 = order.iter().sum();
        for more in [false, true] {
            let mut lines = format!(
                "job lamps \"Lamps\" {all} spec\nspend 75 glass on lamps\nplan-cost other 9 \"drive\" delivery for lamps\n\
                plan \"bring\" deliver 60 min for lamps\nspend 9 other on lamps\n"
            );
            let (mut borne, mut spent) = (Decimal::ZERO, Decimal::from(84));
            for (day, n) in (23..).zip(order) {
                if more && day == 24 {
                    lines += "2026-05-23 20:00 spend 7 other on lamps\n";
                    spent += Decimal::from(7);
                }
                let work = reckoned(&told(&lines)).pricing.work;
                borne += work.costs_of(*n).unwrap().unwrap().amount();
                lines += &format!("2026-05-{day} 10:00 sell {n} lamps for 60 notes fetched\n");
            }
            let off = (borne - spent).abs();
            assert!(off <= Decimal::new(5, 3) * Decimal::from(order.len()), "{order:?} {more}: {borne} of {spent}");
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

/// A drive that was not stopped over night is in no cost before the maker has answered for it, the pay of who went along neither: it was never in
/// the total, so it is not taken off what the others bear where one was brought. Answered, it is in both.
#[test]
fn pay_of_a_drive_in_question_takes_nothing_off_the_others() {
    let begun = "person ada helper\njob lamps \"Lamps\" 3 spec\nspend 30 glass on lamps\n";
    let drive = "2026-05-22 17:00 start \"bring\" deliver on lamps as drive\n17:00 helper joins ada 20\n2026-05-23 09:00 stop\n";
    let brought = "2026-05-23 10:00 sell 1 lamps for 60 notes delivered\n";
    let answered = "stopped at 2026-05-22 19:00 run drive\n";
    for (lines, [total, driven, unsettled]) in [
        (format!("{begun}{brought}"), ["30", "0", "0"]),
        (format!("{begun}{drive}{brought}"), ["30", "0", "320"]),
        // Handed over first, and the drive begun when it was written down: of the piece that went all the same.
        (format!("{begun}2026-05-22 10:00 sell 1 lamps for 60 notes delivered\n{drive}{answered}"), ["70", "40", "0"]),
        (format!("{begun}{drive}{brought}{answered}"), ["70", "40", "0"]),
    ] {
        let found = reckoned(&told(&lines));
        // The hours of that night are in no price, as their pay is in none: what went after it was brought by it.
        assert_eq!(found.hours.driven_as_left, Span::ZERO, "{lines}");
        let costs = found.costs;
        assert_eq!((costs.total, costs.driven, costs.unsettled), (Some(eur(total)), eur(driven), eur(unsettled)), "{lines}");
        assert_eq!(costs.driven_as_left, Decimal::ZERO, "{lines}");
        check(&lines, "10");
    }
}

/// Glass 37.50 for two, and a delivery that is planned.
const GLASS: &str = "job lamps \"Lamps\" 2 spec\nspend 37.50 glass on lamps\nplan-cost other 9 \"drive\" delivery for lamps\n";
const AGREED: &str = "2026-05-23 10:00 agree 80 for 1 lamps delivered as deal\n";
const DRIVEN: &str = "2026-05-24 10:00 spend 9 other on lamps\n";
const FETCHED: &str = "2026-05-25 10:00 sell 1 lamps for 60 notes fetched\n";

/// What is driven while a piece is agreed that is to be brought is for that piece: the other bears the same before and after the hand-over.
#[test]
fn a_drive_for_what_is_agreed_is_not_of_the_piece_beside_it() {
    let handed_over = "2026-05-26 10:00 sell 1 lamps for 80 notes delivered agreed deal\n";
    let cancelled = "2026-05-26 10:00 cancel deal on lamps\n";
    let (to_fetch, still_brought) = (
        "2026-05-25 12:00 agree 80 for 1 lamps fetched replaces deal as new\n",
        "2026-05-25 12:00 agree 90 for 1 lamps delivered replaces deal as new\n",
    );
    for (more, covered) in [
        ("", "18.75"),
        (handed_over, "18.75"),
        (cancelled, "23.25"),
        (to_fetch, "23.25"),
        (still_brought, "18.75"),
        // The other is fetched and bore none: what is left is the promised piece, with all of it, or after the order came to nothing the same.
        (FETCHED, "27.75"),
        (&format!("{FETCHED}{cancelled}"), "27.75"),
        (&format!("{FETCHED}{to_fetch}"), "27.75"),
    ] {
        check(&format!("{GLASS}{AGREED}{DRIVEN}{more}"), covered);
    }
    // Driven before it was agreed, or agreed to be fetched: of those on hand alike.
    check(&format!("{GLASS}2026-05-22 10:00 spend 9 other on lamps\n{AGREED}"), "23.25");
    check(&format!("{GLASS}{}{DRIVEN}", AGREED.replace("delivered", "fetched")), "23.25");
    // Both are promised to be brought: both bear it.
    check(&format!("{GLASS}{}{DRIVEN}", AGREED.replace("for 1", "for 2")), "23.25");
    // Three bear what was driven before, one alone what was driven for it.
    let three = GLASS.replace("\" 2 spec", "\" 3 spec");
    check(&format!("{three}2026-05-22 10:00 spend 9 other on lamps\n{AGREED}{DRIVEN}"), "15.5");
}

/// What was driven after the last that were brought went is of those on hand, in whatever order it arrived; what was driven before is of those that
/// are gone; of an order that is made then it is of its piece.
#[test]
fn a_drive_is_of_the_pieces_that_went_after_it() {
    const BROUGHT: &str = "2026-05-22 10:00 sell 1 lamps for 60 notes delivered\n";
    const GALLERY: &str = "2026-05-22 10:00 consign 1 lamps tag 60 share 0.5\n";
    let before = "2026-05-22 09:00 spend 9 other on lamps\n";
    for (lines, covered) in [
        (format!("{BROUGHT}{AGREED}{DRIVEN}"), "27.75"),
        (format!("{BROUGHT}{DRIVEN}"), "27.75"),
        (format!("{GALLERY}{DRIVEN}"), "27.75"),
        (format!("{before}{BROUGHT}"), "18.75"),
        (format!("{before}{GALLERY}"), "18.75"),
        (format!("{before}{BROUGHT}{DRIVEN}"), "27.75"),
        (format!("{BROUGHT}2026-05-22 19:00 spend 9 other on lamps\n"), "18.75"),
    ] {
        check(&format!("{GLASS}{lines}"), covered);
    }
    let found = |lines: String| reckoned(&told(&format!("{GLASS}{lines}"))).pricing.driven.unwrap();
    assert_eq!(found(format!("{before}{BROUGHT}")).by, Bearers::Gone);
    let both = found(format!("{before}{BROUGHT}{DRIVEN}"));
    assert_eq!((both.costs, both.of_all.0, both.by), (eur("9"), eur("18"), Bearers::Left(1)));
    assert_eq!(found(format!("{before}{BROUGHT}{AGREED}")).by, Bearers::Gone);
}

/// Law: of five, lots are brought and driven for one after the other, the last drive before its lot goes: shares come to what was spent.
#[test]
fn shares_of_those_brought_come_to_the_whole() {
    for order in [&[1, 1, 1, 1, 1][..], &[2, 2, 1], &[4, 1], &[1, 4], &[5]] {
        let mut lines = "job lamps \"Lamps\" 5 spec\nspend 75 glass on lamps\n".to_owned();
        for (day, n) in (23..).zip(order) {
            lines += &format!("2026-05-{day} 09:00 drive 10 km at 0.9 on lamps delivery\n");
            let (left, glass) = (reckoned(&told(&lines)).pricing.work.costs_of(*n).unwrap().unwrap(), 15 * n);
            let rest: u32 = order.iter().skip((day - 23) as usize).sum();
            let drive = Decimal::from(9 * n) / Decimal::from(rest);
            assert!((left.amount() - Decimal::from(glass) - drive).abs() <= Decimal::new(5, 3), "{order:?} {n}: {left}");
            lines += &format!("2026-05-{day} 10:00 sell {n} lamps for 60 notes delivered\n");
        }
    }
}

/// What came back of a drive is shared as the drive was: driven before it was agreed, of both.
#[test]
fn what_came_back_of_a_drive_is_shared_as_the_drive() {
    let back = "2026-05-24 10:00 came-back 4 first\n";
    check(&format!("{GLASS}2026-05-22 10:00 spend 12 other on lamps as first\n{AGREED}{back}"), "22.75");
}

/// The same of the hours, of which the other piece has its half of what was made.
#[test]
fn hours_driven_for_what_is_agreed_are_not_of_the_piece_beside_it() {
    let made = format!("{GLASS}2026-05-22 09:30 recall \"bend\" make on lamps 08:10 to 09:10\n{AGREED}");
    let driven = "2026-05-24 12:00 recall \"bring\" deliver on lamps 10:00 to 11:00\n";
    for (more, minutes) in [("", 60), (driven, 60), (&format!("{driven}{FETCHED}"), 180)] {
        assert_eq!(reckoned(&told(&format!("{made}{more}"))).pricing.work.time, Some(Span::minutes(minutes)), "{more}");
    }
    let found = reckoned(&told(&format!("{made}{driven}{DRIVEN}"))).pricing.driven.unwrap();
    assert_eq!((found.costs, found.time, found.by), (eur("9"), Span::minutes(60), Bearers::Promised));
}

/// Law: the drive is for the one that is agreed, the others are fetched before or after it: what they bore comes to what was spent.
#[test]
fn shares_come_to_the_whole_beside_what_is_agreed() {
    for (all, before, after) in [(2, 0, 1), (3, 1, 1), (4, 0, 3), (5, 2, 2), (7, 3, 2)] {
        for ends in [false, true] {
            let mut lines = format!("job lamps \"Lamps\" {all} spec\nspend 37.50 glass on lamps\n");
            let mut borne = Decimal::ZERO;
            let mut fetched = |lines: &mut String, days: std::ops::Range<u32>| {
                for day in days {
                    borne += reckoned(&told(lines)).pricing.work.costs_of(1).unwrap().unwrap().amount();
                    *lines += &format!("2026-05-{day} 11:00 sell 1 lamps for 60 notes fetched\n");
                }
            };
            fetched(&mut lines, 23..23 + before);
            lines += "2026-05-26 10:00 agree 80 for 1 lamps delivered as deal\n2026-05-26 12:00 drive 10 km at 0.9 on lamps delivery\n";
            fetched(&mut lines, 27..27 + after);
            lines += if ends { "2026-05-31 10:00 cancel deal on lamps\n" } else { "" };
            let rest = all - before - after;
            borne += reckoned(&told(&lines)).pricing.work.costs_of(rest).unwrap().unwrap().amount();
            let (spent, most) = (Decimal::new(4650, 2), Decimal::new(5, 3) * Decimal::from(all));
            // Where others are for sale still, they bear none and the promised one bears the drive.
            let spent = if !ends && 1 < rest { spent - Decimal::from(9) } else { spent };
            assert!((borne - spent).abs() <= most, "{all} {before} {after} {ends}: {borne} of {spent}");
        }
    }
}

/// Nothing but a drive of 10 to seven of which one was fetched before it: five of the six bear 8.33, as its line says, and not 5 / 7 of what all
/// seven would be rounded to, 8.34; two of them 3.33.
#[test]
fn several_pieces_bear_what_the_line_of_the_drive_says() {
    let lines = "job lamps \"Lamps\" 7 spec\n2026-05-22 09:30 recall \"bend\" make on lamps 08:10 to 09:10\n\
        2026-05-23 10:00 sell 1 lamps for 60 notes fetched\n2026-05-24 10:00 drive 10 km at 1 on lamps delivery\n\
        2026-05-25 10:00 sell 1 lamps for 60 notes fetched\n";
    let story = told(lines);
    let pricing = reckoned(&story).pricing;
    assert_eq!(pricing.driven.unwrap().costs, eur("8.33"));
    assert_eq!([5, 2].map(|n| pricing.work.costs_of(n).unwrap().unwrap()), [eur("8.33"), eur("3.33")]);
    let asking = Asking { n: 5, paid: Paid::Notes, carried: Carried::Fetched, tax: None };
    let found = offer(&Shop::of(&story.book, story.now.at), story.names.job("lamps").unwrap(), asking, Some(eur("300"))).unwrap();
    assert_eq!(found.left.unwrap().way.costs, eur("8.33"));
}
