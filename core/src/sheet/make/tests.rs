mod agree;
mod just;
mod later;
mod parts;
mod sticks;
mod tiles;

use super::keep::{is_possible, kept, left_over};
use super::*;
use crate::ledger::decide::{BookCommand, Command, Now, PlanCommand, decide};
use crate::ledger::stamp::Clock;
use crate::ledger::{Book, fold};
use crate::plan::rows::plan::{Piece, Plan};
use crate::plan::{Answered, Asked, Made, post};
use crate::quantity::Currency;
use crate::sheet::plan::{Mark, PlanSheet, Why, sheet};
use crate::story::{BENCH, Story, tell};

fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

fn oak_top() -> Top {
    Top { length: mm(1040), width: mm(340), thickness: Some(mm(32)), rows: Some(8), apart: mm(100), split: true, ..Top::default() }
}

/// The job of the shoe bench, and its oak tread ends to plan with: those the job has, or those on the rack.
fn ask(story: &Story, in_job: bool) -> Ask {
    let job = story.names.job("bench").expect("the job");
    let shop = Shop::of(&story.book, story.now.at);
    let ends = |source: &&Source| source.pile.length == Some(mm(365));
    let all = sources(&shop, job).unwrap();
    let turned = all.iter().filter(|source| ends(source) && source.in_job == in_job).map(Source::which);
    let turned = if in_job { turned.collect() } else { vec![] };
    let others = all.iter().filter(|source| !source.in_job && (in_job || !ends(source))).map(Source::which);
    let turned: Vec<Which> = turned;
    Ask { job, what: What::Top(oak_top()), turned: turned.into_iter().chain(others).collect(), bought: vec![], without: vec![], over: None }
}

/// The reference plan of the drawing: strip, place, length in millimetres.
const ROWS: [[(i64, i64, i64); 4]; 8] = [
    [(1, 0, 256), (8, 256, 64), (9, 320, 360), (10, 680, 360)],
    [(1, 0, 101), (11, 101, 360), (12, 461, 360), (2, 821, 219)],
    [(4, 0, 212), (5, 212, 108), (13, 320, 360), (14, 680, 360)],
    [(6, 0, 108), (15, 108, 360), (16, 468, 360), (7, 828, 212)],
    [(5, 0, 249), (7, 249, 71), (17, 320, 360), (18, 680, 360)],
    [(2, 0, 138), (19, 138, 360), (20, 498, 360), (3, 858, 182)],
    [(6, 0, 249), (7, 249, 71), (21, 320, 360), (22, 680, 360)],
    [(4, 0, 145), (23, 145, 360), (24, 505, 360), (3, 865, 175)],
];

fn reference(given: &Given) -> Answered {
    let per = 1_000_000 / given.ready.unit;
    let piece = |(n, at, length): (i64, i64, i64)| Piece { pile: 0, n, at: at * per, length: length * per };
    let rows = ROWS.iter().map(|row| row.iter().copied().map(piece).collect()).collect();
    let plan = Plan { rows, remainders: vec![] };
    // The reference counts what goes back, 293; a page counts strips whole. Its third figure is in whole micrometres.
    let back = 293_000_i128;
    let worth = vec![8, i128::from((147 + 293) * per), (3_111_551_000_000 + back * back) / i128::from(1_000 / per).pow(2)];
    Answered { plan: Made::Rows(plan), worth: worth.clone(), bound: worth }
}

fn planned(story: &Story, in_job: bool) -> (Given, Answered, PlanSheet) {
    let shop = Shop::of(&story.book, story.now.at);
    let given = given(&shop, &ask(story, in_job)).unwrap();
    let answered = reference(&given);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    (given, answered, shown)
}

/// The figures of the drawing: 33 strips from 11 ends, 24 used, 16 whole, 8 cut, the 293, 147 mm lost of 8760 less that, no fewer strips.
#[test]
fn the_oak_top_is_as_it_is_drawn() {
    let (given, _, shown) = planned(&tell(BENCH), true);
    let Asked::Rows(problem) = &given.ready.asked else { panic!("rows") };
    assert_eq!((problem.piles.len(), problem.piles[0].count, given.ready.sources[0].ripped), (1, 33, 3));
    assert_eq!((shown.made, shown.proof.best), (8, true));
    assert!(matches!(shown.proof.why, Some(Why::Fewest { pieces: 24, .. })), "{:?}", shown.proof);
    let used = &shown.used[0];
    assert_eq!((used.used, used.there, used.pieces, used.left_whole), (24, 33, 8, 9));
    assert_eq!((used.remainders.as_slice(), shown.waste.length), (&[mm(293)][..], Some([mm(147), mm(8467)])));
    assert_eq!((shown.lines[0].n, shown.lines[0].numbers.len()), (16, 0));
    assert_eq!(shown.lines.iter().flat_map(|line| &line.numbers).count(), 8);
    assert_eq!((shown.picture.outer, shown.picture.pieces.len()), ([mm(1040), mm(340)], 32));
    let marks: Vec<Mark> = shown.picture.pieces.iter().take(4).map(|piece| piece.mark).collect();
    assert_eq!(marks, [Mark::Number(1), Mark::Number(8), Mark::Letter, Mark::Letter]);
}

