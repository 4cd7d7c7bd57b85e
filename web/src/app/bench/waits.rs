//! Waits, heard: clamped, taken off, put right, handed to a calendar; how an operation ends; quiet hours; what rings.

use super::super::App;
use super::super::entry::Typed;
use super::super::news::Handed;
use super::super::order::{Feel, Order};
use super::{Over, done, ends, ordered_here, sheet};
use crate::parts::Place;
use crate::parts::pad::Press;
use crate::words::en::{bench as bench_words, waits as words};
use fivebar_core::bench::calendar::{self, Event};
use fivebar_core::bench::wait::{Usual, Warmth, What};
use fivebar_core::bench::{Kind, On, Run};
use fivebar_core::ledger::decide::{Command, Laid, Now, WaitCommand};
use fivebar_core::ledger::kind::wait as kind;
use fivebar_core::quantity::reading::{self, Misread, Sign};
use fivebar_core::quantity::{Clock, Day, Id, Key, Listed, Moment, Span, Wall, begin_small};
use fivebar_core::sheet::bench::Slab;
use fivebar_core::sheet::held::{self, Held};
use fivebar_core::sheet::job::{JobSheet, NextAct};
use fivebar_core::sheet::meanwhile::{Meanwhile, Telling, meanwhile};
use fivebar_core::sheet::waits::{Kept, WaitLine, WaitsSheet};
use std::rc::Rc;

/// The most that can be typed: the book says what is too long.
const TYPED_MOST: Span = Span::minutes(100 * 366 * 24 * 60);

/// What lies over the bench of waits.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Waiting {
    /// The wait that is opened.
    pub open: Option<Id>,
    /// How an operation ends, asked of this one.
    pub usual: Option<String>,
    pub typing: Option<(Asked, Typed, Unit)>,
    /// What became of a calendar file.
    pub handed: Option<Handed>,
}

/// What is typed.
#[derive(Clone, Debug, PartialEq)]
pub enum Asked {
    /// How long a wait is.
    Wait(Id),
    /// How long this operation waits, whatever it waits for.
    Op(String),
    /// How long its glue or finish takes in a shop like today's.
    Stuff(String),
    /// Something new that waits, after the last run.
    New(Box<Run>),
    QuietFrom,
    QuietUntil(Clock),
}

/// What a typed span is measured in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Unit {
    #[default]
    Minutes,
    Hours,
    Days,
}

/// What can be said of waits.
#[derive(Clone, Debug, PartialEq)]
pub enum WaitTap {
    Show,
    /// A piece of what runs is done and waits.
    Clamp,
    Off(Vec<Id>),
    /// Opens a wait, or closes it.
    Open(Id),
    Ask(Asked),
    Unit(Unit),
    /// One wait, or all of the day.
    Calendar(Option<Id>),
    Handed(Handed),
    /// How an operation ends.
    Usual(String),
    What(Option<What>),
    Stuff(Key),
    Warmth(Warmth),
    /// The operation's own span is lifted.
    AsUsual,
    NoQuiet,
    Loud(bool),
}

impl Unit {
    pub const ALL: [Unit; 3] = [Unit::Minutes, Unit::Hours, Unit::Days];

    fn read(self, text: &str, sign: Sign) -> Result<Span, Misread> {
        match self {
            Unit::Minutes => reading::span(text, sign, TYPED_MOST),
            Unit::Hours => reading::span(&format!("{text} h"), sign, TYPED_MOST),
            Unit::Days => reading::span(&format!("{text} h"), sign, TYPED_MOST).map(|span| span.times(24)),
        }
    }
}

impl Waiting {
    /// One step back; none from the list itself.
    pub(super) fn less(self) -> Option<Waiting> {
        match self {
            Waiting { typing: Some(_), .. } => Some(Waiting { typing: None, ..self }),
            Waiting { usual: Some(_), .. } => Some(Waiting { usual: None, ..self }),
            _ => None,
        }
    }

    pub(super) fn press(&mut self, press: Press, sign: Sign) {
        if let Some((_, typed, _)) = &mut self.typing {
            typed.press(press, sign);
        }
    }
}

