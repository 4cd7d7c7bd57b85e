//! Not under as it is shown, through the book: never below what the pieces are worth in the end, and never rising as days run out.

use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::money::charge::charge_for;
use fivebar_core::money::offer::Verdict;
use fivebar_core::quantity::{Currency, Decimal, Moment, Money, Span};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::offer::{Asking, OfferSheet, offer};
use fivebar_core::sheet::price::{ForPieces, Least, price};
use fivebar_core::sheet::waiting::{Prospect, Stands, known, later, waiting};
use fivebar_core::story::{Story, tell};
use proptest::prelude::*;

fn usd(text: &str) -> Money {
    Money::book(text.parse().unwrap(), Currency::USD).unwrap()
}

fn told(text: &str) -> Story {
    let story = tell(&format!("2026-05-04 08:00 -04:00 workshop USD inch\n{text}"));
    assert_eq!(story.refused, [], "{text}");
    story
}

fn offered(story: &Story, at: Moment, (n, paid): (u32, Paid), sum: Option<&str>) -> OfferSheet {
    let asking = Asking { n, paid, carried: Carried::Delivered, tax: None };
    offer(&Shop::of(&story.book, at), story.names.job("stand").unwrap(), asking, sum.map(usd)).unwrap()
}

fn prospect(story: &Story) -> Prospect {
    let shop = Shop::of(&story.book, story.now.at);
    let id = story.names.job("stand").unwrap();
    let known = known(&shop, &shop.job(id).unwrap()).unwrap().unwrap();
    while !known.has_band() {
        known.doubt();
    }
    match waiting(&shop, id, Paid::Card).unwrap().stands {
        Stands::Found(prospect) => *prospect,
        stands => panic!("{stands:?}"),
    }
}

fn rows(story: &Story) -> Vec<ForPieces> {
    price(&Shop::of(&story.book, story.now.at), Paid::Card).unwrap().for_sale.remove(0).rows
}

const TILL: &str = "till tax 0.055 inside fee 0.026 fixed 0.10 point 5\n";

/// Three stands at a tag of 145, tax inside, of which one brings so much in the end.
fn market(end: &str) -> Story {
    let guess = format!("guess stand asks 1.5 buys 0.25 at 145 k 2 by 2026-06-01 end {end}\n");
    told(&format!("{TILL}job stand \"Stand\" 3 spec\ntag 145 stand\n{guess}"))
}

/// Of a charge by card 1 / 1.055 - 0.026 = 0.92187 less 0.10 is kept: 140 in the end are as good as (140 + 0.10) / 0.92187 = 151.97 of it, for two
/// (280 + 0.10) / 0.92187 = 303.84; 300 as good as 325.54 and 650.96. In notes 140 x 1.055 = 147.70.
#[test]
fn an_end_that_brings_more_than_the_tag_has_a_word_of_its_own() {
    for (end, one, two, notes) in [("140", "152", "304", "148"), ("300", "326", "651", "317")] {
        let story = market(end);
        let page = prospect(&story);
        assert_eq!((page.under, page.end, page.band, page.steps[0].ask), (usd(one), usd(one), None, usd("145")), "{end}");
        for (n, paid, end) in [(1, Paid::Card, one), (2, Paid::Card, two), (1, Paid::Notes, notes)] {
            let sheet = offered(&story, story.now.at, (n, paid), Some("145"));
            let standing = sheet.standing;
            assert_eq!((standing.not_under, standing.band, sheet.settle, sheet.say), (Some(usd(end)), None, None, None), "{n} {paid:?}");
            assert_eq!(sheet.verdict, Some(Verdict::EndBringsMore { end: usd(end) }), "{n} {paid:?}");
            assert_eq!(offered(&story, story.now.at, (n, paid), Some(end)).verdict, Some(Verdict::Yes), "{n} {paid:?}");
        }
        let listed: Vec<_> = rows(&story).iter().map(|row| (row.not_under, row.settle, row.midway)).take(2).collect();
        assert_eq!(listed, [(Some(usd(one)), None, None), (Some(usd(two)), None, None)], "{end}");
        let shop = Shop::of(&story.book, story.now.at);
        assert_eq!(later(&shop, &shop.job(story.names.job("stand").unwrap()).unwrap()), Ok(None), "nothing later is better");
    }
}

/// Yes is not said by a settle that lies under the end, and nothing is offered together for less than that.
#[test]
fn a_settle_of_the_makers_own_is_no_yes_under_the_end() {
    let guess = "guess stand asks 1.5 buys 0.25 at 145 k 2 by 2026-06-01 end 140\nsettle 130 stand\nspend 5 glue on stand\n";
    let story = told(&format!("{TILL}job stand \"Stand\" 3 spec\ntag 145 stand\nstart \"shape\" make on stand\n10:00 stop\n{guess}"));
    let sheet = offered(&story, story.now.at, (1, Paid::Card), Some("135"));
    assert_eq!((sheet.verdict, sheet.settle), (Some(Verdict::EndBringsMore { end: usd("152") }), Some(usd("130"))));
    assert!(
        sheet.concessions.iter().all(|way| !matches!(way.ask, fivebar_core::sheet::offer::Ask::Together(_))),
        "{:?}",
        sheet.concessions
    );
}

