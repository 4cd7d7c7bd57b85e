//! Woods and air, machines, the van and the timber yard as tables of taps.

use super::*;
use crate::app::told::{after, nth};
use crate::app::workshop::Tap;
use crate::app::{Msg, count, trip};
use crate::parts::Place;
use crate::words::Plain;
use fivebar_core::quantity::{Currency, Units};
use std::rc::Rc as Shared;

fn tap(tap: WoodTap) -> Msg {
    Msg::Workshop(Tap::Wood(tap))
}

/// Types figures, one after the other, into the form that is open.
fn typed(figures: &[&str]) -> Vec<Msg> {
    let one = |(at, text): (usize, &&str)| {
        let keys: Vec<Msg> = text.chars().map(|sign| tap(WoodTap::Press(press(sign)))).collect();
        std::iter::once(tap(WoodTap::At(at))).chain(keys).collect::<Vec<_>>()
    };
    figures.iter().enumerate().filter(|(_, text)| !text.is_empty()).flat_map(one).collect()
}

fn press(sign: char) -> Press {
    match sign.to_digit(10) {
        Some(digit) => Press::Digit(digit as u8),
        None if sign == '-' => Press::Minus,
        None => Press::Point,
    }
}

fn metric() -> App {
    let mut app = App::for_tests(Place::Workshop);
    app.speech = Shared::new(Plain { sign: Sign::Comma, currency: Currency::EUR, units: Units::Metric, ..Plain::default() });
    app
}

/// What a page shows once these figures were typed and, if asked, written.
fn page(app: &mut App, page: Page, figures: &[&str], saves: bool) -> String {
    let save = saves.then(|| tap(WoodTap::Save));
    after(app, std::iter::once(tap(WoodTap::Open(page))).chain(typed(figures)).chain(save))
}

#[track_caller]
fn holds(shown: &str, wanted: &[&str]) {
    for words in wanted {
        assert!(shown.contains(words), "“{words}” in {shown}");
    }
}

/// 70 °F and 50 % humidity give 9.2 % in the handbook's table.
#[test]
fn air_says_where_wood_comes_to_rest() {
    let mut app = App::for_tests(Place::Workshop);
    holds(&after(&mut app, []), &["Woods and air", "air, movement, your own", "Machines", "Van", "Timber yard"]);
    holds(&page(&mut app, Page::Woods, &[], false), &["Air", "Movement", "Before gluing", "Your own woods", "not said"]);
    holds(&page(&mut app, Page::Air, &["70", "50"], true), &["9.2 %", "70 °F and 50 % damp, Tue 3 March", "dry season"]);
    holds(&page(&mut app, Page::Woods, &[], false), &["wood comes to 9.2 % here"]);
    let refused = page(&mut app, Page::Air, &["20", "50"], true);
    holds(&refused, &["Not taken: the table goes from 30 °F to 130 °F."]);
    assert_eq!(refused.matches("the table goes").count(), 1, "in its place, and only there");
    let mut app = metric();
    holds(&page(&mut app, Page::Air, &["20", "101"], true), &["0 % to 100 %", "class=\"key left wrong\""]);
    assert!(app.own.book.is_empty());
    holds(&page(&mut app, Page::Air, &["21,5", "50"], true), &["21.5 °C and 50 % damp"]);
    holds(&page(&mut app, Page::Air, &["-1", "80"], true), &["−1 °C and 80 % damp"]);
    holds(&page(&mut app, Page::Air, &["-20", "80"], true), &["Not taken: the table goes from"]);
}

