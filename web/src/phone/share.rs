//! Hands a file on: by the phone's share sheet where it takes files, else as a download.
//!
//! `.json` is tried first, then the same text as `.txt`, since some sheets refuse the former.
use super::{document, has, name_of, window};
use js_sys::{Array, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, Url};

#[wasm_bindgen]
extern "C" {
    // The same calls as web-sys's, but a platform that lacks them or throws is heard.
    type Sheet;
    #[wasm_bindgen(method, catch, js_name = canShare)]
    fn can_share(this: &Sheet, data: &Object) -> Result<bool, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn share(this: &Sheet, data: &Object) -> Result<Promise, JsValue>;
    type Clipboard;
    #[wasm_bindgen(method, catch, js_name = writeText)]
    fn write_text(this: &Clipboard, text: &str) -> Result<Promise, JsValue>;
}

/// What kind of file is handed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// A copy of the book.
    Copy,
    /// A table of rows and columns.
    Table,
    /// Dates for a calendar.
    Calendar,
    Text,
}

impl Paper {
    /// The endings and types to try, in order.
    fn forms(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Paper::Copy => &[("json", "application/json"), ("txt", "text/plain")],
            Paper::Table => &[("csv", "text/csv"), ("txt", "text/plain")],
            Paper::Calendar => &[("ics", "text/calendar")],
            Paper::Text => &[("txt", "text/plain")],
        }
    }
}

/// What became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Handed {
    /// The share sheet took the file of this name.
    Shared(String),
    /// The person put the share sheet away; nothing was handed on.
    PutAway,
    /// The browser was given the file of this name to keep; where, it does not say.
    Downloaded(String),
    /// Neither way is there.
    NoWay,
}

/// Hands `text` on as a file called `name`, without its ending. Call it from a tap, or the sheet stays shut.
pub async fn hand_on(paper: Paper, name: &str, text: &str) -> Handed {
    for (ending, kind) in paper.forms() {
        let name = format!("{name}.{ending}");
        match by_sheet(&name, kind, text).await {
            Ok(()) => return Handed::Shared(name),
            Err(Refusal::PutAway) => return Handed::PutAway,
            Err(Refusal::NotThis) => {}
        }
    }
    download(paper, name, text)
}

/// Gives `text` to the browser as a file to keep, whatever the share sheet could do.
pub fn download(paper: Paper, name: &str, text: &str) -> Handed {
    let (ending, kind) = paper.forms()[0];
    let name = format!("{name}.{ending}");
    let given = blob(kind, text).and_then(|blob| click_on(&name, &blob));
    given.map_or(Handed::NoWay, |()| Handed::Downloaded(name))
}

/// Copies `text` so that it can be pasted elsewhere; says whether the phone took it.
pub async fn copy_as_text(text: &str) -> bool {
    let Some(navigator) = window().map(|w| w.navigator()) else { return false };
    let Ok(board) = Reflect::get(&navigator, &"clipboard".into()) else { return false };
    if !board.is_object() {
        return false;
    }
    match board.unchecked_into::<Clipboard>().write_text(text) {
        Ok(asked) => JsFuture::from(asked).await.is_ok(),
        Err(_) => false,
    }
}

enum Refusal {
    PutAway,
    NotThis,
}

async fn by_sheet(name: &str, kind: &str, text: &str) -> Result<(), Refusal> {
    let (sheet, data) = sheet_for(name, kind, text).ok_or(Refusal::NotThis)?;
    let asked = sheet.share(&data).map_err(refused)?;
    JsFuture::from(asked).await.map(|_| ()).map_err(refused)
}

/// The share sheet and what to give it, if it says that it takes this file.
fn sheet_for(name: &str, kind: &str, text: &str) -> Option<(Sheet, Object)> {
    let navigator = window()?.navigator();
    if !has(&navigator, "share") || !has(&navigator, "canShare") {
        return None;
    }
    let form = FilePropertyBag::new();
    form.set_type(kind);
    let file = File::new_with_str_sequence_and_options(&Array::of1(&text.into()), name, &form).ok()?;
    let data = Object::new();
    Reflect::set(&data, &"files".into(), &Array::of1(&file)).ok()?;
    let sheet: Sheet = JsValue::from(navigator).unchecked_into();
    sheet.can_share(&data).unwrap_or(false).then_some((sheet, data))
}

fn refused(thrown: JsValue) -> Refusal {
    if name_of(&thrown) == "AbortError" { Refusal::PutAway } else { Refusal::NotThis }
}

fn blob(kind: &str, text: &str) -> Option<Blob> {
    let form = BlobPropertyBag::new();
    form.set_type(kind);
    Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &form).ok()
}

fn click_on(name: &str, blob: &Blob) -> Option<()> {
    let address = Url::create_object_url_with_blob(blob).ok()?;
    let link: HtmlAnchorElement = document()?.create_element("a").ok()?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // The browser still reads from it: let go a minute later, without keeping anything of ours alive for it.
    let forget = Reflect::get(&js_sys::global(), &"URL".into()).and_then(|url| {
        let revoke: js_sys::Function = Reflect::get(&url, &"revokeObjectURL".into())?.unchecked_into();
        Ok::<js_sys::Function, JsValue>(revoke.bind1(&url, &address.as_str().into()).unchecked_into())
    });
    let _ = window()?.set_timeout_with_callback_and_timeout_and_arguments_0(&forget.ok()?, 60_000);
    Some(())
}
