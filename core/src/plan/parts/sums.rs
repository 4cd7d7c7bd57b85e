//! Every length, or width, that sizes and their kerfs can fill, and from which smaller one each is reached.

/// No such length.
pub(super) const NONE: u32 = u32::MAX;

/// The fillings in order, from nothing; for each, size by size, the place of that filling without one such size.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Sums {
    pub fills: Vec<i64>,
    sizes: usize,
    from: Vec<u32>,
}

impl Sums {
    /// All sums of the sizes up to `room`; a size of nothing is left out. `None` where there are more than `most`.
    pub(super) fn of(sizes: &[i64], room: i64, most: usize) -> Option<Sums> {
        let mut sums = Sums { fills: vec![0], sizes: sizes.len(), from: vec![NONE; sizes.len()] };
        let mut heads = vec![0_usize; sizes.len()]; // of each size: the first filling to which it was not yet added
        loop {
            let reached = |(size, head): (&i64, &usize)| if *size <= 0 { None } else { sums.fills.get(*head)?.checked_add(*size) };
            let Some(next) = sizes.iter().zip(&heads).filter_map(reached).min().filter(|next| *next <= room) else { return Some(sums) };
            if most <= sums.fills.len() {
                return None;
            }
            for (size, head) in sizes.iter().zip(&mut heads) {
                let met = 0 < *size && sums.fills.get(*head).and_then(|fill| fill.checked_add(*size)) == Some(next);
                sums.from.push(if met { u32::try_from(*head).unwrap_or(NONE) } else { NONE });
                *head = head.saturating_add(usize::from(met));
            }
            sums.fills.push(next);
        }
    }

    /// Size by size, the places from which a place is reached.
    pub(super) fn from(&self, place: usize) -> &[u32] {
        let begins = place.saturating_mul(self.sizes);
        self.from.get(begins..begins.saturating_add(self.sizes)).unwrap_or(&[])
    }

    /// The place of the greatest filling within `room`; `None` below nothing.
    pub(super) fn within(&self, room: i64) -> Option<usize> {
        self.fills.partition_point(|fill| *fill <= room).checked_sub(1)
    }
}

/// The most that each filling can be worth, or any smaller one, and the size that was put in last.
#[derive(Clone, Debug, Default)]
pub(super) struct Filled {
    pub worth: Vec<i64>,
    /// By place; `SKIP` where the smaller filling is as good.
    last: Vec<u16>,
}

const SKIP: u16 = u16::MAX;

impl Filled {
    /// As many of each size as one likes; a size worth nothing is left out.
    pub(super) fn of(sums: &Sums, worth: &[i64]) -> Filled {
        let mut filled = Filled { worth: Vec::with_capacity(sums.fills.len()), last: Vec::with_capacity(sums.fills.len()) };
        let offers: Vec<(usize, i64)> = worth.iter().copied().enumerate().filter(|(_, worth)| 0 < *worth).collect();
        let mut best = 0_i64;
        for place in 0..sums.fills.len() {
            let mut last = SKIP;
            let from = sums.from(place);
            for (nth, worth) in &offers {
                // no such filling: no such place
                let Some(before) = from.get(*nth).and_then(|from| filled.worth.get(*from as usize)) else { continue };
                let with = before.saturating_add(*worth);
                if best < with {
                    (best, last) = (with, *nth as u16);
                }
            }
            filled.worth.push(best);
            filled.last.push(last);
        }
        filled
    }

    pub(super) fn at(&self, place: usize) -> i64 {
        self.worth.get(place).copied().unwrap_or(0)
    }

    /// The sizes that make the worth at a place.
    pub(super) fn back(&self, sums: &Sums, place: usize) -> Vec<usize> {
        let (mut place, mut put) = (place, vec![]);
        loop {
            let Some(last) = self.last.get(place) else { return put };
            if *last == SKIP {
                let Some(before) = place.checked_sub(1) else { return put };
                place = before;
            } else {
                put.push(usize::from(*last));
                let Some(before) = sums.from(place).get(usize::from(*last)) else { return put };
                place = *before as usize;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_sums_are_found_once_and_lead_back() {
        let sums = Sums::of(&[4, 6, 0], 15, 99).unwrap();
        assert_eq!(sums.fills, [0, 4, 6, 8, 10, 12, 14]);
        assert_eq!([sums.from(2), sums.from(3)], [[NONE, 0, NONE], [1, NONE, NONE]]);
        assert_eq!([sums.within(9), sums.within(-1)], [Some(3), None]);
        assert_eq!(Sums::of(&[4, 6], 14, 3), None);
        let filled = Filled::of(&sums, &[5, 10, 9]);
        assert_eq!(filled.worth, [0, 5, 10, 10, 15, 20, 20]);
        assert_eq!(filled.back(&sums, 4), [0, 1]);
    }
}
