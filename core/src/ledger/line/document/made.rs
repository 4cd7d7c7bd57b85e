//! A moment with its offset as RFC 3339 spells it, to the millisecond: `2026-05-22T08:14:00.000+02:00`.

use crate::quantity::{Day, Offset, Span, Wall};

const MINUTE: i64 = 60_000;
const SECOND: Span = Span::ms(1_000);
const HOUR: Span = Span::minutes(60);

pub fn write(wall: Wall) -> String {
    let ((year, month, day), minute) = (wall.day().as_ymd(), wall.minute_of_day());
    let ms = wall.at.ms().rem_euclid(MINUTE);
    let (sign, offset) = (if wall.offset.as_minutes() < 0 { '-' } else { '+' }, wall.offset.as_minutes().unsigned_abs());
    let (hour, minute, second, ms) = (minute / 60, minute % 60, ms / 1000, ms % 1000);
    format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}.{ms:03}{sign}{:02}:{:02}", offset / 60, offset % 60)
}

/// Reads the spelling above, and without the milliseconds, and with `Z`.
pub fn read(text: &str) -> Option<Wall> {
    let (date, time) = text.split_once('T')?;
    let (clock, offset) = match time.strip_suffix('Z') {
        Some(clock) => (clock, 0),
        None => {
            let (clock, offset) = time.split_at_checked(time.len().checked_sub(6)?)?;
            (clock, minutes(offset)?)
        }
    };
    let (clock, ms) = clock.split_once('.').unwrap_or((clock, "000"));
    let [year, month, day] = numbers(date, '-')?;
    let [hour, minute, second] = numbers(clock, ':')?;
    let [ms] = numbers(&format!("{ms:0<3}"), '.')?;
    let offset = Offset::minutes(offset).ok()?;
    let date = Day::ymd(i32::try_from(year).ok()?, u32::try_from(month).ok()?, u32::try_from(day).ok()?)?;
    let within = hour < 24 && minute < 60 && second < 60 && ms < 1000;
    let since = HOUR.times(hour).plus(Span::minutes(minute)).plus(SECOND.times(second)).plus(Span::ms(ms));
    within.then(|| Wall::new(date.start(offset).plus(since), offset))
}

/// `+02:00` and `-05:30` as minutes.
fn minutes(offset: &str) -> Option<i64> {
    let (sign, clock) = (offset.get(..1)?, offset.get(1..)?);
    let [hours, minutes] = numbers(clock, ':')?;
    let all = hours.checked_mul(60)?.checked_add(minutes)?;
    match sign {
        "+" => Some(all),
        "-" => all.checked_neg(),
        _ => None,
    }
}

/// Numbers of one to four digits each.
fn numbers<const N: usize>(text: &str, between: char) -> Option<[i64; N]> {
    let digits = |part: &str| (1..=4).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
    let read: Option<Vec<i64>> = text.split(between).map(|part| digits(part).then(|| part.parse().ok()).flatten()).collect();
    read?.try_into().ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Moment;

    #[track_caller]
    fn check(text: &str, ms: i64, offset: i64) {
        let wall = Wall::new(Moment::at(ms), Offset::minutes(offset).unwrap());
        assert_eq!(read(text), Some(wall), "{text}");
        assert_eq!(read(&write(wall)), Some(wall), "{text}");
    }

    /// The examples of RFC 3339, section 5.8.
    #[test]
    fn reads_the_examples_of_rfc_3339() {
        check("1985-04-12T23:20:50.52Z", 482_196_050_520, 0);
        check("1996-12-19T16:39:57-08:00", 851_042_397_000, -480);
        check("1937-01-01T12:00:27.87+00:20", -1_041_337_172_130, 20);
    }

    /// The other two examples of that section, both the leap second at the end of 1990, in world time and eight hours west: no phone's clock has a
    /// 61st second, nor has a document that was written here, and to take one for the second after it would put it on another day.
    #[test]
    fn refuses_the_leap_seconds_of_rfc_3339() {
        for text in ["1990-12-31T23:59:60Z", "1990-12-31T15:59:60-08:00"] {
            assert_eq!(read(text), None, "{text}");
        }
        check("1990-12-31T23:59:59Z", 662_687_999_000, 0);
        check("1990-12-31T15:59:59-08:00", 662_687_999_000, -480);
    }

    #[test]
    fn other_texts_are_no_moment() {
        for text in ["", "T", "2026-05-22", "2026-13-01T00:00:00Z", "2026-05-22T24:00:00Z", "2026-05-22T08:14:00", "2026-05-22T08:14Z"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
