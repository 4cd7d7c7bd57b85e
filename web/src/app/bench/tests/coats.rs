//! Second coats, told: on which pieces they are and on how many, before the maker is done with them and after.

use super::super::waits::WaitTap;
use super::*;
use crate::app::jobs::{Room, Tap as JobsTap};
use fivebar_core::ledger::fold;

/// The second coat begins at half past ten the next day.
const NEXT: i64 = 25 * 60 + 30;

/// So many pieces coated at once, and the clock stopped.
fn coat(told: &mut Told, minute: i64, n: &str) {
    coat_by(told, minute, ("Coat", n));
}

fn coat_by(told: &mut Told, minute: i64, (op, n): (&str, &str)) {
    told.start(minute, op);
    told.at(minute + 5, [tap(Tap::MoreDone)]);
    told.at(minute + 5, presses(n).into_iter().chain([tap(Tap::PadDone)]));
    told.at(minute + 20, [tap(Tap::Stop)]);
}

fn job(told: &Told) -> Id {
    fold::jobs(&told.app.shelf().book).next().unwrap().id
}

fn done_with(told: &mut Told, minute: i64) {
    let (run, of) = super::super::whole_of(&told.app, On::Job(job(told)), "Coat").unwrap();
    told.at(minute, [tap(Tap::Whole(run, of))]);
}

/// The bench, what waits, the list of the day, and the hours of the job.
fn pages(told: &mut Told, minute: i64) -> [String; 4] {
    let today = told.today_at(minute);
    let open = Msg::Jobs(JobsTap::Open(crate::app::Which::Own, job(told)));
    [
        told.at(minute, []),
        told.at(minute, [Msg::Bench(Tap::Waits(WaitTap::Show))]),
        told.at(minute, [tap(Tap::Close), day(DayTap::Show(today))]),
        told.at(minute, [tap(Tap::Close), Msg::Go(Place::Jobs), open, Msg::Jobs(JobsTap::Room(Room::Hours))]),
    ]
}

/// Five stands coated at once, and the next day again: five pieces and the second coat, on every page, done with it or not.
#[test]
fn done_with_the_second_coat_they_are_as_many_pieces_as_before() {
    let mut told = Told::stands();
    coat(&mut told, 0, "5");
    coat(&mut told, NEXT, "5");
    for done in [false, true] {
        if done {
            told.at(NEXT + 21, [Msg::Go(Place::Bench)]);
            done_with(&mut told, NEXT + 21);
        }
        let [bench, waits, day, hours] = pages(&mut told, NEXT + 22);
        holds(&bench, &["Coat 2: 5 of 5"]);
        holds(&waits, &["Coat 2 of pieces 1 to 5"]);
        holds(&day, &["Coat 2 of pieces 1 to 5"]);
        for page in [bench, waits, day, hours] {
            lacks(&page, &["6 to 10", "of 10", "10 of 5", "10 pieces"]);
        }
    }
    assert!(super::super::whole_of(&told.app, On::Job(job(&told)), "Coat").is_none(), "nothing is left of it");
}

/// The second coat of five dries. Done with it, they are only dry and nothing is to carry on with; taken back, or begun again, there may be more.
#[test]
fn the_last_coat_is_dry_and_not_carried_on() {
    let mut told = Told::stands();
    coat(&mut told, 0, "5");
    coat(&mut told, NEXT, "5");
    let dry = NEXT + 26 * 60;
    let check = |told: &mut Told, minute, is_last: bool| {
        let bench = told.at(minute, [Msg::Go(Place::Bench)]);
        let list = told.at(minute, [Msg::Bench(Tap::Waits(WaitTap::Show))]);
        told.at(minute, [tap(Tap::Close)]);
        holds(
            &bench,
            &[if is_last { "oat 2 of pieces 1 to 5 are dry, since" } else { "oat 2 of pieces 1 to 5 are dry for the next coat, since" }],
        );
        holds(&list, &[if is_last { "are dry, since" } else { "are dry for the next coat, since" }]);
        assert_eq!(bench.contains("Carry on: coat"), !is_last);
    };
    check(&mut told, dry, false);
    done_with(&mut told, dry + 1);
    check(&mut told, dry + 1, true);
    told.at(dry + 2, [Msg::Common(Common::TakeBack)]);
    check(&mut told, dry + 2, false);
    done_with(&mut told, dry + 3);
    told.start(dry + 10, "Coat");
    told.at(dry + 15, [tap(Tap::Stop)]);
    check(&mut told, dry + 16, false);
}

