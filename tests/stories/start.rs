//! The app starts, keeps itself, starts again with the network gone, and changes only when told.

use std::fs;
use std::path::{Path, PathBuf};

use halfcase::setup::worker::Release;
use serde_json::{Value, json};

use super::harness::*;

/// A copy of the release to change, in a folder of its own.
pub fn copy_of_release(name: &str) -> Told<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("target/releases")
        .join(name);
    drop(fs::remove_dir_all(&folder));
    copy(built(), &folder)?;
    Ok(folder)
}

/// Leaves out the brotli copies, which would be sent in place of a changed file.
fn copy(from: &Path, to: &Path) -> Told {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let (old, new) = (
            entry.as_ref().map(fs::DirEntry::path),
            entry.as_ref().map(fs::DirEntry::file_name),
        );
        let (Ok(old), Ok(new)) = (old, new) else { continue };
        if old.is_dir() {
            copy(&old, &to.join(new))?;
        } else if old.extension().is_none_or(|kind| kind != "br") {
            fs::copy(&old, to.join(new))?;
        }
    }
    Ok(())
}

pub fn change(file: &Path, from: &str, to: &str) -> Told {
    let old = fs::read_to_string(file)?;
    assert!(old.contains(from), "{} lacks {from}", file.display());
    Ok(fs::write(file, old.replace(from, to))?)
}

/// Writes the worker of a folder whose files were changed, as the build would.
pub fn seal_anew(folder: &Path) -> Told {
    let template = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("public/sw.js"))?;
    let worker = Release::read(folder)?.worker(&template)?;
    Ok(fs::write(folder.join("sw.js"), worker)?)
}

/// The one file of that kind in a folder.
fn the_only(folder: &Path, kind: &str) -> Told<PathBuf> {
    let mut all = fs::read_dir(folder)?.flatten().map(|entry| entry.path());
    let found = all.find(|path| path.extension().is_some_and(|its| its == kind));
    Ok(found.expect("a release has one"))
}

pub const UPDATE: &str =
    "return navigator.serviceWorker.getRegistration().then(it => it.update()).then(() => 0, () => 0)";

pub async fn waits(page: &Page) -> Told {
    let waiting = "return navigator.serviceWorker.getRegistration().then(it => !!it.waiting)";
    page.until("the new release to wait", async || {
        Ok((page.script(waiting, Value::Null).await? == json!(true)).then_some(()))
    })
    .await
}

pub async fn take_over(page: &Page) -> Told {
    let tell =
        "navigator.serviceWorker.getRegistration().then(it => it.waiting.postMessage({ kind: 'take-over' }))";
    page.script(tell, Value::Null).await?;
    // Asked of the registration, as a question to the old worker would keep it from leaving.
    let settled = "return navigator.serviceWorker.getRegistration()
        .then(it => !it.waiting && it.active.state === 'activated')";
    page.until("the new release to take over", async || {
        Ok((page.script(settled, Value::Null).await? == json!(true)).then_some(()))
    })
    .await
}

/// It tried to mend itself first, by a reload; in vain, as the notice says.
async fn tried_to_mend(page: &Page) -> Told {
    let tried = "return document.readyState === 'complete' && document.getElementById('not-started')?.className === 'now'
        && performance.getEntriesByType('navigation')[0].type === 'reload'";
    page.until("the notice after a reload", async || {
        Ok((page.script(tried, Value::Null).await? == json!(true)).then_some(()))
    })
    .await
}

/// How many releases are kept.
async fn stores(page: &Page) -> Told<usize> {
    let stores = page.script("return caches.keys()", Value::Null).await?;
    Ok(stores.as_array().map_or(0, Vec::len))
}

#[test]
fn the_app_starts_without_a_network_after_one_visit() {
    story("starts-offline", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        page.stop_server();
        page.reload().await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        page.close_tab_and_return().await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        Ok(())
    });
}

#[test]
fn it_starts_offline_from_any_folder_of_a_host() {
    story("starts-in-a-folder", Screen::UPRIGHT, async |page| {
        let host = copy_of_release("in-a-folder")?;
        let deep = host.join("shop/bench");
        fs::create_dir_all(&deep)?;
        copy(built(), &deep)?;
        page.serve_instead(&host)?;
        page.open_at("shop/bench/").await?;
        page.offline_ready().await?;
        page.stop_server();
        page.reload().await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        Ok(())
    });
}

