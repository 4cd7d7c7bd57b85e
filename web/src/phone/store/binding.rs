//! The lines up to a place, bound into one text: a big book is read in one go, where row by row takes the platform ten times as long.
//!
//! For speed alone. It is held against the entries at each opening, and not used where it does not fit them.
use super::open::answer;
use super::shelf::{self, Kept};
use super::{Row, Store, Trouble};
use js_sys::{Object, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;

const KEY: &str = "binding";
const END: char = '\n';
/// So many loose lines, and a twentieth of what is bound, are worth a new binding.
const LOOSE_MOST: usize = 250;

/// The lines of the rows up to a place, in order of arrival, each with a line feed at its end.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Binding {
    /// The place of the last of them.
    to: u64,
    lines: usize,
    text: String,
}

impl Binding {
    /// The lines, as they were written.
    pub fn lines(&self) -> impl DoubleEndedIterator<Item = &str> {
        self.text.split_terminator(END)
    }

    pub(super) fn to(&self) -> u64 {
        self.to
    }

    /// The binding among what is remembered beside the book, if there is one.
    pub(super) fn among<'a>(kept: impl Iterator<Item = &'a Kept>) -> Option<Binding> {
        let kept = kept.into_iter().find(|kept| kept.key_and_value().0 == KEY)?;
        let text = String::from_utf8(kept.bytes().dyn_into::<Uint8Array>().ok()?.to_vec()).ok()?;
        Some(Binding { to: kept.to().as_f64()? as u64, lines: text.split_terminator(END).count(), text })
    }

    /// Whether it ends with the row it says, and holds, with the rows `after` that one, as many as the book does.
    /// `rows` are those from that row on.
    pub(super) fn fits(&self, rows: &[Row], all: usize) -> bool {
        let last =
            rows.first().is_some_and(|row| row.seq == self.to && self.text.trim_end_matches(END).rsplit(END).next() == Some(&*row.line));
        last && self.lines.checked_add(rows.len()) == all.checked_add(1)
    }

    /// With these rows too; nothing where they are too few to be worth it, or one holds the sign that parts lines.
    pub(super) fn with(&self, loose: &[Row]) -> Option<Binding> {
        let worth = LOOSE_MOST.saturating_add(self.lines / 20) < loose.len();
        if !worth || loose.iter().any(|row| row.line.contains(END)) {
            return None;
        }
        let mut text = self.text.clone();
        for row in loose {
            text.push_str(&row.line);
            text.push(END);
        }
        Some(Binding { to: loose.last()?.seq, lines: self.lines.saturating_add(loose.len()), text })
    }
}

impl Store {
    /// Lays a new binding beside the book.
    ///
    /// # Errors
    /// Why it was not saved; the book is as whole without it.
    pub async fn bind(&self, binding: &Binding) -> Result<(), Trouble> {
        if super::closed() {
            return Err(Trouble::Stopped);
        }
        let record = Object::new();
        let members =
            [("key", KEY.into()), ("to", (binding.to as f64).into()), ("bytes", Uint8Array::from(binding.text.as_bytes()).into())];
        for (name, value) in members {
            Reflect::set(&record, &name.into(), &value)?;
        }
        let work = self.begin("readwrite").await?;
        answer(&work.object_store(shelf::META)?.put(&record)?).await.map(drop)
    }
}
