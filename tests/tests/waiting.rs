//! What waiting is worth, in a real browser: its pages are readable on any phone, and a buyer finds nothing of it.
use fivebar_core::story::{STANDS, tell};
use fivebar_tests::{Browser, Page, Phone, app, readable};
use serde_json::json;
use std::time::Duration;

/// The phone's clock stands at 12:40 of the market.
const THAT_DAY: &str = "2026-04-18T12:40:00-04:00";

/// Three stands left, guessed at the market.
fn at_market(browser: &mut Browser, (phone, text): (Phone, u32), is_first: bool) -> Page {
    let page = app::opened(browser, phone);
    browser.locale(&page, "en-US");
    browser.timezone(&page, "America/New_York");
    browser.clock_stands(&page, THAT_DAY);
    browser.text_size(&page, text);
    let market = tell(STANDS.split("13:10 sell").next().unwrap_or_default());
    let lines: Vec<String> = market.book.lines().map(str::to_owned).collect();
    // One book for all of them.
    if is_first {
        browser.write_book(&page, &lines);
    }
    browser.eval(&page, "location.hash = 'price'");
    browser.reload(&page);
    app::read(browser, &page);
    browser.wait_text(&page, "3 left of 5, tag 145");
    page
}

fn check(browser: &mut Browser, page: &Page, name: &str, phone: Phone) {
    std::thread::sleep(Duration::from_millis(150));
    readable(browser, page, name, phone);
}

fn tap(browser: &mut Browser, page: &Page, words: &str) {
    browser.tap_text(page, words);
    std::thread::sleep(Duration::from_millis(200));
}

#[test]
fn its_pages_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    for (what, phone, text) in [("", Phone::COMMON.quick(), 100), ("-320", Phone::SMALL.quick(), 100), ("-200", Phone::COMMON.quick(), 200)]
    {
        let page = at_market(&mut browser, (phone, text), what.is_empty());
        check(&mut browser, &page, &format!("price-guessed{what}"), phone);
        tap(&mut browser, &page, "Asking price");
        browser.wait_text(&page, "The band comes from your guesses.");
        check(&mut browser, &page, &format!("price-waiting{what}"), phone);
        tap(&mut browser, &page, "Change guesses");
        check(&mut browser, &page, &format!("price-guesses{what}"), phone);
        tap(&mut browser, &page, "Sold by");
        check(&mut browser, &page, &format!("price-by-when{what}"), phone);
        tap(&mut browser, &page, "4 weeks");
        tap(&mut browser, &page, "In the end, each");
        check(&mut browser, &page, &format!("price-guess{what}"), phone);
        browser.close(page);
    }
    assert_eq!(browser.errors(), [""; 0]);
}

/// The word in front of a buyer is there in two touches, and the face has nothing of it.
#[test]
fn inv15_a_buyer_finds_nothing_of_waiting() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = at_market(&mut browser, (Phone::COMMON.quick(), 100), true);
    tap(&mut browser, &page, "They offer…");
    tap(&mut browser, &page, "120");
    browser.wait_text(&page, "more than waiting is worth");
    tap(&mut browser, &page, "Show the buyer");
    browser.wait_text(&page, "Hold to close");
    let tree = browser.on(&page, "Accessibility.getFullAXTree", json!({})).to_string();
    let seen = browser
        .eval(&page, "JSON.stringify([document.querySelector('#app').outerHTML, {...localStorage}, {...sessionStorage}])")
        .to_string();
    for private in ["not under", "101", "waiting", "Asking", "settle", "120", "140"] {
        // The tree has numbers of its own for its nodes.
        let in_tree = tree.contains(&format!("\"value\":\"{private}"));
        assert!(!in_tree && !seen.contains(private), "{private} in {seen}");
    }
    assert_eq!(browser.errors(), [""; 0]);
}
