//! The rack of a full bench: six jobs, forty operations; switching, carrying on, finding.

use super::super::waits::WaitTap;
use super::*;
use fivebar_core::ledger::kind::job::OperationPlanned;
use fivebar_core::quantity::Listed;
use fivebar_core::story;

const MANY: &str = include_str!("../../../../../tests/stories/many-jobs.txt");

/// The story's bench at 14:21 of its last day, or as much later.
fn full(later: i64) -> Told {
    let mut told = Told::empty();
    let lines = story::tell(MANY).book.lines().map(str::to_owned).listed();
    told.app.shelf_mut().heard(lines.iter().map(String::as_str), nth(0).wall.at);
    told.at(WHEN + later, []);
    told
}

/// 14:21 on Tuesday 10 March, in minutes after nine on 3 March; the clocks went forward between.
const WHEN: i64 = 7 * 1440 + 5 * 60 + 21 - 60;

#[test]
fn the_story_is_taken_whole() {
    assert_eq!(story::tell(MANY).refused, []);
}

/// Drawing 4: what runs, about what is left, the next operation; then the latest, and one board for each other job.
#[test]
fn what_is_next_and_each_other_job_is_one_tap_away() {
    let shown = full(0).at(WHEN, []);
    holds(&shown, &[">31</span>", "3 of 5 done", "About 57 min left", "from 50 min to 1 h 04", "32 min each", "1 h 41 in all"]);
    let mut at = 0;
    for board in
        ["Taper", "\"slab\"", "Pegs", "Lately", "Sharpen", "Crosscut rough", "Other jobs", "Hall shoe bench", "Sand faces", "Blanket chest"]
    {
        let place = shown.get(at..).and_then(|rest| rest.find(board));
        at += place.unwrap_or_else(|| panic!("`{board}` after the one before it in {shown}"));
    }
    // One key leads to all of them.
    holds(&shown, &["Switch</span><span class=\"s\">6 more planned</span>"]);
    lacks(&shown, &["All operations"]);
    assert!(shown.matches("class=\"board\"").count() <= 16, "{}", shown.matches("class=\"board\"").count());
}

#[test]
fn a_caller_stops_it_in_one_tap_and_it_says_where_it_stood() {
    let mut told = full(0);
    let shown = told.at(WHEN, [tap(Tap::Stop)]);
    holds(&shown, &["Carry on: sand", "stopped 14:21 after 31 min, about 57 min left", "3 of 5"]);
    // What was broken off lies before what fits until something is off.
    assert!(shown.find("Carry on: sand") < shown.find("what fits"), "{shown}");
    let carry = sheet(&told.app).carry_on.unwrap();
    holds(&told.at(WHEN + 9, [tap(Tap::Board(carry))]), &["\"slab\"", "3 of 5 done"]);
}

#[test]
fn one_tap_switches_to_another_job() {
    let mut told = full(0);
    let board = sheet(&told.app).rack.jobs.into_iter().find(|choice| choice.op == "Sand faces").unwrap();
    let shown = told.at(WHEN, [tap(Tap::Board(board))]);
    holds(&shown, &["Hall shoe bench, oak and beech", "3 of 5 done", "Ash plant stands"]);
    assert_eq!(told.app.shelf().bench().all_running().count(), 1);
}

