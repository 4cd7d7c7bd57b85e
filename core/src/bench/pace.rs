//! Pace: time for each piece, and about how long the rest will take.

use crate::quantity::chance::student;
use crate::quantity::{Count, Span};

/// Pace = time / n; none before the first piece is done.
pub fn pace(time: Span, n: Count) -> Option<Span> {
    time.as_ms().checked_div(i64::from(n)).map(Span::ms)
}

/// About what is left: max(0, left x pace - min(pace, time since the last piece)).
pub fn remaining(left: Count, pace: Span, since: Span) -> Span {
    pace.times(i64::from(left)).minus(since.min(pace)).max(Span::ZERO)
}

/// Student's t at 80 % (two sides), in ten-thousandths; none without a degree of freedom.
fn t80(free: Count) -> Option<u64> {
    student(0.8, free).map(|t| (t * 10_000.0).round() as u64)
}

/// How far about what is left may be off, either way, at 80 %: t s sqrt(m + m^2 / n) for m pieces left, from pieces that took
/// so long; pieces noted together count as so many alike. None before there are two notes.
///
/// ```
/// use fivebar_core::bench::pace::spread;
/// use fivebar_core::quantity::Span;
/// let pieces = [34, 30, 31].map(|minutes| (Span::minutes(minutes), 1));
/// assert_eq!(spread(&pieces, 2).map(Span::as_minutes), Some(7));
/// ```
pub fn spread(noted: &[(Span, Count)], left: Count) -> Option<Span> {
    let n = noted.iter().fold(0_u128, |sum, (_, n)| sum.saturating_add(u128::from(*n)));
    let free = noted.len().checked_sub(1).filter(|free| 0 < *free)?;
    let pace = pace(Span::sum(noted.iter().map(|(span, _)| *span)), u32::try_from(n).ok()?)?;
    // Off by so much from the pace, squared, over the pieces it is spread on.
    let off = |(span, n): &(Span, Count)| {
        let off = u128::from(span.minus(pace.times(i64::from(*n))).as_ms().unsigned_abs());
        off.saturating_mul(off).checked_div(u128::from(*n)).unwrap_or(0)
    };
    let squares = noted.iter().fold(0_u128, |sum, noted| sum.saturating_add(off(noted)));
    let (m, free_u) = (u128::from(left), u128::try_from(free).ok()?);
    // s^2 (m + m^2 / n) = s^2 m (n + m) / n
    let variance = squares.checked_div(free_u)?.checked_mul(m)?.checked_mul(n.saturating_add(m))?.checked_div(n)?;
    let t = t80(Count::try_from(free).ok()?)?;
    let off = variance.isqrt().checked_mul(u128::from(t))?.checked_div(10_000)?;
    i64::try_from(off).ok().map(Span::ms)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Student's density, (1 + x^2 / v)^(-(v + 1) / 2), has nine tenths of itself below each: by Simpson's rule on x = tan(u),
    /// which brings all of it between -pi / 2 and pi / 2, so that nothing but the density is used.
    #[test]
    fn so_many_notes_have_students_t() {
        let part = |below: f64, v: i32| {
            let (from, steps) = (-std::f64::consts::FRAC_PI_2, 20_000);
            let step = (below - from) / f64::from(steps);
            let density = |u: f64| {
                let (x, v) = (u.tan(), f64::from(v));
                (1.0 + x * x / v).powf(-(v + 1.0) / 2.0) * (1.0 + x * x)
            };
            // the open end counts for nothing, or, with one degree of freedom, for what stands beside it
            let weight = |nth: i32| {
                if nth == steps {
                    1.0
                } else if nth % 2 == 1 {
                    4.0
                } else {
                    2.0
                }
            };
            (1..=steps).map(|nth| weight(nth) * density(from + f64::from(nth) * step)).sum::<f64>() * step / 3.0
        };
        for v in 1..=60 {
            let t = t80(v).expect("a degree of freedom") as f64 / 10_000.0;
            let v = i32::try_from(v).expect("few");
            let below = part(t.atan(), v) / (2.0 * part(0.0, v));
            assert!((below - 0.9).abs() < 1e-4, "{v}: {below}");
        }
    }

    #[test]
    fn the_spread_is_students_over_the_notes() {
        let minutes = |noted: &[(i64, Count)], left| {
            let noted: Vec<_> = noted.iter().map(|(m, n)| (Span::minutes(*m), *n)).collect();
            spread(&noted, left).map(|off| (off.as_ms() as f64 / 60_000.0 * 100.0).round() / 100.0)
        };
        assert_eq!(minutes(&[(34, 1)], 2), None);
        assert_eq!(minutes(&[], 2), None);
        assert_eq!(minutes(&[(34, 1), (30, 1), (31, 1)], 2), Some(7.17)); // 1.886 x 2.082 x sqrt(2 + 4 / 3)
        assert_eq!(minutes(&[(10, 1), (10, 1)], 3), Some(0.0));
        assert_eq!(minutes(&[(34, 1), (30, 1), (31, 1)], 0), Some(0.0));
        assert_eq!(minutes(&[(10, 0), (10, 0)], 3), None);
    }

    #[track_caller]
    fn check((n, of): (Count, Count), time: i64, since: i64, left: Option<i64>) {
        let found = pace(Span::minutes(time), n).map(|pace| remaining(of - n, pace, Span::minutes(since)));
        assert_eq!(found, left.map(Span::minutes));
    }

    #[test]
    fn about_left_falls_while_a_piece_is_worked_on_and_never_below_nothing() {
        check((0, 5), 10, 0, None);
        check((1, 5), 9, 0, Some(36)); // shown from the first piece on
        check((2, 5), 20, 0, Some(30));
        check((2, 5), 20, 4, Some(26));
        check((2, 5), 20, 10, Some(20));
        check((2, 5), 20, 500, Some(20)); // a long break takes off one piece at most
        check((5, 5), 50, 3, Some(0));
        check((4, 5), 40, 99, Some(0));
    }
}
