//! The stories of a haul whose jobs end at different times, and of a rack that drifts: every figure reasoned, and the whole shared to
//! the cent and the minute.

use fivebar_core::ledger::Book;
use fivebar_core::money::share::Share;
use fivebar_core::quantity::{Money, Span};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::{Shop, account, haul as sheet, stock};
use fivebar_core::story::{Story, Why, tell};

const THREE_JOBS: &str = include_str!("../../tests/stories/three-jobs.txt");
const RACK_DRIFT: &str = include_str!("../../tests/stories/rack-drift.txt");

fn up_to(text: &str, heading: &str) -> Story {
    tell(text.split(heading).next().unwrap())
}

fn said(share: Share) -> (String, i64) {
    (share.cost.to_string(), share.time.as_minutes())
}

/// What each job carries, in the order of `jobs`, then the rack and the workshop; all of it is the whole haul.
#[track_caller]
fn check(story: &Story, jobs: &[&str], shares: &[(&str, i64)]) {
    let shop = Shop::of(&story.book, story.now.at);
    let haul = sheet::haul(&shop, story.names.haul("works").unwrap()).unwrap();
    let of = |name: &str| haul.jobs.iter().find(|(job, _)| Some(*job) == story.names.job(name)).map(|(_, share)| *share);
    let all: Vec<Share> = jobs.iter().filter_map(|name| of(name)).chain(haul.rack).chain(haul.workshop).collect();
    let told: Vec<(String, i64)> = all.iter().copied().map(said).collect();
    assert_eq!(told, shares.iter().map(|(cost, minutes)| ((*cost).to_owned(), *minutes)).collect::<Vec<_>>());
    let cost = Money::sum(haul.currency, all.iter().map(|share| share.cost)).unwrap();
    let time = Span::sum(all.iter().map(|share| share.time));
    assert_eq!((Some(cost), time), (haul.costs, haul.wheel.plus(haul.bin).plus(haul.sorting)), "the parts make up the whole");
}

const JOBS: [&str; 3] = ["stool", "stand", "shelf"];

#[test]
fn three_jobs_on_one_haul_and_one_is_done_before_more_rejects() {
    assert_eq!(tell(THREE_JOBS).refused, []);
    // 30 good pieces for 30.00 and 90 min: 1.00 and 3 min a piece; ten lie on the rack.
    let before = up_to(THREE_JOBS, "# --- only now");
    check(&before, &JOBS, &[("10.00 USD", 30), ("10.00 USD", 30), ("10.00 USD", 30), ("0.00 USD", 0)]);
    // 24 good ones bear it now: 1.25 and 3.75 min a piece. The stool is done and keeps 10.00 and 30; by today it would carry 12.50 and
    // 38 (37.5, half up): the workshop bears the difference. The stand goes on: 12.50 and 38. Four on the rack: what is left of the
    // whole, 30.00 - 10.00 - 12.50 - 2.50 and 90 - 30 - 38 - 8.
    let rejected = up_to(THREE_JOBS, "# --- the shelf takes two");
    check(&rejected, &JOBS, &[("10.00 USD", 30), ("12.50 USD", 38), ("5.00 USD", 14), ("2.50 USD", 8)]);
    // The shelf's two: 2.50 and 8 (7.5, half up). Two burnt: 2.50 and 8 more to the workshop, 5.00 and 16. Nothing is left on the rack,
    // which then holds nothing: the two minutes that half up took too much come off the workshop's, 90 - 30 - 38 - 8.
    check(&tell(THREE_JOBS), &JOBS, &[("10.00 USD", 30), ("12.50 USD", 38), ("2.50 USD", 8), ("0.00 USD", 0), ("5.00 USD", 14)]);
}

#[test]
fn the_share_of_a_job_that_is_done_stands_in_its_account() {
    let story = tell(THREE_JOBS);
    let shop = Shop::of(&story.book, story.now.at);
    let total = |name: &str| account::account(&shop, story.names.job(name).unwrap()).unwrap().costs.total.map(|sum| sum.to_string());
    assert_eq!(JOBS.map(total), ["10.00 USD", "12.50 USD", "2.50 USD"].map(|sum| Some(sum.to_owned())));
}