/// Typed on the start screen: what is found.
#[test]
fn forty_operations_are_found_by_their_letters_and_by_their_job() {
    let mut told = full(0);
    let shown = told.at(WHEN, [tap(Tap::Other)]);
    holds(&shown, &["Ash plant stands", "5 more jobs", "Pegs", "Beside the bench", "Fetch", "Market"]);
    lacks(&shown, &["Milking stools"]);
    let table = told.app.shelf().bench().runs().find(|run| run.work.op == "Story stick").map(|run| run.work.on).unwrap();
    holds(&told.at(WHEN, [starting(StartingTap::Jobs)]), &["Milking stools", "No job"]);
    let shown = told.at(WHEN, [starting(StartingTap::On(table))]);
    // Forty are planned; nine more are usual for any piece.
    holds(&shown, &["Story stick", "All 49"]);
    lacks(&shown, &["Fix the top"]);
    holds(&told.at(WHEN, [starting(StartingTap::All)]), &["Fix the top", "Deliver and set up"]);
    let shown = told.at(WHEN, [starting(StartingTap::Typed("tenon".into()))]);
    holds(&shown, &["Found", "Apron tenons", "Or a new one: say its kind"]);
    lacks(&shown, &["Story stick"]);
    let shown = told.at(WHEN, [starting(StartingTap::Typed("pegs".into()))]);
    holds(&shown, &["Pegs", "Ash plant stands"]);
    let pegs = told.app.shelf().bench().running(None).map(|run| run.work.on).unwrap();
    told.at(WHEN, [starting(StartingTap::Found(pegs, "Pegs".into(), Kind::Make, Stage::Make))]);
    let work = sheet(&told.app).running.unwrap().run.work;
    assert_eq!((work.op.as_str(), work.on), ("Pegs", pegs));
}

/// A kind of piece: an operation it has, one it has not.
#[test]
fn a_job_without_a_plan_has_the_operations_of_its_kind_of_piece() {
    for (piece, has, has_not) in [("stool", "Shape seat", "Fix top"), ("table", "Fix top", "Shape seat"), ("bench", "Frames", "Fix top")] {
        let mut told = Told::stands();
        let job = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().unwrap().id;
        let pick = crate::app::jobs::estimate::EstimateTap::Piece(piece);
        told.at(0, [Msg::Go(Place::Jobs), Msg::Jobs(crate::app::jobs::Tap::Open(crate::app::order::Which::Own, job))]);
        told.at(0, [Msg::Jobs(crate::app::jobs::Tap::Estimate(pick)), Msg::Go(Place::Bench)]);
        let shown = told.at(1, [tap(Tap::Other)]);
        holds(&shown, &[has, "Coat", "Messages"]);
        lacks(&shown, &[has_not]);
    }
    // Time of no job, and every kind in two taps.
    let mut told = Told::stands();
    holds(&told.at(0, [tap(Tap::Other), starting(StartingTap::On(On::Nothing))]), &["Sharpen", "Tidy", "Learn"]);
    holds(&told.at(0, [starting(StartingTap::Typed("Sweep".into()))]), &["Tidy", "Fetch", "Make", "Sell", "Deliver", "Office"]);
    // With a job in hand too: it is time of no job.
    told.at(0, [starting(StartingTap::Typed(String::new()))]);
    let on = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().map(|job| On::Job(job.id)).unwrap();
    holds(&told.at(0, [starting(StartingTap::On(on)), starting(StartingTap::Typed("sweeping".into()))]), &["Tidy", "No job"]);
}

/// One planned operation hides none of the others: what was done of the job, and what its kind takes, stand behind it and are found.
#[test]
fn a_plan_of_one_operation_is_not_all_there_is() {
    let mut told = Told::stands();
    for (nth, op) in ["Trim", "Glue up", "Flatten", "Assemble legs"].into_iter().enumerate() {
        told.start(nth as i64 * 30, op);
    }
    told.at(120, [tap(Tap::Stop)]);
    let job = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().unwrap().id;
    let (op, span, pieces) = ("Sand".to_owned(), Some(Span::minutes(200)), Some(5));
    let planned = fivebar_core::ledger::kind::job::OperationPlanned { job, op, kind: Kind::Make, stage: None, span, pieces };
    let now = told.now(121);
    told.app.order(&Command::Job(JobCommand::PlanOperation(planned)), now).unwrap();
    let shown = told.at(122, [tap(Tap::Other)]);
    let mut at = 0;
    for op in [">Sand<", ">Assemble legs<", ">Flatten<", ">Glue up<", ">Trim<", ">Joint and rip<", ">Thickness<", ">Bore<", ">Coat<"] {
        let place = shown.get(at..).and_then(|rest| rest.find(op));
        at += place.unwrap_or_else(|| panic!("`{op}` after the one before it in {shown}"));
    }
    for (typed, found) in [("ass", "Assemble legs"), ("ass", ">Assemble<"), ("glue", "Glue up"), ("thick", "Thickness"), ("oil", "Coat")] {
        holds(&told.at(122, [starting(StartingTap::Typed(typed.into()))]), &["Found", found]);
    }
}

