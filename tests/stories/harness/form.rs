//! What a finger does again and again: a number typed, a choice made, a screen looked at all round.

use super::browser::Screen;
use super::failure::Told;
use super::page::Page;
use super::target::{button, has, radio};
use serde_json::Value;

impl Page {
    /// Opens the field whose name holds `name`, types on its keypad and takes it.
    pub async fn enter(&mut self, name: &str, keys: &[&str]) -> Told {
        self.tap(button(has(name))).await?;
        self.tap_keys(keys).await?;
        self.tap(button("use")).await
    }

    /// Chooses from a row that opens into tiles.
    pub async fn choose(&mut self, row: &str, choice: &str) -> Told {
        self.tap(button(has(row))).await?;
        self.tap(radio(choice)).await
    }

    /// The screen fits the hand however the phone is held; a picture of each, and one in the dark.
    pub async fn fits_everywhere(&self, name: &str) -> Told {
        for (screen, held) in [
            (Screen::SIDEWAYS, "sideways"),
            (Screen::SMALL, "small"),
            (Screen::UPRIGHT, "upright"),
        ] {
            self.turn(screen).await?;
            // From its top: what is shown is then the same at every run.
            let top = "document.querySelector('main').scrollTop = 0";
            self.script(top, Value::Null).await?;
            self.fits_the_hand().await?;
            self.screenshot(&format!("{name}-{held}")).await?;
        }
        self.dark(true).await?;
        self.screenshot(&format!("{name}-dark")).await?;
        self.dark(false).await
    }
}
