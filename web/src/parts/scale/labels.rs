//! Where labels stand so that none runs into another: rows of labels, and leaders down to the lower rows.
use crate::parts::ink::held;
use fivebar_core::quantity::Listed;

/// A label that wants to stand under its mark.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// Where the mark is.
    pub at: f64,
    /// How wide the label is.
    pub width: f64,
}

/// Where a label stands: its left edge and its row, 0 on top.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    pub x: f64,
    pub row: usize,
}

const BETWEEN: f64 = 8.0;
const BY_LEADER: f64 = 5.0;
const ROWS: usize = 5;
const SEARCHED: u32 = 4096;

/// A label or a leader in one row: its mark's number, the bounds and the wish for its left edge, its width.
#[derive(Clone, Copy)]
struct Item {
    mark: usize,
    low: f64,
    high: f64,
    x: f64,
    width: f64,
    leader: bool,
}

/// Places every label within `width`: as few rows as will do, each label under its own mark, no leader through a label.
pub fn place(wishes: &[Wish], width: f64) -> Vec<Spot> {
    let mut order: Vec<usize> = (0..wishes.len()).listed();
    fivebar_core::quantity::order_by(&mut order, |a, b| wishes[*a].at.total_cmp(&wishes[*b].at));
    let sorted: Vec<Wish> = order.iter().map(|&i| wishes[i]).listed();
    let spots = searched(&sorted, width).unwrap_or_else(|| stairs(&sorted, width));
    let mut out = vec![Spot::default(); wishes.len()];
    for (spot, &i) in spots.into_iter().zip(&order) {
        out[i] = spot;
    }
    out
}

/// Tries every sharing out among rows; first with labels under their marks, then beside them.
fn searched(wishes: &[Wish], width: f64) -> Option<Vec<Spot>> {
    let slacks = [(2.0, 1..=3), (-9.0, 1..=ROWS)];
    slacks.into_iter().find_map(|(slack, mut rows)| rows.find_map(|rows| best(wishes, width, (rows, slack))))
}

fn best(wishes: &[Wish], width: f64, (rows, slack): (usize, f64)) -> Option<Vec<Spot>> {
    (rows as u32).checked_pow(wishes.len() as u32).filter(|&ways| ways <= SEARCHED)?;
    let mut search = Search { wishes, room: (width, slack), rows, least: None };
    search.row(0, &(0..wishes.len()).listed(), (0, &vec![Spot::default(); wishes.len()]));
    search.least.map(|(.., spots)| spots)
}

/// Shares labels out row after row from the top: where one row does not fit, nothing below it is tried.
struct Search<'a> {
    wishes: &'a [Wish],
    /// The width there is, and the slack.
    room: (f64, f64),
    rows: usize,
    /// What the cheapest so far costs, the number of its sharing out, and where its labels stand.
    least: Option<(f64, u32, Vec<Spot>)>,
}

impl Search<'_> {
    /// Every way to have some of the labels that are left in this row, and the others, by their leaders, in those below.
    fn row(&mut self, row: usize, left: &[usize], (way, spots): (u32, &[Spot])) {
        if left.is_empty() {
            return self.found(way, spots);
        }
        let is_last = row + 1 == self.rows;
        for choice in 0..if is_last { 1 } else { 1_u32 << left.len() } {
            let goes_down = |nth: usize| !is_last && (choice >> nth) & 1 == 1;
            let items = left.iter().enumerate().map(|(nth, &mark)| item(mark, self.wishes[mark], self.room, goes_down(nth)));
            let Some(laid) = settled(items.listed()) else { continue };
            let mut spots = spots.to_vec();
            for item in laid.iter().filter(|item| !item.leader) {
                spots[item.mark] = Spot { x: item.x, row };
            }
            let down = laid.iter().filter(|item| item.leader).map(|item| item.mark).listed();
            let more: u32 = down.iter().map(|&mark| (self.rows as u32).pow(mark as u32)).sum();
            self.row(row + 1, &down, (way + more, &spots));
        }
    }

    /// Of two that cost the same the one with the lower number stands.
    fn found(&mut self, way: u32, spots: &[Spot]) {
        let cost = cost(self.wishes, spots);
        let is_less = |(least, first, _): &(f64, u32, Vec<Spot>)| cost.total_cmp(least).then(way.cmp(first)).is_lt();
        if self.least.as_ref().is_none_or(is_less) {
            self.least = Some((cost, way, spots.to_vec()));
        }
    }
}

