//! The page in front of the reader: open, look, touch, type, leave.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use halfcase::setup::{browser, serve::Server};
use serde_json::{Value, json};
use thirtyfour::WebDriver;

use super::browser::{DriverProcess, Screen};
use super::clock::Clock;
use super::target::{Target, has, one_blank};
use super::trap::Trap;
use super::tree::{Node, Tree};
use super::{Failure, Told};

/// How long anything on the page may take; six stories share two cores.
const PATIENCE: Duration = Duration::from_secs(15);
const LOOK_AGAIN: Duration = Duration::from_millis(40);

/// One browser tab with a finger on it, and the server behind it.
pub struct Page {
    /// The WebDriver session, for what the words here don't cover.
    pub driver: WebDriver,
    pub(super) clock: Clock,
    /// What lays out the bench the story begins with.
    pub(super) laid_out: Option<String>,
    /// The server was away: what the console says about the network since is no defect.
    pub(super) was_offline: bool,
    process: DriverProcess,
    /// Where the browser's requests to other hosts end.
    trap: Trap,
    screen: Screen,
    /// Where the profile lies, once a browser was killed: nobody else takes it away then.
    profile: Option<PathBuf>,
    server: Option<Server>,
    port: u16,
    folder: PathBuf,
    downloads: PathBuf,
}

impl Page {
    /// A fresh browser of that screen size and a server for `folder`, nothing opened yet.
    pub async fn new(name: &str, screen: Screen, folder: &Path, whole: bool) -> Told<Page> {
        let programs = browser::ready()?;
        let server = Server::start(folder, 0)?;
        // Two that begin at once may choose one port: the one that lost it begins again.
        let process =
            DriverProcess::start(&programs.driver).or_else(|_| DriverProcess::start(&programs.driver))?;
        let downloads = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("target/downloads")
            .join(name);
        drop(std::fs::remove_dir_all(&downloads));
        std::fs::create_dir_all(&downloads)?;
        let program = match &programs.shell {
            Some(shell) if !whole => shell,
            _ => &programs.chromium,
        };
        let trap = Trap::set()?;
        let driver = process
            .session(program, screen, &downloads, None, trap.port)
            .await?;
        let mut page = Page {
            driver,
            clock: Clock::new(),
            laid_out: None,
            was_offline: false,
            process,
            trap,
            screen,
            profile: None,
            port: server.port(),
            server: Some(server),
            folder: folder.to_path_buf(),
            downloads,
        };
        page.prepare_tab().await?;
        page.inject_bench().await?;
        Ok(page)
    }

    /// What every new tab is told before the app starts in it.
    async fn prepare_tab(&mut self) -> Told {
        self.cdp("Emulation.setTimezoneOverride", json!({ "timezoneId": "UTC" }))
            .await?;
        self.dark(false).await?;
        // The whole browser has it from its settings, the shell only so.
        let downloads = json!({ "behavior": "allow", "downloadPath": self.downloads });
        self.cdp("Browser.setDownloadBehavior", downloads).await?;
        // Script numbers count anew in each tab: an old tab's must not remove this one's.
        self.clock.injected = None;
        self.inject_clock().await
    }

    pub(super) async fn cdp(&self, method: &str, what: Value) -> Told<Value> {
        Ok(self.driver.cdp().send_raw(method, what).await?)
    }

    /// Runs a script's body in the page; `arguments[0]` is `with`.
    pub async fn script(&self, body: &str, with: Value) -> Told<Value> {
        Ok(self.driver.execute(body, vec![with]).await?.json().clone())
    }

    /// The app's address.
    pub fn url(&self) -> String {
        format!("http://localhost:{}/", self.port)
    }

    /// Opens the app as on the first visit or any later one.
    pub async fn open(&mut self) -> Told {
        self.open_at("").await
    }

    /// Opens the app at a route: `open_at("#/torque")`.
    pub async fn open_at(&mut self, route: &str) -> Told {
        self.driver.goto(format!("{}{route}", self.url())).await?;
        self.started().await
    }

    /// Reloads the page.
    pub async fn reload(&mut self) -> Told {
        self.driver.refresh().await?;
        self.started().await
    }

    /// Closes the tab and opens the app in a new one of the same browser.
    pub async fn close_tab_and_return(&mut self) -> Told {
        let old = self.driver.window().await?;
        let new = self.driver.new_tab().await?;
        self.driver.switch_to_window(old).await?;
        self.driver.close_window().await?;
        self.driver.switch_to_window(new).await?;
        self.prepare_tab().await?;
        self.open().await
    }

    /// The tab is killed, as a phone short of memory does, and the app opened in a new one; the browser lives.
    pub async fn kill_tab_and_return(&mut self) -> Told {
        let old = self.driver.window().await?;
        let new = self.driver.new_tab().await?;
        self.driver.switch_to_window(old.clone()).await?;
        // It dies over the question, and the driver says so.
        if self.cdp("Page.crash", json!({})).await.is_ok() {
            return Err(Failure::new("the tab answered to being killed"));
        }
        self.driver.switch_to_window(new.clone()).await?;
        self.prepare_tab().await?;
        self.open().await
    }

