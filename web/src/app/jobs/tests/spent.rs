//! A line of the spending, opened: what came back of it, its receipt, and where its kind belongs.

use super::*;
use crate::app::photos::PhotoTap;
use fivebar_core::ledger::kind::money::Home;

const TOLD: &str = "2026-05-22 08:14 -05:00 workshop USD inch\njob more \"Stools\" 3 order\nspend 7.60 bolts on more as bolts\n";

fn told(lines: &str) -> Maker {
    let mut maker = Maker::told(&[&format!("{TOLD}{lines}")]);
    maker.room("more", Room::Hours);
    maker
}

#[test]
fn some_of_a_spending_comes_back() {
    let mut maker = told("");
    let line = maker.sheet().account.costs.lines[0].entry;
    maker.hides(&["Some of it came back"]).tap(Tap::Line(line)).shows(&["Bolts", "7.60", "Some of it came back", "Strike"]);
    maker.tap(Tap::Write(What::CameBack(line))).figures(&["9"]).tap(Tap::Save);
    maker.shows(&["Not taken: $9.00 came back of $7.60 that was spent."]).tap(Tap::Say(0, "two sent back".into()));
    maker.figures(&["2"]).tap(Tap::Save).shows(&["Bolts", "two sent back", "2.00", "Bolts", "In all", "5.60"]);
    // Struck, what came back of it goes with it.
    maker.tap(Tap::Strike(line)).shows(&["Nothing is written down yet."]);
    maker.say(Msg::Common(Common::PutBack));
    maker.shows(&["In all", "5.60"]);
}

/// Four pads at 2.50: one of them back is 2.50, without a sum; five are more than were bought, and so are four after that. Two for 4.00 are
/// two and 4.00: one is left, whatever was paid for them.
#[test]
fn so_many_of_what_was_bought_at_a_price_each_come_back() {
    let mut maker = told("");
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Each)).pick(Pick::Spending(Key::read("pads").unwrap()));
    maker.figures(&["4", "2.50"]).tap(Tap::Save).shows(&["10.00"]);
    let line = maker.sheet().account.costs.lines.last().unwrap().entry;
    maker
        .tap(Tap::Write(What::CameBack(line)))
        .shows(&["Sum", "or so many"])
        .tap(Tap::At(1))
        .tap(Tap::Press(Press::Digit(5)))
        .tap(Tap::Save);
    maker.shows(&["Not taken: 5 came back of 4 that were used."]).tap(Tap::At(1)).tap(Tap::Press(Press::Digit(1))).tap(Tap::Save);
    maker.shows(&["1 back", "2.50", "In all", "15.10"]);
    maker.tap(Tap::Write(What::CameBack(line))).figures(&["1", "4"]).tap(Tap::Save).shows(&["Not taken: 4 came back of 3 that were used."]);
    maker.figures(&["4", "2"]).tap(Tap::Save).shows(&["2 back", "4.00", "In all", "11.10"]);
    maker.tap(Tap::Write(What::CameBack(line))).figures(&["", "2"]).tap(Tap::Save).shows(&["Not taken: 2 came back of 1 that were used."]);
    maker.figures(&["3.51", "1"]).tap(Tap::Save).shows(&["Not taken: $3.51 came back of $3.50 that was spent."]);
}

/// A million at nine thousand each are more than any sum: they are more than were bought, which is said, and what was typed stays.
#[test]
fn so_many_back_that_no_sum_holds_them_are_refused() {
    let mut maker = told("");
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Each)).pick(Pick::Spending(Key::read("pads").unwrap()));
    maker.figures(&["4", "9000"]).tap(Tap::Save);
    let line = maker.sheet().account.costs.lines.last().unwrap().entry;
    maker.tap(Tap::Write(What::CameBack(line))).figures(&["", "1000000"]).tap(Tap::Save);
    maker.shows(&["Not taken: 1000000 came back of 4 that were used.", "1000000"]);
    maker.tap(Tap::Close).tap(Tap::Write(What::CameBack(line))).tap(Tap::Save).shows(&["role=\"alert\""]);
}

