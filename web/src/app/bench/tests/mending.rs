//! A run put right: job, operation, of how many, helpers; and a clock time that was typed, as it is read, asked about and refused.

use super::*;
use crate::words::Plain;
use fivebar_core::bench::repair::DAY_MOST;
use fivebar_core::ledger::fold;
use std::rc::Rc;

/// Two jobs, the shelf begun last; sanding of the stands from nine to ten.
fn two_jobs() -> (Told, Id) {
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

fn opened(told: &mut Told, minute: i64, run: Id) -> String {
    let today = told.today_at(minute);
    told.at(minute, [day(DayTap::Show(today)), day(DayTap::Open(run))])
}

fn mend(what: Mend) -> Msg {
    day(DayTap::Mend(Box::new(what)))
}

fn typed(digits: &str) -> Vec<Msg> {
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

/// Forgotten at noon: from, until, pay; then each put right, and struck. Half an hour at 20 is 10.
#[test]
fn a_helper_who_was_forgotten_is_added_and_their_times_and_pay_are_put_right() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 61, run);
    let forgot = mend(crate::app::bench::mending::forgotten());
    holds(&told.at(61, [forgot.clone()]), &["The helper came at", "Sand, 09:00 to 10:00", "From the start"]);
    holds(&told.at(61, typed("0900")), &["The helper went at", "To the end"]);
    holds(&told.at(61, typed("0930")), &["What is the helper paid?", "Not paid"]);
    let shown = told.at(61, typed("20"));
    holds(
        &shown,
        &["helper 09:00 to 09:30, $10.00", "$20.00 an hour", "Helpers 30 min, $10.00", "class=\"fink\"", "helper 09:00 to 09:30"],
    );
    holds(&shown, &["a helper who was forgotten: came 09:00, went 09:30, $20.00 an hour", "Came", "Went", "Pay"]);
    let id = told.app.shelf().bench().run(run).unwrap().heads[0].id;
    told.at(62, [mend(Mend::Went(crate::app::bench::mending::helper(id), Typed::default()))]);
    // Beyond the run: said with the times of the run, and what was typed stays.
    let shown = told.at(62, typed("1001"));
    holds(&shown, &["10:01 is not within the run, which is 09:00 to 10:00", ">1001<"]);
    told.at(62, [tap(Tap::Close), mend(Mend::Went(crate::app::bench::mending::helper(id), Typed::default()))]);
    holds(&told.at(62, typed("1000")), &["helper 09:00 to 10:00, $20.00", "helper: went 10:00"]);
    told.at(63, [mend(Mend::Pay(crate::app::bench::mending::helper(id), Typed::default()))]);
    holds(&told.at(63, [tap(Tap::PadDone)]), &["helper 09:00 to 10:00, not paid"]);
    let today = told.today();
    holds(&told.at(64, [day(DayTap::Week(today))]), &["Helpers 1 h, not paid"]);
    opened(&mut told, 64, run);
    lacks(&told.at(64, [day(DayTap::Strike(id)), day(DayTap::Open(run))]), &["helper 09:00"]);
    // Nothing typed: all the time, not paid.
    opened(&mut told, 65, run);
    let shown = told.at(65, [forgot, tap(Tap::PadDone), tap(Tap::PadDone), tap(Tap::PadDone)]);
    holds(&shown, &["helper 09:00 to 10:00, not paid"]);
}

#[test]
fn the_job_says_its_helpers_with_their_hours_and_pay() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(10, [tap(Tap::HelperJoins)]);
    told.at(10, typed("20"));
    told.at(70, [tap(Tap::Stop)]);
    let job = fold::jobs(&told.app.shelf().book).next().unwrap().id;
    told.app.place = Place::Jobs;
    told.app.jobs.open = Some(job);
    told.app.jobs.room = Some(crate::app::jobs::Room::Hours);
    holds(&told.at(71, []), &["Spent", "Helper", "1 h", "$20.00"]);
}

