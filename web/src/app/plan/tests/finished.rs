//! A top that is begun and planned again: the rows that are not cut come first, of the same wood and size; all of it anew is a tap away.

use super::rack_first::planned_out;
use super::told::{says, typed};
use super::*;
use fivebar_core::ledger::decide::HaulCommand;
use fivebar_core::ledger::kind::haul::Way as By;
use fivebar_core::plan::patience::{Patience, Progress};

fn of(lines: &str, job: &str) -> App {
    let story = tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\n{lines}job tray \"Table\" 1 spec\n{job}"));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    app
}

fn made(app: &App) -> i64 {
    app.plan.found.as_ref().unwrap_or_else(|| panic!("{}", page(app))).sheet.made
}

/// Three boards are three of six rows, and cut; three more are the other three. Planned anew, all of it would take more boards than there are.
#[test]
fn a_top_begun_with_too_little_wood_is_finished_by_planning_again() {
    let mut app = of("pile boards oak-white 1 x 4 x 60 in\ncount 3 boards\ngood 3 boards\n", "");
    typed(&mut app, &["48", "20"]);
    planned_out(&mut app, vec![Tap::Go]);
    says(&app, &["3 of 6 rows."], &[]);
    heard(&mut app, [Tap::Use, Tap::TickRow(0), Tap::TickRow(1), Tap::TickRow(2)]);
    let haul = app.own.haul().unwrap();
    let (haul, pile) = (haul.id, haul.piles[0].id);
    super::later::order(&mut app, Command::Haul(HaulCommand::Count { haul, pile, n: 3, way: By::Bundle }));
    app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(1)), app.now.offset);
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!(made(&app), 3, "{}", page(&app));
    says(
        &app,
        &["3 of the 6 rows are cut already; these are the others.", "3 of 6 rows", "3 rows.", "Plan all of it anew"],
        &["Look for it", "cut and stay"],
    );
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &["these are the others", "Plan all of it anew"], &[]);
    for app in [&mut again, &mut app] {
        planned_out(app, vec![Tap::AllAnew]);
        says(app, &["3 of these 6 rows are cut already, and are planned again here.", "Plan the other 3 alone"], &["these are the others"]);
        planned_out(app, vec![Tap::OtherRows]);
        says(app, &["these are the others"], &[]);
    }
    heard(&mut app, [Tap::Use]);
    if app.plan.asks {
        heard(&mut app, [Tap::UseAnd(true)]);
    }
    says(&app, &["these are the others"], &["Plan all of it anew"]);
}

/// Maple would do for all of it: the other rows of a top of oak are of oak all the same, one board of which was rejected.
#[test]
fn the_other_rows_are_of_the_wood_of_those_that_are_cut() {
    let maple = "pile wide maple-sugar 1 x 4 x 70 in\ncount 12 wide\ngood 12 wide\n";
    let mut app = of(&format!("pile boards oak-white 1 x 4 x 50 in\ncount 7 boards\ngood 7 boards\n{maple}"), "");
    typed(&mut app, &["48", "20"]);
    planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, [Tap::Use, Tap::TickRow(1)]);
    let oak = |app: &App| {
        app.plan.given.as_ref().unwrap().sources.iter().all(|it| it.pile.wood == fivebar_core::quantity::Key::read("oak-white"))
    };
    assert!(oak(&app));
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    let gone = fivebar_core::quantity::Key::read("twist").unwrap();
    super::later::order(&mut app, Command::Haul(HaulCommand::Reject { haul, pile, n: 2, why: gone }));
    planned_out(&mut app, vec![Tap::Go]);
    assert!(oak(&app), "{}", page(&app));
    says(&app, &["1 of the 6 rows is cut already; these are the others.", "4 of 5 rows"], &[]);
}

/// Three boards give three rows and three ends of 11 11/16, planed and ripped as the rows are. Two boards more give two rows and two such ends:
/// five of them are the last row, as was said before the cut.
#[test]
fn ends_that_were_planed_and_ripped_for_a_top_fit_its_other_rows() {
    let mut app = of("pile boards oak-white 1 x 4 x 60 in\ncount 3 boards\ngood 3 boards\n", "");
    typed(&mut app, &["48", "20"]);
    planned_out(&mut app, vec![Tap::Go]);
    says(&app, &["2 more of A (Boards, 1 × 4 × 60 in) make all 6 rows"], &[]);
    heard(&mut app, [Tap::Use, Tap::TickRow(0), Tap::TickRow(1), Tap::TickRow(2)]);
    let haul = app.own.haul().unwrap();
    let (haul, pile) = (haul.id, haul.piles[0].id);
    super::later::order(&mut app, Command::Haul(HaulCommand::Count { haul, pile, n: 2, way: By::Bundle }));
    heard(&mut app, [Tap::Go]);
    // It comes with the longer look.
    let asked = app.plan.given.as_ref().unwrap().ready.asked.clone();
    let answered = asked.solve(&mut Patience::new(Some(60_000), &mut |_: Progress<'_>| true), 1);
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(answered))));
    says(&app, &["3 of the 6 rows are cut already; these are the others."], &["too thin", "too narrow"]);
    assert_eq!(made(&app), 3, "{}", page(&app));
}

/// Eleven rows of nine boards of 60, some of two rows each. The boards of one row are cut; of the others one is rejected, and so is the one that lay
/// beside them. Going on does without the board that costs the fewest rows: by hand each that lacks is of two. It is not said that it makes all, and a
/// plan of fewer rows is not offered first.
#[test]
fn going_on_counts_the_rows_whose_boards_are_there() {
    let mut app = of("pile boards ash-white 2 x 2 x 60 in\ncount 10 boards\ngood 10 boards\n", "");
    typed(&mut app, &["48", "20"]);
    heard(&mut app, [Tap::Go]);
    super::told::solved(&mut app);
    let used = app.plan.found.as_ref().unwrap().sheet.used[0].pieces;
    assert_eq!((made(&app), used), (11, 9));
    heard(&mut app, [Tap::Use, Tap::TickRow(0)]);
    let plan = app.plan.used.unwrap();
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    let why = fivebar_core::quantity::Key::read("twist").unwrap();
    super::later::order(&mut app, Command::Haul(HaulCommand::Reject { haul, pile, n: 2, why }));
    planned_out(&mut app, vec![Tap::Go]);
    let rows = crate::app::plan::rows_cut(&app).unwrap();
    assert_eq!((rows.cut, rows.of, rows.uncut, rows.makes, rows.before), (1, 11, 7, 9, Some(plan)));
    let this = rows.with(made(&app));
    assert!(this < 9);
    let goes_on = format!("The plan before goes on with the 7 boards that are not cut, and makes 9 of 11 rows; this one {this}.");
    says(&app, &[&goes_on, "Back to the plan before"], &["makes all", "key solid wide"]);
    heard(&mut app, [Tap::Kept(plan)]);
    assert_eq!((app.plan.used, made(&app)), (Some(plan), 11));
}
