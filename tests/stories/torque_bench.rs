//! My wrenches, an adapter, a self-locking nut, a turn after the torque.

use super::harness::*;
use super::work::sheet;

#[test]
fn a_wrench_is_added_checked_ordered_and_taken_off() {
    for (screen, name) in [(Screen::UPRIGHT, "upright"), (Screen::SMALL, "small")] {
        story(&format!("bench-wrench-{name}"), screen, async |page| {
            page.open_at("#bench").await?;
            page.fits_the_hand().await?;
            page.tap(button("add a wrench")).await?;
            page.type_into(textbox("its name"), "Beam").await?;
            page.enter("lowest mark", &["3", "0"]).await?;
            page.tap(button("Add it")).await?;
            page.see_words("highest mark must be above its lowest").await?;
            page.enter("lowest mark", &["2"]).await?;
            page.fits_the_hand().await?;
            page.screenshot(&format!("bench-wrench-{name}")).await?;
            page.tap(button("Add it")).await?;
            page.see_on(radio(has("Beam"))).await?;
            page.tap(button("move Beam up")).await?;
            page.tap(button("change Beam")).await?;
            page.enter("smallest division", &["1"]).await?;
            page.tap(button("Keep it")).await?;
            page.see_words("2–25 N·m by 1, ±4 %").await?;
            page.fits_the_hand().await?;
            page.tap(button("remove Beam")).await?;
            page.words_gone("Beam").await?;
            page.tap(button(has("Undo"))).await?;
            page.see(radio(has("Beam"))).await?;
            page.reload().await?;
            page.see_on(radio(has("Beam"))).await.map(|_| ())
        });
    }
}

#[test]
fn adapter_nut_and_turn_change_what_is_set() {
    for (screen, name) in [
        (Screen::UPRIGHT, "upright"),
        (Screen::SIDEWAYS, "sideways"),
        (Screen::SMALL, "small"),
    ] {
        story(&format!("torque-extras-{name}"), screen, async |page| {
            page.open_at("#torque").await?;
            page.tap_keys(&["4", "0"]).await?;
            page.tap(button("use Middle")).await?;
            sheet(page, "wrench").await?;
            page.see(image("scale: line 40 + 0")).await?;
            page.fits_the_hand().await?;
            page.screenshot(&format!("torque-scale-{name}")).await?;
            page.tap(button("back to the number")).await?;
            sheet(page, "extras").await?;
            page.tap(button("put one on")).await?;
            // 40 · 300 / (300 + 100) = 30.
            page.enter("E, drive to bolt", &["1", "0", "0"]).await?;
            page.fits_the_hand().await?;
            page.tap(button("back to the number")).await?;
            page.see_words("30").await?;
            sheet(page, "extras").await?;
            page.screenshot(&format!("torque-adapter-{name}")).await?;
            page.tap(button("take it off")).await?;
            // 16 of 40 is over a third: 56 is set.
            page.enter("running torque", &["1", "6"]).await?;
            page.see_words("40 % of the torque: added to it.").await?;
            page.enter("turn a further", &["9", "0"]).await?;
            page.see(image("90° clockwise")).await?;
            page.fits_the_hand().await?;
            page.screenshot(&format!("torque-turn-{name}")).await?;
            page.tap(button("back to the number")).await?;
            page.see_words("56").await?;
            page.see_words("then turn a further 90°").await
        });
    }
}

#[test]
fn the_last_values_are_one_tap_away() {
    story("torque-recent", Screen::UPRIGHT, async |page| {
        page.open_at("#torque").await?;
        page.tap_keys(&["9", "clear", "2", "0", "plus or minus", "2", "clear"])
            .await?;
        page.see(button("20 ± 2 N·m")).await?;
        page.tap(button("9 N·m")).await?;
        page.see_words("80").await?;
        page.screenshot("torque-recent-upright").await
    });
}
