//! One figure is likely of a job, whichever page says it, and what stands below it adds up to it.

use fivebar_core::quantity::Span;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::account::account;
use fivebar_core::sheet::dates::{DateRow, Given, dates, promises};
use fivebar_core::sheet::estimate::{EstimateSheet, Row, estimate};
use fivebar_core::sheet::quote::quote;
use fivebar_core::story::tell;

const BENCH: &str = include_str!("../../tests/stories/bench.txt");
const STANDS: &str = include_str!("../../tests/stories/stands.txt");
const ESTIMATES: &str = include_str!("../../tests/stories/estimates.txt");

/// Three operations and a drive, no history.
const CABINET: &str = "
2026-05-04 08:00 +02:00 workshop EUR metric
rate pay 17 hours 600 logged 480 costs 1440
job cabinet \"Cabinet\" 1 spec
about cabinet piece boat
plan \"saw\" make 95 min for cabinet
plan \"glue\" make 35 min for cabinet
plan \"sand\" make 65 min for cabinet
plan \"drive\" deliver 65 min for cabinet
";

const OLD: &str = "old-job \"Old one\" 1704 min thought 1200 min\nold-job \"Old two\" 1062 min thought 900 min\nold-job \"Old three\" 786 min thought 600 min\n";

fn minutes(spans: impl Iterator<Item = Span>) -> i64 {
    spans.map(Span::as_minutes).sum()
}

#[track_caller]
fn check(story: &str, name: &str) {
    for with_factor in [true, false] {
        let story = tell(story);
        let (shop, job) = (Shop::of(&story.book, story.now.at), story.names.job(name).unwrap());
        let waits = fivebar_core::ledger::fold::waits(&story.book);
        let given = Given { waits: &waits, guess: |_| None, with_factor, now: story.now };
        let sheet = estimate(&shop, job, with_factor).unwrap();
        let EstimateSheet { found, to_come, progress, .. } = &sheet;
        let found = found.as_ref().unwrap_or_else(|| panic!("{name}: something is known"));
        let (in_all, to_come) = (sheet.in_all().unwrap(), to_come.unwrap());
        // What is estimated is what the rows show, and what is to come is what they have left.
        assert_eq!(minutes(sheet.rows.iter().map(|row| row.likely)), found.range.likely.as_minutes(), "{name}");
        let left = sheet.rows.iter().map(Row::to_come).chain(sheet.counted.iter().map(|one| one.to_come()));
        assert_eq!(minutes(left), to_come.likely.as_minutes(), "{name}");
        assert_eq!(Some(to_come.likely), progress.to_come, "{name}");
        assert_eq!(sheet.hands(), to_come.likely, "{name}");
        // All of it is what is logged and what is to come, here and in a quote, which has the job's part of its hauls too.
        assert_eq!(in_all.likely, progress.so_far.plus(to_come.likely), "{name}");
        assert!(progress.ends.is_none_or(|ends| ends == in_all.likely), "{name}");
        assert_eq!(progress.so_far == Span::ZERO, in_all.likely == found.range.likely && progress.ends.is_none(), "{name}");
        let quote = quote(&shop, job, given).unwrap();
        assert_eq!([quote.likely, quote.safe].map(|span| span.minus(quote.hauls)), [in_all.likely, in_all.safe], "{name}");
        assert!(in_all.low <= in_all.likely && in_all.likely <= in_all.safe, "{name}");
        // Hands in its dates are those of its rows, but for what is done on the day itself.
        let on_wood =
            sheet.rows.iter().filter(|row| matches!(row.kind, fivebar_core::bench::Kind::Make | fivebar_core::bench::Kind::Fetch));
        let on_wood = on_wood.map(Row::to_come).chain(sheet.counted.iter().map(|one| one.to_come()));
        let dated = dates(&shop, job, given).unwrap();
        assert_eq!(minutes(dated.rows.iter().map(|row| row.hands)), minutes(on_wood), "{name}");
        // Many jobs at once are promised by the same figures.
        let next = |rows: &[DateRow]| rows.first().map(|row| (row.op.clone(), row.hands, row.last));
        let promised = promises(&shop, &[job], given).pop().map(|(_, promise)| next(promise.next.as_slice()));
        assert_eq!(promised, dated.due.map(|_| next(&dated.rows)), "{name}");
        if with_factor {
            let hours = account(&shop, job).unwrap().hours;
            assert_eq!(hours.to_come, progress.to_come, "{name}: as prices count it");
            assert_eq!(
                hours.total.map(|total| total.minus(quote.hauls).minus(hours.unsettled)).unwrap_or_default(),
                progress.so_far,
                "{name}"
            );
        }
    }
}

