//! What can be put right of a run that is opened: its ends, job, operation, of how many, and each helper.

use super::super::{Screen, Seen};
use super::row::elsewhere;
use super::{pads, say};
use crate::app::bench::Tap;
use crate::app::bench::day::{DayTap, Helper, Mend, View};
use crate::app::bench::mending::{currency, forgotten, helper, name};
use crate::app::bench::offered::offers;
use crate::app::bench::starting::{Starting, open};
use crate::app::entry::Typed;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips, flowing};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as words, common, day as said};
use fivebar_core::bench::{On, Run};
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::day::DayLine;
use fivebar_core::sheet::helped::{Stay, stays};

fn tap(tap: DayTap) -> Msg {
    say(Tap::Day(tap))
}

fn mend(mend: Mend) -> Msg {
    tap(DayTap::Mend(Box::new(mend)))
}

/// The pad of what is typed of a run; none where nothing is typed on a pad.
pub fn pad(view: &View, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let bench = app.shelf().bench();
    let run = view.open.and_then(|run| bench.run(run));
    Some(match view.mend.as_ref()? {
        Mend::Start(typed) => pads::mend((words::STARTED_WHEN, view.open), typed, app, seen),
        Mend::Stop(typed) => pads::mend((words::STOPPED_WHEN, view.open), typed, app, seen),
        Mend::BreakFrom(typed) => in_break(said::BREAK_BEGAN, (run?, app), typed, seen),
        Mend::BreakTo(_, typed) => in_break(said::BREAK_OVER, (run?, app), typed, seen),
        Mend::Of(typed) => pads::batch(run, typed, app, seen),
        Mend::Done(typed) => pads::in_all(run?, typed, seen),
        Mend::Came(helper, typed) => along((said::CAME, said::FROM_THE_START, *helper), (run?, app), typed, seen),
        Mend::Went(helper, typed) => {
            let none = if run?.is_running() { said::STILL_HERE } else { said::TO_THE_END };
            along((said::WENT, none, *helper), (run?, app), typed, seen)
        }
        Mend::Pay(_, typed) => pads::pay((clocks(run?, seen), currency(app, run?)), typed, app, seen),
        Mend::Which | Mend::Job | Mend::Op(_) => return None,
    })
}

/// When a helper came or went; of one who was forgotten, nothing typed says something too.
fn along((title, none, helper): (&'static str, &'static str, Helper), (run, app): (&Run, &App), typed: &Typed, seen: Seen<'_>) -> Screen {
    let between = pads::along(run, typed, app, seen);
    let asked = pads::Asked { between, ..pads::Asked::new(("bench/helper-when", title), clocks(run, seen), say(Tap::PadDone)) };
    if helper.id.is_none() { pads::or_none(asked, none, typed, seen) } else { pads::clock(asked, typed, seen) }
}

/// When a break in a run began, or was over.
fn in_break(title: &'static str, (run, app): (&Run, &App), typed: &Typed, seen: Seen<'_>) -> Screen {
    let between = pads::along(run, typed, app, seen);
    let asked = pads::Asked { between, ..pads::Asked::new(("bench/break", title), clocks(run, seen), say(Tap::PadDone)) };
    pads::clock(asked, typed, seen)
}

/// "Sand, 09:00 to 10:00".
pub fn clocks(run: &Run, seen: Seen<'_>) -> String {
    let end = (!run.is_running()).then(|| seen.speech.clock(run.wall(run.end(seen.now.at), seen.local)));
    let clocks = words::clocks(&seen.speech.clock(run.began(seen.local)), end.as_deref());
    [Some(run.work.op.clone()), Some(clocks), elsewhere(run.by(seen.local), seen)].into_iter().flatten().listed().join(", ")
}

/// What is asked in the line itself: which of them, which job, which operation; none where nothing of it is.
pub fn asked(line: &DayLine, view: &View, app: &App, seen: Seen<'_>) -> Option<Vec<El<Msg>>> {
    match view.mend.as_ref()? {
        Mend::Op(text) => Some(operation(&line.run, text, app)),
        Mend::Job => Some(vec![job(&line.run, app)]),
        _ => Some(vec![which(&line.run, app, seen)]),
    }
}

/// A run that goes on has no stop yet.
fn which(run: &Run, app: &App, seen: Seen<'_>) -> El<Msg> {
    let stop = (!run.is_running()).then(|| key("key h56", words::MEND_STOP, "", mend(Mend::Stop(Typed::default()))));
    let lunch = (!run.is_running()).then(|| key("key h56", said::BREAK, "", mend(Mend::BreakFrom(Typed::default()))));
    let job = name(app, run.work.on).unwrap_or_else(|| words::NO_JOB.to_owned());
    let of = app.shelf().bench().batch(run.work.on, &run.work.op, app.now.at).of.map(|of| seen.speech.count(of)).unwrap_or_default();
    let of = matches!(run.work.on, On::Job(_)).then(|| key("key h56", words::OF_HOW_MANY, of, mend(Mend::Of(Typed::default()))));
    let done = words::done(&seen.speech.count(run.done()), None);
    el("div", "less")
        .kid(key("key h56", words::MEND_START, "", mend(Mend::Start(Typed::default()))))
        .kids(stop)
        .kids(lunch)
        .kid(key("key h56", said::JOB, job, mend(Mend::Job)))
        .kid(key("key h56", words::MEND_OP, run.work.op.clone(), mend(Mend::Op(String::new()))))
        .kids(of)
        .kid(key("key h56", said::PIECES_DONE, done, mend(Mend::Done(Typed::default()))))
        .kid(key("key h56", said::ADD_HELPER, "", mend(forgotten())))
}

