//! Lines of Price, each told by a table: the head of the list, how many are left, marks and three figures in notes, a gallery's tax.

use super::*;

use fivebar_core::quantity::Span;

/// What the page says, and what it does not, of five stools told so, after some taps.
#[track_caller]
fn check(lines: &str, taps: impl FnOnce(&mut Maker), (shows, hides): (&[&str], &[&str])) {
    let story = format!("2026-03-02 09:00 -05:00 workshop USD inch\n{}", lines.replace("STOOLS", "job stools \"Stools\" 5 spec\n"));
    let mut maker = Maker::told(&story, "stools");
    taps(&mut maker);
    maker.shows(shows).hides(hides);
}

/// What a buyer pays in notes.
fn in_notes(maker: &mut Maker) {
    maker.app.here.paid = Some(Paid::Notes);
}

#[test]
fn the_head_of_the_list_says_how_prices_are_meant() {
    let nothing = |_: &mut Maker| {};
    check("till tax 0.055 inside\nSTOOLStag 60 stools", nothing, (&["by card, tax inside"], &["inside, with delivery"]));
    check("till tax 0.055 top\nSTOOLStag 60 stools", nothing, (&["by card, tax on top"], &[]));
    check("STOOLStag 60 stools", nothing, (&["by card, no tax set"], &[]));
    check(
        "till tax 0.055 inside\nSTOOLSjob-tax stools none\ntag 60 stools",
        nothing,
        (&["by card, no tax"], &["no tax set", "tax inside"]),
    );
    let plan = "plan \"bring\" deliver 60 min for stools\n";
    check(&format!("till tax 0.055 inside\nSTOOLS{plan}tag 60 stools"), nothing, (&["by card, tax inside, with delivery"], &[]));
    check("till tax 0.055 inside\nSTOOLStag 60 stools", in_notes, (&["in notes, tax inside"], &["by card"]));
}

#[test]
fn how_many_are_left_says_what_is_agreed() {
    let nothing = |_: &mut Maker| {};
    check("STOOLStag 60 stools", nothing, (&["5 left of 5, tag 60"], &["agreed"]));
    check("STOOLStag 60 stools\nsell 2 stools for 120 notes", nothing, (&["3 left of 5, tag 60"], &["agreed"]));
    check("STOOLStag 60 stools\nagree 60 for 1 stools fetched", nothing, (&["4 left of 5, 1 agreed, tag 60"], &[]));
}

/// 50.50 are spent on five: 10.10 for each; in notes to a coin of 0.25, up, 10.25.
#[test]
fn marks_are_up_to_the_coin_in_notes() {
    let lines = "till cash 0.25\nSTOOLSspend 50.50 glue on stools\ntag 15 stools";
    check(lines, |_| {}, (&["costs covered", "10.10"], &["10.25"]));
    check(lines, in_notes, (&["10.25"], &["10.10"]));
}

/// 5 h at 20 and 85.30 spent are 37.06 for each of five. An ask or an offer of 37.54 pays that: beside 38 it would seem to fall short.
#[test]
fn a_mark_is_exact_beside_a_sum_that_pays_it() {
    let lines = |tag: &str| {
        let work = "start \"shape\" make on stools\n14:00 stop\nall-planned stools\n";
        format!("rate pay 20 hours 100 logged 100\nSTOOLSspend 85.30 glue on stools\n{work}tag {tag} stools")
    };
    let say = |sum: &'static str| {
        move |maker: &mut Maker| {
            maker.offer(sum);
        }
    };
    let open = |maker: &mut Maker| {
        let job = maker.job;
        maker.tap(Tap::Offer(job));
    };
    check(&lines("37.54"), open, (&["Ask 37.54", "your rate", "37.06"], &[">38<"]));
    check(&lines("50"), open, (&["your rate", ">38<"], &["37.06"]));
    check(&lines("50"), say("37.54"), (&["37.06"], &[">38<"]));
    check(&lines("50"), say("37"), (&[">38<"], &["37.06"]));
    check(&lines("37.06"), open, (&["37.06"], &[">38<"]));
}

/// 5 h at 20 and 50 spent are 30 for each of five: in notes 30, by card at 5 % 31.58, so 35 in fives. What is asked without a tag pays your rate
/// however it is paid; beside figures in notes that is said, since 30 would do in notes.
#[test]
fn what_is_asked_by_your_rate_says_by_which_way_it_is() {
    let work =
        "rate pay 20 hours 100 logged 100\nSTOOLSspend 50 glue on stools\nstart \"shape\" make on stools\n14:00 stop\nall-planned stools\n";
    let till = |fee: &str| format!("till point 5 fee {fee}\n{work}");
    check(&till("0.05"), |_| {}, (&[">by your rate<", "$35", "costs covered"], &["your rate, by"]));
    check(&till("0.05"), in_notes, (&[">your rate, by card<", "$35", "costs covered"], &[">by your rate<"]));
    check(
        &till("0.05"),
        |maker| {
            in_notes(maker);
            maker.tap(Tap::Paper);
        },
        (&[">your rate, by card<"], &[">by your rate<"]),
    );
    check(&till("0"), in_notes, (&[">by your rate<", "$30"], &["your rate, by"]));
    check(&till("0.01 notes-fixed 2"), |_| {}, (&[">your rate, in notes<", "$35"], &[">by your rate<"]));
    check(&format!("{}tag 60 stools", till("0.05")), in_notes, (&[">ask<"], &["your rate, by"]));
}

