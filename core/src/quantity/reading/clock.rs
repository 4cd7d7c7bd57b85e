//! The time of day as typed: `14:32`, `2:32 pm`, `2.32pm`, `1432`, `14h32`, `9`.

use super::super::Clock;
use super::{Misread, Quantity, Read, tidy};

/// A time of day; hours alone are the full hour, three or four digits are hours and minutes.
///
/// # Errors
/// [`Misread::NotAClock`] for what is no time of any clock (`13 pm`, `9:5`), [`Misread::OutOfRange`] past 23:59,
/// and those any text may meet.
///
/// ```
/// use fivebar_core::quantity::{Clock, reading::clock};
/// for text in ["14:32", "2:32 pm", "2.32pm", "1432", "14h32", "14.32"] {
///     assert_eq!(clock(text).ok(), Clock::at(14, 32), "{text}");
/// }
/// ```
pub fn clock(text: &str) -> Read<Clock> {
    let text = tidy(text)?;
    let no = || Misread::NotAClock { met: text.into() };
    let (digits, half) = half(text);
    let (hour, minute) = parts(digits).ok_or_else(no)?;
    let hour = match half {
        None => Some(hour),
        Some(_) if !(1..=12).contains(&hour) => None,
        Some(Half::Morning) => hour.checked_rem(12),
        Some(Half::Afternoon) => hour.checked_rem(12).and_then(|h| h.checked_add(12)),
    };
    let (least, most) = (Quantity::Clock(Clock::FIRST), Quantity::Clock(Clock::LAST));
    Clock::at(hour.ok_or_else(no)?, minute).ok_or(Misread::OutOfRange { met: None, least, most, might_be: None })
}

#[derive(Clone, Copy)]
enum Half {
    Morning,
    Afternoon,
}

/// The digits, and which half of the day was said.
fn half(text: &str) -> (&str, Option<Half>) {
    let ends = [
        ("am", Half::Morning),
        ("a.m.", Half::Morning),
        ("a", Half::Morning),
        ("pm", Half::Afternoon),
        ("p.m.", Half::Afternoon),
        ("p", Half::Afternoon),
    ];
    for (end, half) in ends {
        let cut = text.len().saturating_sub(end.len());
        if let Some((digits, found)) = text.split_at_checked(cut)
            && found.eq_ignore_ascii_case(end)
        {
            return (digits.trim_end(), Some(half));
        }
    }
    (text, None)
}

/// Hours and minutes; no more digits than a clock shows.
fn parts(digits: &str) -> Option<(u16, u16)> {
    let read = |t: &str, len: std::ops::RangeInclusive<usize>| {
        (len.contains(&t.len()) && t.bytes().all(|b| b.is_ascii_digit())).then(|| t.parse::<u16>().ok()).flatten()
    };
    if let Some((hour, minute)) = digits.split_once([':', '.', 'h', 'H']) {
        let minute = minute.trim();
        let is_full_hour = minute.is_empty() && digits.ends_with(['h', 'H']);
        return Some((read(hour.trim(), 1..=2)?, if is_full_hour { 0 } else { read(minute, 2..=2)? }));
    }
    match digits.len() {
        1 | 2 => Some((read(digits, 1..=2)?, 0)),
        3 | 4 => {
            let (hour, minute) = digits.split_at_checked(digits.len().saturating_sub(2))?;
            Some((read(hour, 1..=2)?, read(minute, 2..=2)?))
        }
        _ => None,
    }
}