/// Looks at what waits in the book in hand.
pub fn kept<T>(app: &App, look: impl FnOnce(Kept) -> T) -> T {
    let shelf = app.shelf();
    look(Kept { waits: &shelf.waits(), bench: &shelf.bench(), book: &shelf.book, local: app.local() })
}

/// What waits.
pub fn waiting(app: &App) -> WaitsSheet {
    kept(app, |kept| kept.sheet(app.now))
}

/// What fits until the next off time, while nothing runs.
pub fn fits(app: &App) -> Option<Rc<Meanwhile>> {
    let shelf = app.shelf();
    let telling = Telling { loud: words::noisy, of_part: words::of_part };
    shelf.waits().next_off(app.now.at)?;
    shelf.fits(app.now.at, || meanwhile(&shelf.shop(app.now.at), super::seen(app), telling, true))
}

/// What waits of all pieces of a job, where work on an operation of it needs them.
pub fn held_up(app: &App, (on, op, kind): (On, &str, Kind)) -> Option<Held> {
    let (On::Job(job), shop) = (on, app.shelf().shop(app.now.at)) else { return None };
    held::held_up(&shop, &shop.job(job).ok()?, (op, kind), words::of_part)
}

/// The same of what comes next on a job.
pub fn next_held_up(app: &App, sheet: &JobSheet) -> Option<Held> {
    let NextAct::WorkOn { op: Some(op) } = &sheet.next else { return None };
    let planned = sheet.operations.iter().find(|planned| planned.op == *op)?;
    held_up(app, (On::Job(sheet.job), op, planned.kind))
}

/// What waits of the pieces of a job that are left.
pub fn held_of(app: &App, job: Id) -> Option<Held> {
    let shop = app.shelf().shop(app.now.at);
    held::held(&shop, &shop.job(job).ok()?)
}

/// The coats that are wet under one that runs.
pub fn wet_below(app: &App, run: &Run) -> Option<Held> {
    let (On::Job(job), shop) = (run.work.on, app.shelf().shop(app.now.at)) else { return None };
    let is_coat = usual(app, &run.work.op).is_some_and(|usual| What::of(&usual.what) == What::Coat);
    held::wet_below(&shop, &shop.job(job).ok()?, run.id).filter(|_| is_coat)
}

/// How an operation ends in a wait: as the maker said, else as its name tells.
pub fn usual(app: &App, op: &str) -> Option<Usual> {
    app.shelf().waits().usuals.of(op, words::guess(op))
}

/// The number of a piece, or of several.
pub fn pieces(app: &App, line: &WaitLine) -> String {
    let n = |n| app.speech.count(n);
    let named = words::pieces(&line.op, line.first_piece().map(n).as_deref(), line.piece.map(n).as_deref());
    line.coat.map_or(named.clone(), |coat| words::coat_of(&n(coat), &named))
}

/// So many pieces of an operation are done: from the second coat on, which coat that is, of how many pieces, and how many of it.
pub fn coated(app: &App, of: (On, &str), n: u32) -> Option<(u32, u32, u32)> {
    kept(app, |kept| kept.coat(of, n))
}

/// The same of what runs: a run that has put on nothing yet, where all have the coat before, is at the next, of which none is done.
pub fn coat_of_run(app: &App, slab: &Slab) -> Option<(u32, u32, u32)> {
    let of = (slab.run.work.on, slab.run.work.op.as_str());
    let begins = |next: &(u32, u32, u32)| slab.run.done() == 0 && next.2 == 1;
    let next = coated(app, of, slab.batch.n.saturating_add(1)).filter(begins).filter(|_| !slab.run.work.rework);
    next.map(|(coat, each, _)| (coat, each, 0)).or_else(|| coated(app, of, slab.batch.n))
}

/// What of a run is clamped or coated next, and whether that is a further coat: "top 4", "coat 2 of piece 1".
pub fn next(app: &App, slab: &Slab) -> (String, bool) {
    let next = slab.batch.n.saturating_add(1);
    let coat = coated(app, (slab.run.work.on, &slab.run.work.op), next).filter(|_| !slab.run.work.rework);
    let piece = app.speech.count(coat.map_or(next, |(.., piece)| piece));
    let named = words::pieces(&slab.run.work.op, Some(&piece), Some(&piece));
    coat.map_or((named.clone(), false), |(coat, ..)| (words::coat_of(&app.speech.count(coat), &named), true))
}

