//! Boards that are bought for a plan, piles that stay left out, and figures of the saw that are found where they stand in the way.

use super::*;
use crate::app::workshop::Tap as Workshop;
use crate::app::workshop::rack::RackTap;
use fivebar_core::sheet::make::Boards;

fn digits(app: &mut App, all: &str) {
    heard(app, all.chars().map(|digit| Tap::Press(Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap()))));
}

fn on_rack(app: &mut App, taps: impl IntoIterator<Item = RackTap>) {
    for tap in taps {
        let now = Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
        app.heard(Msg::Workshop(Workshop::Rack(tap)), now);
    }
}

/// Two rows of strips of which nine at most are to be bought: four are.
fn four_to_buy() -> App {
    let mut app = opened("take 12 strips for tray\ntake 5 thin for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Piles, Tap::Buy]);
    for (nth, figure) in ["30", "65", "500", "9", "12"].into_iter().enumerate() {
        heard(&mut app, [Tap::At(nth)]);
        digits(&mut app, figure);
    }
    heard(&mut app, [Tap::AddBoards, Tap::Change, Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go]);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    app
}

/// Four are bought in another width: a little off they count once the maker says so, both sizes beside each other; far off they don't.
#[test]
fn boards_that_were_bought_a_little_wider_or_narrower_may_count() {
    for (wide, off) in [("64", false), ("66", false), ("58", true), ("90", true)] {
        let mut app = four_to_buy();
        heard(&mut app, [Tap::Bought]);
        let digits = wide.chars().map(|digit| RackTap::Press(Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap())));
        on_rack(&mut app, std::iter::once(RackTap::At(1)).chain(digits).chain([RackTap::Done]));
        let sizes = format!("4 bought of 30 × {wide} × 500; the plan wants C, 30 × 65 × 500 mm: ");
        let shown = page(&app);
        assert!(shown.contains(&sizes) && shown.contains("Buy 4 of C"), "{shown}");
        assert_eq!([shown.contains("Count 4 as C"), shown.contains("none is counted")], [!off, off], "{wide}: {shown}");
        let Some(near) = nearly_bought(&app).first().copied() else { panic!("{wide}") };
        heard(&mut app, [Tap::CountAs(near.counted)]);
        let shown = page(&app);
        assert_eq!([shown.contains("4 of C: bought."), shown.contains("Buy 4 of C")], [!off, off], "{wide}: {shown}");
        let mut again = reloaded(&app);
        heard(&mut again, [Tap::Open]);
        for app in [&again, &app] {
            assert_eq!(app.plan.draft.bought.iter().map(|boards| boards.n).collect::<Vec<_>>(), [if off { 9 } else { 5 }], "{wide}");
            let shown = page(app);
            assert_eq!([shown.contains("4 of C: bought."), shown.contains("Count 4 as C")], [!off, false], "{wide}: {shown}");
        }
    }
}

/// Written down or left, and a pile's page that the plan led to: what is done there leads back to the plan, not to the rack.
#[test]
fn the_pages_of_the_rack_that_a_plan_leads_to_lead_back_to_it() {
    let close = |app: &mut App| drop(app.heard(Msg::Workshop(Workshop::Close), Now { wall: app.now, chance: [77; 10] }));
    let mut app = four_to_buy();
    let pile = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap()[0].which().0;
    let is_back = |app: &App| app.place == crate::app::Place::Jobs && page(app).contains("jobs/plan-answer");
    heard(&mut app, [Tap::Pile(pile)]);
    assert_eq!(app.place, crate::app::Place::Workshop);
    on_rack(&mut app, [RackTap::Show(crate::app::workshop::rack::Page::Ask(pile, crate::app::workshop::rack::Ask::Size))]);
    close(&mut app);
    assert_eq!(app.place, crate::app::Place::Workshop, "the pile's page is behind its form");
    close(&mut app);
    assert!(is_back(&app), "{}", page(&app));
    heard(&mut app, [Tap::Bought]);
    close(&mut app);
    assert!(is_back(&app), "{}", page(&app));
    heard(&mut app, [Tap::Bought]);
    on_rack(&mut app, [RackTap::Done]);
    assert!(is_back(&app) && page(&app).contains("4 of C: bought."), "{}", page(&app));
    // The list of the rack is not passed over where nobody came from a plan.
    app.go(crate::app::Place::Workshop);
    close(&mut app);
    assert_eq!(app.workshop.rack.page, crate::app::workshop::rack::Page::List);
}

