//! The app by a keyboard alone, and by the phone's own Back.
use fivebar_tests::{Browser, Page, Phone, app};

/// Tab, as often as it takes to reach what the script says of the element in focus.
fn tab_to(browser: &mut Browser, page: &Page, what: &str) {
    let there = format!("(e => {what})(document.activeElement)");
    let reached = (0..80).any(|_| {
        browser.key(page, "Tab");
        browser.eval(page, &there) == true
    });
    assert!(reached, "Tab does not come to {what}");
    let ring = browser.eval(page, "(e => getComputedStyle(e.closest('.box') ?? e).outlineStyle)(document.activeElement)");
    assert_ne!(ring, "none", "{what} is seen to have the focus");
}

fn press(browser: &mut Browser, page: &Page, words: &str) {
    browser.wait_text(page, words);
    tab_to(browser, page, &format!("e.innerText?.trim().startsWith({words:?})"));
    browser.key(page, "Enter");
}

#[test]
fn a_day_by_keyboard_alone() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::LAPTOP);
    tab_to(&mut browser, &page, "e.matches('.day1')");
    browser.key(&page, "Enter");
    browser.wait_figure(&page, 1);
    tab_to(&mut browser, &page, "e.matches('.tiles > *')");
    browser.key(&page, " ");
    browser.wait_figure(&page, 2);
    browser.key(&page, "u");
    browser.wait_figure(&page, 1);

    browser.key(&page, "2");
    browser.wait(&page, "document.activeElement.localName === 'h1' && document.activeElement.textContent === 'Nothing runs'");
    press(&mut browser, &page, "Start");
    browser.wait_text(&page, "Which operation?");
    press(&mut browser, &page, "Trim");
    browser.wait(&page, "!!document.querySelector('.working')");
    press(&mut browser, &page, "Stop");
    browser.wait_text(&page, "Carry on: trim");

    browser.key(&page, "4");
    press(&mut browser, &page, "New job");
    tab_to(&mut browser, &page, "e.id === 'job-name'");
    browser.type_text(&page, "Wall shelf");
    press(&mut browser, &page, "Begin this job");
    browser.wait_text(&page, "No wood yet.");
    browser.key(&page, "Escape");
    browser.wait_text(&page, "New job");
    app::saved(&mut browser, &page);
    assert_eq!(browser.errors(), [""; 0]);
}

/// A figure by the keyboard, with the focus where a tap left it: Enter is Done, a sign the pad has not is seen, and no figure leads elsewhere.
#[test]
fn a_keyboard_types_a_figure_and_enter_takes_it() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::LAPTOP);
    browser.key(&page, "4");
    press(&mut browser, &page, "New job");
    tab_to(&mut browser, &page, "e.id === 'job-name'");
    browser.type_text(&page, "Wall shelf");
    press(&mut browser, &page, "Begin this job");
    browser.wait_text(&page, "No wood yet.");
    browser.tap_keys(&page, &["Sell and deliver", "Agreed", "Agreed price"]);
    for key in ["4", "+", "2"] {
        browser.key(&page, key);
    }
    browser.wait_text(&page, "4+2");
    browser.key(&page, "Enter");
    browser.wait_text(&page, "is no number");
    for key in ["4", "5", "1", "Enter"] {
        browser.key(&page, key);
    }
    browser.wait_text(&page, "451");
    browser.tap_text(&page, "Agreed");
    browser.wait_text(&page, "Came to nothing");
    assert_eq!(browser.eval(&page, "location.hash"), "#jobs");
    // A form with its figures in sight: a tap leaves the focus on one, and Enter takes the form all the same.
    browser.tap_keys(&page, &["Payment in", "Bank"]);
    for key in ["5", "1", "Enter"] {
        browser.key(&page, key);
    }
    browser.wait_text(&page, "51.00");
    assert_eq!(browser.errors(), [""; 0]);
}

/// The blank before a fraction is of the figure that is typed, also where a tap left the focus on a key; it presses that key where nothing is
/// typed.
#[test]
fn a_keyboard_types_an_inch_and_a_quarter() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::LAPTOP);
    browser.key(&page, "4");
    press(&mut browser, &page, "New job");
    tab_to(&mut browser, &page, "e.id === 'job-name'");
    browser.type_text(&page, "Wall shelf");
    press(&mut browser, &page, "Begin this job");
    browser.wait_text(&page, "No wood yet.");
    browser.tap_keys(&page, &["Wood and plan", "Add a part"]);
    browser.wait(&page, "!!document.querySelector('.slots')");
    browser.tap(&page, ".slots > :nth-child(4)");
    for key in ["1", " ", "1", "/", "4"] {
        browser.key(&page, key);
    }
    browser.wait(&page, "document.querySelector('.slots > :nth-child(4) .fr b')?.textContent === '1'");
    tab_to(&mut browser, &page, "e.matches('.slots > :nth-child(2)')");
    browser.key(&page, " ");
    browser.wait(&page, "document.querySelector('.slots > :nth-child(2)').ariaPressed === 'true'");
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn going_back_leaves_what_lies_over_a_place_and_not_the_app() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    browser.tap_text(&page, "Workshop");
    browser.wait_text(&page, "Your rate");
    std::thread::sleep(std::time::Duration::from_millis(150));
    browser.tap_text(&page, "Your rate");
    browser.wait(&page, "document.querySelector('[data-place]').dataset.place === 'workshop/rate'");
    browser.eval(&page, "history.back()");
    browser.wait(&page, "document.querySelector('[data-place]').dataset.place === 'workshop'");
    assert_eq!(browser.eval(&page, "location.hash"), "#workshop");
    assert_eq!(browser.errors(), [""; 0]);
}

/// What was left open on one place is no step back from another.
#[test]
fn going_back_stays_on_the_place_where_one_is() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let at = |browser: &mut Browser, place: &str| {
        browser.wait(&page, &format!("document.querySelector('[data-place]').dataset.place === {place:?}"));
    };
    browser.tap_text(&page, "Workshop");
    browser.wait_text(&page, "Your rate");
    std::thread::sleep(std::time::Duration::from_millis(150));
    browser.tap_text(&page, "Your rate");
    at(&mut browser, "workshop/rate");
    for _ in 0..2 {
        browser.tap_text(&page, "Price");
        at(&mut browser, "price");
        std::thread::sleep(std::time::Duration::from_millis(150));
        browser.tap_text(&page, "Hours?");
        at(&mut browser, "price/quick");
        browser.eval(&page, "history.back()");
        at(&mut browser, "price");
        assert_eq!(browser.eval(&page, "location.hash"), "#price");
        browser.tap_text(&page, "Workshop");
        browser.wait(&page, "location.hash === '#workshop'");
        std::thread::sleep(std::time::Duration::from_millis(150));
    }
    assert_eq!(browser.errors(), [""; 0]);
}