/// A piece with its operation where that is not in its name, and with its job where that is not the one in hand: "shelf, oil, piece 1".
pub fn whose(app: &App, line: &WaitLine) -> String {
    let (bench, piece) = (app.shelf().bench(), pieces(app, line));
    let hand = bench.running(None).or_else(|| bench.last_stopped(None)).map(|run| run.work.on);
    let job = line.name.clone().filter(|_| line.wait.job.map(On::Job) != hand);
    let op = (words::thing(&line.op) == words::thing("") && line.piece.is_some()).then(|| begin_small(&line.op));
    job.into_iter().chain(op).chain([piece]).listed().join(", ")
}

/// The work of several that can come out together: the job where that is not the one in hand, the operation where what came of it has no name.
pub fn work_of(app: &App, line: &WaitLine) -> Option<String> {
    let bench = app.shelf().bench();
    let hand = bench.running(None).or_else(|| bench.last_stopped(None)).map(|run| run.work.on);
    let job = line.name.clone().filter(|_| line.wait.job.map(On::Job) != hand);
    let op = (words::thing(&line.op) == words::thing("")).then(|| line.op.clone());
    let work = match job {
        Some(job) => Some(op.map_or(job.clone(), |op| format!("{job}, {}", begin_small(&op)))),
        None => op,
    };
    work.filter(|work| !work.is_empty())
}

/// A clock time; of one that comes twice in the night in which clocks go back, which of both.
pub fn of_two(app: &App, wall: Wall) -> String {
    let clock = bench_words::clock(wall, (&*app.speech, app.local()));
    ends::is_second(app, wall.at).filter(|_| app.local().shows(wall)).map(|second| words::of_two(&clock, second)).unwrap_or(clock)
}

/// A clock time, with its day where that is not the one that is shown.
pub fn clock_on(app: &App, wall: Wall, day: Day) -> String {
    dated(app, of_two(app, wall), (wall, day))
}

/// The same beside a word on whose clock it is.
pub fn plain_on(app: &App, wall: Wall, day: Day) -> String {
    let clock = if app.local().shows(wall) { of_two(app, wall) } else { app.speech.clock(wall) };
    dated(app, clock, (wall, day))
}

fn dated(app: &App, clock: String, (wall, day): (Wall, Day)) -> String {
    if wall.day() == day { clock } else { format!("{} {clock}", app.speech.day(wall)) }
}

/// An off time by the clock, with its day where that is not today.
pub fn clock(app: &App, wall: Wall) -> String {
    clock_on(app, wall, app.now.day())
}

/// How long a wait is, as people say it: minutes up to two hours.
pub fn long(app: &App, span: Span) -> String {
    let minutes = span.as_minutes();
    if minutes <= 120 {
        words::minutes(&app.speech.count(u32::try_from(minutes).unwrap_or_default()))
    } else {
        words::how_long(span, &*app.speech)
    }
}

/// Takes in a tap on waits.
pub fn heard(app: &mut App, tap: WaitTap, now: Now) {
    match tap {
        WaitTap::Show => {
            app.bench.over = Over::Waits(Box::default());
            app.place = Place::Bench;
        }
        WaitTap::Clamp => clamped_or_done(app, 1, now),
        WaitTap::Off(waits) => {
            if app.order(&Command::Wait(WaitCommand::End { waits }), now).is_some() {
                app.orders.push(Order::Feel(Feel::Stop));
            }
        }
        WaitTap::Calendar(only) => to_calendar(app, only),
        WaitTap::Handed(handed) => on(app, |waiting| waiting.handed = Some(handed)),
        WaitTap::Open(id) => on(app, |waiting| waiting.open = (waiting.open != Some(id)).then_some(id)),
        WaitTap::Ask(asked) => on(app, |waiting| waiting.typing = Some((asked, Typed::default(), Unit::default()))),
        WaitTap::Unit(unit) => on(app, |waiting| waiting.typing.iter_mut().for_each(|typing| typing.2 = unit)),
        WaitTap::Usual(op) => app.bench.over = Over::Waits(Box::new(Waiting { usual: Some(op), ..Waiting::default() })),
        WaitTap::Warmth(warmth) => ordered_here(app, &Command::Wait(WaitCommand::SetWarmth(kind::WarmthSet { warmth })), now),
        WaitTap::NoQuiet => ordered_here(app, &Command::Wait(WaitCommand::SetQuiet { hours: None }), now),
        WaitTap::What(_) | WaitTap::Stuff(_) | WaitTap::AsUsual | WaitTap::Loud(_) => said_of_operation(app, tap, now),
    }
}

