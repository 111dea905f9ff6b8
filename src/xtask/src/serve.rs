//! A small server for the finished page: on this machine only, unless its network is asked for.
//!
//! Each connection has a thread of its own and carries one answer. tiny_http 0.12 was here before:
//! its pool of threads leaves a connection waiting for good when several come at once, as a
//! browser's do.

use std::fs;
use std::io::{self, BufRead, BufReader, ErrorKind, Read, Write};
use std::net::{IpAddr, Ipv4Addr, TcpListener, TcpStream, UdpSocket};
use std::path::{Component, Path, PathBuf};
use std::thread;
use std::time::Duration;

use anyhow::{Context, Result, bail, ensure};

use crate::build;
use crate::packed::Packed;

/// Much more than a browser's request for a file takes.
const LONGEST_REQUEST: u64 = 64 * 1024;

/// A browser opens connections ahead of need and may never use them.
const PATIENCE: Duration = Duration::from_secs(60);

pub(crate) enum Page {
    BuildFirst,
    /// As it stands in a folder.
    AsBuilt(PathBuf),
}

/// Who may load the page.
#[derive(Clone, Copy)]
pub(crate) enum Reach {
    ThisMachine,
    /// Every device of its network.
    Lan,
}

pub(crate) fn serve(port: u16, reach: Reach, page: Page) -> Result<()> {
    // The port comes first: a port in use should not be found out after minutes of building.
    let listener = listen(port, reach)?;
    let dist = match page {
        Page::BuildFirst => build::build()?,
        Page::AsBuilt(dist) => dist,
    };
    ensure!(
        dist.join("index.html").is_file(),
        "{} holds no page; build it with `cargo xtask dist`",
        dist.display()
    );
    let address = listener.local_addr().context("the port has no address")?;
    match reach {
        Reach::ThisMachine => println!("http://{address}/"),
        Reach::Lan => {
            println!("http://{}:{}/", own_address()?, address.port());
            println!(
                "Every device of this network can load it. Browsers install a page, and keep it for \
                 work offline, only from https or from the machine itself: from another device it \
                 works while this command runs. For more, put target/dist on a host with https."
            );
        }
    }
    accept(&listener, &dist)
}

fn accept(listener: &TcpListener, dist: &Path) -> ! {
    let packed = &Packed::default();
    thread::scope(|scope| {
        loop {
            match listener.accept() {
                // The browser may go at any time; that concerns nobody.
                Ok((connection, _)) => {
                    drop(scope.spawn(move || answer(dist, packed, &connection).ok()));
                }
                // Too many files are open, or the like: it passes.
                Err(_) => thread::sleep(Duration::from_millis(10)),
            }
        }
    })
}

/// The address by which others of the network reach this machine.
fn own_address() -> Result<IpAddr> {
    // No packet is sent; the system only says by which way it would go (an address of documentation,
    // RFC 5737).
    let way = || {
        let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0))?;
        socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9))?;
        Ok::<_, io::Error>(socket.local_addr()?.ip())
    };
    way().context("this machine is in no network; leave out --lan")
}

fn listen(port: u16, reach: Reach) -> Result<TcpListener> {
    let address = match reach {
        Reach::ThisMachine => Ipv4Addr::LOCALHOST,
        Reach::Lan => Ipv4Addr::UNSPECIFIED,
    };
    match TcpListener::bind((address, port)) {
        Ok(listener) => Ok(listener),
        Err(error) if error.kind() == ErrorKind::AddrInUse => {
            bail!("port {port} is in use; choose another with --port, or --port 0 for any free one")
        }
        Err(error) => bail!("cannot listen on port {port}: {error}; choose another with --port"),
    }
}

fn answer(dist: &Path, packed: &Packed, mut connection: &TcpStream) -> io::Result<()> {
    connection.set_read_timeout(Some(PATIENCE))?;
    let mut request = BufReader::new(connection.take(LONGEST_REQUEST)).lines();
    let Some(first) = request.next().transpose()? else { return Ok(()) };
    // Read to the end: closing a connection with something unread would cut the answer short.
    let mut brotli = false;
    for line in request {
        let line = line?.to_ascii_lowercase();
        if line.is_empty() {
            break;
        }
        brotli |= line.strip_prefix("accept-encoding:").is_some_and(takes_brotli);
    }
    connection.write_all(&response(dist, &first, brotli.then_some(packed)))
}