/// Boards that were written down as bought and taken back: the page of their pile goes with them, and the key says what they were.
#[test]
fn boards_bought_and_taken_back_leave_no_page_of_theirs() {
    let mut app = four_to_buy();
    heard(&mut app, [Tap::Bought]);
    on_rack(&mut app, [RackTap::Done]);
    app.go(crate::app::Place::Workshop);
    let pile = app.workshop.rack.page.clone();
    assert!(matches!(pile, crate::app::workshop::rack::Page::Pile(_)));
    for (wanted, undo) in
        [("boards bought, ", None), ("taken back: boards bought, ", Some(Common::TakeBack)), ("boards bought, ", Some(Common::PutBack))]
    {
        let now = Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
        undo.into_iter().for_each(|undo| drop(app.heard(Msg::Common(undo), now)));
        let shown = page(&app);
        assert!(shown.contains(wanted) && !shown.contains("Not done") && !shown.contains("was said of the haul"), "{shown}");
    }
}

/// Four of nine are bought, in two goes: what is left to buy is what is left, also after a reload.
#[test]
fn boards_that_were_bought_are_not_offered_to_buy_again() {
    let mut app = four_to_buy();
    assert!(page(&app).contains("Buy 4 of C") && page(&app).contains("They are bought"), "{}", page(&app));
    assert!(page(&app).contains("Used all 4 pieces.") && !page(&app).contains("Left 5 whole"), "{}", page(&app));
    heard(&mut app, [Tap::Bought]);
    let shown = page(&app);
    assert!(shown.contains("Boards you bought") && ["30", "65", "500", "4"].iter().all(|figure| shown.contains(figure)), "{shown}");
    assert_eq!(app.workshop.rack.form.slots[4].text, "48.00", "four at 12 each");
    on_rack(&mut app, [RackTap::Press(Press::Digit(1)), RackTap::Press(Press::Digit(6)), RackTap::Done]);
    let left = |app: &App| app.plan.draft.bought.iter().map(|boards| boards.n).collect::<Vec<_>>();
    assert_eq!(left(&app), [5]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert_eq!(left(&again), [5]);
    // A tick since makes the plan no younger: they are bought for it still.
    again.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(1)), app.now.offset);
    heard(&mut again, [Tap::Tick(0)]);
    let mut again = reloaded(&again);
    heard(&mut again, [Tap::Open]);
    assert_eq!(left(&again), [5]);
    assert!(page(&again).contains("4 of C: bought."), "{}", page(&again));
    // Of another size, or at once all that is left.
    let job = app.jobs.open;
    let size = |n: i64| [30, n, 500].map(|side| Length::MM.times(side).unwrap());
    let wood = app.plan.draft.bought[0].wood.clone();
    were_bought(&mut app, (wood.as_ref(), size(66)), 5);
    assert_eq!(left(&app), [5]);
    were_bought(&mut app, (wood.as_ref(), size(65)), 7);
    assert_eq!((left(&app), job), (vec![], app.jobs.open));
}

/// Three strips and three thicker boards: each kind comes up once, with one sum for all, also after a reload.
#[test]
fn each_kind_of_board_is_written_down_once() {
    use super::rack_first::{boards, planned_out};
    let parts = "part \"slat\" 5 of 25 x 60 x 480 mm oak-european for tray\npart \"seat\" 1 of 50 x 60 x 300 mm oak-european for tray\n";
    let mut app = opened(parts);
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::LeaveOut("top".into())]);
    let price = |n: i64| fivebar_core::quantity::Money::whole(n.into(), app.begins_with().0);
    let size = [60, 80, 400].map(|side| Length::MM.times(side).unwrap());
    let (slats, seats) = (Boards { price: price(12), ..boards(9, 500) }, Boards { size, price: price(22), ..boards(9, 400) });
    app.plan.draft.bought.extend([slats, seats]);
    planned_out(&mut app, vec![Tap::Press(Press::Digit(3)), Tap::Go]);
    let says = |app: &App, wanted: &[&str], others: &[&str]| {
        let shown = page(app);
        assert!(wanted.iter().all(|words| shown.contains(words)), "{wanted:?}: {shown}");
        assert!(!others.iter().any(|words| shown.contains(words)), "{others:?}: {shown}");
    };
    let [c, d] = ["3 of C: bought.", "3 of D: bought."];
    says(
        &app,
        &[
            "Buy 3 of C (Oak boards, 30 × 65 × 500 mm), ",
            "Buy 3 of D (Oak boards, ",
            "All the boards to buy: $102.00.",
            "write down 3 of C",
        ],
        &[c, d, "best possible"],
    );
    let write_down = |app: &mut App, thick: &str| {
        heard(app, [Tap::Bought]);
        assert_eq!((app.workshop.rack.form.slots[0].text.as_str(), app.workshop.rack.form.slots[3].text.as_str()), (thick, "3"));
        on_rack(app, [RackTap::Press(Press::Digit(1)), RackTap::Done]);
    };
    write_down(&mut app, "30");
    says(&app, &[c, "Buy 3 of D (", "write down 3 of D"], &[d, "Buy 3 of C", "All the boards"]);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    says(&again, &[c, "write down 3 of D"], &[d]);
    write_down(&mut app, "60");
    says(&app, &[c, d, "All of them are bought and written down: plan again with them."], &["They are bought"]);
}

