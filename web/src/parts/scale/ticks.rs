//! The ticks of a scale in five-bar rhythm: every fifth one is long, unless the maker's unit has its own.
use crate::parts::ink::{num, path};
use crate::view::El;
use fivebar_core::quantity::Listed;

/// How far apart ticks stand, and every how many one is long; both in the scale's own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rhythm {
    pub tick: f64,
    pub long: f64,
}

const CLOSEST: f64 = 5.0;

impl Rhythm {
    /// Ticks of 1, 2 or 5 with noughts, no closer than the eye can part, a long one each five.
    pub fn for_span(span: f64, room: f64) -> Self {
        let least = span.max(1e-9) / room.max(1.0) * CLOSEST;
        let ten = 10_f64.powi(least.log10().floor() as i32);
        let tick = [1.0, 2.0, 5.0, 10.0].map(|of| of * ten).into_iter().find(|tick| *tick >= least - 1e-12).unwrap_or(ten * 10.0);
        Rhythm { tick, long: tick * 5.0 }
    }
}

/// The ticks from `from` to `to`, hung from the line at `base`.
pub(in crate::parts) fn ticks<M>((from, to): (f64, f64), rhythm: Rhythm, base: f64, x: impl Fn(f64) -> f64) -> Vec<El<M>> {
    let (mut short, mut long) = (String::new(), String::new());
    let first = (from / rhythm.tick - 1e-6).ceil() as i64;
    let last = ((to / rhythm.tick + 1e-6).floor() as i64).min(first.saturating_add(400));
    for n in first..=last {
        let at = n as f64 * rhythm.tick;
        let is_long = (at / rhythm.long - (at / rhythm.long).round()).abs() < 1e-6;
        let (line, tall) = if is_long { (&mut long, 9) } else { (&mut short, 5) };
        *line += &format!("M{} {}v{tall}", num(x(at)), num(base));
    }
    [("tk", short), ("tk5", long)].into_iter().filter(|(_, d)| !d.is_empty()).map(|(class, d)| path(class, d)).listed()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_whole_figures_the_eye_can_part() {
        for (span, room, tick) in [(14.0, 356.0, 0.2), (61.0, 328.0, 1.0), (480.0, 330.0, 10.0), (1.0, 330.0, 0.02)] {
            let rhythm = Rhythm::for_span(span, room);
            assert!((rhythm.tick - tick).abs() < 1e-9, "{span}: {rhythm:?}");
            assert!(rhythm.tick * room / span >= CLOSEST - 1e-9);
        }
    }
}
