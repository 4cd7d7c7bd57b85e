//! A plan in use and the wood: boards put back in part, taken again, and a size that is corrected once boards are cut.

use super::later::{Bench, ends_of, oak_top};
use super::sticks::{STICKS, of_sticks};
use super::*;
use crate::ledger::decide::{HaulCommand, Lying, PileFacts};
use crate::sheet::account::account;
use crate::sheet::make::keep::{again, changed_piles, changes, in_use, lacking};

/// Two plans took four sticks each; an act's entry.
fn two_plans() -> (Bench, Lying, Id) {
    let mut bench = Bench::of(STICKS);
    for _ in 0..2 {
        let rails = of_sticks(&bench, "peg", 800);
        bench.uses(&rails, false).unwrap();
    }
    let job = bench.story.names.job("tray").unwrap();
    let all = sources(&bench.shop(), job).unwrap();
    let strips = all.iter().find(|it| it.pile.length == Some(mm(900))).unwrap().which().0;
    (bench, strips, job)
}

fn free(bench: &mut Bench, Lying { haul, pile }: Lying, job: Id, n: Count) -> Id {
    bench.order(Command::Haul(HaulCommand::Free { haul, pile, job, n })).unwrap()[0].id
}

/// Needs, has, and what lies back on the rack; nothing where the job has all.
fn lacks(bench: &Bench, job: Id) -> Option<(Count, Count, Count)> {
    let shop = bench.shop();
    let plans = shop.job(job).unwrap().plans;
    lacking(&shop, job, &plans).map(|it| (it.needs, it.has, it.piles.iter().map(|pile| pile.on_rack).sum()))
}

fn plans(bench: &Bench, job: Id) -> usize {
    let shop = bench.shop();
    in_use(&shop, &shop.job(job).unwrap().plans).len()
}

/// On the rack and in the job, of the sticks as they were; and how many pieces are left of them.
fn sticks(bench: &Bench, job: Id) -> (Count, Count, Count) {
    let all = sources(&bench.shop(), job).unwrap();
    let n = |in_job| all.iter().find(|it| it.pile.length == Some(mm(900)) && it.in_job == in_job).map_or(0, |it| it.n);
    (n(false), n(true), all.iter().filter(|it| it.pile.length != Some(mm(900))).map(|it| it.n).sum())
}

/// What goes back by hand is missing, and is taken again by one act; once all of a plan's is back, it is a plan in use no more.
#[test]
fn what_is_put_back_in_part_is_missing_and_taken_again() {
    let (mut bench, strips, job) = two_plans();
    assert_eq!((lacks(&bench, job), plans(&bench, job), sticks(&bench, job)), (None, 2, (4, 8, 8)));
    free(&mut bench, strips, job, 3);
    assert_eq!((lacks(&bench, job), plans(&bench, job), sticks(&bench, job)), (Some((8, 5, 3)), 2, (7, 5, 5)));
    let again = bench.order(Command::Plan(PlanCommand::TakeAgain { job })).unwrap()[0].id;
    assert_eq!((lacks(&bench, job), sticks(&bench, job)), (None, (4, 8, 8)));
    bench.order(Command::Book(BookCommand::TakeBack { act: again })).unwrap();
    assert_eq!((lacks(&bench, job), sticks(&bench, job)), (Some((8, 5, 3)), (7, 5, 5)));
    bench.order(Command::Book(BookCommand::Restore { act: again })).unwrap();
    let why = bench.order(Command::Plan(PlanCommand::TakeAgain { job })).map(drop);
    assert_eq!(why, Err(crate::refusal::Refusal::NothingAsked));
    // The older plan's four are back: it is cut by no more; with the newer one's too, nothing is left of the boards.
    free(&mut bench, strips, job, 4);
    assert_eq!((lacks(&bench, job), plans(&bench, job), sticks(&bench, job)), (None, 1, (8, 4, 4)));
    free(&mut bench, strips, job, 4);
    assert_eq!((lacks(&bench, job), plans(&bench, job), sticks(&bench, job)), (None, 0, (12, 0, 0)));
}

