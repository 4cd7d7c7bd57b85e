//! The spare: the book's lines once more, in the browser's store of fetched files, which stands apart from its databases.
//!
//! A browser may throw a whole database away without a word: Chromium does so at the second start after it was killed in the middle of a
//! write. Nothing here is ever fetched; the addresses are names. Only this file knows that store, beside the shell's own worker.
use super::store::Aside;
use super::{has, window};
use fivebar_core::quantity::Listed;
use js_sys::{Array, JSON, Promise};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Cache, CacheStorage, Request, Response};

const NAME: &str = "fivebar-spare";
const ALL: &str = "/fivebar-spare/all/";
const SHEET: &str = "/fivebar-spare/sheet/";
const NAMES: &str = "/fivebar-spare/names";
const ASIDE: &str = "/fivebar-spare/aside";
/// Places on a sheet: as much as is written once more with each line.
pub const PLACES: u64 = 50;
/// So many loose sheets are worth one binding.
const SHEETS_MOST: usize = 40;
/// A platform that never answers must not keep a line from being saved.
const PATIENCE_MS: i32 = 2_000;
/// Nor the book from being deleted, which may take longer.
const TO_REMOVE_MS: i32 = 10_000;
/// A book that is further than so many places goes on is bound, not brought up sheet by sheet.
pub const AT_ONCE: u64 = 500;

/// The open spare.
pub struct Spare(Cache);

/// What it holds: lines in order of arrival, some perhaps twice, names with what lies beside them, and what was set aside, with the reason.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Held {
    pub lines: Vec<String>,
    pub names: Vec<(String, String)>,
    pub aside: Vec<Aside>,
    /// Something lies there that could not be read.
    pub broken: bool,
    /// It did not answer in time, or was refused: it may be read another day.
    pub late: bool,
}

/// How far it goes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Extent {
    /// The place up to which all is bound; none where nothing is.
    bound: Option<u64>,
    sheets: Vec<u64>,
    /// The place of its last line; 0 where there is none.
    pub last: u64,
    /// The lines of its last sheet.
    pub tail: Vec<String>,
    /// Its last sheet can't be read: it goes to its first place, for all that is known.
    torn: bool,
}

impl Extent {
    /// Whether it is to be bound anew to hold what the book holds up to `last`.
    pub fn wants_binding(&self, last: u64) -> bool {
        let is_far = self.last.saturating_add(AT_ONCE) < last || last < self.last;
        is_far || self.torn || (self.bound.is_none() && 0 < last) || SHEETS_MOST < self.sheets.len() || self.has_gap()
    }

    /// A sheet lacks between what is bound and the last.
    fn has_gap(&self) -> bool {
        let from = self.bound.unwrap_or_default() / PLACES;
        let after = self.sheets.iter().filter(|number| from <= **number);
        after.zip(from..).any(|(number, due)| *number != due)
    }
}

impl Held {
    fn take(&mut self, name: &str, piece: &Array) {
        let all = |from: usize| texts(piece, from);
        match () {
            () if after(name, ALL).is_some() => self.lines.extend(all(0)),
            () if after(name, SHEET).is_some() => self.lines.extend(all(1)),
            () if name.ends_with(NAMES) => {
                self.names = all(0).listed().chunks_exact(2).filter_map(|of| Some((of.first()?.clone(), of.last()?.clone()))).listed();
            }
            () if name.ends_with(ASIDE) => {
                let of = |of: &[String]| Some(Aside { id: of.first()?.clone(), line: of.get(1)?.clone(), why: of.last()?.clone() });
                self.aside = all(0).listed().chunks_exact(3).filter_map(of).listed();
            }
            () => {}
        }
    }
}

impl Spare {
    /// Opens it; none where the browser has no such store.
    pub async fn open() -> Option<Spare> {
        Some(Spare(answer(caches()?.open(NAME)).await.ok()?.unchecked_into()))
    }

    /// Removes all of it, for good.
    ///
    /// # Errors
    /// What the browser threw, or that it did not answer.
    pub async fn remove() -> Result<(), JsValue> {
        let Some(caches) = caches() else { return Ok(()) };
        within(TO_REMOVE_MS, caches.delete(NAME)).await.map(drop)
    }

