//! How an operation ends, and how long that takes in a shop like today's; the pad for a span or a clock time.

use super::super::super::count::saved_fact;
use super::super::super::{Screen, Seen, undo};
use super::super::{pads, say};
use super::wait;
use crate::app::bench::Tap;
use crate::app::bench::waits::{Asked, Unit, WaitTap, long, usual as usual_of};
use crate::app::entry::Typed;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips, flowing};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::pad;
use crate::view::{El, el};
use crate::words::en::{common, refusal, waits as words};
use fivebar_core::bench::wait::{Usual, Warmth, What};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Key, Listed, Span, Units};

/// How an operation ends.
pub fn usual(op: &str, app: &App, seen: Seen<'_>) -> Screen {
    let found = usual_of(app, op);
    let what = found.as_ref().map(|usual| What::of(&usual.what));
    let kinds: Vec<Option<What>> = std::iter::once(None).chain(What::ALL.map(Some)).listed();
    let shown = kinds.iter().map(|kind| Chip::choice(kind.map_or(words::NO_WAIT, words::what), *kind == what)).listed();
    let main = el("main", "scr usual")
        .kid(chips("key h56", shown, move |nth| wait(WaitTap::What(kinds.get(nth).copied().flatten()))))
        .kids(found.as_ref().map(|found| of_what(found, op, app)).unwrap_or_default())
        .kids(loud(op, app));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(done_key("key solid h56", common::DONE, "", say(Tap::Close)));
    let top = Head::new(op.to_owned(), words::ENDS_IN).fact(saved_fact(app, seen));
    Screen::new("bench/usual", head(top), main).foot(foot)
}

/// The glue or finish, how warm it is, and how long that takes.
fn of_what(found: &Usual, op: &str, app: &App) -> Vec<El<Msg>> {
    let stuffs: Vec<&'static str> = What::of(&found.what).stuffs().listed();
    let is_it = |key: &str, nth: usize| found.stuff.as_ref().map_or(nth == 0, |stuff| stuff.as_str() == key);
    let shown = stuffs.iter().enumerate().map(|(nth, key)| Chip::choice(words::stuff(key), is_it(key, nth))).listed();
    let first = found.what.clone();
    let known = stuffs.clone();
    let stuff = flowing("key h56", shown, move |nth| {
        wait(WaitTap::Stuff(known.get(nth).and_then(|key| Key::read(key)).unwrap_or_else(|| first.clone())))
    });
    let usuals = &app.shelf().waits().usuals;
    let warmths = Warmth::ALL.map(|warmth| Chip::choice(words::warmth(warmth), warmth == usuals.warmth)).to_vec();
    let warm = chips("key h56", warmths, |nth| wait(WaitTap::Warmth(Warmth::ALL.get(nth).copied().unwrap_or_default())));
    let named = found.stuff.as_ref().map(Key::as_str).or(stuffs.first().copied()).unwrap_or_default();
    let of_stuff = usuals.span((&found.what, found.stuff.as_ref()), usuals.warmth);
    let under = words::usual_of(&words::stuff(named), usuals.warmth);
    let usual = of_stuff.map(|(span, _)| key("key t22", long(app, span), under, wait(WaitTap::Ask(Asked::Stuff(op.to_owned())))));
    let own_op = usuals.ops.get(op).cloned().flatten().and_then(|said| said.span);
    let only = match own_op {
        Some(span) => key("key h56", long(app, span), words::ONLY_THIS, wait(WaitTap::Ask(Asked::Op(op.to_owned())))),
        None => key("key h56", words::ONLY_THIS, "", wait(WaitTap::Ask(Asked::Op(op.to_owned())))),
    };
    let again = own_op.map(|_| key("key h56", words::AS_USUAL, "", wait(WaitTap::AsUsual)));
    let who = if found.own { words::YOURS } else { words::TIN_DECIDES };
    let mut all = vec![stuff, el("h2", "").text(words::HOW_WARM), warm, el("h2", "").text(words::HOW_LONG)];
    all.extend(usual);
    all.push(el("p", "t14").text(who));
    all.push(el("div", "less").kid(only).kids(again));
    all
}

/// Whether it is loud: nothing loud is offered in quiet hours.
fn loud(op: &str, app: &App) -> Vec<El<Msg>> {
    let is = app.shelf().waits().usuals.loud.get(op).copied().unwrap_or_else(|| words::noisy(op));
    let shown = vec![Chip::choice(words::LOUD, is), Chip::choice(words::NOT_LOUD, !is)];
    let keys = flowing("key h56", shown, |nth| wait(WaitTap::Loud(nth == 0)));
    vec![el("h2", "").text(words::IS_IT_LOUD), keys, el("p", "t14 i2").text(words::QUIET_UNDER)]
}

/// The pad: how long, in minutes, hours or days; or when quiet hours begin and end.
pub fn span((asked, typed, unit): (&Asked, &Typed, Unit), app: &App, seen: Seen<'_>) -> Screen {
    let done = say(Tap::PadDone);
    let (title, small) = match asked {
        Asked::QuietFrom => (words::QUIET_FROM, words::QUIET.to_owned()),
        Asked::QuietUntil(from) => (words::QUIET_UNTIL, super::super::start::noon_at(*from, seen)),
        Asked::Wait(id) => {
            let waits = app.shelf().waits();
            (words::HOW_LONG, waits.wait(*id).map(|wait| stands(&wait.op, Some(wait.span), app)).unwrap_or_default())
        }
        Asked::Op(op) | Asked::Stuff(op) => (words::HOW_LONG, stands(op, usual_of(app, op).map(|usual| usual.span), app)),
        Asked::New(run) => (words::HOW_LONG, run.work.op.clone()),
    };
    if matches!(asked, Asked::QuietFrom | Asked::QuietUntil(_)) {
        return pads::clock(pads::Asked::new(("bench/quiet", title), small, done), typed, seen);
    }
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let units = Unit::ALL.map(|one| Chip::choice(unit_name(one), one == unit)).to_vec();
    let main = el("main", "scr")
        .kid(pad::entry(&typed.text, unit_name(unit), typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric))))
        .kid(chips("key h56", units, |nth| wait(WaitTap::Unit(Unit::ALL.get(nth).copied().unwrap_or_default()))))
        .kid(el("div", "push"))
        .kid(pad::pad(Some(sign), |press| say(Tap::Press(press))));
    let keys = el("div", "um back").kid(key("key h88 m", common::NOT_NOW, "", say(Tap::Close))).kid(done_key(
        "key solid h88",
        common::DONE,
        "",
        done,
    ));
    Screen::new("bench/long", head(Head::new(small, title)), main).foot(el("footer", "foot").kid(keys))
}

/// "Glue up, 90 min": what stands.
fn stands(op: &str, span: Option<Span>, app: &App) -> String {
    let span = span.map(|span| long(app, span));
    [Some(op.to_owned()), span].into_iter().flatten().listed().join(", ")
}

fn unit_name(unit: Unit) -> &'static str {
    match unit {
        Unit::Minutes => words::MINUTES,
        Unit::Hours => words::HOURS,
        Unit::Days => words::DAYS,
    }
}
