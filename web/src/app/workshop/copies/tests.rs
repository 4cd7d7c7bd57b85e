//! Copies brought in and kept again, as tables of taps.

use super::*;
use crate::app::Msg;
use crate::app::told::nth;
use crate::parts::Place;
use fivebar_core::ledger::line::document::Document;
use fivebar_core::story::tell;

fn say(tap: Tap) -> Msg {
    Msg::Workshop(tap)
}

/// A copy of a book with one person.
fn copy(person: &str) -> String {
    let story = tell(&format!("2026-03-02 09:00 -05:00 workshop USD inch\nperson {person}"));
    assert_eq!(story.refused, []);
    document::write(&story.book, &story.people, None, nth(0).wall)
}

/// The copy this app keeps now.
fn kept(app: &mut App) -> String {
    let orders = app.heard(say(Tap::KeepCopy), nth(99));
    orders.into_iter().find_map(|order| if let Order::Share { text, .. } = order { Some(text) } else { None }).expect("a copy")
}

fn brought_in(app: &mut App, text: &str) {
    app.heard(say(Tap::Picked(text.to_owned())), nth(10));
    app.heard(say(Tap::AddThese), nth(11));
    app.heard(say(Tap::Added(Ok(()))), nth(12));
}

/// What a copy holds of people is in the next one too, whatever of it a screen shows.
#[track_caller]
fn check(person: &str) {
    let text = copy(person);
    let mut app = App::for_tests(Place::Workshop);
    brought_in(&mut app, &text);
    let again = kept(&mut app);
    let people = |text: &str| document::read(text).map(|Document { people, .. }| people).unwrap();
    assert_eq!(people(&again), people(&text), "{person}");
    // another phone, the same
    let mut next = App::for_tests(Place::Workshop);
    brought_in(&mut next, &again);
    assert_eq!(people(&kept(&mut next)), people(&text), "{person}");
}

#[test]
fn inv11_phone_and_place_of_a_copy_are_in_the_next_one() {
    check("works supplier \"Stair works\"");
    check("works supplier \"Stair works\" phone \"+1 555 0100\"");
    check("dana buyer \"Dana\" place \"Elm Street 4, two stairs\"");
    check("dana buyer \"Dana\" phone \"+1 555 0100\" place \"Elm Street 4\"");
}
