//! What is still to do of each operation of a job: by its pieces where they are noted, else by its hours.

use super::Row;
use crate::bench::estimate::{Left, Likely};
use crate::bench::{Batch, On};
use crate::ledger::fold::Job;
use crate::quantity::{Count, Listed, Span};
use crate::sheet::Shop;

/// What is left of each row.
///
/// Of an operation with a number of pieces of which some are noted, the pieces that are left at its pace: never nothing before they are done.
/// Of what is at hand or was never begun, what it likely takes less what was worked. Of what was left for something else, what was
/// thought of it less what was worked (ours). Of a whole piece and of its rest, less what was worked on operations that are not planned.
pub fn lefts(shop: &Shop, job: &Job, rows: &[Row]) -> Vec<Left> {
    let logged = shop.time(job.id);
    let at_hand = shop.bench.on(On::Job(job.id)).next_back().map(|run| run.work.op.as_str());
    let planned = |op: &str| rows.iter().any(|row| row.op.as_deref() == Some(op));
    let unplanned = Span::sum(logged.by_op.iter().filter(|(op, _)| !planned(op)).map(|(_, shares)| shares.total()));
    let left = |row: &Row| {
        let Some(op) = row.op.as_deref() else { return Left::Less(unplanned) };
        if let Some(by_pieces) = by_pieces(&batch(shop, job, op)) {
            return by_pieces;
        }
        let took = logged.by_op.get(op).copied().unwrap_or_default().total();
        if took <= Span::ZERO || at_hand == Some(op) {
            return Left::Less(took);
        }
        match row.thought.unwrap_or_default().minus(took) {
            left if left <= Span::ZERO => Left::Nothing,
            left => Left::Goes(Likely::guessed(crate::bench::estimate::spread::minutes(left))),
        }
    };
    if job.ended.is_some() { rows.iter().map(|_| Left::Nothing).listed() } else { rows.iter().map(left).listed() }
}

/// An operation's pieces: as many as were said at the bench, else as were planned.
pub fn batch(shop: &Shop, job: &Job, op: &str) -> Batch {
    let batch = shop.bench.batch(On::Job(job.id), op, shop.now);
    let planned = job.operations.iter().find(|planned| planned.op == op).and_then(|planned| planned.pieces);
    Batch { of: batch.of.or(planned), ..batch }
}

/// What is left of a batch by its pace; none where nobody said how many there are, or none is noted yet.
pub fn by_pieces(batch: &Batch) -> Option<Left> {
    let left: Count = batch.left()?;
    if left == 0 {
        return Some(Left::Nothing);
    }
    let likely = batch.remaining()?.max(Span::minutes(1));
    let [median, off] = [likely, batch.spread.unwrap_or_default()].map(crate::bench::estimate::spread::minutes);
    let safe = if off <= 0.0 { Likely::guessed(median).at(0.9) } else { median + off };
    Some(Left::Goes(Likely::between(median, safe)))
}
