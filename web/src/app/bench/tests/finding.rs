//! An operation is found: by its letters, its job, what people call it; or begins, with a kind that its name tells.

use super::rack::{WHEN, full};
use super::*;
use fivebar_core::ledger::kind::job::OperationPlanned;

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
