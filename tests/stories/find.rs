//! One field that finds every fastener, reading, compound and remark of every job.

use super::harness::*;

#[test]
fn a_fastener_of_another_job_is_found_and_opened() {
    story("find", Screen::UPRIGHT, async |page| {
        // A remark in the example, then another job at hand.
        page.open_at("#record").await?;
        page.tap(button("add a remark")).await?;
        page.type_into(textbox("A remark on the whole job"), "drain plug weeps")
            .await?;
        page.tap(button("add a remark")).await?;
        page.see_words("drain plug weeps").await?;
        page.open_at("#jobs").await?;
        page.tap(button("empty job")).await?;
        page.type_into(textbox("What is the job?"), "Side cover").await?;
        page.tap(button("empty job")).await?;
        page.see(heading("Side cover")).await?;

        page.open_at("#bench").await?;
        page.tap(button(has("Find fasteners"))).await?;
        page.see(heading("Find")).await?;
        page.type_into(role("searchbox", "In every job"), "baffle screws m6")
            .await?;
        page.see(button(has("Baffle screws"))).await?;
        page.see_words("Brackmoor T5").await?;
        page.fits_everywhere("find").await?;

        page.type_into(role("searchbox", "In every job"), "weeps today")
            .await?;
        page.see_words("One found.").await?;
        page.type_into(role("searchbox", "In every job"), "baffle screws m6")
            .await?;
        page.tap(button(has("Baffle screws"))).await?;
        page.see(heading("Baffle screws")).await.map(drop)
    });
}
