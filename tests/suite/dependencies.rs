//! What the engine may lean on, and what it may not touch.

use std::fs;
use std::path::{Path, PathBuf};

fn engine() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../src/engine")
}

/// The names under a heading of a manifest.
fn names_under<'a>(manifest: &'a str, heading: &str) -> Vec<&'a str> {
    let lines = manifest.lines().skip_while(|line| line.trim() != heading).skip(1);
    lines
        .take_while(|line| !line.trim_start().starts_with('['))
        .filter_map(|line| line.split(['=', '.']).next())
        .map(str::trim)
        .filter(|name| !name.is_empty() && !name.starts_with('#'))
        .collect()
}

#[test]
fn the_engine_depends_on_serde_and_libm_only() {
    let manifest = fs::read_to_string(engine().join("Cargo.toml")).expect("the manifest");
    assert_eq!(names_under(&manifest, "[dependencies]"), ["serde", "libm"]);
    // Nor by another way: for one target, to build, or only to test.
    let others = manifest.lines().filter(|line| {
        line.starts_with('[') && line.contains("dependencies") && line.trim() != "[dependencies]"
    });
    assert_eq!(others.collect::<Vec<_>>(), Vec::<&str>::new());
}

fn sources(folder: &Path, out: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            sources(&path, out);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            out.push(path);
        }
    }
}

/// No clock, no file, no network, no output, no chance, no order of a hash, no unwinding by will.
const FORBIDDEN: &[&str] = &[
    "std::time",
    "std::fs",
    "std::io",
    "std::net",
    "std::env",
    "std::process",
    "std::thread",
    "println!",
    "print!",
    "dbg!",
    "rand::",
    "HashMap",
    "HashSet",
    "panic!",
    "todo!",
    "unimplemented!",
    "unsafe",
];

/// The part of a file that is built into the page: without its tests and comments.
fn built(text: &str) -> String {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    let lines = code.lines().map(|line| line.split("//").next().unwrap_or_default());
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn the_engine_reads_no_clock_no_file_and_no_chance() {
    let mut files = Vec::new();
    sources(&engine().join("src"), &mut files);
    assert!(files.len() > 30, "only {} files found", files.len());
    for file in files {
        let code = built(&fs::read_to_string(&file).expect("a source file"));
        for word in FORBIDDEN {
            assert!(!code.contains(word), "{} uses {word}", file.display());
        }
    }
}

/// The guard itself would notice.
#[test]
fn the_guard_reads_manifests_and_sources_as_they_are() {
    let manifest = "[dependencies]\n# why\nserde = { workspace = true }\nrand.workspace = true\n\n[lints]\nx = 1\n";
    assert_eq!(names_under(manifest, "[dependencies]"), ["serde", "rand"]);
    let code = "//! std::fs in words\nfn f() { std::time::now() }\n#[cfg(test)]\nprintln!()";
    let built = built(code);
    assert!(built.contains("std::time") && !built.contains("std::fs") && !built.contains("print"));
}
