//! Copies on a real phone's store: handed on, everything deleted, brought in on what is then an empty phone; and a full phone.

use fivebar_tests::{Browser, Page, Phone, app};
use serde_json::Value;
use std::time::Duration;

/// The share sheet and the list of files, as a person would use them: the file shared is the one that is picked.
const HANDS: &str = "navigator.canShare = () => true;
  navigator.share = async ({ files }) => sessionStorage.setItem('test:copy', await files[0].text());
  HTMLInputElement.prototype.click = function () {
    const list = new DataTransfer();
    list.items.add(new File([window.bring ?? ''], 'fivebar.json'));
    this.files = list.files;
    this.dispatchEvent(new Event('change'));
  };";

/// No room for an entry while `full` is said, as the browser says it; an override of its quota leaves small writes alone.
const NO_ROOM: &str = "const add = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = function (...given) {
    if (window.full) throw new DOMException('no room', 'QuotaExceededError');
    return add.apply(this, given);
  };";

/// A tap on the key whose first line reads so.
fn tap(browser: &mut Browser, page: &Page, text: &str) {
    let found = format!("[...document.querySelectorAll('button')].find((key) => (key.firstElementChild ?? key).textContent === {text:?})");
    browser.wait(page, &format!("!!{found}"));
    browser.eval(
        page,
        &format!(
            "document.querySelectorAll('[data-here]').forEach((e) => e.removeAttribute('data-here')), {found}.setAttribute('data-here', '')"
        ),
    );
    browser.tap(page, "[data-here]");
    std::thread::sleep(Duration::from_millis(120));
}

fn place(browser: &mut Browser, page: &Page, nth: usize) {
    browser.tap(page, &format!(".places > :nth-child({nth})"));
    std::thread::sleep(Duration::from_millis(90));
}

fn count(browser: &mut Browser, page: &Page, selector: &str, times: u32) {
    for _ in 0..times {
        browser.tap(page, selector);
        std::thread::sleep(Duration::from_millis(90));
    }
}

/// The name of this device and the lines of the book, from the store itself.
fn stored(browser: &mut Browser, page: &Page) -> Value {
    browser.eval(
        page,
        "new Promise((done) => { const open = indexedDB.open('fivebar'); open.onsuccess = () => {
           const work = open.result.transaction(['meta', 'entries']), meta = work.objectStore('meta').get('device'), all = work.objectStore('entries').getAll();
           work.oncomplete = () => { open.result.close(); done({ device: meta.result.value, lines: all.result.map((row) => row.line) }) } } })",
    )
}

/// Opens a line of the first page, wherever it is scrolled to.
fn line(browser: &mut Browser, page: &Page, nth: usize) {
    let found = format!("document.querySelector('.rows > :nth-child({nth})')");
    browser.wait(page, &format!("!!{found}"));
    browser.eval(page, &format!("{found}.click()"));
    browser.wait(page, "!document.querySelector('.first-col')");
}

