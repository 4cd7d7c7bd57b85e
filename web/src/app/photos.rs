//! Photos of a job: taken, removed, shown where the job shows, and in a copy by choice.
//!
//! A picture is on the phone before its entry is written: one without an entry harms nobody, and goes at the next copy.

use super::jobs::Room;
use super::news::Trouble;
use super::order::{Order, Which};
use super::workshop::{Over, copies};
use super::{App, Msg};
use crate::parts::Place;
use fivebar_core::ledger::decide::{BookCommand, Command, Now, PHOTOS_MOST};
use fivebar_core::ledger::line::document::Photos as InCopy;
use fivebar_core::ledger::merge::Coming;
use fivebar_core::quantity::{Id, Listed, Sorted};
use fivebar_core::refusal::Refusal;

/// Why a photo was not kept. A closed list: each has its sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPhoto {
    /// It is no picture this phone can read.
    Unread,
    /// The phone would not keep it.
    NotKept(Trouble),
}

/// What can be said of photos, by the maker and by the phone.
#[derive(Clone, Debug, PartialEq)]
pub enum PhotoTap {
    /// Takes one with the camera, or chooses one.
    Take {
        camera: bool,
    },
    /// The receipt of a spending.
    Receipt(Id),
    /// The picture is on this phone: so many bytes.
    Kept {
        photo: Id,
        bytes: u64,
    },
    /// Nothing was chosen.
    PutAway,
    NotKept(NoPhoto),
    Remove(Id),
    /// Whether the next copy has the photos.
    InCopy(bool),
    /// What was read for a copy.
    Read(Result<InCopy, Trouble>),
}

/// What a photo is being taken for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Taking {
    Job(Id),
    /// The receipt of a spending.
    Receipt(Id),
}

/// What is known of photos that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Photos {
    /// The pictures on this phone with their bytes, once it was looked.
    here: Option<Sorted<Id, u64>>,
    /// Those that show: each with its address, none where the picture is not on this phone.
    shown: Sorted<Id, Option<String>>,
    wanted: Vec<Id>,
    /// The page that shows their sizes is open.
    sizes: bool,
    /// What a photo is being taken for.
    taking: Option<Taking>,
    /// Why the last one was not kept.
    pub said: Option<NoPhoto>,
    /// The next copy leaves them out.
    pub left_out: bool,
}

impl Photos {
    /// The address of a picture; the outer `None` while it is being read.
    pub fn address(&self, photo: Id) -> Option<Option<&str>> {
        self.shown.get(&photo).map(Option::as_deref)
    }

    /// How many bytes it has, if it is on this phone.
    pub fn size(&self, photo: Id) -> Option<u64> {
        self.here.as_ref()?.get(&photo).copied()
    }

    pub fn is_taking(&self) -> bool {
        self.taking.is_some()
    }

    /// What is on this phone was read.
    pub fn are_here(&mut self, here: Vec<(Id, u64)>) {
        self.here = Some(here.into_iter().collect());
    }

    /// These show, where their pictures are on this phone.
    pub fn show(&mut self, shown: Vec<(Id, Option<String>)>) {
        self.shown = shown.into_iter().filter(|(id, _)| self.wanted.contains(id)).collect();
    }
}

/// Takes in what is said of photos.
pub fn heard(app: &mut App, tap: PhotoTap, now: Now) {
    match tap {
        PhotoTap::Take { camera } => take(app, camera),
        PhotoTap::Receipt(spending) => {
            app.photos.said = None;
            if app.which == Which::Own {
                app.photos.taking = Some(Taking::Receipt(spending));
                app.orders.push(Order::TakePhoto { camera: false });
            }
        }
        PhotoTap::Kept { photo, bytes } => kept(app, (photo, bytes), now),
        PhotoTap::PutAway => app.photos.taking = None,
        PhotoTap::NotKept(why) => (app.photos.taking, app.photos.said) = (None, Some(why)),
        PhotoTap::Remove(photo) => {
            app.photos.said = None;
            app.order(&Command::Book(BookCommand::RemovePhoto { photo }), now);
        }
        PhotoTap::InCopy(wanted) => app.photos.left_out = !wanted,
        PhotoTap::Read(photos) => copies::with_photos(app, photos, now),
    }
}

fn take(app: &mut App, camera: bool) {
    app.photos.said = None;
    let Some(job) = app.jobs.open.filter(|_| app.which == Which::Own) else { return };
    if PHOTOS_MOST <= app.own.workshop().photos.of_job(job).count() {
        return app.refuse(Refusal::TooManyPhotos { most: PHOTOS_MOST });
    }
    app.photos.taking = Some(Taking::Job(job));
    app.orders.push(Order::TakePhoto { camera });
}