/// The second coat of five is begun: what runs says that none has it yet, and counts from there; the run that put on the first says that all have.
#[test]
fn a_second_coat_begins_at_none() {
    let mut told = Told::stands();
    told.start(0, "Coat");
    told.at(0, [tap(Tap::AskBatch)]);
    told.at(0, presses("5").into_iter().chain([tap(Tap::PadDone)]));
    holds(&told.at(5, vec![Msg::Bench(Tap::Waits(WaitTap::Clamp)); 5]), &["5 of 5 done"]);
    told.at(6, [tap(Tap::Stop)]);
    told.start(NEXT, "Coat");
    let shown = told.at(NEXT + 1, []);
    holds(&shown, &["Coat 2: 0 of 5 done"]);
    lacks(&shown, &["5 of 5 done"]);
    holds(&told.at(NEXT + 2, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]), &["Coat 2: 1 of 5 done"]);
}

/// Two of the stands coated, and done with it; coated again the next day they are two, and it is their second coat.
#[test]
fn a_coat_after_the_last_is_on_the_same_pieces() {
    let mut told = Told::stands();
    coat(&mut told, 0, "5");
    done_with(&mut told, 21);
    coat(&mut told, NEXT, "5");
    let [bench, waits, ..] = pages(&mut told, NEXT + 22);
    holds(&bench, &["Coat 2: 5 of 5"]);
    lacks(&bench, &["10 of 5"]);
    holds(&waits, &["Coat 2 of pieces 1 to 5"]);
}

/// Four shelves of one case were said at the bench: done with the second coat they are four still.
#[test]
fn pieces_that_were_said_stay_when_the_maker_is_done_with_them() {
    let mut told = Told::stands();
    told.start(0, "Coat");
    told.at(1, [tap(Tap::BatchOf(4)), tap(Tap::Stop)]);
    coat(&mut told, 2, "4");
    coat(&mut told, NEXT, "4");
    let [bench, waits, ..] = pages(&mut told, NEXT + 22);
    holds(&bench, &["Coat 2: 4 of 4"]);
    holds(&waits, &["Coat 2 of pieces 1 to 4"]);
    lacks(&bench, &["8 of 4"]);
}

/// An hour of coating is planned for four of the stands: it stays four once one dries, what the plan leaves is to come until
/// the maker is done with it, and the key names what is coated next, as big buttons do: the first piece a second time.
#[test]
fn coats_are_of_as_many_pieces_as_were_planned() {
    let mut told = Told::stands();
    let (now, job) = (told.now(0), job(&told));
    let plan = |op: &str| {
        let (op, span, pieces) = (op.to_owned(), Some(fivebar_core::quantity::Span::minutes(60)), Some(4));
        let plan =
            fivebar_core::ledger::kind::job::OperationPlanned { job, op, kind: Kind::Make, stage: Some(Stage::Finish), span, pieces };
        Command::Job(JobCommand::PlanOperation(plan))
    };
    told.app.order(&plan("Coat"), now).unwrap();
    told.start(0, "Coat");
    holds(&told.at(1, []), &["0 of 4 done", "Coated", "dry 24 h from now"]);
    lacks(&told.at(1, []), &["Coat 2"]);
    for minute in 2..6 {
        told.at(minute, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]);
    }
    let shown = told.at(6, []);
    holds(&shown, &["4 of 4 done", "coat 2 of piece 1, dry 24 h from now"]);
    lacks(&shown, &[words::ASK_HOW_MANY]);
    holds(&told.at(6, [tap(Tap::Big)]), &["coat 2 of piece 1, dry 24 h from now"]);
    // All four have a coat: what is left of the hour is to come, 84 min with what is put on top, until the maker is done with them.
    assert_eq!(to_come(&told, job), [78]);
    told.at(7, [tap(Tap::LeaveBig)]);
    holds(&told.at(8, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]), &["Coat 2: 1 of 4 done", "coat 2 of piece 2, dry 24 h from now"]);
    // One of the second coat: of 84 min with what is put on top nine are gone. It was all of it: five coats on four pieces, and nothing is to come.
    told.at(9, [tap(Tap::Stop)]);
    assert_eq!(to_come(&told, job), [75]);
    done_with(&mut told, 10);
    assert_eq!(to_come(&told, job), [0]);
    holds(&told.at(11, []), &["Coat 2: 1 of 4"]);
    assert!(super::super::whole_of(&told.app, On::Job(job), "Coat").is_none(), "nothing is left of it");
}

