//! Files as brotli, as a host of web pages sends them: each packed once.

use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::time::SystemTime;

/// The packed files, by path, with the time at which the file was written.
#[derive(Default)]
pub(crate) struct Packed(Mutex<HashMap<PathBuf, (SystemTime, Vec<u8>)>>);

/// Of eleven. The highest ones take seconds for the program and save a tenth.
const QUALITY: i32 = 9;

impl Packed {
    /// None where the file cannot be read.
    pub(crate) fn file(&self, path: &Path) -> Option<Vec<u8>> {
        let written = fs::metadata(path).and_then(|data| data.modified()).ok()?;
        // While one request packs, others wait rather than pack the same again.
        let mut files = self.0.lock().ok()?;
        if let Some((time, bytes)) = files.get(path)
            && *time == written
        {
            return Some(bytes.clone());
        }
        let mut bytes = Vec::new();
        let how =
            brotli::enc::BrotliEncoderParams { quality: QUALITY, lgwin: 22, ..Default::default() };
        brotli::BrotliCompress(&mut fs::File::open(path).ok()?, &mut bytes, &how).ok()?;
        files.insert(path.to_path_buf(), (written, bytes.clone()));
        Some(bytes)
    }
}
