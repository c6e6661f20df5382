//! A case of sixteen bolts in three passes and a round, with an interruption and a reload in between.

use super::harness::*;
use super::work::take_wrench;

#[test]
fn sixteen_bolts_are_tallied_pass_by_pass_on_an_upright_phone() {
    tallied_through_a_reload(Screen::UPRIGHT, "upright");
}

#[test]
fn sixteen_bolts_are_tallied_pass_by_pass_on_a_phone_on_its_side() {
    tallied_through_a_reload(Screen::SIDEWAYS, "sideways");
}

#[test]
fn sixteen_bolts_are_tallied_pass_by_pass_on_the_smallest_phone() {
    tallied_through_a_reload(Screen::SMALL, "small");
}

fn tallied_through_a_reload(screen: Screen, name: &str) {
    story(&format!("torque-case-{name}"), screen, async |page| {
        page.open_at("#step/16").await?;
        page.see(heading("Case bolts")).await?;
        take_wrench(page, "Middle").await?;
        // 30 % of 20 N·m is under the middle wrench's scale.
        page.see_words("Middle can’t set this").await?;
        page.tap(button("Use Small Middle can’t set this")).await?;
        page.see_words("53").await?;
        page.key_at_least(button(has(" 1 of 16, pass 1 of 4")), 120, 88)
            .await?;
        for pass in 1..=4 {
            for bolt in 1..=16 {
                if (pass, bolt) == (3, 1) {
                    // The whole torque is above the small wrench: the key takes the one that can.
                    page.see_words("Small can’t set this").await?;
                    page.fits_the_hand().await?;
                    page.screenshot(&format!("torque-cannot-{name}")).await?;
                    page.tap(button("Use Middle Small can’t set this")).await?;
                }
                page.tap(button(has(&format!(" {bolt} of 16, pass {pass} of 4"))))
                    .await?;
                if (pass, bolt) == (1, 16) {
                    page.see_words("60 % of 20 N·m").await?;
                }
                if (pass, bolt) == (2, 7) {
                    // Called away: another screen, then the phone reloads the page.
                    page.fits_the_hand().await?;
                    page.screenshot(&format!("torque-case-{name}")).await?;
                    page.tap(button("Torque")).await?;
                    page.tap(button("Job")).await?;
                    page.open_at("#step/16").await?;
                    page.reload().await?;
                    page.see(image(has("7 of 16 tallied"))).await?;
                    // One too many is taken back.
                    page.tap(button(has(" 8 of 16, pass 2 of 4"))).await?;
                    page.tap(button(has("Undo"))).await?;
                    page.see(button(has(" 8 of 16, pass 2 of 4"))).await?;
                }
            }
        }
        page.see(button("Done")).await?;
        page.fits_the_hand().await
    });
}
