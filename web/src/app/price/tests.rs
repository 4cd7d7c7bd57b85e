//! Price, told as tables: what is tapped, what stands in the book and on the page then.

use super::agree::{AgreeTap, By};
use super::bargain::BargainTap;
use super::deal::DealTap;
use super::gallery::GalleryTap;
use super::parts::PartsTap;
use super::quick::{Field, QuickTap};
use super::tag::{TagTap, What};
use super::*;
use crate::app::news::News;
use crate::app::order::Turned;
use crate::app::shelf::Shelf;
use crate::app::{Common, Msg};
use crate::parts::Place;
use crate::screens::page;
use crate::words::Plain;
use fivebar_core::ledger::decide::{MoneyCommand, PaidOf};
use fivebar_core::ledger::{Device, line};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Clock, Currency, Decimal, Offset, Wall};
use fivebar_core::sheet::account::account;
use fivebar_core::story::{BENCH, STANDS, tell};
use std::rc::Rc;

mod as_asked;
mod brought;
mod buyer_looks;
mod changes;
mod deals;
mod demos;
mod fair;
mod keyboard;
mod lines;
mod lowest;
mod promises;
mod rates;
mod tax;
mod truth;
mod waiting;
mod ways;

/// A maker in the middle of a story.
struct Maker {
    app: App,
    job: Id,
    now: Now,
    orders: Vec<Order>,
}

impl Maker {
    fn told(text: &str, job: &str) -> Maker {
        let story = tell(text);
        assert_eq!(story.refused, []);
        let mut app = App::for_tests(Place::Price);
        let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app.now = story.now;
        let job = story.names.job(job).unwrap();
        Maker { app, job, now: Now { wall: story.now, chance: [9; 10] }, orders: vec![] }
    }

    /// The market of 18 April, three stands left, before anything was guessed.
    fn at_market() -> Maker {
        Maker::told(STANDS.split("12:05 guess").next().unwrap(), "stands")
    }

    /// The shoe bench before its delivery.
    fn before_delivery() -> Maker {
        Maker::told(BENCH.split("# --- Saturday").next().unwrap(), "bench")
    }

    fn say(&mut self, message: Msg) {
        // Of the first byte an id has four bits alone.
        self.now.chance[5] = self.now.chance[5].wrapping_add(1);
        self.orders = self.app.heard(message, self.now);
    }

    fn tap(&mut self, tap: Tap) -> &mut Maker {
        self.say(Msg::Price(tap));
        self
    }

    fn bargain(&mut self, tap: BargainTap) -> &mut Maker {
        self.tap(Tap::Bargain(tap))
    }

    fn money(&self, sum: &str) -> Money {
        Money::whole(sum.parse::<Decimal>().unwrap(), shop(&self.app).job(self.job).unwrap().currency).unwrap()
    }

    fn offer(&mut self, sum: &str) -> &mut Maker {
        let (job, sum) = (self.job, self.money(sum));
        self.tap(Tap::Offer(job)).bargain(BargainTap::Say(sum))
    }

    fn press(&mut self, digits: &str) -> &mut Maker {
        for digit in digits.bytes() {
            let press = if digit.is_ascii_digit() { Press::Digit(digit - b'0') } else { Press::Point };
            self.tap(Tap::Press(press));
        }
        self
    }

    fn html(&self) -> String {
        page(&self.app).html()
    }

    #[track_caller]
    fn shows(&mut self, parts: &[&str]) -> &mut Maker {
        let html = self.html();
        for part in parts {
            assert!(html.contains(part), "{part} in {html}");
        }
        self
    }

    #[track_caller]
    fn hides(&mut self, parts: &[&str]) -> &mut Maker {
        let html = self.html();
        for part in parts {
            assert!(!html.contains(part), "{part} in {html}");
        }
        self
    }

    /// Pieces sold, and what was taken, fees among it.
    fn sold(&self) -> (Count, String, String) {
        let account = account(&shop(&self.app), self.job).unwrap();
        (account.sold.pieces, account.sold.taken.to_string(), account.sold.fees.to_string())
    }
}

