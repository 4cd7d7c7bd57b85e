//! Rows that are cut are put one above the other, and the pieces of each in order, so that no joints come too near.

use super::cutting::Row;
use super::stock::Stock;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// So often it is begun anew.
const TRIES: u32 = 6;
/// So many pieces are put for one row.
const NODES: u32 = 120;

pub(super) fn joints(row: &Row) -> Vec<f64> {
    let mut at = 0.0;
    let ends = row.iter().map(|(_, length)| {
        at += length;
        at
    });
    ends.take(row.len().saturating_sub(1)).collect()
}

/// The rows in an order in which they stand; `None` where none is found.
pub(super) fn laid_out(stock: &Stock, rows: &[Row], draw: &mut Draw, patience: &mut Patience<'_>) -> Option<Vec<Row>> {
    (0..TRIES).find_map(|_| if patience.spend(rows.len() as u64) { once(stock, rows, draw) } else { None })
}

fn once(stock: &Stock, rows: &[Row], draw: &mut Draw) -> Option<Vec<Row>> {
    let mut waiting = rows.to_vec();
    for nth in 1..waiting.len() {
        waiting.swap(nth, draw.below(nth.saturating_add(1)));
    }
    let mut laid: Vec<Row> = vec![];
    while let Some((nth, row)) = next(stock, &waiting, laid.last(), draw) {
        waiting.swap_remove(nth);
        laid.push(row);
    }
    while let Some(row) = waiting.pop() {
        let (place, row) = (0..=laid.len()).find_map(|place| Some((place, between(stock, (&laid, place), &row, draw)?)))?;
        laid.insert(place, row);
    }
    Some(laid)
}

fn next(stock: &Stock, waiting: &[Row], above: Option<&Row>, draw: &mut Draw) -> Option<(usize, Row)> {
    let near = above.map(joints).unwrap_or_default();
    waiting.iter().enumerate().find_map(|(nth, row)| Some((nth, ordered(stock, row, &near, draw)?)))
}

fn between(stock: &Stock, (laid, place): (&[Row], usize), row: &Row, draw: &mut Draw) -> Option<Row> {
    let around = [place.checked_sub(1), Some(place)].into_iter().flatten().filter_map(|nth| laid.get(nth));
    let near: Vec<f64> = around.flat_map(joints).collect();
    ordered(stock, row, &near, draw)
}

struct Order<'a> {
    stock: &'a Stock,
    near: &'a [f64],
    left: Row,
    row: Row,
    nodes: u32,
}

/// The pieces in an order whose joints keep clear of those near.
fn ordered(stock: &Stock, row: &Row, near: &[f64], draw: &mut Draw) -> Option<Row> {
    let mut order = Order { stock, near, left: row.clone(), row: vec![], nodes: NODES };
    order.go_on(0.0, draw).then_some(order.row)
}

impl Order<'_> {
    fn go_on(&mut self, at: f64, draw: &mut Draw) -> bool {
        let many = self.left.len();
        let from = draw.below(many);
        let mut tried: Vec<f64> = vec![];
        for step in 0..many {
            let nth = from.saturating_add(step).checked_rem(many).unwrap_or(0);
            let Some((strip, length)) = self.left.get(nth).copied() else { continue };
            let is_end = at == 0.0 || many == 1;
            if tried.contains(&length) || (is_end && length < self.stock.end) {
                continue;
            }
            tried.push(length);
            let joint = at + length;
            if self.nodes == 0 || (1 < many && self.near.iter().any(|x| (x - joint).abs() < self.stock.stagger)) {
                continue;
            }
            self.nodes = self.nodes.saturating_sub(1);
            self.left.swap_remove(nth);
            self.row.push((strip, length));
            if self.left.is_empty() || self.go_on(joint, draw) {
                return true;
            }
            self.row.pop();
            self.left.push((strip, length));
            let last = self.left.len().saturating_sub(1);
            self.left.swap(nth, last);
        }
        false
    }
}
