//! The example on a real store: it comes with one tap, stays over a reload, goes with one tap, and costs a start nothing.
use fivebar_tests::{Browser, Page, Phone, app};
use std::time::Duration;

const DATABASES: &str = "indexedDB.databases().then(all => all.map(one => one.name).join(' '))";

fn has_example(browser: &mut Browser, page: &Page) -> bool {
    browser.eval(page, DATABASES).as_str().is_some_and(|names| names.contains("fivebar-example"))
}

/// A tap as an honest hand gives it: a moment after the last.
fn tap(browser: &mut Browser, page: &Page, text: &str) {
    browser.wait_text(page, text);
    std::thread::sleep(Duration::from_millis(120));
    browser.tap_text(page, text);
}

#[test]
fn the_example_comes_and_goes() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    tap(&mut browser, &page, "Jobs");
    browser.wait_text(&page, "Yours: none yet");
    assert!(!has_example(&mut browser, &page), "looking leaves nothing behind");
    tap(&mut browser, &page, "Try the example");
    browser.wait_text(&page, "19.09 left per hour");
    browser.wait_text(&page, "12.74 left per hour");
    tap(&mut browser, &page, "Hall shoe bench");
    browser.wait_text(&page, "Example, in no total");
    browser.wait_text(&page, "103.93");
    browser.shot(&page, "example-job");
    tap(&mut browser, &page, "Back to yours");
    browser.wait_text(&page, "Yours: none yet");
    assert!(has_example(&mut browser, &page));
    browser.reload(&page);
    app::ready(&mut browser, &page);
    browser.wait_text(&page, "19.09 left per hour");
    tap(&mut browser, &page, "Remove");
    browser.wait_text(&page, "Try the example");
    assert!(!has_example(&mut browser, &page));
    browser.reload(&page);
    app::ready(&mut browser, &page);
    browser.wait_text(&page, "Try the example");
    assert!(!has_example(&mut browser, &page));
    assert_eq!(browser.errors(), [""; 0]);
}

/// A first job from the name on a keyboard to the clock at the bench.
#[test]
fn a_first_job_on_a_phone() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    browser.tap_text(&page, "Jobs");
    browser.wait_text(&page, "Yours: none yet");
    tap(&mut browser, &page, "New job");
    browser.wait_text(&page, "Begin this job");
    browser.tap(&page, "#job-name");
    browser.type_text(&page, "Wall shelf");
    for text in ["Begin this job", "Hours and money", "Plan an operation", "Thickness", "9", "0", "Done"] {
        tap(&mut browser, &page, text);
    }
    browser.wait_text(&page, "1 h 30");
    browser.shot(&page, "job-planned");
    tap(&mut browser, &page, "The job");
    tap(&mut browser, &page, "Start thickness");
    browser.wait(&page, "location.hash === '#bench'");
    app::saved(&mut browser, &page);
    assert_eq!(browser.errors(), [""; 0]);
}
