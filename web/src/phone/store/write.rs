//! Writing: one posting is one transaction with strict durability, and saved when `complete` was heard.
use super::open::answer;
use super::posting::{Sorted, sort};
use super::rows::rows;
use super::shelf::{self, Kept, record};
use super::{Line, Posted, Posting, Store, Trouble};
use crate::phone::ears::first_of;
use js_sys::Array;
use std::collections::HashMap;
use wasm_bindgen::prelude::*;
use web_sys::{IdbCursorDirection, IdbCursorWithValue, IdbTransaction};

/// Under it lies the place up to which lines of other phones may be among the entries.
pub(super) const MERGED: &str = "merged";

/// What to do with an entry whose id is in the book with other bytes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Differing {
    Refuse,
    SetAside,
}

impl Store {
    /// Writes a posting. A book that was lost on the way is opened again and the write tried once more:
    /// what was saved the first time after all is found there and skipped.
    pub(super) async fn post(&self, posting: &Posting, differing: Differing) -> Result<Posted, Trouble> {
        match self.post_once(posting, differing).await {
            Err(Trouble::Lost) => self.open.take(),
            Err(Trouble::Aborted) if self.open.borrow().is_none() => None,
            done => return done,
        };
        self.post_once(posting, differing).await
    }

    async fn post_once(&self, posting: &Posting, differing: Differing) -> Result<Posted, Trouble> {
        let work = self.begin("readwrite").await?;
        let ended = first_of(&work, &["complete", "abort"]);
        let posted = match fill(&work, posting, differing).await {
            Ok(posted) => posted,
            Err(trouble) => {
                let _ = work.abort(); // what was added before must not stay
                return Err(cause(&work).unwrap_or(trouble));
            }
        };
        match ended.await.type_().as_str() {
            "complete" => Ok(posted),
            _ => Err(cause(&work).unwrap_or(Trouble::Aborted)),
        }
    }
}

/// Why the platform took the transaction back, if it says.
pub(super) fn cause(work: &IdbTransaction) -> Option<Trouble> {
    work.error().map(|e| JsValue::from(e).into())
}

async fn fill(work: &IdbTransaction, posting: &Posting, differing: Differing) -> Result<Posted, Trouble> {
    let sorted = sort(&posting.entries, known(work, &posting.entries).await?);
    if super::closed() {
        return Err(Trouble::Stopped);
    }
    if differing == Differing::Refuse && !sorted.differing.is_empty() {
        return Err(Trouble::Known);
    }
    let last = add_entries(work, &sorted).await?;
    put_beside(work, posting, &sorted)?;
    if differing == Differing::SetAside {
        work.object_store(shelf::META)?.put(&record(&[("key", MERGED), ("value", &last.to_string())])?)?;
    }
    Ok(Posted { last, added: sorted.new.len(), already: sorted.already, differing: sorted.differing.len() })
}

/// Of the ids of `lines`, those in the book, with their lines.
async fn known(work: &IdbTransaction, lines: &[Line]) -> Result<HashMap<String, String>, Trouble> {
    let entries = work.object_store(shelf::ENTRIES)?;
    if lines.len() > 64 {
        let all = Array::from(&answer(&entries.get_all()?).await?);
        return Ok(rows(&all).into_iter().map(|row| (row.id, row.line)).collect());
    }
    let by_id = entries.index(shelf::BY_ID)?;
    let asked: Vec<_> = lines.iter().map(|(id, _)| Ok(answer(&by_id.get(&id.as_str().into())?))).collect::<Result<_, JsValue>>()?;
    let mut known = HashMap::new();
    for found in asked {
        let found = found.await?;
        if found.is_object() {
            known.extend([found.unchecked_into::<Kept>().id_and_line()]);
        }
    }
    Ok(known)
}

/// Adds the new entries; answers with the place of the last one in the book.
async fn add_entries(work: &IdbTransaction, sorted: &Sorted) -> Result<u64, Trouble> {
    let entries = work.object_store(shelf::ENTRIES)?;
    for (id, line) in &sorted.new {
        entries.add(&record(&[("id", id), ("line", line)])?)?;
    }
    let newest = entries.open_cursor_with_range_and_direction(&JsValue::UNDEFINED, IdbCursorDirection::Prev)?;
    let found = answer(&newest).await?;
    Ok(if found.is_object() { found.unchecked_into::<IdbCursorWithValue>().key()?.as_f64().unwrap_or_default() as u64 } else { 0 })
}

/// What lies beside the entries: meta, names, and damaged bytes.
fn put_beside(work: &IdbTransaction, posting: &Posting, sorted: &Sorted) -> Result<(), Trouble> {
    let (meta, people, aside) = (work.object_store(shelf::META)?, work.object_store(shelf::PEOPLE)?, work.object_store(shelf::ASIDE)?);
    for (key, value) in &posting.meta {
        meta.put(&record(&[("key", key), ("value", value)])?)?;
    }
    for (id, line) in &posting.people {
        people.put(&record(&[("id", id), ("line", line)])?)?;
    }
    for id in &posting.forgotten {
        people.delete(&id.as_str().into())?;
    }
    let differing = sorted.differing.iter().map(|(id, line)| (id, line, "same id, other bytes"));
    let damaged = posting.aside.iter().map(|a| (&a.id, &a.line, a.why.as_str()));
    for (id, line, why) in differing.chain(damaged) {
        aside.add(&record(&[("id", id), ("line", line), ("why", why)])?)?;
    }
    Ok(())
}
