//! A stop that was forgotten and not answered for teaches nothing: no operation, no whole piece, no factor, no rework, not what a run
//! usually lasts, and not how long what is offered meanwhile takes. Once it is answered for it does.

use fivebar_core::bench::estimate::spread::whole;
use fivebar_core::bench::repair::Because;
use fivebar_core::quantity::Wall;
use fivebar_core::sheet::bench::{Seen, bench};
use fivebar_core::sheet::meanwhile::{Telling, meanwhile};
use fivebar_core::sheet::{Shop, estimate};
use fivebar_core::story::{Story, tell};

fn told(lines: &str) -> Story {
    let story = tell(&format!("2026-03-01 19:00 -05:00 workshop USD inch\n{lines}\n"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

/// Likely and safe of each row, the ratios of earlier jobs, and of all their time the rework, in minutes.
type Estimated = (Vec<(i64, i64)>, Vec<String>, (i64, i64));

/// A stool that was planned so, with what came of it from 8:00 AM on; the job ends: what is estimated of the next stool.
fn next(planned: &str, came: &str) -> Estimated {
    let story = told(&format!(
        "job stool \"Stool\" 1 order
{planned}
2026-03-02 08:00 {came}
2026-03-03 12:00 end stool
job next \"Next stool\" 1 order
plan \"sand\" make for next"
    ));
    let shop = Shop::of(&story.book, story.now.at);
    let id = story.names.job("next").unwrap();
    let history = shop.history_but(&shop.job(id).unwrap());
    let rows = estimate::estimate(&shop, id, true).unwrap().rows;
    let rows = rows.iter().map(|row| (row.likely.as_minutes(), whole(row.time.at(0.9)).as_minutes())).collect();
    let ratios = history.ratios.iter().map(|ratio| ratio.round_dp(2).to_string()).collect();
    (rows, ratios, (history.rework.as_minutes(), history.all.as_minutes()))
}

#[test]
fn a_night_that_nobody_answered_for_teaches_no_estimate() {
    let planned = "plan \"sand\" make 60 min for stool";
    let night = "start \"sand\" make on stool as sanding\n2026-03-03 07:50 stop\n08:00 ";
    let check = |came: &str, shown: &Estimated| assert_eq!(next(planned, came), *shown, "{came}");
    let (nothing, at_nine) = (next(planned, "copy kept"), next(planned, "start \"sand\" make on stool\n09:00 stop"));
    assert_eq!((&nothing.1, nothing.2), (&vec![], (0, 0)));
    assert_eq!(at_nine, (vec![(60, 128)], vec!["1".into()], (0, 60)));
    check(&format!("{night}copy kept"), &nothing);
    check(&format!("{night}stopped at 2026-03-02 09:00 run sanding"), &at_nine);
    check(&format!("{night}confirm run sanding"), &(vec![(1_430, 3_061)], vec!["23.83".into()], (0, 1_430)));
    // Of a mistake it is no rework either.
    check(&format!("{}copy kept", night.replace("on stool", "on stool rework")), &nothing);
}

/// What is proposed, by its clock, and why; none where nothing is asked.
fn asked(story: &Story) -> Option<((u16, u16), Because)> {
    let sheet = bench(&story.book, Seen { now: story.now, ..Seen::default() });
    let wrong = sheet.running.and_then(|slab| slab.wrong).or_else(|| sheet.to_mend.iter().find_map(|mend| mend.wrong));
    wrong.map(|wrong| (Wall::new(wrong.at, story.now.offset).clock().as_hour_minute(), wrong.because))
}

/// Planed three times for 40 minutes, then left running over three nights; asked about in the next week.
#[test]
fn three_nights_that_nobody_answered_for_are_not_what_is_usual() {
    let planed = |day: u32, from: &str, to: &str| format!("2026-03-{day:02} {from} start \"plane\" make on shelf\n{to} stop\n");
    let three: String = [2, 3, 4].map(|day| planed(day, "08:00", "08:40")).concat();
    let nights: String = [5, 6, 7].map(|day| planed(day, "16:00", &format!("2026-03-{:02} 07:30", day + 1))).concat();
    let check = |before: &str, shown: ((u16, u16), Because)| {
        let story = told(&format!("job shelf \"Shelf\" 1 order\n{before}2026-03-09 09:00 start \"plane\" make on shelf\n16:00 copy kept"));
        assert_eq!(asked(&story), Some(shown), "{before}");
    };
    check(&three, ((9, 40), Because::Usual));
    check(&format!("{three}{nights}"), ((9, 40), Because::Usual));
    check(&nights, ((10, 0), Because::Default));
    // However long ago they were, when nobody is asked about them any more.
    let story =
        told(&format!("job shelf \"Shelf\" 1 order\n{three}{nights}2026-05-09 09:00 start \"plane\" make on shelf\n16:00 copy kept"));
    assert_eq!(asked(&story), Some(((9, 40), Because::Usual)));
    // A long run within its plan is nothing to ask about, and says what is usual.
    let within: String = [2, 3, 4].map(|day| planed(day, "08:00", "11:20")).concat();
    check(&format!("plan \"plane\" make 1200 min for shelf\n{within}"), ((12, 20), Because::Usual));
}

/// Planed from 8:00 to 11:30 AM on three days, with a note on the job at 11:00: it is not asked about, so it says what is usual. Left running on
/// a fourth day, nine to five: no longer than 210 minutes in 80 of 100. Noted at 8:30 only, each is asked about, and says nothing.
#[test]
fn a_run_that_is_not_asked_about_says_what_is_usual() {
    let check = |noted: &str, asked_of: usize, shown: ((u16, u16), Because)| {
        let planed = |day: u32| {
            format!("2026-03-{day:02} 08:00 start \"plane\" make on shelf\n{noted} about shelf note \"it goes well\"\n11:30 stop\n")
        };
        let three: String = [2, 3, 4].map(planed).concat();
        let before = told(&format!("job shelf \"Shelf\" 1 order\n{three}"));
        assert_eq!(bench(&before.book, Seen { now: before.now, ..Seen::default() }).to_mend.len(), asked_of, "{noted}");
        let story = told(&format!("job shelf \"Shelf\" 1 order\n{three}2026-03-09 09:00 start \"plane\" make on shelf\n17:00 copy kept"));
        assert_eq!(asked(&story), Some(shown), "{noted}");
    };
    check("11:00", 0, ((12, 30), Because::Usual));
    check("08:30", 3, ((10, 0), Because::Default));
}

/// Sharpened for 20 minutes, and once over night; glue waits for an hour and a half.
#[test]
fn what_is_offered_meanwhile_is_no_night() {
    let fits = |sharpened: &str| {
        let story = told(&format!(
            "job shelf \"Shelf\" 1 order
2026-03-02 08:00 start \"sharpen\" make
08:20 stop
{sharpened}
2026-03-05 09:00 wait \"glue\" glue n 1 for shelf 90 min"
        ));
        let telling = Telling { loud: |_| false, of_part: |_| false };
        let seen = Seen { now: story.now, ..Seen::default() };
        let found = meanwhile(&Shop::of(&story.book, story.now.at), seen, telling, true).unwrap().fits;
        found.iter().map(|fit| (fit.what.op.clone(), fit.span.as_minutes())).collect::<Vec<_>>()
    };
    let twenty = [("sharpen".to_owned(), 20)];
    assert_eq!(fits(""), twenty);
    assert_eq!(fits("2026-03-03 16:00 start \"sharpen\" make\n2026-03-04 07:30 stop"), twenty);
}

/// Carved from 8:00 AM; nothing was planned, and never was anything carved before.
#[test]
fn pieces_of_the_same_day_are_acts() {
    let check = |lines: &str, shown: Option<((u16, u16), Because)>| {
        let story = told(&format!("job shelf \"Shelf\" 1 order\n2026-03-02 08:00 start \"carve\" make on shelf as carving\n{lines}"));
        assert_eq!(asked(&story), shown, "{lines}");
    };
    check("11:05 done 1\n11:30 done 1\n11:40 stop", None);
    check("11:05 done 1\n11:30 done 1\n13:00 copy kept", Some(((11, 30), Because::LastAct)));
    check("11:05 done 1\n11:30 done 1\n16:00 stop", Some(((11, 30), Because::LastAct)));
    check("19:30 done 1\n19:40 stop", None);
    // After twelve hours, and on another day, it says nothing of the hours before.
    check("20:30 done 1\n20:40 stop", Some(((9, 0), Because::Default)));
    check("2026-03-03 07:50 done 1\n08:00 stop", Some(((9, 0), Because::Default)));
    // Pieces in less than an hour each go on over midnight.
    let all_along =
        "11:00 done 1\n14:00 done 1\n17:00 done 1\n19:30 done 1\n20:20 done 1\n21:10 done 1\n22:00 done 1\n22:50 done 1\n23:40 done 1";
    check(&format!("{all_along}\n2026-03-03 00:30 done 1\n00:40 stop"), None);
}

/// Sanded from 8:30, one done at 8:50; then nobody noted anything until 15:30, when it was asked about for long. The next piece counts, and answers
/// nothing: 20 minutes stand. Within five hours of the one before it does, and at a stall any of that day, where hours pass between sales.
#[test]
fn a_piece_noted_while_it_is_asked_about_answers_nothing() {
    let check = |lines: &str, shown: Option<((u16, u16), Because)>| {
        let story = told(&format!("job table \"Table\" 5 order\n2026-03-02 08:30 start {lines}"));
        assert_eq!(asked(&story), shown, "{lines}");
        story
    };
    let sand = "\"sand\" make on table as sanding\n08:50 done 1\n";
    let still = Some(((8, 50), Because::LastAct));
    let first = check(&format!("{sand}15:29 copy kept"), still);
    for more in ["15:30 done 1\n15:31 copy kept", "15:30 done 1\n15:50 done 1\n16:00 stop", "13:51 done 1\n13:52 copy kept"] {
        let story = check(&format!("{sand}{more}"), still);
        let bench = fivebar_core::ledger::fold::bench(&story.book);
        let (run, before) = (bench.runs().next().unwrap(), fivebar_core::ledger::fold::bench(&first.book));
        let stands = |bench: &fivebar_core::bench::Bench| bench.stands_to(bench.runs().next().unwrap(), story.now.at);
        assert_eq!((stands(&bench), run.done() > 1), (stands(&before), true), "{more}");
    }
    check(&format!("{sand}13:49 done 1\n13:50 copy kept"), None);
    check(&format!("{sand}15:30 confirm run sanding\n15:31 done 1\n15:40 copy kept"), None);
    check("\"fair\" sell on table\n08:50 done 1\n15:30 done 1\n15:31 copy kept", None);
}

/// One thing is made all day from 8:00 on, and noted at its end, at 16:30; somebody came to help, the start was put right or a note was written
/// meanwhile. The first piece of the day speaks for its hours all the same, also one that is put to wait. Who came to help at 9:00 says nothing of
/// an afternoon in which nothing is noted, and of two pieces the second answers nothing.
#[test]
fn the_first_piece_of_a_day_speaks_for_it_whatever_else_was_noted() {
    let check = |lines: &str, shown: Option<((u16, u16), Because)>| {
        let begun = "person ada helper\njob table \"Table\" 5 order\n2026-03-02 08:00 start \"carve\" make on table as carving";
        assert_eq!(asked(&told(&format!("{begun}\n{lines}"))), shown, "{lines}");
    };
    let helper = "09:00 helper joins ada 15";
    for early in [helper, "09:00 mend start 2026-03-02 08:10", "09:00 about table note \"x\""] {
        for piece in ["done 1", "clamped 1 glue"] {
            check(&format!("{early}\n16:30 {piece}\n16:40 stop"), None);
        }
    }
    let nine = Some(((9, 0), Because::LastAct));
    check(&format!("{helper}\n16:40 stop"), nine);
    for first in ["done 1", "clamped 1 glue"] {
        check(&format!("09:00 {first}\n16:30 done 1\n16:40 stop"), nine);
    }
}

/// Two of five are carved, at 11:05 and 11:30, of a run that ended at 11:40: the pace of the batch is that of the list of the day.
#[test]
fn bench_and_day_keep_one_pace() {
    use fivebar_core::bench::On;
    let story = told(
        "job shelf \"Shelf\" 1 order\nbatch 5 \"carve\" for shelf\n2026-03-02 08:00 start \"carve\" make on shelf\n11:05 done 1\n11:30 done 1\n11:40 stop",
    );
    let bench = fivebar_core::ledger::fold::bench(&story.book);
    let batch = bench.batch(On::Job(story.names.job("shelf").unwrap()), "carve", story.now.at);
    assert_eq!((batch.pace().map(|pace| pace.as_minutes()), batch.unsettled.as_minutes()), (Some(105), 0));
}

/// Begun Monday at 2:00 PM and not stopped, seen on Tuesday at 7:50 AM: minutes of Monday and Tuesday, and of the week, on every page alike.
#[test]
fn bench_day_week_and_year_count_alike() {
    use fivebar_core::ledger::fold;
    use fivebar_core::sheet::day::day;
    use fivebar_core::sheet::hours::{week, year};
    let check = |lines: &str, [monday, tuesday]: [i64; 2], (unsettled, open): (u32, [bool; 2])| {
        let story = told(&format!("job shelf \"Shelf\" 1 order\n2026-03-02 14:00 start \"plane\" make on shelf as planing\n{lines}"));
        let seen = Seen { now: story.now, ..Seen::default() };
        let (bench_of, today) = (fold::bench(&story.book), story.now.day());
        let first = fivebar_core::quantity::Day::ymd(2026, 3, 2).unwrap();
        let days = [first, first.next()].map(|of| day(&story.book, of, seen));
        let sheet = bench(&story.book, seen);
        let folded = (&bench_of, &story.book);
        let (week, year) = (week(folded, today, seen), year(folded, 2026, seen));
        let minutes = days.each_ref().map(|day| day.total.own.total().as_minutes());
        assert_eq!(minutes, [monday, tuesday], "{lines}");
        assert_eq!(sheet.today.as_minutes(), if today == first { monday } else { tuesday }, "{lines}");
        assert_eq!([&week, &year].map(|sum| sum.own.total().as_minutes()), [monday + tuesday; 2], "{lines}");
        assert_eq!([sheet.unsettled, days[0].unsettled, week.unsettled, year.unsettled], [unsettled; 4], "{lines}");
        assert_eq!(days.each_ref().map(|day| day.any_open()), open, "{lines}");
    };
    let night = "2026-03-03 07:50 copy kept";
    check("20:00 copy kept", [0, 0], (1, [true, false]));
    check(night, [0, 0], (1, [true, true]));
    check("2026-03-03 07:50 stop", [0, 0], (1, [true, true]));
    check(&format!("{night}\nconfirm run planing"), [600, 470], (0, [false, false]));
    check(&format!("{night}\nstopped at 2026-03-02 15:00 run planing"), [60, 0], (0, [false, false]));
}
