//! The yard by thumb: 133 mixed pieces in four new piles, offline, from first start; what was shown as saved is there after a kill.
use fivebar_tests::{Browser, Look, Page, Phone, app};
use std::time::{Duration, Instant};

/// A thumb that counts its touches. It taps as fast as an honest hand: closer taps on one key count once.
struct Thumb<'a> {
    browser: &'a mut Browser,
    page: &'a Page,
    touches: u32,
}

impl Thumb<'_> {
    fn on(&mut self, selector: &str) {
        self.touches += 1;
        self.browser.tap(self.page, selector);
        std::thread::sleep(Duration::from_millis(90));
    }

    /// A key among the chips, by its place: 1 is the first.
    fn chip(&mut self, nth: usize) {
        self.on(&format!(".chips > :nth-child({nth})"));
    }

    fn arm(&mut self, nth: usize) {
        self.on(&format!(".foot .g4 > :nth-child({nth})"));
    }

    /// Wood, thickness, width and length by chips, without a keyboard.
    fn new_pile(&mut self, answers: [usize; 4]) {
        self.on(".blank");
        for (asked, nth) in answers.into_iter().enumerate() {
            let count = format!("document.querySelectorAll('.answers > *').length === {}", asked);
            self.browser.wait(self.page, &count);
            self.chip(nth);
        }
        self.browser.wait(self.page, "!document.querySelector('.chips')");
    }

    /// So many taps on a tile.
    fn tile(&mut self, nth: usize, taps: u32) {
        for _ in 0..taps {
            self.on(&format!(".tiles > :nth-child({nth})"));
        }
    }
}

fn figure(browser: &mut Browser, page: &Page, nth: usize) -> String {
    let script = format!("document.querySelector('.tiles > :nth-child({nth}) .fg')?.textContent ?? ''");
    browser.eval(page, &script).as_str().unwrap_or_default().to_owned()
}

#[test]
fn a_hundred_and_thirty_three_pieces_in_sixty_five_touches_or_fewer() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    browser.offline(true);
    browser.shot(&page, "count-first-start");

    let mut thumb = Thumb { browser: &mut browser, page: &page, touches: 0 };
    thumb.new_pile([1, 4, 4, 4]);
    thumb.browser.shot(&page, "count-one-pile");
    thumb.tile(1, 4);
    thumb.arm(2);
    thumb.tile(1, 12);
    thumb.new_pile([1, 7, 2, 4]);
    thumb.tile(2, 7);
    thumb.arm(1);
    thumb.tile(2, 3);
    thumb.new_pile([2, 2, 5, 2]);
    thumb.tile(3, 2);
    thumb.arm(2);
    thumb.tile(3, 4);
    thumb.new_pile([7, 8, 6, 2]);
    thumb.tile(4, 1);
    thumb.arm(1);
    thumb.tile(4, 4);
    let touches = thumb.touches;
    browser.wait(&page, "document.querySelector('h1').textContent === '133 pieces'");
    let figures: Vec<String> = (1..=4).map(|nth| figure(&mut browser, &page, nth)).collect();
    assert_eq!(figures, ["64", "38", "22", "9"]);
    assert!(touches <= 65, "{touches} touches");
    println!("133 pieces in 4 new piles: {touches} touches");
    app::saved(&mut browser, &page);
    for (name, look) in [("light", Look::default()), ("dark", Look { dark: true, ..Look::default() })] {
        browser.look(&page, look);
        browser.shot(&page, &format!("count-{name}"));
    }
    assert_eq!(browser.errors(), [""; 0]);
    browser.kill();

    let mut browser = Browser::start(profile.path());
    browser.offline(true);
    let page = app::opened(&mut browser, Phone::SMALL.quick());
    browser.wait(&page, "document.querySelector('h1').textContent === '133 pieces'");
    browser.shot(&page, "count-320");
    browser.text_size(&page, 200);
    browser.reload(&page);
    app::ready(&mut browser, &page);
    browser.wait(&page, "document.querySelector('h1').textContent === '133 pieces'");
    browser.shot(&page, "count-320-large");
    assert_eq!(browser.sticks_out(&page, Phone::SMALL), [""; 0]);
    assert_eq!(browser.axe(&page), [""; 0]);
}

