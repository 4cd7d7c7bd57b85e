//! A calendar file by RFC 5545: one event for each wait, at its off time, with an alarm. Pure text.
//!
//! A page can't promise to ring while the phone is locked; a calendar may. Some drop the alarms of a file: whoever takes it in checks.

use crate::quantity::{Id, Moment, Offset, Wall};

/// The most octets of a line, its end not counted (RFC 5545, 3.1).
const LINE_MOST: usize = 75;

/// One event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// Names it for ever: a file made again puts the event right in place of adding another.
    pub id: Id,
    /// How often it was put right.
    pub mended: u32,
    pub at: Moment,
    pub title: String,
    pub text: String,
}

/// The file, made at a moment.
pub fn file(events: &[Event], made: Moment) -> String {
    let mut lines = Lines::default();
    lines.add("BEGIN", "VCALENDAR");
    lines.add("VERSION", "2.0");
    lines.add("PRODID", "-//Fivebar//Waits//EN");
    lines.add("CALSCALE", "GREGORIAN");
    for event in events {
        lines.event(event, made);
    }
    lines.add("END", "VCALENDAR");
    lines.0
}

/// A moment in the form "date with UTC time" (RFC 5545, 3.3.5, form 2).
///
/// ```
/// use fivebar_core::bench::calendar::stamp;
/// use fivebar_core::quantity::Moment;
/// assert_eq!(stamp(Moment::at(885_193_200_000)), "19980119T070000Z");
/// ```
pub fn stamp(at: Moment) -> String {
    let utc = Wall::new(at, Offset::UTC);
    let ((year, month, day), (hour, minute)) = (utc.day().as_ymd(), utc.clock().as_hour_minute());
    let second = at.ms().div_euclid(1_000).rem_euclid(60);
    format!("{year:04}{month:02}{day:02}T{hour:02}{minute:02}{second:02}Z")
}

/// A text as a value: backslash, semicolon, comma and line end are escaped (RFC 5545, 3.3.11), other control characters left out.
///
/// ```
/// use fivebar_core::bench::calendar::escaped;
/// assert_eq!(escaped("glue; oil, wax\r\na\\b"), "glue\\; oil\\, wax\\na\\\\b");
/// ```
pub fn escaped(text: &str) -> String {
    let mut out = String::new();
    for letter in text.chars() {
        match letter {
            '\\' | ';' | ',' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            '\t' => out.push(letter),
            letter if letter.is_control() => {}
            letter => out.push(letter),
        }
    }
    out
}

/// A line folded so that none is longer than 75 octets; no letter is cut (RFC 5545, 3.1).
///
/// ```
/// use fivebar_core::bench::calendar::folded;
/// assert_eq!(folded("SUMMARY:short"), "SUMMARY:short\r\n");
/// assert_eq!(folded(&"x".repeat(76)), format!("{}\r\n x\r\n", "x".repeat(75)));
/// ```
pub fn folded(line: &str) -> String {
    let (mut out, mut long) = (String::new(), 0_usize);
    for letter in line.chars() {
        if LINE_MOST < long.saturating_add(letter.len_utf8()) {
            out.push_str("\r\n ");
            long = 1;
        }
        out.push(letter);
        long = long.saturating_add(letter.len_utf8());
    }
    out.push_str("\r\n");
    out
}

#[derive(Default)]
struct Lines(String);

impl Lines {
    fn add(&mut self, name: &str, value: &str) {
        self.0.push_str(&folded(&format!("{name}:{value}")));
    }

    fn event(&mut self, event: &Event, made: Moment) {
        self.add("BEGIN", "VEVENT");
        self.add("UID", &format!("{}@fivebar", event.id));
        self.add("DTSTAMP", &stamp(made));
        self.add("SEQUENCE", &event.mended.to_string());
        self.add("DTSTART", &stamp(event.at));
        self.add("SUMMARY", &escaped(&event.title));
        self.add("DESCRIPTION", &escaped(&event.text));
        // Nobody is kept from being invited by glue.
        self.add("TRANSP", "TRANSPARENT");
        self.add("BEGIN", "VALARM");
        self.add("ACTION", "DISPLAY");
        self.add("TRIGGER", "PT0S");
        self.add("DESCRIPTION", &escaped(&event.title));
        self.add("END", "VALARM");
        self.add("END", "VEVENT");
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{at, id};
    use super::*;

    #[test]
    fn a_file_to_the_byte() {
        let event =
            Event { id: id(7), mended: 1, at: at(1_440), title: "Glue tops, 1 of 5".into(), text: "Out of the clamps; 24 h".into() };
        let lines = [
            "BEGIN:VCALENDAR",
            "VERSION:2.0",
            "PRODID:-//Fivebar//Waits//EN",
            "CALSCALE:GREGORIAN",
            "BEGIN:VEVENT",
            "UID:00000000-0000-7707-8707-070707070707@fivebar",
            "DTSTAMP:19700101T000100Z",
            "SEQUENCE:1",
            "DTSTART:19700102T000000Z",
            "SUMMARY:Glue tops\\, 1 of 5",
            "DESCRIPTION:Out of the clamps\\; 24 h",
            "TRANSP:TRANSPARENT",
            "BEGIN:VALARM",
            "ACTION:DISPLAY",
            "TRIGGER:PT0S",
            "DESCRIPTION:Glue tops\\, 1 of 5",
            "END:VALARM",
            "END:VEVENT",
            "END:VCALENDAR",
        ];
        assert_eq!(file(&[event], at(1)), lines.map(|line| format!("{line}\r\n")).concat());
    }

    #[test]
    fn no_line_is_longer_than_75_octets_and_no_letter_is_cut() {
        for letters in ["ä".repeat(200), "🪵".repeat(90), "ab,c;".repeat(60), format!("{}é", "x".repeat(67))] {
            let event = Event { id: id(7), mended: 0, at: at(0), title: letters.clone(), text: String::new() };
            let file = file(&[event], at(0));
            assert!(file.split("\r\n").all(|line| line.len() <= 75), "{file}");
            assert!(file.replace("\r\n ", "").contains(&format!("SUMMARY:{}\r\n", escaped(&letters))));
        }
        assert_eq!(escaped("a\u{7}b\rc"), "abc");
    }
}
