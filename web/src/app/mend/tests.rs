//! Counts put right, from every list that shows them.

use super::*;
use crate::app::bench::day::{DayTap, list};
use crate::app::pile::{PilePage, PileTap};
use crate::app::shelf::Shelf;
use crate::app::told::after;
use crate::app::workshop::rack::{Page, RackTap};
use crate::app::workshop::{Over, Tap};
use crate::app::{Common, Msg, bench, count as counting};
use crate::parts::Place;
use fivebar_core::ledger::{Device, line};
use fivebar_core::sheet::stock::history::history;
use fivebar_core::story::{Story, tell};

const YARD: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash 1 x 2 x 20 in\n";

/// The app on the rack of a story, on 3 March 2026; and the pile of ash.
fn app(lines: &str) -> (App, Lying) {
    let story = tell(&format!("{YARD}{lines}"));
    assert_eq!(story.refused, []);
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
    let mut app = App::for_tests(Place::Workshop);
    app.own = Shelf::open(Device::new([7; 8]), lines.iter().map(String::as_str));
    let at = lying(&story);
    after(&mut app, [Msg::Workshop(Tap::Open(Over::Rack)), rack(RackTap::Show(Page::Pile(at)))]);
    (app, at)
}

fn lying(story: &Story) -> Lying {
    Lying { haul: story.names.haul("yard").unwrap(), pile: story.names.pile("ash").unwrap() }
}

fn rack(tap: RackTap) -> Msg {
    Msg::Workshop(Tap::Rack(tap))
}

fn mend(tap: MendTap) -> Msg {
    Msg::Mend(tap)
}

/// The figures typed over those that stand, each in its place; `-` leaves one as it is.
fn typed_over(figures: &[&str]) -> Vec<Msg> {
    let press = |sign: char| mend(MendTap::Press(sign.to_digit(10).map_or(Press::Point, |digit| Press::Digit(digit as u8))));
    let one = |(nth, figure): (usize, &&str)| [vec![mend(MendTap::At(nth))], figure.chars().map(press).collect()].concat();
    figures.iter().enumerate().filter(|(_, figure)| **figure != "-").flat_map(one).collect()
}

/// These taps give a page with these words in this order, and without those.
#[track_caller]
fn check(app: &mut App, taps: Vec<Msg>, shown: &[&str], not: &[&str]) {
    let html = after(app, taps);
    let mut from = 0;
    for words in shown {
        let at = html[from..].find(words);
        assert!(at.is_some(), "{words}, after what stands before it, in {html}");
        from += at.unwrap();
    }
    for words in not {
        assert!(!html.contains(words), "{words} in {html}");
    }
}

/// The nth line of the rack's history, the newest first.
fn nth(app: &App, at: Lying, nth: usize) -> Id {
    history(&app.own.book, at)[nth].entry
}

fn opened(app: &App, at: Lying, line: usize) -> Vec<Msg> {
    let line = nth(app, at, line);
    vec![rack(RackTap::Show(Page::Pile(at))), rack(RackTap::Line(line)), mend(MendTap::Open(line))]
}

/// The number and the reason of a line are put right where they stand; what was written stays beside it.
#[test]
fn a_line_of_the_history_is_put_right() {
    let (mut app, at) = app("count 22 ash\nrecount 24 ash \"dark corner\"\nrack 20 ash\ngone 3 ash burnt\n");
    let first = nth(&app, at, 0);
    check(&mut app, vec![rack(RackTap::Line(first))], &[">17<", "Put it right", ">Strike<"], &[]);
    let taps = opened(&app, at, 0);
    check(&mut app, taps, &["Put it right", "3 gone: burnt", "aria-pressed=\"true\"><span>burnt", "given away", "stays in the book"], &[]);
    let given = mend(MendTap::Why(Key::read("given").unwrap()));
    let done = || vec![mend(MendTap::Done)];
    check(&mut app, [vec![given], typed_over(&["5"]), done()].concat(), &[">15<", "5 gone: given away; was 3 gone: burnt"], &[]);
    // What lay there is put right on the day it was counted, and what went since went of that.
    let taps = opened(&app, at, 1);
    check(&mut app, [taps, typed_over(&["21"]), done()].concat(), &[">16<", "walked round: 21; was walked round: 20"], &[]);
    let taps = opened(&app, at, 2);
    check(&mut app, taps, &["counted again: 24, dark corner", "value=\"dark corner\""], &[]);
    let other = [vec![mend(MendTap::Say("upstairs".into()))], typed_over(&["25"]), done()].concat();
    check(&mut app, other, &[">16<", "counted again: 25, upstairs; was counted again: 24, dark corner"], &[]);
    check(&mut app, vec![Msg::Common(Common::TakeBack)], &["counted again: 24, dark corner<"], &["upstairs"]);
    // What rests on it is said in place, and what was typed stays.
    let taps = opened(&app, at, 0);
    check(&mut app, [taps, typed_over(&["99"]), done()].concat(), &["you asked for 99 pieces", "99"], &[]);
    assert!(app.is_mending() && app.is_deep());
    check(&mut app, vec![Msg::Key("Escape".into())], &["What happened to it"], &["you asked for"]);
}