#[test]
fn inv11_a_copy_comes_back_whole_on_an_empty_phone() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.before_each_page(&page, HANDS);
    browser.open(&page, app::address());
    app::read(&mut browser, &page);
    count(&mut browser, &page, ".day1", 1);
    count(&mut browser, &page, ".tiles > :nth-child(1)", 6);
    app::saved(&mut browser, &page);
    place(&mut browser, &page, 5);
    browser.shot(&page, "workshop");
    tap(&mut browser, &page, "Keep a copy");
    browser.wait_text(&page, "No copy was ever kept: 7 pieces would be lost");
    tap(&mut browser, &page, "Keep a copy");
    browser.wait_text(&page, "Handed on as fivebar-");
    browser.wait_text(&page, "Last copy today, nothing since.");
    browser.shot(&page, "copies");
    let before = stored(&mut browser, &page);
    let copy = browser.eval(&page, "sessionStorage.getItem('test:copy')");

    tap(&mut browser, &page, "Delete everything");
    browser.wait(&page, "document.querySelector('main > .key')?.disabled === true");
    browser.eval(&page, "document.querySelector('input').focus()");
    browser.type_text(&page, "delete");
    browser.wait(&page, "document.querySelector('main > .key')?.disabled === false");
    browser.tap(&page, "main > .key");
    browser.wait(&page, "!document.querySelector('input') && document.documentElement.dataset.app === 'open'");
    place(&mut browser, &page, 1);
    browser.wait_text(&page, "No pieces yet");

    place(&mut browser, &page, 5);
    tap(&mut browser, &page, "Bring one in");
    browser.eval(&page, "window.bring = 'once upon a time'");
    tap(&mut browser, &page, "Bring one in");
    browser.wait_text(&page, "It is no copy of Fivebar.");
    browser.eval(&page, &format!("window.bring = {copy}"));
    tap(&mut browser, &page, "Choose another file");
    browser.wait_text(&page, "Nothing is changed yet.");
    browser.shot(&page, "copy-coming");
    tap(&mut browser, &page, "Add these");
    browser.wait_text(&page, "Added.");
    place(&mut browser, &page, 1);
    browser.wait_text(&page, "7 pieces");
    let after = stored(&mut browser, &page);
    assert_ne!(before["device"], after["device"], "another device from now on");
    let lines = |stored: &Value| stored["lines"].as_array().cloned().unwrap_or_default();
    let (mut before, mut after) = (lines(&before), lines(&after));
    before.retain(|line| !line.as_str().is_some_and(|line| line.contains("\"k\":\"CopyKept\"")));
    before.sort_by_key(Value::to_string);
    after.sort_by_key(Value::to_string);
    assert_eq!(after, before, "byte for byte, all but the note of the copy, which came after it");
    browser.reload(&page);
    app::ready(&mut browser, &page);
    browser.wait_text(&page, "7 pieces");
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn a_full_phone_says_what_is_safe_and_counts_again_when_there_is_room() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.before_each_page(&page, NO_ROOM);
    browser.open(&page, app::address());
    app::read(&mut browser, &page);
    count(&mut browser, &page, ".day1", 1);
    app::saved(&mut browser, &page);
    browser.eval(&page, "window.full = true");
    count(&mut browser, &page, ".tiles > :nth-child(1)", 1);
    browser.wait_text(&page, "Not counted: 1 onto Pile A");
    browser.wait_text(&page, "Your 1 piece, saved");
    browser.shot(&page, "count-full-phone");
    place(&mut browser, &page, 2);
    browser.wait_text(&page, "1 entry is not saved.");
    browser.eval(&page, "window.full = false");
    tap(&mut browser, &page, "Try again");
    place(&mut browser, &page, 1);
    browser.wait_text(&page, "2 pieces");
    app::saved(&mut browser, &page);
}

#[test]
fn theme_and_text_hold_at_once_and_after_a_reload() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::SMALL.quick());
    place(&mut browser, &page, 5);
    line(&mut browser, &page, 13);
    tap(&mut browser, &page, "dark");
    browser.wait(&page, "document.documentElement.dataset.theme === 'dark'");
    tap(&mut browser, &page, "larger");
    browser.wait(&page, "getComputedStyle(document.documentElement).fontSize === '24px'");
    browser.shot(&page, "workshop-hand");
    assert_eq!(browser.sticks_out(&page, Phone::SMALL), [""; 0]);
    browser.reload(&page);
    app::read(&mut browser, &page);
    browser.wait(&page, "document.documentElement.dataset.theme === 'dark'");
    browser.wait(&page, "getComputedStyle(document.documentElement).fontSize === '24px'");
    for nth in 1..=16 {
        browser.tap(&page, ".places > :nth-child(5)");
        std::thread::sleep(Duration::from_millis(90));
        line(&mut browser, &page, nth);
        assert_eq!(browser.sticks_out(&page, Phone::SMALL), [""; 0], "page {nth}");
        assert_eq!(browser.axe(&page), [""; 0], "page {nth}");
        browser.eval(&page, "document.querySelector('.foot .key:last-child')?.click()");
        std::thread::sleep(Duration::from_millis(90));
    }
    assert_eq!(browser.errors(), [""; 0]);
}
