//! The frame: head, what scrolls, the foot, notices, the strip, the bar of places.

use super::{Screen, Seen, Sight, bench, count, jobs, mend, opening, price, said, workshop};
use crate::app::order::Which;
use crate::app::workshop::Tap;
use crate::app::{App, Common, Msg, Notice};
use crate::parts::key::key;
use crate::parts::notice::{live, trouble};
use crate::parts::pad::PAD;
use crate::parts::strip;
use crate::parts::{Place, place_bar};
use crate::view::{Answers, El, el};
use crate::words::en::{common as words, copies};
use fivebar_core::quantity::Id;

/// A job's quote as a text for a buyer: what stands on its paper.
pub fn quote_text(app: &App, job: Id) -> Option<String> {
    super::jobs::quote_text(job, app, Seen(&Sight { page: app.page, speech: &*app.speech, now: app.now, local: app.local() }))
}

/// The whole page of the app as it stands.
pub fn page(app: &App) -> El<Msg> {
    let seen = Seen(&Sight { page: app.page, speech: &*app.speech, now: app.now, local: app.local() });
    if let Some(face) = price::face::page(app, seen) {
        return face;
    }
    let screen = place(app, seen);
    let parts = || [Some(&screen.main), screen.foot.as_ref()].into_iter().flatten();
    let pad = parts().find_map(|part| part.keys_at(PAD));
    let done = parts().find_map(El::said_by_enter).filter(|_| pad.is_some());
    let keys = Single { heard: app.here.single_keys, walks: screen.walks, leads: !asks(&screen) };
    let nav = (!screen.bare).then(|| place_bar::place_bar(app.place, Msg::Go));
    el("div", "app")
        .place(screen.place)
        .on_key(heard(keys, pad, done))
        .kid(screen.head)
        .kids((!screen.bare).then(|| band(app, seen)).flatten())
        .kids((!screen.bare && !screen.quiet && !screen.says_it).then(|| nudge(app, seen)).flatten())
        .kids((!screen.says_it).then(|| notice(app, seen)).flatten())
        // Another place begins at its top, not where the one before was scrolled to.
        .kid(busy(reachable(screen.main.key(format!("{}{}", screen.place, screen.of))), app))
        .kids(screen.foot)
        .kids((!screen.bare && !screen.quiet).then(|| running(app, seen)).flatten())
        .kids(nav)
        .kid(live(app.said.clone()))
}

/// What holds no key of its own must take the focus itself, or a keyboard can't scroll it.
fn reachable(main: El<Msg>) -> El<Msg> {
    if main.holds(&["button", "input", "a"]) { main } else { main.attr("tabindex", "0") }
}

/// More is coming: said where a glimpse of the book is all there is yet.
fn busy(main: El<Msg>, app: &App) -> El<Msg> {
    if app.is_glimpse() { main.attr("aria-busy", "true") } else { main }
}

fn place(app: &App, seen: Seen<'_>) -> Screen {
    if let Some(screen) = app.mending.as_ref().and_then(|mending| mend::screen(mending, app, seen)) {
        return screen;
    }
    match app.place {
        _ if app.is_opening() && !app.is_glimpse() => opening::screen(app, seen),
        Place::Count => count::screen(app, seen),
        Place::Bench => bench::screen(app, seen),
        Place::Price => price::screen(app, seen),
        Place::Jobs => jobs::screen(app, seen),
        Place::Workshop => workshop::screen(app, seen),
    }
}

/// What runs, on every place but the bench.
fn running(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let run = app.running().filter(|_| app.place != Place::Bench)?;
    let minutes = seen.speech.span(run.worked);
    Some(strip::strip(strip::Strip { operation: run.op, minutes, stop: words::STOP.into() }, Msg::Common(Common::StopRun)))
}

/// Single keys of a keyboard, as they are heard on a page.
#[derive(Clone, Copy)]
struct Single {
    heard: bool,
    /// The arrows go back and on.
    walks: bool,
    /// The figures lead to the places.
    leads: bool,
}

/// A form, or what lies over the list of Price, as an offer does: a figure that is typed there is meant for it and leads nowhere else.
fn asks(screen: &Screen) -> bool {
    let parts = [Some(&screen.main), screen.foot.as_ref()];
    screen.place.starts_with("price/")
        || parts.into_iter().flatten().any(|part| part.says(words::NOT_NOW) || part.said_by_enter().is_some())
}

/// What a key says here: the arrows too, where they go back and on; a figure, where a pad waits for it, and Enter that takes it.
fn heard(single: Single, pad: Option<Answers<Msg>>, done: Option<Msg>) -> impl Fn(&str) -> Option<Msg> + 'static {
    let Single { heard, walks, leads } = single;
    let is_arrow = |key: &str| matches!(key, "ArrowLeft" | "ArrowRight");
    move |key| match key {
        _ if walks && is_arrow(key) => Some(Msg::Key(key.to_owned())),
        "Enter" => done.clone(),
        _ if heard => pad.as_ref().and_then(|pad| pad(key)).or_else(|| global_key(key, leads)),
        _ => no_key(key),
    }
}

