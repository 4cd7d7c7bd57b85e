//! How many sets wood gives that isn't sorted yet: drawn so many times from what is known of its rejects, each time judged as a plan
//! is, and told by how often a number of sets was reached.
//!
//! The two levels are those of [`crate::haul::enough`], which no plan knows; a test holds them together.

mod judge;
#[cfg(test)]
mod tests;
mod wood;

use super::parts::problem::Problem;
use super::patience::Patience;
use crate::quantity::Count;
use judge::Judge;

/// Reached in so many of a hundred draws: likely, sure.
pub const LEVELS: [usize; 2] = [80, 95];
/// So many draws, where they can all be judged in time; else the first of them.
pub const DRAWS: usize = 1_000;
/// All pages draw the same lots.
pub const SEED: u32 = 1;

/// What is known of a pile's pieces.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pieces {
    /// Sorted, and good.
    pub certain: Count,
    pub unsorted: Count,
    /// The share of good ones among the unsorted as a Beta, each side counted in pieces: good, rejected.
    pub share: [f64; 2],
    /// Names the pile: it draws the same lots whatever else there is.
    pub lots: u64,
    /// Names the piles that have one share of rejects: those of one wood in one haul.
    pub kin: u64,
}

/// A plan that is known: sets, and the boards of each pile it makes them of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Known {
    pub boards: Vec<i64>,
    pub sets: i64,
}

/// Boards and parts, and what is known of the boards of each pile.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hoped {
    pub problem: Problem,
    /// In the order of the problem's piles, whose own counts say nothing.
    pub piles: Vec<Pieces>,
    /// No fewer sets are told than these make, wherever their boards are there.
    pub known: Vec<Known>,
}

/// How many sets there are to hope for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outlook {
    /// Reached in 95 of a hundred draws.
    pub sure: i64,
    /// Reached in 80.
    pub likely: i64,
    /// If every unsorted piece is good: so many were found, and no plan makes more than so many.
    pub all: i64,
    pub most: i64,
    /// The parts that alone keep one more than is sure from being sure, and the part that most often keeps it from being one more: those that
    /// do so most often first. None where all is sorted, or where only wood as a whole is short.
    pub short: Vec<usize>,
    /// So many were judged; none where all is sorted.
    pub draws: Count,
    /// Of these, such that may give more than the plan that was found.
    pub open: Count,
}

impl Outlook {
    /// The standard error of the share of draws at the level of sure, from 0 to 1: sqrt(p (1 - p) / draws). None without draws.
    ///
    /// ```
    /// use fivebar_core::plan::outlook::Outlook;
    /// let off = Outlook { draws: 1_000, ..Outlook::default() }.off().unwrap();
    /// assert!((off - 0.0069).abs() < 0.00005); // 95 % of a thousand draws, give or take 0.7
    /// ```
    pub fn off(&self) -> Option<f64> {
        let sure = LEVELS.iter().fold(0, |most, level| most.max(*level)) as f64 / 100.0;
        (0 < self.draws).then(|| (sure * (1.0 - sure) / f64::from(self.draws)).sqrt())
    }
}

impl Hoped {
    /// Boards of each pile if every unsorted piece is good.
    pub fn all_good(&self) -> Vec<i64> {
        self.piles.iter().map(|pile| i64::from(pile.certain).saturating_add(i64::from(pile.unsorted))).collect()
    }

    pub fn is_sorted(&self) -> bool {
        self.piles.iter().all(|pile| pile.unsorted == 0)
    }
}

/// The reckoning under way.
pub struct Reckoning {
    judge: Judge,
}

impl Reckoning {
    /// Draws the lots. The same seed gives the same answer.
    pub fn begin(hoped: &Hoped, seed: u64) -> Reckoning {
        let draws = if hoped.is_sorted() { vec![] } else { wood::drawn(&hoped.piles, seed) };
        Reckoning { judge: Judge::new(hoped, draws) }
    }

    /// Judges some more draws, which takes some milliseconds; the answer when no more are to be judged.
    pub fn turn(&mut self) -> Option<Outlook> {
        self.judge.turn()
    }

    /// The answer.
    pub fn to_its_end(mut self) -> Outlook {
        loop {
            if let Some(outlook) = self.turn() {
                return outlook;
            }
        }
    }
}

/// How many sets there are to hope for.
pub fn outlook(hoped: &Hoped, seed: u64) -> Outlook {
    Reckoning::begin(hoped, seed).to_its_end()
}

/// How many pieces of these piles are likely good together: reached in 80 of a hundred of the draws that tell how many sets there are to hope for,
/// so where each piece gives a set both are the same.
pub fn likely_good(piles: &[Pieces], seed: u64) -> i64 {
    let [likely, _] = LEVELS;
    let mut all: Vec<i64> = wood::drawn(piles, seed).into_iter().map(|draw| draw.into_iter().fold(0, i64::saturating_add)).collect();
    reached(&mut all, likely).unwrap_or(0)
}

/// What is reached in so many of a hundred draws.
fn reached(draws: &mut [i64], hundredths: usize) -> Option<i64> {
    draws.sort_unstable_by(|one, other| other.cmp(one));
    draws.get(draws.len().saturating_mul(hundredths).div_ceil(100).saturating_sub(1)).copied()
}

/// So many steps at most, or until worth and bound are such; how many it took, and what was done.
fn steps<T>(most: u64, ends: impl Fn(&[i128], &[i128]) -> bool, act: impl FnOnce(&mut Patience<'_>) -> T) -> (u64, T) {
    let mut goes_on = |progress: super::patience::Progress<'_>| !ends(progress.worth, progress.bound);
    let mut patience = Patience::new(Some(most), &mut goes_on);
    let done = act(&mut patience);
    (patience.steps(), done)
}
