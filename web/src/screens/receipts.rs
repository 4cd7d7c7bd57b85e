//! Receipts of a spending: their pictures, and the key that takes one.

use super::said;
use crate::app::order::Which;
use crate::app::photos::PhotoTap;
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::parts::notice::trouble;
use crate::view::{El, el};
use crate::words::en::{costs as words, photos as photo_words};
use fivebar_core::ledger::decide::PHOTOS_MOST;
use fivebar_core::quantity::{Id, Listed};

/// Those of a spending, the oldest first.
pub fn of(spending: Id, app: &App) -> Vec<Id> {
    app.shelf().workshop().photos.of_spending(spending).listed()
}

/// The word of a line that has some.
pub fn there(receipts: &[Id]) -> Option<String> {
    (!receipts.is_empty()).then(|| words::RECEIPT_THERE.to_owned())
}

/// Their pictures, each to be removed; and why the last one was not kept.
pub fn pictures(receipts: &[Id], app: &App) -> Vec<El<Msg>> {
    let failed = app.photos.said.map(|why| trouble(said::shown(photo_words::not_kept(why))));
    let pictures = receipts.iter().map(|id| {
        let picture = match app.photos.address(*id) {
            Some(Some(url)) => el("img", "").attr("src", url.to_owned()).attr("alt", words::RECEIPT_OF),
            Some(None) => el("p", "").text(words::NOT_HERE),
            None => el("p", "").text(photo_words::BEING_READ),
        };
        let remove = key("key soft h48", photo_words::REMOVE, photo_words::REMOVED_UNDER, Msg::Photo(PhotoTap::Remove(*id)));
        el("section", "photo").key(id.to_string()).kid(picture).kid(remove)
    });
    failed.into_iter().chain(pictures).listed()
}

/// Takes one more, while there is room; none in the example, which keeps no pictures.
pub fn take(spending: Id, receipts: &[Id], app: &App) -> Option<El<Msg>> {
    let room = app.which == Which::Own && receipts.len() < PHOTOS_MOST;
    room.then(|| key("key soft h56", words::RECEIPT, "", Msg::Photo(PhotoTap::Receipt(spending))))
}
