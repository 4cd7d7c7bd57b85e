use super::super::count::Tap;
use super::*;
use crate::app::count::sheet;
use crate::app::told::{after, nth};
use crate::app::{Common, Msg};
use crate::parts::Place;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::JobCommand;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::quantity::{Currency, Units};

fn tap(tap: Tap) -> Msg {
    Msg::Count(tap)
}

fn say(tap: SortTap) -> Msg {
    Msg::Count(Tap::Sorting(tap))
}

fn why(text: &str) -> Key {
    Key::read(text).unwrap()
}

/// A pile of twelve and one of ten, the first being sorted; ten are armed for counting.
fn sorting() -> App {
    let mut app = App::for_tests(Place::Count);
    let later = Tap::Draft(crate::app::draft::DraftTap::Later);
    after(&mut app, [Tap::Arm(12), Tap::First, Tap::Arm(10), Tap::NewPile, later].map(Msg::Count));
    let piles: Vec<Id> = sheet(&app).unwrap().tiles.iter().map(|tile| tile.pile).collect();
    after(&mut app, [Tap::SortPile(piles[0])].map(Msg::Count));
    app
}

/// Good, rejected, left of the pile that is sorted.
#[track_caller]
fn check(app: &App, figures: (u32, u32, u32)) {
    let sheet = in_sight(app).unwrap();
    assert_eq!((sheet.good, sheet.rejected, sheet.left), figures);
}

#[test]
fn what_is_armed_for_counting_never_sorts() {
    let mut app = sorting();
    after(&mut app, [tap(Tap::Reject(why("twist")))]);
    check(&app, (0, 1, 11));
    after(&mut app, [say(SortTap::Arm(5)), tap(Tap::Good)]);
    check(&app, (5, 1, 6));
    assert_eq!(app.count.armed, 10, "counting keeps its own bundle");
    let pile = in_sight(&app).unwrap().tile.pile;
    after(&mut app, [tap(Tap::Close), tap(Tap::SortPile(pile)), tap(Tap::Good)]);
    check(&app, (6, 1, 5));
}

#[test]
fn never_more_than_are_left_are_sorted() {
    let mut app = sorting();
    let shown = after(&mut app, [say(SortTap::Arm(10)), tap(Tap::Good), tap(Tap::Reject(why("knot")))]);
    check(&app, (10, 2, 0));
    assert!(shown.contains("Take back 2 rejects: knot"), "{shown}");
    assert!(shown.contains("All sorted"), "{shown}");
    assert!(shown.contains("The last tap took 2: no more were counted.") && shown.contains("There are more"), "{shown}");
    let pile = in_sight(&app).unwrap().tile.pile;
    let again = Msg::Count(Tap::Page(crate::app::pile::PileTap::Recount(pile)));
    assert!(after(&mut app, [again]).contains("Count again, because"));
    let back = Msg::Count(Tap::Page(crate::app::pile::PileTap::Leave));
    assert!(after(&mut app, [back]).contains("All sorted"), "back to where it is sorted");
}

/// The list of piles says of each how far it is sorted.
#[test]
fn the_list_says_what_of_each_pile_is_sorted() {
    let mut app = sorting();
    let list = |app: &mut App, taps: &[Msg]| after(app, taps.iter().cloned().chain([tap(Tap::Close), tap(Tap::Choose)]));
    let shown = list(&mut app, &[]);
    assert!(shown.contains("12 pieces") && !shown.contains("rejected"), "{shown}");
    let first = sheet(&app).unwrap().tiles[0].pile;
    let shown = list(&mut app, &[tap(Tap::SortPile(first)), say(SortTap::Arm(5)), tap(Tap::Good)]);
    assert!(shown.contains("12 pieces, 5 good, none rejected"), "{shown}");
    let shown = list(&mut app, &[tap(Tap::SortPile(first)), tap(Tap::Reject(why("twist")))]);
    assert!(shown.contains("12 pieces, 5 good, 1 rejected"), "{shown}");
}