    /// The whole browser is killed and opened again with what is on its disk.
    pub async fn kill_browser_and_return(&mut self) -> Told {
        let profile = self.process.kill_all()?;
        let programs = browser::ready()?;
        self.process = DriverProcess::start(&programs.driver)?;
        let session = self
            .process
            .session(
                &programs.chromium,
                self.screen,
                &self.downloads,
                Some(&profile),
                self.trap.port,
            )
            .await?;
        self.profile = Some(profile);
        // The old one would say goodbye to a driver that is no more.
        drop(std::mem::replace(&mut self.driver, session).leak());
        self.prepare_tab().await?;
        self.open().await
    }

    /// Every page loaded from now on runs this before its first script.
    pub async fn before_each_page(&self, script: &str) -> Told {
        self.cdp(
            "Page.addScriptToEvaluateOnNewDocument",
            json!({ "source": script }),
        )
        .await
        .map(drop)
    }

    /// Waits until the app has put something on the page.
    async fn started(&self) -> Told {
        self.until("the app to start", async || {
            let there = "return document.readyState === 'complete' && !document.getElementById('before')";
            Ok((self.script(there, Value::Null).await? == Value::Bool(true)).then_some(()))
        })
        .await
    }

    /// Waits until a service worker holds the whole release and serves this page.
    pub async fn offline_ready(&self) -> Told {
        self.until("the service worker to take control", async || {
            let there = "return !!navigator.serviceWorker.controller";
            Ok((self.script(there, Value::Null).await? == Value::Bool(true)).then_some(()))
        })
        .await
    }

    /// The build id of the release whose service worker serves this page.
    pub async fn release_in_charge(&self) -> Told<String> {
        let ask = "
            const answer = arguments[arguments.length - 1];
            // One that waits may be asked at the same moment.
            const own = event => event.source === navigator.serviceWorker.controller;
            const hear = event => own(event) && event.data?.kind === 'this' && answer(event.data.build);
            navigator.serviceWorker.addEventListener('message', hear);
            navigator.serviceWorker.controller.postMessage({ kind: 'which' });";
        let build = self.driver.execute_async(ask, Vec::new()).await?;
        Ok(build.json().as_str().unwrap_or_default().to_owned())
    }

    /// The network goes away: the server stops and its port is shut.
    pub fn stop_server(&mut self) {
        self.was_offline = true;
        self.server = None;
    }

    /// Another host answers from now on, at an address of its own.
    pub fn visit_instead(&mut self, port: u16) {
        self.stop_server();
        self.port = port;
    }

    /// A browser in which this app was never opened, in the same tab.
    pub async fn as_never_visited(&self) -> Told {
        let own = self.url();
        let forget = "try { sessionStorage.clear(); } catch { /* a page without storage */ }";
        self.script(forget, Value::Null).await?;
        self.driver.goto("about:blank").await?;
        let what = json!({ "origin": own.trim_end_matches('/'), "storageTypes": "all" });
        self.cdp("Storage.clearDataForOrigin", what).await?;
        self.cdp("Network.clearBrowserCache", json!({})).await.map(drop)
    }

    /// Opens the app, whatever comes of it.
    pub async fn try_to_open(&self) {
        drop(self.driver.goto(self.url()).await);
    }

    /// The network is back, at the same address.
    pub fn start_server(&mut self) -> Told {
        self.server = Some(Server::start(&self.folder, self.port)?);
        Ok(())
    }

    /// The server answers from another folder from now on: a new release is out.
    pub fn serve_instead(&mut self, folder: &Path) -> Told {
        self.server = None;
        self.folder = folder.to_path_buf();
        self.start_server()
    }

