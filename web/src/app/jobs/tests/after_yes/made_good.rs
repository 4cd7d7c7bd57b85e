//! A piece that came back is made good, or its order ends with the refund.

use super::*;

/// Of an order that was handed over the maker says whether it ends with the refund, or is made good.
#[test]
fn an_order_ends_with_its_refund_or_is_made_good() {
    for (ends, promised) in [(true, 0), (false, 2)] {
        let mut maker = told("sell 2 more for 800 notes agreed deal");
        let sale = maker.room("more", Room::Sell).sheet().selling.sales[0].id;
        maker
            .tap(Tap::Write(What::Refund(sale)))
            .shows(&["800.00", "The order ends", "I make it good"])
            .pick(Pick::Ends(ends))
            .tap(Tap::Save);
        let sheet = maker.sheet();
        // Made good, what came in stays paid for it.
        assert_eq!((sheet.account.sold.promised, sheet.account.sold.left, sheet.account.sold.received.is_zero()), (promised, 3, ends));
        assert!(sheet.sale.due.is_zero());
        maker.say(Msg::Common(Common::TakeBack));
        assert_eq!((maker.sheet().account.sold.promised, maker.sheet().account.sold.left), (0, 1), "one act");
    }
}

/// Made good, nothing goes back unless the maker types it: 0 is proposed, and the page says what becomes of the money. What was typed stays.
#[test]
fn an_order_that_is_made_good_hands_nothing_back() {
    let good = |maker: &mut Maker| {
        let sale = maker.room("more", Room::Sell).sheet().selling.sales[0].id;
        maker.tap(Tap::Write(What::Refund(sale))).shows(&[">800<"]).hides(&["stays paid"]).pick(Pick::Ends(false));
    };
    let mut maker = told("sell 2 more for 800 notes agreed deal");
    good(&mut maker);
    maker.shows(&["Nothing goes back: what they paid stays paid for what you hand over again.", ">0<"]).hides(&[">800<"]);
    maker.pick(Pick::Ends(true)).shows(&[">800<"]).hides(&["stays paid"]).pick(Pick::Ends(false)).tap(Tap::Save);
    let owed = maker.sheet().sale.owed;
    assert_eq!([owed.received, owed.due].map(|sum| sum.amount().to_string()), ["800", "0"]);
    let mut typed = told("sell 2 more for 800 notes agreed deal");
    good(&mut typed);
    typed.figures(&["300"]).shows(&["What you don’t hand back stays paid for what you hand over again."]).hides(&["Nothing goes back"]);
    typed.pick(Pick::Ends(true)).shows(&[">300<"]).pick(Pick::Ends(false)).shows(&[">300<"]);
}

/// Sold from the list without an order: made good, it is agreed anew with what was paid ahead, nothing is due, and the next hand-over ends it. In
/// one act, taken back where it stands.
#[test]
fn a_sale_of_no_order_is_made_good() {
    let mut maker =
        Maker::told(&["2026-05-22 08:14 -05:00 workshop USD inch\ntill tax 0.055 fee 0.026 fixed 0.10\njob more \"Stools\" 2 spec\n\
        tag 105.50 more\nsell 1 more for 105.50 card"]);
    let sale = maker.room("more", Room::Sell).sheet().selling.sales[0].id;
    maker
        .tap(Tap::Write(What::Refund(sale)))
        .shows(&["Their money back", "I make it good", ">105.50<", "its money goes back"])
        .hides(&["Nothing goes back"]);
    maker.pick(Pick::Ends(false)).shows(&["Nothing goes back: what they paid stays paid", ">0<", "to be handed over again"]);
    maker.hides(&["its money goes back"]).tap(Tap::Save);
    let sheet = maker.sheet();
    let owed = sheet.sale.owed;
    let amounts = [owed.received, owed.due, owed.others].map(|sum| sum.amount().to_string());
    assert_eq!((amounts, sheet.account.sold.promised), (["105.5", "0", "0"].map(str::to_owned), 1));
    let lost = sheet.account.costs.fees_lost;
    assert!(lost.is_zero(), "its fee is of what is handed over again: {lost:?}");
    let agreed = sheet.selling.open().next().unwrap().id;
    let entry = sheet.selling.sales[0].reversed.unwrap().entry;
    maker.tap(Tap::Write(What::Sell(Some(agreed)))).tap(Tap::Save);
    let sold = maker.sheet().account.sold;
    assert_eq!(
        ([sold.taken, sold.tax, sold.received, sold.due].map(|sum| sum.amount().to_string()), sold.left),
        (["105.5", "5.5", "105.5", "0"].map(str::to_owned), 1)
    );
    maker.say(Msg::Common(Common::TakeBack));
    maker.tap(Tap::Strike(entry));
    let sheet = maker.sheet();
    assert_eq!((sheet.account.sold.promised, sheet.account.sold.left, sheet.selling.sales[0].reversed), (0, 1, None));
}

/// One of three sold together comes back and is made good: two stay sold, and one is to be handed over for its third that was paid.
#[test]
fn one_of_a_sale_of_several_is_made_good() {
    let mut maker = Maker::told(&["2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 spec\nsell 3 more for 300 notes"]);
    let sale = maker.room("more", Room::Sell).sheet().selling.sales[0].id;
    maker.tap(Tap::Write(What::Refund(sale))).pick(Pick::Ends(false)).tap(Tap::At(1)).tap(Tap::Press(Press::Digit(1))).tap(Tap::Save);
    let sheet = maker.sheet();
    let owed = [sheet.sale.owed.received, sheet.sale.owed.due].map(|sum| sum.amount().to_string());
    assert_eq!((owed, sheet.account.sold.promised, sheet.selling.sales[0].n), (["100", "0"].map(str::to_owned), 1, 2));
}

/// 800 came in for both, 300 goes back and the order is made good: 500 is ahead, and 300 is due; nothing of it counts twice.
#[test]
fn what_is_kept_of_an_order_that_is_made_good_counts_for_it() {
    let mut maker = told("sell 2 more for 800 notes agreed deal");
    let sale = maker.room("more", Room::Sell).sheet().selling.sales[0].id;
    maker.tap(Tap::Write(What::Refund(sale))).pick(Pick::Ends(false)).figures(&["300"]).tap(Tap::Save);
    maker.shows(&["$300.00 due", "300.00 handed back, 500.00 kept"]);
    let sheet = maker.sheet();
    let owed = sheet.sale.owed;
    let amounts = [owed.received, owed.due, owed.others, sheet.sale.due, sheet.account.sold.received].map(|sum| sum.amount().to_string());
    assert_eq!(amounts, ["500", "300", "0", "300", "500"]);
    maker.tap(Tap::Page).shows(&["deposit in", "500.00", "300.00"]).hides(&["Paid for others"]);
}
