//! Tells a story and prints its reckoning: `cargo run -p fivebar-core --release --example story -- FILE`.
//!
//! A line that is refused or can't be read is told on the error output with its number; the story goes on.

mod reckoning;

use fivebar_core::story::tell;
use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(file) = std::env::args().nth(1) else {
        eprintln!("which story? a file, as docs/STORIES.md says");
        return ExitCode::from(2);
    };
    let text = match std::fs::read_to_string(&file) {
        Ok(text) => text,
        Err(error) => {
            eprintln!("{file}: {error}");
            return ExitCode::from(2);
        }
    };
    let story = tell(&text);
    for (line, why) in &story.refused {
        eprintln!("{file}:{line}: {why}");
    }
    let mut told = reckoning::reckoning(&story.book);
    told["refused"] = story.refused.iter().map(|(line, why)| serde_json::json!({ "line": line, "why": why.to_string() })).collect();
    println!("{told:#}");
    ExitCode::SUCCESS
}
