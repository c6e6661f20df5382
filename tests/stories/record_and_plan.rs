//! A sheet planned by thumb, a bore measured, a shaft felt, a line corrected, an action undone.

use super::harness::*;
use super::work::acknowledge;
use super::work::{back, take_wrench, whole};

#[test]
fn a_job_is_planned_from_nothing_by_thumb() {
    story("plan-by-thumb", Screen::UPRIGHT, async |page| {
        page.open_at("#jobs").await?;
        page.fits_everywhere("jobs").await?;
        page.tap(button("empty job")).await?;
        page.type_into(textbox("What is the job?"), "Side cover").await?;
        page.tap(button("empty job")).await?;
        page.see(heading("Side cover")).await?;
        page.see_words("No steps yet.").await?;

        page.key_at_least(button("Add a step"), 120, 88).await?;
        page.tap(button("Add a step")).await?;
        page.tap(button("Fasten")).await?;
        page.tap(button("M8")).await?;
        page.key_at_least(button("7"), 80, 64).await?;
        page.tap_keys(&["2", "0"]).await?;
        page.screenshot("plan-torque-upright").await?;
        page.tap(button("use")).await?;
        page.see_words("Step 1 of 1").await?;
        page.type_into(textbox("title"), "Cover bolts").await?;
        page.press("Tab").await?;
        page.enter("how many:", &["6"]).await?;
        page.see(button("how many: 6")).await?;
        page.tap(button(has("screwed into:"))).await?;
        page.tap(button("cast aluminium")).await?;
        page.see(button("screwed into: cast aluminium")).await?;
        page.fits_everywhere("plan-step").await?;
        page.tap(button("Back to the plan")).await?;

        page.tap(button("Add a step")).await?;
        page.tap(button("Turn")).await?;
        page.type_into(textbox("title"), "Turn the shaft").await?;
        page.press("Tab").await?;
        page.tap(button("Back to the plan")).await?;
        page.tap(button(has("Turn the shaft"))).await?;
        page.tap(button("↑ earlier")).await?;
        page.see(button("1 Turn the shaft Turn")).await?;
        page.fits_everywhere("plan").await?;
        page.tap(button(has("Undo"))).await?;
        page.see(button("2 Turn the shaft Turn")).await?;

        // Leaving out asks for a reason.
        page.tap(button("Job")).await?;
        page.see(heading("Cover bolts")).await?;
        page.see_words("20 N·m").await?;
        whole(page).await?;
        page.tap(button("skip this step")).await?;
        page.tap(button("skip this step")).await?;
        page.see_words("Write the reason first").await?;
        page.type_into(textbox(has("Why it is skipped")), "cover is off to be welded")
            .await?;
        page.tap(button("skip this step")).await?;
        page.see(button("open it again")).await?;
        back(page).await?;
        page.tap(button(has("Next step"))).await?;

        page.see(heading("Turn the shaft")).await?;
        acknowledge(page).await?;
        page.tap(button("Turn it and say how it turns")).await?;
        page.see_words("Say first how it turns").await?;
        page.tap(button("tight spot")).await?;
        page.tap(button("at 4 o’clock")).await?;
        page.see_words("Noted: tight at 4 o’clock.").await?;
        page.key_at_least(button("spins freely"), 120, 88).await?;
        page.see_words("is tight at 4 o’clock").await?;
        page.fits_everywhere("turn").await?;

        // After a reload all of it is there, and the overview says so.
        page.reload().await?;
        page.open_at("#steps").await?;
        page.see_words("0 of 2 done, 1 skipped").await?;
        page.see(heading("Not settled")).await?;
        page.see_words("is tight at 4 o’clock").await?;
        page.fits_everywhere("overview").await
    });
}

