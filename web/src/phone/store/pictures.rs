//! Pictures of photos: a database of their own beside the book's, so that a write of the book stays as small as it was.
//!
//! It is opened for each act and let go of after it. A picture is never replaced.
use super::open::{answer, begin_on, factory};
use super::{Trouble, closed};
use crate::phone::ears::{Ear, first_of};
use crate::phone::photo::Picture;
use js_sys::{Array, Object, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;
use web_sys::{Event, IdbDatabase, IdbObjectStoreParameters, IdbOpenDbRequest, IdbTransaction};

/// The database beside the maker's book.
pub const PHOTOS: &str = "fivebar-photos";
const PICTURES: &str = "pictures";
/// How many bytes each has: to say so, no picture need be read.
const SIZES: &str = "sizes";

/// An open database; it is let go of when it is dropped.
struct Held(IdbDatabase);

impl Drop for Held {
    fn drop(&mut self) {
        self.0.close();
    }
}

impl Held {
    async fn open() -> Result<Held, Trouble> {
        let request = factory()?.open_with_u32(PHOTOS, 1)?;
        let _upgrade = Ear::new(&request, "upgradeneeded", upgrade);
        Ok(Held(answer(&request).await?.unchecked_into()))
    }

    fn begin(&self, mode: &str) -> Result<IdbTransaction, Trouble> {
        let both: Array = [PICTURES, SIZES].into_iter().map(JsValue::from).collect();
        Ok(begin_on(&self.0, &both, mode)?)
    }
}

fn upgrade(event: Event) {
    let Some(db) = event.target().and_then(|t| t.unchecked_into::<IdbOpenDbRequest>().result().ok()) else { return };
    let by_id = IdbObjectStoreParameters::new();
    by_id.set_key_path(&"id".into());
    for name in [PICTURES, SIZES] {
        let _ = db.unchecked_ref::<IdbDatabase>().create_object_store_with_optional_parameters(name, &by_id);
    }
}

/// Keeps those that are not there yet, all or none.
///
/// # Errors
/// Why none was kept.
pub async fn keep(pictures: &[(String, Picture)]) -> Result<(), Trouble> {
    change(async |work| {
        let known = keys(work).await?;
        for (id, picture) in pictures.iter().filter(|(id, _)| !known.contains(id)) {
            let bytes = Uint8Array::from(&*picture.bytes).into();
            let row = [("id", id.into()), ("type", (&picture.kind).into()), ("sha256", (&picture.sha256).into()), ("bytes", bytes)];
            work.object_store(PICTURES)?.put(&record(row)?)?;
            let size = [("id", id.into()), ("size", (picture.bytes.len() as f64).into())];
            work.object_store(SIZES)?.put(&record(size)?)?;
        }
        Ok(())
    })
    .await
}

/// Lets go of all but these.
///
/// # Errors
/// Why none was let go of.
pub async fn keep_only(ids: &[String]) -> Result<(), Trouble> {
    change(async |work| {
        for id in keys(work).await?.iter().filter(|id| !ids.contains(id)) {
            for name in [PICTURES, SIZES] {
                work.object_store(name)?.delete(&id.into())?;
            }
        }
        Ok(())
    })
    .await
}

/// Every picture that is here, with its size in bytes.
///
/// # Errors
/// Why they could not be read.
pub async fn sizes() -> Result<Vec<(String, u64)>, Trouble> {
    let held = Held::open().await?;
    let rows = Array::from(&answer(&held.begin("readonly")?.object_store(SIZES)?.get_all()?).await?);
    let size = |row: &JsValue| member(row, "size").as_f64().unwrap_or_default() as u64;
    Ok(rows.iter().map(|row| (text(&row, "id"), size(&row))).collect())
}

/// Those of these that are here.
///
/// # Errors
/// Why they could not be read.
pub async fn read(ids: &[String]) -> Result<Vec<(String, Picture)>, Trouble> {
    let held = Held::open().await?;
    let work = held.begin("readonly")?;
    let mut found = vec![];
    for id in ids {
        let row = answer(&work.object_store(PICTURES)?.get(&id.into())?).await?;
        if row.is_object() {
            let bytes = Uint8Array::new(&member(&row, "bytes")).to_vec();
            found.push((id.clone(), Picture { kind: text(&row, "type"), sha256: text(&row, "sha256"), bytes }));
        }
    }
    Ok(found)
}

/// Removes all of them, for good.
///
/// # Errors
/// Why they could not be removed.
pub async fn delete() -> Result<(), Trouble> {
    answer(&factory()?.delete_database(PHOTOS)?.into()).await.map(drop)
}

/// One transaction: all of it, or nothing.
async fn change(act: impl AsyncFnOnce(&IdbTransaction) -> Result<(), Trouble>) -> Result<(), Trouble> {
    if closed() {
        return Err(Trouble::Stopped);
    }
    let held = Held::open().await?;
    let work = held.begin("readwrite")?;
    let ended = first_of(&work, &["complete", "abort"]);
    if let Err(trouble) = act(&work).await {
        let _ = work.abort();
        return Err(super::write::cause(&work).unwrap_or(trouble));
    }
    match ended.await.type_().as_str() {
        "complete" => Ok(()),
        _ => Err(super::write::cause(&work).unwrap_or(Trouble::Aborted)),
    }
}

async fn keys(work: &IdbTransaction) -> Result<Vec<String>, Trouble> {
    let keys = answer(&work.object_store(SIZES)?.get_all_keys()?).await?;
    Ok(Array::from(&keys).iter().filter_map(|key| key.as_string()).collect())
}

fn record<const N: usize>(members: [(&str, JsValue); N]) -> Result<JsValue, JsValue> {
    let made = Object::new();
    for (name, value) in members {
        Reflect::set(&made, &name.into(), &value)?;
    }
    Ok(made.into())
}

fn member(row: &JsValue, name: &str) -> JsValue {
    Reflect::get(row, &name.into()).unwrap_or_default()
}

fn text(row: &JsValue, name: &str) -> String {
    member(row, name).as_string().unwrap_or_default()
}