    /// How far it goes.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn extent(&self) -> Result<Extent, JsValue> {
        let mut extent = Extent::default();
        for name in self.names().await? {
            if let Some(to) = after(&name, ALL) {
                extent.bound = extent.bound.max(Some(to));
            }
            extent.sheets.extend(after(&name, SHEET));
        }
        extent.sheets.sort_unstable();
        let loose = match extent.sheets.last() {
            Some(last) => {
                let sheet = self.text(&format!("{SHEET}{last}")).await?.unwrap_or_default();
                extent.tail = texts(&sheet, 1).listed();
                let to = sheet.get(0).as_string().and_then(|place| place.parse().ok());
                extent.torn = to.is_none();
                to.or(Some(last.saturating_mul(PLACES).saturating_add(1)))
            }
            None => None,
        };
        extent.last = extent.bound.max(loose).unwrap_or_default();
        Ok(extent)
    }

    /// Keeps one sheet: the lines at the places after `number` times `PLACES`, of which the last stands at `to`.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn put_sheet(&self, number: u64, to: u64, lines: impl Iterator<Item = &str>) -> Result<(), JsValue> {
        let text: Array = std::iter::once(JsValue::from(to.to_string())).chain(lines.map(JsValue::from)).collect();
        self.put(&format!("{SHEET}{number}"), &text).await
    }

    /// Binds all lines up to the place `to` into one, and lets go of what is bound in it.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn bind(&self, to: u64, lines: impl Iterator<Item = &str>) -> Result<(), JsValue> {
        let before = self.names().await?;
        let bound = format!("{ALL}{to}");
        self.put(&bound, &lines.map(JsValue::from).collect()).await?;
        let gone = |name: &&String| match (after(name, ALL), after(name, SHEET)) {
            (Some(other), _) => other < to,
            // a sheet that goes on after `to` may be written on at this moment
            (_, Some(number)) => number.saturating_add(1).saturating_mul(PLACES) <= to,
            _ => false,
        };
        for name in before.iter().filter(gone) {
            answer(self.0.delete_with_str(name)).await?;
        }
        Ok(())
    }

    /// Keeps the names as they are now; those before are gone.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn put_names(&self, names: &[(String, String)]) -> Result<(), JsValue> {
        self.put(NAMES, &names.iter().flat_map(|(id, line)| [JsValue::from(id), JsValue::from(line)]).collect()).await
    }

    /// Keeps what is set aside in the book.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn put_aside(&self, aside: &[Aside]) -> Result<(), JsValue> {
        self.put(ASIDE, &aside.iter().flat_map(|it| [&it.id, &it.line, &it.why].map(JsValue::from)).collect()).await
    }

    /// All it holds that can be read.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn held(&self) -> Result<Held, JsValue> {
        let mut held = Held::default();
        let mut names = self.names().await?;
        names.sort_unstable_by_key(|name| (after(name, SHEET), after(name, ALL)));
        for name in names {
            let piece = self.text(&name).await;
            held.late |= piece.is_err();
            match piece {
                Ok(Some(piece)) => held.take(&name, &piece),
                Ok(None) | Err(_) => held.broken = true,
            }
        }
        Ok(held)
    }

    /// What lies beside its lines; nothing where it can't be read any more.
    ///
    /// # Errors
    /// What the browser threw, or that it did not answer: it may be read another day.
    pub async fn beside(&self) -> Result<Held, JsValue> {
        let mut held = Held::default();
        for name in [NAMES, ASIDE] {
            let piece = self.text(name).await?;
            held.take(name, &piece.unwrap_or_default());
        }
        Ok(held)
    }

    async fn put(&self, name: &str, text: &Array) -> Result<(), JsValue> {
        let text = JSON::stringify(text)?.as_string();
        answer(self.0.put_with_str(name, &Response::new_with_opt_str(text.as_deref())?)).await.map(drop)
    }

    /// What was put under a name: empty where there is nothing, none where it is no text of ours.
    async fn text(&self, name: &str) -> Result<Option<Array>, JsValue> {
        let found = answer(self.0.match_with_str(name)).await?;
        if !found.is_object() {
            return Ok(Some(Array::new()));
        }
        let text = answer(found.unchecked_into::<Response>().text()?).await?;
        Ok(JSON::parse(&text.as_string().unwrap_or_default()).ok().map(JsCast::unchecked_into))
    }

    async fn names(&self) -> Result<Vec<String>, JsValue> {
        let asked: Array = answer(self.0.keys()).await?.unchecked_into();
        Ok(asked.iter().map(|asked| asked.unchecked_into::<Request>().url()).listed())
    }
}

/// The number after this part of a name.
fn after(name: &str, part: &str) -> Option<u64> {
    name.split_once(part)?.1.parse().ok()
}

fn texts(array: &Array, from: usize) -> impl Iterator<Item = String> {
    array.to_vec().into_iter().skip(from).filter_map(|text| text.as_string())
}

fn caches() -> Option<CacheStorage> {
    let window = window()?;
    if has(&window, "caches") { window.caches().ok() } else { None }
}

/// The platform's answer, if it comes in time.
async fn answer(asked: Promise) -> Result<JsValue, JsValue> {
    within(PATIENCE_MS, asked).await
}

async fn within(patience_ms: i32, asked: Promise) -> Result<JsValue, JsValue> {
    let late = Promise::new(&mut |_, reject| {
        if let Some(window) = window() {
            let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&reject, patience_ms);
        }
    });
    JsFuture::from(Promise::race(&Array::of2(&asked, &late))).await
}
