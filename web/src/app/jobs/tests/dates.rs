//! Dates of a job: chosen, promised, lifted; the last day of each step, and when it can be ready.

use super::super::dates::DatesTap;
use super::*;

const DATES: &str = include_str!("../../../../../tests/stories/dates.txt");

/// The stool of the story on 10 March, promised for the 27th.
pub(super) fn stool() -> Maker {
    Maker::told(&[DATES.split("# --- Tuesday").next().unwrap()])
}

pub(super) fn dates(tap: DatesTap) -> Tap {
    Tap::Dates(tap)
}

#[test]
fn each_step_has_its_last_day_and_a_day_is_moved_and_lifted() {
    let mut maker = stool();
    maker.shows(&["Stool", "to be done by Fri 27 March", "Begin saw by Mon 16 March."]);
    maker.open("stool").shows(&["Start saw", "planned 4 h, 5 h 36 to come", "Begin saw by Mon 16 March, to be safe by"]);
    maker.room("stool", Room::Dates).shows(&["Fri 27 March", "No day", "Last day to begin"]);
    maker.shows(&[
        "saw",
        "5 h 36",
        "Mon 16 March",
        "glue seat",
        "in clamps 1 h 30",
        "Wed 18 March",
        "1 h 24 (1 h thought × 1.40), then to dry 1 day, hard after 7 days",
        "Thu 19 March",
    ]);
    maker.shows(&[
        "Begun now, it is ready in the course of",
        "Fri 20 March likely",
        "then it waits till",
        "Plan an operation",
        "the next working day.",
        "A guess of ours: 4 h a day at the bench, till 18:00, no Sundays.",
        "Working hours",
    ]);
    // Each tap is saved; leaving loses nothing.
    maker.tap(dates(DatesTap::By(-7))).tap(Tap::Page).tap(Tap::Room(Room::Dates)).shows(&["Fri 20 March"]);
    maker.tap(dates(DatesTap::By(-7))).shows(&["Fri 13 March", "Too late as it stands: saw should have begun by Mon 2 March."]);
    // A last day that is over is said to be, and what can be done.
    maker.shows(&[
        "Say another day (safe to promise is ",
        "work longer days, or strike what can be left out.",
        "late: Mon 2 March",
        "late: Wed 4 March",
    ]);
    maker.tap(Tap::Page).shows(&["Too late as it stands", "Dates and quote"]);
    maker.tap(Tap::List).shows(&["to be done by Fri 13 March", "Too late as it stands"]);
    // A day that is over is asked about: the day that stands is still the one that was saved.
    let over = "Fri 6 March is over, so it is not said yet.";
    maker.room("stool", Room::Dates).tap(dates(DatesTap::By(-7))).shows(&["Fri 13 March", over, "By Fri 6 March all the same"]);
    maker.tap(Tap::Page).tap(Tap::Room(Room::Dates)).shows(&["Fri 13 March"]);
    assert!(!page(&maker.app).html().contains(over));
    maker.tap(dates(DatesTap::By(-7))).tap(dates(DatesTap::ItIsSo(false))).shows(&["Fri 13 March"]);
    maker
        .tap(dates(DatesTap::By(-7)))
        .tap(dates(DatesTap::ItIsSo(true)))
        .shows(&["Fri 6 March", "That day is over. Finish it, or say another day."]);
    maker.tap(dates(DatesTap::NoDay)).shows(&["no day", "Planned"]);
    maker.tap(Tap::List).shows(&["In hand", "Stool"]);
    maker.room("stool", Room::Dates).tap(dates(DatesTap::By(7))).shows(&["Tue 17 March"]);
    maker.now.wall = Wall::new(maker.now.wall.at.plus(fivebar_core::quantity::Span::minutes(9 * 1_440)), maker.now.wall.offset);
    maker.tap(Tap::List).shows(&["to be done by Tue 17 March", "That day is over."]);
    maker.room("stool", Room::Dates).shows(&["That day is over. Finish it, or say another day."]);
}

