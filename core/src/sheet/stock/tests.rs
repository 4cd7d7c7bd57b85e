//! The rack of the two demo jobs, and one invented rack, as tables.

use super::find::{Found, From, Order, Thick, Wanted, find};
use super::*;

use crate::quantity::{Length, half_up};
use crate::story::{BENCH, STANDS, Story, tell};

/// Two hauls, a bought pile, one without a size, a band, and two jobs.
const RACK: &str = "2026-01-05 09:00 -05:00 workshop USD inch\n\
    person works supplier \"Stair works\"\n\
    leave for old\nsupplier works\npile strips ash-white 1 x 2 x 20 in\ncount 22 strips\npile band cherry-black 1 x 2 x 14..24 in\ncount 8 band\n\
    job stools \"Stools\" 2 spec\njob desk \"Desk\" 1 spec\n\
    2026-02-16 09:00 leave for young\npile bare\ncount 5 bare\npile squares ash-white 1.75 x 1.75 x 18 in\ncount 9 squares\n\
    2026-02-20 09:00 buy 4 planks oak-white 1 x 6 x 96 in for 88 from works\n\
    2026-03-02 09:00 reserve 4 strips for desk\ntake 5 strips for stools\ngone 2 strips burnt\n";

fn story(lines: &str) -> Story {
    let story = tell(&format!("{RACK}{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    story
}

fn rack(story: &Story) -> Vec<StockPile> {
    stock(&Shop::of(&story.book, story.now.at)).unwrap()
}

fn named<'a>(piles: &'a [StockPile], name: &str) -> &'a StockPile {
    piles.iter().find(|pile| pile.name.as_deref() == Some(name)).unwrap()
}

fn names(piles: &[StockPile]) -> Vec<&str> {
    piles.iter().map(|pile| pile.name.as_deref().unwrap_or("?")).collect()
}

fn inches(n: i64) -> Option<Length> {
    Length::INCH.times(n).ok()
}

/// What is found on the invented rack: those that do, those too short, those without a size, and the pieces of the first.
#[track_caller]
fn check(wanted: &Wanted, piles: &[&str], shorter: &[&str], no_size: &[&str], pieces: Count) {
    let found: Found = find(rack(&story("")), wanted);
    assert_eq!((names(&found.piles), names(&found.shorter), names(&found.no_size)), (piles.to_vec(), shorter.to_vec(), no_size.to_vec()));
    assert_eq!((found.pieces(), found.of), (pieces, 5), "{wanted:?}");
}

/// The drawing's rack, figures.md section 18: 18 in or longer are 4 of 6 piles and 46 pieces. The ages and the parting of hauls there
/// are invented; here both piles of one haul came together.
#[test]
fn the_rack_of_both_demos() {
    let (mut a, mut b) = (tell(STANDS), tell(BENCH));
    let piles = |story: &mut Story| stock(&Shop::of(&story.book, story.now.at)).unwrap();
    let all: Vec<StockPile> = piles(&mut a).into_iter().chain(piles(&mut b)).collect();
    let found = find(all, &Wanted { length: inches(18), ..Wanted::default() });
    assert_eq!((found.of, found.piles.len(), found.shorter.len(), found.pieces()), (6, 4, 2, 46));
    let volume = |nth: usize| found.piles[nth].volume.unwrap();
    assert_eq!(half_up(volume(0).plus(volume(1)).unwrap().board_feet(), 2).to_string(), "11.49");
    assert_eq!(half_up(volume(2).litres(), 1).to_string(), "16.9");
}

