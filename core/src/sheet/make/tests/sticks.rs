//! Lengths from sticks, of a job.

use super::later::{Bench, of_sticks};
use crate::sheet::plan::wish::Wish;

/// A part is cut to length only from sticks that have its section, with what is over: legs of 36 never come from a pile 27 thick.
#[test]
fn a_stick_is_never_cut_of_a_thinner_pile() {
    let bench = Bench::of(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile thin oak-european 27 x 62 x 1010 mm\ncount 40 thin\n\
         pile thick oak-european 40 x 150 x 365 mm\ncount 31 thick\njob tray \"Tray\" 1 spec\n\
         part \"leg\" 4 of 36 x 60 x 350 mm for tray\npart \"rail\" 2 of 22 x 50 x 900 mm for tray\n",
    );
    let (given, _, shown) = of_sticks(&bench, "", 0);
    let Wish::Sticks(parts) = &given.ready.wish else { panic!("sticks") };
    assert!(!shown.lines.is_empty());
    for line in &shown.lines {
        let [thickness, width, _] = given.ready.sources[line.source].size;
        for part in line.pieces.iter().filter_map(|cut| parts.parts.get(cut.part?)) {
            let [thick, wide, _] = part.size;
            assert!(thick <= thickness && wide <= width, "{} of {thick:?} from {thickness:?}", part.name);
        }
    }
}
