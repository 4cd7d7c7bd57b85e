//! People, told as tables: what is kept beside the book of them, what is in the next copy, and what is gone when they are forgotten.

use super::super::Tap;
use super::*;
use crate::app::told::nth;
use crate::app::{Common, Msg};
use crate::parts::Place;
use crate::screens::page;

fn say(app: &mut App, tap: Tap, n: u8) -> Vec<Order> {
    app.heard(Msg::Workshop(tap), nth(n))
}

/// Dana, a buyer, with what is typed of her.
fn dana(phone: &str, place: &str) -> (App, Id, Vec<Order>) {
    let mut app = App::for_tests(Place::Workshop);
    say(&mut app, Tap::Open(Over::People), 1);
    say(&mut app, Tap::Typed("Dana".into()), 2);
    say(&mut app, Tap::AddPerson(Role::Buyer), 3);
    let id = *app.own.names.keys().next().unwrap();
    say(&mut app, Tap::Person(id), 4);
    say(&mut app, Tap::Told(1, phone.into()), 5);
    say(&mut app, Tap::Told(2, place.into()), 6);
    let orders = say(&mut app, Tap::SavePerson, 7);
    (app, id, orders)
}

fn beside(orders: &[Order]) -> Vec<(usize, Vec<String>, usize)> {
    let appended = |order: &Order| match order {
        Order::Append { lines, names, .. } => {
            Some((lines.len(), names.kept.iter().map(|(_, line)| line.clone()).collect(), names.forgotten.len()))
        }
        _ => None,
    };
    orders.iter().filter_map(appended).collect()
}

#[track_caller]
fn check(phone: &str, place: &str, kept: &str) {
    let (app, _, orders) = dana(phone, place);
    assert_eq!(beside(&orders), [(0, vec![kept.to_owned()], 0)], "beside the book, and nothing in it");
    let shown = page(&app).html();
    for text in ["Dana", phone.trim(), place.trim()] {
        assert!(shown.contains(text), "{text} in {shown}");
        assert!(text.is_empty() || app.own.book.lines().all(|line| !line.contains(text)), "{text} is not in the book");
    }
}

#[test]
fn phone_and_place_are_kept_beside_the_book() {
    check("+1 555 0100", "Elm Street 4, two stairs", r#"{"name":"Dana","phone":"+1 555 0100","place":"Elm Street 4, two stairs"}"#);
    check(" 0100 ", "", r#"{"name":"Dana","phone":"0100"}"#);
    check("", "Elm Street 4", r#"{"name":"Dana","place":"Elm Street 4"}"#);
}

#[test]
fn nothing_new_is_not_written_and_a_name_is_asked_for() {
    let (mut app, id, orders) = dana("", "");
    assert_eq!(beside(&orders), []);
    say(&mut app, Tap::Person(id), 8);
    say(&mut app, Tap::Told(0, " ".into()), 9);
    assert_eq!(beside(&say(&mut app, Tap::SavePerson, 10)), []);
    assert!(page(&app).html().contains("name"), "it says what is missing");
    assert_eq!(app.own.name(id).map(String::as_str), Some("Dana"));
}

/// Who was forgotten before another act stays forgotten: no tap brings the line back without the name.
#[test]
fn who_was_forgotten_before_the_last_act_stays_forgotten() {
    let (mut app, dana, _) = dana("", "");
    say(&mut app, Tap::Open(Over::People), 8);
    say(&mut app, Tap::Typed("Bob".into()), 9);
    say(&mut app, Tap::AddPerson(Role::Buyer), 10);
    let bob = *app.own.names.keys().find(|id| **id != dana).unwrap();
    say(&mut app, Tap::Forget(dana), 11);
    say(&mut app, Tap::Forget(bob), 12);
    app.heard(Msg::Common(Common::TakeBack), nth(13));
    assert_eq!(app.own.names.keys().collect::<Vec<_>>(), [&bob]);
    app.heard(Msg::Common(Common::TakeBack), nth(14)); // Bob was added before
    app.heard(Msg::Common(Common::TakeBack), nth(15));
    assert!(fivebar_core::ledger::people::forgotten(&app.own.book).contains(&dana));
    assert!(!app.own.names.contains_key(&dana));
}

#[test]
fn forgetting_is_for_all_of_it_and_until_the_next_act_it_comes_back_whole() {
    let (mut app, id, _) = dana("+1 555 0100", "Elm Street 4");
    let whole = app.own.names.clone();
    let orders = say(&mut app, Tap::Forget(id), 8);
    assert_eq!(beside(&orders), [(1, vec![], 1)], "one transaction");
    let shown = page(&app).html();
    assert!(app.own.names.is_empty() && !shown.contains("Elm Street") && !shown.contains("0100"), "{shown}");
    let copy = |app: &mut App| {
        let orders = say(app, Tap::KeepCopy, 20);
        orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).unwrap()
    };
    let text = copy(&mut app);
    assert!(["Dana", "0100", "Elm Street"].iter().all(|text_of| !text.contains(text_of)), "{text}");
    app.heard(Msg::Common(Common::TakeBack), nth(9));
    assert_eq!(app.own.names, whole);
    assert!(copy(&mut app).contains("Elm Street 4"));
}
