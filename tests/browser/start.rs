//! The app starts, keeps itself, starts again with the network gone, and changes only when told.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};

use super::harness::*;

/// A copy of the release to change, in a folder of its own.
fn copy_of_release(name: &str) -> Told<PathBuf> {
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

fn change(file: &Path, from: &str, to: &str) -> Told {
    let old = fs::read_to_string(file)?;
    assert!(old.contains(from), "{} lacks {from}", file.display());
    Ok(fs::write(file, old.replace(from, to))?)
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

#[test]
fn a_new_release_waits_until_it_is_told() {
    story("new-release-waits", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;

        let newer = copy_of_release("newer")?;
        change(
            &newer.join("index.html"),
            "<title>Halfcase</title>",
            "<title>Newer</title>",
        )?;
        change(&newer.join("sw.js"), "const BUILD = '", "const BUILD = 'newer-")?;
        page.serve_instead(&newer)?;
        page.script(
            "navigator.serviceWorker.getRegistration().then(it => it.update())",
            Value::Null,
        )
        .await?;
        let waiting = "return navigator.serviceWorker.getRegistration().then(it => !!it.waiting)";
        page.until("the new release to wait", async || {
            Ok((page.script(waiting, Value::Null).await? == json!(true)).then_some(()))
        })
        .await?;

        // A reload brings the release at hand, whatever the server has.
        page.reload().await?;
        assert_eq!(page.driver.title().await?, "Halfcase");
        let build = page.release_in_charge().await?;
        assert!(
            !build.starts_with("newer-"),
            "the release at hand answers, not {build}"
        );

        let tell = "navigator.serviceWorker.getRegistration().then(it => it.waiting.postMessage({ kind: 'take-over' }))";
        page.script(tell, Value::Null).await?;
        // Asked of the registration, as a question to the old worker would keep it from leaving.
        let settled = "return navigator.serviceWorker.getRegistration()
            .then(it => !it.waiting && it.active.state === 'activated')";
        page.until("the new release to take over", async || {
            Ok((page.script(settled, Value::Null).await? == json!(true)).then_some(()))
        })
        .await?;
        let build = page.release_in_charge().await?;
        assert!(
            build.starts_with("newer-"),
            "the new release answers, not {build}"
        );
        page.stop_server();
        page.reload().await?;
        assert_eq!(page.driver.title().await?, "Newer");
        // It is thrown away beside the page's own loading.
        page.until("the old release’s store to go", async || {
            let stores = page.script("return caches.keys()", Value::Null).await?;
            Ok((stores.as_array().map(Vec::len) == Some(1)).then_some(()))
        })
        .await?;
        Ok(())
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
