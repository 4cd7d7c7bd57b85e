//! What waiting is worth, on a phone's own thread: five pieces, eight weeks, twenty of them heard.

use crate::row;
use fivebar_core::story::{Story, tell};
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app};

const BUDGET: f64 = 50.0;
const DAY: &str = "2026-05-23T20:00";

/// How long each touch keeps the page: from the window down to the window up again, with all that is heard of it between.
const KEPT: &str = "window.kept = []; let began = 0;
  addEventListener('click', () => { began = performance.now() }, true);
  addEventListener('click', () => { kept.push(performance.now() - began) })";

/// Five stools, guessed three weeks ago, to be sold in eight weeks from now.
fn stools() -> Story {
    let mut text = String::from(
        "2026-05-01 08:00 -05:00 workshop USD inch
till tax 0.055 inside fee 0.026 fixed 0.10
rate pay 17 lowest 12 hours 600 logged 480 costs 1440
job stool \"Stool\" 5 spec
spend 40 glue on stool
start \"saw\" make on stool
14:00 stop
14:01 tag 145 stool
14:02 guess stool asks 8 buys 0.25 at 145 k 2 by 2026-06-26 end 60 each-ask 20 each-day 1 no-show 0.2
",
    );
    for nth in 0..20 {
        let heard = if nth % 4 == 0 { "offer 110 for 1 stool" } else { "asked 145 stool" };
        text += &format!("2026-05-{:02} {:02}:00 {heard}\n", 2 + nth, 10 + nth % 8);
    }
    let story = tell(&(text + "2026-05-23 09:00 guess stool by 2026-07-18\n"));
    assert_eq!(story.refused, []);
    story
}

pub fn rows(browser: &mut Browser) {
    let lines: Vec<String> = stools().book.lines().map(str::to_owned).collect();
    let page = app::opened(browser, Phone::COMMON.quick());
    app::read(browser, &page);
    browser.write_book(&page, &lines);
    browser.close(page);
    let page = browser.page(Phone::COMMON);
    browser.timezone(&page, "America/Chicago");
    browser.before_each_page(&page, KEPT);
    let mut maker = Maker::on(browser, page.clone());
    maker.browser.before_each_page(&page, &format!("setClock({DAY:?})"));
    maker.browser.open(&page, &format!("{}#price", app::address()));
    app::read(maker.browser, &page);
    maker.tap("Someone asked");
    maker.tap("Asking price");
    maker.browser.wait_text(&page, "The band comes from your guesses.");
    let mut most = |script: &str| {
        let found = maker.browser.eval(&page, script);
        found.as_f64().unwrap_or(f64::NAN)
    };
    let value = most("kept[0]");
    let go = most("Math.max(...performance.getEntriesByName('painted').map(one => one.duration))");
    let goes = most("performance.getEntriesByName('painted').length");
    row("not under anew after a touch, five pieces, 56 days, 4x", value, "ms", BUDGET);
    row("  the longest go of its band", go, "ms", BUDGET);
    println!("  in {goes} goes");
}
