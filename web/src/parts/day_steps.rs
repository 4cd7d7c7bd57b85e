//! A day moved by days and weeks: four keys.

use super::chips::{Chip, bundle_of};
use crate::view::El;
use fivebar_core::quantity::Listed;

/// Keys that move a day; `words` are what a day and days are called.
pub fn day_steps<M>([day, days]: [&'static str; 2], tap: impl Fn(i32) -> M) -> El<M> {
    let steps = [(-7, "−7", days), (-1, "−1", day), (1, "+1", day), (7, "+7", days)];
    let shown = steps.iter().map(|(_, by, unit)| Chip::tap(*by).under(*unit)).listed();
    bundle_of("key h48", shown, move |nth| tap(steps.get(nth).map_or(1, |(by, ..)| *by)))
}
