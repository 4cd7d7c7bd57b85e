mod agree;
mod all_asked;
mod anew;
mod away;
mod before;
mod bought;
mod comma;
mod counted;
mod drop;
mod ends;
mod finished;
mod fits;
mod gap;
mod glued;
mod laid;
mod last_act;
mod later;
mod left_open;
mod letters;
mod near_joints;
mod own;
mod paper;
mod partly;
mod proven;
mod put_back;
mod rack_first;
mod reckoned;
mod refused;
mod resumed;
mod rows;
mod seek;
mod shared;
mod sticks;
mod tapped;
mod told;
mod top_first;
mod trims;
mod uncut;
mod wall;
mod ways;
mod weighs;
mod whole_top;
mod whys;

use super::*;
use crate::app::jobs::Tap as Jobs;
use crate::app::shelf::Shelf;
use crate::app::{Common, Msg};
use crate::parts::Place;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, Lying};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::ledger::{Device, Fact};
use fivebar_core::plan::rows::plan::{Piece, Plan as Rows};
use fivebar_core::plan::{Asked, Made};
use fivebar_core::quantity::Length;
use fivebar_core::quantity::{Sorted, Wall};
use fivebar_core::story::tell;

/// A rack of 12 oak strips of 500 mm, 65 x 30: a row of 60, its edges trimmed and jointed, and a job for a top of 980 x 120.
const STORY: &str = "2026-03-02 09:00 -05:00 workshop USD metric\nleave for yard\npile strips oak-european 30 x 65 x 500 mm\n\
    count 12 strips\npile thin oak-european 10 x 65 x 500 mm\ncount 5 thin\nhome\njob tray \"Tray\" 1 spec\n\
    part \"top\" 1 of 20 x 120 x 980 mm oak-european for tray\n";

fn opened(lines: &str) -> App {
    app_of(&format!("{STORY}{lines}"))
}

/// The book of a story, its job "tray" open.
fn app_of(text: &str) -> App {
    let story = tell(text);
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    app
}

fn heard(app: &mut App, taps: impl IntoIterator<Item = Tap>) -> Vec<Order> {
    let now = |app: &App| Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
    taps.into_iter().flat_map(|tap| app.heard(Msg::Jobs(Jobs::Plan(tap)), now(app))).collect()
}

/// What Enter says on the page as it stands.
fn by_enter(app: &App) -> Option<Msg> {
    crate::screens::page(app).keys_at("app").unwrap()("Enter")
}

fn page(app: &App) -> String {
    crate::screens::page(app).html()
}

/// The plan of two rows: two squared strips of 495 less what is shortened.
fn answer(app: &App) -> Planning {
    let given = app.plan.given.as_ref().unwrap();
    let Asked::Rows(problem) = &given.ready.asked else { panic!("rows") };
    let long = problem.piles[0].length - 2 * problem.square;
    let short = problem.length - long;
    let piece = |n, at, length| Piece { pile: 0, n, at, length };
    let rows = vec![vec![piece(1, 0, long), piece(2, long, short)], vec![piece(3, 0, short), piece(4, short, long)]];
    let low = i128::from(problem.piles[0].length);
    let worth = vec![2, 4 * low - 2 * i128::from(problem.length), 4 * low * low];
    Planning::Done(Box::new(Answered { plan: Made::Rows(Rows { rows, remainders: vec![] }), worth: worth.clone(), bound: worth }))
}

fn asked(app: &mut App) -> Vec<Order> {
    heard(app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go])
}

