//! From the Rust of the face to wasm and the script that loads it.
use crate::toolchain::Toolchain;
use std::path::{Path, PathBuf};

/// Builds the face in the profile `app` and writes wasm and glue into a folder under `target`; returns that folder.
///
/// # Errors
/// A sentence that says which step failed.
pub fn face(root: &Path) -> Result<PathBuf, String> {
    let wasm = wasm(Toolchain::pick()?, root)?;
    let out = root.join("target/glue");
    let from = [Some(wasm.clone()), std::env::current_exe().ok()];
    if !["fivebar.js", "fivebar_bg.wasm"].iter().all(|name| is_newer(&out.join(name), &from)) {
        let _ = std::fs::remove_dir_all(&out);
        glue(&wasm, &out)?;
    }
    Ok(out)
}

/// Whether what was made is newer than all it was made from; what can't be told is not.
fn is_newer(made: &Path, from: &[Option<PathBuf>]) -> bool {
    let at = |path: &Path| std::fs::metadata(path).and_then(|about| about.modified()).ok();
    let Some(made) = at(made) else { return false };
    from.iter().all(|path| path.as_deref().and_then(at).is_some_and(|from| from < made))
}

fn wasm(toolchain: Toolchain, root: &Path) -> Result<PathBuf, String> {
    let done = toolchain
        .cargo("build", root)
        .args(["-p", "fivebar-web", "--lib", "--profile", "app"])
        .status()
        .map_err(|e| format!("cargo did not start: {e}"))?;
    if !done.success() {
        return Err("the wasm build failed; what is above says why".into());
    }
    Ok(root.join("target").join(toolchain.folder()).join("wasm32-unknown-unknown/app/fivebar_web.wasm"))
}

fn glue(wasm: &Path, out: &Path) -> Result<(), String> {
    let mut bindgen = wasm_bindgen_cli_support::Bindgen::new();
    bindgen.input_path(wasm).out_name("fivebar").typescript(false).remove_name_section(true).remove_producers_section(true);
    bindgen.web(true).map_err(|e| e.to_string())?;
    bindgen.generate(out).map_err(|e| format!("writing the glue failed: {e:#}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::{Duration, SystemTime};

    #[test]
    fn the_glue_is_written_anew_where_anything_it_comes_from_changed() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = |name: &str, seconds: u64| {
            let path = folder.path().join(name);
            let made = std::fs::File::create(&path).expect("a file");
            made.set_modified(SystemTime::UNIX_EPOCH + Duration::from_secs(seconds)).expect("a time");
            path
        };
        let (old, new, newer) = (file("old", 10), file("new", 20), file("newer", 30));
        for (made, from, fresh) in [
            (&new, vec![Some(old.clone())], true),
            (&new, vec![Some(old.clone()), Some(newer)], false),
            (&new, vec![Some(old.clone()), None], false),
            (&new, vec![Some(new.clone())], false),
            (&folder.path().join("none"), vec![Some(old)], false),
        ] {
            assert_eq!(is_newer(made, &from), fresh, "{from:?}");
        }
    }
}
