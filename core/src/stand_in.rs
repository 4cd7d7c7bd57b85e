//! Stand-ins that go when the face is built on the real core.
pub use rust_decimal::Decimal as Sum;
use serde::{Deserialize, Serialize};
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    pub id: String,
    pub at: i64,
    pub kind: String,
    pub sum: rust_decimal::Decimal,
}
#[derive(Serialize, Deserialize, Debug, PartialEq)]
pub struct Asked {
    pub upto: u32,
    pub seed: u32,
}
#[derive(Serialize, Deserialize, Debug, PartialEq)]
pub struct Found {
    pub best: u32,
    pub done: bool,
}
/// A stand-in for the long search; `tell` is called on the way and says whether to go on.
pub fn search(asked: &Asked, mut tell: impl FnMut(u32) -> bool) -> Found {
    let mut best = asked.seed;
    for round in 0..asked.upto {
        for _ in 0..1_000_000u32 {
            best = best.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        }
        if !tell(round) {
            return Found { best, done: false };
        }
    }
    Found { best, done: true }
}
#[cfg(test)]
mod tests {
    #[test]
    fn searches() {
        assert!(super::search(&super::Asked { upto: 1, seed: 1 }, |_| true).done)
    }
}
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Grade {
    Clear,
    Knotty,
    Short,
}
#[derive(Default)]
pub struct Tally {
    counts: [u32; 3],
    last: Option<Grade>,
}
impl Tally {
    pub fn total(&self) -> u32 {
        self.counts.iter().sum()
    }
    pub fn grades(&self) -> impl Iterator<Item = (Grade, u32)> {
        [Grade::Clear, Grade::Knotty, Grade::Short].into_iter().zip(self.counts)
    }
    pub fn still_needed(&self) -> Option<u32> {
        Some(40u32.saturating_sub(self.total()))
    }
    pub fn last(&self) -> Option<Grade> {
        self.last
    }
    pub fn add(&mut self, g: Grade) {
        if let Some(c) = self.counts.get_mut(g as usize) {
            *c += 1;
            self.last = Some(g);
        }
    }
    pub fn take_back(&mut self) {
        if let Some(g) = self.last.take() {
            self.counts[g as usize] -= 1;
        }
    }
}
