//! Writes `web/src/app/example.txt`, the book that the app shows as its example, as the stories tell it now.
use std::{fs, io, path::Path};

fn main() -> io::Result<()> {
    fs::write(Path::new(env!("CARGO_MANIFEST_DIR")).join("src/app/example.txt"), fivebar_web::app::example::written())
}
