//! What each file weighs on its way to a phone, and the packed copies that are served.
use flate2::{Compression, write::GzEncoder};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::{Result, Write as _};
use std::path::{Path, PathBuf};

/// The most the first download may weigh, in bytes of brotli.
pub const BUDGET: usize = 300_000;

/// What one file weighs, in bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Weight {
    pub name: String,
    pub raw: usize,
    pub gzip: usize,
    pub brotli: usize,
}

/// Packs every file, or takes what was packed of the same content before from the folder `kept`.
/// With a folder `beside`, the packed copies are put next to the plain files there.
///
/// # Errors
/// A folder that can't be written.
pub fn weigh(files: &BTreeMap<String, Vec<u8>>, kept: &Path, beside: Option<&Path>) -> Result<Vec<Weight>> {
    std::fs::create_dir_all(kept)?;
    let mut weights = vec![];
    for (name, bytes) in files {
        let packed = Packed::of(bytes, kept)?;
        if let Some(folder) = beside {
            std::fs::copy(&packed.brotli, folder.join(format!("{name}.br")))?;
            std::fs::copy(&packed.gzip, folder.join(format!("{name}.gz")))?;
        }
        let size = |path: &Path| std::fs::metadata(path).map(|m| m.len() as usize);
        weights.push(Weight { name: name.clone(), raw: bytes.len(), gzip: size(&packed.gzip)?, brotli: size(&packed.brotli)? });
    }
    Ok(weights)
}

/// The table of weights, and whether the whole keeps to the budget.
pub fn table(weights: &[Weight]) -> String {
    let sum = |of: fn(&Weight) -> usize| weights.iter().map(of).sum::<usize>();
    let (raw, gzip, brotli) = (sum(|w| w.raw), sum(|w| w.gzip), sum(|w| w.brotli));
    let mut said = format!("{:>9} {:>9} {:>9}  file\n", "raw", "gzip", "brotli");
    for w in weights {
        let _ = writeln!(said, "{:>9} {:>9} {:>9}  {}", w.raw, w.gzip, w.brotli, w.name);
    }
    let _ = writeln!(said, "{raw:>9} {gzip:>9} {brotli:>9}  first download");
    let (kb, budget) = (brotli as f64 / 1000.0, BUDGET / 1000);
    let verdict = match BUDGET.checked_sub(brotli) {
        Some(left) => format!("under the budget of {budget} kB by {:.1} kB", left as f64 / 1000.0),
        None => format!("OVER the budget of {budget} kB by {:.1} kB", (brotli - BUDGET) as f64 / 1000.0),
    };
    let _ = writeln!(said, "{kb:.1} kB brotli: {verdict}");
    said
}

/// Where the packed copies of one content lie.
struct Packed {
    brotli: PathBuf,
    gzip: PathBuf,
}

impl Packed {
    fn of(bytes: &[u8], kept: &Path) -> Result<Packed> {
        let hash: String = Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect();
        let packed = Packed { brotli: kept.join(format!("{hash}.br")), gzip: kept.join(format!("{hash}.gz")) };
        if !packed.brotli.exists() {
            put(&packed.brotli, &brotli(bytes)?)?;
        }
        if !packed.gzip.exists() {
            put(&packed.gzip, &gzip(bytes)?)?;
        }
        Ok(packed)
    }
}

/// Under its name only when it is whole: an interrupted run leaves nothing half packed.
fn put(path: &Path, bytes: &[u8]) -> Result<()> {
    let unfinished = path.with_extension(format!("{}-half", std::process::id()));
    std::fs::write(&unfinished, bytes)?;
    std::fs::rename(unfinished, path)
}

fn brotli(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut packed = vec![];
    let best = brotli::enc::BrotliEncoderParams { quality: 11, lgwin: 22, size_hint: bytes.len(), ..Default::default() };
    brotli::BrotliCompress(&mut &*bytes, &mut packed, &best)?;
    Ok(packed)
}

fn gzip(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut packed = GzEncoder::new(vec![], Compression::best());
    packed.write_all(bytes)?;
    packed.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_second_weighing_packs_nothing() {
        let kept = tempfile::tempdir().expect("a folder");
        let files = BTreeMap::from([("a.txt".into(), b"five bars, five bars, five bars".to_vec())]);
        let first = weigh(&files, kept.path(), None).expect("weighed");
        for entry in std::fs::read_dir(kept.path()).expect("a folder") {
            std::fs::write(entry.expect("a file").path(), "x").expect("written");
        }
        let second = weigh(&files, kept.path(), None).expect("weighed");
        assert_eq!(first[0].raw, 31);
        assert_eq!((second[0].brotli, second[0].gzip), (1, 1), "taken from what was kept");
    }

    #[test]
    fn the_table_says_over_or_under() {
        let of = |brotli| vec![Weight { name: "a.wasm".into(), raw: 900_000, gzip: 400_000, brotli }];
        let under = table(&of(250_000));
        assert!(under.ends_with("250.0 kB brotli: under the budget of 300 kB by 50.0 kB\n"), "{under}");
        let over = table(&of(300_001));
        assert!(over.ends_with("300.0 kB brotli: OVER the budget of 300 kB by 0.0 kB\n"), "{over}");
        assert!(under.contains("   900000    400000    250000  a.wasm\n"));
    }
}
