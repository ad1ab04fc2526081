//! A small static server: right types, precompressed files, any sub-path, and a stop that really stops.

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::Duration;

/// What a browser asked for.
pub struct Request {
    /// GET, HEAD, ...
    pub method: String,
    /// The path below the server's prefix, without a leading slash or query.
    pub path: String,
    /// What follows the question mark, or nothing.
    pub query: String,
    /// The encodings that the browser takes, as it wrote them.
    pub accept_encoding: String,
}

/// What the server answers.
pub struct Response {
    /// HTTP status with its reason.
    pub status: &'static str,
    /// Header lines besides length and connection.
    pub headers: Vec<(&'static str, String)>,
    /// The bytes.
    pub body: Vec<u8>,
}

impl Response {
    /// A found text of the given type, never cached.
    pub fn text(content_type: &str, body: impl Into<Vec<u8>>) -> Self {
        let headers = vec![
            ("Content-Type", content_type.to_owned()),
            ("Cache-Control", "no-store".to_owned()),
        ];
        Self { status: "200 OK", headers, body: body.into() }
    }

    fn not_found() -> Self {
        let mut response = Self::text("text/plain; charset=utf-8", "not found\n");
        response.status = "404 Not Found";
        response
    }
}

/// Answers some requests itself, ahead of the files; also sees requests outside the prefix, whose path then starts with a slash.
pub type Special = dyn Fn(&Request) -> Option<Response> + Send + Sync;

/// A running server; stops when dropped.
pub struct Server {
    shared: Arc<Shared>,
    address: SocketAddr,
    accepting: Option<JoinHandle<()>>,
}

struct Shared {
    prefix: String,
    folder: Mutex<PathBuf>,
    special: Box<Special>,
    stopped: AtomicBool,
    open: Mutex<BTreeMap<u64, TcpStream>>,
}

impl Server {
    /// Serves `folder` under `prefix` ("/" or "/sub/app/") on this machine alone. Port 0 takes any free port.
    ///
    /// # Errors
    /// The port is taken.
    pub fn start(
        port: u16,
        prefix: &str,
        folder: &Path,
        special: Box<Special>,
    ) -> std::io::Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        let address = listener.local_addr()?;
        let shared = Arc::new(Shared {
            prefix: prefix.to_owned(),
            folder: Mutex::new(folder.to_owned()),
            special,
            stopped: AtomicBool::new(false),
            open: Mutex::default(),
        });
        let accepting = Some(std::thread::spawn({
            let shared = Arc::clone(&shared);
            move || accept(&listener, &shared)
        }));
        Ok(Self { shared, address, accepting })
    }

    /// The site's address, ending in a slash.
    pub fn url(&self) -> String {
        format!("{}{}", self.origin(), self.shared.prefix)
    }

    /// The address without a path.
    pub fn origin(&self) -> String {
        format!("http://{}", self.address)
    }

    /// The port it listens on.
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// From now on serves another folder.
    pub fn set_folder(&self, folder: &Path) {
        *lock(&self.shared.folder) = folder.to_owned();
    }

    /// Waits until the server ends, which it does not do by itself.
    pub fn wait(mut self) {
        if let Some(thread) = self.accepting.take() {
            let _ = thread.join();
        }
    }

