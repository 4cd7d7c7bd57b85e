//! What three years of a maker cost: Bench and Jobs, the list of a day, the dates and the hours of a job. Their bounds are ours.

use crate::{OWN_START, part, row, sorted};
use fivebar_core::ledger::{Fact, line, line::Line};
pub use fivebar_tests::book::EVENING;
use fivebar_tests::maker::Maker;
use fivebar_tests::{Browser, Phone, app, book};
use std::path::Path;

const TIMES: usize = 5;

/// From the touch to a task posted in the frame that shows what was asked for.
const OPENED: &str = "window.took = []; window.wanted = null; const frame = new MessageChannel(); let began = null;
  frame.port1.onmessage = () => took.push(performance.now() - began);
  addEventListener('pointerup', event => { began = event.timeStamp }, true);
  new MutationObserver(() => { if (wanted?.()) { wanted = null; requestAnimationFrame(() => frame.port2.postMessage(0)) } })
    .observe(document, { subtree: true, childList: true, characterData: true })";

/// The slab of what runs, and the tops that wait.
const BENCH: &str = "() => document.querySelector('[data-place=bench] .slab')?.textContent.includes('Seats')
  && document.querySelector('[data-place=bench]').textContent.includes('glue top')";
/// The job that was agreed with a day, first of all, with that day.
const JOBS: &str = "() => { const first = document.querySelector('[data-place=jobs] .card.hot')?.textContent;
  return first?.includes('Dining table') && /(26.*Jun|Jun.*26)/.test(first) }";
/// The last day of each of its steps.
const DATES: &str = "() => 3 < document.querySelectorAll('[data-place=\"jobs/dates\"] .dl .last').length";
const DAY: &str = "() => !!document.querySelector('main.day .run')";
const HOURS: &str = "() => document.querySelector('h1')?.textContent === 'Hours and money'";

/// All are looked at anew in each page, as at the start of a day.
pub fn rows(profile: &Path, entries: usize) {
    let began =
        |text: &&String| matches!(line::read(text), Line::Known(entry) if matches!(entry.fact, Fact::RunStarted(_) | Fact::RunRecalled(_)));
    println!("  {} runs among {entries} entries", book::years(entries).iter().filter(began).count());
    let (mut benches, mut days, mut jobs, mut dates, mut hours) = (vec![], vec![], vec![], vec![], vec![]);
    let mut browser = Browser::start(profile);
    browser.offline(true);
    let page = browser.page(Phone::COMMON);
    browser.timezone(&page, "America/Chicago");
    browser.before_each_page(&page, OPENED);
    let mut maker = Maker::on(&mut browser, page.clone());
    maker.browser.before_each_page(&page, &format!("setClock({EVENING:?})"));
    std::thread::sleep(OWN_START);
    for _ in 0..TIMES {
        maker.browser.open(&page, app::address());
        app::read(maker.browser, &page);
        benches.extend(took(&mut maker, BENCH, |maker| maker.touch(".places > :nth-child(2)")));
        days.extend(took(&mut maker, DAY, |maker| maker.tap("today ")));
        jobs.extend(took(&mut maker, JOBS, |maker| maker.touch(".places > :nth-child(4)")));
        maker.touch(".card.hot");
        dates.extend(took(&mut maker, DATES, |maker| maker.tap("Dates and quote")));
        maker.touch(".foot .key.wide");
        hours.extend(took(&mut maker, HOURS, |maker| maker.tap("Hours and money")));
    }
    let all =
        [("Bench", benches), ("the list of a day", days), ("Jobs", jobs), ("the dates of a job", dates), ("the hours of a job", hours)];
    for (what, mut figures) in all {
        figures.sort_by(f64::total_cmp);
        row(&format!("opening {what}, 4x, {entries} entries"), part(&figures, 0.5), "ms", 100.0);
        row(&format!("  the slowest of {TIMES}"), part(&figures, 1.0), "ms", 100.0);
    }
}

fn took(maker: &mut Maker<'_>, wanted: &str, tap: impl Fn(&mut Maker<'_>)) -> Vec<f64> {
    maker.browser.eval(&maker.page, &format!("took = []; wanted = {wanted}; 0"));
    tap(maker);
    let page = maker.page.clone();
    maker.browser.wait(&page, "took.length === 1");
    sorted(maker.browser, &page, "took")
}
