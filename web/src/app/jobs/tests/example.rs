//! Both demos on the pages of their jobs, and the example as it comes and goes.

use super::*;

/// domain.md 12 B on 22 May: delivery, estimated 90 min, still to come: a drive is as planned, on every page and in 13.16.
#[test]
fn the_page_before_a_delivery() {
    let mut maker = Maker::before_delivery();
    maker.open("bench").shows(&[
        "Oak top and shelf, beech frame, made to order",
        "Hall shoe bench, oak and beech",
        "Ready. Delivery to come.",
        "Sat 23 May, delivered, about 1 h 30.",
        "Start delivery",
        "then 276.00 due",
        "Lifting guides are for close, level lifts.",
        "deliver 1 h 30 to come",
        "25 h 34, 1 h 30 to come",
        "Agreed €460.00",
        "deposit in ",
        "184.00",
        "due at hand-over ",
        "276.00",
        "Costs, 48.60 of it to come",
        "103.93",
        "Left per hour, as it stands",
        "13.16",
        "27 pieces, 43.7 L",
        "25 h 34, 55.33 spent",
        "460 agreed, 276 due",
        "after hand-over",
    ]);
    maker.tap(Tap::Next);
    assert_eq!((maker.app.place, maker.app.running().map(|run| run.op)), (Place::Bench, Some("delivery".into())));
    maker.say(Msg::Go(Place::Jobs));
    maker.shows(&["Delivery is running.", "Go to the bench"]).tap(Tap::Next);
    assert_eq!(maker.app.place, Place::Bench);
}

/// The whole of both demos, from the example: every figure of domain.md 12 that a job page shows.
#[test]
fn the_example_shows_both_demos_to_the_cent() {
    let mut maker = Maker::new();
    maker.tap(Tap::TryExample).shows(&["The example is being written"]);
    assert_eq!(maker.orders, [Order::OpenExample]);
    maker.example_opened(&[]);
    let filled: Vec<usize> = maker
        .orders
        .iter()
        .map(|order| if let Order::FillExample { lines, names } = order { lines.len() + names.len() } else { 0 })
        .collect();
    assert!(matches!(filled[..], [all] if 200 < all), "{filled:?}");
    maker.shows(&["Yours: none yet", "Example", "Remove", "Hall shoe bench", "12.74 left per hour", "Plant stands", "19.09 left per hour"]);
    let rows = fivebar_core::sheet::jobs::jobs(&maker.app.example.as_ref().unwrap().shop(maker.now.wall.at), "").unwrap();
    let (bench, stands) = (rows[0].job, rows[1].job);
    for (job, room, parts) in [
        (stands, None, ["Example, in no total", "Sold $565.00", "127.56", "19.09", "After workshop costs", "16.09", "50 pieces, 17.9 bf"]),
        (
            stands,
            Some(Room::Back),
            [
                "$19.09",
                "482.70 in all over 25 h 17",
                "16.09 after workshop costs, 13.41",
                "1.22",
                "55.1 %",
                "0.97",
                "565 from buyers, asked 580",
            ],
        ),
        (stands, Some(Room::Wood), ["Strips", "22 on the rack", ">25<", "17.9 board feet", "55.1 %", "21.1 %", "29.9 %"]),
        (
            stands,
            Some(Room::Hours),
            ["25 h 17", "Market", "9 h 30", "corrected 47 min, recalled 1 min", "9.5 of a pack of 32 at 34.90", "10.36", "127.56"],
        ),
        (bench, None, ["Look back", "fetch ", "1 h 23", "Sold €460.00", "103.93", "12.74", "12.74 an hour"]),
        (
            bench,
            Some(Room::Back),
            [
                "€12.74",
                "356.07 in all over 27 h 57",
                "17.04, had what was planned taken 19 h; 13.03 the 25 h 26 that were likely",
                "Seven hours over; wood and price as planned.",
                "1.37",
                "1.09",
                "1.00",
            ],
        ),
        (bench, Some(Room::Wood), ["Ends", "43.7 litres", "21.4 litres", "48.9 %", "17.3 %", "27.8 %", "Top"]),
        (bench, Some(Room::Hours), ["27 h 57", "Sanding", "4 h 49", "Milling", "3 h 32", "19 h", "103.93"]),
    ] {
        maker.tap(Tap::Open(Which::Example, job));
        if let Some(room) = room {
            maker.tap(Tap::Room(room));
        }
        maker.shows(&parts);
    }
    assert_eq!(maker.app.own.book.len(), 1, "nothing of it is the maker's own");
    maker.tap(Tap::List).shows(&["Yours: none yet"]).hides(&["Example, in no total"]);
}

#[test]
fn the_example_goes_in_one_tap_wherever_one_is() {
    let mut maker = Maker::new();
    maker.example_opened(&[]);
    let job = maker
        .app
        .example
        .as_ref()
        .and_then(|shelf| shelf.book.entries().find(|(entry, _)| matches!(entry.fact, fivebar_core::ledger::Fact::JobBegan(_))));
    let job = job.map(|(entry, _)| entry.id).unwrap();
    maker.tap(Tap::RemoveExample).tap(Tap::Open(Which::Example, job));
    maker.app.told(News::ExampleRemoved);
    maker.shows(&["Yours: none yet", "Try the example"]).hides(&["Remove"]);
    assert_eq!((maker.app.which, maker.app.jobs.open), (Which::Own, None));
}

#[test]
fn an_example_that_is_there_is_not_written_again() {
    let mut maker = Maker::new();
    let (lines, _) = crate::app::example::told();
    maker.example_opened(&lines.into_iter().map(|posted| posted.line).collect::<Vec<_>>());
    assert_eq!(maker.orders, []);
    maker.shows(&["Example", "Plant stands"]);
}

#[test]
fn the_example_is_looked_for_once_and_only_on_jobs() {
    let own = || News::Opened { which: Which::Own, device: Device::new([1; 8]), book: Box::default(), names: Sorted::new() };
    for (place, looks) in [(Place::Count, 0), (Place::Jobs, 1)] {
        let mut app = App::new(crate::parts::Page::default(), place, Rc::new(Plain::default()));
        let orders = app.told(own());
        let looked = |orders: &[Order]| orders.iter().filter(|order| **order == Order::LookForExample).count();
        assert_eq!(looked(&orders), looks);
        let now = Maker::new().now;
        let first = looked(&app.heard(Msg::Go(Place::Jobs), now)) + looks;
        assert_eq!((first, looked(&app.heard(Msg::Go(Place::Jobs), now))), (1, 0));
    }
}

/// An example that can't be opened says so, and leaves the maker's own book as it is.
#[test]
fn an_example_that_does_not_open_is_not_the_makers_book() {
    let mut maker = Maker::new();
    maker.app.told(News::NotOpened { which: Which::Example, trouble: crate::app::news::Trouble::Full });
    maker.shows(&["The example could not be opened.", "Your own book is as it was."]).hides(&["The book could not be opened."]);
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Shelf".into())).tap(Tap::Save).shows(&["Shelf"]);
}
