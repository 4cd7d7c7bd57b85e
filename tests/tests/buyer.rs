//! Price in a real browser: the word for an offer under a finger, and the phone turned to a buyer.
use fivebar_core::ledger::line;
use fivebar_core::story::{STANDS, tell};
use fivebar_tests::{Browser, Look, Page, Phone, app};
use serde_json::{Value, json};
use std::time::Duration;

/// The market of 18 April with three stands left and nothing guessed, as the page finds it at its first opening.
fn at_market(browser: &mut Browser) -> Page {
    let market = tell(STANDS.split("12:05 guess").next().unwrap_or_default());
    let rows: Vec<Value> =
        market.book.entries().map(|(entry, _)| json!({ "id": entry.id.to_string(), "line": line::write(entry) })).collect();
    let page = app::opened(browser, Phone::COMMON.quick());
    browser.clock_stands(&page, "2026-04-18T12:05:00-04:00");
    let write = format!(
        "new Promise((done, failed) => {{ const open = indexedDB.open('fivebar'); open.onerror = () => failed(open.error);
           open.onsuccess = () => {{ const t = open.result.transaction('entries', 'readwrite');
             for (const row of {}) t.objectStore('entries').add(row);
             t.oncomplete = () => {{ open.result.close(); done(true) }}; t.onabort = () => failed(t.error) }} }})",
        Value::from(rows)
    );
    browser.eval(&page, &write);
    browser.eval(&page, "location.hash = 'price'");
    browser.reload(&page);
    app::ready(browser, &page);
    browser.wait_text(&page, "3 left of 5, tag 145");
    page
}

fn with_market(told: impl FnOnce(&mut Browser, &Page)) {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = at_market(&mut browser);
    told(&mut browser, &page);
    assert_eq!(browser.errors(), [""; 0]);
}

/// A touch elsewhere at once would be taken for a jump across the screen.
fn rest() {
    std::thread::sleep(Duration::from_millis(200));
}

#[test]
fn the_word_is_said_in_two_touches_and_follows_the_block() {
    with_market(|browser, page| {
        browser.tap_text(page, "They offer…");
        browser.tap_text(page, "130");
        browser.wait_text(page, "Say 145");
        let now =
            |browser: &mut Browser| browser.eval(page, "+document.querySelector('.slider').ariaValueNow").as_f64().unwrap_or_default();
        rest();
        browser.drag(page, ".slider", -60.0, 0.0);
        let dragged = now(browser);
        let middle = browser.eval(page, "(e => (+e.ariaValueMin + +e.ariaValueMax) / 2)(document.querySelector('.slider'))");
        assert!(middle.as_f64().is_some_and(|middle| dragged < middle) && dragged % 5.0 == 0.0, "{dragged} of {middle}");
        browser.eval(page, "document.querySelector('.slider').focus()");
        browser.key(page, "ArrowRight");
        assert_eq!(now(browser), dragged + 5.0);
        browser.tap_text(page, "+5");
        assert_eq!(now(browser), dragged + 10.0);
        rest();
        browser.tap_text(page, "Sold at");
        browser.wait_text(page, "2 left of 5, tag 145");
        browser.wait_text(page, "saved");
        std::thread::sleep(Duration::from_millis(1600)); // sooner it would be taken for the second tap of a slow phone
        browser.tap_text(page, "Take back: sold at");
        browser.wait_text(page, "3 left of 5, tag 145");
    });
}

/// From the Price shortcut two touches lead to the word for an offer, and one more has sold it: each that the page took in is counted.
#[test]
fn two_touches_to_the_word_and_one_more_to_the_sale() {
    with_market(|browser, page| {
        browser.before_each_page(page, "window.touches = 0; addEventListener('pointerup', () => { touches += 1 }, true)");
        browser.open(page, &format!("{}#price", app::address()));
        browser.reload(page);
        app::ready(browser, page);
        browser.wait_text(page, "3 left of 5, tag 145");
        let touches = |browser: &mut Browser| browser.eval(page, "touches").as_u64();
        assert_eq!(touches(browser), Some(0));
        browser.tap_text(page, "They offer…");
        rest();
        browser.tap_text(page, "130");
        browser.wait_text(page, "Say 145");
        assert_eq!(touches(browser), Some(2));
        rest();
        browser.tap_text(page, "Sold at");
        browser.wait_text(page, "2 left of 5, tag 145");
        assert_eq!(touches(browser), Some(3));
        browser.wait_text(page, "saved");
    });
}