#[test]
fn a_rack_drifts_and_no_share_of_a_job_moves() {
    // 40 good for 20.00 and 100 min: 0.50 and 2.5 min a piece. 18 for the bench: 9.00 and 45; 22 on the rack: 11.00 and 55.
    let before = up_to(RACK_DRIFT, "# --- twelve weeks later");
    check(&before, &["bench"], &[("9.00 EUR", 45), ("11.00 EUR", 55), ("0.00 EUR", 0)]);
    let rack = |story: &Story| stock::stock(&Shop::of(&story.book, story.now.at)).unwrap();
    let told = rack(&before)[0].drift_of(19);
    assert_eq!((told.told, told.found, told.missing, told.more), (22, 19, 3, 0));
    // Three are missing: 1.50 and 8 min (7.5, half up) go to the workshop; 19 lie on the rack with the rest.
    let drifted = up_to(RACK_DRIFT, "# --- and more than are there");
    check(&drifted, &["bench"], &[("9.00 EUR", 45), ("9.50 EUR", 47), ("1.50 EUR", 8)]);
    // One turned up: two are missing, 1.00 and 5 min.
    let found = tell(RACK_DRIFT);
    check(&found, &["bench"], &[("9.00 EUR", 45), ("10.00 EUR", 50), ("1.00 EUR", 5)]);
    let lippings = rack(&found).remove(0);
    assert_eq!((lippings.on_rack, lippings.drift, lippings.is_stale), (20, -2, false));
    // More than lie there were never taken, and the refusals name both figures.
    let wanted = Why::Refused(Refusal::NotThatMany { asked: 20, there: 19 });
    assert_eq!(found.refused.iter().map(|(_, why)| why.clone()).collect::<Vec<_>>(), [wanted.clone(), wanted]);
}

/// Ten were counted, fifteen lay there, and a job takes all: it carries the haul whole, and so it ends.
#[test]
fn a_surplus_of_the_rack_makes_no_job_carry_more_than_the_haul() {
    let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for works\ntrip wheel 60 min bin 30 min\n\
        pile ash ash-white 1 x 2 x 20 in\ncount 10 ash\nspend 10.00 gift on works\njob stools \"Stools\" 1 spec\njob desk \"Desk\" 1 spec\n\
        rack 15 ash\n";
    let jobs = ["stools", "desk"];
    let cases: [(&str, &[(&str, i64)]); 5] = [
        ("take 10 ash for stools", &[("10.00 USD", 90), ("0.00 USD", 0), ("0.00 USD", 0)]),
        ("take 15 ash for stools", &[("10.00 USD", 90), ("0.00 USD", 0), ("0.00 USD", 0)]),
        ("take 15 ash for stools\nend stools", &[("10.00 USD", 90), ("0.00 USD", 0), ("0.00 USD", 0)]),
        ("take 12 ash for stools\ntake 3 ash for desk", &[("8.00 USD", 72), ("2.00 USD", 18), ("0.00 USD", 0), ("0.00 USD", 0)]),
        ("take 12 ash for stools\ngone 3 ash burnt", &[("10.00 USD", 90), ("0.00 USD", 0), ("0.00 USD", 0)]),
    ];
    for (lines, shares) in cases {
        let story = tell(&format!("{start}{lines}\n"));
        assert_eq!(story.refused, [], "{lines}");
        check(&story, &jobs, shares);
    }
}

/// One phone ends the desk while the other takes wood for it from a haul it had none of: the workshop bears that, and the rack none of it.
#[test]
fn wood_taken_after_a_job_ended_on_another_phone_moves_no_share_of_it() {
    let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for works\npile ash ash-white 1 x 2 x 20 in\ncount 10 ash\n\
        spend 10.00 gift on works\njob desk \"Desk\" 1 spec\njob stool \"Stool\" 1 spec\n";
    let [ended, mut took] =
        ["09:05 end desk", "09:06 take 4 ash for desk\ntake 1 ash for stool"].map(|lines| tell(&format!("{start}{lines}\n")));
    assert_eq!((&ended.refused, &took.refused), (&vec![], &vec![]));
    check(&took, &["desk", "stool"], &[("4.00 USD", 0), ("1.00 USD", 0), ("5.00 USD", 0), ("0.00 USD", 0)]);
    took.book = Book::of_lines(took.book.lines().chain(ended.book.lines()));
    check(&took, &["desk", "stool"], &[("0.00 USD", 0), ("1.00 USD", 0), ("5.00 USD", 0), ("4.00 USD", 0)]);
    // It had two when it ended, and keeps what it carried for them.
    let start = format!("{start}take 2 ash for desk\n");
    let [ended, mut more] = ["09:05 end desk", "09:06 take 4 ash for desk"].map(|line| tell(&format!("{start}{line}\n")));
    more.book = Book::of_lines(more.book.lines().chain(ended.book.lines()));
    check(&more, &["desk"], &[("2.00 USD", 0), ("4.00 USD", 0), ("4.00 USD", 0)]);
    let shop = Shop::of(&took.book, took.now.at);
    let desk = account::account(&shop, took.names.job("desk").unwrap()).unwrap();
    assert_eq!(desk.costs.total.map(|sum| sum.to_string()), Some("0.00 USD".into()));
}