/// Taken, and taken back, in one act; a rack that changed since is noticed.
#[test]
fn the_wood_of_a_plan_is_taken_and_given_back_in_one_act() {
    let story = tell(&format!("{BENCH}\nreopen bench"));
    let shop = Shop::of(&story.book, story.now.at);
    let (given, answered, shown) = planned(&story, false);
    let plan = kept(&given, &answered, &shown);
    let left = left_over(&given, &shown, &|_, _| "left over".into());
    assert_eq!(left.iter().map(|one| (one.n, one.size[2])).collect::<Vec<_>>(), [(1, mm(293))]);
    assert!(is_possible(&shop, &given, &shown));
    let mut book = story.book.clone();
    let ends = |book: &Book| {
        let shop = Shop::of(book, story.now.at);
        let all = sources(&shop, given.ask.job).unwrap();
        let n = |in_job| all.iter().find(|it| it.pile.length == Some(mm(365)) && it.in_job == in_job).map_or(0, |it| it.n);
        (n(false), n(true))
    };
    let mut clock = Clock::new(crate::ledger::Device::new([1; 8]), book.last_stamp());
    let mut order = |book: &mut Book, command: Command, n: u8| {
        let act = decide(book, &command, Now { wall: story.now, chance: [n; 10] })?;
        let entries = act.stamped(book, &mut clock);
        let first = entries[0].id;
        entries.into_iter().for_each(|entry| drop(book.add(&entry)));
        Ok::<Id, crate::refusal::Refusal>(first)
    };
    assert_eq!(ends(&book), (12, 11));
    let act = order(
        &mut book,
        Command::Plan(PlanCommand::Use { plan: Box::new(plan.clone()), left: left.clone(), instead: vec![], partly: vec![] }),
        1,
    )
    .unwrap();
    assert_eq!(ends(&book), (4, 19));
    let job = fold::job(&book, given.ask.job).unwrap();
    let (asked, told) = keep::last_used(&job.plans).and_then(|kept| kept.told()).unwrap();
    assert_eq!((post::put(&asked), told), (post::put(&given.ready.asked), answered), "names stay at home");
    assert!(is_possible(&Shop::of(&book, story.now.at), &given, &shown), "what it took goes back for it");
    assert!(
        order(&mut book, Command::Plan(PlanCommand::Use { plan: Box::new(plan), left, instead: vec![], partly: vec![] }), 2).is_err(),
        "eight more are not there"
    );
    order(&mut book, Command::Book(BookCommand::TakeBack { act }), 3).unwrap();
    assert_eq!(ends(&book), (12, 11));
    assert_eq!(fold::job(&book, given.ask.job).unwrap().plans, vec![]);
}

/// A plan is made for the sizes as they were: with others it is to be made again.
#[test]
fn a_plan_of_other_sizes_is_noticed() {
    let story = tell(&format!("{BENCH}\nreopen bench"));
    let (given, _, shown) = planned(&story, false);
    let lying = given.sources.iter().find(|it| it.pile.length == Some(mm(365))).map(|it| it.which().0).unwrap();
    let changed = |command: Command| {
        let mut book = story.book.clone();
        let act = decide(&book, &command, Now { wall: story.now, chance: [9; 10] }).unwrap();
        let entries = act.stamped(&book, &mut Clock::new(crate::ledger::Device::new([1; 8]), book.last_stamp()));
        entries.into_iter().for_each(|entry| drop(book.add(&entry)));
        is_possible(&Shop::of(&book, story.now.at), &given, &shown)
    };
    let facts = crate::ledger::decide::PileFacts { length: Some(mm(350)), ..Default::default() };
    let shorter = crate::ledger::decide::HaulCommand::DescribePile { haul: lying.haul, pile: lying.pile, facts };
    assert!(!changed(Command::Haul(shorter)), "shorter pieces");
}

/// Out of doors nothing is published of how wood moves: the plan stands without it.
#[test]
fn a_room_beyond_the_table_leaves_the_plan() {
    let story = tell(&format!("{BENCH}\nreopen bench"));
    let (given, answered, shown) = planned(&story, false);
    assert!(shown.moves.is_some());
    let point = |met: f64| crate::wood::moisture::Moisture::per_cent(met).unwrap();
    let outdoors = sheet(&given.ready, &answered, Room::of(point(15.0), point(19.0)).unwrap()).unwrap();
    assert_eq!((outdoors.moves, outdoors.made), (None, shown.made));
}

