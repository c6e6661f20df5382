//! The first job from the wash to its end by the keys of a keyboard alone, no finger on the screen: one key a bolt.

use super::harness::*;
use serde_json::{Value, json};
use std::time::Duration;

/// What is read, and what is typed for it.
const READINGS: [(&str, &str); 12] = [
    ("bore across", "61.974"),
    ("bore along", "61.971"),
    ("gap at 12", "0.72"),
    ("gap at 6", "0.70"),
    ("end float", "0.08"),
    ("widest place", "0.05"),
    ("narrow end", "0.055"),
    ("hole in line", "68"),
    ("put in", "1.1"),
    ("drips seen", "0"),
    ("warm to", "80"),
    ("run for", "12"),
];

/// What is said where a step asks for words; each the answer that finds nothing wrong.
const ANSWERS: [&str; 7] = [
    "spins freely",
    "on",
    "it runs",
    "none seen",
    "cold enough to touch",
    "reached",
    "torqued again",
];

/// What the step says now: its title, its big key's words, whether that rests or is shut, the answers in sight.
struct Seen {
    title: String,
    key: String,
    rests: bool,
    answers: Vec<String>,
}

async fn seen(page: &Page) -> Told<Seen> {
    let look = "
        const key = document.querySelector('.work-keys .first');
        const all = [...document.querySelectorAll('.stage button')].map(button => button.innerText.trim());
        return [document.querySelector('.step h1').innerText, key ? key.innerText : '', key?.ariaDisabled === 'true', all];";
    let found = page.script(look, Value::Null).await?;
    let words = |value: &Value| value.as_str().unwrap_or_default().replace('\n', " ");
    let answers = found[3].as_array().into_iter().flatten();
    Ok(Seen {
        title: words(&found[0]),
        key: words(&found[1]),
        rests: found[2] == json!(true),
        answers: answers.map(words).collect(),
    })
}

/// Presses the key that moves the work on, and waits for what comes of it.
async fn go_on(page: &Page, before: &Seen) -> Told {
    page.press("Enter").await?;
    page.until(&format!("something after “{}”", before.key), async || {
        let sheet = page
            .script("return !!document.querySelector('.sheet')", Value::Null)
            .await?;
        let now = seen(page).await?;
        let moved = now.key != before.key || now.title != before.title || sheet == json!(true);
        Ok(moved.then_some(()))
    })
    .await
}

/// Moves the focus on by the tabulator until it is on a key of these words, and presses it.
async fn choose(page: &Page, words: &str) -> Told {
    for _ in 0..60 {
        let at = page
            .script(
                "return document.activeElement?.innerText?.trim() ?? ''",
                Value::Null,
            )
            .await?;
        if at == json!(words) {
            return page.press("Enter").await;
        }
        page.press("Tab").await?;
    }
    Err(Failure::new(format!("the tabulator does not come to “{words}”")))
}

#[test]
fn the_first_job_is_done_by_a_keyboard_alone() {
    story("by-keyboard", Screen::UPRIGHT, async |page| {
        page.open_at("#job").await?;
        let mut bolts = 0;
        for _ in 0..400 {
            let now = page
                .until("the key to have rested", async || {
                    let now = seen(page).await?;
                    Ok((!now.rests).then_some(now))
                })
                .await?;
            if now.key.starts_with("Close the job") {
                page.see_words("Every step is done.").await?;
                page.press("Enter").await?;
                page.see_words("Closed today").await?;
                // 4, 4 and 3 small ones, 2 rod bolts in three stages, 16 case bolts in four passes, and the rest.
                assert!(bolts > 80, "{bolts} bolts");
                return Ok(());
            }
            if now.key.starts_with("Shut") {
                page.advance_clock(Duration::from_secs(12 * 3_600)).await?;
                // Nobody touched it for so long: a first key wakes it, and does nothing else.
                page.see(button(has("touch to wake"))).await?;
                page.press("Enter").await?;
                page.gone(button(has("touch to wake"))).await?;
                continue;
            }
            let answer = ANSWERS
                .iter()
                .find(|answer| now.answers.iter().any(|on| on == *answer));
            if now.key.starts_with("Read") || now.key.starts_with("Turn it") {
                match (answer, READINGS.iter().find(|(name, _)| now.key.contains(name))) {
                    (Some(answer), _) => {
                        choose(page, answer).await?;
                        let key = now.key.clone();
                        page.until("the answer to be taken", async || {
                            Ok((seen(page).await?.key != key).then_some(()))
                        })
                        .await?;
                    }
                    (None, Some((_, digits))) => {
                        go_on(page, &now).await?;
                        page.see(button("use")).await?;
                        for digit in digits.chars() {
                            page.press(&digit.to_string()).await?;
                        }
                        page.press("Enter").await?;
                        page.gone(button("use")).await?;
                    }
                    (None, None) => {
                        let words = format!(
                            "nothing to answer “{}” in {}: {:?}",
                            now.key, now.title, now.answers
                        );
                        return Err(Failure::new(words));
                    }
                }
                continue;
            }
            bolts += usize::from(now.key.starts_with("Bolt"));
            go_on(page, &now).await?;
        }
        let now = seen(page).await?;
        Err(Failure::new(format!("it hangs at {}: {}", now.title, now.key)))
    });
}
