//! Plans of parts and the list they were made for.

use super::later::{Bench, as_kept, older};
use super::*;
use crate::ledger::decide::JobCommand;
use crate::ledger::kind::plan::PlanKept;
use crate::sheet::make::changes::changes;
use crate::sheet::make::keep::again;
use crate::sheet::plan::wish::Wish;

/// The stands of the demo, planned without some of their parts.
fn stands(without: &[&str]) -> (Bench, (Given, Answered, PlanSheet)) {
    let bench = Bench::of(crate::story::STANDS);
    let job = bench.story.names.job("stands").unwrap();
    let without = without.iter().map(|name| (*name).to_owned()).collect();
    let given = given(&bench.shop(), &Ask { job, what: What::Parts(None), turned: vec![], bought: vec![], without, over: None }).unwrap();
    let mut on = |_: crate::plan::patience::Progress<'_>| true;
    let answered = given.ready.asked.solve(&mut crate::plan::patience::Patience::new(Some(20_000), &mut on), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    (bench, (given, answered, shown))
}

/// The parts keep the names they were planned under, whatever is taken off the list later; an older book names those that are still as
/// they were, and says that others are missing.
#[test]
fn parts_keep_the_names_they_were_planned_under() {
    let (mut bench, plan) = stands(&[]);
    let facts = kept(&plan.0, &plan.1, &plan.2);
    let job = plan.0.ask.job;
    let first = bench.shop().job(job).unwrap().parts[0].clone();
    let [thickness, width, length] = first.size;
    let off = crate::ledger::kind::job::PartPlanned { job, name: first.name.clone(), n: 0, thickness, width, length, wood: None };
    bench.order(Command::Job(JobCommand::PlanPart(off))).unwrap();
    let names = |facts: &PlanKept| {
        let (given, answered) = again(&bench.shop(), &as_kept(&bench, facts.clone()), &[]).unwrap();
        let shown = sheet(&given.ready, &answered, given.room).unwrap();
        assert_eq!(shown.lines, plan.2.lines);
        let Wish::Parts(parts) = &given.ready.wish else { panic!("parts") };
        let names: Vec<String> = parts.parts.iter().map(|part| part.name.clone()).collect();
        (names, given.lacks.names, changes(&bench.shop(), (&given, &shown), true).unwrap())
    };
    let named = |names: [&str; 4]| names.map(str::to_owned).to_vec();
    assert_eq!(names(&facts), (named(["top", "leg", "rail", "peg"]), false, vec![Change::Parts(vec!["top".into()])]));
    assert_eq!(names(&older(facts)), (named(["", "leg", "rail", "peg"]), true, vec![Change::Parts(vec![])]));
}

/// A part that is left out is planned without, and a plan says so later: it is no part that came since.
#[test]
fn a_part_can_be_left_out() {
    let (bench, plan) = stands(&["top"]);
    let facts = kept(&plan.0, &plan.1, &plan.2);
    let (given, _) = again(&bench.shop(), &as_kept(&bench, facts), &[]).unwrap();
    let Wish::Parts(parts) = &given.ready.wish else { panic!("parts") };
    assert_eq!((parts.parts.len(), given.ask.without.as_slice()), (3, &["top".to_owned()][..]));
    assert_eq!(changes(&bench.shop(), (&given, &plan.2), false).unwrap(), []);
    let asked = bench.shop();
    let ask = Ask { what: What::Sticks(None), without: vec![], ..plan.0.ask.clone() };
    let why = |ask: &Ask| super::super::given(&asked, ask).err();
    assert_eq!(why(&ask), Some(WhyNot::NoneForPart("top".into())));
    assert_eq!(why(&Ask { without: vec!["top".into()], ..ask }), None);
}
