//! Every plan of ours, as written in the shared format, goes through the checker of those who stated the problems: `tests/yield/check.py`.

#[path = "../../core/examples/envelope/mod.rs"]
mod envelope;

use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_host::debian;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn folder() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/yield"))
}

/// A Python that runs, installed where we may.
fn python(arguments: &[&Path]) -> Output {
    let run = || Command::new("python3").args(arguments).output();
    run()
        .or_else(|_| {
            debian::install(&["python3"], "the checker of plans needs Python").map(|()| run()).unwrap_or_else(|by_hand| panic!("{by_hand}"))
        })
        .unwrap()
}

/// When a planner is stopped: after so many steps, or the so manieth time it asks whether to go on, as a slice on the page does whose time is up.
#[derive(Clone, Copy, Debug)]
enum Stop {
    Steps(u64),
    Asked(u64),
}

/// Writes the plan that is found until then.
fn solved(instance: &Path, stop: Stop, solution: &Path) {
    let read = envelope::read(&std::fs::read_to_string(instance).unwrap()).unwrap();
    let mut asked = 0_u64;
    let (steps, most) = match stop {
        Stop::Steps(steps) => (Some(steps), u64::MAX),
        Stop::Asked(times) => (None, times),
    };
    let mut goes_on = |_: Progress<'_>| {
        asked += 1;
        asked < most
    };
    std::fs::write(solution, read.solve(&mut Patience::new(steps, &mut goes_on), 1).text).unwrap();
}

/// What the checker says of the plan that so many steps find.
fn said(instance: &Path, steps: u64, solution: &Path) -> (bool, String) {
    solved(instance, Stop::Steps(steps), solution);
    let (checker, known) = (folder().join("check.py"), folder().join("reference.json"));
    let output = python(&[&checker, instance, solution, Path::new("--known"), &known]);
    let words = [output.stdout, output.stderr].concat();
    (output.status.success(), String::from_utf8_lossy(&words).into_owned())
}

/// One Python for many plans: a line for each pair of instance and solution.
const MANY: &str = "import sys; sys.path.insert(0, sys.argv[1]); import check
for ins, sol in zip(sys.argv[3::2], sys.argv[4::2]): check.main(['', ins, sol, '--known', sys.argv[2]])";

/// The checker accepts every plan of instances whose names are so, at each of these stops; the bound is held against what is known (`--known`).
fn accepts(name: impl Fn(&str) -> bool, stops: impl Fn(&str) -> Vec<Stop>) -> usize {
    let written = tempfile::tempdir().unwrap();
    let mut all: Vec<PathBuf> = std::fs::read_dir(folder().join("instances")).unwrap().map(|entry| entry.unwrap().path()).collect();
    all.sort();
    all.retain(|path| name(&path.file_stem().unwrap().to_string_lossy()));
    let (mut pairs, mut of) = (vec![], vec![]);
    for instance in &all {
        for stop in stops(&instance.file_stem().unwrap().to_string_lossy()) {
            let solution = written.path().join(format!("{}.json", of.len()));
            solved(instance, stop, &solution);
            of.push(format!("{} stopped at {stop:?}", instance.display()));
            pairs.extend([instance.clone(), solution]);
        }
    }
    let (folder, known) = (folder(), folder().join("reference.json"));
    let arguments = [Path::new("-c"), Path::new(MANY), &folder, &known].into_iter().chain(pairs.iter().map(PathBuf::as_path));
    let output = python(&arguments.collect::<Vec<_>>());
    let (words, trouble) = (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert_eq!(words.lines().count(), of.len(), "{trouble}");
    let refused: Vec<_> = of.iter().zip(words.lines()).filter(|(_, words)| !words.starts_with("ok (")).collect();
    assert!(refused.is_empty(), "{refused:?}");
    all.len()
}

/// At once, in the first slices, and after a while.
#[test]
fn the_checker_of_others_accepts_every_plan_however_early_it_is_stopped() {
    use Stop::{Asked, Steps};
    let stops = |_: &str| vec![Steps(1), Asked(1), Asked(2), Asked(4), Asked(9), Steps(700), Steps(2_000)];
    assert_eq!(accepts(|_| true, stops), 76);
}

/// In full: so many steps as `published_yield` holds against the best known, of the shop's size.
#[test]
fn the_checker_of_others_accepts_every_plan_in_full() {
    let steps = |name: &str| match name.split('-').next() {
        Some("rows") => 80_000,
        Some("parts") => 12_000,
        Some("sticks") => 40_000,
        _ => 8_000,
    };
    assert_eq!(accepts(|name| name.contains("-shop-"), |name| vec![Stop::Steps(steps(name))]), 42);
}

/// A plan that says more of itself than is true is refused, so that being accepted means something.
#[test]
fn the_checker_of_others_refuses_a_false_claim() {
    let written = tempfile::tempdir().unwrap();
    let solution = written.path().join("solution.json");
    let instance = folder().join("instances/sticks-small-exact.json");
    assert!(said(&instance, 2_000, &solution).0);
    let mut text: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(&solution).unwrap()).unwrap();
    let sets = text["claims"]["objective"][0].as_i64().unwrap();
    text["claims"]["objective"][0] = (sets + 1).into();
    std::fs::write(&solution, text.to_string()).unwrap();
    let refused = python(&[&folder().join("check.py"), &instance, &solution]);
    assert_eq!(refused.status.code(), Some(1), "{}", String::from_utf8_lossy(&refused.stdout));
}