/// The whole name of one that is known, typed in whatever letters, joins it: no second one stands beside it.
#[test]
fn the_whole_name_of_an_operation_joins_it() {
    for (typed, kind, op, stage) in [
        ("glue UP", Kind::Make, "Glue up", Stage::Make),
        ("coat", Kind::Make, "Coat", Stage::Finish),
        ("coat", Kind::Office, "coat", Stage::Sell),
        ("shellac", Kind::Make, "shellac", Stage::Make),
    ] {
        let mut told = Told::stands();
        told.start(0, "Glue up");
        told.at(9, [tap(Tap::Other), starting(StartingTap::Typed(typed.into())), starting(StartingTap::Kind(kind))]);
        let glued = told.app.shelf().bench().runs().last().unwrap().work.on;
        // What is done at the desk asks for which job first.
        told.at(9, (kind == Kind::Office).then(|| starting(StartingTap::On(glued))));
        let work = sheet(&told.app).running.unwrap().run.work;
        assert_eq!((work.op.as_str(), work.stage), (op, stage));
    }
}

/// What finishes a piece is said to, as where it is planned.
#[test]
fn a_typed_operation_is_finishing() {
    let mut told = Told::stands();
    let shown = told.at(0, [tap(Tap::Other), starting(StartingTap::Typed("burnish rims".into()))]);
    holds(&shown, &["Make</span>", "Finish</span>", "Sell</span>"]);
    told.at(0, [starting(StartingTap::Finish)]);
    let work = sheet(&told.app).running.unwrap().run.work;
    assert_eq!((work.op.as_str(), work.kind, work.stage), ("burnish rims", Kind::Make, Stage::Finish));
}

/// The slab of a batch whose third piece is slow; stopped, all the time is shared by the pieces once it is known to have been work.
#[test]
fn a_slow_piece_shows_on_the_slab_and_in_carry_on() {
    let mut told = Told::stands();
    let run = told.start(0, "Sand");
    told.at(1, [tap(Tap::AskBatch)].into_iter().chain(presses("5")).chain([tap(Tap::PadDone)]));
    told.at(45, [tap(Tap::Done)]);
    let shown = told.at(90, [tap(Tap::Done)]);
    holds(&shown, &["2 of 5 done", "45 min each"]);
    lacks(&shown, &["this one"]);
    holds(&told.at(150, []), &["45 min each", "this one 1 h so far", "About 1 h 30 left"]);
    // Once it may be a forgotten stop, nothing of that time counts.
    lacks(&told.at(250, []), &["this one"]);
    told.at(295, [tap(Tap::Stop)]);
    // Was the stop forgotten? Until that is answered the time after the last piece is no pace.
    holds(&told.at(295 + 1440, []), &["Carry on: sand", "45 min each so far"]);
    holds(&told.at(295 + 1440, [tap(Tap::Right(run))]), &["Carry on: sand", "45 min each so far, 3 h 25 in the next"]);
    // At the last piece nothing is known to be left: the slow one stands in that place.
    told.start(1800, "Sand");
    told.at(1800, [tap(Tap::Done), tap(Tap::Done)]);
    lacks(&told.at(1805, []), &["this one"]);
    holds(&told.at(1975, []), &["4 of 5 done", "This one 2 h 55 so far"]);
}

/// Nothing was planned, or done before: what waits says what is missing for an answer; then what was done before is offered.
#[test]
fn a_gap_always_has_an_answer() {
    let mut told = Told::stands();
    told.start(0, "Glue tops");
    told.at(5, [tap(Tap::Waits(WaitTap::Clamp))]);
    holds(&told.at(6, [tap(Tap::Stop)]), &["nothing is known that fits. Plan operations"]);
    told.at(7, [tap(Tap::Other), starting(StartingTap::On(On::Nothing)), op("Sharpen")]);
    holds(&told.at(27, [tap(Tap::Stop)]), &["what fits", "about 20 min, as before"]);
    holds(&told.at(80, []), &["all that is known may take longer"]);
    // In the minute in which it may come off nothing is said to take longer than no minute.
    told.app.now = fivebar_core::quantity::Wall::new(told.now(95).wall.at.minus(Span::ms(20_000)), told.app.now.offset);
    let shown = crate::screens::page(&told.app).html();
    holds(&shown, &["Due now: "]);
    lacks(&shown, &["0 min: all", "may take longer"]);
}

