//! Waits over the bench: in big buttons the off time, what can come out, and what to carry on with.

use super::super::waits::WaitTap;
use super::waits::{clamped, ids, wait};
use super::*;

/// Drawing 7: 11:48, 28 min, three of five clamped.
#[test]
fn big_buttons_show_the_off_time_to_be_chalked() {
    let mut told = clamped(3);
    let shown = told.at(168, [tap(Tap::Big)]);
    holds(&shown, &["Glue tops", ">28 min<", "Top 3 off at", ">13:18</span>", "top 1", ">12:59</b>", "top 2", ">13:08</b>", "Clamped"]);
    holds(
        &shown,
        &[
            "top 4, off 90 min from now",
            "Take back</span><span class=\"t17 w5\">top 3",
            "Stop</span><span class=\"t17 w5\">the clock, not the waits",
        ],
    );
    assert_eq!(shown.matches("<button").count(), 4);
    holds(&told.at(177, [wait(WaitTap::Clamp)]), &["Top 4 off at", ">13:27</span>"]);
    assert_eq!(told.app.said, "Top 4 clamped, off at 13:27");
    holds(&told.at(178, [Msg::Common(Common::TakeBack)]), &["Top 1 off at", "Do it again"]);
    assert_eq!(sheet(&told.app).running.unwrap().batch.n, 3, "the piece goes with its wait");
    holds(&told.at(200, [tap(Tap::Stop)]), &["Top 1 off at", "Carry on"]);
}

/// Never more than four targets: what can come out stands where Take back did, but just after a tap that may have been a slip; where Stop
/// did, while nothing runs; beside both where nothing is counted.
#[test]
fn big_buttons_have_four_targets_when_something_comes_out() {
    let check = |shown: String, has: &[&str], not: &[&str]| {
        assert_eq!(shown.matches("<button").count(), 4, "{shown}");
        holds(&shown, has);
        lacks(&shown, not);
    };
    let mut told = clamped(3);
    told.at(240, [tap(Tap::Big)]);
    check(told.at(240, []), &["Top 1 off", "Stop", "Clamped"], &["Take back"]);
    check(told.at(249, [wait(WaitTap::Clamp)]), &["Take back", "top 4", "Stop"], &["Top 1 off"]);
    check(told.at(250, []), &["2 tops off", "Stop"], &["Take back"]);
    let first = ids(&told)[0];
    check(told.at(250, [wait(WaitTap::Off(vec![first]))]), &["Top 2 off", "Stop"], &["Take back"]);
    let second = ids(&told)[0];
    check(told.at(250, [wait(WaitTap::Off(vec![second]))]), &["Take back", "Stop"], &["Top 3 off<"]);
    // Taken back, it does not turn into the key that takes it off again under the same thumb.
    check(told.at(250, [Msg::Common(Common::TakeBack)]), &["Do it again", "Stop"], &["Top 2 off<"]);
    check(told.at(251, []), &["Top 2 off<", "Stop"], &["Do it again"]);
    told.at(251, [wait(WaitTap::Off(vec![second]))]);
    check(told.at(259, [tap(Tap::Stop)]), &["Carry on", "Take back", "Top 3 off<"], &[]);
    let messages = starting(StartingTap::Found(On::Nothing, "Messages".into(), Kind::Office, Stage::Sell));
    told.at(260, [tap(Tap::LeaveBig), tap(Tap::Other), messages, tap(Tap::Big)]);
    check(told.at(261, []), &["Stop", "Take back", "Top 3 off<"], &[]);
}

