//! A manual's torque in two units: they agree, or the job stops there.

use super::harness::*;
use super::work::sheet;

const SCREENS: [(Screen, &str); 3] = [
    (Screen::UPRIGHT, "upright"),
    (Screen::SIDEWAYS, "sideways"),
    (Screen::SMALL, "small"),
];

/// Types or pastes the manual's own words.
async fn says(page: &mut Page, words: &str) -> Told {
    page.tap(button("type it")).await?;
    page.paste_into(textbox(has("own words")), words).await?;
    page.key_at_least(button("Take it"), 120, 88).await?;
    page.fits_the_hand().await?;
    page.tap(button("Take it")).await
}

#[test]
fn a_pair_passes_and_one_with_a_lost_point_is_stopped() {
    for (screen, name) in SCREENS {
        story(&format!("torque-pair-{name}"), screen, async |page| {
            page.open_at("#torque").await?;
            says(page, "14 N·m (10.3 ft·lb)").await?;
            // What the wrench can't do is said first; then that they agree.
            page.tap(button("use Middle")).await?;
            page.see_words("14 N·m and 10.3 ft·lb agree.").await?;
            page.fits_the_hand().await?;

            says(page, "14 N·m (103 ft·lb)").await?;
            page.see_words("STOP").await?;
            page.see_words("10 times apart").await?;
            page.see_words("—").await?;
            page.fits_the_hand().await?;
            page.screenshot(&format!("torque-pair-{name}")).await?;
            // The thread tells which is off.
            sheet(page, "bolt").await?;
            page.tap(radio("M8")).await?;
            page.see_words("103 ft·lb is off").await?;
            page.tap(button("the second is 10.3 ft·lb")).await?;
            page.see_words("14 N·m and 10.3 ft·lb agree.").await?;
            page.tap(button("forget the second")).await?;
            page.words_gone("agree").await?;
            page.tap(button("back to the number")).await
        });
    }
}

#[test]
fn the_second_value_is_typed_on_the_keypad_too() {
    story("torque-pair-keys", Screen::UPRIGHT, async |page| {
        page.open_at("#torque").await?;
        page.tap_keys(&["9", "to", "1", "2"]).await?;
        page.see_words("9–12 N·m").await?;
        sheet(page, "extras").await?;
        page.tap(button(has("the manual also says"))).await?;
        page.tap(button(has("foot-pounds"))).await?;
        page.tap_keys(&["6", "point", "6", "to", "8", "point", "9"])
            .await?;
        page.see_words("9–12 N·m and 6.6–8.9 ft·lb agree.").await?;
        page.fits_the_hand().await?;
        page.screenshot("torque-also-upright").await
    });
}
