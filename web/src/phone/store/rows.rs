//! Rows out of the platform's records. A big book comes over as one text instead of call by call: ten times as fast.
//!
//! The platform's own functions lay all members in one line of text, parted by a sign no entry holds; where the
//! parts do not come out as written (damaged bytes may hold that sign), each record is read by itself.
use super::Row;
use super::shelf::Kept;
use fivebar_core::quantity::Listed;
use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::prelude::*;

/// JSON text writes it only escaped.
const PART: char = '\u{1e}';

/// The rows of a list of records.
pub(super) fn rows(records: &Array) -> Vec<Row> {
    let count = records.length() as usize;
    all_at_once(records).ok().and_then(|text| split(&text, count)).unwrap_or_else(|| records.iter().map(one).listed())
}

fn all_at_once(records: &Array) -> Result<String, JsValue> {
    let values: Function = Reflect::get(&Object::constructor(&Object::new()), &"values".into())?.dyn_into()?;
    let map: Function = Reflect::get(records, &"map".into())?.dyn_into()?;
    let members: Array = map.call1(records, &values)?.dyn_into()?;
    let flat: Function = Reflect::get(&members, &"flat".into())?.dyn_into()?;
    let parts: Array = flat.call0(&members)?.dyn_into()?;
    Ok(parts.join(PART.encode_utf8(&mut [0; 4])).into())
}

/// The text parted into id, line and place of each of `count` rows, as they were written; nothing if it is not so.
fn split(text: &str, count: usize) -> Option<Vec<Row>> {
    let mut parts = text.split(PART);
    let mut rows = Vec::with_capacity(count);
    for _ in 0..count {
        let (id, line, seq) = (parts.next()?, parts.next()?, parts.next()?.parse().ok()?);
        rows.push(Row { seq, id: id.into(), line: line.into() });
    }
    (parts.next().is_none() || count == 0).then_some(rows)
}

fn one(kept: JsValue) -> Row {
    let kept: Kept = kept.unchecked_into();
    let (id, line) = kept.id_and_line();
    Row { seq: kept.place(), id, line }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_parted_as_it_was_written_or_not_at_all() {
        let row = |seq: u64, id: &str, line: &str| Row { seq, id: id.into(), line: line.into() };
        assert_eq!(split("a\u{1e}{}\u{1e}1\u{1e}b\u{1e}\u{1e}2", 2), Some(vec![row(1, "a", "{}"), row(2, "b", "")]));
        assert_eq!(split("", 0), Some(vec![]));
        assert_eq!(split("a\u{1e}x\u{1e}y\u{1e}1", 1), None, "a line that holds the sign itself");
        assert_eq!(split("1\u{1e}a\u{1e}{}", 1), None, "members in another order");
    }
}
