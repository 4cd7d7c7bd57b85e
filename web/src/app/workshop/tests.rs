//! Workshop as tables of taps.

mod asked;
mod copies;
mod costs;
mod rows;
mod taxes;
mod tools;

use super::figures::SPENDING as SPENDING_KEYS;
use super::*;
use crate::app::here::{Here, Kept, TextSize, Theme};
use crate::app::jobs::Tap as Jobs;
use crate::app::news::{Handed, News, Trouble};
use crate::app::order::{Choice, Which};
use crate::app::told::{after, nth};
use crate::app::{Common, Msg};
use crate::words::Plain;
use fivebar_core::money::point::Points;
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Decimal, Span, Wall};

fn tap(tap: Tap) -> Msg {
    Msg::Workshop(tap)
}

fn typed(app: &mut App, figure: Figure, text: &str) -> String {
    let presses = text.chars().map(|sign| match sign {
        '.' => Press::Point,
        digit => Press::Digit(digit.to_digit(10).unwrap() as u8),
    });
    let presses: Vec<Msg> = presses.map(|press| tap(Tap::Press(press))).collect();
    let shown = after(app, [tap(Tap::Figure(figure))].into_iter().chain(presses).chain([tap(Tap::PadDone)]));
    let leads_on = matches!(app.workshop.over, Over::Figure(next, ..) if next != figure);
    if leads_on { after(app, [tap(Tap::Close)]) } else { shown }
}

/// The form of a spending of no job, or of what came back: figures by its pad, one place after the other.
fn form(figures: &[&str]) -> Vec<Msg> {
    let press = |sign: char| Msg::Jobs(Jobs::Press(sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8))));
    let of = |(nth, text): (usize, &&str)| std::iter::once(Msg::Jobs(Jobs::At(nth))).chain(text.chars().map(press)).collect::<Vec<_>>();
    figures.iter().enumerate().filter(|(_, text)| !text.is_empty()).flat_map(of).chain([Msg::Jobs(Jobs::Save)]).collect()
}

/// Writes a sum down for a kind; where it belongs is left open.
fn spent(app: &mut App, kind: &'static str, text: &str) -> String {
    after(app, std::iter::once(tap(Tap::Spend(kind))).chain(form(&[text])));
    if app.workshop.spending.is_some() { after(app, [Msg::Jobs(Jobs::Save)]) } else { after(app, []) }
}

/// domain.md's rate: (480 h x 22 + 2,640) / 300 h = 44.00.
#[test]
fn a_rate_is_said_figure_by_figure() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Rate))]);
    for (figure, text) in [(Figure::Pay, "22"), (Figure::Hours, "480"), (Figure::Costs, "2640")] {
        let shown = typed(&mut app, figure, text);
        assert!(shown.contains("Not worked out yet") && shown.contains("Missing: "), "{shown}");
    }
    assert!(typed(&mut app, Figure::Logged, "300").contains("$44.00"));
    let refused = typed(&mut app, Figure::Logged, "500");
    assert!(refused.contains("500 h logged to jobs is more than the 480 h worked in all"), "{refused}");
    assert_eq!(refused.matches("500 h logged").count(), 1, "in its place, and only there");
    assert!(!after(&mut app, [tap(Tap::Press(Press::RubOut))]).contains("500 h logged"), "gone with the next press");
}

#[test]
fn a_figure_that_can_not_be_is_refused_in_place() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Till))]);
    let shown = typed(&mut app, Figure::SalesTax, "101");
    assert!(shown.contains("0 % to 100 %"), "{shown}");
    assert!(app.own.book.is_empty());
}

/// What was said last of the one leaves the other as it was.
#[test]
fn currency_and_units_keep_each_other() {
    let (euro, metric) = (tap(Tap::Currency(Currency::EUR)), tap(Tap::Units(Units::Metric)));
    let (dollar, inch) = (tap(Tap::Currency(Currency::USD)), tap(Tap::Units(Units::Inch)));
    for (said, wanted) in [
        (vec![], (Currency::USD, Units::Inch)),
        (vec![metric.clone()], (Currency::USD, Units::Metric)),
        (vec![euro.clone()], (Currency::EUR, Units::Inch)),
        (vec![metric.clone(), euro.clone()], (Currency::EUR, Units::Metric)),
        (vec![euro.clone(), metric.clone()], (Currency::EUR, Units::Metric)),
        (vec![euro.clone(), metric.clone(), dollar], (Currency::USD, Units::Metric)),
        (vec![metric, euro, inch], (Currency::EUR, Units::Inch)),
    ] {
        let mut app = App::for_tests(Place::Workshop);
        after(&mut app, said.clone());
        assert_eq!(app.begins_with(), wanted, "{said:?}");
    }
}