/// A bench is 20 h as a whole, 360 min of them planned, 95 of these for the saw. Sawn in 61: by the plan 1,200 - 364 are to come, and what
/// was just sawn tells nothing of this very job.
#[test]
fn what_a_job_has_done_teaches_the_job_itself_nothing() {
    let bench = CABINET.replace("piece boat", "piece bench");
    let sawn = "batch 1 \"saw\" for cabinet\n09:00 start \"saw\" make on cabinet\n10:01 done 1\nstop\n";
    check(&format!("{bench}{sawn}"), "cabinet");
    check(&format!("{bench}{OLD}{sawn}"), "cabinet");
    let due = "agree 900 for 1 cabinet fetched due 2026-05-22\n";
    check(&format!("{bench}{due}{sawn}"), "cabinet");
    check(&format!("{bench}{OLD}{due}{sawn}"), "cabinet");
}

/// Ten hours of work that nobody planned, and then: it is made, one of two is gone. Whatever such a piece takes, nothing is to
/// come, but for counted pieces that are left.
#[test]
fn a_whole_piece_that_is_made_takes_no_more() {
    const WORKED: &str = "2026-05-04 08:00 +02:00 workshop EUR metric\nrate pay 17 hours 600 logged 480 costs 1440\n\
        job seat \"Seat\" 2 spec\nstart \"work\" make on seat\n18:00 stop\n";
    let made = |more: &str, to_come: i64| {
        for what in ["about seat piece bench\n", "old-job \"Old one\" 1704 min\n"] {
            let told = format!("{WORKED}{more}{what}");
            check(&told, "seat");
            let story = tell(&told);
            assert_eq!(story.refused, [], "{told}");
            let hours = account(&Shop::of(&story.book, story.now.at), story.names.job("seat").unwrap()).unwrap().hours;
            assert_eq!(hours.to_come.map(Span::as_minutes), Some(to_come), "{told}");
        }
    };
    made("all-planned seat\n", 0);
    made("spend 5 glue on seat\nsell 1 seat for 300 bank fetched\n", 0);
    let joints = "start \"joint\" make on seat\nbatch 8 \"joint\" for seat\n18:32 done 4\nstop\n";
    made(&format!("{joints}all-planned seat\n"), 32);
}

#[test]
fn one_figure_is_likely_on_every_page() {
    check(CABINET, "cabinet");
    check(&format!("{CABINET}{OLD}"), "cabinet");
    // Sawn in 61 min 20 s and done, glued for 17 min 40 s and left.
    let half = "09:00 start \"saw\" make on cabinet\n10:01 done 1\nstop\n10:10 start \"glue\" make on cabinet\n10:28 stop\n";
    check(&format!("{CABINET}{half}"), "cabinet");
    check(&format!("{CABINET}{OLD}{half}"), "cabinet");
    // With work beside the plan, and counted pieces of an operation that nobody planned.
    let beside = "10:30 start \"turn\" make on cabinet\nbatch 8 \"turn\" for cabinet\n11:01 done 3\nstop\n";
    check(&format!("{CABINET}{OLD}{half}{beside}"), "cabinet");
    check(&format!("{CABINET}all-planned cabinet\n{OLD}{half}"), "cabinet");
    // All but the drive is done.
    let made = "12:00 start \"glue\" make on cabinet\n12:20 done 1\nstop\n12:30 start \"sand\" make on cabinet\n14:00 done 1\nstop\n";
    check(&format!("{CABINET}{OLD}{half}{made}"), "cabinet");
    // A batch of five, half of them noted.
    let batch = CABINET.replace("\"Cabinet\" 1 spec", "\"Cabinet\" 5 spec");
    check(&format!("{batch}{OLD}09:00 start \"saw\" make on cabinet\n09:40 done 2\n09:47 stop\n"), "cabinet");
    check(ESTIMATES, "more");
    check(ESTIMATES.split("# --- Half of it").next().unwrap(), "more");
    check(BENCH.split("2026-05-11").next().unwrap(), "bench");
    check(STANDS.split("2026-03-14").next().unwrap(), "stands");
}