/// What fits a top, by its sides and the machines.
#[test]
fn pieces_that_do_not_fit_say_why() {
    let why = |lines: &str, top: Top| {
        let story = tell(&format!("{BENCH}{lines}"));
        let shop = Shop::of(&story.book, story.now.at);
        let fit = fitting(&shop, &Ask { what: What::Top(top), ..ask(&story, true) }).unwrap();
        let on_rack = fit.into_iter().filter(|(source, _)| !source.in_job);
        on_rack.map(|(source, why)| (source.pile.length.map_or(0, |it| it.as_nm() / 1_000_000), why)).collect::<Vec<_>>()
    };
    let thin = Some(Unfit::TooThin);
    assert_eq!(why("", oak_top()), [(365, None), (1010, thin), (700, thin)]);
    let any = Top { thickness: None, ..oak_top() };
    assert_eq!(why("", any.clone()), [(365, None), (1010, None), (700, Some(Unfit::TooNarrow))]);
    let machine = why("\nmachine planer length 400 mm", any);
    assert_eq!(machine[0], (365, Some(Unfit::UnderMachine(mm(400)))));
}

/// Nine squares are left of the stands: legs fit across them as they are, two stands have four each; the top is glued up.
#[test]
fn the_parts_of_the_stands_find_their_piles() {
    let story = tell(crate::story::STANDS);
    let job = story.names.job("stands").expect("the job");
    let shop = Shop::of(&story.book, story.now.at);
    let given = given(&shop, &Ask { job, what: What::Parts(None), turned: vec![], bought: vec![], without: vec![], over: None }).unwrap();
    let Asked::Parts(problem) = &given.ready.asked else { panic!("parts") };
    let glued: Vec<(&str, bool)> = problem.parts.iter().map(|part| (part.id.as_str(), part.glue)).collect();
    assert_eq!(glued, [("top", true), ("leg", false), ("rail", false), ("peg", false)]);
    let mut on = |_: crate::plan::patience::Progress<'_>| true;
    let answered = given.ready.asked.solve(&mut crate::plan::patience::Patience::new(Some(20_000), &mut on), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!(shown.made, 2);
}

/// The stands' rack is nearly empty: with two boards to buy at 14 each a third stand is made, and it says how many are to be bought.
#[test]
fn boards_to_buy_are_planned_with_and_told() {
    let story = tell(crate::story::STANDS);
    let job = story.names.job("stands").expect("the job");
    let shop = Shop::of(&story.book, story.now.at);
    let price = Money::whole(Decimal::from(14), Currency::USD);
    let inches = |n: i64| Length::INCH_64TH.times(n * 16).unwrap();
    let boards = Boards { wood: Key::read("ash-white"), size: [8, 24, 240].map(inches), n: 5, price };
    let ask = Ask { job, what: What::Parts(Some(3)), turned: vec![], bought: vec![boards], without: vec![], over: None };
    let given = given(&shop, &ask).unwrap();
    let mut on = |_: crate::plan::patience::Progress<'_>| true;
    let answered = given.ready.asked.solve(&mut crate::plan::patience::Patience::new(Some(20_000), &mut on), 1);
    let shown = sheet(&given.ready, &answered, given.room).unwrap();
    assert_eq!(shown.made, 3);
    let [(_, n, cost)] = buy::not_bought(&given, &shown)[..] else { panic!("{:?}", shown.used) };
    assert_eq!(cost, Money::whole(Decimal::from(14 * n), Currency::USD));
    assert!((1..5).contains(&n), "no more than it takes: {n}");
    assert!(is_possible(&shop, &given, &shown), "what lies on the rack is there");
    // What was planned comes back with its boards.
    let plan = crate::ledger::fold::KeptPlan {
        id: job,
        at: story.now,
        by: crate::ledger::Device::new([1; 8]),
        plan: kept(&given, &answered, &shown),
        used: false,
    };
    let (again, told) = keep::again(&shop, &plan, &ask.bought).unwrap();
    let (was, is) = (post::put(&given.ready.asked), post::put(&again.ready.asked));
    assert!(again.ask == ask && is == was && told == answered, "names stay at home");
    assert!(keep::again(&shop, &plan, &[]).is_none());
}

/// Of two parts the one that comes nearer says why, in whichever order they stand.
#[test]
fn the_part_that_comes_nearest_says_why() {
    let parts = ["part \"rail\" 1 of 20 x 50 x 400 mm for tray\n", "part \"plate\" 1 of 20 x 90 x 200 mm for tray\n"];
    for [one, other] in [parts, [parts[1], parts[0]]] {
        let rack = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile rest oak-european 27 x 62 x 288 mm\ncount 4 rest\n";
        let story = tell(&format!("{rack}job tray \"Bench\" 1 spec\n{one}{other}"));
        assert_eq!(story.refused, []);
        let shop = Shop::of(&story.book, story.now.at);
        let job = story.names.job("tray").expect("the job");
        let ask = Ask { job, what: What::Sticks(None), turned: vec![], bought: vec![], without: vec![], over: None };
        let why = fitting(&shop, &ask).unwrap().into_iter().map(|(_, why)| why).collect::<Vec<_>>();
        assert_eq!(why, [Some(Unfit::TooShort)], "{one}{other}");
    }
}
