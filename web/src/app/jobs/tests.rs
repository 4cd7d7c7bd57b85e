//! Jobs, told as tables: what is tapped, what stands in the book and on the page then.

mod after_yes;
mod apart;
mod at_gallery;
mod bounced;
mod cans;
mod dates;
mod estimate;
mod example;
mod gain;
mod half_written;
mod known;
mod looking_back;
mod money;
mod old_jobs;
mod order;
mod owed_now;
mod quote;
mod sales;
mod spent;
mod to_settle;

use super::draft::{PaidTo, Way};
use super::*;
use crate::app::news::News;
use crate::app::price::agree::{AgreeTap, By, Field as Figure};
use crate::app::shelf::Shelf;
use crate::app::spent_on::SpentTap;
use crate::app::{Common, Msg};
use crate::screens::page;
use crate::words::Plain;
use fivebar_core::ledger::decide::{HaulCommand, PileFacts};
use fivebar_core::ledger::kind::bench::Kind;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::ledger::{Book, Device, Fact, line};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Key, Offset, Sorted, Units, Wall};
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
            jobs.extend(["stands", "bench", "more", "stool"].into_iter().filter_map(|name| Some((name, story.names.job(name)?))));
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
        // Of the first byte an id has four bits alone.
        self.now.chance[5] = self.now.chance[5].wrapping_add(1);
        self.orders = self.app.heard(message, self.now);
    }

    fn tap(&mut self, tap: Tap) -> &mut Maker {
        self.say(Msg::Jobs(tap));
        self
    }

    fn agree(&mut self, tap: AgreeTap) -> &mut Maker {
        self.say(Msg::Price(crate::app::price::Tap::Agree(tap)));
        self
    }

    /// Opens the form of an agreement on the open job, and says so much of it.
    fn agrees(&mut self, said: &[AgreeTap]) -> &mut Maker {
        let job = self.app.jobs.open.unwrap();
        for tap in [AgreeTap::OfJob(job)].iter().chain(said) {
            self.agree(tap.clone());
        }
        self
    }

    /// A figure of that form, by its pad.
    fn sum(&mut self, field: Figure, figure: &str) -> &mut Maker {
        self.agree(AgreeTap::Pad(field));
        for digit in figure.bytes() {
            self.say(Msg::Price(crate::app::price::Tap::Press(Press::Digit(digit - b'0'))));
        }
        self.agree(AgreeTap::PadDone)
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

    /// A kind, and that it belongs on each job where that is asked.
    fn spending(&mut self, kind: Key) -> &mut Maker {
        self.pick(Pick::Spending(kind.clone()));
        let is_open = self.app.jobs.draft.as_ref().is_some_and(|draft| super::homes::is_open(&self.app, draft));
        if is_open { self.tap(Tap::Home(kind, Home::Job)) } else { self }
    }

    fn spend(&mut self, way: Way, figures: &[&str]) -> &mut Maker {
        let glue = Key::read("glue").unwrap();
        self.tap(Tap::Write(What::Spend)).pick(Pick::Way(way)).spending(glue).figures(figures).tap(Tap::Save)
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

/// A top of oak 340 mm wide moves 5 mm at the most in a heated home; without a heated room nobody published how much.
#[test]
fn where_a_job_will_stand_is_said_and_its_parts_move_by_it() {
    let mut maker = Maker::new();
    let oak = Key::read("oak-european").unwrap();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Table".into())).tap(Tap::Save).tap(Tap::Room(Room::Wood));
    maker.shows(&["Where it will stand", "not said: moisture from 6 to 10 %"]);
    maker.tap(Tap::Write(What::Part(None))).tap(Tap::Say(0, "top".into())).pick(Pick::Wood(Some(oak)));
    maker.figures(&["1", "20", "340", "900"]).tap(Tap::Save);
    maker.tap(Tap::Write(What::Room)).shows(&["Heated home", "Top, 340 mm wide: moves 4.9 mm", ">6<", ">10<"]);
    maker.pick(Pick::Room(3)).shows(&["15 to 19 %", "from 6 to 14 %", ">15<", ">19<"]);
    maker.figures(&["10", "8"]).shows(&["10", "8"]).tap(Tap::Save).shows(&["Where it will stand", "class=\"why\""]);
    maker.pick(Pick::Room(2)).tap(Tap::Save).shows(&["Where it will stand", "moisture from 10 to 14 %"]).hides(&["not said: moisture"]);
    assert_eq!(maker.sheet().room, Some((10.into(), 14.into())));
    maker.tap(Tap::Write(What::Room)).shows(&[">10<", ">14<"]);
}

#[test]
fn a_first_job_needs_a_name_and_little_else() {
    let mut maker = Maker::new();
    maker.shows(&["Yours: none yet", "Try the example", "New job"]).tap(Tap::Write(What::New)).tap(Tap::Save);
    maker.shows(&["Name: nothing is typed yet."]).hides(&["Nothing was changed."]);
    assert_eq!(maker.app.own.book.len(), 1);
    maker.tap(Tap::Say(0, " Wall shelf ".into())).pick(Pick::Count(3)).pick(Pick::MadeFor(For::Order));
    maker.shows(&["Wall shelf", "EUR, millimetres", "Begin this job"]).tap(Tap::Save);
    maker.shows(&["Made to order", "Wall shelf, 3", "No wood yet.", "Take wood", "nothing logged yet", "no price yet"]);
    let sheet = maker.sheet();
    assert_eq!((sheet.sale.of, sheet.account.currency, sheet.account.units), (3, Currency::EUR, Units::Metric));
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["Yours: none yet", "Do it again"]);
    maker.say(Msg::Common(Common::PutBack));
    maker.shows(&["Wall shelf, 3"]).tap(Tap::List).shows(&["In hand", "Wall shelf, 3", "Next: take wood", "New job"]);
}

#[test]
fn a_job_may_have_a_currency_units_and_count_of_its_own() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Gate".into())).pick(Pick::More).shows(&["Currency", "GBP", "Units", "Inches"]);
    maker.pick(Pick::Currency(Currency::read("GBP").unwrap())).pick(Pick::Units(Units::Inch)).pick(Pick::More).pick(Pick::Count(0));
    maker.figures(&["1"]).shows(&["Number pad"]).figures(&["12"]).shows(&["GBP, inches"]).tap(Tap::Save).shows(&["Gate, 12"]);
    assert_eq!((maker.sheet().account.currency.code(), maker.sheet().account.units), ("GBP", Units::Inch));
}

