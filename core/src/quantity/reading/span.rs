//! Stretches of time as people type them: `1h30`, `1 h 30`, `1:30`, `90 min`, `90m`, `1.5 h`, `47`.

use super::super::{Decimal, Span, half_up};
use super::settle::{Pick, Worth, in_order, settle, worth};
use super::terms::{Term, terms};
use super::{Misread, Quantity, Read, Sign, tidy};

const SECOND: i64 = 1_000;
const MINUTE: i64 = 60 * SECOND;
const HOUR: i64 = 60 * MINUTE;

/// A stretch of time up to `most`; minutes where no unit stands.
///
/// # Errors
/// Each of [`Misread`] but `NotWhole`.
///
/// ```
/// use fivebar_core::quantity::{Span, reading::{Sign, span}};
/// for text in ["1h30", "1 h 30", "1:30", "90 min", "90m", "1.5 h", "1,5 h", "1 1/2 h", "90"] {
///     assert_eq!(span(text, Sign::Point, Span::RUN_MOST), Ok(Span::minutes(90)), "{text}");
/// }
/// ```
pub fn span(text: &str, sign: Sign, most: Span) -> Read<Span> {
    let text = tidy(text)?;
    if let Some((hours, minutes)) = text.split_once(':') {
        return colon(text, hours, minutes).and_then(|ms| within(Some(ms), most));
    }
    let terms = terms(text, sign)?;
    let units = units_of(&terms)?;
    settle(&terms, Quantity::Span, |pick| one(&terms, &units, pick, most))
}

/// Hours and two digits of minutes.
fn colon(text: &str, hours: &str, minutes: &str) -> Read<Worth> {
    let no = || Misread::NotANumber { met: text.into() };
    let plain = |t: &str, most: usize| {
        (!t.is_empty() && t.len() <= most && t.bytes().all(|b| b.is_ascii_digit())).then(|| t.parse::<i64>().ok()).flatten()
    };
    let hours = plain(hours.trim_end(), 6).ok_or_else(no)?;
    let minutes = plain(minutes, 2).filter(|m| *m < 60 && minutes.len() == 2).ok_or_else(no)?;
    let ms = hours.saturating_mul(HOUR).saturating_add(minutes.saturating_mul(MINUTE));
    Ok(Worth { exact: Decimal::from(ms), ..Worth::NOTHING })
}

fn scale(unit: &str) -> Option<i64> {
    Some(match unit {
        "h" | "hr" | "hrs" | "hour" | "hours" => HOUR,
        "m" | "min" | "mins" | "minute" | "minutes" => MINUTE,
        "s" | "sec" | "secs" | "second" | "seconds" => SECOND,
        _ => return None,
    })
}

/// Hours, then minutes, then seconds; what stands without a unit is minutes, and whole ones after hours.
fn units_of(terms: &[Term]) -> Read<Vec<i64>> {
    let mut found: Vec<i64> = Vec::new();
    for term in terms {
        found.push(match &term.unit {
            Some(word) => scale(word).ok_or_else(|| Misread::UnknownUnit { met: word.clone() })?,
            None if term.fraction.is_some() && !found.is_empty() => return Err(Misread::NotANumber { met: term.text.clone() }),
            None => MINUTE,
        });
    }
    in_order(terms, &found)?;
    Ok(found)
}

fn one(terms: &[Term], units: &[i64], pick: Pick, most: Span) -> Read<Span> {
    let sum = terms.iter().zip(units).try_fold(Worth::NOTHING, |sum, (term, unit)| sum.plus(worth(term, Decimal::from(*unit), pick)?));
    within(sum, most)
}

fn within(worth: Option<Worth>, most: Span) -> Read<Span> {
    let out = |met| Misread::OutOfRange { met, least: Quantity::Span(Span::ZERO), most: Quantity::Span(most), might_be: None };
    let Some(worth) = worth else { return Err(out(None)) };
    let Ok(met) = i64::try_from(half_up(worth.exact, 0)).map(Span::ms) else { return Err(out(None)) };
    if most < met {
        return Err(out(Some(Quantity::Span(met))));
    }
    let nearest = Span::minutes(met.as_minutes()).min(most);
    worth.whole(worth.exact.is_integer(), Quantity::Span(nearest)).map(|_| met)
}