/// What the release calls itself: it stands behind the screen's name in the tab's title.
pub async fn release_name(page: &Page) -> Told<String> {
    let title = page.driver.title().await?;
    let name = title.rsplit_once(" · ").map_or("", |(_, name)| name);
    Ok(name.to_owned())
}

#[test]
fn a_new_release_waits_until_it_is_told() {
    story("new-release-waits", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        let first = page.release_in_charge().await?;

        let newer = copy_of_release("newer")?;
        change(
            &newer.join("index.html"),
            "<title>Halfcase</title>",
            "<title>Newer</title>",
        )?;
        seal_anew(&newer)?;
        page.serve_instead(&newer)?;
        page.script(UPDATE, Value::Null).await?;
        waits(page).await?;

        // Told at once, and led to by one touch: what is new in it, and the key that takes it.
        page.see_words("newer").await?;
        page.tap(button("Bench")).await?;
        page.see(heading("A newer release waits")).await?;
        let news = fs::read_to_string(newer.join("news.txt"))?;
        for line in news.lines() {
            page.see_words(line).await?;
        }
        assert!(news.lines().count() > 2, "{news}");
        page.see(button("Take the newer release")).await?;
        // The key is in sight before all that is new was read.
        let order = "const at = name => document.querySelector('.waits ' + name).getBoundingClientRect();
            return at('.work-key').bottom < Math.min(at('.news').top, innerHeight / 2)";
        assert_eq!(page.script(order, Value::Null).await?, Value::Bool(true));
        page.see_words("Halfcase 0.1.0").await?;
        page.screenshot("newer-waits").await?;
        page.tap(button("Job")).await?;

        // A reload brings the release at hand, whatever the server has.
        page.reload().await?;
        assert_eq!(release_name(page).await?, "Halfcase");
        assert_eq!(page.release_in_charge().await?, first);

        take_over(page).await?;
        assert_ne!(page.release_in_charge().await?, first);
        // Until it has started once the one before stays.
        assert_eq!(stores(page).await?, 2);
        page.stop_server();
        page.reload().await?;
        assert_eq!(release_name(page).await?, "Newer");
        // It is thrown away beside the page's own loading.
        page.until("the old release’s store to go", async || {
            Ok((stores(page).await? == 1).then_some(()))
        })
        .await
    });
}

/// The key that takes it stands with the line that tells of it, until there is something a reload would forget.
#[test]
fn a_release_that_waits_is_taken_by_one_touch() {
    story("one-touch-release", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        let newer = copy_of_release("one-touch")?;
        change(
            &newer.join("index.html"),
            "<title>Halfcase</title>",
            "<title>Newer</title>",
        )?;
        seal_anew(&newer)?;
        page.serve_instead(&newer)?;
        page.script(UPDATE, Value::Null).await?;
        waits(page).await?;
        page.see(button("take it")).await?;
        page.screenshot("one-touch-release").await?;
        // Something to take back: it is no longer offered here.
        page.tap(button("Done")).await?;
        page.gone(button("take it")).await?;
        page.reload().await?;
        page.tap(button("take it")).await?;
        page.until("the newer release", async || {
            Ok((release_name(page).await? == "Newer").then_some(()))
        })
        .await?;
        page.see(button(has("Next step"))).await.map(drop)
    });
}

#[test]
fn a_worker_of_nothing_is_not_offered() {
    story("void-waits", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        let void = copy_of_release("void")?;
        fs::write(void.join("sw.js"), "")?;
        page.serve_instead(&void)?;
        let update = "return navigator.serviceWorker.getRegistration().then(r => r.update().then(() => !!r.waiting, () => false))";
        page.until("the worker of nothing to wait", async || {
            Ok(
                (page.script(update, serde_json::Value::Null).await? == serde_json::json!(true))
                    .then_some(()),
            )
        })
        .await?;
        page.open_at("#bench").await?;
        page.see_words("Kept on this phone: starts without a network.")
            .await?;
        page.words_gone("A newer release waits").await
    });
}