    /// Asks until there is an answer; fails with what is on the page when patience ends.
    pub async fn until<T>(&self, what: &str, mut ask: impl AsyncFnMut() -> Told<Option<T>>) -> Told<T> {
        let begun = Instant::now();
        loop {
            // A page that is just being replaced refuses; that is no answer yet.
            let refused = match ask().await {
                Ok(Some(answer)) => return Ok(answer),
                Ok(None) => String::new(),
                Err(failure) => format!(" ({failure})"),
            };
            if begun.elapsed() > PATIENCE {
                let outline = Tree::read(&self.driver)
                    .await
                    .map(|tree| tree.outline())
                    .unwrap_or_default();
                return Err(Failure::new(format!(
                    "waited in vain for {what}{refused}{outline}"
                )));
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
    }

    /// Waits for it to be there; gives what it is.
    pub async fn see(&self, target: Target) -> Told<Node> {
        self.until(&target.to_string(), async || {
            Ok(Tree::read(&self.driver).await?.find(&target).cloned())
        })
        .await
    }

    /// Waits until nothing of the kind is there.
    pub async fn gone(&self, target: Target) -> Told {
        self.until(&format!("{target} to go"), async || {
            Ok(Tree::read(&self.driver)
                .await?
                .find(&target)
                .is_none()
                .then_some(()))
        })
        .await
    }

    /// Whether it is there now, without waiting.
    pub async fn there(&self, target: Target) -> Told<bool> {
        Ok(Tree::read(&self.driver).await?.find(&target).is_some())
    }

    /// All of the kind that are there now, in order.
    pub async fn all(&self, target: Target) -> Told<Vec<Node>> {
        Ok(Tree::read(&self.driver)
            .await?
            .all(&target)
            .into_iter()
            .cloned()
            .collect())
    }

    /// Waits until it is there and shut (disabled).
    pub async fn see_shut(&self, target: Target) -> Told<Node> {
        self.until(&format!("{target} to be shut"), async || {
            Ok(Tree::read(&self.driver)
                .await?
                .find(&target)
                .filter(|node| node.disabled)
                .cloned())
        })
        .await
    }

    /// Waits until it is there, pressed, checked or selected.
    pub async fn see_on(&self, target: Target) -> Told<Node> {
        self.until(&format!("{target} to be on"), async || {
            Ok(Tree::read(&self.driver)
                .await?
                .find(&target)
                .filter(|node| node.on)
                .cloned())
        })
        .await
    }

    /// Waits until these words stand somewhere on the page; white space counts as one blank.
    pub async fn see_words(&self, words: &str) -> Told {
        let wanted = has(words);
        self.until(&format!("the words \"{words}\""), async || {
            Ok(wanted.fits(&self.text().await?).then_some(()))
        })
        .await
    }

    /// Waits until these words stand nowhere on the page.
    pub async fn words_gone(&self, words: &str) -> Told {
        let wanted = has(words);
        let what = format!("the words \"{words}\" to go");
        self.until(&what, async || {
            Ok((!wanted.fits(&self.text().await?)).then_some(()))
        })
        .await
    }

    /// All that can be read on the page now, white space as one blank.
    pub async fn text(&self) -> Told<String> {
        let text = self.script("return document.body.innerText", Value::Null).await?;
        Ok(one_blank(text.as_str().unwrap_or_default()))
    }

    /// Nothing was asked of any other host than this computer, by page, worker or browser, since the story
    /// began; and on this one nothing of another port by the page at hand.
    pub async fn no_foreign_request(&self) -> Told {
        let names = "return performance.getEntriesByType('resource').map(it => it.name)";
        let mut asked = self.take_foreign_requests();
        // A tab that is gone tells nothing.
        if let Ok(names) = self.script(names, Value::Null).await {
            let own = format!("http://localhost:{}/", self.port);
            let ours = |name: &String| {
                ["blob:", "data:", own.as_str()]
                    .iter()
                    .any(|start| name.starts_with(start))
            };
            let names: Vec<String> = serde_json::from_value(names)?;
            asked.extend(names.into_iter().filter(|name| !ours(name)));
        }
        match asked.as_slice() {
            [] => Ok(()),
            asked => Err(Failure::new(format!("asked of a stranger: {}", asked.join(", ")))),
        }
    }

    /// What was asked of other hosts until now, and forgets it: for a story that provokes it.
    pub fn take_foreign_requests(&self) -> Vec<String> {
        self.trap.take()
    }

    /// Writes what the screen shows to `target/screenshots/NAME.png`.
    pub async fn screenshot(&self, name: &str) -> Told {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/screenshots");
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}.png"));
        self.driver.screenshot(&file).await?;
        // Those that README shows are made anew where that is asked for.
        let shown = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!(".pictures/{name}.png"));
        if shown.exists() && std::env::var_os("HALFCASE_PICTURES").is_some() {
            std::fs::copy(&file, shown)?;
        }
        Ok(())
    }

    /// Waits for a file the page gave out, and reads it. The file is then gone, ready for the next.
    pub async fn downloaded(&self) -> Told<(String, Vec<u8>)> {
        let path = self
            .until("a file to arrive", async || {
                // A half-written file has a hidden name, or an ending of its own.
                let done = |path: &PathBuf| {
                    let name = path.file_name().unwrap_or_default().to_string_lossy();
                    !name.starts_with('.') && !name.ends_with(".crdownload")
                };
                let mut files = std::fs::read_dir(&self.downloads)?
                    .filter_map(Result::ok)
                    .map(|file| file.path());
                Ok(files.find(done))
            })
            .await?;
        let name = path
            .file_name()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        let bytes = std::fs::read(&path)?;
        std::fs::remove_file(&path)?;
        Ok((name, bytes))
    }

    /// Ends the browser, its driver and the server.
    pub async fn close(self) {
        drop(self.driver.quit().await);
        drop(self.process);
        if let Some(profile) = self.profile {
            drop(std::fs::remove_dir_all(profile));
        }
    }
}