/// The picture is there: now its entry.
fn kept(app: &mut App, (photo, bytes): (Id, u64), now: Now) {
    let Some(of) = app.photos.taking.take() else { return };
    app.photos.here.get_or_insert_default().insert(photo, bytes);
    let in_hand = std::mem::replace(&mut app.which, Which::Own);
    let command = match of {
        Taking::Job(job) => BookCommand::TakePhoto { photo, job },
        Taking::Receipt(spending) => BookCommand::TakeReceipt { photo, spending },
    };
    app.order(&Command::Book(command), now);
    app.which = in_hand;
}

/// What the phone answers of photos: it is heard while a buyer looks, too.
pub fn answers(message: &Msg) -> bool {
    use PhotoTap::{Kept, NotKept, PutAway, Read};
    matches!(message, Msg::Photo(Kept { .. } | PutAway | NotKept(_) | Read(_)))
}

/// The photos the page shows: one to a buyer, all of a job to its maker.
fn showing(app: &App) -> Vec<Id> {
    if app.which != Which::Own {
        return vec![];
    }
    if let Some(job) = app.price.face {
        return app.own.workshop().photos.of_job(job).last().into_iter().listed();
    }
    let on_job = matches!((app.place, app.jobs.room, &app.jobs.draft, app.is_open), (Place::Jobs, Some(Room::Hours), None, true));
    if on_job || shows_costs(app) {
        let line = if on_job { app.jobs.opened } else { app.workshop.opened };
        return line.map(|line| app.own.workshop().photos.of_spending(line).collect()).unwrap_or_default();
    }
    let open = matches!((app.place, app.jobs.room, &app.jobs.draft), (Place::Jobs, None | Some(Room::Photos), None));
    let job = app.jobs.open.filter(|_| open && app.is_open);
    job.map(|job| app.own.workshop().photos.of_job(job).collect()).unwrap_or_default()
}

/// The page of costs of no job is open, where receipts are too.
fn shows_costs(app: &App) -> bool {
    app.place == Place::Workshop && matches!(app.workshop.over, Over::Costs)
}

/// After every message: pictures the page shows are read, those it shows no longer are given back.
pub fn follow(app: &mut App) {
    let wanted = showing(app);
    if wanted != app.photos.wanted {
        app.photos.shown = app.photos.shown.iter().filter(|(id, _)| wanted.contains(id)).map(|(id, url)| (*id, url.clone())).collect();
        app.photos.wanted.clone_from(&wanted);
        app.orders.push(Order::ShowPhotos(wanted));
    }
    let copies = app.place == Place::Workshop && matches!(app.workshop.over, Over::Copies | Over::Coming(_));
    let sizes = copies || app.place == Place::Jobs && app.jobs.room == Some(Room::Photos);
    if sizes && !app.photos.sizes && !self::wanted(app).is_empty() {
        app.orders.push(Order::LookAtPhotos);
    }
    let receipts = shows_costs(app) || app.place == Place::Jobs && app.jobs.room == Some(Room::Hours);
    if !sizes && !receipts {
        app.photos.said = None;
    }
    app.photos.sizes = sizes;
}

/// Every photo that is wanted in the maker's own book, with what could not be saved.
pub fn wanted(app: &App) -> Vec<Id> {
    app.own.workshop().photos.wanted().map(|photo| photo.id).listed()
}

/// How many of them are on this phone, their bytes, and how many are not; none before it was looked.
pub fn here(app: &App) -> Option<(usize, u64, usize)> {
    let (here, wanted) = (app.photos.here.as_ref()?, wanted(app));
    let sizes = wanted.iter().filter_map(|id| here.get(id).copied()).listed();
    let bytes = sizes.iter().fold(0, |sum: u64, size| sum.saturating_add(*size));
    Some((sizes.len(), bytes, wanted.len().saturating_sub(sizes.len())))
}

/// The photos of a copy that are wanted once it is in, and not here.
pub fn new(app: &App, coming: &Coming) -> InCopy {
    let is_new = |id: &Id| coming.wanted.contains(id) && app.photos.size(*id).is_none();
    coming.photos.iter().filter(|(id, _)| is_new(id)).map(|(id, photo)| (*id, photo.clone())).collect()
}

/// Of the photos wanted once a copy is in: how many the copy brings, and how many are in neither.
pub fn coming(app: &App, coming: &Coming) -> (usize, usize) {
    let lacking = coming.wanted.iter().filter(|id| app.photos.size(**id).is_none());
    let (brings, missing): (Vec<&Id>, Vec<&Id>) = lacking.partition(|id| coming.photos.contains_key(*id));
    (brings.len(), missing.len())
}

/// A copy was kept: pictures nobody wants are let go of. What a newer version wrote may want some that are unknown here.
pub fn sweep(app: &mut App) {
    let knows_all = app.own.book.newer().next().is_none() && app.own.failures() == 0;
    if knows_all && !app.photos.is_taking() {
        let wanted = wanted(app);
        app.orders.push(Order::SweepPhotos(wanted));
    }
}

#[cfg(test)]
mod tests;
