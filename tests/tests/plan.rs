//! Planning beside the page: the worker starts without a network, answers, and never holds a tap.
use fivebar_core::plan::outlook::{Hoped, Pieces, outlook};
use fivebar_core::plan::parts::problem as parts;
use fivebar_core::plan::sticks::problem::{Part, Pile, Problem};
use fivebar_core::plan::{Asked, Made, post};
use fivebar_tests::{Browser, Page, Phone, app};

/// Two sticks of 1000 and a kerf of 3 give four rails of 490: two sets, and nothing is proven better.
fn rails() -> Asked {
    let piles = vec![Pile { id: "0".into(), count: 2, length: 1000 }];
    let parts = vec![Part { id: "0".into(), per_set: 2, length: 490, piles: None }];
    Asked::Sticks(Problem { kerf: 3, piles, parts, ..Default::default() })
}

/// What the worker tells of a row, until it is done or has failed.
fn told(browser: &mut Browser, page: &Page, row: &[i64]) -> (String, Vec<i64>) {
    asked(browser, page, "asked", row)
}

fn asked(browser: &mut Browser, page: &Page, what: &str, row: &[i64]) -> (String, Vec<i64>) {
    let numbers: Vec<String> = row.iter().map(|n| format!("{n}n")).collect();
    let ask = format!(
        "new Promise((done, wrong) => {{ const worker = new Worker('./worker.js', {{ type: 'module' }}); worker.onerror = wrong;
          worker.onmessage = ({{ data }}) => {{ if (data.kind === 'done' || data.kind === 'failed') done([data.kind, [...(data.row ?? [])].map(String)]) }};
          worker.postMessage({{ {what}: BigInt64Array.of({}), ms: 200, seed: 1 }}) }})",
        numbers.join(", ")
    );
    let said = browser.eval(page, &ask);
    let row = said[1].as_array().into_iter().flatten().filter_map(|n| n.as_str()?.parse().ok()).collect();
    (said[0].as_str().unwrap_or_default().to_owned(), row)
}

/// Twelve unsorted pieces of which each gives one leg; a set is four.
fn legs() -> Hoped {
    let piles = vec![parts::Pile { id: "0".into(), count: 1, length: 500, width: 50, thickness: 25 }];
    let part = parts::Part { id: "0".into(), per_set: 4, length: 500, width: 50, thickness: 25, glue: false, piles: None };
    let pieces = Pieces { certain: 0, unsorted: 12, share: [9.0, 3.0], lots: u64::MAX, kin: 3 };
    Hoped { problem: parts::Problem { piles, parts: vec![part], ..Default::default() }, piles: vec![pieces] }
}

#[test]
fn a_worker_reckons_as_a_terminal_does() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let (kind, row) = asked(&mut browser, &page, "hoped", &post::put_hoped(&legs()));
    assert_eq!((&*kind, post::take_outlook(row)), ("done", Some(outlook(&legs(), 1))));
    assert_eq!(asked(&mut browser, &page, "hoped", &[1, 2, 3]), ("failed".to_owned(), vec![]));
    assert_eq!(browser.errors(), [""; 0]);
}

#[test]
fn a_worker_plans_without_a_network_and_says_no_to_nonsense() {
    let profile = tempfile::tempdir().expect("a folder");
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    browser.offline(true);
    let (kind, row) = told(&mut browser, &page, &post::put(&rails()));
    let answered = post::take_answer(row).expect("a plan");
    assert_eq!((&*kind, matches!(answered.plan, Made::Sticks(_))), ("done", true), "{answered:?}");
    assert_eq!(told(&mut browser, &page, &[1, 2, 3]), ("failed".to_owned(), vec![]));
    assert_eq!(browser.errors(), [""; 0]);
}
