//! What waiting is worth, told as tables: the guesses one at a time, the page they give, who asked.

mod guessed;

use super::*;
use crate::app::order::Order;
use crate::app::price::waiting::WaitTap;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::waiting::Question;

impl Maker {
    /// The market of 18 April, three stands left, ten minutes after it was guessed.
    fn guessed() -> Maker {
        let mut maker = Maker::told(STANDS.split("13:10 sell").next().unwrap(), "stands");
        maker.now.wall.at = maker.now.wall.at.plus(Span::minutes(10));
        maker.app.now = maker.now.wall;
        maker
    }

    /// The same day once a third was sold: two left, guessed at 12:40.
    fn two_left() -> Maker {
        let sold = STANDS.split("12:05 guess").next().unwrap();
        let guess = "guess stands asks 1.5 buys 0.25 at 145 k 2 by 2026-05-16 end 82.46";
        Maker::told(&format!("{sold}12:30 sell 1 stands for 130 notes\n12:40 {guess}"), "stands")
    }

    fn wait(&mut self, tap: WaitTap) -> &mut Maker {
        self.tap(Tap::Waiting(tap))
    }

    fn guesses(&mut self) -> &mut Maker {
        let job = self.job;
        self.wait(WaitTap::Open(job))
    }

    fn answer(&mut self, digits: &str) -> &mut Maker {
        self.press(digits).wait(WaitTap::Done)
    }

    /// The page is painted, where that was asked for.
    fn painted(&mut self) -> &mut Maker {
        assert!(self.orders.contains(&Order::Painted), "{:?}", self.orders);
        while self.orders.contains(&Order::Painted) {
            self.orders = self.app.told(News::Painted);
        }
        self
    }

    /// A buyer names this sum on the offer that is open.
    fn say_sum(&mut self, sum: &str) -> &mut Maker {
        let sum = self.money(sum);
        self.bargain(BargainTap::Say(sum))
    }

    fn asked(&self) -> usize {
        shop(&self.app).job(self.job).unwrap().selling.asked.len()
    }
}

/// A settle that was set under what waiting is worth is a yes: then no page says of the other "not under". A settle over it leaves it so.
#[test]
fn a_settle_set_under_what_waiting_is_worth_is_the_one_that_holds() {
    let mut maker = Maker::guessed();
    maker.guesses().painted().shows(&["not under", "101"]).tap(Tap::Close);
    let set = |maker: &mut Maker, sum: &str| {
        let job = maker.job;
        maker.tap(Tap::Tag(TagTap::Open(job, What::Settle))).press(sum).tap(Tap::Tag(TagTap::Done));
    };
    set(&mut maker, "90");
    maker.shows(&["waiting is worth", ">101<"]).hides(&["not under", "Not under"]);
    maker.offer("95").shows(&["Yes", "5 over your settle, and 6 under what waiting is worth"]).hides(&["not under"]).tap(Tap::Close);
    maker.guesses().shows(&["waiting is worth", "From 90 on, where you settle, it is a yes."]).hides(&["not under"]).tap(Tap::Close);
    set(&mut maker, "110");
    // Three of them are settled at 330, and waiting is worth 349: what is a yes is what they are not sold under.
    maker.shows(&["not under", ">101<", ">212<", ">330<"]).hides(&[">349<"]).offer("95").shows(&["not under"]);
}

#[test]
fn without_guesses_the_marks_decide_and_waiting_is_a_key_away() {
    let mut maker = Maker::at_market();
    maker.shows(&["$145", "290", "435", "costs covered", "What waiting is worth"]).hides(&["not under", "Someone asked"]);
    maker.offer("80").shows(&["Below your lowest pay"]).hides(&["What waiting is worth"]);
}

