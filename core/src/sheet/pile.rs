//! The page of one pile: what it holds, what to do with it, what it is wanted for, what was measured of it.

use super::count::{Tile, tile};
use super::enough::Wanted;
use super::verdict::{AtBin, Known};
use crate::haul::sample::{self, Mean};
use crate::haul::weighing::Weighs;
use crate::haul::{Dampness, Haul, Measured, Pile};
use crate::quantity::{Count, Currency, Id, Key, Length, Listed, Moment, Units, Volume};
use crate::refusal::{Answer, Refusal};
use crate::wood::weight::{Density, Doubt};

/// A pile of the haul in hand.
#[derive(Clone, Debug, PartialEq)]
pub struct PileSheet {
    pub haul: Id,
    pub units: Units,
    pub currency: Currency,
    pub tile: Tile,
    /// Neither sorted good nor rejected.
    pub unsorted: Count,
    /// So many either way, where pieces were counted by weight.
    pub off: Option<Count>,
    pub at_bin: Option<AtBin>,
    pub wants: Vec<Wanted>,
    /// Other hauls of the supplier of which pieces were sorted.
    pub hauls_before: Count,
    pub supplier: Option<Id>,
    pub sizes: Sizes,
    /// All pieces, as measured rough, and how far that may be off as a share: by the pieces measured, else by the size.
    pub volume: Option<(Volume, f64)>,
    /// Its weight, where some of it was weighed.
    pub weighs: Option<Weighs>,
    /// Its weight is not that of a hardwood of its volume.
    pub doubt: Option<Doubt>,
    /// So many pieces more to measure until the volume is off by 5 % at most; none before two were.
    pub to_measure: Option<Count>,
    pub dampness: Option<Dampness>,
    /// A machine whose minimum its short pieces lack.
    pub shorter: Option<(Key, Length)>,
}

/// Pieces of it that were measured: how many, and the mean of each side.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sizes {
    pub measured: Count,
    pub thickness: Option<Side>,
    pub width: Option<Side>,
    pub length: Option<Side>,
}

/// The mean of one side over so many pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Side {
    pub of: Count,
    pub mean: Mean<Length>,
}

impl Sizes {
    /// What was measured of a pile. A pile that was counted again below what was measured is as large as its sample.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn of(pile: &Pile) -> Answer<Sizes> {
        let there = pile.taken.max(count(pile.measured.len()));
        let side = |of: fn(&Measured) -> Option<Length>| {
            let sides: Vec<Length> = pile.measured.iter().filter_map(of).listed();
            let mean = (!sides.is_empty()).then(|| sample::length(&sides, there)).transpose()?;
            Ok::<_, Refusal>(mean.map(|mean| Side { of: count(sides.len()), mean }))
        };
        Ok(Sizes {
            measured: count(pile.measured.len()),
            thickness: side(|piece| piece.thickness)?,
            width: side(|piece| piece.width)?,
            length: side(|piece| piece.length)?,
        })
    }

    /// The mean of each side, where any was measured.
    pub fn means(&self) -> [Option<Length>; 3] {
        [self.thickness, self.width, self.length].map(|side| side.map(|side| side.mean.mean))
    }
}

/// The page of a pile, by all that is known beside its haul.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::TooManyPieces`], [`Refusal::OutOfRange`].
pub fn pile(haul: &Haul, known: &Known, (id, now): (Id, Moment)) -> Answer<PileSheet> {
    let pile = haul.pile(id).ok_or(Refusal::NotThere)?;
    let sampled = pile.sampled()?;
    let volume = pile.piece()?.map(|piece| piece.times(pile.taken)).transpose()?;
    // A volume is at least as far off as the count it goes by: the two are off each for itself, in squares.
    let count_off = pile.count_off().map_or(0.0, |off| f64::from(off) / f64::from(pile.taken.max(1)));
    let off = pile.volume_off(sampled).hypot(count_off);
    Ok(PileSheet {
        haul: haul.id,
        units: haul.units,
        currency: haul.currency,
        tile: tile(pile),
        unsorted: pile.unsorted(),
        off: pile.count_off(),
        at_bin: known.at_bin(haul, pile, now)?,
        wants: known.wants_of(haul, pile),
        hauls_before: known.past.sorted_hauls,
        supplier: haul.supplier,
        sizes: Sizes::of(pile)?,
        volume: volume.map(|volume| (volume, off)),
        weighs: pile.weighs(),
        doubt: volume.zip(pile.weighs()).and_then(|(volume, weighs)| Density::of(weighs.mass, volume).ok()?.doubt().ok()?),
        to_measure: pile.still_to_measure(sample::VOLUME_OFF_ONE_SIZE),
        dampness: pile.dampness,
        shorter: known.shorter_than(pile),
    })
}

