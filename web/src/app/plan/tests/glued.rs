//! A part that is glued up of strips and lacks some: what is said to be missing, and that what is looked for makes it.

use super::rack_first::{bought, planned_out};
use super::told::says;
use super::*;
use fivebar_core::sheet::make::{Boards, Source, sources};
use fivebar_core::sheet::plan::GlueUp;
use fivebar_core::sheet::plan::wish::{Wanted, Wish};

/// Ten oak strips are two tops of four and two over, nine squares of maple are two times four legs.
const STANDS: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile strips oak-white 1 x 2 1/2 x 24 in\n\
    count 10 strips\ngood 10 strips\npile squares maple-sycamore 2 x 2 x 24 in\ncount 9 squares\ngood 9 squares\njob tray \"Stand\" 3 spec\n\
    part \"Leg\" 4 of 1 3/4 x 1 3/4 x 23 in maple-sycamore for tray\npart \"Top\" 1 of 3/4 x 9 x 20 in oak-white for tray\n";

fn stands(lines: &str) -> App {
    let story = tell(&format!("{STANDS}{lines}"));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts)]);
    app
}

fn made(app: &App) -> i64 {
    app.plan.found.as_ref().unwrap_or_else(|| panic!("{}", page(app))).sheet.made
}

/// The boards that are looked for, as they could be bought.
fn looked_for(app: &App) -> Vec<Boards> {
    let pieces = crate::app::sought::of_plan(app).unwrap().0.pieces;
    pieces.into_iter().map(|it| Boards { wood: it.wood, size: [it.thickness, it.width, it.length], n: it.n, price: None }).collect()
}

/// By hand: two tops take eight strips, so one top is missing and not two; of strips it would be two more.
#[test]
fn what_a_glued_part_lacks_is_counted_in_parts_and_makes_it_when_bought() {
    let mut app = stands("");
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!(made(&app), 2);
    says(&app, &["One more lacks 3 of Leg and 1 of Top."], &["2 of Top"]);
    let wanted = looked_for(&app);
    assert_eq!(wanted.iter().map(|it| it.n).collect::<Vec<_>>(), [3, 2], "{wanted:?}");
    let mut buys = stands("");
    buys.plan.draft.bought.extend(wanted);
    planned_out(&mut buys, vec![Tap::Go]);
    assert_eq!((made(&buys), bought(&buys)), (3, 5), "{}", page(&buys));
}

/// One board that is wide enough is the third top by itself, bought or lying there; the others stay glued up.
#[test]
fn one_wide_board_is_a_top_beside_those_that_are_glued_up() {
    let size = |sides: [&str; 3]| {
        let typing = fivebar_core::quantity::reading::Typing { units: fivebar_core::quantity::Units::Inch, ..typing_of(&stands("")) };
        sides.map(|side| fivebar_core::quantity::reading::length(side, typing).unwrap())
    };
    let boards = |wood: &str, n, sides| Boards { wood: fivebar_core::quantity::Key::read(wood), size: size(sides), n, price: None };
    for wide in ["9 3/16", "9 1/2"] {
        let mut buys = stands("");
        buys.plan.draft.bought.extend([boards("maple-sycamore", 5, ["2", "2", "24"]), boards("oak-white", 5, ["1", wide, "24"])]);
        planned_out(&mut buys, vec![Tap::Go]);
        assert_eq!((made(&buys), bought(&buys)), (3, 4), "{wide}: {}", page(&buys));
    }
    let mut lies = stands("pile wide oak-white 1 x 9 1/2 x 24 in\ncount 1 wide\ncount 3 squares\n");
    planned_out(&mut lies, vec![Tap::Go]);
    assert_eq!(made(&lies), 3, "{}", page(&lies));
    says(&lies, &[], &["too narrow"]);
}

fn typing_of(app: &App) -> fivebar_core::quantity::reading::Typing {
    app.speech.typing(fivebar_core::quantity::Units::Inch)
}

/// Five strips of each of two lengths: tops of the same widths are one line, whichever piles their strips are of.
#[test]
fn glue_ups_of_the_same_widths_are_told_once() {
    let mut app = stands("gone 5 strips burnt\npile longer oak-white 1 x 2 1/2 x 25 in\ncount 5 longer\ngood 5 longer\n");
    planned_out(&mut app, vec![Tap::Go]);
    let all = &app.plan.found.as_ref().unwrap().sheet.glue_ups;
    assert!(!all.is_empty() && all.iter().map(|it| it.n).sum::<i64>() == 2, "{all:?}");
    for (nth, one) in all.iter().enumerate() {
        assert!(all.iter().skip(nth + 1).all(|other| (other.part, &other.strips) != (one.part, &one.strips)), "{all:?}");
    }
}

