//! What the rows of Workshop say of what lies behind them.

use super::*;
use crate::app::shelf::Shelf;
use fivebar_core::ledger::{Device, line};
use fivebar_core::story::tell;

fn told(text: &str) -> App {
    let story = tell(text);
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Workshop);
    let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
    (app.own, app.now) = (Shelf::open(Device::new([1; 8]), lines.iter().map(String::as_str)), story.now);
    app
}

#[test]
fn how_one_is_paid_says_all_of_the_fee_of_a_card() {
    for (fee, said) in [
        ("fee 0.029 fixed 0.30", "card 2.9 % and $0.30"),
        ("fee 0.029", "card 2.9 %<"),
        ("fixed 0.30", "card $0.30"),
        ("tax 0.055 inside fee 0.029 fixed 0.30", "sales tax 5.5 %, card 2.9 % and $0.30"),
    ] {
        let mut app = told(&format!("2026-05-22 08:14 -05:00 workshop USD inch\ntill {fee}\n"));
        let shown = after(&mut app, [Msg::Go(Place::Workshop)]).replace('\u{a0}', " ");
        assert!(shown.contains(said), "{said}: {shown}");
    }
}

/// A deposit, and what came in for a piece of the order that was handed over: both are payments, and one alone is a deposit.
#[test]
fn what_came_in_since_the_copy_is_called_payments() {
    let deal = "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 2 order\nagree 400 for 2 more fetched deposit 100 as deal\n\
        pay 100 for more bank agreed deal\n";
    for (then, said) in
        [("", "1 payment"), ("sell 1 more for 200 agreed deal\npay 100 for more bank agreed deal\n", "1 sale and 2 payments")]
    {
        let mut app = told(&format!("{deal}{then}"));
        let shown = after(&mut app, [Msg::Go(Place::Workshop)]);
        assert!(shown.contains(said) && !shown.contains("deposit"), "{said}: {shown}");
    }
}
