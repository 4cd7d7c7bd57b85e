//! Bench as tables of messages: what is shown, and what is in the book.

mod asked;
mod big;
mod breaks;
mod cautions;
mod clocks;
mod coats;
mod days;
mod finding;
mod held;
mod helped;
mod helper;
mod lately;
mod mending;
mod missed;
mod rack;
mod taken_back;
mod typed;
mod waits;
mod waits_big;

use super::day::{DayTap, Mend};
use super::*;
use crate::app::told::nth;
use crate::app::{Common, Msg};
use fivebar_core::bench::{Kind, Stage};
use fivebar_core::ledger::decide::JobCommand;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::quantity::{Currency, Day, Offset, Units};
use fivebar_core::refusal::Refusal;

fn tap(tap: Tap) -> Msg {
    Msg::Bench(tap)
}

fn starting(tap: StartingTap) -> Msg {
    Msg::Bench(Tap::Starting(tap))
}

fn day(tap: DayTap) -> Msg {
    Msg::Bench(Tap::Day(tap))
}

fn op(name: &str) -> Msg {
    starting(StartingTap::Op(name.into(), Kind::Make, Stage::Make))
}

fn presses(digits: &str) -> Vec<Msg> {
    digits.bytes().map(|digit| tap(Tap::Press(Press::Digit(digit - b'0')))).collect()
}

/// Clocks go forward on Sunday 8 March 2026 at 07:00 in world time, and back on Sunday 1 November at 06:00.
fn new_york(at: Moment) -> Offset {
    let summer = Moment::at(1_772_953_200_000)..Moment::at(1_793_512_800_000);
    Offset::minutes(if summer.contains(&at) { -240 } else { -300 }).unwrap()
}

/// An app that is tapped at minutes after nine.
struct Told {
    app: App,
    taps: u8,
}

impl Told {
    fn empty() -> Told {
        let mut app = App::for_tests(Place::Bench);
        app.offset_at = Some(new_york);
        Told { app, taps: 0 }
    }

    /// With one job, five stands.
    fn stands() -> Told {
        let mut told = Told::empty();
        let (currency, units) = (Currency::USD, Units::Inch);
        let began = JobCommand::Begin { name: "stands".into(), currency, units, pieces: 5, made_for: For::Spec };
        told.app.order(&Command::Job(began), nth(0)).unwrap();
        told.app.orders.clear();
        told
    }

    fn now(&mut self, minute: i64) -> Now {
        self.taps += 1;
        let at = nth(0).wall.at.plus(Span::minutes(minute));
        Now { wall: self.app.local().wall(at), chance: [9, 9, 2, 3, 4, 5, 6, 7, self.taps, 0] }
    }

    /// What the page shows after these.
    fn at(&mut self, minute: i64, messages: impl IntoIterator<Item = Msg>) -> String {
        let now = self.now(minute);
        self.app.now = now.wall;
        for message in messages {
            let now = self.now(minute);
            self.app.heard(message, now);
        }
        crate::screens::page(&self.app).html()
    }

    fn start(&mut self, minute: i64, name: &str) -> Id {
        self.at(minute, [tap(Tap::Other), op(name)]);
        self.run()
    }

    fn run(&self) -> Id {
        sheet(&self.app).running.map(|slab| slab.run.id).unwrap()
    }

    fn today(&self) -> Day {
        self.app.now.day()
    }

    fn today_at(&mut self, minute: i64) -> Day {
        self.now(minute).wall.day()
    }

    /// Minutes of each run, in order of their start.
    fn minutes(&self) -> Vec<(String, i64)> {
        let bench = self.app.shelf().bench();
        bench.runs().map(|run| (run.work.op.clone(), run.worked(self.app.now.at).as_minutes())).collect()
    }
}

fn holds(shown: &str, words: &[&str]) {
    for word in words {
        assert!(shown.contains(word), "`{word}` in {shown}");
    }
}

fn lacks(shown: &str, words: &[&str]) {
    for word in words {
        assert!(!shown.contains(word), "no `{word}` in {shown}");
    }
}

