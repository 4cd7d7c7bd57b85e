//! Jobs, heard: what a tap there changes.

use super::App;
use fivebar_core::ledger::decide::Now;

/// The state of Jobs that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Jobs {}

/// What can be said on Jobs.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {}

/// Takes in a tap on Jobs.
pub fn heard(_app: &mut App, tap: Tap, _now: Now) {
    match tap {}
}