/// Beech wastes less and is left out: it stays so once the oak is taken, and on a page that is opened again.
#[test]
fn a_pile_that_was_left_out_stays_left_out() {
    let mut app = opened("pile beech beech-european 30 x 65 x 995 mm\ncount 20 beech\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows), Tap::Piles]);
    let job = app.jobs.open.unwrap();
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), job).unwrap();
    let beech = all.iter().find(|source| source.pile.length == Length::MM.times(995).ok()).unwrap().which();
    heard(&mut app, [Tap::Turn(beech), Tap::Change, Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go]);
    let told = answer(&app);
    app.told(crate::app::news::News::Planning(told));
    let is_out = |app: &App| app.plan.draft.turned.contains(&beech);
    let again = |app: &App| {
        let mut again = reloaded(app);
        heard(&mut again, [Tap::Open]);
        again
    };
    assert!(is_out(&app) && is_out(&again(&app)), "made");
    heard(&mut app, [Tap::Use]);
    assert!(is_out(&app) && is_out(&again(&app)), "used");
    let mut again = again(&app);
    heard(&mut again, [Tap::Change, Tap::Piles]);
    assert!(page(&again).contains("on the rack, left out"), "{}", page(&again));
}

/// A rail of 495 from sticks of 500 is too long for 6 off each end, and 120 in one row too wide for strips of 65.
#[test]
fn what_is_trimmed_is_found_where_it_stands_in_the_way() {
    let check = |lines: &str, taps: &[Tap], keys: &[&str], others: &[&str]| {
        let mut app = opened(lines);
        heard(&mut app, std::iter::once(Tap::Open).chain(taps.iter().cloned()));
        for key in keys {
            assert!(page(&app).contains(key), "{key}: {}", page(&app));
        }
        for key in others {
            assert!(!page(&app).contains(key), "{key}: {}", page(&app));
        }
    };
    let rail = "part \"rail\" 2 of 20 x 50 x 495 mm oak-european for tray\n";
    let edge = "Off long edges, 2 mm";
    check(rail, &[Tap::Shape(Shape::Sticks), Tap::Go], &["too short", "Off board ends, 6 mm"], &[edge, "Off strip ends"]);
    check(rail, &[Tap::Shape(Shape::Sticks), Tap::Piles], &["Off board ends, 6 mm"], &[edge]);
    let rows = [Tap::Shape(Shape::Rows), Tap::At(2), Tap::Press(Press::Digit(1)), Tap::Go];
    check("", &rows, &["too narrow", edge, "Off glued edges, 0.5 mm"], &["Off board ends", "Off strip ends"]);
    check("", &[Tap::Shape(Shape::Rows), Tap::Piles], &["too thin"], &["Off board ends", "Off strip ends", edge]);
}

/// The saw's figures that were asked for from a plan lead back to it, changed or as they were.
#[test]
fn the_figures_of_the_saw_lead_back_to_the_plan() {
    use crate::app::workshop::wood::{Page, WoodTap};
    let rail = "part \"rail\" 2 of 20 x 50 x 495 mm oak-european for tray\n";
    for presses in [vec![], vec![WoodTap::At(2), WoodTap::Press(Press::Digit(2))]] {
        let mut app = opened(rail);
        heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::Go]);
        let taps = [WoodTap::Open(Page::Saw)].into_iter().chain(presses).chain([WoodTap::Save]);
        for tap in taps {
            let now = Now { wall: app.now, chance: [u8::try_from(app.own.book.len()).unwrap(); 10] };
            app.heard(Msg::Workshop(Workshop::Wood(tap)), now);
        }
        assert!(page(&app).contains("jobs/plan-ask"), "{}", page(&app));
    }
}
