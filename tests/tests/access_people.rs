//! People and photos: what axe finds, what sticks out, in both themes, on a small phone, with large text.
use fivebar_tests::{Browser, Page, Phone, on_every_phone, readable as check};

fn photos(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.open_photos(page);
    check(browser, page, &format!("photos-none{what}"), phone);
    browser.tap_key(page, "Take a photo");
    browser.drawn(page, 1);
    check(browser, page, &format!("photos{what}"), phone);
    browser.tap_key(page, "The job");
    browser.drawn(page, 1);
    check(browser, page, &format!("job-photo{what}"), phone);
    browser.place(page, 3);
    browser.tap_text(page, "Show the buyer");
    browser.drawn(page, 1);
    check(browser, page, &format!("face-photo{what}"), phone);
    browser.eval(page, "document.querySelector('.close .key').focus()");
    browser.key(page, "Enter");
    browser.wait(page, "!!document.querySelector('.places')");
}

fn people(browser: &mut Browser, page: &Page, (what, phone): (&str, Phone)) {
    browser.place(page, 5);
    browser.tap_key(page, "Suppliers and people");
    browser.tap_key(page, "Dana Reed");
    check(browser, page, &format!("people-open{what}"), phone);
    browser.tap_key(page, "Name, phone and place");
    browser.eval(page, "document.querySelector('#place').focus()");
    browser.type_text(page, "Elm Street 4, two stairs");
    check(browser, page, &format!("person{what}"), phone);
    browser.tap_key(page, "Done");
    browser.wait_text(page, "Elm Street 4, two stairs");
    browser.tap_key(page, "Done");
    browser.eval(page, "document.querySelector('.first-col .key').click()");
    browser.wait_text(page, "1 photo, ");
    check(browser, page, &format!("copies-photo{what}"), phone);
}

#[test]
fn people_and_photos_are_readable_on_every_phone_and_by_large_text() {
    on_every_phone("", |browser, page, of| {
        photos(browser, page, of);
        people(browser, page, of);
    });
}