/// Changes what lies over the bench, and opens it where it did not.
fn on(app: &mut App, change: impl FnOnce(&mut Waiting)) {
    if !matches!(app.bench.over, Over::Waits(_)) {
        app.bench.over = Over::Waits(Box::default());
    }
    if let Over::Waits(waiting) = &mut app.bench.over {
        waiting.handed = None;
        change(waiting);
    }
}

/// Pieces of what runs are done, and wait where their operation ends in a wait.
pub fn clamped_or_done(app: &mut App, n: u32, now: Now) {
    super::coats::move_on(app, now);
    let Some(run) = sheet(app).running.map(|slab| slab.run) else { return };
    let Some(Usual { what, stuff, span, .. }) = usual(app, &run.work.op) else { return done(app, n, now) };
    let laid = Laid { what, stuff, span };
    let what = What::of(&laid.what);
    if app.order(&Command::Wait(WaitCommand::Clamp { run: run.id, n, laid }), now).is_none() {
        return;
    }
    let batch = sheet(app).running.map(|slab| slab.batch).unwrap_or_default();
    app.orders.extend([Order::Feel(Feel::Count(batch.n)), Order::ReadyToRing]);
    let line = kept(app, |kept| kept.last_of(run.id, now.wall.at));
    app.said = line.map(|line| words::clamped_said(&pieces(app, &line), what, &clock(app, line.off))).unwrap_or_default();
    if !matches!(app.bench.over, Over::Big) {
        app.bench.over = Over::Nothing;
    }
}

/// What the maker said of the operation that is asked about.
fn said_of_operation(app: &mut App, tap: WaitTap, now: Now) {
    let Over::Waits(waiting) = &app.bench.over else { return };
    let Some(op) = waiting.usual.clone() else { return };
    let was = usual(app, &op);
    let set = |what: Option<Key>, stuff| WaitCommand::SetOperation(kind::OperationWaitSet { op: op.clone(), what, stuff, span: None });
    let command = match tap {
        WaitTap::What(what) => set(what.and_then(|what| Key::read(what.name())), None),
        WaitTap::Stuff(stuff) => set(was.map(|usual| usual.what), Some(stuff)),
        WaitTap::Loud(loud) => WaitCommand::SetLoud(kind::OperationLoudSet { op, loud }),
        _ => set(was.as_ref().map(|usual| usual.what.clone()), was.and_then(|usual| usual.stuff)),
    };
    ordered_here(app, &Command::Wait(command), now);
}

/// Takes what was typed.
pub(super) fn typed(app: &mut App, now: Now) {
    let sign = app.speech.sign();
    let Over::Waits(waiting) = &mut app.bench.over else { return };
    let Some((asked, typed, unit)) = &mut waiting.typing else { return };
    let (asked, unit) = (asked.clone(), *unit);
    if matches!(asked, Asked::QuietFrom | Asked::QuietUntil(_)) {
        let clock = typed.take(reading::clock);
        return clock.into_iter().for_each(|clock| quiet(app, &asked, clock, now));
    }
    let Some(span) = typed.take(|text| unit.read(text, sign)) else { return };
    let Some(command) = spanned(app, asked, span) else { return };
    if app.order(&Command::Wait(command), now).is_some() {
        app.orders.push(Order::ReadyToRing);
        on(app, |waiting| waiting.typing = None);
    }
}

