//! Plans what can be made and prints the solution: `cargo run -p fivebar-core --release --example plan -- INSTANCE.json`
//! with `--ms N` (how long, 300), or `--steps N` for an answer that is the same each time, and `--seed S` (1).

mod envelope;

use fivebar_core::plan::patience::{Patience, Progress};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How long it may take, and which lots are drawn.
#[derive(Debug, PartialEq, Eq)]
struct Asked {
    file: String,
    time: Option<Duration>,
    steps: Option<u64>,
    seed: u64,
}

fn asked(mut words: impl Iterator<Item = String>) -> Result<Asked, String> {
    let mut asked = Asked { file: String::new(), time: Some(Duration::from_millis(300)), steps: None, seed: 1 };
    while let Some(word) = words.next() {
        let mut number = || words.next().and_then(|n| n.parse::<u64>().ok()).ok_or(format!("{word} takes a whole number"));
        match &*word {
            "--ms" => asked.time = Some(Duration::from_millis(number()?)),
            "--steps" => (asked.steps, asked.time) = (Some(number()?), None),
            "--seed" => asked.seed = number()?,
            _ => asked.file = word,
        }
    }
    if asked.file.is_empty() { Err("which instance? a file in the shared format".into()) } else { Ok(asked) }
}

fn run(asked: &Asked) -> Result<String, String> {
    let began = Instant::now();
    let text = std::fs::read_to_string(&asked.file).map_err(|error| error.to_string())?;
    let instance = envelope::read(&text)?;
    let mut goes_on = |_: Progress<'_>| asked.time.is_none_or(|time| began.elapsed() < time);
    let mut patience = Patience::new(asked.steps, &mut goes_on);
    Ok(instance.solve(&mut patience, asked.seed).text)
}

fn main() -> ExitCode {
    let asked = match asked(std::env::args().skip(1)) {
        Ok(asked) => asked,
        Err(trouble) => {
            eprintln!("{trouble}");
            return ExitCode::from(2);
        }
    };
    match run(&asked) {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(trouble) => {
            eprintln!("{}: {trouble}", asked.file);
            ExitCode::FAILURE
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(words: &[&str]) -> Result<Asked, String> {
        asked(words.iter().map(|word| (*word).to_owned()))
    }

    fn instance(name: &str) -> String {
        format!("{}/../tests/yield/instances/{name}.json", env!("CARGO_MANIFEST_DIR"))
    }

    #[test]
    fn what_is_asked_is_read_in_any_order() {
        let usual = Asked { file: "a.json".into(), time: Some(Duration::from_millis(300)), steps: None, seed: 1 };
        assert_eq!(of(&["a.json"]), Ok(usual));
        let timed = Asked { file: "a.json".into(), time: Some(Duration::from_millis(50)), steps: None, seed: 7 };
        assert_eq!(of(&["--ms", "50", "a.json", "--seed", "7"]), Ok(timed));
        let counted = Asked { file: "a.json".into(), time: None, steps: Some(9), seed: 1 };
        assert_eq!(of(&["a.json", "--steps", "9"]), Ok(counted));
    }

    #[test]
    fn what_is_wrong_is_named() {
        assert_eq!(of(&[]), Err("which instance? a file in the shared format".into()));
        for words in [&["a.json", "--ms"][..], &["a.json", "--ms", "soon"], &["--ms", "-1", "a.json"]] {
            assert_eq!(of(words), Err("--ms takes a whole number".into()));
        }
        assert_eq!(of(&["a.json", "--seed", "1.5"]), Err("--seed takes a whole number".into()));
        assert!(run(&of(&[&instance("no-such-instance")]).unwrap()).unwrap_err().contains("No such file"));
        // No JSON at all.
        let said = run(&of(&[&format!("{}/Cargo.toml", env!("CARGO_MANIFEST_DIR"))]).unwrap()).unwrap_err();
        assert!(said.contains("the instance is no record"), "{said}");
    }

    /// The same steps and seed give the same answer, to the byte; a short time gives one, too.
    #[test]
    fn steps_and_seed_are_taken() {
        let file = instance("sticks-shop-several");
        let run = |words: &[&str]| run(&of(&[words, &[&file]].concat()).unwrap()).unwrap();
        let short = run(&["--steps", "40"]);
        assert_eq!(short, run(&["--steps", "40", "--seed", "1"]));
        assert_ne!(short, run(&["--steps", "4000"]));
        assert!(run(&["--ms", "1", "--seed", "5"]).contains("\"problem\":\"sticks\""));
    }
}