/// Midway between what is asked and what waiting is worth lies inside the band of 96 to 132, and is a yes all the same, as the offer says.
#[test]
fn where_it_is_settled_inside_the_band_is_said_to_be_a_yes() {
    let mut maker = Maker::two_left();
    maker.app.here.paid = Some(Paid::Card);
    maker.guesses().painted().shows(&["96 to 130: your call", "where you settle, it is a yes."]);
    let html = maker.html();
    let before = html.split(" on, where you settle").next().unwrap();
    let settle = before.rsplit("From ").next().unwrap().to_owned();
    maker.tap(Tap::Close).offer(&settle).shows(&["Yes"]);
}

/// 140 is asked by now, and the tag says 145: whoever shows the phone round is told. Without guesses the tag is asked, and nothing is said.
#[test]
fn what_a_buyer_sees_is_said_where_less_is_asked() {
    let mut maker = Maker::guessed();
    maker.shows(&["$140", "A buyer sees 145 on it until its tag is set to what is asked by now."]);
    Maker::at_market().hides(&["A buyer sees"]);
}

#[test]
fn with_guesses_the_list_says_not_under() {
    let mut maker = Maker::guessed();
    maker.shows(&["$140", "280", "420", "not under", "101", "212", "349", "Someone asked", "Did not turn up", "Asking price"]);
    let job = maker.job;
    maker.tap(Tap::Tag(TagTap::Open(job, What::Settle))).press("130").tap(Tap::Tag(TagTap::Done));
    maker.shows(&["Settle 130 is set by you. Midway is 120."]);
    maker.offer("130").shows(&["It is your settle, and 29 more than waiting is worth."]);
}

/// By 200 % text on the smallest phone the band's own words are wider than its card: the two sums stand alone.
#[test]
fn the_band_stays_within_its_card() {
    for (width, shows, hides) in [(390.0, "96 to 130: your call<", ">96 to 130<"), (160.0, ">96 to 130<", "your call<")] {
        let mut maker = Maker::two_left();
        (maker.app.here.paid, maker.app.page) = (Some(Paid::Card), crate::parts::Page::new(width));
        maker.guesses().painted().shows(&["Too close", shows]).hides(&[hides]);
    }
}

/// Drawing 16, two left, its figures by a solver outside this code.
#[test]
fn the_page_says_steps_not_under_and_chances() {
    let mut maker = Maker::two_left();
    maker.app.here.paid = Some(Paid::Card);
    maker.guesses().shows(&[
        "2 left",
        "About 6 more will ask by Sat 16 May.",
        "At 145 one in four buys.",
        "$145",
        ">140<",
        ">135<",
        "not under",
        ">112<",
        ">90<",
        "Ask 145 until Sat 2 May.",
        "1 chance in 2 of selling both, 1 in 5 of selling none.",
        "The band of doubt is being reckoned.",
        "are not counted",
    ]);
    let known = "Not under 112, known no nearer than 96 to 132: from 96 to 130 it is your call.";
    maker.painted().shows(&["96 to 130: your call", known, "The band comes from your guesses."]).hides(&["being reckoned"]);
    // It was reckoned: nothing is asked of the phone again.
    maker.wait(WaitTap::Change).wait(WaitTap::Away);
    assert!(!maker.orders.contains(&Order::Painted));
}

#[test]
fn the_word_in_front_of_a_buyer() {
    let mut maker = Maker::guessed();
    let job = maker.job;
    maker.tap(Tap::Offer(job)).shows(&["Ask 140", "Sold at 140", "What waiting is worth"]).painted();
    for (sum, parts) in [
        ("130", ["Yes", "10 over the settle as reckoned, and 29 more than waiting is worth."]),
        ("101", ["Too close", "Not under 101, known no nearer than "]),
        ("70", ["Waiting is better", "Say 140."]),
    ] {
        let sum = maker.money(sum);
        maker.bargain(BargainTap::Say(sum)).shows(&parts);
    }
}

