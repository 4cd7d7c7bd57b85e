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

/// An older plan left its remainders as thick and wide as the strip was sawn, and its page counts so much as going back; one of today left
/// them planed.
#[test]
fn what_went_back_is_as_it_was_left() {
    let check = |older: bool| {
        let (mut bench, (given, answered, mut shown)) = oak_top();
        let rough = given.ready.sources[0].size;
        let planed = shown.used[0].section;
        assert!(planed[0] < rough[0] && !shown.used[0].remainders.is_empty(), "{planed:?} of {rough:?}");
        let wanted = if older { [rough[0], rough[1]] } else { planed };
        shown.used[0].section = wanted;
        bench.uses(&(given.clone(), answered.clone(), shown), false).unwrap();
        let shop = bench.shop();
        let plans = shop.job(given.ask.job).unwrap().plans;
        let (then, answered) = again(&shop, &plans[0], &[]).unwrap();
        let sheet = sheet_of(&then, &answered);
        assert_eq!(sheet.used[0].section, wanted, "older: {older}");
        sheet.waste.taken
    };
    assert!(check(true) < check(false), "more went back");
}

fn sheet_of(given: &Given, answered: &Answered) -> PlanSheet {
    crate::sheet::plan::sheet(&given.ready, answered, given.room).unwrap()
}