/// Any currency there is can be begun with: the usual ones and the yen by a key, others by the letters they begin with; the one that is chosen has
/// its key.
#[test]
fn any_currency_can_be_begun_with() {
    let mut app = App::for_tests(Place::Workshop);
    let shown = |app: &App| crate::screens::page(app).html();
    after(&mut app, [tap(Tap::Open(Over::Units))]);
    assert!(shown(&app).contains(">JPY<") && shown(&app).contains("Another, by its letters") && !shown(&app).contains(">KRW<"));
    after(&mut app, [tap(Tap::Typed("k".into()))]);
    assert!(["KES", "KRW", "KWD"].iter().all(|code| shown(&app).contains(&format!(">{code}<"))) && !shown(&app).contains(">INR<"));
    after(&mut app, [tap(Tap::Typed("xx".into()))]);
    assert!(shown(&app).contains("No currency begins so."));
    after(&mut app, [tap(Tap::Typed("KR".into())), tap(Tap::Currency(Currency::read("KRW").unwrap())), tap(Tap::Typed(String::new()))]);
    assert_eq!(app.begins_with().0.code(), "KRW");
    assert!(shown(&app).contains("aria-pressed=\"true\"><span>KRW<"), "{}", shown(&app));
}

/// A typed name is asked about once before it is left.
#[test]
fn a_typed_name_is_not_thrown_away() {
    let mut app = App::for_tests(Place::Workshop);
    let asked = after(&mut app, [tap(Tap::Open(Over::People)), tap(Tap::Typed("Anna".into())), tap(Tap::Close)]);
    assert!(asked.contains("Anna is not added yet") && asked.contains("Add as"), "{asked}");
    let added = after(&mut app, [tap(Tap::AddPerson(Role::Supplier))]);
    assert!(added.contains("Anna") && !added.contains("not added yet") && added.contains("a supplier"), "{added}");
    after(&mut app, [tap(Tap::Typed("Ben".into())), tap(Tap::Close), tap(Tap::Close)]);
    assert_eq!(app.workshop.over, Over::Nothing);
}

/// What is said of the rate and of driving is no "not said".
#[test]
fn what_was_typed_for_a_trip_is_said_on_the_first_page() {
    let mut app = App::for_tests(Place::Workshop);
    typed(&mut app, Figure::Pay, "20");
    let shown = typed(&mut app, Figure::Mileage, "0.67");
    assert!(shown.contains("pay $20.00 an hour, the rest not said") && shown.contains("driving 0.67 a mi"), "{shown}");
}

/// In another currency nothing is said yet; what was said in the one before is kept, and that is said. A rate of driving has its currency.
#[test]
fn what_was_said_in_another_currency_is_not_lost() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Currency(Currency::EUR))]);
    typed(&mut app, Figure::Pay, "20");
    typed(&mut app, Figure::Mileage, "0.23");
    let shown = after(&mut app, [tap(Tap::Open(Over::Till))]);
    assert!(shown.contains("€0.23"), "{shown}");
    let shown = after(&mut app, [tap(Tap::Figure(Figure::Mileage)), tap(Tap::Close), tap(Tap::Close)]);
    assert!(!shown.contains("kept for"), "{shown}");
    typed(&mut app, Figure::Mileage, "0.0675");
    assert!(after(&mut app, [tap(Tap::Open(Over::Till))]).contains("0.0675 EUR"));
    let shown = after(&mut app, [tap(Tap::Close), tap(Tap::Currency(Currency::read("JPY").unwrap()))]);
    assert_eq!(shown.matches("not said for JPY, kept for EUR").count(), 2, "{shown}");
}