/// A drive for several pieces is asked what it was for; where some are brought to their buyers it begins with that. One piece has all of it.
#[test]
fn a_drive_says_whether_it_was_to_deliver() {
    let sold = "till mileage 0.725 mile\ntag 90 more\nsell 1 more for 90 notes delivered\n";
    let driven = |maker: &Maker| maker.sheet().account.costs.lines.last().map(|line| line.delivery);
    for (lines, picked, delivery, says) in
        [(sold, None, Some(true), true), (sold, Some(false), Some(false), false), ("till mileage 0.725 mile\n", None, Some(false), false)]
    {
        let mut maker = told(lines);
        maker.tap(Tap::Write(What::Spend)).hides(&["To deliver"]).pick(Pick::Way(Way::Drive)).shows(&["To deliver", "For something else"]);
        if let Some(brings) = picked {
            maker.pick(Pick::Brings(brings));
        }
        maker.figures(&["18"]).tap(Tap::Save).shows(&["Driving", "18 mi"]);
        assert_eq!((driven(&maker), page(&maker.app).html().contains("to deliver, 18")), (Some(delivery), says), "{lines} {picked:?}");
    }
    let mut maker = Maker::told(&["2026-05-22 08:14 -05:00 workshop USD inch\ntill mileage 0.725 mile\njob more \"Stool\" 1 order\n"]);
    maker.room("more", Room::Hours).tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Drive)).hides(&["To deliver"]);
    maker.figures(&["18"]).tap(Tap::Save);
    assert_eq!(driven(&maker), Some(None));
}

#[test]
fn a_receipt_is_seen_at_its_spending_and_never_as_a_photo_of_the_piece() {
    let mut maker = told("");
    let (line, job) = (maker.sheet().account.costs.lines[0].entry, maker.jobs["more"]);
    maker.tap(Tap::Line(line)).shows(&["Photo of the receipt"]).say(Msg::Photo(PhotoTap::Receipt(line)));
    let photo = Id::new(maker.now.wall.at, [42; 10]);
    maker.say(Msg::Photo(PhotoTap::Kept { photo, bytes: 90_000 }));
    maker.shows(&["Bolts", "receipt", "Being read.", "Remove"]);
    let known = maker.app.own.workshop();
    assert_eq!(known.photos.of_spending(line).collect::<Vec<_>>(), [photo]);
    assert_eq!(known.photos.of_job(job).count(), 0, "on no page of the piece, and no buyer's face");
    let shop = maker.app.own.shop(maker.app.now.at);
    assert_eq!(fivebar_core::sheet::buyer::buyer(&shop, job, (None, fivebar_core::ledger::kind::sale::Paid::Card)).unwrap().photo, None);
    assert_eq!(crate::app::photos::wanted(&maker.app), [photo], "in the copy as the others");
    maker.say(Msg::Photo(PhotoTap::Remove(photo)));
    maker.hides(&["Being read."]);
}

#[test]
fn where_a_kind_belongs_is_asked_once() {
    let mut maker = told("");
    let glue = Key::read("glue").unwrap();
    let (ask, before) = ("Glue: on each job as used, or in your rate?", maker.sheet().money.costs);
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Spending(Key::read("bolts").unwrap())).hides(&["as used, or in your rate?"]);
    maker.pick(Pick::Spending(glue.clone())).shows(&[ask, "On each job", "In the rate"]);
    // It stands in place of the pad; passed over, Done puts it, and what was typed is saved with the answer.
    maker.hides(&[">7<"]).tap(Tap::At(0)).hides(&[ask]).shows(&[">7<"]).figures(&["3"]).tap(Tap::Save);
    maker.shows(&["Say where it belongs. Done again leaves that open.", ask]).hides(&[">7<"]);
    assert_eq!(maker.sheet().money.costs, before);
    maker.tap(Tap::Home(glue.clone(), Home::Job)).hides(&[ask]).shows(&[">7<"]).tap(Tap::Save);
    maker.hides(&["counts twice"]).shows(&["3.00"]);
    assert!(maker.app.jobs.draft.is_none());
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Spending(glue.clone())).hides(&[ask]).tap(Tap::Close);
    // Left open by a second Done, it is written all the same.
    let power = Key::read("power").unwrap();
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Spending(power)).figures(&["2"]).tap(Tap::Save).tap(Tap::Save).shows(&["Power", "2.00"]);
    // In the rate after all: what this job has of it counts twice.
    let twice = "Glue belongs in your rate: on a job it counts twice.";
    maker.tap(Tap::Home(glue.clone(), Home::Rate)).shows(&[twice, "On each job"]);
    maker.tap(Tap::Home(glue, Home::Job)).hides(&[twice]);
}

