//! What is kept folded is what a fold of all lines gives, after whatever was tapped.

use super::*;
use crate::app::bench::Tap as Bench;
use crate::app::count::Tap as Count;
use crate::app::news::News;
use crate::app::order::Which;
use crate::app::told::nth;
use crate::app::trip::TripTap as Trip;
use crate::app::workshop::{Over, Tap as Workshop};
use crate::app::{App, Common, Msg};
use crate::parts::Place;
use fivebar_core::bench::{Batch, On};
use fivebar_core::ledger::kind::bench::{Kind, Stage};
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::kind::haul::Step;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::bench::Choice;
use fivebar_core::story::{BENCH, STANDS, tell};

/// Time of no job.
fn board(op: &str) -> Choice {
    let (kind, stage, batch) = (Kind::Office, Stage::Make, Batch::default());
    Choice { op: op.into(), kind, stage, on: On::Nothing, rework: false, name: None, batch }
}

fn acts() -> Vec<Msg> {
    let place = |place| Msg::Go(place);
    let trip = |tap| Msg::Count(Count::Trip(tap));
    vec![
        Msg::Count(Count::First),
        Msg::Count(Count::Arm(5)),
        Msg::Count(Count::Arm(1)),
        trip(Trip::Leave),
        trip(Trip::Step(Step::AtBin)),
        trip(Trip::Step(Step::Home)),
        trip(Trip::NewHaul),
        Msg::Common(Common::TakeBack),
        Msg::Common(Common::PutBack),
        Msg::Common(Common::StopRun),
        Msg::Bench(Bench::Board(board("sharpen"))),
        Msg::Bench(Bench::Board(board("tidy"))),
        Msg::Bench(Bench::Stop),
        place(Place::Count),
        place(Place::Bench),
        place(Place::Workshop),
        Msg::Workshop(Workshop::Open(Over::People)),
        Msg::Workshop(Workshop::Typed("Stair works".into())),
        Msg::Workshop(Workshop::AddPerson(Role::Supplier)),
    ]
}

fn check(app: &App, said: &Msg) {
    let lines: Vec<&str> = app.own.book.lines().collect();
    let again = Shelf::open(app.own.device(), lines);
    assert_eq!(app.own.book, again.book, "{said:?}");
    assert_eq!(app.own.haul(), again.haul(), "{said:?}");
    if let Some(haul) = app.own.haul() {
        assert_eq!(app.own.known(&haul), again.known(&haul), "{said:?}");
    }
    assert_eq!(app.own.bench(), again.bench(), "{said:?}");
    assert_eq!(app.own.workshop(), again.workshop(), "{said:?}");
    // Running time is added once a minute; no sequence lasts longer.
    let age = |shelf: &Shelf| CopyAge { logged: Span::ZERO, ..shelf.copy_age(app.now.at) };
    assert_eq!(age(&app.own), age(&again), "{said:?}");
}

/// Sixty sequences of forty taps, each of its own seed.
#[test]
fn inv01_what_is_kept_folded_is_what_the_entries_say() {
    for mut seed in 1..=60_u64 {
        let (mut app, acts) = (App::for_tests(Place::Count), acts());
        for n in 0..40 {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let said = acts[usize::try_from(seed >> 33).unwrap() % acts.len()].clone();
            app.heard(said.clone(), nth(n));
            check(&app, &said);
        }
        assert!(10 < app.own.book.len(), "most taps wrote something");
    }
}

/// What is counted onto a haul while something runs on it speaks for the end of that; so does what is taken back of it no more.
#[test]
fn acts_on_a_haul_speak_for_what_runs_on_it() {
    let mut app = App::for_tests(Place::Count);
    let at = |app: &mut App, n: u8, said: Msg| {
        app.heard(said.clone(), nth(n));
        check(app, &said);
    };
    at(&mut app, 1, Msg::Count(Count::First));
    let on = On::Haul(app.own.haul().unwrap().id);
    at(&mut app, 5, Msg::Bench(Bench::Board(Choice { on, ..board("sort") })));
    assert!(app.own.bench().minds(on));
    for (n, said) in (10..).step_by(5).zip([Count::Arm(5), Count::First, Count::First].map(Msg::Count)) {
        at(&mut app, n, said);
    }
    at(&mut app, 30, Msg::Common(Common::TakeBack));
    at(&mut app, 35, Msg::Bench(Bench::Stop));
    at(&mut app, 40, Msg::Count(Count::First));
}