/// A run that began at `from` minutes after nine and goes on, seen at `now`; what is typed of its stop gives this reading, whether it
/// is asked about, and the minutes it has then.
#[track_caller]
fn stops(halves: bool, (from, now): (i64, i64), text: &str, read: &str, asked: Option<&[&str]>, minutes: i64) {
    let mut told = Told::stands();
    told.app.speech = Rc::new(Plain { halves, ..Plain::default() });
    let run = told.start(from, "Flatten");
    told.at(now, [tap(Tap::StoppedAt(run))]);
    let press = |sign: char| match sign {
        'a' => tap(Tap::Press(Press::Half(crate::parts::pad::Half::Am))),
        'p' => tap(Tap::Press(Press::Half(crate::parts::pad::Half::Pm))),
        digit => tap(Tap::Press(Press::Digit(digit as u8 - b'0'))),
    };
    holds(&told.at(now, text.chars().map(press)), &[read]);
    let shown = told.at(now, [tap(Tap::PadDone)]);
    if let Some(keys) = asked {
        holds(&shown, &["longer than a working day", "bench/stopped"]);
        holds(&shown, keys);
        // Done once more is no answer.
        holds(&told.at(now, [tap(Tap::PadDone)]), &["longer than a working day"]);
        let it = told.app.shelf().bench().run(run).cloned().unwrap();
        let typed: String = text
            .chars()
            .map(|sign| match sign {
                'a' => " am".to_owned(),
                'p' => " pm".to_owned(),
                digit => digit.to_string(),
            })
            .collect();
        let meant = ends::stop(&told.app, &it, &typed).unwrap();
        assert!(meant.span.is_some_and(|span| DAY_MOST < span));
        let at = meant.other.map_or(meant.at.at, |(other, _)| other.at);
        told.at(now, [tap(Tap::Meant(at))]);
    }
    assert_eq!(told.minutes(), [("Flatten".into(), minutes)], "{text}");
}

/// From 14:00 on Tuesday, seen on Wednesday at 8:00: 300 and 1 380 minutes after nine.
#[test]
fn a_stop_that_makes_a_run_longer_than_a_working_day_is_asked_about() {
    let keys: &[&str] = &[">07:15<", "Wed 4 March, 17 h 15", ">19:15<", "Tue 3 March, 5 h 15"];
    stops(false, (300, 1_380), "715", "Wed 4 March 07:15, 17 h 15", Some(keys), 315);
    stops(false, (300, 1_380), "1915", "Tue 3 March 19:15, 5 h 15", None, 315);
    stops(false, (300, 1_380), "0155", "Wed 4 March 01:55, 11 h 55", None, 715);
    // No other half makes a working day of it: it is the one key.
    stops(false, (0, 1_380), "0755", "Wed 4 March 07:55, 22 h 55", Some(&[">19:55<", "Tue 3 March, 10 h 55"]), 655);
}

#[test]
fn where_clocks_have_twelve_hours_am_and_pm_are_written_and_read() {
    stops(true, (300, 1_380), "715", "Tue 3 March 7:15\u{a0}PM, 5 h 15", None, 315);
    stops(true, (300, 1_380), "515p", "Tue 3 March 5:15\u{a0}PM, 3 h 15", None, 195);
    stops(
        true,
        (300, 1_380),
        "715a",
        "Wed 4 March 7:15\u{a0}AM, 17 h 15",
        Some(&[">7:15\u{a0}AM<", "Wed 4 March, 17 h 15", ">7:15\u{a0}PM<"]),
        315,
    );
    stops(true, (0, 60), "930", "Tue 3 March 9:30\u{a0}AM, 30 min", None, 30);
    let mut told = Told::stands();
    told.app.speech = Rc::new(Plain { halves: true, ..Plain::default() });
    let run = told.start(0, "Sand");
    let shown = told.at(200, [tap(Tap::StoppedAt(run))]);
    holds(&shown, &[">am<", ">pm<", "515 and pm for 5:15 PM", "9:00\u{a0}AM on"]);
    told.app.speech = Rc::new(Plain::default());
    lacks(&told.at(200, []), &[">am<", ">pm<"]);
}

fn missed(told: &mut Told, minute: i64) {
    let today = told.today_at(minute);
    told.at(minute, [day(DayTap::Show(today)), day(DayTap::Missed), op("Saw")]);
}

fn clock(digits: &str) -> Vec<Msg> {
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

/// Sand from 9:00 to 10:00 with a piece: a break from 9:20 to 9:35 is taken out by the clock, in one act that is taken back whole.
#[test]
fn a_break_is_taken_out_of_a_run() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    holds(&told.at(90, [mend(Mend::Which)]), &["A break in it"]);
    holds(&told.at(90, [mend(Mend::BreakFrom(Typed::default()))]), &["The break began at", "Sand, 09:00 to 10:00"]);
    let shown = told.at(90, typed("1030"));
    holds(&shown, &["Not taken: 10:30 is not within the run, which is 09:00 to 10:00."]);
    told.at(90, [mend(Mend::BreakFrom(Typed::default()))]);
    holds(&told.at(90, typed("920")), &["Back at work at"]);
    let before = told.minutes();
    let shown = told.at(91, typed("935"));
    holds(&shown, &["45 min", "Take back"]);
    assert_eq!(before.iter().filter(|(op, _)| op == "Sand").map(|(_, minutes)| minutes).sum::<i64>(), 60);
    let sand = |told: &Told| told.minutes().into_iter().filter(|(op, _)| op == "Sand").map(|(_, minutes)| minutes).collect::<Vec<_>>();
    let mut parts = sand(&told);
    parts.sort();
    assert_eq!(parts, [20, 25]);
    told.at(92, [Msg::Common(Common::TakeBack)]);
    assert_eq!(sand(&told), [60]);
}

