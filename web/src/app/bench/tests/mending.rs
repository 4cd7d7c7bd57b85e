//! A run put right: job, operation, of how many, pieces; and time that was missed, as it is asked about and refused.

use super::*;
use fivebar_core::ledger::fold;

/// Two jobs, the shelf begun last; sanding of the stands from nine to ten.
pub(super) fn two_jobs() -> (Told, Id) {
    let mut told = Told::stands();
    let stands = fold::jobs(&told.app.shelf().book).next().unwrap().id;
    let (currency, units) = (Currency::USD, Units::Inch);
    let began = JobCommand::Begin { name: "shelf".into(), currency, units, pieces: 1, made_for: For::Order };
    let now = told.now(0);
    told.app.order(&Command::Job(began), now).unwrap();
    told.at(0, [tap(Tap::Other), starting(StartingTap::On(On::Job(stands))), op("Sand")]);
    let run = told.run();
    told.at(30, [tap(Tap::Done)]);
    told.at(60, [tap(Tap::Stop)]);
    (told, run)
}

pub(super) fn opened(told: &mut Told, minute: i64, run: Id) -> String {
    let today = told.today_at(minute);
    told.at(minute, [day(DayTap::Show(today)), day(DayTap::Open(run))])
}

pub(super) fn mend(what: Mend) -> Msg {
    day(DayTap::Mend(Box::new(what)))
}

pub(super) fn typed(digits: &str) -> Vec<Msg> {
    presses(digits).into_iter().chain([tap(Tap::PadDone)]).collect()
}

#[test]
fn a_run_on_the_wrong_job_is_moved_with_its_pieces() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 61, run);
    holds(&told.at(61, [mend(Mend::Which)]), &["Job</span>", "stands", "Operation", "Add a helper", "Of how many?"]);
    holds(&told.at(61, [mend(Mend::Job)]), &["For which job?", "stands", "shelf", "No job", "Not now"]);
    let shelf = fold::jobs(&told.app.shelf().book).find(|job| job.name == "shelf").unwrap().id;
    let shown = told.at(62, [day(DayTap::Move(On::Job(shelf)))]);
    holds(&shown, &["1 done", "Put right Tue 3 March 10:02: for shelf.", "Take back"]);
    let moved = told.app.shelf().bench().run(run).cloned().unwrap();
    assert_eq!((moved.work.on, moved.done(), told.minutes()), (On::Job(shelf), 1, vec![("Sand".into(), 60)]));
    holds(&told.at(63, [mend(Mend::Job), day(DayTap::Move(On::Nothing))]), &["for no job"]);
    told.at(64, [Msg::Common(Common::TakeBack)]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().work.on, On::Job(shelf));
}

#[test]
fn an_operation_is_picked_from_those_of_the_job_or_typed() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 61, run);
    let shown = told.at(61, [mend(Mend::Op(String::new()))]);
    holds(&shown, &["Which operation?", "Glue up", "Flatten", "Find it, or type it"]);
    holds(&told.at(61, [mend(Mend::Op("mess".into()))]), &["Messages", "Done"]);
    told.at(62, [day(DayTap::Picked("Messages".into(), Kind::Office, Stage::Sell))]);
    let work = told.app.shelf().bench().run(run).unwrap().work.clone();
    assert_eq!((work.op.as_str(), work.kind), ("Messages", Kind::Office));
    holds(&told.at(63, [mend(Mend::Op("Scrape".into())), day(DayTap::Op)]), &["Scrape", "called Scrape", "called Messages"]);
}

/// Zero is refused with the limits; what the job says is one tap; what was said is put right at the slab and in the list.
#[test]
fn of_how_many_is_one_or_more_offered_and_can_be_put_right() {
    let mut told = Told::stands();
    let run = told.start(0, "Trim");
    holds(&told.at(1, [tap(Tap::AskBatch)]), &[">5<", "as the job says"]);
    holds(&told.at(1, typed("0")), &["bench/batch", "It must be from 1 to 9999"]);
    holds(&told.at(2, [tap(Tap::BatchOf(5))]), &["0 of 5 done", "of 5: change"]);
    told.at(3, [tap(Tap::AskBatch)]);
    holds(&told.at(3, typed("50")), &["0 of 50 done", "of 50: change"]);
    holds(&told.at(4, [tap(Tap::AskBatch)]), &["as the job says", ">50<", "as it stands"]);
    told.at(4, typed("6"));
    told.at(5, [tap(Tap::Done), tap(Tap::Stop)]);
    opened(&mut told, 6, run);
    holds(&told.at(6, [mend(Mend::Which)]), &["Of how many?</span><span class=\"s\">6<"]);
    told.at(6, [mend(Mend::Of(Typed::default()))]);
    told.at(6, typed("4"));
    let on = told.app.shelf().bench().run(run).unwrap().work.on;
    assert_eq!(told.app.shelf().bench().batch(on, "Trim", told.app.now.at).of, Some(4));
}

pub(super) fn missed(told: &mut Told, minute: i64) {
    let today = told.today_at(minute);
    told.at(minute, [day(DayTap::Show(today)), day(DayTap::Missed), op("Saw")]);
}

