use super::*;
use std::io::{Read, Write};

/// A folder with one small file of each kind, served; returns its address and the folder.
fn served(files: &[(&str, &str)]) -> (SocketAddr, tempfile::TempDir) {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, text) in files {
        std::fs::write(folder.path().join(name), text).expect("written");
    }
    let listener = listen(0, false).expect("a port");
    let at = listener.local_addr().expect("bound");
    let path = folder.path().to_owned();
    std::thread::spawn(move || {
        let run = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        run.block_on(on(listener, &path)).expect("serves");
    });
    (at, folder)
}

/// The whole answer to a request, in small letters.
fn ask(at: SocketAddr, path: &str, accept: &str) -> String {
    let mut socket = std::net::TcpStream::connect(at).expect("connected");
    write!(socket, "GET {path} HTTP/1.1\r\nhost: localhost\r\naccept-encoding: {accept}\r\nconnection: close\r\n\r\n").expect("asked");
    let mut said = vec![];
    socket.read_to_end(&mut said).expect("answered");
    String::from_utf8_lossy(&said).to_lowercase()
}

#[test]
fn every_kind_of_file_has_its_type() {
    let kinds = [
        ("index.html", "text/html"),
        ("boot.js", "text/javascript"),
        ("app.css", "text/css"),
        ("icon.svg", "image/svg+xml"),
        ("fivebar_bg.wasm", "application/wasm"),
        ("manifest.webmanifest", "application/manifest+json"),
        ("a.woff2", "font/woff2"),
        ("icon-192.png", "image/png"),
    ];
    let (at, _folder) = served(&kinds.map(|(name, _)| (name, "x")));
    for (name, kind) in kinds {
        let said = ask(at, &format!("/{name}"), "identity");
        assert!(said.contains(&format!("content-type: {kind}")), "{name}: {said}");
    }
    assert!(ask(at, "/", "identity").contains("content-type: text/html"), "the folder is its page");
}

#[test]
fn every_answer_carries_the_policy_and_is_asked_for_again() {
    let (at, _folder) = served(&[("sw.js", "x")]);
    for path in ["/sw.js", "/nothing"] {
        let said = ask(at, path, "identity");
        assert!(said.contains(&format!("content-security-policy: {}", POLICY.to_lowercase())), "{said}");
        assert!(said.contains("cache-control: no-cache") && said.contains("x-content-type-options: nosniff"), "{said}");
    }
    assert!(ask(at, "/nothing", "identity").starts_with("http/1.1 404"));
}

#[test]
fn packed_files_go_to_those_who_take_them() {
    let (at, _folder) = served(&[("app.css", "plain"), ("app.css.br", "brotli"), ("app.css.gz", "gzip")]);
    let said = ask(at, "/app.css", "gzip, br");
    assert!(said.contains("content-encoding: br") && said.contains("content-type: text/css") && said.ends_with("brotli"), "{said}");
    let said = ask(at, "/app.css", "gzip");
    assert!(said.contains("content-encoding: gzip") && said.ends_with("gzip"), "{said}");
    assert!(ask(at, "/app.css", "identity").ends_with("plain"));
}

#[test]
fn a_port_that_is_taken_is_said_with_the_way_on() {
    let taken = listen(0, false).expect("a port");
    let port = taken.local_addr().expect("bound").port();
    let said = listen(port, false).expect_err("taken");
    assert!(said.starts_with(&format!("port {port} is taken")) && said.contains("cargo run -- --port "), "{said}");
}
