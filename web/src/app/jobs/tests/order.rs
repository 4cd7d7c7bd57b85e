//! What was agreed, on the page of its job and in the list, before anything of it is made.

use super::*;

fn bench(lines: &str) -> Maker {
    Maker::told(&[&format!("2026-05-22 08:14 -05:00 workshop USD inch\njob bench \"Bench\" 1 order\n{lines}\n")])
}

/// 300 with 150 ahead: the deposit is due first, 150 at the hand-over; once it is in, that alone is due.
#[test]
fn a_deposit_that_is_to_come_is_due_first() {
    let agreed = "agree 300 for 1 bench delivered deposit 150 as deal";
    let mut maker = bench(agreed);
    let [first, then] = ["deposit due ", "then at hand-over"];
    maker.tap(Tap::List).shows(&["$150.00", "To hand over, then 150.00", "deposit due"]).hides(&["$300.00", "due at hand-over"]);
    maker.open("bench").shows(&["nothing paid yet", first, then, "150.00"]).hides(&["due at hand-over", "300.00</b>"]);
    let mut maker = bench(&format!("{agreed}\npay 100 for bench card agreed deal"));
    maker.tap(Tap::List).shows(&["$50.00", "then 150.00", "deposit due"]);
    maker.open("bench").shows(&["deposit in ", "100.00", first, "50.00", then]);
    let mut maker = bench(&format!("{agreed}\npay 150 for bench card agreed deal"));
    maker.tap(Tap::List).shows(&["$150.00", "due at hand-over"]).hides(&["deposit due"]);
    maker.open("bench").shows(&["deposit in ", "due at hand-over "]).hides(&[first, then]);
}

/// Under what was paid, or paid in full: the room has the price all the same.
#[test]
fn an_order_that_is_paid_has_its_price() {
    let deal = "agree 300 for 1 bench delivered deposit 150 as deal\npay 150 for bench card agreed deal\n";
    let mut maker = bench(&format!("{deal}agree 100 for 1 bench delivered replaces deal"));
    maker.open("bench").shows(&["Agreed $100.00", "100 agreed, 50 to hand back"]).hides(&["no price yet"]);
    let mut maker = bench(&format!("{deal}pay 150 for bench card agreed deal"));
    maker.open("bench").shows(&["300 agreed, paid"]).hides(&["no price yet"]);
}

/// Nothing is made yet: it was not delivered, nor fetched.
#[test]
fn an_order_before_the_hand_over_is_to_be_delivered() {
    for (way, to_be) in [("delivered", "to be delivered"), ("fetched", "to be fetched")] {
        let mut maker = bench(&format!("agree 300 for 1 bench {way} due 2026-05-30"));
        let made = format!(", {way}");
        maker.open("bench").shows(&[&format!(", {to_be}")]).hides(&[&made]);
        maker.tap(Tap::Room(Room::Sell)).shows(&[to_be]).hides(&[&made]);
    }
    let mut maker = bench("agree 300 for 1 bench delivered\nplan \"sand\" make 120 min for bench");
    maker.open("bench").shows(&["To be delivered."]).hides(&["Delivered."]);
}

/// Payments that are planned take the place of the deposit.
#[test]
fn planned_payments_take_the_place_of_the_deposit() {
    let (parts, again) =
        ("agree 530 for 1 bench delivered deposit 265 as deal\nparts deal on bench 212 due 2026-05-22 318", "planned anew");
    bench(parts).room("bench", Room::Sell).shows(&["Payment 1"]).hides(&["deposit 265.00", again]);
    let mut maker = bench(&format!("{parts}\nagree 600 for 1 bench delivered replaces deal"));
    maker.room("bench", Room::Sell).shows(&[again]).hides(&["Payment 1"]);
}

/// Three for 300, of which 150 came: one handed over uses 100 of it, and 50 stay for the other two; two use all of it, and 50 are due.
#[test]
fn what_came_ahead_of_others_is_not_handed_back() {
    for (n, price, wanted, never) in [
        ("1", "100", ["Due now", ">0.00", "Stays for the other 2", "50.00"], "To hand back"),
        ("2", "120", ["Due now", ">0.00", "Stays for the other<", "30.00"], "To hand back"),
        ("2", "200", ["Came in ahead", "Due now", "50.00", "Whole price"], "Stays for"),
        ("3", "140", ["Came in ahead", "To hand back", "10.00", "Whole price"], "Stays for"),
    ] {
        let mut maker = Maker::told(&["2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\n\
            agree 300 for 3 more fetched deposit 150 as deal\npay 150 for more bank agreed deal"]);
        let agreed = maker.room("more", Room::Sell).sheet().selling.agreements[0].id;
        maker.tap(Tap::Write(What::Sell(Some(agreed)))).figures(&[price, n]).shows(&wanted).hides(&[never]);
    }
}

/// Three made to order are agreed together, unless another number is said; of pieces made for sale one buyer takes one.
#[test]
fn an_order_opens_with_all_that_is_free() {
    for (made, opens) in [("order", "3 for 300"), ("spec", ">100<")] {
        let story = format!("2026-05-04 08:00 +00:00 workshop USD inch\njob more \"Stools\" 3 {made}\ntag 100 more\n");
        let mut maker = Maker::told(&[&story]);
        maker.open("more").agrees(&[]).shows(&[opens]);
        maker.agrees(&[AgreeTap::Pieces(2)]).shows(&["2 for 200"]);
    }
    // One of them is promised already.
    let mut maker = Maker::told(&[
        "2026-05-04 08:00 +00:00 workshop USD inch\njob more \"Stools\" 3 order\ntag 100 more\nagree 90 for 1 more fetched\n",
    ]);
    maker.open("more").agrees(&[]).shows(&["2 for 200"]);
}