/// What runs, or was stopped, is not said to be begun by a day: what is left of it goes on by one.
#[test]
fn what_is_begun_is_not_told_to_begin() {
    let mut maker = stool();
    maker.tap(Tap::List).shows(&["Begin saw by Mon 16 March."]).open("stool").tap(Tap::Next);
    maker.now.wall = Wall::new(maker.now.wall.at.plus(fivebar_core::quantity::Span::minutes(60)), maker.now.wall.offset);
    maker.app.place = Place::Jobs;
    maker.room("stool", Room::Dates).shows(&["Last day to begin, or to go on", "begun, 4 h 36 left", "Tue 17 March"]);
    maker.say(Msg::Bench(crate::app::bench::Tap::Stop));
    maker.app.place = Place::Jobs;
    maker.tap(Tap::List).shows(&["Go on with saw by Tue 17 March."]).hides(&["Begin saw"]);
}

/// Sawn for an hour of the four that were planned, and that was all: said in its plan, it is too late no more, and taken back it is again.
#[test]
fn an_operation_that_is_done_with_is_owed_nowhere() {
    let mut maker = stool();
    let (late, begun) = ("saw should have begun by", "saw is begun, and what is left of it (4 h 36) had to go on by Tue 3 March.");
    let done = "<span>Done with saw</span>";
    maker.room("stool", Room::Dates).tap(dates(DatesTap::By(-7))).tap(dates(DatesTap::By(-7))).shows(&[late]);
    let plan = |maker: &mut Maker| {
        maker.room("stool", Room::Hours).tap(Tap::Write(What::Plan(Some("saw".into()))));
    };
    plan(&mut maker);
    maker.hides(&[done]);
    maker.tap(Tap::Close).tap(Tap::Page).tap(Tap::Next);
    maker.now.wall = Wall::new(maker.now.wall.at.plus(fivebar_core::quantity::Span::minutes(60)), maker.now.wall.offset);
    maker.say(Msg::Bench(crate::app::bench::Tap::Stop));
    maker.app.place = Place::Jobs;
    maker.room("stool", Room::Dates).hides(&[late]).shows(&[begun]);
    plan(&mut maker);
    maker.shows(&[done]);
    let on = fivebar_core::bench::On::Job(maker.jobs["stool"]);
    let (run, of) = crate::app::bench::whole_of(&maker.app, on, "saw").unwrap();
    maker.tap(Tap::Whole(run, of)).shows(&["Take back"]).hides(&[done]);
    maker
        .room("stool", Room::Hours)
        .shows(&["nothing to come: all its pieces are noted as done", "Nothing of it is to come: all its pieces are noted"]);
    maker.room("stool", Room::Dates).hides(&[late, begun]);
    maker.tap(Tap::Page).hides(&["Next: saw"]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.room("stool", Room::Dates).shows(&[begun]);
}

/// The stool is likely ready in the course of Friday the 20th, and later to be safe: promised for Saturday it is likely in time, and not nine times in
/// ten, on its page and in the list; promised for the 27th or the 13th that is not said.
#[test]
fn a_day_that_is_not_safe_is_said_in_the_list() {
    let promised = |days: i32| {
        let mut maker = stool();
        maker.room("stool", Room::Dates).tap(dates(DatesTap::By(days))).tap(Tap::Page).tap(Tap::List);
        maker
    };
    let not_safe = "Likely in time, but not nine times in ten";
    promised(-6).shows(&["to be done by Sat 21 March", not_safe]);
    promised(0).hides(&[not_safe]);
    promised(-14).hides(&[not_safe]);
}

/// One of 84 likely minutes for Thursday the 12th is likely in time by itself. With 8 h 24 likely on another job, at four hours a day, it is likely
/// ready in the course of the 12th, and safely on the 13th: list, page, dates and quote name the 14th.
#[test]
fn the_list_and_the_page_say_what_dates_and_quote_do_behind_other_jobs() {
    let first =
        "2026-03-10 08:00 -05:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"saw\" make 60 min for stool\nabout stool due ";
    let other = "\njob other \"Other\" 1 spec\nplan \"sand\" make 360 min for other\n";
    let behind = "Behind your other jobs it ";
    let check = |due: &str, more: &str, why: Option<&str>| {
        let mut maker = Maker::told(&[&format!("{first}{due}{more}")]);
        let of_day = |words: &str| format!("{words} Sat 14 March.");
        let first = "the first day that can be promised is";
        let said = why.map(|why| of_day(&format!("{behind}{why}: {first}")));
        maker.shows(&["Begin saw by", said.as_deref().unwrap_or("")]);
        maker.open("stool").shows(&["Begin saw by", said.as_deref().unwrap_or("")]);
        if why.is_none() {
            maker.hides(&[behind]).tap(Tap::List).hides(&[behind]);
        } else {
            maker.room("stool", Room::Dates).shows(&[&of_day("As it stands it is safe only for")]);
            maker.room("stool", Room::Quote).shows(&[&of_day(first)]);
        }
    };
    check("2026-03-12", other, Some("will likely not be ready"));
    check("2026-03-13", other, Some("is likely in time, but not nine times in ten"));
    check("2026-03-14", other, None);
    check("2026-03-12", "", None);
}

/// On Saturday the 14th 84 minutes are to do for Sunday, which is no working day: through on Saturday it is in time, on every page. For Saturday
/// itself it is not, and the day that is named is one of work.
#[test]
fn a_day_of_use_that_is_no_working_day_is_in_time() {
    let check = |due: &str, is_missed: bool| {
        let mut maker = Maker::told(&[&format!(
            "2026-03-14 08:00 -05:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"saw\" make 60 min for stool\nabout stool due {due}\n"
        )]);
        let said = ["Too late as it stands", "can be promised is", "safe only for", "will likely not be ready"];
        let of_page = |maker: &mut Maker, said: &[&str]| {
            if is_missed {
                maker.shows(said)
            } else {
                maker.hides(said)
            };
        };
        of_page(&mut maker, &said[..1]);
        of_page(maker.open("stool"), &said[..1]);
        of_page(maker.room("stool", Room::Dates), &said[..1]);
        of_page(maker.room("stool", Room::Quote), &["will likely not be ready: the first day that can be promised is Mon 16 March."]);
        if !is_missed {
            maker.hides(&said).room("stool", Room::Dates).hides(&said).tap(Tap::Page).hides(&said).tap(Tap::List).hides(&said);
        }
    };
    check("2026-03-15", false);
    check("2026-03-14", true);
}

/// Of a job in forty operations what it all comes to, and when it is ready, stand before the list; of one in four after it.
#[test]
fn what_many_steps_come_to_stands_before_them() {
    let check = |n: usize, first: bool| {
        let plans: String = (1..=n).map(|nth| format!("plan \"step {nth}\" make 45 min for stool\n")).collect();
        let told = format!("2026-03-02 09:00 +00:00 workshop EUR metric\njob stool \"Stool\" 1 order\n{plans}");
        for (room, comes_to) in [(Room::Dates, "Begun now"), (Room::Hours, " likely in all")] {
            let mut maker = Maker::told(&[&told]);
            let shown = page(&maker.room("stool", room).app).html().to_lowercase();
            let place = |words: &str| shown.find(&words.to_lowercase()).unwrap_or_else(|| panic!("{words} in {shown}"));
            assert_eq!(place(comes_to) < place("step 1<"), first, "{n} {comes_to}");
        }
    };
    check(40, true);
    check(4, false);
}

#[test]
fn a_day_promised_with_a_price_is_moved_there() {
    let mut maker = Maker::before_delivery();
    maker.room("bench", Room::Dates).shows(&["Sat 23 May", "Promised with the price: it is changed with the order.", "Change the order"]);
    let (job, agreed) = (maker.jobs["bench"], crate::app::jobs::sheet(&maker.app).unwrap().unwrap().selling.open().next().unwrap().id);
    maker.agree(AgreeTap::ChangeOfJob(job, agreed)).shows(&["Change of order", "460"]);
    maker.agree(AgreeTap::Day(1)).agree(AgreeTap::Save).shows(&["Dates and quote", "Sun 24 May"]);
}

/// Where the agreed price stands on the job's page the order is changed, or paid in parts, by the forms of Price; left or saved they lead back.
#[test]
fn an_order_is_changed_where_the_job_shows_it() {
    use crate::app::price::{Tap as PriceTap, parts::PartsTap};
    let mut maker = Maker::before_delivery();
    maker.room("bench", Room::Sell).shows(&["460.00", "Hand over", "Change the order", "Several payments"]);
    let job = maker.jobs["bench"];
    let agreed = |maker: &Maker| crate::app::jobs::sheet(&maker.app).unwrap().unwrap().selling.open().next().unwrap().id;
    let first = agreed(&maker);
    maker.agree(AgreeTap::ChangeOfJob(job, first)).shows(&["Change of order"]);
    maker.say(Msg::Price(PriceTap::Close));
    maker.shows(&["Sell and deliver", "460.00"]);
    maker.agree(AgreeTap::ChangeOfJob(job, first)).sum(Figure::Price, "480").agree(AgreeTap::Save).shows(&["Sell and deliver", "480.00"]);
    let open = agreed(&maker);
    maker.say(Msg::Price(PriceTap::Parts(PartsTap::OfJob(job, open))));
    maker.shows(&["Several payments"]);
    maker.say(Msg::Price(PriceTap::Parts(PartsTap::Save)));
    maker.shows(&["Sell and deliver", "480.00", "Payment 1"]);
}

#[test]
fn a_job_of_which_nothing_is_known_says_what_is_missing() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Thing".into())).tap(Tap::Save).tap(Tap::Room(Room::Dates));
    maker.shows(&["no day", "Nothing says yet how long it takes", "Plan an operation", "Say what kind of piece it is"]);
    maker.tap(Tap::Room(Room::Quote));
    maker.shows(&["A price needs hours", "say what kind of piece it is"]);
    // Once that is said it is not asked for again.
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Estimate(crate::app::jobs::estimate::EstimateTap::Piece("cabinet")));
    maker.shows(&["Kind of piece: cabinet", "Nothing to go by yet. Plan its operations, or tell three old jobs."]);
    maker.tap(Tap::Room(Room::Dates)).shows(&["plan operations, or tell old jobs.", "Old jobs"]).hides(&["kind of piece it is"]);
    maker.tap(Tap::Room(Room::Quote)).shows(&["A price needs hours: plan operations, or tell old jobs."]);
}

