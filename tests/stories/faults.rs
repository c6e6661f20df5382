//! What goes wrong around the app: the whole browser killed, stores that refuse, addresses and words that
//! are none. Short here; `HALFCASE_FAULTS=126` makes each that many times as long, or tries so many spoilt
//! files (`-- no_spoilt`: 126 at the first visit, 36 in an update); `HALFCASE_SEED` begins elsewhere.

use std::path::Path;
use std::time::Duration;

use halfcase::setup::worker::Release;
use serde_json::{Value, json};

use super::harness::*;
use super::start::{UPDATE, change, copy_of_release, release_name, seal_anew, take_over, waits};

fn told(name: &str, otherwise: u64) -> u64 {
    let told = std::env::var(name).ok();
    told.and_then(|told| told.parse().ok()).unwrap_or(otherwise)
}

/// A row of numbers from a seed (SplitMix64).
struct Chance(u64);

impl Chance {
    fn new() -> Self {
        Self(told("HALFCASE_SEED", 20_261_128))
    }

    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) % end
    }
}

/// The number of the last transaction that local storage tells of.
async fn last(page: &Page) -> Told<u64> {
    let mut last = 0;
    for key in ["halfcase/mark/a", "halfcase/mark/b"] {
        let mark = page.stored(key).await?.unwrap_or_default();
        let number = mark.split(' ').nth(1).and_then(|number| number.parse().ok());
        last = last.max(number.unwrap_or(0));
    }
    Ok(last)
}

/// Waits until the last change counts as kept.
async fn kept(page: &Page) -> Told {
    page.until("the change to be kept", async || {
        let there = "return !document.querySelector('.corner.keeping')";
        Ok((page.script(there, Value::Null).await? == json!(true)).then_some(()))
    })
    .await
}

/// The battery dies right after a touch that counts as kept: the touch is there.
#[test]
fn the_whole_browser_killed_after_a_touch_has_it() {
    story_in_whole_browser("browser-killed", Screen::UPRIGHT, async |page| {
        let mut chance = Chance::new();
        // Begun by touch: the journal has all of it, the first job too.
        page.with_nothing_stored().await?;
        page.open_at("#jobs").await?;
        page.tap(button("from the example")).await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await?;
        kept(page).await?;
        page.screenshot("kept").await?;
        let mut put_back = 0;
        let rounds = told("HALFCASE_FAULTS", 2);
        for round in 0..rounds {
            let before = last(page).await?;
            page.kill_browser_and_return().await?;
            page.open_at("#step/1").await?;
            page.see(button(has("Next step"))).await?;
            let after = last(page).await?;
            assert!(
                after >= before,
                "round {round}: {before} were kept, {after} are there"
            );
            put_back += u64::from(page.text().await?.contains("put back"));
            // More touches, then anywhere in the seconds that the browser takes to write.
            page.tap(button("Torque")).await?;
            if page.there(button(has("Any only convert"))).await? {
                page.tap(button(has("Any only convert"))).await?;
            }
            for _ in 0..=chance.below(4) {
                let digit = chance.below(10).to_string();
                page.tap(button(digit.as_str())).await?;
            }
            kept(page).await?;
            tokio::time::sleep(Duration::from_millis(chance.below(3_000))).await;
        }
        println!("{rounds} browsers killed, {put_back} times something was put back");
        // A slow computer may have written all by itself before the kill, but not each time.
        assert!(
            put_back > 0 || rounds < 10,
            "nothing had to be put back: the test proves nothing"
        );
        Ok(())
    });
}

/// The tab is killed right after a touch that counts as kept: the touch is there.
#[test]
fn a_tab_killed_after_a_touch_has_it() {
    story("tab-killed", Screen::UPRIGHT, async |page| {
        let mut chance = Chance::new();
        page.open_at("#torque").await?;
        let mut put_back = 0;
        let rounds = told("HALFCASE_FAULTS", 2);
        for round in 0..rounds {
            let mut typed = String::new();
            for _ in 0..=chance.below(4) {
                let digit = chance.below(10).to_string();
                page.tap(button(digit.as_str())).await?;
                typed += &digit;
            }
            kept(page).await?;
            tokio::time::sleep(Duration::from_millis(chance.below(60))).await;
            let before = (last(page).await?, stored_digits(page).await?);
            assert!(before.1.ends_with(&typed), "{before:?} lacks {typed}");
            page.kill_tab_and_return().await?;
            let after = (last(page).await?, stored_digits(page).await?);
            assert!(
                after.0 >= before.0 && after.1 == before.1,
                "round {round}: {before:?} were kept, {after:?} are there"
            );
            put_back += u64::from(page.text().await?.contains("put back"));
            // Another begins with nothing typed.
            page.open_at("#torque").await?;
            page.tap(button("clear")).await?;
            kept(page).await?;
        }
        println!("{rounds} tabs killed, {put_back} times something was put back");
        Ok(())
    });
}

