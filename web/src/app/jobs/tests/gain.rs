//! The maker's own gain on the page of hours: what twice the pieces take, once enough of them were noted.

use super::*;

const WEEK: &str = include_str!("../../../../../tests/stories/second-week.txt");

const DOUBLING: &str = "By your own batches twice the pieces take 1.60 times as long.";

/// 32 knobs in 4 h 22, noted as 1, 2, 4, 8, 16 and 32, each time 1.6 times as long: 64 take 1.6^6 of the first, 16.78, where 32 took 1.6^5, 10.49. So
/// 1.6 times 262.1 is 419.4: 6 h 59.
#[test]
fn five_repeats_say_what_twice_the_pieces_take() {
    let mut maker = Maker::told(&[WEEK]);
    maker.room("more", Room::Hours);
    maker.shows(&["6 h 59", "by 1 job of this design: Knobs of March 4 h 22 for 32, × 16.78 / 10.49 for 64 = 6 h 59.", DOUBLING]);
}

/// With the sixteen not noted there are four repeats: ours is used, of which further pieces take no less than 0.70 of the first.
#[test]
fn four_repeats_do_not() {
    let fewer = WEEK.replace("10:38:19 done 16\n", "");
    let mut maker = Maker::told(&[&fewer]);
    maker.room("more", Room::Hours).shows(&["Knobs of March 4 h 22 for 16"]).hides(&["By your own batches"]);
}
