use super::*;
use crate::app::shelf::Shelf;
use crate::app::told::nth;
use crate::app::trip::{Field, TripTap};
use crate::app::workshop;
use crate::parts::Place;
use fivebar_core::ledger::Device;
use fivebar_core::story::tell;

const FIRST: &str = include_str!("../../../../tests/stories/first_visit.txt");
const TENTH: &str = include_str!("../../../../tests/stories/tenth_visit.txt");

/// The app with the book of a story, at its last moment, and the only supplier of it.
fn told(text: &str) -> (App, Id) {
    let story = tell(text);
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Count);
    let names = story.people.clone();
    app.own = Shelf::of(Device::new([1; 8]), story.book, names);
    app.now = story.now;
    let supplier = *app.own.names.keys().next().unwrap();
    (app, supplier)
}

/// What the page shows after these taps, all at the story's last moment.
#[track_caller]
fn check(text: &str, taps: impl Fn(Id) -> Vec<Msg>, said: &[&str]) {
    let (mut app, supplier) = told(text);
    let wall = app.now;
    for message in taps(supplier) {
        app.heard(message, fivebar_core::ledger::decide::Now { wall, ..nth(0) });
    }
    let shown = crate::screens::page(&app).html();
    for said in said {
        assert!(shown.contains(said), "{said}: {shown}");
    }
}

fn going(_: Id) -> Vec<Msg> {
    vec![Msg::Count(Tap::Going)]
}

fn whose(_: Id) -> Vec<Msg> {
    [TripTap::Open, TripTap::Choose(Field::Supplier)].map(|tap| Msg::Count(Tap::Trip(tap))).to_vec()
}

fn page(id: Id) -> Vec<Msg> {
    vec![Msg::Go(Place::Workshop), Msg::Workshop(workshop::Tap::Open(workshop::Over::Supplier(id)))]
}

/// The figures are worked out beside the stories' own tests: 7.50 to 16.50 over nine trips.
#[test]
fn the_tenth_visit_is_told_before_going() {
    let line = "Go: most of 9 trips left between $8 and $17";
    check(TENTH, going, &["The stair works", line]);
    check(TENTH, whose, &[line]);
    let more =
        ["On the average $12 a trip.", "Minutes cost most, $36 a trip.", "36 of 144 rejected", "25 %", "Tue 3 March", "Twist", "20 pieces"];
    check(TENTH, page, &more);
    check(TENTH, |id| vec![Msg::Count(Tap::Going), Msg::Count(Tap::Supplier(id))], &more);
}

#[test]
fn a_first_visit_has_no_history() {
    let none = "No history: count one trip and it will know.";
    check(FIRST.split("# --- Tuesday").next().unwrap(), going, &[none]);
    check(FIRST, whose, &[none]);
    check(FIRST.split("# --- Wednesday").next().unwrap(), page, &["Nothing sorted from them yet"]);
    check(FIRST, going, &["Go: the one trip left $2"]);
}

/// The same trip with other figures around it.
#[test]
fn what_decides_and_what_is_missing_is_said() {
    let with = |more: &str| format!("{FIRST}\n{more}");
    check(&FIRST.replace("rate pay 20\n", ""), going, &["Say in Workshop, Your rate, what an hour should pay, and it will know."]);
    check(&FIRST.replace(" at 0.60", ""), going, &["Say in Workshop, How you are paid, what a mile or km costs, and it will know."]);
    check(&with("spend 60 gift on first"), going, &["Skip: gift and price cost most, $60 a trip"]);
    check(&FIRST.replace("boards 7 a board-foot\n", ""), going, &["100 % of the wood has no price."]);
    check(&FIRST.replace("trip 10 miles at 0.60\n", ""), page, &["Of 1 haul the distance or the minutes at the wheel were never said"]);
}

/// Count asks before going where somebody is known and nothing is counted, or the last haul is home.
#[test]
fn going_is_asked_where_it_matters() {
    let nothing = |_: Id| vec![];
    check(FIRST.split("# --- Tuesday").next().unwrap(), nothing, &["Going there?"]);
    check(FIRST, nothing, &["Going there?"]);
    let (app, _) = told(FIRST.split("10:00 homeward").next().unwrap());
    assert!(!crate::screens::page(&app).html().contains("Going there?"));
    assert!(!crate::screens::page(&App::for_tests(Place::Count)).html().contains("Going there?"));
}

const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nperson works supplier\n";

#[test]
fn a_wood_of_the_makers_own_is_called_by_its_name() {
    let lines = "species own-1 \"wild plum\" 700\nleave for one\nsupplier works\npile sticks own-1\ncount 9 sticks\ngood 9 sticks\n\
        pile strips ash-white\ncount 5 strips\ngood 5 strips\n";
    check(&format!("{START}{lines}"), page, &["By wood", "Wild plum", "Ash"]);
}

/// Oldest to newest; a pile that came once is no row of it.
#[test]
fn the_same_pile_is_shown_haul_by_haul() {
    let haul = |day: u8, rejected: u32| {
        let good = 10 - rejected;
        format!(
            "2026-03-{day:02} 09:00 leave for h{day}\nsupplier works\npile s{day} ash-white 1 x 2 x 20 in\ncount 10 s{day}\n\
             reject {rejected} s{day} twist\ngood {good} s{day}\n"
        )
    };
    let (first, second) = (haul(3, 4), haul(10, 1));
    let shown = ["The same pile, haul by haul", "Ash, 1 × 2 in", "4 of 10", "1 of 10"];
    check(&format!("{START}{first}{second}"), page, &shown);
    let (mut app, id) = told(&format!("{START}{first}"));
    for message in page(id) {
        app.heard(message, nth(0));
    }
    assert!(!crate::screens::page(&app).html().contains(shown[0]));
}
