//! What plans lack, where the maker stands at the yard: what axe finds, what sticks out, in both themes, on a small phone, with large text.
use fivebar_tests::{Browser, Page, Phone, on_every_phone, readable as check};

/// A bench lacks pieces of one of two kinds, a table legs of any wood; a haul is in hand with a pile that does for the bench.
const TOLD: &str = "job bench \"Hall bench\" 1 order\njob table \"Table\" 1 spec\n\
    seek rows for bench 3 of 1 1/2 x 6 x 14 in oak-white or 5 of 1 x 2 1/2 x 40 in makes 8\n\
    seek parts for table 4 of 1 3/4 x 1 3/4 x 19 in makes 1\n\
    leave for yard\npile squares oak-white 1 1/2 x 6 x 15 in\ncount 2 squares\npile sticks maple-sugar 1 x 1 x 9 in\ncount 4 sticks\n";

fn looked_for(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 1);
    browser.wait_text(page, "Hall bench: ");
    check(browser, page, &format!("sought-over-tiles{what}"), phone);
    browser.tap_text(page, "Hall bench: ");
    browser.wait_text(page, "Look for it no more");
    check(browser, page, &format!("sought{what}"), phone);
    browser.tap_keys(page, &["Look for it no more"]);
    browser.wait_text(page, "Take back");
    check(browser, page, &format!("sought-no-more{what}"), phone);
}

#[test]
fn what_is_looked_for_is_readable_on_every_phone_and_by_large_text() {
    on_every_phone(TOLD, looked_for);
}