/// Whether a list of encodings has brotli in it, and not as refused.
fn takes_brotli(encodings: &str) -> bool {
    encodings.split(',').any(|one| match one.trim().split_once(';') {
        None => one.trim() == "br",
        Some((name, weight)) => name.trim() == "br" && !matches!(weight.trim(), "q=0" | "q=0.0"),
    })
}

/// The whole answer to a request by its first line; `packed` where the browser unpacks.
fn response(dist: &Path, request: &str, packed: Option<&Packed>) -> Vec<u8> {
    const TEXT: &str = "text/plain; charset=utf-8";
    let words: Vec<&str> = request.split(' ').collect();
    let (method, found) = match words[..] {
        [method @ ("GET" | "HEAD"), url, _] => (method, file_for(dist, url)),
        _ => ("", None),
    };
    let read = found.and_then(|file| {
        let kind = content_type(&file);
        let packed = packed.filter(|_| shrinks(kind)).and_then(|packed| packed.file(&file));
        let encoding = if packed.is_some() { "Content-Encoding: br\r\n" } else { "" };
        Some((packed.or_else(|| fs::read(&file).ok())?, kind, encoding))
    });
    let (status, body, kind, encoding) = match read {
        Some((body, kind, encoding)) => ("200 OK", body, kind, encoding),
        None => ("404 Not Found", b"There is no such file.\n".to_vec(), TEXT, ""),
    };
    // A browser asks anew each time, so that it never mixes files of two builds.
    let head = format!(
        "HTTP/1.1 {status}\r\n\
         Content-Type: {kind}\r\n\
         {encoding}\
         Vary: Accept-Encoding\r\n\
         Content-Length: {}\r\n\
         Cache-Control: no-cache\r\n\
         X-Content-Type-Options: nosniff\r\n\
         Connection: close\r\n\r\n",
        body.len()
    );
    let body = if method == "HEAD" { Vec::new() } else { body };
    [head.into_bytes(), body].concat()
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

/// Pictures and fonts are packed already.
fn shrinks(kind: &str) -> bool {
    !matches!(kind, "image/png" | "font/woff2")
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
    fn idle_connections_keep_nobody_waiting() -> Result<()> {
        let listener = listen(0, Reach::ThisMachine)?;
        let address = listener.local_addr()?;
        thread::spawn(move || accept(&listener, Path::new(env!("CARGO_MANIFEST_DIR"))));
        let mut connections =
            (0..20).map(|_| TcpStream::connect(address)).collect::<io::Result<Vec<_>>>()?;
        for connection in connections.iter_mut().rev().take(10) {
            connection.set_read_timeout(Some(Duration::from_secs(10)))?;
            connection.write_all(b"GET /Cargo.toml HTTP/1.1\r\nHost: localhost\r\n\r\n")?;
            let mut response = String::new();
            connection.read_to_string(&mut response)?;
            assert!(response.starts_with("HTTP/1.1 200 OK\r\n"), "{response}");
            assert!(response.contains("\r\n\r\n[package]\n"), "{response}");
        }
        Ok(())
    }

    #[test]
    fn what_shrinks_is_packed_for_browsers_that_unpack() -> Result<()> {
        for (said, takes) in [
            (" gzip, deflate, br, zstd", true),
            (" gzip;q=1.0, br;q=0.5", true),
            (" br", true),
            (" gzip, br;q=0", false),
            (" gzip", false),
            ("", false),
        ] {
            assert_eq!(takes_brotli(said), takes, "{said}");
        }
        let (folder, packed) = (Path::new(env!("CARGO_MANIFEST_DIR")), Packed::default());
        let answer = response(folder, "GET /Cargo.toml HTTP/1.1", Some(&packed));
        let split = answer.windows(4).position(|end| end == b"\r\n\r\n").context("no end")?;
        let head = std::str::from_utf8(&answer[..split])?;
        assert!(head.contains("\r\nContent-Encoding: br\r\n"), "{head}");
        let mut unpacked = Vec::new();
        brotli::BrotliDecompress(&mut &answer[split + 4..], &mut unpacked)?;
        assert_eq!(unpacked, fs::read(folder.join("Cargo.toml"))?);
        let plain = response(folder, "GET /Cargo.toml HTTP/1.1", None);
        assert!(!String::from_utf8(plain)?.contains("Content-Encoding"));
        Ok(())
    }

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
