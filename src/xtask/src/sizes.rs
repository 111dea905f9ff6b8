//! What a visitor's browser has to load, file by file.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use flate2::Compression;
use flate2::write::GzEncoder;

use crate::{one_file, project};

/// All files together as brotli, in bytes: some seconds on a slow telephone connection.
const GOAL: usize = 250_000;
/// What is refused. It stands above the goal since the page finds the whole heat loss of a house,
/// brings 1,020 climate stations along, solves and draws every piping arrangement with its plant, chooses
/// all pieces together with proof, compares, suggests and works out remedies, and leads through the
/// installation, brings the buying list, a report, and a job as a link and as a code, takes the house
/// through the year, weighs changes and readings, and says all of it in two languages; it follows the page
/// down, and up only for what is worth it.
const LIMIT: usize = 820_000;

/// What the page weighed at the last commit that recorded it, in bytes as brotli, on a line of its own.
const RECORD: &str = "src/xtask/size.txt";
/// A page that grows by this much against the record wants a reason.
const ALARM_PERCENT: usize = 5;

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
        hold_record(total, recorded()?)
    }

    /// Writes the size down, to be committed with what it comes from.
    pub(crate) fn record(&self) -> Result<()> {
        let total = self.brotli();
        fs::write(project::root().join(RECORD), format!("{total}\n"))
            .with_context(|| format!("cannot write {RECORD}"))?;
        println!("{total} bytes as brotli are recorded in {RECORD}; say why in the commit");
        Ok(())
    }

    fn brotli(&self) -> usize {
        self.files.iter().map(|file| file.brotli).sum()
    }
}

fn recorded() -> Result<usize> {
    let text = fs::read_to_string(project::root().join(RECORD))
        .with_context(|| format!("cannot read {RECORD}"))?;
    text.trim().parse().with_context(|| format!("{RECORD} holds no number of bytes"))
}

fn hold_record(total: usize, recorded: usize) -> Result<()> {
    let grown = 100.0 * (total as f64 / recorded as f64 - 1.0);
    println!("{grown:+.1} % against the {recorded} bytes recorded in {RECORD}");
    ensure!(
        total * 100 <= recorded * (100 + ALARM_PERCENT),
        "the page has grown by {grown:.1} % since {RECORD} was written; where that is meant, run \
         `cargo xtask dist --record-size` and commit the file with the reason"
    );
    Ok(())
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_that_grows_by_more_than_a_twentieth_is_refused() {
        for (total, passes) in [(90, true), (100, true), (105, true), (106, false), (200, false)] {
            assert_eq!(hold_record(total * 1000, 100_000).is_ok(), passes, "{total}");
        }
        let refused = hold_record(106_000, 100_000).expect_err("it grew").to_string();
        assert!(refused.contains("6.0 %") && refused.contains("--record-size"), "{refused}");
    }

    #[test]
    fn the_committed_record_can_be_read_and_is_below_the_limit() -> Result<()> {
        let recorded = recorded()?;
        assert!((100_000..LIMIT).contains(&recorded), "{recorded}");
        Ok(())
    }
}