/// More than five hours over noon, with a piece each hour: whether there was a break is asked at the stop, and leads to it in a tap.
#[test]
fn a_long_run_over_noon_is_asked_about() {
    let asked = "over noon. Was there a break in it?";
    let ran = |from: i64, to: i64| {
        let mut told = Told::stands();
        let run = told.start(from, "Sand");
        (1..).map(|hour| from + hour * 55).take_while(|at| *at < to).for_each(|at| drop(told.at(at, [tap(Tap::Done)])));
        lacks(&told.at(to, []), &[asked]);
        told.at(to, [tap(Tap::Stop)]);
        (told, run)
    };
    let check = |from: i64, to: i64, is_asked: bool| {
        let (mut told, _) = ran(from, to);
        assert_eq!(told.at(to + 1, []).contains(asked), is_asked, "{from} to {to}");
    };
    check(0, 300, false); // 9:00 to 14:00, five hours
    check(0, 320, true);
    check(200, 540, false); // from 12:20
    let (mut told, run) = ran(0, 320);
    holds(&told.at(321, []), &["Sand ran 5", "20, over noon. Was there a break in it?", ">A break in it<", ">No break<"]);
    holds(&told.at(322, [day(DayTap::Break(run))]), &["The break began at", "Sand, 09:00 to 14:20"]);
    told.at(322, typed("1200"));
    told.at(323, typed("1230"));
    assert_eq!(told.minutes(), [("Sand".to_owned(), 180), ("Sand".to_owned(), 110)]);
    lacks(&told.at(324, [Msg::Go(Place::Bench)]), &[asked]);
    let (mut told, run) = ran(0, 320);
    lacks(&told.at(322, [tap(Tap::Right(run))]), &[asked]);
    lacks(&told.at(24 * 60, []), &[asked]);
    // What was said before the next start is asked no more; the next start is never blocked.
    let (mut told, _) = ran(0, 320);
    told.start(330, "Trim");
    lacks(&told.at(331, []), &[asked]);
}

