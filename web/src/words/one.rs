//! One of anything is said as one, and several as several.

use super::en::{changed, count, pile, plan};

#[track_caller]
fn check(one: String, said: &str, several: String, all: &str) {
    assert_eq!((one.as_str(), several.as_str()), (said, all));
}

#[test]
fn one_is_said_as_one() {
    check(count::tile_said(true, "5"), "piece. Count 5.", count::tile_said(false, "5"), "pieces. Count 5.");
    check(
        plan::no_fewer(("1", true), false, None),
        "No plan needs fewer than 1 piece.",
        plan::no_fewer(("24", false), true, None),
        "No plan needs fewer than 24 strips.",
    );
    check(
        plan::used_for_strips(["1", "1", "3"], false),
        "Used the one piece, for 3 strips.",
        plan::used_for_strips(["9", "71", "12"], false),
        "Used 9 of 71 pieces, for 12 strips.",
    );
    check(
        plan::narrow(None, ["3 mm", "20 mm"]),
        "A row would be 3 mm wide, your least strip is 20 mm.",
        plan::narrow(Some("99"), ["3 mm", "20 mm"]),
        "99 rows would each be 3 mm wide, your least strip is 20 mm.",
    );
    check(
        pile::lies_unused("1", true, "31"),
        "1 like it lies unused for 31 weeks",
        pile::lies_unused("22", false, "31"),
        "22 like it lie unused for 31 weeks",
    );
    check(changed::cut_stay("1", true), "the one that is cut stays in the job", changed::cut_stay("4", false), "the 4 cut stay in the job");
}
