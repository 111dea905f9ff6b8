//! A small server for the finished page, on this machine only.

use std::fs;
use std::io::ErrorKind;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Component, Path, PathBuf};
use std::thread;

use anyhow::{Context, Result, anyhow, bail, ensure};
use tiny_http::{Header, Method, Request, Response, Server};

use crate::{build, project};

/// A browser asks for several files at once.
const WORKERS: usize = 8;

pub(crate) enum Page {
    BuildFirst,
    AsBuilt,
}

pub(crate) fn serve(port: u16, page: Page) -> Result<()> {
    // The port comes first: a port in use should not be found out after minutes of building.
    let listener = listen(port)?;
    let dist = match page {
        Page::BuildFirst => build::build()?,
        Page::AsBuilt => project::dist(),
    };
    ensure!(
        dist.join("index.html").is_file(),
        "target/dist holds no page; build it with `cargo xtask dist`"
    );
    let address = listener.local_addr().context("the port has no address")?;
    let server = Server::from_listener(listener, None)
        .map_err(|error| anyhow!("cannot serve on {address}: {error}"))?;
    println!("http://{address}/");
    thread::scope(|scope| {
        for _ in 0..WORKERS {
            scope.spawn(|| {
                for request in server.incoming_requests() {
                    answer(&dist, request);
                }
            });
        }
    });
    Ok(())
}

fn listen(port: u16) -> Result<TcpListener> {
    match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
        Ok(listener) => Ok(listener),
        Err(error) if error.kind() == ErrorKind::AddrInUse => {
            bail!("port {port} is in use; choose another with --port, or --port 0 for any free one")
        }
        Err(error) => bail!("cannot listen on port {port}: {error}; choose another with --port"),
    }
}

fn answer(dist: &Path, request: Request) {
    let found = match request.method() {
        Method::Get | Method::Head => file_for(dist, request.url()),
        _ => None,
    };
    let read = found.and_then(|file| Some((fs::read(&file).ok()?, content_type(&file))));
    let (status, bytes, kind) = match read {
        Some((bytes, kind)) => (200, bytes, kind),
        None => (404, b"There is no such file.\n".to_vec(), "text/plain; charset=utf-8"),
    };
    let mut response =
        Response::from_data(bytes).with_status_code(status).with_chunked_threshold(usize::MAX);
    // A browser asks anew each time, so that it never mixes files of two builds.
    for (name, value) in [
        ("Content-Type", kind),
        ("Cache-Control", "no-cache"),
        ("X-Content-Type-Options", "nosniff"),
    ] {
        if let Ok(header) = Header::from_bytes(name, value) {
            response.add_header(header);
        }
    }
    // The browser may have gone; that concerns nobody.
    let _ = request.respond(response);
}

/// The file that an address stands for. Only plain names lead down from `dist`; nothing leads up.
fn file_for(dist: &Path, url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?;
    let decoded = percent_decoded(path)?;
    let relative = Path::new(decoded.strip_prefix('/')?);
    let plain = relative.components().all(|part| matches!(part, Component::Normal(_)));
    if !plain || decoded.contains(['\\', '\0']) {
        return None;
    }
    let file = dist.join(relative);
    Some(if file.is_dir() { file.join("index.html") } else { file })
}

fn percent_decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let digit = |byte: u8| char::from(byte).to_digit(16);
            let value = digit(rest.next()?)? * 16 + digit(rest.next()?)?;
            bytes.push(u8::try_from(value).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

fn content_type(file: &Path) -> &'static str {
    match file.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("json") => "application/json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_lead_to_files_below_the_folder_only() {
        let check = |url: &str, expected: Option<&str>| {
            let found = file_for(Path::new("dist"), url);
            assert_eq!(found, expected.map(|path| Path::new("dist").join(path)), "{url}");
        };
        check("/", Some(""));
        check("/finrun.js", Some("finrun.js"));
        check("/finrun.js?v=1", Some("finrun.js"));
        check("/fonts/a%20b.woff2", Some("fonts/a b.woff2"));
        check("/../Cargo.toml", None);
        check("/%2e%2e/Cargo.toml", None);
        check("/fonts/..%2f..%2fCargo.toml", None);
        check("//etc/passwd", None);
        check("/a%5c..%5cb", None);
        check("/%zz", None);
        check("finrun.js", None);
    }
}
