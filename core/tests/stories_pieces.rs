//! How many pieces an operation has: what was planned and what was said at the bench, as every page says it.

use fivebar_core::bench::On;
use fivebar_core::ledger::fold;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::bench::{Seen, bench};
use fivebar_core::sheet::job::{NextAct, job};
use fivebar_core::story::{Story, tell};

const DAY: &str = "2026-03-02 08:00 -05:00 workshop USD inch\njob stools \"Stools\" 5 order\n";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{DAY}{lines}"));
    assert_eq!(story.refused, []);
    story
}

/// The pieces of an operation: done, of how many at the bench, and how many the plan shows.
#[track_caller]
fn check(lines: &str, op: &str, shown: (u32, Option<u32>, Option<u32>)) {
    let story = told(lines);
    let id = story.names.job("stools").unwrap();
    let batch = fold::bench(&story.book).batch(On::Job(id), op, story.now.at);
    let planned = fold::job(&story.book, id).unwrap().operations.into_iter().find(|planned| planned.op == op);
    assert_eq!((batch.n, batch.of, planned.and_then(|planned| planned.pieces)), shown, "{lines}");
}

/// Coats on five stools: the number that was planned stands once one dries, and a sixth is a second coat of the first (see `sheet/waits.rs`).
#[test]
fn a_coat_is_of_as_many_pieces_as_were_planned() {
    let oil = "plan \"oil\" make 60 min for stools pieces 5\n09:00 start \"oil\" make on stools\n";
    check(&format!("{oil}09:30 done 5"), "oil", (5, Some(5), Some(5)));
    check(&format!("{oil}09:30 clamped 5 coat"), "oil", (5, Some(5), Some(5)));
    check(&format!("{oil}09:30 clamped 5 coat\n10:00 clamped 1 coat"), "oil", (6, Some(5), Some(5)));
    check(&format!("{oil}09:30 clamped 5 glue"), "oil", (5, Some(5), Some(5)));
    // It may wait for itself, and what was said at the bench is of coats as well.
    check(&format!("{oil}09:30 done 2\nwait \"oil\" coat for stools"), "oil", (2, Some(5), Some(5)));
    check(&format!("{oil}09:30 clamped 5 coat\nbatch 15 \"oil\" for stools"), "oil", (5, Some(15), Some(15)));
}

#[test]
fn the_later_word_on_how_many_there_are_counts_on_every_page() {
    let trim = "plan \"trim\" make 60 min for stools pieces 3\n";
    check(trim, "trim", (0, Some(3), Some(3)));
    let four = format!("{trim}batch 4 \"trim\" for stools\n");
    check(&four, "trim", (0, Some(4), Some(4)));
    check(&format!("{four}plan \"trim\" make 60 min for stools pieces 8"), "trim", (0, Some(8), Some(8)));
    check(&format!("{four}plan \"trim\" make 60 min for stools"), "trim", (0, None, None));
    // What was said at the bench of what nobody had planned stands where the plan says nothing of it.
    let said = "batch 4 \"trim\" for stools\n";
    check(said, "trim", (0, Some(4), None));
    check(&format!("{said}plan \"trim\" make 60 min for stools"), "trim", (0, Some(4), Some(4)));
}

/// Trim and glue are worked and stopped, and no piece was tapped: the bench and the job's page say what comes next.
#[test]
fn what_is_worked_without_notes_is_behind_on_both_pages() {
    let plan = "plan \"trim\" make for stools pieces 5\nplan \"glue\" make for stools pieces 5\nplan \"sand\" make for stools";
    let next = |lines: &str| {
        let seen = told(&format!("{plan}\n{lines} stop\n12:00 start \"messages\" office on stools"));
        let rack = bench(&seen.book, Seen { now: seen.now, ..Seen::default() }).rack;
        let at_bench = rack.next.and_then(|next| rack.below.get(next)).map(|choice| choice.op.clone());
        let stopped = told(&format!("{plan}\n{lines} stop"));
        let (shop, id) = (Shop::of(&stopped.book, stopped.now.at), stopped.names.job("stools").unwrap());
        let NextAct::WorkOn { op } = job(&shop, id).unwrap().next else { unreachable!() };
        (at_bench.unwrap_or_default(), op.unwrap_or_default())
    };
    let both = |op: &str| (op.to_owned(), op.to_owned());
    assert_eq!(next("09:00 start \"trim\" make on stools\n09:30 start \"glue\" make on stools\n10:00"), both("sand"));
    assert_eq!(next("09:00 start \"trim\" make on stools\n09:30 done 3\n10:00 start \"glue\" make on stools\n11:00"), both("trim"));
    let said = "batch 5 \"trim\" for stools\n09:00 start \"trim\" make on stools\n10:00 start \"glue\" make on stools\n11:00";
    assert_eq!(next(said), both("trim"), "it was said at the bench, with the same number");
}