/// After the last piece a tap on a reason is a slip: what was good stays good, and it is said why.
#[test]
fn a_good_piece_is_never_rejected_by_a_slip() {
    let mut app = sorting();
    after(&mut app, [say(SortTap::Arm(10)), tap(Tap::Good), tap(Tap::Good)]);
    for slip in [tap(Tap::Reject(why("twist"))), tap(Tap::Good)] {
        let shown = after(&mut app, [slip]);
        assert!(shown.contains("Not done: you asked for"), "{shown}");
        check(&app, (12, 0, 0));
    }
}

/// Said first, one of the good ones is rejected, whatever is armed; then a tap is a slip again. A piece that is counted later is to sort.
#[test]
fn a_piece_that_was_good_and_turned_out_bad_is_rejected() {
    let mut app = sorting();
    let shown = after(&mut app, [say(SortTap::Arm(10)), tap(Tap::Good)]);
    assert!(!shown.contains("A good one turned out bad"), "{shown}");
    let shown = after(&mut app, [tap(Tap::Good)]);
    assert!(shown.contains("A good one turned out bad"), "{shown}");
    let shown = after(&mut app, [say(SortTap::GoodIsBad)]);
    assert!(shown.contains("there is one good piece fewer then"), "{shown}");
    let shown = after(&mut app, [tap(Tap::Reject(why("knot")))]);
    assert!(!shown.contains("Not done"), "{shown}");
    check(&app, (11, 1, 0));
    let shown = after(&mut app, [tap(Tap::Reject(why("knot")))]);
    assert!(shown.contains("Not done: you asked for"), "{shown}");
    check(&app, (11, 1, 0));
    let (haul, pile) = in_hand(&app).unwrap();
    let command = HaulCommand::Count { haul, pile, n: 1, way: fivebar_core::ledger::kind::haul::Way::Bundle };
    app.order(&Command::Haul(command), nth(210)).unwrap();
    check(&app, (11, 1, 1));
}

#[test]
fn a_bundle_of_its_own_is_typed() {
    let mut app = sorting();
    let shown = after(&mut app, [say(SortTap::OtherBundle), tap(Tap::Press(Press::Digit(0))), say(SortTap::PadDone)]);
    assert!(shown.contains("It must be from 1 to 9"), "{shown}");
    after(&mut app, [tap(Tap::Press(Press::RubOut)), tap(Tap::Press(Press::Digit(7))), say(SortTap::PadDone), tap(Tap::Good)]);
    check(&app, (7, 0, 5));
    assert!(matches!(app.count.over, Over::Sort(_)));
}

#[test]
fn rejects_go_back_to_jigs_and_to_the_fire_and_are_taken_back() {
    let mut app = sorting();
    let shown = after(&mut app, [say(SortTap::Arm(5)), tap(Tap::Reject(why("twist"))), say(SortTap::Rejects), say(SortTap::Arm(1))]);
    assert!(shown.contains("Good after all") && shown.contains("To jigs") && shown.contains("Burnt"), "{shown}");
    let shown = after(&mut app, [say(SortTap::Return(why("twist"), Fate::Good)), say(SortTap::Return(why("twist"), Fate::Burnt))]);
    check(&app, (1, 4, 7));
    assert!(shown.contains("Gone: 1 burnt.") && shown.contains("3 of 4 still there"), "{shown}");
    let shown = after(&mut app, [say(SortTap::Arm(10)), say(SortTap::Return(why("twist"), Fate::Jigs))]);
    assert!(shown.contains("Take back 3: to jigs"), "{shown}");
    assert!(shown.contains("Gone: 1 burnt, 3 to jigs.") && shown.contains("all gone") && !shown.contains("To jigs"), "{shown}");
    let shown = after(&mut app, [Msg::Common(Common::TakeBack)]);
    assert!(shown.contains("Gone: 1 burnt."), "{shown}");
    after(&mut app, [tap(Tap::Close)]);
    assert!(matches!(app.count.over, Over::Sort(_)), "one step back is the pile");
}

#[test]
fn the_next_pile_is_a_tap_away() {
    let mut app = sorting();
    let piles: Vec<Id> = sheet(&app).unwrap().tiles.iter().map(|tile| tile.pile).collect();
    after(&mut app, [tap(Tap::Close), tap(Tap::Pile(piles[1])), tap(Tap::SortPile(piles[0]))]);
    let shown = after(&mut app, [say(SortTap::Arm(10)), tap(Tap::Good), tap(Tap::Good)]);
    assert!(shown.contains("Next: Pile B") && shown.contains("10 to sort"), "{shown}");
    let shown = after(&mut app, [tap(Tap::SortPile(piles[1])), say(SortTap::Arm(10)), tap(Tap::Good)]);
    assert!(shown.contains("Nothing of this haul is left to sort."), "{shown}");
}

