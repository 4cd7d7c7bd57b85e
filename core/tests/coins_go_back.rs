//! What a payment in notes was rounded to goes back with its money, and no coin of it stays.

use fivebar_core::ledger::fold::{self, Job};
use fivebar_core::quantity::{Currency, Money};
use fivebar_core::story::tell;

const USD: Currency = Currency::USD;

/// After these lines of an order: received, due, and the coins of all and of the order where it is open.
#[track_caller]
fn check(lines: &str, sums: [&str; 4]) {
    let story = tell(&format!("2026-05-22 08:14 -05:00 workshop USD inch\ntill cash 0.05\njob more \"More\" 2 order\n{lines}"));
    assert_eq!(story.refused, [], "{lines}");
    let job: Job = fold::job(&story.book, story.names.job("more").unwrap()).unwrap();
    let selling = &job.selling;
    let coins = selling.open().next().map_or(Ok(Money::zero(USD)), |open| selling.rounded_of_order(USD, open)).unwrap();
    let found = [selling.received(USD).unwrap(), job.due().unwrap(), selling.rounded(USD).unwrap(), coins];
    assert_eq!(found.map(|sum| sum.amount().to_string()), sums.map(str::to_owned), "{lines}");
    assert_eq!(selling.over(USD).unwrap(), [], "{lines}");
}

/// One of two for 71.34, paid with 35.65 for its 35.67, comes back and its money goes back: no coin stays on the order. Where it is kept it stays.
#[test]
fn a_coin_goes_back_with_its_piece_while_the_order_goes_on() {
    let one = "agree 71.34 for 2 more fetched as deal\nsell 1 more for 35.67 notes agreed deal as one\n";
    check(one, ["35.65", "35.67", "-0.02", "-0.02"]);
    check(&format!("{one}bring-back 1 of sale one on more\n"), ["0", "71.34", "0", "0"]);
    check(&format!("{one}bring-back 1 of sale one on more kept 35.67\n"), ["35.65", "35.67", "-0.02", "-0.02"]);
    check(
        &format!("{one}bring-back 1 of sale one on more\nsell 1 more for 35.67 notes agreed deal as two\n"),
        ["35.65", "35.67", "-0.02", "-0.02"],
    );
}

/// An order for 99.98 is paid ahead with 100. All of it goes back: called off, brought back with its end, or to be made good and paid once more; or
/// the buyer keeps it and has all back, as it was priced or as it was handed over. Of what is kept the coin stays.
#[test]
fn a_coin_goes_back_with_what_was_paid_ahead() {
    let paid = "agree 99.98 for 1 more fetched as deal\npay 99.98 for more notes agreed deal\n";
    let sold = format!("{paid}sell 1 more for 99.98 agreed deal as one\n");
    let back = format!("{sold}bring-back 1 of sale one on more\n");
    check(paid, ["100", "0", "0.02", "0.02"]);
    check(&format!("{paid}cancel deal on more\n"), ["0", "0", "0", "0"]);
    check(&format!("{paid}cancel deal on more kept 20\n"), ["20.02", "0", "0.02", "0"]);
    check(&sold, ["100", "0", "0.02", "0"]);
    check(&format!("{sold}bring-back 1 of sale one on more ends\n"), ["0", "0", "0", "0"]);
    check(&back, ["0", "99.98", "0", "0"]);
    check(&format!("{back}pay 99.98 for more notes agreed deal\n"), ["100", "0", "0.02", "0.02"]);
    check(&format!("{sold}bring-back 1 of sale one on more kept 99.98\n"), ["100", "0", "0.02", "0.02"]);
}

/// Two for 99.98 are paid ahead with 100: the coin is of both, and goes with the last of them.
#[test]
fn a_coin_of_two_goes_back_with_the_last() {
    let sold = "agree 99.98 for 2 more fetched as deal\npay 99.98 for more notes agreed deal\n\
        sell 1 more for 49.99 agreed deal as one\nsell 1 more for 49.99 agreed deal as two\n";
    let [one, two] = ["one", "two"].map(|name| format!("bring-back 1 of sale {name} on more ends\n"));
    check(&format!("{sold}{one}"), ["50.01", "0", "0.02", "0"]);
    check(&format!("{sold}{two}"), ["50.01", "0", "0.02", "0"]);
    check(&format!("{sold}{one}{}", two.replace(" ends", "")), ["0", "0", "0", "0"]);
}

#[test]
fn a_coin_goes_back_with_all_of_the_price_where_the_piece_is_kept() {
    for sold in [
        "sell 1 more for 99.98 notes as one\n",
        "agree 99.98 for 1 more fetched as deal\npay 99.98 for more notes agreed deal\nsell 1 more for 99.98 agreed deal as one\n",
    ] {
        for back in [
            "let-keep 100 of sale one on more\n",
            "let-keep 99.98 of sale one on more\n",
            "let-keep 60 of sale one on more\nlet-keep 40 of sale one on more\n",
        ] {
            check(&format!("{sold}{back}"), ["0", "0", "0", "0"]);
        }
        check(&format!("{sold}let-keep 60 of sale one on more\n"), ["40", "0", "0.02", "0"]);
    }
    let less = "sell 1 more for 99.97 notes as one\nlet-keep 99.95 of sale one on more\n";
    check(less, ["0", "0", "0", "0"]);
}