/// What is typed on Torque, as local storage has it.
async fn stored_digits(page: &Page) -> Told<String> {
    let mut newest = (0, String::new());
    for key in ["halfcase/typed/a", "halfcase/typed/b"] {
        let slot = page.stored(key).await?.unwrap_or_default();
        let number = slot.split(' ').nth(1).and_then(|number| number.parse().ok());
        let words = slot.split('\n').nth(1).and_then(|text| {
            let typed: Value = serde_json::from_str(text).ok()?;
            Some(typed["torque_typed"].as_str()?.to_owned())
        });
        newest = newest.max((number.unwrap_or(0), words.unwrap_or_default()));
    }
    Ok(newest.1)
}

/// Whatever a page or its worker asks of a stranger is caught, though the page is long another.
#[test]
fn a_page_that_asks_a_stranger_is_caught() {
    story("asks-a-stranger", Screen::UPRIGHT, async |page| {
        let host = copy_of_release("telling")?;
        std::fs::write(
            host.join("telling.html"),
            "<!doctype html><title>Telling</title><link rel=\"icon\" href=\"data:,\">
             <img src=\"http://one.invalid/a.png\"><img src=\"https://two.invalid/b.png\">
             <script>navigator.serviceWorker.register('./telling.js', { scope: './telling/' })</script>",
        )?;
        std::fs::write(
            host.join("telling.js"),
            "addEventListener('install', event => event.waitUntil(fetch('http://three.invalid/c').catch(() => {})))",
        )?;
        page.serve_instead(&host)?;
        page.driver.goto(format!("{}telling.html", page.url())).await?;
        let installed =
            "return navigator.serviceWorker.getRegistration('./telling/').then(it => !!it?.active)";
        page.until("the telling worker", async || {
            Ok((page.script(installed, Value::Null).await? == json!(true)).then_some(()))
        })
        .await?;
        // Another page since, which asked nobody.
        page.open().await?;
        let mut asked = page.take_foreign_requests();
        asked.sort();
        asked.dedup();
        assert_eq!(
            asked,
            [
                "CONNECT two.invalid:443",
                "GET http://one.invalid/a.png",
                "GET http://three.invalid/c"
            ]
        );
        page.take_console_errors().await.map(drop)
    });
}

/// Each way a database can fail: the app starts, works, and says on Bench what a crash may cost.
#[test]
fn without_a_database_it_works_as_before_and_says_so() {
    story("no-database", Screen::UPRIGHT, async |page| {
        page.open().await?;
        for (how, script) in [
            (
                "none",
                "Object.defineProperty(window, 'indexedDB', { value: undefined })",
            ),
            (
                "refused",
                "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); }",
            ),
            ("never", "IDBFactory.prototype.open = () => ({})"),
            (
                "full",
                "IDBObjectStore.prototype.add = () => { throw new DOMException('no', 'QuotaExceededError'); }",
            ),
            (
                "shut",
                "IDBDatabase.prototype.transaction = () => { throw new DOMException('no', 'InvalidStateError'); }",
            ),
        ] {
            page.close_tab_and_return().await?;
            page.before_each_page(script).await?;
            page.reload().await?;
            page.tap(button("Torque")).await?;
            page.tap(button("7")).await?;
            kept(page).await?;
            page.tap(button("Bench")).await?;
            page.see_words("the last minute may be lost")
                .await
                .map_err(|failure| Failure::new(format!("{how}: {failure}")))?;
        }
        Ok(())
    });
}

