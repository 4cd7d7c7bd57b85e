//! Jobs, told as tables: what is tapped, what stands in the book and on the page then.

use super::draft::{PaidTo, Way};
use super::*;
use crate::app::news::News;
use crate::app::shelf::Shelf;
use crate::app::{Common, Msg};
use crate::screens::page;
use crate::words::Plain;
use fivebar_core::ledger::kind::bench::Kind;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::{Book, Device, line};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Key, Sorted, Units, Wall};
use fivebar_core::sheet::rack::rack;
use fivebar_core::story::{BENCH, STANDS, tell};
use std::collections::BTreeMap;
use std::rc::Rc;

/// A maker with the book of some stories.
struct Maker {
    app: App,
    jobs: BTreeMap<&'static str, Id>,
    now: Now,
    orders: Vec<Order>,
}

impl Maker {
    fn told(texts: &[&str]) -> Maker {
        let mut app = App::for_tests(Place::Jobs);
        let (mut lines, mut jobs, mut now) = (vec![], BTreeMap::new(), Wall::default());
        for story in texts.iter().map(|text| tell(text)) {
            assert_eq!(story.refused, []);
            lines.extend(story.book.entries().map(|(entry, _)| line::write(entry)));
            jobs.extend(["stands", "bench", "more"].into_iter().filter_map(|name| Some((name, story.names.job(name)?))));
            now = story.now;
        }
        app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
        app.now = now;
        Maker { app, jobs, now: Now { wall: now, chance: [9; 10] }, orders: vec![] }
    }

    fn new() -> Maker {
        Maker::told(&["2026-05-22 08:14 +02:00 workshop EUR metric"])
    }

    /// Both demos, the bench before its delivery.
    fn before_delivery() -> Maker {
        Maker::told(&[STANDS, BENCH.split("# --- Saturday").next().unwrap()])
    }

    /// The stands sorted and taken up, nothing done yet.
    fn at_the_start() -> Maker {
        Maker::told(&[STANDS.split("20:10 take").next().unwrap()])
    }

    fn say(&mut self, message: Msg) {
        self.now.chance[0] = self.now.chance[0].wrapping_add(1);
        self.orders = self.app.heard(message, self.now);
    }

    fn tap(&mut self, tap: Tap) -> &mut Maker {
        self.say(Msg::Jobs(tap));
        self
    }

    fn open(&mut self, job: &str) -> &mut Maker {
        let id = self.jobs[job];
        self.tap(Tap::Open(Which::Own, id))
    }

    fn room(&mut self, job: &str, room: Room) -> &mut Maker {
        self.open(job).tap(Tap::Room(room))
    }

    fn pick(&mut self, pick: Pick) -> &mut Maker {
        self.tap(Tap::Pick(pick))
    }

    /// Figures on the pad, from one slot of the form to the next.
    fn figures(&mut self, figures: &[&str]) -> &mut Maker {
        for (nth, figure) in figures.iter().enumerate() {
            self.tap(Tap::At(nth));
            for sign in figure.chars() {
                let press = sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8));
                self.tap(Tap::Press(press));
            }
        }
        self
    }

    fn spend(&mut self, way: Way, figures: &[&str]) -> &mut Maker {
        let glue = Key::read("glue").unwrap();
        self.tap(Tap::Write(What::Spend)).pick(Pick::Way(way)).pick(Pick::Spending(glue)).figures(figures).tap(Tap::Save)
    }

    /// Where each part stands on the page, in this order.
    #[track_caller]
    fn shows(&mut self, parts: &[&str]) -> &mut Maker {
        let html = page(&self.app).html();
        let mut from = 0;
        for part in parts {
            let at = html[from..].find(part);
            assert!(at.is_some(), "{part}, after the part before it, in {html}");
            from += at.unwrap_or(0);
        }
        self
    }

    #[track_caller]
    fn hides(&mut self, parts: &[&str]) -> &mut Maker {
        let html = page(&self.app).html();
        for part in parts {
            assert!(!html.contains(part), "{part} in {html}");
        }
        self
    }

    fn sheet(&self) -> JobSheet {
        sheet(&self.app).unwrap().unwrap()
    }

    fn example_opened(&mut self, lines: &[String]) {
        let book = Box::new(Book::of_lines(lines.iter().map(String::as_str)));
        let opened = News::Opened { which: Which::Example, device: Device::new([2; 8]), book, names: Sorted::new() };
        self.orders = self.app.told(opened);
    }
}

