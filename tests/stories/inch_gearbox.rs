//! The second example, a gearbox in inches and °F, worked from the wash to the first run.

use super::harness::*;
use super::work::*;
use std::time::Duration;

const MINUTE: Duration = Duration::from_secs(60);

/// Everything before the case is closed: readings in inches, the manual's own heat, shims, a castle nut.
async fn open_case(page: &mut Page) -> Told {
    at(page, "Wash the housing and the gears").await?;
    close(page).await?;

    at(page, "Countershaft, measured").await?;
    page.enter("journal:", &["point", "7", "4", "8", "2"]).await?;
    page.see_words("worn but usable").await?;
    reading(page, "fork in its groove", &["point", "0", "1"]).await?;
    page.fits_everywhere("inch-check").await?;
    close(page).await?;

    // The manual's own heat stands first, in its own unit; what we would do stands beside it.
    at(page, "Drive gear onto the output shaft").await?;
    acknowledge(page).await?;
    page.see_words("250").await?;
    page.see_words("275 °F").await?;
    page.fits_everywhere("inch-seat").await?;
    close(page).await?;

    // The mean of the gaps is 0.0293 in; 0.004 in less are 0.025.
    at(page, "Shims under the bearing cup").await?;
    for (place, keys) in [
        ("gap at the top:", ["point", "0", "2", "9"]),
        ("gap at the left:", ["point", "0", "2", "9"]),
        ("gap at the right:", ["point", "0", "3", "0"]),
    ] {
        page.enter(place, &keys).await?;
    }
    page.see_words("2 × 0.010 + 0.005 in").await?;
    page.fits_everywhere("inch-select").await?;
    page.tap(button(has("It is in"))).await?;
    page.enter("end float:", &["point", "0", "0", "4"]).await?;
    close(page).await?;

    at(page, "Pinion nut").await?;
    take_wrench(page, "Large").await?;
    tally(page, 1, 1).await?;
    reading(page, "torque with the hole in line", &["7", "1"]).await?;
    page.tap(button("on")).await?;
    page.fits_everywhere("inch-cotter").await?;
    close(page).await?;

    at(page, "Turn it through both speeds").await?;
    turns(page).await?;
    close(page).await
}

/// The compound is on, and the cover goes on while it is wet: late once, so that it goes on anew.
async fn cover(page: &mut Page) -> Told {
    at(page, "Cover gasket, sealing compound on both sides").await?;
    page.fits_everywhere("inch-bead").await?;
    acknowledge(page).await?;
    page.tap(button(has("Compound on"))).await?;
    close(page).await?;

    at(page, "Cover bolts").await?;
    whole(page).await?;
    page.see_words("1, 5: 12 ft·lb").await?;
    page.see_words("skins").await?;
    back(page).await?;
    // The cover goes on while the compound is wet: until when, the step and the strip say.
    page.see_words("close it: Cover bolts").await?;
    tally(page, 8, 1).await?;
    page.fits_everywhere("inch-groups").await?;
    close(page).await?;

    at(page, "Output flange bolts").await?;
    new_ones(page).await?;
    page.tap(button(has("All oiled"))).await?;
    for stage in 2..=3 {
        for bolt in 1..=4 {
            if page.there(button(has("can’t set this"))).await? {
                page.tap(button(has("can’t set this"))).await?;
            }
            page.tap(button(has(&format!(" {bolt} of 4, stage {stage} of 3"))))
                .await?;
        }
    }
    close(page).await?;

    at(page, "Drain plug").await?;
    tally(page, 1, 1).await?;
    close(page).await
}

#[test]
fn a_gearbox_in_inches_is_worked_to_its_first_run() {
    story("inch-gearbox", Screen::UPRIGHT, async |page| {
        page.open_at("#jobs").await?;
        page.tap(button("from the example in inches")).await?;
        page.open_at("#step/1").await?;
        open_case(page).await?;
        cover(page).await?;

        at(page, "Gear oil").await?;
        page.see(button("Shut see what it waits for")).await?;
        page.advance_clock(24 * 60 * MINUTE).await?;
        page.see(button("Read put in")).await?;
        page.fits_everywhere("inch-fill").await?;
        reading(page, "How much was put in", &["2", "point", "5"]).await?;
        page.tap(button("reached")).await?;
        close(page).await?;

        at(page, "First run under no load").await?;
        acknowledge(page).await?;
        page.tap(button("it runs")).await?;
        page.advance_clock(10 * MINUTE).await?;
        page.see_words("Started 10 min ago.").await?;
        reading(page, "what it reads now", &["1", "5", "0"]).await?;
        reading(page, "how long it ran", &["1", "0"]).await?;
        page.fits_everywhere("inch-run").await?;
        page.tap(button("none seen")).await?;
        page.tap(button("cold enough to touch")).await?;
        page.tap(button("reached")).await?;
        page.tap(button("torqued again")).await?;
        close(page).await?;
        page.see_words("Every step is done.").await
    });
}
