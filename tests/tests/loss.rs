//! Nothing that was shown as saved is lost: kills, a full phone, writes taken back, a store that goes away or is not there.
use fivebar_core::ledger::line;
use fivebar_core::story::tell;
use fivebar_tests::count::{FIGURE, HONEST, SAVED};
use fivebar_tests::{Browser, Page, Phone, app, book};
use serde_json::Value;
use std::path::Path;
use std::time::Duration;

/// Says on the console each figure that is shown as saved, at the moment it is.
fn saved_aloud() -> String {
    format!(
        "new MutationObserver(() => {{ if ({SAVED}) console.debug('shown as saved', {FIGURE}) }}).observe(document, {{ subtree: true, childList: true, characterData: true }})"
    )
}

/// The largest figure that was shown as saved, of these events.
fn shown_as_saved(events: &[Value]) -> u64 {
    let said = events.iter().filter(|event| event["params"]["args"][0]["value"] == "shown as saved");
    said.filter_map(|event| event["params"]["args"][1]["value"].as_u64()).max().unwrap_or_default()
}

fn with_script(browser: &mut Browser, script: &str) -> Page {
    let page = browser.page(Phone::COMMON.quick());
    browser.before_each_page(&page, script);
    browser.open(&page, app::address());
    app::ready(browser, &page);
    page
}

fn fresh(script: &str) -> (tempfile::TempDir, Browser, Page) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = with_script(&mut browser, script);
    app::read(&mut browser, &page);
    (profile, browser, page)
}

/// What a start without a network shows.
fn after_a_restart(profile: &Path) -> (Browser, Page, u64) {
    let mut browser = Browser::start(profile);
    browser.offline(true);
    let page = with_script(&mut browser, &saved_aloud());
    browser.wait(&page, &format!("document.querySelector('main')?.ariaBusy !== 'true' && {SAVED}"));
    let figure = browser.figure(&page);
    (browser, page, figure)
}

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

/// A browser that was killed between the two halves of a record goes on behind the torn one, finds its store broken at the start after
/// the next, and throws all of it away.
#[test]
fn inv09_a_store_the_browser_threw_away_is_brought_back() {
    let (profile, mut browser, page) = fresh("");
    app::ready_offline(&mut browser, &page);
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    browser.kill();
    let log = profile
        .path()
        .join("Default/IndexedDB")
        .read_dir()
        .expect("databases")
        .flatten()
        .find(|at| at.path().extension().is_some_and(|e| e == "leveldb"));
    let log = log.expect("the origin's database").path().join("000003.log");
    let mut torn = std::fs::OpenOptions::new().append(true).open(log).expect("a log");
    std::io::Write::write_all(&mut torn, &[1, 2, 3, 4, 128, 0, 1]).expect("torn"); // a record's head: a sum, 128 bytes, whole; and no bytes
    let (mut browser, page, figure) = after_a_restart(profile.path());
    assert_eq!(figure, 1, "a torn end is no loss yet");
    browser.count(&page, 2);
    browser.wait(&page, &format!("{FIGURE} === 3 && {SAVED}"));
    browser.kill();
    // A browser throws all of it away, or, where the first lines lay apart already, what came after the torn end: then the book is read before
    // the rest of it is back.
    let (mut browser, page, _) = after_a_restart(profile.path());
    browser.wait_figure(&page, 3);
    browser.wait_text(&page, "Entries back from the second place on this phone: ");
    browser.count(&page, 1);
    app::saved(&mut browser, &page);
    browser.reload(&page);
    browser.wait_figure(&page, 4);
    assert_eq!(browser.errors(), [""; 0]);
}

