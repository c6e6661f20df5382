//! A press fit on the Seat screen: heat within the limits, freezer plus heat where they are low,
//! the countdown, the depth read in a step.

use super::harness::*;
use super::work::{acknowledge, whole};
use std::time::Duration;

#[test]
fn a_62_mm_bearing_into_n7_aluminium_by_heat_then_by_freezer_and_heat() {
    story("seat-heat", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.tap(button("Seat")).await?;
        // 62 N7 −39 to −9 µm (ISO 286-2), bearing 0 to −13 µm (ISO 492); 39 + 31 µm on 62 mm at 21e-6: 74 °C.
        page.see_words("4 µm loose to 39 µm tight").await?;
        page.see_words("warm the housing evenly to").await?;
        page.see_words("74").await?;
        page.see(image(has("bore 74 °C"))).await?;
        page.see_words("times too large").await?;
        // A draughtsman's lines: outlines, hidden edges and dimensions have one weight each.
        let weights = "return ['case', 'edge', 'hidden', 'leader', 'axis'].map(name => {
            const all = [...document.querySelectorAll('.drawing path.' + name)].map(line => getComputedStyle(line));
            return [name, ...new Set(all.map(line => line.strokeWidth + (line.strokeDasharray === 'none' ? ' full' : ' broken')))].join(' '); });";
        assert_eq!(
            page.script(weights, serde_json::Value::Null).await?,
            serde_json::json!([
                "case 2px full",
                "edge 2px full",
                "hidden 1px broken",
                "leader 1px full",
                "axis 1px broken"
            ])
        );
        page.see_words("outside 61.5 mm or less").await?;
        page.fits_everywhere("seat-heat").await?;

        // The case may not exceed 60 °C: no way by heat alone, and without a freezer the press.
        page.enter("case (or shaft) not hotter than:", &["6", "0"])
            .await?;
        page.see_words("It takes 74 °C; the housing's limit is 60 °C.")
            .await?;
        page.see_words("press cold with up to").await?;
        page.choose("cooling:", "freezer, −18 °C").await?;
        page.see_words("55").await?;
        page.see_words("and cool the part to −18 °C").await?;
        page.see_words("It leaves 0.014 mm of interference").await?;
        page.fits_everywhere("seat-both").await?;

        // A touch too many is taken back; a reload loses nothing.
        page.choose("cooling:", "none").await?;
        page.see_words("press cold with up to").await?;
        page.tap(button("Undo cooling")).await?;
        page.see_words("and cool the part to −18 °C").await?;
        page.reload().await?;
        page.see_words("and cool the part to −18 °C").await
    });
}

#[test]
fn the_drawings_code_and_the_letters_give_the_same_fit() {
    story("seat-sizes", Screen::UPRIGHT, async |page| {
        page.open_at("#seat").await?;
        page.choose("hole’s letter:", "K").await?;
        // 62 K7: −21 to +9 µm (ISO 286-2): 22 µm loose to 21 µm tight.
        page.see_words("22 µm loose to 21 µm tight").await?;
        page.choose("hole’s grade:", "6").await?;
        // 62 K6: −15 to +4 µm.
        page.see_words("17 µm loose to 15 µm tight").await?;
        page.screenshot("seat-letters").await?;
        page.choose("the hole: fit", "measured").await?;
        page.enter("hole, read:", &["6", "1", "point", "9", "7", "0"])
            .await?;
        // 62.000 − 61.970 = 30 µm tight at most, 17 at least.
        page.see_words("17 to 30 µm tight").await?;
        page.enter("outside of the boss:", &["6", "0"]).await?;
        page.see_words("must be larger than the fit").await?;
        page.screenshot("seat-refused").await
    });
}

#[test]
fn the_way_from_the_oven_is_counted_from_the_instant_it_began() {
    story("seat-countdown", Screen::UPRIGHT, async |page| {
        page.open_at("#step/8").await?;
        page.key_at_least(button(has("Out of the oven")), 120, 88).await?;
        page.tap(button(has("Out of the oven"))).await?;
        page.see_words("be home within").await?;
        page.see(timer("countdown")).await?;
        page.fits_the_hand().await?;
        page.screenshot("seat-countdown").await?;
        page.tap(button("Torque")).await?;
        page.see_words("home by then").await?;
        page.open_at("#step/8").await?;
        page.advance_clock(Duration::from_secs(20)).await?;
        page.see_words("be home within").await?;
        page.reload().await?;
        page.see_words("be home within").await?;
        page.advance_clock(Duration::from_secs(3_600)).await?;
        // Nobody touched it for an hour: the first key wakes it.
        page.see(button(has("touch to wake"))).await?;
        page.press("Enter").await?;
        page.gone(button(has("touch to wake"))).await?;
        page.see_words("too late: back into the heat").await?;
        page.screenshot("seat-too-late").await?;
        page.tap(button(has("It is home"))).await?;
        page.see(button("Done")).await.map(drop)
    });
}

#[test]
fn the_depth_is_read_in_the_step_and_kept_in_its_record() {
    story("seat-depth", Screen::UPRIGHT, async |page| {
        page.open_at("#step/8").await?;
        whole(page).await?;
        page.tap(button(has("on Seat:"))).await?;
        page.see(heading("Main bearing into the right case")).await?;
        page.choose("depth:", "stated, from the face").await?;
        page.enter("depth, least:", &["0", "point", "4"]).await?;
        page.enter("depth, most:", &["0", "point", "6"]).await?;
        page.enter("face to shoulder, 0 if not known:", &["1", "7", "point", "5"])
            .await?;
        page.enter("gap left open behind, 0 if none:", &["0", "point", "8"])
            .await?;
        page.tap(button("back to the step")).await?;
        acknowledge(page).await?;
        page.see_words("0.40 to 0.60 mm below the face, at least 0.80 mm open behind")
            .await?;
        // First it goes in: how, the stage says above the field.
        page.tap(button(has("Out of the oven"))).await?;
        page.tap(button("It is home")).await?;
        // The big key opens the keypad of what is to be read.
        page.tap(button("Read depth below the face")).await?;
        page.tap_keys(&["0", "point", "5", "use"]).await?;
        // 17.5 − 16 − 0.5 = 1.0 mm behind.
        page.see_words("1.00 mm stays open behind").await?;
        page.fits_the_hand().await?;
        page.screenshot("seat-depth").await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await?;
        page.reload().await?;
        page.see_words("1.00 mm stays open behind").await
    });
}

#[test]
fn a_loose_race_opens_bond_with_its_gap_filled_in() {
    story("seat-loose", Screen::UPRIGHT, async |page| {
        page.open_at("#seat").await?;
        page.gone(button("It is loose: what holds it")).await?;
        page.choose("the hole: fit", "measured").await?;
        page.enter("hole, read:", &["6", "2", "point", "0", "2", "0"])
            .await?;
        // A bearing of 0 to −13 µm (ISO 492) in 62.020: 20 to 33 µm.
        page.see_words("20 to 33 µm loose").await?;
        page.fits_everywhere("seat-loose").await?;
        page.tap(button("It is loose: what holds it")).await?;
        page.see(heading("What does the manual name here?")).await?;
        page.tap(radio("Nothing named")).await?;
        page.see(button(has("Slides in, up to 0.05 mm"))).await?;
        page.see(button(has("A bearing's outer ring in a bore"))).await?;
        page.see_words("retaining compound").await
    });
}
