//! Rules that hold on every screen, checked on the one that is shown.

use serde_json::{Value, json};

use super::page::Page;
use super::target::Target;
use super::{Failure, Told};

/// Shared by the audits: what can be seen, and how to call it in a message.
const EYES: &str = "
    const seen = thing => thing.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true })
        && thing.getClientRects().length > 0;
    const called = thing => {
        const name = thing.getAttribute('aria-label') || thing.innerText || thing.labels?.[0]?.innerText || thing.id || thing.className || '';
        return thing.tagName.toLowerCase() + ' \"' + String(name).replace(/\\s+/g, ' ').slice(0, 40) + '\"';
    };
    const keys = () => [...document.querySelectorAll(
        'button, a[href], input, select, textarea, summary, [role=button], [role=radio], [role=tab], [role=switch]')]
        .map(key => key.matches('input[type=radio], input[type=checkbox], input[type=file]')
            ? key.closest('label') ?? key : key)
        .filter((key, place, all) => seen(key) && all.indexOf(key) === place && within(key));
    // What is scrolled out of its box lies under no finger.
    const within = key => {
        const box = key.getBoundingClientRect();
        const stage = key.closest('.stage');
        if (stage && box.left >= stage.getBoundingClientRect().right - 13) return false;
        for (let holder = key.parentElement; holder; holder = holder.parentElement) {
            if (!/auto|scroll|hidden/.test(getComputedStyle(holder).overflowY)) continue;
            const edge = holder.getBoundingClientRect();
            if (box.top < edge.top - 0.5 || box.bottom > edge.bottom + 0.5) return false;
        }
        return true;
    };";

impl Page {
    async fn audit(&self, rule: &str, body: &str, with: Value) -> Told {
        let offenders = self.script(&format!("{EYES}{body}"), with).await?;
        let offenders: Vec<String> = serde_json::from_value(offenders)?;
        match offenders.is_empty() {
            true => Ok(()),
            false => Err(Failure::new(format!(
                "{rule}, but:\n  {}",
                offenders.join("\n  ")
            ))),
        }
    }

    /// Nothing is wider than the screen, and nothing scrolls sideways inside it.
    pub async fn no_sideways_scroll(&self) -> Told {
        let body = "
            const wide = document.documentElement.clientWidth;
            // What found no place on a stage stands past its right edge, whole and out of sight.
            const leftOut = (thing, box) => {
                const stage = thing.closest('.stage');
                return stage && box.left >= stage.getBoundingClientRect().right - 13;
            };
            const page = document.scrollingElement;
            const found = page.scrollWidth > wide ? ['the page is ' + page.scrollWidth + ' px wide'] : [];
            for (const thing of document.body.querySelectorAll('*')) {
                if (!seen(thing)) continue;
                const box = thing.getBoundingClientRect();
                const slides = /auto|scroll/.test(getComputedStyle(thing).overflowX)
                    && thing.scrollWidth > thing.clientWidth + 1;
                if (slides) {
                    const edge = thing.getBoundingClientRect().left + thing.clientLeft + thing.clientWidth;
                    const over = [...thing.querySelectorAll('*')].filter(inner => seen(inner) && inner.getBoundingClientRect().right > edge + 1);
                    found.push(called(thing) + ' scrolls sideways: ' + over.slice(-3).map(inner => called(inner) + '.' + inner.className).join(', '));
                }
                if (box.width > 1 && box.right > wide + 1 && !leftOut(thing, box)) found.push(called(thing) + ' ends at ' + Math.round(box.right));
            }
            return found.slice(0, 20);";
        self.audit("nothing may need sideways scrolling", body, Value::Null)
            .await
    }

    /// Everything that can be touched is at least `px` wide and high (48 by the product's rule).
    pub async fn keys_at_least(&self, px: u32) -> Told {
        let body = "
            return keys().map(key => [key, key.getBoundingClientRect()])
                .filter(([, box]) => box.width < arguments[0] - 0.5 || box.height < arguments[0] - 0.5)
                .map(([key, box]) => called(key) + ' is ' + Math.round(box.width) + ' × ' + Math.round(box.height));";
        self.audit(&format!("every key is at least {px} px"), body, json!(px))
            .await
    }