/// The last lines of a maker's days, at each hour of them, show the haul in hand as the whole book does, or do not show it.
#[test]
fn a_glimpse_of_the_book_shows_what_the_whole_book_shows() {
    let told = tell(&[STANDS, BENCH].concat());
    let lines: Vec<&str> = told.book.lines().collect();
    let device = Device::new([3; 8]);
    let mut shown = 0;
    for upto in 1..=lines.len() {
        let (tail, all) = (&lines[upto.saturating_sub(40)..upto], &lines[..upto]);
        let mut app = App::new(crate::parts::Page::default(), Place::Count, Rc::new(crate::words::Plain::default()));
        if !app.glimpsed(Book::of_lines(tail.iter().copied())) {
            continue;
        }
        let glimpse = crate::screens::page(&app).html();
        assert!(glimpse.contains("aria-busy"), "{upto}");
        assert_eq!(app.heard(Msg::Count(Count::First), nth(1)), [], "nothing is written before all is read");
        let book = Box::new(Book::of_lines(all.iter().copied()));
        app.early.clear();
        let seen = app.own.haul();
        app.told(News::Opened { which: Which::Own, device, book, names: Sorted::new() });
        assert_eq!(seen, app.own.haul(), "{upto}");
        shown += 1;
    }
    assert!(50 < shown && shown < lines.len(), "{shown} of {}", lines.len());
}

/// What another window wrote between our reading of the store and our opening of it is not overwritten by the older book.
#[test]
fn what_came_while_the_book_was_read_stays() {
    let told = tell(STANDS);
    let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
    let (older, since) = lines.split_at(lines.len() - 3);
    let mut app = App::new(crate::parts::Page::default(), Place::Jobs, Rc::new(crate::words::Plain::default()));
    app.told(News::Grew { which: Which::Own, lines: since.to_vec() });
    let book = Box::new(Book::of_lines(older.iter().map(String::as_str)));
    app.told(News::Opened { which: Which::Own, device: Device::new([3; 8]), book, names: Sorted::new() });
    assert_eq!(app.own.book, told.book);
}

/// Three acts, taken back two and three deep, and done again one by one; a new act ends that.
#[test]
fn what_was_taken_back_is_done_again_one_by_one() {
    let check = |backs: u8, agains: u8, stands: &[&str]| {
        let mut app = App::for_tests(Place::Bench);
        for (n, op) in (1..).zip(["sharpen", "tidy", "sweep"]) {
            app.heard(Msg::Bench(Bench::Board(board(op))), nth(n * 10));
        }
        for n in 0..backs {
            app.heard(Msg::Common(Common::TakeBack), nth(40 + n));
        }
        for n in 0..agains {
            app.heard(Msg::Common(Common::PutBack), nth(50 + n));
        }
        let shown = app.own.bench().runs().map(|run| run.work.op.clone()).listed();
        assert_eq!(shown, stands, "{backs} {agains}");
        let left = backs.saturating_sub(agains);
        assert_eq!(app.own.taken_back.len(), usize::from(left), "{backs} {agains}");
        let page = crate::screens::page(&app).html();
        assert_eq!(page.contains("Do it again"), 0 < left, "{backs} {agains}");
        app.heard(Msg::Bench(Bench::Board(board("new"))), nth(60));
        assert_eq!(app.own.to_put_back(), None);
    };
    check(2, 0, &["sharpen"]);
    check(2, 1, &["sharpen", "tidy"]);
    check(2, 2, &["sharpen", "tidy", "sweep"]);
    check(3, 2, &["sharpen", "tidy"]);
    check(3, 3, &["sharpen", "tidy", "sweep"]);
}
