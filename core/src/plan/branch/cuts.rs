//! Cuts: what no choice of whole ways can pass, though fractions do.
//!
//! Limits are mixed as the programme mixes them, and rounded as only whole numbers allow: Gomory, "Outline of an algorithm
//! for integer solutions to linear programs", Bulletin of the American Mathematical Society 64, 1958; Nemhauser and Wolsey,
//! "A recursive procedure to generate all cuts for 0-1 mixed integer programs", Mathematical Programming 46, 1990 (recalled).

use super::{End, Fractions, Of, Way};

/// What cuts are told in: such parts of one.
pub(super) const FINE: i128 = 1024;
/// What limits are mixed in.
const WHOLE: i128 = 1 << 30;
/// So many cuts at a time, those that cut off most.
const MOST: usize = 16;

/// What each way takes of a cut, and how much of it there is.
type Cut = (Vec<i64>, i64);

pub(super) fn found(all: &[Way], many: i64, fractions: &Fractions) -> Vec<Cut> {
    let mut cuts: Vec<(f64, Cut)> = vec![];
    for mix in fractions.lp.mixes() {
        let Some((cells, end)) = mixed(all, (many, &fractions.ends), mix) else { continue };
        let taken: f64 = fractions.levels.iter().filter_map(|(place, level)| Some(*cells.get(*place)? as f64 * level)).sum();
        let over = (taken - end as f64) / FINE as f64;
        if 0.002 < over {
            cuts.push((over, (cells, end)));
        }
    }
    cuts.sort_by(|a, b| b.0.total_cmp(&a.0));
    cuts.into_iter().take(MOST).map(|(_, cut)| cut).collect()
}

/// The limits mixed and rounded; `None` where that cuts nothing off.
///
/// What is left of a limit counts too: a limit that is in the mix by less than nothing is put to it again, by so much over `sharp`.
fn mixed(all: &[Way], (many, ends): (i64, &[End]), mix: &[f64]) -> Option<Cut> {
    let (row, own) = mix.split_last()?;
    let one = whole(row.rem_euclid(1.0));
    let mut parts: Vec<i128> = own.iter().zip(ends).map(|(part, end)| part_of(*part, end)).collect();
    let by = |parts: &[i128], times: &dyn Fn(&End) -> i64| {
        parts
            .iter()
            .zip(ends)
            .filter(|(part, _)| **part != 0)
            .fold(0_i128, |sum, (part, end)| sum.saturating_add(part.saturating_mul(i128::from(times(end)))))
    };
    let given = |parts: &[i128]| by(parts, &|end| end.end).saturating_add(one.saturating_mul(i128::from(many)));
    let rest = given(&parts).rem_euclid(WHOLE);
    let sharp = WHOLE.saturating_sub(rest);
    if rest < WHOLE >> 6 || sharp < WHOLE >> 6 {
        return None;
    }
    let is_whole = |end: &End| matches!(end.of, Of::Thing(_));
    let over = parts.iter_mut().zip(ends).filter(|(part, end)| is_whole(end) && rest < **part);
    over.for_each(|(part, _)| *part = part.saturating_sub(WHOLE));
    let back: Vec<i128> = parts.iter().map(|part| part.saturating_neg().max(0)).collect();
    let fine = |sum: i128| sum.saturating_mul(FINE).div_euclid(sharp);
    let cell = |way: &Way| {
        let takes = |end: &End| way.takes(end.of).saturating_mul(end.sign);
        let sum = by(&parts, &takes).saturating_add(one);
        let more = sum.rem_euclid(WHOLE).saturating_sub(rest).max(0).saturating_add(by(&back, &takes));
        i64::try_from(sum.div_euclid(WHOLE).saturating_mul(FINE).saturating_add(fine(more))).ok()
    };
    let cells = all.iter().map(cell).collect::<Option<Vec<i64>>>()?;
    let more = fine(by(&back, &|end| end.end)).saturating_add(1);
    let end = given(&parts).div_euclid(WHOLE).saturating_mul(FINE).saturating_add(more);
    Some((cells, i64::try_from(end).ok()?))
}

/// How much of a limit is in the mix; of things a whole one more or less makes no matter.
fn part_of(part: f64, end: &End) -> i128 {
    match end.of {
        Of::Thing(_) => whole(part.rem_euclid(1.0)),
        _ => whole(part / end.over()),
    }
}

fn whole(part: f64) -> i128 {
    (part * WHOLE as f64).round() as i128
}
