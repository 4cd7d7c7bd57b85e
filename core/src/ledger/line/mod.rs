//! An entry as one line of canonical JSON: keys sorted, no spaces, UTF-8. Only this folder reads or writes JSON.
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

mod canonical;
pub mod document;
pub mod upgrade;

pub use canonical::is_canonical;

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
///
/// What a line is depends on its bytes alone, so a line set aside once is set aside at every start.
pub fn read(line: &str) -> Line {
    let Ok(outer) = serde_json::from_str::<Envelope>(line) else { return other(line) };
    if outer.v == 0 {
        return damaged(line, Why::NotAnEntry);
    }
    if !is_canonical(line) {
        return damaged(line, Why::NotCanonical);
    }
    if VERSION < outer.v {
        return Line::Newer(line.into());
    }
    let Ok(offset) = Offset::minutes(outer.tz) else { return damaged(line, Why::NotAnEntry) };
    match fact(&outer) {
        None => Line::Newer(line.into()),
        Some(Err(_)) => damaged(line, Why::BadFact),
        Some(Ok(fact)) => {
            let wall = Wall { at: outer.at, offset };
            Line::Known(Box::new(Entry { id: outer.id, stamp: outer.t, wall, act: outer.act, fact }))
        }
    }
}

fn fact(outer: &Envelope) -> Option<Result<Fact, Misspelled>> {
    if outer.v == VERSION {
        return Fact::read(&outer.k, outer.d.get());
    }
    let members = serde_json::from_str(outer.d.get());
    let lifted = members.map(|members| upgrade::lift(upgrade::STEPS, outer.v, (outer.k.to_string(), members)));
    match lifted {
        Ok((kind, members)) => Fact::read(&kind, &members.to_string()),
        Err(misspelled) => Some(Err(misspelled)),
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

pub(in crate::ledger) fn members<T: DeserializeOwned>(text: &str) -> Result<T, Misspelled> {
    serde_json::from_str(text)
}

pub(in crate::ledger) fn value<T: Serialize>(members: &T) -> Result<Members, Misspelled> {
    serde_json::to_value(members)
}

/// JSON that is no entry of this version: newer if it says so, else damaged.
fn other(line: &str) -> Line {
    #[derive(Deserialize)]
    struct Version {
        v: u32,
    }
    match serde_json::from_str::<Version>(line) {
        Ok(version) if VERSION < version.v && is_canonical(line) => Line::Newer(line.into()),
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
