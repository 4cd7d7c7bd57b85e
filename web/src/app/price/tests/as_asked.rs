//! What a sum is of is said beside it: with tax, under the lowest pay, late, what goes off first. And one step back is one step.

use super::*;
use crate::app::price::waiting::WaitTap;
use crate::app::price::ways::{Field as WaysField, WaysTap};
use fivebar_core::sheet::waiting::Question;

const SHOP: &str = "2026-05-04 08:00 -04:00 workshop USD inch\n";
const TOP: &str = "till tax 0.0825 top fee 0.026 fixed 0.10 point 5\nrate pay 20 lowest 16 hours 100 logged 100\n";

fn stand(more: &str) -> Maker {
    Maker::told(&format!("{SHOP}{TOP}{more}"), "stand")
}

/// Notes were chosen for a buyer, and the last sale was by card: the page loaded anew finds notes, as the phone kept them; a transfer is of one buyer.
#[test]
fn the_way_of_being_paid_stays_as_it_was_chosen_on_the_phone() {
    use crate::app::here::Here;
    use crate::app::order::{Choice, Order};
    let story = "job stand \"Stand\" 5 spec\ntag 85 stand\nsell 1 stand for 92.01 card fetched\n";
    let pressed = |word: &str| format!("aria-pressed=\"true\"><span>{word}");
    let mut maker = stand(story);
    let job = maker.job;
    maker.tap(Tap::Offer(job)).shows(&[&pressed("Card")]).bargain(BargainTap::Paid(Paid::Notes)).shows(&[&pressed("Notes")]);
    let kept = |maker: &Maker, value: &str| maker.orders.contains(&Order::Choose { key: Choice::Paid, value: value.into() });
    assert!(kept(&maker, "notes"));
    maker.bargain(BargainTap::Paid(Paid::Bank));
    assert!(!maker.orders.iter().any(|order| matches!(order, Order::Choose { .. })));
    let mut anew = stand(story);
    anew.app.told(News::Here(Here { paid: Some(Paid::Notes), ..Here::default() }));
    anew.tap(Tap::Offer(job)).shows(&[&pressed("Notes")]);
}

/// 85 before 8.25 % is 92.01 with it: the tag is said as before tax, every other sum of the list, its paper and the offer as with it.
#[test]
fn sums_with_tax_say_so() {
    let mut maker = stand("job stand \"Stand\" 5 spec\ntag 85 stand\n");
    let job = maker.job;
    maker.shows(&["85 before tax", "92.01", ">with tax</caption>"]);
    maker.tap(Tap::Paper).shows(&[">with tax</caption>"]).tap(Tap::Close);
    maker.tap(Tap::Offer(job)).shows(&["They offer, with tax"]);
    let mut inside = Maker::told(&format!("{SHOP}till tax 0.0825 inside\njob stand \"Stand\" 5 spec\ntag 85 stand\n"), "stand");
    inside.hides(&["caption", "before tax"]);
}

/// Two hours at 16 and 3 of glue need 39.10 by card: under it is said, whatever waiting is worth, on the list and of an offer.
#[test]
fn under_the_lowest_pay_is_said_and_marked() {
    let work = "job stand \"Stand\" 1 spec\ntag 85 stand\nspend 3 glue on stand\nstart \"shape\" make on stand\n10:00 stop\n";
    let mut maker = stand(&format!("{work}guess stand asks 0.3 buys 0.1 at 92.01 by 2026-05-20 end 25\n"));
    maker.shows(&[">lowest pay</th>", "<span>40</span>"]).hides(&["not under"]);
    maker.tap(Tap::Paper).shows(&[">lowest pay</th>", "<span>40</span>"]).hides(&["not under"]).tap(Tap::Close);
    maker
        .offer("37")
        .shows(&["Below your lowest pay", "Your lowest pay needs 40.", "<tspan>lowest pay"])
        .hides(&["go on talking"])
        .tap(Tap::Close);
    let job = maker.job;
    maker
        .tap(Tap::Waiting(WaitTap::Open(job)))
        .shows(&["Your lowest pay needs 40.", "lowest pay", "waiting is worth"])
        .hides(&["not under"]);
}

/// Before a tag is set the price by the rate is no tag of the maker's.
#[test]
fn a_tag_that_is_not_set_is_none_of_yours() {
    let mut maker = stand("job stand \"Stand\" 1 spec\nspend 10 glue on stand\nplan \"shape\" make 60 min for stand\n");
    let job = maker.job;
    maker.tap(Tap::Ways(WaysTap::Open(job))).shows(&[
        "At a tag of ",
        ", by your rate, it pays",
        "3 times 10.00 is 30.00 and 32.48 with tax",
    ]);
    maker.hides(&["your tag of", "Back to the list"]).tap(Tap::Ways(WaysTap::Like)).shows(&["What was its price, with tax?"]);
    maker.app.back(maker.now);
    maker.shows(&["A like piece elsewhere"]);
    maker.tap(Tap::Ways(WaysTap::Pad(WaysField::Keeps)));
    maker.app.back(maker.now);
    maker.shows(&["A like piece elsewhere"]);
}

