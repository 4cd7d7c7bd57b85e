//! What the page says of a top whose wood, thickness or rows were left to the pieces.

use super::told::{at_rack, solved, typed};
use super::*;
use fivebar_core::plan::patience::{Patience, Progress};

/// Beech for four rows of 100, its edges trimmed and jointed: it wastes less than the oak there is, 8.64 of 7 x 1.47 litres.
const BEECH: &str = "pile beech beech-european 20 x 105 x 700 mm\ncount 27 beech\n";

fn planned_of(lines: &str, taps: &[Tap]) -> App {
    let mut app = at_rack(lines);
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    heard(&mut app, taps.iter().cloned());
    typed(&mut app, &["1200", "400"]);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    app
}

#[track_caller]
fn says(app: &App, wanted: &[&str]) {
    for words in wanted {
        assert!(page(app).contains(words), "{words}: {}", page(app));
    }
}

/// One wood is taken, the other is a tap away, and what was left empty stays empty with what it came to beside it.
#[test]
fn one_wood_is_taken_and_the_other_is_a_tap_away() {
    let mut app = planned_of(BEECH, &[]);
    let beech = "4 rows. No plan of 4 rows of beech needs fewer than 7 pieces.";
    let chosen = "Chosen for the least waste of 4 ways that were planned, each for a moment: beech, 18 thick, in 4 rows.";
    says(&app, &[beech, chosen]);
    says(&app, &["It could also be", "Oak, 38 thick", "3 rows, 24 % waste", "Oak, 25 thick", "8 rows, 31 % waste"]);
    heard(&mut app, [Tap::Change]);
    says(&app, &["As the pieces allow: 4 rows, 18 thick.", "One wood, the least waste found", "Woods may be mixed"]);
    let oak = app.plan.given.as_ref().unwrap().ways.iter().find(|way| way.rows == 8).unwrap().clone();
    heard(&mut app, [Tap::Way(oak)]);
    solved(&mut app);
    says(
        &app,
        &[
            "No plan of 8 rows of these pieces of oak needs fewer than 10 pieces.",
            "litres taken for good, 26.8 %",
            "Beech, 18 thick",
            "4 rows, 1",
        ],
    );
    assert!(!page(&app).contains("Chosen for little waste"), "{}", page(&app));
    // It outlives the page, and is planned again; the other comes back with one tap.
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open, Tap::Go]);
    solved(&mut again);
    says(&again, &["8 rows of these pieces of oak", "Beech, 18 thick"]);
    heard(&mut again, [Tap::Change, Tap::Mixed(false), Tap::Go]);
    solved(&mut again);
    says(&again, &["4 rows of beech"]);
    let mut kept = reloaded(&again);
    heard(&mut kept, [Tap::Open, Tap::Change]);
    assert_eq!((kept.plan.draft.pick.clone(), kept.plan.draft.form.is_empty(2), kept.plan.draft.turned.len()), (None, true, 0));
}

/// A tick before the wood is taken, a look at another way, and back: the plan is as it was left, its tick too, and so is each figure.
#[test]
fn a_look_at_another_way_keeps_the_tick_and_the_figures() {
    let mut app = planned_of(BEECH, &[]);
    heard(&mut app, [Tap::Tick(0)]);
    let (beech, oak) = (app.plan.clone(), app.plan.given.as_ref().unwrap().ways.iter().find(|way| way.rows == 8).unwrap().clone());
    let first = beech.given.as_ref().unwrap().ways[0].clone();
    heard(&mut app, [Tap::Way(oak)]);
    solved(&mut app);
    says(&app, &["8 rows", "litres taken for good, 26.8 %", "Beech, 18 thick", "4 rows, 16 % waste or less"]);
    assert!(app.plan.ticked.is_empty());
    assert_eq!(heard(&mut app, [Tap::Way(first)]).iter().filter(|order| matches!(order, Order::Plan { .. })).count(), 0);
    says(&app, &["4 rows of beech", "Oak, 25 thick", "8 rows, 31 % waste or less"]);
    assert_eq!((&app.plan.ticked, app.plan.ticked.lines_done()), (&beech.ticked, 1));
    assert_eq!(app.plan.found.as_ref().unwrap().answered, beech.found.as_ref().unwrap().answered);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert_eq!(again.plan.ticked, beech.ticked);
}

