//! Nothing that was shown as saved is lost: kills, a full phone, writes taken back, a store that is closed or is not there.
use fivebar_tests::count::{FIGURE, HONEST, SAVED};
use fivebar_tests::opened::{SLOW, after_a_restart, fresh, saved_aloud, shown_as_saved, with_script};
use fivebar_tests::{Browser, Phone, app, book};
use std::time::Duration;

#[test]
fn inv09_a_kill_right_after_saved_loses_nothing() {
    let (profile, mut browser, page) = fresh("");
    app::ready_offline(&mut browser, &page);
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    browser.tap(&page, ".tiles > :nth-child(1)");
    browser.wait(&page, &format!("{FIGURE} === 2 && {SAVED}"));
    browser.kill();
    let (mut browser, page, figure) = after_a_restart(profile.path());
    assert_eq!(figure, 2);
    assert_eq!(browser.book_lines(&page).len(), 4, "a haul, its pile, two counts");
}

/// Thirty kills of one profile, each at an instant of its own (a seeded sequence), some before the write began and some after.
#[test]
fn inv09_thirty_kills_at_any_instant_lose_nothing_that_was_shown_as_saved() {
    let (profile, mut browser, page) = fresh(&saved_aloud());
    app::ready_offline(&mut browser, &page);
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    let (mut least, mut counted, mut on_the_way, mut seed) = (shown_as_saved(&browser.kill()).max(1), 1, 0, 0x5ba2_u64);
    for kill in 1..=30 {
        let (mut browser, page, figure) = after_a_restart(profile.path());
        assert!(least <= figure, "kill {kill}: {least} were shown as saved, {figure} are there");
        assert!(figure <= counted, "kill {kill}: nothing is counted twice");
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let (taps, wait) = (1 + (seed >> 33) % 2, Duration::from_micros((seed >> 40) % 120_000));
        browser.count(&page, taps as usize - 1);
        browser.tap(&page, ".tiles > :nth-child(1)");
        std::thread::sleep(wait);
        let heard = shown_as_saved(&browser.kill());
        counted = figure + taps;
        least = heard.max(figure);
        on_the_way += u64::from(least < counted);
    }
    let (.., figure) = after_a_restart(profile.path());
    assert!(least <= figure && figure <= counted);
    assert!(0 < on_the_way && on_the_way < 30, "kills on both sides of a write: {on_the_way} before it was shown as saved");
}

#[test]
fn inv09_every_write_is_strict() {
    let watch = "window.writes = []; const begin = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (...given) { const work = begin.apply(this, given);
        if (work.mode === 'readwrite') writes.push(work.durability); return work }";
    let (_profile, mut browser, page) = fresh(watch);
    browser.count(&page, 3);
    app::saved(&mut browser, &page);
    browser.tap(&page, ".um, .foot > .key, .undo");
    app::saved(&mut browser, &page);
    let writes = browser.eval(&page, "writes");
    let writes: Vec<&str> = writes.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    assert!(3 < writes.len() && writes.iter().all(|durability| *durability == "strict"), "{writes:?}");
}

#[test]
fn inv09_nothing_is_written_before_the_book_was_read_and_no_early_tap_is_lost() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = with_script(&mut browser, SLOW);
    browser.wait(&page, "!!window.letOpen");
    browser.count(&page, 3);
    assert_eq!(browser.book_lines(&page), [""; 0], "nothing is written yet");
    assert_eq!(browser.eval(&page, SAVED), false);
    browser.eval(&page, "letOpen()");
    browser.wait_figure(&page, 3);
    app::saved(&mut browser, &page);
    browser.reload(&page);
    browser.wait(&page, "!!window.letOpen && document.documentElement.dataset.app === 'open'");
    browser.count(&page, 2);
    assert_eq!(browser.book_lines(&page).len(), 5, "a haul, its pile, three counts");
    browser.eval(&page, "letOpen()");
    browser.wait_figure(&page, 5);
    app::saved(&mut browser, &page);
    assert_eq!(browser.errors(), [""; 0]);
}

/// The haul in hand is shown from the last lines while the rest is still read: a tap in that moment waits, and counts.
#[test]
fn inv09_a_tap_on_the_first_glimpse_of_a_big_book_counts_once_it_is_read() {
    let (_profile, mut browser, page) = fresh("");
    browser.write_book(&page, &book::years(5_000));
    let script =
        "window.glimpsed = false; new MutationObserver(() => { const tile = document.querySelector('main[aria-busy=true] .tiles button');
      if (tile && !glimpsed) { glimpsed = true; window.before = document.querySelector('.tiles .fg').innerText; tile.click() } })
      .observe(document, { subtree: true, childList: true })";
    browser.before_each_page(&page, script);
    browser.reload(&page);
    app::read(&mut browser, &page);
    assert_eq!(browser.eval(&page, "glimpsed"), true, "the haul in hand came first");
    browser.wait(&page, "document.querySelector('.tiles .fg').innerText === String(Number(before) + 1)");
    app::saved(&mut browser, &page);
    assert_eq!(browser.book_lines(&page).len(), 5_001);
}