/// A name that tells the kind is one tap there; what is usual for such a piece stands on the same page then.
#[test]
fn the_kind_that_a_name_tells_is_said_where_days_lack_it() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Walnut table".into())).tap(Tap::Save).tap(Tap::Room(Room::Dates));
    maker.shows(&["Nothing says yet how long it takes", "Kind of piece: table", "by its name: tap to say so"]).hides(&["Say what kind"]);
    maker.tap(Tap::Estimate(crate::app::jobs::estimate::EstimateTap::Piece("table")));
    maker.shows(&["Dates and quote", "30 h of hands on it"]).hides(&["Nothing says yet"]);
}

/// A job that has ended has no day to keep, and nothing is quoted for it.
#[test]
fn a_job_that_has_ended_has_no_dates() {
    let mut maker = stool();
    maker.open("stool").tap(Tap::End).tap(Tap::Room(Room::Quote)).shows(&["You are done with this job"]);
    let page = page(&maker.app).html();
    assert!(!page.contains("Write this quote down") && !page.contains("Share it") && !page.contains("sheet card quote"), "{page}");
    maker.tap(Tap::Room(Room::Dates)).shows(&["You are done with this job: nothing of it is to come."]);
    maker.hides(&["To be done by", "Begun now", "plan operations", "One day later"]);
}

