//! Bench: the running slab among the boards, and what lies over it.

mod big;
mod day;
mod mend;
mod running;
mod start;

use super::{Screen, Seen};
use crate::app::bench::{Over, Tap, sheet};
use crate::app::{App, Msg};

/// The screen as it stands.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    match &app.bench.over {
        Over::Nothing => running::screen(app, &sheet(app), seen),
        Over::Starting(starting) => start::screen(starting, app, seen),
        Over::Batch(typed) => mend::count("bench/batch", crate::words::en::bench::OF_HOW_MANY, typed, seen),
        Over::More(typed) => mend::count("bench/more", crate::words::en::bench::HOW_MANY_DONE, typed, seen),
        Over::StoppedAt(_, typed) => mend::clock("bench/stopped", crate::words::en::bench::STOPPED_WHEN, typed, seen),
        Over::Mending(mending) => mend::clock("bench/mend", mend::title(mending), &mending.typed, seen),
        Over::Day(day, open) => day::screen(app, (*day, *open), seen),
        Over::Big => big::screen(app, &sheet(app), seen),
    }
}

fn say(tap: Tap) -> Msg {
    Msg::Bench(tap)
}
