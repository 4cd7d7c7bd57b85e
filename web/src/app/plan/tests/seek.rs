//! What a plan lacks: looked for at the next yard, at a tap, until it is there.

use super::rack_first::planned_out;
use super::told::typed;
use super::top_first::rack;
use super::*;
use fivebar_core::ledger::decide::HaulCommand;
use fivebar_core::ledger::kind::haul::Way as By;
use fivebar_core::quantity::{Count, Key};
use fivebar_core::story::Story;

/// Seven flats of 905 squared are two of eight rows of 2400; with 15 more there are all.
fn short() -> App {
    let mut app = rack(7);
    typed(&mut app, &["2400", "650", "8"]);
    planned_out(&mut app, vec![Tap::Go]);
    app
}

fn at(app: &App) -> Now {
    Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] }
}

fn said(app: &mut App, common: Common) {
    let now = at(app);
    app.heard(Msg::Common(common), now);
}

fn counted(app: &mut App, n: Count) {
    let haul = app.own.haul().unwrap();
    let command = HaulCommand::Count { haul: haul.id, pile: haul.piles[0].id, n, way: By::Bundle };
    let now = at(app);
    app.order(&Command::Haul(command), now).unwrap();
}

/// So many that are looked for, of each wish the pieces.
#[track_caller]
fn check(app: &App, wanted: &[&[Count]]) {
    let all = app.own.workshop().sought.clone();
    let pieces: Vec<Vec<Count>> = all.iter().map(|one| one.pieces.iter().map(|piece| piece.n).collect()).collect();
    assert_eq!(pieces, wanted);
}

fn at_the_yard(app: &mut App) -> String {
    app.place = Place::Count;
    let shown = page(app);
    app.place = Place::Jobs;
    shown
}

#[track_caller]
fn says(shown: &str, all: &[&str], none: &[&str]) {
    for words in all {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    for words in none {
        assert!(!shown.contains(words), "{words}: {shown}");
    }
}

const KEY: &str = "Look for it at the next yard";
const OFF: &str = "Look for it no more";

#[test]
fn what_a_top_lacks_is_looked_for_at_a_tap() {
    let mut app = short();
    let pieces = "15 of oak, 26.5 × 90 × 910 mm or larger";
    says(&page(&app), &[KEY, pieces], &[OFF]);
    says(&at_the_yard(&mut app), &[], &["26.5 × 90 × 910 mm or larger"]);
    heard(&mut app, [Tap::LookFor]);
    check(&app, &[&[15]]);
    says(&page(&app), &["Looked for at the next yard:", pieces, OFF, "Take back", "what is looked for"], &[KEY]);
    // All that lie there and are to come are of one haul here: 22 good, of which 7 are counted, and none is sorted.
    says(&at_the_yard(&mut app), &["Table: ", "22 of oak", "7 here would do"], &[]);
    said(&mut app, Common::TakeBack);
    check(&app, &[]);
    says(&page(&app), &[KEY, crate::words::en::common::PUT_BACK], &[OFF]);
    said(&mut app, Common::PutBack);
    let entry = app.own.workshop().sought[0].id;
    heard(&mut app, [Tap::LookNoMore(entry)]);
    check(&app, &[]);
    said(&mut app, Common::TakeBack);
    check(&app, &[&[15]]);
}

/// The plan is made after all: in the act that takes its wood it is looked for no more, and comes again where that is taken back. A plan
/// that lacks it still leaves it.
#[test]
fn a_plan_that_makes_it_ends_the_looking() {
    let mut app = short();
    heard(&mut app, [Tap::LookFor, Tap::Use]);
    check(&app, &[&[15]]);
    let mut app = short();
    heard(&mut app, [Tap::LookFor]);
    counted(&mut app, 23);
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 8, "{}", page(&app));
    heard(&mut app, [Tap::Use]);
    check(&app, &[]);
    said(&mut app, Common::TakeBack);
    check(&app, &[&[15]]);
}

/// 22 good of 33 in all is not sure with one reject in four, of 40 it is; the pile does not where the maker says so.
#[test]
fn enough_is_said_where_the_maker_stands() {
    let mut app = short();
    heard(&mut app, [Tap::LookFor]);
    counted(&mut app, 43);
    says(&at_the_yard(&mut app), &["Table: enough is here", "50 here would do"], &["or larger"]);
    let (sought, pile) = (app.own.workshop().sought[0].id, app.own.haul().unwrap().piles[0].id);
    let count = |tap| Msg::Count(crate::app::count::Tap::Sought(tap));
    use crate::app::sought::Tap as Sought;
    for (tap, all, none) in [
        (count(Sought::Open), ["What plans lack", "Table, a top in rows", "Then it is 8 rows.", OFF], ""),
        (count(Sought::Suits(pile, (sought, 0), false)), ["none here would do yet", "Take back", "whether a pile does", OFF], "enough"),
        (count(Sought::Suits(pile, (sought, 0), true)), ["50 here would do", "Table: enough is here", "Take back", OFF], "or larger; "),
    ] {
        let now = at(&app);
        app.heard(tap, now);
        let shown = at_the_yard(&mut app);
        says(&shown, &all, &[none].into_iter().filter(|none| !none.is_empty()).collect::<Vec<_>>());
    }
    let now = at(&app);
    app.heard(count(Sought::NoMore(sought)), now);
    check(&app, &[]);
}

fn of(story: Story) -> App {
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    app
}

/// Two woods are short at once: no one pile makes it, both parts are said, and both are looked for; each is a piece with what is over.
#[test]
fn two_piles_that_are_short_at_once_are_looked_for_both() {
    let mut app = of(tell(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile legs oak-european 50 x 50 x 500 mm\ncount 3 legs\n\
         pile pegs ash-white 50 x 50 x 300 mm\ncount 1 pegs\njob tray \"Table\" 1 spec\n\
         part \"leg\" 4 of 40 x 40 x 450 mm oak-european for tray\npart \"peg\" 3 of 40 x 40 x 250 mm ash-white for tray\n",
    ));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks)]);
    planned_out(&mut app, vec![Tap::Go]);
    let shown = page(&app);
    says(&shown, &["1 of leg", "2 of peg", KEY, "1 of oak, ", "; and 2 of ash, "], &[]);
    // By the sums of the beta-binomial in fractions: two or more of three are good by 0.835, one of one by 0.75, which is told as its share of rejects.
    says(
        &shown,
        &[
            "A, likely 2 of 3 good.",
            "1 of B is not sorted yet: of such wood about 25 % is rejected.",
            "What it lacks counts all of them as good",
        ],
        &[],
    );
    heard(&mut app, [Tap::LookFor]);
    check(&app, &[&[1, 2]]);
    let woods: Vec<Option<Key>> = app.own.workshop().sought[0].pieces.iter().map(|piece| piece.wood.clone()).collect();
    assert_eq!(woods, [Key::read("oak-european"), Key::read("ash-white")]);
    says(&at_the_yard(&mut app), &["Table: ", "4 of oak", "; and 3 of ash"], &[]);
}