/// What an ended job took stands beside what was thought and estimated, and nothing is forecast of it: in both examples.
#[test]
fn a_job_that_has_ended_forecasts_nothing() {
    let check = |story: &str, job: &str, took: &[&str]| {
        let mut maker = Maker::told(&[story]);
        maker.open(job).tap(Tap::Room(Room::Hours)).shows(took);
        maker.hides(&["likely", " safe</span>", "that it may run over", "the factor", "How it is reckoned"]);
    };
    check(STANDS, "stands", &["24 h in all"]);
    check(BENCH, "bench", &["26 h 03 in all", ">19 h thought, 25 h 26 estimated<", "Kept Wed 15 April: 25 h 26, and 32 h 18 to be safe"]);
}

/// A refusal is about what was typed: it goes with the next letter, and with the form.
#[test]
fn a_refusal_does_not_follow_to_the_next_page() {
    for after in [vec![Tap::Say(0, "Thing".into())], vec![Tap::Close, Tap::Room(Room::Wood)]] {
        let mut maker = stool();
        maker.open("stool").tap(Tap::Write(What::Name)).tap(Tap::Say(0, " ".into())).tap(Tap::Save).shows(&["Name: nothing is typed"]);
        for tap in after {
            maker.tap(tap);
        }
        assert!(!page(&maker.app).html().contains("nothing is typed"));
    }
}

