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

/// Limits mixed and rounded: what is left of one counts too, so a limit that is in the mix by less than nothing is put to it again, over `sharp`.
pub(super) struct Cut<'a> {
    ends: &'a [End],
    parts: Vec<i128>,
    back: Vec<i128>,
    /// Of each way itself.
    one: i128,
    /// What is beyond whole ones on the right, and what that lacks to a whole one.
    rest: i128,
    sharp: i128,
    /// How much of it there is.
    pub end: i64,
}

/// The cuts that take most off the fractions.
pub(super) fn found<'a>(all: &[Way], many: i64, fractions: &'a Fractions) -> Vec<Cut<'a>> {
    let mut cuts: Vec<(f64, Cut<'a>)> = vec![];
    for cut in fractions.lp.mixes().filter_map(|mix| Cut::of((many, &fractions.ends), mix)) {
        let taken = fractions.levels.iter().filter_map(|(place, level)| Some(cut.takes(all.get(*place)?)? as f64 * level)).sum::<f64>();
        let over = (taken - cut.end as f64) / FINE as f64;
        if 0.002 < over {
            cuts.push((over, cut));
        }
    }
    cuts.sort_by(|a, b| b.0.total_cmp(&a.0));
    cuts.into_iter().take(MOST).map(|(_, cut)| cut).collect()
}

impl<'a> Cut<'a> {
    /// `None` where rounding takes nothing off.
    fn of((many, ends): (i64, &'a [End]), mix: &[f64]) -> Option<Cut<'a>> {
        let (row, own) = mix.split_last()?;
        let one = whole(row.rem_euclid(1.0));
        let mut parts: Vec<i128> = own.iter().zip(ends).map(|(part, end)| part_of(*part, end)).collect();
        let given = |parts: &[i128]| by(parts, ends, &|end| end.end).saturating_add(one.saturating_mul(i128::from(many)));
        let rest = given(&parts).rem_euclid(WHOLE);
        let sharp = WHOLE.saturating_sub(rest);
        if rest < WHOLE >> 6 || sharp < WHOLE >> 6 {
            return None;
        }
        let is_whole = |end: &End| matches!(end.of, Of::Thing(_));
        let over = parts.iter_mut().zip(ends).filter(|(part, end)| is_whole(end) && rest < **part);
        over.for_each(|(part, _)| *part = part.saturating_sub(WHOLE));
        let back: Vec<i128> = parts.iter().map(|part| part.saturating_neg().max(0)).collect();
        let more = by(&back, ends, &|end| end.end).saturating_mul(FINE).div_euclid(sharp).saturating_add(1);
        let end = given(&parts).div_euclid(WHOLE).saturating_mul(FINE).saturating_add(more);
        Some(Cut { ends, parts, back, one, rest, sharp, end: i64::try_from(end).ok()? })
    }

    /// What a way takes of it, rounded down.
    pub(super) fn takes(&self, way: &Way) -> Option<i64> {
        let takes = |end: &End| way.takes(end.of).saturating_mul(end.sign);
        let sum = by(&self.parts, self.ends, &takes).saturating_add(self.one);
        let more = sum.rem_euclid(WHOLE).saturating_sub(self.rest).max(0).saturating_add(by(&self.back, self.ends, &takes));
        let fine = more.saturating_mul(FINE).div_euclid(self.sharp);
        i64::try_from(sum.div_euclid(WHOLE).saturating_mul(FINE).saturating_add(fine)).ok()
    }
}

fn by(parts: &[i128], ends: &[End], times: &dyn Fn(&End) -> i64) -> i128 {
    let mixed = parts.iter().zip(ends).filter(|(part, _)| **part != 0);
    mixed.fold(0_i128, |sum, (part, end)| sum.saturating_add(part.saturating_mul(i128::from(times(end)))))
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