#[test]
fn a_first_job_needs_a_name_and_little_else() {
    let mut maker = Maker::new();
    maker.shows(&["Yours: none yet", "Try the example", "New job"]).tap(Tap::Write(What::New)).tap(Tap::Save);
    maker.shows(&["Nothing was named.", "Type a name first."]);
    assert_eq!(maker.app.own.book.len(), 1);
    maker.tap(Tap::Say(0, " Wall shelf ".into())).pick(Pick::Count(3)).pick(Pick::MadeFor(For::Order));
    maker.shows(&["Wall shelf", "EUR, millimetres", "Begin this job"]).tap(Tap::Save);
    maker.shows(&["Made to order", "Wall shelf, 3", "No wood yet.", "Take wood", "nothing logged yet", "no price yet"]);
    let sheet = maker.sheet();
    assert_eq!((sheet.sale.of, sheet.account.currency, sheet.account.units), (3, Currency::EUR, Units::Metric));
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["Yours: none yet", "Put it back"]);
    maker.say(Msg::Common(Common::PutBack));
    maker.shows(&["Wall shelf, 3"]).tap(Tap::List).shows(&["In hand", "Wall shelf, 3", "Next: take wood", "New job"]);
}

#[test]
fn a_job_may_have_a_currency_units_and_count_of_its_own() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Gate".into())).pick(Pick::More).shows(&["Currency", "GBP", "Units", "Inches"]);
    maker.pick(Pick::Currency(Currency::read("GBP").unwrap())).pick(Pick::Units(Units::Inch)).pick(Pick::More).pick(Pick::Count(0));
    maker.shows(&["Number pad"]).figures(&["12"]).shows(&["GBP, inches"]).tap(Tap::Save).shows(&["Gate, 12"]);
    assert_eq!((maker.sheet().account.currency.code(), maker.sheet().account.units), ("GBP", Units::Inch));
}

#[test]
fn the_list_has_what_is_due_first_and_what_has_ended_last() {
    let mut maker = Maker::before_delivery();
    maker.shows(&[
        "Due and owed",
        "Hall shoe bench, oak and beech",
        "€276.00",
        "Hand over Sat 23 May",
        "due at hand-over",
        "fetch 1 h 23, sort 31 min, make 20 h 21, finish 1 h 44, sell 1 h 35, deliver 1 h 30 to come",
        "Ended",
        "Plant stands, ash with cherry pegs, 5",
        "ended Sun 10 May",
        "19.09 left per hour",
        "so far: fetch, sort, make, finish, sell",
        "to come",
    ]);
    for (search, shown, hidden) in
        [("SHOE oak", "Hall shoe bench", "Plant stands"), ("stool", "No job is called “stool”.", "Hall shoe bench")]
    {
        maker.tap(Tap::Search(search.into())).shows(&["Search by name", shown]).hides(&[hidden]);
    }
    maker.tap(Tap::Search(String::new())).shows(&["Hall shoe bench", "Plant stands"]).hides(&["Search by name"]);
}

#[test]
fn a_tagged_batch_is_for_sale_and_then_at_the_gallery() {
    let market = STANDS.split("2026-05-09").next().unwrap();
    Maker::told(&[market.split("2026-04-25").next().unwrap()]).shows(&["For sale", "pegs, 5", "tag $145", "4 sold", "1 left"]);
    let mut maker = Maker::told(&[market]);
    maker.shows(&["In hand", "1 at the gallery."]).open("stands").shows(&["1 at the gallery.", "The gallery paid"]).tap(Tap::Next);
    maker.figures(&["1", "82.46"]).tap(Tap::Save).shows(&["Sell and deliver", "sold, handed over to you", "82.46"]);
    assert_eq!(maker.sheet().money.kept.unwrap().amount().to_string(), "482.7");
}

