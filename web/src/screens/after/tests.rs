use crate::app::count::Tap;
use crate::app::shelf::Shelf;
use crate::app::told::nth;
use crate::app::trip::TripTap;
use crate::app::{App, Msg};
use crate::parts::Place;
use fivebar_core::ledger::Device;
use fivebar_core::ledger::decide::Now;
use fivebar_core::story::{STANDS, tell};

/// The haul's own page on the evening of sorting, with a line more in place of the price of boards.
#[track_caller]
fn check(more: &str, said: &[&str], unsaid: &str) {
    let before = STANDS.split("# --- The job").next().unwrap().lines().filter(|line| !line.contains("boards "));
    let before = before.collect::<Vec<_>>().join("\n");
    let story = tell(&format!("{before}\n{more}"));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Count);
    let wall = story.now;
    app.own = Shelf::of(Device::new([1; 8]), story.book, fivebar_core::quantity::Sorted::new());
    app.heard(Msg::Count(Tap::Trip(TripTap::Open)), Now { wall, ..nth(0) });
    let shown = crate::screens::page(&app).html();
    for said in said {
        assert!(shown.contains(said), "{said}: {shown}");
    }
    assert!(!shown.contains(unsaid), "{unsaid}: {shown}");
}

/// 28.08 and 136 minutes over 93 good pieces and 31.66 board feet, 15.44 to the good: the pin of the core's published figures.
#[test]
fn a_sorted_haul_says_what_it_came_to() {
    check("boards 4.75 a board-foot", &["$0.30 and 1.5 min", "$0.89 and 4.3 min", "beat it by $15.44"], ">not known<");
    check("", &["$0.89 and 4.3 min", "not known", "Say what boards cost in Workshop."], "beat it");
    check("boards 2 a board-foot", &[" dearer"], "beat it");
}