/// Ready on a Friday and promised for the Saturday, where Saturdays are worked; else for the Monday after, on the quote too.
#[test]
fn nothing_is_promised_for_a_day_off() {
    let check = |days: &str, said: &str, ready: &str| {
        let told = format!(
            "2026-12-14 06:00 +00:00 workshop USD inch\n{days}rate pay 20 hours 400 logged 300 costs 0\njob stool \"Stool\" 1 order\nspend 0 wood on stool\nplan \"saw\" make 520 min for stool\nall-planned stool\n"
        );
        let mut maker = Maker::told(&[&told]);
        maker.room("stool", Room::Dates).shows(&[said]);
        maker.tap(Tap::Room(Room::Quote)).shows(&[ready]);
    };
    check("", "Safe to promise for Sat 19 December, the morning after.", "Ready by Sat 19 December if");
    let monday = "Safe to promise for Mon 21 December, the next working day.";
    check("workdays 240 min not sat sun\n", monday, "Ready by Mon 21 December if");
}

/// 150 min of sawing are likely 3 h 30, done that Tuesday; behind an hour of the other on Wednesday, and to be safe on Wednesday either way, so
/// both are promised for Thursday. Behind seven minutes it is Tuesday, too.
#[test]
fn other_jobs_move_no_day_where_neither_the_likely_nor_the_safe_one_moves() {
    let check = |minutes: i64, said: &str, not: &str| {
        let mut maker = Maker::told(&[&format!(
            "2026-03-10 08:00 -05:00 workshop USD inch\nrate pay 20 hours 400 logged 300 costs 0\njob stool \"Stool\" 1 order\nspend 0 wood on stool\n\
            plan \"saw\" make 150 min for stool\njob other \"Other\" 1 spec\nplan \"sand\" make {minutes} min for other\n"
        )]);
        maker.room("stool", Room::Quote).shows(&["Ready by Thu 12 March if", said]).hides(&[not]);
    };
    let stays = "The 1 h of other jobs come first: it is likely ready Wed 11 March, before them Tue 10 March. The day that can be promised is the same.";
    check(43, stays, "move no day");
    check(5, "The 7 min of other jobs come first, and move no day.", "likely ready");
}

/// Oiled on Wednesday the 11th till 14:00: a week hard on the 18th, whatever day it is.
#[test]
fn what_only_hardens_says_until_when() {
    let begun = "2026-03-01 19:00 -05:00 workshop USD inch\n2026-03-10 09:00 job stool \"Stool\" 1 order\nends-in \"oil\" coat of oil\nplan \"oil\" make stage finish 60 min for stool\nabout stool due 2026-03-27\n";
    let oiled = "2026-03-11 13:00 start \"oil\" make on stool\n14:00 clamped 1\nstop\n2026-03-13 09:00 about stool note \"x\"\n";
    let mut maker = Maker::told(&[&format!("{begun}{oiled}")]);
    maker.room("stool", Room::Dates).shows(&["done, hard Wed 18 March", "It is hard in the course of"]).hides(&["hard after", "Begun now"]);
}

/// Sawing runs: the page and the list say so, and not when it must begin.
#[test]
fn what_runs_need_not_begin() {
    let mut maker = stool();
    maker.room("stool", Room::Dates).tap(dates(DatesTap::By(7))).tap(Tap::Page).shows(&["Begin saw by"]);
    maker.tap(Tap::Next);
    maker.app.place = Place::Jobs;
    maker.open("stool").shows(&["Saw is running."]).hides(&["Begin saw by"]);
    maker.tap(Tap::List).shows(&["Stool"]).hides(&["Begin saw by"]);
}

