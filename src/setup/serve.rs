//! A static server for the release, on this computer only.
//!
//! Used by `cargo run` and, started and stopped at will, by the stories.

use std::io;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::thread::JoinHandle;

use axum::Router;
use axum::extract::Request;
use axum::http::{HeaderName, HeaderValue, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use tokio::net::TcpListener;
use tokio::sync::oneshot;
use tower_http::services::ServeDir;
use tower_http::set_header::SetResponseHeaderLayer;

use super::error::SetupError;

/// A running static server; stops when dropped.
#[derive(Debug)]
pub struct Server {
    port: u16,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves `folder` on 127.0.0.1 at `port`; 0 takes any free one.
    ///
    /// # Errors
    /// [`SetupError::NoPort`] when the port can't be opened.
    pub fn start(folder: &Path, port: u16) -> Result<Server, SetupError> {
        let no_port = |source| SetupError::NoPort {
            first: port,
            last: port,
            source,
        };
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .map_err(no_port)?;
        let (stop, stopped) = oneshot::channel();
        let (opened, open) = std::sync::mpsc::channel();
        let files = files(folder.to_path_buf());
        // The runtime lives and dies with its thread: stopping drops every open connection too,
        // as a server that has gone away would.
        let thread = std::thread::spawn(move || {
            runtime.block_on(async move {
                let listener = match TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port))).await {
                    Ok(listener) => listener,
                    Err(error) => return drop(opened.send(Err(error))),
                };
                drop(opened.send(listener.local_addr().map(|address| address.port())));
                tokio::select! {
                    _ = async { axum::serve(listener, files).await } => {}
                    _ = stopped => {}
                }
            });
        });
        let port = open
            .recv()
            .unwrap_or_else(|_| Err(io::Error::other("the server's thread ended")))
            .map_err(no_port)?;
        Ok(Server {
            port,
            stop: Some(stop),
            thread: Some(thread),
        })
    }

    /// Serves `folder` at the first free port from `first` to `last`.
    ///
    /// # Errors
    /// [`SetupError::NoPort`] when none of them can be opened.
    pub fn start_from(folder: &Path, first: u16, last: u16) -> Result<Server, SetupError> {
        let mut port = first;
        loop {
            match Server::start(folder, port) {
                Err(SetupError::NoPort { source, .. }) if port >= last => {
                    return Err(SetupError::NoPort { first, last, source });
                }
                Err(_) => port += 1,
                started => return started,
            }
        }
    }

    /// The port it listens on.
    pub fn port(&self) -> u16 {
        self.port
    }

    /// The address to open in a browser.
    pub fn url(&self) -> String {
        format!("http://localhost:{}/", self.port)
    }

    /// Waits until the server ends by itself, which it does not unless it fails.
    pub fn wait(mut self) {
        if let Some(thread) = self.thread.take() {
            drop(thread.join());
        }
    }

    /// Stops the server and gives its port back before returning.
    pub fn stop(self) {}
}

impl Drop for Server {
    fn drop(&mut self) {
        if let Some(stop) = self.stop.take() {
            let _ = stop.send(());
        }
        if let Some(thread) = self.thread.take() {
            drop(thread.join());
        }
    }
}

/// Answers to this computer's own names alone: a page elsewhere whose name was made to lead here would else
/// read what is served.
async fn to_own_name(request: Request, next: Next) -> Response {
    let host = request.headers().get(header::HOST);
    let host = host.and_then(|host| host.to_str().ok()).unwrap_or_default();
    match host.rsplit_once(':').map_or(host, |(name, _)| name) {
        "localhost" | "127.0.0.1" => next.run(request).await,
        _ => StatusCode::MISDIRECTED_REQUEST.into_response(),
    }
}

/// The folder as a service: brotli copies where a browser takes them, and every answer checked
/// again next time, so that no page of one build meets a part of another.
fn files(folder: PathBuf) -> Router {
    let fixed = |name: HeaderName, value: &'static str| {
        SetResponseHeaderLayer::overriding(name, HeaderValue::from_static(value))
    };
    Router::new()
        .fallback_service(ServeDir::new(folder).precompressed_br())
        .layer(axum::middleware::from_fn(to_own_name))
        .layer(fixed(header::CACHE_CONTROL, "no-cache"))
        .layer(fixed(header::X_CONTENT_TYPE_OPTIONS, "nosniff"))
}
