//! Figures of the bench that was made to order, on the pages that show them (domain.md 12 B).

use super::*;

#[test]
fn the_bench_as_its_buyer_sees_it() {
    let mut maker = Maker::before_delivery();
    let job = maker.job;
    maker.tap(Tap::Show(job)).shows(&["1040 × 340 mm, 455 mm high", "15.1 kg"]);
}

/// On 22 May the delivery is still to come: 460 is agreed and leaves 13.16 an hour, 400 would leave 10.94. The rate's mark is 103.93 and
/// 27 h 04 at 24.25, 760.30, up to a whole unit.
#[test]
fn a_lower_offer_for_the_bench_says_what_it_would_leave() {
    let mut maker = Maker::before_delivery();
    maker.offer("400").bargain(BargainTap::Paid(Paid::Bank)).shows(&[">761<"]).bargain(BargainTap::PayAndHours).shows(&["10.94"]);
}

/// (600 h x 17 + 1,440) / 480 h.
#[test]
fn the_rate_behind_the_bench() {
    let mut maker = Maker::before_delivery();
    maker.say(Msg::Go(Place::Workshop));
    maker.shows(&["€24.25 an hour"]);
}