/// 41 lb of wood at 0.4 lb a piece are 103; with 5 lb of cart that was forgotten, 90. What was not typed over stays to the gram.
#[test]
fn a_count_by_weight_is_put_right_by_its_figures() {
    let (mut app, at) = app("weighed ash sample 10 4 lb all 41 lb\n");
    let taps = opened(&app, at, 0);
    let stands = ["103 counted by weight", "Put it right", ">10<", ">4<", ">41<", ">\u{2013}<", "about 103 pieces, from 96 to 110"];
    check(&mut app, taps[..2].to_vec(), &stands[..2], &[]);
    check(&mut app, taps, &[stands[1], stands[2], stands[3], stands[4], stands[5], stands[6]], &["How many?"]);
    check(&mut app, typed_over(&["-", "-", "-", "50"]), &["Put it right"], &["about"]);
    check(&mut app, vec![mend(MendTap::Done)], &["shows 41", "50"], &["What happened to it"]);
    check(&mut app, typed_over(&["-", "-", "-", "5"]), &["about 90 pieces"], &[]);
    check(&mut app, vec![mend(MendTap::Done)], &["90 counted by weight; was 103 counted by weight", "a count put right"], &[]);
    let haul = fold::haul(&app.own.book, at.haul).unwrap();
    let weighed = &haul.piles[0].weighed;
    assert_eq!(weighed.iter().map(|it| (it.sample, it.sample_weight, it.weight, it.tare)).collect::<Vec<_>>(), [(10, 1814, 18_597, 2268)]);
    check(&mut app, vec![Msg::Common(Common::TakeBack)], &["103 counted by weight<"], &["; was"]);
}

/// From the page of the pile, on Count: the count by layers stands there, and its form leads back.
#[test]
fn a_count_by_layers_is_put_right_from_the_page_of_the_pile() {
    let (mut app, at) = app("count 2 ash\nlayers 4 of 12 ash rest 3\n");
    after(&mut app, [Msg::Go(Place::Count)]);
    app.count.over = counting::Over::Page(Box::new(PilePage::of(at.pile)));
    let line = nth(&app, at, 0);
    check(&mut app, vec![], &["count/pile-page", "Put right: 51 counted by layers"], &["Put right: 2"]);
    check(&mut app, vec![mend(MendTap::Open(line))], &["count/mend", "51 counted by layers", ">4<", ">12<", ">3<", "51 pieces"], &[]);
    check(&mut app, typed_over(&["0"]), &["count/mend"], &[]);
    check(&mut app, [typed_over(&["5", "-", "0"]), vec![mend(MendTap::Done)]].concat(), &["count/pile-page", ">62<"], &["count/mend"]);
    let leave = vec![mend(MendTap::Open(line)), mend(MendTap::Leave), Msg::Count(counting::Tap::Page(PileTap::Open(at.pile)))];
    check(&mut app, leave, &["count/pile-page", "Put right: 60 counted by layers"], &[]);
}

/// In the day's list each tap is put right, and one that is struck is not.
#[test]
fn a_count_is_put_right_in_the_list_of_the_day() {
    let (mut app, at) = app("count 5 ash\ncount 9 ash\nreject 2 ash twist\njob desk \"Desk\" 1 spec\ntake 1 ash for desk\n");
    let day = app.own.book.entries().next().unwrap().0.wall.day();
    after(&mut app, [Msg::Go(Place::Bench)]);
    app.bench.over = list(day);
    let (tap, nine) =
        (|tap| Msg::Bench(bench::Tap::Day(tap)), history(&app.own.book, at).iter().find(|line| line.n == 14).unwrap().acts[0].entry);
    let five = history(&app.own.book, at).iter().find(|line| line.n == 14).unwrap().acts[1].entry;
    check(&mut app, vec![tap(DayTap::Open(five))], &[">14<", ">5<", "Put it right", "Strike", ">9<", "Put it right", "Strike"], &[]);
    check(&mut app, vec![mend(MendTap::Open(nine))], &["count/mend", "9 counted"], &[]);
    check(&mut app, [typed_over(&["7"]), vec![mend(MendTap::Done)]].concat(), &["bench/day", ">12<", ">7<"], &["count/mend"]);
    // Twelve are taken, two rejected, one is at the bench: ten can't have been none.
    check(
        &mut app,
        vec![mend(MendTap::Open(five)), mend(MendTap::Done), tap(DayTap::Open(five)), tap(DayTap::Open(five))],
        &["bench/day", ">12<"],
        &[],
    );
    let struck = vec![tap(DayTap::Strike(nine))];
    check(&mut app, struck, &[">5<", ">7<", "Undo strike"], &[]);
    // What is struck is not put right: its page is not there.
    check(&mut app, vec![mend(MendTap::Open(nine))], &["bench/day"], &["count/mend"]);
    assert!(!app.is_mending());
}