    /// Closes the port and every connection, kept-alive ones too, and returns once that is done.
    pub fn stop(&mut self) {
        self.shared.stopped.store(true, Ordering::SeqCst);
        // Wakes the thread that waits for a connection, so that it sees the flag.
        let _ = TcpStream::connect_timeout(&self.address, Duration::from_secs(1));
        if let Some(thread) = self.accepting.take() {
            let _ = thread.join();
        }
        for stream in std::mem::take(&mut *lock(&self.shared.open)).into_values() {
            let _ = stream.shutdown(Shutdown::Both);
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}

/// The MIME type by the file name's ending.
pub fn content_type(name: &str) -> &'static str {
    match name.rsplit('.').next().unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "wasm" => "application/wasm",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Whether the name carries a content hash: `name-0123456789abcdef.ext`.
pub fn is_hashed(name: &str) -> bool {
    name.rsplit_once('.').and_then(|(stem, _)| stem.rsplit_once('-')).is_some_and(|(_, hash)| {
        hash.len() == 16 && hash.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
    })
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

fn accept(listener: &TcpListener, shared: &Arc<Shared>) {
    for (number, stream) in (0..).zip(listener.incoming()) {
        if shared.stopped.load(Ordering::SeqCst) {
            return;
        }
        let Ok(stream) = stream else { continue };
        let Ok(handle) = stream.try_clone() else { continue };
        lock(&shared.open).insert(number, handle);
        let shared = Arc::clone(shared);
        std::thread::spawn(move || {
            let _ = converse(&stream, &shared);
            let _ = stream.shutdown(Shutdown::Both);
            lock(&shared.open).remove(&number);
        });
    }
}

fn converse(stream: &TcpStream, shared: &Shared) -> std::io::Result<()> {
    stream.set_nodelay(true)?;
    let mut reader = BufReader::new(stream);
    while let Some(request) = read_request(&mut reader, &shared.prefix)? {
        if shared.stopped.load(Ordering::SeqCst) {
            return Ok(());
        }
        let response = (shared.special)(&request)
            .or_else(|| redirect(&request, &shared.prefix))
            .unwrap_or_else(|| file(&request, &lock(&shared.folder).clone()));
        write_response(stream, &request, &response)?;
    }
    Ok(())
}

fn read_request(
    reader: &mut BufReader<&TcpStream>,
    prefix: &str,
) -> std::io::Result<Option<Request>> {
    let mut line = String::new();
    if reader.read_line(&mut line)? == 0 {
        return Ok(None);
    }
    let mut words = line.split_whitespace();
    let method = words.next().unwrap_or_default().to_owned();
    let target = words.next().unwrap_or_default();
    let (path, query) = target.split_once('?').unwrap_or((target, ""));
    let path = path.strip_prefix(prefix).unwrap_or(path).to_owned();
    let query = query.to_owned();
    let mut accept_encoding = String::new();
    loop {
        let mut header = String::new();
        if reader.read_line(&mut header)? == 0 {
            return Ok(None);
        }
        let header = header.trim_end();
        if header.is_empty() {
            return Ok(Some(Request { method, path, query, accept_encoding }));
        }
        if let Some((name, value)) = header.split_once(':')
            && name.eq_ignore_ascii_case("accept-encoding")
        {
            value.trim().clone_into(&mut accept_encoding);
        }
    }
}

/// `/sub/app` goes to `/sub/app/`, as hosts do it.
fn redirect(request: &Request, prefix: &str) -> Option<Response> {
    (prefix.len() > 1 && request.path == prefix.trim_end_matches('/')).then(|| Response {
        status: "301 Moved Permanently",
        headers: vec![("Location", prefix.to_owned())],
        body: Vec::new(),
    })
}

fn file(request: &Request, folder: &Path) -> Response {
    let name = if request.path.is_empty() { "index.html" } else { &request.path };
    let outside = name.split(['/', '\\']).any(|part| part.is_empty() || part.starts_with('.'));
    if outside || !matches!(request.method.as_str(), "GET" | "HEAD") {
        return Response::not_found();
    }
    let (encoding, body) = match read_encoded(folder, name, &request.accept_encoding) {
        Some(found) => found,
        None => return Response::not_found(),
    };
    let cache = if is_hashed(name) { "public, max-age=31536000, immutable" } else { "no-cache" };
    let mut headers = vec![
        ("Content-Type", content_type(name).to_owned()),
        ("Cache-Control", cache.to_owned()),
        ("Vary", "Accept-Encoding".to_owned()),
        ("X-Content-Type-Options", "nosniff".to_owned()),
    ];
    if let Some(encoding) = encoding {
        headers.push(("Content-Encoding", encoding.to_owned()));
    }
    Response { status: "200 OK", headers, body }
}

fn read_encoded(
    folder: &Path,
    name: &str,
    accepted: &str,
) -> Option<(Option<&'static str>, Vec<u8>)> {
    for (encoding, ending) in [("br", "br"), ("gzip", "gz")] {
        if accepts(accepted, encoding)
            && let Ok(body) = std::fs::read(folder.join(format!("{name}.{ending}")))
        {
            return Some((Some(encoding), body));
        }
    }
    std::fs::read(folder.join(name)).ok().map(|body| (None, body))
}

fn accepts(accepted: &str, encoding: &str) -> bool {
    accepted.split(',').any(|entry| {
        let (name, weight) = entry.split_once(';').unwrap_or((entry, ""));
        let refused =
            weight.trim().strip_prefix("q=").and_then(|q| q.parse::<f64>().ok()) == Some(0.0);
        name.trim().eq_ignore_ascii_case(encoding) && !refused
    })
}

fn write_response(
    mut stream: &TcpStream,
    request: &Request,
    response: &Response,
) -> std::io::Result<()> {
    let mut head = format!("HTTP/1.1 {}\r\n", response.status);
    for (name, value) in &response.headers {
        head += &format!("{name}: {value}\r\n");
    }
    head += &format!("Content-Length: {}\r\n\r\n", response.body.len());
    let mut bytes = head.into_bytes();
    if request.method != "HEAD" {
        bytes.extend_from_slice(&response.body);
    }
    stream.write_all(&bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    fn folder(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("battenbook-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join("index.html"), "plain").unwrap();
        std::fs::write(folder.join("index.html.br"), "brotli").unwrap();
        std::fs::write(folder.join("app-0123456789abcdef.wasm"), "wasm").unwrap();
        folder
    }

    fn ask(stream: &mut TcpStream, path: &str, header: &str) -> String {
        write!(stream, "GET {path} HTTP/1.1\r\nHost: x\r\n{header}\r\n").unwrap();
        let mut bytes = [0; 4096];
        let length = stream.read(&mut bytes).unwrap_or(0);
        String::from_utf8_lossy(&bytes[..length]).into_owned()
    }

    #[test]
    fn negotiates_encodings_types_and_the_sub_path() {
        let folder = folder("negotiation");
        let server = Server::start(0, "/sub/app/", &folder, Box::new(|_| None)).unwrap();
        let get = |path: &str, header: &str| {
            ask(&mut TcpStream::connect(server.address).unwrap(), path, header)
        };
        assert!(get("/sub/app/", "").ends_with("plain"));
        let packed = get("/sub/app/?q=1", "Accept-Encoding: gzip, br\r\n");
        assert!(packed.contains("Content-Encoding: br") && packed.ends_with("brotli"), "{packed}");
        assert!(get("/sub/app/", "Accept-Encoding: br;q=0\r\n").ends_with("plain"));
        let wasm = get("/sub/app/app-0123456789abcdef.wasm", "");
        assert!(wasm.contains("application/wasm") && wasm.contains("immutable"), "{wasm}");
        assert!(get("/sub/app", "").contains("Location: /sub/app/"));
        for path in [
            "/",
            "/index.html",
            "/sub/app/../index.html",
            "/sub/app/.hidden",
            "/sub/app//etc/hosts",
        ] {
            assert!(get(path, "").starts_with("HTTP/1.1 404"), "{path}");
        }
        std::fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn stop_ends_connections_that_were_kept_alive() {
        let folder = folder("stop");
        let mut server = Server::start(0, "/", &folder, Box::new(|_| None)).unwrap();
        let mut stream = TcpStream::connect(server.address).unwrap();
        assert!(ask(&mut stream, "/", "").contains("200 OK"));
        assert!(ask(&mut stream, "/", "").contains("200 OK"), "the connection is kept");
        server.stop();
        let mut rest = Vec::new();
        assert_eq!(stream.read_to_end(&mut rest).unwrap_or(0), 0, "the kept connection is closed");
        assert!(TcpStream::connect(server.address).is_err(), "no new connection");
        std::fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn a_hashed_name_is_told_from_a_plain_one() {
        assert!(is_hashed("app-0123456789abcdef.js"));
        assert!(!is_hashed("icon-512.png") && !is_hashed("index.html"));
    }
}