/// Five clamped, off 12:59, 13:08, 13:18, 13:27 and 13:37: what comes out first stands there, and what can is taken off by a key.
#[test]
fn big_buttons_show_what_comes_out_first() {
    let mut told = clamped(5);
    let shown = told.at(190, [tap(Tap::Big)]);
    holds(&shown, &["Top 1 off at", ">12:59</span>", "top 2", ">13:08</b>", "top 3", ">13:18</b>", "top 4", ">13:27</b>", "and 1 more"]);
    lacks(&shown, &[">12:59</b>", "13:37", "Top 1 off<", "forgotten"]);
    let shown = told.at(240, []);
    holds(&shown, &["Top 1 can come out, since", ">12:59</span>", "Top 1 off", ">13:08</b>", "Stop"]);
    assert_eq!(shown.matches("<button").count(), 4, "{shown}");
    let first = ids(&told)[0];
    let shown = told.at(241, [wait(WaitTap::Off(vec![first]))]);
    holds(&shown, &["Top 2 off at", ">13:08</span>", "top 4", ">13:27</b>", "Hold to leave"]);
    lacks(&shown, &["12:59"]);
    let shown = told.at(250, [tap(Tap::Stop)]);
    holds(&shown, &["Top 2 can come out, since", ">13:08</span>", "Carry on", "Take back", "Top 2 off"]);
    assert_eq!(shown.matches("<button").count(), 4, "{shown}");
    // What another work left in clamps can come out; the next day it is on the list alone.
    told.start(251, "Sand");
    holds(&told.at(252, [tap(Tap::Big)]), &["Top 2 can come out, since", "Top 2 off"]);
    let next = told.at(252 + 1440, []);
    lacks(&next, &["13:08", "off at"]);
    holds(&next, &["It runs since ", "Was the stop forgotten?"]);
}

/// All five can come out: big buttons say how many, and one key takes them off. What is large stands there once.
#[test]
fn big_buttons_take_all_off_that_can_come_out() {
    let mut told = clamped(5);
    told.at(190, [tap(Tap::Stop), tap(Tap::Big)]);
    let shown = told.at(290, []);
    holds(&shown, &["All 5 tops can come out, since", ">13:37</span>", "All 5 off"]);
    lacks(&shown, &["Top 1 off", "12:59", "</b>"]);
    assert_eq!(shown.matches("13:37").count(), 1);
    let shown = told.at(265, []);
    holds(&shown, &["3 tops can come out, since", ">13:18</span>", "All 3 off", "top 4", ">13:27</b>"]);
    let all = ids(&told);
    lacks(&told.at(291, [wait(WaitTap::Off(all))]), &["can come out", "off<"]);
    assert_eq!(ids(&told), []);
}

/// Of a caller's messages nothing is carried on while work on a job was broken off; and no coat while all its pieces are wet.
#[test]
fn big_buttons_carry_on_with_what_can_be_worked_on() {
    let mut told = clamped(2);
    let messages = || starting(StartingTap::Found(On::Nothing, "Messages".into(), Kind::Office, Stage::Sell));
    told.at(160, [tap(Tap::Other), messages()]);
    let shown = told.at(170, [tap(Tap::Stop), tap(Tap::Big)]);
    holds(&shown, &["Carry on", "stands: Glue tops"]);
    lacks(&shown, &["Messages<"]);
    // All five are oiled, and wet until tomorrow: what is planned behind is not begun on them, and another job is.
    let mut told = Told::stands();
    told.start(0, "Oil");
    told.at(0, [tap(Tap::AskBatch)]);
    told.at(0, presses("5").into_iter().chain([tap(Tap::PadDone)]));
    told.at(5, vec![wait(WaitTap::Clamp); 4]);
    holds(&told.at(6, [tap(Tap::Stop), tap(Tap::Big)]), &["Carry on", "stands: Oil"]);
    let carry = sheet(&told.app).carry_on.unwrap();
    told.at(7, [tap(Tap::Board(carry)), wait(WaitTap::Clamp), tap(Tap::Stop)]);
    let shown = told.at(8, []);
    holds(&shown, &["What are you doing?"]);
    lacks(&shown, &["Carry on", "stands: Oil"]);
    // Dry the next day, it is gone on with.
    holds(&told.at(8 + 1440, []), &["Carry on", "stands: Oil"]);
}
