//! Some sticks of a plan are taken out and cut anew, and kept where that is no worse.
//!
//! Shaw, "Using constraint programming and local search methods to solve vehicle routing problems", CP 1998 (recalled).

use super::cutting::Saw;
use super::dive::{Laid, dive};
use super::relax::Pool;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// At most so many sticks are taken out.
const OUT_MOST: usize = 12;

/// Tries it once; whether the plan is better for it.
pub(super) fn renew(saw: &Saw<'_>, pool: &mut Pool, laid: &mut Laid, draw: &mut Draw, patience: &mut Patience<'_>) -> bool {
    let mut part = laid.clone();
    let most = OUT_MOST.min(laid.cuts.iter().map(|(_, times)| *times as usize).sum());
    let out = 2_usize.saturating_add(draw.below(most));
    for _ in 0..out {
        take_out(&mut part, draw);
    }
    let again = dive(saw, pool, part.left.clone(), &mut Some(draw), patience);
    for (cut, times) in &again.cuts {
        part.add(cut, *times);
    }
    let (old, new) = (laid.rank(saw), part.rank(saw));
    if new <= old {
        *laid = part;
    }
    new < old
}

/// One stick, each as likely as any other.
fn take_out(laid: &mut Laid, draw: &mut Draw) {
    let sticks: i64 = laid.cuts.iter().map(|(_, times)| *times).sum();
    let mut nth = draw.below(usize::try_from(sticks).unwrap_or(0)) as i64;
    let Some(place) = laid.cuts.iter().position(|(_, times)| {
        nth = nth.saturating_sub(*times);
        nth < 0
    }) else {
        return;
    };
    if let Some((cut, times)) = laid.cuts.get_mut(place) {
        *times = times.saturating_sub(1);
        let (cut, is_out) = (cut.clone(), *times == 0);
        laid.left.cut(&cut, -1);
        if is_out {
            laid.cuts.remove(place);
        }
    }
}
