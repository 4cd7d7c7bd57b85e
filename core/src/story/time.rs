//! The time of a line: `2026-03-03 08:41 -05:00`, of which the date, the clock and the offset may each stay as they were.

use super::words::{Read, Words};
use crate::quantity::{Day, Moment, Offset, Span, Wall};

/// The moment of a line after one at `last`. A line without a clock happens at the moment of the line before.
pub fn read(words: &mut Words, last: Wall) -> Read<Wall> {
    let day = words.maybe(date);
    let clock = words.maybe(clock);
    let offset = words.maybe(offset);
    if day.is_none() && clock.is_none() && offset.is_none() {
        return Ok(last);
    }
    let offset = offset.unwrap_or(last.offset);
    let Some(clock) = clock else { return words.no("a clock time") };
    Ok(Wall::new(at(day.unwrap_or(Wall::new(last.at, offset).day()), clock, offset), offset))
}

/// The moment of a clock time on a day.
fn at(day: Day, clock: Span, offset: Offset) -> Moment {
    day.start(offset).plus(clock)
}

/// A moment named inside a line: a clock time of the same day, or a date and a clock time.
pub fn moment(words: &mut Words, now: Wall) -> Read<Moment> {
    let day = words.maybe(date).unwrap_or(now.day());
    Ok(at(day, words.take("a clock time", clock)?, now.offset))
}

/// A day named inside a line, at noon.
pub fn day(words: &mut Words, now: Wall) -> Read<Moment> {
    Ok(at(words.take("a date", date)?, Span::minutes(720), now.offset))
}

fn date(word: &str) -> Option<Day> {
    let [year, month, day] = numbers(word, '-', [4, 2, 2])?;
    Day::ymd(i32::try_from(year).ok()?, month, day)
}

/// `08:41`, or `08:41:30`.
fn clock(word: &str) -> Option<Span> {
    let [hour, minute, second] =
        numbers(word, ':', [2, 2, 2]).or_else(|| numbers(word, ':', [2, 2]).map(|[hour, minute]| [hour, minute, 0]))?;
    let minutes = Span::minutes(i64::from(hour)).times(60).plus(Span::minutes(i64::from(minute)));
    (hour < 24 && minute < 60 && second < 60).then(|| minutes.plus(Span::ms(1_000).times(i64::from(second))))
}

fn offset(word: &str) -> Option<Offset> {
    let (sign, clock) = word.split_at_checked(1)?;
    let [hours, minutes] = numbers(clock, ':', [2, 2])?;
    let all = i64::from(hours).checked_mul(60)?.checked_add(i64::from(minutes))?;
    let all = match sign {
        "+" => all,
        "-" => all.checked_neg()?,
        _ => return None,
    };
    Offset::minutes(all).ok()
}

/// Numbers of so many digits each.
fn numbers<const N: usize>(word: &str, between: char, digits: [usize; N]) -> Option<[u32; N]> {
    let parts: Vec<&str> = word.split(between).collect();
    let fits = parts.iter().map(|part| part.len()).eq(digits) && parts.iter().all(|part| part.bytes().all(|b| b.is_ascii_digit()));
    let numbers: Option<Vec<u32>> = fits.then(|| parts.iter().map(|part| part.parse().ok()).collect()).flatten();
    numbers?.try_into().ok()
}
