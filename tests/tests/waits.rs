//! Glue on the hands: five tops with five off times in nine touches, through a reload, to a calendar; and that it rings.
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};

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
    assert_eq!((file.matches("BEGIN:VALARM").count(), file.matches("\r\nDTSTART:20260305T").count()), (5, 5), "{file}");
    it_rings(&mut maker);
    assert_eq!(browser.errors(), [""; 0]);
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
