//! Pace: time for each piece, and about how long the rest will take.

use crate::quantity::{Count, Span};

/// Pace = time / n; none before the first piece is done.
pub fn pace(time: Span, n: Count) -> Option<Span> {
    time.as_ms().checked_div(i64::from(n)).map(Span::ms)
}

/// About what is left: max(0, left x pace - min(pace, time since the last piece)).
pub fn remaining(left: Count, pace: Span, since: Span) -> Span {
    pace.times(i64::from(left)).minus(since.min(pace)).max(Span::ZERO)
}

#[cfg(test)]
mod tests {
    use super::*;

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
