//! Which kinds of boards to buy are tried without the others, and how long: each alone, then every two of three or more. All of it together
//! takes no longer than a first plan.

use super::FIRST;
use fivebar_core::sheet::make::buy::Kinds;

/// Less is too short for a plan, in ms.
const LEAST: u32 = 10;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mixes {
    kinds: usize,
    /// Those that are tried now: the nth of each alone, then of every two.
    at: Option<usize>,
    all: usize,
    /// What is left of the time, and what each of them may take of it.
    left: u32,
    share: u32,
}

impl Mixes {
    /// Of so many kinds; of one alone, and of two alike, there is nothing to mix.
    pub fn of(kinds: usize) -> Mixes {
        let alone = if 1 < kinds { kinds } else { 0 };
        let pairs = if 2 < kinds { kinds.saturating_mul(kinds.saturating_sub(1)) / 2 } else { 0 };
        let share = |n: usize| FIRST.checked_div(u32::try_from(n).unwrap_or(u32::MAX)).unwrap_or(FIRST);
        let with_pairs = alone.saturating_add(pairs);
        let all = if LEAST <= share(with_pairs) { with_pairs } else { alone };
        Mixes { kinds, at: None, all, left: FIRST, share: share(all).max(LEAST) }
    }

    /// The next kinds, by their places among the boards; one twice where it is alone. None where all were tried, or the time is over.
    pub fn next(&mut self) -> Option<[usize; 2]> {
        let next = self.at.map_or(0, |last| last.saturating_add(1));
        if self.all <= next || self.left < LEAST {
            return None;
        }
        self.at = Some(next);
        let Some(mut nth) = next.checked_sub(self.kinds) else { return Some([next, next]) };
        for one in 0..self.kinds {
            let behind = self.kinds.saturating_sub(one).saturating_sub(1);
            if nth < behind {
                return Some([one, one.saturating_add(nth).saturating_add(1)]);
            }
            nth = nth.saturating_sub(behind);
        }
        None
    }

    /// How long the next plan may take: half of a share where kinds are new, an eighth where it is with fewer of them; nothing where none are
    /// tried yet.
    pub fn spend(&mut self, new: bool) -> Option<u32> {
        self.at?;
        let ms = (self.share / if new { 2 } else { 8 }).max(1).min(self.left);
        self.left = self.left.saturating_sub(ms);
        Some(ms)
    }

    /// They are begun, and no time is left for them.
    pub fn is_spent(&self) -> bool {
        self.at.is_some() && self.left == 0
    }

    /// How far the kinds were gone through.
    pub fn tried(&self) -> Kinds {
        let done = self.at.map_or(0, |last| last.saturating_add(1)).saturating_sub(usize::from(self.is_spent()));
        match () {
            () if self.kinds < 2 || done < self.kinds => Kinds::Together,
            () if self.kinds < done && done == self.all => Kinds::InPairs,
            () => Kinds::EachAlone,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is tried of so many kinds, where each takes its first plan and so many with fewer; and how far that goes, in no more than 300 ms.
    #[track_caller]
    fn check(kinds: usize, fewer: usize, wanted: &[[usize; 2]], tried: Kinds) {
        let (mut mixes, mut met, mut spent) = (Mixes::of(kinds), vec![], 0);
        assert_eq!(mixes.spend(true), None, "all of them together have a time of their own");
        while let Some(next) = mixes.next() {
            met.push(next);
            spent += mixes.spend(true).unwrap();
            spent += (0..fewer).filter_map(|_| mixes.spend(false)).sum::<u32>();
        }
        assert!(spent <= 300, "{kinds}: {spent} ms");
        assert_eq!((&met[..met.len().min(wanted.len())], mixes.tried()), (wanted, tried), "{kinds}");
    }

    #[test]
    fn all_kinds_together_take_no_longer_than_a_plan() {
        check(1, 4, &[], Kinds::Together);
        check(2, 4, &[[0, 0], [1, 1]], Kinds::EachAlone);
        check(3, 4, &[[0, 0], [1, 1], [2, 2], [0, 1], [0, 2], [1, 2]], Kinds::InPairs);
        check(7, 2, &[[0, 0], [1, 1]], Kinds::InPairs);
        check(8, 4, &[[0, 0], [1, 1]], Kinds::EachAlone);
        // So many that there is no time for each.
        check(60, 4, &[[0, 0], [1, 1]], Kinds::Together);
        check(3, 60, &[[0, 0]], Kinds::Together);
    }
}
