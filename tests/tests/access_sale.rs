//! The list on paper, and what comes after a yes: agreed, in parts, sold, paid. What axe finds, what sticks out, in both themes, on a small
//! phone, with large text.
use fivebar_tests::{Browser, Page, Phone, on_every_phone, readable as check};

/// Two tax rates; a bench agreed with a deposit, to be paid in parts; a desk sold and not paid; a piece of the stands for sale.
const TOLD: &str = "till tax 0.055 inside fee 0.026\ntax-rate \"Reduced\" 0.02\n\
    job bench \"Hall bench\" 1 order\nagree 460 for 1 bench delivered deposit 184 as deal\n\
    job desk \"Writing desk\" 1 spec\nsell 1 desk for 500\n";

fn on_paper(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 3);
    browser.wait_text(page, "Ash plant stand");
    check(browser, page, &format!("price-list{what}"), phone);
    browser.tap_keys(page, &["The list on paper"]);
    check(browser, page, &format!("price-paper{what}"), phone);
    browser.tap_keys(page, &["Back to the list", "A fair or a market"]);
    check(browser, page, &format!("fair{what}"), phone);
    browser.tap_keys(page, &["6", "5", "Hours there, h", "9", "How many cover it"]);
    browser.wait_text(page, "Other figures");
    check(browser, page, &format!("fair-covers{what}"), phone);
    browser.tap_keys(page, &["Back to the list"]);
}

fn agreed(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.tap_text(page, "Hall bench");
    browser.wait_text(page, "Several payments");
    check(browser, page, &format!("deal-agreed{what}"), phone);
    for (key, name) in [("Another sum came in", "deal-sum"), ("Several payments", "deal-parts"), ("Change the order", "deal-change")] {
        browser.tap_keys(page, &[key]);
        check(browser, page, &format!("{name}{what}"), phone);
        browser.tap_keys(page, &["Not now"]);
    }
    browser.tap_keys(page, &["Pay and hours"]);
    check(browser, page, &format!("deal-pay{what}"), phone);
    browser.tap_keys(page, &["Back to what was agreed", "Back to the list"]);
}

fn sold(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.tap_text(page, "Writing desk");
    browser.wait_text(page, "Another sum came in");
    check(browser, page, &format!("deal-owed{what}"), phone);
    browser.tap_keys(page, &["Card", "500.00 came in, by card"]);
    browser.wait_text(page, "They offer");
    browser.tap_keys(page, &["They offer…"]);
    check(browser, page, &format!("offer-taxes{what}"), phone);
    browser.tap_keys(page, &["Pay and hours"]);
    check(browser, page, &format!("offer-pay{what}"), phone);
    browser.tap_keys(page, &["Back to the offer", "Sold at 145"]);
    browser.wait_text(page, "Take back");
    check(browser, page, &format!("just-sold{what}"), phone);
}

#[test]
fn the_paper_and_what_comes_after_a_yes_are_readable_on_every_phone_and_by_large_text() {
    on_every_phone(TOLD, |browser, page, of| {
        on_paper(browser, page, of);
        agreed(browser, page, of);
        sold(browser, page, of);
    });
}
