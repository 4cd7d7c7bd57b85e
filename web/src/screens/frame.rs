//! The frame: head, what scrolls, the foot, notices, the strip, the bar of places.

use super::{Screen, Seen, bench, count, jobs, price, said, workshop};
use crate::app::order::Which;
use crate::app::{App, Common, Msg, Notice};
use crate::parts::key::key;
use crate::parts::notice::{live, trouble};
use crate::parts::strip;
use crate::parts::{Place, place_bar};
use crate::view::{El, el};
use crate::words::en::common as words;

/// The whole page of the app as it stands.
pub fn page(app: &App) -> El<Msg> {
    let seen = Seen { page: app.page, speech: &*app.speech, now: app.now };
    if let Some(face) = price::face::page(app, seen) {
        return face;
    }
    let screen = place(app, seen);
    let nav = (!screen.bare).then(|| place_bar::place_bar(app.place, Msg::Go));
    el("div", "app")
        .place(screen.place)
        .on_key(global_key)
        .kid(screen.head)
        .kids(band(app))
        .kids(notice(app, seen))
        .kid(screen.main)
        .kids(screen.foot)
        .kids((!screen.bare).then(|| running(app, seen)).flatten())
        .kids(nav)
        .kid(live(app.said.clone()))
}

fn place(app: &App, seen: Seen<'_>) -> Screen {
    match app.place {
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

fn global_key(key: &str) -> Option<Msg> {
    matches!(key, "1" | "2" | "3" | "4" | "5" | "u" | "U").then(|| Msg::Key(key.to_owned()))
}

/// What stands under the head on every place: the example's name, a version that waits.
fn band(app: &App) -> Option<El<Msg>> {
    if app.which == Which::Example {
        let back = key("key h48", words::BACK_TO_YOURS, "", Msg::Common(Common::LeaveExample));
        return Some(el("div", "band").kid(el("span", "").text(words::EXAMPLE)).kid(back));
    }
    let update = || el("div", "band").kid(el("span", "").text(words::NEW_VERSION));
    app.update_waits.then(|| update().kid(key("key h48", words::USE_IT, "", Msg::Common(Common::ApplyUpdate))))
}

fn notice(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shown = |worded| el("div", "notices").kid(trouble(worded));
    let away = || key("key h56", words::UNDERSTOOD, "", Msg::Common(Common::Understood));
    match app.notice.as_ref()? {
        Notice::Refused(refusal) => Some(shown(said::refused(refusal, seen)).kid(away())),
        Notice::NotSaved(why) => {
            let again = key("key solid h56", words::TRY_AGAIN, "", Msg::Common(Common::TryAgain));
            Some(shown(said::not_saved(*why, app.shelf().failed().len(), seen)).kid(el("div", "g2").kid(away()).kid(again)))
        }
        Notice::NotOpened(why) => Some(shown(said::not_opened(*why))),
    }
}