/// In yen prices go by hundreds until another step is chosen, and the larger ones stand there; in dollars they do not, and fives are usual.
#[test]
fn price_points_are_of_the_size_of_the_currency() {
    let mut app = App::for_tests(Place::Workshop);
    let mut points = |code: &str, chosen: Option<Points>| {
        let to = [Tap::Close, Tap::Currency(Currency::read(code).unwrap()), Tap::Open(Over::Till)].map(tap);
        let shown = after(&mut app, to.into_iter().chain(chosen.map(|points| tap(Tap::Point(points)))));
        let keys = shown.split("chips points").nth(1).unwrap().split("</div>").next().unwrap().to_owned();
        let key = |part: &str| (part.contains("aria-pressed=\"true\""), part.split('<').next().unwrap_or("").to_owned());
        keys.split("<button").skip(1).map(|part| (key(part).0, key(part.split("<span>").nth(1).unwrap()).1)).collect::<Vec<_>>()
    };
    let words = |keys: &[(bool, String)]| keys.iter().map(|(_, word)| word.as_str()).collect::<Vec<_>>().join(" ");
    let chosen = |keys: &[(bool, String)]| words(&keys.iter().filter(|(on, _)| *on).cloned().collect::<Vec<_>>());
    let yen = points("JPY", None);
    assert_eq!((words(&yen).as_str(), chosen(&yen).as_str()), ("1 10 50 100 500 1000 …9", "100"));
    assert_eq!(chosen(&points("JPY", Some(Points::Thousand))), "1000");
    let old = points("JPY", Some(Points::TwentyFive));
    assert_eq!((words(&old).as_str(), chosen(&old).as_str()), ("1 10 25 50 100 500 1000 …9", "25"));
    let dollars = points("USD", None);
    assert_eq!((words(&dollars).as_str(), chosen(&dollars).as_str()), ("cent 1 5 10 25 50 100 …9", "5"));
}

/// Only the coin is said here: that is no "not said for USD", though more is said in another currency.
#[test]
fn a_till_of_which_a_part_is_said_is_no_not_said() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Currency(Currency::EUR))]);
    typed(&mut app, Figure::Mileage, "0.23");
    after(&mut app, [tap(Tap::Currency(Currency::USD))]);
    let shown = typed(&mut app, Figure::Cash, "0.05");
    assert!(!shown.contains("not said for USD") && shown.contains("sales tax, card and driving not said"), "{shown}");
}

#[test]
fn a_name_is_never_in_the_book() {
    let mut app = App::for_tests(Place::Workshop);
    let typed = [tap(Tap::Open(Over::People)), tap(Tap::Typed("Stair works".into())), tap(Tap::AddPerson(Role::Supplier))];
    let shown = after(&mut app, typed);
    assert!(shown.contains("Stair works"));
    assert!(app.own.book.lines().all(|line| !line.contains("Stair")));
    let person = *app.own.names.keys().next().unwrap();
    assert!(!after(&mut app, [tap(Tap::Forget(person))]).contains("Stair works"));
}

#[test]
fn everything_goes_only_when_the_word_is_typed() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Wipe))]);
    for text in ["", "dele", "delete it"] {
        let shown = after(&mut app, [tap(Tap::Typed(text.into()))]);
        assert!(shown.contains(" disabled"), "{shown}");
        assert_eq!(app.heard(tap(Tap::Wipe), nth(1)), []);
    }
    after(&mut app, [tap(Tap::Typed("Delete ".into()))]);
    assert_eq!(app.heard(tap(Tap::Wipe), nth(2)), [Order::WipeAll]);
    app.told(News::NotWiped(Trouble::Blocked));
    assert!(after(&mut app, [tap(Tap::Close)]).contains("Keep a copy"));
}

/// Forgotten for good, but the bar of that moment still brings the name back.
#[test]
fn a_name_comes_back_while_the_bar_stands() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::People)), tap(Tap::Typed("Stair works".into())), tap(Tap::AddPerson(Role::Supplier))]);
    let person = *app.own.names.keys().next().unwrap();
    let shown = after(&mut app, [tap(Tap::Line(person)), tap(Tap::Forget(person))]);
    assert!(!shown.contains("Stair works"), "{shown}");
    let orders = app.heard(Msg::Common(Common::TakeBack), nth(30));
    assert!(orders.iter().any(|order| matches!(order, Order::Append { names, .. } if names.kept.len() == 1)), "{orders:?}");
    assert!(after(&mut app, []).contains("Stair works"));
    let orders = app.heard(Msg::Common(Common::PutBack), nth(31));
    assert!(orders.iter().any(|order| matches!(order, Order::Append { names, .. } if names.forgotten.len() == 1)), "{orders:?}");
    assert!(!after(&mut app, []).contains("Stair works"));
}

