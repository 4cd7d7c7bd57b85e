//! Measures what the app may cost and prints one table: `cargo run -p fivebar-tests --bin budgets`. Never a timed test.
//!
//! Figures depend on the machine and on what else it does; the throttle is the browser's own, four times slower than this machine.
mod outlook;
mod plan;
mod price;
mod waiting;
mod years;

use fivebar_host::weigh;
use fivebar_tests::count::HONEST;
use fivebar_tests::{Browser, Page, Phone, app, book};
use std::path::Path;
use std::process::ExitCode;
use std::sync::Mutex;
use std::time::Duration;

const TAPS: usize = 50;
const BOOK: usize = 10_000;
const BIG_BOOK: usize = 100_000;
/// A slow machine fills a big book slowly: only how often one looks depends on it.
const QUICK: Phone = Phone::COMMON.quick();
/// A desktop browser that was just started draws its own bars and menus first, on the same two cores.
const OWN_START: Duration = Duration::from_secs(4);

/// From the event's own clock to a task posted in the frame that shows what the tap changed.
const TAP_TO_PAINT: &str = "window.painted = []; const frame = new MessageChannel(); let began = null;
  frame.port1.onmessage = () => { painted.push(performance.now() - began); began = null };
  addEventListener('pointerup', event => { if (event.target.closest('.tiles')) { began = event.timeStamp;
    requestAnimationFrame(() => frame.port2.postMessage(0)) } }, true)";

/// The moment at which the last count stands on the screen, a task after the frame that shows it.
const COLD: &str = "window.shown = null; const frame = new MessageChannel(); frame.port1.onmessage = () => { shown ??= performance.now() };
  new MutationObserver(() => { if (document.querySelector('.tiles')) requestAnimationFrame(() => frame.port2.postMessage(0)) })
    .observe(document, { subtree: true, childList: true })";

/// An opening that found many loose lines has bound them, as it does on a maker's phone too.
const BOUND: &str = "new Promise(done => { const open = indexedDB.open('fivebar'); open.onsuccess = () => {
  const binding = open.result.transaction('meta').objectStore('meta').count('binding');
  binding.onsuccess = () => { open.result.close(); done(binding.result === 1) } } })";

const HOW: &str = "
Tap to paint: from the pointerup event's timeStamp to a message posted in the next animation frame, which arrives once that frame was
handed over. Cold start: a killed browser, no network, four seconds for the browser's own start, then from navigation start to the same
of the frame that shows the tiles; median of five; the book was opened before, so its lines are bound. Fold: the app's own marks (`read`,
`lines`, `fold`), no throttle: from entries to the book and its first screen on the page. Opening: from the touch's own clock to the
same of the frame that shows it; a tenth of a second is ours. Price: a killed browser again, its shortcut's address, and the sum of what
the app takes; the hand's own time between the two touches is left out. Not under: a touch that changes what it rests on, from the
window down and up again, and the app's own marks (`painted`) of its band. Plan: on the page's own thread, where the
throttle holds; figures beside those of general solvers (`tests/yield/reference.json`).";

fn main() -> ExitCode {
    let profile = tempfile::tempdir().expect("a folder");
    println!("{:<58} {:>10} {:>10}", "what", "measured", "budget");
    row("first download, all files, brotli 11", weight(), "kB", weigh::BUDGET as f64 / 1000.0);
    filled(profile.path(), BOOK);
    let taps = taps(profile.path());
    row(&format!("tap to paint, p95 of {TAPS} taps, 4x, {BOOK} entries"), part(&taps, 0.95), "ms", 50.0);
    row("  its median", part(&taps, 0.5), "ms", 50.0);
    let mut colds: Vec<f64> = (0..5).map(|_| cold(profile.path())).collect();
    colds.sort_by(f64::total_cmp);
    row(&format!("cold start offline to the last count, 4x, {BOOK} entries"), part(&colds, 0.5), "ms", 1000.0);
    row("  the slowest of five", part(&colds, 1.0), "ms", 1000.0);
    years::rows(profile.path(), BOOK);
    price::rows(profile.path(), BOOK);
    let profile = tempfile::tempdir().expect("a folder");
    filled(profile.path(), BIG_BOOK);
    let [read, lines, fold] = folding(profile.path());
    row(&format!("fold of {BIG_BOOK} entries, with the first screen of them"), fold, "ms", 250.0);
    println!("{:<58} {read:>7.1} ms", "  before it, fetching their text from the store");
    println!("{:<58} {lines:>7.1} ms", "  and reading the text as entries");
    let mut browser = Browser::start(tempfile::tempdir().expect("a folder").path());
    plan::rows(&mut browser);
    outlook::rows(&mut browser);
    waiting::rows(&mut browser);
    println!("{}", HOW.trim_end());
    println!("{} cores.", cores());
    ended(&OVER.lock().expect("one thread"))
}

