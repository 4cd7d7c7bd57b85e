//! From fractions of rows to whole ones: what is whole is taken, the best in fractions is looked for again.

use super::relax::Choice;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// A number drawn from 0 to 1.
pub(super) fn part(draw: &mut Draw) -> f64 {
    draw.below(1_000_000) as f64 / 1_000_000.0
}

/// So many rows, or as many as come out, from the strips left, which are taken.
pub(super) fn dive(
    choice: &Choice<'_>,
    which: &[usize],
    left: &mut [u32],
    rows: usize,
    draw: &mut Draw,
    patience: &mut Patience<'_>,
) -> Vec<usize> {
    let mut which: Vec<usize> = which.to_vec();
    let mut taken: Vec<usize> = vec![];
    while taken.len() < rows {
        which.retain(|nth| choice.patterns.get(*nth).is_some_and(|pattern| 0 < pattern.times(left)));
        let lacks = rows.saturating_sub(taken.len());
        let relaxed = choice.relaxed(&which, left, lacks, patience);
        let before = taken.len();
        for (nth, level) in &relaxed.levels {
            for _ in 0..(level + 1e-6).floor() as usize {
                take(choice, *nth, left, rows, &mut taken);
            }
        }
        if taken.len() == before {
            let likely = relaxed.levels.iter().map(|(nth, level)| (level.fract() * (0.5 + part(draw)), *nth));
            match likely.max_by(|a, b| a.0.total_cmp(&b.0)) {
                Some((_, nth)) => take(choice, nth, left, rows, &mut taken),
                None => break,
            }
            if taken.len() == before {
                break;
            }
        }
    }
    taken
}

fn take(choice: &Choice<'_>, nth: usize, left: &mut [u32], rows: usize, taken: &mut Vec<usize>) {
    if taken.len() < rows && choice.patterns.get(nth).is_some_and(|pattern| pattern.take(left)) {
        taken.push(nth);
    }
}
