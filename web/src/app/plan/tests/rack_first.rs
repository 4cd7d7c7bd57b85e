//! Boards to buy fill what is short of what lies there, in parts, sticks and fields as in tops.

use super::told::unlocked;
use super::*;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::sheet::make::Boards;
use fivebar_core::sheet::make::buy::not_bought;

/// Twelve strips 30 x 65 x 500 lie there; slats of 480 take one each.
const SLATS: &str = "part \"slat\" 5 of 25 x 60 x 480 mm oak-european for tray\n";

pub(super) fn boards(n: u32, long: i64) -> Boards {
    let size = [30, 65, long].map(|side| Length::MM.times(side).unwrap());
    Boards { wood: fivebar_core::quantity::Key::read("oak-european"), size, n, price: None }
}

/// Plans to the end, as the planner would: each problem that is ordered is solved.
pub(super) fn planned_out(app: &mut App, taps: Vec<Tap>) {
    let mut orders = heard(app, taps);
    while let Some(asked) =
        orders.iter().rev().find_map(|order| if let Order::Plan { asked, .. } = order { Some(asked.clone()) } else { None })
    {
        let answered = asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
        orders = app.told(crate::app::news::News::Planning(Planning::Done(Box::new(answered))));
    }
    unlocked(app);
}

pub(super) fn bought(app: &App) -> u32 {
    let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
    not_bought(given, &found.sheet).iter().map(|(_, n, _)| n).sum()
}

/// Two jobs of slats are ten: what lies there does. Three are fifteen: three are short, and no more than these are to buy, though longer
/// boards would take fewer off the rack. Seven would take more than are to be had.
#[test]
fn boards_to_buy_fill_what_is_short() {
    let check = |shape: Shape, sets: u8, offered: Boards, (made, buys): (i64, u32), words: &[&str]| {
        let mut app = opened(SLATS);
        heard(&mut app, [Tap::Open, Tap::Shape(shape), Tap::LeaveOut("top".into())]);
        app.plan.draft.bought.push(offered);
        planned_out(&mut app, vec![Tap::Press(Press::Digit(sets)), Tap::Go]);
        let sheet = &app.plan.found.as_ref().unwrap_or_else(|| panic!("{}", page(&app))).sheet;
        assert_eq!((sheet.made, bought(&app)), (made, buys), "{shape:?} {sets}: {}", page(&app));
        let mut again = reloaded(&app);
        heard(&mut again, [Tap::Open]);
        for (word, app) in words.iter().flat_map(|word| [(word, &app), (word, &again)]) {
            assert!(page(app).contains(word), "{shape:?} {sets}: {word}: {}", page(app));
        }
    };
    for shape in [Shape::Parts, Shape::Sticks] {
        check(shape, 2, boards(9, 500), (2, 0), &["Nothing to buy: what lies there is enough.", "with nothing bought"]);
        let short = ["What lies there gives 2 pieces and no more: boards to buy fill the rest.", ", with any of the boards you named."];
        check(shape, 3, boards(9, 500), (3, 3), &["Buy 3 of C", short[0], short[1], "best with the boards you named"]);
        check(shape, 3, boards(9, 1000), (3, 2), &["Buy 2 of C", short[0]]);
        // Too thin to give what is short.
        let none = if shape == Shape::Parts { "2 of 9 pieces." } else { "2 of 9 pieces. No plan can make more" };
        check(shape, 9, boards(9, 200), (2, 0), &[none]);
    }
}

/// Four tiles of 120 x 60 lie there. A field of 240 x 120 is of these; one of 240 x 180 takes six, and two of them are to buy.
#[test]
fn a_field_is_of_what_lies_there_where_that_is_near_enough() {
    for (deep, buys, words) in [(2, 0, "Nothing to buy"), (8, 2, "Of what lies there alone no field near enough was found.")] {
        field(deep, buys, words);
    }
}

