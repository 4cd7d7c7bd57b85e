//! Picks a file and reads its text, exactly or not at all.
use super::ears::first_of;
use super::{document, name_of};
use js_sys::Uint8Array;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, File, HtmlInputElement};

/// A file that was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picked {
    pub name: String,
    pub text: String,
}

/// Why no file was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoFile {
    /// The person put the list of files away.
    PutAway,
    /// It holds more bytes than we read.
    TooLarge { bytes: u64, limit: u64 },
    /// Its bytes are no text (UTF-8) from this byte on.
    NotText { at: usize },
    /// The phone could not read it, by its own name for the reason.
    Unread { name: String },
}

/// Lets the person pick a file and reads it, up to `limit` bytes. Call it from a tap. `accept` is such as `.json,.txt`.
///
/// # Errors
/// Why no file was read.
pub async fn pick(accept: &str, limit: u64) -> Result<Picked, NoFile> {
    let file = choose(accept, false).await?;
    Ok(Picked { name: file.name(), text: read(&file, limit).await? })
}

/// Lets the person choose a file, or take it with the camera where the phone has one. Call it from a tap.
///
/// # Errors
/// It was put away.
pub(super) async fn choose(accept: &str, camera: bool) -> Result<File, NoFile> {
    let made = document().and_then(|d| d.create_element("input").ok()).ok_or(NoFile::PutAway)?;
    let field: HtmlInputElement = made.unchecked_into();
    field.set_type("file");
    field.set_accept(accept);
    if camera {
        let _ = field.set_attribute("capture", "environment");
    }
    let ended = first_of(&field, &["change", "cancel"]);
    field.click();
    ended.await;
    field.files().and_then(|files| files.get(0)).ok_or(NoFile::PutAway)
}

/// The text of a file or blob, up to `limit` bytes.
///
/// # Errors
/// Why it was not read.
pub async fn read(file: &Blob, limit: u64) -> Result<String, NoFile> {
    let bytes = file.size() as u64;
    if bytes > limit {
        return Err(NoFile::TooLarge { bytes, limit });
    }
    let read = JsFuture::from(file.array_buffer()).await.map_err(|e| NoFile::Unread { name: name_of(&e) })?;
    as_text(Uint8Array::new(&read).to_vec())
}

/// Not the platform's own reading, which replaces what is no text without a word.
fn as_text(bytes: Vec<u8>) -> Result<String, NoFile> {
    String::from_utf8(bytes).map_err(|e| NoFile::NotText { at: e.utf8_error().valid_up_to() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bytes_that_are_no_text_are_named_by_their_place() {
        assert_eq!(as_text(b"ab\xffc".to_vec()), Err(NoFile::NotText { at: 2 }));
        assert_eq!(as_text("12 ¾".into()), Ok("12 ¾".into()));
    }
}
