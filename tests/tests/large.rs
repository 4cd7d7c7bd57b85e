//! A large haul under a thumb: 40 piles of long names and 3,000 pieces in inches, beside a haul in millimetres.
use fivebar_core::story::tell;
use fivebar_tests::{Browser, Look, Page, Phone, app};
use std::time::Duration;

const STORY: &str = include_str!("../stories/large_hauls.txt");

/// The foot stands on the bar of places, which ends where the screen ends.
const FOOT: &str = "(() => { const [foot, places] = ['.foot', '.places'].map(it => document.querySelector(it).getBoundingClientRect());
    return Math.abs(foot.bottom - places.top) < 2 && Math.abs(places.bottom - innerHeight) < 1 })()";
/// What stands in the way of a finger on the last tile, once the page is scrolled to it.
const LAST_IS_FREE: &str = "(() => { const tile = document.querySelector('.tiles > :last-child'); tile.scrollIntoView({ block: 'end' });
    const box = tile.getBoundingClientRect();
    return box.bottom <= document.querySelector('.foot').getBoundingClientRect().top + .5 && tile.contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2)) })()";

fn figure(nth: &str) -> String {
    format!("document.querySelector('.tiles > :{nth} .fg').textContent")
}

/// Nothing sticks out, no key is too small, nothing is hard to read, in both themes; the foot stays.
fn fits(browser: &mut Browser, page: &Page, name: &str, phone: Phone) {
    std::thread::sleep(Duration::from_millis(150));
    for (theme, dark) in [("light", false), ("dark", true)] {
        browser.look(page, Look { dark, ..Look::default() });
        browser.shot(page, &format!("large-{name}-{theme}"));
    }
    assert_eq!(browser.sticks_out(page, phone), [""; 0], "{name}");
    assert_eq!(browser.small_targets(page), [""; 0], "{name}");
    assert_eq!(browser.axe(page), [""; 0], "{name}");
    assert_eq!(browser.faint_text(page), [""; 0], "{name}");
}

/// The first and the last tile count, and the foot stands still while the tiles scroll.
fn counts(browser: &mut Browser, page: &Page, pieces: u32) {
    assert_eq!(browser.eval(page, FOOT), true);
    assert_eq!(browser.eval(page, "document.querySelectorAll('.tiles > *').length"), 40);
    let (first, last) = (figure("first-child"), figure("last-child"));
    let before: u64 = pieces.into();
    browser.wait_figure(page, before);
    for (nth, tile) in [(1, "first-child"), (2, "last-child")] {
        browser.eval(page, &format!("document.querySelector('.tiles > :{tile}').scrollIntoView({{ block: 'center' }})"));
        browser.taps(page, &format!(".tiles > :{tile}"), 1);
        browser.wait_figure(page, before + nth);
        assert_eq!(browser.eval(page, FOOT), true, "{tile}");
    }
    assert_eq!(browser.eval(page, &first), browser.eval(page, &last));
    assert_eq!(browser.eval(page, LAST_IS_FREE), true);
}

#[test]
fn forty_piles_fit_a_hand() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let story = tell(STORY);
    let lines: Vec<String> = story.book.lines().map(str::to_owned).collect();
    let mut pieces = 3000;
    for (name, phone) in [("390", Phone::COMMON.quick()), ("320", Phone::SMALL.quick())] {
        let page = app::opened(&mut browser, phone);
        if pieces == 3000 {
            browser.write_book(&page, &lines);
            browser.reload(&page);
            app::read(&mut browser, &page);
        }
        fits(&mut browser, &page, name, phone);
        counts(&mut browser, &page, pieces);
        fits(&mut browser, &page, &format!("{name}-counted"), phone);
        browser.tap_text(&page, "Sort");
        fits(&mut browser, &page, &format!("{name}-sort"), phone);
        pieces += 2;
        browser.close(page);
    }
    let page = app::opened(&mut browser, Phone::SMALL.quick());
    browser.tap(&page, ".places > :nth-child(5)");
    browser.wait_text(&page, "Rack");
    std::thread::sleep(Duration::from_millis(150));
    browser.tap_text(&page, "Rack");
    browser.wait_text(&page, "545 mm");
    fits(&mut browser, &page, "rack-320", Phone::SMALL);
    assert_eq!(browser.errors(), [""; 0]);
}
