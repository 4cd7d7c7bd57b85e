//! What may be a forgotten stop: its hours and the pay in them stand apart on every page of the job until that is answered.

use super::*;

#[test]
fn hours_that_nobody_answered_for_are_marked() {
    let told = "
2026-03-02 09:00 +00:00 workshop EUR metric
job stands \"Stands\" 1 order
10:00 start \"sand\" make on stands
11:00 stop
17:00 start \"oil\" make on stands as oiling
2026-03-03 08:00 stop
";
    let mark = "15 h of it is to settle on Bench: a stop may have been forgotten.";
    let beside = "15 h more is to settle on Bench and in none of these figures: a stop may have been forgotten.";
    Maker::told(&[told]).room("stands", Room::Hours).shows(&["make 1 h<", "measured 1 h, to settle 15 h", beside]).hides(&[mark, "Oil"]);
    Maker::told(&[told]).room("stands", Room::Back).shows(&[beside]).hides(&[mark]);
    Maker::told(&[&format!("{told}08:01 end stands\n")]).room("stands", Room::Back).shows(&[mark]);
    let rate = "09:00 rate pay 20 hours 400 logged 300 costs 0\nspend 2.00 glue on stands\nplan \"saw\" make 60 min for stands\n";
    Maker::told(&[&format!("{told}{rate}")]).room("stands", Room::Quote).shows(&["2 h 24 to 3 h 04 at your rate", beside]);
    // In the list of jobs too, wherever the job stands there.
    let listed = |before: &str, night: &str, shown: &[&str]| {
        let told = told.replace("1 order", "1 spec").replace("17:00 start", &format!("{before}17:00 start"));
        let told = told.replace("2026-03-03 08:00 stop", &format!("{night}2026-03-03 08:00 stop"));
        Maker::told(&[&told]).tap(Tap::List).shows(shown);
    };
    listed("", "", &["In hand", "1 h, and 15 h to settle", "make 1 h\""]);
    listed("tag 90 stands\n", "", &["For sale", "none sold yet, and 15 h to settle", "1 left"]);
    let sold = "spend 2.00 glue on stands\nsell 1 stands for 82 bank fetched\n";
    listed(sold, "", &["1 h, and 15 h to settle"]);
    listed(sold, "20:00 end stands\n", &["Ended", "ended Mon 2 March, and 15 h to settle", "5.00 left per hour"]);
    Maker::told(&[&format!("{told}08:01 stopped at 2026-03-02 18:00 run oiling")]).room("stands", Room::Hours).hides(&[mark]);
}

/// A helper at 18.50 an hour, from five in the evening to eight the next morning: 277.50 are no cost before the stop is settled, on no page.
#[test]
fn the_pay_of_a_night_that_nobody_answered_for_is_no_cost() {
    let told = "
2026-03-02 09:00 +00:00 workshop EUR metric
person ada helper
job stands \"Stands\" 1 order
10:00 start \"sand\" make on stands
helper joins ada 18.50
10:45 stop
17:00 start \"oil\" make on stands as oiling
helper joins ada 18.50
2026-03-03 08:00 about stands note \"oak\"
";
    let apart = ["13.88, and 277.50 to settle"; 1];
    for night in ["", "stop\n", "stop\n08:01 end stands\n"] {
        let mut maker = Maker::told(&[&format!("{told}{night}")]);
        maker
            .room("stands", Room::Hours)
            .shows(&apart)
            .shows(&["45 min, and 15 h to settle", "In all</span><span class=\"w8\">13.88, and 277.50"]);
        maker.tap(Tap::Page).shows(&apart);
    }
    let alone = told.replace("helper joins ada 18.50\n10:45 stop", "10:45 stop");
    Maker::told(&[&alone])
        .room("stands", Room::Hours)
        .shows(&["<span class=\"w8\">277.50 to settle"])
        .hides(&["Nothing is logged yet"])
        .tap(Tap::Page)
        .shows(&["277.50 to settle"])
        .hides(&["to settle spent"]);
    let settled = format!("{told}stop\n08:01 confirm run oiling");
    Maker::told(&[&settled]).room("stands", Room::Hours).shows(&["291.38"]).hides(&["to settle"]);
}

/// Sorting ran over night: every page of the job whose figures leave its share out says so.
#[test]
fn a_haul_that_is_to_settle_is_said_on_every_page_of_its_job() {
    let told = "2026-03-02 09:00 +00:00 workshop EUR metric\nrate pay 20 hours 400 logged 300 costs 0\nleave for yard\nat the bin\n\
        pile strips oak-white 20 x 50 x 500 mm\ncount 20 strips\nhomeward\nhome\n10:00 start \"sort\" fetch on yard stage sort\ngood 20 strips\n\
        10:30 stop\njob stands \"Stands\" 1 order\ntake 10 strips for stands\nspend 2.00 glue on stands\nplan \"saw\" make 60 min for stands\n\
        17:00 start \"sort\" fetch on yard stage sort as night\n2026-03-03 08:00 stop\n";
    for room in [Room::Hours, Room::Quote, Room::Dates, Room::Back] {
        Maker::told(&[told]).room("stands", room).shows(&["15 h of work on its haul is to settle"]);
        Maker::told(&[&format!("{told}08:01 confirm run night\n")]).room("stands", room).hides(&["work on its haul"]);
    }
}
