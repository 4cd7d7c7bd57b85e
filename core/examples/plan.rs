//! Plans what can be made and prints the solution: `cargo run -p fivebar-core --release --example plan -- INSTANCE.json`
//! with `--ms N` (how long, 300), or `--steps N` for an answer that is the same each time, and `--seed S` (1).

mod envelope;

use fivebar_core::plan::patience::{Patience, Progress};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How long it may take, and which lots are drawn.
struct Asked {
    file: String,
    time: Option<Duration>,
    steps: Option<u64>,
    seed: u64,
}

fn asked() -> Result<Asked, String> {
    let mut asked = Asked { file: String::new(), time: Some(Duration::from_millis(300)), steps: None, seed: 1 };
    let mut words = std::env::args().skip(1);
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
    let asked = match asked() {
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