/// A new job that lies open while the workshop is set begins as it is set then; what was chosen for the job stays.
#[test]
fn a_new_job_follows_the_workshop() {
    use crate::app::workshop::Tap as Set;
    for (chosen, shown) in [(None, "USD, inches"), (Some("GBP"), "GBP, inches")] {
        let mut maker = Maker::new();
        maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Gate".into())).pick(Pick::MadeFor(For::Order)).shows(&["EUR, millimetres"]);
        if let Some(code) = chosen {
            maker.pick(Pick::More).pick(Pick::Currency(Currency::read(code).unwrap())).pick(Pick::More);
        }
        maker.say(Msg::Go(Place::Workshop));
        maker.say(Msg::Workshop(Set::Currency(Currency::USD)));
        maker.say(Msg::Workshop(Set::Units(Units::Inch)));
        maker.say(Msg::Go(Place::Jobs));
        maker.shows(&["Gate", shown]).tap(Tap::Save).shows(&["Made to order"]);
        assert_eq!(maker.sheet().account.units, Units::Inch);
    }
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
        "fetch 1 h 23, sort 31 min, make 20 h 21, finish 1 h 44, sell and office 1 h 35, deliver 1 h 30 to come",
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
fn the_latest_that_have_ended_come_first_and_a_key_shows_the_others() {
    let begun: String = (1..=14).rev().map(|n| format!("job j{n} \"Shelf {n:02}\" 1 spec\n")).collect();
    let ended = begun + &(1..=14).map(|n| format!("09:{n:02} end j{n}\n")).collect::<String>();
    let mut maker = Maker::told(&[&format!("2026-05-01 08:00 +02:00 workshop EUR metric\n{ended}job last \"Stool\" 1 spec\n")]);
    maker.shows(&["Stool", "Shelf 14", "Shelf 03", "2 more that have ended"]).hides(&["Shelf 02"]);
    maker.tap(Tap::AllEnded).shows(&["Shelf 14", "Shelf 01", "The latest 12 alone"]);
    maker.tap(Tap::AllEnded).hides(&["Shelf 02"]).tap(Tap::Search("shelf 01".into())).shows(&["Shelf 01"]).hides(&["more that"]);
}

#[test]
fn a_tagged_batch_is_for_sale_and_then_at_the_gallery() {
    let market = STANDS.split("2026-05-09").next().unwrap();
    Maker::told(&[market.split("2026-04-25").next().unwrap()]).shows(&["For sale", "pegs, 5", "tag $145", "4 sold", "1 left"]);
    let mut maker = Maker::told(&[market]);
    maker.shows(&["In hand", "1 at the gallery."]).open("stands").shows(&["1 at the gallery.", "The gallery paid"]).tap(Tap::Next);
    maker.figures(&["1", "82.46"]).tap(Tap::Save).shows(&["Sell and deliver", "sold there, paid to you", "82.46"]);
    assert_eq!(maker.sheet().money.kept.unwrap().amount().to_string(), "482.7");
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
    maker.tap(write.clone()).pick(Pick::Count(5)).shows(&["25 here, 22 on the rack", "Put 5 back"]).tap(Tap::Undo);
    assert_eq!(maker.sheet().wood.pieces, 20);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(maker.sheet().wood.pieces, 25);
    // Nothing lies there any more: what can't be taken is said, and the key is none.
    maker.tap(write.clone()).figures(&["22"]).tap(Tap::Save).tap(write).pick(Pick::Count(1));
    maker.shows(&["47 here, 0 on the rack", "Take 1", "none lies there", "Put 1 back"]);
}

/// A pile to be named at home keeps a haul's share unknown: what is known stays in sight, and the pile is named.
#[test]
fn a_pile_without_a_size_is_named_and_hides_nothing_else() {
    let mut maker = Maker::at_the_start();
    let pile = rack(&maker.app.own.shop(maker.now.wall.at), maker.jobs["stands"]).unwrap().remove(0);
    maker.open("stands").tap(Tap::Next).tap(Tap::Write(What::Take { haul: pile.haul, pile: pile.pile })).figures(&["25"]).tap(Tap::Save);
    maker.room("stands", Room::Hours).hides(&["has no size"]);
    let known = maker.sheet().account.hours.total;
    let add = HaulCommand::AddPile { haul: pile.haul, pile: PileFacts::default(), n: 1, way: fivebar_core::ledger::kind::haul::Way::Tap };
    maker.now.chance = [77; 10];
    maker.app.order(&Command::Haul(add), maker.now).unwrap();
    assert!(known.is_some() && maker.sheet().account.hours.total.is_none(), "unknown, never nothing");
    maker.shows(&["has no size"]).tap(Tap::List).open("stands").shows(&["has no size"]);
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

/// A slip of the pen is put right in place: nothing is planned twice.
#[test]
fn a_part_is_renamed_and_an_operation_keeps_its_name() {
    let mut maker = Maker::told(&[BENCH.split("20:02 part").next().unwrap()]);
    maker.room("bench", Room::Wood).tap(Tap::Write(What::Part(None))).tap(Tap::Say(0, "tpo".into()));
    maker.figures(&["1", "32", "340", "1040"]).tap(Tap::Save);
    maker.tap(Tap::Write(What::Part(Some("tpo".into())))).tap(Tap::Say(0, "top".into())).tap(Tap::Save).shows(&["11.3 litres", "Top"]);
    let parts = |maker: &Maker| maker.sheet().parts.iter().map(|part| (part.name.clone(), part.n)).collect::<Vec<_>>();
    assert_eq!(parts(&maker), [("top".to_owned(), 1)]);
    maker.say(Msg::Common(Common::TakeBack));
    assert_eq!(parts(&maker), [("tpo".to_owned(), 1)], "one act");
    maker.room("bench", Room::Hours).tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, "sawing".into())).figures(&["90"]).tap(Tap::Save);
    maker.tap(Tap::Write(What::Plan(Some("sawing".into())))).shows(&["Sawing"]).hides(&["id=\"operation\""]);
    maker.tap(Tap::Say(0, "ripping".into())).figures(&["5"]).tap(Tap::Save);
    let planned = maker.sheet().operations.iter().filter(|planned| ["sawing", "ripping"].contains(&planned.op.as_str())).count();
    assert_eq!(planned, 1);
}

