//! All instances of `tests/yield` beside the results of general solvers:
//! `cargo bench -p fivebar-core --bench plan -- [MS] [WORD]`, MS 300, WORD a part of the name.
//!
//! For each: our figures and bound, theirs, ours against theirs, milliseconds until our plan was found, their seconds, and whether ours is proven.

#[path = "../examples/envelope/mod.rs"]
mod envelope;

use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::{Figures, better};
use std::collections::BTreeMap;
use std::time::{Duration, Instant};

/// A line of the table.
struct Row {
    class: String,
    kind: &'static str,
    verdict: &'static str,
    is_first_equal: bool,
    is_proven: bool,
    is_proven_there: bool,
    /// Whether theirs rests on whole numbers alone, and ours goes as far.
    is_exact_there: bool,
    is_as_far: bool,
    millis: f64,
    their_seconds: f64,
    /// The name, and how much more of the second figure ours has, where the first is the same: 0.01 is a hundredth.
    second: (String, f64),
}

fn figures(value: &serde_json::Value) -> Figures {
    value.as_array().into_iter().flatten().filter_map(|figure| figure.to_string().parse().ok()).collect()
}

fn row(name: &str, known: &serde_json::Value, time: Duration) -> Row {
    let path = format!("{}/../tests/yield/instances/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let instance = envelope::read(&std::fs::read_to_string(path).expect("an instance")).expect("in the format");
    let began = Instant::now();
    let (mut found, mut worth) = (0.0, vec![]);
    let mut goes_on = |progress: Progress<'_>| {
        if worth != progress.worth {
            (found, worth) = (began.elapsed().as_secs_f64() * 1e3, progress.worth.to_vec());
        }
        began.elapsed() < time
    };
    let solution = instance.solve(&mut Patience::new(None, &mut goes_on), 1);
    let (theirs, bound, senses) = (figures(&known["value"]), figures(&known["bound"]), instance.senses());
    let verdict = match (better(senses, &solution.worth, &theirs), better(senses, &theirs, &solution.worth)) {
        (true, _) => "better",
        (_, true) => "worse",
        _ => "same",
    };
    assert!(!better(senses, &theirs, &solution.bound), "{name}: a false bound {:?}", solution.bound);
    let their_seconds = known["cpu_seconds_value"].to_string().parse().unwrap_or(0.0);
    let row = Row {
        class: instance.class.clone(),
        kind: instance.kind(),
        verdict,
        is_first_equal: solution.worth.first() == theirs.first() || verdict == "better",
        is_proven: solution.worth == solution.bound,
        is_proven_there: known["proven"] == true,
        is_exact_there: known["bound_by"] == "exact",
        is_as_far: (0..known["proven_figures"].as_u64().unwrap_or(0) as usize).all(|nth| solution.bound.get(nth) == bound.get(nth)),
        millis: found,
        their_seconds,
        second: (name.to_owned(), second(&solution.worth, &theirs)),
    };
    println!(
        "{name:24} {verdict:6} {:42} {:42} {:42} {found:8.1} ms {their_seconds:7.2} s {}",
        format!("{:?}", solution.worth),
        format!("{:?}", solution.bound),
        format!("{theirs:?}"),
        if row.is_proven { "proven" } else { "" }
    );
    row
}

/// How much more of the second figure one has than the other, where they have as much of the first.
fn second(one: &[i128], other: &[i128]) -> f64 {
    match (one, other) {
        ([first, ours, ..], [same, theirs, ..]) if first == same && *theirs != 0 => *ours as f64 / *theirs as f64 - 1.0,
        _ => 0.0,
    }
}

/// One line for the demand: of shop and large, how many whole tuples are as good, and the worst second figure.
fn demand(rows: &[&Row]) {
    let whole = rows.iter().filter(|row| row.verdict != "worse").count();
    let worst = rows.iter().map(|row| &row.second).max_by(|a, b| a.1.total_cmp(&b.1));
    let (name, more) = worst.cloned().unwrap_or_default();
    println!("shop and large: whole tuple {whole} of {}, worst second figure {:+.2} % ({name})", rows.len(), more * 100.0);
}

fn median(mut all: Vec<f64>) -> f64 {
    all.sort_by(f64::total_cmp);
    all.get(all.len() / 2).copied().unwrap_or(0.0)
}

fn main() {
    let mut words = std::env::args().skip(1).filter(|word| word != "--bench");
    let millis = words.next().and_then(|word| word.parse().ok()).unwrap_or(300);
    let part = words.next().unwrap_or_default();
    let known: serde_json::Value = serde_json::from_str(include_str!("../../tests/yield/reference.json")).expect("the reference");
    println!(
        "{:24} {:6} {:42} {:42} {:42} {:>11} {:>9}",
        "instance", "ours", "our figures", "our bound", "theirs", "found in", "theirs in"
    );
    let mut groups: BTreeMap<(&str, String), Vec<Row>> = BTreeMap::new();
    for (name, known) in known["results"].as_object().expect("results").iter().filter(|(name, _)| name.contains(&part)) {
        let row = row(name, known, Duration::from_millis(millis));
        groups.entry((row.kind, row.class.clone())).or_default().push(row);
    }
    demand(&groups.iter().filter(|((_, class), _)| class != "small").flat_map(|(_, rows)| rows).collect::<Vec<_>>());
    for ((kind, class), rows) in groups {
        let count = |is: &dyn Fn(&Row) -> bool| rows.iter().filter(|row| is(row)).count();
        let good = |row: &&Row| row.verdict != "worse";
        let slow: Vec<f64> =
            rows.iter().filter(good).filter(|r| 0.1 <= r.their_seconds).map(|r| r.their_seconds * 1e3 / r.millis.max(0.01)).collect();
        let quick: Vec<f64> = rows.iter().filter(good).filter(|r| r.their_seconds < 0.1).map(|r| r.millis).collect();
        println!(
            "{kind} {class}: {} instances, first figure as good {}, all as good {}, proven {} (theirs {}), as far as theirs {}, and where theirs are exact {} of {}, median {:.0} times as fast where theirs took 0.1 s, {:.1} ms elsewhere",
            rows.len(),
            count(&|row| row.is_first_equal),
            count(&|row| row.verdict != "worse"),
            count(&|row| row.is_proven),
            count(&|row| row.is_proven_there),
            count(&|row| row.is_as_far),
            count(&|row| row.is_exact_there && row.is_as_far),
            count(&|row| row.is_exact_there),
            median(slow),
            median(quick),
        );
    }
}
