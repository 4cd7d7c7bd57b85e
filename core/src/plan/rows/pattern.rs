//! Which strips make a row: every choice that comes to the panel's length or over it by no more than an end may lose.

use super::stock::Stock;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// So many are listed; where there are more, some are drawn.
const MOST: usize = 40_000;
const DRAWN: usize = 12_000;

/// Strips for a row, by their kind, the longest first, and what one end is shortened by.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Pattern(pub Vec<u8>);

impl Pattern {
    pub(super) fn sum(&self, stock: &Stock) -> f64 {
        self.0.iter().map(|kind| stock.long(*kind)).sum()
    }

    pub(super) fn over(&self, stock: &Stock) -> f64 {
        self.sum(stock) - stock.panel
    }

    pub(super) fn is_legal(&self, stock: &Stock) -> bool {
        is_legal(stock, &self.0, self.over(stock))
    }

    /// Length lost, and the squares of what is used up.
    pub(super) fn cost(&self, stock: &Stock) -> (f64, f64) {
        let rest = stock.returned(self.over(stock));
        let kinds = || self.0.iter().map(|kind| stock.kind(*kind).low);
        (kinds().sum::<f64>() - stock.panel - rest, kinds().map(|low| low * low).sum::<f64>() - rest * rest)
    }

    /// How often it can be taken from these strips.
    pub(super) fn times(&self, left: &[u32]) -> u32 {
        let each = self.0.chunk_by(|a, b| a == b).filter_map(|run| {
            let there = left.get(usize::from(*run.first()?)).copied().unwrap_or(0);
            there.checked_div(u32::try_from(run.len()).ok()?)
        });
        each.min().unwrap_or(0)
    }

    /// Takes the strips; `false` and nothing taken where they are not there.
    pub(super) fn take(&self, left: &mut [u32]) -> bool {
        if self.times(left) == 0 {
            return false;
        }
        for kind in &self.0 {
            if let Some(there) = left.get_mut(usize::from(*kind)) {
                *there = there.saturating_sub(1);
            }
        }
        true
    }

    pub(super) fn put_back(&self, left: &mut [u32]) {
        for kind in &self.0 {
            if let Some(there) = left.get_mut(usize::from(*kind)) {
                *there = there.saturating_add(1);
            }
        }
    }
}

/// Whether a row of these strips can be laid, `over` taken off one end and both ends long enough.
pub(super) fn is_legal(stock: &Stock, kinds: &[u8], over: f64) -> bool {
    if over < 0.0 {
        return false;
    }
    let ends = kinds.iter().filter(|kind| stock.end <= stock.long(**kind)).count();
    let longest = kinds.iter().map(|kind| stock.long(*kind)).fold(0.0, f64::max);
    let alone = kinds.len() == 1;
    stock.end <= longest - over && (alone || 1 < ends)
}

pub(super) struct Patterns {
    pub all: Vec<Pattern>,
    /// Whether there are no others.
    pub complete: bool,
}

impl Patterns {
    pub(super) fn of(stock: &Stock, draw: &mut Draw, patience: &mut Patience<'_>) -> Patterns {
        let longest = stock.kinds.first().map_or(0.0, |kind| kind.long);
        let mut listed =
            Listed { stock, most: stock.panel + longest - stock.end, left: stock.counts(), row: vec![], all: vec![], looked: 0 };
        listed.go_on(0, 0.0);
        let complete = listed.all.len() <= MOST && listed.looked <= MOST.saturating_mul(16);
        let mut all = listed.all;
        if !complete {
            all = drawn(stock, draw, patience);
        }
        Patterns { all, complete }
    }
}

struct Listed<'a> {
    stock: &'a Stock,
    most: f64,
    left: Vec<u32>,
    row: Vec<u8>,
    all: Vec<Pattern>,
    looked: usize,
}

impl Listed<'_> {
    fn go_on(&mut self, from: u8, sum: f64) {
        self.looked = self.looked.saturating_add(1);
        if MOST < self.all.len() || MOST.saturating_mul(16) < self.looked {
            return;
        }
        if is_legal(self.stock, &self.row, sum - self.stock.panel) {
            self.all.push(Pattern(self.row.clone()));
        }
        for kind in from..u8::try_from(self.stock.kinds.len()).unwrap_or(u8::MAX) {
            let longer = sum + self.stock.long(kind);
            let there = self.left.get(usize::from(kind)).copied().unwrap_or(0);
            if there == 0 || self.most < longer {
                continue;
            }
            self.set(kind, there.saturating_sub(1));
            self.row.push(kind);
            self.go_on(kind, longer);
            self.row.pop();
            self.set(kind, there);
        }
    }

    fn set(&mut self, kind: u8, there: u32) {
        if let Some(own) = self.left.get_mut(usize::from(kind)) {
            *own = there;
        }
    }
}

/// Rows at random, each ended by the strip that fits best.
fn drawn(stock: &Stock, draw: &mut Draw, patience: &mut Patience<'_>) -> Vec<Pattern> {
    let mut all = vec![];
    let pieces: u32 = stock.counts().into_iter().fold(0, u32::saturating_add);
    for _ in 0..DRAWN {
        let mut row: Vec<u8> = vec![];
        let mut lacks = stock.panel;
        while 0.0 < lacks && row.len() < pieces as usize {
            let enough = stock.kinds.iter().rposition(|kind| lacks <= kind.long);
            let any = draw.below(stock.kinds.len());
            let kind = u8::try_from(enough.unwrap_or(any)).unwrap_or(0);
            row.push(kind);
            lacks -= stock.long(kind).max(1.0);
        }
        if !patience.spend((row.len() / 50) as u64) {
            break;
        }
        row.sort_unstable();
        let pattern = Pattern(row);
        if pattern.is_legal(stock) && 0 < pattern.times(&stock.counts()) {
            all.push(pattern);
        }
    }
    all.sort_unstable();
    all.dedup();
    all
}