#[test]
fn counts_from_the_first_tap_moves_sorts_and_takes_back() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let mut thumb = Thumb { browser: &mut browser, page: &page, touches: 0 };
    thumb.on(".day1");
    thumb.tile(1, 2);
    thumb.on(".side > .key");
    thumb.browser.wait_text(&page, "0 min");
    thumb.new_pile([1, 4, 4, 4]);
    thumb.tile(2, 3);
    thumb.browser.shot(&page, "count-driving");
    thumb.on(".um > :nth-child(2)");
    thumb.browser.wait(&page, "document.querySelector('h1').textContent.startsWith('Move 3 of')");
    thumb.browser.shot(&page, "count-move");
    thumb.on("main > .key");
    thumb.browser.wait(&page, "document.querySelector('.tiles > :nth-child(1) .fg').textContent === '6'");
    thumb.on(".um, .foot > .key");
    thumb.browser.wait(&page, "document.querySelector('.tiles > :nth-child(1) .fg').textContent === '3'");
    thumb.browser.shot(&page, "count-put-back");
    thumb.on(".side > .key");
    thumb.browser.shot(&page, "count-choose");
    thumb.on(".ums > :nth-child(1)");
    thumb.on(".goodt");
    thumb.on(".rk:nth-child(2)");
    thumb.browser.wait(&page, "document.querySelector('h1').textContent.includes('2 of 3')");
    thumb.browser.shot(&page, "count-sort");
    thumb.on(".foot .um > :nth-child(1)");
    thumb.browser.wait(&page, "document.querySelector('h1').textContent.includes('1 of 3')");
    thumb.on(".foot .um > :nth-child(2)");
    thumb.on(".pay > .loadrow:last-child");
    thumb.browser.shot(&page, "count-haul");
    thumb.on("main .g2 > .key");
    thumb.browser.shot(&page, "count-carries");
    for digit in ["6", "7", "0"] {
        thumb.browser.tap_text(&page, digit);
        std::thread::sleep(Duration::from_millis(90));
    }
    thumb.browser.shot(&page, "count-carries-typed");
    thumb.on(".key.solid");
    thumb.browser.wait_text(&page, "494 lb beside the driver");
    thumb.browser.tap_text(&page, "Done");
    thumb.browser.wait_text(&page, "The van carries");
    std::thread::sleep(Duration::from_millis(90));
    thumb.on("main > .key:last-child");
    thumb.browser.wait_text(&page, "of 494 lb");
    thumb.browser.shot(&page, "count-load");
    thumb.on(".foot .g4 > :nth-child(4)");
    thumb.browser.shot(&page, "count-bundle");
    assert_eq!(browser.errors(), [""; 0]);
}

/// An honest hand taps eight times a second, over the whole width; none of it is lost, and all of it is there after a reload.
#[test]
fn two_hundred_taps_at_eight_a_second_lose_none() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON);
    let mut thumb = Thumb { browser: &mut browser, page: &page, touches: 0 };
    for pile in [[1, 4, 4, 4], [1, 7, 2, 4], [2, 2, 5, 2], [7, 8, 6, 2]] {
        thumb.new_pile(pile);
    }
    // the bar that takes back comes with the first tap, and the tiles stay from then on
    thumb.tile(1, 1);
    let places = browser.eval(
        &page,
        "[...document.querySelectorAll('.tiles > *')].map((tile) => tile.getBoundingClientRect())
           .map((r) => ({ x: r.x + r.width / 2, y: r.y + r.height / 2 }))",
    );
    let places: Vec<(f64, f64)> =
        places.as_array().expect("tiles").iter().filter_map(|at| at["x"].as_f64().zip(at["y"].as_f64())).collect();
    assert_eq!(places.len(), 4);
    let beat = Duration::from_millis(125);
    for nth in 1..200_usize {
        let (x, y) = places[nth * 7 % 4];
        // a slow machine taps slower; it never makes up for it, as no hand would
        let began = Instant::now();
        browser.tap_at(&page, x, y);
        std::thread::sleep(beat.saturating_sub(began.elapsed()));
    }
    browser.shot(&page, "count-200");
    browser.wait(&page, "document.querySelector('h1').textContent === '200 pieces'");
    app::saved(&mut browser, &page);
    browser.reload(&page);
    app::read(&mut browser, &page);
    browser.wait(&page, "document.querySelector('h1').textContent === '200 pieces'");
    assert_eq!((1..=4).map(|nth| figure(&mut browser, &page, nth)).collect::<Vec<_>>(), ["50", "50", "50", "50"]);
    assert_eq!(browser.errors(), [""; 0]);
}
