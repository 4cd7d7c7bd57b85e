//! Every length that pieces and their kerfs can fill, and from which shorter one each is reached.

/// No such length.
pub(super) const NONE: u32 = u32::MAX;

/// The lengths in order, from nothing; `from[part][nth]` is the place of that length without one such part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Sums {
    pub lengths: Vec<i64>,
    pub from: Vec<Vec<u32>>,
    /// How many of each part fit one after another.
    pub copies: Vec<i64>,
}

impl Sums {
    pub(super) fn none() -> Sums {
        Sums { lengths: vec![], from: vec![], copies: vec![] }
    }

    /// All sums of the sizes up to `room`; a size of nothing is left out. `None` where there are more than `most`.
    pub(super) fn of(sizes: &[i64], room: i64, most: usize) -> Option<Sums> {
        let copies = sizes.iter().map(|size| room.checked_div(*size).unwrap_or(0)).collect();
        let mut sums = Sums { lengths: vec![0], from: sizes.iter().map(|_| vec![NONE]).collect(), copies };
        let mut heads = vec![0_usize; sizes.len()]; // of each size: the first length to which it was not yet added
        loop {
            let reached = |(size, head): (&i64, &usize)| if *size <= 0 { None } else { sums.lengths.get(*head)?.checked_add(*size) };
            let Some(next) = sizes.iter().zip(&heads).filter_map(reached).min().filter(|next| *next <= room) else { return Some(sums) };
            if most <= sums.lengths.len() {
                return None;
            }
            for ((size, head), from) in sizes.iter().zip(&mut heads).zip(&mut sums.from) {
                let met = 0 < *size && sums.lengths.get(*head).and_then(|length| length.checked_add(*size)) == Some(next);
                from.push(if met { u32::try_from(*head).unwrap_or(NONE) } else { NONE });
                *head = head.saturating_add(usize::from(met));
            }
            sums.lengths.push(next);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_sums_are_found_once_and_lead_back() {
        let sums = Sums::of(&[4, 6, 0], 14, 99).unwrap();
        assert_eq!(sums.lengths, [0, 4, 6, 8, 10, 12, 14]);
        assert_eq!(sums.from, [vec![NONE, 0, NONE, 1, 2, 3, 4], vec![NONE, NONE, 0, NONE, 1, 2, 3], vec![NONE; 7]]);
        assert_eq!(Sums::of(&[4, 6], 14, 3), None);
        assert_eq!(Sums::of(&[], 14, 3).unwrap().lengths, [0]);
    }
}