#[test]
fn a_cost_of_no_job_is_written_down_and_struck() {
    let mut app = App::for_tests(Place::Workshop);
    let words = Msg::Jobs(Jobs::Say(0, "planer knives".into()));
    after(&mut app, [tap(Tap::Open(Over::Costs)), tap(Tap::Spend("edges")), words]);
    let shown = after(&mut app, form(&["64.5"]).into_iter().chain([Msg::Jobs(Jobs::Save)]));
    assert!(shown.contains("$64.50") && shown.contains("planer knives"), "{shown}");
    let line = app.own.book.entries().next().unwrap().0.id;
    let shown = after(&mut app, [tap(Tap::Line(line)), tap(Tap::Strike(line))]);
    assert!(shown.contains("Nothing this year yet.") && shown.contains("Do it again"), "{shown}");
    assert!(after(&mut app, [Msg::Common(Common::PutBack)]).contains("$64.50"));
}

/// With the comma as decimal sign, `1,250` has two readings: each is a key.
#[test]
fn a_figure_with_two_readings_offers_both() {
    let mut app = App::for_tests(Place::Workshop);
    app.speech = std::rc::Rc::new(Plain { sign: Sign::Comma, ..Plain::default() });
    let presses = [Press::Digit(1), Press::Point, Press::Digit(2), Press::Digit(5), Press::Digit(0)].map(|press| tap(Tap::Press(press)));
    let open = [tap(Tap::Open(Over::Till)), tap(Tap::Figure(Figure::Mileage))];
    let shown = after(&mut app, open.into_iter().chain(presses).chain([tap(Tap::PadDone)]));
    assert!(shown.contains("it may mean 1250 or 1.25"), "{shown}");
    let shown = after(&mut app, [tap(Tap::Take(Quantity::Number(Decimal::new(125, 2))))]);
    assert!(shown.contains("How you are paid") && shown.contains("1.25"), "{shown}");
}

#[test]
fn what_suits_the_hand_holds_at_once_and_is_remembered() {
    let mut app = App::for_tests(Place::Workshop);
    after(&mut app, [tap(Tap::Open(Over::Hand))]);
    let orders = app.heard(tap(Tap::Choose(Chosen::SingleKeys(false))), nth(1));
    assert_eq!(orders, [Order::Choose { key: Choice::SingleKeys, value: "off".into() }]);
    assert!(!app.here.single_keys);
    after(&mut app, [tap(Tap::Choose(Chosen::Theme(Theme::Dark))), tap(Tap::Choose(Chosen::Text(TextSize::Large)))]);
    assert_eq!((app.here.theme, app.here.text), (Theme::Dark, TextSize::Large));
}

#[test]
fn the_phones_answer_to_keeping_is_said_each_way() {
    for (kept, said) in [
        (Kept::ForGood, "This phone keeps it until you delete it."),
        (Kept::WhileThereIsRoom, "This phone may clear it when it runs out of room."),
        (Kept::NotSaid, "This phone does not say how long it keeps it."),
    ] {
        let mut app = App::for_tests(Place::Workshop);
        app.told(News::Kept(kept));
        assert!(after(&mut app, [tap(Tap::Open(Over::Copies))]).contains(said));
    }
}

#[test]
fn installing_is_asked_before_the_first_entry_where_books_are_apart() {
    let mut app = App::for_tests(Place::Count);
    app.told(News::Here(Here { install_first: true, ..Here::default() }));
    let shown = after(&mut app, []);
    assert!(shown.contains("Put the app on the home screen before your first entry"), "{shown}");
    assert!(after(&mut app, [tap(Tap::ShowHelp)]).contains("Add to home screen"));
    let shown = after(&mut app, [Msg::Go(Place::Count), Msg::Count(crate::app::count::Tap::First)]);
    assert!(!shown.contains("before your first entry"), "{shown}");
    app.told(News::CanInstall(true));
    assert!(after(&mut app, [Msg::Go(Place::Workshop), tap(Tap::Open(Over::Nothing))]).contains("Put it on the home screen"));
    assert_eq!(app.heard(Msg::Common(Common::Install), nth(40)), [Order::Install]);
}

#[test]
fn a_book_that_does_not_open_offers_to_open_again() {
    let mut app = App::for_tests(Place::Count);
    app.told(News::NotOpened { which: Which::Own, trouble: Trouble::Blocked });
    let shown = after(&mut app, []);
    assert!(shown.contains("The book could not be opened.") && shown.contains("Open it again"), "{shown}");
    assert_eq!(app.heard(Msg::Common(Common::Reload), nth(1)), [Order::Reload]);
}