/// A4 and Letter take the list on one sheet, black on white, with nothing the hand used.
#[test]
fn the_list_goes_on_one_sheet_of_paper() {
    const COLOURS: &str = "[...new Set([...document.querySelectorAll('.head *, main *')].filter(it => it.checkVisibility())
      .flatMap(it => [getComputedStyle(it).color, getComputedStyle(it).backgroundColor]))].sort().join(' ')";
    with_market(|browser, page| {
        browser.tap_text(page, "The list on paper");
        browser.wait_text(page, "Print it");
        for paper in [[8.27, 11.69], [8.5, 11.0]] {
            assert_eq!(browser.sheets(page, paper), 1);
        }
        browser.look(page, Look { print: true, ..Look::default() });
        let printed = browser.eval(page, "document.body.innerText").to_string();
        assert!(["For sale", "Plant stands", "$145", "290", "435"].iter().all(|part| printed.contains(part)), "{printed}");
        assert!(["Print it", "Back to", "This paper", "saved", "Jobs"].iter().all(|part| !printed.contains(part)), "{printed}");
        assert_eq!(browser.eval(page, COLOURS), "rgb(0, 0, 0) rgb(255, 255, 255) rgba(0, 0, 0, 0)");
    });
}

/// All that a page gives away: text, attributes, the reader's tree, title, address, history and storage.
fn given_away(browser: &mut Browser, page: &Page) -> String {
    let tree = browser.told_to_a_reader(page);
    let seen = browser.eval(
        page,
        "JSON.stringify([document.documentElement.outerHTML.replace(/<head>.*<\\/head>/s, ''), document.title, location.hash, history.state,
           {...localStorage}, {...sessionStorage}])",
    );
    format!("{tree}{seen}")
}

/// A figure stands under its heading, not beside it.
#[test]
fn the_figures_for_sale_stand_in_columns() {
    with_market(|browser, page| {
        let row = "getComputedStyle(document.querySelector('.ask tbody tr')).display";
        assert_eq!(browser.eval(page, row), "table-row");
    });
}

/// The store remembers what was spoken of: it is written behind the face, and a hand is slower than that.
const REMEMBERED: &str = "new Promise(done => { const open = indexedDB.open('fivebar'); open.onsuccess = () => {
  const asked = open.result.transaction('meta').objectStore('meta').get('spoken');
  asked.onsuccess = () => { open.result.close(); done(JSON.stringify(asked.result ?? '').includes('130')) } } })";

/// A buyer's finger can pull the page down: the piece comes again and no list of prices, and the maker finds what was spoken of.
#[test]
fn inv15_a_reload_while_the_buyer_looks_shows_no_price_list() {
    with_market(|browser, page| {
        browser.tap_text(page, "They offer…");
        browser.tap_text(page, "130");
        browser.wait_text(page, "Sold at 130");
        rest();
        browser.tap_text(page, "Show the buyer");
        browser.wait_text(page, "Hold to close");
        browser.wait(page, REMEMBERED);
        for _ in 0..2 {
            browser.reload(page);
            browser.wait_text(page, "$145");
            browser.wait_text(page, "Hold to close");
            assert_eq!(browser.eval(page, "document.querySelectorAll('.places, .strip').length"), 0);
            let all = given_away(browser, page);
            for private in ["130", "costs", "rate", "per hour", "Sold", "left of"] {
                assert!(!all.contains(private), "{private} in {all}");
            }
        }
        // A start that is cut short: the store never answers, and the page is pulled down once more.
        browser.before_each_page(page, "if (window.name === 'deaf') IDBFactory.prototype.open = () => new EventTarget()");
        for (name, shown) in [("deaf", "Hold to close"), ("", "$145")] {
            browser.eval(page, &format!("[window.name, window.before] = ['{name}', true]"));
            browser.reload(page);
            browser.wait(page, "!window.before");
            browser.wait_text(page, shown);
            browser.wait_text(page, "Hold to close");
            assert_eq!(browser.eval(page, "document.querySelectorAll('.places, .strip').length"), 0);
        }
        browser.hold(page, ".close .key", Duration::from_millis(900));
        browser.wait_text(page, "Sold at 130");
        assert_eq!(browser.eval(page, "sessionStorage.length"), 0, "it is forgotten with that");
    });
}

#[test]
fn inv15_a_buyer_finds_nothing_private() {
    with_market(|browser, page| {
        browser.eval(page, "sessionStorage.setItem('draft:note', 'he looks rich')");
        browser.tap_text(page, "Show the buyer");
        browser.wait_text(page, "Hold to close");
        let all = given_away(browser, page);
        for private in ["27.78", "costs", "rate", "lowest", "per hour", "Sold", "left of", "market", "rich", "saved", "Workshop", "hidden="]
        {
            assert!(!all.contains(private), "{private} in {all}");
        }
        assert!(all.contains("$145") && all.contains("6.9 lb"), "{all}");
        assert_eq!(browser.eval(page, "[document.title, location.hash, history.state]"), json!(["Fivebar", "#price", "face"]));
        assert_eq!(browser.eval(page, "document.querySelectorAll('#app > *').length"), 1);
        // neither a key nor a tap nor going back once leaves it
        browser.key(page, "1");
        browser.tap(page, ".close .key");
        browser.eval(page, "history.back()");
        std::thread::sleep(Duration::from_millis(300));
        browser.wait_text(page, "Hold to close");
        browser.hold(page, ".close .key", Duration::from_millis(900));
        browser.wait_text(page, "3 left of 5, tag 145");
        assert_eq!(browser.eval(page, "sessionStorage.getItem('draft:note')"), "he looks rich");
    });
}