fn spanned(app: &App, asked: Asked, span: Span) -> Option<WaitCommand> {
    Some(match asked {
        Asked::Wait(wait) => WaitCommand::Mend { wait, span },
        Asked::Op(op) => {
            let Usual { what, stuff, .. } = usual(app, &op)?;
            WaitCommand::SetOperation(kind::OperationWaitSet { op, what: Some(what), stuff, span: Some(span) })
        }
        Asked::Stuff(op) => {
            let (Usual { what, stuff, .. }, warmth) = (usual(app, &op)?, app.shelf().waits().usuals.warmth);
            WaitCommand::SetUsual(kind::UsualWaitSet { what, warmth, stuff, span: Some(span) })
        }
        Asked::New(run) => {
            let (what, stuff) = usual(app, &run.work.op).map(|usual| (Some(usual.what), usual.stuff)).unwrap_or_default();
            let what = what.or_else(|| Key::read(What::Dry.name()))?;
            let job = if let On::Job(job) = run.work.on { Some(job) } else { None };
            WaitCommand::Begin { op: run.work.op, job, n: 1, laid: Laid { what, stuff, span } }
        }
        Asked::QuietFrom | Asked::QuietUntil(_) => return None,
    })
}

fn quiet(app: &mut App, asked: &Asked, clock: Clock, now: Now) {
    let Asked::QuietUntil(from) = asked else {
        return on(app, |waiting| waiting.typing = Some((Asked::QuietUntil(clock), Typed::default(), Unit::default())));
    };
    if app.order(&Command::Wait(WaitCommand::SetQuiet { hours: Some((*from, clock)) }), now).is_some() {
        on(app, |waiting| waiting.typing = None);
    }
}

/// Hands one wait, or all that wait, to a calendar, each with an alarm.
fn to_calendar(app: &mut App, only: Option<Id>) {
    let lines = waiting(app).on.into_iter().filter(|line| only.is_none_or(|id| line.wait.id == id) && !line.over);
    let event = |line: WaitLine| Event {
        id: line.wait.id,
        mended: line.wait.mended,
        at: line.off.at,
        title: words::event(&line.op, &pieces(app, &line), line.wait.what()),
        text: words::event_text(
            line.name.as_deref(),
            &app.speech.clock(line.wait.wall(line.wait.began.at, app.local())),
            &app.speech.span(line.wait.span),
        ),
    };
    let events: Vec<Event> = lines.map(event).listed();
    if events.is_empty() {
        return;
    }
    let (year, month, day) = app.now.day().as_ymd();
    let (name, text) = (format!("waits-{year:04}-{month:02}-{day:02}"), calendar::file(&events, app.now.at));
    app.orders.push(Order::Calendar { name, text });
}

/// Whether the page has to look at the clock for what waits: once a minute, and when something comes off.
pub fn minds(app: &App, now: Wall) -> bool {
    let minute = |at: Moment| at.ms().div_euclid(60_000);
    let waits = app.shelf().waits();
    let any = waits.on().next().is_some() || app.own.waits().on().next().is_some();
    any && (minute(app.now.at) != minute(now.at) || due(app, now.at).next().is_some())
}

/// What came to its end since the last look, of the maker's own book: a wait of the example is no wait.
fn due(app: &App, now: Moment) -> impl Iterator<Item = WaitLine> {
    let waits = app.own.waits();
    let since = app.bench.rung.unwrap_or(app.now.at);
    let of = Kept { waits: &waits, bench: &app.own.bench(), book: &app.own.book, local: app.local() };
    of.waits.due((since, now)).map(|wait| of.line(wait, now)).listed().into_iter()
}

/// What was over when the page was first looked at never rings. A clock that was set back looks on from where it stands.
pub fn looks(app: &mut App, now: Moment) {
    app.bench.rung = Some(app.bench.rung.unwrap_or(app.now.at).min(now));
}

/// Rings once for what came to its end since the last look, and says it.
pub fn ring(app: &mut App) {
    let now = app.now.at;
    let due = due(app, now).listed();
    app.bench.rung = Some(now);
    let Some(first) = due.first() else { return };
    app.said = words::rings(&whose(app, first), first.ends(), first.wait.still());
    if app.here.rings {
        app.orders.push(Order::Ring);
    }
}
