//! Costs of no job: a can that is opened in the workshop, receipts, where a kind belongs, and what jobs have too.

use super::*;
use crate::app::jobs::draft::{Pick, Way, What};
use crate::app::photos::PhotoTap;
use crate::app::shelf::Shelf;
use crate::app::spent_on::SpentTap;
use crate::app::workshop::cans::CanTap;
use crate::words::en::job::SPENDING as ON_JOBS;
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::ledger::{Device, Entry, Fact, line};
use fivebar_core::quantity::Id;
use fivebar_core::sheet::costs::EITHER_WAY;
use fivebar_core::sheet::workshop::workshop;
use fivebar_core::story::tell;

fn can(tap: CanTap) -> Msg {
    Msg::Workshop(Tap::Can(tap))
}

fn figures(texts: &[&str]) -> Vec<Msg> {
    let digits = |text: &str| text.chars().filter_map(|sign| sign.to_digit(10)).collect::<Vec<_>>();
    let press = |digit: u32| can(CanTap::Press(Press::Digit(digit as u8)));
    texts.iter().enumerate().flat_map(|(nth, text)| [can(CanTap::At(nth))].into_iter().chain(digits(text).into_iter().map(press))).collect()
}

fn key(key: &str) -> Key {
    Key::read(key).unwrap()
}

/// 750 ml for 24: open three weeks, no job has any of it, and it is worth its price less a month's age that is not full.
#[test]
fn a_can_is_opened_in_the_workshop() {
    let mut app = App::for_tests(Place::Workshop);
    let form = after(&mut app, [tap(Tap::Open(Over::Costs)), can(CanTap::New)]);
    assert!(form.contains("What stands on the can") && form.contains("It holds"), "{form}");
    let ml = can(CanTap::Unit(key("ml")));
    let figures = figures(&["750", "24"]);
    let refused = after(&mut app, [can(CanTap::Name("Hard oil".into())), ml].into_iter().chain(figures).chain([can(CanTap::Save)]));
    assert!(refused.contains("Not written yet: say what it is.") && app.own.book.is_empty(), "{refused}");
    let asked = after(&mut app, [can(CanTap::Kind(key("finish")))]);
    assert!(asked.contains("Finish: on each job as used, or in your rate?") && !asked.contains("say what it is"), "{asked}");
    let day = |tap| Msg::Workshop(Tap::SpentOn(tap));
    let weeks = [day(SpentTap::Ask)].into_iter().chain(std::iter::repeat_n(day(SpentTap::By(-7)), 3)).chain([day(SpentTap::Ask)]);
    // Passed over, it is put once by Done, where the pad was; the next Done leaves it open.
    let put = after(&mut app, weeks.chain([can(CanTap::Save)]));
    assert!(put.contains("Say where it belongs. Done again leaves that open.") && put.contains("In the rate"), "{put}");
    assert!(app.own.book.is_empty() && !put.contains("class=\"pad\""), "{put}");
    let page = after(&mut app, [can(CanTap::Save)]);
    for shown in ["Open cans and packs", "Hard oil", "750 of 750 ml left, under a month open", "$24.00", "Nothing this year yet."] {
        assert!(page.contains(shown), "{shown}: {page}");
    }
    let opened = app.own.workshop().cans[0].clone();
    assert_eq!(opened.opened.day(), app.now.day().plus(-21));
    // Its receipt is at it, and the bar takes the can back.
    let photo = fivebar_core::quantity::Id::new(app.now.at, [42; 10]);
    let taken = after(
        &mut app,
        [tap(Tap::Line(opened.id)), Msg::Photo(PhotoTap::Receipt(opened.id)), Msg::Photo(PhotoTap::Kept { photo, bytes: 9 })],
    );
    assert!(taken.contains("receipt") && taken.contains("Being read."), "{taken}");
    assert!(!after(&mut app, [tap(Tap::Strike(opened.id))]).contains("Hard oil"));
}