/// domain.md 12 B on 22 May: delivery, estimated 90 min, still to come.
#[test]
fn the_page_before_a_delivery() {
    let mut maker = Maker::before_delivery();
    maker.open("bench").shows(&[
        "Oak top and shelf, beech frame, made to order",
        "Hall shoe bench, oak and beech",
        "Ready. Delivery to come.",
        "Sat 23 May, delivered, about 1 h 30.",
        "Start delivery",
        "then 276.00 due",
        "Lifting guides are for close, level lifts.",
        "25 h 34, 1 h 30 to come",
        "Agreed €460.00",
        "deposit in ",
        "184.00",
        "due at hand-over ",
        "276.00",
        "Costs, 48.60 of it to come",
        "103.93",
        "Left per hour, as it stands",
        "13.16",
        "27 pieces, 43.7 L",
        "25 h 34, 55.33 spent",
        "460 agreed, 276 due",
        "after hand-over",
    ]);
    maker.tap(Tap::Next);
    assert_eq!((maker.app.place, maker.app.running().map(|run| run.op)), (Place::Bench, Some("delivery".into())));
    maker.say(Msg::Go(Place::Jobs));
    maker.shows(&["Delivery is running.", "Go to the bench"]).tap(Tap::Next);
    assert_eq!(maker.app.place, Place::Bench);
}

/// The whole of both demos, from the example: every figure of domain.md 12 that a job page shows.
#[test]
fn the_example_shows_both_demos_to_the_cent() {
    let mut maker = Maker::new();
    maker.tap(Tap::TryExample).shows(&["The example is being written"]);
    assert_eq!(maker.orders, [Order::OpenExample]);
    maker.example_opened(&[]);
    let filled: Vec<usize> = maker
        .orders
        .iter()
        .map(|order| if let Order::FillExample { lines, names } = order { lines.len() + names.len() } else { 0 })
        .collect();
    assert!(matches!(filled[..], [all] if 200 < all), "{filled:?}");
    maker.shows(&["Yours: none yet", "Example", "Remove", "Hall shoe bench", "12.74 left per hour", "Plant stands", "19.09 left per hour"]);
    let rows = fivebar_core::sheet::jobs::jobs(&maker.app.example.as_ref().unwrap().shop(maker.now.wall.at), "").unwrap();
    let (bench, stands) = (rows[0].job, rows[1].job);
    for (job, room, parts) in [
        (stands, None, ["Example, in no total", "Sold $565.00", "127.56", "19.09", "After workshop costs", "16.09", "50 pieces, 17.9 bf"]),
        (
            stands,
            Some(Room::Back),
            ["$19.09", "482.70 in all over 25 h 17", "16.09 after workshop costs, 13.41", "1.22", "55.1 %", "0.97", "565, asked 580"],
        ),
        (stands, Some(Room::Wood), ["Strips", "22 on the rack", ">25<", "17.9 board feet", "55.1 %", "21.1 %", "29.9 %"]),
        (
            stands,
            Some(Room::Hours),
            ["25 h 17", "Market", "9 h 30", "corrected 47 min, recalled 1 min", "9.5 of a pack of 32 at 34.90", "10.36", "127.56"],
        ),
        (bench, None, ["Look back", "fetch ", "1 h 23", "Sold €460.00", "103.93", "12.74", "12.74 an hour"]),
        (
            bench,
            Some(Room::Back),
            [
                "€12.74",
                "356.07 in all over 27 h 57",
                "17.04, had the estimate held",
                "Seven hours over; wood and price as planned.",
                "1.37",
                "1.09",
                "1.00",
            ],
        ),
        (bench, Some(Room::Wood), ["Ends", "43.7 litres", "21.4 litres", "48.9 %", "17.3 %", "27.8 %", "Top"]),
        (bench, Some(Room::Hours), ["27 h 57", "Sanding", "4 h 49", "Milling", "3 h 32", "19 h", "103.93"]),
    ] {
        maker.tap(Tap::Open(Which::Example, job));
        if let Some(room) = room {
            maker.tap(Tap::Room(room));
        }
        maker.shows(&parts);
    }
    assert_eq!(maker.app.own.book.len(), 1, "nothing of it is the maker's own");
    maker.tap(Tap::List).shows(&["Yours: none yet"]).hides(&["Example, in no total"]);
}

