//! An entry as one line of canonical JSON: keys sorted, no spaces, UTF-8. Only this folder reads or writes JSON.
//!
//! Carries invariant 10: what is newer or damaged keeps its bytes and is set aside, never dropped.

use super::damage::{Damage, Why};
use super::entry::{Entry, Fact};
use super::stamp::{Device, Stamp};
use crate::quantity::{Id, Moment, Offset, Scalar, Wall};
use std::borrow::Cow;
use std::rc::Rc;

mod canonical;
pub mod document;
pub mod json;
mod tree;
pub mod upgrade;

pub use canonical::is_canonical;
pub use tree::{Member, Tree};

/// The version of a line.
pub const VERSION: u32 = 1;

/// A line that was read.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    Known(Rc<Entry>),
    /// From a newer version: kept byte for byte.
    Newer(Box<str>),
    Damaged(Damage),
}

/// Reads one line. Nothing is lost: what is no entry of this version comes back with its bytes.
///
/// What a line is depends on its bytes alone, so a line set aside once is set aside at every start.
pub fn read(line: &str) -> Line {
    let Some(tree) = Tree::read(line) else { return damaged(line, misspelled(line)) };
    match tree.must::<u32>("v") {
        Some(VERSION) | None => entry(line, &tree),
        Some(0) => damaged(line, Why::NotAnEntry),
        Some(v) if VERSION < v => Line::Newer(line.into()),
        Some(_) => entry(line, &tree),
    }
}

fn entry(line: &str, tree: &Tree<'_>) -> Line {
    let Some(outer) = Envelope::read(tree) else { return damaged(line, Why::NotAnEntry) };
    match fact(&outer, tree) {
        None => Line::Newer(line.into()),
        Some(None) => damaged(line, Why::BadFact),
        Some(Some(fact)) => {
            let wall = Wall { at: outer.at, offset: outer.offset };
            Line::Known(Rc::new(Entry { id: outer.id, stamp: outer.stamp, wall, act: outer.act, fact }))
        }
    }
}

/// What stands around a fact.
struct Envelope {
    v: u32,
    id: Id,
    act: Option<Id>,
    at: Moment,
    offset: Offset,
    stamp: Stamp,
}

impl Envelope {
    fn read(tree: &Tree<'_>) -> Option<Envelope> {
        Some(Envelope {
            v: tree.must("v")?,
            id: tree.must("id")?,
            act: tree.may("act")?,
            at: tree.must("at")?,
            offset: tree.must("tz")?,
            stamp: tree.must("t")?,
        })
    }
}

/// A stamp in a line: `[ms, n, "device"]`.
impl Member for Stamp {
    fn read(tree: &Tree<'_>) -> Option<Stamp> {
        let Tree::List(items) = tree else { return None };
        let [ms, n, device] = items.as_slice() else { return None };
        let Tree::Scalar(Scalar::Text(device)) = device else { return None };
        Some(Stamp(Member::read(ms)?, Member::read(n)?, Device::read(device)?))
    }
    fn write(&self) -> Tree<'_> {
        Tree::List(vec![self.0.write(), self.1.write(), Tree::Scalar(Scalar::of(self.2.name()))])
    }
}

fn fact(outer: &Envelope, tree: &Tree<'_>) -> Option<Option<Fact>> {
    let (Some(Tree::Scalar(Scalar::Text(kind))), Some(members)) = (tree.member("k"), tree.member("d")) else { return Some(None) };
    if outer.v == VERSION {
        return Fact::read(kind, members);
    }
    let (kind, members) = upgrade::lift(upgrade::STEPS, outer.v, (kind.clone(), members.clone()));
    Fact::read(&kind, &members)
}

/// Writes an entry as its line.
pub fn write(entry: &Entry) -> String {
    let kind: Cow<'_, str> = entry.fact.kind().into();
    let members = vec![
        ("act", entry.act.as_ref().map(Member::write)),
        ("at", Some(entry.wall.at.write())),
        ("d", Some(entry.fact.members())),
        ("id", Some(entry.id.write())),
        ("k", Some(Tree::Scalar(Scalar::Text(kind)))),
        ("t", Some(entry.stamp.write())),
        ("tz", Some(entry.wall.offset.write())),
        ("v", Some(VERSION.write())),
    ];
    Tree::members(members).spelled()
}

/// A text in another spelling than ours: an entry all the same, or none.
fn misspelled(line: &str) -> Why {
    let Ok(members) = json::members(line) else { return Why::NotAnEntry };
    let entry = id_in(&members).is_some() && said(&members, "k").is_some();
    if entry && json::whole(&members, "v").is_some_and(|v| 0 < v) { Why::NotCanonical } else { Why::NotAnEntry }
}

fn said<'a>(members: &[json::Member<'a>], name: &str) -> Option<Cow<'a, str>> {
    json::member(members, name).and_then(|written| json::text(written).ok())
}

fn id_in(members: &[json::Member<'_>]) -> Option<Id> {
    said(members, "id").and_then(|id| Id::read(&id))
}

fn damaged(line: &str, why: Why) -> Line {
    Line::Damaged(Damage { line: line.into(), why, id: id_of(line) })
}

/// The id of a line, where it can be read.
pub fn id_of(line: &str) -> Option<Id> {
    json::members(line).ok().and_then(|members| id_in(&members))
}
