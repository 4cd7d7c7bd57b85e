//! What it costs a phone to reckon how many sets unsorted wood gives: parts of `tests/yield` on the page's own thread.

use crate::plan::envelope;
use crate::{plan::folder, row};
use fivebar_core::plan::outlook::{Hoped, Pieces};
use fivebar_core::plan::{Asked, post};
use fivebar_core::quantity::Count;
use fivebar_tests::{Browser, Phone, app};

/// What a row takes in ms, then the answer's row.
const RECKON: &str = "(async (hoped) => { const { outlook } = await import('./fivebar.js'); const began = performance.now();
  const row = outlook(hoped, 1); return [String(Math.round(performance.now() - began)), ...[...row].map(String)] })";

/// Nothing of it is sorted, and nothing known of it.
fn unsorted(mut problem: fivebar_core::plan::parts::problem::Problem) -> Hoped {
    problem.sets = None;
    let piles = problem.piles.iter().zip(1_u64..).map(|(pile, nth)| Pieces {
        certain: 0,
        unsorted: Count::try_from(pile.count).unwrap_or(0),
        share: [9.0, 3.0],
        lots: nth,
        kin: nth,
    });
    Hoped { piles: piles.collect(), problem, known: vec![] }
}

pub fn rows(browser: &mut Browser) {
    let page = app::opened(browser, Phone::COMMON);
    let files = std::fs::read_dir(folder().join("instances")).expect("instances").flatten();
    let mut names: Vec<_> = files.map(|file| file.path()).filter(|path| path.to_string_lossy().contains("parts-shop")).collect();
    names.sort();
    let (mut longest, mut fewest, mut piles) = (0.0_f64, u32::MAX, 0);
    for path in names {
        let Asked::Parts(problem) = envelope::read(&std::fs::read_to_string(&path).expect("an instance")).expect("in the format").problem
        else {
            continue;
        };
        let hoped = unsorted(problem);
        let numbers: Vec<String> = post::put_hoped(&hoped).iter().map(|n| format!("{n}n")).collect();
        let said = browser.eval(&page, &format!("{RECKON}(BigInt64Array.of({}))", numbers.join(", ")));
        let mut numbers = said.as_array().into_iter().flatten().filter_map(|n| n.as_str()?.parse::<i64>().ok());
        let took = numbers.next().unwrap_or_default() as f64;
        let found = post::take_outlook(numbers.collect()).expect("an answer");
        println!("  {:<40} {took:>6} ms {:>5} draws", path.file_stem().unwrap_or_default().to_string_lossy(), found.draws);
        (longest, fewest, piles) = (longest.max(took), fewest.min(found.draws), piles.max(hoped.piles.len()));
    }
    row(&format!("sets of unsorted wood, up to {piles} piles, 4x: the longest"), longest, "ms", 300.0);
    println!("  by {fewest} draws at the least");
}
