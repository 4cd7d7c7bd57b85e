//! Reading: the whole book or what came after a place, in pages, so that a big book never makes one huge answer.
use super::open::answer;
use super::shelf::{self, Kept};
use super::write::MERGED;
use super::{Aside, Binding, Row, Store, Trouble};
use fivebar_core::quantity::Listed;
use js_sys::Array;
use wasm_bindgen::prelude::*;
use web_sys::{IdbCursor, IdbCursorDirection, IdbKeyRange, IdbObjectStore};

const PAGE: u32 = 20_000;

/// All that lies on the shelves of a book.
#[derive(Clone, Debug, Default)]
pub struct Whole {
    pub binding: Binding,
    /// The rows that came after what is bound.
    pub loose: Vec<Row>,
    meta: Vec<(String, String)>,
    pub people: Vec<(String, String)>,
    pub aside: Vec<Aside>,
}

impl Whole {
    /// The place of the last entry; 0 where there is none.
    pub fn last(&self) -> u64 {
        self.loose.last().map_or(self.binding.to(), |row| row.seq)
    }

    /// What the phone remembers beside the book under `key`.
    pub fn meta(&self, key: &str) -> Option<&str> {
        self.meta.iter().find(|(own, _)| own == key).map(|(_, value)| &**value)
    }

    /// A new binding of it all, where so many lines are loose that it is worth one.
    pub fn to_bind(&self) -> Option<Binding> {
        self.binding.with(&self.loose)
    }
}

impl Store {
    pub(super) async fn read_whole(&self) -> Result<Whole, Trouble> {
        let work = self.begin("readonly").await?;
        let entries = work.object_store(shelf::ENTRIES)?;
        let asked = |name: &str| Ok::<_, Trouble>(answer(&work.object_store(name)?.get_all()?));
        let (count, meta, people, aside) = (answer(&entries.count()?), asked(shelf::META)?, asked(shelf::PEOPLE)?, asked(shelf::ASIDE)?);
        let (meta, people, aside) = (kept(meta.await?), kept(people.await?), kept(aside.await?));
        let all = count.await?.as_f64().unwrap_or_default() as usize;
        let (binding, loose) = binding_and_loose(&entries, Binding::among(meta.iter()).unwrap_or_default(), all).await?;
        Ok(Whole {
            binding,
            loose,
            meta: meta.iter().map(Kept::key_and_value).listed(),
            people: people.iter().map(Kept::id_and_line).listed(),
            aside: aside.iter().map(set_aside).listed(),
        })
    }

    pub(super) async fn rows_at_the_end(&self, most: u64) -> Result<Vec<Row>, Trouble> {
        let work = self.begin("readonly").await?;
        let entries = work.object_store(shelf::ENTRIES)?;
        let newest = answer(&entries.open_key_cursor_with_range_and_direction(&JsValue::UNDEFINED, IdbCursorDirection::Prev)?);
        let merged = answer(&work.object_store(shelf::META)?.get(&MERGED.into())?);
        let (newest, merged) = (newest.await?, merged.await?);
        let Ok(newest) = newest.dyn_into::<IdbCursor>() else { return Ok(vec![]) };
        let last = newest.key()?.as_f64().unwrap_or_default() as u64;
        let merged = merged.is_object().then(|| merged.unchecked_into::<Kept>().key_and_value().1);
        let merged = merged.map_or(0, |place| place.parse().unwrap_or(u64::MAX));
        rows_from(&entries, last.saturating_sub(most).max(merged), true).await
    }

    pub(super) async fn rows_after(&self, seq: u64) -> Result<Vec<Row>, Trouble> {
        rows_from(&self.shelf(shelf::ENTRIES).await?, seq, true).await
    }

    pub(super) async fn value(&self, key: &str) -> Result<Option<String>, Trouble> {
        let found = answer(&self.shelf(shelf::META).await?.get(&key.into())?).await?;
        Ok(found.is_object().then(|| found.unchecked_into::<Kept>().key_and_value().1))
    }

    pub(super) async fn names(&self) -> Result<Vec<(String, String)>, Trouble> {
        Ok(kept(answer(&self.shelf(shelf::PEOPLE).await?.get_all()?).await?).iter().map(Kept::id_and_line).listed())
    }

    pub(super) async fn damaged(&self) -> Result<Vec<Aside>, Trouble> {
        Ok(kept(answer(&self.shelf(shelf::ASIDE).await?.get_all()?).await?).iter().map(set_aside).listed())
    }

    async fn shelf(&self, name: &str) -> Result<IdbObjectStore, Trouble> {
        Ok(self.begin("readonly").await?.object_store(name)?)
    }
}

/// What is bound and what came after it; all rows where the binding does not fit them.
async fn binding_and_loose(entries: &IdbObjectStore, binding: Binding, all: usize) -> Result<(Binding, Vec<Row>), Trouble> {
    if binding != Binding::default() {
        let mut rows = rows_from(entries, binding.to(), false).await?;
        if binding.fits(&rows, all) {
            rows.remove(0);
            return Ok((binding, rows));
        }
    }
    Ok((Binding::default(), rows_from(entries, 0, true).await?))
}

/// The rows from a place on, or after it.
async fn rows_from(entries: &IdbObjectStore, seq: u64, after: bool) -> Result<Vec<Row>, Trouble> {
    let (mut rows, mut last, mut after) = (vec![], seq, after);
    loop {
        let range = IdbKeyRange::lower_bound_with_open(&(last as f64).into(), after)?;
        let page = Array::from(&answer(&entries.get_all_with_key_and_limit(&range, PAGE)?).await?);
        rows.extend(super::rows::rows(&page));
        (last, after) = (rows.last().map_or(last, |row: &Row| row.seq), true);
        if page.length() < PAGE {
            return Ok(rows);
        }
    }
}

fn kept(found: JsValue) -> Vec<Kept> {
    Array::from(&found).iter().map(JsValue::unchecked_into).listed()
}

fn set_aside(kept: &Kept) -> Aside {
    let (id, line) = kept.id_and_line();
    Aside { id, line, why: kept.reason() }
}