/// The job that runs is named, and the one to carry on with; what is taken back and put back too.
#[test]
fn big_buttons_name_the_job_and_the_operation() {
    let mut told = Told::stands();
    told.start(0, "Glue tops");
    let shown = told.at(5, [tap(Tap::Waits(WaitTap::Clamp)), tap(Tap::Big)]);
    holds(&shown, &[">stands</p>", "Glue tops", "Top 1 off at"]);
    let shown = told.at(6, [tap(Tap::Stop)]);
    holds(&shown, &["Nothing runs", "Top 1 off at", "stands: Glue tops"]);
    assert_eq!(shown.matches("<button").count(), 4, "{shown}");
    holds(&told.at(7, [Msg::Common(Common::TakeBack)]), &["Do it again", "taken back: "]);
}

/// One tap of a palm does not wipe an hour: a start is taken back in big buttons while it is new, and outside them later.
#[test]
fn big_buttons_take_no_old_start_back() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(0, [tap(Tap::Big)]);
    lacks(&told.at(1, []), &["no start older"]);
    let shown = told.at(105, []);
    holds(&shown, &["it began over 2 min ago: strike it outside big buttons", "disabled"]);
    let shown = told.at(106, [tap(Tap::Done)]);
    lacks(&shown, &["no start older"]);
    holds(&told.at(106, [tap(Tap::LeaveBig), Msg::Common(Common::TakeBack), Msg::Common(Common::TakeBack)]), &["Do it again"]);
}

/// The rule goes by the tap: a start that was said to be half an hour ago is as new as any; after a reload nothing is named.
#[test]
fn big_buttons_take_each_new_start_back_alike() {
    let check = |ago: Option<i64>| {
        let mut told = Told::stands();
        told.at(0, ago.map(|minutes| tap(Tap::Ago(minutes))));
        told.start(60, "Sand");
        lacks(&told.at(61, [tap(Tap::Big)]), &["no start older", "nothing since"]);
        holds(&told.at(63, []), &["it began over 2 min ago", "disabled"]);
        // The app is opened again.
        (told.app.shelf_mut().last_act, told.app.shelf_mut().taken_back) = (None, vec![]);
        let shown = told.at(64, []);
        holds(&shown, &["nothing since the app was opened", "disabled"]);
        lacks(&shown, &["start of sand"]);
    };
    check(None);
    check(Some(30));
}

/// What runs and how long is on Stop, whatever lies above the slab.
#[test]
fn stop_says_what_it_stops() {
    let mut told = Told::stands();
    told.start(0, "Glue tops");
    let shown = told.at(72, [tap(Tap::Waits(WaitTap::Clamp))]);
    let foot = shown.split("<footer").nth(1).unwrap();
    holds(foot, &["Glue tops, 1\u{a0}h\u{a0}12", ">Stop<"]);
}

/// Begun at 9:40 and stopped by a clock that shows 9:30: none of it was measured, and the day says why.
#[test]
fn what_a_clock_that_was_set_back_leaves_is_not_measured() {
    let mut told = Told::stands();
    told.start(40, "Sand");
    told.at(30, [tap(Tap::Stop)]);
    let today = told.today();
    let shown = told.at(31, [day(DayTap::Show(today))]);
    let row = shown.split("Sand").nth(1).unwrap();
    let row = row.split("</button>").next().unwrap();
    holds(row, &["the phone’s clock was set back"]);
    lacks(row, &["measured"]);
}