/// Databases that sites keep are gone, files that were fetched are not; names come back too.
#[test]
fn inv09_a_store_emptied_between_two_openings_is_brought_back() {
    let (_profile, mut browser, page) = fresh("");
    browser.count(&page, 60);
    app::saved(&mut browser, &page);
    let before = browser.book_lines(&page);
    browser.open(&page, &format!("{}way-out.html", app::address()));
    browser.wait(&page, "!!document.getElementById('clear')");
    let gone = "new Promise(gone => { indexedDB.deleteDatabase('fivebar').onsuccess = () => gone(true) })";
    assert_eq!(browser.eval(&page, gone), true);
    browser.open(&page, app::address());
    browser.wait_figure(&page, 60);
    browser.wait_text(&page, "The browser had thrown the book away.");
    assert_eq!(browser.book_lines(&page), before);
}

/// The last line is gone from the book, and not from the spare. `then` is what the page does before it opens again; with `early`, a piece is
/// counted while the book is still read.
#[track_caller]
fn brings_the_last_line_back(then: &str, early: bool, figure: u64) {
    let (_profile, mut browser, page) = fresh("");
    browser.count(&page, 3);
    app::saved(&mut browser, &page);
    let before = browser.book_lines(&page);
    let shorten = format!(
        "entries.openCursor(null, 'prev').onsuccess = event => {{ const row = event.target.result.value; event.target.result.delete(); {then} }}"
    );
    browser.in_book(&page, "readwrite", &shorten, "true");
    if early {
        browser.before_each_page(&page, SLOW);
    }
    browser.reload(&page);
    if early {
        browser.wait(&page, "!!window.letOpen && document.documentElement.dataset.app === 'open'");
        browser.count(&page, 1);
        browser.eval(&page, "letOpen()");
    }
    browser.wait_text(&page, "Entries back from the second place on this phone: 1.");
    browser.wait_figure(&page, figure);
    app::saved(&mut browser, &page);
    let after = browser.book_lines(&page);
    assert!(before.iter().all(|line| after.contains(line)), "{after:#?}");
    browser.reload(&page);
    if early {
        browser.wait(&page, "!!window.letOpen");
        browser.eval(&page, "letOpen()");
    }
    browser.wait_figure(&page, figure);
}

/// Another count, one of the same book with an id of its own.
const ANOTHER: &str = "const id = row.id.slice(0, -1) + (row.id.endsWith('0') ? '1' : '0');
  entries.add({ id, line: row.line.replaceAll(row.id, id) })";

#[test]
fn inv09_a_book_shorter_than_its_spare_has_its_last_line_brought_back() {
    brings_the_last_line_back("", false, 3);
    brings_the_last_line_back("", true, 4);
    // A line was written at the place of the lost one, and the phone died before the spare was looked at.
    brings_the_last_line_back(ANOTHER, false, 4);
}

/// The last line lost was that somebody is forgotten: it comes back, and the name that the store has again goes.
#[test]
fn inv09_who_was_forgotten_stays_so_when_the_book_is_brought_back() {
    let (_profile, mut browser, page) = fresh("");
    let told = tell("2026-03-03 09:00 -05:00 workshop USD inch\nperson dana buyer \"Dana\"\nforget dana\n");
    assert_eq!(told.refused, []);
    let lines: Vec<String> = told.book.entries().map(|(entry, _)| line::write(entry)).collect();
    let dana = told.names.person("dana").expect("a person").to_string();
    browser.write_book(&page, &lines);
    browser.reload(&page);
    app::read(&mut browser, &page);
    let kept = "caches.open('fivebar-spare').then(spare => spare.keys()).then(keys => keys.some(key => key.url.includes('/all/')))";
    browser.wait(&page, kept);
    let shorten = format!(
        "work.objectStore('people').put({{ id: {dana:?}, line: 'Dana' }});
         entries.openCursor(null, 'prev').onsuccess = event => event.target.result.delete()"
    );
    browser.in_book(&page, "readwrite", &shorten, "true");
    browser.reload(&page);
    browser.wait_text(&page, "Entries back from the second place on this phone: 1.");
    let people = browser.in_book(&page, "readonly", "const all = work.objectStore('people').getAll()", "all.result.length");
    assert_eq!(people, 0);
    let names = "caches.match('/fivebar-spare/names').then(names => names.text())";
    assert_eq!(browser.eval(&page, names), "[]");
}

