//! The story of a design that is kept, made again and reckoned from the rack: every figure reasoned.

use fivebar_core::ledger::fold;
use fivebar_core::plan::outlook::{Outlook, outlook};
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::quantity::{Currency, Id, Units};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::{Ask, What, given};
use fivebar_core::sheet::outlook::{Made, Wood, of_designs, of_job};
use fivebar_core::sheet::plan::sheet;
use fivebar_core::story::{Story, tell};

const DESIGNS: &str = include_str!("../../tests/stories/designs.txt");

fn up_to(heading: &str) -> Story {
    let story = tell(DESIGNS.split(heading).next().unwrap());
    assert_eq!(story.refused, []);
    story
}

fn of_first_design(story: &Story) -> Wood {
    let shop = Shop::of(&story.book, story.now.at);
    of_designs(&shop, &shop.workshop.designs, (Currency::USD, Units::Inch)).remove(0).unwrap()
}

#[track_caller]
fn check(wood: &Wood, sure: i64, likely: i64, all: i64, short: &[&str]) -> Outlook {
    let found = outlook(&wood.hoped, 1);
    let named: Vec<&str> = found.short.iter().map(|part| wood.parts[*part].as_str()).collect();
    assert_eq!((found.sure, found.likely, found.all, named), (sure, likely, all, short.to_vec()), "{found:?}");
    found
}

/// So many good or more of n, where of a + b - 2 alike a - 1 were good: a ratio of whole numbers.
fn at_least(k: u64, n: u64, (a, b): (u64, u64)) -> f64 {
    let choose = |n: u64, k: u64| (0..k).fold(1_u128, |c, i| c * u128::from(n - i) / u128::from(i + 1));
    let one = |good: u64| choose(good + a - 1, good) * choose(n - good + b - 1, n - good);
    (k..=n).map(one).sum::<u128>() as f64 / choose(n + a + b - 1, n) as f64
}

/// A square gives one leg: 18 1/16 in of the 18 1/2 that two trims of 1/4 leave of 19, and no second one across. A strip gives one rail.
/// 30 squares make seven stands of four legs if all are good, 24 strips twelve of two rails. With one in four a reject, a guess that weighs
/// 12 pieces, 12 of the squares or more are good in 98.8 of a hundred draws, 16 in 93.2, 20 in 76.9: three stands are sure, four likely.
#[test]
fn before_it_is_sorted() {
    let story = up_to("# --- ten squares");
    let chances: Vec<f64> = (1..=7).map(|sets| at_least(4 * sets, 30, (9, 3))).collect();
    let reached = |level: f64| chances.iter().filter(|chance| level <= **chance).count() as i64;
    assert_eq!((reached(0.95), reached(0.8)), (3, 4), "{chances:?}");
    let found = check(&of_first_design(&story), 3, 4, 7, &["leg"]);
    assert_eq!((found.draws, found.open), (1_000, 0));
    // The job sees the same rack.
    let shop = Shop::of(&story.book, story.now.at);
    let job = of_job(&shop, story.names.job("first").unwrap()).unwrap();
    check(&job, 3, 4, 7, &["leg"]);
}

