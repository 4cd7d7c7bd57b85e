//! The browser throws the book away, all of it or its end, or someone clears it: it is brought back from its second place.
use fivebar_core::ledger::line;
use fivebar_core::story::tell;
use fivebar_tests::count::{FIGURE, SAVED};
use fivebar_tests::opened::{SLOW, after_a_restart, fresh};
use fivebar_tests::{Browser, app};

/// How many lines the fullest piece of the spare holds: a phone that is slow to answer says "saved" without it, and tends it later.
const SPARED: &str = r#"caches.open('fivebar-spare').then(spare => spare.matchAll()).then(pieces => Promise.all(pieces.map(piece => piece.text())))
  .then(texts => Math.max(0, ...texts.map(text => text.split('\\"k\\":').length - 1)))"#;

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
    browser.until("five lines in the spare", |browser| (browser.eval(&page, SPARED) == 5).then_some(()));
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