pub(super) fn clock(digits: &str) -> Vec<Msg> {
    presses(digits).into_iter().chain([starting(StartingTap::Clock)]).collect()
}

#[test]
fn missed_time_that_cannot_be_is_refused_where_it_was_typed_and_nothing_is_lost() {
    let mut told = Told::stands();
    missed(&mut told, 30);
    // It is 09:30: from 10:00 is refused at From.
    holds(&told.at(30, clock("1000")), &["10:00 has not come yet, it is 09:30", "bench/from", ">1000<"]);
    told.at(30, [tap(Tap::Close)]);
    missed(&mut told, 30);
    told.at(30, clock("800"));
    let shown = told.at(30, clock("730"));
    holds(&shown, &["it would end at 07:30, and it begins at 08:00", "bench/until", ">730<", "From 08:00"]);
    // Back to From: both figures are there, and what is put right there leads on.
    holds(&told.at(30, [starting(StartingTap::From)]), &["bench/from", ">800<"]);
    let back = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 3);
    holds(&told.at(30, back.chain(clock("700"))), &["bench/until", ">730<", "07:30, 30 min"]);
    told.at(30, [starting(StartingTap::Clock)]);
    assert_eq!(told.minutes(), [("Saw".into(), 30)]);
}

#[test]
fn missed_time_that_meets_a_run_names_it_and_leads_there_and_back() {
    let (mut told, run) = two_jobs();
    missed(&mut told, 90);
    told.at(90, clock("0930"));
    let shown = told.at(90, clock("1015"));
    holds(&shown, &["sand for stands is there already, 09:00 to 10:00", "Mend that run", ">1015<", "From 09:30"]);
    holds(&told.at(91, [day(DayTap::See(run))]), &["bench/day", "aria-expanded=\"true\"", "Mend"]);
    holds(&told.at(91, [tap(Tap::Close)]), &["bench/until", ">1015<", "From 09:30"]);
    // A missed night is asked about too.
    missed(&mut told, 92);
    told.at(92, [starting(StartingTap::From)]);
}

#[test]
fn a_start_that_could_not_be_as_long_ago_as_was_said_says_so() {
    let (mut told, _) = two_jobs();
    told.at(65, [tap(Tap::Ago(15)), tap(Tap::Other)]);
    let shown = told.at(65, [op("Trim")]);
    holds(&shown, &["It began at 10:00, when sand stopped."]);
    lacks(&told.at(70, [tap(Tap::Stop)]), &["It began at"]);
    told.at(100, [tap(Tap::Ago(15)), tap(Tap::Other)]);
    let shown = told.at(100, [op("Trim")]);
    holds(&shown, &["It began at 10:25."]);
    lacks(&shown, &["It began at 10:25, when"]);
}

/// Of five one was tapped: more were done, or fewer; the run that has ended says how many, and an act takes that back.
#[test]
fn so_many_pieces_were_done_in_a_run_whatever_was_tapped() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    holds(&told.at(90, [mend(Mend::Which)]), &["Pieces done", "1 done"]);
    holds(&told.at(90, [mend(Mend::Done(Typed::default()))]), &["How many were done in it?", "Sand, 09:00 to 10:00, 1 done"]);
    let batch = |told: &Told| {
        let ran = told.app.shelf().bench().run(run).cloned().unwrap();
        told.app.shelf().bench().batch(ran.work.on, "Sand", told.app.now.at)
    };
    holds(&told.at(91, typed("3")), &["3 done", "2 done", "Take back"]);
    assert_eq!((batch(&told).n, batch(&told).each().map(Span::as_minutes)), (3, Some(20)));
    told.at(92, [mend(Mend::Done(Typed::default()))]);
    told.at(92, typed("2"));
    assert_eq!(batch(&told).n, 2);
    told.at(93, [Msg::Common(Common::TakeBack)]);
    assert_eq!(batch(&told).n, 3);
    told.at(94, [mend(Mend::Done(Typed::default()))]);
    lacks(&told.at(94, typed("0")), &["It must be"]);
    assert_eq!(batch(&told).n, 0);
    told.at(95, [mend(Mend::Done(Typed::default()))]);
    lacks(&told.at(95, typed("0")), &["How many", "Not taken"]);
}

/// A piece that is struck stays in its run, and comes again.
#[test]
fn a_piece_that_is_struck_stays_in_its_run() {
    let mut told = Told::stands();
    let run = told.start(0, "Bore");
    told.at(10, [tap(Tap::Done)]);
    told.at(20, [tap(Tap::Done)]);
    told.at(30, [tap(Tap::Stop)]);
    opened(&mut told, 40, run);
    let mark = told.app.shelf().bench().run(run).unwrap().notches[0].id;
    let shown = told.at(41, [day(DayTap::Strike(mark))]);
    holds(&shown, &["1 done", "09:10", "class=\"gone\">1 done", "Undo strike", "09:20"]);
    lacks(&told.at(42, [day(DayTap::PutBack(mark))]), &["class=\"gone\"", "Undo strike"]);
    let batch = |told: &Told| told.app.shelf().bench().run(run).unwrap().done();
    assert_eq!(batch(&told), 2);
    // What was noted anew with it stands in its place, and does not come twice.
    told.at(43, [mend(Mend::Done(Typed::default()))]);
    holds(&told.at(44, typed("1")), &["class=\"gone\">1 done"]);
    assert_eq!(batch(&told), 1);
}

