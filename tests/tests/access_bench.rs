//! Big buttons in each of their states: what axe finds, what sticks out, in both themes, on a small phone and with large text.
use fivebar_core::story::tell;
use fivebar_tests::{Browser, Page, Phone, app, readable as check};
use std::time::Duration;

/// What is worked by then, the clock at which it is looked at, and what stands there.
const STATES: [(&str, &str, &str, &[&str]); 6] = [
    (
        "nothing-runs",
        "2026-03-10 08:00 -04:00 workshop USD inch\njob stands \"Ash plant stands\" 5 spec\n09:00 start \"Sand\" make on stands\n09:30 stop\n",
        "09:31",
        &["Nothing runs", "Carry on", "30 min"],
    ),
    ("waits", "10:00 start \"Glue tops\" make on stands\n10:20 clamped 1 glue 90 min\n10:25 stop\n", "10:30", &["Nothing runs", "11:50"]),
    ("wait-over", "", "11:55", &["Nothing runs", "Top 1 off"]),
    ("runs-and-wait-over", "12:00 start \"Taper\" make on stands\n", "12:10", &["Taper", "Top 1 off", "Stop"]),
    ("forgotten-and-wait-over", "", "19:30", &["Taper", "Was the stop forgotten?", "Top 1 off"]),
    ("forgotten", "19:31 off\n", "23:40", &["Taper", "Was the stop forgotten?", "11 h 40"]),
];

#[test]
fn big_buttons_fit_a_hand_in_every_state() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let (mut story, mut written) = (String::new(), 0);
    for (state, more, clock, words) in STATES {
        story += more;
        let told = tell(&story);
        assert_eq!(told.refused, [], "{state}");
        let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
        for (what, phone, text) in [("320", Phone::SMALL.quick(), 100), ("large", Phone::COMMON.quick(), 200)] {
            let page = app::opened(&mut browser, phone);
            browser.locale(&page, "en-GB");
            browser.timezone(&page, "America/New_York");
            browser.clock_stands(&page, &format!("2026-03-10T{clock}:00-04:00"));
            browser.text_size(&page, text);
            browser.write_book(&page, &lines[written..]);
            written = lines.len();
            browser.reload(&page);
            app::read(&mut browser, &page);
            big(&mut browser, &page);
            words.iter().for_each(|words| browser.wait_text(&page, words));
            check(&mut browser, &page, &format!("big-{state}-{what}"), phone);
            browser.close(page);
        }
    }
    assert_eq!(browser.errors(), [""; 0]);
}

/// From the bench to big buttons.
fn big(browser: &mut Browser, page: &Page) {
    browser.tap(page, ".places > :nth-child(2)");
    browser.wait_text(page, "Big buttons");
    std::thread::sleep(Duration::from_millis(200));
    browser.tap_text(page, "Big buttons");
    browser.wait(page, "!!document.querySelector('main.big')");
    std::thread::sleep(Duration::from_millis(200));
}
