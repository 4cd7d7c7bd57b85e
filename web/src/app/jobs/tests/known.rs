//! What an estimate goes by, and when it was known: the factor, the kind of piece that is said later, and what others taught after the start.

use super::*;
use crate::app::jobs::estimate::EstimateTap;
use fivebar_core::ledger::line::write;

/// The same book as it is opened anew.
fn again(maker: &mut Maker) {
    let lines: Vec<String> = maker.app.shelf().book.entries().map(|(entry, _)| write(entry)).collect();
    let open = maker.app.jobs.open;
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str));
    (app.now, app.jobs.open, app.jobs.room) = (maker.app.now, open, Some(Room::Hours));
    maker.app = app;
}

const PLANNED: &str = "2026-12-07 06:00 +00:00 workshop EUR metric\njob bench \"Bench\" 1 order\nplan \"frame\" make 600 min for bench\n\
    job stool \"Stool\" 1 order\nplan \"legs\" make 600 min for stool\n";

/// Ten hours with the factor 14, with the allowance 10 h 45: of this job alone, after a reload too, and taken back.
#[test]
fn an_estimate_without_the_factor_is_one_until_it_is_taken_back() {
    let mut maker = Maker::told(&[PLANNED]);
    maker.room("bench", Room::Hours).shows(&["14 h likely in all"]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(false))).shows(&["10 h 45 likely in all", "Take back"]);
    again(&mut maker);
    maker.shows(&["10 h 45 likely in all"]);
    maker.room("bench", Room::Dates).shows(&["10 h 45"]);
    maker.room("stool", Room::Hours).shows(&["14 h likely in all"]);
    maker.room("bench", Room::Hours).tap(Tap::Estimate(EstimateTap::Factor(true))).shows(&["14 h likely in all"]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["10 h 45 likely in all"]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(false))).shows(&["10 h 45 likely in all"]);
}

/// Three old jobs of 4, 4 and 5 hours, told for a gift of no kind, whose names tell none; and a lamp of one hour that was made. The gift is said to
/// be a lamp: it goes by all four of them, and so does the next lamp.
#[test]
fn old_jobs_are_of_the_kind_that_their_job_is_said_to_be() {
    let story = "2026-12-07 06:00 +00:00 workshop EUR metric\njob more \"Desk lamp\" 1 spec\nabout more piece lamp\n\
        08:00 start \"turn\" make on more\n09:00 stop\nend more\n";
    let mut maker = Maker::told(&[story]);
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Gift for Ann".into())).tap(Tap::Save);
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Miller", "Smith", "Jones"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["4", "", "", "", "4", "", "", "", "5"]).tap(Tap::Save);
    // The fourth root of 60 x 240 x 240 x 300 minutes.
    maker.tap(Tap::Estimate(EstimateTap::Piece("lamp"))).shows(&["2 h 59 likely in all"]);
    again(&mut maker);
    maker.shows(&["2 h 59 likely in all", "Miller"]);
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Hall lamp".into())).tap(Tap::Save).tap(Tap::Room(Room::Hours));
    maker.tap(Tap::Estimate(EstimateTap::Piece("lamp"))).shows(&["2 h 59 likely in all"]);
}

/// A bench of 20 hours by its kind; worked on, and then others tell of benches of 6 hours: it was to take 20 h all the same.
#[test]
fn what_is_told_after_the_start_is_no_estimate_of_it() {
    let story = "2026-12-07 06:00 +00:00 workshop EUR metric\njob bench \"Bench\" 1 order\nabout bench piece bench\n\
        08:00 start \"frame\" make on bench\n10:00 stop\njob stool \"Stool\" 1 order\n";
    let mut maker = Maker::told(&[story]);
    let estimated = |maker: &Maker| {
        let sheet = super::super::estimate::sheet(&maker.app, maker.jobs["bench"]).unwrap();
        (sheet.progress.estimated.unwrap().as_minutes(), sheet.in_all().unwrap().likely.as_minutes())
    };
    assert_eq!(estimated(&maker), (1_200, 1_200));
    maker.room("stool", Room::Hours).tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Hall bench", "Bench by the door", "Garden bench"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["6", "", "", "", "6", "", "", "", "6"]).tap(Tap::Save);
    assert_eq!(estimated(&maker), (1_200, 360));
}

/// Two stands had three coats of half an hour by one operation: as many of the next two take as long, one coat with a number a third of it.
#[test]
fn coats_are_worked_back_by_how_many_there_were() {
    let day =
        |day: u32| format!("2026-12-0{day} 09:00 start \"Coat\" make on more stage finish\n09:30 clamped 2 coat 1440 min\n09:30 stop\n");
    let coats: String = (1..4).map(day).collect();
    let begun =
        format!("2026-12-01 08:00 +00:00 workshop EUR metric\njob more \"Bar stand\" 2 spec\nabout more piece stand\n{coats}end more\n");
    for (op, said) in [("Coat", "Bar stand 1 h 30 for 2 in 3 coats."), ("Coat 2", "Bar stand 1 h 30 for 2 in 3 coats, so 30 min in 1.")] {
        let two = format!("job stool \"Low stand\" 2 spec\nabout stool piece stand\nplan \"{op}\" make 90 min for stool pieces 2\n");
        Maker::told(&[&format!("{begun}{two}")]).room("stool", Room::Hours).shows(&[said]);
    }
}

/// Three coats on four stools are no twelve pieces; and twelve that are planned for four say that they are more.
#[test]
fn coats_are_said_with_the_pieces_they_are_on() {
    let coat =
        |day: u32| format!("2026-12-0{day} 09:00 start \"Coat\" make on stool stage finish\n09:30 clamped 4 coat 1440 min\n09:30 stop\n");
    let coats: String = (2..5).map(coat).collect();
    let begun =
        "2026-12-01 08:00 +00:00 workshop EUR metric\njob stool \"Stools\" 4 order\nplan \"Coat\" make stage finish 90 min for stool\n";
    let mut maker = Maker::told(&[&format!("{begun}{coats}")]);
    let run = maker.app.shelf().bench().runs().last().unwrap().id;
    let done = Command::Bench(fivebar_core::ledger::decide::BenchCommand::Whole { run, of: 12 });
    maker.app.order(&done, maker.now).unwrap();
    maker.room("stool", Room::Hours).shows(&["finish, 3 coats on 4 pieces"]).hides(&["12 pieces"]);
    let planned = "plan \"Legs\" make 90 min for stool pieces 16\nplan \"Seats\" make 90 min for stool pieces 4\n";
    Maker::told(&[&format!("{begun}{planned}")]).room("stool", Room::Hours).shows(&["make, 16 pieces, of a job of 4,", "make, 4 pieces,"]);
}
