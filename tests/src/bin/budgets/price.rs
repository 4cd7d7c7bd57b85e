//! From the Price shortcut, on a phone that had closed the app, to the word for an offer: two touches.

use crate::{OWN_START, part, row, years::EVENING};
use fivebar_core::story::tell;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};
use std::path::Path;
use std::time::Duration;

const TIMES: usize = 3;
const BUDGET: f64 = 3000.0;

/// Three stools with a price, and guesses of who asks: waiting has its word too.
const STOOLS: &str = "2026-05-23 08:00 -05:00 workshop USD inch
till tax 0.055 inside fee 0.026 fixed 0.10
rate pay 17 hours 600 logged 480 costs 1440
job stool \"Stool\" 3 spec
spend 40 glue on stool
start \"saw\" make on stool
14:00 stop
14:01 tag 145 stool
14:02 guess stool asks 1.5 buys 0.25 at 145 k 2 by 2026-06-20 end 60
";

/// When each of these was painted, from navigation start, by a task posted in its frame; and when each touch was let go.
const STEPS: &str = "window.painted = []; window.touched = []; const frame = new MessageChannel(); let next = 0;
  const one = what => document.querySelector(what);
  const steps = [() => one('.sale .key.solid'), () => one('.slider'), () => one('.verdict') && !one('.verdict').textContent.startsWith('Ask')];
  frame.port1.onmessage = () => painted.push(performance.now());
  addEventListener('pointerup', event => touched.push(event.timeStamp), true);
  new MutationObserver(() => { if (steps[next]?.()) { next += 1; requestAnimationFrame(() => frame.port2.postMessage(0)) } })
    .observe(document, { subtree: true, childList: true, characterData: true })";

/// The hand's own time between its touches is left out.
pub fn rows(profile: &Path, entries: usize) {
    let told = tell(STOOLS);
    assert_eq!(told.refused, []);
    // Beside the lines of years, under ids of their own.
    let lines: Vec<String> = told.book.lines().map(|line| line.replace("-7000-8000-", "-7fff-8000-")).collect();
    let mut browser = Browser::start(profile);
    let page = browser.page(Phone::COMMON.quick());
    browser.open(&page, app::address());
    app::read(&mut browser, &page);
    browser.write_book(&page, &lines);
    browser.kill();
    let mut all: Vec<[f64; 3]> = (0..TIMES).map(|_| to_the_word(profile)).collect();
    all.sort_by(|a, b| a.iter().sum::<f64>().total_cmp(&b.iter().sum()));
    let sums: Vec<f64> = all.iter().map(|steps| steps.iter().sum()).collect();
    row(&format!("Price shortcut to the word for an offer, 4x, {entries} entries"), part(&sums, 0.5), "ms", BUDGET);
    row(&format!("  the slowest of {TIMES}"), part(&sums, 1.0), "ms", BUDGET);
    let [list, offer, word] = all.get(TIMES / 2).copied().unwrap_or([f64::NAN; 3]);
    println!("  cold start to the list {list:.0} ms, then each touch to its frame: the offer {offer:.0}, the word {word:.0}");
}

/// The list from navigation start, then the offer and its word from their touches.
fn to_the_word(profile: &Path) -> [f64; 3] {
    let mut browser = Browser::start(profile);
    browser.offline(true);
    let page = browser.page(Phone::COMMON);
    browser.before_each_page(&page, STEPS);
    let maker = Maker::on(&mut browser, page.clone());
    maker.browser.before_each_page(&page, &format!("setClock({EVENING:?})"));
    std::thread::sleep(OWN_START);
    browser.open(&page, &format!("{}#price", app::address()));
    browser.wait(&page, "painted.length === 1");
    // Of the pieces for sale the stools are the one whose sums are worth saying.
    browser.eval(&page, "[...document.querySelectorAll('.sale')].find(sale => sale.textContent.includes('Stool')).id = 'stools'");
    for (nth, touch) in [(1, "#stools .key.solid"), (2, ".g3 .key.fig:not([disabled])")] {
        browser.wait(&page, &format!("painted.length === {nth}"));
        std::thread::sleep(Duration::from_millis(200));
        browser.tap(&page, touch);
    }
    browser.wait(&page, "painted.length === 3");
    let took = browser.eval(&page, "[painted[0], painted[1] - touched[0], painted[2] - touched[1]]");
    browser.kill();
    let figure = |nth: usize| took.get(nth).and_then(|figure| figure.as_f64()).unwrap_or(f64::NAN);
    [figure(0), figure(1), figure(2)]
}