/// Pieces of a job are put right in the list of the day; what was done with them since is said in place.
#[test]
fn pieces_of_a_job_are_put_right_in_the_list_of_the_day() {
    let (mut app, at) = app("count 9 ash\njob desk \"Desk\" 1 spec\ntake 5 ash for desk\nfree 2 ash from desk\n");
    let day = app.own.book.entries().next().unwrap().0.wall.day();
    after(&mut app, [Msg::Go(Place::Bench)]);
    app.bench.over = list(day);
    let tap = |tap| Msg::Bench(bench::Tap::Day(tap));
    let [back, took] = [0, 1].map(|line| nth(&app, at, line));
    check(&mut app, vec![tap(DayTap::Open(took))], &[">5<", "Put it right", "Strike"], &[]);
    check(&mut app, vec![mend(MendTap::Open(took))], &["count/mend", "5 to Desk", "How many?"], &[]);
    let done = || vec![mend(MendTap::Done)];
    let since = "the job gave back 2 pieces since, and would have had 1";
    check(&mut app, [typed_over(&["1"]), done()].concat(), &["count/mend", since, "Put right what it gave back first."], &[]);
    check(&mut app, [typed_over(&["4"]), done()].concat(), &["bench/day", ">4<", "a count put right"], &["count/mend"]);
    check(&mut app, vec![mend(MendTap::Open(back))], &["count/mend", "2 back from Desk"], &[]);
    check(&mut app, [typed_over(&["1"]), done()].concat(), &["bench/day", ">4<", ">1<"], &["count/mend"]);
    let job = fold::jobs(&app.own.book).next().unwrap();
    assert_eq!(job.wood.values().copied().collect::<Vec<_>>(), [3]);
    let shown = ["1 back from Desk; was 2 back from Desk", "4 to Desk; was 5 to Desk"];
    check(&mut app, vec![Msg::Go(Place::Workshop), rack(RackTap::Show(Page::Pile(at)))], &shown, &[]);
}

/// The list of the day has what was counted again, found on the rack, gone and left over too: each is struck, comes again and is put right.
#[test]
fn the_list_of_the_day_has_what_was_found_on_the_rack() {
    let (mut app, at) = app("count 9 ash\nrecount 12 ash\nrack 11 ash\nrack 10 ash\ngone 3 ash burnt\n");
    let day = app.own.book.entries().next().unwrap().0.wall.day();
    after(&mut app, [Msg::Go(Place::Bench)]);
    app.bench.over = list(day);
    let tap = |tap| Msg::Bench(bench::Tap::Day(tap));
    let rows = ["Count: onto a pile", ">9<", "Count: the pile again", ">12<", "Rack: walked round", ">10<", "Rack: gone", ">3<"];
    check(&mut app, vec![], &rows, &[]);
    let [gone, second, first] = [0, 1, 2].map(|line| nth(&app, at, line));
    check(&mut app, vec![tap(DayTap::Open(first))], &[">11<", "Put it right", "Strike", ">10<", "Put it right", "Strike"], &[]);
    check(&mut app, vec![tap(DayTap::Strike(second))], &["Rack: walked round", ">11<", ">10<", "Undo strike"], &[]);
    check(&mut app, vec![tap(DayTap::Strike(first))], &["Rack: walked round", ">\u{2013}<", ">11<", "Undo strike", "Undo strike"], &[]);
    check(&mut app, vec![tap(DayTap::PutBack(second))], &["Rack: walked round", ">10<"], &[]);
    check(&mut app, vec![tap(DayTap::Open(gone)), mend(MendTap::Open(gone))], &["count/mend", "3 gone: burnt"], &[]);
    check(&mut app, [typed_over(&["2"]), vec![mend(MendTap::Done)]].concat(), &["bench/day", "Rack: gone", ">2<"], &["count/mend"]);
}

/// Opened, each count says what was put right of it, and when.
#[test]
fn a_count_of_the_day_says_what_was_put_right_and_when() {
    let (mut app, at) = app("count 9 ash\njob desk \"Desk\" 1 spec\ntake 5 ash for desk\n");
    let day = app.own.book.entries().next().unwrap().0.wall.day();
    after(&mut app, [Msg::Go(Place::Bench)]);
    app.bench.over = list(day);
    let took = nth(&app, at, 0);
    let to = |figure: &str| [vec![mend(MendTap::Open(took))], typed_over(&[figure]), vec![mend(MendTap::Done)]].concat();
    after(&mut app, [Msg::Bench(bench::Tap::Day(DayTap::Open(took)))]);
    check(&mut app, to("4"), &[">4<", "Put right Tue 3 March", ": 4, was 5."], &[]);
    check(&mut app, to("3"), &[": 4, was 5.", ": 3, was 4."], &[]);
    let struck = vec![Msg::Bench(bench::Tap::Day(DayTap::Strike(took)))];
    check(&mut app, struck, &[">3<", "Undo strike", ": 4, was 5.", ": 3, was 4.", "Struck Tue 3 March"], &[]);
}