#[test]
fn a_length_a_wood_a_thickness_and_an_origin_are_found() {
    let any = Wanted::default();
    let long = |n| Wanted { length: inches(n), ..Wanted::default() };
    let thick = |thickness| Wanted { thickness: Some(thickness), ..Wanted::default() };
    let from = |from| Wanted { from, ..Wanted::default() };
    check(&any, &["strips", "band", "bare", "squares", "planks"], &[], &[], 41);
    // of a band about the length some may do
    check(&long(18), &["strips", "squares", "planks"], &[], &["band", "bare"], 28);
    check(&long(40), &["planks"], &["strips", "band", "squares"], &["bare"], 4);
    check(&long(14), &["strips", "band", "squares", "planks"], &[], &["bare"], 36);
    check(&Wanted { wood: Key::read("ash-white"), ..long(19) }, &["strips"], &["squares"], &[], 15);
    check(&thick(Thick::AtLeast(inches(1).unwrap())), &["strips", "band", "squares", "planks"], &[], &["bare"], 36);
    check(&thick(Thick::Just(inches(1).unwrap())), &["strips", "band", "planks"], &[], &["bare"], 27);
    check(&thick(Thick::AtLeast(inches(2).unwrap())), &[], &[], &["bare"], 0);
    check(&from(From::Bought), &["planks"], &[], &[], 4);
    let works = story("").names.person("works").unwrap();
    check(&from(From::Supplier(works)), &["strips", "band", "planks"], &[], &[], 27);
    check(&Wanted { order: Order::Longest, ..any.clone() }, &["planks", "strips", "squares", "band", "bare"], &[], &[], 41);
    check(&Wanted { order: Order::Most, ..any }, &["strips", "squares", "band", "bare", "planks"], &[], &[], 41);
}

#[test]
fn a_pile_knows_what_became_of_it() {
    let story = story("rack 14 strips \"fewer than thought\"\nplace strips \"under the stairs\"\nmoisture strips 11.5\n");
    let piles = rack(&story);
    let strips = named(&piles, "strips");
    assert_eq!((strips.on_rack, strips.free, strips.drift, strips.weeks), (14, 10, -1, 8));
    let of = |jobs: &[ForJob]| jobs.iter().map(|it| (it.name.clone(), it.n)).collect::<Vec<_>>();
    assert_eq!((of(&strips.apart), of(&strips.used)), (vec![("Desk".to_owned(), 4)], vec![("Stools".to_owned(), 5)]));
    assert_eq!(strips.gone.iter().map(|(to, n)| (to.as_str(), *n)).collect::<Vec<_>>(), [("burnt", 2)]);
    assert_eq!(strips.place.as_deref(), Some("under the stairs"));
    assert!(strips.walked.is_some() && strips.dampness.is_some_and(|damp| damp.percent.is_some()));
    assert_eq!(strips.drift_of(11), Drift { told: 14, found: 11, missing: 3, more: 0 });
    assert_eq!(strips.drift_of(16), Drift { told: 14, found: 16, missing: 0, more: 2 });
    // 4 boards of 4 board feet for 88: 5.50 each.
    let planks = named(&piles, "planks");
    assert_eq!((planks.haul.bought, planks.haul.cost_per_good.map(|cost| half_up(cost, 2).to_string())), (true, Some("5.5".into())));
    assert_eq!(named(&piles, "bare").haul.cost_per_good, None, "a pile of the haul has no size");
    assert_eq!(half_up(strips.volume.unwrap().board_feet(), 2).to_string(), "3.89");
}

/// Bare, squares, planks, strips, band were in a hand last in this order; squares and strips lie in one place, planks and band in another.
#[test]
fn the_way_round_the_rack_goes_place_by_place() {
    let story = story(
        "2026-05-01 09:00 place squares \"loft\"\n2026-05-02 09:00 place planks \"cellar\"\n2026-05-03 09:00 place strips \"loft\"\n\
         2026-05-04 09:00 place band \"cellar\"",
    );
    let piles = rack(&story);
    let name = |at: &Lying| piles.iter().find(|pile| pile.at == *at).unwrap().name.clone().unwrap();
    assert_eq!(round(&piles).iter().map(name).collect::<Vec<_>>(), ["bare", "squares", "strips", "planks", "band"]);
    assert_eq!(round(&[]), []);
}