/// A stand of its own was glued for 90 min, the second half an hour later, and coated for a day: so the next waits, and hardens, and its day is on the paper.
#[test]
fn a_day_waits_as_the_last_of_its_kind_did() {
    let begun = "2026-04-06 09:00 +00:00 workshop USD inch\nrate pay 17 hours 600 logged 480 costs 1440\njob more \"Plant stand\" 2 spec\n\
        start \"glue up\" make on more\n10:00 clamped 1 glue of pva\n10:30 clamped 1 glue of pva\nstop\n13:00 start \"coat\" make on more\n14:00 clamped 2 coat of oil\nstop\n";
    let rest = "2026-04-10 09:00 end more\n2026-04-18 09:00 job stool \"Oak stand\" 1 order\nspend 60 wood on stool\n";
    let mut maker = Maker::told(&[&format!("{begun}{rest}")]);
    maker.room("stool", Room::Dates).shows(&["the whole piece", "1 h 17, then to dry 26 h, hard after 7 days"]);
    maker.shows(&["It waits as long as Plant stand did: 26 h for glue and coats."]).hides(&["drying are not in it"]);
    maker.tap(Tap::Room(Room::Quote)).shows(&["Ready by", "It waits as long as Plant stand did"]).hides(&["no drying in it"]);
}

/// A glue-up waits past the day it was promised for, and no hand is left on it: that it will not be ready is said, and the first day that can be
/// promised; no longer day of work would help.
#[test]
fn what_only_waits_past_its_day_is_said_plainly() {
    let told = "2026-04-20 09:00 +00:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"glue up\" make 60 min for stool\n\
        ends-in \"glue up\" glue of pva 90 min\nall-planned stool\nbatch 1 \"glue up\" for stool\nabout stool due 2026-04-20\n\
        start \"glue up\" make on stool\n10:00 clamped 1\nstop\n";
    let plain =
        "It will not be ready by Mon 20 April: glue up waits till Mon 20 April, and the first day that can be promised is Tue 21 April.";
    let mut maker = Maker::told(&[told]);
    maker.shows(&[plain]).open("stool").shows(&[plain]);
    maker.room("stool", Room::Dates).shows(&[plain]).hides(&["work longer days", "0 min of hands"]);
}

/// One day is said once, and the days that are no working days are named with the hours.
#[test]
fn a_day_is_said_once_and_days_off_with_the_hours() {
    use crate::words::en::dates::{of_others, reckoned};
    assert!(of_others("2 h", Some("Sun 26 April"), Some("Sun 26 April")).ends_with("With them first it is ready Sun 26 April."));
    assert!(of_others("2 h", Some("Sun 26 April"), Some("Mon 27 April")).ends_with("likely ready Sun 26 April, Mon 27 April to be safe."));
    let (all, none) = ([true; 7], [true, true, true, true, true, false, false]);
    let said = |days: &[bool; 7], off| reckoned(("6 h", "17:00"), (days, off), true);
    assert_eq!(said(&all, false), "Your working hours: 6 h a day at the bench, till 17:00.");
    assert_eq!(
        said(&none, true),
        "Your working hours: 6 h a day at the bench, till 17:00, no Saturdays, no Sundays, and none of your days off."
    );
}

/// Oiled on Tuesday 10 March at 10:20 and dry a day later: made, and hard a week after the coat. Until then it says so, on its page and in the list.
#[test]
fn what_is_made_and_still_hardens_says_so() {
    let oiled = "2026-03-09 08:00 -04:00 workshop USD inch\njob stool \"Stool\" 1 spec\nplan \"oil\" make stage finish 20 min for stool pieces 1\n\
        ends-in \"oil\" coat of oil\n2026-03-10 09:50 start \"oil\" make on stool\n10:20 clamped 1 coat 1440 min as wet\n10:20 stop\n";
    let (made, dry) = ("Made, and without a tag.", "2026-03-11 10:30 off wet\nbatch 1 \"oil\" for stool\n");
    let mut maker = Maker::told(&[&format!("{oiled}{dry}")]);
    maker.shows(&["Stool", "Oil hardens until Tue 17 March"]).hides(&["Write the tag"]);
    maker.open("stool").shows(&["Oil hardens until Tue 17 March. Without a tag.", "Write the tag"]).hides(&[made]);
    let mut maker = Maker::told(&[&format!("{oiled}{dry}2026-03-17 11:00 about stool note \"hard\"\n")]);
    maker.shows(&["Next: write the tag"]);
    maker.open("stool").shows(&[made]).hides(&["hardens"]);
}