/// The minutes still to come of each planned operation.
fn to_come(told: &Told, job: Id) -> Vec<i64> {
    let rows = fivebar_core::sheet::estimate::estimate(&told.app.shelf().shop(told.app.now.at), job, true).unwrap().rows;
    rows.iter().filter(|row| row.op.is_some()).map(|row| row.to_come().as_minutes()).collect()
}

/// A shelf that was begun, and oiled four minutes later: dry a day after that.
fn oiled(told: &mut Told, minute: i64) {
    let (currency, units) = (Currency::USD, Units::Inch);
    let began = JobCommand::Begin { name: "shelf".into(), currency, units, pieces: 1, made_for: For::Spec };
    let now = told.now(minute - 1);
    told.app.order(&Command::Job(began), now).unwrap();
    let shelf = fold::jobs(&told.app.shelf().book).find(|job| job.name == "shelf").unwrap().id;
    let oil = starting(StartingTap::Found(On::Job(shelf), "Oil".into(), Kind::Make, Stage::Finish));
    told.at(minute, [tap(Tap::Other), oil]);
    told.at(minute + 4, [Msg::Bench(Tap::Waits(WaitTap::Clamp)), tap(Tap::Stop)]);
}

/// Two of five legs at ten minutes each, and 28 minutes until a shelf is dry: of the three that are left some are done by then, on the job that is
/// named.
#[test]
fn as_many_pieces_as_fit_are_offered_with_their_job() {
    let mut told = Told::stands();
    told.start(0, "Taper");
    told.at(1, [tap(Tap::AskBatch)]);
    told.at(1, presses("5").into_iter().chain([tap(Tap::PadDone)]));
    told.at(10, [tap(Tap::Done)]);
    told.at(20, [tap(Tap::Done)]);
    told.at(20, [tap(Tap::Stop)]);
    oiled(&mut told, 30);
    let shown = told.at(34 + 24 * 60 - 28, []);
    holds(&shown, &["28 min: what fits", "stands, 2 of 3, about 20 min, at your pace"]);
}

/// Sanding and pegs of half an hour each are planned, and a coat dries: dust is said of the one.
#[test]
fn dust_beside_a_wet_coat_is_said() {
    let said = "its dust would settle on a wet coat";
    let mut told = Told::stands();
    for name in ["Sand", "Pegs"] {
        let now = told.now(0);
        let (job, op, kind, span) = (job(&told), name.to_owned(), Kind::Make, Some(fivebar_core::quantity::Span::minutes(30)));
        let plan = fivebar_core::ledger::kind::job::OperationPlanned { job, op, kind, stage: None, span, pieces: None };
        told.app.order(&Command::Job(JobCommand::PlanOperation(plan)), now).unwrap();
    }
    oiled(&mut told, 2);
    // Ten hours before it is dry.
    let shown = told.at(6 + 14 * 60, []);
    holds(&shown, &["what fits", "Sand", said]);
    assert_eq!(shown.matches(said).count(), 1);
}

