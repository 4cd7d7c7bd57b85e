//! A piece that turns out bad after a job took it: it is rejected where the pile is sorted, and the job has it no more.

use fivebar_core::ledger::fold;
use fivebar_core::quantity::Count;
use fivebar_core::refusal::Refusal;
use fivebar_core::story::{Why, tell};

const TAKEN: &str = "2026-03-02 09:00 -05:00 workshop USD inch\njob stool \"Stool\" 1 order\njob desk \"Desk\" 1 order\nleave for yard\n\
                     pile ash ash-white 1 x 2 x 18 in\ncount 5 ash\n";

/// Rejected, on the rack, and what the stool and the desk have, after more lines; the last refusal, if any.
#[track_caller]
fn check(lines: &str, figures: [Count; 4], refused: Option<Refusal>) {
    let story = tell(&format!("{TAKEN}{lines}"));
    assert_eq!(
        story.refused.iter().map(|(_, why)| why.clone()).collect::<Vec<_>>(),
        refused.into_iter().map(Why::Refused).collect::<Vec<_>>(),
        "{lines}"
    );
    let pile = fold::hauls(&story.book).flat_map(|haul| haul.piles).next().unwrap();
    let [stool, desk] = ["stool", "desk"].map(|job| pile.in_job(story.names.job(job).unwrap()));
    assert_eq!([pile.rejected(), pile.on_rack(), stool, desk], figures, "{lines}");
}

#[test]
fn it_is_put_back_and_rejected_at_once() {
    let all = "take 5 ash for stool\n";
    check(&format!("{all}good 3 ash\nreject 1 ash crack"), [1, 0, 4, 0], None);
    // What lies on the rack goes first; the job gives what lacks.
    check("take 3 ash for stool\nreject 3 ash knot", [3, 0, 2, 0], None);
    check("take 3 ash for stool\nreject 6 ash knot", [0, 2, 3, 0], Some(not_that_many(6, 5)));
    // One act: taken back together, and done again together.
    check(&format!("{all}reject 2 ash crack as bad\nundo bad"), [0, 0, 5, 0], None);
    check(&format!("{all}reject 2 ash crack as bad\nundo bad\nrestore bad"), [2, 0, 3, 0], None);
    check(
        &format!("{all}reject 2 ash crack as bad\nundo bad\nfree 4 ash from stool\nrestore bad"),
        [0, 4, 1, 0],
        Some(of_the_pile(not_that_many(2, 1))),
    );
}

#[test]
fn where_several_jobs_have_some_it_is_asked_which() {
    let both = "take 3 ash for stool\ntake 2 ash for desk\n";
    check(&format!("{both}reject 1 ash crack"), [0, 0, 3, 2], Some(Refusal::InJobs { asked: 1, jobs: 2 }));
    check(&format!("{both}free 1 ash from desk\nreject 1 ash crack"), [1, 0, 3, 1], None);
    // A job that is done with keeps what it is made of.
    check(&format!("{both}end desk\nreject 1 ash crack"), [1, 0, 2, 2], None);
    check("take 5 ash for stool\nend stool\nreject 1 ash crack", [0, 0, 5, 0], Some(not_that_many(1, 0)));
}

/// What is done again may be of several piles, so it says which.
fn of_the_pile(why: Refusal) -> Refusal {
    Refusal::OfPile { pile: "ash, A".into(), why: Box::new(why) }
}

fn not_that_many(asked: Count, there: Count) -> Refusal {
    Refusal::NotThatMany { asked, there }
}