/// Nobody looked for 86 days: on that morning the pile is suggested, and what the book says of it is unchanged.
#[test]
fn before_somebody_looks_the_rack_is_only_suggested() {
    let text = format!("{}\n2026-05-28 08:00 workshop EUR metric\n", RACK_DRIFT.split("# --- twelve weeks later").next().unwrap());
    let story = tell(&text);
    let piles = stock::stock(&Shop::of(&story.book, story.now.at)).unwrap();
    assert_eq!((piles.iter().filter(|pile| pile.is_stale).count(), piles[0].on_rack, piles[0].drift), (1, 22, 0));
}

/// A board foot of offcuts and a bought one in one job: its cost is the sum of both shares, and the yield its quote goes by lies between
/// the two by the volumes used.
#[test]
fn a_job_of_offcuts_and_of_bought_boards_carries_both_shares() {
    let story = tell(
        "2026-03-02 09:00 -05:00 workshop USD inch\n\
         leave for works\npile strips ash-white 1 x 2 x 18 in\ncount 40 strips\nspend 20.00 gift on works\n\
         buy 4 planks oak-white 1 x 6 x 96 in for 88\n\
         job desk \"Desk\" 1 order\njob scrap \"Scraps\" 1 order\n\
         take 16 strips for desk\ntake 1 planks for desk\ntake 4 strips for scrap\n\
         part \"top\" 1 of 1 x 6 x 72 in oak-white for desk\n",
    );
    assert_eq!(story.refused, []);
    let shop = Shop::of(&story.book, story.now.at);
    let of = |name: &str| account::account(&shop, story.names.job(name).unwrap()).unwrap();
    let desk = of("desk");
    // 16 of 40 strips: 8.00. One board of four for 88.00: 22.00. A strip holds 1/4 bf, a board 4: 4 bf and 4 bf, so (0.45 + 0.70) / 2.
    let shares: Vec<String> = desk.costs.shares.iter().filter_map(|share| share.share).map(|share| share.cost.to_string()).collect();
    assert_eq!(shares, ["8.00 USD", "22.00 USD"]);
    assert_eq!(desk.costs.total.map(|sum| sum.to_string()), Some("30.00 USD".into()));
    assert_eq!(desk.wood.assumed.normalize().to_string(), "0.575");
    // 3 bf finished of 8 used: 0.375, over 0.575.
    assert_eq!(desk.wood.finished_of_used.map(|part| part.normalize().to_string()), Some("0.375".into()));
    assert_eq!(desk.ratios.wood.map(|ratio| fivebar_core::quantity::half_up(ratio, 4).to_string()), Some("0.6522".into()));
    assert_eq!(of("scrap").wood.assumed.normalize().to_string(), "0.45");
}

/// What can't be is refused by name and limit, and changes nothing.
#[test]
fn bad_figures_are_refused_by_what_they_met_and_the_limit() {
    let start = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for works\npile strips ash-white 1 x 2 x 18 in\ncount 9 strips\n\
        job bench \"Bench\" 1 spec\njob desk \"Desk\" 1 spec\nreserve 4 strips for bench\n";
    let apart = |asked| Some(Refusal::SetApart { asked, there: 9, apart: 4 });
    let few = |asked, there| Some(Refusal::NotThatMany { asked, there });
    let unknown = |key: &str| Some(Refusal::WoodUnknown { key: key.into() });
    for (line, refusal) in [
        ("take 6 strips for desk", apart(6)),
        ("reserve 6 strips for desk", apart(6)),
        ("gone 6 strips burnt", apart(6)),
        ("take 10 strips for bench", few(10, 9)),
        ("unreserve 5 strips from bench", few(5, 4)),
        ("reject 10 strips crack", few(10, 9)),
        ("rack 10000 strips", Some(Refusal::TooManyPieces { would_be: 10_000, most: 9_999 })),
        ("buy 10000 planks oak-white 1 x 6 x 96 in for 88", Some(Refusal::TooManyPieces { would_be: 10_000, most: 9_999 })),
        ("buy 4 planks ebony-moon 1 x 6 x 96 in for 88", unknown("ebony-moon")),
        ("pile more ebony-moon 1 x 2 x 18 in", unknown("ebony-moon")),
        ("name strips ebony-moon", unknown("ebony-moon")),
        ("gone 0 strips burnt", Some(Refusal::NothingAsked)),
        // A correction below nothing is no number of pieces at all.
        ("rack -3 strips", None),
        ("gone -1 strips burnt", None),
    ] {
        let story = tell(&format!("{start}{line}\n"));
        assert_eq!(story.refused.len(), 1, "{line}");
        match (&story.refused[0].1, refusal) {
            (Why::Refused(met), Some(wanted)) => assert_eq!(*met, wanted, "{line}"),
            (Why::Refused(met), None) => panic!("{line}: {met:?}"),
            (_, wanted) => assert_eq!(wanted, None, "{line}"),
        }
        assert_eq!(story.book.len(), tell(start).book.len(), "{line}");
    }
}
