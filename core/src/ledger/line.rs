//! An entry as one line of canonical JSON: keys sorted, no spaces, UTF-8. The only file that reads or writes JSON.
//!
//! Carries invariant 10: what is newer or damaged keeps its bytes and is set aside, never dropped.

use super::damage::{Damage, Why};
use super::entry::{Entry, Fact};
use super::stamp::Stamp;
use crate::quantity::{Id, Moment, Offset, Wall};
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use serde_json::value::RawValue;
use serde_json::{Map, Value};
use std::borrow::Cow;

/// The version of a line.
pub const VERSION: u32 = 1;

/// Members that do not hold.
pub type Misspelled = serde_json::Error;
/// The members of a fact, as JSON.
pub type Members = Value;

/// A line that was read.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    Known(Box<Entry>),
    /// From a newer version: kept byte for byte.
    Newer(Box<str>),
    Damaged(Damage),
}

#[derive(Deserialize)]
struct Envelope<'a> {
    act: Option<Id>,
    at: Moment,
    #[serde(borrow)]
    d: &'a RawValue,
    id: Id,
    #[serde(borrow)]
    k: Cow<'a, str>,
    t: Stamp,
    tz: i64,
    v: u32,
}

/// Reads one line. Nothing is lost: what is no entry of this version comes back with its bytes.
pub fn read(line: &str) -> Line {
    let Ok(outer) = serde_json::from_str::<Envelope>(line) else { return other(line) };
    let Ok(offset) = Offset::minutes(outer.tz) else { return damaged(line, Why::NotAnEntry) };
    if outer.v != VERSION {
        return Line::Newer(line.into());
    }
    match Fact::read(&outer.k, outer.d.get()) {
        None => Line::Newer(line.into()),
        Some(Err(_)) => damaged(line, Why::BadFact),
        Some(Ok(fact)) => {
            let wall = Wall { at: outer.at, offset };
            Line::Known(Box::new(Entry { id: outer.id, stamp: outer.t, wall, act: outer.act, fact }))
        }
    }
}

/// As [`read`], and refuses any spelling but the canonical one. For lines that come from outside.
pub fn read_strictly(line: &str) -> Line {
    match read(line) {
        Line::Damaged(damage) => Line::Damaged(damage),
        _ if !is_canonical(line) => damaged(line, Why::NotCanonical),
        good => good,
    }
}

/// Writes an entry as its line.
pub fn write(entry: &Entry) -> String {
    let mut outer = Map::new();
    if let Some(act) = entry.act {
        outer.insert("act".into(), act.to_string().into());
    }
    outer.insert("at".into(), entry.wall.at.ms().into());
    outer.insert("d".into(), entry.fact.members().unwrap_or_else(|_| Value::Object(Map::new())));
    outer.insert("id".into(), entry.id.to_string().into());
    outer.insert("k".into(), entry.fact.kind().into());
    outer.insert("t".into(), Value::Array(vec![entry.stamp.0.ms().into(), entry.stamp.1.into(), entry.stamp.2.name().into()]));
    outer.insert("tz".into(), entry.wall.offset.as_minutes().into());
    outer.insert("v".into(), VERSION.into());
    Value::Object(outer).to_string()
}

/// Whether the text is JSON in the one spelling we keep: keys sorted and single, no spaces, no floats, no null.
pub fn is_canonical(line: &str) -> bool {
    let Ok(value) = serde_json::from_str::<Value>(line) else { return false };
    let respelled = value.to_string();
    plain(&value) && respelled == line
}

pub(super) fn members<T: DeserializeOwned>(text: &str) -> Result<T, Misspelled> {
    serde_json::from_str(text)
}

pub(super) fn value<T: Serialize>(members: &T) -> Result<Members, Misspelled> {
    serde_json::to_value(members)
}

fn plain(value: &Value) -> bool {
    match value {
        Value::Null => false,
        Value::Bool(_) | Value::String(_) => true,
        Value::Number(n) => n.is_i64() || n.is_u64(),
        Value::Array(items) => items.iter().all(plain),
        Value::Object(members) => members.values().all(plain),
    }
}

/// JSON that is no entry of this version: newer if it says so, else damaged.
fn other(line: &str) -> Line {
    #[derive(Deserialize)]
    struct Version {
        v: u32,
    }
    match serde_json::from_str::<Version>(line) {
        Ok(version) if VERSION < version.v => Line::Newer(line.into()),
        _ => damaged(line, Why::NotAnEntry),
    }
}

fn damaged(line: &str, why: Why) -> Line {
    Line::Damaged(Damage { line: line.into(), why, id: id_of(line) })
}

/// The id of a line, where it can be read.
pub fn id_of(line: &str) -> Option<Id> {
    #[derive(Deserialize)]
    struct Named {
        id: Id,
    }
    serde_json::from_str::<Named>(line).ok().map(|named| named.id)
}
