//! The story of a morning in which four piles are counted four ways: by tap, by bundle, by layers, by weight. Each figure is worked
//! out by hand beside it, so that no figure only repeats what the code gave.

use fivebar_core::haul::take::{Decides, Least, SetBy, Verdict};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Length;
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::past::past;
use fivebar_core::sheet::pile::{PileSheet, pile};
use fivebar_core::sheet::verdict::{AtBin, Known};
use fivebar_core::story::{Story, Why, tell};
use std::rc::Rc;

const FOUR_WAYS: &str = include_str!("../../tests/stories/four-ways.txt");

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

/// The page of a pile at the end of the story, or before a line of it.
fn page(name: &str, until: &str) -> PileSheet {
    let story = tell(FOUR_WAYS.split(until).next().unwrap());
    let haul = fold::haul(&story.book, story.names.haul("turnery").unwrap()).unwrap();
    let known = Known::of(&story.book, (Rc::new(fold::workshop(&story.book)), past(&story.book, &haul)), &haul);
    pile(&haul, &known, (story.names.pile(name).unwrap(), story.now.at)).unwrap()
}

/// Pieces of a pile, how far that may be off, and what decides at the bin.
#[track_caller]
fn check(name: &str, (pieces, off): (u32, Option<u32>), at_bin: AtBin) {
    let sheet = page(name, "# --- counted again");
    assert_eq!((sheet.tile.taken, sheet.off, sheet.at_bin), (pieces, off, Some(at_bin)), "{name}");
}

/// 6 taps; 4 x 5 + 2; 7 x 12 + 5. By weight: 17.75 less 2.5 is 15.25 kg, a piece 0.131 kg: 116.4, so 116. Off by
/// 1.96 x 116 x 0.10 x sqrt(1/10 - 1/116) = 6.87, up to 7.
///
/// The rail of 620 mm sets the least of the boards, the jointer's 250 mm that of all that is shorter than it: squares of 400 mm pass,
/// stubs of 200 mm do not. No part is of ash, and 24 % is over 20. No pay is set, so no piece's worth is known.
#[test]
fn four_piles_are_counted_four_ways() {
    let take = AtBin { verdict: Verdict::Take, decides: Decides::NothingAgainst };
    check("boards", (6, None), take);
    check("squares", (22, None), take);
    let slats = page("slats", "# --- counted again");
    assert_eq!((slats.tile.taken, slats.at_bin.map(|told| told.verdict)), (89, Some(Verdict::Maybe)));
    let Some(Decides::TooWet { reading, limit }) = slats.at_bin.map(|told| told.decides) else { panic!("{:?}", slats.at_bin) };
    assert_eq!((reading.as_per_cent(), limit.as_per_cent()), (24.0, 20.0));
    let least = Least { length: mm(250), set_by: SetBy::Machine };
    check("stubs", (116, Some(7)), AtBin { verdict: Verdict::Leave, decides: Decides::TooShort(least) });
    let shorter = page("stubs", "# --- counted again").shorter.map(|(machine, least)| (machine.to_string(), least));
    assert_eq!(shorter, Some(("jointer".into(), mm(250))));
}

/// Six rails from six boards need each of them good: with Beta(9, 3) for good, (9 x 10 x .. x 14) / (12 x 13 x .. x 17) =
/// 990 / 4080 = 0.2426. 48 pegs at 3 a piece are 16 good squares.
#[test]
fn what_the_piles_are_needed_for() {
    let rails = &page("boards", "# --- counted again").wants[0].enough;
    assert_eq!((rails.pieces, format!("{:.4}", rails.chance)), (6, "0.2426".to_owned()));
    let pegs = &page("squares", "# --- counted again").wants[0].enough;
    assert_eq!((pegs.pieces, pegs.held.unsorted), (16, 22));
}

/// 196, 200 and 204 mm: mean 200, off 4.303 x 4 / sqrt 3 x sqrt(1 - 3/116) = 9.81 mm.
#[test]
fn three_measured_stubs_speak_for_their_pile() {
    let length = page("stubs", "# --- counted again").sizes.length.unwrap();
    assert_eq!((length.of, length.mean.mean), (3, mm(200)));
    assert!((length.mean.off.unwrap() * 200.0 - 9.81).abs() < 0.005, "{length:?}");
}

#[test]
fn counted_again_is_what_is_there() {
    assert_eq!(page("slats", "\n\n\n").tile.taken, 88);
}

#[test]
fn what_no_scale_and_no_pile_allows_is_refused_by_name() {
    let story: Story = tell(FOUR_WAYS);
    let refused: Vec<&Why> = story.refused.iter().map(|(_, why)| why).collect();
    let named = |why: &&Why| match why {
        Why::Refused(Refusal::SampleTooSmall { met: 4, least: 5 }) => "sample too small",
        Why::Refused(Refusal::SampleTooHeavy { .. }) => "sample too heavy",
        Why::Refused(Refusal::UnderTare { .. }) => "under tare",
        Why::Refused(Refusal::TooManyPieces { .. }) => "too many",
        Why::Refused(Refusal::NothingAsked | Refusal::NotThatMany { asked: 5, .. }) => "nothing asked",
        Why::Refused(Refusal::MoistureOutOfRange { .. }) => "moisture",
        Why::Unread(unread) => unread.expected,
        Why::Refused(_) => "other",
    };
    let names: Vec<&str> = refused.iter().map(named).collect();
    let wanted =
        ["sample too small", "sample too heavy", "under tare", "too many", "nothing asked", "a length", "a length", "moisture", "too many"];
    assert_eq!(names, wanted, "{:?}", story.refused);
}