#[test]
fn the_list_says_ask_for_one_two_and_three() {
    Maker::at_market().shows(&[
        "Plant stands, ash with cherry pegs",
        "3 left of 5, tag 145",
        "$145",
        "290",
        "435",
        "costs covered",
        "What waiting is worth",
        "by card, tax inside",
        "Show the buyer: Plant stands",
        "They offer…",
    ]);
}

/// What can be said instead stands under pay and hours, the best for an hour first; the best of it to ask for is on the offer itself.
#[test]
fn what_can_be_said_instead_is_listed() {
    let mut maker = Maker::told(STANDS.split("13:10 sell").next().unwrap(), "stands");
    maker.offer("110").shows(&["Offer two for 245:"]).hides(&["What to say instead"]);
    maker.bargain(BargainTap::PayAndHours).shows(&["What to say instead", "Two for 245", "In notes", "an hour"]).hides(&["A later date"]);
    let html = maker.html();
    assert!(html.find("Two for 245") < html.find("In notes"), "{html}");
    Maker::before_delivery().offer("400").bargain(BargainTap::PayAndHours).hides(&["What to say instead"]);
}

/// The paper is the maker's: it says ask, settle and not under; nothing of it is on the face that a buyer sees, not even the way to it.
#[test]
fn inv15_the_list_goes_on_paper_and_nothing_of_it_to_the_buyer() {
    let mut maker = Maker::told(STANDS.split("13:10 sell").next().unwrap(), "stands");
    let job = maker.job;
    maker.shows(&["The list on paper"]).tap(Tap::Paper).hides(&["They offer…", "Not in the list"]);
    maker.shows(&[
        "Plant stands, ash with cherry pegs",
        "3 left of 5, tag 145",
        "$140",
        "280",
        "420",
        "settle",
        "not under",
        "349",
        "by card, tax inside",
    ]);
    maker.tap(Tap::Print);
    assert_eq!(maker.orders, [Order::Print]);
    maker.tap(Tap::Show(job)).shows(&["$145"]).hides(&["settle", "not under", "140", "280", "349", "paper", "Print"]);
    Maker::before_delivery().hides(&["The list on paper"]).tap(Tap::Paper).shows(&["Agreed"]);
}

#[test]
fn the_word_for_an_offer() {
    for (sum, parts) in [
        ("145", ["Yes", "It is what you ask.", "Sold at 145"]),
        ("150", ["Yes", "5 over what you ask.", "Sold at 150"]),
        ("130", ["Say 145", "It pays your rate", "Ask for notes first:"]),
        ("80", ["Below your lowest pay", "Say 145.", "No sale: note 80"]),
        ("20", ["Under what you spent", "covers your costs.", "Sold at 20"]),
    ] {
        Maker::at_market().offer(sum).shows(&parts);
    }
}

#[test]
fn a_settle_of_ones_own_answers_yes() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    maker.tap(Tap::Tag(TagTap::Open(job, What::Settle))).press("130").tap(Tap::Tag(TagTap::Done));
    maker.shows(&["Settle 130 is set by you.", "260", "390"]);
    maker.offer("130").shows(&["Yes", "It is your settle.", "settle"]);
    maker.tap(Tap::Close).offer("135").shows(&["5 over your settle."]);
    maker.tap(Tap::Close).tap(Tap::Tag(TagTap::Open(job, What::Settle))).tap(Tap::Tag(TagTap::Unsettle)).hides(&["set by you"]);
}

#[test]
fn sold_is_one_act_and_is_taken_back_whole() {
    let mut maker = Maker::at_market();
    let (before, offers) = (maker.sold(), shop(&maker.app).job(maker.job).unwrap().selling.offers.len());
    maker.offer("130").bargain(BargainTap::Sold);
    assert_eq!(maker.sold(), (3, "420.00 USD".to_owned(), "11.22 USD".to_owned()));
    maker.shows(&["Sold at 130", "Left per hour, 2 unsold"]);
    // How it was paid is the next offer's, after a new start too.
    assert_eq!(shop(&maker.app).paid_before(), Paid::Card);
    let job = shop(&maker.app).job(maker.job).unwrap();
    assert_eq!((job.selling.offers.len(), job.selling.payments.len()), (offers + 1, 3));
    maker.shows(&["2 left of 5", "Take back: sold at 130"]);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(maker.sold(), before);
    assert_eq!(shop(&maker.app).job(maker.job).unwrap().selling.offers.len(), offers);
    maker.shows(&["3 left of 5", "Do it again"]);
    maker.say(Msg::Common(Common::PutBack));
    assert_eq!(maker.sold().0, 3);
}

