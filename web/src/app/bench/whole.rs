//! Done with an operation, of so many pieces.

use super::super::App;
use super::super::order::{Feel, Order};
use super::run_of;
use crate::words::en::bench as words;
use fivebar_core::bench::On;
use fivebar_core::ledger::decide::{BenchCommand, Command, Now};
use fivebar_core::quantity::{Count, Id};

/// What "done with it" says of an operation: its last run, and of how many pieces it is done then.
pub fn whole_of(app: &App, on: On, op: &str) -> Option<(Id, Count)> {
    let shelf = app.shelf();
    fivebar_core::sheet::bench::whole((&shelf.bench(), &shelf.book), (on, op), app.now.at)
}

/// The maker is done with an operation; whether that was written.
pub fn whole(app: &mut App, (run, of): (Id, Count), now: Now) -> bool {
    let op = run_of(app, run).map(|run| run.work.op).unwrap_or_default();
    let written = app.order(&Command::Bench(BenchCommand::Whole { run, of }), now).is_some();
    if written {
        app.orders.push(Order::Feel(Feel::Count(of)));
        app.said = words::done_with(&op);
    }
    written
}
