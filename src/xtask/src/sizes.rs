//! What a visitor's browser has to load, file by file.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use flate2::Compression;
use flate2::write::GzEncoder;

use crate::one_file;

/// All files together as brotli, in bytes: some seconds on a slow telephone connection.
const GOAL: usize = 250_000;
/// What is refused. It stands above the goal since the page finds the whole heat loss of a house,
/// brings 1,020 climate stations along, solves and draws every piping arrangement with its plant, chooses
/// all pieces together with proof, compares, suggests and works out remedies, and leads through the
/// installation; it follows the page down, and up only for what is worth it.
const LIMIT: usize = 560_000;

struct Size {
    name: String,
    raw: usize,
    gzip: usize,
    brotli: usize,
}

pub(crate) struct Sizes {
    files: Vec<Size>,
}

pub(crate) fn measure(dist: &Path) -> Result<Sizes> {
    let files = files_in(dist)?
        .into_iter()
        // The same once more in one file, which nobody loads with the page.
        .filter(|name| name != one_file::NAME)
        .map(|name| {
            let bytes =
                fs::read(dist.join(&name)).with_context(|| format!("cannot read {name}"))?;
            Ok(Size { raw: bytes.len(), gzip: gzip(&bytes)?, brotli: brotli(&bytes)?, name })
        })
        .collect::<Result<_>>()?;
    Ok(Sizes { files })
}

impl Sizes {
    pub(crate) fn print(&self) {
        println!("{:>10} {:>10} {:>10}  bytes", "raw", "gzip", "brotli");
        for file in &self.files {
            println!("{:>10} {:>10} {:>10}  {}", file.raw, file.gzip, file.brotli, file.name);
        }
        let sum = |size: fn(&Size) -> usize| self.files.iter().map(size).sum::<usize>();
        let (raw, gzip) = (sum(|file| file.raw), sum(|file| file.gzip));
        println!("{raw:>10} {gzip:>10} {:>10}  total", self.brotli());
    }

    pub(crate) fn hold_limit(&self) -> Result<()> {
        let total = self.brotli();
        println!(
            "{total} bytes as brotli: {:.0} % of the goal of {GOAL}, {:.0} % of the limit of {LIMIT}",
            100.0 * total as f64 / GOAL as f64,
            100.0 * total as f64 / LIMIT as f64
        );
        ensure!(
            total < LIMIT,
            "the page has grown to {total} bytes as brotli; the limit is {LIMIT}"
        );
        Ok(())
    }

    fn brotli(&self) -> usize {
        self.files.iter().map(|file| file.brotli).sum()
    }
}

/// The files under `folder` by their paths relative to it, with forward slashes, in order.
pub(crate) fn files_in(folder: &Path) -> Result<Vec<String>> {
    let mut names = Vec::new();
    collect(folder, "", &mut names)?;
    names.sort();
    Ok(names)
}

fn collect(folder: &Path, prefix: &str, names: &mut Vec<String>) -> Result<()> {
    let entries =
        fs::read_dir(folder).with_context(|| format!("cannot list {}", folder.display()))?;
    for entry in entries {
        let entry = entry?;
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), &format!("{name}/"), names)?;
        } else {
            names.push(name);
        }
    }
    Ok(())
}

fn gzip(bytes: &[u8]) -> Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?.len())
}

fn brotli(bytes: &[u8]) -> Result<usize> {
    let best = brotli::enc::BrotliEncoderParams { quality: 11, lgwin: 22, ..Default::default() };
    let mut out = Vec::new();
    brotli::BrotliCompress(&mut &bytes[..], &mut out, &best)?;
    Ok(out.len())
}