/// 135 in the end are (135 + 0.10) / 0.92187 = 146.55 by card, over the tag, and 135 x 1.055 = 142.43 in notes, under it.
#[test]
fn it_goes_by_how_the_buyer_pays() {
    let story = market("135");
    let under = |paid| offered(&story, story.now.at, (1, paid), None).standing.not_under;
    assert_eq!((under(Paid::Card), under(Paid::Notes)), (Some(usd("147")), Some(usd("143"))));
    assert_eq!(offered(&story, story.now.at, (1, Paid::Notes), Some("145")).verdict, Some(Verdict::Yes));
}

/// A tag that ends between two whole units: 88.70 in the end are (88.70 + 0.10) / 0.92187 = 96.33, so 97 where that lies under what is asked, but
/// no more than the tag of 96.50 that holds it.
#[test]
fn a_whole_unit_over_the_tag_is_no_end_over_it() {
    let guess = "guess stand asks 1 buys 0.25 at 96.50 k 2 by 2026-06-01 end 88.70\n";
    let story = told(&format!("{TILL}job stand \"Stand\" 1 spec\ntag 96.50 stand\n{guess}"));
    let page = prospect(&story);
    assert_eq!((page.under, page.end), (usd("96.50"), usd("96.50")));
    assert_eq!(offered(&story, story.now.at, (1, Paid::Card), Some("96.50")).verdict, Some(Verdict::Yes));
}

/// Two hours and 3 of glue for each of two at so much an hour at least, a tag of 145, an end of 25 and maybe a settle: the least that a row says is no
/// "no" on the page of the offer, of one as of two, and a cent less is one.
#[test]
fn the_least_of_a_row_is_what_the_offer_says_no_under() {
    let mut met = [false; 3];
    for (pay, end) in ["2", "16", "40", "62", "70", "90"].into_iter().flat_map(|pay| [(pay, "25"), (pay, "130"), (pay, "140")]) {
        for set in ["", "settle 60 stand\n", "settle 110 stand\n"] {
            let guess = format!("guess stand asks 0.5 buys 0.1 at 145 by 2026-06-01 end {end}\n{set}");
            let work = format!(
                "rate pay 95 lowest {pay} hours 100 logged 100\njob stand \"Stand\" 2 spec\ntag 145 stand\nspend 6 glue on stand\n"
            );
            let story = told(&format!("{TILL}{work}start \"shape\" make on stand\n12:00 stop\nabout stand pieces 2\n{guess}"));
            for row in rows(&story) {
                let says = |sum: Money| offered(&story, story.now.at, (row.n, Paid::Card), Some(&sum.amount().to_string()));
                let is_no = |sum: Money| {
                    let no = |verdict| {
                        matches!(
                            verdict,
                            Verdict::WaitingIsBetter { .. }
                                | Verdict::BelowLowestPay { .. }
                                | Verdict::EndBringsMore { .. }
                                | Verdict::BelowYourRate { .. }
                        )
                    };
                    no(says(sum).verdict.unwrap())
                };
                let at = format!("{} of pay {pay}, end {end}, {set}: {row:?}", row.n);
                let least = row.least().unwrap();
                assert!(!is_no(least.sum()) && is_no(least.sum().minus(usd("0.01")).unwrap()), "{at}");
                met[match least {
                    Least::NotUnder(_) => 0,
                    Least::LowestPay(_) => 1,
                    Least::Settled(_) => 2,
                }] = true;
            }
        }
    }
    assert_eq!(met, [true; 3]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]
    /// Whatever the tag and the end, for a fixed number that is left: never below the end as a charge, and never more on a later day.
    #[test]
    fn not_under_as_shown_never_rises_and_never_falls_below_the_end(
        (tag, end) in (500_i64..60_000, 0_i64..60_000), pieces in 1_u32..4, (asks, buys) in (0_i64..200, 1_i64..=100),
        (point, side) in (0_usize..4, 0_usize..3), (day, more) in (0_i64..56, 1_i64..=56),
    ) {
        let (tag, end) = (Decimal::new(tag, 2), Decimal::new(end, 2));
        let side = ["tax 0.055 inside", "tax 0.0825 top", "tax 0.13 top cash 0.05"][side];
        let till = format!("till {side} fee 0.026 fixed 0.10 point {}\n", ["5", "minor", "9", "1"][point]);
        let guess = format!("guess stand asks {} buys {} at {tag} by 2026-06-29 end {end}", Decimal::new(asks, 1), Decimal::new(buys, 2));
        let story = told(&format!("{till}job stand \"Stand\" {pieces} spec\ntag {tag} stand\n{guess}\n"));
        let days = [day, (day + more).min(55)].map(|days| story.now.at.plus(Span::minutes(days * 24 * 60)));
        for (n, paid) in (1..=pieces).flat_map(|n| [(n, Paid::Card), (n, Paid::Notes), (n, Paid::Bank)]) {
            let [first, last] = days.map(|at| offered(&story, at, (n, paid), None).standing.not_under.unwrap());
            let shop = Shop::of(&story.book, story.now.at);
            let terms = shop.terms_of(&shop.job(story.names.job("stand").unwrap()).unwrap(), paid).take().unwrap();
            let end = Money::book(charge_for(end * Decimal::from(n), terms).unwrap(), Currency::USD).unwrap();
            prop_assert!(last.amount() <= first.amount(), "{n} {paid:?}: {first}, then {last}");
            prop_assert!(end.amount() <= last.amount(), "{n} {paid:?}: {last}, and {end} in the end");
        }
    }
}
