//! Reads a copy and prints every haul's and job's reckoning: `cargo run -p fivebar-core --release --example reckon -- COPY.json`.

mod reckoning;

use fivebar_core::ledger::Book;
use fivebar_core::ledger::line::document;
use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(file) = std::env::args().nth(1) else {
        eprintln!("which copy? a file the app exported");
        return ExitCode::from(2);
    };
    let text = match std::fs::read_to_string(&file) {
        Ok(text) => text,
        Err(error) => {
            eprintln!("{file}: {error}");
            return ExitCode::from(2);
        }
    };
    match document::read(&text) {
        Ok(copy) => {
            let book = Book::of_lines(copy.lines.iter().map(|line| &**line));
            println!("{:#}", reckoning::reckoning(&book));
            ExitCode::SUCCESS
        }
        Err(trouble) => {
            eprintln!("{file}: {trouble:?}");
            ExitCode::FAILURE
        }
    }
}
