//! A plan that is not what it says is neither shown nor used: the page's sheet and the order refuse it alike.

#[path = "../examples/envelope/mod.rs"]
mod envelope;
mod maker;
mod plans_of_others;

use fivebar_core::ledger::decide::{Command, JobCommand, PlanCommand};
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::plan::{PlanKept, PlanPile, Shape};
use fivebar_core::plan::{Answered, Asked, Made, Sense, post};
use fivebar_core::quantity::{Currency, Length, Units};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::plan::figures::Figures;
use fivebar_core::sheet::plan::ready::Ready;
use fivebar_core::sheet::plan::sheet;
use fivebar_core::sheet::plan::wish::{Parts, Wish};
use fivebar_core::wood::movement::Room;
use maker::{Maker, mm};
use plans_of_others::{answered, text, value};

/// A problem of each kind with the best plan of others.
const GOOD: [&str; 4] = ["rows-small-minend", "parts-small-kerf", "sticks-small-keep", "field-small-two"];

fn good(name: &str) -> (Asked, Answered) {
    let asked = envelope::read(&text(&format!("instances/{name}.json"))).unwrap().problem;
    let plan = answered(&asked, &value(&format!("reference/{name}.json")), 1).unwrap();
    (asked, plan)
}

/// Whether the sheet, then the order, refuses the plan as one that breaks a rule.
fn refused(asked: &Asked, answered: &Answered) -> [bool; 2] {
    let wish = Wish::Sticks(Parts { sets: None, parts: vec![] });
    let figures = Figures::usual(Units::Metric).unwrap();
    let ready = Ready { wish, figures, asked: asked.clone(), sources: vec![], left_out: vec![], unit: 1_000_000 };
    let shown = sheet(&ready, answered, Room::HEATED).err();
    [shown, used(asked, answered)].map(|refusal| refusal == Some(Refusal::PlanBroken))
}

/// What an order says that takes one piece of a pile by such a plan.
fn used(asked: &Asked, answered: &Answered) -> Option<Refusal> {
    let mut maker = Maker::new(Currency::USD);
    maker.at((2026, 3, 2), 540, -5);
    let haul = maker.trip(None, Length::MILE, ("0.725", Per::Km), (47, 36));
    let size = [30, 140, 900].map(mm);
    let pile = maker.pile(haul, Some("oak-european"), size, 9);
    let begin = JobCommand::Begin { name: "stool".into(), currency: Currency::USD, units: Units::Metric, pieces: 1, made_for: For::Spec };
    let job = maker.order(Command::Job(begin))[0];
    let (rips, in_job, letter, wood) = (None, None, None, None);
    let [thickness, width, length] = [None; 3];
    let plan = PlanKept {
        piles: vec![PlanPile { haul, pile, n: 9, used: Some(1), rips, in_job, thickness, width, length, letter, wood }],
        problem: post::write(&post::put(asked)),
        answer: post::write(&post::put_answer(answered)),
        ..plain(job)
    };
    maker.try_order(Command::Plan(PlanCommand::Use { plan: Box::new(plan), left: vec![], instead: vec![], partly: vec![] })).err()
}

fn plain(job: fivebar_core::quantity::Id) -> PlanKept {
    PlanKept {
        job,
        shape: Shape::Sticks,
        unit: mm(1),
        piles: vec![],
        problem: String::new(),
        answer: String::new(),
        width: None,
        thickness: None,
        saw: None,
        parts: None,
        strip: None,
        cut: None,
        sets: None,
        tile: None,
        rows_cut: None,
        boards_cut: None,
    }
}

/// Worse by one, as the figure is better for being more or less.
fn worse(asked: &Asked, figure: i128) -> i128 {
    if asked.senses()[0] == Sense::More { figure - 1 } else { figure + 1 }
}

/// A piece, or all of a field, a little off its place.
fn moved(made: &mut Made) {
    match made {
        Made::Rows(plan) => plan.rows[0][0].at += 1,
        Made::Parts(plan) => plan.boards[0].bands[0].pieces[0].at -= 1,
        Made::Sticks(plan) => plan.sticks[0].pieces[0].at += 1,
        Made::Field(plan) => plan.field.as_mut().unwrap().outer[0] += 1,
    }
}

#[test]
fn a_plan_that_is_not_what_it_says_is_neither_shown_nor_used() {
    let check = |what: &str, spoil: &dyn Fn(&Asked, &mut Answered), is_refused: bool| {
        for name in GOOD {
            let (asked, mut plan) = good(name);
            spoil(&asked, &mut plan);
            assert_eq!(refused(&asked, &plan), [is_refused; 2], "{name}: {what}");
        }
    };
    check("as it is", &|_, _| {}, false);
    check("a worth of one more", &|_, plan| plan.worth[0] += 1, true);
    check("a worth of one less", &|_, plan| plan.worth[1] -= 1, true);
    check("a worth without its last figure", &|_, plan| plan.worth.truncate(1), true);
    check("a bound that the plan passes", &|asked, plan| plan.bound[0] = worse(asked, plan.worth[0]), true);
    check("a bound that says nothing", &|_, plan| plan.bound.clear(), false);
    check("a bound of more figures than there are", &|_, plan| plan.bound = [plan.worth.clone(), vec![0]].concat(), true);
    check("a piece moved", &|_, plan| moved(&mut plan.plan), true);
    check("a plan of another problem", &|asked, plan| *plan = other(asked), true);
}

/// The plan of another kind of problem.
fn other(asked: &Asked) -> Answered {
    let sticks = matches!(asked, Asked::Sticks(_));
    good(if sticks { GOOD[0] } else { GOOD[2] }).1
}
