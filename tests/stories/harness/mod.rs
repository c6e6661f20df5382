//! What a story needs: the built release, a server to stop and start, a browser with a finger.
//!
//! ```ignore
//! #[test]
//! fn a_bolt_is_tallied() {
//!     story("a-bolt-is-tallied", Screen::UPRIGHT, async |page| {
//!         page.open().await?;
//!         page.tap(button("Tally")).await?;
//!         page.see(status("1 of 6")).await?;
//!         page.screenshot("tally").await
//!     });
//! }
//! ```

// A vocabulary for all stories, not each word of which is in use at every moment.
#![allow(dead_code)]

mod audit;
mod bench;
mod browser;
mod clock;
mod failure;
mod faulty;
mod finger;
mod form;
mod page;
mod phone;
mod release;
mod shop;
mod storage;
mod target;
mod trap;
mod tree;

pub use browser::Screen;
pub use failure::{Failure, Told};
pub use faulty::{FaultyHost, Spoilt};
pub use page::Page;
pub use release::built;
pub use target::*;

use std::future::poll_fn;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::pin::pin;
use std::task::Poll;

/// Plays one story in a fresh browser against a server of its own, and fails the test with the
/// story's own words. A failure leaves `target/screenshots/failed-NAME.png`.
///
/// At the end the browser's console must hold no error, and nothing may have been asked of another host.
pub fn story(name: &str, screen: Screen, tell: impl AsyncFnOnce(&mut Page) -> Told) {
    play(name, screen, false, tell);
}

/// The same in the whole browser, for what its shell without a window lacks: notifications, and a profile that
/// is opened again after a kill.
pub fn story_in_whole_browser(name: &str, screen: Screen, tell: impl AsyncFnOnce(&mut Page) -> Told) {
    play(name, screen, true, tell);
}

fn play(name: &str, screen: Screen, whole: bool, tell: impl AsyncFnOnce(&mut Page) -> Told) {
    let folder = built();
    let _place = shop::place();
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(1)
        .enable_all()
        .build()
        .expect("a tokio runtime for the story");
    let ending = runtime.block_on(async {
        let mut page = Page::new(name, screen, folder, whole).await?;
        let ending = {
            let mut telling = pin!(tell(&mut page));
            // A failed assert must still leave a picture and close the browser.
            poll_fn(
                |context| match catch_unwind(AssertUnwindSafe(|| telling.as_mut().poll(context))) {
                    Ok(Poll::Pending) => Poll::Pending,
                    Ok(Poll::Ready(told)) => Poll::Ready(Ok(told)),
                    Err(panic) => Poll::Ready(Err(panic)),
                },
            )
            .await
        };
        let foreign = page.no_foreign_request().await;
        let ending = match ending {
            Ok(Ok(())) => Ok(match foreign {
                Ok(()) => page.no_console_errors().await,
                foreign => foreign,
            }),
            // A story that failed may be the one in which a stranger was asked.
            Ok(Err(failure)) => Ok(Err(match foreign {
                Ok(()) => failure,
                Err(foreign) => Failure::new(format!("{failure}; and {foreign}")),
            })),
            Err(panic) => {
                foreign.unwrap_or_else(|foreign| eprintln!("story \"{name}\": {foreign}"));
                Err(panic)
            }
        };
        if !matches!(ending, Ok(Ok(()))) {
            drop(page.screenshot(&format!("failed-{name}")).await);
        }
        page.close().await;
        Ok::<_, Failure>(ending)
    });
    match ending {
        Ok(Ok(Ok(()))) => {}
        Ok(Ok(Err(failure))) | Err(failure) => panic!("story \"{name}\": {failure}"),
        Ok(Err(panic)) => resume_unwind(panic),
    }
}