/// The wood that was chosen is not given up for another: that nothing of it fits is said, with what it lacks, until it is left open.
#[test]
fn a_wood_that_was_chosen_and_does_not_fit_is_said() {
    let mut app = planned_of(BEECH, &[]);
    let beech = app.plan.given.as_ref().unwrap().ways[0].clone();
    heard(&mut app, [Tap::Way(beech)]);
    solved(&mut app);
    heard(&mut app, [Tap::Change, Tap::At(2), Tap::Press(Press::Digit(3)), Tap::Go]);
    assert_eq!(app.plan.page, Page::Ask, "{}", page(&app));
    says(&app, &["Beech does not fit 3 rows: 101 mm of its width can be used, and 134.4 mm are needed.", "Beech, 18 thick"]);
    heard(&mut app, [Tap::Mixed(false), Tap::Go]);
    solved(&mut app);
    says(&app, &["3 rows", "of oak"]);
    // Chosen, and left out among the pieces: no figure is at fault.
    let mut app = planned_of(BEECH, &[]);
    let given = app.plan.given.as_ref().unwrap();
    let (beech, of) = (given.ways[0].clone(), given.sources[0].which());
    heard(&mut app, [Tap::Way(beech)]);
    solved(&mut app);
    heard(&mut app, [Tap::Change, Tap::Turn(of), Tap::Go]);
    says(&app, &["No pieces of beech to use fit this: choose another wood, or leave it open."]);
}

/// Where there is one wood, nothing is asked about woods.
#[test]
fn one_wood_asks_nothing() {
    let app = planned_of("", &without_ends());
    assert!(!page(&app).contains("It could also be") && page(&app).contains("No plan of 8 rows of oak needs fewer"), "{}", page(&app));
}

fn without_ends() -> Vec<Tap> {
    super::told::without(1, vec![])
}

/// What a plan left on the rack is named by its length, and nobody left it out of the plan that made it.
#[test]
fn what_a_plan_left_is_named_and_not_left_out_by_the_maker() {
    let mut app = planned_of("", &without_ends());
    heard(&mut app, [Tap::Use]);
    let left = |app: &App| {
        let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
        assert!(all.iter().all(|it| it.pile.rests == it.pile.name.as_deref().is_some_and(|name| name.starts_with("left of "))));
        let lengths = all.into_iter().filter(|it| it.pile.name.as_deref().is_some_and(|name| name.starts_with("left of ")));
        lengths.map(|it| (it.pile.name.clone().unwrap(), it.which().0)).collect::<Vec<_>>()
    };
    let [(name, lying)] = &left(&app)[..] else { panic!("{:?}", left(&app)) };
    assert!(name.starts_with("left of strips, 4"), "{name}");
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert!(again.plan.draft.turned.iter().all(|(turned, _)| turned != lying), "{:?}", again.plan.draft.turned);
    assert_eq!(again.plan.draft.turned.len(), 1, "the ends");
    // Pieces the plan took and that are not cut are there to use again: where they are now is said.
    heard(&mut again, [Tap::Change, Tap::Piles]);
    says(&again, &["27 on the rack, 10 of the plan before, used"]);
    // Where the plan is dropped and a board is cut, what was to be left of the others is no pile of the haul.
    heard(&mut app, [Tap::OneMore(0), Tap::Drop, Tap::DropAnd(false)]);
    let tiles = fivebar_core::sheet::count::count(&app.shelf().book, app.now.at).unwrap().tiles;
    assert!(tiles.iter().all(|tile| 0 < tile.taken), "{tiles:?}");
}