fn count(n: usize) -> Count {
    Count::try_from(n).unwrap_or(Count::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::fold;
    use crate::quantity::half_up;
    use crate::sheet::past::past;
    use crate::story::tell;
    use std::rc::Rc;

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile ash ash-white 1 x 2 x 18 in\n";

    fn told(lines: &str) -> PileSheet {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let past = past(&story.book, &haul);
        let known = Known::of(&story.book, (Rc::new(fold::workshop(&story.book)), past), &haul);
        pile(&haul, &known, (story.names.pile("ash").unwrap(), story.now.at)).unwrap()
    }

    /// 10 pieces weigh 8 lb, 80 lb come to 100; c sqrt(1/10 - 1/100) is 0.03, so 5.88 either way at c = 0.10, up to 6.
    /// A second weighing alike is off for itself: 5.88 sqrt 2 = 8.3, up to 9.
    #[test]
    fn a_count_by_weight_says_how_far_it_may_be_off() {
        let weighed = "weighed ash sample 10 8 lb all 82 lb tare 2 lb\n";
        let check = |lines: &str, taken, off| assert_eq!((told(lines).tile.taken, told(lines).off), (taken, off), "{lines}");
        check(weighed, 100, Some(6));
        check(&format!("count 5 ash\n{weighed}"), 105, Some(6));
        check(&format!("{weighed}{weighed}"), 200, Some(9));
        check(&weighed.replace("tare 2 lb", "tare 2 lb spread 0.2"), 100, Some(12));
        check(&format!("{weighed}recount 98 ash"), 98, None);
        check(&format!("{weighed}undo"), 0, None);
        check("count 5 ash", 5, None);
    }

    /// 18, 20 and 22 in of 40: mean 20, off 4.303 x 2 / sqrt 3 x sqrt(37 / 40) = 4.778 in, the doctest of `sample::sizes`.
    #[test]
    fn measured_pieces_give_a_mean_and_how_far_the_volume_may_be_off() {
        let measured = |n: i64| format!("measured ash 1 x 2 x {n} in\n");
        let sheet = told(&format!("count 40 ash\n{}{}{}", measured(18), measured(20), measured(22)));
        let length = sheet.sizes.length.unwrap();
        assert_eq!((sheet.sizes.measured, length.of, length.mean.mean), (3, 3, Length::INCH.times(20).unwrap()));
        assert!((length.mean.off.unwrap() * 20.0 - 4.778).abs() < 0.0005);
        let (volume, off) = sheet.volume.unwrap();
        assert_eq!(half_up(volume.board_feet(), 1).to_string(), "11.1", "by the mean of what was measured: 40 x 1 x 2 x 20 in");
        assert!((off * 20.0 - 4.778).abs() < 0.0005, "thickness and width never differ, so the volume is off as the length is");
        let (volume, guess) = told("count 40 ash").volume.unwrap();
        assert_eq!(half_up(volume.board_feet(), 1).to_string(), "10", "by the size it has: 40 x 1 x 2 x 18 in");
        assert!((guess - sample::VOLUME_OFF_ONE_SIZE).abs() < 1e-12);
    }

    /// 6 of 100 either way and 5 % of a piece: sqrt(0.06^2 + 0.05^2) is 0.0781.
    #[test]
    fn a_volume_is_off_by_no_less_than_its_count() {
        let (_, off) = told("weighed ash sample 10 8 lb all 82 lb tare 2 lb").volume.unwrap();
        assert_eq!(format!("{off:.4}"), "0.0781");
    }

    /// 12 of 10.2 lb, and 228 lb without the tare of 12: 268.2 pieces, 268, and they weigh what was on the scale.
    #[test]
    fn what_was_on_the_scale_is_what_it_weighs() {
        let sheet = told("weighed ash sample 12 10.2 lb all 240 lb tare 12 lb");
        let weighs = sheet.weighs.unwrap();
        assert_eq!((sheet.tile.taken, format!("{:.2} {:.4}", weighs.mass.as_lb(), weighs.off)), (268, "228.00 0.0000".into()));
    }

    /// Nobody named it with a size: what was measured is enough, once every side of a piece was.
    #[test]
    fn a_pile_without_a_size_goes_by_its_sample() {
        let volume = |lines: &str| {
            let start = START.replace(" 1 x 2 x 18 in", "");
            let story = tell(&format!("{start}count 40 ash\n{lines}"));
            let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
            let known = Known::of(&story.book, (Rc::new(fold::workshop(&story.book)), past(&story.book, &haul)), &haul);
            let sheet = pile(&haul, &known, (haul.piles[0].id, story.now.at)).unwrap();
            sheet.volume.map(|(volume, _)| half_up(volume.board_feet(), 1).to_string())
        };
        assert_eq!(volume(""), None);
        assert_eq!(volume("measured ash 1 x 2 x 18 in\nmeasured ash 1 x 2 x 22 in").as_deref(), Some("11.1"));
    }

    /// 10 pieces weigh 8 lb and all 82 lb: 0.8 lb each, as the scale showed. Five more, and five found again, weigh as the mean: 5 of
    /// 105 are off by 1.96 x 0.1 x sqrt(1 / 10 - 1 / 105), 5.9 %, the others by nothing; counted again, all 98 are.
    #[test]
    fn what_was_weighed_weighs_as_the_scale_showed() {
        let weighed = "weighed ash sample 10 8 lb all 82 lb tare 2 lb\n";
        let check = |lines: &str, lb: &str, off: &str| {
            let weighs = told(lines).weighs.unwrap();
            assert_eq!((format!("{:.1}", weighs.mass.as_lb()), format!("{:.4}", weighs.off)), (lb.into(), off.into()), "{lines}");
        };
        check(weighed, "80.0", "0.0000");
        check(&format!("{weighed}count 5 ash"), "84.0", "0.0028");
        check(&format!("{weighed}recount 98 ash"), "78.4", "0.0587");
        // t of 9 degrees is 2.262
        check(&format!("{}recount 98 ash", weighed.replace("tare 2 lb", "tare 2 lb spread 0.1 singles 10")), "78.4", "0.0678");
        assert_eq!(told("count 5 ash").weighs, None);
    }

    /// 100 of a quarter of a board foot weigh 80 lb, 3.2 lb a foot; 160 lb are 6.4: wet, or tropical?
    #[test]
    fn a_weight_no_hardwood_has_is_asked_about() {
        let doubt = |each: u32, all: u32| told(&format!("weighed ash sample 10 {each} lb all {all} lb")).doubt;
        assert_eq!((doubt(8, 80), doubt(16, 160), doubt(4, 40)), (None, Some(Doubt::Heavy), Some(Doubt::Light)));
    }

    /// Lengths of 18, 20 and 22 in spread by a tenth: (1.96 x 0.1 / 0.05)^2 is 15.37, of 40 pieces 11.3, up to 12: nine more.
    #[test]
    fn so_many_more_to_measure() {
        let of = |lengths: &[u32]| {
            let lines: Vec<String> = lengths.iter().map(|n| format!("measured ash 1 x 2 x {n} in")).collect();
            told(&format!("count 40 ash\n{}", lines.join("\n"))).to_measure
        };
        assert_eq!((of(&[]), of(&[18]), of(&[18, 20, 22]), of(&[20, 20])), (None, None, Some(9), Some(0)));
    }

    #[test]
    fn a_pile_counted_again_below_its_sample_still_has_its_sizes() {
        let lines = "count 3 ash\nmeasured ash 1 x 2 x 18 in\nmeasured ash 1 x 2 x 20 in\nrecount 1 ash";
        assert_eq!(told(lines).sizes.measured, 2);
    }
}