/// What a page came to.
#[derive(Debug, PartialEq, Eq)]
enum Came {
    /// The app stands.
    Started,
    /// The notice stands, with its keys.
    Said,
}

/// What the page has come to by now, if anything.
async fn came(page: &Page) -> Told<Option<Came>> {
    let look = "
        if (document.readyState !== 'complete') return '';
        const notice = document.getElementById('not-started');
        if (notice?.className === 'now') return 'said';
        return document.querySelector('.frame:not(#before)') && !document.getElementById('before') ? 'started' : '';";
    let seen = page.script(look, Value::Null).await?;
    Ok(match seen.as_str() {
        Some("started") => Some(Came::Started),
        Some("said") => Some(Came::Said),
        _ => None,
    })
}

/// Every file of a release in turn, the worker too, each in every way.
fn faults(folder: &Path, chance: &mut Chance, rounds: u64) -> Told<Vec<(String, Spoilt)>> {
    let mut names: Vec<String> = Release::read(folder)?.names().map(str::to_owned).collect();
    names.push("sw.js".to_owned());
    let mut all = Vec::new();
    while (all.len() as u64) < rounds {
        let mut once: Vec<(String, Spoilt)> = Vec::new();
        for name in &names {
            let ways = [
                Spoilt::Half,
                Spoilt::Flipped(chance.below(1 << 20) as usize),
                Spoilt::Empty,
                Spoilt::LoginPage,
                Spoilt::NotFound,
                Spoilt::Failed,
                Spoilt::HungUp,
            ];
            once.extend(ways.map(|how| (name.clone(), how)));
        }
        // In another order each time, so that few rounds try different things.
        while !once.is_empty() {
            all.push(once.swap_remove(chance.below(once.len() as u64) as usize));
        }
    }
    all.truncate(rounds as usize);
    Ok(all)
}

/// Whether the worker in charge answers, and nothing waits behind it.
async fn kept_whole(page: &Page) -> Told<Value> {
    let ask = "
        return (async () => {
            const here = await navigator.serviceWorker.getRegistration();
            if (here.waiting || here.installing) return false;
            const heard = new Promise(resolve => {
                const own = event => event.source === navigator.serviceWorker.controller;
                navigator.serviceWorker.addEventListener('message', event => own(event) && resolve(event.data?.kind === 'this'));
                setTimeout(resolve, 500, false);
            });
            navigator.serviceWorker.controller?.postMessage({ kind: 'which' });
            return heard;
        })();";
    page.script(ask, Value::Null).await
}

/// The host is honest again: the app starts, by a reload or by the notice's key, and is whole without a network.
async fn comes_back(page: &mut Page, host: &FaultyHost, folder: &Path, told: &str) -> Told<bool> {
    host.is_honest(folder);
    let failed = |failure: Failure| Failure::new(format!("{told}: {failure}"));
    page.driver.refresh().await?;
    let first = page.until("the app or its notice", async || came(page).await);
    let mut by_key = false;
    if first.await.map_err(failed)? == Came::Said {
        // It may be mending itself at this moment.
        tokio::time::sleep(Duration::from_secs(1)).await;
        if came(page).await.unwrap_or(None) == Some(Came::Said) {
            by_key = true;
            page.tap(button(has("Mend"))).await.map_err(failed)?;
        }
        let started = async || Ok((came(page).await? == Some(Came::Started)).then_some(()));
        page.until("the app", started).await.map_err(failed)?;
    }
    page.offline_ready().await.map_err(failed)?;
    // The worker in charge is one of ours.
    page.until("the release to be kept", async || {
        Ok((kept_whole(page).await? == json!(true)).then_some(()))
    })
    .await
    .map_err(failed)?;
    host.is_away();
    page.reload().await.map_err(failed)?;
    page.see(button("Done")).await.map_err(failed)?;
    Ok(by_key)
}

