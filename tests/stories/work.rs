//! What hands do in any step: read the STOP, tally, read a number, go on.

use super::harness::*;

/// The STOP that stands alone on the step; none where none is unread.
async fn stop(page: &Page) -> Told<serde_json::Value> {
    let words = "return document.querySelector('.step.stopped .caution.stop')?.innerText ?? null";
    page.script(words, serde_json::Value::Null).await
}

/// Acknowledges whatever stops the step by its big key, which says so; tells how many there were.
pub async fn acknowledge(page: &mut Page) -> Told<usize> {
    let mut count = 0;
    while page.there(button("I have read it")).await? {
        page.key_at_least(button("I have read it"), 120, 88).await?;
        let read = stop(page).await?;
        page.tap(button("I have read it")).await?;
        count += 1;
        page.until("the next thing in the place of the STOP", async || {
            Ok((stop(page).await? != read).then_some(()))
        })
        .await?;
    }
    Ok(count)
}

/// Says that new ones are on, where the step asks for new ones.
pub async fn new_ones(page: &mut Page) -> Told {
    acknowledge(page).await?;
    page.tap(button(has("New ones on"))).await
}

/// Says that a shaft spins freely, where the step asks how it turns.
pub async fn turns(page: &mut Page) -> Told {
    acknowledge(page).await?;
    page.tap(button("spins freely")).await?;
    page.see_words("Noted: spins freely.").await
}

/// Takes that wrench into the hand.
pub async fn take_wrench(page: &mut Page, name: &str) -> Told {
    page.tap(button(has("wrench in the hand"))).await?;
    page.tap(radio(has(name))).await
}

/// Everything of the step, over it.
pub async fn whole(page: &mut Page) -> Told {
    page.tap(button(has("all ›"))).await?;
    page.see(button("back to the step")).await.map(drop)
}

/// Back from there.
pub async fn back(page: &mut Page) -> Told {
    page.tap(button("back to the step")).await
}

/// Closes the step at hand and goes on; what was heated is taken out and home first.
pub async fn close(page: &mut Page) -> Told {
    acknowledge(page).await?;
    if page.there(button(has("Out of the oven"))).await? {
        page.tap(button(has("Out of the oven"))).await?;
        page.tap(button("It is home")).await?;
    }
    page.tap(button("Done")).await?;
    page.tap(button(has("Next step"))).await
}

/// That step is at hand.
pub async fn at(page: &Page, title: &str) -> Told {
    page.see(heading(title)).await.map(|_| ())
}

/// Tallies `count` fasteners a pass.
pub async fn tally(page: &mut Page, count: usize, passes: usize) -> Told {
    for pass in 1..=passes {
        tally_pass(page, count, pass, passes).await?;
    }
    Ok(())
}

/// Tallies `count` fasteners of one pass.
pub async fn tally_pass(page: &mut Page, count: usize, pass: usize, passes: usize) -> Told {
    for bolt in 1..=count {
        let of_passes = if passes > 1 {
            format!(", pass {pass} of {passes}")
        } else {
            String::new()
        };
        if page.there(button(has("can’t set this"))).await? {
            page.tap(button(has("can’t set this"))).await?;
        }
        page.tap(button(has(&format!(" {bolt} of {count}{of_passes}"))))
            .await?;
    }
    Ok(())
}

/// Reads something that lies within its limits.
pub async fn reading(page: &mut Page, name: &str, keys: &[&str]) -> Told {
    page.enter(&format!("{name}:"), keys).await?;
    page.see_words("within limits").await
}

/// Opens a sheet of Torque; on a small phone by the key that holds the ways to all of them.
pub async fn sheet(page: &mut Page, name: &str) -> Told {
    if !page.there(button(name)).await? {
        page.tap(button("more")).await?;
    }
    page.tap(button(name)).await
}
