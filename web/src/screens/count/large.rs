//! A large haul, 40 piles of long names and 3,000 pieces in inches, beside an older one in millimetres.

use crate::app::count::Tap;
use crate::app::shelf::Shelf;
use crate::app::told::nth;
use crate::app::workshop::{self, Over};
use crate::app::{App, Msg};
use crate::parts::Place;
use fivebar_core::ledger::Device;
use fivebar_core::ledger::decide::Now;
use fivebar_core::story::tell;

/// The page after these taps, all at the story's last moment.
fn after(taps: impl Fn(&App) -> Vec<Msg>) -> String {
    let story = tell(include_str!("../../../../tests/stories/large_hauls.txt"));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Count);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Default::default());
    app.now = story.now;
    for (n, tap) in (0..).zip(taps(&app)) {
        app.heard(tap, Now { wall: story.now, ..nth(n) });
    }
    crate::screens::page(&app).html()
}

#[track_caller]
fn check(taps: impl Fn(&App) -> Vec<Msg>, shown: &[&str], not: &[&str]) {
    let html = after(taps);
    shown.iter().for_each(|words| assert!(html.contains(words), "{words} in {html}"));
    not.iter().for_each(|words| assert!(!html.contains(words), "{words} in {html}"));
}

const FIRST: &str = "Staircase-treads-and-their-nosing-end-01";
const LAST: &str = "Unbrokennameofthirtysixlettersinallx0040";

fn tile(app: &App, last: bool) -> Msg {
    let tiles = crate::app::count::sheet(app).unwrap().tiles;
    let tile = if last { tiles.last() } else { tiles.first() };
    Msg::Count(Tap::Pile(tile.unwrap().pile))
}

#[test]
fn forty_piles_of_long_names_are_counted_on() {
    assert_eq!(after(|_| vec![]).matches("class=\"tile").count(), 40);
    check(|_| vec![], &["3000 pieces", FIRST, LAST, "13 sixteenths", "board feet"], &["Treppenstufen"]);
    check(|app| vec![tile(app, false), tile(app, true)], &["3002 pieces", ">76<", LAST], &[]);
    check(|_| vec![Msg::Count(Tap::Choose)], &[FIRST, LAST], &[]);
}

/// Each haul keeps its own units, side by side.
#[test]
fn inches_and_millimetres_lie_in_one_rack() {
    let rack = |_: &App| vec![Msg::Go(Place::Workshop), Msg::Workshop(workshop::Tap::Open(Over::Rack))];
    check(rack, &["3250 pieces in 42 piles", "27 × 62.5 × 545 mm", " in<", "litres", "board feet"], &[]);
}