/// What nobody looked at for twelve weeks is suggested; a look, a count or a piece taken puts it off, a name does not; nothing is
/// changed by itself.
#[test]
fn a_stale_pile_is_suggested_and_never_corrected() {
    let stale_at = |lines: &str| {
        let story = story(lines);
        let piles = rack(&story);
        let found = |at: &Lying| piles.iter().find(|pile| pile.at == *at).unwrap();
        round(&piles).iter().map(found).filter(|pile| pile.is_stale).map(|pile| pile.name.clone().unwrap()).collect::<Vec<_>>()
    };
    // The band was last counted on 5 January, the strips taken of on 2 March.
    for (lines, stale) in [
        ("2026-03-30 08:59 name strips ash-white 1 x 2 x 20 in", &[] as &[&str]),
        ("2026-03-30 09:00 name band cherry-black 1 x 2 x 14..24 in", &["band"]),
        ("2026-03-29 09:00 rack 8 band\n2026-03-30 09:00 name band cherry-black 1 x 2 x 14..24 in", &[]),
        ("2026-05-25 09:00 name strips ash-white 1 x 2 x 20 in", &["band", "bare", "squares", "planks", "strips"]),
        ("2026-05-25 08:00 take 1 band for desk\n09:00 reserve 1 squares for desk", &["bare", "squares", "planks", "strips"]),
    ] {
        assert_eq!(stale_at(lines), stale, "{lines}");
    }
    let told = story("2026-12-01 09:00 name strips ash-white 1 x 2 x 20 in");
    assert_eq!(rack(&told).iter().map(|pile| pile.on_rack).collect::<Vec<_>>(), [15, 8, 5, 9, 4]);
}

/// Twenty taps are one line; what belongs to a larger act, or began the pile, is not struck by itself.
#[test]
fn a_pile_tells_its_history_newest_first() {
    let story = story("count 2 strips\ncount 3 strips\nreject 1 strips crack\nrack 15 strips\n");
    let at = Lying { haul: story.names.haul("old").unwrap(), pile: story.names.pile("strips").unwrap() };
    let told: Vec<(&str, Count, bool)> =
        history::history(&story.book, at).iter().map(|line| (line.fact.kind(), line.n, line.can_be_struck)).collect();
    assert_eq!(
        told,
        [
            ("PileCounted", 15, true),
            ("PiecesRejected", 1, true),
            ("PiecesCounted", 5, false),
            ("LeftoversGone", 2, true),
            ("PiecesTaken", 5, true),
            ("PiecesReserved", 4, true),
            ("PiecesCounted", 22, true),
            ("PileAdded", 0, false),
        ]
    );
    let acts: Vec<Vec<(Count, bool)>> =
        history::history(&story.book, at).iter().map(|line| line.acts.iter().map(|act| (act.n, act.can_be_struck)).collect()).collect();
    assert_eq!(acts[2], [(3, true), (2, true)]);
    assert!(acts.iter().enumerate().all(|(nth, acts)| nth == 2 || acts.is_empty()), "{acts:?}");
}

/// A count by layers is struck whole, by its one line.
#[test]
fn a_count_by_layers_is_struck_by_its_line() {
    let mut story = story("2026-03-03 09:00 layers 2 of 3 band\n");
    let at = Lying { haul: story.names.haul("old").unwrap(), pile: story.names.pile("band").unwrap() };
    let line = history::history(&story.book, at).remove(0);
    assert_eq!((line.fact.kind(), line.n, line.can_be_struck), ("PiecesCounted", 6, true));
    story.book = story.book.without(&story.book.act(line.entry));
    assert_eq!(named(&rack(&story), "band").on_rack, 8);
}

/// A pile that moved away, or of which all is in jobs, is no more on the rack, and can still be asked for.
#[test]
fn an_empty_pile_is_not_on_the_rack_and_is_still_there() {
    let story = story("gone 8 band given\n");
    assert!(!names(&rack(&story)).contains(&"band"));
    let (haul, pile) = (story.names.haul("old").unwrap(), story.names.pile("band").unwrap());
    let band = super::pile(&Shop::of(&story.book, story.now.at), Lying { haul, pile }).unwrap();
    assert_eq!((band.on_rack, band.is_stale, band.volume), (0, false, Some(Volume::ZERO)));
}
