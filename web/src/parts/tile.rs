//! A tally tile: one pile, its figure, its marks. A tap anywhere on it counts.
use crate::parts::bars::{Bars, Cut, bars, gate};
use crate::parts::fraction::worded;
use crate::parts::page::Page;
use crate::view::{El, el};

/// What a tile shows.
#[derive(Clone, Debug, Default)]
pub struct Tile {
    pub name: String,
    /// Thickness, width and length.
    pub size: String,
    /// Its size alone tells it from another pile: it stands on a narrow page too.
    pub by_size: bool,
    /// The figure as the locale writes it.
    pub figure: String,
    pub counted: u32,
    pub hollow: u32,
    pub look: Look,
    /// What the last tap added, such as "+5".
    pub plus: String,
    /// It stands alone, as wide as the column: its marks are cut large.
    pub wide: bool,
    /// What a reader hears after the figure: what it counts, what a tap adds.
    pub said: String,
}

/// How a tile stands out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Look {
    #[default]
    Plain,
    /// The pile of the last tap.
    Last,
    /// Some of it could not be written.
    Failed,
    /// A touch on it was ignored.
    Ignored,
}

/// A tile for a pile.
pub fn tile<M>(tile: Tile, page: Page, tap: M) -> El<M> {
    let class = match tile.look {
        Look::Plain => "tile",
        Look::Last => "tile last",
        Look::Failed => "tile fail",
        Look::Ignored => "tile ignored",
    };
    let (size, per_row) = cut(&tile, page);
    let marks = Bars { cut: tile.counted, hollow: tile.hollow, per_row, size };
    let sizes = (!tile.size.is_empty() || !tile.plus.is_empty()).then(|| {
        el("span", if tile.by_size { "szr" } else { "szr fold" })
            .kid(worded("span", "sz", tile.size))
            .kids((!tile.plus.is_empty()).then(|| el("span", "plus").text(tile.plus)))
    });
    el("button", class)
        .attr("type", "button")
        .on_tap(tap)
        .kid(worded("span", "nm", tile.name))
        .kids(sizes)
        .kid(el("span", "mk").kid(el("span", "fg").text(tile.figure)).kid(bars(marks)))
        .kids((!tile.said.is_empty()).then(|| el("span", "vh").text(tile.said)))
}

/// How large the marks are, and how many gates to a row. Three figures leave no room beside them: one long row below.
fn cut(tile: &Tile, page: Page) -> (Cut, usize) {
    match (tile.wide, tile.counted >= 100, page.is_narrow()) {
        (true, _, false) => (Cut::Tall, 5),
        (true, _, true) => (Cut::Large, 5),
        (_, false, false) => (Cut::Tile, 4),
        (_, false, true) => (Cut::Narrow, 3),
        (_, true, false) => (Cut::Tile, 7),
        (_, true, true) => (Cut::Narrow, 7),
    }
}

/// The blank board at the end: a new pile begins there, its marks missing.
pub fn blank<M>(name: String, under: String, tap: M) -> El<M> {
    let words = el("span", "").kid(el("span", "nm").text(name)).kids((!under.is_empty()).then(|| el("span", "s").text(under)));
    el("button", "blank").attr("type", "button").on_tap(tap).kid(gate(0, false)).kid(words)
}

/// The one large board of day one.
#[derive(Clone, Debug, Default)]
pub struct First {
    pub name: String,
    pub say: String,
    pub figure: String,
    pub aside: String,
    pub counted: u32,
}

/// The first pile as a board as large as the screen; its gate fills with each tap.
pub fn first<M>(first: First, tap: M) -> El<M> {
    let what = el("span", "what").kid(el("span", "t22 w8").text(first.name)).kid(el("span", "t17").text(first.say));
    let low = el("span", "row low").kid(el("span", "t80 w8").text(first.figure)).kid(el("span", "t14 i2 right aside").text(first.aside));
    let strokes = if first.counted > 0 && first.counted.is_multiple_of(5) { 5 } else { first.counted % 5 };
    el("button", "tile day1 fill").attr("type", "button").on_tap(tap).kid(what).kid(gate(strokes, true)).kid(low)
}