#[test]
fn the_example_goes_in_one_tap_wherever_one_is() {
    let mut maker = Maker::new();
    maker.example_opened(&[]);
    let job = maker
        .app
        .example
        .as_ref()
        .and_then(|shelf| shelf.book.entries().find(|(entry, _)| matches!(entry.fact, fivebar_core::ledger::Fact::JobBegan(_))));
    let job = job.map(|(entry, _)| entry.id).unwrap();
    maker.tap(Tap::RemoveExample).tap(Tap::Open(Which::Example, job));
    maker.app.told(News::ExampleRemoved);
    maker.shows(&["Yours: none yet", "Try the example"]).hides(&["Remove"]);
    assert_eq!((maker.app.which, maker.app.jobs.open), (Which::Own, None));
}

#[test]
fn an_example_that_is_there_is_not_written_again() {
    let mut maker = Maker::new();
    let (lines, _) = crate::app::example::told();
    maker.example_opened(&lines.into_iter().map(|posted| posted.line).collect::<Vec<_>>());
    assert_eq!(maker.orders, []);
    maker.shows(&["Example", "Plant stands"]);
}

#[test]
fn the_example_is_looked_for_once_and_only_on_jobs() {
    let own = || News::Opened { which: Which::Own, device: Device::new([1; 8]), book: Box::default(), names: Sorted::new() };
    for (place, looks) in [(Place::Count, 0), (Place::Jobs, 1)] {
        let mut app = App::new(crate::parts::Page::default(), place, Rc::new(Plain::default()));
        let orders = app.told(own());
        let looked = |orders: &[Order]| orders.iter().filter(|order| **order == Order::LookForExample).count();
        assert_eq!(looked(&orders), looks);
        let now = Maker::new().now;
        let first = looked(&app.heard(Msg::Go(Place::Jobs), now)) + looks;
        assert_eq!((first, looked(&app.heard(Msg::Go(Place::Jobs), now))), (1, 0));
    }
}

#[test]
fn wood_is_taken_by_count_and_put_back() {
    let mut maker = Maker::at_the_start();
    maker.open("stands").shows(&["No wood yet.", "Take wood"]).tap(Tap::Next).shows(&["No wood is taken yet.", "Strips", "47"]);
    let pile = rack(&maker.app.own.shop(maker.now.wall.at), maker.jobs["stands"]).unwrap().remove(0);
    let write = Tap::Write(What::Take { haul: pile.haul, pile: pile.pile });
    maker.tap(write.clone()).shows(&["0 here, 47 on the rack", "all"]).figures(&["48"]).shows(&["Take 48"]).tap(Tap::Save);
    maker.shows(&["you asked for 48 pieces, and there are 47"]);
    maker.figures(&["25"]).tap(Tap::Save).shows(&["25 pieces", "22 on the rack"]).hides(&["No wood is taken yet."]);
    maker.tap(write).pick(Pick::Count(5)).shows(&["25 here, 22 on the rack", "Put 5 back"]).tap(Tap::Undo);
    assert_eq!(maker.sheet().wood.pieces, 20);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(maker.sheet().wood.pieces, 25);
}

