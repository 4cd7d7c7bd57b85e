//! Photos of a job: a strip on its page, and a page of their own where they are taken and removed.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, said, undo};
use super::{say, to_job};
use crate::app::jobs::{Room, Tap};
use crate::app::order::Which;
use crate::app::photos::PhotoTap;
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::notice::trouble;
use crate::view::{El, el};
use crate::words::en::photos as words;
use fivebar_core::ledger::decide::PHOTOS_MOST;
use fivebar_core::quantity::{Decimal, Id, Listed};
use fivebar_core::sheet::job::JobSheet;

/// "240 kB", "1.2 MB".
pub fn size(bytes: u64, seen: Seen<'_>) -> String {
    let kilobytes = bytes.div_ceil(1_000);
    if kilobytes < 1_000 {
        words::kilobytes(&seen.speech.number(Decimal::from(kilobytes), 0, 0))
    } else {
        words::megabytes(&seen.speech.number(Decimal::new(i64::try_from(kilobytes.div_ceil(100)).unwrap_or(i64::MAX), 1), 0, 1))
    }
}

fn of(sheet: &JobSheet, app: &App) -> Vec<Id> {
    app.shelf().workshop().photos.of_job(sheet.job).collect()
}

fn number(n: usize, seen: Seen<'_>) -> String {
    seen.speech.number(Decimal::from(n), 0, 0)
}

/// The way to the photos of a job; none in the example, which is in no copy.
pub fn way(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let n = of(sheet, app).len();
    let under = if n == 0 { words::NONE_YET.to_owned() } else { words::photos(n, &number(n, seen)) };
    (app.which == Which::Own).then(|| key("key left", words::PHOTOS, under, say(Tap::Room(Room::Photos))).key("photos"))
}

/// The photos of a job, small.
pub fn strip(sheet: &JobSheet, app: &App) -> Option<El<Msg>> {
    let photos = of(sheet, app);
    let pictures = photos
        .iter()
        .filter_map(|id| Some((*id, app.photos.address(*id)??)))
        .map(|(id, url)| el("img", "").key(id.to_string()).attr("src", url.to_owned()).attr("alt", ""));
    let pictures = pictures.listed();
    (!pictures.is_empty()).then(|| el("div", "thumbs").key("thumbs").kids(pictures))
}

/// The page of them.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let photos = of(sheet, app);
    let about = if photos.is_empty() { words::NO_PHOTO_YET } else { words::LATEST_IS_SHOWN };
    let all = photos.iter().enumerate().rev().map(|(nth, id)| photo(*id, &number(nth.saturating_add(1), seen), (sheet, app, seen)));
    let main = el("main", "scr photos")
        .kids(app.photos.said.map(|why| trouble(said::shown(words::not_kept(why)))))
        .kid(el("p", "").text(about))
        .kids(all);
    let take = |words: &'static str, camera: bool| key("key h88 m", words, "", Msg::Photo(PhotoTap::Take { camera }));
    let takes = (photos.len() < PHOTOS_MOST).then(|| el("div", "g2").kid(take(words::CHOOSE, false)).kid(take(words::TAKE, true)));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kids(takes).kid(to_job());
    let top = Head::new(super::titled(sheet, seen), words::PHOTOS).fact(saved_fact(app, seen));
    let top = top.fact(Fact::Plain(words::photos(photos.len(), &number(photos.len(), seen))));
    Screen::new("jobs/photos", head(top), main).foot(foot)
}

fn photo(id: Id, n: &str, (sheet, app, seen): (&JobSheet, &App, Seen<'_>)) -> El<Msg> {
    let size = app.photos.size(id).map(|bytes| size(bytes, seen));
    let picture = match app.photos.address(id) {
        Some(Some(url)) => el("img", "").attr("src", url.to_owned()).attr("alt", words::nth(n, &sheet.name)),
        Some(None) => el("p", "").text(words::NOT_HERE),
        None => el("p", "").text(words::BEING_READ),
    };
    el("section", "photo").key(id.to_string()).kid(el("h2", "").text(words::nth_and_size(n, size.as_deref()))).kid(picture).kid(key(
        "key soft h56",
        words::REMOVE,
        words::REMOVED_UNDER,
        Msg::Photo(PhotoTap::Remove(id)),
    ))
}
