//! A further coat is of the coat that is planned next, where it has a name of its own; else it is one more of the same.

use super::super::App;
use super::waits::{coated, usual};
use super::{sheet, start, work_of};
use fivebar_core::bench::wait::What;
use fivebar_core::bench::{Batch, On, Work};
use fivebar_core::ledger::decide::Now;
use fivebar_core::ledger::fold;
use fivebar_core::sheet::bench::Choice;

/// What a board begins: its operation, or where that is a coat that all pieces have, the next one that is planned.
pub fn work_for(app: &App, choice: &Choice) -> Work {
    let work = work_of(choice);
    further(app, &work, &choice.batch).unwrap_or(work)
}

/// One more piece of a coat that all of them have is of the next one that is planned: it runs since the last piece, or since the start.
pub fn move_on(app: &mut App, now: Now) {
    let Some(slab) = sheet(app).running else { return };
    let Some(next) = further(app, &slab.run.work, &slab.batch) else { return };
    let last = slab.run.notches.iter().map(|notch| notch.at).max().unwrap_or(slab.run.started.at);
    app.bench.ago = last.until(now.wall.at);
    start(app, next, now);
}

/// The coat planned behind one that all pieces have, unless all have that too. Rework is what it is.
fn further(app: &App, work: &Work, batch: &Batch) -> Option<Work> {
    let On::Job(job) = work.on else { return None };
    let bench = app.shelf().bench();
    let is_coat = |op: &str| usual(app, op).is_some_and(|usual| What::of(&usual.what) == What::Coat);
    // The next piece of it would be one of a second coat.
    let on_all = || batch.is_done() || coated(app, (work.on, &work.op), batch.n.saturating_add(1)).is_some();
    if work.rework || !is_coat(&work.op) || !on_all() {
        return None;
    }
    let planned = fold::planned_operations(&app.shelf().book, job);
    let behind = planned.into_iter().skip_while(|(op, ..)| *op != work.op).skip(1);
    let mut open = behind.filter(|(op, ..)| is_coat(op) && !bench.batch(work.on, op, app.now.at).is_done());
    open.next().map(|(op, kind, stage)| Work { op, kind, stage, ..work.clone() })
}