#[test]
fn what_is_planned_is_to_come_until_it_is_done() {
    let mut maker = Maker::at_the_start();
    maker.room("stands", Room::Hours).tap(Tap::Write(What::Plan(None))).shows(&["Thickness", "Sand", "Coat"]);
    maker.pick(Pick::Operation("delivery".into(), Kind::Deliver, false)).figures(&["90", "5"]).tap(Tap::Save);
    maker.shows(&["Delivery", "deliver, 5 pieces", "1 h 30", "Still to come", "1 h 30"]);
    maker.tap(Tap::Write(What::Plan(None))).pick(Pick::Operation("milling".into(), Kind::Make, false)).figures(&["3"]).tap(Tap::Save);
    maker.tap(Tap::Page).shows(&["Next: milling.", "Start milling", "planned 3 min"]).tap(Tap::Next);
    assert_eq!(maker.app.running().map(|run| (run.op, maker.app.place)), Some(("milling".into(), Place::Bench)));
}

/// Struck by its key, or by emptying its minutes; done again it is planned.
#[test]
fn a_planned_operation_is_struck() {
    let mut maker = Maker::at_the_start();
    maker.room("stands", Room::Hours);
    let plan = |maker: &mut Maker| {
        maker.tap(Tap::Write(What::Plan(None))).hides(&["Strike"]).tap(Tap::Say(0, "bore".into())).figures(&["30"]).tap(Tap::Save);
    };
    let is_planned = |maker: &Maker| maker.sheet().operations.iter().any(|planned| planned.op == "bore");
    plan(&mut maker);
    maker.tap(Tap::Write(What::Plan(Some("bore".into())))).shows(&["Strike"]).tap(Tap::Undo);
    assert!(!is_planned(&maker));
    maker.say(Msg::Common(Common::PutBack));
    assert!(is_planned(&maker));
    maker.tap(Tap::Write(What::Plan(Some("bore".into())))).tap(Tap::Save);
    assert!(is_planned(&maker));
    maker.tap(Tap::Write(What::Plan(Some("bore".into())))).tap(Tap::At(0)).tap(Tap::Press(Press::RubOut)).tap(Tap::Press(Press::RubOut));
    maker.tap(Tap::Save);
    assert!(!is_planned(&maker));
}

