//! How few cuts do: the pieces that rows need at least, against the strips they come from.
//!
//! A row has as many pieces as it takes of the longest strips, or more. One with no more falls short of so many longest
//! strips by little; where that is too little for a further piece or a rest that goes back, each of its strips gives one
//! piece and nothing else, and what these strips are over the panel is wasted. All other rows have a piece more, and
//! pieces and rests beyond one for each strip take a kerf each.

use super::stock::Stock;

/// So many choices of strips are looked through for the row that wastes least.
const CHOICES: u32 = 50_000;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FewCuts {
    square: f64,
    kerf: f64,
    /// Pieces of all rows, where no row has the fewest.
    pieces: f64,
    /// No more rows than these can have the fewest pieces.
    short: f64,
    /// What each of them wastes at least.
    waste: f64,
}

impl FewCuts {
    pub(super) fn of(stock: &Stock, rows: usize) -> FewCuts {
        let longest = stock.kinds.first().map_or(0.0, |kind| kind.long);
        let few = if 0.0 < longest { (stock.panel / longest).ceil() } else { 0.0 };
        let rows = rows as f64;
        let all = FewCuts { square: stock.square, kerf: stock.kerf, pieces: rows * (few + 1.0), short: rows, waste: 0.0 };
        let shortest = stock.panel - (few - 1.0) * longest;
        if shortest + stock.kerf + stock.least.min(stock.keep.max(1.0)) <= longest {
            return all; // strips of such a row may give more
        }
        let mut search = Least { stock, over: f64::MAX, looked: 0 };
        search.go_on(0, stock.panel, few as u32);
        if CHOICES < search.looked {
            return all;
        }
        FewCuts { short: most_short(stock, few, rows), waste: search.over.min(longest), ..all }
    }

    /// The least lost to kerfs and to rows of few pieces, of plans with so many strips and rests that go back.
    pub(super) fn lost(&self, strips: f64, back: f64) -> f64 {
        let cuts = (self.pieces + back - strips).max(0.0);
        let short = if self.waste < self.kerf { cuts.min(self.short) } else { 0.0 };
        self.waste * short + self.kerf * (cuts - short)
    }

    /// The same with squaring, where at least `other` is wasted and there are so many strips or more.
    pub(super) fn least_lost(&self, strips: f64, back: f64, other: f64) -> f64 {
        let of = |strips: f64| 2.0 * self.square * strips + other.max(self.lost(strips, back));
        if self.kerf <= 2.0 * self.square {
            return of(strips); // a strip more costs at least what it saves
        }
        let more = (self.pieces + back - strips).max(0.0) as u32;
        (0..=more).map(|more| of(strips + f64::from(more))).fold(f64::MAX, f64::min)
    }
}

/// How many rows of so few pieces the longest strips are long enough for.
fn most_short(stock: &Stock, few: f64, rows: f64) -> f64 {
    let mut most = rows;
    while 0.0 < most && longest(stock, most * few) < most * stock.panel {
        most -= 1.0;
    }
    most
}

/// What so many of the longest strips are long together; nothing where there are not so many.
fn longest(stock: &Stock, strips: f64) -> f64 {
    let mut lacks = strips;
    let mut sum = 0.0;
    for kind in &stock.kinds {
        let taken = lacks.min(f64::from(kind.count));
        sum += taken * kind.long;
        lacks -= taken;
    }
    if lacks == 0.0 { sum } else { 0.0 }
}

/// The least that so many strips can be over the panel.
struct Least<'a> {
    stock: &'a Stock,
    over: f64,
    looked: u32,
}

impl Least<'_> {
    fn go_on(&mut self, from: usize, lacks: f64, strips: u32) {
        self.looked = self.looked.saturating_add(1);
        if CHOICES < self.looked {
            return;
        }
        if strips == 0 {
            self.over = if lacks <= 0.0 { self.over.min(-lacks) } else { self.over };
            return;
        }
        for (nth, kind) in self.stock.kinds.iter().enumerate().skip(from) {
            if kind.long * f64::from(strips) < lacks {
                break; // the kinds after it are shorter still
            }
            self.go_on(nth, lacks - kind.long, strips.saturating_sub(1));
        }
    }
}
