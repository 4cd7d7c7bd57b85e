//! What may stand behind `cargo run --`.
use std::path::PathBuf;

/// What `--help` prints, and what is printed when the words are not understood.
pub const USE: &str = "\
cargo run                     build the app and serve it on http://localhost:8017
cargo run -- --port N         the same on another port
cargo run -- --lan            listen for other devices too, to look at the app on a phone
cargo run -- --out FOLDER     write the static files only, for any https host, at any path";

/// The port the app is served on when none is named.
pub const PORT: u16 = 8017;

/// What the developer asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wish {
    /// Print how it is used.
    Help,
    /// Build and serve; `lan` lets other devices in.
    Serve { port: u16, lan: bool },
    /// Write the static files into a folder and end.
    Write { folder: PathBuf },
}

/// Reads the words behind `cargo run --`.
///
/// # Errors
/// The word that was not understood, and how the command is used.
pub fn read(words: impl IntoIterator<Item = String>) -> Result<Wish, String> {
    let (mut port, mut lan, mut folder) = (PORT, false, None);
    let mut words = words.into_iter();
    while let Some(word) = words.next() {
        match word.as_str() {
            "--help" | "-h" => return Ok(Wish::Help),
            "--lan" => lan = true,
            "--port" => port = words.next().and_then(|p| p.parse().ok()).ok_or_else(|| wrong("--port needs a number up to 65535"))?,
            "--out" => folder = Some(words.next().map(PathBuf::from).ok_or_else(|| wrong("--out needs a folder"))?),
            other => return Err(wrong(&format!("`{other}` is not known"))),
        }
    }
    Ok(match folder {
        Some(folder) => Wish::Write { folder },
        None => Wish::Serve { port, lan },
    })
}

fn wrong(what: &str) -> String {
    format!("{what}. It is used so:\n\n{USE}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(words: &str) -> Result<Wish, String> {
        read(words.split_whitespace().map(String::from))
    }

    #[test]
    fn no_words_serve_on_the_usual_port_for_this_machine_alone() {
        assert_eq!(said(""), Ok(Wish::Serve { port: 8017, lan: false }));
    }

    #[test]
    fn flags_are_read_in_any_order() {
        assert_eq!(said("--lan --port 9000"), Ok(Wish::Serve { port: 9000, lan: true }));
        assert_eq!(said("--port 9000 --lan"), Ok(Wish::Serve { port: 9000, lan: true }));
        assert_eq!(said("--out dist"), Ok(Wish::Write { folder: "dist".into() }));
        assert_eq!(said("--port x --help").unwrap_err().lines().next(), Some("--port needs a number up to 65535. It is used so:"));
        assert_eq!(said("--help"), Ok(Wish::Help));
    }

    #[test]
    fn a_word_not_known_is_named() {
        assert!(said("--prot 1").unwrap_err().starts_with("`--prot` is not known. It is used so:\n\ncargo run "));
        assert!(said("--out").unwrap_err().starts_with("--out needs a folder"));
    }
}