/// Where it was read is the maker's to say; wood is thought to be where that air leads it.
#[test]
fn air_says_where_it_was_read_and_what_wood_is_at_now() {
    let mut app = App::for_tests(Place::Workshop);
    assert!(!page(&mut app, Page::Movement, &["10"], false).contains("Leave a slot"));
    let place = [tap(WoodTap::Open(Page::Air)), tap(WoodTap::Name(" the loft ".into()))];
    let read = after(&mut app, place.into_iter().chain(typed(&["70", "50"])).chain([tap(WoodTap::Save)]));
    holds(&read, &["Where, if you like", "70 °F and 50 % damp, Tue 3 March, the loft"]);
    holds(&page(&mut app, Page::Movement, &["10"], false), &[">9.2<", "Leave a slot"]);
    holds(&page(&mut app, Page::Air, &["70", "90"], true), &["90 % damp, Tue 3 March"]);
    let damp = page(&mut app, Page::Movement, &["10"], false);
    assert!(!damp.contains("Leave a slot") && damp.contains("Moves"), "20 % is beyond what is known: {damp}");
}

/// 340 mm of flat-sawn European oak, 0.0036 (0.0035 to 0.0036 between sources).
#[test]
fn a_width_moves_with_the_room() {
    let mut app = metric();
    let shown = page(&mut app, Page::Movement, &["340", "7", "10"], false);
    holds(&shown, &["Moves 3.7 mm", "from 7 to 10 %", "Sources differ: 3.6 mm to 3.7 mm.", "Say the moisture it has now"]);
    holds(&shown, &["This is my room"]);
    let slot = page(&mut app, Page::Movement, &["340", "", "", "9"], false);
    holds(&slot, &["Moves 4.9 mm", "from 6 to 10 %", "Leave a slot of 1.3 mm to swell into. It may shrink 3.7 mm. Both are rounded up."]);
    assert!(!slot.contains("This is my room"), "it is the room that stands");
    holds(&after(&mut app, [tap(WoodTap::Sawn(Sawn::Quarter))]), &["Moves 2.2 mm"]);
    let usual = after(&mut app, [tap(WoodTap::List)]);
    assert!(usual.contains("other woods") && !usual.contains("Norway spruce"), "{usual}");
    holds(&after(&mut app, [tap(WoodTap::Others)]), &["Wild cherry", "Norway spruce"]);
    holds(&after(&mut app, [tap(WoodTap::Choose(Key::read("cherry-wild")))]), &["Wild cherry"]);
    holds(&page(&mut app, Page::Movement, &["340", "10", "6"], false), &["a room from 10 to 6 % moisture ends before it begins"]);
    holds(&page(&mut app, Page::Movement, &["340", "3", "6"], false), &["how wood moves is known from 6 to 14 % moisture"]);
    page(&mut app, Page::Movement, &["", "7", "9"], true);
    assert_eq!(app.shelf().workshop().wood.room, Some((7.into(), 9.into())));
}

#[test]
fn more_than_two_points_are_not_glued_yet() {
    let mut app = App::for_tests(Place::Workshop);
    holds(&page(&mut app, Page::Gluing, &["8"], true), &["One more reading"]);
    let add = |text: &str| typed(&[text]).into_iter().chain([tap(WoodTap::Save)]).collect::<Vec<_>>();
    holds(&after(&mut app, add("10")), &["2 points apart", "No more than 2 points.", "Common practice, from no table."]);
    holds(&after(&mut app, add("10.5")), &["2.5 points apart", "More than 2 points: not glued together yet."]);
    holds(&after(&mut app, [tap(WoodTap::Drop(2))]), &["2 points apart"]);
    holds(&after(&mut app, add("900")), &["It must be from 1 to 250"]);
    assert!(app.own.book.is_empty(), "readings to glue are written nowhere");
}

/// Adds plum of 3.7 lb a board foot.
fn plum(app: &mut App) -> String {
    let page = [tap(WoodTap::Open(Page::OneWood(None))), tap(WoodTap::Name("wild plum".into())), tap(WoodTap::From("weighed".into()))];
    after(app, page.into_iter().chain(typed(&["3.7", "0.3"])).chain([tap(WoodTap::Save)]))
}