#[test]
fn much_that_is_in_no_copy_is_said_on_every_other_place() {
    let mut app = App::for_tests(Place::Count);
    after(&mut app, [Msg::Count(crate::app::count::Tap::First)]);
    let pile = crate::app::count::sheet(&app).unwrap().tiles[0].pile;
    for _ in 0..100 {
        after(&mut app, [Msg::Count(crate::app::count::Tap::Pile(pile))]);
    }
    let nudge = "In no copy yet: 101 pieces. Workshop keeps one.";
    assert!(after(&mut app, []).contains(nudge));
    assert!(after(&mut app, [Msg::Go(Place::Bench)]).contains(nudge));
    assert!(!after(&mut app, [Msg::Go(Place::Workshop)]).contains(nudge));
}

#[test]
fn every_caution_stands_in_the_list_word_for_word() {
    let mut app = App::for_tests(Place::Workshop);
    let shown = after(&mut app, [tap(Tap::Open(Over::Cautions))]);
    assert_eq!(crate::words::en::help::ALL_CAUTIONS.len(), 12);
    for (_, line) in crate::words::en::help::ALL_CAUTIONS {
        assert!(shown.contains(line), "{line}");
    }
}

#[test]
fn working_hours_and_days_off_are_said_by_single_taps() {
    use super::hours::HoursTap;
    use fivebar_core::quantity::Clock;
    let mut app = App::for_tests(Place::Workshop);
    let hours = |one| tap(Tap::Hours(one));
    let shown = after(&mut app, [tap(Tap::Open(Over::Hours))]);
    assert!(shown.contains("Our guess until you say") && shown.contains("None ahead."), "{shown}");
    let work = |app: &App| app.shelf().workshop().hours.workdays();
    let shown = after(
        &mut app,
        [hours(HoursTap::Bench(6)), hours(HoursTap::Closing(Clock::at(17, 15).unwrap())), hours(HoursTap::Weekday(5, false))],
    );
    assert!(!shown.contains("Our guess") && shown.contains("17:15"), "{shown}");
    assert_eq!((work(&app).bench, work(&app).days), (Span::minutes(360), [true, true, true, true, true, false, false]));
    // The last day worked stays: a week without any is refused.
    let none: Vec<Msg> = (0..5).map(|nth| hours(HoursTap::Weekday(nth, false))).collect();
    assert!(after(&mut app, none).contains("no day of the week is left to work on"));
    // From Wednesday, three in a row; they stand as one stretch, and are worked after all in one tap.
    let shown = after(&mut app, [hours(HoursTap::OffBy(7)), hours(HoursTap::OffDays(3))]);
    assert!(shown.contains("Take Wed 11 March to Fri 13 March off"), "{shown}");
    let shown = after(&mut app, [hours(HoursTap::Off)]);
    assert!(shown.contains("Wed 11 March to Fri 13 March") && shown.contains("Work after all"), "{shown}");
    let first = app.now.day().plus(8);
    assert!(after(&mut app, [hours(HoursTap::On(first, first.plus(2)))]).contains("None ahead."));
    assert!(after(&mut app, [Msg::Common(Common::TakeBack)]).contains("Work after all"));
    let index = after(&mut app, [tap(Tap::Close)]);
    assert!(index.contains("Working hours") && index.contains("6 h a day, till 17:15"), "{index}");
}

#[test]
fn the_real_year_says_where_its_hours_come_from() {
    let mut app = App::for_tests(Place::Workshop);
    let real = [tap(Tap::Open(Over::Rate)), tap(Tap::Open(Over::RealYear))];
    assert!(!after(&mut app, real.clone()).contains("The hours worked:"));
    let told = "
2026-02-27 09:00 +00:00 workshop USD inch
start \"saw\" make
09:40 stop
12:00 recall \"sand\" make 10:00 to 11:00
17:00 start \"oil\" make
2026-02-28 08:00 stop
";
    let story = fivebar_core::story::tell(told);
    assert_eq!(story.refused, []);
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    app.own = crate::app::shelf::Shelf::open(fivebar_core::ledger::Device::new([1; 8]), lines.iter().map(String::as_str));
    app.now = story.now;
    let key = after(&mut app, real[..1].to_vec());
    assert!(key.contains("0 min logged") && !key.contains("0 min logged, "), "open hours of no job are no logged ones");
    let shown = after(&mut app, real);
    for said in ["The hours worked: measured 40 min, recalled 1 h.", "15 h more is to settle on Bench and in none of these figures"] {
        assert!(shown.contains(said), "{said}: {shown}");
    }
}
