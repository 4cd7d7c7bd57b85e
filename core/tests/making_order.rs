//! What is planned is worked off as things are made, in whatever order it was planned. By the calendar of April 2026, in which the 18th is a
//! Saturday.

use fivebar_core::bench::wait::What;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Day;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::dates::{DatesSheet, Given, dates};
use fivebar_core::sheet::job::{NextAct, job};
use fivebar_core::story::{Story, tell};

const COAT: &str = "plan \"coat\" make stage finish 90 min for stools\n";
const ASSEMBLE: &str = "plan \"assemble\" make 500 min for stools\n";

fn april(day: i64) -> Option<Day> {
    Day::ymd(2026, 4, 1).map(|first| first.plus(i32::try_from(day - 1).unwrap()))
}

fn nothing_told(_: &str) -> Option<What> {
    None
}

/// Four stools on a Saturday morning.
fn told(plan: &str) -> Story {
    let story = tell(&format!(
        "2026-04-18 08:00 -05:00 workshop USD inch\njob stools \"Stools\" 4 order\nends-in \"coat\" coat of oil\n{plan}about stools note \"x\"\n"
    ));
    assert_eq!(story.refused, [], "{plan}");
    story
}

fn dated(story: &Story) -> DatesSheet {
    let waits = fold::waits(&story.book);
    let given = Given { waits: &waits, guess: nothing_told, with_factor: true, now: story.now };
    dates(&Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap(), given).unwrap()
}

fn steps(sheet: &DatesSheet) -> Vec<&str> {
    sheet.rows.iter().filter_map(|row| row.op.as_deref()).collect()
}

/// 590 min x 1.4 = 13 h 46: four hours on Saturday the 18th, on Monday, on Tuesday, the rest on Wednesday the 22nd, and a week hard. Safely
/// 20 h 23: four more on Thursday, the rest on Friday the 24th.
#[test]
fn a_coat_that_was_planned_first_is_put_on_last() {
    for plan in [format!("{COAT}{ASSEMBLE}"), format!("{ASSEMBLE}{COAT}")] {
        let sheet = dated(&told(&plan));
        assert_eq!(steps(&sheet), ["assemble", "coat"], "{plan}");
        let [hands, safe] = sheet.hands.map(|span| span.as_minutes());
        assert_eq!((hands, safe), (826, 1_223), "{plan}");
        let found = [sheet.likely, sheet.safe].map(|ready| ready.map(|ready| (ready.hands, ready.day)));
        assert_eq!(found, [april(22).zip(april(29)), april(24).zip(april(31))], "{plan}");
    }
}

/// The job's page and the operations it lists say the same; what is of the desk holds up nothing, and stays where it was put.
#[test]
fn what_comes_next_is_made_before_it_is_finished() {
    let check = |plan: &str, order: &str, next: &str| {
        let story = told(plan);
        let sheet = job(&Shop::of(&story.book, story.now.at), story.names.job("stools").unwrap()).unwrap();
        let listed: Vec<&str> = sheet.operations.iter().map(|planned| planned.op.as_str()).collect();
        assert_eq!(listed.join(" "), order, "{plan}");
        let id = story.names.job("stools").unwrap();
        let named: Vec<String> = fold::planned_operations(&story.book, id).into_iter().map(|(op, ..)| op).collect();
        assert_eq!(named.join(" "), order, "{plan}");
        assert_eq!(sheet.next, NextAct::WorkOn { op: Some(next.to_owned()) }, "{plan}");
    };
    let carve = "plan \"carve\" make for stools\n";
    check(&format!("{COAT}{carve}{ASSEMBLE}"), "carve assemble coat", "carve");
    let beside = "plan \"deliver\" deliver 60 min for stools\nplan \"messages\" office for stools\n";
    check(&format!("{beside}{COAT}{carve}"), "carve messages coat deliver", "carve");
    // Between two coats, where it was said to be of the finish.
    let rub = "plan \"rub down\" make stage finish 10 min for stools\n";
    check(&format!("{COAT}{rub}{carve}"), "carve coat rub down", "carve");
}

/// Coated on Saturday the 18th by 10:35 and dry a day later: the next coat goes on on Monday the 20th, for Sunday is no working day, and it is hard
/// a week later.
#[test]
fn the_next_coat_goes_on_where_the_one_below_is_dry() {
    let begun = "10:05 start \"coat\" make on stools stage finish\n10:35 clamped 4 coat 1440 min\nstop\n10:37 ";
    let sheet = dated(&told(&format!("{COAT}{begun}")));
    let [row] = &sheet.rows[..] else { panic!("{:?}", sheet.rows) };
    let (what, waits) = row.wait.clone().unwrap();
    assert_eq!((row.hands.as_minutes(), row.wet.as_minutes()), (96, 1_438));
    assert_eq!((what.as_str(), waits.as_minutes(), row.cure.map(|cure| cure.as_minutes())), ("coat", 1_440, Some(10_080)));
    let ready = sheet.likely.unwrap();
    assert_eq!((Some(ready.hands), Some(ready.day)), (april(20), april(27)));
}