/// On the further page: what later brings, and with what chance; nothing of it before an offer, or for several at once.
#[test]
fn an_offer_stands_beside_what_later_brings() {
    let mut maker = Maker::guessed();
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::PayAndHours).hides(&["or about"]);
    let sum = maker.money("120");
    maker.bargain(BargainTap::PayAndHours).bargain(BargainTap::Say(sum)).bargain(BargainTap::PayAndHours);
    maker.shows(&["120 now, or about 138 later for the next, with 1 chance in 6 of selling none."]);
    maker.bargain(BargainTap::PayAndHours).bargain(BargainTap::Pieces(2)).bargain(BargainTap::Say(sum)).bargain(BargainTap::PayAndHours);
    maker.hides(&["or about"]);
}

/// A tax that is chosen for one buyer has a band of its own, reckoned once; and with the tap back the first is there at once.
#[test]
fn the_band_comes_with_another_tax_too() {
    use fivebar_core::ledger::fold::TaxBy;
    let mut maker = Maker::guessed();
    let sum = maker.money("101");
    let job = maker.job;
    maker.tap(Tap::Offer(job)).painted().bargain(BargainTap::Tax(TaxBy::Untaxed));
    let mut asked = 0;
    while asked < 200 && maker.orders.contains(&Order::Painted) {
        asked += 1;
        maker.html();
        maker.orders = maker.app.told(News::Painted);
    }
    assert!((1..200).contains(&asked), "{asked}: it comes to an end");
    maker.bargain(BargainTap::Say(sum)).shows(&["your call"]).bargain(BargainTap::Tax(TaxBy::Usual));
    assert!(!maker.orders.contains(&Order::Painted), "it was reckoned before");
}

/// One key says what became of the sum that was said back: they left, or they took it, with the offer noted in the same act.
#[test]
fn what_was_said_back_is_kept() {
    let mut maker = Maker::guessed();
    let (job, offer, said) = (maker.job, maker.money("70"), maker.money("140"));
    maker.tap(Tap::Offer(job)).hides(&["they left"]).bargain(BargainTap::Say(offer)).shows(&["Show the buyer"]);
    maker.hides(&["they left"]).bargain(BargainTap::PayAndHours).shows(&["I said 140", "they left", "they took it"]);
    maker.bargain(BargainTap::Left(said)).shows(&["Take back: offer of 70"]);
    let offers = |maker: &Maker| shop(&maker.app).job(job).unwrap().selling.offers.iter().map(|o| (o.sum, o.said)).collect::<Vec<_>>();
    assert_eq!(offers(&maker), [(offer, Some(said))]);
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Say(offer)).bargain(BargainTap::Took(said)).shows(&["Take back: sold at 140"]);
    assert_eq!(offers(&maker), [(offer, Some(said)); 2]);
    let sold = |maker: &Maker| shop(&maker.app).job(job).unwrap().selling.sales.last().map(|sale| sale.sum);
    assert_eq!(sold(&maker), Some(said));
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!((offers(&maker).len(), shop(&maker.app).job(job).unwrap().selling.sales.len()), (1, 2));
}

/// What is asked has come down to 140: that is what those heard who ask.
#[test]
fn someone_asked_is_at_what_is_asked_now() {
    let mut maker = Maker::guessed();
    maker.shows(&["at 140"]).guesses().shows(&["at 140, and left"]).hides(&["at 145, and left"]);
}

/// After a sale: what an hour has with the rest unsold, and if they go at what is asked.
#[test]
fn the_rest_of_a_batch_has_two_figures() {
    let mut maker = Maker::guessed();
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Sold);
    maker.shows(&["Left per hour, 2 unsold", "if the other 2 go at 145, by card"]).hides(&["so far"]);
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Sold);
    maker.shows(&["Left per hour, 1 unsold", "if it goes at "]);
}