/// A top of beech alone, as thick and in as many rows as said; its piles by thickness, width, length and how many.
fn of_beech(piles: &[[u32; 4]], split: bool, figures: &[&str]) -> App {
    let pile = |(nth, [thick, wide, long, n]): (usize, &[u32; 4])| {
        format!("pile b{nth} beech-european {thick} x {wide} x {long} mm\ncount {n} b{nth}\n")
    };
    let mut app = at_rack(&piles.iter().enumerate().map(pile).collect::<String>());
    let others = super::told::without(0, super::told::without(1, vec![]));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Split(split)].into_iter().chain(others));
    typed(&mut app, figures);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    app
}

/// By hand, of 1200 x 400 x 18 or 20: four of 24 x 110 x 1250 are 13.2 litres and 27 % waste, four of 52 thick would be 68 %. Whole ones of
/// 610 and their ends make one row of 3 by the estimate and no three. Seven of 105 x 700 are 10.29 litres and 16 % waste, seven of 190 wide
/// 47 %.
#[test]
fn the_way_with_the_least_waste_is_found_by_plans() {
    let check = |piles: &[[u32; 4]], split: bool, figures: &[&str], (rows, percent): (i64, u32), wanted: &[&str], not: &[&str]| {
        let app = of_beech(piles, split, figures);
        let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
        let waste = found.sheet.waste.share.unwrap().round_dp(2);
        assert_eq!((found.sheet.made, waste), (rows, fivebar_core::quantity::Decimal::new(percent.into(), 2)), "{piles:?}: {}", page(&app));
        assert!(given.ready.asked.holds(&found.answered), "{piles:?}");
        says(&app, wanted);
        not.iter().for_each(|words| assert!(!page(&app).contains(words), "{words}: {}", page(&app)));
    };
    let thin_and_thick = |thin: u32| [[24, 110, 1250, thin], [52, 110, 1300, 20]];
    let (held, taken) = ("held back, more than twice as thick as is needed", "Pieces more than twice as thick as is needed are taken, too");
    let these = "No plan of 4 rows of these pieces of beech needs fewer than 4 pieces.";
    check(&thin_and_thick(20), true, &["1200", "400", "", "", "20"], (4, 27), &[held, these], &[taken]);
    check(&thin_and_thick(2), true, &["1200", "400", "", "", "20"], (4, 55), &[taken], &[held]);
    check(&thin_and_thick(0), true, &["1200", "400", "", "", "20"], (4, 68), &[taken], &[held]);
    check(&[[20, 150, 610, 14], [24, 48, 900, 30]], false, &["1200", "400"], (10, 32), &["22 thick, in 10 rows"], &[]);
    // By hand: eight of 80 x 700 are 12.1 litres, a rest of 347 goes back; with strips of 120 ripped to a row they are shorter, and waste more.
    check(&[[27, 80, 700, 12], [27, 120, 300, 10]], true, &["1040", "340", "", "", "22"], (5, 33), &["beech 80 wide, 22 thick"], &[]);
    // Six of 80 and two of 82 are no single width: without those of 120 they are taken all the same.
    let but_one = [" without ", "22 thick, in 5 rows.", "left out for less waste", "these pieces of beech"];
    let piles = [[27, 80, 700, 6], [27, 82, 700, 6], [27, 120, 300, 10]];
    check(&piles, true, &["1040", "340", "", "", "22"], (5, 33), &but_one, &[]);
    let of_one_width = ["beech 105 wide, 18 thick, in 4 rows.", "another width, left out for less waste", "these pieces of beech"];
    check(&[[20, 105, 700, 14], [20, 190, 900, 30]], true, &["1200", "400", "4"], (4, 16), &of_one_width, &[]);
}

/// A way that takes some pieces of a wood says so when it is opened again, and is called off where it is stopped.
#[test]
fn some_pieces_of_a_wood_are_not_all_of_it() {
    let app = of_beech(&[[24, 110, 1250, 20], [52, 110, 1300, 20]], true, &["1200", "400", "", "", "20"]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &["No plan of 4 rows of these pieces of beech needs fewer than 4 pieces."]);
    assert_eq!(again.plan.draft.turned, app.plan.draft.turned);
}