/// Sanding 20 minutes planned for three: the job's estimate and what is past the plan come behind what runs.
#[test]
fn what_runs_comes_before_what_it_is_held_against() {
    let mut told = Told::stands();
    told.start(0, "Taper");
    let On::Job(job) = told.app.shelf().bench().run(told.run()).unwrap().work.on else { unreachable!() };
    for (op, minutes) in [("Taper", 50), ("Sand", 3)] {
        let span = Some(fivebar_core::quantity::Span::minutes(minutes));
        let planned = OperationPlanned { job, op: op.into(), kind: Kind::Make, stage: None, span, pieces: None };
        let plan = fivebar_core::ledger::decide::JobCommand::PlanOperation(planned);
        let now = told.now(1);
        told.app.order(&Command::Job(plan), now).unwrap();
    }
    told.start(20, "Sand");
    let shown = told.at(40, []);
    let places = [">20</span>", "Past what was planned for Sand", "40 min so far. Estimated"].map(|part| shown.find(part));
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?} {shown}");
}

/// Stopped at noon, seen after lunch: it stopped 30 minutes ago; done with it, and taken back.
#[test]
fn what_was_stopped_stopped_earlier_or_is_done_with() {
    let mut told = Told::stands();
    let run = told.start(0, "Joint");
    told.at(70, [tap(Tap::Stop)]);
    holds(&told.at(71, []), &["Stopped earlier…", "Done with joint", "Carry on: joint"]);
    let shown = told.at(72, [tap(Tap::StoppedAt(run))]);
    holds(&shown, &["Joint, 09:00 to 10:10", ">5 min ago<", ">15 min ago<", ">30 min ago<"]);
    let shown = told.at(72, [tap(Tap::StoppedAgo(run, 15))]);
    lacks(&shown, &["Stopped earlier…"]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().worked(told.app.now.at).as_minutes(), 57);
    let (id, of) = whole_of(&told.app, told.app.shelf().bench().run(run).unwrap().work.on, "Joint").unwrap();
    let shown = told.at(73, [tap(Tap::Whole(id, of))]);
    lacks(&shown, &["Done with joint</span>", "how many there are"]);
    holds(&shown, &["done with joint, 10:13"]);
    holds(&shown, &["5 of 5", "Take back", "done with joint"]);
    holds(&told.at(74, [Msg::Common(Common::TakeBack)]), &["Done with joint"]);
}

/// Sanding at 15 min a lamp, and the third takes an hour: lunch, and the stop was forgotten. A key says when it was, in two taps.
#[test]
fn a_piece_that_takes_twice_as_long_offers_an_earlier_stop() {
    let mut told = Told::stands();
    let run = told.start(0, "Sand");
    told.at(15, [tap(Tap::Done)]);
    told.at(30, [tap(Tap::Done)]);
    lacks(&told.at(60, []), &["Stopped earlier…"]);
    holds(&told.at(90, []), &["This piece 1 h so far, the others 15 min each.", "Stopped earlier…"]);
    holds(&told.at(90, [tap(Tap::StoppedAt(run))]), &["5 min ago", "30 min ago"]);
    told.at(90, [tap(Tap::StoppedAgo(run, 30))]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().worked(told.app.now.at).as_minutes(), 60);
}

/// What is in no copy is said where there is room: nothing runs, and nothing lies over the bench.
#[test]
fn the_copy_is_no_matter_while_work_runs() {
    let mut told = full(0);
    let nudge = "In no copy yet";
    lacks(&told.at(WHEN, []), &[nudge]);
    holds(&told.at(WHEN, [tap(Tap::Stop)]), &[nudge]);
    lacks(&told.at(WHEN, [tap(Tap::Other)]), &[nudge]);
}

/// Where something can come out and little room is, what runs comes before the board that was before it, and the keys are on the list.
#[test]
fn what_runs_is_in_sight_where_something_can_come_out() {
    let mut told = full(0);
    let order = |shown: &str| shown.find("Taper") < shown.find("\"slab\"");
    assert!(order(&told.at(WHEN, [])));
    let shown = told.at(WHEN + 80, []);
    holds(&shown, &["All 4 tops can come out", "All 4 off"]);
    assert!(!order(&shown), "{shown}");
    told.app.page = crate::parts::Page::new(320.0);
    let shown = told.at(WHEN + 81, []);
    // Said first, for its board lies below the fold.
    holds(&shown, &["waits first", "4 pieces can come out", "\"slab\"", "All 4 tops can come out"]);
    lacks(&shown, &["All 4 off"]);
    holds(&told.at(WHEN + 82, [tap(Tap::Waits(WaitTap::Show))]), &["bench/waits"]);
}