/// A tag of 100.94 with coins of 0.05: in notes the whole page has 100.95, by card 100.94.
#[test]
fn the_page_asks_one_sum_in_the_way_it_is_paid() {
    for (paid, asks, other) in [("notes", "100.95", "100.94"), ("card", "100.94", "100.95")] {
        let told = format!(
            "2026-05-22 08:14 -05:00 workshop USD inch\ntill cash 0.05\njob stands \"Stands\" 3 spec\ntag 100.94 stands\n\
            sell 1 stands for 100 {paid}\nguess stands asks 3 buys 0.5 at 100.94 k 1.2 by 2026-06-19 end 20\n"
        );
        let mut maker = Maker::told(&told, "stands");
        maker.guesses().shows(&["Ask", asks, &format!("at {asks}, and left")]).hides(&[other]);
    }
}

/// The next sale of a piece at 100.94 is said to bring no more, to the coin it is paid in; 101 is the nearest whole sum.
#[test]
fn the_next_sale_brings_no_more_than_is_asked() {
    for (paid, next) in [("notes", "brings about 100.95"), ("card", "brings about 100.94")] {
        let told = format!(
            "2026-05-22 08:14 -05:00 workshop USD inch\ntill cash 0.05\njob stands \"Stands\" 3 spec\ntag 100.94 stands\n\
            sell 1 stands for 100 {paid}\nguess stands asks 3 buys 0.5 at 100.94 k 1.2 by 2026-06-19 end 20\n"
        );
        Maker::told(&told, "stands").guesses().shows(&[next]).hides(&["brings about 101"]);
    }
}

#[test]
fn someone_asked_is_one_key_and_is_taken_back() {
    let mut maker = Maker::guessed();
    let (job, price) = (maker.job, maker.money("145"));
    maker.wait(WaitTap::Came(job, price, false)).shows(&["Take back: someone asked"]);
    assert_eq!(maker.asked(), 1);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(maker.asked(), 0);
    maker.guesses().wait(WaitTap::Came(job, price, true)).shows(&["Take back: did not turn up", "One asked since you guessed"]);
    assert_eq!(maker.asked(), 1);
}

#[test]
fn a_day_that_has_come_is_asked_anew() {
    let mut maker = Maker::guessed();
    maker.now.wall = Wall::new(maker.now.wall.at.plus(Span::minutes(30 * 24 * 60)), maker.now.wall.offset);
    maker.guesses().shows(&["Sat 16 May has come. Say by when anew.", "Change guesses"]);
    maker.tap(Tap::Close).shows(&["costs covered"]).hides(&["not under"]);
    maker.guesses().wait(WaitTap::Change).shows(&["Reckon with these"]);
    maker.wait(WaitTap::Ask(Question::By)).wait(WaitTap::Weeks(2)).wait(WaitTap::Save);
    maker.shows(&["14 days left"]);
}

#[test]
fn inv15_nothing_of_waiting_is_on_the_buyers_face() {
    let mut maker = Maker::guessed();
    let job = maker.job;
    maker.guesses().tap(Tap::Show(job)).hides(&PRIVATE).shows(&["$145"]).hides(&["not under", "101", "140", "waiting", "Asking", "ask"]);
}

/// The tag is 145 and 140 is asked since it was guessed: the maker reads and says that on every page of it and on paper; the face shows the tag.
#[test]
fn a_price_that_came_down_is_the_one_that_is_asked() {
    let mut maker = Maker::guessed();
    let job = maker.job;
    maker.shows(&["tag 145", "$140", "Someone asked", "at 140"]).tap(Tap::Paper).shows(&["$140"]).tap(Tap::Close);
    maker.tap(Tap::Show(job)).shows(&["$145"]).hides(&["140"]).tap(Tap::Hide);
    maker.tap(Tap::More(job)).tap(Tap::Agree(AgreeTap::Open(job, None))).shows(&["140"]).hides(&["145"]).tap(Tap::Close).tap(Tap::Close);
    maker.tap(Tap::Offer(job)).shows(&["Ask 140", "Sold at 140"]).bargain(BargainTap::Sold);
    assert_eq!(shop(&maker.app).job(job).unwrap().selling.sales.last().unwrap().sum, maker.money("140"));
}

