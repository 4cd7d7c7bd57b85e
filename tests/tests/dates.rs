//! Dates by taps in a real browser: what goes to a buyer on paper has nothing private on it.
use fivebar_core::story::tell;
use fivebar_tests::{Browser, Look, Phone, app};
use std::time::Duration;

const DATES: &str = include_str!("../stories/dates.txt");

/// All that print shows of the page.
const PRINTED: &str = "document.body.innerText";

#[test]
fn inv15_a_quote_prints_nothing_private() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let begun = DATES.split("# --- Tuesday").next().expect("the beginning");
    let story = tell(&format!("{begun}\n2026-03-11 08:00 start \"saw\" make on stool\n16:59 done 1\n17:00 stop\n"));
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    browser.write_book(&page, &lines);
    browser.reload(&page);
    app::read(&mut browser, &page);
    browser.tap(&page, ".places > :nth-child(4)");
    for key in ["Stool", "Dates and quote", "Quote"] {
        std::thread::sleep(Duration::from_millis(250));
        browser.wait_text(&page, key);
        browser.tap_text(&page, key);
    }
    browser.wait_text(&page, "Print it");
    let shown = browser.eval(&page, PRINTED).to_string();
    assert!(shown.contains("In no copy yet") && shown.contains(" at your rate"), "the maker sees it: {shown}");
    browser.look(&page, Look { print: true, ..Look::default() });
    let printed = browser.eval(&page, PRINTED).to_string();
    assert!(printed.contains(" to $") && printed.contains("Good until"), "{printed}");
    for private in ["In no copy", " h ", "costs", "rate", "saved", "Take back", "Jobs"] {
        assert!(!printed.contains(private), "{private}: {printed}");
    }
    assert_eq!(browser.errors(), [""; 0]);
}
