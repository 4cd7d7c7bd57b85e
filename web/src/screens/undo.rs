//! The bar that takes the last act of this tab back, and then puts it back: the same on every place.

use super::Seen;
use crate::app::{App, Common, Msg};
use crate::parts::Place;
use crate::parts::undo::{Undo, alone};
use crate::view::El;
use crate::words::en::{acts, changed, common};
use fivebar_core::bench::On;
use fivebar_core::ledger::book::{Subject, subjects};
use fivebar_core::ledger::fold::name_of;
use fivebar_core::ledger::{Entry, Fact};
use fivebar_core::quantity::Listed;

/// The bar, while there is something to take back or to put back.
pub fn bar(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shelf = app.shelf();
    if shelf.taken_back.is_some() {
        let words = Undo { words: common::PUT_BACK.into(), under: common::TAKEN_BACK.into() };
        return Some(alone(words, Msg::Common(Common::PutBack)));
    }
    let act = shelf.last_act?;
    let entries: Vec<_> = shelf.book.act(act).into_iter().filter_map(|id| shelf.book.entry(id)).map(|(entry, _)| entry).listed();
    let by_way =
        entries.iter().find(|entry| matches!(entry.fact, Fact::PilePiecesWeighed(_) | Fact::PileLayersCounted(_) | Fact::WaitBegan(_)));
    let told = by_way.or(entries.iter().find(|entry| weighty(&entry.fact))).or(entries.first())?;
    let what = of_job(acts::named(&told.fact), told, app);
    let words = Undo { words: common::TAKE_BACK.into(), under: common::of_when(&what, &seen.speech.clock(told.wall)) };
    Some(alone(words, Msg::Common(Common::TakeBack)))
}

/// An act of another job than the one that is open names its job.
fn of_job(what: &str, entry: &Entry, app: &App) -> String {
    let job = subjects(entry).into_iter().flatten().find_map(|subject| if let Subject::Job(id) = subject { Some(id) } else { None });
    let other = job.filter(|job| app.place == Place::Jobs && app.jobs.open.is_some_and(|open| open != *job));
    let name = other.and_then(|job| name_of(&app.shelf().book, On::Job(job)));
    name.map_or_else(|| what.to_owned(), |name| changed::of_other_job(what, &name))
}

/// A haul or a stop that only came along with the act does not name it.
fn weighty(fact: &Fact) -> bool {
    !matches!(fact, Fact::HaulBegan(_) | Fact::RunStopped(_) | Fact::OfferHeard(_))
}
