//! A clock time as it was typed, and the moment that is meant by it: the end of a run, its beginning, the ends of time that was
//! missed. Where clocks have twelve hours and no half was said, the half that makes sense; a run longer than a working day is asked
//! about before it is written.

use super::super::App;
use fivebar_core::bench::Run;
use fivebar_core::bench::repair::DAY_MOST;
use fivebar_core::quantity::reading::{Misread, clock};
use fivebar_core::quantity::{Clock, Day, Listed, Moment, Span, Wall};

/// The moment that was typed, the length it gives, and another that may have been meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meant {
    pub at: Wall,
    pub span: Option<Span>,
    /// The same figures once more: where clocks went back they came twice; else twelve hours off, where those give a working day and what
    /// was typed gives none.
    pub other: Option<(Wall, Option<Span>)>,
    /// Both are of one clock time, before and after clocks went back.
    pub twice: bool,
    /// What was typed never came, for clocks went forward: it is taken as what the clock showed instead.
    pub skipped: Option<Clock>,
}

impl Meant {
    /// It came twice, or is longer than a working day, and is asked about.
    pub fn is_asked(&self) -> bool {
        self.twice || self.span.is_some_and(|span| DAY_MOST < span)
    }
}

/// What is typed, and its other half where that was left open.
fn clocks(app: &App, text: &str) -> Result<Vec<Clock>, Misread> {
    let typed = clock(text)?;
    let said = text.trim().ends_with(['m', 'M', 'p', 'P', 'a', 'A', '.']);
    let (hour, _) = typed.as_hour_minute();
    let open = app.speech.has_halves() && !said && (1..=12).contains(&hour);
    Ok(std::iter::once(typed).chain(open.then(|| half_on(typed))).listed())
}

/// What was typed, where the clock shows none of it at the moment that was meant.
fn skipped(typed: &[Clock], meant: Wall) -> Option<Clock> {
    typed.first().copied().filter(|_| !typed.contains(&meant.clock()))
}

/// The same figures on a clock of twelve hours, in the other half of the day.
fn half_on(clock: Clock) -> Clock {
    let minutes = clock.as_minutes().saturating_add(12 * 60).checked_rem(24 * 60).unwrap_or_default();
    Clock::minutes(minutes).unwrap_or(clock)
}

/// When a run ended, by what was typed.
///
/// # Errors
/// [`Misread`].
pub fn stop(app: &App, run: &Run, text: &str) -> Result<Meant, Misread> {
    let at = |clock: &Clock| ended(app, run, *clock);
    Ok(end((run.started.at, app.now.at), |at| run.wall(at, app.local()), clocks(app, text)?, at))
}

/// When time that was missed ended: on its day, or on the next where that has come.
///
/// # Errors
/// [`Misread`].
pub fn until(app: &App, (day, start): (Day, Wall), text: &str) -> Result<Meant, Misread> {
    let from = start.clock();
    let at = |clock: &Clock| {
        let next = app.moment_of(day.next(), *clock).at;
        if *clock < from && next <= app.now.at { next } else { app.moment_of(day, *clock).at }
    };
    Ok(end((start.at, app.now.at), |at| app.local().wall(at), clocks(app, text)?, at))
}

/// The first of the moments after the start that has come; another where that came twice, or is longer than a working day.
fn end((start, now): (Moment, Moment), wall: impl Fn(Moment) -> Wall, clocks: Vec<Clock>, at: impl Fn(&Clock) -> Moment) -> Meant {
    let fits = |moment: &Moment| start < *moment && *moment <= now;
    // Of a time that came twice, whichever has come.
    let meant = |clock: &Clock| Some(at(clock)).map(|at| again(at, &wall).filter(|again| !fits(&at) && fits(again)).unwrap_or(at));
    let meant = clocks.iter().filter_map(&meant).filter(fits).min().or(clocks.first().map(&at)).unwrap_or(start);
    let (span, again) = (start.until(meant), again(meant, &wall).filter(fits));
    let other = clocks.first().map(|typed| at(&half_on(*typed))).filter(|other| DAY_MOST < span && fits(other));
    let other = again.or(other.filter(|other| start.until(*other) <= DAY_MOST));
    let other = other.map(|other| (wall(other), Some(start.until(other))));
    let (at, span) = (wall(meant), Some(span).filter(|span| Span::ZERO < *span));
    Meant { at, span, other, twice: again.is_some(), skipped: skipped(&clocks, at) }
}

/// Whether a moment is the second of two at which the clock here shows the same; none of one that comes once.
pub fn is_second(app: &App, at: Moment) -> Option<bool> {
    again(at, |at| app.local().wall(at)).map(|other| other < at)
}

/// The other moment at which the clock showed what it shows at this one: clocks go back by an hour, or by half an hour.
fn again(at: Moment, wall: impl Fn(Moment) -> Wall) -> Option<Moment> {
    let shown = |at: Moment| (wall(at).day(), wall(at).clock());
    let near = [-60, 60, -30, 30].map(|minutes| at.plus(Span::minutes(minutes)));
    near.into_iter().find(|other| shown(*other) == shown(at))
}