#[test]
fn rows_are_asked_planned_shown_used_and_taken_back() {
    let mut app = opened("");
    let orders = asked(&mut app);
    assert!(orders.iter().any(|order| matches!(order, Order::Plan { ms: FIRST, .. })), "{orders:?}");
    assert!(page(&app).contains("Planning …"));
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    let shown = page(&app);
    for words in [
        "2 rows.",
        "best of these rows",
        "At the saw, mm",
        "2 whole, ends trimmed to 495",
        "Use these 4",
        "takes 4 pieces",
        "joints 5 apart",
    ] {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    heard(&mut app, [Tap::Tick(0)]);
    assert!(page(&app).contains("tick done"));
    heard(&mut app, [Tap::Tick(0), Tap::Use]);
    let on_rack = |app: &App| fivebar_core::sheet::rack::rack(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap()[0].on_rack;
    assert_eq!(on_rack(&app), 8);
    let shown = page(&app);
    assert!(shown.contains("Take back") && shown.contains("a plan") && !shown.contains("Use these"), "{shown}");
    // Opened anew, the book's plan is shown.
    app.plan = Plan::default();
    heard(&mut app, [Tap::Open]);
    assert!(page(&app).contains("2 rows.") && page(&app).contains("The job has this wood"), "{}", page(&app));
    let now = Now { wall: app.now, chance: [99; 10] };
    app.heard(Msg::Common(Common::TakeBack), now);
    assert_eq!(on_rack(&app), 12);
    assert!(page(&app).contains("Use these 4"));
}

#[test]
fn a_rack_that_changed_since_is_said() {
    let mut app = opened("job other \"Other\" 1 spec\n");
    asked(&mut app);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    let (given, job) = (app.plan.given.clone().unwrap(), app.shelf().book.entries().last().unwrap().0.id);
    let pile = &given.sources[0].pile;
    let command = fivebar_core::ledger::decide::HaulCommand::Take { haul: pile.haul, pile: pile.pile, job, n: 10 };
    let now = Now { wall: app.now, chance: [77; 10] };
    app.order(&Command::Haul(command), now).unwrap();
    let shown = page(&app);
    assert!(shown.contains("The rack has changed since") && shown.contains("Plan again") && !shown.contains("Use these"), "{shown}");
}

/// Each state has its words.
#[test]
fn what_stands_in_the_way_is_said() {
    let after = |taps: &[Tap]| {
        let mut app = opened("");
        heard(&mut app, taps.iter().cloned());
        page(&app)
    };
    let open = [Tap::Open];
    assert!(after(&open).contains("What does it look like?"));
    let thick = [Tap::Open, Tap::Shape(Shape::Rows), Tap::At(4), Tap::Press(Press::Digit(9)), Tap::Press(Press::Digit(9)), Tap::Go];
    assert!(after(&thick).contains("None of the pieces fits."), "{}", after(&thick));
    let piles = [Tap::Open, Tap::Shape(Shape::Rows), Tap::Piles];
    assert!(after(&piles).contains("too thin") && after(&piles).contains("on the rack, used"));
    let empty = [
        Tap::Open,
        Tap::Shape(Shape::Rows),
        Tap::At(0),
        Tap::Press(Press::RubOut),
        Tap::Press(Press::RubOut),
        Tap::Press(Press::RubOut),
        Tap::Go,
    ];
    assert!(after(&empty).contains("role=\"alert\""), "{}", after(&empty));
    let mut app = opened("");
    asked(&mut app);
    app.told(crate::app::news::News::Planning(Planning::Failed));
    assert!(page(&app).contains("The planning failed"));
}

#[test]
fn what_is_heard_after_it_was_called_off_changes_nothing() {
    let mut app = opened("");
    asked(&mut app);
    let told = answer(&app);
    assert!(heard(&mut app, [Tap::Stop]).contains(&Order::StopPlan));
    app.told(crate::app::news::News::Planning(told));
    assert_eq!((app.plan.found.clone(), app.plan.stands.clone()), (None, Stands::Still));
}

/// A first answer that is not proven is improved, and a worse one never takes its place.
#[test]
fn a_better_plan_is_looked_for_and_a_worse_one_is_not_taken() {
    let mut app = opened("");
    asked(&mut app);
    let Planning::Done(first) = answer(&app) else { panic!("done") };
    let open = Answered { bound: vec![2, first.worth[1] - 4], ..(*first).clone() };
    let orders = app.told(crate::app::news::News::Planning(Planning::Done(Box::new(open.clone()))));
    assert!(orders.iter().any(|order| matches!(order, Order::Plan { ms: LONGER, .. })));
    assert!(page(&app).contains("Stop here") && page(&app).contains("Looking for a better one"));
    let worse = Answered { worth: vec![1, 0, 0], ..open };
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(worse))));
    assert_eq!(app.plan.found.as_ref().map(|found| found.sheet.made), Some(2));
    // Two rows from four strips are proven; that less is lost is not.
    for words in ["fewest pieces", "Proven: the rows and the pieces. Not proven: the length taken, which may be less by at most 2 mm."] {
        assert!(page(&app).contains(words), "{words}: {}", page(&app));
    }
}

