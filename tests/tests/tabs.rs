//! Two tabs of one phone on the same book: what one writes, the other shows.
use fivebar_core::story::tell;
use fivebar_tests::count::HONEST;
use fivebar_tests::{Browser, Page, Phone, app};

/// At once: without a reload, within the time the tabs take to tell each other.
fn both_show(browser: &mut Browser, tabs: &[Page; 2], figure: u64) {
    for tab in tabs {
        browser.wait_figure(tab, figure);
    }
}

fn two_tabs(browser: &mut Browser) -> [Page; 2] {
    let first = app::opened(browser, Phone::COMMON.quick());
    browser.count(&first, 1);
    app::saved(browser, &first);
    let second = app::opened(browser, Phone::COMMON.quick());
    browser.wait_figure(&second, 1);
    [first, second]
}

#[test]
fn inv03_two_tabs_count_onto_one_pile_and_both_show_the_sum() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let tabs = two_tabs(&mut browser);
    for (nth, tab) in tabs.iter().enumerate() {
        browser.front(tab);
        browser.count(tab, 3);
        both_show(&mut browser, &tabs, 4 + 3 * nth as u64);
    }
    // turn by turn, without waiting for one another
    for _ in 0..3 {
        for tab in &tabs {
            browser.front(tab);
            browser.tap(tab, ".tiles > :nth-child(1)");
        }
        std::thread::sleep(HONEST);
    }
    both_show(&mut browser, &tabs, 13);
    for tab in &tabs {
        app::saved(&mut browser, tab);
        browser.reload(tab);
        app::ready(&mut browser, tab);
    }
    both_show(&mut browser, &tabs, 13);
    assert_eq!(browser.book_lines(&tabs[0]).len(), 15, "a haul, its pile, thirteen counts");
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn inv02_a_tab_takes_back_its_own_last_act_and_no_other() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let tabs = two_tabs(&mut browser);
    browser.count(&tabs[1], 2);
    both_show(&mut browser, &tabs, 3);
    browser.front(&tabs[0]);
    browser.tap(&tabs[0], ".foot .g4 > :nth-child(2)"); // five with each tap: the acts differ
    std::thread::sleep(HONEST * 2);
    browser.count(&tabs[0], 1);
    both_show(&mut browser, &tabs, 8);
    browser.front(&tabs[1]);
    browser.key(&tabs[1], "u");
    both_show(&mut browser, &tabs, 7);
    app::saved(&mut browser, &tabs[1]);
    let struck = browser.book_lines(&tabs[0]).into_iter().filter(|line| line.contains("\"k\":\"Struck\"")).count();
    assert_eq!(struck, 1, "nothing is removed, one entry says it");
}

#[test]
fn inv06_a_clock_started_in_one_tab_runs_in_the_other() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let tabs = two_tabs(&mut browser);
    browser.front(&tabs[0]);
    browser.start_clock(&tabs[0]);
    browser.wait(&tabs[1], "document.querySelector('.strip .op')?.textContent === 'Trim'");
    browser.shot(&tabs[1], "strip-in-the-other-tab");
    browser.front(&tabs[1]);
    browser.tap(&tabs[1], ".strip .key");
    for tab in &tabs {
        browser.wait(tab, "!document.querySelector('.strip')");
    }
    app::saved(&mut browser, &tabs[1]);
    let runs: Vec<String> = browser.book_lines(&tabs[0]).into_iter().filter(|line| line.contains("\"k\":\"Run")).collect();
    assert_eq!(runs.len(), 2, "a start and a stop, no ticks: {runs:?}");
    assert_eq!(browser.errors(), [""; 0]);
}

/// All that the stores of this phone hold of people, of entries and of the spare, as one text.
const STORED: &str = "Promise.all([
  new Promise(done => { const open = indexedDB.open('fivebar'); open.onsuccess = () => {
    const names = [...open.result.objectStoreNames], work = open.result.transaction(names), all = names.map(name => work.objectStore(name).getAll());
    work.oncomplete = () => { open.result.close(); done(JSON.stringify(all.map(asked => asked.result))) } } }),
  caches.open('fivebar-spare').then(spare => spare.keys().then(keys => Promise.all(keys.map(key => spare.match(key).then(kept => kept.text()))))),
]).then(JSON.stringify)";

/// Somebody is forgotten in one tab: the other drops the name without a reload, and neither the book nor the spare holds it, seen from either.
#[test]
fn who_is_forgotten_in_one_tab_is_forgotten_in_the_other() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let told = tell("2026-03-03 09:00 -05:00 workshop USD inch\nperson dana buyer \"Dana\"\n");
    let lines: Vec<String> = told.book.lines().map(str::to_owned).collect();
    let dana = told.names.person("dana").expect("a person").to_string();
    let first = app::opened(&mut browser, Phone::COMMON.quick());
    browser.write_book(&first, &lines);
    browser.write_people(&first, &[(dana, "Dana Quill".into())]);
    browser.reload(&first);
    app::ready(&mut browser, &first);
    let tabs = [first, app::opened(&mut browser, Phone::COMMON.quick())];
    for tab in &tabs {
        browser.front(tab);
        browser.place(tab, 5);
        browser.tap_key(tab, "Suppliers and people");
        browser.wait_text(tab, "Dana Quill");
    }
    assert!(browser.eval(&tabs[1], STORED).to_string().contains("Dana Quill"), "it was there");
    browser.front(&tabs[0]);
    browser.tap_key(&tabs[0], "Dana Quill");
    std::thread::sleep(HONEST);
    browser.tap_text(&tabs[0], "Forget them");
    browser.wait(&tabs[1], "!document.body.innerText.includes('Quill')");
    app::saved(&mut browser, &tabs[0]);
    for tab in &tabs {
        let stored = browser.until("no name in the stores", |browser| {
            let stored = browser.eval(tab, STORED).to_string();
            (!stored.contains("Quill")).then_some(stored)
        });
        assert!(stored.contains("Forgotten"), "{stored}");
        browser.front(tab);
        browser.reload(tab);
        app::ready(&mut browser, tab);
        assert_eq!(browser.eval(tab, "document.documentElement.outerHTML.includes('Quill')"), false);
    }
    assert_eq!(browser.errors(), [""; 0]);
}