#[test]
fn two_in_notes_are_one_sale_without_a_fee() {
    let mut maker = Maker::at_market();
    let (job, fees) = (maker.job, maker.sold().2);
    maker
        .tap(Tap::Offer(job))
        .bargain(BargainTap::Pieces(2))
        .bargain(BargainTap::Paid(Paid::Notes))
        .shows(&["Ask 290", "2 of 3, in notes"]);
    let sum = maker.money("270");
    maker.bargain(BargainTap::Say(sum)).hides(&["Ask for notes first"]).bargain(BargainTap::Sold);
    assert_eq!((maker.sold().0, maker.sold().2), (4, fees));
    // How it was paid stays, how many does not.
    maker.tap(Tap::Offer(job)).shows(&["1 of 1, in notes"]);
}

#[test]
fn the_tag_paid_is_no_offer() {
    let mut maker = Maker::at_market();
    let (job, offers) = (maker.job, shop(&maker.app).job(maker.job).unwrap().selling.offers.len());
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Sold);
    assert_eq!((maker.sold().0, shop(&maker.app).job(job).unwrap().selling.offers.len()), (3, offers));
}

#[test]
fn an_offer_that_comes_to_nothing_is_noted() {
    let mut maker = Maker::at_market();
    maker.offer("110").bargain(BargainTap::NoSale).shows(&["Take back: offer of 110", "3 left of 5"]);
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::PayAndHours).shows(&["Offers heard", "110"]);
}

#[test]
fn pay_and_hours_are_one_tap_further() {
    let mut maker = Maker::at_market();
    maker.offer("130").hides(&["Left per hour"]);
    maker.bargain(BargainTap::PayAndHours).shows(&[
        "You get",
        "−6.78",
        "−3.48",
        "119.74",
        "Left per hour",
        "After workshop costs",
        "Hours",
    ]);
    maker.hides(&["No tax and no card fee"]);
}

#[test]
fn the_pad_takes_a_comma_and_refuses_what_is_no_sum() {
    let mut maker = Maker::at_market();
    maker.app.speech = Rc::new(Plain { sign: Sign::Comma, ..Plain::default() });
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Pad).press("127.5").bargain(BargainTap::PadDone).shows(&["Sold at 127.50"]);
    maker.bargain(BargainTap::Pad).bargain(BargainTap::PadDone).shows(&["Nothing is typed yet."]);
    maker.bargain(BargainTap::PadAway).shows(&["Sold at 127.50"]);
}

#[test]
fn agreed_jobs_answer_first() {
    let mut maker = Maker::before_delivery();
    let job = maker.job;
    maker.shows(&["made to order", "Agreed, delivered", "€460", "184.00", "276.00", "by Sat 23 May"]).hides(&["3 left"]);
    maker.tap(Tap::Offer(job)).shows(&["Agreed 460", "276 due."]).hides(&["Sold at"]);
    maker.bargain(BargainTap::PayAndHours).shows(&["€13.16"]);
    let sum = maker.money("430");
    maker.bargain(BargainTap::PayAndHours).bargain(BargainTap::Carried(Carried::Fetched)).bargain(BargainTap::Say(sum));
    maker.shows(&["Change the order to 430"]).bargain(BargainTap::PayAndHours).shows(&["€14.65"]);
}

#[test]
fn day_one_needs_no_job_and_writes_nothing() {
    let mut maker = Maker::at_market();
    maker.app = App::for_tests(Place::Price);
    maker.shows(&["Hours?", "Spent?", "They offer?", "What it leaves"]);
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours)));
    for figure in ["10", "50", "250"] {
        maker.press(figure).tap(Tap::Quick(QuickTap::Done));
    }
    maker.shows(&["$20.00", "Left per hour", "No tax and no card fee are set", "How you are paid"]);
    assert_eq!((maker.app.own.book.len(), maker.app.own.last_act), (0, None));
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours))).press(".").tap(Tap::Quick(QuickTap::Done)).shows(&["Not taken"]);
    maker.tap(Tap::Quick(QuickTap::Clear)).hides(&["$20.00"]);
    // Half an hour is typed from its nothing on: no hours are refused before they are said.
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Spent))).press("50").tap(Tap::Quick(QuickTap::Done));
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Offer))).press("250").tap(Tap::Quick(QuickTap::Done));
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours)));
    for (typed, shown) in [("0", false), (".", false), ("5", true)] {
        maker.press(typed).hides(&["Not worked out"]);
        assert_eq!(page(&maker.app).html().contains("$400.00"), shown, "{typed}");
    }
    maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours))).press("0").tap(Tap::Quick(QuickTap::Done)).shows(&["no hours"]);
}

