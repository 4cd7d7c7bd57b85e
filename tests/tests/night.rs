//! A run goes on where no page does: across a killed browser, a night, the night in which clocks go on, and a change of zone.
//! Across an update, and across all of them: `updates.rs`, `inv06_a_run_outlives_a_kill_a_night_another_zone_and_an_update`.
use fivebar_core::story::tell;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Page, Phone, app};

/// A tab of a phone that is in a zone; the app is not open yet.
fn tab(browser: &mut Browser, zone: &str) -> Page {
    let page = browser.page(Phone::COMMON.quick());
    browser.locale(&page, "en-US");
    browser.timezone(&page, zone);
    page
}

/// The app opened at a clock time of its place.
fn opened<'a>(browser: &'a mut Browser, zone: &str, clock: &str) -> Maker<'a> {
    let page = tab(browser, zone);
    let mut maker = Maker::on(browser, page.clone());
    maker.browser.before_each_page(&page, &format!("setClock({clock:?})"));
    maker.browser.open(&page, app::address());
    app::read(maker.browser, &page);
    maker.at(clock);
    maker.touch(".places > :nth-child(2)");
    maker
}

/// A phone whose book was written as this story tells, and the profile it lies in.
fn told(story: &str) -> tempfile::TempDir {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    browser.wait(&page, "indexedDB.databases().then(all => all.some(one => one.name === 'fivebar'))");
    let story = tell(story);
    assert_eq!(story.refused, []);
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    browser.write_book(&page, &lines);
    assert_eq!(browser.book_lines(&page), lines);
    browser.kill();
    profile
}

/// So much of it is on a line of the day's list, told by the name of its operation.
#[track_caller]
fn line_reads(maker: &mut Maker<'_>, op: &str, words: &[&str]) {
    let script =
        format!("[...document.querySelectorAll('.day .run')].find(run => run.innerText.includes({op:?}))?.innerText.replace(/\\s+/g, ' ')");
    let found = maker.browser.eval(&maker.page, &script);
    for words in words {
        assert!(found.as_str().is_some_and(|found| found.contains(words)), "{words:?} in {found:?}");
    }
}

#[test]
fn inv06_a_run_goes_on_across_a_killed_browser() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/New_York", "2026-03-10T09:00");
    for key in ["Start", "Trim"] {
        maker.tap(key);
    }
    maker.reads("Trim started");
    app::saved(maker.browser, &maker.page);
    maker.at("2026-03-10T09:20");
    maker.tap("1 more done");
    app::saved(maker.browser, &maker.page);
    browser.kill();

    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/New_York", "2026-03-10T10:30");
    maker.reads("1 h 30");
    maker.reads("20 min each");
    maker.tap("Stop");
    maker.tap("today 1 h 30");
    maker.reads("all measured");
    line_reads(&mut maker, "Trim", &["9:00 AM", "1 h 30", "1 done"]);
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn inv06_a_run_over_midnight_is_listed_on_its_start_day() {
    let profile = told("2026-03-10 22:40 -04:00 workshop USD inch\nstart \"oil\" make");
    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/New_York", "2026-03-11T00:25");
    maker.reads("1 h 45");
    maker.reads("today 25 min");
    maker.tap("Stop");
    maker.tap("today 25 min");
    maker.reads("Wed, Mar 11");
    maker.reads("25 min of it are of this day");
    maker.shot("night-after-midnight");
    maker.tap("Day before");
    maker.reads("1 h 20 in all");
    line_reads(&mut maker, "oil", &["10:40 PM", "1 h 45", "measured"]);
    assert_eq!(browser.errors(), [""; 0]);
}

/// From 23:30 to 03:20 on the clock are 2 h 50 in this night: at two it is three.
#[test]
fn inv06_the_hour_that_was_not_is_not_paid() {
    let profile = told("2026-03-07 23:30 -05:00 workshop USD inch\nstart \"oil\" make");
    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/New_York", "2026-03-08T03:20");
    maker.reads("2 h 50");
    maker.reads("today 2 h 20");
    maker.tap("Stop");
    maker.tap("today 2 h 20");
    maker.tap("Day before");
    maker.reads("30 min in all");
    line_reads(&mut maker, "oil", &["11:30 PM", "2 h 50"]);
    assert_eq!(browser.errors(), [""; 0]);
}

/// From 0:20 to 2:10 on the clock are 2 h 50 in this night: after the first 1:59 it is one again.
#[test]
fn inv06_the_hour_that_was_twice_is_paid_twice() {
    let profile = told("2026-11-01 00:20 -04:00 workshop USD inch\nstart \"oil\" make");
    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/New_York", "2026-11-01T02:10");
    maker.reads("2 h 50");
    maker.tap("Stop");
    maker.tap("today 2 h 50");
    maker.reads("all measured");
    line_reads(&mut maker, "oil", &["12:20 AM", "2 h 50"]);
    assert_eq!(browser.errors(), [""; 0]);
}

/// Begun at 15:00 at home; seen at 15:30 one zone to the west, and stopped at 14:45 two zones to the west.
#[test]
fn inv06_a_change_of_zone_changes_no_minute() {
    let profile = told("2026-03-05 15:00 -05:00 workshop USD inch\nstart \"drive to the fair\" sell");
    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/Chicago", "2026-03-05T15:30");
    maker.reads("1 h 30");
    maker.reads("today 1 h 30");
    browser.kill();

    let mut browser = Browser::start(profile.path());
    let mut maker = opened(&mut browser, "America/Denver", "2026-03-05T14:45");
    maker.reads("1 h 45");
    maker.tap("Stop");
    maker.tap("today 1 h 45");
    maker.reads("all measured");
    line_reads(&mut maker, "drive to the fair", &["3:00 PM", "1 h 45"]);
    maker.touch(".day .run > .dl");
    maker.reads("The clock said 3:00 PM");
    maker.reads("to 4:45 PM");
    maker.reads("by the clock there");
    maker.shot("night-zones");
    app::saved(maker.browser, &maker.page);
    let lines = maker.browser.book_lines(&maker.page.clone());
    assert!(lines.last().is_some_and(|line| line.contains("\"tz\":-420")), "{lines:?}");
    assert_eq!(browser.errors(), [""; 0]);
}