/// Who ticks a line has begun to cut: the search for a better plan ends, and its tick stays.
#[test]
fn a_tick_ends_the_search() {
    let mut app = opened("");
    asked(&mut app);
    let Planning::Done(first) = answer(&app) else { panic!("done") };
    let open = Answered { bound: vec![2, first.worth[1] - 4], ..(*first).clone() };
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(open.clone()))));
    assert!(heard(&mut app, [Tap::Tick(0)]).contains(&Order::StopPlan));
    let better = Answered { worth: vec![2, first.worth[1] - 2, first.worth[2]], ..open };
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(better))));
    let found = app.plan.found.as_ref().map(|found| found.answered.worth.clone());
    assert_eq!((found.as_ref(), app.plan.ticked.lines_done(), app.plan.stands.clone()), (Some(&first.worth), 1, Stands::Still));
}

/// A design kept from one job gives its parts to another, in one act that is taken back whole.
#[test]
fn a_design_is_kept_and_made_again() {
    let mut app = opened("job again \"Tray again\" 1 spec\n");
    let room = |app: &mut App, n: u8| app.heard(Msg::Jobs(Jobs::Room(Room::Wood)), Now { wall: app.now, chance: [n; 10] });
    room(&mut app, 1);
    heard(&mut app, [Tap::KeepDesign]);
    assert!(page(&app).contains("takes the place of the one there is"));
    let again = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Tray again").map(|job| job.id);
    app.jobs.open = again;
    room(&mut app, 2);
    assert!(page(&app).contains("Parts from a design") && page(&app).contains("1 part, 0 operations"), "{}", page(&app));
    let design = app.shelf().workshop().designs[0].id;
    heard(&mut app, [Tap::UseDesign(design)]);
    let parts = |app: &App| fivebar_core::ledger::fold::job(&app.shelf().book, again.unwrap()).unwrap().parts.len();
    assert_eq!(parts(&app), 1);
    app.heard(Msg::Common(Common::TakeBack), Now { wall: app.now, chance: [98; 10] });
    assert_eq!(parts(&app), 0);
}

/// The page is killed: a new app on the same phone and the same book.
fn reloaded(app: &App) -> App {
    let mut again = App::for_tests(Place::Jobs);
    again.own = Shelf::of(Device::new([1; 8]), app.own.book.clone(), Sorted::new());
    (again.now, again.here, again.jobs.open) = (app.now, app.here.clone(), app.jobs.open);
    again
}