/// Sanding is planned by the name that the clock has; another form of a name is offered as that one, and taken as it was typed all the same.
#[test]
fn a_plan_has_the_names_of_the_clock() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Oak stools".into())).figures(&["5"]).tap(Tap::Save);
    let plan = |maker: &mut Maker, name: &str| {
        maker.tap(Tap::Room(Room::Hours)).tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, name.into()));
    };
    plan(&mut maker, "sanding");
    maker.shows(&["Call it Sand, the name that is there"]);
    plan(&mut maker, "Sand");
    maker.hides(&["Call it"]);
    maker.figures(&["60"]).tap(Tap::Save);
    maker.tap(Tap::Write(What::Plan(None))).shows(&["Coat"]).hides(&["<span>Sand</span>"]);
    maker.tap(Tap::Say(0, "sand".into())).shows(&["Call it Sand, the name that is there"]).figures(&["60"]).tap(Tap::Save);
    let planned: Vec<String> = maker.sheet().operations.iter().map(|planned| planned.op.clone()).collect();
    assert_eq!(planned, ["Sand", "sand"], "never joined unasked");
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
        maker
            .room("stands", Room::Hours)
            .shows(&["Nothing is written down yet."])
            .spend(way, &figures)
            .shows(&["Spent", shown, "In all", shown]);
        let entry = maker.sheet().account.costs.lines[0].entry;
        maker.hides(&["Strike"]).tap(Tap::Line(entry)).shows(&["Strike", "In all"]);
        maker.tap(Tap::Strike(entry)).shows(&["Nothing is written down yet.", "Do it again"]);
        maker.say(Msg::Common(Common::PutBack));
        maker.shows(&["In all", shown]);
    }
}

#[test]
fn what_was_spent_on_another_day_is_of_that_day() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Shelf".into())).tap(Tap::Save).tap(Tap::Room(Room::Hours));
    let (yesterday, on) = (maker.app.now.day().before(), Pick::SpentOn);
    maker.tap(Tap::Write(What::Spend)).spending(Key::read("glue").unwrap()).shows(&["Spent", "today"]);
    maker.pick(on(SpentTap::Ask)).pick(on(SpentTap::By(1))).shows(&["today"]).pick(on(SpentTap::By(-1))).pick(on(SpentTap::Ask));
    maker.figures(&["3"]).tap(Tap::Save);
    let spent = maker.app.own.book.entries().find_map(|(entry, _)| match &entry.fact {
        Fact::MoneySpent(spent) => Some((spent.when, entry.offset())),
        _ => None,
    });
    let (when, offset) = spent.expect("it was written");
    assert_eq!(when.map(|at| Wall::new(at, offset).day()), Some(yesterday));
}

#[test]
fn spending_that_can_not_be_is_not_written() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Shelf".into())).tap(Tap::Save).tap(Tap::Room(Room::Hours));
    let before = maker.app.own.book.len();
    maker.tap(Tap::Write(What::Spend)).figures(&["3"]).tap(Tap::Save).shows(&["choose one", "glue", "sanding discs"]);
    for (way, figures, said) in [
        (Way::Sum, vec![""], "nothing is typed yet."),
        (Way::Sum, vec!["3.005"], "finer than is kept"),
        (Way::Share, vec!["33", "32", "34"], "33 used, and 32 are left in the pack"),
        (Way::Drive, vec!["18"], "no rate for a distance is set in EUR"),
    ] {
        maker.spend(way, &figures).shows(&[said]).tap(Tap::Close);
    }
    assert_eq!(maker.app.own.book.len(), before + 1, "where glue belongs");
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