#[test]
fn the_first_day_has_one_start_and_needs_no_job() {
    let mut told = Told::empty();
    let shown = told.at(0, []);
    holds(&shown, &["Nothing runs", "What are you doing?", "t60", "Add time I missed"]);
    lacks(&shown, &["Already at it", "Big buttons", "<footer"]);
    let shown = told.at(0, [tap(Tap::Other)]);
    holds(&shown, &["Sharpen", "Trim", "Find it, or type it", "15 min ago"]);
    lacks(&shown, &["No job", "Deliver</span></button><button"]);
    let shown = told.at(0, [starting(StartingTap::Typed("Shelf for the shop".into()))]);
    holds(&shown, &["Fetch", "Make", "Sell", "Deliver", "Office"]);
    let shown = told.at(0, [starting(StartingTap::Kind(Kind::Office))]);
    holds(&shown, &["Shelf for the shop", r#"class="slab""#, ">0</span>", ">s</span>", "No job"]);
    lacks(&shown, &["of how many?"]);
    assert_eq!(told.app.said, "Shelf for the shop started");
    let work = sheet(&told.app).running.unwrap().run.work;
    assert_eq!((work.kind, work.stage, work.on), (Kind::Office, Stage::Sell, On::Nothing));
}

#[test]
fn two_taps_start_for_the_job_in_hand_and_one_stops() {
    let mut told = Told::stands();
    holds(&told.at(0, [tap(Tap::Other)]), &["stands", "No job", r#"aria-pressed="true""#]);
    let shown = told.at(0, [op("Sand")]);
    holds(&shown, &["stands", r#"class="slab""#, "of how many?", "Helper joins", "1 more done", "Hardwood dust"]);
    holds(&told.at(0, []), &[">0</span>", ">s</span>"]);
    holds(&told.at(31, []), &[">31</span>", ">min</span>", "today 31 min", "31 min on the job"]);
    let shown = told.at(101, [tap(Tap::Stop)]);
    holds(&shown, &["Carry on: sand", "Already at it?", "Take back", "1 h 41"]);
    lacks(&shown, &["class=\"slab\"", "Hardwood dust"]);
    assert_eq!(told.app.said, "Sand stopped, 1 h 41");
}

#[test]
fn rework_is_carried_on_as_rework() {
    let mut told = Told::stands();
    told.at(0, [tap(Tap::Other), starting(StartingTap::Rework), op("Bore")]);
    holds(&told.at(5, []), &["rework"]);
    told.at(9, [tap(Tap::Stop)]);
    let carry = sheet(&told.app).carry_on.unwrap();
    told.at(20, [tap(Tap::Board(carry))]);
    assert!(sheet(&told.app).running.unwrap().run.work.rework);
}

#[test]
fn a_start_may_be_said_late_on_a_board_or_on_the_start_screen() {
    let mut told = Told::stands();
    told.at(20, [tap(Tap::Ago(15)), tap(Tap::Other)]);
    told.at(20, [op("Bore")]);
    assert_eq!((told.minutes(), told.app.bench.ago), (vec![("Bore".into(), 15)], Span::ZERO));
    // A switch said late ends the run before then; the same chip again takes the wish back.
    told.at(40, [tap(Tap::Other), tap(Tap::Ago(5)), op("Sand")]);
    assert_eq!(told.minutes(), [("Bore".into(), 30), ("Sand".into(), 5)]);
    told.at(50, [tap(Tap::Ago(5)), tap(Tap::Ago(5)), tap(Tap::Other), op("Pegs")]);
    assert_eq!(told.minutes().last(), Some(&("Pegs".into(), 0)));
}

/// "30 min ago" means the moment it was tapped: it is said, and over after two minutes, on another place, and after a reload.
#[test]
fn how_long_ago_a_start_was_is_over_with_the_moment_it_was_tapped() {
    let mut told = Told::stands();
    told.start(0, "Trim");
    told.at(10, [tap(Tap::Stop)]);
    let shown = told.at(100, [tap(Tap::Ago(30))]);
    holds(&shown, &["The next one you tap began at 10:10, 30 min ago."]);
    assert!(told.app.shows_time(told.app.now), "it ends by the clock alone");
    let shown = told.at(102, []);
    lacks(&shown, &["The next one you tap", r#"aria-pressed="true""#]);
    told.at(102, [tap(Tap::Other), op("Bore")]);
    assert_eq!(told.minutes().last(), Some(&("Bore".into(), 0)));
    told.at(110, [tap(Tap::Stop), tap(Tap::Ago(5))]);
    holds(&told.at(111, []), &["The next one you tap began at 10:50, when the last one stopped."]);
    let shown = told.at(111, [Msg::Go(Place::Jobs), Msg::Go(Place::Bench)]);
    lacks(&shown, &["The next one you tap"]);
    assert_eq!(Bench::default().ago, Span::ZERO);
    let shown = told.at(150, [tap(Tap::Ago(30)), tap(Tap::Other), op("Sand")]);
    holds(&shown, &["It began at 11:00.", "Take back"]);
    assert_eq!(told.minutes().last(), Some(&("Sand".into(), 30)));
    // A start that was now says nothing of it.
    told.at(160, [tap(Tap::Stop)]);
    lacks(&told.at(160, [tap(Tap::Other), op("Bore")]), &["It began at"]);
}

#[test]
fn pieces_are_notched_and_the_batch_is_asked_when_it_is_needed() {
    let mut told = Told::stands();
    told.start(0, "Sand");
    holds(&told.at(30, [tap(Tap::Done)]), &["1 done", "of how many?", "30 min each"]);
    let shown = told.at(30, [tap(Tap::AskBatch)]);
    holds(&shown, &["Of how many?", "Not now"]);
    let shown = told.at(30, presses("5").into_iter().chain([tap(Tap::PadDone)]));
    holds(&shown, &["1 of 5 done", "About 2 h left"]);
    lacks(&shown, &["of how many?"]);
    told.at(60, [tap(Tap::MoreDone)]);
    let shown = told.at(60, presses("2").into_iter().chain([tap(Tap::PadDone)]));
    holds(&shown, &["3 of 5 done", "20 min each", "About 40 min left", "1 min to 1 h 49"]);
    assert_eq!(told.app.said, "3 of 5 done");
    // Nothing typed is not taken, with the reason.
    told.at(60, [tap(Tap::MoreDone)]);
    holds(&told.at(60, [tap(Tap::PadDone)]), &["entry wrong", "class=\"why\""]);
    holds(&told.at(60, [tap(Tap::Close), Msg::Common(Common::TakeBack)]), &["1 of 5 done", "Do it again"]);
}

#[test]
fn a_forgotten_stop_is_asked_about_and_never_blocks_a_start() {
    let mut told = Told::stands();
    let gluing = told.start(0, "Glue tops");
    told.at(47, [tap(Tap::Done)]);
    let shown = told.at(192, []);
    holds(
        &shown,
        &[
            "Glue tops shows 3 h 12",
            "The one piece was done at 09:47.",
            "47 min, until 09:47",
            "Still at it, 3\u{a0}h\u{a0}12",
            "47 min on the job, and 2 h 25 to settle",
            "and one to settle",
        ],
    );
    told.start(192, "Sand");
    let shown = told.at(200, []);
    holds(&shown, &["Glue tops shows 3 h 12", r#"class="slab""#, "today 55 min"]);
    let wrong = sheet(&told.app).to_mend.first().and_then(|mend| mend.wrong).unwrap();
    let shown = told.at(201, [tap(Tap::Proposed(gluing, wrong.at))]);
    lacks(&shown, &["shows 3 h 12"]);
    assert_eq!(told.minutes(), [("Glue tops".into(), 47), ("Sand".into(), 9)]);
    // Taken back, it is asked again; it may be right, or have stopped at another time.
    holds(&told.at(202, [Msg::Common(Common::TakeBack)]), &["shows 3 h 12"]);
    told.at(203, [tap(Tap::StoppedAt(gluing))]);
    holds(&told.at(203, presses("99").into_iter().chain([tap(Tap::PadDone)])), &["Not taken"]);
    told.at(203, [tap(Tap::Press(Press::RubOut)), tap(Tap::Press(Press::RubOut))]);
    told.at(203, presses("0930").into_iter().chain([tap(Tap::PadDone)]));
    assert_eq!(told.minutes().first(), Some(&("Glue tops".into(), 30)));
}

/// Asked on the next day, the moment is on its day.
#[test]
fn an_end_of_another_day_is_on_that_day() {
    let mut told = Told::stands();
    told.start(0, "Glue tops");
    told.at(47, [tap(Tap::Done)]);
    holds(&told.at(600, []), &["The one piece was done at 09:47."]);
    holds(&told.at(24 * 60, []), &["The one piece was done on Tue 3 March 09:47."]);
}

/// Five tops, one at 9:20 and one at 9:40, and nothing more: at 20 min each the batch was done at 10:40.
#[test]
fn an_end_at_which_the_batch_was_done_notes_its_pieces() {
    let check = |answer: fn(Id, Moment) -> Tap, done: &str| {
        let mut told = Told::stands();
        let gluing = told.start(0, "Glue tops");
        let On::Job(job) = told.app.shelf().bench().run(gluing).unwrap().work.on else { unreachable!() };
        let now = told.now(1);
        told.app.order(&Command::Bench(BenchCommand::PlanBatch { job, op: "Glue tops".into(), n: 5 }), now).unwrap();
        told.at(20, [tap(Tap::Done)]);
        told.at(40, [tap(Tap::Done)]);
        let asks = ["At your pace the batch was done at 10:40.", "1 h 40, until 10:40", "5 of 5 done", "The same, 2 of 5 done"];
        holds(&told.at(600, []), &asks);
        let wrong = sheet(&told.app).running.and_then(|slab| slab.wrong).unwrap();
        let shown = told.at(601, [tap(answer(gluing, wrong.at))]);
        lacks(&shown, &["At your pace"]);
        holds(&shown, &[done]);
        assert_eq!(told.minutes(), [("Glue tops".into(), 100)]);
        // Taken back, both are: it is asked again, and two are done.
        holds(&told.at(602, [Msg::Common(Common::TakeBack)]), &asks);
        assert_eq!(told.app.shelf().bench().run(gluing).map(fivebar_core::bench::Run::done), Some(2));
    };
    check(|run, at| Tap::ProposedWhole(run, at, 3), "5 of 5");
    check(Tap::Proposed, "2 of 5");
}

/// Of what runs the word is that it goes on, and it does; of what is over, that it was so. Neither is asked about again at once.
#[test]
fn a_run_that_was_right_stays_as_it_is() {
    let mut told = Told::stands();
    let gluing = told.start(0, "Glue tops");
    holds(&told.at(240, []), &["Still at it, 4\u{a0}h"]);
    lacks(&told.at(240, [tap(Tap::Right(gluing))]), &["Glue tops shows"]);
    assert_eq!(told.minutes(), [("Glue tops".into(), 240)]);
    assert!(told.app.shelf().bench().run(gluing).is_some_and(|run| run.is_running()));
    let mut told = Told::stands();
    told.start(0, "Glue tops");
    holds(&told.at(240, [tap(Tap::Stop)]), &["It was 4 h"]);
    // Two pieces at ten minutes each, then four hours: who is still at it says so once.
    let mut told = Told::stands();
    let sanding = told.start(0, "Sand");
    told.at(10, [tap(Tap::Done)]);
    told.at(20, [tap(Tap::Done)]);
    holds(&told.at(260, []), &["Sand shows", "Still at it"]);
    lacks(&told.at(260, [tap(Tap::Right(sanding))]), &["Sand shows", "This piece 4 h so far"]);
    holds(&told.at(300, []), &["This piece 4 h 40 so far"]);
}

#[test]
fn the_day_lists_mends_strikes_and_puts_back() {
    let mut told = Told::stands();
    let sanding = told.start(0, "Sand");
    told.at(60, [tap(Tap::Stop)]);
    let today = told.today();
    let shown = told.at(61, [day(DayTap::Show(today)), day(DayTap::Open(sanding))]);
    holds(&shown, &["Today", "1 h in all", "all measured", "The clock said 09:00 to 10:00.", "Mend", "Strike", r#"aria-expanded="true""#]);
    holds(&told.at(61, [day(DayTap::Mend(Box::new(Mend::Which)))]), &["Operation"]);
    told.at(62, [day(DayTap::Mend(Box::new(Mend::Stop(Typed::default()))))]);
    let shown = told.at(62, presses("0930").into_iter().chain([tap(Tap::PadDone)]));
    holds(&shown, &["30 min in all", "corrected: ended at 09:30; the clock showed 1\u{a0}h", "As clocked, 1 h"]);
    holds(&told.at(63, [day(DayTap::AsStamped(sanding))]), &["1 h in all", "all measured"]);
    told.at(64, [day(DayTap::Mend(Box::new(Mend::Op("Scrape ".into())))), day(DayTap::Op)]);
    assert_eq!(told.minutes(), [("Scrape".into(), 60)]);
    let shown = told.at(65, [day(DayTap::Strike(sanding))]);
    holds(&shown, &["Struck", "Undo strike", "Do it again", "taken back: start of ", "Nothing logged on this day."]);
    told.at(66, [day(DayTap::PutBack(sanding))]);
    assert_eq!(told.minutes(), [("Scrape".into(), 60)]);
    holds(&told.at(66, [tap(Tap::Close)]), &["Carry on: scrape"]);
}

/// Glue from nine; at 10:40 "sand, 15 min ago": the glue was stamped 10:40 and ended at 10:25.
#[test]
fn an_end_is_put_back_as_far_as_the_next_start_leaves_it() {
    let mut told = Told::stands();
    let gluing = told.start(0, "Glue");
    told.at(100, [tap(Tap::Ago(15)), tap(Tap::Other), op("Sand")]);
    assert_eq!(told.minutes(), [("Glue".into(), 85), ("Sand".into(), 15)]);
    let today = told.today();
    told.at(101, [day(DayTap::Show(today)), day(DayTap::Open(gluing)), day(DayTap::Mend(Box::new(Mend::Stop(Typed::default()))))]);
    let shown = told.at(101, presses("1020").into_iter().chain([tap(Tap::PadDone)]));
    assert_eq!(told.minutes(), [("Glue".into(), 80), ("Sand".into(), 16)]);
    holds(&shown, &["As clocked, 1 h 25"]);
    lacks(&told.at(102, [day(DayTap::AsStamped(gluing))]), &["Not taken"]);
    assert_eq!(told.minutes(), [("Glue".into(), 85), ("Sand".into(), 17)]);
}

#[test]
fn a_mend_that_would_pay_a_minute_twice_is_refused_in_words() {
    let mut told = Told::stands();
    told.start(0, "Saw");
    let sanding = told.start(30, "Sand");
    told.at(60, [tap(Tap::Stop)]);
    let today = told.today();
    told.at(61, [day(DayTap::Show(today)), day(DayTap::Open(sanding)), day(DayTap::Mend(Box::new(Mend::Start(Typed::default()))))]);
    let shown = told.at(61, presses("0915").into_iter().chain([tap(Tap::PadDone)]));
    holds(&shown, &["role=\"alert\"", "Started at"]);
    assert_eq!(told.minutes(), [("Saw".into(), 30), ("Sand".into(), 30)]);
    holds(&told.at(62, [tap(Tap::Close)]), &["The clock said 09:30 to 10:00."]);
}

#[test]
fn counts_are_listed_and_struck_one_by_one() {
    let mut told = Told::empty();
    told.at(0, [Msg::Go(Place::Count), Msg::Count(crate::app::count::Tap::First), Msg::Go(Place::Bench)]);
    let today = told.today();
    let shown = told.at(1, [day(DayTap::Show(today))]);
    holds(&shown, &["Count: onto a pile"]);
    let tapped = fivebar_core::sheet::counts::counts(&told.app.own.book, today).first().and_then(|line| line.taps.first()).unwrap().id;
    holds(&told.at(2, [day(DayTap::Open(tapped)), day(DayTap::Strike(tapped))]), &["Undo strike", "gone"]);
    holds(&told.at(3, [day(DayTap::PutBack(tapped))]), &["Strike"]);
}

#[test]
fn the_haul_in_hand_is_sorted_in_two_taps() {
    let mut told = Told::empty();
    told.at(0, [Msg::Go(Place::Count), Msg::Count(crate::app::count::Tap::First), Msg::Go(Place::Bench), tap(Tap::Other)]);
    let haul = told.app.shelf().haul().unwrap().id;
    holds(&told.at(0, []), &["the haul of Tue 3 March"]);
    told.at(0, [starting(StartingTap::Sort(haul))]);
    let work = sheet(&told.app).running.unwrap().run.work;
    assert_eq!((work.on, work.kind, work.stage), (On::Haul(haul), Kind::Fetch, Stage::Sort));
    holds(&told.at(9, [Msg::Go(Place::Count)]), &["class=\"strip\"", "9 min"]);
}

/// The workshop is in dollars, the haul in euros.
#[test]
fn a_helper_at_a_haul_is_paid_in_its_currency() {
    let mut told = Told::empty();
    let begin = fivebar_core::ledger::decide::HaulCommand::BeginBare { currency: Currency::EUR, units: Units::Inch };
    told.app.order(&Command::Haul(begin), nth(0)).unwrap();
    let haul = told.app.shelf().haul().unwrap().id;
    told.at(1, [Msg::Go(Place::Bench), tap(Tap::Other), starting(StartingTap::Sort(haul))]);
    told.at(2, [tap(Tap::HelperJoins)]);
    lacks(&told.at(2, presses("15").into_iter().chain([tap(Tap::PadDone)])), &["Not taken"]);
    let bench = told.app.shelf().bench();
    let paid = bench.run(told.run()).unwrap().paid(told.app.now.at);
    assert_eq!(paid.iter().map(|paid| paid.1.currency()).collect::<Vec<_>>(), [Currency::EUR]);
}

#[test]
fn a_tap_on_the_place_itself_comes_back_to_the_bench() {
    let mut told = Told::stands();
    let today = told.today_at(0);
    holds(&told.at(0, [day(DayTap::Show(today))]), &["bench/day"]);
    lacks(&told.at(0, [Msg::Go(Place::Bench)]), &["bench/day"]);
}

#[test]
fn a_name_that_is_too_long_is_refused_and_asked_again() {
    let mut told = Told::stands();
    let long = "x".repeat(61);
    told.at(0, [tap(Tap::Other), starting(StartingTap::Typed(long)), starting(StartingTap::Kind(Kind::Make))]);
    assert!(matches!(told.app.notice, Some(crate::app::Notice::Refused(Refusal::NameTooLong { met: 61, .. }))));
    told.at(0, [op("Trim")]);
    assert_eq!(told.minutes(), [("Trim".into(), 0)]);
}

#[test]
fn a_narrow_page_folds_helper_and_other_below_the_rack() {
    let mut told = Told::stands();
    told.start(0, "Trim");
    let place = |shown: &str, word: &str| shown.find(word).unwrap();
    let wide = told.at(1, []);
    assert!(place(&wide, "<footer") < place(&wide, "Helper joins"));
    told.app.page = crate::parts::Page::new(320.0);
    let narrow = told.at(1, []);
    assert!(place(&narrow, "Helper joins") < place(&narrow, "<footer"));
}
