//! A host that gives one file of a release spoilt, as networks and hosts do; told at every moment which, and
//! how.

use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use super::Told;

/// How a file is spoilt on its way; the numbers are places in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spoilt {
    /// Its beginning only, and nothing tells.
    Half,
    /// One bit of it.
    Flipped(usize),
    /// Nothing of it.
    Empty,
    /// A network's own page in its place.
    LoginPage,
    /// Not there.
    NotFound,
    /// The host stumbles.
    Failed,
    /// The connection ends in the middle.
    HungUp,
}

/// What the host does now.
#[derive(Clone, Debug)]
struct Doing {
    folder: PathBuf,
    spoilt: Option<(String, Spoilt)>,
    away: bool,
}

/// The host; it answers as long as the tests run.
pub struct FaultyHost {
    doing: Arc<Mutex<Doing>>,
    pub port: u16,
}

impl FaultyHost {
    /// Gives out the files of that folder, whole.
    pub fn start(folder: &Path) -> Told<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let port = listener.local_addr()?.port();
        let doing = Arc::new(Mutex::new(Doing {
            folder: folder.to_path_buf(),
            spoilt: None,
            away: false,
        }));
        let seen = doing.clone();
        std::thread::spawn(move || {
            for visit in listener.incoming().flatten() {
                let seen = seen.clone();
                std::thread::spawn(move || drop(answer(visit, &seen)));
            }
        });
        Ok(Self { doing, port })
    }

    fn does(&self, change: impl FnOnce(&mut Doing)) {
        change(&mut self.doing.lock().unwrap_or_else(PoisonError::into_inner));
    }

    /// That file of the folder is spoilt from now on.
    pub fn spoils(&self, folder: &Path, name: &str, how: Spoilt) {
        self.does(|doing| {
            doing.folder = folder.to_path_buf();
            doing.spoilt = Some((name.to_owned(), how));
            doing.away = false;
        });
    }

    /// Every file of the folder is given as it is from now on.
    pub fn is_honest(&self, folder: &Path) {
        self.does(|doing| {
            doing.folder = folder.to_path_buf();
            (doing.spoilt, doing.away) = (None, false);
        });
    }

    /// There is no network.
    pub fn is_away(&self) {
        self.does(|doing| doing.away = true);
    }
}

fn answer(mut visit: TcpStream, doing: &Mutex<Doing>) -> std::io::Result<()> {
    let mut lines = BufReader::new(visit.try_clone()?).lines();
    let asked = lines.next().transpose()?.unwrap_or_default();
    // All of what is asked is heard first: a connection shut over unread words is torn off.
    for line in lines {
        if line?.is_empty() {
            break;
        }
    }
    // As it is now: browsers open connections before they have anything to ask.
    let doing = doing.lock().unwrap_or_else(PoisonError::into_inner).clone();
    if doing.away {
        return Ok(());
    }
    let path = asked.split(' ').nth(1).unwrap_or("/");
    let name = path.split(['?', '#']).next().unwrap_or_default();
    let name = match name.trim_start_matches('/') {
        "" => "index.html",
        name => name,
    };
    let mut kind = match name.rsplit_once('.').map_or("", |(_, ending)| ending) {
        "html" => "text/html",
        "js" => "text/javascript",
        "css" => "text/css",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "woff2" => "font/woff2",
        "webmanifest" => "application/manifest+json",
        _ => "text/plain",
    };
    let file = std::fs::read(doing.folder.join(name));
    let (mut status, mut bytes) = match file {
        Ok(bytes) => ("200 OK", bytes),
        Err(_) => ("404 Not Found", Vec::new()),
    };
    let mut promised = bytes.len();
    let spoilt = doing.spoilt.as_ref().filter(|(spoilt, _)| spoilt == name);
    if let Some((_, how)) = spoilt {
        let middle = bytes.len() / 2;
        match how {
            Spoilt::Half | Spoilt::HungUp => bytes.truncate(middle),
            Spoilt::Flipped(at) => {
                let at = at % bytes.len().max(1);
                bytes.iter_mut().skip(at).take(1).for_each(|byte| *byte ^= 1);
            }
            Spoilt::Empty => bytes.clear(),
            Spoilt::LoginPage => {
                kind = "text/html";
                bytes = b"<!doctype html><title>Log in</title><p>Welcome to the guest network".to_vec();
            }
            Spoilt::NotFound => (status, bytes) = ("404 Not Found", b"not here".to_vec()),
            Spoilt::Failed => (status, bytes) = ("500 Internal Server Error", b"sorry".to_vec()),
        }
        if *how != Spoilt::HungUp {
            promised = bytes.len();
        }
    }
    let head = format!(
        "HTTP/1.1 {status}\r\ncontent-type: {kind}\r\ncontent-length: {promised}\r\ncache-control: no-cache\r\n\
         connection: close\r\n\r\n"
    );
    visit.write_all(head.as_bytes())?;
    visit.write_all(&bytes)
}
