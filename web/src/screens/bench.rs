//! Bench: the running slab among the boards, and what lies over it.

mod big;
mod cautions;
mod day;
pub mod foot;
mod mending;
mod pads;
mod question;
mod rack;
pub mod refused;
mod row;
mod running;
mod slab;
mod start;
mod timeline;
pub mod waits;
mod week;

use super::{Screen, Seen};
use crate::app::bench::{Over, Tap, sheet};
use crate::app::{App, Msg};
use fivebar_core::sheet::bench::BenchSheet;
use fivebar_core::sheet::bench::next::as_its_job_says;

/// The screen as it stands.
///
/// What was kept in no copy is said where nothing runs and nothing lies over the bench: with work in hand there is no room for it.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let shown = shown(app, seen);
    if app.bench.over == Over::Nothing && app.running().is_none() { shown } else { shown.quiet() }
}

fn shown(app: &App, seen: Seen<'_>) -> Screen {
    match &app.bench.over {
        Over::Nothing => running::screen(app, &by_its_job(app), seen),
        Over::Starting(starting) => start::screen(starting, app, seen),
        Over::Batch(typed) => pads::batch(sheet(app).running.map(|slab| slab.run).as_ref(), typed, app, seen),
        Over::Helper(typed) => pads::helper(typed, app, seen),
        Over::More(typed) => pads::more(typed, app, seen),
        Over::InAll(typed) => match sheet(app).running {
            Some(slab) => pads::in_all(&slab.run, typed, seen),
            None => running::screen(app, &by_its_job(app), seen),
        },
        Over::StoppedAt(run, typed) => pads::stopped(*run, typed, app, seen),
        Over::Day(view) if view.week => week::screen(app, view, seen),
        Over::Day(view) => mending::pad(view, app, seen).unwrap_or_else(|| day::screen(app, view, seen)),
        Over::Waits(waiting) => match (&waiting.typing, &waiting.usual) {
            (Some((asked, typed, unit)), _) => waits::span((asked, typed, *unit), app, seen),
            (None, Some(op)) => waits::usual(op, app, seen),
            (None, None) => waits::list(waiting, app, seen),
        },
        Over::Big => big::screen(app, &by_its_job(app), seen),
    }
}

/// The bench as it is shown: what comes next is what the job's own page says.
fn by_its_job(app: &App) -> BenchSheet {
    as_its_job_says(&app.shelf().shop(app.now.at), sheet(app))
}

fn say(tap: Tap) -> Msg {
    Msg::Bench(tap)
}