/// A plan of two stands is known, and none of its pieces is sorted: it says nothing of what is sure, and that all good pieces give two at the
/// least. One of other parts says nothing.
#[test]
fn a_plan_that_is_known_is_handed_in() {
    let story = up_to("# --- ten squares");
    let shop = Shop::of(&story.book, story.now.at);
    let job = story.names.job("first").unwrap();
    let ask = Ask { job, what: What::Parts(Some(2)), turned: vec![], bought: vec![], without: vec![], over: None };
    let given = given(&shop, &ask).unwrap();
    let answered = given.ready.asked.solve(&mut Patience::new(Some(2_000), &mut |_: Progress<'_>| true), 1);
    let told = sheet(&given.ready, &answered, given.room).unwrap();
    let wood = of_job(&shop, job).unwrap().knows(&Made::of((&given, &told), false).unwrap());
    let known: Vec<(Vec<i64>, i64)> = wood.hoped.known.iter().map(|it| (it.boards.clone(), it.sets)).collect();
    let used: i64 = told.used.iter().map(|used| i64::from(used.pieces)).sum();
    assert_eq!(known.iter().map(|(boards, sets)| (boards.iter().sum(), *sets)).collect::<Vec<(i64, i64)>>(), [(used, 2)]);
    check(&wood, 3, 4, 7, &["leg"]);
    let without = Ask { without: vec!["rail".into()], ..ask };
    let other = fivebar_core::sheet::make::given(&shop, &without).unwrap();
    assert_eq!(Made::of((&other, &told), false), None);
}

/// Seven are known good, 20 are open, and 16 good stand against 6 rejects now: four more stands take 9 of the 20, as likely as that.
#[test]
fn after_ten_were_sorted() {
    let story = up_to("# --- all of it");
    let chances: Vec<f64> = (2..=6).map(|sets| at_least(4 * sets - 7, 20, (16, 6))).collect();
    let reached = |level: f64| 1 + chances.iter().filter(|chance| level <= **chance).count() as i64;
    let found = check(&of_first_design(&story), reached(0.95), reached(0.8), 6, &["leg"]);
    assert!(found.sure < found.all);
}

/// 21 good squares make five stands and leave one leg; the plan says the same, and nothing is drawn.
#[test]
fn when_all_is_sorted() {
    let story = up_to("# --- two more");
    let wood = of_first_design(&story);
    assert!(wood.is_sorted());
    assert_eq!(check(&wood, 5, 5, 5, &[]).draws, 0);
}

/// The new job has parts and operation in its first act; its eight squares are there for it and for no other.
#[test]
fn made_again_in_one_act() {
    let story = up_to("# --- another name");
    let (shop, second) = (Shop::of(&story.book, story.now.at), story.names.job("second").unwrap());
    let job = fold::job(&story.book, second).unwrap();
    assert_eq!((job.pieces, job.parts.len(), job.operations.len()), (2, 2, 1));
    assert_eq!(job.design, Some(shop.workshop.designs[0].id));
    assert_eq!(check(&of_job(&shop, second).unwrap(), 5, 5, 5, &[]).draws, 0);
    check(&of_first_design(&story), 3, 3, 3, &[]);
    let back = tell(&DESIGNS.replace("take 8 squares for second", "undo").replace("keep-design \"Porch stand\" from second", ""));
    assert!(fold::jobs(&back.book).all(|job| job.name == "Plant stand"), "undo takes the whole job back");
}

#[test]
fn a_design_changes_its_name_and_is_dropped() {
    let named = |story: &Story| {
        let designs = fold::workshop(&story.book).designs;
        designs.iter().map(|design| (design.name.clone(), design.job)).collect::<Vec<(String, Option<Id>)>>()
    };
    let story = up_to("# --- never");
    let first = story.names.job("first");
    assert_eq!(named(&story), [("Ash stand".to_owned(), first)]);
    let undone = tell(&format!("{DESIGNS}undo\nkeep-design \"Ash bench\" from first\nrename-design \"ash bench\" \"PORCH STAND\"\n"));
    assert_eq!(named(&undone).len(), 3);
    assert_eq!(undone.refused.len(), 1, "that name is taken: {:?}", undone.refused);
    let small = tell(&format!("{DESIGNS}rename-design \"Ash stand\" \"ash stand\"\n"));
    assert_eq!(named(&small), [("ash stand".to_owned(), first)]);
}

/// Ten hours for three crates, in three pieces of one operation and twelve of another: made again for two it is 6 h 40, two and eight; for four 13 h
/// 20, four and sixteen; for as many as before all as it was.
#[test]
fn made_again_for_fewer_it_is_planned_for_fewer() {
    for (n, minutes, pieces) in [(2, 400, [2, 8]), (3, 600, [3, 12]), (4, 800, [4, 16]), (1, 200, [1, 4])] {
        let story = tell(&format!(
            "2026-03-02 09:00 +00:00 workshop EUR metric\njob crates \"Crates\" 3 spec\nplan \"assemble\" make 600 min for crates pieces 3\n\
             plan \"peg\" make for crates pieces 12\nkeep-design \"Crate\" from crates\nmake-again \"Crate\" job more \"More crates\" {n} spec\n"
        ));
        assert_eq!(story.refused, [], "{n}");
        let job = fold::job(&story.book, story.names.job("more").unwrap()).unwrap();
        let planned: Vec<_> =
            job.operations.iter().map(|operation| (operation.span.map(|span| span.as_minutes()), operation.pieces)).collect();
        assert_eq!(planned, [(Some(minutes), Some(pieces[0])), (None, Some(pieces[1]))], "{n}");
    }
}

/// Twenty-five maple, all good, each of one leg (two of 1 7/16 and a kerf are 3, and the edges are trimmed): six stands, whose rails and tops come of it,
/// of twenty oak and of ten cherry that nobody sorted. A plan of six takes eight oak and four cherry, which nearly all draws have. Of a seventh stand
/// there are no legs: that is what is said.
#[test]
fn sets_are_not_missed_nor_a_part_said_to_be_short_for_want_of_looking() {
    let story = tell(
        "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile maple maple-sugar 1 x 3 x 30 in\ncount 25 maple\ngood 25 maple\n\
        pile oak oak-white 1 x 2 1/2 x 24 in\ncount 20 oak\npile cherry cherry-black 1 x 4 x 36 in\ncount 10 cherry\njob stand \"Stand\" 1 spec\n\
        part \"Leg\" 4 of 3/4 x 1 3/8 x 22 in maple-sugar for stand\npart \"Rail\" 4 of 3/4 x 1 3/8 x 12 in for stand\n\
        part \"Top\" 1 of 3/4 x 12 x 14 in for stand\n",
    );
    assert_eq!(story.refused, []);
    let shop = Shop::of(&story.book, story.now.at);
    let job = story.names.job("stand").unwrap();
    let found = check(&of_job(&shop, job).unwrap(), 6, 6, 6, &["Leg"]);
    assert_eq!((found.most, found.draws), (6, 1_000));
}