/// Any file spoilt at the first visit: nothing stays behind that would keep the app from starting later.
#[test]
fn no_spoilt_file_at_the_first_visit_stays() {
    story("spoilt-installs", Screen::UPRIGHT, async |page| {
        let mut chance = Chance::new();
        let release = copy_of_release("spoilt-installs")?;
        let host = FaultyHost::start(&release)?;
        page.visit_instead(host.port);
        let (mut started, mut said, mut by_key) = (0, 0, 0);
        let all = faults(&release, &mut chance, told("HALFCASE_FAULTS", 2))?;
        for (name, how) in &all {
            let told = format!("{name} {how:?} at the first visit");
            host.spoils(&release, name, *how);
            page.try_to_open().await;
            // A page that is not ours comes to nothing; a dead one is said within 12 s, which need not be
            // waited for.
            for _ in 0..40 {
                match came(page).await.unwrap_or(None) {
                    Some(Came::Started) => started += 1,
                    Some(Came::Said) => said += 1,
                    None => {
                        tokio::time::sleep(Duration::from_millis(50)).await;
                        continue;
                    }
                }
                break;
            }
            by_key += u64::from(comes_back(page, &host, &release, &told).await?);
            page.as_never_visited().await?;
        }
        println!(
            "{} first visits with a spoilt file: {started} started all the same, {said} said so; all started \
             once the host was honest, {by_key} by the key",
            all.len()
        );
        page.take_console_errors().await.map(drop)
    });
}

/// A newer release spoilt on the way in any file: not one is taken, the one at hand starts without a network
/// and with what was done, and the newer one comes in once it is whole.
#[test]
fn no_spoilt_file_comes_in_with_an_update() {
    story("spoilt-updates", Screen::UPRIGHT, async |page| {
        let mut chance = Chance::new();
        let (release, newer) = (copy_of_release("at-hand")?, copy_of_release("spoilt-newer")?);
        let title = "<title>Halfcase</title>";
        change(&newer.join("index.html"), title, "<title>Newer</title>")?;
        seal_anew(&newer)?;
        let host = FaultyHost::start(&release)?;
        page.visit_instead(host.port);
        let rounds = (told("HALFCASE_FAULTS", 7) * 36 / 126).max(2);
        let all = faults(&newer, &mut chance, rounds)?;
        for (name, how) in &all {
            let told = format!("{name} {how:?} in an update");
            let failed = |failure: Failure| Failure::new(format!("{told}: {failure}"));
            host.is_honest(&release);
            page.open().await.map_err(failed)?;
            page.offline_ready().await.map_err(failed)?;
            page.tap(button("Done")).await.map_err(failed)?;
            page.see(button(has("Next step"))).await.map_err(failed)?;
            let first = page.release_in_charge().await?;
            host.spoils(&newer, name, *how);
            page.script(UPDATE, Value::Null).await?;
            let over = "return navigator.serviceWorker.getRegistration().then(it => !it.installing)";
            page.until("the update to end", async || {
                Ok((page.script(over, Value::Null).await? == json!(true)).then_some(()))
            })
            .await
            .map_err(failed)?;
            let waiting = "return navigator.serviceWorker.getRegistration().then(it => !!it.waiting)";
            let waiting = page.script(waiting, Value::Null).await?;
            // A worker with another bit in a comment keeps the same files; one of nothing is a worker too, but
            // never takes over.
            let is_worker = name == "sw.js" && matches!(how, Spoilt::Flipped(_) | Spoilt::Empty);
            assert!(waiting == json!(false) || is_worker, "{told} is offered");
            host.is_away();
            page.reload().await.map_err(failed)?;
            assert_eq!(page.release_in_charge().await?, first, "{told}");
            page.see(button(has("Next step"))).await.map_err(failed)?;
            host.is_honest(&newer);
            page.script(UPDATE, Value::Null).await?;
            page.until("the update to end", async || {
                Ok((page.script(over, Value::Null).await? == json!(true)).then_some(()))
            })
            .await
            .map_err(failed)?;
            waits(page).await.map_err(failed)?;
            take_over(page).await.map_err(failed)?;
            page.reload().await.map_err(failed)?;
            assert_eq!(release_name(page).await?, "Newer", "{told}");
            page.see(button(has("Next step"))).await.map_err(failed)?;
            page.as_never_visited().await?;
        }
        println!(
            "{} updates with a spoilt file: none taken, each came in whole later",
            all.len()
        );
        page.take_console_errors().await.map(drop)
    });
}

const FULL: &str = "
    window.roomy = Storage.prototype.setItem;
    Storage.prototype.setItem = function (key, text) {
        if (key.startsWith('halfcase/')) throw new DOMException('full', 'QuotaExceededError');
        window.roomy.call(this, key, text);
    };";

