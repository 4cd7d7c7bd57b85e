//! The best way to cut one board of each kind at given prices: two stages, either first, from any stretch of the board.
//!
//! Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965 (recalled).

mod view;

use super::cut::{Cut, Strip};
use super::stock::{Kind, Stock};
use super::sums::Sums;
use view::View;

/// What pieces are worth, and what a unit of cost is beside it (0: cost is no matter).
pub(super) struct Prices<'a> {
    /// One piece of each part; of glued parts it says nothing.
    pub parts: &'a [i64],
    /// One strip of each width.
    pub strips: &'a [i64],
    /// Where strips may have any width: each unit of it, by part. Else empty.
    pub rates: &'a [i64],
    pub scale: i64,
}

/// A width of bands.
struct Size {
    wide: i64,
    /// How many of the widths of fixed parts are within it.
    fixed: usize,
    /// The strips of this width.
    strips: Vec<usize>,
}

/// So many glue strips of each glued part one after another in a band, and the length they fill.
#[derive(Clone)]
struct Row {
    fills: i64,
    many: Vec<(usize, i64)>,
}

/// What never changes about a kind.
struct Board {
    /// Along a band, by part.
    along: Sums,
    /// Across the board, by place in `sizes`.
    across: Sums,
    sizes: Vec<Size>,
    /// The widths of fixed parts, in order.
    levels: Vec<i64>,
    rows: Vec<Row>,
    /// The lengths of sections, in order.
    sections: Vec<i64>,
    /// Along the board, by place in `sections`.
    lengths: Sums,
    /// Stretches that leave something worth keeping, in order.
    stretches: Vec<i64>,
}

pub(super) struct Saw<'a> {
    stock: &'a Stock,
    pub strips: Vec<Strip>,
    boards: Vec<Board>,
    /// Every way to put glue strips one after another is looked at: what is found is the most there is.
    pub is_exact: bool,
}

/// What the best cut of a board is worth less its cost, and how it goes; no cut is worth more.
pub(super) struct Best {
    pub most: i64,
    pub cut: Cut,
}

/// So many sums for one kind at most, and so many steps from sum to sum.
const SUMS_MOST: usize = 4_000;
const STEPS_MOST: usize = 80_000;
const ROWS_MOST: usize = 200;

impl<'a> Saw<'a> {
    /// `None` where there are too many sums to try them all.
    pub(super) fn new(stock: &'a Stock, strips: Vec<Strip>) -> Option<Saw<'a>> {
        let boards: Vec<Board> = stock.kinds.iter().map(|kind| Board::of(stock, &strips, kind)).collect::<Option<_>>()?;
        let is_exact = boards.iter().all(|board| board.rows.len() < ROWS_MOST);
        Some(Saw { stock, strips, boards, is_exact })
    }

    pub(super) fn best(&self, kind: usize, prices: &Prices<'_>) -> Option<Best> {
        let (own, board) = (self.stock.kinds.get(kind)?, self.boards.get(kind)?);
        View::new(self, (kind, own, board), prices).best()
    }

    /// About how many sums one look at a kind takes.
    pub(super) fn effort(&self, kind: usize) -> u64 {
        let Some(board) = self.boards.get(kind) else { return 0 };
        let along = board.along.fills.len().saturating_mul(board.levels.len().saturating_add(1));
        let across = board.across.fills.len().saturating_mul(board.sizes.len()).saturating_mul(board.sections.len().saturating_add(12));
        along.saturating_add(across) as u64
    }
}

impl Board {
    fn of(stock: &Stock, strips: &[Strip], kind: &Kind) -> Option<Board> {
        let own = || stock.parts.iter().zip(&kind.may).filter(|(_, may)| **may).map(|(part, _)| part);
        let step = |size: i64| size.saturating_add(stock.kerf);
        let steps: Vec<i64> = stock.parts.iter().zip(&kind.may).map(|(part, may)| if *may { step(part.long) } else { 0 }).collect();
        let along = Sums::of(&steps, step(kind.long), SUMS_MOST)?;
        let levels = in_order(own().filter(|part| !part.glue).map(|part| kind.across(part.wide)));
        let is_own = |strip: &&Strip| kind.may.get(strip.part) == Some(&true) && strip.wide <= kind.wide;
        let wides = in_order(levels.iter().copied().chain(strips.iter().filter(is_own).map(|strip| strip.wide)));
        let of_width = |wide| strips.iter().enumerate().filter(|(_, s)| is_own(s) && s.wide == wide).map(|(nth, _)| nth).collect();
        let size = |wide: &i64| Size { wide: *wide, fixed: levels.partition_point(|level| level <= wide), strips: of_width(*wide) };
        let sizes: Vec<Size> = wides.iter().map(size).collect();
        let sums_most = SUMS_MOST.min(STEPS_MOST.checked_div(sizes.len()).unwrap_or(SUMS_MOST));
        let across = Sums::of(&wides.iter().map(|wide| step(*wide)).collect::<Vec<_>>(), step(kind.wide), sums_most)?;
        let sections = in_order(own().map(|part| part.long.max(stock.rip_min)));
        let lengths = Sums::of(&sections.iter().map(|long| step(*long)).collect::<Vec<_>>(), step(kind.long), SUMS_MOST)?;
        let mut board = Board { along, across, sizes, levels, rows: vec![], sections, lengths, stretches: vec![] };
        board.rows = rows(stock, kind);
        board.stretches = board.stretches(stock, kind);
        Some(board)
    }

    fn stretches(&self, stock: &Stock, kind: &Kind) -> Vec<i64> {
        let end = |fill: &i64| fill.saturating_sub(stock.kerf).max(stock.plane_min).max(1);
        let rip = self.along.fills.iter().map(|fill| end(fill).max(stock.rip_min));
        in_order(rip.chain(self.lengths.fills.iter().map(end)).filter(|stretch| 0 < stock.rest(kind, *stretch)))
    }
}

fn in_order(all: impl Iterator<Item = i64>) -> Vec<i64> {
    all.collect::<crate::quantity::Set<i64>>().iter().copied().collect()
}

/// All ways to put glue strips one after another into a band, up to so many; the first is none.
fn rows(stock: &Stock, kind: &Kind) -> Vec<Row> {
    let mut rows = vec![Row { fills: 0, many: vec![] }];
    let room = kind.long.saturating_add(stock.kerf);
    for (nth, part) in stock.parts.iter().enumerate().filter(|(nth, part)| part.glue && kind.may.get(*nth) == Some(&true)) {
        let step = part.long.saturating_add(stock.kerf).max(1);
        for row in rows.clone() {
            let most = room.saturating_sub(row.fills).checked_div(step).unwrap_or(0).min(ROWS_MOST as i64);
            for n in 1..=most {
                if rows.len() < ROWS_MOST {
                    let many = row.many.iter().copied().chain([(nth, n)]).collect();
                    rows.push(Row { fills: row.fills.saturating_add(step.saturating_mul(n)), many });
                }
            }
        }
    }
    rows
}