    /// Keys lie at least `px` apart, so that a finger on one misses the next (8 by the product's rule).
    /// What scrolls past a bar or a pinned plate is compared with its own kind only.
    pub async fn keys_apart(&self, px: u32) -> Told {
        let body = "
            const holder = thing => {
                for (let up = thing; up; up = up.parentElement) {
                    const style = getComputedStyle(up);
                    if (/auto|scroll/.test(style.overflowY) || /sticky|fixed/.test(style.position)) return up;
                }
            };
            const all = keys().map(key => [key, key.getBoundingClientRect(), holder(key)]), found = [];
            all.forEach(([one, a, here], place) => all.slice(place + 1).forEach(([other, b, there]) => {
                if (one.contains(other) || other.contains(one) || here !== there) return;
                const across = Math.max(a.left - b.right, b.left - a.right);
                const down = Math.max(a.top - b.bottom, b.top - a.bottom);
                const gap = Math.max(across, down);
                if (gap < arguments[0] - 0.5) found.push(called(one) + ' and ' + called(other) + ': ' + Math.round(gap) + ' px');
            }));
            return found.slice(0, 20);";
        self.audit(&format!("keys lie {px} px apart"), body, json!(px))
            .await
    }

    /// No words that can be read are smaller than `px`.
    pub async fn words_at_least(&self, px: u32) -> Told {
        let body = "
            const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), found = [];
            while (walker.nextNode()) {
                const words = walker.currentNode.data.trim(), holder = walker.currentNode.parentElement;
                if (!words || !seen(holder) || holder.closest('script, style, noscript')) continue;
                const box = holder.getBoundingClientRect();
                if (box.width <= 1 || box.height <= 1) continue;
                const size = parseFloat(getComputedStyle(holder).fontSize);
                if (size < arguments[0] - 0.1) found.push('\"' + words.slice(0, 40) + '\" is ' + size + ' px');
            }
            return found.slice(0, 20);";
        self.audit(&format!("words are at least {px} px"), body, json!(px))
            .await
    }

    /// That key is at least so large: 120 × 88 for those that move the work on, 80 × 64 on keypads.
    pub async fn key_at_least(&self, target: Target, width: u32, height: u32) -> Told {
        let name = target.to_string();
        let spot = self.place_of(target).await?;
        if spot.width < f64::from(width) - 0.5 || spot.height < f64::from(height) - 0.5 {
            let (has_width, has_height) = (spot.width.round(), spot.height.round());
            return Err(Failure::new(format!(
                "{name} is at least {width} × {height} px, but: it is {has_width} × {has_height}"
            )));
        }
        Ok(())
    }

    /// The rules of size that every screen keeps: sideways scroll, keys, gaps, words.
    pub async fn fits_the_hand(&self) -> Told {
        self.no_sideways_scroll().await?;
        self.keys_at_least(48).await?;
        self.keys_apart(8).await?;
        self.words_at_least(18).await
    }

    /// The console holds no error since the last look. What the network caused while the server
    /// was stopped is no error of the app.
    pub async fn no_console_errors(&self) -> Told {
        let away = |message: &str| {
            self.was_offline && (message.contains("net::ERR_") || message.contains("fetching the script"))
        };
        let errors: Vec<String> = self
            .driver
            .browser_log()
            .await?
            .into_iter()
            .filter(|entry| entry.level == "SEVERE" && !away(&entry.message))
            .map(|entry| entry.message)
            .collect();
        match errors.is_empty() {
            true => Ok(()),
            false => Err(Failure::new(format!(
                "the console holds errors:\n  {}",
                errors.join("\n  ")
            ))),
        }
    }

    /// Reads the console's errors and forgets them: for a story that provokes one.
    pub async fn take_console_errors(&self) -> Told<Vec<String>> {
        let entries = self.driver.browser_log().await?.into_iter();
        Ok(entries
            .filter(|entry| entry.level == "SEVERE")
            .map(|entry| entry.message)
            .collect())
    }
}
