//! The plainest static host: right types, nothing else. Its folder can change while it serves, as real ones do.
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

/// A host on a free port of this machine, for as long as the test process lives.
pub struct Host {
    port: u16,
    under: String,
    state: Arc<Mutex<State>>,
}

struct State {
    folder: PathBuf,
    asked: Vec<String>,
}

impl Host {
    /// Serves a folder under a path that begins and ends with `/`.
    pub fn serve(folder: &Path, under: &str) -> Host {
        let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
        let port = listener.local_addr().expect("bound").port();
        let state = Arc::new(Mutex::new(State { folder: folder.into(), asked: vec![] }));
        let host = Host { port, under: under.into(), state: state.clone() };
        let under = host.under.clone();
        std::thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let (state, under) = (state.clone(), under.clone());
                // A thread each: browsers open connections ahead and leave them silent.
                std::thread::spawn(move || answer(stream, &state, &under));
            }
        });
        host
    }

    /// Where the app is to be found.
    pub fn address(&self) -> String {
        format!("http://localhost:{}{}", self.port, self.under)
    }

    /// Another folder on the same address, from the next request on.
    pub fn swap(&self, folder: &Path) {
        self.state().folder = folder.into();
    }

    /// The paths asked for since the last call.
    pub fn asked(&self) -> Vec<String> {
        std::mem::take(&mut self.state().asked)
    }

    fn state(&self) -> std::sync::MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn answer(mut stream: TcpStream, state: &Mutex<State>, under: &str) {
    let mut head = [0; 8192];
    let length = stream.read(&mut head).unwrap_or(0);
    let head = String::from_utf8_lossy(&head[..length]).into_owned();
    let Some(path) = head.split_whitespace().nth(1).and_then(|p| p.split('?').next()) else { return };
    let folder = {
        let mut state = state.lock().unwrap_or_else(PoisonError::into_inner);
        state.asked.push(path.into());
        state.folder.clone()
    };
    let name = path.strip_prefix(under).map(|p| if p.is_empty() { "index.html" } else { p });
    let _ = match name.and_then(|n| Some((kind(n), std::fs::read(folder.join(n)).ok()?))) {
        Some((kind, body)) => {
            let head = format!("HTTP/1.1 200 OK\r\ncontent-type: {kind}\r\ncontent-length: {}\r\nconnection: close\r\n\r\n", body.len());
            stream.write_all(head.as_bytes()).and_then(|()| stream.write_all(&body))
        }
        None => stream.write_all(b"HTTP/1.1 404 Not Found\r\ncontent-length: 0\r\nconnection: close\r\n\r\n"),
    };
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("html") => "text/html",
        Some("js") => "text/javascript",
        Some("wasm") => "application/wasm",
        Some("css") => "text/css",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("webmanifest") => "application/manifest+json",
        Some("woff2") => "font/woff2",
        _ => "application/octet-stream",
    }
}