/// A can that is used up is behind one key, with its receipt; none, and there is no key.
#[test]
fn the_receipt_of_a_can_that_is_empty_is_at_hand() {
    let mut app = App::for_tests(Place::Workshop);
    let new = [tap(Tap::Open(Over::Costs)), can(CanTap::New), can(CanTap::Name("Hard oil".into())), can(CanTap::Kind(key("felt")))];
    let page =
        after(&mut app, new.into_iter().chain([can(CanTap::Unit(key("ml")))]).chain(figures(&["750", "24"])).chain([can(CanTap::Save)]));
    assert!(!page.contains("Used up"), "{page}");
    let opened = app.own.workshop().cans[0].id;
    let photo = fivebar_core::quantity::Id::new(app.now.at, [42; 10]);
    after(&mut app, [Msg::Photo(PhotoTap::Receipt(opened)), Msg::Photo(PhotoTap::Kept { photo, bytes: 9 })]);
    let page = after(&mut app, [tap(Tap::EmptyCan(opened))]);
    assert!(page.contains("Used up") && page.contains("1 can or pack") && !page.contains("Hard oil"), "{page}");
    let row = after(&mut app, [can(CanTap::UsedUp)]);
    assert!(row.contains("Hard oil") && row.contains("750 ml, used up") && row.contains(", receipt") && row.contains("$24.00"), "{row}");
    let open = after(&mut app, [tap(Tap::Line(opened))]);
    assert!(open.contains("Being read.") && open.contains("Remove") && !open.contains("It is empty"), "{open}");
    assert!(!after(&mut app, [can(CanTap::UsedUp)]).contains("Hard oil"));
}

#[test]
fn a_can_that_holds_nothing_is_refused_and_what_was_typed_stays() {
    let mut app = App::for_tests(Place::Workshop);
    let typed = [tap(Tap::Open(Over::Costs)), can(CanTap::New), can(CanTap::Kind(key("felt")))].into_iter().chain(figures(&["0", "24"]));
    let refused = after(&mut app, typed.chain([can(CanTap::Save)]));
    assert!(refused.contains("role=\"alert\"") && refused.contains("24") && app.own.workshop().cans.is_empty(), "{refused}");
    assert!(!after(&mut app, [tap(Tap::Close)]).contains("It holds") && app.workshop.over == Over::Costs);
}

#[test]
fn a_workshop_cost_has_its_receipt() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Costs))]);
    spent(&mut app, "rent", "40");
    let line = app.own.book.entries().next().unwrap().0.id;
    assert!(after(&mut app, [tap(Tap::Line(line))]).contains("Photo of the receipt"));
    let photo = fivebar_core::quantity::Id::new(app.now.at, [42; 10]);
    let taken = after(&mut app, [Msg::Photo(PhotoTap::Receipt(line)), Msg::Photo(PhotoTap::Kept { photo, bytes: 90_000 })]);
    assert!(taken.contains("receipt") && taken.contains("Being read.") && taken.contains("Remove"), "{taken}");
    assert_eq!(app.own.workshop().photos.of_spending(line).collect::<Vec<_>>(), [photo]);
    assert!(!after(&mut app, [Msg::Photo(PhotoTap::Remove(photo))]).contains("Being read."));
}

/// Every kind that can be written down in both places is one that is asked about, in each of them.
#[test]
fn each_kind_of_cost_has_one_home() {
    for kind in SPENDING_KEYS.iter().filter(|kind| ON_JOBS.contains(kind)) {
        assert!(EITHER_WAY.contains(kind), "{kind}");
    }
    for kind in EITHER_WAY {
        assert!(ON_JOBS.contains(&kind), "{kind}");
        let mut app = App::for_tests(Place::Workshop);
        let asks = "on each job as used, or in your rate?";
        let page = after(&mut app, [tap(Tap::Open(Over::Costs)), tap(Tap::Spend(kind))]);
        assert!(page.contains(asks), "{kind}: {page}");
        let in_rate = after(&mut app, [tap(Tap::Home(key(kind), Home::Rate))]);
        assert!(!in_rate.contains(asks) && !in_rate.contains("counts twice"), "{kind}");
        // It has a key of its own where the costs of no job are written down.
        let name = crate::words::en::workshop::spending(kind);
        assert!(name != "Other" && after(&mut app, [tap(Tap::Close)]).contains(name), "{kind}");
    }
}

#[test]
fn what_belongs_on_jobs_is_told_among_the_costs_of_none() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Costs))]);
    // Passed over, it is put once by Done; the next Done leaves it open.
    let put = after(&mut app, std::iter::once(tap(Tap::Spend("power"))).chain(form(&["40"])));
    assert!(put.contains("Say where it belongs. Done again leaves that open.") && app.own.book.is_empty(), "{put}");
    assert!(!after(&mut app, [Msg::Jobs(Jobs::Save)]).contains("twice") && !app.own.book.is_empty());
    let told = after(&mut app, [tap(Tap::Home(key("power"), Home::Job))]);
    assert!(told.contains("Power belongs on jobs: in workshop costs it counts twice.") && told.contains("In the rate"), "{told}");
    assert!(!after(&mut app, [tap(Tap::Home(key("power"), Home::Rate))]).contains("twice"));
}