/// Promised for the 20th, sold on the 12th while the oil was still hardening: what is handed over is late for nobody.
#[test]
fn what_is_handed_over_is_not_late() {
    let told = "2026-03-09 08:00 -04:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"oil\" make stage finish 20 min for stool pieces 1\n\
        ends-in \"oil\" coat of oil\n2026-03-10 09:50 start \"oil\" make on stool\n10:20 clamped 1 coat 1440 min as wet\n10:20 stop\n\
        promise stool 2026-03-13\n2026-03-11 10:30 off wet\nbatch 1 \"oil\" for stool\n";
    let late = ["will not be ready", "Too late", "late:", "Safe to promise"];
    let mut maker = Maker::told(&[told]);
    maker.room("stool", Room::Dates).shows(&["Fri 13 March", "Tue 17 March"]);
    let mut said = page(&maker.app).html();
    assert!(late.iter().any(|word| said.contains(word)), "{said}");
    for day in ["2026-03-12", "2026-03-14"] {
        let mut maker = Maker::told(&[&format!("{told}{day} 09:00 sell 1 stool for 120 notes fetched\n")]);
        said = page(&maker.app).html();
        said += &page(&maker.open("stool").app).html();
        maker.room("stool", Room::Dates).shows(&["Fri 13 March"]);
        said += &page(&maker.app).html();
        assert!(!late.iter().chain(&["That day is over"]).any(|word| said.contains(word)), "{day}: {said}");
    }
}

/// Four hours thought, by the factor of somebody new 5 h 36: the dates say both.
#[test]
fn a_step_says_what_was_thought_of_it() {
    let mut maker = stool();
    maker.room("stool", Room::Dates).shows(&[
        "saw",
        "5 h 36 (4 h thought × 1.40)",
        "glue seat",
        "1 h 24 (1 h thought × 1.40), then to dry",
        "People take 1.40 of what they think, until your own jobs say otherwise.",
    ]);
    // 4 h with 7.5 % for rework are 4 h 18.
    maker.room("stool", Room::Hours).tap(Tap::Estimate(super::super::estimate::EstimateTap::Factor(false)));
    maker.room("stool", Room::Dates).shows(&["4 h 18 (4 h thought and 7.5 % for rework)"]).hides(&["People take", "1.40"]);
}

/// Three old jobs took 1.42, 1.18 and 1.31 of what was thought: 1.339 of 4 h are 5 h 21.
#[test]
fn the_factor_in_the_dates_says_what_it_is_from() {
    let old = "old-job \"Table\" 1704 min thought 1200 min\nold-job \"Stools\" 1062 min thought 900 min\nold-job \"Shelf\" 786 min thought 600 min\n";
    let told = format!("2026-03-09 08:00 -04:00 workshop USD inch\n{old}job stool \"Stool\" 1 spec\nplan \"saw\" make 240 min for stool\n");
    let mut maker = Maker::told(&[&told]);
    let said = "× 1.339 on what you thought: as your 3 jobs went, the usual 1.4 counting as 2 more.";
    maker.room("stool", Room::Dates).shows(&["5 h 21 (4 h thought × 1.339)", said]);
    // Hands were on it: of the rest nothing was thought.
    let mut maker = Maker::told(&[&format!("{told}09:00 start \"saw\" make on stool\n10:00 stop\n")]);
    maker.room("stool", Room::Dates).shows(&["begun"]).hides(&["1.339"]);
}

/// All four were coated by 10:35 and are dry a day later: the next coat goes on then, as their page says, and waits as long as one coat does.
#[test]
fn a_further_coat_waits_for_the_one_that_is_wet() {
    let begun = "2026-04-18 08:00 -05:00 workshop USD inch\njob stool \"Stools\" 4 order\nends-in \"coat\" coat of oil\n\
        plan \"coat\" make stage finish 90 min for stool\n10:05 start \"coat\" make on stool stage finish\n10:35 clamped 4 coat 1440 min\nstop\n";
    let mut maker = Maker::told(&[begun]);
    maker.open("stool").shows(&["All 4 of them are drying until Sun 19 April 10:35. Then: coat."]);
    maker.room("stool", Room::Dates).shows(&["drying until Sun 19 April 10:35, then 1 h 36, then to dry 1 day, hard after 7 days"]);
    maker.shows(&["Mon 27 April"]);
}
