//! Reading: the whole book or what came after a place, in pages, so that a big book never makes one huge answer.
use super::open::answer;
use super::shelf::{self, Kept};
use super::{Aside, Row, Store, Trouble};
use js_sys::Array;
use wasm_bindgen::prelude::*;
use web_sys::{IdbKeyRange, IdbObjectStore};

const PAGE: u32 = 20_000;

impl Store {
    pub(super) async fn rows_after(&self, seq: u64) -> Result<Vec<Row>, Trouble> {
        let entries = self.shelf(shelf::ENTRIES).await?;
        let (mut rows, mut last) = (vec![], seq);
        loop {
            let range = IdbKeyRange::lower_bound_with_open(&(last as f64).into(), true)?;
            let page = Array::from(&answer(&entries.get_all_with_key_and_limit(&range, PAGE)?).await?);
            rows.extend(super::rows::rows(&page));
            last = rows.last().map_or(last, |row: &Row| row.seq);
            if page.length() < PAGE {
                return Ok(rows);
            }
        }
    }

    pub(super) async fn value(&self, key: &str) -> Result<Option<String>, Trouble> {
        let found = answer(&self.shelf(shelf::META).await?.get(&key.into())?).await?;
        Ok(found.is_object().then(|| found.unchecked_into::<Kept>().key_and_value().1))
    }

    pub(super) async fn names(&self) -> Result<Vec<(String, String)>, Trouble> {
        let found = Array::from(&answer(&self.shelf(shelf::PEOPLE).await?.get_all()?).await?);
        Ok(found.iter().map(|kept| kept.unchecked_into::<Kept>().id_and_line()).collect())
    }

    pub(super) async fn damaged(&self) -> Result<Vec<Aside>, Trouble> {
        let found = Array::from(&answer(&self.shelf(shelf::ASIDE).await?.get_all()?).await?);
        Ok(found.iter().map(aside).collect())
    }

    async fn shelf(&self, name: &str) -> Result<IdbObjectStore, Trouble> {
        Ok(self.begin("readonly").await?.object_store(name)?)
    }
}

fn aside(kept: JsValue) -> Aside {
    let kept: Kept = kept.unchecked_into();
    let (id, line) = kept.id_and_line();
    Aside { id, line, why: kept.reason() }
}
