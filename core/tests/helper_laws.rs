//! Laws of who works along: nobody who was named is paid twice for one minute, whatever was said of their times and in whatever order.

use fivebar_core::bench::{Head, On};
use fivebar_core::ledger::decide::{BenchCommand, Command, Now, decide};
use fivebar_core::ledger::{Clock, Device, fold};
use fivebar_core::quantity::{Id, Moment, Span};
use fivebar_core::story::{Story, tell};
use proptest::prelude::*;
use std::fmt::Write;

const BOOK: &str = "2026-03-02 09:00 +00:00 workshop EUR metric\nperson ada helper\nperson ben helper\njob shelf \"Shelf\" 1 order\n";

/// Joins and leaves of two named helpers at two runs, the second of which a switch begins.
fn told(words: &[(i64, u8)]) -> String {
    let mut text = format!("{BOOK}10:00 start \"carry\" make on shelf\n");
    let mut minute = 600;
    for (after, what) in words {
        minute += after;
        let said = match what {
            0 => "helper joins ada 20",
            1 => "helper leaves ada",
            2 => "helper joins ben 10",
            3 => "helper leaves ben",
            _ => "start \"glue\" make on shelf",
        };
        writeln!(text, "{:02}:{:02} {said}", minute / 60, minute % 60).unwrap();
    }
    writeln!(text, "{:02}:{:02} stop", (minute + 20) / 60, (minute + 20) % 60).unwrap();
    text
}

/// Each minute a person stood at any run, as from and to.
fn stood(story: &Story, person: Option<Id>) -> Vec<(Moment, Moment)> {
    let (bench, now) = (fold::bench(&story.book), story.now.at);
    let mut all: Vec<(Moment, Moment)> = vec![];
    for run in bench.runs() {
        let (start, end) = (run.started.at, run.end(now));
        let own = run.heads.iter().filter(|head| head.person == person && Span::ZERO < head.within(start, end));
        all.extend(own.map(|head: &Head| (head.from.max(start), head.to.unwrap_or(end).min(end))));
    }
    all.sort();
    all
}

proptest! {
    /// No minute is paid twice: two stays of one person never overlap, in one run or in two, and what was paid is what they stood.
    #[test]
    fn no_minute_of_a_named_helper_is_paid_twice(
        words in proptest::collection::vec((1_i64..30, 0_u8..5), 1..14),
        mends in proptest::collection::vec((0_usize..8, -40_i64..40, -40_i64..40), 0..8),
    ) {
        let mut story = tell(&told(&words));
        let (first, mut clock) = (story.book.clone(), Clock::new(Device::read("b").unwrap(), story.book.last_stamp()));
        // Each is said on a phone that knows of none of the others.
        for (said, (nth, came, went)) in (0_u8..).zip(mends) {
            let bench = fold::bench(&first);
            let heads: Vec<(Id, Head)> = bench.runs().flat_map(|run| run.heads.iter().map(|head| (run.id, *head))).collect();
            let Some((run, head)) = heads.get(nth % heads.len().max(1)).copied() else { continue };
            let off = |at: Moment, by: i64| if by < 0 { at.minus(Span::minutes(-by)) } else { at.plus(Span::minutes(by)) };
            let (from, to) = (off(head.from, came), off(head.to.unwrap_or(head.from.plus(Span::minutes(30))), went));
            let mend = BenchCommand::MendHelper { run, helper: head.id, from: Some(from), to: Some(to), pay: None };
            let now = Now { wall: story.now, chance: [said; 10] };
            let Ok(act) = decide(&first, &Command::Bench(mend), now) else { continue };
            act.stamped(&first, &mut clock).iter().for_each(|entry| drop(story.book.add(entry)));
        }
        let bench = fold::bench(&story.book);
        for person in ["ada", "ben"].map(|name| story.names.person(name)) {
            let all = stood(&story, person);
            prop_assert!(all.windows(2).all(|pair| pair[0].1 <= pair[1].0), "{:?}", all);
            let paid = bench.on(On::Job(story.names.job("shelf").unwrap())).flat_map(|run| run.paid(story.now.at));
            let paid = Span::sum(paid.filter(|one| one.0 == person).map(|one| one.2));
            prop_assert_eq!(paid, Span::sum(all.iter().map(|(from, to)| from.until(*to))));
        }
    }
}