/// Low rows cost much, a label pushed off its mark a little.
fn cost(wishes: &[Wish], spots: &[Spot]) -> f64 {
    let off = |(w, s): (&Wish, &Spot)| (s.x + w.width / 2.0 - w.at).abs() + 60.0 * s.row as f64;
    wishes.iter().zip(spots).map(off).sum()
}

fn item(mark: usize, wish: Wish, (width, slack): (f64, f64), leader: bool) -> Item {
    if leader {
        return Item { mark, low: wish.at, high: wish.at, x: wish.at, width: 0.0, leader };
    }
    let room = (width - wish.width).max(0.0);
    let within = |x: f64| held(x, 0.0, room);
    let (low, high) = (within(wish.at - wish.width + slack), within(wish.at - slack));
    Item { mark, low, high, x: within(wish.at - wish.width / 2.0), width: wish.width, leader }
}

/// Pushes right, then back left, until nothing touches; none if something has to leave its bounds.
fn settled(mut items: Vec<Item>) -> Option<Vec<Item>> {
    for i in 1..items.len() {
        let edge = items[i - 1].x + items[i - 1].width + gap(&items[i - 1], &items[i]);
        items[i].x = items[i].x.max(edge);
    }
    let mut limit = f64::INFINITY;
    for i in (0..items.len()).rev() {
        items[i].x = items[i].x.min(items[i].high).min(limit - items[i].width);
        let before = i.checked_sub(1).map_or(0.0, |b| gap(&items[b], &items[i]));
        limit = items[i].x - before;
    }
    items.iter().all(|item| item.x >= item.low - 0.01).then_some(items)
}

fn gap(left: &Item, right: &Item) -> f64 {
    match (left.leader, right.leader) {
        (true, true) => 0.0,
        (false, false) => BETWEEN,
        _ => BY_LEADER,
    }
}

/// When nothing else will do: a row for each, the leftmost lowest, so that leaders pass at the left.
fn stairs(wishes: &[Wish], width: f64) -> Vec<Spot> {
    let last = wishes.len().saturating_sub(1);
    let step = |(i, wish): (usize, &Wish)| Spot { x: held(wish.at - 2.0, 0.0, width - wish.width), row: last - i };
    wishes.iter().enumerate().map(step).listed()
}

#[cfg(test)]
mod tests {
    use super::*;

