//! The static server: what a browser is told of each file, and that it stops when told.

use std::fs;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;

use halfcase::setup::serve::Server;

/// A folder of small files, fresh for each test.
fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    drop(fs::remove_dir_all(&folder));
    fs::create_dir_all(&folder).expect("a folder for the test");
    for (file, text) in [
        ("index.html", "page"),
        ("app.wasm", "plain wasm"),
        ("app.wasm.br", "brotli wasm"),
        ("start.js", "code"),
        ("manifest.webmanifest", "{}"),
        ("icon.svg", "<svg/>"),
    ] {
        fs::write(folder.join(file), text).expect("a file for the test");
    }
    folder
}

/// One request, head and body of the answer as they came.
fn get(port: u16, path: &str, more: &str) -> Option<(String, String)> {
    get_from("localhost", port, path, more)
}

/// The same, asked for under that name.
fn get_from(host: &str, port: u16, path: &str, more: &str) -> Option<(String, String)> {
    let mut stream = TcpStream::connect(("127.0.0.1", port)).ok()?;
    write!(
        stream,
        "GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n{more}\r\n"
    )
    .ok()?;
    let mut answer = String::new();
    stream.read_to_string(&mut answer).ok()?;
    let (head, body) = answer.split_once("\r\n\r\n")?;
    Some((head.to_lowercase(), body.to_owned()))
}

#[test]
fn each_file_has_its_type_and_is_asked_for_again_next_time() {
    let server = Server::start(&folder("types"), 0).expect("a free port");
    for (path, kind) in [
        ("/", "text/html"),
        ("/index.html", "text/html"),
        ("/app.wasm", "application/wasm"),
        ("/start.js", "text/javascript"),
        ("/manifest.webmanifest", "application/manifest+json"),
        ("/icon.svg", "image/svg+xml"),
    ] {
        let (head, _) = get(server.port(), path, "").expect("an answer");
        assert!(head.starts_with("http/1.1 200"), "{path}: {head}");
        assert!(head.contains(&format!("content-type: {kind}")), "{path}: {head}");
        assert!(head.contains("cache-control: no-cache"), "{path}: {head}");
    }
}

#[test]
fn brotli_goes_to_those_who_take_it() {
    let server = Server::start(&folder("brotli"), 0).expect("a free port");
    let (head, body) = get(server.port(), "/app.wasm", "Accept-Encoding: gzip, br\r\n").expect("an answer");
    assert!(
        head.contains("content-encoding: br") && head.contains("content-type: application/wasm"),
        "{head}"
    );
    assert_eq!(body, "brotli wasm");
    let (head, body) = get(server.port(), "/app.wasm", "").expect("an answer");
    assert!(!head.contains("content-encoding"), "{head}");
    assert_eq!(body, "plain wasm");
}

#[test]
fn nothing_outside_the_folder_is_served() {
    let server = Server::start(&folder("outside"), 0).expect("a free port");
    for path in ["/nothing.js", "/../Cargo.toml", "/%2e%2e/types/index.html"] {
        let (head, _) = get(server.port(), path, "").expect("an answer");
        assert!(!head.starts_with("http/1.1 200"), "{path}: {head}");
    }
}

#[test]
fn it_stops_when_told_and_starts_again_at_the_same_port() {
    let folder = folder("restart");
    let server = Server::start(&folder, 0).expect("a free port");
    let port = server.port();
    let mut open = TcpStream::connect(("127.0.0.1", port)).expect("a connection that stays open");
    server.stop();
    assert!(get(port, "/", "").is_none(), "nobody answers any more");
    assert!(
        matches!(open.read(&mut [0; 1]), Ok(0) | Err(_)),
        "an open connection ends too"
    );
    let again = Server::start(&folder, port).expect("the same port");
    assert_eq!(get(again.port(), "/", "").expect("an answer").1, "page");
}

#[test]
fn a_taken_port_leads_to_the_next_and_a_full_range_is_said() {
    let folder = folder("ports");
    let first = Server::start(&folder, 0).expect("a free port");
    let refused = Server::start_from(&folder, first.port(), first.port()).expect_err("the port is taken");
    let sentence = refused.to_string();
    assert!(
        sentence.starts_with(&format!("No port from {0} to {0} can be opened", first.port())),
        "{sentence}"
    );
    let next =
        Server::start_from(&folder, first.port(), first.port().saturating_add(50)).expect("a later port");
    assert!(next.port() > first.port());
}

/// A name of elsewhere may be made to lead to this computer.
#[test]
fn it_answers_to_its_own_name_alone() {
    let server = Server::start(&folder("names"), 0).expect("a free port");
    let port = server.port();
    for host in [
        "localhost".to_owned(),
        format!("localhost:{port}"),
        format!("127.0.0.1:{port}"),
    ] {
        let (head, _) = get_from(&host, port, "/", "").expect("an answer");
        assert!(head.starts_with("http/1.1 200"), "{host}: {head}");
    }
    for host in ["shop.example", "localhost.shop.example", ""] {
        let (head, body) = get_from(host, port, "/", "").expect("an answer");
        assert!(
            head.starts_with("http/1.1 4") && !body.contains("page"),
            "{host}: {head}"
        );
    }
}