#[test]
fn an_own_wood_is_used_everywhere() {
    let mut app = App::for_tests(Place::Workshop);
    holds(&page(&mut app, Page::OneWood(None), &["3.7"], true), &["Nothing was named."]);
    holds(&plum(&mut app), &["Wild plum", "yours, 3.7 lb a board foot", "weighed"]);
    let key = Key::read("plum-wild").unwrap();
    let own = app.shelf().workshop().wood.woods.own_of(&key).cloned().unwrap();
    assert_eq!((own.name.as_str(), own.tangential, own.radial), ("wild plum", Some(0.003), None));
    let again = page(&mut app, Page::OneWood(Some(key.clone())), &[], false);
    holds(&again, &["3.7", "0.3", "wild plum", "weighed"]);
    let moved = page(&mut app, Page::Movement, &["10"], false);
    assert!(moved.contains("Moves"), "{moved}");
    holds(&after(&mut app, [tap(WoodTap::Choose(Some(key.clone()))), tap(WoodTap::Sawn(Sawn::Quarter))]), &["in no table here"]);
    use crate::app::draft::DraftTap::{MoreWoods, Side, Wood};
    let said = |tap| Msg::Count(count::Tap::Draft(tap));
    let more = after(&mut app, [Msg::Go(Place::Count), Msg::Count(count::Tap::NewPile), said(MoreWoods)]);
    assert!(more.find("Wild plum").unwrap() < more.find("White ash").unwrap(), "the own ones come first: {more}");
    let inch = fivebar_core::quantity::Length::INCH;
    let sides = [inch, inch.times(12).unwrap(), inch.times(12).unwrap()].map(|side| said(Side(side)));
    let pile = after(&mut app, std::iter::once(said(Wood(Some(key)))).chain(sides));
    holds(&pile, &["Wild plum, A"]);
    let tile = count::sheet(&app).unwrap().tiles[0].pile;
    let counted = after(&mut app, [Msg::Count(count::Tap::Pile(tile))]);
    holds(&counted, &["3.7 lb"]);
    assert!(!counted.contains("counts as the heaviest"), "{counted}");
}

/// A wood that a pile is of stays; one that nothing is of can be taken off, and put back.
#[test]
fn an_own_wood_that_nothing_is_of_is_taken_off() {
    let mut app = App::for_tests(Place::Workshop);
    plum(&mut app);
    let key = Key::read("plum-wild").unwrap();
    let remove = [tap(WoodTap::Open(Page::OneWood(Some(key.clone())))), tap(WoodTap::Remove)];
    let gone = after(&mut app, remove.clone());
    assert!(gone.contains("None yet.") && !gone.contains("Wild plum"), "{gone}");
    holds(&after(&mut app, [Msg::Common(crate::app::Common::TakeBack)]), &["Wild plum"]);
    use crate::app::draft::DraftTap::{MoreWoods, Wood};
    let said = |tap| Msg::Count(count::Tap::Draft(tap));
    after(&mut app, [Msg::Go(Place::Count), Msg::Count(count::Tap::NewPile), said(MoreWoods), said(Wood(Some(key.clone())))]);
    after(&mut app, [Msg::Count(count::Tap::Draft(crate::app::draft::DraftTap::Later)), Msg::Go(Place::Workshop)]);
    holds(&after(&mut app, remove), &["Not taken off: a pile or a part is of this wood.", "wild plum"]);
}

/// What a page of a new wood, or of one that is opened for change, shows once it was named and written.
fn named(app: &mut App, page: Page, name: &str, figure: &str) -> String {
    let chosen = matches!(page, Page::Machine(None)).then(|| tap(WoodTap::Choose(None)));
    let page = std::iter::once(tap(WoodTap::Open(page))).chain(chosen).chain([tap(WoodTap::Name(name.into()))]);
    after(app, page.chain(typed(&[figure])).chain([tap(WoodTap::Save)]))
}

