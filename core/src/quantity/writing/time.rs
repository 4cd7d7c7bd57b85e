//! Spans and times of day as text.

use super::super::reading::Sign;
use super::super::{Clock, Decimal, Span};
use super::number::decimal;

const MINUTE: i64 = 60_000;

/// A span to be read back alike: `47 min`, `1 h 04`, and with seconds where it has some, `1 h 04 min 12.5 s`.
///
/// ```
/// use fivebar_core::quantity::{Span, reading::Sign, writing::span};
/// assert_eq!(span(Span::minutes(192), Sign::Point), "3 h 12");
/// assert_eq!(span(Span::ms(47 * 60_000 + 12_500), Sign::Comma), "47 min 12,5 s");
/// ```
pub fn span(span: Span, sign: Sign) -> String {
    let ms = span.as_ms().max(0);
    let (minutes, rest) = (ms.div_euclid(MINUTE), ms.rem_euclid(MINUTE));
    if rest == 0 {
        return words(minutes);
    }
    let unit = if minutes < 60 { "" } else { " min" };
    format!("{}{unit} {} s", words(minutes), decimal(Decimal::new(rest, 3), sign))
}

/// A span to the minute, half up: `47 min`, `1 h 04`. Below nothing is shown as nothing.
///
/// ```
/// use fivebar_core::quantity::{Span, writing::shown_span};
/// assert_eq!(shown_span(Span::ms(64 * 60_000 - 30_000)), "1 h 04");
/// ```
pub fn shown_span(span: Span) -> String {
    words(span.as_minutes().max(0))
}

fn words(minutes: i64) -> String {
    if minutes < 60 { format!("{minutes} min") } else { format!("{} h {:02}", minutes.div_euclid(60), minutes.rem_euclid(60)) }
}

/// A time of day: `09:05`, `14:32`.
///
/// ```
/// use fivebar_core::quantity::{Clock, writing::clock};
/// assert_eq!(clock(Clock::at(9, 5).unwrap()), "09:05");
/// ```
pub fn clock(clock: Clock) -> String {
    let (hour, minute) = clock.as_hour_minute();
    format!("{hour:02}:{minute:02}")
}
