//! Jobs: the list; one job's page and its four rooms are in the folder of its name.

mod back;
mod dates;
pub(super) mod entry;
pub(super) mod estimate;
pub(super) mod figures;
pub mod forms;
mod holds;
mod homes;
pub mod hours;
mod list;
mod page;
pub mod photos;
mod quote;
pub(super) mod rest;
mod sell;
mod wood;

pub use figures::lacking;
pub use quote::text as quote_text;
pub use sell::by_coin;
pub use wood::{name as pile_name, parts, size as pile_size};

use super::{Screen, Seen, said};
use crate::app::jobs::{Room, Tap, sheet};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::notice::trouble;
use crate::view::{El, el};
use crate::words::en::{job as rooms, jobs as words};
use fivebar_core::quantity::Id;
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::job::JobSheet;

/// What a job is called on each of its pages, as in the list: with how many pieces it is of, where it is of several.
pub fn titled(job: &JobSheet, seen: Seen<'_>) -> String {
    words::name(&job.name, job.sale.of, &seen.speech.count(job.sale.of))
}

/// A job as its own page names it, wherever it is named: "Plant stands, 5".
pub fn called(id: Id, name: &str, app: &App, seen: Seen<'_>) -> String {
    let pieces = app.shelf().shop(app.now.at).job(id).map_or(1, |job| job.pieces);
    words::name(name, pieces, &seen.speech.count(pieces))
}

fn say(tap: Tap) -> Msg {
    Msg::Jobs(tap)
}

/// The way back from a room.
fn to_job() -> El<Msg> {
    key("key soft h56 wide", rooms::THE_JOB, "", say(Tap::Page))
}

/// The screen as it stands.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let sheet = sheet(app);
    match (&app.jobs.draft, sheet) {
        (Some(draft), Some(Ok(sheet))) => forms::screen(draft, Some(&sheet), app, seen),
        (Some(draft), None) => forms::screen(draft, None, app, seen),
        (_, None) => list::screen(app, seen),
        (_, Some(Err(refusal))) => unreadable(&refusal, seen),
        (None, Some(Ok(sheet))) => match app.jobs.room {
            None => page::screen(&sheet, app, seen),
            Some(Room::Plan) => super::plan::screen(&sheet, app, seen),
            Some(Room::Wood) => wood::screen(&sheet, app, seen),
            Some(Room::Hours) => hours::screen(&sheet, app, seen),
            Some(Room::Sell) => sell::screen(&sheet, app, seen),
            Some(Room::Back) => back::screen(&sheet, app, seen),
            Some(Room::Dates) => dates::screen(&sheet, app, seen),
            Some(Room::Photos) => photos::screen(&sheet, app, seen),
            Some(Room::Quote) => quote::screen(&sheet, app, seen),
        },
    }
}

/// A job whose figures go beyond what can be kept: the reason, and the way back.
fn unreadable(refusal: &Refusal, seen: Seen<'_>) -> Screen {
    let main = el("main", "scr").kid(trouble(said::refused(refusal, seen))).kid(key("key h56", words::ALL_JOBS, "", say(Tap::List)));
    Screen::new("jobs/unreadable", head(Head::new("", words::UNREADABLE)), main)
}