/// Jobs that go on, and none.
fn job(run: &Run, app: &App) -> El<Msg> {
    let mut all: Vec<(On, String)> = open(app).into_iter().rev().map(|(job, name)| (On::Job(job), name)).listed();
    all.push((On::Nothing, words::NO_JOB.to_owned()));
    let shown = all.iter().map(|(on, name)| Chip::choice(name.clone(), *on == run.work.on)).listed();
    let own = run.work.on;
    let keys = flowing("key h56", shown, move |nth| match all.get(nth).map(|(on, _)| *on) {
        Some(on) if on != own => tap(DayTap::Move(on)),
        // It is of that job already.
        _ => say(Tap::Close),
    });
    let away = el("div", "less").kid(key("key h56", common::NOT_NOW, "", say(Tap::Close)));
    el("div", "").kid(el("p", "w7").text(words::FOR_WHAT)).kid(keys.attr("aria-label", words::FOR_WHAT)).kid(away)
}

/// The operations of its job, and one that is typed.
fn operation(run: &Run, text: &str, app: &App) -> Vec<El<Msg>> {
    let starting = Starting { on: run.work.on, op: text.to_owned(), ..Starting::new(app) };
    let found = offers(app, &starting);
    let all = found.found.into_iter().chain(found.first).chain(found.behind).chain(found.beside);
    let mut offered = all.filter(|one| one.on == run.work.on && one.op != run.work.op).listed();
    offered.dedup_by(|one, next| one.op == next.op);
    let shown = offered.iter().map(|one| Chip::tap(one.op.clone())).listed();
    let keys = (!shown.is_empty()).then(|| {
        let keys = chips("key h56 m", shown, move |nth| match offered.get(nth).cloned() {
            Some(one) => tap(DayTap::Picked(one.op, one.kind, one.stage)),
            None => say(Tap::Close),
        });
        keys.attr("aria-label", words::WHICH_OPERATION)
    });
    let asked =
        Field { id: "renamed", label: words::FIND_OR_TYPE.into(), value: text.to_owned(), keyboard: Keyboard::Words, ..Field::default() };
    let done = (!text.trim().is_empty()).then(|| key("key solid h56", common::DONE, "", tap(DayTap::Op)));
    let away = el("div", "less").kid(key("key h56", common::NOT_NOW, "", say(Tap::Close))).kids(done);
    [field(asked, |text| mend(Mend::Op(text)))].into_iter().chain(keys).chain([away]).listed()
}

/// Who worked along, each with the keys that put it right.
pub fn helpers(run: &Run, seen: Seen<'_>) -> Vec<El<Msg>> {
    let all = stays(run, seen.now.at).unwrap_or_default();
    let many = all.len();
    all.iter().map(|stay| one(stay, (run, many), seen)).listed()
}

/// "helper 09:00 to 10:00, 18.00"; where they went after the end of the run, or came after it, that too.
pub fn in_words(stay: &Stay, run: &Run, seen: Seen<'_>) -> String {
    let head = run.heads.iter().find(|head| head.id == stay.id).filter(|_| !run.is_running());
    let (came, end) = (head.map(|head| head.from), run.end(seen.now.at));
    let who = if 1 < stay.n { said::helpers(&seen.speech.count(stay.n)) } else { said::HELPER.to_owned() };
    let clock = |at| seen.speech.clock(run.wall(at, seen.local));
    // After the end it may be another day.
    let later = |at| {
        let wall = run.wall(at, seen.local);
        if wall.day() == run.began(seen.local).day() { clock(at) } else { format!("{} {}", seen.speech.day(wall), clock(at)) }
    };
    if let Some(came) = came.filter(|came| end <= *came) {
        return said::came_after(&who, &later(came));
    }
    let went = head.and_then(|head| head.to).filter(|to| end < *to).map(|to| said::counted_to_the_end(&later(to)));
    let to = stay.to.map(clock);
    let clocks = words::clocks(&clock(stay.from), to.as_deref());
    let pay = stay.pay.map(|pay| seen.speech.money(pay));
    let helped = said::helper(&who, &clocks, pay.as_deref());
    [Some(helped), went].into_iter().flatten().listed().join(", ")
}

fn one(stay: &Stay, (run, _): (&Run, usize), seen: Seen<'_>) -> El<Msg> {
    let of = || helper(stay.id);
    // Heads that were written down with a run are of its own entry: it can't be struck for them.
    let own = stay.id != run.id;
    let keys = el("div", "less")
        .kid(key("key h48", said::CAME_KEY, "", mend(Mend::Came(of(), Typed::default()))))
        .kid(key("key h48", said::WENT_KEY, "", mend(Mend::Went(of(), Typed::default()))))
        .kid(key("key h48", said::PAY_KEY, "", mend(Mend::Pay(of(), Typed::default()))))
        .kids(own.then(|| key("key h48", words::STRIKE_HELPER, "", tap(DayTap::Strike(stay.id)))));
    let per_hour = stay.per_hour.map(|pay| said::per_hour(&seen.speech.money(pay)));
    let line = [Some(in_words(stay, run, seen)), per_hour].into_iter().flatten().listed().join(", ");
    el("div", "helped").key(stay.id.to_string()).kid(el("p", "w7").text(line)).kid(keys)
}