/// What is over its budget, as it was measured.
static OVER: Mutex<Vec<String>> = Mutex::new(Vec::new());

/// Says again what is over; then the command fails.
fn ended(over: &[String]) -> ExitCode {
    if over.is_empty() {
        return ExitCode::SUCCESS;
    }
    eprintln!("Over budget:\n{}", over.join("\n"));
    ExitCode::FAILURE
}

fn cores() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from)
}

fn row(what: &str, measured: f64, unit: &str, budget: f64) {
    let is_met = measured <= budget;
    let said = format!("{what:<58} {measured:>7.1} {unit} {budget:>7.0} {unit}  {}", if is_met { "OK" } else { "OVER" });
    println!("{said}");
    if !is_met {
        OVER.lock().expect("one thread").push(said);
    }
}

/// A part of sorted figures: 0.95 of them are not larger.
fn part(sorted: &[f64], of: f64) -> f64 {
    let nth = (sorted.len() as f64 * of).ceil() as usize;
    sorted.get(nth.saturating_sub(1)).copied().unwrap_or(f64::NAN)
}

fn weight() -> f64 {
    let files = app::shell().stamped();
    let weights = weigh::weigh(&files, &app::root().join("target/packed"), None).expect("weighed");
    weights.iter().map(|w| w.brotli).sum::<usize>() as f64 / 1000.0
}

/// The profile's book holds so many lines of a maker's years.
fn filled(profile: &Path, entries: usize) {
    let mut browser = Browser::start(profile);
    let page = browser.page(QUICK);
    browser.open(&page, app::address());
    app::ready(&mut browser, &page);
    app::ready_offline(&mut browser, &page);
    browser.wait(&page, "indexedDB.databases().then(all => all.some(one => one.name === 'fivebar'))");
    browser.write_book(&page, &book::years(entries));
    browser.reload(&page);
    browser.wait(&page, BOUND);
}

fn opened(browser: &mut Browser, phone: Phone, script: &str) -> Page {
    browser.offline(true);
    let page = browser.page(phone);
    browser.before_each_page(&page, script);
    std::thread::sleep(OWN_START);
    browser.open(&page, app::address());
    browser.wait(&page, "!!document.querySelector('.tiles')");
    page
}

fn taps(profile: &Path) -> Vec<f64> {
    let mut browser = Browser::start(profile);
    let page = opened(&mut browser, Phone::COMMON, TAP_TO_PAINT);
    app::read(&mut browser, &page);
    for nth in 1..=TAPS {
        browser.tap(&page, ".tiles > :nth-child(1)");
        browser.wait(&page, &format!("painted.length === {nth}"));
        std::thread::sleep(HONEST);
    }
    sorted(&mut browser, &page, "painted")
}

fn sorted(browser: &mut Browser, page: &Page, script: &str) -> Vec<f64> {
    let found = browser.eval(page, script);
    let mut figures: Vec<f64> = found.as_array().into_iter().flatten().filter_map(|v| v.as_f64()).collect();
    figures.sort_by(f64::total_cmp);
    figures
}

fn cold(profile: &Path) -> f64 {
    let mut browser = Browser::start(profile);
    let page = opened(&mut browser, Phone::COMMON, COLD);
    browser.wait(&page, "shown !== null");
    let shown = browser.eval(&page, "shown").as_f64().unwrap_or(f64::NAN);
    browser.kill();
    shown
}

/// Fetching from the store, reading as entries, and folding those: apart.
fn folding(profile: &Path) -> [f64; 3] {
    let mut browser = Browser::start(profile);
    let page = opened(&mut browser, QUICK, "");
    app::read(&mut browser, &page);
    let mut span = |name: &str| {
        let found = browser.eval(&page, &format!("performance.getEntriesByName('{name}')[0]?.duration"));
        found.as_f64().unwrap_or(f64::NAN)
    };
    ["read", "lines", "fold"].map(&mut span)
}
