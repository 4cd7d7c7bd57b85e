//! Calendar files against the texts that define them, and against another's reader.
//!
//! RFC 5545 (iCalendar, sections 3.1, 3.3.5, 3.3.11, 3.6.6) and RFC 3339 section 5.8: their examples are **recalled**, not copied from
//! the page, and so are the rows `rfc3339-*` of `tests/checks/check_values.json`. The reader is the crate `icalendar`.

use fivebar_core::bench::calendar::{Event, escaped, file, folded, stamp};
use fivebar_core::quantity::{Day, Id, Moment, Span};
use icalendar::{Calendar, CalendarComponent, CalendarDateTime, Component, DatePerhapsTime};

/// Seconds since 1970 as another counts them.
fn seconds(text: &str) -> i64 {
    chrono::DateTime::parse_from_rfc3339(text).unwrap().timestamp()
}

/// A moment as RFC 3339 writes it, and as RFC 5545 does.
#[track_caller]
fn check(rfc3339: &str, rfc5545: &str) {
    assert_eq!(stamp(Moment::at(seconds(rfc3339) * 1_000)), rfc5545, "{rfc3339}");
}

#[test]
fn moments_are_written_as_the_examples_are() {
    check("1998-01-19T07:00:00Z", "19980119T070000Z"); // RFC 5545, 3.3.5, form 2
    check("1997-07-14T13:30:00-04:00", "19970714T173000Z"); // 3.3.5, the three forms of one moment
    check("1997-07-14T17:00:00Z", "19970714T170000Z"); // 3.4
    check("1985-04-12T23:20:50Z", "19850412T232050Z"); // RFC 3339, 5.8, without its hundredths
    check("1996-12-19T16:39:57-08:00", "19961220T003957Z"); // 5.8: "equivalent to 1996-12-20T00:39:57Z"
    check("1937-01-01T12:00:27+00:20", "19370101T114027Z"); // 5.8, Netherlands
    check("2024-02-29T23:59:59Z", "20240229T235959Z");
    assert_eq!(stamp(Moment::at(999)), "19700101T000000Z");
}

#[test]
fn texts_are_escaped_and_lines_folded_as_the_examples_are() {
    // 3.3.11
    let text = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.";
    assert_eq!(escaped(text), "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
    // 3.1: a line is folded by a line end and one white space, and unfolded by taking both out.
    let long = format!("DESCRIPTION:{}", "This is a long description that exists on a long line. ".repeat(4));
    let lines = folded(&long);
    assert!(lines.split("\r\n").all(|line| line.len() <= 75) && lines.ends_with("\r\n"));
    assert_eq!(lines.replace("\r\n ", ""), format!("{long}\r\n"));
}

fn id(n: u8) -> Id {
    Id::new(Moment::at(1_772_545_260_000), [n; 10])
}

/// Five tops glued on Thu 5 March 2026 five hours west, their off times 12:59 to 13:37, read by another.
#[test]
fn another_reader_finds_every_off_time_and_its_alarm() {
    let noon = Day::ymd(2026, 3, 5).unwrap().start(fivebar_core::quantity::Offset::minutes(-300).unwrap());
    let minutes = [779, 788, 798, 807, 817];
    let title = |n: usize| format!("Glue tops, {n} of 5: out of the clamps; ä, \"so\" \\ and a long tail beyond one line, ё, 木");
    let event = |(n, minute): (usize, &i64)| Event {
        id: id(u8::try_from(n).unwrap()),
        mended: 2,
        at: noon.plus(Span::minutes(*minute)),
        title: title(n + 1),
        text: "Ash plant stands\nClamped at 11:29".into(),
    };
    let events: Vec<Event> = minutes.iter().enumerate().map(event).collect();
    let read: Calendar = file(&events, noon).parse().unwrap();
    let found: Vec<_> = read.components.iter().filter_map(CalendarComponent::as_event).collect();
    assert_eq!((read.components.len(), found.len()), (5, 5));
    assert_eq!((read.property_value("VERSION"), read.property_value("PRODID")), (Some("2.0"), Some("-//Fivebar//Waits//EN")));
    for (n, (found, told)) in found.iter().zip(&events).enumerate() {
        let Some(DatePerhapsTime::DateTime(CalendarDateTime::Utc(start))) = found.get_start() else { panic!("{found:?}") };
        assert_eq!(start.timestamp_millis(), told.at.ms());
        assert_eq!(found.get_summary(), Some(title(n + 1).as_str()));
        assert_eq!(found.get_description(), Some("Ash plant stands\nClamped at 11:29"));
        assert_eq!(found.get_uid(), Some(format!("{}@fivebar", told.id).as_str()));
        assert_eq!((found.get_sequence(), found.get_timestamp().map(|at| at.timestamp_millis())), (Some(2), Some(noon.ms())));
    }
}

/// The alarm is looked at in the tree another reads: inside the event, shown, at its start (RFC 5545, 3.6.6).
#[test]
fn each_event_holds_one_alarm_that_is_shown_at_its_start() {
    let event = Event { id: id(1), mended: 0, at: Moment::at(0), title: "Oil".into(), text: String::new() };
    let text = file(&[event.clone(), Event { id: id(2), ..event }], Moment::at(0));
    let unfolded = icalendar::parser::unfold(&text);
    let read = icalendar::parser::read_calendar(&unfolded).unwrap();
    assert_eq!(read.components.len(), 2);
    for event in &read.components {
        let [alarm] = &event.components[..] else { panic!("{event:?}") };
        let value = |name: &str| alarm.find_prop(name).map(|found| found.val.to_string());
        assert_eq!((event.name.to_string(), alarm.name.to_string()), ("VEVENT".to_owned(), "VALARM".to_owned()));
        assert_eq!(["ACTION", "TRIGGER", "DESCRIPTION"].map(value), ["DISPLAY", "PT0S", "Oil"].map(|text| Some(text.to_owned())));
    }
}

/// Topic 11 of the published figures: RFC 3339, section 5.8. From memory, as the rows say; recomputed there.
#[test]
fn the_rows_of_rfc_3339_are_written_as_rfc_5545_has_them() {
    let path = std::path::PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/checks/check_values.json");
    let all: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let rows = all["topics"].as_object().unwrap().values().flat_map(|topic| topic.as_array().unwrap());
    let rows = rows.filter(|row| row["source"] == "RFC 3339 section 5.8");
    let told = |row: &serde_json::Value, at: &serde_json::Value| at.as_str().unwrap_or_else(|| panic!("{row}")).to_owned();
    let checked = rows.map(|row| {
        let (text, utc) = (told(row, &row["inputs"]["text"]), told(row, &row["expected"]));
        let digits: String = utc.chars().take("1996-12-20T00:39:57".len()).filter(|letter| !"-:".contains(*letter)).collect();
        check(&text, &format!("{digits}Z"));
    });
    assert_eq!(checked.count(), 2);
}