fn field(deep: u8, buys: u32, words: &str) {
    let mut app = opened("pile tiles ash-european 12 x 65 x 125 mm\ncount 4 tiles\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Field)]);
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let others = all.iter().filter(|source| source.pile.length != Length::MM.times(125).ok()).map(|source| Tap::Turn(source.which()));
    heard(&mut app, others.collect::<Vec<_>>());
    let size = [12, 65, 125].map(|side| Length::MM.times(side).unwrap());
    app.plan.draft.bought.push(Boards { wood: fivebar_core::quantity::Key::read("ash-european"), size, ..boards(9, 125) });
    let press = |nth: usize, digits: &[u8]| {
        std::iter::once(Tap::At(nth)).chain(digits.iter().map(|digit| Tap::Press(Press::Digit(*digit)))).collect::<Vec<_>>()
    };
    let taps = [press(0, &[2, 4, 0]), press(1, &[1, deep, 0]), vec![Tap::Go]].concat();
    planned_out(&mut app, taps);
    assert_eq!(bought(&app), buys, "{}", page(&app));
    assert!(page(&app).contains(words), "{words}: {}", page(&app));
}

/// Twelve strips are three times four legs, or two and their rails; with rails of short boards they are three, with no leg to spare. What
/// gives no more is none to buy.
#[test]
fn boards_bring_what_they_fit_or_nothing() {
    for (long, made, buys, words) in [(200, 3, 3, "One more lacks 4 of leg."), (190, 2, 0, "2 of 9 pieces.")] {
        rails(long, (made, buys), words);
    }
}

fn rails(long: i64, made: (i64, u32), words: &str) {
    let mut app =
        opened("part \"leg\" 4 of 25 x 60 x 480 mm oak-european for tray\npart \"rail\" 1 of 25 x 60 x 180 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    app.plan.draft.bought.push(boards(9, long));
    planned_out(&mut app, vec![Tap::Press(Press::Digit(9)), Tap::Go]);
    assert_eq!((app.plan.found.as_ref().unwrap().sheet.made, bought(&app)), made, "{}", page(&app));
    assert!(page(&app).contains(words), "{words}: {}", page(&app));
}

/// Nothing that lies there is wide enough for a seat: it is to be bought, and no more than it takes.
#[test]
fn a_part_that_nothing_there_fits_is_bought_alone() {
    let mut app = opened("part \"seat\" 1 of 50 x 60 x 300 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    let size = [60, 80, 400].map(|side| Length::MM.times(side).unwrap());
    app.plan.draft.bought.push(Boards { size, ..boards(9, 400) });
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!(bought(&app), 1, "{}", page(&app));
    assert!(page(&app).contains("Of what lies there alone not one piece comes: boards to buy fill the rest."), "{}", page(&app));
}

/// Boards for a second kind of part do nothing where the first decides.
#[test]
fn boards_that_bring_nothing_are_none_to_buy() {
    let mut app =
        opened("part \"leg\" 12 of 25 x 60 x 480 mm oak-european for tray\npart \"pin\" 1 of 8 x 60 x 180 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    app.plan.draft.bought.push(boards(9, 200));
    planned_out(&mut app, vec![Tap::Press(Press::Digit(9)), Tap::Go]);
    assert_eq!((app.plan.found.as_ref().unwrap().sheet.made, bought(&app)), (1, 0), "{}", page(&app));
    assert!(page(&app).contains("With the boards to buy no more was found."), "{}", page(&app));
}

/// Boards of two kinds: their sizes in millimetres, how many there are at most, and what one costs.
type Kind = (u32, [i64; 3], Option<u32>);

fn of((n, size, price): Kind) -> Boards {
    let size = size.map(|side| Length::MM.times(side).unwrap());
    let price = price.map(|price| fivebar_core::quantity::Money::whole(price.into(), fivebar_core::quantity::Currency::USD).unwrap());
    Boards { size, price, ..boards(n, 500) }
}

/// Three slats are short. A single board of 5.2 litres gives all of them, and so do two of 1.95 litres, of which there are enough: these are
/// bought, whichever is named first, unless the single one is cheaper, or there is one of the others alone. Each alone may be too few.
#[test]
fn of_kinds_to_buy_the_one_that_is_least_alone_is_bought() {
    let (small, large): (Kind, Kind) = ((9, [30, 65, 1000], None), (1, [40, 65, 2000], None));
    let priced = |kind: Kind, price: u32| Kind::from((kind.0, kind.1, Some(price)));
    let at_most = |kind: Kind, n: u32| Kind::from((n, kind.1, kind.2));
    let check = |named: [Kind; 2], buys: &[(u32, i64)]| {
        let mut app = opened(SLATS);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
        app.plan.draft.bought.extend(named.map(of));
        planned_out(&mut app, vec![Tap::Press(Press::Digit(3)), Tap::Go]);
        let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
        let long = |place: usize| given.sources[place].pile.length.unwrap().as_nm() / 1_000_000;
        let mut all: Vec<(u32, i64)> = not_bought(given, &found.sheet).into_iter().map(|(place, n, _)| (n, long(place))).collect();
        all.sort_unstable();
        assert_eq!((found.sheet.made, all.as_slice()), (3, buys), "{named:?}: {}", page(&app));
        assert!(given.ready.asked.holds(&found.answered), "{named:?}");
        assert_eq!(given.ask.bought.len(), 2, "both are still named");
        let shown = page(&app);
        let mut again = reloaded(&app);
        heard(&mut again, [Tap::Open]);
        let says = |said: &str| [&shown, &page(&again)].into_iter().filter(|page| page.contains(said)).count();
        assert_eq!(says("with any of the boards you named.") + says("of these plans this one buys the least."), 2, "{named:?}: {shown}");
    };
    for both in [|one, other| [one, other], |one, other| [other, one]] {
        check(both(small, large), &[(2, 1000)]);
        check(both(at_most(small, 1), large), &[(1, 2000)]);
        check(both(priced(small, 4), priced(large, 9)), &[(2, 1000)]);
        check(both(priced(small, 4), priced(large, 7)), &[(1, 2000)]);
        // Only one has a price: by volume.
        check(both(small, priced(large, 1)), &[(2, 1000)]);
        check(both(at_most(small, 1), (2, [30, 65, 500], None)), &[(1, 500), (1, 1000)]);
    }
}

/// Called off while boards are still tried: the best so far is the plan.
#[test]
fn what_was_found_before_it_was_called_off_stays() {
    let mut app = opened(SLATS);
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    app.plan.draft.bought.push(boards(9, 500));
    let mut orders = heard(&mut app, [Tap::Press(Press::Digit(3)), Tap::Go]);
    let Some(Order::Plan { asked, .. }) = orders.pop() else { panic!("{orders:?}") };
    let answered = asked.solve(&mut Patience::new(Some(4_000), &mut |_: Progress<'_>| true), 1);
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(answered))));
    assert!(app.plan.found.is_none() && page(&app).contains("Planning …"), "{}", page(&app));
    heard(&mut app, [Tap::Stop]);
    assert_eq!(app.plan.found.as_ref().map(|found| found.sheet.made), Some(2), "{}", page(&app));
    assert!(page(&app).contains("2 of 3 pieces."), "{}", page(&app));
}

/// Where what lies there is refused and what comes of the boards is no plan, that is said: nothing is under way any more.
#[test]
fn boards_that_give_no_plan_leave_nothing_under_way() {
    let mut app = opened("part \"seat\" 1 of 50 x 60 x 300 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    let size = [60, 80, 400].map(|side| Length::MM.times(side).unwrap());
    app.plan.draft.bought.push(Boards { size, ..boards(9, 400) });
    heard(&mut app, [Tap::Go]);
    let none = Answered { plan: Made::Rows(Rows { rows: vec![], remainders: vec![] }), worth: vec![], bound: vec![] };
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(none))));
    assert_eq!((app.plan.stands.clone(), app.plan.found.is_none()), (Stands::Failed, true), "{}", page(&app));
}

/// C lies in another job: boards to buy are D, as they are once they are bought.
#[test]
fn boards_to_buy_have_a_letter_that_no_pile_has() {
    let mut app = opened(
        "part \"slat\" 5 of 25 x 60 x 480 mm oak-european for tray\npile far oak-european 30 x 65 x 500 mm\ncount 3 far\njob other \"Other\" 1 spec\ntake 3 far for other\n",
    );
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::LeaveOut("top".into())]);
    app.plan.draft.bought.push(boards(9, 500));
    let (job, typing) = (app.jobs.open.unwrap(), app.speech.typing(fivebar_core::quantity::Units::Metric));
    let given = crate::app::plan::used::given_to(&app, &app.plan.draft.rough(job, typing).unwrap()).unwrap();
    let of_bought = given.sources.iter().zip(&given.ready.sources).filter(|(source, _)| source.bought.is_some());
    assert_eq!(of_bought.map(|(_, ready)| ready.letter.as_str()).collect::<Vec<_>>(), ["D"]);
}