/// One tap on the offer makes the tag say what is asked, and one takes it back there. Where tag and ask are the same there is no such key.
#[test]
fn the_tag_goes_down_to_what_is_asked_in_one_tap() {
    let mut maker = Maker::guessed();
    let job = maker.job;
    let tag = |maker: &Maker| shop(&maker.app).job(job).unwrap().tag;
    maker.tap(Tap::Offer(job)).shows(&["Tag it 140.00", "a buyer reads 145"]);
    let ask = maker.money("140");
    maker.bargain(BargainTap::Tag(ask));
    assert_eq!(tag(&maker), Some(ask));
    maker.shows(&["Ask 140", "Take back: tag 140"]).hides(&["Tag it"]).tap(Tap::Show(job)).shows(&["$140"]).tap(Tap::Hide);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(tag(&maker), Some(maker.money("145")));
    maker.tap(Tap::Close);
    let mut maker = Maker::at_market();
    maker.tap(Tap::Offer(job)).hides(&["Tag it"]);
}

/// Noted without an answer while 140 was asked: they left that, not the tag of 145.
#[test]
fn an_offer_is_noted_with_what_was_asked_then() {
    let mut maker = Maker::guessed();
    maker.offer("70").bargain(BargainTap::NoSale);
    let offers = shop(&maker.app).job(maker.job).unwrap().selling.offers;
    assert_eq!(offers.last().unwrap().asked, Some(maker.money("140")));
}

/// Tag 145, tax inside, and 140 of one in the end: (140 + 0.10) / 0.92187 = 151.97 by card. No Yes, no band, and a word of its own on every
/// page; a tag that reaches the end takes it away.
#[test]
fn an_end_over_the_tag_is_said_everywhere() {
    let sold = STANDS.split("12:05 guess").next().unwrap();
    let mut maker = Maker::told(&format!("{sold}12:40 guess stands asks 1.5 buys 0.25 at 145 k 2 by 2026-05-16 end 140\n"), "stands");
    maker.app.here.paid = Some(Paid::Card);
    let (job, word) = (maker.job, "In the end it brings 152, more than your tag 145: raise the tag, or mend the guess.");
    maker.shows(&[word, ">152<"]).tap(Tap::Paper).shows(&[word]).tap(Tap::Close);
    maker.guesses().painted().shows(&[word, ">152<"]).hides(&["Too close", "your call", "band"]).tap(Tap::Close);
    maker.tap(Tap::Offer(job)).shows(&["The end brings more", word]);
    for sum in ["20", "145", "151"] {
        maker.say_sum(sum).shows(&["The end brings more", word]).hides(&[">Yes<", "Too close", "Say 145"]);
    }
    maker.say_sum("152").shows(&[">Yes<"]).hides(&["The end brings more"]);
    let several = "In the end they bring 304, more than the 290 you ask: raise the tag, or mend the guess.";
    maker.bargain(BargainTap::Pieces(2)).say_sum("290").shows(&["The end brings more", several]);
    maker.tap(Tap::Close).tap(Tap::Tag(TagTap::Open(job, What::Tag))).press("200").tap(Tap::Tag(TagTap::Done)).hides(&["In the end"]);
    maker.tap(Tap::Show(job)).hides(&["end", "152"]);
}

/// 150 boards: until the band is reckoned, bit by bit, the word goes by not under alone, and that is said; then the same offer is too close.
#[test]
fn a_word_before_its_band_says_so() {
    let guess = "guess boards asks 6 buys 0.5 at 40 k 2 by 2026-07-27 end 10";
    let text = |n: u32| format!("2026-06-01 09:00 +02:00 workshop EUR metric\njob boards \"Boards\" {n} spec\ntag 40 boards\n{guess}\n");
    let mut maker = Maker::told(&text(150), "boards");
    let (job, coming) = (maker.job, "The band of doubt is being reckoned.");
    let under = sheet(&maker.app).unwrap().for_sale[0].not_under.unwrap();
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Say(under)).shows(&[coming]).hides(&["Too close"]);
    maker.orders = maker.app.told(News::Painted);
    maker.shows(&[coming]).hides(&["Too close"]);
    maker.painted().shows(&["Too close", "The band comes from your guesses."]).hides(&[coming]);
    // A few are reckoned at once, and too many never.
    let mut few = Maker::told(&text(3), "boards");
    let job = few.job;
    few.tap(Tap::Offer(job)).hides(&[coming, "The band comes"]);
    let mut many = Maker::told(&text(200), "boards");
    let job = many.job;
    many.tap(Tap::Offer(job))
        .shows(&[coming])
        .painted()
        .bargain(BargainTap::Say(under))
        .shows(&["Too many pieces and people for a band of doubt."]);
}

