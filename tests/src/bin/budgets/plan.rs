//! What planning costs a phone: every instance of `tests/yield` on the page's own thread, beside the best known of general solvers.

#[path = "../../../../core/examples/envelope/mod.rs"]
pub mod envelope;

use crate::row;
use fivebar_core::plan::{Figures, Sense, better, post};
use fivebar_tests::{Browser, Page, Phone, app};
use serde_json::Value;
use std::path::PathBuf;

/// Plans a row for so long; what it takes in ms, then the answer's row.
const PLAN: &str = "(async (asked, ms) => { const { plan } = await import('./fivebar.js'); const began = performance.now();
  const row = plan(asked, ms, 1, () => {}); return [String(Math.round(performance.now() - began)), ...[...row].map(String)] })";

/// What the module holds of the phone, in bytes.
const HELD: &str = "import('./fivebar.js').then(glue => glue.default()).then(wasm => wasm.memory.buffer.byteLength)";

/// What an answer takes to be checked and handed over: planning stops so much earlier.
const ANSWERING: f64 = 5.0;

pub fn folder() -> PathBuf {
    app::root().join("tests/yield")
}

/// How one class of instances came out.
#[derive(Default)]
struct Came {
    instances: usize,
    /// With a first figure that is not as good as the best known.
    poorer: Vec<String>,
    /// How much worse the second figure is at most, in per cent.
    worst: f64,
    longest: f64,
}

pub fn rows(browser: &mut Browser) {
    let page = app::opened(browser, Phone::COMMON);
    for (class, size, ms) in [("shop", "shop size", 300.0), ("large", "up to 2 000 pieces", 2000.0)] {
        let came = class_of(browser, &page, class, ms);
        row(&format!("plan, {} of {size}, 4x, {ms} ms: with a poorer first figure", came.instances), came.poorer.len() as f64, "  ", 0.0);
        row("  the worst second figure, over the best known", came.worst, "% ", 2.0);
        row("  the longest", came.longest, "ms", ms);
        came.poorer.iter().for_each(|name| println!("  poorer: {name}"));
    }
    let held = browser.eval(&page, HELD).as_f64().unwrap_or(f64::NAN);
    row("  memory of the module after all of them", held / 1e6, "MB", 64.0);
}

fn class_of(browser: &mut Browser, page: &Page, class: &str, ms: f64) -> Came {
    let known = std::fs::read_to_string(folder().join("reference.json")).expect("the best known");
    let known: Value = serde_json::from_str(&known).expect("figures");
    let mut came = Came::default();
    for (name, best) in known["results"].as_object().into_iter().flatten().filter(|(_, best)| best["class"] == class) {
        let text = std::fs::read_to_string(folder().join(format!("instances/{name}.json"))).expect("an instance");
        let asked = envelope::read(&text).expect("in the format").problem;
        let (took, worth) = planned(browser, page, &post::put(&asked), ms - ANSWERING);
        let best: Figures = best["value"].as_array().into_iter().flatten().filter_map(|figure| figure.to_string().parse().ok()).collect();
        came.instances += 1;
        came.longest = came.longest.max(took);
        if better(&asked.senses()[..1], &best, &worth) {
            came.poorer.push(name.clone());
        } else if worth.first() == best.first() && asked.senses()[1] == Sense::Less && 0 < best[1] {
            came.worst = came.worst.max((worth[1] as f64 / best[1] as f64 - 1.0) * 100.0);
        }
    }
    came
}

fn planned(browser: &mut Browser, page: &Page, row: &[i64], ms: f64) -> (f64, Figures) {
    let numbers: Vec<String> = row.iter().map(|n| format!("{n}n")).collect();
    let said = browser.eval(page, &format!("{PLAN}(BigInt64Array.of({}), {ms})", numbers.join(", ")));
    let mut numbers = said.as_array().into_iter().flatten().filter_map(|n| n.as_str()?.parse::<i64>().ok());
    let took = numbers.next().unwrap_or_default();
    let answered = post::take_answer(numbers.collect()).expect("a plan");
    (took as f64, answered.worth)
}
