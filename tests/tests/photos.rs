//! Photos in a real browser: taken, shrunk, kept apart, shown to a buyer, in a copy and back again. The picture is drawn here.
use fivebar_tests::{Browser, Look, Page, Phone, app};
use serde_json::json;
use std::time::Duration;

/// Of every picture in the store: its type, its sides, and whether something of the camera is in it.
const STORED: &str =
    "new Promise((done, failed) => { const open = indexedDB.open('fivebar-photos'); open.onerror = () => failed(open.error);
  open.onupgradeneeded = () => { open.transaction.abort(); done([]) };
  open.onsuccess = () => { const all = open.result.transaction('pictures').objectStore('pictures').getAll();
    all.onsuccess = async () => { open.result.close(); done(await Promise.all(all.result.map(async (row) => {
      const map = await createImageBitmap(new Blob([row.bytes], { type: row.type }));
      const text = new TextDecoder('latin1').decode(row.bytes);
      return [row.type, map.width, map.height, /Exif|Secret|IMG_/.test(text), row.sha256.length] }))) } } })";

fn with_photos(told: impl FnOnce(&mut Browser, &Page)) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = browser.with_job(Phone::COMMON.quick());
    browser.open_photos(&page);
    told(&mut browser, &page);
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn a_photo_is_shrunk_kept_apart_and_nothing_of_the_camera_stays() {
    with_photos(|browser, page| {
        browser.tap_key(page, "Take a photo");
        browser.drawn(page, 1);
        app::saved(browser, page);
        assert_eq!(browser.eval(page, "window.asked"), json!(["image/*", "environment"]));
        assert_eq!(browser.eval(page, STORED), json!([["image/jpeg", 1600, 1200, false, 64]]));
        let lines = browser.book_lines(page);
        assert!(lines.last().is_some_and(|line| line.contains("\"k\":\"PhotoTaken\"") && line.len() < 400), "{lines:?}");
        browser.tap_key(page, "Choose one");
        browser.drawn(page, 2);
        assert_eq!(browser.eval(page, "window.asked"), json!(["image/*", null]));
        // no picture, and a full phone: said, and nothing is lost
        browser.eval(page, "window.broken = true");
        browser.tap_key(page, "Choose one");
        browser.wait_text(page, "This phone can’t read it as a picture.");
        browser.eval(page, "(window.broken = false, window.full = true)");
        browser.tap_key(page, "Take a photo");
        browser.wait_text(page, "The phone is full.");
        browser.shot(page, "photos-full");
        browser.drawn(page, 2);
        browser.eval(page, "window.full = false");
        // removed, and back again; the picture stays until a copy was kept
        browser.tap_key(page, "Remove it");
        browser.drawn(page, 1);
        browser.key(page, "u");
        browser.drawn(page, 2);
        browser.tap_key(page, "Remove it");
        browser.drawn(page, 1);
        assert_eq!(browser.eval(page, &format!("{STORED}.then(all => all.length)")), 2);
        browser.reload(page);
        app::ready(browser, page);
        browser.open_photos(page);
        browser.drawn(page, 1);
    });
}

#[test]
fn inv15_the_buyer_sees_the_latest_photo_and_its_address_is_given_back() {
    with_photos(|browser, page| {
        browser.tap_key(page, "Take a photo");
        browser.drawn(page, 1);
        browser.eval(page, "window.second = true");
        browser.tap_key(page, "Take a photo");
        browser.drawn(page, 2);
        browser.place(page, 3);
        browser.tap_text(page, "Show the buyer");
        browser.drawn(page, 1);
        for (name, dark) in [("face-photo-light", false), ("face-photo-dark", true)] {
            browser.look(page, Look { dark, ..Look::default() });
            browser.shot(page, name);
        }
        let all = browser.eval(page, "document.body.outerHTML").to_string();
        assert!(!all.contains("kB") && !all.contains("IMG_"), "{all}");
        let url = browser.eval(page, "document.images[0].src");
        browser.hold(page, ".close .key", Duration::from_millis(900));
        browser.wait_text(page, "They offer…");
        let again = format!(
            "new Promise((done) => {{ const i = new Image(); i.onload = () => done(true); i.onerror = () => done(false); i.src = {url} }})"
        );
        assert_eq!(browser.eval(page, &again), false, "an address that was given back shows nothing");
        let complained = browser.errors();
        assert!(complained.iter().all(|text| text.contains("ERR_FILE_NOT_FOUND")), "of that address alone: {complained:?}");
    });
}

#[test]
fn inv11_photos_are_in_the_copy_by_choice_and_come_back_on_an_empty_phone() {
    with_photos(|browser, page| {
        browser.tap_key(page, "Take a photo");
        browser.drawn(page, 1);
        let before = browser.eval(page, STORED);
        browser.place(page, 5);
        browser.tap_key(page, "Keep a copy");
        browser.wait_text(page, "1 photo, ");
        browser.shot(page, "copies-photos");
        browser.tap_key(page, "Without");
        browser.tap_key(page, "Keep a copy");
        browser.wait_text(page, "Handed on as fivebar-");
        assert_eq!(browser.eval(page, "'photos' in JSON.parse(sessionStorage.getItem('test:copy'))"), false);
        let without = browser.eval(page, "sessionStorage.getItem('test:copy')");
        browser.tap_key(page, "With photos");
        browser.eval(page, "sessionStorage.removeItem('test:copy')");
        browser.tap_key(page, "Keep a copy");
        browser.wait(page, "!!sessionStorage.getItem('test:copy')");
        let copy = browser.eval(page, "sessionStorage.getItem('test:copy')");
        browser.tap_key(page, "Delete everything");
        browser.eval(page, "document.querySelector('input').focus()");
        browser.type_text(page, "delete");
        browser.wait(page, "document.querySelector('main > .key')?.disabled === false");
        browser.tap(page, "main > .key");
        browser.wait(page, "!document.querySelector('input') && document.documentElement.dataset.app === 'open'");
        assert_eq!(browser.eval(page, STORED), json!([]));
        // first without the photo, which is said to be missing; then with it
        for (copy, said) in [(without, "1 photo is missing: neither in this copy nor on this phone."), (copy, "It brings 1 photo.")] {
            browser.place(page, 5);
            browser.eval(page, "document.querySelector('.first-col .key').click()");
            browser.wait(page, "!document.querySelector('.first-col')");
            browser.eval(page, &format!("window.bring = {copy}"));
            browser.tap_key(page, "Bring one in");
            browser.wait_text(page, said);
            browser.tap_key(page, "Add these");
            browser.wait_text(page, "Added.");
        }
        assert_eq!(browser.eval(page, STORED), before);
        browser.open_photos(page);
        browser.drawn(page, 1);
    });
}
