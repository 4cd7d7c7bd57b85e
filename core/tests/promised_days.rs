//! A day that was promised need be no working day: what is through the day before is in time. By the calendar of March 2026, in which the 1st is a
//! Sunday.

use fivebar_core::bench::wait::What;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Day;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::dates::{Given, Missed, dates, promises};
use fivebar_core::sheet::quote::{Broken, QuoteSheet, quote};
use fivebar_core::story::{Story, tell};

fn march(day: u32) -> Day {
    Day::ymd(2026, 3, day).unwrap()
}

fn nothing_told(_: &str) -> Option<What> {
    None
}

fn look<T>(story: &Story, look: impl Fn(&Shop, Given) -> T) -> T {
    assert_eq!(story.refused, []);
    let waits = fold::waits(&story.book);
    let given = Given { waits: &waits, guess: nothing_told, with_factor: true, now: story.now };
    look(&Shop::of(&story.book, story.now.at), given)
}

/// What dates, list and quote say of the day on which a stool is to be done by: sawing of 84 likely minutes, seen at eight in the morning.
fn missed(day: u32, due: u32, more: &str) -> Option<Missed> {
    let story = tell(&format!(
        "2026-03-01 19:00 -05:00 workshop USD inch\n{more}\n2026-03-{day} 08:00 job stool \"Stool\" 1 order\nplan \"saw\" make 60 min for stool\nabout stool due 2026-03-{due}\n"
    ));
    let job = story.names.job("stool").unwrap();
    let found = look(&story, |shop, given| dates(shop, job, given).unwrap());
    let listed = look(&story, |shop, given| promises(shop, &[job], given)).remove(0).1;
    assert_eq!(found.promise().map(|promise| promise.missed), Some(listed.missed));
    let quoted = look(&story, |shop, given| quote(shop, job, given).unwrap());
    assert_eq!(quoted.missed, found.missed().map(|missed| (march(due), missed.is_likely)));
    found.missed()
}

/// It is through in the course of Saturday the 14th, or of Friday the 13th; Monday is the working day after either.
#[test]
fn a_day_of_use_that_is_no_working_day_is_kept_by_what_is_ready_the_day_before() {
    let weekends = "workdays not sat sun";
    assert_eq!(missed(14, 15, ""), None);
    assert_eq!(missed(14, 16, ""), None);
    assert_eq!(missed(13, 14, weekends), None);
    assert_eq!(missed(13, 15, weekends), None);
    // On the day itself it is missed, and the day that is named for it is one of work.
    for (day, more) in [(14, ""), (13, weekends)] {
        let found = missed(day, day, more).unwrap();
        assert_eq!((found.first, found.is_likely), (march(16), true), "{more}");
    }
}

fn quoted(given: &str, now: &str) -> QuoteSheet {
    let story = tell(&format!(
        "2026-03-13 08:00 -05:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"saw\" make 60 min for stool\nquote stool 100 120 {given}\n{now}\nabout stool note \"x\"\n"
    ));
    let job = story.names.job("stool").unwrap();
    look(&story, |shop, given| quote(shop, job, given).unwrap())
}

/// Quoted on Friday the 13th for Saturday, or if agreed on Thursday the 19th for the Saturday after that; then Saturdays are none of work. Each is
/// kept by what is ready on the Friday before it.
#[test]
fn a_day_that_was_quoted_is_kept_by_what_is_ready_the_day_before() {
    let weekends = "workdays not sat sun";
    assert_eq!(quoted("ready 2026-03-14", weekends).broken, None);
    assert_eq!(quoted("ready 2026-03-13", weekends).broken, Some(Broken::Now { given: march(13), first: march(16) }));
    let last = |day: u32| format!("ready 2026-03-14 until 2026-03-19 last 2026-03-{day}");
    // Agreed on Thursday the 19th it is begun on Friday, and through by Saturday.
    assert_eq!(quoted(&last(21), weekends).broken, None);
    assert_eq!(quoted(&last(20), weekends).broken, Some(Broken::Last { until: march(19), given: march(20), first: march(23) }));
}

/// Sawing of 210 likely minutes, and 310 to be safe, of which 240 go into Tuesday the 10th: for Wednesday it is likely in time by itself, and not safely.
/// Ten minutes of another job move nothing of that, 140 more than there is room for do; and for Thursday nothing is missed but behind 490.
#[test]
fn a_day_is_missed_behind_other_jobs_only_where_they_move_it() {
    let missed = |due: u32, other: u32| {
        let other = format!("job other \"Other\" 1 spec\nplan \"sand\" make {other} min for other\n");
        let story = tell(&format!(
            "2026-03-10 08:00 -05:00 workshop USD inch\njob stool \"Stool\" 1 order\nplan \"saw\" make 150 min for stool\nabout stool due 2026-03-{due}\n{other}"
        ));
        let job = story.names.job("stool").unwrap();
        let found = look(&story, |shop, given| dates(shop, job, given).unwrap()).missed();
        assert_eq!(look(&story, |shop, given| promises(shop, &[job], given))[0].1.missed, found, "{due} {other}");
        found.map(|missed| (missed.is_likely, missed.is_behind))
    };
    assert_eq!([missed(11, 7), missed(11, 100)], [Some((false, false)), Some((true, true))]);
    assert_eq!([missed(12, 7), missed(12, 350)], [None, Some((true, true))]);
}

/// A coat of Monday the 2nd is hard on the 9th, whatever is done on another job.
#[test]
fn what_only_dries_is_behind_no_other_job() {
    let story = tell(
        "2026-03-02 08:00 -05:00 workshop USD inch\nends-in \"coat\" coat 60 min\njob table \"Table\" 1 order\nplan \"coat\" make 30 min for table pieces 1\n\
        about table due 2026-03-06\njob other \"Other\" 1 spec\nplan \"sand\" make 300 min for other\n\
        09:00 start \"coat\" make on table stage finish\n09:30 done 1\nstop\n2026-03-03 08:00 about table note \"x\"\n",
    );
    let found = look(&story, |shop, given| dates(shop, story.names.job("table").unwrap(), given).unwrap());
    assert!(found.rows.iter().all(|row| row.only_waits()) && !found.rows.is_empty(), "{:?}", found.rows);
    assert_eq!(found.missed(), Some(Missed { first: march(10), is_likely: true, is_behind: false }));
}