/// Full in the middle of the work: the message leads to where room is made, and back to the step.
#[test]
fn a_full_store_leads_to_where_room_is_made_and_back() {
    story("full-store", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.script(FULL, Value::Null).await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await?;
        page.see_words("storage is full").await?;
        page.fits_the_hand().await?;
        page.screenshot("full").await?;
        page.tap(button("make room")).await?;
        page.see(heading("Jobs")).await?;
        page.see_words("Not everything is kept yet").await?;
        page.see(button("back up the whole bench")).await?;
        page.screenshot("make-room").await?;
        page.tap(button("back to where I was")).await?;
        page.see(button(has("Next step"))).await?;
        page.script("Storage.prototype.setItem = window.roomy", Value::Null)
            .await?;
        page.tap(button("Torque")).await?;
        page.tap(button("7")).await?;
        page.see_words("There is room again").await?;
        page.words_gone("storage is full").await?;
        page.reload().await?;
        page.open_at("#step/1").await?;
        page.see(button(has("Next step"))).await.map(drop)
    });
}

/// Words and addresses that are none: nothing stops, nothing runs, nothing is taken for markup.
#[test]
fn strange_words_and_addresses_stop_nothing() {
    const PIECES: [&str; 20] = [
        "<script>window.let_in=1</script>",
        "<img src=x onerror=window.let_in=1>",
        "javascript:window.let_in=1",
        "' onclick='window.let_in=1",
        "\u{202e}\u{0}\u{feff}",
        "../../../etc/passwd",
        "%00%ff%2e%2e",
        "step/99999999999999999999",
        "step/-1",
        "torque/NaN",
        "plan/4294967295",
        "lift/1e309",
        "=1+1",
        "{\"form\":\"halfcase backup\"}",
        "\\u{1F527}",
        "🔧🔩",
        "a̐éö̲",
        "record#step/1",
        "?#?#",
        "null",
    ];
    story("strange-words", Screen::UPRIGHT, async |page| {
        let mut chance = Chance::new();
        page.open().await?;
        let rounds = 30 * told("HALFCASE_FAULTS", 1);
        for _ in 0..rounds {
            let pieces = (0..=chance.below(3)).map(|_| PIECES[chance.below(20) as usize]);
            let words: String = pieces.collect();
            let go = "location.hash = arguments[0]";
            page.script(go, json!(words)).await?;
            page.see(button("Job")).await?;
            page.script("location.hash = 'bench'", Value::Null).await?;
            page.see(heading("Bench")).await?;
            let field = "
                const field = [...document.querySelectorAll('input[type=text]')].at(-1);
                field.value = arguments[0];
                field.dispatchEvent(new Event('change', { bubbles: true }));";
            page.script(field, json!(words)).await?;
        }
        page.tap(button("Job")).await?;
        page.see(button("Done")).await?;
        let let_in = page.script("return window.let_in ?? null", Value::Null).await?;
        assert_eq!(let_in, Value::Null);
        println!("{rounds} strange addresses and words");
        Ok(())
    });
}

/// No text becomes a script, nor markup that could bring one, where the browser can see to it.
#[test]
fn no_text_becomes_a_script() {
    story("trusted-types", Screen::UPRIGHT, async |page| {
        page.open().await?;
        let tried = "
            const refused = act => { try { act(); return false; } catch { return true; } };
            const box = document.createElement('div');
            return [
                'trustedTypes' in window,
                refused(() => { box.innerHTML = '<img src=x onerror=alert(1)>'; }),
                refused(() => { box.innerHTML = '<iframe src=x></iframe>'; }),
                refused(() => { document.createElement('script').text = 'alert(1)'; }),
                refused(() => { document.createElement('script').src = './rescue.js'; }),
                refused(() => { setTimeout('alert(1)', 0); }),
                refused(() => { trustedTypes.createPolicy('another', {}); }),
                refused(() => { box.innerHTML = '<p>words</p>'; }),
            ].join();";
        let tried = page.script(tried, Value::Null).await?;
        assert_eq!(tried, json!("true,true,true,true,true,true,true,false"));
        page.take_console_errors().await.map(drop)
    });
}