/// The browser's own refusal: the origin's room is taken away while no page of the app is open, as room already granted is kept.
#[test]
fn inv09_a_full_phone_says_what_was_not_saved_and_tries_again() {
    let (profile, mut browser, page) = fresh("");
    app::ready_offline(&mut browser, &page);
    browser.count(&page, 3);
    app::saved(&mut browser, &page);
    browser.kill();
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.open(&page, &format!("{}way-out.html", app::address()));
    browser.wait(&page, "document.readyState === 'complete'");
    browser.quota(&page, Some(1));
    browser.open(&page, app::address());
    app::ready(&mut browser, &page);
    browser.wait_figure(&page, 3);
    browser.count(&page, 1);
    browser.wait_text(&page, "Not counted: 1 onto Pile A");
    browser.wait_text(&page, "The phone is full.");
    browser.wait_text(&page, "Your 3 pieces, saved");
    assert_eq!(browser.book_lines(&page).len(), 5);
    browser.quota(&page, None);
    browser.tap_text(&page, "Try again");
    browser.wait_figure(&page, 4);
    app::saved(&mut browser, &page);
    assert_eq!(browser.book_lines(&page).len(), 6);
}

/// While `broken`, each write is taken back after it was accepted.
const TAKEN_BACK: &str = "const add = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = function (...given) { const request = add.apply(this, given);
    if (window.broken) { const { transaction } = this; request.addEventListener('success', () => { transaction.abort(); window.aborts = (window.aborts ?? 0) + 1 }) }
    return request }";

#[test]
fn inv09_a_write_that_is_taken_back_is_not_shown_as_saved() {
    let (_profile, mut browser, page) = fresh(TAKEN_BACK);
    browser.count(&page, 2);
    app::saved(&mut browser, &page);
    browser.eval(&page, "window.broken = true");
    browser.count(&page, 1);
    browser.wait_text(&page, "Not counted: 1 onto Pile A");
    browser.wait_text(&page, "The phone gave up writing.");
    browser.wait_text(&page, "Your 2 pieces, saved");
    browser.tap_text(&page, "Try again");
    browser.wait(&page, "aborts === 2");
    browser.wait_text(&page, "Not counted: 1 onto Pile A");
    browser.eval(&page, "window.broken = false");
    std::thread::sleep(HONEST);
    browser.tap_text(&page, "Try again");
    browser.wait_figure(&page, 3);
    app::saved(&mut browser, &page);
    browser.reload(&page);
    app::ready(&mut browser, &page);
    browser.wait_figure(&page, 3);
}

/// The app's own connections, to be closed under it.
const CONNECTIONS: &str = "window.books = []; const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...given) { const request = open.apply(this, given);
    if (given[0] === 'fivebar') request.addEventListener('success', () => books.push(request.result)); return request }";

#[test]
fn inv09_a_store_that_was_closed_opens_again_at_the_next_tap() {
    let (_profile, mut browser, page) = fresh(CONNECTIONS);
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    let ways = [
        "books.at(-1).close()",
        "books.at(-1).close(), books.at(-1).dispatchEvent(new Event('close'))",
        "books.at(-1).dispatchEvent(new Event('versionchange'))",
    ];
    for (nth, close) in ways.iter().enumerate() {
        let opened = browser.eval(&page, "books.length").as_u64();
        browser.eval(&page, &format!("{{ {close} }}"));
        browser.count(&page, 1);
        browser.wait_figure(&page, nth as u64 + 2);
        app::saved(&mut browser, &page);
        assert!(opened < browser.eval(&page, "books.length").as_u64(), "{close}: opened again");
    }
    browser.reload(&page);
    app::ready(&mut browser, &page);
    browser.wait_figure(&page, 4);
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn inv09_a_window_without_a_store_says_so_and_counts_nothing() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = with_script(&mut browser, "Object.defineProperty(window, 'indexedDB', { value: undefined })");
    browser.wait_text(&page, "The book could not be opened.");
    browser.wait_text(&page, "This window has no store: a private window, or storage is switched off.");
    browser.wait_text(&page, "Open it in a usual window.");
    assert_eq!(browser.eval(&page, SAVED), false);
    browser.shot(&page, "no-store");
}

#[test]
fn inv09_a_book_of_a_newer_app_is_left_alone() {
    let newer = "const open = IDBFactory.prototype.open; window.raised = new Promise(done => { if (sessionStorage.raise) {
      const request = indexedDB.open('fivebar', 2); request.onsuccess = () => { request.result.close(); done(true) } } else done(true) })";
    let (_profile, mut browser, page) = fresh(newer);
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    browser.eval(&page, "sessionStorage.raise = 1");
    browser.reload(&page);
    browser.wait_text(&page, "A newer version of the app wrote this book.");
    assert_eq!(browser.book_lines(&page).len(), 3, "as it was");
}

/// A real fault of the app: the platform gives no chance for the name of an entry.
#[test]
fn inv14_a_fault_stops_writing_before_it_says_so_and_a_reload_loses_nothing() {
    let (_profile, mut browser, page) = fresh("");
    browser.count(&page, 2);
    app::saved(&mut browser, &page);
    browser.eval(&page, "Crypto.prototype.getRandomValues = () => { throw new Error('no chance') }; true");
    browser.tap(&page, ".tiles > :nth-child(1)");
    browser.wait_text(&page, "The app stopped after an error of its own. All that was shown as saved is safe.");
    browser.shot(&page, "stopped");
    assert_eq!(browser.book_lines(&page).len(), 4);
    assert!(!browser.errors().is_empty(), "the fault is told to whoever looks");
    browser.tap(&page, "#stopped button");
    app::ready(&mut browser, &page);
    browser.wait_figure(&page, 2);
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    browser.wait_figure(&page, 3);
}