/// In euro and notes without tax, so what a buyer hands over is what stays. An offer that was let go is told beside what one was sold for days
/// later; else, where a buyer paid less than the tag, what waiting was worth then. With nobody thought to come that is the end, 40. One piece, the
/// end 20 and the tag 100 two days before it: 1.75 ask in a week, all of them buy at the tag, so one comes with 1 - e^(-1.75 x 2 / 7) = 0.3935, and
/// 20 + 80 x 0.3935 = 51.48, up to a whole unit. It stays at the tag: less brings no more who buy, and more would only pay above 100 - 28.85.
#[test]
fn what_came_of_waiting_is_said_by_hand_figures() {
    #[track_caller]
    fn check((pieces, days): (u32, &str), said: Option<&str>) {
        let began = format!("2026-06-05 09:00 +02:00 workshop EUR metric\njob stools \"Stools\" {pieces} spec\n09:00 tag 100 stools");
        let mut maker = Maker::told(&format!("{began}\n{days}\n"), "stools");
        maker.guesses();
        match said {
            Some(said) => maker.shows(&["Looking back:", said]),
            None => maker.hides(&["Looking back", "You waited", "You took"]),
        };
    }
    const NOBODY: &str = "09:05 guess stools asks 0 buys 0.25 at 100 k 2 by 2026-07-31 end 40";
    const TWO_DAYS: &str = "09:05 guess stools asks 1.75 buys 1 at 100 k 2 by 2026-06-07 end 20";
    let sold = |one: &str| format!("2026-06-12 12:00 sell 1 stools for {one} notes fetched");
    for (offer, sale, said) in [
        ("60 for 1", sold("95"), " You waited at 60, sold at 95.<"),
        ("60 for 1", sold("50"), " You waited at 60, sold at 50.<"),
        ("110 for 2", sold("95"), " You waited at 55, sold at 95.<"),
        ("60 for 1", "2026-06-12 12:00 sell 2 stools for 170 notes fetched".into(), " You waited at 60, sold at 85.<"),
    ] {
        check((2, &format!("{NOBODY}\n2026-06-10 12:00 offer {offer} stools\n{sale}")), Some(said));
    }
    check((2, &format!("{NOBODY}\n{}", sold("90"))), Some(" You took 90, waiting was worth 40.<"));
    check((1, &format!("{TWO_DAYS}\n10:00 sell 1 stools for 90 notes fetched")), Some(" You took 90, waiting was worth 52.<"));
    check((1, &format!("{TWO_DAYS}\n10:00 sell 1 stools for 45 notes fetched")), Some(" You took 45, waiting was worth 52.<"));
    // Two together: of 0.5 who come 0.4837 are served, and 40 + 80 x 0.4837 = 78.69, up to 79, as an offer of two was held against.
    let two = format!("{TWO_DAYS}\n10:00 sell 2 stools for 85 notes fetched");
    check((2, &two), Some(" You took 42.50, waiting was worth 39.50.<"));
    // At the tag nobody haggled; without guesses nothing is known of waiting; and nothing was sold yet.
    check((2, &format!("{NOBODY}\n{}", sold("100"))), None);
    check((2, &sold("90")), None);
    check((2, &format!("{NOBODY}\n2026-06-10 12:00 offer 60 for 1 stools")), None);
}