/// The first Back uses up the guard, the second leads to the place before and the third out of the app: the face shows for as long as the app
/// does, and to who comes forward again.
#[test]
fn inv15_going_back_again_shows_no_private_page() {
    with_market(|browser, page| {
        browser.tap_text(page, "Show the buyer");
        let step = |browser: &mut Browser, step: &str, is_app: bool| {
            // The page may be gone before it could answer.
            browser.eval(page, &format!("setTimeout(() => history.{step}(), 50), 0"));
            std::thread::sleep(Duration::from_millis(500));
            let address = browser.eval(page, "location.href").to_string();
            assert_eq!(address.contains(app::address()), is_app, "{step}: {address}");
            if !is_app {
                return;
            }
            browser.wait_text(page, "Hold to close");
            assert_eq!(browser.eval(page, "document.querySelectorAll('.places, .strip').length"), 0, "{address}");
            let all = given_away(browser, page);
            for private in ["costs", "rate", "per hour", "Sold", "left of", "market", "Workshop"] {
                assert!(!all.contains(private), "{address}: {private} in {all}");
            }
        };
        browser.wait_text(page, "Hold to close");
        for (way, is_app) in [("back", true), ("back", true), ("back", false), ("forward", true)] {
            step(browser, way, is_app);
        }
        browser.hold(page, ".close .key", Duration::from_millis(900));
        browser.wait(page, "!!document.querySelector('.places')");
        assert_eq!(browser.eval(page, "sessionStorage.length"), 0, "it is forgotten with that");
    });
}

#[test]
fn the_hold_has_a_keyboard_and_leaves_the_history_as_it_was() {
    with_market(|browser, page| {
        let before = browser.eval(page, "history.length").as_i64().unwrap_or_default();
        browser.tap_text(page, "Show the buyer");
        browser.wait_text(page, "Hold to close");
        browser.eval(page, "document.querySelector('.close .key').focus()");
        browser.key(page, "Enter");
        browser.wait_text(page, "3 left of 5, tag 145");
        // the guard was stepped back over: one more entry lies ahead, none behind
        assert_eq!(browser.eval(page, "history.length").as_i64(), Some(before + 1));
        browser.wait_text(page, "For sale");
        // A screen reader presses a key with no finger on it: a click of no touch.
        browser.tap_text(page, "Show the buyer");
        browser.wait_text(page, "Hold to close");
        browser.eval(page, "document.querySelector('.close .key').click()");
        browser.wait_text(page, "3 left of 5, tag 145");
    });
}

/// A clock that names its timers by more than 32 bits, as the platform may.
const FAR: &str = "{ const far = 1e12, { setTimeout, clearTimeout } = globalThis;
  globalThis.setTimeout = (...of) => far + setTimeout(...of);
  globalThis.clearTimeout = id => clearTimeout(far < id ? id - far : 0) }";

/// A hold that is let go early says nothing, then or later, and no call of it is left behind.
#[test]
fn a_hold_let_go_early_leaves_no_call() {
    with_market(|browser, page| {
        browser.before_each_page(page, FAR);
        browser.reload(page);
        app::ready(browser, page);
        browser.tap_text(page, "Show the buyer");
        browser.wait_text(page, "Hold to close");
        for span in [0, 300] {
            browser.hold(page, ".close .key", Duration::from_millis(span));
            std::thread::sleep(Duration::from_millis(900));
            browser.wait_text(page, "Hold to close");
            assert_eq!(browser.errors(), [""; 0], "let go after {span} ms");
        }
        browser.hold(page, ".close .key", Duration::from_millis(900));
        browser.wait_text(page, "3 left of 5, tag 145");
    });
}

#[test]
fn out_of_sight_the_offer_is_blank() {
    with_market(|browser, page| {
        browser.tap_text(page, "They offer…");
        browser.tap_text(page, "130");
        browser.wait_text(page, "Sold at 130");
        let sight = |hidden: bool| {
            format!(
                "Object.defineProperty(document, 'hidden', {{ value: {hidden}, configurable: true }}); document.dispatchEvent(new Event('visibilitychange')); document.body.innerText"
            )
        };
        let blank = browser.eval(page, &sight(true));
        assert_eq!(blank.as_str().map(str::trim), Some("Price"));
        assert!(browser.eval(page, &sight(false)).as_str().is_some_and(|text| text.contains("Sold at 130")));
    });
}
