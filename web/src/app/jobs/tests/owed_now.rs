//! What is owed now and what at the hand-over, and the figures of a job's page in their order.

use super::*;
use crate::app::price::parts::PartsTap;

/// Three for 599.40 with 200 ahead, two handed over and not paid: 399.60 less 200 is owed now, 199.80 at the hand-over of the last.
const TWO_GONE: &str = "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\nagree 599.40 for 3 more fetched deposit 200 as deal\n\
    pay 200 for more bank agreed deal\nsell 2 more for 399.60 agreed deal\n";

#[test]
fn what_is_owed_now_and_at_the_hand_over_add_up_to_what_is_due() {
    let mut maker = Maker::told(&[TWO_GONE]);
    maker.open("more").shows(&["in so far", "200.00", "owed now", "199.60", "then at hand-over", "199.80"]);
    maker.hides(&[">due at hand-over", "Owed of pieces"]);
    let due = maker.sheet().sale.owed;
    assert_eq!([due.due, due.before].map(|sum| format!("{:.2}", sum.amount())), ["399.40", "199.60"]);
    // All but the last is paid: one figure, at the hand-over.
    let mut maker = Maker::told(&[&format!("{TWO_GONE}pay 199.60 for more bank agreed deal\n")]);
    maker.open("more").shows(&["due at hand-over", "199.80"]).hides(&["owed now", "then at hand-over"]);
    // Paid by their days, it is not at the hand-over.
    let mut maker = Maker::told(&[&format!("{TWO_GONE}parts deal on more 399.60 due 2026-06-22 199.80 due 2026-07-22\n")]);
    maker.open("more").shows(&["owed now", "199.60", "then still due", "199.80"]).hides(&["then at hand-over"]);
}

/// The order is changed to one for 220: its payments are of that alone, and what is owed of the two before stands beside them.
#[test]
fn several_payments_of_a_changed_order_say_what_is_owed_beside_them() {
    for (change, beside) in [("agree 220 for 1 more fetched replaces deal as new\n", true), ("", false)] {
        let mut maker = Maker::told(&[&format!("{TWO_GONE}{change}")]);
        maker.open("more");
        let (job, agreed) = (maker.sheet().job, maker.sheet().selling.open().next().unwrap().id);
        maker.say(Msg::Price(crate::app::price::Tap::Parts(PartsTap::OfJob(job, agreed))));
        let said = "Besides, 199.60 is owed now for what was handed over.";
        if beside {
            maker.shows(&["220.00 of 220.00"]).shows(&[said])
        } else {
            maker.shows(&["599.40 of 599.40"]).hides(&["Besides"])
        };
    }
}

/// What an hour leaves after workshop costs is of the figure above it, not of what it would leave if the rest goes.
#[test]
fn after_workshop_costs_stands_below_the_figure_it_is_of() {
    let story = "2026-05-04 08:00 +00:00 workshop USD inch\nrate pay 16 lowest 12 hours 420 logged 350 costs 1050\njob more \"Stools\" 3 spec\n\
        spend 10 glue on more\nstart \"build\" make on more\n10:00 stop\nall-planned more\ntag 100 more\nsell 1 more for 100 notes\n";
    let mut maker = Maker::told(&[story]);
    maker.open("more").shows(&["Left per hour, 2 unsold", "45.00", "After workshop costs", "42.00", "if the other 2 go at 100", "145.00"]);
}

/// A job in another currency than the workshop's has its sign in the list.
#[test]
fn what_an_hour_left_in_another_currency_has_its_sign() {
    let job = |name: &str, cur: &str| {
        format!(
            "2026-05-04 08:00 +00:00 workshop {cur} inch\njob {name} \"{name}\" 1 spec\nspend 10 glue on {name}\nstart \"turn\" make on {name}\n\
             09:00 stop\nsell 1 {name} for 50 notes\nend {name}\n"
        )
    };
    let both = format!("{}{}", job("more", "EUR"), job("bench", "USD").replace("05-04", "05-05"));
    let mut maker = Maker::told(&[&both]);
    maker.tap(Tap::List).shows(&[">bench<", ">40.00 left per hour<", ">more<", ">\u{20ac}40.00 left per hour<"]);
}

/// Three for 422.18; of one that is handed over 20 went off its price, and it is kept: 402.18 are due, and the 20 stand beside the sum that was agreed.
#[test]
fn what_went_off_the_price_stands_beside_it() {
    let mut maker = Maker::told(&["2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\n\
        agree 422.18 for 3 more fetched as deal\nsell 1 more for 140.73 bank agreed deal as one\nlet-keep 20 of sale one on more\n"]);
    maker.open("more").shows(&["in so far", "120.73", "281.45", "Off the price", "20.00"]);
}
