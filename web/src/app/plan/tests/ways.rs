//! What the page says of a top whose wood, thickness or rows were left to the pieces.

use super::told::{at_rack, solved, typed};
use super::*;

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
    says(&app, &[beech, "Chosen for little waste, by an estimate that takes the longest pieces first: beech, 18 thick, in 4 rows."]);
    says(&app, &["It could also be", "Oak, 38 thick", "3 rows, about 18 % waste", "Oak, 25 thick", "8 rows, about 27 % waste"]);
    heard(&mut app, [Tap::Change]);
    says(&app, &["As the pieces allow: 4 rows, 18 thick.", "One wood, the least waste", "Woods may be mixed"]);
    let oak = app.plan.given.as_ref().unwrap().ways.iter().find(|way| way.rows == 8).unwrap().clone();
    heard(&mut app, [Tap::Way(oak)]);
    solved(&mut app);
    says(&app, &["No plan of 8 rows of oak needs fewer than 10 strips.", "Beech, 18 thick", "4 rows, about 1"]);
    assert!(!page(&app).contains("Chosen for little waste"), "{}", page(&app));
    // It outlives the page, and is planned again; the other comes back with one tap.
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open, Tap::Go]);
    solved(&mut again);
    says(&again, &["8 rows of oak", "Beech, 18 thick"]);
    heard(&mut again, [Tap::Change, Tap::Mixed(false), Tap::Go]);
    solved(&mut again);
    says(&again, &["4 rows of beech"]);
    let mut kept = reloaded(&again);
    heard(&mut kept, [Tap::Open, Tap::Change]);
    assert_eq!((kept.plan.draft.pick.clone(), kept.plan.draft.form.is_empty(2), kept.plan.draft.turned.len()), (None, true, 0));
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
        let lengths = all.into_iter().filter(|it| it.pile.name.as_deref().is_some_and(|name| name.starts_with("left of ")));
        lengths.map(|it| (it.pile.name.clone().unwrap(), it.which().0)).collect::<Vec<_>>()
    };
    let [(name, lying)] = &left(&app)[..] else { panic!("{:?}", left(&app)) };
    assert!(name.starts_with("left of strips, 4"), "{name}");
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert!(again.plan.draft.turned.iter().all(|(turned, _)| turned != lying), "{:?}", again.plan.draft.turned);
    assert_eq!(again.plan.draft.turned.len(), 1, "the ends");
}
