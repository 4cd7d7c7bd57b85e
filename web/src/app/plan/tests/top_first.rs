//! A top and the boards that could be bought: what lies there first, and as few boards as do; what a top lacks otherwise.

use super::rack_first::{bought, planned_out};
use super::told::typed;
use super::*;
use fivebar_core::quantity::{Currency, Key, Money};
use fivebar_core::sheet::make::Boards;

/// So many boards of oak, 26.5 x 90 x 910, and a job.
pub(super) fn rack(n: u32) -> App {
    let story = tell(&format!(
        "2026-03-02 09:00 +01:00 workshop EUR metric\nleave for yard\npile flats oak-european 26.5 x 90 x 910 mm\ncount {n} flats\n\
         job tray \"Table\" 1 spec\n"
    ));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    app.now = Wall::new(story.now.at, story.now.offset);
    app.jobs.open = story.names.job("tray");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    app
}

/// Boards of 27 x 180 x 2500 at 25, each of which gives two rows of 2400.
fn boards(n: u32) -> Boards {
    let size = [27, 180, 2500].map(|side| Length::MM.times(side).unwrap());
    let price = Money::whole(25.into(), Currency::read("EUR").unwrap());
    Boards { wood: Key::read("oak-european"), size, n, price }
}

/// By hand: eight flats are 905 squared, 7240 together, and three rows are 7200. Five rows of eight are to buy: three boards, which give
/// six, and of six flats are the last two; however many boards there are to be had, and also where rows and thickness are left to the
/// pieces: 25 thick the flats would be too thin.
#[test]
fn a_top_takes_what_lies_there_before_boards() {
    for (rows, most) in [("8", 9), ("8", 3), ("", 9)] {
        let mut app = rack(8);
        typed(&mut app, &["2400", "650", rows]);
        app.plan.draft.bought.push(boards(most));
        planned_out(&mut app, vec![Tap::Go]);
        let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
        let flats = found.sheet.used.iter().filter(|it| given.sources[it.source].bought.is_none()).map(|it| it.pieces).sum::<u32>();
        assert_eq!((found.sheet.made, bought(&app), flats), (8, 3, 6), "{rows} of {most}: {}", page(&app));
        assert!(given.ready.asked.holds(&found.answered), "{rows} of {most}");
        assert!(page(&app).contains("Buy 3 of "), "{}", page(&app));
    }
}

/// What lies there is enough: nothing is to buy.
#[test]
fn a_top_of_what_lies_there_buys_nothing() {
    let mut app = rack(30);
    typed(&mut app, &["2400", "650", "8"]);
    app.plan.draft.bought.push(boards(9));
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!((app.plan.found.as_ref().unwrap().sheet.made, bought(&app)), (8, 0), "{}", page(&app));
}

/// Seven flats are two rows: an eighth makes the third, 7240 of 7200. 21 flats are 19005 of the 19200 that all eight rows are, and 22 do.
#[test]
fn what_a_top_lacks_is_as_few_as_were_found() {
    let mut app = rack(7);
    typed(&mut app, &["2400", "650", "8"]);
    planned_out(&mut app, vec![Tap::Go]);
    let shown = page(&app);
    assert!(shown.contains("2 of 8 rows"), "{shown}");
    assert!(shown.contains("1 more of A (Flats, 26.5 × 90 × 910 mm) makes one row more."), "{shown}");
    assert!(shown.contains("15 more of A (Flats, 26.5 × 90 × 910 mm) make all 8 rows."), "{shown}");
    assert!(shown.contains(">Add boards to buy<"), "the way to buy them: {shown}");
    // How many there are at the most may stay open.
    heard(&mut app, [Tap::Buy]);
    for (nth, figure) in ["26", "90", "910"].into_iter().enumerate() {
        heard(&mut app, [Tap::At(nth)]);
        heard(&mut app, figure.chars().map(|digit| Tap::Press(Press::Digit(u8::try_from(digit.to_digit(10).unwrap()).unwrap()))));
    }
    heard(&mut app, [Tap::AddBoards]);
    assert_eq!((app.plan.page, app.plan.draft.bought.len()), (Page::Piles, 1), "{}", page(&app));
}