/// Keys take 24 letters of a name.
#[test]
fn a_new_wood_takes_no_other_woods_place() {
    let mut app = App::for_tests(Place::Workshop);
    let (long, longer) = ("Plum of the old garden wall, north", "Plum of the old garden wall, south");
    named(&mut app, Page::OneWood(None), long, "3.7");
    holds(&named(&mut app, Page::OneWood(None), longer, "3.9"), &[long, "yours, 3.7 lb", longer, "yours, 3.9 lb"]);
    let own: Vec<Key> = app.shelf().workshop().wood.woods.own().map(|(key, _)| key.clone()).collect();
    assert_eq!(own.iter().map(Key::as_str).collect::<Vec<_>>(), ["w-plum-of-the-old-garden", "w-plum-of-the-old-garden-2"]);
    let there = "Not added: you have a wood called Plum of the old garden wall, north already.";
    holds(&named(&mut app, Page::OneWood(None), "  plum of the old garden wall, NORTH ", "4"), &[there]);
    let second = Page::OneWood(own.get(1).cloned());
    holds(&named(&mut app, second.clone(), long, "4"), &[there]);
    holds(&named(&mut app, second, longer, "4"), &["yours, 3.7 lb", "yours, 4 lb"]);
    assert_eq!(app.shelf().workshop().wood.woods.own().count(), 2);
}

#[test]
fn a_new_machine_takes_no_other_machines_place() {
    let mut app = App::for_tests(Place::Workshop);
    let (long, longer) = ("Bandsaw of my grandfather, 14 in", "Bandsaw of my grandfather, 18 in");
    named(&mut app, Page::Machine(None), long, "6");
    holds(&named(&mut app, Page::Machine(None), longer, "8"), &[long, "6 in long", longer, "8 in long"]);
    let there = "Not added: you have a machine called Bandsaw of my grandfather, 14 in already.";
    holds(&named(&mut app, Page::Machine(None), "bandsaw of my grandfather, 14 in", "9"), &[there]);
    page(&mut app, Page::Machine(None), &["12"], true);
    let jointer = "Not added: you have a machine called jointer already.";
    holds(&page(&mut app, Page::Machine(None), &["13"], true), &[jointer]);
    holds(&named(&mut app, Page::Machine(None), "Jointer", "13"), &[jointer]);
    holds(&page(&mut app, Page::Machine(Key::read("jointer")), &["13"], true), &["Jointer"]);
    assert_eq!(app.shelf().workshop().wood.machines.len(), 3);
}

#[test]
fn figures_of_no_wood_are_refused_beside_the_pad() {
    let mut app = App::for_tests(Place::Workshop);
    let refused = |app: &mut App, name: &str, figures: &[&str]| {
        let page = [tap(WoodTap::Open(Page::OneWood(None))), tap(WoodTap::Name(name.into()))];
        after(app, page.into_iter().chain(typed(figures)).chain([tap(WoodTap::Save)]))
    };
    holds(&refused(&mut app, "lead", &["59"]), &["no wood weighs that. It weighs from 0.3 to 7.8 lb a board foot.", "lead"]);
    holds(&refused(&mut app, "plum", &["3.7", "36"]), &["at most 1 % of its width"]);
    holds(&refused(&mut app, "plum", &[""]), &["nothing is typed yet."]);
    assert!(app.own.book.is_empty());
}

#[test]
fn the_van_carries_its_payload_less_the_people() {
    let mut app = App::for_tests(Place::Workshop);
    let shown = page(&mut app, Page::Van, &["846"], true);
    holds(&shown, &["670 lb beside the driver", "a person"]);
    after(&mut app, [Msg::Go(Place::Count), Msg::Count(count::Tap::First), Msg::Count(count::Tap::Trip(trip::TripTap::Open))]);
    let people = [
        Msg::Count(count::Tap::Trip(trip::TripTap::Choose(trip::Field::People))),
        Msg::Count(count::Tap::Press(Press::Digit(2))),
        Msg::Count(count::Tap::Trip(trip::TripTap::Save)),
    ];
    holds(&after(&mut app, people), &["people today", "493 lb"]);
}