#[test]
fn parts_are_typed_and_the_yield_is_known() {
    let mut maker = Maker::told(&[BENCH.split("20:02 part").next().unwrap()]);
    maker.room("bench", Room::Wood).shows(&["No part is planned yet."]).tap(Tap::Write(What::Part(None)));
    maker.tap(Tap::Say(0, "top".into())).pick(Pick::Wood(Key::read("oak-european"))).figures(&["1", "32", "0", "1040"]).tap(Tap::Save);
    maker.shows(&["role=\"alert\"", "It must be from 1 mm to 20000 mm."]);
    maker.figures(&["1", "32", "340"]).tap(Tap::Save).shows(&["11.3 litres", "Top", "32 × 340 × 1040 mm, Oak"]);
    maker
        .tap(Tap::Write(What::Part(Some("top".into()))))
        .shows(&["1040", "Take the part away"])
        .tap(Tap::Undo)
        .shows(&["No part is planned yet."]);
}

#[test]
fn what_is_planned_is_to_come_until_it_is_done() {
    let mut maker = Maker::at_the_start();
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Plan(None))).shows(&["milling", "sanding"]);
    maker.pick(Pick::Operation("delivery".into(), Kind::Deliver, false)).figures(&["90", "5"]).tap(Tap::Save);
    maker.shows(&["Delivery", "deliver, 5 pieces", "1 h 30", "Still to come", "1 h 30"]);
    maker.tap(Tap::Write(What::Plan(None))).pick(Pick::Operation("milling".into(), Kind::Make, false)).figures(&["3"]).tap(Tap::Save);
    maker.tap(Tap::Page).shows(&["Next: milling.", "Start milling", "planned 3 min"]).tap(Tap::Next);
    assert_eq!(maker.app.running().map(|run| (run.op, maker.app.place)), Some(("milling".into(), Place::Bench)));
}

#[test]
fn spending_is_a_sum_so_many_a_share_or_a_drive() {
    for (way, figures, shown) in [
        (Way::Sum, vec!["2.33"], "2.33"),
        (Way::Each, vec!["14", "0.62"], "8.68"),
        (Way::Share, vec!["9.5", "32", "34.90"], "10.36"),
        (Way::Drive, vec!["18"], "13.05"),
        (Way::Drive, vec!["18", "0.5"], "9.00"),
    ] {
        let mut maker = Maker::at_the_start();
        maker.room("stands", Room::Hours).shows(&["Nothing is written down yet."]).spend(way, &figures).shows(&[
            "Spent",
            shown,
            "Take back",
            "In all",
            shown,
        ]);
        let entry = maker.sheet().account.costs.lines[0].entry;
        maker.tap(Tap::Strike(entry)).shows(&["Nothing is written down yet.", "Put it back"]);
        maker.say(Msg::Common(Common::PutBack));
        maker.shows(&["In all", shown]);
    }
}

#[test]
fn spending_that_can_not_be_is_not_written() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Shelf".into())).tap(Tap::Save).tap(Tap::Room(Room::Hours));
    let before = maker.app.own.book.len();
    maker.tap(Tap::Write(What::Spend)).figures(&["3"]).tap(Tap::Save).shows(&["choose one", "glue", "sanding discs"]);
    for (way, figures, said) in [
        (Way::Sum, vec![""], "Nothing is typed yet."),
        (Way::Sum, vec!["3.005"], "finer than is kept"),
        (Way::Share, vec!["33", "32", "34"], "33 used of a pack that holds 32"),
        (Way::Drive, vec!["18"], "no rate for a distance is set in EUR"),
    ] {
        maker.spend(way, &figures).shows(&[said]).tap(Tap::Close);
    }
    assert_eq!(maker.app.own.book.len(), before);
}

#[test]
fn the_comma_is_the_decimal_sign_where_it_is() {
    let mut maker = Maker::at_the_start();
    maker.app.speech = Rc::new(Plain { sign: Sign::Comma, ..Plain::default() });
    maker.room("stands", Room::Hours).spend(Way::Each, &["14", "0.62"]);
    assert_eq!(maker.sheet().account.costs.lines[0].sum.amount().to_string(), "8.68");
    maker.tap(Tap::Write(What::Tag)).figures(&["144.50"]).shows(&["144,50"]).tap(Tap::Save);
    assert_eq!(maker.sheet().sale.tag.unwrap().amount().to_string(), "144.5");
    maker.tap(Tap::Write(What::Tag)).shows(&["144,50"]);
}

