//! A trap for whatever is asked of a stranger: the browser's only way to other hosts than this one leads into it.

use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex, PoisonError};

use super::Told;

/// A proxy that lets nobody through and remembers who was asked for. It stands as long as the tests run.
pub struct Trap {
    pub port: u16,
    asked: Arc<Mutex<Vec<String>>>,
}

impl Trap {
    /// Sets it up on a port of its own.
    pub fn set() -> Told<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let port = listener.local_addr()?.port();
        let asked = Arc::new(Mutex::new(Vec::new()));
        let heard = asked.clone();
        std::thread::spawn(move || {
            for visit in listener.incoming().flatten() {
                let heard = heard.clone();
                std::thread::spawn(move || drop(refuse(visit, &heard)));
            }
        });
        Ok(Self { port, asked })
    }

    /// What was asked for since the last look: a line each, as a browser asks a proxy.
    pub fn take(&self) -> Vec<String> {
        std::mem::take(&mut *self.asked.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

/// What a browser asks of its own maker in the background, whatever page it shows: the time, its accounts, its
/// hints. No page is served from there.
fn is_browsers_own(asked: &str) -> bool {
    let address = asked.split(' ').nth(1).unwrap_or_default();
    let host = address
        .trim_start_matches("http://")
        .split(['/', ':', '?'])
        .next();
    let host = host.unwrap_or_default();
    [".google.com", "-pa.googleapis.com", ".gvt1.com"]
        .iter()
        .any(|own| host.ends_with(own))
        || host == "update.googleapis.com"
}

fn refuse(mut visit: TcpStream, heard: &Mutex<Vec<String>>) -> std::io::Result<()> {
    let mut lines = BufReader::new(visit.try_clone()?).lines();
    let asked = lines.next().transpose()?.unwrap_or_default();
    // Opened ahead of time, or the browser ended: nobody was asked for.
    if asked.is_empty() {
        return Ok(());
    }
    if !is_browsers_own(&asked) {
        let words = asked.trim_end_matches(" HTTP/1.1").to_owned();
        heard.lock().unwrap_or_else(PoisonError::into_inner).push(words);
    }
    for line in lines {
        if line?.is_empty() {
            break;
        }
    }
    visit.write_all(b"HTTP/1.1 403 Forbidden\r\ncontent-length: 0\r\nconnection: close\r\n\r\n")
}