/// Two strips of oak and four of maple lie there, and a top takes four and more: where no wood is said for it, it says of which it is;
/// where one is said, nothing.
#[test]
fn a_part_glued_up_of_several_woods_says_so() {
    let lines = "gone 8 strips burnt\npile pale maple-sycamore 1 x 2 1/2 x 24 in\ncount 4 pale\ngood 4 pale\n";
    let (mixed, key) = ("Panel is glued up of several woods, as none is said for it: ", "Set the wood of panel");
    let panel = |wide: &str, wood: &str| {
        let mut app = stands(&format!("{lines}part \"Panel\" 1 of 3/4 x {wide} x 20 in {wood} for tray\n"));
        heard(&mut app, [Tap::LeaveOut("Leg".into()), Tap::LeaveOut("Top".into()), Tap::At(0), Tap::Press(Press::Digit(1))]);
        planned_out(&mut app, vec![Tap::Go]);
        assert_eq!(made(&app), 1, "{}", page(&app));
        app
    };
    let mut app = panel("12", "");
    let mut two = panel("12", "");
    twice(&mut two, |part| part.name == "Panel");
    says(&two, &["Panel (2 of them) is glued up of several woods, as none is said for it: sycamore maple and white oak."], &[mixed]);
    says(&app, &[mixed, "sycamore maple and white oak.", "4 sycamore maple and 2 white oak side by side.", key], &[]);
    heard(&mut app, [Tap::Use]);
    says(&app, &[mixed], &[key]);
    says(&panel("9", "maple-sycamore"), &[], &["several woods", "side by side."]);
    let now = |app: &App| Now { wall: app.now, chance: [71; 10] };
    let mut app = panel("12", "");
    let at = now(&app);
    app.heard(Msg::Jobs(Jobs::Write(crate::app::jobs::draft::What::Part(Some("Panel".into())))), at);
    says(&app, &["Panel", "Wood"], &[]);
}

/// A part of the plan in hand, and what is glued up of it, stands there twice, as parts alike do.
fn twice(app: &mut App, is_it: impl Fn(&Wanted) -> bool) {
    let (given, found) = app.plan.given.as_mut().zip(app.plan.found.as_mut()).unwrap();
    let Wish::Parts(list) = &mut given.ready.wish else { panic!() };
    let (nth, next) = (list.parts.iter().position(is_it).unwrap(), list.parts.len());
    list.parts.push(list.parts[nth].clone());
    let again = found.sheet.glue_ups.iter().filter(|it| it.part == nth).cloned().map(|it| GlueUp { part: next, ..it }).collect::<Vec<_>>();
    found.sheet.glue_ups.extend(again);
}

/// The taps that let a plan take of one wood alone, as it lies on the rack or comes back to it.
fn of_wood(app: &App, wood: &str) -> Vec<Tap> {
    let all = sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let is_off = |at| app.plan.draft.turned.contains(&(at, false));
    let may = |it: &Source| it.pile.wood.as_ref().is_some_and(|key| key.as_str() == wood);
    let mut piles: Vec<(Lying, bool)> = all.iter().map(|it| (it.which().0, may(it))).collect();
    piles.dedup();
    piles.into_iter().filter(|(at, may)| is_off(*at) == *may).map(|(at, _)| Tap::Turn((at, false))).collect()
}

/// One strip of oak is cut of a panel for which no wood is said: what it lacks, planned of maple, says so, and of oak not.
#[test]
fn a_part_that_is_begun_of_one_wood_and_finished_of_another_says_so() {
    let lines = "gone 6 strips burnt\npile pale maple-sycamore 1 x 2 1/2 x 24 in\ncount 4 pale\ngood 4 pale\n\
        part \"Panel\" 1 of 3/4 x 9 x 20 in for tray\n";
    let (oak, maple, mixed) = ("oak-white", "maple-sycamore", "Panel is glued up of several woods, as none is said for it: ");
    let finished = |first: &str, then: &str| {
        let mut app = stands(lines);
        heard(&mut app, [Tap::LeaveOut("Leg".into()), Tap::LeaveOut("Top".into()), Tap::At(0), Tap::Press(Press::Digit(1))]);
        let turned = of_wood(&app, first);
        planned_out(&mut app, turned.into_iter().chain([Tap::Go]).collect());
        says(&app, &[], &["several woods"]);
        heard(&mut app, [Tap::Use, Tap::OneMore(0), Tap::Change]);
        let turned = of_wood(&app, then);
        planned_out(&mut app, turned.into_iter().chain([Tap::Go]).collect());
        assert_eq!(made(&app), 1, "{}", page(&app));
        app
    };
    let mut app = finished(oak, maple);
    says(
        &app,
        &[mixed, "the strips that are cut are white oak, the others sycamore maple.", "Set the wood of panel"],
        &["Rest of panel is glued up of several"],
    );
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    for mut app in [reloaded(&app), app] {
        heard(&mut app, [Tap::Open]);
        says(&app, &[mixed, "the strips that are cut are white oak, the others sycamore maple."], &["Set the wood"]);
    }
    says(&finished(maple, oak), &[mixed, "the strips that are cut are sycamore maple, the others white oak."], &[]);
    says(&finished(oak, oak), &["Rest of Panel"], &["several woods"]);
    // Two rests alike, as of two panels that were begun: each line once, with how many.
    let mut app = finished(oak, maple);
    twice(&mut app, |part| part.rest_of.is_some());
    let shown = page(&app);
    for once in ["several woods", "Set the wood of panel", "glued up with its strips that are cut", "Rest of Panel is glued up: "] {
        assert_eq!(shown.matches(once).count(), 1, "{once}: {shown}");
    }
    says(&app, &["2 × rest of Panel"], &[]);
}
