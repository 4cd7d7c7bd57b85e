//! Workshop, heard: what a tap there changes.

use super::App;
use fivebar_core::ledger::decide::Now;

/// The state of Workshop that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workshop {}

/// What can be said on Workshop.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {}

/// Takes in a tap on Workshop.
pub fn heard(_app: &mut App, tap: Tap, _now: Now) {
    match tap {}
}