/// When a run began, by what was typed: of two halves the one nearer to the start that stands, by the clock here where that is the one it
/// is shown by. Before its end it may have come twice.
///
/// # Errors
/// [`Misread`].
pub fn start(app: &App, run: &Run, text: &str) -> Result<Meant, Misread> {
    let (stands, end) = (run.started.at, run.end(app.now.at));
    let off = |at: &Moment| stands.until(*at).max(at.until(stands));
    let clocks = clocks(app, text)?;
    let place = |at| run.wall(at, app.local());
    let at = |clock: &Clock| begun(app, run, *clock);
    let meant = clocks.iter().map(at).min_by_key(off).unwrap_or(stands);
    let again = again(meant, place).filter(|again| again.max(&meant) < &end);
    // The first of both stands first.
    let (meant, again) = (again.map_or(meant, |again| meant.min(again)), again.map(|again| meant.max(again)));
    let span = meant.until(end);
    let other = clocks.first().map(|typed| at(&half_on(*typed))).filter(|other| DAY_MOST < span && *other < end);
    let other = again.or(other.filter(|other| other.until(end) <= DAY_MOST)).map(|other| (place(other), Some(other.until(end))));
    let (at, span) = (place(meant), Some(span).filter(|span| Span::ZERO < *span));
    Ok(Meant { at, span, other, twice: again.is_some(), skipped: skipped(&clocks, at) })
}

/// When time that was missed began: of two halves the one nearer to noon. It may have come twice.
///
/// # Errors
/// [`Misread`].
pub fn from(app: &App, day: Day, text: &str) -> Result<Meant, Misread> {
    let off = |clock: &Clock| clock.as_minutes().abs_diff(Clock::NOON.as_minutes());
    let clocks = clocks(app, text)?;
    let clock = clocks.iter().copied().min_by_key(off).unwrap_or_default();
    let at = app.moment_of(day, clock);
    let again = again(at.at, |at| app.local().wall(at)).filter(|again| *again <= app.now.at && at.at <= app.now.at);
    let (first, second) = (again.map_or(at.at, |again| at.at.min(again)), again.map(|again| at.at.max(again)));
    let place = |at| app.local().wall(at);
    Ok(Meant {
        at: if second.is_some() { place(first) } else { at },
        span: None,
        other: second.map(|at| (place(at), None)),
        twice: second.is_some(),
        skipped: skipped(&clocks, at),
    })
}

/// When a helper came or went: within the run, of two halves the one that lies in it.
///
/// # Errors
/// [`Misread`].
pub fn along(app: &App, run: &Run, text: &str) -> Result<Meant, Misread> {
    let at = |clock: &Clock| ended(app, run, *clock);
    let clocks = clocks(app, text)?;
    let within = |moment: &Moment| run.started.at <= *moment && *moment <= run.end(app.now.at);
    let at = clocks.iter().map(at).find(within).or(clocks.first().map(at)).unwrap_or(run.started.at);
    let at = run.wall(at, app.local());
    Ok(Meant { at, span: None, other: None, twice: false, skipped: skipped(&clocks, at) })
}

/// Which end of a run a clock time is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    Start,
    Stop,
    /// Of who worked along in it.
    Along,
}

/// The days of which a clock time may be, by the clock that shows the run: of its start the one before it to the one after, of its stop those
/// from its start on, of a helper those of the run; none that has not come, nor for a start one after the end. One alone is no choice.
pub fn days(app: &App, run: &Run, end: End) -> Vec<Day> {
    let began = run.began(app.local()).day();
    let shown = |at: Moment| run.wall(at, app.local()).day();
    let (first, last) = match end {
        End::Start => (began.before(), shown(run.end(app.now.at))),
        End::Stop => (began, shown(app.now.at)),
        End::Along => (began, shown(run.end(app.now.at))),
    };
    let all = (0..3).map(|days| first.plus(days)).filter(|day| *day <= last).listed();
    if all.len() < 2 { vec![] } else { all }
}

/// A clock time meant as the start of a run: of the day that was said; else of the day it began, of the eve where that day's is past its end
/// and further off, or of the day after where that is before its end and nearer.
fn begun(app: &App, run: &Run, clock: Clock) -> Moment {
    let of = |day: Day| shown(app, run, (day, clock));
    if let Some(said) = app.bench.on_day {
        return of(said);
    }
    let (at, day, end) = (run.started.at, run.started.day(), run.end(app.now.at));
    let (eve, same, next) = (of(day.before()), of(day), of(day.next()));
    match () {
        () if end <= same && eve.until(at) < at.until(same) => eve,
        () if next < end && at.until(next) < same.until(at) => next,
        () => same,
    }
}

/// A clock time meant as the end of a run: of the day that was said; else of the day it began, and one before its start of the day after, once
/// that has come.
fn ended(app: &App, run: &Run, clock: Clock) -> Moment {
    let meant = |day: Day| shown(app, run, (day, clock));
    if let Some(said) = app.bench.on_day {
        return meant(said);
    }
    let same = meant(run.started.day());
    let next = meant(run.started.day().next());
    if same < run.started.at && next <= app.now.at { next } else { same }
}

/// The moment at which the clock that a run is shown by showed this: the one here, where it was tapped here; else that of its place.
fn shown(app: &App, run: &Run, (day, clock): (Day, Clock)) -> Moment {
    if run.is_here(app.local()) { app.moment_of(day, clock).at } else { run.moment((day, clock), app.local()) }
}