/// While it is asked where a kind belongs a figure of a keyboard is the sum's, and leads to no other place.
#[test]
fn a_figure_typed_while_it_is_asked_where_a_kind_belongs_is_the_sums() {
    let mut maker = told("");
    let ask = "Glue: on each job as used, or in your rate?";
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Spending(Key::read("glue").unwrap())).shows(&[ask]).hides(&[">7<"]);
    for figure in ["3", "5"] {
        let says = page(&maker.app).keys_at("app").unwrap()(figure);
        maker.say(says.unwrap());
    }
    assert_eq!(maker.app.place, Place::Jobs);
    maker.hides(&[ask]).shows(&[">35<", ">7<"]).tap(Tap::Save).shows(&["Say where it belongs. Done again leaves that open.", ask]);
    maker.tap(Tap::Save).shows(&["35.00"]);
}

#[test]
fn what_the_job_and_the_workshop_both_have_is_told() {
    told("spend 2 power on more\nspend 40 power\n").shows(&["Power is on this job and in this year’s workshop costs"]);
    told("spend 2 power on more\nspend 40 rent\n").hides(&["it may count twice"]);
}

/// Where the hours of a job come from is said on its page, in its hours and in Look back, by the same figures; with the share of its hauls
/// they add up to all of it.
#[test]
fn each_page_says_where_the_hours_come_from() {
    let check = |job: &str, said: &str, total: &str| {
        let mut maker = Maker::told(&[STANDS, BENCH]);
        maker.open(job).shows(&[total, said]);
        for room in [Room::Hours, Room::Back] {
            maker.room(job, room).shows(&[said]);
        }
        let hours = maker.sheet().account.hours.clone();
        let (own, hauls) = hours.logged.own.in_minutes(hours.haul.unwrap_or_default());
        assert_eq!(own.total().plus(hauls).as_minutes(), hours.total.unwrap().as_minutes(), "{job}");
    };
    check("stands", "measured 23 h 12, corrected 47 min, recalled 1 min, share of the hauls 1 h 17", "25 h 17");
    check("bench", "measured 26 h 03, share of the hauls 1 h 54", "27 h 57");
}

/// A drive whose minutes were put right, the bin by the clock, sorting written down afterwards: the share of a haul says so as an operation does.
#[test]
fn the_share_of_a_haul_says_what_its_minutes_rest_on() {
    let story = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\n09:20 at the bin\npile strips ash-white 1 x 2 x 20 in\ncount 10 strips\n\
        10:00 homeward\n10:20 home\ntrip wheel 60 min\njob more \"Box\" 1 spec\ntake 10 strips for more\n\
        11:40 recall \"sorting\" fetch on yard stage sort 11:00 to 11:30\n12:00 start \"saw\" make on more\n13:00 stop\n";
    let mut maker = Maker::told(&[story]);
    let hauls = "share of the hauls 40 min, share of the hauls corrected 1 h, share of the hauls recalled 30 min";
    let said = format!("measured 1 h, {hauls}");
    maker.open("more").shows(&["3 h 10", &said]);
    maker.room("more", Room::Hours).shows(&["Share of the hauls", "measured 40 min, corrected 1 h, recalled 30 min", &said]);
    maker.room("more", Room::Back).shows(&[&said]);
}

/// While words are asked for the sum is a key that brings the pad, and so does what keeps the form from being taken.
#[test]
fn a_sum_of_ones_own_kind_has_the_pad_by_a_tap_and_by_done() {
    for tap in [Tap::At(0), Tap::Save] {
        let mut maker = told("");
        maker.tap(Tap::Write(What::Spend)).pick(Pick::Spending(Key::read("other").unwrap())).tap(Tap::Say(0, "Hinges".into()));
        maker.shows(&["Sum, USD"]).hides(&[">7<"]);
        maker.tap(tap.clone()).hides(&["id=\"spent-on\""]).shows(&[">7<"]);
        maker.figures(&["4"]).tap(Tap::Save).shows(&["Hinges", "4.00"]);
    }
}

/// Of another kind its words are asked for first; a tap on a figure brings the pad.
#[test]
fn a_kind_of_ones_own_has_its_words_and_then_the_pad() {
    let mut maker = told("");
    maker.tap(Tap::Write(What::Spend)).pick(Pick::Way(Way::Each)).pick(Pick::Spending(Key::read("other").unwrap()));
    maker.shows(&["id=\"spent-on\""]).tap(Tap::Say(0, "Hinges".into())).tap(Tap::At(1)).hides(&["id=\"spent-on\""]);
    maker.figures(&["4", "2.50"]).tap(Tap::Save).shows(&["Hinges", "10.00"]);
}
