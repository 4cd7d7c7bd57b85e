//! Runs that look wrong, and the pads that put them right. The question never blocks a start.

use super::super::{Screen, Seen};
use super::say;
use crate::app::Msg;
use crate::app::bench::Tap;
use crate::app::bench::day::Mending;
use crate::app::entry::Typed;
use crate::parts::board::asking;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::notches::Notches;
use crate::parts::pad;
use crate::view::{El, el};
use crate::words::en::{bench as words, common, refusal};
use fivebar_core::bench::Run;
use fivebar_core::bench::repair::{Because, Proposed};
use fivebar_core::quantity::{Span, Units, Wall};
use fivebar_core::sheet::bench::BenchSheet;

/// A board for the run that looks wrong: the running one first, else the latest to mend.
pub fn questions(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let running = sheet.running.as_ref().and_then(|slab| Some((&slab.run, slab.worked, slab.wrong?)));
    let ended = || sheet.to_mend.iter().find_map(|mend| Some((&mend.run, mend.worked, mend.wrong?)));
    running.or_else(ended).map(|(run, worked, wrong)| question(run, worked, wrong, seen))
}

fn question(run: &Run, worked: Span, wrong: Proposed, seen: Seen<'_>) -> El<Msg> {
    let shown = seen.speech.span(worked);
    let meant = seen.speech.span(run.started.at.until(wrong.at));
    let clock = seen.speech.clock(Wall::new(wrong.at, run.started.offset));
    let answers = el("div", "g2").kid(key("key h56", words::it_was(&shown), "", say(Tap::Right(run.id)))).kid(key(
        "key h56",
        words::STOPPED_AT,
        "",
        say(Tap::StoppedAt(run.id)),
    ));
    asking(
        Notches { done: 0, of: 0 },
        [
            el("p", "t22 w8").text(words::shows(&run.work.op, &shown)),
            el("p", "").text(words::because(because(wrong.because))),
            key("key solid h88", words::until(&meant, &clock), "", say(Tap::Proposed(run.id, wrong.at))),
            answers,
            el("p", "t14").text(words::SETTLE_IT),
        ],
    )
    .key("question")
}

fn because(why: Because) -> &'static str {
    match why {
        Because::LastAct => "last-act",
        Because::NextStart => "next-start",
        Because::Closing => "closing",
        Because::Batch => "batch",
        Because::Usual => "usual",
        Because::Default => "default",
    }
}

/// What a pad puts right.
pub fn title(mending: &Mending) -> &'static str {
    if mending.start { words::MEND_START } else { words::MEND_STOP }
}

/// A pad for a clock time.
pub fn clock(place: &'static str, title: &'static str, typed: &Typed, seen: Seen<'_>) -> Screen {
    typing(place, (title, words::BY_THE_CLOCK), typed, seen)
}

/// A pad for a number of pieces.
pub fn count(place: &'static str, title: &'static str, typed: &Typed, seen: Seen<'_>) -> Screen {
    typing(place, (title, ""), typed, seen)
}

fn typing(place: &'static str, (title, under): (&'static str, &'static str), typed: &Typed, seen: Seen<'_>) -> Screen {
    let main = el("main", "scr")
        .kid(pad::entry(&typed.text, "", typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric))))
        .kid(el("div", "push"))
        .kid(pad::pad(None, |press| say(Tap::Press(press))))
        .kid(key("key solid h88", common::DONE, "", say(Tap::PadDone)))
        .kid(key("key h48", common::LEAVE_IT, "", say(Tap::Close)));
    Screen::new(place, head(Head::new(under, title)), main)
}
