//! The shell: every file of the app, held whole in memory until it is written, with the list its service worker checks.
use base64::{Engine, engine::general_purpose::STANDARD};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::io::{Error, Result};
use std::path::Path;

/// The service worker: the one file that is not in its own list.
pub const WORKER: &str = "sw.js";

const LIST: &str = "/*FILES*/";
const VERSION: &str = "VERSION_OF_BUILD";

/// The files of one version by name, `/` between folders; the service worker still without its list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shell(BTreeMap<String, Vec<u8>>);

impl Shell {
    /// Puts a file in, in place of one of that name.
    pub fn put(&mut self, name: &str, bytes: impl Into<Vec<u8>>) {
        self.0.insert(name.into(), bytes.into());
    }

    /// Takes a file out and returns what it held.
    pub fn take(&mut self, name: &str) -> Option<Vec<u8>> {
        self.0.remove(name)
    }

    /// The bytes of a file.
    pub fn get(&self, name: &str) -> Option<&[u8]> {
        self.0.get(name).map(Vec::as_slice)
    }

    /// Adds every file of a folder and of those in it.
    ///
    /// # Errors
    /// A file that can't be read.
    pub fn add_folder(&mut self, folder: &Path) -> Result<()> {
        for name in names(folder)? {
            let bytes = std::fs::read(folder.join(&name)).map_err(|e| Error::new(e.kind(), format!("{name}: {e}")))?;
            self.0.insert(name, bytes);
        }
        Ok(())
    }

    /// The version of this shell: another one as soon as any byte of any file differs.
    pub fn version(&self) -> String {
        let whole = self
            .0
            .iter()
            .fold(Sha256::new(), |sum, (name, bytes)| sum.chain_update(name).chain_update([0]).chain_update(Sha256::digest(bytes)));
        whole.finalize().iter().take(8).map(|b| format!("{b:02x}")).collect()
    }

    /// The files as they are served: the service worker holds the version and every other file's hash.
    pub fn stamped(&self) -> BTreeMap<String, Vec<u8>> {
        let mut files = self.0.clone();
        if let Some(worker) = files.get_mut(WORKER) {
            let text = String::from_utf8_lossy(worker).replacen(VERSION, &self.version(), 1).replacen(LIST, &self.list(), 1);
            *worker = text.into_bytes();
        }
        files
    }

    fn list(&self) -> String {
        let others = self.0.iter().filter(|(name, _)| *name != WORKER);
        others.map(|(name, bytes)| format!("  [\"./{name}\", \"sha256-{}\"],\n", STANDARD.encode(Sha256::digest(bytes)))).collect()
    }

    /// Writes the stamped files into a folder, which is emptied of an older version first.
    ///
    /// # Errors
    /// The folder holds something that is not Fivebar's, or can't be written.
    pub fn write(&self, out: &Path) -> Result<()> {
        clear(out)?;
        for (name, bytes) in self.stamped() {
            let path = out.join(&name);
            std::fs::create_dir_all(path.parent().unwrap_or(out))?;
            std::fs::write(&path, bytes).map_err(|e| Error::new(e.kind(), format!("{}: {e}", path.display())))?;
        }
        Ok(())
    }
}

/// Removes what an older version's list names, and nothing else.
fn clear(out: &Path) -> Result<()> {
    let Ok(mut inside) = std::fs::read_dir(out) else { return Ok(()) };
    if inside.next().is_none() {
        return Ok(());
    }
    let worker = std::fs::read_to_string(out.join(WORKER)).unwrap_or_default();
    let listed: Vec<&str> = worker.lines().filter_map(|l| l.strip_prefix("  [\"./")?.split_once("\", \"sha256-").map(|(n, _)| n)).collect();
    if listed.is_empty() || listed.iter().any(|n| n.split('/').any(|part| part == "..")) {
        return Err(Error::other(format!("{} holds other files. Name an empty or a new folder", out.display())));
    }
    for name in listed.into_iter().chain([WORKER]) {
        for end in ["", ".br", ".gz"] {
            let _ = std::fs::remove_file(out.join(format!("{name}{end}")));
        }
    }
    Ok(())
}

/// Every file under `folder` by its path from there, in order of name.
fn names(folder: &Path) -> Result<Vec<String>> {
    let mut found = vec![];
    walk(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

fn walk(folder: &Path, before: &str, found: &mut Vec<String>) -> Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let name = format!("{before}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            walk(&entry.path(), &format!("{name}/"), found)?;
        } else {
            found.push(name);
        }
    }
    Ok(())
}

#[cfg(test)]
#[path = "shell_tests.rs"]
mod tests;