/// On a narrow page Switch lies behind what runs, Other behind what to carry on with, before the other boards.
#[test]
fn what_is_needed_less_is_near_on_a_narrow_page() {
    let mut told = full(0);
    told.app.page = crate::parts::Page::new(320.0);
    let shown = told.at(WHEN, []);
    let order = |shown: &str, words: [&str; 3]| {
        let places = words.map(|word| shown.find(word).unwrap_or_else(|| panic!("{word} in {shown}")));
        assert!(places.is_sorted(), "{words:?} {places:?}");
    };
    order(&shown, ["\"slab\"", ">Switch<", ">Pegs<"]);
    // Beside waits, too: the keys of what runs are not behind them.
    order(&shown, ["\"slab\"", ">Switch<", "Clamps off"]);
    let mut later = full(0);
    later.app.page = crate::parts::Page::new(320.0);
    order(&later.at(WHEN + 81, []), ["\"slab\"", ">Helper joins<", "All 4 tops can come out"]);
    lacks(&shown, &["of 5: change"]);
    order(&told.at(WHEN + 1, [tap(Tap::Stop)]), ["Carry on: sand", ">Other<", ">Pegs<"]);
    // On large text what to carry on with comes before what waits.
    told.app.page = crate::parts::Page::new(195.0);
    order(&told.at(WHEN + 2, []), ["Carry on: sand", ">Other<", "Clamps off"]);
}

/// A name that tells its kind is not asked for it: it is found, or begins in one tap; only what nobody knows is asked about.
#[test]
fn a_kind_that_the_name_tells_is_not_asked_for() {
    let check = |typed: &str, asks: bool, shows: &[&str]| {
        let mut told = Told::stands();
        told.start(0, "Carve knots");
        told.at(5, [tap(Tap::Stop)]);
        let shown = told.at(6, [tap(Tap::Other), starting(StartingTap::Typed(typed.into()))]);
        holds(&shown, shows);
        assert_eq!(shown.contains("Or a new one: say its kind"), asks, "{typed}: {shown}");
    };
    check("Message", false, &[">Messages<"]);
    check("messages", false, &[">Messages<"]);
    check("carve knot", false, &["Carve knots"]);
    check("Steam bending", true, &["Steam bending"]);
    check("mess", true, &[">Messages<"]);
}

/// A caller who belongs to no job: the keys of what lies beside the bench are there, and what is typed finds them.
#[test]
fn what_lies_beside_the_bench_may_be_of_no_job() {
    let mut told = Told::stands();
    let shown = told.at(0, [tap(Tap::Other), starting(StartingTap::On(On::Nothing))]);
    holds(&shown, &["Sharpen", "Messages", "Photos", "Market", "Fetch"]);
    holds(&told.at(0, [starting(StartingTap::Typed("mess".into()))]), &["Messages"]);
    told.at(0, [starting(StartingTap::Found(On::Nothing, "Messages".into(), Kind::Office, Stage::Sell))]);
    let work = sheet(&told.app).running.unwrap().run.work;
    assert_eq!((work.on, work.kind), (On::Nothing, Kind::Office));
    // A call has no pieces: there is nothing to count, in the dock and in big buttons.
    let shown = told.at(1, []);
    holds(&shown, &["Switch", ">Stop<"]);
    lacks(&shown, &["1 more done", "+n", "of how many?", ">Other<"]);
    let shown = told.at(1, [tap(Tap::Big)]);
    lacks(&shown, &["+1 done"]);
    assert_eq!(shown.matches(">Stop<").count(), 1, "{shown}");
    told.at(2, [tap(Tap::Stop), tap(Tap::LeaveBig)]);
    holds(&told.at(2, []), &[">Other<"]);
    // A name that is new begins in one tap too, as office, and another kind is as near.
    let shown = told.at(3, [tap(Tap::Other), starting(StartingTap::On(On::Nothing)), starting(StartingTap::Typed("Zoning office".into()))]);
    holds(&shown, &["Start: zoning office", "as office; or say its kind", ">Make<"]);
    told.at(3, [starting(StartingTap::Kind(Kind::Office))]);
    assert_eq!(sheet(&told.app).running.map(|slab| slab.run.work.op), Some("Zoning office".into()));
}