/// A plan that was not used, and what was ticked, are there again; once its wood is taken too, and where that is taken back at once.
#[test]
fn an_unused_plan_and_its_ticks_outlive_the_page() {
    let mut app = opened("");
    asked(&mut app);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    let orders = heard(&mut app, [Tap::Tick(0)]);
    assert!(orders.iter().any(|order| matches!(order, Order::Choose { key: crate::app::order::Choice::Plans, .. })), "{orders:?}");
    let again = |app: &App| {
        let mut app = reloaded(app);
        heard(&mut app, [Tap::Open]);
        app
    };
    let shown = page(&again(&app));
    assert!(shown.contains("2 rows.") && shown.contains("tick done") && shown.contains("Use these 4"), "{shown}");
    let mut app = again(&app);
    heard(&mut app, [Tap::Use]);
    let shown = page(&again(&app));
    assert!(shown.contains("The job has this wood") && shown.contains("tick done"), "{shown}");
    app.heard(Msg::Common(Common::TakeBack), Now { wall: app.now, chance: [96; 10] });
    for app in [&again(&app), &app] {
        let shown = page(app);
        assert!(shown.contains("Use these 4") && shown.contains("tick done") && !shown.contains("ticked as cut"), "{shown}");
    }
}

#[test]
fn a_rack_that_changed_while_the_page_was_gone_is_said() {
    let mut app = opened("job other \"Other\" 1 spec\n");
    asked(&mut app);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    let pile = app.plan.given.as_ref().unwrap().sources[0].pile.clone();
    let job = app.shelf().book.entries().last().unwrap().0.id;
    let command = fivebar_core::ledger::decide::HaulCommand::Take { haul: pile.haul, pile: pile.pile, job, n: 10 };
    app.order(&Command::Haul(command), Now { wall: app.now, chance: [77; 10] }).unwrap();
    let mut app = reloaded(&app);
    heard(&mut app, [Tap::Open]);
    let shown = page(&app);
    assert!(shown.contains("The rack has changed since") && shown.contains("Plan again") && !shown.contains("Use these"), "{shown}");
}

/// Boards that are not bought yet are planned with; the answer says how many to buy, and using the plan writes nothing.
#[test]
fn boards_to_buy_are_added_by_taps_and_bought_before_they_are_used() {
    let mut app = opened("");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    assert_eq!(by_enter(&app), Some(Msg::Jobs(Jobs::Plan(Tap::Go))));
    heard(&mut app, [Tap::Piles, Tap::Buy]);
    assert!(page(&app).contains("Boards to buy") && page(&app).contains("Price each"), "{}", page(&app));
    assert_eq!(by_enter(&app), Some(Msg::Jobs(Jobs::Plan(Tap::AddBoards))));
    for (nth, figure) in ["30", "65", "500", "9", "4"].into_iter().enumerate() {
        heard(&mut app, [Tap::At(nth)]);
        heard(&mut app, figure.chars().map(|digit| Tap::Press(Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap()))));
    }
    heard(&mut app, [Tap::AddBoards]);
    assert!(page(&app).contains("$4.00 each") && page(&app).contains("not bought yet"), "{}", page(&app));
    let which = app.plan.draft.rough(app.jobs.open.unwrap(), app.speech.typing(fivebar_core::quantity::Units::Metric)).unwrap();
    let rack = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), which.job).unwrap();
    heard(&mut app, rack.iter().map(|source| Tap::Turn(source.which())));
    heard(&mut app, [Tap::Change, Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go]);
    assert_eq!(app.plan.given.as_ref().map(|given| given.sources.len()), Some(1), "{}", page(&app));
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    let (shown, entries) = (page(&app), app.own.book.len());
    assert!(shown.contains("Buy 4 of C (Oak boards, 30 × 65 × 500 mm), $16.00 together.") && shown.contains("Buy them first"), "{shown}");
    assert!(!shown.contains("Use these"));
    heard(&mut app, [Tap::Use]);
    assert_eq!(app.own.book.len(), entries, "nothing is written");
    // It is there after a reload, boards and all; taken out again they are in no plan.
    let mut app = reloaded(&app);
    heard(&mut app, [Tap::Open]);
    assert!(page(&app).contains("Buy 4 of C"), "{}", page(&app));
    heard(&mut app, [Tap::Piles, Tap::DropBoards(0)]);
    assert!(!page(&app).contains("not bought yet"));
}
