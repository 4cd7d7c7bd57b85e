//! What stands on Look back: every sum that the total holds, and what is still to come off it.

use super::*;

const BEGUN: &str = "2026-05-04 08:00 +00:00 workshop USD inch\njob more \"Stools\" 5 spec\nspend 50 glue on more\n";
const WORKED: &str = "start \"build\" make on more\n13:00 stop\n";

/// Five that cost 50; one sold for 400, 100 of it ahead by card, at 3 % and 0.30: 3.30 is kept, so 346.70 is left so far. Of the 300 that are due 9.30
/// will be: 337.40 at last. What is so far leaves that out, what is at last bears it, and it stands between them.
#[test]
fn fees_still_to_come_stand_between_what_is_so_far_and_what_is_at_last() {
    let sold = "tag 150 more\ntill fee 0.03 fixed 0.30\nagree 400 for 1 more fetched as deal\npay 100 for more card agreed deal\n\
        sell 1 more for 400 agreed deal as one\n";
    let (to_come, given) = (["Fees still to come", "\u{2212}9.30"], "not-for-sale 4 more given\n");
    let told = |hours: &str, then: &str| Maker::told(&[&format!("{BEGUN}{hours}{sold}{then}")]);
    let nothing = ["4 unsold at nothing, left in all", "337.40"];
    let mut maker = told(WORKED, "end more\n");
    maker.open("more").shows(&to_come).shows(&nothing).tap(Tap::Room(Room::Back));
    maker.shows(&["346.70 in all over 5 h", to_come[0], to_come[1], "Left per hour, 4 unsold", "67.48", nothing[0], nothing[1]]);
    let mut maker = told(WORKED, &format!("{given}end more\n"));
    maker.open("more").shows(&to_come).shows(&["67.48"]).tap(Tap::Room(Room::Back)).hides(&["at nothing"]);
    maker.shows(&["67.48", "less the fee of what is still owed", "346.70 in all over 5 h", to_come[0], to_come[1]]);
    let mut maker = told(WORKED, "");
    maker.open("more").shows(&to_come).tap(Tap::Room(Room::Back)).hides(&["at nothing"]);
    maker.shows(&["346.70 in all over 5 h", to_come[0], to_come[1]]);
    // No hour was logged.
    let mut maker = told("", "end more\n");
    maker.open("more").shows(&to_come).shows(&nothing).tap(Tap::Room(Room::Back)).hides(&["346.70"]);
    maker.shows(&[to_come[0], to_come[1], nothing[0], nothing[1]]);
    let mut maker = told("", &format!("{given}end more\n"));
    maker.open("more").shows(&[to_come[0], to_come[1], "Left in all", "337.40"]).hides(&["346.70"]);
    maker.tap(Tap::Room(Room::Back)).shows(&["337.40 in all.", to_come[0], to_come[1]]).hides(&["346.70"]);
    // All is paid: nothing is to come.
    let mut maker = told(WORKED, "pay 300 for more card sale one\nend more\n");
    maker.room("more", Room::Back).shows(&["337.40 in all over 5 h", nothing[0], nothing[1]]).hides(&[to_come[0]]);
}

/// 100 of one sold and 50 kept of an order whose buyer never came, less the 50 that was spent: 100 in all, and the 50 stands there.
#[test]
fn what_was_kept_of_an_order_that_came_to_nothing_stands_there() {
    let kept = "agree 200 for 1 more fetched as deal\npay 50 for more bank agreed deal\ncancel deal on more kept 50 no-show\n";
    let mut maker = Maker::told(&[&format!("{BEGUN}{WORKED}{kept}sell 1 more for 100 notes\n")]);
    maker.room("more", Room::Back).shows(&["100.00 in all over 5 h", "Kept of what came to nothing", "50.00"]);
    let mut maker = Maker::told(&[&format!("{BEGUN}{WORKED}sell 1 more for 100 notes\n")]);
    maker.room("more", Room::Back).hides(&["Kept of what came to nothing"]);
}

#[test]
fn a_piece_that_broke_is_said() {
    let story = "2026-05-04 08:00 +00:00 workshop USD inch\njob more \"Bowl\" 1 spec\nspend 40 glue on more\nstart \"turn\" make on more\n09:00 stop\n\
        not-for-sale 1 more broken\nend more\n";
    Maker::told(&[story]).room("more", Room::Back).shows(&["40.00 in all over 1 h", "Not sold: 1 broken."]).hides(&["Not in that price"]);
    // One is sold with no tag, so there is no price to hold it against.
    let story = format!("{BEGUN}{WORKED}sell 1 more for 100 notes\nnot-for-sale 1 more broken\nnot-for-sale 2 more given\n");
    Maker::told(&[&story]).room("more", Room::Back).shows(&["Not sold: 1 broken, 2 given away."]);
}

/// Two of five are sold: the costs and hours are of all five.
#[test]
fn what_is_left_so_far_says_that_it_bears_all_costs_and_hours() {
    let mut maker = Maker::told(&[&format!("{BEGUN}{WORKED}sell 2 more for 200 notes\n")]);
    let said = "left per hour so far, 2 of 5 sold, with costs and hours of all 5: 150.00 in all over 5 h";
    maker.room("more", Room::Back).shows(&["$30.00", said]);
    let mut maker = Maker::told(&[&format!("{BEGUN}{WORKED}sell 5 more for 500 notes\n")]);
    maker.room("more", Room::Back).shows(&["left per hour, 450.00 in all over 5 h"]).hides(&["so far, "]);
}

/// Before all is handed over there is nothing to look back on; after that the key says what an hour left, ended or not.
#[test]
fn the_key_to_look_back_says_what_is_there() {
    let told = |then: &str| Maker::told(&[&format!("{BEGUN}{WORKED}{then}")]);
    told("sell 4 more for 400 notes\n").open("more").shows(&["Look back", "after hand-over"]);
    for end in ["", "end more\n"] {
        told(&format!("sell 5 more for 500 notes\n{end}")).open("more").shows(&["Look back", "90.00 an hour"]).hides(&["after hand-over"]);
    }
    let no_hours = format!("{BEGUN}sell 5 more for 500 notes\n");
    Maker::told(&[&no_hours]).open("more").shows(&["Look back", "how it went"]).hides(&["after hand-over"]);
}
