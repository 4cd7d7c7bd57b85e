//! A helper at the bench: joins, leaves, and what the pay costs the job.

use super::*;

#[test]
fn a_helper_joins_and_leaves() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    holds(&told.at(5, [tap(Tap::HelperJoins)]), &["What is the helper paid?", "Not paid", "not paid. Pay is a cost"]);
    holds(&told.at(5, [tap(Tap::PadDone)]), &["2 at work", "Helper leaves"]);
    lacks(&told.at(15, [tap(Tap::HelperLeaves)]), &["2 at work"]);
    assert_eq!(told.app.shelf().bench().all_running().map(|run| run.labour(told.app.now.at).as_minutes()).sum::<i64>(), 25);
}

/// Half an hour at 20 an hour is 10 on the job; what is no sum stays on the pad with why.
#[test]
fn a_helpers_pay_is_a_cost_of_the_job() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    let typed = |text: &str| text.chars().map(|digit| tap(Tap::Press(Press::Digit(digit.to_digit(10).unwrap() as u8)))).collect::<Vec<_>>();
    told.at(10, [tap(Tap::HelperJoins)]);
    holds(&told.at(10, typed("99999999999999").into_iter().chain([tap(Tap::PadDone)])), &["entry wrong", "class=\"why\""]);
    told.at(10, [tap(Tap::Close), tap(Tap::HelperJoins)]);
    holds(&told.at(10, typed("20")), &["USD", "Joins"]);
    holds(&told.at(10, [tap(Tap::PadDone)]), &["2 at work"]);
    told.at(40, [tap(Tap::HelperLeaves)]);
    let app = &told.app;
    let On::Job(job) = app.shelf().bench().all_running().next().unwrap().work.on else { unreachable!() };
    let account = fivebar_core::sheet::account::account(&app.shelf().shop(app.now.at), job).unwrap();
    assert_eq!(account.cost("helper").map(|sum| sum.to_string()), Some("10.00 USD".into()));
}