/// 8 % are inside: of 300.10 22.23, in notes too; to a coin of 0.25 300 are handed over, and that is so much less an hour.
#[test]
fn three_figures_are_of_what_is_handed_over() {
    let figures = |maker: &mut Maker| {
        maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours)));
        for figure in ["10", "50", "300.10"] {
            maker.press(figure).tap(Tap::Quick(QuickTap::Done));
        }
    };
    let lines = "till cash 0.25 inside tax 0.08\nSTOOLStag 60 stools";
    check(lines, figures, (&["22.79", "22.23 of tax"], &["22.78"]));
    let by_notes = |maker: &mut Maker| {
        in_notes(maker);
        figures(maker);
    };
    check(lines, by_notes, (&["22.78", "22.23 of tax"], &["22.79"]));
}

/// What came in of a deposit stands beside what was agreed of it, until it is in.
#[test]
fn a_deposit_that_is_not_in_is_said_with_what_came_of_it() {
    let agreed = "STOOLSagree 110 for 1 stools fetched deposit 40 as deal\n";
    check(agreed, |_| {}, (&["Deposit in", "0.00 of 40.00"], &[]));
    check(&format!("{agreed}pay 15 for stools bank agreed deal"), |_| {}, (&["15.00 of 40.00"], &[]));
    check(&format!("{agreed}pay 40 for stools bank agreed deal"), |_| {}, (&["Deposit in", "40.00"], &["of 40.00"]));
}

/// Ten hours, 50 spent: 300 leaves 25 an hour. While the next sum is typed the result is of what stands there, digit by digit, and of no figure there is
/// none.
#[test]
fn the_result_goes_with_what_is_typed() {
    let typed = |sums: &'static [&'static str]| {
        move |maker: &mut Maker| {
            maker.tap(Tap::Quick(QuickTap::Choose(Field::Hours)));
            for figure in ["10", "50", "300"] {
                maker.press(figure).tap(Tap::Quick(QuickTap::Done));
            }
            maker.tap(Tap::Quick(QuickTap::Choose(Field::Offer)));
            for sum in sums {
                maker.press(sum);
            }
        }
    };
    let lines = "STOOLStag 60 stools";
    check(lines, typed(&[]), (&["25.00"], &[]));
    check(lines, typed(&["15"]), (&["−3.50"], &["25.00"]));
    check(lines, typed(&["15", "0"]), (&["10.00"], &["25.00", "−3.50"]));
    check(lines, typed(&["1.5.0"]), (&[], &["25.00", "10.00"]));
}

/// 145 with 7.56 of 5.5 % inside, of which the gallery keeps 40 % before tax. Of 60, and no more to come: 60 / (1 - 0.4 / 1.055) = 96.64 and 5.04.
#[test]
fn what_a_gallery_hands_over_says_the_tax_in_it() {
    let page = |sum: &'static str, all: bool| {
        move |maker: &mut Maker| {
            let (job, lot) = (maker.job, sheet(&maker.app).unwrap().at_galleries[0].there.lot);
            maker.tap(Tap::Gallery(GalleryTap::Back(job, lot)));
            if !sum.is_empty() {
                maker.tap(Tap::Gallery(GalleryTap::Pad(gallery::Field::Sum))).press(sum).tap(Tap::Gallery(GalleryTap::PadDone));
            }
            maker.tap(Tap::Gallery(GalleryTap::ThatIsAll(all)));
        }
    };
    let lines = |who: &str| format!("till tax 0.055 inside\nSTOOLSconsign 2 stools tag 145 share 0.4 {who}");
    check(&lines("maker-pays"), page("", false), (&["Gallery paid 90.02", ">7.56<"], &[]));
    check(&lines(""), page("", false), (&["Gallery paid 82.46"], &[">7.56<"]));
    check(&lines("maker-pays"), page("60", false), (&["30.02 still due", ">7.56<"], &[">5.04<"]));
    check(&lines("maker-pays"), page("60", true), (&["30.02 less than its terms say", ">5.04<"], &[">7.56<"]));
}

