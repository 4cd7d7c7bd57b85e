//! What the museum holds, for the tests that open it.
#![allow(dead_code)]

use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::{Device, Entry};
use std::path::PathBuf;
use std::rc::Rc;

/// A file below the top `tests` folder.
pub fn read(path: &str) -> String {
    let file = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests").join(path);
    std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()))
}

/// A line of every kind of this version.
pub fn kinds() -> String {
    read("museum/kinds.txt")
}

/// An entry of every kind.
pub fn entries() -> Vec<Entry> {
    let known = |text: &str| if let Line::Known(entry) = line::read(text) { Some(Rc::unwrap_or_clone(entry)) } else { None };
    kinds().lines().filter_map(known).collect()
}

pub fn device(name: &str) -> Device {
    Device::read(name).unwrap()
}
