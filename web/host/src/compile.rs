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
    let _ = std::fs::remove_dir_all(&out);
    glue(&wasm, &out)?;
    Ok(out)
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