#[test]
fn a_bore_is_read_and_a_line_of_the_record_corrected() {
    story("bore-and-record", Screen::UPRIGHT, async |page| {
        page.open_at("#plan").await?;
        page.tap(button("Add a step")).await?;
        page.tap(button("Check")).await?;
        page.tap(button("add a bore, read at six places")).await?;
        page.see(heading("bore 1, six places")).await?;
        page.enter("not under:", &["6", "2"]).await?;
        page.enter("not over:", &["6", "2", "point", "0", "3"]).await?;
        page.enter("out-of-round up to:", &["point", "0", "1"]).await?;
        page.see(button("out-of-round up to: 0.01 mm")).await?;
        let id = page
            .script("return location.hash.split('/')[1]", serde_json::Value::Null)
            .await?;
        page.open_at(&format!("#step/{}", id.as_str().unwrap_or_default()))
            .await?;
        whole(page).await?;
        page.tap(button(has("read with"))).await?;
        page.tap(button("bore gauge")).await?;
        page.enter("part and gauge at:", &["2", "0"]).await?;
        let readings: [(&str, &[&str]); 6] = [
            ("bore 1, top, along", &["0", "1", "0"]),
            ("bore 1, top, across", &["0", "0", "4"]),
            ("bore 1, middle, along", &["0", "1", "2"]),
            ("bore 1, middle, across", &["0", "0", "8"]),
            ("bore 1, bottom, along", &["0", "1", "6"]),
            ("bore 1, bottom, across", &["0", "2", "5"]),
        ];
        for (name, digits) in readings {
            page.tap(button(has(&format!("{name}:")))).await?;
            page.tap_keys(&["6", "2", "point"]).await?;
            page.tap_keys(digits).await?;
            page.tap(button("use")).await?;
        }
        // By hand: 62.025 − 62.016 = 0.009; across 62.025 − 62.004 = 0.021.
        page.see_words("0.009 mm ✓ within").await?;
        page.see_words("0.021 mm").await?;
        page.fits_everywhere("bore").await?;
        back(page).await?;
        page.tap(button("Done")).await?;

        page.open_at("#record").await?;
        page.see_words("bore 1, bottom, across: 62.025 mm, bore gauge, at 20 °C")
            .await?;
        page.tap(button("readings")).await?;
        page.words_gone("step done").await?;
        page.tap(button(has("bottom, across"))).await?;
        page.tap(button("add a remark to this line")).await?;
        page.type_into(
            textbox("What is to be corrected or added"),
            "gauge set with the 62.00 ring",
        )
        .await?;
        page.tap(button("add a remark to this line")).await?;
        page.see_words("gauge set with the 62.00 ring").await?;
        page.fits_everywhere("record").await?;

        // The last actions are seen, and taken back one by one.
        page.open_at("#history").await?;
        page.see_words("remark").await?;
        page.tap(button(has("Undo"))).await?;
        page.see(button(has("Undo step"))).await?;
        page.fits_everywhere("history").await?;
        page.open_at("#record").await?;
        page.words_gone("gauge set with the 62.00 ring (").await
    });
}

#[test]
fn jobs_are_deleted_and_brought_back() {
    story("jobs-deleted", Screen::UPRIGHT, async |page| {
        page.open_at("#jobs").await?;
        page.tap(button("from the example")).await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        page.open_at("#jobs").await?;
        page.tap(button(has("at hand"))).await?;
        page.tap(button("rename")).await?;
        page.type_into(textbox("Its new name"), "Spare gearbox").await?;
        page.tap(button("rename")).await?;
        page.see(button(has("Spare gearbox"))).await?;
        page.tap(button("delete")).await?;
        page.see(heading("Deleted")).await?;
        page.tap(button(has("Undo deleting"))).await?;
        page.gone(heading("Deleted")).await?;
        page.see(button(has("Spare gearbox at hand"))).await?;
        page.tap(button("delete")).await?;
        page.reload().await?;
        page.tap(button(has("Spare gearbox"))).await?;
        page.tap(button("restore")).await?;
        page.gone(heading("Deleted")).await
    });
}

#[test]
fn a_reading_outside_its_limits_is_read_again_or_accepted_with_a_reason() {
    story("outside-limits", Screen::UPRIGHT, async |page| {
        page.open_at("#step/2").await?;
        page.see(button("Read bore across")).await?;
        page.enter("bore across:", &["6", "2", "point", "5"]).await?;
        page.see_words("outside limits").await?;
        page.enter("bore along:", &["6", "1", "point", "9", "7"]).await?;
        // The key leads to all that can be done about it, and says nothing twice.
        page.tap(button("Not settled bore across")).await?;
        page.see(button("back to the step")).await?;
        page.see_words("accept it as it is").await?;
        page.tap(button("back to the step")).await?;
        page.fits_everywhere("outside-limits").await?;
        page.tap(button("accept it as it is")).await?;
        page.type_into(textbox(has("Why it may stay as it is")), "a sleeve goes in")
            .await?;
        // Nobody's decision is none.
        page.tap(button("accept it as it is")).await?;
        page.see_words("Enter your initials too").await?;
        page.type_into(textbox("Initials"), "jb").await?;
        page.tap(button("accept it as it is")).await?;
        page.see_words("accepted: a sleeve goes in").await?;
        page.see(button("Done")).await?;
        // Read again, the reason no longer stands.
        whole(page).await?;
        page.enter("bore across:", &["6", "1", "point", "9", "8"]).await?;
        back(page).await?;
        page.words_gone("accepted: a sleeve goes in").await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await.map(drop)
    });
}

#[test]
fn bolts_too_tight_for_the_plan_are_loosened_first() {
    story("too-tight", Screen::UPRIGHT, async |page| {
        page.open_at("#step/6").await?;
        page.tap(button(has("New ones on"))).await?;
        take_wrench(page, "Middle").await?;
        page.tap(button(has(" 1 of 2"))).await?;
        page.tap(button(has(" 2 of 2"))).await?;
        page.see(button("Done")).await?;
        whole(page).await?;
        page.tap(button("change its plan")).await?;
        page.tap(button(has("manual says"))).await?;
        page.tap_keys(&["1", "2"]).await?;
        page.tap(button("use")).await?;
        page.see_words("12 N·m").await?;
        page.open_at("#step/6").await?;
        page.see(button("All loose 2 are too tight")).await?;
        page.fits_everywhere("too-tight").await?;
        page.tap(button("All loose 2 are too tight")).await?;
        // The old ones are no longer new.
        page.tap(button(has("New ones on"))).await?;
        page.see(button(has(" 1 of 2"))).await.map(drop)
    });
}
