//! Lengths from sticks, of a job.

use super::later::{Bench, as_kept, older};
use super::*;
use crate::ledger::decide::JobCommand;
use crate::ledger::kind::job::PartPlanned;
use crate::sheet::make::keep::again;
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

/// Twelve sticks, and a job with four rails and a short piece of them.
pub(super) const STICKS: &str = "2026-03-02 09:00 -05:00 workshop USD metric\nleave for yard\npile strips oak-european 30 x 60 x 900 mm\n\
    count 12 strips\njob tray \"Tray\" 1 spec\npart \"rail\" 4 of 28 x 58 x 500 mm oak-european for tray\n\
    part \"peg\" 1 of 28 x 58 x 350 mm oak-european for tray\n";

/// One of a part, of the piles on the rack that are so long.
pub(super) fn of_sticks(bench: &Bench, without: &str, long: i64) -> (Given, Answered, PlanSheet) {
    let job = bench.story.names.job("tray").unwrap();
    let all = sources(&bench.shop(), job).unwrap();
    let turned = all.iter().filter(|it| !it.in_job && it.pile.length.is_some_and(|it| it < mm(long))).map(Source::which).collect();
    let ask = Ask { job, what: What::Sticks(Some(1)), turned, bought: vec![], without: vec![without.into()], over: None };
    let given = given(&bench.shop(), &ask).unwrap();
    let mut goes_on = |_: crate::plan::patience::Progress<'_>| true;
    let answered = given.ready.asked.solve(&mut crate::plan::patience::Patience::new(Some(2_000), &mut goes_on), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    (given, answered, shown)
}

/// Of an older book the section of a part that is no more is not known: no waste by volume, and no weight.
#[test]
fn a_stick_of_an_unknown_part_has_its_length_alone() {
    let mut bench = Bench::of(STICKS);
    let (given, answered, shown) = of_sticks(&bench, "peg", 0);
    let facts = older(kept(&given, &answered, &shown));
    let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts.clone()), &[]).unwrap();
    let now = sheet(&given.ready, &answered, given.room).unwrap();
    assert!(now.waste.share.is_some() && !given.lacks.names, "the part is as it was");
    let gone = PartPlanned { n: 0, job: facts.job, name: "rail".into(), thickness: mm(28), width: mm(58), length: mm(500), wood: None };
    bench.order(Command::Job(JobCommand::PlanPart(gone))).unwrap();
    let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts), &[]).unwrap();
    let now = sheet(&given.ready, &answered, given.room).unwrap();
    assert!(given.lacks.names);
    assert_eq!((now.waste.share, now.weight, now.waste.length), (None, crate::quantity::Mass::ZERO, shown.waste.length));
}