#[test]
fn an_order_from_the_agreement_to_the_last_cent() {
    let mut maker = Maker::new();
    maker
        .tap(Tap::Write(What::New))
        .tap(Tap::Say(0, "Bench".into()))
        .pick(Pick::MadeFor(For::Order))
        .tap(Tap::Save)
        .tap(Tap::Room(Room::Sell));
    maker.shows(&["not yet", "missing", "Sold", "Agreed", "Gallery"]).tap(Tap::Write(What::Agree)).shows(&["Lifting guides", "no date"]);
    maker
        .pick(Pick::Due(7))
        .pick(Pick::Due(1))
        .shows(&["Sat 30 May"])
        .figures(&["460", "500"])
        .tap(Tap::Save)
        .shows(&["is more than the price"]);
    maker.figures(&["460", "184"]).tap(Tap::Save).shows(&[
        "€460.00 due",
        "1 piece",
        "deposit 184.00, by Sat 30 May",
        "460.00",
        "Came to nothing",
    ]);
    let agreed = maker.sheet().selling.agreements[0].id;
    maker.tap(Tap::Write(What::Pay(PaidTo::Agreed(agreed)))).pick(Pick::Paid(Some(Paid::Bank))).figures(&["184"]).tap(Tap::Save);
    maker.shows(&["€276.00 due", "Bank", "184.00", "Received", "184.00", "Due", "276.00"]).tap(Tap::Page);
    maker.shows(&["Agreed €460.00", "deposit in ", "184.00", "276.00"]).tap(Tap::Room(Room::Sell));
    maker.tap(Tap::Write(What::Sell(Some(agreed)))).shows(&["Hand over", "460"]).pick(Pick::Paid(None)).tap(Tap::Save);
    maker.shows(&["handed over", "Sold", "Due", "276.00", "Payment in"]).tap(Tap::Page).shows(&[
        "Handed over. Money is due.",
        "Take the payment",
        "276.00 due",
    ]);
    maker
        .tap(Tap::Next)
        .shows(&["Payment in", "276"])
        .tap(Tap::Save)
        .tap(Tap::Page)
        .shows(&["All gone. Nothing is left to do.", "Look back"]);
    assert!(maker.sheet().sale.due.is_zero());
}

#[test]
fn an_agreement_may_come_to_nothing_and_a_sale_be_taken_back() {
    let mut maker = Maker::before_delivery();
    let agreed = maker.open("bench").sheet().selling.agreements[0].id;
    maker.tap(Tap::Room(Room::Sell)).tap(Tap::Write(What::Cancel(agreed))).figures(&["184"]).tap(Tap::Save);
    maker.shows(&["came to nothing"]);
    assert!(maker.sheet().sale.due.is_zero());
    maker
        .tap(Tap::Write(What::Sell(None)))
        .pick(Pick::Carried(Carried::Delivered))
        .figures(&["400", "1"])
        .tap(Tap::Save)
        .shows(&["400.00"]);
    let sale = maker.sheet().selling.sales[0].id;
    maker.tap(Tap::Strike(sale));
    assert_eq!((maker.sheet().selling.sales.len(), maker.sheet().selling.payments.len()), (0, 1), "the sale and its payment");
}