/// Glue and an hour are written down, and the pile that its wood is of has no size: only what that cost is named.
#[test]
fn what_a_haul_cost_is_all_that_is_named_where_the_rest_is_known() {
    let story = "2026-03-01 09:00 -05:00 workshop USD inch\npile plain\ncount 40 plain\n\
        job stool \"Stool\" 1 spec\ntake 10 plain for stool\nspend 12 glue on stool\nrecall \"Sand\" make on stool 08:00 to 09:00\n";
    Maker::told(story, "stool")
        .shows(&["Not known yet: its price, your rate, what its haul cost."])
        .hides(&["what you spent", "the hours"]);
}

#[test]
fn a_piece_without_a_price_names_what_is_missing() {
    let mut maker = Maker::told("2026-03-01 09:00 -05:00 workshop USD inch\njob stool \"Stool\" 1 spec", "stool");
    maker.shows(&["Not known yet: its price, what you spent, the hours, your rate.", "Set its price"]);
    let job = maker.job;
    maker.tap(Tap::Tag(TagTap::Open(job, What::Tag))).press("80").tap(Tap::Tag(TagTap::Done)).shows(&["$80", "They offer…", "no tax set"]);
    maker.offer("60").shows(&["No word yet", "What you spent on it is not noted yet."]);
    maker.bargain(BargainTap::PayAndHours).shows(&["Left per hour is not known", "No tax and no card fee are set"]);
    maker.tap(Tap::Close).offer("80").shows(&["Yes"]).bargain(BargainTap::Sold);
    assert_eq!(maker.sold().0, 1);
}

#[test]
fn the_offer_carries_no_running_strip() {
    let mut maker = Maker::at_market();
    maker.shows(&["class=\"strip\""]).offer("130").hides(&["class=\"strip\"", "In no copy"]);
}

/// What no buyer may read: sums, hours, words and places of the maker's side.
const PRIVATE: [&str; 19] = [
    "27.78",
    "27.79",
    "25.51",
    "costs",
    "Costs",
    "settle",
    "Settle",
    "rate",
    "lowest",
    "per hour",
    "Sold",
    "Take back",
    "left of",
    "Pay and hours",
    "Count",
    "Workshop",
    "market",
    "saved",
    "130",
];

#[test]
fn private_figures_are_never_large() {
    let html = Maker::at_market().offer("130").html();
    for large in ["t60", "t80", "fig80"] {
        assert!(!html.contains(large), "{large}");
    }
}

#[test]
fn the_scale_keeps_still_under_the_finger() {
    let ends = |html: &str| {
        let of = |name: &str| html.split(name).nth(1).unwrap().split('"').nth(1).unwrap().to_owned();
        (of("aria-valuemin"), of("aria-valuemax"))
    };
    let one = ends(&Maker::at_market().offer("130").html());
    assert_eq!(one, ends(&Maker::at_market().offer("20").html()));
    assert_eq!(one, ends(&Maker::at_market().offer("400").html()));
}

#[test]
fn the_place_key_leads_back_to_the_list() {
    let mut maker = Maker::at_market();
    maker.offer("130").say(Msg::Go(Place::Price));
    maker.shows(&["For sale"]);
    assert_eq!(maker.app.begins_with().0, Currency::USD);
}

#[test]
fn price_points_are_those_of_the_till() {
    use crate::app::workshop::Tap::Point;
    use fivebar_core::money::point::Points;
    let mut maker = Maker::at_market();
    maker.offer("130").shows(&["−5", "+5"]).say(Msg::Workshop(Point(Points::Ten)));
    maker.shows(&["−10", "+10"]);
}
