//! Costs: what axe finds, what sticks out, in both themes, on a small phone, with large text.
use fivebar_tests::{Browser, Page, Phone, readable as check};

fn keys(browser: &mut Browser, page: &Page, keys: &[&str]) {
    for key in keys {
        browser.tap_key(page, key);
    }
}

fn spending(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 4);
    browser.tap_text(page, "Ash plant stand");
    keys(browser, page, &["Hours and money", "Write down spending"]);
    check(browser, page, &format!("spend{what}"), phone);
    keys(browser, page, &["finish"]);
    check(browser, page, &format!("spend-home{what}"), phone);
    keys(browser, page, &["On each job", "Of a pack", "Keep count"]);
    check(browser, page, &format!("spend-can{what}"), phone);
    keys(browser, page, &["Sum", "1", "2", "Done"]);
    browser.wait_text(page, "$12.00");
    browser.tap_text(page, "Finish");
    browser.wait_text(page, "Some of it came back");
    check(browser, page, &format!("spend-line{what}"), phone);
    keys(browser, page, &["Some of it came back"]);
    check(browser, page, &format!("came-back{what}"), phone);
    keys(browser, page, &["Not now"]);
}

fn tools(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 5);
    keys(browser, page, &["Your rate", "costs and tax"]);
    check(browser, page, &format!("costs-and-tax{what}"), phone);
    keys(browser, page, &["Tools"]);
    check(browser, page, &format!("tools-none{what}"), phone);
    keys(browser, page, &["Another tool", "Most at first"]);
    check(browser, page, &format!("tool{what}"), phone);
    browser.eval(page, "document.querySelector('#tool').focus()");
    browser.type_text(page, "Band saw");
    keys(browser, page, &["As much each year", "9", "0", "0", "Years", "9", "Done"]);
    browser.wait_text(page, "Band saw");
    check(browser, page, &format!("tools{what}"), phone);
}

#[test]
fn costs_and_tools_are_readable_on_every_phone_and_by_large_text() {
    for (what, phone, text) in
        [("", Phone::COMMON.quick(), 100), ("-320", Phone::SMALL.quick(), 100), ("-large", Phone::COMMON.quick(), 200)]
    {
        let profile = tempfile::tempdir().expect("a folder");
        let mut browser = Browser::start(profile.path());
        let page = browser.with_job(phone);
        browser.text_size(&page, text);
        spending(&mut browser, &page, (what, phone));
        tools(&mut browser, &page, (what, phone));
        assert_eq!(browser.errors(), [""; 0]);
    }
}
