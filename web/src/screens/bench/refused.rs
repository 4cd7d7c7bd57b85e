//! Why a time was not taken, with the times it met: which run lies there, and a key to mend that one.

use super::super::{Seen, said};
use super::say;
use crate::app::bench::Tap;
use crate::app::bench::day::DayTap;
use crate::app::bench::mending::name;
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::parts::notice::Trouble;
use crate::view::El;
use crate::words::en::bench as words;
use fivebar_core::bench::Run;
use fivebar_core::quantity::{Moment, begin_small};
use fivebar_core::refusal::Refusal;

/// A refusal in words; one of a time with that time.
pub fn worded(refusal: &Refusal, app: &App, seen: Seen<'_>) -> Trouble {
    let said = said::refused(refusal, seen);
    let at = |moment: &Moment| seen.when(seen.local.wall(*moment));
    let timed = match refusal {
        Refusal::EndNotAfterStart { start, end } => Some((words::ends_first(&at(start), &at(end)), words::LATER)),
        Refusal::NotYet { met, now } => Some((words::not_yet(&at(met), &at(now)), "")),
        Refusal::NotInRun { met, start, end } | Refusal::BreakNotInRun { met, start, end } => {
            Some((words::not_in_run(&at(met), &words::clocks(&at(start), Some(&at(end)))), ""))
        }
        Refusal::RunsOverlap { run } => app.shelf().bench().run(*run).map(|run| (overlapped(run, app, seen), words::MEND_IT_FIRST)),
        _ => None,
    };
    match timed {
        Some((what, "")) => Trouble { what, ..said },
        Some((what, to_do)) => Trouble { what, to_do: to_do.to_owned(), ..said },
        None => said,
    }
}

fn overlapped(run: &Run, app: &App, seen: Seen<'_>) -> String {
    let end = (!run.is_running()).then(|| seen.when(run.wall(run.end(seen.now.at), seen.local)));
    let clocks = words::clocks(&seen.when(run.began(seen.local)), end.as_deref());
    words::in_another(&begin_small(&run.work.op), name(app, run.work.on).as_deref(), &clocks)
}

/// The way to the run that lies there.
pub fn mend(refusal: &Refusal) -> Option<El<Msg>> {
    let Refusal::RunsOverlap { run } = refusal else { return None };
    Some(key("key solid h56", words::MEND_THAT, "", say(Tap::Day(DayTap::See(*run)))))
}
