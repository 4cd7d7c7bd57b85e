//! What fits meanwhile: work that is done before the next wait is over, and that makes no noise in quiet hours.

use crate::quantity::{Clock, Count, Listed, Moment, Span, Wall, order_by_key};

/// Hours in which the maker makes no noise, by the clock; they may go over midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quiet {
    pub from: Clock,
    pub until: Clock,
}

impl Quiet {
    /// Whether any of a stretch lies in quiet hours, by the clock of the place where it begins.
    ///
    /// ```
    /// use fivebar_core::bench::meanwhile::Quiet;
    /// use fivebar_core::quantity::{Clock, Moment, Offset, Span, Wall};
    /// let quiet = Quiet { from: Clock::at(20, 0).unwrap(), until: Clock::at(7, 30).unwrap() };
    /// let at = |hour: i64| Wall::new(Moment::at(0).plus(Span::minutes(hour * 60)), Offset::UTC);
    /// assert!(quiet.meets(at(6), Span::minutes(10)) && quiet.meets(at(19), Span::minutes(61)));
    /// assert!(!quiet.meets(at(19), Span::minutes(60)) && !quiet.meets(at(8), Span::minutes(600)));
    /// ```
    pub fn meets(self, from: Wall, span: Span) -> bool {
        let until = from.at.plus(span);
        let mut day = from.day().before();
        // Quiet hours of the day before may reach into this one; a stretch of work is no longer than two days.
        for _ in 0..5 {
            let begins = day.at(self.from, from.offset);
            let ends = if self.from < self.until { day } else { day.next() }.at(self.until, from.offset);
            if begins < until && from.at < ends {
                return true;
            }
            day = day.next();
        }
        false
    }
}

/// Where a span comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum From {
    /// The pace of this batch x pieces left.
    Pace,
    /// Own history of the operation.
    History,
    /// What was planned and how far off plans were, less what was worked.
    Planned,
    /// Nobody knows yet: it is work that is under way, and can be left again.
    Unknown,
}

/// In a gap shorter than that nothing is begun of which nobody knows how long it takes [J].
pub const UNKNOWN_LEAST: Span = Span::minutes(15);

/// Work that may be offered.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer<T> {
    pub what: T,
    /// What it likely takes: this is said.
    pub span: Span,
    /// What it does not pass eight times in ten: by this it fits.
    pub safe: Span,
    pub from: From,
    /// What was planned for all of it.
    pub thought: Option<Span>,
    /// Pieces that are left of it, each as long as another.
    pub left: Option<Count>,
    /// So many of those are done in the gap, and not all.
    pub part: Option<Count>,
    pub loud: bool,
    /// On the job in hand.
    pub here: bool,
}

impl<T> Offer<T> {
    /// As many pieces of it as are likely done in a gap, where all of them may take longer: it can be left after each of them (ours).
    pub fn in_part(self, gap: Span) -> Offer<T> {
        let Some(left) = self.left.filter(|_| gap < self.span.max(self.safe)) else { return self };
        let fits = i128::from(gap.as_ms()).saturating_mul(i128::from(left)).checked_div(i128::from(self.span.as_ms())).unwrap_or(0);
        let part = Count::try_from(fits).unwrap_or(Count::MAX).min(left.saturating_sub(1));
        let Some(span) = self.span.in_ratio(Span::ms(i64::from(part)), Span::ms(i64::from(left))).filter(|_| 0 < part) else { return self };
        Offer { span, safe: span, part: Some(part), ..self }
    }
}

/// How many are offered.
pub const SHOWN: usize = 3;

/// What fits between now and an off time: at most three, those of the job in hand first, then those that fill most of the gap.
/// Nothing longer than the gap, and nothing loud in quiet hours.
pub fn fitting<T>(offers: Vec<Offer<T>>, (now, off): (Wall, Moment), quiet: Option<Quiet>) -> Vec<Offer<T>> {
    let gap = now.at.until(off);
    let is_quiet = |offer: &Offer<T>| !offer.loud || !quiet.is_some_and(|quiet| quiet.meets(now, offer.safe));
    let fits = |offer: &Offer<T>| Span::ZERO < offer.span && offer.span.max(offer.safe) <= gap && is_quiet(offer);
    let mut found: Vec<Offer<T>> = offers.into_iter().filter(fits).listed();
    order_by_key(&mut found, |offer| (!offer.here, std::cmp::Reverse(offer.span)));
    found.truncate(SHOWN);
    found
}