#[test]
fn boards_have_a_price_for_each_wood() {
    let mut app = App::for_tests(Place::Workshop);
    holds(&page(&mut app, Page::Yard, &[], false), &["There and back", "not said", "Any wood"]);
    holds(&page(&mut app, Page::Way, &["20", "60"], true), &["20 mi, 1 h"]);
    holds(&page(&mut app, Page::Price(None), &["4.75"], true), &["$4.75 a board foot"]);
    let list = page(&mut app, Page::PriceOf, &[], false);
    holds(&list, &["choose one", "Ash"]);
    let ash = [tap(WoodTap::Choose(Key::read("ash-white")))].into_iter().chain(typed(&["5.5"])).chain([tap(WoodTap::Save)]);
    holds(&after(&mut app, ash), &["Ash", "$5.50 a board foot", "$4.75 a board foot"]);
    let known = app.shelf().workshop();
    let price = |wood: Option<&str>| known.board_price(Currency::USD, wood.and_then(Key::read).as_ref()).unwrap().amount.to_string();
    assert_eq!((price(Some("ash-white")), price(Some("cherry-black"))), ("5.5".into(), "4.75".into()));
    let ash = || tap(WoodTap::Choose(Key::read("ash-white")));
    page(&mut app, Page::PriceOf, &[], false);
    holds(&after(&mut app, [ash()]), &[">5.5<"]);
    page(&mut app, Page::PriceOf, &["8"], false);
    holds(&after(&mut app, [ash()]), &[">8<"]);
    let mut app = metric();
    let metres = [tap(WoodTap::Open(Page::Price(None))), tap(WoodTap::Per(Measure::CubicMetre))].into_iter().chain(typed(&["2400"]));
    holds(&after(&mut app, metres.chain([tap(WoodTap::Save)])), &["€2400.00 a cubic metre"]);
}

#[test]
fn a_machine_has_its_least_length() {
    let mut app = App::for_tests(Place::Workshop);
    holds(&page(&mut app, Page::Machines, &[], false), &["None yet."]);
    holds(&page(&mut app, Page::Machine(None), &[""], true), &["nothing is typed yet."]);
    holds(&page(&mut app, Page::Machine(None), &["12"], true), &["Jointer", "12 in long", "Your machine’s manual decides."]);
    let lathe = [tap(WoodTap::Open(Page::Machine(None))), tap(WoodTap::Choose(None))];
    holds(&after(&mut app, lathe.into_iter().chain(typed(&["6"])).chain([tap(WoodTap::Save)])), &["Nothing was named."]);
    let named = [tap(WoodTap::Name("große Fräse".into())), tap(WoodTap::Save)];
    holds(&after(&mut app, named), &["Große Fräse", "6 in long"]);
    let gone = [tap(WoodTap::Open(Page::Machine(Key::read("jointer")))), tap(WoodTap::Remove)];
    let left = after(&mut app, gone);
    holds(&left, &["Große Fräse"]);
    assert!(!left.contains(">Jointer<"), "{left}");
}

#[test]
fn back_leads_to_the_list_a_page_was_opened_from() {
    let mut app = App::for_tests(Place::Workshop);
    let close = || Msg::Workshop(Tap::Close);
    let places = |app: &mut App| after(app, [close()]);
    page(&mut app, Page::OneWood(None), &[], false);
    for place in ["workshop/own-woods", "workshop/woods", "data-place=\"workshop\""] {
        let shown = places(&mut app);
        assert!(shown.contains(place), "{place} in {shown}");
    }
    app.heard(tap(WoodTap::Open(Page::Way)), nth(1));
    assert!(places(&mut app).contains("workshop/yard"));
}

/// The demo's blocks are of unknown wood; a wet pile is a guess too, told by the whole sentence and nowhere else.
#[test]
fn count_says_that_unknown_wood_counts_as_the_heaviest() {
    let load = |lines: &str| {
        let story = fivebar_core::story::tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\n{lines}"));
        assert_eq!(story.refused, []);
        let mut app = App::for_tests(Place::Count);
        app.own = crate::app::shelf::Shelf::of(fivebar_core::ledger::Device::new([1; 8]), story.book, Default::default());
        after(&mut app, [])
    };
    let guess = "Unknown or wet wood counts as the heaviest.";
    let ash = "pile ash ash-white 1 x 2 x 20 in\ncount 30 ash\n";
    for (lines, said) in [("", 0), ("moisture ash 14.5\n", 0), ("moisture ash wet\n", 1), ("pile odd 1 x 2 x 20 in\ncount 3 odd\n", 1)] {
        assert_eq!(load(&format!("{ash}{lines}")).matches(guess).count(), said, "{lines}");
    }
}

