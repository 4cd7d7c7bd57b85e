//! A start that was earlier than its tap: what was tapped of the next one, for how long that holds, and what is said of it.

use super::Bench;
use crate::app::App;
use crate::words::en::{ago as said, bench as words};
use fivebar_core::ledger::decide::{Now, start_from};
use fivebar_core::quantity::{Id, Moment, Span};

/// So long it holds what was tapped of the next start (ours).
const AGO_HOLDS: Span = Span::minutes(2);

impl Bench {
    /// What was tapped of the next start holds no more.
    fn is_stale(&self, now: Moment) -> bool {
        self.ago_tapped.is_some_and(|tapped| !(Span::ZERO..AGO_HOLDS).contains(&tapped.until(now)))
    }

    /// How long ago the next start was, where the maker tapped that and it still holds.
    pub fn ago_at(&self, now: Moment) -> Option<Span> {
        self.ago_tapped.map(|_| self.ago).filter(|_| !self.is_stale(now))
    }

    /// What was tapped of the next start is over by then, or holds still.
    pub fn look_again(&mut self, now: Moment) {
        if self.is_stale(now) {
            self.disarm();
        }
    }

    /// The next start is now.
    pub fn disarm(&mut self) {
        (self.ago, self.ago_tapped) = (Span::ZERO, None);
    }
}

/// The next start was so long ago; the same again takes it back.
pub(super) fn arm(app: &mut App, ago: Span, now: Now) {
    if app.bench.ago == ago {
        app.bench.disarm();
    } else {
        (app.bench.ago, app.bench.ago_tapped) = (ago, Some(now.wall.at));
    }
}

/// What is said of the next start while it is not now: when it began, and why not as long ago as was tapped.
pub fn next_began(app: &App) -> Option<String> {
    let now = app.now.at;
    let ago = app.bench.ago_at(now)?;
    let bench = app.shelf().bench();
    let at = start_from(&bench, None, now, ago);
    let why = match bench.running(None) {
        _ if at <= now.minus(ago) => words::ago(ago.as_minutes()),
        Some(_) => said::WITH_WHAT_RUNS.to_owned(),
        None => said::WHEN_LAST_STOPPED.to_owned(),
    };
    Some(said::next_began(&app.speech.clock(app.local().wall(at)), &why))
}

/// That a run began later than was asked, and why: the run before it ended, or began, then.
pub(super) fn late(app: &App, ago: Span, now: Now) -> Option<(Id, String)> {
    let bench = app.shelf().bench();
    let run = bench.running(None).filter(|run| now.wall.at.minus(ago) < run.started.at)?;
    let before = bench.runs().rev().filter(|other| other.id != run.id && other.work.person.is_none());
    let before = before.max_by_key(|other| (other.end(now.wall.at), other.started.at))?;
    let stopped = before.started.at < run.started.at;
    Some((run.id, said::began_late(&app.speech.clock(run.began(app.local())), &before.work.op, stopped)))
}

/// That a run began as long ago as the maker had tapped.
pub(super) fn began_then(app: &App, now: Now) -> Option<(Id, String)> {
    app.bench.ago_at(now.wall.at)?;
    let bench = app.shelf().bench();
    let run = bench.running(None)?;
    Some((run.id, said::it_began(&app.speech.clock(run.began(app.local())))))
}
