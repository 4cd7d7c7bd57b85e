//! Costs: what axe finds, what sticks out, in both themes, on a small phone, with large text.
use fivebar_tests::{Browser, Page, Phone, on_every_phone, readable as check};

fn spending(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 4);
    browser.tap_text(page, "Ash plant stand");
    browser.tap_keys(page, &["Hours and money", "Write down spending"]);
    check(browser, page, &format!("spend{what}"), phone);
    browser.tap_keys(page, &["finish"]);
    check(browser, page, &format!("spend-home{what}"), phone);
    browser.tap_keys(page, &["On each job", "Of a pack", "Keep count"]);
    check(browser, page, &format!("spend-can{what}"), phone);
    browser.tap_keys(page, &["Sum", "1", "2", "Done"]);
    browser.wait_text(page, "$12.00");
    browser.tap_text(page, "Finish");
    browser.wait_text(page, "Some of it came back");
    check(browser, page, &format!("spend-line{what}"), phone);
    browser.tap_keys(page, &["Some of it came back"]);
    check(browser, page, &format!("came-back{what}"), phone);
    browser.tap_keys(page, &["Not now"]);
}

fn tools(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 5);
    browser.tap_keys(page, &["Your rate", "costs and tax"]);
    check(browser, page, &format!("costs-and-tax{what}"), phone);
    browser.tap_keys(page, &["Tools"]);
    check(browser, page, &format!("tools-none{what}"), phone);
    browser.tap_keys(page, &["Another tool", "Most at first"]);
    check(browser, page, &format!("tool{what}"), phone);
    browser.eval(page, "document.querySelector('#tool').focus()");
    browser.type_text(page, "Band saw");
    browser.tap_keys(page, &["As much each year", "9", "0", "0", "Years", "9", "Done"]);
    browser.wait_text(page, "Band saw");
    check(browser, page, &format!("tools{what}"), phone);
}

/// How one is paid, and the form of another rate.
fn taxes(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 5);
    browser.place(page, 5);
    browser.tap_keys(page, &["How you are paid"]);
    check(browser, page, &format!("till{what}"), phone);
    browser.tap_keys(page, &["Another tax rate"]);
    browser.eval(page, "document.querySelector('#tax').focus()");
    browser.type_text(page, "Reduced");
    check(browser, page, &format!("tax-rate{what}"), phone);
    browser.tap_keys(page, &["2", "Done"]);
    browser.wait_text(page, "2 %, inside");
    check(browser, page, &format!("till-rates{what}"), phone);
}

/// Costs of no job: a can that is opened there, and the lines of both.
fn workshop_costs(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 5);
    browser.place(page, 5);
    browser.tap_keys(page, &["Workshop costs", "Open a can or pack", "glue"]);
    check(browser, page, &format!("can-new{what}"), phone);
    browser.tap_keys(page, &["5", "0", "0", "Cost, USD", "1", "2", "Done"]);
    browser.wait_text(page, "Done again leaves that open.");
    check(browser, page, &format!("can-home{what}"), phone);
    browser.tap_keys(page, &["On each job", "Done"]);
    browser.wait_text(page, "Open cans and packs");
    browser.tap_text(page, "Glue");
    browser.wait_text(page, "It is empty");
    check(browser, page, &format!("can-there{what}"), phone);
    browser.tap_keys(page, &["Power"]);
    check(browser, page, &format!("costs-home{what}"), phone);
    browser.tap_keys(page, &["In the rate", "4", "0", "Done"]);
    browser.wait_text(page, "$40.00");
    check(browser, page, &format!("costs-none{what}"), phone);
}

#[test]
fn costs_and_tools_are_readable_on_every_phone_and_by_large_text() {
    on_every_phone("", |browser, page, of| {
        spending(browser, page, of);
        tools(browser, page, of);
        taxes(browser, page, of);
        workshop_costs(browser, page, of);
    });
}