#[test]
fn sorting_is_clocked_on_its_haul() {
    let mut app = sorting();
    assert!(after(&mut app, []).contains("Start sorting"));
    let shown = after(&mut app, [say(SortTap::Start)]);
    assert!(!shown.contains("Start sorting") && shown.contains("class=\"strip\""), "{shown}");
    let haul = sheet(&app).unwrap().haul;
    let sorted = app.shelf().bench().of_haul(haul, nth(200).wall.at).stage(Stage::Sort);
    assert!(Span::ZERO < sorted);
    assert!(after(&mut app, [Msg::Common(Common::StopRun)]).contains("Start sorting"));
}

/// Another book came into hand while a pile of this one was open: its piles are shown, not an empty page.
#[test]
fn a_pile_that_is_not_there_leaves_the_tiles() {
    let mut app = sorting();
    app.count.over = Over::Sort(Id::new(nth(0).wall.at, [9; 10]));
    assert!(after(&mut app, []).contains("12 pieces"));
}

/// What the bar of each place names is offered for twelve hours, and no longer.
#[test]
fn an_old_act_is_not_offered_to_be_taken_back() {
    let pieces = tap(Tap::Pile(sheet(&sorting()).unwrap().tiles[0].pile));
    for (taps, named) in [
        (vec![tap(Tap::Close), pieces], "Take back"),
        (vec![tap(Tap::Good)], "Take back 1 good"),
        (
            vec![tap(Tap::Reject(why("twist"))), say(SortTap::Rejects), say(SortTap::Return(why("twist"), Fate::Burnt))],
            "Take back 1: burnt",
        ),
    ] {
        let mut app = sorting();
        after(&mut app, taps);
        let now = app.now.at;
        for (minutes, is_offered) in [(12 * 60, true), (12 * 60 + 1, false)] {
            app.now.at = now.plus(Span::minutes(minutes));
            let html = crate::screens::page(&app).html();
            assert_eq!(html.contains(named), is_offered, "{named}, {minutes}: {html}");
        }
    }
}

/// Twelve that a job has taken before they were sorted: a bad one comes back from it.
#[test]
fn a_bad_one_that_a_job_has_is_put_back_and_rejected() {
    let mut app = sorting();
    let (haul, pile) = in_hand(&app).unwrap();
    let (currency, units, made_for) = (Currency::USD, Units::Inch, For::Order);
    let begun = JobCommand::Begin { name: "Stool".into(), currency, units, pieces: 1, made_for };
    app.order(&Command::Job(begun), nth(40)).unwrap();
    let job = fold::jobs(&app.shelf().book).next().unwrap().id;
    app.order(&Command::Haul(HaulCommand::Take { haul, pile, job, n: 12 }), nth(41)).unwrap();
    let shown = after(&mut app, [say(SortTap::Arm(1))]);
    assert!(shown.contains("12 of these are in Stool. A bad one is put back from it and rejected."), "{shown}");
    let shown = after(&mut app, [tap(Tap::Good), tap(Tap::Reject(why("crack")))]);
    check(&app, (1, 1, 10));
    assert!(shown.contains("Take back 1 reject: crack") && shown.contains("10 of these are in Stool."), "{shown}");
    assert_eq!(app.shelf().haul().unwrap().pile(pile).unwrap().in_job(job), 11);
    // All sorted, and one that was good is bad: it comes back from the job too.
    let shown = after(&mut app, [say(SortTap::Arm(10)), tap(Tap::Good), say(SortTap::GoodIsBad)]);
    assert!(shown.contains("11 of these are in Stool."), "{shown}");
    after(&mut app, [tap(Tap::Reject(why("knot")))]);
    check(&app, (10, 2, 0));
    assert_eq!(app.shelf().haul().unwrap().pile(pile).unwrap().in_job(job), 10);
}
