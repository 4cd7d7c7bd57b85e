//! Words of a start that was earlier than its tap.

use fivebar_core::quantity::begin_small;

pub const WITH_WHAT_RUNS: &str = "no earlier than what runs";
pub const WHEN_LAST_STOPPED: &str = "when the last one stopped";

/// "The next one you tap began at 08:30, 30 min ago."
pub fn next_began(clock: &str, why: &str) -> String {
    format!("The next one you tap began at {clock}, {why}.")
}

/// "It began at 08:30."
pub fn it_began(clock: &str) -> String {
    format!("It began at {clock}.")
}

/// "Sand began at 08:30, when trim stopped": not as long ago as was asked.
pub fn began_late(clock: &str, before: &str, stopped: bool) -> String {
    let then = if stopped { "stopped" } else { "began" };
    format!("It began at {clock}, when {} {then}.", begin_small(before))
}