#[test]
fn a_page_that_cannot_start_says_so() {
    story("cannot-start", Screen::UPRIGHT, async |page| {
        let broken = copy_of_release("broken")?;
        for entry in fs::read_dir(&broken)?.flatten() {
            if entry.path().extension().is_some_and(|kind| kind == "wasm") {
                fs::write(entry.path(), b"not WASM")?;
            }
        }
        page.serve_instead(&broken)?;
        page.driver.goto(page.url()).await?;
        tried_to_mend(page).await?;
        page.see(alert(has("Halfcase has not started"))).await?;
        page.see(button("Reload")).await?;
        assert!(!page.take_console_errors().await?.is_empty());
        Ok(())
    });
}

#[test]
fn a_fault_in_the_running_app_is_said_over_the_dead_page() {
    story("has-stopped", Screen::UPRIGHT, async |page| {
        page.open_at("#torque").await?;
        page.script(
            "dispatchEvent(new ErrorEvent('error', { error: new Error('a stranger on the page') }))",
            serde_json::Value::Null,
        )
        .await?;
        page.see(button("Job")).await?;
        page.script(
            "dispatchEvent(new ErrorEvent('error', { error: new WebAssembly.RuntimeError('unreachable') }))",
            serde_json::Value::Null,
        )
        .await?;
        page.see(alert(has("Halfcase has stopped"))).await?;
        page.fits_the_hand().await?;
        page.screenshot("has-stopped").await?;
        page.tap(button("Reload")).await?;
        page.gone(alert(has("Halfcase has stopped"))).await?;
        page.see(heading("Torque")).await.map(drop)
    });
}

/// Half a file, a flipped byte, a login page: none of them counts as part of a release.
#[test]
fn a_spoilt_update_is_not_offered_and_the_release_at_hand_stays() {
    story("spoilt-update", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        let first = page.release_in_charge().await?;
        for (name, spoil) in [
            (
                "half",
                (|bytes| bytes.truncate(bytes.len() / 2)) as fn(&mut Vec<u8>),
            ),
            ("flipped", |bytes| bytes[1_000] ^= 1),
            ("login", |bytes| {
                *bytes = b"<!doctype html><title>Log in</title>".to_vec()
            }),
        ] {
            let newer = copy_of_release(name)?;
            change(
                &newer.join("index.html"),
                "<title>Halfcase</title>",
                "<title>Newer</title>",
            )?;
            seal_anew(&newer)?;
            let wasm = the_only(&newer, "wasm")?;
            let mut bytes = fs::read(&wasm)?;
            spoil(&mut bytes);
            fs::write(&wasm, bytes)?;
            page.serve_instead(&newer)?;
            page.script(UPDATE, Value::Null).await?;
            let over =
                "return navigator.serviceWorker.getRegistration().then(it => !it.installing && !it.waiting)";
            page.until("the spoilt release to be refused", async || {
                Ok((page.script(over, Value::Null).await? == json!(true)).then_some(()))
            })
            .await?;
            page.reload().await?;
            assert_eq!(
                (page.release_in_charge().await?, release_name(page).await?),
                (first.clone(), "Halfcase".to_owned()),
                "{name}"
            );
        }
        page.take_console_errors().await.map(drop)
    });
}

/// Whole, but broken by its maker: the release before is back at the first try, without a network too.
#[test]
fn a_release_that_does_not_start_gives_way_to_the_one_before() {
    story("gives-way", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        let newer = copy_of_release("dead")?;
        change(
            &newer.join("index.html"),
            "<title>Halfcase</title>",
            "<title>Dead</title>",
        )?;
        fs::write(the_only(&newer, "wasm")?, b"not WASM")?;
        seal_anew(&newer)?;
        page.serve_instead(&newer)?;
        page.script(UPDATE, Value::Null).await?;
        waits(page).await?;
        take_over(page).await?;
        page.stop_server();
        page.driver.refresh().await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        assert_eq!(release_name(page).await?, "Halfcase");
        page.reload().await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        page.take_console_errors().await.map(drop)
    });
}

/// The store of the browser lost a byte: the app is fetched anew, by itself, and the job is there.
#[test]
fn a_spoilt_store_is_mended_from_the_network() {
    story("mended", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await?;
        let spoil = "return (async () => {
            const [name] = await caches.keys();
            const store = await caches.open(name);
            const file = (await store.keys()).find(request => request.url.endsWith('.wasm'));
            await store.put(file, new Response('spoilt', { headers: { 'content-type': 'application/wasm' } }));
        })()";
        page.script(spoil, Value::Null).await?;
        page.driver.refresh().await?;
        page.see(button(has("Next step"))).await?;
        page.offline_ready().await?;
        page.take_console_errors().await.map(drop)
    });
}