/// A clock that was forgotten for a night has no break before its end is said.
#[test]
fn the_end_of_a_run_in_question_comes_before_its_break() {
    let (mut told, _) = two_jobs();
    told.at(60, [tap(Tap::Other), op("Sand")]);
    let run = told.run();
    told.at(60 + 20 * 60, [tap(Tap::Stop)]);
    opened(&mut told, 60 + 20 * 60, run);
    let shown = told.at(60 + 20 * 60, [mend(Mend::BreakFrom(Typed::default()))]);
    holds(&shown, &["Not taken: when this run ended is not settled."]);
    lacks(&shown, &["The break began at"]);
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

/// A stop put right to before the helper went, or came: the row says that the pay ends with the run.
#[test]
fn a_helper_beyond_the_end_of_a_run_is_said() {
    let check = |came: i64, stop: &str, said: &str, not: &str| {
        let mut told = Told::stands();
        let run = told.start(0, "Sand");
        told.at(came, [tap(Tap::HelperJoins)].into_iter().chain(presses("18")).chain([tap(Tap::PadDone)]));
        told.at(came + 20, [tap(Tap::HelperLeaves)]);
        told.at(120, [tap(Tap::Stop)]);
        opened(&mut told, 121, run);
        told.at(121, [mend(Mend::Stop(Typed::default()))]);
        let shown = told.at(121, typed(stop));
        holds(&shown, &[said]);
        lacks(&shown, &[not]);
    };
    check(20, "1000", "helper 09:20 to 09:40, $6.00", "counted to the end");
    check(20, "0930", "helper 09:20 to 09:30, $3.00, went 09:40, counted to the end of the run", "nothing counted");
    check(40, "0930", "helper came 09:40, after the end of the run: nothing counted", "$0.00");
}

/// From 14:10 on Tuesday, seen on Wednesday at 7:50: a time before the start that has not come on the day after ends before it begins,
/// and one that has not come is said to be so; neither is asked about.
#[test]
fn a_stop_that_cannot_be_is_refused_and_not_asked_about() {
    let check = |text: &str, half: crate::parts::pad::Half, said: &str| {
        let mut told = Told::stands();
        told.app.speech = Rc::new(Plain { halves: true, ..Plain::default() });
        let run = told.start(310, "Coat");
        told.at(1_370, [tap(Tap::StoppedAt(run))]);
        let half = [tap(Tap::Press(Press::Half(half))), tap(Tap::PadDone)];
        let shown = told.at(1_370, presses(text).into_iter().chain(half));
        holds(&shown, &["bench/stopped", said]);
        lacks(&shown, &["longer than a working day"]);
    };
    use crate::parts::pad::Half::{Am, Pm};
    check("200", Pm, "it would end at Tue 3 March 2:00\u{a0}PM, and it begins at Tue 3 March 2:10\u{a0}PM");
    check("1130", Am, "it would end at Tue 3 March 11:30\u{a0}AM, and it begins at Tue 3 March 2:10\u{a0}PM");
    // Time that was missed today from 7:00, until 23:00.
    let mut told = Told::stands();
    missed(&mut told, 30);
    told.at(30, clock("700"));
    let shown = told.at(30, clock("2300"));
    holds(&shown, &["bench/until", "23:00 has not come yet, it is 09:30"]);
    lacks(&shown, &["longer than a working day"]);
}

/// Of one who was forgotten in the sanding from nine to ten: each time is refused where it is typed, with what it met.
#[test]
fn when_a_forgotten_helper_came_is_refused_at_once() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    told.at(90, [mend(Mend::Came(day::Helper::default(), Typed::default()))]);
    let outside = "08:30 is not within the run, which is 09:00 to 10:00";
    holds(&told.at(90, typed("0830")), &[outside, "The helper came at", ">0830<"]);
    let rub = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 4);
    holds(&told.at(90, rub.chain(typed("0915"))), &["The helper went at"]);
    holds(&told.at(90, typed("1015")), &["10:15 is not within the run", "The helper went at"]);
    let rub = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 4);
    holds(&told.at(90, rub.chain(typed("0910"))), &["it would end at 09:10, and it begins at 09:15", "The helper went at"]);
    let rub = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 4);
    holds(&told.at(90, rub.chain(typed("0945"))), &["What is the helper paid?"]);
    told.at(90, [tap(Tap::PadDone)]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().labour(told.app.now.at).as_minutes(), 60 + 30);
}

/// In a run from 23:30 to 00:30 a helper's times have the keys of both days, as the maker's own have; of a run in one day there is no choice.
#[test]
fn a_helpers_times_have_the_days_of_the_run() {
    let mut told = Told::stands();
    let run = told.start(870, "Sand");
    told.at(930, [tap(Tap::Stop)]);
    let on = told.today_at(870);
    told.at(1_500, [day(DayTap::Show(on)), day(DayTap::Open(run)), mend(crate::app::bench::mending::forgotten())]);
    let shown = told.at(1_500, presses("0010"));
    holds(&shown, &["The helper came at", "Wed 4 March 00:10", "On which day?", "Tue 3 March", "Wed 4 March"]);
    let shown = told.at(1_500, [tap(Tap::OnDay(on)), tap(Tap::PadDone)]);
    holds(&shown, &["00:10 is not within the run", "The helper came at", ">0010<"]);
    let shown = told.at(1_500, [tap(Tap::OnDay(on.next())), tap(Tap::PadDone)]);
    holds(&shown, &["The helper went at", "On which day?"]);
    told.at(1_500, [tap(Tap::PadDone), tap(Tap::PadDone)]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().labour(told.app.now.at).as_minutes(), 60 + 20);
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    lacks(&told.at(90, [mend(crate::app::bench::mending::forgotten())]), &["On which day?"]);
}

/// A figure that stands there is typed over; a half of the day or a rub is of it.
#[test]
fn the_other_end_is_typed_over() {
    let mut told = Told::stands();
    missed(&mut told, 30);
    told.at(30, clock("800"));
    holds(&told.at(30, [starting(StartingTap::From)]), &["bench/from", ">800<"]);
    holds(&told.at(30, presses("70")), &[">70<"]);
    told.at(30, presses("0"));
    holds(&told.at(30, [starting(StartingTap::Clock)]), &["bench/until", "From 07:00"]);
    told.at(30, [starting(StartingTap::From)]);
    holds(&told.at(30, [tap(Tap::Press(Press::RubOut))]), &[">70<"]);
    holds(&told.at(30, presses("5")), &[">705<"]);
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