/// What went back by hand is put right: what is missing and what is left of boards go along. Pieces of a plan stay its own, and what the plan
/// itself took is put right with the plan alone.
#[test]
fn what_was_put_back_by_hand_is_put_right_beside_a_plan() {
    use crate::ledger::decide::StockCommand;
    use crate::refusal::Refusal;
    let (mut bench, strips, job) = two_plans();
    let back = free(&mut bench, strips, job, 3);
    let mend = |bench: &mut Bench, entry, n| bench.order(Command::Stock(strips, StockCommand::Mend { entry, n, why: None })).map(|_| ());
    assert_eq!((lacks(&bench, job), sticks(&bench, job)), (Some((8, 5, 3)), (7, 5, 5)));
    mend(&mut bench, back, 1).unwrap();
    assert_eq!((lacks(&bench, job), sticks(&bench, job)), (Some((8, 7, 1)), (5, 7, 7)));
    mend(&mut bench, back, 4).unwrap();
    assert_eq!((plans(&bench, job), sticks(&bench, job)), (1, (8, 4, 4)));
    let by_plan = bench.book.entries().find(|(entry, _)| entry.fact.kind() == "PiecesTaken").map(|(entry, _)| entry.id).unwrap();
    assert_eq!(mend(&mut bench, by_plan, 3), Err(Refusal::NotThere));
    // A plan of pieces that the job had already is of as many still.
    let mut bench = Bench::of(STICKS);
    let Lying { haul, pile } = strips;
    let by_hand = bench.order(Command::Haul(HaulCommand::Take { haul, pile, job, n: 12 })).unwrap()[0].id;
    let turned = sources(&bench.shop(), job).unwrap().iter().map(Source::which).collect();
    let ask = Ask { job, what: What::Sticks(Some(1)), turned, bought: vec![], without: vec!["peg".into()], over: None };
    let given = given(&bench.shop(), &ask).unwrap();
    let mut goes_on = |_: crate::plan::patience::Progress<'_>| true;
    let answered = given.ready.asked.solve(&mut crate::plan::patience::Patience::new(Some(2_000), &mut goes_on), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    bench.uses(&(given, answered, shown), false).unwrap();
    assert_eq!((lacks(&bench, job), plans(&bench, job)), (None, 1));
    assert_eq!(mend(&mut bench, by_hand, 3), Err(Refusal::PlanRestsOnIt { pieces: 4, left: 3 }));
    mend(&mut bench, by_hand, 4).unwrap();
    assert_eq!((lacks(&bench, job), plans(&bench, job)), (None, 1));
}

/// Another job took what was put back: it is missing, and not on the rack.
#[test]
fn what_another_job_took_is_missing_still() {
    let (mut bench, strips, job) = two_plans();
    free(&mut bench, strips, job, 2);
    let (name, made_for) = ("Other".to_owned(), crate::ledger::kind::job::For::Spec);
    let (currency, units) = (Currency::USD, Units::Metric);
    let began = crate::ledger::decide::JobCommand::Begin { name, currency, units, pieces: 1, made_for };
    let other = bench.order(Command::Job(began)).unwrap()[0].id;
    let Lying { haul, pile } = strips;
    bench.order(Command::Haul(HaulCommand::Take { haul, pile, job: other, n: 5 })).unwrap();
    // One of the two lies there still, and that one is taken again.
    assert_eq!(lacks(&bench, job), Some((8, 6, 1)));
    bench.order(Command::Plan(PlanCommand::TakeAgain { job })).unwrap();
    assert_eq!(lacks(&bench, job), Some((8, 7, 0)));
    assert!(bench.order(Command::Plan(PlanCommand::TakeAgain { job })).is_err());
}

/// What is planned stays what it is while boards of it are back, and its share of the wood it needs.
#[test]
fn what_is_planned_stays_while_boards_are_back() {
    let (mut bench, strips, job) = two_plans();
    let wood = |bench: &Bench| {
        let wood = account(&bench.shop(), job).unwrap().wood;
        (wood.finished, wood.finished_of_used, wood.needed, wood.finished_of_gross_less_leftovers)
    };
    let whole = wood(&bench);
    assert!(whole.0.is_some() && whole.1.is_some(), "{whole:?}");
    free(&mut bench, strips, job, 3);
    assert_eq!(wood(&bench), whole);
    // The share is of the volume that is said.
    let now = account(&bench.shop(), job).unwrap().wood;
    let of = now.gross_less_leftovers.zip(now.finished).and_then(|(of, finished)| finished.share_of(of).ok());
    assert_eq!((of, now.needed == now.used), (now.finished_of_gross_less_leftovers, false));
    // Planned again beside them, it needs the wood of three plans; the pegs are the same.
    let rails = of_sticks(&bench, "peg", 800);
    bench.uses(&rails, false).unwrap();
    assert_eq!(lacks(&bench, job), Some((12, 9, 3)));
    let more = wood(&bench);
    assert!(whole.0 == more.0 && whole.2 < more.2 && more.1 < whole.1, "{more:?}");
}

/// A plan used instead of plans with boards back takes no piece twice, and puts none back that is not the job's.
#[test]
fn a_plan_instead_of_one_in_part_gives_the_rest_back() {
    let (mut bench, strips, job) = two_plans();
    free(&mut bench, strips, job, 3);
    let rails = of_sticks(&bench, "peg", 800);
    let act = bench.uses(&rails, true).unwrap()[0].id;
    assert_eq!((sticks(&bench, job), plans(&bench, job), lacks(&bench, job)), ((8, 4, 4), 1, None));
    bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
    assert_eq!((plans(&bench, job), lacks(&bench, job), sticks(&bench, job)), (2, Some((8, 5, 3)), (7, 5, 5)));
    // What was taken again goes with the plans as well.
    bench.order(Command::Plan(PlanCommand::TakeAgain { job })).unwrap();
    let act = bench.uses(&rails, true).unwrap()[0].id;
    assert_eq!((sticks(&bench, job), plans(&bench, job), lacks(&bench, job)), ((8, 4, 4), 1, None));
    bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
    assert_eq!((sticks(&bench, job), plans(&bench, job), lacks(&bench, job)), ((4, 8, 8), 2, None));
}

/// A plan used instead of one of two leaves the other alone: what it took, what it left, and that it is in use. By hand: each took four
/// of the twelve, and so does the new one.
#[test]
fn a_plan_instead_of_one_of_two_leaves_the_other() {
    for nth in [0, 1] {
        let (mut bench, _, job) = two_plans();
        let ids = |bench: &Bench| {
            let all = bench.shop().job(job).unwrap().plans;
            fold::in_use(&bench.book, &all).into_iter().map(|it| it.plan.id).collect::<Vec<_>>()
        };
        let before = ids(&bench);
        let (given, answered, shown) = of_sticks(&bench, "peg", 800);
        let left = left_over(&given, &shown, &|_, _| "left over".into());
        let plan = Box::new(kept(&given, &answered, &shown));
        let act = bench.order(Command::Plan(PlanCommand::Use { plan, left, instead: vec![before[nth]], partly: vec![] })).unwrap()[0].id;
        assert_eq!((sticks(&bench, job), lacks(&bench, job)), ((4, 8, 8), None));
        assert_eq!(ids(&bench), [before[1 - nth], act]);
        bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
        assert_eq!((sticks(&bench, job), ids(&bench)), ((4, 8, 8), before));
    }
}

/// The plan that is taken back takes what was taken again for it back too, and leaves what was taken by hand.
#[test]
fn a_plan_that_is_taken_back_leaves_nothing_of_its_own() {
    for by_hand in [0, 2] {
        let mut bench = Bench::of(STICKS);
        let job = bench.story.names.job("tray").unwrap();
        let Lying { haul, pile } = sources(&bench.shop(), job).unwrap()[0].which().0;
        if 0 < by_hand {
            bench.order(Command::Haul(HaulCommand::Take { haul, pile, job, n: by_hand })).unwrap();
        }
        let rails = of_sticks(&bench, "peg", 800);
        let act = bench.uses(&rails, false).unwrap()[0].id;
        let whole = sticks(&bench, job);
        free(&mut bench, Lying { haul, pile }, job, 3);
        bench.order(Command::Haul(HaulCommand::Take { haul, pile, job, n: 1 })).unwrap();
        if 0 < by_hand {
            assert_eq!(lacks(&bench, job), None, "boards alike are there");
        } else {
            bench.order(Command::Plan(PlanCommand::TakeAgain { job })).unwrap();
            assert_eq!((sticks(&bench, job), lacks(&bench, job)), (whole, None));
        }
        bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
        assert_eq!(sticks(&bench, job), (12 - by_hand, by_hand, 0), "{by_hand}");
        bench.order(Command::Book(BookCommand::Restore { act })).unwrap();
        assert_eq!(sticks(&bench, job), (8 - by_hand, 4 + by_hand, 4), "{by_hand}");
    }
}

/// The wood of a pile that is corrected goes for what was left of its boards, and a plan of them says so.
#[test]
fn the_wood_of_what_is_left_is_put_right_with_its_pile() {
    let wood = |key: &str| PileFacts { wood: crate::quantity::Key::read(key), ..PileFacts::default() };
    let (mut bench, strips, job) = two_plans();
    let all = |bench: &Bench| {
        let all = sources(&bench.shop(), job).unwrap();
        all.iter().filter(|it| !it.in_job).map(|it| it.pile.wood.as_ref().map(ToString::to_string)).collect::<Vec<_>>()
    };
    let before = all(&bench);
    let Lying { haul, pile } = strips;
    let act = bench.order(Command::Haul(HaulCommand::DescribePile { haul, pile, facts: wood("beech-european") })).unwrap()[0].id;
    assert!(1 < all(&bench).len() && all(&bench).iter().all(|it| it.as_deref() == Some("beech-european")), "{:?}", all(&bench));
    for plan in bench.shop().job(job).unwrap().plans {
        let (given, answered) = again(&bench.shop(), &plan, &[]).unwrap();
        let shown = sheet(&given.ready, &answered, given.room).unwrap();
        assert_eq!(changes(&bench.shop(), (&given, &shown), true).unwrap(), [Change::Wood(0)]);
        assert_eq!(changed_piles(&bench.shop(), &plan.plan), ["A"]);
    }
    bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
    assert_eq!(all(&bench), before);
    for plan in bench.shop().job(job).unwrap().plans {
        assert_eq!(changed_piles(&bench.shop(), &plan.plan), [] as [String; 0]);
    }
}

/// A side that is corrected goes for what was left of the boards as they were; what was sawn to another, or lies with other pieces, stays.
#[test]
fn what_is_left_of_a_pile_is_put_right_with_it() {
    let thick = |n: i64| PileFacts { thickness: Some(mm(n)), ..PileFacts::default() };
    let wide = |n: i64| PileFacts { width: Some(mm(n)), ..PileFacts::default() };
    let (mut bench, strips, job) = two_plans();
    let left = |bench: &Bench, job| {
        let all = sources(&bench.shop(), job).unwrap();
        all.iter()
            .filter(|it| !it.in_job)
            .find(|it| it.pile.name.as_deref() == Some("left over"))
            .map(|it| (it.pile.thickness, it.pile.width))
    };
    assert_eq!(left(&bench, job), Some((Some(mm(30)), Some(mm(60)))));
    let Lying { haul, pile } = strips;
    let act = bench.order(Command::Haul(HaulCommand::DescribePile { haul, pile, facts: thick(28) })).unwrap()[0].id;
    assert_eq!(left(&bench, job), Some((Some(mm(28)), Some(mm(60)))));
    bench.order(Command::Book(BookCommand::TakeBack { act })).unwrap();
    assert_eq!(left(&bench, job), Some((Some(mm(30)), Some(mm(60)))));
    bench.sized(strips, wide(59));
    assert_eq!(left(&bench, job), Some((Some(mm(30)), Some(mm(59)))));
    // Others were counted to it: it is no more of these boards alone.
    let lying = sources(&bench.shop(), job).unwrap().iter().find(|it| it.pile.name.as_deref() == Some("left over")).unwrap().which().0;
    bench.order(Command::Haul(HaulCommand::Count { haul, pile: lying.pile, n: 2, way: crate::ledger::kind::haul::Way::Tap })).unwrap();
    bench.sized(strips, thick(26));
    assert_eq!(left(&bench, job), Some((Some(mm(30)), Some(mm(59)))));
    // What was ripped and planed has the width of its rip and is as thick as it was planed, whatever its board was.
    let (mut bench, plan) = oak_top();
    bench.uses(&plan, false).unwrap();
    let (job, before) = (plan.0.ask.job, left(&bench, plan.0.ask.job).unwrap());
    bench.sized(ends_of(&plan.0), thick(35));
    bench.sized(ends_of(&plan.0), wide(140));
    assert_eq!(left(&bench, job), Some(before));
}

/// Maple lies as A and walnut as B; planned with boards to buy alone, or with the maple alone, these are C: a letter is of one pile, also
/// where that is not in the plan.
#[test]
fn a_letter_is_of_one_pile_in_the_plan_or_not() {
    let bench = Bench::of(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile maple oak-european 25 x 55 x 900 mm\ncount 44 maple\n\
         pile walnut walnut-european 38 x 120 x 320 mm\ncount 26 walnut\njob tray \"Tray\" 1 spec\n\
         part \"rail\" 2 of 20 x 50 x 800 mm for tray\n",
    );
    let job = bench.story.names.job("tray").unwrap();
    let which = sources(&bench.shop(), job).unwrap()[0].which();
    let boards = super::super::Boards { wood: None, size: [mm(25), mm(150), mm(2000)], n: 5, price: None };
    for (turned, letters) in [(vec![], vec!["A", "C"]), (vec![which], vec!["C"])] {
        let ask = Ask { job, what: What::Sticks(Some(1)), turned, bought: vec![boards.clone()], without: vec![], over: None };
        let given = given(&bench.shop(), &ask).unwrap();
        assert_eq!(given.ready.sources.iter().map(|it| it.letter.as_str()).collect::<Vec<_>>(), letters);
    }
}