/// Typed on a keyboard where a point is the decimal sign: a comma that may group is asked about, one that can't is the decimal sign.
#[test]
fn a_comma_that_may_group_is_asked_about() {
    let typed = |text: &str| {
        let mut app = metric();
        app.speech = Shared::new(Plain { sign: Sign::Point, currency: Currency::EUR, units: Units::Metric, ..Plain::default() });
        page(&mut app, Page::Saw, &[], false);
        let keys = crate::screens::page(&app).keys_at("pad").unwrap();
        let presses: Vec<Msg> = text.chars().filter_map(|key| keys(&key.to_string())).collect();
        let shown = after(&mut app, presses.into_iter().chain([tap(WoodTap::Save)]));
        (app.own.book.len(), shown)
    };
    let (kept, shown) = typed("3,5");
    assert_eq!(kept, 1, "{shown}");
    let (kept, shown) = typed("1,200");
    assert!(kept == 0 && shown.contains("1.2 mm"), "{shown}");
}

/// By hand: 29.57353 ml of 1.1 g for 0.09290304 m² are 350.16 g for a square metre, so 180 are 0.51 fluid ounces for a square foot, and 0.6 are 210.
#[test]
fn glue_is_asked_in_the_units_of_the_book() {
    let check = |units: Units, said: &str, typed: &str, kept: &str| {
        let mut app = metric();
        app.speech = Shared::new(Plain { sign: Sign::Point, currency: Currency::EUR, units, ..Plain::default() });
        page(&mut app, Page::Saw, &["", "", "", "", "", "", "", "", "", "", "", "", "", "180"], units == Units::Metric);
        let glue = ["", "", "", "", "", "", "", "", "", "", "", "", "", typed];
        let shown = page(&mut app, Page::Saw, &[], false);
        assert!(shown.contains(said), "{said}: {shown}");
        page(&mut app, Page::Saw, &glue, true);
        let (entry, _) = app.own.book.entries().next_back().unwrap();
        assert!(fivebar_core::ledger::line::write(entry).contains(kept), "{kept}");
        let shown = page(&mut app, Page::Saw, &[], false);
        assert!(shown.contains(typed), "{typed}: {shown}");
    };
    check(Units::Metric, "g/m²", "210", r#"{"glue":210}"#);
    check(Units::Inch, "fl oz/sq ft", "0.6", r#"{"glue":210}"#);
}

/// Only what was corrected is written: the other phone may have corrected the rest.
#[test]
fn a_page_writes_what_was_corrected_alone() {
    let last = |app: &App| {
        let (entry, _) = app.own.book.entries().next_back().unwrap();
        fivebar_core::ledger::line::write(entry).split_once("\"d\":").unwrap().1.split_once(",\"id\"").unwrap().0.to_owned()
    };
    let mut app = metric();
    page(&mut app, Page::Saw, &["4"], true);
    assert_eq!(last(&app), r#"{"kerf":"4000000"}"#);
    page(&mut app, Page::Saw, &[], true);
    assert_eq!(app.own.book.len(), 1, "nothing was said");
    page(&mut app, Page::Saw, &["", "", "", "", "", "", "", "", "", "", "", "", "", "180"], true);
    assert_eq!(last(&app), r#"{"glue":180}"#);
    page(&mut app, Page::Van, &["680", "80"], true);
    page(&mut app, Page::Van, &["", "90"], true);
    assert_eq!(last(&app), r#"{"person":90000}"#);
    page(&mut app, Page::Way, &["37", "47"], true);
    page(&mut app, Page::Way, &["40"], true);
    assert_eq!(last(&app), r#"{"distance":"40000000000000"}"#);
}
