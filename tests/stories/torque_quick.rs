//! A torque from anywhere in two taps, on the keypad, at every size of phone.

use super::harness::*;

#[test]
fn a_manuals_foot_pounds_become_the_wrenchs_inch_pounds() {
    story("torque-quick", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.tap(button("Torque")).await?;
        page.tap(button(has("foot-pounds"))).await?;
        page.tap_keys(&["7", "point", "2"]).await?;
        // 7.2 × 12 = 86.4 in·lb, a whole division of 1: 86, which is 0.5 % less.
        page.see_words("86").await?;
        page.see_words("rounding −0.5 %").await?;
        // 7.2 × 1.355 818 = 9.762 N·m (NIST SP 811): a touch of the number tells all six units.
        page.tap(button(has("how it comes about"))).await?;
        page.see_words("9.76").await?;
        // A touch beside the sheet leaves it, and goes no further: the strip's corner is the way to Bench.
        let corner = page.place_of(button(has("Bench"))).await?;
        page.touch(corner.x + corner.width / 2.0, corner.y + corner.height / 2.0)
            .await?;
        page.gone(heading("How the number comes about")).await?;
        page.see(button("7")).await?;
        for (screen, name) in [
            (Screen::UPRIGHT, "upright"),
            (Screen::SIDEWAYS, "sideways"),
            (Screen::SMALL, "small"),
        ] {
            page.turn(screen).await?;
            page.fits_the_hand().await?;
            page.key_at_least(button("7"), 80, 64).await?;
            page.key_at_least(button(has("foot-pounds")), 80, 64).await?;
            page.screenshot(&format!("torque-{name}")).await?;
        }
        // What was typed is there after a reload.
        page.reload().await?;
        page.see_words("86").await
    });
}

/// The decimal comma is a choice on Bench; what is typed and every answer has it, after a reload too.
#[test]
fn who_chose_the_decimal_comma_reads_and_types_it() {
    story("torque-comma", Screen::UPRIGHT, async |page| {
        page.open_at("#bench").await?;
        page.tap(radio("decimal comma 7,2")).await?;
        page.see_on(radio("decimal comma 7,2")).await?;
        page.open_at("#torque").await?;
        page.tap(button(has("foot-pounds"))).await?;
        page.tap_keys(&["7", "comma", "2"]).await?;
        page.see_words("7,2 ft·lb").await?;
        page.see_words("rounding −0,5 %").await?;
        // 7.2 × 12 = 86.4 in·lb exactly.
        page.tap(button(has("how it comes about"))).await?;
        page.see_words("86,4").await?;
        page.tap(button("back")).await?;
        page.screenshot("torque-comma").await?;
        page.reload().await?;
        page.see_words("7,2 ft·lb").await?;
        page.see_words("rounding −0,5 %").await
    });
}

#[test]
fn nonsense_is_said_and_kept() {
    story("torque-nonsense", Screen::UPRIGHT, async |page| {
        page.open_at("#torque").await?;
        page.see_words("Type the manual’s torque.").await?;
        page.tap_keys(&["1", "point", "2", "point", "3"]).await?;
        page.see_words("1.2.3").await?;
        page.see_words("—").await?;
        page.tap_keys(&["back", "back", "back", "back", "back", "0"])
            .await?;
        page.see_words("zero").await?;
        page.tap_keys(&["back", "9", "9", "9", "9", "9", "9", "9"])
            .await?;
        page.see_words("9999999").await?;
        page.screenshot("torque-absurd").await
    });
}