/// What was changed of pieces stands with what was put right of the run: how many, of when, and what was noted instead.
#[test]
fn what_was_struck_of_the_pieces_is_said_with_its_time() {
    let mut told = Told::stands();
    let run = told.start(0, "Bore");
    told.at(20, [tap(Tap::MoreDone)].into_iter().chain(typed("3")));
    told.at(30, [tap(Tap::Stop)]);
    opened(&mut told, 40, run);
    told.at(41, [mend(Mend::Done(Typed::default()))]);
    let shown = told.at(42, typed("2"));
    holds(&shown, &["Put right", "09:42: 3 done 09:20 struck, 2 done instead."]);
    lacks(&told.at(43, [Msg::Common(Common::TakeBack)]), &["struck, "]);
    let mark = told.app.shelf().bench().run(run).unwrap().notches[0].id;
    holds(&told.at(44, [day(DayTap::Strike(mark))]), &["09:44: 3 done 09:20 struck.", "class=\"gone\">3 done"]);
}

/// Stopped 11:15, though pieces were tapped at 11:20 and 11:30: the row says so.
#[test]
fn a_mended_stop_says_which_pieces_it_left_behind() {
    let mut told = Told::stands();
    let run = told.start(0, "Bore");
    told.at(10, [tap(Tap::Done)]);
    told.at(20, [tap(Tap::Done)]);
    told.at(29, [tap(Tap::Done)]);
    told.at(30, [tap(Tap::Stop)]);
    opened(&mut told, 40, run);
    told.at(41, [mend(Mend::Stop(Typed::default()))]);
    holds(&told.at(41, typed("0915")), &["3 done, 2 of them tapped after its end"]);
}

/// While it runs one too many was tapped: said where more are said.
#[test]
fn fewer_were_done_is_said_at_the_slab() {
    let mut told = Told::stands();
    told.start(0, "Bore");
    told.at(10, [tap(Tap::Done), tap(Tap::Done)]);
    holds(&told.at(11, [tap(Tap::MoreDone)]), &["fewer were done"]);
    holds(&told.at(11, [tap(Tap::AskInAll)]), &["How many were done in it?", "2 done"]);
    told.at(12, typed("1"));
    assert_eq!(sheet(&told.app).running.unwrap().batch.n, 1);
}

/// A plan of three pieces is "of 3" on the clock, without being asked again; the fourth is asked about, and what is said then stands.
#[test]
fn planned_pieces_are_those_of_the_clock_and_one_more_is_asked_about() {
    use fivebar_core::ledger::kind::job::OperationPlanned;
    let mut told = Told::stands();
    let job = fold::jobs(&told.app.shelf().book).next().unwrap().id;
    let plan = OperationPlanned { job, op: "Trim".into(), kind: Kind::Make, stage: None, span: None, pieces: Some(3) };
    let now = told.now(0);
    told.app.order(&Command::Job(JobCommand::PlanOperation(plan)), now).unwrap();
    told.start(1, "Trim");
    holds(&told.at(2, [tap(Tap::Done)]), &["1 of 3 done", "of 3: change"]);
    lacks(&told.at(3, [tap(Tap::Done), tap(Tap::Done)]), &["more than 3"]);
    let shown = told.at(4, [tap(Tap::Done)]);
    holds(&shown, &["4 of 3 done", "One more than 3: are there more, or was it a slip?", "There are 4"]);
    let shown = told.at(5, [tap(Tap::BatchOf(4))]);
    holds(&shown, &["4 of 4 done"]);
    lacks(&shown, &["more than"]);
}

/// Three coats on five stools: the second is no more pieces than there are, also where the five were said at the bench.
#[test]
fn a_coat_more_is_not_asked_about() {
    use super::super::waits::WaitTap;
    // "Oil" ends in a coat by its name.
    for said in [false, true] {
        let mut told = Told::stands();
        let job = fold::jobs(&told.app.shelf().book).next().unwrap().id;
        let now = told.now(0);
        let (op, kind) = ("Oil".to_owned(), Kind::Make);
        let pieces = Some(1);
        let plan = fivebar_core::ledger::kind::job::OperationPlanned { job, op, kind, stage: None, span: None, pieces };
        told.app.order(&Command::Job(JobCommand::PlanOperation(plan)), now).unwrap();
        told.start(1, "Oil");
        told.at(2, said.then_some(tap(Tap::BatchOf(1))));
        let shown = told.at(3, [tap(Tap::Waits(WaitTap::Clamp)), tap(Tap::Waits(WaitTap::Clamp))]);
        lacks(&shown, &["One more than", "There are 2"]);
    }
}