#[test]
fn what_a_buyer_may_see_is_written_here() {
    let mut maker = Maker::at_the_start();
    maker.room("stands", Room::Sell).shows(&["Can tip. Fix to the wall", "9 ", "Ash, cherry pegs"]);
    maker.tap(Tap::Write(What::Size)).tap(Tap::At(2)).figures(&["9"]).tap(Tap::At(3)).tap(Tap::Press(Press::Digit(7))).tap(Tap::Save);
    assert_eq!(maker.sheet().described.grams, Some(3175));
    maker.tap(Tap::Write(What::Facts)).tap(Tap::Say(2, "Dust it.".into())).tap(Tap::Save).shows(&["Care", "Dust it."]);
    maker.tap(Tap::Write(What::Settle)).figures(&["130"]).tap(Tap::Save).shows(&["Settle", "$130"]);
    maker.tap(Tap::Write(What::Settle)).shows(&["Work it out again"]).tap(Tap::Undo);
    assert_eq!(maker.sheet().account.pricing.settle_set, None);
}

#[test]
fn a_job_ends_is_judged_and_taken_up_again() {
    let mut maker = Maker::told(&[BENCH.split("2026-05-24 20:00 end").next().unwrap()]);
    maker.room("bench", Room::Back).shows(&["€12.74", "Not typical", "Write the lesson", "Done with this job"]).tap(Tap::End);
    maker.shows(&["ended Sat 23 May", "Take it up again"]);
    let frozen = |maker: &Maker| maker.sheet().account.costs.shares.iter().all(|share| share.frozen);
    assert!(frozen(&maker));
    maker
        .tap(Tap::Typical(false))
        .shows(&["Typical after all"])
        .tap(Tap::Write(What::Lesson))
        .tap(Tap::Say(0, "Laminate first.".into()))
        .tap(Tap::Save);
    maker.shows(&["The lesson", "Laminate first.", "Change the lesson"]).tap(Tap::Reopen).shows(&["Done with this job"]);
    assert!(!frozen(&maker) && !maker.sheet().typical);
}

#[test]
fn a_job_whose_wood_has_no_size_can_not_end_yet() {
    let story = "2026-05-22 08:14 +02:00 workshop EUR metric\nleave for yard\npile odd\ncount 5 odd\nhome\ngood 5 odd\njob more \"Stool\" 1 spec\ntake 2 odd for more";
    let mut maker = Maker::told(&[story]);
    maker.room("more", Room::Back).tap(Tap::End).shows(&["a pile of this job has no size yet"]);
    assert!(maker.sheet().ended.is_none());
}

#[test]
fn wood_of_another_currency_asks_for_one_figure() {
    let more = "2026-05-22 08:14 +02:00 workshop EUR metric\njob more \"Stool\" 1 spec";
    let mut maker = Maker::told(&[STANDS, more]);
    let pile = rack(&maker.app.own.shop(maker.now.wall.at), maker.jobs["more"]).unwrap().remove(0);
    maker.room("more", Room::Wood).tap(Tap::Write(What::Take { haul: pile.haul, pile: pile.pile })).figures(&["2"]).tap(Tap::Save);
    maker.shows(&["Some of it was counted in another currency."]).tap(Tap::Room(Room::Hours)).tap(Tap::Write(What::Spend));
    assert_eq!(maker.sheet().money.costs, None, "unknown, never nothing");
    maker.pick(Pick::Spending(Key::read("haul").unwrap())).figures(&["4"]).tap(Tap::Save).shows(&["Share of the hauls", "4.00"]);
    assert_eq!(maker.sheet().money.costs.unwrap().amount().to_string(), "4");
}

#[test]
fn a_name_and_the_number_of_pieces_can_be_put_right() {
    let mut maker = Maker::told(&[STANDS.split("2026-04-25").next().unwrap()]);
    maker.open("stands").tap(Tap::Write(What::Name)).shows(&["Name and pieces", "Plant stands, ash with cherry pegs", "5"]);
    maker.tap(Tap::Say(0, "Stands".into())).figures(&["3"]).tap(Tap::Save).shows(&["you asked for 4 pieces, and there are 3"]);
    maker.figures(&["6"]).tap(Tap::Save).shows(&["Stands, 6", "2 left to sell."]);
    maker.tap(Tap::Write(What::Name)).tap(Tap::Say(0, " ".into())).tap(Tap::Save).shows(&["Nothing was named."]);
}