fn global_key(key: &str, leads: bool) -> Option<Msg> {
    let is_place = matches!(key, "1" | "2" | "3" | "4" | "5") && leads;
    (is_place || matches!(key, "u" | "U" | "Escape")).then(|| Msg::Key(key.to_owned()))
}

/// Escape is no single letter: it stays where those are turned off.
fn no_key(key: &str) -> Option<Msg> {
    (key == "Escape").then(|| Msg::Key(key.to_owned()))
}

/// What stands under the head on every place: the example's name, a version that waits.
fn band(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    if app.which == Which::Example {
        let back = key("key h48", words::BACK_TO_YOURS, "", Msg::Common(Common::LeaveExample));
        return Some(el("aside", "band").attr("aria-label", words::NOTED).kid(el("span", "").text(words::EXAMPLE)).kid(back));
    }
    let failed = app.shelf().failures();
    if 0 < failed && !matches!(app.notice, Some(Notice::NotSaved(_))) {
        let again = key("key h48", words::TRY_AGAIN, "", Msg::Common(Common::TryAgain));
        let n = seen.speech.number(fivebar_core::quantity::Decimal::from(failed), 0, 0);
        return Some(
            el("aside", "band")
                .attr("aria-label", words::NOTED)
                .attr("role", "status")
                .kid(el("span", "c-under").text(words::entries_not_saved(failed, &n)))
                .kid(again),
        );
    }
    if app.update_waits {
        let take = key("key h48", words::USE_IT, "", Msg::Common(Common::ApplyUpdate));
        return Some(el("aside", "band").attr("aria-label", words::NOTED).kid(el("span", "").text(words::NEW_VERSION)).kid(take));
    }
    (app.is_open && app.here.install_first && app.own.book.is_empty()).then(|| {
        let how = key("key h48", copies::INSTALL_HOW, "", Msg::Workshop(Tap::ShowHelp));
        el("aside", "band").attr("aria-label", words::NOTED).kid(el("span", "").text(copies::INSTALL_FIRST)).kid(how)
    })
}

/// A quiet line where much would be lost with this phone; Workshop itself says it at length.
fn nudge(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    if app.place == Place::Workshop || app.which == Which::Example {
        return None;
    }
    let age = workshop::age_of(app, seen);
    let lost = workshop::since(&age, seen).filter(|_| age.is_much)?;
    Some(el("aside", "nudge").kid(el("p", "").text(copies::nudge(&lost))))
}

fn notice(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shown = |worded| el("div", "notices").kid(trouble(worded));
    let away = || key("key h56", words::UNDERSTOOD, "", Msg::Common(Common::Understood));
    match app.notice.as_ref()? {
        Notice::Refused(refusal) => {
            let said = shown(bench::refused::worded(refusal, app, seen));
            Some(match bench::refused::mend(refusal) {
                Some(mend) => said.kid(el("div", "g2").kid(away()).kid(mend)),
                None => said.kid(away()),
            })
        }
        Notice::NotSaved(why) => {
            let again = key("key solid h56", words::TRY_AGAIN, "", Msg::Common(Common::TryAgain));
            let copy = key("key h56", words::KEEP_A_COPY, "", Msg::Workshop(Tap::KeepCopyNow));
            let said = shown(said::not_saved(*why, app.shelf().failures(), seen));
            Some(said.kid(el("div", "g3").kid(away()).kid(copy).kid(again)))
        }
        Notice::NotOpened(Which::Own, why) => {
            let again = key("key solid h56", words::OPEN_AGAIN, "", Msg::Common(Common::Reload));
            Some(shown(said::not_opened(*why)).kid(again))
        }
        Notice::NotOpened(Which::Example, why) => Some(shown(said::no_example(*why)).kid(away())),
        Notice::Emptied => {
            let copy = key("key solid h56", words::KEEP_A_COPY, "", Msg::Workshop(Tap::KeepCopyNow));
            Some(shown(said::emptied()).kid(el("div", "g2").kid(away()).kid(copy)))
        }
        Notice::BroughtBack(entries) => {
            let entries = seen.speech.number(fivebar_core::quantity::Decimal::from(*entries), 0, 0);
            let copy = key("key solid h56", words::KEEP_A_COPY, "", Msg::Workshop(Tap::KeepCopyNow));
            Some(shown(said::brought_back(&entries)).kid(el("div", "g2").kid(away()).kid(copy)))
        }
    }
}