/// Coat 1 and coat 2 are planned on four, and all have the first: whoever goes on at it, by the board or by one piece more, puts on the second, from
/// the last piece on. With three coated, with none planned behind it, or once the second is on all too, it is that coat.
#[test]
fn a_coat_that_all_pieces_have_is_followed_by_the_next_that_is_planned() {
    let coated = |ops: &[&str], n: u32, stopped: bool| {
        let mut told = Told::stands();
        let job = job(&told);
        for op in ops {
            let now = told.now(0);
            let plan = JobCommand::PlanOperation(fivebar_core::ledger::kind::job::OperationPlanned {
                job,
                op: (*op).to_owned(),
                kind: Kind::Make,
                stage: Some(Stage::Finish),
                span: None,
                pieces: Some(4),
            });
            told.app.order(&Command::Job(plan), now).unwrap();
        }
        told.start(0, "Coat 1");
        for nth in 1..=n {
            told.at(i64::from(nth), [Msg::Bench(Tap::Waits(WaitTap::Clamp))]);
        }
        if stopped {
            told.at(10, [tap(Tap::Stop)]);
        }
        told
    };
    let taps = |told: &mut Told| {
        let choice = sheet(&told.app).carry_on.unwrap();
        told.at(20, [tap(Tap::Board(choice))]);
    };
    let runs = |told: &Told| told.app.shelf().bench().runs().map(|run| (run.work.op.clone(), run.done())).collect::<Vec<_>>();
    let of = |all: &[(&str, u32)]| all.iter().map(|(op, n)| ((*op).to_owned(), *n)).collect::<Vec<_>>();
    for (ops, n, next) in
        [(&["Coat 1", "Coat 2"][..], 4, "Coat 2"), (&["Coat 1", "Coat 2"], 3, "Coat 1"), (&["Coat 1", "Sand"], 4, "Coat 1")]
    {
        let mut told = coated(ops, n, true);
        taps(&mut told);
        assert_eq!(runs(&told), of(&[("Coat 1", n), (next, 0)]), "{ops:?}");
    }
    let mut told = coated(&["Coat 1", "Coat 2"], 4, false);
    told.at(8, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]);
    assert_eq!(runs(&told), of(&[("Coat 1", 4), ("Coat 2", 1)]));
    assert_eq!(told.minutes(), [("Coat 1".into(), 4), ("Coat 2".into(), 4)], "the minutes since the last piece are of this one");
    holds(&told.at(9, []), &["1 of 4 done"]);
    let mut told = coated(&["Coat 1"], 4, false);
    told.at(8, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]);
    assert_eq!(runs(&told), of(&[("Coat 1", 5)]));
}

/// Five stands coated, and the next day again without a word that they were dry: the first coat waits no more, in big buttons, on the list, on
/// the bench and on the job's page. Three of them coated again, and two wait on.
#[test]
fn a_second_coat_ends_the_wait_of_the_first() {
    for (n, first) in [("5", None), ("3", Some("ieces 4 to 5"))] {
        let mut told = Told::stands();
        coat(&mut told, 0, "5");
        coat(&mut told, NEXT, n);
        let second = format!("oat 2 of pieces 1 to {n}");
        let mut all = pages(&mut told, NEXT + 22)[..2].to_vec();
        all.push(told.at(NEXT + 22, [Msg::Go(Place::Bench), tap(Tap::Big)]));
        all.push(told.at(NEXT + 22, [tap(Tap::Big), Msg::Go(Place::Jobs), Msg::Jobs(JobsTap::List)]));
        let open = Msg::Jobs(JobsTap::Open(crate::app::Which::Own, job(&told)));
        all.push(told.at(NEXT + 22, [open]));
        for page in &all {
            lacks(page, &["ieces 1 to 5 are dry", "Pieces 1 to 5 dry"]);
        }
        for page in &all[..3] {
            holds(page, &[&second]);
            assert!(first.is_none_or(|first| page.contains(first)));
        }
        lacks(&all[0], &["was to be dry"]);
    }
}

/// The job is ended while its coat dries, and nothing was noted at the bench since: nothing waits at once, and no page says that it was taken
/// off. Ended by mistake, it waits again.
#[test]
fn nothing_waits_of_a_job_that_has_ended() {
    let mut told = Told::stands();
    coat(&mut told, 0, "5");
    holds(&pages(&mut told, 30)[1], &["ieces 1 to 5"]);
    let end = Command::Job(JobCommand::End { job: job(&told), hauls: vec![] });
    let now = told.now(31);
    told.app.order(&end, now).unwrap();
    for page in &pages(&mut told, 32)[..3] {
        lacks(page, &["to dry", "aken off", "taken off"]);
    }
    let open = Msg::Jobs(JobsTap::Open(crate::app::Which::Own, job(&told)));
    told.at(33, [Msg::Go(Place::Jobs), open, Msg::Common(crate::app::Common::TakeBack)]);
    holds(&pages(&mut told, 34)[1], &["ieces 1 to 5"]);
}

/// Coated again three hours after the first coat, which was to be dry the next day: it is taken, and a line says when it was to be.
#[test]
fn a_coat_onto_a_wet_one_says_when_that_was_to_be_dry() {
    let mut told = Told::stands();
    coat_by(&mut told, 0, ("Coat 1", "5"));
    coat_by(&mut told, 180, ("Coat 2", "5"));
    let [bench, waits, ..] = pages(&mut told, 202);
    for page in [bench, waits] {
        holds(&page, &["The coat below was to be dry at"]);
    }
}