/// Stopped while other ways are tried: what was found stays. Once the saw is at work nothing takes its place.
#[test]
fn other_ways_are_called_off() {
    for ticks in [false, true] {
        let mut app = at_rack(BEECH);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
        typed(&mut app, &["1200", "400"]);
        let mut orders = heard(&mut app, [Tap::Go]);
        let Some(Order::Plan { asked, ms: FIRST }) = orders.pop() else { panic!("{orders:?}") };
        let mut done = |asked: &Asked| {
            let answered = asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
            app.told(crate::app::news::News::Planning(Planning::Done(Box::new(answered))))
        };
        let Some(Order::Plan { asked, .. }) = done(&asked).pop() else { panic!("another way is planned") };
        if ticks {
            heard(&mut app, [Tap::Tick(0)]);
            let answered = asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
            app.told(crate::app::news::News::Planning(Planning::Done(Box::new(answered))));
            assert_eq!(app.plan.ticked.lines_done(), 1);
        } else {
            assert!(heard(&mut app, [Tap::Stop]).contains(&Order::StopPlan));
            assert_eq!(app.plan.stands, Stands::Still);
        }
        says(&app, &["4 rows. No plan of 4 rows of beech needs fewer than 7 pieces."]);
    }
}

/// With boards to buy the way is chosen by what it buys, whatever it wastes: that is what is said. By hand: 30 rows of two to a board lack
/// fewer than 15 rows of one.
#[test]
fn a_way_that_buys_less_is_not_called_the_one_with_the_least_waste() {
    use fivebar_core::sheet::make::Boards;
    let mut app =
        at_rack("pile wide beech-european 25 x 76 x 762 mm\ncount 20 wide\npile slim beech-european 19 x 38 x 1524 mm\ncount 6 slim\n");
    let others = super::told::without(0, super::told::without(1, vec![]));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)].into_iter().chain(others));
    let size = [25, 76, 762].map(|n| fivebar_core::quantity::Length::MM.times(n).unwrap());
    app.plan.draft.bought = vec![Boards { wood: fivebar_core::quantity::Key::read("beech-european"), size, n: 200, price: None }];
    typed(&mut app, &["2438", "1016"]);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    let given = app.plan.given.as_ref().unwrap();
    let planned = given.ways.iter().filter(|way| way.planned).collect::<Vec<_>>();
    assert!(given.ways[0].buys && 1 < planned.len() && planned.iter().any(|way| way.waste < given.ways[0].waste), "{:?}", given.ways);
    says(&app, &["Chosen for the least to buy, then for the least waste, of "]);
    assert!(!page(&app).contains("Chosen for the least waste"), "{}", page(&app));
}

/// Of one wood not all rows come out, and of two they do: the proof says of which wood it is, and before anything is bought, that mixed it may be
/// more.
#[test]
fn what_no_plan_of_one_wood_can_make_says_so_and_that_mixed_may_make_more() {
    let rack = "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile oak oak-european 27 x 62 x 1010 mm\ncount 10 oak\n\
        pile beech beech-european 27 x 62 x 1010 mm\ncount 9 beech\nhome\njob tray \"Bench\" 1 spec\n";
    let planned = |mixed: bool| {
        let mut app = app_of(rack);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
        typed(&mut app, &["1000", "650", "13"]);
        heard(&mut app, mixed.then_some(Tap::Mixed(true)).into_iter().chain([Tap::Go]));
        solved(&mut app);
        app
    };
    let app = planned(false);
    says(&app, &["10 of 13 rows. No plan of oak can make more", "With woods mixed it may be more."]);
    let shown = page(&app);
    let at = |words: &str| shown.find(words).unwrap_or_else(|| panic!("{words}: {shown}"));
    assert!(at("It could also be") < at("Add boards to buy"), "{shown}");
    let mixed = planned(true);
    says(&mixed, &["13 rows."]);
    assert!(!page(&mixed).contains("With woods mixed it may be more."), "{}", page(&mixed));
}
