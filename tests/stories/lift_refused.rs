//! Lifts that must not be: too heavy at arm's length, a sling too flat, a boom too far out.

use super::harness::*;

#[test]
fn a_48_kg_engine_at_arms_length_is_refused_by_hand() {
    story("lift-hands", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.tap(button("Lift")).await?;
        page.see_words("one person may lift here").await?;
        page.enter("load, with its rigging:", &["4", "8"]).await?;
        page.enter("reach, ankles to hands:", &["6", "0"]).await?;
        // 23·25/60·0.865·0.895·0.95 = 7.05 kg; 48/7.05 = 6.8 (DHHS (NIOSH) 94-110).
        page.see_words("Not by hand: use a hoist.").await?;
        page.see_words("6.8").await?;
        page.see_words("STOP").await?;
        page.see_words("Lifting index 6.8.").await?;
        page.fits_everywhere("lift-hands").await?;
        page.choose("units:", "lb and in").await?;
        page.see_words("105.82 lb").await?;
        page.see_words("23.622 in").await?;
        page.reload().await?;
        page.see_words("105.82 lb").await
    });
}

#[test]
fn a_two_leg_sling_at_25_degrees_is_refused() {
    story("lift-sling", Screen::UPRIGHT, async |page| {
        page.open_at("#lift").await?;
        page.choose("lifted:", "by hoist and sling").await?;
        page.enter("load, with its rigging:", &["4", "8"]).await?;
        // 48/(2·sin 60°) = 27.713 kg (ASME B30.9, factor 1.155), rounded up.
        page.see_words("27.8").await?;
        page.fits_everywhere("lift-sling").await?;
        page.enter("legs, from the horizontal:", &["2", "5"]).await?;
        page.see_words("25° from the horizontal is too flat").await?;
        page.see_words("Sling legs too flat").await?;
        page.screenshot("lift-flat").await?;
        page.enter("legs, from the horizontal:", &["4", "5"]).await?;
        page.enter("post to hook:", &["1", "2", "0"]).await?;
        page.enter("rating there:", &["4", "0"]).await?;
        page.tap(button("add this position")).await?;
        page.see_words("Too heavy for the hoist there: bring the boom in.")
            .await?;
        page.see_words("Too heavy for the hoist as it is set.").await?;
        page.enter("post to hook:", &["9", "0"]).await?;
        page.enter("rating there:", &["1", "0", "0"]).await?;
        page.tap(button("add this position")).await?;
        page.see_words("The hoist takes it.").await?;
        page.fits_the_hand().await?;
        page.screenshot("lift-boom").await
    });
}

#[test]
fn a_lift_steps_numbers_are_carried_over_and_back() {
    story("lift-step", Screen::UPRIGHT, async |page| {
        page.open_at("#step/20").await?;
        super::work::whole(page).await?;
        page.tap(button(has("on Lift:"))).await?;
        page.see(heading("Engine onto the frame")).await?;
        page.enter("legs, from the horizontal:", &["4", "5"]).await?;
        page.tap(button("back to the step")).await?;
        // 48/(2·sin 45°) = 33.94 kg, told upwards.
        page.see_words("34.0").await?;
        page.fits_the_hand().await?;
        page.screenshot("lift-step").await
    });
}