/// What was done more than twelve hours ago is not offered to be taken back, nor is what a sale left said as if it had just been.
#[test]
fn an_old_act_of_price_is_not_offered_to_be_taken_back() {
    let mut maker = Maker::at_market();
    let (job, sum) = (maker.job, maker.money("130"));
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Say(sum)).bargain(BargainTap::Sold).shows(&["Take back: sold at 130"]);
    for (minutes, is_offered) in [(12 * 60, true), (12 * 60 + 1, false)] {
        maker.app.now.at = maker.now.wall.at.plus(Span::minutes(minutes));
        let html = maker.html();
        assert_eq!([html.contains("Take back: sold"), html.contains("sold at 130")], [is_offered; 2], "{minutes}: {html}");
    }
}

/// A sum that was named stays with its number of pieces: another number asks anew, and back the sum stands again.
#[test]
fn what_was_named_stays_with_its_number_of_pieces() {
    let mut maker = Maker::at_market();
    let named = |maker: &Maker| match &maker.app.price.over {
        Over::Offer(bargain) => bargain.offer.map(|sum| sum.to_string()),
        _ => None,
    };
    let [one, two] = ["130", "250"].map(|sum| maker.money(sum));
    let job = maker.job;
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Say(one)).bargain(BargainTap::Pieces(2));
    assert_eq!(named(&maker), None);
    maker.bargain(BargainTap::Say(two)).bargain(BargainTap::Pieces(1));
    assert_eq!(named(&maker).as_deref(), Some("130.00 USD"));
    maker.bargain(BargainTap::Pieces(2));
    assert_eq!(named(&maker).as_deref(), Some("250.00 USD"));
    // The next buyer begins with nothing.
    maker.tap(Tap::Close).tap(Tap::Offer(job)).bargain(BargainTap::Pieces(2));
    assert_eq!(named(&maker), None);
}

/// A job of several is named so on every page of Price that has it in its head, as on its own.
#[test]
fn a_job_of_several_is_named_as_on_its_own_page() {
    let mut maker = Maker::at_market();
    let job = maker.job;
    for taps in [
        vec![Tap::More(job)],
        vec![Tap::Gallery(GalleryTap::Leave(job))],
        vec![Tap::Offer(job), Tap::Bargain(BargainTap::Pad)],
        vec![Tap::Offer(job), Tap::Bargain(BargainTap::PayAndHours)],
        vec![Tap::Agree(AgreeTap::Open(job, None))],
    ] {
        for tap in taps {
            maker.tap(tap);
        }
        maker.shows(&["Plant stands, ash with cherry pegs, 5<"]);
        maker.app.price.to_list();
    }
}

/// What was taken back is named by what it was, its sum and its piece; so is what is put back.
#[test]
fn what_was_taken_back_is_named() {
    let mut maker = Maker::at_market();
    let (job, sum) = (maker.job, maker.money("130"));
    let name = "Plant stands, ash with cherry pegs";
    maker.tap(Tap::Offer(job)).bargain(BargainTap::Say(sum)).bargain(BargainTap::Sold).shows(&["Take back: sold at 130", name]);
    maker.say(Msg::Common(Common::TakeBack));
    maker.shows(&["Do it again", &format!("taken back: sold at 130, {name}")]);
    maker.say(Msg::Common(Common::PutBack));
    maker.shows(&["Take back: sold at 130"]).hides(&["taken back"]);
}

/// Settle of one is worked out, however many are asked about: it is not as if nothing were known.
#[test]
fn settle_is_worked_out_for_several_too() {
    let mut maker = Maker::told(STANDS.split("13:10 sell").next().unwrap(), "stands");
    let job = maker.job;
    for n in [1, 2] {
        maker.tap(Tap::Offer(job)).bargain(BargainTap::Pieces(n)).bargain(BargainTap::PayAndHours);
        maker.shows(&["Settle, worked out"]).hides(&["not yet"]).tap(Tap::Close);
    }
}

/// Of three for 73.50 two cost 49 to the cent: that is no reason to show the cents of the others. Where one costs less than 20 all have theirs.
#[test]
fn costs_covered_have_one_form() {
    let story = |sum: &str| {
        format!("2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 3 spec\nspend {sum} wood on stools\ntag 60 stools\n")
    };
    Maker::told(&story("73.50"), "stools").shows(&[">25<", ">49<", ">74<"]).hides(&["24.50"]);
    Maker::told(&story("55.50"), "stools").shows(&[">18.50<", ">37.00<", ">55.50<"]);
}

/// What is made to order and not agreed yet is not "5 left of 5".
#[test]
fn an_order_that_is_not_agreed_yet_says_so() {
    let told = |made_for: &str| {
        format!("2026-03-02 09:00 -05:00 workshop USD inch\njob stools \"Stools\" 5 {made_for}\nspend 90 wood on stools\ntag 80 stools\n")
    };
    Maker::told(&told("order"), "stools").shows(&["5 to order, not agreed yet, tag 80"]).hides(&["5 left of 5"]);
    Maker::told(&told("spec"), "stools").shows(&["5 left of 5, tag 80"]).hides(&["to order"]);
}