/// Somebody rings while the stands are sanded: for which job is asked, but where it was said or planned.
#[test]
fn a_caller_is_not_put_to_the_job_that_runs() {
    let messages = |on| starting(StartingTap::Found(on, "Messages".into(), Kind::Office, Stage::Sell));
    let check = |planned: bool, said: bool, answer: Option<On>, then: Option<On>| {
        let mut told = Told::stands();
        let run = told.start(0, "Sand");
        let on = told.app.shelf().bench().run(run).unwrap().work.on;
        if planned {
            let On::Job(job) = on else { unreachable!() };
            let planned = OperationPlanned { job, op: "Messages".into(), kind: Kind::Office, stage: None, span: None, pieces: None };
            let now = told.now(1);
            told.app.order(&Command::Job(JobCommand::PlanOperation(planned)), now).unwrap();
        }
        told.at(2, [tap(Tap::Other)].into_iter().chain(said.then(|| starting(StartingTap::On(on)))));
        let shown = told.at(3, [messages(on)]);
        assert_eq!(shown.contains("For which job?"), !planned && !said, "{shown}");
        let shown = told.at(4, answer.map(|on| starting(StartingTap::On(on))));
        let work = sheet(&told.app).running.unwrap().run.work;
        assert_eq!((work.op == "Messages").then_some(work.on), then, "{shown}");
        // It began with the tap that named it, whenever it was said for which job.
        let began = sheet(&told.app).running.unwrap().run.started.at;
        assert_eq!(began, told.now(if then.is_some() { 3 } else { 0 }).wall.at, "{shown}");
        on
    };
    let on = check(true, false, None, Some(job_of_stands()));
    check(false, true, None, Some(on));
    check(false, false, None, None);
    check(false, false, Some(On::Nothing), Some(On::Nothing));
    check(false, false, Some(on), Some(on));
    // One step back leads to the operations again.
    let mut told = Told::stands();
    told.start(0, "Sand");
    holds(&told.at(1, [tap(Tap::Other), messages(on), tap(Tap::Close)]), &["Which operation?", "Messages"]);
}

/// The job that every such book has.
fn job_of_stands() -> On {
    let mut told = Told::stands();
    let run = told.start(0, "Sand");
    let bench = told.app.shelf().bench();
    bench.run(run).unwrap().work.on
}

/// What people say when somebody rings.
#[test]
fn a_call_is_found_as_it_is_said() {
    let mut told = Told::stands();
    told.at(0, [tap(Tap::Other), starting(StartingTap::On(On::Nothing))]);
    for typed in ["mess", "phone", "Phone call", "call"] {
        holds(&told.at(0, [starting(StartingTap::Typed(typed.into()))]), &["Found", ">Messages<"]);
    }
}

/// The second stand is planned from what was done for the first, by its name a stand too, before what is usual for one.
#[test]
fn what_a_job_of_the_same_kind_took_is_offered() {
    let mut told = Told::stands();
    for (minute, name) in [(0, "Taper legs"), (30, "Glue tops")] {
        told.start(minute, name);
        told.at(minute + 20, [tap(Tap::Stop)]);
    }
    let (currency, units) = (Currency::USD, Units::Inch);
    let job = |name: &str| JobCommand::Begin { name: name.into(), currency, units, pieces: 1, made_for: For::Spec };
    let (began, now) = (job("Plant stand two"), told.now(60));
    let second = told.app.order(&Command::Job(began), now).unwrap().act;
    let (began, now) = (job("Oak bench"), told.now(61));
    let bench = told.app.order(&Command::Job(began), now).unwrap().act;
    let offered = |job| offered::to_plan(&told.app, job).into_iter().map(|one| one.op).take(2).collect::<Vec<_>>();
    assert_eq!(offered(second), ["Taper legs", "Glue tops"]);
    assert!(!offered(bench).contains(&"Taper legs".to_owned()), "of another kind");
}