/// Without the app the data is still to be had, and Jobs takes the file in.
#[test]
fn the_data_is_saved_when_the_app_does_not_start() {
    story("saved-data", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await?;
        let broken = copy_of_release("unstartable")?;
        fs::write(the_only(&broken, "wasm")?, b"not WASM")?;
        seal_anew(&broken)?;
        page.serve_instead(&broken)?;
        page.script(
            "return navigator.serviceWorker.getRegistration().then(it => it.unregister())",
            Value::Null,
        )
        .await?;
        page.script(
            "return caches.keys().then(all => Promise.all(all.map(name => caches.delete(name))))",
            Value::Null,
        )
        .await?;
        page.driver.goto(format!("{}?fresh", page.url())).await?;
        tried_to_mend(page).await?;
        page.screenshot("not-started").await?;
        page.tap(button("Save my data as a file")).await?;
        let (name, bytes) = page.downloaded().await?;
        assert_eq!(name, "halfcase-kept.json");
        let file: Value = serde_json::from_slice(&bytes)?;
        let kept = file["kept"].as_object().expect("slots by their keys");
        assert!(
            kept.keys().any(|key| key.starts_with("halfcase/record/1/")),
            "{:?}",
            kept.keys()
        );
        // And what the journal holds of the last change.
        let turns = file["turns"].as_array().expect("turns of the journal");
        assert!(!turns.is_empty());
        page.take_console_errors().await.map(drop)
    });
}

/// The frame and its keys stand before the WASM has come, where they stay.
#[test]
fn the_frame_is_there_before_the_app_and_does_not_jump() {
    story("frame-first", Screen::UPRIGHT, async |page| {
        page.open_at("#torque").await?;
        page.see(heading("Torque")).await?;
        let places = "return JSON.stringify([...document.querySelectorAll('.strip, .edge, .edge button, .corner')]
            .map(it => { const { x, y, width, height } = it.getBoundingClientRect(); return [x, y, width, height].map(Math.round); }))";
        for screen in [Screen::UPRIGHT, Screen::SIDEWAYS, Screen::SMALL] {
            page.turn(screen).await?;
            let after = page.script(places, Value::Null).await?;
            // As it is on the wire, without the app that would take over.
            let before = format!(
                "const text = (await (await fetch('./')).text()).replace(/<script[^]*?<.script>|<meta[^>]*>|<base[^>]*>/g, '');
                 const page = new DOMParser().parseFromString(text, 'text/html');
                 const live = document.querySelector('.frame');
                 const still = document.importNode(page.getElementById('before'), true);
                 live.replaceWith(still);
                 const found = (() => {{ {places} }})();
                 still.replaceWith(live);
                 return found;"
            );
            let before = page
                .script(&format!("return (async () => {{ {before} }})()"), Value::Null)
                .await?;
            assert_eq!(before, after);
            page.screenshot("frame-first").await?;
        }
        Ok(())
    });
}

#[test]
fn inside_another_page_it_stays_shut() {
    story("framed", Screen::UPRIGHT, async |page| {
        let host = copy_of_release("framing")?;
        fs::write(
            host.join("thief.html"),
            "<!doctype html><title>Thief</title><link rel=\"icon\" href=\"data:,\"><iframe src=\"./\" width=\"380\" height=\"700\"></iframe>",
        )?;
        page.serve_instead(&host)?;
        page.driver.goto(format!("{}thief.html", page.url())).await?;
        let words = "return frames[0].document.body?.innerText ?? ''";
        page.until("the frame to say why", async || {
            let found = page.script(words, Value::Null).await?;
            Ok(found
                .as_str()
                .is_some_and(|words| words.contains("Halfcase is shut here"))
                .then_some(()))
        })
        .await?;
        let keys = "return frames[0].document.querySelectorAll('.frame:not([inert]) button').length";
        assert_eq!(page.script(keys, Value::Null).await?, json!(0));
        Ok(())
    });
}
