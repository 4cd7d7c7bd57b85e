//! A fair: pieces that cover stall, drive and hours, and what so many leave for an hour. Reckoned by hand beside each row.

use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Currency, Length, Money, Span, half_up};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::fair::{Fair, Lacks, fair, past};
use fivebar_core::story::{STANDS, Story, tell};

fn usd(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::USD).unwrap()
}

const BEGUN: &str = "2026-03-02 09:00 -05:00 workshop USD inch\ntill mileage 0.50 mile\n";
/// Ten stools of 200 in all; 20 each.
const STOOLS: &str = "job stools \"Stools\" 10 spec\nspend 200 wood on stools\ntag 60 stools\n";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{BEGUN}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

/// A stall of 50, 20 miles, five hours.
fn of(story: &Story) -> Fair {
    let distance = Some(Length::MILE.times(20).unwrap());
    Fair { job: story.names.job("stools").unwrap(), paid: Paid::Notes, stall: usd("50"), distance, time: Span::minutes(300) }
}

/// So many cover it, and each count with what is left for an hour.
#[track_caller]
fn check(lines: &str, covers: u32, sold: &[(u32, &str)]) {
    let story = told(lines);
    let sheet = fair(&Shop::of(&story.book, story.now.at), &of(&story)).unwrap().unwrap();
    let found: Vec<_> = sheet.sold.iter().map(|at| (at.n, half_up(at.per_hour, 2).normalize().to_string())).collect();
    assert_eq!((sheet.covers, found), (covers, sold.iter().map(|(n, left)| (*n, (*left).to_owned())).collect()), "{lines}");
}

#[test]
fn a_stall_is_covered_by_so_many_pieces() {
    // 50 + 10 of driving are 60; a stool leaves 60 - 20 = 40: two, which leave 20 in five hours. Six leave 180, ten 340.
    check(STOOLS, 2, &[(2, "4"), (6, "36"), (10, "68")]);
    // Five hours at the lowest pay of 12 are 60 more: three, which leave 60 in five hours: 12.00.
    check(&format!("rate lowest 12\n{STOOLS}"), 3, &[(3, "12"), (7, "44"), (10, "68")]);
    // A stall that was paid for before is that fair's own cost: one still costs 20.
    check(&format!("{STOOLS}spend 80 stall on stools\n"), 2, &[(2, "4"), (6, "36"), (10, "68")]);
    // With one left the two that cover it are not there, and what the one leaves is said: 40 - 60 in five hours.
    check(&format!("{STOOLS}sell 9 stools for 540 notes\n"), 2, &[(1, "-4")]);
}

/// At a fair it is carried home by who buys it: what a delivery would take is neither in what one costs nor in what is proposed for it.
#[test]
fn a_piece_at_a_fair_is_fetched() {
    let van = "plan-cost other 200 \"van\" delivery for stools\n";
    check(&format!("{STOOLS}{van}"), 2, &[(2, "4"), (6, "36"), (10, "68")]);
    // An hour at 20 and 201 for ten: 22.10 for one. To the nearest 0.25 that were 22.00, less than it needs, so it is 22.13, in notes 22.25; with the
    // van it were 42.10 and more.
    let work = "job stools \"Stools\" 10 spec\nspend 201 wood on stools\nstart \"oil\" make on stools\n10:00 stop\nall-planned stools\n";
    let story = told(&format!("till point minor cash 0.25\nrate pay 20 hours 100 logged 100\n{work}{van}"));
    for (paid, ask) in [(Paid::Notes, "22.25"), (Paid::Card, "22.13")] {
        let sheet = fair(&Shop::of(&story.book, story.now.at), &Fair { paid, ..of(&story) }).unwrap().unwrap();
        assert_eq!((sheet.ask, sheet.cost), (usd(ask), usd("20.10")), "{paid:?}");
    }
}

#[test]
fn a_fair_that_can_not_be_reckoned_says_why() {
    let refused = |lines: &str| {
        let story = tell(&lines.replace("{}", STOOLS));
        fair(&Shop::of(&story.book, story.now.at), &of(&story)).map(|sheet| sheet.err())
    };
    assert_eq!(refused(&format!("{BEGUN}{{}}tag 20 stools\n")), Err(Refusal::NeverCovered { left: "0".parse().unwrap() }));
    let bare = "2026-03-02 09:00 -05:00 workshop USD inch\n{}";
    assert_eq!(refused(bare), Err(Refusal::MileageUnknown { currency: Currency::USD }));
    assert_eq!(refused(&format!("{BEGUN}job stools \"Stools\" 10 spec\nspend 200 wood on stools\n")), Ok(Some(Lacks::Price)));
    assert_eq!(refused(&format!("{BEGUN}job stools \"Stools\" 10 spec\ntag 60 stools\n")), Ok(Some(Lacks::Cost)));
    assert_eq!(refused(&format!("{BEGUN}job stools \"Stools\" 10 spec\n")), Ok(Some(Lacks::Both)));
    let story = told(STOOLS);
    let none = Fair { time: Span::ZERO, ..of(&story) };
    assert_eq!(fair(&Shop::of(&story.book, story.now.at), &none), Err(Refusal::NoHours));
}

/// The market of the stands on 18 April: four of five sold.
#[test]
fn earlier_stalls_say_how_many_were_sold() {
    let story = tell(STANDS);
    let found: Vec<_> = past(&Shop::of(&story.book, story.now.at)).iter().map(|it| (it.day.as_ymd(), it.sold, it.there)).collect();
    assert_eq!(found, [((2026, 4, 18), 4, 5)]);
}
