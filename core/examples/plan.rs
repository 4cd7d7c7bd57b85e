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

    /// What is asked of an instance with some of its figures put otherwise, and the reason it prints for what it does not make.
    fn why(name: &str, other: &[(&str, &str)]) -> serde_json::Value {
        let mut text = std::fs::read_to_string(instance(name)).unwrap();
        let mut told: serde_json::Value = serde_json::from_str(&text).unwrap();
        for (path, value) in other {
            *told.pointer_mut(path).unwrap() = serde_json::from_str(value).unwrap();
        }
        text = told.to_string();
        let mut goes_on = |_: Progress<'_>| true;
        let said = envelope::read(&text).unwrap().solve(&mut Patience::new(Some(2_000), &mut goes_on), 1).text;
        serde_json::from_str::<serde_json::Value>(&said).unwrap()["why"].clone()
    }

    /// The figure of the instance that decides, and what it asks and meets.
    #[test]
    fn what_can_not_be_made_says_why() {
        let check = |name: &str, other: &[(&str, &str)], said: &str| {
            assert_eq!(why(name, other), serde_json::from_str::<serde_json::Value>(said).unwrap(), "{name} {other:?}");
        };
        let no_pile: &[(&str, &str)] = &[("/piles", "[]")];
        // Two strips of 425 and three of 200, squared.
        check("rows-small-none", &[], r#"{"reason":"length","limit":1510000,"met":1450000}"#);
        check("rows-small-none", no_pile, r#"{"reason":"piles","limit":1,"met":0}"#);
        check("rows-small-equal", &[], r#"{"reason":"stagger","limit":60000}"#);
        check("rows-small-equal", &[("/machine_min", "420001")], r#"{"reason":"machine_min","pile":"A","limit":420001,"met":415000}"#);
        check("rows-small-equal", &[("/min_end", "411000")], r#"{"reason":"min_end","pile":"A","limit":411000,"met":410000}"#);
        check("rows-small-equal", &[("/min_piece", "411000")], r#"{"reason":"min_piece","pile":"A","limit":411000,"met":410000}"#);
        check("rows-small-equal", &[("/panel/rows", "1")], "null");
        // A leg of 29 and 2 over; the thicker pile is 30.
        check("parts-small-none", &[], r#"{"reason":"thickness","part":"leg","pile":"B","limit":31000,"met":30000}"#);
        let thick = ("/piles/1/thickness", "31000");
        check(
            "parts-small-none",
            &[thick, ("/rip_min", "411000")],
            r#"{"reason":"rip_min","part":"leg","pile":"B","limit":411000,"met":410000}"#,
        );
        check(
            "parts-small-none",
            &[thick, ("/allow/width", "3000")],
            r#"{"reason":"width","part":"leg","pile":"B","limit":43000,"met":42000}"#,
        );
        check("parts-small-short", &[], r#"{"reason":"count","part":"leg","limit":8}"#);
        check("sticks-small-none", &[], r#"{"reason":"length","part":"post","pile":"A","limit":650000,"met":630000}"#);
        check(
            "sticks-small-none",
            &[("/machine_min", "640001")],
            r#"{"reason":"machine_min","part":"post","pile":"A","limit":640001,"met":640000}"#,
        );
        check("sticks-small-none", no_pile, r#"{"reason":"piles","part":"post","limit":1,"met":0}"#);
        check("field-small-none", &[], r#"{"reason":"machine_min","pile":"B","limit":60000,"met":59000}"#);
        check("field-small-none", no_pile, r#"{"reason":"piles","limit":1,"met":0}"#);
        let large = ("/machine_min", "0");
        check("field-small-none", &[large, ("/allow/width", "40000")], r#"{"reason":"allow","pile":"B","limit":1,"met":0}"#);
        // Tiles of 45 long: six are 270, seven 315.
        check("field-small-none", &[large], r#"{"reason":"width","limit":300000,"met":270000}"#);
        check(
            "field-small-none",
            &[large, ("/piles/0/count", "5"), ("/piles/1/count", "0")],
            r#"{"reason":"count","pile":"A","limit":56,"met":5}"#,
        );
    }
}
