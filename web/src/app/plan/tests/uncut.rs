//! What is not cut off yet and is set apart: what the rack says of it, and which keys its page has.

use super::later::{order, take_back};
use super::told::{at_rack, solved};
use super::*;
use fivebar_core::ledger::decide::{Command, Lying, StockCommand};

/// The page of the pile, or the list of the rack.
fn shown(app: &App, at: Option<Lying>) -> String {
    let mut app = reloaded(app);
    match at {
        Some(at) => drop(heard(&mut app, [Tap::Pile(at)])),
        None => {
            app.place = Place::Workshop;
            let rack = crate::app::workshop::Tap::ShowPage(crate::app::workshop::Over::Rack);
            app.heard(Msg::Workshop(rack), Now { wall: app.now, chance: [208; 10] });
        }
    }
    page(&app)
}

/// Whether a key of the page can be used.
fn is_open(page: &str, words: &str) -> bool {
    let of_it = page.split("<button").find(|it| it.contains(&format!(">{words}<"))).unwrap();
    !of_it.split('>').next().unwrap().contains("disabled")
}

/// What the legs leave is on boards that are not cut yet. All of it is set apart for the stool: the list says so as its page does, and no piece
/// of it can go anywhere else.
#[test]
fn what_is_not_cut_off_yet_and_set_apart_is_said_and_stays() {
    let mut app = at_rack("job stool \"Stool\" 1 spec\npart \"leg\" 4 of 20 x 50 x 550 mm oak-european for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Sticks), Tap::At(0), Tap::Press(Press::Digit(1)), Tap::Go]);
    solved(&mut app);
    heard(&mut app, [Tap::Stop, Tap::Use]);
    let (at, n) = crate::app::plan::after_the_saw(&app)[0];
    let job = fivebar_core::ledger::fold::jobs(&app.shelf().book).find(|job| job.name == "Stool").unwrap().id;
    assert!(is_open(&shown(&app, Some(at)), "Gone"), "as far as the book has it");
    order(&mut app, Command::Stock(at, StockCommand::Reserve { job, n }));
    let of_pile = shown(&app, Some(at));
    assert!(of_pile.contains("set apart for Stool") && !is_open(&of_pile, "Gone") && is_open(&of_pile, "Set apart"), "{of_pile}");
    let list = shown(&app, None);
    assert!(list.contains(&format!("{n} only after the saw, {n} set apart")), "{list}");
    take_back(&mut app);
    assert!(!shown(&app, None).contains("set apart") && is_open(&shown(&app, Some(at)), "Gone"));
}