/// Answered where Done put it, the pad is back and Done writes the can.
#[test]
fn where_a_can_belongs_is_asked_when_it_is_opened() {
    let mut app = App::for_tests(Place::Workshop);
    let new = [tap(Tap::Open(Over::Costs)), can(CanTap::New), can(CanTap::Kind(key("glue"))), can(CanTap::Unit(key("ml")))];
    after(&mut app, new.into_iter().chain(figures(&["750", "24"])).chain([can(CanTap::Save)]));
    let said = after(&mut app, [tap(Tap::Home(key("glue"), Home::Job))]);
    assert!(said.contains("class=\"pad\"") && !said.contains("Say where it belongs") && app.own.workshop().cans.is_empty(), "{said}");
    after(&mut app, [can(CanTap::Save)]);
    assert_eq!(app.own.workshop().cans.len(), 1);
}

/// 750 l for 24 are 0.03 for a litre: asked about once, and taken when it is said again.
#[test]
fn the_price_of_a_can_is_asked_about_once() {
    let mut app = App::for_tests(Place::Workshop);
    let new = [tap(Tap::Open(Over::Costs)), can(CanTap::New), can(CanTap::Kind(key("packing"))), can(CanTap::Unit(key("l")))];
    let asked = after(&mut app, new.into_iter().chain(figures(&["750", "24"])).chain([can(CanTap::Save)]));
    assert!(asked.contains("$0.03 for a litre?") && app.own.book.is_empty(), "{asked}");
    assert!(!after(&mut app, [can(CanTap::Unit(key("ml")))]).contains("for a litre?"));
    after(&mut app, [can(CanTap::Unit(key("l"))), can(CanTap::Save)]);
    assert!(app.own.book.is_empty(), "it was typed anew");
    after(&mut app, [can(CanTap::Save)]);
    assert_eq!(app.own.workshop().cans.len(), 1);
}

/// Two phones put the same 9.5 of 32 back: it is full and no fuller, and says what was put back twice.
#[test]
fn a_can_that_was_put_back_into_twice_says_so() {
    let story = tell(
        "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\nopen-can 34.90 holds 32 fl-oz finish \"Oil\" as oil\n\
         use-can oil 9.5 finish on more as used\nback-in-can 9.5 used\n",
    );
    assert_eq!(story.refused, []);
    let mut lines = story.book.entries().map(|(entry, _)| line::write(entry)).collect::<Vec<_>>();
    let (last, _) = story.book.entries().last().unwrap();
    let Fact::MoneySpent(back) = last.fact.clone() else { panic!("{last:?}") };
    let other = Entry { id: Id::new(story.now.at, [77; 10]), fact: back.into(), ..last.clone() };
    lines.push(line::write(&other));
    let mut app = App::for_tests(Place::Workshop);
    app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
    app.now = story.now;
    let page = after(&mut app, [tap(Tap::Open(Over::Costs))]);
    assert!(page.contains("32 of 32 fl oz left, under a month open, 9.5 fl oz put back twice: strike one of them on its job"), "{page}");
}

/// What the year's costs of no job come to, on their page.
fn year(app: &App) -> Decimal {
    let shop = app.own.shop(app.now.at);
    workshop(&shop, app.now.offset).unwrap().costs.get(&Currency::USD).map_or(Decimal::ZERO, |year| year.total.amount())
}

fn last(app: &App) -> Id {
    app.own.book.entries().last().unwrap().0.id
}