/// Where no piece fits a part, or none any, boards to buy can be added there.
#[test]
fn boards_to_buy_are_added_where_nothing_fits() {
    let rail = "part \"rail\" 1 of 20 x 60 x 900 mm ash-white for tray\n";
    for (slats, why) in [("", "None of the pieces fits."), (SLATS, "No pieces to use fit this part: rail.")] {
        let mut app = opened(&format!("{rail}{slats}"));
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::LeaveOut("top".into()), Tap::Go]);
        let shown = page(&app);
        assert!(shown.contains(why) && shown.contains(">Add boards to buy<"), "{why}: {shown}");
        heard(&mut app, [Tap::Buy]);
        assert_eq!(app.plan.page, Page::Boards);
    }
}

/// A pile that is too narrow for a part that is not glued up is left out for that, by so much; nothing more is needed only of what does.
#[test]
fn a_pile_that_no_part_comes_of_is_left_out_for_what_it_lacks() {
    let (unneeded, narrow) = ("left out: nothing of it is needed.", "left out: too narrow for rail by 1 mm.");
    for (wide, (says, never)) in [(64, (narrow, unneeded)), (63, (unneeded, narrow))] {
        let rails = format!(
            "pile wide oak-european 30 x 90 x 700 mm\ncount 3 wide\npart \"rail\" 2 of 25 x {wide} x 300 mm oak-european for tray\n"
        );
        let mut app = opened(&rails);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into()), Tap::Press(Press::Digit(1))]);
        planned_out(&mut app, vec![Tap::Go]);
        let shown = page(&app);
        assert!(app.plan.found.is_some() && shown.contains(says) && !shown.contains(never), "{wide}: {shown}");
    }
}
