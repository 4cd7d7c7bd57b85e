//! Glue on the hands: five tops with five off times in nine touches, through a reload, to a calendar; and that it rings.
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};
use icalendar::{Calendar, CalendarComponent, CalendarDateTime, Component, DatePerhapsTime};

/// Listens for what is handed to the platform: tones that start, buzzes, and the text of a file.
const EARS: &str = "{ globalThis.heard = { tones: 0, buzzes: 0, file: '' };
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (at) { heard.tones += 1; return start.call(this, at) };
  navigator.vibrate = pattern => { if (pattern.length === 5) heard.buzzes += 1; return true };
  delete Navigator.prototype.share;
  const url = URL.createObjectURL;
  URL.createObjectURL = blob => { blob.text().then(text => { heard.file = text }); return url.call(URL, blob) } }";

/// A phone with a job of five stands and its operation planned, on the day of drawing 7.
fn with_stands(maker: &mut Maker<'_>) {
    maker.at("2026-03-05T08:00");
    maker.touch(".places > :nth-child(4)");
    maker.tap("New job");
    maker.types("job-name", "Ash plant stands");
    maker.tap("5");
    maker.tap("Begin this job");
    maker.reads("Ash plant stands");
}

#[test]
fn five_tops_have_five_off_times_in_nine_touches() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.locale(&page, "en-US");
    browser.timezone(&page, "America/New_York");
    browser.before_each_page(&page, EARS);
    let mut maker = Maker::on(&mut browser, page.clone());
    maker.browser.open(&page, app::address());
    app::read(maker.browser, &page);
    with_stands(&mut maker);
    maker.at("2026-03-05T11:20");
    let before = maker.touches;
    maker.touch(".places > :nth-child(2)");
    maker.touch(".key.first");
    maker.tap("Glue up");
    for (clock, off) in [("11:29", "12:59 PM"), ("11:38", "1:08 PM"), ("11:48", "1:18 PM"), ("11:57", "1:27 PM"), ("12:07", "1:37 PM")] {
        maker.at(&format!("2026-03-05T{clock}"));
        maker.tap("Clamped");
        maker.reads(off);
    }
    maker.at("2026-03-05T12:08");
    maker.tap("Stop");
    assert_eq!(maker.touches - before, 9);
    maker.reads("In clamps: first off 12:59 PM, last 1:37 PM");
    maker.reads("today 48 min");
    maker.shot("waits-bench");
    app::saved(maker.browser, &maker.page);
    maker.browser.reload(&page);
    app::read(maker.browser, &page);
    maker.at("2026-03-05T12:10");
    maker.touch(".places > :nth-child(2)");
    maker.tap("In clamps");
    for off in ["12:59 PM", "1:08 PM", "1:18 PM", "1:27 PM", "1:37 PM"] {
        maker.reads(&format!("off {off}"));
    }
    maker.shot("waits-list");
    maker.tap("To a calendar");
    maker.reads("Check that it rings: some calendars drop alarms of a file.");
    let file = maker.browser.eval(&maker.page, "new Promise(told => setTimeout(() => told(heard.file), 400))");
    let file = file.as_str().expect("a file").to_owned();
    another_reads_it(&file);
    it_rings(&mut maker);
    assert_eq!(browser.errors(), [""; 0]);
}

/// The file as another's reader has it: five events in world time, five hours ahead of New York, each named by its top, with an alarm at its start.
#[track_caller]
fn another_reads_it(file: &str) {
    let read: Calendar = file.parse().unwrap_or_else(|fault| panic!("{fault}\n{file}"));
    let events: Vec<_> = read.components.iter().filter_map(CalendarComponent::as_event).collect();
    let start = |event: &icalendar::Event| match event.get_start() {
        Some(DatePerhapsTime::DateTime(CalendarDateTime::Utc(at))) => at.to_rfc3339(),
        other => panic!("{other:?} in\n{file}"),
    };
    let told: Vec<_> = events.iter().map(|event| (start(event), event.get_summary().unwrap_or_default().to_owned())).collect();
    let off = |clock: &str, n: u32| (format!("2026-03-05T{clock}:00+00:00"), format!("Glue up: piece {n} off"));
    assert_eq!(told, [off("17:59", 1), off("18:08", 2), off("18:18", 3), off("18:27", 4), off("18:37", 5)], "{file}");
    let mut names: Vec<_> = events.iter().filter_map(|event| event.get_uid()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), 5, "each is an event of its own: {file}");
    let unfolded = icalendar::parser::unfold(file);
    let tree = icalendar::parser::read_calendar(&unfolded).expect("a calendar");
    for event in &tree.components {
        let [alarm] = &event.components[..] else { panic!("one alarm in {event:?}") };
        let value = |name: &str| alarm.find_prop(name).map(|found| found.val.to_string());
        assert_eq!([value("ACTION"), value("TRIGGER")], ["DISPLAY", "PT0S"].map(|said| Some(said.to_owned())), "{file}");
    }
    assert!(
        tree.components.iter().all(|event| event.find_prop("DTSTART").is_some_and(|start| start.params.is_empty())),
        "no zone of its own"
    );
}

/// Once at the off time, two tones and a buzz; a look away and back rings no second time.
fn it_rings(maker: &mut Maker<'_>) {
    let heard = |maker: &mut Maker<'_>| {
        let told = maker.browser.eval(&maker.page, "new Promise(told => setTimeout(() => told([heard.tones, heard.buzzes]), 2500))");
        (told[0].as_u64(), told[1].as_u64())
    };
    assert_eq!(heard(maker), (Some(0), Some(0)));
    maker.at("2026-03-05T12:59:00");
    assert_eq!(heard(maker), (Some(2), Some(1)));
    assert_eq!(heard(maker), (Some(2), Some(1)));
    maker.reads("can come out, since 12:59 PM");
    maker.tap("Done");
    maker.tap("Piece 1 off");
    maker.reads("In clamps: first off 1:08 PM, last 1:37 PM");
}
