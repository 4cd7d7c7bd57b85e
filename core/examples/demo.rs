//! Prints the copy the app would export for a demo: `cargo run -p fivebar-core --release --example demo -- stands|bench`.

use fivebar_core::ledger::line::document;
use fivebar_core::story::{BENCH, STANDS, tell};
use std::process::ExitCode;

fn main() -> ExitCode {
    let text = match std::env::args().nth(1).as_deref() {
        Some("stands") => STANDS,
        Some("bench") => BENCH,
        _ => {
            eprintln!("which demo? stands or bench");
            return ExitCode::from(2);
        }
    };
    let story = tell(text);
    print!("{}", document::write(&story.book, &story.people, None, story.now));
    ExitCode::SUCCESS
}
