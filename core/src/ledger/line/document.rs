//! A copy: one JSON document that holds the lines unchanged, one per line of text. docs/STORAGE.md says it to the byte.
//!
//! Carries invariants 10 and 11: a document that is broken, cut short or altered is refused whole; a bad line in a sound one is kept.

mod base64;
mod check;
mod held;
mod made;

use super::super::people::{People, Person, remembered};
use super::super::{Book, Damage};
use super::tree::quoted;
use crate::quantity::{Id, Listed, Sorted, Wall};
use std::borrow::Cow;
use std::fmt::Write;

/// The version of the document.
pub const VERSION: u32 = 1;
/// The most bytes a copy may have: 256 MiB.
pub const BYTES_MOST: usize = 256 * 1024 * 1024;
/// The most entries a copy may have.
pub const ENTRIES_MOST: usize = 1_000_000;

/// Why a text is no copy that can be brought in. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DocumentTrouble {
    /// Not JSON at all.
    NotJson,
    /// JSON, but not the members a copy has.
    NotACopy,
    /// The text ends before the document does.
    CutShort,
    /// A copy of a newer version of the app.
    Newer { version: u32, ours: u32 },
    /// More bytes than can be read.
    TooLarge { bytes: usize, most: usize },
    /// More entries than a book may have.
    TooMany { entries: usize, most: usize },
    /// What it holds is not what was written: its check does not hold.
    Altered,
}

/// A photo as it stands in a copy; the phone checks its sum before it keeps it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// The media type.
    pub kind: String,
    pub sha256: String,
    pub base64: String,
}

impl Photo {
    /// A picture as it stands in a copy.
    pub fn of(kind: String, sha256: String, bytes: &[u8]) -> Photo {
        Photo { kind, sha256, base64: base64::write(bytes) }
    }

    /// The picture itself; none where its text is no base 64.
    pub fn bytes(&self) -> Option<Vec<u8>> {
        base64::read(&self.base64)
    }
}

/// Photos by id.
pub type Photos = Sorted<Id, Photo>;

/// What a copy holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Document<'a> {
    /// When it was made, and where.
    pub made: Wall,
    /// Lines of entries, of newer versions and set aside, byte for byte.
    pub lines: Vec<Cow<'a, str>>,
    pub people: People,
    /// Missing in a copy made without photos.
    pub photos: Option<Photos>,
}

/// Writes the copy of a book: entries in order, then lines of newer versions; what was set aside as text; people who are not
/// forgotten; photos where they are wanted.
pub fn write(book: &Book, people: &People, photos: Option<&Photos>, made: Wall) -> String {
    let lines: Vec<&str> = book.known().chain(book.newer()).listed();
    let aside: Vec<&str> = book.damaged().map(|Damage { line, .. }| &**line).listed();
    let people = remembered(book, people);
    let mut text = format!("{{\"fivebar\":{VERSION},\"made\":\"{}\",\"entries\":[", made::write(made));
    rows(&mut text, lines.iter().map(|line| Cow::Borrowed(*line)));
    text.push(']');
    if !aside.is_empty() {
        text.push_str(",\"aside\":[");
        rows(&mut text, aside.iter().map(|line| Cow::Owned(json(line))));
        text.push(']');
    }
    text.push_str(",\"people\":{");
    rows(&mut text, people.iter().map(|(id, person)| Cow::Owned(format!("\"{id}\":{}", held::person(person)))));
    text.push('}');
    if let Some(photos) = photos {
        text.push_str(",\"photos\":{");
        rows(&mut text, photos.iter().map(|(id, photo)| Cow::Owned(format!("\"{id}\":{}", held::photo(photo)))));
        text.push('}');
    }
    let check = sum(lines.into_iter().chain(aside), &people, photos);
    let _ = writeln!(text, ",\"check\":\"{check}\"}}");
    text
}

/// Reads a copy.
///
/// # Errors
/// The trouble that makes the whole text no copy; lines that are damaged one by one are no trouble here.
pub fn read(text: &str) -> Result<Document<'_>, DocumentTrouble> {
    if BYTES_MOST < text.len() {
        return Err(DocumentTrouble::TooLarge { bytes: text.len(), most: BYTES_MOST });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let members = held::read(text)?;
    let lines: Vec<Cow<str>> = members.entries.into_iter().map(Cow::Borrowed).chain(members.aside).listed();
    if ENTRIES_MOST < lines.len() {
        return Err(DocumentTrouble::TooMany { entries: lines.len(), most: ENTRIES_MOST });
    }
    let sum = sum(lines.iter().map(|line| &**line), &members.people, members.photos.as_ref());
    if members.check.is_some_and(|check| check != sum) {
        return Err(DocumentTrouble::Altered);
    }
    let made = made::read(&members.made).ok_or(DocumentTrouble::NotACopy)?;
    Ok(Document { made, lines, people: members.people, photos: members.photos })
}

/// A person as they lie beside the book: the name as it is where that is all there is, else the members a copy has.
pub fn person_beside(person: &Person) -> String {
    let is_plain = person.phone.is_none() && person.place.is_none() && !person.name.starts_with('{');
    if is_plain { person.name.clone() } else { held::person(person) }
}

/// Reads what lies beside the book of a person; what is no members of a person is a name.
pub fn person_read(beside: &str) -> Person {
    held::person_of(beside).unwrap_or_else(|| Person::named(beside))
}

/// Rows of text, each on its own line, commas between.
fn rows<'a>(text: &mut String, rows: impl Iterator<Item = Cow<'a, str>>) {
    for (place, row) in rows.enumerate() {
        text.push_str(if place == 0 { "\n" } else { ",\n" });
        text.push_str(&row);
    }
    text.push('\n');
}

fn json(text: &str) -> String {
    let mut written = String::new();
    quoted(text, &mut written);
    written
}

/// The check over all that is held, so that line ends and spaces between may change on the way.
fn sum<'a>(lines: impl Iterator<Item = &'a str>, people: &People, photos: Option<&Photos>) -> String {
    let mut check = check::Check::default();
    lines.for_each(|line| check.add(line));
    for (id, Person { name, phone, place }) in people {
        check.add(&id.to_string());
        check.add(name);
        check.add(phone.as_deref().unwrap_or_default());
        check.add(place.as_deref().unwrap_or_default());
    }
    for (id, photo) in photos.into_iter().flatten() {
        check.add(&id.to_string());
        check.add(&photo.kind);
        check.add(&photo.sha256);
    }
    check.spelled()
}