/// A blade of 64.50, of which 24.50 came back: 40.00 is left of it. More than was spent does not come back, nor what came back once more;
/// struck, it takes that along.
#[test]
fn some_of_a_workshop_cost_comes_back() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Costs))]);
    spent(&mut app, "edges", "64.5");
    let blade = last(&app);
    let opened = after(&mut app, [tap(Tap::Line(blade))]);
    assert!(opened.contains("Some of it came back") && opened.contains("Photo of the receipt") && opened.contains("Strike"), "{opened}");
    let refused = after(&mut app, std::iter::once(tap(Tap::CameBack(blade))).chain(form(&["70"])));
    assert!(refused.contains("Not taken: $70.00 came back of $64.50 that was spent."), "{refused}");
    let words = Msg::Jobs(Jobs::Say(0, "wrong teeth".into()));
    let shown = after(&mut app, [tap(Tap::Close), tap(Tap::CameBack(blade)), words].into_iter().chain(form(&["24.5"])));
    assert!(shown.contains("Some of it came back, wrong teeth") && shown.contains("$40.00"), "{shown}");
    let back = last(&app);
    assert_eq!(year(&app), Decimal::from(40));
    assert!(!after(&mut app, [tap(Tap::Line(back))]).contains(">Some of it came back<"));
    after(&mut app, [Msg::Common(Common::TakeBack)]);
    assert_eq!(year(&app), Decimal::new(645, 1));
    after(&mut app, [Msg::Common(Common::PutBack)]);
    assert_eq!(year(&app), Decimal::from(40));
    after(&mut app, [tap(Tap::Strike(blade))]);
    assert_eq!(year(&app), Decimal::ZERO);
}

/// Ten discs at 0.85 are 8.50, and four of them back leave 5.10.
#[test]
fn a_workshop_cost_is_counted_at_a_price_each() {
    let mut app = App::for_tests(Place::Workshop);
    let each = Msg::Jobs(Jobs::Pick(Pick::Way(Way::Each)));
    let asked = after(&mut app, [tap(Tap::Open(Over::Costs)), tap(Tap::Spend("workshop")), each]);
    assert!(asked.contains("Used up") && asked.contains("Driven") && !asked.contains("Of a pack"), "{asked}");
    let shown = after(&mut app, form(&["10", "0.85"]));
    assert!(shown.contains("$8.50") && shown.contains("10 at 0.85"), "{shown}");
    let discs = last(&app);
    let shown = after(&mut app, std::iter::once(tap(Tap::CameBack(discs))).chain(form(&["", "4"])));
    assert!(shown.contains("4 back") && year(&app) == Decimal::new(51, 1), "{shown}");
    after(&mut app, [Msg::Common(Common::TakeBack), Msg::Common(Common::TakeBack)]);
    assert_eq!(year(&app), Decimal::ZERO);
}

/// 12 mi for glue at 0.70 are 8.40: as the till has it, where no rate is typed; none is known before. The open form of a job stays as it was.
#[test]
fn a_drive_for_no_job_costs_the_makers_rate() {
    let mut app = App::for_tests(Place::Workshop);
    let drive = || {
        let glue = Msg::Jobs(Jobs::Say(0, "for glue".into()));
        [tap(Tap::Open(Over::Costs)), tap(Tap::Drive), glue].into_iter().chain(form(&["12"]))
    };
    let refused = after(&mut app, drive());
    assert!(refused.contains("role=\"alert\"") && app.own.book.is_empty(), "{refused}");
    after(&mut app, [tap(Tap::Open(Over::Till))]);
    typed(&mut app, Figure::Mileage, "0.7");
    after(
        &mut app,
        [Msg::Go(Place::Jobs), Msg::Jobs(Jobs::Write(What::New)), Msg::Jobs(Jobs::Say(0, "Stool".into())), Msg::Go(Place::Workshop)],
    );
    let shown = after(&mut app, drive());
    assert!(shown.contains("A drive") && shown.contains("for glue, 12 mi") && year(&app) == Decimal::new(84, 1), "{shown}");
    let drive = last(&app);
    assert!(!after(&mut app, [tap(Tap::Line(drive))]).contains("Some of it came back"));
    assert!(after(&mut app, [Msg::Common(Common::TakeBack)]).contains("Nothing this year yet."));
    assert!(after(&mut app, [Msg::Go(Place::Jobs)]).contains("Stool"));
}

/// Left half typed, nothing is written.
#[test]
fn a_workshop_cost_is_left_without_a_trace() {
    let mut app = App::for_tests(Place::Workshop);
    for left in [Msg::Jobs(Jobs::Close), tap(Tap::Close), Msg::Key("Escape".into())] {
        after(&mut app, [tap(Tap::Open(Over::Costs)), tap(Tap::Spend("rent"))]);
        let typed = after(&mut app, form(&["4"]).into_iter().take(2));
        assert!(typed.contains("How it comes about"), "{typed}");
        let page = after(&mut app, [left]);
        assert!(page.contains("Nothing this year yet.") && app.workshop.over == Over::Costs && app.own.book.is_empty(), "{page}");
    }
}