#[cfg(test)]
mod tests {
    use super::super::sample::{at, wall};
    use super::*;
    use proptest::prelude::*;

    fn offer(what: u8, minutes: i64, loud: bool, here: bool) -> Offer<u8> {
        let span = Span::minutes(minutes);
        Offer { what, span, safe: span, from: From::Planned, thought: None, left: None, part: None, loud, here }
    }

    /// Fourteen legs at five minutes each, which may take up to 80 in all, and 48 minutes: nine of them. Of one that takes longer none is.
    #[test]
    fn as_many_pieces_as_are_done_in_the_gap_are_offered() {
        let check = |left, minutes, shown| {
            let of_pieces = Offer { left, safe: Span::minutes(minutes + 10), ..offer(1, minutes, false, true) };
            let found = fitting(vec![of_pieces.in_part(Span::minutes(48))], (wall(600), at(648)), None);
            assert_eq!(found.first().map(|offer| (offer.part, offer.span.as_minutes())), shown, "{left:?} {minutes}");
        };
        check(Some(14), 70, Some((Some(9), 45)));
        check(Some(14), 30, Some((None, 30)));
        check(Some(1), 70, None);
        check(None, 70, None);
    }

    const EVENING: (i64, i64) = (20 * 60, 8 * 60);

    fn quiet((from, until): (i64, i64)) -> Quiet {
        let clock = |minutes: i64| Clock::minutes(u16::try_from(minutes).unwrap()).unwrap();
        Quiet { from: clock(from), until: clock(until) }
    }

    #[track_caller]
    fn check(offers: &[Offer<u8>], now: i64, off: i64, shown: &[u8]) {
        let found = fitting(offers.to_vec(), (wall(now), at(off)), Some(quiet(EVENING)));
        assert_eq!(found.iter().map(|offer| offer.what).collect::<Vec<_>>(), shown);
    }

    #[test]
    fn three_at_most_that_fit_the_gap_and_the_quiet_hours() {
        let four = [offer(1, 20, false, false), offer(2, 50, true, true), offer(3, 60, false, true), offer(4, 52, false, false)];
        check(&four, 720, 772, &[2, 4, 1]); // 52 minutes from noon
        check(&four, 720, 780, &[3, 2, 4]);
        check(&four, 720, 739, &[]);
        check(&four, 720, 720, &[]);
        check(&four, 1_150, 1_210, &[3, 2, 4]); // 19:10: 50 loud minutes end at 20:00
        check(&four, 1_151, 1_211, &[3, 4, 1]);
        check(&four, 300, 400, &[3, 4, 1]); // five in the morning
        check(&[offer(1, 0, false, true)], 720, 772, &[]);
        // Likely an hour, and up to 80 minutes: it needs a gap of those, and its noise would reach into quiet hours.
        let unsure = Offer { safe: Span::minutes(80), ..offer(1, 60, true, true) };
        let one = std::slice::from_ref(&unsure);
        check(one, 720, 799, &[]);
        check(one, 720, 800, &[1]);
        check(one, 1_130, 1_250, &[]);
    }

    proptest! {
        /// Nothing longer than the gap is offered, nothing loud in a minute of quiet hours, and never more than three.
        #[test]
        fn what_is_offered_fits(
            offers in prop::collection::vec((0..600_i64, any::<bool>(), any::<bool>()), 0..12),
            (now, gap) in (0..2_880_i64, -10..600_i64), hours in (0..1_440_i64, 0..1_440_i64),
        ) {
            let all: Vec<_> = (0..).zip(&offers).map(|(n, (minutes, loud, here))| offer(n, *minutes, *loud, *here)).collect();
            let found = fitting(all, (wall(now), at(now + gap)), (hours.0 != hours.1).then(|| quiet(hours)));
            prop_assert!(found.len() <= SHOWN);
            for one in found {
                let lasts = one.span.as_minutes();
                prop_assert!(0 < lasts && lasts <= gap);
                let noisy = |minute: i64| {
                    let clock = minute.rem_euclid(1_440);
                    if hours.0 < hours.1 { (hours.0..hours.1).contains(&clock) } else { hours.0 != hours.1 && !(hours.1..hours.0).contains(&clock) }
                };
                prop_assert!(!one.loud || !(now..now + lasts).any(noisy));
            }
        }
    }
}
