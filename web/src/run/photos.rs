//! Photos on the phone: the picture is kept before its entry is written.

use super::{Run, this_moment, with};
use crate::app::Msg;
use crate::app::news::{News, Trouble};
use crate::app::photos::{NoPhoto, PhotoTap};
use crate::phone::store::pictures;
use crate::phone::{later, photo};
use fivebar_core::ledger::line::document::{Photo, Photos};
use fivebar_core::quantity::{Id, Listed};

impl Run {
    pub fn take_photo(&self, camera: bool) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let tap = match photo::take(camera).await {
                Ok(Some(picture)) => kept(picture).await,
                Ok(None) => PhotoTap::PutAway,
                Err(()) => PhotoTap::NotKept(NoPhoto::Unread),
            };
            with(&me, |run| run.heard(Msg::Photo(tap)));
        }));
    }

    /// What shows already keeps its address.
    pub fn show_photos(&self, ids: Vec<Id>) {
        let to_read = self.shown.want(&ids);
        if ids.is_empty() {
            return;
        }
        let me = self.me.clone();
        later(Box::pin(async move {
            let found = pictures::read(&texts(&to_read)).await.unwrap_or_default(); // those that can't be read are said to be missing
            with(&me, |run| {
                for (id, picture) in found.iter().filter_map(|(id, picture)| Some((Id::read(id)?, picture))) {
                    run.shown.add(id, picture);
                }
                run.told(News::PhotosShown(run.shown.all()));
            });
        }));
    }

    pub fn look_at_photos(&self) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let Ok(here) = pictures::sizes().await else { return }; // their sizes stay unsaid
            let here = here.into_iter().filter_map(|(id, bytes)| Some((Id::read(&id)?, bytes))).listed();
            with(&me, |run| run.told(News::PhotosHere(here)));
        }));
    }

    pub fn read_photos(&self, ids: Vec<Id>) {
        let me = self.me.clone();
        later(Box::pin(async move {
            let read = pictures::read(&texts(&ids)).await.map_err(|trouble| super::books::said(&trouble));
            let read = read.map(|found| {
                let photo = |picture: photo::Picture| Photo::of(picture.kind, picture.sha256, &picture.bytes);
                found.into_iter().filter_map(|(id, picture)| Some((Id::read(&id)?, photo(picture)))).collect::<Photos>()
            });
            with(&me, |run| run.heard(Msg::Photo(PhotoTap::Read(read))));
        }));
    }

    pub fn sweep_photos(&self, wanted: Vec<Id>) {
        later(Box::pin(async move {
            let _ = pictures::keep_only(&texts(&wanted)).await; // what stays goes at the next copy
        }));
    }
}

async fn kept(picture: photo::Picture) -> PhotoTap {
    let now = this_moment();
    let (id, bytes) = (Id::new(now.wall.at, now.chance), picture.bytes.len() as u64);
    match pictures::keep(&[(id.to_string(), picture)]).await {
        Ok(()) => PhotoTap::Kept { photo: id, bytes },
        Err(trouble) => PhotoTap::NotKept(NoPhoto::NotKept(super::books::said(&trouble))),
    }
}

/// Keeps the photos of a copy that are whole; one whose sum does not hold is left out, and said to be missing.
pub async fn bring_in(photos: Photos) -> Result<(), Trouble> {
    let mut whole = vec![];
    for (id, photo) in photos.iter() {
        let Some(bytes) = photo.bytes() else { continue };
        if photo::sha256(&bytes).await.as_ref() == Some(&photo.sha256) {
            whole.push((id.to_string(), photo::Picture { kind: photo.kind.clone(), sha256: photo.sha256.clone(), bytes }));
        }
    }
    if whole.is_empty() {
        return Ok(());
    }
    pictures::keep(&whole).await.map_err(|trouble| super::books::said(&trouble))
}

fn texts(ids: &[Id]) -> Vec<String> {
    ids.iter().map(|id| id.to_string()).listed()
}
