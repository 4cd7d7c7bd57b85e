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

/// What the checker says of the plan that so many steps find.
fn said(instance: &Path, steps: u64, solution: &Path) -> (bool, String) {
    let read = envelope::read(&std::fs::read_to_string(instance).unwrap()).unwrap();
    let mut goes_on = |_: Progress<'_>| true;
    std::fs::write(solution, read.solve(&mut Patience::new(Some(steps), &mut goes_on), 1).text).unwrap();
    let (checker, known) = (folder().join("check.py"), folder().join("reference.json"));
    let output = python(&[&checker, instance, solution, Path::new("--known"), &known]);
    let words = [output.stdout, output.stderr].concat();
    (output.status.success(), String::from_utf8_lossy(&words).into_owned())
}

/// At once, and after a while; the bound is held against what is known (`--known`).
#[test]
fn the_checker_of_others_accepts_every_plan() {
    let written = tempfile::tempdir().unwrap();
    let solution = written.path().join("solution.json");
    let mut many = 0;
    for entry in std::fs::read_dir(folder().join("instances")).unwrap() {
        let instance = entry.unwrap().path();
        for steps in [1, 2_000] {
            let (accepted, words) = said(&instance, steps, &solution);
            assert!(accepted && words.starts_with("ok ("), "{} after {steps} steps: {words}", instance.display());
        }
        many += 1;
    }
    assert_eq!(many, 76);
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