/// 250 by card: 250 - 250 / 1.0825 is 19.05 of tax, 2.6 % and 0.10 are 6.60 of fee.
#[test]
fn three_figures_say_what_goes_off_first() {
    let mut maker = stand("job stand \"Stand\" 1 spec\ntag 85 stand\n");
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours)));
    for figure in ["10", "50", "250"] {
        maker.press(figure).tap(Tap::Quick(QuickTap::Done));
    }
    maker.shows(&["Paid by card: 19.05 of tax and 6.60 of fee go off it first."]);
}

#[test]
fn a_day_that_has_passed_is_late() {
    let mut maker =
        stand("job stand \"Stand\" 1 order\nagree 100 for 1 stand fetched due 2026-05-06\n2026-05-06 20:00 spend 1 glue on stand\n");
    maker.shows(&["by Wed 6 May"]).hides(&["late"]);
    let mut maker =
        stand("job stand \"Stand\" 1 order\nagree 100 for 1 stand fetched due 2026-05-06\n2026-05-07 08:00 spend 1 glue on stand\n");
    maker.shows(&["late: it was for Wed 6 May"]);
}

/// One of five buys: at a fifth less five times as many are all of them.
#[test]
fn more_than_all_who_ask_is_refused_by_its_limit() {
    let mut maker = stand("job stand \"Stand\" 1 spec\ntag 85 stand\n");
    let job = maker.job;
    maker.tap(Tap::Waiting(WaitTap::Open(job)));
    for figure in ["3", "1", "10"] {
        maker.press(figure).tap(Tap::Waiting(WaitTap::Done));
    }
    maker.shows(&["10 times as many are more than all who ask. At most 5 times are taken.", "Say fewer times."]);
    maker.press("5").tap(Tap::Waiting(WaitTap::Done)).shows(&["By when should it be sold?"]);
}

/// Five of five buy, and no more can: how many times as many is not asked, and what was said of it goes with that.
#[test]
fn where_all_buy_no_more_is_asked() {
    let mut maker = stand("job stand \"Stand\" 1 spec\ntag 85 stand\n");
    let job = maker.job;
    maker.tap(Tap::Waiting(WaitTap::Open(job)));
    for figure in ["3", "5"] {
        maker.press(figure).tap(Tap::Waiting(WaitTap::Done));
    }
    maker.shows(&["By when should it be sold?"]).tap(Tap::Waiting(WaitTap::Weeks(4))).press("20").tap(Tap::Waiting(WaitTap::Done));
    maker.shows(&["all buy already"]).hides(&["not said</", "times as many"]).tap(Tap::Waiting(WaitTap::Save));
    let told = |maker: &Maker| shop(&maker.app).job(job).unwrap().selling.guesses.k;
    assert_eq!(told(&maker), Some(Decimal::TWO));
    let guessed = "guess stand asks 3 buys 0.2 at 92.01 k 5 by 2026-06-01 end 32\n";
    let mut maker = stand(&format!("job stand \"Stand\" 1 spec\ntag 85 stand\n{guessed}"));
    maker.tap(Tap::Waiting(WaitTap::Open(job))).tap(Tap::Waiting(WaitTap::Change)).tap(Tap::Waiting(WaitTap::Ask(Question::Buys)));
    maker.press("5").tap(Tap::Waiting(WaitTap::Done)).shows(&["all buy already"]).tap(Tap::Waiting(WaitTap::Save));
    assert_eq!(told(&maker), Some(Decimal::TWO));
}

/// One step back leaves what lies over a page, then the page, and never the place.
#[test]
fn one_step_back_is_one_step() {
    let mut maker = stand("job stand \"Stand\" 1 spec\ntag 85 stand\nguess stand asks 3 buys 0.3 at 92.01 by 2026-06-01 end 32\n");
    let job = maker.job;
    let back = |maker: &mut Maker| {
        let now = maker.now;
        maker.app.back(now);
        assert_eq!(maker.app.place, Place::Price);
    };
    maker.tap(Tap::Offer(job)).bargain(BargainTap::PayAndHours).shows(&["price/pay"]);
    back(&mut maker);
    maker.shows(&["\"price/offer\""]).bargain(BargainTap::Pad).shows(&["price/pad"]);
    back(&mut maker);
    maker.shows(&["\"price/offer\""]);
    back(&mut maker);
    maker.shows(&["\"price\""]).tap(Tap::Waiting(WaitTap::Open(job))).tap(Tap::Waiting(WaitTap::Change)).hides(&["\"price/waiting\""]);
    back(&mut maker);
    maker.shows(&["\"price/waiting\""]);
    back(&mut maker);
    assert!(!maker.app.is_deep());
}

/// The keys of the scale go by what is worth a word at that price: 500 yen at 30,000, not 5; 5 euros at 145, as the maker's points are; 0.2 dinars.
#[test]
fn a_key_goes_by_the_size_of_the_price() {
    for (currency, tag, step) in [("JPY", "30000", "500"), ("EUR", "145", "5"), ("KWD", "12.5", "0.2")] {
        let story = format!("2026-05-04 08:00 +02:00 workshop {currency} metric\njob stool \"Stool\" 1 spec\ntag {tag} stool\n");
        let mut maker = Maker::told(&story, "stool");
        let job = maker.job;
        maker.tap(Tap::Offer(job)).shows(&[&format!("\u{2212}{step}<"), &format!("+{step}<")]);
    }
}
