//! A slip of the unit is questioned, shown for what it is, and corrected with one tap.

use super::harness::*;
use super::work::{sheet, whole};

#[test]
fn newton_metres_entered_as_foot_pounds_are_questioned_and_corrected() {
    for (screen, name) in [
        (Screen::UPRIGHT, "upright"),
        (Screen::SIDEWAYS, "sideways"),
        (Screen::SMALL, "small"),
    ] {
        story(&format!("torque-guard-{name}"), screen, async |page| {
            page.open().await?;
            page.tap(button("Torque")).await?;
            page.tap(button(has("foot-pounds"))).await?;
            page.tap_keys(&["9"]).await?;
            sheet(page, "bolt").await?;
            page.tap(radio("M6")).await?;
            page.choose("class", "8.8").await?;
            page.choose("screwed into", "cast aluminium").await?;
            page.see_words("Did the manual say 9 N·m?").await?;
            page.see_words("% of proof load").await?;
            page.fits_the_hand().await?;
            page.screenshot(&format!("torque-guard-{name}")).await?;
            page.dark(true).await?;
            page.screenshot(&format!("torque-guard-dark-{name}")).await?;
            page.dark(false).await?;

            // In the one lane too, with the likely reading as its key.
            page.tap(button("back to the number")).await?;
            page.see_words("Did the manual say 9 N·m?").await?;
            page.fits_the_hand().await?;
            page.tap(button("9 N·m")).await?;
            page.words_gone("Did the manual say").await?;
            page.see(button(has("M6 8.8 in cast aluminium: plausible")))
                .await?;
            page.see_words("9 N·m").await?;
            page.fits_the_hand().await?;
            // The correction costs one touch to take back, and survives a reload.
            sheet(page, "undo").await?;
            if page.there(button("back to the number")).await? {
                page.tap(button("back to the number")).await?;
            }
            page.see_words("Did the manual say 9 N·m?").await?;
            page.tap(button("9 N·m")).await?;
            page.words_gone("Did the manual say").await?;
            page.reload().await?;
            page.see(button(has("plausible"))).await.map(|_| ())
        });
    }
}

#[test]
fn a_step_is_one_tap_from_its_torque_with_the_bolt_carried_over() {
    story("torque-from-step", Screen::UPRIGHT, async |page| {
        page.open_at("#step/10").await?;
        page.see(heading("Bearing retainer screws")).await?;
        whole(page).await?;
        page.tap(button(has("M6 8.8 in cast aluminium: plausible")))
            .await?;
        page.see_words("of proof load").await?;
        page.see_words("wet with locking compound (as here)").await?;
        page.fits_the_hand().await?;
        page.screenshot("step-guard-upright").await?;
        page.tap(button(has("on Torque"))).await?;
        page.see_words("9 N·m").await?;
        page.see(button(has("M6 8.8 in cast aluminium: plausible")))
            .await?;
        page.fits_the_hand().await?;
        page.screenshot("torque-from-step").await?;
        page.tap(button(has("Bearing retainer screws"))).await?;
        page.see(heading("Bearing retainer screws")).await.map(|_| ())
    });
}

#[test]
fn a_torque_low_for_a_bolt_is_asked_about_before_anything_is_offered() {
    story("torque-what-is-it", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.tap(button("Torque")).await?;
        page.tap_keys(&["5"]).await?;
        sheet(page, "bolt").await?;
        page.tap(radio("M8")).await?;
        page.see_words("That would hardly load an M8. What is it?")
            .await?;
        page.words_gone("Did the manual say").await?;
        page.fits_the_hand().await?;
        page.screenshot("torque-what-is-it").await?;
        page.tap(button(has("say which"))).await?;
        page.tap(radio("plug, union or sensor")).await?;
        page.words_gone("What is it?").await?;
        page.see(button(has("M8 plug: plausible"))).await?;
        page.tap(button("back to the number")).await?;
        page.tap(button("undo")).await?;
        page.see_words("What is it?").await.map(|_| ())
    });
}