/// The spare says nothing for as long as this is set.
const SILENT: &str = "for (const ask of ['match', 'keys']) { const own = Cache.prototype[ask];
  Cache.prototype[ask] = function (...of) { return sessionStorage.getItem('silent') ? new Promise(() => {}) : own.apply(this, of) } }";

/// The browser threw the book away and the spare can't be read yet: who is added then takes no other's place there.
#[test]
fn inv09_who_is_added_before_the_spare_was_read_stands_beside_those_it_has() {
    let (_profile, mut browser, page) = fresh(SILENT);
    let told = tell("2026-03-03 09:00 -05:00 workshop USD inch\nperson dana buyer \"Dana\"\n");
    assert_eq!(told.refused, []);
    let lines: Vec<String> = told.book.entries().map(|(entry, _)| line::write(entry)).collect();
    let dana = told.names.person("dana").expect("a person").to_string();
    browser.write_book(&page, &lines);
    browser.write_people(&page, &[(dana.clone(), "Dana".into())]);
    browser.reload(&page);
    let names =
        |browser: &mut Browser| browser.eval(&page, "caches.match('/fivebar-spare/names').then(names => names?.text() ?? '')").to_string();
    browser.until("the name in the spare", |browser| names(browser).contains("Dana").then_some(()));
    browser.open(&page, &format!("{}way-out.html", app::address()));
    browser.wait(&page, "!!document.getElementById('clear')");
    browser.eval(&page, "sessionStorage.setItem('silent', 'yes')");
    let gone = "new Promise(gone => { indexedDB.deleteDatabase('fivebar').onsuccess = () => gone(true) })";
    assert_eq!(browser.eval(&page, gone), true);
    browser.open(&page, app::address());
    app::read(&mut browser, &page);
    browser.place(&page, 5);
    browser.tap_key(&page, "Suppliers and people");
    browser.tap(&page, "main input");
    browser.type_text(&page, "The stair works");
    browser.tap_key(&page, "Supplier");
    app::saved(&mut browser, &page);
    assert!(names(&mut browser).contains("Dana"));
    browser.eval(&page, "sessionStorage.removeItem('silent')");
    browser.reload(&page);
    browser.until("both names", |browser| (names(browser).contains("Dana") && names(browser).contains("stair works")).then_some(()));
    let known = browser.in_book(&page, "readonly", "const all = work.objectStore('people').getAll()", "all.result.length");
    assert_eq!(known, 2);
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

/// Someone cleared what sites keep while the book was open: all the page still holds is written once more with the next tap.
#[test]
fn inv09_a_store_emptied_under_the_open_book_gets_all_of_it_again() {
    let (_profile, mut browser, page) = fresh("");
    browser.count(&page, 5);
    app::saved(&mut browser, &page);
    let before = browser.book_lines(&page);
    browser.eval(&page, "new Promise(gone => { indexedDB.deleteDatabase('fivebar').onsuccess = () => gone(true) })");
    browser.count(&page, 1);
    browser.wait_text(&page, "store was emptied while the book was open");
    app::saved(&mut browser, &page);
    let after = browser.book_lines(&page);
    assert!(before.iter().all(|line| after.contains(line)) && after.len() == before.len() + 1, "{after:#?}");
    browser.reload(&page);
    browser.wait_figure(&page, 6);
    assert_eq!(browser.errors(), [""; 0]);
}

/// The store's answer to the app's first `open` is held back until `letOpen()`.
const SLOW: &str = "const open = IDBFactory.prototype.open; window.slow = true;
  IDBFactory.prototype.open = function (name, version) { const request = open.call(this, name, version);
    if (name === 'fivebar' && version && slow) request.addEventListener('success', event => { if (slow) { event.stopImmediatePropagation();
      window.letOpen = () => { slow = false; request.dispatchEvent(new Event('success')) } } });
    return request }";

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
