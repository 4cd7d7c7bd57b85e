//! Room on the device: asking the platform to keep the book for good, and how much is used.
use crate::phone::{has, window};
use js_sys::Promise;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{StorageEstimate, StorageManager};

/// The platform's answer to the wish that the book is kept for good.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// The platform clears it only when the person asks.
    ForGood,
    /// The platform may clear it when room is short.
    AsLongAsThereIsRoom,
    /// The platform can't be asked.
    NotSaid,
}

/// Bytes used and bytes there are, as far as the platform says.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Room {
    pub used: Option<u64>,
    pub given: Option<u64>,
}

/// Asks the platform to keep the book for good.
pub async fn persist() -> Kept {
    let Some(storage) = storage() else { return Kept::NotSaid };
    said(storage.persist()).await
}

/// Whether the platform keeps the book for good already; asks for nothing.
pub async fn persisted() -> Kept {
    let Some(storage) = storage() else { return Kept::NotSaid };
    said(storage.persisted()).await
}

/// How much room is used and given.
pub async fn estimate() -> Room {
    let Some(asked) = storage().and_then(|s| s.estimate().ok()) else { return Room::default() };
    let Ok(found) = JsFuture::from(asked).await else { return Room::default() };
    let found: StorageEstimate = found.unchecked_into();
    Room { used: found.get_usage().map(|bytes| bytes as u64), given: found.get_quota().map(|bytes| bytes as u64) }
}

fn storage() -> Option<StorageManager> {
    let navigator = window()?.navigator();
    has(&navigator, "storage").then(|| navigator.storage())
}

async fn said(asked: Result<Promise, JsValue>) -> Kept {
    let Ok(asked) = asked else { return Kept::NotSaid };
    match JsFuture::from(asked).await.ok().and_then(|yes| yes.as_bool()) {
        Some(true) => Kept::ForGood,
        Some(false) => Kept::AsLongAsThereIsRoom,
        None => Kept::NotSaid,
    }
}
