//! The whole page as one file that opens from a disk, a stick or a mail, with no server behind it.

use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::write::GzEncoder;
use sha2::{Digest, Sha256};

use crate::sizes;

pub(crate) const NAME: &str = "finrun.html";

/// Writes the file into a finished build, beside what it is made of.
pub(crate) fn write(dist: &Path) -> Result<()> {
    let page = page(dist)?;
    println!("{:>10} bytes in {NAME}, which needs no server", page.len());
    fs::write(dist.join(NAME), page).with_context(|| format!("cannot write {NAME}"))
}

fn page(dist: &Path) -> Result<String> {
    let style = style(dist)?;
    let script = script(dist)?;
    let mut page = without_links(&read(dist, "index.html")?);
    // The same rules as on a server: what stands in this file runs, and nothing else.
    let policy = format!(
        "default-src 'none'; script-src '{}' 'wasm-unsafe-eval'; style-src '{}'; img-src data:; \
         font-src data:; base-uri 'none'; form-action 'none'",
        digest(&script),
        digest(&style)
    );
    let begin = page.find("default-src").context("index.html has no policy")?;
    let end = begin + page[begin..].find('"').context("index.html's policy has no end")?;
    page.replace_range(begin..end, &policy);
    let icon = STANDARD.encode(read(dist, "icon.svg")?);
    let head = format!(
        "<link rel=icon href=\"data:image/svg+xml;base64,{icon}\"><style>{style}</style>\
         <script type=module>{script}</script>"
    );
    replace(&mut page, "<script src=boot.js type=module></script>", &head)?;
    Ok(page)
}

/// The links lead to files that are not there.
fn without_links(page: &str) -> String {
    let mut parts = page.split("<link ");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        out.push_str(part.split_once('>').map_or("", |(_, behind)| behind));
    }
    out
}

/// The style with its fonts.
fn style(dist: &Path) -> Result<String> {
    let mut style = read(dist, "style.css")?;
    for name in sizes::files_in(dist)?.iter().filter(|name| name.starts_with("fonts/")) {
        let font = STANDARD.encode(bytes(dist, name)?);
        let inside = format!("url(data:font/woff2;base64,{font})");
        // A file that no style names is a notice, not a font.
        if style.contains(&format!("url({name})")) {
            replace(&mut style, &format!("url({name})"), &inside)?;
        }
    }
    ensure!(!style.contains("url(fonts/"), "a font is missing");
    Ok(style)
}

/// The program and its start; what both would fetch is packed in.
fn script(dist: &Path) -> Result<String> {
    let mut glue = read(dist, "finrun.js")?.replace("export class ", "class ");
    replace(&mut glue, "export { initSync, __wbg_init as default };", "return __wbg_init;")?;
    let copy = read(dist, "copy.js")?.replace("export async function", "async function");
    let mut boot = read(dist, "boot.js")?;
    replace(
        &mut boot,
        "import { recover } from './copy.js';",
        &format!("const recover = (() => {{\n{copy}\nreturn recover;\n}})();"),
    )?;
    replace(&mut boot, "import('./finrun.js')", "{ default: begin }")?;
    replace(&mut boot, ".finally(keepOffline)", ".finally(() => announce('offline', 'ready'))")?;
    let mut packed = String::new();
    for name in sizes::files_in(dist)? {
        if ["finrun_bg.wasm", "climate.txt"].contains(&name.as_str()) || name.starts_with("demo/") {
            let mut gzip = GzEncoder::new(Vec::new(), Compression::best());
            gzip.write_all(&bytes(dist, &name)?)?;
            packed.push_str(&format!("'{name}': '{}',\n", STANDARD.encode(gzip.finish()?)));
        }
    }
    let script = format!(
        "const PACKED = {{\n{packed}}};\n\
         window.fetch = async (name) => {{\n\
           const bytes = Uint8Array.from(atob(PACKED[name]), (letter) => letter.charCodeAt(0));\n\
           const through = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));\n\
           const type = name.endsWith('.wasm') ? 'application/wasm' : 'text/plain';\n\
           return new Response(through, {{ headers: {{ 'Content-Type': type }} }});\n\
         }};\n\
         const begin = (() => {{\n{glue}\n}})();\n{boot}"
    );
    ensure!(!script.contains("</script"), "the script would end too soon");
    Ok(script)
}

/// Fails where there is nothing to replace: then what is replaced was changed.
fn replace(text: &mut String, old: &str, new: &str) -> Result<()> {
    ensure!(text.matches(old).count() == 1, "{NAME}: {old:?} does not stand there once");
    *text = text.replace(old, new);
    Ok(())
}

fn digest(text: &str) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(text)))
}

fn read(dist: &Path, name: &str) -> Result<String> {
    fs::read_to_string(dist.join(name)).with_context(|| format!("cannot read {name}"))
}

fn bytes(dist: &Path, name: &str) -> Result<Vec<u8>> {
    fs::read(dist.join(name)).with_context(|| format!("cannot read {name}"))
}
