//! What is said of more pieces than a pile has falls away: set apart, sorted, missing. Every figure is counted out by hand.

mod maker;

use fivebar_core::haul::Pile;
use fivebar_core::ledger::decide::{Command, HaulCommand, PileFacts};
use fivebar_core::ledger::{Book, fold};
use fivebar_core::quantity::{Count, Currency, Length};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::past::past;
use fivebar_core::sheet::verdict::Known;
use fivebar_core::story::{Story, Why, tell};
use std::rc::Rc;

const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for works\npile ash ash-white 1 x 2 x 20 in\n\
    pile oak oak-white 1 x 2 x 20 in\njob stools \"Stools\" 1 spec\njob desk \"Desk\" 1 spec\n";

fn told(lines: &str) -> Story {
    let story = tell(&format!("{START}{lines}\n"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

fn pile(book: &Book, of: &Story, name: &str) -> Pile {
    let haul = fold::haul(book, of.names.haul("works").unwrap()).unwrap();
    haul.pile(of.names.pile(name).unwrap()).unwrap().clone()
}

/// Of the ash after these lines: on the rack, set apart for the stools, for the desk, free.
#[track_caller]
fn apart(lines: &str, wanted: [Count; 4]) {
    let story = told(lines);
    let ash = pile(&story.book, &story, "ash");
    let [stools, desk] = ["stools", "desk"].map(|job| ash.reserved_for(story.names.job(job).unwrap()));
    assert_eq!([ash.on_rack(), stools, desk, ash.free_for(None)], wanted, "{lines}");
    assert_eq!(ash.reserved(), stools + desk, "{lines}");
}

#[test]
fn what_is_set_apart_lies_on_the_rack_and_the_latest_is_given_up_first() {
    apart("count 10 ash\nreserve 6 ash for desk\nreject 6 ash crack", [4, 0, 4, 0]);
    apart("count 10 ash\nreserve 6 ash for desk\nreject 6 ash crack\nunreserve 4 ash from desk", [4, 0, 0, 4]);
    apart("count 10 ash\nreserve 6 ash for desk\nreserve 4 ash for stools\nreject 5 ash crack", [5, 0, 5, 0]);
    apart("count 10 ash\nreserve 6 ash for stools\nreserve 4 ash for desk\nreject 5 ash crack", [5, 5, 0, 0]);
    apart("count 10 ash\nreserve 10 ash for desk\nrack 7 ash\nrack 10 ash", [10, 0, 7, 3]);
    apart("count 10 ash\nreserve 10 ash for desk\nrecount 4 ash\ncount 6 ash", [10, 0, 4, 6]);
    apart("count 10 ash\nreserve 10 ash for desk\nreject 5 ash crack as it\nundo it", [10, 0, 10, 0]);
    apart("count 10 ash\nreserve 6 ash for desk\nmove 4 ash to oak\ncount 10 ash", [16, 0, 6, 10]);
}

/// Of the ash after these lines: taken, sorted good, not sorted.
#[track_caller]
fn sorted((book, story): (&Book, &Story), wanted: [Count; 3]) {
    let ash = pile(book, story, "ash");
    assert_eq!([ash.taken, ash.sorted_good, ash.unsorted()], wanted);
}

#[test]
fn no_more_is_sorted_good_than_is_good() {
    let one = |lines: &str, wanted| {
        let story = told(lines);
        sorted((&story.book, &story), wanted);
    };
    one("count 9 ash as it\ngood 9 ash\nundo it", [0, 0, 0]);
    one("count 9 ash as it\ncount 3 ash\ngood 9 ash\nundo it", [3, 3, 0]);
    one("count 9 ash\ngood 9 ash\nrecount 4 ash", [4, 4, 0]);
    // Two phones, each with the nine that were counted before they parted.
    let two = |a: &str, b: &str, wanted| {
        let [a, b] = [(a, "09:05"), (b, "09:06")].map(|(line, at)| told(&format!("count 9 ash\n2026-03-02 {at} {line}")));
        let lines: Vec<&str> = b.book.lines().chain(a.book.lines()).collect();
        let both = Book::of_lines(lines);
        assert_eq!(both.damaged().count(), 0);
        sorted((&both, &a), wanted);
    };
    two("good 9 ash", "good 9 ash", [9, 9, 0]);
    two("good 9 ash", "move 9 ash to oak", [0, 0, 0]);
    two("move 9 ash to oak", "good 9 ash", [0, 0, 0]);
    two("reject 5 ash crack", "good 9 ash", [9, 4, 0]);
}

/// A count again says what is there: nothing that the rack missed or found before is reckoned in once more.
#[test]
fn a_count_again_is_what_is_there() {
    let rack = |lines: &str| {
        let story = told(lines);
        let ash = pile(&story.book, &story, "ash");
        (ash.on_rack(), ash.stock.drift)
    };
    for (lines, wanted) in [
        ("count 30 ash\nrack 27 ash", (27, -3)),
        ("count 30 ash\nrack 27 ash\nrecount 27 ash", (27, 0)),
        ("count 30 ash\nrack 33 ash\nrecount 33 ash", (33, 0)),
        ("count 30 ash\ntake 20 ash for desk\nrack 7 ash\nrecount 27 ash", (7, 0)),
        ("count 30 ash\ntake 20 ash for desk\nrack 7 ash\nrecount 20 ash", (0, 0)),
    ] {
        assert_eq!(rack(lines), wanted, "{lines}");
    }
    let below = tell(&format!("{START}count 10 ash\nrack 15 ash\ntake 15 ash for desk\nrecount 12 ash\n"));
    assert_eq!(below.refused.len(), 1, "fifteen are in a job: {:?}", below.refused);
}

/// Of the ash after these lines: on the rack, in the stools, found more than the counts said. What a job took and gives back is added to
/// what was counted, whichever way it comes back; and taken again it is taken from that.
#[test]
fn what_goes_back_after_a_count_of_the_rack_is_added_to_it() {
    for (lines, wanted) in [
        ("take 11 ash for stools as it\nrack 9 ash\nundo it", (20, 0, 0)),
        ("take 11 ash for stools as it\nrack 9 ash\nundo it\nrestore it", (9, 11, 0)),
        ("take 11 ash for stools as it\nrack 7 ash\nundo it", (18, 0, -2)),
        ("take 11 ash for stools as it\nrack 7 ash\nrack 8 ash\nundo it\nrestore it", (8, 11, -1)),
        ("take 11 ash for stools as it\nrack 9 ash\nundo it\nrack 19 ash\nrestore it", (8, 11, -1)),
        ("take 11 ash for stools as it\nundo it\nrack 18 ash\nrestore it", (7, 11, -2)),
        ("take 11 ash for stools\nrack 7 ash\nfree 11 ash from stools", (18, 0, -2)),
        ("take 11 ash for stools\nfree 11 ash from stools as it\nrack 18 ash\nundo it", (7, 11, -2)),
        ("take 11 ash for stools\nfree 11 ash from stools as it\nrack 18 ash\nundo it\nrestore it", (18, 0, -2)),
        ("take 11 ash for stools as it\ntake 4 ash for desk\nrack 4 ash\nundo it", (15, 0, -1)),
        // What was counted tells of itself what never was.
        ("gone 3 ash burnt as it\nrack 17 ash\nundo it", (17, 0, -3)),
        ("count 5 ash as it\nrack 22 ash\nundo it", (22, 0, 2)),
    ] {
        let story = told(&format!("count 20 ash\n{lines}"));
        let ash = pile(&story.book, &story, "ash");
        assert_eq!((ash.on_rack(), ash.in_job(story.names.job("stools").unwrap()), ash.stock.drift), wanted, "{lines}");
    }
    // No more is taken again than was found.
    let lines = "count 20 ash\ntake 11 ash for stools\nfree 11 ash from stools as it\nrack 5 ash\nundo it";
    let why = Refusal::OfPile { pile: "ash, A".into(), why: Box::new(Refusal::NotThatMany { asked: 11, there: 5 }) };
    let refused = tell(&format!("{START}{lines}\n")).refused.into_iter().map(|(_, why)| why).collect::<Vec<_>>();
    assert_eq!(refused, [Why::Refused(why)]);
}

/// A pile of 20 in is given the high end of a band alone.
#[test]
fn a_high_end_below_the_length_that_is_there_is_refused() {
    let mut maker = maker::Maker::new(Currency::USD);
    let inches = |n| Length::INCH.times(n).unwrap();
    let haul = maker.trip(None, Length::MILE, ("0.725", fivebar_core::ledger::kind::haul::Per::Mile), (1, 1));
    let pile = maker.pile(haul, None, [1, 2, 20].map(inches), 9);
    for (to, refusal) in [(24, None), (20, None), (19, Some(Refusal::BandUpsideDown { from: inches(20), to: inches(19) }))] {
        let facts = PileFacts { length_to: Some(inches(to)), ..PileFacts::default() };
        assert_eq!(maker.try_order(Command::Haul(HaulCommand::DescribePile { haul, pile, facts })).err(), refusal, "{to}");
    }
}

/// Parts still missing of the ash of the next haul, after these lines of the first.
#[track_caller]
fn missing(lines: &str, wanted: &[(&str, Count)]) {
    let next = "2026-03-16 09:00 leave for next\npile strips ash-white 1 x 2 x 24 in\npile thick ash-white 2 x 2 x 24 in";
    let story = told(&format!("{lines}\n{next}"));
    let haul = fold::haul(&story.book, story.names.haul("next").unwrap()).unwrap();
    let known = Known::of(&story.book, (Rc::new(fold::workshop(&story.book)), past(&story.book, &haul)), &haul);
    let of = |name: &str| known.missing_for(haul.pile(story.names.pile(name).unwrap()).unwrap());
    let shown = of("strips");
    assert_eq!(shown.iter().map(|want| (want.part.as_str(), want.wanted)).collect::<Vec<_>>(), wanted, "{lines}");
    assert_eq!(of("thick"), [], "of another section nothing is missing");
}

#[test]
fn what_an_earlier_pile_did_not_come_to_is_still_missing() {
    let sorted = "count 20 ash\nwant 20 of \"leg stock\" from ash for stools\nreject 3 ash crack\ngood 17 ash";
    missing(sorted, &[("leg stock", 3)]);
    missing("count 20 ash\nwant 20 of \"leg stock\" from ash for stools\nreject 3 ash crack\ngood 10 ash", &[]); // 7 are still to sort
    missing("count 20 ash\nwant 17 of \"leg stock\" from ash for stools\nreject 3 ash crack\ngood 17 ash", &[]);
    missing(&format!("{sorted}\nend stools"), &[]);
    // Two pieces to a leg: 17 good make 8, and 2 more are missing; four legs of a piece: 3 pieces give 12.
    missing("count 20 ash\nwant 10 of \"leg\" from ash for stools pieces 2\nreject 3 ash crack\ngood 17 ash", &[("leg", 2)]);
    missing("count 20 ash\nwant 80 of \"leg\" from ash for stools gives 4\nreject 3 ash crack\ngood 17 ash", &[("leg", 12)]);
    // A newer pile speaks for the same part.
    let again = "2026-03-09 09:00 leave for more\npile second ash-white 1 x 2 x 22 in\ncount 3 second\nwant 3 of \"leg stock\" from second for stools\ngood 3 second";
    missing(&format!("{sorted}\n{again}"), &[]);
}