    type Row = (&'static [(f64, f64)], f64, usize);

    fn check(wishes: &[(f64, f64)], width: f64) -> Vec<Spot> {
        let wishes: Vec<Wish> = wishes.iter().map(|&(at, width)| Wish { at, width }).collect();
        let spots = place(&wishes, width);
        for (i, (a, s)) in wishes.iter().zip(&spots).enumerate() {
            assert!(s.x >= -0.01 && (s.x + a.width <= width + 0.01 || a.width > width), "{i} leaves the drawing: {spots:?}");
            for (b, t) in wishes.iter().zip(&spots).skip(i + 1).filter(|(_, t)| t.row == s.row) {
                assert!(s.x + a.width < t.x || t.x + b.width < s.x, "labels collide: {wishes:?} {spots:?}");
            }
        }
        spots
    }

    /// True if no leader of a lower row runs through a label.
    fn clear(wishes: &[(f64, f64)], spots: &[Spot]) -> bool {
        let through =
            |(at, _): &(f64, f64), own: &Spot| wishes.iter().zip(spots).any(|((_, w), s)| s.row < own.row && s.x < *at && *at < s.x + w);
        wishes.iter().zip(spots).all(|(w, s)| !through(w, s))
    }

    #[test]
    fn scales_of_the_drawings_take_no_more_rows_than_there() {
        let table: [Row; 5] = [
            (&[(52.6, 55.6), (280.1, 49.4)], 358.0, 1),
            (&[(1.5, 108.0), (34.0, 92.0), (189.0, 65.0), (242.5, 52.0), (293.6, 88.0)], 330.0, 2),
            (&[(36.4, 128.0), (130.4, 143.0), (304.4, 102.0)], 330.0, 2),
            (&[(118.4, 76.0), (146.4, 87.0), (234.9, 88.0)], 330.0, 2),
            (&[(31.0, 67.0), (99.1, 125.0), (309.2, 70.0)], 330.0, 1),
        ];
        for (wishes, width, rows) in table {
            let spots = check(wishes, width);
            assert!(spots.iter().all(|s| s.row < rows), "{wishes:?} {spots:?}");
            assert!(clear(wishes, &spots), "{wishes:?} {spots:?}");
        }
    }

    /// The labels laid in the rows given, if they fit.
    fn laid(wishes: &[Wish], rows: &[usize], room: (f64, f64)) -> Option<Vec<Spot>> {
        let mut spots = vec![Spot::default(); wishes.len()];
        for row in 0..=rows.iter().copied().max().unwrap_or(0) {
            let items = (0..wishes.len()).filter(|&i| rows[i] >= row).map(|i| item(i, wishes[i], room, rows[i] > row));
            for item in settled(items.collect())?.iter().filter(|item| !item.leader) {
                spots[item.mark] = Spot { x: item.x, row };
            }
        }
        Some(spots)
    }

    /// The measure: every sharing out is laid whole, and the first of the cheapest is taken.
    fn of_all(wishes: &[Wish], width: f64, (rows, slack): (usize, f64)) -> Option<Vec<Spot>> {
        let shared = |way: usize| -> Vec<usize> { (0..wishes.len() as u32).map(|i| way / rows.pow(i) % rows).collect() };
        let all = (0..rows.pow(wishes.len() as u32)).filter_map(|way| laid(wishes, &shared(way), (width, slack)));
        all.min_by(|a, b| cost(wishes, a).total_cmp(&cost(wishes, b)))
    }

    #[test]
    fn what_is_found_row_by_row_is_the_best_of_all() {
        let mut found = 0;
        for n in 0..120_u32 {
            let at = |k: u32| f64::from(n.wrapping_mul(2_654_435_761).rotate_left(k * 5) % 40) / 40.0 * 330.0;
            let mut wishes: Vec<Wish> = (1..=1 + n % 5).map(|k| Wish { at: at(k), width: 40.0 + 13.0 * f64::from(k) }).collect();
            wishes.sort_by(|one, other| one.at.total_cmp(&other.at));
            for (rows, slack) in [(1, 2.0), (2, 2.0), (3, 2.0), (2, -9.0), (4, -9.0)] {
                let best = best(&wishes, 330.0, (rows, slack));
                found += usize::from(best.is_some());
                assert_eq!(best, of_all(&wishes, 330.0, (rows, slack)), "{wishes:?} {rows} {slack}");
            }
        }
        assert!(200 < found, "{found} fitted");
    }

    #[test]
    fn marks_at_one_point_and_narrow_pages_do_not_collide() {
        for width in [143.0, 171.0, 268.0, 296.0, 330.0, 452.0] {
            for at in [0.0, 10.0, width / 2.0, width] {
                check(&[(at, 92.0), (at, 65.0), (at + 1.0, 52.0), (at, 88.0), (1.5, 108.0)], width);
            }
            for n in 0..400_u32 {
                let at = |k: u32| f64::from(n.wrapping_mul(2_654_435_761).rotate_left(k * 5) % 1000) / 1000.0 * width;
                check(&[(at(1), 92.0), (at(2), 65.0), (at(3), 52.0), (at(4), 88.0)], width);
            }
        }
    }
}
