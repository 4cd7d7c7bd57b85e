//! A payment that came to nothing: what was handed over for it stays sold.

use super::*;

/// Five for sale, two sold for 220 by card.
fn sold() -> Maker {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Stool".into())).figures(&["5"]).tap(Tap::Save).tap(Tap::Room(Room::Sell));
    maker.tap(Tap::Write(What::Sell(None))).pick(Pick::Paid(Some(Paid::Card))).figures(&["220", "2"]).tap(Tap::Save);
    maker
}

/// Sales, payments, left for sale, and what is due.
#[track_caller]
fn check(maker: &Maker, counts: [usize; 3], due: &str) {
    let sheet = maker.sheet();
    let left = usize::try_from(sheet.sale.left).unwrap();
    assert_eq!([sheet.selling.sales.len(), sheet.selling.payments.len(), left], counts);
    assert_eq!(sheet.account.sold.due.amount().to_string(), due);
}

#[test]
fn a_card_that_failed_leaves_the_piece_sold_and_its_money_due() {
    let mut maker = sold();
    check(&maker, [1, 1, 3], "0");
    let [sale, payment] = [maker.sheet().selling.sales[0].id, maker.sheet().selling.payments[0].id];
    maker.tap(Tap::Strike(payment)).shows(&["220.00", "Do it again", "a payment"]);
    check(&maker, [1, 0, 3], "220");
    maker.say(Msg::Common(Common::PutBack));
    check(&maker, [1, 1, 3], "0");
    // The sale is a mistake too: it comes again without the payment that failed.
    maker.tap(Tap::Strike(payment)).tap(Tap::Strike(sale));
    check(&maker, [0, 0, 5], "0");
    maker.say(Msg::Common(Common::PutBack));
    check(&maker, [1, 0, 3], "220");
    maker.say(Msg::Common(Common::PutBack));
    check(&maker, [1, 1, 3], "0");
    maker.tap(Tap::Strike(sale));
    check(&maker, [0, 0, 5], "0");
}

/// After the page was loaded anew the same is offered as before: the payment of a sale that was struck, and the one that stands again.
#[test]
fn a_payment_that_was_struck_is_offered_by_its_name_after_a_reload() {
    let mut maker = sold();
    let payment = maker.sheet().selling.payments[0].id;
    let reload = |maker: &mut Maker| {
        let last = maker.app.own.book.entries().next_back().unwrap().0.wall.at;
        maker.app.own.resume(last);
    };
    maker.tap(Tap::Strike(payment)).shows(&["Do it again", "a payment"]);
    reload(&mut maker);
    maker.shows(&["Do it again", "a payment"]);
    maker.say(Msg::Common(Common::PutBack));
    check(&maker, [1, 1, 3], "0");
    reload(&mut maker);
    maker.hides(&["Do it again"]).say(Msg::Common(Common::TakeBack));
    check(&maker, [0, 0, 5], "0");
}
